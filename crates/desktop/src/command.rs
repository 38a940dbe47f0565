//! What a button or a key stands for: for each its key, its words, and why it cannot be done now. Menus, key
//! help and buttons ask here.

use egui::{Button, Context, Key, KeyboardShortcut, Modifiers, Response, Ui};
use latchwright_session::Session;

use crate::action::{Action, Product};
use crate::stage::Stage;

/// One command.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Command {
    /// Say what the stage is for, what to do there, and what its words mean.
    Help,
    /// Ask where this goes, and write it there.
    SaveAs(Product),
    /// Bring a change again that was taken back.
    Redo,
    /// Ask the six questions for a new box.
    NewBox,
    /// Ask for a path and open it.
    Open,
    /// Give up opening a design.
    StopOpening,
    /// Save where it came from, or ask where.
    Save,
    /// Take the last change back.
    Undo,
    /// Show this stage of the work.
    Show(Stage),
    /// Millimetres or inches on screens and papers.
    SwitchUnits,
    /// Daylight or slate.
    SwitchTheme,
    /// List the keys.
    Keys,
    /// Move the slider over.
    Slide,
    /// Turn every dial somewhere.
    Shuffle,
    /// Draw a combination by the rules.
    DrawCombination,
    /// Look for the smallest change that makes the design proven, and make it.
    Mend,
    /// Give up mending.
    StopMending,
    /// Give up looking for new boxes.
    StopProposing,
    /// Build many boxes, each held against the proof.
    Build,
    /// Give up building.
    StopBuilding,
    /// Try every mark for openings that should not be there.
    Hunt,
    /// Give up the hunt.
    StopHunting,
}

/// What decides which commands can be given, and what some are called.
#[derive(Clone, Copy)]
pub struct Standing<'a> {
    /// The open design.
    pub session: &'a Session,
    /// Products on their way to their files.
    pub writing: &'a [Product],
    /// Whether a change that mends is being looked for.
    pub mending: bool,
    /// Why there is no card, where there is none.
    pub no_card: Option<&'a str>,
}

impl Standing<'_> {
    /// Whether papers or parts are on their way to their folder.
    fn writes_a_folder(&self) -> bool {
        let folder = |product: &Product| matches!(product, Product::Papers | Product::Parts);
        self.writing.iter().any(folder)
    }
}

const fn command(key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(Modifiers::COMMAND, key)
}

const fn command_shift(key: Key) -> KeyboardShortcut {
    KeyboardShortcut::new(Modifiers::COMMAND.plus(Modifiers::SHIFT), key)
}

/// Every command that has a key, in the order of the key help. Keys with more modifiers come first.
const WITH_KEYS: [Command; 15] = [
    Command::Help,
    Command::SaveAs(Product::Design),
    Command::Redo,
    Command::NewBox,
    Command::Open,
    Command::Save,
    Command::Undo,
    Command::Show(Stage::LayOut),
    Command::Show(Stage::Try),
    Command::Show(Stage::Prove),
    Command::Show(Stage::Make),
    Command::Show(Stage::Give),
    Command::SwitchUnits,
    Command::SwitchTheme,
    Command::Keys,
];

/// A key and what it does, in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shortcut {
    /// The key.
    pub key: KeyboardShortcut,
    /// What it does.
    pub what: &'static str,
}

/// Every key of the window and its command, in the order of the key help.
pub fn shortcuts() -> impl Iterator<Item = (Shortcut, Command)> {
    WITH_KEYS
        .into_iter()
        .filter_map(|command| Some((command.shortcut()?, command)))
}

/// The commands whose keys were pressed. None is held back: what cannot be done does nothing, and undo takes
/// back what is being typed before any step of the history.
pub fn pressed(ctx: &Context) -> Vec<Command> {
    shortcuts()
        .filter(|(shortcut, _)| ctx.input_mut(|input| input.consume_shortcut(&shortcut.key)))
        .map(|(_, command)| command)
        .collect()
}

