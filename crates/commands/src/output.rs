//! Words to the terminal; a reader that leaves early is no fault.

use core::fmt::Arguments;
use std::io::{self, ErrorKind, IsTerminal, Write};
use std::ops::ControlFlow;

use anyhow::Error;

/// Prints to standard output.
pub fn say(text: &str) -> io::Result<()> {
    let mut out = io::stdout().lock();
    out.write_all(text.as_bytes())?;
    out.flush()
}

/// Prints one line to standard error.
pub fn complain(err: &Error) {
    // there is nobody left to tell if this fails
    let _ = writeln!(io::stderr().lock(), "latchwright: {err}");
}

/// How far a work is that takes a while, on a line of a terminal; elsewhere nothing is said.
pub struct Progress {
    told: bool,
}

impl Progress {
    /// Before the work.
    pub fn begin() -> Self {
        Self {
            told: io::stderr().is_terminal(),
        }
    }

    /// Says so over what was said before.
    pub fn say(&self, far: Arguments<'_>) {
        if self.told {
            // progress that cannot be shown is no reason to stop
            let _ = write!(io::stderr(), "\r{far}");
        }
    }

    /// Leaves the line.
    pub fn end(self) {
        if self.told {
            let _ = writeln!(io::stderr());
        }
    }
}

/// Does what takes a while, and tells a terminal how far it is, once for each per cent.
pub fn with_progress<T>(work: impl FnOnce(&mut dyn FnMut(f64) -> ControlFlow<()>) -> T) -> T {
    let progress = Progress::begin();
    let mut told = -1.0;
    let done = work(&mut |share| {
        let per_cent = (100.0 * share).floor();
        if per_cent != told {
            told = per_cent;
            progress.say(format_args!("{per_cent:3.0} %"));
        }
        ControlFlow::Continue(())
    });
    progress.end();
    done
}

/// Whether the other end of a pipe was closed, as by a pager that was left.
pub fn reader_left(err: &Error) -> bool {
    err.chain().any(|cause| {
        cause
            .downcast_ref::<io::Error>()
            .is_some_and(|err| err.kind() == ErrorKind::BrokenPipe)
    })
}
