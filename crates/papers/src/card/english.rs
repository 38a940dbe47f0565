//! The card in English.

use latchwright_solver::model::Design;

use super::text::{Action, CardText, DialTurn, Step};

/// The card's text in English.
pub(super) fn card_text(design: &Design) -> CardText {
    let card = &design.card;
    let name = card.recipient.trim();
    let (salutation, heading) = match name {
        "" => (String::new(), "A box with a secret".to_owned()),
        name => ("For".to_owned(), one_line(name)),
    };
    CardText {
        language: "en",
        title: title(design),
        salutation,
        heading,
        greeting: lines(&card.greeting),
        signature: one_line(&card.from),
        hinge: "hinge",
        lid_described: lid_described(design),
        open_heading: "To open",
        open: open(design),
        close_heading: "To close",
        close: close(design),
        stuck_heading: "If it sticks",
        stuck: vec![
            "Never force it. Slide the knob towards you, set each pointer again, right on its mark, and try once more.",
            "Pointers turn only while the knob is fully towards you.",
            "Damp air makes wood stiff: give the box some days in a dry room.",
        ],
        cautions_heading: "Please mind",
        cautions: vec![
            "Keep away from small children: it has small parts.",
            "Mind your fingers under the lid.",
            "It keeps a secret, not valuables.",
        ],
    }
}

fn title(design: &Design) -> String {
    let box_title = one_line(&design.title);
    match (design.card.recipient.trim(), box_title.as_str()) {
        ("", "") => "How to open the box".to_owned(),
        ("", of) => format!("{of}: how to open it"),
        (name, "") => format!("For {}: how to open the box", one_line(name)),
        (name, of) => format!("For {}: {of}, and how to open it", one_line(name)),
    }
}

fn open(design: &Design) -> Vec<Step> {
    let mut steps = Vec::new();
    if design.dials.is_empty() {
        steps.push(step(
            "Slide the finger knob towards you until it stops.",
            vec![Action::SlideForward],
        ));
    } else {
        steps.push(step(
            "Slide the finger knob towards you until it stops. Point each dial at the hinge.",
            vec![Action::SlideForward, Action::PointAtHinge],
        ));
        steps.push(set_dials(design));
    }
    steps.push(step(
        "Slide the finger knob towards the hinge until it stops.",
        vec![Action::SlideBack],
    ));
    steps.push(step("Lift the lid by its front edge.", vec![Action::Lift]));
    steps
}

fn set_dials(design: &Design) -> Step {
    if design.card.show_combination {
        let turns = design.dials.iter().enumerate().map(|(index, dial)| {
            let (clockwise, marks) = DialTurn::shortest(design, index, dial.positions);
            Action::Turn(DialTurn {
                dial: index,
                clockwise,
                marks,
                positions: dial.positions,
                to_label: one_line(&dial.label(design.digit(index))),
                name: match marks {
                    0 => format!("Dial {} at", index + 1),
                    _ => format!("Dial {} to", index + 1),
                },
                words: turn_in_words(clockwise, marks),
            })
        });
        let from = if design.dials.len() == 1 {
            "Turn it"
        } else {
            "From there turn each dial"
        };
        return step(&format!("{from} as drawn:"), turns.collect());
    }
    let keeper = match one_line(&design.card.from) {
        name if name.is_empty() => "the maker".to_owned(),
        name => name,
    };
    let text = match design.dials.len() {
        1 => format!("Turn it to its secret mark. The mark is not on this card: ask {keeper}."),
        _ => format!(
            "Turn each dial to its secret mark. The marks are not on this card: ask {keeper}."
        ),
    };
    step(&text, Vec::new())
}

fn turn_in_words(clockwise: bool, marks: u32) -> Vec<String> {
    let way = if clockwise {
        "clockwise"
    } else {
        "anticlockwise"
    };
    match marks {
        0 => vec!["stays there".to_owned()],
        1 => vec![way.to_owned(), "1 mark".to_owned()],
        _ => vec![way.to_owned(), format!("{marks} marks")],
    }
}

fn close(design: &Design) -> Vec<Step> {
    let mut steps = vec![
        step(
            "Leave the knob towards the hinge and lower the lid.",
            vec![Action::SlideBack, Action::Lower],
        ),
        step(
            "Slide the knob towards you until it stops.",
            vec![Action::SlideForward],
        ),
    ];
    if !design.dials.is_empty() {
        let text = if design.dials.len() == 1 {
            "Turn the dial away from its mark."
        } else {
            "Turn every dial away from its mark."
        };
        steps.push(step(text, vec![Action::TurnAway]));
    }
    steps
}

fn lid_described(design: &Design) -> String {
    let dials = match design.dials.len() {
        0 => "no dial".to_owned(),
        1 => "1 dial".to_owned(),
        count => format!("{count} dials"),
    };
    let text = format!("The lid from above, hinge at the top, with {dials} and a finger knob.");
    if design.card.show_combination && !design.dials.is_empty() {
        let labels = design
            .dials
            .iter()
            .enumerate()
            .map(|(index, dial)| one_line(&dial.label(design.digit(index))));
        let setting: Vec<String> = labels.collect();
        return format!("{text} The dials stand at {}.", setting.join(", "));
    }
    text
}

fn step(text: &str, actions: Vec<Action>) -> Step {
    Step {
        text: text.to_owned(),
        actions,
    }
}

/// The maker's words a line each, without blank lines at either end.
fn lines(words: &str) -> Vec<String> {
    words.trim().lines().map(one_line).collect()
}

/// White space of any kind and length as one blank.
fn one_line(words: &str) -> String {
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}
