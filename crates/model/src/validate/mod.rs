//! What is wrong with a design as typed. Bad designs are data: all faults are listed, none stops
//! the reading.

mod dials;
mod numbers;
mod range;
mod woods;

use crate::fault::{Fault, FaultKind, OutsideTable, Place, SeasonTime};
use crate::wood::{Air, Mover};
use crate::{Climate, Design};

pub use dials::{KEY_SIDES, MAX_DIALS, MAX_POSITIONS};
pub use range::{Measure, Range};
pub use woods::MOST_MOVEMENT;

/// The parts into which rules divide an inch.
pub const FRACTIONS: [u32; 4] = [8, 16, 32, 64];

/// All faults of a design, in a fixed order: numbers first, then part by part.
pub fn faults(design: &Design) -> Vec<Fault> {
    let mut faults = Vec::new();
    numbers::check(design, &mut faults);
    woods::own(design, &mut faults);
    if !faults.iter().any(Fault::is_error) {
        // relations between numbers only make sense where the numbers do
        parts(design, &mut faults);
        woods::check(design, &mut faults);
        year(design, &mut faults);
    }
    fraction(design, &mut faults);
    dials::check(design, &mut faults);
    faults
}

fn parts(design: &Design, faults: &mut Vec<Fault>) {
    let (play, length) = (design.slider.guide_play, design.slider.guide_length);
    if 2.0 * play >= length {
        faults.push(Fault {
            place: Place::Slider,
            kind: FaultKind::GuideTooLoose { play, length },
        });
    }
    let (required, engagement) = (design.tab.required_hold, design.tab.engagement);
    if required > engagement {
        faults.push(Fault {
            place: Place::Tab,
            kind: FaultKind::HoldBeyondEngagement {
                required,
                engagement,
            },
        });
    }
}

fn fraction(design: &Design, faults: &mut Vec<Fault>) {
    let fraction = design.bench.fraction;
    if !FRACTIONS.contains(&fraction) {
        faults.push(Fault {
            place: Place::Bench,
            kind: FaultKind::FractionUnknown { fraction },
        });
    }
}

fn year(design: &Design, faults: &mut Vec<Fault>) {
    let season = &design.season;
    let (driest, dampest) = (season.driest.humidity, season.dampest.humidity);
    if driest > dampest {
        faults.push(Fault {
            place: Place::Season,
            kind: FaultKind::SeasonReversed { driest, dampest },
        });
    }
    outside_table(design, faults);
    hinge_side(design, faults);
}

/// Where the year takes wood out of the range of the table of movement.
fn outside_table(design: &Design, faults: &mut Vec<Fault>) {
    let season = &design.season;
    let airs = [
        (SeasonTime::Built, season.built),
        (SeasonTime::Driest, season.driest),
        (SeasonTime::Dampest, season.dampest),
    ];
    let outside = airs.into_iter().filter_map(|(time, climate)| {
        let air = Air::of(climate);
        air.outside_table().then(|| OutsideTable {
            time,
            climate,
            moisture: air.moisture(),
        })
    });
    let times: Vec<OutsideTable> = outside.collect();
    if !times.is_empty() {
        faults.push(Fault {
            place: Place::Season,
            kind: FaultKind::MoistureOutsideTable { times },
        });
    }
}

/// Keeper and guide are taken to keep together; a plate that swells between hinge and keeper pulls
/// against that, and the maker should know by how much.
fn hinge_side(design: &Design, faults: &mut Vec<Fault>) {
    let Some(plate) = Mover::of_plate(design, false) else {
        return;
    };
    let season = &design.season;
    let moved = |air: Climate| {
        let (least, most) = plate.strain(Air::of(season.built), Air::of(air), true);
        design.plate.depth * least.abs().max(most.abs())
    };
    let most = moved(season.driest).max(moved(season.dampest));
    if most > design.workmanship.keeper_place {
        faults.push(Fault {
            place: Place::Plate,
            kind: FaultKind::PlateMovesFromHinge { most },
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_year_that_leaves_the_table_is_named_with_its_airs() {
        let mut design = Design::default();
        let outside = |design: &Design| -> Vec<(SeasonTime, f64)> {
            let times = faults(design)
                .into_iter()
                .find_map(|fault| match fault.kind {
                    FaultKind::MoistureOutsideTable { times } => Some(times),
                    _ => None,
                });
            let times = times.unwrap_or_default().into_iter();
            times
                .map(|outside| (outside.time, outside.climate.humidity))
                .collect()
        };
        assert_eq!(outside(&design), [(SeasonTime::Driest, 25.0)]);
        design.season.dampest.humidity = 85.0;
        assert_eq!(
            outside(&design),
            [(SeasonTime::Driest, 25.0), (SeasonTime::Dampest, 85.0)]
        );
        design.season.driest.humidity = 35.0;
        design.season.dampest.humidity = 65.0;
        assert_eq!(outside(&design), []);
    }
}
