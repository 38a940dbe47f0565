//! A page of help for each stage, in the maker's words: what it is for, what to do, what the words mean.

use egui::{Grid, Key, RichText, ScrollArea, Ui, vec2};

use crate::action::Action;
use crate::command::{Command, Standing};
use crate::stage::Stage;
use crate::theme;

/// Width of the column of words, points.
const WORD: f32 = 104.0;
/// Width of what they mean, points.
const MEANING: f32 = 400.0;
/// Room between the two, points.
const BETWEEN: f32 = 16.0;
/// Height that the window keeps round the page, points.
const ROUND: f32 = 200.0;

/// How far an arrow key moves it, points.
const LINE: f32 = 40.0;

/// What is said of a stage.
struct Page {
    what_for: &'static str,
    to_do: &'static [&'static str],
    words: &'static [(&'static str, &'static str)],
}

/// The page.
pub fn help_ui(ui: &mut Ui, stage: Stage, standing: &Standing<'_>, wishes: &mut Vec<Action>) {
    ui.heading(format!("Help: {}", stage.name()));
    let page = page(stage);
    scrolled(ui, |ui| {
        ui.label(page.what_for);
        title(ui, "What to do");
        for (number, step) in (1..).zip(page.to_do) {
            ui.label(format!("{number}.  {step}"));
        }
        title(ui, "What the words mean");
        Grid::new("what the words mean")
            .num_columns(2)
            .spacing([BETWEEN, 6.0])
            .show(ui, |ui| {
                for (word, meaning) in page.words {
                    words_ui(ui, word, meaning);
                }
            });
    });
    ui.add_space(8.0);
    ui.horizontal(|ui| {
        Command::Keys.button_ui(ui, standing, wishes);
        if ui.button("Close").clicked() {
            wishes.push(Action::CloseDialog);
        }
    });
}

/// What may be higher than the window, moved by wheel and keys.
pub(super) fn scrolled(ui: &mut Ui, show: impl FnOnce(&mut Ui)) {
    let height = (ui.ctx().content_rect().height() - ROUND).max(200.0);
    let scroll = ScrollArea::vertical()
        .max_height(height)
        .min_scrolled_height(height);
    scroll.show(ui, |ui| {
        ui.set_max_width(WORD + BETWEEN + MEANING);
        ui.scroll_with_delta(vec2(0.0, by_keys(ui, height)));
        show(ui);
    });
}

/// How far keys move the page of this height, points.
fn by_keys(ui: &Ui, height: f32) -> f32 {
    let ways = [
        (Key::ArrowDown, -LINE),
        (Key::ArrowUp, LINE),
        (Key::PageDown, LINE - height),
        (Key::PageUp, height - LINE),
    ];
    ui.input(|input| {
        let pressed = ways.iter().filter(|(key, _)| input.key_pressed(*key));
        pressed.map(|(_, by)| by).sum()
    })
}

fn title(ui: &mut Ui, text: &str) {
    ui.add_space(8.0);
    ui.label(RichText::new(text).family(theme::bold()));
}

fn words_ui(ui: &mut Ui, word: &str, meaning: &str) {
    ui.vertical(|ui| {
        ui.set_width(WORD);
        ui.label(RichText::new(word).family(theme::bold()));
    });
    ui.vertical(|ui| {
        ui.set_width(MEANING);
        ui.label(meaning);
    });
    ui.end_row();
}

fn page(stage: Stage) -> &'static Page {
    match stage {
        Stage::LayOut => &LAY_OUT,
        Stage::Try => &TRY,
        Stage::Prove => &PROVE,
        Stage::Make => &MAKE,
        Stage::Give => &GIVE,
    }
}

const LAY_OUT: Page = Page {
    what_for: "Here the box gets its sizes, and the program learns what stands in your workshop. Every size \
        is the finished one: after sanding, paint and finish.",
    to_do: &[
        "Begin with the plate and the dials: how many, how large, where they stand.",
        "Drag a dial by the handle at its centre, or the tab by its own: it is drawn to lines through other \
            dials, equal distances, the middle, and as near as fingers, discs and your bits allow. Or give \
            the handle the focus and use the arrow keys.",
        "Type sizes as you write them: 12.7, 12,7, 1/2\", 1 3/8 in. Units can be switched at any time.",
        "Say what you have: boards, bits, saw, printer, paper. Papers and parts keep to it.",
        "Say honestly how exactly you work. The proof is only as good as that.",
        "Keep an eye on the verdict above: every change is proven at once, and undo takes it back.",
    ],
    words: &[
        (
            "Plate",
            "The wooden top of the lid, hinged at its back, that carries the dials.",
        ),
        (
            "Dial",
            "A knob above the plate and a slotted disc below it, joined by a key.",
        ),
        (
            "Slider",
            "It runs below the plate and carries a pin for each dial, and the tab.",
        ),
        (
            "Tab, keeper",
            "The end of the slider, and the part on the box that it reaches under. Together they hold the lid.",
        ),
        ("Travel", "How far the slider moves, from shut to free."),
        (
            "Engagement",
            "How far the tab lies under the keeper when the box is shut.",
        ),
        (
            "Gap",
            "The clear distance from a pin to the rim of its disc when the box is shut.",
        ),
        (
            "Handle",
            "The ring with four arrows that moves a dial or the tab on the plan. Round it the knob still turns.",
        ),
        (
            "Workmanship",
            "How far a hole, a print or a coat may come out off its size; plus or minus.",
        ),
        (
            "Season",
            "The air when the box is built, at its driest and its dampest. Wood moves with it.",
        ),
    ],
};

