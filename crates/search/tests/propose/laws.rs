//! Laws: more to work with is never worse, mirrored is the same, whoever runs it and however.

use std::ops::ControlFlow;

use latchwright_model::change::{DialSize, LatchSize, Size};
use latchwright_model::{Design, LidKind, Material, PinMake, Season};
use latchwright_proof::prove;
use latchwright_search::Progress;
use latchwright_search::propose::{
    Demand, DialWish, Kind, Marks, Outcome, Proposal, Wishes, better, grid_of, others, propose,
    room_to_spare, unmet,
};

use crate::random::{EASED, a_seat_poorer, eased_room};
use crate::{hunted, lids, numbers, proposals, wishes};

/// The same wishes with one thing made better.
fn eased(wishes: &Wishes, number: u64) -> (&'static str, Wishes) {
    let mut eased = wishes.clone();
    let (width, depth) = (wishes.base.plate.width, wishes.base.plate.depth);
    let work = &mut eased.base.workmanship;
    let name = match number % 11 {
        0 => {
            eased = eased.with_lid(width + 37.0, depth);
            "a wider lid"
        }
        1 => {
            eased = eased.with_lid(width, depth + 40.0);
            "a deeper lid"
        }
        2 => {
            eased.base.bench.bits.extend([11.0, 13.0, 17.0]);
            eased.pins.push(3.5);
            "more bits and pins"
        }
        3 => {
            (work.bore_place, work.pin_place) = (work.bore_place / 2.0, work.pin_place / 2.0);
            "finer places"
        }
        4 => {
            work.reading /= 2.0;
            "finer reading"
        }
        5 => {
            for dial in &mut eased.dials {
                if let Marks::AtLeast(marks) = &mut dial.marks {
                    *marks = (*marks - 1).max(2);
                }
            }
            "fewer marks"
        }
        6 => {
            eased.base.season = Season::still(eased.base.season.built);
            "a season that stands still"
        }
        7 => {
            for dial in &mut eased.dials {
                *dial = DialWish::numbered(dial.marks.number());
            }
            "figures for words"
        }
        8 => {
            eased.base.inside.width += 3.0;
            eased.base.inside.depth += 3.0;
            "thinner walls"
        }
        9 if eased.dials.len() > 1 => {
            let away = usize::try_from(number).expect("a small number") % eased.dials.len();
            eased.dials.remove(away);
            eased.base.combination.clear();
            "a dial fewer"
        }
        _ => {
            (work.print, work.film_spread) = (work.print / 2.0, work.film_spread / 2.0);
            work.keeper_place /= 2.0;
            "finer prints, coats and keeper"
        }
    };
    (name, eased)
}

/// Numbers at which more to work with once made the best worse: a local search stopped early where slider and plate
/// drift, more marks were not tried on some dials alone, and a lid off the steps was not made smaller.
const WERE_WORSE: [u64; 4] = [13, 51, 107, 270];

/// The area of this lid, mm², that is as good on the lid given now: one that is as wide or deep as was given
/// need not stand on whole steps as lids do that are found, and where more is given the next step is as good.
fn on_steps(was: &Wishes, now: &Wishes, design: &Design) -> f64 {
    let step = grid_of(was).lid;
    let up = |length: f64, was: f64, now: f64| {
        if length == was && now != was {
            (length / step - 1e-9).ceil() * step
        } else {
            length
        }
    };
    let (plate, was, now) = (&design.plate, &was.base.plate, &now.base.plate);
    up(plate.width, was.width, now.width) * up(plate.depth, was.depth, now.depth)
}

#[test]
fn more_to_work_with_never_makes_the_best_worse() {
    let (mut looked_at, mut worse) = (0, Vec::new());
    let also = WERE_WORSE.into_iter().filter(|_| !hunted());
    for number in numbers(lids() * 3).into_iter().chain(also) {
        let wishes = wishes(number);
        let Some(before) = proposals(&wishes) else {
            continue;
        };
        let (name, eased) = eased(&wishes, number);
        let after = proposals(&eased).unwrap_or_default();
        for was in &before {
            let fewer_dials = eased.dials.len() < wishes.dials.len();
            if was.kind == Kind::MostSettings && fewer_dials {
                continue;
            }
            looked_at += 1;
            let now = after.iter().find(|now| now.kind == was.kind);
            let as_good = now.is_some_and(|now| match was.kind {
                Kind::Roomiest => now.room_to_spare >= eased_room(was.room_to_spare.min(2.9)),
                Kind::MostSettings => now.settings >= a_seat_poorer(&was.design),
                Kind::Smallest => {
                    now.area <= (1.0 + EASED) * on_steps(&wishes, &eased, &was.design) + 1e-6
                }
            });
            if !as_good {
                let told = |one: &Proposal| (one.room_to_spare, one.settings, one.area);
                let (was, now, kind) = (told(was), now.map(told), was.kind);
                worse.push(format!("{number}: {kind:?}, {name}: {was:?} to {now:?}"));
                println!("{}", worse[worse.len() - 1]);
            }
        }
    }
    assert!(worse.is_empty(), "{}", worse.join("\n"));
    assert!(looked_at > 10);
}

