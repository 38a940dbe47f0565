//! The least of a figure over all boxes, as a proof: a bound from below, rounded outward, and the
//! worst box found beside it.
//!
//! Cells of boxes are looked at, the most promising first. Over a cell the figure is bounded by its
//! interval, and by its value in the middle and the bounds of its slopes; a variable along which the
//! figure only rises or only falls is put at its end; what is left is halved. Nothing is sampled:
//! the bound holds for every box of the domain.

use latchwright_geometry::Interval;

use super::jet::Jet;

/// A figure over boxes of `N` variables, of which the first `S` may range and the others have one value
/// in every cell. It is the least of its pieces, each of which is smooth.
pub trait FigureOverBoxes<const N: usize, const S: usize> {
    /// How many pieces it has.
    fn pieces(&self) -> usize {
        1
    }

    /// Bounds of one piece over a cell and of its slopes along the first `M` variables; `None` where
    /// nothing can be said. The figure is the same to the last bit however many slopes are asked for.
    fn bounds<const M: usize>(&self, piece: usize, cell: &Cell<N>) -> Option<Jet<M>>;
}

/// Ranges of all variables.
pub type Cell<const N: usize> = [Interval; N];

/// When to stop looking.
#[derive(Debug, Clone, Copy)]
pub struct Until {
    /// Bound and worst box are at most this far apart, in the unit of the figure.
    pub gap: f64,
    /// A value whose side must be known if it can be: looking goes on while it lies between bound
    /// and worst box.
    pub decides: f64,
    /// Cells at most.
    pub cells: usize,
}

/// What was found.
#[derive(Debug, Clone, Copy)]
pub struct Least<const N: usize> {
    /// The figure is never below this, in any box.
    pub bound: f64,
    /// The figure of the worst box found, rounded up.
    pub found: f64,
    /// That box.
    pub at: [f64; N],
    /// Cells looked at.
    pub cells: usize,
}

/// A cell that may hold a worse box than the worst that was found.
struct Waiting<const N: usize, const S: usize> {
    piece: usize,
    cell: Cell<N>,
    slope: [Interval; S],
}

/// The least of `figure` over all `domains`; `None` where no bound can be had at all.
pub fn least<F: FigureOverBoxes<N, S>, const N: usize, const S: usize>(
    figure: &F,
    domains: &[Cell<N>],
    until: Until,
) -> Option<Least<N>> {
    let mut search = Search {
        figure,
        best: Least {
            bound: f64::INFINITY,
            found: f64::INFINITY,
            at: domains.first()?.map(Interval::middle),
            cells: 0,
        },
        waiting: Vec::new(),
        bounds: Vec::new(),
    };
    for domain in domains {
        for piece in 0..figure.pieces() {
            search.look(piece, *domain)?;
        }
    }
    loop {
        let Some((lowest, bound)) = search.lowest() else {
            search.best.bound = search.best.found;
            break;
        };
        search.best.bound = bound.min(search.best.found);
        let open = bound < until.decides && search.best.found >= until.decides;
        let wide = search.best.found - bound > until.gap;
        let finest = search.best.found - bound <= 1e-9;
        if finest || !(open || wide) || search.best.cells >= until.cells {
            break;
        }
        search.bounds.swap_remove(lowest);
        let next = search.waiting.swap_remove(lowest);
        let Some(index) = next.to_halve() else {
            // nothing left to halve: its bound is all that can be said
            search.best.bound = bound;
            break;
        };
        let range = next.cell.get(index).copied().unwrap_or(Interval::ZERO);
        for half in [
            Interval::new(range.lo, range.middle()),
            Interval::new(range.middle(), range.hi),
        ] {
            let mut cell = next.cell;
            if let Some(range) = cell.get_mut(index) {
                *range = half;
            }
            search.look(next.piece, cell)?;
        }
    }
    Some(search.best)
}

struct Search<'a, F, const N: usize, const S: usize> {
    figure: &'a F,
    best: Least<N>,
    waiting: Vec<Waiting<N, S>>,
    /// The bound of each waiting cell: beside them, so that the lowest is found without reading them all.
    bounds: Vec<f64>,
}

