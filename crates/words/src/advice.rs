//! What to do about a check, in the maker's words and unit, without capital and full stop.

use latchwright_model::{Design, Unit, Units};
use latchwright_proof::Check;
use latchwright_proof::check::advice::{
    Estimate, FromTo, Improvement, LoosePart, Nothing, OtherMarks, RoomInside, Warning,
};
use latchwright_proof::check::{
    Advice, CYLINDER_DIAMETER, GROWN_AGE, ROOM_LITRES, ROOM_SIZE, SMALL_PARTS_AGE,
};

use crate::checks::numbers;
use crate::figure::{size, size_number, whole_size};

/// What to do about the check of a proof of `design`: the estimate, the warning, or why nothing.
pub fn advice(check: &Check, design: &Design) -> String {
    match &check.advice {
        Advice::Slack => slack(check, design.units),
        Advice::Nothing(nothing) => format!("nothing to do{}", why_nothing(nothing, design)),
        Advice::Change(estimate) => change(check, estimate, design),
        Advice::Warning(warning) => warn(check, warning, design),
    }
}

fn slack(check: &Check, units: Units) -> String {
    let margin = check.margin;
    let spare = match check.unit {
        Unit::Millimetre => size(margin, units),
        Unit::Degree => format!("{margin:.1}°"),
        Unit::Newton => format!("{margin:.1} N"),
        Unit::Ratio => format!("{margin:.2}"),
        Unit::Megapascal => format!("{margin:.1} MPa"),
        Unit::Count => format!("{margin:.0}"),
    };
    format!("nothing to do: {spare} to spare")
}

fn why_nothing(nothing: &Nothing, design: &Design) -> String {
    match nothing {
        Nothing::Seated { positions, sides } => {
            format!(": {positions} is a multiple of {sides}")
        }
        Nothing::HoldsAt { marks, of } => format!(": it holds at {marks} of {of} marks"),
        Nothing::OneOpens => ": one setting opens".to_owned(),
        Nothing::NoneUnsure => ": none is unsure".to_owned(),
        Nothing::NoNeighbourOpens => ": no neighbour of a digit lets a pin in".to_owned(),
        Nothing::MovesOn { by } => format!(
            ": the slider moves on by {} when the dial that binds first comes right",
            size(*by, design.units)
        ),
        Nothing::StopsAlike => {
            ": the dials stop the slider alike, and only what is off in the box \
             tells which binds first"
                .to_owned()
        }
        Nothing::TooSmallForAChild(inside) => {
            format!(
                ": {}, too small for a child to be shut in",
                room(*inside, design.units)
            )
        }
        Nothing::ForGrownPeople(inside) => format!(
            " for an age of {GROWN_AGE} or more ({}), but a child could be shut in: never leave it where \
             children play; the rules where you live go first",
            room(*inside, design.units)
        ),
        Nothing::NoSmallParts => {
            ": no part that comes off goes into the small-parts cylinder".to_owned()
        }
        Nothing::SmallPartsAtThisAge(parts) => format!(
            " at {} years; {} are small parts: keep them from children under {SMALL_PARTS_AGE}",
            design.card.youngest,
            loose_parts(parts)
        ),
    }
}

fn room(inside: RoomInside, units: Units) -> String {
    let least = whole_size(inside.least, units);
    format!("{:.1} litres, {least} at the least", inside.litres)
}

fn loose_parts(parts: &[LoosePart]) -> String {
    let names: Vec<String> = parts
        .iter()
        .map(|part| match part {
            LoosePart::Knob(dial) => format!("knob {}", dial + 1),
            LoosePart::Disc(dial) => format!("disc {}", dial + 1),
            LoosePart::Pin(dial) => format!("pin {}", dial + 1),
        })
        .collect();
    names.join(", ")
}

/// Lengths of one design in its unit.
#[derive(Clone, Copy)]
struct Lengths(Units);

impl Lengths {
    /// `8.00 to about 8.15 mm`.
    fn about(self, FromTo { from, to }: FromTo) -> String {
        format!(
            "{} to about {}",
            size_number(from, self.0),
            size(to, self.0)
        )
    }

