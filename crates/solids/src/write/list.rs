//! A list of parts with their boxes, for whoever gets STL files, which say no unit.

use core::fmt::Write;

use latchwright_model::Printer;

use crate::fit::{Kind, Size};
use crate::part::{Kind as PartKind, Part};

/// One part of the list.
#[derive(Debug, Clone, Copy)]
pub struct Entry<'a> {
    /// The part.
    pub part: &'a Part,
    /// The file that holds it alone.
    pub file: &'a str,
    /// The file that holds the bed it lies on.
    pub bed: &'a str,
    /// What is to be known before it is printed, a sentence each without a trailing stop.
    pub notes: &'a [String],
}

/// All parts by their files: boxes in mm, mass in g and filament in m, the sum of them; then each
/// part's sizes as nominal → drawn → expected, and what to know before it is printed.
pub fn list(entries: &[Entry<'_>], printer: &Printer, title: &str) -> String {
    let mut text = String::new();
    let title: String = title.split_whitespace().collect::<Vec<_>>().join(" ");
    let (bed_x, bed_y) = printer.bed;
    line(&mut text, format_args!("Printed parts: {title}"));
    line(
        &mut text,
        format_args!(
            "Made for a nozzle of {:.2} mm, layers of {:.2} mm and a bed of {bed_x:.0} × {bed_y:.0} × \
             {:.0} mm.",
            printer.nozzle, printer.layer, printer.height
        ),
    );
    line(
        &mut text,
        format_args!(
            "Boxes in mm as the parts lie on the bed, mass in g and filament in m if printed solid.\n"
        ),
    );
    boxes(&mut text, entries);
    line(
        &mut text,
        format_args!(
            "\nSizes in mm: as the design says → as drawn in the files → as expected once printed, and \
             coated where a coat is meant.\nClearances are told per side and in total.\n{SLICER}"
        ),
    );
    for entry in entries {
        details(&mut text, entry);
    }
    text
}

fn line(text: &mut String, words: core::fmt::Arguments<'_>) {
    let written = writeln!(text, "{words}");
    debug_assert!(written.is_ok(), "a String takes all that is written");
}

fn boxes(text: &mut String, entries: &[Entry<'_>]) {
    let widths = entries.iter().map(|entry| entry.file.chars().count());
    let wide = widths.max().unwrap_or(0);
    let (mut grams, mut metres) = (0.0, 0.0);
    for Entry {
        part, file, bed, ..
    } in entries
    {
        let [x, y, z] = part.extent().size();
        let (mass, filament) = (part.mass_g, part.filament_mm / 1000.0);
        line(
            text,
            format_args!(
                "{file:<wide$}  {x:8.3} × {y:8.3} × {z:8.3}  {mass:7.2} g  {filament:6.2} m  in {bed}"
            ),
        );
        grams += mass;
        metres += filament;
    }
    let count = entries.len();
    line(
        text,
        format_args!("{count} parts together: {grams:.1} g, {metres:.2} m of filament"),
    );
}

fn details(text: &mut String, entry: &Entry<'_>) {
    let part = entry.part;
    let dial = part
        .dial
        .map_or_else(String::new, |dial| format!(", of dial {}", dial + 1));
    line(text, format_args!("\n{} ({}{dial})", part.name, entry.file));
    line(text, format_args!("  on the bed: {}", on_bed(part)));
    for size in &part.sizes {
        size_line(text, size);
    }
    if let Some(height) = part.colour_change {
        line(
            text,
            format_args!("  change the filament at {height:.2} mm for a second colour"),
        );
    }
    for note in entry.notes {
        line(text, format_args!("  Note: {note}."));
    }
}

/// What the files have done already.
const SLICER: &str = "What the printer gets wrong is taken off in the files already, so switch off the slicer's own \
     correction of holes, of outlines and of the first layer, and print each part as it lies, at its own size.";

/// The face that lies on the bed.
fn on_bed(part: &Part) -> &'static str {
    let stood = part.assembled.is_some_and(|pose| pose.stood);
    match part.kind {
        PartKind::Disc => "the disc's underside, shaft and post up",
        PartKind::Knob => "the underside with the star, pointer up",
        PartKind::Ring => "the underside that is glued to the plate, labels up",
        PartKind::Pin if part.dial.is_none() => "the strip's underside, pins up",
        PartKind::Pin if stood => "the flat along the pin",
        PartKind::Pin => "the pin's lower end",
        PartKind::Slider => "the underside, fingers on the bed",
        PartKind::SliderKnob => "the face that the fingers push, shank up",
        PartKind::Keeper => "the underside that holds the tab, screws' heads up",
        PartKind::Jig => "the face that lies on the plate, fence up",
        PartKind::Washer | PartKind::Gauge => "either face",
    }
}

fn size_line(text: &mut String, size: &Size) {
    let kind = match size.kind {
        Kind::Outside => "outside",
        Kind::Hole => "hole",
        Kind::Gap => "gap",
        Kind::Height => "height",
        Kind::PerSide | Kind::Total => "clearance",
    };
    line(
        text,
        format_args!(
            "  {:<34} {kind:<9} {:8.3} → {:8.3} → {:8.3}",
            size.what.name(),
            size.nominal,
            size.drawn,
            size.expected
        ),
    );
}
