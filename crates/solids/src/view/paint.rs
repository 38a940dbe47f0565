//! Samples and strokes to a picture: soft light on facets, hatching on cut faces, ink over both.

use super::cast::{byte, narrow};
use super::frame::Frame;
use super::lines::owner;
use super::raster::{CUT, EMPTY, Samples};
use super::scene::Scene;
use super::stroke::Strokes;
use super::{Colours, Look, Rgb};
use crate::mesh::{Vector3, dot, length, less};

/// From where the light falls, as right, up and toward: over the left shoulder.
const LIGHT: Vector3 = [-0.42, 0.66, 0.62];

/// How far a part's colour moves towards that of thin lines: in full shade on a light sheet, in full
/// light on a dark one.
const SHADE: f32 = 0.42;
const SHINE: f32 = 0.24;

/// How far the colour of a sign is from that of its part to that of thin lines.
const SIGN: f32 = 0.85;

/// Distance of hatching lines, in thin lines.
const HATCH_APART: f64 = 7.0;

/// A colour in the making, 0 to 255.
type Tone = [f32; 3];

/// What a picture's colours follow from.
pub(super) struct Paint<'a> {
    frame: &'a Frame,
    scene: &'a Scene,
    firsts: &'a [u32],
    look: &'a Look,
    /// A colour a facet.
    facets: Vec<Tone>,
    hatches: [Hatch; 2],
}

/// Lines across a cut face: whole numbers of a sum over the samples.
#[derive(Clone, Copy, Default)]
struct Hatch {
    x: f64,
    y: f64,
    start: f64,
    /// Lines that go on a pixel.
    close: f64,
}

impl<'a> Paint<'a> {
    pub(super) fn new(
        frame: &'a Frame,
        scene: &'a Scene,
        firsts: &'a [u32],
        look: &'a Look,
    ) -> Self {
        let mut facets = vec![[0.0; 3]];
        for shape in &scene.shapes {
            let ramps = ramps(&look.colours, look.chosen == Some(shape.part));
            facets.extend(shape.normals.iter().enumerate().map(|(facet, normal)| {
                let light = dot(frame.axes.of(*normal), LIGHT) / length(LIGHT);
                let sign = shape.signs.get(facet).copied().unwrap_or(false);
                let [shaded, lit] = ramps[usize::from(sign)];
                mix(shaded, lit, soft(light))
            }));
        }
        let hatches = [1.0, -1.0].map(|sign| Hatch::new(frame, sign, look.line));
        Self {
            frame,
            scene,
            firsts,
            look,
            facets,
            hatches,
        }
    }

    /// The finished picture.
    pub(super) fn picture(&self, samples: &Samples, strokes: &Strokes) -> Vec<u8> {
        let fine = self.frame.fine as usize;
        let paper = tone(self.look.colours.paper);
        let [r, g, b] = self.look.colours.paper;
        let mut rgba = [r, g, b, 255].repeat(strokes.shares.len());
        let mut pixels = rgba.chunks_exact_mut(4);
        let inks = self.inks();
        for y in 0..strokes.height {
            for (x, pixel) in pixels.by_ref().take(strokes.width).enumerate() {
                let shares = strokes.shares[y * strokes.width + x];
                let names = self.names(samples, x * fine, y * fine);
                let plain = names.iter().all(|name| *name == names[0]) && names[0] & CUT == 0;
                if plain && names[0] == EMPTY && shares == [0; 4] {
                    continue;
                }
                let mut colour = if plain {
                    self.facet(names[0], paper)
                } else {
                    self.mean(&names, (x * fine, y * fine), paper)
                };
                for (share, ink) in shares.iter().zip(&inks) {
                    if *share > 0 {
                        colour = mix(colour, *ink, f32::from(*share) / 255.0);
                    }
                }
                pixel[..3].copy_from_slice(&colour.map(byte));
            }
        }
        rgba
    }

    fn inks(&self) -> [Tone; 4] {
        let colours = &self.look.colours;
        [colours.faint, colours.thin, colours.ink, colours.accent].map(tone)
    }

    /// The names of a pixel's samples; with one sample a pixel four times the same.
    fn names(&self, samples: &Samples, x: usize, y: usize) -> [u32; 4] {
        let at = y * samples.width + x;
        if self.frame.fine == 1 {
            return [samples.what[at]; 4];
        }
        let below = at + samples.width;
        [at, at + 1, below, below + 1].map(|at| samples.what[at])
    }

    fn facet(&self, name: u32, paper: Tone) -> Tone {
        if name == EMPTY {
            paper
        } else {
            self.facets.get(name as usize).copied().unwrap_or(paper)
        }
    }

