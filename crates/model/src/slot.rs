//! The shape of a slot in its own frame: a runs out along the slot's middle line from the dial's
//! centre, l across it.
//!
//! What is cut away is the union of the strip between the walls above the floor's centre, the round
//! floor, and the lead-in's wedge, as far as the rim. A slot shallower than half its width has no
//! walls: only its floor's arc reaches the rim.

use latchwright_geometry::trig;

use crate::{Dial, Slot};

/// One slot with its numbers worked out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SlotShape {
    /// Half the width between the walls, mm.
    pub half_width: f64,
    /// a of the floor's centre, mm; the deepest point lies half a width further in.
    pub floor_centre: f64,
    /// a at which walls (or, without walls, the floor's arc) reach the rim circle, mm.
    pub rim_top: f64,
    /// l at which they do, mm.
    pub rim_half: f64,
    /// The lead-in down the wall, mm; 0 for none.
    pub lead_in: f64,
    /// How far the lead-in runs out beyond the wall, along a as well as l, mm.
    pub lead_out: f64,
    /// Half-angle of the mouth at the rim, radians.
    pub half_angle: f64,
    /// No walls: the floor's arc itself reaches the rim.
    pub shallow: bool,
    /// No floor: cut right through the disc.
    pub through: bool,
}

/// Half-angle (radians) of the mouth of a slot of half-width `hw` with `lead_in`, on rim radius
/// `radius`. Grows with `hw` and `lead_in`, shrinks with `radius`; π where the slot is wider than
/// the disc.
pub fn mouth_half_angle(radius: f64, hw: f64, lead_in: f64) -> f64 {
    if hw >= radius {
        return core::f64::consts::PI;
    }
    let top = trig::sqrt(radius * radius - hw * hw);
    let out = lead_out(radius, hw, lead_in);
    trig::atan2(hw + out, top - lead_in.max(0.0) + out)
}

/// Half-width (mm) of the mouth at the rim, lead-in included; grows with `radius`.
pub fn mouth_half_width(radius: f64, hw: f64, lead_in: f64) -> f64 {
    hw + lead_out(radius, hw, lead_in)
}

/// How far the 45° lead-in runs before it meets the rim circle: the positive root t of
/// (hw + t)² + (top − c + t)² = R².
fn lead_out(radius: f64, hw: f64, lead_in: f64) -> f64 {
    if lead_in <= 0.0 || hw >= radius {
        return 0.0;
    }
    let base = trig::sqrt(radius * radius - hw * hw) - lead_in;
    let half = f64::midpoint(hw, base);
    let constant = (hw * hw + base * base - radius * radius) / 2.0;
    (trig::sqrt(half * half - constant) - half).max(0.0)
}

impl SlotShape {
    /// The slot cut into a disc of `radius`.
    ///
    /// A slot wider than the disc is taken as one as wide as the disc; the fault is reported
    /// elsewhere.
    pub fn new(radius: f64, slot: &Slot) -> Self {
        let radius = if radius.is_finite() {
            radius.max(0.0)
        } else {
            0.0
        };
        let half_width = (slot.width / 2.0).max(0.0).min(radius * 0.999_999);
        let wall_top = trig::sqrt(radius * radius - half_width * half_width);
        let floor_centre = radius - slot.depth + half_width;
        let through = slot.depth >= 2.0 * radius;
        let shallow = !through && floor_centre >= wall_top;
        let lead_in = if shallow {
            0.0
        } else {
            slot.lead_in.max(0.0).min(wall_top)
        };
        let (rim_top, rim_half) = if shallow {
            // where the circle about the floor's centre meets the rim circle
            let square = radius * radius - half_width * half_width;
            let a = (square + floor_centre * floor_centre) / (2.0 * floor_centre.max(1e-12));
            let a = a.max(-radius).min(radius);
            (a, trig::sqrt(radius * radius - a * a))
        } else {
            (wall_top, half_width)
        };
        let lead_out = lead_out(radius, half_width, lead_in);
        let half_angle = trig::atan2(rim_half + lead_out, rim_top - lead_in + lead_out);
        Self {
            half_width,
            floor_centre,
            rim_top,
            rim_half,
            lead_in,
            lead_out,
            half_angle,
            shallow,
            through,
        }
    }

    /// a of the top of the wall, where it ends in the lead-in or at the rim, mm.
    pub fn wall_top(&self) -> f64 {
        self.rim_top - self.lead_in
    }
}

