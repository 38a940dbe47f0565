//! Post, star and slot, cut out of the meshes again, fit as the solver takes it that they do.

mod random;

use latchwright_drawing::{Ink, Shape, disc_from_back};
use latchwright_geometry::{Point, trig};
use latchwright_model::key::backlash;
use latchwright_model::{Design, Dial, Printer};
use latchwright_proof::contact::{PinPath, reach};
use latchwright_solids::part::Kind;
use latchwright_solids::slice::section;
use latchwright_solids::{Options, Outline, Part, Region, parts};

/// A printer and a maker without fault: then what is drawn is what is finished.
fn exact(mut design: Design) -> Design {
    design.workmanship.film = 0.0;
    design.bench.printer = Printer {
        holes: Vec::new(),
        outside: 0.0,
        foot: 0.0,
        corner: 0.0,
        layer: 0.01,
        ..design.bench.printer
    };
    design
}

fn plain() -> Options {
    Options {
        leave_out: vec![Kind::Ring, Kind::Jig, Kind::Gauge],
        screwed: false,
        ..Options::default()
    }
}

fn of<'a>(parts: &'a [Part], name: &str) -> &'a Part {
    parts
        .iter()
        .find(|part| part.name == name)
        .expect("a part of that name")
}

/// The outline of the post, a little below its top chamfer, about the disc's middle.
fn post(disc: &Part) -> Outline {
    let top = disc.mesh.extent().high[2];
    let cut = section(&disc.mesh, top - 2.0);
    assert_eq!(cut.outlines().len(), 1);
    cut.outlines()[0].clone()
}

/// The star, above the flare at its mouth: the hole in the knob's section.
fn star(knob: &Part) -> Outline {
    let cut = section(&knob.mesh, 2.0);
    let holes: Vec<&Outline> = cut
        .outlines()
        .iter()
        .filter(|outline| outline.signed_area() < 0.0)
        .collect();
    assert_eq!(holes.len(), 1);
    holes[0].clone().reversed()
}

/// Whether `point` is in the star or no more than `slack` outside it: by crossing number.
fn holds(star: &Outline, point: Point, slack: f64) -> bool {
    let mut inside = false;
    for (a, b) in star.edges() {
        if (a.y > point.y) != (b.y > point.y) {
            let x = a.x + (b.x - a.x) * (point.y - a.y) / (b.y - a.y);
            inside ^= x > point.x;
        }
    }
    inside || Region::from(star.clone()).distance(point) < slack
}

/// Whether the post, turned by `degrees` clockwise, goes into the star: all its corners, and all
/// corners of the star that stand inwards stay outside the post.
fn sits(post: &Outline, star: &Outline, degrees: f64) -> bool {
    let turned = post.turned(-trig::radians(degrees));
    let slack = 2e-4;
    let inwards = |point: &Point| {
        holds(&turned, *point, 0.0) && Region::from(turned.clone()).distance(*point) > slack
    };
    turned
        .points()
        .iter()
        .all(|point| holds(star, *point, slack))
        && !star.points().iter().any(inwards)
}

fn check_key(dial: &Dial, parts: &[Part]) {
    let (post, star) = (post(of(parts, "Disc 1")), star(of(parts, "Knob 1")));
    let step = dial.step_deg();
    let play = trig::degrees(backlash(
        dial.key.sides,
        dial.key.apothem,
        dial.key.clearance,
    ));
    // once round: at every mark it sits, halfway between two it does not
    for mark in 0..dial.positions {
        let seat = step * f64::from(mark);
        assert!(sits(&post, &star, seat), "mark {mark}");
        assert!(!sits(&post, &star, seat + step / 2.0), "past mark {mark}");
    }
    // and it turns as far as the solver says
    let (mut free, mut stuck) = (0.0, step / 2.0);
    for _ in 0..40 {
        let middle = f64::midpoint(free, stuck);
        if sits(&post, &star, middle) {
            free = middle;
        } else {
            stuck = middle;
        }
    }
    assert!((free - play).abs() < 0.02, "{free} against {play}");
}

