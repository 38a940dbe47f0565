//! Faults of a design: what is wrong and what to do, with lengths in the maker's unit.
//!
//! Numbers are quoted by the names that they have in the file. What is there is rounded to the nearest;
//! what is to be done is rounded in inches so that who does just that has done enough.

use latchwright_model::change::WoodSize;
use latchwright_model::fault::{MeantAs, OutsideTable, SeasonTime};
use latchwright_model::slot::MAX_SLOTS;
use latchwright_model::validate::{
    KEY_SIDES, MAX_DIALS, MAX_POSITIONS, MOST_MOVEMENT, Measure, Range,
};
use latchwright_model::wood::wood_names;
use latchwright_model::{Fault, FaultKind, Units};

use crate::figure::{self, size};
use crate::places::place;
use latchwright_model::unit::MM_PER_INCH;

/// Place, message and remedy in one sentence, without a trailing stop.
pub fn fault_sentence(fault: &Fault, units: Units) -> String {
    format!(
        "{}; {}",
        fault_at_place(fault, units),
        fault_remedy(fault, units)
    )
}

/// Place and message, without a trailing stop.
pub fn fault_at_place(fault: &Fault, units: Units) -> String {
    format!("{}: {}", place(fault.place), fault_message(fault, units))
}

/// What is wrong, with its figures; one sentence without capital and trailing stop.
#[expect(clippy::too_many_lines, reason = "one arm a sentence, and no more")]
pub fn fault_message(fault: &Fault, units: Units) -> String {
    let mm = |mm: f64| size(mm, units);
    match &fault.kind {
        FaultKind::NotANumber { number, .. } => format!("`{number}` is not a number"),
        FaultKind::SizeNotPositive {
            number,
            value,
            range,
        } => {
            let value = Span::of(*range, units).say(*value);
            format!("`{number}` is {value}, but a size must be above 0")
        }
        FaultKind::OutOfRange {
            number,
            value,
            range,
        } => {
            let span = Span::of(*range, units);
            format!("`{number}` is {}, outside {span}", span.say(*value))
        }
        FaultKind::CoefficientNotANumber { wood, coefficient } => {
            format!("`{}` of \"{wood}\" is not a number", field(*coefficient))
        }
        FaultKind::CoefficientNegative {
            wood,
            coefficient,
            value,
        } => format!(
            "`{}` of \"{wood}\" is {value}, but wood swells when it gets damper",
            field(*coefficient)
        ),
        FaultKind::CoefficientTooLarge {
            wood,
            coefficient,
            value,
            ..
        } => format!(
            "`{}` of \"{wood}\" is {value}, more than any wood moves: is that in per cent? A \
             fraction of its size for each per cent of moisture is meant, and woods lie between \
             0.0007 and 0.0045",
            field(*coefficient)
        ),
        FaultKind::OwnWoodTwice { name } => {
            format!("two of the maker's own woods are called \"{name}\"")
        }
        FaultKind::OwnWoodUnnamed { wood } => format!("own wood {} has no name", wood + 1),
        FaultKind::UnknownWood { name, .. } => {
            format!("no wood, or more than one, is called \"{name}\" in the table of movement")
        }
        FaultKind::GuideTooLoose { play, length } => format!(
            "a play of {} to either side lets a guide of {} turn without end",
            mm(*play),
            mm(*length)
        ),
        FaultKind::HoldBeyondEngagement {
            required,
            engagement,
        } => format!(
            "{} of tab must stay held, but only {} reach under the keeper",
            mm(*required),
            mm(*engagement)
        ),
        FaultKind::FractionUnknown { fraction } => {
            format!("rules are not divided into {fraction} parts of an inch")
        }
        FaultKind::SeasonReversed { driest, dampest } => {
            format!("the driest air ({driest:.0} %) is damper than the dampest ({dampest:.0} %)")
        }
        FaultKind::MoistureOutsideTable { times } => {
            let times: Vec<String> = times.iter().map(outside_table).collect();
            format!(
                "wood comes to a moisture of {}; the table of movement is made for 6 to 14 %",
                times.join(" and of ")
            )
        }
        FaultKind::PlateMovesFromHinge { most } => format!(
            "between hinge and front edge the plate itself moves by up to {} over the year; the \
             proof takes the keeper to stay with the plate's front edge",
            short_by(*most, units)
        ),
        FaultKind::NumberOfDials { dials } => {
            format!("the design has {dials} dials; a latch has 1 to {MAX_DIALS}")
        }
        FaultKind::NumberOfPositions { positions } => {
            format!("{positions} positions; a dial has 2 to {MAX_POSITIONS}")
        }
        FaultKind::KeySides { sides } => {
            let (least, most) = KEY_SIDES;
            format!("a key post with {sides} sides; a post has {least} to {most}")
        }
        FaultKind::NumberOfLabels { labels, positions } => {
            format!("{labels} labels for {positions} positions")
        }
        FaultKind::LabelTwice { label } => {
            format!("the label \"{label}\" stands at more than one mark")
        }
        FaultKind::NumberOfSlots { slots } => {
            format!("{slots} slots in one disc; at most {MAX_SLOTS} are looked at")
        }
        FaultKind::NoTrueSlot => {
            "no slot at mark 0: nothing lets the pin in at the combination".to_owned()
        }
        FaultKind::SlotMarkOutOfRange { mark, positions } => {
            let last = i64::from(*positions) - 1;
            format!("slot at mark {mark}; marks run from 0 to {last}")
        }
        FaultKind::SlotWiderThanDisc { width, across } => {
            format!(
                "a slot {} wide in a disc {} across",
                mm(*width),
                mm(*across)
            )
        }
        FaultKind::SlotTooNarrow { pin, width } => {
            format!(
                "the pin needs {}, the slot is {} wide",
                mm(*pin),
                mm(*width)
            )
        }
        FaultKind::LeadInLongerThanWall { lead_in, wall } => {
            format!("a lead-in of {} on a wall of {}", mm(*lead_in), mm(*wall))
        }
        FaultKind::SlotsMeet { other, short } => format!(
            "runs into slot {} of the same disc: {} too little between them",
            other + 1,
            short_by(*short, units)
        ),
        FaultKind::CombinationLength { marks, dials } => format!("{marks} marks for {dials} dials"),
        FaultKind::CombinationMarkOutOfRange { mark, positions } => format!(
            "the combination stands at mark {mark}; marks run from 0 to {}",
            positions.saturating_sub(1)
        ),
    }
}

