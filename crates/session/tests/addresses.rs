//! Every number of a design file that somebody builds can be reached by a change of the design.

use latchwright_session::format::write;
use latchwright_solver::Size;
use latchwright_solver::model::Design;

/// A value that no field of the usual box has.
const NEW: f64 = 237.0;

/// The text without the part that begins with this line, up to its closing bracket.
fn without(text: &str, first: &str) -> String {
    let (before, rest) = text.split_once(first).expect("the part is there");
    let (_, after) = rest.split_once("\n    ),\n").expect("the part ends");
    format!("{before}{after}")
}

#[test]
fn every_number_of_a_file_has_an_address_but_for_air_and_age() {
    let mut design = Design::default();
    for size in Size::all(&Design::default()) {
        assert!(size.set(&mut design, NEW), "{}", size.name());
    }
    // body and bench take no part in the proof, so nothing in them mends it
    let text = write(&design).expect("numbers that can be written");
    let text = without(&without(&text, "    body: (\n"), "    bench: (\n");
    let mut field = "";
    let mut unreached = Vec::new();
    for word in text.split(|letter: char| letter.is_whitespace() || "(),:[]".contains(letter)) {
        match word.parse::<f64>() {
            Ok(number) if number == NEW => {}
            Ok(_) => unreached.push(field),
            Err(_) if word.is_empty() => {}
            Err(_) => field = word,
        }
    }
    unreached.sort_unstable();
    unreached.dedup();
    // the air and the age of the youngest are as they are: no change of the design mends them
    assert_eq!(unreached, ["celsius", "format", "humidity", "youngest"]);
}
