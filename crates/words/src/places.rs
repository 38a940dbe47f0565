//! The parts that faults are about.

use latchwright_model::Place;

/// The part, without capital: "dial 1, slot 2".
pub fn place(place: Place) -> String {
    let words = match place {
        Place::Design => "design",
        Place::Plate => "plate",
        Place::Slider => "slider",
        Place::Tab => "tab",
        Place::Keeper => "keeper",
        Place::Inside => "inside",
        Place::Body => "body",
        Place::Dial(dial) => return format!("dial {}", dial + 1),
        Place::Slot(dial, slot) => return format!("dial {}, slot {}", dial + 1, slot + 1),
        Place::Combination => "combination",
        Place::Workmanship => "workmanship",
        Place::Season => "season",
        Place::Bench => "bench",
        Place::Card => "card",
    };
    words.to_owned()
}