    /// `8.00 to at least 8.15 mm`.
    fn at_least(self, FromTo { from, to }: FromTo) -> String {
        format!(
            "{} to at least {}",
            size_number(from, self.0),
            size(to, self.0)
        )
    }

    fn of(self, mm: f64) -> String {
        size(mm, self.0)
    }
}

#[expect(clippy::too_many_lines, reason = "one arm a sentence")]
fn change(check: &Check, estimate: &Estimate, design: &Design) -> String {
    let (one, other) = numbers(check.about);
    let mm = Lengths(design.units);
    match *estimate {
        Estimate::WidenGap(gap) => format!("widen the gap of dial {one} from {}", mm.about(gap)),
        Estimate::DeepenSlot(depth) => {
            format!("deepen the slot of dial {one} from {}", mm.about(depth))
        }
        Estimate::WidenSlot(width) => {
            format!("widen the slot of dial {one} from {}", mm.about(width))
        }
        Estimate::WidenSlotOrRead { slot, reading } => format!(
            "widen the slot of dial {one} from {}, or read its pointer to {reading:.1}°",
            mm.at_least(slot)
        ),
        Estimate::LengthenTravel(travel) => format!("lengthen the travel from {}", mm.about(travel)),
        Estimate::LengthenEngagement(engagement) => {
            format!("lengthen the engagement from {}", mm.about(engagement))
        }
        Estimate::LengthenEngagementToAtLeast(engagement) => {
            format!("lengthen the engagement from {}", mm.at_least(engagement))
        }
        Estimate::WidenGuidePlay(play) => format!(
            "widen the guide play from {} a side, or run the slider's grain as the plate's",
            mm.about(play)
        ),
        Estimate::ApartOrSmallerDiscs(by) => format!(
            "move dials {one} and {other} apart by about {} or make their discs smaller",
            mm.of(by)
        ),
        Estimate::ApartOrSmallerKnobs(by) => format!(
            "move dials {one} and {other} apart by about {} or make their knobs smaller",
            mm.of(by)
        ),
        Estimate::Apart(by) => {
            format!("move dials {one} and {other} apart by about {}", mm.of(by))
        }
        Estimate::ApartOrSmallerDisc(by) => format!(
            "move dials {one} and {other} apart by about {} or make disc {one} smaller",
            mm.of(by)
        ),
        Estimate::ApartAlongFront(by) => format!(
            "move dials {one} and {other} apart along the front edge by about {}",
            mm.of(by)
        ),
        Estimate::InwardsOrLargerPlate(by) => format!(
            "move dial {one} inwards by about {} or make the plate larger",
            mm.of(by)
        ),
        Estimate::FingerKnobApart(by) => {
            format!("move the finger knob or dial {one} apart by about {}", mm.of(by))
        }
        Estimate::AwayFromFingerKnob(by) => format!(
            "move dial {one} by about {} away from the finger knob or make its knob smaller",
            mm.of(by)
        ),
        Estimate::AwayFromFingerKnobsWay(by) => format!(
            "move dial {one} by about {} away from the finger knob's way or make its knob smaller",
            mm.of(by)
        ),
        Estimate::LargerDiscOrShallowerSlot(by) => format!(
            "make the disc of dial {one} larger, or its slot shallower, by about {}",
            mm.of(by)
        ),
        Estimate::DialsToHingeOrLessTravel(by) => format!(
            "move the dials about {} towards the hinge, or shorten the travel",
            mm.of(by)
        ),
        Estimate::FingerKnobOverWood(by) => format!(
            "bring the finger knob, or the middle of the guide where it stands, about {} further over \
             the slider's neck or bar, or make its shank thinner",
            mm.of(by)
        ),
        Estimate::GuideToHinge(by) => format!(
            "set the middle of the guide about {} further towards the hinge",
            mm.of(by)
        ),
        Estimate::ShortenGuideOrDialsToHinge { guide, dials } => format!(
            "shorten the guide at its back end from {}, or move the dials about {} towards the hinge",
            mm.about(guide),
            mm.of(dials)
        ),
        Estimate::BeginGuideFurtherBack(by) => format!(
            "begin the guide about {} further towards the hinge: move its middle, or shorten it",
            mm.of(by)
        ),
        Estimate::OtherPositions {
            positions,
            fewer,
            more,
        } => {
            let nearest = match fewer {
                Some(fewer) => format!("{fewer} or {more}"),
                None => more.to_string(),
            };
            format!(
                "seats fall between marks: take {nearest} positions, or a post whose sides divide \
                 {positions}"
            )
        }
        Estimate::TighterKey => "make the clearance smaller or the apothem larger".to_owned(),
        Estimate::LengthenPin(height) => {
            format!("lengthen the pin of dial {one} from {}", mm.at_least(height))
        }
        Estimate::OneHeight { disc, slider } => format!(
            "bring slider and disc of dial {one} to one height: {} below the plate, not {} and {}",
            mm.of(disc),
            size_number(slider, design.units),
            mm.of(disc)
        ),
        Estimate::LowerDisc(FromTo { from, to }) => format!(
            "hang the disc of dial {one} at least {} below the plate, not {}: a thicker washer",
            mm.of(to),
            mm.of(from)
        ),
        Estimate::LowerSlider(FromTo { from, to }) => format!(
            "hang the slider at least {} below the plate, not {}",
            mm.of(to),
            mm.of(from)
        ),
        Estimate::MoreRoomBelow(FromTo { from, to }) => format!(
            "leave at least {} of room below the plate, not {}",
            mm.of(to),
            mm.of(from)
        ),
        Estimate::DeepenRabbet(rabbet) => format!(
            "deepen the rabbet from {}, or take a thinner keeper",
            mm.at_least(rabbet)
        ),
        Estimate::ThickerPlate(FromTo { from, to }) => format!(
            "take a plate of at least {}, not {}, or a thinner keeper in a shallower rabbet",
            mm.of(to),
            mm.of(from)
        ),
        Estimate::LowerFinger(FromTo { from, to }) => format!(
            "cut the finger of dial {one} lower, so that at least {} of its pin stand free, not {}, in a slider \
             that is thicker by as much",
            mm.of(to),
            mm.of(from)
        ),
        Estimate::ShorterFreePin(FromTo { from, to }) => format!(
            "let the finger hold more of the pin of dial {one}, so that at most {} stand free, not {}, \
             or set in a steel rod",
            mm.of(to),
            mm.of(from)
        ),
        Estimate::ThickerPin(FromTo { from, to }) => format!(
            "give dial {one} a pin of at least {}, not {}, with slots to suit, or a steel rod",
            mm.of(to),
            mm.of(from)
        ),
        Estimate::ThickerSlider(thickness) => format!(
            "thicken the slider from {}, run its grain from front to hinge, or bring the guide's front \
             end nearer to the keeper",
            mm.at_least(thickness)
        ),
        Estimate::LongerGuide { guide, aside } => format!(
            "lengthen the guide from {}, or bring the finger knob from {} to at most {} beside the \
             guide's middle",
            mm.at_least(guide),
            size_number(aside.from, design.units),
            mm.of(aside.to)
        ),
        Estimate::GapBelowTravel { gap, travel } => format!(
            "its disc never reaches its pin: bring the gap from {} well below the travel of {}",
            size_number(gap, design.units),
            mm.of(travel)
        ),
        Estimate::NarrowSlotsOrFewerPositions => {
            "narrow its slots, or give it fewer positions, until plain rim meets the pin between marks"
                .to_owned()
        }
        Estimate::NarrowSlotForTwins(ref others) => format!(
            "{}: narrow the slot or take fewer positions",
            other_marks(others, Opens::Surely, design)
        ),
        Estimate::LeaveOutSecondSlot(ref others) => format!(
            "{}: leave out the second slot or make it blind",
            other_marks(others, Opens::Surely, design)
        ),
        Estimate::NarrowSlotForNeighbours(ref others) => format!(
            "{}: narrow the slot or take fewer positions",
            other_marks(others, Opens::Perhaps, design)
        ),
        Estimate::DecideMark { dial, mark } => format!(
            "dial {} at {} can be promised neither way, because its pin may meet a mouth's corner or too \
             little tab stays held: fewer positions, a narrower slot or finer workmanship decide it",
            dial + 1,
            label(design, dial, mark)
        ),
        Estimate::HalveOneThing { what, now, gain } => format!(
            "halving {} (± {}) would add most to the least margin: {}",
            improvement(what),
            as_it_is(what, now, design.units),
            mm.of(gain)
        ),
    }
}

