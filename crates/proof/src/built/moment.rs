//! Where the parts of a built latch are at one moment, the slider forward.

use latchwright_geometry::{Point, trig};

use super::{BuiltLatch, Meeting, Opening};
use latchwright_model::validate::faults;
use latchwright_model::wood::{Air, Mover};
use latchwright_model::{Climate, Design, Sound};

/// What moves plate and slider of a design with the air; made once for many built latches.
#[derive(Debug, Clone, Copy)]
pub struct Movement {
    built: Air,
    /// Plate along x and y, then slider along x and y.
    movers: [Mover; 4],
}

/// How plate and slider have grown since they were built, as fractions along x and y.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Growth {
    /// Of the plate.
    pub plate: Point,
    /// Of the slider.
    pub slider: Point,
}

impl Movement {
    /// What moves this design.
    pub fn of(sound: &Sound<'_>) -> Self {
        let movers = sound.movers();
        Self {
            built: Air::of(sound.design().season.built),
            movers: [
                movers.plate_x,
                movers.plate_y,
                movers.slider_x,
                movers.slider_y,
            ],
        }
    }

    /// Growth from the air it was built in to the air `now`.
    pub fn until(&self, now: Climate) -> Growth {
        let now = Air::of(now);
        let [plate_x, plate_y, slider_x, slider_y] =
            self.movers.map(|mover| mover.moved(self.built, now));
        Growth {
            plate: Point::new(plate_x, plate_y),
            slider: Point::new(slider_x, slider_y),
        }
    }
}

/// A built latch at its moment: how its parts have grown and how the slider lies in its guide.
#[derive(Debug, Clone, Copy)]
pub struct Moment<'a> {
    design: &'a Design,
    built: &'a BuiltLatch,
    growth: Growth,
    guide: Point,
    play: f64,
    sine: f64,
    cosine: f64,
    aside: f64,
}

impl<'a> Moment<'a> {
    /// The moment of this built latch; `None` for a design that is not sound.
    pub fn of(design: &'a Design, built: &'a BuiltLatch) -> Option<Self> {
        let sound = Sound::of(design, &faults(design))?;
        let growth = Movement::of(&sound).until(built.air);
        Some(Self::grown(design, built, growth))
    }

    /// The moment of this built latch, its parts grown by `growth`.
    ///
    /// The two guide points stand at their shares of the play that the season leaves. That turns the
    /// slider about the guide's middle and then shifts it along x.
    pub fn grown(design: &'a Design, built: &'a BuiltLatch, growth: Growth) -> Self {
        let slider = &design.slider;
        let swollen = (growth.slider.x - growth.plate.x) * design.tab.width / 2.0;
        let play = slider.guide_play - swollen;
        let play_left = play.max(0.0);
        let length = slider.guide_length * (1.0 + growth.slider.y);
        let sine = (play_left * (built.front - built.back) / length).clamp(-1.0, 1.0);
        Self {
            design,
            built,
            growth,
            guide: Point::new(slider.guide_at.0, slider.guide_at.1),
            play,
            sine,
            cosine: trig::sqrt(1.0 - sine * sine),
            aside: play_left * f64::midpoint(built.front, built.back),
        }
    }

