//! The strips that lead the slider's neck: they are screwed to the plate and reach over the whole way of
//! the slider's guide points, between the keeper and the bar.

use super::advice::{Estimate, FromTo};
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::results::Check;
use crate::slider_body::{CORNER, RABBET_AIR, STRIP, SliderBody, strips, swings_forward};
use latchwright_model::Design;

pub(super) fn checks(sums: &Sums<'_>, body: &SliderBody) -> Vec<Check> {
    vec![before_bar(sums, body), behind_keeper(sums.design)]
}

/// What lies between the strips and the rounded corners of neck and bar when the slider is forward,
/// worst case, mm.
pub fn to_bar(sums: &Sums<'_>, body: &SliderBody) -> f64 {
    let design = sums.design;
    let apart = body.bar_min.y - CORNER - strips(design).1;
    let (turned, season) = taken(sums, body);
    let work = &design.workmanship;
    apart - turned - season - (work.bore_place + work.pin_place) * sums.slider.swell
}

/// What the slider's turning and the season take of that, mm.
fn taken(sums: &Sums<'_>, body: &SliderBody) -> (f64, f64) {
    let (design, slider) = (sums.design, &sums.slider);
    let (guide_x, guide_y) = design.slider.guide_at;
    let aside = (design.tab.at - guide_x).abs() + design.tab.width / 2.0 + slider.play + STRIP;
    let (bar, end) = (body.bar_min.y - guide_y, strips(design).1 - guide_y);
    let turned = slider.lift(aside) + bar.abs() * slider.shorten;
    // the plate's place moves ahead of the slider's
    let (_, season) = sums.drift.y.apart(end, bar);
    (turned * slider.swell, season.max(0.0))
}

/// The bar goes forward with the slider: strips that stop it would keep the tab from the keeper.
fn before_bar(sums: &Sums<'_>, body: &SliderBody) -> Check {
    let design = sums.design;
    let (turned, season) = taken(sums, body);
    let parts = vec![
        (Contributor::GuidePlay, turned),
        (Contributor::BorePlace, design.workmanship.bore_place),
        (Contributor::PinPlace, design.workmanship.pin_place),
        (Contributor::Season, season),
    ];
    let draft = Draft {
        kind: CheckKind::StripsToBar,
        about: About::Latch,
        value: to_bar(sums, body),
        limit: 0.0,
        decided_by: parts,
    };
    draft.judged(|short| {
        let length = design.slider.guide_length;
        Advice::Change(Estimate::ShortenGuideOrDialsToHinge {
            guide: FromTo {
                from: length,
                to: (length - short).max(0.0),
            },
            dials: short,
        })
    })
}

/// What the strips' front ends have behind the keeper's rabbet, and behind the keeper as the lid swings
/// up, worst case, mm.
pub fn to_keeper(design: &Design) -> f64 {
    let from = strips(design).0;
    let work = &design.workmanship;
    let swing = swings_forward(design, from) + work.keeper_place + work.bore_place;
    from - design.keeper.edge - swing.max(RABBET_AIR)
}

/// The strips hang below the plate, behind the keeper that lies in its rabbet; their front ends need
/// wood over them, and pass the keeper as the lid swings up.
fn behind_keeper(design: &Design) -> Check {
    let from = strips(design).0;
    let parts = vec![
        (Contributor::Rabbet, RABBET_AIR),
        (Contributor::Swing, swings_forward(design, from)),
        (Contributor::KeeperPlace, design.workmanship.keeper_place),
        (Contributor::BorePlace, design.workmanship.bore_place),
    ];
    let draft = Draft {
        kind: CheckKind::StripsToKeeper,
        about: About::Latch,
        value: to_keeper(design),
        limit: 0.0,
        decided_by: parts,
    };
    draft.judged(|short| Advice::Change(Estimate::BeginGuideFurtherBack(short)))
}
