//! What the plan shows below the plate beside discs and pins: keeper, slider, guide, washers and their screws.

use latchwright_assembly::dial::washer;
use latchwright_assembly::guide::guide;
use latchwright_assembly::keeper::keeper_screws;
use latchwright_assembly::screw::JOINING;
use latchwright_geometry::Point;
use latchwright_model::{Dial, KeeperMake};

use crate::hatch::hatch;
use crate::item::{Item, Layer, Subject};
use crate::outline::Outline;
use crate::plan::{Scene, centre};
use crate::slider::{Body, slider_outline};
use crate::style::Ink;

impl Scene<'_> {
    pub(crate) fn keeper(&self, items: &mut Vec<Item>) {
        let area = [Outline::rectangle(self.keeper_rect())];
        let lines = hatch(&[&area], 2.4, 45.0);
        let [outline] = area;
        let stuff = match self.design.keeper.make {
            KeeperMake::Wood => Ink::Wood,
            KeeperMake::Printed => Ink::Part,
        };
        items.push(
            Item::area(Layer::Below, stuff, None, outline.clone())
                .faded(self.clear)
                .picked_as(Subject::Keeper),
        );
        items.push(Item::strokes(Layer::Below, Ink::Hatch, lines).faded(self.clear));
        items.push(Item::stroke(Layer::Below, Ink::Thin, outline).faded(self.clear));
    }

    pub(crate) fn slider(&self, items: &mut Vec<Item>) {
        let outline = slider_outline(self.design, self.travel);
        let tab = Body::new(self.design, self.travel).tab(self.design);
        let body = Item::area(Layer::Below, Ink::DeepWood, None, outline.clone());
        items.push(body.faded(self.clear * 0.85).picked_as(Subject::Slider));
        let tint = Item::area(
            Layer::Below,
            Ink::MovableTint,
            None,
            Outline::rectangle(tab),
        );
        items.push(tint.faded(self.clear * 0.9));
        // The keeper lies over the tab: its edge and hatch go on through the tint.
        let area = [Outline::rectangle(self.keeper_rect())];
        let under = [Outline::rectangle(tab)];
        let crossed = hatch(&[&area, &under], 2.4, 45.0);
        items.push(Item::strokes(Layer::Below, Ink::Hatch, crossed).faded(self.clear));
        items.push(Item::stroke(Layer::Below, Ink::Hidden, outline).faded(self.clear));
        let [keeper] = area;
        items.push(Item::stroke(Layer::Below, Ink::Thin, keeper).faded(self.clear));
    }

    /// What lies still below the plate: the strips beside the slider's neck, the bridges under it, their screws and the
    /// keeper's; and on the slider the steps from its bar down to its fingers.
    pub(crate) fn below(&self, items: &mut Vec<Item>) {
        self.finger_steps(items);
        self.guide(items);
        let screws = keeper_screws(self.design);
        for (_, at) in screws.at {
            self.screw(at, screws.head, items);
        }
    }

    fn finger_steps(&self, items: &mut Vec<Item>) {
        let fingers = Body::new(self.design, self.travel).fingers(self.design, self.travel);
        let step = |finger: latchwright_geometry::Rect| {
            Outline::line(finger.min, Point::new(finger.max.x, finger.min.y))
        };
        let steps: Vec<Outline> = fingers.into_iter().map(step).collect();
        if !steps.is_empty() {
            items.push(Item::strokes(Layer::Below, Ink::Faint, steps).faded(self.clear));
        }
    }

    fn guide(&self, items: &mut Vec<Item>) {
        let guide = guide(self.design);
        for strip in &guide.strips {
            let outline = Outline::rectangle(strip.area);
            let area = Item::area(Layer::Below, Ink::Wood, Some(Ink::Thin), outline);
            items.push(area.faded(self.clear));
        }
        for bridge in &guide.bridges {
            let outline = Outline::rectangle(bridge.area);
            items.push(Item::stroke(Layer::Below, Ink::Hidden, outline).faded(self.clear));
        }
        if guide.screw.is_some() {
            for screw in &guide.screws {
                self.screw(screw.at, JOINING.shank, items);
            }
        }
    }

    fn screw(&self, at: Point, across: f64, items: &mut Vec<Item>) {
        let (fill, line) = (Some(Ink::Part), Some(Ink::Thin));
        let head = Item::circle(Layer::Below, fill, line, at, across / 2.0);
        items.push(head.faded(self.clear));
    }

    /// The washer over a disc, which covers the end of a deep slot.
    pub(crate) fn washer(&self, dial: &Dial, items: &mut Vec<Item>) {
        if let Some(ring) = washer(self.design, dial) {
            let radius = (ring.outer / 2.0).max(0.0);
            let rim = Item::circle(Layer::Below, None, Some(Ink::Faint), centre(dial), radius);
            items.push(rim.faded(self.clear));
        }
    }
}
