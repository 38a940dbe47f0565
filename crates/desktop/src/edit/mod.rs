//! What a hand changes of the design, as values: each says what undo calls it, and makes itself.

mod bench;
mod card;
mod dials;

use latchwright_model::change::{DialSize, LatchSize};
use latchwright_model::{
    Change, Corner, Design, Grain, KeeperMake, LidKind, Material, Sawn, Size, Units,
};

pub use bench::BenchEdit;
pub use card::CardEdit;
pub use dials::{DialEdit, DialNumber, DialsEdit, LabelKind, Target};

/// One step of the history.
#[derive(Debug, Clone, PartialEq)]
pub enum Edit {
    /// What the maker calls the box.
    Title(String),
    /// The unit of screens and papers.
    Units(Units),
    /// One number of the design.
    Number {
        /// What its row is called.
        name: String,
        /// Which.
        size: Size,
        /// What it becomes, in its own unit.
        value: f64,
    },
    /// A handle on the plan, moved.
    Move {
        /// Which.
        handle: Handle,
        /// What its two numbers become, mm.
        to: (f64, f64),
    },
    /// A change that was found for the maker.
    Remedy {
        /// What undo calls it.
        label: String,
        /// What it does.
        change: Change,
    },
    /// The mark of every dial at which the box opens.
    Combination(Vec<u32>),
    /// The same, drawn by the rules.
    DrawnCombination(Vec<u32>),
    /// Wood of the plate.
    PlateWood(String),
    /// How the plate is sawn.
    PlateCut(Sawn),
    /// How the plate's fibres run.
    PlateGrain(Grain),
    /// Wood of the sides.
    SideWood(String),
    /// How the sides are sawn.
    SideCut(Sawn),
    /// How the corners are joined.
    Corners(Corner),
    /// How the lid comes off.
    Lid(LidKind),
    /// What slider or floor is made of.
    Material(MadeOf, Material),
    /// Which wood, how sawn and with which grain, of slider or floor.
    SolidWood(MadeOf, Material),
    /// What the keeper is made of.
    KeeperMake(KeeperMake),
    /// The dials: how many, in which order.
    Dials(DialsEdit),
    /// One dial, or all alike.
    Dial(Target, DialEdit),
    /// The mark at which this dial opens.
    Digit {
        /// Dial, from 0.
        dial: usize,
        /// Its mark, from 0.
        mark: u32,
    },
    /// What the maker has.
    Bench(BenchEdit),
    /// The card.
    Card(CardEdit),
}

/// What can be moved on the plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Handle {
    /// The centre of this dial, from 0.
    Dial(usize),
    /// The tab: sideways, and in or out under the keeper.
    Tab,
}

/// A part that may be of any stuff.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MadeOf {
    /// The slider.
    Slider,
    /// The floor of the box.
    Floor,
}

impl Handle {
    /// The addresses of the two numbers that it moves.
    pub fn sizes(self) -> [Size; 2] {
        match self {
            Self::Dial(index) => {
                [DialSize::CentreX, DialSize::CentreY].map(|size| Size::Dial(index, size))
            }
            Self::Tab => [LatchSize::TabAt, LatchSize::Engagement].map(Size::Latch),
        }
    }
}

impl MadeOf {
    /// What it is called.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Slider => "Slider",
            Self::Floor => "Floor",
        }
    }

    /// What it is made of.
    pub fn material(self, design: &Design) -> &Material {
        match self {
            Self::Slider => &design.slider.material,
            Self::Floor => &design.body.floor.material,
        }
    }

    fn material_mut(self, design: &mut Design) -> &mut Material {
        match self {
            Self::Slider => &mut design.slider.material,
            Self::Floor => &mut design.body.floor.material,
        }
    }
}

