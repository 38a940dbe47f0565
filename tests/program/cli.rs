//! The command line as a maker or a script meets it: exit codes, words, JSON, hostile files.

use std::path::{Path, PathBuf};
use std::process::Output;
use std::time::{Duration, Instant};

use assert_cmd::Command;
use serde_json::Value;

fn latchwright() -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_latchwright"));
    command.env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY");
    command
}

fn demo(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../demo")
        .join(format!("{name}.latch.ron"))
}

fn run(arguments: &[&str]) -> Output {
    latchwright()
        .args(arguments)
        .output()
        .expect("the program starts")
}

fn said(output: &Output) -> (String, String) {
    let text = |bytes: &[u8]| String::from_utf8(bytes.to_vec()).expect("text");
    (text(&output.stdout), text(&output.stderr))
}

fn json(name: &str) -> Value {
    let output = run(&["prove", &demo(name).to_string_lossy(), "--json"]);
    serde_json::from_slice(&output.stdout).expect("JSON")
}

#[test]
fn every_demo_proves_as_it_says() {
    for (name, code, opens, total) in [
        ("tea-box", 0, 1, 512),
        ("letters-chest", 0, 1, 1296),
        ("toy-post-box", 0, 1, 144),
        ("two-ways", 1, 2, 1728),
        ("spice-box-inch", 0, 1, 512),
    ] {
        let output = run(&["prove", &demo(name).to_string_lossy()]);
        assert_eq!(output.status.code(), Some(code), "{name}");
        let (words, complaints) = said(&output);
        assert!(
            words.contains("lid lifts") && complaints.is_empty(),
            "{name}: {words}{complaints}"
        );
        let value = json(name);
        assert_eq!(value["proven"], code == 0, "{name}");
        assert_eq!(value["settings"]["opens"], opens, "{name}");
        assert_eq!(value["settings"]["total"], total, "{name}");
        assert_eq!(value["settings"]["unsure"], 0, "{name}");
    }
}

#[test]
fn the_json_has_the_agreed_fields() {
    let value = json("tea-box");
    assert_eq!(value["format"], 1);
    assert_eq!(value["states"].as_array().map(Vec::len), Some(4));
    let dial = &value["dials"][1];
    assert_eq!(
        (&dial["dial"], &dial["digit"]),
        (&Value::from(2), &Value::from(6))
    );
    assert!(dial["sure_window_deg"].as_f64() < dial["possible_window_deg"].as_f64());
    let mark = &dial["marks"][5];
    assert_eq!(mark["verdict"], "holds");
    assert_eq!(mark["stops_at"], "rim");
    assert!((mark["reach_mm"].as_f64().expect("a number") - 3.0).abs() < 1e-9);
    assert!(mark["creep_mm"].as_f64() > Some(3.0) && mark["hold_margin_mm"].as_f64() > Some(0.0));
    assert_eq!(dial["marks"][6]["stops_at"], "free");
    let check = value["checks"]
        .as_array()
        .and_then(|checks| checks.iter().find(|check| check["check"] == "at-rest"))
        .expect("the check at rest");
    for field in [
        "dial",
        "value",
        "limit",
        "margin",
        "unit",
        "verdict",
        "decided_by",
        "remedy",
    ] {
        assert!(!check[field].is_null(), "{field}");
    }
}

#[test]
fn counts_beyond_two_to_the_53_are_strings() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("many.latch.ron");
    let mut design = latchwright_model::Design::default();
    let dial = design.dials[0].clone();
    design.dials = (0..12)
        .map(|_| latchwright_model::Dial {
            positions: 360,
            ..dial.clone()
        })
        .collect();
    design.combination = vec![0; 12];
    latchwright_session::files::save(&path, &design).expect("saved");
    let output = run(&["prove", &path.to_string_lossy(), "--json"]);
    assert_eq!(output.status.code(), Some(1));
    let value: Value = serde_json::from_slice(&output.stdout).expect("JSON");
    assert_eq!(value["settings"]["total"], 360_u128.pow(12).to_string());
}

#[test]
fn settings_are_listed_whole_filtered_and_as_a_table() {
    let file = demo("tea-box");
    let file = file.to_string_lossy();
    let (words, _) = said(&run(&["settings", &file]));
    assert_eq!(words.lines().count(), 512);
    let (words, _) = said(&run(&["settings", &file, "--verdict", "opens"]));
    assert_eq!(words.lines().count(), 1);
    assert!(words.starts_with("4 7 2  opens  dial "), "{words}");
    let folder = tempfile::tempdir().expect("a folder");
    let out = folder.path().join("settings.csv");
    let output = run(&[
        "settings",
        &file,
        "--verdict",
        "locks",
        "--csv",
        &out.to_string_lossy(),
    ]);
    assert_eq!(output.status.code(), Some(0));
    let mut table = csv::Reader::from_path(&out).expect("a table");
    assert_eq!(table.records().count(), 511);
    assert_eq!(table.headers().expect("heads").len(), 6);
}

