//! The one file that may call sines, powers and logarithms: `libm` gives the same bits on every machine.

use core::f64::consts::PI;

/// Sine of an angle in radians.
pub fn sin(angle: f64) -> f64 {
    libm::sin(angle)
}

/// Cosine of an angle in radians.
pub fn cos(angle: f64) -> f64 {
    libm::cos(angle)
}

/// Arc sine in radians; the argument is clamped to −1 to 1, so the answer is always finite.
pub fn asin(ratio: f64) -> f64 {
    libm::asin(ratio.clamp(-1.0, 1.0))
}

/// Arc cosine in radians; the argument is clamped to −1 to 1, so the answer is always finite.
pub fn acos(ratio: f64) -> f64 {
    libm::acos(ratio.clamp(-1.0, 1.0))
}

/// The angle of the vector (x, y), counter-clockwise from +x, in radians, −π to π.
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// Square root; zero for a negative argument, which rounding can produce at a tangency.
pub fn sqrt(square: f64) -> f64 {
    libm::sqrt(square.max(0.0))
}

/// Length of the vector (x, y).
pub fn hypot(x: f64, y: f64) -> f64 {
    libm::hypot(x, y)
}

/// e to this power.
pub fn exp(power: f64) -> f64 {
    libm::exp(power)
}

/// A number that is not negative to this power; a negative one counts as zero.
pub fn pow(base: f64, power: f64) -> f64 {
    libm::pow(base.max(0.0), power)
}

/// Natural logarithm; −∞ at zero and below.
pub fn ln(number: f64) -> f64 {
    if number > 0.0 {
        libm::log(number)
    } else {
        f64::NEG_INFINITY
    }
}

/// Natural logarithm of (n − 1)! for a whole n, and of the function Γ between.
pub fn ln_gamma(number: f64) -> f64 {
    libm::lgamma(number)
}

/// Degrees to radians.
pub fn radians(degrees: f64) -> f64 {
    degrees * (PI / 180.0)
}

/// Radians to degrees.
pub fn degrees(radians: f64) -> f64 {
    radians * (180.0 / PI)
}

/// An angle in degrees brought into −180 (left out) to 180 (left in).
pub fn wrap_deg(angle: f64) -> f64 {
    let turned = libm::fmod(angle, 360.0);
    if turned > 180.0 {
        turned - 360.0
    } else if turned <= -180.0 {
        turned + 360.0
    } else {
        turned
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn half_a_turn_keeps_its_sign_positive() {
        assert_eq!(wrap_deg(180.0), 180.0);
        assert_eq!(wrap_deg(-180.0), 180.0);
        assert_eq!(wrap_deg(540.0), 180.0);
        assert_eq!(wrap_deg(-90.0), -90.0);
        assert_eq!(wrap_deg(315.0), -45.0);
    }

    #[test]
    fn out_of_range_ratios_stay_finite() {
        assert_eq!(asin(2.0), PI / 2.0);
        assert_eq!(acos(-3.0), PI);
        assert_eq!(sqrt(-1e-18), 0.0);
    }
}
