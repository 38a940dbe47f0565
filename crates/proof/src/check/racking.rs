//! Racking: a slider that is pulled beside its guide jams in it.

use super::CheckKind;
use super::{Sums, worst_case};
use crate::results::Check;

/// The distance of the pull from the guide's line, over the guide's length, from which on friction
/// alone jams the slider: 1/(2µ).
///
/// # Source
/// The statics of two guide points; the rule "2 to 1" of two makers of plain bearings is this at
/// µ = 0.25.
pub fn arm_limit(friction: f64) -> f64 {
    1.0 / (2.0 * friction)
}

/// The guide is long enough for a pull anywhere on the finger knob's shank.
///
/// The guide's points and the finger knob are both of the slider, so that the arm is the same at
/// both ends of the travel. A pin that stops the slider jams nothing: a stopped slider is to stand,
/// and the turn that it takes in its play is counted in what is held.
pub(super) fn check(sums: &Sums<'_>) -> Check {
    let slider = &sums.design.slider;
    let aside = (slider.pull_at - slider.guide_at.0).abs();
    let arm = aside + slider.shank / 2.0 + sums.slider.play.max(0.0);
    let needed = arm / arm_limit(slider.friction);
    let length = sums.slider.guide_length;
    let told = |part: f64| part / arm_limit(slider.friction);
    worst_case(
        CheckKind::Racking,
        None,
        "Guide is long enough that the slider does not jam".to_owned(),
        (length, needed),
        vec![
            ("pull_aside", told(aside)),
            ("shank", told(slider.shank / 2.0)),
            ("guide_play", told(sums.slider.play)),
        ],
        |short| {
            // what the season takes of a longer guide is no more than what it takes of this one,
            // length for length
            let longer = (length + short) * slider.guide_length / length.max(1e-3);
            format!(
                "lengthen the guide from {:.2} to at least {:.2} mm, or bring the finger knob from \
                 {aside:.2} to at most {:.2} mm beside the guide's middle",
                slider.guide_length,
                (longer * 100.0).ceil() / 100.0,
                (aside - short * arm_limit(slider.friction)).max(0.0)
            )
        },
    )
}