/// One opening in a disc's rim: a slot, or the far end of one that is cut right through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mouth {
    /// Index of the slot in the disc.
    pub slot: usize,
    /// Clockwise from the true slot, degrees, 0 ≤ . < 360.
    pub turn_deg: f64,
    /// Width between the walls, mm.
    pub width: f64,
    /// Depth from the rim, mm; infinite slots do not exist, a through slot has twice the radius.
    pub depth: f64,
    /// Lead-in, mm; the far end of a through slot has none.
    pub lead_in: f64,
    /// The far end of a slot that is cut through.
    pub far: bool,
}

/// Slots of one disc that are looked at; a disc with more is at fault.
pub const MAX_SLOTS: usize = 64;

/// All openings of a dial's disc, in the order of its slots.
///
/// A slot counts as cut through when its depth and `slack` (mm, 0 for the nominal disc) reach the
/// far side of the rim.
pub fn mouths(dial: &Dial, slack: f64) -> impl Iterator<Item = Mouth> + '_ {
    let positions = i64::from(dial.positions.max(1));
    dial.disc
        .slots
        .iter()
        .take(MAX_SLOTS)
        .enumerate()
        .flat_map(move |(index, slot)| {
            let turn_deg = slot.mark.rem_euclid(positions) as f64 * dial.step_deg();
            let near = Mouth {
                slot: index,
                turn_deg,
                width: slot.width,
                depth: slot.depth,
                lead_in: slot.lead_in,
                far: false,
            };
            let through = slot.depth + slack >= 2.0 * dial.disc.radius;
            let turned = within_a_turn(turn_deg + 180.0);
            let far = Mouth {
                turn_deg: turned,
                lead_in: 0.0,
                far: true,
                ..near
            };
            core::iter::once(near).chain(through.then_some(far))
        })
}

fn within_a_turn(turn_deg: f64) -> f64 {
    if turn_deg >= 360.0 {
        turn_deg - 360.0
    } else {
        turn_deg
    }
}

/// Turn of the true slot, degrees clockwise from the pin, when the dial stands at `mark`.
pub fn slot_turn_deg(dial: &Dial, digit: u32, mark: u32) -> f64 {
    let steps = i64::from(mark) - i64::from(digit);
    trig::wrap_deg(steps.rem_euclid(i64::from(dial.positions.max(1))) as f64 * dial.step_deg())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_worked_examples_mouth_is_18_195_degrees() {
        // mechanism, worked example: widest mouth on the smallest disc
        let angle = trig::degrees(mouth_half_angle(17.85, 4.65, 1.2));
        assert!((angle - 18.195).abs() < 0.0005, "{angle}");
    }

    #[test]
    fn a_lead_in_ends_on_the_rim() {
        let shape = SlotShape::new(
            18.0,
            &Slot {
                mark: 0,
                width: 8.0,
                depth: 9.0,
                lead_in: 1.0,
            },
        );
        let (l, a) = (
            shape.rim_half + shape.lead_out,
            shape.wall_top() + shape.lead_out,
        );
        assert!((trig::hypot(l, a) - 18.0).abs() < 1e-12);
        assert!((trig::atan2(l, a) - shape.half_angle).abs() < 1e-12);
    }

    #[test]
    fn a_shallow_slot_has_only_its_floor() {
        let shape = SlotShape::new(
            18.0,
            &Slot {
                mark: 0,
                width: 9.0,
                depth: 2.0,
                lead_in: 0.0,
            },
        );
        assert!(shape.shallow);
        let from_centre = trig::hypot(shape.rim_half, shape.rim_top - shape.floor_centre);
        assert!(
            (from_centre - 4.5).abs() < 1e-12,
            "corner lies on the floor's circle"
        );
        assert!((trig::hypot(shape.rim_half, shape.rim_top) - 18.0).abs() < 1e-12);
        assert!(shape.half_angle < mouth_half_angle(18.0, 4.5, 0.0));
    }

    #[test]
    fn a_slot_cut_through_opens_on_both_sides() {
        let mut dial = Dial::default();
        dial.disc.slots[0].depth = 38.0;
        let turns: Vec<f64> = mouths(&dial, 0.0).map(|mouth| mouth.turn_deg).collect();
        assert_eq!(turns, [0.0, 180.0]);
    }
}
