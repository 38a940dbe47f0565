//! What is measured on a part, as a value; its name is words made from it.

/// What is measured. Dials count from 0 here and from 1 in words.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Feature {
    /// The disc across.
    Disc,
    /// The disc's thickness.
    DiscThickness,
    /// The disc's shaft across.
    Shaft,
    /// The shaft's length.
    ShaftLength,
    /// The slot at this step.
    Slot(i64),
    /// The hole for the screw through disc and knob.
    JoiningScrewHole,
    /// The head of the same screw.
    JoiningScrewHead,
    /// The hole into which the same screw, or that of the finger knob, cuts its thread.
    ScrewPilot,
    /// The key's post across its flats.
    Post,
    /// The key's star across its flats.
    Star,
    /// Clearance of the post in the star on each side.
    PostInStarPerSide,
    /// Clearance of the post in the star in all.
    PostInStarTotal,
    /// The knob across.
    Knob,
    /// The knob's height.
    KnobHeight,
    /// The ring's hole.
    RingInside,
    /// The ring across.
    RingOutside,
    /// The ring's thickness.
    RingThickness,
    /// The washer's hole.
    WasherInside,
    /// The washer across.
    WasherOutside,
    /// A pin that is a part of its own.
    Pin,
    /// The pin of this dial on a slider or strip.
    PinOf(usize),
    /// A pin's length.
    PinLength,
    /// A standing pin's height.
    PinHeight,
    /// Thickness of the finger that a pin stands on.
    FingerThickness,
    /// The socket that a pin is set into.
    PinSocket,
    /// The slider's thickness.
    SliderThickness,
    /// A strip's height at its pins.
    StripHeight,
    /// The hole for the finger knob's shank.
    ShankHole,
    /// The hole for a screw.
    ScrewHole,
    /// The head of a screw.
    ScrewHead,
    /// The finger knob's shank across.
    Shank,
    /// The shank's length.
    ShankLength,
    /// The finger knob across.
    FingerKnob,
    /// The finger knob's height.
    FingerKnobHeight,
    /// The keeper's width.
    KeeperWidth,
    /// The keeper's depth.
    KeeperDepth,
    /// The keeper's thickness.
    KeeperThickness,
    /// The jig's guide for a bit.
    Guide,
    /// The gauge's hole of this diameter, mm.
    GaugeHole(f64),
    /// The gauge's width above the bed.
    BarWidth,
    /// The gauge's width at the bed.
    BarWidthAtBed,
    /// The diagonal of the gauge's square hole.
    SquareDiagonal,
}

impl Feature {
    /// What people call it; a hole of the gauge by its diameter in mm, as it is printed.
    pub fn name(self) -> String {
        match self {
            Self::Slot(step) => return format!("slot at step {step}"),
            Self::PinOf(dial) => return format!("pin {}", dial + 1),
            Self::GaugeHole(diameter) => return format!("hole of {diameter:.2}"),
            Self::Disc => "disc",
            Self::DiscThickness => "disc's thickness",
            Self::Shaft => "shaft",
            Self::ShaftLength => "shaft's length",
            Self::JoiningScrewHole => "hole for the screw",
            Self::JoiningScrewHead => "head of the screw",
            Self::ScrewPilot => "pilot for the screw",
            Self::Post => "post across its flats",
            Self::Star => "star across its flats",
            Self::PostInStarPerSide => "post in star, per side",
            Self::PostInStarTotal => "post in star, total",
            Self::Knob => "knob",
            Self::KnobHeight => "knob's height",
            Self::RingInside => "ring inside",
            Self::RingOutside => "ring outside",
            Self::RingThickness => "ring's thickness",
            Self::WasherInside => "washer inside",
            Self::WasherOutside => "washer outside",
            Self::Pin => "pin",
            Self::PinLength => "pin's length",
            Self::PinHeight => "pin's height",
            Self::FingerThickness => "finger's thickness",
            Self::PinSocket => "socket for a pin",
            Self::SliderThickness => "slider's thickness",
            Self::StripHeight => "strip's height at its pins",
            Self::ShankHole => "hole for the finger knob's shank",
            Self::ScrewHole => "hole for a screw",
            Self::ScrewHead => "head of a screw",
            Self::Shank => "shank",
            Self::ShankLength => "shank's length",
            Self::FingerKnob => "finger knob",
            Self::FingerKnobHeight => "finger knob's height",
            Self::KeeperWidth => "keeper's width",
            Self::KeeperDepth => "keeper's depth",
            Self::KeeperThickness => "keeper's thickness",
            Self::Guide => "guide",
            Self::BarWidth => "bar's width",
            Self::BarWidthAtBed => "bar's width at the bed",
            Self::SquareDiagonal => "square's diagonal",
        }
        .to_owned()
    }
}
