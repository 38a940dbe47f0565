//! In a design that is called proven no two parts meet, nothing off, over the whole travel and every
//! turn of the dials: looked at place by place, with shapes as they are drawn and cut.
//!
//! A disc counts as a full round, so that every turn of it is looked at; only beside its own finger
//! and pin, which go into its slot, it counts as it stands at the digit.
//!
//! Pairs that are looked at: bar, neck and pins against discs, fingers below them; fingers against one another;
//! discs against discs; knobs against knobs and the finger knob; the finger knob's shank against
//! bores, the keeper in its rabbet and the slider that carries it; bores against bores and the
//! keeper; bar against the front of the box; the tab against the keeper as the lid swings up; the
//! guide's strips against slider, discs, the keeper's rabbet and the keeper as the lid swings up. In
//! proposals also discs, strips and slider against the sides of the box.
//!
//! Pairs that are not: the guide's bridges, which have no place of their own in a design; knobs against the sides of a lid that is cut off as a band; screws.

use std::ops::ControlFlow;

use geo::{Area, BooleanOps, Coord, LineString, MultiPolygon, Polygon};
use latchwright_drawing::{
    Outline, Rect, disc_outlines, slider_crossbar, slider_fingers, slider_outline,
};
use latchwright_model::Design;
use latchwright_proof::prove;
use latchwright_proof::slider_body::{STRIP, front_inside, strips};
use latchwright_search::propose::{DialWish, Outcome, Wishes, propose};
use latchwright_session::demos::DEMOS;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// Places of the slider that are looked at on its way.
const PLACES: u32 = 40;
/// Curves are broken into chords this near to them, mm.
const CHORD: f64 = 0.002;
/// Overlaps below this come from the chords, mm².
const SLIVER: f64 = 0.05;

