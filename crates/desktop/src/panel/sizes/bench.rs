//! What the maker has: bits, boards, saw, paper, printer, woods measured.

use egui::Ui;
use latchwright_model::Size;
use latchwright_model::change::{BoardSize, HoleSize};
use latchwright_model::{Board, Design, HoleReading, Paper, Units};
use latchwright_session::units;

use super::list::{Entry, pick_next, pick_none, pick_ui};
use super::own_woods::woods_ui;
use super::rows::{self, Row, rows_ui, size_ui};
use super::wood::{choice_ui, stock_ui};
use super::{note_ui, part_ui};
use crate::action::Action;
use crate::edit::{BenchEdit, Edit};
use crate::field::{self, Kind};

/// Everything that lies ready.
pub fn bench_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    part_ui(ui, "Bits", false, |ui| bits_ui(ui, design, wishes));
    part_ui(ui, "Boards", false, |ui| boards_ui(ui, design, wishes));
    part_ui(ui, "Saw and finish", false, |ui| {
        rows_ui(ui, design, rows::SAW, wishes);
        coated_ui(ui, design, wishes);
    });
    part_ui(ui, "Paper and rule", false, |ui| {
        paper_ui(ui, design, wishes);
    });
    part_ui(ui, "Printer", false, |ui| {
        rows_ui(ui, design, rows::PRINTER, wishes);
        holes_ui(ui, design, wishes);
    });
    part_ui(ui, "Woods measured", false, |ui| {
        woods_ui(ui, design, wishes);
    });
}

/// A row of one entry of a list.
pub(super) fn of_entry(
    ui: &mut Ui,
    design: &Design,
    name: &str,
    kind: Kind,
    size: Size,
    why: &'static str,
    wishes: &mut Vec<Action>,
) {
    let row = Row {
        name: "",
        kind,
        size,
        why,
    };
    size_ui(ui, design, name, &row, wishes);
}

/// Whether prints are coated with the wood.
fn coated_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    let why = "What is seen of knobs, rings and finger knob; what runs or fits stays bare";
    let word = |coated| if coated { "yes" } else { "no" };
    let now = design.bench.coated_prints;
    if let Some(coated) = choice_ui(ui, "Coat the prints too", why, now, &[false, true], word) {
        wishes.push(Action::Edit(Edit::Bench(BenchEdit::CoatedPrints(coated))));
    }
}

fn bits_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    note_ui(
        ui,
        "Every hole is drawn for the nearest of these, and the difference told.",
    );
    let entries: Vec<Entry> = (1..)
        .zip(&design.bench.bits)
        .map(|(number, bit)| Entry {
            shown: units::show_length(*bit, design.units),
            name: format!(
                "Bit {number}: {}",
                units::show_length_unit(*bit, design.units)
            ),
        })
        .collect();
    if let Some(index) = pick_ui(ui, "bits", &entries) {
        let name = format!("Bit {}", index + 1);
        of_entry(
            ui,
            design,
            &name,
            Kind::Length,
            Size::Bit(index),
            "Its diameter",
            wishes,
        );
        take_away_ui(ui, "bits", BenchEdit::TakeBit(index), wishes);
    }
    let why = "Type the diameter of a bit that you have and it joins the others";
    if let Some(bit) = field::new_number_ui(ui, "New bit", Kind::Length, design.units, why) {
        let same = |other: &f64| (other - bit).abs() < 1e-9;
        if let Some(index) = design.bench.bits.iter().position(same) {
            // it is there already: shown, not listed twice
            pick_next(ui, "bits", index);
            return;
        }
        pick_none(ui, "bits");
        wishes.push(Action::Edit(Edit::Bench(BenchEdit::AddBit(bit))));
    }
}

/// "Take bit 3 away".
pub(super) fn take_away_ui(ui: &mut Ui, list: &str, edit: BenchEdit, wishes: &mut Vec<Action>) {
    let edit = Edit::Bench(edit);
    if ui.button(edit.button()).clicked() {
        pick_none(ui, list);
        wishes.push(Action::Edit(edit));
    }
}

/// "Add a board", which is then chosen; there are `count` of them so far.
pub(super) fn add_ui(
    ui: &mut Ui,
    list: &str,
    count: usize,
    edit: BenchEdit,
    wishes: &mut Vec<Action>,
) {
    let edit = Edit::Bench(edit);
    if ui.button(edit.button()).clicked() {
        pick_next(ui, list, count);
        wishes.push(Action::Edit(edit));
    }
}

fn boards_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    let boards = &design.bench.boards;
    if boards.is_empty() {
        note_ui(
            ui,
            "None yet: the cut list says what to buy. Add yours and it says what goes on which.",
        );
    }
    let entries: Vec<Entry> = (1..)
        .zip(boards)
        .map(|(number, board)| {
            let shown = board_name(board, design.units);
            let name = format!("Board {number}: {shown}");
            Entry { shown, name }
        })
        .collect();
    let chosen = pick_ui(ui, "boards", &entries);
    if let Some((index, board)) = chosen.and_then(|index| Some((index, boards.get(index)?))) {
        board_ui(ui, design, index, board, wishes);
    }
    let new = chosen.and_then(|index| boards.get(index)).cloned();
    let new = new.unwrap_or_else(|| Board {
        wood: design.body.wood.clone(),
        thickness: design.body.thickness,
        ..Board::default()
    });
    let count = boards.len();
    add_ui(ui, "boards", count, BenchEdit::AddBoard(new), wishes);
}

