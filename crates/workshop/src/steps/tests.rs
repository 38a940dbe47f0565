//! The order of work: its settings against the box, its cautions, and nonsense.

use latchwright_model::{Corner, Design, LidKind, PinMake, Units};

use super::*;
use crate::holes::WoodPart;
use crate::nonsense::nonsense;

fn step<'a>(all: &'a [WorkStep], title: &str) -> &'a WorkStep {
    all.iter()
        .find(|step| step.title.contains(title))
        .unwrap_or_else(|| panic!("no step {title}"))
}

fn mm(step: &WorkStep, name: &str) -> f64 {
    let found = step
        .settings
        .iter()
        .find(|setting| setting.name.contains(name));
    match found.unwrap_or_else(|| panic!("no setting {name}")).value {
        Value::Mm(mm) | Value::Bare(mm) | Value::Bit(mm) | Value::Screw(mm) => mm,
        other => panic!("{name} is {other:?}"),
    }
}

/// The sentences of what is to do.
fn said(step: &WorkStep) -> Vec<&str> {
    let todo = step.todo.iter();
    todo.filter_map(|todo| match todo {
        Todo::Say(said) => Some(said.as_str()),
        Todo::Note(_) => None,
    })
    .collect()
}

fn band() -> Design {
    let mut design = Design::default();
    design.body.lid = LidKind::Band { height: 30.0 };
    design
}

#[test]
fn steps_are_numbered_and_only_a_band_is_cut_off() {
    let plain = steps(&Design::default());
    // cutting plate and small parts to size is a step of its own
    assert_eq!(plain.len(), 20);
    for (index, step) in plain.iter().enumerate() {
        assert_eq!(step.number as usize, index + 1);
    }
    let with_band = steps(&band());
    assert_eq!(with_band.len(), 21);
    let cut = step(&with_band, "Cut the lid off");
    assert_eq!(mm(cut, "one cut"), 3.2);
    assert!((mm(cut, "fence") - 29.9).abs() < 1e-9);
    let order = |title: &str| step(&with_band, title).number;
    assert!(
        order("Glue up") < order("Cut the lid off") && order("Cut the lid off") < order("hinges")
    );
}

#[test]
fn settings_are_those_of_the_box_without_its_coats() {
    let mut design = Design::default();
    design.workmanship.film = 0.25;
    let all = steps(&design);
    let ends = step(&all, "ends of the sides");
    assert_eq!(mm(ends, "front and back, to the long point"), 219.5);
    assert_eq!(mm(ends, "short point of front and back"), 196.5);
    assert_eq!(mm(ends, "left and right side, to the long point"), 139.5);
    assert_eq!(mm(step(&all, "grooves"), "fence to the floor"), 4.75);
    assert_eq!(mm(step(&all, "grooves"), "depth for the floor"), 4.75);
    let hinges = step(&all, "hinges");
    assert_eq!(mm(hinges, "depth, one leaf"), 1.25);
    assert_eq!(
        mm(hinges, "left hinge: from the left outside to its left"),
        29.75
    );
}

#[test]
fn both_diagonals_are_those_of_the_outside() {
    let mut design = Design::default();
    design.workmanship.film = 0.0;
    design.inside.width = 276.0;
    design.inside.depth = 201.0;
    // 300 by 225: three, four, five
    assert!((mm(step(&steps(&design), "dry"), "diagonals") - 375.0).abs() < 1e-9);
}

#[test]
fn bores_have_bit_and_speed_and_slots_begin_at_their_ends() {
    let all = steps(&Design::default());
    let bores = step(&all, "Bore the plate");
    let name = "bore, dials 1, 2 and 3: speed";
    let speed = bores.settings.iter().find(|setting| setting.name == name);
    // white oak, 14.3 mm
    assert_eq!(speed.unwrap().value, Value::Rpm(500, 750));
    for words in ["both ends before the middle", "scrap clamped tight behind"] {
        assert!(said(bores).iter().any(|text| text.contains(words)));
    }
    assert!(bores.sources.contains(&Source::DrillSpeeds));
}

