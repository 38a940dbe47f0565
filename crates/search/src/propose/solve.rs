//! From one point of the lattice to the least sizes that give a wanted room.
//!
//! Gap, slot, engagement, travel, spacing and the rest each have something that asks for more of
//! them. What is short is raised, step by step, until nothing is: the least sizes there are, because
//! none of them was raised without need. What asks for less of them is only looked at.

use latchwright_geometry::trig;

use super::beside_pull::{Both, set_guide, widest_knob};
use super::figure::{DUST, Figure, Question};
use super::grid::{down, up};
use super::lattice::{Lattice, Point};
use super::plain::{Ground, Work, held_by_first, least_steps, perfect, star_reach};
use super::raise::{Raised, follows};
use super::sizes::Sizes;
use super::stack::Stack;
use super::wishes::{Marks, set_lid};
use latchwright_model::key;
use latchwright_model::{Design, Dial, Key};
use latchwright_proof::check::spacing::FINGERS;
use latchwright_proof::check::{GROWN_AGE, could_hold_a_child};

/// Rounds of raising after which a point is given up.
const ROUNDS: usize = 16;
/// Wood in front of the tab's notch, mm, and of the keeper beside the tab: as the workshop asks.
pub(super) const BEFORE_NOTCH: f64 = 3.0;
pub(super) const BESIDE_TAB: f64 = 8.0;
/// The narrowest tab, mm.
pub(super) const LEAST_TAB: f64 = 20.0;

/// Solves points of one lattice.
pub(super) struct Solver {
    pub lattice: Lattice,
    pub ground: Ground,
    real: Design,
    ideal: Design,
    pub work: Work,
    /// Whether what a raised size asks of others is raised at once: faster, and now and then by another
    /// way to other sizes.
    pub at_once: bool,
}

impl Solver {
    pub(super) fn new(lattice: Lattice, ground: Ground) -> Self {
        Self {
            real: lattice.base.clone(),
            ideal: perfect(&lattice.base),
            work: Work::default(),
            at_once: false,
            lattice,
            ground,
        }
    }

    /// The lid, mm, as it stands.
    pub(super) fn lid(&self) -> (f64, f64) {
        (self.lattice.base.plate.width, self.lattice.base.plate.depth)
    }

    /// Gives the lattice another lid.
    pub(super) fn set_lid(&mut self, (width, depth): (f64, f64)) {
        for design in [&mut self.lattice.base, &mut self.real, &mut self.ideal] {
            set_lid(design, width, depth);
        }
    }

    /// Whether all goes through the thickness of the lid, wherever it stands.
    pub(super) fn stacks(&self) -> bool {
        let pinned = |design: &mut Design| pin_down(&self.lattice, design);
        Stack::up_to(&self.lattice.base, &pinned, 0.0).is_some()
    }

    /// Whether a child could be shut in under the lid as it stands.
    pub(super) fn shuts_in(&self) -> bool {
        shuts_in(&self.lattice.base)
    }

    /// The least sizes at `point` with this room in the lid as it stands; `None` where there are none.
    pub(super) fn least(&mut self, point: &Point, room: f64, from: Option<Sizes>) -> Option<Sizes> {
        let back = self.back(point);
        let nearest = self.nearest(point, self.lattice.base.tab.required_hold);
        if back > self.furthest(point) || back < nearest || self.hopeless(point, room) {
            return None;
        }
        let mut sizes = from.unwrap_or_else(|| self.smallest(point, room));
        // nothing that is raised lets the guide be longer
        let mut guide = self.fill(point, &sizes, (room, f64::INFINITY))?;
        if self.tab_falls_short(&sizes, room) {
            return None;
        }
        for _ in 0..ROUNDS {
            self.work.weigh(
                &self.ground,
                &self.real,
                (room != 0.0).then_some(&self.ideal),
                !self.lattice.free_marks,
            );
            match self.raised(point, sizes, room)? {
                Raised::To(more) => sizes = more,
                Raised::Enough => return Some(sizes),
            }
            guide = self.fill(point, &sizes, (room, guide))?;
        }
        None
    }

