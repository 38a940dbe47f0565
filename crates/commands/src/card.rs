//! `latchwright card`: the recipient's card as PDF.

use std::path::Path;

use anyhow::{Result, anyhow};
use latchwright_proof::prove;
use latchwright_session::products::card_pdf;
use latchwright_session::words::products::product_error;
use latchwright_session::{Session, files};

use super::output;

/// Makes the card of the design in `file`.
pub fn run(file: &Path, out: &Path) -> Result<u8> {
    let session = Session::open(file)?;
    let pdf = card_pdf(session.design())
        .map_err(|err| anyhow!(product_error(&err, session.design().units)))?;
    files::write_atomically(out, &pdf)?;
    if !session.proven_by(&prove(session.design())) {
        output::complain(&anyhow!(
            "this latch is not proven: the card may promise what the box does not keep; \
             see latchwright prove"
        ));
    }
    output::say(&format!("{}: print it at 100 %\n", out.display()))?;
    Ok(0)
}
