//! Stack, strength, racking, shaking, feel, enclosed room, small parts and the key: a planted design
//! fails each check, and the number that its remedy tells makes it pass.

#[path = "../../../tests/src/thin_latch.rs"]
mod thin_latch;

use latchwright_model::{Design, Dial, Disc, Grain, Material, Pin, PinMake, Season, Slot};
use latchwright_proof::CheckKind;
use latchwright_proof::check::advice::{Estimate, LoosePart, Nothing, Warning};
use latchwright_proof::check::{Advice, ROOM_LITRES, ROOM_SIZE, arm_limit, of_kind, shaken_margin};
use latchwright_proof::contact::{PinPath, reach};
use latchwright_proof::{Check, CheckVerdict, Verdict, prove};
use thin_latch::thin;

fn check(design: &Design, kind: CheckKind, dial: Option<usize>) -> Check {
    let proof = prove(design);
    of_kind(&proof, kind, dial)
        .unwrap_or_else(|| panic!("no check {kind:?}: {:?}", proof.faults))
        .clone()
}

/// The sizes that an advice would have, mm.
fn lengths(advice: &Advice) -> Vec<f64> {
    let Advice::Change(estimate) = advice else {
        panic!("{advice:?} is no change");
    };
    match estimate {
        Estimate::LengthenPin(size)
        | Estimate::LowerDisc(size)
        | Estimate::LowerSlider(size)
        | Estimate::MoreRoomBelow(size)
        | Estimate::DeepenRabbet(size)
        | Estimate::ThickerPlate(size)
        | Estimate::LowerFinger(size)
        | Estimate::ShorterFreePin(size)
        | Estimate::ThickerPin(size)
        | Estimate::ThickerSlider(size) => vec![size.to],
        Estimate::LongerGuide { guide, aside } => vec![guide.to, aside.to],
        other => panic!("{other:?}"),
    }
}

/// Fails as planted, has the size that mends it among its own, and passes once that is done. What is
/// told to a hundredth may be short by half of one.
fn mended(
    kind: CheckKind,
    dial: Option<usize>,
    plant: impl Fn(&mut Design),
    mend: impl Fn(&mut Design, f64),
) {
    let mut design = thin();
    assert_eq!(
        check(&design, kind, dial).verdict,
        CheckVerdict::Passes,
        "{kind:?} passes in the usual box"
    );
    plant(&mut design);
    let failing = check(&design, kind, dial);
    assert_eq!(
        failing.verdict,
        CheckVerdict::Fails,
        "{kind:?}: {failing:#?}"
    );
    let told = lengths(&failing.advice);
    let does = |number: f64| {
        let mut changed = design.clone();
        mend(&mut changed, number);
        check(&changed, kind, dial).margin >= -0.005
    };
    let least = told.iter().copied().find(|number| does(*number));
    let least = least.unwrap_or_else(|| panic!("{kind:?}: {:?}", failing.advice));
    assert!(least > 0.0, "{:?}", failing.advice);
}

#[test]
fn each_check_through_the_thickness_fails_where_it_should_and_its_number_mends_it() {
    mended(
        CheckKind::PinMeetsDisc,
        Some(1),
        |design| design.dials[1].pin.height = 4.0,
        |design, to| design.dials[1].pin.height = to,
    );
    mended(
        CheckKind::DiscToPlate,
        Some(2),
        |design| design.dials[2].disc.below = 0.1,
        |design, to| design.dials[2].disc.below = to,
    );
    mended(
        CheckKind::SliderToPlate,
        None,
        |design| design.slider.below = 0.2,
        |design, to| design.slider.below = to,
    );
    mended(
        CheckKind::TabToKeeper,
        None,
        |design| design.slider.below = 0.35,
        |design, to| design.slider.below = to,
    );
    mended(
        CheckKind::RoomBelow,
        None,
        |design| design.plate.room = 8.0,
        |design, to| design.plate.room = to,
    );
    mended(
        CheckKind::LidCloses,
        None,
        |design| design.plate.rabbet = 6.0,
        |design, to| design.plate.rabbet = to,
    );
    mended(
        CheckKind::RabbetRoof,
        None,
        |design| design.plate.thickness = 10.0,
        |design, to| design.plate.thickness = to,
    );
}

#[test]
fn a_disc_that_hangs_out_of_its_pins_height_is_met_by_less() {
    let mut design = thin();
    design.dials[0].disc.below = 3.5;
    let found = check(&design, CheckKind::PinMeetsDisc, Some(0));
    assert_eq!(found.verdict, CheckVerdict::Fails);
    // 3 mm of 6 meet when nothing is off
    let off = 0.15 + 2.0 * 0.05;
    // worst: disc lower by 0.25, pin higher and shorter by 0.25 each, disc thicker by 0.25
    let worst = 3.0 - 3.0 * off - 2.0 / 3.0 * off;
    assert!((found.value - worst).abs() < 1e-9, "{}", found.value);
}

