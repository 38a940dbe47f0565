//! What a choice asks for at least, before any margin is weighed: never above what is needed, so that
//! what is plainly too much for the box is passed over.

use latchwright_geometry::trig;

use super::choices::Choice;
use super::grid::{down, up};
use super::marking::Posts;
use super::solve::{Sizes, Solver};
use super::wishes::{Lid, Marks};
use latchwright_model::change::{DialSize, LatchSize, Size};
use latchwright_model::slot::mouth_half_angle;
use latchwright_proof::check::spacing::PRINTED_WALL;
use latchwright_proof::slider_body::{BAR, CLEARANCE, CORNER, RABBET_AIR, SHOULDER, front_inside};

/// Clear of the sides of the box, mm.
///
/// # Source
/// Common practice, no source.
pub(super) const SIDE: f64 = 1.0;
/// Wood in front of the tab's notch, mm: as the workshop asks.
pub(super) const BEFORE_NOTCH: f64 = 3.0;
/// The narrowest tab, mm.
pub(super) const LEAST_TAB: f64 = 20.0;
/// What the slider's bar takes along y below the discs at least, mm.
const CROSSBAR: f64 = BAR + CLEARANCE;

/// Gap, engagement and travel, mm.
struct Reach {
    gap: f64,
    engagement: f64,
    travel: f64,
}

impl Solver {
    /// Whether a tab that reaches so far under the keeper, mm, goes through the front.
    pub(super) fn goes_through_front(&self, engagement: f64) -> bool {
        let base = &self.choices.base;
        let face = front_inside(base) - base.body.thickness;
        base.keeper.edge - engagement < face + BEFORE_NOTCH
    }

    /// Where the raising begins: never above what is needed.
    pub(super) fn smallest(&self, choice: &Choice, room: f64) -> Sizes {
        let grid = self.choices.grid;
        let reach = self.least_reach(choice, room);
        let half = self.half_width(choice, room);
        let depth = half + choice.lead_in;
        Sizes {
            gap: reach.gap,
            width: up(2.0 * half, grid.size).max(up(choice.pin, grid.size)),
            depth: up(depth.max(self.least_depth(room)), grid.size),
            engagement: reach.engagement,
            travel: reach.travel,
            spacing: up(self.least_spacing(choice), grid.place),
            tab: up(LEAST_TAB, grid.lid),
            play: self.choices.base.slider.guide_play,
            guide: f64::INFINITY,
        }
    }

    /// The least gap, engagement and travel: never above what is needed. Of the year nothing counts, of
    /// the yaw what the longest guide leaves.
    fn least_reach(&self, choice: &Choice, room: f64) -> Reach {
        let (base, step) = (&self.choices.base, self.choices.grid.size);
        let dials = 0..base.dials.len();
        let mut gaps = dials.map(|dial| Size::Dial(dial, DialSize::Gap));
        if gaps.any(|gap| self.choices.holds(gap))
            || self.choices.holds(Size::Latch(LatchSize::Engagement))
            || self.choices.holds(Size::Latch(LatchSize::Travel))
        {
            let engagement = up(base.tab.required_hold, step);
            return Reach {
                gap: step,
                engagement,
                travel: engagement,
            };
        }
        let (work, errors) = (&base.workmanship, 1.0 + room);
        let round = self.aside() - base.slider.guide_play + work.print + 2.0 * work.film_spread;
        let longest = self.furthest(choice) - base.keeper.edge;
        let yaw = 2.0 * base.slider.guide_play / longest.max(step);
        let outermost = (base.dials.len() as f64 - 1.0) / 2.0 * self.least_spacing(choice);
        let lift = yaw.min(1.0) * outermost;
        let gap = up((errors * (round + lift)).max(step), step);
        let off = errors * (work.keeper_place + round + lift);
        let engagement = up(base.tab.required_hold + gap + off, step);
        Reach {
            gap,
            engagement,
            travel: up(engagement + errors * work.keeper_place, step),
        }
    }

    /// What the places and plays alone put a pin aside, mm.
    fn aside(&self) -> f64 {
        let base = &self.choices.base;
        let shaft = base.dials.first().map_or(0.0, |dial| dial.bore.shaft_play);
        base.workmanship.pin_place + base.workmanship.bore_place + shaft + base.slider.guide_play
    }

    /// The least half-width of a slot that lets its pin in, mm: never above what is needed.
    fn half_width(&self, choice: &Choice, room: f64) -> f64 {
        let work = &self.choices.base.workmanship;
        // all discs are alike: the dial that turns most decides
        let turn = self.turns(choice).fold(0.0, f64::max).min(1.5);
        let print = work.print + 2.0 * work.film_spread;
        let lead = if choice.lead_in > 0.0 {
            work.print
        } else {
            0.0
        };
        let off = self.aside() + choice.radius * trig::sin(turn) + print + lead;
        let wide = (1.0 + room) * off + choice.pin / 2.0 - choice.lead_in;
        wide.max(choice.pin / 2.0)
    }

    /// How far each dial's pointer and key may be off together, radians.
    fn turns(&self, choice: &Choice) -> impl Iterator<Item = f64> {
        let reading = self.choices.base.workmanship.reading;
        let reading = trig::radians(reading.min(90.0));
        let posts = self.choices.posts(choice).into_iter();
        let backlash = |posts: &Posts| posts.backlash.clone();
        posts
            .flat_map(backlash)
            .map(move |backlash| reading + backlash)
    }

    /// The least depth of a slot, mm: never above what is needed. Rest, hold and travel add up.
    fn least_depth(&self, room: f64) -> f64 {
        let base = &self.choices.base;
        let work = &base.workmanship;
        let radial = self.aside() - base.slider.guide_play;
        let off = 2.0 * work.keeper_place + 2.0 * radial + work.print + work.film_spread;
        base.tab.required_hold + (1.0 + room) * off
    }

