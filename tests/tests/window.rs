//! The window, driven through the names of its controls; no display and no driver needed.

use egui::accesskit::Role;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use latchwright_desktop::stage::Stage;
use latchwright_model::{Design, Dial, Grain, Material, Units};
use latchwright_proof::{Proof, prove};
use latchwright_session::Session;
use latchwright_tests::window::{
    Window, app, click_and_wait, command, demo, first_window, go, marks as shown, open as window,
    press, smallest, type_over, until, wait_for, wait_for_design, wait_until_gone,
};

fn click(window: &mut Window, label: &str) {
    window.get_by_label(label).click();
    window.run();
}

#[test]
fn a_fresh_window_shows_a_working_latch_and_says_what_stops_it() {
    let window = demo("tea-box");
    window.get_by_label("Proven");
    window.get_by_label_contains("One setting of 512 opens; every other one locks");
    window.get_by_label_contains(
        "Dial 2 stops the slider after 3.0 mm: plain rim. 5.0 mm of tab still held.",
    );
}

#[test]
fn who_has_never_been_here_is_told_what_there_is_to_do_until_it_is_put_away() {
    let mut window = first_window();
    window.get_by_label_contains("dial 2 stands one mark off");
    // and what it says is true
    let session = Session::demo("tea-box").expect("a demo");
    let shown = shown(&window);
    let off: Vec<usize> = (0..3)
        .filter(|index| shown[*index] != session.design().combination[*index])
        .collect();
    assert_eq!(off, [1]);
    for named in ["New box…", "Demos", "Help"] {
        window.get_by_label(named);
    }
    click(&mut window, "Put away");
    assert!(
        window
            .query_all_by_label_contains("dial 2 stands")
            .next()
            .is_none()
    );
}

#[test]
fn a_dial_turns_by_arrow_keys_and_by_its_label_typed() {
    let mut window = demo("tea-box");
    assert_eq!(shown(&window), [3, 5, 1]);
    window.get_by_label("Dial 2 at 6").focus();
    window.run();
    press(&mut window, Key::ArrowRight);
    assert_eq!(shown(&window), [3, 6, 1]);
    window.get_by_label_contains("The slider goes back the whole 11.0 mm");
    press(&mut window, Key::ArrowLeft);
    press(&mut window, Key::ArrowLeft);
    assert_eq!(shown(&window), [3, 4, 1]);
    window.event(egui::Event::Text("8".to_owned()));
    window.run();
    assert_eq!(shown(&window), [3, 7, 1]);
}

#[test]
fn a_dial_turns_by_click_drag_and_wheel() {
    let mut window = demo("tea-box");
    let rect = window.get_by_label("Dial 1 at 4").rect();
    let right = rect.center() + vec2(rect.width() * 0.3, 0.0);
    let left = rect.center() - vec2(rect.width() * 0.3, 0.0);
    for (at, mark) in [(right, 4), (left, 3), (left, 2)] {
        window.hover_at(at);
        window.run();
        window.drag_at(at);
        window.run();
        window.drop_at(at);
        window.run();
        assert_eq!(shown(&window)[0], mark);
    }
    // from the right side a quarter round to below: mark 5 of 8 stands straight down
    window.drag_at(right);
    window.run();
    window.hover_at(rect.center() + vec2(0.0, rect.height() * 0.4));
    window.run();
    window.drop_at(rect.center() + vec2(0.0, rect.height() * 0.4));
    window.run();
    assert_eq!(shown(&window)[0], 4);
    window.hover_at(rect.center());
    window.run();
    window.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Line,
        delta: vec2(0.0, -1.0),
        phase: egui::TouchPhase::Move,
        source: egui::MouseWheelSource::Unknown,
        modifiers: Modifiers::NONE,
    });
    window.run();
    assert_eq!(shown(&window)[0], 5);
}

