//! Dials that hold together where none of them does alone.
//!
//! A dial may surely stop its pin on plain rim, and yet leave too little of the tab: because the
//! slider may turn about that pin and lift the far corner of the tab. Where two dials stop it, it
//! cannot turn about both. Only dials that are surely stopped count here: a pin that may meet a mouth
//! can turn its disc and is stopped by nothing the next moment.

use itertools::Itertools;
use latchwright_geometry::EPSILON;

use crate::verdict::{DialProof, SureStop, Verdict};
use crate::worst::figure::StoppedTogether;
use crate::worst::judge::ExactJudge;
use crate::worst::over_year::LatchOverYear;

/// Groups that are looked at; beyond, settings stay unsure.
pub const MAX_GROUPS: usize = 64;

/// Dials that hold together, each stopped in its own way.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// Dials from 0, in order, and what stops each.
    pub stops: Vec<(usize, SureStop)>,
    /// Tab beyond what is required, mm, in the worst box.
    pub margin: f64,
    /// How many settings this group alone decides.
    pub settings: u128,
}

/// All groups that hold together.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HeldTogether {
    /// The groups.
    pub groups: Vec<Group>,
    /// There were more ways to hold together than [`MAX_GROUPS`]: the rest stayed unsure.
    pub too_many: bool,
}

impl HeldTogether {
    /// Looks for groups of dials that hold together.
    pub fn of(
        over_year: &LatchOverYear<'_>,
        dials: &[DialProof],
        exact: &[Option<ExactJudge<'_>>],
        least_hold: f64,
    ) -> Self {
        let short: Vec<Vec<SureStop>> = dials.iter().map(stops_short).collect();
        let ways: usize = short
            .iter()
            .fold(1, |ways: usize, stops| ways.saturating_mul(stops.len() + 1));
        if short.iter().filter(|stops| !stops.is_empty()).count() < 2 {
            return Self::default();
        }
        if ways > MAX_GROUPS {
            return Self {
                groups: Vec::new(),
                too_many: true,
            };
        }
        let choices = short
            .iter()
            .map(|stops| core::iter::once(None).chain(stops.iter().copied().map(Some)))
            .multi_cartesian_product();
        let mut groups: Vec<Group> = Vec::new();
        // the smaller first: a dial more stops the slider no later
        let by_size = |choice: &Vec<Option<SureStop>>| choice.iter().flatten().count();
        for choice in choices.sorted_by_key(by_size) {
            let stops: Vec<(usize, SureStop)> = choice
                .iter()
                .enumerate()
                .filter_map(|(dial, stop)| Some((dial, (*stop)?)))
                .collect();
            if stops.len() < 2 {
                continue;
            }
            let of_fewer = groups
                .iter()
                .filter(|group| group.stops.iter().all(|stop| stops.contains(stop)))
                .map(|group| group.margin)
                .reduce(f64::max);
            let margin = of_fewer.or_else(|| margin(over_year, &stops, exact, least_hold));
            if let Some(margin) = margin.filter(|margin| *margin >= EPSILON) {
                groups.push(Group {
                    settings: settings(dials, &choice),
                    stops,
                    margin,
                });
            }
        }
        Self {
            groups,
            too_many: false,
        }
    }

    /// The group that holds this setting, of which no dial holds alone.
    pub fn holding(&self, dials: &[DialProof], marks: &[u16]) -> Option<&Group> {
        if self.groups.is_empty() {
            return None;
        }
        let stops: Vec<(usize, SureStop)> = dials
            .iter()
            .zip(marks)
            .enumerate()
            .filter_map(|(index, (dial, mark))| {
                let mark = dial.marks.get(usize::from(*mark))?;
                let stop = mark.stop.filter(|_| mark.verdict == Verdict::Unsure)?;
                Some((index, stop))
            })
            .collect();
        self.groups.iter().find(|group| group.stops == stops)
    }

    /// How many settings lock only because dials hold together.
    pub fn settings(&self) -> u128 {
        let counts = self.groups.iter().map(|group| group.settings);
        counts.fold(0, u128::saturating_add)
    }
}

/// In which ways a dial surely stops without holding enough.
fn stops_short(dial: &DialProof) -> Vec<SureStop> {
    dial.marks
        .iter()
        .filter(|mark| mark.verdict == Verdict::Unsure)
        .filter_map(|mark| mark.stop)
        .unique()
        .collect()
}

/// Settings in which each dial stands at a mark of its choice, and none holds alone.
fn settings(dials: &[DialProof], choice: &[Option<SureStop>]) -> u128 {
    dials.iter().zip(choice).fold(1, |sum: u128, (dial, stop)| {
        let marks = dial.marks.iter().filter(|mark| match mark.verdict {
            Verdict::Holds => false,
            Verdict::Passes => stop.is_none(),
            Verdict::Unsure => mark.stop == *stop,
        });
        sum.saturating_mul(marks.count() as u128)
    })
}

fn margin(
    over_year: &LatchOverYear<'_>,
    stops: &[(usize, SureStop)],
    exact: &[Option<ExactJudge<'_>>],
    least_hold: f64,
) -> Option<f64> {
    let within: Option<Vec<_>> = stops
        .iter()
        .map(|(dial, stop)| {
            let judge = exact.get(*dial)?.as_ref()?;
            Some((over_year.design.dials.get(*dial)?, judge.within(*stop)?))
        })
        .collect();
    let figure = StoppedTogether {
        over_year,
        stops: &within?,
    };
    let least = figure.least(least_hold + EPSILON)?;
    Some(least.bound - least_hold - EPSILON)
}
