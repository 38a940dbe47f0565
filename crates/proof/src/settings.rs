//! All settings, one after another, in a fixed order, without ever holding more than one.
//!
//! Order: like a counter, the last dial runs fastest. A filter skips whole branches that cannot
//! hold a match, so that the one setting of 360^12 that opens is found at once.

use crate::together::HeldTogether;
use crate::verdict::{DialProof, Verdict};

/// One setting with its verdict.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Setting<'a> {
    /// The mark of each dial.
    pub marks: &'a [u16],
    /// What can be promised of it.
    pub verdict: Verdict,
    /// The dial that decides, from 0: for a setting that locks the dial that holds most surely, for
    /// one that opens the dial with the least clearance, for an unsure one the dial nearest to a
    /// promise. The lowest numbered of equals.
    pub decided_by: usize,
    /// That dial's margin, mm.
    pub margin: f64,
}

/// What is known of the dials up to one.
#[derive(Debug, Clone, Copy)]
struct Prefix {
    /// Most surely holding dial, if any holds.
    held: Option<(usize, f64)>,
    /// Nearest unsure dial, if any is unsure.
    unsure: Option<(usize, f64)>,
    /// Tightest passing dial.
    passes: (usize, f64),
}

const NOTHING: Prefix = Prefix {
    held: None,
    unsure: None,
    passes: (0, f64::INFINITY),
};

impl Prefix {
    fn with(self, dial: usize, verdict: Verdict, margin: f64) -> Self {
        let mut next = self;
        let more = |before: Option<(usize, f64)>| {
            before
                .is_none_or(|(_, best)| margin > best)
                .then_some((dial, margin))
                .or(before)
        };
        match verdict {
            Verdict::Holds => next.held = more(self.held),
            Verdict::Unsure => next.unsure = more(self.unsure),
            Verdict::Passes => {
                if margin < self.passes.1 {
                    next.passes = (dial, margin);
                }
            }
        }
        next
    }

    fn verdict(&self) -> (Verdict, (usize, f64)) {
        match (self.held, self.unsure) {
            (Some(by), _) => (Verdict::Holds, by),
            (None, Some(by)) => (Verdict::Unsure, by),
            (None, None) => (Verdict::Passes, self.passes),
        }
    }
}

/// What can be promised of a whole setting, of which each dial is known.
fn conclude<'a>(
    prefix: &Prefix,
    dials: &[DialProof],
    together: Option<&HeldTogether>,
    marks: &'a [u16],
) -> Setting<'a> {
    let (mut verdict, (mut decided_by, mut margin)) = prefix.verdict();
    if verdict == Verdict::Unsure
        && let Some(group) = together.and_then(|together| together.holding(dials, marks))
    {
        verdict = Verdict::Holds;
        margin = group.margin;
        decided_by = group.stops.first().map_or(decided_by, |(dial, _)| *dial);
    }
    Setting {
        marks,
        verdict,
        decided_by,
        margin,
    }
}

/// What can be promised of the setting with these marks; `None` unless it has one mark of each
/// dial, and at least one dial.
pub fn setting<'a>(
    dials: &[DialProof],
    together: &HeldTogether,
    marks: &'a [u16],
) -> Option<Setting<'a>> {
    if dials.is_empty() || dials.len() != marks.len() {
        return None;
    }
    let mut prefix = NOTHING;
    for (dial, (proof, mark)) in dials.iter().zip(marks).enumerate() {
        let mark = proof.marks.get(usize::from(*mark))?;
        prefix = prefix.with(dial, mark.verdict, mark.margin);
    }
    Some(conclude(&prefix, dials, Some(together), marks))
}

/// Which settings are wanted: in the words of a whole setting, *passes* is *opens* and *holds* is
/// *locks*.
pub type Filter = Option<Verdict>;

