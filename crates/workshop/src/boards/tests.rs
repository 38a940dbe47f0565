//! Plans for the default box, laws over random boards, and nonsense.

use latchwright_drawing::Shape;
use latchwright_model::{Board, Design, Units};

use super::pack::tests::Dice;
use super::*;
use crate::inch::Rule;
use crate::nonsense::nonsense;

fn oak(length: f64, width: f64, count: u32) -> Board {
    Board {
        length,
        width,
        count,
        ..Board::default()
    }
}

fn ply() -> Board {
    Board {
        wood: "plywood".to_owned(),
        length: 600.0,
        width: 300.0,
        thickness: 6.0,
        count: 1,
    }
}

fn thin_ply() -> Board {
    Board {
        thickness: 3.0,
        ..ply()
    }
}

/// With what slider and guide are cut from besides: plywood of 13, and a strip of oak of 13.5.
fn with(mut boards: Vec<Board>) -> Design {
    let mut design = Design::default();
    boards.push(Board {
        thickness: 13.0,
        ..ply()
    });
    boards.push(Board {
        thickness: 13.5,
        ..oak(500.0, 40.0, 1)
    });
    design.bench.boards = boards;
    design
}

fn cut(plan: &CutPlan) -> Vec<&Role> {
    let pieces = plan.boards.iter().flat_map(BoardLayout::pieces);
    pieces.map(|piece| &piece.part).collect()
}

#[test]
fn boards_enough_take_every_part_and_the_grain_runs_round_three_corners() {
    let plan = cut_plan(&with(vec![oak(1200.0, 150.0, 2), ply(), thin_ply()]));
    assert_eq!(plan.shortfalls, []);
    assert_eq!(plan.faults, []);
    assert_eq!(cut(&plan).len(), 12);
    let (left, front) = (SidePlace::Left, SidePlace::Front);
    let (right, back) = (SidePlace::Right, SidePlace::Back);
    assert_eq!(
        plan.grain,
        GrainRound {
            runs_on: vec![(left, front), (front, right), (right, back)],
            breaks: vec![(back, left)]
        }
    );
    let strip = plan
        .boards
        .iter()
        .flat_map(|board| &board.strips)
        .find(|strip| strip.pieces.iter().any(|piece| piece.side().is_some()));
    let order: Vec<_> = strip
        .unwrap()
        .pieces
        .iter()
        .filter_map(Piece::side)
        .collect();
    assert_eq!(order, [left, front, right, back]);
}

#[test]
fn short_boards_break_the_run_in_two_and_say_which_corners_match() {
    let plan = cut_plan(&with(vec![oak(450.0, 150.0, 4), ply(), thin_ply()]));
    assert_eq!(plan.shortfalls, []);
    assert_eq!(
        plan.grain.runs_on,
        [
            (SidePlace::Left, SidePlace::Front),
            (SidePlace::Right, SidePlace::Back)
        ]
    );
    assert_eq!(plan.grain.breaks.len(), 2);
}

#[test]
fn what_is_short_is_a_length_that_would_do() {
    let design = with(vec![oak(700.0, 150.0, 1), ply(), thin_ply()]);
    let plan = cut_plan(&design);
    assert!(!plan.shortfalls.is_empty());
    // with the missing boards at hand nothing is missing
    let mut more = design.clone();
    more.bench
        .boards
        .extend(plan.shortfalls.iter().map(|short| short.board.clone()));
    assert_eq!(cut_plan(&more).shortfalls, []);
    // and with a centimetre less of the longest, something is
    let longest = plan
        .shortfalls
        .iter()
        .max_by(|one, other| one.board.length.total_cmp(&other.board.length))
        .unwrap();
    let mut less = design;
    for short in &plan.shortfalls {
        let cut = if short == longest { 10.0 } else { 0.0 };
        less.bench.boards.push(Board {
            length: short.board.length - cut,
            ..short.board.clone()
        });
    }
    assert!(!cut_plan(&less).shortfalls.is_empty());
}

#[test]
fn without_boards_there_is_a_list_of_what_to_buy_that_takes_every_part() {
    let plan = cut_plan(&Design::default());
    assert_eq!(cut(&plan).len(), 12);
    assert!(
        plan.boards
            .iter()
            .all(|board| board.to_buy && board.board.length <= 2_400.0)
    );
    let buys = |note: &PlanNote| match note {
        PlanNote::Buy { boards, .. } => *boards,
        PlanNote::Plane { .. } => 0,
    };
    assert!(plan.notes.len() >= 4, "{:?}", plan.notes);
    let bought: usize = plan.notes.iter().map(buys).sum();
    assert_eq!(bought, plan.boards.len());
    assert_eq!(plan.grain.breaks, [(SidePlace::Back, SidePlace::Left)]);
}

