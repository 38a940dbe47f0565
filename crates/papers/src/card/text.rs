//! What the card says, as plain data: words for the recipient, and beside them the same steps as
//! typed actions, so that the text can be followed on the model.

use core::f64::consts::TAU;

use latchwright_model::Design;

use super::words;

/// Everything that is said on the card. No word of it is made up by the template.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CardText {
    /// Language tag of the fixed words, for example `en`.
    pub language: &'static str,
    /// Title of the document.
    pub title: String,
    /// The word before the name; empty where there is none.
    pub salutation: String,
    /// The name as it is addressed, or a heading where there is none.
    pub heading: String,
    /// The maker's words, a line each; an empty line parts paragraphs.
    pub greeting: Vec<String>,
    /// The maker's name as it is signed; may be empty.
    pub signature: String,
    /// The word at the lid's hinged edge.
    pub hinge: &'static str,
    /// What the lid's picture shows, for those who cannot see it.
    pub lid_described: String,
    /// Above the steps to open.
    pub open_heading: &'static str,
    /// How to open: at most five.
    pub open: Vec<CardStep>,
    /// Above the steps to close.
    pub close_heading: &'static str,
    /// How to close.
    pub close: Vec<CardStep>,
    /// Above what to do if it sticks.
    pub stuck_heading: &'static str,
    /// What to do if it sticks, a sentence or two each.
    pub stuck: Vec<&'static str>,
    /// Before the cautions, with the stop and the blank that part it from them.
    pub cautions_heading: &'static str,
    /// Cautions, a sentence each.
    pub cautions: Vec<&'static str>,
    /// What parts two sentences on one line: a blank, or a zero-width space.
    pub between_sentences: &'static str,
}

/// One step: what the card says, and what it means on the model.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CardStep {
    /// The sentence. A zero-width space in it stands where a line may end, in languages that part
    /// words by none.
    pub text: String,
    /// What to do, in this order. It is the same in every language.
    pub actions: Vec<Action>,
    /// The words of each [`Action::Turn`], in the order of the actions.
    pub turns: Vec<TurnWords>,
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
    /// Turn every dial to its mark of the combination, which the card does not tell.
    TurnToSecret,
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
    /// The label at which it ends, as the design has it.
    pub to_label: String,
}

/// The words of one dial's turn. Before, label and after read on as one line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TurnWords {
    /// What the dial is called and what it does, with a blank before the label where there is one.
    pub before: String,
    /// The label at which it ends; the name of a picture in the card's language.
    pub label: String,
    /// What follows the label; may be empty.
    pub after: &'static str,
    /// Which way and how far, a line each; may be none where it stays.
    pub lines: Vec<String>,
}

impl CardText {
    /// The card's text in the language that the design asks for.
    ///
    /// Without `show_combination` nothing of it depends on the combination.
    pub fn of(design: &Design) -> Self {
        words::card_text(design, words::of(design.card.language))
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

    /// The steps, to open and to close.
    pub fn steps(&self) -> impl Iterator<Item = &CardStep> {
        self.open.iter().chain(&self.close)
    }

    /// All that is written anywhere on the card, to be looked up in the fonts.
    pub(super) fn letters(&self) -> String {
        let mut all = vec![
            self.title.as_str(),
            &self.salutation,
            &self.heading,
            &self.signature,
            &self.lid_described,
        ];
        all.extend([self.open_heading, self.close_heading, self.hinge]);
        all.extend([self.stuck_heading, self.cautions_heading]);
        all.extend(self.greeting.iter().map(String::as_str));
        all.extend(self.stuck.iter().chain(&self.cautions));
        for step in self.steps() {
            all.push(&step.text);
            for turn in &step.turns {
                all.extend([turn.before.as_str(), &turn.label, turn.after]);
                all.extend(turn.lines.iter().map(String::as_str));
            }
        }
        all.join("\n")
    }
}

impl TurnWords {
    /// All of it on one line.
    pub fn sentence(&self) -> String {
        let mut line = format!("{}{}{}", self.before, self.label, self.after);
        for more in &self.lines {
            line.push(' ');
            line.push_str(more);
        }
        line
    }
}

impl DialTurn {
    /// The turn of dial `dial` (from 0) to its mark of the combination.
    pub(super) fn shortest(design: &Design, dial: usize, positions: u32) -> Self {
        let mark = design.digit(dial);
        let back = positions.saturating_sub(mark);
        let clockwise = mark <= back;
        let label = design.dials.get(dial).map(|one| one.label(mark));
        Self {
            dial,
            clockwise,
            marks: if clockwise { mark } else { back },
            positions,
            to_label: words::one_line(&label.unwrap_or_default()),
        }
    }

    /// The turn in radians, clockwise positive.
    pub(super) fn angle(&self) -> f64 {
        self.signed_marks() / f64::from(self.positions.max(1)) * TAU
    }

    /// Signed turn from the mark nearest the hinge, in marks, clockwise positive.
    pub fn signed_marks(&self) -> f64 {
        let marks = f64::from(self.marks);
        if self.clockwise { marks } else { -marks }
    }
}
