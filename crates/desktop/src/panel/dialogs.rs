//! What lies over the window: asking for a path, for a decision, or listing the keys.
//!
//! The path field is always there; the desktop's own file dialog is only a way to fill it, asked on
//! a thread of its own, so that a desktop without one, or with one that never answers, stops
//! nothing.

use std::path::{Path, PathBuf};
use std::sync::mpsc::{Receiver, TryRecvError};
use std::time::SystemTime;

use egui::{Context, Grid, Id, Key, Modal, RichText, TextEdit, Ui};
use latchwright_drawing::Ink;
use latchwright_session::files;
use latchwright_session::recovery::Left;

use super::help::{help_ui, scrolled};
use crate::action::{Action, SHORTCUTS};
use crate::panel::NewBox;
use crate::stage::Stage;
use crate::theme;

/// What lies over the window.
pub enum Dialog {
    /// A path is asked for.
    Path(PathDialog),
    /// Changes would be lost: save, lose them, or stay.
    Unsaved {
        /// What comes after.
        then: Box<Action>,
    },
    /// Something stands in the way of saving here; the sentence says what.
    Over {
        /// Why it is asked.
        why: String,
        /// What is done all the same.
        then: Box<Action>,
    },
    /// Work that was left behind: take it up, throw it away, or leave it for later.
    Left(Vec<Left>),
    /// What a stage is for.
    Help(Stage),
    /// The keys.
    Keys,
    /// The six questions.
    NewBox(Box<NewBox>),
}

/// What a path is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Purpose {
    /// A design to open.
    Open,
    /// Where the design goes.
    Save,
    /// Where the card goes.
    Card,
    /// The folder that gets the papers.
    Papers,
    /// The folder that gets the printed parts.
    Parts,
}

/// Asking for a path.
pub struct PathDialog {
    purpose: Purpose,
    text: String,
    /// The answer of the desktop's dialog, once there is one.
    browsing: Option<Receiver<Option<PathBuf>>>,
    note: String,
    fresh: bool,
}

impl Purpose {
    fn title(self) -> &'static str {
        match self {
            Self::Open => "Open a design",
            Self::Save => "Save the design as",
            Self::Card => "Save the card as",
            Self::Papers => "Save all papers in a folder",
            Self::Parts => "Save all parts in a folder",
        }
    }

    fn verb(self) -> &'static str {
        match self {
            Self::Open => "Open this file",
            Self::Save | Self::Card | Self::Papers | Self::Parts => "Save here",
        }
    }
}

impl PathDialog {
    /// Asks with a path to start from.
    pub fn new(purpose: Purpose, start: &Path) -> Self {
        let text = start.to_string_lossy().into_owned();
        Self {
            purpose,
            text,
            browsing: None,
            note: String::new(),
            fresh: true,
        }
    }

    fn poll(&mut self) {
        let Some(answer) = &self.browsing else { return };
        match answer.try_recv() {
            Ok(Some(path)) => {
                self.text = path.to_string_lossy().into_owned();
                self.browsing = None;
                self.note.clear();
            }
            Ok(None) | Err(TryRecvError::Disconnected) => {
                self.browsing = None;
                "Nothing was chosen, or this desktop has no file dialog: type the path instead."
                    .clone_into(&mut self.note);
            }
            Err(TryRecvError::Empty) => {}
        }
    }

    fn wish(&self) -> Option<Action> {
        let text = self.text.trim();
        if text.is_empty() {
            return None;
        }
        let path = Path::new(text);
        Some(match self.purpose {
            Purpose::Open => Action::OpenPath(path.to_owned()),
            Purpose::Save => Action::SaveTo(files::with_ending(path)),
            Purpose::Card => Action::SaveCard(with_pdf(path)),
            Purpose::Papers => Action::SavePapers(path.to_owned()),
            Purpose::Parts => Action::SaveParts(path.to_owned()),
        })
    }
}

