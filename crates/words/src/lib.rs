//! Every sentence that tells a value: faults, checks, what decides them, advice, changes and notes.
//!
//! The crates below know kinds and figures and no English; whoever shows them (window, terminal, paper)
//! asks here. One file a kind of value, one exhaustive match each, so that a new kind does not compile
//! until it has its words. Lengths are told in the maker's unit, rounded so that a promise never grows
//! ([`mod@figure`]).

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

pub mod advice;
pub mod changes;
pub mod checks;
pub mod combinations;
pub mod contributors;
pub mod faults;
pub mod figure;
pub mod measures;
pub mod phrase;
pub mod places;
pub mod solids;
pub mod states;
pub mod workshop;

pub use advice::advice;
pub use changes::{change_sentence, change_title, size_name, size_name_on, step_deed};
pub use checks::check_title;
pub use combinations::{setting_error, weakness_rule};
pub use contributors::contributor;
pub use faults::{fault_at_place, fault_message, fault_remedy, fault_sentence};
pub use figure::{figure, grouped, length, typed_length};
pub use measures::{number_name, number_value};
pub use phrase::{capital, listed};
pub use places::place;
pub use states::{slides_word, state_name, sure_word};
