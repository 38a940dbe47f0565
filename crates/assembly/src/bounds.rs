//! What errors and plays can add up to for one dial: the plain sums, sound and not yet tight.
//!
//! Signs: `lo` and `hi` are the least and largest value of a size over the fixed errors. Each sum
//! takes every contribution at its worst at once, which cannot happen in one box, so a promise made
//! with these sums is kept by every box.

use latchwright_geometry::trig;

use crate::season::Drift;
use latchwright_model::key;
use latchwright_model::{Design, Dial};

/// Which terms the sums carry.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Terms {
    /// First order, as the worked example of the mechanism is written down; for comparison only.
    FirstOrder,
    /// All of them, the small products of two errors too; what every promise is made with.
    All,
}

/// A size between its least and largest value, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// Least.
    pub lo: f64,
    /// Largest.
    pub hi: f64,
}

impl Spread {
    fn about(middle: f64, error: f64) -> Self {
        Self {
            lo: middle - error,
            hi: middle + error,
        }
    }
}

/// What the slider as a whole can do out of line.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SliderBounds {
    /// Most that a guide point can shift to either side, season included, mm.
    pub play: f64,
    /// Least clearance to either side that the season leaves in the guide, mm; negative: it binds.
    pub least_play: f64,
    /// Sine of the largest yaw.
    pub yaw: f64,
    /// One minus its cosine: what a turned length loses, as a fraction of it.
    pub shorten: f64,
    /// Length of the guide at its shortest, season included, mm.
    pub guide_length: f64,
    /// Most that the season makes of any length, as a factor of at least 1: places that are off, and
    /// levers, grow with the wood they are marked on.
    pub swell: f64,
}

impl SliderBounds {
    /// The slider of this design over its year.
    pub fn of(design: &Design, drift: &Drift, terms: Terms) -> Self {
        let (narrower, wider) = drift
            .x
            .apart(design.tab.width / 2.0, design.tab.width / 2.0);
        let play = design.slider.guide_play + wider;
        let (swell, shrink) = match terms {
            Terms::FirstOrder => (1.0, 0.0),
            Terms::All => (
                1.0 + drift.x.most_growth().max(drift.y.most_growth()),
                drift.y.slider_shrinks(),
            ),
        };
        let guide_length = design.slider.guide_length * (1.0 - shrink);
        let sine = (2.0 * play / guide_length).clamp(0.0, 1.0);
        let shorten = match terms {
            Terms::FirstOrder => 0.0,
            Terms::All => 1.0 - trig::sqrt(1.0 - sine * sine),
        };
        Self {
            play,
            least_play: design.slider.guide_play + narrower,
            yaw: sine,
            shorten,
            guide_length,
            swell,
        }
    }

    /// How much a lever of `length` mm across the travel can lift or sink at its end, mm.
    pub fn lift(&self, length: f64) -> f64 {
        self.yaw * length
    }
}

/// Backlash of a dial's key, degrees.
pub fn backlash_deg(dial: &Dial) -> f64 {
    let key = &dial.key;
    trig::degrees(key::backlash(key.sides, key.apothem, key.clearance))
}

/// Radius of a disc's rim, mm.
pub fn rim(design: &Design, dial: &Dial) -> Spread {
    let work = &design.workmanship;
    Spread::about(dial.disc.radius, work.print / 2.0 + work.film_spread)
}

/// The sums for one dial. Lengths in mm, angles in radians unless the name says degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DialBounds {
    /// Rim radius.
    pub rim: Spread,
    /// Pin radius.
    pub pin: Spread,
    /// Middle of the pin below the dial's centre at u = 0, nothing off.
    pub below: f64,
    /// |offset| + everything that can put the pin aside of its dial.
    pub aside: f64,
    /// Everything that can put the pin nearer to its disc or further off, the slider's yaw apart;
    /// the season apart.
    pub radial: f64,
    /// Season: least and largest growth of the distance from pin to dial along y.
    pub apart_y: (f64, f64),
    /// Reading and backlash together, degrees.
    pub turn_deg: f64,
    /// Backlash of the key alone, degrees.
    pub backlash_deg: f64,
    /// Largest yaw's lift at this pin, second-order terms included.
    pub lift: f64,
    /// Tab lost under the keeper at its worst corner when the slider is turned about this pin.
    pub tab_lift: f64,
    /// Season: least growth of what the tab has under the keeper with the slider stopped here.
    pub hold_drift: f64,
    /// What `aside` is made of.
    pub aside_parts: Aside,
}