#[test]
fn the_post_sits_in_the_star_in_exactly_as_many_ways_as_there_are_marks() {
    for (positions, sides) in [(8, 4), (12, 4), (16, 4), (9, 3), (12, 6), (10, 5), (4, 4)] {
        let mut design = exact(Design::default());
        design.dials.truncate(1);
        design.combination.truncate(1);
        design.dials[0].positions = positions;
        design.dials[0].key.sides = sides;
        design.dials[0].bore.diameter = 18.0;
        let parts = parts(&design, &plain()).unwrap();
        check_key(&design.dials[0], &parts);
    }
}

/// How far the pin gets against the outline of the meshed disc turned clockwise by `degrees`:
/// where the ray first comes as near as the pin's radius, by halving the first unsafe step.
fn reach_in_mesh(disc: &Region, path: PinPath, degrees: f64) -> f64 {
    let turned = disc.each(|outline| outline.turned(-trig::radians(degrees)));
    let at = |travel: f64| Point::new(path.aside, travel - path.below);
    let mut travel = 0.0;
    // no point of the outline is nearer than its distance: that far the pin may go
    for _ in 0..10_000 {
        let free = turned.distance(at(travel)) - path.radius;
        if free < 1e-4 {
            break;
        }
        travel += free;
        if travel >= path.travel {
            return path.travel;
        }
    }
    travel
}

#[test]
fn the_slot_in_the_mesh_gives_the_solvers_reach() {
    let mut worst = 0.0_f64;
    let mut compared = 0;
    for seed in 0..30 {
        let (design, _) = random::design(seed);
        let design = exact(design);
        let Ok(parts) = parts(&design, &plain()) else {
            continue;
        };
        let dial = &design.dials[0];
        let disc = section(&of(&parts, "Disc 1").mesh, dial.disc.thickness / 2.0);
        for aside in [-1.0, 0.0, 0.6] {
            let mut path = PinPath::nominal(dial, design.slider.travel);
            path.aside = aside;
            for turn in [0.0, 3.0, 6.5, 11.0, 17.0, 45.0, 180.0, 355.0] {
                let solver = reach(dial, path, turn).travel;
                let mesh = reach_in_mesh(&disc, path, turn);
                // a pin that only just passes a corner, or only just does not, is a matter of the
                // chords; it is told by what happens a hair to the side
                let near = [-0.012, 0.012].map(|by| {
                    let mut path = path;
                    path.radius += by;
                    path.below += by;
                    reach(dial, path, turn).travel
                });
                let off = near.iter().fold((mesh - solver).abs(), |off, other| {
                    off.min((mesh - other).abs())
                });
                assert!(
                    off < 0.02,
                    "seed {seed}, aside {aside}, turn {turn}: {mesh} against {solver}"
                );
                worst = worst.max(off);
                compared += 1;
            }
        }
    }
    assert!(compared > 400, "{compared}");
    assert!(worst > 0.0, "a polyline cannot be exact");
}

#[test]
fn the_mechanisms_check_values_hold_in_the_mesh() {
    let mut design = exact(Design::default());
    design.dials.truncate(1);
    design.combination.truncate(1);
    let dial = &mut design.dials[0];
    // the sizes of the note, which are not those of the usual latch any more
    dial.pin.gap = 1.5;
    dial.disc.radius = 18.0;
    (dial.disc.slots[0].width, dial.disc.slots[0].depth) = (8.0, 9.0);
    let parts = parts(&design, &plain()).unwrap();
    let disc = section(&of(&parts, "Disc 1").mesh, 3.0);
    // design note 2: R 18, r 2, gap 1.5, travel 8, slot 8 wide, 9 deep, lead-in 1
    for (turn, aside, wanted) in [
        (0.0, 0.0, 8.0),
        (4.0, 1.0, 3.918),
        (6.0, 1.0, 2.986),
        (7.0, 0.0, 4.156),
        (10.0, 0.0, 2.5415),
        (10.0, 1.0, 1.713),
        (14.0, -1.0, 2.138),
        (14.0, 0.0, 1.559),
        (45.0, 0.0, 1.5),
        (45.0, 1.0, 1.525),
    ] {
        let mut path = PinPath::nominal(&design.dials[0], 8.0);
        path.aside = aside;
        let got = reach_in_mesh(&disc, path, turn);
        assert!(
            (got - wanted).abs() < 0.02,
            "{turn}°, {aside}: {got} against {wanted}"
        );
    }
}

