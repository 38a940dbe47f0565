//! From a design to printable solids, and those to bytes of 3MF and STL. Values in, bytes out.

pub mod extrude;
pub mod fault;
mod grid;
pub mod mesh;
mod noding;
pub mod outline;
mod plane;
pub mod region;
pub mod slice;
pub mod slope;
pub mod watertight;

pub use extrude::{Body, Prism};
pub use fault::{MeshFault, PartFault};
pub use mesh::{Extent, Mesh, Pose};
pub use outline::Outline;
pub use region::Region;
pub use slope::Edge;
