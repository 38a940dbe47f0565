//! The six questions from which a latch is proposed, and their answers as wishes for the solver.

use latchwright_model::change::DialSize;
use latchwright_model::{Design, Labels, Units, Workmanship};
use latchwright_model::{Size, Unit};
use latchwright_search::propose::{DialWish, Marks, Wishes};

use crate::units::{TypedError, parse_length};
use latchwright_words::{size_name, size_name_on};

/// What stands round every dial.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Signs {
    /// At least so many figures.
    Figures(u32),
    /// At least so many letters.
    Letters(u32),
    /// The maker's own words.
    Words(Vec<String>),
}

/// How exactly the maker works. Common practice, no source.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Care {
    /// Marked out with a pencil and bored by eye.
    ByEye,
    /// Knife lines, an awl and a stop.
    #[default]
    Careful,
    /// A drilling jig and fine reading marks.
    WithJig,
}

impl Care {
    /// From coarse to fine.
    pub const ALL: [Self; 3] = [Self::ByEye, Self::Careful, Self::WithJig];

    /// In the maker's words.
    pub const fn name(self) -> &'static str {
        match self {
            Self::ByEye => "pencil and eye",
            Self::Careful => "knife line, awl and stop",
            Self::WithJig => "drilling jig, fine marks",
        }
    }

    /// What it keeps to.
    pub fn workmanship(self) -> Workmanship {
        let usual = Workmanship::default();
        let times = match self {
            Self::ByEye => 1.5,
            Self::Careful => 1.0,
            Self::WithJig => 0.5,
        };
        Workmanship {
            pin_place: usual.pin_place * times,
            bore_place: usual.bore_place * times,
            keeper_place: usual.keeper_place * times,
            reading: usual.reading * times,
            ..usual
        }
    }
}

/// The six answers.
#[derive(Debug, Clone, PartialEq)]
pub struct Answers {
    /// The unit in which the maker thinks.
    pub units: Units,
    /// Width and depth of the lid, mm.
    pub lid: (f64, f64),
    /// Thickness of the plate as measured, mm.
    pub plate: f64,
    /// How many dials.
    pub dials: u32,
    /// What stands round each.
    pub signs: Signs,
    /// How exactly the maker works.
    pub care: Care,
    /// Age in years of the youngest who will live with the box.
    pub youngest: u32,
    /// Sizes that the maker holds fixed, each in its own unit; the rest is found round them.
    pub held: Vec<(Size, f64)>,
}

impl Default for Answers {
    fn default() -> Self {
        Self {
            units: Units::Millimetre,
            lid: (220.0, 140.0),
            plate: 12.0,
            dials: 3,
            signs: Signs::Figures(8),
            care: Care::default(),
            youngest: 14,
            held: Vec::new(),
        }
    }
}

/// The parts of a design file that [`Answers::wishes`] takes whole from the bench, so that comments on
/// them hold for what is proposed too.
pub const FROM_BENCH: [&str; 3] = ["season", "own_woods", "bench"];

/// Most dials that are asked for.
const MOST_DIALS: u32 = 12;

impl Answers {
    /// As wishes, with everything else as in the usual box; what the maker has (bits, printer, paper,
    /// boards, woods, air) comes from `bench`.
    pub fn wishes(&self, bench: &Design) -> Wishes {
        let usual = Design::default();
        let mut base = Design {
            units: self.units,
            bench: bench.bench.clone(),
            season: bench.season,
            own_woods: bench.own_woods.clone(),
            workmanship: self.care.workmanship(),
            ..usual
        };
        "A new box".clone_into(&mut base.title);
        base.plate.wood.clone_from(&bench.plate.wood);
        base.plate.sawn = bench.plate.sawn;
        base.body.wood.clone_from(&bench.body.wood);
        base.plate.rabbet += self.plate - base.plate.thickness;
        base.plate.rabbet = base.plate.rabbet.clamp(1.0, (self.plate - 2.0).max(1.0));
        base.keeper.thickness = (base.plate.rabbet - 1.0).max(1.0);
        base.plate.thickness = self.plate;
        base.card.youngest = self.youngest;
        let mut wishes = Wishes::of(base).with_lid(self.lid.0, self.lid.1);
        let dial = match &self.signs {
            Signs::Figures(count) => DialWish::numbered(*count),
            Signs::Letters(count) => DialWish {
                marks: Marks::AtLeast(*count),
                labels: Labels::Letters,
            },
            Signs::Words(words) => DialWish::words(words.clone()),
        };
        let dials = self.dials.min(MOST_DIALS) as usize;
        wishes.dials = vec![dial; dials];
        wishes.base.combination = vec![0; dials];
        let held = self.held.iter();
        wishes.pinned = held
            .flat_map(|(size, mm)| {
                let sizes = on_every_dial(*size, dials).into_iter();
                sizes.map(|size| (size, *mm))
            })
            .collect();
        wishes
    }
}

