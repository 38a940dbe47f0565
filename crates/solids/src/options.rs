//! What the maker can choose about printed parts beyond the design itself.

use crate::fault::{PartFault, SizeOption};
use crate::part::Kind;
use crate::region::Region;

/// What the fingers hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Grip {
    /// Round flutes all round.
    #[default]
    Fluted,
    /// A few large lobes.
    Lobed,
    /// Flat facets.
    Faceted,
    /// Smooth, with a nose that points.
    Plain,
}

/// How pointers and labels stand out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Relief {
    /// Above their ground: change the filament at the ground for a second colour.
    #[default]
    Raised,
    /// Below their ground: to be filled with paint.
    Sunk,
}

/// Choices for all parts of a latch.
#[derive(Debug, Clone, PartialEq)]
pub struct Options {
    /// The shape of the knobs.
    pub grip: Grip,
    /// How pointers and labels stand out.
    pub relief: Relief,
    /// How far they do, mm.
    pub relief_height: f64,
    /// The chamfer on all edges at the bed, mm.
    pub chamfer: f64,
    /// Whether discs, knobs and what is screwed to the slider get holes for their screws; without, they are glued.
    pub screwed: bool,
    /// Height of the labels, mm.
    pub label_height: f64,
    /// Outlines of labels, by dial and mark, y up, of any size: letters of a font, cut into chords
    /// and made regions by [`Region::filled`], or pictures. All labels of one dial are taken to one
    /// scale and keep their heights over one line, so hand them in at one size; one that is too wide
    /// is made smaller. A region that is empty or missing is none: then figures, letters and pictures
    /// of our own are used.
    pub labels: Vec<Vec<Region>>,
    /// The bit that the drilling jig guides, mm.
    pub jig_drill: f64,
    /// Whether standing pins for a wooden slider come as one strip, if all pins are such.
    pub pin_strip: bool,
    /// Kinds of parts that are not wanted, such as a keeper that is made of wood.
    pub leave_out: Vec<Kind>,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            grip: Grip::default(),
            relief: Relief::default(),
            relief_height: 0.6,
            chamfer: 0.4,
            screwed: true,
            label_height: 4.5,
            labels: Vec::new(),
            jig_drill: 3.0,
            pin_strip: false,
            leave_out: Vec::new(),
        }
    }
}

impl Options {
    /// How deep pointers and labels are sunk, mm; 0 where they stand out.
    pub(crate) fn sunk(&self) -> f64 {
        match self.relief {
            Relief::Raised => 0.0,
            Relief::Sunk => self.relief_height,
        }
    }

    /// Whether parts of this kind are made.
    pub fn wants(&self, kind: Kind) -> bool {
        !self.leave_out.contains(&kind)
    }

    /// Every number against its range.
    pub fn faults(&self) -> Vec<PartFault> {
        let rows = [
            (SizeOption::ReliefHeight, self.relief_height, 0.1, 5.0),
            (SizeOption::Chamfer, self.chamfer, 0.0, 2.0),
            (SizeOption::LabelHeight, self.label_height, 2.0, 30.0),
            (SizeOption::JigDrill, self.jig_drill, 0.5, 20.0),
        ];
        rows.into_iter()
            .filter(|(_, value, least, most)| !(least..=most).contains(&value))
            .map(|(which, value, least, most)| PartFault::Option {
                which,
                value_mm: value,
                least_mm: least,
                most_mm: most,
            })
            .collect()
    }
}