/// The least room found of each pair, mm; below 0 the two meet.
#[derive(Default)]
struct Rooms(Vec<(&'static str, f64)>);

impl Rooms {
    fn say(&mut self, pair: &'static str, room: f64) {
        match self.0.iter_mut().find(|(name, _)| *name == pair) {
            Some((_, least)) => *least = least.min(room),
            None => self.0.push((pair, room)),
        }
    }

    fn met(&self) -> Vec<(&'static str, f64)> {
        let met = self.0.iter().filter(|(_, room)| *room < -1e-9);
        met.copied().collect()
    }
}

/// From a round to a rectangle, mm.
fn apart((x, y): (f64, f64), radius: f64, rect: Rect) -> f64 {
    let aside = (rect.min.x - x).max(x - rect.max.x).max(0.0);
    let along = (rect.min.y - y).max(y - rect.max.y).max(0.0);
    aside.hypot(along) - radius
}

fn between(one: (f64, f64), other: (f64, f64)) -> f64 {
    (one.0 - other.0).hypot(one.1 - other.1)
}

fn polygon(outline: &Outline) -> Polygon<f64> {
    let points = outline.flatten(CHORD);
    let points: Vec<Coord<f64>> = points.iter().map(|at| Coord { x: at.x, y: at.y }).collect();
    Polygon::new(LineString::new(points), Vec::new())
}

/// Area that the slider's pins share with the discs at their digits, mm².
fn shared_at_the_digits(design: &Design, travel: f64) -> f64 {
    let shared = design.dials.iter().map(|dial| {
        let (x, y) = dial.pin_at();
        let radius = dial.pin.diameter / 2.0;
        let at = |step: u32| {
            let turn = f64::from(step) * std::f64::consts::TAU / 360.0;
            Coord {
                x: x + radius * turn.cos(),
                y: y + travel + radius * turn.sin(),
            }
        };
        let pin = Polygon::new(LineString::new((0..360).map(at).collect()), Vec::new());
        let placed = disc_outlines(dial, 0.0);
        let (x, y) = dial.centre;
        let placed = placed.iter().map(|outline| {
            let mut polygon = polygon(outline);
            polygon.exterior_mut(|line| {
                for at in &mut line.0 {
                    (at.x, at.y) = (at.x + x, at.y + y);
                }
            });
            polygon
        });
        let disc = MultiPolygon::new(placed.collect());
        MultiPolygon::new(vec![pin])
            .intersection(&disc)
            .unsigned_area()
    });
    shared.sum()
}

/// All that goes with the slider, at one place of it.
fn on_its_way(design: &Design, travel: f64, rooms: &mut Rooms) {
    let slider = &design.slider;
    let bar = slider_crossbar(design, travel);
    let tip = design.keeper.edge - design.tab.engagement + travel;
    let half = design.tab.width / 2.0;
    let mut neck = bar;
    (neck.min.x, neck.max.x) = (design.tab.at - half, design.tab.at + half);
    neck.min.y = tip;
    let pull = (slider.pull_at, slider.guide_at.1 + travel);
    for dial in &design.dials {
        let own = dial.pin_at();
        let (at, radius) = (dial.centre, dial.disc.radius);
        rooms.say("bar and disc", apart(at, radius, bar));
        rooms.say("neck and disc", apart(at, radius, neck));
        // a finger is wider than any slot and runs below all discs
        for pin in design.dials.iter().map(|dial| &dial.pin) {
            let over = slider.below + pin.free - dial.disc.below - dial.disc.thickness;
            rooms.say("finger and disc", over);
        }
        for other in design.dials.iter().filter(|other| other.pin_at() != own) {
            let (x, y) = other.pin_at();
            let solid = radius + other.pin.diameter / 2.0;
            rooms.say("pin and other disc", between(at, (x, y + travel)) - solid);
        }
        let apart = between(at, pull);
        let knobs = f64::midpoint(slider.finger_knob(), dial.knob.diameter);
        let holes = f64::midpoint(slider.shank, dial.bore.diameter);
        rooms.say("finger knob and knob", apart - knobs);
        rooms.say("shank and bore", apart - holes);
    }
    rooms.say(
        "shank and keeper",
        apart(pull, slider.shank / 2.0, keeper(design)),
    );
    let on = |wood: Rect| {
        let x = (pull.0 - wood.min.x).min(wood.max.x - pull.0);
        x.min(pull.1 - wood.min.y).min(wood.max.y - pull.1) - slider.shank / 2.0
    };
    rooms.say("shank on the slider", on(bar).max(on(neck)));
    rooms.say(
        "slider and discs at the digits",
        SLIVER - shared_at_the_digits(design, travel),
    );
}

/// The strips that lead the neck, each as wide as it is cut.
fn guide_strips(design: &Design) -> [Rect; 2] {
    let (front, back) = strips(design);
    let inner = design.tab.width / 2.0 + design.slider.guide_play;
    [-inner - STRIP, inner].map(|x| {
        let mut rect = slider_crossbar(design, 0.0);
        (rect.min.x, rect.max.x) = (design.tab.at + x, design.tab.at + x + STRIP);
        (rect.min.y, rect.max.y) = (front, back);
        rect
    })
}

/// The strips against all that goes with the slider, the discs and the keeper.
fn beside_strips(design: &Design, rooms: &mut Rooms) {
    let hangs = design.slider.below + design.slider.thickness;
    for strip in guide_strips(design) {
        let corners = [strip.min, strip.max];
        let outline = Polygon::new(
            LineString::from(vec![
                (corners[0].x, corners[0].y),
                (corners[1].x, corners[0].y),
                (corners[1].x, corners[1].y),
                (corners[0].x, corners[1].y),
            ]),
            Vec::new(),
        );
        for place in 0..=PLACES {
            let travel = design.slider.travel * f64::from(place) / f64::from(PLACES);
            let slider = polygon(&slider_outline(design, travel));
            let shared = outline.intersection(&slider).unsigned_area();
            rooms.say("strip and slider", SLIVER - shared);
        }
        for dial in &design.dials {
            rooms.say(
                "strip and disc",
                apart(dial.centre, dial.disc.radius, strip),
            );
        }
        let behind = strip.min.y - design.keeper.edge;
        // as deep as the rabbet is cut for the keeper
        rooms.say("strip and rabbet", behind - 1.5);
        let arm = design.plate.depth - strip.min.y;
        let swing = arm.hypot(hangs) - arm;
        rooms.say("strip and keeper as the lid swings", behind - swing);
    }
}

/// The keeper with the rabbet that is cut for it, out to the front.
fn keeper(design: &Design) -> Rect {
    let keeper = &design.keeper;
    let mut rect = slider_crossbar(design, 0.0);
    let half = keeper.width / 2.0;
    (rect.min.x, rect.max.x) = (design.tab.at - half, design.tab.at + half);
    (rect.min.y, rect.max.y) = ((keeper.edge - keeper.depth).min(0.0), keeper.edge);
    rect
}

/// The least room of every pair.
fn rooms(design: &Design) -> Rooms {
    let mut rooms = Rooms::default();
    let slider = &design.slider;
    for place in 0..=PLACES {
        let travel = slider.travel * f64::from(place) / f64::from(PLACES);
        on_its_way(design, travel, &mut rooms);
    }
    for (number, one) in design.dials.iter().enumerate() {
        let hole = one.bore.diameter / 2.0;
        rooms.say("bore and keeper", apart(one.centre, hole, keeper(design)));
        for other in design.dials.iter().skip(number + 1) {
            let apart = between(one.centre, other.centre);
            rooms.say("disc and disc", apart - one.disc.radius - other.disc.radius);
            let knobs = f64::midpoint(one.knob.diameter, other.knob.diameter);
            rooms.say("knob and knob", apart - knobs);
            let bores = f64::midpoint(one.bore.diameter, other.bore.diameter);
            rooms.say("bore and bore", apart - bores);
        }
    }
    // a finger that would meet its neighbour is left out of the drawing
    let fingers = slider_fingers(design, 0.0).len();
    let missing = design.dials.len() - fingers;
    rooms.say("finger and finger", 0.0 - missing as f64);
    beside_strips(design, &mut rooms);
    let bar = slider_crossbar(design, 0.0);
    rooms.say("bar and front", bar.min.y - front_inside(design));
    let hangs = slider.below + slider.thickness;
    let tip = design.keeper.edge - design.tab.engagement + slider.travel;
    let arm = design.plate.depth - tip;
    let swing = arm.hypot(hangs) - arm;
    rooms.say(
        "tab and keeper as the lid swings",
        tip - design.keeper.edge - swing,
    );
    rooms
}

/// Discs and slider against the sides of the box, and the back.
fn in_the_box(design: &Design, rooms: &mut Rooms) {
    let front = front_inside(design);
    let (back, half) = (front + design.inside.depth, design.inside.width / 2.0);
    for dial in &design.dials {
        let (x, y) = dial.centre;
        let room = (half - x.abs()).min(back - y).min(y - front);
        rooms.say("disc and side", room - dial.disc.radius);
    }
    for strip in guide_strips(design) {
        let aside = strip.max.x.max(-strip.min.x);
        rooms.say("strip and side", half - aside);
    }
    let reach = slider_outline(design, design.slider.travel).extent();
    let aside = reach.max.x.max(-reach.min.x);
    rooms.say("slider and side", (half - aside).min(back - reach.max.y));
}

/// What some maker, careless or careful, might wish for.
fn wishes(seed: u64) -> Wishes {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let mut base = Design::default();
    let haste: f64 = rng.random_range(0.3..1.4);
    let work = &mut base.workmanship;
    for error in [
        &mut work.pin_place,
        &mut work.bore_place,
        &mut work.keeper_place,
        &mut work.print,
        &mut work.film_spread,
        &mut work.reading,
    ] {
        *error *= haste;
    }
    let (width, depth) = (rng.random_range(90.0..400.0), rng.random_range(70.0..300.0));
    let mut wishes = Wishes::of(base).with_lid(f64::round(width), f64::round(depth));
    let dials = rng.random_range(1..=8);
    let marks = (0..dials).map(|_| DialWish::numbered(rng.random_range(4..=24)));
    wishes.dials = marks.collect();
    wishes.pins = vec![3.0, 4.0, 5.0, 6.0, 8.0];
    wishes
}

#[test]
fn no_parts_meet_in_the_designs_that_come_with_the_program() {
    let demos = DEMOS.iter().map(|demo| (demo.name, demo.design().unwrap()));
    for (name, design) in demos.chain([("the first design", Design::default())]) {
        let mut rooms = rooms(&design);
        in_the_box(&design, &mut rooms);
        if prove(&design).proven {
            assert_eq!(rooms.met(), Vec::new(), "{name}");
        } else {
            assert_eq!(name, "two-ways");
        }
    }
}

#[test]
fn no_parts_meet_in_any_proposal() {
    let mut proposals = 0;
    for seed in 0..40 {
        let wishes = wishes(seed);
        let Outcome::Found(found) = propose(&wishes, &mut |_| ControlFlow::Continue(())) else {
            continue;
        };
        for proposal in found {
            proposals += 1;
            assert!(prove(&proposal.design).proven, "{seed} {:?}", proposal.kind);
            let mut rooms = rooms(&proposal.design);
            in_the_box(&proposal.design, &mut rooms);
            assert_eq!(rooms.met(), Vec::new(), "{seed} {:?}", proposal.kind);
        }
    }
    assert!(proposals > 25, "{proposals}");
}

/// The first design with a few of its sizes changed by hand, anyhow.
fn changed_by_hand(seed: u64) -> Design {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let mut design = Design::default();
    (design.plate.depth, design.inside.depth) = (200.0, 176.0);
    let slider = &mut design.slider;
    (slider.guide_length, slider.guide_play, slider.guide_at.1) = (15.0, 0.05, 25.0);
    for _ in 0..rng.random_range(1..=3) {
        let dial = rng.random_range(0..3);
        let by: f64 = rng.random_range(-1.0..1.0);
        match rng.random_range(0..12) {
            0 => design.dials[dial].centre.0 += 40.0 * by,
            1 => design.dials[dial].centre.1 += 60.0 * by,
            2 => design.dials[dial].disc.radius += 4.0 * by,
            3 => design.slider.pull_at += 40.0 * by,
            4 => design.slider.guide_at.1 += 30.0 * by,
            5 => design.slider.guide_length += 20.0 * by,
            6 => design.keeper.edge += 20.0 * by,
            7 => design.tab.engagement += by,
            8 => design.slider.travel += 1.5 * by,
            9 => design.tab.at += 30.0 * by,
            10 => design.tab.width += 20.0 * by,
            _ => design.dials[dial].knob.diameter += 20.0 * by,
        }
    }
    design
}

#[test]
fn no_parts_meet_in_what_is_changed_by_hand_and_still_proven() {
    let mut proven = 0;
    for seed in 0..400 {
        let design = changed_by_hand(seed);
        if prove(&design).proven {
            proven += 1;
            assert_eq!(rooms(&design).met(), Vec::new(), "{seed}");
        }
    }
    assert!(proven > 40, "{proven}");
}

/// One size changed by hand, so that two parts meet.
type Spoil = fn(&mut Design);

#[test]
fn a_design_whose_parts_meet_is_not_proven() {
    let spoilt: [(&str, &str, Spoil); 10] = [
        ("finger and disc", "disc-to-finger", |d| {
            d.dials[2].pin.free = 6.0;
        }),
        ("finger and finger", "finger-to-finger", |d| {
            (d.plate.depth, d.inside.depth) = (260.0, 236.0);
            d.dials[1].centre = (d.dials[0].centre.0, 170.0);
        }),
        ("shank on the slider", "finger-knob-seat", |d| {
            d.slider.pull_at = 30.0;
        }),
        ("shank on the slider", "finger-knob-seat", |d| {
            d.dials[0].centre.1 = 62.0;
        }),
        ("shank and keeper", "guide-slot-to-keeper", |d| {
            d.slider.guide_at.1 = 17.0;
        }),
        ("strip and slider", "strips-to-bar", |d| {
            d.slider.guide_at.1 += 8.0;
        }),
        ("strip and rabbet", "strips-to-keeper", |d| {
            d.slider.guide_at.1 -= 2.0;
        }),
        ("bar and front", "bar-room", |d| d.dials[0].centre.1 = 51.0),
        ("bar and disc", "bar-room", |d| d.dials[0].centre.1 = 40.0),
        ("tab and keeper as the lid swings", "swings-clear", |d| {
            d.tab.engagement = 10.8;
        }),
    ];
    for (pair, check, spoil) in spoilt {
        let mut design = Design::default();
        spoil(&mut design);
        let met = rooms(&design).met();
        assert!(met.iter().any(|(name, _)| *name == pair), "{pair}: {met:?}");
        let proof = prove(&design);
        assert!(!proof.proven, "{pair}");
        let found = proof.checks.iter().find(|found| found.kind.code() == check);
        assert!(
            found.is_some_and(|found| found.margin < 0.0),
            "{pair}: {check}"
        );
    }
}
