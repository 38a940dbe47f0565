//! The slotted disc with its shaft and key post, printed with the post up.

use core::f64::consts::SQRT_2;

use latchwright_assembly::dial::{KNOB_GAP, disc_screw, post_length, shaft_diameter, shaft_length};
use latchwright_assembly::screw::{CLEARANCE, HEAD};
use latchwright_geometry::{Point, trig};
use latchwright_model::slot::{Mouth, SlotShape, mouths};
use latchwright_model::{Dial, Slot};

use super::key::{KeyShape, key_shape};
use super::{Draft, Kind, Part, PartId, Shop};
use crate::extrude::{Prism, THROUGH};
use crate::fault::{MeshFault, PartFault, Slim, Wall};
use crate::feature::Feature;
use crate::fit::Size;
use crate::mesh::Pose;
use crate::outline::Outline;
use crate::region::Region;
use crate::slope::Edge;
use crate::warning::Warning;

/// Width of the shoulder on the shaft that the knob sits on, mm, at least.
const SHOULDER: f64 = 0.4;

/// The outline of a dial's disc about its own centre, its true slot facing −y, each wall drawn
/// `growth` mm inside its finished place; mm in plan axes.
///
/// # Errors
/// [`MeshFault`] if sizes are out of range.
pub fn disc_outline(dial: &Dial, growth: f64) -> Result<Region, MeshFault> {
    let cuts = mouths(dial, 0.0)
        .filter(|mouth| !mouth.far)
        .map(|mouth| slot_cut(dial.disc.radius, &mouth, growth));
    let rim = Outline::circle(Point::default(), dial.disc.radius - growth);
    Region::from(rim).minus(&Region::union(cuts))
}

/// What one slot takes away, as far as beyond the rim.
///
/// With every wall moved into the material by `growth`, the slot is wider by twice that, as deep as
/// before, and its lead-in's flat is moved square to itself.
fn slot_cut(radius: f64, mouth: &Mouth, growth: f64) -> Outline {
    let finished = SlotShape::new(radius, &plain(mouth.width, mouth.depth, mouth.lead_in));
    let rim = radius - growth;
    let drawn = SlotShape::new(rim, &plain(mouth.width + 2.0 * growth, mouth.depth, 0.0));
    let (half, beyond) = (drawn.half_width, radius + 1.0);
    let at = |a: f64, l: f64| place(mouth.turn_deg, a, l);
    if drawn.shallow {
        return Outline::circle(at(drawn.floor_centre, 0.0), half);
    }
    let mut points = Vec::new();
    if drawn.through {
        points.extend([at(-beyond, -half), at(-beyond, half)]);
    } else {
        let floor = Outline::circle(Point::default(), half);
        points.extend(
            floor
                .points()
                .iter()
                .filter(|point| point.y <= 1e-9 * half)
                .map(|point| (point.x, drawn.floor_centre + point.y))
                .map(|(l, a)| at(a, l)),
        );
        // the lower half of a circle starts at its left end, which is the last but one quarter
        points.sort_by(|one, two| along(mouth, *one).total_cmp(&along(mouth, *two)));
    }
    if finished.lead_in > 0.0 && !finished.shallow {
        let top = finished.wall_top() + growth * (1.0 - SQRT_2);
        let out = (beyond - top).max(0.0);
        points.extend([at(top, half), at(top + out, half + out)]);
        points.extend([at(top + out, -half - out), at(top, -half)]);
    } else {
        points.extend([at(beyond, half), at(beyond, -half)]);
    }
    Outline::new(points)
}

fn plain(width: f64, depth: f64, lead_in: f64) -> Slot {
    Slot {
        mark: 0,
        width,
        depth,
        lead_in,
    }
}

/// The point a out along a slot's middle line and l across it, clockwise positive.
fn place(turn_deg: f64, a: f64, l: f64) -> Point {
    let phi = trig::radians(turn_deg);
    let (sin, cos) = (trig::sin(phi), trig::cos(phi));
    Point::new(-sin, -cos) * a + Point::new(-cos, sin) * l
}

/// l of a point.
fn along(mouth: &Mouth, point: Point) -> f64 {
    let phi = trig::radians(mouth.turn_deg);
    point.dot(Point::new(-trig::cos(phi), trig::sin(phi)))
}

