//! What a maker could do about each check, cheapest first: places and prints before sizes in wood,
//! one size before several, and what is asked of the latch or of the maker's hand last.

mod room;
mod table;
mod thickness;
mod travel;

use super::way::{Moving, Sizes, Way};
use latchwright_model::change::{DialSize, LatchSize, Size, SlotSize, Step};
use latchwright_model::{Design, Dial};
use latchwright_proof::CheckKind;
use latchwright_proof::results::{Check, Proof};

use DialSize::{BoreDiameter, DiscBelow, DiscRadius};
use LatchSize::{Engagement, GuideY, Shank, SliderBelow, Travel};
use SlotSize::Depth;

/// The ways worth trying for this check, in order. A kind of check that the search alone weighs has those
/// of the check that it is a part of; one that tells something and never fails has none.
pub(super) fn of(design: &Design, proof: &Proof, check: &Check) -> Vec<Way> {
    use CheckKind as K;
    let dial = check.dial().unwrap_or(0);
    let ways = Ways {
        design,
        proof,
        dial,
    };
    match check.kind {
        K::AtRest => ways.at_rest(),
        K::LetsIn | K::Enters | K::Fits | K::Deep | K::SlotWall | K::Window => {
            ways.lets_in(&[dial])
        }
        K::Captive => ways.captive(),
        K::StaysHeld => ways.stays_held(),
        K::Free | K::SwingsClear => ways.free(),
        K::HeldAtRest => ways.held_at_rest(),
        K::Guide => ways.guide(),
        K::DiscToDisc => moves([ways.apart(), ways.smaller(DiscRadius)].concat()),
        K::DiscToPin => ways.disc_to_pin(),
        K::KnobToKnob => ways.knobs_apart(),
        K::BoreToBore => moves([ways.apart(), ways.smaller(BoreDiameter)].concat()),
        K::BoreToEdge => ways.bore_to_edge(),
        K::BoreToGuideSlot => ways.bore_to_guide_slot(),
        K::FingerKnobRoom | K::FingerKnobWay => ways.finger_knob(),
        K::DiscToFinger => ways.finger_below_discs(),
        K::FingerToFinger => moves(ways.apart()),
        K::BarRoom => ways.bar_room(),
        K::FingerKnobSeat => ways.finger_knob_seat(),
        K::StripsToBar => ways.strips_to_bar(),
        K::StripsToKeeper => Ways::strips_to_keeper(),
        K::GuideSlotToKeeper => moves([latch(GuideY, 1), latch(Shank, -1)]),
        K::SlotToStar => ways.slot_to_star(),
        K::KeySeats => ways.key_seats(),
        K::KeyBite => ways.key_bite(),
        K::IdleDial => ways.idle(),
        K::TwinOpenings => ways.openings(),
        K::Undecided | K::NextMark | K::Shaken => ways.undecided(),
        K::PinMeetsDisc => ways.pin_meets_disc(),
        K::DiscToPlate => moves([on(dial, DiscBelow, 1)]),
        K::SliderToPlate | K::TabToKeeper => moves([latch(SliderBelow, 1)]),
        K::RoomBelow => ways.room_below(),
        K::LidCloses => Ways::lid_closes(),
        K::RabbetRoof => Ways::rabbet_roof(),
        K::PinStrength => ways.pin_strength(),
        K::TabStrength => Ways::tab_strength(),
        K::Racking => ways.racking(),
        K::EnclosedSpace => ways.enclosed_space(),
        K::ToldApart | K::Workmanship | K::ByFeel | K::SmallParts => Vec::new(),
    }
}

fn moves(ways: impl IntoIterator<Item = Sizes>) -> Vec<Way> {
    ways.into_iter().map(Way::Move).collect()
}

fn latch(size: LatchSize, times: i64) -> Sizes {
    let size = Size::Latch(size);
    Moving { size, times }.into()
}

fn on(dial: usize, size: DialSize, times: i64) -> Sizes {
    on_all(&[dial], size, times)
}

fn on_all(dials: &[usize], size: DialSize, times: i64) -> Sizes {
    let sizes = dials.iter().map(|dial| Size::Dial(*dial, size));
    Sizes(sizes.map(|size| Moving { size, times }).collect())
}

/// A size that becomes what it is told at once.
fn resize(size: Size, from: f64, to: f64) -> Step {
    Step::Resize { size, from, to }
}

/// What the ways of a check are made from.
struct Ways<'a> {
    design: &'a Design,
    proof: &'a Proof,
    /// That the check is about, from 0; the first for the whole latch.
    dial: usize,
}

impl Ways<'_> {
    fn dial(&self, index: usize) -> Option<&Dial> {
        self.design.dials.get(index)
    }

    fn every_dial(&self) -> Vec<usize> {
        (0..self.design.dials.len()).collect()
    }

    fn on(&self, size: DialSize, times: i64) -> Sizes {
        on(self.dial, size, times)
    }

    fn on_every(&self, size: DialSize, times: i64) -> Sizes {
        on_all(&self.every_dial(), size, times)
    }

    /// A size of the slots of these dials: of the true ones, of the others, or of all.
    fn slots(&self, dials: &[usize], size: SlotSize, times: i64, which: fn(i64) -> bool) -> Sizes {
        let mut sizes = Vec::new();
        for dial in dials {
            let slots = self.dial(*dial).map_or(&[][..], |dial| &dial.disc.slots);
            let wanted = slots.iter().enumerate();
            let wanted = wanted.filter(|(_, slot)| which(slot.mark));
            sizes.extend(wanted.map(|(slot, _)| Moving {
                size: Size::Slot(*dial, slot, size),
                times,
            }));
        }
        Sizes(sizes)
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
        latch(Travel, 1) + self.true_slots(&self.every_dial(), Depth, 1)
    }

    /// A tab that reaches further, and a travel that still frees it.
    fn further(&self) -> Sizes {
        latch(Engagement, 1) + self.longer()
    }
}
