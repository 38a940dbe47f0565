//! Woods as typed: names that the table or the maker knows, coefficients that a wood can have.

use super::error;
use crate::fault::{Fault, Place};
use crate::wood::{find_wood, own_wood, wood_names};
use crate::{Design, Material, OwnWood};

/// No wood moves more for each per cent of moisture content, as a fraction of its size.
///
/// # Source
/// The most in the Wood Handbook's Table 13-5 is 0.00431 (American beech, tangential); twice that and
/// a little more.
const MOST: f64 = 0.01;

/// Every wood that the design names is known.
pub(super) fn check(design: &Design, faults: &mut Vec<Fault>) {
    let mut unknown = |name: &str, place| {
        if own_wood(design, name).is_none() && find_wood(name).is_none() {
            let own = design.own_woods.iter();
            let mut names: Vec<&str> = own.map(|wood| wood.name.as_str()).collect();
            for name in wood_names() {
                names.push(name);
            }
            faults.push(error(
                "unknown-wood",
                place,
                format!("no wood, or more than one, is called \"{name}\" in the table of movement"),
                format!("name one of: {}", names.join(", ")),
            ));
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
        for (field, value) in [("radial", wood.radial), ("tangential", wood.tangential)] {
            faults.extend(coefficient(&wood.name, field, value));
        }
        faults.extend(name(design, index, wood));
    }
}

fn coefficient(name: &str, field: &str, value: f64) -> Option<Fault> {
    if (0.0..=MOST).contains(&value) {
        return None;
    }
    let (code, message, remedy) = if !value.is_finite() {
        (
            "not-a-number",
            format!("`{field}` of \"{name}\" is not a number"),
            format!("give a fraction from 0 to {MOST}"),
        )
    } else if value < 0.0 {
        (
            "out-of-range",
            format!("`{field}` of \"{name}\" is {value}, but wood swells when it gets damper"),
            format!("give a fraction from 0 to {MOST}"),
        )
    } else {
        (
            "out-of-range",
            format!(
                "`{field}` of \"{name}\" is {value}, more than any wood moves: is that in per cent? A \
                 fraction of its size for each per cent of moisture is meant, and woods lie between \
                 0.0007 and 0.0045"
            ),
            as_fraction(value),
        )
    };
    Some(error(code, Place::Design, message, remedy))
}

/// What a coefficient that is too large to be a fraction may have been meant as.
fn as_fraction(percent: f64) -> String {
    let fraction = percent / 100.0;
    if fraction <= MOST {
        return format!("as a fraction it is {fraction:.5}");
    }
    // Eq. 13-3 of the Wood Handbook at 10 % moisture content
    let of_shrinkage = 1.0 / (3000.0 / percent - 20.0);
    if (0.0..=MOST).contains(&of_shrinkage) {
        return format!(
            "if {percent} % is what it shrinks from green to dry, give {of_shrinkage:.5}; as a \
             fraction {fraction} would still be more than any wood moves"
        );
    }
    format!("give a fraction from 0 to {MOST}")
}

fn name(design: &Design, index: usize, wood: &OwnWood) -> Option<Fault> {
    let first = own_wood(design, &wood.name);
    if first.is_some_and(|first| core::ptr::eq(first, wood)) {
        return None;
    }
    let (message, remedy) = match first {
        Some(_) => (
            format!("two of the maker's own woods are called \"{}\"", wood.name),
            "give one of them another name",
        ),
        None => (
            format!("own wood {} has no name", index + 1),
            "name it as the plate or the slider calls it",
        ),
    };
    Some(error(
        "own-wood-name",
        Place::Design,
        message,
        remedy.to_owned(),
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fault::Severity;
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

    fn errors(design: &Design) -> Vec<String> {
        let grave = |fault: &Fault| fault.severity == Severity::Error;
        let found = faults(design).into_iter().filter(grave);
        found.map(|fault| fault.to_string()).collect()
    }

    #[test]
    fn a_coefficient_in_per_cent_is_questioned() {
        assert_eq!(
            errors(&with(&[("elm", 0.0018, 2.02)])),
            [
                "design: `tangential` of \"elm\" is 2.02, more than any wood moves: is that in per cent? \
                 A fraction of its size for each per cent of moisture is meant, and woods lie between \
                 0.0007 and 0.0045; if 2.02 % is what it shrinks from green to dry, give 0.00068; as a \
                 fraction 0.0202 would still be more than any wood moves"
            ]
        );
        let slip = errors(&with(&[("elm", 0.18, 0.003)]));
        assert!(
            slip[0].ends_with("; as a fraction it is 0.00180"),
            "{slip:?}"
        );
        let nonsense = errors(&with(&[
            ("elm", f64::NAN, 1e300),
            ("ash tree", -0.1, 0.003),
        ]));
        assert_eq!(nonsense.len(), 3, "{nonsense:?}");
    }

    #[test]
    fn a_makers_own_wood_needs_a_name_of_its_own() {
        let design = with(&[
            ("elm", 0.0018, 0.0031),
            ("Elm", 0.0018, 0.0031),
            (" ", 0.001, 0.002),
        ]);
        assert_eq!(
            errors(&design),
            [
                "design: two of the maker's own woods are called \"Elm\"; give one of them another name",
                "design: own wood 3 has no name; name it as the plate or the slider calls it",
            ]
        );
    }

    #[test]
    fn plate_and_slider_may_be_of_a_makers_own_wood() {
        let mut design = with(&[("elm", 0.0018, 0.0031)]);
        design.plate.wood = "Elm".to_owned();
        assert_eq!(errors(&design), [] as [&str; 0]);
        design.own_woods.clear();
        let unknown = errors(&design);
        assert!(
            unknown[0].contains("is called \"Elm\" in the table"),
            "{unknown:?}"
        );
    }
}
