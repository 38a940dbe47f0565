//! `latchwright papers` as a maker meets it: one folder with everything, or nothing at all.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Output;

use assert_cmd::Command;

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../demo")
        .join(format!("{name}.latch.ron"))
}

fn papers(file: &Path, out: &Path, more: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_latchwright"));
    command.env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY");
    command.arg("papers").arg(file).arg("--out").arg(out);
    command.args(more).output().expect("the program starts")
}

fn said(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).expect("text")
}

/// Every file below `folder`, hidden ones too, with its bytes.
fn all(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let mut found = BTreeMap::new();
    let mut left = vec![folder.to_owned()];
    while let Some(next) = left.pop() {
        for entry in fs::read_dir(next).expect("a folder") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                left.push(path);
                continue;
            }
            let name = path.strip_prefix(folder).expect("below");
            let bytes = fs::read(&path).expect("read");
            found.insert(name.to_string_lossy().into_owned(), bytes);
        }
    }
    found
}

#[test]
fn every_demo_gets_all_papers_and_the_same_bytes_again() {
    for name in ["tea-box", "letters-chest", "toy-post-box", "spice-box-inch"] {
        let place = tempfile::tempdir().expect("a folder");
        let [first, again] = ["first", "again"].map(|name| place.path().join(name));
        let output = papers(&demo(name), &first, &[]);
        assert_eq!(output.status.code(), Some(0), "{name}: {output:?}");
        assert_eq!(said(&output.stderr), "", "{name}");
        let files = all(&first);
        for wanted in [
            "templates.pdf",
            "cut-list.pdf",
            "order-of-work.pdf",
            "setting.pdf",
            "for-the-recipient/card.pdf",
        ] {
            let pdf = files
                .get(wanted)
                .unwrap_or_else(|| panic!("{name}: no {wanted}"));
            assert!(pdf.starts_with(b"%PDF-"), "{name}: {wanted}");
        }
        for part in [
            "plate-from-outside",
            "slider",
            "keeper",
            "front",
            "left-side",
        ] {
            let has = |ending: &str| files.contains_key(&format!("drawings/{part}.{ending}"));
            // a printed slider has no template
            assert!(
                part == "slider" || (has("svg") && has("dxf")),
                "{name}: {part}"
            );
            assert_eq!(has("svg"), has("dxf"), "{name}: {part}");
        }
        let listed = said(&output.stdout);
        for file in files.keys() {
            assert!(listed.contains(file.as_str()), "{name}: {file} is not told");
        }
        papers(&demo(name), &again, &[]);
        assert_eq!(all(&again), files, "{name}");
    }
}

#[test]
fn a_folder_with_papers_in_it_is_left_alone_unless_asked() {
    let place = tempfile::tempdir().expect("a folder");
    fs::write(place.path().join("setting.pdf"), "mine").expect("written");
    let output = papers(&demo("tea-box"), place.path(), &[]);
    assert_eq!(output.status.code(), Some(2));
    let words = said(&output.stderr);
    assert!(words.contains("setting.pdf exists already"), "{words}");
    assert_eq!(all(place.path()).len(), 1);
    let output = papers(&demo("tea-box"), place.path(), &["--replace"]);
    assert_eq!(output.status.code(), Some(0));
    assert!(all(place.path())["setting.pdf"].starts_with(b"%PDF-"));
}

#[test]
fn what_cannot_be_made_leaves_no_folder_behind() {
    let place = tempfile::tempdir().expect("a folder");
    let cases: [(&str, &str, &str); 6] = [
        (
            "width: 220.0",
            "width: 4950.0",
            "sheets of A4 or Letter, more than 20",
        ),
        ("width: 220.0", "width: -5.0", "a size must be above 0"),
        (
            "boards: []",
            "boards: [(wood: \"oak\", length: -600.0, width: 90.0, thickness: 15.0, count: 1)]",
            "`board length` is -600 mm",
        ),
        (
            "title: \"Tea box for the window seat\"",
            "title: \"\"",
            "has no name",
        ),
        ("title: \"", "title: \"\u{16000}", "\u{16000}"),
        ("format: 1", "format: 7", "format 7"),
    ];
    let text = fs::read_to_string(demo("tea-box")).expect("read");
    for (number, (old, new, word)) in cases.into_iter().enumerate() {
        assert!(text.contains(old), "{old}");
        let file = place.path().join(format!("{number}.latch.ron"));
        fs::write(&file, text.replacen(old, new, 1)).expect("written");
        let out = place.path().join("out");
        let output = papers(&file, &out, &[]);
        let words = said(&output.stderr);
        assert_eq!(output.status.code(), Some(2), "{new}: {words}");
        assert!(words.contains(word), "{new}: {words}");
        assert!(!out.exists(), "{new}");
    }
}

#[test]
fn the_ruler_s_readings_are_told_and_slips_are_refused() {
    let place = tempfile::tempdir().expect("a folder");
    let out = place.path().join("out");
    let slip = papers(
        &demo("tea-box"),
        &out,
        &["--line-x", "4", "--line-y", "100"],
    );
    assert_eq!(slip.status.code(), Some(2));
    assert!(said(&slip.stderr).contains("slip of the ruler"), "{slip:?}");
    assert!(!out.exists());
    let more = ["--line-x", "97.98", "--line-y", "100", "--mirrored"];
    let output = papers(&demo("tea-box"), &out, &more);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    let words = said(&output.stdout);
    // 100 / 97.98 = 1.02062; dial 3 stands 165 from the left: 165 · 0.0202 = 3.33
    for word in ["x × 1.0206, y × 1.0000", "dial 3 bore would be 3.33 mm off"] {
        assert!(words.contains(word), "{word}: {words}");
    }
    let files = all(&out);
    assert!(files.contains_key("templates-mirrored.pdf"));
    let (straight, mirrored) = ("drawings/front.dxf", "drawings/mirrored/front.dxf");
    assert_ne!(files[straight], files[mirrored]);
}

#[test]
fn a_latch_that_is_not_proven_is_made_with_a_warning() {
    let place = tempfile::tempdir().expect("a folder");
    let output = papers(&demo("two-ways"), &place.path().join("out"), &[]);
    assert_eq!(output.status.code(), Some(0));
    assert!(said(&output.stderr).contains("not proven"), "{output:?}");
}
