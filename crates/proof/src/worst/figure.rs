//! The figures of one dial, and of the slider as a whole, that are taken over all boxes.

use latchwright_geometry::Interval;

use super::jet::Jet;
use super::known;
use super::least::{FigureOverBoxes, Least, Until, least};
use super::over_year::{
    BORE, Boxes, DIAL_VARIABLES, Grown, LatchOverYear, PIN, SLIDER_VARIABLES, TRAVEL,
    TRAVEL_VARIABLES, VARIABLES,
};
use latchwright_model::Dial;

/// How far apart bound and worst box may stay, mm: well within the hundredth that is asked.
pub const GAP: f64 = 0.002;
/// The same for dials that stop the slider together, which takes longest: still the hundredth.
const GAP_TOGETHER: f64 = 0.01;
/// Cells at most; a figure that needs more keeps its bound, which holds all the same.
const CELLS: usize = 2500;
/// Cells at most for dials that stop the slider together: each takes dozens of figures.
const FEW_CELLS: usize = 48;

/// What is taken over all boxes, mm; each is least in the worst box.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DialFigureKind {
    /// Distance from bore to pin, slider forward.
    Near,
    /// Distance from bore to pin, slider back.
    NearAtEnd,
    /// Minus the distance from bore to pin, slider back.
    FarAtEnd,
    /// How far the pin stands to the left of its bore, slider forward.
    Left,
    /// How far it stands to the right, as a negative number.
    Right,
    /// How far the pin stands below its bore along y, slider forward.
    Below,
    /// Minus the y of the pin over its bore, slider back: below zero once it has passed the middle.
    BeforeMiddle,
    /// Minus the travel after which the middle of the pin is this far from the bore.
    Creep(f64),
    /// Tab under the keeper at its least engaged corner when the middle of the pin has come this
    /// near to the bore.
    Held(f64),
}

/// A figure of one dial.
pub struct DialFigure<'a> {
    /// The latch.
    pub over_year: &'a LatchOverYear<'a>,
    /// The dial.
    pub dial: &'a Dial,
    /// The figure.
    pub kind: DialFigureKind,
}

impl FigureOverBoxes<VARIABLES, DIAL_VARIABLES> for DialFigure<'_> {
    fn pieces(&self) -> usize {
        match self.kind {
            DialFigureKind::Held(_) => 4,
            DialFigureKind::Creep(_) | DialFigureKind::FarAtEnd => 2,
            _ => 1,
        }
    }

    fn bounds<const M: usize>(&self, piece: usize, cell: &Boxes) -> Option<Jet<M>> {
        let grown = self.over_year.grown(cell)?;
        let (x, y) = self
            .over_year
            .pin_from_bore(cell, &grown, self.dial, self.dial);
        let travel = self.over_year.design.slider.travel;
        // where only the distance aside matters: a piece for either side, each steady in x
        let aside = || {
            if piece.is_multiple_of(2) {
                x.at_least(0.0)
            } else {
                x.at_most(0.0)
            }
        };
        let left_behind = |within: f64| left_behind(aside(), y, within);
        Some(match self.kind {
            DialFigureKind::Near => x.hypot(y),
            DialFigureKind::NearAtEnd => x.hypot(y.plus(travel)),
            DialFigureKind::FarAtEnd => -aside().hypot(y.plus(travel)),
            DialFigureKind::Left => x,
            DialFigureKind::Right => -x,
            DialFigureKind::Below => -y,
            DialFigureKind::BeforeMiddle => -(y.plus(travel)),
            DialFigureKind::Creep(within) => left_behind(within)?,
            DialFigureKind::Held(within) => {
                let side = if piece < 2 { -1.0 } else { 1.0 };
                self.over_year.overlap(cell, &grown, side) + left_behind(within)?
            }
        })
    }
}

/// Tab under the keeper when several dials stop the slider together, at its least engaged corner:
/// the dial that stops it first decides.
///
/// The air and how the slider lies are the same for all of them; places are each dial's own, and each
/// stands at its worst.
pub struct StoppedTogether<'a> {
    /// The latch.
    pub over_year: &'a LatchOverYear<'a>,
    /// The dials, each with the distance from its bore within which its pin is stopped.
    pub stops: &'a [(&'a Dial, f64)],
}

