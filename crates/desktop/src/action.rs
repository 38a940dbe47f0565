//! What a maker can ask for, as values: panels queue them, the app applies them in one place.

use std::path::PathBuf;

use egui::{Context, Key, KeyboardShortcut, Modifiers};
use latchwright_model::Design;

use crate::stage::Stage;

/// One wish. Panels read the session and push these; nothing else changes it.
pub enum Action {
    /// Change the design, as one named step of the history.
    Edit(Edit),
    /// Change the design while a hand is still moving: one step until it lets go.
    Drag(Edit),
    /// The hand let go.
    LetGo,
    /// The hand gave up: everything as before it moved.
    PutBack,
    /// Ask for a path and open it.
    Open,
    /// Open this file.
    OpenPath(PathBuf),
    /// Show this demo.
    Demo(&'static str),
    /// Ask the six questions for a new box.
    NewBox,
    /// Go on with this design instead of the open one.
    Take(Box<Design>),
    /// Go on with this design; changes may be lost.
    TakeAnyway(Box<Design>),
    /// Look for the smallest change that makes the design proven, and make it.
    Mend,
    /// Open this file; changes may be lost.
    OpenAnyway(PathBuf),
    /// Show this demo; changes may be lost.
    DemoAnyway(&'static str),
    /// Look again which of the designs used lately are there.
    LookForRecent,
    /// Take up this piece of the work that was left behind.
    TakeUp(usize),
    /// This piece of the work that was left behind is not wanted.
    ThrowAway(usize),
    /// Save where it came from, or ask where.
    Save,
    /// Save, and then do this.
    SaveThen(Box<Action>),
    /// Ask where and save there.
    SaveAs,
    /// Save here.
    SaveTo(PathBuf),
    /// Save here although the file was changed by somebody else or exists.
    SaveOver(PathBuf),
    /// Take the last change back.
    Undo,
    /// Bring it again.
    Redo,
    /// Millimetres or inches on screens and papers.
    SwitchUnits,
    /// Daylight or slate.
    SwitchTheme,
    /// Show this stage of the work.
    Show(Stage),
    /// Turn every dial somewhere.
    Shuffle,
    /// Draw a combination by the rules.
    DrawCombination,
    /// Ask which folder gets the papers.
    AskPapersPath,
    /// Ask which folder gets the printed parts.
    AskPartsPath,
    /// Write the parts into this folder.
    SaveParts(PathBuf),
    /// Write the parts into this folder although some are there.
    PartsOver(PathBuf),
    /// Write the papers into this folder.
    SavePapers(PathBuf),
    /// Write the papers into this folder although some are there.
    PapersOver(PathBuf),
    /// Ask where the card goes.
    AskCardPath,
    /// Write the card here.
    SaveCard(PathBuf),
    /// Write the card here although a file of that name exists.
    CardOver(PathBuf),
    /// List the keys.
    Keys,
    /// Say what the stage is for, what to do there, and what its words mean.
    Help,
    /// What was asked has its answer; what comes of it follows.
    Answered,
    /// Close what lies over the window, and do nothing of what it was for.
    CloseDialog,
    /// Move the slider over.
    Slide,
    /// Build many boxes, each held against the proof.
    Build,
    /// Give up building.
    StopBuilding,
    /// Leave, changes thrown away.
    Leave,
}

/// A change of the design with its name.
pub struct Edit {
    /// What the history calls it, for example "plate width".
    pub label: String,
    /// The change.
    pub change: Box<dyn FnOnce(&mut Design)>,
}

impl Edit {
    fn new(label: impl Into<String>, change: impl FnOnce(&mut Design) + 'static) -> Self {
        Self {
            label: label.into(),
            change: Box::new(change),
        }
    }
}

impl Action {
    /// An edit.
    pub fn edit(label: impl Into<String>, change: impl FnOnce(&mut Design) + 'static) -> Self {
        Self::Edit(Edit::new(label, change))
    }

    /// An edit by a hand that is still moving.
    pub fn drag(label: impl Into<String>, change: impl FnOnce(&mut Design) + 'static) -> Self {
        Self::Drag(Edit::new(label, change))
    }
}

/// A key and what it does.
pub struct Shortcut {
    /// The key.
    pub key: KeyboardShortcut,
    /// What it does, in words.
    pub what: &'static str,
    /// The wish it stands for.
    pub action: fn() -> Action,
}

const fn command(key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(Modifiers::COMMAND, key)
}

const fn command_shift(key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(Modifiers::COMMAND.plus(Modifiers::SHIFT), key)
}

/// Every key of the window; the list on F1 is made from it. Keys with more modifiers come first.
pub const SHORTCUTS: [Shortcut; 15] = [
    Shortcut {
        key: KeyboardShortcut::new(Modifiers::SHIFT, Key::F1),
        what: "Help for the stage shown",
        action: || Action::Help,
    },
    Shortcut {
        key: command_shift(Key::S),
        what: "Save under another name",
        action: || Action::SaveAs,
    },
    Shortcut {
        key: command_shift(Key::Z),
        what: "Redo",
        action: || Action::Redo,
    },
    Shortcut {
        key: command(Key::N),
        what: "A new box from six questions",
        action: || Action::NewBox,
    },
    Shortcut {
        key: command(Key::O),
        what: "Open a design",
        action: || Action::Open,
    },
    Shortcut {
        key: command(Key::S),
        what: "Save",
        action: || Action::Save,
    },
    Shortcut {
        key: command(Key::Z),
        what: "Undo",
        action: || Action::Undo,
    },
    Shortcut {
        key: command(Key::Num1),
        what: "Lay out: sizes and stock",
        action: || Action::Show(Stage::LayOut),
    },
    Shortcut {
        key: command(Key::Num2),
        what: "Try: turn and slide",
        action: || Action::Show(Stage::Try),
    },
    Shortcut {
        key: command(Key::Num3),
        what: "Prove: does it hold?",
        action: || Action::Show(Stage::Prove),
    },
    Shortcut {
        key: command(Key::Num4),
        what: "Make: papers and parts",
        action: || Action::Show(Stage::Make),
    },
    Shortcut {
        key: command(Key::Num5),
        what: "Give: combination and card",
        action: || Action::Show(Stage::Give),
    },
    Shortcut {
        key: command(Key::U),
        what: "Millimetres or inches",
        action: || Action::SwitchUnits,
    },
    Shortcut {
        key: command(Key::L),
        what: "Daylight or slate",
        action: || Action::SwitchTheme,
    },
    Shortcut {
        key: KeyboardShortcut::new(Modifiers::NONE, Key::F1),
        what: "This list of keys",
        action: || Action::Keys,
    },
];

/// The wishes whose keys were pressed.
pub fn pressed(ctx: &Context) -> Vec<Action> {
    SHORTCUTS
        .iter()
        .filter(|shortcut| ctx.input_mut(|input| input.consume_shortcut(&shortcut.key)))
        .map(|shortcut| (shortcut.action)())
        .collect()
}
