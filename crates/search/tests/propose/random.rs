//! Designs drawn at random, and designs near the proposals, against the proposals.

use latchwright_model::change::Size;
use latchwright_model::{Design, Dial};
use latchwright_proof::slider_body::SliderBody;
use latchwright_proof::{CheckVerdict, prove};
use latchwright_search::propose::{
    Grid, Kind, Proposal, Wishes, at_choice, grid_of, room_to_spare, unmet,
};
use rand::RngExt;
use rand::SeedableRng;
use rand::seq::IndexedRandom;
use rand_chacha::ChaCha8Rng;

use crate::{each, one_of};

/// The share by which a proposal may be beaten in room to spare and in area: no maker notices it.
pub(crate) const EASED: f64 = 0.05;

/// The room to spare that is as good as this one: a twentieth less, or what counts as alike and a search
/// by halving leaves where there is hardly any.
pub(crate) fn eased_room(room: f64) -> f64 {
    room - (EASED * room).max(0.015)
}

/// How many settings a latch has with one seat less on the dial that has the most marks: marks come in as
/// many as its post has flats, so that this is the least by which two latches differ.
pub(crate) fn a_seat_poorer(design: &Design) -> u128 {
    let marks = |dial: &Dial| u128::from(dial.positions);
    let settings: u128 = design.dials.iter().map(marks).product();
    let most = design.dials.iter().max_by_key(|dial| dial.positions);
    most.map_or(settings, |dial| {
        settings / marks(dial) * u128::from(dial.positions - dial.key.sides)
    })
}

/// What a random design is the better by, if it is.
pub(crate) fn beats(kind: Kind, proposal: &Proposal, design: &Design) -> Option<String> {
    let room = room_to_spare(design)?.0;
    let settings: u128 = design
        .dials
        .iter()
        .map(|dial| u128::from(dial.positions))
        .product();
    let area = design.plate.width * design.plate.depth;
    let better = match kind {
        Kind::Roomiest => eased_room(room) > proposal.room_to_spare && room < 3.0,
        Kind::MostSettings => a_seat_poorer(design) > proposal.settings && room > -0.05,
        Kind::Smallest => (1.0 + EASED) * area < proposal.area - 1e-6 && room > -0.05,
    };
    (better && prove(design).proven)
        .then(|| format!("{kind:?}: room {room}, {settings} settings, {area} mm²"))
}

/// A design near `from`: one to five of its sizes some steps of the grid elsewhere.
pub(crate) fn neighbour(
    rng: &mut ChaCha8Rng,
    wishes: &Wishes,
    from: &Design,
    kind: Kind,
) -> Design {
    let grid = grid_of(wishes);
    let mut design = from.clone();
    let far = one_of(rng, &[1, 1, 2, 4, 10]);
    for _ in 0..rng.random_range(1..=5) {
        let by = f64::from(rng.random_range(-far..=far));
        let (size, place) = (by * grid.size, by * grid.place);
        match rng.random_range(0..15) {
            0 => design.slider.travel += size,
            1 => design.tab.engagement += size,
            2 => {
                design.tab.width += by * grid.lid;
                design.keeper.width = design.tab.width + 16.0;
            }
            3 => each_dial(&mut design, |dial| dial.disc.radius += size),
            4 => each_dial(&mut design, |dial| dial.pin.gap += size),
            5 => each_dial(&mut design, |dial| dial.disc.slots[0].width += size),
            6 => each_dial(&mut design, |dial| dial.disc.slots[0].depth += size),
            7 => each_dial(&mut design, |dial| dial.disc.slots[0].lead_in += size.abs()),
            8 => {
                let number = rng.random_range(0..design.dials.len());
                design.dials[number].centre.0 += place;
            }
            9 => {
                let number = rng.random_range(0..design.dials.len());
                design.dials[number].centre.1 += place;
            }
            10 => each_dial(&mut design, |dial| dial.centre.1 += place),
            13 => each_dial(&mut design, |dial| dial.knob.diameter += size),
            11 => {
                let share = 1.0 + by / 40.0;
                each_dial(&mut design, |dial| {
                    dial.centre.0 = (dial.centre.0 * share / grid.place).round() * grid.place;
                });
            }
            12 => {
                let bore = one_of(rng, &wishes.base.bench.bits);
                each_dial(&mut design, |dial| {
                    dial.bore.diameter = bore;
                    let round = bore / 2.0 - dial.bore.shaft_play - 0.5;
                    let half = std::f64::consts::PI / f64::from(dial.key.sides);
                    dial.key.apothem = (round * half.cos() / grid.size).floor() * grid.size;
                    let least = ((bore + 8.0) / grid.size).ceil() * grid.size;
                    dial.knob.diameter = dial.knob.diameter.max(least);
                });
            }
            _ => {
                let pin = one_of(rng, &wishes.pins);
                each_dial(&mut design, |dial| dial.pin.diameter = pin);
            }
        }
    }
    match kind {
        Kind::Roomiest => {}
        Kind::MostSettings => {
            let number = rng.random_range(0..design.dials.len());
            let sides = design.dials[number].key.sides;
            design.dials[number].positions += sides;
        }
        Kind::Smallest => {
            let by = -grid.lid;
            if rng.random() {
                design.plate.width += by;
                design.inside.width += by;
            } else {
                design.plate.depth += by;
                design.inside.depth += by;
            }
        }
    }
    longest_guide(&mut design, grid);
    design
}

