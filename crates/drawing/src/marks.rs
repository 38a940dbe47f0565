//! Marks and labels round a dial: never one over another, however many there are.

use core::f64::consts::TAU;

use latchwright_geometry::{Point, trig};
use latchwright_model::{Dial, Labels};

use crate::item::{Item, Layer};
use crate::outline::Outline;
use crate::picture::{is_picture, picture};
use crate::shape::Text;
use crate::style::Ink;
use latchwright_geometry::Rect;

/// From the knob to the marks, mm.
const GAP: f64 = 1.0;
/// Length of a mark with a label and of one without, mm.
const LONG: f64 = 2.2;
const SHORT: f64 = 1.3;
/// From a mark to its label, mm.
const LABEL_GAP: f64 = 0.7;
/// Least distance between two marks, mm.
const CROWDED: f64 = 0.8;
/// Most marks that are drawn.
const MOST_MARKS: u32 = 720;
/// Sizes of type that are tried, mm, from the largest; a lid that is drawn small tries the first
/// ones too.
const TYPE_SIZES: [f64; 8] = [6.4, 5.8, 5.3, 4.8, 4.4, 3.8, 3.2, 2.6];
/// Sides of pictures that are tried, mm, likewise.
const PICTURE_SIZES: [f64; 8] = [11.0, 10.0, 9.2, 8.4, 7.5, 6.5, 5.5, 4.5];
/// Where the sizes for a lid at its own size begin.
const USUAL: usize = 4;
/// Where not all marks can have a label: one for every so many.
const STRIDES: [u32; 16] = [1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30, 45, 60, 90, 120, 180];

/// Outer radius that marks with one-digit labels take up round a knob of `diameter`, mm.
pub(crate) fn marks_radius(diameter: f64) -> f64 {
    knob_radius(diameter) + GAP + LONG + LABEL_GAP + TYPE_SIZES[USUAL]
}

/// Radius of a knob, mm; never so small that marks could not stand round it.
pub(crate) fn knob_radius(diameter: f64) -> f64 {
    (diameter / 2.0).max(1.0)
}

/// Where a label would stand in the way of the pin, and how far it gives way to it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct GiveWay {
    /// What the pin takes up over its travel.
    pub pin: Rect,
    /// 0: not at all, while the plate hides the pin; 1: all the way.
    pub share: f64,
}

/// How large labels may be.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum LabelSize {
    /// As on the plate.
    Usual,
    /// As large as there is room, for a lid that is drawn small.
    Large,
}

/// How the labels of a dial are set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Setting {
    /// All upright.
    Upright,
    /// Along the circle, heads outwards on the upper half and inwards on the lower: long words that
    /// would run into the neighbours.
    Round,
}

/// One label with the place it takes up.
struct Label {
    mark: u32,
    words: String,
    at: Point,
    space: Rect,
    /// Turned counter-clockwise, degrees.
    turned_deg: f64,
    /// For one set along the circle: where it lies and how far it reaches to each side, degrees.
    sector: Option<(f64, f64)>,
    /// Size of type; side of the square for a picture, mm.
    size: f64,
    picture: bool,
}

/// Where the labels stand and how large they are.
struct Layout {
    stride: u32,
    size: f64,
    setting: Setting,
    labels: Vec<Label>,
}

/// The marks and labels round `dial` at `centre`, kept inside `room` where their size allows.
///
/// The label of the mark at `chosen` is heavier, and is there even where most have none.
pub(crate) fn marks(
    dial: &Dial,
    centre: Point,
    chosen: Option<u32>,
    space: Rect,
    give_way: Option<GiveWay>,
    label_size: LabelSize,
) -> Vec<Item> {
    let Layout {
        stride,
        size,
        setting,
        mut labels,
    } = layout(dial, centre, space, label_size);
    let chosen = chosen.filter(|&mark| mark < dial.positions);
    if let Some(mark) = chosen.filter(|mark| !mark.is_multiple_of(stride)) {
        let extra = label(dial, centre, mark, size, setting);
        labels.retain(|other| !clash(other, &extra));
        labels.push(extra);
    }
    let mut items = ticks(dial, centre, &labels, give_way);
    if let Some(give_way) = give_way {
        for label in &mut labels {
            label.give_way(centre, give_way);
        }
    }
    items.extend(labels.into_iter().flat_map(|label| label.items(chosen)));
    items
}

