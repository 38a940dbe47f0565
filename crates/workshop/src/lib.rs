//! From a design to what the bench needs: parts of wood with their sizes, templates at true size,
//! boards, lists and the order of work. Values in, values out; nothing here knows paper or a file.

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

mod bit;
pub mod boards;
mod feature;
mod frame;
mod holes;
pub mod inch;
pub mod joinery;
#[cfg(test)]
mod nonsense;
mod note;
mod parts;
mod row;
pub mod ruler;
pub mod set_out;
pub mod steps;
mod template;
pub mod tiles;

pub use bit::{Bit, Fit, NEAR};
pub use feature::{Centre, Feature, Hand, HoleKind, SlotKind};
pub use frame::{Axis, LEAST_SIZE, MOST_SIZE};
pub use holes::{Depth, Hole, HoleStep, Holes, Slot, Tool, WoodPart, holes};
pub use note::{HoleNote, HoleNoteKind, NotesAlike, alike_once};
pub use parts::{Make, Part, PartNote, Role, Size, parts};
pub use row::{Row, cusp_of};
pub use template::{Face, Template, TemplateKind, Templates, templates};
