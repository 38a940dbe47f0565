//! The six questions from which a latch is proposed, and their answers as wishes for the solver.

use latchwright_solver::model::{Design, Labels, Units, Workmanship};
use latchwright_solver::propose::{DialWish, Marks, Wishes};

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
        }
    }
}

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
        wishes
    }
}
