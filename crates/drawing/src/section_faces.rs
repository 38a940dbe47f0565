//! Cut faces of the section: what each stuff looks like, and turned parts.

use latchwright_geometry::Point;

use crate::hatch::hatch;
use crate::item::{Item, Layer};
use crate::outline::Outline;
use crate::shape::Shape;
use crate::style::Ink;
use latchwright_geometry::Rect;

/// How a cut face is filled and hatched.
#[derive(Clone, Copy)]
pub(crate) enum Stuff {
    /// The plate and what is fast to it.
    Wood,
    /// The box and what is fast to it: front and keeper.
    Body,
    /// The slider.
    DeepWood,
    /// Printed parts.
    Printed,
    /// The finger knob.
    Plain,
    /// A pin that moves freely.
    Pin,
    /// A pin and the disc that stops it.
    Blocking,
}

/// Cut faces: filled, hatched and outlined.
pub(crate) fn cut_face(items: &mut Vec<Item>, faces: &[Outline], stuff: Stuff, line: Ink) {
    let (fill, ink, spacing, angle) = match stuff {
        Stuff::Wood => (Ink::Wood, Ink::Grain, 4.5, 60.0),
        Stuff::Body => (Ink::Wood, Ink::Hatch, 3.4, -60.0),
        Stuff::DeepWood => (Ink::DeepWood, Ink::Hatch, 4.5, 60.0),
        Stuff::Printed => (Ink::Part, Ink::Hatch, 2.2, -45.0),
        Stuff::Plain => (Ink::Part, Ink::Grain, 2.2, 45.0),
        Stuff::Pin => (Ink::MovableTint, Ink::Hatch, 1.1, 45.0),
        Stuff::Blocking => (Ink::BlocksTint, Ink::BlocksHatch, 1.3, 45.0),
    };
    let path = |fill, line| Item {
        layer: if matches!(stuff, Stuff::Wood | Stuff::Body) {
            Layer::Wood
        } else {
            Layer::Below
        },
        fill,
        line,
        opacity: 1.0,
        shape: Shape::Path {
            outlines: faces.to_vec(),
        },
        subject: None,
    };
    if faces.is_empty() {
        return;
    }
    items.push(path(Some(fill), None));
    items.push(Item::strokes(
        Layer::Below,
        ink,
        hatch(&[faces], spacing, angle),
    ));
    items.push(path(None, Some(line)));
}

/// A turned part in section: a head with rounded top corners, and narrower steps below it.
pub(crate) fn turned(head: Rect, steps: &[Rect], round: f64) -> Outline {
    let at = Point::new;
    let mut right = vec![
        (at(head.max.x, head.max.y), round),
        (at(head.max.x, head.min.y), 0.5),
    ];
    let mut left = vec![
        (at(head.min.x, head.max.y), round),
        (at(head.min.x, head.min.y), 0.5),
    ];
    for step in steps {
        right.extend([
            (at(step.max.x, step.max.y), 0.0),
            (at(step.max.x, step.min.y), 0.0),
        ]);
        left.extend([
            (at(step.min.x, step.max.y), 0.0),
            (at(step.min.x, step.min.y), 0.0),
        ]);
    }
    right.extend(left.into_iter().rev());
    Outline::rounded(&right)
}
