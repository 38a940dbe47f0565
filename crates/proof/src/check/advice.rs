//! What to do about a check, as values: nothing, a change with its estimate, or a warning.
//!
//! Estimates are made by formula, in steps that a maker measures; the search finds what really mends.
//! Lengths are millimetres, angles degrees. The dial, or the two, are those that the check is about.

use latchwright_model::Climate;

/// What is to be done.
#[derive(Debug, Clone, PartialEq)]
pub enum Advice {
    /// Nothing: the margin is to spare.
    Slack,
    /// Nothing, and why.
    Nothing(Nothing),
    /// Something, with about what figures.
    Change(Estimate),
    /// Something to know or to weigh up.
    Warning(Warning),
}

impl Advice {
    /// Whether there is something to do or to know beyond the figures.
    pub const fn advises(&self) -> bool {
        match self {
            Self::Slack | Self::Nothing(_) => false,
            Self::Change(_) | Self::Warning(_) => true,
        }
    }
}

/// Why nothing is to be done.
#[derive(Debug, Clone, PartialEq)]
pub enum Nothing {
    /// The positions are a multiple of the post's sides.
    Seated {
        /// Positions of the dial.
        positions: u32,
        /// Sides of its post.
        sides: u32,
    },
    /// The dial holds at so many of its marks.
    HoldsAt {
        /// Marks at which it holds.
        marks: usize,
        /// Marks in all.
        of: usize,
    },
    /// One setting opens.
    OneOpens,
    /// No setting is unsure.
    NoneUnsure,
    /// No neighbour of a digit lets a pin in.
    NoNeighbourOpens,
    /// By feel, the slider moves on by so much when the dial that binds first comes right.
    MovesOn {
        /// How far, mm.
        by: f64,
    },
    /// By feel, the dials stop the slider alike.
    StopsAlike,
    /// The room under the lid is too small for a child.
    TooSmallForAChild(RoomInside),
    /// A child could be shut in, but it is for grown people.
    ForGrownPeople(RoomInside),
    /// No part that comes off is a small one.
    NoSmallParts,
    /// There are small parts, at an age that may have them.
    SmallPartsAtThisAge(Vec<LoosePart>),
}

/// The room inside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct RoomInside {
    /// Litres.
    pub litres: f64,
    /// The least of its three sizes, mm.
    pub least: f64,
}

/// A part that comes off by hand or may work loose; dials count from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LoosePart {
    /// The knob of a dial.
    Knob(usize),
    /// The disc of a dial.
    Disc(usize),
    /// The pin of a dial.
    Pin(usize),
}

/// A size and about what it should be, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FromTo {
    /// As it is.
    pub from: f64,
    /// As it should be.
    pub to: f64,
}