/// Which way mark `mark` lies from the centre: clockwise from +y.
pub(crate) fn direction(turn_deg: f64) -> Point {
    let turn = trig::radians(turn_deg);
    Point::new(trig::sin(turn), trig::cos(turn))
}

/// The mark at which a pointer stands `turn_deg` clockwise from mark 0; `None` between marks.
pub(crate) fn mark_at(dial: &Dial, turn_deg: f64) -> Option<u32> {
    let steps = turn_deg / dial.step_deg();
    let nearest = steps.round();
    if (steps - nearest).abs() > 0.2 {
        return None;
    }
    let mark = nearest.rem_euclid(f64::from(dial.positions.max(1)));
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "0 to positions − 1"
    )]
    let mark = mark as u32;
    Some(mark)
}

fn ticks(dial: &Dial, centre: Point, labels: &[Label], give_way: Option<GiveWay>) -> Vec<Item> {
    let radius = knob_radius(dial.knob.diameter) + GAP;
    let tick = |mark: u32, length: f64| {
        let way = direction(f64::from(mark) * dial.step_deg());
        Outline::line(centre + way * radius, centre + way * (radius + length))
    };
    let positions = dial.positions.max(1);
    let space = (TAU * radius / CROWDED).clamp(1.0, f64::from(MOST_MARKS));
    let mut every = 1_u32;
    while f64::from(positions) / f64::from(every) > space {
        every = every.saturating_add((every / 8).max(1));
    }
    let step = usize::try_from(every).unwrap_or(1);
    let labelled = |mark: &u32| labels.iter().any(|label| label.mark == *mark);
    let short: Vec<Outline> = (0..positions)
        .step_by(step)
        .filter(|mark| !labelled(mark))
        .map(|mark| tick(mark, SHORT))
        .collect();
    let long = labels.iter().map(|label| tick(label.mark, LONG));
    let in_the_way =
        |tick: &Outline| give_way.is_some_and(|give| give.pin.overlaps(tick.extent().grown(0.2)));
    let (hidden, long): (Vec<Outline>, Vec<Outline>) = long.partition(in_the_way);
    let mut items = vec![Item::strokes(Layer::Marks, Ink::Label, long)];
    if let Some(give) = give_way.filter(|_| !hidden.is_empty()) {
        items.push(Item::strokes(Layer::Marks, Ink::Label, hidden).faded(1.0 - give.share));
    }
    if !short.is_empty() {
        items.push(Item::strokes(Layer::Marks, Ink::Thin, short));
    }
    items
}

/// The first layout that fits: as many labels as possible, then as large as possible.
fn layout(dial: &Dial, centre: Point, space: Rect, label_size: LabelSize) -> Layout {
    let sizes = match dial.labels {
        Labels::Pictures(_) => PICTURE_SIZES,
        _ => TYPE_SIZES,
    };
    let sizes = match label_size {
        LabelSize::Usual => &sizes[USUAL..],
        LabelSize::Large => &sizes[..],
    };
    let coarse = dial.positions / 720 + 1;
    let smallest = sizes[sizes.len() - 1];
    for stride in STRIDES.map(|stride| stride * coarse) {
        let lay = |setting: Setting, size: f64, space: Option<Rect>| {
            let labels = labels(dial, centre, stride, size, setting)?;
            let fits = |label: &Label| space.is_none_or(|space| space.holds(label.space));
            labels.iter().all(fits).then_some(Layout {
                stride,
                size,
                setting,
                labels,
            })
        };
        let try_sizes = |setting| {
            sizes
                .iter()
                .find_map(|&size| lay(setting, size, Some(space)))
        };
        let found = try_sizes(Setting::Upright)
            .or_else(|| try_sizes(Setting::Round))
            .or_else(|| lay(Setting::Upright, smallest, None));
        if let Some(layout) = found {
            return layout;
        }
    }
    Layout {
        stride: dial.positions.max(1),
        size: smallest,
        setting: Setting::Upright,
        labels: vec![label(dial, centre, 0, smallest, Setting::Upright)],
    }
}

