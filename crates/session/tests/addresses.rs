//! Every number of a design file has an address, and so can be told and changed.

use latchwright_model::Size;
use latchwright_model::{Board, Design, LidKind, OwnWood};
use latchwright_session::format::write;

/// A value that no field of the usual box has.
const NEW: f64 = 237.0;

#[test]
fn every_number_of_a_file_has_an_address() {
    let mut design = Design {
        own_woods: vec![OwnWood::default()],
        ..Design::default()
    };
    design.body.lid = LidKind::Band { height: 20.0 };
    design.bench.boards = vec![Board::default()];
    let mut sizes = Size::all(&design);
    sizes.extend(Size::beside(&design));
    for size in sizes {
        assert!(size.set(&mut design, NEW), "{size:?}");
    }
    let text = write(&design).expect("numbers that can be written");
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
    assert_eq!(unreached, ["format"]);
}
