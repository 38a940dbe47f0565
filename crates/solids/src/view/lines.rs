//! Which edges are lines from this side, and how much of each can be seen.

use latchwright_geometry::trig;

use super::cast::whole;
use super::frame::{EDGE_ON, Frame, Laid, raised};
use super::raster::{CUT, EMPTY, STEPS, Samples, Spot};
use super::scene::Scene;
use super::shape::{Edge, Shape};
use super::stroke::{Ink, Pixel, Strokes};
use crate::mesh::Vector3;

/// Width of the bed's squares and of bodies that are no parts, in thin lines.
const FINE: f64 = 0.5;

/// How much wider the lines of the chosen part are: colour alone must not tell.
const CHOSEN: f64 = 1.3;

/// How far beside an outline another part is looked for, pixels.
const BESIDE: f64 = 1.3;

/// Most looks along one line.
const MOST_LOOKS: i32 = 20_000;

/// What is needed to draw lines over samples.
pub(super) struct Lines<'a> {
    pub frame: &'a Frame,
    pub scene: &'a Scene,
    pub samples: &'a Samples,
    /// Width of a thin line, pixels.
    pub wide: f64,
    /// The chosen part.
    pub chosen: Option<usize>,
    /// Name of the first facet of each shape.
    pub firsts: Vec<u32>,
}

/// Widths of lines: the further away the scene, the finer, so that small parts do not drown in ink.
#[derive(Clone, Copy)]
struct Widths {
    /// Outlines, in thin lines.
    heavy: f64,
    /// Edges within a part, in thin lines.
    thin: f64,
    /// Edges of signs, which their colour shows already until one comes near; in thin lines.
    sign: f64,
}

impl Widths {
    /// At so many pixels a millimetre, for a thin line of one pixel.
    fn at(near: f64) -> Self {
        Self {
            heavy: (1.1 + near * 0.2).clamp(1.2, 1.7),
            thin: (near / 3.0).clamp(0.45, 1.0),
            sign: ((near - 4.0) / 6.0).clamp(0.0, 1.0),
        }
    }
}

/// One line on its way onto the picture.
#[derive(Clone, Copy)]
struct Wish {
    ends: [Spot; 2],
    /// The shape that it belongs to.
    shape: Option<usize>,
    /// Heavy wherever another part, or none, lies beside it.
    outline: bool,
    ink: Ink,
    /// In thin lines.
    wide: f64,
}

