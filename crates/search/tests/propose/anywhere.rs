//! Rivals that climb from anywhere that the search goes over, against the proposals: those drawn near
//! the proposals stand where the search looked.

use latchwright_model::Design;
use latchwright_search::propose::{
    Kind, Proposal, Wishes, at_choice, grid_of, room_to_spare, unmet,
};
use rand::RngExt;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

use crate::random::{beats, neighbour};
use crate::{each, lids};

/// Places that are drawn for each proposal.
fn places() -> u32 {
    if lids() > 100 { 8_000 } else { 800 }
}

/// The best of them, which climb.
const CLIMBERS: usize = 5;

/// Designs that each climber tries.
const TRIALS: u32 = 200;

/// Less room than this is never proven.
const LEAST: f64 = -0.05;

/// What a climber goes after.
fn worth(kind: Kind, design: &Design) -> Option<(f64, f64)> {
    let room = room_to_spare(design)?.0;
    let settings = design.dials.iter().map(|dial| f64::from(dial.positions));
    Some(match kind {
        Kind::Roomiest => (room, 0.0),
        _ if room < LEAST => return None,
        Kind::MostSettings => (settings.product(), room),
        Kind::Smallest => (-design.plate.width * design.plate.depth, room),
    })
}

/// Latches at places drawn at random, the best last.
fn starts(rng: &mut ChaCha8Rng, wishes: &Wishes, proposal: &Proposal) -> Vec<Design> {
    let kind = proposal.kind;
    let grid = grid_of(wishes);
    let plate = &wishes.base.plate;
    let mut found: Vec<(f64, Design)> = Vec::new();
    for _ in 0..places() {
        let place: (f64, f64) = (rng.random(), rng.random());
        let (wishes, room) = match kind {
            Kind::Roomiest => (wishes.clone(), (0.7 * proposal.room_to_spare).max(0.0)),
            Kind::MostSettings => (wishes.clone(), 0.0),
            Kind::Smallest => {
                // a lid a little smaller or a little larger
                let area = proposal.area * rng.random_range(0.9..1.1);
                let on = |length: f64| (length / grid.lid).round() * grid.lid;
                let width = on(rng.random_range(0.3..1.0) * plate.width);
                let depth = on(area / width);
                if depth > plate.depth || depth < 30.0 {
                    continue;
                }
                (wishes.clone().with_lid(width, depth), 0.0)
            }
        };
        let free = kind == Kind::MostSettings;
        if let Some(design) = at_choice(&wishes, free, place.0, place.1, room)
            && let Some((worth, _)) = worth(kind, &design)
        {
            found.push((worth, design));
        }
    }
    found.sort_by(|one, other| one.0.total_cmp(&other.0));
    let best = found.split_off(found.len().saturating_sub(CLIMBERS));
    best.into_iter().map(|(_, design)| design).collect()
}

#[test]
fn no_proposal_is_beaten_by_rivals_that_climb_from_anywhere() {
    let (mut climbed, mut beaten, mut all) = (0_u32, Vec::new(), 0_u32);
    each(|number, wishes, proposals| {
        let mut rng = ChaCha8Rng::seed_from_u64(55_000 + number);
        for proposal in proposals {
            all += 1;
            let kind = proposal.kind;
            let mut said = None;
            for mut best in starts(&mut rng, wishes, proposal) {
                climbed += 1;
                let mut least = worth(kind, &best);
                for trial in 0..TRIALS {
                    let way = if trial % 3 == 0 { kind } else { Kind::Roomiest };
                    let other = neighbour(&mut rng, wishes, &best, way);
                    let now = worth(kind, &other);
                    if now >= least && now.is_some() && unmet(wishes, &other).is_empty() {
                        (best, least) = (other, now);
                    }
                }
                said = said.or_else(|| beats(kind, proposal, &best));
            }
            if let Some(said) = said {
                let before = (proposal.room_to_spare, proposal.settings, proposal.area);
                beaten.push(format!("{number}: {before:?} by {said}"));
                println!("{}", beaten[beaten.len() - 1]);
            }
        }
    });
    println!("{climbed} climbers against {all} proposals");
    assert!(climbed > all, "only {climbed}");
    assert!(beaten.is_empty(), "{} of {all} beaten", beaten.len());
}
