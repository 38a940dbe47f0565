//! The ranges in which a number of a design means something.

/// The longest length that is taken seriously, mm.
const MAX_LENGTH: f64 = 5_000.0;

/// Where a number of a design may lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Range {
    /// A size that must be there: above 0, at most five metres.
    Size,
    /// A clearance, error or depth that may be 0.
    Amount,
    /// A place on either side of the origin.
    Coordinate,
    /// A reading error, 0 to 90 degrees.
    Reading,
    /// Relative humidity, 0 to 100 per cent.
    Humidity,
    /// Temperature, −30 to 60 °C.
    Celsius,
    /// A pull, up to that of several people, 1 kN.
    Newton,
    /// A coefficient of friction, 0.01 to 2.
    Friction,
    /// Coats of finish, 0 to 20.
    Coats,
    /// Things of one kind, 1 to 1000.
    Count,
    /// How much too large a print comes out; below 0 for too small.
    Oversize,
    /// A density, 0.1 to 25 g/cm³.
    Density,
    /// A board's length: above 0, at most twenty metres.
    Stock,
}

/// What a number of a design measures, and in what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Measure {
    /// A length, mm.
    Length,
    /// An angle, degrees.
    Angle,
    /// Relative humidity, per cent.
    Humidity,
    /// A temperature, °C.
    Temperature,
    /// A force, N.
    Force,
    /// A density, g/cm³.
    Density,
    /// A count or a ratio.
    Plain,
}

impl Range {
    /// The least and the most, both allowed, in what it measures.
    pub const fn limits(self) -> (f64, f64) {
        match self {
            Self::Size => (1e-3, MAX_LENGTH),
            Self::Amount => (0.0, MAX_LENGTH),
            Self::Coordinate => (-MAX_LENGTH, MAX_LENGTH),
            Self::Reading => (0.0, 90.0),
            Self::Humidity => (0.0, 100.0),
            Self::Celsius => (-30.0, 60.0),
            Self::Newton => (0.0, 1_000.0),
            Self::Friction => (0.01, 2.0),
            Self::Coats => (0.0, 20.0),
            Self::Count => (1.0, 1_000.0),
            Self::Oversize => (-5.0, 5.0),
            Self::Density => (0.1, 25.0),
            Self::Stock => (1e-3, 20_000.0),
        }
    }

    /// What it measures.
    pub const fn measure(self) -> Measure {
        match self {
            Self::Size | Self::Amount | Self::Coordinate | Self::Oversize | Self::Stock => {
                Measure::Length
            }
            Self::Reading => Measure::Angle,
            Self::Humidity => Measure::Humidity,
            Self::Celsius => Measure::Temperature,
            Self::Newton => Measure::Force,
            Self::Density => Measure::Density,
            Self::Friction | Self::Coats | Self::Count => Measure::Plain,
        }
    }

    /// Whether it is the range of sizes that must be there.
    pub(super) const fn is_of_sizes(self) -> bool {
        matches!(self, Self::Size | Self::Stock)
    }
}
