//! One proposal: a complete design with its proof.

use super::demands::unmet;
use super::figure::Figure;
use super::found::Found;
use super::plain::least_room;
use super::wishes::Wishes;
use latchwright_model::Design;
use latchwright_proof::prove;
use latchwright_proof::results::Proof;
use latchwright_proof::unsure_dials;

/// Designs of one way through the lattice that are proven, until one is.
pub(super) const MOST_PROOFS: usize = 8;

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
    /// Its least room: the share by which every error could grow, by the plain sums.
    pub room: f64,
    /// The figure that has the least room.
    pub decided_by: Figure,
    /// How many settings it has, all of which can be told apart.
    pub settings: u128,
    /// Lid, mm².
    pub area: f64,
    /// Diameters of the bits it is bored with and the pins it takes, mm, thin to thick.
    pub bits: Vec<f64>,
}

impl Proposal {
    /// The same as the best in `kind`.
    pub(super) fn as_kind(&self, kind: Kind) -> Self {
        Self {
            kind,
            ..self.clone()
        }
    }

    /// How good it is in its kind, the larger the better.
    pub(super) fn merit(&self) -> (f64, f64) {
        merit(self.kind, (self.room, self.settings as f64, self.area))
    }
}

/// How good a latch with this room, so many settings and a lid of this area, mm², is in `kind`, the
/// larger the better.
pub(super) fn merit(kind: Kind, (room, settings, area): (f64, f64, f64)) -> (f64, f64) {
    match kind {
        Kind::Roomiest => (room, 0.0),
        Kind::MostSettings => (settings, room),
        Kind::Smallest => (-area, room),
    }
}

/// The first of these that is proven and keeps to the wishes.
pub(super) fn first_allowed<'a>(
    wishes: &Wishes,
    kind: Kind,
    mut kept: impl Iterator<Item = &'a Found>,
) -> Option<(&'a Found, Proposal)> {
    kept.find_map(|found| Some((found, allowed(wishes, kind, found)?)))
}

/// This find as a proposal, if it is proven and keeps to the wishes.
pub(super) fn allowed(wishes: &Wishes, kind: Kind, found: &Found) -> Option<Proposal> {
    let proposal = proposal(kind, &found.design)?;
    unmet(wishes, &proposal.design)
        .is_empty()
        .then_some(proposal)
}

/// This design as a proposal; `None` where it is not proven.
pub(super) fn proposal(kind: Kind, design: &Design) -> Option<Proposal> {
    // far cheaper than the proof of a latch that is not proven
    if !unsure_dials(design, 1).is_empty() {
        return None;
    }
    let proof = prove(design);
    if !proof.proven {
        return None;
    }
    let (room, decided_by) = least_room(design)?;
    Some(Proposal {
        kind,
        room,
        decided_by,
        settings: proof.settings.total,
        area: design.plate.width * design.plate.depth,
        bits: bits(design),
        proof,
        design: design.clone(),
    })
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
