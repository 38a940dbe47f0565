//! Every file of one run: a bed a 3MF, a part an STL, and the list of them.

use std::collections::BTreeSet;

use latchwright_model::{Design, Printer};

use crate::fault::PartFault;
use crate::options::Options;
use crate::part::Part;
use crate::parts::parts;
use crate::plate_up::plate_up;
use crate::warning::Warning;
use crate::write::list::{Entry, list};
use crate::write::stl::stl;
use crate::write::threemf::threemf;

/// A file's name, without a folder, and its bytes.
pub type File = (String, Vec<u8>);

/// All files of `design`: `parts.3mf` (or `parts-1.3mf` and so on, one a bed), an STL for each part,
/// and `parts.txt` with their boxes in mm and what `say` says of their warnings. The same bytes each
/// time; no two names are alike, nor do they differ by large and small letters only.
///
/// # Errors
/// All faults that stand in the way, as [`parts`] gives them; [`PartFault::File`] if a file cannot
/// be put together.
pub fn files(
    design: &Design,
    options: &Options,
    title: &str,
    say: impl Fn(&Warning) -> String,
) -> Result<Vec<File>, Vec<PartFault>> {
    let parts = parts(design, options)?;
    files_of(&parts, &design.bench.printer, title, say)
}

/// As [`files`], for parts that are made already.
///
/// # Errors
/// [`PartFault::File`] if a file cannot be put together.
pub fn files_of(
    parts: &[Part],
    printer: &Printer,
    title: &str,
    say: impl Fn(&Warning) -> String,
) -> Result<Vec<File>, Vec<PartFault>> {
    let beds = plate_up(parts, printer);
    let names = stl_names(parts);
    let mut files = Vec::with_capacity(beds.len() + parts.len() + 1);
    let mut lies_on = vec![String::new(); parts.len()];
    let mut wrong = Vec::new();
    for (bed, number) in beds.iter().zip(1_u32..) {
        let name = match beds.len() {
            1 => "parts.3mf".to_owned(),
            _ => format!("parts-{number}.3mf"),
        };
        for (index, _) in &bed.placed {
            if let Some(on) = lies_on.get_mut(*index) {
                on.clone_from(&name);
            }
        }
        match threemf(parts, bed, title) {
            Ok(bytes) => files.push((name, bytes)),
            Err(err) => wrong.push(PartFault::File {
                name,
                reason: err.to_string(),
            }),
        }
    }
    if !wrong.is_empty() {
        return Err(wrong);
    }
    let notes: Vec<Vec<String>> = parts
        .iter()
        .map(|part| part.warnings.iter().map(&say).collect())
        .collect();
    let entries: Vec<Entry<'_>> = parts
        .iter()
        .zip(names.iter().zip(&lies_on))
        .zip(&notes)
        .map(|((part, (file, bed)), notes)| Entry {
            part,
            file,
            bed,
            notes,
        })
        .collect();
    let text = list(&entries, printer, title);
    let meshes = parts.iter().map(|part| stl(&part.mesh));
    files.extend(names.iter().cloned().zip(meshes));
    files.push(("parts.txt".to_owned(), text.into_bytes()));
    Ok(files)
}

/// A name a part, in their order; a part whose name is taken gets a number.
fn stl_names(parts: &[Part]) -> Vec<String> {
    let mut taken = BTreeSet::new();
    let mut names = Vec::with_capacity(parts.len());
    for part in parts {
        let stem = part.file_stem();
        let mut name = format!("{stem}.stl");
        let mut number = 2_u32;
        while !taken.insert(name.clone()) {
            name = format!("{stem}-{number}.stl");
            number += 1;
        }
        names.push(name);
    }
    names
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_of_one_name_get_files_of_their_own() {
        let mut parts = parts(&Design::default(), &Options::default()).unwrap();
        parts.truncate(3);
        for (part, name) in parts.iter_mut().zip(["Pin 1", "pin-1", "Pin 1 2"]) {
            name.clone_into(&mut part.name);
        }
        assert_eq!(
            stl_names(&parts),
            ["pin-1.stl", "pin-1-2.stl", "pin-1-2-2.stl"]
        );
    }

    #[test]
    fn no_parts_are_an_empty_list() {
        let files = files_of(&[], &Printer::default(), "none", |warning| {
            format!("{warning:?}")
        })
        .unwrap();
        assert_eq!(files.len(), 1);
    }
}
