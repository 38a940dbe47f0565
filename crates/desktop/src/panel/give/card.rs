//! The words of the card.

use egui::{ComboBox, Id, RadioButton, RichText, TextEdit, Ui};
use latchwright_drawing::Ink;
use latchwright_model::{Card, CardPaper, CardStyle, Language, Units};

use crate::action::{Action, Product};
use crate::command::{Command, Standing};
use crate::edit::{CardEdit, Edit};
use crate::field::{self, Kind};
use crate::theme;

fn edit(edit: CardEdit) -> Action {
    Action::Edit(Edit::Card(edit))
}

/// What stands on it.
pub fn words_ui(ui: &mut Ui, card: &Card, wishes: &mut Vec<Action>) {
    if let Some(name) = field::text_ui(ui, "For", &card.recipient, "Name of the recipient") {
        wishes.push(edit(CardEdit::Recipient(name)));
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
        wishes.push(edit(CardEdit::Youngest(youngest)));
    }
    greeting_ui(ui, card, wishes);
    if let Some(from) = field::text_ui(ui, "From", &card.from, "Your name") {
        wishes.push(edit(CardEdit::From(from)));
    }
    language_ui(ui, card, wishes);
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
            wishes.push(edit(CardEdit::Paper(paper)));
        }
    }
    let mut shown = card.show_combination;
    if ui
        .checkbox(&mut shown, "The combination stands on it")
        .changed()
    {
        wishes.push(edit(CardEdit::ShowCombination(shown)));
    }
}

/// Which language it speaks, and whether in words or in pictures.
fn language_ui(ui: &mut Ui, card: &Card, wishes: &mut Vec<Action>) {
    ui.horizontal(|ui| {
        let label = ui.label("Language");
        ComboBox::from_id_salt(Id::unique("language of the card"))
            .selected_text(card.language.name())
            .show_ui(ui, |ui| {
                for language in Language::ALL {
                    let on = language == card.language;
                    if ui.selectable_label(on, language.name()).clicked() && !on {
                        wishes.push(edit(CardEdit::Language(language)));
                    }
                }
            })
            .response
            .labelled_by(label.id);
    });
    for style in CardStyle::ALL {
        let on = style == card.style;
        if ui.add(RadioButton::new(on, style.name())).clicked() && !on {
            wishes.push(edit(CardEdit::Style(style)));
        }
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
            wishes.push(edit(CardEdit::Greeting(text)));
        }
    } else if response.changed() {
        ui.data_mut(|data| data.insert_temp(id, text));
    }
}

/// Saving it, and what is to be said of it.
pub fn save_ui(ui: &mut Ui, standing: &Standing<'_>, proven: bool, wishes: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        Command::SaveAs(Product::Card).button_ui(ui, standing, wishes);
        let words = "Print at 100 %, not “fit to page”.";
        ui.label(RichText::new(words).small().weak());
    });
    if !proven {
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        let words = "! This latch is not proven: the card may promise what the box does not keep.";
        ui.label(RichText::new(words).small().color(colour));
    }
}
