//! Racking: a slider that is pulled beside its guide jams in it.

use super::advice::{Estimate, FromTo};
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::bounds::SliderBounds;
use crate::results::Check;
use latchwright_model::Design;

/// The distance of the pull from the guide's line, over the guide's length, from which on friction
/// alone jams the slider: 1/(2µ).
///
/// # Source
/// The statics of two guide points; the rule "2 to 1" of two makers of plain bearings is this at
/// µ = 0.25.
pub fn arm_limit(friction: f64) -> f64 {
    1.0 / (2.0 * friction)
}

/// How far the pull can stand beside the guide's line, worst case, mm.
fn arm(design: &Design, bounds: &SliderBounds) -> f64 {
    let slider = &design.slider;
    let aside = (slider.pull_at - slider.guide_at.0).abs();
    aside + slider.shank / 2.0 + bounds.play.max(0.0)
}

/// How much longer the guide is than a slider that does not jam needs, worst case, mm.
pub fn racking_margin(design: &Design, bounds: &SliderBounds) -> f64 {
    bounds.guide_length - arm(design, bounds) / arm_limit(design.slider.friction)
}

/// The guide is long enough for a pull anywhere on the finger knob's shank.
///
/// The guide's points and the finger knob are both of the slider, so that the arm is the same at
/// both ends of the travel. A pin that stops the slider jams nothing: a stopped slider is to stand,
/// and the turn that it takes in its play is counted in what is held.
pub(super) fn check(sums: &Sums<'_>) -> Check {
    let slider = &sums.design.slider;
    let aside = (slider.pull_at - slider.guide_at.0).abs();
    let length = sums.slider.guide_length;
    let takes = |part: f64| part / arm_limit(slider.friction);
    let draft = Draft {
        kind: CheckKind::Racking,
        about: About::Latch,
        value: length,
        limit: arm(sums.design, &sums.slider) / arm_limit(slider.friction),
        decided_by: vec![
            (Contributor::PullAside, takes(aside)),
            (Contributor::Shank, takes(slider.shank / 2.0)),
            (Contributor::GuidePlay, takes(sums.slider.play)),
        ],
    };
    draft.judged(|short| {
        // what the season takes of a longer guide is no more than what it takes of this one,
        // length for length
        let longer = (length + short) * slider.guide_length / length.max(1e-3);
        Advice::Change(Estimate::LongerGuide {
            guide: FromTo {
                from: slider.guide_length,
                to: (longer * 100.0).ceil() / 100.0,
            },
            aside: FromTo {
                from: aside,
                to: (aside - short * arm_limit(slider.friction)).max(0.0),
            },
        })
    })
}
