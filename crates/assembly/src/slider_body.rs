//! Where the slider's wood is: the bar across, the neck down to the tab, and a finger to each pin.
//!
//! Bar and neck lie in the same layer as the discs, and the bar stays clear of every disc over the whole travel, whatever
//! is off. The fingers are thinner: they run below the discs, with wood on both sides of their pins, and only the pins
//! stand up into the discs' layer. What is proven, drawn, cut and printed is this body.

use latchwright_geometry::{Point, Rect, trig};

use crate::bounds::{SliderBounds, Terms, rim};
use crate::season::Drift;
use latchwright_model::{Design, Dial, LidKind, Pin};

/// Least clear distance from the bar to the discs when the slider is back and nothing is off, mm.
///
/// # Source
/// Common practice, no source.
pub const CLEARANCE: f64 = 1.0;
/// What is kept clear of that when everything is off, mm.
///
/// # Source
/// Common practice, no source.
const CLEAR_AT_WORST: f64 = 0.2;
/// In steps that a maker measures, mm.
const STEP: f64 = 0.5;
/// A latch that is further off than this is none, mm.
const MOST_CLEARANCE: f64 = 50.0;
/// Depth of the bar along y, mm.
pub const BAR: f64 = 16.0;
/// Wood beside the outermost pins, mm.
pub const SHOULDER: f64 = 7.0;
/// Radius of the corners, those between neck and bar too, mm.
pub const CORNER: f64 = 3.0;
/// Clear length between the keeper's edge and the end of its rabbet in the plate, mm.
///
/// # Source
/// Common practice, no source.
pub const RABBET_AIR: f64 = 1.5;
/// Width of each of the two strips that lead the neck, mm.
///
/// # Source
/// Common practice, no source.
pub const STRIP: f64 = 10.0;

/// Thickness of the bridges across the strips, which carry the slider, mm.
///
/// # Source
/// Common practice, no source.
pub const BRIDGE: f64 = 3.0;

/// Wood beside a pin in its finger, mm, at least; and never less than the pin's radius.
///
/// # Source
/// Common practice, no source: a hole keeps its own radius of wood beside it.
pub const BESIDE_PIN: f64 = 2.0;
/// What must lie between two fingers so that both can be sawn, mm: common practice, no source.
pub const FINGERS_APART: f64 = 2.5;

/// A finger of the slider: from the bar to a little beyond its pin, when the slider is forward.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Finger {
    /// Which dial's, from 0.
    pub dial: usize,
    /// From the bar's upper edge to its tip, which is round about the pin, mm.
    pub area: Rect,
    /// Its upper face below the plate's underside, mm: so far its pin stands free.
    pub top: f64,
    /// Its lower face below the plate's underside, mm: level with the slider's.
    pub bottom: f64,
}

impl Finger {
    /// Its thickness, mm; nought where the pin stands free over all of the slider.
    pub fn thickness(&self) -> f64 {
        (self.bottom - self.top).max(0.0)
    }
}

/// How wide a finger is that holds this pin, mm.
pub fn finger_width(pin: &Pin) -> f64 {
    pin.diameter + 2.0 * BESIDE_PIN.max(pin.diameter / 2.0)
}

/// How far below the plate's underside the upper face of this dial's finger lies, mm.
pub fn finger_top(design: &Design, dial: &Dial) -> f64 {
    design.slider.below + dial.pin.free.max(0.0)
}

/// Where the parts of the body are when the slider is forward; mm in the design's frame.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SliderBody {
    /// The bar's lower left corner.
    pub bar_min: Point,
    /// The bar's upper right corner.
    pub bar_max: Point,
    /// The neck's left and right side; it is as wide as the tab.
    pub neck: (f64, f64),
    /// y of the tab's tip.
    pub tip: f64,
    /// y of the bar's lower edge if it has its whole depth.
    pub wanted: f64,
}

