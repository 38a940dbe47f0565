//! Fields that take a number as a maker writes it, keep what is typed until it is done, and say
//! beside the field why something cannot be taken.

use egui::text::{CCursor, CCursorRange};
use egui::text_edit::TextEditState;
use egui::{Context, Id, Key, Response, RichText, TextEdit, Ui};
use latchwright_drawing::Ink;
use latchwright_model::Units;
use latchwright_model::unit::MM_PER_INCH;
use latchwright_session::units;
use latchwright_session::words::typed::typed_error;
use latchwright_workshop::inch;

use crate::theme;

/// Width of a field and of the unit behind it, points.
const FIELD: f32 = 84.0;
/// Width of a digit, so that a field grows with what stands in it, points.
const DIGIT: f32 = 9.0;
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
    /// A density in g/cm³.
    Density,
    /// A plain number.
    Ratio,
    /// A whole number.
    Count,
}

impl Kind {
    fn show(self, value: f64, units: Units) -> String {
        match self {
            Self::Length => units::show_length(value, units),
            Self::Degrees | Self::Celsius | Self::Percent => units::show_number(value),
            Self::Newton | Self::Density | Self::Ratio => value.to_string(),
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
            Self::Density => "g/cm³",
            Self::Ratio | Self::Count => "",
        }
    }

    fn parse(self, text: &str, units: Units) -> Result<f64, String> {
        let read = match self {
            Self::Length => units::parse_length(text, units),
            Self::Degrees => units::parse_degrees(text),
            Self::Celsius => units::parse_number_in(text, &["°C", "C", "°"]),
            Self::Percent => units::parse_number_in(text, &["%"]),
            Self::Newton => units::parse_number_in(text, &["N"]),
            Self::Density => units::parse_number_in(text, &["g/cm³"]),
            Self::Ratio => units::parse_number(text),
            Self::Count => units::parse_count(text).map(f64::from),
        };
        read.map_err(|err| typed_error(&err))
    }

    /// The exact value where the field shows a rounded one: an inch maker's millimetres, and the
    /// nearest tick of a rule with what it leaves out; no tick for what is too small to lay a rule to.
    fn exactly(self, value: f64, units: Units) -> Option<String> {
        if self != Self::Length || units != Units::Inch || !value.is_finite() {
            return None;
        }
        let mm = units::show_length_unit(value, Units::Millimetre);
        let tick = inch::fraction(value, 64);
        let off = tick.error_mm() / MM_PER_INCH;
        Some(if off.abs() < 5e-5 {
            format!("{mm}, {tick} in")
        } else if tick.ticks.abs() < 4 {
            mm
        } else {
            let way = if off > 0.0 { "over" } else { "under" };
            format!("{mm}; by the rule {tick} in, {:.4} in {way}", off.abs())
        })
    }
}

/// What a field remembers between frames.
#[derive(Debug, Clone, Default)]
struct Typing {
    /// What is being typed, and what the field showed when typing began.
    text: Option<(String, String)>,
    /// Why the last entry was not taken, and what the field showed then.
    refused: Option<(String, String)>,
}

impl Typing {
    fn of(ui: &Ui, id: Id, shown: &str) -> Self {
        let mut typing: Self = ui.data(|data| data.get_temp(id)).unwrap_or_default();
        // an undo while the field has the focus shows through
        typing.text = typing.text.filter(|(_, base)| base == shown);
        typing.refused = typing.refused.filter(|(_, base)| base == shown);
        typing
    }

    fn text(&self, shown: &str) -> String {
        let text = self.text.as_ref().map(|(text, _)| text.clone());
        text.unwrap_or_else(|| shown.to_owned())
    }
}

/// Takes back what is being typed in the field that has the focus; false where nothing is.
pub fn put_back(ctx: &Context) -> bool {
    let Some(id) = ctx.memory(egui::Memory::focused) else {
        return false;
    };
    ctx.data_mut(|data| {
        let Some(mut typing) = data.get_temp::<Typing>(id) else {
            return false;
        };
        let changed = typing.text.take().is_some_and(|(text, base)| text != base);
        data.insert_temp(id, typing);
        changed
    })
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
    let shown = Shown {
        text: &kind.show(value, units),
        unit: kind.unit(units),
        why,
        exactly: kind.exactly(value, units),
    };
    let entered = row_ui(ui, name, &shown, |text| kind.parse(text, units));
    entered.filter(|new| *new != value)
}

/// As [`number_ui`], empty until something is typed: for one more of a list.
pub fn new_number_ui(ui: &mut Ui, name: &str, kind: Kind, units: Units, why: &str) -> Option<f64> {
    let shown = Shown {
        text: "",
        unit: kind.unit(units),
        why,
        exactly: None,
    };
    row_ui(ui, name, &shown, |text| kind.parse(text, units))
}

/// A row whose entry is read by `parse`, such as a label; `Some` when it has read another one.
pub fn word_ui<T>(
    ui: &mut Ui,
    name: &str,
    shown: &str,
    why: &str,
    parse: impl Fn(&str) -> Result<T, String>,
) -> Option<T> {
    let shown = Shown {
        text: shown,
        unit: "",
        why,
        exactly: None,
    };
    row_ui(ui, name, &shown, parse)
}

/// What a row shows beside its name.
struct Shown<'a> {
    text: &'a str,
    unit: &'a str,
    why: &'a str,
    exactly: Option<String>,
}

