//! The figures that are followed over all builds.

use crate::built::{Meeting, Moment};

/// A figure of one build, mm; negative where the latch does not do what it should.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum BuildFigure {
    /// Pin clear of the rim, slider forward.
    ClearAtRest,
    /// How far aside the pin could still be moved at its digit before its mouth kept it out.
    Enters,
    /// Slot left beyond the pin at its digit, slider back.
    Depth,
    /// Tab held beyond what is required when plain rim stops the pin.
    HeldAtRim,
    /// Tab clear of the keeper, slider back.
    Free,
    /// Tab held beyond what is required, slider forward.
    HeldAtRest,
    /// Play left to either side in the guide.
    GuidePlay,
}

/// Figures in a group: those of one dial, or those of the whole latch.
pub(super) const FIGURES: usize = 4;

/// The figures of one dial, in the order of [`DIAL`].
pub(super) const DIAL: [BuildFigure; FIGURES] = [
    BuildFigure::ClearAtRest,
    BuildFigure::Enters,
    BuildFigure::Depth,
    BuildFigure::HeldAtRim,
];

/// The figures of the whole latch.
pub(super) const LATCH: [BuildFigure; 3] = [
    BuildFigure::Free,
    BuildFigure::HeldAtRest,
    BuildFigure::GuidePlay,
];

impl BuildFigure {
    /// Its stable name.
    pub fn name(self) -> &'static str {
        match self {
            Self::ClearAtRest => "clear-at-rest",
            Self::Enters => "enters",
            Self::Depth => "depth",
            Self::HeldAtRim => "held-at-rim",
            Self::Free => "free",
            Self::HeldAtRest => "held-at-rest",
            Self::GuidePlay => "guide-play",
        }
    }
}

/// The figures of one dial, in the order of [`DIAL`]; what this disc does not have is not finite.
///
/// `turn` is that of the true slot with the pointer at its digit; `held` the tab under the keeper
/// beyond what is required, slider forward.
pub(super) fn of_dial(meeting: &Meeting<'_>, turn: f64, held: f64) -> [f64; FIGURES] {
    let entry = meeting.true_entry(turn);
    let at = |value: Option<f64>| value.unwrap_or(f64::NAN);
    [
        meeting.clear_at_rest(),
        at(entry.map(|entry| entry.enters)),
        at(entry.map(|entry| entry.depth)),
        at(meeting.rim_stop().map(|travel| held - travel)),
    ]
}

/// The figures of the whole latch, in the order of [`LATCH`], and one place that stays empty.
pub(super) fn of_latch(moment: &Moment<'_>) -> [f64; FIGURES] {
    [
        moment.out_at_full_travel(),
        moment.held_at_rest(),
        moment.play_left(),
        f64::NAN,
    ]
}
