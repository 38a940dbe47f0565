//! Found by comparing proposals of two searches: where the pin of the back row stood far from a large
//! disc of the front row, the search did not weigh the finger below that pin, which passes beside the
//! disc. It went after latches whose finger met a disc, none of them proven, and handed out a latch with
//! half the room that can be had, no latch with more settings, or the sentence that nothing fits. Fingers run below the
//! discs now; that is what both ask.

use std::ops::ControlFlow;

use latchwright_model::{Design, Grain, Material};
use latchwright_proof::CheckKind;
use latchwright_proof::prove;
use latchwright_search::propose::{DialWish, Kind, Outcome, Wishes, margins, propose};

/// Two rows of discs with a radius of 46 mm, their pins far apart and their fingers not, which run as high as the discs.
fn two_rows() -> Design {
    let mut design = Design::default();
    for (number, dial) in design.dials.iter_mut().enumerate() {
        dial.disc.radius = 46.0;
        dial.pin.free = 1.0;
        dial.centre = match number {
            0 => (-40.0, 260.0),
            1 => (0.0, 168.0),
            _ => (40.0, 260.0),
        };
    }
    design
}

#[test]
fn what_the_search_weighs_of_a_finger_is_what_the_check_says() {
    let design = two_rows();
    let weighed = margins(&design).expect("known woods");
    let of_fingers = weighed
        .iter()
        .filter(|margin| margin.kind == CheckKind::DiscToFinger)
        .map(|margin| margin.worst)
        .fold(f64::INFINITY, f64::min);
    let proof = prove(&design);
    let check = proof
        .checks
        .iter()
        .find(|check| check.kind == CheckKind::DiscToFinger)
        .expect("one of the checks");
    assert!(check.margin < -5.0, "planted: {}", check.margin);
    assert!((of_fingers - check.margin).abs() < 1e-9, "{of_fingers}");
}

#[test]
fn two_rows_of_large_discs_are_proposed_for_a_deep_lid() {
    let mut base = Design::default();
    base.plate.grain = Grain::AlongX;
    base.slider.material = Material::Plywood;
    let mut wishes = Wishes::of(base).with_lid(311.0, 302.0);
    wishes.dials = vec![DialWish::numbered(8); 6];
    let Outcome::Found(found) = propose(&wishes, &mut |_| ControlFlow::Continue(())) else {
        panic!("there is room for them");
    };
    let kinds: Vec<Kind> = found.iter().map(|proposal| proposal.kind).collect();
    assert_eq!(kinds, [Kind::Roomiest, Kind::MostSettings, Kind::Smallest]);
    let settings = found[1].settings;
    assert!(settings > 8_u128.pow(6), "{settings}");
}
