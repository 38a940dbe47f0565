//! A new box: six questions, three proven latches side by side, or why there is none.

use egui::{
    Align, Button, CollapsingHeader, ComboBox, Context, Id, Layout, Modal, ProgressBar, RichText,
    ScrollArea, TextEdit, TextStyle, TextWrapMode, Ui, WidgetInfo, WidgetText, vec2,
};
use latchwright_drawing::{Drawing, Ink, PlanOptions, Rect, plan};
use latchwright_model::{Design, Units};
use latchwright_model::{Pose, Size};
use latchwright_search::propose::Proposal;
use latchwright_session::questions::{Answers, Care, Signs, holdable};
use latchwright_session::words::typed::typed_error;
use latchwright_session::{report, units};
use latchwright_words::capital;

use crate::action::{Action, Source};
use crate::canvas::picture_ui;
use crate::command::{Command, Standing};
use crate::proposing::{Proposing, SearchOutcome};
use crate::theme;

/// Width of the questions, points.
const QUESTIONS: f32 = 330.0;

/// Proposals side by side at most.
const KINDS_SHOWN: usize = 3;

/// What was typed.
pub struct NewBox {
    width: String,
    depth: String,
    plate: String,
    dials: String,
    signs: String,
    kind: usize,
    care: Care,
    youngest: String,
    held: Vec<(Size, String, String)>,
    refused: Option<String>,
    /// The answers that what is shown was found for.
    proposed_for: Option<Answers>,
}

/// What may stand round the dials.
const KINDS: [&str; 3] = ["figures, at least", "letters, at least", "your own words"];

impl NewBox {
    /// Questions answered for the usual box.
    pub fn new(units: Units) -> Self {
        let usual = Answers::default();
        let show = |mm: f64| units::show_length(mm, units);
        Self {
            width: show(usual.lid.0),
            depth: show(usual.lid.1),
            plate: show(usual.plate),
            dials: usual.dials.to_string(),
            signs: "8".to_owned(),
            kind: 0,
            care: usual.care,
            youngest: usual.youngest.to_string(),
            held: Vec::new(),
            refused: None,
            proposed_for: None,
        }
    }

    /// Whether other answers stand there than those that what is shown was found for.
    fn changed(&self, units: Units) -> bool {
        let now = self.answers(units).ok();
        self.proposed_for.is_some() && self.proposed_for != now
    }

    fn answers(&self, units: Units) -> Result<Answers, String> {
        let length = |name: &str, text: &str| {
            units::parse_length(text, units).map_err(|err| format!("{name}: {}", typed_error(&err)))
        };
        let count = |name: &str, text: &str| {
            units::parse_count(text).map_err(|err| format!("{name}: {}", typed_error(&err)))
        };
        let signs = match self.kind {
            0 => Signs::Figures(count("marks", &self.signs)?),
            1 => Signs::Letters(count("marks", &self.signs)?),
            _ => {
                let words = self.signs.split(',').map(|word| word.trim().to_owned());
                let words: Vec<String> = words.filter(|word| !word.is_empty()).collect();
                if words.len() < 2 {
                    return Err("words: give two or more, with commas between".to_owned());
                }
                Signs::Words(words)
            }
        };
        Ok(Answers {
            units,
            lid: (
                length("width of the lid", &self.width)?,
                length("depth of the lid", &self.depth)?,
            ),
            plate: length("thickness of the plate", &self.plate)?,
            dials: count("dials", &self.dials)?,
            signs,
            care: self.care,
            youngest: count("age", &self.youngest)?,
            held: self
                .held
                .iter()
                .map(|(size, name, text)| Ok((*size, length(name, text)?)))
                .collect::<Result<_, String>>()?,
        })
    }
}

/// The questions and what comes of them, over the window.
pub fn new_box_ui(
    ctx: &Context,
    standing: &Standing<'_>,
    asked: &mut NewBox,
    proposing: &Proposing,
    wishes: &mut Vec<Action>,
) {
    let design = standing.session.design();
    let space = ctx.content_rect().size();
    let modal = Modal::new(Id::unique("a new box")).frame(theme::over(ctx));
    let answer = modal.show(ctx, |ui| {
        ui.set_min_size(vec2(
            (space.x - 120.0).min(1180.0),
            (space.y - 120.0).min(700.0),
        ));
        ui.set_max_size(vec2((space.x - 80.0).min(1180.0), space.y - 80.0));
        ui.heading("A new box: six questions");
        ui.horizontal_top(|ui| {
            ui.vertical(|ui| {
                ui.set_width(QUESTIONS);
                questions_ui(ui, standing, asked, proposing, wishes);
                if ui.button("Close").clicked() {
                    wishes.push(Action::CloseDialog);
                }
            });
            ui.add_space(16.0);
            ui.vertical(|ui| found_ui(ui, design, asked, proposing, wishes));
        });
    });
    if answer.should_close() {
        wishes.push(Action::CloseDialog);
    }
}

