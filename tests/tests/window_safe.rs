//! Nothing that a maker has done is lost: not by a crash, not by a slip, not by a file that is no design.

use std::path::Path;

use egui::{Event, Key, Modifiers, ViewportCommand, ViewportId};
use egui_kittest::kittest::{NodeT, Queryable};
use latchwright_desktop::stage::Stage;
use latchwright_desktop::tasks::TaskKind;
use latchwright_desktop::window::first_session;
use latchwright_model::Design;
use latchwright_session::files;
use latchwright_session::{Session, recent};
use latchwright_tests::window::{
    Window, app, click_and_wait, closes, command, commands, demo, design, enter, go, goes_on,
    press, remembering, undo_label, until, wait_for, wait_for_design, wait_for_save,
};

fn folder() -> tempfile::TempDir {
    tempfile::tempdir().expect("a folder")
}

fn tea() -> Session {
    Session::demo("tea-box").expect("a demo")
}

fn click(window: &mut Window, label: &str) {
    window.get_by_label(label).click();
    window.run_steps(6);
}

fn shows(window: &Window, part: &str) -> bool {
    window.query_all_by_label_contains(part).next().is_some()
}

/// Types a path in place of the one that is suggested.
fn type_path(window: &mut Window, path: &Path) {
    window.get_by_label("Path").focus();
    window.run_steps(4);
    command(window, Key::A);
    window.event(Event::Text(path.to_string_lossy().into_owned()));
    window.run_steps(4);
}

/// Gives the box another title.
fn retitle(window: &mut Window, title: &str) {
    go(window, Stage::LayOut);
    enter(window, "Title", title);
    assert_eq!(design(window).title, title);
}

fn saved(folder: &Path, name: &str, title: &str) -> std::path::PathBuf {
    let path = folder.join(name);
    let design = Design {
        title: title.to_owned(),
        ..Design::default()
    };
    files::save(&path, &design).expect("saved");
    path
}

#[test]
fn work_of_a_window_that_went_is_offered_until_it_is_taken_up_and_saved() {
    let memory = folder();
    let mut before = remembering(tea(), memory.path());
    retitle(&mut before, "Работа, die nicht verloren geht");
    drop(before);
    for _ in 0..2 {
        let mut window = remembering(tea(), memory.path());
        window.get_by_label_contains("Work on “Работа, die nicht verloren geht” (in no file yet) from less than a minute ago was not saved.");
        click(&mut window, "Not now");
        assert_eq!(design(&window).title, tea().design().title);
    }
    let mut window = remembering(tea(), memory.path());
    click(&mut window, "Take it up again");
    wait_for_design(&mut window, "Работа, die nicht verloren geht");
    assert!(app(&window).session().unsaved());
    drop(window);
    let mut again = remembering(tea(), memory.path());
    click_and_wait(&mut again, "Take it up again", "Taken up again");
    let path = memory.path().join("kept.latch.ron");
    command(&mut again, Key::S);
    type_path(&mut again, &path);
    click(&mut again, "Save here");
    wait_for_save(&mut again);
    drop(again);
    let last = remembering(tea(), memory.path());
    assert!(!shows(&last, "was not saved"));
}

#[test]
fn work_thrown_away_is_not_offered_again_and_each_piece_is_answered_by_itself() {
    let memory = folder();
    let mut one = remembering(tea(), memory.path());
    let mut other = remembering(tea(), memory.path());
    retitle(&mut one, "First piece");
    retitle(&mut other, "Second piece");
    drop((one, other));
    let mut window = remembering(tea(), memory.path());
    assert!(shows(&window, "First piece") && shows(&window, "Second piece"));
    click(&mut window, "Throw it away (2)");
    let kept = if shows(&window, "First piece") {
        "First piece"
    } else {
        "Second piece"
    };
    click(&mut window, "Not now");
    drop(window);
    let window = remembering(tea(), memory.path());
    assert!(shows(&window, kept));
    window.get_by_label("Throw it away");
}

#[test]
fn a_second_window_offers_nothing_of_the_first_and_takes_nothing_from_it() {
    let memory = folder();
    let mut first = remembering(tea(), memory.path());
    retitle(&mut first, "Still being worked on");
    app(&first).wait_for_copy();
    let second = remembering(tea(), memory.path());
    assert!(!shows(&second, "was not saved"));
    drop(second);
    drop(first);
    let third = remembering(tea(), memory.path());
    assert!(shows(&third, "Still being worked on"));
}

