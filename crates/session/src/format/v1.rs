//! The first file format: which fields a design file has, in the order in which they are written.
//!
//! These tables are the only list of fields. Each gives a struct that serde reads, in which every
//! field may be missing, and both ways between it and the model.

use latchwright_model::{
    Bench, Board, Body, Bore, Card, CardPaper, CardStyle, Climate, Corner, Design, Dial, Disc,
    Floor, Grain, Hinge, HoleReading, Inside, Keeper, KeeperMake, Key, Knob, Labels, Language,
    LidKind, Material, OwnWood, Paper, Pin, PinMake, Plate, Printer, Sawn, Season, Slider, Slot,
    Tab, Units, Workmanship,
};
use serde::Deserialize;

use super::stored::{Notes, Stored};
use super::write::Tree;

/// A part with named fields.
macro_rules! part {
    ($part:ident => $file:ident { $($field:ident: $kind:ty),* $(,)? }) => {
        #[derive(Debug, Deserialize)]
        pub(super) struct $file {
            $($field: Option<<$kind as Stored>::File>,)*
        }

        impl Stored for $part {
            type File = $file;

            fn tree(&self) -> Tree {
                Tree::Fields("", vec![$((stringify!($field), self.$field.tree())),*])
            }

            fn restore(file: $file, default: &Self, notes: &mut Notes) -> Self {
                Self {
                    $($field: notes.field(stringify!($field), file.$field, &default.$field),)*
                }
            }
        }
    };
}

/// A choice of names.
macro_rules! choice {
    ($choice:ident => $file:ident { $($name:ident),* $(,)? }) => {
        #[derive(Debug, Deserialize)]
        pub(super) enum $file {
            $($name,)*
        }

        impl Stored for $choice {
            type File = $file;

            fn tree(&self) -> Tree {
                Tree::Word(match self {
                    $(Self::$name => stringify!($name),)*
                }.to_owned())
            }

            fn restore(file: $file, _: &Self, _: &mut Notes) -> Self {
                match file {
                    $($file::$name => Self::$name,)*
                }
            }
        }
    };
}

choice!(Units => UnitsFile { Millimetre, Inch });
choice!(Sawn => SawnFile { Flat, Quarter });
choice!(Grain => GrainFile { AlongX, AlongY });
choice!(PinMake => PinMakeFile { Steel, Dowel, PrintedLying, PrintedStanding });
choice!(KeeperMake => KeeperMakeFile { Wood, Printed });
choice!(Language => LanguageFile { English, German, French, Spanish, Japanese });
choice!(CardStyle => CardStyleFile { Words, Pictures });
choice!(Corner => CornerFile { Mitred, Butted, Rabbeted });
choice!(Paper => PaperFile { A4OrLetter, A4, A3, Letter, Legal, Tabloid });
choice!(CardPaper => CardPaperFile { A6, A5, FoldedA4 });

