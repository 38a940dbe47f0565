//! A flat part as SVG and DXF, read back by foreign readers and measured.

mod group_codes;

use std::f64::consts::PI;

use dxf::Drawing as Dxf;
use dxf::entities::{Entity, EntityType, Polyline};
use group_codes::GroupCodes;
use latchwright_drawing::{Anchor, Cut, FlatPart, Outline, Rect, Shape, Text, Worked};
use latchwright_geometry::Point;
use usvg::tiny_skia_path::PathSegment;

/// 120 × 80 with a hole at (30, 20) and a slot of 20 between centres and a radius of 4.
fn panel() -> FlatPart {
    let slot = Outline::stadium(Point::new(70.0, 40.0), Point::new(90.0, 40.0), 4.0);
    let cross = Outline::line(Point::new(25.0, 20.0), Point::new(35.0, 20.0));
    let words = Text::new(Point::new(60.0, 70.0), "front \u{2191} 5 %% \\P", 4.0);
    FlatPart {
        outline: vec![Outline::rectangle(Rect::new(
            Point::new(0.0, 0.0),
            Point::new(120.0, 80.0),
        ))],
        holes: vec![
            Shape::Circle {
                centre: Point::new(30.0, 20.0),
                radius: 7.15,
            },
            Shape::path(slot),
        ],
        marks: vec![
            Shape::path(cross),
            Shape::Text(words.anchored(Anchor::Start)),
        ],
        worked: vec![Worked {
            cut: Cut::Blind(6.5),
            shape: Shape::Circle {
                centre: Point::new(100.0, 60.0),
                radius: 4.0,
            },
        }],
        caption: vec!["panel".to_owned(), "upper face up".to_owned()],
    }
}

/// A part whose corners and fingers are rounded and whose places are no round numbers.
fn crooked() -> FlatPart {
    let corner = |x: f64, y: f64, radius: f64| (Point::new(x / 3.0, y / 7.0), radius);
    let outline = Outline::rounded(&[
        corner(0.0, 0.0, 1.5),
        corner(301.0, 10.0, 3.0),
        corner(290.0, 500.0, 9.0),
        corner(100.0, 100.0, 2.0),
    ]);
    let bow = Outline::from(Point::new(20.0, 5.0)).arc_to(
        Point::new(20.0, 5.1),
        Point::new(22.0, 5.05),
        false,
    );
    FlatPart {
        outline: vec![outline],
        holes: vec![Shape::path(bow.closed())],
        ..FlatPart::default()
    }
}

fn read(part: &FlatPart) -> Dxf {
    Dxf::load(&mut part.dxf().as_bytes()).expect("DXF")
}

fn on<'a>(drawing: &'a Dxf, layer: &str) -> Vec<&'a Entity> {
    drawing
        .entities()
        .filter(|entity| entity.common.layer == layer)
        .collect()
}

fn polyline(entity: &Entity) -> &Polyline {
    match &entity.specific {
        EntityType::Polyline(line) => line,
        other => panic!("a polyline, not {other:?}"),
    }
}

/// Area and extent of a closed polyline by its vertices and bulges: chords by the shoelace formula,
/// and for each arc the segment between chord and arc.
fn measure(vertices: &[(f64, f64, f64)]) -> (f64, [f64; 4]) {
    let next = vertices.iter().cycle().skip(1);
    let (mut area, mut extent) = (0.0, [f64::MAX, f64::MAX, f64::MIN, f64::MIN]);
    for (&(x0, y0, bulge), &(x1, y1, _)) in vertices.iter().zip(next) {
        area += (x0 * y1 - x1 * y0) / 2.0;
        if bulge != 0.0 {
            let turn = 4.0 * bulge.atan();
            let chord = (x1 - x0).hypot(y1 - y0);
            let radius = chord / 2.0 / (turn / 2.0).sin();
            area += radius * radius / 2.0 * (turn - turn.sin());
        }
        for step in 0..=64 {
            let turn = 4.0 * bulge.atan() * f64::from(step) / 64.0;
            let (x, y) = along((x0, y0), (x1, y1), bulge, turn);
            extent = [
                extent[0].min(x),
                extent[1].min(y),
                extent[2].max(x),
                extent[3].max(y),
            ];
        }
    }
    (area, extent)
}

