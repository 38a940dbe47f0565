//! Where the figures and customs of the order of work come from.

/// A source.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Source {
    /// What is known at benches and has no source.
    Practice,
    /// Moisture of wood from the air.
    Moisture,
    /// Movement of wood.
    Movement,
    /// How fast drills turn.
    DrillSpeeds,
    /// Sizes of screws and their holes.
    Screws,
    /// How far the first layers of a print spread.
    FirstLayers,
}

impl Source {
    /// In words, without a stop.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Practice => "common practice, no source",
            Self::Moisture => {
                "moisture by the Hailwood–Horrobin relation, Wood Handbook FPL-GTR-190"
            }
            Self::Movement => "movement by the Wood Handbook, FPL-GTR-190, Table 13-5 and Eq. 13-3",
            Self::DrillSpeeds => {
                "drill speeds: twist bits from two charts on the web; Forstner and brad-point bits from a woodworking \
     magazine's drill-press chart, from memory"
            }
            Self::Screws => {
                "screws: shank by ANSI B18.6.1; pilot and clearance holes from two charts each"
            }
            Self::FirstLayers => "elephant foot 0.1 to 0.2 mm: two guides",
        }
    }
}
