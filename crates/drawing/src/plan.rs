//! The lid in plan, seen from outside, under a veil that thins from solid wood to clear.

use latchwright_assembly::finger_knob::{finger_knob, shank_slot};
use latchwright_geometry::Point;
use latchwright_model::Pose;
use latchwright_model::{Design, Dial};

use crate::contact::{ContactMark, blocked_hatch, contact_items};
use crate::dial::knob;
use crate::dimension::{dimension, length};
use crate::disc::disc_outlines;
use crate::drawing::Drawing;
use crate::grain::grain_lines;
use crate::item::{Item, Layer, Subject};
use crate::marks::{GiveWay, LabelSize, mark_at, marks, marks_radius};
use crate::outline::Outline;
use crate::shape::Shape;
use crate::style::Ink;
use latchwright_geometry::Rect;
use latchwright_model::shown;
use latchwright_model::sound::within;

/// What the plan shows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PlanOptions {
    /// 1: solid wood, only what the recipient sees; 0: clear, everything below shows.
    pub veil: f64,
    /// What stops the slider, if anything does.
    pub contact: Option<ContactMark>,
    /// The dial (from 0) that has the focus.
    pub focus: Option<usize>,
    /// For each dial, whether its pin finds a slot open before it or stands in one; missing ones
    /// count as not.
    pub passing: Vec<bool>,
    /// Whether dimension lines are drawn.
    pub show_dimensions: bool,
    /// Labels as large as there is room, for a lid that is drawn small.
    pub large_labels: bool,
    /// Leaves out the pointers and favours no mark: the lid without its secret.
    pub hide_setting: bool,
}

/// Sheet left free round the plate, mm.
const MARGIN: f64 = 5.0;
/// Sheet for dimension lines, mm.
const DIMENSIONS: f64 = 16.0;

/// The sheet that [`plan`] draws on, mm: plate, marks and keeper with a margin, and room for
/// dimension lines where they are shown.
pub fn plan_sheet(design: &Design, options: &PlanOptions) -> Rect {
    let pose = Pose {
        turns_deg: Vec::new(),
        travel: 0.0,
    };
    Scene::new(&shown(design), &pose, options).sheet()
}

/// The lid seen from outside, in the design's frame: origin in the middle of the plate's front edge,
/// y towards the hinge. Items are in painting order; what lies below the plate is as opaque as the
/// veil is thin.
///
/// The sheet is [`plan_sheet`], wherever the slider is and however the dials stand.
pub fn plan(design: &Design, pose: &Pose, options: &PlanOptions) -> Drawing {
    let design = shown(design);
    let scene = Scene::new(&design, pose, options);
    let mut drawing = Drawing::new(scene.sheet());
    let items = &mut drawing.items;
    scene.wood(items);
    if scene.clear > 0.0 {
        scene.keeper(items);
        scene.slider(items);
        scene.below(items);
        scene.discs(items);
        scene.pins(items);
    }
    scene.pull_slot(items);
    scene.marks(items);
    scene.knobs(items);
    scene.pull(items);
    scene.contact(items);
    if options.show_dimensions {
        scene.dimensions(items);
    }
    drawing
}

/// The marks and labels round all dials, one list a dial, as they go onto the plate: in the design's
/// frame, without pointers, no mark favoured.
pub fn plate_marks(design: &Design) -> Vec<Vec<Item>> {
    let design = shown(design);
    let pose = Pose {
        turns_deg: Vec::new(),
        travel: 0.0,
    };
    let options = PlanOptions {
        veil: 1.0,
        hide_setting: true,
        ..PlanOptions::default()
    };
    let scene = Scene::new(&design, &pose, &options);
    scene
        .dials()
        .map(|(index, dial)| scene.marks_of(index, dial))
        .collect()
}

/// Marks, labels and knobs of all dials in the design's frame, without the lid they stand on.
pub(crate) fn dials_alone(design: &Design, pose: &Pose, options: &PlanOptions) -> Vec<Item> {
    let design = shown(design);
    let scene = Scene::new(&design, pose, options);
    let mut items = Vec::new();
    scene.marks(&mut items);
    scene.knobs(&mut items);
    items
}

