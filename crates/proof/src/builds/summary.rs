//! What the builds come to: shares with their limits, the spread of each margin, who decides it.

use latchwright_geometry::trig;

use super::figures::{DIAL, FIGURES, LATCH};
use super::tally::{Figures, Group, PARTS, Part};
use super::{BuildFigure, Contradiction, Plan, Share, Tally, Trial};
use crate::check::Contributor;

/// One margin over all builds.
#[derive(Debug, Clone, PartialEq)]
pub struct Margin {
    /// What it is.
    pub figure: BuildFigure,
    /// The dial it is about, from 0; `None` for the whole latch.
    pub dial: Option<usize>,
    /// With nothing off, in the middle of the year, mm.
    pub nominal: f64,
    /// Mean, mm.
    pub mean: f64,
    /// Standard deviation, mm.
    pub sd: f64,
    /// Least of any build, mm.
    pub least: f64,
    /// Largest of any build, mm.
    pub largest: f64,
    /// What one build in twenty falls short of, mm.
    pub low: f64,
    /// What one build in twenty goes beyond, mm.
    pub high: f64,
    /// How exactly the two are known, mm: one cell of a histogram of 1024.
    pub resolution: f64,
    /// ± by the root of the sum of squares of what each drawn number does alone, mm.
    pub rss: f64,
    /// ± by the plain sum of the same, mm.
    pub worst: f64,
    /// Share of the variance by contributor, largest first: first-order indices, 0 to 1. Those that
    /// explain nothing are left out.
    pub explained: Vec<(Contributor, f64)>,
}

/// What many builds of one design come to.
#[derive(Debug, Clone, PartialEq)]
pub struct Builds {
    /// How many, from which seed, how spread.
    pub plan: Plan,
    /// Builds that open the first time at the combination.
    pub opens: Share,
    /// Builds in which every wrong setting holds.
    pub holds: Share,
    /// Dial by dial, then of the whole latch. A figure that some build does not have (the depth left in
    /// a slot without a floor) is not among them.
    pub margins: Vec<Margin>,
    /// How often a build did not keep what was proven; anything but 0 is a fault of the program.
    pub contradictions: u64,
    /// The first few of them, with all their numbers.
    pub first_contradictions: Vec<Contradiction>,
}

impl Builds {
    /// Every build opened, and every wrong setting held in all of them.
    pub fn all_as_meant(&self) -> bool {
        self.opens.hits == self.opens.count && self.holds.hits == self.holds.count
    }
}

impl Trial<'_> {
    /// What a tally of this trial comes to.
    pub fn summary(&self, tally: &Tally) -> Builds {
        let margins = tally.groups.iter().enumerate();
        Builds {
            plan: self.plan,
            opens: Share::of(tally.opens, tally.count),
            holds: Share::of(tally.holds, tally.count),
            margins: margins
                .flat_map(|(index, group)| self.margins(index, group, tally))
                .collect(),
            contradictions: tally.contradictions,
            first_contradictions: tally.first.clone(),
        }
    }

    fn margins(&self, index: usize, group: &Group, tally: &Tally) -> Vec<Margin> {
        let whole = index + 1 == tally.groups.len();
        let names: &[BuildFigure] = if whole { &LATCH } else { &DIAL };
        let (Some(axes), Some(chains)) = (self.axes.get(index), self.chains.get(index)) else {
            return Vec::new();
        };
        let whose = self.contributors(index);
        let figures = group.figures.iter().zip(axes).zip(chains).enumerate();
        let mut margins = Vec::new();
        for ((at, ((figures, axis), chain)), name) in figures.zip(names) {
            if figures.missing || !axis.nominal.is_finite() || tally.count == 0 {
                continue;
            }
            let (mean, variance) = mean_and_variance(figures, tally.count);
            margins.push(Margin {
                figure: *name,
                dial: (!whole).then_some(index),
                nominal: axis.nominal,
                mean: axis.nominal + mean,
                sd: trig::sqrt(variance),
                least: figures.least,
                largest: figures.largest,
                low: figures.quantile(0.05, axis),
                high: figures.quantile(0.95, axis),
                resolution: axis.resolution(),
                rss: chain.rss,
                worst: chain.worst,
                explained: explained(group, at, &whose, tally.count),
            });
        }
        margins
    }
}

/// Mean deviation from the nominal figure, and the variance.
fn mean_and_variance(figures: &Figures, count: u64) -> (f64, f64) {
    let n = count as f64;
    let mean = figures.sum / n;
    let square = figures.squares - n * mean * mean;
    // what is left of a figure that never changes is rounding
    let rounding = 1e-12 * figures.squares.max(1e-12);
    let variance = if count > 1 && square > rounding {
        square / (n - 1.0)
    } else {
        0.0
    };
    (mean, variance)
}

/// First-order indices of figure `at`, summed over the numbers of each contributor.
fn explained(
    group: &Group,
    at: usize,
    whose: &[Contributor],
    count: u64,
) -> Vec<(Contributor, f64)> {
    let Some(figures) = group.figures.get(at) else {
        return Vec::new();
    };
    let (mean, variance) = mean_and_variance(figures, count);
    if variance <= 0.0 {
        return Vec::new();
    }
    let whole = variance * (count as f64 - 1.0);
    let share = |contributor: Contributor| {
        let own = whose.iter().zip(&group.numbers);
        let own = own.filter(|(whose, _)| **whose == contributor);
        let sum: f64 = own
            .map(|(_, parts)| first_order(parts, at, mean, whole, count))
            .sum();
        (contributor, sum.clamp(0.0, 1.0))
    };
    let mut shares: Vec<_> = Contributor::OFF.map(share).to_vec();
    shares.retain(|(_, share)| *share > 0.0);
    shares.sort_by(|one, other| other.1.total_cmp(&one.1));
    shares
}

/// ε² of one drawn number: the part of the squares that lies between its cells, less what chance alone
/// would put there.
fn first_order(parts: &[Part; PARTS], at: usize, mean: f64, whole: f64, count: u64) -> f64 {
    let filled = parts.iter().filter(|part| part.count > 0.0);
    let (mut between, mut cells) = (0.0, 0.0);
    for part in filled {
        let own = sum_of(part, at) / part.count - mean;
        between += part.count * own * own;
        cells += 1.0;
    }
    let free = count as f64 - cells;
    if free <= 0.0 {
        return 0.0;
    }
    let by_chance = (cells - 1.0) * (whole - between).max(0.0) / free;
    (between - by_chance) / whole
}

fn sum_of(part: &Part, at: usize) -> f64 {
    let sums: &[f64; FIGURES] = &part.sums;
    sums.get(at).copied().unwrap_or(0.0)
}