impl SliderBody {
    /// The body of `design`'s slider.
    ///
    /// Where there is not enough room for the bar it is thinner, or meets the discs:
    /// [`Self::bar_short`] says by how much.
    pub fn of(design: &Design) -> Self {
        let none = Drift::none();
        let known = Drift::of(design);
        Self::over(design, known.as_ref().unwrap_or(&none))
    }

    /// The same where the year is known.
    pub fn over(design: &Design, drift: &Drift) -> Self {
        let slider = SliderBounds::of(design, drift, Terms::All);
        Self::led(design, drift, &slider)
    }

    /// The same where what the guide leaves the slider is known too.
    pub fn led(design: &Design, drift: &Drift, slider: &SliderBounds) -> Self {
        let clear = clearance(design, drift, slider);
        let half = (design.tab.width / 2.0).max(0.5);
        let tip = design.keeper.edge - design.tab.engagement;
        let wanted = bar_top(design, clear);
        let top = wanted.max(tip + 2.0 * CORNER);
        let bottom = (top - BAR).max(tip + CORNER);
        let at = design.tab.at;
        let (left, right) = sides(design);
        Self {
            bar_min: Point::new(left, bottom),
            bar_max: Point::new(right, top),
            neck: (at - half, at + half),
            tip,
            wanted: wanted - BAR,
        }
    }

    /// How much the bar lacks of its depth between the discs and the front of the box, or the tab's
    /// corner, mm; below 0, so much is to spare.
    pub fn bar_short(&self, design: &Design) -> f64 {
        let lowest = front_inside(design).max(self.tip + CORNER);
        lowest - self.wanted
    }

    /// The fingers, from right to left; none where a finger would run into its neighbour, or where the pin
    /// stands on the bar itself.
    pub fn fingers(&self, design: &Design) -> Vec<Finger> {
        let top = self.bar_max.y;
        let finger = |(index, dial): (usize, &Dial)| {
            let (x, y) = dial.pin_at();
            let half = finger_width(&dial.pin) / 2.0;
            let area = Rect::new(Point::new(x - half, top), Point::new(x + half, y + half));
            (half > 0.1 && y > top + 0.1).then(|| Finger {
                dial: index,
                area,
                top: finger_top(design, dial),
                bottom: design.slider.below + design.slider.thickness,
            })
        };
        let mut all: Vec<Finger> = design.dials.iter().enumerate().filter_map(finger).collect();
        all.sort_by(|a, b| b.area.min.x.total_cmp(&a.area.min.x));
        let mut kept: Vec<Finger> = Vec::new();
        for finger in all {
            let clear = |last: &Finger| finger.area.max.x + 2.0 < last.area.min.x;
            if kept.last().is_none_or(clear) {
                kept.push(finger);
            }
        }
        kept
    }

    /// All that bar, neck and fingers take up together, forward, mm.
    pub fn extent(&self, design: &Design) -> Rect {
        let bar = Rect::new(self.bar_min, self.bar_max);
        let neck = Rect::new(
            Point::new(self.neck.0, self.tip),
            Point::new(self.neck.1, self.bar_max.y),
        );
        self.fingers(design)
            .iter()
            .fold(bar.union(neck), |all, finger| all.union(finger.area))
    }

    /// Least wood beside a round hole of this radius at `at`, mm; below 0, it is not in the wood.
    ///
    /// Bar and neck are looked at one by one, so that a hole where they join may be said to have less.
    pub fn wood_around(&self, at: Point, radius: f64) -> f64 {
        let within = |(x0, y0): (f64, f64), (x1, y1): (f64, f64)| {
            (at.x - x0).min(x1 - at.x).min(at.y - y0).min(y1 - at.y)
        };
        let (low, high) = (self.bar_min, self.bar_max);
        let bar = within((low.x, low.y), (high.x, high.y));
        // the neck runs on through the bar
        let neck = within((self.neck.0, self.tip), (self.neck.1, high.y));
        bar.max(neck) - radius
    }
}

