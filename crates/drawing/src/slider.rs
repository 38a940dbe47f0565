//! The slider's body: a crossbar, a finger to each pin, and the neck that ends in the tab.
//!
//! Crossbar and neck lie in the same layer as the discs, and the crossbar stays clear of every disc over the
//! whole travel; the fingers run below the discs. So the body meets nothing that its pins do not meet first.

use latchwright_assembly::slider_body::{CORNER, Finger, SliderBody};
use latchwright_geometry::{Point, Rect};
use latchwright_model::Design;

use crate::outline::Outline;

/// Where the parts of the body are; mm in the design's frame, at the travel asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Body {
    /// The crossbar.
    pub crossbar: Rect,
    /// The neck from the crossbar down to the tab's tip, as wide as the tab.
    pub neck: Rect,
    /// y of the tab's tip.
    pub tip: f64,
    /// The same body as the box has it, forward.
    pub whole: SliderBody,
}

impl Body {
    /// The body of `design`'s slider at `travel` (mm).
    pub(crate) fn new(design: &Design, travel: f64) -> Self {
        let body = SliderBody::of(design);
        let shift = Point::new(0.0, travel);
        let (left, right) = body.neck;
        Self {
            crossbar: Rect::new(body.bar_min + shift, body.bar_max + shift),
            neck: Rect::new(
                Point::new(left, body.tip) + shift,
                Point::new(right, body.bar_min.y) + shift,
            ),
            tip: body.tip + travel,
            whole: body,
        }
    }

    /// The fingers at `travel`, from right to left, each up to its round tip beyond the pin.
    pub(crate) fn fingers(&self, design: &Design, travel: f64) -> Vec<Rect> {
        let shift = Point::new(0.0, travel);
        let moved = |finger: Finger| Rect::new(finger.area.min + shift, finger.area.max + shift);
        let all = self.whole.fingers(design);
        all.into_iter().map(moved).collect()
    }

    /// The part of the neck that is the tab: as much as reaches under the keeper when shut.
    pub(crate) fn tab(&self, design: &Design) -> Rect {
        let reach = design.tab.engagement.clamp(0.0, self.neck.height());
        Rect {
            min: self.neck.min,
            max: Point::new(self.neck.max.x, self.tip + reach),
        }
    }
}

/// The whole body as one closed outline with rounded corners, mm in the design's frame, counter-
/// clockwise, at `travel` mm.
///
/// A finger that would run into its neighbour, or has no pin above the crossbar, is left out.
pub fn slider_outline(design: &Design, travel: f64) -> Outline {
    let body = Body::new(design, travel);
    let Body { crossbar, neck, .. } = body;
    let mut corners = vec![
        (Point::new(neck.min.x, neck.min.y), 1.5),
        (Point::new(neck.max.x, neck.min.y), 1.5),
        (Point::new(neck.max.x, crossbar.min.y), CORNER),
        (Point::new(crossbar.max.x, crossbar.min.y), CORNER),
        (Point::new(crossbar.max.x, crossbar.max.y), CORNER),
    ];
    for finger in body.fingers(design, travel) {
        let radius = finger.width() / 2.0;
        let [low_left, low_right, high_right, high_left] = finger.corners();
        corners.push((low_right, 1.0));
        corners.push((high_right, radius));
        corners.push((high_left, radius));
        corners.push((low_left, 1.0));
    }
    corners.push((Point::new(crossbar.min.x, crossbar.max.y), CORNER));
    corners.push((Point::new(crossbar.min.x, crossbar.min.y), CORNER));
    corners.push((Point::new(neck.min.x, crossbar.min.y), CORNER));
    // Where the neck is as wide as the crossbar, its corners fall together.
    corners.dedup_by(|a, b| a.0.distance(b.0) < 1e-9);
    Outline::rounded(&corners)
}

/// The bar that carries the fingers, mm in the design's frame, at `travel` mm.
pub fn slider_crossbar(design: &Design, travel: f64) -> Rect {
    Body::new(design, travel).crossbar
}

/// The fingers that [`slider_outline`] has, from right to left, each from the crossbar to its
/// round tip beyond the pin, mm in the design's frame, at `travel` mm.
pub fn slider_fingers(design: &Design, travel: f64) -> Vec<Rect> {
    Body::new(design, travel).fingers(design, travel)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_body_reaches_from_the_tabs_tip_to_the_pins() {
        let design = Design::default();
        let extent = slider_outline(&design, 0.0).extent();
        // tip: keeper's edge 14 less 8 of engagement; top: pin at 82, its radius of 2 and 2 of wood
        assert!((extent.min.y - 6.0).abs() < 1e-6);
        assert!((extent.max.y - 86.0).abs() < 1e-6);
        assert!((extent.width() - 124.0).abs() < 1e-6);
    }

    #[test]
    fn it_moves_with_the_travel_and_keeps_its_shape() {
        let design = Design::default();
        let (shut, free) = (slider_outline(&design, 0.0), slider_outline(&design, 8.0));
        let moved = shut.placed(|point| point + Point::new(0.0, 8.0));
        let (moved, free) = (moved.flatten(0.01), free.flatten(0.01));
        assert!(moved.len() > 8 && moved.len() == free.len());
        for (a, b) in moved.iter().zip(free) {
            assert!(a.distance(b) < 1e-6);
        }
    }

    #[test]
    fn the_crossbar_clears_the_discs_when_the_slider_is_back() {
        let design = Design::default();
        let body = Body::new(&design, design.slider.travel);
        assert!(body.crossbar.max.y < 106.0 - 19.0);
    }

    #[test]
    fn a_slider_without_pins_or_size_still_closes() {
        let mut design = Design {
            dials: Vec::new(),
            ..Design::default()
        };
        assert!(slider_outline(&design, 0.0).closed);
        design.tab.width = -4.0;
        design.keeper.edge = 500.0;
        design.slider.travel = -9.0;
        assert!(slider_outline(&design, 3.0).closed);
    }
}