#[test]
fn the_slider_stops_where_the_solver_says_and_holds_the_dials_when_back() {
    let mut window = demo("tea-box");
    press(&mut window, Key::Space);
    assert_eq!(
        app(&window).view().pose.travel,
        0.0,
        "it stood at its stop and goes forward"
    );
    press(&mut window, Key::Space);
    assert!(
        (app(&window).view().pose.travel - 3.0).abs() < 1e-9,
        "dial 2 stops it"
    );
    press(&mut window, Key::Space);
    window.get_by_label("Dial 2 at 6").focus();
    window.run();
    press(&mut window, Key::ArrowUp);
    press(&mut window, Key::Space);
    assert_eq!(
        app(&window).view().pose.travel,
        11.0,
        "the combination is set"
    );
    press(&mut window, Key::ArrowUp);
    assert_eq!(
        shown(&window),
        [3, 6, 1],
        "a dial whose pin is in its slot does not turn"
    );
}

#[test]
fn the_finger_knob_is_dragged_no_further_than_the_stop() {
    let mut window = demo("tea-box");
    press(&mut window, Key::Space);
    let from = window
        .get_by_label_contains("Finger knob, slider")
        .rect()
        .center();
    window.hover_at(from);
    window.run();
    window.drag_at(from);
    window.run();
    window.hover_at(from - vec2(0.0, 200.0));
    window.run();
    window.drop_at(from - vec2(0.0, 200.0));
    window.run();
    assert!((app(&window).view().pose.travel - 3.0).abs() < 1e-9);
}

#[test]
fn a_number_is_entered_proven_anew_undone_and_brought_again() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::LayOut);
    type_over(&mut window, "Gap to rim", "1,5");
    let gap = |window: &Window| app(window).session().design().dials[2].pin.gap;
    assert_eq!(gap(&window), 1.5, "decimal comma, all dials alike");
    window.get_by_label("Undo: gap to rim of all dials");
    command(&mut window, Key::Z);
    assert_eq!(gap(&window), 3.0);
    click(&mut window, "Redo: gap to rim of all dials");
    assert_eq!(gap(&window), 1.5);
}

#[test]
fn a_number_that_cannot_be_taken_leaves_the_old_one_and_says_why() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::LayOut);
    type_over(&mut window, "Disc radius", "nan");
    assert_eq!(app(&window).session().design().dials[0].disc.radius, 19.0);
    window.get_by_label_contains("Not taken:");
}

#[test]
fn a_bad_size_is_said_with_place_and_remedy_and_nothing_is_promised() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::LayOut);
    type_over(&mut window, "True slot width", "50");
    window.get_by_label("Not proven");
    go(&mut window, Stage::Prove);
    window.get_by_label_contains("Nothing can be promised");
    window.get_by_label_contains(
        "dial 1, slot 1: a slot 50.00 mm wide in a disc 38.00 mm across; make",
    );
}

#[test]
fn inches_are_shown_and_typed_without_changing_the_design() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::LayOut);
    click(&mut window, "in");
    let design = app(&window).session().design().clone();
    assert_eq!(design.units, Units::Inch);
    assert_eq!(design.dials[0].disc.radius, 19.0);
    type_over(&mut window, "Disc radius", "3/4");
    assert!((app(&window).session().design().dials[0].disc.radius - 19.05).abs() < 1e-9);
}

#[test]
fn a_click_in_the_grid_turns_the_dial_there() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Prove);
    press(&mut window, Key::Space);
    let cell = "Dial 3 at 7: holds";
    window.get_by_label_contains(cell).click();
    window.run();
    assert_eq!(shown(&window)[2], 6);
}

#[test]
fn demos_are_one_click_away_and_an_edited_design_asks_first() {
    let mut window = demo("tea-box");
    click(&mut window, "Demos");
    let title = Session::demo("two-ways")
        .expect("a demo")
        .design()
        .title
        .clone();
    click(&mut window, &title);
    window.get_by_label("Not proven");
    window.get_by_label_contains("2 settings of");
    click(&mut window, "in");
    click(&mut window, "Demos");
    let other = Session::demo("letters-chest")
        .expect("a demo")
        .design()
        .title
        .clone();
    click(&mut window, &other);
    window.get_by_label("Save your changes first?");
    click(&mut window, "Throw them away");
    window.get_by_label("Proven");
    assert_eq!(app(&window).session().design().dials.len(), 4);
}

