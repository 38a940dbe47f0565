//! Designs with every kind of nonsense in every number, for tests.

use latchwright_model::{Board, Corner, Design, LidKind, Size, Unit};

/// Values that a hostile file may hold.
const VALUES: [f64; 7] = [0.0, -1.0, -1e300, 1e300, 1e-300, 5_000.0, 0.5];

/// Designs with each of these values in each number by itself, and in all at once, with every lid and corner;
/// and with numbers that are none where a file cannot even say so.
pub(crate) fn nonsense() -> Vec<Design> {
    let mut all = Vec::new();
    for lid in [LidKind::Plate, LidKind::Band { height: 40.0 }] {
        for corner in [Corner::Mitred, Corner::Butted, Corner::Rabbeted] {
            let mut base = Design::default();
            base.body.lid = lid;
            base.body.corner = corner;
            let mut sizes = Size::all(&base);
            sizes.extend(Size::beside(&base));
            sizes.retain(|size| {
                size.unit() != Unit::Count && size.dial().is_none_or(|dial| dial == 1)
            });
            for value in VALUES {
                for size in &sizes {
                    let mut design = base.clone();
                    size.set(&mut design, value);
                    all.push(design);
                }
                let mut design = base.clone();
                for size in &sizes {
                    size.set(&mut design, value);
                }
                all.push(with_boards(design, value));
            }
            for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
                let mut design = base.clone();
                design.plate.width = value;
                design.slider.travel = value;
                design.body.thickness = value;
                design.bench.kerf = value;
                design.dials[1].disc.radius = value;
                all.push(with_boards(design, value));
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

fn with_boards(mut design: Design, value: f64) -> Design {
    design.bench.boards.push(Board {
        length: value,
        width: value,
        thickness: value,
        count: u32::MAX,
        ..Board::default()
    });
    design.season.dampest.humidity = value;
    design.season.built.celsius = value;
    design
}
