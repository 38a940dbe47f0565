//! The few conversions between kinds of numbers that a picture needs, each with what becomes of
//! numbers out of range.

/// As a 32-bit float.
#[expect(
    clippy::cast_possible_truncation,
    reason = "depths and weights on a screen"
)]
pub(super) fn narrow(value: f64) -> f32 {
    value as f32
}

/// The whole part, within ±2²⁸: far outside every picture, and safe to multiply in 64 bits.
#[expect(
    clippy::cast_possible_truncation,
    reason = "it is clamped first; no number becomes 0"
)]
pub(super) fn whole(value: f64) -> i32 {
    const MOST: f64 = 268_435_456.0;
    value.clamp(-MOST, MOST) as i32
}

/// 0 to 255, clamped.
#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the cast clamps"
)]
pub(super) fn byte(value: f32) -> u8 {
    (value + 0.5) as u8
}

/// As an index; below 0 becomes 0.
pub(super) fn index(value: i64) -> usize {
    usize::try_from(value.max(0)).unwrap_or(0)
}

/// A count as a signed number.
pub(super) fn signed(value: usize) -> i64 {
    i64::try_from(value).unwrap_or(i64::MAX)
}

/// A count as a name of a triangle or part.
pub(super) fn short(value: usize) -> u32 {
    u32::try_from(value).unwrap_or(u32::MAX)
}
