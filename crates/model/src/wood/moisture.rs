//! Equilibrium moisture content of wood, from the air.

use crate::Climate;

/// Moisture content, per cent of dry weight, that wood takes on in this air.
///
/// Hailwood–Horrobin relation with the coefficients for °C; humidity is held to 0–100 %, the answer
/// to 0–30 % (30 % is where the fibres are saturated).
///
/// # Source
/// Wood Handbook (USDA Forest Products Laboratory, FPL-GTR-190, 2010), chapter 4; coefficients as
/// in Simpson, FPL-RN-0268 (1998).
pub fn moisture_content(air: Climate) -> f64 {
    let t = air.celsius;
    let h = (air.humidity / 100.0).clamp(0.0, 1.0);
    let w = 349.0 + 1.29 * t + 0.0135 * t * t;
    let k = 0.805 + 0.000_736 * t - 0.000_002_73 * t * t;
    let k1 = 6.27 - 0.009_38 * t - 0.000_303 * t * t;
    let k2 = 1.91 + 0.0407 * t - 0.000_293 * t * t;
    let kh = k * h;
    let bound = (k1 * kh + 2.0 * k1 * k2 * kh * kh) / (1.0 + k1 * kh + k1 * k2 * kh * kh);
    let moisture = 1800.0 / w * (kh / (1.0 - kh) + bound);
    if moisture.is_finite() {
        moisture.clamp(0.0, 30.0)
    } else {
        30.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Evaluations of the published formula (calculated).
    #[test]
    fn moisture_content_agrees_with_worked_values() {
        for (celsius, humidity, percent) in [
            (20.0, 30.0, 6.188),
            (20.0, 50.0, 9.271),
            (20.0, 65.0, 11.996),
            (20.0, 60.0, 11.000),
            (25.0, 40.0, 7.608),
            (0.0, 80.0, 16.533),
        ] {
            let found = moisture_content(Climate { celsius, humidity });
            assert!(
                (found - percent).abs() < 5e-4,
                "{celsius} °C {humidity} %: {found}"
            );
        }
    }

    /// Wood Handbook Table 4-2 (assets/reference/wood/emc.csv): 192 cells and one misprint.
    #[test]
    fn moisture_content_agrees_with_the_handbooks_table() {
        let table = include_str!("../../../../assets/reference/wood/emc.csv");
        let mut cells = 0;
        for line in table.lines().skip(1) {
            let field: Vec<&str> = line.splitn(6, ',').collect();
            if field[5].contains("misprint") {
                continue;
            }
            let number = |n: usize| field[n].parse::<f64>().unwrap();
            // the table is headed in °F; its °C column is rounded to a tenth
            let celsius = (number(1) - 32.0) / 1.8;
            let found = moisture_content(Climate {
                celsius,
                humidity: number(2),
            });
            assert!((found - number(3)).abs() < 0.06, "{line}: {found}");
            cells += 1;
        }
        assert_eq!(cells, 192);
    }

    #[test]
    fn saturated_air_stays_finite() {
        let wet = moisture_content(Climate {
            celsius: 60.0,
            humidity: 100.0,
        });
        assert!(wet > 15.0 && wet <= 30.0);
    }
}
