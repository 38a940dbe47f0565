//! Unsaved work survives the program that held it.

use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, Instant, SystemTime};

use latchwright_model::Design;
use latchwright_session::Session;
use latchwright_session::files::{OnDisk, save};
use latchwright_session::format::Comments;
use latchwright_session::recovery::{Copies, Left, Work, left_behind};
use latchwright_session::{recent, recovery};

const SOON: Duration = Duration::from_millis(10);

fn titled(title: &str) -> Design {
    Design {
        title: title.to_owned(),
        ..Design::default()
    }
}

fn work(title: &str) -> Work {
    Work {
        design: Arc::new(titled(title)),
        comments: Comments::default(),
        file: None,
    }
}

fn copies(folder: &Path) -> Copies {
    Copies::start(folder, SOON, || ())
}

/// The copies that stand in `folder`.
fn standing(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).into_iter().flatten();
    entries
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.to_string_lossy().ends_with(".latch.ron"))
        .collect()
}

fn until(what: &str, mut holds: impl FnMut() -> bool) {
    let start = Instant::now();
    while !holds() {
        assert!(start.elapsed() < Duration::from_secs(20), "{what}");
        std::thread::sleep(Duration::from_millis(5));
    }
}

/// The work that was left behind, once there is any. A program that another test starts holds the locks
/// of this one until it is a program of its own.
fn offered(folder: &Path) -> Vec<Left> {
    let mut left = Vec::new();
    until("work is offered", || {
        left = left_behind(folder);
        !left.is_empty()
    });
    left
}

#[test]
fn work_is_offered_once_the_program_that_held_it_is_gone_and_not_before() {
    let folder = tempfile::tempdir().unwrap();
    let one = copies(folder.path());
    one.keep(work("for Łukasz"));
    until("a copy", || !standing(folder.path()).is_empty());
    assert!(left_behind(folder.path()).is_empty(), "its window is open");
    drop(one);
    let left = offered(folder.path());
    assert_eq!(left.len(), 1);
    assert!(
        left_behind(folder.path()).is_empty(),
        "one window offers it"
    );
    let session = left[0].session();
    assert_eq!(session.design().title, "for Łukasz");
    assert!(session.unsaved());
    drop(left);
    assert_eq!(offered(folder.path()).len(), 1, "not taken, so kept");
}

#[test]
fn what_is_still_to_be_written_is_written_when_the_window_goes() {
    let folder = tempfile::tempdir().unwrap();
    let copies = Copies::start(folder.path(), Duration::from_hours(1), || ());
    copies.keep(work("first"));
    copies.keep(work("second"));
    drop(copies);
    let left = offered(folder.path());
    assert_eq!(left.len(), 1);
    assert_eq!(left[0].session().design().title, "second");
}

#[test]
fn saved_work_leaves_nothing_behind() {
    let folder = tempfile::tempdir().unwrap();
    let copies = copies(folder.path());
    copies.keep(work("soon saved"));
    until("a copy", || !standing(folder.path()).is_empty());
    copies.forget();
    drop(copies);
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn two_windows_keep_a_copy_each() {
    let folder = tempfile::tempdir().unwrap();
    let (one, other) = (copies(folder.path()), copies(folder.path()));
    one.keep(work("one"));
    other.keep(work("other"));
    until("two copies", || standing(folder.path()).len() == 2);
    one.forget();
    until("one goes", || standing(folder.path()).len() == 1);
    drop((one, other));
    let left = offered(folder.path());
    assert_eq!(left.len(), 1);
    assert_eq!(left[0].session().design().title, "other");
}

#[test]
fn work_taken_up_keeps_its_old_copy_until_the_new_one_stands() {
    let folder = tempfile::tempdir().unwrap();
    let before = copies(folder.path());
    before.keep(work("kept"));
    drop(before);
    let old = standing(folder.path());
    let after = copies(folder.path());
    let left = offered(folder.path()).remove(0);
    let design = Arc::clone(left.session().design());
    after.adopt(left);
    after.settle();
    assert_eq!(standing(folder.path()), old);
    after.keep(Work {
        design,
        comments: Comments::default(),
        file: None,
    });
    until("the new copy", || {
        let now = standing(folder.path());
        now.len() == 1 && now != old
    });
    drop(after);
    assert_eq!(offered(folder.path())[0].session().design().title, "kept");
}

#[test]
fn taken_up_work_goes_back_to_its_file_and_asks_where_that_was_changed() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("花子.latch.ron");
    save(&path, &titled("as saved")).unwrap();
    let opened = Session::open(&path).unwrap();
    let copies = copies(&folder.path().join("unsaved"));
    copies.keep(Work {
        design: Arc::new(titled("as changed")),
        comments: Comments::default(),
        file: opened.file().cloned(),
    });
    drop(copies);
    let left = offered(&folder.path().join("unsaved")).remove(0);
    let sentence = left.sentence(SystemTime::now());
    assert_eq!(
        sentence,
        "Work on “as changed” (花子.latch.ron) from less than a minute ago was not saved."
    );
    let hours = SystemTime::now() + Duration::from_mins(125);
    assert!(left.sentence(hours).contains("from 2 hours ago"));
    let mut session = left.session();
    assert_eq!(session.path(), Some(path.as_path()));
    assert_eq!(session.on_disk(), Some(OnDisk::Same));
    assert!(session.undo());
    assert_eq!(session.design().title, "as saved");
    assert!(!session.unsaved());
    session.redo();
    session.save().unwrap();
    assert_eq!(Session::open(&path).unwrap().design().title, "as changed");
    // the same copy again, whose file is now another
    assert_eq!(left.session().on_disk(), Some(OnDisk::Changed));
}

