//! How near a dial may come to another, to the plate's edge and to the finger knob's slot before a
//! check of spacing fails: where a maker's hand is stopped from going on for nothing.
//!
//! The plain sums decide, by the checks' own limits. They take more than the exact worst case does, so
//! a dial that keeps these distances passes those checks.

use latchwright_geometry::{EPSILON, trig};

use super::finger_knob;
use super::spacing::{DISC_TO_PIN, FINGERS, WOOD_LEFT};
use crate::bounds::{DialBounds, SliderBounds, Terms};
use crate::season::Drift;
use latchwright_model::{Design, Dial};

/// Added so that a distance that is just enough still is after rounding, mm.
const ROUNDING: f64 = 1e-6;

/// What keeps two dials apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Keeps {
    /// The discs must not touch.
    Discs,
    /// Fingers must get between the knobs.
    Fingers,
    /// Wood must stay between the bores.
    Wood,
}

/// An axis of the design's frame.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Axis {
    /// To the right.
    X,
    /// Towards the hinge.
    Y,
}

/// The distances of one design.
#[derive(Debug)]
pub struct Near<'a> {
    design: &'a Design,
    dials: Vec<DialBounds>,
    /// Least growth of the plate along x and y over the year, as fractions.
    growth: (f64, f64),
}

impl<'a> Near<'a> {
    /// Of `design`; `None` where a wood is not known, so that nothing can be said of the season.
    pub fn of(design: &'a Design) -> Option<Self> {
        let drift = Drift::of(design)?;
        let slider = SliderBounds::of(design, &drift, Terms::All);
        let bounds = |dial| DialBounds::of(design, dial, &slider, &drift, Terms::All);
        Some(Self {
            design,
            dials: design.dials.iter().map(bounds).collect(),
            growth: (drift.x.apart(1.0, 0.0).0, drift.y.apart(1.0, 0.0).0),
        })
    }

    /// The least distance along `axis`, mm, between dials `one` and `other` that stand `aside` mm
    /// apart along the other axis, and what asks for it; `None` where nothing does.
    pub fn beside(&self, axis: Axis, one: usize, other: usize, aside: f64) -> Option<(f64, Keeps)> {
        let (a, b) = (self.design.dials.get(one)?, self.design.dials.get(other)?);
        let rims = self.dials.get(one)?.rim.hi + self.dials.get(other)?.rim.hi;
        let discs = rims + a.bore.shaft_play + b.bore.shaft_play + DISC_TO_PIN;
        let wood = f64::midpoint(a.bore.diameter, b.bore.diameter) + WOOD_LEFT;
        let fingers = f64::midpoint(a.knob.diameter, b.knob.diameter) + FINGERS;
        // nothing is off in this one: a row of dials gets the very sum
        let between_knobs = if aside == 0.0 {
            Some(fingers)
        } else {
            leg(fingers, aside).map(|least| least + ROUNDING)
        };
        let all = [
            (self.apart(axis, discs, aside, 2.0), Keeps::Discs),
            (between_knobs, Keeps::Fingers),
            (self.apart(axis, wood, aside, 2.0), Keeps::Wood),
        ];
        all.into_iter()
            .filter_map(|(least, keeps)| Some((least?, keeps)))
            .max_by(|one, other| one.0.total_cmp(&other.0))
    }

    /// The least distance of dial `one` from an edge that lies across `axis`, mm.
    pub fn edge(&self, axis: Axis, one: usize) -> Option<f64> {
        let bore = self.design.dials.get(one)?.bore.diameter;
        self.apart(axis, bore / 2.0 + WOOD_LEFT, 0.0, 1.0)
    }

    /// The least distance along x, mm, of dial `one` at the height `y` from the middle of the finger
    /// knob's slot; `None` where the slot is not in its way.
    pub fn guide_slot(&self, one: usize, y: f64) -> Option<f64> {
        let dial: &Dial = self.design.dials.get(one)?;
        let slider = &self.design.slider;
        let beyond = finger_knob::beyond(slider, y);
        let solid = dial.bore.diameter / 2.0 + slider.shank / 2.0 + slider.guide_play + WOOD_LEFT;
        self.apart(Axis::X, solid, beyond, 1.0)
    }

    /// Along `axis`, how far apart two places must be so that they keep `least` mm in every box, when
    /// they are `aside` apart along the other and `bores` of them are bores.
    fn apart(&self, axis: Axis, least: f64, aside: f64, bores: f64) -> Option<f64> {
        if !aside.is_finite() {
            return None;
        }
        let error = bores * self.design.workmanship.bore_place;
        let (along, across) = match axis {
            Axis::X => self.growth,
            Axis::Y => (self.growth.1, self.growth.0),
        };
        let aside = (aside.abs() - error).max(0.0) * (1.0 + across);
        let apart = leg(least + EPSILON, aside)? / (1.0 + along) + error + ROUNDING;
        apart.is_finite().then_some(apart)
    }
}

