//! `latchwright builds`: many virtual builds, and what becomes of them.

use std::path::Path;
use std::sync::atomic::AtomicBool;

use anyhow::{Result, bail};
use latchwright_proof::builds::Plan;
use latchwright_session::report::{builds_json, builds_text};
use latchwright_session::{Session, builds, threads};

use super::output::{self, Progress};

/// Builds the design in `file` as planned; 0 done, 1 where a build does not keep what was proven.
pub fn run(file: &Path, plan: Plan, json: bool) -> Result<u8> {
    let session = Session::open(file)?;
    let progress = Progress::begin();
    let tell = |done: u64| progress.say(format_args!("{done} of {} built", plan.count));
    let never = AtomicBool::new(false);
    let Some(found) = builds::run(session.design(), plan, threads::available(), &never, tell)
    else {
        bail!(
            "{} has an error that leaves no sense in building it: see `latchwright prove`",
            file.display()
        );
    };
    progress.end();
    let text = if json {
        format!("{:#}\n", builds_json(&found))
    } else {
        builds_text(&found)
    };
    output::say(&text)?;
    Ok(u8::from(found.contradictions > 0))
}