/// The label of a mark as people see it.
fn label(design: &Design, dial: usize, mark: u32) -> String {
    let dial = design.dials.get(dial);
    dial.map_or_else(|| mark.to_string(), |dial| dial.label(mark))
}

/// Whether marks beside a digit surely open.
#[derive(Clone, Copy)]
enum Opens {
    Surely,
    Perhaps,
}

/// Marks that open beside the digits, dial by dial.
fn other_marks(others: &[OtherMarks], how: Opens, design: &Design) -> String {
    let (opens, open) = match how {
        Opens::Surely => ("opens", "open"),
        Opens::Perhaps => ("may open", "may open"),
    };
    let sentence = |others: &OtherMarks| {
        let (dial, own) = (others.dial + 1, label(design, others.dial, others.own));
        let marks: Vec<String> = others
            .marks
            .iter()
            .map(|mark| label(design, others.dial, *mark))
            .collect();
        match marks.as_slice() {
            _ if others.every => format!("on dial {dial}, every mark {open} as well as {own}"),
            [one] => format!("on dial {dial}, mark {one} {opens} as well as {own}"),
            more => format!(
                "on dial {dial}, marks {} {open} as well as {own}",
                more.join(", ")
            ),
        }
    };
    let sentences: Vec<String> = others.iter().map(sentence).collect();
    sentences.join("; ")
}

