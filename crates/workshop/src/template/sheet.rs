//! One template in the making: what is drawn, what is taken, and words beside it.

use latchwright_drawing::{
    Anchor, Cut, Drawing, FlatPart, Ink, Item, Layer, Outline, Rect, Shape, Text, Worked, hatch,
    rect_on_grid, text_width,
};
use latchwright_geometry::Point;

use super::place::{Taken, inside};
use super::{Face, Template, TemplateKind};
use crate::feature::Centre;
use crate::holes::WoodPart;
use crate::inch::Rule;

/// Size of type, mm.
pub(super) const TYPE: f64 = 2.6;
/// From one line of words to the next, mm.
const PITCH: f64 = 3.4;
/// Paper left free round all that is drawn, mm.
const MARGIN: f64 = 1.0;
/// From one hatch line to the next, mm.
const HATCH: f64 = 2.0;

/// One template in the making.
pub(super) struct Sheet {
    pub rule: Rule,
    part: WoodPart,
    face: Face,
    size: (f64, f64),
    /// The finished edge as points.
    edge: Vec<Point>,
    items: Vec<Item>,
    flat: FlatPart,
    taken: Taken,
    centres: Vec<(Centre, Point)>,
    /// Which item says what face lies up.
    face_item: Option<usize>,
}

impl Sheet {
    /// A sheet with the finished edge on it; its extent must begin at the origin.
    pub(super) fn new(part: WoodPart, face: Face, rule: Rule, outline: Outline) -> Self {
        let extent = outline.extent();
        let mut sheet = Self {
            rule,
            part,
            face,
            size: (extent.max.x, extent.max.y),
            edge: outline.flatten(0.05),
            items: Vec::new(),
            flat: FlatPart::default(),
            taken: Taken::default(),
            centres: Vec::new(),
            face_item: None,
        };
        sheet.flat.outline.push(outline.clone());
        sheet.draw(Ink::Edge, Shape::path(outline));
        sheet
    }

    pub(super) fn size(&self) -> (f64, f64) {
        self.size
    }

    pub(super) fn part(&self) -> WoodPart {
        self.part
    }

    pub(super) fn face(&self) -> Face {
        self.face
    }

    /// Name, finished size, bare size where it is another, and face of the part as words; the face comes last.
    ///
    /// `bare` is what the part is cut to along x and y and its thickness, mm; the drawn edge is the finished one.
    fn name_lines(&self, thickness: f64, bare: (f64, f64, f64)) -> Vec<String> {
        let rule = self.rule;
        let (width, height) = self.size;
        let say = |width: f64, height: f64, thickness: f64| {
            format!(
                "{} × {} × {}",
                rule.say_exactly_bare(width),
                rule.say_exactly_bare(height),
                rule.say_exactly(thickness)
            )
        };
        let (finished, bare) = (say(width, height, thickness), say(bare.0, bare.1, bare.2));
        let mut lines = vec![self.part.name().to_owned()];
        if finished == bare {
            lines.push(finished);
        } else {
            lines.push(format!("finished {finished}"));
            lines.push(format!("bare {bare}"));
        }
        lines.push(self.face.words().to_owned());
        lines
    }

    /// Draws lines and takes their room.
    pub(super) fn draw(&mut self, ink: Ink, shape: Shape) {
        self.taken.line(&shape);
        self.items.push(line(ink, shape));
    }

    /// Draws lines whose room is taken otherwise.
    pub(super) fn sketch(&mut self, ink: Ink, shape: Shape) {
        self.items.push(line(ink, shape));
    }

    /// Draws a solid area and takes its room; the machine marks its edge, so that a part that is turned over is seen.
    pub(super) fn solid(&mut self, outline: Outline) {
        self.taken.area(outline.extent());
        self.flat.marks.push(Shape::path(outline.clone()));
        let area = Item::area(Layer::Wood, Ink::Outline, None, outline);
        self.items.push(area);
    }

    /// Draws what goes right through: for the hand and for the machine.
    pub(super) fn hole(&mut self, shape: Shape) {
        self.flat.holes.push(shape.clone());
        self.draw(Ink::Edge, shape);
    }

    /// Draws what is worked from one face; dashed where that is the other one.
    pub(super) fn work(&mut self, cut: Cut, shape: Shape) {
        let worked = Worked {
            cut,
            shape: shape.clone(),
        };
        self.flat.worked.push(worked);
        let ink = match cut {
            Cut::CountersinkBelow(_) => Ink::Unseen,
            Cut::Blind(_) | Cut::Pocket(_) | Cut::Countersink(_) => Ink::Edge,
        };
        self.draw(ink, shape);
    }

