//! What part a check has among the others: most fail for themselves; what the marks do fails where other
//! checks do.

use latchwright_proof::CheckKind;
use latchwright_proof::check::of_kind;
use latchwright_proof::results::{Check, Proof};
use latchwright_proof::verdict::Verdict;

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
    use CheckKind as K;
    match kind {
        K::Undecided | K::Shaken => Role::Effect(Mark::Worst),
        K::IdleDial => Role::Effect(Mark::Best),
        K::TwinOpenings => Role::Effect(Mark::None),
        // keys before slots before what holds the tab: each rests on those before it
        K::KeySeats => Role::Cause(0),
        K::LetsIn => Role::Cause(1),
        K::StaysHeld => Role::CauseAndEffect(2),
        K::AtRest
        | K::Enters
        | K::Fits
        | K::Deep
        | K::SlotWall
        | K::Captive
        | K::NextMark
        | K::Free
        | K::HeldAtRest
        | K::Guide
        | K::DiscToDisc
        | K::KnobToKnob
        | K::BoreToBore
        | K::DiscToPin
        | K::BoreToEdge
        | K::BoreToGuideSlot
        | K::FingerKnobRoom
        | K::FingerKnobWay
        | K::SlotToStar
        | K::DiscToFinger
        | K::FingerToFinger
        | K::BarRoom
        | K::FingerKnobSeat
        | K::GuideSlotToKeeper
        | K::SwingsClear
        | K::StripsToBar
        | K::StripsToKeeper
        | K::KeyBite
        | K::Window
        | K::ToldApart
        | K::Workmanship
        | K::PinMeetsDisc
        | K::DiscToPlate
        | K::SliderToPlate
        | K::TabToKeeper
        | K::RoomBelow
        | K::LidCloses
        | K::RabbetRoof
        | K::PinStrength
        | K::TabStrength
        | K::Racking
        | K::ByFeel
        | K::EnclosedSpace
        | K::SmallParts => Role::Alone,
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

/// A figure that grows towards 0 as the check comes nearer to passing: its margin, or, for a check that
/// counts marks, by how much in mm the mark that decides is short.
pub(super) fn figure(proof: &Proof, check: &Check) -> f64 {
    let unsure = |wanted: Option<usize>| {
        let dials = proof.dials.iter().enumerate();
        dials
            .filter(move |(dial, _)| wanted.is_none_or(|wanted| wanted == *dial))
            .flat_map(|(_, dial)| &dial.marks)
            .filter(|mark| mark.verdict == Verdict::Unsure)
            .map(|mark| mark.margin)
    };
    let short = match of(check.kind) {
        Role::Effect(Mark::Worst) => unsure(None).min_by(f64::total_cmp),
        Role::Effect(Mark::Best) => unsure(check.dial()).max_by(f64::total_cmp),
        Role::Effect(Mark::None) | Role::CauseAndEffect(_) | Role::Cause(_) | Role::Alone => {
            of_kind(proof, check.kind, check.dial()).map(|check| check.margin)
        }
    };
    short.filter(|short| short.is_finite()).unwrap_or(-1.0)
}
