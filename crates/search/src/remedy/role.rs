//! What part a check has among the others: most fail for themselves; what the marks do fails where other
//! checks do.

use latchwright_proof::CheckKind::{
    self, AtRest, BarRoom, BoreToBore, BoreToEdge, BoreToGuideSlot, ByFeel, Captive, Deep,
    DiscToDisc, DiscToFinger, DiscToPin, DiscToPlate, EnclosedSpace, Enters, FingerKnobRoom,
    FingerKnobSeat, FingerKnobWay, FingerToFinger, Fits, Free, Guide, GuideSlotToKeeper,
    HeldAtRest, IdleDial, KeyBite, KeySeats, KnobToKnob, LetsIn, LidCloses, NextMark, PinMeetsDisc,
    PinStrength, RabbetRoof, Racking, RoomBelow, Shaken, SliderToPlate, SlotToStar, SlotWall,
    SmallParts, StaysHeld, StripsToBar, StripsToKeeper, SwingsClear, TabStrength, TabToKeeper,
    ToldApart, TwinOpenings, Undecided, Window, Workmanship,
};

/// The part of a check.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Role {
    /// It fails for itself and leaves other checks alone.
    Alone,
    /// Where it fails, marks are unsure or dials idle; it is mended at this turn among such.
    Cause(u8),
    /// So too, and it fails where others do: where a true slot stops its own pin, no tab stays held.
    CauseAndEffect(u8),
    /// It fails where others do: it counts what the marks do, of which this one decides.
    Effect(Mark),
}

/// The mark that decides a check which counts marks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Mark {
    /// The one that is furthest from a promise.
    Worst,
    /// The one that is nearest to a promise.
    Best,
    /// No single one.
    None,
}

/// The part of checks of this kind.
pub(super) const fn of(kind: CheckKind) -> Role {
    match kind {
        Undecided | Shaken => Role::Effect(Mark::Worst),
        IdleDial => Role::Effect(Mark::Best),
        TwinOpenings => Role::Effect(Mark::None),
        // keys before slots before what holds the tab: each rests on those before it
        KeySeats => Role::Cause(0),
        LetsIn => Role::Cause(1),
        StaysHeld => Role::CauseAndEffect(2),
        AtRest | Enters | Fits | Deep | SlotWall | Captive | NextMark | Free | HeldAtRest
        | Guide | DiscToDisc | KnobToKnob | BoreToBore | DiscToPin | BoreToEdge
        | BoreToGuideSlot | FingerKnobRoom | FingerKnobWay | SlotToStar | DiscToFinger
        | FingerToFinger | BarRoom | FingerKnobSeat | GuideSlotToKeeper | SwingsClear
        | StripsToBar | StripsToKeeper | KeyBite | Window | ToldApart | Workmanship
        | PinMeetsDisc | DiscToPlate | SliderToPlate | TabToKeeper | RoomBelow | LidCloses
        | RabbetRoof | PinStrength | TabStrength | Racking | ByFeel | EnclosedSpace
        | SmallParts => Role::Alone,
    }
}

impl Role {
    /// Whether it fails where other checks do.
    pub const fn is_effect(self) -> bool {
        match self {
            Self::Effect(_) | Self::CauseAndEffect(_) => true,
            Self::Alone | Self::Cause(_) => false,
        }
    }

    /// The turn at which it is mended, if marks are unsure where it fails.
    pub const fn turn_as_cause(self) -> Option<u8> {
        match self {
            Self::Cause(turn) | Self::CauseAndEffect(turn) => Some(turn),
            Self::Alone | Self::Effect(_) => None,
        }
    }
}
