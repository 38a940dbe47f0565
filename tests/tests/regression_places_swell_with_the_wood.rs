//! A pin that is drilled 0.3 mm off its place is 0.3 mm and a little more off it when the slider has
//! swollen, a guide that has shrunk lets the slider turn further, and a tab that has swollen carries
//! its corners further out. The sums once left these hundredths out, and a latch made to the last
//! hundredth could be beaten by a real box.

use latchwright_model::{Design, Grain, Material, Sawn};
use latchwright_tests::planted::{SIZES, Size, to_the_edge};
use latchwright_tests::real_box::{RealBox, Workshop};
use latchwright_tests::{promise, search};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// One dial far from the guide, plate and slider of the same wood, swelling along x or along y, and
/// no play whose worst cases exclude one another.
fn latch(grain: Grain) -> Design {
    let mut design = Design::default();
    design.dials.truncate(1);
    design.combination.truncate(1);
    design.plate.grain = grain;
    design.slider.material = Material::Wood {
        species: design.plate.wood.clone(),
        sawn: Sawn::Flat,
        grain,
    };
    design.slider.guide_at.1 = 25.0;
    design.slider.guide_length = 40.0;
    design.slider.guide_play = 0.12;
    design.tab.required_hold = 0.2;
    design.season.dampest.humidity = 80.0;
    design.dials[0].positions = 12;
    design.dials[0].bore.shaft_play = 0.0;
    design.dials[0].key.clearance = 0.0;
    design
}

fn worst(size: &Size, grain: Grain, kept: impl Fn(&Design, &RealBox) -> f64) -> f64 {
    let mut rng = ChaCha8Rng::seed_from_u64(7);
    let mut design = latch(grain);
    let mark = (0..20)
        .find_map(|_| to_the_edge(&mut design, 0, size, &mut rng))
        .unwrap_or_else(|| panic!("{} brings no promise to its edge", size.name));
    let workshop = Workshop::of(&design, 0).expect("a dial of the design");
    let measure = |shares: &[f64]| {
        let built = workshop.build(mark, shares);
        built.map_or(f64::INFINITY, |built| kept(&design, &built))
    };
    search::worst(&mut rng, workshop.shares(), 12, measure).kept
}

fn size(name: &str) -> &'static Size {
    SIZES
        .iter()
        .find(|size| size.name == name)
        .expect("a size of that name")
}

#[test]
fn the_tab_stays_held_when_everything_has_swollen() {
    for grain in [Grain::AlongX, Grain::AlongY] {
        let kept = worst(size("required hold"), grain, |design, built| {
            promise::holds(design, built).amount
        });
        assert!(kept > -1e-6, "{grain:?}: {:.4} mm short", -kept);
    }
}

#[test]
fn plain_rim_stays_plain_rim_when_everything_has_swollen() {
    for grain in [Grain::AlongX, Grain::AlongY] {
        let kept = worst(size("wider true slot"), grain, |design, built| {
            promise::holds(design, built).place
        });
        assert!(kept > -1e-6, "{grain:?}: {:.4} mm into the mouth", -kept);
    }
}