    /// Whether the tab would have to reach through the front to hold with this room, by the first dial:
    /// what there is now only grows, and a larger gap asks for more.
    fn tab_falls_short(&self, sizes: &Sizes, room: f64) -> bool {
        if self.lattice.holds(Question::Hold, None) {
            return false;
        }
        let Ground { drift, still, .. } = &self.ground;
        let worst = held_by_first(&self.real, drift);
        let nominal = if room == 0.0 {
            worst
        } else {
            held_by_first(&self.ideal, still)
        };
        let short = |question, worst, nominal| {
            let dial = None;
            let figure = Figure {
                question,
                dial,
                nominal,
                worst,
            };
            DUST - figure.left_at(room)
        };
        let hold = short(Question::Hold, worst.1, nominal.1);
        let gap = short(Question::AtRest, worst.0, nominal.0);
        let step = self.lattice.grid.size;
        let more = if self.at_once && gap > 0.0 && !self.lattice.holds(Question::AtRest, None) {
            follows(up(sizes.gap + gap, step) - sizes.gap)
        } else {
            0.0
        };
        (hold > 0.0 || more > 0.0)
            && self.goes_through_front(up(sizes.engagement + hold + more, step))
    }

    /// Puts point and sizes into both latches, with the longest guide up to `most`, which is handed back;
    /// `None` where the box does not hold them.
    fn fill(&mut self, point: &Point, sizes: &Sizes, (room, most): (f64, f64)) -> Option<f64> {
        let back = self.back(point);
        let (width, depth) = self.needs(point, sizes.spacing, back);
        let lid = self.lid();
        if width > lid.0 + 1e-9
            || depth > lid.1 + 1e-9
            || back < self.nearest(point, sizes.travel)
            || self.goes_through_front(sizes.engagement)
        {
            return None;
        }
        for (design, plays) in [(&mut self.real, true), (&mut self.ideal, false)] {
            put(&self.lattice, design, (point, sizes, back), plays)?;
            // the guide goes by the sizes that are held; its own may be among them
            pin_down(&self.lattice, design);
        }
        let (real, ideal) = (&mut self.real, &mut self.ideal);
        let mut both = Both { real, ideal };
        set_guide(&mut both, &self.ground, room, (self.lattice.grid, most));
        let guide = both.real.slider.guide_length;
        for design in [&mut self.real, &mut self.ideal] {
            pin_down(&self.lattice, design);
            if design.slider.guide_length <= 0.0 {
                return None;
            }
        }
        Some(guide)
    }

    /// The whole latch at `point`, with its stack; of its marks as many as can be where they are free.
    pub(super) fn finish(&mut self, point: &Point, sizes: &Sizes, room: f64) -> Option<Design> {
        self.fill(point, sizes, (room, f64::INFINITY))?;
        if self.lattice.free_marks {
            let least = least_steps(&self.ground, &self.real, &self.ideal, room);
            let asked = self.lattice.asked.clone();
            for (index, (least, marks)) in least.iter().zip(&asked).enumerate() {
                let most = self.most_seated(index, *marks, *least)?;
                if let Some(dial) = self.real.dials.get_mut(index) {
                    dial.positions = most;
                }
            }
        }
        self.widen_knobs(point, room);
        let mut design = self.real.clone();
        for (digit, dial) in design.combination.iter_mut().zip(&design.dials) {
            *digit = (*digit).min(dial.positions.saturating_sub(1));
        }
        let lattice = &self.lattice;
        let pinned = |design: &mut Design| pin_down(lattice, design);
        let stack = Stack::up_to(&design, &pinned, room.max(0.0))?;
        stack.put(&mut design);
        pin_down(lattice, &mut design);
        (!shuts_in(&design)).then_some(design)
    }