fn line(ui: &mut Ui, name: &str, text: &mut String, after: &str) {
    ui.horizontal(|ui| {
        let label = ui.label(name);
        let rest = ui.available_width() - 118.0;
        ui.add_space(rest.max(0.0));
        ui.add(TextEdit::singleline(text).desired_width(72.0))
            .labelled_by(label.id);
        ui.label(RichText::new(after).weak());
    });
}

fn questions_ui(
    ui: &mut Ui,
    standing: &Standing<'_>,
    asked: &mut NewBox,
    proposing: &Proposing,
    wishes: &mut Vec<Action>,
) {
    let design = standing.session.design();
    let unit = units::unit_name(design.units);
    ui.label(RichText::new("1  How large is the lid?").family(theme::bold()));
    line(ui, "Width of the lid", &mut asked.width, unit);
    line(ui, "Depth of the lid", &mut asked.depth, unit);
    ui.label(RichText::new("2  How thick is its plate, as measured?").family(theme::bold()));
    line(ui, "Thickness of the plate", &mut asked.plate, unit);
    ui.label(RichText::new("3  How many dials?").family(theme::bold()));
    line(ui, "Number of dials", &mut asked.dials, "");
    ui.label(RichText::new("4  What stands round each?").family(theme::bold()));
    ui.horizontal(|ui| {
        let response = ComboBox::from_id_salt(Id::unique("what stands round"))
            .width(150.0)
            .selected_text(KINDS[asked.kind.min(2)])
            .show_ui(ui, |ui| {
                for (kind, name) in KINDS.into_iter().enumerate() {
                    ui.selectable_value(&mut asked.kind, kind, name);
                }
            });
        response.response.widget_info(|| {
            WidgetInfo::labeled(egui::accesskit::Role::ComboBox, true, "What stands round")
        });
        let field = TextEdit::singleline(&mut asked.signs).desired_width(150.0);
        let response = ui.add(field);
        response.widget_info(|| {
            let mut info = WidgetInfo::labeled(
                egui::accesskit::Role::TextInput,
                true,
                "Marks or words round each dial",
            );
            info.current_text_value = Some(asked.signs.clone());
            info
        });
    });
    ui.label(RichText::new("5  How exactly do you work?").family(theme::bold()));
    for care in Care::ALL {
        ui.radio_value(&mut asked.care, care, care.name());
    }
    ui.label(RichText::new("6  Who will live with it?").family(theme::bold()));
    line(ui, "Age of the youngest", &mut asked.youngest, "years");
    held_ui(ui, design, asked);
    let words = "Bits, printer, woods and the air of the year are taken from the open design.";
    ui.label(RichText::new(words).small().weak());
    ui.horizontal(|ui| {
        if ui.button("Propose").clicked() {
            match asked.answers(design.units) {
                Ok(answers) => {
                    asked.refused = None;
                    wishes.push(Action::Propose(Box::new(answers.clone())));
                    asked.proposed_for = Some(answers);
                }
                Err(why) => asked.refused = Some(why),
            }
        }
        if let Some(done) = proposing.progress() {
            ui.scope(|ui| {
                // on the ground of a dialog a field's own ground is not seen
                let line = ui.visuals().widgets.noninteractive.bg_stroke.color;
                ui.visuals_mut().extreme_bg_color = line;
                let fill = ui.visuals().selection.stroke.color;
                ui.add(ProgressBar::new(done).fill(fill).desired_width(110.0));
            });
            Command::StopProposing.button_ui(ui, standing, wishes);
        }
    });
    if let Some(why) = &asked.refused {
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        ui.label(
            RichText::new(format!("Not taken: {why}"))
                .small()
                .color(colour),
        );
    }
}