fn row_ui<T>(
    ui: &mut Ui,
    name: &str,
    shown: &Shown<'_>,
    parse: impl Fn(&str) -> Result<T, String>,
) -> Option<T> {
    let id = Id::unique(("field", name));
    let mut typing = Typing::of(ui, id, shown.text);
    let mut text = typing.text(shown.text);
    let mut entered = None;
    let why = match &shown.exactly {
        Some(exactly) => format!("{}\n{exactly}", shown.why),
        None => shown.why.to_owned(),
    };
    ui.horizontal(|ui| {
        let wide = FIELD.max(DIGIT * shown.text.chars().count() as f32 + 16.0);
        let wide = wide.min((ui.available_width() - 92.0).max(FIELD));
        let unit = if shown.unit.is_empty() && wide > FIELD {
            0.0
        } else {
            UNIT
        };
        let space = (ui.available_width() - wide - unit - 16.0).max(60.0);
        let left = egui::Layout::left_to_right(egui::Align::Center).with_main_wrap(true);
        let label = ui
            .allocate_ui_with_layout(egui::vec2(space, 28.0), left, |ui| {
                ui.set_width(space);
                ui.label(name)
            })
            .inner
            .on_hover_text(why.as_str());
        let field = TextEdit::singleline(&mut text)
            .id(id)
            .desired_width(wide - 8.0)
            .align(egui::Align2::RIGHT_CENTER);
        let response = ui.add(field).labelled_by(label.id).on_hover_text(why);
        let unit = RichText::new(shown.unit).weak();
        let long = shown.unit.chars().count() > 2;
        ui.label(if long { unit.small() } else { unit });
        if response.changed() {
            typing.text = Some((text.clone(), shown.text.to_owned()));
            typing.refused = None;
        }
        select_all(&response, &text);
        // what reads the screen aloud may set a text without the focus
        if (response.lost_focus() || response.changed() && !response.has_focus())
            && let Some((text, base)) = typing.text.take()
            && !ui.input(|input| input.key_pressed(Key::Escape))
            && text.trim() != base
        {
            match parse(&text) {
                Ok(value) => entered = Some(value),
                Err(why) => typing.refused = Some((why, base)),
            }
        }
    });
    if let Some((refused, _)) = &typing.refused {
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

/// Whatever is typed after the Tab key goes in place of what a field holds, not behind it; a click
/// puts the cursor where it was made.
fn select_all(response: &Response, text: &str) {
    let (ctx, id) = (&response.ctx, response.id);
    let clicked = ctx.input(|input| input.pointer.any_down() || input.pointer.any_released());
    if response.has_focus() && (clicked || !response.gained_focus()) {
        return;
    }
    let Some(mut state) = TextEditState::load(ctx, id) else {
        return;
    };
    let all = CCursorRange::two(CCursor::new(0), CCursor::new(text.chars().count()));
    if state.cursor.char_range() != Some(all) {
        state.cursor.set_char_range(Some(all));
        state.store(ctx, id);
    }
}

/// A row with a name and a line of text; `Some` when a new text has been entered.
pub fn text_ui(ui: &mut Ui, name: &str, value: &str, hint: &str) -> Option<String> {
    let id = Id::unique(("text", name));
    let mut typing = Typing::of(ui, id, value);
    let mut text = typing.text(value);
    let label = ui.label(name);
    let field = TextEdit::singleline(&mut text)
        .id(id)
        .hint_text(hint.to_owned())
        .desired_width(f32::INFINITY);
    let response = ui.add(field).labelled_by(label.id);
    if response.changed() {
        typing.text = Some((text, value.to_owned()));
    }
    select_all(&response, &typing.text(value));
    let mut entered = None;
    if response.lost_focus() || response.changed() && !response.has_focus() {
        let escaped = ui.input(|input| input.key_pressed(Key::Escape));
        let typed = typing.text.take().filter(|_| !escaped);
        entered = typed.and_then(|(text, base)| (text != base).then_some(text));
    }
    ui.data_mut(|data| data.insert_temp(id, typing));
    entered
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inch_maker_is_told_millimetres_and_the_nearest_tick_with_what_it_leaves_out() {
        let told = |kind: Kind, mm, units| kind.exactly(mm, units);
        let inch = |mm| told(Kind::Length, mm, Units::Inch).unwrap();
        assert_eq!(inch(12.7), "12.7 mm, 1/2 in");
        // 18 mm are 0.70866 in, 45/64 are 0.70313
        assert_eq!(inch(18.0), "18.0 mm; by the rule 45/64 in, 0.0055 in under");
        // −0.39370 in; −25/64 are −0.39063
        assert_eq!(
            inch(-10.0),
            "-10.0 mm; by the rule −25/64 in, 0.0031 in over"
        );
        assert_eq!(inch(0.25), "0.25 mm");
        assert_eq!(told(Kind::Length, 18.0, Units::Millimetre), None);
        assert_eq!(told(Kind::Celsius, 18.0, Units::Inch), None);
        assert_eq!(told(Kind::Length, f64::NAN, Units::Inch), None);
    }

    #[test]
    fn every_kind_takes_what_it_shows_with_its_unit_behind() {
        for kind in [
            Kind::Length,
            Kind::Degrees,
            Kind::Celsius,
            Kind::Percent,
            Kind::Newton,
            Kind::Density,
            Kind::Ratio,
            Kind::Count,
        ] {
            for units in [Units::Millimetre, Units::Inch] {
                let shown = kind.show(25.4, units);
                let text = format!("{shown} {}", kind.unit(units));
                let read = kind.parse(&text, units).unwrap();
                let off = if kind == Kind::Count { 0.5 } else { 1e-9 };
                assert!((read - 25.4).abs() < off, "{kind:?}: {text}");
            }
        }
    }
}