/// A change by formula.
#[derive(Debug, Clone, PartialEq)]
pub enum Estimate {
    /// Widen the gap between pin and rim.
    WidenGap(FromTo),
    /// Deepen the true slot.
    DeepenSlot(FromTo),
    /// Widen the true slot.
    WidenSlot(FromTo),
    /// Widen the true slot to at least so much, or read the pointer to so many degrees.
    WidenSlotOrRead {
        /// The width of the slot.
        slot: FromTo,
        /// How far off its mark the pointer may stand, degrees.
        reading: f64,
    },
    /// Lengthen the travel.
    LengthenTravel(FromTo),
    /// Lengthen the engagement to about so much.
    LengthenEngagement(FromTo),
    /// Lengthen the engagement to at least so much.
    LengthenEngagementToAtLeast(FromTo),
    /// Widen the guide's play a side, or run the slider's grain as the plate's.
    WidenGuidePlay(FromTo),
    /// Move two dials apart by so much, or make their discs smaller.
    ApartOrSmallerDiscs(f64),
    /// Move two dials apart by so much, or make their knobs smaller.
    ApartOrSmallerKnobs(f64),
    /// Move two dials apart by so much.
    Apart(f64),
    /// Move two dials apart by so much, or make the first one's disc smaller.
    ApartOrSmallerDisc(f64),
    /// Move two dials apart along the front edge by so much.
    ApartAlongFront(f64),
    /// Move the dial inwards by so much, or make the plate larger.
    InwardsOrLargerPlate(f64),
    /// Move finger knob and dial apart by so much.
    FingerKnobApart(f64),
    /// Move the dial by so much away from the finger knob, or make its knob smaller.
    AwayFromFingerKnob(f64),
    /// Move the dial by so much away from the finger knob's way, or make its knob smaller.
    AwayFromFingerKnobsWay(f64),
    /// Make the disc larger or its slot shallower by so much.
    LargerDiscOrShallowerSlot(f64),
    /// Move the dials so much towards the hinge, or shorten the travel.
    DialsToHingeOrLessTravel(f64),
    /// Bring the finger knob so much further over the slider's wood, or make its shank thinner.
    FingerKnobOverWood(f64),
    /// Set the middle of the guide so much further towards the hinge.
    GuideToHinge(f64),
    /// Shorten the guide at its back end, or move the dials so much towards the hinge.
    ShortenGuideOrDialsToHinge {
        /// The guide's length.
        guide: FromTo,
        /// Move of the dials, mm.
        dials: f64,
    },
    /// Begin the guide so much further towards the hinge.
    BeginGuideFurtherBack(f64),
    /// Take other positions, or a post whose sides divide them.
    OtherPositions {
        /// Positions as they are.
        positions: u32,
        /// The nearest below, where a dial can have so few.
        fewer: Option<u32>,
        /// The nearest above.
        more: u32,
    },
    /// Make the key's clearance smaller or its apothem larger.
    TighterKey,
    /// Lengthen the pin to at least so much.
    LengthenPin(FromTo),
    /// Bring slider and disc to one height below the plate.
    OneHeight {
        /// Where the disc hangs, and both should.
        disc: f64,
        /// Where the slider hangs.
        slider: f64,
    },
    /// Hang the disc lower: a thicker washer.
    LowerDisc(FromTo),
    /// Hang the slider lower.
    LowerSlider(FromTo),
    /// Leave more room below the plate.
    MoreRoomBelow(FromTo),
    /// Deepen the rabbet, or take a thinner keeper.
    DeepenRabbet(FromTo),
    /// Take a thicker plate, or a thinner keeper in a shallower rabbet.
    ThickerPlate(FromTo),
    /// Cut the finger lower: let more of its pin stand free, in a slider that is thicker by as much.
    LowerFinger(FromTo),
    /// Let less of the pin stand free, or set in a steel rod.
    ShorterFreePin(FromTo),
    /// Take a thicker pin with slots to suit, or a steel rod.
    ThickerPin(FromTo),
    /// Thicken the slider, run its grain from front to hinge, or bring the guide nearer to the keeper.
    ThickerSlider(FromTo),
    /// Lengthen the guide, or bring the finger knob nearer to the guide's middle.
    LongerGuide {
        /// The guide's length, at least.
        guide: FromTo,
        /// The finger knob's distance from the guide's line, at most.
        aside: FromTo,
    },
    /// The disc never reaches its pin: bring the gap well below the travel.
    GapBelowTravel {
        /// The gap.
        gap: f64,
        /// The travel.
        travel: f64,
    },
    /// Narrow slots, or fewer positions, until plain rim meets the pin between marks.
    NarrowSlotsOrFewerPositions,
    /// Marks open that should not, and a neighbour of a digit is among them: narrow the slot or take
    /// fewer positions.
    NarrowSlotForTwins(Vec<OtherMarks>),
    /// Marks open that should not: leave out the second slot or make it blind.
    LeaveOutSecondSlot(Vec<OtherMarks>),
    /// Neighbours of a digit may let a pin in: narrow the slot or take fewer positions.
    NarrowSlotForNeighbours(Vec<OtherMarks>),
    /// A mark can be promised neither way: fewer positions, a narrower slot or finer workmanship decide it.
    DecideMark {
        /// The dial, from 0.
        dial: usize,
        /// The mark, from 0.
        mark: u32,
    },
    /// Halving this ± or play would add most to the least margin.
    HalveOneThing {
        /// What is to be done twice as exactly.
        what: Improvement,
        /// The ± or play as it is, mm or degrees.
        now: f64,
        /// What it adds to the least margin, mm.
        gain: f64,
    },
}

/// Marks of one dial that open, or may open, beside its digit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OtherMarks {
    /// The dial, from 0.
    pub dial: usize,
    /// Its digit.
    pub own: u32,
    /// The others, from 0, in the order in which they are told.
    pub marks: Vec<u32>,
    /// They are all marks that the dial has.
    pub every: bool,
}

/// One thing that a maker can do more exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Improvement {
    /// The places of the pins.
    PinPlaces,
    /// The places of the bores.
    BorePlaces,
    /// The place of the keeper.
    KeeperPlace,
    /// The printed sizes.
    Prints,
    /// The evenness of the coats.
    Coats,
    /// The reading of the pointers.
    Reading,
    /// The play in the guide.
    GuidePlay,
    /// The play of the shafts.
    ShaftPlay,
    /// The clearance of the keys.
    KeyClearance,
}

/// What is to be known or weighed up.
#[derive(Debug, Clone, PartialEq)]
pub enum Warning {
    /// First see that the slot lets its pin in at all.
    FirstLetIn,
    /// No setting can be promised to open: see which slot does not let its pin in.
    NoneOpens,
    /// Something is unsure because the design has faults.
    SeeFaults,
    /// First see to the settings of which nothing can be promised: a knock may open one.
    FirstDecideSettings,
    /// No single thing done twice as exactly would help: change a size.
    ChangeASize,
    /// A child could be shut in.
    ChildCouldBeShutIn(RoomInside),
    /// These parts can come off and be swallowed.
    CanBeSwallowed(Vec<LoosePart>),
}

/// When a guide that closes in some air of the year does so.
#[derive(Debug, Clone, PartialEq)]
pub enum GuideCloses {
    /// In these airs, on the way from the air it was built in.
    At(Vec<Climate>),
    /// Somewhere at the extremes of the year.
    AtTheExtremes,
}
