//! What decides a check, in the maker's words.

use latchwright_proof::check::Contributor;

/// What decides a check.
pub const fn contributor(contributor: Contributor) -> &'static str {
    match contributor {
        Contributor::PinPlace => "place of the pin",
        Contributor::BorePlace => "place of the bore",
        Contributor::KeeperPlace => "place of the keeper",
        Contributor::Print => "the print",
        Contributor::FilmSpread => "uneven coats",
        Contributor::GuidePlay => "play in the guide",
        Contributor::ShaftPlay => "play of the shaft",
        Contributor::Season => "season",
        Contributor::Reading => "reading of the pointer",
        Contributor::Backlash => "backlash",
        Contributor::Thickness => "thicknesses",
        Contributor::Gap => "gap",
        Contributor::LeadIn => "the lead-in",
        Contributor::Engagement => "engagement",
        Contributor::Offset => "offset",
        Contributor::Creep => "creep",
        Contributor::Clearance => "clearance",
        Contributor::Height => "length of the pin",
        Contributor::Disc => "thickness of the disc",
        Contributor::KnobDiameter => "knob diameter",
        Contributor::PullAside => "pull beside the guide",
        Contributor::Shank => "half the shank",
        Contributor::Rabbet => "rabbet",
        Contributor::Swing => "swing",
        Contributor::Bending => "bending",
        Contributor::Shear => "shear",
        Contributor::Positions => "positions",
        Contributor::Sides => "sides",
        Contributor::MarksThatHold => "marks that hold",
        Contributor::SettingsThatOpen => "settings that open",
        Contributor::SettingsUnsure => "settings unsure",
        Contributor::SettingsOnPaper => "settings on paper",
        Contributor::ToldApart => "told apart",
        Contributor::MostPositions => "most positions",
        Contributor::PositionsNow => "positions now",
        Contributor::Tries => "tries",
    }
}