#[test]
fn a_thicker_board_is_planed_and_a_thinner_or_foreign_one_is_no_use() {
    let thick = Board {
        thickness: 20.0,
        ..oak(2000.0, 200.0, 1)
    };
    let plan = cut_plan(&with(vec![thick, ply(), thin_ply()]));
    assert_eq!(plan.shortfalls, []);
    let planed = |note: &PlanNote| {
        matches!(
            note,
            PlanNote::Plane { part: Role::Side(SidePlace::Front), from, to }
                if *from == 20.0 && (to - 11.8).abs() < 1e-9
        )
    };
    assert!(plan.notes.iter().any(planed), "{:?}", plan.notes);
    let thin = Board {
        thickness: 4.0,
        ..oak(2000.0, 200.0, 1)
    };
    assert!(
        !cut_plan(&with(vec![thin, ply(), thin_ply()]))
            .shortfalls
            .is_empty()
    );
    let walnut = Board {
        wood: "black walnut".to_owned(),
        ..oak(5000.0, 300.0, 3)
    };
    assert!(
        !cut_plan(&with(vec![walnut, ply(), thin_ply()]))
            .shortfalls
            .is_empty()
    );
    // a sheet is not planed
    let thick_ply = Board {
        thickness: 9.0,
        ..ply()
    };
    let plan = cut_plan(&with(vec![oak(3000.0, 200.0, 2), thick_ply, thin_ply()]));
    assert_eq!(plan.shortfalls.len(), 1);
}

#[test]
fn parts_never_overlap_nor_leave_the_board_whatever_the_boards() {
    let (mut dice, mut checked) = (Dice(3), 0);
    for _ in 0..150 {
        let (many, alike) = (dice.up_to(4), 1 + dice.up_to(3));
        let mut size = |low: u32, range: u32| f64::from(low + dice.up_to(range));
        let boards = (0..=many)
            .map(|_| Board {
                thickness: size(6, 10),
                ..oak(size(150, 1500), size(40, 200), alike)
            })
            .collect();
        let mut design = with(boards);
        design.bench.boards.push(ply());
        design.bench.kerf = size(0, 6);
        design.bench.end_trim = size(0, 40);
        for layout in &cut_plan(&design).boards {
            let pieces: Vec<&Piece> = layout.pieces().collect();
            for (index, one) in pieces.iter().enumerate() {
                checked += 1;
                assert!(one.x >= layout.end_trim - 1e-6 && one.y >= -1e-9);
                assert!(one.x + one.width <= layout.board.length - layout.end_trim + 1e-4);
                assert!(one.y + one.height <= layout.board.width + 1e-4);
                for other in pieces.iter().skip(index + 1) {
                    let apart =
                        (other.x - (one.x + one.width)).max(one.x - (other.x + other.width));
                    let above =
                        (other.y - (one.y + one.height)).max(one.y - (other.y + other.height));
                    assert!(
                        apart.max(above) >= design.bench.kerf - 1e-6,
                        "{one:?} {other:?}"
                    );
                }
            }
        }
    }
    assert!(checked > 500, "{checked}");
}

#[test]
fn every_part_is_cut_once_or_is_short() {
    for boards in [
        vec![oak(600.0, 120.0, 1)],
        vec![oak(300.0, 150.0, 3), ply()],
        vec![oak(2000.0, 300.0, 1)],
    ] {
        let plan = cut_plan(&with(boards));
        let short: usize = plan.shortfalls.iter().map(|short| short.parts.len()).sum();
        assert_eq!(cut(&plan).len() + short, 12);
    }
}

#[test]
fn the_drawn_board_has_every_piece_and_no_words_outside_them() {
    let plan = cut_plan(&with(vec![oak(1200.0, 150.0, 2), ply(), thin_ply()]));
    let rule = Rule {
        units: Units::Millimetre,
        denominator: 32,
    };
    assert!(plan.boards.len() > 1);
    for layout in &plan.boards {
        let drawing = board_drawing(layout, 170.0, rule);
        assert!((drawing.bounds.width() - 170.0).abs() < 1e-9);
        let words: Vec<_> = drawing
            .items
            .iter()
            .filter_map(|item| match &item.shape {
                Shape::Text(text) => Some(text),
                _ => None,
            })
            .collect();
        for piece in layout.pieces() {
            let name = piece.part.name();
            let named = words.iter().any(|text| text.text.contains(&name));
            assert!(named, "{name} {layout:#?}");
        }
        for item in &drawing.items {
            assert!(drawing.bounds.holds(item.shape.extent()), "{item:?}");
        }
        for (index, one) in words.iter().enumerate() {
            assert!(
                words
                    .iter()
                    .skip(index + 1)
                    .all(|other| !one.overlaps(other)),
                "{}",
                one.text
            );
        }
    }
}

#[test]
fn nonsense_gets_a_plan_and_never_a_panic() {
    for design in nonsense().into_iter().step_by(3) {
        let plan = cut_plan(&design);
        let words = format!("{plan:?}");
        assert!(
            !words.contains("NaN") && !words.contains(": inf"),
            "{words}"
        );
        let rule = Rule::of(&design);
        for layout in &plan.boards {
            board_drawing(layout, 170.0, rule);
        }
    }
}
