//! What is changed in a PDF after the typesetter wrote it: printers are asked not to scale.

use lopdf::{Dictionary, Document, Object};

use crate::error::PaperError;

/// Adds `/PrintScaling /None` to the viewer preferences, so that the sheet comes out at true size.
///
/// Takes out the entry that says that no tag is suspect. Everything else stays as the typesetter wrote it; the same bytes in give the same bytes out.
pub(crate) fn at_true_size(pdf: &[u8]) -> Result<Vec<u8>, PaperError> {
    let mut document = Document::load_mem(pdf).map_err(fault)?;
    let catalog = document.catalog_mut().map_err(fault)?;
    let found = catalog.get(b"ViewerPreferences").and_then(Object::as_dict);
    let mut preferences = found.cloned().unwrap_or_else(|_| Dictionary::new());
    preferences.set("PrintScaling", Object::Name(b"None".to_vec()));
    catalog.set("ViewerPreferences", preferences);
    // That no tag is suspect is what a missing entry says too, and some readers take offence at the word.
    let tags = catalog.get_mut(b"MarkInfo").and_then(Object::as_dict_mut);
    if let Ok(tags) = tags
        && tags
            .get(b"Suspects")
            .and_then(Object::as_bool)
            .is_ok_and(|suspect| !suspect)
    {
        tags.remove(b"Suspects");
    }
    let mut bytes = Vec::with_capacity(pdf.len() + 64);
    document.save_to(&mut bytes).map_err(fault)?;
    Ok(bytes)
}

fn fault(err: impl core::fmt::Display) -> PaperError {
    PaperError::Typeset {
        message: format!("the finished page could not be read again: {err}"),
    }
}
