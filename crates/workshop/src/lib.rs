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

pub mod boards;
pub mod inch;
#[cfg(test)]
#[path = "../../assembly/src/nonsense.rs"]
mod nonsense;
mod parts;
pub mod ruler;
pub mod set_out;
pub mod steps;
pub mod sums;
mod template;
pub mod tiles;

pub use latchwright_assembly::bit::{Bit, Fit, NEAR};
pub use latchwright_assembly::feature::{Centre, Feature, Hand, HoleKind, SlotKind};
pub use latchwright_assembly::frame::{Axis, LEAST_SIZE, MOST_SIZE};
pub use latchwright_assembly::holes::{Depth, Hole, HoleStep, Holes, Slot, Tool, WoodPart, holes};
pub use latchwright_assembly::joinery;
pub use latchwright_assembly::note::{HoleNote, HoleNoteKind, NotesAlike, alike_once};
pub use latchwright_assembly::row::{Row, cusp_of};
pub(crate) use latchwright_assembly::{bit, feature, frame, holes, note};
pub use parts::{Form, Make, Part, PartNote, Role, ScrewUse, Size, parts};
pub use template::{Face, Template, TemplateKind, Templates, step_lines, templates};