#[test]
fn softwood_turns_faster_and_takes_smaller_pilots() {
    let mut design = Design::default();
    let hard = mm(step(&steps(&design), "Fit the keeper"), "pilot");
    for name in [&mut design.plate.wood, &mut design.body.wood] {
        "eastern white pine".clone_into(name);
    }
    let all = steps(&design);
    assert!(mm(step(&all, "Fit the keeper"), "pilot") < hard);
    let speed = step(&all, "Bore the plate")
        .settings
        .iter()
        .find(|setting| setting.name.starts_with("bore, dials") && setting.name.ends_with("speed"));
    assert_eq!(speed.unwrap().value, Value::Rpm(1500, 2400));
}

#[test]
fn every_step_that_can_hurt_says_how_not_to_be_hurt() {
    for design in [Design::default(), band()] {
        let all = steps(&design);
        for title in [
            "Rip",
            "ends of the sides",
            "grooves",
            "floor",
            "small parts",
        ] {
            let cautions = step(&all, title).cautions.join(" ");
            for words in [
                "Never trap an offcut",
                "uard",
                "dust",
                "manual and local rules",
            ] {
                assert!(cautions.contains(words), "{title}: {words}");
            }
        }
        for title in ["Bore the plate", "slider", "Fit the keeper", "hinges"] {
            let cautions = step(&all, title).cautions.join(" ");
            for words in [
                "Clamp the work",
                "arge bits turn slowly",
                "manual and local rules",
            ] {
                assert!(cautions.contains(words), "{title}: {words}");
            }
        }
        assert!(
            step(&all, "Finish")
                .cautions
                .join(" ")
                .contains("catch fire")
        );
        assert!(
            step(&all, "give it away")
                .cautions
                .join(" ")
                .contains("secrets, not valuables")
        );
    }
}

#[test]
fn narrow_strips_never_run_between_blade_and_fence() {
    let saw = |design: &Design| step(&steps(design), "Rip").cautions.join(" ");
    // the keeper's strip is narrow
    assert!(saw(&Design::default()).contains("A narrow strip must not run"));
}

#[test]
fn what_makers_forget_is_said() {
    let all = steps(&Design::default());
    let words = |title: &str| said(step(&all, title)).join(" ");
    for (title, wanted) in [
        ("Glue up", "middle of two opposite sides only"),
        ("Glue up", "tape inside"),
        ("Print", "small chamfer"),
        ("hinges", "score round it with a knife before you rout"),
        ("Finish", "First a thin sealing coat"),
        ("Finish", "over the inks"),
        ("Finish", "both faces of the plate the same coats"),
        ("combination", "does not tell it"),
    ] {
        assert!(words(title).contains(wanted), "{title}: {wanted}");
    }
    assert!(
        step(&all, "Rip")
            .cautions
            .join(" ")
            .contains("open side of the blade")
    );
}

#[test]
fn the_order_of_work_never_tells_the_combination() {
    let one = Design {
        combination: vec![3, 6, 1],
        ..Design::default()
    };
    let other = Design {
        combination: vec![0, 2, 5],
        ..Design::default()
    };
    assert_eq!(steps(&one), steps(&other));
}

#[test]
fn sentences_end_with_a_stop_and_every_step_has_a_source() {
    for corner in [Corner::Mitred, Corner::Butted, Corner::Rabbeted] {
        for lid in [LidKind::Plate, LidKind::Band { height: 30.0 }] {
            let mut design = Design::default();
            (design.body.corner, design.body.lid) = (corner, lid);
            design.bench.bits = vec![3.0];
            design.dials[0].pin.make = PinMake::Dowel;
            for step in steps(&design) {
                assert!(
                    !step.sources.is_empty() && !step.todo.is_empty(),
                    "{}",
                    step.title
                );
                let rest = step.fits.iter().chain(&step.cautions);
                for text in said(&step).into_iter().chain(rest.map(String::as_str)) {
                    assert!(text.ends_with('.') && !text.ends_with(".."), "{text}");
                    assert!(
                        !text.contains("  ") && text.chars().next().is_some_and(char::is_uppercase),
                        "{text}"
                    );
                }
            }
        }
    }
}

