//! Looking for the box that keeps a promise least well.

use rand::RngExt;
use rand_chacha::ChaCha8Rng;

/// The worst box found: its shares and how well it keeps the promise.
#[derive(Debug, Clone)]
pub struct Worst {
    /// Shares of the box.
    pub shares: Vec<f64>,
    /// The figure it leaves; negative where the promise is broken.
    pub kept: f64,
    /// Boxes looked at.
    pub tried: u64,
}

/// A box drawn evenly over everything that may vary.
pub fn anywhere(rng: &mut ChaCha8Rng, shares: usize) -> Vec<f64> {
    (0..shares).map(|_| rng.random_range(-1.0..=1.0)).collect()
}

/// A box with everything at one of its extremes.
pub fn corner(rng: &mut ChaCha8Rng, shares: usize) -> Vec<f64> {
    (0..shares)
        .map(|_| if rng.random::<bool>() { 1.0 } else { -1.0 })
        .collect()
}

/// Climbs from `starts` corners, share by share, towards the least of `kept`.
pub fn worst(
    rng: &mut ChaCha8Rng,
    shares: usize,
    starts: usize,
    kept: impl Fn(&[f64]) -> f64,
) -> Worst {
    let mut worst = Worst {
        shares: vec![0.0; shares],
        kept: f64::INFINITY,
        tried: 0,
    };
    for _ in 0..starts {
        let mut at = corner(rng, shares);
        let mut value = kept(&at);
        let mut tried = 1;
        let mut step = 0.5;
        for _ in 0..12 {
            let before = value;
            for index in 0..shares {
                let here = at[index];
                let places = [-1.0, 1.0, here - step, here + step];
                for place in places.map(|place: f64| place.clamp(-1.0, 1.0)) {
                    let kept_before = at[index];
                    at[index] = place;
                    let next = kept(&at);
                    tried += 1;
                    if next < value {
                        value = next;
                    } else {
                        at[index] = kept_before;
                    }
                }
            }
            if value > before - 1e-7 {
                if step < 0.02 {
                    break;
                }
                step /= 3.0;
            }
        }
        worst.tried += tried;
        if value < worst.kept {
            worst.kept = value;
            worst.shares = at;
        }
    }
    worst
}