const fn improvement(what: Improvement) -> &'static str {
    match what {
        Improvement::PinPlaces => "the places of the pins",
        Improvement::BorePlaces => "the places of the bores",
        Improvement::KeeperPlace => "the place of the keeper",
        Improvement::Prints => "the printed sizes",
        Improvement::Coats => "the evenness of the coats",
        Improvement::Reading => "the reading of the pointers",
        Improvement::GuidePlay => "the play in the guide",
        Improvement::ShaftPlay => "the play of the shafts",
        Improvement::KeyClearance => "the clearance of the keys",
    }
}

/// The ± or play as it is, with its unit: as typed, or in inches to a thousandth.
fn as_it_is(what: Improvement, now: f64, units: Units) -> String {
    match (what, units) {
        (Improvement::Reading, _) => format!("{now}°"),
        (_, Units::Millimetre) => format!("{now} mm"),
        (_, Units::Inch) => size(now, units),
    }
}

fn warn(check: &Check, warning: &Warning, design: &Design) -> String {
    let (one, _) = numbers(check.about);
    match warning {
        Warning::FirstLetIn => {
            format!("first see that the slot of dial {one} lets its pin in at all")
        }
        Warning::NoneOpens => {
            "no setting can be promised to open: see which slot does not let its pin in".to_owned()
        }
        Warning::SeeFaults => "see the faults of the design".to_owned(),
        Warning::FirstDecideSettings => {
            "first see to the settings of which nothing can be promised: a knock may open one"
                .to_owned()
        }
        Warning::ChangeASize => {
            "no single thing done twice as exactly would add to the least margin: change a size"
                .to_owned()
        }
        Warning::ChildCouldBeShutIn(inside) => format!(
            "a child could be shut in ({}): make one inside size less than {} or the room at most \
             {ROOM_LITRES:.0} litres, or leave out the latch; the rules where you live go first",
            room(*inside, design.units),
            whole_size(ROOM_SIZE, design.units)
        ),
        Warning::CanBeSwallowed(parts) => format!(
            "{} can come off and be swallowed below {SMALL_PARTS_AGE} years: print pins in one piece with \
             the slider, make knobs and discs wider than {}; the rules where you live go first",
            loose_parts(parts),
            size(CYLINDER_DIAMETER, design.units)
        ),
    }
}
