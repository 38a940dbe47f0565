//! Designs of any numbers, brought within what can be worked out without a surprise.
//!
//! What is wrong with a number is told by the solver's faults; here it only must not spoil sums.

use latchwright_model::{Board, Climate, Design, LidKind, Material};

/// Longest length that is reckoned with, mm: a hundred metres.
const LONGEST: f64 = 1e5;
/// Most dials, slots, boards and bits that are looked at.
const MOST: usize = 256;

/// A number within bounds; what is not a number becomes nought.
pub(crate) fn cut(value: f64) -> f64 {
    if value.is_nan() {
        0.0
    } else {
        value.clamp(-LONGEST, LONGEST)
    }
}

/// `design` with every number that this crate reads within bounds, and lists of a length that a
/// bench could hold.
pub(crate) fn tame(design: &Design) -> Design {
    let mut tame = design.clone();
    tame.dials.truncate(MOST);
    for dial in &mut tame.dials {
        dial.disc.slots.truncate(MOST);
    }
    tame.bench.boards.truncate(MOST);
    tame.bench.bits.truncate(MOST);
    for value in lengths(&mut tame) {
        *value = cut(*value);
    }
    for dial in &mut tame.dials {
        for value in dial_lengths(dial) {
            *value = cut(*value);
        }
    }
    for board in &mut tame.bench.boards {
        *board = tame_board(board);
    }
    let season = &mut tame.season;
    for air in [&mut season.built, &mut season.driest, &mut season.dampest] {
        *air = Climate {
            celsius: cut(air.celsius).clamp(-30.0, 60.0),
            humidity: cut(air.humidity).clamp(0.0, 100.0),
        };
    }
    tame
}

fn tame_board(board: &Board) -> Board {
    Board {
        wood: board.wood.clone(),
        length: cut(board.length),
        width: cut(board.width),
        thickness: cut(board.thickness),
        count: board.count.min(1_000),
    }
}

fn lengths(design: &mut Design) -> Vec<&mut f64> {
    let Design {
        plate,
        slider,
        tab,
        keeper,
        inside,
        body,
        workmanship,
        bench,
        ..
    } = design;
    let mut all = vec![
        &mut plate.width,
        &mut plate.depth,
        &mut plate.thickness,
        &mut plate.rabbet,
        &mut plate.room,
        &mut slider.travel,
        &mut slider.guide_length,
        &mut slider.guide_play,
        &mut slider.guide_at.0,
        &mut slider.guide_at.1,
        &mut slider.pull_at,
        &mut slider.shank,
        &mut slider.thickness,
        &mut slider.below,
        &mut tab.at,
        &mut tab.width,
        &mut tab.engagement,
        &mut keeper.edge,
        &mut keeper.width,
        &mut keeper.depth,
        &mut keeper.thickness,
        &mut inside.width,
        &mut inside.depth,
        &mut inside.height,
        &mut body.thickness,
        &mut body.groove,
        &mut body.foot,
        &mut body.floor.thickness,
        &mut body.hinge.length,
        &mut body.hinge.leaf,
        &mut body.hinge.thickness,
        &mut body.hinge.inset,
        &mut workmanship.film,
        &mut workmanship.keeper_place,
        &mut workmanship.pin_place,
        &mut bench.kerf,
        &mut bench.end_trim,
        &mut bench.rough,
        &mut bench.printer.bed.0,
        &mut bench.printer.bed.1,
    ];
    if let LidKind::Band { height } = &mut body.lid {
        all.push(height);
    }
    all.extend(bench.bits.iter_mut());
    all
}

fn dial_lengths(dial: &mut latchwright_model::Dial) -> Vec<&mut f64> {
    vec![
        &mut dial.centre.0,
        &mut dial.centre.1,
        &mut dial.disc.radius,
        &mut dial.disc.thickness,
        &mut dial.disc.below,
        &mut dial.pin.offset,
        &mut dial.pin.diameter,
        &mut dial.pin.gap,
        &mut dial.pin.height,
        &mut dial.pin.free,
        &mut dial.key.apothem,
        &mut dial.bore.diameter,
        &mut dial.bore.shaft_play,
        &mut dial.knob.diameter,
        &mut dial.knob.height,
    ]
}

/// Name of a material as boards and lists call it.
pub(crate) fn material_name(material: &Material) -> String {
    match material {
        Material::Wood { species, .. } => species.clone(),
        Material::Plywood => "plywood".to_owned(),
        Material::Hardboard => "hardboard".to_owned(),
        Material::Mdf => "mdf".to_owned(),
        Material::Printed => "printed".to_owned(),
    }
}

/// Designs with every kind of nonsense in every length, for tests.
#[cfg(test)]
pub(crate) fn nonsense() -> Vec<Design> {
    use latchwright_model::Corner;

    let values = [
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
        0.0,
        -1.0,
        -1e300,
        1e300,
        1e-300,
        5_000.0,
    ];
    let mut all = Vec::new();
    let count = lengths(&mut Design::default()).len();
    let in_dial = dial_lengths(&mut latchwright_model::Dial::default()).len();
    for lid in [LidKind::Plate, LidKind::Band { height: 40.0 }] {
        for corner in [Corner::Mitred, Corner::Butted, Corner::Rabbeted] {
            let mut base = Design::default();
            base.body.lid = lid;
            base.body.corner = corner;
            for value in values {
                for which in 0..count {
                    let mut design = base.clone();
                    *lengths(&mut design).remove(which) = value;
                    all.push(design);
                }
                for which in 0..in_dial {
                    let mut design = base.clone();
                    *dial_lengths(&mut design.dials[1]).remove(which) = value;
                    all.push(design);
                }
                let mut design = base.clone();
                for length in lengths(&mut design) {
                    *length = value;
                }
                for dial in &mut design.dials {
                    for length in dial_lengths(dial) {
                        *length = value;
                    }
                }
                design.bench.boards.push(Board {
                    length: value,
                    width: value,
                    thickness: value,
                    count: u32::MAX,
                    ..Board::default()
                });
                design.season.dampest.humidity = value;
                design.season.built.celsius = value;
                all.push(design);
            }
        }
    }
    let mut empty = Design::default();
    empty.dials.clear();
    empty.combination.clear();
    empty.bench.bits.clear();
    empty.body.wood = "no such tree".to_owned();
    empty.plate.wood.clear();
    all.push(empty);
    all
}
