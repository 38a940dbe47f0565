//! Plane geometry for the lid: points, rays and the few curves a latch is made of.
//!
//! Contract, held everywhere above this crate:
//! - lengths are millimetres, angles inside are radians (degrees carry `_deg` in their name);
//! - x runs to the right, y away from the viewer (towards the hinge), angles in this crate are
//!   counter-clockwise positive; the mechanism's own turns are clockwise and say so;
//! - every function is total: finite input gives finite output or `None`, never a panic;
//! - the same input gives the same bits on every machine ([`trig`] is the only door to sines).

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

pub mod interval;
pub mod point;
pub mod ray;
pub mod rect;
pub mod trig;

pub use interval::Interval;
pub use point::Point;
pub use ray::Ray;
pub use rect::Rect;

/// Rounding slack of this crate in millimetres: two lengths closer than this are the same length.
///
/// It covers the rounding of a handful of `f64` operations on lengths up to ten metres and has
/// nothing to do with workmanship.
pub const EPSILON: f64 = 1e-9;
