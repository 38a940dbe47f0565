//! Setting the combination, for the maker: on which seat each disc goes, and how to change that.

mod brief;
mod text;

use latchwright_drawing::disc_from_back;
use latchwright_model::{Design, Dial};
use serde_json::{Value, json};

pub use text::{DiscSeat, SettingText};

use crate::bench::{BenchPaper, PaperOptions};
use crate::error::PaperError;
use crate::fonts::Fonts;
use crate::sheets::Sheets;

const TEMPLATE: &str = include_str!("../../../../assets/setting/setting.typ");
const HEADING: &str = "Setting the combination";

/// Setting the combination as PDF; it tells the combination.
///
/// # Errors
/// A letter that no font can draw, a name too long for a list, more than twelve dials, a combination
/// with a mark that its dial lacks, no such date.
pub fn setting_pdf(
    design: &Design,
    fonts: &Fonts,
    options: &PaperOptions,
) -> Result<Vec<u8>, PaperError> {
    setting_sheets(design, fonts, options)?.pdf()
}

/// Setting the combination laid out: one page unless there are many dials, to be saved, looked at, or both.
///
/// # Errors
/// Those of [`setting_pdf`].
pub fn setting_sheets(
    design: &Design,
    fonts: &Fonts,
    options: &PaperOptions,
) -> Result<Sheets, PaperError> {
    check(design)?;
    let text = SettingText::of(design);
    let (mut dials, mut drawings): (Vec<Value>, Vec<_>) = (Vec::new(), Vec::new());
    for (seat, dial) in as_seen_from_the_back(&text.dials, design) {
        let file = format!("disc-{}.svg", seat.dial + 1);
        drawings.push((file.clone(), disc_from_back(dial, seat.clockwise)));
        dials.push(json!({
            "file": file,
            "name": seat.name,
            "label": seat.label,
            "words": seat.words,
            "alt": format!("{} from the back, its pointer at the hinge, the true slot {}", seat.name, seat.words),
        }));
    }
    let paper = BenchPaper {
        heading: HEADING,
        template: TEMPLATE,
        data: json!({
            "warning": text.warning,
            "reading": text.reading,
            "dials": dials,
            "steps": text.steps,
            "notices": text.notices,
            "forgotten": text.forgotten,
            "proof": text.proof,
            "numbers": text.numbers,
        }),
        drawings,
    };
    paper.lay_out(design, fonts, options)
}

/// The dials as they lie when the plate is seen from the back, hinge away: from the hinge to the front in rows of a
/// centimetre, and right is left.
fn as_seen_from_the_back<'a>(
    seats: &'a [DiscSeat],
    design: &'a Design,
) -> Vec<(&'a DiscSeat, &'a Dial)> {
    let mut all: Vec<(&DiscSeat, &Dial)> = seats.iter().zip(&design.dials).collect();
    let place = |dial: &Dial| (-(dial.centre.1 / 10.0).round(), -dial.centre.0);
    all.sort_by(|(_, one), (_, other)| {
        let (one, other) = (place(one), place(other));
        one.0.total_cmp(&other.0).then(one.1.total_cmp(&other.1))
    });
    all
}

/// Refuses a combination that its dials do not have.
fn check(design: &Design) -> Result<(), PaperError> {
    let refuse = |reason| {
        Err(PaperError::Refused {
            paper: HEADING,
            reason,
        })
    };
    for (index, dial) in design.dials.iter().enumerate() {
        let number = index + 1;
        if !(2..=360).contains(&dial.positions) {
            let marks = dial.positions;
            return refuse(format!("dial {number} has {marks} marks; give it 2 to 360"));
        }
        let mark = design.digit(index);
        if mark >= dial.positions {
            return refuse(format!(
                "the combination sets dial {number} to mark {mark}, but its last mark is {}; choose one it has",
                dial.positions - 1
            ));
        }
    }
    Ok(())
}
