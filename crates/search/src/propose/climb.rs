//! More room round what a way through the lattice found, between and beyond its places.

use itertools::Itertools;

use super::found::Found;
use super::lattice::Point;
use super::pass::{ALIKE, ENOUGH, Pass};
use super::sizes::Sizes;
use super::wishes::Wishes;

/// Of those that are kept so many are looked round at the end, if not widely.
const POLISHED: usize = 8;
/// So many places are looked round for other marks.
const LEADS: usize = 4;

/// A place of the lattice or between, with the most room there.
#[derive(Clone, Copy)]
struct Roomy {
    point: Point,
    room: f64,
    sizes: Sizes,
}

impl From<&Found> for Roomy {
    fn from(found: &Found) -> Self {
        let (room, (point, sizes)) = (found.room, found.at);
        Self { point, room, sizes }
    }
}

impl Pass {
    /// The roomiest round these alone.
    pub(super) fn round(wishes: &Wishes, least_room: f64, leads: &[Found]) -> Option<Box<Self>> {
        let mut pass = Self::roomier_than(wishes, least_room)?;
        let least = least_room - pass.may_gain();
        pass.first.clear();
        pass.next = pass.solver.lattice.len();
        for (point, sizes) in leads.iter().map(|lead| lead.at) {
            let here = core::iter::once((point, None));
            for (point, from) in here.chain(pass.beside(&point, sizes)) {
                pass.look_for_room(&point, from, least);
            }
        }
        pass.champions.clear();
        pass.most_kept = LEADS;
        pass.kept.truncate(LEADS);
        Some(pass)
    }

    /// The best that are kept, no two with the same bore, pin and kind of row.
    pub(super) fn leads(&self) -> Vec<Found> {
        let leads = self.kept.iter().unique_by(|found| found.class());
        leads.take(LEADS).cloned().collect()
    }

    /// Looks round the best that were found, between and beyond the places of the lattice.
    pub(super) fn roomier(&mut self, least: f64) {
        let most = if self.widely { usize::MAX } else { POLISHED };
        let champions = core::mem::take(&mut self.champions);
        let is_kept = |champion: &&Found| self.kept.iter().any(|kept| kept.at == champion.at);
        let others = champions.iter().filter(|champion| !is_kept(champion));
        let best: Vec<Roomy> = self
            .kept
            .iter()
            .chain(others)
            .take(most)
            .map(Roomy::from)
            .collect();
        for found in best {
            self.climb(found);
        }
        while self.widely
            && let Some(best) = self.kept.first()
            && best.room >= least + self.may_gain() - ALIKE
        {
            let (rank, found) = (best.rank, Roomy::from(best));
            let round = self.solver.wide_round(&found.point);
            let Some(better) = self.roomier_of(round, &found) else {
                break;
            };
            self.keep(&better.point, &better.sizes, better.room);
            self.climb(better);
            if self.kept.first().is_none_or(|best| best.rank <= rank) {
                break;
            }
        }
    }

    /// Goes on to neighbours with more room for as long as there are any.
    fn climb(&mut self, mut found: Roomy) {
        let mut better = false;
        while let Some(more) = self.roomier_of(self.beside(&found.point, found.sizes), &found) {
            (found, better) = (more, true);
        }
        if better {
            self.keep(&found.point, &found.sizes, found.room);
        }
    }

    /// The first of these that has more room, with as much as it can have.
    fn roomier_of(&mut self, round: Vec<(Point, Option<Sizes>)>, than: &Roomy) -> Option<Roomy> {
        if than.room >= ENOUGH {
            return None;
        }
        let (point, room, sizes) = self.first_with(round, than.room + ALIKE / 4.0)?;
        let (room, sizes) = self.furthest(&point, room, sizes);
        let (point, room, sizes) = if self.widely && self.drifts() {
            self.between(point, room, sizes)
        } else {
            (point, room, sizes)
        };
        Some(Roomy { point, room, sizes })
    }

    /// Takes the place of the one with the same bore, pin and kind of row, if it is better.
    pub(super) fn champion(&mut self, found: &Found) {
        let mut champions = self.champions.iter_mut();
        match champions.find(|other| other.class() == found.class()) {
            Some(other) if other.rank < found.rank => *other = found.clone(),
            Some(_) => {}
            None => self.champions.push(found.clone()),
        }
    }
}
