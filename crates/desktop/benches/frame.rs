//! One frame of a drag on a latch of four dials with twelve marks: turning, solving, proving and
//! laying out, down to triangles; beside it the proof alone as reference, in the same run.
//!
//! The budget is 4 ms of processor time a frame of a drag. No frame of any stage may take 50 ms, on the
//! largest latch that there is: twelve dials of 360 marks.

use std::time::Duration;

use divan::Bencher;
use egui::{Event, Key, Modifiers, PointerButton, Pos2, RawInput, Rect, pos2, vec2};
use latchwright_desktop::LatchwrightApp;
use latchwright_model::{Design, Dial, Grain, Material};
use latchwright_proof::{prove, verdicts};
use latchwright_session::Session;

fn main() {
    divan::main();
}

/// Four dials of twelve marks.
fn four_by_twelve() -> Design {
    let mut design = Design::default();
    design.plate.width = 280.0;
    let dial = |x: f64| Dial {
        centre: (x, 95.0),
        positions: 12,
        ..Dial::default()
    };
    design.dials = [-84.0, -28.0, 28.0, 84.0].map(dial).to_vec();
    design.combination = vec![3, 6, 1, 9];
    design
}

/// Twelve dials of 360 marks: as large as a design can be.
fn twelve_by_360() -> Design {
    let mut design = Design::default();
    design.plate.width = 800.0;
    let dial = |number: usize| Dial {
        centre: (62.0 * (number as f64 - 5.5), 95.0),
        positions: 360,
        ..Dial::default()
    };
    design.dials = (0..12).map(dial).collect();
    design.combination = (0..12).map(|number| 29 * number + 3).collect();
    // a printed slider drifts under its plate, which is the longest proof
    design.plate.grain = Grain::AlongX;
    design.slider.material = Material::Printed;
    design
}

fn input(events: Vec<Event>, time: f64) -> RawInput {
    RawInput {
        screen_rect: Some(Rect::from_min_size(Pos2::ZERO, vec2(1440.0, 900.0))),
        time: Some(time),
        events,
        ..RawInput::default()
    }
}

/// The window with a knob held by the hand, and where that knob is.
struct Held {
    ctx: egui::Context,
    app: LatchwrightApp,
    middle: Pos2,
    frame: u32,
}

impl Held {
    fn on(design: Design) -> Self {
        let ctx = egui::Context::default();
        let app = LatchwrightApp::new(&ctx, Session::of(design), None);
        let mut held = Self {
            ctx,
            app,
            middle: Pos2::ZERO,
            frame: 0,
        };
        for _ in 0..3 {
            held.show(Vec::new());
        }
        held
    }

    fn new() -> Self {
        let mut held = Self::on(four_by_twelve());
        held.middle = held.find_knob();
        let press = |at, pressed| Event::PointerButton {
            pos: at,
            button: PointerButton::Primary,
            pressed,
            modifiers: Modifiers::NONE,
        };
        let grip = held.middle + vec2(30.0, 0.0);
        held.show(vec![Event::PointerMoved(grip)]);
        held.show(vec![press(grip, true)]);
        held
    }

    /// A place that turns dial 2 by one mark when it is clicked lies right of its middle.
    fn find_knob(&self) -> Pos2 {
        self.ctx
            .read_response(egui::Id::unique(("dial on the lid", 1_usize)))
            .map_or(pos2(600.0, 300.0), |response| response.rect.center())
    }

    fn show(&mut self, events: Vec<Event>) -> usize {
        self.frame += 1;
        let app = &mut self.app;
        let mut output =
            self.ctx
                .clone()
                .run_ui(input(events, f64::from(self.frame) / 60.0), |ui| {
                    app.logic(&ui.ctx().clone());
                    app.draw(ui);
                });
        // nothing is painted here
        output.textures_delta.clear();
        self.ctx
            .tessellate(output.shapes, output.pixels_per_point)
            .len()
    }

    /// Goes to a stage by its key.
    fn go(&mut self, stage: Key) {
        self.show(vec![Event::Key {
            key: stage,
            physical_key: None,
            pressed: true,
            repeat: false,
            modifiers: Modifiers::COMMAND,
        }]);
        for _ in 0..200 {
            self.show(Vec::new());
            // what goes on beside the window has its say
            self.app.tasks().wait_for_news(Duration::from_millis(10));
        }
    }

    fn drag_on(&mut self) -> usize {
        #[expect(clippy::cast_precision_loss, reason = "a few thousand frames")]
        let angle = self.frame as f32 * 0.2;
        let at = self.middle + 30.0 * vec2(angle.cos(), angle.sin());
        self.show(vec![Event::PointerMoved(at)])
    }
}

#[divan::bench]
fn a_frame_of_a_drag(bencher: Bencher) {
    let mut held = Held::new();
    let before = held.app.view().pose.clone();
    for _ in 0..20 {
        held.drag_on();
    }
    assert_ne!(held.app.view().pose, before, "the dial follows the hand");
    bencher.bench_local(|| held.drag_on());
}

#[divan::bench(args = [Key::Num1, Key::Num2, Key::Num3, Key::Num4, Key::Num5], sample_count = 30)]
fn a_frame_of_a_stage_of_the_largest_latch(bencher: Bencher, stage: Key) {
    let mut held = Held::on(twelve_by_360());
    held.go(stage);
    bencher.bench_local(|| {
        let at = pos2(1200.0 + (held.frame % 50) as f32, 400.0);
        held.show(vec![Event::PointerMoved(at)])
    });
}

#[divan::bench(sample_count = 20)]
fn reference_the_whole_proof_of_the_largest_latch(bencher: Bencher) {
    let design = twelve_by_360();
    bencher.bench_local(|| prove(divan::black_box(&design)));
}

#[divan::bench]
fn reference_the_whole_proof(bencher: Bencher) {
    let design = four_by_twelve();
    assert_eq!(prove(&design).settings.opens, 1);
    bencher.bench_local(|| prove(divan::black_box(&design)));
}

#[divan::bench]
fn reference_the_verdicts_alone(bencher: Bencher) {
    let design = four_by_twelve();
    bencher.bench_local(|| verdicts(divan::black_box(&design)));
}
