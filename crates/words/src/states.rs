//! Words for the lock-state table.

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