/// "2 × white oak, 1200 × 150 × 12 mm".
fn board_name(board: &Board, units: Units) -> String {
    let show = |mm| {
        let text = units::show_length(mm, units);
        text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
    };
    format!(
        "{} × {}, {} × {} × {} {}",
        board.count,
        board.wood,
        show(board.length),
        show(board.width),
        show(board.thickness),
        units::unit_name(units)
    )
}

fn board_ui(ui: &mut Ui, design: &Design, index: usize, board: &Board, wishes: &mut Vec<Action>) {
    let name = format!("Board {}", index + 1);
    if let Some(wood) = stock_ui(ui, &format!("{name} wood"), &board.wood, design) {
        let edit = BenchEdit::BoardWood { board: index, wood };
        wishes.push(Action::Edit(Edit::Bench(edit)));
    }
    for (what, size, why) in [
        ("length", BoardSize::Length, "Along the grain"),
        ("width", BoardSize::Width, "Across the grain"),
        ("thickness", BoardSize::Thickness, "As measured"),
    ] {
        of_entry(
            ui,
            design,
            &format!("{name} {what}"),
            Kind::Length,
            Size::Board(index, size),
            why,
            wishes,
        );
    }
    of_entry(
        ui,
        design,
        &format!("{name} pieces"),
        Kind::Count,
        Size::BoardCount(index),
        "How many of this size",
        wishes,
    );
    take_away_ui(ui, "boards", BenchEdit::TakeBoard(index), wishes);
}

fn paper_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    let papers = [
        Paper::A4OrLetter,
        Paper::A4,
        Paper::A3,
        Paper::Letter,
        Paper::Legal,
        Paper::Tabloid,
    ];
    let name = |paper| match paper {
        Paper::A4OrLetter => "fits A4 and Letter",
        Paper::A4 => "A4, 210 × 297 mm",
        Paper::A3 => "A3, 297 × 420 mm",
        Paper::Letter => "Letter, 8½ × 11 in",
        Paper::Legal => "Legal, 8½ × 14 in",
        Paper::Tabloid => "Tabloid, 11 × 17 in",
    };
    let why = "Parts that are larger are tiled over several sheets";
    if let Some(paper) = choice_ui(
        ui,
        "Sheet for papers",
        why,
        design.bench.paper,
        &papers,
        name,
    ) {
        wishes.push(Action::Edit(Edit::Bench(BenchEdit::Paper(paper))));
    }
    let parts = |parts: u32| match parts {
        8 => "eighths",
        16 => "sixteenths",
        32 => "thirty-seconds",
        64 => "sixty-fourths",
        _ => "no rule has this",
    };
    let now = design.bench.fraction;
    let why = "As fine as your rule is divided; what rounding costs is told";
    let rule = choice_ui(ui, "Inches on papers in", why, now, &[8, 16, 32, 64], parts);
    if let Some(fraction) = rule {
        wishes.push(Action::Edit(Edit::Bench(BenchEdit::Fraction(fraction))));
    }
}

fn holes_ui(ui: &mut Ui, design: &Design, wishes: &mut Vec<Action>) {
    note_ui(
        ui,
        "Holes come out too small, small ones most. Read the fit gauge: as drawn → too small by.",
    );
    let holes = &design.bench.printer.holes;
    let entries: Vec<Entry> = (1..)
        .zip(holes)
        .map(|(number, hole)| {
            let (drawn, under) = (
                units::show_length(hole.diameter, design.units),
                units::show_length(hole.under, design.units),
            );
            Entry {
                shown: format!("{drawn} → {under}"),
                name: format!("Reading {number}: {drawn} too small by {under}"),
            }
        })
        .collect();
    if let Some(index) = pick_ui(ui, "holes", &entries) {
        let name = format!("Reading {}", index + 1);
        for (what, size, why) in [
            ("hole drawn", HoleSize::Diameter, "Diameter as drawn"),
            (
                "too small by",
                HoleSize::Under,
                "How much smaller it came out, in diameter",
            ),
        ] {
            of_entry(
                ui,
                design,
                &format!("{name} {what}"),
                Kind::Length,
                Size::Hole(index, size),
                why,
                wishes,
            );
        }
        take_away_ui(ui, "holes", BenchEdit::TakeReading(index), wishes);
    }
    // a little larger than the largest, off by as much
    let new = holes.last().map_or(
        HoleReading {
            diameter: 10.0,
            under: 0.25,
        },
        |last| HoleReading {
            diameter: last.diameter + 5.0,
            ..*last
        },
    );
    let count = holes.len();
    add_ui(ui, "holes", count, BenchEdit::AddReading(new), wishes);
}
