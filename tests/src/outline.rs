//! The outline of one real disc, piece by piece, and where a pin that slides up first touches it.
//!
//! Corners are found by halving, contacts by stepping as far as the nearest piece is away: slow and
//! plain, to be compared with the solver's closed forms.

use std::f64::consts::PI;

use latchwright_geometry::Point;

/// How near to a corner a contact counts as on it, mm.
const AT_CORNER: f64 = 1e-6;

/// Shortest step of a pin on its way, mm; a contact is then halved to a hundred-millionth.
const STEP: f64 = 1e-3;

/// A slot as it was really cut.
#[derive(Debug, Clone, Copy)]
pub struct RealSlot {
    /// Clockwise from the direction that faces the pin (−y), radians.
    pub turn: f64,
    /// Between the walls, mm.
    pub width: f64,
    /// From the rim to the deepest point of the floor, mm.
    pub depth: f64,
    /// Chamfer down the wall, mm; 0 for none.
    pub lead_in: f64,
}

/// What a piece of the outline is; slots by their number.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Feature {
    /// Plain rim.
    Rim,
    /// Where a mouth meets the rim.
    OuterCorner(usize),
    /// The 45° flat, its inner corner included.
    LeadIn(usize),
    /// A straight wall.
    Wall(usize),
    /// The round floor.
    Floor(usize),
}

/// The first touch of a pin on its way.
#[derive(Debug, Clone, Copy)]
pub struct Contact {
    /// Travel of the slider, mm; negative where the pin touches before it is forward.
    pub travel: f64,
    /// Where on the disc, from its middle, mm.
    pub at: Point,
    /// What it touches.
    pub feature: Feature,
}

#[derive(Debug, Clone, Copy)]
enum Piece {
    Segment(Point, Point),
    /// Middle, radius, direction of the arc's middle (radians, counter-clockwise from +x), half
    /// its span.
    Arc(Point, f64, f64, f64),
}

/// A disc, its middle at the origin, x to the right and y towards the hinge.
#[derive(Debug, Clone)]
pub struct Outline {
    /// Radius of the rim, mm.
    pub rim: f64,
    /// The slots.
    pub slots: Vec<RealSlot>,
    pieces: Vec<(Piece, Feature)>,
    corners: Vec<(Point, usize)>,
}

/// A slot's own frame: `out` along its middle line, `across` it.
#[derive(Clone, Copy)]
struct Frame {
    out: Point,
    across: Point,
}

impl Frame {
    fn turned(turn: f64) -> Self {
        Self {
            out: Point::new(-turn.sin(), -turn.cos()),
            across: Point::new(turn.cos(), -turn.sin()),
        }
    }

    fn at(self, across: f64, out: f64) -> Point {
        self.across * across + self.out * out
    }

    fn direction(self) -> f64 {
        self.out.y.atan2(self.out.x)
    }
}

/// A gap in the rim: direction of its middle and half its span, radians.
type Gap = (f64, f64);

impl Outline {
    /// The disc of radius `rim` with these slots; `None` if it has no size or its mouths overlap.
    pub fn new(rim: f64, slots: &[RealSlot]) -> Option<Self> {
        if rim <= 0.0 || slots.iter().any(|slot| slot.width >= 2.0 * rim) {
            return None;
        }
        let mut outline = Self {
            rim,
            slots: slots.to_vec(),
            pieces: Vec::new(),
            corners: Vec::new(),
        };
        let mut gaps = Vec::new();
        for (number, slot) in slots.iter().enumerate() {
            if slot.width > 0.0 && slot.depth > 0.0 {
                outline.cut(number, slot, &mut gaps);
            }
        }
        outline.leave_rim(&mut gaps)?;
        Some(outline)
    }

    /// Adds what one slot leaves as its edge.
    fn cut(&mut self, number: usize, slot: &RealSlot, gaps: &mut Vec<Gap>) {
        let (frame, half) = (Frame::turned(slot.turn), slot.width / 2.0);
        let floor = self.rim - slot.depth + half;
        let top = (self.rim * self.rim - half * half).sqrt();
        let through = slot.depth >= 2.0 * self.rim;
        let inwards = frame.direction() + PI;
        let middle = frame.at(0.0, floor);
        if !through && floor >= top {
            // no walls: the floor itself runs out to the rim
            let place = |angle: f64| (half * angle.sin(), floor - half * angle.cos());
            let angle = halved(PI, |angle| {
                let (across, out) = place(angle);
                across.hypot(out) <= self.rim
            });
            let arc = Piece::Arc(middle, half, inwards, angle);
            self.pieces.push((arc, Feature::Floor(number)));
            self.open(number, frame, place(angle), gaps);
            return;
        }
        let foot = if through { -top } else { floor };
        let lead_in = slot.lead_in.clamp(0.0, top - foot);
        let inner = (half, top - lead_in);
        let run = halved(self.rim, |run| {
            (inner.0 + run).hypot(inner.1 + run) <= self.rim
        });
        let run = if lead_in > 0.0 { run } else { 0.0 };
        let outer = (inner.0 + run, inner.1 + run);
        for side in [-1.0, 1.0] {
            let at = |(across, out): (f64, f64)| frame.at(side * across, out);
            if lead_in > 0.0 {
                let flat = Piece::Segment(at(inner), at(outer));
                self.pieces.push((flat, Feature::LeadIn(number)));
            }
            let wall = Piece::Segment(at((half, foot)), at(inner));
            self.pieces.push((wall, Feature::Wall(number)));
        }
        self.open(number, frame, outer, gaps);
        if through {
            let far = Frame::turned(slot.turn + PI);
            self.open(number, far, (half, top), gaps);
        } else {
            let arc = Piece::Arc(middle, half, inwards, PI / 2.0);
            self.pieces.push((arc, Feature::Floor(number)));
        }
    }

