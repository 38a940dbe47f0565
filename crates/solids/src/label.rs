//! The labels of one dial as areas to be raised or sunk: outlines handed in, or our own.

use latchwright_drawing::picture;
use latchwright_geometry::Point;
use latchwright_model::{Dial, Labels};

use crate::fault::MeshFault;
use crate::numerals;
use crate::outline::{CHORD, Outline};
use crate::region::Region;

/// A label narrower than this many of its heights for want of room is left out.
const NARROWEST: f64 = 1.0 / 3.0;

/// How far a stroke's middle may be from a picture's line, mm: no nozzle shows less.
const COARSE: f64 = 0.03;

/// How labels are drawn; mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Type {
    /// Height of the labels.
    pub height: f64,
    /// Room for one along the ring.
    pub space: f64,
    /// Width of a stroke of our own.
    pub line: f64,
    /// The thinnest stroke that the nozzle lays down.
    pub thinnest: f64,
}

/// The labels of one dial, each about its middle, upright along +y.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Signs {
    /// One a mark; none where there is no outline or no room.
    pub signs: Vec<Option<Region>>,
    /// How many of those handed in have only strokes thinner than the nozzle lays down.
    pub thin: usize,
}

/// All labels of `dial`, those of `handed` first.
pub(crate) fn labels(dial: &Dial, handed: &[Region], size: Type) -> Result<Signs, MeshFault> {
    let mut all = Signs::default();
    let row = Row::of(handed, dial.positions);
    for mark in 0..dial.positions {
        let own = handed.get(mark as usize).filter(|sign| !sign.is_empty());
        let sign = match own.zip(row.as_ref()) {
            Some((sign, row)) => {
                let sign = row.fitted(sign, size)?;
                if sign.as_ref().is_some_and(|sign| is_thin(sign, size)) {
                    all.thin += 1;
                }
                sign
            }
            None => ours(dial, mark, size)?,
        };
        all.signs.push(sign);
    }
    Ok(all)
}

/// Whether a stroke of the nozzle's width fits nowhere into it.
fn is_thin(sign: &Region, size: Type) -> bool {
    let within = sign.inset(size.thinnest / 2.0);
    within.is_ok_and(|within| within.area() < 0.02 * sign.area())
}

/// What all labels of a dial share: how low the lowest and how high the highest reaches, in the
/// units they were handed in.
struct Row {
    low: f64,
    high: f64,
}

impl Row {
    fn of(handed: &[Region], positions: u32) -> Option<Self> {
        handed
            .iter()
            .take(positions as usize)
            .filter_map(Region::bounds)
            .map(|(low, high)| Self {
                low: low.y,
                high: high.y,
            })
            .reduce(|one, two| Self {
                low: one.low.min(two.low),
                high: one.high.max(two.high),
            })
            .filter(|row| row.high > row.low)
    }

    fn fitted(&self, sign: &Region, size: Type) -> Result<Option<Region>, MeshFault> {
        let Some((low, high)) = sign.bounds() else {
            return Ok(None);
        };
        let (wide, tall) = (high.x - low.x, self.high - self.low);
        let factor = (size.height / tall).min(size.space / wide.max(1e-9));
        if !factor.is_finite() || size.space < NARROWEST * size.height || high.y <= low.y {
            return Ok(None);
        }
        let middle = Point::new(
            f64::midpoint(low.x, high.x),
            f64::midpoint(self.low, self.high),
        );
        let placed = sign.each(|line| line.moved(-middle).scaled(factor).simplified(CHORD / 2.0));
        // none of its outlines overlap then: beside another label they count once
        let whole = placed.plus(&Region::default())?;
        Ok((!whole.is_empty()).then_some(whole))
    }
}

/// Our own picture or figures for a mark.
fn ours(dial: &Dial, mark: u32, size: Type) -> Result<Option<Region>, MeshFault> {
    let words = dial.label(mark);
    let drawn = if matches!(dial.labels, Labels::Pictures(_)) {
        stroked(&words, size)?
    } else {
        None
    };
    let sign = match drawn {
        Some(sign) => Some(sign),
        None => numerals::word(&words, size.height, size.line)?,
    };
    Ok(sign.and_then(|sign| alone(&sign, size)))
}

