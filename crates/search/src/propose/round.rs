//! Looking round what was found for more settings or a smaller lid, where no place of the lattice is.

use super::found::Found;
use super::grid::down;
use super::lattice::Point;
use super::pass::{Aim, Pass};
use super::proposal::Kind;
use super::sizes::Sizes;
use latchwright_model::Design;

/// So many that were found are kept.
const KEPT: usize = 96;

/// With how much room it is looked for, one after the other: the first is surely proven, the rest may be.
const GRADES: [f64; 6] = [0.0, -0.015, -0.03, -0.0375, -0.045, -0.05];

/// Settings, and minus the lid, mm².
pub(super) type Rank = (u128, f64);

/// Looking round what was found, one grade of room after another.
pub(super) struct Round {
    /// In what it is to be better.
    kind: Kind,
    /// How good it was before.
    pub known: Rank,
    pass: Pass,
    seeds: Vec<Found>,
    tried: Vec<Design>,
    grade: usize,
}

impl Round {
    pub(super) fn new(kind: Kind, pass: Pass, seeds: Vec<Found>, known: Rank) -> Self {
        Self {
            kind,
            known,
            pass,
            seeds,
            tried: Vec::new(),
            grade: 0,
        }
    }

    /// What is found with the next grade of room; `None` at the end.
    pub(super) fn next(&mut self) -> Option<Vec<Found>> {
        let room = *GRADES.get(self.grade)?;
        self.grade += 1;
        self.pass.look_round(&self.seeds, aim(self.kind, room));
        Some(core::mem::take(&mut self.pass.kept))
    }

    /// Whether this was not tried yet; from now on it was.
    pub(super) fn is_new(&mut self, found: &Found) -> bool {
        let new = !self.tried.contains(&found.design);
        if new {
            self.tried.push(found.design.clone());
        }
        new
    }

    /// Whether it matters how far back the dials stand.
    pub(super) fn drifts(&self) -> bool {
        self.pass.drifts()
    }

    /// Share of the grades that are done.
    pub(super) fn done(&self) -> f64 {
        self.grade as f64 / GRADES.len() as f64
    }
}

/// What is looked for with this room to be better in `kind`.
pub(super) fn aim(kind: Kind, room: f64) -> Aim {
    match kind {
        Kind::Roomiest => Aim::Room(room),
        Kind::MostSettings => Aim::Settings(room),
        Kind::Smallest => Aim::Area(room),
    }
}

impl Pass {
    /// Looks for what `aim` says round what was found, where no place of the lattice is; the roomiest,
    /// which are the likeliest to be proven, come first.
    fn look_round(&mut self, seeds: &[Found], aim: Aim) {
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
        let grid = self.solver.lattice.grid;
        for found in seeds {
            let (at, sizes) = found.at;
            let plate = &found.design.plate;
            let (width, depth) = (plate.width, plate.depth);
            self.solver.set_lid((width, depth));
            let back = Some(self.solver.back(&at));
            let point = Point { back: None, ..at };
            for lid in grid.smaller_lids((width, depth)) {
                self.solver.set_lid(lid);
                let mut round = self.solver.round(&point, sizes);
                round.push((point, None));
                let elsewhere: Vec<Point> = round
                    .iter()
                    .filter_map(|(point, from)| from.is_none().then_some(*point))
                    .collect();
                let width = down(sizes.width - grid.size, grid.size);
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
            let (point, sizes) = found.at;
            for sides in self.flats(found) {
                self.more_settings_beside(&Point { sides, ..point }, sizes, room);
            }
        }
        self.more_settings(room);
    }

    /// The flats that posts may have whose marks are not fixed. Where a seed's marks were, each dial has
    /// those that suit its own.
    fn flats(&self, found: &Found) -> Vec<u32> {
        let (lattice, sides) = (&self.solver.lattice, found.at.0.sides);
        if sides > 0 {
            return vec![sides];
        }
        let mut flats = lattice.sides.clone();
        let dials = &found.design.dials;
        flats.retain(|sides| dials.iter().any(|dial| dial.key.sides == *sides));
        flats
    }

    fn more_settings_beside(&mut self, point: &Point, sizes: Sizes, room: f64) {
        let smallest = self.solver.smallest(point, room);
        let grid = self.solver.lattice.grid;
        let mut beside = sizes.beside(grid);
        beside.push(sizes);
        for sizes in beside {
            self.narrower(point, sizes, (room, smallest.width));
        }
        let elsewhere = self.solver.round(point, sizes).into_iter();
        let elsewhere = elsewhere.filter(|(_, from)| from.is_none()).collect();
        self.keep_all(elsewhere, room);
    }

    /// These sizes with narrower slots, whose mouths are narrower: from the narrowest up to one step less.
    fn narrower(&mut self, point: &Point, sizes: Sizes, (room, narrowest): (f64, f64)) {
        let from = |width| Some(Sizes { width, ..sizes });
        let step = self.solver.lattice.grid.size;
        let Some(least) = self.solver.least(point, room, from(narrowest)) else {
            return;
        };
        self.keep(point, &least, room);
        for by in [2.0 * step, step] {
            let width = down(sizes.width - by, step);
            // what is no wider comes to the same
            if width > least.width
                && let Some(wider) = self.solver.least(point, room, from(width))
            {
                self.keep(point, &wider, room);
            }
        }
    }
}
