//! Round which corners of the box the grain runs on, and which one cannot match.

use super::{BoardLayout, Piece};
use crate::joinery::SidePlace;

/// Corners as the two sides that meet there, in the order in which they lie on the board.
#[derive(Debug, Clone, PartialEq)]
pub struct GrainRound {
    /// Where the two sides were neighbours on one strip.
    pub runs_on: Vec<(SidePlace, SidePlace)>,
    /// Where they were not; never empty, because a strip has two ends.
    pub breaks: Vec<(SidePlace, SidePlace)>,
}

/// The order on the board: what cannot match comes to a back corner, where it is seen least.
pub(super) const SEQUENCE: [SidePlace; 4] = [
    SidePlace::Left,
    SidePlace::Front,
    SidePlace::Right,
    SidePlace::Back,
];

/// Each side with the one that comes after it round the box.
const CORNERS: [(SidePlace, SidePlace); 4] = [
    (SidePlace::Left, SidePlace::Front),
    (SidePlace::Front, SidePlace::Right),
    (SidePlace::Right, SidePlace::Back),
    (SidePlace::Back, SidePlace::Left),
];

impl GrainRound {
    /// From where the sides lie.
    pub(super) fn of(boards: &[BoardLayout]) -> Self {
        let mut neighbours = Vec::new();
        for strip in boards.iter().flat_map(|board| &board.strips) {
            let sides = strip.pieces.iter().map(Piece::side);
            neighbours.extend(sides.clone().zip(sides.skip(1)));
        }
        let (runs_on, breaks) = CORNERS
            .into_iter()
            .partition(|(one, other)| neighbours.contains(&(Some(*one), Some(*other))));
        Self { runs_on, breaks }
    }
}