/// y of the front and back ends of the strips that lead the neck, mm, when the slider is forward.
///
/// The guide's points are on the slider and go with it; the strips are on the plate, and are longer
/// by the travel.
pub fn strips(design: &Design) -> (f64, f64) {
    let slider = &design.slider;
    let half = slider.guide_length / 2.0;
    let (front, back) = (slider.guide_at.1 - half, slider.guide_at.1 + half);
    (front, back + slider.travel.max(0.0))
}

/// The rabbet over the keeper in the plate's underside, mm in the design's frame, never beyond the plate; `None` where
/// nothing of it lies on the plate.
///
/// At the sides it has air for the keeper's place besides, since the keeper goes where the tab wants it. Its depth is
/// the plate's `rabbet`.
pub fn rabbet(design: &Design) -> Option<Rect> {
    let (keeper, plate) = (&design.keeper, &design.plate);
    let air = RABBET_AIR + design.workmanship.keeper_place.max(0.0);
    let half = keeper.width / 2.0 + air;
    let within = |x: f64| x.clamp(-plate.width / 2.0, plate.width / 2.0);
    let known = [
        keeper.width,
        keeper.depth,
        keeper.edge,
        design.tab.at,
        plate.width,
        plate.depth,
    ];
    if plate.width <= 0.0 || known.iter().any(|size| !size.is_finite()) {
        return None;
    }
    let (left, right) = (within(design.tab.at - half), within(design.tab.at + half));
    let front = (keeper.edge - keeper.depth - RABBET_AIR).max(0.0);
    let back = (keeper.edge + RABBET_AIR).min(plate.depth);
    let area = Rect::new(Point::new(left, front), Point::new(right, back));
    (right > left && back > front).then_some(area)
}

/// y of the inner face of the front side, mm.
pub fn front_inside(design: &Design) -> f64 {
    let over = design.plate.depth - design.inside.depth - 2.0 * design.body.thickness;
    let face = match design.body.lid {
        LidKind::Plate => over,
        LidKind::Band { .. } => over / 2.0,
    };
    face + design.body.thickness
}

/// x of the bar's ends, mm.
fn sides(design: &Design) -> (f64, f64) {
    let (at, half) = (design.tab.at, (design.tab.width / 2.0).max(0.5));
    let pins = || design.dials.iter().map(|dial| dial.pin_at().0);
    let left = pins().fold(f64::INFINITY, f64::min) - SHOULDER;
    let right = pins().fold(f64::NEG_INFINITY, f64::max) + SHOULDER;
    (left.min(at - half), right.max(at + half))
}

/// y of the bar's upper edge with this clear distance to the discs at full travel, mm.
fn bar_top(design: &Design, clearance: f64) -> f64 {
    let rim = |dial: &Dial| dial.centre.1 - dial.disc.radius.max(0.0);
    let lowest = design.dials.iter().map(rim).reduce(f64::min);
    let lowest = lowest.unwrap_or(design.slider.guide_at.1 + BAR);
    lowest - design.slider.travel.max(0.0) - clearance
}

/// Clear distance from the bar to the discs at full travel when nothing is off, mm: enough for all
/// that may be off at once.
fn clearance(design: &Design, drift: &Drift, slider: &SliderBounds) -> f64 {
    let edge = bar_top(design, CLEARANCE);
    let mut most: f64 = 0.0;
    // the season takes the same of all dials of a row
    let mut row = None;
    for dial in &design.dials {
        let y = dial.centre.1;
        let shrink = match row {
            Some((of, shrink)) if of == y => shrink,
            _ => shrink(design, y, edge, drift),
        };
        row = Some((y, shrink));
        most = most.max(shrink + taken(design, dial, slider, edge));
    }
    let taken = most + CLEAR_AT_WORST;
    let stepped = (taken / STEP - 1e-9).ceil() * STEP;
    // a design of nonsense gets a body all the same
    if stepped.is_finite() {
        stepped.clamp(CLEARANCE, MOST_CLEARANCE)
    } else {
        CLEARANCE
    }
}

/// What the season can take along y between a disc at `y` and the bar's edge, mm.
fn shrink(design: &Design, y: f64, edge: f64, drift: &Drift) -> f64 {
    let guide_y = design.slider.guide_at.1;
    (-drift.y.apart(y - guide_y, edge - guide_y).0).max(0.0)
}

