//! The list of the default job, laws, and nonsense.

use super::*;
use crate::nonsense::nonsense;
use latchwright_model::{Grain, KeeperMake, LidKind};

#[expect(
    clippy::needless_pass_by_value,
    reason = "a role is named where it is asked for"
)]
fn find(all: &[Part], role: Role) -> &Part {
    all.iter()
        .find(|part| part.role == role)
        .unwrap_or_else(|| panic!("no {role:?}"))
}

#[test]
fn the_default_job_has_its_parts_in_order_of_making() {
    let all = parts(&Design::default());
    let names: Vec<_> = all
        .iter()
        .map(|part| (part.role.name(), part.count))
        .collect();
    assert_eq!(
        names,
        [
            ("front", 1),
            ("right side", 1),
            ("back", 1),
            ("left side", 1),
            ("floor", 1),
            ("plate", 1),
            ("slider", 1),
            ("keeper", 1),
            ("guide strip", 2),
            ("guide bridge", 2),
            ("knob with star, dials 1, 2 and 3", 3),
            ("disc with shaft and post, dials 1, 2 and 3", 3),
            ("washer, dials 1, 2 and 3", 3),
            ("finger knob", 1),
            ("pin, dials 1, 2 and 3", 3),
            ("butt hinge", 2),
            ("hinge screw, lid", 6),
            ("hinge screw, back", 6),
            ("screw for the keeper", 2),
            ("screw through bridge and strip into the plate", 4),
            ("screw for the finger knob, from below", 1),
            (
                "screw through disc and post into the knob, dials 1, 2 and 3",
                3
            ),
        ]
        .map(|(name, count)| (name.to_owned(), count))
    );
}

#[test]
fn rough_is_bare_and_what_the_bench_adds_and_bare_is_finished_less_its_coats() {
    let mut design = Design::default();
    design.workmanship.film = 0.2;
    design.bench.rough = 3.0;
    let mut wooden = 0;
    for part in parts(&design).iter().filter(|part| part.make == Make::Wood) {
        wooden += 1;
        let (bare, rough) = (part.bare.unwrap(), part.rough.unwrap());
        // what slides is waxed, and a keeper's lower face stays bare
        let (edges, faces) = match part.role {
            Role::Slider | Role::GuideStrip | Role::GuideBridge => (0.0, 0.0),
            Role::Keeper => (0.4, 0.2),
            _ => (0.4, 0.4),
        };
        let taken = (
            part.finished.width - bare.width - edges,
            part.finished.thickness - bare.thickness - faces,
        );
        assert!(
            taken.0.abs() < 1e-9 && taken.1.abs() < 1e-9,
            "{:?}",
            part.role
        );
        assert!((rough.length - bare.length - 3.0).abs() < 1e-9);
        assert!((rough.width - bare.width - 3.0).abs() < 1e-9);
        assert_eq!(rough.thickness, bare.thickness);
    }
    assert!(wooden > 5, "{wooden}");
}

#[test]
fn the_length_of_a_plate_runs_along_its_grain() {
    let mut design = Design::default();
    assert_eq!(find(&parts(&design), Role::Plate).finished.length, 220.0);
    design.plate.grain = Grain::AlongY;
    assert_eq!(find(&parts(&design), Role::Plate).finished.length, 140.0);
}

#[test]
fn dials_that_differ_have_their_own_lines() {
    let mut design = Design::default();
    design.dials[1].disc.radius = 20.0;
    let all = parts(&design);
    assert_eq!(find(&all, Role::Disc(vec![0, 2])).count, 2);
    let second = find(&all, Role::Disc(vec![1]));
    assert_eq!(second.finished.length, 40.0);
    assert_eq!(find(&all, Role::Knob(vec![0, 1, 2])).count, 3);
}

#[test]
fn a_printed_slider_is_printed_and_a_band_says_that_it_is_cut_off_later() {
    let mut design = Design::default();
    design.slider.material = Material::Printed;
    design.body.lid = LidKind::Band { height: 30.0 };
    let all = parts(&design);
    assert_eq!(find(&all, Role::Slider).make, Make::Printed);
    let front = find(&all, Role::Side(SidePlace::Front));
    assert!(front.notes.contains(&PartNote::LidCutOffLater));
}

#[test]
fn a_keeper_is_listed_once_of_wood_or_printed() {
    for (keeper, make) in [
        (KeeperMake::Wood, Make::Wood),
        (KeeperMake::Printed, Make::Printed),
    ] {
        let mut design = Design::default();
        design.keeper.make = keeper;
        let all = parts(&design);
        assert_eq!(
            all.iter().filter(|part| part.role == Role::Keeper).count(),
            1
        );
        assert_eq!(find(&all, Role::Keeper).make, make);
    }
}

#[test]
fn nonsense_lists_its_parts_all_the_same() {
    for design in nonsense() {
        let words = format!("{:?}", parts(&design));
        assert!(
            !words.contains("NaN") && !words.contains(": inf"),
            "{words}"
        );
    }
}
