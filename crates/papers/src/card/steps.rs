//! What is done to open and to close, in no language yet: the one list that all cards tell.

use latchwright_model::Design;

use super::text::{Action, DialTurn};

/// One step of the card.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Deed {
    /// Slider forward, and every dial to the mark nearest the hinge.
    MakeReady,
    /// Every dial to its mark of the combination.
    SetDials,
    /// Slider back.
    SlideBack,
    /// Lid up.
    Lift,
    /// Lid down, slider still back.
    Lower,
    /// Slider forward again.
    Shut,
    /// Every dial off its mark.
    TurnAway,
}

/// The steps to open `design`.
pub(super) fn open(design: &Design) -> Vec<Deed> {
    let mut deeds = vec![Deed::MakeReady];
    if !design.dials.is_empty() {
        deeds.push(Deed::SetDials);
    }
    deeds.extend([Deed::SlideBack, Deed::Lift]);
    deeds
}

/// The steps to close it again.
pub(super) fn close(design: &Design) -> Vec<Deed> {
    let mut deeds = vec![Deed::Lower, Deed::Shut];
    if !design.dials.is_empty() {
        deeds.push(Deed::TurnAway);
    }
    deeds
}

impl Deed {
    /// What the hand does in this step.
    pub(super) fn actions(self, design: &Design) -> Vec<Action> {
        match self {
            Self::MakeReady if design.dials.is_empty() => vec![Action::SlideForward],
            Self::MakeReady => vec![Action::SlideForward, Action::PointAtHinge],
            Self::SetDials if design.card.show_combination => turns(design),
            Self::SetDials => vec![Action::TurnToSecret],
            Self::SlideBack => vec![Action::SlideBack],
            Self::Lift => vec![Action::Lift],
            Self::Lower => vec![Action::SlideBack, Action::Lower],
            Self::Shut => vec![Action::SlideForward],
            Self::TurnAway => vec![Action::TurnAway],
        }
    }
}

fn turns(design: &Design) -> Vec<Action> {
    design
        .dials
        .iter()
        .enumerate()
        .map(|(index, dial)| Action::Turn(DialTurn::shortest(design, index, dial.positions)))
        .collect()
}
