//! One margin of a design, beside what it would be in a latch without any error: what is to spare at the
//! worst, and so how much of its own uncertainty that is.

use latchwright_proof::check::{About, CheckKind};

/// Below this a margin, mm, counts as none, so that the proof's own rounding never takes it.
pub(super) const DUST: f64 = 1e-6;

/// One margin by the plain sums, in the unit of its kind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Margin {
    /// What is asked.
    pub kind: CheckKind,
    /// Of what.
    pub about: About,
    /// What is to spare when nothing is off.
    pub nominal: f64,
    /// What is to spare at the worst.
    pub worst: f64,
}

impl Margin {
    /// What all that may be off takes.
    pub fn uncertainty(&self) -> f64 {
        self.nominal - self.worst
    }

    /// What is to spare at the worst as a share of what may be off: 0.5, and every error could be
    /// half as large again. Infinite where nothing is uncertain.
    pub fn share(&self) -> f64 {
        let uncertain = self.uncertainty();
        if uncertain > 1e-9 {
            self.worst / uncertain
        } else if self.worst >= -1e-9 {
            f64::INFINITY
        } else {
            f64::NEG_INFINITY
        }
    }

    /// What is to spare when every error is `1 + share` times as large.
    ///
    /// A `share` below 0 is for what the proof may still find to be there; where the proof has no more
    /// than the plain sums, it counts as 0.
    pub(super) fn left_at(&self, share: f64) -> f64 {
        let share = if is_sharpened(self.kind) {
            share
        } else {
            share.max(0.0)
        };
        self.nominal - (1.0 + share) * self.uncertainty()
    }
}

/// Whether the proof's exact worst case may leave more than the plain sums.
const fn is_sharpened(kind: CheckKind) -> bool {
    matches!(
        kind,
        CheckKind::Free
            | CheckKind::SwingsClear
            | CheckKind::HeldAtRest
            | CheckKind::AtRest
            | CheckKind::Enters
            | CheckKind::Deep
            | CheckKind::Captive
            | CheckKind::StaysHeld
            | CheckKind::NextMark
            | CheckKind::Guide
    )
}

#[cfg(test)]
mod tests {
    use super::super::demand::work_to;
    use super::super::weigh::room_to_spare;
    use latchwright_model::Design;

    #[test]
    fn room_is_the_share_by_which_every_error_can_grow() {
        let design = Design::default();
        let (room, deciding) = room_to_spare(&design).unwrap();
        assert!((0.05..0.6).contains(&room), "{room} {deciding:?}");
        let grown = |share: f64| {
            let mut grown = design.clone();
            work_to(&mut grown, 1.0 + share);
            room_to_spare(&grown).unwrap().0
        };
        assert!(grown(room - 0.03) > 0.0);
        assert!(grown(room + 0.03) < 0.0);
    }
}
