//! Colours for the roles: a bench in daylight, slate at night, black on white for a printer.
//!
//! Words keep a contrast of 4.5 to 1 and lines 3 to 1 against every ground that they are drawn on.

use latchwright_geometry::trig;

use crate::style::Ink;

/// A colour as a screen has it, 0 to 255 a channel (sRGB).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rgb {
    /// Red.
    pub r: u8,
    /// Green.
    pub g: u8,
    /// Blue.
    pub b: u8,
}

/// A colour for each role.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Palette {
    /// The sheet.
    pub paper: Rgb,
    /// The plate's face.
    pub wood: Rgb,
    /// Wood one tone deeper.
    pub deep_wood: Rgb,
    /// Grain lines.
    pub grain: Rgb,
    /// Printed parts.
    pub part: Rgb,
    /// Edges and words.
    pub ink: Rgb,
    /// Words of less weight.
    pub note: Rgb,
    /// Leaders and dimension lines.
    pub faint: Rgb,
    /// Hatching of cut faces.
    pub hatch: Rgb,
    /// What the maker can move.
    pub movable: Rgb,
    /// A quiet area of it.
    pub movable_tint: Rgb,
    /// What blocks.
    pub blocks: Rgb,
    /// A quiet area of it.
    pub blocks_tint: Rgb,
    /// What passes.
    pub passes: Rgb,
}

impl Rgb {
    /// The colour of a number such as `0xf6_f1_e8`; anything above 24 bits is cut off.
    pub const fn new(rgb: u32) -> Self {
        let [_, r, g, b] = rgb.to_be_bytes();
        Self { r, g, b }
    }

    /// The colour as `#rrggbb`.
    pub fn hex(self) -> String {
        format!("#{:02x}{:02x}{:02x}", self.r, self.g, self.b)
    }

    /// Relative luminance, 0 for black to 1 for white.
    ///
    /// # Source
    /// W3C, Web Content Accessibility Guidelines 2.2, "relative luminance".
    pub fn luminance(self) -> f64 {
        let linear = |channel: u8| {
            let value = f64::from(channel) / 255.0;
            if value <= 0.04045 {
                value / 12.92
            } else {
                trig::pow((value + 0.055) / 1.055, 2.4)
            }
        };
        0.2126 * linear(self.r) + 0.7152 * linear(self.g) + 0.0722 * linear(self.b)
    }
}

