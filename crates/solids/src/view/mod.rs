//! Printed parts as a picture: a drawing in space, in plain software. Values in, pixels out.
//!
//! A [`Scene`] is made once from parts, a [`Camera`] looks at it, [`render`] draws it: tints in soft
//! light, ink lines in two weights, the cut faces of a [`Cut`] hatched. Who draws many pictures keeps
//! a [`Painter`], which keeps its memory. Same scene, same camera, same bytes; no camera, cut or size
//! fails.

mod camera;
mod cast;
mod cut;
mod frame;
mod lines;
mod paint;
mod pick;
mod raster;
mod scene;
mod shape;
mod stroke;

pub use camera::Camera;
pub use cut::{Across, Cut, Kept};
pub use pick::{anchors, pick};
pub use scene::Scene;

use frame::Frame;
use lines::Lines;
use paint::Paint;
use raster::Samples;
use stroke::Strokes;

/// Most pixels along one side of a picture.
pub const MOST_SIDE: u32 = 8192;

/// Most pixels of a picture; a taller one is cut short.
pub const MOST_PIXELS: u32 = 16_777_216;

/// Pictures up to this many pixels get four samples a pixel, larger ones one.
const FINE_PIXELS: u32 = 1_000_000;

/// Widest thin line, pixels.
const WIDEST: f64 = 8.0;

/// Red, green, blue, 0 to 255 (sRGB).
pub type Rgb = [u8; 3];

/// The colours of a drawing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Colours {
    /// The sheet, and the ground of cut faces.
    pub paper: Rgb,
    /// Parts, where the light is full on a light sheet, where it is least on a dark one.
    pub part: Rgb,
    /// Outlines of parts and of cut faces; the heavy line.
    pub ink: Rgb,
    /// Edges within a part; the shaded side of parts leans towards it.
    pub thin: Rgb,
    /// Squares of the bed and other helpers.
    pub faint: Rgb,
    /// Hatching of cut faces.
    pub hatch: Rgb,
    /// Lines of the chosen part.
    pub accent: Rgb,
    /// Faces of the chosen part.
    pub accent_tint: Rgb,
}

/// How a scene is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Look {
    /// Its colours.
    pub colours: Colours,
    /// The part that is chosen, by its place in the list of which the scene was made.
    pub chosen: Option<usize>,
    /// Width of a thin line, pixels: the pixels of a point on this screen; 0 or no number draws no
    /// lines.
    pub line: f64,
}

/// A picture, row by row from the top, four bytes a pixel, opaque.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Image {
    /// Pixels a row.
    pub width: u32,
    /// Rows.
    pub height: u32,
    /// Red, green, blue and 255.
    pub rgba: Vec<u8>,
}

/// Draws pictures, and keeps its memory from one to the next.
#[derive(Debug, Clone, Default)]
pub struct Painter {
    samples: Samples,
    strokes: Strokes,
}

impl Painter {
    /// A picture of the scene, see [`render`].
    pub fn render(
        &mut self,
        scene: &Scene,
        camera: &Camera,
        cut: Option<Cut>,
        size: (u32, u32),
        look: &Look,
    ) -> Image {
        let (width, height) = bounded(size);
        let fine = if width * height <= FINE_PIXELS { 2 } else { 1 };
        let look = Look {
            line: if look.line.is_finite() {
                look.line.clamp(0.0, WIDEST)
            } else {
                0.0
            },
            ..*look
        };
        let pixels = (width as usize, height as usize);
        let frame = Frame::new(camera, cut, pixels, fine);
        let laid = frame.fill(scene, &mut self.samples);
        self.strokes.clear(pixels.0, pixels.1);
        let lines = Lines {
            frame: &frame,
            scene,
            samples: &self.samples,
            wide: look.line,
            chosen: look.chosen,
            firsts: scene.firsts(),
        };
        lines.draw(&laid, &mut self.strokes);
        let paint = Paint::new(&frame, scene, &lines.firsts, &look);
        Image {
            width,
            height,
            rgba: paint.picture(&self.samples, &self.strokes),
        }
    }
}

/// A picture of the scene, `size` pixels wide and high; of at most [`MOST_SIDE`] a side and
/// [`MOST_PIXELS`] in all.
pub fn render(
    scene: &Scene,
    camera: &Camera,
    cut: Option<Cut>,
    size: (u32, u32),
    look: &Look,
) -> Image {
    Painter::default().render(scene, camera, cut, size, look)
}

/// A size that can be drawn; 0 by 0 if a side is 0.
fn bounded((width, height): (u32, u32)) -> (u32, u32) {
    let width = width.min(MOST_SIDE);
    if width == 0 || height == 0 {
        return (0, 0);
    }
    (width, height.min(MOST_SIDE).min(MOST_PIXELS / width))
}
