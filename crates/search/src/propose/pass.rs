//! One way through a whole lattice in search of one thing, in steps: the roomiest latch, the most
//! settings, or the smallest lid. What was found so far prunes what is left.

use super::found::{Found, area, numbers, settings};
use super::grid::up;
use super::lattice::{Lattice, Point, fiddly};
use super::plain::{Ground, least_room};
use super::proposal::bits;
use super::sizes::Sizes;
use super::solve::Solver;
use super::wishes::{Wishes, prepared};

/// What is looked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Aim {
    /// The largest least room, from this one up.
    Room(f64),
    /// The most settings with this room.
    Settings(f64),
    /// The smallest lid with this room.
    Area(f64),
}

/// Points of the lattice in one step: a few thousandths of a second.
pub(super) const POINTS: usize = 512;
/// The plain sums promise less than the proof: a latch may be proven with room short of nought by so
/// much.
pub(super) const SHORT: f64 = -0.06;
/// Two rooms that differ by less are as good as each other, and the simpler latch is taken.
pub(super) const ALIKE: f64 = 0.01;
/// Of two latches short of room the proof may still prefer the shorter, by so much.
const MAY_BE_PROVEN: f64 = 0.02;
/// What a back row between two places of the lattice may add to the room.
const BETWEEN: f64 = 0.02;
/// More room than this is not asked for.
pub(super) const ENOUGH: f64 = 3.0;
/// The best that are kept, where the first may not be proven.
const KEPT: usize = 128;
/// Latches with so much less room may still have the most once they were looked round widely.
const MAY_GAIN: f64 = 0.08;
/// The same where it matters how far back the dials stand, and every place takes long.
const MAY_GAIN_DRIFTING: f64 = 0.03;
/// Lids that are tried for one point at most.
const LIDS: usize = 60;

/// A way through the lattice.
pub(super) struct Pass {
    pub solver: Solver,
    pub aim: Aim,
    /// Points that are looked at first.
    pub first: Vec<Point>,
    pub next: usize,
    /// The best first.
    pub kept: Vec<Found>,
    /// The roomiest of each bore, pin and kind of row.
    pub champions: Vec<Found>,
    /// The largest lid, mm.
    pub lid: (f64, f64),
    /// Whether the best were looked round.
    polished: bool,
    /// Whether all that are kept are looked round, and further.
    pub widely: bool,
    /// So many of the best are kept.
    pub most_kept: usize,
    /// Settings or area that are known already, and only better ones wanted; 0 for none.
    beat: f64,
}

impl Pass {
    /// A way through the lattice of these wishes, at whose end the best are looked round widely where that
    /// takes no time; `None` where a wood is not known.
    pub(super) fn of(wishes: &Wishes, free_marks: bool, aim: Aim) -> Option<Box<Self>> {
        let ground = Ground::of(&prepared(wishes))?;
        let lattice = Lattice::of(wishes, free_marks, ground.alike_along_y);
        Some(Box::new(Self::new(Solver::new(lattice, ground), aim)))
    }

    /// The same for the roomiest, looked round widely even where that takes long.
    pub(super) fn wide(wishes: &Wishes, least_room: f64) -> Option<Box<Self>> {
        let mut pass = Self::of(wishes, false, Aim::Room(least_room))?;
        pass.widely = true;
        Some(pass)
    }

    /// The same for what has this room once it was looked round.
    pub(super) fn roomier_than(wishes: &Wishes, room: f64) -> Option<Box<Self>> {
        let mut pass = Self::wide(wishes, room)?;
        pass.aim = Aim::Room(room - pass.may_gain());
        Some(pass)
    }

    fn new(mut solver: Solver, aim: Aim) -> Self {
        solver.at_once = matches!(aim, Aim::Room(_));
        let mut first = solver.lattice.first();
        // the first is taken from the end: of the smallest lid, the smallest discs
        if !matches!(aim, Aim::Area(_)) {
            first.reverse();
        }
        // through the thickness nothing depends on the point, nor does the room on a lid that stays
        let lid_stays = !matches!(aim, Aim::Area(_));
        let next = if solver.stacks() && !(lid_stays && solver.shuts_in()) {
            0
        } else {
            first.clear();
            solver.lattice.len()
        };
        Self {
            lid: solver.lid(),
            widely: !solver.lattice.drifts(),
            solver,
            aim,
            first,
            next,
            kept: Vec::new(),
            champions: Vec::new(),
            polished: false,
            most_kept: KEPT,
            beat: 0.0,
        }
    }

    /// The same, for what is better than this many settings or this area.
    pub(super) fn better_than(mut self, known: f64) -> Self {
        self.beat = known;
        self
    }

    pub(super) fn keep_all(&mut self, round: Vec<(Point, Option<Sizes>)>, room: f64) {
        for (point, from) in round {
            if let Some(sizes) = self.solver.least(&point, room, from) {
                self.keep(&point, &sizes, room);
            }
        }
    }

