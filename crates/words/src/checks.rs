//! What a check asks, in the maker's words.

use latchwright_model::validate::{MAX_DIALS, MAX_POSITIONS};
use latchwright_model::{Design, Units};
use latchwright_proof::check::advice::{Estimate, GuideCloses};
use latchwright_proof::check::{About, Advice, CheckKind, Contributor, when_guide_closes};
use latchwright_proof::slider_body::strips;
use latchwright_proof::{Check, count};

use crate::figure::unit_name;
use latchwright_model::unit::MM_PER_INCH;

/// What the check asks: "Dial 1 turns free of its pin at rest". `design` is the one that was proven.
#[expect(clippy::too_many_lines, reason = "one arm a sentence, and no more")]
pub fn check_title(check: &Check, design: &Design) -> String {
    let (one, other) = numbers(check.about);
    match check.kind {
        CheckKind::AtRest => format!("Dial {one} turns free of its pin at rest"),
        CheckKind::LetsIn => format!("Slot of dial {one} lets its pin in"),
        CheckKind::Enters => format!("Pin of dial {one} finds its slot"),
        CheckKind::Fits => format!("Slot of dial {one} is wider than its pin"),
        CheckKind::Deep => format!("Slot of dial {one} is deep enough"),
        CheckKind::SlotWall => format!("Wall of dial {one}'s slot is longer than its lead-in"),
        CheckKind::Captive => format!("Dial {one} is held by its pin while open"),
        CheckKind::StaysHeld => format!("Tab stays held when dial {one} stops the slider"),
        CheckKind::NextMark => format!("Mark beside the digit of dial {one} is clear of the mouth"),
        CheckKind::Free => "Tab clears the keeper when the slider is back".to_owned(),
        CheckKind::HeldAtRest => "Tab is under the keeper when the slider is forward".to_owned(),
        CheckKind::Guide => guide(check, design),
        CheckKind::DiscToDisc => format!("Discs of dials {one} and {other} keep apart"),
        CheckKind::KnobToKnob => format!("Fingers get between knobs {one} and {other}"),
        CheckKind::BoreToBore => format!("Wood between the bores of dials {one} and {other}"),
        CheckKind::DiscToPin => format!("Disc of dial {one} stays clear of pin {other}"),
        CheckKind::BoreToEdge => {
            format!("Wood between the bore of dial {one} and the plate's edge")
        }
        CheckKind::BoreToGuideSlot => {
            format!("Wood between the bore of dial {one} and the guide slot")
        }
        CheckKind::FingerKnobRoom => {
            format!("Fingers get between the finger knob and knob {one}")
        }
        CheckKind::FingerKnobWay => format!("Finger knob goes clear of knob {one} all the way"),
        CheckKind::SlotToStar => {
            format!("Wall between slot and star in the disc of dial {one}")
        }
        CheckKind::DiscToFinger => {
            format!("Finger of pin {one} runs below the discs")
        }
        CheckKind::FingerToFinger => {
            format!("Fingers of pins {one} and {other} stand side by side")
        }
        CheckKind::BarRoom => "Slider's bar has room between the discs and the front".to_owned(),
        CheckKind::FingerKnobSeat => "Finger knob stands on the slider's neck or bar".to_owned(),
        CheckKind::GuideSlotToKeeper => {
            "Wood between the finger knob's slot and the keeper's rabbet".to_owned()
        }
        CheckKind::SwingsClear => "Tab clears the keeper while the lid swings up".to_owned(),
        CheckKind::StripsToBar => strips_to_bar(design),
        CheckKind::StripsToKeeper => "Guide strips begin behind the keeper's rabbet".to_owned(),
        CheckKind::KeySeats => format!("Disc of dial {one} seats on its marks"),
        CheckKind::KeyBite => format!("Post of dial {one} cannot spin in its star"),
        CheckKind::IdleDial => format!("Dial {one} holds at some mark"),
        CheckKind::TwinOpenings => "Exactly one setting opens".to_owned(),
        CheckKind::Undecided => "Every setting can be promised one way or the other".to_owned(),
        CheckKind::Window => {
            format!("Dial {one} lets its pin in while its pointer is off the mark")
        }
        CheckKind::ToldApart => told_apart(check, design),
        CheckKind::Workmanship => workmanship(check, one),
        CheckKind::PinMeetsDisc => format!("Pin of dial {one} meets two thirds of its disc"),
        CheckKind::DiscToPlate => format!("Disc of dial {one} turns clear of the plate"),
        CheckKind::SliderToPlate => "Slider runs clear of the plate".to_owned(),
        CheckKind::TabToKeeper => "Tab slips under the keeper without rubbing".to_owned(),
        CheckKind::RoomBelow => "Latch is clear of what lies under the lid".to_owned(),
        CheckKind::LidCloses => "Keeper has room in its rabbet, so that the lid closes".to_owned(),
        CheckKind::RabbetRoof => "Wood is left over the rabbet".to_owned(),
        CheckKind::PinStrength => {
            format!(
                "Pin of dial {one} bears a pull of {:.0} N",
                design.slider.pull
            )
        }
        CheckKind::TabStrength => {
            format!("Tab bears a pull of {:.0} N on the lid", design.slider.pull)
        }
        CheckKind::Racking => "Guide is long enough that the slider does not jam".to_owned(),
        CheckKind::Shaken => {
            "Locked box stays shut when it is shaken or knocked, whatever way up".to_owned()
        }
        CheckKind::ByFeel => format!(
            "By feel: at most {:.0} tries open it, not {}; it keeps a secret, it does not keep valuables",
            check.value,
            count::settings_on_paper(design)
        ),
        CheckKind::EnclosedSpace => "No child can be shut in".to_owned(),
        CheckKind::SmallParts => "Small parts suit the age of the youngest".to_owned(),
    }
}

