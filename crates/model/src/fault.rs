//! What is wrong with a design as typed: each fault as a value, with its place and its figures.
//!
//! No English here: the crate of words has a message and a remedy for each kind. Lengths are
//! millimetres; dials, slots and marks count from 0.

use crate::Climate;
use crate::change::WoodSize;
use crate::validate::Range;

/// How bad it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// No proof can be given while it stands.
    Error,
    /// Worth a look; the proof stands without it.
    Notice,
}

/// The part a fault is about. Dials and slots count from 0 here and from 1 in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    /// The design as a whole.
    Design,
    /// The plate.
    Plate,
    /// The slider.
    Slider,
    /// The tab.
    Tab,
    /// The keeper.
    Keeper,
    /// The room under the lid.
    Inside,
    /// The sides and floor of the box.
    Body,
    /// A dial.
    Dial(usize),
    /// A slot of a dial's disc.
    Slot(usize, usize),
    /// The combination.
    Combination,
    /// Workmanship.
    Workmanship,
    /// Season.
    Season,
    /// What the maker has.
    Bench,
    /// The card.
    Card,
}

/// One fault: where, what and by how much.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// Which part.
    pub place: Place,
    /// What is wrong, with its figures.
    pub kind: FaultKind,
}

/// What is wrong, with its figures.
#[derive(Debug, Clone, PartialEq)]
pub enum FaultKind {
    /// A number is infinite or none.
    NotANumber {
        /// As the file calls it.
        number: &'static str,
        /// Where it should lie.
        range: Range,
    },
    /// A size is nought or below.
    SizeNotPositive {
        /// As the file calls it.
        number: &'static str,
        /// As given, in what the range measures.
        value: f64,
        /// Where it should lie.
        range: Range,
    },
    /// A number lies where it means nothing.
    OutOfRange {
        /// As the file calls it.
        number: &'static str,
        /// As given, in what the range measures.
        value: f64,
        /// Where it should lie.
        range: Range,
    },
    /// A coefficient of one of the maker's own woods is infinite or none.
    CoefficientNotANumber {
        /// The wood's name.
        wood: String,
        /// Which of its two.
        coefficient: WoodSize,
    },
    /// A wood that would shrink as it gets damper.
    CoefficientNegative {
        /// The wood's name.
        wood: String,
        /// Which of its two.
        coefficient: WoodSize,
        /// As given.
        value: f64,
    },
    /// A wood that would move more than any does.
    CoefficientTooLarge {
        /// The wood's name.
        wood: String,
        /// Which of its two.
        coefficient: WoodSize,
        /// As given.
        value: f64,
        /// What it may have been meant as.
        meant: MeantAs,
    },
    /// Two of the maker's own woods have one name.
    OwnWoodTwice {
        /// That name.
        name: String,
    },
    /// One of the maker's own woods has no name.
    OwnWoodUnnamed {
        /// Which, from 0.
        wood: usize,
    },
    /// A wood that neither the maker's own nor the table has, or that the table has more than once.
    UnknownWood {
        /// As given.
        name: String,
        /// The names of the maker's own woods.
        own: Vec<String>,
    },
    /// The slider could turn in its guide without end.
    GuideTooLoose {
        /// Play to either side, mm.
        play: f64,
        /// Length of the guide, mm.
        length: f64,
    },
    /// More of the tab must stay held than reaches under the keeper.
    HoldBeyondEngagement {
        /// What must stay held, mm.
        required: f64,
        /// What reaches under the keeper, mm.
        engagement: f64,
    },
    /// No rule is divided so.
    FractionUnknown {
        /// Parts of an inch.
        fraction: u32,
    },
    /// The driest air is damper than the dampest.
    SeasonReversed {
        /// Humidity at the driest, per cent.
        driest: f64,
        /// Humidity at the dampest, per cent.
        dampest: f64,
    },
    /// The year takes wood to a moisture that the table of movement is not made for.
    MoistureOutsideTable {
        /// When, in the order of the year's three airs; never empty.
        times: Vec<OutsideTable>,
    },
    /// The plate swells between the hinge and its front edge.
    PlateMovesFromHinge {
        /// By how much at most over the year, mm.
        most: f64,
    },
    /// No dial, or too many.
    NumberOfDials {
        /// How many there are.
        dials: usize,
    },
    /// A dial with too few marks, or too many.
    NumberOfPositions {
        /// How many it has.
        positions: u32,
    },
    /// A key post that has too few sides, or too many.
    KeySides {
        /// How many it has.
        sides: u32,
    },
    /// Labels that are not one a position.
    NumberOfLabels {
        /// How many labels there are.
        labels: usize,
        /// How many marks the dial has.
        positions: u32,
    },
    /// Two marks of a dial have one label.
    LabelTwice {
        /// That label.
        label: String,
    },
    /// More slots in a disc than are looked at.
    NumberOfSlots {
        /// How many there are.
        slots: usize,
    },
    /// No slot lets the pin in at the combination.
    NoTrueSlot,
    /// A slot at a mark that the dial does not have.
    SlotMarkOutOfRange {
        /// The mark, from 0.
        mark: i64,
        /// How many marks the dial has.
        positions: u32,
    },
    /// A slot that leaves nothing of its disc.
    SlotWiderThanDisc {
        /// Width of the slot, mm.
        width: f64,
        /// Diameter of the disc, mm.
        across: f64,
    },
    /// A slot that its pin cannot enter.
    SlotTooNarrow {
        /// Diameter of the pin, mm.
        pin: f64,
        /// Width of the slot, mm.
        width: f64,
    },
    /// A lead-in that takes more than the slot's wall.
    LeadInLongerThanWall {
        /// The lead-in, mm.
        lead_in: f64,
        /// The wall, mm.
        wall: f64,
    },
    /// Two slots of a disc run into each other.
    SlotsMeet {
        /// The other slot of the same disc, from 0.
        other: usize,
        /// How much too little is between them, mm.
        short: f64,
    },
    /// A combination with more or fewer marks than there are dials.
    CombinationLength {
        /// Its marks.
        marks: usize,
        /// The dials.
        dials: usize,
    },
    /// The combination stands at a mark that the dial does not have.
    CombinationMarkOutOfRange {
        /// The mark, from 0.
        mark: u32,
        /// How many marks the dial has.
        positions: u32,
    },
}

