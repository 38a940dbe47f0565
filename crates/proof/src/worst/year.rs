//! The airs of a year, as ranges of what moves plate and slider.

use latchwright_geometry::Interval;

use super::jet::Jet;
use latchwright_model::wood::{Air, TABLE, moisture_content};
use latchwright_model::{Climate, Material};

/// Bands of temperature, where warmth and damp both move the slider.
const BANDS: u32 = 4;

/// Pieces of a range of temperature over which moisture content is bounded.
const PIECES: u32 = 8;

/// All airs whose temperature and humidity lie between the extremes of the year.
#[derive(Debug, Clone)]
pub struct Year {
    /// Temperature, damp and formula of each band of the year.
    pub airs: Vec<(Interval, Interval, f64)>,
    /// Damp is the moisture content of the wood; else it is the relative humidity.
    pub by_moisture: bool,
    warmth: Interval,
    humidity: Interval,
}

impl Year {
    /// The year of a latch built in this air.
    pub fn of(built: Air, warmth: Interval, humidity: Interval, slider: &Material) -> Self {
        let by_moisture = matches!(slider, Material::Wood { .. } | Material::Printed);
        let airs = if !by_moisture {
            by_humidity(built, warmth, humidity)
        } else if *slider == Material::Printed {
            split(warmth, BANDS)
                .flat_map(|warmth| in_formulas(built, warmth, moistures(warmth, humidity)))
                .collect()
        } else {
            // wood does not mind the warmth itself
            let any = Interval::at(warmth.middle());
            in_formulas(built, any, moistures(warmth, humidity)).collect()
        };
        Self {
            airs,
            by_moisture,
            warmth,
            humidity,
        }
    }

    /// An air of the year of this warmth, if it can be, and this damp.
    pub fn climate(&self, celsius: f64, damp: f64) -> Climate {
        if !self.by_moisture {
            return Climate {
                celsius,
                humidity: damp,
            };
        }
        let at = |celsius: f64, humidity: f64| Climate { celsius, humidity };
        let nearest = |celsius: f64| {
            let (mut drier, mut damper) = (self.humidity.lo, self.humidity.hi);
            for _ in 0..60 {
                let middle = f64::midpoint(drier, damper);
                if moisture_content(at(celsius, middle)) < damp {
                    drier = middle;
                } else {
                    damper = middle;
                }
            }
            [drier, damper]
                .map(|humidity| at(celsius, humidity))
                .into_iter()
                .min_by(|one, other| miss(*one, damp).total_cmp(&miss(*other, damp)))
                .unwrap_or(at(celsius, drier))
        };
        [celsius, self.warmth.lo, self.warmth.hi]
            .map(nearest)
            .into_iter()
            .reduce(|best, next| {
                if miss(next, damp) < miss(best, damp) - 1e-9 {
                    next
                } else {
                    best
                }
            })
            .unwrap_or(at(celsius, self.humidity.lo))
    }
}

fn miss(air: Climate, moisture: f64) -> f64 {
    (moisture_content(air) - moisture).abs()
}

fn split(range: Interval, parts: u32) -> impl Iterator<Item = Interval> {
    let parts = if range.is_point() { 1 } else { parts };
    let at = move |part: u32| {
        if part == parts {
            range.hi
        } else {
            range.lo + range.width() * f64::from(part) / f64::from(parts)
        }
    };
    (0..parts).map(move |part| Interval::new(at(part), at(part + 1)))
}

/// Least and largest moisture content of wood in these airs, per cent.
fn moistures(warmth: Interval, humidity: Interval) -> Interval {
    let at = |humidity: f64| {
        split(warmth, PIECES)
            .map(|warmth| {
                let damp = Interval::at(humidity);
                let whole = moisture(warmth, damp);
                let middle = Interval::at(warmth.middle());
                let sway = (warmth - middle) * whole.slope[0];
                whole.value.within(moisture(middle, damp).value + sway)
            })
            .reduce(Interval::hull)
            .unwrap_or(SATURATED)
    };
    Interval {
        lo: at(humidity.lo).lo,
        hi: at(humidity.hi).hi,
    }
}