/// The dials of a check as people count them; nought where there is none.
pub(crate) const fn numbers(about: About) -> (usize, usize) {
    match about {
        About::Latch => (0, 0),
        About::Dial(dial) => (dial + 1, 0),
        About::Pair(one, other) => (one + 1, other + 1),
    }
}

fn guide(check: &Check, design: &Design) -> String {
    let mut title = "Slider keeps its play in the guide all year".to_owned();
    if check.value < 0.0 {
        let when = match when_guide_closes(design) {
            GuideCloses::AtTheExtremes => "it may close at the extremes of the year".to_owned(),
            GuideCloses::At(airs) => {
                let airs: Vec<String> = airs
                    .into_iter()
                    .map(|air| format!("{:.0} % humidity ({:.0} °C)", air.humidity, air.celsius))
                    .collect();
                format!("it closes at {}", airs.join(" and at "))
            }
        };
        title.push_str(": ");
        title.push_str(&when);
    }
    title
}

fn strips_to_bar(design: &Design) -> String {
    let (from, to) = strips(design);
    let (long, unit) = (to - from, unit_name(design.units));
    let long = match design.units {
        Units::Millimetre => format!("{long:.1}"),
        Units::Inch => format!("{:.2}", long / MM_PER_INCH),
    };
    format!("Guide strips, {long} {unit} long for guide and travel, end before the slider's bar")
}

/// What this contributor amounts to in a check of counts; nought where it is not named.
fn amount(check: &Check, of: Contributor) -> f64 {
    let mut parts = check.decided_by.iter();
    parts
        .find(|(what, _)| *what == of)
        .map_or(0.0, |(_, amount)| *amount)
}

fn told_apart(check: &Check, design: &Design) -> String {
    let total = count::settings_on_paper(design);
    let Advice::Change(Estimate::NarrowSlotForNeighbours(others)) = &check.advice else {
        return format!("All {total} settings can be told apart");
    };
    // of marks so near that one may open for the other, one is enough
    let alike = |dial: usize| {
        let of_dial = others.iter().find(|others| others.dial == dial);
        1 + of_dial.map_or(0, |others| others.marks.len() as u128)
    };
    let dials = design.dials.iter().take(MAX_DIALS).enumerate();
    let apart = dials.fold(1_u128, |apart, (index, dial)| {
        let marks = u128::from(dial.positions.min(MAX_POSITIONS));
        apart.saturating_mul(marks.div_ceil(alike(index)))
    });
    format!("Of {total} settings {apart} can really be told apart")
}

fn workmanship(check: &Check, dial: usize) -> String {
    let most = amount(check, Contributor::MostPositions);
    let now = amount(check, Contributor::PositionsNow);
    if most == 0.0 {
        format!("Dial {dial} has {now:.0} positions; with this workmanship none are sure")
    } else if most > now {
        format!("Dial {dial} could have {most:.0} positions with this workmanship; it has {now:.0}")
    } else if most == now {
        format!("Dial {dial} has as many positions as this workmanship allows: {now:.0}")
    } else {
        format!("Dial {dial} has {now:.0} positions; this workmanship allows {most:.0}")
    }
}
