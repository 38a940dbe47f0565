//! Why a run makes nothing, as sentences.

use latchwright_model::Units;
use latchwright_words::fault_sentence;
use latchwright_words::solids::part_faults;

use crate::products::ProductError;

/// What is said where this program broke off while it made something.
pub const BROKE_OFF: &str = "it could not be made: a fault of this program; your design is safe";

/// Why something was not made: a sentence, for printed parts one a line.
pub fn product_error(err: &ProductError, units: Units) -> String {
    match err {
        ProductError::BrokeOff => BROKE_OFF.to_owned(),
        ProductError::Wrong(fault) => format!(
            "no papers are made of a design with an error: {}",
            fault_sentence(fault, units)
        ),
        ProductError::Nameless => {
            "the box has no name: give it a title, it stands on every sheet".to_owned()
        }
        ProductError::Paper(err) => err.to_string(),
        ProductError::Parts(faults) => part_faults(faults, units),
    }
}
