//! Every wish, applied.

use std::path::{Path, PathBuf};

use egui::{Context, Theme};
use latchwright_model::combination;
use latchwright_model::{Dial, Units};
use latchwright_search::remedy::Mend;
use latchwright_session::file_set::Replace;
use latchwright_session::questions::Answers;
use latchwright_session::report;

use super::{LatchwrightApp, Tone};
use crate::action::{Action, Product};
use crate::command::Command;
use crate::edit::Edit;
use crate::field;
use crate::panel::{Dialog, NewBox, PathDialog, Purpose};
use crate::stage::Stage;
use crate::view_state::PoseChange;

impl LatchwrightApp {
    pub(super) fn apply(&mut self, ctx: &Context, wish: Action) {
        match wish {
            Action::Do(command) => self.command(ctx, command),
            Action::Edit(edit) => self.edit(edit),
            Action::Drag(edit) => self.drag(edit),
            Action::LetGo => self.session.end_drag(),
            Action::PutBack => self.put_back(),
            Action::Pose(change) => self.view.change_pose(self.session.design(), &change),
            Action::Open { source, unsaved } => self.go_on_with(source, unsaved),
            Action::LookForRecent => self.recents.look(),
            Action::Propose(answers) => self.propose(&answers),
            Action::LookFurther(answers) => self.look_further(&answers),
            Action::TakeUp(index) => self.take_up(index),
            Action::ThrowAway(index) => self.throw_away(index),
            Action::Save { what, to, replace } => self.save_here(what, to, replace),
            Action::SaveThen(then) => self.save_then(then),
            Action::Browse => self.browse(),
            Action::Answered => self.dialog = None,
            Action::CloseDialog => self.close_dialog(),
            Action::Leave => self.leave(ctx),
        }
    }

    fn command(&mut self, ctx: &Context, command: Command) {
        match command {
            Command::Help => self.dialog = Some(Dialog::Help(self.stage)),
            Command::SaveAs(what) => self.ask_where(what),
            Command::Redo => {
                self.session.redo();
            }
            Command::NewBox => self.new_box(),
            Command::Open => self.ask(Purpose::Open, &self.folder.join("")),
            Command::Save => self.save(),
            Command::StopOpening => self.opening = None,
            Command::Undo => self.undo(ctx),
            Command::Show(stage) => self.go_to(stage),
            Command::SwitchUnits => self.switch_units(),
            Command::SwitchTheme => switch_theme(ctx),
            Command::Keys => self.dialog = Some(Dialog::Keys),
            Command::Slide => self.slide(),
            Command::Shuffle => self.shuffle(),
            Command::DrawCombination => self.draw_combination(),
            Command::Mend => self.mending.start(&mut self.tasks, &self.session),
            Command::StopMending => self.mending.stop(),
            Command::StopProposing => self.proposing.stop(),
            Command::Build => self.builds.start(&mut self.tasks, &self.session),
            Command::StopBuilding => self.builds.stop(),
            Command::Hunt => self.hunting.start(&mut self.tasks, &self.session),
            Command::StopHunting => self.hunting.stop(),
        }
    }

    fn edit(&mut self, edit: Edit) {
        let label = edit.label();
        self.session.edit(&label, |design| edit.make(design));
    }

    fn drag(&mut self, edit: Edit) {
        let label = edit.label();
        self.session
            .edit_in_drag(&label, |design| edit.make(design));
        self.proving.by_hand(self.session.revision());
    }

    fn put_back(&mut self) {
        if self.session.put_back() {
            self.proving.by_hand(self.session.revision());
        }
    }

    /// What is being typed is the last thing that was done.
    fn undo(&mut self, ctx: &Context) {
        if !field::put_back(ctx) {
            self.session.undo();
        }
    }

    fn new_box(&mut self) {
        let asked = NewBox::new(self.session.design().units);
        self.dialog = Some(Dialog::NewBox(Box::new(asked)));
    }

    fn propose(&mut self, answers: &Answers) {
        let wishes = answers.wishes(self.session.design());
        self.proposing.start(&mut self.tasks, wishes);
    }

