//! From one point of the lattice to the least sizes that give a wanted room.
//!
//! Gap, slot, engagement, travel, spacing and the rest each have something that asks for more of
//! them. What is short is raised, step by step, until nothing is: the least sizes there are, because
//! none of them was raised without need. What asks for less of them is only looked at.

use latchwright_geometry::trig;

use super::bears::pin_left;
use super::beside_pull::{Both, set_guide, widest_knob};
use super::figure::DUST;
use super::grid::{down, up};
use super::lattice::{CROSSBAR, Lattice, Point, SIDE};
use super::plain::{Ground, Work, least_steps, perfect, star_reach};
use super::raise::Raised;
use super::sizes::Sizes;
use super::stack::Stack;
use super::wishes::{Marks, set_lid};
use crate::check::spacing::{FINGERS, PRINTED_WALL};
use crate::check::{GROWN_AGE, could_hold_a_child};
use crate::contact::mouth_half_angle;
use crate::key;
use crate::model::{Design, Dial, Key};
use crate::slider_body::{CORNER, RABBET_AIR, SHOULDER, front_inside};

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
        let mut guide = f64::INFINITY;
        for _ in 0..ROUNDS {
            // nothing that is raised lets the guide be longer
            guide = self.fill(point, &sizes, (room, guide))?;
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
        }
        None
    }

    /// Where the raising begins: never above what is needed.
    pub(super) fn smallest(&self, point: &Point, room: f64) -> Sizes {
        let (base, grid) = (&self.lattice.base, self.lattice.grid);
        let engagement = up(base.tab.required_hold, grid.size);
        let half = self.half_width(point, room);
        let width = up(2.0 * half, grid.size);
        let depth = half + point.lead_in;
        Sizes {
            gap: grid.size,
            width: width.max(up(point.pin, grid.size)),
            depth: up(depth.max(self.least_depth(room)), grid.size),
            engagement,
            travel: engagement,
            spacing: up(self.least_spacing(point), grid.place),
            tab: up(LEAST_TAB, grid.lid),
            play: base.slider.guide_play,
        }
    }

    /// What the places and plays alone put a pin aside, mm.
    fn aside(&self) -> f64 {
        let work = &self.lattice.base.workmanship;
        let shaft = self.lattice.base.dials.first();
        work.pin_place
            + work.bore_place
            + shaft.map_or(0.0, |dial| dial.bore.shaft_play)
            + self.lattice.base.slider.guide_play
    }

    /// The least half-width of a slot that lets its pin in, mm: never above what is needed.
    fn half_width(&self, point: &Point, room: f64) -> f64 {
        let base = &self.lattice.base;
        let work = &base.workmanship;
        let turn = self.turns(point).fold(f64::INFINITY, f64::min).min(1.5);
        let print = work.print + 2.0 * work.film_spread;
        let lead = if point.lead_in > 0.0 { work.print } else { 0.0 };
        let off = self.aside() + point.radius * trig::sin(turn) + print + lead;
        let wide = (1.0 + room) * off + point.pin / 2.0 - point.lead_in;
        wide.max(point.pin / 2.0)
    }

    /// How far each dial's pointer and key may be off together, radians.
    fn turns(&self, point: &Point) -> impl Iterator<Item = f64> {
        let reading = self.lattice.base.workmanship.reading;
        let reading = trig::radians(reading.min(90.0));
        let posts = self.lattice.posts(point).into_iter();
        posts.flat_map(move |posts| {
            posts
                .backlash
                .iter()
                .map(move |backlash| reading + backlash)
        })
    }

    /// The least depth of a slot, mm: never above what is needed. Rest, hold and travel add up.
    fn least_depth(&self, room: f64) -> f64 {
        let base = &self.lattice.base;
        let work = &base.workmanship;
        let radial = self.aside() - base.slider.guide_play;
        let off = 2.0 * work.keeper_place + 2.0 * radial + work.print + work.film_spread;
        base.tab.required_hold + (1.0 + room) * off
    }

    /// The least turn from a dial's mark to the next for a mouth of this half-width, degrees: never
    /// above what is needed. The dial's own turn comes on top.
    fn least_step(&self, point: &Point, room: f64, half: f64) -> f64 {
        let work = &self.lattice.base.workmanship;
        let mouth = mouth_half_angle(point.radius, half, point.lead_in);
        let aside = self.aside() / (point.radius + point.pin / 2.0);
        let print = (work.print / 2.0 + work.film_spread) / point.radius;
        trig::degrees(mouth + (1.0 + room) * (aside + print))
    }

    /// The least distance between dials beside one another, mm: never above what is needed.
    fn least_spacing(&self, point: &Point) -> f64 {
        let (discs, knobs) = (
            2.0 * point.radius + 0.5,
            self.lattice.least_knob(point) + 15.0,
        );
        let across = |apart: f64| {
            let square = apart * apart - point.stagger * point.stagger;
            trig::sqrt(square.max(0.0))
        };
        let mut least = across(discs.max(knobs));
        if point.stagger > 0.0 {
            least = least.max(point.radius + point.pin / 2.0);
            if self.lattice.base.dials.len() > 2 {
                least = least.max(discs.max(knobs) / 2.0);
            }
        }
        least
    }

    /// The least lid that a latch at this point could have, mm, for its spacing and travel.
    fn needs(&self, point: &Point, spacing: f64, back: f64) -> (f64, f64) {
        let base = &self.lattice.base;
        let dials = base.dials.len() as f64;
        let beside = (point.radius).max(SHOULDER) + SIDE;
        let inside = (dials - 1.0) * spacing + 2.0 * beside;
        let sides = base.plate.width - base.inside.width;
        let hinges = 2.0 * (base.body.hinge.length + base.body.hinge.inset);
        let over = sides - 2.0 * base.body.thickness;
        let behind = base.plate.depth - base.inside.depth - front_inside(base);
        (
            (inside + sides).max(hinges + over),
            back + point.radius + SIDE + behind,
        )
    }

    /// The width that these sizes need, mm.
    pub(super) fn needed_width(&self, point: &Point, sizes: &Sizes) -> f64 {
        self.needs(point, sizes.spacing, self.back(point)).0
    }

    /// The furthest back that the back row goes, mm.
    fn furthest(&self, point: &Point) -> f64 {
        let base = &self.lattice.base;
        let limit = front_inside(base) + base.inside.depth;
        down(limit - SIDE - point.radius, self.lattice.grid.place)
    }

    /// y of the back row, mm.
    pub(super) fn back(&self, point: &Point) -> f64 {
        point.back.unwrap_or_else(|| self.furthest(point))
    }

    /// The nearest to the front that the back row can stand with this travel, mm.
    fn nearest(&self, point: &Point, travel: f64) -> f64 {
        // the bar goes back by the travel, and the strips before it are longer than the travel
        let strips = RABBET_AIR + travel + CORNER;
        self.lattice.base.keeper.edge + strips + CROSSBAR + travel + point.radius + point.stagger
    }

    /// The least lid that could hold this point at all, mm.
    pub(super) fn least_lid(&self, point: &Point) -> (f64, f64) {
        let back = self.nearest(point, self.lattice.base.tab.required_hold);
        self.needs(point, self.least_spacing(point), back)
    }

    /// Whether it is plain, without any sums, that nothing comes of this point, wherever its back row
    /// stands.
    pub(super) fn hopeless(&self, point: &Point, room: f64) -> bool {
        let lid = self.lid();
        let least = self.least_lid(point);
        if least.0 > lid.0 + 1e-9 || least.1 > lid.1 + 1e-9 {
            return true;
        }
        let base = &self.lattice.base;
        if pin_left(base, point.pin, room) < DUST {
            return true;
        }
        if 2.0 * point.radius > base.bench.printer.bed.0.min(base.bench.printer.bed.1) {
            return true;
        }
        let Some(posts) = self.lattice.posts(point).filter(|posts| posts.fit) else {
            return true;
        };
        let half = self.half_width(point, room);
        let depth = (half + point.lead_in).max(self.least_depth(room));
        if point.radius - depth - posts.star - PRINTED_WALL < 0.0 {
            return true;
        }
        let least = self.least_step(point, room, half);
        let mut turns = self.turns(point).zip(&base.dials);
        !self.lattice.free_marks
            && turns
                .any(|(turn, dial)| least + trig::degrees((1.0 + room) * turn) > dial.step_deg())
    }

    /// The most settings that there could be at this point, by the mouths alone.
    pub(super) fn most_settings(&self, point: &Point, room: f64) -> f64 {
        let least = self.least_step(point, room, self.half_width(point, room));
        let Some(posts) = self.lattice.posts(point) else {
            return 0.0;
        };
        let of = |((marks, key), turn): ((&Marks, &Key), f64)| match marks {
            Marks::Exactly(number) => f64::from(*number),
            Marks::AtLeast(_) => {
                let step = (least + trig::degrees((1.0 + room) * turn)).max(1.0);
                let sides = f64::from(key.sides.max(1));
                (360.0 / step / sides).floor() * sides
            }
        };
        let asked = self.lattice.asked.iter().zip(&posts.keys);
        asked.zip(self.turns(point)).map(of).product()
    }

    /// Puts point and sizes into both latches, with the longest guide up to `most`, which is handed back;
    /// `None` where the box does not hold them.
    fn fill(&mut self, point: &Point, sizes: &Sizes, (room, most): (f64, f64)) -> Option<f64> {
        let back = self.back(point);
        let (width, depth) = self.needs(point, sizes.spacing, back);
        let lid = self.lid();
        let face = front_inside(&self.lattice.base) - self.lattice.base.body.thickness;
        let tip = self.lattice.base.keeper.edge - sizes.engagement;
        if width > lid.0 + 1e-9
            || depth > lid.1 + 1e-9
            || back < self.nearest(point, sizes.travel)
            || tip < face + BEFORE_NOTCH
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
