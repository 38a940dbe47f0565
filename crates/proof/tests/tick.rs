//! A proof that tells how far it is is the same proof, and one that is told to stop stops.

use core::ops::ControlFlow;

use latchwright_model::{Design, Dial, Material};
use latchwright_proof::{prove, prove_with_tick};

/// Designs whose proof takes something of everything: usual, drifting and coarse, large, with a fault.
fn designs() -> Vec<Design> {
    let usual = Design::default();
    let mut coarse = Design::default();
    coarse.slider.material = Material::Printed;
    coarse.workmanship.pin_place = 0.6;
    let mut large = Design::default();
    large.plate.width = 900.0;
    let dial = |index: u32| Dial {
        centre: (f64::from(index).mul_add(70.0, -385.0), 95.0),
        positions: 24,
        ..Dial::default()
    };
    large.dials = (0..12).map(dial).collect();
    large.combination = vec![5; 12];
    let mut wrong = Design::default();
    wrong.plate.thickness = -1.0;
    vec![usual, coarse, large, wrong]
}

#[test]
fn it_is_the_same_proof_to_the_last_bit_and_only_ever_further() {
    for design in designs() {
        let mut told = vec![0.0];
        let ticking = prove_with_tick(&design, &mut |done| {
            told.push(done);
            ControlFlow::Continue(())
        });
        assert_eq!(ticking, ControlFlow::Continue(prove(&design)));
        assert!(told.is_sorted(), "{told:?}");
        assert!(told.iter().all(|done| (0.0..=1.0).contains(done)));
    }
}

#[test]
fn it_stops_wherever_it_is_told_to_and_asks_no_more() {
    for design in designs() {
        let mut all = 0;
        let _ = prove_with_tick(&design, &mut |_| {
            all += 1;
            ControlFlow::Continue(())
        });
        for stop_at in (1..=all).step_by(all / 8 + 1) {
            let mut asked = 0;
            let stopped = prove_with_tick(&design, &mut |_| {
                asked += 1;
                if asked < stop_at {
                    ControlFlow::Continue(())
                } else {
                    ControlFlow::Break(())
                }
            });
            assert_eq!((stopped, asked), (ControlFlow::Break(()), stop_at));
        }
    }
}
