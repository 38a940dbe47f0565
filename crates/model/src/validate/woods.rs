//! Woods as typed: names that the table or the maker knows, coefficients that a wood can have.

use crate::change::WoodSize;
use crate::fault::{Fault, FaultKind, MeantAs, Place};
use crate::wood::{find_wood, own_wood};
use crate::{Design, Material, OwnWood};

/// No wood moves more for each per cent of moisture content, as a fraction of its size.
///
/// # Source
/// The most in the Wood Handbook's Table 13-5 is 0.00431 (American beech, tangential); twice that and
/// a little more.
pub const MOST_MOVEMENT: f64 = 0.01;

/// Every wood that the design names is known.
pub(super) fn check(design: &Design, faults: &mut Vec<Fault>) {
    let mut unknown = |name: &str, place| {
        if own_wood(design, name).is_none() && find_wood(name).is_none() {
            let own = design.own_woods.iter();
            let kind = FaultKind::UnknownWood {
                name: name.to_owned(),
                own: own.map(|wood| wood.name.clone()).collect(),
            };
            faults.push(Fault { place, kind });
        }
    };
    unknown(&design.plate.wood, Place::Plate);
    if let Material::Wood { species, .. } = &design.slider.material {
        unknown(species, Place::Slider);
    }
    unknown(&design.body.wood, Place::Body);
    if let Material::Wood { species, .. } = &design.body.floor.material {
        unknown(species, Place::Body);
    }
}

/// The maker's own coefficients are fractions that a wood can have, and its names tell woods apart.
pub(super) fn own(design: &Design, faults: &mut Vec<Fault>) {
    for (index, wood) in design.own_woods.iter().enumerate() {
        let both = [
            (WoodSize::Radial, wood.radial),
            (WoodSize::Tangential, wood.tangential),
        ];
        let wrong = both
            .into_iter()
            .filter_map(|(which, value)| coefficient(&wood.name, which, value));
        let kinds = wrong.chain(name(design, index, wood));
        faults.extend(kinds.map(|kind| Fault {
            place: Place::Design,
            kind,
        }));
    }
}

fn coefficient(name: &str, coefficient: WoodSize, value: f64) -> Option<FaultKind> {
    if (0.0..=MOST_MOVEMENT).contains(&value) {
        return None;
    }
    let wood = name.to_owned();
    Some(if !value.is_finite() {
        FaultKind::CoefficientNotANumber { wood, coefficient }
    } else if value < 0.0 {
        FaultKind::CoefficientNegative {
            wood,
            coefficient,
            value,
        }
    } else {
        FaultKind::CoefficientTooLarge {
            wood,
            coefficient,
            value,
            meant: meant_as(value),
        }
    })
}

/// What a coefficient that is too large to be a fraction may have been meant as.
fn meant_as(percent: f64) -> MeantAs {
    let fraction = percent / 100.0;
    if fraction <= MOST_MOVEMENT {
        return MeantAs::PerCent(fraction);
    }
    // Eq. 13-3 of the Wood Handbook at 10 % moisture content
    let coefficient = 1.0 / (3000.0 / percent - 20.0);
    if (0.0..=MOST_MOVEMENT).contains(&coefficient) {
        MeantAs::Shrinkage { coefficient }
    } else {
        MeantAs::Unknown
    }
}

fn name(design: &Design, index: usize, wood: &OwnWood) -> Option<FaultKind> {
    match own_wood(design, &wood.name) {
        Some(first) if core::ptr::eq(first, wood) => None,
        Some(_) => Some(FaultKind::OwnWoodTwice {
            name: wood.name.clone(),
        }),
        None => Some(FaultKind::OwnWoodUnnamed { wood: index }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::validate::faults;

    fn with(woods: &[(&str, f64, f64)]) -> Design {
        let own = |(name, radial, tangential): &(&str, f64, f64)| OwnWood {
            name: (*name).to_owned(),
            radial: *radial,
            tangential: *tangential,
        };
        Design {
            own_woods: woods.iter().map(own).collect(),
            ..Design::default()
        }
    }

    fn errors(design: &Design) -> Vec<FaultKind> {
        let found = faults(design).into_iter().filter(Fault::is_error);
        found.map(|fault| fault.kind).collect()
    }

    fn too_large(coefficient: WoodSize, value: f64, meant: MeantAs) -> FaultKind {
        FaultKind::CoefficientTooLarge {
            wood: "elm".to_owned(),
            coefficient,
            value,
            meant,
        }
    }

    #[test]
    fn a_coefficient_in_per_cent_is_questioned() {
        let coefficient = 1.0 / (3000.0 / 2.02 - 20.0);
        let shrinkage = MeantAs::Shrinkage { coefficient };
        assert_eq!(
            errors(&with(&[("elm", 0.0018, 2.02)])),
            [too_large(WoodSize::Tangential, 2.02, shrinkage)]
        );
        let slip = MeantAs::PerCent(0.18 / 100.0);
        assert_eq!(
            errors(&with(&[("elm", 0.18, 0.003)])),
            [too_large(WoodSize::Radial, 0.18, slip)]
        );
        let nonsense = [("elm", f64::NAN, 1e300), ("ash tree", -0.1, 0.003)];
        assert_eq!(
            errors(&with(&nonsense)),
            [
                FaultKind::CoefficientNotANumber {
                    wood: "elm".to_owned(),
                    coefficient: WoodSize::Radial,
                },
                too_large(WoodSize::Tangential, 1e300, MeantAs::Unknown),
                FaultKind::CoefficientNegative {
                    wood: "ash tree".to_owned(),
                    coefficient: WoodSize::Radial,
                    value: -0.1,
                },
            ]
        );
    }

    #[test]
    fn a_makers_own_wood_needs_a_name_of_its_own() {
        let design = with(&[
            ("elm", 0.0018, 0.0031),
            ("Elm", 0.0018, 0.0031),
            (" ", 0.001, 0.002),
        ]);
        let name = "Elm".to_owned();
        assert_eq!(
            errors(&design),
            [
                FaultKind::OwnWoodTwice { name },
                FaultKind::OwnWoodUnnamed { wood: 2 },
            ]
        );
    }

    #[test]
    fn plate_and_slider_may_be_of_a_makers_own_wood() {
        let mut design = with(&[("elm", 0.0018, 0.0031)]);
        design.plate.wood = "Elm".to_owned();
        assert_eq!(errors(&design), []);
        design.own_woods.clear();
        let unknown = FaultKind::UnknownWood {
            name: "Elm".to_owned(),
            own: Vec::new(),
        };
        assert_eq!(errors(&design), [unknown]);
    }
}
