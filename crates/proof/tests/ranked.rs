//! The nth setting is the nth of the walk, whatever the latch.

#[path = "../../../tests/src/thin_latch.rs"]
mod thin_latch;

use std::time::{Duration, Instant};
use thin_latch::thin;

use latchwright_model::Season;
use latchwright_proof::together::Group;
use latchwright_proof::{
    DialProof, HeldTogether, MarkProof, Ranked, Reach, Settings, StopsAt, SureStop, Verdict, prove,
};
use proptest::prelude::*;

const FILTERS: [Option<Verdict>; 4] = [
    None,
    Some(Verdict::Passes),
    Some(Verdict::Holds),
    Some(Verdict::Unsure),
];

fn mark(verdict: Verdict, stop: Option<SureStop>, margin: f64) -> MarkProof {
    MarkProof {
        verdict,
        reach: Reach {
            travel: 8.0,
            stops_at: StopsAt::Free,
            contact: None,
        },
        stop,
        creep: None,
        hold_margin: None,
        margin,
    }
}

fn dial(marks: Vec<MarkProof>) -> DialProof {
    DialProof {
        digit: 0,
        marks,
        sure_window_deg: 0.0,
        possible_window_deg: 0.0,
    }
}

/// Every setting by number and every number by setting, for every filter, against the walk.
fn numbers_agree_with_the_walk(dials: &[DialProof], together: &HeldTogether) {
    let ranked = Ranked::new(dials, together);
    for filter in FILTERS {
        let mut walk = Settings::new(dials, filter).with(together);
        let (mut index, mut marks) = (0_u128, Vec::new());
        while let Some(expected) = walk.next_setting() {
            let found = ranked.nth(filter, index, &mut marks);
            assert_eq!(found, Some(expected), "{filter:?} {index}");
            assert_eq!(ranked.before(filter, expected.marks), Some(index));
            assert_eq!(ranked.setting(expected.marks), Some(expected));
            index += 1;
        }
        assert_eq!(ranked.count(filter), index, "{filter:?}");
        assert_eq!(ranked.nth(filter, index, &mut marks), None);
    }
    // one that is not wanted stands behind those wanted that come before it
    let mut walk = Settings::new(dials, None).with(together);
    let mut opened = 0;
    while let Some(setting) = walk.next_setting() {
        let before = ranked.before(Some(Verdict::Passes), setting.marks);
        assert_eq!(before, Some(opened));
        opened += u128::from(setting.verdict == Verdict::Passes);
    }
}

fn any_stop() -> impl Strategy<Value = SureStop> {
    prop_oneof![
        Just(SureStop::Rim),
        Just(SureStop::Floor(0)),
        Just(SureStop::Floor(1))
    ]
}

fn any_mark() -> impl Strategy<Value = MarkProof> {
    let verdict = prop_oneof![
        Just(Verdict::Passes),
        Just(Verdict::Holds),
        Just(Verdict::Unsure),
        Just(Verdict::Unsure)
    ];
    (verdict, proptest::option::of(any_stop()), -2.0..2.0)
        .prop_map(|(verdict, stop, margin)| mark(verdict, stop, margin))
}

/// Up to five dials of up to four marks, and groups of which many can be met.
fn any_latch() -> impl Strategy<Value = (Vec<DialProof>, HeldTogether)> {
    let dials = proptest::collection::vec(
        proptest::collection::vec(any_mark(), 1..5).prop_map(dial),
        0..6,
    );
    dials.prop_flat_map(|dials| {
        let stops = proptest::collection::vec(proptest::option::of(any_stop()), dials.len());
        let group = (stops, 0.0..2.0).prop_map(|(stops, margin)| Group {
            stops: stops
                .into_iter()
                .enumerate()
                .filter_map(|(dial, stop)| Some((dial, stop?)))
                .collect(),
            margin,
            settings: 0,
        });
        let groups = proptest::collection::vec(group, 0..8).prop_map(|groups| {
            let groups = groups.into_iter().filter(|group| group.stops.len() > 1);
            HeldTogether {
                groups: groups.collect(),
                too_many: false,
            }
        });
        (Just(dials), groups)
    })
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 400,
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn the_nth_setting_is_the_nth_of_the_walk_for_every_filter((dials, together) in any_latch()) {
        numbers_agree_with_the_walk(&dials, &together);
    }
}