#[test]
fn a_design_is_saved_and_opened_through_the_path_field() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("my box.latch.ron");
    let mut window = demo("tea-box");
    go(&mut window, Stage::LayOut);
    type_over(&mut window, "Title", "A box for Анна");
    command(&mut window, Key::S);
    type_over(&mut window, "Path", &path.to_string_lossy());
    click_and_wait(&mut window, "Save here", "Saved as");
    assert!(!app(&window).session().unsaved());
    let mut other = demo("two-ways");
    command(&mut other, Key::O);
    type_over(&mut other, "Path", &path.to_string_lossy());
    click(&mut other, "Open this file");
    wait_for_design(&mut other, "A box for Анна");
    // over an existing file of another name it is asked again
    let mut third = demo("letters-chest");
    command(&mut third, Key::S);
    type_over(&mut third, "Path", &path.to_string_lossy());
    click_and_wait(&mut third, "Save here", "Save over it?");
    click(&mut third, "Cancel");
    assert_eq!(
        Session::open(&path).expect("still there").design().title,
        "A box for Анна"
    );
}

#[test]
fn a_check_that_fails_is_mended_by_one_click_that_undo_takes_back() {
    let mut design = latchwright_model::Design::default();
    design.tab.engagement = 5.0;
    let mut window = window(Session::of(design));
    go(&mut window, Stage::Prove);
    assert!(!app(&window).proof().proven);
    let button = "Lengthen the engagement: Tab stays held when dial 1 stops the slider";
    wait_for(&mut window, button);
    // it may lie further down than the window shows
    window.get_by_label(button).click_accesskit();
    window.run();
    assert!(app(&window).proof().proven);
    let session = app(&window).session();
    assert_eq!(
        session.history().undo_label(),
        Some("Lengthen the engagement")
    );
    command(&mut window, Key::Z);
    let engagement = app(&window).session().design().tab.engagement;
    assert!((engagement - 5.0).abs() < 1e-12);
}

#[test]
fn boxes_are_built_beside_the_window_and_given_up_when_the_design_changes() {
    let mut window = demo("tea-box");
    go(&mut window, Stage::Prove);
    click_and_wait(&mut window, "Build 100 000 boxes", "nine in ten");
    window.get_by_label_contains("100000 of 100000 builds open the first time");
    window.get_by_label_contains("100000 of 100000 builds hold at every wrong setting");
    go(&mut window, Stage::LayOut);
    type_over(&mut window, "Gap to rim", "1,5");
    go(&mut window, Stage::Prove);
    assert!(
        window
            .query_by_label_contains("builds open the first time")
            .is_none()
    );
    window.get_by_label("Build 100 000 boxes").click_accesskit();
    window.step();
    window.step();
    // either still building, and stopped, or already done on a quick machine
    if let Some(stop) = window.query_by_label("Stop building") {
        stop.click_accesskit();
        // what is being built at that moment is still finished, on a busy machine a few frames later
        wait_until_gone(&mut window, "Stop building");
        assert!(window.query_by_label("Stop building").is_none());
    }
    window.get_by_label("Build 100 000 boxes");
}

#[test]
fn every_key_of_the_list_stands_in_the_list() {
    let mut window = demo("tea-box");
    press(&mut window, Key::F1);
    for (shortcut, _) in latchwright_desktop::command::shortcuts() {
        assert!(
            window.query_all_by_label(shortcut.what).count() > 0,
            "{}",
            shortcut.what
        );
    }
    press(&mut window, Key::Escape);
    assert!(window.query_by_label("This list of keys").is_none());
}

#[test]
fn every_control_has_a_name_and_no_two_share_one() {
    for name in ["tea-box", "toy-post-box", "two-ways"] {
        let mut window = demo(name);
        let mut all = 0;
        for stage in Stage::ALL {
            go(&mut window, stage);
            all += names_of_controls(&window, name);
        }
        assert!(all > 100, "{name}: only {all} controls");
    }
}

/// How many controls the window shows, each with a name of its own.
fn names_of_controls(window: &Window, name: &str) -> usize {
    let mut seen = Vec::new();
    let controls = window.root().children_recursive().filter(|node| {
        let role = node.accesskit_node().role();
        matches!(
            role,
            Role::Button | Role::TextInput | Role::SpinButton | Role::CheckBox | Role::ComboBox
        )
    });
    for node in controls {
        let label = node.accesskit_node().label().unwrap_or_default();
        assert!(!label.trim().is_empty(), "{name}: a control without a name");
        seen.push(label);
    }
    seen.sort();
    let twice: Vec<_> = seen.windows(2).filter(|pair| pair[0] == pair[1]).collect();
    assert!(twice.is_empty(), "{name}: {twice:?}");
    seen.len()
}

