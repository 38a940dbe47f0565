//! The layers of the workspace and the habits of its sources, read from the workspace itself.

use std::collections::BTreeMap;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

use cargo_metadata::{DependencyKind, MetadataCommand, Package};

/// Each crate and the siblings it may stand on.
const LAYERS: [(&str, &[&str]); 11] = [
    ("geometry", &[]),
    ("model", &["geometry"]),
    ("proof", &["geometry", "model"]),
    ("search", &["geometry", "model", "proof"]),
    ("drawing", &["geometry", "model", "proof"]),
    ("workshop", &["geometry", "model", "proof", "drawing"]),
    ("solids", &["geometry", "model", "proof", "drawing"]),
    ("words", &["model", "proof", "workshop", "solids"]),
    (
        "papers",
        &["geometry", "model", "proof", "drawing", "workshop", "words"],
    ),
    (
        "session",
        &[
            "geometry", "model", "proof", "search", "drawing", "workshop", "solids", "words",
            "papers",
        ],
    ),
    (
        "desktop",
        &[
            "geometry", "model", "proof", "search", "drawing", "workshop", "solids", "words",
            "papers", "session",
        ],
    ),
];

/// Crates that take values and give values.
const PURE: [&str; 9] = [
    "geometry", "model", "proof", "search", "drawing", "workshop", "solids", "words", "papers",
];

/// Widgets, dialogs and command lines belong to the desktop.
const DESKTOP_ONLY: [&str; 6] = ["egui", "eframe", "egui_extras", "rfd", "clap", "anyhow"];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn packages() -> BTreeMap<String, Package> {
    let metadata = MetadataCommand::new()
        .manifest_path(root().join("Cargo.toml"))
        .no_deps()
        .exec()
        .expect("the workspace describes itself");
    metadata
        .packages
        .into_iter()
        .map(|package| (package.name.to_string(), package))
        .collect()
}

/// The package in this folder of `crates`: the program bears the project's own name.
fn package_of(folder: &str) -> String {
    match folder {
        "desktop" => "latchwright".to_owned(),
        other => format!("latchwright-{other}"),
    }
}

/// What a crate needs when it is not tested.
fn needs(package: &Package) -> impl Iterator<Item = &str> {
    package
        .dependencies
        .iter()
        .filter(|dependency| dependency.kind != DependencyKind::Development)
        .map(|dependency| dependency.name.as_str())
}

/// Every file under `folder` with one of these endings, sorted; build products left out.
fn files(folder: &Path, endings: &[&str]) -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).expect("a folder of the workspace") {
            let path = entry.expect("an entry of it").path();
            let name = path.file_name().unwrap_or_default().to_string_lossy();
            if path.is_dir() {
                if name != "target" && name != ".git" {
                    folders.push(path);
                }
            } else if path
                .extension()
                .is_some_and(|ending| endings.iter().any(|wanted| ending == *wanted))
            {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

fn sources() -> Vec<PathBuf> {
    let found: Vec<PathBuf> = ["crates", "tests"]
        .iter()
        .flat_map(|folder| files(&root().join(folder), &["rs"]))
        .collect();
    assert!(
        found.len() > 50,
        "only {} sources were looked at",
        found.len()
    );
    found
}

fn read(path: &Path) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|err| panic!("{err}: {}", path.display()))
}

#[test]
fn each_crate_stands_only_on_the_crates_below_it() {
    let packages = packages();
    for (folder, below) in LAYERS {
        let name = package_of(folder);
        let package = packages.get(&name).unwrap_or_else(|| panic!("no {name}"));
        let below: BTreeSet<String> = below.iter().map(|folder| package_of(folder)).collect();
        for needed in needs(package).filter(|needed| packages.contains_key(*needed)) {
            assert!(below.contains(needed), "{name} must not depend on {needed}");
        }
    }
    let known = LAYERS.len() + 1;
    assert_eq!(
        packages.len(),
        known,
        "a new crate has no place in the layers"
    );
}

#[test]
fn widgets_and_typesetting_stay_in_their_own_crates() {
    // the tests drive the window, and nothing stands on them
    let has_widgets = |name: &str| ["latchwright", "latchwright-tests"].contains(&name);
    for (name, package) in packages() {
        for needed in needs(&package) {
            assert!(
                has_widgets(&name) || !DESKTOP_ONLY.contains(&needed),
                "{name} must not depend on {needed}"
            );
            assert!(
                name == "latchwright-papers" || !needed.starts_with("typst"),
                "{name} must not depend on {needed}"
            );
        }
    }
}

#[test]
fn pure_crates_know_no_file_clock_thread_or_screen() {
    let doors = [
        "std::fs",
        "std::env",
        "std::thread",
        "std::time",
        "std::process",
        "std::net",
        "println!",
        "print!(",
        "dbg!",
    ];
    for name in PURE {
        for path in files(&root().join("crates").join(name).join("src"), &["rs"]) {
            let text = read(&path);
            let own = text.split("#[cfg(test)]").next().unwrap_or_default();
            for (number, line) in own.lines().enumerate() {
                let code = line.split("//").next().unwrap_or_default();
                if let Some(door) = doors.iter().find(|door| code.contains(**door)) {
                    panic!("{}:{}: {door}", path.display(), number + 1);
                }
            }
        }
    }
}

#[test]
fn the_code_map_lists_every_crate() {
    let map = read(&root().join("DEVELOPERS.md"));
    for entry in std::fs::read_dir(root().join("crates")).unwrap() {
        let name = entry.unwrap().file_name();
        let listed = format!("crates/{}", name.to_string_lossy());
        assert!(
            map.contains(&listed),
            "DEVELOPERS.md does not list {listed}"
        );
    }
}

#[test]
fn every_source_says_what_it_is_for_and_stays_readable() {
    let wrong: Vec<String> = sources()
        .iter()
        .filter_map(|path| {
            let text = read(path);
            let lines = text.lines().count();
            let says = text.starts_with("//! ");
            (!says || lines > 500).then(|| format!("{}: {lines} lines", path.display()))
        })
        .collect();
    assert!(
        wrong.is_empty(),
        "no `//!` first, or too long:\n{}",
        wrong.join("\n")
    );
}

#[test]
fn no_file_speaks_of_the_place_where_it_was_written() {
    // put together here, so that this file does not find itself
    let banned = [
        concat!("trans", "cript"),
        concat!("seed ", "document"),
        concat!("/", "work/"),
        concat!("/", "tmp/"),
    ];
    let endings = [
        "rs", "toml", "md", "ron", "typ", "txt", "csv", "json", "yml", "sh", "lock",
    ];
    for path in files(&root(), &endings) {
        let text = read(&path).to_lowercase();
        for word in banned {
            assert!(!text.contains(word), "{}: {word}", path.display());
        }
    }
}

#[test]
fn locked_packages_come_from_one_index_and_no_side_branch() {
    let lock = read(&root().join("Cargo.lock"));
    let from: BTreeSet<&str> = lock
        .lines()
        .filter_map(|line| line.strip_prefix("source = "))
        .collect();
    assert_eq!(from.len(), 1, "{from:?}");
    assert!(from.iter().all(|source| !source.contains("git+")));
}
