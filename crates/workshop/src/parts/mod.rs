//! Every part of the job: what is cut, what is printed and what is bought, with sizes and notes.

mod note;
mod other;
mod wood;

use latchwright_model::{Design, Material};

use crate::joinery::{SidePlace, joinery};
use latchwright_model::shown;

pub use note::PartNote;
pub(crate) use other::{alike, which};

/// Where a part comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Make {
    /// Cut from a board or a sheet.
    Wood,
    /// Printed.
    Printed,
    /// Bought as it is.
    Bought,
}

/// Which part it is. Dials count from 0 here and from 1 in words; those that are alike share a part.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// One of the four sides.
    Side(SidePlace),
    /// The floor.
    Floor,
    /// The top of the lid.
    Plate,
    /// Crossbar, fingers, neck and tab.
    Slider,
    /// What holds the tab down.
    Keeper,
    /// A strip beside the slider's neck.
    GuideStrip,
    /// What carries the slider from below.
    GuideBridge,
    /// The knob of each of these dials.
    Knob(Vec<usize>),
    /// The disc of each of these dials.
    Disc(Vec<usize>),
    /// What the hand pulls.
    FingerKnob,
    /// The pin of each of these dials.
    Pin(Vec<usize>),
    /// A hinge.
    Hinge,
    /// The washer between plate and disc of each of these dials.
    Washer(Vec<usize>),
    /// A screw.
    Screw(ScrewUse),
}

/// What a screw holds. Dials count from 0 here and from 1 in words.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ScrewUse {
    /// The keeper on the front.
    Keeper,
    /// Bridge and strip on the plate.
    Guide,
    /// The finger knob in the slider, from below.
    FingerKnob,
    /// The disc and the knob of each of these dials.
    Disc(Vec<usize>),
    /// A hinge's leaf in the lid.
    HingeInLid,
    /// A hinge's leaf in the back.
    HingeInBack,
}

/// What the three numbers of a size are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Form {
    /// Length, width and thickness.
    Block,
    /// Length and diameter.
    Rod,
    /// Outer diameter, diameter of the hole, thickness.
    Washer,
    /// Diameter of the grip, its height, and the length of the shank below it.
    Grip,
    /// A No. 4 screw: its length.
    Screw,
}

impl Role {
    /// Which side of the box it is.
    pub const fn side(&self) -> Option<SidePlace> {
        match self {
            Self::Side(side) => Some(*side),
            _ => None,
        }
    }

    /// What people call it.
    pub fn name(&self) -> String {
        match self {
            Self::Side(side) => side.name().to_owned(),
            Self::Floor => "floor".to_owned(),
            Self::Plate => "plate".to_owned(),
            Self::Slider => "slider".to_owned(),
            Self::Keeper => "keeper".to_owned(),
            Self::GuideStrip => "guide strip".to_owned(),
            Self::GuideBridge => "guide bridge".to_owned(),
            Self::Knob(dials) => format!("knob with star, {}", which(dials)),
            Self::Disc(dials) => format!("disc with shaft and post, {}", which(dials)),
            Self::FingerKnob => "finger knob".to_owned(),
            Self::Pin(dials) => format!("pin, {}", which(dials)),
            Self::Hinge => "butt hinge".to_owned(),
            Self::Washer(dials) => format!("washer, {}", which(dials)),
            Self::Screw(held) => held.name(),
        }
    }
}

impl ScrewUse {
    /// What people call it.
    pub fn name(&self) -> String {
        match self {
            Self::Keeper => "screw for the keeper".to_owned(),
            Self::Guide => "screw through bridge and strip into the plate".to_owned(),
            Self::FingerKnob => "screw for the finger knob, from below".to_owned(),
            Self::Disc(dials) => format!(
                "screw through disc and post into the knob, {}",
                which(dials)
            ),
            Self::HingeInLid => "hinge screw, lid".to_owned(),
            Self::HingeInBack => "hinge screw, back".to_owned(),
        }
    }
}

