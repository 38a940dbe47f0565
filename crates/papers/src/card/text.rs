//! What the card says, as plain data: words for the recipient, and beside them the same steps as
//! typed actions, so that the text can be followed on the model.

use latchwright_solver::model::{Design, Language};

use super::english;

/// Everything that is said on the card. No word of it is made up by the template.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CardText {
    /// Language tag of the fixed words, for example `en`.
    pub language: &'static str,
    /// Title of the document.
    pub title: String,
    /// The word before the name; empty where there is no name.
    pub salutation: String,
    /// The name, or a heading where there is none.
    pub heading: String,
    /// The maker's words, a line each; an empty line parts paragraphs.
    pub greeting: Vec<String>,
    /// The maker's name; may be empty.
    pub signature: String,
    /// The word at the lid's hinged edge.
    pub hinge: &'static str,
    /// What the lid's picture shows, for those who cannot see it.
    pub lid_described: String,
    /// Above the steps to open.
    pub open_heading: &'static str,
    /// How to open: at most five.
    pub open: Vec<Step>,
    /// Above the steps to close.
    pub close_heading: &'static str,
    /// How to close.
    pub close: Vec<Step>,
    /// Above what to do if it sticks.
    pub stuck_heading: &'static str,
    /// What to do if it sticks, a sentence or two each.
    pub stuck: Vec<&'static str>,
    /// Above the cautions.
    pub cautions_heading: &'static str,
    /// Cautions, a sentence each.
    pub cautions: Vec<&'static str>,
}

/// One step: what the card says, and what it means on the model.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// The sentence.
    pub text: String,
    /// What to do, in this order.
    pub actions: Vec<Action>,
}

/// One thing a hand does.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Action {
    /// Slide the finger knob away from the hinge until it stops: u = 0.
    SlideForward,
    /// Point every dial at its mark 0, the one nearest the hinge.
    PointAtHinge,
    /// Turn one dial from mark 0 to its mark of the combination.
    Turn(DialTurn),
    /// Slide the finger knob towards the hinge until it stops.
    SlideBack,
    /// Lift the lid.
    Lift,
    /// Lower the lid.
    Lower,
    /// Turn every dial off its mark of the combination.
    TurnAway,
}

/// How one dial is turned from the mark nearest the hinge, the shorter way round.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DialTurn {
    /// The dial, from 0.
    pub dial: usize,
    /// Which way, seen from outside. True where it stays.
    pub clockwise: bool,
    /// How many marks on; 0 where it stays.
    pub marks: u32,
    /// Number of marks round the dial.
    pub positions: u32,
    /// The label at which it ends.
    pub to_label: String,
    /// What the dial is called and what it does; the label follows, as in “Dial 2 to”.
    pub name: String,
    /// The turn in words, a line each; none where it stays.
    pub words: Vec<String>,
}

impl CardText {
    /// The card's text in the language that the design asks for.
    ///
    /// Without `show_combination` nothing of it depends on the combination.
    pub fn of(design: &Design) -> Self {
        match design.card.language {
            Language::English => english::card_text(design),
        }
    }

    /// The turns of the dials, in order; none without the combination.
    pub fn turns(&self) -> impl Iterator<Item = &DialTurn> {
        self.open
            .iter()
            .flat_map(|step| &step.actions)
            .filter_map(|action| match action {
                Action::Turn(turn) => Some(turn),
                _ => None,
            })
    }

    /// All that is written anywhere on the card, to be looked up in the fonts.
    pub(super) fn letters(&self) -> String {
        let mut all = vec![
            self.title.as_str(),
            &self.salutation,
            &self.heading,
            &self.signature,
        ];
        all.extend([
            self.lid_described.as_str(),
            self.open_heading,
            self.close_heading,
        ]);
        all.extend([self.stuck_heading, self.cautions_heading, self.hinge]);
        all.extend(self.greeting.iter().map(String::as_str));
        all.extend(
            self.open
                .iter()
                .chain(&self.close)
                .map(|step| step.text.as_str()),
        );
        all.extend(self.stuck.iter().chain(&self.cautions));
        for turn in self.turns() {
            all.extend([turn.to_label.as_str(), &turn.name]);
            all.extend(turn.words.iter().map(String::as_str));
        }
        all.join("\n")
    }
}

impl DialTurn {
    /// The turn of dial `dial` (from 0) to its mark of the combination, without words.
    pub(super) fn shortest(design: &Design, dial: usize, positions: u32) -> (bool, u32) {
        let mark = design.digit(dial);
        let back = positions.saturating_sub(mark);
        if mark <= back {
            (true, mark)
        } else {
            (false, back)
        }
    }

    /// Signed turn from the mark nearest the hinge, in marks, clockwise positive.
    pub fn signed_marks(&self) -> f64 {
        let marks = f64::from(self.marks);
        if self.clockwise { marks } else { -marks }
    }
}
