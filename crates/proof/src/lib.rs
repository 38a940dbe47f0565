//! What can be promised of a latch, over every box that could be built from it.
//!
//! [`prove`] takes a [`latchwright_model::Design`] and gives a [`Proof`]: for each dial and mark a
//! [`Verdict`] that holds over every box the maker could build within the stated workmanship and
//! season, exact counts of settings, the checks and the lock-state table.
//!
//! Where what is: [`contact`] is one pin against one disc with nothing off; [`season`] what the year moves; [`bounds`]
//! and [`dial_judge`] the plain sums; [`built`] one real box with all its numbers, and what a pin meets in it; [`worst`]
//! the exact worst case over all boxes; [`together`] dials that hold only jointly; [`check`] one file a kind of check,
//! with the kinds, what decides them and what to do as values; [`count`], [`settings`] and [`ranked`] what the verdicts
//! come to over all settings; [`states`] the lock-state table; [`builds`] boxes drawn by chance; [`slider_body`] and
//! [`strength`] the slider's wood and what it bears; [`motion`] the nominal latch under the hand.
//!
//! Promises of this crate:
//! - a verdict is never more than a real box keeps: *passes* and *holds* are proofs, *unsure* is
//!   the honest rest;
//! - no English: whoever shows a value asks the crate of words;
//! - no file, clock or thread, and no chance but what a seed gives: values in, values out, the same
//!   bits everywhere;
//! - no panic: a design with faults still gets an answer, with the faults listed and nothing
//!   promised where they touch it.
//!
//! # What the proof means
//!
//! The frame: the closed lid from outside, origin in the middle of the plate's front edge, x to the right, y towards
//! the hinge. The slider moves along +y by its travel u, from shut (0) to free. Marks count clockwise from 0, from the
//! mark nearest the hinge; files and JSON count marks from 0, people only ever see labels. A dial at mark p with digit
//! q in the combination has its true slot turned clockwise by (p − q)·360°/positions from its pin.
//!
//! **Reach** ([`contact`]) is nominal: how far the pin gets against a disc that is held still, and what it meets first.
//! It is the first hit of a ray on the disc's outline grown by the pin's radius, in closed form: no sampling, no
//! stepping. Touching is allowed, overlap is not.
//!
//! **What stops it decides**, because a real disc is free to turn. A push on plain rim goes through the dial's centre
//! and cannot turn it: it holds. A push on a mouth corner, a lead-in or a wall can turn it until the slot lines up: it
//! never counts as holding. The floor of a blind slot has caught its pin: it holds if enough tab is left.
//!
//! **Verdicts** ([`verdict`]), of one dial at one mark, over every real box:
//! - *passes*: the pin always enters a slot deep enough for the whole travel. The disc may be turned by its lead-in,
//!   wall or floor flank on the way, within its own plays;
//! - *holds*: the pin always stops on plain rim or on a blind slot's floor, with `required_hold` of tab still under the
//!   keeper at the tab's least engaged corner;
//! - *unsure*: neither can be promised. Never counted as locked.
//!
//! A setting opens if all its dials pass, locks if any one holds, and is unsure otherwise. One holding dial is enough
//! by itself, because its verdict assumes nothing about the others. So counts over Π positions settings follow from
//! Σ positions verdicts: opens = Π passes, locks = Π positions − Π (positions − holds). *Proven*: one setting opens, all
//! others lock, every check passes, every row of the lock-state table is as meant, no fault, no unknown field.
//!
//! **A real box** is what a design leaves open, made definite:
//! - *fixed errors*, each unknown but constant in one box: places of pins, bores and keeper, printed sizes, coats, and
//!   the season's drift at one moment of its year;
//! - *plays*, which move in use: slider in its guide, shafts in their bores, the key's backlash, the pointer's reading.
//!
//! **The exact worst case** ([`worst`]) bounds a figure over all boxes at once, as an interval proof: cells of boxes, each
//! bounded from its interval and its slopes, rounded outward; what only rises or falls is put at its end, the rest is
//! halved until bound and worst box found are at most `GAP` (0.002 mm; 0.01 mm for dials together) apart, or so many
//! cells were looked at that the bound is kept as it is: it is never less safe for that. The worst box is kept with all its numbers
//! ([`Check::worst`]), and what decides a check is what each thing that is off in that box costs. Sizes of one disc, shaft
//! play and reading enter steadily and are put at their worst by hand, each with its reason in the code. *Enters* is
//! exact: the pin must come onto the lead-in's flat, not its outer corner.
//!
//! The plain sums ([`bounds`], [`dial_judge`]) take every contribution at its worst at once. They are the first, fast answer, what
//! [`verdicts`] uses while they decide, and a floor under the exact one where both measure the same.
//!
//! **Together** ([`together`]): dials that are surely stopped, but of which none alone leaves enough tab because the slider
//! may turn about its pin, are looked at jointly, up to 64 ways. A dial that may meet a mouth never counts: it may be turned.
//!
//! What is assumed, and where a promise would end:
//! - The key's clearance is the *largest* at any flat after fitting, not a nominal value.
//! - Drift is the plate's place minus the slider's place. What swells is measured from the middle of the guide, where
//!   plate and slider are taken to keep together. The year is every air whose temperature and humidity lie between the
//!   extremes of the three that the design names; it is enclosed cell by cell, so that unequal distances on plate and
//!   slider, and places that swell with the wood, are counted too. Two parts of the same wood cut the same way do not
//!   drift over the same distance, but a dial is further out than its pin, and that much always moves.
//! - The keeper is taken to stay with the plate's front edge, because the rabbet over it sets where the lid lies.
//!   A notice says how far the plate moves if the hinge did.
//! - Movement of wood is that of the handbook's table, made for 6 to 14 % moisture. Outside it the handbook's second
//!   formula holds, with the shrinkage where it was read, else with the one that belongs to the coefficient; a notice says
//!   where the year leaves the table. A maker's own wood (`own_woods`) goes before the table.
//! - The slider turns in its guide by its play; that yaw lifts each pin, is counted in the clearance at rest, in the
//!   depth of the slot and in the tab's corners. The guide's points are on the slider and go with it; the strips that lead
//!   it are on the plate, so that they are as long as guide and travel, and must lie between the keeper's rabbet and the
//!   bar (`check/guide_strips.rs`).
//! - The slider is stiff, discs and pins are rigid and round, the lid is down.

// values in, values out, the same bits everywhere: `clippy.toml` has the list; tests may do as they like
#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]

pub mod builds;
pub mod built;
pub mod check;
pub mod contact;
pub mod count;
pub mod dial_judge;
pub mod hunt;
pub mod motion;
mod prove;
pub mod ranked;
pub mod results;
pub mod settings;
pub mod states;
pub mod strength;
#[cfg(test)]
#[path = "../../../tests/src/thin_latch.rs"]
mod thin_latch;
pub mod tick;
pub mod together;
pub mod tolerance;
pub mod verdict;
pub mod worst;

pub use latchwright_assembly::{bounds, season, slider_body};

pub use check::CheckKind;
pub use count::Counts;
pub use motion::{Stop, slide};
pub use prove::{
    prove, prove_each_alone, prove_known, prove_mark, prove_with_tick, unsure_dials, verdicts,
};
pub use ranked::Ranked;
pub use results::{Check, Proof};
pub use settings::{Setting, Settings};
pub use tick::Tick;
pub use together::HeldTogether;
pub use verdict::{CheckVerdict, DialProof, MarkProof, Reach, StopsAt, SureStop, Verdict};
pub use worst::known::Known;
