//! Sentences as they were, and none in millimetres for an inch maker.

use latchwright_model::{Board, Corner, Design, LidKind, Material, Paper, PinMake, Sawn};
use latchwright_model::{Grain, Units};
use latchwright_workshop::boards::{PlanFault, PlanNote, cut_plan};
use latchwright_workshop::inch::{Rule, rounded_sum as sum_of};
use latchwright_workshop::joinery::{BoxSize, JoineryFault, PanelKind, SidePlace, joinery};
use latchwright_workshop::ruler::{Diagonal, Measured, RulerFault};
use latchwright_workshop::steps::{Todo, steps};
use latchwright_workshop::tiles::TilesFault;
use latchwright_workshop::{Axis, HoleNoteKind, PartNote, Role, WoodPart, holes, parts};

use super::*;

const MM: Rule = Rule {
    units: Units::Millimetre,
    denominator: 32,
};
const INCH: Rule = Rule {
    units: Units::Inch,
    denominator: 32,
};

/// Neither `mm`, nor `millimetre`, nor metres.
fn no_millimetre(said: &str) {
    let words = said.split(|letter: char| !letter.is_alphabetic());
    let metric = |word: &str| ["mm", "m", "millimetres", "millimetre"].contains(&word);
    assert_eq!(words.filter(|word| metric(word)).count(), 0, "{said}");
}

fn few_bits() -> Design {
    let mut design = Design::default();
    design.bench.bits.retain(|bit| ![14.3, 9.5].contains(bit));
    design.keeper.edge = 3.0;
    design.keeper.width = 42.0;
    design.dials[0].bore.diameter = 0.0;
    design
}

#[test]
fn notes_on_holes_are_sentences_in_the_makers_unit() {
    let notes = holes(&few_bits()).notes;
    let said: Vec<String> = notes.iter().map(|note| hole_note(note, MM)).collect();
    assert_eq!(
        said,
        [
            "dial 1 bore is left out: its place or size is no number from 0.001 mm to 10 m",
            "dial 2 bore: 14.3 mm asked for; bit 15 mm, 0.7 mm over: none within 0.3 mm",
            "dial 3 bore: 14.3 mm asked for; bit 15 mm, 0.7 mm over: none within 0.3 mm",
            "the keeper lies on 3 mm of the front, a screw needs 6.84 mm: fix it from in front, or make \
             the front thicker",
            "the keeper stands 1 mm beyond the tab on each side, a screw needs 6.84 mm: make the keeper \
             53.69 mm wide",
            "finger knob slot: 9.4 mm asked for; bit 10 mm, 0.6 mm over: none within 0.3 mm",
        ]
    );
    for note in &notes {
        no_millimetre(&hole_note(note, INCH));
    }
    let kinds = |is: fn(&HoleNoteKind) -> bool| notes.iter().filter(|note| is(&note.kind)).count();
    let seen = [
        kinds(|kind| matches!(kind, HoleNoteKind::LeftOut)),
        kinds(|kind| matches!(kind, HoleNoteKind::NoNearBit(_))),
        kinds(|kind| matches!(kind, HoleNoteKind::LittleUnderKeeper { .. })),
        kinds(|kind| matches!(kind, HoleNoteKind::LittleBesideTab { .. })),
    ];
    assert_eq!(seen, [1, 3, 1, 1], "every kind is met");
}

#[test]
fn what_is_alike_of_several_holes_is_one_sentence() {
    let mut design = few_bits();
    design.dials[2].bore.diameter = f64::NAN;
    let alike = latchwright_workshop::alike_once(&holes(&design).notes);
    assert_eq!(
        notes_alike(&alike[0], MM),
        "dial 1 bore is left out, dial 3 bore is left out: its place or size is no number from 0.001 \
         mm to 10 m"
    );
    design.keeper.width = f64::NAN;
    let notes = holes(&design).notes;
    let screws = notes.iter().map(|note| hole_note(note, INCH));
    let screws: Vec<String> = screws.filter(|said| said.contains("screws")).collect();
    assert_eq!(
        screws,
        [
            "the keeper's screws is left out: its place or size is no number from 0.00004 in to 393 in"
        ]
    );
}

