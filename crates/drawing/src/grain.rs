//! A few quiet grain lines, always the same for the same board.

use latchwright_geometry::{Point, trig};
use latchwright_model::Grain;

use crate::item::{Item, Layer};
use crate::outline::Outline;
use crate::style::Ink;
use latchwright_geometry::Rect;

/// About so far apart, mm.
const APART: f64 = 15.0;
/// From the ends of the lines to the edge of the board, mm.
const INSET: f64 = 4.0;
/// Chords in one line.
const CHORDS: u32 = 24;

/// Grain lines of a board with its fibres along `grain`.
pub(crate) fn grain_lines(board: Rect, grain: Grain) -> Item {
    let (along, across) = match grain {
        Grain::AlongX => (board.width(), board.height()),
        Grain::AlongY => (board.height(), board.width()),
    };
    let mut lines = Vec::new();
    if along > 2.0 * INSET && across > APART / 2.0 {
        let count = (across / APART).clamp(1.0, 40.0).floor();
        let pitch = across / (count + 0.5);
        let mut place = pitch * 0.7;
        let mut seed = 1_u32;
        while place < across - pitch * 0.3 {
            lines.push(line(along, place, pitch, seed).placed(|at| match grain {
                Grain::AlongX => board.min + at,
                // A mirror in the diagonal; the lines are straight chords, so nothing turns over.
                Grain::AlongY => board.min + Point::new(at.y, at.x),
            }));
            place += pitch * (0.8 + 0.4 * share(seed));
            seed += 1;
        }
    }
    Item::strokes(Layer::Wood, Ink::Grain, lines)
}

/// One wavy line from end to end of the board.
fn line(along: f64, place: f64, pitch: f64, seed: u32) -> Outline {
    let (from, to) = (
        INSET * (1.0 + share(seed * 7)),
        along - INSET * (1.0 + share(seed * 11)),
    );
    let waves = 2.0 + 4.0 * share(seed * 3);
    let height = pitch * 0.05 * (0.6 + share(seed * 5));
    let tilt = pitch * 0.12 * (share(seed * 13) - 0.5);
    let at = |chord: u32| {
        let t = f64::from(chord) / f64::from(CHORDS);
        let wave = trig::sin(waves * t + f64::from(seed)) * height;
        Point::new(from + (to - from) * t, place + wave + tilt * t)
    };
    Outline::polyline(&(0..=CHORDS).map(at).collect::<Vec<_>>())
}

/// A number from 0 to 1 that looks like chance and is the same every time.
fn share(seed: u32) -> f64 {
    let mixed = seed.wrapping_mul(0x9e37_79b1) ^ (seed.wrapping_mul(0x85eb_ca6b) >> 13);
    f64::from(mixed >> 8) / f64::from(1_u32 << 24)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::Shape;

    #[test]
    fn grain_runs_its_way_and_stays_on_the_board() {
        let board = Rect::new(Point::new(-110.0, 0.0), Point::new(110.0, 140.0));
        for grain in [Grain::AlongX, Grain::AlongY] {
            let item = grain_lines(board, grain);
            assert!(board.holds(item.shape.extent()));
            let Shape::Path { outlines } = &item.shape else {
                panic!("lines")
            };
            assert!((5..=20).contains(&outlines.len()));
            let extent = outlines[0].extent();
            assert_eq!(extent.width() > extent.height(), grain == Grain::AlongX);
        }
    }

    #[test]
    fn a_board_without_size_has_no_grain() {
        let none = Rect::about(Point::default(), 0.0, 0.0);
        assert!(
            matches!(grain_lines(none, Grain::AlongX).shape, Shape::Path { outlines } if outlines.is_empty())
        );
        let huge = Rect::about(Point::default(), 1e4, 1e4);
        assert!(
            matches!(grain_lines(huge, Grain::AlongY).shape, Shape::Path { outlines } if outlines.len() < 100)
        );
    }
}