/// The point of an arc of `bulge` after `turn` of its turn.
fn along(from: (f64, f64), to: (f64, f64), bulge: f64, turn: f64) -> (f64, f64) {
    if bulge == 0.0 {
        return from;
    }
    // The centre lies on the chord's upright; the sagitta is half the chord times the bulge.
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let back = (1.0 - bulge * bulge) / (4.0 * bulge);
    let centre = (
        f64::midpoint(from.0, to.0) - dy * back,
        f64::midpoint(from.1, to.1) + dx * back,
    );
    let (x, y) = (from.0 - centre.0, from.1 - centre.1);
    let (sin, cos) = turn.sin_cos();
    (centre.0 + x * cos - y * sin, centre.1 + x * sin + y * cos)
}

fn measured(line: &Polyline) -> (f64, [f64; 4]) {
    let vertices: Vec<(f64, f64, f64)> = line
        .vertices()
        .map(|vertex| (vertex.location.x, vertex.location.y, vertex.bulge))
        .collect();
    measure(&vertices)
}

fn assert_near(found: [f64; 4], wanted: [f64; 4], within: f64) {
    for (a, b) in found.iter().zip(wanted) {
        assert!((a - b).abs() <= within, "{found:?} for {wanted:?}");
    }
}

#[test]
fn a_reader_of_dxf_measures_the_panel_120_by_80_in_millimetres() {
    let drawing = read(&panel());
    assert_eq!(drawing.header.version, dxf::enums::AcadVersion::R12);
    let edges = on(&drawing, "OUTLINE");
    assert_eq!(edges.len(), 1);
    let edge = polyline(edges[0]);
    assert!(edge.is_closed());
    let (area, extent) = measured(edge);
    assert_near(extent, [0.0, 0.0, 120.0, 80.0], 0.0);
    assert_eq!(area, 9600.0);
}

#[test]
fn a_reader_of_dxf_finds_the_slot_closed_with_the_area_of_a_stadium() {
    let drawing = read(&panel());
    let holes = on(&drawing, "THROUGH");
    let EntityType::Circle(circle) = &holes[0].specific else {
        panic!("a true circle")
    };
    assert_eq!(
        (circle.center.x, circle.center.y, circle.radius),
        (30.0, 20.0, 7.15)
    );
    let slot = polyline(holes[1]);
    assert!(slot.is_closed());
    assert_eq!(slot.vertices().count(), 4);
    let (area, extent) = measured(slot);
    // 20 · 8 + π · 4²
    assert!((area - 210.265_482).abs() < 1e-4, "{area}");
    assert!((area - (160.0 + PI * 16.0)).abs() < 1e-4);
    assert_near(extent, [66.0, 36.0, 94.0, 44.0], 1e-6);
}

#[test]
fn a_second_reader_finds_the_same_by_group_codes_alone() {
    let text = panel().dxf();
    let codes = GroupCodes::read(&text);
    assert_eq!(codes.variable("$ACADVER"), [(1, "AC1009")]);
    assert_eq!(codes.variable("$INSUNITS"), [(70, "4")]);
    assert_eq!(codes.variable("$MEASUREMENT"), [(70, "1")]);
    assert_eq!(
        codes.layers(),
        [
            "OUTLINE",
            "THROUGH",
            "MARKS",
            "NOTES",
            "SCALE_100_MM",
            "BLIND_6_5_MM"
        ]
    );
    let lines = codes.polylines("THROUGH");
    assert_eq!(lines.len(), 1);
    assert!(lines[0].closed);
    let (area, _) = measure(&lines[0].vertices);
    assert!((area - 210.265_482).abs() < 1e-4, "{area}");
    let edge = &codes.polylines("OUTLINE")[0];
    assert!(edge.closed);
    assert_near(measure(&edge.vertices).1, [0.0, 0.0, 120.0, 80.0], 0.0);
}

