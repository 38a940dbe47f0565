//! Designs of any size, brought within what can be drawn.
//!
//! A design is plain values and may be wrong in any way a maker can type. Before it is drawn, its
//! lengths are cut to ten metres and its dials to a number that a lid could carry; a design that
//! makes sense passes through untouched and uncopied.

use std::borrow::Cow;

use latchwright_model::{Design, Dial};

/// Longest length that is drawn, mm.
const LONGEST: f64 = 1e4;
/// Most dials that are drawn.
const MOST_DIALS: usize = 64;

/// `design`, with silly sizes cut down.
pub(crate) fn tame(design: &Design) -> Cow<'_, Design> {
    if lengths_are_tame(design) && design.dials.len() <= MOST_DIALS {
        return Cow::Borrowed(design);
    }
    let mut tame = Design {
        dials: Vec::new(),
        ..Design::default()
    };
    tame.units = design.units;
    tame.plate = design.plate.clone();
    tame.slider = design.slider.clone();
    tame.tab = design.tab.clone();
    tame.keeper = design.keeper.clone();
    tame.combination = design
        .combination
        .iter()
        .take(MOST_DIALS)
        .copied()
        .collect();
    tame.dials = design.dials.iter().take(MOST_DIALS).cloned().collect();
    for_each_length(&mut tame, cut);
    Cow::Owned(tame)
}

/// A length, or an angle, within bounds; what is not a number becomes zero.
pub(crate) fn cut_to_size(value: f64) -> f64 {
    if value.is_nan() {
        0.0
    } else {
        value.clamp(-LONGEST, LONGEST)
    }
}

fn cut(value: &mut f64) {
    *value = cut_to_size(*value);
}

fn lengths_are_tame(design: &Design) -> bool {
    let fine = |value: f64| value.abs() <= LONGEST;
    let (plate, slider, tab, keeper) = (&design.plate, &design.slider, &design.tab, &design.keeper);
    [plate.width, plate.depth, plate.thickness, plate.rabbet]
        .into_iter()
        .all(fine)
        && [
            slider.travel,
            slider.pull_at,
            slider.shank,
            slider.thickness,
            slider.below,
        ]
        .into_iter()
        .all(fine)
        && [
            slider.guide_at.0,
            slider.guide_at.1,
            tab.at,
            tab.width,
            tab.engagement,
        ]
        .into_iter()
        .all(fine)
        && [keeper.edge, keeper.width, keeper.depth, keeper.thickness]
            .into_iter()
            .all(fine)
        && design
            .dials
            .iter()
            .take(MOST_DIALS)
            .all(|dial| dial_is_tame(dial, fine))
}

fn dial_is_tame(dial: &Dial, fine: impl Fn(f64) -> bool) -> bool {
    [
        dial.centre.0,
        dial.centre.1,
        dial.disc.radius,
        dial.disc.thickness,
        dial.disc.below,
    ]
    .into_iter()
    .chain([
        dial.pin.offset,
        dial.pin.diameter,
        dial.pin.gap,
        dial.pin.height,
        dial.key.apothem,
    ])
    .chain([
        dial.bore.diameter,
        dial.bore.shaft_play,
        dial.knob.diameter,
        dial.knob.height,
    ])
    .chain(
        dial.disc
            .slots
            .iter()
            .flat_map(|slot| [slot.width, slot.depth, slot.lead_in]),
    )
    .all(fine)
}

fn for_each_length(design: &mut Design, change: fn(&mut f64)) {
    let Design {
        plate,
        slider,
        tab,
        keeper,
        dials,
        ..
    } = design;
    [
        &mut plate.width,
        &mut plate.depth,
        &mut plate.thickness,
        &mut plate.rabbet,
    ]
    .into_iter()
    .for_each(change);
    [
        &mut slider.travel,
        &mut slider.pull_at,
        &mut slider.shank,
        &mut slider.thickness,
        &mut slider.below,
    ]
    .into_iter()
    .for_each(change);
    [&mut slider.guide_at.0, &mut slider.guide_at.1]
        .into_iter()
        .for_each(change);
    [&mut tab.at, &mut tab.width, &mut tab.engagement]
        .into_iter()
        .for_each(change);
    [
        &mut keeper.edge,
        &mut keeper.width,
        &mut keeper.depth,
        &mut keeper.thickness,
    ]
    .into_iter()
    .for_each(change);
    for dial in dials {
        let Dial {
            centre,
            disc,
            pin,
            key,
            bore,
            knob,
            ..
        } = dial;
        [
            &mut centre.0,
            &mut centre.1,
            &mut disc.radius,
            &mut disc.thickness,
            &mut disc.below,
        ]
        .into_iter()
        .chain([
            &mut pin.offset,
            &mut pin.diameter,
            &mut pin.gap,
            &mut pin.height,
            &mut key.apothem,
        ])
        .chain([&mut bore.diameter, &mut bore.shaft_play])
        .chain([&mut knob.diameter, &mut knob.height])
        .for_each(change);
        for slot in &mut disc.slots {
            [&mut slot.width, &mut slot.depth, &mut slot.lead_in]
                .into_iter()
                .for_each(change);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_design_that_makes_sense_is_not_copied() {
        assert!(matches!(tame(&Design::default()), Cow::Borrowed(_)));
    }

    #[test]
    fn silly_sizes_are_cut_down() {
        let mut design = Design::default();
        design.plate.width = 1e300;
        design.dials[1].disc.slots[0].depth = f64::NAN;
        design.dials = vec![design.dials[1].clone(); 1000];
        let tamed = tame(&design);
        assert_eq!(tamed.plate.width, 1e4);
        assert_eq!(tamed.dials.len(), MOST_DIALS);
        assert_eq!(tamed.dials[0].disc.slots[0].depth, 0.0);
    }
}
