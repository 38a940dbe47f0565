//! The card in English.

use super::super::text::{DialTurn, TurnWords};
use super::{Forms, Phrases, Words, counted};

/// English, in its plain imperative.
pub(super) struct English;

const PHRASES: Phrases = Phrases {
    tag: "en",
    unnamed: "A box with a secret",
    hinge: "hinge",
    open_heading: "To open",
    close_heading: "To close",
    slide_forward: "Slide the finger knob towards you until it stops.",
    point_at_hinge: Forms {
        one: "Point the dial at the hinge.",
        many: "Point each dial at the hinge.",
    },
    turn_as_drawn: Forms {
        one: "Turn it as drawn:",
        many: "From there turn each dial as drawn:",
    },
    slide_back: "Slide the finger knob towards the hinge until it stops.",
    lift: "Lift the lid by its front edge.",
    lower: "Leave the knob towards the hinge and lower the lid.",
    shut: "Slide the knob towards you until it stops.",
    turn_away: Forms {
        one: "Turn the dial away from its mark.",
        many: "Turn every dial away from its mark.",
    },
    stuck_heading: "If it sticks",
    stuck: [
        "Never force it. Slide the knob towards you, set each pointer again, right on its mark, and try once more.",
        "Pointers turn only while the knob is fully towards you.",
        "Damp air makes wood stiff: give the box some days in a dry room.",
    ],
    cautions_heading: "Please mind: ",
    cautions: [
        "Keep away from small children: it has small parts.",
        "Mind your fingers under the lid.",
        "It keeps a secret, not valuables.",
    ],
    between_sentences: " ",
    between_members: ", ",
    pictures: [
        "anchor", "apple", "bell", "bird", "boat", "fish", "key", "leaf", "moon", "star", "sun",
        "tree",
    ],
};

impl Words for English {
    fn phrases(&self) -> &'static Phrases {
        &PHRASES
    }

    fn addressed(&self, name: &str) -> (String, String) {
        ("For".to_owned(), name.to_owned())
    }

    fn signed(&self, name: &str) -> String {
        format!("— {name}")
    }

    fn title(&self, name: Option<&str>, of: Option<&str>) -> String {
        match (name, of) {
            (None, None) => "How to open the box".to_owned(),
            (None, Some(of)) => format!("{of}: how to open it"),
            (Some(name), None) => format!("For {name}: how to open the box"),
            (Some(name), Some(of)) => format!("For {name}: {of}, and how to open it"),
        }
    }

    fn lid(&self, dials: usize) -> String {
        let dials = match dials {
            0 => "no dial".to_owned(),
            1 => "1 dial".to_owned(),
            count => format!("{count} dials"),
        };
        format!("The lid from above, hinge at the top, with {dials} and a finger knob.")
    }

    fn setting(&self, dials: usize, list: &str) -> String {
        match dials {
            1 => format!("The dial stands at {list}."),
            _ => format!("The dials stand at {list}."),
        }
    }

    fn turn_to_secret(&self, dials: usize, maker: Option<&str>) -> String {
        let ask = maker.unwrap_or("the maker");
        match dials {
            1 => format!("Turn it to its secret mark. The mark is not on this card: ask {ask}."),
            _ => format!(
                "Turn each dial to its secret mark. The marks are not on this card: ask {ask}."
            ),
        }
    }

    fn turn(&self, turn: &DialTurn, label: &str) -> TurnWords {
        let number = turn.dial + 1;
        let way = if turn.clockwise {
            "clockwise"
        } else {
            "anticlockwise"
        };
        let (before, lines) = match turn.marks {
            0 => (format!("Dial {number} at "), vec!["stays there".to_owned()]),
            marks => (
                format!("Dial {number} to "),
                vec![way.to_owned(), counted(marks, "mark", "marks")],
            ),
        };
        TurnWords {
            before,
            label: label.to_owned(),
            after: "",
            lines,
        }
    }
}