/// What a coefficient that is too large for a fraction may have been meant as.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MeantAs {
    /// A fraction in per cent; as a plain fraction it is this.
    PerCent(f64),
    /// The shrinkage from green to dry, per cent.
    Shrinkage {
        /// The coefficient that belongs to it.
        coefficient: f64,
    },
    /// Nothing that is known.
    Unknown,
}

/// One of the year's three airs, as a season names them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SeasonTime {
    /// When the box was built.
    Built,
    /// At the driest.
    Driest,
    /// At the dampest.
    Dampest,
}

/// An air in which wood has a moisture that the table of movement is not made for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OutsideTable {
    /// Which of the year's airs.
    pub time: SeasonTime,
    /// The air itself.
    pub climate: Climate,
    /// Moisture content of wood in it, per cent.
    pub moisture: f64,
}

impl Fault {
    /// How bad.
    pub fn severity(&self) -> Severity {
        self.kind.severity()
    }

    /// Whether no proof can be given while it stands.
    pub fn is_error(&self) -> bool {
        self.severity() == Severity::Error
    }

    /// The dial this fault is about, if it is about one.
    pub fn dial(&self) -> Option<usize> {
        match self.place {
            Place::Dial(dial) | Place::Slot(dial, _) => Some(dial),
            _ => None,
        }
    }
}

impl FaultKind {
    /// How bad.
    pub fn severity(&self) -> Severity {
        match self {
            Self::NotANumber { .. }
            | Self::SizeNotPositive { .. }
            | Self::OutOfRange { .. }
            | Self::CoefficientNotANumber { .. }
            | Self::CoefficientNegative { .. }
            | Self::CoefficientTooLarge { .. }
            | Self::OwnWoodTwice { .. }
            | Self::OwnWoodUnnamed { .. }
            | Self::UnknownWood { .. }
            | Self::GuideTooLoose { .. }
            | Self::HoldBeyondEngagement { .. }
            | Self::FractionUnknown { .. }
            | Self::NumberOfDials { .. }
            | Self::NumberOfPositions { .. }
            | Self::KeySides { .. }
            | Self::NumberOfSlots { .. }
            | Self::NoTrueSlot
            | Self::SlotMarkOutOfRange { .. }
            | Self::SlotWiderThanDisc { .. }
            | Self::LeadInLongerThanWall { .. }
            | Self::SlotsMeet { .. }
            | Self::CombinationLength { .. }
            | Self::CombinationMarkOutOfRange { .. } => Severity::Error,
            Self::SeasonReversed { .. }
            | Self::MoistureOutsideTable { .. }
            | Self::PlateMovesFromHinge { .. }
            | Self::NumberOfLabels { .. }
            | Self::LabelTwice { .. }
            // a latch that never opens is told by its verdicts; a blind slot may well be narrow
            | Self::SlotTooNarrow { .. } => Severity::Notice,
        }
    }

