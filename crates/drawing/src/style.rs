//! The roles of lines, areas and words, and one table of how wide and how broken each line is.

/// What a line, an area or a word stands for. The colour is the palette's, the width is the role's.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ink {
    /// Edges of what is seen or cut; the heavy line.
    Outline,
    /// Lesser edges, ticks and marks.
    Thin,
    /// Edges below something else; dashed.
    Hidden,
    /// Leaders, dimension lines and other quiet helpers.
    Faint,
    /// Hatching of cut faces.
    Hatch,
    /// What the maker can move: knobs, pointers, finger knob, pins.
    Movable,
    /// The part that has the focus; dotted.
    Focus,
    /// What blocks; always with a hatch, a cross or a word beside the colour.
    Blocks,
    /// Hatching of what blocks.
    BlocksHatch,
    /// A pin that is held back.
    Holds,
    /// A pin that stands in its slot.
    Passes,
    /// Words, and the arrows and pictures that stand for words.
    Label,
    /// Words of less weight: units, names of parts, dimensions.
    Note,
    /// The plate's face.
    Wood,
    /// Wood one tone deeper: the slider.
    DeepWood,
    /// Grain lines; decoration.
    Grain,
    /// The sheet, where something must cover what lies under it.
    Paper,
    /// Printed parts: discs and knobs.
    Part,
    /// A quiet area of the movable accent: the tab.
    MovableTint,
    /// A quiet area of the grave colour.
    BlocksTint,
    /// A finished edge on a template at true size: the middle of the line is the edge.
    Edge,
    /// Crosshairs and other fine helpers of a template.
    Aim,
    /// What is worked from the other face of a template's part; dashed.
    Unseen,
    /// Hatching of what is cut away.
    Waste,
}

/// How a line is drawn, in millimetres of the drawing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stroke {
    /// Width, mm.
    pub width: f64,
    /// Lengths of dash and gap in turn, mm; empty for a solid line.
    pub dash: &'static [f64],
}

impl Ink {
    /// Every role.
    pub const ALL: [Self; 24] = [
        Self::Outline,
        Self::Thin,
        Self::Hidden,
        Self::Faint,
        Self::Hatch,
        Self::Movable,
        Self::Focus,
        Self::Blocks,
        Self::BlocksHatch,
        Self::Holds,
        Self::Passes,
        Self::Label,
        Self::Note,
        Self::Wood,
        Self::DeepWood,
        Self::Grain,
        Self::Paper,
        Self::Part,
        Self::MovableTint,
        Self::BlocksTint,
        Self::Edge,
        Self::Aim,
        Self::Unseen,
        Self::Waste,
    ];
    /// The roles of lines to work by: no wider than 0.2 mm.
    pub const FINE: [Self; 4] = [Self::Edge, Self::Aim, Self::Unseen, Self::Waste];

    /// Width and dashes of a line of this role.
    pub const fn stroke(self) -> Stroke {
        let (width, dash): (f64, &'static [f64]) = match self {
            Self::Outline | Self::Holds => (0.45, &[]),
            Self::Hidden => (0.35, &[2.2, 1.4]),
            Self::Faint | Self::Hatch | Self::BlocksHatch | Self::Grain => (0.25, &[]),
            Self::Movable | Self::Passes => (0.6, &[]),
            Self::Focus => (0.5, &[0.01, 1.3]),
            Self::Blocks => (0.7, &[]),
            Self::Label => (0.4, &[]),
            Self::Edge => (0.18, &[]),
            Self::Aim | Self::Waste => (0.13, &[]),
            Self::Unseen => (0.15, &[1.6, 0.9]),
            Self::Thin
            | Self::Note
            | Self::Wood
            | Self::DeepWood
            | Self::Paper
            | Self::Part
            | Self::MovableTint
            | Self::BlocksTint => (0.3, &[]),
        };
        Stroke { width, dash }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_list_of_roles_holds_each_role_once() {
        let mut sorted = Ink::ALL.to_vec();
        sorted.sort_unstable();
        sorted.dedup();
        assert_eq!(sorted.len(), Ink::ALL.len());
    }

    #[test]
    fn every_line_can_be_seen_and_every_dash_has_a_gap() {
        for ink in Ink::ALL {
            let stroke = ink.stroke();
            if Ink::FINE.contains(&ink) {
                assert!((0.1..=0.2).contains(&stroke.width), "{ink:?}");
            } else {
                assert!(stroke.width >= 0.25, "{ink:?}");
            }
            assert!(stroke.dash.len().is_multiple_of(2), "{ink:?}");
        }
    }

    #[test]
    fn what_blocks_is_drawn_heavier_than_what_moves() {
        assert!(Ink::Blocks.stroke().width > Ink::Movable.stroke().width);
        assert!(Ink::Outline.stroke().width > Ink::Thin.stroke().width);
    }
}
