//! The lid in section: what lies over what through its thickness.
//!
//! The cut runs along y through one dial and jogs to the finger knob and the middle of the tab. The
//! sheet's x is the plan's y (front on the left, hinge on the right), its y is the height over the
//! underside of the plate. What is cut is filled and hatched; what lies beside the cut, strips and the
//! screws of guide and keeper, is dashed.

use latchwright_assembly::dial::{
    KNOB_GAP, Washer, key_depth, post_length, shaft_diameter, washer,
};
use latchwright_assembly::finger_knob::{
    FLOAT, FingerKnob, GRIP, ShankSlot, finger_knob, shank_slot,
};
use latchwright_assembly::frame::front_side;
use latchwright_assembly::guide::{Guide, guide};
use latchwright_assembly::slider_body::Finger;
use latchwright_geometry::Point;
use latchwright_model::Pose;
use latchwright_model::{Design, Dial, LidKind};

use crate::dial::extent;
use crate::disc::disc_outlines;
use crate::drawing::Drawing;
use crate::hatch::spans;
use crate::marks::knob_radius;
use crate::plan::pull_radius;
use crate::section_labels::{labels, type_of};
use crate::slider::Body;
use latchwright_geometry::Rect;
use latchwright_model::shown;
use latchwright_model::sound::within;

/// How much of the box's front is shown below the plate at least, and below all that hangs there, mm.
const FRONT_SHOWN: f64 = 10.0;
const BELOW_ALL: f64 = 3.0;
/// How closely the pin must stand to the disc to be drawn as stopped by it, mm.
const TOUCH: f64 = 0.02;

/// The lid cut along y through dial `dial` (from 0) and, with jogs, the finger knob and the keeper.
///
/// Front on the left, hinge on the right, outside on top. Where there is no such dial, only the
/// rest is drawn. Names are lettered `letters` mm high, 4 where none is asked for and never below 2
/// nor above 7, so that they can be read at any scale.
pub fn section(design: &Design, pose: &Pose, dial: usize, letters: Option<f64>) -> Drawing {
    let design = shown(design);
    let mut cut = Cut::new(&design, pose, dial);
    cut.letters = type_of(letters);
    let mut items = Vec::new();
    cut.parts(&mut items);
    items.extend(labels(&cut));
    let sheet = extent(&items).unwrap_or(Rect::about(Point::default(), 20.0, 20.0));
    Drawing {
        bounds: sheet.union(cut.whole()).grown(3.0),
        items,
    }
}

/// What the section is drawn from; heights over the underside of the plate.
pub(crate) struct Cut<'a> {
    pub design: &'a Design,
    pub dial: Option<&'a Dial>,
    /// The disc where the cut goes through its material, along y.
    pub disc_spans: Vec<(f64, f64)>,
    pub index: usize,
    pub travel: f64,
    pub thickness: f64,
    /// Height of the names, mm.
    pub letters: f64,
    pub body: Body,
    /// The finger of this dial, with the slider forward.
    pub finger: Option<Finger>,
    pub guide: Guide,
    pub knob_of_slider: FingerKnob,
    pub shank_slot: ShankSlot,
}

impl<'a> Cut<'a> {
    fn new(design: &'a Design, pose: &Pose, index: usize) -> Self {
        let travel = within(pose.travel);
        let dial = design.dials.get(index);
        let turn = within(pose.turns_deg.get(index).copied().unwrap_or(0.0));
        let disc_spans = dial.map_or_else(Vec::new, |dial| {
            disc_spans(
                dial,
                turn - f64::from(design.digit(index)) * dial.step_deg(),
            )
        });
        let body = Body::new(design, travel);
        let fingers = body.whole.fingers(design);
        Self {
            design,
            dial,
            disc_spans,
            index,
            travel,
            thickness: design.plate.thickness.max(0.5),
            letters: type_of(None),
            body,
            finger: fingers.into_iter().find(|finger| finger.dial == index),
            guide: guide(design),
            knob_of_slider: finger_knob(design),
            shank_slot: shank_slot(design),
        }
    }

