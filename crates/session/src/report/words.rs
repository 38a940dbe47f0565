//! Words for what the solver names: the same on the screen and in the terminal.

use latchwright_proof::states::{Slides, State, Sure};

/// A state of the latch.
pub fn state_name(state: State) -> &'static str {
    match state {
        State::Free => "free",
        State::Shut => "shut",
        State::Locked => "locked",
        State::OnTheWay => "on the way",
    }
}

/// Whether something is so.
pub fn sure_word(sure: Sure) -> &'static str {
    match sure {
        Sure::Yes => "yes",
        Sure::No => "no",
        Sure::Perhaps => "perhaps",
    }
}

/// Where the slider goes.
pub fn slides_word(slides: Slides) -> &'static str {
    match slides {
        Slides::Forward => "forward",
        Slides::Whole => "all the way",
        Slides::ToTheStop => "to the stop",
        Slides::Perhaps => "perhaps",
    }
}

/// What decides a check, in the maker's words; a name that is not known here is shown as it is.
pub fn contributor(name: &str) -> String {
    let words = match name {
        "pin_place" => "place of the pin",
        "bore_place" => "place of the bore",
        "keeper_place" => "place of the keeper",
        "shaft_play" => "play of the shaft",
        "guide_play" => "play in the guide",
        "thickness" => "thicknesses",
        "height" => "length of the pin",
        "disc" => "thickness of the disc",
        "pull_aside" => "pull beside the guide",
        "shank" => "half the shank",
        "film_spread" => "uneven coats",
        "print" => "the print",
        "lead_in" => "the lead-in",
        "reading" => "reading of the pointer",
        other => return other.replace('_', " "),
    };
    words.to_owned()
}
