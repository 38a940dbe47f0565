//! The look: a drawing on a bench in daylight, the same drawing on slate at night.
//!
//! All colours come from the drawing crate's palettes, whose contrast is tested there.

use std::sync::Arc;

use egui::{
    Color32, Context, CornerRadius, FontData, FontDefinitions, FontFamily, FontId, Margin, Shadow,
    Stroke, Style, TextStyle, Theme, Visuals,
};
use latchwright_drawing::{Ink, Palette, Rgb};

/// Size of running text, points.
pub const BODY: f32 = 15.0;
/// Size of lesser text, points.
pub const SMALL: f32 = 12.5;
/// Size of the verdict and the sentence under the lid, points.
pub const LARGE: f32 = 20.0;

/// The family of bold text.
pub fn bold() -> FontFamily {
    FontFamily::Name("bold".into())
}

/// The palette of the theme that is on.
pub fn palette(ctx: &Context) -> &'static Palette {
    match ctx.theme() {
        Theme::Light => &Palette::LIGHT,
        Theme::Dark => &Palette::DARK,
    }
}

/// The colour of a role in the theme that is on.
pub fn ink(ctx: &Context, ink: Ink) -> Color32 {
    colour(palette(ctx).colour(ink))
}

/// The frame of what lies over the window.
pub fn over(ctx: &Context) -> egui::Frame {
    egui::Frame::popup(&ctx.global_style()).inner_margin(Margin::same(20))
}

/// A palette colour as egui has it.
pub fn colour(rgb: Rgb) -> Color32 {
    Color32::from_rgb(rgb.r, rgb.g, rgb.b)
}

/// Sets fonts, sizes and both themes up; called once.
pub fn apply(ctx: &Context) {
    ctx.set_fonts(fonts());
    // where the system does not say, the bench lies in daylight
    ctx.options_mut(|options| options.fallback_theme = Theme::Light);
    ctx.set_style_of(Theme::Light, style(&Palette::LIGHT, Visuals::light()));
    ctx.set_style_of(Theme::Dark, style(&Palette::DARK, Visuals::dark()));
}

/// The bundled fonts; letters that they lack are looked up among the system's by the window's own
/// font provider.
fn fonts() -> FontDefinitions {
    let mut fonts = FontDefinitions::empty();
    let mut fallbacks = Vec::new();
    for (index, bytes) in latchwright_papers::Fonts::bundled_files()
        .into_iter()
        .enumerate()
    {
        let name = format!("bundled {index}");
        fonts
            .font_data
            .insert(name.clone(), Arc::new(FontData::from_static(bytes)));
        fallbacks.push(name);
    }
    // the first bundled file is the regular face, the second the bold one
    let mut heavy = fallbacks.clone();
    if heavy.len() > 1 {
        heavy.swap(0, 1);
        fallbacks.remove(1);
    }
    fonts
        .families
        .insert(FontFamily::Monospace, fallbacks.clone());
    fonts.families.insert(FontFamily::Proportional, fallbacks);
    fonts.families.insert(bold(), heavy);
    fonts
}

fn style(palette: &Palette, visuals: Visuals) -> Arc<Style> {
    let mut style = Style {
        visuals,
        ..Style::default()
    };
    let regular = |size| FontId::new(size, FontFamily::Proportional);
    style.text_styles = [
        (TextStyle::Small, regular(SMALL)),
        (TextStyle::Body, regular(BODY)),
        (TextStyle::Button, regular(BODY)),
        (TextStyle::Monospace, regular(BODY)),
        (TextStyle::Heading, FontId::new(LARGE, bold())),
    ]
    .into();
    style.spacing.item_spacing = egui::vec2(8.0, 8.0);
    style.spacing.button_padding = egui::vec2(8.0, 4.0);
    style.spacing.interact_size = egui::vec2(40.0, 28.0);
    style.spacing.window_margin = Margin::same(16);
    style.interaction.selectable_labels = false;
    colours(&mut style.visuals, palette);
    Arc::new(style)
}

fn colours(visuals: &mut Visuals, palette: &Palette) {
    let at = |ink| colour(palette.colour(ink));
    let (paper, part) = (at(Ink::Paper), at(Ink::Part));
    visuals.panel_fill = paper;
    visuals.window_fill = part;
    visuals.extreme_bg_color = part;
    visuals.faint_bg_color = part;
    visuals.window_stroke = Stroke::new(1.0, at(Ink::Faint));
    visuals.window_corner_radius = CornerRadius::same(6);
    visuals.window_shadow = Shadow::NONE;
    visuals.popup_shadow = Shadow::NONE;
    visuals.weak_text_color = Some(at(Ink::Note));
    visuals.error_fg_color = at(Ink::Blocks);
    visuals.warn_fg_color = at(Ink::Blocks);
    visuals.hyperlink_color = at(Ink::Movable);
    visuals.selection.bg_fill = at(Ink::MovableTint);
    visuals.selection.stroke = Stroke::new(1.5, at(Ink::Movable));
    let rule = Stroke::new(1.0, at(Ink::DeepWood));
    let edge = Stroke::new(1.0, at(Ink::Faint));
    let text = Stroke::new(1.0, at(Ink::Label));
    let widgets = &mut visuals.widgets;
    for (state, fill, border) in [
        (&mut widgets.noninteractive, paper, rule),
        (&mut widgets.inactive, part, edge),
        (
            &mut widgets.hovered,
            part,
            Stroke::new(1.5, at(Ink::Movable)),
        ),
        (
            &mut widgets.active,
            at(Ink::MovableTint),
            Stroke::new(1.5, at(Ink::Movable)),
        ),
        (&mut widgets.open, part, Stroke::new(1.5, at(Ink::Movable))),
    ] {
        state.bg_fill = fill;
        state.weak_bg_fill = fill;
        state.bg_stroke = border;
        state.fg_stroke = text;
        state.corner_radius = CornerRadius::same(4);
        state.expansion = 0.0;
    }
}
