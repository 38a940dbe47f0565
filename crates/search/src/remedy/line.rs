//! Going one way from a design: how far it helps, and how far is far enough.

use super::aim::{Aim, Near};
use super::price::{Price, Trial};
use super::trials::Trials;
use super::way::{Moves, Way};
use latchwright_model::Design;
use latchwright_model::change::Change;

/// Where each way is tried, in steps of the maker's grid: the first shows whether it helps at once, the
/// others how far it does. The first larger, and what is off by less is bracketed by more halving; fewer,
/// and what helps only a while between two is passed over.
const PLACES: [i64; 9] = [8, 24, 64, 140, 240, 500, 1_000, 2_000, 3_000];

/// Where a way that does not help at once is looked at again: a dial that is idle only turns after a while.
/// Nearer, and it is missed; further, and most ways end before it.
const FURTHER_ON: i64 = 64;

/// The same where marks or slots are counted.
const COUNTS: [i64; 6] = [1, 2, 3, 4, 6, 9];

/// The same on a dial with a fault, in equal steps: no margin says how far it is to where there is none,
/// nor how narrow the room is there. Wider, and a lead-in below zero is put past its wall; narrower, and
/// the proofs add up.
const OUT_OF_A_FAULT: [i64; 13] = [8, 16, 24, 32, 40, 48, 56, 64, 72, 80, 140, 240, 500];

/// How far a way is gone for one check, as a share of what it seems to need. Less, and a figure that bends
/// falls short again; more, and the least step is looked for in more places.
const MORE_THAN_NEEDED: f64 = 1.25;

/// Places that are looked at most for the best between three. Fewer, and a narrow room between two faults
/// is missed; more, and a peak that stays too low takes proofs from other ways.
const MOST_HALVINGS: usize = 10;

/// A search for the cheapest change that reaches an aim.
pub(super) struct Search<'a, 't> {
    pub original: &'a Design,
    pub trials: &'a mut Trials<'t>,
    /// The cheapest that reached its aim so far.
    pub best: Option<Trial>,
    /// Whether this change may be made at all.
    allows: &'a dyn Fn(&Change) -> bool,
}

/// What some moves made of the original, from where every way is gone.
pub(super) struct Start<'a> {
    pub trial: &'a Trial,
    pub design: Design,
    aim: Aim,
    near: Near,
}

impl<'a> Start<'a> {
    pub fn new(original: &Design, trial: &'a Trial, aim: Aim) -> Self {
        let design = trial.price.change.apply(original);
        let near = aim.near(&design, &trial.proof);
        Self {
            trial,
            design,
            aim,
            near,
        }
    }

    /// The place where it is.
    pub fn here(&self) -> Place {
        Place {
            steps: 0,
            near: self.near,
        }
    }

    /// Where a way is tried from here.
    fn places(&self, way: &Way) -> &'static [i64] {
        match way {
            Way::Move(sizes) => {
                let mut faults = self.trial.proof.faults.iter();
                let dial = sizes.0.first().and_then(|moving| moving.size.dial());
                let on_it =
                    |dial| faults.any(|fault| fault.is_error() && fault.dial() == Some(dial));
                if dial.is_some_and(on_it) {
                    &OUT_OF_A_FAULT
                } else {
                    &PLACES
                }
            }
            Way::Fewer(_) => &COUNTS,
            Way::Once(_) => &COUNTS[..1],
        }
    }
}

/// So many steps along a way, and how near that comes.
#[derive(Clone, Copy)]
pub(super) struct Place {
    pub steps: i64,
    pub near: Near,
}

impl Place {
    fn is_enough(&self) -> bool {
        self.near.reached || self.near.figure >= 0.0
    }
}

/// One way, as far as it was gone.
pub(super) struct Line<'w> {
    pub way: &'w Way,
    /// Where it was looked at, the start first.
    pub places: Vec<Place>,
    last: Place,
    over: bool,
}