impl Edit {
    /// What the history calls it, for example "plate width".
    pub fn label(&self) -> String {
        match self {
            Self::Title(_) => "title".to_owned(),
            Self::Units(_) => "unit".to_owned(),
            Self::Number { name, .. } => name.to_lowercase(),
            Self::Move {
                handle: Handle::Dial(index),
                ..
            } => format!("move dial {}", index + 1),
            Self::Move {
                handle: Handle::Tab,
                ..
            } => "move tab".to_owned(),
            Self::Remedy { label, .. } => label.clone(),
            Self::Combination(_) => "combination".to_owned(),
            Self::DrawnCombination(_) => "combination drawn".to_owned(),
            Self::PlateWood(_) => "plate wood".to_owned(),
            Self::PlateCut(_) => "plate cut".to_owned(),
            Self::PlateGrain(_) => "plate grain".to_owned(),
            Self::SideWood(_) => "side wood".to_owned(),
            Self::SideCut(_) => "side cut".to_owned(),
            Self::Corners(_) => "corners".to_owned(),
            Self::Lid(_) => "lid".to_owned(),
            Self::Material(of, _) => format!("{} material", of.name().to_lowercase()),
            Self::SolidWood(of, _) => format!("{} wood", of.name().to_lowercase()),
            Self::KeeperMake(_) => "keeper material".to_owned(),
            Self::Dials(edit) => edit.label(),
            Self::Dial(of, edit) => of.label(&edit.what()),
            Self::Digit { dial, .. } => Target::one(*dial).label("combination"),
            Self::Bench(edit) => edit.label(),
            Self::Card(edit) => edit.label().to_owned(),
        }
    }

    /// Its label as a button shows it.
    pub fn button(&self) -> String {
        let label = self.label();
        let mut letters = label.chars();
        let first = letters.next().map(|letter| letter.to_ascii_uppercase());
        first.into_iter().chain(letters).collect()
    }

    /// Makes it; what it is about and is not there is left alone.
    pub fn make(self, design: &mut Design) {
        match self {
            Self::Title(title) => design.title = title,
            Self::Units(units) => design.units = units,
            Self::Number { size, value, .. } => {
                size.set(design, value);
            }
            Self::Move {
                handle,
                to: (one, other),
            } => {
                for (size, value) in handle.sizes().into_iter().zip([one, other]) {
                    size.set(design, value);
                }
            }
            Self::Remedy { change, .. } => *design = change.apply(design),
            Self::Combination(marks) | Self::DrawnCombination(marks) => design.combination = marks,
            Self::PlateWood(wood) => design.plate.wood = wood,
            Self::PlateCut(sawn) => design.plate.sawn = sawn,
            Self::PlateGrain(grain) => design.plate.grain = grain,
            Self::SideWood(wood) => design.body.wood = wood,
            Self::SideCut(sawn) => design.body.sawn = sawn,
            Self::Corners(corner) => design.body.corner = corner,
            Self::Lid(lid) => design.body.lid = lid,
            Self::Material(of, material) | Self::SolidWood(of, material) => {
                *of.material_mut(design) = material;
            }
            Self::KeeperMake(make) => design.keeper.make = make,
            Self::Dials(edit) => edit.make(design),
            Self::Dial(of, edit) => edit.make(of, design),
            Self::Digit { dial, mark } => {
                if design.combination.len() <= dial {
                    design.combination.resize(dial + 1, 0);
                }
                if let Some(digit) = design.combination.get_mut(dial) {
                    *digit = mark;
                }
            }
            Self::Bench(edit) => edit.make(design),
            Self::Card(edit) => edit.make(&mut design.card),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_edit_can_be_compared_and_printed_and_says_what_undo_calls_it() {
        let edit = |value| Edit::Number {
            name: "Plate width".to_owned(),
            size: Size::Latch(LatchSize::PlateWidth),
            value,
        };
        assert_eq!(edit(250.0), edit(250.0));
        assert_ne!(edit(250.0), edit(251.0));
        assert!(format!("{:?}", edit(250.0)).contains("PlateWidth"));
        assert_eq!(edit(250.0).label(), "plate width");
        let mut design = Design::default();
        edit(250.0).make(&mut design);
        assert_eq!(design.plate.width, 250.0);
    }

    #[test]
    fn a_button_begins_with_a_capital_and_its_step_of_undo_does_not() {
        let edit = Edit::Dials(DialsEdit::TakeAway(1));
        assert_eq!(edit.label(), "take dial 2 away");
        assert_eq!(edit.button(), "Take dial 2 away");
    }

    #[test]
    fn a_mark_of_a_dial_that_has_none_yet_makes_room_for_it() {
        let mut design = Design::default();
        design.combination.clear();
        Edit::Digit { dial: 2, mark: 5 }.make(&mut design);
        assert_eq!(design.combination, [0, 0, 5]);
    }
}
