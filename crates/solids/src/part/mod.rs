//! What every printed part is, and one file for each kind of part.

mod arm;
mod disc;
mod gauge;
mod grip;
mod jig;
mod keeper;
pub mod key;
mod knob;
mod pin;
mod ring;
mod slider;
mod slider_knob;
mod washer;

pub use disc::disc_outline;
pub use gauge::Gauge;

use core::f64::consts::PI;

use latchwright_model::{Design, Dial, Material, PinMake, Printer};

use crate::extrude::Body;
use crate::fault::{PartFault, Slim, Wall};
use crate::fit::{Fit, Size};
use crate::mesh::{Extent, Mesh, Pose};
use crate::options::Options;
use crate::slope::Edge;
use crate::warning::Warning;
use crate::watertight::{Soundness, check_rounded};

pub(crate) use disc::disc;
pub(crate) use gauge::gauge;
pub(crate) use jig::jigs;
pub(crate) use keeper::keeper;
pub(crate) use knob::knob;
pub(crate) use pin::pin;
pub(crate) use ring::{LEAST_LABEL, ring};
pub(crate) use slider::{pin_strip, slider};
pub(crate) use slider_knob::slider_knob;
pub(crate) use washer::washer;

/// What a part is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// Slotted disc with shaft and key post.
    Disc,
    /// What the hand turns.
    Knob,
    /// Marks and labels round a knob.
    Ring,
    /// Between plate and disc.
    Washer,
    /// A pin, a finger's tip with its pin, or a strip of them.
    Pin,
    /// The slider's body, with fingers and pins.
    Slider,
    /// What the hand pulls.
    SliderKnob,
    /// What holds the tab down.
    Keeper,
    /// Guides the bit for the bores.
    Jig,
    /// Shows how far the printer is off.
    Gauge,
}

/// Which part: its kind, and the dial that it alone is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub struct PartId {
    /// What it is for.
    pub kind: Kind,
    /// The dial, from 0; none for a part that is for all, such as a strip of pins.
    pub dial: Option<usize>,
}

impl PartId {
    /// A part for one dial.
    pub(crate) const fn of(kind: Kind, dial: usize) -> Self {
        Self {
            kind,
            dial: Some(dial),
        }
    }

    /// A part for all dials.
    pub(crate) const fn whole(kind: Kind) -> Self {
        Self { kind, dial: None }
    }

    /// For people and for files, for example `Disc 2`.
    pub fn name(self) -> String {
        let what = match self.kind {
            Kind::Disc => "Disc",
            Kind::Knob => "Knob",
            Kind::Ring => "Ring",
            Kind::Washer => "Washer",
            Kind::Pin if self.dial.is_none() => "Pin strip",
            Kind::Pin => "Pin",
            Kind::Slider => "Slider",
            Kind::SliderKnob => "Slider knob",
            Kind::Keeper => "Keeper",
            Kind::Jig => "Drilling jig",
            Kind::Gauge => "Fit gauge",
        };
        match self.dial {
            Some(dial) => format!("{what} {}", dial + 1),
            None => what.to_owned(),
        }
    }
}

/// One part, lying as it is to be printed: lowest point at z = 0, z up, mm.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    /// For people and for files, for example `Disc 2`.
    pub name: String,
    /// What it is for.
    pub kind: Kind,
    /// The dial it belongs to, from 0; none for tools.
    pub dial: Option<usize>,
    /// Its surface.
    pub mesh: Mesh,
    /// What its mesh is like.
    pub sound: Soundness,
    /// Sizes that matter, nominal, drawn and expected.
    pub sizes: Vec<Size>,
    /// Height above the bed at which a second colour can begin, mm.
    pub colour_change: Option<f64>,
    /// What to know before printing it.
    pub warnings: Vec<Warning>,
    /// Where it sits in the closed lid: plan axes, z = 0 at the underside of the plate, z up, true
    /// slots facing their pins; `None` for tools.
    pub assembled: Option<Pose>,
    /// Steps upwards by which it is pulled away from the plate to show the assembly; below 0 for
    /// what hangs below.
    pub apart: i32,
    /// Mass, g, if it were printed solid.
    pub mass_g: f64,
    /// Length of filament, mm, if it were printed solid.
    pub filament_mm: f64,
}

impl Part {
    /// The box around it as it is printed, mm.
    pub fn extent(&self) -> Extent {
        self.mesh.extent()
    }

    /// Its name as a file name: small letters, figures and hyphens.
    pub fn file_stem(&self) -> String {
        let plain = |c: char| {
            if c.is_ascii_alphanumeric() {
                c.to_ascii_lowercase()
            } else {
                '-'
            }
        };
        self.name.chars().map(plain).collect()
    }
}

/// What all parts are made from.
#[derive(Clone, Copy)]
pub(crate) struct Shop<'a> {
    pub design: &'a Design,
    pub options: &'a Options,
    /// Of all that works, which stays bare.
    pub fit: Fit<'a>,
    /// Of what is seen of knobs, rings and the finger knob's grip, which may be coated.
    pub seen: Fit<'a>,
}

