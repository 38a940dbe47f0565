//! When nothing is left to mend.

use super::fails;
use latchwright_model::{Design, Dial, Slot};
use latchwright_proof::CheckKind;
use latchwright_proof::results::Proof;

/// Whether nothing is left to mend: the design is proven, or [`all_but_meant`] is.
pub fn settled(design: &Design, proof: &Proof) -> bool {
    proof.proven || all_but_meant(design, proof)
}

/// Whether everything is proven but that one setting alone opens, and every other one that does opens by
/// a slot of its own that is cut as wide and deep as the true one: a box that opens twice is meant to.
pub fn all_but_meant(design: &Design, proof: &Proof) -> bool {
    let ways = |dial: &Dial| {
        let slots = &dial.disc.slots;
        let truly = slots.iter().find(|slot| slot.mark == 0);
        let alike = |slot: &&Slot| {
            truly.is_some_and(|truly| {
                (slot.width, slot.depth, slot.lead_in) == (truly.width, truly.depth, truly.lead_in)
            })
        };
        slots.iter().filter(alike).count() as u128
    };
    let mut failing = proof.checks.iter().filter(|check| fails(check));
    let openings = design.dials.iter().map(ways).product::<u128>();
    !proof.blocks_building()
        && openings > 1
        && proof.settings.opens == openings
        && proof.settings.unsure == 0
        && proof.states.rows.iter().all(|row| row.as_meant)
        && failing.all(|check| check.kind == CheckKind::TwinOpenings)
}
