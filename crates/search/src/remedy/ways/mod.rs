//! What a maker could do about each check, cheapest first: places and prints before sizes in wood,
//! one size before several, and what is asked of the latch or of the maker's hand last.

mod room;
mod table;
mod travel;

use super::through;
use super::way::Way;
use latchwright_model::Unit;
use latchwright_model::change::{DialSize, LatchSize, Size, SlotSize, Step};
use latchwright_model::{Design, Dial};
use latchwright_proof::CheckKind;
use latchwright_proof::results::{Check, Proof};

use DialSize::{BoreDiameter, DiscRadius};
use LatchSize::{Engagement, GuideLength, GuideY, Shank, Travel};
use SlotSize::Depth;

/// Sizes that move together, with how many steps of their own each.
pub(super) type Sizes = Vec<(Size, i64)>;

/// The ways worth trying for this check, in order; every size either way for a check that is not
/// known here.
pub(super) fn of(design: &Design, proof: &Proof, check: &Check) -> Vec<Way> {
    let ways = Ways { design, proof };
    let dial = check.dial().unwrap_or(0);
    match check.kind {
        CheckKind::AtRest => ways.at_rest(dial),
        CheckKind::LetsIn => ways.lets_in(&[dial]),
        CheckKind::Captive => ways.captive(dial),
        CheckKind::StaysHeld => ways.stays_held(dial),
        CheckKind::Free | CheckKind::SwingsClear => ways.free(),
        CheckKind::HeldAtRest => ways.held_at_rest(),
        CheckKind::Guide => ways.guide(),
        CheckKind::DiscToDisc => ways.apart_or_smaller(dial, DiscRadius),
        CheckKind::DiscToPin => ways.disc_to_pin(dial),
        CheckKind::KnobToKnob => ways.knobs_apart(dial),
        CheckKind::BoreToBore => ways.apart_or_smaller(dial, BoreDiameter),
        CheckKind::BoreToEdge => ways.bore_to_edge(dial),
        CheckKind::BoreToGuideSlot => ways.bore_to_guide_slot(dial),
        CheckKind::FingerKnobRoom | CheckKind::FingerKnobWay => ways.finger_knob(dial),
        CheckKind::DiscToFinger | CheckKind::FingerToFinger => moves(ways.apart(dial)),
        CheckKind::BarRoom => ways.bar_room(),
        CheckKind::FingerKnobSeat => ways.finger_knob_seat(),
        CheckKind::StripsToBar => ways.strips_to_bar(),
        CheckKind::StripsToKeeper => moves([
            vec![latch(GuideY, 1)],
            vec![latch(GuideLength, -20), latch(GuideY, 10)],
            vec![latch(GuideLength, -20)],
        ]),
        CheckKind::GuideSlotToKeeper => moves([vec![latch(GuideY, 1)], vec![latch(Shank, -1)]]),
        CheckKind::SlotToStar => ways.slot_to_star(dial),
        CheckKind::KeySeats => ways.key_seats(dial),
        CheckKind::KeyBite => ways.key_bite(dial),
        CheckKind::IdleDial => ways.idle(dial),
        CheckKind::TwinOpenings => ways.openings(),
        CheckKind::Undecided | CheckKind::Shaken => ways.undecided(),
        _ => {
            let through = through::of(design, check);
            if through.is_empty() && check.unit != Unit::Count {
                ways.any(check.dial())
            } else {
                through
            }
        }
    }
}

pub(super) fn moves(ways: impl IntoIterator<Item = Sizes>) -> Vec<Way> {
    let ways = ways.into_iter().filter(|sizes| !sizes.is_empty());
    ways.map(Way::Move).collect()
}

pub(super) fn latch(size: LatchSize, times: i64) -> (Size, i64) {
    (Size::Latch(size), times)
}

pub(super) fn on(dial: usize, size: DialSize, times: i64) -> (Size, i64) {
    (Size::Dial(dial, size), times)
}

pub(super) fn on_all(dials: &[usize], size: DialSize, times: i64) -> Sizes {
    dials.iter().map(|dial| on(*dial, size, times)).collect()
}

