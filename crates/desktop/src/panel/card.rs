//! The card: its words on the left, the very page on the right.

use egui::{
    ColorImage, Context, Id, Modal, RadioButton, RichText, TextEdit, TextureHandle, TextureOptions,
    Ui, vec2,
};
use latchwright_drawing::Ink;
use latchwright_session::Session;
use latchwright_solver::model::{Card, CardPaper, Units};

use crate::action::Action;
use crate::field::{self, Kind};
use crate::job::{CardDone, CardJob};
use crate::theme;

/// The page as last made.
#[derive(Default)]
pub struct CardView {
    texture: Option<TextureHandle>,
    revision: Option<u64>,
    refused: Option<String>,
}

impl CardView {
    /// Takes what the job has finished since, and asks for a new page when the design has changed.
    pub fn follow(&mut self, ctx: &Context, session: &Session, job: &mut CardJob) {
        if let Some(done) = job.poll() {
            match done.picture {
                Ok(picture) => {
                    let size = [picture.width, picture.height];
                    let image = ColorImage::from_rgba_unmultiplied(size, &picture.rgba);
                    self.texture = Some(ctx.load_texture("card", image, TextureOptions::LINEAR));
                    self.refused = None;
                }
                Err(why) => self.refused = Some(why),
            }
            self.revision = Some(done.revision);
        }
        if self.revision != Some(session.revision()) && !job.busy() {
            let (design, revision) = (session.design().clone(), session.revision());
            job.start(ctx, move || CardDone::of(&design, revision));
        }
    }
}

/// The card over the window.
pub fn card_ui(
    ctx: &Context,
    session: &Session,
    proven: bool,
    view: &CardView,
    wishes: &mut Vec<Action>,
) {
    let room = ctx.content_rect().size();
    let modal = Modal::new(Id::unique("card over the window")).frame(theme::over(ctx));
    let answer = modal.show(ctx, |ui| {
        ui.set_max_size(vec2((room.x - 80.0).min(900.0), room.y - 80.0));
        ui.heading("Card for the recipient");
        ui.horizontal_top(|ui| {
            ui.vertical(|ui| {
                ui.set_width(300.0);
                words_ui(ui, &session.design().card, wishes);
                buttons_ui(ui, proven, view, wishes);
            });
            ui.add_space(16.0);
            page_ui(
                ui,
                view,
                vec2((room.x - 460.0).clamp(160.0, 520.0), room.y - 190.0),
            );
        });
    });
    if answer.should_close() {
        wishes.push(Action::CloseDialog);
    }
}

fn words_ui(ui: &mut Ui, card: &Card, wishes: &mut Vec<Action>) {
    if let Some(name) = field::text_ui(ui, "For", &card.recipient, "Name of the recipient") {
        wishes.push(Action::edit("recipient", move |design| {
            design.card.recipient = name;
        }));
    }
    let why = "Age of the youngest who will live with the box: decides what small parts are asked";
    let age = f64::from(card.youngest);
    if let Some(years) = field::number_ui(ui, "Youngest", age, Kind::Count, Units::Millimetre, why)
    {
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "parsed as a u32"
        )]
        let youngest = years as u32;
        wishes.push(Action::edit("age of the youngest", move |design| {
            design.card.youngest = youngest;
        }));
    }
    greeting_ui(ui, card, wishes);
    if let Some(from) = field::text_ui(ui, "From", &card.from, "Your name") {
        wishes.push(Action::edit("maker's name", move |design| {
            design.card.from = from;
        }));
    }
    ui.label("Sheet");
    for (paper, word) in [
        (CardPaper::A6, "A6, 105 × 148 mm"),
        (CardPaper::A5, "A5, 148 × 210 mm"),
        (CardPaper::FoldedA4, "A4, folded once"),
    ] {
        if ui
            .add(RadioButton::new(card.paper == paper, word))
            .clicked()
            && card.paper != paper
        {
            wishes.push(Action::edit("sheet of the card", move |design| {
                design.card.paper = paper;
            }));
        }
    }
    let mut shown = card.show_combination;
    if ui
        .checkbox(&mut shown, "The combination stands on it")
        .changed()
    {
        wishes.push(Action::edit("combination on the card", move |design| {
            design.card.show_combination = shown;
        }));
    }
}

fn greeting_ui(ui: &mut Ui, card: &Card, wishes: &mut Vec<Action>) {
    let id = Id::unique("greeting on the card");
    let label = ui.label("Greeting");
    let mut text: String = ui
        .data(|data| data.get_temp(id))
        .unwrap_or_else(|| card.greeting.clone());
    let field = TextEdit::multiline(&mut text)
        .hint_text("Your own words")
        .desired_rows(4)
        .desired_width(f32::INFINITY);
    let response = ui.add(field).labelled_by(label.id);
    if response.lost_focus() {
        ui.data_mut(|data| data.remove::<String>(id));
        if text != card.greeting {
            wishes.push(Action::edit("greeting", move |design| {
                design.card.greeting = text;
            }));
        }
    } else if response.changed() {
        ui.data_mut(|data| data.insert_temp(id, text));
    }
}

fn buttons_ui(ui: &mut Ui, proven: bool, view: &CardView, wishes: &mut Vec<Action>) {
    ui.add_space(8.0);
    if !proven {
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        let words = "! This latch is not proven: the card may promise what the box does not keep.";
        ui.label(RichText::new(words).small().color(colour));
    }
    if let Some(refused) = &view.refused {
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        ui.label(RichText::new(refused).small().color(colour));
    }
    ui.horizontal(|ui| {
        let ready = view.refused.is_none();
        if ui
            .add_enabled(ready, egui::Button::new("Save as PDF…"))
            .clicked()
        {
            wishes.push(Action::AskCardPath);
        }
        if ui.button("Close").clicked() {
            wishes.push(Action::CloseDialog);
        }
    });
    ui.label(
        RichText::new("Print at 100 %, not “fit to page”.")
            .small()
            .weak(),
    );
}

fn page_ui(ui: &mut Ui, view: &CardView, room: egui::Vec2) {
    let Some(texture) = &view.texture else {
        ui.add_sized(room * 0.6, egui::Spinner::new());
        return;
    };
    let size = texture.size_vec2();
    let scale = (room.x / size.x).min(room.y / size.y).min(1.0);
    let image =
        egui::Image::new((texture.id(), size * scale)).alt_text("The card as it will be printed");
    let frame = egui::Frame::new().stroke(egui::Stroke::new(1.0, theme::ink(ui.ctx(), Ink::Faint)));
    frame.show(ui, |ui| ui.add(image));
}