/// The disc of dial `index`.
pub(crate) fn disc(shop: &Shop<'_>, index: usize, dial: &Dial) -> Result<Part, PartFault> {
    let part = PartId::of(Kind::Disc, index);
    let mut draft = Draft::new(part);
    let fit = &shop.fit;
    let growth = fit.growth();
    let key = key_shape(dial, fit);
    let radius = draft.draw(fit.outside(Feature::Disc, 2.0 * dial.disc.radius)) / 2.0;
    let thick = draft.draw(fit.height(Feature::DiscThickness, dial.disc.thickness, 2.0));
    let shaft_size = fit.outside(Feature::Shaft, shaft_diameter(dial));
    shop.enough(part, Slim::Shaft, &shaft_size)?;
    let shaft = draft.draw(shaft_size) / 2.0;
    for slot in &dial.disc.slots {
        draft.draw(fit.gap(Feature::Slot(slot.mark), slot.width));
    }
    let long = shaft_length(shop.design, dial);
    let shaft_top = thick + draft.draw(fit.height(Feature::ShaftLength, long, 0.0));
    let post_top = shaft_top + post_length(dial).max(fit.printer.layer);
    let seat = ScrewSeat::new(shop, dial);
    walls(shop, part, dial, &key, radius, shaft, seat.as_ref())?;
    let broken = |fault| PartFault::Mesh { part, fault };
    let outline = disc_outline(dial, growth).map_err(broken)?;
    let dots = dots(shop, index, &outline, shaft, radius);
    let circle = |radius: f64| Outline::circle(Point::default(), radius);
    let body = &mut draft.body;
    body.add(Prism::new(outline, 0.0, thick).with_low(shop.bed_edge(thick)));
    // from the disc's upper face on: a slot that reaches below the shaft stays open for its pin
    body.add(Prism::new(circle(shaft), thick, shaft_top).with_high(Edge::chamfer(0.3)));
    body.add(Prism::new(key.post.clone(), thick, post_top).with_high(Edge::chamfer(0.6)));
    for dot in dots {
        body.cut(Prism::new(dot, thick - 2.0 * fit.printer.layer, thick));
    }
    if let Some(ScrewSeat { hole, head, deeper }) = seat {
        body.cut(Prism::new(circle(hole.drawn / 2.0), -THROUGH, THROUGH));
        let sink = (head.drawn - hole.drawn) / 2.0;
        let cone = Prism::new(circle(head.drawn / 2.0), -1.0, deeper + sink);
        body.cut(cone.with_high(Edge::chamfer(sink)));
        draft.sizes.extend([hole, head]);
    }
    if key.relief > 0.0 {
        draft.warn(Warning::PostRelieved {
            corner: fit.printer.corner,
            relief: key.relief,
            backlash_deg: key.backlash_deg,
        });
    }
    draft.sizes.extend(key.sizes);
    // it hangs from the knob, which sits on its shoulder
    let z = shop.design.plate.thickness + KNOB_GAP - shaft_top;
    draft.assembled = Some(Pose::to(dial.centre.0, dial.centre.1, z));
    draft.apart = -2;
    draft.finish(fit.printer)
}

/// The screw's hole, its head, and how much deeper than level that is sunk, mm.
struct ScrewSeat {
    hole: Size,
    head: Size,
    deeper: f64,
}

impl ScrewSeat {
    /// None where disc and knob are glued.
    fn new(shop: &Shop<'_>, dial: &Dial) -> Option<Self> {
        let screw = disc_screw(shop.design, dial, shop.options.sunk());
        if !shop.options.screwed || screw.length.is_none() {
            return None;
        }
        Some(Self {
            hole: shop.fit.hole(Feature::JoiningScrewHole, CLEARANCE),
            head: shop.fit.hole(Feature::JoiningScrewHead, HEAD),
            deeper: screw.deeper,
        })
    }

    /// The furthest it reaches from the middle, mm.
    fn reach(&self) -> f64 {
        self.head.drawn / 2.0
    }
}

/// No wall under two lines.
fn walls(
    shop: &Shop<'_>,
    part: PartId,
    dial: &Dial,
    key: &KeyShape,
    radius: f64,
    shaft: f64,
    seat: Option<&ScrewSeat>,
) -> Result<(), PartFault> {
    let hole = seat.map_or(0.0, |seat| seat.hole.drawn / 2.0);
    for slot in &dial.disc.slots {
        let floor = radius - slot.depth;
        // on the bed the slot's edge is chamfered towards the screw's head
        let left = match seat {
            Some(seat) => floor - seat.reach() - shop.options.chamfer,
            None => floor + radius,
        };
        shop.wall(part, left, |short| Wall::SlotFloor {
            step: slot.mark,
            most_mm: slot.depth - short,
        })?;
    }
    let post = key.sizes.first().map_or(0.0, |size| size.drawn / 2.0);
    shop.wall(part, post - hole, |short| Wall::PostFlats {
        apothem_mm: dial.key.apothem + short,
    })?;
    let shoulder = shaft - key.post_reach;
    // the dust of binary fractions takes no wall: the bore that is told is large enough
    if shoulder < SHOULDER - 1e-9 {
        return Err(PartFault::NoWall {
            part,
            wall: Wall::Shoulder {
                bore_mm: dial.bore.diameter + 2.0 * (SHOULDER - shoulder),
            },
            wall_mm: shoulder,
            needed_mm: SHOULDER,
        });
    }
    Ok(())
}

/// As many small hollows in the upper face as the dial's number, so that discs are not confused;
/// none where there is no room.
fn dots(shop: &Shop<'_>, index: usize, outline: &Region, shaft: f64, radius: f64) -> Vec<Outline> {
    let (size, apart) = (0.6, 2.2);
    let count = index + 1;
    let middle = f64::midpoint(shaft, radius);
    if shop.design.dials.len() < 2 || radius - shaft < 4.0 * size {
        return Vec::new();
    }
    let step = apart / middle;
    let centres: Vec<Point> = (0..count)
        .map(|dot| {
            let turn = (dot as f64 - (count - 1) as f64 / 2.0) * step;
            Point::new(0.0, middle).rotated(turn)
        })
        .collect();
    let clear = centres
        .iter()
        .all(|centre| outline.distance(*centre) > 2.0 * size);
    if !clear || step * count as f64 > 5.0 {
        return Vec::new();
    }
    centres
        .into_iter()
        .map(|centre| Outline::circle(centre, size))
        .collect()
}
