//! Intervals of z over one zone of the plane, added and cut.

use crate::grid;
use crate::slope::Slope;

/// One end of an interval of z.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum End {
    /// At this height, in steps of the grid.
    Level(i64),
    /// On the slope of this number.
    On(usize),
}

pub(crate) type Pile = Vec<(End, End)>;

/// Whether one of two ends is nowhere below the other.
pub(crate) fn tell(one: End, other: End, slopes: &[Slope]) -> bool {
    let span = |end: End| match end {
        End::Level(level) => {
            let height = grid::millimetres(level);
            (height, height)
        }
        End::On(slope) => slopes.get(slope).map_or((0.0, 0.0), Slope::span),
    };
    let ((low, high), (other_low, other_high)) = (span(one), span(other));
    let slack = 1.0 / grid::STEPS;
    one == other || high <= other_low + slack || other_high <= low + slack
}

/// Where an end lies, for telling which of two is higher: the middle of its slope.
pub(crate) fn height(end: End, slopes: &[Slope]) -> f64 {
    match end {
        End::Level(level) => grid::millimetres(level),
        End::On(slope) => slopes.get(slope).map_or(0.0, Slope::middle),
    }
}

/// Adds an interval, joined with those it overlaps or touches.
pub(crate) fn join(pile: &mut Pile, low: End, high: End, slopes: &[Slope]) {
    let at = |end| height(end, slopes);
    if at(low) >= at(high) {
        return;
    }
    let (mut low, mut high) = (low, high);
    pile.retain(|(other_low, other_high)| {
        if at(*other_high) < at(low) || at(*other_low) > at(high) {
            return true;
        }
        if at(*other_low) < at(low) {
            low = *other_low;
        }
        if at(*other_high) > at(high) {
            high = *other_high;
        }
        false
    });
    pile.push((low, high));
    pile.sort_by(|one, two| at(one.0).total_cmp(&at(two.0)));
}

/// What is left of a pile when an interval is cut out.
pub(crate) fn parted(pile: &Pile, low: End, high: End, slopes: &[Slope]) -> Pile {
    let at = |end| height(end, slopes);
    let mut left = Pile::new();
    for (bottom, top) in pile {
        if at(high) <= at(*bottom) || at(low) >= at(*top) || at(low) >= at(high) {
            left.push((*bottom, *top));
            continue;
        }
        if at(low) > at(*bottom) {
            left.push((*bottom, low));
        }
        if at(high) < at(*top) {
            left.push((high, *top));
        }
    }
    left
}
