//! Units of figures.

/// Millimetres in an inch, exactly: the international inch of 1959.
pub const MM_PER_INCH: f64 = 25.4;

/// The unit of a figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Unit {
    /// Millimetres.
    Millimetre,
    /// Degrees.
    Degree,
    /// Newtons.
    Newton,
    /// A plain ratio.
    Ratio,
    /// Megapascals.
    Megapascal,
    /// A plain count.
    Count,
}
