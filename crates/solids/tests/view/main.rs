//! Pictures of parts against planted answers: boxes of known size, faces of known area, laws of
//! turning and mirroring, and designs that have all kinds of parts.

mod cut;
mod nonsense;
mod planted;
mod scenes;

use latchwright_model::Design;
use latchwright_solids::slice::section;
use latchwright_solids::view::{
    Across, Camera, Colours, Cut, Image, Kept, Look, Painter, Scene, anchors, pick, render,
};
use latchwright_solids::{Extent, Mesh, Options, Part, Pose, parts, plate_up};

/// Colours that cannot be mistaken for one another.
const COLOURS: Colours = Colours {
    paper: [255, 255, 255],
    part: [200, 200, 200],
    ink: [0, 0, 0],
    thin: [60, 60, 60],
    faint: [150, 150, 255],
    hatch: [0, 0, 250],
    accent: [200, 0, 0],
    accent_tint: [255, 200, 0],
};

const PLAIN: Look = Look {
    colours: COLOURS,
    chosen: None,
    line: 0.0,
};

const INKED: Look = Look { line: 1.0, ..PLAIN };

fn above() -> Camera {
    Camera {
        turn: 0.0,
        tilt: 90.0,
        zoom: 4.0,
        centre: [0.0; 3],
    }
}

fn all() -> Vec<Part> {
    parts(&Design::default(), &Options::default()).expect("the default latch")
}

fn pixel(image: &Image, x: u32, y: u32) -> [u8; 3] {
    let at = ((y * image.width + x) * 4) as usize;
    [image.rgba[at], image.rgba[at + 1], image.rgba[at + 2]]
}

/// Places of all pixels that are not paper.
fn covered(image: &Image) -> Vec<(u32, u32)> {
    (0..image.height)
        .flat_map(|y| (0..image.width).map(move |x| (x, y)))
        .filter(|(x, y)| pixel(image, *x, *y) != COLOURS.paper)
        .collect()
}

fn moved(mesh: &Mesh, x: f64, y: f64, z: f64) -> Mesh {
    mesh.posed(&Pose::to(x, y, z))
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "pixels of a picture, from 0 on"
)]
fn whole(value: f64) -> u32 {
    value as u32
}