    /// An area that is lowered so deep from this face, mm, for the machine; the hand has its lines drawn otherwise.
    pub(super) fn pocket(&mut self, deep: f64, outline: Outline) {
        self.flat.worked.push(Worked {
            cut: Cut::Pocket(deep),
            shape: Shape::path(outline),
        });
    }

    /// Draws a line that a machine may mark too.
    pub(super) fn mark(&mut self, ink: Ink, shape: Shape) {
        self.flat.marks.push(shape.clone());
        self.draw(ink, shape);
    }

    /// Takes the room of an area.
    pub(super) fn keep_free(&mut self, area: Rect) {
        self.taken.area(area);
    }

    /// Notes a centre to be pricked.
    pub(super) fn centre(&mut self, centre: Centre, at: Point) {
        self.centres.push((centre, at));
    }

    /// What is cut away: `seen` on this face with a plain edge and a hatch, else dashed.
    pub(super) fn waste(&mut self, outline: Outline, seen: bool) {
        if seen {
            let lines = hatch(&[core::slice::from_ref(&outline)], HATCH, 45.0);
            self.taken.area(outline.extent());
            self.items
                .push(Item::strokes(Layer::Wood, Ink::Waste, lines));
        }
        let ink = if seen { Ink::Edge } else { Ink::Unseen };
        self.mark(ink, Shape::path(outline));
    }

    /// Words about the place `at`, beside the circle of `clear` mm about it; the first line is bold.
    pub(super) fn about(&mut self, at: Point, clear: f64, lines: &[String]) {
        let size = block(lines);
        let found = self.taken.beside(at, clear, size, |_| true);
        let space = match found {
            Some(found) => {
                if let Some((from, to)) = found.leader {
                    let leader = Shape::path(Outline::line(from, to));
                    self.draw(Ink::Aim, leader);
                }
                found.space
            }
            None => self.below(size),
        };
        self.write(space, lines);
    }

    /// Words beside the part next to `at`, a point of its edge, to the side of `out`.
    pub(super) fn beside_part(&mut self, at: Point, out: Point, lines: &[String]) {
        let space = self.space_beside_part(at, out, block(lines));
        self.write(space, lines);
    }

    /// Name, size and face of the part beside it, as [`Self::beside_part`].
    pub(super) fn name_beside_part(
        &mut self,
        at: Point,
        out: Point,
        thickness: f64,
        bare: (f64, f64, f64),
    ) {
        let lines = self.name_lines(thickness, bare);
        let space = self.space_beside_part(at, out, name_block(&lines));
        self.write_name(space, &lines);
    }

    fn space_beside_part(&self, at: Point, out: Point, size: (f64, f64)) -> Rect {
        let beyond =
            |space: Rect| (space.centre() - at).dot(out) > 0.0 && !inside(&self.edge, space);
        let found = self.taken.beside(at, 0.0, size, beyond);
        found.map_or_else(|| self.below(size), |found| found.space)
    }

    /// Words on the part near `at`, or off it where there is no room on it.
    pub(super) fn on_part(&mut self, at: Point, lines: &[String]) {
        let space = self.space_on_part(at, block(lines));
        self.write(space, lines);
    }

    /// Name, size and face of the part, as [`Self::on_part`].
    pub(super) fn name_on_part(&mut self, at: Point, thickness: f64, bare: (f64, f64, f64)) {
        let lines = self.name_lines(thickness, bare);
        let space = self.space_on_part(at, name_block(&lines));
        self.write_name(space, &lines);
    }

    /// A free place on the part for `size` as near as can be to `at`; off the part where there is none.
    pub(super) fn space_on_part(&self, at: Point, size: (f64, f64)) -> Rect {
        let on_part = |space| inside(&self.edge, space);
        let centred = Rect::about(at, size.0, size.1);
        if self.taken.is_free(centred) && on_part(centred) {
            return centred;
        }
        let found = self.taken.beside(at, 0.0, size, on_part);
        let found = found.or_else(|| self.taken.beside(at, 0.0, size, |_| true));
        found.map_or_else(|| self.below(size), |found| found.space)
    }

    /// `wanted` where it is free on the part, else the first place of its size that is.
    pub(super) fn free_or_first(&self, wanted: Rect) -> Rect {
        if self.taken.is_free(wanted) && inside(&self.edge, wanted) {
            return wanted;
        }
        let first = self.first_on_part((wanted.width(), wanted.height()));
        first.unwrap_or(wanted)
    }

