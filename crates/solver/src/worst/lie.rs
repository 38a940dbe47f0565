//! How one built latch lies in one moment, for the figures of the checks: where its bores, pins and
//! tab are, also of one dial beside another.
//!
//! Plain arithmetic on one box, kept apart from the bounds over all boxes and from the virtual
//! builds, so that each can find the others wrong.

use latchwright_geometry::trig;

use crate::built::{BuiltDial, BuiltLatch, BuiltSlot};
use crate::contact::mouth_half_angle;
use crate::model::{Design, Dial};
use crate::season::{Air, Mover};

/// One number of a built latch, for showing and for building it again.
#[derive(Debug, Clone, PartialEq)]
pub struct Number {
    /// The dial it belongs to, from 0; `None` for the latch as a whole.
    pub dial: Option<usize>,
    /// What it is, in words.
    pub name: &'static str,
    /// Its value.
    pub value: f64,
    /// Its unit; empty for a share.
    pub unit: &'static str,
}

/// Every number that says what was built and how it lies, of the latch and of the dials named.
pub fn numbers(latch: &BuiltLatch, dials: &[usize]) -> Vec<Number> {
    let of = |dial, name, value, unit| Number {
        dial,
        name,
        value,
        unit,
    };
    let mut numbers = vec![
        of(None, "temperature", latch.air.celsius, "°C"),
        of(None, "relative humidity", latch.air.humidity, "%"),
        of(None, "keeper off along y", latch.keeper, "mm"),
        of(
            None,
            "front of the guide, share of its play",
            latch.front,
            "",
        ),
        of(None, "back of the guide, share of its play", latch.back, ""),
    ];
    for index in dials {
        let Some(dial) = latch.dials.get(*index) else {
            continue;
        };
        let own = [
            ("pin off along x", dial.pin.0, "mm"),
            ("pin off along y", dial.pin.1, "mm"),
            ("bore off along x", dial.bore.0, "mm"),
            ("bore off along y", dial.bore.1, "mm"),
            ("rim radius", dial.rim, "mm"),
            ("pin radius", dial.pin_radius, "mm"),
            ("shaft in its bore along x", dial.shaft.0, "mm"),
            ("shaft in its bore along y", dial.shaft.1, "mm"),
            ("pointer off its mark", dial.reading, "°"),
            ("disc turned on its key", dial.backlash, "°"),
        ];
        numbers.extend(own.map(|(name, value, unit)| of(Some(*index), name, value, unit)));
        for slot in &dial.slots {
            numbers.extend([
                of(Some(*index), "slot width", slot.width, "mm"),
                of(Some(*index), "slot depth", slot.depth, "mm"),
                of(Some(*index), "lead-in", slot.lead_in, "mm"),
            ]);
        }
    }
    numbers
}

impl BuiltDial {
    /// Middle of the pin from the middle of the disc when they touch at plain rim, mm.
    pub fn touches_at(&self) -> f64 {
        self.rim + self.pin_radius
    }
}

/// A design with what makes its parts move, looked up once for many built latches.
#[derive(Debug, Clone)]
pub struct Workshop<'a> {
    /// The design.
    pub design: &'a Design,
    built: Air,
    /// Plate along x and y, slider along x and y.
    movers: [Mover; 4],
}

/// How one built latch lies in one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moment<'a> {
    design: &'a Design,
    /// Growth of the plate along x and y, as fractions.
    pub plate: (f64, f64),
    /// Growth of the slider along x and y, as fractions.
    pub slider: (f64, f64),
    /// Play that the season leaves in the guide, mm a side; negative where the slider binds.
    pub play: f64,
    sine: f64,
    cosine: f64,
    aside: f64,
    keeper: f64,
}

impl<'a> Workshop<'a> {
    /// Looks up what moves the parts; `None` for a wood that is not known.
    pub fn of(design: &'a Design) -> Option<Self> {
        Some(Self {
            design,
            built: Air::of(design.season.built),
            movers: [
                Mover::of_plate(design, true)?,
                Mover::of_plate(design, false)?,
                Mover::of_slider(design, true)?,
                Mover::of_slider(design, false)?,
            ],
        })
    }

    /// How this latch lies.
    pub fn moment(&self, latch: &BuiltLatch) -> Moment<'a> {
        let now = Air::of(latch.air);
        let [plate_x, plate_y, slider_x, slider_y] =
            self.movers.map(|mover| mover.moved(self.built, now));
        let (slider, tab) = (&self.design.slider, &self.design.tab);
        let play = slider.guide_play - (slider_x - plate_x) * tab.width / 2.0;
        let room = play.max(0.0);
        let length = slider.guide_length * (1.0 + slider_y);
        let sine = (room * (latch.front - latch.back) / length).clamp(-1.0, 1.0);
        Moment {
            design: self.design,
            plate: (plate_x, plate_y),
            slider: (slider_x, slider_y),
            play,
            sine,
            cosine: trig::sqrt(1.0 - sine * sine),
            aside: room * f64::midpoint(latch.front, latch.back),
            keeper: latch.keeper,
        }
    }
}

