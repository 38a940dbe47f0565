//! What is checked: one name for every check, asked by the proof and by the search alike.

use latchwright_model::Unit;

macro_rules! kinds {
    ($($(#[$doc:meta])+ $kind:ident = $code:literal, $unit:ident;)+) => {
        /// A check, or a part of one that the search weighs by itself.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum CheckKind {
            $($(#[$doc])+ $kind,)+
        }

        impl CheckKind {
            /// Every kind.
            pub const ALL: &[Self] = &[$(Self::$kind),+];

            /// Its stable name for programs, such as `at-rest`.
            pub const fn code(self) -> &'static str {
                match self {
                    $(Self::$kind => $code,)+
                }
            }

            /// The unit of its figures.
            pub const fn unit(self) -> Unit {
                match self {
                    $(Self::$kind => Unit::$unit,)+
                }
            }
        }
    };
}

kinds! {
    /// A dial turns free of its pin with the slider forward.
    AtRest = "at-rest", Millimetre;
    /// The slot at the digit lets its pin in for the whole travel.
    LetsIn = "lets-in", Millimetre;
    /// Part of [`Self::LetsIn`]: the pin finds its slot.
    Enters = "enters", Millimetre;
    /// Part of [`Self::LetsIn`]: the slot is wider than the pin.
    Fits = "fits", Millimetre;
    /// Part of [`Self::LetsIn`]: the slot is deep enough.
    Deep = "deep", Millimetre;
    /// The true slot's wall is longer than its lead-in: a fault of the design where it is not.
    SlotWall = "slot-wall", Millimetre;
    /// The pin keeps its dial from turning while the box is open.
    Captive = "captive", Millimetre;
    /// The tab stays held when a dial stops the slider.
    StaysHeld = "stays-held", Millimetre;
    /// Part of [`Self::Undecided`]: the next mark is clear of the mouth.
    NextMark = "next-mark", Degree;
    /// The tab clears the keeper when the slider is back.
    Free = "free", Millimetre;
    /// The tab is under the keeper when the slider is forward.
    HeldAtRest = "held-at-rest", Millimetre;
    /// The slider keeps its play in the guide all year.
    Guide = "guide", Millimetre;
    /// Two discs keep apart.
    DiscToDisc = "disc-to-disc", Millimetre;
    /// Fingers get between two knobs.
    KnobToKnob = "knob-to-knob", Millimetre;
    /// Wood between two bores.
    BoreToBore = "bore-to-bore", Millimetre;
    /// A disc stays clear of another dial's pin.
    DiscToPin = "disc-to-pin", Millimetre;
    /// Wood between a bore and the plate's edge.
    BoreToEdge = "bore-to-edge", Millimetre;
    /// Wood between a bore and the finger knob's slot.
    BoreToGuideSlot = "bore-to-guide-slot", Millimetre;
    /// Fingers get between the finger knob and a dial's knob.
    FingerKnobRoom = "finger-knob-room", Millimetre;
    /// The finger knob goes clear of a dial's knob all the way.
    FingerKnobWay = "finger-knob-way", Millimetre;
    /// Wall between slot and star in a disc.
    SlotToStar = "slot-to-star", Millimetre;
    /// The fingers run below the discs.
    DiscToFinger = "disc-to-finger", Millimetre;
    /// Two fingers stand side by side.
    FingerToFinger = "finger-to-finger", Millimetre;
    /// The slider's bar has room between the discs and the front.
    BarRoom = "bar-room", Millimetre;
    /// The finger knob stands on the slider's neck or bar.
    FingerKnobSeat = "finger-knob-seat", Millimetre;
    /// Wood between the finger knob's slot and the keeper's rabbet.
    GuideSlotToKeeper = "guide-slot-to-keeper", Millimetre;
    /// The tab clears the keeper while the lid swings up.
    SwingsClear = "swings-clear", Millimetre;
    /// The guide strips end before the slider's bar.
    StripsToBar = "strips-to-bar", Millimetre;
    /// The guide strips begin behind the keeper's rabbet.
    StripsToKeeper = "strips-to-keeper", Millimetre;
    /// A disc seats on its marks.
    KeySeats = "key-seats", Count;
    /// A post cannot spin in its star.
    KeyBite = "key-bite", Millimetre;
    /// A dial holds at some mark.
    IdleDial = "idle-dial", Count;
    /// Exactly one setting opens.
    TwinOpenings = "twin-openings", Count;
    /// Every setting can be promised one way or the other.
    Undecided = "undecided", Count;
    /// A dial lets its pin in while its pointer is off the mark.
    Window = "window", Degree;
    /// How many settings can really be told apart.
    ToldApart = "told-apart", Count;
    /// The most positions that this workmanship allows.
    Workmanship = "workmanship", Count;
    /// A pin meets two thirds of its disc.
    PinMeetsDisc = "pin-meets-disc", Millimetre;
    /// A disc turns clear of the plate.
    DiscToPlate = "disc-to-plate", Millimetre;
    /// The slider runs clear of the plate.
    SliderToPlate = "slider-to-plate", Millimetre;
    /// The tab slips under the keeper without rubbing.
    TabToKeeper = "tab-to-keeper", Millimetre;
    /// The latch is clear of what lies under the lid.
    RoomBelow = "room-below", Millimetre;
    /// The keeper has room in its rabbet, so that the lid closes.
    LidCloses = "lid-closes", Millimetre;
    /// Wood is left over the rabbet.
    RabbetRoof = "rabbet-roof", Millimetre;
    /// A pin bears the pull.
    PinStrength = "pin-strength", Megapascal;
    /// The tab bears the pull.
    TabStrength = "tab-strength", Megapascal;
    /// The guide is long enough that the slider does not jam.
    Racking = "racking", Millimetre;
    /// The locked box stays shut when it is shaken or knocked.
    Shaken = "shaken", Millimetre;
    /// How many tries an attentive hand needs.
    ByFeel = "by-feel", Count;
    /// No child can be shut in.
    EnclosedSpace = "enclosed-space", Count;
    /// Small parts suit the age of the youngest.
    SmallParts = "small-parts", Count;
}

impl CheckKind {
    /// Whether checks of this kind are told only where they are tightest, whichever dial that is.
    pub const fn told_once(self) -> bool {
        matches!(
            self,
            Self::DiscToDisc
                | Self::KnobToKnob
                | Self::BoreToBore
                | Self::DiscToPin
                | Self::BoreToEdge
                | Self::BoreToGuideSlot
                | Self::FingerKnobRoom
                | Self::FingerKnobWay
                | Self::SlotToStar
                | Self::DiscToFinger
                | Self::FingerToFinger
        )
    }
}
