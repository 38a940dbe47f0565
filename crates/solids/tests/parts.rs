//! What `parts` gives for the default latch, and what it refuses.

use core::f64::consts::PI;
use core::ops::ControlFlow;

use latchwright_geometry::Point;
use latchwright_model::{Design, PinMake};
use latchwright_solids::part::Kind;
use latchwright_solids::{
    Feature, Grip, MeshFault, Options, Part, PartFault, PartId, Region, Relief, SizeOption, Wall,
    Warning, parts, parts_with_tick,
};

fn made(design: &Design, options: &Options) -> Vec<Part> {
    parts(design, options).unwrap_or_else(|faults| panic!("{faults:?}"))
}

fn named<'a>(parts: &'a [Part], name: &str) -> &'a Part {
    parts
        .iter()
        .find(|part| part.name == name)
        .expect("a part of that name")
}

fn refused(design: &Design) -> Vec<PartFault> {
    let faults = parts(design, &Options::default()).expect_err("it cannot be made");
    for fault in &faults {
        assert!(!matches!(fault, PartFault::Mesh { .. }), "{fault:?}");
    }
    faults
}

fn of(kind: Kind, dial: usize) -> PartId {
    PartId {
        kind,
        dial: Some(dial),
    }
}

#[test]
fn the_default_latch_has_all_its_parts_with_the_right_handles() {
    let parts = made(&Design::default(), &Options::default());
    // a handle for each hole that goes through; blind holes make none
    for (name, genus) in [
        ("Disc 1", 1),
        ("Knob 1", 0),
        ("Ring 2", 1),
        ("Washer 3", 1),
        ("Slider knob", 0),
        ("Keeper", 2),
        ("Drilling jig", 3),
        ("Fit gauge", 5),
    ] {
        let part = named(&parts, name);
        assert_eq!((part.sound.shells, part.sound.genus), (1, genus), "{name}");
        assert_eq!(part.extent().low[2], 0.0, "{name} lies on the bed");
        assert!(part.sound.least_height > 5e-4, "{name}: {:?}", part.sound);
    }
    assert_eq!(parts.len(), 16);
}

#[test]
fn sizes_that_the_design_states_are_expected_in_the_end() {
    let design = Design::default();
    let parts = made(&design, &Options::default());
    let disc = named(&parts, "Disc 1");
    let size = |what: Feature| disc.sizes.iter().find(|size| size.what == what).unwrap();
    // 36 less two coats of 0.1 less 0.1 that the printer adds
    assert!((size(Feature::Disc).drawn - 35.7).abs() < 1e-9);
    assert!((size(Feature::Disc).expected - 36.0).abs() < 1e-9);
    assert!((disc.extent().size()[0] - 35.7).abs() < 1e-6);
    assert!((size(Feature::Slot(0)).drawn - 9.3).abs() < 1e-9);
    // clearance is told on each side and in total
    assert!((size(Feature::PostInStarPerSide).expected - 0.15).abs() < 1e-9);
    assert!((size(Feature::PostInStarTotal).expected - 0.30).abs() < 1e-9);
}

#[test]
fn a_washer_has_the_volume_of_its_ring_and_its_mass_in_filament() {
    let design = Design::default();
    let parts = made(&design, &Options::default());
    let washer = named(&parts, "Washer 1");
    let drawn = |what: Feature| {
        let found = washer.sizes.iter().find(|size| size.what == what);
        found.unwrap().drawn / 2.0
    };
    let foot = design.bench.printer.foot;
    let (inner, outer) = (
        drawn(Feature::WasherInside) + foot,
        drawn(Feature::WasherOutside) - foot,
    );
    let volume = PI * 0.4 * (outer * outer - inner * inner);
    assert!((washer.sound.volume / volume - 1.0).abs() < 0.002);
    assert!((washer.mass_g - washer.sound.volume * 1.24e-3).abs() < 1e-12);
    // 1 mm of filament of 1.75 mm is 2.405 mm³
    assert!((washer.filament_mm - washer.sound.volume / 2.405_282).abs() < 1e-4);
}

#[test]
fn a_recess_through_the_knob_is_named_with_the_height_that_would_do() {
    let mut design = Design::default();
    design.dials[1].knob.height = 5.0;
    let faults = refused(&design);
    assert_eq!(faults.len(), 1, "{faults:?}");
    let PartFault::RecessThrough {
        part,
        recess_mm,
        remedy_mm,
        ..
    } = &faults[0]
    else {
        panic!("{faults:?}");
    };
    assert_eq!(*part, of(Kind::Knob, 1));
    assert!((recess_mm - 4.0).abs() < 1e-9, "{faults:?}");
    design.dials[1].knob.height = *remedy_mm;
    made(&design, &Options::default());
}

