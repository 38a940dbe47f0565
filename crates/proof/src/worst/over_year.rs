//! Plate and slider of any real box at any moment, over cells of boxes: where pin, bore and tab are.
//!
//! The same steps, in the same order, that one box is built in.

use latchwright_geometry::Interval;

use super::jet::Jet;
use super::known::{self, Known};
use super::least::{Cell, Least};
use super::year::{Year, moisture};
use crate::built::Movement;
use latchwright_model::wood::{Air, Rates};
use latchwright_model::{Climate, Design, Dial, Sound};

/// Variables of one box as one dial sees it. Those that range come first, and first of all those that
/// every figure has, so that a figure of few variables has few slopes to carry.
pub const VARIABLES: usize = 10;

/// The first of them, which range for a figure of the slider alone.
pub const SLIDER_VARIABLES: usize = 4;
/// Those that range for one dial.
pub const DIAL_VARIABLES: usize = 8;
/// Those that range where the slider travels too.
pub const TRAVEL_VARIABLES: usize = 9;

/// Ranges of such boxes.
pub type Boxes = Cell<VARIABLES>;

/// Temperature of the moment, °C.
pub const CELSIUS: usize = 0;
/// What the damp does: moisture content of the wood where wood alone follows it, else the relative
/// humidity, per cent.
pub const DAMP: usize = 1;
/// Share of its play by which the guide point at the front stands to the right.
pub const FRONT: usize = 2;
/// The same at the back.
pub const BACK: usize = 3;
/// Error of the pin's place along x and y, mm.
pub const PIN: [usize; 2] = [4, 5];
/// Error of the bore's place along x and y, mm.
pub const BORE: [usize; 2] = [6, 7];
/// Travel of the slider, mm; where the figure looks at more than one.
pub const TRAVEL: usize = 8;
/// Which of the handbook's formulas moves the wood: 0 the first, 1 the second. One of the two in every
/// cell.
pub const FORMULA: usize = 9;

/// A design with what its errors and plays range over.
#[derive(Clone)]
pub struct LatchOverYear<'a> {
    /// The design.
    pub design: &'a Design,
    /// What moves its plate and slider.
    pub movement: Movement,
    built: Air,
    /// Plate along x and y, slider along x and y.
    movers: [Rates; 4],
    year: Year,
    known: Option<&'a Known>,
    goes_on: Option<&'a GoesOn<'a>>,
}

/// Is asked before each figure is bounded whether to go on.
pub type GoesOn<'a> = dyn Fn() -> bool + 'a;

/// Growth of plate and slider, as fractions, and what it leaves of the guide.
pub struct Grown<const M: usize> {
    plate: [Jet<M>; 2],
    slider: [Jet<M>; 2],
    sine: Jet<M>,
    cosine: Jet<M>,
    aside: Jet<M>,
}

/// How far the air has changed since the latch was built.
struct Change<const M: usize> {
    /// Moisture content of wood, per cent.
    wetter: Jet<M>,
    /// Relative humidity, per cent.
    damper: Jet<M>,
    /// Temperature, kelvin.
    warmer: Jet<M>,
    /// Which formula moves wood.
    formula: Jet<M>,
}

impl<const M: usize> Change<M> {
    /// Growth at these rates, as a fraction.
    fn by(&self, rates: Rates) -> Jet<M> {
        match rates {
            Rates::Moisture { first, second } => {
                self.by_moisture(Interval::at(first), Interval::at(second))
            }
            Rates::Sheet { humid, warm } => self.damper.times(humid) + self.warmer.times(warm),
        }
    }

    /// Growth of wood at these rates of the first and the second formula, as a fraction.
    fn by_moisture(&self, first: Interval, second: Interval) -> Jet<M> {
        let more = self.formula * Jet::constant(second - first);
        self.wetter * (more + Jet::constant(first))
    }
}

impl<'a> LatchOverYear<'a> {
    /// The design over its year.
    pub fn of(sound: &Sound<'a>) -> Self {
        let (design, movers) = (sound.design(), sound.movers());
        let season = &design.season;
        let built = Air::of(season.built);
        let named = [season.built, season.driest, season.dampest];
        let range = |of: fn(&Climate) -> f64| {
            let all = named.map(|climate| Interval::at(of(&climate)));
            all[0].hull(all[1]).hull(all[2])
        };
        let material = &design.slider.material;
        Self {
            design,
            movement: Movement::of(sound),
            built,
            movers: [
                movers.plate_x.rates(built),
                movers.plate_y.rates(built),
                movers.slider_x.rates(built),
                movers.slider_y.rates(built),
            ],
            year: Year::of(
                built,
                range(|air| air.celsius),
                range(|air| air.humidity),
                material,
            ),
            known: None,
            goes_on: None,
        }
    }

