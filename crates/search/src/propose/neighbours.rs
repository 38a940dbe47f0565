//! What lies round a point of the lattice and its sizes: what a search looks at once it found something.

use itertools::iproduct;

use super::grid::up;
use super::lattice::Point;
use super::sizes::Sizes;
use super::solve::Solver;

impl Solver {
    /// The neighbours of this point, and the point with one size larger than it must be.
    pub(super) fn round(&self, point: &Point, sizes: Sizes) -> Vec<(Point, Option<Sizes>)> {
        let grid = self.lattice.grid;
        let mut round: Vec<(Point, Option<Sizes>)> = sizes
            .beside(grid)
            .into_iter()
            .map(|sizes| (*point, Some(sizes)))
            .collect();
        let beside = self.lattice.beside(point).into_iter();
        round.extend(beside.map(|point| (point, None)));
        if !self.lattice.radius_is_held() {
            let steps = [1.0, -1.0, 2.0, -2.0, -3.0, -4.0];
            round.extend(steps.map(|steps| (point.wider(steps, grid), None)));
        }
        if point.stagger > 0.0 {
            round.extend([1.0, -1.0, 2.0, -2.0, 4.0, -4.0, 8.0, -8.0].map(|steps| {
                let stagger = up(point.stagger + steps * grid.place, grid.place).max(0.0);
                (Point { stagger, ..*point }, None)
            }));
        }
        let from = self.back(point);
        round.extend([-1.0, 1.0, -4.0].map(|steps| {
            let back = Some(from + steps * grid.place);
            (Point { back, ..*point }, None)
        }));
        round
    }

    /// Neighbours with discs further off, with the disc that suits another bore, and those two of whose
    /// sizes differ.
    pub(super) fn further_round(&self, point: &Point, sizes: Sizes) -> Vec<(Point, Option<Sizes>)> {
        let grid = self.lattice.grid;
        let mut round = Vec::new();
        if self.lattice.radius_is_held() {
            return round;
        }
        for bored in self.lattice.other_bores(point) {
            let suits = (bored.bore - point.bore) / 2.0 / grid.size;
            round.extend([suits, suits - 1.0].map(|steps| (bored.wider(steps, grid), None)));
        }
        let steps = [3.0, 4.0, 6.0, 8.0, -6.0, -8.0];
        round.extend(steps.map(|steps| (point.wider(steps, grid), None)));
        let steps = [1.0, -1.0, 2.0, -2.0, 4.0, -4.0];
        round.extend(iproduct!(steps, sizes.beside(grid)).map(|(steps, sizes)| {
            let point = point.wider(steps, grid);
            (point, Some(sizes))
        }));
        round
    }

    /// This place with every bore and pin, with discs some steps off and the back row where it leaves them as
    /// much before it, more or less.
    pub(super) fn wide_round(&self, point: &Point) -> Vec<(Point, Option<Sizes>)> {
        let grid = self.lattice.grid;
        let steps = if self.lattice.radius_is_held() {
            0..=0
        } else {
            -4..=4
        };
        let drifts = self.lattice.drifts();
        let bys = if drifts { -2..=2 } else { 0..=0 };
        let from = self.back(point);
        iproduct!(&self.lattice.bores, &self.lattice.pins, steps, bys)
            .map(|(bore, pin, steps, by)| {
                let mut other = point.wider(f64::from(steps), grid);
                (other.bore, other.pin) = (*bore, *pin);
                if drifts {
                    let back = from + other.radius - point.radius + f64::from(by) * grid.place;
                    other.back = Some(up(back, grid.place));
                }
                (other, None)
            })
            .collect()
    }
}
