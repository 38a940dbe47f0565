//! Templates at true size: one drawing a wooden part, to be glued on and worked to.
//!
//! Each stands in its part's own frame: mm, x to the right, y up as it is seen, the lower left corner
//! of the finished part at the origin. The middle of a line is the finished edge; no line is wider
//! than 0.2 mm. What is worked from the other face is dashed, what is cut away is hatched.

mod aim;
mod keeper;
mod place;
mod plate;
mod ring;
mod sheet;
mod side;
mod signs;
mod slider;

use latchwright_drawing::{Drawing, FlatPart, Shape};
use latchwright_geometry::Point;
use latchwright_model::{Design, Material};

use crate::holes::{Holes, WoodPart, holes};
use crate::joinery::joinery;

/// Which face of the part lies up under its template.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Face {
    /// The face that is seen on the finished box.
    Outside,
    /// The face that is turned to the room in the box.
    Inside,
    /// The upper face of a part that lies inside.
    Upper,
}

/// One part at true size.
#[derive(Debug, Clone, PartialEq)]
pub struct Template {
    /// Stable name, such as `plate from outside`.
    pub name: String,
    /// The part.
    pub part: WoodPart,
    /// The face that lies up.
    pub face: Face,
    /// Whether it is the mirror image, to be glued on the other face or ironed on.
    pub mirrored: bool,
    /// Size of the finished part along x and y, mm.
    pub size: (f64, f64),
    /// The drawing, 1 mm for 1 mm, words included.
    pub drawing: Drawing,
    /// The same part without words about the work, to be cut by a machine.
    pub flat: FlatPart,
    /// Name and place of every centre to be pricked.
    pub centres: Vec<(String, Point)>,
}

/// All templates of a design.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Templates {
    /// One a part and face, in the order in which they are worked, then a ring a dial.
    pub all: Vec<Template>,
    /// What was left out or cannot be as it should, one sentence each without a trailing stop.
    pub notes: Vec<String>,
}

impl Face {
    /// What the sheet says about it.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Outside => "outside face up",
            Self::Inside => "inside face up",
            Self::Upper => "upper face up",
        }
    }
}

impl Face {
    /// What a mirrored sheet says about it: the face that was drawn, which does not lie up any more.
    pub const fn mirrored_words(self) -> &'static str {
        match self {
            Self::Outside => "outside face, mirrored",
            Self::Inside => "inside face, mirrored",
            Self::Upper => "upper face, mirrored",
        }
    }

    /// The words of an unmirrored sheet for those of a mirrored one and the other way round; others
    /// stay.
    fn other_words(self, words: &str) -> Option<&'static str> {
        if words == self.words() {
            Some(self.mirrored_words())
        } else if words == self.mirrored_words() {
            Some(self.words())
        } else {
            None
        }
    }
}

impl Template {
    /// The exact mirror image, turned over about the part's upright middle; words stay readable.
    /// It says of itself that it is mirrored. Twice gives the same template again, to the byte.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let width = self.size.0;
        let image = |(name, at): &(String, Point)| (name.clone(), Point::new(width - at.x, at.y));
        let mut drawing = self.drawing.mirrored(width / 2.0);
        for item in &mut drawing.items {
            if let Shape::Text(text) = &mut item.shape
                && let Some(other) = self.face.other_words(&text.text)
            {
                other.clone_into(&mut text.text);
            }
        }
        Self {
            mirrored: !self.mirrored,
            drawing,
            flat: self.flat.mirrored(),
            centres: self.centres.iter().map(image).collect(),
            ..self.clone()
        }
    }
}

/// The templates of all wooden parts of `design`.
///
/// A part without a size is left out and named in the notes, as is a hole ([`holes`]).
pub fn templates(design: &Design) -> Templates {
    let Holes {
        holes,
        slots,
        notes,
    } = holes(design);
    let bored = Bored {
        holes: &holes,
        slots: &slots,
    };
    let joinery = joinery(design);
    let mut found = Templates {
        all: Vec::new(),
        notes,
    };
    found.take("plate", plate::template(design, bored, Face::Outside));
    found.take("plate", plate::template(design, bored, Face::Inside));
    if !matches!(design.slider.material, Material::Printed) {
        found.take("slider", slider::template(design, bored));
    }
    found.take("keeper", keeper::template(design, bored));
    for part in [
        WoodPart::Front,
        WoodPart::Back,
        WoodPart::Left,
        WoodPart::Right,
    ] {
        found.take(part.name(), side::template(design, &joinery, bored, part));
    }
    found.all.extend(ring::templates(design, bored));
    found
}

impl Templates {
    fn take(&mut self, name: &str, template: Option<Template>) {
        let note = format!("the {name} has no template: a size is no number from 0.001 mm to 10 m");
        match template {
            Some(template) => self.all.push(template),
            None if self.notes.contains(&note) => {}
            None => self.notes.push(note),
        }
    }
}

/// What is bored, for the parts to pick theirs from.
#[derive(Clone, Copy)]
struct Bored<'a> {
    holes: &'a [crate::holes::Hole],
    slots: &'a [crate::holes::Slot],
}
