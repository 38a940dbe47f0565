//! Sentences as they were, and none in millimetres for an inch maker.

use latchwright_model::{Design, Dial};
use latchwright_solids::{Options, parts};

use super::*;

const MM: Units = Units::Millimetre;
const INCH: Units = Units::Inch;

/// Neither `mm` nor `mm³`.
fn no_millimetre(said: &str) {
    let words = said.split(|letter: char| !letter.is_alphabetic());
    assert_eq!(words.filter(|word| *word == "mm").count(), 0, "{said}");
}

/// Every warning with the words that it had before.
#[expect(clippy::too_many_lines, reason = "a list of sentences, one a kind")]
fn warnings() -> Vec<(Warning, &'static str)> {
    let steel = PinMake::Steel;
    vec![
        (
            Warning::StandingPin {
                dial: None,
                free: 5.5,
                diameter: 2.5,
                most_diameters: 2.0,
            },
            "the pin stands 5.50 mm free on 2.50 mm, more than 2 diameters: its layers would shear at \
             the root; print it lying, or set a dowel of 2.50 mm",
        ),
        (
            Warning::StandingPin {
                dial: Some(1),
                free: 5.5,
                diameter: 2.5,
                most_diameters: 2.0,
            },
            "the pin 2 stands 5.50 mm free on 2.50 mm, more than 2 diameters: its layers would shear \
             at the root; print it lying, or set a dowel of 2.50 mm",
        ),
        (
            Warning::PinSetIn {
                make: steel,
                dial: 0,
                long: 8.0,
            },
            "glue the steel rod of dial 1, 8.00 mm long, through its finger, its end level with the \
             slider's upper face",
        ),
        (
            Warning::NoScrew {
                through: 47.1,
                into: 1.5,
            },
            "no screw that is sold goes through 47.10 mm and holds within 1.50 mm: glue disc and knob to \
             each other, or make the knob higher",
        ),
        (
            Warning::LeftOut {
                part: PartId {
                    kind: Kind::Jig,
                    dial: None,
                },
                size: [226.0, 151.0, 10.0],
                bed: [220.0, 220.0, 250.0],
            },
            "Drilling jig is 226.0 × 151.0 × 10.0 mm, the printer takes 220.0 × 220.0 × 250.0 mm; mark \
             the bores with the paper template instead; it is left out",
        ),
        (
            Warning::UseOfStrip {
                deep: 2.8,
                wide: 12.0,
            },
            "cut a lap 2.80 mm deep and 12.00 mm wide into the underside of the slider's bar, along \
             its edge towards the discs, leave the fingers off the wood, and glue and screw the strip \
             into it",
        ),
        (
            Warning::UseOfJig { notch: 0.0 },
            "lay it on the outside of the plate with the fence over the front edge and its notch on \
             the edge's middle, that edge towards you; clamp it, wear eye protection, keep to the \
             drill's manual",
        ),
        (
            Warning::UseOfJig { notch: -55.0 },
            "lay it on the outside of the plate with the fence over the front edge and its notch on \
             the line 55.00 mm left of the edge's middle, that edge towards you; clamp it, wear eye \
             protection, keep to the drill's manual",
        ),
        (
            Warning::UseOfJig { notch: 55.0 },
            "lay it on the outside of the plate with the fence over the front edge and its notch on \
             the line 55.00 mm right of the edge's middle, that edge towards you; clamp it, wear eye \
             protection, keep to the drill's manual",
        ),
        (
            Warning::UseOfGauge { width: 30.0 },
            "print it as all other parts are printed; measure each hole, the bar's width of 30.00 mm \
             at the bed and above it, and the square's diagonal, and enter the readings",
        ),
        (
            Warning::NoPilot {
                face: 1.5,
                needed: 2.0,
            },
            "only 1.50 mm of face would hold the screw, 2 mm are needed: glue the key, or make the \
             knob 0.50 mm higher",
        ),
        (
            Warning::FlatBehind { wide: 2.62 },
            "the pin has a flat 2.62 mm wide to lie on: set it with the flat away from the disc",
        ),
        (
            Warning::SmallLabels {
                high: 3.25,
                wanted: 4.5,
            },
            "labels are 3.25 mm high instead of 4.50 mm, so that the ring stays clear of its \
             neighbour; set the dials further apart",
        ),
        (
            Warning::ThinLabels {
                labels: 8,
                nozzle: 0.4,
            },
            "strokes of 8 labels are thinner than the nozzle's 0.40 mm and may not be laid down: take \
             a bolder face or larger labels",
        ),
        (
            Warning::BareMarks { bare: 3, marks: 8 },
            "3 of 8 marks stay without a label: no outlines for them, or no room; write them by hand",
        ),
        (
            Warning::NoRing { least: 2.5 },
            "between the knobs there is no room for a ring of labels at least 2.5 mm high: set the \
             dials further apart, make the knobs smaller, or mark the plate itself",
        ),
        (
            Warning::PostRelieved {
                corner: 0.45,
                relief: 0.45,
                backlash_deg: 2.466,
            },
            "the star's corners print with a radius of 0.45 mm, so the post's edges are rounded by \
             0.45 mm and the disc turns ± 2.47° on its seat; print finer, or make the key larger",
        ),
        (
            Warning::StandingShank {
                long: 18.5,
                diameter: 8.0,
                most_diameters: 2.0,
            },
            "the shank stands 18.50 mm on 8.00 mm, more than 2 diameters, and its layers would shear: \
             let a screw of at least 19 mm through it from below take the pull, or set a dowel instead",
        ),
    ]
}