#[test]
fn a_wall_thinner_than_two_lines_is_named_with_a_remedy_that_mends_it() {
    let mut design = Design::default();
    design.dials[0].knob.diameter = 13.5;
    let faults = refused(&design);
    let PartFault::NoWall {
        part,
        wall: Wall::Star { knob_mm },
        ..
    } = faults[0]
    else {
        panic!("{faults:?}");
    };
    assert_eq!(part, of(Kind::Knob, 0));
    design.dials[0].knob.diameter = knob_mm;
    made(&design, &Options::default());
    let mut design = Design::default();
    design.dials[2].bore.diameter = 10.0;
    let faults = refused(&design);
    let PartFault::NoWall {
        part,
        wall: Wall::Shoulder { bore_mm },
        ..
    } = faults[0]
    else {
        panic!("{faults:?}");
    };
    assert_eq!(part, of(Kind::Disc, 2));
    design.dials[2].bore.diameter = bore_mm;
    made(&design, &Options::default());
}

#[test]
fn a_jig_says_where_its_notch_goes_as_the_plate_is_seen_from_outside() {
    let mut design = Design::default();
    let notches = |design: &Design| -> Vec<f64> {
        let parts = made(design, &Options::default());
        let jigs = parts.iter().filter(|part| part.kind == Kind::Jig);
        let warnings = jigs.flat_map(|jig| &jig.warnings);
        let notch = |warning: &Warning| match warning {
            Warning::UseOfJig { notch } => Some(*notch),
            _ => None,
        };
        warnings.filter_map(notch).collect()
    };
    assert_eq!(notches(&design), [0.0]);
    // a jig for each dial, where one for all is wider than the bed
    design.bench.printer.bed = (100.0, 110.0);
    let each: Vec<f64> = design.dials.iter().map(|dial| dial.centre.0).collect();
    assert_eq!(notches(&design), each);
    assert!(each.iter().any(|x| *x < 0.0) && each.iter().any(|x| *x > 0.0));
}

#[test]
fn a_part_larger_than_the_bed_is_named() {
    let mut design = Design::default();
    design.bench.printer.bed = (50.0, 50.0);
    let larger = |design: &Design, wanted: PartId| {
        let found = refused(design).into_iter().find_map(|fault| match fault {
            PartFault::LargerThanBed {
                part,
                size_mm,
                bed_mm,
            } if part == wanted => Some((size_mm, bed_mm)),
            _ => None,
        });
        found.unwrap_or_else(|| panic!("{wanted:?} goes on the bed"))
    };
    let (size, bed) = larger(&design, of(Kind::Ring, 0));
    assert!((size[0] - 53.7).abs() < 0.05, "{size:?}");
    assert_eq!(bed[..2], [50.0, 50.0]);
    design = Design::default();
    design.bench.printer.height = 20.0;
    let (size, bed) = larger(&design, of(Kind::Disc, 0));
    assert!(size[2] > 20.0 && bed[2] == 20.0);
}

#[test]
fn a_jig_larger_than_the_bed_becomes_one_a_dial() {
    let mut design = Design::default();
    design.bench.printer.bed = (120.0, 120.0);
    let parts = made(&design, &Options::default());
    let jigs = parts.iter().filter(|part| part.kind == Kind::Jig).count();
    assert_eq!(jigs, 3);
}

#[test]
fn options_out_of_range_and_faults_of_the_design_come_before_any_part() {
    let options = Options {
        chamfer: f64::NAN,
        ..Options::default()
    };
    let faults = parts(&Design::default(), &options).unwrap_err();
    assert!(matches!(
        faults[..],
        [PartFault::Option {
            which: SizeOption::Chamfer,
            ..
        }]
    ));
    let mut design = Design::default();
    design.dials[0].disc.radius = f64::INFINITY;
    let faults = parts(&design, &Options::default()).unwrap_err();
    assert!(
        faults
            .iter()
            .all(|fault| matches!(fault, PartFault::Design(_)))
    );
}

#[test]
fn a_slender_standing_pin_is_warned_of_and_a_lying_one_is_not() {
    let mut design = Design::default();
    design.dials[0].pin.make = PinMake::PrintedStanding;
    design.dials[0].pin.diameter = 2.5;
    design.dials[0].pin.free = 5.5;
    design.dials[1].pin.make = PinMake::PrintedLying;
    let parts = made(&design, &Options::default());
    let [
        Warning::StandingPin {
            dial: None,
            free,
            diameter,
            ..
        },
    ] = named(&parts, "Pin 1").warnings[..]
    else {
        panic!("{:?}", named(&parts, "Pin 1").warnings);
    };
    assert_eq!((free, diameter), (5.5, 2.5));
    let lying = &named(&parts, "Pin 2").warnings;
    assert!(
        matches!(lying[..], [Warning::FlatBehind { .. }]),
        "{lying:?}"
    );
    assert!(
        parts.iter().all(|part| part.name != "Pin 3"),
        "steel is not printed"
    );
    // lying: as high as its flat leaves it, as long as the design says less its coats
    let size = named(&parts, "Pin 2").extent().size();
    assert!((size[1] - 5.8).abs() < 1e-6, "{size:?}");
}