/// The half-size of the finger knob that moves the slider, mm.
pub(crate) fn pull_radius(design: &Design) -> f64 {
    finger_knob(design).diameter.clamp(10.0, 80.0) / 2.0
}

/// What all parts of the plan are drawn from.
pub(crate) struct Scene<'a> {
    pub design: &'a Design,
    pose: &'a Pose,
    options: &'a PlanOptions,
    /// How much of what lies below shows, 0 to 1.
    pub clear: f64,
    pub travel: f64,
    plate: Rect,
}

impl<'a> Scene<'a> {
    fn new(design: &'a Design, pose: &'a Pose, options: &'a PlanOptions) -> Self {
        let half = design.plate.width / 2.0;
        Self {
            design,
            pose,
            options,
            clear: 1.0 - within(options.veil).clamp(0.0, 1.0),
            travel: within(pose.travel),
            plate: Rect::new(Point::new(-half, 0.0), Point::new(half, design.plate.depth)),
        }
    }

    fn sheet(&self) -> Rect {
        let marks = self.dials().map(|(_, dial)| {
            let side = 2.0 * marks_radius(dial.knob.diameter);
            Rect::about(centre(dial), side, side)
        });
        let shown = marks
            .chain([self.keeper_rect()])
            .fold(self.plate, Rect::union)
            .grown(MARGIN);
        if self.options.show_dimensions {
            let space = Point::new(DIMENSIONS, DIMENSIONS);
            Rect {
                min: shown.min - space,
                max: shown.max + Point::new(0.0, DIMENSIONS),
            }
        } else {
            shown
        }
    }

