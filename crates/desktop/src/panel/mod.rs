//! What stands round the lid: one file a panel. Panels read the session and queue wishes.

mod builds;
mod card;
mod checks;
mod dialogs;
mod faults;
mod grid;
mod proof;
mod season;
mod sizes;
mod states;
mod top;

pub use card::{CardView, card_ui};
pub use dialogs::{Dialog, PathDialog, Purpose, dialog_ui};
pub use proof::{Proven, proof_ui};
pub use sizes::sizes_ui;
pub use top::top_ui;
