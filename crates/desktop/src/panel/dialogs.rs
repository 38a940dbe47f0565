//! What lies over the window: asking for a path, for a decision, or listing the keys.
//!
//! The path field is always there; the desktop's own file dialog is only a way to fill it, asked beside
//! the window, so that a desktop without one, or with one that never answers, stops nothing.

use std::path::{Path, PathBuf};
use std::time::SystemTime;

use egui::{Context, Grid, Id, Key, Modal, RichText, TextEdit, Ui};
use latchwright_drawing::Ink;
use latchwright_session::files;
use latchwright_session::recovery::Left;

use super::help::{help_ui, scrolled};
use crate::action::{Action, Product, Source, Unsaved};
use crate::command::{Standing, shortcuts};
use crate::panel::NewBox;
use crate::stage::Stage;
use crate::tasks::{Polled, Task, TaskKind, Tasks};
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
    /// Something is still being saved: the window closes when that is done, and what becomes of changes that
    /// are in no file then.
    Closing(Unsaved),
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
    /// Where this goes: a file, or the folder of several.
    Save(Product),
}

/// Asking for a path.
pub struct PathDialog {
    purpose: Purpose,
    text: String,
    /// The answer of the desktop's dialog, once there is one.
    browsing: Option<Task<Option<PathBuf>>>,
    note: String,
    fresh: bool,
}

impl Purpose {
    fn title(self) -> &'static str {
        match self {
            Self::Open => "Open a design",
            Self::Save(Product::Design) => "Save the design as",
            Self::Save(Product::Card) => "Save the card as",
            Self::Save(Product::Papers) => "Save all papers in a folder",
            Self::Save(Product::Parts) => "Save all parts in a folder",
        }
    }

    fn verb(self) -> &'static str {
        match self {
            Self::Open => "Open this file",
            Self::Save(_) => "Save here",
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

    /// What it is asked for.
    pub fn purpose(&self) -> Purpose {
        self.purpose
    }

    fn poll(&mut self) {
        let Some(answer) = &self.browsing else { return };
        match answer.poll() {
            Polled::Done(Some(path)) => {
                self.text = path.to_string_lossy().into_owned();
                self.browsing = None;
                self.note.clear();
            }
            Polled::Done(None) | Polled::Fell => {
                self.browsing = None;
                "Nothing was chosen, or this desktop has no file dialog: type the path instead."
                    .clone_into(&mut self.note);
            }
            Polled::Running => {}
        }
    }

    /// Asks the desktop, whose answer fills the field.
    pub fn browse(&mut self, tasks: &mut Tasks) {
        let (purpose, start) = (self.purpose, PathBuf::from(self.text.trim()));
        self.browsing = tasks.start(TaskKind::Browse, 0, move |_| browse(purpose, &start));
        "Waiting for the desktop's file dialog; the field above works meanwhile."
            .clone_into(&mut self.note);
    }

    fn wish(&self) -> Option<Action> {
        let text = self.text.trim();
        if text.is_empty() {
            return None;
        }
        let path = Path::new(text);
        Some(match self.purpose {
            Purpose::Open => Action::open(Source::File(path.to_owned())),
            Purpose::Save(what) => {
                let to = match what {
                    Product::Design => files::with_ending(path),
                    Product::Card => with_pdf(path),
                    Product::Papers | Product::Parts => path.to_owned(),
                };
                Action::save(what, to)
            }
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

/// What the desktop answers, which may take for ever.
fn browse(purpose: Purpose, start: &Path) -> Option<PathBuf> {
    let mut dialog = rfd::FileDialog::new().set_title(purpose.title());
    if let Some(folder) = start.parent().filter(|folder| folder.is_dir()) {
        dialog = dialog.set_directory(folder);
    }
    match purpose {
        Purpose::Open => dialog
            .add_filter("Latchwright design", &["ron"])
            .pick_file(),
        Purpose::Save(Product::Papers | Product::Parts) => dialog.pick_folder(),
        Purpose::Save(Product::Design | Product::Card) => {
            let name = start.file_name().unwrap_or_default().to_string_lossy();
            dialog.set_file_name(name).save_file()
        }
    }
}

/// Shows what lies over the window, if anything does.
pub fn dialog_ui(
    ctx: &Context,
    dialog: &mut Dialog,
    standing: &Standing<'_>,
    wishes: &mut Vec<Action>,
) {
    let answer = Modal::new(Id::unique("over the window"))
        .frame(theme::over(ctx))
        .show(ctx, |ui| {
            ui.set_max_width(560.0);
            match dialog {
                Dialog::Path(path) => path_ui(ui, path, wishes),
                Dialog::Unsaved { then } => unsaved_ui(ui, then, wishes),
                Dialog::Over { why, then } => over_ui(ui, why, then, wishes),
                Dialog::Closing(_) => closing_ui(ui, standing, wishes),
                Dialog::Left(left) => left_ui(ui, left, wishes),
                Dialog::Help(stage) => help_ui(ui, *stage, standing, wishes),
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
        Some(Action::Save {
            what: Product::Design | Product::Card,
            to,
            ..
        }) => files::exists(&to),
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
            wishes.push(Action::Browse);
        }
        if ui.button("Cancel").clicked() {
            wishes.push(Action::CloseDialog);
        }
    });
}

/// What the window waits for before it closes.
fn closing_ui(ui: &mut Ui, standing: &Standing<'_>, wishes: &mut Vec<Action>) {
    ui.heading("Still saving");
    for product in standing.writing {
        let what = match product {
            Product::Design => "The design is",
            Product::Card => "The card is",
            Product::Papers => "All papers are",
            Product::Parts => "All parts are",
        };
        ui.label(format!("{what} being saved."));
    }
    ui.label("The window closes when that is done.");
    if ui.button("Keep the window open").clicked() {
        wishes.push(Action::CloseDialog);
    }
}

fn unsaved_ui(ui: &mut Ui, then: &Action, wishes: &mut Vec<Action>) {
    ui.heading("Save your changes first?");
    ui.label("The design has changes that are in no file yet.");
    ui.horizontal(|ui| {
        if ui.button("Save, then go on").clicked() {
            wishes.push(Action::SaveThen(Box::new(then.clone())));
        }
        if ui.button("Throw them away").clicked() {
            wishes.push(Action::Answered);
            wishes.push(then.clone().discarding());
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

fn over_ui(ui: &mut Ui, why: &str, then: &Action, wishes: &mut Vec<Action>) {
    ui.heading("Save over it?");
    ui.label(RichText::new(why).color(theme::ink(ui.ctx(), Ink::Blocks)));
    ui.horizontal(|ui| {
        if ui.button("Save over it").clicked() {
            wishes.push(Action::Answered);
            wishes.push(then.clone());
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
            let shortcuts = shortcuts().map(|(shortcut, _)| {
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