/// A label at every `stride`-th mark; `None` if two of them would run into each other.
fn labels(
    dial: &Dial,
    centre: Point,
    stride: u32,
    size: f64,
    setting: Setting,
) -> Option<Vec<Label>> {
    let positions = dial.positions.max(1);
    let mut labels: Vec<Label> = Vec::new();
    let mut mark = 0_u32;
    // The last stretch before mark 0 comes round again is never shorter than the others.
    while mark == 0
        || mark
            .checked_add(stride)
            .is_some_and(|next| next <= positions)
    {
        let next = label(dial, centre, mark, size, setting);
        if labels
            .iter()
            .rev()
            .take(4)
            .chain(labels.iter().take(4))
            .any(|near| clash(near, &next))
        {
            return None;
        }
        labels.push(next);
        mark = mark.checked_add(stride)?;
    }
    Some(labels)
}

/// Whether two labels run into each other.
fn clash(a: &Label, b: &Label) -> bool {
    if let (Some((at, half)), Some((other, other_half))) = (a.sector, b.sector) {
        return trig::wrap_deg(at - other).abs() < half + other_half + 1.0;
    }
    a.space.grown(0.15).overlaps(b.space.grown(0.15))
}

fn label(dial: &Dial, centre: Point, mark: u32, size: f64, setting: Setting) -> Label {
    let words = dial.label(mark);
    let among_pictures = matches!(dial.labels, Labels::Pictures(_));
    let picture = among_pictures && is_picture(&words);
    // A word among pictures is set to match them.
    let size = if among_pictures && !picture {
        size * 0.55
    } else {
        size
    };
    let (width, height) = if picture {
        (size, size)
    } else {
        let extent = Text::new(Point::default(), words.as_str(), size).extent();
        (extent.width(), extent.height())
    };
    let turn_deg = f64::from(mark) * dial.step_deg();
    let way = direction(turn_deg);
    let inner = knob_radius(dial.knob.diameter) + GAP + LONG + LABEL_GAP;
    let round = setting == Setting::Round && !picture;
    let (reach, turned_deg, sector) = if round {
        // Feet towards the knob on the upper half, heads on the lower, so that all can be read.
        let lower = way.y < -1e-9;
        let half = trig::degrees(trig::atan2(width / 2.0, inner));
        let turned = trig::wrap_deg(if lower { 180.0 - turn_deg } else { -turn_deg });
        (height / 2.0, turned, Some((turn_deg, half)))
    } else {
        // Far enough out for the whole box to stay beyond the mark.
        let reach = f64::midpoint(width * way.x.abs(), height * way.y.abs());
        (reach, 0.0, None)
    };
    let at = centre + way * (inner + reach);
    let turn = trig::radians(turned_deg);
    let (cos, sin) = (trig::cos(turn).abs(), trig::sin(turn).abs());
    let space = Rect::about(at, width * cos + height * sin, width * sin + height * cos);
    Label {
        mark,
        words,
        at,
        space,
        turned_deg,
        sector,
        size,
        picture,
    }
}

impl Label {
    /// Moves outwards until the pin is clear of it, as far as the plate is.
    fn give_way(&mut self, centre: Point, give: GiveWay) {
        let out = self.at - centre;
        let way = out * (1.0 / out.length().max(1e-9));
        let moved = |steps: u32| {
            let shift = way * (f64::from(steps) * 0.25);
            Rect {
                min: self.space.min + shift,
                max: self.space.max + shift,
            }
        };
        let clear = (0..60).find(|&steps| !give.pin.overlaps(moved(steps).grown(0.5)));
        self.at = self.at + way * (f64::from(clear.unwrap_or(0)) * 0.25 * give.share);
    }

