//! The cut list laid out on the maker's boards, or on boards to buy; what is short is said as a length.
//!
//! Boards are ripped into strips along their grain, strips crosscut into parts. The four sides come out
//! of one strip in the order left, front, right, back where they can, so that the grain runs round three
//! corners; the fourth, at the back, cannot match.

mod draw;
mod grain;
mod pack;
mod plan;

use latchwright_model::Board;

use crate::joinery::SidePlace;
use crate::parts::Role;

pub use draw::board_drawing;
pub use grain::GrainRound;
pub use pack::pieces_from;
pub use plan::cut_plan;

/// A part as it lies on a board, sawn rough, mm from the board's lower left corner.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece {
    /// Which part it is.
    pub part: Role,
    /// Left end, along the grain; the trimmed end counts.
    pub x: f64,
    /// Lower edge, across the grain.
    pub y: f64,
    /// Along the board.
    pub width: f64,
    /// Across the board.
    pub height: f64,
    /// Whether it lies across the board; sheets only.
    pub turned: bool,
    /// Thickness it is planed to, mm.
    pub thickness: f64,
}

/// A strip ripped off a board.
#[derive(Debug, Clone, PartialEq)]
pub struct Strip {
    /// Lower edge, mm from the board's lower edge.
    pub y: f64,
    /// Width, mm: the fence's setting.
    pub width: f64,
    /// What is crosscut off it, from the left.
    pub pieces: Vec<Piece>,
}

/// One board with what is cut from it.
#[derive(Debug, Clone, PartialEq)]
pub struct BoardLayout {
    /// The board; its count is one.
    pub board: Board,
    /// Which of the boards that are alike, from 1.
    pub number: u32,
    /// Whether it is to be bought.
    pub to_buy: bool,
    /// Cut off each end first, mm.
    pub end_trim: f64,
    /// Its strips, from below.
    pub strips: Vec<Strip>,
}

/// What is missing of one wood.
#[derive(Debug, Clone, PartialEq)]
pub struct Shortfall {
    /// The board that would do, its count one: the length is what is missing, with both ends' trim.
    pub board: Board,
    /// What would be cut from it.
    pub parts: Vec<Role>,
}

/// How everything is cut.
#[derive(Debug, Clone, PartialEq)]
pub struct CutPlan {
    /// Boards that something is cut from.
    pub boards: Vec<BoardLayout>,
    /// What the boards at hand lack.
    pub shortfalls: Vec<Shortfall>,
    /// Over which corners the grain runs on.
    pub grain: GrainRound,
    /// What else to know.
    pub notes: Vec<PlanNote>,
    /// What cannot be cut at all.
    pub faults: Vec<PlanFault>,
}

/// What else to know of a plan. Lengths are in mm.
#[derive(Debug, Clone, PartialEq)]
pub enum PlanNote {
    /// So many boards are to be bought.
    Buy {
        /// How many.
        boards: usize,
        /// One of them; its length, width and thickness are the least that will do.
        board: Board,
    },
    /// A board is thicker than what is cut from it.
    Plane {
        /// What is cut from it.
        part: Role,
        /// Thickness of the board.
        from: f64,
        /// Thickness of the part.
        to: f64,
    },
}

/// What cannot be cut at all.
#[derive(Debug, Clone, PartialEq)]
pub enum PlanFault {
    /// A part has no size.
    PartWithoutSize(Role),
    /// More boards than are looked at would be needed.
    TooMuchWood {
        /// Of which wood.
        wood: String,
        /// How many are looked at.
        most: usize,
    },
}

impl Piece {
    /// Which side of the box it is.
    pub const fn side(&self) -> Option<SidePlace> {
        self.part.side()
    }
}

impl BoardLayout {
    /// Every piece on it.
    pub fn pieces(&self) -> impl Iterator<Item = &Piece> {
        self.strips.iter().flat_map(|strip| &strip.pieces)
    }
}

#[cfg(test)]
mod tests;
