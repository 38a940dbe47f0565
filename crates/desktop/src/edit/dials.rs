//! What a hand changes of the dials: each of them, and their number and order.

use latchwright_model::change::{DialSize, SlotSize};
use latchwright_model::{Design, Dial, Labels, PinMake, Size, Slot};

/// Room for fingers between two knobs, mm: common practice, no source.
const FINGERS: f64 = 20.0;

/// How many dials there are, and in which order. Dials count from 0.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum DialsEdit {
    /// One more, like the last.
    Add,
    /// One more, like this one.
    Copy(usize),
    /// All as this one, each where it stands.
    Spread(usize),
    /// This dial gets the number of its neighbour, and the neighbour its own.
    Exchange {
        /// The one that is chosen.
        dial: usize,
        /// Its new number.
        with: usize,
    },
    /// This one less.
    TakeAway(usize),
}

impl DialsEdit {
    /// What the history calls it.
    pub fn label(&self) -> String {
        match self {
            Self::Add => "add a dial".to_owned(),
            Self::Copy(dial) => format!("copy dial {}", dial + 1),
            Self::Spread(dial) => format!("make all dials as dial {}", dial + 1),
            Self::Exchange { dial, with } => format!("renumber dial {} to {}", dial + 1, with + 1),
            Self::TakeAway(dial) => format!("take dial {} away", dial + 1),
        }
    }

    pub(super) fn make(self, design: &mut Design) {
        match self {
            Self::Add => {
                let last = design.dials.last().cloned();
                add(design, last.unwrap_or_default(), 0);
            }
            Self::Copy(index) => {
                let digit = design.digit(index);
                if let Some(dial) = design.dials.get(index).cloned() {
                    add(design, dial, digit);
                }
            }
            Self::Spread(index) => spread(design, index),
            Self::Exchange { dial, with } => exchange(design, dial, with),
            Self::TakeAway(index) => take_away(design, index),
        }
    }
}

/// One more dial, to the right of all others by knob and fingers.
fn add(design: &mut Design, mut dial: Dial, digit: u32) {
    let right = design.dials.iter().map(|dial| dial.centre.0);
    if let Some(right) = right.reduce(f64::max) {
        dial.centre.0 = right + dial.knob.diameter + FINGERS;
    }
    design.combination.resize(design.dials.len(), 0);
    design.dials.push(dial);
    design.combination.push(digit);
}

/// All dials become as this one, each where it stands.
fn spread(design: &mut Design, index: usize) {
    let Some(like) = design.dials.get(index).cloned() else {
        return;
    };
    for dial in &mut design.dials {
        *dial = Dial {
            centre: dial.centre,
            ..like.clone()
        };
    }
}

/// Two dials exchange their numbers; each stays where it stands and opens where it did.
fn exchange(design: &mut Design, one: usize, other: usize) {
    if one.max(other) < design.dials.len() {
        design.combination.resize(design.dials.len(), 0);
        design.dials.swap(one, other);
        design.combination.swap(one, other);
    }
}

fn take_away(design: &mut Design, index: usize) {
    if index < design.dials.len() {
        design.dials.remove(index);
    }
    if index < design.combination.len() {
        design.combination.remove(index);
    }
}

/// Which dials a change is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Target {
    /// The dial that is shown, from 0.
    pub dial: usize,
    /// All others too.
    pub all: bool,
}

impl Target {
    /// This dial alone.
    pub const fn one(dial: usize) -> Self {
        Self { dial, all: false }
    }

    /// What a change of theirs is called.
    pub fn label(self, what: &str) -> String {
        if self.all {
            format!("{what} of all dials")
        } else {
            format!("{what} of dial {}", self.dial + 1)
        }
    }

    fn covers(self, dial: usize) -> bool {
        self.all || dial == self.dial
    }
}

/// A number that every dial has one of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DialNumber {
    /// A size.
    Size(DialSize),
    /// How many marks.
    Positions,
    /// How many flats its post has.
    KeySides,
    /// A size of its slot of this number.
    Slot(usize, SlotSize),
    /// The mark of its slot of this number, in steps from the true slot.
    SlotMark(usize),
}