/// A range of moisture contents, cut where the handbook changes its formula.
fn in_formulas(
    built: Air,
    warmth: Interval,
    moisture: Interval,
) -> impl Iterator<Item = (Interval, Interval, f64)> {
    let (driest, dampest) = (*TABLE.start(), *TABLE.end());
    let bands = if built.outside_table() {
        vec![(moisture.lo, moisture.hi, 1.0)]
    } else {
        vec![
            (moisture.lo, moisture.hi.min(driest), 1.0),
            (moisture.lo.max(driest), moisture.hi.min(dampest), 0.0),
            (moisture.lo.max(dampest), moisture.hi, 1.0),
        ]
    };
    bands
        .into_iter()
        .filter(|(lo, hi, _)| lo <= hi)
        .map(move |(lo, hi, formula)| (warmth, Interval::new(lo, hi), formula))
}

/// The year in bands of humidity, each with the formula that moves the wood in it.
///
/// The first formula holds where the wood is in the table of movement, the second outside. Where the
/// border lies depends a little on the warmth: there the bands overlap and both count.
fn by_humidity(built: Air, warmth: Interval, damp: Interval) -> Vec<(Interval, Interval, f64)> {
    if built.outside_table() {
        return vec![(warmth, damp, 1.0)];
    }
    // the humidity up to which `is_below` holds, which once past stays past
    let border = |is_below: &dyn Fn(Interval) -> bool| {
        let at = |humidity: f64| is_below(moisture(warmth, Interval::at(humidity)).value);
        if at(damp.hi) {
            return (damp.hi, damp.hi);
        }
        if !at(damp.lo) {
            return (damp.lo, damp.lo);
        }
        let (mut below, mut above) = (damp.lo, damp.hi);
        for _ in 0..16 {
            let middle = f64::midpoint(below, above);
            if at(middle) {
                below = middle;
            } else {
                above = middle;
            }
        }
        (below, above)
    };
    let (driest, dampest) = (*TABLE.start(), *TABLE.end());
    let (enters, _) = border(&|moisture| moisture.hi < driest);
    let (_, surely_in) = border(&|moisture| moisture.lo < driest);
    let (leaves, _) = border(&|moisture| moisture.hi < dampest);
    let (_, surely_out) = border(&|moisture| moisture.lo < dampest);
    let whole = moisture(warmth, damp).value;
    let mut bands = Vec::new();
    if whole.lo < driest {
        bands.push((warmth, Interval::new(damp.lo, surely_in), 1.0));
    }
    if whole.hi >= driest && whole.lo <= dampest {
        bands.push((warmth, Interval::new(enters, surely_out), 0.0));
    }
    if whole.hi > dampest {
        bands.push((warmth, Interval::new(leaves, damp.hi), 1.0));
    }
    bands
}

