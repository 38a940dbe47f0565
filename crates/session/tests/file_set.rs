//! Several files as one: all or none, and nothing replaced unasked.

use std::fs;
use std::path::Path;

use latchwright_session::file_set::{NewFile, Replace, existing, write_file_set};
use latchwright_session::files::FileError;

fn file(name: &str, text: &str) -> NewFile {
    NewFile {
        name: name.to_owned(),
        bytes: text.as_bytes().to_vec(),
    }
}

/// Every path below `folder`, hidden ones too, in order.
fn all(folder: &Path) -> Vec<String> {
    let mut found = Vec::new();
    let mut left = vec![folder.to_owned()];
    while let Some(next) = left.pop() {
        for entry in fs::read_dir(next).expect("a folder") {
            let path = entry.expect("an entry").path();
            let name = path.strip_prefix(folder).expect("below").to_owned();
            found.push(name.to_string_lossy().into_owned());
            if path.is_dir() {
                left.push(path);
            }
        }
    }
    found.sort();
    found
}

fn text(path: &Path) -> String {
    fs::read_to_string(path).expect("text")
}

#[test]
fn all_files_are_written_into_a_new_folder() {
    let place = tempfile::tempdir().expect("a folder");
    let out = place.path().join("for the bench/tea");
    let files = [file("a.txt", "A"), file("drawings/b.txt", "B")];
    write_file_set(&out, &files, Replace::Never).expect("written");
    assert_eq!(all(&out), ["a.txt", "drawings", "drawings/b.txt"]);
    assert_eq!(text(&out.join("drawings/b.txt")), "B");
}

#[test]
fn nothing_is_replaced_unasked_and_all_that_is_there_is_named() {
    let place = tempfile::tempdir().expect("a folder");
    fs::write(place.path().join("b.txt"), "mine").expect("written");
    let files = [file("a.txt", "A"), file("b.txt", "B")];
    let error = write_file_set(place.path(), &files, Replace::Never).expect_err("refused");
    assert!(matches!(&error, FileError::Exist { paths } if paths.len() == 1));
    let words = error.to_string();
    assert!(
        words.ends_with(
            "b.txt exists already; choose another folder, or allow replacing what is there"
        ),
        "{words}"
    );
    assert_eq!(all(place.path()), ["b.txt"]);
    assert_eq!(text(&place.path().join("b.txt")), "mine");
    write_file_set(place.path(), &files, Replace::Allowed).expect("written");
    assert_eq!(all(place.path()), ["a.txt", "b.txt"]);
    assert_eq!(text(&place.path().join("b.txt")), "B");
    assert_eq!(existing(place.path(), &files).len(), 2);
}

#[test]
fn a_folder_with_the_name_of_a_file_leaves_all_as_it_was() {
    let place = tempfile::tempdir().expect("a folder");
    fs::write(place.path().join("a.txt"), "mine").expect("written");
    fs::create_dir(place.path().join("z.txt")).expect("made");
    let files = [
        file("a.txt", "A"),
        file("new/c.txt", "C"),
        file("z.txt", "Z"),
    ];
    let error = write_file_set(place.path(), &files, Replace::Allowed).expect_err("refused");
    assert!(matches!(error, FileError::IsFolder { .. }), "{error}");
    assert_eq!(all(place.path()), ["a.txt", "z.txt"]);
    assert_eq!(text(&place.path().join("a.txt")), "mine");
}

#[test]
fn what_was_replaced_comes_back_when_a_later_file_cannot_be() {
    let place = tempfile::tempdir().expect("a folder");
    let [first, last] = ["a.txt", "z.txt"].map(|name| place.path().join(name));
    fs::write(&first, "mine").expect("written");
    fs::write(&last, "kept").expect("written");
    let mut rights = fs::metadata(&last).expect("there").permissions();
    rights.set_readonly(true);
    fs::set_permissions(&last, rights).expect("set");
    let files = [file("a.txt", "A"), file("b/c.txt", "C"), file("z.txt", "Z")];
    let error = write_file_set(place.path(), &files, Replace::Allowed).expect_err("refused");
    assert!(matches!(error, FileError::Protected { .. }), "{error}");
    assert_eq!(all(place.path()), ["a.txt", "z.txt"]);
    assert_eq!(
        (text(&first), text(&last)),
        ("mine".to_owned(), "kept".to_owned())
    );
}

#[test]
fn a_file_in_the_place_of_the_folder_is_said() {
    let place = tempfile::tempdir().expect("a folder");
    let out = place.path().join("taken");
    fs::write(&out, "mine").expect("written");
    let error = write_file_set(&out, &[file("a.txt", "A")], Replace::Never).expect_err("refused");
    assert!(
        error.to_string().contains("a.txt cannot be saved: "),
        "{error}"
    );
    assert_eq!(all(place.path()), ["taken"]);
}

#[cfg(unix)]
#[test]
fn a_pipe_is_not_replaced_even_where_files_may_be() {
    use std::os::unix::fs::FileTypeExt as _;
    let place = tempfile::tempdir().expect("a folder");
    let pipe = place.path().join("b.txt");
    let made = std::process::Command::new("mkfifo").arg(&pipe).status();
    assert!(made.expect("a pipe").success());
    let files = [file("a.txt", "A"), file("b.txt", "B")];
    let error = write_file_set(place.path(), &files, Replace::Allowed).expect_err("refused");
    assert!(matches!(error, FileError::NotAFile { ref path } if *path == pipe));
    assert_eq!(all(place.path()), ["b.txt"]);
    let still = fs::symlink_metadata(&pipe).expect("there");
    assert!(still.file_type().is_fifo());
}
