//! Words for what the search finds, for what a run makes and for what was typed: one exhaustive match a kind of value, in the maker's unit.
//!
//! What model, proof and workshop know has its words in `latchwright_words`, which does not stand on the search.

pub mod demands;
pub mod mend;
pub mod nothing;
pub mod products;
pub mod remedy;
pub mod typed;
