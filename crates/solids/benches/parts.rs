//! All parts and all files of every demo, beside plain discs made by a second library.
//!
//! Budget: 300 ms for all parts of a demo.

use latchwright_model::Design;
use latchwright_session::demos::DEMOS;
use latchwright_solids::part::Kind;
use latchwright_solids::write::threemf::threemf;
use latchwright_solids::{Options, Part, files, parts, plate_up};
use manifold_rust::linalg::{Vec2, Vec3};
use manifold_rust::manifold::Manifold;

fn main() {
    divan::main();
}

fn all() -> Vec<Part> {
    let parts = parts(&Design::default(), &Options::default()).expect("the default latch");
    assert_eq!(parts.len(), 16);
    parts
}

#[divan::bench(sample_count = 20)]
fn all_parts_of_the_default_latch() -> usize {
    all().iter().map(|part| part.mesh.triangles.len()).sum()
}

fn demo(name: &str) -> Design {
    let demo = DEMOS.iter().find(|demo| demo.name == name);
    demo.expect("a demo").design().expect("a sound file")
}

#[divan::bench(sample_count = 20, args = DEMOS.map(|demo| demo.name))]
fn all_parts_of_a_demo(bencher: divan::Bencher, name: &str) {
    let design = demo(name);
    bencher.bench(|| {
        let parts = parts(&design, &Options::default()).expect("a demo that can be printed");
        parts
            .iter()
            .map(|part| part.mesh.triangles.len())
            .sum::<usize>()
    });
}

#[divan::bench(sample_count = 20, args = DEMOS.map(|demo| demo.name))]
fn all_files_of_a_demo(bencher: divan::Bencher, name: &str) {
    let design = demo(name);
    bencher.bench(|| {
        let files = files(&design, &Options::default(), name, |warning| {
            format!("{warning:?}")
        })
        .expect("a demo that can be printed");
        files.iter().map(|(_, bytes)| bytes.len()).sum::<usize>()
    });
}

#[divan::bench(sample_count = 20)]
fn discs_and_washers_only() -> usize {
    let options = Options {
        leave_out: vec![Kind::Ring, Kind::Jig, Kind::Gauge],
        ..Options::default()
    };
    let parts = parts(&Design::default(), &options).expect("the default latch");
    parts.len()
}

#[divan::bench(sample_count = 20)]
fn files_of_all_beds(bencher: divan::Bencher) {
    let parts = all();
    let beds = plate_up(&parts, &Design::default().bench.printer);
    bencher.bench(|| {
        let sizes = beds
            .iter()
            .map(|bed| threemf(&parts, bed, "box").map_or(0, |bytes| bytes.len()));
        sizes.sum::<usize>()
    });
}

/// The same parts' surfaces merely read and joined in pairs by the second library.
#[divan::bench(sample_count = 20)]
fn second_library_unites_plain_cylinders_for_as_many_parts() -> f64 {
    (0..16)
        .map(|_| {
            let disc = Manifold::cylinder(6.0, 18.0, 18.0, 96);
            let shaft = Manifold::cylinder(20.0, 7.0, 7.0, 60).translate(Vec3::new(0.0, 0.0, 3.0));
            let slot = Manifold::extrude(
                &vec![vec![
                    Vec2::new(-4.5, -20.0),
                    Vec2::new(4.5, -20.0),
                    Vec2::new(4.5, -13.0),
                    Vec2::new(-4.5, -13.0),
                ]],
                6.0,
                0,
                0.0,
                Vec2::new(1.0, 1.0),
            );
            let hole = Manifold::cylinder(60.0, 1.6, 1.6, 24).translate(Vec3::new(0.0, 0.0, -9.0));
            disc.difference(&slot)
                .union(&shaft)
                .difference(&hole)
                .volume()
        })
        .sum()
}
