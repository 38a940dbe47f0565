//! One box as it was really built, in one moment of its use, seen from one dial.
//!
//! Everything a design leaves open is a *share* between −1 and 1: how much of the allowed error a
//! pin's place really has, how warm and how damp it is, how a shaft lies in its bore. A box is
//! a row of shares, so that drawing, trying all extremes and searching for the worst are one thing.
//!
//! Nothing here takes a formula from the solver except how much wood moves in which air: places
//! are moved by plain rigid-body steps with the standard library's own sines.

use latchwright_geometry::Point;
use latchwright_model::wood::{self, Mover};
use latchwright_model::{Climate, Design, Dial, Slot};

use crate::outline::{Outline, RealSlot};

/// Shares that do not belong to a slot, in the order in which they are taken.
const OWN: usize = 15;

/// Shares for each slot: width, depth, lead-in.
const PER_SLOT: usize = 3;

/// What stays the same for all boxes of one design, as one dial sees them.
#[derive(Debug)]
pub struct Workshop<'a> {
    /// The design.
    pub design: &'a Design,
    /// The dial.
    pub dial: &'a Dial,
    /// Mark of the dial in the combination.
    digit: u32,
    /// How far the disc turns on its knob to either side, radians.
    backlash: f64,
    /// What moves the plate along x and y, then the slider.
    movers: [Mover; 4],
}

/// A built box in one moment: slider forward, one dial standing near one mark.
#[derive(Debug, Clone)]
pub struct RealBox {
    /// Middle of the pin from the middle of the shaft, slider forward, plan axes, mm.
    pub pin: Point,
    /// Radius of the pin, mm.
    pub pin_radius: f64,
    /// The disc as it stands, its middle at the origin.
    pub disc: Outline,
    /// y of the keeper's edge over the y of the two front corners of the tab, slider forward, mm.
    pub overlaps: [f64; 2],
}

/// How plate and slider have grown, as fractions along x and y.
struct Air {
    plate: Point,
    slider: Point,
}

impl<'a> Workshop<'a> {
    /// The boxes of this design seen from dial `index`; `None` where the design names no such dial
    /// or no wood of the table.
    pub fn of(design: &'a Design, index: usize) -> Option<Self> {
        let dial = design.dials.get(index)?;
        Some(Self {
            design,
            dial,
            digit: design.combination.get(index).copied().unwrap_or(0),
            backlash: backlash(dial),
            movers: [
                Mover::of_plate(design, true)?,
                Mover::of_plate(design, false)?,
                Mover::of_slider(design, true)?,
                Mover::of_slider(design, false)?,
            ],
        })
    }

    /// How many shares a box needs.
    pub fn shares(&self) -> usize {
        OWN + PER_SLOT * self.dial.disc.slots.len()
    }

    /// The box with these shares, the dial standing near `mark`; missing shares count as 0.
    ///
    /// `None` where its slots run into one another.
    pub fn build(&self, mark: u32, shares: &[f64]) -> Option<RealBox> {
        let (design, dial) = (self.design, self.dial);
        let work = &design.workmanship;
        let mut rest = shares.iter().copied();
        let mut take = || rest.next().unwrap_or(0.0);

        let (warmth, damp) = (take(), take());
        let air = self.air(warmth, damp);
        let guide = Point::new(design.slider.guide_at.0, design.slider.guide_at.1);
        let below = dial.disc.radius + dial.pin.gap + dial.pin.diameter / 2.0;
        let bored = Point::new(dial.centre.0, dial.centre.1);
        let pinned = bored + Point::new(dial.pin.offset, -below);
        let pin = pinned + Point::new(take(), take()) * work.pin_place;
        let bore = bored + Point::new(take(), take()) * work.bore_place;
        let edge = Point::new(guide.x, design.keeper.edge);
        let edge = grown(edge, guide, air.plate).y + take() * work.keeper_place;
        let printed = work.print / 2.0 + work.film_spread;
        let rim = dial.disc.radius + take() * printed;
        let pin_radius = dial.pin.diameter / 2.0 + take() * printed;

        let slider = SliderInGuide::of(design, &air, take(), take());
        let on_slider = |place: Point| slider.place(grown(place, guide, air.slider), guide);
        let (direction, far) = (take() * std::f64::consts::PI, take().abs());
        let shaft = grown(bore, guide, air.plate)
            + Point::new(direction.cos(), direction.sin()) * (dial.bore.shaft_play * far);

        let off = take() * work.reading;
        let turn = (self.true_turn(mark) + off).to_radians() + take() * self.backlash;
        let slots = real_slots(design, dial, turn, take);

        let tip = design.keeper.edge - design.tab.engagement;
        let corner = |side: f64| {
            let x = design.tab.at + side * design.tab.width / 2.0;
            edge - on_slider(Point::new(x, tip)).y
        };
        Some(RealBox {
            pin: on_slider(pin) - shaft,
            pin_radius,
            disc: Outline::new(rim, &slots)?,
            overlaps: [corner(-1.0), corner(1.0)],
        })
    }