    pub fn dials(&self) -> impl Iterator<Item = (usize, &'a Dial)> + use<'a> {
        self.design.dials.iter().enumerate()
    }

    fn turn_deg(&self, dial: usize) -> f64 {
        within(self.pose.turns_deg.get(dial).copied().unwrap_or(0.0))
    }

    /// The contact, if it is at this dial.
    fn contact_at(&self, dial: usize) -> Option<&ContactMark> {
        self.options
            .contact
            .as_ref()
            .filter(|mark| mark.dial == dial)
    }

    fn wood(&self, items: &mut Vec<Item>) {
        let corners = self.plate.corners().map(|corner| (corner, 2.0));
        let solid = 1.0 - 0.45 * self.clear;
        let board = Outline::rounded(&corners);
        items.push(Item::area(Layer::Wood, Ink::Wood, None, board.clone()).faded(solid));
        items.push(grain_lines(self.plate, self.design.plate.grain).faded(solid));
        items.push(Item::stroke(Layer::Wood, Ink::Outline, board));
    }

    pub fn keeper_rect(&self) -> Rect {
        let (keeper, at) = (&self.design.keeper, self.design.tab.at);
        let half = keeper.width / 2.0;
        Rect::new(
            Point::new(at - half, keeper.edge - keeper.depth),
            Point::new(at + half, keeper.edge),
        )
    }

    fn discs(&self, items: &mut Vec<Item>) {
        for (index, dial) in self.dials() {
            let turn = self.turn_deg(index) - f64::from(self.design.digit(index)) * dial.step_deg();
            let at = centre(dial);
            let outlines: Vec<Outline> = disc_outlines(dial, turn)
                .iter()
                .map(|outline| outline.placed(|point| point + at))
                .collect();
            let contact = self.contact_at(index);
            let line = if contact.is_some() {
                Ink::Blocks
            } else {
                Ink::Outline
            };
            items.push(paths(Some(Ink::Part), None, outlines.clone()).faded(self.clear));
            if let Some(mark) = contact {
                let touched = at + tamed(mark.at);
                items.push(blocked_hatch(&outlines, touched).faded(self.clear));
            }
            items.push(paths(None, Some(line), outlines).faded(self.clear));
            self.washer(dial, items);
        }
    }

    fn pins(&self, items: &mut Vec<Item>) {
        for (index, dial) in self.dials() {
            let (x, y) = dial.pin_at();
            let (at, radius) = (
                Point::new(x, y + self.travel),
                (dial.pin.diameter / 2.0).max(0.0),
            );
            let passes = self.options.passing.get(index).copied().unwrap_or(false);
            let (fill, line) = match (self.contact_at(index), passes) {
                (Some(_), _) => (Ink::BlocksTint, Ink::Blocks),
                (None, true) => (Ink::Part, Ink::Passes),
                (None, false) => (Ink::MovableTint, Ink::Holds),
            };
            let pin = Item::circle(Layer::Below, Some(fill), Some(line), at, radius);
            items.push(pin.faded(self.clear));
            if passes && self.contact_at(index).is_none() {
                // An open ring with a dot passes; a plain one does not.
                let dot = Item::circle(Layer::Below, Some(Ink::Passes), None, at, radius * 0.4);
                items.push(dot.faded(self.clear));
            }
        }
    }

    fn pull_rest(&self) -> Point {
        finger_knob(self.design).at
    }

    fn pull_slot(&self, items: &mut Vec<Item>) {
        let slot = shank_slot(self.design);
        let slot = Outline::stadium(slot.from, slot.to, slot.width.max(1.0) / 2.0);
        let veil = 1.0 - self.clear;
        items.push(Item::area(Layer::Marks, Ink::DeepWood, None, slot.clone()).faded(veil));
        items.push(Item::stroke(Layer::Marks, Ink::Thin, slot));
    }

    fn marks(&self, items: &mut Vec<Item>) {
        for (index, dial) in self.dials() {
            items.extend(self.marks_of(index, dial));
        }
    }

    fn marks_of(&self, index: usize, dial: &Dial) -> Vec<Item> {
        let chosen = mark_at(dial, self.turn_deg(index)).filter(|_| !self.options.hide_setting);
        marks(
            dial,
            centre(dial),
            chosen,
            self.space_of(index),
            self.give_way(dial),
            if self.options.large_labels {
                LabelSize::Large
            } else {
                LabelSize::Usual
            },
        )
    }

    /// Labels make room for a pin as far as it can be seen.
    fn give_way(&self, dial: &Dial) -> Option<GiveWay> {
        let (x, y) = dial.pin_at();
        let reach = dial.pin.diameter.max(0.0) + 0.6;
        let rest = Rect::about(Point::new(x, y), reach, reach);
        let back = Rect::about(
            Point::new(x, y + self.design.slider.travel.max(0.0)),
            reach,
            reach,
        );
        (self.clear > 0.0).then_some(GiveWay {
            pin: rest.union(back),
            share: self.clear,
        })
    }

    /// The part of the plate that is this dial's: half-way to its neighbours, a little off the edge,
    /// and alike on opposite sides, so that dials in a row are labelled alike.
    fn space_of(&self, index: usize) -> Rect {
        let mut space = self.plate.grown(-1.5);
        let Some(own) = self.design.dials.get(index).map(centre) else {
            return space;
        };
        for (_, dial) in self.dials().filter(|(other, _)| *other != index) {
            let (middle, away) = ((own + centre(dial)) * 0.5, centre(dial) - own);
            let sideways = away.x.abs() >= away.y.abs();
            match (sideways, away.x > 0.0, away.y > 0.0) {
                (true, true, _) => space.max.x = space.max.x.min(middle.x - 0.5),
                (true, false, _) => space.min.x = space.min.x.max(middle.x + 0.5),
                (false, _, true) => space.max.y = space.max.y.min(middle.y - 0.5),
                (false, _, false) => space.min.y = space.min.y.max(middle.y + 0.5),
            }
        }
        let width = (own.x - space.min.x).min(space.max.x - own.x);
        let height = (own.y - space.min.y).min(space.max.y - own.y);
        Rect::about(own, 2.0 * width.max(0.0), 2.0 * height.max(0.0))
    }

    fn knobs(&self, items: &mut Vec<Item>) {
        let veil = 1.0 - self.clear;
        for (index, dial) in self.dials() {
            let turn = (!self.options.hide_setting).then(|| self.turn_deg(index));
            items.extend(knob(dial, index, centre(dial), turn, veil));
            if self.options.focus == Some(index) {
                let ring = self.focus_radius(index, dial);
                items.push(Item::circle(
                    Layer::Above,
                    None,
                    Some(Ink::Focus),
                    centre(dial),
                    ring,
                ));
            }
        }
    }

    /// Round the labels, but not into those of the nearest neighbour.
    fn focus_radius(&self, index: usize, dial: &Dial) -> f64 {
        let others = self.dials().filter(|(other, _)| *other != index);
        let nearest = others
            .map(|(_, other)| centre(other).distance(centre(dial)))
            .fold(f64::INFINITY, f64::min);
        (marks_radius(dial.knob.diameter) + 0.6)
            .min(nearest / 2.0 - 0.4)
            .max(1.0)
    }

    fn pull(&self, items: &mut Vec<Item>) {
        let at = self.pull_rest() + Point::new(0.0, self.travel);
        let radius = pull_radius(self.design);
        let knob = Item::circle(
            Layer::Above,
            Some(Ink::Part),
            Some(Ink::Movable),
            at,
            radius,
        );
        items.push(knob.picked_as(Subject::Pull));
        let (x, y) = (radius * 0.32, radius * 0.18);
        let chevron = |up: f64| {
            let tip = at + Point::new(0.0, up);
            Outline::polyline(&[
                tip + Point::new(-x, -y),
                tip + Point::new(0.0, y),
                tip + Point::new(x, -y),
            ])
        };
        items.push(Item::stroke(Layer::Above, Ink::Movable, chevron(0.0)));
    }

    fn contact(&self, items: &mut Vec<Item>) {
        let Some(mark) = &self.options.contact else {
            return;
        };
        let Some(dial) = self.design.dials.get(mark.dial) else {
            return;
        };
        let mut obstacles: Vec<Rect> = Vec::new();
        for (_, dial) in self.dials() {
            let side = 2.0 * marks_radius(dial.knob.diameter) * 0.92;
            obstacles.push(Rect::about(centre(dial), side, side));
            // The pin, and the label that has given way to it.
            let (x, y) = dial.pin_at();
            obstacles.push(Rect::about(Point::new(x, y - 1.0), 10.0, 12.0));
        }
        let side = 2.0 * pull_radius(self.design);
        let rest = self.pull_rest();
        let back = rest + Point::new(0.0, self.design.slider.travel.max(0.0) + 4.0);
        obstacles.push(Rect::about(rest, side, side).union(Rect::about(back, side, side)));
        let at = centre(dial) + tamed(mark.at);
        items.extend(contact_items(mark, at, self.plate.grown(-2.0), &obstacles));
    }

    fn dimensions(&self, items: &mut Vec<Item>) {
        let words = |mm: f64| length(mm, self.design.units);
        let [low_left, low_right, _, high_left] = self.plate.corners();
        let below = Point::new(0.0, (self.keeper_rect().min.y.min(0.0)) - 7.0);
        items.extend(dimension(
            low_left,
            low_right,
            below,
            words(self.plate.width()),
        ));
        let beside = Point::new(-7.0, 0.0);
        items.extend(dimension(
            low_left,
            high_left,
            beside,
            words(self.plate.height()),
        ));
        let mut centres: Vec<Point> = self.dials().map(|(_, dial)| centre(dial)).collect();
        centres.sort_by(|a, b| a.x.total_cmp(&b.x));
        let top = self.plate.max.y + 7.0;
        for (a, b) in centres.iter().zip(centres.iter().skip(1)) {
            let level = |point: &Point| Point::new(point.x, self.plate.max.y);
            let aside = Point::new(0.0, top - self.plate.max.y);
            items.extend(dimension(level(a), level(b), aside, words(b.x - a.x)));
        }
    }
}

pub(crate) fn centre(dial: &Dial) -> Point {
    Point::new(dial.centre.0, dial.centre.1)
}

fn tamed(point: Point) -> Point {
    Point::new(within(point.x), within(point.y))
}

fn paths(fill: Option<Ink>, line: Option<Ink>, outlines: Vec<Outline>) -> Item {
    Item {
        layer: Layer::Below,
        fill,
        line,
        opacity: 1.0,
        shape: Shape::Path { outlines },
        subject: None,
    }
}
