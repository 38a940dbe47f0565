//! The layers of the workspace, read from the workspace itself.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use cargo_metadata::{DependencyKind, MetadataCommand, Package};

/// Each crate and the siblings it may stand on.
const LAYERS: [(&str, &[&str]); 13] = [
    ("geometry", &[]),
    ("model", &["geometry"]),
    ("assembly", &["geometry", "model"]),
    ("proof", &["geometry", "model", "assembly"]),
    ("search", &["geometry", "model", "assembly", "proof"]),
    ("drawing", &["geometry", "model", "assembly", "proof"]),
    (
        "workshop",
        &["geometry", "model", "assembly", "proof", "drawing"],
    ),
    (
        "solids",
        &["geometry", "model", "assembly", "proof", "drawing"],
    ),
    (
        "words",
        &["model", "assembly", "proof", "workshop", "solids"],
    ),
    (
        "papers",
        &[
            "geometry", "model", "assembly", "proof", "drawing", "workshop", "words",
        ],
    ),
    (
        "session",
        &[
            "geometry", "model", "assembly", "proof", "search", "drawing", "workshop", "solids",
            "words", "papers",
        ],
    ),
    (
        "commands",
        &[
            "geometry", "model", "assembly", "proof", "search", "drawing", "workshop", "solids",
            "words", "papers", "session",
        ],
    ),
    (
        "desktop",
        &[
            "geometry", "model", "assembly", "proof", "search", "drawing", "workshop", "solids",
            "words", "papers", "session", "commands",
        ],
    ),
];

/// Crates that take values and give values.
const PURE: [&str; 10] = [
    "geometry", "model", "assembly", "proof", "search", "drawing", "workshop", "solids", "words",
    "papers",
];

/// What draws, opens or talks to a window, on any system.
const OF_WINDOWS: [&str; 10] = [
    "accesskit",
    "arboard",
    "eframe",
    "egui",
    "epaint",
    "glutin",
    "rfd",
    "wayland-client",
    "winit",
    "x11-dl",
];

/// Foreign libraries, and the crates that may name them.
const KEPT_TO: [(&str, &[&str]); 11] = [
    ("eframe", &["desktop"]),
    ("egui", &["desktop"]),
    ("rfd", &["desktop"]),
    ("clap", &["commands"]),
    ("csv", &["commands"]),
    ("anyhow", &["commands", "desktop"]),
    ("typst", &["papers"]),
    ("typst-layout", &["papers"]),
    ("typst-pdf", &["papers"]),
    ("typst-render", &["papers"]),
    ("libm", &["geometry"]),
];

/// What holds a crate to `clippy.toml`, as it stands in its `lib.rs`.
const HELD: &str = "#![cfg_attr(
    not(test),
    warn(
        clippy::disallowed_macros,
        clippy::disallowed_methods,
        clippy::disallowed_types
    )
)]";

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

/// Every Rust source of the workspace, sorted.
fn sources() -> Vec<PathBuf> {
    let mut found = Vec::new();
    let mut folders = vec![root().join("crates"), root().join("tests")];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).expect("a folder of the workspace") {
            let path = entry.expect("an entry of it").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                found.push(path);
            }
        }
    }
    found.sort();
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
fn foreign_libraries_stay_in_the_crates_that_are_made_for_them() {
    let packages = packages();
    for (library, may) in KEPT_TO {
        let may: Vec<String> = may.iter().map(|folder| package_of(folder)).collect();
        let named = |package: &Package| needs(package).any(|needed| needed == library);
        for name in &may {
            assert!(named(&packages[name]), "{name} no longer needs {library}");
        }
        for (name, package) in &packages {
            // the tests drive the window, and nothing stands on them
            let may_name = may.contains(name) || name == "latchwright-tests";
            assert!(
                may_name || !named(package),
                "{name} must not depend on {library}"
            );
        }
    }
}

/// What each locked package stands on, on every system and whichever of its versions.
fn locked() -> BTreeMap<String, BTreeSet<String>> {
    let lock = read(&root().join("Cargo.lock"));
    let mut all: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
    for package in lock.split("[[package]]").skip(1) {
        let mut lines = package.lines();
        let name = lines
            .find_map(|line| line.strip_prefix("name = "))
            .expect("a package with a name")
            .trim_matches('"');
        let below = lines.filter_map(|line| {
            // ` "name",` or ` "name version",`
            let dependency = line.strip_prefix(" \"")?.trim_end_matches("\",");
            dependency.split(' ').next().map(ToOwned::to_owned)
        });
        all.entry(name.to_owned()).or_default().extend(below);
    }
    all
}

/// Everything that a package of the workspace stands on when it is not tested, however deep.
fn tree(of: &str, packages: &BTreeMap<String, Package>) -> BTreeSet<String> {
    let locked = locked();
    let mut found = BTreeSet::new();
    let mut next = vec![of.to_owned()];
    while let Some(name) = next.pop() {
        // the lock file does not tell what a package of ours needs for its tests alone
        let below: Vec<String> = match packages.get(&name) {
            Some(package) => needs(package).map(ToOwned::to_owned).collect(),
            None => locked[&name].iter().cloned().collect(),
        };
        next.extend(below.into_iter().filter(|name| found.insert(name.clone())));
    }
    found
}

#[test]
fn only_the_desktop_reaches_a_window_however_deep_one_looks() {
    let packages = packages();
    let desktop = tree(&package_of("desktop"), &packages);
    for library in OF_WINDOWS {
        assert!(desktop.contains(library), "{library} is not in use");
    }
    for (folder, _) in LAYERS.iter().filter(|(folder, _)| *folder != "desktop") {
        let tree = tree(&package_of(folder), &packages);
        let windows: Vec<_> = OF_WINDOWS
            .iter()
            .filter(|library| tree.contains(**library))
            .collect();
        assert!(windows.is_empty(), "{folder} reaches {windows:?}");
    }
    let commands = tree(&package_of("commands"), &packages);
    assert!(
        ["clap", "typst", "ron", "libm"]
            .iter()
            .all(|library| commands.contains(*library)),
        "the tree was not read to its end"
    );
}

#[test]
fn pure_crates_are_held_to_what_clippy_disallows() {
    for name in PURE {
        let path = root().join("crates").join(name).join("src/lib.rs");
        assert!(read(&path).contains(HELD), "{}", path.display());
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
fn every_source_says_first_what_it_is_for() {
    let silent: Vec<PathBuf> = sources()
        .into_iter()
        .filter(|path| !read(path).starts_with("//! "))
        .collect();
    assert!(silent.is_empty(), "no `//!` first: {silent:?}");
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
