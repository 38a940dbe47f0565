//! How much a part changes its size when the air changes, as a fraction of that size.

use super::moisture::moisture_content;
use super::woods::find_wood;
use crate::model::{Climate, Grain, Material, Plate, Sawn};

/// Most that normal wood moves along the fibres, per per cent of moisture content: 0.2 % from
/// saturated (30 %) to dry.
///
/// # Source
/// Wood Handbook, chapter 4 (0.1 to 0.2 % for normal wood).
const ALONG_FIBRES: f64 = 0.002 / 30.0;

/// Direction in a piece of wood.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fibre {
    /// Along the grain.
    Along,
    /// Across a flat-sawn board.
    Tangential,
    /// Across a quarter-sawn board.
    Radial,
}

/// What makes a part move along one axis of the plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Mover {
    /// Wood: the coefficient of its species and direction, per per cent of moisture content.
    Wood(f64),
    /// A board or plastic: fraction per per cent of humidity, and per kelvin.
    Sheet {
        /// Per per cent of relative humidity.
        humid: f64,
        /// Per kelvin.
        warm: f64,
    },
}

/// Change of size, as a fraction of it, for each unit of change of what drives it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Rates {
    /// Per per cent of moisture content, by the handbook's first formula and by its second.
    Moisture {
        /// Inside the table of movement.
        first: f64,
        /// Outside it.
        second: f64,
    },
    /// Per per cent of humidity and per kelvin.
    Sheet {
        /// Per per cent of humidity.
        humid: f64,
        /// Per kelvin.
        warm: f64,
    },
}

/// Change of a size of wood as a fraction of it, from `built` to `now` per cent of moisture content.
///
/// ΔD/D = C·(M − M₀) while both lie in 6 to 14 %; outside, (M − M₀)/(1/C − 10 + M₀), which is the
/// handbook's second formula with the shrinkage that belongs to C.
///
/// # Source
/// Wood Handbook, FPL-GTR-190 (2010), Eq. 13-2 and 13-3.
pub fn wood_movement(coefficient: f64, built: f64, now: f64) -> f64 {
    let linear = |moisture: f64| TABLE.contains(&moisture);
    if linear(built) && linear(now) {
        within_table(coefficient, built, now)
    } else {
        beyond_table(coefficient, built, now)
    }
}

/// Moisture contents for which the table of movement is made, per cent.
pub(crate) const TABLE: core::ops::RangeInclusive<f64> = 6.0..=14.0;

fn within_table(coefficient: f64, built: f64, now: f64) -> f64 {
    coefficient.max(0.0) * (now - built)
}

fn beyond_table(coefficient: f64, built: f64, now: f64) -> f64 {
    if coefficient <= 0.0 {
        return 0.0;
    }
    (now - built) / (1.0 / coefficient - 10.0 + built)
}

/// One state of the air with the moisture that wood takes on in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Air {
    climate: Climate,
    moisture: f64,
}

impl Air {
    /// The air of this climate.
    pub fn of(climate: Climate) -> Self {
        Self {
            climate,
            moisture: moisture_content(climate),
        }
    }

    /// The air itself.
    pub fn climate(&self) -> Climate {
        self.climate
    }

    /// Moisture content of wood in it, per cent.
    pub fn moisture(&self) -> f64 {
        self.moisture
    }

    /// Whether wood in it has a moisture content for which the table of movement is not made.
    pub fn outside_table(&self) -> bool {
        !TABLE.contains(&self.moisture)
    }
}

impl Mover {
    /// What moves the plate along x (`along_x`) or y; `None` for a wood that is not in the table.
    pub fn of_plate(plate: &Plate, along_x: bool) -> Option<Self> {
        wood(&plate.wood, plate.sawn, plate.grain, along_x)
    }

    /// What moves the slider along x or y; `None` for a wood that is not in the table.
    ///
    /// # Source
    /// Plywood 0.0002 per 10 % of humidity and 6.1·10⁻⁶ per kelvin (plywood trade association);
    /// medium density fibreboard 0.33 % from 50 to 80 % (ANSI A208.2; the step is from memory);
    /// hardboard 0.5 % for 45 % (weak, one source); printed plastic 68·10⁻⁶ per kelvin.
    pub fn of_slider(material: &Material, along_x: bool) -> Option<Self> {
        let sheet = |humid, warm| Some(Self::Sheet { humid, warm });
        match material {
            Material::Wood {
                species,
                sawn,
                grain,
            } => wood(species, *sawn, *grain, along_x),
            Material::Plywood => sheet(0.0002 / 10.0, 6.1e-6),
            Material::Mdf => sheet(0.0033 / 30.0, 0.0),
            Material::Hardboard => sheet(0.005 / 45.0, 0.0),
            Material::Printed => sheet(0.0, 68e-6),
        }
    }