#[test]
fn the_order_of_work_says_notes_as_sentences() {
    let mut design = Design::default();
    design.bench.bits.retain(|bit| *bit != 14.3);
    let mut said = Vec::new();
    for step in steps(&design) {
        let notes = step
            .todo
            .iter()
            .filter(|line| matches!(line, Todo::Note(_)));
        said.extend(notes.map(|line| todo(line, MM)));
    }
    assert_eq!(
        said,
        [
            "Dial 1 bore, dial 2 bore, dial 3 bore: 14.3 mm asked for; bit 15 mm, 0.7 mm over: none \
             within 0.3 mm."
        ]
    );
}

/// Every fault of the box once, with the words that it had before.
#[expect(clippy::too_many_lines, reason = "a list of sentences, one a kind")]
fn joinery_faults() -> Vec<(JoineryFault, &'static str)> {
    let (panel, axis) = (PanelKind::Floor, Axis::X);
    vec![
        (
            JoineryFault::NothingLeft {
                which: BoxSize::SideThickness,
                bare: -0.4,
                film: 0.2,
            },
            "body: the sides' thickness is -0.4 mm once coats of 0.2 mm a face are taken off: nothing \
             is left to cut; give it a size above nought and above its coats",
        ),
        (
            JoineryFault::GrooveTooDeep {
                groove: 9.0,
                thickness: 12.0,
                most: 8.0,
            },
            "body: a groove of 9 mm in sides of 12 mm leaves less than a third of them; make the \
             groove at most 8 mm deep, or take thicker sides",
        ),
        (
            JoineryFault::ThinUnderFloor {
                foot: 1.0,
                least: 3.0,
            },
            "body: only 1 mm of wood stays under the floor's groove and breaks out easily; raise the \
             floor to at least 3 mm above the lower edge",
        ),
        (
            JoineryFault::PanelNegative {
                panel,
                width: -3.0,
                depth: 40.0,
            },
            "body: the floor comes out as -3 mm × 40 mm: there is none; make the room larger or the \
             groove deeper",
        ),
        (
            JoineryFault::PanelFallsOut {
                panel: PanelKind::Plate,
                holds: 0.5,
                wanted: 2.0,
                groove: 6.5,
            },
            "plate: at its driest the plate stands only 0.5 mm in its groove, 2 mm are wanted; cut the \
             grooves 6.5 mm deep, or take plywood or a wood that moves less",
        ),
        (
            JoineryFault::PanelWoodUnknown { panel },
            "body: the floor's wood is in no table, so one that moves more than any was taken; add its \
             coefficients to your own woods",
        ),
        (
            JoineryFault::PlateJams {
                axis,
                gap: 0.5,
                grows: 1.25,
                less: 0.25,
            },
            "plate: the plate has 0.5 mm on each side in its groove along x and grows by 1.25 mm: it \
             would burst the corners; make the plate 0.25 mm smaller along x, or the groove deeper",
        ),
        (
            JoineryFault::PlateTooSmall {
                axis,
                has: 218.0,
                wants: 220.0,
                short: 2.0,
            },
            "plate: the plate's width is 218 mm, the box outside is 220 mm: 2 mm short; make the \
             plate's width at least 220 mm, or the room 2 mm smaller",
        ),
        (
            JoineryFault::PlateFarOut {
                axis: Axis::Y,
                has: 180.0,
                over: 40.0,
            },
            "plate: the plate's depth is 180 mm, 40 mm more than the box outside; make sure that it is \
             meant to stand out so far",
        ),
        (
            JoineryFault::BandCutsGroove {
                height: 18.0,
                least: 20.0,
            },
            "body: a band of 18 mm would be cut through the plate's groove; make the band at least 20 \
             mm high",
        ),
        (
            JoineryFault::BandTooHigh {
                left: 8.0,
                most: 94.0,
            },
            "body: the band leaves 8 mm of the box, less than floor and groove take; make the band at \
             most 94 mm high",
        ),
        (
            JoineryFault::NoKerf,
            "bench: the saw's cut is nought, so nothing is reckoned for the lid's cut; measure a cut \
             of your saw and give its width",
        ),
        (
            JoineryFault::HingesDoNotFit {
                length: 90.0,
                inset: 30.0,
                outside: 220.0,
                most: 80.0,
            },
            "body: two hinges of 90 mm set in by 30 mm do not fit on a back of 220 mm; take hinges of \
             at most 80 mm, or set them in less",
        ),
        (
            JoineryFault::HingeTooWide {
                leaf: 11.0,
                thickness: 12.0,
                most: 9.0,
            },
            "body: a leaf of 11 mm on an edge of 12 mm leaves too little wood before it; take hinges \
             with leaves of at most 9 mm",
        ),
        (
            JoineryFault::HingeTooThick {
                leaf: 7.0,
                lid: 12.0,
            },
            "body: a leaf 7 mm thick would be let in more than half through a lid of 12 mm; take \
             thinner hinges",
        ),
        (
            JoineryFault::KeeperStandsOut {
                out: 4.0,
                depth: 10.0,
            },
            "keeper: the keeper stands out 4 mm in front of the lid; make it 10 mm deep, or round it \
             off as a lip for the fingers",
        ),
        (
            JoineryFault::KeeperBesideBox,
            "keeper: the keeper reaches beyond the box at one end; make the keeper narrower or move \
             the tab towards the middle",
        ),
        (
            JoineryFault::ThinBeforeNotch {
                left: 1.5,
                needed: 3.0,
            },
            "body: only 1.5 mm of the front stays before the notch for the tab, 3 mm are wanted; set \
             keeper and tab further back, or make the sides thicker",
        ),
        (
            JoineryFault::KeeperHasNoSeat {
                beside: 5.0,
                needed: 6.0,
            },
            "keeper: the keeper lies on only 5 mm of wood at each end beside the notch, a screw needs \
             6 mm; make the keeper wider or the tab narrower",
        ),
        (
            JoineryFault::DiscMeetsSide {
                dial: 1,
                short: 2.0,
            },
            "dial 2: its disc would run 2 mm into a side of the box; move the dial 2 mm towards the \
             middle, or take a smaller disc",
        ),
        (
            JoineryFault::SliderMeetsSide { short: 2.0 },
            "slider: the slider would run 2 mm into a side of the box; set the outer dials 2 mm \
             further in, or make the room wider",
        ),
    ]
}

