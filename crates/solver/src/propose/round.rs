//! Looking round what was found for more settings or a smaller lid, where no place of the lattice is.

use super::lattice::Point;
use super::pass::{Aim, Found, Pass};
use super::sizes::Sizes;

/// So many that were found are kept.
const KEPT: usize = 96;

impl Pass {
    /// Looks for what `aim` says round what was found, where no place of the lattice is; the roomiest,
    /// which are the likeliest to be proven, come first.
    pub(super) fn look_round(&mut self, seeds: &[Found], aim: Aim) {
        self.aim = aim;
        self.kept.clear();
        // those with the most settings are seldom proven
        self.most_kept = KEPT;
        match aim {
            Aim::Room(_) => {}
            Aim::Settings(room) => self.more_settings_round(seeds, room),
            Aim::Area(room) => self.smaller_round(seeds, room),
        }
        self.kept
            .sort_by(|one, other| other.room.total_cmp(&one.room));
    }

    fn smaller_round(&mut self, seeds: &[Found], room: f64) {
        let step = self.solver.lattice.grid.lid;
        for found in seeds {
            let (at, sizes) = found.at;
            let plate = &found.design.plate;
            let (width, depth) = (plate.width, plate.depth);
            self.solver.set_lid((width, depth));
            let back = Some(self.solver.back(&at));
            let point = Point { back: None, ..at };
            for lid in [(width - step, depth), (width, depth - step)] {
                self.solver.set_lid(lid);
                let mut round = self.round(&point, sizes);
                round.push((point, None));
                let elsewhere: Vec<Point> = round
                    .iter()
                    .filter_map(|(point, from)| from.is_none().then_some(*point))
                    .collect();
                let width = sizes.width - self.solver.lattice.grid.size;
                for point in elsewhere {
                    // where only the width gives way the row may stay where it is
                    for point in [point, Point { back, ..point }] {
                        round.push((point, Some(sizes)));
                        round.push((point, Some(Sizes { width, ..sizes })));
                    }
                }
                self.keep_all(round, room);
            }
        }
        self.solver.set_lid(self.lid);
        self.smaller(room);
    }

    fn more_settings_round(&mut self, seeds: &[Found], room: f64) {
        for found in seeds {
            let (mut point, sizes) = found.at;
            // where marks are fixed, every dial has the flats that suit them
            point.sides = found.design.dials.first().map_or(0, |dial| dial.key.sides);
            let smallest = self.solver.smallest(&point, room);
            let grid = self.solver.lattice.grid;
            let mut beside = sizes.beside(grid);
            beside.push(sizes);
            for sizes in beside {
                self.narrower(&point, sizes, (room, smallest.width));
            }
            let elsewhere = self.round(&point, sizes).into_iter();
            let elsewhere = elsewhere.filter(|(_, from)| from.is_none()).collect();
            self.keep_all(elsewhere, room);
        }
        self.more_settings(room);
    }

    /// These sizes with narrower slots, whose mouths are narrower: from the narrowest up to one step less.
    fn narrower(&mut self, point: &Point, sizes: Sizes, (room, narrowest): (f64, f64)) {
        let from = |width| Some(Sizes { width, ..sizes });
        let step = self.solver.lattice.grid.size;
        let Some(least) = self.solver.least(point, room, from(narrowest)) else {
            return;
        };
        self.keep(point, &least, room);
        for width in [sizes.width - 2.0 * step, sizes.width - step] {
            // what is no wider comes to the same
            if width > least.width
                && let Some(wider) = self.solver.least(point, room, from(width))
            {
                self.keep(point, &wider, room);
            }
        }
    }
}