pub(super) fn counted_mm(size: Size, from: f64, to: f64) -> Step {
    Step::Resize { size, from, to }
}

fn counted(size: Size, from: u32, to: u32) -> Step {
    let (from, to) = (f64::from(from), f64::from(to));
    Step::Resize { size, from, to }
}

struct Ways<'a> {
    design: &'a Design,
    proof: &'a Proof,
}

impl Ways<'_> {
    fn dial(&self, index: usize) -> Option<&Dial> {
        self.design.dials.get(index)
    }

    fn every_dial(&self) -> Vec<usize> {
        (0..self.design.dials.len()).collect()
    }

    /// Each size that is built, up and down: first of the dial that is asked about, then of the latch.
    fn any(&self, dial: Option<usize>) -> Vec<Way> {
        let (of_dials, of_latch): (Vec<Size>, Vec<Size>) = Size::all(self.design)
            .into_iter()
            .filter(|size| size.is_built() && size.unit() != Unit::Count)
            .filter(|size| size.dial().is_none() || size.dial() == dial)
            .partition(|size| size.dial().is_some());
        let sizes = of_dials.into_iter().chain(of_latch);
        moves(sizes.flat_map(|size| [vec![(size, 1)], vec![(size, -1)]]))
    }

    /// A size of the slots of these dials: of the true ones, of the others, or of all.
    fn slots(&self, dials: &[usize], size: SlotSize, times: i64, which: fn(i64) -> bool) -> Sizes {
        let mut sizes = Vec::new();
        for dial in dials {
            let slots = self.dial(*dial).map_or(&[][..], |dial| &dial.disc.slots);
            let wanted = slots
                .iter()
                .enumerate()
                .filter(|(_, slot)| which(slot.mark));
            sizes.extend(wanted.map(|(slot, _)| (Size::Slot(*dial, slot, size), times)));
        }
        sizes
    }

    fn true_slots(&self, dials: &[usize], size: SlotSize, times: i64) -> Sizes {
        self.slots(dials, size, times, |mark| mark == 0)
    }

    fn other_slots(&self, dials: &[usize], size: SlotSize, times: i64) -> Sizes {
        self.slots(dials, size, times, |mark| mark != 0)
    }

    fn all_slots(&self, dials: &[usize], size: SlotSize, times: i64) -> Sizes {
        self.slots(dials, size, times, |_| true)
    }

    /// A longer travel, with slots that are deep enough for it.
    fn longer(&self) -> Sizes {
        let mut sizes = vec![latch(Travel, 1)];
        sizes.extend(self.true_slots(&self.every_dial(), Depth, 1));
        sizes
    }

    /// A tab that reaches further, and a travel that still frees it.
    fn further(&self) -> Sizes {
        let mut sizes = vec![latch(Engagement, 1)];
        sizes.extend(self.longer());
        sizes
    }
}

#[cfg(test)]
mod tests {
    use super::DialSize::{CentreX, Gap};
    use super::LatchSize::Reading;
    use super::*;

    #[test]
    fn a_check_without_ways_of_its_own_tries_what_can_be_built() {
        let design = Design::default();
        let proof = latchwright_proof::prove(&design);
        let ways = Ways {
            design: &design,
            proof: &proof,
        };
        let tried: Vec<Size> = ways
            .any(Some(1))
            .into_iter()
            .flat_map(|way| match way {
                Way::Move(sizes) => sizes,
                Way::Fewer(_) | Way::Once(_) => Vec::new(),
            })
            .map(|(size, _)| size)
            .collect();
        assert_eq!(tried.first(), Some(&Size::Dial(1, CentreX)));
        let times = |size| tried.iter().filter(|tried| **tried == size).count();
        assert_eq!(times(Size::Latch(GuideLength)), 2);
        assert_eq!(times(Size::Slot(1, 0, Depth)), 2);
        assert_eq!(times(Size::Dial(0, Gap)), 0);
        assert_eq!(times(Size::Latch(Reading)), 0);
    }
}
