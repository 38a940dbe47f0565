//! What was made, into a folder of the maker's; and what is to be said of it.

use std::path::Path;

use anyhow::{Result, anyhow};
use latchwright_proof::prove;
use latchwright_session::Session;
use latchwright_session::products::ForFolder;
use latchwright_session::together::{Replace, write_together};

use super::output;

/// Writes `made` into `out`, all or none; then says what is to be known before `deed` is done. The paths
/// of what was written.
pub fn save(
    session: &Session,
    made: &ForFolder,
    (out, replace): (&Path, bool),
    deed: &str,
) -> Result<Vec<String>> {
    write_together(out, &made.files, Replace::if_asked(replace))?;
    for remark in &made.remarks {
        output::complain(&anyhow!("{remark}"));
    }
    if !session.proven_by(&prove(session.design())) {
        output::complain(&anyhow!(
            "this latch is not proven: see latchwright prove before you {deed}"
        ));
    }
    let paths = made.files.iter().map(|file| out.join(&file.name));
    Ok(paths.map(|path| path.display().to_string()).collect())
}
