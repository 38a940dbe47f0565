//! What a foreign XML reader finds in our SVG.

use latchwright_drawing::{
    Drawing, Ink, Item, Layer, Outline, Palette, Pictogram, PlanOptions, Rect, Text, dial_face,
    lid_card, pictogram, plan, section, svg,
};
use latchwright_geometry::Point;
use latchwright_model::Design;
use latchwright_model::Pose;

fn part(width: f64, height: f64) -> Drawing {
    let bounds = Rect::about(Point::new(7.0, -3.0), width, height);
    let mut drawing = Drawing::new(bounds);
    drawing.items.push(Item::stroke(
        Layer::Wood,
        Ink::Outline,
        Outline::rectangle(bounds),
    ));
    drawing
}

fn numbers(text: &str) -> Vec<f64> {
    text.split([' ', 'M', 'L', 'A', 'Z'])
        .filter_map(|word| word.parse().ok())
        .collect()
}

fn all_views() -> Vec<Drawing> {
    let design = Design::default();
    let pose = Pose::at_combination(&design);
    let mut views = vec![
        section(&design, &pose, 1, None),
        dial_face(&design, 0, 100.0),
        lid_card(&design, &[1, 2, 3], true),
        lid_card(&design, &[], false),
    ];
    for veil in [0.0, 0.4, 1.0] {
        let options = PlanOptions {
            veil,
            show_dimensions: true,
            ..PlanOptions::default()
        };
        views.push(plan(&design, &pose, &options));
    }
    views.extend(Pictogram::ALL.map(pictogram));
    views
}

#[test]
fn a_part_of_120_by_80_measures_120_by_80() {
    let text = svg(&part(120.0, 80.0), &Palette::PRINT);
    let document = roxmltree::Document::parse(&text).unwrap();
    let root = document.root_element();
    assert_eq!(root.attribute("width"), Some("120mm"));
    assert_eq!(root.attribute("height"), Some("80mm"));
    assert_eq!(root.attribute("viewBox"), Some("0 0 120 80"));
    let path = root
        .children()
        .find(|node| node.has_tag_name("path"))
        .unwrap();
    let points = numbers(path.attribute("d").unwrap());
    let (xs, ys): (Vec<_>, Vec<_>) = points.chunks(2).map(|point| (point[0], point[1])).unzip();
    let span = |values: &[f64]| {
        values.iter().copied().fold(f64::MIN, f64::max)
            - values.iter().copied().fold(f64::MAX, f64::min)
    };
    assert_eq!((span(&xs), span(&ys)), (120.0, 80.0));
}

#[test]
fn every_view_is_well_formed_and_its_size_is_its_view_box() {
    for drawing in all_views() {
        for palette in [Palette::LIGHT, Palette::DARK, Palette::PRINT] {
            let text = svg(&drawing, &palette);
            let document = roxmltree::Document::parse(&text).unwrap();
            let root = document.root_element();
            let side = |name| {
                root.attribute(name)
                    .and_then(|text| text.strip_suffix("mm"))
                    .unwrap()
            };
            let view_box = format!("0 0 {} {}", side("width"), side("height"));
            assert_eq!(root.attribute("viewBox"), Some(view_box.as_str()));
            assert!(root.descendants().count() > 4);
            assert!(!text.contains("NaN") && !text.contains("inf"));
        }
    }
}

#[test]
fn arcs_stay_arcs_and_turn_the_right_way() {
    let mut drawing = part(40.0, 40.0);
    // A quarter from the right to the top about the origin: counter-clockwise as seen.
    let (right, top) = (Point::new(10.0, 0.0), Point::new(0.0, 10.0));
    let arc = Outline::from(right).arc_to(top, Point::default(), false);
    drawing.bounds = Rect::about(Point::default(), 40.0, 40.0);
    drawing.items = vec![Item::stroke(Layer::Notes, Ink::Thin, arc)];
    let text = svg(&drawing, &Palette::LIGHT);
    assert!(text.contains("d=\"M 30 20 A 10 10 0 0 0 20 10\""), "{text}");
}

#[test]
fn words_are_escaped_upright_and_in_place() {
    let mut drawing = Drawing::new(Rect::about(Point::default(), 40.0, 20.0));
    let words = Text::new(Point::new(0.0, 5.0), "<oak> & \"ash\"\u{7}\nтис", 4.0).bold();
    drawing
        .items
        .push(Item::text(Layer::Notes, Ink::Label, words));
    let text = svg(&drawing, &Palette::LIGHT);
    let document = roxmltree::Document::parse(&text).unwrap();
    let node = document
        .descendants()
        .find(|node| node.has_tag_name("text"))
        .unwrap();
    assert_eq!(node.text(), Some("<oak> & \"ash\" тис"));
    assert_eq!(node.attribute("x"), Some("20"));
    // 5 mm above the middle of a 20 mm sheet, and half a capital letter down to the base line.
    assert_eq!(node.attribute("y"), Some("6.428"));
    assert_eq!(node.attribute("transform"), None);
    assert_eq!(node.attribute("font-weight"), Some("700"));
}

#[test]
fn what_is_not_to_be_seen_is_left_out() {
    let mut drawing = part(10.0, 10.0);
    let hidden = drawing.items[0].clone().faded(0.0);
    drawing.items.push(hidden);
    let text = svg(&drawing, &Palette::LIGHT);
    assert_eq!(text.matches("<path").count(), 1);
}

#[test]
fn the_same_drawing_gives_the_same_bytes() {
    let once: Vec<String> = all_views()
        .iter()
        .map(|view| svg(view, &Palette::LIGHT))
        .collect();
    let again: Vec<String> = all_views()
        .iter()
        .map(|view| svg(view, &Palette::LIGHT))
        .collect();
    assert_eq!(once, again);
}
