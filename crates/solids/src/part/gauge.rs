//! The fit gauge: holes, a square and a width to measure, drawn without any allowance.

use core::f64::consts::SQRT_2;

use latchwright_geometry::Point;

use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::PartFault;
use crate::feature::Feature;
use crate::fit::{self, Size};
use crate::outline::Outline;
use crate::region::Region;
use crate::warning::Warning;

/// What the gauge carries, mm; measured sizes go into [`crate::fit::Readings`].
#[derive(Debug, Clone, PartialEq)]
pub struct Gauge {
    /// Diameters of the holes as drawn.
    pub holes: Vec<f64>,
    /// Side of the square hole as drawn.
    pub square: f64,
    /// Width of the bar as drawn, at the bed and above it.
    pub width: f64,
    /// Thickness as drawn.
    pub thickness: f64,
}

impl Default for Gauge {
    fn default() -> Self {
        Self {
            holes: vec![2.5, 5.0, 10.0, 20.0],
            square: 10.0,
            width: 30.0,
            thickness: 6.0,
        }
    }
}

/// Ground between two holes, mm.
const GROUND: f64 = 4.0;

/// The gauge. Its bed edges are sharp: how far they spread is one of the readings.
pub(crate) fn gauge(shop: &Shop<'_>) -> Result<Part, PartFault> {
    let gauge = Gauge::default();
    let mut draft = Draft::new(PartId::whole(Kind::Gauge));
    let spans: f64 = gauge.holes.iter().sum::<f64>() + gauge.square;
    let long = spans + GROUND * (gauge.holes.len() as f64 + 2.0);
    let low = Point::new(0.0, -gauge.width / 2.0);
    let bar = Outline::rectangle(low, Point::new(long, gauge.width / 2.0));
    let mut x = GROUND;
    let mut holes = Vec::new();
    for diameter in &gauge.holes {
        let radius = diameter / 2.0;
        holes.push(Outline::circle(Point::new(x + radius, 0.0), radius));
        x += diameter + GROUND;
    }
    let square = Point::new(x + gauge.square / 2.0, 0.0);
    holes.push(Outline::block(square, gauge.square, gauge.square));
    draft.body.add(Prism::new(bar, 0.0, gauge.thickness));
    draft
        .body
        .cut(Prism::new(Region::union(holes), -THROUGH, THROUGH));
    sizes(shop, &gauge, &mut draft);
    draft.warn(Warning::UseOfGauge { width: gauge.width });
    draft.finish(shop.printer())
}

/// What is drawn, and what would be measured if the printer's profile were right already.
fn sizes(shop: &Shop<'_>, gauge: &Gauge, draft: &mut Draft) {
    let printer = shop.printer();
    let size = |what: Feature, kind: fit::Kind, drawn: f64, grows: f64| Size {
        what,
        kind,
        nominal: drawn,
        drawn,
        expected: drawn + grows,
    };
    for hole in &gauge.holes {
        let grows = -fit::under(&printer.holes, *hole);
        draft.sizes.push(size(
            Feature::GaugeHole(*hole),
            fit::Kind::Hole,
            *hole,
            grows,
        ));
    }
    let width = |what: Feature, grows: f64| size(what, fit::Kind::Outside, gauge.width, grows);
    draft.sizes.extend([
        width(Feature::BarWidth, printer.outside),
        width(Feature::BarWidthAtBed, printer.outside + 2.0 * printer.foot),
    ]);
    let diagonal = gauge.square * SQRT_2;
    let corners = 2.0 * (SQRT_2 - 1.0) * printer.corner;
    let grows = -fit::under(&printer.holes, gauge.square) * SQRT_2 - corners;
    draft.sizes.push(size(
        Feature::SquareDiagonal,
        fit::Kind::Hole,
        diagonal,
        grows,
    ));
}
