//! The latch as plain values. Every length is a finished size in millimetres.
//!
//! Nothing here is checked: a design may be wrong in any way a maker can type it, and stays
//! readable all the same. [`crate::fault`] says what is wrong with it.
//!
//! Frame: seen from outside the closed lid; the origin is the middle of the front edge of the
//! plate, x to the right, y towards the hinge. Marks count clockwise from the mark nearest the
//! hinge, from 0.

use crate::{
    Bench, Body, Card, Dial, Inside, Keeper, OwnWood, Plate, Season, Slider, Tab, Units,
    Workmanship,
};

/// One latch: what is built, how exactly, and for whom.
#[derive(Debug, Clone, PartialEq)]
pub struct Design {
    /// What the maker calls it.
    pub title: String,
    /// The unit in which screens and papers speak; the design itself is always in millimetres.
    pub units: Units,
    /// The wooden top that carries the dials.
    pub plate: Plate,
    /// What slides, with its pins.
    pub slider: Slider,
    /// What reaches under the keeper.
    pub tab: Tab,
    /// What holds the tab down.
    pub keeper: Keeper,
    /// The room under the lid.
    pub inside: Inside,
    /// The sides and floor of the box.
    pub body: Body,
    /// The dials, in the order in which people number them.
    pub dials: Vec<Dial>,
    /// One mark a dial: where the true slots face their pins.
    pub combination: Vec<u32>,
    /// How exactly this maker works.
    pub workmanship: Workmanship,
    /// The air it is built in and lives in.
    pub season: Season,
    /// Woods that the maker has measured.
    pub own_woods: Vec<OwnWood>,
    /// What the maker has to build it with.
    pub bench: Bench,
    /// The card for the recipient.
    pub card: Card,
}

impl Design {
    /// The mark at which dial `dial` (from 0) has its true slot facing its pin; 0 where none is given.
    pub fn digit(&self, dial: usize) -> u32 {
        self.combination.get(dial).copied().unwrap_or(0)
    }
}

impl Default for Design {
    /// Three dials of eight marks on a 220 × 140 plate; proven as it stands.
    fn default() -> Self {
        let at = |x: f64| Dial {
            centre: (x, 95.0),
            ..Dial::default()
        };
        Self {
            title: "Untitled box".to_owned(),
            units: Units::Millimetre,
            plate: Plate::default(),
            slider: Slider::default(),
            tab: Tab::default(),
            keeper: Keeper::default(),
            inside: Inside::default(),
            body: Body::default(),
            dials: vec![at(-55.0), at(0.0), at(55.0)],
            combination: vec![3, 6, 1],
            workmanship: Workmanship::default(),
            season: Season::default(),
            own_woods: Vec::new(),
            bench: Bench::default(),
            card: Card::default(),
        }
    }
}
