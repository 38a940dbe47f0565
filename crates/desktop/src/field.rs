//! Fields that take a number as a maker writes it, keep what is typed until it is done, and say
//! beside the field why something cannot be taken.

use egui::{Id, Key, RichText, TextEdit, Ui};
use latchwright_drawing::Ink;
use latchwright_session::units;
use latchwright_solver::model::Units;

use crate::theme;

/// Width of a field and of the unit behind it, points.
const FIELD: f32 = 84.0;
const UNIT: f32 = 28.0;

/// What a number means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A length, in the unit of the design.
    Length,
    /// Degrees.
    Degrees,
    /// Degrees Celsius.
    Celsius,
    /// Per cent.
    Percent,
    /// A force in newtons.
    Newton,
    /// A plain number.
    Ratio,
    /// A whole number.
    Count,
}

impl Kind {
    fn show(self, value: f64, units: Units) -> String {
        match self {
            Self::Length => units::show_length(value, units),
            Self::Degrees | Self::Celsius | Self::Percent => units::show_degrees(value),
            Self::Newton | Self::Ratio => value.to_string(),
            Self::Count => format!("{value:.0}"),
        }
    }

    fn unit(self, units: Units) -> &'static str {
        match self {
            Self::Length => units::unit_name(units),
            Self::Degrees => "°",
            Self::Celsius => "°C",
            Self::Percent => "%",
            Self::Newton => "N",
            Self::Ratio | Self::Count => "",
        }
    }

    fn parse(self, text: &str, units: Units) -> Result<f64, String> {
        match self {
            Self::Length => units::parse_length(text, units),
            Self::Degrees => units::parse_degrees(text),
            Self::Celsius | Self::Percent | Self::Newton | Self::Ratio => units::parse_number(text),
            Self::Count => units::parse_count(text).map(f64::from),
        }
    }
}

/// What a field remembers between frames.
#[derive(Debug, Clone, Default)]
struct Typing {
    /// What is being typed, and what the field showed when typing began.
    text: Option<(String, String)>,
    /// Why the last entry was not taken.
    refused: Option<String>,
}

/// A row with a name, a field and a unit; `Some` when a new value has been entered.
pub fn number_ui(
    ui: &mut Ui,
    name: &str,
    value: f64,
    kind: Kind,
    units: Units,
    why: &str,
) -> Option<f64> {
    let shown = kind.show(value, units);
    let entered = row_ui(ui, name, &shown, kind.unit(units), why, |text| {
        kind.parse(text, units)
    });
    entered.filter(|new| kind.show(*new, units) != shown || *new != value)
}

fn row_ui(
    ui: &mut Ui,
    name: &str,
    shown: &str,
    unit: &str,
    why: &str,
    parse: impl Fn(&str) -> Result<f64, String>,
) -> Option<f64> {
    let id = Id::unique(("field", name));
    let mut typing: Typing = ui.data(|data| data.get_temp(id)).unwrap_or_default();
    // an undo while the field has the focus shows through
    if typing.text.as_ref().is_some_and(|(_, base)| base != shown) {
        typing.text = None;
    }
    let mut text = typing
        .text
        .as_ref()
        .map_or_else(|| shown.to_owned(), |(text, _)| text.clone());
    let mut entered = None;
    ui.horizontal(|ui| {
        let room = (ui.available_width() - FIELD - UNIT - 16.0).max(60.0);
        let left = egui::Layout::left_to_right(egui::Align::Center).with_main_wrap(true);
        let label = ui
            .allocate_ui_with_layout(egui::vec2(room, 28.0), left, |ui| {
                ui.set_width(room);
                ui.label(name)
            })
            .inner
            .on_hover_text(why);
        let field = TextEdit::singleline(&mut text)
            .id(id.with("edit"))
            .desired_width(FIELD - 8.0)
            .align(egui::Align2::RIGHT_CENTER);
        let response = ui.add(field).labelled_by(label.id).on_hover_text(why);
        ui.label(RichText::new(unit).weak());
        if response.changed() {
            typing.text = Some((text.clone(), shown.to_owned()));
            typing.refused = None;
        }
        if response.lost_focus()
            && let Some((text, _)) = typing.text.take()
            && !ui.input(|input| input.key_pressed(Key::Escape))
        {
            match parse(&text) {
                Ok(value) => entered = Some(value),
                Err(why) => typing.refused = Some(why),
            }
        }
    });
    if let Some(refused) = &typing.refused {
        let colour = theme::ink(ui.ctx(), Ink::Blocks);
        ui.label(
            RichText::new(format!("Not taken: {refused}"))
                .small()
                .color(colour),
        );
    }
    ui.data_mut(|data| data.insert_temp(id, typing));
    entered
}

/// A row with a name and a line of text; `Some` when a new text has been entered.
pub fn text_ui(ui: &mut Ui, name: &str, value: &str, hint: &str) -> Option<String> {
    let id = Id::unique(("text", name));
    let typing: Option<(String, String)> = ui.data(|data| data.get_temp(id));
    let typing = typing.filter(|(_, base)| base == value);
    let mut text = typing.map_or_else(|| value.to_owned(), |(text, _)| text);
    let label = ui.label(name);
    let field = TextEdit::singleline(&mut text)
        .id(id.with("edit"))
        .hint_text(hint.to_owned())
        .desired_width(f32::INFINITY);
    let response = ui.add(field).labelled_by(label.id);
    if response.lost_focus() {
        ui.data_mut(|data| data.remove::<(String, String)>(id));
        let escaped = ui.input(|input| input.key_pressed(Key::Escape));
        return (!escaped && text != value).then_some(text);
    }
    if response.changed() {
        ui.data_mut(|data| data.insert_temp(id, (text, value.to_owned())));
    }
    None
}
