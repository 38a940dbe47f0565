//! What is written at the marks of a dial, and at which of them it opens.

use egui::{ComboBox, RichText, Ui};
use latchwright_model::{Design, Dial, Labels};

use super::edit;
use crate::action::Action;
use crate::edit::{DialEdit, Edit, LabelKind, Target};
use crate::field;

/// Marks whose labels are looked through.
const MARKS: u32 = 360;

/// The label at which this dial lets the slider pass.
pub(super) fn opens_at_ui(
    ui: &mut Ui,
    design: &Design,
    dial: &Dial,
    of: Target,
    wishes: &mut Vec<Action>,
) {
    let now = dial.label(design.digit(of.dial));
    let why = "This dial's part of the combination, by its label";
    let marked = |text: &str| mark(dial, text);
    let Some(mark) = field::word_ui(ui, "Opens at", &now, why, marked) else {
        return;
    };
    let dial = of.dial;
    wishes.push(Action::Edit(Edit::Digit { dial, mark }));
}

/// The mark with this label, or why there is none.
fn mark(dial: &Dial, text: &str) -> Result<u32, String> {
    let wanted = text.trim().to_lowercase();
    let marks = dial.positions.min(MARKS);
    (0..marks)
        .find(|mark| dial.label(*mark).to_lowercase() == wanted)
        .ok_or_else(|| {
            let some: String = text.trim().chars().take(24).collect();
            format!(
                "no mark of this dial is called `{some}`: they go from {} to {}",
                dial.label(0),
                dial.label(marks.saturating_sub(1))
            )
        })
}

/// What is written at the marks.
pub(super) fn labels_ui(ui: &mut Ui, dial: &Dial, of: Target, wishes: &mut Vec<Action>) {
    let now = LabelKind::of(&dial.labels);
    let mut chosen = now;
    let label = ui.label("Labels");
    let word = LabelKind::ALL
        .iter()
        .find(|(kind, _)| *kind == now)
        .map_or("", |(_, word)| word);
    ComboBox::from_id_salt("labels")
        .selected_text(word)
        .width(ui.available_width() - 8.0)
        .show_ui(ui, |ui| {
            for (kind, word) in LabelKind::ALL {
                ui.selectable_value(&mut chosen, kind, word);
            }
        })
        .response
        .labelled_by(label.id);
    if chosen != now {
        wishes.push(edit(of, DialEdit::LabelKind(chosen)));
    }
    let (Labels::Words(words) | Labels::Pictures(words)) = &dial.labels else {
        return;
    };
    let hint = "one a mark, with commas between";
    if let Some(text) = field::text_ui(ui, "Label words", &words.join(", "), hint) {
        let words: Vec<String> = text.split(',').map(|word| word.trim().to_owned()).collect();
        wishes.push(edit(of, DialEdit::LabelWords(words)));
    }
    if matches!(dial.labels, Labels::Pictures(_)) {
        let known = latchwright_drawing::PICTURES.join(", ");
        ui.label(
            RichText::new(format!("Pictures that can be drawn: {known}"))
                .small()
                .weak(),
        );
    }
}
