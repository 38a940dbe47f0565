//! The outline of a slotted disc, of true arcs and straight walls.
//!
//! A slot is what the solver takes it for ([`SlotShape`]): what is drawn is what is proven.

use core::f64::consts::TAU;

use latchwright_geometry::{Point, trig};
use latchwright_model::slot::{SlotShape, mouths};
use latchwright_model::{Dial, Slot};

use crate::outline::Outline;

/// The outline of a dial's disc about its own centre, its true slot turned `slot_deg` clockwise
/// from −y; mm in plan axes, closed, running clockwise.
///
/// One outline, or two where a slot is cut right through. A slot as wide as the disc, one that runs
/// into a neighbour, or a second one cut right through is left out.
pub fn disc_outlines(dial: &Dial, slot_deg: f64) -> Vec<Outline> {
    let radius = dial.disc.radius.max(0.0);
    let cuts = cuts(dial, trig::radians(slot_deg));
    if cuts.is_empty() {
        return vec![Outline::circle(Point::default(), radius)];
    }
    let mut walked = vec![false; cuts.len()];
    let mut pieces = Vec::new();
    for begin in 0..cuts.len() {
        if walked.get(begin).copied().unwrap_or(true) {
            continue;
        }
        pieces.extend(piece(&cuts, begin, &mut walked));
    }
    pieces
}

/// One piece of the disc: from the mouth `begin` clockwise until it comes round to it again.
fn piece(cuts: &[Cut], begin: usize, walked: &mut [bool]) -> Option<Outline> {
    let first = cuts.get(begin)?;
    let mut line = Outline::from(first.enter());
    let mut at = begin;
    for _ in 0..cuts.len() {
        *walked.get_mut(at)? = true;
        let cut = cuts.get(at)?;
        let far = cut.far.unwrap_or(at);
        line = match cut.far.and_then(|far| cuts.get(far)) {
            Some(far) => cut.cut_through(far, line),
            None => cut.cut_into(line),
        };
        at = (far + 1) % cuts.len();
        line = line.arc_to(cuts.get(at)?.enter(), Point::default(), true);
        if at == begin {
            break;
        }
    }
    Some(line.closed())
}

/// One opening in the rim: a slot, or either end of one that is cut right through.
struct Cut {
    /// Clockwise from −y, radians, as far as it is from the true slot.
    turn: f64,
    /// The true slot's own turn, radians.
    base: f64,
    radius: f64,
    shape: SlotShape,
    /// Index of the other end of a slot that is cut right through.
    far: Option<usize>,
}

/// The openings that can be drawn, clockwise from the true slot, none into another.
fn cuts(dial: &Dial, base: f64) -> Vec<Cut> {
    let radius = dial.disc.radius;
    if radius <= 0.0 {
        return Vec::new();
    }
    let mut through = None;
    let mut all: Vec<Cut> = Vec::new();
    for mouth in mouths(dial, 0.0) {
        let slot = Slot {
            mark: 0,
            width: mouth.width,
            depth: mouth.depth,
            lead_in: mouth.lead_in,
        };
        let fits = slot.width > 0.0 && slot.depth > 0.0 && slot.width < 2.0 * radius;
        let shape = SlotShape::new(radius, &slot);
        let second = shape.through && through.is_some_and(|first| first != mouth.slot);
        if !fits || second {
            continue;
        }
        if shape.through {
            through = Some(mouth.slot);
        }
        all.push(Cut {
            turn: trig::radians(mouth.turn_deg),
            base,
            radius,
            shape,
            far: None,
        });
    }
    all.sort_by(|a, b| a.turn.total_cmp(&b.turn));
    joined(apart(all))
}

/// Only those openings that leave some rim between each other; those cut right through come first.
fn apart(mut all: Vec<Cut>) -> Vec<Cut> {
    let mut kept: Vec<Cut> = Vec::new();
    all.sort_by_key(|cut| !cut.shape.through);
    for cut in all {
        if kept.iter().all(|other| other.clear_of(&cut)) {
            kept.push(cut);
        }
    }
    kept.sort_by(|a, b| a.turn.total_cmp(&b.turn));
    kept
}

/// Tells the two ends of a slot that is cut right through of each other; a lone end is dropped.
fn joined(mut cuts: Vec<Cut>) -> Vec<Cut> {
    let is_end = |cut: &Cut| cut.shape.through;
    let ends = cuts.iter().filter(|cut| is_end(cut)).count();
    if ends != 2 {
        cuts.retain(|cut| !is_end(cut));
    }
    let places: Vec<usize> = cuts
        .iter()
        .enumerate()
        .filter(|(_, cut)| is_end(cut))
        .map(|(index, _)| index)
        .collect();
    if let [one, other] = *places {
        for (index, cut) in cuts.iter_mut().enumerate() {
            cut.far = match index {
                _ if index == one => Some(other),
                _ if index == other => Some(one),
                _ => None,
            };
        }
    }
    cuts
}

