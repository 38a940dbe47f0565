//! What many builds come to, in a size that does not grow with their number.

use super::figures::FIGURES;
use super::trial::Contradiction;

/// Cells of a histogram; quantiles are known to within one.
pub(super) const CELLS: usize = 1024;

/// Cells that the range of a drawn number is cut into.
pub(super) const PARTS: usize = 16;

/// Contradictions that are kept with all their numbers.
const KEPT: usize = 5;

/// Where the histogram of a figure lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Axis {
    /// The figure with nothing off; sums are taken from here.
    pub(super) nominal: f64,
    /// Half the width of the histogram, about the nominal figure.
    pub(super) half: f64,
}

impl Axis {
    /// Width of one cell.
    pub(super) fn resolution(&self) -> f64 {
        2.0 * self.half / CELLS as f64
    }
}

/// One figure over all builds.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Figures {
    pub(super) least: f64,
    pub(super) largest: f64,
    /// Sum of the deviations from the nominal figure, and of their squares.
    pub(super) sum: f64,
    pub(super) squares: f64,
    /// In some build there was no such figure.
    pub(super) missing: bool,
    pub(super) histogram: Vec<u64>,
}

impl Figures {
    fn new() -> Self {
        Self {
            least: f64::INFINITY,
            largest: f64::NEG_INFINITY,
            sum: 0.0,
            squares: 0.0,
            missing: false,
            histogram: vec![0; CELLS],
        }
    }

    /// Counts `figure` and gives its deviation from the nominal one.
    pub(super) fn count(&mut self, figure: f64, axis: &Axis) -> f64 {
        if !figure.is_finite() {
            self.missing = true;
            return 0.0;
        }
        let off = figure - axis.nominal;
        self.least = self.least.min(figure);
        self.largest = self.largest.max(figure);
        self.sum += off;
        self.squares += off * off;
        let place = f64::midpoint(off / axis.half, 1.0) * CELLS as f64;
        if let Some(cell) = self.histogram.get_mut(cell(place, CELLS)) {
            *cell += 1;
        }
        off
    }

    fn add(&mut self, other: &Self) {
        self.least = self.least.min(other.least);
        self.largest = self.largest.max(other.largest);
        self.sum += other.sum;
        self.squares += other.squares;
        self.missing |= other.missing;
        for (own, other) in self.histogram.iter_mut().zip(&other.histogram) {
            *own += other;
        }
    }

    /// The figure that a share `part` of the builds falls short of, within one cell.
    pub(super) fn quantile(&self, part: f64, axis: &Axis) -> f64 {
        let count: u64 = self.histogram.iter().sum();
        let wanted = part * count as f64;
        let mut passed = 0.0;
        let mut at = self.largest;
        for (number, cell) in self.histogram.iter().enumerate() {
            let here = *cell as f64;
            if here > 0.0 && passed + here >= wanted {
                let within = number as f64 + (wanted - passed) / here;
                at = axis.nominal - axis.half + within * axis.resolution();
                break;
            }
            passed += here;
        }
        at.max(self.least).min(self.largest)
    }
}

/// One cell of a drawn number: how many builds fell into it, and the sums of their deviations.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Part {
    pub(super) count: f64,
    pub(super) sums: [f64; FIGURES],
}

/// The figures of one dial or of the whole latch, and every drawn number that may decide them.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Group {
    pub(super) figures: [Figures; FIGURES],
    pub(super) numbers: Vec<[Part; PARTS]>,
}

impl Group {
    fn new(numbers: usize) -> Self {
        Self {
            figures: core::array::from_fn(|_| Figures::new()),
            numbers: vec![[Part::default(); PARTS]; numbers],
        }
    }

    /// Counts one build: its figures, and the shares that made them.
    pub(super) fn count<'a>(
        &mut self,
        figures: [f64; FIGURES],
        axes: &[Axis; FIGURES],
        shares: impl Iterator<Item = &'a f64>,
    ) {
        let mut off = [0.0; FIGURES];
        let counted = self.figures.iter_mut().zip(figures).zip(axes);
        for (off, ((own, figure), axis)) in off.iter_mut().zip(counted) {
            *off = own.count(figure, axis);
        }
        for (parts, share) in self.numbers.iter_mut().zip(shares) {
            let place = f64::midpoint(*share, 1.0) * PARTS as f64;
            if let Some(part) = parts.get_mut(cell(place, PARTS)) {
                part.count += 1.0;
                for (sum, off) in part.sums.iter_mut().zip(off) {
                    *sum += off;
                }
            }
        }
    }

    fn add(&mut self, other: &Self) {
        for (own, other) in self.figures.iter_mut().zip(&other.figures) {
            own.add(other);
        }
        let numbers = self.numbers.iter_mut().zip(&other.numbers);
        for (own, other) in numbers.flat_map(|(own, other)| own.iter_mut().zip(other)) {
            own.count += other.count;
            for (sum, other) in own.sums.iter_mut().zip(other.sums) {
                *sum += other;
            }
        }
    }
}

