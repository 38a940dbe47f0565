//! What a maker could do about checks through the thickness, of strength, racking and rooms that
//! latch; cheapest first.

use super::way::Way;
use super::ways::{counted_mm, latch, moves, on, on_all};
use latchwright_model::Design;
use latchwright_model::change::{DialSize, LatchSize, Size};
use latchwright_proof::CheckKind;
use latchwright_proof::results::Check;

use DialSize::{DiscBelow, DiscThickness, PinDiameter, PinFree, PinHeight};
use LatchSize::{
    Friction, GuideLength, InsideDepth, InsideHeight, InsideWidth, KeeperThickness, PlateThickness,
    PullAt, Rabbet, Room, Shank, SliderBelow, SliderThickness, TabWidth,
};

/// The least inside size of a box that is made too low or too narrow for a child, mm: below the
/// 150 mm of the rules by what a saw takes.
///
/// # Source
/// Common practice, no source.
const TOO_NARROW: f64 = 145.0;

/// The ways worth trying for this check, in order; none for a check that is not known here.
pub(super) fn of(design: &Design, check: &Check) -> Vec<Way> {
    let dial = check.dial().unwrap_or(0);
    let all: Vec<usize> = (0..design.dials.len()).collect();
    match check.kind {
        CheckKind::PinMeetsDisc => moves([
            vec![on(dial, PinHeight, 1)],
            vec![on(dial, DiscBelow, 1)],
            vec![on(dial, DiscBelow, -1)],
            vec![on(dial, PinHeight, 1), on(dial, DiscBelow, 1)],
            vec![on(dial, PinHeight, 1), on(dial, DiscBelow, -1)],
            vec![latch(SliderBelow, -1)],
            vec![on(dial, DiscThickness, -1)],
        ]),
        CheckKind::DiscToPlate => moves([vec![on(dial, DiscBelow, 1)]]),
        CheckKind::SliderToPlate | CheckKind::TabToKeeper => moves([vec![latch(SliderBelow, 1)]]),
        CheckKind::RoomBelow => moves([
            vec![latch(Room, 1)],
            on_all(&all, PinHeight, -1),
            on_all(&all, DiscThickness, -1),
            vec![latch(SliderThickness, -1)],
        ]),
        CheckKind::LidCloses => moves([
            vec![latch(Rabbet, 1)],
            vec![latch(KeeperThickness, -1)],
            vec![latch(Rabbet, 1), latch(PlateThickness, 1)],
        ]),
        CheckKind::RabbetRoof => moves([
            vec![latch(Rabbet, -1)],
            vec![latch(Rabbet, -1), latch(KeeperThickness, -1)],
            vec![latch(PlateThickness, 1)],
        ]),
        CheckKind::PinStrength => {
            moves([vec![on(dial, PinFree, -1)], vec![on(dial, PinDiameter, 1)]])
        }
        CheckKind::TabStrength => moves([
            vec![latch(SliderThickness, 1)],
            vec![latch(SliderThickness, 1), latch(Room, 1)],
            vec![latch(GuideLength, 20)],
            vec![latch(TabWidth, 1)],
        ]),
        CheckKind::Racking => {
            let aside = design.slider.pull_at - design.slider.guide_at.0;
            let inwards = if aside > 0.0 { -1 } else { 1 };
            moves([
                vec![latch(PullAt, inwards)],
                vec![latch(GuideLength, 20)],
                vec![latch(Shank, -1)],
                vec![latch(Friction, -1)],
            ])
        }
        CheckKind::EnclosedSpace => narrower(design),
        _ => Vec::new(),
    }
}

/// One inside size too small for a child to be in, the smallest of them first.
fn narrower(design: &Design) -> Vec<Way> {
    let inside = &design.inside;
    let mut sizes = [
        (InsideHeight, inside.height),
        (InsideDepth, inside.depth),
        (InsideWidth, inside.width),
    ];
    sizes.sort_by(|one, other| one.1.total_cmp(&other.1));
    let way = |(size, from)| Way::Once(vec![counted_mm(Size::Latch(size), from, TOO_NARROW)]);
    sizes.into_iter().map(way).collect()
}
