//! Addresses of the sizes of a design: one line a size says where it stands and what a maker
//! calls it.

use super::words::listed;
use crate::model::{Design, Dial, Slot};
use crate::proof::Unit;

/// The words for making a size larger and smaller.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Verb {
    Increase,
    Widen,
    Lengthen,
    /// A place across the lid, x.
    Across,
    /// A place from the front edge to the hinge, y.
    Back,
}

/// An enum of sizes that stand in one struct, with where each stands and how it is called.
macro_rules! sizes {
    (
        $(#[$about:meta])* $name:ident in $of:ident:
        $($(#[$doc:meta])* $size:ident, $noun:literal, $verb:ident, $($field:tt).+;)+
    ) => {
        $(#[$about])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum $name {
            $($(#[$doc])* $size),+
        }

        impl $name {
            /// All of them, in the order in which a maker meets them.
            pub const ALL: &'static [Self] = &[$(Self::$size),+];

            fn get(self, of: &$of) -> f64 {
                match self {
                    $(Self::$size => of.$($field).+),+
                }
            }

            fn place(self, of: &mut $of) -> &mut f64 {
                match self {
                    $(Self::$size => &mut of.$($field).+),+
                }
            }

            fn words(self) -> (&'static str, Verb) {
                match self {
                    $(Self::$size => ($noun, Verb::$verb)),+
                }
            }
        }
    };
}

sizes!(
    /// A size of the latch as a whole, or of the maker's workmanship; mm unless it says otherwise.
    LatchSize in Design:
    /// Plate along x.
    PlateWidth, "plate width", Increase, plate.width;
    /// Plate along y.
    PlateDepth, "plate depth", Increase, plate.depth;
    /// Plate.
    PlateThickness, "plate thickness", Increase, plate.thickness;
    /// Cut into the plate's underside over the keeper.
    Rabbet, "rabbet", Increase, plate.rabbet;
    /// Free height below the plate.
    Room, "room below the plate", Increase, plate.room;
    /// From shut to free.
    Travel, "travel", Lengthen, slider.travel;
    /// Between the two guide points.
    GuideLength, "guide length", Lengthen, slider.guide_length;
    /// Of each guide point to either side.
    GuidePlay, "guide play", Widen, slider.guide_play;
    /// x of the guide's middle.
    GuideX, "guide", Across, slider.guide_at.0;
    /// y of the guide's middle when shut.
    GuideY, "guide", Back, slider.guide_at.1;
    /// x of the finger knob.
    PullAt, "finger knob", Across, slider.pull_at;
    /// Diameter of the finger knob's shank.
    Shank, "finger knob shank", Increase, slider.shank;
    /// Slider.
    SliderThickness, "slider thickness", Increase, slider.thickness;
    /// From the plate's underside down to the slider.
    SliderBelow, "clearance of the slider below the plate", Increase, slider.below;
    /// Hardest pull that must be borne, N.
    Pull, "hardest pull", Increase, slider.pull;
    /// Coefficient of friction in the guide.
    Friction, "friction in the guide", Increase, slider.friction;
    /// x of the tab's middle.
    TabAt, "tab", Across, tab.at;
    /// Tab along x; also the slider's neck in its guide.
    TabWidth, "tab width", Increase, tab.width;
    /// Overlap of tab and keeper when shut.
    Engagement, "engagement", Lengthen, tab.engagement;
    /// The least overlap that still counts as held.
    RequiredHold, "required hold", Increase, tab.required_hold;
    /// y of the edge that the tab has to clear.
    KeeperEdge, "keeper edge", Back, keeper.edge;
    /// Keeper along x.
    KeeperWidth, "keeper width", Increase, keeper.width;
    /// Keeper along y.
    KeeperDepth, "keeper depth", Increase, keeper.depth;
    /// Keeper.
    KeeperThickness, "keeper thickness", Increase, keeper.thickness;
    /// Room in the box along x.
    InsideWidth, "inside width", Increase, inside.width;
    /// Room in the box along y.
    InsideDepth, "inside depth", Increase, inside.depth;
    /// Room in the box from its floor to the lid.
    InsideHeight, "inside height", Increase, inside.height;
    /// ± on each axis of a pin.
    PinPlace, "error of a pin's place", Increase, workmanship.pin_place;
    /// ± on each axis of a bore.
    BorePlace, "error of a bore's place", Increase, workmanship.bore_place;
    /// ± along y of the keeper's edge.
    KeeperPlace, "error of the keeper's place", Increase, workmanship.keeper_place;
    /// ± on a thickness or height.
    Thickness, "error of a thickness", Increase, workmanship.thickness;
    /// ± on a printed width or diameter.
    Print, "error of the print", Increase, workmanship.print;
    /// Coats on one face.
    Film, "coat thickness", Increase, workmanship.film;
    /// ± on the coats of one face.
    FilmSpread, "spread of the coats", Increase, workmanship.film_spread;
    /// How far off its mark a pointer may stand, ± degrees.
    Reading, "reading error", Increase, workmanship.reading;
);

sizes!(
    /// A size of one dial with disc, pin, key, bore and knob, mm.
    DialSize in Dial:
    /// x of the shaft.
    CentreX, "centre", Across, centre.0;
    /// y of the shaft.
    CentreY, "centre", Back, centre.1;
    /// Rim of the disc.
    DiscRadius, "disc radius", Increase, disc.radius;
    /// Disc.
    DiscThickness, "disc thickness", Increase, disc.thickness;
    /// From the plate's underside down to the disc.
    DiscBelow, "clearance below the plate of the disc", Increase, disc.below;
    /// Pin.
    PinDiameter, "pin diameter", Increase, pin.diameter;
    /// x of the pin from the dial's centre line.
    PinOffset, "pin", Across, pin.offset;
    /// Clear distance from pin to rim when shut.
    Gap, "gap", Widen, pin.gap;
    /// Pin along the dial's axis.
    PinHeight, "pin length", Lengthen, pin.height;
    /// Of the pin, out of its finger.
    PinFree, "free length of the pin", Lengthen, pin.free;
    /// From the middle of the post to a flat.
    Apothem, "key apothem", Increase, key.apothem;
    /// Most clearance at a flat.
    Clearance, "key clearance", Widen, key.clearance;
    /// Hole in the plate.
    BoreDiameter, "bore diameter", Increase, bore.diameter;
    /// How far the shaft can shift to any side.
    ShaftPlay, "shaft play", Widen, bore.shaft_play;
    /// Knob.
    KnobDiameter, "knob diameter", Increase, knob.diameter;
    /// Knob above the plate.
    KnobHeight, "knob height", Increase, knob.height;
);

sizes!(
    /// A size of one slot of a disc, mm.
    SlotSize in Slot:
    /// Between the walls.
    Width, "width", Increase, width;
    /// From the rim circle to the deepest point of the floor.
    Depth, "depth", Increase, depth;
    /// Chamfer on both mouth corners.
    LeadIn, "lead-in", Lengthen, lead_in;
);

/// The address of one number of a design. Dials and slots count from 0 here and from 1 in words.
///
/// The air of the season is no size: nobody builds it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Size {
    /// Of the latch as a whole.
    Latch(LatchSize),
    /// Of this dial.
    Dial(usize, DialSize),
    /// Of this dial's slot of this number.
    Slot(usize, usize, SlotSize),
    /// How many marks this dial has.
    Positions(usize),
    /// How many flats this dial's post has.
    KeySides(usize),
    /// The mark of this dial in the combination, from 0.
    Digit(usize),
    /// The mark of this dial's slot of this number, in index steps from the true slot.
    SlotMark(usize, usize),
}

impl Size {
    /// Every size that `design` has, in a fixed order.
    pub fn all(design: &Design) -> Vec<Self> {
        let mut all: Vec<Self> = LatchSize::ALL.iter().copied().map(Self::Latch).collect();
        for (number, dial) in design.dials.iter().enumerate() {
            all.extend(DialSize::ALL.iter().map(|size| Self::Dial(number, *size)));
            all.extend([Self::Positions(number), Self::KeySides(number)]);
            if number < design.combination.len() {
                all.push(Self::Digit(number));
            }
            for slot in 0..dial.disc.slots.len() {
                let sizes = SlotSize::ALL.iter();
                all.extend(sizes.map(|size| Self::Slot(number, slot, *size)));
                all.push(Self::SlotMark(number, slot));
            }
        }
        all
    }

    /// What it is in `design`, in its [`Self::unit`]; `None` where there is no such dial or slot.
    pub fn get(self, design: &Design) -> Option<f64> {
        let dial = |number: usize| design.dials.get(number);
        let slot = |number, slot: usize| dial(number)?.disc.slots.get(slot);
        match self {
            Self::Latch(size) => Some(size.get(design)),
            Self::Dial(number, size) => dial(number).map(|dial| size.get(dial)),
            Self::Slot(number, which, size) => slot(number, which).map(|slot| size.get(slot)),
            Self::Positions(number) => dial(number).map(|dial| f64::from(dial.positions)),
            Self::KeySides(number) => dial(number).map(|dial| f64::from(dial.key.sides)),
            Self::Digit(number) => design.combination.get(number).copied().map(f64::from),
            Self::SlotMark(number, which) => slot(number, which).map(|slot| slot.mark as f64),
        }
    }

    /// Gives it another value; false, and nothing changed, where there is no such dial or slot, or
    /// `value` is no number, or no whole one from 0 where one is counted.
    pub fn set(self, design: &mut Design, value: f64) -> bool {
        self.put(design, value).is_some()
    }

    fn put(self, design: &mut Design, value: f64) -> Option<()> {
        if !value.is_finite() {
            return None;
        }
        match self {
            Self::Latch(size) => *size.place(design) = value,
            Self::Dial(number, size) => *size.place(design.dials.get_mut(number)?) = value,
            Self::Slot(number, slot, size) => {
                *size.place(slot_mut(design, number, slot)?) = value;
            }
            Self::Positions(number) => design.dials.get_mut(number)?.positions = whole(value)?,
            Self::KeySides(number) => design.dials.get_mut(number)?.key.sides = whole(value)?,
            Self::Digit(number) => *design.combination.get_mut(number)? = whole(value)?,
            Self::SlotMark(number, slot) => {
                slot_mut(design, number, slot)?.mark = i64::from(whole(value)?);
            }
        }
        Some(())
    }

    /// In what it is measured.
    pub fn unit(self) -> Unit {
        match self {
            Self::Latch(LatchSize::Reading) => Unit::Degree,
            Self::Latch(LatchSize::Pull) => Unit::Newton,
            Self::Latch(LatchSize::Friction) => Unit::Ratio,
            Self::Latch(_) | Self::Dial(..) | Self::Slot(..) => Unit::Millimetre,
            Self::Positions(_) | Self::KeySides(_) | Self::Digit(_) | Self::SlotMark(..) => {
                Unit::Count
            }
        }
    }

    /// The dial it belongs to, from 0.
    pub fn dial(self) -> Option<usize> {
        match self {
            Self::Latch(_) => None,
            Self::Dial(dial, _)
            | Self::Slot(dial, _, _)
            | Self::Positions(dial)
            | Self::KeySides(dial)
            | Self::Digit(dial)
            | Self::SlotMark(dial, _) => Some(dial),
        }
    }

    /// Whether it is a size of a part, and not the maker's workmanship nor what the latch must bear.
    pub fn is_built(self) -> bool {
        !matches!(
            self,
            Self::Latch(
                LatchSize::PinPlace
                    | LatchSize::BorePlace
                    | LatchSize::KeeperPlace
                    | LatchSize::Print
                    | LatchSize::Film
                    | LatchSize::FilmSpread
                    | LatchSize::Reading
                    | LatchSize::Pull
                    | LatchSize::Friction
                    | LatchSize::Thickness
            )
        )
    }

    /// Whether it is a place on the lid, so that it may be negative and 0 is nothing special.
    pub fn is_place(self) -> bool {
        matches!(self.words().1, Verb::Across | Verb::Back)
    }

    /// Whether both are the same size, if need be of two dials.
    pub fn alike(self, other: Self) -> bool {
        match (self, other) {
            (Self::Dial(_, one), Self::Dial(_, other)) => one == other,
            (Self::Slot(_, at, one), Self::Slot(_, there, other)) => (at, one) == (there, other),
            (Self::SlotMark(_, at), Self::SlotMark(_, there)) => at == there,
            (Self::Positions(_), Self::Positions(_))
            | (Self::KeySides(_), Self::KeySides(_))
            | (Self::Digit(_), Self::Digit(_)) => true,
            _ => self == other,
        }
    }

    /// In plain words: "the gap of dial 1", "the x of the tab".
    pub fn name(self) -> String {
        let thing = self.thing(self.dial().as_slice());
        match self.words().1 {
            Verb::Across => format!("the x of {thing}"),
            Verb::Back => format!("the y of {thing}"),
            Verb::Increase | Verb::Widen | Verb::Lengthen => thing,
        }
    }

    /// What a maker does who makes it larger, or smaller, on `dials`: "widen the gap of dial 1".
    pub(super) fn deed(self, dials: &[usize], larger: bool) -> String {
        let thing = self.thing(dials);
        if matches!(self, Self::Digit(_)) {
            return format!("choose another mark for {thing}");
        }
        match (self.words().1, larger) {
            (Verb::Increase, true) => format!("increase {thing}"),
            (Verb::Increase, false) => format!("reduce {thing}"),
            (Verb::Widen, true) => format!("widen {thing}"),
            (Verb::Widen, false) => format!("narrow {thing}"),
            (Verb::Lengthen, true) => format!("lengthen {thing}"),
            (Verb::Lengthen, false) => format!("shorten {thing}"),
            (Verb::Across, true) => format!("move {thing} to the right"),
            (Verb::Across, false) => format!("move {thing} to the left"),
            (Verb::Back, true) => format!("move {thing} towards the hinge"),
            (Verb::Back, false) => format!("move {thing} towards the front edge"),
        }
    }

    /// "the gap of dials 1 and 2".
    fn thing(self, dials: &[usize]) -> String {
        let (noun, _) = self.words();
        let numbers: Vec<String> = dials.iter().map(|dial| (dial + 1).to_string()).collect();
        let of_dials = match numbers.as_slice() {
            [] => String::new(),
            [one] => format!(" of dial {one}"),
            many => format!(" of dials {}", listed(many)),
        };
        match self {
            Self::Slot(_, slot, _) | Self::SlotMark(_, slot) => {
                format!("the {noun} of slot {}{of_dials}", slot + 1)
            }
            _ => format!("the {noun}{of_dials}"),
        }
    }

    fn words(self) -> (&'static str, Verb) {
        match self {
            Self::Latch(size) => size.words(),
            Self::Dial(_, size) => size.words(),
            Self::Slot(_, _, size) => size.words(),
            Self::Positions(_) => ("number of positions", Verb::Increase),
            Self::KeySides(_) => ("number of key sides", Verb::Increase),
            Self::Digit(_) => ("combination", Verb::Increase),
            Self::SlotMark(..) => ("mark", Verb::Increase),
        }
    }
}

fn slot_mut(design: &mut Design, dial: usize, slot: usize) -> Option<&mut Slot> {
    design.dials.get_mut(dial)?.disc.slots.get_mut(slot)
}

/// A count as it is stored; `None` for anything but a whole number from 0.
fn whole(value: f64) -> Option<u32> {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "the next line finds out"
    )]
    let count = value as u32;
    (f64::from(count) == value).then_some(count)
}
