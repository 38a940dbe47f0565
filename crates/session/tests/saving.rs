//! Saving on a real disk: nothing is lost, whatever happens and whoever else is there.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::mpsc;
use std::time::Duration;
use std::{env, fs, thread};

use latchwright_model::Design;
use latchwright_session::document::Session;
use latchwright_session::files::{self, FileError, OnDisk, write_atomically};
use latchwright_session::format;

/// Set for the process that saves until it is killed.
const SAVE_INTO: &str = "LATCHWRIGHT_TEST_SAVE_INTO";

fn long_design(title: &str) -> Design {
    let mut design = Design {
        title: title.to_owned(),
        ..Design::default()
    };
    design.card.greeting = title.repeat(20_000);
    design
}

#[test]
fn a_saving_process_that_is_killed_leaves_a_whole_file() {
    if let Some(path) = env::var_os(SAVE_INTO) {
        let mut session = Session::open(Path::new(&path)).unwrap();
        loop {
            for title in ["one", "other"] {
                session.edit("change all", |design| *design = long_design(title));
                session.save_anyway().unwrap();
            }
        }
    }
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("box.latch.ron");
    Session::of(long_design("one")).save_as(&path).unwrap();
    let texts = ["one", "other"].map(|title| format::write(&long_design(title)).unwrap());
    let mut seen_other = false;
    for kill in 0..40 {
        let mut child = Command::new(env::current_exe().unwrap())
            .args([
                "--exact",
                "a_saving_process_that_is_killed_leaves_a_whole_file",
            ])
            .env(SAVE_INTO, &path)
            .spawn()
            .unwrap();
        thread::sleep(Duration::from_millis(15 + kill * 2));
        child.kill().unwrap();
        child.wait().unwrap();
        let text = fs::read_to_string(&path).unwrap();
        assert!(texts.contains(&text), "half a file after kill {kill}");
        seen_other |= text == texts[1];
    }
    assert!(seen_other, "no child ever saved");
}

#[test]
fn a_session_saves_opens_and_saves_the_same_bytes() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("box.latch.ron");
    let mut session = Session::new();
    session.edit("rename", |design| design.title = "Zoë's box".to_owned());
    assert!(session.unsaved());
    assert_eq!(session.title(), "Zoë's box (not saved)");
    assert!(matches!(session.save(), Err(FileError::NoPath)));
    session.save_as(&path).unwrap();
    assert_eq!(session.title(), "Zoë's box – box.latch.ron");
    let first = fs::read(&path).unwrap();
    let mut again = Session::open(&path).unwrap();
    assert_eq!(again.design(), session.design());
    again.save().unwrap();
    assert_eq!(fs::read(&path).unwrap(), first);
    let left: Vec<_> = fs::read_dir(folder.path()).unwrap().collect();
    assert_eq!(left.len(), 1, "{left:?}");
}

#[test]
fn a_file_changed_by_another_program_is_not_saved_over_unasked() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("box.latch.ron");
    let mut session = Session::new();
    session.save_as(&path).unwrap();
    assert_eq!(session.on_disk(), Some(OnDisk::Same));
    let text = fs::read_to_string(&path).unwrap();
    fs::write(&path, text.replace("Untitled box", "Another box!")).unwrap();
    assert_eq!(session.on_disk(), Some(OnDisk::Changed));
    let refusal = session.save().unwrap_err().to_string();
    assert!(refusal.ends_with(
        "box.latch.ron was changed by another program since it was opened; \
         save under another name, or save over it"
    ));
    fs::write(&path, &text).unwrap();
    assert_eq!(
        session.on_disk(),
        Some(OnDisk::Same),
        "the same bytes are no change"
    );
    fs::remove_file(&path).unwrap();
    assert_eq!(session.on_disk(), Some(OnDisk::Gone));
    session.save().unwrap();
    assert_eq!(fs::read_to_string(&path).unwrap(), text);
}

#[test]
fn a_design_that_cannot_be_written_leaves_the_file_alone() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("box.latch.ron");
    let mut session = Session::new();
    session.save_as(&path).unwrap();
    let before = fs::read(&path).unwrap();
    session.edit("spoil", |design| design.plate.width = f64::NAN);
    let refusal = session.save().unwrap_err().to_string();
    assert!(refusal.ends_with(
        "was not saved: plate.width is NaN, which cannot be saved; give it a plain number"
    ));
    assert_eq!(fs::read(&path).unwrap(), before);
    assert!(session.unsaved());
}

#[test]
fn paths_that_cannot_be_used_say_why() {
    let folder = tempfile::tempdir().unwrap();
    let sentence = |path: &Path| Session::open(path).unwrap_err().to_string();
    assert!(sentence(folder.path()).ends_with("is a folder; choose a file in it"));
    let missing = folder.path().join("none.latch.ron");
    assert!(
        sentence(&missing)
            .ends_with("cannot be read: there is no such file or folder; check the path")
    );
    let save = |path: &Path| Session::new().save_as(path).unwrap_err().to_string();
    assert!(save(folder.path()).ends_with("is a folder; choose a file in it"));
    assert!(
        save(&folder.path().join("no/such/box.ron"))
            .ends_with("cannot be saved: there is no such file or folder; check the path")
    );
    fs::write(folder.path().join("file"), "x").unwrap();
    assert!(
        save(&folder.path().join("file/box.ron"))
            .ends_with("cannot be saved: a part of the path is a file and no folder")
    );
    assert!(
        save(&folder.path().join("x".repeat(300)))
            .ends_with("cannot be saved: the name is too long or has signs it cannot have")
    );
}

