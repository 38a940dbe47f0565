//! What the maker has: bits, boards, a saw, paper and a printer.

/// What lies ready on this maker's bench.
#[derive(Debug, Clone, PartialEq)]
pub struct Bench {
    /// Diameters of the bits at hand, mm.
    pub bits: Vec<f64>,
    /// Boards to cut the box from; empty: not said, so a list of what to buy is made.
    pub boards: Vec<Board>,
    /// What one cut of the saw takes away, mm.
    pub kerf: f64,
    /// What is cut off each end of a board before it is used, mm.
    pub end_trim: f64,
    /// How much larger a part is sawn before it is planed or trimmed to size, mm in width and length.
    pub rough: f64,
    /// Coats of finish on one face; their thickness together is the workmanship's film.
    pub coats: u32,
    /// Whether what is seen of knobs, rings and finger knob gets these coats too; other prints stay bare.
    pub coated_prints: bool,
    /// The sheet that templates and lists are printed on.
    pub paper: Paper,
    /// Inches are shown to this denominator: 8, 16, 32 or 64.
    pub fraction: u32,
    /// The printer.
    pub printer: Printer,
}

/// Boards of one size.
#[derive(Debug, Clone, PartialEq)]
pub struct Board {
    /// Species, or `plywood`, `hardboard`, `mdf`.
    pub wood: String,
    /// Along the grain, mm.
    pub length: f64,
    /// Across the grain, mm.
    pub width: f64,
    /// Thickness as measured, mm.
    pub thickness: f64,
    /// How many of them.
    pub count: u32,
}

/// A sheet of paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Paper {
    /// One layout that fits A4 as well as Letter: 210 × 279.4 mm are used.
    #[default]
    A4OrLetter,
    /// 210 × 297 mm.
    A4,
    /// 297 × 420 mm.
    A3,
    /// 8½ × 11 in.
    Letter,
    /// 8½ × 14 in.
    Legal,
    /// 11 × 17 in.
    Tabloid,
}

/// A printer that lays down molten plastic, and how far its parts are off.
#[derive(Debug, Clone, PartialEq)]
pub struct Printer {
    /// Width of the nozzle, mm: a line is as wide.
    pub nozzle: f64,
    /// Height of a layer, mm.
    pub layer: f64,
    /// Size of the bed along x and y, mm.
    pub bed: (f64, f64),
    /// Greatest height of a part, mm.
    pub height: f64,
    /// How much too small holes come out, by their diameter.
    pub holes: Vec<HoleReading>,
    /// How much too large an outside width comes out, mm over both sides.
    pub outside: f64,
    /// How far the first layers spread beyond the rest, mm a side.
    pub foot: f64,
    /// Radius that an inside corner gets, mm.
    pub corner: f64,
    /// Density of the plastic, g/cm³.
    pub density: f64,
    /// Diameter of the filament, mm.
    pub filament: f64,
}

/// One reading of the fit gauge.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct HoleReading {
    /// Diameter as drawn, mm.
    pub diameter: f64,
    /// How much smaller it came out, mm in diameter.
    pub under: f64,
}

impl Default for Bench {
    fn default() -> Self {
        Self {
            // twist bits by halves, then common spade and Forstner bits, of inches 9/16: from memory
            bits: vec![
                1.5, 2.0, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 5.5, 6.0, 6.5, 7.0, 7.5, 8.0, 8.5, 9.0,
                9.5, 10.0, 12.0, 14.0, 14.3, 15.0, 16.0, 18.0, 20.0, 22.0, 25.0, 30.0, 35.0,
            ],
            boards: Vec::new(),
            // a full kerf of 1/8 in is 3.175 mm, a thin one 2.4: three saw guides
            kerf: 3.2,
            end_trim: 15.0,
            // common practice, no source
            rough: 3.0,
            coats: 2,
            coated_prints: false,
            paper: Paper::default(),
            fraction: 32,
            printer: Printer::default(),
        }
    }
}

impl Default for Board {
    fn default() -> Self {
        Self {
            wood: "white oak".to_owned(),
            length: 1_200.0,
            width: 150.0,
            thickness: 12.0,
            count: 1,
        }
    }
}

impl Default for Printer {
    fn default() -> Self {
        let hole = |diameter, under| HoleReading { diameter, under };
        Self {
            nozzle: 0.4,
            layer: 0.2,
            bed: (220.0, 220.0),
            height: 220.0,
            // middles of the ranges that two guides give
            holes: vec![
                hole(2.5, 0.4),
                hole(5.0, 0.3),
                hole(10.0, 0.25),
                hole(20.0, 0.2),
                hole(30.0, 0.15),
            ],
            // 0.05 to 0.15 mm in a print service's guide
            outside: 0.1,
            // 0.1 to 0.2 mm in two guides
            foot: 0.15,
            // half a line: common practice, no source
            corner: 0.2,
            // of PLA, 1.22 to 1.26: a materials table and a filament's sheet
            density: 1.24,
            filament: 1.75,
        }
    }
}