    /// The first free place of `size` on the part, from the lower left corner on, column by column;
    /// `None` where there is none.
    fn first_on_part(&self, size: (f64, f64)) -> Option<Rect> {
        let step = (self.size.0.max(self.size.1) / 120.0).max(1.0);
        let half = Point::new(size.0 / 2.0, size.1 / 2.0);
        let places = |far: f64, near: f64| {
            let at = move |index: u32| near + f64::from(index) * step;
            (0..120_u32).map(at).take_while(move |place| *place <= far)
        };
        places(self.size.0, half.x)
            .flat_map(|x| places(self.size.1, half.y).map(move |y| Point::new(x, y)))
            .map(|at| Rect::about(at, size.0, size.1))
            .find(|space| self.taken.is_free(*space) && inside(&self.edge, *space))
    }

    /// Below all that is drawn, from the left.
    fn below(&self, (width, height): (f64, f64)) -> Rect {
        let foot = self.extent().min.y - 2.0;
        Rect::new(Point::new(0.0, foot - height), Point::new(width, foot))
    }

    fn extent(&self) -> Rect {
        let whole = Rect::new(Point::default(), Point::new(self.size.0, self.size.1));
        let items = self.items.iter().map(|item| item.shape.extent());
        items.fold(whole, Rect::union)
    }

    /// Writes the lines of the name, of which the last says what face lies up.
    fn write_name(&mut self, space: Rect, lines: &[String]) {
        self.write(space, lines);
        self.face_item = self.items.len().checked_sub(1);
    }

    fn write(&mut self, space: Rect, lines: &[String]) {
        self.taken.words(space);
        for (index, words) in (0_u32..).zip(lines) {
            let y = space.max.y - PITCH * (f64::from(index) + 0.5);
            let text = Text::new(Point::new(space.centre().x, y), words.as_str(), TYPE);
            let text = if index == 0 && lines.len() > 1 {
                text.bold()
            } else {
                text
            };
            self.items.push(Item::text(Layer::Notes, Ink::Note, text));
        }
    }

    /// Words in a place that was found before.
    pub(super) fn word_at(&mut self, at: Point, words: &str, anchor: Anchor) {
        let text = Text::new(at, words, TYPE).anchored(anchor);
        self.taken.words(text.extent());
        self.items.push(Item::text(Layer::Notes, Ink::Note, text));
    }

    /// The whole template, on the grid on which mirrors are exact.
    pub(super) fn finish(self, kind: TemplateKind) -> Template {
        let bounds = self.extent().grown(MARGIN);
        let drawing = Drawing {
            bounds,
            items: self.items,
        };
        let size = rect_on_grid(Rect::new(
            Point::default(),
            Point::new(self.size.0, self.size.1),
        ));
        let on_grid = |(centre, at): (Centre, Point)| {
            let dot = rect_on_grid(Rect { min: at, max: at });
            (centre, dot.min)
        };
        Template {
            kind,
            part: self.part,
            face: self.face,
            mirrored: false,
            size: (size.max.x, size.max.y),
            drawing: drawing.on_grid(),
            flat: FlatPart {
                caption: vec![kind.name(), self.face.words().to_owned()],
                ..self.flat
            }
            .on_grid(),
            centres: self.centres.into_iter().map(on_grid).collect(),
            face_item: self.face_item,
        }
    }
}

/// Width and height of a block of lines, mm.
fn block(lines: &[String]) -> (f64, f64) {
    let widths = (0..lines.len()).map(|index| line_width(lines, index));
    let count = u32::try_from(lines.len()).unwrap_or(u32::MAX);
    (widths.fold(1.0, f64::max), f64::from(count) * PITCH)
}

/// The same for the lines of a name: a mirrored sheet says something longer in its last line.
fn name_block(lines: &[String]) -> (f64, f64) {
    let (width, height) = block(lines);
    let last = line_width(lines, lines.len().saturating_sub(1));
    (width.max(last + text_width("mirrored", TYPE)), height)
}

/// Width of one line of a block, mm; bold type is a little wider.
fn line_width(lines: &[String], index: usize) -> f64 {
    let bold = if index == 0 && lines.len() > 1 {
        1.06
    } else {
        1.0
    };
    lines
        .get(index)
        .map_or(0.0, |words| text_width(words, TYPE) * bold)
}

fn line(ink: Ink, shape: Shape) -> Item {
    let words = matches!(shape, Shape::Text(_));
    Item {
        layer: Layer::Wood,
        fill: words.then_some(Ink::Label),
        line: (!words).then_some(ink),
        opacity: 1.0,
        shape,
        subject: None,
    }
}