#[test]
fn dials_in_the_other_order_give_the_mirror_image() {
    for number in numbers(lids() / 2) {
        let mut wishes = wishes(number);
        wishes.base.combination.resize(wishes.dials.len(), 0);
        let mut mirrored = wishes.clone();
        mirrored.dials.reverse();
        mirrored.base.combination.reverse();
        let (one, other) = (proposals(&wishes), proposals(&mirrored));
        assert_eq!(one.is_some(), other.is_some(), "{number}");
        for (one, other) in one.iter().flatten().zip(other.iter().flatten()) {
            assert_eq!(one.kind, other.kind);
            let mut image = one.design.clone();
            image.dials.reverse();
            image.combination.reverse();
            for dial in &mut image.dials {
                dial.centre.0 = -dial.centre.0;
            }
            let (room, _) = room_to_spare(&image).unwrap();
            assert!((room - one.room_to_spare).abs() < 1e-9);
            assert!(prove(&image).proven);
            // where the marks are their own mirror image, it may stand in either hand
            let marks = || image.dials.iter().map(|dial| dial.positions);
            if marks().eq(marks().rev()) && one.design.dials == other.design.dials {
                continue;
            }
            assert_eq!(image, other.design, "{number} {:?}", one.kind);
        }
    }
}

#[test]
fn the_same_wishes_give_the_same_proposals_in_whichever_order_they_are_sought() {
    let wishes = wishes(5);
    let at_once = propose(&wishes, &mut |_| ControlFlow::Continue(()));
    let Outcome::Found(found) = &at_once else {
        panic!("nothing found");
    };
    let kinds = others(&wishes);
    assert_eq!(kinds, [Kind::MostSettings, Kind::Smallest]);
    for kind in kinds.into_iter().rev() {
        let alone = better(&wishes, kind, &found[0], &mut |_| ControlFlow::Continue(()));
        assert!(found.contains(&alone), "{kind:?}");
    }
    let other = std::thread::spawn(move || propose(&wishes, &mut |_| ControlFlow::Continue(())));
    assert_eq!(other.join().unwrap(), at_once);
}

#[test]
fn a_search_that_is_stopped_keeps_what_it_has() {
    let wishes = wishes(5);
    assert_eq!(
        propose(&wishes, &mut |_| ControlFlow::Break(())),
        Outcome::Stopped
    );
    let stop_at_first = |progress: Progress<'_, Proposal>| {
        if progress.found.is_empty() {
            ControlFlow::Continue(())
        } else {
            ControlFlow::Break(())
        }
    };
    let Outcome::Found(found) = propose(&wishes, &mut { stop_at_first }) else {
        panic!("nothing found");
    };
    assert!(found.len() == 1 && found[0].proof.proven);
}

#[test]
fn a_pinned_size_stays_and_the_rest_is_found_again() {
    let mut wishes = Wishes::of(Design::default());
    wishes.pins = vec![3.0, 4.0, 5.0];
    let travel = Size::Latch(LatchSize::Travel);
    let radius = |dial| Size::Dial(dial, DialSize::DiscRadius);
    wishes.pinned = vec![
        (travel, 8.3),
        (radius(0), 17.0),
        (radius(1), 17.0),
        (radius(2), 17.0),
    ];
    let found = proposals(&wishes).unwrap();
    for proposal in &found {
        assert_eq!(proposal.design.slider.travel, 8.3);
        assert!(
            proposal
                .design
                .dials
                .iter()
                .all(|dial| dial.disc.radius == 17.0)
        );
        assert!(
            unmet(&wishes, &proposal.design).is_empty(),
            "{:?}",
            unmet(&wishes, &proposal.design)
        );
    }
    let free = proposals(&Wishes {
        pinned: Vec::new(),
        ..wishes
    })
    .unwrap();
    assert!(free[0].room_to_spare > found[0].room_to_spare);
}

#[test]
fn what_is_told_of_the_progress_only_ever_grows() {
    let (mut before, mut told) = (0.0, 0);
    let outcome = propose(&wishes(5), &mut |progress| {
        assert!(
            (before..=1.0).contains(&progress.done),
            "{before} {}",
            progress.done
        );
        (before, told) = (progress.done, told + 1);
        ControlFlow::Continue(())
    });
    assert!(matches!(outcome, Outcome::Found(_)) && told > 100);
}

#[test]
fn a_box_for_a_small_child_has_no_small_parts() {
    let mut small = Wishes::of(Design::default()).with_lid(260.0, 180.0);
    small.base.card.youngest = 2;
    // a pin that is set into wood may come out
    let Outcome::Nothing(why) = propose(&small, &mut |_| ControlFlow::Continue(())) else {
        panic!("steel pins are small parts");
    };
    assert_eq!(why.conflict, [Demand::Age], "{:?}", why.besides);
    small.base.slider.material = Material::Printed;
    let found = proposals(&small).unwrap();
    for proposal in &found {
        for dial in &proposal.design.dials {
            assert!(dial.knob.diameter > 31.75 && 2.0 * dial.disc.radius > 31.75);
            assert_eq!(dial.pin.make, PinMake::PrintedLying);
        }
    }
}

#[test]
fn a_plate_in_a_band_keeps_its_grooves() {
    let mut banded = Wishes::of(Design::default());
    banded.base.body.lid = LidKind::Band { height: 25.0 };
    (banded.base.plate.width, banded.base.plate.depth) = (204.0, 124.0);
    let found = proposals(&banded).unwrap();
    for proposal in &found {
        let design = &proposal.design;
        assert!((design.plate.width - design.inside.width - 8.0).abs() < 1e-9);
        assert!(unmet(&banded, design).is_empty());
    }
}
