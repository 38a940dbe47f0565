//! The grid on which all outlines are put, so that crossings are exact and the same everywhere.
//!
//! A step is 0.1 µm: far below anything a printer can do, far above what a 32-bit float loses on a
//! bed. Points nearer than [`MERGE`] steps are one point.

use latchwright_geometry::Point;

use crate::fault::MeshFault;

/// Steps in a millimetre.
pub(crate) const STEPS: f64 = 10_000.0;

/// Points nearer than this many steps (1 µm) are one point.
pub(crate) const MERGE: i64 = 10;

/// A line that passes a point nearer than this many steps goes through it. It is half of [`MERGE`]
/// so that cutting comes to an end: in a triangle whose sides are all at least [`MERGE`] long, only
/// the longest side can then pass its opposite corner.
pub(crate) const PASS: f64 = 5.0;

/// The furthest coordinate that is taken, mm.
pub(crate) const FURTHEST_MM: f64 = 10_000.0;

/// A point of the grid, in steps.
pub(crate) type Node = [i64; 2];

/// A length in steps; `None` for what is not a number or too far out.
pub(crate) fn steps(length_mm: f64) -> Option<i64> {
    #[expect(clippy::cast_possible_truncation, reason = "the range is checked")]
    (length_mm.abs() <= FURTHEST_MM).then(|| (length_mm * STEPS).round() as i64)
}

/// A length in steps, as [`steps`], or the fault that says why not.
pub(crate) fn checked(length_mm: f64) -> Result<i64, MeshFault> {
    steps(length_mm).ok_or(MeshFault::TooLarge {
        most_mm: FURTHEST_MM,
    })
}

/// Steps back to millimetres.
pub(crate) fn millimetres(steps: i64) -> f64 {
    steps as f64 / STEPS
}

/// A node as a point in mm.
pub(crate) fn point(node: Node) -> Point {
    Point::new(millimetres(node[0]), millimetres(node[1]))
}

/// Twice the signed area of the triangle a, b, c; above 0 if it runs counter-clockwise.
pub(crate) fn turn(a: Node, b: Node, c: Node) -> i128 {
    let (abx, aby) = (i128::from(b[0] - a[0]), i128::from(b[1] - a[1]));
    let (acx, acy) = (i128::from(c[0] - a[0]), i128::from(c[1] - a[1]));
    abx * acy - aby * acx
}