#[test]
fn faults_of_the_box_say_what_by_how_much_and_what_to_do_in_the_makers_unit() {
    for (fault, said) in joinery_faults() {
        assert_eq!(joinery_fault(&fault, MM), said);
        no_millimetre(&joinery_fault(&fault, INCH));
    }
    for which in [
        BoxSize::RoomWidth,
        BoxSize::RoomDepth,
        BoxSize::RoomHeight,
        BoxSize::FloorThickness,
        BoxSize::SideHeight,
    ] {
        let fault = JoineryFault::NothingLeft {
            which,
            bare: 0.0,
            film: 0.1,
        };
        assert!(joinery_fault(&fault, INCH).contains("is 0 in once coats of 0.004 in a face"));
    }
    let thin = JoineryFault::ThinUnderFloor {
        foot: 25.4 / 16.0,
        least: 3.0,
    };
    assert_eq!(
        joinery_fault(&thin, INCH),
        "body: only 1/16 in of wood stays under the floor's groove and breaks out easily; raise the \
         floor to at least 1/8 in above the lower edge"
    );
}

#[test]
fn every_fault_of_the_box_that_designs_have_is_among_those_whose_words_are_tested() {
    let known = joinery_faults();
    let same = core::mem::discriminant::<JoineryFault>;
    let mut met = vec![false; known.len()];
    let mut meet = |change: &dyn Fn(&mut Design)| {
        let mut design = Design::default();
        change(&mut design);
        for fault in joinery(&design).faults {
            let at = known.iter().position(|(one, _)| same(one) == same(&fault));
            met[at.unwrap_or_else(|| panic!("{fault:?} is not tested"))] = true;
        }
    };
    let band = |height: f64| LidKind::Band { height };
    meet(&|d| d.workmanship.film = 10.0);
    meet(&|d| (d.body.groove, d.body.foot) = (9.0, 1.0));
    meet(&|d| d.inside.width = 0.5);
    meet(&|d| (d.inside.width, d.body.groove) = (0.5, 0.0));
    meet(&|d| (d.body.groove, d.plate.width) = (1.0, 218.0));
    meet(&|d| d.body.floor.material = no_such_tree());
    meet(&|d| (d.body.lid, d.plate.depth) = (band(30.0), 128.0));
    meet(&|d| d.plate.width = 290.0);
    meet(&|d| (d.body.lid, d.bench.kerf) = (band(10.0), 0.0));
    meet(&|d| d.body.lid = band(100.0));
    meet(&|d| d.body.hinge.length = 90.0);
    meet(&|d| (d.body.hinge.leaf, d.body.hinge.thickness) = (11.0, 7.0));
    meet(&|d| d.keeper.edge = 3.0);
    meet(&|d| d.keeper.width = 300.0);
    meet(&|d| d.keeper.width = 42.0);
    meet(&|d| d.dials[0].centre.0 = -110.0);
    let missing = known.iter().zip(&met).filter(|(_, met)| !**met);
    let missing: Vec<_> = missing.map(|((fault, _), _)| fault).collect();
    assert!(missing.is_empty(), "{missing:?}");
}