impl<F: FigureOverBoxes<N, S>, const N: usize, const S: usize> Search<'_, F, N, S> {
    /// Index of the waiting cell with the lowest bound, the first of equals, and that bound.
    fn lowest(&self) -> Option<(usize, f64)> {
        let bounds = self.bounds.iter().copied().enumerate();
        bounds.min_by(|one, other| one.1.total_cmp(&other.1))
    }

    /// Bounds a cell, tries a box of it, and keeps it if it may hold a worse one.
    fn look(&mut self, piece: usize, mut cell: Cell<N>) -> Option<()> {
        self.best.cells += 1;
        let mut jet: Jet<S> = self.figure.bounds(piece, &cell)?;
        // along a variable on which the figure only rises, only its least value matters
        let mut narrowed = false;
        for (range, slope) in cell.iter_mut().zip(&jet.slope) {
            if !range.is_point() {
                if slope.lo >= 0.0 {
                    *range = Interval::at(range.lo);
                    narrowed = true;
                } else if slope.hi <= 0.0 {
                    *range = Interval::at(range.hi);
                    narrowed = true;
                }
            }
        }
        if narrowed {
            jet = self.figure.bounds(piece, &cell)?;
        }
        // the worse end along each variable, by the slope's middle: a box to try
        let mut worst = cell;
        for (range, slope) in worst.iter_mut().zip(&jet.slope) {
            *range = Interval::at(if slope.middle() > 0.0 {
                range.lo
            } else {
                range.hi
            });
        }
        let at_worst = self.attempt(&worst, piece);
        let mut bound = jet.value.lo;
        if !cell.iter().all(|range| range.is_point()) {
            // from the middle, which is closest where the figure bends, and from the worse end, which
            // is closest where it nearly only rises or falls
            let middle = cell.map(|range| Interval::at(range.middle()));
            let at_middle = self.value(piece, &middle);
            for (from, there) in [(worst, at_worst), (middle, at_middle)] {
                if let Some(there) = there {
                    let sway = cell.iter().zip(&from).zip(&jet.slope).fold(
                        Interval::ZERO,
                        |sum, ((range, from), slope)| {
                            if range.is_point() {
                                sum
                            } else {
                                sum + (*range - *from) * *slope
                            }
                        },
                    );
                    bound = bound.max((there + sway).lo);
                }
            }
        }
        if !bound.is_finite() {
            return None;
        }
        if bound < self.best.found {
            self.bounds.push(bound);
            self.waiting.push(Waiting {
                piece,
                cell,
                slope: jet.slope,
            });
        }
        Some(())
    }

    /// One piece of one box, without slopes.
    fn value(&self, piece: usize, at: &Cell<N>) -> Option<Interval> {
        let jet: Jet<0> = self.figure.bounds(piece, at)?;
        Some(jet.value)
    }

    /// Measures one box, keeps it if it is the worst so far, and gives what `piece` is there.
    fn attempt(&mut self, at: &Cell<N>, piece: usize) -> Option<Interval> {
        let (mut found, mut of_piece) = (f64::INFINITY, None);
        for each in 0..self.figure.pieces() {
            let value = self.value(each, at);
            found = found.min(value.map_or(f64::INFINITY, |value| value.hi));
            if each == piece {
                of_piece = value;
            }
        }
        if found < self.best.found {
            self.best.found = found;
            self.best.at = at.map(|range| range.lo);
        }
        of_piece
    }
}

impl<const N: usize, const S: usize> Waiting<N, S> {
    /// The variable that sways the figure most over this cell.
    fn to_halve(&self) -> Option<usize> {
        let sway = |index: usize| {
            let (range, slope) = (self.cell.get(index)?, self.slope.get(index)?);
            let steep = slope.hi.abs().max(slope.lo.abs());
            (range.middle() > range.lo && range.middle() < range.hi)
                .then(|| range.width() * slope.width().max(steep * 1e-3))
        };
        (0..S)
            .filter_map(|index| Some((index, sway(index)?)))
            .max_by(|one, other| one.1.total_cmp(&other.1))
            .map(|(index, _)| index)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const UNTIL: Until = Until {
        gap: 1e-4,
        decides: f64::NEG_INFINITY,
        cells: 10_000,
    };

    /// (x − 0.3)² + (x − 0.3)·(y + 0.2) + (y + 0.2)²: least 0 at (0.3, −0.2), rising and falling
    /// along both variables.
    struct Bowl;
    impl FigureOverBoxes<2, 2> for Bowl {
        fn bounds<const M: usize>(&self, _: usize, cell: &Cell<2>) -> Option<Jet<M>> {
            let x = Jet::variable(cell[0], 0).plus(-0.3);
            let y = Jet::variable(cell[1], 1).plus(0.2);
            Some(x.square() + x * y + y.square())
        }
    }

    #[test]
    fn a_bowl_is_least_at_its_bottom() {
        let domain = [Interval::new(-1.0, 1.0); 2];
        let least = least(&Bowl, &[domain], UNTIL).unwrap();
        assert!(least.bound <= 0.0 && least.found >= 0.0, "{least:?}");
        assert!(least.found - least.bound <= 1e-4, "{least:?}");
        assert!((least.at[0] - 0.3).abs() < 0.02 && (least.at[1] + 0.2).abs() < 0.02);
    }

    /// −|x|, in two pieces: least at an end.
    struct Roof;
    impl FigureOverBoxes<1, 1> for Roof {
        fn pieces(&self) -> usize {
            2
        }
        fn bounds<const M: usize>(&self, piece: usize, cell: &Cell<1>) -> Option<Jet<M>> {
            let x = Jet::variable(cell[0], 0);
            Some(if piece == 0 { x } else { -x })
        }
    }

    #[test]
    fn the_least_of_two_pieces_is_found_in_either() {
        let least = least(&Roof, &[[Interval::new(-1.0, 2.0)]], UNTIL).unwrap();
        assert!((least.found + 2.0).abs() < 1e-9 && least.bound <= -2.0 && least.at[0] == 2.0);
    }

    #[test]
    fn a_figure_that_only_rises_needs_no_halving() {
        struct Slope;
        impl FigureOverBoxes<1, 1> for Slope {
            fn bounds<const M: usize>(&self, _: usize, cell: &Cell<1>) -> Option<Jet<M>> {
                Some(Jet::variable(cell[0], 0).times(2.0).plus(1.0))
            }
        }
        let least = least(&Slope, &[[Interval::new(-1.0, 1.0)]], UNTIL).unwrap();
        assert_eq!(least.cells, 1);
        assert!(least.bound <= -1.0 && least.found >= -1.0 && least.found - least.bound < 1e-12);
    }
}
