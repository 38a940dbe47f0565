//! A dial's centre, or the tab, put down on the plan.

use latchwright_geometry::Point;
use latchwright_model::Design;
use latchwright_proof::check::{near::Axis, near::Near};

use super::Look;
use super::lines::{Because, Line, edges, stops, struck};
use crate::bit::{Bit, Fit};

/// Where a dial's centre comes to stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placed {
    /// In the design's frame, mm.
    pub at: Point,
    /// The line across x that drew it; none: a mark of the ruler, or nothing where the hand is free.
    pub x: Option<Because>,
    /// The line across y that drew it.
    pub y: Option<Because>,
}

/// Where the tab comes to stand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TabPlaced {
    /// x of its middle, mm.
    pub at: f64,
    /// How far it reaches under the keeper, mm.
    pub engagement: f64,
    /// The line across x that drew it.
    pub x: Option<Because>,
    /// Whether the engagement is as it was.
    pub kept: bool,
}

/// The centre of dial `dial` for a hand that wants it at `wanted`; `None` where there is no such dial
/// or no place on the plate.
pub fn dial_at(design: &Design, dial: usize, wanted: Point, look: &Look) -> Option<Placed> {
    design.dials.get(dial)?;
    let wanted = Point::new(
        on_plate(design, Axis::X, wanted.x)?,
        on_plate(design, Axis::Y, wanted.y)?,
    );
    if look.free {
        let (x, y) = (look.snap(wanted.x, &[]).0, look.snap(wanted.y, &[]).0);
        return Some(Placed {
            at: Point::new(x, y),
            x: None,
            y: None,
        });
    }
    let bored = bored(design);
    let near = Near::of(&bored);
    let stops = |axis, aside| {
        let near = near.as_ref();
        near.map_or_else(Vec::new, |near| stops(&bored, near, dial, axis, aside))
    };
    let inside = |axis: Axis, lines: Vec<Line>| -> Vec<Line> {
        let (low, high) = edges(design, axis);
        let on = |line: &Line| (low..=high).contains(&line.at);
        lines.into_iter().filter(on).collect()
    };
    let hand = (wanted.x, wanted.y);
    let mut across_x = inside(Axis::X, struck(design, dial, Axis::X, hand));
    let mut across_y = inside(Axis::Y, struck(design, dial, Axis::Y, hand));
    let (y, _) = look.snap(wanted.y, &across_y);
    // how near a neighbour may be along x depends on how far aside it is along y
    across_x.extend(inside(Axis::X, stops(Axis::X, y)));
    let (x, x_because) = look.snap(wanted.x, &across_x);
    // a mark of the ruler may lie just past the plate's edge
    let x = on_plate(design, Axis::X, x)?;
    // what was found along x holds only as long as y stays
    let aside = matches!(x_because, Some(Because::Beside(..) | Because::Slot(_)));
    if !aside {
        across_y.extend(inside(Axis::Y, stops(Axis::Y, x)));
    }
    let (y, y_because) = look.snap(wanted.y, &across_y);
    let y = on_plate(design, Axis::Y, y)?;
    Some(Placed {
        at: Point::new(x, y),
        x: x_because,
        y: y_because,
    })
}

/// Where a hand wants the tab, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TabPlace {
    /// x of its middle.
    pub at: f64,
    /// Overlap of tab and keeper when shut.
    pub engagement: f64,
}

/// The tab for a hand that wants it at `wanted`, having taken it where it was in `before`; `None` where
/// that is no place on the plate.
///
/// Each of the two stays as it was while the hand moves little along it: one is rarely meant with the
/// other.
pub fn tab_at(
    design: &Design,
    before: TabPlace,
    wanted: TabPlace,
    look: &Look,
) -> Option<TabPlaced> {
    let at = on_plate(design, Axis::X, wanted.at)?;
    let line = |at, because| Line { at, because };
    let mut lines = vec![
        line(before.at, Because::AsItWas),
        line(0.0, Because::Middle),
        line(design.slider.guide_at.0, Because::Guide),
        line(design.slider.pull_at, Because::FingerKnob),
    ];
    for (index, dial) in design.dials.iter().enumerate() {
        lines.push(line(dial.centre.0, Because::InLine(index)));
    }
    let (at, x) = look.snap(at, &lines);
    let was = [line(before.engagement, Because::AsItWas)];
    let deepest = design.keeper.depth;
    let (engagement, kept) = match look.snap(wanted.engagement, &was) {
        (as_it_was, Some(_)) => (as_it_was, true),
        (moved, None) if deepest > 0.0 => (moved.clamp(0.0, deepest), false),
        (moved, None) => (moved.max(0.0), false),
    };
    (at.is_finite() && engagement.is_finite()).then_some(TabPlaced {
        at,
        engagement,
        x,
        kept,
    })
}