    /// The same, asking first what is known already.
    #[must_use]
    pub fn knowing(self, known: &'a Known) -> Self {
        Self {
            known: Some(known),
            ..self
        }
    }

    /// The same, asking before each figure whether to go on: from where it is not, none can be had.
    #[must_use]
    pub fn while_it(self, goes_on: &'a GoesOn<'a>) -> Self {
        Self {
            goes_on: Some(goes_on),
            ..self
        }
    }

    /// Whether the figures are still wanted.
    pub(super) fn goes_on(&self) -> bool {
        self.goes_on.is_none_or(|goes_on| goes_on())
    }

    /// What is known of this figure, or else what `bound` finds.
    pub(super) fn known_or(
        &self,
        figure: known::AskedFigure<'_>,
        decides: f64,
        bound: impl FnOnce() -> Option<Least<VARIABLES>>,
    ) -> Option<Least<VARIABLES>> {
        if !self.goes_on() {
            return None;
        }
        match self.known {
            Some(known) => known.answer(known.asked(self.design, figure, decides), bound),
            None => bound(),
        }
    }

    /// All boxes, the slider forward; with the errors of a pin and a bore where `places` is set.
    pub fn all(&self, places: bool) -> Vec<Boxes> {
        let work = &self.design.workmanship;
        let share = Interval::new(-1.0, 1.0);
        let error = |most: f64| Interval::about_zero(if places { most } else { 0.0 });
        let (pin, bore) = (error(work.pin_place), error(work.bore_place));
        let of = |(warmth, damp, formula): &(Interval, Interval, f64)| {
            let (formula, still) = (Interval::at(*formula), Interval::ZERO);
            [
                *warmth, *damp, share, share, pin, pin, bore, bore, still, formula,
            ]
        };
        self.year.airs.iter().map(of).collect()
    }

    /// How plate and slider have grown, and how the slider lies in its guide.
    pub fn grown<const M: usize>(&self, cell: &Boxes) -> Option<Grown<M>> {
        let slider = &self.design.slider;
        let at = |index: usize| Jet::<M>::variable(cell[index], index);
        let [plate_x, plate_y, slider_x, slider_y] = self.strains(cell);
        let play = self.play_left(cell).at_least(0.0);
        let length = slider_y.plus(1.0).times(slider.guide_length);
        if length.value.lo <= 0.0 {
            return None;
        }
        let (front, back) = (at(FRONT), at(BACK));
        let sine = (play * (front - back) * length.recip()).held(Interval::new(-1.0, 1.0));
        let square = (-sine.square()).plus(1.0);
        // a slider turned by more than 80 degrees is none
        (square.value.lo > 0.03).then(|| Grown {
            plate: [plate_x, plate_y],
            slider: [slider_x, slider_y],
            sine,
            cosine: square.sqrt(),
            aside: (play * (front + back)).times(0.5),
        })
    }

    /// Play left to either side in the guide; negative where the slider binds.
    pub fn play_left<const M: usize>(&self, cell: &Boxes) -> Jet<M> {
        let swollen = self.swelling(cell).times(self.design.tab.width / 2.0);
        (-swollen).plus(self.design.slider.guide_play)
    }

    /// Growth of the plate along x and y, as fractions.
    pub fn plate_growth<const M: usize>(&self, cell: &Boxes) -> [Jet<M>; 2] {
        let [x, y, ..] = self.strains(cell);
        [x, y]
    }

    /// The air of a box: one in which its wood has the moisture content it was found with.
    pub fn climate(&self, at: &[f64; VARIABLES]) -> Climate {
        self.year.climate(at[CELSIUS], at[DAMP])
    }

    /// Growth of plate along x and y, then of slider along x and y, as fractions.
    fn strains<const M: usize>(&self, cell: &Boxes) -> [Jet<M>; 4] {
        let change = self.change(cell);
        self.movers.map(|rates| change.by(rates))
    }

