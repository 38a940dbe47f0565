//! Coefficients of dimensional change by species: the rows of `assets/reference/wood/wood.csv`.
//!
//! A wood is added in both by hand; the test below compares them row by row.

use crate::{Design, OwnWood};

/// One species: how much of its size it changes for each per cent of moisture content.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wood {
    /// Common name.
    pub name: &'static str,
    /// Radial coefficient, per per cent: the width of a quarter-sawn board.
    pub radial: f64,
    /// Tangential coefficient, per per cent: the width of a flat-sawn board.
    pub tangential: f64,
    /// Its shrinkage, where that is published and was read there.
    pub shrinkage: Option<Shrinkage>,
}

/// How much a species shrinks from green to oven-dry, per cent of its green size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shrinkage {
    /// Radially, per cent.
    pub radial: f64,
    /// Tangentially, per cent.
    pub tangential: f64,
    /// Moisture content at which its fibres are saturated, per cent.
    pub saturated: f64,
}

const fn wood(
    name: &'static str,
    radial: f64,
    tangential: f64,
    shrinkage: Option<Shrinkage>,
) -> Wood {
    Wood {
        name,
        radial,
        tangential,
        shrinkage,
    }
}

#[expect(
    clippy::unnecessary_wraps,
    reason = "keeps the rows of the table short"
)]
const fn shrinks(radial: f64, tangential: f64, saturated: f64) -> Option<Shrinkage> {
    Some(Shrinkage {
        radial,
        tangential,
        saturated,
    })
}

/// # Source
/// Wood Handbook, FPL-GTR-190 (2010): coefficients of Table 13-5, shrinkage of Table 4-3. How each row
/// was verified stands in the file; shrinkage that is only remembered or was worked back from the
/// coefficients is left out.
const WOODS: &[Wood] = &[
    wood("White oak", 0.001_80, 0.003_65, None),
    wood("Red oak", 0.001_58, 0.003_69, None),
    wood("Black walnut", 0.001_90, 0.002_74, shrinks(5.5, 7.8, 30.0)),
    wood("Black cherry", 0.001_26, 0.002_48, shrinks(3.7, 7.1, 30.0)),
    wood("Sugar (hard) maple", 0.001_65, 0.003_53, None),
    wood("Red (soft) maple", 0.001_37, 0.002_89, None),
    wood("Silver (soft) maple", 0.001_02, 0.002_52, None),
    wood("Bigleaf maple", 0.001_26, 0.002_48, None),
    wood("White ash", 0.001_69, 0.002_74, shrinks(4.9, 7.8, 30.0)),
    wood("Black ash", 0.001_72, 0.002_74, shrinks(5.0, 7.8, 30.0)),
    wood("Yellow birch", 0.002_56, 0.003_38, shrinks(7.3, 9.5, 30.0)),
    wood("Paper birch", 0.002_19, 0.003_04, shrinks(6.3, 8.6, 30.0)),
    wood(
        "American beech",
        0.001_90,
        0.004_31,
        shrinks(5.5, 11.9, 30.0),
    ),
    wood("Red alder", 0.001_51, 0.002_56, shrinks(4.4, 7.3, 30.0)),
    wood(
        "American basswood",
        0.002_30,
        0.003_30,
        shrinks(6.6, 9.3, 30.0),
    ),
    wood("Butternut", 0.001_16, 0.002_23, shrinks(3.4, 6.4, 30.0)),
    wood("Pecan hickory", 0.001_69, 0.003_15, shrinks(4.9, 8.9, 30.0)),
    wood("Hackberry", 0.001_65, 0.003_15, shrinks(4.8, 8.9, 30.0)),
    wood(
        "American sycamore",
        0.001_72,
        0.002_96,
        shrinks(5.0, 8.4, 30.0),
    ),
    wood("Sweetgum", 0.001_83, 0.003_65, shrinks(5.3, 10.2, 30.0)),
    wood("Quaking aspen", 0.001_19, 0.002_34, shrinks(3.5, 6.7, 30.0)),
    wood("Apple", 0.002_05, 0.003_76, None),
    wood(
        "Yellow-poplar (tulipwood)",
        0.001_58,
        0.002_89,
        shrinks(4.6, 8.2, 30.0),
    ),
    wood("Eastern white pine", 0.000_71, 0.002_12, None),
    wood("Ponderosa pine", 0.001_33, 0.002_16, None),
    wood("Sugar pine", 0.000_99, 0.001_94, None),
    wood("Longleaf (southern) pine", 0.001_76, 0.002_63, None),
    wood("Loblolly (southern) pine", 0.001_65, 0.002_59, None),
    wood(
        "Western redcedar",
        0.001_11,
        0.002_34,
        shrinks(2.4, 5.0, 22.0),
    ),
    wood(
        "Eastern redcedar",
        0.001_06,
        0.001_62,
        shrinks(3.1, 4.7, 30.0),
    ),
    wood("Incense cedar", 0.001_12, 0.001_80, shrinks(3.3, 5.2, 30.0)),
    wood("Yellow cedar", 0.000_95, 0.002_08, shrinks(2.8, 6.0, 30.0)),
    wood(
        "Port-Orford cedar",
        0.001_58,
        0.002_41,
        shrinks(4.6, 6.9, 30.0),
    ),
    wood(
        "Douglas-fir coast type",
        0.001_65,
        0.002_67,
        shrinks(4.8, 7.6, 30.0),
    ),
    wood("White fir", 0.001_12, 0.002_45, shrinks(3.3, 7.0, 30.0)),
    wood("Redwood old-growth", 0.001_20, 0.002_05, None),
    wood("Sitka spruce", 0.001_48, 0.002_63, None),
    wood("Mahogany (true)", 0.001_72, 0.002_38, None),
    wood("African mahogany (khaya)", 0.001_41, 0.002_01, None),
    wood("Teak", 0.001_01, 0.001_86, None),
    wood("Balsa", 0.001_02, 0.002_67, None),
    wood("Sapele", 0.001_58, 0.002_59, None),
];