impl Command {
    /// Its key.
    pub const fn shortcut(self) -> Option<Shortcut> {
        let (key, what) = match self {
            Self::Help => (
                KeyboardShortcut::new(Modifiers::SHIFT, Key::F1),
                "Help for the stage shown",
            ),
            Self::SaveAs(Product::Design) => (command_shift(Key::S), "Save under another name"),
            Self::Redo => (command_shift(Key::Z), "Redo"),
            Self::NewBox => (command(Key::N), "A new box from six questions"),
            Self::Open => (command(Key::O), "Open a design"),
            Self::Save => (command(Key::S), "Save"),
            Self::Undo => (command(Key::Z), "Undo"),
            Self::Show(Stage::LayOut) => (command(Key::Num1), "Lay out: sizes and stock"),
            Self::Show(Stage::Try) => (command(Key::Num2), "Try: turn and slide"),
            Self::Show(Stage::Prove) => (command(Key::Num3), "Prove: does it hold?"),
            Self::Show(Stage::Make) => (command(Key::Num4), "Make: papers and parts"),
            Self::Show(Stage::Give) => (command(Key::Num5), "Give: combination and card"),
            Self::SwitchUnits => (command(Key::U), "Millimetres or inches"),
            Self::SwitchTheme => (command(Key::L), "Daylight or slate"),
            Self::Keys => (
                KeyboardShortcut::new(Modifiers::NONE, Key::F1),
                "This list of keys",
            ),
            // the space bar slides only where no control has the focus, which no shortcut can say
            Self::Slide
            | Self::SaveAs(Product::Card | Product::Papers | Product::Parts)
            | Self::StopOpening
            | Self::Shuffle
            | Self::DrawCombination
            | Self::Mend
            | Self::StopMending
            | Self::StopProposing
            | Self::Build
            | Self::StopBuilding
            | Self::Hunt
            | Self::StopHunting => return None,
        };
        Some(Shortcut { key, what })
    }

    /// What its button says.
    pub fn label(self, standing: &Standing<'_>) -> &'static str {
        match self {
            Self::Help => "Help",
            Self::SaveAs(Product::Papers | Product::Parts) if standing.writes_a_folder() => {
                "Saving…"
            }
            Self::SaveAs(Product::Card) if standing.writing.contains(&Product::Card) => "Saving…",
            Self::SaveAs(Product::Design) => "Save as…",
            Self::SaveAs(Product::Card) => "Save the card…",
            Self::SaveAs(Product::Papers) => "Save all papers…",
            Self::SaveAs(Product::Parts) => "Save all parts…",
            Self::Redo => "Redo",
            Self::NewBox => "New box…",
            Self::Open => "Open…",
            Self::StopOpening => "Stop opening",
            Self::Save => "Save",
            Self::Undo => "Undo",
            Self::Show(stage) => stage.name(),
            Self::SwitchUnits => "Millimetres or inches",
            Self::SwitchTheme => "Daylight or slate",
            Self::Keys => "All keys",
            Self::Slide => "Slide",
            Self::Shuffle => "Shuffle the dials",
            Self::DrawCombination => "Draw one at random",
            Self::Mend if standing.mending => "Looking…",
            Self::Mend => "Mend it",
            Self::StopMending => "Stop mending",
            Self::StopProposing => "Stop",
            Self::Build => "Build 100 000 boxes",
            Self::StopBuilding => "Stop building",
            Self::Hunt => "Hunt for them",
            Self::StopHunting => "Stop hunting",
        }
    }

    /// What is said of it on hover; empty where its button says enough.
    pub const fn about(self) -> &'static str {
        match self {
            Self::Help => "What this stage is for (Shift+F1)",
            Self::SaveAs(Product::Papers) => {
                "These papers, the card, and each part as SVG and DXF, in one folder"
            }
            Self::SaveAs(Product::Parts) => {
                "A 3MF for each bed, an STL for each part, and a list of sizes, in one folder"
            }
            Self::NewBox => "From six questions to a proven latch",
            Self::Show(stage) => stage.about(),
            Self::Keys => "F1",
            Self::Slide => "Space bar",
            Self::Shuffle => "As a box stands on a shelf: every dial somewhere",
            Self::DrawCombination => "By the rules below, every good one as likely as any other",
            Self::Mend => {
                "The smallest change that makes it proven, made in one step that undo takes back"
            }
            Self::Build => {
                "Boxes drawn at random from your workmanship, each held against the proof"
            }
            Self::Hunt => "Every dial at every mark, the pointer on it and as far off as you read",
            Self::SaveAs(Product::Design | Product::Card)
            | Self::Redo
            | Self::Open
            | Self::StopOpening
            | Self::Save
            | Self::Undo
            | Self::SwitchUnits
            | Self::SwitchTheme
            | Self::StopMending
            | Self::StopProposing
            | Self::StopBuilding
            | Self::StopHunting => "",
        }
    }