part!(Plate => PlateFile {
    width: f64, depth: f64, thickness: f64, rabbet: f64, room: f64, wood: String, sawn: Sawn, grain: Grain,
});
part!(Slider => SliderFile {
    travel: f64, guide_length: f64, guide_play: f64, guide_at: (f64, f64), pull_at: f64,
    shank: f64, thickness: f64, below: f64, pull: f64, friction: f64, material: Material,
});
part!(Tab => TabFile { at: f64, width: f64, engagement: f64, required_hold: f64 });
part!(Keeper => KeeperFile { edge: f64, width: f64, depth: f64, thickness: f64, make: KeeperMake });
part!(Inside => InsideFile { width: f64, depth: f64, height: f64 });
part!(Body => BodyFile {
    thickness: f64, wood: String, sawn: Sawn, corner: Corner, lid: LidKind, groove: f64, foot: f64,
    floor: Floor, hinge: Hinge,
});
part!(Floor => FloorFile { thickness: f64, material: Material });
part!(Hinge => HingeFile { length: f64, leaf: f64, thickness: f64, inset: f64 });
part!(Slot => SlotFile { mark: i64, width: f64, depth: f64, lead_in: f64 });
part!(Disc => DiscFile { radius: f64, thickness: f64, below: f64, slots: Vec<Slot> });
part!(Pin => PinFile {
    offset: f64, diameter: f64, gap: f64, height: f64, free: f64, make: PinMake,
});
part!(Key => KeyFile { sides: u32, apothem: f64, clearance: f64 });
part!(Bore => BoreFile { diameter: f64, shaft_play: f64 });
part!(Knob => KnobFile { diameter: f64, height: f64 });
part!(Dial => DialFile {
    centre: (f64, f64), positions: u32, labels: Labels, disc: Disc, pin: Pin, key: Key,
    bore: Bore, knob: Knob,
});
part!(Workmanship => WorkmanshipFile {
    pin_place: f64, bore_place: f64, keeper_place: f64, thickness: f64, print: f64, film: f64, film_spread: f64,
    reading: f64,
});
part!(Climate => ClimateFile { celsius: f64, humidity: f64 });
part!(Season => SeasonFile { built: Climate, driest: Climate, dampest: Climate });
part!(OwnWood => OwnWoodFile { name: String, radial: f64, tangential: f64 });
part!(Bench => BenchFile {
    bits: Vec<f64>, boards: Vec<Board>, kerf: f64, end_trim: f64, rough: f64, coats: u32, coated_prints: bool,
    paper: Paper,
    fraction: u32, printer: Printer,
});
part!(Board => BoardFile { wood: String, length: f64, width: f64, thickness: f64, count: u32 });
part!(Printer => PrinterFile {
    nozzle: f64, layer: f64, bed: (f64, f64), height: f64, holes: Vec<HoleReading>, outside: f64, foot: f64,
    corner: f64, density: f64, filament: f64,
});
part!(HoleReading => HoleReadingFile { diameter: f64, under: f64 });
part!(Card => CardFile {
    language: Language, style: CardStyle, paper: CardPaper, recipient: String, youngest: u32, greeting: String,
    from: String, show_combination: bool,
});

/// What the slider is made of; wood has fields of its own.
#[derive(Debug, Deserialize)]
pub(super) enum MaterialFile {
    Wood {
        species: Option<String>,
        sawn: Option<SawnFile>,
        grain: Option<GrainFile>,
    },
    Plywood,
    Hardboard,
    Mdf,
    Printed,
}

impl Stored for Material {
    type File = MaterialFile;

    fn tree(&self) -> Tree {
        Tree::Word(match self {
            Self::Wood {
                species,
                sawn,
                grain,
            } => {
                let fields = vec![
                    ("species", species.tree()),
                    ("sawn", sawn.tree()),
                    ("grain", grain.tree()),
                ];
                return Tree::Fields("Wood", fields);
            }
            Self::Plywood => "Plywood".to_owned(),
            Self::Hardboard => "Hardboard".to_owned(),
            Self::Mdf => "Mdf".to_owned(),
            Self::Printed => "Printed".to_owned(),
        })
    }

    fn restore(file: MaterialFile, _: &Self, notes: &mut Notes) -> Self {
        match file {
            MaterialFile::Wood {
                species,
                sawn,
                grain,
            } => {
                let plate = Plate::default();
                Self::Wood {
                    species: notes.field("species", species, &plate.wood),
                    sawn: notes.field("sawn", sawn, &plate.sawn),
                    grain: notes.field("grain", grain, &plate.grain),
                }
            }
            MaterialFile::Plywood => Self::Plywood,
            MaterialFile::Hardboard => Self::Hardboard,
            MaterialFile::Mdf => Self::Mdf,
            MaterialFile::Printed => Self::Printed,
        }
    }
}

/// What comes off as the lid; a band has a height.
#[derive(Debug, Deserialize)]
pub(super) enum LidKindFile {
    Plate,
    Band {
        height: Option<<f64 as Stored>::File>,
    },
}

impl Stored for LidKind {
    type File = LidKindFile;

    fn tree(&self) -> Tree {
        match self {
            Self::Plate => Tree::Word("Plate".to_owned()),
            Self::Band { height } => Tree::Fields("Band", vec![("height", height.tree())]),
        }
    }

    fn restore(file: LidKindFile, _: &Self, notes: &mut Notes) -> Self {
        match file {
            LidKindFile::Plate => Self::Plate,
            LidKindFile::Band { height } => Self::Band {
                height: notes.field("height", height, &20.0),
            },
        }
    }
}