/// The design with every bore as wide as the nearest bit at hand makes it.
fn bored(design: &Design) -> Design {
    let mut bored = design.clone();
    for dial in &mut bored.dials {
        let bit = Bit::nearest(&design.bench, dial.bore.diameter, Fit::Running);
        dial.bore.diameter = bit.bored();
    }
    bored
}

/// A place along `axis` brought onto the plate; `None` where there is no plate or no number.
fn on_plate(design: &Design, axis: Axis, at: f64) -> Option<f64> {
    let (low, high) = edges(design, axis);
    (low <= high && at.is_finite() && low.is_finite() && high.is_finite())
        .then(|| at.clamp(low, high))
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_model::Units;
    use latchwright_proof::CheckKind;
    use latchwright_proof::check::near::Keeps;
    use latchwright_proof::{CheckVerdict, prove};

    fn look(design: &Design) -> Look {
        Look::at_scale(design, 4.0, 6.0)
    }

    /// Dial 3 of three, put down.
    fn third(design: &Design, x: f64, y: f64) -> Placed {
        dial_at(design, 2, Point::new(x, y), &look(design)).unwrap()
    }

    #[test]
    fn a_centre_falls_in_line_with_its_neighbours_and_on_the_rulers_marks() {
        let design = Design::default();
        let placed = third(&design, 62.3, 106.4);
        assert_eq!(placed.at, Point::new(62.0, 106.0));
        assert_eq!((placed.x, placed.y), (None, Some(Because::InLine(1))));
        let placed = third(&design, 62.3, 82.4);
        assert_eq!((placed.at, placed.y), (Point::new(62.0, 82.0), None));
    }

    #[test]
    fn in_inches_the_marks_are_sixteenths() {
        let design = Design {
            units: Units::Inch,
            ..Design::default()
        };
        let placed = third(&design, 62.3, 85.0);
        assert_eq!(placed.at.x, 39.0 * 25.4 / 16.0);
        assert_eq!(placed.at.y, 54.0 * 25.4 / 16.0);
    }

    #[test]
    fn equal_distances_opposite_places_and_middles_draw() {
        let mut design = Design::default();
        design.dials[0].centre = (-57.3, 95.0);
        design.dials[1].centre = (-1.9, 95.0);
        // 2·(−1.9) + 57.3 = 53.5
        let placed = third(&design, 54.4, 80.0);
        assert_eq!(placed.x, Some(Because::Evenly { from: 1, as_is: 0 }));
        assert!((placed.at.x - 53.5).abs() < 1e-9);
        let placed = third(&design, 57.9, 80.0);
        assert_eq!((placed.at.x, placed.x), (57.3, Some(Because::Opposite(0))));
        let placed = third(&design, -29.0, 69.3);
        assert_eq!(placed.x, Some(Because::Midway(0, 1)));
        assert_eq!((placed.at.y, placed.y), (70.0, Some(Because::Middle)));
    }

    #[test]
    fn a_centre_stops_where_fingers_still_get_between_the_knobs() {
        let mut design = Design::default();
        design.dials[1].centre = (0.5, 95.0);
        // knobs of 36 mm and 15 mm for fingers
        let placed = third(&design, 50.6, 95.0);
        assert_eq!(placed.x, Some(Because::Beside(1, Keeps::Fingers)));
        assert_eq!(placed.at.x, 51.5);
        let mut moved = design.clone();
        moved.dials[2].centre = (placed.at.x, placed.at.y);
        let proof = prove(&moved);
        let fails = |kind: CheckKind| {
            let mut checks = proof.checks.iter().filter(|check| check.kind == kind);
            checks.any(|check| check.verdict != CheckVerdict::Passes)
        };
        assert!(!fails(CheckKind::KnobToKnob) && !fails(CheckKind::DiscToDisc));
    }

    #[test]
    fn wood_stays_beside_the_hole_of_the_makers_own_bit() {
        let mut design = Design::default();
        let edge = |design: &Design| third(design, 97.0, 80.0);
        let with_its_own = edge(&design);
        assert_eq!(with_its_own.x, Some(Because::Edge(14.3)));
        design.bench.bits.retain(|bit| *bit != 14.3);
        let with_the_next = edge(&design);
        assert_eq!(with_the_next.x, Some(Because::Edge(15.0)));
        // 15 mm instead of 14.3 mm: by half of that further in
        let further = with_its_own.at.x - with_the_next.at.x;
        assert!((0.34..0.36).contains(&further), "{further}");
    }

    #[test]
    fn a_mirrored_lid_is_set_out_as_its_mirror_image() {
        let mut design = Design::default();
        design.dials[0].centre = (-57.3, 91.0);
        design.dials[1].centre = (3.2, 97.0);
        let mirrored = design.mirrored();
        let mut drawn = 0;
        for step in 0..220 {
            let (x, y) = (f64::from(step) - 110.3, 60.0 + f64::from(step % 37));
            let (one, other) = (third(&design, x, y), third(&mirrored, -x, y));
            let off = one.at.distance(Point::new(-other.at.x, other.at.y));
            assert!(off < 1e-9, "{x}, {y}: {one:?} {other:?}");
            drawn += usize::from(one.x.is_some() || one.y.is_some());
        }
        assert!(
            drawn > 50,
            "lines draw often enough to be looked at: {drawn}"
        );
    }

    #[test]
    fn a_hand_off_the_plate_leaves_the_centre_on_it() {
        let design = Design::default();
        let placed = third(&design, 900.0, -40.0);
        assert_eq!(placed.at, Point::new(110.0, 0.0));
        let free = Look {
            free: true,
            ..look(&design)
        };
        let wanted = Point::new(61.2345, 95.2);
        let placed = dial_at(&design, 2, wanted, &free).unwrap();
        assert_eq!((placed.at, placed.y), (Point::new(61.23, 95.2), None));
    }

    #[test]
    fn nonsense_has_no_place() {
        let mut design = Design::default();
        let at = |design: &Design, x| dial_at(design, 2, Point::new(x, 95.0), &look(design));
        assert_eq!(at(&design, f64::NAN), None);
        assert_eq!(dial_at(&design, 9, Point::default(), &look(&design)), None);
        design.dials[0].centre = (f64::NAN, f64::INFINITY);
        design.dials[1].bore.diameter = f64::NAN;
        design.bench.bits = vec![f64::INFINITY];
        assert!(at(&design, 20.0).is_some_and(|placed| placed.at.x.is_finite()));
        for width in [f64::NAN, -5.0, f64::INFINITY] {
            design.plate.width = width;
            assert_eq!(at(&design, 20.0), None);
        }
    }

    #[test]
    fn the_tab_keeps_what_the_hand_does_not_mean() {
        let design = Design::default();
        let tab = |at, engagement| TabPlace { at, engagement };
        let put = |at, engagement| {
            tab_at(&design, tab(0.0, 6.3), tab(at, engagement), &look(&design)).unwrap()
        };
        let aside = put(20.3, 5.2);
        assert_eq!((aside.at, aside.engagement, aside.kept), (20.0, 6.3, true));
        let in_line = put(54.1, 5.2);
        assert_eq!(in_line.x, Some(Because::InLine(2)));
        let out = put(1.1, 4.1);
        assert_eq!((out.at, out.x), (0.0, Some(Because::AsItWas)));
        assert_eq!((out.engagement, out.kept), (4.0, false));
        assert_eq!(put(0.0, -9.0).engagement, 0.0);
        assert_eq!(put(0.0, 900.0).engagement, design.keeper.depth);
        let nonsense = tab_at(&design, tab(0.0, 6.0), tab(f64::NAN, 3.0), &look(&design));
        assert_eq!(nonsense, None);
    }
}