    fn mean(&self, names: &[u32; 4], (x, y): (usize, usize), paper: Tone) -> Tone {
        let mut sum = [0.0; 3];
        for (name, (right, down)) in names.iter().zip([(0, 0), (1, 0), (0, 1), (1, 1)]) {
            let colour = if *name & CUT == 0 {
                self.facet(*name, paper)
            } else {
                self.cut_face(*name, x + right, y + down)
            };
            for (sum, channel) in sum.iter_mut().zip(colour) {
                *sum += channel / 4.0;
            }
        }
        sum
    }

    /// A cut face: two parts that lie beside each other lean their hatching to different sides.
    fn cut_face(&self, name: u32, x: usize, y: usize) -> Tone {
        let shape = owner(name, self.firsts).unwrap_or_default();
        let part = self.scene.shapes.get(shape).map(|shape| shape.part);
        let colours = &self.look.colours;
        let chosen = part.is_some() && part == self.look.chosen;
        let (ground, line) = if chosen {
            (colours.accent_tint, colours.accent)
        } else {
            (colours.paper, colours.hatch)
        };
        let share = self.hatches[part.unwrap_or_default() % 2].share(x, y, self.look.line);
        mix(tone(ground), tone(line), share)
    }
}

impl Hatch {
    fn new(frame: &Frame, sign: f64, line: f64) -> Self {
        let Some(cut) = frame.cut else {
            return Self::default();
        };
        let outwards = cut.outwards(&frame.axes);
        let Some(slope) = frame.slope(outwards) else {
            return Self::default();
        };
        // about as far apart as wanted at this zoom, by halves and doubles of a millimetre
        let wanted = HATCH_APART * line.max(0.5) / frame.camera.zoom;
        let mut apart = 1.0;
        while apart < wanted * 0.7 {
            apart *= 2.0;
        }
        while apart > wanted * 1.4 {
            apart /= 2.0;
        }
        // a sum of the two coordinates in the plane: the scene's own, so that it stays on the part
        let axis = cut.across.axis();
        let (one, two) = ((axis + 1) % 3, (axis + 2) % 3);
        let axes = &frame.axes;
        let along = |place: Vector3| {
            (place[one] + place[two] * sign) / apart * core::f64::consts::FRAC_1_SQRT_2
        };
        let step = |right: f64, up: f64, toward: f64| {
            along([0, 1, 2].map(|axis| {
                axes.right[axis] * right + axes.up[axis] * up + axes.toward[axis] * toward
            }))
        };
        let x = step(1.0 / frame.scale, 0.0, slope.x);
        let y = step(0.0, -1.0 / frame.scale, slope.y);
        // the point of the plane in the middle of the picture
        let mut on_plane = [0.0; 3];
        on_plane[axis] = cut.at;
        let off = axes.of(less(on_plane, frame.camera.centre));
        let near = dot(off, outwards) / outwards[2];
        let middle = [0, 1, 2].map(|axis| frame.camera.centre[axis] + axes.toward[axis] * near);
        let fine = f64::from(frame.fine);
        Self {
            x,
            y,
            start: along(middle) - x * (frame.middle.0 - 0.5) - y * (frame.middle.1 - 0.5),
            close: latchwright_geometry::trig::hypot(x, y) * fine,
        }
    }

    fn share(&self, x: usize, y: usize, line: f64) -> f32 {
        if line <= 0.0 || self.close <= 0.0 {
            return 0.0;
        }
        if self.close > 0.4 {
            // too close to be told apart
            return narrow((line * self.close).min(0.7));
        }
        let at = self.start + self.x * x as f64 + self.y * y as f64;
        let away = (at - at.round()).abs() / self.close;
        narrow((line / 2.0 + 0.5 - away).clamp(0.0, 1.0) * line.min(1.0))
    }
}

/// Light by the angle at which it falls, 0 to 1: soft, and never quite dark.
fn soft(light: f64) -> f32 {
    let light = light.clamp(-1.0, 1.0);
    narrow((0.35 + 0.65 * light).clamp(0.0, 1.0))
}

/// From the shaded to the lit colour of a part, and of its signs, whichever way light and dark lie
/// in these colours.
fn ramps(colours: &Colours, chosen: bool) -> [[Tone; 2]; 2] {
    let (own, other) = if chosen {
        (tone(colours.accent_tint), tone(colours.accent))
    } else {
        (tone(colours.part), tone(colours.thin))
    };
    let bright = |tone: Tone| tone[0] * 0.3 + tone[1] * 0.59 + tone[2] * 0.11;
    let part = if bright(own) < bright(other) {
        [own, mix(own, other, SHINE)]
    } else {
        [mix(own, other, SHADE), own]
    };
    [part, part.map(|ground| mix(ground, other, SIGN))]
}

fn tone(rgb: Rgb) -> Tone {
    rgb.map(f32::from)
}

fn mix(from: Tone, to: Tone, share: f32) -> Tone {
    [0, 1, 2].map(|channel| from[channel] + (to[channel] - from[channel]) * share)
}
