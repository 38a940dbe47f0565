//! Dials and the tab moved on the plan under Lay out, by drag and by keys.

use egui::accesskit::Live;
use egui::{Event, Key, Modifiers, Pos2, Rect, Vec2, vec2};
use egui_kittest::kittest::{NodeT, Queryable, by};
use latchwright_desktop::stage::Stage;
use latchwright_model::{Design, Units};
use latchwright_tests::window::{
    Window, app, design, focus, go, marks, press, settle, undo, undo_label, wait_for, window,
};

/// The usual latch under Lay out: dials at −55, 0 and 55 mm, all 106 mm behind the front edge.
fn lay_out() -> Window {
    window(Design::default())
}

/// Where the handle whose name begins so lies.
fn handle(window: &Window, name: &str) -> Rect {
    window.get_by_label_contains(name).rect()
}

/// Points a millimetre.
fn scale(window: &Window) -> f32 {
    let centre = |dial| handle(window, &format!("Dial {dial} centre at")).center();
    (centre(3).x - centre(1).x) / 110.0
}

/// Takes what lies at `from` and brings it to `to` in a few steps, without letting go.
fn drag(window: &mut Window, from: Pos2, to: Pos2) {
    window.hover_at(from);
    window.run_steps(2);
    window.drag_at(from);
    window.run_steps(2);
    for part in [0.3, 0.7, 1.0] {
        window.hover_at(from + (to - from) * part);
        window.run_steps(2);
    }
}

/// Takes a handle and brings it so many millimetres to the right and up, without letting go.
fn drag_by(window: &mut Window, name: &str, right: f32, up: f32) -> Pos2 {
    let from = handle(window, name).center();
    let to = from + vec2(right, -up) * scale(window);
    drag(window, from, to);
    to
}

fn centre(window: &Window, dial: usize) -> (f64, f64) {
    design(window).dials[dial].centre
}

#[test]
fn a_centre_is_dragged_to_lines_and_marks_and_one_undo_puts_it_back() {
    let mut window = lay_out();
    let to = drag_by(&mut window, "Dial 3 centre at 55.0 mm, 106.0 mm", 7.3, 0.9);
    // while it is held: a mark of the ruler along x, the line through its neighbour along y
    assert_eq!(centre(&window, 2), (62.0, 106.0));
    window.get_by_label("Dial 3 centre at 62.0 mm, 106.0 mm, in line with dial 2, 62.0 mm from it");
    window.drop_at(to);
    settle(&mut window);
    assert_eq!(centre(&window, 2), (62.0, 106.0));
    window.get_by_label("Dial 3 centre at 62.0 mm, 106.0 mm");
    assert_eq!(app(&window).view().dial, 2, "its sizes are beside the lid");
    window.get_by_label("Undo: move dial 3");
    undo(&mut window);
    assert_eq!(design(&window), &Design::default());
    assert_eq!(undo_label(&window), None);
}

#[test]
fn every_drag_is_a_step_of_its_own() {
    let mut window = lay_out();
    for (right, at) in [(5.0, 60.0), (4.0, 64.0)] {
        let to = drag_by(&mut window, "Dial 3 centre at", right, 0.0);
        window.drop_at(to);
        settle(&mut window);
        assert_eq!(centre(&window, 2), (at, 106.0));
    }
    undo(&mut window);
    assert_eq!(centre(&window, 2), (60.0, 106.0));
    undo(&mut window);
    assert_eq!(centre(&window, 2), (55.0, 106.0));
}

#[test]
fn escape_while_dragging_puts_everything_back() {
    let mut window = lay_out();
    let to = drag_by(&mut window, "Dial 3 centre at", 12.0, 6.0);
    assert_eq!(centre(&window, 2), (67.0, 112.0));
    window.key_press(Key::Escape);
    window.run_steps(2);
    assert_eq!(design(&window), &Design::default());
    // the button is still down: the hand moves nothing any more
    window.hover_at(to + vec2(40.0, 0.0));
    window.run_steps(2);
    window.drop_at(to);
    settle(&mut window);
    assert_eq!(design(&window), &Design::default());
    assert_eq!(undo_label(&window), None);
}

