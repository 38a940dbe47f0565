//! What is wrong with a design as typed. Bad designs are data: all faults are listed, none stops
//! the reading.

mod dials;
mod numbers;
mod woods;

use crate::fault::{Fault, Place, Severity};
use crate::wood::{Air, Mover};
use crate::{Climate, Design};

pub use dials::{MAX_DIALS, MAX_POSITIONS};

/// All faults of a design, in a fixed order: numbers first, then part by part.
pub fn faults(design: &Design) -> Vec<Fault> {
    let mut faults = Vec::new();
    numbers::check(design, &mut faults);
    woods::own(design, &mut faults);
    if faults.iter().all(|fault| fault.severity != Severity::Error) {
        // relations between numbers only make sense where the numbers do
        parts(design, &mut faults);
        woods::check(design, &mut faults);
        year(design, &mut faults);
    }
    fraction(design, &mut faults);
    dials::check(design, &mut faults);
    faults
}

fn error(code: &'static str, place: Place, message: String, remedy: String) -> Fault {
    Fault {
        severity: Severity::Error,
        code,
        place,
        message,
        remedy,
    }
}

fn notice(code: &'static str, place: Place, message: String, remedy: String) -> Fault {
    Fault {
        severity: Severity::Notice,
        code,
        place,
        message,
        remedy,
    }
}

fn parts(design: &Design, faults: &mut Vec<Fault>) {
    let (slider, tab) = (&design.slider, &design.tab);
    if 2.0 * slider.guide_play >= slider.guide_length {
        faults.push(error(
            "guide-too-loose",
            Place::Slider,
            format!(
                "a play of {:.2} mm to either side lets a guide of {:.2} mm turn without end",
                slider.guide_play, slider.guide_length
            ),
            format!(
                "make `guide_play` less than {:.2} mm",
                slider.guide_length / 2.0
            ),
        ));
    }
    if tab.required_hold > tab.engagement {
        faults.push(error(
            "hold-beyond-engagement",
            Place::Tab,
            format!(
                "{:.2} mm of tab must stay held, but only {:.2} mm reach under the keeper",
                tab.required_hold, tab.engagement
            ),
            format!(
                "lower `required_hold` below {:.2} mm or let the tab reach further",
                tab.engagement
            ),
        ));
    }
}

fn fraction(design: &Design, faults: &mut Vec<Fault>) {
    let fraction = design.bench.fraction;
    if ![8, 16, 32, 64].contains(&fraction) {
        faults.push(error(
            "fraction-unknown",
            Place::Bench,
            format!("rules are not divided into {fraction} parts of an inch"),
            "give 8, 16, 32 or 64".to_owned(),
        ));
    }
}

fn year(design: &Design, faults: &mut Vec<Fault>) {
    let season = &design.season;
    if season.driest.humidity > season.dampest.humidity {
        faults.push(notice(
            "season-reversed",
            Place::Season,
            format!(
                "the driest air ({:.0} %) is damper than the dampest ({:.0} %)",
                season.driest.humidity, season.dampest.humidity
            ),
            "exchange the two; the proof covers both all the same".to_owned(),
        ));
    }
    outside_table(design, faults);
    hinge_side(design, faults);
}

/// Where the year takes wood out of the range of the table of movement.
fn outside_table(design: &Design, faults: &mut Vec<Fault>) {
    let season = &design.season;
    let times = [
        ("when built", season.built),
        ("at the driest", season.driest),
        ("at the dampest", season.dampest),
    ];
    let outside: Vec<String> = times
        .into_iter()
        .zip(times.map(|(_, climate)| Air::of(climate)))
        .filter(|(_, air)| air.outside_table())
        .map(|((time, climate), air)| {
            format!(
                "{:.1} % {time} ({:.0} % humidity, {:.0} °C)",
                air.moisture(),
                climate.humidity,
                climate.celsius
            )
        })
        .collect();
    if !outside.is_empty() {
        faults.push(notice(
            "moisture-outside-table",
            Place::Season,
            format!(
                "wood comes to a moisture of {}; the table of movement is made for 6 to 14 %",
                outside.join(" and of ")
            ),
            "outside it the handbook's second formula is used; leave a little more room".to_owned(),
        ));
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
        faults.push(notice(
            "plate-moves-from-hinge",
            Place::Plate,
            format!(
                "between hinge and front edge the plate itself moves by up to {most:.2} mm over the \
                 year; the proof takes the keeper to stay with the plate's front edge"
            ),
            "let the rabbet over the keeper, not the hinge, set where the lid lies (a hinge with play), \
             or turn the grain towards the hinge"
                .to_owned(),
        ));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_year_that_leaves_the_table_is_named_with_its_moisture_and_humidity() {
        let mut design = Design::default();
        let said = |design: &Design| {
            let faults = faults(design);
            let found = faults
                .into_iter()
                .find(|fault| fault.code == "moisture-outside-table");
            found.map(|fault| fault.to_string())
        };
        let dry = said(&design).unwrap();
        assert_eq!(
            dry,
            "season: wood comes to a moisture of 5.4 % at the driest (25 % humidity, 21 °C); the table \
             of movement is made for 6 to 14 %; outside it the handbook's second formula is used; leave \
             a little more room"
        );
        design.season.dampest.humidity = 85.0;
        let both = said(&design).unwrap();
        assert!(
            both.contains(" and of 17.8 % at the dampest (85 % humidity, 24 °C)"),
            "{both}"
        );
        design.season.driest.humidity = 35.0;
        design.season.dampest.humidity = 65.0;
        assert_eq!(said(&design), None);
    }
}
