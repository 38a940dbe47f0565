//! A part that is said to be the same is drawn and printed the same.

use latchwright_model::change::Size;
use latchwright_model::{Design, Unit};
use latchwright_search::remedy::{Part, same};
use latchwright_solids::part::Kind;
use latchwright_solids::{Options, parts};
use latchwright_workshop::{TemplateKind, templates};

const ALL: [Part; 7] = [
    Part::Plate,
    Part::Slider,
    Part::Keeper,
    Part::Disc(0),
    Part::Disc(1),
    Part::Knob(0),
    Part::Knob(1),
];

/// What a maker cuts or prints each of [`ALL`] by, and the heights that no drawing shows; `None` of a part
/// that cannot be made.
fn made(design: &Design) -> [Option<(String, Vec<f64>)>; 7] {
    let templates = templates(design).all;
    let prints = parts(design, &Options::default()).unwrap_or_default();
    let cut = |kind: TemplateKind, heights: &[f64]| {
        let found = templates.iter().find(|template| template.kind == kind);
        found.map(|template| (format!("{:?}", template.flat), heights.to_vec()))
    };
    let printed = |kind: Kind, dial: Option<usize>| {
        let found = prints
            .iter()
            .find(|part| part.kind == kind && part.dial == dial);
        found.map(|part| (format!("{:?}", part.mesh), Vec::new()))
    };
    let plate = &design.plate;
    ALL.map(|part| match part {
        Part::Plate => cut(TemplateKind::PlateBack, &[plate.thickness, plate.rabbet]),
        Part::Slider => cut(TemplateKind::Slider, &[design.slider.thickness]),
        // a wooden one gets the holes for its screws where it is fixed
        Part::Keeper => printed(Kind::Keeper, None),
        Part::Disc(dial) => printed(Kind::Disc, Some(dial)),
        Part::Knob(dial) => printed(Kind::Knob, Some(dial)),
    })
}

#[test]
fn whatever_changes_a_part_is_said_to_change_it() {
    let first = Design::default();
    let before = made(&first);
    let (mut changed_parts, mut missed) = (0, Vec::new());
    let sizes = Size::all(&first)
        .into_iter()
        .filter(|size| size.is_built() && size.dial().is_none_or(|dial| dial == 0));
    for size in sizes {
        let by = if size.unit() == Unit::Count { 4.0 } else { 0.6 };
        let mut changed = first.clone();
        let was = size.get(&first).expect("one of its sizes");
        assert!(size.set(&mut changed, was + by), "{size:?}");
        for ((part, before), after) in ALL.into_iter().zip(&before).zip(made(&changed)) {
            if after.is_some() && after != *before {
                changed_parts += 1;
                if same(&first, &changed, part) {
                    missed.push((size, part));
                }
            }
        }
    }
    assert!(missed.is_empty(), "{missed:#?}");
    assert!(changed_parts > 30, "only {changed_parts}");
}
