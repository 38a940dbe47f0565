//! Files read by readers that we did not write.

use std::io::Cursor;

use latchwright_model::{Design, PinMake};
use latchwright_solids::write::{stl::stl, threemf::threemf};
use latchwright_solids::{File, Mesh, Options, Part, files, parts, plate_up};
use lib3mf_core::Model;
use lib3mf_core::archive::{ArchiveReader, ZipArchiver, find_model_path};
use lib3mf_core::parser::parse_model;
use lib3mf_core::validation::ValidationLevel;

fn made() -> (Design, Vec<Part>) {
    let mut design = Design::default();
    design.dials[0].pin.make = PinMake::PrintedLying;
    design.dials[1].pin.make = PinMake::PrintedStanding;
    let parts = parts(&design, &Options::default()).expect("a part or file that is sound");
    assert!(parts.len() > 8);
    (design, parts)
}

fn model(bytes: Vec<u8>) -> Model {
    let mut archive = ZipArchiver::new(Cursor::new(bytes)).expect("a part or file that is sound");
    let path = find_model_path(&mut archive).expect("a part or file that is sound");
    parse_model(Cursor::new(
        archive
            .read_entry(&path)
            .expect("a part or file that is sound"),
    ))
    .expect("a part or file that is sound")
}

#[test]
fn a_strict_reader_of_3mf_has_no_word_to_say() {
    let (design, parts) = made();
    let mut objects = 0;
    for bed in plate_up(&parts, &design.bench.printer) {
        let model = model(threemf(&parts, &bed, "Tea & <biscuits>").unwrap());
        let report = model.validate(ValidationLevel::Strict);
        assert!(report.items.is_empty(), "{:?}", report.items);
        // the reader keeps objects in no order
        let mut objects_read: Vec<(u32, String)> = model
            .resources
            .iter_objects()
            .map(|object| (object.id.0, object.name.clone().unwrap_or_default()))
            .collect();
        objects_read.sort();
        let (ids, names): (Vec<u32>, Vec<String>) = objects_read.into_iter().unzip();
        let wanted: Vec<u32> = (1..=u32::try_from(bed.placed.len()).unwrap()).collect();
        assert_eq!(ids, wanted, "ids count from 1");
        assert_eq!(model.build.items.len(), bed.placed.len());
        let meant: Vec<String> = bed
            .placed
            .iter()
            .map(|(index, _)| parts[*index].name.clone())
            .collect();
        assert_eq!(names, meant);
        objects += names.len();
    }
    assert_eq!(objects, parts.len(), "each part lies on one bed");
}

#[test]
fn a_reader_that_looks_at_the_surface_finds_no_error_in_any_part() {
    let (_, parts) = made();
    for part in &parts {
        let bytes = latchwright_solids::write::threemf::threemf_of(&part.mesh, &part.name).unwrap();
        let report = model(bytes).validate(ValidationLevel::Paranoid);
        assert!(!report.has_errors(), "{}: {:?}", part.name, report.items);
    }
}

#[test]
fn a_foreign_reader_finds_every_stl_closed_and_as_large_as_it_should_be() {
    let (_, parts) = made();
    for part in &parts {
        let bytes = stl(&part.mesh);
        assert_eq!(bytes.len(), 84 + 50 * part.mesh.triangles.len());
        let read = stl_io::read_stl(&mut Cursor::new(bytes)).unwrap();
        // welds what is equal, and refuses what is not closed
        read.validate().unwrap();
        assert_eq!(read.faces.len(), part.mesh.triangles.len());
        assert_eq!(read.vertices.len(), part.mesh.points.len(), "{}", part.name);
        let extent = part.extent();
        for axis in 0..3 {
            let along = read.vertices.iter().map(|vertex| f64::from(vertex.0[axis]));
            let high = along.fold(f64::NEG_INFINITY, f64::max);
            assert!((high - extent.high[axis]).abs() < 1e-4);
        }
    }
}

#[test]
fn a_box_is_684_bytes_of_stl_and_keeps_its_volume_when_it_is_mirrored() {
    let cuboid = Mesh::cuboid(10.0, 20.0, 5.0);
    for mesh in [cuboid.clone(), cuboid.mirrored()] {
        let bytes = stl(&mesh);
        assert_eq!(bytes.len(), 684);
        assert_eq!(mesh.volume(), 1000.0);
        stl_io::read_stl(&mut Cursor::new(bytes))
            .unwrap()
            .validate()
            .unwrap();
    }
}

fn all_files() -> Vec<File> {
    let (design, _) = made();
    files(
        &design,
        &Options::default(),
        "Tea & <biscuits>\n",
        |warning| format!("{warning:?}"),
    )
    .expect("files")
}

