//! Why a paper could not be made, in sentences for the maker.

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
        "the card is {over_mm} mm too long for {paper} at the smallest type; shorten the greeting by about {lines} lines, \
         or choose a larger sheet"
    )]
    TooLong {
        /// What is missing, whole millimetres rounded up.
        over_mm: u32,
        /// The same in lines of the greeting, rounded up.
        lines: u32,
        /// The sheet in words.
        paper: &'static str,
    },
    /// One word is wider than its column and can't be broken.
    #[error(
        "“{word}” is {over_mm} mm too wide for its place on {paper}; write it shorter or in two words, \
         or choose a larger sheet"
    )]
    TooWide {
        /// The word, cut short if it is very long.
        word: String,
        /// What is missing, whole millimetres rounded up.
        over_mm: u32,
        /// The sheet in words.
        paper: &'static str,
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