/// Moisture content of wood in this air, per cent, and its slopes along temperature and humidity.
///
/// The relation of [`latchwright_model::wood::moisture_content`], bounded. With x = K·h its slope along h is
/// K·1800/W·(1/(1 − x)² + (K₁ + 4K₁K₂x + K₁²K₂x²)/(1 + K₁x + K₁K₂x²)²): above zero, so that
/// damper air always means damper wood, and the ends of a range of humidity bound it.
pub fn moisture(celsius: Interval, humidity: Interval) -> Jet<2> {
    let t = Jet::<2>::variable(celsius, 0);
    let poly = |a: f64, b: f64, c: f64| t.times(b) + t.square().times(c).plus(a);
    let w = poly(349.0, 1.29, 0.0135);
    let k = poly(0.805, 0.000_736, -0.000_002_73);
    let k1 = poly(6.27, -0.009_38, -0.000_303);
    let k2 = poly(1.91, 0.0407, -0.000_293);
    let share = (humidity * 0.01).within(Interval::new(0.0, 1.0));
    let positive = [w, k, k1, k2].iter().all(|jet| jet.value.lo > 0.0);
    if !positive || k.value.hi * share.hi > 0.999 {
        // beyond all airs that a design may name
        let any = Interval::new(-1e6, 1e6);
        return Jet::with_slopes(SATURATED, [(0, any), (1, any)]);
    }
    let scale = w.recip().times(1800.0);
    let at = |share: Interval| {
        let x = k * Jet::constant(share);
        let first = k1 * x;
        let second = first * k2 * x;
        let bound = (first + second).plus(1.0);
        scale * (x * (-x).plus(1.0).recip() + (first + second.times(2.0)) * bound.recip())
    };
    let whole = at(share);
    if humidity.is_point() {
        return whole.held(SATURATED);
    }
    let (driest, dampest) = (at(Interval::at(share.lo)), at(Interval::at(share.hi)));
    let value = Interval {
        lo: driest.value.lo,
        hi: dampest.value.hi,
    };
    let x = k.value * share;
    let (k1, k2) = (k1.value, k2.value);
    let one = Interval::at(1.0);
    let bound = one + k1 * x + k1 * k2 * x.square();
    let rises = (one - x).recip_positive().square()
        + (k1 + k1 * k2 * x * 4.0 + k1.square() * k2 * x.square())
            * bound.recip_positive().square();
    let damper = scale.value * k.value * rises * 0.01;
    Jet::with_slopes(value, [(0, whole.slope[0]), (1, damper)]).held(SATURATED)
}

/// From dry to where the fibres are saturated, per cent.
const SATURATED: Interval = Interval { lo: 0.0, hi: 30.0 };

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn moisture_is_enclosed_over_any_cell_of_air() {
        for (celsius, humidity) in [((5.0, 12.0), (20.0, 35.0)), ((18.0, 26.0), (60.0, 95.0))] {
            let (t, h) = (
                Interval::new(celsius.0, celsius.1),
                Interval::new(humidity.0, humidity.1),
            );
            let whole = moisture(t, h);
            for i in 0..=8 {
                for j in 0..=8 {
                    let celsius = t.lo + t.width() * f64::from(i) / 8.0;
                    let humidity = h.lo + h.width() * f64::from(j) / 8.0;
                    let one = moisture_content(Climate { celsius, humidity });
                    assert!(whole.value.lo <= one && one <= whole.value.hi);
                    let damper = moisture_content(Climate {
                        celsius,
                        humidity: humidity + 1e-4,
                    });
                    let slope = (damper - one) / 1e-4;
                    assert!(whole.slope[1].lo - 1e-6 <= slope && slope <= whole.slope[1].hi + 1e-6);
                }
            }
            let (t, h) = (Interval::at(celsius.0), Interval::at(humidity.0));
            assert!(moisture(t, h).value.width() < 1e-11);
        }
    }

    #[test]
    fn moisture_over_a_year_is_bounded_closely() {
        let (warmth, humidity) = (Interval::new(18.0, 26.0), Interval::new(25.0, 70.0));
        let bounds = moistures(warmth, humidity);
        let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
        for i in 0..=40 {
            let celsius = 18.0 + 0.2 * f64::from(i);
            let at = |humidity: f64| moisture_content(Climate { celsius, humidity });
            least = least.min(at(25.0));
            most = most.max(at(70.0));
        }
        assert!(bounds.lo <= least && most <= bounds.hi);
        assert!(
            least - bounds.lo < 0.005 && bounds.hi - most < 0.005,
            "{bounds:?}"
        );
    }

    #[test]
    fn an_air_is_found_for_every_moisture_of_the_year() {
        let built = Air::of(Climate {
            celsius: 20.0,
            humidity: 45.0,
        });
        let (warmth, humidity) = (Interval::new(18.0, 26.0), Interval::new(25.0, 70.0));
        let year = Year::of(built, warmth, humidity, &Material::Printed);
        assert!(!year.airs.is_empty());
        for (warm, damp, _) in &year.airs {
            for at in [damp.lo + 0.01, damp.middle(), damp.hi - 0.01] {
                let air = year.climate(warm.middle(), at);
                assert!((moisture_content(air) - at).abs() < 0.01, "{at}: {air:?}");
            }
        }
    }
}
