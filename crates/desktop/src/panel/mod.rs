//! What stands round the lid: one file a panel. Panels read the session and queue wishes.

mod builds;
mod checks;
mod column;
mod dialogs;
mod faults;
mod give;
mod grid;
mod help;
mod make;
mod new_box;
mod page;
mod proof;
mod rail;
mod season;
mod settings;
mod sizes;
mod states;
mod top;
mod try_out;
mod verdict;

pub use dialogs::{Dialog, PathDialog, Purpose, dialog_ui};
pub use give::{CARD, Given, give_ui};
pub use make::{MakeView, Making, make_ui};
pub use new_box::{NewBox, new_box_ui};
pub use proof::{Proven, proof_ui};
pub use rail::rail_ui;
pub use sizes::sizes_ui;
pub use top::top_ui;
pub use try_out::try_ui;
pub use verdict::{Judged, verdict_ui};
