//! Addresses of the sizes of a design: one line a size says where it stands.

mod tables;

use crate::Unit;
use crate::{Design, LidKind, Slot};

pub use tables::{
    AirSize, BenchSize, BoardSize, BodySize, DialSize, HoleSize, LatchSize, SlotSize, WoodSize,
};

/// The address of one number of a design. Dials and slots count from 0 here and from 1 in words.
/// So do bits, boards, readings and woods.
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
    /// Of the box under the lid.
    Body(BodySize),
    /// What the sides of a lid keep that is cut off as a band.
    Band,
    /// Of what the maker has.
    Bench(BenchSize),
    /// How many coats go on one face.
    Coats,
    /// The parts of an inch that a rule shows.
    Fraction,
    /// Diameter of the bit of this number.
    Bit(usize),
    /// Of the boards of this number.
    Board(usize, BoardSize),
    /// How many boards of this number there are.
    BoardCount(usize),
    /// Of the reading of this number.
    Hole(usize, HoleSize),
    /// Of the maker's own wood of this number.
    Wood(usize, WoodSize),
    /// Of the year's air.
    Air(AirSize),
    /// The age of the youngest who will live with the box, in years.
    Youngest,
}

impl Size {
    /// Every size of the latch and of the work on it that `design` has, in a fixed order: what a change
    /// can mend.
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

    /// Every other number that `design` has, in a fixed order: of the box, of what the maker has, of
    /// woods and air. They are as they are, and no remedy moves them.
    pub fn beside(design: &Design) -> Vec<Self> {
        let bench = &design.bench;
        let mut all: Vec<Self> = BodySize::ALL.iter().copied().map(Self::Body).collect();
        if matches!(design.body.lid, LidKind::Band { .. }) {
            all.push(Self::Band);
        }
        all.extend(BenchSize::ALL.iter().copied().map(Self::Bench));
        all.extend([Self::Coats, Self::Fraction]);
        all.extend((0..bench.bits.len()).map(Self::Bit));
        for board in 0..bench.boards.len() {
            all.extend(BoardSize::ALL.iter().map(|size| Self::Board(board, *size)));
            all.push(Self::BoardCount(board));
        }
        for hole in 0..bench.printer.holes.len() {
            all.extend(HoleSize::ALL.iter().map(|size| Self::Hole(hole, *size)));
        }
        for wood in 0..design.own_woods.len() {
            all.extend(WoodSize::ALL.iter().map(|size| Self::Wood(wood, *size)));
        }
        all.extend(AirSize::ALL.iter().copied().map(Self::Air));
        all.push(Self::Youngest);
        all
    }

    /// What it is in `design`, in its [`Self::unit`]; `None` where there is no such dial, slot or
    /// other thing.
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
            _ => self.get_beside(design),
        }
    }

    fn get_beside(self, design: &Design) -> Option<f64> {
        let bench = &design.bench;
        match self {
            Self::Body(size) => Some(size.get(&design.body)),
            Self::Band => match design.body.lid {
                LidKind::Band { height } => Some(height),
                LidKind::Plate => None,
            },
            Self::Bench(size) => Some(size.get(bench)),
            Self::Coats => Some(f64::from(bench.coats)),
            Self::Fraction => Some(f64::from(bench.fraction)),
            Self::Bit(number) => bench.bits.get(number).copied(),
            Self::Board(number, size) => bench.boards.get(number).map(|board| size.get(board)),
            Self::BoardCount(number) => bench.boards.get(number).map(|board| board.count.into()),
            Self::Hole(number, size) => bench.printer.holes.get(number).map(|hole| size.get(hole)),
            Self::Wood(number, size) => design.own_woods.get(number).map(|wood| size.get(wood)),
            Self::Air(size) => Some(size.get(&design.season)),
            Self::Youngest => Some(f64::from(design.card.youngest)),
            _ => None,
        }
    }

    /// Gives it another value; false, and nothing changed, where there is no such dial, slot or other
    /// thing, or `value` is no number, or no whole one from 0 where one is counted.
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
            _ => return self.put_beside(design, value),
        }
        Some(())
    }

    fn put_beside(self, design: &mut Design, value: f64) -> Option<()> {
        let bench = &mut design.bench;
        match self {
            Self::Body(size) => *size.place(&mut design.body) = value,
            Self::Band => match &mut design.body.lid {
                LidKind::Band { height } => *height = value,
                LidKind::Plate => return None,
            },
            Self::Bench(size) => *size.place(bench) = value,
            Self::Coats => bench.coats = whole(value)?,
            Self::Fraction => bench.fraction = whole(value)?,
            Self::Bit(number) => *bench.bits.get_mut(number)? = value,
            Self::Board(number, size) => *size.place(bench.boards.get_mut(number)?) = value,
            Self::BoardCount(number) => bench.boards.get_mut(number)?.count = whole(value)?,
            Self::Hole(number, size) => {
                *size.place(bench.printer.holes.get_mut(number)?) = value;
            }
            Self::Wood(number, size) => *size.place(design.own_woods.get_mut(number)?) = value,
            Self::Air(size) => *size.place(&mut design.season) = value,
            Self::Youngest => design.card.youngest = whole(value)?,
            _ => return None,
        }
        Some(())
    }

    /// In what it is measured; a plain ratio also for what no check measures: temperature, humidity,
    /// density and movement of a wood.
    pub fn unit(self) -> Unit {
        match self {
            Self::Latch(LatchSize::Reading) => Unit::Degree,
            Self::Latch(LatchSize::Pull) => Unit::Newton,
            Self::Latch(LatchSize::Friction)
            | Self::Bench(BenchSize::Density)
            | Self::Wood(..)
            | Self::Air(_) => Unit::Ratio,
            Self::Latch(_)
            | Self::Dial(..)
            | Self::Slot(..)
            | Self::Body(_)
            | Self::Band
            | Self::Bench(_)
            | Self::Bit(_)
            | Self::Board(..)
            | Self::Hole(..) => Unit::Millimetre,
            Self::Positions(_)
            | Self::KeySides(_)
            | Self::Digit(_)
            | Self::SlotMark(..)
            | Self::Coats
            | Self::Fraction
            | Self::BoardCount(_)
            | Self::Youngest => Unit::Count,
        }
    }

    /// The dial it belongs to, from 0.
    pub fn dial(self) -> Option<usize> {
        match self {
            Self::Dial(dial, _)
            | Self::Slot(dial, _, _)
            | Self::Positions(dial)
            | Self::KeySides(dial)
            | Self::Digit(dial)
            | Self::SlotMark(dial, _) => Some(dial),
            _ => None,
        }
    }

    /// Whether it is a size of a part, and not the maker's workmanship, what lies ready, the air, nor
    /// what the latch must bear.
    pub fn is_built(self) -> bool {
        !matches!(
            self,
            Self::Bench(_)
                | Self::Coats
                | Self::Fraction
                | Self::Bit(_)
                | Self::Board(..)
                | Self::BoardCount(_)
                | Self::Hole(..)
                | Self::Wood(..)
                | Self::Air(_)
                | Self::Youngest
                | Self::Latch(
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
        matches!(
            self,
            Self::Latch(
                LatchSize::GuideX
                    | LatchSize::GuideY
                    | LatchSize::PullAt
                    | LatchSize::TabAt
                    | LatchSize::KeeperEdge
            ) | Self::Dial(
                _,
                DialSize::CentreX | DialSize::CentreY | DialSize::PinOffset
            )
        )
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