    fn look_further(&mut self, answers: &Answers) {
        let design = self.session.design();
        let (wishes, units) = (answers.wishes(design), design.units);
        self.proposing.look_further(&mut self.tasks, wishes, units);
    }

    fn browse(&mut self) {
        if let Some(Dialog::Path(path)) = &mut self.dialog {
            path.browse(&mut self.tasks);
        }
    }

    fn slide(&mut self) {
        let design = self.session.design();
        self.view.change_pose(design, &PoseChange::SlideOver);
    }

    fn save_here(&mut self, what: Product, to: PathBuf, replace: Replace) {
        match what {
            Product::Design => self.save_design(to, replace),
            Product::Card => self.save_card(to, replace),
            Product::Papers => self.save_papers(to, replace),
            Product::Parts => self.save_parts(to, replace),
        }
    }

    pub(super) fn say(&mut self, text: String) {
        self.notice = Some((text, Tone::Done));
    }

    pub(super) fn warn(&mut self, text: String) {
        self.notice = Some((text, Tone::Grave));
    }

    pub(super) fn ask(&mut self, purpose: Purpose, start: &Path) {
        self.dialog = Some(Dialog::Path(PathDialog::new(purpose, start)));
    }

    /// Makes the change that was found, as one step.
    pub(super) fn mended(&mut self, found: Option<Mend>) {
        let Some(found) = found else {
            let cut = self.mending.cut.contains(&true);
            let words = report::not_mended_sentences(self.session.design(), self.proof(), cut);
            return self.warn(words);
        };
        let words = report::mend_sentence(self.session.design(), &found);
        self.edit(Edit::Remedy {
            label: "mend".to_owned(),
            change: found.change,
        });
        self.say(words);
    }

    /// A file name made of the title, in the folder last used.
    pub(super) fn suggested(&self, ending: &str) -> PathBuf {
        if let (Some(path), "latch.ron") = (self.session.path(), ending) {
            return path.to_owned();
        }
        let title: String = self
            .session
            .design()
            .title
            .chars()
            .map(|letter| {
                if letter.is_alphanumeric() {
                    letter
                } else {
                    '-'
                }
            })
            .take(60)
            .collect();
        let name = title.trim_matches('-').to_lowercase();
        let name = if name.is_empty() {
            "box".to_owned()
        } else {
            name
        };
        self.folder.join(format!("{name}.{ending}"))
    }

    /// Shows a stage. What a hand held it lets go; every other stage speaks of the whole proof.
    fn go_to(&mut self, stage: Stage) {
        self.stage = stage;
        self.session.end_drag();
        self.proving.now(&self.session);
    }

    fn switch_units(&mut self) {
        self.edit(Edit::Units(match self.session.design().units {
            Units::Millimetre => Units::Inch,
            Units::Inch => Units::Millimetre,
        }));
    }

    /// Every dial somewhere, the slider forward.
    fn shuffle(&mut self) {
        let design = self.session.design();
        let somewhere = |dial: &Dial| {
            let marks = u64::from(dial.positions.max(1));
            u32::try_from(by_chance() % marks).unwrap_or(0)
        };
        let marks = design.dials.iter().map(somewhere).enumerate().collect();
        self.view.change_pose(design, &PoseChange::Marks(marks));
    }

    fn draw_combination(&mut self) {
        match combination::draw(self.session.design(), by_chance()) {
            Some(marks) => self.edit(Edit::DrawnCombination(marks)),
            None => self.warn(
                "No combination of this latch keeps the rules: give it more dials or marks"
                    .to_owned(),
            ),
        }
    }
}

/// A number that nobody can foretell: what the system gives every hasher.
fn by_chance() -> u64 {
    use std::hash::{BuildHasher as _, RandomState};
    RandomState::new().hash_one(0_u8)
}

fn switch_theme(ctx: &Context) {
    let other = match ctx.theme() {
        Theme::Dark => Theme::Light,
        Theme::Light => Theme::Dark,
    };
    ctx.set_theme(other);
}