impl Line<'_> {
    pub fn gains(&self) -> bool {
        self.places.iter().skip(1).any(|place| place.near.gains)
    }

    /// Whether it was looked at, and does not help at once.
    pub fn is_idle(&self) -> bool {
        self.places.len() > 1 && !self.gains()
    }

    /// How many steps it should take, if it goes on as it began; `None` where it does not help.
    pub fn needed(&self) -> Option<f64> {
        let short = -self.places.first()?.near.figure;
        let gained = self.last.near.figure + short;
        (gained > 0.0).then(|| short / gained * self.last.steps as f64)
    }
}

impl<'a, 't> Search<'a, 't> {
    pub fn new(
        original: &'a Design,
        trials: &'a mut Trials<'t>,
        allows: &'a dyn Fn(&Change) -> bool,
    ) -> Self {
        Self {
            original,
            trials,
            best: None,
            allows,
        }
    }

    /// What these moves cost; `None` where they cannot or may not be gone, or cost no less than the best.
    fn price(&self, moves: Moves) -> Option<Price> {
        let price = Price::of(moves, self.original)?;
        let best = self.best.as_ref();
        let cheaper = best.is_none_or(|best| price.order(&best.price).is_lt());
        (cheaper && (self.allows)(&price.change)).then_some(price)
    }

    /// What these moves lead to; `None` where they have no price, or the search is over.
    pub fn trial(&mut self, moves: Moves) -> Option<Trial> {
        let price = self.price(moves)?;
        let best = self.best.as_ref().map(|best| &best.price.change);
        let proof = self
            .trials
            .prove(&price.change.apply(self.original), best)?;
        Some(Trial { price, proof })
    }

    /// Looks at a place so many steps along a way, which is kept if it reaches the aim.
    pub fn look(&mut self, start: &Start<'_>, way: &Way, steps: i64) -> Option<Place> {
        let trial = self.trial(start.trial.price.moves.and(way, steps))?;
        let design = trial.price.change.apply(self.original);
        let near = start.aim.near(&design, &trial.proof);
        if near.reached {
            self.best = Some(trial);
        }
        Some(Place { steps, near })
    }

    /// The first place along a way, or one before it where that leads into a fault.
    pub fn begin<'w>(&mut self, start: &Start<'_>, way: &'w Way) -> Line<'w> {
        let here = start.here();
        let mut line = Line {
            way,
            places: vec![here],
            last: here,
            over: false,
        };
        let mut first = start.places(way).first().copied().unwrap_or(1);
        if !start.aim.is_whole() {
            // about as far as the check is short, in twentieths of a millimetre
            first = first.min(whole(-start.near.figure * 20.0)).max(1);
        }
        self.go(start, &mut line, first);
        while line.last.near.is_lost() && !start.near.is_lost() && first > 1 {
            first /= 2;
            (line.last, line.over) = (here, false);
            line.places.truncate(1);
            self.go(start, &mut line, first);
        }
        line
    }

    /// Goes on along a way as long as it may lead somewhere.
    pub fn follow(&mut self, start: &Start<'_>, line: &mut Line<'_>) {
        for place in start.places(line.way) {
            if *place <= line.last.steps {
                continue;
            }
            // the margin of one check mostly goes straight up; of many, each has its own best place
            let needed = line.needed().filter(|_| !start.aim.is_whole());
            let enough = needed.map_or(0, |needed| whole(MORE_THAN_NEEDED * needed));
            self.go(start, line, enough.max(*place));
        }
    }

    /// Looks further on along a way that does not help at once, and says whether it does there.
    pub fn further_on(&mut self, start: &Start<'_>, line: &mut Line<'_>) -> bool {
        self.go(start, line, FURTHER_ON);
        line.gains()
    }

