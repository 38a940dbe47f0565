//! One year of the design, as a smooth swing from its driest air to its dampest and back: what a maker
//! sees as a curve. The proof itself counts every mixture of warmth and damp (see `drift`); the curve
//! lies within what it counts.

use latchwright_geometry::trig;

use latchwright_model::wood::{Air, Mover};
use latchwright_model::{Climate, Design, Dial};

/// Most moments that are worked out, whatever is asked for.
const MOST_POINTS: usize = 1000;

/// Halvings of half a year when the moment is sought at which wood is as moist as when it was built.
const HALVINGS: u32 = 40;

/// A year from the driest day to the next.
#[derive(Debug, Clone, PartialEq)]
pub struct Year {
    /// Moments evenly through the year; the first and the last are the driest.
    pub points: Vec<YearPoint>,
    /// Share of the year, 0 to 0.5, at which wood is as moist as on the day the latch was built (and
    /// so again as long before the year's end); `None` where it was built drier or damper than it
    /// ever is later.
    pub built_at: Option<f64>,
}

/// One moment of the year, with nothing off but the season. What drifts does so against the day the
/// latch was built.
#[derive(Debug, Clone, PartialEq)]
pub struct YearPoint {
    /// Share of the year since the driest day, 0 to 1; the dampest is at 0.5.
    pub at: f64,
    /// The air.
    pub climate: Climate,
    /// Moisture content of wood in it, per cent.
    pub moisture: f64,
    /// Outside 6 to 14 % moisture content (now or when built), where the handbook's second formula is
    /// used.
    pub second_formula: bool,
    /// Clearance left in the guide to either side, mm; negative: it binds.
    pub guide_play: f64,
    /// How much more of the tab is under the keeper with the slider forward, mm; negative: less.
    pub tab_drift: f64,
    /// Tab under the keeper when the dial that holds it worst stops the slider on its rim, mm; `None`
    /// where no rim meets its pin.
    pub tab_held: Option<f64>,
    /// How far each dial has moved from its pin.
    pub dials: Vec<DialDrift>,
}

/// How far a dial has moved from its pin since the day it was built, mm in plan axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DialDrift {
    /// Along x, across the travel.
    pub aside: f64,
    /// Along y, the travel: positive where the pin has further to go.
    pub along: f64,
}

/// The year of this design at so many moments (at least 2, at most 1000).
///
/// `None` where a wood is not known, or a size is no number that could be drawn.
pub fn year(design: &Design, points: usize) -> Option<Year> {
    let parts = Parts::of(design)?;
    let last = points.clamp(2, MOST_POINTS) - 1;
    let points: Vec<YearPoint> = (0..=last)
        .map(|point| parts.point(point as f64 / last as f64))
        .collect();
    let built_at = parts.built_at();
    points
        .iter()
        .all(YearPoint::is_finite)
        .then_some(Year { points, built_at })
}

impl Year {
    /// The least clearance in the guide to either side, mm.
    pub fn least_guide_play(&self) -> f64 {
        let play = self.points.iter().map(|point| point.guide_play);
        play.fold(f64::INFINITY, f64::min)
    }

    /// The furthest that any dial drifts from its pin along either axis, mm.
    pub fn most_drift(&self) -> f64 {
        let dials = self.points.iter().flat_map(|point| &point.dials);
        dials.fold(0.0, |most, dial| {
            most.max(dial.aside.abs()).max(dial.along.abs())
        })
    }
}

impl YearPoint {
    fn is_finite(&self) -> bool {
        let drifts = self.dials.iter().flat_map(|dial| [dial.aside, dial.along]);
        [self.moisture, self.guide_play, self.tab_drift]
            .into_iter()
            .chain(self.tab_held)
            .chain(drifts)
            .all(f64::is_finite)
    }
}

/// What moves along one axis.
struct Axis {
    plate: Mover,
    slider: Mover,
}

/// Plate and slider of a design, and its swing.
struct Parts<'a> {
    design: &'a Design,
    built: Air,
    x: Axis,
    y: Axis,
}

impl<'a> Parts<'a> {
    fn of(design: &'a Design) -> Option<Self> {
        let axis = |along_x| {
            Some(Axis {
                plate: Mover::of_plate(design, along_x)?,
                slider: Mover::of_slider(design, along_x)?,
            })
        };
        Some(Self {
            design,
            built: Air::of(design.season.built),
            x: axis(true)?,
            y: axis(false)?,
        })
    }

