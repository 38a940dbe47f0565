//! What decides a check, in the maker's words.

/// What decides a check, in the maker's words; a name that is not known here is shown as it is.
pub fn contributor(name: &str) -> String {
    let words = match name {
        "pin_place" => "place of the pin",
        "bore_place" => "place of the bore",
        "keeper_place" => "place of the keeper",
        "shaft_play" => "play of the shaft",
        "guide_play" => "play in the guide",
        "thickness" => "thicknesses",
        "height" => "length of the pin",
        "disc" => "thickness of the disc",
        "pull_aside" => "pull beside the guide",
        "shank" => "half the shank",
        "film_spread" => "uneven coats",
        "print" => "the print",
        "lead_in" => "the lead-in",
        "reading" => "reading of the pointer",
        other => return other.replace('_', " "),
    };
    words.to_owned()
}
