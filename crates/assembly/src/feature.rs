//! What is bored, as a value; its name is words made from it.

use crate::guide::BridgeEnd;
use crate::holes::WoodPart;

/// Which of two that are alike, seen from the front.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Hand {
    /// The one on the left.
    Left,
    /// The one on the right.
    Right,
}

/// Which hole. Dials count from 0 here and from 1 in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum HoleKind {
    /// A dial's bore in the plate.
    Bore(usize),
    /// The hole for a dial's pin in the slider.
    Pin(usize),
    /// One of the two screws that hold the keeper.
    KeeperScrew(Hand),
    /// The socket for the finger knob's shank in the slider, with the hole for its screw.
    ShankSocket,
    /// One of the four screws that hold strips and bridges to the plate.
    GuideScrew(Hand, BridgeEnd),
}

/// Which bored slot.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SlotKind {
    /// The slot in which the finger knob's shank runs.
    FingerKnob,
}

/// A centre to be pricked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Centre {
    /// That of a hole.
    Hole(HoleKind),
    /// One of those along a slot, counted from 0 here and from 1 in words.
    InSlot(SlotKind, usize),
}

/// What is bored and judged as one: a hole, a pair of holes or a slot.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Feature {
    /// A dial's bore.
    Bore(usize),
    /// The hole for a dial's pin.
    Pin(usize),
    /// Both screws of the keeper.
    KeeperScrews,
    /// The finger knob's slot.
    FingerKnobSlot,
    /// The finger knob's socket in the slider.
    ShankSocket,
    /// All four screws of the guide.
    GuideScrews,
}

impl Hand {
    /// What people call it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
        }
    }
}

impl BridgeEnd {
    /// What people call it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Back => "back",
        }
    }
}

impl HoleKind {
    /// Stable name, such as `dial 2 bore`.
    pub fn name(self) -> String {
        let feature = self.feature().name();
        match self {
            Self::Bore(_) | Self::Pin(_) | Self::ShankSocket => feature,
            Self::KeeperScrew(hand) => format!("{feature} {}", hand.name()),
            Self::GuideScrew(hand, end) => format!("{feature} {} {}", end.name(), hand.name()),
        }
    }

    /// What it is judged with.
    pub const fn feature(self) -> Feature {
        match self {
            Self::Bore(dial) => Feature::Bore(dial),
            Self::Pin(dial) => Feature::Pin(dial),
            Self::KeeperScrew(_) => Feature::KeeperScrews,
            Self::ShankSocket => Feature::ShankSocket,
            Self::GuideScrew(..) => Feature::GuideScrews,
        }
    }

    /// The part it is in.
    pub const fn part(self) -> WoodPart {
        self.feature().part()
    }
}

impl SlotKind {
    /// Stable name.
    pub fn name(self) -> String {
        self.feature().name()
    }

    /// What it is judged as.
    pub const fn feature(self) -> Feature {
        match self {
            Self::FingerKnob => Feature::FingerKnobSlot,
        }
    }

    /// The part it is in.
    pub const fn part(self) -> WoodPart {
        self.feature().part()
    }
}

impl Centre {
    /// Stable name, such as `dial 2 bore` or `finger knob slot 1`.
    pub fn name(self) -> String {
        match self {
            Self::Hole(hole) => hole.name(),
            Self::InSlot(slot, index) => format!("{} {}", slot.name(), index + 1),
        }
    }

    /// What it belongs to.
    pub const fn feature(self) -> Feature {
        match self {
            Self::Hole(hole) => hole.feature(),
            Self::InSlot(slot, _) => slot.feature(),
        }
    }
}

impl Feature {
    /// What people call it: `dial 2 bore`.
    pub fn name(self) -> String {
        match self {
            Self::Bore(dial) => format!("dial {} bore", dial + 1),
            Self::Pin(dial) => format!("dial {} pin", dial + 1),
            Self::KeeperScrews => "keeper screw".to_owned(),
            Self::FingerKnobSlot => "finger knob slot".to_owned(),
            Self::ShankSocket => "finger knob socket".to_owned(),
            Self::GuideScrews => "guide screw".to_owned(),
        }
    }

    /// The part it is in.
    pub const fn part(self) -> WoodPart {
        match self {
            Self::Bore(_) | Self::FingerKnobSlot | Self::GuideScrews => WoodPart::Plate,
            Self::Pin(_) | Self::ShankSocket => WoodPart::Slider,
            Self::KeeperScrews => WoodPart::Keeper,
        }
    }
}
