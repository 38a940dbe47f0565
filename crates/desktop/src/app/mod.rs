//! The window: one open design, its proof, and the wishes applied in one place.

mod apply;
mod filing;
mod keeping;
mod making;
mod opening;
mod proving;
mod ui;

use std::path::PathBuf;

use egui::{Context, Key};
use latchwright_proof::Proof;
use latchwright_session::Session;

use crate::action::Action;
use crate::command::{self, Command, Standing};
use crate::hunting::Hunting;
use crate::mending::Mending;
use crate::pages::{Look, Pages};
use crate::panel::{CARD, Dialog, MakeView, Making};
use crate::printed::Printed;
use crate::proposing::Proposing;
use crate::recents::Recents;
use crate::remedies::Remedies;
use crate::scene::Scene;
use crate::stage::Stage;
use crate::tasks::Tasks;
use crate::theme;
use crate::view_state::{PoseChange, ViewState};
use crate::virtual_builds::VirtualBuilds;

use self::filing::Safe;
use self::keeping::Keeping;
use self::making::Saving;
use self::opening::Opening;
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
    /// What the views of the latch have in common.
    scene: Scene,
    proving: Proving,
    /// The revision that `view` belongs to.
    followed: u64,
    dialog: Option<Dialog>,
    stage: Stage,
    hunting: Hunting,
    make: MakeView,
    pages: Pages,
    printed: Printed,
    proposing: Proposing,
    mending: Mending,
    /// How the card is looked at.
    card: Look,
    /// A design on its way into the window.
    opening: Option<Opening>,
    /// The design that is on its way to its file.
    keeping: Option<Keeping>,
    /// How many designs were shown, one after the other.
    shown: u64,
    /// What is on its way to its file or folder.
    saving: Saving,
    remedies: Remedies,
    builds: VirtualBuilds,
    safe: Safe,
    recents: Recents,
    /// What last happened, in a sentence, and whether it went wrong.
    notice: Option<(String, Tone)>,
    leaving: bool,
    /// Where paths are asked for: the folder last used.
    folder: PathBuf,
    /// All work beside the window; what it writes is waited for when the window goes.
    tasks: Tasks,
}

impl LatchwrightApp {
    /// The window on a session; fonts and themes are set up.
    pub fn new(ctx: &Context, session: Session, notice: Option<String>) -> Self {
        theme::apply(ctx);
        let view = ViewState::of(session.design());
        Self {
            scene: Scene::of(session.design(), session.revision(), &view),
            view,
            followed: session.revision(),
            proving: Proving::of(&session),
            session,
            dialog: None,
            stage: Stage::default(),
            hunting: Hunting::default(),
            make: MakeView::default(),
            pages: Pages::default(),
            printed: Printed::default(),
            proposing: Proposing::default(),
            mending: Mending::default(),
            card: Look::default(),
            opening: None,
            keeping: None,
            shown: 0,
            saving: Saving::default(),
            remedies: Remedies::default(),
            builds: VirtualBuilds::default(),
            safe: Safe::default(),
            recents: Recents::default(),
            notice: notice.map(|text| (text, Tone::Grave)),
            leaving: false,
            folder: std::env::current_dir().unwrap_or_default(),
            tasks: Tasks::new(ctx),
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

    /// All work beside the window.
    pub fn tasks(&mut self) -> &mut Tasks {
        &mut self.tasks
    }

    /// Which commands can be given, and what decides it.
    fn standing(&self) -> Standing<'_> {
        standing(&self.session, &self.saving, &self.mending, &self.pages)
    }

    /// Keys, finished work, the wish to close: everything but drawing.
    pub fn logic(&mut self, ctx: &Context) {
        self.tasks.listen();
        let mut wishes = Vec::new();
        if self.dialog.is_none() {
            wishes.extend(command::pressed(ctx).into_iter().map(Action::Do));
            if space_slides(ctx) {
                wishes.push(Action::Do(Command::Slide));
            }
        }
        self.follow_dropped(ctx, &mut wishes);
        self.follow_closing(ctx);
        self.follow_opening(ctx);
        self.apply_all(ctx, wishes);
        self.follow_pages(ctx);
        self.proposing.follow(ctx);
        if let Some(found) = self.mending.follow(ctx, self.session.revision()) {
            self.mended(found);
        }
        self.follow_saving(ctx);
        self.follow_proof();
        if let Some(proof) = self.proving.fresh(&self.session) {
            self.remedies
                .follow(ctx, &mut self.tasks, &self.session, proof);
        }
        self.builds.follow(ctx, self.session.revision());
        self.hunting.follow(ctx, self.session.revision());
        self.follow_safe(ctx);
        if let Some(why) = self.tasks.fallen() {
            self.warn(why);
        }
    }

    /// Draws everything and applies what was wished for.
    pub fn draw(&mut self, ui: &mut egui::Ui) {
        let wishes = self.window_ui(ui);
        self.apply_all(&ui.ctx().clone(), wishes);
    }

    /// Proves what has changed; only the sizes can wait for that, every other stage shows the proof.
    fn follow_proof(&mut self) {
        let can_wait = self.stage == Stage::LayOut;
        self.proving
            .follow(&mut self.tasks, &self.session, can_wait);
    }

    /// Asks for the page that the stage shows.
    fn follow_pages(&mut self, ctx: &Context) {
        let (wanted, look) = match self.stage {
            Stage::Make if self.make.making == Making::Parts => {
                let parts = &self.make.parts;
                let chosen = parts.chosen();
                let (tasks, session) = (&mut self.tasks, &self.session);
                self.printed
                    .follow(ctx, tasks, session, chosen, parts.view());
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
        let (tasks, session) = (&mut self.tasks, &self.session);
        self.pages.follow(ctx, tasks, session, wanted, look);
    }

    fn apply_all(&mut self, ctx: &Context, wishes: Vec<Action>) {
        for wish in wishes {
            // a hand that holds still asks for the same pose in every frame
            let held = matches!(
                &wish,
                Action::Pose(PoseChange::SlideTo(_) | PoseChange::TurnTo { .. })
            );
            let before = held.then(|| self.view.pose.clone());
            self.apply(ctx, wish);
            if before.is_none_or(|before| before != self.view.pose) {
                ctx.request_repaint();
            }
        }
        // proof and view follow the design
        self.follow_proof();
        if self.followed != self.session.revision() {
            self.view.follow(self.session.design());
            self.followed = self.session.revision();
        }
        let design = self.session.design();
        self.scene.follow(design, self.followed, &self.view);
    }
}

/// As [`LatchwrightApp::standing`], where the rest of the window is being changed.
fn standing<'a>(
    session: &'a Session,
    saving: &'a Saving,
    mending: &Mending,
    pages: &'a Pages,
) -> Standing<'a> {
    Standing {
        session,
        writing: saving.products(),
        mending: mending.goes_on(),
        no_card: pages.refused(session.revision(), CARD),
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
