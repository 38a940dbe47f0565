//! What the exported files say, read by readers that are not ours: flat parts from DXF, prints from STL.

use std::io::Cursor;

use dxf::entities::EntityType;
use latchwright_solids::{Part, files_of};
use latchwright_workshop::{TemplateKind, templates};
use manifold_rust::linalg::{Vec2, Vec3};
use manifold_rust::manifold::Manifold;
use manifold_rust::types::{Error, MeshGL64};

use latchwright_model::Design;

/// How far a chord may lie off its arc, mm.
const CHORD: f64 = 0.005;

/// A point, mm.
pub type Place = (f64, f64);

/// A flat part as its file shows it, mm on the sheet.
pub struct Flat {
    /// The finished edge and the openings in it.
    pub outline: Vec<Vec<Place>>,
    /// Round holes: middle, radius, and how deep where its layer says so.
    pub circles: Vec<(Place, f64, Option<f64>)>,
    /// What is sawn right through.
    pub slots: Vec<Vec<Place>>,
    /// What is lowered, and how deep where its layer says so.
    pub pockets: Vec<(Vec<Place>, Option<f64>)>,
}

impl Flat {
    /// Whether the file tells what is lowered by how much.
    pub fn tells_depths(&self) -> bool {
        self.pockets.iter().any(|(_, deep)| deep.is_some())
    }
}

/// The depth in the name of a layer such as `BLIND_6_5_MM`.
fn told(layer: &str, what: &str) -> Option<f64> {
    let depth = layer.strip_prefix(what)?.strip_suffix("_MM")?;
    depth.replace('_', ".").parse().ok()
}

/// The flat part that the DXF of this template shows.
pub fn flat(design: &Design, kind: TemplateKind) -> Option<Flat> {
    let all = templates(design).all;
    let template = all.into_iter().find(|template| template.kind == kind)?;
    let text = template.flat.dxf();
    let drawing = dxf::Drawing::load(&mut Cursor::new(text.into_bytes())).expect("DXF");
    let mut flat = Flat {
        outline: Vec::new(),
        circles: Vec::new(),
        slots: Vec::new(),
        pockets: Vec::new(),
    };
    for entity in drawing.entities() {
        let layer = entity.common.layer.as_str();
        match &entity.specific {
            EntityType::Circle(circle) if layer != "MARKS" => {
                let middle = (circle.center.x, circle.center.y);
                let deep = told(layer, "BLIND_");
                flat.circles.push((middle, circle.radius, deep));
            }
            EntityType::Polyline(line) => {
                let vertices: Vec<(f64, f64, f64)> = line
                    .vertices()
                    .map(|vertex| (vertex.location.x, vertex.location.y, vertex.bulge))
                    .collect();
                let points = flattened(&vertices);
                match layer {
                    "OUTLINE" => flat.outline.push(points),
                    "HOLES" | "THROUGH" => flat.slots.push(points),
                    _ => flat.pockets.push((points, told(layer, "POCKET_"))),
                }
            }
            _ => {}
        }
    }
    Some(flat)
}

/// A closed polyline with its arcs as chords.
fn flattened(vertices: &[(f64, f64, f64)]) -> Vec<Place> {
    let mut points = Vec::new();
    let next = vertices.iter().cycle().skip(1);
    for (&(x0, y0, bulge), &(x1, y1, _)) in vertices.iter().zip(next) {
        points.push((x0, y0));
        if bulge == 0.0 {
            continue;
        }
        // the centre lies on the chord's upright; the sagitta is half the chord times the bulge
        let back = (1.0 - bulge * bulge) / (4.0 * bulge);
        let (dx, dy) = (x1 - x0, y1 - y0);
        let centre = (
            f64::midpoint(x0, x1) - dy * back,
            f64::midpoint(y0, y1) + dx * back,
        );
        let (x, y) = (x0 - centre.0, y0 - centre.1);
        let whole = 4.0 * bulge.atan();
        let step = 2.0 * (1.0 - (CHORD / x.hypot(y)).min(0.5)).acos();
        let count = (whole.abs() / step).ceil();
        let mut at = 1.0;
        while at < count {
            let (sin, cos) = (whole * at / count).sin_cos();
            points.push((centre.0 + x * cos - y * sin, centre.1 + x * sin + y * cos));
            at += 1.0;
        }
    }
    points
}