    /// Why it cannot be done now; none where it can.
    pub fn refused<'a>(self, standing: &Standing<'a>) -> Option<&'a str> {
        let Standing {
            session, writing, ..
        } = *standing;
        let (because, refused) = match self {
            Self::Save => (
                "Nothing was changed since it was saved",
                !session.unsaved() && session.path().is_some(),
            ),
            Self::Undo => (
                "There is nothing to take back",
                session.history().undo_label().is_none(),
            ),
            Self::Redo => (
                "There is nothing to bring again",
                session.history().redo_label().is_none(),
            ),
            Self::SaveAs(Product::Papers | Product::Parts) => (
                "Papers or parts are still being saved",
                standing.writes_a_folder(),
            ),
            Self::SaveAs(Product::Card) => {
                return if writing.contains(&Product::Card) {
                    Some("The card is still being saved")
                } else {
                    standing.no_card
                };
            }
            Self::Mend => (
                "A change that mends it is being looked for",
                standing.mending,
            ),
            Self::Help
            | Self::SaveAs(Product::Design)
            | Self::NewBox
            | Self::Open
            | Self::StopOpening
            | Self::Show(_)
            | Self::SwitchUnits
            | Self::SwitchTheme
            | Self::Keys
            | Self::Slide
            | Self::Shuffle
            | Self::DrawCombination
            | Self::StopMending
            | Self::StopProposing
            | Self::Build
            | Self::StopBuilding
            | Self::Hunt
            | Self::StopHunting => return None,
        };
        refused.then_some(because)
    }

    /// Its button: what it says, on hover what it does or why it cannot be done now.
    pub fn button_ui(
        self,
        ui: &mut Ui,
        standing: &Standing<'_>,
        wishes: &mut Vec<Action>,
    ) -> Response {
        let button = Button::new(self.label(standing));
        self.shown_ui(ui, standing, button, self.about(), wishes)
    }

    /// As [`Self::button_ui`], with a button and words of its own.
    pub fn shown_ui(
        self,
        ui: &mut Ui,
        standing: &Standing<'_>,
        button: Button<'_>,
        about: &str,
        wishes: &mut Vec<Action>,
    ) -> Response {
        let refused = self.refused(standing);
        let mut response = ui.add_enabled(refused.is_none(), button);
        if !about.is_empty() {
            response = response.on_hover_text(about);
        }
        if let Some(why) = refused {
            response = response.on_disabled_hover_text(why);
        }
        if response.clicked() {
            wishes.push(Action::Do(self));
        }
        response
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_commands_share_a_key_and_each_of_the_list_has_one() {
        let keys: Vec<_> = shortcuts().map(|(shortcut, _)| shortcut.key).collect();
        assert_eq!(keys.len(), WITH_KEYS.len());
        for (index, key) in keys.iter().enumerate() {
            assert!(!keys[..index].contains(key), "{key:?}");
        }
    }

    #[test]
    fn what_cannot_be_done_says_why() {
        let mut session = Session::new();
        let refused = |session: &Session, command: Command, writing: &[Product]| {
            let standing = Standing {
                session,
                writing,
                mending: false,
                no_card: Some("the card has no room for its words"),
            };
            command.refused(&standing).map(str::to_owned)
        };
        let said = |why: &str| Some(why.to_owned());
        let undo = refused(&session, Command::Undo, &[]);
        assert_eq!(undo, said("There is nothing to take back"));
        session.edit("title", |design| "Another".clone_into(&mut design.title));
        assert_eq!(refused(&session, Command::Undo, &[]), None);
        assert_eq!(
            refused(&session, Command::Save, &[]),
            None,
            "in no file yet"
        );
        let card = Command::SaveAs(Product::Card);
        let why = said("the card has no room for its words");
        assert_eq!(refused(&session, card, &[]), why);
        let papers = Command::SaveAs(Product::Papers);
        assert_eq!(refused(&session, papers, &[Product::Card]), None);
        assert!(refused(&session, papers, &[Product::Papers]).is_some());
    }
}
