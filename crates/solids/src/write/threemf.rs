//! 3MF by the core specification 1.4: unit, one object a part with its name, all placed on the bed.

use core::fmt::Write as _;
use std::io::{Cursor, Write as _};

use zip::result::ZipError;
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, ZipWriter};

use crate::mesh::{Mesh, Pose};
use crate::part::Part;
use crate::plate_up::Bed;

const TYPES: &str = r#"<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>
"#;

const RELATIONS: &str = r#"<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>
"#;

/// One thing on a bed.
struct Item<'a> {
    name: &'a str,
    mesh: &'a Mesh,
    pose: Pose,
}

/// One bed of parts as the bytes of a 3MF file; the same bytes each time.
///
/// Parts that the bed does not name are left out; places that name no part are passed over.
///
/// # Errors
/// Only if the archive cannot be put together, which memory alone decides.
pub fn threemf(parts: &[Part], bed: &Bed, title: &str) -> Result<Vec<u8>, ZipError> {
    let items: Vec<Item<'_>> = bed
        .placed
        .iter()
        .filter_map(|(index, pose)| {
            let part = parts.get(*index)?;
            Some(Item {
                name: &part.name,
                mesh: &part.mesh,
                pose: *pose,
            })
        })
        .collect();
    package(&model(&items, title))
}

/// A single mesh as the bytes of a 3MF file, as it lies.
///
/// # Errors
/// As [`threemf`].
pub fn threemf_of(mesh: &Mesh, name: &str) -> Result<Vec<u8>, ZipError> {
    let low = mesh.extent().low;
    let pose = Pose::to(-low[0], -low[1], -low[2]);
    package(&model(&[Item { name, mesh, pose }], name))
}

fn package(model: &str) -> Result<Vec<u8>, ZipError> {
    let mut archive = ZipWriter::new(Cursor::new(Vec::new()));
    // a fixed date: the same parts are the same bytes
    let options = SimpleFileOptions::default()
        .compression_method(CompressionMethod::Deflated)
        .last_modified_time(DateTime::DEFAULT);
    for (name, text) in [
        ("[Content_Types].xml", TYPES),
        ("_rels/.rels", RELATIONS),
        ("3D/3dmodel.model", model),
    ] {
        archive.start_file(name, options)?;
        archive.write_all(text.as_bytes())?;
    }
    Ok(archive.finish()?.into_inner())
}

fn model(items: &[Item<'_>], title: &str) -> String {
    let mut xml = String::from(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<model unit=\"millimeter\" xml:lang=\"en\" \
         xmlns=\"http://schemas.microsoft.com/3dmanufacturing/core/2015/02\">\n",
    );
    push(
        &mut xml,
        format_args!("<metadata name=\"Title\">{}</metadata>\n", escaped(title)),
    );
    push(
        &mut xml,
        format_args!("<metadata name=\"Application\">Latchwright</metadata>\n<resources>\n"),
    );
    for (id, item) in (1..).zip(items) {
        let id: u32 = id;
        push(
            &mut xml,
            format_args!(
                "<object id=\"{id}\" type=\"model\" name=\"{}\"><mesh><vertices>\n",
                escaped(item.name)
            ),
        );
        for [x, y, z] in &item.mesh.points {
            let (x, y, z) = (number(*x), number(*y), number(*z));
            push(
                &mut xml,
                format_args!("<vertex x=\"{x}\" y=\"{y}\" z=\"{z}\"/>\n"),
            );
        }
        xml.push_str("</vertices><triangles>\n");
        for [a, b, c] in &item.mesh.triangles {
            push(
                &mut xml,
                format_args!("<triangle v1=\"{a}\" v2=\"{b}\" v3=\"{c}\"/>\n"),
            );
        }
        xml.push_str("</triangles></mesh></object>\n");
    }
    xml.push_str("</resources>\n<build>\n");
    for (id, item) in (1..).zip(items) {
        let id: u32 = id;
        let transform = transform(&item.pose);
        push(
            &mut xml,
            format_args!("<item objectid=\"{id}\" transform=\"{transform}\"/>\n"),
        );
    }
    xml.push_str("</build>\n</model>\n");
    xml
}

/// Twelve numbers, row by row: the images of the three axes, then the shift.
fn transform(pose: &Pose) -> String {
    let turn = Pose {
        to: [0.0; 3],
        ..*pose
    };
    let rows = [
        turn.of([1.0, 0.0, 0.0]),
        turn.of([0.0, 1.0, 0.0]),
        turn.of([0.0, 0.0, 1.0]),
        pose.to,
    ];
    let numbers: Vec<String> = rows.iter().flatten().map(|value| number(*value)).collect();
    numbers.join(" ")
}

/// Six decimals at most, none that say nothing, no minus before nought.
fn number(value: f64) -> String {
    let text = format!("{value:.6}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0" } else { text }.to_owned()
}

fn push(xml: &mut String, words: core::fmt::Arguments<'_>) {
    let written = xml.write_fmt(words);
    debug_assert!(written.is_ok(), "a String takes all that is written");
}

/// Text as XML takes it; characters that XML has no place for are left out.
fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            '\t' | '\n' | '\r' => safe.push(' '),
            '\u{FFFE}' | '\u{FFFF}' => {}
            other if other.is_control() => {}
            other => safe.push(other),
        }
    }
    safe
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_whole() {
        assert_eq!(number(12.5), "12.5");
        assert_eq!(number(-0.000_000_1), "0");
        assert_eq!(number(100.0), "100");
        assert_eq!(number(0.1234), "0.1234");
    }

    #[test]
    fn names_are_escaped() {
        assert_eq!(
            escaped("A & B <\"x\">\u{1}"),
            "A &amp; B &lt;&quot;x&quot;&gt;"
        );
    }

    #[test]
    fn the_same_mesh_is_the_same_bytes() {
        let mesh = Mesh::cuboid(1.0, 2.0, 3.0);
        assert_eq!(
            threemf_of(&mesh, "a").unwrap(),
            threemf_of(&mesh, "a").unwrap()
        );
    }
}
