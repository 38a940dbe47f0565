//! Opening the window, and saying in one sentence why it cannot be opened.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use anyhow::{Result, anyhow};
use eframe::NativeOptions;
use egui::ViewportBuilder;
use etcetera::BaseStrategy as _;
use latchwright_session::Session;
use latchwright_session::recent::{self, Last};

use crate::app::LatchwrightApp;

/// The design the program opens with when none is named.
const FIRST: &str = "tea-box";

/// What works without a window, named where a window cannot be had.
const WITHOUT: &str = "without a window these work: latchwright prove FILE, latchwright settings FILE, latchwright card FILE --out OUT.pdf, and all else that latchwright --help lists";

/// Opens the window on `file`, on the design worked on last, or on a working demo.
///
/// A file that cannot be read is said in the window, beside the demo, and left alone.
///
/// # Errors
/// One sentence when no display or driver is to be had.
pub fn open(file: Option<&Path>) -> Result<()> {
    if !display_named() {
        return Err(anyhow!(
            "no display is set, so the window cannot be shown; {WITHOUT}"
        ));
    }
    let memory = memory();
    let (session, notice) = first_session(file, memory.as_deref());
    // a file, or why there is none, is what everybody else begins with
    let newcomer = session.path().is_none() && notice.is_none();
    let options = NativeOptions {
        viewport: ViewportBuilder::default()
            .with_title("Latchwright")
            .with_app_id("latchwright")
            .with_inner_size([1440.0, 900.0])
            .with_min_inner_size([1024.0, 700.0]),
        ..NativeOptions::default()
    };
    let remembered = memory.clone();
    let begun = Arc::new(AtomicBool::new(false));
    let begins = Arc::clone(&begun);
    // the windowing library panics where a system library is missing
    let shown = catch_unwind(AssertUnwindSafe(|| {
        eframe::run_native(
            "latchwright",
            options,
            Box::new(move |context| {
                begins.store(true, Ordering::Relaxed);
                let ctx = &context.egui_ctx;
                let app = LatchwrightApp::new(ctx, session, notice);
                let app = if newcomer { app.welcoming() } else { app };
                Ok(Box::new(match &memory {
                    Some(folder) => app.remembering(ctx, folder),
                    None => app,
                }))
            }),
        )
    }));
    match shown {
        Ok(Ok(())) => Ok(()),
        Ok(Err(err)) => Err(anyhow!("the window cannot be shown ({err}); {WITHOUT}")),
        // the app has been dropped on the way here, which wrote what was not saved
        Err(_) if begun.load(Ordering::Relaxed) => {
            if let Some(folder) = &remembered {
                recent::broke_off(folder);
            }
            Err(anyhow!(
                "the window broke off, a fault of this program; work that was not saved is offered at the next start"
            ))
        }
        Err(_) => Err(anyhow!(
            "the window cannot be shown (a library it needs is missing); {WITHOUT}"
        )),
    }
}

fn display_named() -> bool {
    let set = |name| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    !cfg!(target_os = "linux") || set("DISPLAY") || set("WAYLAND_DISPLAY")
}

/// Where this person's programs keep what they remember; none where there is no home.
fn memory() -> Option<PathBuf> {
    let places = etcetera::choose_base_strategy().ok()?;
    Some(places.data_dir().join("latchwright"))
}

/// The file that was named, else the design worked on last, else a demo; and what went wrong.
pub fn first_session(file: Option<&Path>, memory: Option<&Path>) -> (Session, Option<String>) {
    let last = || memory.map_or(Last::Nothing, recent::last);
    let path = match file.map_or_else(last, |path| Last::Design(path.to_owned())) {
        Last::Nothing => return (demo(), None),
        Last::Design(path) => path,
        Last::BrokeOff(path) => {
            let why = format!(
                "The window broke off while {} was open, a fault of this program. A demo is shown instead; the file is \
                 where it was, and Recent opens it.",
                path.display()
            );
            return (demo(), Some(why));
        }
    };
    match Session::open(&path) {
        Ok(session) => (session, None),
        Err(err) => (demo(), Some(format!("{err}. A demo is shown instead."))),
    }
}

fn demo() -> Session {
    Session::demo(FIRST).unwrap_or_default()
}