impl Cut {
    /// Whether some rim is left between the two.
    fn clear_of(&self, other: &Self) -> bool {
        let apart = (self.turn - other.turn).rem_euclid(TAU);
        let gap = apart.min(TAU - apart);
        gap > self.shape.half_angle + other.shape.half_angle + 1e-6
    }

    /// The point (a out along the slot's middle line, l across it, clockwise positive) in plan axes.
    fn place(&self, a: f64, l: f64) -> Point {
        let phi = self.base + self.turn;
        let (sin, cos) = (trig::sin(phi), trig::cos(phi));
        Point::new(-sin, -cos) * a + Point::new(-cos, sin) * l
    }

    /// Where the rim ends, walking clockwise.
    fn enter(&self) -> Point {
        self.rim_point(-self.shape.half_angle)
    }

    /// Where the rim goes on, walking clockwise.
    fn leave(&self) -> Point {
        self.rim_point(self.shape.half_angle)
    }

    fn rim_point(&self, angle: f64) -> Point {
        self.place(
            self.radius * trig::cos(angle),
            self.radius * trig::sin(angle),
        )
    }

    /// a at which the straight wall ends and the lead-in (or the rim) begins.
    fn wall_top(&self) -> f64 {
        if self.shape.through {
            self.shape.wall_top()
        } else {
            self.shape.wall_top().max(self.shape.floor_centre)
        }
    }

    /// Down the slot and up to the rim on its other side.
    fn cut_into(&self, line: Outline) -> Outline {
        let shape = &self.shape;
        let floor = self.place(shape.floor_centre, 0.0);
        if shape.shallow {
            return line.arc_to(self.leave(), floor, false);
        }
        let (half, top) = (shape.half_width, self.wall_top());
        line.line_over(self.lead_corner(-half), shape.lead_out)
            .line_to(self.place(shape.floor_centre, -half))
            .arc_to(self.place(shape.floor_centre, half), floor, false)
            .line_to(self.place(top, half))
            .line_over(self.leave(), shape.lead_out)
    }

    /// Along the wall right through the disc, to the rim at the far end.
    fn cut_through(&self, far: &Self, line: Outline) -> Outline {
        let half = self.shape.half_width;
        line.line_over(self.lead_corner(-half), self.shape.lead_out)
            .line_to(far.lead_corner(half))
            .line_over(far.leave(), far.shape.lead_out)
    }

    /// Where the lead-in meets the wall at `l`.
    fn lead_corner(&self, l: f64) -> Point {
        self.place(self.wall_top(), l)
    }
}

impl Outline {
    /// Goes straight on to `to` if there is a lead-in (`length` above zero) to go along.
    fn line_over(self, to: Point, length: f64) -> Self {
        if length > 0.0 { self.line_to(to) } else { self }
    }
}

#[cfg(test)]
mod tests {
    use core::f64::consts::PI;

    use super::*;
    use crate::outline::Segment;

    fn dial(slots: Vec<Slot>) -> Dial {
        let mut dial = Dial::default();
        dial.disc.radius = 18.0;
        dial.disc.slots = slots;
        dial
    }

    fn slot(mark: i64, width: f64, depth: f64, lead_in: f64) -> Slot {
        Slot {
            mark,
            width,
            depth,
            lead_in,
        }
    }

    fn area(outlines: &[Outline]) -> f64 {
        let one = |line: &Outline| {
            let points = line.flatten(1e-5);
            let next = points.iter().cycle().skip(1);
            points
                .iter()
                .zip(next)
                .map(|(a, b)| a.cross(*b))
                .sum::<f64>()
                / 2.0
        };
        // Discs run clockwise, so their area comes out negative.
        -outlines.iter().map(one).sum::<f64>()
    }

    /// Area of the part of a slot without lead-in that lies inside the rim: strip, half circle and
    /// the cap of the rim above the wall's top.
    fn slot_area(radius: f64, width: f64, depth: f64) -> f64 {
        let half = width / 2.0;
        let top = trig::sqrt(radius * radius - half * half);
        let cap = radius * radius * trig::asin(half / radius) - half * top;
        width * (top - (radius - depth + half)) + PI * half * half / 2.0 + cap
    }

    #[test]
    fn a_slots_mouth_corner_lies_where_the_wall_meets_the_rim() {
        let outlines = disc_outlines(&dial(vec![slot(0, 9.0, 9.0, 0.0)]), 0.0);
        let corner = Point::new(4.5, -trig::sqrt(18.0 * 18.0 - 4.5 * 4.5));
        assert!(
            outlines[0].start.distance(corner) < 1e-9,
            "{:?}",
            outlines[0].start
        );
        let other = Point::new(-corner.x, corner.y);
        assert!(
            outlines[0]
                .segments
                .iter()
                .any(|segment| segment.to().distance(other) < 1e-9)
        );
    }