    /// A mouth in the rim whose corners lie at ± `corner` (across, out).
    fn open(&mut self, number: usize, frame: Frame, corner: (f64, f64), gaps: &mut Vec<Gap>) {
        for side in [-1.0, 1.0] {
            let at = frame.at(side * corner.0, corner.1);
            self.corners.push((at, number));
        }
        gaps.push((frame.direction(), corner.0.atan2(corner.1)));
    }

    /// The rim between the gaps; `None` if two of them overlap.
    fn leave_rim(&mut self, gaps: &mut [Gap]) -> Option<()> {
        if gaps.is_empty() {
            self.pieces.push((
                Piece::Arc(Point::default(), self.rim, 0.0, PI),
                Feature::Rim,
            ));
            return Some(());
        }
        gaps.sort_by(|one, other| wrapped(one.0).total_cmp(&wrapped(other.0)));
        for (index, gap) in gaps.iter().enumerate() {
            let next = gaps[(index + 1) % gaps.len()];
            let apart = (wrapped(next.0) - wrapped(gap.0)).rem_euclid(2.0 * PI);
            let apart = if gaps.len() == 1 { 2.0 * PI } else { apart };
            let half = (apart - gap.1 - next.1) / 2.0;
            if half <= 0.0 {
                return None;
            }
            let arc = Piece::Arc(Point::default(), self.rim, gap.0 + gap.1 + half, half);
            self.pieces.push((arc, Feature::Rim));
        }
        Some(())
    }

    /// Where mouths meet the rim, with the slot's number.
    pub fn corners(&self) -> &[(Point, usize)] {
        &self.corners
    }

    /// Nearest place of the outline to `from`, and what is there.
    fn nearest(&self, from: Point) -> (f64, Point, Feature) {
        let mut best = (f64::INFINITY, Point::default(), Feature::Rim);
        for (piece, feature) in &self.pieces {
            let at = piece.nearest(from);
            let far = (at.x - from.x).hypot(at.y - from.y);
            if far < best.0 {
                best = (far, at, *feature);
            }
        }
        let on = |at: &Point| (at.x - best.1.x).hypot(at.y - best.1.y) < AT_CORNER;
        if let Some((_, number)) = self.corners.iter().find(|(at, _)| on(at)) {
            best.2 = Feature::OuterCorner(*number);
        }
        best
    }

    /// The first touch of a pin whose middle is at `start` (slider forward) and slides up by
    /// `travel`, the disc held still. Its way begins well clear of the disc.
    pub fn first_contact(&self, start: Point, radius: f64, travel: f64) -> Option<Contact> {
        let at = |travel: f64| Point::new(start.x, start.y + travel);
        let clear = |travel: f64| self.nearest(at(travel)).0 - radius;
        let reach = self.rim + radius;
        let mut done = (-reach - 1.0 - start.y).min(0.0);
        loop {
            let gap = clear(done);
            if gap < 0.0 {
                let touch = done - STEP + halved(STEP, |more| clear(done - STEP + more) >= 0.0);
                let (_, at, feature) = self.nearest(at(touch));
                return Some(Contact {
                    travel: touch,
                    at,
                    feature,
                });
            }
            if done >= travel {
                return None;
            }
            done = (done + gap.max(STEP)).min(travel);
        }
    }
}

impl Piece {
    fn nearest(&self, from: Point) -> Point {
        match *self {
            Self::Segment(a, b) => {
                let (along, to) = (b - a, from - a);
                let square = along.x * along.x + along.y * along.y;
                if square == 0.0 {
                    return a;
                }
                let share = ((to.x * along.x + to.y * along.y) / square).clamp(0.0, 1.0);
                a + along * share
            }
            Self::Arc(middle, radius, direction, half) => {
                let to = from - middle;
                let off = wrapped(to.y.atan2(to.x) - direction).clamp(-half, half);
                let angle = direction + off;
                middle + Point::new(angle.cos(), angle.sin()) * radius
            }
        }
    }
}

/// An angle brought into −π to π.
fn wrapped(angle: f64) -> f64 {
    let turned = angle.rem_euclid(2.0 * PI);
    if turned > PI {
        turned - 2.0 * PI
    } else {
        turned
    }
}

/// The largest value from 0 to `most` for which `holds`, which must hold up to one place only.
fn halved(most: f64, holds: impl Fn(f64) -> bool) -> f64 {
    let (mut yes, mut no) = (0.0, most);
    for _ in 0..50 {
        let middle = f64::midpoint(yes, no);
        if holds(middle) {
            yes = middle;
        } else {
            no = middle;
        }
    }
    yes
}