#[test]
fn pin_and_tab_that_break_are_found_and_their_numbers_mend_them() {
    mended(
        CheckKind::PinStrength,
        Some(0),
        |design| design.dials[0].pin.make = PinMake::PrintedStanding,
        |design, to| design.dials[0].pin.diameter = to,
    );
    mended(
        CheckKind::PinStrength,
        Some(0),
        |design| design.dials[0].pin.free = 12.0,
        |design, to| design.dials[0].pin.free = to,
    );
    mended(
        CheckKind::TabStrength,
        None,
        |design| design.slider.thickness = 4.0,
        |design, to| design.slider.thickness = to,
    );
}

#[test]
fn a_pin_printed_standing_bears_half_of_one_printed_lying() {
    let borne = |make| {
        let mut design = thin();
        design.dials[0].pin.make = make;
        check(&design, CheckKind::PinStrength, Some(0)).value
    };
    assert_eq!(borne(PinMake::PrintedLying), 20.0);
    assert_eq!(borne(PinMake::PrintedStanding), 10.0);
    assert!(borne(PinMake::Steel) > borne(PinMake::Dowel));
}

#[test]
fn grain_along_the_tab_carries_what_breaks_it_across() {
    let mut design = thin();
    design.slider.thickness = 4.0;
    let across = check(&design, CheckKind::TabStrength, None);
    if let Material::Wood { grain, .. } = &mut design.slider.material {
        *grain = Grain::AlongY;
    }
    let along = check(&design, CheckKind::TabStrength, None);
    assert_eq!(across.verdict, CheckVerdict::Fails);
    assert_eq!(along.verdict, CheckVerdict::Passes);
}

#[test]
fn a_pull_beside_the_guide_jams_where_the_bearing_makers_say() {
    for (friction, limit) in [(0.25, 2.0), (0.35, 1.4286), (0.5, 1.0)] {
        assert!((arm_limit(friction) - limit).abs() < 5e-5);
    }
    mended(
        CheckKind::Racking,
        None,
        |design| design.slider.pull_at = 70.0,
        |design, to| design.slider.guide_length = to,
    );
    mended(
        CheckKind::Racking,
        None,
        |design| design.slider.pull_at = 70.0,
        |design, to| design.slider.pull_at = to,
    );
}

#[test]
fn a_knock_moves_a_locked_box_only_as_far_as_its_creep() {
    let proof = prove(&thin());
    let least = proof
        .dials
        .iter()
        .flat_map(|dial| &dial.marks)
        .filter_map(|mark| mark.hold_margin)
        .fold(f64::INFINITY, f64::min);
    assert_eq!(shaken_margin(&proof.dials), Some(least));
    // a dial that holds at every mark holds in every setting, however little the others do
    let mut always = proof.dials.clone();
    for mark in &mut always[0].marks {
        mark.verdict = Verdict::Holds;
        mark.hold_margin = Some(3.0);
    }
    assert_eq!(shaken_margin(&always), Some(3.0));
    let mut unsure = thin();
    for dial in &mut unsure.dials {
        dial.positions = 16;
    }
    let found = check(&unsure, CheckKind::Shaken, None);
    assert_eq!(found.verdict, CheckVerdict::Unsure, "{found:?}");
}

#[test]
fn feel_informs_and_never_fails() {
    let found = check(&thin(), CheckKind::ByFeel, None);
    assert_eq!(found.verdict, CheckVerdict::Passes);
    assert_eq!(found.value, 24.0);
    let mut told_apart = thin();
    told_apart.dials[0].pin.gap = 1.6;
    told_apart.dials[1].pin.gap = 1.9;
    let found = check(&told_apart, CheckKind::ByFeel, None);
    let Advice::Nothing(Nothing::MovesOn { by }) = found.advice else {
        panic!("{:?}", found.advice);
    };
    assert!((by - 0.3).abs() < 1e-9, "{by}");
}

#[test]
fn a_room_in_which_a_child_could_be_shut_is_refused_where_children_are() {
    let mut design = thin();
    (
        design.inside.width,
        design.inside.depth,
        design.inside.height,
    ) = (300.0, 200.0, 150.0);
    design.card.youngest = 4;
    assert_eq!(
        check(&design, CheckKind::EnclosedSpace, None).verdict,
        CheckVerdict::Passes
    );
    (
        design.inside.width,
        design.inside.depth,
        design.inside.height,
    ) = (500.0, 400.0, 300.0);
    let found = check(&design, CheckKind::EnclosedSpace, None);
    assert_eq!(found.verdict, CheckVerdict::Fails);
    assert!(matches!(
        found.advice,
        Advice::Warning(Warning::ChildCouldBeShutIn(_))
    ));
    assert_eq!((ROOM_SIZE, ROOM_LITRES), (150.0, 30.0));
    assert!(!prove(&design).proven);
    design.inside.height = 149.0;
    assert_eq!(
        check(&design, CheckKind::EnclosedSpace, None).verdict,
        CheckVerdict::Passes
    );
    design.inside.height = 300.0;
    design.card.youngest = 14;
    let told = check(&design, CheckKind::EnclosedSpace, None);
    assert_eq!(told.verdict, CheckVerdict::Passes);
    assert!(matches!(
        told.advice,
        Advice::Nothing(Nothing::ForGrownPeople(_))
    ));
}

