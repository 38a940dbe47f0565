//! How much a part changes its size when the air changes, as a fraction of that size.

use super::moisture::moisture_content;
use super::woods::{find_wood, own_wood};
use crate::{Climate, Design, Grain, Material, Sawn};

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

/// How far one direction of a piece of wood moves with its moisture content.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Swelling {
    /// Fraction of a size for each per cent of moisture content.
    coefficient: f64,
    /// From green to oven-dry, per cent of the green size.
    shrinkage: f64,
    /// Moisture content at which the fibres are saturated, per cent.
    saturated: f64,
}

impl Swelling {
    /// A direction of which only the coefficient is known, per per cent of moisture content.
    ///
    /// Its shrinkage is the one that gives this coefficient at 10 % moisture content, as the table's
    /// coefficients come from theirs.
    pub fn of_coefficient(coefficient: f64) -> Self {
        let coefficient = coefficient.max(0.0);
        Self {
            coefficient,
            shrinkage: 100.0 * SATURATED * coefficient / (1.0 + (SATURATED - 10.0) * coefficient),
            saturated: SATURATED,
        }
    }

    /// Change of a size as a fraction of it, from `built` to `now` per cent of moisture content.
    ///
    /// C·(M − M₀) while both lie in 6 to 14 %; outside, (M − M₀)/(30·100/S − 30 + M₀) with the
    /// shrinkage S in per cent (and 22 for 30 where a species is saturated at 22 %).
    ///
    /// # Source
    /// Wood Handbook, FPL-GTR-190 (2010), Eq. 13-2 and 13-3.
    pub fn moved(self, built: f64, now: f64) -> f64 {
        if TABLE.contains(&built) && TABLE.contains(&now) {
            self.within_table(built, now)
        } else {
            self.beyond_table(built, now)
        }
    }

    fn within_table(self, built: f64, now: f64) -> f64 {
        self.coefficient * (now - built)
    }

    fn beyond_table(self, built: f64, now: f64) -> f64 {
        (now - built) * self.rates(built).1
    }

    /// Fraction per per cent by the first formula and by the second, of a size `built` at this
    /// moisture content.
    fn rates(self, built: f64) -> (f64, f64) {
        let second = if self.shrinkage <= 0.0 {
            0.0
        } else {
            1.0 / (self.saturated * 100.0 / self.shrinkage - self.saturated + built)
        };
        (self.coefficient, second)
    }
}

/// Moisture content at which the fibres of most species are saturated, per cent.
///
/// # Source
/// Wood Handbook, FPL-GTR-190 (2010), chapter 13.
const SATURATED: f64 = 30.0;

/// Moisture contents for which the table of movement is made, per cent.
pub const TABLE: core::ops::RangeInclusive<f64> = 6.0..=14.0;

/// What makes a part move along one axis of the plan.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Mover {
    /// Wood, by its species and direction.
    Wood(Swelling),
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
pub enum Rates {
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
    /// What moves the plate of this design along x (`along_x`) or y; `None` for a wood that is
    /// neither the maker's own nor in the table.
    pub fn of_plate(design: &Design, along_x: bool) -> Option<Self> {
        let plate = &design.plate;
        wood(design, &plate.wood, plate.sawn, plate.grain, along_x)
    }

    /// What moves the slider of this design along x or y; `None` as for the plate.
    ///
    /// # Source
    /// Plywood 0.0002 per 10 % of humidity and 6.1·10⁻⁶ per kelvin (plywood trade association);
    /// medium density fibreboard 0.33 % from 50 to 80 % (ANSI A208.2; the step is from memory);
    /// hardboard 0.5 % for 45 % (weak, one source); printed plastic 68·10⁻⁶ per kelvin.
    pub fn of_slider(design: &Design, along_x: bool) -> Option<Self> {
        let sheet = |humid, warm| Some(Self::Sheet { humid, warm });
        match &design.slider.material {
            Material::Wood {
                species,
                sawn,
                grain,
            } => wood(design, species, *sawn, *grain, along_x),
            Material::Plywood => sheet(0.0002 / 10.0, 6.1e-6),
            Material::Mdf => sheet(0.0033 / 30.0, 0.0),
            Material::Hardboard => sheet(0.005 / 45.0, 0.0),
            Material::Printed => sheet(0.0, 68e-6),
        }
    }

    /// How fast a part built in this air changes its size: every formula is a rate times a change.
    pub fn rates(self, built: Air) -> Rates {
        match self {
            Self::Wood(swelling) => {
                let (first, second) = swelling.rates(built.moisture);
                Rates::Moisture { first, second }
            }
            Self::Sheet { humid, warm } => Rates::Sheet { humid, warm },
        }
    }