fn no_such_tree() -> Material {
    Material::Wood {
        species: "no such tree".to_owned(),
        sawn: Sawn::Flat,
        grain: Grain::AlongX,
    }
}

/// Designs whose parts have every note.
fn noted() -> Vec<Design> {
    let with = |change: fn(&mut Design)| {
        let mut design = Design::default();
        change(&mut design);
        design
    };
    vec![
        with(|d| d.plate.room = 1.0),
        with(|d| {
            d.plate.thickness = 16.0;
            d.dials[0].disc.below = 0.5;
            d.dials[1].knob.height = 6.0;
        }),
        with(|d| {
            d.body.corner = Corner::Butted;
            d.body.lid = LidKind::Band { height: 30.0 };
            d.dials[0].pin.make = PinMake::Dowel;
            d.dials[1].pin.make = PinMake::PrintedLying;
        }),
        with(|d| {
            d.body.corner = Corner::Rabbeted;
            d.dials[0].pin.make = PinMake::Steel;
            d.dials[1].pin.make = PinMake::PrintedStanding;
            let slot = d.dials[2].disc.slots[0].clone();
            d.dials[2].disc.slots = vec![slot; 3];
            d.keeper.edge = 3.0;
        }),
    ]
}

#[test]
fn notes_on_parts_are_sentences_in_the_makers_unit() {
    let mut said: Vec<String> = Vec::new();
    let mut seen: Vec<core::mem::Discriminant<PartNote>> = Vec::new();
    for design in noted() {
        for note in parts(&design).iter().flat_map(|part| &part.notes) {
            said.push(part_note(note, MM));
            no_millimetre(&part_note(note, INCH));
            let kind = core::mem::discriminant(note);
            if !seen.contains(&kind) {
                seen.push(kind);
            }
        }
    }
    assert_eq!(seen.len(), 26, "every kind of note is met");
    for wanted in [
        "both ends at 45°: long point 219.8 mm outside, short point 196.2 mm inside, bare",
        "both ends square",
        "box and lid in one: the lid is cut off after the glue-up",
        "glue only at the middle of two opposite sides, free everywhere else",
        "loose in its groove: no glue but at the middle of two sides",
        "lies on the sides and is the lid",
        "its outline is on the template; it is waxed, not coated",
        "one on each side of the slider's neck, 0.1 mm clear on each side; bare and waxed",
        "screwed across the strips, carries the slider",
        "one slot",
        "its fingers are lowered by 7.5 mm below the upper face, so that the pins stand free",
        "its lower face gets no coat",
        "its head lies 1.89 mm below the disc's face",
        "no screw that is sold joins it to its knob: glue them once the combination is to stay",
        "from below, its head in the disc",
        "heads in the keeper's upper face",
        "shaft to turn in a bore of 14.3 mm",
        "its shank of 8 mm runs in the plate's slot",
        "file the ends round, glue it in with epoxy",
        "glue it into its finger",
        "print it lying down, so that layers run along it",
        "printed standing: its root is a layer, the weakest place",
        "width is that of one leaf up to the middle of the pin",
        "the front gives them little wood: see the keeper's notes",
        "a press fit is never the only thing that keeps a disc in its place",
    ] {
        assert!(
            said.iter().any(|said| said == wanted),
            "{wanted} in {said:#?}"
        );
    }
    for wanted in [
        "a rabbet inside at both ends, ",
        "as long as guide and travel together; the front ends ",
        "there is 1 mm under the plate, strips and bridge take ",
        "3 slots; the mark shows the true one",
    ] {
        let found = said.iter().any(|said| said.starts_with(wanted));
        assert!(found, "{wanted} in {said:#?}");
    }
}