/// What to do, without capital and trailing stop.
#[expect(clippy::too_many_lines, reason = "one arm a sentence, and no more")]
pub fn fault_remedy(fault: &Fault, units: Units) -> String {
    let most = |mm: f64| at_most(mm, units);
    let words = match &fault.kind {
        FaultKind::NotANumber { range, .. }
        | FaultKind::SizeNotPositive { range, .. }
        | FaultKind::OutOfRange { range, .. } => {
            return format!("give a value from {}", Span::of(*range, units));
        }
        FaultKind::CoefficientNotANumber { .. } | FaultKind::CoefficientNegative { .. } => {
            return format!("give a fraction from 0 to {MOST_MOVEMENT}");
        }
        FaultKind::CoefficientTooLarge { value, meant, .. } => return as_meant(*value, *meant),
        FaultKind::OwnWoodTwice { .. } => "give one of them another name",
        FaultKind::OwnWoodUnnamed { .. } => "name it as the plate or the slider calls it",
        FaultKind::UnknownWood { own, .. } => {
            let mut names: Vec<&str> = own.iter().map(String::as_str).collect();
            for name in wood_names() {
                names.push(name);
            }
            return format!("name one of: {}", names.join(", "));
        }
        FaultKind::GuideTooLoose { length, .. } => {
            return format!("make `guide_play` less than {}", most(length / 2.0));
        }
        FaultKind::HoldBeyondEngagement { engagement, .. } => {
            return format!(
                "lower `required_hold` below {} or let the tab reach further",
                most(*engagement)
            );
        }
        FaultKind::FractionUnknown { .. } => "give 8, 16, 32 or 64",
        FaultKind::SeasonReversed { .. } => "exchange the two; the proof covers both all the same",
        FaultKind::MoistureOutsideTable { .. } => {
            "outside it the handbook's second formula is used; leave a little more room"
        }
        FaultKind::PlateMovesFromHinge { .. } => {
            "let the rabbet over the keeper, not the hinge, set where the lid lies (a hinge with play), \
             or turn the grain towards the hinge"
        }
        FaultKind::NumberOfDials { dials: 0 } => "add a dial",
        FaultKind::NumberOfDials { dials } => {
            let more = dials.saturating_sub(MAX_DIALS);
            return format!("leave out {more}; only the first {MAX_DIALS} are looked at");
        }
        FaultKind::NumberOfPositions { .. } => {
            return format!("give 2 to {MAX_POSITIONS} positions");
        }
        FaultKind::KeySides { .. } => "give the post 3 or 4 sides",
        FaultKind::NumberOfLabels { .. } => {
            "give one label a position; a mark without one shows its number"
        }
        FaultKind::LabelTwice { .. } => "give every mark a label of its own",
        FaultKind::NumberOfSlots { slots } => {
            return format!("leave out {}", slots.saturating_sub(MAX_SLOTS));
        }
        FaultKind::NoTrueSlot => "give the disc a slot with `mark: 0`",
        FaultKind::SlotMarkOutOfRange { positions, .. } => {
            return format!("give a mark from 0 to {}", i64::from(*positions) - 1);
        }
        FaultKind::SlotWiderThanDisc { across, .. } => {
            return format!(
                "make the slot narrower than {} or the disc larger",
                most(*across)
            );
        }
        FaultKind::SlotTooNarrow { pin, width } => {
            return format!(
                "widen the slot by more than {}",
                short_by(pin - width, units)
            );
        }
        FaultKind::LeadInLongerThanWall { wall, .. } => {
            return format!(
                "make the lead-in at most {} or the slot deeper",
                most(*wall)
            );
        }
        FaultKind::SlotsMeet { .. } => {
            "move it to another mark, or make the slots narrower or shallower"
        }
        FaultKind::CombinationLength { .. } => "give one mark a dial",
        FaultKind::CombinationMarkOutOfRange { positions, .. } => {
            return format!("give a mark from 0 to {}", positions.saturating_sub(1));
        }
    };
    words.to_owned()
}