/// Sizes that are held fixed, round which the rest is found.
fn held_ui(ui: &mut Ui, design: &Design, asked: &mut NewBox) {
    let header = CollapsingHeader::new("Sizes that I hold fixed").default_open(false);
    header.show_unindented(ui, |ui| {
        let usual = Design {
            units: design.units,
            ..Design::default()
        };
        let mut gone = None;
        for (index, (_, name, text)) in asked.held.iter_mut().enumerate() {
            ui.horizontal(|ui| {
                let label = ui.label(RichText::new(name.as_str()).small());
                ui.add(TextEdit::singleline(text).desired_width(64.0))
                    .labelled_by(label.id);
                ui.label(RichText::new(units::unit_name(design.units)).weak());
                let away = Button::new("×").small();
                let away = ui.add(away);
                away.widget_info(|| {
                    let said = format!("Do not hold {name}");
                    WidgetInfo::labeled(egui::accesskit::Role::Button, true, said)
                });
                if away.clicked() {
                    gone = Some(index);
                }
            });
        }
        if let Some(index) = gone {
            asked.held.remove(index);
        }
        ui.menu_button("Hold a size…", |ui| {
            ScrollArea::vertical().max_height(320.0).show(ui, |ui| {
                for (size, name) in holdable(&usual) {
                    let held = asked.held.iter().any(|(other, ..)| *other == size);
                    if !held && ui.button(name.as_str()).clicked() {
                        let value = size.get(&usual).unwrap_or_default();
                        let text = units::show_length(value, design.units);
                        asked.held.push((size, name, text));
                    }
                }
            });
        });
    });
}

fn found_ui(
    ui: &mut Ui,
    design: &Design,
    asked: &NewBox,
    proposing: &Proposing,
    wishes: &mut Vec<Action>,
) {
    ScrollArea::vertical()
        .id_salt("proposals")
        .auto_shrink([false, false])
        .show(ui, |ui| {
            ui.set_max_width(ui.available_width() - 10.0);
            if proposing.found().is_some() && asked.changed(design.units) {
                let words = "An answer has changed since: press Propose again. What is shown is for the answers before.";
                ui.label(RichText::new(words).color(theme::ink(ui.ctx(), Ink::Movable)));
            }
            match proposing.found() {
                None => {
                    let words = "Answer, and press Propose: every latch that is shown here is proven. Nothing of the open design is lost.";
                    ui.label(RichText::new(words).weak());
                }
                Some(SearchOutcome::Proposals(proposals)) => {
                    let searching = proposing.searching();
                    // the line stays when the search ends, so that nothing moves under the hand
                    let words = if searching {
                        "The best so far, each of them proven; still looking for better."
                    } else {
                        "The best that was found, each of them proven."
                    };
                    ui.label(RichText::new(words).weak());
                    side_by_side(ui, proposals, searching, wishes);
                }
                Some(SearchOutcome::Nothing { why, nearest }) => {
                    let colour = theme::ink(ui.ctx(), Ink::Blocks);
                    ui.label(RichText::new("Nothing that is proven was found").heading().color(colour));
                    ui.label(sentence(why));
                    if !nearest.is_empty() {
                        ui.label(RichText::new("What can be had").weak());
                    }
                    let plans = plans(nearest.iter().map(|(_, proposal)| proposal));
                    let shown = nearest.iter().zip(plans);
                    for (number, ((words, proposal), plan)) in shown.enumerate() {
                        ui.label(sentence(words));
                        let figures = figures(proposal).into_iter().map(|words| (words, 0.0));
                        let take = format!("Take this ({})", number + 1);
                        proposal_ui(ui, proposal, &plan, figures, &take, wishes);
                    }
                }
            }
            beyond_ui(ui, asked, proposing, wishes);
        });
}

fn sentence(words: &str) -> String {
    let stop = if words.ends_with('.') { "" } else { "." };
    format!("{}{stop}", capital(words))
}

fn side_by_side(ui: &mut Ui, proposals: &[Proposal], more: bool, wishes: &mut Vec<Action>) {
    ui.spacing_mut().item_spacing.x = 16.0;
    // room for those that are still to come, so that none moves when they do
    let columns = if more {
        KINDS_SHOWN
    } else {
        proposals.len().max(1)
    };
    let words: Vec<Vec<RichText>> = proposals.iter().map(proposal_words).collect();
    let plans = plans(proposals.iter());
    ui.columns(columns, |columns| {
        let heights = columns
            .first()
            .map_or_else(Vec::new, |column| row_heights(column, &words));
        let rows = proposals.iter().zip(plans).zip(words);
        for (column, ((proposal, plan), words)) in columns.iter_mut().zip(rows) {
            // a column would stretch its words from edge to edge
            column.with_layout(Layout::top_down(Align::Min), |ui| {
                let name = report::kind_name(proposal.kind);
                ui.label(RichText::new(name).heading());
                let mut rows = words.into_iter().zip(heights.iter().copied());
                let about = rows.next();
                rows_ui(ui, about.into_iter());
                let take = format!("Take: {}", name.to_lowercase());
                proposal_ui(ui, proposal, &plan, rows, &take, wishes);
            });
        }
    });
}