/// Walks through all settings of a latch. Not an `Iterator`, because each setting lends its marks
/// from the walk; memory stays the same however many there are.
#[derive(Debug, Clone)]
pub struct Settings<'a> {
    dials: &'a [DialProof],
    together: Option<&'a HeldTogether>,
    filter: Filter,
    /// For each dial, what it and the dials after it can still bring.
    ahead: Vec<Ahead>,
    marks: Vec<u16>,
    prefixes: Vec<Prefix>,
    depth: usize,
    /// The mark of the dial at `depth` to look at next; `None` after the last setting.
    next: Option<usize>,
}

/// What a run of dials up to the last can bring.
#[derive(Debug, Clone, Copy)]
#[expect(
    clippy::struct_excessive_bools,
    reason = "four independent facts, not a state"
)]
struct Ahead {
    /// One of them has a mark that holds.
    holds: bool,
    /// One of them has an unsure mark, and every one has a mark that does not hold.
    unsure: bool,
    /// Every one of them has a mark that does not hold.
    not_held: bool,
    /// Every one of them has a mark that passes.
    passes: bool,
}

impl Ahead {
    /// What no dials at all bring.
    const END: Self = Self {
        holds: false,
        unsure: false,
        not_held: true,
        passes: true,
    };

    fn before(self, dial: &DialProof) -> Self {
        let has = |verdict| dial.marks.iter().any(|mark| mark.verdict == verdict);
        let not_held = dial.marks.iter().any(|mark| mark.verdict != Verdict::Holds);
        Self {
            holds: has(Verdict::Holds) || self.holds,
            unsure: (has(Verdict::Unsure) && self.not_held) || (not_held && self.unsure),
            not_held: not_held && self.not_held,
            passes: has(Verdict::Passes) && self.passes,
        }
    }
}

impl<'a> Settings<'a> {
    /// All settings of these dials that the filter wants.
    pub fn new(dials: &'a [DialProof], filter: Filter) -> Self {
        let mut ahead = vec![Ahead::END];
        for dial in dials.iter().rev() {
            ahead.push(ahead[ahead.len() - 1].before(dial));
        }
        ahead.reverse();
        Self {
            dials,
            together: None,
            filter,
            ahead,
            marks: vec![0; dials.len()],
            prefixes: vec![NOTHING; dials.len() + 1],
            depth: 0,
            next: Some(0),
        }
    }

    /// The same walk, with dials that hold together counted as holding.
    #[must_use]
    pub fn with(mut self, together: &'a HeldTogether) -> Self {
        self.together = Some(together).filter(|together| !together.groups.is_empty());
        self
    }

    /// Whether the dials from `depth` on can still make what the filter wants of this beginning.
    fn can_match(&self, depth: usize, prefix: &Prefix) -> bool {
        let ahead = self.ahead[depth];
        let free = prefix.held.is_none();
        match self.filter {
            None => true,
            Some(Verdict::Holds) => {
                let unsure = prefix.unsure.is_some() || ahead.unsure;
                !free || ahead.holds || (unsure && self.together.is_some())
            }
            Some(Verdict::Passes) => free && prefix.unsure.is_none() && ahead.passes,
            Some(Verdict::Unsure) if prefix.unsure.is_some() => free && ahead.not_held,
            Some(Verdict::Unsure) => free && ahead.unsure,
        }
    }