#[test]
fn the_same_design_is_the_same_bytes() {
    assert!(all_files() == all_files());
}

#[test]
fn a_run_has_a_file_for_each_bed_and_each_part_and_one_list() {
    let (design, parts) = made();
    let files = all_files();
    let beds = plate_up(&parts, &design.bench.printer).len();
    assert_eq!(files.len(), beds + parts.len() + 1);
    let mut names: Vec<&str> = files.iter().map(|(name, _)| name.as_str()).collect();
    if beds == 1 {
        assert_eq!(names[0], "parts.3mf");
    } else {
        assert_eq!(names[0], "parts-1.3mf");
    }
    assert_eq!(names.last(), Some(&"parts.txt"));
    for name in &names {
        let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || "-.".contains(c);
        assert!(name.chars().all(plain), "{name}");
    }
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), files.len(), "no two share a name");
    // every part lies in one of the 3MF files, and none twice
    let objects: usize = files[..beds]
        .iter()
        .map(|(_, bytes)| model(bytes.clone()).build.items.len())
        .sum();
    assert_eq!(objects, parts.len());
}

#[test]
fn the_list_gives_the_box_of_every_stl_as_a_foreign_reader_measures_it() {
    let files = all_files();
    let text = String::from_utf8(files.last().unwrap().1.clone()).unwrap();
    assert!(
        text.starts_with("Printed parts: Tea & <biscuits>\n"),
        "{text}"
    );
    let mut measured = 0;
    for (name, bytes) in files
        .iter()
        .filter(|(name, _)| name.strip_suffix(".stl").is_some())
    {
        let read = stl_io::read_stl(&mut Cursor::new(bytes)).unwrap();
        let size = [0, 1, 2].map(|axis| {
            let along = read.vertices.iter().map(|vertex| f64::from(vertex.0[axis]));
            let (low, high) = along.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), x| {
                (low.min(x), high.max(x))
            });
            high - low
        });
        let row = text
            .lines()
            .find(|row| row.starts_with(&format!("{name} ")))
            .expect("a row");
        let told: Vec<f64> = row
            .split_whitespace()
            .filter_map(|word| word.parse().ok())
            .take(3)
            .collect();
        for axis in 0..3 {
            assert!((told[axis] - size[axis]).abs() < 6e-4, "{row}: {size:?}");
        }
        measured += 1;
    }
    assert_eq!(measured, made().1.len(), "{text}");
}

#[test]
fn the_list_shows_nominal_drawn_and_expected_with_clearances_per_side_and_in_total() {
    let files = all_files();
    let text = String::from_utf8(files.last().unwrap().1.clone()).unwrap();
    let row = |start: &str| {
        let row = text.lines().find(|row| row.trim_start().starts_with(start));
        let row = row.unwrap_or_else(|| panic!("{start} in {text}"));
        row.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    // 0.1 is what the printer adds; no coat is taken off a disc
    assert_eq!(row("disc  "), "disc outside 38.000 → 37.900 → 38.000");
    assert!(row("post in star, per side").ends_with("→ 0.150"));
    assert!(row("post in star, total").ends_with("→ 0.300"));
}

#[test]
fn the_list_says_of_each_part_which_face_lies_on_the_bed_and_of_the_slicer_once() {
    let files = all_files();
    let text = String::from_utf8(files.last().unwrap().1.clone()).unwrap();
    let faces = text.lines().filter(|row| row.starts_with("  on the bed: "));
    assert_eq!(faces.count(), made().1.len());
    assert_eq!(text.matches("slicer").count(), 1, "{text}");
}

#[test]
fn parts_on_a_bed_stay_on_it_and_apart() {
    let (design, parts) = made();
    let (width, depth) = design.bench.printer.bed;
    for bed in plate_up(&parts, &design.bench.printer) {
        let boxes: Vec<_> = bed
            .placed
            .iter()
            .map(|(index, pose)| parts[*index].mesh.posed(pose).extent())
            .collect();
        for (index, one) in boxes.iter().enumerate() {
            assert!(one.low.iter().all(|low| *low > -1e-9), "{one:?}");
            assert!(one.high[0] < width + 1e-9 && one.high[1] < depth + 1e-9);
            for other in &boxes[index + 1..] {
                let apart = (0..2).any(|axis| {
                    one.high[axis] + 3.9 < other.low[axis] || other.high[axis] + 3.9 < one.low[axis]
                });
                assert!(apart, "{one:?} and {other:?}");
            }
        }
    }
}
