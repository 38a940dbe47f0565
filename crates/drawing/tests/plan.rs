//! The plan and the section of real and of silly designs.

use latchwright_assembly::guide::guide;
use latchwright_assembly::keeper::keeper_screws;
use latchwright_drawing::{
    ContactMark, Drawing, Ink, Palette, PlanOptions, Shape, Subject, Text, dial_face, lid_card,
    plan, section, svg, trapezoids,
};
use latchwright_geometry::Point;
use latchwright_model::Pose;
use latchwright_model::{Design, Dial, KeeperMake, Labels, Slot, Units};
use latchwright_proof::StopsAt;

fn clear() -> PlanOptions {
    PlanOptions {
        passing: vec![true; 3],
        show_dimensions: true,
        ..PlanOptions::default()
    }
}

fn contact(dial: usize) -> ContactMark {
    ContactMark {
        dial,
        at: Point::new(0.0, -19.0),
        stops_at: StopsAt::Rim,
        label: "3.0 mm, then no further".to_owned(),
    }
}

fn words(drawing: &Drawing) -> Vec<&Text> {
    let words = drawing.items.iter().filter_map(|item| match &item.shape {
        Shape::Text(text) => Some(text),
        _ => None,
    });
    words.collect()
}

fn assert_no_words_overlap(drawing: &Drawing) {
    let words = words(drawing);
    for (index, a) in words.iter().enumerate() {
        for b in words.iter().skip(index + 1) {
            assert!(!a.overlaps(b), "{a:?}\nover\n{b:?}");
        }
    }
}

#[test]
fn nothing_lies_off_the_sheet() {
    let design = Design::default();
    for travel in [0.0, 3.0, 11.0] {
        let pose = Pose {
            travel,
            ..Pose::at_combination(&design)
        };
        let options = PlanOptions {
            contact: Some(contact(1)),
            focus: Some(0),
            ..clear()
        };
        for drawing in [
            plan(&design, &pose, &options),
            section(&design, &pose, 2, None),
        ] {
            assert!(drawing.items.len() > 20);
            for item in &drawing.items {
                assert!(drawing.bounds.holds(item.shape.extent()), "{item:?}");
            }
        }
    }
}

#[test]
fn no_words_on_the_lid_run_into_each_other() {
    for positions in [8, 12, 36, 360] {
        let mut design = Design::default();
        for dial in &mut design.dials {
            dial.positions = positions;
        }
        let pose = Pose::at_marks(&design, &[3, 5, 1]);
        for dial in 0..3 {
            let options = PlanOptions {
                contact: Some(contact(dial)),
                ..clear()
            };
            assert_no_words_overlap(&plan(&design, &pose, &options));
        }
    }
}

#[test]
fn words_as_labels_keep_to_their_own_dial() {
    let mut design = Design::default();
    for dial in &mut design.dials {
        let names = [
            "oak", "ash", "walnut", "cherry", "beech", "maple", "elm", "yew",
        ];
        dial.labels = Labels::Words(names.map(str::to_owned).to_vec());
    }
    assert_no_words_overlap(&lid_card(&design, &[0, 1, 2], true));
}

#[test]
fn solid_wood_shows_nothing_of_what_lies_below() {
    let design = Design::default();
    let solid = PlanOptions {
        veil: 1.0,
        ..PlanOptions::default()
    };
    let one = plan(&design, &Pose::at_combination(&design), &solid);
    // The same lid with another combination, pointers where they were.
    let other = Design {
        combination: vec![0, 1, 2],
        ..Design::default()
    };
    let two = plan(&other, &Pose::at_combination(&design), &solid);
    assert_eq!(svg(&one, &Palette::LIGHT), svg(&two, &Palette::LIGHT));
    assert!(
        one.items
            .iter()
            .all(|item| item.subject != Some(Subject::Slider))
    );
}

#[test]
fn what_lies_below_is_as_opaque_as_the_veil_is_thin() {
    let design = Design::default();
    let pose = Pose::at_combination(&design);
    let keeper = |veil| {
        let drawing = plan(
            &design,
            &pose,
            &PlanOptions {
                veil,
                ..PlanOptions::default()
            },
        );
        let found = drawing
            .items
            .iter()
            .find(|item| item.subject == Some(Subject::Keeper));
        found.map(|item| item.opacity)
    };
    assert_eq!(keeper(0.0), Some(1.0));
    assert_eq!(keeper(0.75), Some(0.25));
    assert_eq!(keeper(1.0), None);
}

#[test]
fn every_knob_can_be_picked_whatever_the_veil() {
    let design = Design::default();
    let pose = Pose::at_combination(&design);
    for veil in [0.0, 0.5, 1.0] {
        let drawing = plan(
            &design,
            &pose,
            &PlanOptions {
                veil,
                ..PlanOptions::default()
            },
        );
        let subjects: Vec<_> = drawing
            .items
            .iter()
            .filter_map(|item| item.subject)
            .collect();
        for dial in 0..3 {
            assert!(subjects.contains(&Subject::Dial(dial)));
        }
        assert!(subjects.contains(&Subject::Pull));
    }
}

#[test]
fn what_blocks_is_said_by_hatch_and_word_as_well_as_by_colour() {
    let design = Design::default();
    let pose = Pose {
        travel: 3.0,
        ..Pose::at_marks(&design, &[3, 5, 1])
    };
    let drawing = plan(
        &design,
        &pose,
        &PlanOptions {
            contact: Some(contact(1)),
            ..clear()
        },
    );
    let hatched = drawing.items.iter().any(|item| {
        item.line == Some(Ink::BlocksHatch)
            && matches!(&item.shape, Shape::Path { outlines } if outlines.len() > 3)
    });
    assert!(hatched);
    assert!(words(&drawing).iter().any(|text| text.text == "plain rim"));
}

