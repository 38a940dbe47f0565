//! The box by worked figures, by laws, and with nonsense.

use latchwright_model::{Corner, Design, Grain, LidKind, Material, Place, Sawn, Severity};

use super::*;
use crate::frame::Axis;
use crate::nonsense::nonsense;

fn plain() -> Design {
    let mut design = Design::default();
    design.workmanship.film = 0.0;
    design
}

fn has(design: &Design, wanted: fn(&JoineryFault) -> bool) -> bool {
    joinery(design).faults.iter().any(wanted)
}

#[test]
fn the_default_box_has_its_worked_sizes() {
    let found = joinery(&Design::default());
    // 196 + 2·12, 116 + 2·12, 5 + 6 + 80
    let Extent {
        width,
        depth,
        height,
    } = found.outside;
    assert_eq!((width, depth, height), (220.0, 140.0, 91.0));
    let [front, right, ..] = &found.sides;
    assert_eq!(
        (front.outside.finished, front.inside.finished),
        (220.0, 196.0)
    );
    assert_eq!(
        (right.outside.finished, right.inside.finished),
        (140.0, 116.0)
    );
    assert_eq!(
        found.overhang,
        Some(Overhang {
            front: 0.0,
            side: 0.0
        })
    );
    assert_eq!((found.hinges[0].from, found.hinges[0].to), (30.0, 70.0));
    assert_eq!((found.hinges[1].from, found.hinges[1].to), (150.0, 190.0));
    assert!(
        found
            .faults
            .iter()
            .all(|fault| fault.severity() == Severity::Notice),
        "{:#?}",
        found.faults
    );
}

#[test]
fn coats_are_taken_off_outside_sizes_and_added_to_openings() {
    let mut design = Design::default();
    design.workmanship.film = 0.25;
    let found = joinery(&design);
    let front = &found.sides[0];
    assert_eq!((front.outside.bare, front.inside.bare), (219.5, 196.5));
    assert_eq!(found.thickness.bare, 11.5);
    // long point less short point is twice the bare thickness, so the mitre closes
    assert_eq!(
        front.outside.bare - front.inside.bare,
        2.0 * found.thickness.bare
    );
    assert_eq!(front.grooves[0].depth.bare, 4.75);
    assert_eq!(front.grooves[0].above.bare, 4.75);
    assert_eq!(found.hinges[0].depth.bare, 1.25);
}

#[test]
fn every_corner_closes_to_the_same_outside_with_and_without_coats() {
    for film in [0.0, 0.2] {
        for corner in [Corner::Mitred, Corner::Butted, Corner::Rabbeted] {
            let mut design = plain();
            design.workmanship.film = film;
            design.body.corner = corner;
            let found = joinery(&design);
            let [front, right, ..] = &found.sides;
            let bare = found.thickness.bare;
            let covered = match front.ends {
                End::Mitred => bare,
                End::Square => 0.0,
                End::Rabbeted { depth, width } => {
                    assert_eq!(width, bare);
                    depth
                }
            };
            // front and back, plus what of a short side stands between them
            let between = right.outside.bare - 2.0 * covered;
            let depth = between + 2.0 * bare;
            assert!(
                (depth + 2.0 * film - found.outside.depth).abs() < 1e-9,
                "{corner:?} {depth}"
            );
        }
    }
}

#[test]
fn grooves_that_would_show_at_an_end_are_stopped() {
    let mut design = plain();
    let stops = |design: &Design| joinery(design).sides.map(|side| side.grooves[0].stop);
    assert_eq!(stops(&design), [0.0; 4]);
    design.body.corner = Corner::Butted;
    assert_eq!(stops(&design), [7.0, 0.0, 7.0, 0.0]);
    // a groove of 5 mm hides in a rabbet of 6
    design.body.corner = Corner::Rabbeted;
    assert_eq!(stops(&design), [0.0; 4]);
    design.body.groove = 7.0;
    assert_eq!(stops(&design), [5.0, 0.0, 5.0, 0.0]);
}