    /// How fast a part built in this air changes its size: every formula is a rate times a change.
    pub(crate) fn rates(self, built: Air) -> Rates {
        match self {
            Self::Wood(coefficient) => Rates::Moisture {
                first: within_table(coefficient, built.moisture, built.moisture + 1.0),
                second: beyond_table(coefficient, built.moisture, built.moisture + 1.0),
            },
            Self::Sheet { humid, warm } => Rates::Sheet { humid, warm },
        }
    }

    /// Change of size as a fraction of it, by the formula that the handbook gives for these two airs.
    pub fn moved(self, built: Air, now: Air) -> f64 {
        match self {
            Self::Wood(coefficient) => wood_movement(coefficient, built.moisture, now.moisture),
            Self::Sheet { .. } => self.strain(built, now, false).0,
        }
    }

    /// Change of size as a fraction of it, from the air it was built in to the air `now`: least and
    /// largest by the formulas that may hold.
    ///
    /// While the whole year stays in the table of movement there is one formula and the two are the
    /// same; where it `leaves_table`, both formulas count everywhere, so that nothing slips through
    /// where they meet.
    pub fn strain(self, built: Air, now: Air, leaves_table: bool) -> (f64, f64) {
        match self {
            Self::Wood(coefficient) => {
                let within = within_table(coefficient, built.moisture, now.moisture);
                if !leaves_table {
                    return (within, within);
                }
                let beyond = beyond_table(coefficient, built.moisture, now.moisture);
                (within.min(beyond), within.max(beyond))
            }
            Self::Sheet { humid, warm } => {
                let moved = humid * (now.climate.humidity - built.climate.humidity)
                    + warm * (now.climate.celsius - built.climate.celsius);
                (moved, moved)
            }
        }
    }
}

fn wood(species: &str, sawn: Sawn, grain: Grain, along_x: bool) -> Option<Mover> {
    let wood = find_wood(species)?;
    let fibre = match (grain == Grain::AlongX, sawn) {
        (fibres_along_x, _) if fibres_along_x == along_x => Fibre::Along,
        (_, Sawn::Flat) => Fibre::Tangential,
        (_, Sawn::Quarter) => Fibre::Radial,
    };
    Some(Mover::Wood(match fibre {
        Fibre::Along => ALONG_FIBRES,
        Fibre::Tangential => wood.tangential,
        Fibre::Radial => wood.radial,
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Wood Handbook, chapter 13, worked example: white fir 232 mm, 8 to 11 %.
    #[test]
    fn the_handbooks_white_fir_board_grows_by_1_705_mm() {
        let grown = 232.0 * wood_movement(0.002_45, 8.0, 11.0);
        assert!((grown - 1.705).abs() < 5e-4, "{grown}");
    }

    /// Eq. 13-2 and 13-3 of the Wood Handbook, evaluated by hand.
    #[test]
    fn both_formulas_give_their_worked_values() {
        assert!((150.0 * wood_movement(0.003_65, 6.0, 11.0) - 2.7375).abs() < 1e-9);
        assert!((150.0 * wood_movement(0.0018, 6.0, 11.0) - 1.35).abs() < 1e-9);
        assert!((100.0 * wood_movement(0.002_48, 6.0, 12.0) - 1.488).abs() < 1e-9);
        // the same board by the second formula
        let second: f64 = 100.0 * 6.0 / (1.0 / 0.002_48 - 10.0 + 6.0);
        assert!((second - 1.5029).abs() < 1e-4, "{second}");
    }

    #[test]
    fn the_second_formula_takes_over_outside_its_range() {
        let inside = wood_movement(0.003, 8.0, 14.0);
        let outside = wood_movement(0.003, 8.0, 14.001);
        assert!((inside - outside).abs() < 2e-4);
        assert!(wood_movement(0.003, 5.0, 8.0) > 0.0);
        assert_eq!(wood_movement(0.0, 5.0, 8.0), 0.0);
    }
}
