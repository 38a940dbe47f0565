//! What a maker could do about each check, cheapest first: places and prints before sizes in wood,
//! one size before several, and what is asked of the latch or of the maker's hand last.

use super::through;
use super::way::Way;
use crate::change::{DialSize, LatchSize, Size, SlotSize, Step};
use crate::model::{Design, Dial, Material};
use crate::proof::{Check, Proof, Verdict};

use DialSize::{
    Apothem, BoreDiameter, CentreX, CentreY, Clearance, DiscRadius, Gap, KnobDiameter, PinDiameter,
    ShaftPlay,
};
use LatchSize::{
    Engagement, GuideLength, GuidePlay, PlateDepth, PlateWidth, Print, PullAt, Reading,
    RequiredHold, Shank, TabWidth, Travel,
};
use SlotSize::{Depth, LeadIn, Width};

/// Sizes that move together, with how many steps of their own each.
pub(super) type Sizes = Vec<(Size, i64)>;

/// The ways worth trying for this check, in order; none for a check that is not known here.
pub(super) fn of(design: &Design, proof: &Proof, check: &Check) -> Vec<Way> {
    let ways = Ways { design, proof };
    let dial = check.dial.unwrap_or(0);
    match check.name {
        "at-rest" => ways.at_rest(dial),
        "lets-in" => ways.lets_in(&[dial]),
        "captive" => ways.captive(dial),
        "stays-held" => ways.stays_held(dial),
        "free" => ways.free(),
        "held-at-rest" => ways.held_at_rest(),
        "guide" => ways.guide(),
        "disc-to-disc" => ways.apart_or_smaller(dial, DiscRadius),
        "disc-to-pin" => ways.disc_to_pin(dial),
        "knob-to-knob" => ways.knobs_apart(dial),
        "bore-to-bore" => ways.apart_or_smaller(dial, BoreDiameter),
        "bore-to-edge" => ways.bore_to_edge(dial),
        "bore-to-guide-slot" => ways.bore_to_guide_slot(dial),
        "slot-to-star" => ways.slot_to_star(dial),
        "key-seats" => ways.key_seats(dial),
        "key-bite" => ways.key_bite(dial),
        "idle-dial" => ways.idle(dial),
        "twin-openings" => ways.openings(),
        "undecided" | "shaken" => ways.undecided(),
        _ => through::of(design, check),
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

    /// The other dials, the nearest first.
    fn neighbours(&self, index: usize) -> Vec<usize> {
        let Some(own) = self.dial(index) else {
            return Vec::new();
        };
        let square = |dial: &usize| {
            self.dial(*dial).map_or(f64::INFINITY, |other| {
                let (x, y) = (other.centre.0 - own.centre.0, other.centre.1 - own.centre.1);
                x * x + y * y
            })
        };
        let mut others = self.every_dial();
        others.retain(|other| *other != index);
        others.sort_by(|one, other| square(one).total_cmp(&square(other)));
        others
    }

    /// All dials further apart, each as far from the next as any other.
    fn spread(&self) -> Sizes {
        let mut dials = self.every_dial();
        let x = |dial: &usize| self.dial(*dial).map_or(0.0, |dial| dial.centre.0);
        dials.sort_by(|one, other| x(one).total_cmp(&x(other)));
        let last = i64::try_from(dials.len()).unwrap_or(1) - 1;
        let halves = if last % 2 == 0 { 2 } else { 1 };
        let places = (0_i64..).zip(&dials);
        let moved = places.map(|(place, dial)| on(*dial, CentreX, (2 * place - last) / halves));
        moved.filter(|(_, times)| *times != 0).collect()
    }

    /// What brings this dial and its nearest neighbour apart: moving either, or spreading all.
    fn apart(&self, index: usize) -> Vec<Sizes> {
        let mut ways = Vec::new();
        if let Some(other) = self.neighbours(index).first() {
            let x = |dial| self.dial(dial).map_or(0.0, |dial| dial.centre.0);
            let away = if x(index) < x(*other) { -1 } else { 1 };
            ways.push(vec![on(index, CentreX, away)]);
            ways.push(vec![on(*other, CentreX, -away)]);
        }
        ways.push(self.spread());
        ways
    }

    fn at_rest(&self, dial: usize) -> Vec<Way> {
        let gap = vec![on(dial, Gap, 1)];
        let mut gap_and_reach = gap.clone();
        gap_and_reach.extend([latch(Engagement, 1), latch(Travel, 1)]);
        let mut all = on_all(&self.every_dial(), Gap, 1);
        all.extend([latch(Engagement, 1), latch(Travel, 1)]);
        moves([
            gap,
            gap_and_reach,
            all,
            vec![on(dial, ShaftPlay, -1)],
            vec![latch(GuideLength, 20)],
            vec![latch(GuidePlay, -1)],
        ])
    }

    /// What lets the pins of these dials into their true slots.
    fn lets_in(&self, dials: &[usize]) -> Vec<Way> {
        let wider = self.true_slots(dials, Width, 1);
        let deeper = self.true_slots(dials, Depth, 1);
        let led_in = self.true_slots(dials, LeadIn, 1);
        let larger = on_all(dials, DiscRadius, 1);
        let mut ways: Vec<Way> = self.seated(dials).into_iter().collect();
        ways.extend(moves([
            led_in.clone(),
            wider.clone(),
            deeper.clone(),
            [&led_in[..], &deeper].concat(),
            [&wider[..], &deeper].concat(),
            [&deeper[..], &larger].concat(),
            [&wider[..], &larger].concat(),
            [&wider[..], &deeper, &larger].concat(),
            on_all(dials, Clearance, -1),
            on_all(dials, PinDiameter, -1),
            vec![latch(GuidePlay, -1)],
            vec![latch(Reading, -1)],
            vec![latch(Print, -1)],
        ]));
        ways
    }

    fn captive(&self, dial: usize) -> Vec<Way> {
        moves([
            vec![on(dial, Gap, -1)],
            self.true_slots(&[dial], LeadIn, -1),
            vec![latch(Travel, 1)],
            self.longer(),
            [
                &self.longer()[..],
                &on_all(&self.every_dial(), DiscRadius, 1),
            ]
            .concat(),
            self.true_slots(&[dial], Width, -1),
            vec![latch(GuidePlay, -1)],
        ])
    }

    fn stays_held(&self, dial: usize) -> Vec<Way> {
        moves([
            vec![on(dial, Gap, -1)],
            self.other_slots(&[dial], Depth, -1),
            vec![latch(Engagement, 1)],
            self.further(),
            vec![latch(GuideLength, 20)],
            vec![latch(GuidePlay, -1)],
            vec![latch(RequiredHold, -1)],
        ])
    }

    fn free(&self) -> Vec<Way> {
        moves([
            vec![latch(Engagement, -1)],
            vec![latch(Travel, 1)],
            self.longer(),
            [
                &self.longer()[..],
                &on_all(&self.every_dial(), DiscRadius, 1),
            ]
            .concat(),
            vec![latch(GuideLength, 20)],
            vec![latch(GuidePlay, -1)],
        ])
    }

    fn held_at_rest(&self) -> Vec<Way> {
        moves([
            vec![latch(Engagement, 1)],
            self.further(),
            vec![latch(GuideLength, 20)],
            vec![latch(GuidePlay, -1)],
            vec![latch(RequiredHold, -1)],
        ])
    }

    fn guide(&self) -> Vec<Way> {
        let mut ways = moves([vec![latch(GuidePlay, 1)]]);
        let plate = &self.design.plate;
        let as_plate = Material::Wood {
            species: plate.wood.clone(),
            sawn: plate.sawn,
            grain: plate.grain,
        };
        if self.design.slider.material != as_plate {
            ways.push(Way::Once(vec![Step::SliderMaterial(as_plate)]));
        }
        ways.extend(moves([vec![latch(TabWidth, -1)]]));
        ways
    }

    /// Smaller on one dial and its neighbour, or on all alike.
    fn smaller(&self, dial: usize, size: DialSize) -> Vec<Sizes> {
        let neighbours = self.neighbours(dial);
        let pairs = neighbours.iter().take(2);
        let mut ways: Vec<Sizes> = pairs
            .map(|other| vec![on(dial, size, -1), on(*other, size, -1)])
            .collect();
        if self.design.dials.len() > 2 {
            ways.push(on_all(&self.every_dial(), size, -1));
        }
        ways
    }

    /// A smaller disc has wider mouths, and a smaller bore wants another shaft: room comes first.
    fn apart_or_smaller(&self, dial: usize, size: DialSize) -> Vec<Way> {
        moves(self.apart(dial).into_iter().chain(self.smaller(dial, size)))
    }

    fn knobs_apart(&self, dial: usize) -> Vec<Way> {
        let smaller = self.smaller(dial, KnobDiameter);
        moves(smaller.into_iter().chain(self.apart(dial)))
    }

    fn disc_to_pin(&self, dial: usize) -> Vec<Way> {
        let mut ways = self.apart(dial);
        ways.push(vec![on(dial, CentreY, 1)]);
        let nearest = self.neighbours(dial).first().copied();
        ways.extend(nearest.map(|other| vec![on(other, Gap, 1)]));
        ways.push(vec![on(dial, DiscRadius, -1)]);
        ways.push(on_all(&self.every_dial(), DiscRadius, -1));
        moves(ways)
    }

    fn bore_to_edge(&self, dial: usize) -> Vec<Way> {
        let inwards = self
            .dial(dial)
            .map_or(1, |dial| if dial.centre.0 > 0.0 { -1 } else { 1 });
        moves([
            vec![on(dial, CentreX, inwards)],
            vec![on(dial, CentreY, -1)],
            vec![on(dial, CentreY, 1)],
            on_all(&self.every_dial(), CentreY, -1),
            vec![latch(PlateDepth, 1)],
            vec![latch(PlateWidth, 2)],
            vec![on(dial, BoreDiameter, -1)],
        ])
    }

    fn bore_to_guide_slot(&self, dial: usize) -> Vec<Way> {
        let pull = self.design.slider.pull_at;
        let away = self
            .dial(dial)
            .map_or(1, |dial| if dial.centre.0 < pull { -1 } else { 1 });
        moves([
            vec![latch(Shank, -1)],
            vec![latch(PullAt, -away)],
            vec![on(dial, CentreX, away)],
            vec![on(dial, CentreY, 1)],
            on_all(&self.every_dial(), CentreY, 1),
            vec![on(dial, BoreDiameter, -1)],
        ])
    }

    fn slot_to_star(&self, dial: usize) -> Vec<Way> {
        moves([
            self.all_slots(&[dial], Depth, -1),
            vec![on(dial, DiscRadius, 1)],
            on_all(&self.every_dial(), DiscRadius, 1),
            vec![on(dial, Apothem, -1)],
        ])
    }

    /// Posts whose seats fall on the marks, on those of these dials where they do not: a disc between
    /// two marks meets its pin nowhere as it should.
    fn seated(&self, dials: &[usize]) -> Option<Way> {
        let unseated = dials.iter().filter(|index| {
            self.dial(**index)
                .is_some_and(|dial| !dial.positions.is_multiple_of(dial.key.sides.max(1)))
        });
        let steps: Vec<Step> = unseated
            .filter_map(|dial| self.posts(*dial).next())
            .collect();
        (!steps.is_empty()).then_some(Way::Once(steps))
    }

    /// Posts whose sides divide the number of positions, the usual ones first.
    fn posts(&self, index: usize) -> impl Iterator<Item = Step> {
        let dial = self.dial(index);
        let sides = [4, 3, 6, 5, 8, 7, 9, 10, 12].into_iter();
        dial.into_iter().flat_map(move |dial| {
            let fitting = sides.clone();
            let fitting = fitting.filter(|sides| dial.positions.is_multiple_of(*sides));
            fitting.map(move |to| counted(Size::KeySides(index), dial.key.sides, to))
        })
    }

    fn key_seats(&self, index: usize) -> Vec<Way> {
        let Some(dial) = self.dial(index) else {
            return Vec::new();
        };
        let (sides, positions) = (dial.key.sides.max(1), dial.positions);
        let next = positions.saturating_add(sides - positions % sides);
        let more = vec![counted(Size::Positions(index), positions, next)];
        let mut ways: Vec<Way> = self
            .posts(index)
            .map(|post| Way::Once(vec![post]))
            .collect();
        ways.extend([Way::Once(more), Way::Fewer(vec![index])]);
        ways
    }

    fn key_bite(&self, dial: usize) -> Vec<Way> {
        let mut ways = moves([
            vec![on(dial, Clearance, -1)],
            vec![on(dial, Apothem, 1)],
            vec![on(dial, Apothem, 1), on(dial, DiscRadius, 1)],
        ]);
        ways.extend(self.key_seats(dial));
        ways
    }

    fn idle(&self, dial: usize) -> Vec<Way> {
        let dials = [dial];
        let mut ways = moves([
            vec![on(dial, Gap, -1)],
            self.all_slots(&dials, LeadIn, -1),
            self.all_slots(&dials, Width, -1),
        ]);
        ways.push(self.without_other_slots(&dials));
        ways.push(Way::Fewer(dials.to_vec()));
        ways.extend(moves([
            vec![on(dial, DiscRadius, 1)],
            vec![latch(Engagement, 1)],
            self.further(),
            vec![latch(RequiredHold, -1)],
        ]));
        ways
    }

    /// All slots of these dials but the true ones left out, the last first, so that the numbers of
    /// those that wait stay theirs.
    fn without_other_slots(&self, dials: &[usize]) -> Way {
        let mut steps = Vec::new();
        for dial in dials {
            let slots = self.dial(*dial).map_or(&[][..], |dial| &dial.disc.slots);
            let others = slots
                .iter()
                .enumerate()
                .rev()
                .filter(|(_, slot)| slot.mark != 0);
            steps.extend(others.map(|(slot, _)| Step::LeaveOutSlot { dial: *dial, slot }));
        }
        Way::Once(steps)
    }

    /// Dials with a mark of this verdict that is, or is not, their digit.
    fn dials_with(&self, verdict: Verdict, at_digit: bool) -> Vec<usize> {
        let found = self.proof.dials.iter().enumerate().filter(|(_, dial)| {
            let marks = (0_u32..).zip(&dial.marks);
            let mut wanted = marks.filter(|(mark, _)| (*mark == dial.digit) == at_digit);
            wanted.any(|(_, mark)| mark.verdict == verdict)
        });
        found.map(|(dial, _)| dial).collect()
    }

    fn openings(&self) -> Vec<Way> {
        let twins = self.dials_with(Verdict::Passes, false);
        if twins.is_empty() {
            let mut shut = self.dials_with(Verdict::Unsure, true);
            shut.extend(self.dials_with(Verdict::Holds, true));
            shut.sort_unstable();
            return self.lets_in(&shut);
        }
        let mut ways = vec![self.without_other_slots(&twins)];
        ways.extend(moves([
            self.other_slots(&twins, Depth, -1),
            self.true_slots(&twins, Depth, -1),
            self.all_slots(&twins, Width, -1),
        ]));
        ways.push(Way::Fewer(twins));
        ways
    }

    fn undecided(&self) -> Vec<Way> {
        let shut = self.dials_with(Verdict::Unsure, true);
        let dials = self.dials_with(Verdict::Unsure, false);
        if dials.is_empty() {
            return self.lets_in(&shut);
        }
        let mut ways: Vec<Way> = self.seated(&dials).into_iter().collect();
        ways.extend(moves([
            self.all_slots(&dials, LeadIn, -1),
            self.all_slots(&dials, Width, -1),
            on_all(&dials, Gap, -1),
            self.other_slots(&dials, Depth, -1),
        ]));
        ways.push(self.without_other_slots(&dials));
        ways.push(Way::Fewer(dials.clone()));
        ways.extend(moves([
            on_all(&dials, DiscRadius, 1),
            vec![latch(Engagement, 1)],
            self.further(),
            vec![latch(RequiredHold, -1)],
            vec![latch(Reading, -1)],
        ]));
        ways
    }
}
