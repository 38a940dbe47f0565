//! Random latches with all kinds of discs, keys, knobs and pins; most of them can be made.

use latchwright_model::{Design, Dial, Material, PinMake, Slot};
use latchwright_solids::part::Kind;
use latchwright_solids::{Grip, Options, Relief};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// A design of one or two dials and options for its parts.
pub fn design(seed: u64) -> (Design, Options) {
    let mut dice = ChaCha8Rng::seed_from_u64(seed);
    let mut design = Design::default();
    let dials = dice.random_range(1..=2);
    design.dials = (0..dials)
        .map(|index| dial(&mut dice, f64::from(index) * 90.0 - 45.0))
        .collect();
    design.combination = vec![0; design.dials.len()];
    design.workmanship.film = dice.random_range(0.0..0.2);
    let printer = &mut design.bench.printer;
    printer.corner = dice.random_range(0.0..0.6);
    printer.outside = dice.random_range(-0.1..0.3);
    let grips = [Grip::Fluted, Grip::Lobed, Grip::Faceted, Grip::Plain];
    let relief = if dice.random_bool(0.5) {
        Relief::Raised
    } else {
        Relief::Sunk
    };
    let mut leave_out = vec![Kind::Gauge];
    for kind in [Kind::Ring, Kind::Jig] {
        if dice.random_bool(0.8) {
            leave_out.push(kind);
        }
    }
    let mut options = Options {
        grip: grips[dice.random_range(0..4)],
        relief,
        chamfer: dice.random_range(0.0..0.6),
        // a seed in a regression test stays the design it was
        pin_strip: false,
        screwed: {
            design.bench.coated_prints = dice.random_bool(0.5);
            dice.random_bool(0.7)
        },
        leave_out,
        ..Options::default()
    };
    // last, so that a seed in a regression test stays the design it was
    options.pin_strip = dice.random_bool(0.5);
    if dice.random_bool(0.3) {
        design.slider.material = Material::Printed;
    }
    (design, options)
}

fn dial(dice: &mut ChaCha8Rng, x: f64) -> Dial {
    let mut dial = Dial {
        centre: (x, 95.0),
        ..Dial::default()
    };
    dial.disc.radius = dice.random_range(14.0..26.0);
    dial.disc.thickness = dice.random_range(4.0..9.0);
    dial.disc.below = dice.random_range(0.1..1.2);
    dial.key.sides = dice.random_range(3..=6);
    dial.key.apothem = dice.random_range(2.6..4.4);
    dial.key.clearance = dice.random_range(0.05..0.3);
    dial.positions = dial.key.sides * dice.random_range(1..=4);
    dial.bore.diameter = dice.random_range(12.0..16.0);
    dial.knob.diameter = dice.random_range(24.0..50.0);
    dial.knob.height = dice.random_range(9.0..22.0);
    dial.pin.diameter = dice.random_range(3.0..5.0);
    // its finger runs below the disc
    dial.pin.free = dice.random_range(4.0..9.0);
    let makes = [
        PinMake::Steel,
        PinMake::PrintedLying,
        PinMake::PrintedStanding,
    ];
    dial.pin.make = makes[dice.random_range(0..3)];
    let most = dial.disc.radius - 4.0;
    let slots = dice.random_range(1..=2);
    dial.disc.slots = (0..slots)
        .map(|index| Slot {
            mark: i64::from(index) * i64::from(dial.positions / 2),
            width: dice.random_range(4.0..9.0),
            depth: dice.random_range(0.3..1.0) * most,
            lead_in: if dice.random_bool(0.3) {
                0.0
            } else {
                dice.random_range(0.0..1.0)
            },
        })
        .collect();
    dial
}
