//! How far places on plate and slider move apart over the year.

use super::moisture::moisture_content;
use super::movement::Mover;
use crate::model::{Climate, Design};

/// Pieces into which each half of the year (driest to built, built to dampest) is cut.
const PIECES: usize = 8;

/// Change of size of plate and slider along one axis, piece by piece through the year.
///
/// Within a piece both only grow or only shrink, so that their values at its two ends enclose them.
#[derive(Debug, Clone, PartialEq)]
pub struct Strains {
    /// Plate and slider at the ends of the pieces.
    ends: Vec<(f64, f64)>,
    /// Same wood, same cut, same direction: they move as one.
    alike: bool,
}

/// Drift over the whole year; every length it is asked about is counted from the guide's middle.
#[derive(Debug, Clone, PartialEq)]
pub struct Drift {
    /// Along x, across the slider's travel.
    pub x: Strains,
    /// Along y, the slider's travel.
    pub y: Strains,
}

impl Drift {
    /// The drift of this design; `None` if a wood is not in the table.
    pub fn of(design: &Design) -> Option<Self> {
        let axis = |along_x| {
            let plate = Mover::of_plate(&design.plate, along_x)?;
            let slider = Mover::of_slider(&design.slider.material, along_x)?;
            Some(Strains::through_the_year(design, plate, slider))
        };
        Some(Self {
            x: axis(true)?,
            y: axis(false)?,
        })
    }

    /// No drift at all: a year in which the air never changes.
    pub fn none() -> Self {
        let still = Strains {
            ends: vec![(0.0, 0.0)],
            alike: true,
        };
        Self {
            x: still.clone(),
            y: still,
        }
    }
}

impl Strains {
    fn through_the_year(design: &Design, plate: Mover, slider: Mover) -> Self {
        let season = &design.season;
        let between = |from: Climate, to: Climate, share: f64| Climate {
            celsius: from.celsius + (to.celsius - from.celsius) * share,
            humidity: from.humidity + (to.humidity - from.humidity) * share,
        };
        let half = |from, to, pieces: std::ops::Range<usize>| {
            pieces.map(move |piece| between(from, to, piece as f64 / PIECES as f64))
        };
        let ends = half(season.driest, season.built, 0..PIECES)
            .chain(half(season.built, season.dampest, 0..PIECES + 1))
            .map(|air| {
                (
                    plate.strain(season.built, air),
                    slider.strain(season.built, air),
                )
            })
            .collect();
        Self {
            ends,
            alike: plate == slider,
        }
    }

    /// Most that any length on plate or slider grows over the year, as a fraction of it.
    pub fn most_growth(&self) -> f64 {
        let grown = |(plate, slider): &(f64, f64)| plate.max(*slider);
        self.ends.iter().map(grown).fold(0.0, f64::max)
    }

    /// Most that a length on the slider shrinks over the year, as a fraction of it.
    pub fn slider_shrinks(&self) -> f64 {
        let shrunk = |(_, slider): &(f64, f64)| -slider;
        self.ends.iter().map(shrunk).fold(0.0, f64::max)
    }

    /// Least and largest of `on_plate`·(plate's strain) − `on_slider`·(slider's strain) over the
    /// year: how far a place that far out on the plate moves ahead of one that far out on the
    /// slider, mm for lengths in mm.
    pub fn apart(&self, on_plate: f64, on_slider: f64) -> (f64, f64) {
        if self.alike {
            let length = on_plate - on_slider;
            return self
                .ends
                .iter()
                .map(|(plate, _)| length * plate)
                .fold((0.0, 0.0), |(lo, hi): (f64, f64), moved| {
                    (lo.min(moved), hi.max(moved))
                });
        }
        let enclose = |a: f64, b: f64, factor: f64| {
            let (one, two) = (a * factor, b * factor);
            (one.min(two), one.max(two))
        };
        self.ends
            .windows(2)
            .fold((0.0, 0.0), |(lo, hi): (f64, f64), piece| {
                let (from, to) = (piece[0], piece[1]);
                let plate = enclose(from.0, to.0, on_plate);
                let slider = enclose(from.1, to.1, on_slider);
                (lo.min(plate.0 - slider.1), hi.max(plate.1 - slider.0))
            })
    }
}

/// Moisture contents at which the design's wood stands over the year: driest, built, dampest.
pub fn moistures(design: &Design) -> [f64; 3] {
    let season = &design.season;
    [season.driest, season.built, season.dampest].map(moisture_content)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{Grain, Material, Sawn, Season};

    #[test]
    fn the_same_wood_the_same_way_does_not_drift_over_the_same_distance() {
        let drift = Drift::of(&Design::default()).unwrap();
        assert_eq!(drift.y.apart(50.0, 50.0), (0.0, 0.0));
        assert_eq!(drift.x.apart(-55.0, -55.0), (0.0, 0.0));
    }

    #[test]
    fn a_printed_slider_under_a_cross_grain_plate_drifts_much() {
        let mut design = Design::default();
        design.plate.grain = Grain::AlongY;
        design.slider.material = Material::Printed;
        let (dry, damp) = Drift::of(&design).unwrap().x.apart(55.0, 55.0);
        // white oak, flat: 0.00365 · 55 mm · about 5.4 − 8.5 and 13.0 − 8.5 per cent
        assert!((-0.75..-0.5).contains(&dry), "{dry}");
        assert!((0.75..1.1).contains(&damp), "{damp}");
    }

    #[test]
    fn still_air_moves_nothing_and_an_unknown_wood_is_not_guessed() {
        let mut design = Design::default();
        design.slider.material = Material::Wood {
            species: "balsa".into(),
            sawn: Sawn::Quarter,
            grain: Grain::AlongY,
        };
        design.season = Season::still(design.season.built);
        assert_eq!(Drift::of(&design).unwrap().x.apart(80.0, 80.0), (0.0, 0.0));
        design.plate.wood = "no such tree".into();
        assert_eq!(Drift::of(&design), None);
    }
}