#[test]
fn the_card_is_one_page_at_true_size_and_the_same_each_time() {
    let folder = tempfile::tempdir().expect("a folder");
    let (one, two) = (folder.path().join("one.pdf"), folder.path().join("two.pdf"));
    for out in [&one, &two] {
        let file = demo("toy-post-box");
        let output = run(&[
            "card",
            &file.to_string_lossy(),
            "--out",
            &out.to_string_lossy(),
        ]);
        assert_eq!(output.status.code(), Some(0), "{:?}", said(&output));
    }
    assert_eq!(
        std::fs::read(&one).expect("read"),
        std::fs::read(&two).expect("read")
    );
    let pdf = lopdf::Document::load(&one).expect("a PDF");
    assert_eq!(pdf.get_pages().len(), 1);
}

#[test]
fn a_card_of_an_unproven_latch_comes_with_a_warning() {
    let folder = tempfile::tempdir().expect("a folder");
    let out = folder.path().join("card.pdf");
    let file = demo("two-ways");
    let output = run(&[
        "card",
        &file.to_string_lossy(),
        "--out",
        &out.to_string_lossy(),
    ]);
    assert_eq!(output.status.code(), Some(0));
    assert!(said(&output).1.contains("not proven"));
}

#[test]
fn without_a_display_the_program_names_what_works() {
    let output = run(&[]);
    assert_eq!(output.status.code(), Some(2));
    let (_, words) = said(&output);
    assert_eq!(words.lines().count(), 1, "one sentence: {words}");
    for command in [
        "latchwright prove",
        "latchwright settings",
        "latchwright card",
    ] {
        assert!(words.contains(command), "{words}");
    }
}

/// What is refused, and a word of the sentence that says why.
fn hostile() -> Vec<(&'static str, Vec<u8>, &'static str)> {
    let number = |text: &str| format!("(format: 1, plate: (width: {text}))").into_bytes();
    vec![
        ("empty", Vec::new(), "empty"),
        ("zeros", vec![0; 4037], "4037"),
        ("huge", vec![b' '; 200 << 20], "4194304"),
        ("newer", b"(format: 7)".to_vec(), "newer"),
        ("nan", number("NaN"), "width"),
        ("infinite", number("inf"), "width"),
        ("beyond", number("1e999"), "width"),
        (
            "deep",
            [b"(format: 1, dials: ".to_vec(), vec![b'['; 100_000]].concat(),
            "brackets",
        ),
        ("text", b"dear box".to_vec(), "format"),
        (
            "broken",
            b"(format: 1,\n plate: (width: ))".to_vec(),
            "line 2",
        ),
        ("latin", b"(format: 1, title: \"Zo\xeb\")".to_vec(), "UTF-8"),
    ]
}

#[test]
fn hostile_files_are_refused_with_a_sentence_and_left_alone() {
    let folder = tempfile::tempdir().expect("a folder");
    for (name, bytes, word) in hostile() {
        let path = folder.path().join(name);
        std::fs::write(&path, &bytes).expect("written");
        let start = Instant::now();
        let output = run(&["prove", &path.to_string_lossy()]);
        // generous: a loaded machine; the program itself takes a few hundredths
        assert!(start.elapsed() < Duration::from_secs(10), "{name}");
        let (_, words) = said(&output);
        assert_eq!(output.status.code(), Some(2), "{name}: {words}");
        assert!(
            words.contains(word) && !words.contains("panicked"),
            "{name}: {words}"
        );
        assert_eq!(
            std::fs::metadata(&path).expect("there").len(),
            bytes.len() as u64
        );
    }
}

/// What the program answers; it is killed where it waits without end.
#[cfg(unix)]
fn answer(arguments: &[&str]) -> String {
    let output = latchwright()
        .args(arguments)
        .timeout(Duration::from_mins(1))
        .output()
        .expect("an answer in time");
    let (_, words) = said(&output);
    assert_eq!(output.status.code(), Some(2), "{arguments:?}: {words}");
    words
}