#[test]
fn alt_moves_freely_and_the_plate_holds_the_centre() {
    let mut window = lay_out();
    let name = "Dial 3 centre at";
    let from = handle(&window, name).center();
    let to = from + vec2(2.3, -0.6) * scale(&window);
    window.event(Event::ModifiersChanged(Modifiers::ALT));
    drag(&mut window, from, to);
    let (x, y) = centre(&window, 2);
    assert!(
        (x - 57.3).abs() < 0.02 && (y - 106.6).abs() < 0.02,
        "{x} {y}"
    );
    window.event(Event::ModifiersChanged(Modifiers::NONE));
    window.hover_at(from + vec2(900.0, 900.0));
    window.run_steps(2);
    assert_eq!(centre(&window, 2), (110.0, 0.0));
    window.drop_at(from);
    settle(&mut window);
    assert!(centre(&window, 2).0.is_finite());
}

#[test]
fn the_verdict_follows_while_the_hand_is_still_moving() {
    let mut window = lay_out();
    window.get_by_label("Proven");
    // knobs of 36 mm that leave 4 mm for fingers
    drag_by(&mut window, "Dial 3 centre at", -15.0, 0.0);
    assert_eq!(centre(&window, 2), (40.0, 106.0));
    wait_for(&mut window, "Not proven");
    window.key_press(Key::Escape);
    window.run_steps(2);
    wait_for(&mut window, "One setting of 512 opens");
}

#[test]
fn keys_move_a_centre_by_marks_and_finely_and_a_run_is_one_step() {
    let mut window = lay_out();
    focus(&mut window, "Dial 2 centre at 0.0 mm, 106.0 mm");
    assert_eq!(app(&window).view().dial, 1);
    for _ in 0..3 {
        press(&mut window, Key::ArrowRight);
    }
    press(&mut window, Key::ArrowDown);
    assert_eq!(centre(&window, 1), (3.0, 105.0));
    window.key_press_modifiers(Modifiers::SHIFT, Key::ArrowUp);
    settle(&mut window);
    assert_eq!(centre(&window, 1), (3.0, 105.1));
    window.get_by_label_contains("Dial 2 centre at 3.0 mm, 105.1 mm");
    press(&mut window, Key::Tab);
    assert_eq!(undo_label(&window), Some("move dial 2"));
    // another run is another step
    focus(&mut window, "Dial 2 centre at 3.0 mm, 105.1 mm");
    press(&mut window, Key::ArrowUp);
    assert_eq!(centre(&window, 1), (3.0, 106.0));
    undo(&mut window);
    assert_eq!(centre(&window, 1), (3.0, 105.1));
    undo(&mut window);
    assert_eq!(design(&window), &Design::default());
}

#[test]
fn in_inches_keys_move_by_sixteenths() {
    let mut window = window(Design {
        units: Units::Inch,
        ..Design::default()
    });
    focus(&mut window, "Dial 2 centre at 0.0000 in, 4.1732 in");
    press(&mut window, Key::ArrowRight);
    assert_eq!(centre(&window, 1), (25.4 / 16.0, 106.0));
    press(&mut window, Key::ArrowUp);
    // 106 mm are 66.77 sixteenths
    assert_eq!(centre(&window, 1).1, 67.0 * 25.4 / 16.0);
}

#[test]
fn the_tab_is_dragged_aside_and_out_from_under_the_keeper() {
    let mut window = lay_out();
    let to = drag_by(
        &mut window,
        "Tab at 0.0 mm, 8.0 mm under the keeper",
        20.2,
        0.5,
    );
    let tab = |window: &Window| (design(window).tab.at, design(window).tab.engagement);
    assert_eq!(tab(&window), (20.0, 8.0));
    window.drop_at(to);
    settle(&mut window);
    assert_eq!(undo_label(&window), Some("move tab"));
    undo(&mut window);
    let to = drag_by(&mut window, "Tab at", 0.4, 3.0);
    assert_eq!(tab(&window), (0.0, 5.0));
    window.drop_at(to);
    settle(&mut window);
    focus(&mut window, "Tab at 0.0 mm, 5.0 mm under the keeper");
    press(&mut window, Key::ArrowDown);
    press(&mut window, Key::ArrowRight);
    assert_eq!(tab(&window), (1.0, 6.0));
    undo(&mut window);
    undo(&mut window);
    assert_eq!(design(&window), &Design::default());
}

