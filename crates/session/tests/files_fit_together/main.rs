//! The exported files alone, read by readers that are not ours and put together in a solid-modelling library, make a box
//! that works; and faults that are planted in them are found.
//!
//! Read are the DXF of the wooden parts and the STL of the prints. What is bought (rods, screws) and sawn to size without
//! a sheet (strips, bridges) is taken from the assembly, and so is how deep a hole goes. Parts may touch: the slider lies
//! on its bridges, discs hang from knobs, a rod fills its hole. A lid with a band is not swung here.

mod built;
mod files;
mod walk;

use latchwright_assembly::finger_knob::finger_knob;
use latchwright_assembly::slider_body::SliderBody;
use latchwright_model::{Design, KeeperMake, Material, PinMake};
use latchwright_proof::prove;
use latchwright_search::Progress;
use latchwright_search::propose::{Outcome, Proposal, Wishes, propose};
use latchwright_session::demos::DEMOS;

use built::{Built, built, by, disc_screws, keeper_name};
use files::{block, rod};
use walk::{Found, pair, turned, walk};

/// How many lids more are asked for proposals.
fn hunt() -> u32 {
    let asked = std::env::var("LATCHWRIGHT_HUNT").ok();
    asked.and_then(|times| times.parse().ok()).unwrap_or(0)
}

fn works(name: &str, design: &Design) {
    let found = walk(design, &built(design));
    assert!(found.looked_at > 50, "{name}: {} pairs", found.looked_at);
    assert!(found.wrong.is_empty(), "{name}: {:#?}", found.wrong);
}

fn printed() -> Design {
    let mut design = Design::default();
    design.slider.material = Material::Printed;
    design.keeper.make = KeeperMake::Printed;
    design.dials[0].pin.make = PinMake::PrintedStanding;
    design
}

#[test]
fn the_files_of_the_usual_box_fit_together() {
    works("the usual box", &Design::default());
}

#[test]
fn the_files_of_a_box_with_printed_slider_and_keeper_fit_together() {
    works("printed", &printed());
}

#[test]
fn the_files_of_every_demo_that_is_proven_fit_together() {
    let mut walked = 0;
    for demo in DEMOS {
        let design = demo.design().unwrap();
        if prove(&design).proven {
            works(demo.name, &design);
            walked += 1;
        }
    }
    println!("{walked} demos walked");
}

#[test]
fn the_files_of_proposals_fit_together() {
    let mut walked = 0;
    for lid in 0..=hunt() {
        let more = f64::from(lid);
        // every other lid with a printed slider and keeper
        let base = if lid % 2 == 0 {
            Design::default()
        } else {
            printed()
        };
        let wishes = Wishes::of(base);
        let wishes = wishes.with_lid(230.0 + 14.0 * more, 150.0 + 9.0 * more);
        let Outcome::Found(proposals) = propose(&wishes, &mut |_: Progress<'_, Proposal>| {
            core::ops::ControlFlow::Continue(())
        }) else {
            continue;
        };
        let most = if hunt() == 0 { 3 } else { proposals.len() };
        for proposal in proposals.iter().take(most) {
            works(&format!("lid {lid}, {:?}", proposal.kind), &proposal.design);
            walked += 1;
        }
    }
    println!("{walked} proposals walked");
    assert!(walked > 0, "no lid has a proposal");
}

#[test]
fn between_two_seats_a_disc_does_not_go_into_its_knob() {
    let design = Design::default();
    let box_ = built(&design);
    let dial = &design.dials[0];
    let (disc, knob) = pair(&box_, 0);
    let between = turned(&disc.solid, dial.centre, dial.step_deg() / 2.0);
    assert!(between.intersection(&knob.solid).volume() > 1.0);
}

/// The walk of a box in which something is wrong.
fn planted(design: &Design, plant: impl FnOnce(&mut Built)) -> Found {
    let mut all = built(design);
    plant(&mut all);
    walk(design, &all)
}

/// Whether the walk told of these two together.
fn told(found: &Found, one: &str, other: &str) {
    let both = |told: &&String| told.contains(one) && told.contains(other);
    let count = found.wrong.iter().filter(both).count();
    assert!(count > 0, "{one} and {other}: {:#?}", found.wrong);
}

#[test]
fn a_lug_in_a_star_is_found() {
    let design = Design::default();
    let (x, y) = design.dials[0].centre;
    let z = design.plate.thickness + 4.0;
    let lug = block([x + 1.8, y - 0.5, z], [x + 3.0, y + 0.5, z + 1.0]);
    let found = planted(&design, |all| {
        let knob = all.of("Knob 1");
        *knob = knob.union(&lug);
    });
    told(&found, "Disc 1", "Knob 1");
}

#[test]
fn a_screw_that_does_not_reach_the_knob_is_found() {
    let design = Design::default();
    let found = planted(&design, |all| {
        all.screws.clear();
        disc_screws(&design, all, Some(10.0));
    });
    told(&found, "no thread in", "Knob 1");
}

#[test]
fn fingers_as_high_as_the_discs_are_found() {
    let design = Design::default();
    let found = planted(&design, |all| {
        for finger in SliderBody::of(&design).fingers(&design) {
            let (low, high) = (finger.area.min, finger.area.max);
            let high = [high.x, high.y, -design.slider.below];
            let slider = all.of("Slider of wood");
            *slider = slider.union(&block([low.x, low.y, -finger.top], high));
        }
    });
    told(&found, "Slider of wood", "before the stop");
}

#[test]
fn a_strip_half_a_millimetre_off_is_found() {
    let design = Design::default();
    let found = planted(&design, |all| {
        let strip = all.of("Left strip");
        *strip = strip.translate(by(0.5, 0.0, 0.0));
    });
    told(&found, "Left strip", "Slider of wood");
}

#[test]
fn a_keeper_whose_heads_are_sunk_on_the_wrong_face_is_found() {
    for design in [Design::default(), printed()] {
        let found = planted(&design, |all| {
            let keeper = all.of(keeper_name(&design));
            *keeper =
                keeper
                    .mirror(by(0.0, 0.0, 1.0))
                    .translate(by(0.0, 0.0, design.keeper.thickness));
        });
        told(&found, keeper_name(&design), "its screw");
    }
}

#[test]
fn a_slider_without_a_socket_for_the_finger_knob_is_found() {
    for (design, slider) in [(Design::default(), "Slider of wood"), (printed(), "Slider")] {
        let knob = finger_knob(&design);
        let top = -design.slider.below;
        let ends = (top - knob.socket_depth, top);
        let found = planted(&design, |all| {
            let slider = all.of(slider);
            *slider = slider.union(&rod((knob.at.x, knob.at.y), ends, knob.socket / 2.0 + 1.0));
        });
        told(&found, slider, "Slider knob");
    }
}
