//! A dial: knob above, disc below, the key between them, its bore in the plate and its pin on the slider.

/// One dial with all that belongs to it.
#[derive(Debug, Clone, PartialEq)]
pub struct Dial {
    /// Place of the shaft on the plate, (x, y) in mm.
    pub centre: (f64, f64),
    /// Number of marks round the dial, 2 to 360.
    pub positions: u32,
    /// What is written at the marks.
    pub labels: Labels,
    /// The slotted disc below the plate.
    pub disc: Disc,
    /// The pin on the slider that meets this disc.
    pub pin: Pin,
    /// The post and star that join knob and disc.
    pub key: Key,
    /// The hole through the plate.
    pub bore: Bore,
    /// What the hand turns.
    pub knob: Knob,
}

/// One label a position; files count marks from 0, people only ever see labels.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Labels {
    /// 1 upwards; 0 to 9 where there are ten positions.
    Digits,
    /// A, B, C, …; after Z comes AA.
    Letters,
    /// The maker's words, one a position.
    Words(Vec<String>),
    /// Names of small pictures, one a position (see the drawing crate for those it can draw).
    Pictures(Vec<String>),
}

/// A disc with its slots.
#[derive(Debug, Clone, PartialEq)]
pub struct Disc {
    /// Rim radius in mm.
    pub radius: f64,
    /// Thickness in mm.
    pub thickness: f64,
    /// Clear distance from the plate's underside down to its upper face, such as a washer, mm.
    pub below: f64,
    /// The true slot and any others.
    pub slots: Vec<Slot>,
}

/// A slot cut into the rim, with parallel walls and a round floor.
#[derive(Debug, Clone, PartialEq)]
pub struct Slot {
    /// Index steps clockwise from the true slot; 0 for the true one.
    pub mark: i64,
    /// Between the walls, mm.
    pub width: f64,
    /// From the rim circle to the deepest point of the floor, mm.
    pub depth: f64,
    /// The 45° chamfer on both mouth corners, measured down the wall from where it meets the rim
    /// circle, mm; 0 for none.
    pub lead_in: f64,
}

/// A pin on the slider.
#[derive(Debug, Clone, PartialEq)]
pub struct Pin {
    /// Shift along x from the dial's centre line, mm.
    pub offset: f64,
    /// Diameter, mm.
    pub diameter: f64,
    /// Clear distance from pin to rim when the slider is forward, mm.
    pub gap: f64,
    /// Its length along the dial's axis, mm. Its upper end is level with the slider's upper face.
    pub height: f64,
    /// How much of that stands free of the finger that holds it, mm; the push is taken to come at
    /// the free end.
    pub free: f64,
    /// What it is and how it was made.
    pub make: PinMake,
}

/// What a pin is and how it was made: it decides what it bears where it leaves its finger.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum PinMake {
    /// A steel rod set into its finger.
    #[default]
    Steel,
    /// A hardwood dowel glued into its finger.
    Dowel,
    /// Printed lying down: the layers run along it.
    PrintedLying,
    /// Printed standing up: its root is a layer plane, the weakest there is in a print.
    PrintedStanding,
}

/// A regular post in a star-shaped recess: the disc goes on in any of `positions` ways.
#[derive(Debug, Clone, PartialEq)]
pub struct Key {
    /// Flats of the post.
    pub sides: u32,
    /// From the middle of the post to a flat, mm.
    pub apothem: f64,
    /// The most clearance there is at each flat, mm.
    pub clearance: f64,
}

/// The hole for the dial's shaft.
#[derive(Debug, Clone, PartialEq)]
pub struct Bore {
    /// Diameter of the hole, mm.
    pub diameter: f64,
    /// How far the shaft can shift in it to any side, mm.
    pub shaft_play: f64,
}

/// What the hand turns.
#[derive(Debug, Clone, PartialEq)]
pub struct Knob {
    /// Diameter, mm.
    pub diameter: f64,
    /// Height above the plate, mm.
    pub height: f64,
}

