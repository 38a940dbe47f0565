//! `latchwright parts` as a maker meets it: every demo can be printed, all or nothing.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Output;

use assert_cmd::Command;

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../demo")
        .join(format!("{name}.latch.ron"))
}

fn parts(file: &Path, out: &Path, more: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_latchwright"));
    command.env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY");
    command.arg("parts").arg(file).arg("--out").arg(out);
    command.args(more).output().expect("the program starts")
}

fn said(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).expect("text")
}

/// Name and bytes of every file in `folder`, in order.
fn all(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let entries = fs::read_dir(folder).expect("a folder");
    let mut found: Vec<(String, Vec<u8>)> = entries
        .map(|entry| {
            let path = entry.expect("an entry").path();
            let name = path.file_name().expect("a name").to_string_lossy();
            (name.into_owned(), fs::read(&path).expect("read"))
        })
        .collect();
    found.sort();
    found
}

#[test]
fn every_demo_can_be_printed_with_the_same_bytes_again() {
    for name in [
        "tea-box",
        "letters-chest",
        "toy-post-box",
        "two-ways",
        "spice-box-inch",
    ] {
        let place = tempfile::tempdir().expect("a folder");
        let [first, again] = ["first", "again"].map(|name| place.path().join(name));
        let output = parts(&demo(name), &first, &[]);
        assert_eq!(output.status.code(), Some(0), "{name}: {output:?}");
        let files = all(&first);
        let ends =
            |name: &str, ending: &str| Path::new(name).extension().is_some_and(|is| is == ending);
        let beds = files.iter().filter(|(name, _)| ends(name, "3mf"));
        assert!(beds.count() > 0, "{name}");
        let solids: Vec<_> = files.iter().filter(|(name, _)| ends(name, "stl")).collect();
        assert!(solids.len() > 8, "{name}: {}", solids.len());
        let list = fs::read_to_string(first.join("parts.txt")).expect("a list");
        for (file, bytes) in &solids {
            let count = u32::from_le_bytes(bytes[80..84].try_into().expect("four bytes"));
            assert_eq!(bytes.len(), 84 + 50 * count as usize, "{name}: {file}");
            assert!(list.contains(file.as_str()), "{name}: {file} is not listed");
        }
        parts(&demo(name), &again, &[]);
        assert_eq!(all(&again), files, "{name}");
    }
}

#[test]
fn parts_that_are_there_are_left_alone_unless_asked() {
    let place = tempfile::tempdir().expect("a folder");
    fs::write(place.path().join("parts.txt"), "mine").expect("written");
    let output = parts(
        &demo("tea-box"),
        place.path(),
        &["--knobs", "lobed", "--sunk"],
    );
    assert_eq!(output.status.code(), Some(2));
    assert!(said(&output.stderr).contains("parts.txt exists already"));
    assert_eq!(all(place.path()).len(), 1);
    let more = ["--knobs", "lobed", "--sunk", "--replace"];
    let output = parts(&demo("tea-box"), place.path(), &more);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    assert!(all(place.path()).len() > 10);
}

#[test]
fn what_cannot_be_printed_is_named_with_a_remedy_before_anything_is_written() {
    let place = tempfile::tempdir().expect("a folder");
    let text = fs::read_to_string(demo("letters-chest")).expect("read");
    let thin = text.replace("sides: 3, apothem: 3.0", "sides: 3, apothem: 2.0");
    assert_ne!(text, thin);
    let file = place.path().join("thin.latch.ron");
    fs::write(&file, thin).expect("written");
    let out = place.path().join("out");
    let output = parts(&file, &out, &[]);
    assert_eq!(output.status.code(), Some(2));
    let words = said(&output.stderr);
    for word in [
        "Disc 1: only",
        "mm of wall",
        "make the key's apothem at least",
    ] {
        assert!(words.contains(word), "{word}: {words}");
    }
    assert!(!out.exists());
}

#[test]
fn the_maker_s_words_are_raised_round_the_knobs() {
    let place = tempfile::tempdir().expect("a folder");
    let mut design = latchwright_session::Session::demo("tea-box")
        .expect("a demo")
        .design()
        .as_ref()
        .clone();
    let words = ["oak", "ash", "elm", "yew", "fir", "box", "fig", "bay"];
    for dial in &mut design.dials {
        let words = words.map(str::to_owned).to_vec();
        dial.labels = latchwright_model::Labels::Words(words);
    }
    let file = place.path().join("words.latch.ron");
    latchwright_session::files::save(&file, &design).expect("saved");
    let out = place.path().join("out");
    let output = parts(&file, &out, &[]);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    let figures = place.path().join("figures");
    parts(&demo("tea-box"), &figures, &[]);
    let ring = |folder: &Path| {
        let files = all(folder);
        let ring = files
            .iter()
            .find(|(name, _)| name.to_lowercase().contains("ring"));
        ring.map(|(_, bytes)| bytes.len())
            .expect("a ring of labels")
    };
    assert!(
        ring(&out) > ring(&figures),
        "letters have more facets than figures"
    );
}
