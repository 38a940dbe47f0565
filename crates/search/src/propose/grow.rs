//! What grows for each margin that is short.

use super::margin::Margin;
use latchwright_model::change::{DialSize, LatchSize, Size, SlotSize};
use latchwright_proof::check::CheckKind;

/// What grows where something is short.
pub(super) enum Grow {
    Gap,
    /// By so many times what is short.
    Width(f64),
    Depth,
    Engagement,
    Travel,
    Spacing,
    Play,
    Tab,
    /// The same of the guide, which gets shorter.
    ShorterGuide(f64),
    SliderBelow,
    DiscBelow,
    PinHeight,
    /// What stands free of it, in a slider that is thicker by as much.
    PinFree,
    Rabbet,
}

/// What mends a margin, and the size that must not be held for it.
pub(super) struct Mends {
    pub grow: Grow,
    pub size: Option<Size>,
}

/// What is raised for this margin; `None` where nothing that is raised helps.
pub(super) fn mends(margin: &Margin) -> Option<Mends> {
    let dial = margin.about.dial().unwrap_or(0);
    let latch = |size| Some(Size::Latch(size));
    let slot = |size| Some(Size::Slot(dial, 0, size));
    let (grow, size) = match margin.kind {
        CheckKind::AtRest => (Grow::Gap, Some(Size::Dial(dial, DialSize::Gap))),
        CheckKind::Enters => (Grow::Width(2.0), slot(SlotSize::Width)),
        CheckKind::Fits => (Grow::Width(1.0), slot(SlotSize::Width)),
        CheckKind::Deep | CheckKind::SlotWall => (Grow::Depth, slot(SlotSize::Depth)),
        CheckKind::StaysHeld | CheckKind::HeldAtRest => {
            (Grow::Engagement, latch(LatchSize::Engagement))
        }
        CheckKind::Free | CheckKind::SwingsClear | CheckKind::Captive => {
            (Grow::Travel, latch(LatchSize::Travel))
        }
        CheckKind::DiscToDisc
        | CheckKind::DiscToPin
        | CheckKind::FingerToFinger
        | CheckKind::KnobToKnob
        | CheckKind::BoreToBore => (Grow::Spacing, None),
        CheckKind::Guide => (Grow::Play, None),
        CheckKind::TabStrength => (Grow::Tab, latch(LatchSize::TabWidth)),
        CheckKind::StripsToBar => (Grow::ShorterGuide(1.0), None),
        // the finger knob goes half as far as the guide's end
        CheckKind::FingerKnobSeat
        | CheckKind::FingerKnobRoom
        | CheckKind::FingerKnobWay
        | CheckKind::BoreToGuideSlot => (Grow::ShorterGuide(2.0), None),
        CheckKind::SliderToPlate | CheckKind::TabToKeeper => (Grow::SliderBelow, None),
        CheckKind::DiscToPlate => (Grow::DiscBelow, None),
        CheckKind::PinMeetsDisc => (Grow::PinHeight, None),
        CheckKind::DiscToFinger => (Grow::PinFree, None),
        CheckKind::LidCloses => (Grow::Rabbet, None),
        CheckKind::NextMark
        | CheckKind::KeyBite
        | CheckKind::SlotToStar
        | CheckKind::PinStrength
        | CheckKind::BoreToEdge
        | CheckKind::GuideSlotToKeeper
        | CheckKind::BarRoom
        | CheckKind::StripsToKeeper
        | CheckKind::Racking
        | CheckKind::RoomBelow
        | CheckKind::RabbetRoof
        // not weighed by the plain sums
        | CheckKind::LetsIn
        | CheckKind::KeySeats
        | CheckKind::IdleDial
        | CheckKind::TwinOpenings
        | CheckKind::Undecided
        | CheckKind::Window
        | CheckKind::ToldApart
        | CheckKind::Workmanship
        | CheckKind::Shaken
        | CheckKind::ByFeel
        | CheckKind::EnclosedSpace
        | CheckKind::SmallParts => return None,
    };
    Some(Mends { grow, size })
}