#[cfg(unix)]
#[test]
fn a_pipe_or_a_device_for_a_file_is_refused_and_not_waited_for() {
    use std::os::unix::fs::FileTypeExt as _;
    let folder = tempfile::tempdir().expect("a folder");
    let place = |name: &str| folder.path().join(name).to_string_lossy().into_owned();
    let (pipe, out, papers) = (place("box.latch.ron"), place("out"), place("papers"));
    std::fs::create_dir(&papers).expect("a folder");
    let of_papers = place("papers/setting.pdf");
    for path in [&pipe, &of_papers] {
        let made = std::process::Command::new("mkfifo").arg(path).status();
        assert!(made.expect("a pipe").success());
    }
    let tea = demo("tea-box").to_string_lossy().into_owned();
    for file in [pipe.as_str(), "/dev/zero", "/dev/tty"] {
        for arguments in [
            &["prove", file][..],
            &["prove", file, "--mark", "1:3"],
            &["settings", file],
            &["builds", file],
            &["mend", file],
            &["papers", file, "--out", &out],
            &["parts", file, "--out", &out],
            &["card", file, "--out", &out],
            &["propose", "--lid", "220", "140", "--bench", file],
            &["card", &tea, "--out", file],
        ] {
            let words = answer(arguments);
            let expected = "is a pipe or a device and no file; choose a file";
            assert!(words.contains(expected), "{arguments:?}: {words}");
        }
    }
    for arguments in [
        &["settings", &tea, "--csv", &pipe][..],
        &["papers", &tea, "--out", &papers, "--replace"],
    ] {
        let words = answer(arguments);
        assert!(words.contains("is a pipe"), "{arguments:?}: {words}");
    }
    for path in [&pipe, &of_papers] {
        let still = std::fs::symlink_metadata(path).expect("there");
        assert!(still.file_type().is_fifo(), "{path} was replaced");
    }
    assert!(!Path::new(&out).exists());
}

#[cfg(unix)]
#[test]
fn a_table_of_settings_goes_to_a_device_by_its_name() {
    let tea = demo("tea-box").to_string_lossy().into_owned();
    let output = run(&["settings", &tea, "--csv", "/dev/stdout"]);
    let (table, words) = said(&output);
    assert_eq!(output.status.code(), Some(0), "{words}");
    assert_eq!(table.lines().count(), 513, "a head and every setting");
}

#[test]
fn bad_designs_are_data_with_every_fault_listed() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("bad.latch.ron");
    let text = "\u{feff}(format: 1, combination: [9, 0, 0], plate: (width: -5.0), \
                dials: [(positions: 8, disc: (radius: 18.0, slots: [(mark: 12, width: 50.0)])), (), ()])";
    std::fs::write(&path, text).expect("written");
    let output = run(&["prove", &path.to_string_lossy()]);
    let (words, _) = said(&output);
    assert_eq!(output.status.code(), Some(1), "{words}");
    for fault in [
        "-5",
        "mark 12",
        "50.00 mm wide",
        "mark 9",
        "no slot at mark 0",
    ] {
        assert!(words.contains(fault), "{fault}: {words}");
    }
}

#[test]
fn an_unknown_field_withholds_the_proof_and_is_named_with_its_place() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("typo.latch.ron");
    let text = std::fs::read_to_string(demo("tea-box")).expect("read");
    std::fs::write(&path, text.replace("engagement:", "enagement:")).expect("written");
    let output = run(&["prove", &path.to_string_lossy(), "--json"]);
    assert_eq!(output.status.code(), Some(1));
    let value: Value = serde_json::from_slice(&output.stdout).expect("JSON");
    assert_eq!(value["proven"], false);
    let notices = value["notices"].to_string();
    for word in ["enagement", "line 13", "engagement"] {
        assert!(notices.contains(word), "{word}: {notices}");
    }
}

#[test]
fn virtual_builds_of_every_proven_demo_do_as_was_proven() {
    for name in ["tea-box", "letters-chest", "toy-post-box", "spice-box-inch"] {
        let file = demo(name).to_string_lossy().into_owned();
        let run = || run(&["builds", &file, "--count", "5000", "--seed", "7", "--json"]);
        let output = run();
        assert_eq!(output.status.code(), Some(0), "{name}: {:?}", said(&output));
        let built: Value = serde_json::from_slice(&output.stdout).expect("JSON");
        assert_eq!(built["contradictions"], 0, "{name}");
        for share in ["opens_first_time", "wrong_settings_hold"] {
            assert_eq!(built[share]["hits"], 5000, "{name}: {share}");
            assert!(built[share]["low_95"].as_f64() > Some(0.999), "{name}");
        }
        assert_eq!(
            run().stdout,
            output.stdout,
            "{name}: the same seed, the same bytes"
        );
    }
}
