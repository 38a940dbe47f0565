//! Figures that were bounded before. A search proves a thousand designs, each a step away from one that
//! it proved already: most of their figures rest on nothing that the step moved.

use core::cell::{Cell, RefCell};
use std::collections::HashMap;

use super::figure::{DialFigureKind, SliderFigureKind};
use super::least::Least;
use super::over_year::VARIABLES;
use latchwright_model::{Design, Dial, Grain, Material, OwnWood, Sawn, Season};

/// A figure's least over all boxes, where it can be had.
type Answer = Option<Least<VARIABLES>>;

/// Figures that are kept at most, some ten megabytes of them; then all are forgotten at once. Fewer, and
/// a search over many dials bounds the same figure again.
const KEPT: usize = 1 << 14;

/// What was bounded so far. It gives the same figures as bounding them again would, to the last bit.
#[derive(Debug, Default)]
pub struct Known {
    stuffs: RefCell<Vec<Stuff>>,
    answers: RefCell<HashMap<Asked, Answer>>,
    cells: Cell<usize>,
}

/// All that [`super::over_year::LatchOverYear`] takes of a design to say how wood and air move.
#[derive(Debug, PartialEq)]
struct Stuff {
    season: Season,
    plate: (String, Sawn, Grain),
    slider: Material,
    own_woods: Vec<OwnWood>,
}

/// Everything that a figure rests on, as bits: numbers that differ in the last one are other numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) struct Asked {
    /// Which figure.
    kind: u8,
    /// See [`Known::stuff`].
    stuff: usize,
    numbers: [u64; 17],
}

/// What is asked of the latch.
#[derive(Debug, Clone, Copy)]
pub(super) enum AskedFigure<'a> {
    /// See [`super::figure::DialFigure`].
    Dial(&'a Dial, DialFigureKind),
    /// See [`super::figure::SliderFigure`].
    Slider(SliderFigureKind),
    /// See [`super::figure::PinToBore`].
    PinToBore {
        /// Whose bore.
        bore: &'a Dial,
        /// Whose pin.
        pin: &'a Dial,
    },
}

impl Known {
    /// The answer to this, as it is known or as `bound` finds it.
    pub(super) fn answer(&self, asked: Asked, bound: impl FnOnce() -> Answer) -> Answer {
        if let Some(known) = self.answers.borrow().get(&asked) {
            return *known;
        }
        let answer = bound();
        let cells = answer.map_or(0, |answer| answer.cells);
        self.cells.set(self.cells.get() + cells);
        let mut answers = self.answers.borrow_mut();
        if answers.len() >= KEPT {
            answers.clear();
        }
        answers.insert(asked, answer);
        answer
    }

    /// Cells of boxes that were looked at so far: what the work was, whatever machine it was done on.
    pub fn cells(&self) -> usize {
        self.cells.get()
    }

    /// A number for what moves in the year.
    fn stuff(&self, design: &Design) -> usize {
        let plate = &design.plate;
        let mut stuffs = self.stuffs.borrow_mut();
        let same = |stuff: &Stuff| {
            let (wood, sawn, grain) = &stuff.plate;
            (wood, *sawn, *grain) == (&plate.wood, plate.sawn, plate.grain)
                && stuff.slider == design.slider.material
                && stuff.season == design.season
                && stuff.own_woods == design.own_woods
        };
        stuffs.iter().position(same).unwrap_or_else(|| {
            stuffs.push(Stuff {
                season: design.season,
                plate: (plate.wood.clone(), plate.sawn, plate.grain),
                slider: design.slider.material.clone(),
                own_woods: design.own_woods.clone(),
            });
            stuffs.len() - 1
        })
    }

    /// What `figure` of this design rests on, beside the figure at which a promise turns. Everything that
    /// [`super::over_year`] and [`super::figure`] read to work it out stands here.
    pub(super) fn asked(&self, design: &Design, figure: AskedFigure<'_>, decides: f64) -> Asked {
        let (slider, work) = (&design.slider, &design.workmanship);
        let overlap = || {
            let tip = design.keeper.edge - design.tab.engagement;
            [design.tab.at, tip, design.keeper.edge]
        };
        let still = [0.0; 3];
        let (kind, param, bore, pin, travel, tab) = match figure {
            AskedFigure::Dial(dial, of) => {
                let (kind, param) = match of {
                    DialFigureKind::Near => (0, 0.0),
                    DialFigureKind::NearAtEnd => (1, 0.0),
                    DialFigureKind::FarAtEnd => (2, 0.0),
                    DialFigureKind::Left => (3, 0.0),
                    DialFigureKind::Right => (4, 0.0),
                    DialFigureKind::Below => (5, 0.0),
                    DialFigureKind::BeforeMiddle => (6, 0.0),
                    DialFigureKind::Creep(within) => (7, within),
                    DialFigureKind::Held(within) => (8, within),
                };
                let travel = match of {
                    DialFigureKind::NearAtEnd
                    | DialFigureKind::FarAtEnd
                    | DialFigureKind::BeforeMiddle => slider.travel,
                    _ => 0.0,
                };
                let tab = if matches!(of, DialFigureKind::Held(_)) {
                    overlap()
                } else {
                    still
                };
                (kind, param, dial.centre, dial.pin_at(), travel, tab)
            }
            AskedFigure::Slider(of) => {
                let (kind, tab) = match of {
                    SliderFigureKind::Overlap => (9, overlap()),
                    SliderFigureKind::MostOverlap => (10, overlap()),
                    SliderFigureKind::Play => (11, still),
                    SliderFigureKind::PlateX => (12, still),
                    SliderFigureKind::PlateY => (13, still),
                };
                (kind, 0.0, (0.0, 0.0), (0.0, 0.0), 0.0, tab)
            }
            AskedFigure::PinToBore { bore, pin } => {
                (14, 0.0, bore.centre, pin.pin_at(), slider.travel, still)
            }
        };
        let numbers = [
            decides,
            param,
            bore.0,
            bore.1,
            pin.0,
            pin.1,
            travel,
            tab[0],
            tab[1],
            tab[2],
            slider.guide_at.0,
            slider.guide_at.1,
            slider.guide_length,
            slider.guide_play,
            design.tab.width,
            work.pin_place,
            work.bore_place,
        ]
        .map(f64::to_bits);
        Asked {
            kind,
            stuff: self.stuff(design),
            numbers,
        }
    }
}