/// What places, plays, prints and coats can take between the bar, whose edge is at `edge`, and this
/// disc, mm.
fn taken(design: &Design, dial: &Dial, slider: &SliderBounds, edge: f64) -> f64 {
    let work = &design.workmanship;
    let (guide_x, guide_y) = design.slider.guide_at;
    let along = ((dial.centre.1 - guide_y).abs()).max((edge - guide_y).abs()) + 1.0;
    // a slanting edge comes nearest to the rim a little beside the disc's middle
    let across = (dial.centre.0 - guide_x).abs() + dial.disc.radius.max(0.0) * slider.yaw;
    let turned = slider.lift(across * slider.swell) + along * slider.swell * slider.shorten;
    let swollen = (rim(design, dial).hi - dial.disc.radius).max(0.0);
    // the bar's edge is marked out as the pins are
    let places = (work.bore_place + work.pin_place) * slider.swell;
    turned + places + dial.bore.shaft_play + swollen
}

/// How far towards the hinge, mm, the tab's lower corner comes forward again as the lid swings up
/// from `tip`: it turns about the hinge's pin, which lies level with the plate's underside, and hangs
/// below it.
pub fn swings_forward(design: &Design, tip: f64) -> f64 {
    let (slider, work) = (&design.slider, &design.workmanship);
    let hangs = slider.below + slider.thickness + 2.0 * (work.thickness + 2.0 * work.film_spread);
    let arm = (design.plate.depth - tip).max(0.0);
    trig::hypot(arm, hangs) - arm
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::thin_latch::thin;

    fn clearance(design: &Design) -> f64 {
        let still = Drift::none();
        super::clearance(
            design,
            &still,
            &SliderBounds::of(design, &still, Terms::All),
        )
    }

    #[test]
    fn the_bar_of_the_first_design_keeps_clear_by_all_that_may_be_off() {
        let mut design = thin();
        design.season = latchwright_model::Season::still(design.season.built);
        // a guide of 60 mm with 0.25: lift of 60 mm by 0.5/60: 0.5; places 0.5, shaft 0.15, half a print
        // and a coat's spread 0.15, and 0.2 beside: 1.5 at the next half
        (design.slider.guide_length, design.slider.guide_play) = (60.0, 0.25);
        design.slider.guide_at = (0.0, 45.0);
        assert_eq!(clearance(&design), 1.5);
        let body = SliderBody::of(&design);
        assert!((body.bar_max.y - (95.0 - 18.0 - 8.0 - 1.5)).abs() < 1e-9);
        assert!(body.bar_short(&design) < -30.0);
    }

    #[test]
    fn more_play_in_the_guide_asks_for_more_room() {
        let mut design = thin();
        let usual = clearance(&design);
        design.slider.guide_play = 0.6;
        assert!(clearance(&design) >= usual + 0.5);
        design.slider.guide_play = f64::NAN;
        assert!(clearance(&design).is_finite());
    }

    #[test]
    fn a_corner_that_hangs_8_5_on_an_arm_of_130_swings_0_28_forward() {
        let mut design = thin();
        design.workmanship.thickness = 0.0;
        design.workmanship.film_spread = 0.0;
        assert!((swings_forward(&design, 10.0) - 0.278).abs() < 0.001);
    }

    #[test]
    fn a_hole_has_wood_around_it_in_neck_and_bar_and_nowhere_else() {
        let body = SliderBody::of(&thin());
        assert!((body.wood_around(Point::new(0.0, 45.0), 4.0) - 16.0).abs() < 1e-9);
        assert!(body.wood_around(Point::new(30.0, 45.0), 4.0) < -9.0);
        let in_bar = f64::midpoint(body.bar_min.y, body.bar_max.y);
        assert!((body.wood_around(Point::new(30.0, in_bar), 4.0) - 4.0).abs() < 1e-9);
        assert!(body.wood_around(Point::new(0.0, 72.0), 4.0) < 0.0);
    }
}
