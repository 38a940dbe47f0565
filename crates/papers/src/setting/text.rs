//! What the sheet says, as plain words and figures, so that a test can follow it.

use latchwright_model::{Design, Dial};

use super::brief::Brief;

/// In which seat one disc's post stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DiscSeat {
    /// Which dial, from 0.
    pub dial: usize,
    /// Its name, `Dial 1`.
    pub name: String,
    /// The label it is to open at.
    pub label: String,
    /// Seats from the one at which the true slot points straight to the front, clockwise as seen from the
    /// back, the pointer at the mark nearest the hinge.
    pub clockwise: u32,
    /// Seats of the star.
    pub seats: u32,
    /// The same in words, the shorter way round.
    pub words: String,
}

/// All that the sheet says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SettingText {
    /// What this sheet gives away.
    pub warning: Vec<String>,
    /// How the drawings are read.
    pub reading: Vec<String>,
    /// A disc a dial.
    pub dials: Vec<DiscSeat>,
    /// How to change the combination, in order.
    pub steps: Vec<String>,
    /// Keys that do not do what they should.
    pub notices: Vec<String>,
    /// How to get in when the combination is forgotten, the gentlest way first.
    pub forgotten: Vec<String>,
    /// What the proof says, in brief.
    pub proof: Vec<String>,
    /// The design in numbers: what, and how much.
    pub numbers: Vec<(String, String)>,
}

impl DiscSeat {
    /// A disc a dial for the combination of `design`; a digit that a dial lacks is taken round.
    pub fn all(design: &Design) -> Vec<Self> {
        let dials = design.dials.iter().enumerate();
        dials
            .map(|(index, dial)| seat(index, dial, design.digit(index)))
            .collect()
    }

    /// What is wrong with keys: a post whose flats do not divide the marks has seats between them.
    pub fn notices(design: &Design) -> Vec<String> {
        let dials = design.dials.iter().zip(1..);
        dials
            .filter(|(dial, _)| dial.key.sides < 3 || !dial.positions.is_multiple_of(dial.key.sides))
            .map(|(dial, number)| {
                format!(
                    "Dial {number} has {} marks on a post of {} flats: seats fall between marks. Make the marks a multiple of \
                     the flats before you rely on this sheet.",
                    dial.positions, dial.key.sides
                )
            })
            .collect()
    }
}

impl SettingText {
    /// The words for `design`; a digit that a dial lacks is taken round.
    pub fn of(design: &Design) -> Self {
        let brief = Brief::of(design);
        Self {
            warning: owned(&[
                "This sheet tells the combination. Keep it apart from the box and from its card, and destroy sheets that \
                 no longer hold.",
                "The latch keeps secrets, not valuables.",
            ]),
            reading: owned(&[
                "Seen from the back of the plate, hinge away from you and front towards you: everything is mirrored.",
                "Every pointer stands at the mark nearest the hinge. The filled slot is the true one: put the disc in so \
                 that it points at the label in heavy type.",
                "Another label is set in the same way: round each disc stands where the true slot points for it. Post and \
                 star lie behind the disc and are drawn dashed.",
            ]),
            dials: DiscSeat::all(design),
            steps: owned(&[
                "Open the box at the combination that is set now, and keep the lid open and held, so that it cannot fall.",
                "With the lid open push the slider forward: the pins leave the discs, and the dials turn free.",
                "Turn every pointer to the mark nearest the hinge.",
                "Take the screw out of one disc and hold its knob. Draw the disc down until its post is out of the knob's \
                 star, turn it until the true slot points at the new label as drawn here, and push the post home in the \
                 seat there. One disc at a time.",
                "Set the screw again: a press fit is never the only thing that keeps a disc. Count the small parts, and \
                 keep them from children.",
                "Check with the lid still open: turn every dial to its new label, and pull the slider back. It must go all \
                 the way, without force.",
                "Push it forward, turn one dial by one mark either way, and pull: it must stop. Do so with each dial, unless \
                 the proof says that a neighbour opens as well.",
                "Only then shut the lid. Change the combination in the design, and print this sheet, and the card if it \
                 tells it, anew.",
            ]),
            notices: DiscSeat::notices(design),
            forgotten: brief.forgotten,
            proof: brief.proof,
            numbers: brief.numbers,
        }
    }
}

fn owned(texts: &[&str]) -> Vec<String> {
    texts.iter().map(|text| (*text).to_owned()).collect()
}

fn seat(index: usize, dial: &Dial, digit: u32) -> DiscSeat {
    let seats = dial.positions.max(1);
    let clockwise = digit % seats;
    let (count, way) = if clockwise * 2 <= seats {
        (clockwise, "clockwise")
    } else {
        (seats - clockwise, "anticlockwise")
    };
    let words = match count {
        0 => "straight to the front".to_owned(),
        1 => format!("1 of {seats} seats {way} from the front"),
        count => format!("{count} of {seats} seats {way} from the front"),
    };
    DiscSeat {
        dial: index,
        name: format!("Dial {}", index + 1),
        label: dial.label(clockwise),
        clockwise,
        seats,
        words,
    }
}