/// A number for each kind of warning: a new kind does not compile until it is told here.
const fn kind(warning: &Warning) -> usize {
    match warning {
        Warning::StandingPin { .. } => 0,
        Warning::PinSetIn { .. } => 1,
        Warning::NoScrew { .. } => 2,
        Warning::UseOfStrip { .. } => 3,
        Warning::UseOfJig { .. } => 4,
        Warning::UseOfGauge { .. } => 5,
        Warning::NoPilot { .. } => 6,
        Warning::FlatBehind { .. } => 7,
        Warning::SmallLabels { .. } => 8,
        Warning::ThinLabels { .. } => 9,
        Warning::BareMarks { .. } => 10,
        Warning::NoRing { .. } => 11,
        Warning::PostRelieved { .. } => 12,
        Warning::StandingShank { .. } => 13,
        Warning::LeftOut { .. } => 14,
    }
}

#[test]
fn warnings_are_sentences_in_the_makers_unit() {
    let mut met = [false; 15];
    for (one, said) in warnings() {
        met[kind(&one)] = true;
        assert_eq!(warning(&one, MM), said);
        no_millimetre(&warning(&one, INCH));
    }
    assert_eq!(met, [true; 15]);
    let shank = Warning::StandingShank {
        long: 25.4 * 0.73,
        diameter: 25.4 / 4.0,
        most_diameters: 2.0,
    };
    assert_eq!(
        warning(&shank, INCH),
        "the shank stands 0.730 in on 0.250 in, more than 2 diameters, and its layers would shear: let \
         a screw of at least 0.75 in through it from below take the pull, or set a dowel instead"
    );
}

#[test]
fn parts_of_designs_have_warnings_of_most_kinds() {
    let mut met = [false; 15];
    let mut meet = |options: &Options, change: &dyn Fn(&mut Design)| {
        let mut design = Design::default();
        change(&mut design);
        let made = parts(&design, options).unwrap_or_else(|faults| panic!("{faults:?}"));
        for one in made.iter().flat_map(|part| &part.warnings) {
            met[kind(one)] = true;
            no_millimetre(&warning(one, INCH));
        }
    };
    let usual = Options::default();
    let every = |d: &mut Design, change: fn(&mut Dial)| d.dials.iter_mut().for_each(change);
    let near = |d: &mut Design, apart: f64| {
        for (dial, x) in d.dials.iter_mut().zip([-apart, 0.0, apart]) {
            dial.centre.0 = x;
        }
    };
    meet(&usual, &|d| {
        every(d, |dial| dial.pin.make = PinMake::PrintedLying);
        d.bench.printer.corner = 0.6;
        d.dials[0].pin.make = PinMake::PrintedStanding;
        d.dials[0].pin.diameter = 2.5;
        d.dials[0].pin.free = 5.5;
        d.dials[1].knob.height = 7.0;
        d.dials[2].labels = latchwright_model::Labels::Words(vec!["茶".to_owned(); 8]);
    });
    meet(&usual, &|d| {
        d.slider.material = latchwright_model::Material::Printed;
        // a shaft so long that no screw that is sold goes through
        d.plate.thickness = 42.0;
    });
    meet(&usual, &|d| d.bench.printer.bed = (60.0, 60.0));
    meet(&usual, &|d| near(d, 41.0));
    meet(&usual, &|d| near(d, 51.0));
    let strip = Options {
        pin_strip: true,
        ..Options::default()
    };
    meet(&strip, &|d| {
        every(d, |dial| dial.pin.make = PinMake::PrintedStanding);
    });
    // strokes thinner than the nozzle come from fonts only
    let missing: Vec<usize> = (0..15).filter(|kind| !met[*kind]).collect();
    assert_eq!(missing, [9]);
}

