//! One proposal: a complete design with its proof.

use super::figure::Figure;
use super::plain::least_room;
use crate::model::Design;
use crate::proof::Proof;
use crate::prove;
use crate::prove::unsure_dials;

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
