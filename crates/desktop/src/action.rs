//! What a maker can ask for, as values: panels queue them, the app applies them in one place.

use std::path::PathBuf;

use latchwright_model::Design;
use latchwright_session::file_set::Replace;
use latchwright_session::questions::Answers;

use crate::command::Command;
use crate::edit::Edit;
use crate::view_state::PoseChange;

/// One wish. Panels read the session and push these; nothing else changes it.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    /// What a button or a key stands for.
    Do(Command),
    /// Change the design, as one named step of the history.
    Edit(Edit),
    /// Change the design while a hand is still moving: one step until it lets go.
    Drag(Edit),
    /// The hand let go.
    LetGo,
    /// The hand gave up: everything as before it moved.
    PutBack,
    /// Turn dials, move the slider.
    Pose(PoseChange),
    /// Go on with another design.
    Open {
        /// Which.
        source: Source,
        /// What becomes of changes that are in no file.
        unsaved: Unsaved,
    },
    /// Look again which of the designs used lately are there.
    LookForRecent,
    /// Look for new boxes that answer this.
    Propose(Box<Answers>),
    /// Look what would buy more than these answers allow.
    LookFurther(Box<Answers>),
    /// Take up this piece of the work that was left behind.
    TakeUp(usize),
    /// This piece of the work that was left behind is not wanted.
    ThrowAway(usize),
    /// Write this here.
    Save {
        /// What.
        what: Product,
        /// The file, or the folder of several.
        to: PathBuf,
        /// Whether what is there may be written over.
        replace: Replace,
    },
    /// Save the design, and then do this.
    SaveThen(Box<Action>),
    /// Ask the desktop for the path that is asked for.
    Browse,
    /// What was asked has its answer; what comes of it follows.
    Answered,
    /// Close what lies over the window, and do nothing of what it was for.
    CloseDialog,
    /// Leave; changes that are in no file are thrown away.
    Leave,
}

/// Where a design comes from.
#[derive(Debug, Clone, PartialEq)]
pub enum Source {
    /// This file.
    File(PathBuf),
    /// The demo of this name.
    Demo(&'static str),
    /// It was proposed.
    Proposal(Box<Design>),
}

/// What becomes of changes that are in no file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unsaved {
    /// The maker is asked.
    Ask,
    /// They may be lost.
    Discard,
}

/// What can be written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Product {
    /// The design itself.
    Design,
    /// The recipient's card.
    Card,
    /// All papers, in a folder.
    Papers,
    /// All printed parts, in a folder.
    Parts,
}

impl Action {
    /// Go on with another design, and ask before changes are lost.
    pub const fn open(source: Source) -> Self {
        Self::Open {
            source,
            unsaved: Unsaved::Ask,
        }
    }

    /// Write this here, unless something is there.
    pub const fn save(what: Product, to: PathBuf) -> Self {
        Self::Save {
            what,
            to,
            replace: Replace::Never,
        }
    }

    /// The same wish, its maker having said that changes may be lost.
    #[must_use]
    pub fn discarding(self) -> Self {
        match self {
            Self::Open { source, .. } => Self::Open {
                source,
                unsaved: Unsaved::Discard,
            },
            other => other,
        }
    }
}