/// What a number of builds come to.
#[derive(Debug, Clone, PartialEq)]
pub struct Tally {
    pub(super) count: u64,
    pub(super) opens: u64,
    pub(super) holds: u64,
    /// One a dial, then that of the whole latch.
    pub(super) groups: Vec<Group>,
    pub(super) contradictions: u64,
    pub(super) first: Vec<Contradiction>,
}

impl Tally {
    /// Nothing built yet; so many drawn numbers decide each group.
    pub(super) fn new(numbers: impl IntoIterator<Item = usize>) -> Self {
        Self {
            count: 0,
            opens: 0,
            holds: 0,
            groups: numbers.into_iter().map(Group::new).collect(),
            contradictions: 0,
            first: Vec::new(),
        }
    }

    /// Adds the builds of a later block of the same trial.
    pub fn add(&mut self, later: &Self) {
        self.count += later.count;
        self.opens += later.opens;
        self.holds += later.holds;
        for (own, other) in self.groups.iter_mut().zip(&later.groups) {
            own.add(other);
        }
        self.contradictions += later.contradictions;
        let places_left = KEPT.saturating_sub(self.first.len());
        self.first
            .extend(later.first.iter().take(places_left).cloned());
    }

    /// How many builds it holds.
    pub fn count(&self) -> u64 {
        self.count
    }

    /// Notes a contradiction; its numbers are asked for only while few are known.
    pub(super) fn contradict(&mut self, found: impl FnOnce() -> Contradiction) {
        self.contradictions += 1;
        if self.first.len() < KEPT {
            self.first.push(found());
        }
    }
}

/// The cell of 0 to `cells` − 1 that `place` lies in, the ends taking in what lies beyond.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "held between the first and the last cell"
)]
fn cell(place: f64, cells: usize) -> usize {
    place.max(0.0).min(cells as f64 - 1.0) as usize
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::builds::Spread;
    use crate::builds::dice::Dice;

    /// Four rectangular quantities of standard uncertainty 1: 95 % lie within ±3.8794.
    ///
    /// # Source
    /// JCGM 101:2008 (GUM supplement 1), 9.2.3, from memory; recalculated from the closed tail of the
    /// sum, √3·(2·(24·0.025)^(1/4) − 4) = −3.8794.
    #[test]
    fn four_rectangular_quantities_have_the_interval_of_the_guide() {
        let closed = 3.0_f64.sqrt() * (2.0 * (24.0_f64 * 0.025).powf(0.25) - 4.0);
        assert!((closed + 3.879_4).abs() < 5e-5, "{closed}");
        let axis = Axis {
            nominal: 0.0,
            half: 4.0 * 3.0_f64.sqrt(),
        };
        let mut dice = Dice::new(1, 0, Spread::Uniform);
        let mut found = Figures::new();
        for _ in 0..1_000_000 {
            let sum: f64 = (0..4).map(|_| dice.even() * 3.0_f64.sqrt()).sum();
            found.count(sum, &axis);
        }
        // three standard deviations of the quantile of a million draws
        for (part, wanted) in [(0.025, closed), (0.975, -closed)] {
            let quantile = found.quantile(part, &axis);
            assert!((quantile - wanted).abs() < 0.015, "{part}: {quantile}");
        }
        assert!(
            (found.squares / 1e6 - 4.0).abs() < 0.02,
            "{}",
            found.squares
        );
    }

    #[test]
    fn a_quantile_is_right_to_within_one_cell() {
        let axis = Axis {
            nominal: 5.0,
            half: 1.0,
        };
        let mut figures = Figures::new();
        for number in 0..=1000 {
            figures.count(4.0 + f64::from(number) / 500.0, &axis);
        }
        for part in [0.05, 0.5, 0.95] {
            let quantile = figures.quantile(part, &axis);
            let wanted = 4.0 + 2.0 * part;
            assert!((quantile - wanted).abs() <= axis.resolution(), "{quantile}");
        }
        assert_eq!((figures.least, figures.largest), (4.0, 6.0));
        assert_eq!(figures.histogram.iter().sum::<u64>(), 1001);
    }

    #[test]
    fn figures_beyond_the_histogram_are_counted_at_its_ends() {
        let axis = Axis {
            nominal: 0.0,
            half: 1.0,
        };
        let mut figures = Figures::new();
        for figure in [-7.0, 0.0, 7.0] {
            figures.count(figure, &axis);
        }
        let filled: Vec<usize> = (0..CELLS).filter(|at| figures.histogram[*at] > 0).collect();
        assert_eq!(filled, [0, CELLS / 2, CELLS - 1]);
        figures.count(f64::NAN, &axis);
        assert!(figures.missing && figures.sum == 0.0);
    }
}