    /// Share of the way that is done.
    pub(super) fn done(&self) -> f64 {
        self.next as f64 / self.solver.lattice.len().max(1) as f64
    }

    /// Whether only the lattice itself is left.
    pub(super) fn first_done(&self) -> bool {
        self.first.is_empty()
    }

    /// Looks at up to `points` more; false at the end.
    pub(super) fn step(&mut self, points: usize) -> bool {
        for _ in 0..points {
            if let Some(point) = self.first.pop() {
                self.look(&point);
                continue;
            }
            let Some(point) = self.next_point() else {
                return self.polish();
            };
            self.next += 1;
            self.look(&point);
        }
        true
    }

    /// The next place of the lattice: the largest discs first, or the smallest for the smallest lid, so
    /// that what is found early leaves the least to look at.
    fn next_point(&self) -> Option<Point> {
        let all = self.solver.lattice.len();
        let left = all.checked_sub(self.next + 1)?;
        self.solver.lattice.point(match self.aim {
            Aim::Area(_) => left,
            Aim::Room(_) | Aim::Settings(_) => self.next,
        })
    }

    fn look(&mut self, point: &Point) {
        match self.aim {
            Aim::Room(least) => {
                if self.solver.hopeless(point, self.wanted(least)) {
                    return;
                }
                for back in self.solver.lattice.backs() {
                    self.look_for_room(&Point { back, ..*point }, None, least);
                }
            }
            Aim::Settings(room) => self.look_for_settings(point, room),
            Aim::Area(room) => self.look_for_area(point, room),
        }
    }

    /// The room from which on a latch is kept.
    fn worst_kept(&self, least: f64) -> f64 {
        match self.kept.first() {
            // only what may be the best counts, once it is surely proven
            Some(best) if best.room > 0.0 => best.room - self.may_gain().max(ALIKE),
            Some(best) => best.room - MAY_BE_PROVEN,
            None => least,
        }
    }

    /// The room that a place of the lattice must have to be looked at further.
    pub(super) fn wanted(&self, least: f64) -> f64 {
        // a place between those of the lattice may gain so much
        let short = if self.drifts() { BETWEEN } else { 0.0 };
        (self.worst_kept(least) - short).max(least).min(ENOUGH)
    }

    /// What a place of the lattice may gain by being looked round at the end.
    pub(super) fn may_gain(&self) -> f64 {
        match (self.widely, self.drifts()) {
            (true, true) => MAY_GAIN_DRIFTING,
            (true, false) => MAY_GAIN,
            (false, _) => 0.0,
        }
    }

    /// Whether it matters how far back the dials stand.
    pub(super) fn drifts(&self) -> bool {
        self.solver.lattice.drifts()
    }

    pub(super) fn look_for_room(&mut self, point: &Point, from: Option<Sizes>, least: f64) {
        let wanted = self.wanted(least);
        let Some(sizes) = self.solver.least(point, wanted, from) else {
            return;
        };
        let (mut room, mut sizes) = self.furthest(point, wanted, sizes);
        let mut point = *point;
        if self.drifts() {
            (point, room, sizes) = self.between(point, room, sizes);
        }
        if room >= self.worst_kept(least) {
            self.keep(&point, &sizes, room);
        }
    }

    /// The most room at `point`, from `room` on: on to where it fails, then halved.
    pub(super) fn furthest(&mut self, point: &Point, room: f64, sizes: Sizes) -> (f64, Sizes) {
        let (mut room, mut sizes, mut stride) = (room, sizes, 0.2);
        while stride > ALIKE / 4.0 && room < ENOUGH {
            match self.solver.least(point, room + stride, Some(sizes)) {
                Some(more) => (room, sizes) = (room + stride, more),
                None => stride /= 2.0,
            }
        }
        (room, sizes)
    }

    /// Moves the back row to where it has most room, in ever shorter strides: a longer guide turns
    /// less, a shorter one drifts less.
    pub(super) fn between(&mut self, point: Point, room: f64, sizes: Sizes) -> (Point, f64, Sizes) {
        let place = self.solver.lattice.grid.place;
        let (mut best, mut stride) = ((point, room, sizes), 8.0);
        while stride >= 1.0 {
            let from = self.solver.back(&best.0);
            let better = [-stride, stride].into_iter().find_map(|by| {
                let moved = Point {
                    back: Some(from + by * place),
                    ..best.0
                };
                let more = best.1 + ALIKE / 4.0;
                let sizes = self.solver.least(&moved, more, None)?;
                Some((moved, more, sizes))
            });
            match better {
                Some((point, room, sizes)) => {
                    let (room, sizes) = self.furthest(&point, room, sizes);
                    best = (point, room, sizes);
                }
                None => stride /= 2.0,
            }
        }
        best
    }

    /// Looks round the best that were found, between and beyond the places of the lattice; always false,
    /// for the end of the way.
    fn polish(&mut self) -> bool {
        if !self.polished {
            self.polished = true;
            match self.aim {
                Aim::Room(least) => self.roomier(least),
                Aim::Settings(room) => self.more_settings(room),
                Aim::Area(room) => self.smaller(room),
            }
        }
        false
    }

