//! What can go wrong on the way from a design to a solid, each with figures and a remedy.

use latchwright_model::Fault;
use thiserror::Error;

/// Why a body could not be meshed: a fault of this program or of outlines handed in, never of a
/// sound design.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum MeshFault {
    /// A coordinate is no number or too far out.
    #[error("an outline reaches beyond {most_mm} mm or is not a number; scale it down")]
    TooLarge {
        /// The furthest that is taken, mm.
        most_mm: f64,
    },
    /// Outlines did not settle on the grid.
    #[error("outlines cross in {crossings} places that cannot be told apart; simplify them")]
    Tangled {
        /// Crossings left.
        crossings: usize,
    },
    /// The triangulation refused its points.
    #[error("the outlines cannot be cut into triangles ({reason}); simplify them")]
    NoTriangles {
        /// In the library's words.
        reason: String,
    },
    /// A sloped face crosses another face.
    #[error(
        "a chamfer meets another edge at x {x_mm:.3}, y {y_mm:.3} mm; make one of them smaller"
    )]
    SlopesCross {
        /// Where, mm.
        x_mm: f64,
        /// Where, mm.
        y_mm: f64,
    },
    /// The mesh is not closed.
    #[error(
        "{edges} edges of the surface do not join exactly two faces; move the outlines that touch"
    )]
    Open {
        /// Edges that are not shared by two triangles in opposite directions.
        edges: usize,
    },
    /// A vertex joins two shells.
    #[error(
        "{points} points join parts of the surface that should be apart; move the outlines that touch"
    )]
    Pinched {
        /// How many.
        points: usize,
    },
    /// A triangle too thin to survive rounding.
    #[error(
        "a triangle only {height_mm:.7} mm high, less than {least_mm} mm; simplify the outlines"
    )]
    Sliver {
        /// Its least height, mm.
        height_mm: f64,
        /// What is asked, mm.
        least_mm: f64,
    },
    /// Nothing left, or inside out.
    #[error("the volume is {volume_mm3:.3} mm³; a solid has more than 0")]
    NoVolume {
        /// Signed volume, mm³.
        volume_mm3: f64,
    },
}

/// Why parts cannot be made: named before anything is written.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum PartFault {
    /// The design itself has a fault; its words are told where the maker's unit is known.
    #[error("the design has a fault ({})", .0.kind.code())]
    Design(Fault),
    /// A size of the options makes no sense.
    #[error("option {name} is {value}; give a value from {least} to {most}")]
    Option {
        /// Which.
        name: &'static str,
        /// As given.
        value: f64,
        /// Least that is taken.
        least: f64,
        /// Most that is taken.
        most: f64,
    },
    /// The star goes through the knob's face, or nearly.
    #[error(
        "{part}: the star is {recess_mm:.2} mm deep in a knob {height_mm:.2} mm high, which leaves \
         {left_mm:.2} mm of face where {needed_mm:.2} mm are needed; make the knob at least \
         {remedy_mm:.2} mm high"
    )]
    RecessThrough {
        /// The part.
        part: String,
        /// Depth of the recess, mm.
        recess_mm: f64,
        /// Height of the knob, mm.
        height_mm: f64,
        /// What is left, mm.
        left_mm: f64,
        /// What is needed, mm.
        needed_mm: f64,
        /// Height that would do, mm.
        remedy_mm: f64,
    },
    /// A wall thinner than two lines of the printer.
    #[error(
        "{part}: only {wall_mm:.2} mm of wall {between}, less than {needed_mm:.2} mm (two lines of \
         the nozzle); {remedy}"
    )]
    NoWall {
        /// The part.
        part: String,
        /// Between what and what.
        between: &'static str,
        /// What is left, mm.
        wall_mm: f64,
        /// What is needed, mm.
        needed_mm: f64,
        /// What to do, with a number.
        remedy: String,
    },
    /// Larger than the printer.
    #[error(
        "{part} is {x_mm:.1} × {y_mm:.1} × {z_mm:.1} mm, the printer takes {bed_x_mm:.1} × \
         {bed_y_mm:.1} × {bed_z_mm:.1} mm; {remedy}"
    )]
    LargerThanBed {
        /// The part.
        part: String,
        /// Along x, mm.
        x_mm: f64,
        /// Along y, mm.
        y_mm: f64,
        /// Height, mm.
        z_mm: f64,
        /// The bed along x, mm.
        bed_x_mm: f64,
        /// The bed along y, mm.
        bed_y_mm: f64,
        /// The printer's height, mm.
        bed_z_mm: f64,
        /// What to do.
        remedy: String,
    },
    /// A finished size that coats and compensation leave nothing of.
    #[error(
        "{part}: {what} of {finished_mm:.2} mm leaves {drawn_mm:.2} mm to draw, less than \
         {least_mm:.2} mm; {remedy}"
    )]
    NothingToDraw {
        /// The part.
        part: String,
        /// Which size.
        what: &'static str,
        /// As the design says, mm.
        finished_mm: f64,
        /// As it would be drawn, mm.
        drawn_mm: f64,
        /// The least that can be printed, mm.
        least_mm: f64,
        /// What to do.
        remedy: String,
    },
    /// A pin that no finger of the slider reaches.
    #[error(
        "{part}: no finger reaches the pin of dial {dial}, which is too near its neighbour's or does \
         not stand clear of the slider's bar; set the dials further apart, or level with one another"
    )]
    NoFinger {
        /// The part.
        part: String,
        /// Which dial, from 1.
        dial: usize,
    },
    /// The outlines could not be meshed.
    #[error("{part}: {fault}")]
    Mesh {
        /// The part.
        part: String,
        /// Why.
        fault: MeshFault,
    },
    /// A file could not be put together.
    #[error("{name} cannot be put together ({reason}); leave some parts out and try again")]
    File {
        /// Its name.
        name: String,
        /// In the library's words.
        reason: String,
    },
}