/// A small picture of strokes with round ends; `None` for a name that has none.
fn stroked(name: &str, size: Type) -> Result<Option<Region>, MeshFault> {
    let Some(lines) = picture(name, Point::default(), size.height - size.line) else {
        return Ok(None);
    };
    let strokes = lines.iter().flat_map(|line| {
        let mut points = Outline::new(line.flatten(CHORD))
            .simplified(COARSE)
            .points()
            .to_vec();
        if line.closed {
            points.extend(points.first().copied());
        }
        let pairs = points.iter().zip(points.iter().skip(1));
        pairs
            .map(|(from, to)| Outline::capsule(*from, *to, size.line / 2.0))
            .collect::<Vec<_>>()
    });
    Region::union(strokes).plus(&Region::default()).map(Some)
}

/// A region scaled and moved so that it is as high as it may be, and has its middle at the origin.
fn alone(sign: &Region, size: Type) -> Option<Region> {
    let (low, high) = sign.bounds()?;
    let across = high - low;
    if across.x <= 0.0 || across.y <= 0.0 || size.space < NARROWEST * size.height {
        return None;
    }
    let factor = (size.height / across.y).min(size.space / across.x);
    let middle = (low + high) * 0.5;
    Some(sign.each(|line| line.moved(-middle).scaled(factor).simplified(CHORD)))
}

#[cfg(test)]
mod tests {
    use latchwright_drawing::PICTURES;

    use super::*;

    const SIZE: Type = Type {
        height: 5.0,
        space: 8.0,
        line: 0.8,
        thinnest: 0.4,
    };

    fn block(x: f64, y: f64, wide: f64, tall: f64) -> Region {
        Outline::rectangle(Point::new(x, y), Point::new(x + wide, y + tall)).into()
    }

    #[test]
    fn labels_of_one_dial_keep_one_scale_and_one_line() {
        // on one line: one as high as a capital, one half as high, one that hangs below it
        let handed = [
            block(900.0, 0.0, 300.0, 800.0),
            block(0.0, 0.0, 300.0, 400.0),
            block(-70.0, -200.0, 300.0, 600.0),
        ];
        let dial = Dial {
            positions: 3,
            ..Dial::default()
        };
        let signs = labels(&dial, &handed, SIZE).unwrap().signs;
        let bounds: Vec<(Point, Point)> = signs
            .iter()
            .map(|sign| sign.as_ref().and_then(Region::bounds).unwrap())
            .collect();
        // 1000 units from the lowest to the highest are 5 mm
        for ((low, high), (from, to)) in
            bounds
                .iter()
                .zip([(0.0, 800.0), (0.0, 400.0), (-200.0, 400.0)])
        {
            assert!((low.y - (from - 300.0) * 0.005).abs() < 1e-9);
            assert!((high.y - (to - 300.0) * 0.005).abs() < 1e-9);
            assert!((high.x - 0.75).abs() < 1e-9 && (low.x + 0.75).abs() < 1e-9);
        }
    }

    #[test]
    fn a_label_too_wide_for_its_room_is_made_smaller() {
        let handed = [block(0.0, 0.0, 4000.0, 1000.0)];
        let signs = labels(&Dial::default(), &handed, SIZE).unwrap().signs;
        let (low, high) = signs[0].as_ref().and_then(Region::bounds).unwrap();
        assert!((high.x - low.x - 8.0).abs() < 1e-9);
        assert!((high.y - low.y - 2.0).abs() < 1e-9);
    }

    #[test]
    fn strokes_thinner_than_the_nozzle_are_counted() {
        let handed = [
            block(0.0, 0.0, 60.0, 1000.0),
            block(0.0, 0.0, 200.0, 1000.0),
        ];
        let thin = labels(&Dial::default(), &handed, SIZE).unwrap().thin;
        // 0.3 and 1.0 mm wide
        assert_eq!(thin, 1);
    }

    #[test]
    fn every_small_picture_can_be_raised() {
        for name in PICTURES {
            let dial = Dial {
                positions: 1,
                labels: Labels::Pictures(vec![name.to_owned()]),
                ..Dial::default()
            };
            let signs = labels(&dial, &[], SIZE).unwrap().signs;
            let sign = signs[0].as_ref().unwrap();
            let (low, high) = sign.bounds().unwrap();
            assert!((high.y - low.y).max(high.x - low.x) > 4.9, "{name}");
            assert!(sign.area() > 2.0, "{name}");
        }
    }

    #[test]
    fn nonsense_is_no_label() {
        let flat = Region::wound(vec![Outline::new(vec![Point::default(); 5])]);
        let signs = labels(&Dial::default(), &[flat, Region::default()], SIZE).unwrap();
        // a flat one has no outline; without one the figure of the mark stands there
        assert!(signs.signs.iter().skip(1).all(Option::is_some));
    }
}