#[test]
fn changes_thrown_away_or_undone_leave_no_copy() {
    let memory = folder();
    let mut window = remembering(tea(), memory.path());
    retitle(&mut window, "Not wanted");
    click(&mut window, "Demos");
    click(&mut window, &title_of("two-ways"));
    click(&mut window, "Throw them away");
    drop(window);
    let mut window = remembering(tea(), memory.path());
    assert!(!shows(&window, "was not saved"));
    retitle(&mut window, "Undone");
    command(&mut window, Key::Z);
    drop(window);
    assert!(!shows(&remembering(tea(), memory.path()), "was not saved"));
}

fn title_of(demo: &str) -> String {
    Session::demo(demo).expect("a demo").design().title.clone()
}

#[test]
fn a_window_with_copies_is_at_rest_too() {
    let memory = folder();
    let mut window = remembering(tea(), memory.path());
    retitle(&mut window, "Changed and left alone");
    until(&mut window, |window| window.try_run().is_ok());
    app(&window).wait_for_copy();
    let asks = window.ctx.has_requested_repaint();
    assert!(!asks, "a copy was written and the window was woken");
    window.step();
    let output = &window.output().viewport_output[&ViewportId::ROOT];
    assert!(output.repaint_delay > std::time::Duration::from_mins(1));
}

#[test]
fn saving_first_goes_on_with_what_was_asked() {
    let memory = folder();
    let mine = saved(memory.path(), "mine.latch.ron", "Mine");
    let mut window = remembering(Session::open(&mine).expect("opens"), memory.path());
    retitle(&mut window, "Mine, changed");
    click(&mut window, "Demos");
    click(&mut window, &title_of("two-ways"));
    window.get_by_label("Save your changes first?");
    click(&mut window, "Save, then go on");
    wait_for_design(&mut window, &title_of("two-ways"));
    let kept = Session::open(&mine).expect("opens");
    assert_eq!(kept.design().title, "Mine, changed");
}

#[test]
fn saving_first_asks_for_a_name_where_there_is_none_and_goes_on_after_it() {
    let memory = folder();
    let other = saved(memory.path(), "other.latch.ron", "The other");
    let path = memory.path().join("new.latch.ron");
    let mut window = demo("tea-box");
    retitle(&mut window, "In no file");
    command(&mut window, Key::O);
    type_path(&mut window, &other);
    click(&mut window, "Open this file");
    click(&mut window, "Save, then go on");
    // given up, nothing is opened, now or after a later save
    press(&mut window, Key::Escape);
    command(&mut window, Key::S);
    type_path(&mut window, &path);
    click_and_wait(&mut window, "Save here", "Saved as");
    assert_eq!(design(&window).title, "In no file");
    assert!(!goes_on(&mut window, TaskKind::Open));
    retitle(&mut window, "In a file");
    command(&mut window, Key::O);
    type_path(&mut window, &other);
    click(&mut window, "Open this file");
    click(&mut window, "Save, then go on");
    wait_for_design(&mut window, "The other");
    assert_eq!(
        Session::open(&path).expect("opens").design().title,
        "In a file"
    );
}

#[test]
fn closing_with_changes_asks_and_saving_closes() {
    let memory = folder();
    let mine = saved(memory.path(), "mine.latch.ron", "Mine");
    let mut window = remembering(Session::open(&mine).expect("opens"), memory.path());
    retitle(&mut window, "Changed before closing");
    assert!(!closes(&mut window));
    window.run_steps(2);
    click(&mut window, "Cancel");
    assert!(!closes(&mut window));
    window.run_steps(2);
    window.get_by_label("Save your changes first?");
    window.get_by_label("Save, then go on").click();
    let closed = |window: &mut Window| commands(window).contains(&ViewportCommand::Close);
    assert!(until(&mut window, closed), "it never closed");
    let kept = Session::open(&mine).expect("opens");
    assert_eq!(kept.design().title, "Changed before closing");
    assert!(closes(&mut demo("tea-box")), "untouched, it simply goes");
}

#[test]
fn a_save_that_fails_goes_on_with_nothing() {
    let memory = folder();
    let mut window = demo("tea-box");
    retitle(&mut window, "Not lost");
    click(&mut window, "Demos");
    click(&mut window, &title_of("two-ways"));
    click(&mut window, "Save, then go on");
    let nowhere = memory.path().join("no such folder").join("x.latch.ron");
    type_path(&mut window, &nowhere);
    click_and_wait(&mut window, "Save here", "there is no such file or folder");
    assert_eq!(design(&window).title, "Not lost");
    let path = memory.path().join("x.latch.ron");
    type_path(&mut window, &path);
    click(&mut window, "Save here");
    wait_for_design(&mut window, &title_of("two-ways"));
    assert_eq!(
        Session::open(&path).expect("opens").design().title,
        "Not lost"
    );
}