#[test]
fn the_line_on_its_own_layer_is_100_mm_long_and_says_so() {
    let drawing = read(&panel());
    let scale = on(&drawing, "SCALE_100_MM");
    let lengths: Vec<f64> = scale
        .iter()
        .filter_map(|entity| match &entity.specific {
            EntityType::Line(line) => Some((line.p2.x - line.p1.x).hypot(line.p2.y - line.p1.y)),
            _ => None,
        })
        .collect();
    assert_eq!(lengths[0], 100.0);
    let said = scale
        .iter()
        .any(|entity| matches!(&entity.specific, EntityType::Text(text) if text.value == "100 mm"));
    assert!(said);
}

#[test]
fn words_are_ascii_and_hold_no_commands() {
    let text = panel().dxf();
    assert!(text.is_ascii());
    assert!(text.contains("front \\U+2191 5 % % \\U+005CP"), "{text}");
}

#[test]
fn arcs_of_more_than_half_a_turn_are_read_back_round() {
    let codes = crooked().dxf();
    let lines = GroupCodes::read(&codes).polylines("THROUGH");
    // nearly a whole circle about (22, 5.05) that runs from above it round to below
    let (area, extent) = measure(&lines[0].vertices);
    let radius = 2.0_f64.hypot(0.05);
    assert!((area.abs() - PI * radius * radius).abs() < 0.01, "{area}");
    assert_near(
        extent,
        [19.999, 5.05 - radius, 22.0 + radius, 5.05 + radius],
        0.01,
    );
}

#[test]
fn svg_has_its_size_in_millimetres_and_a_view_box_of_the_same_numbers() {
    let text = panel().svg();
    let document = roxmltree::Document::parse(&text).unwrap();
    let root = document.root_element();
    assert_eq!(root.attribute("width"), Some("120mm"));
    // 80 of the part, 15 down to the line of 100 mm, two lines of 6 and half of one below it: it was the part alone
    // before the line and the part's name stood there too
    assert_eq!(root.attribute("height"), Some("110mm"));
    assert_eq!(root.attribute("viewBox"), Some("0 0 120 110"));
    let names: Vec<&str> = root
        .children()
        .filter_map(|group| group.attribute("id"))
        .collect();
    assert_eq!(
        names,
        [
            "OUTLINE",
            "THROUGH",
            "BLIND_6_5_MM",
            "MARKS",
            "NOTES",
            "SCALE_100_MM"
        ]
    );
    let slot = document
        .descendants()
        .filter_map(|node| node.attribute("d"))
        .find(|data| data.contains('A'));
    // arcs are arcs, y counts down from the upper edge
    assert_eq!(
        slot,
        Some("M 70 44 L 90 44 A 4 4 0 0 0 90 36 L 70 36 A 4 4 0 0 0 70 44 Z")
    );
}

/// Area and bounds of each path of an SVG as a foreign reader flattens it, in mm.
fn paths(text: &str) -> Vec<(f64, [f64; 4])> {
    let tree = usvg::Tree::from_str(text, &usvg::Options::default()).expect("SVG");
    // the reader counts 96 pixels an inch
    let mm = 25.4 / 96.0;
    let mut found = Vec::new();
    collect(tree.root(), &mut |path| {
        let path = path
            .data()
            .clone()
            .transform(path.abs_transform())
            .expect("a path");
        let (mut area, mut at, mut start) = (0.0, (0.0, 0.0), (0.0, 0.0));
        for segment in path.segments() {
            let pair = |point: usvg::tiny_skia_path::Point| {
                (f64::from(point.x) * mm, f64::from(point.y) * mm)
            };
            match segment {
                PathSegment::MoveTo(to) => (at, start) = (pair(to), pair(to)),
                PathSegment::LineTo(to) => {
                    area += cross(at, pair(to));
                    at = pair(to);
                }
                PathSegment::QuadTo(..) => panic!("no such curve is written"),
                PathSegment::CubicTo(a, b, to) => {
                    let curve = [at, pair(a), pair(b), pair(to)];
                    for step in 1..=64 {
                        let next = bezier(&curve, f64::from(step) / 64.0);
                        area += cross(at, next);
                        at = next;
                    }
                }
                PathSegment::Close => {
                    area += cross(at, start);
                    at = start;
                }
            }
        }
        let bounds = path.compute_tight_bounds().expect("bounds");
        let sides = [bounds.left(), bounds.top(), bounds.right(), bounds.bottom()];
        found.push((area.abs() / 2.0, sides.map(|side| f64::from(side) * mm)));
    });
    found
}