    /// The most marks that `dial` seats with this least turn between them.
    fn most_seated(&self, dial: usize, marks: Marks, least_deg: f64) -> Option<u32> {
        let real = self.real.dials.get(dial)?;
        let fits = |marks: u32| 360.0 / f64::from(marks) - least_deg >= DUST;
        match marks {
            Marks::Exactly(_) => fits(real.positions).then_some(real.positions),
            Marks::AtLeast(least) => {
                let bites = |positions: u32| {
                    let dial = Dial {
                        positions,
                        ..real.clone()
                    };
                    key::bite(&dial) >= 0.0
                };
                let sides = real.key.sides;
                let most = (1..=360 / sides)
                    .map(|seats| seats * sides)
                    .take_while(|marks| fits(*marks))
                    .filter(|marks| bites(*marks))
                    .last()?;
                (most >= least).then_some(most)
            }
        }
    }

    /// Knobs as large as they were wished, where fingers still get between them.
    fn widen_knobs(&mut self, point: &Point, room: f64) {
        let grid = self.lattice.grid;
        let least = self.lattice.least_knob(point);
        let places: Vec<(f64, f64)> = self.real.dials.iter().map(|dial| dial.centre).collect();
        let mut apart = f64::INFINITY;
        for (number, one) in places.iter().enumerate() {
            for other in places.iter().take(number) {
                apart = apart.min(trig::hypot(one.0 - other.0, one.1 - other.1));
            }
        }
        let (real, ideal) = (&mut self.real, &mut self.ideal);
        let both = Both { real, ideal };
        let dials = 0..both.real.dials.len();
        let pull = dials.map(|index| widest_knob(&both, &self.ground, room, index));
        let pull = pull.fold(f64::INFINITY, f64::min);
        let most = down((apart - FINGERS).min(pull), grid.size);
        let wished = self.lattice.base.dials.first();
        let wished = wished.map_or(least, |dial| down(dial.knob.diameter, grid.size));
        for dial in &mut self.real.dials {
            dial.knob.diameter = wished.min(most).max(least);
        }
    }
}

/// Whether a child could be shut in, and one is about.
pub(super) fn shuts_in(design: &Design) -> bool {
    design.card.youngest < GROWN_AGE && could_hold_a_child(&design.inside)
}

/// Puts point and sizes into `design`; `plays` where it is a real one.
fn put(
    lattice: &Lattice,
    design: &mut Design,
    (point, sizes, back): (&Point, &Sizes, f64),
    plays: bool,
) -> Option<()> {
    let dials = design.dials.len() as f64;
    let knob = lattice.least_knob(point);
    let bases = lattice.base.dials.iter().zip(&lattice.posts(point)?.keys);
    for (number, (dial, (base, key))) in design.dials.iter_mut().zip(bases).enumerate() {
        let x = (number as f64 - (dials - 1.0) / 2.0) * sizes.spacing;
        let in_front = (number % 2 == 1) != point.first_in_front;
        let nearer = if in_front { point.stagger } else { 0.0 };
        dial.centre = (x, back - nearer);
        dial.positions = base.positions;
        dial.disc.radius = point.radius;
        dial.bore.diameter = point.bore;
        dial.knob.diameter = knob;
        let clearance = dial.key.clearance;
        dial.key = Key { clearance, ..*key };
        dial.pin.diameter = point.pin;
        dial.pin.gap = sizes.gap;
        let slot = dial.disc.slots.first_mut()?;
        (slot.width, slot.depth, slot.lead_in) = (sizes.width, sizes.depth, point.lead_in);
    }
    let slider = &mut design.slider;
    slider.travel = sizes.travel;
    if plays {
        slider.guide_play = sizes.play;
    }
    design.tab.engagement = sizes.engagement;
    design.tab.width = sizes.tab;
    design.keeper.width = sizes.tab + 2.0 * BESIDE_TAB;
    star_fits(design).then_some(())
}

/// What the maker holds fixed goes before all that is found.
fn pin_down(lattice: &Lattice, design: &mut Design) {
    for (size, value) in &lattice.pinned {
        size.set(design, *value);
    }
}

fn star_fits(design: &Design) -> bool {
    let mut dials = design.dials.iter();
    dials.all(|dial| star_reach(dial) < dial.disc.radius)
}
