//! Plate, slider, tab and keeper.

use super::{Grain, Material, Sawn};

/// The wooden top of the lid; hinged along its edge at y = depth.
#[derive(Debug, Clone, PartialEq)]
pub struct Plate {
    /// Size along x, mm.
    pub width: f64,
    /// Size along y, mm.
    pub depth: f64,
    /// Thickness, mm.
    pub thickness: f64,
    /// Depth of the rabbet cut into its underside over the keeper, mm. The keeper's underside lies
    /// level with the plate's.
    pub rabbet: f64,
    /// Free height below its underside, down to a tray or cover or to what is kept in the box, mm.
    pub room: f64,
    /// Species, as in the table of coefficients or in the design's own woods.
    pub wood: String,
    /// How the board was cut.
    pub sawn: Sawn,
    /// Where its fibres run.
    pub grain: Grain,
}

/// What slides along +y by `travel`, carrying one pin a dial and the tab.
#[derive(Debug, Clone, PartialEq)]
pub struct Slider {
    /// From shut (u = 0) to free (u = travel), mm.
    pub travel: f64,
    /// Between the two guide points, along y, mm.
    pub guide_length: f64,
    /// How far each guide point can shift to either side along x, mm.
    pub guide_play: f64,
    /// Middle of the two guide points when the slider is forward, (x, y) in mm. The slider's stops
    /// are at this height: what swells is measured from here.
    pub guide_at: (f64, f64),
    /// x of the finger knob, mm.
    pub pull_at: f64,
    /// Diameter of the finger knob's shank, which runs in a slot through the plate, mm.
    pub shank: f64,
    /// Thickness, mm.
    pub thickness: f64,
    /// Clear distance from the plate's underside, which is the keeper's too, down to its upper face,
    /// mm.
    pub below: f64,
    /// The hardest pull that slider and lid must bear, N.
    pub pull: f64,
    /// Coefficient of friction in its guide.
    pub friction: f64,
    /// What it is made of.
    pub material: Material,
}

/// Diameter of a finger knob that a hand can pull, mm.
///
/// # Source
/// Common practice, no source.
const FINGER_KNOB: f64 = 22.0;
/// How far a finger knob stands over its shank at least, mm in diameter.
const OVER_SHANK: f64 = 8.0;

impl Slider {
    /// Diameter of the finger knob as it is printed, mm: it stands above the plate, at the height of
    /// the dials' knobs.
    pub fn finger_knob(&self) -> f64 {
        FINGER_KNOB.max(self.shank + OVER_SHANK)
    }
}

/// What reaches under the keeper. The slider's neck in the guide is as wide as the tab.
#[derive(Debug, Clone, PartialEq)]
pub struct Tab {
    /// x of its middle, mm.
    pub at: f64,
    /// Width along x, mm.
    pub width: f64,
    /// Overlap with the keeper at u = 0, mm.
    pub engagement: f64,
    /// The least overlap that still counts as held, mm.
    pub required_hold: f64,
}

/// The room in the box under the lid.
#[derive(Debug, Clone, PartialEq)]
pub struct Inside {
    /// Along x, mm.
    pub width: f64,
    /// Along y, mm.
    pub depth: f64,
    /// From the floor to the underside of the closed lid, mm.
    pub height: f64,
}

/// Fast to the body of the box, over the tab.
#[derive(Debug, Clone, PartialEq)]
pub struct Keeper {
    /// y of the edge that the tab has to clear, mm.
    pub edge: f64,
    /// Size along x, mm.
    pub width: f64,
    /// Size along y, mm.
    pub depth: f64,
    /// Thickness, mm.
    pub thickness: f64,
    /// Of wood like the body's, or printed.
    pub make: KeeperMake,
}

/// What the keeper is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum KeeperMake {
    /// The body's wood, its grain along x.
    #[default]
    Wood,
    /// Printed.
    Printed,
}

impl Default for Plate {
    fn default() -> Self {
        Self {
            width: 220.0,
            depth: 140.0,
            thickness: 12.0,
            rabbet: 7.0,
            room: 24.0,
            wood: "white oak".to_owned(),
            sawn: Sawn::Quarter,
            grain: Grain::AlongX,
        }
    }
}

impl Default for Slider {
    fn default() -> Self {
        Self {
            travel: 11.0,
            guide_length: 24.0,
            guide_play: 0.1,
            guide_at: (0.0, 29.0),
            pull_at: 0.0,
            shank: 8.0,
            thickness: 13.0,
            below: 0.5,
            // the pull of the toy tests of ISO 8124-1, 70 N: from memory
            pull: 70.0,
            // wood or plastic on wood: nothing published was found, 0.2 to 0.5 from memory
            friction: 0.5,
            // fingers and bar both bear the pull: solid wood has one of them across its grain
            material: Material::Plywood,
        }
    }
}

impl Default for Tab {
    fn default() -> Self {
        Self {
            at: 0.0,
            width: 40.0,
            engagement: 8.0,
            required_hold: 1.5,
        }
    }
}

impl Default for Inside {
    fn default() -> Self {
        Self {
            width: 196.0,
            depth: 116.0,
            height: 80.0,
        }
    }
}

impl Default for Keeper {
    fn default() -> Self {
        Self {
            // flush with the front, its edge beyond a side of 12 mm
            edge: 14.0,
            width: 56.0,
            depth: 14.0,
            thickness: 6.0,
            make: KeeperMake::Wood,
        }
    }
}