/// `path` with the ending of the card, unless it has it already.
fn with_pdf(path: &Path) -> PathBuf {
    let has = path.extension();
    if has.is_some_and(|own| own.eq_ignore_ascii_case("pdf")) {
        return path.to_owned();
    }
    let mut whole = path.as_os_str().to_owned();
    whole.push(".pdf");
    PathBuf::from(whole)
}

/// Asks the desktop for a path on a thread of its own.
fn browse(ctx: &Context, purpose: Purpose, start: &Path) -> Receiver<Option<PathBuf>> {
    let (sender, receiver) = std::sync::mpsc::channel();
    let (ctx, start) = (ctx.clone(), start.to_owned());
    std::thread::spawn(move || {
        let mut dialog = rfd::FileDialog::new().set_title(purpose.title());
        if let Some(folder) = start.parent().filter(|folder| folder.is_dir()) {
            dialog = dialog.set_directory(folder);
        }
        let chosen = match purpose {
            Purpose::Open => dialog
                .add_filter("Latchwright design", &["ron"])
                .pick_file(),
            Purpose::Papers | Purpose::Parts => dialog.pick_folder(),
            Purpose::Save | Purpose::Card => {
                let name = start.file_name().unwrap_or_default().to_string_lossy();
                dialog.set_file_name(name).save_file()
            }
        };
        // the window may have gone on without an answer
        let _ = sender.send(chosen);
        ctx.request_repaint();
    });
    receiver
}

/// Shows what lies over the window, if anything does.
pub fn dialog_ui(ctx: &Context, dialog: &mut Dialog, wishes: &mut Vec<Action>) {
    let answer = Modal::new(Id::unique("over the window"))
        .frame(theme::over(ctx))
        .show(ctx, |ui| {
            ui.set_max_width(560.0);
            match dialog {
                Dialog::Path(path) => path_ui(ui, path, wishes),
                Dialog::Unsaved { then } => unsaved_ui(ui, then, wishes),
                Dialog::Over { why, then } => over_ui(ui, why, then, wishes),
                Dialog::Left(left) => left_ui(ui, left, wishes),
                Dialog::Help(stage) => help_ui(ui, *stage, wishes),
                Dialog::Keys => keys_ui(ui, wishes),
                Dialog::NewBox(_) => {}
            }
        });
    if answer.should_close() {
        wishes.push(Action::CloseDialog);
    }
}

fn path_ui(ui: &mut Ui, dialog: &mut PathDialog, wishes: &mut Vec<Action>) {
    dialog.poll();
    ui.heading(dialog.purpose.title());
    let label = ui.label("Path");
    let field = TextEdit::singleline(&mut dialog.text).desired_width(520.0);
    let response = ui.add(field).labelled_by(label.id);
    if std::mem::take(&mut dialog.fresh) {
        response.request_focus();
    }
    let entered = response.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
    let taken = match dialog.wish() {
        Some(Action::SaveTo(path) | Action::SaveCard(path)) => files::exists(&path),
        _ => false,
    };
    let note = if taken {
        "A file of this name exists; you will be asked again."
    } else {
        dialog.note.as_str()
    };
    ui.label(RichText::new(note).small().weak());
    ui.horizontal(|ui| {
        let wish = dialog.wish();
        let go = ui.add_enabled(wish.is_some(), egui::Button::new(dialog.purpose.verb()));
        if (go.clicked() || entered)
            && let Some(wish) = wish
        {
            wishes.push(wish);
        }
        let idle = dialog.browsing.is_none();
        if ui.add_enabled(idle, egui::Button::new("Browse…")).clicked() {
            let start = PathBuf::from(dialog.text.trim());
            dialog.browsing = Some(browse(ui.ctx(), dialog.purpose, &start));
            "Waiting for the desktop's file dialog; the field above works meanwhile."
                .clone_into(&mut dialog.note);
        }
        if ui.button("Cancel").clicked() {
            wishes.push(Action::CloseDialog);
        }
    });
}