#[test]
fn save_as_asks_again_where_the_name_with_its_ending_is_taken() {
    let memory = folder();
    let taken = saved(memory.path(), "box.latch.ron", "There before");
    let mut window = demo("tea-box");
    command(&mut window, Key::S);
    type_path(&mut window, &memory.path().join("box"));
    assert!(shows(&window, "you will be asked again"));
    click_and_wait(&mut window, "Save here", "Save over it?");
    click(&mut window, "Cancel");
    assert_eq!(
        Session::open(&taken).expect("opens").design().title,
        "There before"
    );
}

#[derive(Debug)]
struct Dropped(std::path::PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|err| err.to_string())
    }
}

fn drop_on(window: &mut Window, path: &Path) {
    let file = std::sync::Arc::new(Dropped(path.to_owned()));
    window.input_mut().dropped_files.push(file);
    window.step();
    window.input_mut().dropped_files.clear();
    window.run_steps(6);
}

#[test]
fn a_file_dropped_on_the_window_is_opened_and_changes_are_asked_about() {
    let memory = folder();
    let one = saved(memory.path(), "مريم.latch.ron", "مريم");
    let other = saved(memory.path(), "花子.latch.ron", "花子");
    let mut window = demo("tea-box");
    drop_on(&mut window, &one);
    wait_for_design(&mut window, "مريم");
    retitle(&mut window, "Changed");
    drop_on(&mut window, &other);
    window.get_by_label("Save your changes first?");
    click(&mut window, "Throw them away");
    wait_for_design(&mut window, "花子");
}

#[test]
fn designs_used_lately_are_listed_and_missing_ones_are_named() {
    let memory = folder();
    let kept = memory.path().join("memory");
    let one = saved(memory.path(), "one.latch.ron", "One");
    let other = saved(memory.path(), "other.latch.ron", "Other");
    let mut window = remembering(Session::open(&one).expect("opens"), &kept);
    drop_on(&mut window, &other);
    wait_for_design(&mut window, "Other");
    std::fs::remove_file(&one).expect("removed");
    click(&mut window, "Recent");
    wait_for(&mut window, "one.latch.ron (missing), in ");
    window.get_by_label_contains("other.latch.ron, in ");
    let missing = window.get_by_label_contains("one.latch.ron (missing)");
    assert!(missing.accesskit_node().is_disabled());
    drop(window);
    // without a file the last design comes back
    let (session, notice) = first_session(None, Some(&kept));
    assert_eq!((session.path(), notice), (Some(other.as_path()), None));
    std::fs::remove_file(&other).expect("removed");
    let (session, notice) = first_session(None, Some(&kept));
    assert_eq!(session.path(), None);
    assert!(
        notice
            .expect("a sentence")
            .contains("A demo is shown instead.")
    );
    recent::add(&kept, &saved(memory.path(), "new.latch.ron", "New")).expect("remembered");
    let mut window = remembering(tea(), &kept);
    wait_for(&mut window, "Recent");
    click(&mut window, "Recent");
    wait_for(&mut window, "new.latch.ron, in ");
    window.get_by_label_contains("new.latch.ron, in ").click();
    wait_for_design(&mut window, "New");
}

#[test]
fn a_design_over_which_the_window_broke_off_is_not_opened_unasked_the_next_time() {
    let memory = folder();
    let path = saved(memory.path(), "odd.latch.ron", "Odd");
    recent::broke_off(memory.path());
    recent::add(memory.path(), &path).expect("remembered");
    let (session, _) = first_session(None, Some(memory.path()));
    assert_eq!(session.path(), Some(path.as_path()));
    recent::broke_off(memory.path());
    let (session, notice) = first_session(None, Some(memory.path()));
    assert_eq!(session.path(), None);
    let notice = notice.expect("a sentence");
    assert!(notice.contains("odd.latch.ron was open"), "{notice}");
    // it is said once; opened by hand it is worked on as before
    let (session, notice) = first_session(None, Some(memory.path()));
    assert_eq!((session.path(), notice), (Some(path.as_path()), None));
    // and a design that is named is opened, whatever happened
    recent::broke_off(memory.path());
    let (session, notice) = first_session(Some(&path), Some(memory.path()));
    assert_eq!((session.path(), notice), (Some(path.as_path()), None));
}

