//! How far a share found by drawing may be from the true one.

use latchwright_geometry::trig;

/// Chance left out on either side of the limits: 2.5 %.
const TAIL: f64 = 0.025;

/// Halvings down to the limits: finer than any share that is shown.
const HALVINGS: u32 = 60;

/// Most steps of the continued fraction; it takes about √n.
const STEPS: u32 = 100_000;

/// How many of how many, with the limits that hold the true share with 95 % confidence.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Share {
    /// How many did.
    pub hits: u64,
    /// Of how many.
    pub count: u64,
    /// Lower limit, 0 to 1.
    pub low: f64,
    /// Upper limit, 0 to 1.
    pub high: f64,
}

impl Share {
    /// The share of `hits` in `count`, with its exact limits for a binomial number.
    ///
    /// # Source
    /// Clopper and Pearson, "The use of confidence or fiducial limits illustrated in the case of the
    /// binomial", Biometrika 26 (1934): the shares at which so many hits or more, and so many or
    /// fewer, have a chance of 2.5 % each.
    pub fn of(hits: u64, count: u64) -> Self {
        let hits = hits.min(count);
        let (k, n) = (hits as f64, count as f64);
        let low = if hits == 0 {
            0.0
        } else {
            // k or more hits of n: I_p(k, n − k + 1)
            solve(|p| beta(k, n - k + 1.0, p) < TAIL)
        };
        let high = if hits == count {
            1.0
        } else {
            // k or fewer: 1 − I_p(k + 1, n − k)
            solve(|p| beta(n - k, k + 1.0, 1.0 - p) > TAIL)
        };
        Self {
            hits,
            count,
            low,
            high,
        }
    }

    /// The share itself, 0 to 1; 0 of nothing.
    pub fn value(&self) -> f64 {
        if self.count == 0 {
            0.0
        } else {
            self.hits as f64 / self.count as f64
        }
    }
}

/// The largest p from 0 to 1 for which `holds`, which holds up to one place only.
fn solve(holds: impl Fn(f64) -> bool) -> f64 {
    let (mut yes, mut no) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(yes, no);
        if holds(middle) {
            yes = middle;
        } else {
            no = middle;
        }
    }
    f64::midpoint(yes, no)
}

/// The regularised incomplete beta function of a, b and x, by its continued fraction.
///
/// # Source
/// NIST Digital Library of Mathematical Functions, 8.17.22, evaluated by the modified Lentz method.
fn beta(a: f64, b: f64, x: f64) -> f64 {
    if x <= 0.0 || x >= 1.0 {
        return if x <= 0.0 { 0.0 } else { 1.0 };
    }
    if x > (a + 1.0) / (a + b + 2.0) {
        return 1.0 - beta_below(b, a, 1.0 - x);
    }
    beta_below(a, b, x)
}

/// The same where the fraction is quick: x below about its mean.
fn beta_below(a: f64, b: f64, x: f64) -> f64 {
    let front = trig::exp(
        trig::ln_gamma(a + b) - trig::ln_gamma(a) - trig::ln_gamma(b)
            + a * trig::ln(x)
            + b * trig::ln(1.0 - x),
    ) / a;
    let nonzero = |number: f64| {
        if number.abs() < 1e-300 {
            1e-300
        } else {
            number
        }
    };
    let mut d = 1.0 / nonzero(1.0 - (a + b) * x / (a + 1.0));
    let (mut c, mut fraction) = (1.0, d);
    for step in 1..STEPS {
        let m = f64::from(step);
        let even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        let before = fraction;
        for term in [even, odd] {
            d = 1.0 / nonzero(1.0 + term * d);
            c = nonzero(1.0 + term / c);
            fraction *= c * d;
        }
        if (fraction - before).abs() <= 1e-15 * fraction.abs() {
            break;
        }
    }
    (front * fraction).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Chance of `least` or more hits of `count`, each with chance `p`: the plain sum of terms.
    fn at_least(least: u64, count: u64, p: f64) -> f64 {
        let mut term = (1.0 - p).powi(i32::try_from(count).unwrap());
        let mut sum = 0.0;
        for hits in 0..=count {
            if hits >= least {
                sum += term;
            }
            let (k, n) = (hits as f64, count as f64);
            term *= (n - k) / (k + 1.0) * p / (1.0 - p);
        }
        sum
    }

    #[test]
    fn the_limits_leave_two_and_a_half_per_cent_of_exact_binomial_sums() {
        for (hits, count) in [(1, 10), (5, 10), (9, 10), (3, 50), (47, 50), (200, 400)] {
            let share = Share::of(hits, count);
            let above = at_least(hits, count, share.low);
            let below = 1.0 - at_least(hits + 1, count, share.high);
            assert!((above - 0.025).abs() < 1e-9, "{hits}/{count}: {above}");
            assert!((below - 0.025).abs() < 1e-9, "{hits}/{count}: {below}");
            assert!(share.low < share.value() && share.value() < share.high);
        }
    }

    /// With none or all, the limit has a closed form: 1 − 0.025^(1/n), which is 0.3085 for ten.
    #[test]
    fn none_and_all_have_their_closed_limits() {
        let none = Share::of(0, 10);
        assert_eq!(none.low, 0.0);
        assert!((none.high - 0.308_5).abs() < 5e-5, "{none:?}");
        for count in [1, 1_000, 100_000, 1_000_000_000] {
            let all = Share::of(count, count);
            let closed = 0.025_f64.powf(1.0 / count as f64);
            assert_eq!(all.high, 1.0);
            let error = ((1.0 - all.low) / (1.0 - closed) - 1.0).abs();
            assert!(error < 1e-4, "{count}: {} beside {closed}", all.low);
        }
        assert_eq!(Share::of(0, 0).value(), 0.0);
    }

    #[test]
    fn large_counts_come_near_the_normal_limits() {
        let share = Share::of(900_000, 1_000_000);
        let half = 1.959_964 * (0.9_f64 * 0.1 / 1e6).sqrt();
        assert!((share.low - (0.9 - half)).abs() < 2e-6, "{share:?}");
        assert!((share.high - (0.9 + half)).abs() < 2e-6, "{share:?}");
    }
}