/// A pipe with a name in `folder`, into which nobody writes.
#[cfg(unix)]
fn pipe(folder: &Path, name: &str) -> PathBuf {
    let path = folder.join(name);
    let made = Command::new("mkfifo").arg(&path).status().expect("mkfifo");
    assert!(made.success());
    path
}

/// What `work` gives. It is done on a thread that is left behind when it waits without end.
#[cfg(unix)]
fn in_time<T: Send + 'static>(work: impl FnOnce() -> T + Send + 'static) -> T {
    let (sender, receiver) = mpsc::channel();
    thread::spawn(move || sender.send(work()));
    receiver
        .recv_timeout(Duration::from_secs(20))
        .expect("it waits for somebody at the other end")
}

#[cfg(unix)]
#[test]
fn a_pipe_or_a_device_is_refused_and_not_waited_for() {
    use std::os::unix::fs::FileTypeExt as _;
    let folder = tempfile::tempdir().unwrap();
    let (place, fifo) = (
        folder.path().to_owned(),
        pipe(folder.path(), "box.latch.ron"),
    );
    let link = place.join("link.latch.ron");
    std::os::unix::fs::symlink(&fifo, &link).unwrap();
    for path in [fifo.clone(), link.clone(), PathBuf::from("/dev/zero")] {
        let sentence = format!(
            "{} is a pipe or a device and no file; choose a file",
            path.display()
        );
        let (open, save, write) = (path.clone(), path.clone(), path.clone());
        let said = in_time(move || Session::open(&open).unwrap_err().to_string());
        assert_eq!(said, sentence);
        let said = in_time(move || Session::new().save_as(&save).unwrap_err().to_string());
        assert_eq!(said, sentence);
        let said = in_time(move || write_atomically(&write, b"x").unwrap_err().to_string());
        assert_eq!(said, sentence);
    }
    for path in [fifo.clone(), link] {
        let said = in_time(move || files::create(&path).unwrap_err().to_string());
        assert!(said.ends_with("choose a file"), "{said}");
    }
    let still = fs::symlink_metadata(&fifo).unwrap();
    assert!(still.file_type().is_fifo(), "nothing took its place");
}

#[cfg(unix)]
#[test]
fn a_pipe_that_takes_the_place_of_an_open_design_is_a_change_of_it() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("box.latch.ron");
    let mut session = Session::new();
    session.save_as(&path).unwrap();
    fs::remove_file(&path).unwrap();
    pipe(folder.path(), "box.latch.ron");
    let (seen, refusal) = in_time(move || (session.on_disk(), session.save().unwrap_err()));
    assert_eq!(seen, Some(OnDisk::Changed));
    assert!(matches!(refusal, FileError::ChangedOnDisk { .. }));
}

#[test]
fn a_file_of_two_hundred_megabytes_is_refused_without_reading_it() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("large.ron");
    fs::File::create(&path)
        .unwrap()
        .set_len(200_000_000)
        .unwrap();
    let refusal = Session::open(&path).unwrap_err().to_string();
    assert!(refusal.ends_with(
        "the file has 200000000 bytes and a design has at most 4194304; \
         is it a file of another kind?"
    ));
}

#[cfg(unix)]
#[test]
fn rights_of_a_file_are_kept_and_protection_is_respected() {
    use std::os::unix::fs::PermissionsExt as _;
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("box.ron");
    let mode = |path: &Path| fs::metadata(path).unwrap().permissions().mode() & 0o777;
    let allow = |mode: u32| fs::set_permissions(&path, fs::Permissions::from_mode(mode)).unwrap();
    fs::write(folder.path().join("plain"), "").unwrap();
    write_atomically(&path, b"1").unwrap();
    assert_eq!(
        mode(&path),
        mode(&folder.path().join("plain")),
        "a new file is like any other"
    );
    allow(0o640);
    write_atomically(&path, b"2").unwrap();
    assert_eq!(mode(&path), 0o640);
    allow(0o444);
    let refusal = write_atomically(&path, b"3").unwrap_err().to_string();
    assert!(refusal.contains("is write-protected; save under another name"));
    assert_eq!(fs::read(&path).unwrap(), b"2");
}

#[cfg(unix)]
#[test]
fn a_link_stays_a_link() {
    let folder = tempfile::tempdir().unwrap();
    let (real, link) = (
        folder.path().join("real.ron"),
        folder.path().join("link.ron"),
    );
    write_atomically(&real, b"1").unwrap();
    std::os::unix::fs::symlink(&real, &link).unwrap();
    write_atomically(&link, b"2").unwrap();
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    assert_eq!(fs::read(&real).unwrap(), b"2");
}

#[test]
fn what_a_file_left_out_or_had_too_much_is_settled_by_a_save() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("box.ron");
    fs::write(&path, "(format: 1, colour: 3)").unwrap();
    let mut session = Session::open(&path).unwrap();
    assert!(session.blocks_proof() && !session.notices().is_empty());
    session.save().unwrap();
    assert!(!session.blocks_proof() && session.notices().is_empty());
    assert!(Session::open(&path).unwrap().notices().is_empty());
}