#[test]
fn a_plywood_floor_hardly_needs_room_and_a_wide_one_of_oak_does() {
    let ply = joinery(&plain()).floor;
    assert!(ply.gap_x < 0.8 && ply.gap_y < 0.8, "{ply:?}");
    let mut design = plain();
    design.body.floor.material = Material::Wood {
        species: "white oak".to_owned(),
        sawn: Sawn::Flat,
        grain: Grain::AlongX,
    };
    let oak = joinery(&design).floor;
    // across the grain along y: 0.00365 · about 4.7 per cent · 125 mm = 2.1 mm, half of it a side
    assert!((1.2..2.2).contains(&oak.gap_y), "{}", oak.gap_y);
    assert!(oak.gap_x < oak.gap_y);
    assert!(oak.gap_y - oak.grows.1 / 2.0 >= 0.49);
    assert!(oak.shrinks.1 > 1.0);
    design.season = latchwright_model::Season::still(design.season.built);
    let still = joinery(&design).floor;
    assert!((still.gap_y - 0.5).abs() < 1e-9 && still.shrinks == (0.0, 0.0));
}

#[test]
fn an_unknown_wood_moves_more_than_any_known_one_and_is_said() {
    let mut design = plain();
    let floor = |species: &str| Material::Wood {
        species: species.to_owned(),
        sawn: Sawn::Flat,
        grain: Grain::AlongX,
    };
    design.body.floor.material = floor("american beech");
    let beech = joinery(&design).floor.gap_y;
    design.body.floor.material = floor("no such tree");
    assert!(joinery(&design).floor.gap_y > beech);
    let panel = PanelKind::Floor;
    let unknown = JoineryFault::PanelWoodUnknown { panel };
    assert!(joinery(&design).faults.contains(&unknown));
}

#[test]
fn a_band_loses_one_kerf_and_the_closed_box_has_its_height() {
    let mut design = plain();
    design.body.lid = LidKind::Band { height: 30.0 };
    design.body.groove = 6.0;
    design.plate.width = 196.0 + 11.0;
    design.plate.depth = 116.0 + 6.4;
    design.bench.kerf = 3.2;
    let found = joinery(&design);
    // 5 + 6 + 80, plate 12 and 5 over it, and the cut
    assert!((found.height.finished - 111.2).abs() < 1e-9);
    let cut = found.lid.unwrap();
    assert!((cut.box_height - 78.0).abs() < 1e-9 && cut.lost == 3.2);
    assert!((cut.box_height + cut.lost + cut.lid_height - found.height.finished).abs() < 1e-9);
    assert!((found.outside.height - 108.0).abs() < 1e-9);
    assert_eq!(found.sides[0].grooves.len(), 2);
    assert!((found.sides[0].grooves[1].above.finished - 94.2).abs() < 1e-9);
    assert_eq!(found.hinges[0].at_height, cut.box_height);
    let jams = |fault: &JoineryFault| matches!(fault, JoineryFault::PlateJams { .. });
    assert!(!has(&design, jams), "{:#?}", found.faults);
    design.plate.depth = 116.0 + 12.0;
    assert!(has(&design, jams));
    design.plate.depth = 116.0;
    assert!(has(&design, |fault| matches!(
        fault,
        JoineryFault::PanelFallsOut {
            panel: PanelKind::Plate,
            ..
        }
    )));
    design.body.lid = LidKind::Band { height: 18.0 };
    assert!(has(&design, |fault| matches!(
        fault,
        JoineryFault::BandCutsGroove { .. }
    )));
    design.body.lid = LidKind::Band { height: 100.0 };
    assert!(has(&design, |fault| matches!(
        fault,
        JoineryFault::BandTooHigh { .. }
    )));
}

type Spoil = fn(&mut Design);
type Is = fn(&JoineryFault) -> bool;

