//! What a maker could do about each check, cheapest first: places and prints before sizes in wood,
//! one size before several, and what is asked of the latch or of the maker's hand last.

mod room;
mod table;
mod thickness;
mod travel;

use super::way::Way;
use latchwright_model::change::{DialSize, LatchSize, Size, SlotSize, Step};
use latchwright_model::{Design, Dial};
use latchwright_proof::CheckKind;
use latchwright_proof::results::{Check, Proof};

use DialSize::{BoreDiameter, DiscBelow, DiscRadius};
use LatchSize::{Engagement, GuideY, Shank, SliderBelow, Travel};
use SlotSize::Depth;

/// Sizes that move together, with how many steps of their own each.
type Sizes = Vec<(Size, i64)>;

/// The ways worth trying for this check, in order. A kind of check that the search alone weighs has those
/// of the check that it is a part of; one that tells something and never fails has none.
pub(super) fn of(design: &Design, proof: &Proof, check: &Check) -> Vec<Way> {
    use CheckKind as K;
    let ways = Ways { design, proof };
    let dial = check.dial().unwrap_or(0);
    match check.kind {
        K::AtRest => ways.at_rest(dial),
        K::LetsIn | K::Enters | K::Fits | K::Deep | K::SlotWall | K::Window => {
            ways.lets_in(&[dial])
        }
        K::Captive => ways.captive(dial),
        K::StaysHeld => ways.stays_held(dial),
        K::Free | K::SwingsClear => ways.free(),
        K::HeldAtRest => ways.held_at_rest(),
        K::Guide => ways.guide(),
        K::DiscToDisc => ways.apart_or_smaller(dial, DiscRadius),
        K::DiscToPin => ways.disc_to_pin(dial),
        K::KnobToKnob => ways.knobs_apart(dial),
        K::BoreToBore => ways.apart_or_smaller(dial, BoreDiameter),
        K::BoreToEdge => ways.bore_to_edge(dial),
        K::BoreToGuideSlot => ways.bore_to_guide_slot(dial),
        K::FingerKnobRoom | K::FingerKnobWay => ways.finger_knob(dial),
        K::DiscToFinger | K::FingerToFinger => moves(ways.apart(dial)),
        K::BarRoom => ways.bar_room(),
        K::FingerKnobSeat => ways.finger_knob_seat(),
        K::StripsToBar => ways.strips_to_bar(),
        K::StripsToKeeper => Ways::strips_to_keeper(),
        K::GuideSlotToKeeper => moves([vec![latch(GuideY, 1)], vec![latch(Shank, -1)]]),
        K::SlotToStar => ways.slot_to_star(dial),
        K::KeySeats => ways.key_seats(dial),
        K::KeyBite => ways.key_bite(dial),
        K::IdleDial => ways.idle(dial),
        K::TwinOpenings => ways.openings(),
        K::Undecided | K::NextMark | K::Shaken => ways.undecided(),
        K::PinMeetsDisc => Ways::pin_meets_disc(dial),
        K::DiscToPlate => moves([vec![on(dial, DiscBelow, 1)]]),
        K::SliderToPlate | K::TabToKeeper => moves([vec![latch(SliderBelow, 1)]]),
        K::RoomBelow => ways.room_below(),
        K::LidCloses => Ways::lid_closes(),
        K::RabbetRoof => Ways::rabbet_roof(),
        K::PinStrength => Ways::pin_strength(dial),
        K::TabStrength => Ways::tab_strength(),
        K::Racking => ways.racking(),
        K::EnclosedSpace => ways.enclosed_space(),
        K::ToldApart | K::Workmanship | K::ByFeel | K::SmallParts => Vec::new(),
    }
}

fn moves(ways: impl IntoIterator<Item = Sizes>) -> Vec<Way> {
    let ways = ways.into_iter().filter(|sizes| !sizes.is_empty());
    ways.map(Way::Move).collect()
}

fn latch(size: LatchSize, times: i64) -> (Size, i64) {
    (Size::Latch(size), times)
}

fn on(dial: usize, size: DialSize, times: i64) -> (Size, i64) {
    (Size::Dial(dial, size), times)
}

fn on_all(dials: &[usize], size: DialSize, times: i64) -> Sizes {
    dials.iter().map(|dial| on(*dial, size, times)).collect()
}

/// A size that becomes what it is told at once.
fn resize(size: Size, from: f64, to: f64) -> Step {
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
