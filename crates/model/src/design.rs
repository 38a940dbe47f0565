//! The latch as plain values. Every length is a finished size in millimetres.
//!
//! Nothing here is checked: a design may be wrong in any way a maker can type it, and stays
//! readable all the same. [`crate::fault`] says what is wrong with it.
//!
//! Frame: seen from outside the closed lid; the origin is the middle of the front edge of the
//! plate, x to the right, y towards the hinge. Marks count clockwise from the mark nearest the
//! hinge, from 0.

use crate::{
    Bench, Body, Card, Dial, Inside, Keeper, OwnWood, Plate, Season, Slider, Tab, Units,
    Workmanship,
};

/// One latch: what is built, how exactly, and for whom.
#[derive(Debug, Clone, PartialEq)]
pub struct Design {
    /// What the maker calls it.
    pub title: String,
    /// The unit in which screens and papers speak; the design itself is always in millimetres.
    pub units: Units,
    /// The wooden top that carries the dials.
    pub plate: Plate,
    /// What slides, with its pins.
    pub slider: Slider,
    /// What reaches under the keeper.
    pub tab: Tab,
    /// What holds the tab down.
    pub keeper: Keeper,
    /// The room under the lid.
    pub inside: Inside,
    /// The sides and floor of the box.
    pub body: Body,
    /// The dials, in the order in which people number them.
    pub dials: Vec<Dial>,
    /// One mark a dial: where the true slots face their pins.
    pub combination: Vec<u32>,
    /// How exactly this maker works.
    pub workmanship: Workmanship,
    /// The air it is built in and lives in.
    pub season: Season,
    /// Woods that the maker has measured.
    pub own_woods: Vec<OwnWood>,
    /// What the maker has to build it with.
    pub bench: Bench,
    /// The card for the recipient.
    pub card: Card,
}

impl Design {
    /// The mark at which dial `dial` (from 0) has its true slot facing its pin; 0 where none is given.
    pub fn digit(&self, dial: usize) -> u32 {
        self.combination.get(dial).copied().unwrap_or(0)
    }

    /// The latch as a mirror that stands on its middle shows it: right for left, and every dial turned
    /// the other way. It has the same margins at the mirrored marks.
    ///
    /// What is written at the marks stays where it is.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        // never −0, which a design file does not know
        let over = |x: f64| 0.0 - x;
        let mut design = self.clone();
        design.slider.guide_at.0 = over(design.slider.guide_at.0);
        design.slider.pull_at = over(design.slider.pull_at);
        design.tab.at = over(design.tab.at);
        for (index, dial) in design.dials.iter_mut().enumerate() {
            dial.centre.0 = over(dial.centre.0);
            dial.pin.offset = over(dial.pin.offset);
            let positions = dial.positions.max(1);
            for slot in &mut dial.disc.slots {
                slot.mark = slot.mark.wrapping_neg().rem_euclid(i64::from(positions));
            }
            if let Some(mark) = design.combination.get_mut(index) {
                *mark = (positions - *mark % positions) % positions;
            }
        }
        design
    }
}

impl Default for Design {
    /// Three dials of eight marks on a 220 × 140 plate; proven as it stands.
    fn default() -> Self {
        let at = |x: f64| Dial {
            centre: (x, 106.0),
            ..Dial::default()
        };
        Self {
            title: "Untitled box".to_owned(),
            units: Units::Millimetre,
            plate: Plate::default(),
            slider: Slider::default(),
            tab: Tab::default(),
            keeper: Keeper::default(),
            inside: Inside::default(),
            body: Body::default(),
            dials: vec![at(-55.0), at(0.0), at(55.0)],
            combination: vec![3, 6, 1],
            workmanship: Workmanship::default(),
            season: Season::default(),
            own_woods: Vec::new(),
            bench: Bench::default(),
            card: Card::default(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Slot;

    #[test]
    fn a_mirrored_latch_has_right_for_left_and_turns_the_other_way() {
        let mut design = Design::default();
        design.slider.guide_at.0 = 4.0;
        design.tab.at = -7.0;
        design.dials[0].pin.offset = 0.3;
        design.dials[0].disc.slots.push(Slot {
            mark: 3,
            ..Slot::default()
        });
        let image = design.mirrored();
        assert_eq!((image.slider.guide_at.0, image.tab.at), (-4.0, 7.0));
        let at = |design: &Design| {
            design
                .dials
                .iter()
                .map(|dial| dial.centre)
                .collect::<Vec<_>>()
        };
        assert_eq!(at(&image), [(55.0, 106.0), (0.0, 106.0), (-55.0, 106.0)]);
        assert_eq!(image.dials[0].pin.offset, -0.3);
        let marks = |design: &Design| {
            let slots = design.dials[0].disc.slots.iter();
            slots.map(|slot| slot.mark).collect::<Vec<_>>()
        };
        assert_eq!(marks(&design), [0, 3]);
        assert_eq!(marks(&image), [0, 5]);
        assert_eq!(image.combination, [5, 2, 7]);
        assert_eq!(image.mirrored(), design, "twice is as it was");
    }

    #[test]
    fn nonsense_is_mirrored_without_a_panic() {
        let mut design = Design::default();
        design.dials[0].positions = 0;
        design.dials[1].disc.slots[0].mark = i64::MIN;
        design.combination = vec![u32::MAX];
        let image = design.mirrored();
        assert_eq!((image.combination.len(), image.combination[0]), (1, 0));
        assert_eq!(image.mirrored().mirrored(), image);
    }
}