fn unsaved_ui(ui: &mut Ui, then: &mut Box<Action>, wishes: &mut Vec<Action>) {
    ui.heading("Save your changes first?");
    ui.label("The design has changes that are in no file yet.");
    ui.horizontal(|ui| {
        if ui.button("Save, then go on").clicked() {
            let then = std::mem::replace(then.as_mut(), Action::CloseDialog);
            wishes.push(Action::SaveThen(Box::new(then)));
        }
        if ui.button("Throw them away").clicked() {
            wishes.push(Action::Answered);
            wishes.push(std::mem::replace(then.as_mut(), Action::CloseDialog).discarding());
        }
        if ui.button("Cancel").clicked() {
            wishes.push(Action::CloseDialog);
        }
    });
}

fn left_ui(ui: &mut Ui, left: &[Left], wishes: &mut Vec<Action>) {
    ui.heading("Work that was not saved");
    let now = SystemTime::now();
    for (index, work) in left.iter().enumerate() {
        // only a name that no other button has can be told apart without seeing where it is
        let of = match left.len() {
            1 => String::new(),
            _ => format!(" ({})", index + 1),
        };
        ui.add_space(4.0);
        ui.label(work.sentence(now));
        ui.horizontal(|ui| {
            if ui.button(format!("Take it up again{of}")).clicked() {
                wishes.push(Action::TakeUp(index));
            }
            if ui.button(format!("Throw it away{of}")).clicked() {
                wishes.push(Action::ThrowAway(index));
            }
        });
    }
    ui.add_space(8.0);
    if ui.button("Not now").clicked() {
        wishes.push(Action::CloseDialog);
    }
    let kept = "What is neither taken up nor thrown away is offered again at the next start.";
    ui.label(RichText::new(kept).small().weak());
}

fn over_ui(ui: &mut Ui, why: &str, then: &mut Box<Action>, wishes: &mut Vec<Action>) {
    ui.heading("Save over it?");
    ui.label(RichText::new(why).color(theme::ink(ui.ctx(), Ink::Blocks)));
    ui.horizontal(|ui| {
        if ui.button("Save over it").clicked() {
            wishes.push(Action::Answered);
            wishes.push(std::mem::replace(then.as_mut(), Action::CloseDialog));
        }
        if ui.button("Cancel").clicked() {
            wishes.push(Action::CloseDialog);
        }
    });
}

/// What the hand can do on the lid, beside the keys of the table.
const ON_THE_LID: [(&str, &str); 9] = [
    ("Tab", "From one dial or field to the next"),
    ("Arrow keys", "Turn the dial that has the focus by a mark"),
    ("A label typed", "Turn that dial to it"),
    ("Space", "Slider back to its stop, or forward"),
    (
        "Click, wheel, drag",
        "On a knob: turn it; on the finger knob: slide",
    ),
    (
        "Drag a handle",
        "In Lay out: move that dial or the tab; Escape puts it back",
    ),
    (
        "Arrow keys on a handle",
        "Move it by a mark of the ruler, with Shift finely",
    ),
    (
        "Alt with drag",
        "Turn a dial freely between its marks; move a handle freely",
    ),
    (
        "Escape",
        "Close what lies over the window; leave a handle or a field",
    ),
];

fn keys_ui(ui: &mut Ui, wishes: &mut Vec<Action>) {
    ui.heading("Keys");
    scrolled(ui, |ui| {
        let keys = Grid::new("keys").num_columns(2).spacing([24.0, 6.0]);
        keys.min_row_height(20.0).show(ui, |ui| {
            let lid = ON_THE_LID.map(|(key, what)| (key.to_owned(), what));
            let shortcuts = SHORTCUTS.iter().map(|shortcut| {
                let key = ui.ctx().format_shortcut(&shortcut.key);
                (key, shortcut.what)
            });
            let all: Vec<_> = lid.into_iter().chain(shortcuts).collect();
            for (key, what) in all {
                ui.label(RichText::new(key).family(theme::bold()));
                ui.label(what);
                ui.end_row();
            }
        });
    });
    ui.add_space(8.0);
    if ui.button("Close").clicked() {
        wishes.push(Action::CloseDialog);
    }
}