/// Size of a part, mm. For wood the length runs along the grain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// Along the grain, or the longest way.
    pub length: f64,
    /// Across.
    pub width: f64,
    /// Through.
    pub thickness: f64,
}

impl Size {
    const fn of(length: f64, width: f64, thickness: f64) -> Self {
        Self {
            length,
            width,
            thickness,
        }
    }
}

/// One line of the list.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// Which part it is.
    pub role: Role,
    /// Where it comes from.
    pub make: Make,
    /// How many.
    pub count: u32,
    /// What the numbers of its size are.
    pub form: Form,
    /// With its coats on.
    pub finished: Size,
    /// As it leaves the plane, coats taken off; for wood only.
    pub bare: Option<Size>,
    /// As it is sawn out first; for wood only.
    pub rough: Option<Size>,
    /// Species, kind of sheet, or what it is bought as.
    pub material: String,
    /// Whether it is of solid wood, whose fibres run along its length.
    pub solid: bool,
    /// What else matters.
    pub notes: Vec<PartNote>,
}

/// Every part of `design`: wood first in the order of work, then printed, then bought parts.
pub fn parts(design: &Design) -> Vec<Part> {
    let design = &shown(design);
    let list = Lister {
        design,
        film: design.workmanship.film.max(0.0),
    };
    let joinery = joinery(design);
    let mut all: Vec<Part> = joinery
        .sides
        .iter()
        .map(|side| list.side(&joinery, side))
        .collect();
    all.push(list.floor(&joinery.floor));
    all.push(list.plate(&joinery));
    all.push(list.slider());
    all.push(list.keeper());
    all.extend(list.guide());
    all.extend(list.dials());
    all.extend(list.washers());
    all.push(list.finger_knob());
    all.extend(list.pins());
    all.extend(list.bought(&joinery));
    // In order of making, and stable: wood, printed, bought.
    all.sort_by_key(|part| part.make);
    all
}

struct Lister<'a> {
    design: &'a Design,
    film: f64,
}

impl Lister<'_> {
    /// A part of wood or sheet with its three sizes.
    fn wood(&self, role: Role, finished: Size, material: &Material) -> Part {
        let coats = 2.0 * self.film;
        let bare = Size {
            length: finished.length - coats,
            width: finished.width - coats,
            thickness: finished.thickness - coats,
        };
        self.cut(role, finished, bare, material)
    }

    /// A part of wood or sheet that gets no coat anywhere.
    fn uncoated(&self, role: Role, size: Size, material: &Material) -> Part {
        self.cut(role, size, size, material)
    }

    fn cut(&self, role: Role, finished: Size, bare: Size, material: &Material) -> Part {
        let rough = self.design.bench.rough.max(0.0);
        Part {
            role,
            make: if matches!(material, Material::Printed) {
                Make::Printed
            } else {
                Make::Wood
            },
            count: 1,
            form: Form::Block,
            finished,
            bare: Some(bare),
            rough: Some(Size {
                length: bare.length + rough,
                width: bare.width + rough,
                ..bare
            }),
            material: material_name(material),
            solid: matches!(material, Material::Wood { .. }),
            notes: Vec::new(),
        }
    }

    fn other(role: Role, make: Make, count: u32, size: Size, material: &str) -> Part {
        Part {
            role,
            make,
            count,
            form: Form::Block,
            finished: size,
            bare: None,
            rough: None,
            material: material.to_owned(),
            solid: false,
            notes: Vec::new(),
        }
    }
}

/// Name of a material as boards and lists call it.
fn material_name(material: &Material) -> String {
    match material {
        Material::Wood { species, .. } => species.clone(),
        Material::Plywood => "plywood".to_owned(),
        Material::Hardboard => "hardboard".to_owned(),
        Material::Mdf => "mdf".to_owned(),
        Material::Printed => "printed".to_owned(),
    }
}

#[cfg(test)]
mod tests;