/// Every reason why a part is not made, with the words that it had before.
fn faults() -> Vec<(PartFault, &'static str)> {
    let knob = PartId {
        kind: Kind::Knob,
        dial: Some(1),
    };
    let slider = PartId {
        kind: Kind::Slider,
        dial: None,
    };
    vec![
        (
            PartFault::Option {
                which: SizeOption::ReliefHeight,
                value_mm: 7.0,
                least_mm: 0.1,
                most_mm: 5.0,
            },
            "option relief_height is 7; give a value from 0.1 to 5",
        ),
        (
            PartFault::RecessThrough {
                part: knob,
                recess_mm: 4.0,
                height_mm: 4.8,
                left_mm: 0.8,
                needed_mm: 1.2,
                remedy_mm: 5.6,
            },
            "Knob 2: the star is 4.00 mm deep in a knob 4.80 mm high, which leaves 0.80 mm of face \
             where 1.20 mm are needed; make the knob at least 5.60 mm high",
        ),
        (
            PartFault::NoWall {
                part: knob,
                wall: Wall::Star { knob_mm: 15.25 },
                wall_mm: 0.5,
                needed_mm: 0.8,
            },
            "Knob 2: only 0.50 mm of wall around the star, less than 0.80 mm (two lines of the \
             nozzle); make the knob at least 15.25 mm across, or the key smaller",
        ),
        (
            PartFault::LargerThanBed {
                part: knob,
                size_mm: [53.72, 53.72, 14.4],
                bed_mm: [50.0, 50.0, 200.0],
            },
            "Knob 2 is 53.7 × 53.7 × 14.4 mm, the printer takes 50.0 × 50.0 × 200.0 mm; make the knob \
             of dial 2 smaller",
        ),
        (
            PartFault::NothingToDraw {
                part: knob,
                what: Slim::Knob,
                finished_mm: 1.0,
                drawn_mm: 0.7,
                least_mm: 0.8,
            },
            "Knob 2: a width or diameter of 1.00 mm leaves 0.70 mm to draw, less than 0.80 mm; take a \
             larger knob",
        ),
        (
            PartFault::NoFinger {
                part: slider,
                dial: 1,
            },
            "Slider: no finger reaches the pin of dial 2, which is too near its neighbour's or does not \
             stand clear of the slider's bar; set the dials further apart, or level with one another",
        ),
        (
            PartFault::File {
                name: "parts.3mf".to_owned(),
                reason: "full".to_owned(),
            },
            "parts.3mf cannot be put together (full); leave some parts out and try again",
        ),
    ]
}

#[test]
fn why_a_part_cannot_be_made_is_told_in_the_makers_unit() {
    for (fault, said) in faults() {
        assert_eq!(part_fault(&fault, MM), said);
        no_millimetre(&part_fault(&fault, INCH));
    }
    let all: Vec<PartFault> = faults().into_iter().map(|(fault, _)| fault).collect();
    assert_eq!(part_faults(&all, INCH).lines().count(), all.len());
    let option = PartFault::Option {
        which: SizeOption::Chamfer,
        value_mm: 50.8,
        least_mm: 0.0,
        most_mm: 2.0,
    };
    assert_eq!(
        part_fault(&option, INCH),
        "option chamfer is 2.000 in; give a value from 0.000 in to 0.079 in"
    );
}

#[test]
fn every_thin_wall_says_where_it_is_and_what_makes_it_thicker() {
    for (wall, said) in [
        (
            Wall::SlotFloor {
                step: 3,
                most_mm: 5.0,
            },
            "between a slot's floor and the screw, less than 0.80 mm (two lines of the nozzle); make \
             the slot at step 3 at most 5.00 mm deep, or glue the key and leave out the screw",
        ),
        (
            Wall::PostFlats { apothem_mm: 4.5 },
            "between the post's flats and the screw, less than 0.80 mm (two lines of the nozzle); make \
             the key's apothem at least 4.50 mm, or glue the key and leave out the screw",
        ),
        (
            Wall::Shoulder { bore_mm: 11.0 },
            "between the post's corners and the shaft's rim, where the knob sits, less than 0.80 mm \
             (two lines of the nozzle); make the bore at least 11.00 mm, or the key smaller",
        ),
        (
            Wall::Shank { further_mm: 2.5 },
            "around the finger knob's shank, less than 0.80 mm (two lines of the nozzle); bring the \
             finger knob 2.50 mm further over the slider's neck or bar, or make its shank thinner",
        ),
        (
            Wall::Washer { radius_mm: 9.0 },
            "of the washer, less than 0.80 mm (two lines of the nozzle); make the disc's radius at \
             least 9.00 mm, or the bore smaller",
        ),
        (
            Wall::BesideHeads { depth_mm: 8.0 },
            "beside the heads of its screws, less than 0.80 mm (two lines of the nozzle); make the \
             keeper at least 8.00 mm deep, or of wood",
        ),
        (
            Wall::UnderHeads { thickness_mm: 3.0 },
            "under the heads of its screws, less than 0.80 mm (two lines of the nozzle); make the \
             keeper at least 3.00 mm thick",
        ),
        (
            Wall::BeyondScrews { width_mm: 40.0 },
            "beyond its screws, less than 0.80 mm (two lines of the nozzle); make the keeper at least \
             40.00 mm wide",
        ),
        (
            Wall::Pilot { shank_mm: 5.0 },
            "around the pilot hole, less than 0.80 mm (two lines of the nozzle); make the shank at \
             least 5.00 mm thick",
        ),
        (
            Wall::Guide { thinner_mm: 1.0 },
            "around the guide, less than 0.80 mm (two lines of the nozzle); guide a bit at least 1.00 \
             mm thinner",
        ),
    ] {
        let fault = PartFault::NoWall {
            part: PartId {
                kind: Kind::Keeper,
                dial: None,
            },
            wall,
            wall_mm: 0.5,
            needed_mm: 0.8,
        };
        let whole = format!("Keeper: only 0.50 mm of wall {said}");
        assert_eq!(part_fault(&fault, MM), whole);
        no_millimetre(&part_fault(&fault, INCH));
    }
}

