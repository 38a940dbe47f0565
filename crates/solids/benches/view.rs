//! Pictures of the default latch at 800 × 600, beside the plainest way to fill the same samples.
//!
//! Budget: 30 ms for a picture of all parts, so that they turn smoothly; getting them ready once
//! may take as long.

use latchwright_model::Design;
use latchwright_solids::view::{
    Across, Camera, Colours, Cut, Image, Kept, Look, Painter, Scene, anchors, pick,
};
use latchwright_solids::{Mesh, Options, Part, parts};

const SIZE: (u32, u32) = (800, 600);

const LOOK: Look = Look {
    colours: Colours {
        paper: [255; 3],
        part: [230; 3],
        ink: [0; 3],
        thin: [90; 3],
        faint: [150; 3],
        hatch: [120; 3],
        accent: [150, 60, 0],
        accent_tint: [240, 210, 190],
    },
    chosen: Some(1),
    line: 1.0,
};

fn main() {
    divan::main();
}

fn all() -> Vec<Part> {
    parts(&Design::default(), &Options::default()).expect("the default latch")
}

fn camera(scene: &Scene) -> Camera {
    Camera::fit(scene, 25.0, 35.0, SIZE)
}

fn not_paper(image: &Image) -> usize {
    let pixels = image.rgba.chunks(4);
    pixels.filter(|pixel| pixel[..3] != [255; 3]).count()
}

#[divan::bench(sample_count = 50)]
fn assembly_made_ready(bencher: divan::Bencher) {
    let parts = all();
    bencher.bench(|| Scene::assembly(&parts, 0.5).triangles());
}

/// The share by which it is pulled apart, per cent.
#[divan::bench(sample_count = 50, args = [0, 50, 100])]
fn assembly_drawn(bencher: divan::Bencher, pulled: u32) {
    let scene = Scene::assembly(&all(), f64::from(pulled) / 100.0);
    let camera = camera(&scene);
    let mut painter = Painter::default();
    bencher.bench_local(|| {
        let image = painter.render(&scene, &camera, None, SIZE, &LOOK);
        assert_eq!(image.rgba.len(), 800 * 600 * 4);
        image
    });
}

#[divan::bench(sample_count = 50)]
fn all_parts_on_squares_drawn(bencher: divan::Bencher) {
    let scene = Scene::parts(&all());
    let camera = camera(&scene);
    let mut painter = Painter::default();
    bencher.bench_local(|| painter.render(&scene, &camera, None, SIZE, &LOOK));
}

#[divan::bench(sample_count = 50)]
fn assembly_drawn_cut(bencher: divan::Bencher) {
    let scene = Scene::assembly(&all(), 0.0);
    let camera = camera(&scene);
    let (across, at, kept) = (Across::Y, 95.0, Kept::Above);
    let cut = Some(Cut { across, at, kept });
    let mut painter = Painter::default();
    bencher.bench_local(|| painter.render(&scene, &camera, cut, SIZE, &LOOK));
}

/// 1600 × 1200 with lines of two pixels: a screen with twice the pixels.
#[divan::bench(sample_count = 20)]
fn assembly_drawn_at_twice_the_size(bencher: divan::Bencher) {
    let scene = Scene::assembly(&all(), 0.5);
    let camera = Camera::fit(&scene, 25.0, 35.0, (1600, 1200));
    let look = Look { line: 2.0, ..LOOK };
    let mut painter = Painter::default();
    bencher.bench_local(|| painter.render(&scene, &camera, None, (1600, 1200), &look));
}

#[divan::bench(sample_count = 50)]
fn pick_and_anchors(bencher: divan::Bencher) {
    let scene = Scene::assembly(&all(), 0.5);
    let camera = camera(&scene);
    bencher.bench(|| {
        let part = pick(&scene, &camera, None, SIZE, 400.5, 300.5);
        (part, anchors(&scene, &camera, None, SIZE).len())
    });
}

/// Fills only, no lines and no hidden backs: every sample of every triangle's box is asked whether
/// it lies inside. The answer is held against ours.
#[divan::bench(sample_count = 10)]
fn reference_fills_the_same_samples_one_by_one(bencher: divan::Bencher) {
    let parts = all();
    let scene = Scene::assembly(&parts, 0.5);
    let plain = Look { line: 0.0, ..LOOK };
    let camera = Camera {
        turn: 0.0,
        tilt: 90.0,
        ..Camera::fit(&scene, 0.0, 90.0, SIZE)
    };
    let ours = not_paper(&Painter::default().render(&scene, &camera, None, SIZE, &plain));
    let meshes: Vec<Mesh> = parts
        .iter()
        .filter_map(|part| Some(part.mesh.posed(&part.assembled?)))
        .collect();
    let first = one_by_one(&meshes, &camera);
    assert!(
        first.abs_diff(ours) < ours / 100,
        "{first} pixels, not {ours}"
    );
    bencher.bench(|| one_by_one(&meshes, &camera));
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "samples of a picture, from 0 on"
)]
fn whole(value: f64) -> usize {
    value.max(0.0) as usize
}

/// Pixels that some triangle covers, seen from above, by four samples a pixel.
fn one_by_one(meshes: &[Mesh], camera: &Camera) -> usize {
    let (width, height) = (1600_usize, 1200_usize);
    let mut depths = vec![f64::NEG_INFINITY; width * height];
    for mesh in meshes {
        for triangle in &mesh.triangles {
            let [a, b, c] = mesh.corners(*triangle).map(|[x, y, z]| {
                let scale = camera.zoom * 2.0;
                let right = 800.0 + (x - camera.centre[0]) * scale;
                [right, 600.0 - (y - camera.centre[1]) * scale, z]
            });
            let side = |a: [f64; 3], b: [f64; 3], x: f64, y: f64| {
                (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])
            };
            let area = side(a, b, c[0], c[1]);
            if area == 0.0 {
                continue;
            }
            let bounds = |axis: usize, most: usize| {
                let low = a[axis].min(b[axis]).min(c[axis]);
                let high = a[axis].max(b[axis]).max(c[axis]);
                whole(low)..(whole(high) + 1).min(most)
            };
            for row in bounds(1, height) {
                for column in bounds(0, width) {
                    let (x, y) = (column as f64 + 0.5, row as f64 + 0.5);
                    let shares = [side(b, c, x, y), side(c, a, x, y), side(a, b, x, y)]
                        .map(|share| share / area);
                    if shares.iter().all(|share| *share >= 0.0) {
                        let z = shares[0] * a[2] + shares[1] * b[2] + shares[2] * c[2];
                        let depth = &mut depths[row * width + column];
                        *depth = depth.max(z);
                    }
                }
            }
        }
    }
    let covered = |x: usize, y: usize| depths[y * width + x] > f64::NEG_INFINITY;
    let places = (0..600).flat_map(|y| (0..800).map(move |x| (x * 2, y * 2)));
    places
        .filter(|(x, y)| {
            covered(*x, *y) || covered(x + 1, *y) || covered(*x, y + 1) || covered(x + 1, y + 1)
        })
        .count()
}