/// The other leg of a right triangle; `None` where one leg alone is as long as the hypotenuse.
fn leg(hypotenuse: f64, leg: f64) -> Option<f64> {
    let square = hypotenuse * hypotenuse - leg * leg;
    (square > 0.0 && square.is_finite()).then(|| trig::sqrt(square))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::CheckKind;
    use crate::prove;
    use crate::verdict::CheckVerdict;

    /// Least margin of the checks of these names.
    fn margin(design: &Design, kinds: &[CheckKind]) -> f64 {
        let proof = prove(design);
        let checks = proof.checks.iter();
        let of = checks.filter(|check| kinds.contains(&check.kind));
        of.map(|check| {
            assert_eq!(check.verdict == CheckVerdict::Passes, check.margin >= 0.0);
            check.margin
        })
        .fold(f64::INFINITY, f64::min)
    }

    /// A plate of plain oak with two dials, the second of which is moved about.
    fn two_dials() -> Design {
        let mut design = Design::default();
        design.dials.truncate(2);
        design.combination.truncate(2);
        design.dials[0].centre = (-40.0, 80.0);
        design
    }

    const PAIR: [CheckKind; 3] = [
        CheckKind::DiscToDisc,
        CheckKind::KnobToKnob,
        CheckKind::BoreToBore,
    ];

    #[test]
    fn at_the_least_distance_the_checks_just_pass() {
        // the exact worst case may leave a little more than the plain sums
        for (knob, disc, bore, keeps) in [
            (36.0, 18.0, 14.3, Keeps::Fingers),
            (20.0, 24.0, 14.3, Keeps::Discs),
            (20.0, 14.0, 40.0, Keeps::Wood),
        ] {
            for (axis, aside) in [(Axis::X, 0.0), (Axis::X, -9.0), (Axis::Y, 9.0)] {
                let mut design = two_dials();
                for dial in &mut design.dials {
                    (dial.knob.diameter, dial.disc.radius) = (knob, disc);
                    dial.bore.diameter = bore;
                }
                let (least, why) = Near::of(&design)
                    .unwrap()
                    .beside(axis, 1, 0, aside)
                    .unwrap();
                assert_eq!(why, keeps);
                for (apart, passes) in [(least, true), (least - 0.25, false)] {
                    let (dx, dy) = match axis {
                        Axis::X => (apart, aside),
                        Axis::Y => (aside, apart),
                    };
                    design.dials[1].centre = (-40.0 + dx, 80.0 + dy);
                    let left = margin(&design, &PAIR);
                    assert_eq!(left >= 0.0, passes, "{keeps:?} {axis:?} {aside}: {left}");
                    assert!(left < 0.2, "{keeps:?} {axis:?} {aside}: {left}");
                }
            }
        }
    }

    #[test]
    fn at_the_least_distance_from_edge_and_slot_the_wood_is_just_enough() {
        let design = two_dials();
        let near = Near::of(&design).unwrap();
        let side = near.edge(Axis::X, 1).unwrap();
        let back = near.edge(Axis::Y, 1).unwrap();
        let slot = near.guide_slot(1, 48.0).unwrap();
        let plate = &design.plate;
        for (kind, at, inwards) in [
            (
                CheckKind::BoreToEdge,
                (plate.width / 2.0 - side, 95.0),
                (-1.0, 0.0),
            ),
            (
                CheckKind::BoreToEdge,
                (50.0, plate.depth - back),
                (0.0, -1.0),
            ),
            (CheckKind::BoreToGuideSlot, (slot, 48.0), (1.0, 0.0)),
        ] {
            for (step, passes) in [(0.0, true), (-0.25, false)] {
                let mut moved = design.clone();
                moved.dials[1].centre = (at.0 + step * inwards.0, at.1 + step * inwards.1);
                let left = margin(&moved, &[kind]);
                assert_eq!(left >= 0.0, passes, "{kind:?} {at:?}: {left}");
                assert!(left < 0.2, "{kind:?} {at:?}: {left}");
            }
        }
    }

    #[test]
    fn what_is_far_aside_may_stand_anywhere_along_the_axis() {
        let design = two_dials();
        let near = Near::of(&design).unwrap();
        assert_eq!(near.beside(Axis::X, 1, 0, 80.0), None);
        assert_eq!(near.beside(Axis::X, 1, 0, f64::NAN), None);
        assert_eq!(near.beside(Axis::X, 1, 7, 0.0), None);
        assert_eq!(near.guide_slot(1, 95.0), None);
    }
}