#[test]
fn boards_are_told_in_the_makers_unit() {
    let mut design = Design::default();
    let board = Board {
        wood: design.body.wood.clone(),
        length: 500.0,
        width: 150.0,
        thickness: 20.0,
        count: 1,
    };
    let bought = cut_plan(&design);
    design.bench.boards = vec![board];
    let short = cut_plan(&design);
    let notes = bought.notes.iter().chain(&short.notes);
    let said: Vec<String> = notes.clone().map(|note| plan_note(note, MM)).collect();
    assert!(
        said.iter()
            .any(|said| said.starts_with("buy 1 of white oak: at least 11.8 mm thick, "))
    );
    assert!(
        said.iter()
            .any(|said| said == "plane the front from 20 mm to 11.8 mm")
    );
    for note in notes {
        no_millimetre(&plan_note(note, INCH));
    }
    for missing in &short.shortfalls {
        no_millimetre(&shortfall(missing, INCH));
    }
    let missing: Vec<String> = short
        .shortfalls
        .iter()
        .map(|short| shortfall(short, MM))
        .collect();
    let counted =
        |said: &String| said.contains(" are missing, for: ") && said.contains("2 × guide strip");
    assert!(missing.iter().any(counted), "{missing:#?}");
    // parts of one name are counted, not listed one by one
    for said in &missing {
        let (_, listed) = said.split_once(", for: ").unwrap();
        let mut names: Vec<&str> = listed.split(", ").collect();
        let many = names.len();
        names.sort_unstable();
        names.dedup();
        assert_eq!(names.len(), many, "{said}");
    }
}

#[test]
fn what_cannot_be_cut_is_said_of_the_design() {
    let front = PlanFault::PartWithoutSize(Role::Side(SidePlace::Front));
    assert_eq!(
        plan_fault(&front),
        "design: the front has no size that could be cut; mend its sizes first"
    );
    let much = PlanFault::TooMuchWood {
        wood: "white oak".to_owned(),
        most: 60,
    };
    assert_eq!(
        plan_fault(&much),
        "design: more than 60 boards of white oak would be needed; mend the sizes of the parts first"
    );
}

#[test]
fn the_grain_is_said_round_the_corners_of_the_box() {
    let mut design = Design::default();
    let grain = cut_plan(&design).grain;
    assert_eq!(
        grain_round(&grain),
        "the grain runs on from left side to front, front to right side, right side to back; the \
         fourth corner cannot match: back to left side"
    );
    let sides = |length: f64, count: u32| Board {
        wood: "white oak".to_owned(),
        length,
        width: 150.0,
        thickness: 12.0,
        count,
    };
    design.bench.boards = vec![sides(450.0, 4)];
    assert_eq!(
        grain_round(&cut_plan(&design).grain),
        "the grain runs on from left side to front, right side to back; these cannot match: front to \
         right side, back to left side"
    );
    design.bench.boards = vec![sides(260.0, 8)];
    assert_eq!(
        grain_round(&cut_plan(&design).grain),
        "the grain runs on round no corner: the sides do not come from one strip"
    );
}

#[test]
fn a_sum_that_rounding_puts_out_is_said_beside_its_parts() {
    assert_eq!(
        rounded_sum(&sum_of(&[37.0; 3], 32)).unwrap(),
        "the rounded parts make 4 13/32 in, the whole is 4 3/8 in (+ 1/32 in): mark the last one from \
         the whole"
    );
    assert_eq!(rounded_sum(&sum_of(&[25.4, 12.7, 12.7], 32)), None);
}

#[test]
fn a_part_without_a_template_is_named_with_the_sizes_that_are_taken() {
    assert_eq!(
        no_template(WoodPart::Left, Units::Millimetre),
        "the left side has no template: a size is no number from 0.001 mm to 10 m"
    );
    assert_eq!(
        no_template(WoodPart::Plate, Units::Inch),
        "the plate has no template: a size is no number from 0.00004 in to 393 in"
    );
}

#[test]
fn why_there_are_no_tiles_is_told_in_the_makers_unit() {
    let paper = Paper::A4;
    for (fault, metric, inch) in [
        (
            TilesFault::NoSize,
            "the drawing has no size to lay on paper: mend the sizes of this part first",
            "the drawing has no size to lay on paper: mend the sizes of this part first",
        ),
        (
            TilesFault::NoRoom {
                paper,
                overlap: 15.0,
            },
            "A4 leaves no room for a drawing beside its margins of 10 mm and an overlap of 15 mm: \
             choose larger paper",
            "A4 leaves no room for a drawing beside its margins of 0.394 in and an overlap of 0.591 \
             in: choose larger paper",
        ),
        (
            TilesFault::TooManySheets {
                paper,
                size: (1200.0, 1270.0),
                sheets: 35.0,
            },
            "1200 × 1270 mm would take 35 sheets of A4, more than 20: choose larger paper, or mark \
             this part out from its numbers",
            "47.244 × 50.000 in would take 35 sheets of A4, more than 20: choose larger paper, or mark \
             this part out from its numbers",
        ),
    ] {
        assert_eq!(tiles_fault(&fault, MM.units), metric);
        assert_eq!(tiles_fault(&fault, INCH.units), inch);
    }
}