impl DialNumber {
    /// Where this dial's stands.
    pub const fn of(self, dial: usize) -> Size {
        match self {
            Self::Size(size) => Size::Dial(dial, size),
            Self::Positions => Size::Positions(dial),
            Self::KeySides => Size::KeySides(dial),
            Self::Slot(slot, size) => Size::Slot(dial, slot, size),
            Self::SlotMark(slot) => Size::SlotMark(dial, slot),
        }
    }
}

/// What may be written at the marks of a dial.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LabelKind {
    /// Figures.
    Digits,
    /// Letters.
    Letters,
    /// The maker's words.
    Words,
    /// Small pictures.
    Pictures,
}

impl LabelKind {
    /// Every kind and what it is called.
    pub const ALL: [(Self, &'static str); 4] = [
        (Self::Digits, "figures"),
        (Self::Letters, "letters"),
        (Self::Words, "words"),
        (Self::Pictures, "pictures"),
    ];

    /// The kind of these.
    pub fn of(labels: &Labels) -> Self {
        match labels {
            Labels::Digits => Self::Digits,
            Labels::Letters => Self::Letters,
            Labels::Words(_) => Self::Words,
            Labels::Pictures(_) => Self::Pictures,
        }
    }

    fn labels(self, dial: &Dial) -> Labels {
        let plain = |labels: &Labels| {
            (0..dial.positions.min(360))
                .map(|mark| labels.label(mark, dial.positions))
                .collect()
        };
        match self {
            Self::Digits => Labels::Digits,
            Self::Letters => Labels::Letters,
            Self::Words => Labels::Words(plain(&dial.labels)),
            Self::Pictures => Labels::Pictures(
                latchwright_drawing::PICTURES
                    .iter()
                    .cycle()
                    .take(dial.positions.min(12) as usize)
                    .map(|name| (*name).to_owned())
                    .collect(),
            ),
        }
    }
}

/// What is changed of a dial.
#[derive(Debug, Clone, PartialEq)]
pub enum DialEdit {
    /// A number.
    Number {
        /// What its row is called.
        name: String,
        /// Which.
        number: DialNumber,
        /// What it becomes, in its own unit.
        value: f64,
    },
    /// What kind of labels it has.
    LabelKind(LabelKind),
    /// Its words or pictures, one a mark.
    LabelWords(Vec<String>),
    /// What its pin is made of.
    PinMake(PinMake),
    /// One more slot, too shallow for the pin.
    AddBlindSlot,
    /// The slot of this number, from 0, is not cut.
    FillSlot(usize),
}

impl DialEdit {
    /// What it is a change of.
    pub(super) fn what(&self) -> String {
        match self {
            Self::Number { name, .. } => name.to_lowercase(),
            Self::LabelKind(_) | Self::LabelWords(_) => "labels".to_owned(),
            Self::PinMake(_) => "pin make".to_owned(),
            Self::AddBlindSlot => "add a blind slot".to_owned(),
            Self::FillSlot(_) => "fill a slot up".to_owned(),
        }
    }

    pub(super) fn make(&self, of: Target, design: &mut Design) {
        for index in (0..design.dials.len()).filter(|index| of.covers(*index)) {
            self.make_one(index, design);
        }
    }

    fn make_one(&self, index: usize, design: &mut Design) {
        if let Self::Number { number, value, .. } = self {
            number.of(index).set(design, *value);
        }
        let Some(dial) = design.dials.get_mut(index) else {
            return;
        };
        match self {
            // it has an address in the design
            Self::Number { .. } => {}
            Self::LabelKind(kind) => dial.labels = kind.labels(dial),
            Self::LabelWords(words) => match &mut dial.labels {
                Labels::Words(old) | Labels::Pictures(old) => old.clone_from(words),
                Labels::Digits | Labels::Letters => {}
            },
            Self::PinMake(make) => dial.pin.make = *make,
            Self::AddBlindSlot => {
                let width = dial.disc.slots.first().map_or(9.0, |slot| slot.width);
                let mark = i64::from(dial.positions / 2);
                dial.disc.slots.push(Slot {
                    mark,
                    width,
                    depth: 2.0,
                    lead_in: 0.0,
                });
            }
            Self::FillSlot(number) => {
                if *number < dial.disc.slots.len() {
                    dial.disc.slots.remove(*number);
                }
            }
        }
    }
}