    /// The room that all parts need over the whole travel, so that the sheet keeps its size.
    fn whole(&self) -> Rect {
        let travel = self.design.slider.travel.max(0.0);
        let rest = self.pull_at(0.0);
        [
            self.plate_rect(),
            self.keeper_rect(),
            rest,
            self.pull_at(travel),
        ]
        .into_iter()
        .chain(self.knob_rect())
        .reduce(Rect::union)
        .unwrap_or(rest)
    }

    pub(crate) fn plate_rect(&self) -> Rect {
        rect(0.0, self.design.plate.depth, 0.0, self.thickness)
    }

    pub(crate) fn keeper_rect(&self) -> Rect {
        let keeper = &self.design.keeper;
        rect(
            keeper.edge - keeper.depth,
            keeper.edge,
            0.0,
            keeper.thickness.max(0.5),
        )
    }

    /// Tab, neck and bar: the slider at its whole thickness.
    pub(crate) fn slider_rect(&self) -> Rect {
        let top = -self.design.slider.below;
        rect(
            self.body.tip,
            self.body.crossbar.max.y,
            top - self.design.slider.thickness.max(0.5),
            top,
        )
    }

    /// The dial's finger from the bar to its tip; `None` where it has none or its pin stands free over all of the slider.
    pub(crate) fn finger_rect(&self) -> Option<Rect> {
        let finger = self.finger.filter(|finger| finger.thickness() > 0.05)?;
        let (from, to) = (finger.area.min.y, finger.area.max.y);
        Some(rect(
            from + self.travel,
            to + self.travel,
            -finger.bottom,
            -finger.top,
        ))
    }

    pub(crate) fn tab_rect(&self) -> Rect {
        let (tab, slider) = (self.body.tab(self.design), self.slider_rect());
        rect(tab.min.y, tab.max.y, slider.min.y, slider.max.y)
    }

    pub(crate) fn pin_rect(&self) -> Option<Rect> {
        self.dial.map(|dial| {
            let (at, radius) = (
                dial.pin_at().1 + self.travel,
                dial.pin.diameter.max(0.2) / 2.0,
            );
            let top = -self.design.slider.below;
            rect(
                at - radius,
                at + radius,
                top - dial.pin.height.max(0.5),
                top,
            )
        })
    }

    pub(crate) fn disc_rect(&self) -> Option<Rect> {
        self.dial.map(|dial| {
            let (at, radius) = (dial.centre.1, dial.disc.radius.max(0.5));
            let top = -dial.disc.below;
            rect(
                at - radius,
                at + radius,
                top - dial.disc.thickness.max(0.5),
                top,
            )
        })
    }

    /// The dial's washer and all that it takes up, on its disc.
    pub(crate) fn washer(&self) -> Option<(Washer, Rect)> {
        let dial = self.dial?;
        let ring = washer(self.design, dial)?;
        let (at, half, foot) = (dial.centre.1, ring.outer / 2.0, -dial.disc.below);
        let area = rect(at - half, at + half, foot, foot + ring.thickness);
        (ring.outer > ring.inner).then_some((ring, area))
    }

    pub(crate) fn knob_rect(&self) -> Option<Rect> {
        self.dial.map(|dial| {
            let (at, radius) = (dial.centre.1, knob_radius(dial.knob.diameter));
            let foot = self.thickness + KNOB_GAP;
            rect(
                at - radius,
                at + radius,
                foot,
                foot + dial.knob.height.max(1.0),
            )
        })
    }

    /// The finger knob's grip with the slider at `travel`.
    fn pull_at(&self, travel: f64) -> Rect {
        let (at, radius) = (self.knob_of_slider.at.y + travel, pull_radius(self.design));
        let foot = self.thickness + FLOAT;
        rect(at - radius, at + radius, foot, foot + GRIP)
    }

    pub(crate) fn pull_rect(&self) -> Rect {
        self.pull_at(self.travel)
    }

    /// The two bridges, from the front.
    pub(crate) fn bridge_rects(&self) -> [Rect; 2] {
        let top = -self.guide.strips[0].height;
        self.guide.bridges.map(|bridge| {
            let (from, to) = (bridge.area.min.y, bridge.area.max.y);
            rect(from, to, top - bridge.thickness, top)
        })
    }

