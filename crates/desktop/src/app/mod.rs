//! The window: one open design, its proof, and the wishes applied in one place.

mod apply;
mod filing;
mod making;
mod proving;
mod ui;

use std::path::PathBuf;

use egui::{Context, Key};
use latchwright_proof::Proof;
use latchwright_session::Session;

use crate::action::{self, Action};
use crate::job::{self, Job};
use crate::pages::{Look, Pages};
use crate::panel::{CARD, Dialog, MakeView, Making, TryView};
use crate::printed::Printed;
use crate::proposing::{Mending, Proposing};
use crate::recents::Recents;
use crate::remedies::Remedies;
use crate::stage::Stage;
use crate::theme;
use crate::view_state::ViewState;
use crate::virtual_builds::VirtualBuilds;

use self::filing::Safe;
use self::making::Saved;
use self::proving::Proving;

/// How a notice is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Tone {
    /// For somebody who has never been here.
    Welcome,
    /// Something was done.
    Done,
    /// Something went wrong.
    Grave,
}

/// What is said to somebody who has opened or saved no design yet.
const WELCOME: &str = "A latch to play with: dial 2 stands one mark off. Turn it by its knob and move the slider with the \
    space bar. “New box…” makes your own from six questions, “Demos” has others, “Help” explains the stage you are in.";

/// The whole state of the window.
pub struct LatchwrightApp {
    session: Session,
    view: ViewState,
    proving: Proving,
    /// The revision that `view` belongs to.
    followed: u64,
    dialog: Option<Dialog>,
    stage: Stage,
    tried: TryView,
    make: MakeView,
    pages: Pages,
    printed: Printed,
    proposing: Proposing,
    mending: Mending,
    /// How the card is looked at.
    card: Look,
    /// Papers or parts on their way to their folder.
    saving: Job<Saved>,
    remedies: Remedies,
    builds: VirtualBuilds,
    safe: Safe,
    recents: Recents,
    /// What last happened, in a sentence, and whether it went wrong.
    notice: Option<(String, Tone)>,
    leaving: bool,
    /// Where paths are asked for: the folder last used.
    folder: PathBuf,
}

impl LatchwrightApp {
    /// The window on a session; fonts and themes are set up.
    pub fn new(ctx: &Context, session: Session, notice: Option<String>) -> Self {
        theme::apply(ctx);
        Self {
            view: ViewState::of(session.design()),
            followed: session.revision(),
            proving: Proving::of(&session),
            session,
            dialog: None,
            stage: Stage::default(),
            tried: TryView::default(),
            make: MakeView::default(),
            pages: Pages::default(),
            printed: Printed::default(),
            proposing: Proposing::default(),
            mending: Mending::default(),
            card: Look::default(),
            saving: Job::default(),
            remedies: Remedies::default(),
            builds: VirtualBuilds::default(),
            safe: Safe::default(),
            recents: Recents::default(),
            notice: notice.map(|text| (text, Tone::Grave)),
            leaving: false,
            folder: std::env::current_dir().unwrap_or_default(),
        }
    }

    /// Says what there is to do, unless there is something else to say.
    #[must_use]
    pub fn welcoming(mut self) -> Self {
        self.notice
            .get_or_insert_with(|| (WELCOME.to_owned(), Tone::Welcome));
        self
    }

    /// The open design.
    pub fn session(&self) -> &Session {
        &self.session
    }

    /// What the window shows of it.
    pub fn view(&self) -> &ViewState {
        &self.view
    }

    /// The stage that is shown.
    pub fn stage(&self) -> Stage {
        self.stage
    }

    /// The proof of it; while a hand is moving, of what it was a moment ago.
    pub fn proof(&self) -> &Proof {
        self.proving.proof()
    }

    /// Keys, finished work, the wish to close: everything but drawing.
    pub fn logic(&mut self, ctx: &Context) {
        let mut wishes = Vec::new();
        if self.dialog.is_none() {
            wishes.extend(action::pressed(ctx));
            if space_slides(ctx) {
                wishes.push(Action::Slide);
            }
        }
        self.follow_dropped(ctx, &mut wishes);
        self.follow_closing(ctx);
        self.apply_all(ctx, wishes);
        self.follow_pages(ctx);
        self.proposing.follow(ctx);
        if let Some(found) = self.mending.poll(self.session.revision()) {
            self.mended(found);
        }
        if let Some(saved) = self.saving.poll() {
            self.files_saved(saved);
        }
        self.follow_proof(ctx);
        if let Some(proof) = self.proving.fresh(&self.session) {
            self.remedies.follow(ctx, &self.session, proof);
        }
        self.builds.follow(ctx, self.session.revision());
        self.follow_safe(ctx);
        if let Some(why) = job::fallen(ctx) {
            self.warn(why);
        }
    }

    /// Draws everything and applies what was wished for.
    pub fn draw(&mut self, ui: &mut egui::Ui) {
        let wishes = self.window_ui(ui);
        self.apply_all(&ui.ctx().clone(), wishes);
    }

    /// Proves what has changed; only the sizes can wait for that, every other stage shows the proof.
    fn follow_proof(&mut self, ctx: &Context) {
        let can_wait = self.stage == Stage::LayOut;
        self.proving.follow(ctx, &self.session, can_wait);
    }

    /// Asks for the page that the stage shows.
    fn follow_pages(&mut self, ctx: &Context) {
        let (wanted, look) = match self.stage {
            Stage::Make if self.make.making == Making::Parts => {
                let parts = &self.make.parts;
                let chosen = parts.chosen();
                self.printed
                    .follow(ctx, &self.session, chosen, parts.view());
                return;
            }
            Stage::Make => {
                let units = self.session.design().units;
                let papers = &self.make.papers;
                (papers.wanted(units), papers.look())
            }
            Stage::Give => (CARD, self.card),
            Stage::LayOut | Stage::Try | Stage::Prove => return,
        };
        self.pages.follow(ctx, &self.session, wanted, look);
    }

    fn apply_all(&mut self, ctx: &Context, wishes: Vec<Action>) {
        for wish in wishes {
            self.apply(ctx, wish);
            ctx.request_repaint();
        }
        // proof and view follow the design
        self.follow_proof(ctx);
        if self.followed != self.session.revision() {
            self.view.follow(self.session.design());
            self.followed = self.session.revision();
        }
    }
}

/// The space bar moves the slider unless it belongs to a control that has the focus.
fn space_slides(ctx: &Context) -> bool {
    ctx.memory(egui::Memory::focused).is_none() && ctx.input(|input| input.key_pressed(Key::Space))
}

impl eframe::App for LatchwrightApp {
    fn logic(&mut self, ctx: &Context, _frame: &mut eframe::Frame) {
        Self::logic(self, ctx);
    }

    fn ui(&mut self, ui: &mut egui::Ui, _frame: &mut eframe::Frame) {
        self.draw(ui);
    }
}
