//! The box is moved in all its ways, and what meets is told.

use latchwright_model::slot::slot_turn_deg;
use latchwright_model::{Design, LidKind};
use latchwright_proof::contact::{PinPath, reach};
use manifold_rust::manifold::Manifold;

use crate::built::{Built, Goes, Piece, by};

/// What two parts may share, mm³.
const MOST: f64 = 0.01;
/// How much before its nominal stop a pin is looked at, mm.
const BEFORE: f64 = 0.06;
/// How far behind it there is material for certain, mm: prints are drawn a little smaller than they come out.
const BEHIND: f64 = 0.6;

/// What was found.
#[derive(Default)]
pub struct Found {
    /// What meets, with where; nothing in a box that works.
    pub wrong: Vec<String>,
    /// How many pairs were near enough to be looked at.
    pub looked_at: usize,
}

impl Found {
    fn look(&mut self, one: (&str, &Manifold), other: (&str, &Manifold), at: &str) {
        if !near(one.1, other.1) {
            return;
        }
        self.looked_at += 1;
        let shared = one.1.intersection(other.1).volume();
        if shared > MOST {
            let (one, other) = (one.0, other.0);
            self.wrong
                .push(format!("{one} and {other} share {shared:.3} mm³ {at}"));
        }
    }
}

fn near(one: &Manifold, other: &Manifold) -> bool {
    let (a, b) = (one.bounding_box(), other.bounding_box());
    let apart = |low: f64, high: f64| low > high - 1e-6;
    !(apart(a.min.x, b.max.x)
        || apart(b.min.x, a.max.x)
        || apart(a.min.y, b.max.y)
        || apart(b.min.y, a.max.y)
        || apart(a.min.z, b.max.z)
        || apart(b.min.z, a.max.z))
}

/// A solid turned about an upright line, degrees counter-clockwise seen from outside.
pub fn turned(solid: &Manifold, (x, y): (f64, f64), degrees: f64) -> Manifold {
    let home = solid.translate(by(-x, -y, 0.0));
    home.rotate(0.0, 0.0, degrees).translate(by(x, y, 0.0))
}

/// All that is wrong with a box as it is moved in all its ways.
pub fn walk(design: &Design, built: &Built) -> Found {
    let mut found = Found::default();
    at_rest(built, &mut found);
    screws(built, &mut found);
    travel(design, built, &mut found);
    round(design, built, &mut found);
    seats(design, built, &mut found);
    wrong_marks(design, built, &mut found);
    if design.body.lid == LidKind::Plate {
        lid(design, built, &mut found);
    }
    found
}

/// Whether two parts are meant to be fast in one another: a rod in its hole.
fn fast(one: &Piece, other: &Piece) -> bool {
    let rod = |piece: &Piece| piece.name.starts_with("Rod") || piece.name.starts_with("Pin");
    let slider = |piece: &Piece| piece.name.starts_with("Slider") && piece.name != "Slider knob";
    rod(one) && slider(other) || rod(other) && slider(one)
}

/// Every pair in the shut box.
fn at_rest(built: &Built, found: &mut Found) {
    for (index, one) in built.pieces.iter().enumerate() {
        for other in &built.pieces[index + 1..] {
            if !fast(one, other) {
                let solids = ((&*one.name, &one.solid), (&*other.name, &other.solid));
                found.look(solids.0, solids.1, "in the shut box");
            }
        }
    }
}

/// Each screw is free in what it goes through and has thread in what holds it.
fn screws(built: &Built, found: &mut Found) {
    for screw in &built.screws {
        let of = |name: &str| built.pieces.iter().find(|piece| piece.name == name);
        if let Some(through) = of(&screw.through) {
            let own = ("its screw", &screw.solid);
            found.look((&through.name, &through.solid), own, "at rest");
        }
        // over 2 mm a No. 4 displaces 2 mm³ or so beside its pilot
        if let Some(into) = of(&screw.into)
            && into.solid.intersection(&screw.thread).volume() < 0.5
        {
            let (screw, into) = (&screw.through, &into.name);
            found
                .wrong
                .push(format!("the screw through {screw} has no thread in {into}"));
        }
    }
}