impl Lines<'_> {
    /// All lines: helpers, then every part's edges and cut faces.
    pub(super) fn draw(&self, laid: &[Laid], strokes: &mut Strokes) {
        if self.wide <= 0.0 {
            return;
        }
        let above = self.frame.axes.toward[2] > EDGE_ON;
        let grid = self.scene.grid.iter().filter(|_| above);
        let fine = grid.chain(&self.scene.bodies).map(|line| (line, FINE));
        for (line, wide) in fine.chain(self.scene.trails.iter().map(|line| (line, 1.0))) {
            let wish = Wish {
                ends: line.map(|place| self.frame.spot(place)),
                shape: None,
                outline: false,
                ink: Ink::Faint,
                wide,
            };
            self.walk(&wish, strokes);
        }
        let shapes = self.scene.shapes.iter().zip(laid).enumerate();
        for (number, (shape, laid)) in shapes.filter(|(_, (_, laid))| !laid.spots.is_empty()) {
            self.edges_of(number, shape, laid, strokes);
            for ends in &laid.rim {
                let wish = Wish {
                    ends: *ends,
                    shape: Some(number),
                    outline: false,
                    ink: Ink::Heavy,
                    wide: 1.0,
                };
                self.walk(&wish, strokes);
            }
        }
    }

    fn widths(&self) -> Widths {
        Widths::at(self.frame.camera.zoom / self.wide)
    }

    fn edges_of(&self, number: usize, shape: &Shape, laid: &Laid, strokes: &mut Strokes) {
        let facing = self.frame.facing(shape);
        let lift = self.scene.lifts[number];
        let widths = self.widths();
        for edge in &shape.edges {
            let [one, two] = edge.facets.map(|facet| facing[facet as usize]);
            let outline = one != two || (one && edge.facets[0] == edge.facets[1]);
            if !(outline || edge.crease && (one || two)) {
                continue;
            }
            let sign = |facet: &u32| shape.signs.get(*facet as usize) == Some(&true);
            let wide = if edge.facets.iter().any(sign) {
                widths.sign
            } else {
                widths.thin
            };
            let places = edge.ends.map(|at| raised(shape.points[at as usize], lift));
            if let Some(ends) = self.left_of(edge, places, laid) {
                let wish = Wish {
                    ends,
                    shape: Some(number),
                    outline,
                    ink: Ink::Thin,
                    wide,
                };
                self.walk(&wish, strokes);
            }
        }
    }

    /// What the cut leaves of an edge.
    fn left_of(&self, edge: &Edge, places: [Vector3; 2], laid: &Laid) -> Option<[Spot; 2]> {
        let ends = edge.ends.map(|at| at as usize);
        let mut spots = ends.map(|at| laid.spots[at]);
        if let Some(cut) = self.frame.cut {
            let [one, two] = ends.map(|at| laid.taken[at]);
            if one && two {
                return None;
            }
            if one != two {
                let crossing = self.frame.spot(cut.crossing(places[0], places[1]));
                spots[usize::from(two)] = crossing;
            }
        }
        Some(spots)
    }

    /// Looks along a line pixel by pixel, and draws what can be seen of it.
    fn walk(&self, wish: &Wish, strokes: &mut Strokes) {
        let [a, b] = wish.ends.map(|spot| self.pixel(spot));
        let way = [b[0] - a[0], b[1] - a[1]];
        let Some((begin, end)) = within(a, way, [strokes.width, strokes.height]) else {
            return;
        };
        let long = trig::sqrt(way[0] * way[0] + way[1] * way[1]);
        let looks = whole((long * (end - begin)).ceil()).clamp(1, MOST_LOOKS);
        let step = (end - begin) / f64::from(looks);
        let at = |share: f64| [a[0] + way[0] * share, a[1] + way[1] * share];
        let (from, to) = (f64::from(wish.ends[0].z), f64::from(wish.ends[1].z));
        let beside = [way[1], -way[0]].map(|value| value / long.max(1e-9) * BESIDE);
        let mut run: Option<(f64, Ink)> = None;
        for look in 0..looks {
            let share = begin + (f64::from(look) + 0.5) * step;
            let place = at(share);
            let seen = self
                .seen(place, from + (to - from) * share)
                .then(|| self.ink(wish, place, beside));
            if run.map(|(_, ink)| ink) != seen {
                let now = begin + f64::from(look) * step;
                if let Some((start, ink)) = run {
                    self.put([at(start), at(now)], ink, wish, strokes);
                }
                run = seen.map(|ink| (now, ink));
            }
        }
        if let Some((start, ink)) = run {
            self.put([at(start), at(end)], ink, wish, strokes);
        }
    }

    fn put(&self, line: [Pixel; 2], ink: Ink, wish: &Wish, strokes: &mut Strokes) {
        let wide = if ink == Ink::Heavy {
            self.widths().heavy
        } else {
            wish.wide
        };
        let part = wish.shape.map(|shape| self.scene.shapes[shape].part);
        let (ink, more) = if part.is_some() && part == self.chosen {
            (Ink::Chosen, CHOSEN)
        } else {
            (ink, 1.0)
        };
        strokes.line(line, wide * self.wide * more, ink);
    }

    /// Whether nothing lies before a place that is this near: it may lie on the surface.
    fn seen(&self, place: Pixel, near: f64) -> bool {
        let fine = f64::from(self.frame.fine);
        let [x, y] = place.map(|value| i64::from(whole((value * fine).floor())));
        // a line lies between samples: it can be seen if it can from any sample around it
        let furthest = self.samples.furthest_around(x, y);
        near + 1.0 / self.frame.scale + 0.01 >= f64::from(furthest)
    }

    fn ink(&self, wish: &Wish, place: Pixel, beside: Pixel) -> Ink {
        if !wish.outline {
            return wish.ink;
        }
        let ends = [1.0, -1.0].map(|sign| {
            let other = [place[0] + beside[0] * sign, place[1] + beside[1] * sign];
            self.owner(other) == wish.shape
        });
        if ends == [true, true] {
            wish.ink
        } else {
            Ink::Heavy
        }
    }

    /// The shape that is seen at a pixel.
    fn owner(&self, place: Pixel) -> Option<usize> {
        let fine = f64::from(self.frame.fine);
        let [x, y] = place.map(|value| i64::from(whole((value * fine).floor())));
        owner(self.samples.at(x, y).0, &self.firsts)
    }

    fn pixel(&self, spot: Spot) -> Pixel {
        let steps = STEPS as f64 * f64::from(self.frame.fine);
        [f64::from(spot.x) / steps, f64::from(spot.y) / steps]
    }
}

/// The shape that a sample's name belongs to.
pub(super) fn owner(name: u32, firsts: &[u32]) -> Option<usize> {
    if name == EMPTY {
        None
    } else if name & CUT != 0 {
        Some((name & !CUT) as usize)
    } else {
        firsts
            .partition_point(|first| *first <= name)
            .checked_sub(1)
    }
}

/// From which share to which a line lies in the picture or close to it.
fn within(a: Pixel, way: Pixel, size: [usize; 2]) -> Option<(f64, f64)> {
    const MARGIN: f64 = 4.0;
    let (mut begin, mut end) = (0.0_f64, 1.0_f64);
    for axis in 0..2 {
        let (low, high) = (-MARGIN - a[axis], size[axis] as f64 + MARGIN - a[axis]);
        if way[axis] == 0.0 {
            if low > 0.0 || high < 0.0 {
                return None;
            }
            continue;
        }
        let (one, two) = (low / way[axis], high / way[axis]);
        begin = begin.max(one.min(two));
        end = end.min(one.max(two));
    }
    (begin < end).then_some((begin, end))
}
