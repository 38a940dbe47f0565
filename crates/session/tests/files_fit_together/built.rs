//! The closed box out of its files: wooden parts extruded, prints posed, bought rods and screws set in.

use latchwright_assembly::dial::disc_screw;
use latchwright_assembly::feature::{Hand, HoleKind};
use latchwright_assembly::frame::front_side;
use latchwright_assembly::guide::{BridgeEnd, guide};
use latchwright_assembly::holes::{Depth, HoleStep, Tool, WoodPart, holes};
use latchwright_assembly::joinery::{SidePlace, joinery};
use latchwright_assembly::keeper::keeper_screws;
use latchwright_assembly::screw::{JOINING, LENGTHS};
use latchwright_assembly::slider_body::SliderBody;
use latchwright_model::{Design, KeeperMake, LidKind, Material, PinMake};
use latchwright_solids::Options;
use latchwright_solids::part::Kind;
use latchwright_workshop::TemplateKind;
use manifold_rust::linalg::Vec3;
use manifold_rust::manifold::Manifold;

use crate::files::{Flat, Place, block, bounds, cone, flat, prints, prism, rod};

/// With what a part moves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Goes {
    /// It stays with the body of the box.
    Body,
    /// It stays with the lid.
    Lid,
    /// It goes with the slider.
    Slider,
    /// It turns with this dial.
    Dial(usize),
}

/// One part in the closed box.
pub struct Piece {
    /// What it is called.
    pub name: String,
    /// With what it moves.
    pub goes: Goes,
    /// Its solid, where it is when the box is shut.
    pub solid: Manifold,
}

/// A screw: what it should hold in, where its head lies, mm.
pub struct Held {
    /// The knob or part that takes its thread.
    pub into: String,
    /// What it goes through without touching.
    pub through: String,
    /// Head and shank.
    pub solid: Manifold,
    /// From the tip downwards as much of the shank as has to find thread.
    pub thread: Manifold,
}

/// All of a box.
pub struct Built {
    /// The parts.
    pub pieces: Vec<Piece>,
    /// The screws of discs and keeper.
    pub screws: Vec<Held>,
}

impl Built {
    /// The solid of this name.
    pub fn of(&mut self, name: &str) -> &mut Manifold {
        let found = self.pieces.iter_mut().find(|piece| piece.name == name);
        &mut found.unwrap_or_else(|| panic!("no {name}")).solid
    }

    fn add(&mut self, name: impl Into<String>, goes: Goes, solid: Manifold) {
        let name = name.into();
        assert!(solid.volume() > 1.0, "{name} is nothing");
        self.pieces.push(Piece { name, goes, solid });
    }
}

/// The shut box of `design` as its files describe it.
pub fn built(design: &Design) -> Built {
    let mut all = Built {
        pieces: Vec::new(),
        screws: Vec::new(),
    };
    wood(design, &mut all);
    let options = Options::default();
    let parts = latchwright_session::products::parts(design, &options).expect("prints");
    let posed: Vec<_> = parts
        .iter()
        .filter(|part| part.assembled.is_some())
        .collect();
    for (part, (name, solid)) in posed.iter().zip(prints(design, &parts)) {
        let goes = match (part.kind, part.dial) {
            (Kind::Disc | Kind::Knob, Some(dial)) => Goes::Dial(dial),
            (Kind::Pin | Kind::Slider | Kind::SliderKnob, _) => Goes::Slider,
            (Kind::Keeper, _) => Goes::Body,
            _ => Goes::Lid,
        };
        all.add(name, goes, solid);
    }
    rods(design, &mut all);
    disc_screws(design, &mut all, None);
    keepers_screws(design, &mut all);
    all
}

/// Rods that are bought.
fn rods(design: &Design, all: &mut Built) {
    let top = -design.slider.below;
    for (index, dial) in design.dials.iter().enumerate() {
        let pin = &dial.pin;
        if matches!(pin.make, PinMake::Steel | PinMake::Dowel) {
            let solid = rod(dial.pin_at(), (top - pin.height, top), pin.diameter / 2.0);
            all.add(format!("Rod {}", index + 1), Goes::Slider, solid);
        }
    }
}

/// The screws of discs and knobs; all of them `length` mm long where that is given.
pub fn disc_screws(design: &Design, all: &mut Built, length: Option<f64>) {
    for (index, dial) in design.dials.iter().enumerate() {
        let screw = disc_screw(design, dial, 0.0);
        let Some(own) = screw.length else { continue };
        let disc = format!("Disc {}", index + 1);
        let head = all.of(&disc).bounding_box().min.z + screw.deeper;
        let tip = head + length.unwrap_or(own);
        let thread = rod(dial.centre, (tip - 2.0, tip), JOINING.shank / 2.0);
        let solid = countersunk(dial.centre, head, tip);
        all.screws.push(Held {
            into: format!("Knob {}", index + 1),
            through: disc,
            solid,
            thread,
        });
    }
}