impl Labels {
    /// The label of `mark` on a dial of `positions` marks.
    ///
    /// A mark for which the maker gave no word shows its number, so that nothing is ever blank.
    pub fn label(&self, mark: u32, positions: u32) -> String {
        let number = if positions == 10 { mark } else { mark + 1 };
        match self {
            Self::Digits => number.to_string(),
            Self::Letters => letters(mark),
            Self::Words(words) | Self::Pictures(words) => words
                .get(mark as usize)
                .filter(|word| !word.trim().is_empty())
                .cloned()
                .unwrap_or_else(|| number.to_string()),
        }
    }
}

/// A, B, …, Z, AA, AB, …
fn letters(mark: u32) -> String {
    let mut rest = mark;
    let mut text = Vec::new();
    loop {
        text.push(b'A' + u8::try_from(rest % 26).unwrap_or(0));
        if rest < 26 {
            break;
        }
        rest = rest / 26 - 1;
    }
    text.reverse();
    String::from_utf8(text).unwrap_or_default()
}

impl Dial {
    /// The label of `mark`.
    pub fn label(&self, mark: u32) -> String {
        self.labels.label(mark, self.positions)
    }

    /// Degrees from one mark to the next.
    pub fn step_deg(&self) -> f64 {
        360.0 / f64::from(self.positions.max(1))
    }

    /// Place of the pin on the slider when it is forward, (x, y) in mm.
    pub fn pin_at(&self) -> (f64, f64) {
        let (x, y) = self.centre;
        (x + self.pin.offset, y - self.pin_below())
    }

    /// How far the pin's middle is below the dial's centre when the slider is forward, mm.
    pub fn pin_below(&self) -> f64 {
        self.disc.radius + self.pin.gap + self.pin.diameter / 2.0
    }
}

impl Default for Dial {
    fn default() -> Self {
        Self {
            centre: (0.0, 106.0),
            positions: 8,
            labels: Labels::Digits,
            disc: Disc::default(),
            pin: Pin::default(),
            key: Key::default(),
            bore: Bore::default(),
            knob: Knob::default(),
        }
    }
}

impl Default for Disc {
    fn default() -> Self {
        Self {
            radius: 19.0,
            thickness: 6.0,
            below: 0.8,
            slots: vec![Slot::default()],
        }
    }
}

impl Default for Slot {
    fn default() -> Self {
        Self {
            mark: 0,
            width: 10.0,
            depth: 11.5,
            lead_in: 1.0,
        }
    }
}

impl Default for Pin {
    fn default() -> Self {
        Self {
            offset: 0.0,
            diameter: 4.0,
            gap: 3.0,
            height: 13.0,
            free: 7.5,
            make: PinMake::Steel,
        }
    }
}

impl Default for Key {
    fn default() -> Self {
        Self {
            sides: 4,
            apothem: 4.0,
            clearance: 0.15,
        }
    }
}

impl Default for Bore {
    fn default() -> Self {
        Self {
            diameter: 14.3,
            shaft_play: 0.15,
        }
    }
}

impl Default for Knob {
    fn default() -> Self {
        Self {
            diameter: 36.0,
            height: 14.0,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_positions_count_from_nought() {
        assert_eq!(Labels::Digits.label(0, 10), "0");
        assert_eq!(Labels::Digits.label(0, 8), "1");
    }

    #[test]
    fn letters_go_on_after_z() {
        assert_eq!(Labels::Letters.label(25, 360), "Z");
        assert_eq!(Labels::Letters.label(26, 360), "AA");
        assert_eq!(Labels::Letters.label(359, 360), "MV");
    }

    #[test]
    fn a_missing_word_shows_its_number() {
        let words = Labels::Words(vec!["oak".into(), String::new()]);
        assert_eq!(words.label(0, 3), "oak");
        assert_eq!(words.label(1, 3), "2");
        assert_eq!(words.label(2, 3), "3");
    }
}