#[test]
fn every_grip_and_both_reliefs_can_be_made() {
    for grip in [Grip::Fluted, Grip::Lobed, Grip::Faceted, Grip::Plain] {
        for relief in [Relief::Raised, Relief::Sunk] {
            let options = Options {
                grip,
                relief,
                ..Options::default()
            };
            let parts = made(&Design::default(), &options);
            let knob = named(&parts, "Knob 1");
            let height = knob.extent().size()[2];
            let ground = knob.colour_change.unwrap();
            assert_eq!(
                relief == Relief::Raised,
                ground < height - 0.1 && height > 14.0
            );
        }
    }
}

#[test]
fn outlines_of_any_script_become_labels() {
    // a drop with a hole, as a font would hand it in: y up, 1000 units high
    let outline = latchwright_solids::Outline::circle(Point::default(), 500.0);
    let hole = latchwright_solids::Outline::circle(Point::default(), 250.0).reversed();
    let glyph = Region::wound(vec![outline, hole]);
    let options = Options {
        labels: vec![vec![glyph; 8]],
        ..Options::default()
    };
    let parts = made(&Design::default(), &options);
    let (own, plain) = (named(&parts, "Ring 1"), named(&parts, "Ring 2"));
    assert!(own.warnings.is_empty(), "{:?}", own.warnings);
    assert_ne!(own.mesh, plain.mesh);
}

#[test]
fn words_without_outlines_are_left_bare_and_said_so() {
    let mut design = Design::default();
    design.dials[0].labels = latchwright_model::Labels::Words(vec!["茶".to_owned(); 8]);
    let parts = made(&design, &Options::default());
    let ring = named(&parts, "Ring 1");
    let bare = Warning::BareMarks { bare: 8, marks: 8 };
    assert_eq!(ring.warnings[0], bare);
}

#[test]
fn a_ring_without_room_is_told_of_on_its_knob() {
    let mut design = Design::default();
    for (dial, x) in design.dials.iter_mut().zip([-41.0, 0.0, 41.0]) {
        dial.centre.0 = x;
    }
    let parts = made(&design, &Options::default());
    assert!(parts.iter().all(|part| part.kind != Kind::Ring));
    for name in ["Knob 1", "Knob 2", "Knob 3"] {
        let warnings = &named(&parts, name).warnings;
        assert_eq!(warnings[..], [Warning::NoRing { least: 2.5 }]);
    }
}

#[test]
fn no_size_however_odd_brings_it_down() {
    let sizes = [0.001, 0.4, 3.0, 17.0, 400.0, 5000.0];
    for one in sizes {
        for two in sizes {
            let mut design = Design::default();
            design.dials.truncate(1);
            let dial = &mut design.dials[0];
            dial.knob.diameter = one;
            dial.knob.height = two;
            dial.disc.radius = two;
            dial.key.apothem = one / 5.0;
            dial.pin.make = PinMake::PrintedStanding;
            dial.pin.diameter = one / 3.0;
            design.keeper.width = one;
            design.slider.shank = two;
            if let Err(faults) = parts(&design, &Options::default()) {
                for fault in faults {
                    assert!(
                        !matches!(&fault, PartFault::Mesh { fault, .. }
                            if *fault != MeshFault::NoVolume { volume_mm3: 0.0 }),
                        "{one} {two}: {fault:?}"
                    );
                }
            }
        }
    }
}

#[test]
fn parts_that_tell_how_far_they_are_are_the_same_and_stop_before_any_of_them() {
    let (design, options) = (Design::default(), Options::default());
    let mut told = Vec::new();
    let made = parts_with_tick(&design, &options, &mut |done| {
        told.push(done);
        ControlFlow::<()>::Continue(())
    });
    assert_eq!(made.continue_value(), Some(parts(&design, &options)));
    assert!(told.is_sorted() && told.iter().all(|done| (0.0..=1.0).contains(done)));
    for stop_at in [1, 2, told.len() / 2, told.len()] {
        let mut asked = 0;
        let stopped = parts_with_tick(&design, &options, &mut |_| {
            asked += 1;
            if asked < stop_at {
                ControlFlow::Continue(())
            } else {
                ControlFlow::Break(asked)
            }
        });
        assert_eq!(stopped.break_value(), Some(stop_at));
    }
}