/// The middle of the true slot's mouth on the paper that shows a disc from the back, as a direction.
fn slot_on_paper(dial: &Dial, mark: u32) -> Point {
    let drawing = disc_from_back(dial, mark);
    let dots = drawing
        .items
        .iter()
        .filter(|item| item.fill == Some(Ink::Movable));
    let mut centres = dots.filter_map(|item| match item.shape {
        Shape::Circle { centre, .. } => Some(centre),
        _ => None,
    });
    centres.next().expect("a true slot")
}

/// Put on for each mark, post of the disc in star of the knob with the pointer at the hinge, the slot
/// in the mesh points where the paper shows it; and no other seat takes the post.
#[test]
fn the_slot_in_the_mesh_stands_where_the_paper_for_the_bench_shows_it() {
    for (positions, sides) in [(8, 4), (12, 4), (9, 3), (6, 3)] {
        let mut design = exact(Design::default());
        design.dials.truncate(1);
        design.combination.truncate(1);
        design.dials[0].positions = positions;
        design.dials[0].key.sides = sides;
        design.dials[0].bore.diameter = 18.0;
        let parts = parts(&design, &plain()).unwrap();
        let (disc, knob) = (of(&parts, "Disc 1"), of(&parts, "Knob 1"));
        // both are used the way up they are printed, so neither is turned over in the lid
        for part in [disc, knob] {
            let pose = part.assembled.expect("a place in the lid");
            assert!(!pose.over && !pose.stood && pose.turn_deg == 0.0);
        }
        let (post, star) = (post(disc), star(knob));
        let dial = &design.dials[0];
        let level = section(&disc.mesh, dial.disc.thickness / 2.0);
        let play = backlash(dial.key.sides, dial.key.apothem, dial.key.clearance);
        let (mut seats, mut sat) = (0, sits(&post, &star, 0.5));
        // every degree once round: where it sits, it sits within the backlash of a mark
        for turn in 0..360 {
            let degrees = f64::from(turn) + 0.5;
            let step = dial.step_deg();
            let off = ((degrees / step).round() * step - degrees).abs() - trig::degrees(play);
            let sits = sits(&post, &star, -degrees);
            if off.abs() > 0.02 {
                assert_eq!(sits, off < 0.0, "{positions} of {sides} at {degrees}");
            }
            seats += u32::from(sits && !sat);
            sat = sits;
        }
        assert_eq!(seats, positions);
        for mark in 0..positions {
            // opens at this mark: with the pointer at mark 0 the slot stands that many steps
            // counter-clockwise of the pin, seen from outside
            let turned =
                level.each(|line| line.turned(trig::radians(dial.step_deg() * f64::from(mark))));
            let paper = slot_on_paper(dial, mark);
            let out = dial.disc.radius - 1.5;
            // the paper is seen from the back: left and right are changed
            let at = Point::new(-paper.x, paper.y) * (out / paper.length());
            assert!(!turned.contains(at), "mark {mark}: no slot at {at:?}");
            assert!(turned.contains(at * -1.0), "mark {mark}: material behind");
            let side = [-1.0, 1.0].map(|way| at.rotated(way * 0.45));
            assert!(
                side.iter().all(|at| turned.contains(*at)),
                "mark {mark}: its walls"
            );
        }
    }
}
