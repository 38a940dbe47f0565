//! How exactly the maker works, the air the box lives in, and the unit they think in.

/// The unit in which screens and papers speak.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Units {
    /// Millimetres.
    #[default]
    Millimetre,
    /// International inches of 25.4 mm.
    Inch,
}

/// What this maker's hands and printer keep to. Every value is a ± or a bound, never a spread.
#[derive(Debug, Clone, PartialEq)]
pub struct Workmanship {
    /// ± along each axis for a pin on the slider, mm.
    pub pin_place: f64,
    /// ± along each axis for a bore in the plate, mm.
    pub bore_place: f64,
    /// ± along y for the keeper's edge, mm.
    pub keeper_place: f64,
    /// ± on a thickness or a height: planed, cut, shimmed or printed, mm.
    pub thickness: f64,
    /// ± on a printed width or diameter, mm.
    pub print: f64,
    /// Thickness of the coats on one face, mm. Sizes are finished sizes, so this alone moves nothing.
    pub film: f64,
    /// ± on the coats of one face, mm.
    pub film_spread: f64,
    /// How far off its mark a pointer may stand, ± degrees.
    pub reading: f64,
}

/// One state of the air.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Climate {
    /// Temperature, °C.
    pub celsius: f64,
    /// Relative humidity, per cent.
    pub humidity: f64,
}

/// The air on the day it was built, and the extremes of its year.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Season {
    /// On the day the sizes were true.
    pub built: Climate,
    /// At the driest.
    pub driest: Climate,
    /// At the dampest.
    pub dampest: Climate,
}

impl Default for Workmanship {
    fn default() -> Self {
        Self {
            pin_place: 0.25,
            bore_place: 0.25,
            keeper_place: 0.4,
            // common practice, no source
            thickness: 0.15,
            print: 0.2,
            film: 0.1,
            film_spread: 0.05,
            reading: 3.0,
        }
    }
}

impl Default for Season {
    fn default() -> Self {
        let air = |celsius, humidity| Climate { celsius, humidity };
        Self {
            built: air(20.0, 45.0),
            driest: air(21.0, 25.0),
            dampest: air(24.0, 70.0),
        }
    }
}

impl Season {
    /// A year in which the air never changes: nothing drifts.
    pub fn still(at: Climate) -> Self {
        Self {
            built: at,
            driest: at,
            dampest: at,
        }
    }
}
