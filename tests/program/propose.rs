//! `latchwright propose` and `mend` as a maker meets them.

use std::path::{Path, PathBuf};
use std::process::Output;

use assert_cmd::Command;
use latchwright_model::Design;
use latchwright_proof::prove;
use latchwright_session::{Session, files, format};

fn run(arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_latchwright"));
    command.env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY");
    command
        .args(arguments)
        .output()
        .expect("the program starts")
}

fn said(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).expect("text")
}

fn design(path: &Path) -> Design {
    let session = Session::open(path).expect("a design");
    assert!(!session.blocks_proof());
    session.design().as_ref().clone()
}

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../demo")
        .join(format!("{name}.latch.ron"))
}

#[test]
fn a_lid_gives_three_proven_designs_that_differ_in_kind() {
    let place = tempfile::tempdir().expect("a folder");
    let out = place.path().join("boxes");
    let path = out.to_string_lossy();
    let asked = ["propose", "--lid", "220", "140", "--out", &path];
    let output = run(&asked);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    let words = said(&output.stdout);
    let files = ["roomiest", "most-settings", "smallest"];
    let designs = files.map(|name| design(&out.join(format!("{name}.latch.ron"))));
    for (design, name) in designs.iter().zip(files) {
        assert!(prove(design).proven, "{name}");
        assert!(
            design.plate.width <= 220.0 && design.plate.depth <= 140.0,
            "{name}"
        );
    }
    let settings =
        |design: &Design| -> u32 { design.dials.iter().map(|dial| dial.positions).product() };
    let area = |design: &Design| design.plate.width * design.plate.depth;
    assert!(settings(&designs[1]) > settings(&designs[0]), "{words}");
    assert!(area(&designs[2]) < area(&designs[0]), "{words}");
    assert_eq!(
        run(&asked).status.code(),
        Some(2),
        "designs that are there stay"
    );
    let replaced = run(&[&asked[..], &["--replace"]].concat());
    assert_eq!(replaced.status.code(), Some(0), "{replaced:?}");
    let again = run(&["propose", "--lid", "220", "140"]);
    assert_eq!(
        said(&again.stdout),
        words,
        "the same question, the same answer"
    );
}

#[test]
fn what_more_would_buy_is_measured_from_what_is_proposed_in_words_and_for_programs() {
    let asked = [
        "propose",
        "--lid",
        "160",
        "120",
        "--dials",
        "1",
        "--frontier",
    ];
    let output = run(&asked);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    let words = said(&output.stdout);
    let json = run(&[&asked[..], &["--json"]].concat());
    let json: serde_json::Value = serde_json::from_slice(&json.stdout).expect("JSON");
    let most = json["proposals"][1]["settings"].as_str().expect("settings");
    let beyond = &json["frontier"];
    for better in beyond["better"].as_array().expect("steps") {
        assert_eq!(better["settings"][0].as_str(), Some(most), "{json:#}");
        assert_eq!(better["room"][0], json["proposals"][0]["room"], "{json:#}");
        let name = better["name"].as_str().expect("a name");
        assert!(words.contains(&format!("  {name}: ")), "{words}");
    }
    let lids = beyond["lids"].as_array().expect("lids");
    let wide = |lid: &serde_json::Value| lid["lid_mm"][0].as_f64().expect("mm");
    assert!(lids.iter().any(|lid| wide(lid) > 160.0), "{json:#}");
    let marks = |lid: &serde_json::Value| lid["marks"].as_array().expect("marks").len();
    assert!(lids.iter().any(|lid| marks(lid) > 1), "{json:#}");
    assert!(
        words.contains("  your lid, 160.0 mm × 120.0 mm: "),
        "{words}"
    );
    assert!(words.contains("1 dial of "), "{words}");
}

#[test]
fn words_inches_and_care_are_kept() {
    let place = tempfile::tempdir().expect("a folder");
    let out = place.path().join("boxes");
    let output = run(&[
        "propose",
        "--inches",
        "--lid",
        "9 1/2 in",
        "6",
        "--words",
        "oak,ash,elm,yew,fir,box",
        "--dials",
        "2",
        "--care",
        "jig",
        "--youngest",
        "5",
        "--out",
        &out.to_string_lossy(),
    ]);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    let found = design(&out.join("roomiest.latch.ron"));
    assert!((found.plate.width - 9.5 * 25.4).abs() < 1e-9);
    assert_eq!(
        (found.dials.len(), found.dials[1].label(2)),
        (2, "elm".to_owned())
    );
    assert!((found.workmanship.pin_place - 0.125).abs() < 1e-9);
    assert_eq!(found.card.youngest, 5);
}