#[test]
fn dials_that_hold_together_in_a_real_proof_are_numbered_as_they_are_counted() {
    let mut design = thin();
    design.season = Season::still(design.season.built);
    design.tab.required_hold += 0.6;
    let proof = prove(&design);
    assert_eq!(proof.together.groups.len(), 1);
    numbers_agree_with_the_walk(&proof.dials, &proof.together);
    let ranked = Ranked::new(&proof.dials, &proof.together);
    assert_eq!(ranked.counts(), proof.settings);
}

#[test]
fn what_is_no_setting_has_no_number() {
    let proof = prove(&thin());
    let ranked = Ranked::new(&proof.dials, &proof.together);
    for marks in [&[][..], &[1, 2], &[1, 2, 3, 4], &[1, 8, 1]] {
        assert_eq!(ranked.before(None, marks), None, "{marks:?}");
        assert_eq!(ranked.setting(marks), None, "{marks:?}");
    }
    let none = Ranked::new(&[], &proof.together);
    assert_eq!(none.count(None), 0);
    assert_eq!(none.nth(None, 0, &mut Vec::new()), None);
    assert_eq!(none.before(None, &[]), None);
}

#[test]
fn ends_and_middle_of_360_to_the_twelfth_are_found_without_walking() {
    let marks = (0..360)
        .map(|n| {
            let verdict = match n {
                217 => Verdict::Passes,
                216 | 218 => Verdict::Unsure,
                _ => Verdict::Holds,
            };
            mark(verdict, (n == 218).then_some(SureStop::Rim), 0.5)
        })
        .collect();
    let dials = vec![dial(marks); 12];
    let group = |stops: Vec<usize>| Group {
        stops: stops
            .into_iter()
            .map(|dial| (dial, SureStop::Rim))
            .collect(),
        margin: 0.1,
        settings: 0,
    };
    let together = HeldTogether {
        groups: (0..6).map(|n| group(vec![n, n + 3, n + 6])).collect(),
        too_many: false,
    };
    let ranked = Ranked::new(&dials, &together);
    let total = 360_u128.pow(12);
    assert_eq!(ranked.count(None), total);
    assert_eq!(ranked.count(Some(Verdict::Passes)), 1);
    // a group has three dials at their one such mark, and the nine others at one of two
    let unsure = 3_u128.pow(12) - 1 - 6 * 2_u128.pow(9);
    assert_eq!(ranked.count(Some(Verdict::Unsure)), unsure);
    assert_eq!(ranked.count(Some(Verdict::Holds)), total - 1 - unsure);
    let mut found = Vec::new();
    assert!(ranked.nth(Some(Verdict::Passes), 0, &mut found).is_some());
    assert_eq!(found, [217; 12]);
    assert!(ranked.nth(None, total - 1, &mut found).is_some());
    assert_eq!(found, [359; 12]);
    let begun = Instant::now();
    let mut looked_up = 0_u32;
    for filter in FILTERS {
        let number = ranked.count(filter);
        for index in [0, number / 3, number / 2, number - 1] {
            let setting = ranked.nth(filter, index, &mut found).expect("there is one");
            assert!(filter.is_none_or(|wanted| wanted == setting.verdict));
            assert_eq!(ranked.before(filter, &found), Some(index));
            looked_up += 2;
        }
    }
    let each = begun.elapsed() / looked_up;
    assert!(each < Duration::from_millis(5), "{each:?}");
}