/// The least rectangle around points: left, lower, right, upper.
pub fn bounds(points: &[Place]) -> [f64; 4] {
    let start = [f64::MAX, f64::MAX, f64::MIN, f64::MIN];
    points.iter().fold(start, |[a, b, c, d], &(x, y)| {
        [a.min(x), b.min(y), c.max(x), d.max(y)]
    })
}

/// An upright solid over an outline, whichever way round it is given.
pub fn prism(points: &[Place], low: f64, high: f64) -> Manifold {
    let area: f64 = points
        .iter()
        .zip(points.iter().cycle().skip(1))
        .map(|((x0, y0), (x1, y1))| x0 * y1 - x1 * y0)
        .sum();
    let mut polygon: Vec<Vec2> = points.iter().map(|&(x, y)| Vec2::new(x, y)).collect();
    if area < 0.0 {
        polygon.reverse();
    }
    Manifold::extrude(&[polygon].to_vec(), high - low, 0, 0.0, Vec2::new(1.0, 1.0))
        .translate(Vec3::new(0.0, 0.0, low))
}

/// A box between two corners.
pub fn block(low: [f64; 3], high: [f64; 3]) -> Manifold {
    let corners = [
        (low[0], low[1]),
        (high[0], low[1]),
        (high[0], high[1]),
        (low[0], high[1]),
    ];
    prism(&corners, low[2], high[2])
}

/// A round rod or a cone that stands upright.
pub fn cone((x, y): Place, (low, high): (f64, f64), (below, above): (f64, f64)) -> Manifold {
    let circle: Vec<Vec2> = (0..96)
        .map(|step| {
            let (sin, cos) = (f64::from(step) * core::f64::consts::TAU / 96.0).sin_cos();
            Vec2::new(cos * below, sin * below)
        })
        .collect();
    let share = above / below;
    Manifold::extrude(
        &[circle].to_vec(),
        high - low,
        0,
        0.0,
        Vec2::new(share, share),
    )
    .translate(Vec3::new(x, y, low))
}

/// A round rod that stands upright.
pub fn rod(at: Place, (low, high): (f64, f64), radius: f64) -> Manifold {
    cone(at, (low, high), (radius, radius))
}

/// The prints out of their STL, each where it sits in the closed box.
pub fn prints(design: &Design, parts: &[Part]) -> Vec<(String, Manifold)> {
    let files = files_of(parts, &design.bench.printer, "box", |_| String::new());
    let files = files.expect("files");
    let meshes = files
        .iter()
        .filter(|(name, _)| name.strip_suffix(".stl").is_some());
    parts
        .iter()
        .zip(meshes)
        .filter_map(|(part, (_, bytes))| {
            let pose = part.assembled?;
            let read = stl_io::read_stl(&mut Cursor::new(bytes)).expect("STL");
            let points = read
                .vertices
                .iter()
                .flat_map(|vertex| pose.of([0, 1, 2].map(|axis| f64::from(vertex.0[axis]))));
            let corners = read.faces.iter().flat_map(|face| face.vertices);
            let solid = Manifold::from_mesh_gl64(&MeshGL64 {
                num_prop: 3,
                vert_properties: points.collect(),
                tri_verts: corners.map(|index| index as u64).collect(),
                ..MeshGL64::default()
            });
            assert_eq!(solid.status(), Error::NoError, "{}", part.name);
            Some((part.name.clone(), solid))
        })
        .collect()
}
