//! Screws in the section: those that the cut goes through as they are, those beside it dashed.

use latchwright_assembly::dial::disc_screw;
use latchwright_assembly::keeper::keeper_screws;
use latchwright_assembly::screw::{HEAD, JOINING};
use latchwright_geometry::Point;

use crate::item::{Item, Layer};
use crate::outline::Outline;
use crate::section::Cut;
use crate::style::Ink;

/// Length of a screw's point, mm, as it is drawn.
const POINT: f64 = 2.5;

/// Which way a screw goes in from its head.
#[derive(Clone, Copy)]
enum Way {
    Up,
    Down,
}

impl Cut<'_> {
    /// All screws of the lid.
    pub(crate) fn screws(&self, items: &mut Vec<Item>) {
        self.finger_knob_screw(items);
        self.disc_screw(items);
        self.guide_screws(items);
        self.keeper_screw(items);
    }

    /// From the slider's underside through it into the shank; its head is sunk there.
    fn finger_knob_screw(&self, items: &mut Vec<Item>) {
        let Some(length) = self.knob_of_slider.screw else {
            return;
        };
        let at = Point::new(self.pull_rect().centre().x, self.slider_rect().min.y);
        items.push(seen(screw(at, Way::Up, length)));
    }

    /// From the disc's underside through shaft and post into the knob; none where the disc is cut away there.
    fn disc_screw(&self, items: &mut Vec<Item>) {
        let Some((dial, disc)) = self.dial.zip(self.disc_rect()) else {
            return;
        };
        let joined = disc_screw(self.design, dial, 0.0);
        let Some(length) = joined.length else {
            return;
        };
        let at = Point::new(disc.centre().x, disc.min.y + joined.deeper);
        items.push(seen(screw(at, Way::Up, length)));
    }

    /// From the bridges' undersides through bridge and strip into the plate, beside the cut.
    fn guide_screws(&self, items: &mut Vec<Item>) {
        let Some(length) = self.guide.screw else {
            return;
        };
        for bridge in self.bridge_rects() {
            let at = Point::new(bridge.centre().x, bridge.min.y);
            items.push(hidden(screw(at, Way::Up, length)));
        }
    }

    /// From the keeper's upper face down into the front, beside the cut.
    fn keeper_screw(&self, items: &mut Vec<Item>) {
        let screws = keeper_screws(self.design);
        let Some(length) = screws.length else {
            return;
        };
        let [(_, place), _] = screws.at;
        let at = Point::new(place.y, self.keeper_rect().max.y);
        items.push(hidden(screw(at, Way::Down, length)));
    }
}

fn seen(outline: Outline) -> Item {
    Item::area(Layer::Below, Ink::Part, Some(Ink::Thin), outline)
}

fn hidden(outline: Outline) -> Item {
    Item::stroke(Layer::Below, Ink::Hidden, outline)
}

/// A countersunk screw whose head lies level at `at`, `length` mm long.
fn screw(at: Point, way: Way, length: f64) -> Outline {
    let (head, shank) = (HEAD / 2.0, JOINING.shank / 2.0);
    let (neck, point) = (head - shank, (length - POINT).max(head));
    let half = [(head, 0.0), (shank, neck), (shank, point), (0.0, length)];
    let turn = |(across, along): (f64, f64)| match way {
        Way::Up => at + Point::new(across, along),
        Way::Down => at + Point::new(-across, -along),
    };
    let right = half.map(turn);
    let left = [half[2], half[1], half[0]].map(|(across, along)| turn((-across, along)));
    Outline::polygon(&[right.as_slice(), left.as_slice()].concat())
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_model::{Design, Pose};

    use crate::section;

    #[test]
    fn a_screw_has_its_length_and_its_head_level() {
        for (way, low, high) in [(Way::Up, 5.0, 24.0), (Way::Down, -14.0, 5.0)] {
            let extent = screw(Point::new(3.0, 5.0), way, 19.0).extent();
            assert_eq!((extent.min.y, extent.max.y), (low, high));
            assert_eq!(extent.width(), HEAD);
        }
    }

    #[test]
    fn a_screw_that_is_not_sold_is_not_drawn() {
        let screws = |design: &Design| {
            let drawn = section(design, &Pose::at_combination(design), 1, None);
            let is_screw = |item: &&Item| (item.shape.extent().width() - HEAD).abs() < 1e-9;
            drawn.items.iter().filter(is_screw).count()
        };
        let usual = Design::default();
        assert_eq!(screws(&usual), 5);
        // a plate of 5 gives the thread of the guide's screws too little
        let mut thin = usual.clone();
        thin.plate.thickness = 5.0;
        assert_eq!(screws(&thin), 3);
    }
}
