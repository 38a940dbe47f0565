//! Every wish, applied.

use std::path::{Path, PathBuf};

use egui::{Context, Theme, ViewportCommand};
use latchwright_model::combination;
use latchwright_model::{Design, Units};
use latchwright_search::propose::Mend;
use latchwright_session::files;
use latchwright_session::products::card_pdf;
use latchwright_session::questions::FROM_BENCH;
use latchwright_session::together::Replace;
use latchwright_session::{Session, report};

use super::{LatchwrightApp, Tone};
use crate::action::Action;
use crate::field;
use crate::panel::{Dialog, NewBox, PathDialog, Purpose};
use crate::stage::Stage;

impl Action {
    /// The same wish, its maker having said that changes may be lost.
    #[must_use]
    pub fn discarding(self) -> Self {
        match self {
            Self::OpenPath(path) => Self::OpenAnyway(path),
            Self::Demo(name) => Self::DemoAnyway(name),
            Self::Take(design) => Self::TakeAnyway(design),
            other => other,
        }
    }
}

impl LatchwrightApp {
    pub(super) fn apply(&mut self, ctx: &Context, wish: Action) {
        match wish {
            Action::Edit(edit) => self.session.edit(&edit.label, edit.change),
            Action::Drag(edit) => {
                self.session.edit_in_drag(&edit.label, edit.change);
                self.proving.by_hand(self.session.revision());
            }
            Action::LetGo => self.session.end_drag(),
            Action::PutBack => {
                if self.session.put_back() {
                    self.proving.by_hand(self.session.revision());
                }
            }
            Action::Open => self.ask(Purpose::Open, &self.folder.join("")),
            wish @ (Action::OpenPath(_) | Action::Demo(_) | Action::Take(_)) => {
                self.unless_unsaved(ctx, wish);
            }
            Action::OpenAnyway(path) => self.open(&path),
            Action::DemoAnyway(name) => self.demo(name),
            Action::NewBox => {
                let asked = NewBox::new(self.session.design().units);
                self.dialog = Some(Dialog::NewBox(Box::new(asked)));
            }
            Action::TakeAnyway(design) => self.take(*design),
            Action::Mend => self.mending.start(ctx, &self.session),
            Action::LookForRecent => self.recents.look(),
            Action::TakeUp(index) => self.take_up(index),
            Action::ThrowAway(index) => self.throw_away(index),
            Action::Save => self.save(ctx),
            Action::SaveThen(then) => self.save_then(ctx, then),
            Action::SaveAs => self.ask(Purpose::Save, &self.suggested("latch.ron")),
            Action::SaveTo(path) => self.save_to(ctx, path),
            Action::SaveOver(path) => self.save_over(ctx, &path),
            // what is being typed is the last thing that was done
            Action::Undo => {
                if !field::put_back(ctx) {
                    self.session.undo();
                }
            }
            Action::Redo => {
                self.session.redo();
            }
            Action::SwitchUnits => self.switch_units(),
            Action::SwitchTheme => switch_theme(ctx),
            Action::Show(stage) => self.go_to(stage),
            Action::Shuffle => self.shuffle(),
            Action::DrawCombination => self.draw_combination(),
            Action::AskPapersPath => self.ask_papers_path(),
            Action::AskPartsPath => self.ask_parts_path(),
            Action::SaveParts(folder) => self.save_parts(ctx, folder, Replace::Never),
            Action::PartsOver(folder) => self.save_parts(ctx, folder, Replace::Allowed),
            Action::SavePapers(folder) => self.save_papers(ctx, folder, Replace::Never),
            Action::PapersOver(folder) => self.save_papers(ctx, folder, Replace::Allowed),
            Action::AskCardPath => self.ask(Purpose::Card, &self.suggested("card.pdf")),
            Action::SaveCard(path) => self.save_card(path),
            Action::CardOver(path) => self.write_card(&path),
            Action::Keys => self.dialog = Some(Dialog::Keys),
            Action::Help => self.dialog = Some(Dialog::Help(self.stage)),
            Action::Answered => self.dialog = None,
            Action::CloseDialog => self.close_dialog(),
            Action::Slide => self.view.slide_over(self.session.design()),
            Action::Build => self.builds.start(ctx, &self.session),
            Action::StopBuilding => self.builds.stop(),
            Action::Leave => {
                self.leaving = true;
                ctx.send_viewport_cmd(ViewportCommand::Close);
            }
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

    /// Goes on with a design that was proposed.
    fn take(&mut self, design: Design) {
        self.dialog = None;
        self.notice = None;
        self.proposing.stop();
        let comments = self.session.comments().within(&FROM_BENCH);
        self.show(Session::of(design).with_comments(comments));
    }

    /// Makes the change that was found, as one step.
    pub(super) fn mended(&mut self, found: Option<Mend>) {
        let Some(found) = found else {
            let cut = self.mending.cut.contains(&true);
            let words = report::not_mended_sentences(self.session.design(), self.proof(), cut);
            return self.warn(words);
        };
        let words = report::mend_sentence(self.session.design(), &found);
        let change = found.change;
        self.session
            .edit("mend", move |design| *design = change.apply(design));
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
        self.session.edit("unit", |design| {
            design.units = match design.units {
                Units::Millimetre => Units::Inch,
                Units::Inch => Units::Millimetre,
            };
        });
    }

    /// Every dial somewhere, the slider forward.
    fn shuffle(&mut self) {
        let design = self.session.design().clone();
        self.view.pose.travel = 0.0;
        for (index, dial) in design.dials.iter().enumerate() {
            let marks = u64::from(dial.positions.max(1));
            let mark = u32::try_from(by_chance() % marks).unwrap_or(0);
            self.view.set_mark(&design, index, mark);
        }
    }

    fn draw_combination(&mut self) {
        match combination::draw(self.session.design(), by_chance()) {
            Some(marks) => self.session.edit("combination drawn", move |design| {
                design.combination = marks;
            }),
            None => self.warn(
                "No combination of this latch keeps the rules: give it more dials or marks"
                    .to_owned(),
            ),
        }
    }

    fn save_card(&mut self, path: PathBuf) {
        if files::exists(&path) {
            let why = format!("{} exists already", path.display());
            self.dialog = Some(Dialog::Over {
                why,
                then: Box::new(Action::CardOver(path)),
            });
        } else {
            self.write_card(&path);
        }
    }

    fn write_card(&mut self, path: &Path) {
        let written = card_pdf(self.session.design())
            .and_then(|pdf| files::write_atomically(path, &pdf).map_err(|err| err.to_string()));
        match written {
            Ok(()) => {
                self.dialog = None;
                self.say(format!(
                    "Card saved as {}; print it at 100 %",
                    path.display()
                ));
            }
            Err(why) => self.warn(why),
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