    /// Whether no sums can be made while it stands: some number means nothing.
    pub fn spoils_sums(&self) -> bool {
        match self {
            Self::NotANumber { .. }
            | Self::SizeNotPositive { .. }
            | Self::OutOfRange { .. }
            | Self::CoefficientNotANumber { .. }
            | Self::CoefficientNegative { .. }
            | Self::CoefficientTooLarge { .. }
            | Self::UnknownWood { .. }
            | Self::NumberOfDials { .. } => true,
            Self::OwnWoodTwice { .. }
            | Self::OwnWoodUnnamed { .. }
            | Self::GuideTooLoose { .. }
            | Self::HoldBeyondEngagement { .. }
            | Self::FractionUnknown { .. }
            | Self::SeasonReversed { .. }
            | Self::MoistureOutsideTable { .. }
            | Self::PlateMovesFromHinge { .. }
            | Self::NumberOfPositions { .. }
            | Self::KeySides { .. }
            | Self::NumberOfLabels { .. }
            | Self::LabelTwice { .. }
            | Self::NumberOfSlots { .. }
            | Self::NoTrueSlot
            | Self::SlotMarkOutOfRange { .. }
            | Self::SlotWiderThanDisc { .. }
            | Self::SlotTooNarrow { .. }
            | Self::LeadInLongerThanWall { .. }
            | Self::SlotsMeet { .. }
            | Self::CombinationLength { .. }
            | Self::CombinationMarkOutOfRange { .. } => false,
        }
    }

    /// Stable name for programs, for example `slot-too-narrow`; nothing here is decided by it.
    pub fn code(&self) -> &'static str {
        match self {
            Self::NotANumber { .. } | Self::CoefficientNotANumber { .. } => "not-a-number",
            Self::SizeNotPositive { .. } => "size-not-positive",
            Self::OutOfRange { .. }
            | Self::CoefficientNegative { .. }
            | Self::CoefficientTooLarge { .. } => "out-of-range",
            Self::OwnWoodTwice { .. } | Self::OwnWoodUnnamed { .. } => "own-wood-name",
            Self::UnknownWood { .. } => "unknown-wood",
            Self::GuideTooLoose { .. } => "guide-too-loose",
            Self::HoldBeyondEngagement { .. } => "hold-beyond-engagement",
            Self::FractionUnknown { .. } => "fraction-unknown",
            Self::SeasonReversed { .. } => "season-reversed",
            Self::MoistureOutsideTable { .. } => "moisture-outside-table",
            Self::PlateMovesFromHinge { .. } => "plate-moves-from-hinge",
            Self::NumberOfDials { .. } => "number-of-dials",
            Self::NumberOfPositions { .. } => "number-of-positions",
            Self::KeySides { .. } => "key-sides",
            Self::NumberOfLabels { .. } => "number-of-labels",
            Self::LabelTwice { .. } => "label-twice",
            Self::NumberOfSlots { .. } => "number-of-slots",
            Self::NoTrueSlot => "no-true-slot",
            Self::SlotMarkOutOfRange { .. } => "slot-mark-out-of-range",
            Self::SlotWiderThanDisc { .. } => "slot-wider-than-disc",
            Self::SlotTooNarrow { .. } => "slot-too-narrow",
            Self::LeadInLongerThanWall { .. } => "lead-in-longer-than-wall",
            Self::SlotsMeet { .. } => "slots-meet",
            Self::CombinationLength { .. } => "combination-length",
            Self::CombinationMarkOutOfRange { .. } => "combination-mark-out-of-range",
        }
    }
}