/// The names that [`find_wood`] knows, in the order of the table.
pub fn wood_names() -> impl Iterator<Item = &'static str> {
    WOODS.iter().map(|wood| wood.name)
}

/// The species a maker means by `name`.
///
/// Only the table is searched; a maker's own woods are found by [`own_wood`]. Upper or lower case
/// does not matter. A full name counts ("Black walnut"), as does one with or
/// instead of the word in brackets ("hard maple", "sugar maple"), or a part that only one species
/// bears ("walnut"). `None` when no species, or more than one, answers to it.
pub fn find_wood(name: &str) -> Option<&'static Wood> {
    let wanted = words(name);
    if wanted.is_empty() {
        return None;
    }
    let exact = WOODS.iter().find(|wood| {
        let own = words(wood.name);
        let plain = words(wood.name.split('(').next().unwrap_or_default());
        own == wanted || plain == wanted
    });
    exact.or_else(|| {
        let mut matching = WOODS
            .iter()
            .filter(|wood| wanted.iter().all(|word| words(wood.name).contains(word)));
        matching.next().filter(|_| matching.next().is_none())
    })
}

/// The maker's own wood that is called `name`, whatever its case; it goes before the table.
pub fn own_wood<'a>(design: &'a Design, name: &str) -> Option<&'a OwnWood> {
    let wanted = words(name);
    let named = |wood: &&OwnWood| !wanted.is_empty() && words(&wood.name) == wanted;
    design.own_woods.iter().find(named)
}

fn words(name: &str) -> Vec<String> {
    name.split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// What a row of the file has read in Table 4-3. A field before it may hold commas, in quotes.
    fn shrinkage(row: &str) -> Option<Shrinkage> {
        let field: Vec<&str> = row.rsplit(',').collect();
        (field[2] == "read in Table 4-3").then(|| Shrinkage {
            radial: field[5].parse().unwrap(),
            tangential: field[4].parse().unwrap(),
            saturated: field[3].parse().unwrap(),
        })
    }

    #[test]
    fn the_table_is_the_file() {
        let file = include_str!("../../../../assets/reference/wood/wood.csv");
        let rows: Vec<&str> = file.lines().skip(1).collect();
        assert_eq!(rows.len(), WOODS.len());
        for (row, wood) in rows.iter().zip(WOODS) {
            let field: Vec<&str> = row.split(',').collect();
            assert_eq!(field[1], wood.name);
            assert_eq!(field[2].parse(), Ok(wood.radial), "{row}");
            assert_eq!(field[3].parse(), Ok(wood.tangential), "{row}");
            assert_eq!(wood.shrinkage, shrinkage(row), "{row}");
        }
    }

    /// Table 13-5 can be worked out from Table 4-3 with Eq. 13-3 at 10 % moisture: two tables of one
    /// book that check each other.
    #[test]
    fn coefficients_and_shrinkage_belong_together() {
        let with = WOODS
            .iter()
            .filter_map(|wood| Some((wood, wood.shrinkage?)));
        for (wood, shrinkage) in with.clone() {
            for (coefficient, percent) in [
                (wood.radial, shrinkage.radial),
                (wood.tangential, shrinkage.tangential),
            ] {
                let saturated = shrinkage.saturated;
                let worked_out = 1.0 / (saturated * 100.0 / percent - saturated + 10.0);
                let off = (worked_out - coefficient).abs();
                assert!(off < 6.3e-6, "{}: {worked_out}", wood.name);
            }
        }
        assert_eq!(with.count(), 23);
    }

    #[test]
    fn a_makers_own_wood_is_found_by_its_whole_name() {
        let mut design = Design::default();
        let elm = OwnWood {
            name: "Wych elm".to_owned(),
            radial: 0.0018,
            tangential: 0.0031,
        };
        design.own_woods = vec![elm.clone()];
        assert_eq!(own_wood(&design, "wych ELM"), Some(&elm));
        for said in ["elm", "", "white oak"] {
            assert_eq!(own_wood(&design, said), None, "{said}");
        }
    }

    #[test]
    fn makers_names_are_understood() {
        for (said, meant) in [
            ("white oak", "White oak"),
            ("WALNUT", "Black walnut"),
            ("hard maple", "Sugar (hard) maple"),
            ("sugar maple", "Sugar (hard) maple"),
            ("mahogany", "Mahogany (true)"),
        ] {
            assert_eq!(find_wood(said).map(|wood| wood.name), Some(meant), "{said}");
        }
        for said in ["oak", "", "ebony of the moon"] {
            assert_eq!(find_wood(said), None, "{said}");
        }
    }
}