    /// Looks at one place further on, or the last before it that has a price.
    fn go(&mut self, start: &Start<'_>, line: &mut Line<'_>, wanted: i64) {
        if line.over {
            return;
        }
        line.over = true;
        let before = line.last;
        let moves = &start.trial.price.moves;
        let ends = |steps| self.price(moves.and(line.way, steps)).is_none();
        let steps = if ends(wanted) {
            first_that(before.steps, wanted, |steps| Some(ends(steps))).unwrap_or(wanted) - 1
        } else {
            wanted
        };
        if steps == before.steps {
            return;
        }
        let Some(here) = self.look(start, line.way, steps) else {
            return;
        };
        line.places.push(here);
        line.last = here;
        if here.is_enough() {
            self.least(start, line.way, before, here);
        } else if let [.., low, peak, high] = line.places.as_slice()
            && peak.near.figure > high.near.figure
            && peak.near.figure >= low.near.figure
        {
            self.at_peak(start, line.way, [*low, *peak, *high]);
        } else {
            let in_vain = !line.gains() && line.places.len() > 2;
            line.over = in_vain || steps < wanted;
        }
    }

    /// Between a place that is short and one that is enough, the nearest that is: first where all that is
    /// aimed at passes, and once one was met that reaches the aim, where it is reached.
    pub fn least(&mut self, start: &Start<'_>, way: &Way, mut short: Place, mut enough: Place) {
        let mut wants_all = enough.near.reached;
        // on a straight line, then just before that place, then by half: a figure that bends makes guesses creep
        let mut turns = [Some(0), Some(1), None].into_iter().cycle();
        while enough.steps - short.steps > 1 {
            let (missing, spare) = (-short.near.figure, enough.near.figure);
            let width = enough.steps - short.steps;
            let ahead = match turns.next().flatten() {
                Some(before) if missing > 0.0 && spare > 0.0 => {
                    whole(missing / (missing + spare) * width as f64) - before
                }
                Some(_) | None => width / 2,
            };
            let at = (short.steps + ahead).clamp(short.steps + 1, enough.steps - 1);
            let Some(here) = self.look(start, way, at) else {
                return;
            };
            wants_all |= here.near.reached;
            if here.near.reached || !wants_all && here.is_enough() {
                enough = here;
            } else {
                short = here;
            }
        }
    }

    /// Round the middle one of three places, which is nearest of them, one where all passes: what fails on
    /// one side of it may fail on the other side as well, as a pin beside its slot does.
    fn at_peak(&mut self, start: &Start<'_>, way: &Way, [mut low, mut peak, mut high]: [Place; 3]) {
        for _ in 0..MOST_HALVINGS {
            let (behind, ahead) = (peak.steps - low.steps, high.steps - peak.steps);
            // as it rises on one side and falls on the other, it cannot be above both lines
            let slope =
                |to: Place, steps: i64| (peak.near.figure - to.near.figure) / steps.max(1) as f64;
            let above = |slope: f64, steps: i64| peak.near.figure + slope * steps as f64 >= 0.0;
            let hope = above(slope(low, behind), ahead) || above(slope(high, ahead), behind);
            let side = if ahead >= behind { high } else { low };
            if !hope || (side.steps - peak.steps).abs() <= 1 {
                return;
            }
            let at = i64::midpoint(peak.steps, side.steps);
            let Some(here) = self.look(start, way, at) else {
                return;
            };
            let is_ahead = at > peak.steps;
            if here.is_enough() {
                let before = if is_ahead { peak } else { low };
                self.least(start, way, before, here);
                return;
            }
            match (here.near.figure > peak.near.figure, is_ahead) {
                (true, true) => (low, peak) = (peak, here),
                (true, false) => (peak, high) = (here, peak),
                (false, true) => high = here,
                (false, false) => low = here,
            }
        }
    }
}

/// By halves, the first step beyond `low` that is so; `high` is. `None` where nobody can say.
pub(super) fn first_that(
    mut low: i64,
    mut high: i64,
    mut is: impl FnMut(i64) -> Option<bool>,
) -> Option<i64> {
    while high - low > 1 {
        let middle = i64::midpoint(low, high);
        if is(middle)? {
            high = middle;
        } else {
            low = middle;
        }
    }
    Some(high)
}

/// The next whole number of steps.
fn whole(steps: f64) -> i64 {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "kept within a million, and nothing for no number"
    )]
    let whole = steps.clamp(0.0, 1e6).ceil() as i64;
    whole
}