    /// The latch whose moment it is.
    pub fn built(&self) -> &'a BuiltLatch {
        self.built
    }

    /// How far each guide point can still shift to either side, mm; negative where the slider binds.
    pub fn play_left(&self) -> f64 {
        self.play
    }

    /// Where a place marked on the plate has come to.
    pub fn on_plate(&self, place: Point) -> Point {
        let (from, by) = (place - self.guide, self.growth.plate);
        self.guide + Point::new(from.x * (1.0 + by.x), from.y * (1.0 + by.y))
    }

    /// Where a place marked on the slider has come to, slider forward.
    fn on_slider(&self, place: Point) -> Point {
        let (from, by) = (place - self.guide, self.growth.slider);
        let (x, y) = (from.x * (1.0 + by.x), from.y * (1.0 + by.y));
        self.guide
            + Point::new(
                x * self.cosine - y * self.sine + self.aside,
                x * self.sine + y * self.cosine,
            )
    }

    /// Middle of dial `index`'s bore, mm in plan axes.
    pub fn bore(&self, index: usize) -> Option<Point> {
        let (dial, built) = (self.design.dials.get(index)?, self.built.dials.get(index)?);
        Some(self.on_plate(off(dial.centre, built.bore)))
    }

    /// Middle of dial `index`'s pin from the middle of its shaft, slider forward, mm in plan axes.
    pub fn pin(&self, index: usize) -> Option<Point> {
        self.pin_from(index, index)
    }

    /// Middle of dial `pin`'s pin from the middle of dial `shaft`'s shaft, slider forward, mm.
    pub fn pin_from(&self, pin: usize, shaft: usize) -> Option<Point> {
        let (dial, built) = (self.design.dials.get(pin)?, self.built.dials.get(pin)?);
        let pin = self.on_slider(off(dial.pin_at(), built.pin));
        let (x, y) = self.built.dials.get(shaft)?.shaft;
        Some(pin - self.bore(shaft)? - Point::new(x, y))
    }

    /// Tab under the keeper at its left and right front corner, slider forward, mm.
    pub fn overlaps(&self) -> [f64; 2] {
        let design = self.design;
        let drawn = Point::new(self.guide.x, design.keeper.edge);
        let edge = self.on_plate(drawn).y + self.built.keeper;
        let tip = design.keeper.edge - design.tab.engagement;
        [-1.0, 1.0].map(|side| {
            let x = design.tab.at + side * design.tab.width / 2.0;
            edge - self.on_slider(Point::new(x, tip)).y
        })
    }

    /// Tab under the keeper at its least engaged corner after the slider has gone `travel`, mm.
    pub fn held(&self, travel: f64) -> f64 {
        let [left, right] = self.overlaps();
        left.min(right) - travel
    }

    /// How far the tab is out of the keeper at full travel, at the corner that leaves last, mm.
    pub fn out_at_full_travel(&self) -> f64 {
        let [left, right] = self.overlaps();
        self.design.slider.travel - left.max(right)
    }

    /// Tab under the keeper beyond what is required, slider forward, mm.
    pub fn held_at_rest(&self) -> f64 {
        self.held(0.0) - self.design.tab.required_hold
    }

    /// What dial `index`'s pin finds before it; `None` where there is no such dial.
    pub fn meeting(&self, index: usize) -> Option<Meeting<'a>> {
        self.meeting_in(index, Vec::new())
    }

    /// The same, its openings kept in `buffer`, which [`Meeting::into_buffer`] gives back.
    pub fn meeting_in(&self, index: usize, buffer: Vec<Opening>) -> Option<Meeting<'a>> {
        let dial = self.design.dials.get(index)?;
        let built = self.built.dials.get(index)?;
        let pin = self.pin(index)?;
        let digit = self.design.digit(index);
        let travel = self.design.slider.travel;
        Some(Meeting::new(dial, built, digit, pin, travel, buffer))
    }
}

/// A place that was meant, off by an error.
fn off((x, y): (f64, f64), by: (f64, f64)) -> Point {
    Point::new(x + by.0, y + by.1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::thin_latch::thin;

    #[test]
    fn with_nothing_off_pins_and_tab_are_where_they_are_drawn() {
        let design = thin();
        let built = BuiltLatch::nominal(&design);
        let moment = Moment::of(&design, &built).unwrap();
        for index in 0..3 {
            let pin = moment.pin(index).unwrap();
            assert!(pin.distance(Point::new(0.0, -22.0)) < 1e-12, "{pin:?}");
        }
        assert_eq!(moment.overlaps(), [6.0, 6.0]);
        assert_eq!(moment.play_left(), design.slider.guide_play);
        assert!((moment.out_at_full_travel() - 2.0).abs() < 1e-12);
        assert!((moment.held_at_rest() - 4.5).abs() < 1e-12);
    }

    /// Yaw 2·0.25/60; at x = ±55 it lifts a pin by 55·sin, at the tab's corners ±20·sin.
    #[test]
    fn a_turned_slider_lifts_one_side_and_sinks_the_other() {
        let mut design = thin();
        design.season = latchwright_model::Season::still(design.season.built);
        (design.slider.guide_length, design.slider.guide_play) = (60.0, 0.25);
        let mut built = BuiltLatch::nominal(&design);
        (built.front, built.back) = (1.0, -1.0);
        let moment = Moment::of(&design, &built).unwrap();
        let lift = 55.0 * 0.5 / 60.0;
        let [left, _, right] = [0, 1, 2].map(|index| moment.pin(index).unwrap().y);
        assert!((right - left - 2.0 * lift).abs() < 1e-9, "{left} {right}");
        let [left, right] = moment.overlaps();
        assert!(
            (left - right - 40.0 * 0.5 / 60.0).abs() < 1e-9,
            "{left} {right}"
        );
    }

    #[test]
    fn a_slider_that_swells_loses_play_in_its_guide() {
        let mut design = thin();
        design.slider.material = latchwright_model::Material::Mdf;
        design.slider.guide_play = 0.25;
        let mut built = BuiltLatch::nominal(&design);
        built.air.humidity += 30.0;
        let growth = Movement::of(&Sound::of(&design, &faults(&design)).unwrap()).until(built.air);
        let swollen = 20.0 * (growth.slider.x - growth.plate.x);
        let left = Moment::of(&design, &built).unwrap().play_left();
        assert!(swollen > 0.05, "{swollen}");
        assert!((left - (0.25 - swollen)).abs() < 1e-12, "{left}");
    }
}
