//! The printed slider and the pin strip stand where the plan says.

use latchwright_assembly::slider_body::{finger_top, finger_width};
use latchwright_drawing::{slider_crossbar, slider_outline};
use latchwright_geometry::Point;
use latchwright_model::{Design, Material, PinMake};
use latchwright_solids::part::Kind;
use latchwright_solids::slice::section;
use latchwright_solids::{Options, Outline, Part, PartFault, Region, Wall, Warning, parts};

fn printed(make: PinMake) -> Design {
    let mut design = Design::default();
    design.slider.material = Material::Printed;
    for dial in &mut design.dials {
        dial.pin.make = make;
    }
    design
}

fn made(design: &Design, options: &Options) -> Vec<Part> {
    parts(design, options).unwrap_or_else(|faults| panic!("{faults:?}"))
}

fn named<'a>(parts: &'a [Part], name: &str) -> &'a Part {
    let found = parts.iter().find(|part| part.name == name);
    found.unwrap_or_else(|| panic!("no {name}"))
}

/// Middle and half the width of an outline.
fn round(outline: &Outline) -> (Point, f64) {
    let (low, high) = outline.bounds().expect("points");
    ((low + high) * 0.5, (high.x - low.x) / 2.0)
}

#[test]
fn a_printed_slider_is_the_plans_outline_with_its_pins_on_it() {
    let design = printed(PinMake::PrintedStanding);
    let parts = made(&design, &Options::default());
    let slider = named(&parts, "Slider");
    assert_eq!(slider.kind, Kind::Slider);
    // the screw under the finger knob's shank goes right through
    assert_eq!((slider.sound.shells, slider.sound.genus), (1, 1));
    let drawn = slider_outline(&design, 0.0).flatten(0.001);
    let growth = design.bench.printer.outside / 2.0;
    let wanted = Region::from(Outline::new(drawn)).inset(growth).unwrap();
    // below the fingers' upper side, above the chamfer and the screw's head: less the screw's hole
    let cut = section(&slider.mesh, 3.0);
    let hole = cut.outlines().iter().find(|o| o.signed_area() < 0.0);
    let hole = hole.expect("a screw hole").signed_area();
    let off = cut.area() - hole - wanted.area();
    assert!(off.abs() < 0.003 * wanted.area(), "{off}");
    for point in cut.outlines()[0].points() {
        assert!(wanted.distance(*point) < 0.03, "{point:?}");
    }
    // no pin is printed a second time
    assert!(parts.iter().all(|part| part.kind != Kind::Pin));
}

#[test]
fn the_pins_of_a_printed_slider_stand_where_the_solver_takes_them_to_be() {
    let design = printed(PinMake::PrintedStanding);
    let parts = made(&design, &Options::default());
    let slider = named(&parts, "Slider");
    let top = slider.extent().high[2];
    let pose = slider.assembled.expect("a place in the lid");
    // its upper face and the pins' ends lie as far below the plate as the design says,
    let face = pose.of([0.0, 0.0, top])[2];
    assert!((face + design.slider.below).abs() < 1e-9, "{face}");
    let cut = section(&slider.mesh, top - 1.0);
    let pins: Vec<(Point, f64)> = cut
        .outlines()
        .iter()
        .filter(|outline| outline.signed_area() > 0.0)
        .map(round)
        .filter(|(_, radius)| *radius < 3.0)
        .collect();
    assert_eq!(pins.len(), design.dials.len());
    for dial in &design.dials {
        let (x, y) = dial.pin_at();
        let at = Point::new(x, y);
        let pin = pins.iter().find(|(middle, _)| middle.distance(at) < 1e-3);
        let (_, radius) = pin.unwrap_or_else(|| panic!("{at:?} in {pins:?}"));
        // a pin of 4 less 0.1 that the printer adds
        assert!((2.0 * radius - 3.9).abs() < 1e-3, "{radius}");
    }
}

/// Fingers as wide as their pins had no material beside the socket; what was put round it hung below the discs' edge.
#[test]
fn fingers_run_below_the_discs_with_material_all_round_their_pins() {
    for make in [
        PinMake::Steel,
        PinMake::PrintedStanding,
        PinMake::PrintedLying,
    ] {
        let design = printed(make);
        let parts = made(&design, &Options::default());
        let slider = named(&parts, "Slider");
        let pose = slider.assembled.expect("a place in the lid");
        let bed = pose.of([0.0; 3])[2];
        for dial in &design.dials {
            let (x, y) = dial.pin_at();
            let at = Point::new(x, y);
            let top = -finger_top(&design, dial) - bed;
            let disc = -dial.disc.below - dial.disc.thickness - bed;
            assert!(top < disc - 0.5, "{top} {disc}");
            // beside and beyond the pin as much as the design says, less what the printer adds
            let wide = finger_width(&dial.pin) / 2.0 - 0.1;
            let low = section(&slider.mesh, top - 0.3);
            for out in [
                Point::new(wide, 0.0),
                Point::new(-wide, 0.0),
                Point::new(0.0, wide),
                Point::new(2.5, 0.0),
            ] {
                assert!(low.contains(at + out), "{make:?} {out:?}");
            }
            // in the layer of the discs there is nothing but the pin
            let high = section(&slider.mesh, disc + 0.1);
            let own = make == PinMake::PrintedStanding;
            assert_eq!(high.contains(at), own);
            let rim = Point::new(0.0, 3.0);
            assert!(!high.contains(at + rim) && !high.contains(at - rim));
            assert_eq!(low.contains(at), own, "a socket goes right through");
        }
    }
}

