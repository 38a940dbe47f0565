//! Coefficients of dimensional change by species. Generated from `assets/reference/wood/wood.csv`,
//! do not edit: a test compares every row.

/// One species: how much of its size it changes for each per cent of moisture content.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wood {
    /// Common name.
    pub name: &'static str,
    /// Radial coefficient, per per cent: the width of a quarter-sawn board.
    pub radial: f64,
    /// Tangential coefficient, per per cent: the width of a flat-sawn board.
    pub tangential: f64,
}

const fn wood(name: &'static str, radial: f64, tangential: f64) -> Wood {
    Wood {
        name,
        radial,
        tangential,
    }
}

/// # Source
/// Wood Handbook, FPL-GTR-190 (2010), Table 13-5; how each row was verified stands in the file.
const WOODS: &[Wood] = &[
    wood("White oak", 0.001_80, 0.003_65),
    wood("Red oak", 0.001_58, 0.003_69),
    wood("Black walnut", 0.001_90, 0.002_74),
    wood("Black cherry", 0.001_26, 0.002_48),
    wood("Sugar (hard) maple", 0.001_65, 0.003_53),
    wood("Red (soft) maple", 0.001_37, 0.002_89),
    wood("Silver (soft) maple", 0.001_02, 0.002_52),
    wood("Bigleaf maple", 0.001_26, 0.002_48),
    wood("White ash", 0.001_69, 0.002_74),
    wood("Black ash", 0.001_72, 0.002_74),
    wood("Yellow birch", 0.002_56, 0.003_38),
    wood("Paper birch", 0.002_19, 0.003_04),
    wood("American beech", 0.001_90, 0.004_31),
    wood("Red alder", 0.001_51, 0.002_56),
    wood("American basswood", 0.002_30, 0.003_30),
    wood("Butternut", 0.001_16, 0.002_23),
    wood("Pecan hickory", 0.001_69, 0.003_15),
    wood("Hackberry", 0.001_65, 0.003_15),
    wood("American sycamore", 0.001_72, 0.002_96),
    wood("Sweetgum", 0.001_83, 0.003_65),
    wood("Quaking aspen", 0.001_19, 0.002_34),
    wood("Apple", 0.002_05, 0.003_76),
    wood("Yellow-poplar (tulipwood)", 0.001_58, 0.002_89),
    wood("Eastern white pine", 0.000_71, 0.002_12),
    wood("Ponderosa pine", 0.001_33, 0.002_16),
    wood("Sugar pine", 0.000_99, 0.001_94),
    wood("Longleaf (southern) pine", 0.001_76, 0.002_63),
    wood("Loblolly (southern) pine", 0.001_65, 0.002_59),
    wood("Western redcedar", 0.001_11, 0.002_34),
    wood("Eastern redcedar", 0.001_06, 0.001_62),
    wood("Incense cedar", 0.001_12, 0.001_80),
    wood("Yellow cedar", 0.000_95, 0.002_08),
    wood("Port-Orford cedar", 0.001_58, 0.002_41),
    wood("Douglas-fir coast type", 0.001_65, 0.002_67),
    wood("White fir", 0.001_12, 0.002_45),
    wood("Redwood old-growth", 0.001_20, 0.002_05),
    wood("Sitka spruce", 0.001_48, 0.002_63),
    wood("Mahogany (true)", 0.001_72, 0.002_38),
    wood("African mahogany (khaya)", 0.001_41, 0.002_01),
    wood("Teak", 0.001_01, 0.001_86),
    wood("Balsa", 0.001_02, 0.002_67),
    wood("Sapele", 0.001_58, 0.002_59),
];

/// The names that [`find_wood`] knows, in the order of the table.
pub fn wood_names() -> impl Iterator<Item = &'static str> {
    WOODS.iter().map(|wood| wood.name)
}

/// The species a maker means by `name`.
///
/// Upper or lower case does not matter. A full name counts ("Black walnut"), as does one with or
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

fn words(name: &str) -> Vec<String> {
    name.split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

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