#[test]
fn what_cannot_be_built_is_named_and_the_remedy_mends_it() {
    let cases: [(Is, Spoil, Spoil); 7] = [
        (
            |fault| matches!(fault, JoineryFault::GrooveTooDeep { most, .. } if (most - 8.0).abs() < 1e-9),
            |d| d.body.groove = 9.0,
            |d| d.body.groove = 8.0,
        ),
        (
            |fault| matches!(fault, JoineryFault::ThinUnderFloor { least, .. } if *least == 3.0),
            |d| d.body.foot = 1.0,
            |d| d.body.foot = 3.0,
        ),
        (
            |fault| {
                matches!(
                    fault,
                    JoineryFault::PlateTooSmall { axis: Axis::X, wants, short, .. }
                        if *wants == 220.0 && *short == 2.0
                )
            },
            |d| d.plate.width = 218.0,
            |d| d.plate.width = 220.0,
        ),
        (
            |fault| matches!(fault, JoineryFault::PlateFarOut { axis: Axis::X, .. }),
            |d| d.plate.width = 260.0,
            |d| d.plate.width = 230.0,
        ),
        (
            |fault| matches!(fault, JoineryFault::HingesDoNotFit { most, .. } if *most == 80.0),
            |d| d.body.hinge.length = 90.0,
            |d| d.body.hinge.length = 80.0,
        ),
        (
            |fault| matches!(fault, JoineryFault::HingeTooWide { most, .. } if *most == 10.5),
            |d| d.body.hinge.leaf = 11.0,
            // it was 9: a leaf of 10 on an edge of 12, as small boxes have it, was said of every box
            |d| d.body.hinge.leaf = 10.5,
        ),
        (
            |fault| {
                matches!(
                    fault,
                    JoineryFault::DiscMeetsSide { dial: 0, short } if (short - 3.0).abs() < 1e-9
                )
            },
            |d| d.dials[0].centre.0 = -82.0,
            |d| d.dials[0].centre.0 = -79.0,
        ),
    ];
    assert!(!has(&plain(), |fault| matches!(
        fault,
        JoineryFault::HingeTooWide { .. }
    )));
    for (number, (is, spoil, mend)) in cases.into_iter().enumerate() {
        let mut design = plain();
        spoil(&mut design);
        let found = joinery(&design).faults;
        assert!(has(&design, is), "{number}: {found:?}");
        mend(&mut design);
        assert!(!has(&design, is), "{number} is not mended");
    }
}

#[test]
fn a_fault_says_how_bad_it_is_and_what_it_is_about() {
    let thin = |foot| JoineryFault::ThinUnderFloor { foot, least: 3.0 };
    assert_eq!(thin(1.0).severity(), Severity::Notice);
    assert_eq!(thin(0.0).severity(), Severity::Error);
    let wide = |leaf| JoineryFault::HingeTooWide {
        leaf,
        thickness: 12.0,
        most: 9.0,
    };
    assert_eq!(wide(11.0).severity(), Severity::Notice);
    assert_eq!(wide(12.5).severity(), Severity::Error);
    assert_eq!(thin(1.0).place(), Place::Body);
    let unknown = |panel| JoineryFault::PanelWoodUnknown { panel }.place();
    assert_eq!(unknown(PanelKind::Floor), Place::Body);
    assert_eq!(unknown(PanelKind::Plate), Place::Plate);
    let disc = JoineryFault::DiscMeetsSide {
        dial: 2,
        short: 1.0,
    };
    assert_eq!(disc.place(), Place::Dial(2));
}

#[test]
fn the_tab_gets_a_notch_where_it_meets_the_front() {
    let found = joinery(&plain());
    let notch = found.notch.unwrap();
    // edge 14, engagement 8: the tip stands 6 mm inside the front; 1 mm and 0.4 mm free before it
    assert!((notch.left_in_front - 4.6).abs() < 1e-9);
    // half a millimetre of air, a slider of 13, and a millimetre below it
    assert!((notch.depth - 14.5).abs() < 1e-9);
    assert!(notch.right - notch.left > 42.0);
    let mut design = plain();
    design.keeper.edge = 22.0;
    assert_eq!(joinery(&design).notch, None);
}

#[test]
fn nonsense_gets_a_finite_box_or_a_fault_and_never_a_panic() {
    let mut faulty = 0;
    for design in nonsense() {
        let found = joinery(&design);
        faulty += usize::from(!found.faults.is_empty());
        let words = format!("{found:?}");
        assert!(
            !words.contains("NaN") && !words.contains("inf,") && !words.contains(": inf"),
            "{words}"
        );
    }
    assert!(faulty > 100);
}