/// The slider goes back with the right setting.
fn travel(design: &Design, built: &Built, found: &mut Found) {
    let moving = || built.pieces.iter().filter(|p| p.goes == Goes::Slider);
    let mut u = 0.5;
    while u <= design.slider.travel + 1e-9 {
        for piece in moving() {
            let moved = piece.solid.translate(by(0.0, u, 0.0));
            for other in built.pieces.iter().filter(|p| p.goes != Goes::Slider) {
                let at = format!("at u = {u}");
                found.look((&piece.name, &moved), (&other.name, &other.solid), &at);
            }
        }
        u += 0.5;
    }
}

/// Every dial goes round while the slider is forward.
fn round(design: &Design, built: &Built, found: &mut Found) {
    for (index, dial) in design.dials.iter().enumerate() {
        let own = |piece: &&Piece| piece.goes == Goes::Dial(index);
        for piece in built.pieces.iter().filter(own) {
            for step in 1..24 {
                let degrees = 15.0 * f64::from(step);
                let moved = turned(&piece.solid, dial.centre, degrees);
                for other in built.pieces.iter().filter(|piece| !own(piece)) {
                    let at = format!("with the dial at {degrees}°");
                    found.look((&piece.name, &moved), (&other.name, &other.solid), &at);
                }
            }
        }
    }
}

/// Each knob seats on its disc at every mark.
fn seats(design: &Design, built: &Built, found: &mut Found) {
    for (index, dial) in design.dials.iter().enumerate() {
        let (disc, knob) = pair(built, index);
        for mark in 1..dial.positions {
            let degrees = dial.step_deg() * f64::from(mark);
            let moved = turned(&disc.solid, dial.centre, degrees);
            let at = format!("in the seat of mark {mark}");
            found.look((&disc.name, &moved), (&knob.name, &knob.solid), &at);
        }
    }
}

/// Disc and knob of a dial.
pub fn pair(built: &Built, index: usize) -> (&Piece, &Piece) {
    let of = |what: &str| {
        let name = format!("{what} {}", index + 1);
        let found = built.pieces.iter().find(|piece| piece.name == name);
        found.unwrap_or_else(|| panic!("no {name}"))
    };
    (of("Disc"), of("Knob"))
}

/// At each mark the slider comes as far as the proof says that its pin does, and no further.
fn wrong_marks(design: &Design, built: &Built, found: &mut Found) {
    let travel = design.slider.travel;
    for (index, dial) in design.dials.iter().enumerate() {
        let (disc, _) = pair(built, index);
        let digit = design.combination.get(index).copied().unwrap_or(0);
        for mark in 0..dial.positions {
            let turn = slot_turn_deg(dial, digit, mark);
            let stop = reach(dial, PinPath::nominal(dial, travel), turn).travel;
            if stop >= travel {
                continue;
            }
            let moved = turned(&disc.solid, dial.centre, -turn);
            let mut shared = 0.0;
            for piece in built.pieces.iter().filter(|p| p.goes == Goes::Slider) {
                let before = piece.solid.translate(by(0.0, stop - BEFORE, 0.0));
                let at = format!("before the stop at mark {mark}, u = {stop:.3}");
                found.look((&piece.name, &before), (&disc.name, &moved), &at);
                let behind = piece.solid.translate(by(0.0, stop + BEHIND, 0.0));
                if near(&behind, &moved) {
                    shared += behind.intersection(&moved).volume();
                }
            }
            if stop + BEHIND < travel && shared < MOST {
                let name = &disc.name;
                found
                    .wrong
                    .push(format!("nothing stops the slider at mark {mark} of {name}"));
            }
        }
    }
}

/// The lid swings up with the slider back.
fn lid(design: &Design, built: &Built, found: &mut Found) {
    let hinge = by(0.0, -design.plate.depth, 0.0);
    let fine = (0..=10).map(|step| f64::from(step) * 0.5);
    let coarse = (0..11).map(|step| 10.0 + 10.0 * f64::from(step));
    let angles: Vec<f64> = fine.chain(coarse).collect();
    for piece in built.pieces.iter().filter(|p| p.goes != Goes::Body) {
        let back = match piece.goes {
            Goes::Slider => design.slider.travel,
            _ => 0.0,
        };
        let home = piece.solid.translate(by(0.0, back, 0.0)).translate(hinge);
        for degrees in &angles {
            let moved = home
                .rotate(-degrees, 0.0, 0.0)
                .translate(by(0.0, design.plate.depth, 0.0));
            for other in built.pieces.iter().filter(|p| p.goes == Goes::Body) {
                let at = format!("with the lid {degrees}° up");
                found.look((&piece.name, &moved), (&other.name, &other.solid), &at);
            }
        }
    }
}
