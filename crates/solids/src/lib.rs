//! From a design to printable solids, and those to bytes of 3MF and STL. Values in, bytes out.
//!
//! [`parts()`] gives all parts of a design, or every fault that stands in the way; [`files()`] gives
//! every file of them: [`plate_up()`] places them on beds, [`mod@write`] turns them into bytes. Lengths are millimetres, z is up, the lowest
//! point of a part lies at z = 0. Same design, same bytes.

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

pub mod extrude;
pub mod fault;
mod feature;
pub mod files;
pub mod fit;
mod flip;
mod grid;
mod label;
pub mod mesh;
mod noding;
mod nudge;
pub mod numerals;
pub mod options;
pub mod outline;
pub mod part;
mod parts;
mod pile;
mod plane;
pub mod plate_up;
pub mod region;
pub mod slice;
pub mod slope;
mod strip;
mod surface;
pub mod view;
mod warning;
pub mod watertight;
pub mod write;

pub use extrude::{Body, Prism};
pub use fault::{MeshFault, PartFault, SizeOption, Slim, Wall};
pub use feature::Feature;
pub use files::{File, files, files_of};
pub use mesh::{Extent, Mesh, Pose};
pub use options::{Grip, Options, Relief};
pub use outline::Outline;
pub use part::{Part, PartId};
pub use parts::{parts, parts_with_tick};
pub use plate_up::{Bed, plate_up};
pub use region::{Fill, Region};
pub use slope::Edge;
pub use warning::Warning;