#[test]
fn what_cannot_be_had_is_said_and_nothing_is_written() {
    let place = tempfile::tempdir().expect("a folder");
    let out = place.path().join("boxes");
    let path = out.to_string_lossy();
    let output = run(&[
        "propose", "--lid", "100", "90", "--dials", "6", "--out", &path,
    ]);
    assert_eq!(output.status.code(), Some(1), "{output:?}");
    assert!(said(&output.stdout).len() > 20, "{output:?}");
    assert!(!out.exists());
    let json = run(&["propose", "--lid", "100", "90", "--dials", "6", "--json"]);
    let value: serde_json::Value = serde_json::from_slice(&json.stdout).expect("JSON");
    assert_eq!(value["proposals"].as_array().map(Vec::len), Some(0));
    assert!(value["why"].as_str().is_some_and(|why| why.len() > 10));
    let bad = run(&["propose", "--lid", "-5", "nan"]);
    assert!(
        bad.status.code() == Some(2) || bad.status.code() == Some(1),
        "{bad:?}"
    );
    assert!(!said(&bad.stderr).contains("panicked"), "{bad:?}");
}

#[test]
fn a_design_is_mended_into_a_new_file_and_a_proven_one_left_alone() {
    let place = tempfile::tempdir().expect("a folder");
    let mut short = Design::default();
    short.tab.engagement = 5.0;
    let [bad, good] = ["bad", "good"].map(|name| place.path().join(format!("{name}.latch.ron")));
    files::save(&bad, &short).expect("saved");
    let (bad_path, good_path) = (bad.to_string_lossy(), good.to_string_lossy());
    let output = run(&["mend", &bad_path, "--out", &good_path]);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    assert!(
        said(&output.stdout).contains("then it is proven"),
        "{output:?}"
    );
    assert!(prove(&design(&good)).proven);
    assert_eq!(design(&bad), short, "the old file is as it was");
    let again = run(&["mend", &bad_path, "--out", &good_path]);
    assert_eq!(again.status.code(), Some(2), "a file that is there stays");
    let nothing = run(&["mend", &demo("tea-box").to_string_lossy()]);
    assert_eq!(nothing.status.code(), Some(1));
    assert!(said(&nothing.stdout).contains("nothing to mend"));
}

#[test]
fn comments_of_the_file_go_along_into_what_is_mended_and_those_of_the_bench_into_proposals() {
    let place = tempfile::tempdir().expect("a folder");
    let mut short = Design::default();
    short.tab.engagement = 5.0;
    let [file, mended, out] =
        ["bad.latch.ron", "good.latch.ron", "out"].map(|name| place.path().join(name));
    let mut text = format::write(&short).expect("a text");
    for (from, to) in [
        ("(\n    format", "// For Anna.\n(\n    format"),
        ("    tab: (", "    // filed by hand\n    tab: ("),
        (
            "        bits: [",
            "        // sharpened in May\n        bits: [",
        ),
    ] {
        assert!(text.contains(from), "{from}");
        text = text.replacen(from, to, 1);
    }
    std::fs::write(&file, &text).expect("written");
    let (from, to) = (file.to_string_lossy(), mended.to_string_lossy());
    let output = run(&["mend", &from, "--out", &to]);
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    let read = |path: &Path| std::fs::read_to_string(path).expect("a text");
    let good = read(&mended);
    assert!(good.starts_with("// For Anna.\n(\n"), "{good}");
    assert!(good.contains("    // filed by hand\n    tab: ("), "{good}");
    assert!(
        good.contains("        // sharpened in May\n        bits: ["),
        "{good}"
    );
    let folder = out.to_string_lossy();
    let lid = ["propose", "--lid", "220", "140"];
    let with = ["--dials", "2", "--bench", &from, "--out", &folder];
    let output = run(&[&lid[..], &with].concat());
    assert_eq!(output.status.code(), Some(0), "{output:?}");
    let mut proposals = 0;
    for entry in std::fs::read_dir(&out).expect("a folder") {
        let text = read(&entry.expect("an entry").path());
        assert!(
            text.contains("        // sharpened in May\n        bits: ["),
            "{text}"
        );
        assert!(!text.contains("Anna") && !text.contains("filed"), "{text}");
        proposals += 1;
    }
    assert_eq!(proposals, 3);
}