const TRY: Page = Page {
    what_for: "Here you hold the box as its recipient will: turn the dials, push the slider, feel where it stops.",
    to_do: &[
        "Turn a dial: click its right or left half, drag it, use the wheel, the arrow keys, or type a label.",
        "Push the slider by its finger knob or the space bar. It stops where the built one would.",
        "Read the sentence below the lid: which dial stops it, on what, and how much tab still holds.",
        "Thin the veil to see discs, pins and slider below the plate.",
        "Let the program hunt for an opening that should not be there.",
    ],
    words: &[
        (
            "Mark, label",
            "A place round a dial, and what is written there.",
        ),
        ("Setting", "One mark for every dial, whatever comes of it."),
        (
            "Combination",
            "The setting at which every slot faces its pin: the box opens.",
        ),
        (
            "Rim",
            "The round edge of a disc. A pin that meets it goes no further.",
        ),
        (
            "Slot, mouth",
            "The cut into the disc that lets the pin in, and where it opens at the rim.",
        ),
        (
            "Blind slot",
            "A slot too shallow for the whole travel: it feels right and holds all the same.",
        ),
        (
            "Shut, locked, free",
            "Slider forward at the combination; forward at any other setting; back, so that the lid lifts.",
        ),
    ],
};

const PROVE: Page = Page {
    what_for: "Here is what can be promised of every box that could be built from these sizes, as exactly as \
        you work, with every part anywhere within its play, through the whole year.",
    to_do: &[
        "Read the verdict. Proven means: one setting opens, every other one locks, every check passes.",
        "Look at the checks, the worst first. Each says what decides it and what to change by how much.",
        "A remedy is one click, and one undo. It was proven before it was told.",
        "The grid shows each dial at each mark; a click turns the dial there.",
        "Build many boxes by chance to see how your margins spread.",
        "Do not cut wood before this says proven, or before you know why it does not.",
    ],
    words: &[
        (
            "Passes",
            "At this mark the pin always gets in, the whole way, in every box.",
        ),
        (
            "Holds",
            "At this mark the pin always stops, with enough tab left under the keeper.",
        ),
        (
            "Unsure",
            "Neither can be promised. It never counts as locked.",
        ),
        (
            "Margin",
            "How much a figure has to spare before its limit; below nought it fails.",
        ),
        (
            "Play",
            "How far a part can shift while the box is in use: in its guide, its bore, its key.",
        ),
        ("Backlash", "How far a disc can turn on its key."),
        (
            "Creep",
            "The most a pin can travel in any real box before it stops for good.",
        ),
        (
            "Drift",
            "How far plate and slider move against each other over the year.",
        ),
    ],
};

const MAKE: Page = Page {
    what_for: "Here are the papers for the bench, as they will be printed, and the parts for the printer. They \
        are made from the same sizes that were proven.",
    to_do: &[
        "Print one template sheet at 100 % and measure its lines. Type what your ruler says; the next print is right.",
        "Print the fit gauge before any part, and type what fits. It measures your printer.",
        "Look through the cut list and the order of work before the first cut.",
        "Save all papers, or all parts, in a folder of your choice.",
        "At saw and drill the tool's own manual and the rules of your place come first. Guard eyes, ears and \
            lungs; hold small parts in a jig and never by hand. Ask somebody who knows where you do not.",
    ],
    words: &[
        ("Bore", "The hole in the plate for a dial's shaft."),
        ("Kerf", "The width of wood that the saw turns to dust."),
        (
            "Rabbet",
            "The step in the plate's front edge that lies over the keeper.",
        ),
        (
            "Template",
            "A paper at true size, glued on and drilled or cut through.",
        ),
        (
            "Key",
            "The post below the knob and the star-shaped recess in the disc that it sits in.",
        ),
        (
            "Coat",
            "A layer of paint or finish; it makes a part larger and a hole smaller.",
        ),
        (
            "Finished, bare",
            "A size with its coats on, and before them.",
        ),
    ],
};

const GIVE: Page = Page {
    what_for: "Here the box gets its combination and its card. Both can be changed when the box is built: a disc \
        is put on its key in another way.",
    to_do: &[
        "Choose the combination, or let it be drawn by the rules that stand there.",
        "Put each disc on as shown. You look at the back of the plate: left and right are changed over.",
        "Close the lid only when the box opens at its combination and holds at a few others.",
        "Write the card: whose it is, a greeting, from whom, in which language. Look at its page beside.",
        "Keep the maker's sheet apart from the box: it tells how to get in.",
    ],
    words: &[
        (
            "Combination",
            "The mark of each dial at which the box opens.",
        ),
        (
            "Turns of the key",
            "In how many ways a disc can sit on its post: one for every mark.",
        ),
        (
            "From the back",
            "As you see the plate when it lies on its face, with the discs towards you.",
        ),
        (
            "Card",
            "What the recipient gets: how to open the box, with or without the combination.",
        ),
    ],
};
