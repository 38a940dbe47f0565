//! From a design to what the bench needs: parts of wood with their sizes, templates at true size,
//! boards, lists and the order of work. Values in, values out; nothing here knows paper or a file.

mod bit;
mod frame;
mod holes;
mod row;
mod say;
mod template;

pub use bit::{Bit, Fit, NEAR};
pub use holes::{Depth, Hole, Holes, Slot, Step, Tool, WoodPart, holes};
pub use row::{Row, cusp_of};
pub use template::{Face, Template, Templates, templates};