    /// The air at this share of the year.
    fn climate(&self, at: f64) -> Climate {
        let (from, to) = (self.design.season.driest, self.design.season.dampest);
        let share = f64::midpoint(1.0, -trig::cos(trig::radians(360.0 * at)));
        Climate {
            celsius: from.celsius + (to.celsius - from.celsius) * share,
            humidity: from.humidity + (to.humidity - from.humidity) * share,
        }
    }

    /// Where in the rising half of the year wood is as moist as when it was built.
    fn built_at(&self) -> Option<f64> {
        let moister = |at| Air::of(self.climate(at)).moisture() >= self.built.moisture();
        let (mut drier, mut damper) = (0.0, 0.5);
        if moister(drier) || !moister(damper) {
            // built exactly as dry as the driest, or outside the year
            let same = |at| Air::of(self.climate(at)).moisture() == self.built.moisture();
            return [drier, damper].into_iter().find(|at| same(*at));
        }
        for _ in 0..HALVINGS {
            let middle = f64::midpoint(drier, damper);
            if moister(middle) {
                damper = middle;
            } else {
                drier = middle;
            }
        }
        Some(damper)
    }

    /// How far a place `on_plate` mm from the guide's middle moves ahead of one `on_slider` mm from it.
    fn apart(&self, axis: &Axis, now: Air, on_plate: f64, on_slider: f64) -> f64 {
        on_plate * axis.plate.moved(self.built, now)
            - on_slider * axis.slider.moved(self.built, now)
    }

    fn point(&self, at: f64) -> YearPoint {
        let design = self.design;
        let climate = self.climate(at);
        let now = Air::of(climate);
        let half = design.tab.width / 2.0;
        let (guide_x, guide_y) = design.slider.guide_at;
        let tip = design.keeper.edge - design.tab.engagement;
        let drift = |dial: &Dial| {
            let (pin_x, pin_y) = dial.pin_at();
            let (x, y) = dial.centre;
            DialDrift {
                aside: self.apart(&self.x, now, x - guide_x, pin_x - guide_x),
                along: self.apart(&self.y, now, y - guide_y, pin_y - guide_y),
            }
        };
        let held = design.dials.iter().filter_map(|dial| self.held(dial, now));
        YearPoint {
            at,
            climate,
            moisture: now.moisture(),
            second_formula: now.outside_table() || self.built.outside_table(),
            guide_play: design.slider.guide_play + self.apart(&self.x, now, half, half),
            tab_drift: self.apart(&self.y, now, design.keeper.edge - guide_y, tip - guide_y),
            tab_held: held.min_by(f64::total_cmp),
            dials: design.dials.iter().map(drift).collect(),
        }
    }