#[test]
fn small_parts_that_come_off_are_refused_under_three() {
    let mut design = thin();
    design.card.youngest = 2;
    let found = check(&design, CheckKind::SmallParts, None);
    assert_eq!((found.verdict, found.value), (CheckVerdict::Fails, -3.0));
    for dial in &mut design.dials {
        dial.pin.make = PinMake::PrintedLying;
    }
    assert_eq!(
        check(&design, CheckKind::SmallParts, None).verdict,
        CheckVerdict::Passes
    );
    design.dials[1].knob.diameter = 30.0;
    let found = check(&design, CheckKind::SmallParts, None);
    assert_eq!(found.verdict, CheckVerdict::Fails);
    let knob = vec![LoosePart::Knob(1)];
    assert_eq!(
        found.advice,
        Advice::Warning(Warning::CanBeSwallowed(knob.clone()))
    );
    design.card.youngest = 3;
    let told = check(&design, CheckKind::SmallParts, None);
    assert_eq!(told.verdict, CheckVerdict::Passes);
    assert_eq!(
        told.advice,
        Advice::Nothing(Nothing::SmallPartsAtThisAge(knob))
    );
}

#[test]
fn ten_marks_on_a_square_post_are_refused() {
    let mut design = thin();
    design.dials[0].positions = 10;
    let found = check(&design, CheckKind::KeySeats, Some(0));
    assert_eq!(found.verdict, CheckVerdict::Fails);
    assert_eq!(
        found.advice,
        Advice::Change(Estimate::OtherPositions {
            positions: 10,
            fewer: Some(8),
            more: 12
        })
    );
}

#[test]
fn a_disc_that_never_reaches_its_pin_is_idle() {
    let mut design = thin();
    design.dials[2].pin.gap = 8.5;
    let found = check(&design, CheckKind::IdleDial, Some(2));
    assert_eq!(found.verdict, CheckVerdict::Fails);
    let (gap, travel) = (8.5, design.slider.travel);
    assert_eq!(
        found.advice,
        Advice::Change(Estimate::GapBelowTravel { gap, travel })
    );
}

/// A disc of radius 15 with one plain slot of 8 under a pin of 6.
fn narrow() -> Dial {
    let slot = Slot {
        mark: 0,
        width: 8.0,
        depth: 9.0,
        lead_in: 0.0,
    };
    Dial {
        disc: Disc {
            radius: 15.0,
            slots: vec![slot],
            ..Disc::default()
        },
        pin: Pin {
            diameter: 6.0,
            gap: 1.5,
            ..Pin::default()
        },
        ..Dial::default()
    }
}

#[test]
fn a_slot_of_eight_lets_a_pin_of_six_in_within_the_window_of_the_sums() {
    let dial = narrow();
    let enters = |deg: f64| reach(&dial, PinPath::nominal(&dial, 7.0), deg).travel >= 7.0;
    let (mut sure, mut not) = (0.0, 10.0);
    for _ in 0..40 {
        let middle = f64::midpoint(sure, not);
        if enters(middle) {
            sure = middle;
        } else {
            not = middle;
        }
    }
    assert!((3.82..=3.95).contains(&sure), "{sure}");
    for (step, neighbours) in [(36.0, 0), (9.0, 0), (3.6, 1)] {
        let each_side = (1..5).filter(|marks| enters(f64::from(*marks) * step));
        assert_eq!(each_side.count(), neighbours, "{step}° between marks");
    }
}

#[test]
fn one_neighbour_on_each_side_of_three_dials_opens_twenty_seven_settings() {
    let mut design = thin();
    design.season = Season::still(design.season.built);
    let mut proof = prove(&design);
    for dial in &mut proof.dials {
        dial.marks = vec![dial.marks[0].clone(); 40];
        for (mark, found) in dial.marks.iter_mut().enumerate() {
            found.verdict = if mark < 3 {
                Verdict::Passes
            } else {
                Verdict::Holds
            };
        }
    }
    let counts = latchwright_proof::count::count(&proof.dials);
    assert_eq!(
        (counts.total, counts.opens, counts.locks),
        (64_000, 27, 63_973)
    );
}