#[test]
fn what_is_to_be_known_of_holes_stands_in_the_step_of_their_part() {
    let mut design = Design::default();
    design.bench.bits = vec![2.0];
    let all = steps(&design);
    let mut seen = 0;
    for (title, part) in [
        ("Bore the plate", WoodPart::Plate),
        ("Make the slider", WoodPart::Slider),
        ("Fit the keeper", WoodPart::Keeper),
    ] {
        for todo in &step(&all, title).todo {
            if let Todo::Note(notes) = todo {
                assert!(notes.about.iter().all(|about| about.part() == part));
                seen += notes.about.len();
            }
        }
    }
    // three bores, three pins, the keeper's screws, the finger knob's slot and socket; the guide's pilots are bored with 2
    assert_eq!(seen, 9);
}

/// Where a step stands; every one of these is there.
fn order(design: &Design, titles: &[&str]) -> Vec<u32> {
    let all = steps(design);
    titles
        .iter()
        .map(|title| step(&all, title).number)
        .collect()
}

#[test]
fn what_a_step_needs_is_there_before_it() {
    let rising = |numbers: Vec<u32>| numbers.windows(2).all(|two| two[0] < two[1]);
    for design in [Design::default(), band()] {
        // prints before what is tried with them; the keeper after the hinges, on the closed box
        let made = [
            "small parts",
            "Print",
            "Bore the plate",
            "Set the guide",
            "hinges",
            "Fit the keeper",
        ];
        assert!(rising(order(&design, &made)));
        // a plate in a groove is bored and rabbeted before it is glued in
        let glued = ["Bore the plate", "rabbet over", "dry", "Glue up"];
        assert!(rising(order(&design, &glued)));
    }
}

#[test]
fn prints_stay_bare_unless_the_maker_coats_what_is_seen() {
    let mut design = Design::default();
    let words = |design: &Design| said(step(&steps(design), "Finish")).join(" ");
    assert!(words(&design).contains("Prints stay bare"));
    design.bench.coated_prints = true;
    assert!(words(&design).contains("coat only what is seen"));
}

#[test]
fn values_are_said_in_the_makers_unit() {
    let inch = Rule {
        units: Units::Inch,
        denominator: 32,
    };
    assert_eq!(Value::Mm(19.05).say(inch), "3/4 in");
    assert_eq!(Value::Bare(19.05).say(inch), "3/4 in bare");
    assert_eq!(Value::Bit(14.2875).say(inch), "9/16 in");
    assert_eq!(Value::Screw(19.05).say(inch), "No. 4 × 3/4 in");
    assert_eq!(Value::Rpm(500, 750).say(inch), "500 to 750 rpm");
    assert_eq!(Value::Rpm(250, 250).say(inch), "250 rpm");
    assert_eq!(Value::Degrees(45.0).say(inch), "45°");
    assert_eq!(Value::Percent(8.5).say(inch), "8.5 %");
}

#[test]
fn nonsense_gets_steps_with_finite_settings() {
    for design in nonsense().into_iter().step_by(5) {
        for step in steps(&design) {
            for setting in &step.settings {
                if let Value::Mm(value)
                | Value::Bare(value)
                | Value::Bit(value)
                | Value::Screw(value)
                | Value::Degrees(value)
                | Value::Percent(value) = setting.value
                {
                    assert!(value.is_finite(), "{}: {}", step.title, setting.name);
                }
            }
        }
    }
}
