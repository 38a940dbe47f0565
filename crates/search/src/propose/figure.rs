//! What is asked of a latch, and one figure of it: what is to spare when nothing is off and at the
//! worst, and so how much of its own uncertainty that is.

/// Below this a margin, mm, counts as none, so that the proof's own rounding never takes it.
pub(super) const DUST: f64 = 1e-6;

/// What is asked of a latch; each has one figure, or one a dial, in mm unless it says otherwise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Question {
    /// The tab clears the keeper when the slider is back.
    Free,
    /// The tab is held when the slider is forward.
    HeldAtRest,
    /// The guide keeps its play all year.
    Guide,
    /// The slider does not jam.
    Racking,
    /// The tab bears the pull, MPa.
    TabBears,
    /// A dial turns free of its pin at rest.
    AtRest,
    /// The pin finds its slot.
    Enters,
    /// The slot is wider than the pin.
    Fits,
    /// The slot is deep enough.
    Deep,
    /// The slot's wall is longer than its lead-in.
    Wall,
    /// The pin keeps its dial from turning while open.
    Captive,
    /// The tab stays held when the dial stops the slider.
    Hold,
    /// The next mark is clear of the mouth, degrees.
    Beside,
    /// The key cannot spin.
    Bite,
    /// Wall between slot and star.
    Star,
    /// The pin bears the pull, MPa.
    PinBears,
    /// Wood between a bore and the plate's edge.
    Edge,
    /// Wood between a bore and the finger knob's slot.
    GuideSlot,
    /// Fingers get between the finger knob and a dial's knob.
    PullRoom,
    /// The finger knob goes clear of a dial's knob all the way.
    PullWay,
    /// Wood on the slider around the finger knob's shank.
    PullSeat,
    /// Wood between the finger knob's slot and the keeper's rabbet.
    PullKeeper,
    /// The slider's bar has room between discs and front.
    Bar,
    /// The guide strips end before the bar.
    StripsToBar,
    /// The guide strips stay clear of the keeper.
    StripsToKeeper,
    /// The tab clears the keeper while the lid swings up.
    Swings,
    /// Two discs keep apart.
    Discs,
    /// A disc stays clear of another dial's pin and of the finger that carries it.
    Fingers,
    /// Fingers get between two knobs.
    Knobs,
    /// Wood between two bores.
    Bores,
    /// The pin meets two thirds of its disc.
    MeetsDisc,
    /// The disc turns clear of the plate.
    DiscToPlate,
    /// The slider runs clear of the plate.
    SliderToPlate,
    /// The tab slips under the keeper.
    TabToKeeper,
    /// Nothing below the latch is met.
    RoomBelow,
    /// The keeper has room in its rabbet.
    Closes,
    /// Wood over the rabbet.
    Roof,
}

impl Question {
    /// Whether the proof's exact worst case may leave more than the plain sums.
    fn is_sharpened(self) -> bool {
        matches!(
            self,
            Self::Free
                | Self::Swings
                | Self::HeldAtRest
                | Self::AtRest
                | Self::Enters
                | Self::Deep
                | Self::Captive
                | Self::Hold
                | Self::Beside
                | Self::Guide
        )
    }
}

/// One figure.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// What is asked.
    pub question: Question,
    /// The dial it is about, from 0.
    pub dial: Option<usize>,
    /// What is to spare when nothing is off.
    pub nominal: f64,
    /// What is to spare at the worst, by the plain sums.
    pub worst: f64,
}

impl Figure {
    /// What all that may be off takes.
    pub fn uncertainty(&self) -> f64 {
        self.nominal - self.worst
    }

    /// What is to spare at the worst as a share of what may be off: 0.5, and every error could be
    /// half as large again. Infinite where nothing is uncertain.
    pub fn room(&self) -> f64 {
        let uncertain = self.uncertainty();
        if uncertain > 1e-9 {
            self.worst / uncertain
        } else if self.worst >= -1e-9 {
            f64::INFINITY
        } else {
            f64::NEG_INFINITY
        }
    }

    /// What is to spare when every error is `1 + room` times as large.
    ///
    /// A `room` below 0 is for what the proof may still find to be there; where the proof has no more
    /// than the plain sums, it counts as 0.
    pub(super) fn left_at(&self, room: f64) -> f64 {
        let room = if self.question.is_sharpened() {
            room
        } else {
            room.max(0.0)
        };
        self.nominal - (1.0 + room) * self.uncertainty()
    }
}

#[cfg(test)]
mod tests {
    use super::super::demand::work_to;
    use super::super::plain::least_room;
    use latchwright_model::Design;

    #[test]
    fn room_is_the_share_by_which_every_error_can_grow() {
        let design = Design::default();
        let (room, deciding) = least_room(&design).unwrap();
        assert!((0.05..0.6).contains(&room), "{room} {deciding:?}");
        let grown = |share: f64| {
            let mut grown = design.clone();
            work_to(&mut grown, 1.0 + share);
            least_room(&grown).unwrap().0
        };
        assert!(grown(room - 0.03) > 0.0);
        assert!(grown(room + 0.03) < 0.0);
    }
}
