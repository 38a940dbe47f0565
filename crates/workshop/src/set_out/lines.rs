//! The lines of a design that draw a place on the plan, each with its reason.

use latchwright_model::Design;
use latchwright_proof::check::{near::Axis, near::Keeps, near::Near};

/// Centres nearer than this to a line lie on it, mm.
const SAME: f64 = 1e-6;

/// What a line stands for. Dials count from 0.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Because {
    /// The middle of the lid.
    Middle,
    /// Through the centre of this dial.
    InLine(usize),
    /// As far from the middle of the lid as this dial, on the other side.
    Opposite(usize),
    /// Half-way between these two.
    Midway(usize, usize),
    /// As far from `from` as `from` is from `as_is`, beyond it.
    Evenly {
        /// The neighbour.
        from: usize,
        /// The dial on the neighbour's other side.
        as_is: usize,
    },
    /// As near to this dial as a check lets it.
    Beside(usize, Keeps),
    /// As near to an edge of the plate as wood has to stay beside the hole of this bit, mm.
    Edge(f64),
    /// As near to the finger knob's slot as wood has to stay beside the hole of this bit, mm.
    Slot(f64),
    /// The middle of the slider's guide.
    Guide,
    /// The finger knob.
    FingerKnob,
    /// Where it was when the hand took it.
    AsItWas,
}

/// A line across one axis that draws a place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Where it crosses the axis, mm.
    pub at: f64,
    /// What it stands for.
    pub because: Because,
}

/// What a place along `axis` is.
pub(super) fn along(axis: Axis, (x, y): (f64, f64)) -> f64 {
    match axis {
        Axis::X => x,
        Axis::Y => y,
    }
}

/// The other axis.
fn across(axis: Axis) -> Axis {
    match axis {
        Axis::X => Axis::Y,
        Axis::Y => Axis::X,
    }
}

/// The lines across `axis` for dial `dial` in a hand at `wanted`, but for those that the checks draw:
/// the plainest first.
pub(super) fn struck(design: &Design, dial: usize, axis: Axis, wanted: (f64, f64)) -> Vec<Line> {
    let middle = match axis {
        Axis::X => 0.0,
        Axis::Y => design.plate.depth / 2.0,
    };
    let line = |at, because| Line { at, because };
    let mut lines = vec![line(middle, Because::Middle)];
    let others = others(design, dial, axis, wanted);
    for (at, other) in &others {
        lines.push(line(*at, Because::InLine(*other)));
    }
    if axis == Axis::X {
        for (at, other) in &others {
            lines.push(line(-at, Because::Opposite(*other)));
        }
    }
    lines.extend(evenly(&others, along(axis, wanted)));
    lines
}

/// The other dials' places along `axis`, one for each place, in the order of the axis.
///
/// Of several in one line that one is named which is nearest to `wanted`.
fn others(design: &Design, dial: usize, axis: Axis, wanted: (f64, f64)) -> Vec<(f64, usize)> {
    let aside = |at| (along(across(axis), at) - along(across(axis), wanted)).abs();
    let dials = design.dials.iter().enumerate();
    let mut others: Vec<(f64, f64, usize)> = dials
        .filter(|(other, _)| *other != dial)
        .map(|(other, of)| (along(axis, of.centre), aside(of.centre), other))
        .filter(|(at, ..)| at.is_finite())
        .collect();
    let order = |one: &(f64, f64, usize), other: &(f64, f64, usize)| {
        let by_place = one.0.total_cmp(&other.0);
        by_place.then(one.1.total_cmp(&other.1))
    };
    others.sort_by(order);
    others.dedup_by(|next, kept| (next.0 - kept.0).abs() <= SAME);
    others
        .into_iter()
        .map(|(at, _, other)| (at, other))
        .collect()
}

/// Equal distances to the neighbours on both sides of `near`, and on from two on one side.
fn evenly(others: &[(f64, usize)], near: f64) -> Vec<Line> {
    let split = others.partition_point(|(at, _)| *at < near);
    let (before, after) = others.split_at(split);
    let mut lines = Vec::new();
    if let (Some((a, one)), Some((b, other))) = (before.last(), after.first()) {
        lines.push(Line {
            at: f64::midpoint(*a, *b),
            because: Because::Midway(*one, *other),
        });
    }
    let mut on_from = |(a, from): (f64, usize), (b, as_is): (f64, usize)| {
        lines.push(Line {
            at: 2.0 * a - b,
            because: Because::Evenly { from, as_is },
        });
    };
    if let [.., further, next] = before {
        on_from(*next, *further);
    }
    if let [next, further, ..] = after {
        on_from(*next, *further);
    }
    lines
}

/// Where the checks stop dial `dial` from coming nearer along `axis`, when it stands at `aside` along
/// the other. `bored` is the design with its bores as the maker's bits make them, `near` its distances.
pub(super) fn stops(
    bored: &Design,
    near: &Near<'_>,
    dial: usize,
    axis: Axis,
    aside: f64,
) -> Vec<Line> {
    let Some(own) = bored.dials.get(dial) else {
        return Vec::new();
    };
    let mut lines = Vec::new();
    // no endless figures, and never nearer than is allowed
    let up = |least: f64| (least * 100.0).ceil() / 100.0;
    let both = |middle: f64, least: f64, because: Because| {
        [middle - up(least), middle + up(least)].map(|at| Line { at, because })
    };
    for (other, of) in bored.dials.iter().enumerate() {
        let apart = aside - along(across(axis), of.centre);
        if other != dial
            && let Some((least, keeps)) = near.beside(axis, dial, other, apart)
        {
            let because = Because::Beside(other, keeps);
            lines.extend(both(along(axis, of.centre), least, because));
        }
    }
    if let Some(least) = near.edge(axis, dial) {
        let (low, high) = edges(bored, axis);
        let because = Because::Edge(own.bore.diameter);
        if high - low > 2.0 * up(least) {
            lines.extend([low + up(least), high - up(least)].map(|at| Line { at, because }));
        }
    }
    if axis == Axis::X
        && let Some(least) = near.guide_slot(dial, aside)
    {
        let because = Because::Slot(own.bore.diameter);
        lines.extend(both(bored.slider.pull_at, least, because));
    }
    lines
}

/// Where the plate begins and ends along `axis`, mm.
pub(super) fn edges(design: &Design, axis: Axis) -> (f64, f64) {
    match axis {
        Axis::X => (-design.plate.width / 2.0, design.plate.width / 2.0),
        Axis::Y => (0.0, design.plate.depth),
    }
}