#[test]
fn what_does_not_go_on_the_bed_says_what_to_make_smaller() {
    let other = "make it smaller in the design, or name the larger bed of another printer";
    for (kind, dial, said) in [
        (
            Kind::Disc,
            Some(0),
            "make the disc of dial 1 smaller, or name the larger bed of another printer",
        ),
        (Kind::Knob, Some(2), "make the knob of dial 3 smaller"),
        (Kind::Ring, Some(0), other),
        (Kind::Washer, Some(0), other),
        (Kind::Pin, Some(0), other),
        (Kind::Pin, None, "print single pins instead of a strip"),
        (
            Kind::Slider,
            None,
            "make the slider of wood, with single pins or a pin strip",
        ),
        (Kind::SliderKnob, None, other),
        (Kind::Keeper, None, "make the keeper smaller, or of wood"),
        (
            Kind::Jig,
            Some(1),
            "mark the bores with the paper template instead",
        ),
        (Kind::Gauge, None, other),
    ] {
        assert_eq!(smaller(PartId { kind, dial }), said);
    }
}

#[test]
fn why_a_body_is_not_meshed_is_told_in_the_makers_unit() {
    for (fault, said) in [
        (
            MeshFault::TooLarge { most_mm: 5000.0 },
            "an outline reaches beyond 5000 mm or is not a number; scale it down",
        ),
        (
            MeshFault::Tangled { crossings: 3 },
            "outlines cross in 3 places that cannot be told apart; simplify them",
        ),
        (
            MeshFault::NoTriangles {
                reason: "why".to_owned(),
            },
            "the outlines cannot be cut into triangles (why); simplify them",
        ),
        (
            MeshFault::SlopesCross {
                x_mm: 1.0,
                y_mm: 2.5,
            },
            "a chamfer meets another edge at x 1.000, y 2.500 mm; make one of them smaller",
        ),
        (
            MeshFault::Open { edges: 3 },
            "3 edges of the surface do not join exactly two faces; move the outlines that touch",
        ),
        (
            MeshFault::Pinched { points: 1 },
            "1 points join parts of the surface that should be apart; move the outlines that touch",
        ),
        (
            MeshFault::Sliver {
                height_mm: 1e-5,
                least_mm: 5e-4,
            },
            "a triangle only 0.0000100 mm high, less than 0.0005 mm; simplify the outlines",
        ),
        (
            MeshFault::NoVolume { volume_mm3: -2.0 },
            "the volume is -2.000 mm³; a solid has more than 0",
        ),
    ] {
        assert_eq!(mesh_fault(&fault, MM), said);
        no_millimetre(&mesh_fault(&fault, INCH));
        let part = PartId {
            kind: Kind::Gauge,
            dial: None,
        };
        let whole = part_fault(&PartFault::Mesh { part, fault }, MM);
        assert_eq!(whole, format!("Fit gauge: {said}"));
    }
}

#[test]
fn a_reading_that_is_not_believed_is_told_as_it_was_typed() {
    for (which, name) in [
        (Reading::Hole, "hole"),
        (Reading::OutsideWidth, "outside width"),
        (Reading::WidthAtBed, "width at the bed"),
        (Reading::Diagonal, "diagonal"),
    ] {
        let fault = ReadingFault {
            which,
            value: 9.5,
            least: 3.0,
            most: 7.0,
        };
        assert_eq!(
            reading_fault(&fault),
            format!("option {name} is 9.5; give a value from 3 to 7")
        );
    }
}