    /// Change of size as a fraction of it, by the formula that the handbook gives for these two airs.
    pub fn moved(self, built: Air, now: Air) -> f64 {
        match self {
            Self::Wood(swelling) => swelling.moved(built.moisture, now.moisture),
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
            Self::Wood(swelling) => {
                let within = swelling.within_table(built.moisture, now.moisture);
                if !leaves_table {
                    return (within, within);
                }
                let beyond = swelling.beyond_table(built.moisture, now.moisture);
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

fn wood(design: &Design, name: &str, sawn: Sawn, grain: Grain, along_x: bool) -> Option<Mover> {
    let fibre = match sawn {
        _ if (grain == Grain::AlongX) == along_x => Fibre::Along,
        Sawn::Flat => Fibre::Tangential,
        Sawn::Quarter => Fibre::Radial,
    };
    swelling(design, name, fibre).map(Mover::Wood)
}

/// How a wood moves in one direction; the maker's own goes before the table. `None` for a wood that is
/// neither.
pub fn swelling(design: &Design, name: &str, fibre: Fibre) -> Option<Swelling> {
    let (radial, tangential, shrinkage) = if let Some(own) = own_wood(design, name) {
        (own.radial, own.tangential, None)
    } else {
        let wood = find_wood(name)?;
        (wood.radial, wood.tangential, wood.shrinkage)
    };
    let coefficient = match fibre {
        Fibre::Along => ALONG_FIBRES,
        Fibre::Tangential => tangential,
        Fibre::Radial => radial,
    };
    Some(match (fibre, shrinkage) {
        (Fibre::Tangential, Some(read)) => Swelling {
            coefficient,
            shrinkage: read.tangential,
            saturated: read.saturated,
        },
        (Fibre::Radial, Some(read)) => Swelling {
            coefficient,
            shrinkage: read.radial,
            saturated: read.saturated,
        },
        _ => Swelling::of_coefficient(coefficient),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::OwnWood;

    fn table(name: &str, fibre: Fibre) -> Swelling {
        swelling(&Design::default(), name, fibre).unwrap()
    }

    /// Wood Handbook, chapter 13, worked example: white fir 232 mm, 8 to 11 %.
    #[test]
    fn the_handbooks_white_fir_board_grows_by_1_705_mm() {
        let fir = table("white fir", Fibre::Tangential);
        assert_eq!(fir.coefficient, 0.002_45);
        let grown = 232.0 * fir.moved(8.0, 11.0);
        assert!((grown - 1.705).abs() < 5e-4, "{grown}");
    }

    /// Eq. 13-2 of the Wood Handbook, evaluated by hand.
    #[test]
    fn the_first_formula_gives_its_worked_values() {
        for (name, fibre, size, from, to, grown) in [
            ("white oak", Fibre::Tangential, 150.0, 6.0, 11.0, 2.7375),
            ("white oak", Fibre::Radial, 150.0, 6.0, 11.0, 1.35),
            ("black cherry", Fibre::Tangential, 100.0, 6.0, 12.0, 1.488),
        ] {
            let found = size * table(name, fibre).moved(from, to);
            assert!((found - grown).abs() < 1e-9, "{name}: {found}");
        }
    }

    /// Eq. 13-3 of the Wood Handbook, evaluated by hand: black cherry shrinks by 7.1 % (Table 4-3), so
    /// 100·6/(3000/7.1 − 30 + 6) = 1.5055. Of the coefficient alone, which the table has rounded, it
    /// would be 1.5029.
    #[test]
    fn the_second_formula_takes_the_shrinkage_that_was_read() {
        let cherry = table("black cherry", Fibre::Tangential);
        let grown = 100.0 * cherry.beyond_table(6.0, 12.0);
        assert!((grown - 1.5055).abs() < 5e-5, "{grown}");
        let alone = 100.0 * Swelling::of_coefficient(0.002_48).beyond_table(6.0, 12.0);
        assert!((alone - 1.5029).abs() < 5e-5, "{alone}");
    }

    #[test]
    fn the_second_formula_takes_over_outside_its_range() {
        let wood = Swelling::of_coefficient(0.003);
        let (inside, outside) = (wood.moved(8.0, 14.0), wood.moved(8.0, 14.001));
        assert!((inside - outside).abs() < 2e-4);
        assert!(inside != outside && wood.moved(5.0, 8.0) > 0.0);
        assert_eq!(Swelling::of_coefficient(0.0).moved(5.0, 8.0), 0.0);
    }

    #[test]
    fn a_makers_own_wood_moves_by_its_own_coefficients() {
        let mut design = Design {
            own_woods: vec![OwnWood {
                name: "White oak".to_owned(),
                radial: 0.001,
                tangential: 0.002,
            }],
            ..Design::default()
        };
        let moved = |design: &Design, fibre| {
            let oak = swelling(design, "white oak", fibre).unwrap();
            oak.moved(8.0, 12.0)
        };
        assert_eq!(moved(&design, Fibre::Radial), 0.001 * 4.0);
        assert_eq!(moved(&design, Fibre::Tangential), 0.002 * 4.0);
        assert_eq!(moved(&design, Fibre::Along), ALONG_FIBRES * 4.0);
        design.own_woods.clear();
        assert_eq!(moved(&design, Fibre::Radial), 0.0018 * 4.0, "the table's");
    }
}