#[test]
fn fields_that_are_not_known_are_still_asked_about_after_work_was_taken_up() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("newer.latch.ron");
    let text = latchwright_session::format::write(&titled("newer")).unwrap();
    let newer = text.replacen("format: 1,", "format: 1,\n    whistle: 3,", 1);
    std::fs::write(&path, &newer).unwrap();
    let opened = Session::open(&path).unwrap();
    assert_eq!(opened.unknown().len(), 1);
    let copies = copies(&folder.path().join("unsaved"));
    copies.keep(Work {
        design: Arc::new(titled("changed")),
        comments: Comments::default(),
        file: opened.file().cloned(),
    });
    drop(copies);
    let left = offered(&folder.path().join("unsaved")).remove(0);
    assert_eq!(left.session().unknown().len(), 1);
}

#[test]
fn a_copy_that_cannot_be_written_is_told_once() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("a file and no folder");
    std::fs::write(&file, "").unwrap();
    let copies = copies(&file);
    copies.keep(work("nowhere"));
    let mut why = None;
    until("a sentence", || {
        why = why.take().or_else(|| copies.trouble());
        why.is_some()
    });
    assert!(
        why.unwrap()
            .starts_with("No copy of your unsaved work could be kept (")
    );
    copies.keep(work("nowhere again"));
    copies.settle();
    assert_eq!(copies.trouble(), None);
    std::fs::remove_file(&file).unwrap();
    copies.keep(work("somewhere"));
    until("a copy", || !standing(&file).is_empty());
}

/// Set for a second process of this test: the folder that its copies go to.
const VICTIM: &str = "LATCHWRIGHT_TEST_COPIES";

#[test]
fn work_of_a_program_that_is_killed_is_offered() {
    if let Some(folder) = std::env::var_os(VICTIM) {
        let copies = copies(Path::new(&folder));
        for number in 0.. {
            copies.keep(work(&format!("change {number}")));
            std::thread::sleep(Duration::from_micros(300));
        }
    }
    for pause in [0, 7, 13, 31, 53] {
        let folder = tempfile::tempdir().unwrap();
        let mut victim = std::process::Command::new(std::env::current_exe().unwrap())
            .args(["--exact", "work_of_a_program_that_is_killed_is_offered"])
            .env(VICTIM, folder.path())
            .stdout(std::process::Stdio::null())
            .spawn()
            .unwrap();
        until("its first copy", || !standing(folder.path()).is_empty());
        std::thread::sleep(Duration::from_millis(pause));
        assert!(left_behind(folder.path()).is_empty(), "it still runs");
        // no chance to write or to tidy up
        victim.kill().unwrap();
        victim.wait().unwrap();
        let left = offered(folder.path());
        assert_eq!(left.len(), 1);
        let session = left[0].session();
        assert!(session.design().title.starts_with("change "));
        assert_eq!(*session.design().as_ref(), titled(&session.design().title));
    }
}

#[test]
fn what_was_told_stands_once_it_has_settled() {
    let folder = tempfile::tempdir().unwrap();
    let copies = copies(folder.path());
    copies.settle();
    copies.keep(work("written"));
    copies.settle();
    assert_eq!(standing(folder.path()).len(), 1);
    copies.forget();
    copies.settle();
    assert!(standing(folder.path()).is_empty());
}

#[test]
fn damaged_copies_and_a_missing_folder_are_no_trouble() {
    let folder = tempfile::tempdir().unwrap();
    assert!(left_behind(&folder.path().join("none")).is_empty());
    std::fs::write(folder.path().join("work-1.latch.ron"), [0; 4037]).unwrap();
    std::fs::write(folder.path().join("work-2.latch.ron"), "// unsaved work {").unwrap();
    assert!(left_behind(folder.path()).is_empty());
    assert_eq!(standing(folder.path()).len(), 2, "left alone");
    // a plain design without the first line is work in no file
    let plain = folder.path().join("work-3.latch.ron");
    save(&plain, &titled("plain")).unwrap();
    let left = offered(folder.path());
    assert_eq!((left.len(), left[0].file()), (1, None));
    left.into_iter().for_each(recovery::Left::throw_away);
    assert!(!plain.exists());
}

#[test]
fn the_last_eight_designs_are_remembered_the_last_one_first_and_each_once() {
    let folder = tempfile::tempdir().unwrap();
    assert!(recent::list(folder.path()).is_empty());
    for name in 0..10 {
        let path = folder.path().join(format!("Zoë {name}.latch.ron"));
        recent::add(folder.path(), &path).unwrap();
    }
    let again = folder.path().join("Zoë 5.latch.ron");
    recent::add(folder.path(), &again).unwrap();
    let paths = recent::list(folder.path());
    assert_eq!((paths.len(), &paths[0]), (recent::MOST, &again));
    assert_eq!(paths.iter().filter(|path| **path == again).count(), 1);
    std::fs::write(folder.path().join("recent.json"), "[1, 2").unwrap();
    assert!(recent::list(folder.path()).is_empty());
}