/// What is written at the marks.
#[derive(Debug, Deserialize)]
pub(super) enum LabelsFile {
    Digits,
    Letters,
    Words(Vec<String>),
    Pictures(Vec<String>),
}

impl Stored for Labels {
    type File = LabelsFile;

    fn tree(&self) -> Tree {
        match self {
            Self::Digits => Tree::Word("Digits".to_owned()),
            Self::Letters => Tree::Word("Letters".to_owned()),
            Self::Words(words) => Tree::Variant("Words", Box::new(words.tree())),
            Self::Pictures(names) => Tree::Variant("Pictures", Box::new(names.tree())),
        }
    }

    fn restore(file: LabelsFile, _: &Self, _: &mut Notes) -> Self {
        match file {
            LabelsFile::Digits => Self::Digits,
            LabelsFile::Letters => Self::Letters,
            LabelsFile::Words(words) => Self::Words(words),
            LabelsFile::Pictures(names) => Self::Pictures(names),
        }
    }
}

/// The whole file.
#[derive(Debug, Deserialize)]
pub(super) struct DesignFile {
    /// Read before everything else; here so that it is not an unknown field.
    #[serde(rename = "format")]
    _format: u32,
    title: Option<String>,
    units: Option<UnitsFile>,
    plate: Option<PlateFile>,
    slider: Option<SliderFile>,
    tab: Option<TabFile>,
    keeper: Option<KeeperFile>,
    inside: Option<InsideFile>,
    body: Option<BodyFile>,
    dials: Option<Vec<DialFile>>,
    combination: Option<Vec<u32>>,
    workmanship: Option<WorkmanshipFile>,
    season: Option<SeasonFile>,
    own_woods: Option<Vec<OwnWoodFile>>,
    bench: Option<BenchFile>,
    card: Option<CardFile>,
}

/// The design of a file, with a note of everything that was left out.
pub(super) fn restore(file: DesignFile, notes: &mut Notes) -> Design {
    let default = Design::default();
    // one after the other, so that what is left out is listed in the order of the format
    let title = notes.field("title", file.title, &default.title);
    let units = notes.field("units", file.units, &default.units);
    let plate = notes.field("plate", file.plate, &default.plate);
    let slider = notes.field("slider", file.slider, &default.slider);
    let tab = notes.field("tab", file.tab, &default.tab);
    let keeper = notes.field("keeper", file.keeper, &default.keeper);
    let inside = notes.field("inside", file.inside, &default.inside);
    let body = notes.field("body", file.body, &default.body);
    let dials: Vec<Dial> = notes.field("dials", file.dials, &default.dials);
    let combination = fitting(&default, &dials);
    Design {
        title,
        units,
        plate,
        slider,
        tab,
        keeper,
        inside,
        body,
        dials,
        combination: notes.field("combination", file.combination, &combination),
        workmanship: notes.field("workmanship", file.workmanship, &default.workmanship),
        season: notes.field("season", file.season, &default.season),
        own_woods: notes.field("own_woods", file.own_woods, &default.own_woods),
        bench: notes.field("bench", file.bench, &default.bench),
        card: notes.field("card", file.card, &default.card),
    }
}

/// The usual combination where it fits the dials, else every dial at its first mark.
fn fitting(default: &Design, dials: &[Dial]) -> Vec<u32> {
    let fits = default.combination.len() == dials.len()
        && dials
            .iter()
            .zip(&default.combination)
            .all(|(dial, mark)| *mark < dial.positions);
    if fits {
        default.combination.clone()
    } else {
        vec![0; dials.len()]
    }
}

/// The file of a design.
pub(super) fn tree(design: &Design) -> Tree {
    Tree::Fields(
        "",
        vec![
            ("format", super::FORMAT.tree()),
            ("title", design.title.tree()),
            ("units", design.units.tree()),
            ("plate", design.plate.tree()),
            ("slider", design.slider.tree()),
            ("tab", design.tab.tree()),
            ("keeper", design.keeper.tree()),
            ("inside", design.inside.tree()),
            ("body", design.body.tree()),
            ("dials", design.dials.tree()),
            ("combination", design.combination.tree()),
            ("workmanship", design.workmanship.tree()),
            ("season", design.season.tree()),
            ("own_woods", design.own_woods.tree()),
            ("bench", design.bench.tree()),
            ("card", design.card.tree()),
        ],
    )
}