/// What can put a pin aside of its dial, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Aside {
    /// Place of the pin.
    pub pin_place: f64,
    /// Place of the bore.
    pub bore_place: f64,
    /// Play of the shaft in its bore.
    pub shaft_play: f64,
    /// Play of the slider in its guide, and the turn that it allows.
    pub guide: f64,
    /// The season.
    pub season: f64,
    /// How far the pin stands beside its dial's middle as drawn.
    pub offset: f64,
}

impl Aside {
    /// All of it together.
    pub fn all(&self) -> f64 {
        self.pin_place + self.bore_place + self.shaft_play + self.guide + self.season + self.offset
    }
}

impl DialBounds {
    /// The sums for `dial` of `design`.
    pub fn of(
        design: &Design,
        dial: &Dial,
        slider: &SliderBounds,
        drift: &Drift,
        terms: Terms,
    ) -> Self {
        Self::turning(design, dial, slider, drift, terms, backlash_deg(dial))
    }

    /// The same where the backlash of the dial's key, degrees, is known.
    pub fn turning(
        design: &Design,
        dial: &Dial,
        slider: &SliderBounds,
        drift: &Drift,
        terms: Terms,
        backlash_deg: f64,
    ) -> Self {
        let work = &design.workmanship;
        let second = if terms == Terms::All {
            work.pin_place
        } else {
            0.0
        };
        let (pin_x, pin_y) = dial.pin_at();
        let (guide_x, guide_y) = design.slider.guide_at;
        let (across, along) = (
            ((pin_x - guide_x).abs() + second) * slider.swell,
            ((pin_y - guide_y).abs() + second) * slider.swell,
        );
        let (pin_place, bore_place) = (
            work.pin_place * slider.swell,
            work.bore_place * slider.swell,
        );

        let side =
            slider.play * (2.0 * along / slider.guide_length).max(1.0) + across * slider.shorten;
        let apart_x = drift.x.apart(dial.centre.0 - guide_x, pin_x - guide_x);
        let drift_x = apart_x.1.max(-apart_x.0);
        let aside_parts = Aside {
            pin_place,
            bore_place,
            shaft_play: dial.bore.shaft_play,
            guide: side,
            season: drift_x,
            offset: dial.pin.offset.abs(),
        };
        let tab = &design.tab;
        let tip = design.keeper.edge - tab.engagement;
        let corner = ((tab.at - pin_x).abs() + tab.width / 2.0 + second) * slider.swell;
        let tip_below = ((pin_y - tip).abs() + second) * slider.swell;
        let (hold_drift, _) = drift
            .y
            .apart(design.keeper.edge - dial.centre.1, tip - pin_y);
        Self {
            rim: rim(design, dial),
            pin: Spread::about(dial.pin.diameter / 2.0, work.print / 2.0 + work.film_spread),
            below: dial.pin_below(),
            aside: aside_parts.all(),
            radial: pin_place + bore_place + dial.bore.shaft_play,
            apart_y: drift.y.apart(dial.centre.1 - guide_y, pin_y - guide_y),
            turn_deg: work.reading + backlash_deg,
            backlash_deg,
            lift: slider.lift(across) + along * slider.shorten,
            tab_lift: slider.lift(corner) + tip_below * slider.shorten,
            hold_drift,
            aside_parts,
        }
    }

    /// Largest travel of the pin itself before it is stopped at `from_centre` mm from the dial's
    /// centre, wherever aside it is; `None` where it may slip past.
    pub fn creep(&self, from_centre: f64) -> Option<f64> {
        (from_centre > self.aside).then(|| {
            self.below + self.radial + self.apart_y.1
                - trig::sqrt(from_centre * from_centre - self.aside * self.aside)
        })
    }

    /// Tab beyond what is required when the pin has crept this far, mm.
    pub fn hold_margin(&self, design: &Design, creep: f64) -> f64 {
        // the season's share of the creep is part of `hold_drift`, where it belongs to one air
        let without_season = creep - self.apart_y.1;
        design.tab.engagement - design.workmanship.keeper_place - without_season - self.tab_lift
            + self.hold_drift.min(0.0)
            - design.tab.required_hold
    }

    /// Least clear distance between pin and rim at u = 0, the slider's yaw included, mm.
    pub fn rest_gap(&self) -> f64 {
        self.below - self.radial + self.apart_y.0 - self.rim.hi - self.pin.hi - self.lift
    }
}
