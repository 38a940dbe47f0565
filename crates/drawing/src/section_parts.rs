//! The parts of the section, each drawn where the box has it.

use latchwright_assembly::joinery::joinery;
use latchwright_assembly::slider_body::RABBET_AIR;
use latchwright_geometry::{Point, Rect};
use latchwright_model::{Dial, KeeperMake, Material};

use crate::item::{Item, Layer, Subject};
use crate::outline::Outline;
use crate::section::{Cut, rect, star_rect};
use crate::section_faces::{Stuff, cut_face, turned};
use crate::style::Ink;

impl Cut<'_> {
    /// All parts, those behind first.
    pub(crate) fn parts(&self, items: &mut Vec<Item>) {
        self.front(items);
        self.plate(items);
        self.keeper(items);
        self.slider(items);
        self.guide(items);
        self.pull(items);
        self.knob(items);
        self.washer_faces(items);
        self.disc(items);
        self.pin(items);
        self.screws(items);
    }

    /// The front of the box under the keeper, with its notch for the tab: the cut goes through the notch, whose end is
    /// seen behind it.
    fn front(&self, items: &mut Vec<Item>) {
        let Some(front) = self.front_rect() else {
            return;
        };
        let behind = Outline::rectangle(front);
        items.push(Item::area(
            Layer::Wood,
            Ink::DeepWood,
            Some(Ink::Thin),
            behind,
        ));
        let face = match joinery(self.design).notch {
            None => Outline::rectangle(front),
            Some(notch) => {
                let inner = front.max.x - notch.into.clamp(0.0, front.width());
                let ground = (-notch.depth).clamp(front.min.y, 0.0);
                let at = Point::new;
                Outline::polygon(&[
                    front.min,
                    at(front.max.x, front.min.y),
                    at(front.max.x, ground),
                    at(inner, ground),
                    at(inner, front.max.y),
                    at(front.min.x, front.max.y),
                ])
            }
        };
        cut_face(items, &[face], Stuff::Body, Ink::Thin);
    }

    /// The plate, parted by the dial's bore and the finger knob's slot, rabbeted over the keeper.
    fn plate(&self, items: &mut Vec<Item>) {
        let mut gaps = Vec::new();
        if let Some(dial) = self.dial {
            let half = dial.bore.diameter.max(0.0) / 2.0;
            gaps.push((dial.centre.1 - half, dial.centre.1 + half));
        }
        let (slot, half) = (&self.shank_slot, self.shank_slot.width.max(1.0) / 2.0);
        gaps.push((slot.from.y - half, slot.to.y.max(slot.from.y) + half));
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
        let stuff = match self.design.keeper.make {
            KeeperMake::Wood => Stuff::Body,
            KeeperMake::Printed => Stuff::Printed,
        };
        let face = [Outline::rectangle(self.keeper_rect())];
        cut_face(items, &face, stuff, Ink::Outline);
        if let Some(item) = items.last_mut() {
            item.subject = Some(Subject::Keeper);
        }
    }

    /// Tab, neck and bar at their whole thickness, and the finger below the disc's layer.
    fn slider(&self, items: &mut Vec<Item>) {
        let stuff = match self.design.slider.material {
            Material::Printed => Stuff::Printed,
            _ => Stuff::DeepWood,
        };
        let whole = self.slider_rect();
        let face = match self.finger_rect() {
            Some(finger) => Outline::polygon(&[
                whole.min,
                finger.min,
                Point::new(finger.max.x, finger.min.y),
                finger.max,
                Point::new(whole.max.x, finger.max.y),
                whole.max,
                Point::new(whole.min.x, whole.max.y),
            ]),
            None => Outline::rectangle(whole),
        };
        cut_face(items, &[face], stuff, Ink::Outline);
        let tab = Outline::rectangle(self.tab_rect());
        let tint = Item::area(Layer::Below, Ink::MovableTint, Some(Ink::Movable), tab);
        items.push(tint.picked_as(Subject::Slider));
    }

    /// The bridges, which the cut goes through, and the strip behind the neck.
    fn guide(&self, items: &mut Vec<Item>) {
        let bridges = self.bridge_rects().map(Outline::rectangle);
        cut_face(items, &bridges, Stuff::Wood, Ink::Outline);
        // its long edges lie along plate and bridges
        let strip = self.strip_rect();
        let end = |x: f64| Outline::line(Point::new(x, strip.min.y), Point::new(x, strip.max.y));
        let ends = vec![end(strip.min.x), end(strip.max.x)];
        items.push(Item::strokes(Layer::Below, Ink::Hidden, ends));
    }

    /// The finger knob: its grip over the plate, its shank through the slot down into its socket in the slider.
    fn pull(&self, items: &mut Vec<Item>) {
        let grip = self.pull_rect();
        let half = (self.knob_of_slider.shank.max(1.0) / 2.0).min(grip.width() / 2.0);
        let at = grip.centre().x;
        let shank = rect(
            at - half,
            at + half,
            grip.min.y - self.knob_of_slider.shank_length,
            grip.min.y,
        );
        let outline = turned(grip, &[shank], 2.0);
        cut_face(items, &[outline], Stuff::Plain, Ink::Movable);
        if let Some(item) = items.last_mut() {
            item.subject = Some(Subject::Pull);
        }
    }

    /// The knob with its star; the disc's post is drawn over it.
    fn knob(&self, items: &mut Vec<Item>) {
        let Some((dial, knob)) = self.dial.zip(self.knob_rect()) else {
            return;
        };
        let outline = turned(knob, &[], 2.5);
        cut_face(items, &[outline], Stuff::Printed, Ink::Movable);
        if let Some(item) = items.last_mut() {
            item.subject = Some(Subject::Dial(self.index));
        }
        let star = Outline::rectangle(star_rect(dial, knob));
        items.push(Item::area(Layer::Below, Ink::Part, Some(Ink::Thin), star));
    }

    /// The washer between plate and disc, cut on both sides of the shaft.
    fn washer_faces(&self, items: &mut Vec<Item>) {
        let Some((ring, area)) = self.washer() else {
            return;
        };
        let (at, inner) = (area.centre().x, ring.inner / 2.0);
        for (from, to) in [(area.min.x, at - inner), (at + inner, area.max.x)] {
            let face = Outline::rectangle(rect(from, to, area.min.y, area.max.y));
            items.push(Item::area(Layer::Below, Ink::Part, Some(Ink::Thin), face));
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
        let faces = self.disc_faces(dial, whole);
        let stuff = if stopped {
            Stuff::Blocking
        } else {
            Stuff::Printed
        };
        cut_face(items, &faces, stuff, line);
    }

    /// The disc's cut faces, with shaft and post on the one that they stand on.
    fn disc_faces(&self, dial: &Dial, whole: Rect) -> Vec<Outline> {
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
        faces
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
