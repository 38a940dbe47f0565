//! What eats a figure: errors, plays, coats, season, and sizes of the design that decide it.

use latchwright_assembly::bounds::Aside;

macro_rules! contributors {
    ($($(#[$doc:meta])+ $name:ident = $code:literal;)+) => {
        /// One thing that decides a check, or explains the spread of a figure over many boxes.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Contributor {
            $($(#[$doc])+ $name,)+
        }

        impl Contributor {
            /// Every contributor.
            pub const ALL: &[Self] = &[$(Self::$name),+];

            /// Its stable name for programs.
            pub const fn code(self) -> &'static str {
                match self {
                    $(Self::$name => $code,)+
                }
            }
        }
    };
}

// What differs from box to box comes first, so that `OFF` can be counted through.
contributors! {
    /// Places of the pins.
    PinPlace = "pin_place";
    /// Places of the bores.
    BorePlace = "bore_place";
    /// Place of the keeper.
    KeeperPlace = "keeper_place";
    /// Printed sizes.
    Print = "print";
    /// Uneven coats.
    FilmSpread = "film_spread";
    /// Play of the slider in its guide, and the turn that it allows.
    GuidePlay = "guide_play";
    /// Play of the shafts in their bores.
    ShaftPlay = "shaft_play";
    /// The air.
    Season = "season";
    /// Reading of the pointer.
    Reading = "reading";
    /// Backlash of the key.
    Backlash = "backlash";
    /// Thicknesses of wood.
    Thickness = "thickness";
    /// Clear distance between pin and rim as drawn.
    Gap = "gap";
    /// The lead-in as drawn.
    LeadIn = "lead_in";
    /// Overlap of tab and keeper as drawn.
    Engagement = "engagement";
    /// How far the pin stands beside its dial's middle, as drawn.
    Offset = "offset";
    /// How far the slider creeps until it is stopped.
    Creep = "creep";
    /// Clearance of the key.
    Clearance = "clearance";
    /// Length of the pin.
    Height = "height";
    /// Thickness of the disc.
    Disc = "disc";
    /// Diameters of knobs.
    KnobDiameter = "knob diameter";
    /// Pull beside the guide's line.
    PullAside = "pull_aside";
    /// Half the finger knob's shank.
    Shank = "shank";
    /// Air round the keeper in its rabbet.
    Rabbet = "rabbet";
    /// How far forward something comes as the lid swings up.
    Swing = "swing";
    /// Stress in bending.
    Bending = "bending";
    /// Stress in shear.
    Shear = "shear";
    /// Positions of the dial.
    Positions = "positions";
    /// Sides of the key's post.
    Sides = "sides";
    /// Marks at which a dial holds.
    MarksThatHold = "marks that hold";
    /// Settings that open.
    SettingsThatOpen = "settings that open";
    /// Settings of which nothing can be promised.
    SettingsUnsure = "settings unsure";
    /// Settings on paper.
    SettingsOnPaper = "settings on paper";
    /// Settings that can be told apart.
    ToldApart = "told apart";
    /// The most positions that the workmanship allows.
    MostPositions = "most positions";
    /// Positions as they are.
    PositionsNow = "positions now";
    /// Tries that an attentive hand needs.
    Tries = "tries";
}

impl Contributor {
    /// What is off in a box, and unknown before it is built.
    pub const OFF: [Self; 10] = [
        Self::PinPlace,
        Self::BorePlace,
        Self::KeeperPlace,
        Self::Print,
        Self::FilmSpread,
        Self::GuidePlay,
        Self::ShaftPlay,
        Self::Season,
        Self::Reading,
        Self::Backlash,
    ];

    /// A size of the design that decides a figure beside what can be off.
    pub(super) const fn is_a_size(self) -> bool {
        matches!(
            self,
            Self::Gap | Self::LeadIn | Self::Engagement | Self::Offset
        )
    }
}

/// What puts a pin aside of its dial, by name.
pub(super) fn aside(parts: &Aside) -> [(Contributor, f64); 6] {
    [
        (Contributor::PinPlace, parts.pin_place),
        (Contributor::BorePlace, parts.bore_place),
        (Contributor::ShaftPlay, parts.shaft_play),
        (Contributor::GuidePlay, parts.guide),
        (Contributor::Season, parts.season),
        (Contributor::Offset, parts.offset),
    ]
}
