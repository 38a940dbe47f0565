//! The lid in section: what lies over what through its thickness.
//!
//! The cut runs along y through one dial and jogs to the finger knob and the middle of the tab. The
//! sheet's x is the plan's y (front on the left, hinge on the right), its y is the height over the
//! underside of the plate.

use latchwright_geometry::Point;
use latchwright_model::Pose;
use latchwright_model::{Design, Dial, Material};
use latchwright_proof::slider_body::RABBET_AIR;

use crate::dial::extent;
use crate::disc::disc_outlines;
use crate::drawing::Drawing;
use crate::hatch::spans;
use crate::item::{Item, Layer, Subject};
use crate::marks::knob_radius;
use crate::outline::Outline;
use crate::plan::pull_radius;
use crate::rect::Rect;
use crate::section_faces::{Stuff, cut_face, turned};
use crate::section_labels::{labels, type_of};
use crate::slider::Body;
use crate::style::Ink;
use latchwright_model::shown;
use latchwright_model::sound::within;

/// Air between knobs and the plate, and round a shank, as it is drawn, mm.
pub(crate) const AIR: f64 = 0.5;
/// Height of the finger knob, mm.
const PULL_HEIGHT: f64 = 9.0;
/// How much of the box's front is shown below the keeper, mm.
const FRONT_SHOWN: f64 = 10.0;
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
    cut.front(&mut items);
    cut.plate(&mut items);
    cut.keeper(&mut items);
    cut.slider(&mut items);
    cut.pull(&mut items);
    cut.knob(&mut items);
    cut.disc(&mut items);
    cut.pin(&mut items);
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
    disc_spans: Vec<(f64, f64)>,
    index: usize,
    pub travel: f64,
    pub thickness: f64,
    /// Height of the names, mm.
    pub letters: f64,
    body: Body,
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
        let thickness = design.plate.thickness.max(0.5);
        let body = Body::new(design, travel);
        Self {
            design,
            dial,
            disc_spans,
            index,
            travel,
            thickness,
            letters: type_of(None),
            body,
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

    fn plate_rect(&self) -> Rect {
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

    /// The slider from the tab's tip to the pin, or to the end of the crossbar where there is none.
    pub(crate) fn slider_rect(&self) -> Rect {
        let end = self
            .pin_rect()
            .map_or(self.body.crossbar.max.y, |pin| pin.centre().x);
        let top = -self.design.slider.below;
        rect(
            self.body.tip,
            end,
            top - self.design.slider.thickness.max(0.5),
            top,
        )
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

    pub(crate) fn knob_rect(&self) -> Option<Rect> {
        self.dial.map(|dial| {
            let (at, radius) = (dial.centre.1, knob_radius(dial.knob.diameter));
            let foot = self.thickness + AIR;
            rect(
                at - radius,
                at + radius,
                foot,
                foot + dial.knob.height.max(1.0),
            )
        })
    }

    /// The finger knob with the slider at `travel`.
    fn pull_at(&self, travel: f64) -> Rect {
        let (at, radius) = (
            self.design.slider.guide_at.1 + travel,
            pull_radius(self.design),
        );
        let foot = self.thickness + AIR;
        rect(at - radius, at + radius, foot, foot + PULL_HEIGHT)
    }

    pub(crate) fn pull_rect(&self) -> Rect {
        self.pull_at(self.travel)
    }

    /// Lowest part of what moves below the plate.
    pub(crate) fn floor(&self) -> f64 {
        let disc = self.disc_rect().map_or(0.0, |disc| disc.min.y);
        self.slider_rect().min.y.min(disc)
    }

    /// Whether the pin stands against the disc before it has gone its whole way.
    fn stopped(&self) -> bool {
        let on_its_way = self.travel < self.design.slider.travel - TOUCH;
        let tip = self.pin_rect().map_or(f64::NAN, |pin| pin.max.x);
        on_its_way
            && self
                .disc_spans
                .iter()
                .any(|span| (span.0 - tip).abs() < TOUCH)
    }

    /// The front of the box under the keeper.
    fn front(&self, items: &mut Vec<Item>) {
        let keeper = self.keeper_rect();
        let shut_tip = self.body.tip - self.travel;
        let right = (shut_tip - 1.0).min(-AIR);
        if right - keeper.min.x > 1.0 {
            let foot = self.floor().min(-FRONT_SHOWN);
            let wall = rect(keeper.min.x, right, foot, 0.0);
            cut_face(items, &[Outline::rectangle(wall)], Stuff::Wood, Ink::Thin);
        }
    }

    /// The plate, parted by the dial's bore and the finger knob's slot, rabbeted over the keeper.
    fn plate(&self, items: &mut Vec<Item>) {
        let mut gaps = Vec::new();
        if let Some(dial) = self.dial {
            let half = dial.bore.diameter.max(0.0) / 2.0;
            gaps.push((dial.centre.1 - half, dial.centre.1 + half));
        }
        let (at, half) = (
            self.design.slider.guide_at.1,
            self.design.slider.shank.max(1.0) / 2.0 + AIR,
        );
        gaps.push((at - half, at + self.design.slider.travel.max(0.0) + half));
        gaps.sort_by(|a, b| a.0.total_cmp(&b.0));
        let plate = self.plate_rect();
        let mut pieces = Vec::new();
        let mut from = plate.min.x;
        for (start, end) in gaps {
            pieces.push((from, start.min(plate.max.x)));
            from = from.max(end);
        }
        pieces.push((from, plate.max.x));
        // The far walls of bore and slot close the plate behind the cut.
        items.push(Item::area(
            Layer::Wood,
            Ink::DeepWood,
            Some(Ink::Thin),
            self.rabbeted(plate.min.x, plate.max.x),
        ));
        let faces: Vec<Outline> = pieces
            .into_iter()
            .filter(|(from, to)| to - from > 0.05)
            .map(|(from, to)| self.rabbeted(from, to))
            .collect();
        cut_face(items, &faces, Stuff::Wood, Ink::Outline);
    }

    /// The plate from `from` to `to`, less the rabbet.
    fn rabbeted(&self, from: f64, to: f64) -> Outline {
        let keeper = self.keeper_rect();
        let edge = keeper.max.x + RABBET_AIR;
        let roof = self.design.plate.rabbet.clamp(0.0, self.thickness * 0.9);
        let top = self.thickness;
        let at = Point::new;
        if edge <= from {
            Outline::rectangle(rect(from, to, 0.0, top))
        } else if edge >= to {
            Outline::rectangle(rect(from, to, roof, top))
        } else {
            let corners = [
                at(from, roof),
                at(edge, roof),
                at(edge, 0.0),
                at(to, 0.0),
                at(to, top),
                at(from, top),
            ];
            Outline::polygon(&corners)
        }
    }

    fn keeper(&self, items: &mut Vec<Item>) {
        cut_face(
            items,
            &[Outline::rectangle(self.keeper_rect())],
            Stuff::Printed,
            Ink::Outline,
        );
        if let Some(item) = items.last_mut() {
            item.subject = Some(Subject::Keeper);
        }
    }

    fn slider(&self, items: &mut Vec<Item>) {
        let stuff = match self.design.slider.material {
            Material::Printed => Stuff::Printed,
            _ => Stuff::DeepWood,
        };
        let face = [Outline::rectangle(self.slider_rect())];
        cut_face(items, &face, stuff, Ink::Outline);
        let tab = Outline::rectangle(self.tab_rect());
        let tint = Item::area(Layer::Below, Ink::MovableTint, Some(Ink::Movable), tab);
        items.push(tint.picked_as(Subject::Slider));
    }

    fn pull(&self, items: &mut Vec<Item>) {
        let knob = self.pull_rect();
        let half = (self.design.slider.shank.max(1.0) / 2.0).min(knob.width() / 2.0);
        let shank = rect(
            knob.centre().x - half,
            knob.centre().x + half,
            -self.design.slider.below,
            knob.min.y + 0.1,
        );
        let outline = turned(knob, &[shank], 2.0);
        cut_face(items, &[outline], Stuff::Plain, Ink::Movable);
        if let Some(item) = items.last_mut() {
            item.subject = Some(Subject::Pull);
        }
    }

    fn disc(&self, items: &mut Vec<Item>) {
        let Some((dial, whole)) = self.dial.zip(self.disc_rect()) else {
            return;
        };
        let stopped = self.stopped();
        let line = if stopped { Ink::Blocks } else { Ink::Outline };
        let behind = Outline::rectangle(whole);
        items.push(Item::area(Layer::Below, Ink::Part, Some(Ink::Thin), behind));
        let mut faces = Vec::new();
        for &(from, to) in &self.disc_spans {
            if to - from <= 0.05 {
                continue;
            }
            let flat = rect(from, to, whole.min.y, whole.max.y);
            faces.push(match self.shaft_and_post(dial, flat) {
                Some(steps) => turned_up(flat, &steps),
                None => Outline::rectangle(flat),
            });
        }
        cut_face(
            items,
            &faces,
            if stopped {
                Stuff::Blocking
            } else {
                Stuff::Printed
            },
            line,
        );
    }

    fn pin(&self, items: &mut Vec<Item>) {
        let Some(pin) = self.pin_rect() else { return };
        let (stuff, line) = if self.stopped() {
            (Stuff::Blocking, Ink::Blocks)
        } else {
            (Stuff::Pin, Ink::Outline)
        };
        cut_face(items, &[Outline::rectangle(pin)], stuff, line);
    }

    /// The shaft on the disc and the post on the shaft, where they stand whole on this part of the disc.
    fn shaft_and_post(&self, dial: &Dial, disc: Rect) -> Option<[Rect; 2]> {
        let knob = self.knob_rect()?;
        let at = dial.centre.1;
        let shaft =
            (dial.bore.diameter / 2.0 - dial.bore.shaft_play).clamp(0.3, knob.width() / 2.0);
        let post = dial.key.apothem.clamp(0.2, shaft);
        let whole = disc.min.x <= at - shaft && at + shaft <= disc.max.x;
        let shoulder = knob.min.y;
        let top = shoulder + key_depth(dial).min(0.9 * knob.height());
        (whole && shoulder > disc.max.y).then(|| {
            [
                rect(at - shaft, at + shaft, disc.max.y, shoulder),
                rect(at - post, at + post, shoulder, top),
            ]
        })
    }

    /// The knob; the disc's post is drawn over it, in its recess.
    fn knob(&self, items: &mut Vec<Item>) {
        let Some(knob) = self.knob_rect() else {
            return;
        };
        cut_face(
            items,
            &[turned(knob, &[], 2.5)],
            Stuff::Printed,
            Ink::Movable,
        );
        if let Some(item) = items.last_mut() {
            item.subject = Some(Subject::Dial(self.index));
        }
    }
}

/// How deep the star in the knob is, mm: six tenths of the knob, 4 to 8. The post ends just below.
pub fn key_depth(dial: &Dial) -> f64 {
    (dial.knob.height * 0.6).clamp(4.0, 8.0)
}

/// A disc with `steps` standing on it, each narrower than the one below.
fn turned_up(disc: Rect, steps: &[Rect]) -> Outline {
    let at = Point::new;
    let mut right = vec![at(disc.max.x, disc.min.y), at(disc.max.x, disc.max.y)];
    let mut left = vec![at(disc.min.x, disc.min.y), at(disc.min.x, disc.max.y)];
    for step in steps {
        right.extend([at(step.max.x, step.min.y), at(step.max.x, step.max.y)]);
        left.extend([at(step.min.x, step.min.y), at(step.min.x, step.max.y)]);
    }
    right.extend(left.into_iter().rev());
    Outline::polygon(&right)
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

fn rect(left: f64, right: f64, bottom: f64, top: f64) -> Rect {
    Rect::new(Point::new(left, bottom), Point::new(right, top))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_cut_through_a_disc_shows_its_slot() {
        let dial = Dial::default();
        let facing = disc_spans(&dial, 0.0);
        // Slot 9 deep faces the pin: material from the floor to the far rim.
        assert_eq!(facing.len(), 1);
        assert!((facing[0].0 - 86.0).abs() < 0.01 && (facing[0].1 - 113.0).abs() < 0.01);
        let away = disc_spans(&dial, 90.0);
        assert!((away[0].0 - 77.0).abs() < 0.01 && (away[0].1 - 113.0).abs() < 0.01);
    }

    #[test]
    fn a_pin_on_plain_rim_is_drawn_as_stopped() {
        let design = Design::default();
        let mut pose = Pose::at_marks(&design, &[3, 5, 1]);
        assert!(!Cut::new(&design, &pose, 1).stopped());
        pose.travel = 2.0;
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
        assert_eq!((slider.min.y, slider.max.y), (-9.25, -1.25));
        assert_eq!((pin.min.y, pin.max.y), (-6.25, -1.25));
        assert_eq!(cut.disc_rect().unwrap().max.y, -0.75);
    }

    #[test]
    fn the_sheet_keeps_its_size_while_the_slider_moves() {
        let design = Design::default();
        let mut pose = Pose::at_combination(&design);
        let shut = section(&design, &pose, 1, None).bounds;
        pose.travel = 8.0;
        let free = section(&design, &pose, 1, None).bounds;
        assert!((shut.width() - free.width()).abs() < 1e-6);
        assert!((shut.height() - free.height()).abs() < 1e-6);
    }
}