    /// A strip, which lies beside the cut.
    pub(crate) fn strip_rect(&self) -> Rect {
        let strip = &self.guide.strips[0];
        rect(strip.area.min.y, strip.area.max.y, -strip.height, 0.0)
    }

    /// Lowest part of what hangs below the plate.
    pub(crate) fn floor(&self) -> f64 {
        let disc = self.disc_rect().map_or(0.0, |disc| disc.min.y);
        let [bridge, _] = self.bridge_rects();
        self.slider_rect().min.y.min(disc).min(bridge.min.y)
    }

    /// The front of the box as far as it is shown; a band's lies elsewhere and is not.
    pub(crate) fn front_rect(&self) -> Option<Rect> {
        if !matches!(self.design.body.lid, LidKind::Plate) {
            return None;
        }
        let front = front_side(self.design)?;
        let foot = (self.floor() - BELOW_ALL).min(-FRONT_SHOWN);
        Some(rect(front.from, front.to, foot, 0.0))
    }

    /// Lowest of all that is drawn without the names.
    pub(crate) fn foot(&self) -> f64 {
        let front = self.front_rect().map_or(0.0, |front| front.min.y);
        self.floor().min(front)
    }

    /// Whether the pin stands against the disc before it has gone its whole way.
    pub(crate) fn stopped(&self) -> bool {
        let on_its_way = self.travel < self.design.slider.travel - TOUCH;
        let tip = self.pin_rect().map_or(f64::NAN, |pin| pin.max.x);
        on_its_way
            && self
                .disc_spans
                .iter()
                .any(|span| (span.0 - tip).abs() < TOUCH)
    }

    /// The shaft on the disc and the post on the shaft, where they stand whole on this part of the disc.
    pub(crate) fn shaft_and_post(&self, dial: &Dial, disc: Rect) -> Option<[Rect; 2]> {
        let knob = self.knob_rect()?;
        let at = dial.centre.1;
        let shaft = (shaft_diameter(dial) / 2.0).clamp(0.3, knob.width() / 2.0);
        let post = dial.key.apothem.clamp(0.2, shaft);
        let whole = disc.min.x <= at - shaft && at + shaft <= disc.max.x;
        let shoulder = knob.min.y;
        let top = shoulder + post_length(dial).min(0.9 * knob.height());
        (whole && shoulder > disc.max.y).then(|| {
            [
                rect(at - shaft, at + shaft, disc.max.y, shoulder),
                rect(at - post, at + post, shoulder, top),
            ]
        })
    }
}

/// The star in the knob, a little deeper than the post is long.
pub(crate) fn star_rect(dial: &Dial, knob: Rect) -> Rect {
    let half = (dial.key.apothem + dial.key.clearance).clamp(0.2, knob.width() / 2.0);
    let (at, foot) = (dial.centre.1, knob.min.y);
    let top = foot + key_depth(dial).min(0.95 * knob.height());
    rect(at - half, at + half, foot, top)
}

/// Where a cut along y through the dial's centre goes through the disc, in plan y.
fn disc_spans(dial: &Dial, slot_deg: f64) -> Vec<(f64, f64)> {
    let lying: Vec<Vec<Point>> = disc_outlines(dial, slot_deg)
        .iter()
        .map(|outline| {
            outline
                .flatten(0.001)
                .into_iter()
                .map(|at| Point::new(at.y, at.x))
                .collect()
        })
        .collect();
    let own = spans(&lying, 0.0);
    own.into_iter()
        .map(|(from, to)| (from + dial.centre.1, to + dial.centre.1))
        .collect()
}

