//! What the search weighs is what the proof checks: never more, and hardly less.

use latchwright_model::{Design, Grain, Material};
use latchwright_proof::check::{CheckKind, of_kind};
use latchwright_proof::prove;
use latchwright_search::propose::margins;

/// Parts of a check that has no check of its own.
fn is_part(kind: CheckKind) -> bool {
    matches!(
        kind,
        CheckKind::Enters
            | CheckKind::Fits
            | CheckKind::Deep
            | CheckKind::SlotWall
            | CheckKind::NextMark
    )
}

#[test]
fn no_margin_is_above_that_of_its_check_nor_far_below() {
    let mut drifting = Design::default();
    drifting.plate.grain = Grain::AlongX;
    drifting.slider.material = Material::Printed;
    for design in [Design::default(), drifting] {
        let proof = prove(&design);
        let mut kinds = Vec::new();
        for margin in margins(&design).expect("known woods") {
            let (kind, dial) = (margin.kind, margin.about.dial());
            let Some(check) = of_kind(&proof, kind, dial) else {
                assert!(is_part(kind), "{kind:?} has no check");
                continue;
            };
            // of a kind that is told once, others are further from it
            let least = margin.worst <= check.margin + 1e-5;
            assert!(
                least || kind.told_once(),
                "{kind:?}: {} and {}",
                margin.worst,
                check.margin
            );
            let near = check.margin - margin.worst < 0.5;
            assert!(near, "{kind:?}: {} and {}", margin.worst, check.margin);
            kinds.push(kind);
        }
        kinds.sort_unstable();
        kinds.dedup();
        assert!(kinds.len() > 25, "{}", kinds.len());
    }
}