impl StoppedTogether<'_> {
    /// The least over all boxes; `decides` is the figure at which a promise turns.
    pub fn least(&self, decides: f64) -> Option<Least<VARIABLES>> {
        if !self.over_year.goes_on() {
            return None;
        }
        let until = Until {
            gap: GAP_TOGETHER,
            cells: FEW_CELLS,
            decides,
        };
        least(self, &self.over_year.all(false), until)
    }

    /// How far behind the slider is stopped by one dial, its own places at their worst.
    ///
    /// In the places of pin and bore the figure is bent downwards only, so that it is least at their
    /// ends.
    fn behind<const M: usize>(
        &self,
        cell: &Boxes,
        grown: &Grown<M>,
        dial: &Dial,
        within: f64,
    ) -> Option<Jet<M>> {
        let work = &self.over_year.design.workmanship;
        let mut least: Option<Jet<M>> = None;
        for aside in [-1.0, 1.0] {
            for (x, y) in [(-1.0, -1.0), (-1.0, 1.0), (1.0, -1.0), (1.0, 1.0)] {
                let mut own = *cell;
                own[PIN[0]] = Interval::at(x * work.pin_place);
                own[PIN[1]] = Interval::at(y * work.pin_place);
                // the bore away from the pin along x, and towards it along y
                own[BORE[0]] = Interval::at(aside * work.bore_place);
                own[BORE[1]] = Interval::at(work.bore_place);
                let (x, y) = self.over_year.pin_from_bore(&own, grown, dial, dial);
                let x = if aside < 0.0 {
                    x.at_least(0.0)
                } else {
                    x.at_most(0.0)
                };
                let behind = left_behind(x, y, within)?;
                least = Some(least.map_or(behind, |before| before.lesser(behind)));
            }
        }
        least
    }
}

impl FigureOverBoxes<VARIABLES, SLIDER_VARIABLES> for StoppedTogether<'_> {
    fn bounds<const M: usize>(&self, _: usize, cell: &Boxes) -> Option<Jet<M>> {
        let grown = self.over_year.grown(cell)?;
        let mut most: Option<Jet<M>> = None;
        for (dial, within) in self.stops {
            let behind = self.behind(cell, &grown, dial, *within)?;
            most = Some(most.map_or(behind, |before| before.greater(behind)));
        }
        let [left, right] = [-1.0, 1.0].map(|side| self.over_year.overlap(cell, &grown, side));
        Some(left.lesser(right) + most?)
    }
}

/// What is taken over all boxes of the slider as a whole; each is least in the worst box.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SliderFigureKind {
    /// Tab under the keeper at its least engaged corner, slider forward, mm.
    Overlap,
    /// Minus the same at its most engaged corner.
    MostOverlap,
    /// Play left in the guide to either side, mm.
    Play,
    /// Growth of the plate, as a fraction, along x.
    PlateX,
    /// Growth of the plate, as a fraction, along y.
    PlateY,
}

/// All figures of the slider, each taken over all boxes once.
#[derive(Debug, Clone, Copy, Default)]
pub struct SliderWorst {
    overlap: Option<Least<VARIABLES>>,
    most_overlap: Option<Least<VARIABLES>>,
    play: Option<Least<VARIABLES>>,
    plate: [Option<Least<VARIABLES>>; 2],
}

impl SliderWorst {
    /// The figures of this latch; none where they cannot be had.
    pub fn of(over_year: &LatchOverYear<'_>) -> Self {
        let design = over_year.design;
        let keeper = design.workmanship.keeper_place;
        let least = |kind, decides: f64| SliderFigure { over_year, kind }.least(decides);
        Self {
            overlap: least(SliderFigureKind::Overlap, keeper + design.tab.required_hold),
            most_overlap: least(SliderFigureKind::MostOverlap, keeper - design.slider.travel),
            play: least(SliderFigureKind::Play, 0.0),
            plate: [SliderFigureKind::PlateX, SliderFigureKind::PlateY]
                .map(|kind| least(kind, 0.0)),
        }
    }

    /// One of them.
    pub fn get(&self, kind: SliderFigureKind) -> Option<Least<VARIABLES>> {
        match kind {
            SliderFigureKind::Overlap => self.overlap,
            SliderFigureKind::MostOverlap => self.most_overlap,
            SliderFigureKind::Play => self.play,
            SliderFigureKind::PlateX => self.plate[0],
            SliderFigureKind::PlateY => self.plate[1],
        }
    }
}

/// A figure of the slider.
pub struct SliderFigure<'a> {
    /// The latch.
    pub over_year: &'a LatchOverYear<'a>,
    /// The figure.
    pub kind: SliderFigureKind,
}

impl FigureOverBoxes<VARIABLES, SLIDER_VARIABLES> for SliderFigure<'_> {
    fn pieces(&self) -> usize {
        match self.kind {
            SliderFigureKind::Overlap | SliderFigureKind::MostOverlap => 2,
            _ => 1,
        }
    }

    fn bounds<const M: usize>(&self, piece: usize, cell: &Boxes) -> Option<Jet<M>> {
        let side = if piece == 0 { -1.0 } else { 1.0 };
        let overlap = || {
            let grown = self.over_year.grown(cell)?;
            Some(self.over_year.overlap(cell, &grown, side))
        };
        Some(match self.kind {
            SliderFigureKind::Overlap => overlap()?,
            SliderFigureKind::MostOverlap => -overlap()?,
            SliderFigureKind::Play => self.over_year.play_left(cell),
            SliderFigureKind::PlateX => self.over_year.plate_growth(cell)[0],
            SliderFigureKind::PlateY => self.over_year.plate_growth(cell)[1],
        })
    }
}