    #[test]
    fn the_lead_in_starts_its_length_below_the_mouth_corner() {
        let outlines = disc_outlines(&dial(vec![slot(0, 8.0, 9.0, 1.0)]), 0.0);
        let wall = Point::new(4.0, -(trig::sqrt(18.0 * 18.0 - 16.0) - 1.0));
        assert!(outlines[0].segments[0].to().distance(wall) < 1e-9);
        let chamfer = wall - outlines[0].start;
        assert!(
            (chamfer.x + chamfer.y.abs()).abs() < 1e-9,
            "45 degrees: {chamfer:?}"
        );
    }

    #[test]
    fn the_slot_turns_clockwise_and_its_mark_further_clockwise() {
        let floors = |turn: f64, mark: i64| {
            let outlines = disc_outlines(&dial(vec![slot(mark, 6.0, 8.0, 0.0)]), turn);
            let centre = |segment: &Segment| match *segment {
                Segment::Arc {
                    centre,
                    clockwise: false,
                    ..
                } => Some(centre),
                _ => None,
            };
            outlines[0]
                .segments
                .iter()
                .find_map(centre)
                .expect("a floor")
        };
        // A quarter turn clockwise from −y is −x; mark 2 of 8 is another quarter: +y.
        assert!(floors(90.0, 0).distance(Point::new(-13.0, 0.0)) < 1e-9);
        assert!(floors(90.0, 2).distance(Point::new(0.0, 13.0)) < 1e-9);
        assert!(floors(0.0, -2).distance(Point::new(13.0, 0.0)) < 1e-9);
    }

    #[test]
    fn the_area_is_the_rim_less_the_slots() {
        let slots = vec![slot(0, 9.0, 9.0, 0.0), slot(3, 6.0, 7.0, 0.0)];
        let wanted = PI * 324.0 - slot_area(18.0, 9.0, 9.0) - slot_area(18.0, 6.0, 7.0);
        let got = area(&disc_outlines(&dial(slots), 33.0));
        assert!((got - wanted).abs() < 0.01, "{got} against {wanted}");
    }

    #[test]
    fn every_outline_is_closed_and_its_arcs_are_true() {
        let slots = vec![
            slot(0, 9.0, 9.0, 1.0),
            slot(4, 9.0, 2.0, 0.0),
            slot(2, 5.0, 12.0, 0.5),
        ];
        let mut arcs = 0;
        for line in disc_outlines(&dial(slots), 12.0) {
            assert!(line.closed);
            assert!(line.end().distance(line.start) < 1e-9);
            let mut at = line.start;
            for segment in &line.segments {
                if let Segment::Arc { to, centre, .. } = *segment {
                    assert!((at.distance(centre) - to.distance(centre)).abs() < 1e-9);
                    arcs += 1;
                }
                at = segment.to();
            }
        }
        assert!(arcs >= 3, "the rim between the slots");
    }

    #[test]
    fn a_slot_cut_right_through_leaves_two_pieces() {
        let halves = disc_outlines(&dial(vec![slot(0, 8.0, 36.0, 0.0)]), 20.0);
        assert_eq!(halves.len(), 2);
        let half = 4.0;
        let top = trig::sqrt(324.0 - 16.0);
        let strip = 2.0 * (half * top + 324.0 * trig::asin(half / 18.0));
        assert!((area(&halves) - (PI * 324.0 - strip)).abs() < 0.01);
        let more = disc_outlines(
            &dial(vec![slot(0, 8.0, 40.0, 1.0), slot(2, 6.0, 4.0, 0.5)]),
            0.0,
        );
        assert_eq!(more.len(), 2);
    }

    #[test]
    fn what_cannot_be_cut_is_left_out() {
        let silly = [
            slot(0, 36.0, 9.0, 0.0),
            slot(0, 1e9, 1e9, 1e9),
            slot(0, -1.0, 5.0, 0.0),
            slot(0, 5.0, 0.0, 0.0),
        ];
        for one in silly {
            assert_eq!(disc_outlines(&dial(vec![one]), 0.0)[0].segments.len(), 2);
        }
        let crowded = (0..8).map(|mark| slot(mark, 20.0, 9.0, 0.0)).collect();
        assert!(disc_outlines(&dial(crowded), 0.0)[0].closed);
        let mut none = dial(vec![slot(0, 9.0, 9.0, 1.0)]);
        none.disc.radius = -3.0;
        assert!(disc_outlines(&none, 0.0)[0].closed);
    }
}