    /// The least turn from a dial's mark to the next for a mouth of this half-width, mm, in degrees:
    /// never above what is needed. The dial's own turn comes on top.
    fn least_turn(&self, choice: &Choice, room: f64, half: f64) -> f64 {
        let work = &self.choices.base.workmanship;
        let mouth = mouth_half_angle(choice.radius, half, choice.lead_in);
        let aside = self.aside() / (choice.radius + choice.pin / 2.0);
        let print = (work.print / 2.0 + work.film_spread) / choice.radius;
        trig::degrees(mouth + (1.0 + room) * (aside + print))
    }

    /// The least distance between dials beside one another, mm: never above what is needed.
    fn least_spacing(&self, choice: &Choice) -> f64 {
        let closest = self.choices.closest(choice.radius, choice.bore);
        let square = closest * closest - choice.stagger * choice.stagger;
        let least = trig::sqrt(square.max(0.0));
        if choice.stagger > 0.0 {
            least.max(self.narrowest(choice))
        } else {
            least
        }
    }

    /// The same in two rows, however far apart, mm.
    pub(super) fn narrowest(&self, choice: &Choice) -> f64 {
        let beside_finger = choice.radius + choice.pin / 2.0;
        if self.choices.base.dials.len() > 2 {
            let closest = self.choices.closest(choice.radius, choice.bore);
            beside_finger.max(closest / 2.0)
        } else {
            beside_finger
        }
    }

    /// The least lid for this spacing with the back row at `back`, mm.
    pub(super) fn needs(&self, choice: &Choice, spacing: f64, back: f64) -> Lid {
        let base = &self.choices.base;
        let dials = base.dials.len() as f64;
        let beside = choice.radius.max(SHOULDER) + SIDE;
        let inside = (dials - 1.0) * spacing + 2.0 * beside;
        let sides = base.plate.width - base.inside.width;
        let hinges = 2.0 * (base.body.hinge.length + base.body.hinge.inset);
        let over = sides - 2.0 * base.body.thickness;
        let behind = base.plate.depth - base.inside.depth - front_inside(base);
        Lid {
            width: (inside + sides).max(hinges + over),
            depth: back + choice.radius + SIDE + behind,
        }
    }

    /// The furthest back that the back row goes, mm.
    pub(super) fn furthest(&self, choice: &Choice) -> f64 {
        let base = &self.choices.base;
        let limit = front_inside(base) + base.inside.depth;
        down(limit - SIDE - choice.radius, self.choices.grid.place)
    }

    /// y of the back row, mm.
    pub(super) fn back(&self, choice: &Choice) -> f64 {
        choice.back.unwrap_or_else(|| self.furthest(choice))
    }

    /// The nearest to the front that the back row can stand with this travel, mm.
    pub(super) fn nearest(&self, choice: &Choice, travel: f64) -> f64 {
        // the bar goes back by the travel, and the strips before it are longer than the travel
        let strips = RABBET_AIR + travel + CORNER;
        let front = self.choices.base.keeper.edge + strips + CROSSBAR + travel;
        front + choice.radius + choice.stagger
    }

    /// The least lid that could hold this choice at all.
    pub(super) fn least_lid(&self, choice: &Choice, room: f64) -> Lid {
        let travel = self.least_reach(choice, room).travel;
        let back = self.nearest(choice, travel);
        self.needs(choice, self.least_spacing(choice), back)
    }

    /// Whether it is plain, without any sums, that nothing comes of this choice, wherever its back row
    /// stands.
    pub(super) fn hopeless(&self, choice: &Choice, room: f64) -> bool {
        let reach = self.least_reach(choice, room);
        let back = self.nearest(choice, reach.travel);
        let lid = self.needs(choice, self.least_spacing(choice), back);
        !lid.goes_on(self.lid())
            || self.goes_through_front(reach.engagement)
            || self.hopeless_disc(choice, room)
    }

    /// The same of disc, post and pin.
    pub(super) fn hopeless_disc(&self, choice: &Choice, room: f64) -> bool {
        let bed = self.choices.base.bench.printer.bed;
        let Some(posts) = self.choices.posts(choice) else {
            return true;
        };
        if 2.0 * choice.radius > bed.0.min(bed.1) {
            return true;
        }
        let half = self.half_width(choice, room);
        let depth = (half + choice.lead_in).max(self.least_depth(room));
        if choice.radius - depth - posts.star - PRINTED_WALL < 0.0 {
            return true;
        }
        let least = self.least_turn(choice, room, half);
        let marking = self.choices.markings.get(choice.marking);
        let positions = marking.map_or(&[][..], |marking| &marking.positions);
        let mut turns = self.turns(choice).zip(positions);
        turns.any(|(turn, positions)| {
            let needs = least + trig::degrees((1.0 + room) * turn);
            needs > 360.0 / f64::from((*positions).max(1))
        })
    }

    /// The most settings that there could be with this choice, by the mouths alone.
    pub(super) fn most_settings(&self, choice: &Choice, room: f64) -> f64 {
        let least = self.least_turn(choice, room, self.half_width(choice, room));
        let Some(posts) = self.choices.posts(choice) else {
            return 0.0;
        };
        let dials = self.choices.asked.iter().zip(&posts.keys);
        dials
            .zip(self.turns(choice))
            .map(|((marks, key), turn)| match marks {
                Marks::Exactly(number) => f64::from(*number),
                Marks::AtLeast(_) => {
                    let step = (least + trig::degrees((1.0 + room) * turn)).max(1.0);
                    let sides = f64::from(key.sides.max(1));
                    (360.0 / step / sides).floor() * sides
                }
            })
            .product()
    }
}