    /// Tab under the keeper when this dial stops the slider on its rim, nothing off but the season, mm.
    fn held(&self, dial: &Dial, now: Air) -> Option<f64> {
        let design = self.design;
        let between = dial.disc.radius + dial.pin.diameter / 2.0;
        let below = between * between - dial.pin.offset * dial.pin.offset;
        if below <= 0.0 {
            return None;
        }
        let creep = dial.pin_below() - trig::sqrt(below);
        let (_, pin_y) = dial.pin_at();
        let tip = design.keeper.edge - design.tab.engagement;
        let drift = self.apart(
            &self.y,
            now,
            design.keeper.edge - dial.centre.1,
            tip - pin_y,
        );
        Some(design.tab.engagement - creep + drift)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::bounds::{SliderBounds, Terms};
    use crate::season::Drift;
    use crate::thin_latch::thin;
    use latchwright_model::wood::moisture_content;
    use latchwright_model::{Grain, Material, Season};

    /// A printed slider under a plate of white oak whose grain runs along the travel.
    fn cross_grain() -> Design {
        let mut design = thin();
        design.plate.grain = Grain::AlongY;
        design.slider.material = Material::Printed;
        design.slider.guide_play = 0.25;
        design
    }

    #[test]
    fn the_year_swings_from_the_driest_air_to_the_dampest_and_back() {
        let design = thin();
        let year = year(&design, 25).unwrap();
        assert_eq!(year.points.len(), 25);
        let (first, middle, last) = (&year.points[0], &year.points[12], &year.points[24]);
        assert_eq!(first.climate, design.season.driest);
        assert_eq!((middle.at, middle.climate), (0.5, design.season.dampest));
        assert!((last.climate.humidity - first.climate.humidity).abs() < 1e-9);
        for (early, late) in year.points.iter().zip(year.points.iter().rev()).take(12) {
            assert!((early.climate.humidity - late.climate.humidity).abs() < 1e-9);
        }
        // a quarter of the year on it is halfway between: a cosine, not a straight line
        assert!((year.points[6].climate.humidity - 47.5).abs() < 1e-9);
        assert!(year.points[3].climate.humidity < 25.0 + 22.5 / 2.0);
        assert!(first.second_formula && !middle.second_formula);
    }

    #[test]
    fn the_mark_of_the_built_day_is_where_wood_is_as_moist_as_then() {
        let mut design = thin();
        let at = year(&design, 2).unwrap().built_at.unwrap();
        assert!((0.2..0.3).contains(&at), "{at}");
        let air = Parts::of(&design).unwrap().climate(at);
        let off = moisture_content(air) - moisture_content(design.season.built);
        assert!(off.abs() < 1e-6, "{off}");
        design.season.built = design.season.driest;
        assert_eq!(year(&design, 2).unwrap().built_at, Some(0.0));
        design.season.built.humidity = 10.0;
        assert_eq!(year(&design, 2).unwrap().built_at, None);
    }

    /// Worked by hand: white oak 0.00365 per per cent, plastic 68·10⁻⁶ per kelvin.
    #[test]
    fn drift_and_guide_play_at_the_dampest_are_as_worked_by_hand() {
        let design = cross_grain();
        let year = year(&design, 3).unwrap();
        let damp = &year.points[1];
        let (dampest, built) = (design.season.dampest, design.season.built);
        let more = moisture_content(dampest) - moisture_content(built);
        let (plate, slider) = (0.003_65 * more, 68e-6 * (24.0 - 20.0));
        let aside = damp.dials[0].aside - -55.0 * (plate - slider);
        assert!(aside.abs() < 1e-9, "{aside}");
        let play = damp.guide_play - (0.25 + 20.0 * (plate - slider));
        assert!(play.abs() < 1e-9, "{play}");
        assert!(year.least_guide_play() < 0.1, "at the driest");
        assert!((year.most_drift() - damp.dials[0].aside.abs()).abs() < 1e-12);
    }

    #[test]
    fn still_air_leaves_the_nominal_latch_as_it_is() {
        let mut design = cross_grain();
        design.season = Season::still(design.season.built);
        let year = year(&design, 2).unwrap();
        let point = &year.points[1];
        assert_eq!(point.guide_play, 0.25);
        assert_eq!((point.tab_drift, year.most_drift()), (0.0, 0.0));
        // 6 mm of engagement less the gap of 2 mm, no pin aside
        assert_eq!(point.tab_held, Some(4.0));
    }

    #[test]
    fn the_curve_lies_within_what_the_proof_counts() {
        let mut design = cross_grain();
        design.season.dampest.humidity = 88.0;
        design.dials[0].pin.offset = 1.0;
        let drift = Drift::of(&design).unwrap();
        let slider = SliderBounds::of(&design, &drift, Terms::All);
        let within = |value: f64, (least, most): (f64, f64)| {
            assert!((least - 1e-12..=most + 1e-12).contains(&value), "{value}");
        };
        let points = year(&design, 99).unwrap().points;
        assert!(points.len() >= 99 && points[0].dials.len() == 3);
        for point in points {
            within(point.guide_play, (slider.least_play, slider.play));
            for (found, dial) in point.dials.iter().zip(&design.dials) {
                let (pin_x, pin_y) = dial.pin_at();
                within(found.aside, drift.x.apart(dial.centre.0, pin_x));
                within(
                    found.along,
                    drift.y.apart(dial.centre.1 - 45.0, pin_y - 45.0),
                );
            }
        }
    }

    #[test]
    fn a_year_that_cannot_be_drawn_is_none() {
        let mut design = thin();
        design.tab.width = f64::INFINITY;
        design.slider.material = Material::Printed;
        assert_eq!(year(&design, 9), None);
        design.plate.wood = "no such tree".to_owned();
        assert_eq!(
            year(
                &Design {
                    plate: design.plate,
                    ..thin()
                },
                9
            ),
            None
        );
        assert_eq!(year(&thin(), 0).unwrap().points.len(), 2);
    }
}
