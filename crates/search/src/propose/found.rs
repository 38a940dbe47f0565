//! A latch that the search found, and what it is ranked by.

use super::lattice::Point;
use super::sizes::Sizes;
use latchwright_model::Design;
use latchwright_proof::unsure_dials;

/// A latch that was found.
#[derive(Debug, Clone)]
pub(super) struct Found {
    /// The whole design.
    pub design: Design,
    /// Its least room.
    pub room: f64,
    /// What it is ranked by: what is looked for, then fewer bits, then simpler numbers; the larger, the
    /// better.
    pub rank: (f64, (i64, i64)),
    /// Where it was found.
    pub at: (Point, Sizes),
}

impl Found {
    /// How many settings there are; as a number that has no end.
    pub(super) fn settings(&self) -> f64 {
        settings(&self.design)
    }

    /// The same with this dial a seat poorer.
    fn poorer(&self, index: usize) -> Option<Self> {
        let mut poorer = self.clone();
        let dial = poorer.design.dials.get_mut(index)?;
        dial.positions = dial.positions.checked_sub(dial.key.sides)?;
        let last = dial.positions.checked_sub(1)?;
        let digit = poorer.design.combination.get_mut(index)?;
        *digit = (*digit).min(last);
        Some(poorer)
    }

    /// The same with one dial a seat poorer, each in turn that may be proven so.
    ///
    /// Of two dials that stand alike the proof may bear more marks on one. `backwards` for the last
    /// dial first.
    pub(super) fn each_poorer(&self, backwards: bool) -> Vec<Self> {
        match unsure_dials(&self.design, 2)[..] {
            [] => {
                let dials = 0..self.design.dials.len();
                let mut each: Vec<Self> = dials.filter_map(|index| self.poorer(index)).collect();
                if backwards {
                    each.reverse();
                }
                each
            }
            [index] => self.poorer(index).into_iter().collect(),
            // whichever is poorer, another stays in doubt
            _ => Vec::new(),
        }
    }

    /// Bore, pin, flats and kind of row: the best of each are looked round.
    pub(super) fn class(&self) -> (u64, u64, u32, bool) {
        let point = &self.at.0;
        let (bore, pin) = (point.bore.to_bits(), point.pin.to_bits());
        (bore, pin, point.sides, point.stagger > 0.0)
    }

    /// Of the lid, mm².
    pub(super) fn area(&self) -> f64 {
        area(&self.design)
    }
}

/// How many settings a design has; as a number that has no end.
pub(super) fn settings(design: &Design) -> f64 {
    let dials = design.dials.iter();
    dials.map(|dial| f64::from(dial.positions)).product()
}

/// Of a design's lid, mm².
pub(super) fn area(design: &Design) -> f64 {
    design.plate.width * design.plate.depth
}

/// The numbers that a maker has to set out.
pub(super) fn numbers(design: &Design) -> Vec<f64> {
    let mut numbers = vec![
        design.slider.travel,
        design.tab.engagement,
        design.tab.width,
        design.slider.guide_length,
    ];
    if let Some(dial) = design.dials.first() {
        numbers.extend([dial.disc.radius, dial.pin.gap]);
        numbers.extend([dial.knob.diameter, dial.pin.diameter, dial.bore.diameter]);
        let slots = dial.disc.slots.iter();
        numbers.extend(slots.flat_map(|slot| [slot.width, slot.depth, slot.lead_in]));
    }
    let dials = || design.dials.iter();
    numbers.extend(dials().flat_map(|dial| [dial.centre.0, dial.centre.1]));
    // posts go by the marks, and those alike are set out once
    let mut posts: Vec<f64> = dials().map(|dial| dial.key.apothem).collect();
    posts.sort_by(f64::total_cmp);
    posts.dedup();
    numbers.extend(posts);
    numbers
}