#[test]
fn rods_are_as_long_as_the_cut_list_says() {
    let mut design = printed(PinMake::Steel);
    design.dials[1].pin.make = PinMake::PrintedLying;
    let parts = made(&design, &Options::default());
    let slider = named(&parts, "Slider");
    assert!(slider.warnings.contains(&Warning::PinSetIn {
        make: PinMake::Steel,
        dial: 0,
        long: design.dials[0].pin.height,
    }));
    let long = named(&parts, "Pin 2").extent().size()[1];
    assert!((long - design.dials[1].pin.height).abs() < 1e-6, "{long}");
}

#[test]
fn a_rod_shorter_than_the_slider_is_thick_has_a_blind_socket_and_stands_level_with_its_upper_face()
{
    let mut design = printed(PinMake::Steel);
    design.slider.thickness = 15.0;
    let parts = made(&design, &Options::default());
    let slider = named(&parts, "Slider");
    let (x, y) = design.dials[0].pin_at();
    let at = Point::new(x, y);
    // 15 less a rod of 13
    assert!(section(&slider.mesh, 1.9).contains(at));
    assert!(!section(&slider.mesh, 2.1).contains(at));
}

/// The fillets at a finger's root stood up beside the bar as high as the discs.
#[test]
fn nothing_of_the_slider_stands_beyond_its_bar_in_the_layer_of_the_discs() {
    let design = printed(PinMake::PrintedStanding);
    let parts = made(&design, &Options::default());
    let slider = named(&parts, "Slider");
    let cut = section(&slider.mesh, slider.extent().high[2] - 2.0);
    let bar = slider_crossbar(&design, 0.0).max.y;
    for outline in cut.outlines() {
        let (low, high) = outline.bounds().unwrap();
        assert!(high.y < bar || low.y > bar + 2.0, "{low:?} {high:?}");
    }
}

#[test]
fn a_slender_pin_of_a_printed_slider_is_warned_of_with_what_to_do() {
    let mut design = printed(PinMake::PrintedStanding);
    design.dials[1].pin.diameter = 2.5;
    design.dials[1].pin.free = 5.5;
    let parts = made(&design, &Options::default());
    let warnings = &named(&parts, "Slider").warnings;
    let pin = Warning::StandingPin {
        dial: Some(1),
        free: 5.5,
        diameter: 2.5,
        most_diameters: 2.0,
    };
    assert_eq!(warnings[..], [pin]);
}

#[test]
fn a_strip_carries_all_standing_pins_of_a_wooden_slider() {
    let mut design = Design::default();
    for dial in &mut design.dials {
        dial.pin.make = PinMake::PrintedStanding;
    }
    let options = Options {
        pin_strip: true,
        ..Options::default()
    };
    let parts = made(&design, &options);
    let pins: Vec<&Part> = parts.iter().filter(|part| part.kind == Kind::Pin).collect();
    assert_eq!(pins.len(), 1);
    let strip = pins[0];
    assert_eq!(strip.name, "Pin strip");
    assert_eq!(strip.sound.shells, 1);
    // a handle a screw: 124 − 16 of length, no further apart than 60
    assert_eq!(strip.sound.genus, 3);
    // and none runs into a finger
    for hole in section(&strip.mesh, 3.0)
        .outlines()
        .iter()
        .filter(|o| o.signed_area() < 0.0)
    {
        for dial in &design.dials {
            assert!((round(hole).0.x - dial.centre.0).abs() > 6.0);
        }
    }
    let top = strip.extent().high[2];
    let cut = section(&strip.mesh, top - 1.0);
    assert_eq!(cut.outlines().len(), 3);
    for dial in &design.dials {
        let (x, y) = dial.pin_at();
        let at = |outline: &Outline| round(outline).0.distance(Point::new(x, y)) < 1e-3;
        assert!(cut.outlines().iter().any(at));
    }
    let options = Options::default();
    assert_eq!(
        made(&design, &options)
            .iter()
            .filter(|part| part.kind == Kind::Pin)
            .count(),
        3
    );
}

/// Whether a fault is the one that is meant.
type Is = fn(&PartFault) -> bool;

#[test]
fn a_slider_that_cannot_be_printed_is_named_with_what_to_do() {
    let mut large = printed(PinMake::PrintedStanding);
    large.bench.printer.bed = (110.0, 100.0);
    let mut crowded = printed(PinMake::PrintedStanding);
    crowded.dials[1].pin.offset = -53.0;
    let mut astray = printed(PinMake::PrintedStanding);
    astray.slider.pull_at = 45.0;
    let cases: [(Design, Is); 3] = [
        (
            large,
            |fault| matches!(fault, PartFault::LargerThanBed { part, .. } if part.kind == Kind::Slider),
        ),
        (crowded, |fault| matches!(fault, PartFault::NoFinger { .. })),
        (astray, |fault| {
            matches!(
                fault,
                PartFault::NoWall {
                    wall: Wall::Shank { further_mm },
                    ..
                } if *further_mm > 0.0
            )
        }),
    ];
    for (number, (design, is)) in cases.into_iter().enumerate() {
        let faults = parts(&design, &Options::default()).expect_err("it cannot be made");
        assert!(faults.iter().any(is), "{number}: {faults:?}");
    }
}
