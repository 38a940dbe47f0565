//! Plain shapes of the polygon library that the benchmarks compare with.

use std::f64::consts::PI;

use geo::{LineString, MultiPolygon, Polygon};

/// A circle of 720 chords.
pub fn circle(middle: (f64, f64), radius: f64) -> MultiPolygon {
    ring((0..720).map(|number| {
        let (sin, cos) = (f64::from(number) * PI / 360.0).sin_cos();
        (middle.0 + radius * cos, middle.1 + radius * sin)
    }))
}

/// The polygon with these corners.
pub fn ring(corners: impl IntoIterator<Item = (f64, f64)>) -> MultiPolygon {
    let line: LineString = corners.into_iter().collect();
    MultiPolygon::new(vec![Polygon::new(line, Vec::new())])
}