/// Contrast ratio of two colours, 1 to 21, in either order.
///
/// # Source
/// W3C, Web Content Accessibility Guidelines 2.2, "contrast ratio".
pub fn contrast(a: Rgb, b: Rgb) -> f64 {
    let (a, b) = (a.luminance(), b.luminance());
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

impl Palette {
    /// Calm paper, dark ink, rust for what moves, crimson for what blocks.
    pub const LIGHT: Self = Self {
        paper: Rgb::new(0xf6_f1_e8),
        wood: Rgb::new(0xec_df_c4),
        deep_wood: Rgb::new(0xe0_cf_ab),
        grain: Rgb::new(0xd9_c6_9f),
        part: Rgb::new(0xfc_f9_f2),
        ink: Rgb::new(0x24_1f_1a),
        note: Rgb::new(0x62_57_4a),
        faint: Rgb::new(0x7c_6c_55),
        hatch: Rgb::new(0x7f_6d_4d),
        movable: Rgb::new(0x9a_3c_0f),
        movable_tint: Rgb::new(0xf0_d3_bd),
        blocks: Rgb::new(0x86_12_2f),
        blocks_tint: Rgb::new(0xf4_d9_db),
        passes: Rgb::new(0x1f_5f_49),
    };

    /// The same drawing on slate.
    pub const DARK: Self = Self {
        paper: Rgb::new(0x1f_26_2b),
        wood: Rgb::new(0x38_35_2f),
        deep_wood: Rgb::new(0x45_3f_35),
        grain: Rgb::new(0x4d_47_3c),
        part: Rgb::new(0x2b_34_3a),
        ink: Rgb::new(0xef_e8_db),
        note: Rgb::new(0xbc_b4_a6),
        faint: Rgb::new(0xa3_9a_8a),
        hatch: Rgb::new(0xa3_96_7f),
        movable: Rgb::new(0xf2_a0_6a),
        movable_tint: Rgb::new(0x54_3a_2a),
        blocks: Rgb::new(0xff_9a_a8),
        blocks_tint: Rgb::new(0x50_2a_33),
        passes: Rgb::new(0x8f_d6_b4),
    };

    /// Black on white; what colour says elsewhere, line and hatch say here.
    pub const PRINT: Self = Self {
        paper: Rgb::new(0xff_ff_ff),
        wood: Rgb::new(0xff_ff_ff),
        deep_wood: Rgb::new(0xf4_f4_f4),
        grain: Rgb::new(0xcc_cc_cc),
        part: Rgb::new(0xff_ff_ff),
        ink: Rgb::new(0x00_00_00),
        note: Rgb::new(0x40_40_40),
        faint: Rgb::new(0x70_70_70),
        hatch: Rgb::new(0x70_70_70),
        movable: Rgb::new(0x00_00_00),
        movable_tint: Rgb::new(0xe6_e6_e6),
        blocks: Rgb::new(0x00_00_00),
        blocks_tint: Rgb::new(0xe6_e6_e6),
        passes: Rgb::new(0x00_00_00),
    };

    /// The colour of a role.
    pub const fn colour(&self, ink: Ink) -> Rgb {
        match ink {
            Ink::Outline
            | Ink::Thin
            | Ink::Hidden
            | Ink::Holds
            | Ink::Label
            | Ink::Edge
            | Ink::Aim
            | Ink::Unseen => self.ink,
            Ink::Note => self.note,
            Ink::Faint => self.faint,
            Ink::Hatch | Ink::Waste => self.hatch,
            Ink::Movable | Ink::Focus => self.movable,
            Ink::MovableTint => self.movable_tint,
            Ink::Blocks | Ink::BlocksHatch => self.blocks,
            Ink::BlocksTint => self.blocks_tint,
            Ink::Passes => self.passes,
            Ink::Wood => self.wood,
            Ink::DeepWood => self.deep_wood,
            Ink::Grain => self.grain,
            Ink::Paper => self.paper,
            Ink::Part => self.part,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: [(&str, Palette); 3] = [
        ("light", Palette::LIGHT),
        ("dark", Palette::DARK),
        ("print", Palette::PRINT),
    ];

    fn check(inks: &[Ink], grounds: &[Ink], least: f64) {
        for (name, palette) in ALL {
            for &ink in inks {
                for &ground in grounds {
                    let ratio = contrast(palette.colour(ink), palette.colour(ground));
                    assert!(
                        ratio >= least,
                        "{name}: {ink:?} on {ground:?} is only {ratio:.2}"
                    );
                }
            }
        }
    }

    #[test]
    fn contrast_agrees_with_known_pairs() {
        let white = Rgb::new(0xff_ff_ff);
        let near = |grey, wanted: f64| (contrast(Rgb::new(grey), white) - wanted).abs() < 0.0005;
        assert!(near(0x76_76_76, 4.542));
        assert!(near(0x94_94_94, 3.033));
        assert!(near(0x00_00_00, 21.0));
    }

    #[test]
    fn words_can_be_read_on_every_ground() {
        let grounds = [Ink::Paper, Ink::Wood, Ink::DeepWood, Ink::Part];
        check(
            &[
                Ink::Label,
                Ink::Note,
                Ink::Movable,
                Ink::Blocks,
                Ink::Passes,
            ],
            &grounds,
            4.5,
        );
        check(&[Ink::Label, Ink::Movable], &[Ink::MovableTint], 4.5);
        check(&[Ink::Label, Ink::Blocks], &[Ink::BlocksTint], 4.5);
    }

    #[test]
    fn lines_can_be_seen_on_every_ground() {
        let lines = [
            Ink::Outline,
            Ink::Thin,
            Ink::Hidden,
            Ink::Faint,
            Ink::Hatch,
            Ink::Focus,
            Ink::Holds,
            Ink::Edge,
            Ink::Aim,
            Ink::Unseen,
            Ink::Waste,
        ];
        check(
            &lines,
            &[Ink::Paper, Ink::Wood, Ink::DeepWood, Ink::Part],
            3.0,
        );
        check(
            &[Ink::BlocksHatch],
            &[Ink::BlocksTint, Ink::Part, Ink::Wood],
            3.0,
        );
        check(&[Ink::Movable, Ink::Hatch], &[Ink::MovableTint], 3.0);
    }

    #[test]
    fn a_colour_is_written_as_six_digits() {
        assert_eq!(Rgb::new(0x0a_0b_0c).hex(), "#0a0b0c");
    }
}