#[test]
fn a_window_at_rest_asks_for_no_frame() {
    let mut window = demo("tea-box");
    for _ in 0..30 {
        window.step();
    }
    let output = &window.output().viewport_output[&egui::ViewportId::ROOT];
    assert!(
        output.repaint_delay > std::time::Duration::from_mins(1),
        "{:?}",
        output.repaint_delay
    );
}

#[test]
fn long_names_in_many_scripts_and_twelve_dials_do_not_break_the_window() {
    let mut design = latchwright_model::Design {
        title: "Ein Kästchen für Łukasz, Анна, 花子 und مريم ".repeat(6),
        ..latchwright_model::Design::default()
    };
    let dial = design.dials[0].clone();
    design.dials = (0..12)
        .map(|n| latchwright_model::Dial {
            centre: (f64::from(n) * 56.0, 95.0),
            positions: 36,
            ..dial.clone()
        })
        .collect();
    design.combination = vec![5; 12];
    let mut window = window(Session::of(design));
    window.get_by_label("Dial 12 at 6");
    command(&mut window, Key::L);
    window.run();
}

/// Twelve dials of 360 marks over a printed slider that drifts: the longest proof there is.
fn longest_to_prove() -> Design {
    let mut design = Design::default();
    design.plate.width = 800.0;
    design.plate.grain = Grain::AlongX;
    design.slider.material = Material::Printed;
    let dial = |number: u32| Dial {
        centre: (62.0 * (f64::from(number) - 5.5), 95.0),
        positions: 360,
        ..Dial::default()
    };
    design.dials = (0..12).map(dial).collect();
    design.combination = (0..12).map(|number| 29 * number + 3).collect();
    design
}

#[test]
fn while_a_long_proof_is_being_made_nothing_is_promised_and_then_it_is_that_of_what_is_shown() {
    let mut window = latchwright_tests::window::window(longest_to_prove());
    window.get_by_label("Slider and keeper").click_accesskit();
    window.run_steps(6);
    for engagement in ["5", "6.5"] {
        type_over(&mut window, "Engagement", engagement);
        let proven = until(&mut window, |window| {
            let said = |word| window.query_by_label(word).is_some();
            let (waits, verdict) = (
                said("Being proven anew…"),
                said("Proven") || said("Not proven"),
            );
            assert_ne!(waits, verdict);
            verdict
        });
        assert!(proven, "no proof came");
        let (shown, anew) = (app(&window).proof(), prove(app(&window).session().design()));
        assert_eq!(shown.proven, anew.proven);
        assert_eq!(shown.settings, anew.settings);
        let margins = |proof: &Proof| -> Vec<u64> {
            let checks = proof.checks.iter();
            checks.map(|check| check.margin.to_bits()).collect()
        };
        assert_eq!(margins(shown), margins(&anew));
    }
    // the other stages speak of the whole proof from the first
    type_over(&mut window, "Title", "Another");
    go(&mut window, Stage::Prove);
    assert!(window.query_by_label("Being proven anew…").is_none());
}

#[test]
fn every_dialog_stays_within_the_smallest_window() {
    let mut window = smallest(Session::demo("tea-box").expect("a demo"));
    let inside = |window: &Window, label: &str| {
        let room = window.ctx.content_rect();
        let found = window.get_by_label(label).rect();
        assert!(room.contains_rect(found), "{label}: {found} in {room}");
    };
    window.key_press(Key::F1);
    window.run_steps(6);
    inside(&window, "Keys");
    inside(&window, "Close");
    window.key_press(Key::Escape);
    window.run_steps(4);
    for stage in Stage::ALL {
        go(&mut window, stage);
        window.key_press_modifiers(Modifiers::SHIFT, Key::F1);
        window.run_steps(6);
        inside(&window, &format!("Help: {}", stage.name()));
        inside(&window, "All keys");
        window.key_press(Key::Escape);
        window.run_steps(4);
    }
    command(&mut window, Key::N);
    inside(&window, "A new box: six questions");
    inside(&window, "Propose");
    inside(&window, "Close");
}