    fn items(self, chosen: Option<u32>) -> Vec<Item> {
        let heavy = chosen == Some(self.mark);
        if self.picture
            && let Some(lines) = picture(&self.words, self.at, self.size)
        {
            let ring = || {
                let radius = self.size * 0.68;
                Item::circle(Layer::Marks, None, Some(Ink::Movable), self.at, radius)
            };
            let drawn = Item::strokes(Layer::Marks, Ink::Thin, lines);
            return core::iter::once(drawn).chain(heavy.then(ring)).collect();
        }
        let mut text = Text::new(self.at, self.words, self.size);
        text.turned_deg = self.turned_deg;
        let text = if heavy { text.bold() } else { text };
        vec![Item::text(Layer::Marks, Ink::Label, text)]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::shape::Shape;

    fn words(positions: u32, labels: Labels, chosen: Option<u32>) -> Vec<Text> {
        let dial = Dial {
            positions,
            labels,
            ..Dial::default()
        };
        let space = Rect::about(Point::default(), 55.0, 80.0);
        let items = marks(
            &dial,
            Point::default(),
            chosen,
            space,
            None,
            LabelSize::Usual,
        );
        let words = items.into_iter().filter_map(|item| match item.shape {
            Shape::Text(text) => Some(text),
            _ => None,
        });
        words.collect()
    }

    fn assert_clear(words: &[Text]) {
        for (index, a) in words.iter().enumerate() {
            for b in words.iter().skip(index + 1) {
                assert!(!a.overlaps(b), "{a:?} over {b:?}");
            }
        }
    }

    #[test]
    fn labels_never_run_into_each_other() {
        for positions in [2, 3, 8, 10, 12, 24, 36, 37, 60, 100, 359, 360, 4000] {
            let found = words(positions, Labels::Digits, Some(positions / 2 + 1));
            assert_clear(&found);
            assert!(
                found.len() >= 2,
                "{positions} marks have only {} labels",
                found.len()
            );
        }
    }

    #[test]
    fn eight_twelve_and_thirty_six_marks_all_keep_their_labels() {
        for positions in [8, 12, 36] {
            assert_eq!(
                words(positions, Labels::Digits, None).len(),
                positions as usize
            );
        }
    }

    #[test]
    fn long_words_do_not_run_into_each_other_either() {
        let named = |stem: &str| Labels::Words((0..8).map(|n| format!("{stem} {n}")).collect());
        let few = words(8, named("evening"), None);
        assert_clear(&few);
        assert_eq!(few.len(), 8);
        assert_clear(&words(8, named("the evening of the day before"), Some(3)));
    }

    #[test]
    fn long_words_between_neighbours_are_set_along_the_circle() {
        let dial = Dial {
            labels: Labels::Words(vec!["walnut".to_owned(); 8]),
            ..Dial::default()
        };
        let space = Rect::about(Point::default(), 54.0, 80.0);
        let items = marks(&dial, Point::default(), None, space, None, LabelSize::Usual);
        let turns: Vec<f64> = items
            .iter()
            .filter_map(|item| match &item.shape {
                Shape::Text(text) => Some(text.turned_deg),
                _ => None,
            })
            .collect();
        assert_eq!(turns, [0.0, -45.0, -90.0, 45.0, 0.0, -45.0, 90.0, 45.0]);
        for item in &items {
            assert!(space.holds(item.shape.extent()), "{item:?}");
        }
    }

    #[test]
    fn the_chosen_mark_is_heavy_even_where_others_have_no_label() {
        let dial = Dial {
            positions: 360,
            ..Dial::default()
        };
        let space = Rect::about(Point::default(), 80.0, 80.0);
        let items = marks(
            &dial,
            Point::default(),
            Some(6),
            space,
            None,
            LabelSize::Usual,
        );
        let heavy = |item: &Item| match &item.shape {
            Shape::Text(text) if text.weight == crate::Weight::Bold => Some(text.text.clone()),
            _ => None,
        };
        assert_eq!(items.iter().filter_map(heavy).collect::<Vec<_>>(), ["7"]);
    }

    #[test]
    fn any_number_of_marks_gives_a_bounded_number_of_lines() {
        for positions in [0, 1, 360, 100_000, u32::MAX] {
            let dial = Dial {
                positions,
                ..Dial::default()
            };
            let items = marks(
                &dial,
                Point::default(),
                None,
                Rect::about(Point::default(), 9.0, 9.0),
                None,
                LabelSize::Usual,
            );
            let lines: usize = items
                .iter()
                .map(|item| {
                    if let Shape::Path { outlines } = &item.shape {
                        outlines.len()
                    } else {
                        1
                    }
                })
                .sum();
            assert!(lines < 2000, "{positions}: {lines}");
        }
    }

    #[test]
    fn a_pointer_between_marks_stands_at_none() {
        let dial = Dial::default();
        assert_eq!(mark_at(&dial, 135.0), Some(3));
        assert_eq!(mark_at(&dial, -45.0), Some(7));
        assert_eq!(mark_at(&dial, 362.0), Some(0));
        assert_eq!(mark_at(&dial, 22.5), None);
    }
}
