//! What pin and tab bear: bending and shear of a peg and of a flat tongue, and what materials stand.
//!
//! Forces in newtons, lengths in millimetres, stresses in megapascals (N/mm²).

use core::f64::consts::PI;

use latchwright_geometry::trig;

use latchwright_model::{Grain, Material, PinMake};

/// What the stress must stay below what the material stands by, as a factor.
///
/// # Source
/// Common practice, no source: 2 to 3 where the load is known and nobody is hurt.
pub const SAFETY: f64 = 2.0;

/// Bending stress at the root of a round peg of this diameter, pushed `lever` away from it:
/// 32·F·L/(π·d³).
///
/// # Source
/// Roark, table of beams, cantilever with a load at its end; section modulus π·d³/32.
pub fn peg_bending(force: f64, lever: f64, diameter: f64) -> f64 {
    32.0 * force * lever / (PI * diameter * diameter * diameter)
}

/// Largest shear stress in a round peg, in its middle: 4·V/(3·A).
///
/// # Source
/// Any mechanics of materials; the mean is V/A.
pub fn peg_shear(force: f64, diameter: f64) -> f64 {
    16.0 * force / (3.0 * PI * diameter * diameter)
}

/// The lever at which a peg's root reaches `stress` in bending, mm.
pub fn peg_lever(force: f64, stress: f64, diameter: f64) -> f64 {
    stress * PI * diameter * diameter * diameter / (32.0 * force)
}

/// The diameter at which a peg just bears both, mm; at most a metre.
pub fn peg_diameter(force: f64, lever: f64, bears: Bears) -> f64 {
    let breaks = |diameter: f64| {
        peg_bending(force, lever, diameter) > bears.bending
            || peg_shear(force, diameter) > bears.shear
    };
    // stresses fall as it thickens: halve to where they are borne, from above
    let (mut thin, mut thick) = (0.0, 1_000.0);
    for _ in 0..60 {
        let middle = f64::midpoint(thin, thick);
        if breaks(middle) {
            thin = middle;
        } else {
            thick = middle;
        }
    }
    thick
}

/// Bending stress at the root of a flat tongue, pushed across its thickness: 6·F·L/(b·t²).
///
/// # Source
/// Section modulus of a rectangle, b·t²/6; any mechanics of materials.
pub fn tongue_bending(force: f64, lever: f64, width: f64, thickness: f64) -> f64 {
    6.0 * force * lever / (width * thickness * thickness)
}

/// Largest shear stress in a flat tongue: 3·V/(2·A).
///
/// # Source
/// Any mechanics of materials.
pub fn tongue_shear(force: f64, width: f64, thickness: f64) -> f64 {
    1.5 * force / (width * thickness)
}

/// The thickness at which a flat tongue just bears both, mm.
pub fn tongue_thickness(force: f64, lever: f64, width: f64, bears: Bears) -> f64 {
    let bent = trig::sqrt(6.0 * force * lever.max(0.0) / (width * bears.bending));
    let sheared = 1.5 * force / (width * bears.shear);
    bent.max(sheared)
}

/// What a material bears with [`SAFETY`] taken off, MPa.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bears {
    /// In bending.
    pub bending: f64,
    /// In shear.
    pub shear: f64,
}

impl Bears {
    /// From what breaks it.
    const fn half(bending: f64, shear: f64) -> Self {
        Self {
            bending: bending / SAFETY,
            shear: shear / SAFETY,
        }
    }

    /// A pin, at its root.
    ///
    /// # Source
    /// Printed: design values for PLA from makers' sheets (50 to 65 MPa in plane, 35 to 45 across
    /// layers), taken at 40 and 20; shear is half of that, common practice, no source. Steel: yield
    /// of a mild steel, 250 MPa, from memory. Dowel: the lower hardwoods, 90 MPa in bending and
    /// 12 MPa in shear, from memory.
    pub fn of_pin(make: PinMake) -> Self {
        match make {
            PinMake::Steel => Self::half(250.0, 125.0),
            PinMake::Dowel => Self::half(90.0, 12.0),
            PinMake::PrintedLying => Self::half(40.0, 20.0),
            PinMake::PrintedStanding => Self::half(20.0, 10.0),
        }
    }

    /// A tab of this material, bent up and down; the tab runs along y.
    ///
    /// # Source
    /// From memory: solid wood along the grain 60 MPa, the least of the usual cabinet woods; across
    /// it 4 MPa, as tension across the grain is 1.5 to 6 MPa for most woods; boards at the lower end
    /// of what their makers state. Printed flat: as a pin that lies.
    pub fn of_tab(material: &Material) -> Self {
        match material {
            Material::Wood { grain, .. } => match grain {
                Grain::AlongY => Self::half(60.0, 6.0),
                Grain::AlongX => Self::half(4.0, 2.0),
            },
            Material::Plywood => Self::half(30.0, 1.5),
            Material::Hardboard => Self::half(30.0, 3.0),
            Material::Mdf => Self::half(20.0, 1.5),
            Material::Printed => Self::half(40.0, 20.0),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn close(found: f64, expected: f64) {
        assert!((found - expected).abs() < 5e-4, "{found} is not {expected}");
    }

    #[test]
    fn a_pins_root_has_the_stress_of_the_tables() {
        // computed from the tables' formulas by hand
        close(peg_bending(10.0, 6.0, 4.0), 9.549);
        close(peg_shear(10.0, 4.0), 1.0610);
        close(peg_bending(20.0, 8.0, 5.0), 13.038);
        close(peg_shear(20.0, 5.0), 1.3581);
        close(peg_bending(50.0, 5.0, 3.0), 94.314);
        close(peg_shear(50.0, 3.0), 9.4314);
    }

    #[test]
    fn the_diameter_is_that_at_which_a_peg_just_bears() {
        let bears = |bending, shear| Bears { bending, shear };
        close(
            peg_diameter(10.0, 6.0, bears(peg_bending(10.0, 6.0, 4.0), 50.0)),
            4.0,
        );
        close(
            peg_diameter(20.0, 0.0, bears(1.0, peg_shear(20.0, 5.0))),
            5.0,
        );
    }

    #[test]
    fn the_lever_and_the_thickness_are_those_at_which_it_just_bears() {
        close(peg_lever(10.0, peg_bending(10.0, 6.0, 4.0), 4.0), 6.0);
        let bears = Bears {
            bending: 5.0,
            shear: 1.0,
        };
        let bent = tongue_thickness(70.0, 10.0, 40.0, bears);
        close(tongue_bending(70.0, 10.0, 40.0, bent), 5.0);
        let sheared = tongue_thickness(70.0, 0.0, 40.0, bears);
        close(tongue_shear(70.0, 40.0, sheared), 1.0);
    }
}
