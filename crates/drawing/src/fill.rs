//! Areas cut into trapezoids, for a window that can only fill convex shapes.

use latchwright_geometry::Point;

use crate::hatch::spans;
use crate::outline::Outline;

/// A convex piece of an area: lower left, lower right, upper right, upper left.
pub type Trapezoid = [Point; 4];

/// Most bands an area is cut into.
const MOST_BANDS: usize = 4000;

/// Closed outlines (even-odd, so that a part inside two of them is a hole) as trapezoids that touch
/// but do not overlap; arcs within `tolerance_mm`.
///
/// Outlines must not cross themselves or each other; where they do, the picture is off by a sliver.
pub fn trapezoids(outlines: &[Outline], tolerance_mm: f64) -> Vec<Trapezoid> {
    let polygons: Vec<Vec<Point>> = outlines
        .iter()
        .map(|line| line.flatten(tolerance_mm))
        .collect();
    let mut levels: Vec<f64> = polygons.iter().flatten().map(|point| point.y).collect();
    levels.sort_by(f64::total_cmp);
    levels.dedup_by(|a, b| (*a - *b).abs() < 1e-6);
    let mut pieces = Vec::new();
    let bands = levels.iter().zip(levels.iter().skip(1)).take(MOST_BANDS);
    for (&low, &high) in bands {
        // Just inside the band, where the order of the edges is certain.
        let inset = (high - low) * 1e-6;
        let below = spans(&polygons, low + inset);
        let above = spans(&polygons, high - inset);
        for (&(a, b), &(d, c)) in below.iter().zip(&above) {
            pieces.push([
                Point::new(a, low),
                Point::new(b, low),
                Point::new(c, high),
                Point::new(d, high),
            ]);
        }
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;
    use latchwright_geometry::Rect;

    fn area(pieces: &[Trapezoid]) -> f64 {
        pieces
            .iter()
            .map(|[a, b, c, d]| (b.x - a.x + c.x - d.x) / 2.0 * (d.y - a.y))
            .sum()
    }

    #[test]
    fn the_pieces_cover_the_area_without_its_hole() {
        let plate = Outline::rectangle(Rect::about(Point::default(), 60.0, 40.0));
        let hole = Outline::circle(Point::new(5.0, 3.0), 8.0);
        let pieces = trapezoids(&[plate, hole], 0.001);
        let wanted = 2400.0 - core::f64::consts::PI * 64.0;
        assert!((area(&pieces) - wanted).abs() < 0.05, "{}", area(&pieces));
    }

    #[test]
    fn nothing_has_no_pieces() {
        assert!(trapezoids(&[], 0.1).is_empty());
        assert!(trapezoids(&[Outline::from(Point::default())], 0.1).is_empty());
    }
}
