//! The parts of a latch, and whether one is the same in two designs as it is cut or printed.

use latchwright_model::{Design, Dial};

/// A part that may be cut, drilled or printed already.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// The plate with its bores, its rabbet and the finger knob's slot.
    Plate,
    /// The slider with tab and pins.
    Slider,
    /// The keeper; where it is fixed is still open.
    Keeper,
    /// The disc of this dial, from 0, with its half of the key.
    Disc(usize),
    /// The knob of this dial, from 0, with its half of the key and its marks.
    Knob(usize),
}

/// Whether a part is the same in both designs, as it is cut or printed.
pub(super) fn same(one: &Design, other: &Design, part: Part) -> bool {
    let near = |a: f64, b: f64| (a - b).abs() < 1e-6;
    let all = |of: &dyn Fn(&Design) -> Vec<f64>| {
        let (has, had) = (of(one), of(other));
        has.len() == had.len() && has.iter().zip(&had).all(|(a, b)| near(*a, *b))
    };
    match part {
        Part::Plate => {
            all(&plate)
                && (one.plate.sawn, one.plate.grain) == (other.plate.sawn, other.plate.grain)
        }
        Part::Slider => all(&slider) && one.slider.material == other.slider.material,
        Part::Keeper => {
            let keeper = |design: &Design| {
                let keeper = &design.keeper;
                vec![keeper.width, keeper.depth, keeper.thickness]
            };
            all(&keeper)
        }
        Part::Disc(dial) => all(&|design| design.dials.get(dial).map_or(Vec::new(), disc)),
        Part::Knob(dial) => all(&|design| design.dials.get(dial).map_or(Vec::new(), knob)),
    }
}

fn plate(design: &Design) -> Vec<f64> {
    let (plate, slider) = (&design.plate, &design.slider);
    let mut sizes = vec![plate.width, plate.depth, plate.thickness, plate.rabbet];
    // the finger knob's slot
    sizes.extend([slider.pull_at, slider.guide_at.1, slider.travel]);
    sizes.push(slider.shank + 2.0 * slider.guide_play);
    for dial in &design.dials {
        sizes.extend([dial.centre.0, dial.centre.1, dial.bore.diameter]);
    }
    sizes
}

/// Seen from its finger knob, which stands where the guide's middle is.
fn slider(design: &Design) -> Vec<f64> {
    let (slider, tab) = (&design.slider, &design.tab);
    let (x, y) = (slider.pull_at, slider.guide_at.1);
    let tip = design.keeper.edge - tab.engagement;
    let mut sizes = vec![
        slider.thickness,
        slider.shank,
        tab.at - x,
        tab.width,
        tip - y,
    ];
    for dial in &design.dials {
        let pin = dial.pin_at();
        sizes.extend([pin.0 - x, pin.1 - y, dial.pin.diameter]);
        sizes.extend([dial.pin.height, dial.pin.free]);
    }
    sizes
}

fn disc(dial: &Dial) -> Vec<f64> {
    let mut sizes = vec![dial.disc.radius, dial.disc.thickness, dial.key.apothem];
    sizes.extend([f64::from(dial.key.sides), f64::from(dial.positions)]);
    for slot in &dial.disc.slots {
        sizes.extend([slot.mark as f64, slot.width, slot.depth, slot.lead_in]);
    }
    sizes
}

fn knob(dial: &Dial) -> Vec<f64> {
    vec![
        dial.knob.diameter,
        dial.knob.height,
        f64::from(dial.positions),
        f64::from(dial.key.sides),
        dial.key.apothem,
    ]
}