    /// How much more the slider grows than the plate along x, as a fraction.
    ///
    /// Taken as one figure where the same thing moves both, so that what they share cancels.
    fn swelling<const M: usize>(&self, cell: &Boxes) -> Jet<M> {
        let [plate, _, slider, _] = self.movers;
        let change = self.change(cell);
        match (plate, slider) {
            (same, other) if same == other => Jet::constant(Interval::ZERO),
            (
                Rates::Moisture { first, second },
                Rates::Moisture {
                    first: more,
                    second: beyond,
                },
            ) => {
                let within = Interval::at(more) - Interval::at(first);
                let outside = Interval::at(beyond) - Interval::at(second);
                change.by_moisture(within, outside)
            }
            _ => change.by(slider) - change.by(plate),
        }
    }

    /// How far the air has changed since the latch was built.
    fn change<const M: usize>(&self, cell: &Boxes) -> Change<M> {
        let at = |index: usize| Jet::<M>::variable(cell[index], index);
        let wood = if self.year.by_moisture {
            at(DAMP)
        } else {
            lift(moisture(cell[CELSIUS], cell[DAMP]))
        };
        let wetter = wood.plus(-self.built.moisture());
        let climate = self.built.climate();
        Change {
            wetter,
            damper: at(DAMP).plus(-climate.humidity),
            warmer: at(CELSIUS).plus(-climate.celsius),
            formula: at(FORMULA),
        }
    }

    /// Where a place on the plate is, from the guide's middle.
    fn on_plate<const M: usize>(grown: &Grown<M>, (x, y): (Jet<M>, Jet<M>)) -> (Jet<M>, Jet<M>) {
        let [along_x, along_y] = grown.plate;
        (x * along_x.plus(1.0), y * along_y.plus(1.0))
    }

    /// Where a place on the slider is, from the guide's middle, slider forward.
    fn on_slider<const M: usize>(grown: &Grown<M>, (x, y): (Jet<M>, Jet<M>)) -> (Jet<M>, Jet<M>) {
        let [along_x, along_y] = grown.slider;
        let (x, y) = (x * along_x.plus(1.0), y * along_y.plus(1.0));
        (
            x * grown.cosine - y * grown.sine + grown.aside,
            x * grown.sine + y * grown.cosine,
        )
    }

    /// A place of the plan from the guide's middle, off by two of the variables.
    fn place<const M: usize>(
        &self,
        (x, y): (f64, f64),
        cell: &Boxes,
        off: Option<[usize; 2]>,
    ) -> (Jet<M>, Jet<M>) {
        let (guide_x, guide_y) = self.design.slider.guide_at;
        let axis = |place: f64, guide: f64, off: Option<usize>| {
            let nominal = Interval::at(place) - Interval::at(guide);
            match off {
                Some(index) => {
                    let mut jet = Jet::variable(cell[index], index);
                    jet.value = jet.value + nominal;
                    jet
                }
                None => Jet::constant(nominal),
            }
        };
        (
            axis(x, guide_x, off.map(|[x, _]| x)),
            axis(y, guide_y, off.map(|[_, y]| y)),
        )
    }

    /// Middle of `pin`'s pin from the middle of `bore`'s bore, slider forward, mm.
    pub fn pin_from_bore<const M: usize>(
        &self,
        cell: &Boxes,
        grown: &Grown<M>,
        pin: &Dial,
        bore: &Dial,
    ) -> (Jet<M>, Jet<M>) {
        let (pin_x, pin_y) = Self::on_slider(grown, self.place(pin.pin_at(), cell, Some(PIN)));
        let (bore_x, bore_y) = Self::on_plate(grown, self.place(bore.centre, cell, Some(BORE)));
        (pin_x - bore_x, pin_y - bore_y)
    }

    /// Tab under the keeper at its left (`side` −1) or right (1) front corner, slider forward and
    /// keeper where it was drawn, mm.
    pub fn overlap<const M: usize>(&self, cell: &Boxes, grown: &Grown<M>, side: f64) -> Jet<M> {
        let design = self.design;
        let tip = design.keeper.edge - design.tab.engagement;
        let corner = (design.tab.at + side * design.tab.width / 2.0, tip);
        let (_, corner) = Self::on_slider(grown, self.place(corner, cell, None));
        let edge = (design.slider.guide_at.0, design.keeper.edge);
        let (_, edge) = Self::on_plate(grown, self.place(edge, cell, None));
        edge - corner
    }
}

fn lift<const M: usize>(moisture: Jet<2>) -> Jet<M> {
    let [warm, damp] = moisture.slope;
    Jet::with_slopes(moisture.value, [(CELSIUS, warm), (DAMP, damp)])
}