#[test]
fn inches_are_drawn_in_inches() {
    let mut design = Design {
        units: Units::Inch,
        ..Design::default()
    };
    design.plate.width = 228.6;
    let drawing = plan(&design, &Pose::at_combination(&design), &clear());
    assert!(words(&drawing).iter().any(|text| text.text == "9 in"));
}

fn silly_designs() -> Vec<Design> {
    let mut all = vec![Design {
        dials: Vec::new(),
        combination: Vec::new(),
        ..Design::default()
    }];
    all.push(Design {
        dials: vec![Dial::default(); 1000],
        ..Design::default()
    });
    for size in [
        0.0,
        -5.0,
        1e-9,
        1e9,
        1e300,
        f64::MAX,
        f64::INFINITY,
        f64::NAN,
    ] {
        let mut design = Design::default();
        design.plate.width = size;
        design.plate.depth = size;
        design.plate.thickness = size;
        design.keeper.depth = size;
        design.keeper.thickness = size;
        design.slider.travel = size;
        design.slider.shank = size;
        design.tab.width = size;
        for dial in &mut design.dials {
            dial.positions = if size > 1e6 { u32::MAX } else { 0 };
            dial.disc.radius = size;
            dial.disc.thickness = size;
            dial.disc.slots = vec![
                Slot {
                    mark: i64::MIN,
                    width: size,
                    depth: size,
                    lead_in: size
                };
                9
            ];
            dial.pin.diameter = size;
            dial.bore.diameter = size;
            dial.knob.diameter = size;
            dial.knob.height = size;
            dial.key.apothem = size;
            dial.key.sides = 0;
        }
        all.push(design.clone());
        // The same slots in a disc of ordinary size.
        for dial in &mut design.dials {
            dial.disc.radius = 18.0;
            dial.knob.diameter = 36.0;
        }
        all.push(design);
    }
    all
}

#[test]
fn silly_designs_are_drawn_without_panic_or_endless_loop() {
    for design in silly_designs() {
        for turn in [0.0, 1e18, f64::NAN] {
            let count = design.dials.len();
            let pose = Pose {
                turns_deg: vec![turn; count],
                travel: turn,
            };
            let options = PlanOptions {
                veil: turn,
                contact: Some(contact(2)),
                focus: Some(7),
                ..clear()
            };
            let views = [
                plan(&design, &pose, &options),
                section(&design, &pose, 1, None),
                section(&design, &pose, 5000, None),
                dial_face(&design, 0, turn),
                lid_card(&design, &[u32::MAX, 9], true),
            ];
            for view in views {
                let text = svg(&view, &Palette::LIGHT);
                assert!(!text.contains("NaN") && !text.contains("inf\""));
                assert!(text.len() < 8_000_000, "{}", text.len());
                assert!(roxmltree::Document::parse(&text).is_ok());
            }
        }
    }
}

#[test]
fn every_filled_area_of_the_plan_can_be_cut_into_trapezoids() {
    let design = Design::default();
    let drawing = plan(&design, &Pose::at_combination(&design), &clear());
    let mut areas = 0;
    for item in drawing.items.iter().filter(|item| item.fill.is_some()) {
        if let Shape::Path { outlines } = &item.shape {
            assert!(!trapezoids(outlines, 0.05).is_empty(), "{item:?}");
            areas += 1;
        }
    }
    assert!(areas > 5);
}

#[test]
fn strips_bridges_and_screws_are_drawn_where_the_box_has_them() {
    let design = Design::default();
    let drawing = plan(&design, &Pose::at_combination(&design), &clear());
    let extents: Vec<_> = drawing
        .items
        .iter()
        .map(|item| item.shape.extent())
        .collect();
    let guide = guide(&design);
    let strips = guide.strips.iter().map(|strip| strip.area);
    let bridges = guide.bridges.iter().map(|bridge| bridge.area);
    for area in strips.chain(bridges) {
        assert!(extents.contains(&area), "{area:?}");
    }
    let keeper = keeper_screws(&design);
    let held = guide.screws.iter().map(|screw| screw.at);
    for at in held.chain(keeper.at.map(|(_, at)| at)) {
        let round = |item: &latchwright_drawing::Item| match item.shape {
            Shape::Circle { centre, .. } => centre == at,
            _ => false,
        };
        assert!(drawing.items.iter().any(round), "{at:?}");
    }
}

#[test]
fn a_printed_keeper_looks_like_a_print_in_plan_and_section() {
    let mut design = Design::default();
    let ink = |design: &Design| {
        let pose = Pose::at_combination(design);
        let shown = [
            plan(design, &pose, &clear()),
            section(design, &pose, 1, None),
        ];
        let wide = design.keeper.width;
        let deep = design.keeper.depth;
        shown.map(|drawing| {
            let is_keeper = |item: &&latchwright_drawing::Item| {
                let extent = item.shape.extent();
                item.fill.is_some()
                    && matches!(item.shape, Shape::Path { .. })
                    && ((extent.width() - wide).abs() < 1e-9
                        || (extent.width() - deep).abs() < 1e-9 && extent.min.y == 0.0)
            };
            drawing
                .items
                .iter()
                .find(is_keeper)
                .and_then(|item| item.fill)
        })
    };
    assert_eq!(ink(&design), [Some(Ink::Wood); 2]);
    design.keeper.make = KeeperMake::Printed;
    assert_eq!(ink(&design), [Some(Ink::Part); 2]);
}
