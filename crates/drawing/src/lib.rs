//! One neutral drawing in millimetres, for screen and paper alike, so that they cannot disagree.
//!
//! The views ([`plan`], [`section`], [`dial_face`], [`lid_card`], [`pictogram`]) take a design and
//! give a [`Drawing`]: items with a shape, a role and an opacity. The window paints the items, the
//! papers take them through [`svg()`]. A [`FlatPart`] is one part to be cut, as SVG or [`dxf()`].
//!
//! Promises of this crate:
//! - millimetres, x to the right, y up, turns of dials clockwise as people see them;
//! - roles ([`Ink`]) instead of colours; the caller brings the [`Palette`];
//! - values in, values out: no file, clock, thread or font; the same input gives the same bytes;
//! - no panic and no endless loop on any design: what cannot be drawn is left out.

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

mod card;
mod contact;
mod dial;
mod dimension;
mod disc;
mod drawing;
mod dxf;
mod fill;
mod flat;
mod grain;
mod hatch;
mod item;
mod marks;
mod mirror;
pub use mirror::rect_on_grid;
mod number;
mod outline;
mod palette;
mod pictogram;
mod picture;
mod plan;
mod plan_below;
mod seat;
mod section;
mod section_faces;
mod section_labels;
mod section_parts;
mod section_screws;
mod shape;
mod slider;
mod style;
mod svg;
mod text;

pub use card::{lid_card, lid_dials};
pub use contact::ContactMark;
pub use dial::dial_face;
pub use disc::disc_outlines;
pub use drawing::Drawing;
pub use dxf::dxf;
pub use fill::{Trapezoid, trapezoids};
pub use flat::{Cut, FlatPart, Worked};
pub use hatch::hatch;
pub use item::{Item, Layer, Subject};
pub use latchwright_geometry::Rect;
pub use outline::{Outline, Segment};
pub use palette::{Palette, Rgb, contrast};
pub use pictogram::{Pictogram, hinge, pictogram};
pub use picture::{PICTURES, is_picture, picture};
pub use plan::{PlanOptions, plan, plan_sheet, plate_marks};
pub use seat::disc_from_back;
pub use section::section;
pub use shape::{Anchor, Shape, Text, Weight};
pub use slider::{slider_crossbar, slider_fingers, slider_outline};
pub use style::{Ink, Stroke};
pub use svg::svg;
pub use text::text_width;