impl<'a> Shop<'a> {
    pub(crate) fn new(design: &'a Design, options: &'a Options) -> Self {
        let film = if design.bench.coated_prints {
            design.workmanship.film
        } else {
            0.0
        };
        let printer = &design.bench.printer;
        Self {
            design,
            options,
            fit: Fit { printer, film: 0.0 },
            seen: Fit { printer, film },
        }
    }

    pub(crate) fn printer(&self) -> &'a Printer {
        self.fit.printer
    }

    /// Whether the slider's body is printed.
    pub(crate) fn printed_slider(&self) -> bool {
        self.design.slider.material == Material::Printed && self.options.wants(Kind::Slider)
    }

    /// Whether a strip carries all pins.
    pub(crate) fn strip(&self) -> bool {
        let standing = |dial: &Dial| dial.pin.make == PinMake::PrintedStanding;
        let dials = &self.design.dials;
        self.options.pin_strip
            && self.design.slider.material != Material::Printed
            && !dials.is_empty()
            && dials.iter().all(standing)
    }

    /// Whether standing pins are of one piece with slider or strip.
    pub(crate) fn pins_on_a_bar(&self) -> bool {
        self.printed_slider() || self.strip()
    }

    /// The chamfer at the bed of a part `height` mm high: never more than a third of it.
    pub(crate) fn bed_edge(&self, height: f64) -> Edge {
        let width = self.options.chamfer.min(height / 3.0);
        Edge::chamfer(if width < 0.1 { 0.0 } else { width })
    }

    /// [`PartFault::NothingToDraw`] if a drawn width is no more than two lines.
    pub(crate) fn enough(&self, part: PartId, what: Slim, size: &Size) -> Result<(), PartFault> {
        let least = self.fit.least_wall();
        if size.drawn > least {
            return Ok(());
        }
        Err(PartFault::NothingToDraw {
            part,
            what,
            finished_mm: size.nominal,
            drawn_mm: size.drawn,
            least_mm: least,
        })
    }

    /// [`PartFault::NoWall`] if a wall is thinner than two lines; `which` is told by how much.
    pub(crate) fn wall(
        &self,
        part: PartId,
        wall: f64,
        which: impl FnOnce(f64) -> Wall,
    ) -> Result<(), PartFault> {
        let needed = self.fit.least_wall();
        if wall >= needed - 1e-9 {
            return Ok(());
        }
        Err(PartFault::NoWall {
            part,
            wall: which(needed - wall),
            wall_mm: wall,
            needed_mm: needed,
        })
    }
}

/// A part in the making.
pub(crate) struct Draft {
    pub id: PartId,
    pub body: Body,
    pub sizes: Vec<Size>,
    pub colour_change: Option<f64>,
    pub warnings: Vec<Warning>,
    pub assembled: Option<Pose>,
    pub apart: i32,
    /// Turned down on its side once it is meshed.
    pub laid: bool,
}

impl Draft {
    pub(crate) fn new(id: PartId) -> Self {
        Self {
            id,
            body: Body::new(),
            sizes: Vec::new(),
            colour_change: None,
            warnings: Vec::new(),
            assembled: None,
            apart: 0,
            laid: false,
        }
    }

    /// Remembers a size and gives what is to be drawn, mm.
    pub(crate) fn draw(&mut self, size: Size) -> f64 {
        let drawn = size.drawn;
        self.sizes.push(size);
        drawn
    }

    pub(crate) fn warn(&mut self, warning: Warning) {
        self.warnings.push(warning);
    }

    /// Meshes, lays down, measures.
    pub(crate) fn finish(self, printer: &Printer) -> Result<Part, PartFault> {
        let part = self.id;
        let broken = |fault| PartFault::Mesh { part, fault };
        let mut mesh = self.body.mesh().map_err(broken)?;
        if self.laid {
            mesh = mesh.laid();
        }
        let low = mesh.extent().low[2];
        if low != 0.0 {
            mesh = mesh.posed(&Pose::to(0.0, 0.0, -low));
        }
        let sound = check_rounded(&mesh).map_err(broken)?;
        let made = Part {
            mass_g: sound.volume * printer.density / 1000.0,
            filament_mm: sound.volume / (PI / 4.0 * printer.filament * printer.filament),
            name: self.id.name(),
            kind: self.id.kind,
            dial: self.id.dial.filter(|_| self.id.kind != Kind::Jig),
            mesh,
            sound,
            sizes: self.sizes,
            colour_change: self.colour_change,
            warnings: self.warnings,
            assembled: self.assembled,
            apart: self.apart,
        };
        fits_bed(part, &made, printer)?;
        Ok(made)
    }
}

/// Either way round on the bed.
fn fits_bed(id: PartId, part: &Part, printer: &Printer) -> Result<(), PartFault> {
    let size = part.extent().size();
    let [x, y, z] = size;
    let (bed_x, bed_y) = printer.bed;
    let flat = (x <= bed_x && y <= bed_y) || (y <= bed_x && x <= bed_y);
    if flat && z <= printer.height {
        return Ok(());
    }
    Err(PartFault::LargerThanBed {
        part: id,
        size_mm: size,
        bed_mm: [bed_x, bed_y, printer.height],
    })
}