/// A flat head of 5.6 mm that narrows at 90°, and a shank; the head may lie below or above the tip.
fn countersunk(at: Place, head: f64, tip: f64) -> Manifold {
    let (wide, slim) = (2.8, JOINING.shank / 2.0);
    let high = wide - slim;
    if head < tip {
        let cone = cone(at, (head, head + high), (wide, slim));
        cone.union(&rod(at, (head, tip), slim))
    } else {
        let cone = cone(at, (head - high, head), (slim, wide));
        cone.union(&rod(at, (tip, head), slim))
    }
}

/// The keeper's screws, heads in its upper face.
fn keepers_screws(design: &Design, all: &mut Built) {
    let (screws, top) = (keeper_screws(design), design.keeper.thickness);
    for (_, at) in screws.at {
        let tip = -LENGTHS[0];
        let solid = countersunk((at.x, at.y), top, tip);
        all.screws.push(Held {
            into: "Front".to_owned(),
            through: keeper_name(design).to_owned(),
            solid,
            thread: rod((at.x, at.y), (tip, tip + 2.0), JOINING.shank / 2.0),
        });
    }
}

/// The keeper of wood and the printed one bear different names.
pub fn keeper_name(design: &Design) -> &'static str {
    match design.keeper.make {
        KeeperMake::Wood => "Keeper of wood",
        KeeperMake::Printed => "Keeper",
    }
}

fn wood(design: &Design, all: &mut Built) {
    plate(design, all);
    guides(design, all);
    if design.slider.material != Material::Printed {
        slider(design, all);
    }
    if design.keeper.make == KeeperMake::Wood {
        keeper(design, all);
    }
    if design.body.lid == LidKind::Plate {
        sides(design, all);
    }
}

/// A sheet's point in the frame of the box.
type OnBox<'a> = &'a dyn Fn(Place) -> Place;

/// The steps of the hole that a circle on a sheet stands for: the file shows where and how wide, how deep is told beside it.
fn step(design: &Design, part: WoodPart, at: Place, radius: f64) -> (HoleKind, HoleStep) {
    let all = holes(design).holes;
    let own = all.iter().filter(|hole| hole.kind.part() == part);
    let here = own.filter(|hole| (hole.centre.x - at.0).hypot(hole.centre.y - at.1) < 0.01);
    let mut steps = here.flat_map(|hole| hole.steps.iter().map(|step| (hole.kind, *step)));
    let found = steps.find(|(_, step)| (step.diameter / 2.0 - radius).abs() < 0.01);
    found.unwrap_or_else(|| panic!("{part:?}: nothing known of a hole at {at:?}, radius {radius}"))
}

/// A part out of its sheet: the outline between two heights, its circles cut as deep as they go.
fn cut(
    design: &Design,
    part: WoodPart,
    flat: &Flat,
    into: OnBox<'_>,
    (low, high): (f64, f64),
) -> Manifold {
    let outline: Vec<Place> = flat.outline[0].iter().map(|at| into(*at)).collect();
    let mut solid = prism(&outline, low, high);
    for (middle, radius, told) in &flat.circles {
        let at = into(*middle);
        let (kind, mut step) = step(design, part, at, *radius);
        // that of a pin counts from its finger
        if let Some(deep) = told
            && !matches!(kind, HoleKind::Pin(_))
        {
            step.depth = Depth::Blind(*deep);
        }
        let tool = match (step.tool, step.depth) {
            (Tool::Countersink, Depth::Blind(deep)) => {
                cone(at, (high - deep, high), ((radius - deep).max(0.1), *radius))
            }
            (Tool::CountersinkBelow, Depth::Blind(deep)) => {
                cone(at, (low, low + deep), (*radius, (radius - deep).max(0.1)))
            }
            (_, Depth::Through(_)) => rod(at, (low - 1.0, high + 1.0), *radius),
            (_, Depth::Blind(deep)) => match kind {
                HoleKind::GuideScrew(..) => rod(at, (low - 1.0, low + deep), *radius),
                HoleKind::Pin(dial) => {
                    let finger = high - design.dials[dial].pin.free;
                    rod(at, (finger - deep, high + 1.0), *radius)
                }
                _ => rod(at, (high - deep, high + 1.0), *radius),
            },
        };
        solid = solid.difference(&tool);
    }
    solid
}

fn plate(design: &Design, all: &mut Built) {
    let plate = &design.plate;
    let flat = flat(design, TemplateKind::PlateBack).expect("a plate");
    let into = |(x, y): Place| (plate.width / 2.0 - x, y);
    let ends = (0.0, plate.thickness);
    let mut solid = cut(design, WoodPart::Plate, &flat, &into, ends);
    for slot in &flat.slots {
        let points: Vec<Place> = slot.iter().map(|at| into(*at)).collect();
        solid = solid.difference(&prism(&points, -1.0, plate.thickness + 1.0));
    }
    for (pocket, told) in &flat.pockets {
        if told.is_none() && flat.tells_depths() {
            continue;
        }
        let points: Vec<Place> = pocket.iter().map(|at| into(*at)).collect();
        let [_, front, _, back] = bounds(&points);
        // the hinges' mortises run out at the back, the rabbet lies over the keeper
        let deep = if back > plate.depth - 0.01 {
            design.body.hinge.thickness
        } else if front < design.keeper.edge {
            plate.rabbet
        } else {
            continue;
        };
        let deep = told.unwrap_or(deep);
        solid = solid.difference(&prism(&points, -1.0, deep));
    }
    all.add("Plate", Goes::Lid, solid);
}