#[test]
fn windows_that_remember_at_the_same_moment_lose_nothing_of_each_other() {
    let memory = folder();
    std::thread::scope(|scope| {
        for number in 0..recent::MOST {
            let folder = memory.path();
            scope.spawn(move || {
                recent::add(folder, &folder.join(format!("{number}.latch.ron"))).expect("written");
            });
        }
    });
    assert_eq!(recent::list(memory.path()).len(), recent::MOST);
}

#[test]
fn a_file_of_zeros_is_named_kept_and_never_written_over() {
    let memory = folder();
    let path = memory.path().join("zeros.latch.ron");
    std::fs::write(&path, [0; 4037]).expect("written");
    let mut window = demo("tea-box");
    drop_on(&mut window, &path);
    wait_for(&mut window, "zeros.latch.ron cannot be read");
    assert!(shows(&window, "4037"));
    assert_eq!(app(&window).session().path(), None);
    retitle(&mut window, "Something to save");
    command(&mut window, Key::S);
    type_path(&mut window, &path);
    click_and_wait(&mut window, "Save here", "Save over it?");
    press(&mut window, Key::Escape);
    assert_eq!(std::fs::read(&path).expect("there"), [0; 4037]);
}

/// The key goes down and one frame is drawn, so that what it told the desktop can be seen.
fn redo_in_one_frame(window: &mut Window) {
    window.input_mut().events.push(Event::Key {
        key: Key::Z,
        physical_key: None,
        pressed: true,
        repeat: false,
        modifiers: Modifiers::COMMAND | Modifiers::SHIFT,
    });
    window.step();
}

#[test]
fn names_in_any_script_stand_in_title_file_and_card() {
    let memory = folder();
    for name in ["Zoë", "Łukasz", "Анна", "花子", "مريم"] {
        let mut window = demo("tea-box");
        retitle(&mut window, name);
        command(&mut window, Key::Z);
        redo_in_one_frame(&mut window);
        let title = format!("Latchwright – {name} (not saved)");
        assert!(commands(&window).contains(&ViewportCommand::Title(title)));
        window.step();
        assert!(
            commands(&window).is_empty(),
            "told once and not in every frame"
        );
        command(&mut window, Key::S);
        let path = memory.path().join(name);
        type_path(&mut window, &path);
        click(&mut window, "Save here");
        wait_for_save(&mut window);
        let path = memory.path().join(format!("{name}.latch.ron"));
        assert_eq!(Session::open(&path).expect("opens").design().title, name);
        wait_for(&mut window, &format!("{name}.latch.ron, saved"));
        go(&mut window, Stage::Give);
        enter(&mut window, "For", name);
        assert_eq!(design(&window).card.recipient, name);
    }
}

#[test]
fn work_beside_the_window_that_falls_over_is_a_notice_and_the_design_is_safe() {
    let mut window = demo("tea-box");
    retitle(&mut window, "Safe");
    let app_of = window
        .state_mut()
        .as_mut()
        .expect("made in the first frame");
    let task = app_of
        .tasks()
        .start::<()>(TaskKind::Page, 0, |_| panic!("planted"));
    assert!(task.is_some());
    wait_for(&mut window, "your design is safe");
    assert_eq!(design(&window).title, "Safe");
    assert_eq!(undo_label(&window), Some("title"));
}

#[test]
fn every_stage_has_a_page_of_help_that_escape_closes() {
    let mut window = demo("tea-box");
    for stage in Stage::ALL {
        go(&mut window, stage);
        click(&mut window, "Help");
        window.get_by_label(&format!("Help: {}", stage.name()));
        for part in ["What to do", "What the words mean"] {
            window.get_by_label(part);
        }
        window.key_press(Key::Escape);
        window.run_steps(4);
        assert!(!shows(&window, "What the words mean"), "{}", stage.name());
    }
    window.key_press_modifiers(Modifiers::SHIFT, Key::F1);
    window.run_steps(4);
    window.get_by_label("Help: Give");
    // in a small window it is read on by keys
    go_small(&mut window);
    let top = |window: &Window| window.get_by_label("What to do").rect().top();
    let before = top(&window);
    window.key_press(Key::PageDown);
    window.run_steps(30);
    assert!(top(&window) < before);
}

fn go_small(window: &mut Window) {
    window.set_size(egui::vec2(1024.0, 420.0));
    window.run_steps(6);
}
