//! Words to the terminal; a reader that leaves early is no fault.

use std::io::{self, ErrorKind, Write};

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

/// Whether the other end of a pipe was closed, as by a pager that was left.
pub fn reader_left(err: &Error) -> bool {
    err.chain().any(|cause| {
        cause
            .downcast_ref::<io::Error>()
            .is_some_and(|err| err.kind() == ErrorKind::BrokenPipe)
    })
}
