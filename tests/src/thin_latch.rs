//! The latch that figures were worked out for by hand: its slider is as thin as its discs and of the plate's own wood. Its
//! fingers would meet the discs, so that it is no box to build; the sums in the plane are those of any other.

use latchwright_model::{Design, Dial, Grain, Material, Sawn};

/// Three dials of eight marks in a row at y 95; travel 8, engagement 6, gap 2.
pub fn thin() -> Design {
    let mut design = Design::default();
    let (y, plate) = (95.0, design.plate.wood.clone());
    (design.plate.sawn, design.plate.room) = (Sawn::Flat, 14.0);
    let slider = &mut design.slider;
    (slider.travel, slider.thickness) = (8.0, 8.0);
    (slider.guide_length, slider.guide_at) = (22.0, (0.0, 27.0));
    slider.material = Material::Wood {
        species: plate,
        sawn: Sawn::Flat,
        grain: Grain::AlongX,
    };
    design.tab.engagement = 6.0;
    for dial in &mut design.dials {
        let x = dial.centre.0;
        *dial = thin_dial();
        dial.centre = (x, y);
    }
    design
}

/// A disc of 18 mm with a slot 9 mm wide and deep, and a pin of 4 mm that stands 3 mm free.
pub fn thin_dial() -> Dial {
    let mut dial = Dial {
        centre: (0.0, 95.0),
        ..Dial::default()
    };
    (dial.disc.radius, dial.disc.below) = (18.0, 0.5);
    if let Some(slot) = dial.disc.slots.first_mut() {
        (slot.width, slot.depth) = (9.0, 9.0);
    }
    (dial.pin.gap, dial.pin.height, dial.pin.free) = (2.0, 6.0, 3.0);
    dial
}