fn collect(group: &usvg::Group, take: &mut impl FnMut(&usvg::Path)) {
    for node in group.children() {
        match node {
            usvg::Node::Group(group) => collect(group, take),
            usvg::Node::Path(path) => take(path),
            _ => {}
        }
    }
}

fn cross(a: (f64, f64), b: (f64, f64)) -> f64 {
    a.0 * b.1 - b.0 * a.1
}

fn bezier(curve: &[(f64, f64); 4], t: f64) -> (f64, f64) {
    let s = 1.0 - t;
    let weights = [s * s * s, 3.0 * s * s * t, 3.0 * s * t * t, t * t * t];
    curve
        .iter()
        .zip(weights)
        .fold((0.0, 0.0), |(x, y), (point, weight)| {
            (x + point.0 * weight, y + point.1 * weight)
        })
}

#[test]
fn a_reader_of_svg_measures_panel_hole_and_slot() {
    let found = paths(&panel().svg());
    assert_near(found[0].1, [0.0, 0.0, 120.0, 80.0], 1e-4);
    assert!((found[0].0 - 9600.0).abs() < 0.01);
    // hole at (30, 20) from below is 60 from above
    assert_near(found[1].1, [22.85, 52.85, 37.15, 67.15], 0.002);
    assert!((found[2].0 - 210.27).abs() < 0.02, "{}", found[2].0);
    assert_near(found[2].1, [66.0, 36.0, 94.0, 44.0], 0.002);
}

#[test]
fn mirrored_the_hole_at_30_20_of_a_panel_120_wide_is_at_90_20() {
    let drawing = read(&panel().mirrored());
    let EntityType::Circle(circle) = &on(&drawing, "THROUGH")[0].specific else {
        panic!("a true circle")
    };
    assert_eq!((circle.center.x, circle.center.y), (90.0, 20.0));
    let (area, extent) = measured(polyline(on(&drawing, "THROUGH")[1]));
    assert!((area.abs() - 210.265_482).abs() < 1e-4, "{area}");
    assert_near(extent, [26.0, 36.0, 54.0, 44.0], 1e-6);
}

#[test]
fn mirrored_twice_is_the_same_file_and_once_is_another() {
    for part in [panel(), crooked()] {
        let part = part.on_grid();
        let (once, twice) = (part.mirrored(), part.mirrored().mirrored());
        assert_eq!(twice, part);
        assert_eq!(twice.dxf(), part.dxf());
        assert_eq!(twice.svg(), part.svg());
        assert_ne!(once.dxf(), part.dxf());
        assert_ne!(once.svg(), part.svg());
    }
}

#[test]
fn the_same_part_gives_the_same_bytes() {
    assert_eq!(panel().dxf(), panel().dxf());
    assert_eq!(panel().svg(), panel().svg());
}

#[test]
fn nothing_and_nonsense_are_still_read() {
    let bad = |value: f64| FlatPart {
        outline: vec![
            Outline::circle(Point::new(value, 1.0), value),
            Outline::from(Point::new(0.0, value)).closed(),
        ],
        holes: vec![Shape::Circle {
            centre: Point::new(1.0, value),
            radius: value,
        }],
        marks: vec![Shape::Text(Text::new(
            Point::new(value, value),
            "\u{0}\u{7f}\u{1f600}\n",
            value,
        ))],
        ..FlatPart::default()
    };
    let parts = [f64::NAN, f64::INFINITY, -1e300, 0.0, 1e-300].map(bad);
    for part in parts.into_iter().chain([FlatPart::default()]) {
        let text = part.dxf();
        assert!(!text.to_lowercase().contains("nan") && !text.contains("inf"));
        read(&part);
        GroupCodes::read(&text);
        roxmltree::Document::parse(&part.svg()).unwrap();
        assert_eq!(part.on_grid().mirrored().mirrored(), part.on_grid());
    }
}
