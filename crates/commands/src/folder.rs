//! What was made, into a folder of the maker's; and what is to be said of it.

use std::path::Path;

use anyhow::{Result, anyhow};
use latchwright_proof::prove;
use latchwright_session::Session;
use latchwright_session::file_set::{Replace, write_file_set};
use latchwright_session::products::ForFolder;

use super::output;

/// Where it goes.
pub struct Destination<'a> {
    /// The folder, which is made where it is lacking.
    pub folder: &'a Path,
    /// Whether files that are there may be replaced.
    pub replace: Replace,
}

/// Writes `made` to its folder, all or none; then says what is to be known before `deed` is done. The paths
/// of what was written.
pub fn save(
    session: &Session,
    made: &ForFolder,
    to: &Destination<'_>,
    deed: &str,
) -> Result<Vec<String>> {
    write_file_set(to.folder, &made.files, to.replace)?;
    for remark in &made.remarks {
        output::complain(&anyhow!("{remark}"));
    }
    if !session.proven_by(&prove(session.design())) {
        output::complain(&anyhow!(
            "this latch is not proven: see latchwright prove before you {deed}"
        ));
    }
    let paths = made.files.iter().map(|file| to.folder.join(&file.name));
    Ok(paths.map(|path| path.display().to_string()).collect())
}