/// The most that something may be: never told too large in inches.
fn at_most(mm: f64, units: Units) -> String {
    match units {
        Units::Inch if mm.is_finite() => figure::length(mm, units),
        Units::Inch | Units::Millimetre => size(mm, units),
    }
}

/// A length, above 0, that is wanting or needs room: never told too small in inches.
fn short_by(mm: f64, units: Units) -> String {
    // rounded down below nought is rounded up in size
    match units {
        Units::Inch if mm.is_finite() => figure::length(-mm, units)
            .trim_start_matches('−')
            .to_owned(),
        Units::Inch | Units::Millimetre => size(mm, units),
    }
}

/// What the file calls a coefficient.
fn field(coefficient: WoodSize) -> &'static str {
    match coefficient {
        WoodSize::Radial => "radial",
        WoodSize::Tangential => "tangential",
    }
}

fn as_meant(value: f64, meant: MeantAs) -> String {
    match meant {
        MeantAs::PerCent(fraction) => format!("as a fraction it is {fraction:.5}"),
        MeantAs::Shrinkage { coefficient } => format!(
            "if {value} % is what it shrinks from green to dry, give {coefficient:.5}; as a \
             fraction {} would still be more than any wood moves",
            value / 100.0
        ),
        MeantAs::Unknown => format!("give a fraction from 0 to {MOST_MOVEMENT}"),
    }
}

fn outside_table(outside: &OutsideTable) -> String {
    let time = match outside.time {
        SeasonTime::Built => "when built",
        SeasonTime::Driest => "at the driest",
        SeasonTime::Dampest => "at the dampest",
    };
    format!(
        "{:.1} % {time} ({:.0} % humidity, {:.0} °C)",
        outside.moisture, outside.climate.humidity, outside.climate.celsius
    )
}

/// A range in one unit, with its limits rounded inwards.
struct Span {
    least: f64,
    most: f64,
    /// What a number of this range is divided by to be told.
    per: f64,
    /// The unit with the space before it.
    unit: &'static str,
}

/// Digits after the point in an inch of a range: below the thousandth of a millimetre that is the
/// least size.
const FINE: f64 = 1e5;

impl Span {
    fn of(range: Range, units: Units) -> Self {
        let (least, most) = range.limits();
        let as_is = |unit| Self {
            least,
            most,
            per: 1.0,
            unit,
        };
        match (range.measure(), units) {
            (Measure::Length, Units::Millimetre) => as_is(" mm"),
            (Measure::Length, Units::Inch) => Self {
                least: (least / MM_PER_INCH * FINE).ceil() / FINE,
                most: (most / MM_PER_INCH * FINE).floor() / FINE,
                per: MM_PER_INCH,
                unit: " in",
            },
            (Measure::Angle, _) => as_is("°"),
            (Measure::Humidity, _) => as_is(" %"),
            (Measure::Temperature, _) => as_is(" °C"),
            (Measure::Force, _) => as_is(" N"),
            (Measure::Density, _) => as_is(" g/cm³"),
            (Measure::Plain, _) => as_is(""),
        }
    }

    /// A number as it was given, with its unit.
    fn say(&self, value: f64) -> String {
        let told = value / self.per;
        let round = (told * FINE).round() / FINE;
        // as typed in inches, without the dust of having been kept in millimetres
        let dusted = self.per != 1.0 && round.is_finite() && round != 0.0;
        format!("{}{}", if dusted { round } else { told }, self.unit)
    }
}

impl core::fmt::Display for Span {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{} to {}{}", self.least, self.most, self.unit)
    }
}

#[cfg(test)]
mod tests;
