//! Whether a design can be drawn and told at all. Whether it opens is the solver's to say.

use latchwright_model::{Design, Dial, Units};

use latchwright_model::unit::MM_PER_INCH;

use crate::error::PaperError;

/// More dials than a lid carries.
const MOST_DIALS: usize = 12;
/// More letters than any card holds; what is longer is not worth measuring.
const LONGEST_GREETING: usize = 4000;
/// The same for a name or a title.
const LONGEST_NAME: usize = 300;

/// Refuses what no card can show, with place, figures and remedy.
pub(super) fn check(design: &Design) -> Result<(), PaperError> {
    let plate = &design.plate;
    for (what, size) in [("width", plate.width), ("depth", plate.depth)] {
        if !(1.0..=10_000.0).contains(&size) {
            return refuse(match design.units {
                Units::Millimetre => {
                    format!("the plate's {what} is {size} mm; give one between 1 and 10000 mm")
                }
                Units::Inch => format!(
                    "the plate's {what} is {:.3} in; give one between 0.04 and 393 in",
                    size / MM_PER_INCH
                ),
            });
        }
    }
    let card = &design.card;
    short_enough("the greeting", &card.greeting, LONGEST_GREETING)?;
    short_enough("the recipient's name", &card.recipient, LONGEST_NAME)?;
    short_enough("the maker's name", &card.from, LONGEST_NAME)?;
    short_enough("the title", &design.title, LONGEST_NAME)?;
    if design.dials.len() > MOST_DIALS {
        let count = design.dials.len();
        return refuse(format!(
            "there are {count} dials; a card shows at most {MOST_DIALS}"
        ));
    }
    for (index, dial) in design.dials.iter().enumerate() {
        check_dial(index + 1, dial, design.units)?;
        let mark = design.digit(index);
        if design.card.show_combination && mark >= dial.positions {
            return refuse(format!(
                "the combination sets dial {} to mark {mark}, but its last mark is {}; choose one it has",
                index + 1,
                dial.positions - 1
            ));
        }
    }
    Ok(())
}

fn short_enough(what: &str, text: &str, most: usize) -> Result<(), PaperError> {
    // Bytes first: counting the letters of a very long text is work in itself.
    let count = if text.len() <= most {
        0
    } else {
        text.chars().count()
    };
    if count > most {
        return refuse(format!(
            "{what} has {count} letters; a card holds at most {most}, so shorten it"
        ));
    }
    Ok(())
}

fn check_dial(number: usize, dial: &Dial, units: Units) -> Result<(), PaperError> {
    let (x, y) = dial.centre;
    if !(2..=360).contains(&dial.positions) {
        return refuse(format!(
            "dial {number} has {} marks; give it 2 to 360",
            dial.positions
        ));
    }
    if ![x, y].iter().all(|place| place.abs() <= 10_000.0) {
        let at = match units {
            Units::Millimetre => format!("({x}, {y}) mm"),
            Units::Inch => format!("({:.3}, {:.3}) in", x / MM_PER_INCH, y / MM_PER_INCH),
        };
        return refuse(format!("dial {number} stands at {at}; put it on the plate"));
    }
    Ok(())
}

fn refuse(reason: String) -> Result<(), PaperError> {
    Err(PaperError::Design { reason })
}
