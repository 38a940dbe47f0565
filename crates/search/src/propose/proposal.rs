//! One proposal: a complete design with its proof.

use super::margin::Margin;
use super::unmet::unmet;
use super::weigh::room_to_spare;
use super::wishes::Wishes;
use latchwright_model::Design;
use latchwright_proof::results::Proof;
use latchwright_proof::{prove, unsure_dials};

/// In what a proposal is the best.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// The largest least margin, each measured against its own uncertainty.
    Roomiest,
    /// The most settings.
    MostSettings,
    /// The smallest lid.
    Smallest,
}

/// One complete design that is proven.
#[derive(Debug, Clone, PartialEq)]
pub struct Proposal {
    /// In what it is the best.
    pub kind: Kind,
    /// The design.
    pub design: Design,
    /// Its proof; always proven.
    pub proof: Proof,
    /// Its room to spare: the share by which every error could grow, by the plain sums.
    pub room_to_spare: f64,
    /// The margin that has the least of it.
    pub decided_by: Margin,
    /// How many settings it has, all of which can be told apart.
    pub settings: u128,
    /// Lid, mm².
    pub area: f64,
    /// Diameters of the bits it is bored with and the pins it takes, mm, thin to thick.
    pub bits: Vec<f64>,
}

impl Proposal {
    /// This design as a proposal, if it is proven and keeps to the wishes.
    pub(super) fn allowed(wishes: &Wishes, kind: Kind, design: &Design) -> Option<Self> {
        // far cheaper than the proof of a latch that is not proven
        if !unsure_dials(design, 1).is_empty() || !unmet(wishes, design).is_empty() {
            return None;
        }
        let proof = prove(design);
        if !proof.proven {
            return None;
        }
        let (room_to_spare, decided_by) = room_to_spare(design)?;
        Some(Self {
            kind,
            room_to_spare,
            decided_by,
            settings: proof.settings.total,
            area: design.plate.width * design.plate.depth,
            bits: bits(design),
            proof,
            design: design.clone(),
        })
    }

    /// The same as the best in `kind`.
    pub(super) fn as_kind(&self, kind: Kind) -> Self {
        Self {
            kind,
            ..self.clone()
        }
    }

    /// How good it is in its kind.
    pub(super) fn merit(&self) -> Merit {
        Merit::of(
            self.kind,
            self.room_to_spare,
            self.settings as f64,
            self.area,
        )
    }
}

/// How good a latch is in a kind, the larger the better.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub(super) struct Merit {
    /// What the kind is about: room to spare, settings, or minus the lid's area, mm².
    pub first: f64,
    /// Room to spare, where that is alike.
    room: f64,
}

impl Merit {
    /// Of a latch with this room to spare, so many settings and a lid of this area, mm².
    pub(super) fn of(kind: Kind, room: f64, settings: f64, area: f64) -> Self {
        let first = match kind {
            Kind::Roomiest => room,
            Kind::MostSettings => settings,
            Kind::Smallest => -area,
        };
        Self { first, room }
    }
}

/// Diameters of the bits that a design is bored with and of the pins it takes, mm, thin to thick.
pub(super) fn bits(design: &Design) -> Vec<f64> {
    let dials = design.dials.iter();
    let mut bits: Vec<f64> = dials
        .flat_map(|dial| [dial.bore.diameter, dial.pin.diameter])
        .collect();
    bits.sort_by(f64::total_cmp);
    bits.dedup();
    bits
}