    /// Degrees clockwise from the pin to the true slot when the pointer stands on `mark`.
    fn true_turn(&self, mark: u32) -> f64 {
        let steps = f64::from(mark) - f64::from(self.digit);
        steps * 360.0 / f64::from(self.dial.positions)
    }

    /// The air with these shares of warmth and damp: −1 at the least that the season names, 1 at the
    /// most; each for itself, so that warm dry days and cool damp ones come up too.
    fn air(&self, warmth: f64, damp: f64) -> Air {
        let year = &self.design.season;
        let named = [year.built, year.driest, year.dampest];
        let between = |of: fn(&Climate) -> f64, share: f64| {
            let least = named.iter().map(of).fold(f64::INFINITY, f64::min);
            let most = named.iter().map(of).fold(f64::NEG_INFINITY, f64::max);
            least + (most - least) * f64::midpoint(share, 1.0)
        };
        let now = Climate {
            celsius: between(|air| air.celsius, warmth),
            humidity: between(|air| air.humidity, damp),
        };
        let [plate_x, plate_y, slider_x, slider_y] = self
            .movers
            .map(|mover| mover.moved(wood::Air::of(year.built), wood::Air::of(now)));
        Air {
            plate: Point::new(plate_x, plate_y),
            slider: Point::new(slider_x, slider_y),
        }
    }
}

/// The slots as they came out of the printer, on a disc whose true slot is turned by `turn`.
fn real_slots(
    design: &Design,
    dial: &Dial,
    turn: f64,
    mut take: impl FnMut() -> f64,
) -> Vec<RealSlot> {
    let work = &design.workmanship;
    let step = 360.0 / f64::from(dial.positions);
    let cut = |slot: &Slot| RealSlot {
        turn: turn + (slot.mark as f64 * step).to_radians(),
        width: slot.width + take() * (work.print + 2.0 * work.film_spread),
        depth: slot.depth + take() * (work.print + work.film_spread),
        lead_in: match take() * work.print {
            _ if slot.lead_in == 0.0 => 0.0,
            error => slot.lead_in + error,
        },
    };
    dial.disc.slots.iter().map(cut).collect()
}

impl RealBox {
    /// Tab under the keeper at its least engaged corner after the slider has gone `travel`, mm.
    pub fn held(&self, travel: f64) -> f64 {
        self.overlaps[0].min(self.overlaps[1]) - travel
    }

    /// Tab under the keeper at its most engaged corner after the slider has gone `travel`, mm.
    pub fn still_caught(&self, travel: f64) -> f64 {
        self.overlaps[0].max(self.overlaps[1]) - travel
    }

    /// Middle of the pin after the slider has gone `travel`, from the middle of the shaft.
    pub fn pin_at(&self, travel: f64) -> Point {
        self.pin + Point::new(0.0, travel)
    }
}

/// Where a place comes to when its part has grown about the guide's middle.
fn grown(place: Point, guide: Point, growth: Point) -> Point {
    let from = place - guide;
    guide + Point::new(from.x * (1.0 + growth.x), from.y * (1.0 + growth.y))
}

/// How the slider lies in its guide: turned about the guide's middle, then shifted along x.
struct SliderInGuide {
    sine: f64,
    cosine: f64,
    aside: f64,
}

impl SliderInGuide {
    /// The two guide points stand at these shares of the play that the season leaves them.
    fn of(design: &Design, air: &Air, front: f64, back: f64) -> Self {
        let slider = &design.slider;
        let swollen = (air.slider.x - air.plate.x) * design.tab.width / 2.0;
        let play = (slider.guide_play - swollen).max(0.0);
        let length = slider.guide_length * (1.0 + air.slider.y);
        let sine = (play * (front - back) / length).clamp(-1.0, 1.0);
        Self {
            sine,
            cosine: (1.0 - sine * sine).sqrt(),
            aside: play * f64::midpoint(front, back),
        }
    }

    fn place(&self, place: Point, guide: Point) -> Point {
        let from = place - guide;
        let turned = Point::new(
            from.x * self.cosine - from.y * self.sine,
            from.x * self.sine + from.y * self.cosine,
        );
        guide + turned + Point::new(self.aside, 0.0)
    }
}

/// How far the post turns in its recess before a corner of it meets a flat, radians: halved until
/// the corner just fits.
fn backlash(dial: &Dial) -> f64 {
    let half_pitch = std::f64::consts::PI / f64::from(dial.key.sides);
    let corner = dial.key.apothem / half_pitch.cos();
    let room = dial.key.apothem + dial.key.clearance;
    let (mut fits, mut not) = (0.0, half_pitch);
    for _ in 0..60 {
        let middle = f64::midpoint(fits, not);
        if corner * (half_pitch - middle).cos() <= room {
            fits = middle;
        } else {
            not = middle;
        }
    }
    fits
}
