//! What a maker asks for, as a value: everything that is known before a latch is.

use super::grid::{Grid, clear, up};
use latchwright_model::change::Size;
use latchwright_model::validate::MAX_DIALS;
use latchwright_model::validate::MAX_POSITIONS;
use latchwright_model::{Design, Dial, Labels, Material, PinMake};

/// What the maker knows and wants; the rest is found.
#[derive(Debug, Clone, PartialEq)]
pub struct Wishes {
    /// Carries what is not searched: the plate with its size and thickness as measured, the room under
    /// it, the slider's stock, the discs' and the keeper's thickness, the fits that the maker keeps
    /// (guide play, shaft play, key clearance), woods, workmanship, season, bits and printer, the age
    /// of the youngest, the unit, the combination. Its knobs are as large as knobs should be where
    /// there is room. Centres, discs, slots and the like are not looked at.
    pub base: Design,
    /// One entry a dial, from left to right.
    pub dials: Vec<DialWish>,
    /// Diameters of the rods and dowels at hand, mm; none: those of `base`. A printed pin may have any
    /// diameter.
    pub pins: Vec<f64>,
    /// Sizes that the maker holds fixed, by their address; a value in the size's own unit.
    pub pinned: Vec<(Size, f64)>,
}

/// What is asked of one dial.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DialWish {
    /// How many marks.
    pub marks: Marks,
    /// What is written at them.
    pub labels: Labels,
}

/// How many marks a dial is to have.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Marks {
    /// So many: a list of words has no more.
    Exactly(u32),
    /// So many, and more where that makes more settings.
    AtLeast(u32),
}

impl Marks {
    /// The number asked for.
    pub fn number(self) -> u32 {
        match self {
            Self::Exactly(number) | Self::AtLeast(number) => number,
        }
    }
}

impl DialWish {
    /// So many marks or more, numbered.
    pub fn numbered(at_least: u32) -> Self {
        Self {
            marks: Marks::AtLeast(at_least),
            labels: Labels::Digits,
        }
    }

    /// A list of words, one a mark.
    pub fn words(words: Vec<String>) -> Self {
        let number = u32::try_from(words.len()).unwrap_or(u32::MAX);
        Self {
            marks: Marks::Exactly(number),
            labels: Labels::Words(words),
        }
    }
}

impl Wishes {
    /// A latch with the dials of `base` as they are marked, and its pins.
    pub fn of(base: Design) -> Self {
        let dials = base.dials.iter().map(|dial| DialWish {
            marks: match &dial.labels {
                Labels::Digits | Labels::Letters => Marks::AtLeast(dial.positions),
                Labels::Words(_) | Labels::Pictures(_) => Marks::Exactly(dial.positions),
            },
            labels: dial.labels.clone(),
        });
        let mut pins: Vec<f64> = base.dials.iter().map(|dial| dial.pin.diameter).collect();
        pins.sort_by(f64::total_cmp);
        pins.dedup();
        Self {
            dials: dials.collect(),
            pins,
            pinned: Vec::new(),
            base,
        }
    }

    /// The same wishes for a lid of another size, mm: the room under it keeps its sides.
    #[must_use]
    pub fn with_lid(mut self, width: f64, depth: f64) -> Self {
        set_lid(&mut self.base, Lid { width, depth });
        self
    }

    /// The same for this lid.
    pub(super) fn on(&self, lid: Lid) -> Self {
        self.clone().with_lid(lid.width, lid.depth)
    }

    /// Whether any dial may have more marks than are asked for.
    pub(super) fn marks_are_free(&self) -> bool {
        let mut dials = self.dials.iter();
        dials.any(|dial| matches!(dial.marks, Marks::AtLeast(_)))
    }
}

/// Size of a lid, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Lid {
    /// Along x.
    pub width: f64,
    /// Along y.
    pub depth: f64,
}

impl Lid {
    /// That of a design.
    pub(super) fn of(design: &Design) -> Self {
        Self {
            width: design.plate.width,
            depth: design.plate.depth,
        }
    }

    /// mm².
    pub(super) fn area(self) -> f64 {
        self.width * self.depth
    }

    /// Whether it is no larger than `other`.
    pub(super) fn goes_on(self, other: Self) -> bool {
        self.width <= other.width + 1e-9 && self.depth <= other.depth + 1e-9
    }

    /// The lids one step narrower and one step shallower.
    pub(super) fn smaller(self, grid: Grid) -> [Self; 2] {
        let below = |length: f64| up(length, grid.lid) - grid.lid;
        [
            Self {
                width: below(self.width),
                ..self
            },
            Self {
                depth: below(self.depth),
                ..self
            },
        ]
    }
}

/// Gives `design` a plate of this size, and a room that is as much smaller as it was.
pub(super) fn set_lid(design: &mut Design, lid: Lid) {
    let (plate, inside) = (&design.plate, &mut design.inside);
    // nothing gathers from lid to lid
    inside.width = clear(inside.width + (lid.width - plate.width));
    inside.depth = clear(inside.depth + (lid.depth - plate.depth));
    (design.plate.width, design.plate.depth) = (lid.width, lid.depth);
}

/// The base as all proposals share it: pins applied, one dial a wish, pins that suit the youngest.
pub(super) fn prepared(wishes: &Wishes) -> Design {
    let mut base = wishes.base.clone();
    let first = base.dials.first().cloned().unwrap_or_default();
    base.dials.truncate(0);
    for wish in wishes.dials.iter().take(MAX_DIALS) {
        let mut dial = Dial {
            labels: wish.labels.clone(),
            positions: wish.marks.number().min(MAX_POSITIONS),
            ..first.clone()
        };
        dial.pin.offset = 0.0;
        dial.disc.slots.truncate(1);
        if dial.disc.slots.is_empty() {
            dial.disc.slots.push(latchwright_model::Slot::default());
        }
        if let Some(slot) = dial.disc.slots.first_mut() {
            slot.mark = 0;
        }
        if base.card.youngest < 3
            && base.slider.material == Material::Printed
            && matches!(dial.pin.make, PinMake::Steel | PinMake::Dowel)
        {
            // a pin that is one piece with the slider does not come off
            dial.pin.make = PinMake::PrintedLying;
        }
        base.dials.push(dial);
    }
    let dials = base.dials.len();
    base.combination.resize(dials, 0);
    base.slider.guide_at.0 = 0.0;
    base.slider.pull_at = 0.0;
    base.tab.at = 0.0;
    for (size, value) in &wishes.pinned {
        size.set(&mut base, *value);
    }
    base
}
