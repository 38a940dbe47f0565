//! The parts of a latch, and whether one is the same in two designs as it is cut or printed.

use latchwright_assembly::finger_knob::shank_slot;
use latchwright_assembly::guide::guide;
use latchwright_model::{Design, Dial};
use latchwright_proof::slider_body::SliderBody;

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

/// Whether a part is the same in both designs, as it is cut or printed: everything that its template or
/// its print is made from, seen from the part itself.
pub fn same(one: &Design, other: &Design, part: Part) -> bool {
    let of_the_same = match part {
        Part::Plate => (one.plate.sawn, one.plate.grain) == (other.plate.sawn, other.plate.grain),
        Part::Slider => one.slider.material == other.slider.material,
        Part::Keeper | Part::Disc(_) | Part::Knob(_) => true,
    };
    let (has, had) = (sizes(one, part), sizes(other, part));
    let mut pairs = has.iter().zip(&had);
    of_the_same && has.len() == had.len() && pairs.all(|(a, b)| (a - b).abs() < 1e-6)
}

/// What it is cut or printed by, mm; nothing where there is no such dial.
fn sizes(design: &Design, part: Part) -> Vec<f64> {
    let dial = |index: usize| design.dials.get(index);
    match part {
        Part::Plate => plate(design),
        Part::Slider => slider(design),
        Part::Keeper => {
            let keeper = &design.keeper;
            vec![keeper.width, keeper.depth, keeper.thickness]
        }
        Part::Disc(index) => dial(index).map_or(Vec::new(), |dial| disc(design, dial)),
        Part::Knob(index) => dial(index).map_or(Vec::new(), knob),
    }
}

fn plate(design: &Design) -> Vec<f64> {
    let (plate, slider, keeper) = (&design.plate, &design.slider, &design.keeper);
    let mut sizes = vec![plate.width, plate.depth, plate.thickness, plate.rabbet];
    // the rabbet lies over the keeper and stops a little beyond it
    sizes.extend([design.tab.at, keeper.edge, keeper.width, keeper.depth]);
    // the hinges stand by the sides of the box
    sizes.push(design.inside.width);
    // the finger knob's slot
    sizes.extend([slider.pull_at, slider.guide_at.1, slider.travel]);
    sizes.push(shank_slot(design).width);
    // where strips and bridges are screwed on, and how deep
    let guide = guide(design);
    sizes.extend(
        guide
            .screws
            .iter()
            .flat_map(|screw| [screw.at.x, screw.at.y]),
    );
    sizes.push(guide.pilot_depth().unwrap_or(0.0));
    for dial in &design.dials {
        sizes.extend([dial.centre.0, dial.centre.1, dial.bore.diameter]);
    }
    sizes
}

/// Seen from its finger knob, which stands where the guide's middle is.
fn slider(design: &Design) -> Vec<f64> {
    let (slider, tab) = (&design.slider, &design.tab);
    let (x, y) = (slider.pull_at, slider.guide_at.1);
    let body = SliderBody::of(design);
    let mut sizes = vec![
        slider.thickness,
        slider.shank,
        tab.at - x,
        tab.width,
        body.tip - y,
    ];
    // its bar keeps clear of the discs
    sizes.extend([body.bar_min.x - x, body.bar_min.y - y]);
    sizes.extend([body.bar_max.x - x, body.bar_max.y - y]);
    for dial in &design.dials {
        let pin = dial.pin_at();
        sizes.extend([pin.0 - x, pin.1 - y, dial.pin.diameter]);
        sizes.extend([dial.pin.height, dial.pin.free]);
    }
    sizes
}

/// With its shaft, which goes through the plate to the knob, and its post.
fn disc(design: &Design, dial: &Dial) -> Vec<f64> {
    let mut sizes = vec![dial.disc.radius, dial.disc.thickness, dial.key.apothem];
    sizes.extend([f64::from(dial.key.sides), dial.knob.height]);
    sizes.push(dial.bore.diameter - 2.0 * dial.bore.shaft_play);
    sizes.push(dial.disc.below + design.plate.thickness);
    for slot in &dial.disc.slots {
        // where a slot is cut, as a share of a turn
        let turn = slot.mark as f64 / f64::from(dial.positions.max(1));
        sizes.extend([turn, slot.width, slot.depth, slot.lead_in]);
    }
    sizes
}

/// With its star, in which the post goes on.
fn knob(dial: &Dial) -> Vec<f64> {
    vec![
        dial.knob.diameter,
        dial.knob.height,
        f64::from(dial.positions),
        f64::from(dial.key.sides),
        dial.key.apothem + dial.key.clearance,
    ]
}