/// What it is best in, and its figures.
fn proposal_words(proposal: &Proposal) -> Vec<RichText> {
    let about = RichText::new(sentence(report::kind_about(proposal.kind))).weak();
    core::iter::once(about).chain(figures(proposal)).collect()
}

fn figures(proposal: &Proposal) -> Vec<RichText> {
    let lines = report::proposal_lines(proposal).into_iter();
    lines
        .map(|line| RichText::new(sentence(&line)).small())
        .collect()
}

/// How tall each row is where it is tallest, points: what is compared stands side by side.
fn row_heights(ui: &Ui, columns: &[Vec<RichText>]) -> Vec<f32> {
    let wide = ui.available_width();
    let tall = |words: &RichText| {
        let words = WidgetText::from(words.clone());
        let galley = words.into_galley(ui, Some(TextWrapMode::Wrap), wide, TextStyle::Body);
        galley.size().y
    };
    let rows = columns.iter().map(Vec::len).max().unwrap_or(0);
    let tallest = |row: usize| {
        let words = columns.iter().filter_map(|column| column.get(row));
        words.map(tall).fold(0.0, f32::max)
    };
    (0..rows).map(tallest).collect()
}

/// Words, each with the height that its row has.
fn rows_ui(ui: &mut Ui, rows: impl Iterator<Item = (RichText, f32)>) {
    for (words, tall) in rows {
        let label = ui.label(words);
        ui.add_space((tall - label.rect.height()).max(0.0));
    }
}

/// Small plans, all at the scale of the largest.
fn plans<'a>(proposals: impl Iterator<Item = &'a Proposal>) -> Vec<Drawing> {
    let options = PlanOptions {
        veil: 0.4,
        ..PlanOptions::default()
    };
    let of = |Proposal { design, .. }: &_| plan(design, &Pose::at_combination(design), &options);
    let mut plans: Vec<Drawing> = proposals.map(of).collect();
    let sizes = plans.iter().map(|plan| plan.bounds);
    let (width, height) = sizes.fold((0.0_f64, 0.0_f64), |(width, height), bounds| {
        (width.max(bounds.width()), height.max(bounds.height()))
    });
    for plan in &mut plans {
        plan.bounds = Rect::about(plan.bounds.centre(), width, height);
    }
    plans
}

/// A small plan, the figures, and taking it.
fn proposal_ui(
    ui: &mut Ui,
    proposal: &Proposal,
    plan: &Drawing,
    figures: impl Iterator<Item = (RichText, f32)>,
    take: &str,
    wishes: &mut Vec<Action>,
) {
    let wide = ui.available_width().min(260.0);
    let said = format!("Plan of the proposal: {}", report::kind_name(proposal.kind));
    picture_ui(ui, vec2(wide, wide * 0.68), plan, &said);
    rows_ui(ui, figures);
    if ui.button(take).clicked() {
        let design = Box::new(proposal.design.clone());
        wishes.push(Action::open(Source::Proposal(design)));
    }
    ui.add_space(8.0);
}

/// What larger lids and better workmanship would buy.
fn beyond_ui(ui: &mut Ui, asked: &NewBox, proposing: &Proposing, wishes: &mut Vec<Action>) {
    if proposing.found().is_none() || proposing.searching() {
        return;
    }
    ui.separator();
    let idle = proposing.progress().is_none();
    let button = Button::new("What would buy more?");
    let about = "Smaller and larger lids, and one step of better workmanship each";
    if ui.add_enabled(idle, button).on_hover_text(about).clicked()
        && let Some(answers) = &asked.proposed_for
    {
        // of what is shown, also where an answer was changed since
        wishes.push(Action::LookFurther(Box::new(answers.clone())));
    }
    if let Some(text) = proposing.beyond() {
        for line in text.lines() {
            // what stands under a heading is set in
            ui.label(if line.starts_with(' ') {
                RichText::new(sentence(line.trim())).small()
            } else {
                RichText::new(line).strong()
            });
        }
    }
}