    pub(super) fn more_settings(&mut self, room: f64) {
        while let Some(best) = self.kept.first() {
            let (settings, (point, sizes)) = (best.settings(), best.at);
            self.keep_all(self.solver.round(&point, sizes), room);
            let now = self.kept.first().map_or(0.0, Found::settings);
            if now <= settings {
                break;
            }
        }
    }

    pub(super) fn smaller(&mut self, room: f64) {
        let grid = self.solver.lattice.grid;
        while let Some(best) = self.kept.first() {
            let (area, (point, sizes)) = (best.area(), best.at);
            let plate = &best.design.plate;
            let (width, depth) = (plate.width, plate.depth);
            for lid in grid.smaller_lids((width, depth)) {
                self.solver.set_lid(lid);
                let point = Point {
                    back: None,
                    ..point
                };
                let round = self.beside(&point, sizes);
                if let Some((point, room, sizes)) = self.first_with(round, room) {
                    self.keep(&point, &sizes, room);
                }
            }
            self.solver.set_lid(self.lid);
            if self.kept.first().is_none_or(|best| best.area() >= area) {
                break;
            }
        }
    }

    /// The neighbours of this point, and the further ones where all is looked round widely.
    pub(super) fn beside(&self, point: &Point, sizes: Sizes) -> Vec<(Point, Option<Sizes>)> {
        let mut round = self.solver.round(point, sizes);
        if self.widely {
            round.extend(self.solver.further_round(point, sizes));
        }
        round
    }

    /// The first of these with this room.
    pub(super) fn first_with(
        &mut self,
        round: Vec<(Point, Option<Sizes>)>,
        room: f64,
    ) -> Option<(Point, f64, Sizes)> {
        round
            .into_iter()
            .find_map(|(point, from)| Some((point, room, self.solver.least(&point, room, from)?)))
    }

    fn look_for_settings(&mut self, point: &Point, room: f64) {
        // the roomiest of equals is found afterwards
        let best = self.kept.first().map_or(0.0, Found::settings);
        if self.solver.most_settings(point, room) <= best.max(self.beat) {
            return;
        }
        // how far back makes hardly any difference to the marks: the first that goes will do
        for back in self.solver.lattice.backs() {
            let point = Point { back, ..*point };
            if let Some(sizes) = self.solver.least(&point, room, None) {
                self.keep(&point, &sizes, room);
                break;
            }
        }
    }

    fn look_for_area(&mut self, point: &Point, room: f64) {
        let best = self.kept.first().map_or(f64::INFINITY, Found::area);
        let best = if self.beat > 0.0 {
            best.min(self.beat)
        } else {
            best
        };
        let grid = self.solver.lattice.grid;
        let least = self.solver.least_lid(point, room);
        let lid = |least: f64, most: f64| up(least, grid.lid).min(most.max(least));
        let (width, depth) = (lid(least.0, self.lid.0), lid(least.1, self.lid.1));
        if width * depth >= best || width > self.lid.0 || depth > self.lid.1 {
            return;
        }
        // the largest that would still be better tells whether it is worth going on
        self.solver.set_lid(self.lid);
        if !self.drifts() && self.solver.least(point, room, None).is_none() {
            return;
        }
        let mut depth = depth;
        for _ in 0..LIDS {
            if width * depth >= best || depth > self.lid.1 {
                break;
            }
            self.solver.set_lid((self.lid.0, depth));
            if let Some(sizes) = self.solver.least(point, room, None) {
                let needed = self.solver.needed_width(point, &sizes);
                let width = up(needed, grid.lid).min(self.lid.0);
                self.solver.set_lid((width, depth));
                self.keep(point, &sizes, room);
                break;
            }
            depth += grid.lid;
        }
        self.solver.set_lid(self.lid);
    }

    pub(super) fn keep(&mut self, point: &Point, sizes: &Sizes, room: f64) {
        let Some(design) = self.solver.finish(point, sizes, room) else {
            return;
        };
        let Some((room, _)) = least_room(&design) else {
            return;
        };
        let grid = self.solver.lattice.grid;
        let few = |number: usize| i64::try_from(number).map_or(i64::MIN, |number| -number);
        let (bits, numbers) = (bits(&design), numbers(&design));
        let simple = (few(bits.len()), few(fiddly(&numbers, grid)));
        let first = match self.aim {
            Aim::Room(_) => (room / ALIKE).clamp(-1e6, 1e6).floor(),
            Aim::Settings(_) => settings(&design),
            Aim::Area(_) => -area(&design),
        };
        let found = Found {
            design,
            room,
            rank: (first, simple),
            at: (*point, *sizes),
        };
        if matches!(self.aim, Aim::Room(_)) {
            self.champion(&found);
        }
        let better = |other: &Found| other.rank < found.rank;
        let at = self.kept.iter().position(better).unwrap_or(self.kept.len());
        self.kept.insert(at, found);
        self.kept.truncate(self.most_kept);
    }
}
