//! The guide, between the keeper and the slider's bar, and room between the finger knob, which stands at
//! its middle, and the dials' knobs.

use super::figure::{DUST, Figure, Question};
use super::grid::{Grid, down, up};
use super::in_plate::{Plate, pull_room, pull_way};
use super::plain::{Ground, behind_keeper, racking};
use latchwright_model::{Design, Dial};
use latchwright_proof::check::Sums;
use latchwright_proof::check::{guide_strips, slider_body};
use latchwright_proof::slider_body::{BAR, CLEARANCE, CORNER, SliderBody};

/// Rounds in which the guide's ends and the room that they leave settle.
const SETTLING: usize = 64;

/// A dial's knob with more than this and the travel beyond what fingers need, mm, is never met.
const FAR: f64 = 30.0;

/// A latch and the same without any error.
pub(super) struct Both<'a> {
    pub real: &'a mut Design,
    pub ideal: &'a mut Design,
}

impl Both<'_> {
    /// What is left of a margin when every error is `1 + room` times as large, mm.
    pub(super) fn left(
        &self,
        room: f64,
        question: Question,
        of: impl Fn(&Design, bool) -> f64,
    ) -> f64 {
        let worst = of(self.real, true);
        if room == 0.0 {
            return worst;
        }
        let figure = Figure {
            question,
            dial: None,
            nominal: of(self.ideal, false),
            worst,
        };
        figure.left_at(room)
    }

    /// Puts the guide between these places along y.
    fn put(&mut self, from: f64, length: f64) {
        for design in [&mut *self.real, &mut *self.ideal] {
            design.slider.guide_length = length;
            design.slider.guide_at.1 = from + length / 2.0;
        }
    }
}

/// The least place along y where the guide may begin behind the keeper with this room.
fn guide_from(both: &mut Both<'_>, room: f64, grid: Grid) -> f64 {
    let mut from = up(both.real.keeper.edge, grid.size);
    for _ in 0..SETTLING {
        both.put(from, grid.place);
        let left = both.left(room, Question::StripsToKeeper, |design, _| {
            behind_keeper(design)
        });
        if left >= DUST {
            break;
        }
        from = up((from - left + DUST).max(from + grid.size / 2.0), grid.size);
    }
    from
}

/// By how much the guide must be shorter, at least, mm; 0 where it stands well, and without end where the
/// slider jams already.
fn too_long(both: &Both<'_>, ground: &Ground, room: f64) -> f64 {
    let (strips, seat, racks) = {
        let sums = |real: bool| {
            let (design, drift) = if real {
                (&*both.real, &ground.drift)
            } else {
                (&*both.ideal, &ground.still)
            };
            let sums = Sums::plain(design, drift, 0);
            let body = SliderBody::led(design, drift, &sums.slider);
            (sums, body)
        };
        let built = sums(true);
        // with no room asked for, what would be in a perfect latch does not count
        let ideal = (room != 0.0).then(|| sums(false));
        let ideal = ideal.as_ref().unwrap_or(&built);
        let of = |real: bool| if real { &built } else { ideal };
        let strips = both.left(room, Question::StripsToBar, |_, real| {
            let (sums, body) = of(real);
            guide_strips::to_bar(sums, body)
        });
        let seat = both.left(room, Question::PullSeat, |design, real| {
            slider_body::around_shank(design, &of(real).1) - slider_body::AROUND_SHANK
        });
        let racks = both.left(room, Question::Racking, |design, real| {
            racking(design, &of(real).0.slider)
        });
        (strips, seat, racks)
    };
    // a shorter guide jams all the more
    if racks < 0.0 {
        return f64::INFINITY;
    }
    // the finger knob goes half as far as the guide's end
    let mut short = (-strips).max(-2.0 * seat);
    let slider = &both.real.slider;
    for (index, dial) in both.real.dials.iter().enumerate() {
        if pull_room(slider, dial) > slider.travel + FAR {
            continue;
        }
        short = short.max(-2.0 * beside_knob(both, ground, room, index));
    }
    if short > -DUST { short + DUST } else { 0.0 }
}

/// What is left between the finger knob and the knob of this dial, mm.
fn beside_knob(both: &Both<'_>, ground: &Ground, room: f64, index: usize) -> f64 {
    let of = |design: &Design, margin: &dyn Fn(&Dial) -> f64| {
        design.dials.get(index).map_or(f64::INFINITY, margin)
    };
    let fingers = both.left(room, Question::PullRoom, |design, _| {
        of(design, &|dial| pull_room(&design.slider, dial))
    });
    let (worst, still) = (Plate::of(ground.growth, both.real), Plate::still());
    let way = both.left(room, Question::PullWay, |design, real| {
        let plate = if real { &worst } else { &still };
        of(design, &|dial| pull_way(plate, &design.slider, dial))
    });
    fingers.min(way)
}

/// The widest knob that the finger knob leaves room for beside this dial, mm in diameter.
pub(super) fn widest_knob(both: &Both<'_>, ground: &Ground, room: f64, index: usize) -> f64 {
    let now = both.real.dials.get(index);
    let now = now.map_or(f64::INFINITY, |dial| dial.knob.diameter);
    now + 2.0 * beside_knob(both, ground, room, index)
}

/// The longest guide with this room, whose middle, where the finger knob stands, keeps clear of the
/// dials' knobs and has the slider's wood under it; no length where there is none.
///
/// A shorter guide turns more, and the bar makes room for it: what is too long is only ever cut by as
/// much as it must be at least, so that the longest is found.
///
/// `most` is a length that is known to be no less than that.
pub(super) fn set_guide(
    both: &mut Both<'_>,
    ground: &Ground,
    room: f64,
    (grid, most): (Grid, f64),
) {
    let from = guide_from(both, room, grid);
    let dials = both.real.dials.iter();
    let rim = dials.map(|dial| dial.centre.1 - dial.disc.radius);
    let bar = CLEARANCE + BAR + CORNER + 2.0 * both.real.slider.travel;
    let room_for = rim.fold(f64::INFINITY, f64::min) - bar - from;
    let mut length = down(room_for.min(most), grid.place);
    for _ in 0..SETTLING {
        both.put(from, length.max(0.0));
        if length <= 0.0 {
            return;
        }
        let short = too_long(both, ground, room);
        if short <= 0.0 {
            return;
        }
        length = down(length - short, grid.place).min(length - grid.place);
    }
    both.put(from, 0.0);
}
