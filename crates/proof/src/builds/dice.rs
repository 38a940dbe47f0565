//! Random numbers for builds: the same for the same seed and block, on every machine.

use latchwright_geometry::trig;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng as _, SeedableRng as _};

use super::Spread;

/// Draws the shares of one block.
pub(super) struct Dice {
    rng: ChaCha8Rng,
    spread: Spread,
}

impl Dice {
    pub(super) fn new(seed: u64, block: u64, spread: Spread) -> Self {
        let mut rng = ChaCha8Rng::seed_from_u64(seed);
        rng.set_stream(block);
        Self { rng, spread }
    }

    /// A share from −1 to 1, any as likely as any other; one of 2³² values, evenly spaced.
    pub(super) fn even(&mut self) -> f64 {
        (f64::from(self.rng.next_u32()) + 0.5) / f64::from(1_u32 << 31) - 1.0
    }

    /// A share of an error's ±.
    pub(super) fn error(&mut self) -> f64 {
        match self.spread {
            Spread::Uniform => self.even(),
            Spread::Normal => loop {
                // taken with a chance as the density is high: σ = 1/2, so e^(−x²/2σ²) = e^(−2x²)
                let share = self.even();
                let chance = f64::midpoint(self.even(), 1.0);
                if chance < trig::exp(-2.0 * share * share) {
                    return share;
                }
            },
        }
    }

    /// A place in a disc of radius 1, any as likely as any other.
    pub(super) fn in_disc(&mut self) -> (f64, f64) {
        loop {
            let (x, y) = (self.even(), self.even());
            if x * x + y * y <= 1.0 {
                return (x, y);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mean_and_square(mut draw: impl FnMut() -> f64) -> (f64, f64) {
        let count = 200_000;
        let (mut sum, mut squares) = (0.0, 0.0);
        for _ in 0..count {
            let share = draw();
            assert!(share.abs() < 1.0, "{share}");
            sum += share;
            squares += share * share;
        }
        (sum / f64::from(count), squares / f64::from(count))
    }

    /// Variances: 1/3 evenly; σ²·(1 − 2·2·φ(2)/(2Φ(2) − 1)) = 0.25·0.773741 for a normal cut at 2σ;
    /// 1/4 along each axis of a disc.
    #[test]
    fn shares_have_the_spread_that_is_asked_for() {
        for (spread, square) in [(Spread::Uniform, 1.0 / 3.0), (Spread::Normal, 0.193_435)] {
            let mut dice = Dice::new(7, 0, spread);
            let (mean, found) = mean_and_square(|| dice.error());
            assert!(mean.abs() < 0.005, "{spread:?}: {mean}");
            assert!((found - square).abs() < 0.002, "{spread:?}: {found}");
        }
        let mut dice = Dice::new(7, 0, Spread::Normal);
        let (mean, square) = mean_and_square(|| dice.in_disc().0);
        assert!(mean.abs() < 0.005 && (square - 0.25).abs() < 0.002);
    }

    #[test]
    fn each_block_has_numbers_of_its_own_and_always_the_same() {
        let first = |seed, block| Dice::new(seed, block, Spread::Uniform).even();
        assert_eq!(first(1, 5), first(1, 5));
        assert_ne!(first(1, 5), first(1, 6));
        assert_ne!(first(1, 5), first(2, 5));
    }
}