fn reading(x: f64, diagonals: Option<(f64, f64)>) -> RulerFault {
    let read = Measured {
        nominal: (100.0, 100.0),
        x,
        y: 100.0,
        diagonals,
    };
    read.correction().unwrap_err()
}

#[test]
fn readings_that_are_not_believed_are_told_in_the_makers_unit() {
    for (fault, said) in [
        (
            RulerFault::NoNominal { axis: Axis::X },
            "the line along x has no length to compare with: choose a sheet with measured lines",
        ),
        (
            reading(0.0, None),
            "the line along x was not measured: type what the ruler says, in millimetres",
        ),
        (
            reading(4.0, None),
            "4 mm measured along x of 100 mm would ask for a factor of 25.00, outside 0.80 to 1.25: \
             that is a slip of the ruler; measure again from the first tick, in millimetres",
        ),
        (
            reading(100.0, Some((f64::NAN, 141.4))),
            "the rising diagonal is no length: measure it again, or leave both diagonals out",
        ),
        (
            reading(100.0, Some((141.4, 0.0))),
            "the falling diagonal is no length: measure it again, or leave both diagonals out",
        ),
        (
            reading(100.0, Some((141.42, 144.0))),
            "diagonals of 141.42 and 144 mm do not belong to sides of 100 and 100 mm: together they \
             are off by 0.92 per cent; measure all four again",
        ),
        (
            reading(100.0, Some((155.0, 126.2))),
            "diagonals of 155 and 126.2 mm mean that the print leans by 11.68°, more than 5°: that is \
             a slip of the ruler or a sheet that was pulled in askew; print and measure again",
        ),
    ] {
        assert_eq!(ruler_fault(&fault, MM.units), said);
        no_millimetre(&ruler_fault(&fault, INCH.units));
    }
    // four inches are read at a tick of their own
    assert_eq!(
        ruler_fault(&reading(75.0, None), INCH.units),
        "3.000 in measured along x of 4.000 in would ask for a factor of 1.33, outside 0.80 to 1.25: \
         that is a slip of the ruler; measure again from the first tick, in inches"
    );
    assert!(matches!(
        reading(100.0, Some((141.4, 0.0))),
        RulerFault::NoDiagonal {
            which: Diagonal::Falling
        }
    ));
}

#[test]
fn notes_of_a_plan_name_parts_in_the_makers_unit() {
    let note = PlanNote::Plane {
        part: Role::GuideStrip,
        from: 12.7,
        to: 6.35,
    };
    assert_eq!(
        plan_note(&note, INCH),
        "plane the guide strip from 1/2 in to 1/4 in"
    );
}

#[test]
fn a_size_is_said_as_its_trade_says_it() {
    let all = parts(&Design::default());
    let said = |is: fn(&Role) -> bool, rule: Rule| {
        let part = all.iter().find(|part| is(&part.role)).unwrap();
        part_size(part, part.finished, rule)
    };
    let pin = |role: &Role| matches!(role, Role::Pin(_));
    let washer = |role: &Role| matches!(role, Role::Washer(_));
    let keeper = |role: &Role| *role == Role::Screw(latchwright_workshop::ScrewUse::Keeper);
    assert_eq!(said(|role| *role == Role::Plate, MM), "220 × 140 × 12 mm");
    assert_eq!(said(pin, MM), "Ø 4 mm, 13 mm long");
    assert_eq!(
        said(washer, MM),
        "Ø 22.3 mm outside, Ø 14.6 mm inside, 0.8 mm thick"
    );
    assert_eq!(said(keeper, MM), "No. 4 × 19 mm (3/4 in)");
    assert_eq!(said(keeper, INCH), "No. 4 × 3/4 in");
    for part in &all {
        // a screw's length in inches stands in brackets for who thinks in millimetres, never the other way
        no_millimetre(&part_size(part, part.finished, INCH));
    }
}