    /// The next setting, or `None` after the last.
    pub fn next_setting(&mut self) -> Option<Setting<'_>> {
        let last = self.dials.len().checked_sub(1)?;
        // left empty whenever the walk ends, so that the end stays the end
        let mut mark = self.next.take()?;
        loop {
            let Some(proof) = self.dials[self.depth].marks.get(mark) else {
                // this dial is through: back to the one before
                self.depth = self.depth.checked_sub(1)?;
                mark = usize::from(self.marks[self.depth]) + 1;
                continue;
            };
            let prefix = self.prefixes[self.depth].with(self.depth, proof.verdict, proof.margin);
            if !self.can_match(self.depth + 1, &prefix) {
                mark += 1;
                continue;
            }
            self.marks[self.depth] = u16::try_from(mark).unwrap_or(u16::MAX);
            if self.depth == last {
                let setting = conclude(&prefix, self.dials, self.together, &self.marks);
                if self.together.is_some()
                    && self.filter.is_some_and(|wanted| wanted != setting.verdict)
                {
                    mark += 1;
                    continue;
                }
                self.next = Some(mark + 1);
                // a second time, because what is returned must not be borrowed in the loop
                return Some(conclude(&prefix, self.dials, self.together, &self.marks));
            }
            self.depth += 1;
            self.prefixes[self.depth] = prefix;
            mark = 0;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::count::count;
    use crate::verdict::{MarkProof, Reach, StopsAt};

    fn dial(verdicts: &[Verdict]) -> DialProof {
        let mark = |(index, verdict): (usize, &Verdict)| MarkProof {
            verdict: *verdict,
            reach: Reach {
                travel: 8.0,
                stops_at: StopsAt::Free,
                contact: None,
            },
            stop: None,
            creep: None,
            hold_margin: None,
            margin: index as f64,
        };
        DialProof {
            digit: 0,
            marks: verdicts.iter().enumerate().map(mark).collect(),
            sure_window_deg: 0.0,
            possible_window_deg: 0.0,
        }
    }

    fn all(dials: &[DialProof], filter: Filter) -> Vec<(Vec<u16>, Verdict)> {
        let mut walk = Settings::new(dials, filter);
        let mut found = Vec::new();
        while let Some(setting) = walk.next_setting() {
            found.push((setting.marks.to_vec(), setting.verdict));
        }
        assert!(walk.next_setting().is_none(), "the end is the end");
        found
    }

    use Verdict::{Holds, Passes, Unsure};

    #[test]
    fn the_walk_agrees_with_the_counts_for_every_small_latch() {
        let kinds = [Passes, Holds, Unsure];
        for code in 0..3_usize.pow(6) {
            let verdict = |n: u32| kinds[code / 3_usize.pow(n) % 3];
            let dials = [
                dial(&[verdict(0), verdict(1)]),
                dial(&[verdict(2)]),
                dial(&[verdict(3), verdict(4), verdict(5)]),
            ];
            let counts = count(&dials);
            let every = all(&dials, None);
            assert_eq!(every.len() as u128, counts.total);
            for (filter, expected) in [
                (Passes, counts.opens),
                (Holds, counts.locks),
                (Unsure, counts.unsure),
            ] {
                let filtered = all(&dials, Some(filter));
                assert_eq!(filtered.len() as u128, expected, "{code} {filter:?}");
                let by_hand: Vec<_> = every
                    .iter()
                    .filter(|(_, verdict)| *verdict == filter)
                    .cloned()
                    .collect();
                assert_eq!(filtered, by_hand);
            }
        }
    }

    #[test]
    fn the_last_dial_runs_fastest() {
        let dials = [dial(&[Holds, Holds]), dial(&[Holds, Holds, Holds])];
        let order: Vec<Vec<u16>> = all(&dials, None)
            .into_iter()
            .map(|(marks, _)| marks)
            .collect();
        assert_eq!(order[..4], [vec![0, 0], vec![0, 1], vec![0, 2], vec![1, 0]]);
    }

    #[test]
    fn the_one_opening_of_360_to_the_twelfth_is_found_at_once() {
        let mut verdicts = [Holds; 360];
        verdicts[217] = Passes;
        let dials = vec![dial(&verdicts); 12];
        assert_eq!(count(&dials).total, 360_u128.pow(12));
        assert_eq!(count(&dials).locks, 360_u128.pow(12) - 1);
        assert_eq!(all(&dials, Some(Passes)), [(vec![217; 12], Passes)]);
    }

    #[test]
    fn a_latch_without_dials_has_no_settings() {
        assert!(all(&[], None).is_empty());
        assert_eq!(count(&[]).total, 0);
    }
}