/// Gives it a guide as long as it can be.
fn longest_guide(design: &mut Design, grid: Grid) {
    let from = ((design.keeper.edge + 1.5) / grid.size).ceil() * grid.size;
    for _ in 0..40 {
        // the strips, longer by the travel, end before the corners of the bar, and half a millimetre
        let length = SliderBody::of(design).bar_min.y - 3.5 - design.slider.travel - from;
        let length = (length / grid.place).floor() * grid.place;
        if length == design.slider.guide_length || length < 1.0 {
            break;
        }
        design.slider.guide_length = length;
        design.slider.guide_at.1 = from + length / 2.0;
    }
}

fn each_dial(design: &mut Design, mut change: impl FnMut(&mut latchwright_model::Dial)) {
    for dial in &mut design.dials {
        change(dial);
    }
}

/// Which sizes differ.
fn moved(from: &Design, to: &Design) -> String {
    let sizes = Size::all(from).into_iter();
    let differ = sizes.filter_map(|size| {
        let (was, now) = (size.get(from)?, size.get(to)?);
        (was != now).then(|| format!("{size:?} {was} to {now}"))
    });
    differ.collect::<Vec<_>>().join(", ")
}

/// Where the plain sums promised more than the proof, the search would go after what is never proven and
/// pass over what is.
#[test]
fn what_the_search_takes_for_sure_is_proven_wherever_it_looks() {
    let (mut sure, mut refused) = (0_u32, Vec::new());
    for number in 0..crate::lids() {
        let wishes = crate::wishes(number);
        let mut rng = ChaCha8Rng::seed_from_u64(77_000 + number);
        for _ in 0..400 {
            let place: (f64, f64) = (rng.random(), rng.random());
            let Some(design) = at_choice(&wishes, rng.random(), place.0, place.1, 0.0) else {
                continue;
            };
            sure += 1;
            let proof = prove(&design);
            if !proof.proven {
                let checks = proof.checks.iter();
                let failed = checks.filter(|check| check.verdict != CheckVerdict::Passes);
                let names: Vec<&str> = failed.map(|check| check.kind.code()).collect();
                refused.push(format!("{number} at {place:?}: {}", names.join(", ")));
            }
        }
    }
    println!("{sure} places");
    assert!(sure > 8 * u32::try_from(crate::lids()).unwrap(), "{sure}");
    assert!(refused.is_empty(), "{}", refused.join("\n"));
}

#[test]
fn no_proposal_is_beaten_by_two_thousand_random_designs() {
    let (mut tried, mut beaten, mut all) = (0_u32, Vec::new(), 0_u32);
    each(|number, wishes, proposals| {
        let mut rng = ChaCha8Rng::seed_from_u64(1_000 + number);
        for proposal in proposals {
            all += 1;
            for _ in 0..2_000 {
                let start = &proposals.choose(&mut rng).unwrap().design;
                let from = if rng.random_ratio(3, 4) {
                    &proposal.design
                } else {
                    start
                };
                let other = neighbour(&mut rng, wishes, from, proposal.kind);
                if !unmet(wishes, &other).is_empty() {
                    continue;
                }
                tried += 1;
                if let Some(said) = beats(proposal.kind, proposal, &other) {
                    let before = (proposal.room_to_spare, proposal.settings, proposal.area);
                    let moved = moved(&proposal.design, &other);
                    beaten.push(format!("{number}: {before:?} by {said}: {moved}"));
                    println!("{}", beaten[beaten.len() - 1]);
                    break;
                }
            }
        }
    });
    println!("{tried} designs within the demands against {all} proposals");
    assert!(tried > 500 * all / 4, "only {tried}");
    assert!(
        beaten.is_empty(),
        "{} of {all} beaten:
{}",
        beaten.len(),
        beaten.join(
            "
"
        )
    );
}
