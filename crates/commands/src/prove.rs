//! `latchwright prove`: the whole report, as text or JSON.

use std::ops::ControlFlow;
use std::path::Path;

use anyhow::{Result, bail};
use latchwright_proof::prove;
use latchwright_search::remedy;
use latchwright_session::Session;
use latchwright_session::report::{
    FileNotes, MarkPlace, mark_json, mark_text, proof_json, proof_text,
};

use latchwright_session::words::typed::mark_error;

use super::output;

/// Proves the design in `file`; 0 proven, 1 not proven.
pub fn run(file: &Path, json: bool) -> Result<u8> {
    let session = Session::open(file)?;
    let design = session.design();
    let proof = prove(design);
    // bounded in work: half a second, which nobody has to be told of
    let remedies = remedy::all(design, &proof, &mut |_| ControlFlow::Continue(()));
    let notes = FileNotes {
        notices: session.notices(),
        unknown: session.unknown(),
    };
    let text = if json {
        format!("{:#}\n", proof_json(design, &proof, &remedies, &notes))
    } else {
        proof_text(design, &proof, &remedies, &notes)
    };
    output::say(&text)?;
    Ok(u8::from(!session.proven_by(&proof)))
}

/// Says what the mark `DIAL:LABEL` promises; 0 done.
pub fn run_mark(file: &Path, mark: &str, json: bool) -> Result<u8> {
    let session = Session::open(file)?;
    let design = session.design();
    let place = match MarkPlace::parse(design, mark) {
        Ok(place) => place,
        Err(err) => bail!(mark_error(&err)),
    };
    let text = if json {
        format!("{:#}\n", mark_json(design, place))
    } else {
        mark_text(design, place)
    };
    output::say(&text)?;
    Ok(0)
}
