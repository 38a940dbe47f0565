//! A list of parts with their boxes, for whoever gets STL files, which say no unit.

use core::fmt::Write;

use crate::part::Part;

/// One line a part: file name, size along x, y and z in mm, mass in g, filament in m.
pub fn list(parts: &[Part]) -> String {
    let mut text = String::from(
        "Parts as they lie on the bed. Sizes in mm, mass in g and filament in m if printed solid.\n",
    );
    for part in parts {
        let [x, y, z] = part.extent().size();
        let (mass, filament) = (part.mass_g, part.filament_mm / 1000.0);
        let name = format!("{}.stl", part.file_stem());
        let written = writeln!(
            text,
            "{name:<22} {x:8.3} × {y:8.3} × {z:8.3}   {mass:7.2} g   {filament:6.2} m"
        );
        debug_assert!(written.is_ok(), "a String takes all that is written");
    }
    text
}