impl Moment<'_> {
    /// A place that was marked on the plate, from the guide's middle.
    pub fn on_plate(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let (guide_x, guide_y) = self.design.slider.guide_at;
        (
            (x - guide_x) * (1.0 + self.plate.0),
            (y - guide_y) * (1.0 + self.plate.1),
        )
    }

    /// A place that was marked on the slider, from the guide's middle, slider forward.
    fn on_slider(&self, (x, y): (f64, f64)) -> (f64, f64) {
        let (guide_x, guide_y) = self.design.slider.guide_at;
        let x = (x - guide_x) * (1.0 + self.slider.0);
        let y = (y - guide_y) * (1.0 + self.slider.1);
        (
            x * self.cosine - y * self.sine + self.aside,
            x * self.sine + y * self.cosine,
        )
    }

    /// Middle of a dial's bore from the guide's middle, plan axes, mm.
    pub fn bore(&self, dial: &Dial, built: &BuiltDial) -> (f64, f64) {
        self.on_plate((dial.centre.0 + built.bore.0, dial.centre.1 + built.bore.1))
    }

    /// Middle of one dial's pin from the middle of another's shaft (or its own), slider forward,
    /// plan axes, mm.
    pub fn pin(&self, pin: (&Dial, &BuiltDial), shaft: (&Dial, &BuiltDial)) -> (f64, f64) {
        let ((pin, built_pin), (dial, built)) = (pin, shaft);
        let (pin_x, pin_y) = pin.pin_at();
        let pin = self.on_slider((pin_x + built_pin.pin.0, pin_y + built_pin.pin.1));
        let bore = (dial.centre.0 + built.bore.0, dial.centre.1 + built.bore.1);
        let bore = self.on_plate(bore);
        (
            pin.0 - bore.0 - built.shaft.0,
            pin.1 - bore.1 - built.shaft.1,
        )
    }

    /// Tab under the keeper at its left and right front corner, slider forward, mm.
    pub fn overlaps(&self) -> [f64; 2] {
        let design = self.design;
        let (tab, edge) = (&design.tab, design.keeper.edge);
        let (_, edge_y) = self.on_plate((design.slider.guide_at.0, edge));
        let corner = |side: f64| {
            let x = tab.at + side * tab.width / 2.0;
            let (_, y) = self.on_slider((x, edge - tab.engagement));
            edge_y + self.keeper - y
        };
        [corner(-1.0), corner(1.0)]
    }

    /// Tab under the keeper at its least engaged corner after the slider has gone `travel`, mm.
    pub fn held(&self, travel: f64) -> f64 {
        let [left, right] = self.overlaps();
        left.min(right) - travel
    }

    /// Tab under the keeper at its most engaged corner after the slider has gone `travel`, mm;
    /// negative once it is out.
    pub fn still_caught(&self, travel: f64) -> f64 {
        let [left, right] = self.overlaps();
        left.max(right) - travel
    }
}

/// Travel after which a pin whose middle is at `pin` from the shaft has come as near as `within`, mm;
/// `None` where it slips past.
pub fn travel_to(pin: (f64, f64), within: f64) -> Option<f64> {
    let square = within * within - pin.0 * pin.0;
    (square > 0.0).then(|| -pin.1 - trig::sqrt(square))
}

/// How far a pin keeps clear of what could stop it at a mouth, mm: of plain rim, of the mouth's
/// outer corner, and where there is no lead-in of the corner of the wall.
///
/// `pin` is its middle from the middle of the shaft, the mouth's middle is turned clockwise by
/// `turn_deg` from straight ahead. It comes straight along y, the disc held still.
pub fn enters(dial: &BuiltDial, slot: &BuiltSlot, pin: (f64, f64), turn_deg: f64) -> f64 {
    let turn = trig::radians(turn_deg);
    let (sine, cosine) = (trig::sin(turn), trig::cos(turn));
    let angle = mouth_half_angle(dial.rim, slot.width / 2.0, slot.lead_in);
    let (across, out) = (dial.rim * trig::sin(angle), dial.rim * trig::cos(angle));
    let side = |sine: f64, aside: f64| {
        if slot.lead_in > 0.0 {
            // on the lead-in's flat the pin's middle is r/√2 further in and out
            let shift = dial.pin_radius * core::f64::consts::FRAC_1_SQRT_2;
            (across - shift) * cosine - (out + shift) * sine - aside
        } else {
            across * cosine - out * sine - dial.pin_radius - aside
        }
    };
    // clockwise takes the slot to the left, so that its right corner comes towards the pin
    side(sine, pin.0).min(side(-sine, -pin.0))
}

/// How much deeper the floor of a slot is than a pin goes whose middle ends at `end` from the shaft,
/// the disc turned so that its slot faces the pin, mm.
pub fn depth_left(dial: &BuiltDial, slot: &BuiltSlot, end: (f64, f64)) -> f64 {
    slot.depth - dial.rim - dial.pin_radius + trig::hypot(end.0, end.1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn with_nothing_off_everything_is_where_it_was_drawn() {
        let design = Design::default();
        let latch = BuiltLatch::nominal(&design);
        let workshop = Workshop::of(&design).unwrap();
        let moment = workshop.moment(&latch);
        for (dial, built) in design.dials.iter().zip(&latch.dials) {
            let pin = moment.pin((dial, built), (dial, built));
            assert_eq!(pin, (0.0, -22.0));
            assert_eq!(travel_to(pin, built.touches_at()), Some(2.0));
        }
        assert_eq!(moment.overlaps(), [6.0, 6.0]);
        assert_eq!(moment.play, design.slider.guide_play);
    }

    /// The guide points at opposite ends of 0.25 mm of play over 60 mm: 0.477°, which lowers the pin
    /// 55 mm to the left by 0.458 mm.
    #[test]
    fn a_turned_slider_lifts_one_pin_and_lowers_another() {
        let design = Design::default();
        let mut latch = BuiltLatch::nominal(&design);
        (latch.front, latch.back) = (1.0, -1.0);
        let moment = Workshop::of(&design).unwrap().moment(&latch);
        let y = |index: usize| {
            let dial = (&design.dials[index], &latch.dials[index]);
            moment.pin(dial, dial).1 + 22.0
        };
        assert!((y(0) + 0.4583).abs() < 2e-3 && (y(2) - 0.4583).abs() < 2e-3);
        assert!(y(1).abs() < 2e-3);
    }
}
