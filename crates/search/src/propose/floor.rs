//! What a place of the lattice asks for at least, before any margin is weighed: never above what is
//! needed, so that what is plainly too much for the box is passed over.

use latchwright_geometry::trig;

use super::bears::pin_left;
use super::figure::{DUST, Question};
use super::grid::{down, up};
use super::lattice::{CROSSBAR, Point, SIDE};
use super::sizes::Sizes;
use super::solve::{BEFORE_NOTCH, LEAST_TAB, Solver};
use super::wishes::Marks;
use latchwright_model::Key;
use latchwright_model::slot::mouth_half_angle;
use latchwright_proof::check::spacing::PRINTED_WALL;
use latchwright_proof::slider_body::{CORNER, RABBET_AIR, SHOULDER, front_inside};

impl Solver {
    /// Whether a tab that reaches so far under the keeper, mm, goes through the front.
    pub(super) fn goes_through_front(&self, engagement: f64) -> bool {
        let base = &self.lattice.base;
        let face = front_inside(base) - base.body.thickness;
        base.keeper.edge - engagement < face + BEFORE_NOTCH
    }

    /// Where the raising begins: never above what is needed.
    pub(super) fn smallest(&self, point: &Point, room: f64) -> Sizes {
        let (base, grid) = (&self.lattice.base, self.lattice.grid);
        let (gap, engagement, travel) = self.least_reach(point, room);
        let half = self.half_width(point, room);
        let width = up(2.0 * half, grid.size);
        let depth = half + point.lead_in;
        Sizes {
            gap,
            width: width.max(up(point.pin, grid.size)),
            depth: up(depth.max(self.least_depth(room)), grid.size),
            engagement,
            travel,
            spacing: up(self.least_spacing(point), grid.place),
            tab: up(LEAST_TAB, grid.lid),
            play: base.slider.guide_play,
        }
    }

    /// The least gap, engagement and travel, mm: never above what is needed. Of the year nothing counts,
    /// of the yaw what the longest guide leaves.
    fn least_reach(&self, point: &Point, room: f64) -> (f64, f64, f64) {
        let (base, step) = (&self.lattice.base, self.lattice.grid.size);
        let held = [Question::AtRest, Question::Hold, Question::Free];
        if held.iter().any(|held| self.lattice.holds(*held, None)) {
            let engagement = up(base.tab.required_hold, step);
            return (step, engagement, engagement);
        }
        let (work, errors) = (&base.workmanship, 1.0 + room);
        let round = self.aside() - base.slider.guide_play + work.print + 2.0 * work.film_spread;
        let longest = self.furthest(point) - base.keeper.edge;
        let yaw = 2.0 * base.slider.guide_play / longest.max(step);
        let outermost = (base.dials.len() as f64 - 1.0) / 2.0 * self.least_spacing(point);
        let lift = yaw.min(1.0) * outermost;
        let gap = up((errors * (round + lift)).max(step), step);
        let off = errors * (work.keeper_place + round + lift);
        let engagement = up(base.tab.required_hold + gap + off, step);
        let travel = up(engagement + errors * work.keeper_place, step);
        (gap, engagement, travel)
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
        let closest = self.lattice.closest(point.radius, point.bore);
        let across = |apart: f64| {
            let square = apart * apart - point.stagger * point.stagger;
            trig::sqrt(square.max(0.0))
        };
        let mut least = across(closest);
        if point.stagger > 0.0 {
            least = least.max(point.radius + point.pin / 2.0);
            if self.lattice.base.dials.len() > 2 {
                least = least.max(closest / 2.0);
            }
        }
        least
    }

    /// The least lid that a latch at this point could have, mm, for its spacing and travel.
    pub(super) fn needs(&self, point: &Point, spacing: f64, back: f64) -> (f64, f64) {
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
    pub(super) fn furthest(&self, point: &Point) -> f64 {
        let base = &self.lattice.base;
        let limit = front_inside(base) + base.inside.depth;
        down(limit - SIDE - point.radius, self.lattice.grid.place)
    }

    /// y of the back row, mm.
    pub(super) fn back(&self, point: &Point) -> f64 {
        point.back.unwrap_or_else(|| self.furthest(point))
    }

    /// The nearest to the front that the back row can stand with this travel, mm.
    pub(super) fn nearest(&self, point: &Point, travel: f64) -> f64 {
        // the bar goes back by the travel, and the strips before it are longer than the travel
        let strips = RABBET_AIR + travel + CORNER;
        self.lattice.base.keeper.edge + strips + CROSSBAR + travel + point.radius + point.stagger
    }

    /// The least lid that could hold this point at all, mm.
    pub(super) fn least_lid(&self, point: &Point, room: f64) -> (f64, f64) {
        let (_, _, travel) = self.least_reach(point, room);
        self.lid_for_travel(point, travel)
    }

    /// The least lid that leaves the slider this travel, mm.
    fn lid_for_travel(&self, point: &Point, travel: f64) -> (f64, f64) {
        let back = self.nearest(point, travel);
        self.needs(point, self.least_spacing(point), back)
    }

    /// Whether it is plain, without any sums, that nothing comes of this point, wherever its back row
    /// stands.
    pub(super) fn hopeless(&self, point: &Point, room: f64) -> bool {
        let lid = self.lid();
        let (_, engagement, travel) = self.least_reach(point, room);
        let least = self.lid_for_travel(point, travel);
        if least.0 > lid.0 + 1e-9 || least.1 > lid.1 + 1e-9 {
            return true;
        }
        if self.goes_through_front(engagement) {
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
}

#[cfg(test)]
mod tests {
    use super::super::pass::{Aim, Pass};
    use super::super::wishes::Wishes;
    use super::*;
    use latchwright_model::{Design, Grain, Material};

    #[test]
    fn what_is_asked_for_at_least_is_never_above_what_is_found_without_it() {
        let mut base = Design::default();
        base.plate.grain = Grain::AlongX;
        base.slider.material = Material::Printed;
        let wishes = Wishes::of(base).with_lid(320.0, 260.0);
        let mut found = 0;
        for room in [-0.05, 0.0, 0.3] {
            let mut pass = *Pass::of(&wishes, false, Aim::Room(room)).expect("known woods");
            let solver = &mut pass.solver;
            for number in (0..solver.lattice.len()).step_by(61) {
                let point = solver.lattice.point(number).expect("within");
                let (gap, engagement, travel) = solver.least_reach(&point, room);
                let smallest = solver.smallest(&point, room);
                // from nearly nothing
                let required = solver.lattice.base.tab.required_hold;
                let tiny = Sizes {
                    gap: solver.lattice.grid.size,
                    engagement: required,
                    travel: required,
                    ..smallest
                };
                let Some(sizes) = solver.least(&point, room, Some(tiny)) else {
                    continue;
                };
                found += 1;
                assert!(sizes.gap >= gap, "{point:?}: gap {gap}");
                assert!(sizes.engagement >= engagement, "{point:?}: {engagement}");
                assert!(sizes.travel >= travel, "{point:?}: travel {travel}");
            }
        }
        assert!(found > 30, "{found}");
    }
}
