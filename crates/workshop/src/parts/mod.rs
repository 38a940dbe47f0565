//! Every part of the job: what is cut, what is printed and what is bought, with sizes and notes.

mod other;
mod wood;

use latchwright_model::{Design, Material};

use crate::inch::Rule;
use crate::joinery::{SidePlace, joinery};
use crate::tame::{material_name, tame};

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

/// Which part of the box a piece of wood is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
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
    /// Printed or bought.
    Other,
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

/// One line of the list.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// What people call it.
    pub name: String,
    /// Where it comes from.
    pub make: Make,
    /// Which part of the box it is.
    pub role: Role,
    /// How many.
    pub count: u32,
    /// With its coats on.
    pub finished: Size,
    /// As it leaves the plane, coats taken off; for wood only.
    pub bare: Option<Size>,
    /// As it is sawn out first; for wood only.
    pub rough: Option<Size>,
    /// Species, kind of sheet, or what it is bought as.
    pub material: String,
    /// Which way the fibres run; for solid wood only.
    pub grain: Option<&'static str>,
    /// What else matters, sentences without a stop.
    pub notes: Vec<String>,
}

/// Every part of `design`: wood first in the order of work, then printed, then bought parts.
pub fn parts(design: &Design) -> Vec<Part> {
    let design = &tame(design);
    let list = Lister {
        design,
        rule: Rule::of(design),
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
    all.push(list.finger_knob());
    all.extend(list.pins());
    all.extend(list.bought(&joinery));
    // In order of making, and stable: wood, printed, bought.
    all.sort_by_key(|part| part.make);
    all
}

struct Lister<'a> {
    design: &'a Design,
    rule: Rule,
    film: f64,
}

impl Lister<'_> {
    /// A part of wood or sheet with its three sizes.
    fn wood(&self, name: &str, role: Role, finished: Size, material: &Material) -> Part {
        let (coats, rough) = (2.0 * self.film, self.design.bench.rough.max(0.0));
        let bare = Size {
            length: finished.length - coats,
            width: finished.width - coats,
            thickness: finished.thickness - coats,
        };
        let solid = matches!(material, Material::Wood { .. });
        Part {
            name: name.to_owned(),
            make: if matches!(material, Material::Printed) {
                Make::Printed
            } else {
                Make::Wood
            },
            role,
            count: 1,
            finished,
            bare: Some(bare),
            rough: Some(Size {
                length: bare.length + rough,
                width: bare.width + rough,
                ..bare
            }),
            material: material_name(material),
            grain: solid.then_some("along its length"),
            notes: Vec::new(),
        }
    }

    fn other(name: String, make: Make, count: u32, size: (f64, f64, f64), material: &str) -> Part {
        Part {
            name,
            make,
            role: Role::Other,
            count,
            finished: Size {
                length: size.0,
                width: size.1,
                thickness: size.2,
            },
            bare: None,
            rough: None,
            material: material.to_owned(),
            grain: None,
            notes: Vec::new(),
        }
    }
}

#[cfg(test)]
mod tests;
