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

/// The wood screw that holds knob and disc together; mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Screw {
    /// The hole it passes.
    pub clearance: f64,
    /// The hole it cuts its thread into.
    pub pilot: f64,
    /// Diameter of its countersunk head.
    pub head: f64,
}

impl Default for Screw {
    /// No. 4: a shank of 2.84 mm, in two tables; hole and head as they are bored in wood, from memory.
    fn default() -> Self {
        Self {
            clearance: 3.0,
            pilot: 2.2,
            head: 6.0,
        }
    }
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
    /// Whether the parts are coated: then the design's film is taken off first.
    pub coated: bool,
    /// The chamfer on all edges at the bed, mm.
    pub chamfer: f64,
    /// The screw that joins knob and disc; none: they are glued.
    pub screw: Option<Screw>,
    /// Clear distance between knob and plate, mm.
    pub knob_gap: f64,
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
            coated: true,
            chamfer: 0.4,
            screw: Some(Screw::default()),
            knob_gap: 0.3,
            label_height: 4.5,
            labels: Vec::new(),
            jig_drill: 3.0,
            pin_strip: false,
            leave_out: Vec::new(),
        }
    }
}

impl Options {
    /// Whether parts of this kind are made.
    pub fn wants(&self, kind: Kind) -> bool {
        !self.leave_out.contains(&kind)
    }

    /// Every number against its range.
    pub fn faults(&self) -> Vec<PartFault> {
        let mut rows = vec![
            (SizeOption::ReliefHeight, self.relief_height, 0.1, 5.0),
            (SizeOption::Chamfer, self.chamfer, 0.0, 2.0),
            (SizeOption::KnobGap, self.knob_gap, 0.0, 5.0),
            (SizeOption::LabelHeight, self.label_height, 2.0, 30.0),
            (SizeOption::JigDrill, self.jig_drill, 0.5, 20.0),
        ];
        if let Some(screw) = &self.screw {
            rows.push((SizeOption::ScrewClearance, screw.clearance, 1.0, 20.0));
            rows.push((SizeOption::ScrewPilot, screw.pilot, 0.5, screw.clearance));
            rows.push((SizeOption::ScrewHead, screw.head, screw.clearance, 40.0));
        }
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
