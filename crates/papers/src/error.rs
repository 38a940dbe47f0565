//! Why a paper could not be made, in sentences for the maker.

use latchwright_model::Units;
use latchwright_model::unit::MM_PER_INCH;

/// Why there is no paper.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum PaperError {
    /// Letters that no font at hand can draw.
    #[error(
        "no font here can draw {letters}; write {them} in other letters, or install a font that has {them}",
        them = if *.count == 1 { "it" } else { "them" }
    )]
    Letters {
        /// The letters with their code points, for example `“𓀀” (U+13000)`.
        letters: String,
        /// How many letters there are.
        count: usize,
    },
    /// The words need more height than the sheet has.
    #[error(
        "the card is {over} too long for {paper} at the smallest type; shorten the greeting by about {lines} lines, \
         or choose a larger sheet",
        over = over(*.over_mm, *.units)
    )]
    TooLong {
        /// What is missing, whole millimetres rounded up.
        over_mm: u32,
        /// The same in lines of the greeting, rounded up.
        lines: u32,
        /// The sheet in words.
        paper: &'static str,
        /// The unit in which it is told.
        units: Units,
    },
    /// One word is wider than its column and can't be broken.
    #[error(
        "“{word}” is {over} too wide for its place on {paper}; write it shorter or in two words, \
         or choose a larger sheet",
        over = over(*.over_mm, *.units)
    )]
    TooWide {
        /// The word, cut short if it is very long.
        word: String,
        /// What is missing, whole millimetres rounded up.
        over_mm: u32,
        /// The sheet in words.
        paper: &'static str,
        /// The unit in which it is told.
        units: Units,
    },
    /// The design can't be drawn as it stands.
    #[error("the card can't be drawn: {reason}")]
    Design {
        /// What is wrong, where, and what to do.
        reason: String,
    },
    /// A paper of the bench can't be made of the design as it stands.
    #[error("no {name} can be made: {reason}", name = paper.to_lowercase())]
    Refused {
        /// The paper, as it is headed.
        paper: &'static str,
        /// What is wrong, where, and what to do.
        reason: String,
    },
    /// The templates can't be laid on paper.
    #[error("the templates can't be printed: {reason}")]
    Template {
        /// Which part, what is wrong, by how much, and what to do.
        reason: String,
    },
    /// The date can't be: there is no such day.
    #[error("there is no {day}. {month}. {year}; give a day of the calendar from the year 1 on")]
    Date {
        /// Year.
        year: i32,
        /// Month from 1.
        month: u8,
        /// Day from 1.
        day: u8,
    },
    /// The typesetter refused; a fault of this program, not of the design.
    #[error("the page could not be set, which is a fault of this program: {message}")]
    Typeset {
        /// What the typesetter said.
        message: String,
    },
}

/// What is missing, in the maker's unit, never less than it is.
fn over(over_mm: u32, units: Units) -> String {
    match units {
        Units::Millimetre => format!("{over_mm} mm"),
        Units::Inch => {
            let hundredths = (f64::from(over_mm) / MM_PER_INCH * 100.0).ceil();
            format!("{:.2} in", hundredths / 100.0)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_missing_is_told_in_the_makers_unit() {
        let long = |units| PaperError::TooLong {
            over_mm: 26,
            lines: 6,
            paper: "A6",
            units,
        };
        let metric = long(Units::Millimetre).to_string();
        assert!(
            metric.starts_with("the card is 26 mm too long for A6 "),
            "{metric}"
        );
        let inch = long(Units::Inch).to_string();
        assert!(
            inch.starts_with("the card is 1.03 in too long for A6 "),
            "{inch}"
        );
        let wide = PaperError::TooWide {
            word: "so".to_owned(),
            over_mm: 3,
            paper: "A6",
            units: Units::Inch,
        };
        let wide = wide.to_string();
        assert!(
            wide.starts_with("“so” is 0.12 in too wide for its place on A6;"),
            "{wide}"
        );
    }
}