/// Distance from the bore of one dial to the pin of another, at any travel, mm.
pub struct PinToBore<'a> {
    /// The latch.
    pub over_year: &'a LatchOverYear<'a>,
    /// The dial whose bore it is.
    pub bore: &'a Dial,
    /// The dial whose pin it is.
    pub pin: &'a Dial,
}

impl FigureOverBoxes<VARIABLES, TRAVEL_VARIABLES> for PinToBore<'_> {
    fn bounds<const M: usize>(&self, _: usize, cell: &Boxes) -> Option<Jet<M>> {
        let grown = self.over_year.grown(cell)?;
        let (x, y) = self
            .over_year
            .pin_from_bore(cell, &grown, self.pin, self.bore);
        Some(x.hypot(y + Jet::variable(cell[TRAVEL], TRAVEL)))
    }
}

impl PinToBore<'_> {
    /// The least distance over all boxes and the whole travel.
    pub fn least(&self, decides: f64) -> Option<Least<VARIABLES>> {
        let mut all = self.over_year.all(true);
        for cell in &mut all {
            cell[TRAVEL] = Interval::new(0.0, self.over_year.design.slider.travel);
        }
        let asked = known::AskedFigure::PinToBore {
            bore: self.bore,
            pin: self.pin,
        };
        let bound = || least(self, &all, until(decides));
        self.over_year.known_or(asked, decides, bound)
    }
}

impl DialFigure<'_> {
    /// The least over all boxes; `decides` is the figure at which a promise turns.
    pub fn least(&self, decides: f64) -> Option<Least<VARIABLES>> {
        let asked = known::AskedFigure::Dial(self.dial, self.kind);
        let bound = || self.bound(decides);
        self.over_year.known_or(asked, decides, bound)
    }

    fn bound(&self, decides: f64) -> Option<Least<VARIABLES>> {
        if matches!(self.kind, DialFigureKind::Near | DialFigureKind::NearAtEnd)
            && let Some(straight) = self.straight_ahead(decides)
        {
            return Some(straight);
        }
        least(self, &self.over_year.all(true), until(decides))
    }

    /// The least distance where the pin can stand straight below its bore while it is nearest: then
    /// the distance along y bounds it, which is steady in all that varies.
    fn straight_ahead(&self, decides: f64) -> Option<Least<VARIABLES>> {
        let kind = match self.kind {
            DialFigureKind::Near => DialFigureKind::Below,
            _ => DialFigureKind::BeforeMiddle,
        };
        let along = Self { kind, ..*self };
        let mut nearest = least(&along, &self.over_year.all(true), until(decides))?;
        let aside = |share: f64| {
            let mut at = nearest.at;
            let work = &self.over_year.design.workmanship;
            at[PIN[0]] = share * work.pin_place;
            at[BORE[0]] = -share * work.bore_place;
            let cell = at.map(Interval::at);
            let grown = self.over_year.grown::<0>(&cell)?;
            let (x, _) = self
                .over_year
                .pin_from_bore(&cell, &grown, self.dial, self.dial);
            Some((x.value.middle(), at))
        };
        let ((left, _), (right, _)) = (aside(-1.0)?, aside(1.0)?);
        let share = if right > left {
            ((-left / (right - left)) * 2.0 - 1.0).clamp(-1.0, 1.0)
        } else {
            0.0
        };
        let (_, at) = aside(share)?;
        let found = self.bounds::<0>(0, &at.map(Interval::at))?.value.hi;
        nearest.at = at;
        nearest.found = found;
        (found - nearest.bound <= GAP && nearest.bound > 0.0).then_some(nearest)
    }
}

impl SliderFigure<'_> {
    /// The least over all boxes; `decides` is the figure at which a promise turns.
    pub fn least(&self, decides: f64) -> Option<Least<VARIABLES>> {
        let bound = || least(self, &self.over_year.all(false), until(decides));
        let asked = known::AskedFigure::Slider(self.kind);
        self.over_year.known_or(asked, decides, bound)
    }
}

/// Minus the travel after which a pin that stands `x` aside of its bore and `y` before it is `within`
/// of it: what is stopped at a circle is stopped latest where the pin is furthest aside.
fn left_behind<const M: usize>(x: Jet<M>, y: Jet<M>, within: f64) -> Option<Jet<M>> {
    let square = (-x.square()).plus(within * within);
    (square.value.lo > 1e-6).then(|| y + square.sqrt())
}

fn until(decides: f64) -> Until {
    Until {
        gap: GAP,
        decides,
        cells: CELLS,
    }
}
