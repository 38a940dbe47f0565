//! The program: a window, or one of the commands that work without.

use std::process::ExitCode;

fn main() -> ExitCode {
    latchwright_commands::run(std::env::args_os(), latchwright_desktop::window::open)
}
