//! Sums of sizes with errors: how far off the sum can be at worst, and how far it will mostly be.

use latchwright_geometry::trig;

/// One link of a chain of sizes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Link {
    /// What it adds to the sum, mm; negative where it takes away.
    pub size: f64,
    /// ± on it, mm.
    pub error: f64,
}

/// What a chain of sizes comes to.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Sum {
    /// Nothing off, mm.
    pub nominal: f64,
    /// ± when every link is off by its most, all the same way, mm.
    pub worst: f64,
    /// ± by the root of the sum of squares, mm: what links that are off independently of one another
    /// mostly keep to, and no promise.
    pub rss: f64,
}

/// Adds up a chain of sizes.
pub fn sum(links: impl IntoIterator<Item = Link>) -> Sum {
    let mut sum = Sum::default();
    let mut squares = 0.0;
    for link in links {
        sum.nominal += link.size;
        sum.worst += link.error.abs();
        squares += link.error * link.error;
    }
    sum.rss = trig::sqrt(squares);
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Calculated by hand: 0.10 + 0.05 + 0.03 + 0.05, and the root of 0.01 + 0.0025 + 0.0009 + 0.0025.
    #[test]
    fn a_stack_of_four_comes_to_its_worked_sums() {
        let links = [(40.0, 0.10), (-25.0, 0.05), (-2.0, 0.03), (-10.0, 0.05)];
        let sum = sum(links.map(|(size, error)| Link { size, error }));
        assert!((sum.nominal - 3.0).abs() < 1e-12, "{sum:?}");
        assert!((sum.worst - 0.23).abs() < 1e-12, "{sum:?}");
        assert!((sum.rss - 0.1261).abs() < 5e-5, "{sum:?}");
    }

    #[test]
    fn nothing_comes_to_nothing() {
        assert_eq!(sum([]), Sum::default());
    }
}
