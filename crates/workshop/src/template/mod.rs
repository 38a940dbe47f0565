//! Templates at true size: one drawing a wooden part, to be glued on and worked to.
//!
//! Each stands in its part's own frame: mm, x to the right, y up as it is seen, the lower left corner
//! of the finished part at the origin. The middle of a line is the finished edge; no line is wider
//! than 0.2 mm. What is worked from the other face is dashed, what is cut away is hatched.

mod aim;
pub use aim::step_lines;
mod guide;
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
use latchwright_model::{Design, KeeperMake, Material};

use crate::feature::Centre;
use crate::holes::{Holes, WoodPart, holes};
use crate::joinery::{SidePlace, joinery};
use crate::note::HoleNote;

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

/// Which template. Dials count from 0 here and from 1 in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TemplateKind {
    /// The plate, its outside face up.
    PlateOutside,
    /// The same plate, its inside face up.
    PlateBack,
    /// The slider with its tab.
    Slider,
    /// The keeper.
    Keeper,
    /// A side of the box.
    Side(SidePlace),
    /// The marks round a dial.
    Ring(usize),
}

/// One part at true size.
#[derive(Debug, Clone, PartialEq)]
pub struct Template {
    /// Which one.
    pub kind: TemplateKind,
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
    /// Every centre to be pricked, with its place.
    pub centres: Vec<(Centre, Point)>,
    /// Which item of the drawing says what face lies up; `None` where none does.
    face_item: Option<usize>,
}

/// All templates of a design.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Templates {
    /// One a part and face, in the order in which they are worked, then a ring a dial.
    pub all: Vec<Template>,
    /// What of the holes was left out or cannot be as it should.
    pub notes: Vec<HoleNote>,
    /// Parts without a template, because a size of theirs is no number between
    /// [`crate::LEAST_SIZE`] and [`crate::MOST_SIZE`].
    pub missing: Vec<WoodPart>,
}

impl TemplateKind {
    /// Stable name, such as `plate from outside`.
    pub fn name(self) -> String {
        match self {
            Self::PlateOutside => "plate from outside".to_owned(),
            Self::PlateBack => "plate from the back".to_owned(),
            Self::Slider => "slider".to_owned(),
            Self::Keeper => "keeper".to_owned(),
            Self::Side(side) => side.name().to_owned(),
            Self::Ring(dial) => format!("ring of dial {}", dial + 1),
        }
    }
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
}

impl Template {
    /// The exact mirror image, turned over about the part's upright middle; words stay readable.
    /// It says of itself that it is mirrored. Twice gives the same template again, to the byte.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let width = self.size.0;
        let image = |(centre, at): &(Centre, Point)| (*centre, Point::new(width - at.x, at.y));
        let mut drawing = self.drawing.mirrored(width / 2.0);
        let mirrored = !self.mirrored;
        let words = if mirrored {
            self.face.mirrored_words()
        } else {
            self.face.words()
        };
        let item = self
            .face_item
            .and_then(|index| drawing.items.get_mut(index));
        if let Some(Shape::Text(text)) = item.map(|item| &mut item.shape) {
            words.clone_into(&mut text.text);
        }
        Self {
            mirrored,
            drawing,
            flat: FlatPart {
                caption: vec![self.kind.name(), words.to_owned()],
                ..self.flat.mirrored()
            },
            centres: self.centres.iter().map(image).collect(),
            ..self.clone()
        }
    }
}

/// The templates of all wooden parts of `design`.
///
/// A part without a size is left out and named, as is a hole ([`holes`]).
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
        missing: Vec::new(),
    };
    for face in [Face::Outside, Face::Inside] {
        found.take(WoodPart::Plate, plate::template(design, bored, face));
    }
    if !matches!(design.slider.material, Material::Printed) {
        found.take(WoodPart::Slider, slider::template(design, bored));
    }
    if design.keeper.make == KeeperMake::Wood {
        found.take(WoodPart::Keeper, keeper::template(design, bored));
    }
    for part in [
        WoodPart::Front,
        WoodPart::Back,
        WoodPart::Left,
        WoodPart::Right,
    ] {
        found.take(part, side::template(design, &joinery, part));
    }
    found.all.extend(ring::templates(design, bored));
    found
}

impl Templates {
    fn take(&mut self, part: WoodPart, template: Option<Template>) {
        match template {
            Some(template) => self.all.push(template),
            None if self.missing.contains(&part) => {}
            None => self.missing.push(part),
        }
    }
}

/// What is bored, for the parts to pick theirs from.
#[derive(Clone, Copy)]
struct Bored<'a> {
    holes: &'a [crate::holes::Hole],
    slots: &'a [crate::holes::Slot],
}