fn guides(design: &Design, all: &mut Built) {
    let guide = guide(design);
    for strip in guide.strips {
        let (low, high) = (strip.area.min, strip.area.max);
        let solid = block([low.x, low.y, -strip.height], [high.x, high.y, 0.0]);
        let name = match strip.hand {
            Hand::Left => "Left strip",
            Hand::Right => "Right strip",
        };
        all.add(name, Goes::Lid, solid);
    }
    for bridge in guide.bridges {
        let (low, high) = (bridge.area.min, bridge.area.max);
        let top = -guide.strips[0].height;
        let solid = block(
            [low.x, low.y, top - bridge.thickness],
            [high.x, high.y, top],
        );
        let name = match bridge.end {
            BridgeEnd::Front => "Front bridge",
            BridgeEnd::Back => "Back bridge",
        };
        all.add(name, Goes::Lid, solid);
    }
}

fn slider(design: &Design, all: &mut Built) {
    let slider = &design.slider;
    let flat = flat(design, TemplateKind::Slider).expect("a slider");
    let body = SliderBody::of(design);
    let corner = body.extent(design).min;
    let into = |(x, y): Place| (x + corner.x, y + corner.y);
    let top = -slider.below;
    let ends = (top - slider.thickness, top);
    let mut solid = cut(design, WoodPart::Slider, &flat, &into, ends);
    for (pocket, told) in &flat.pockets {
        if let Some(deep) = told {
            let points: Vec<Place> = pocket.iter().map(|at| into(*at)).collect();
            solid = solid.difference(&prism(&points, top - deep, 1.0));
        }
    }
    let fingers = body.fingers(design).into_iter();
    for finger in fingers.filter(|_| !flat.tells_depths()) {
        solid = solid.difference(&block(
            [finger.area.min.x - 2.0, finger.area.min.y, -finger.top],
            [finger.area.max.x + 2.0, finger.area.max.y + 1.0, 1.0],
        ));
    }
    all.add("Slider of wood", Goes::Slider, solid);
}

fn keeper(design: &Design, all: &mut Built) {
    let keeper = &design.keeper;
    let flat = flat(design, TemplateKind::Keeper).expect("a keeper");
    let (left, front) = (
        design.tab.at - keeper.width / 2.0,
        keeper.edge - keeper.depth,
    );
    let into = |(x, y): Place| (x + left, y + front);
    let solid = cut(
        design,
        WoodPart::Keeper,
        &flat,
        &into,
        (0.0, keeper.thickness),
    );
    all.add(keeper_name(design), Goes::Body, solid);
}

fn sides(design: &Design, all: &mut Built) {
    let (thick, inside) = (design.body.thickness, &design.inside);
    let front = front_side(design).expect("a front");
    let back = (design.plate.depth - thick, design.plate.depth);
    let half = inside.width / 2.0;
    let sheet = |place| {
        let flat = flat(design, TemplateKind::Side(place)).expect("a side");
        let [left, low, right, high] = bounds(&flat.outline[0]);
        (right - left, high - low)
    };
    let (long, high) = sheet(SidePlace::Front);
    let mut solid = block(
        [-long / 2.0, front.from, -high],
        [long / 2.0, front.to, 0.0],
    );
    if let Some(notch) = joinery(design).notch {
        let low = [
            notch.left - long / 2.0,
            front.to - notch.into - if notch.left_in_front <= 0.0 { 1.0 } else { 0.0 },
            -notch.depth,
        ];
        let high = [notch.right - long / 2.0, front.to + 1.0, 1.0];
        solid = solid.difference(&block(low, high));
    }
    all.add("Front", Goes::Body, solid);
    let (long, high) = sheet(SidePlace::Back);
    let solid = block([-long / 2.0, back.0, -high], [long / 2.0, back.1, 0.0]);
    all.add("Back", Goes::Body, solid);
    for (name, place, side) in [
        ("Left side", SidePlace::Left, -1.0),
        ("Right side", SidePlace::Right, 1.0),
    ] {
        let (_, high) = sheet(place);
        let (near, far) = (side * half, side * (half + thick));
        let solid = block(
            [near.min(far), front.to, -high],
            [near.max(far), back.0, 0.0],
        );
        all.add(name, Goes::Body, solid);
    }
}

/// Where something goes, mm.
pub fn by(x: f64, y: f64, z: f64) -> Vec3 {
    Vec3::new(x, y, z)
}