pub(crate) fn rect(left: f64, right: f64, bottom: f64, top: f64) -> Rect {
    Rect::new(Point::new(left, bottom), Point::new(right, top))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cut_through_a_disc_shows_its_slot() {
        let dial = Dial::default();
        let facing = disc_spans(&dial, 0.0);
        // A slot of 11.5 in a disc of 19 about 106 faces the pin: material from the floor to the far rim.
        assert_eq!(facing.len(), 1);
        assert!((facing[0].0 - 98.5).abs() < 0.01 && (facing[0].1 - 125.0).abs() < 0.01);
        let away = disc_spans(&dial, 90.0);
        assert!((away[0].0 - 87.0).abs() < 0.01 && (away[0].1 - 125.0).abs() < 0.01);
    }

    #[test]
    fn a_pin_on_plain_rim_is_drawn_as_stopped() {
        let design = Design::default();
        let mut pose = Pose::at_marks(&design, &[3, 5, 1]);
        assert!(!Cut::new(&design, &pose, 1).stopped());
        // the gap between pin and rim
        pose.travel = 3.0;
        assert!(Cut::new(&design, &pose, 1).stopped());
        assert!(!Cut::new(&design, &pose, 0).stopped());
    }

    #[test]
    fn heights_are_those_of_the_design() {
        let mut design = Design::default();
        design.slider.below = 1.25;
        design.dials[1].pin.height = 5.0;
        design.dials[1].disc.below = 0.75;
        let cut = Cut::new(&design, &Pose::at_marks(&design, &[3, 6, 1]), 1);
        let (slider, pin) = (cut.slider_rect(), cut.pin_rect().unwrap());
        assert_eq!((slider.min.y, slider.max.y), (-14.25, -1.25));
        assert_eq!((pin.min.y, pin.max.y), (-6.25, -1.25));
        assert_eq!(cut.disc_rect().unwrap().max.y, -0.75);
    }

    #[test]
    fn the_sheet_keeps_its_size_while_the_slider_moves() {
        let design = Design::default();
        let mut pose = Pose::at_combination(&design);
        let shut = section(&design, &pose, 1, None).bounds;
        pose.travel = design.slider.travel;
        let free = section(&design, &pose, 1, None).bounds;
        assert!((shut.width() - free.width()).abs() < 1e-6);
        assert!((shut.height() - free.height()).abs() < 1e-6);
    }

    #[test]
    fn the_finger_runs_below_the_disc_with_wood_on_both_sides_of_its_pin() {
        let design = Design::default();
        for travel in [0.0, design.slider.travel] {
            let pose = Pose {
                travel,
                ..Pose::at_combination(&design)
            };
            let cut = Cut::new(&design, &pose, 1);
            let (finger, pin) = (cut.finger_rect().unwrap(), cut.pin_rect().unwrap());
            // 7.5 of the pin stand free over it, from 0.5 below the plate; the slider is 13 thick
            assert_eq!((finger.min.y, finger.max.y), (-13.5, -8.0));
            assert_eq!((pin.min.y, pin.max.y), (-13.5, -0.5));
            assert!(finger.max.y < cut.disc_rect().unwrap().min.y);
            assert_eq!(finger.max.x - pin.max.x, 2.0);
            assert!(pin.min.x - finger.min.x > 2.0);
            assert_eq!(finger.min.x, cut.slider_rect().max.x);
        }
    }

    #[test]
    fn a_pin_that_stands_free_over_all_of_the_slider_has_no_finger() {
        let mut design = Design::default();
        design.dials[1].pin.free = design.slider.thickness;
        let cut = Cut::new(&design, &Pose::at_combination(&design), 1);
        assert_eq!(cut.finger_rect(), None);
        assert!(cut.pin_rect().unwrap().min.x > cut.slider_rect().max.x);
    }

    #[test]
    fn the_washer_lies_on_its_disc_below_the_plate_and_the_post_ends_below_its_star() {
        let design = Design::default();
        let cut = Cut::new(&design, &Pose::at_marks(&design, &[0, 0, 0]), 1);
        let (_, ring) = cut.washer().unwrap();
        assert_eq!(ring.min.y, cut.disc_rect().unwrap().max.y);
        assert!(ring.max.y <= 0.0);
        let (dial, knob) = (cut.dial.unwrap(), cut.knob_rect().unwrap());
        let star = star_rect(dial, knob);
        let disc = cut.disc_rect().unwrap();
        let [shaft, post] = cut.shaft_and_post(dial, disc).unwrap();
        assert!((star.max.y - post.max.y - 0.5).abs() < 1e-9);
        assert_eq!(shaft.max.y, knob.min.y);
        assert!(star.width() > post.width());
    }
}