/// The sizes that can be held fixed, with their names: all dials are alike, so that those of the first
/// stand for each, but for its place.
pub fn holdable(design: &Design) -> Vec<(Size, String)> {
    let sizes = Size::all(design).into_iter();
    let lengths = sizes.filter(|size| size.unit() == Unit::Millimetre);
    lengths
        .filter(|size| {
            matches!(
                size,
                Size::Latch(_) | Size::Dial(0, _) | Size::Slot(0, 0, _)
            )
        })
        .map(|size| (size, held_name(size)))
        .collect()
}

/// What a size that is held is called: a size of a dial is held on each, but for its place.
pub(crate) fn held_name(size: Size) -> String {
    if matches!(size, Size::Dial(..) | Size::Slot(..)) && !is_place(size) {
        format!("{} of every dial", size_name_on(size, &[]))
    } else {
        size_name(size)
    }
}

/// Whether this is where a dial stands.
const fn is_place(size: Size) -> bool {
    matches!(size, Size::Dial(_, DialSize::CentreX | DialSize::CentreY))
}

/// This size on each of so many dials.
fn on_every_dial(size: Size, dials: usize) -> Vec<Size> {
    match size {
        Size::Dial(0, of) if !is_place(size) => {
            (0..dials).map(|dial| Size::Dial(dial, of)).collect()
        }
        Size::Slot(0, slot, of) => (0..dials).map(|dial| Size::Slot(dial, slot, of)).collect(),
        other => vec![other],
    }
}

/// Why a text holds no size.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum HeldError {
    /// Nothing stands between the size and its length.
    NoSign {
        /// As typed.
        text: String,
    },
    /// No size that can be held is called so.
    NoSize {
        /// As typed.
        name: String,
        /// Those that can be held.
        holdable: Vec<Size>,
    },
    /// No length stands behind the sign.
    NoLength {
        /// The size, as typed.
        name: String,
        /// Why.
        why: TypedError,
    },
}

/// A size held fixed as it is typed: `gap of every dial = 2.5`.
///
/// # Errors
/// No such size is there, or no length stands behind the sign.
pub fn read_held(text: &str, design: &Design) -> Result<(Size, f64), HeldError> {
    let (name, value) = text.split_once('=').ok_or_else(|| HeldError::NoSign {
        text: text.to_owned(),
    })?;
    let plain = |name: &str| name.trim().to_lowercase().replace("the ", "");
    let wanted = plain(name);
    let name = name.trim().to_owned();
    let all = holdable(design);
    let size = all.iter().find(|(_, name)| plain(name) == wanted);
    let Some((size, _)) = size else {
        let holdable = all.iter().map(|(size, _)| *size).collect();
        return Err(HeldError::NoSize { name, holdable });
    };
    match parse_length(value, design.units) {
        Ok(mm) => Ok((*size, mm)),
        Err(why) => Err(HeldError::NoLength { name, why }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::words::typed::held_error;
    use latchwright_search::propose::{Outcome, propose};

    #[test]
    fn a_size_is_held_by_its_name() {
        let design = Design::default();
        let (size, mm) = read_held("gap of every dial = 2,5", &design).expect("read");
        assert_eq!((size_name(size).as_str(), mm), ("the gap of dial 1", 2.5));
        assert!(read_held("gap", &design).is_err());
        let why = held_error(&read_held("girth = 3", &design).expect_err("refused"));
        assert!(why.contains("the gap of every dial"), "{why}");
        assert!(read_held("gap of every dial = lots", &design).is_err());
    }

    #[test]
    fn what_is_held_stays_in_every_proposal() {
        let design = Design::default();
        let held = read_held("gap of every dial = 2.5", &design).expect("read");
        let answers = Answers {
            held: vec![held],
            ..Answers::default()
        };
        let found = propose(&answers.wishes(&design), &mut |_| {
            std::ops::ControlFlow::Continue(())
        });
        let Outcome::Found(proposals) = found else {
            panic!("{found:?}")
        };
        assert!(!proposals.is_empty());
        for proposal in proposals {
            let dials = &proposal.design.dials;
            assert_eq!(dials.len(), 3);
            for dial in dials {
                let gap = dial.pin.gap;
                assert!((gap - 2.5).abs() < 1e-9, "{:?}: {gap}", proposal.kind);
            }
        }
    }
}
