//! A latch as plain values: its design, changes of it by address, and what is wrong with it as typed.
//!
//! Every length is a finished size in millimetres, every angle in degrees. A design may be wrong in
//! any way a maker can type it, and stays readable all the same: [`validate`] lists its faults.

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

mod bench;
mod body;
mod card;
pub mod change;
pub mod combination;
mod design;
mod dial;
pub mod fault;
pub mod key;
mod material;
mod parts;
pub mod pose;
mod shop;
pub mod slot;
pub mod sound;
pub mod typed;
pub mod unit;
pub mod validate;
pub mod wood;

pub use bench::{Bench, Board, HoleReading, Paper, Printer};
pub use body::{Body, Corner, Floor, Hinge, LidKind};
pub use card::{Card, CardPaper, CardStyle, Language};
pub use change::{Change, Size, Step};
pub use design::Design;
pub use dial::{Bore, Dial, Disc, Key, Knob, Labels, Pin, PinMake, Slot};
pub use fault::{Fault, FaultKind, Place, Severity};
pub use material::{Grain, Material, OwnWood, Sawn};
pub use parts::{Inside, Keeper, KeeperMake, Plate, Slider, Tab};
pub use pose::Pose;
pub use shop::{Climate, Season, Units, Workmanship};
pub use sound::{Sound, shown};
pub use unit::Unit;