#[test]
fn the_knob_round_a_handle_still_turns_and_moves_nothing() {
    let mut window = lay_out();
    let knob = window.get_by_label("Dial 1 at 4").rect();
    let grip = |angle: f32| knob.center() + 0.35 * knob.width() * Vec2::angled(angle);
    let before = marks(&window)[0];
    // from the right a quarter round to below
    drag(&mut window, grip(0.0), grip(std::f32::consts::FRAC_PI_2));
    window.drop_at(grip(std::f32::consts::FRAC_PI_2));
    settle(&mut window);
    assert_ne!(marks(&window)[0], before);
    assert_eq!(design(&window), &Design::default());
}

#[test]
fn other_stages_have_no_handles() {
    let mut window = lay_out();
    for stage in [Stage::Try, Stage::Prove, Stage::Make, Stage::Give] {
        go(&mut window, stage);
        assert!(window.query_by_label_contains(" centre at ").is_none());
        let tab = "Tab at 0.0 mm, 8.0 mm under the keeper";
        assert!(window.query_by_label(tab).is_none());
    }
    go(&mut window, Stage::LayOut);
    window.get_by_label("Dial 1 centre at -55.0 mm, 106.0 mm");
}

#[test]
fn a_stage_that_is_left_in_the_middle_of_a_drag_ends_it() {
    let mut window = lay_out();
    drag_by(&mut window, "Dial 3 centre at", 5.0, 0.0);
    window.key_press_modifiers(Modifiers::COMMAND, Key::Num3);
    window.run_steps(4);
    assert_eq!(app(&window).stage(), Stage::Prove);
    assert_eq!(undo_label(&window), Some("move dial 3"));
    undo(&mut window);
    assert_eq!(design(&window), &Design::default());
}

#[test]
fn a_screen_reader_comes_to_the_plan_in_words_first_and_is_told_what_changes() {
    let mut window = lay_out();
    // what it reads, in order
    let first = |window: &Window| {
        let mut nodes = window.query_all(by().recursive(true).predicate(|_| true));
        let said = nodes.find_map(|node| {
            let node = node.accesskit_node();
            Some((node.label()?, node.live()))
        });
        said.expect("something is said")
    };
    let (said, live) = first(&window);
    assert_eq!(
        said,
        "Plan: dial 1 at 4, dial 2 at 6, dial 3 at 2; slider stopped at dial 2, 3.0 mm; 5.0 mm held"
    );
    assert_eq!(live, Live::Polite);
    focus(&mut window, "Dial 2 at 6");
    press(&mut window, Key::ArrowRight);
    let (said, _) = first(&window);
    assert!(
        said.starts_with("Plan: dial 1 at 4, dial 2 at 7, dial 3 at 2; slider"),
        "{said}"
    );
}

#[test]
fn every_handle_is_large_enough_for_a_finger_and_can_have_the_focus() {
    let mut window = lay_out();
    for name in ["Dial 1 centre", "Dial 2 centre", "Dial 3 centre", "Tab at"] {
        let node = window.get_by_label_contains(name);
        let size = node.rect().size();
        assert!(size.x >= 24.0 && size.y >= 24.0, "{name}: {size}");
        node.focus();
        settle(&mut window);
        let node = window.get_by_label_contains(name);
        assert!(node.accesskit_node().is_focused(), "{name}");
    }
}

#[test]
fn a_design_of_nonsense_is_dragged_without_a_panic_or_a_number_that_is_none() {
    let mut odd = Design::default();
    odd.plate.width = -3.0;
    odd.dials[0].centre = (1e7, -1e7);
    odd.dials[1].disc.radius = f64::MAX;
    odd.tab.engagement = 1e6;
    let mut window = window(odd);
    for name in ["Dial 2 centre at", "Tab at"] {
        let from = handle(&window, name).center();
        drag(&mut window, from, from + vec2(60.0, 30.0));
        window.drop_at(from);
        settle(&mut window);
        window.get_by_label_contains(name).focus();
        settle(&mut window);
        press(&mut window, Key::ArrowLeft);
    }
    let now = design(&window);
    let numbers = [
        now.dials[1].centre.0,
        now.dials[1].centre.1,
        now.tab.at,
        now.tab.engagement,
    ];
    assert!(
        numbers.iter().all(|number| number.is_finite()),
        "{numbers:?}"
    );
}
