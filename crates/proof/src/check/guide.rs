//! The guide over the year: a slider that swells, or a plate that shrinks, takes its play, and at
//! some humidity it binds.

use latchwright_geometry::EPSILON;

use super::advice::{Estimate, FromTo, GuideCloses};
use super::{About, Advice, CheckKind, Contributor, Draft, Sums};
use crate::results::Check;
use crate::worst::figure::SliderFigureKind;
use latchwright_model::wood::{Air, Mover};
use latchwright_model::{Climate, Design};

/// Halvings on the way from the air it was built in to an extreme: finer than any hygrometer.
const HALVINGS: u32 = 30;

/// The season leaves the slider room in its guide; where it does not, at which humidity it closes.
pub(super) fn check(sums: &Sums<'_>) -> Check {
    let play = sums.design.slider.guide_play;
    let plain = sums.slider.least_play;
    let least = sums
        .slider_worst
        .get(SliderFigureKind::Play)
        .map_or(plain, |found| (found.bound - EPSILON).max(plain));
    let draft = Draft {
        kind: CheckKind::Guide,
        about: About::Latch,
        value: least,
        limit: 0.0,
        decided_by: vec![(Contributor::Season, play - least)],
    };
    draft.judged(|short| {
        Advice::Change(Estimate::WidenGuidePlay(FromTo {
            from: play,
            to: play + short,
        }))
    })
}

/// When a guide that closes in some air of the year does so: at the extremes that are named, or, where
/// neither alone closes it, on a warm dry day or a cool damp one.
pub fn when_guide_closes(design: &Design) -> GuideCloses {
    let season = &design.season;
    let mixed = |warm: Climate, damp: Climate| Climate {
        celsius: warm.celsius,
        humidity: damp.humidity,
    };
    let named = [season.dampest, season.driest];
    let between = [
        mixed(season.driest, season.dampest),
        mixed(season.dampest, season.driest),
    ];
    let closing = |ends: [Climate; 2]| -> Vec<Climate> {
        let found = ends.into_iter().filter_map(|end| closes_at(design, end));
        found.collect()
    };
    let mut airs = closing(named);
    if airs.is_empty() {
        airs = closing(between);
    }
    if airs.is_empty() {
        GuideCloses::AtTheExtremes
    } else {
        GuideCloses::At(airs)
    }
}

/// The air at which the guide closes on the way from the air it was built in to `end`, temperature
/// and humidity going along evenly; `None` if it is still open at the end.
pub fn closes_at(design: &Design, end: Climate) -> Option<Climate> {
    let built = design.season.built;
    let on_the_way = |share: f64| Climate {
        celsius: built.celsius + (end.celsius - built.celsius) * share,
        humidity: built.humidity + (end.humidity - built.humidity) * share,
    };
    if play_left(design, end)? > 0.0 {
        return None;
    }
    let (mut open, mut closed) = (0.0, 1.0);
    for _ in 0..HALVINGS {
        let middle = f64::midpoint(open, closed);
        if play_left(design, on_the_way(middle))? > 0.0 {
            open = middle;
        } else {
            closed = middle;
        }
    }
    Some(on_the_way(closed))
}

/// Clearance to either side that this air leaves in the guide, mm, by the formula that leaves less.
///
/// The guide stands on the plate and its neck is as wide as the tab: what the plate gains over that
/// width is gained, what the slider gains is lost. `None` for a wood that is not known.
fn play_left(design: &Design, now: Climate) -> Option<f64> {
    let (plate, slider) = (
        Mover::of_plate(design, true)?,
        Mover::of_slider(design, true)?,
    );
    let play = design.slider.guide_play;
    if plate == slider {
        return Some(play);
    }
    let (built, now) = (Air::of(design.season.built), Air::of(now));
    let (plate, _) = plate.strain(built, now, true);
    let (_, slider) = slider.strain(built, now, true);
    Some(play + design.tab.width / 2.0 * (plate - slider))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::prove;
    use crate::thin_latch::thin;
    use crate::verdict::CheckVerdict;
    use latchwright_model::{Grain, Material, Sawn, Season};

    /// A slider of flat-sawn cherry, 40 mm wide, with its grain along the travel, in a guide on a plate
    /// whose grain runs across it and so hardly moves; 0.3 mm of play a side.
    fn cherry(built: f64, dampest: f64) -> Design {
        let mut design = thin();
        design.plate.grain = Grain::AlongX;
        design.tab.width = 40.0;
        design.slider.guide_play = 0.3;
        design.slider.material = Material::Wood {
            species: "black cherry".to_owned(),
            sawn: Sawn::Flat,
            grain: Grain::AlongY,
        };
        let air = |humidity| Climate {
            celsius: 20.0,
            humidity,
        };
        design.season = Season {
            dampest: air(dampest),
            ..Season::still(air(built))
        };
        design
    }

    fn guide(design: &Design) -> Check {
        let checks = prove(design).checks;
        checks
            .into_iter()
            .find(|check| check.kind == CheckKind::Guide)
            .unwrap()
    }

    /// Worked by hand with the handbook's figures: 7.67 to 11.00 % moisture, 40 · 0.00248 · 3.33 =
    /// 0.330 mm lost, of which a plate that grows by 0.009 mm along its grain gives little back.
    #[test]
    fn a_cherry_slider_keeps_0_27_of_0_60_mm_from_40_to_60_per_cent() {
        let check = guide(&cherry(40.0, 60.0));
        let left = 2.0 * check.value;
        assert!((0.265..0.285).contains(&left), "{left}");
        assert_eq!(check.verdict, CheckVerdict::Passes);
    }

    #[test]
    fn from_45_to_90_per_cent_it_closes_and_the_humidity_is_named() {
        let design = cherry(45.0, 90.0);
        let check = guide(&design);
        assert_eq!(check.verdict, CheckVerdict::Fails);
        let air = closes_at(&design, design.season.dampest).unwrap();
        assert!((70.0..80.0).contains(&air.humidity), "{air:?}");
        assert!(play_left(&design, air).unwrap().abs() < 1e-6);
        assert_eq!(when_guide_closes(&design), GuideCloses::At(vec![air]));
        // the season ends just before it: then it stays open
        let before = cherry(45.0, air.humidity - 1.0);
        assert_eq!(guide(&before).verdict, CheckVerdict::Passes);
        assert_eq!(closes_at(&before, before.season.dampest), None);
    }

    #[test]
    fn a_plate_that_shrinks_closes_its_guide_at_the_dry_end() {
        let mut design = thin();
        design.plate.grain = Grain::AlongY;
        design.slider.guide_play = 0.1;
        design.slider.material = Material::Printed;
        let check = guide(&design);
        assert_eq!(check.verdict, CheckVerdict::Fails);
        let air = closes_at(&design, design.season.driest).unwrap();
        assert!((25.0..45.0).contains(&air.humidity), "{air:?}");
        assert!((20.0..21.0).contains(&air.celsius), "warmth goes along");
        assert_eq!(when_guide_closes(&design), GuideCloses::At(vec![air]));
    }

    #[test]
    fn plate_and_slider_of_one_wood_one_way_keep_their_play() {
        let mut design = thin();
        design.season.dampest.humidity = 95.0;
        let check = guide(&design);
        assert_eq!(check.value, design.slider.guide_play);
        assert_eq!(closes_at(&design, design.season.dampest), None);
    }
}
