//! What lies under the mouse, and where names go.

use super::camera::Camera;
use super::cast::index;
use super::cut::Cut;
use super::frame::Frame;
use super::lines::owner;
use super::raster::Samples;
use super::scene::Scene;

/// Most samples for where names go, along the longer side.
const COARSE: u32 = 1000;

/// The part seen at the point (x, y) of a picture of this size, pixels from its upper left corner;
/// by its place in the list of which the scene was made.
pub fn pick(
    scene: &Scene,
    camera: &Camera,
    cut: Option<Cut>,
    size: (u32, u32),
    x: f64,
    y: f64,
) -> Option<usize> {
    let inside = |value: f64, end: u32| value >= 0.0 && value < f64::from(end);
    if !inside(x, size.0) || !inside(y, size.1) {
        return None;
    }
    let frame = Frame::new(camera, cut, pixels(size), 1).at_point(x, y);
    let mut samples = Samples::default();
    frame.fill(scene, &mut samples);
    let shape = owner(samples.what[0], &scene.firsts())?;
    Some(scene.shapes.get(shape)?.part)
}

/// For each part that can be seen a point of it near the middle of what is seen, in pixels of a
/// picture of this size, in the parts' order: where a line to its name begins.
pub fn anchors(
    scene: &Scene,
    camera: &Camera,
    cut: Option<Cut>,
    size: (u32, u32),
) -> Vec<(usize, f64, f64)> {
    let longer = size.0.max(size.1);
    if size.0 == 0 || size.1 == 0 {
        return Vec::new();
    }
    let shrunk = f64::from(longer.div_ceil(COARSE));
    let few = |pixels: u32| (f64::from(pixels) / shrunk).ceil();
    let camera = Camera {
        zoom: camera.tamed().zoom / shrunk,
        ..*camera
    };
    let (wide, tall) = (few(size.0), few(size.1));
    let mut frame = Frame::new(&camera, cut, (0, 0), 1);
    (frame.width, frame.height) = (whole_count(wide), whole_count(tall));
    frame.middle = (
        f64::from(size.0) / shrunk / 2.0,
        f64::from(size.1) / shrunk / 2.0,
    );
    let mut samples = Samples::default();
    frame.fill(scene, &mut samples);
    seen_middles(scene, &samples)
        .into_iter()
        .map(|(part, [x, y])| (part, (x + 0.5) * shrunk, (y + 0.5) * shrunk))
        .collect()
}

/// A seen sample of each shape, the one nearest to the middle of all that is seen of it.
fn seen_middles(scene: &Scene, samples: &Samples) -> Vec<(usize, [f64; 2])> {
    let firsts = scene.firsts();
    let mut seen: Vec<Vec<[f64; 2]>> = vec![Vec::new(); scene.shapes.len()];
    for (at, name) in samples.what.iter().enumerate() {
        if let Some(list) = owner(*name, &firsts).and_then(|shape| seen.get_mut(shape)) {
            list.push([(at % samples.width) as f64, (at / samples.width) as f64]);
        }
    }
    let mut found = Vec::new();
    for (shape, places) in scene.shapes.iter().zip(&seen) {
        let count = places.len() as f64;
        let sum = |axis: usize| places.iter().map(|place| place[axis]).sum::<f64>();
        let middle = [sum(0) / count, sum(1) / count];
        let away = |place: &[f64; 2]| {
            let (x, y) = (place[0] - middle[0], place[1] - middle[1]);
            x * x + y * y
        };
        let nearest = places
            .iter()
            .min_by(|one, two| away(one).total_cmp(&away(two)));
        found.extend(nearest.map(|place| (shape.part, *place)));
    }
    found
}

fn pixels(size: (u32, u32)) -> (usize, usize) {
    (size.0 as usize, size.1 as usize)
}

fn whole_count(value: f64) -> usize {
    index(i64::from(super::cast::whole(value)))
}
