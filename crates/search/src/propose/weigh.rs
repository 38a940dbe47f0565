//! Every margin of a design by the plain sums, each beside what it would be in a latch without any
//! error: what a search can afford to ask ten thousand times.
//!
//! The plain sums take all errors at their worst at once. They promise less than the proof, never
//! more, and they only ever rise where the maker works more exactly. Each margin is the proof's own.

use super::grow::mends;
use super::margin::{DUST, Margin};
use latchwright_geometry::trig;
use latchwright_model::key;
use latchwright_model::slot::SlotShape;
use latchwright_model::{Design, Dial};
use latchwright_proof::bounds::DialBounds;
use latchwright_proof::check::spacing::{
    DISC_TO_PIN, DISCS_APART, FINGERS, PRINTED_WALL, Places, WOOD_LEFT, bores_apart,
    disc_to_pin_plainly, discs_apart, knobs_apart, wall_to_star, wood_to_edge, wood_to_guide_slot,
};
use latchwright_proof::check::strength::{pin_stress, tab_stress};
use latchwright_proof::check::{
    About, CheckKind, Sums, captive_margin, finger_knob, free_margin, guide_strips, racking_margin,
    rest_hold_margin, slider_body, stack,
};
use latchwright_proof::dial_judge::{DialJudge, Entry};
use latchwright_proof::season::Drift;
use latchwright_proof::slider_body::{FINGERS_APART, SliderBody};

/// Woods and year, worked out once.
pub(super) struct Ground {
    drift: Drift,
    /// Least growth of the plate along x and y, as fractions.
    growth: (f64, f64),
    still: Drift,
    /// Plate and slider are alike along y: no length of guide drifts more than another.
    pub alike_along_y: bool,
}

impl Ground {
    /// The same of a year that moves nothing along y.
    pub(super) fn still_along_y(&self) -> Self {
        Self {
            drift: Drift {
                x: self.drift.x.clone(),
                y: self.still.y.clone(),
            },
            growth: (self.growth.0, 0.0),
            still: Drift::none(),
            alike_along_y: true,
        }
    }

    /// `None` where a wood is not known.
    pub(super) fn of(design: &Design) -> Option<Self> {
        let drift = Drift::of(design)?;
        Some(Self {
            growth: Places::plain_growth(&drift),
            alike_along_y: drift.y.apart(1.0, 1.0) == (0.0, 0.0),
            drift,
            still: Drift::none(),
        })
    }
}

/// The same latch of a maker who makes no error, with no play anywhere.
pub(super) fn perfect(design: &Design) -> Design {
    let mut perfect = design.clone();
    super::demand::work_to(&mut perfect, 0.0);
    perfect
}

/// Every margin of `design`; `None` where a wood is not known.
pub fn margins(design: &Design) -> Option<Vec<Margin>> {
    let ground = Ground::of(design)?;
    let ideal = perfect(design);
    let mut margins = weigh(&ground, design, Some(&ideal), Scope::ALL);
    weigh_stack(design, Some(&ideal), &mut margins);
    Some(margins)
}

/// The least room to spare over all margins of `design`, as a share of what may be off, with the margin
/// that decides; `None` where a wood is not known.
///
/// # Source
/// Calculated: to first order the share by which every error could grow before a promise breaks.
pub fn room_to_spare(design: &Design) -> Option<(f64, Margin)> {
    let shares = margins(design)?;
    let shares = shares.into_iter().map(|margin| (margin.share(), margin));
    shares.min_by(|one, other| one.0.total_cmp(&other.0))
}

/// Margins of one dial by itself, mm; `next` is the least turn to the next mark, degrees, and `creep` how
/// far the slider may creep until the pin is stopped.
struct OfDial {
    at_rest: f64,
    entry: Entry,
    captive: f64,
    held: f64,
    next: f64,
    creep: f64,
}

impl OfDial {
    fn of(sums: &Sums<'_>, index: usize, dial: &Dial, bounds: &DialBounds) -> Self {
        let judge = DialJudge::new(sums.design, dial, *bounds);
        let none = Entry {
            enters: f64::NEG_INFINITY,
            fits: f64::NEG_INFINITY,
            depth: f64::NEG_INFINITY,
        };
        let creep = bounds.creep(bounds.rim.lo + bounds.pin.lo);
        Self {
            at_rest: bounds.rest_gap(),
            entry: judge.entry_at_digit().unwrap_or(none),
            captive: captive_margin(sums, index).unwrap_or(f64::NEG_INFINITY),
            held: creep.map_or(f64::NEG_INFINITY, |creep| {
                bounds.hold_margin(sums.design, creep)
            }),
            next: 90.0 - judge.angle_to_mouth(90.0),
            // the slider goes on by what its yaw makes of the pin's own creep
            creep: creep.unwrap_or(0.0) + bounds.lift,
        }
    }
}

/// A latch with its sums.
struct Seen<'a> {
    design: &'a Design,
    sums: Sums<'a>,
    body: SliderBody,
    places: Places,
    /// One entry a dial; none where another decides.
    dials: Vec<Option<OfDial>>,
}

impl<'a> Seen<'a> {
    fn of(design: &'a Design, drift: &'a Drift, growth: (f64, f64), decide: &[bool]) -> Self {
        let sums = Sums::plain(design, drift, design.dials.len());
        let dials = sums
            .each()
            .zip(decide)
            .map(|((index, dial, bounds), decides)| {
                decides.then(|| OfDial::of(&sums, index, dial, bounds))
            });
        Self {
            design,
            body: SliderBody::led(design, drift, &sums.slider),
            places: Places::of(design, growth),
            dials: dials.collect(),
            sums,
        }
    }

    /// Of one dial; minus infinity where there is none.
    fn dial(&self, index: usize, of: impl Fn(&Dial, &DialBounds) -> f64) -> f64 {
        let dial = self.design.dials.get(index).zip(self.sums.dials.get(index));
        dial.map_or(f64::NEG_INFINITY, |(dial, bounds)| of(dial, bounds))
    }

    /// Of two dials; minus infinity where there are none.
    fn pair(
        &self,
        (one, other): (usize, usize),
        of: impl Fn((&Dial, &DialBounds), (&Dial, &DialBounds)) -> f64,
    ) -> f64 {
        self.dial(one, |dial, bounds| {
            self.dial(other, |other, others| of((dial, bounds), (other, others)))
        })
    }
}

/// Takes what is asked of a latch.
struct Asking<'a> {
    real: Seen<'a>,
    ideal: Option<Seen<'a>>,
    margins: Vec<Margin>,
    /// The room to spare that is wanted, if nothing else is asked once one margin surely has not got it.
    room: Option<f64>,
    hopeless: bool,
}

impl Asking<'_> {
    /// Asks the latch and the one without any error; without that nothing counts as uncertain.
    fn ask(&mut self, kind: CheckKind, about: About, of: impl Fn(&Seen<'_>) -> f64) {
        let worst = of(&self.real);
        let margin = Margin {
            kind,
            about,
            worst,
            nominal: self.ideal.as_ref().map_or(worst, of),
        };
        self.hopeless |= self
            .room
            .is_some_and(|room| margin.left_at(room) < DUST && mends(&margin).is_none());
        self.margins.push(margin);
    }
}

/// What is asked of a latch.
#[derive(Debug, Clone, Copy)]
pub(super) struct Scope {
    /// The mark beside the digit too.
    pub marks: bool,
    /// The room to spare that is wanted: once a margin has not got it that nothing mends, no more is asked.
    pub room: Option<f64>,
}

impl Scope {
    /// All of it.
    pub(super) const ALL: Self = Self {
        marks: true,
        room: None,
    };
}

/// The margins of the latch as seen from above; those of mirrored dials once. Without a perfect latch
/// beside it nothing counts as uncertain: enough to see what is left when errors are as large as they are.
pub(super) fn weigh(
    ground: &Ground,
    real: &Design,
    ideal: Option<&Design>,
    scope: Scope,
) -> Vec<Margin> {
    let decide: Vec<bool> = (0..real.dials.len())
        .map(|index| !is_outdone(real, index))
        .collect();
    let mut asking = Asking {
        real: Seen::of(real, &ground.drift, ground.growth, &decide),
        ideal: ideal.map(|ideal| Seen::of(ideal, &ground.still, (0.0, 0.0), &decide)),
        margins: Vec::with_capacity(64),
        room: scope.room,
        hopeless: false,
    };
    for (index, decides) in decide.iter().enumerate() {
        if *decides && !asking.hopeless {
            of_dial(&mut asking, index, scope.marks);
        }
    }
    if !asking.hopeless {
        of_latch(&mut asking, real.slider.guide_play);
    }
    for index in 0..decide.len() {
        if !asking.hopeless {
            in_plate(&mut asking, index);
        }
    }
    if !asking.hopeless {
        pairs(&mut asking, real);
    }
    asking.margins
}

/// The margins of the latch as a whole; `play` is what the maker gives the guide, mm.
fn of_latch(asking: &mut Asking<'_>, play: f64) {
    let mut ask = |kind, of: &dyn Fn(&Seen<'_>) -> f64| asking.ask(kind, About::Latch, of);
    ask(CheckKind::Free, &|seen| free_margin(&seen.sums));
    ask(CheckKind::HeldAtRest, &|seen| rest_hold_margin(&seen.sums));
    ask(CheckKind::SwingsClear, &|seen| {
        slider_body::swing_margin(&seen.sums)
    });
    ask(CheckKind::FingerKnobSeat, &|seen| {
        slider_body::around_shank(seen.design, &seen.body) - slider_body::AROUND_SHANK
    });
    ask(CheckKind::GuideSlotToKeeper, &|seen| {
        slider_body::slot_to_rabbet(seen.design) - WOOD_LEFT
    });
    ask(CheckKind::BarRoom, &|seen| {
        slider_body::bar_room(seen.design, &seen.body)
    });
    ask(CheckKind::StripsToBar, &|seen| {
        guide_strips::to_bar(&seen.sums, &seen.body)
    });
    // right behind the keeper will do, where the search asks for a little more than nought of everything
    ask(CheckKind::StripsToKeeper, &|seen| {
        guide_strips::to_keeper(seen.design) + 2.0 * DUST
    });
    ask(CheckKind::Guide, &|seen| {
        play + seen.sums.slider.least_play - seen.design.slider.guide_play
    });
    ask(CheckKind::Racking, &|seen| {
        racking_margin(seen.design, &seen.sums.slider)
    });
    ask(CheckKind::TabStrength, &|seen| {
        let creeps = seen.dials.iter().flatten().map(|dial| dial.creep);
        tab_stress(seen.design, creeps.fold(0.0, f64::max)).margin()
    });
}

/// The margins of one dial by itself.
fn of_dial(asking: &mut Asking<'_>, index: usize, marks: bool) {
    let mut ask = |kind, of: &dyn Fn(&OfDial, &Dial) -> f64| {
        asking.ask(kind, About::Dial(index), |seen| {
            let dial = seen.dials.get(index).and_then(Option::as_ref);
            let dial = dial.zip(seen.design.dials.get(index));
            dial.map_or(f64::NEG_INFINITY, |(seen, dial)| of(seen, dial))
        });
    };
    ask(CheckKind::AtRest, &|seen, _| seen.at_rest);
    ask(CheckKind::Enters, &|seen, _| seen.entry.enters);
    ask(CheckKind::Fits, &|seen, _| seen.entry.fits);
    ask(CheckKind::Deep, &|seen, _| seen.entry.depth);
    ask(CheckKind::SlotWall, &|_, dial| wall(dial));
    ask(CheckKind::Captive, &|seen, _| seen.captive);
    ask(CheckKind::StaysHeld, &|seen, _| seen.held);
    if marks {
        ask(CheckKind::NextMark, &|seen, dial| {
            dial.step_deg().min(180.0) - seen.next
        });
    }
    ask(CheckKind::KeyBite, &|_, dial| key::bite(dial));
    asking.ask(CheckKind::SlotToStar, About::Dial(index), |seen| {
        seen.dial(index, |dial, bounds| {
            wall_to_star(seen.design, dial, bounds) - PRINTED_WALL
        })
    });
    asking.ask(CheckKind::PinStrength, About::Dial(index), |seen| {
        seen.dial(index, |dial, bounds| {
            pin_stress(seen.design, dial, bounds).margin()
        })
    });
}

/// The margins of one dial in the plate: wood round its bore, and room beside the finger knob.
fn in_plate(asking: &mut Asking<'_>, index: usize) {
    let mut ask = |kind, of: &dyn Fn(&Seen<'_>, &Dial) -> f64| {
        asking.ask(kind, About::Dial(index), |seen| {
            seen.dial(index, |dial, _| of(seen, dial))
        });
    };
    ask(CheckKind::BoreToEdge, &|seen, dial| {
        wood_to_edge(&seen.places, seen.design, dial) - WOOD_LEFT
    });
    ask(CheckKind::BoreToGuideSlot, &|seen, dial| {
        wood_to_guide_slot(&seen.places, &seen.design.slider, dial) - WOOD_LEFT
    });
    ask(CheckKind::FingerKnobRoom, &|seen, dial| {
        finger_knob::fingers_between(&seen.design.slider, dial) - FINGERS
    });
    ask(CheckKind::FingerKnobWay, &|seen, dial| {
        finger_knob::passes_at(&seen.places, &seen.design.slider, dial) - finger_knob::PASSING
    });
}

/// Whether another dial of the same row, made alike, stands further out: whatever yaw and season do to
/// this dial, they do more of it to that one.
fn is_outdone(design: &Design, index: usize) -> bool {
    let Some(dial) = design.dials.get(index) else {
        return false;
    };
    let straight =
        design.tab.at == 0.0 && design.slider.guide_at.0 == 0.0 && design.slider.pull_at == 0.0;
    let further_out = |(number, other): (usize, &Dial)| {
        let (out, own) = (other.centre.0.abs(), dial.centre.0.abs());
        number != index
            && other.centre.1 == dial.centre.1
            && (out > own || (out == own && number > index))
            && other.positions == dial.positions
            && other.pin.offset == 0.0
            && dial.pin.offset == 0.0
            && other.key == dial.key
            && other.pin == dial.pin
            && other.disc == dial.disc
            && other.bore == dial.bore
    };
    straight && design.dials.iter().enumerate().any(further_out)
}

/// How much longer the true slot's wall is than its lead-in, mm.
fn wall(dial: &Dial) -> f64 {
    let Some(slot) = dial.disc.slots.first() else {
        return f64::NEG_INFINITY;
    };
    if slot.width >= 2.0 * dial.disc.radius {
        return f64::NEG_INFINITY;
    }
    let shape = SlotShape::new(dial.disc.radius, slot);
    let length = if shape.shallow {
        0.0
    } else {
        shape.rim_top - shape.floor_centre
    };
    length - slot.lead_in
}

/// Discs and knobs with more than this between them (mm) are never the tightest, and are passed over.
const FAR: f64 = 30.0;
/// The same for a disc and another dial's pin, and for two fingers.
const FAR_PIN: f64 = 12.0;

/// The margins between two dials.
fn pairs(asking: &mut Asking<'_>, design: &Design) {
    for (i, one) in design.dials.iter().enumerate() {
        for (j, other) in design.dials.iter().enumerate() {
            let across = (other.centre.0 - one.centre.0).abs();
            let along = (other.centre.1 - one.centre.1).abs();
            let knobs = f64::midpoint(one.knob.diameter, other.knob.diameter);
            let widest = (one.disc.radius + other.disc.radius).max(knobs);
            if i == j || across > widest + FAR {
                continue;
            }
            let (x, y) = other.pin_at();
            let near = one.disc.radius + other.pin.diameter / 2.0 + FAR_PIN;
            let (aside, below) = (
                x - one.centre.0,
                (one.centre.1 - y - design.slider.travel).max(0.0),
            );
            let pair = About::Pair(i, j);
            if aside * aside + below * below <= near * near {
                asking.ask(CheckKind::DiscToPin, pair, |seen| {
                    seen.pair((i, j), |one, other| {
                        disc_to_pin_plainly(&seen.sums, one, other) - DISC_TO_PIN
                    })
                });
            }
            if i > j {
                continue;
            }
            if across < FAR_PIN + one.pin.diameter + other.pin.diameter {
                asking.ask(CheckKind::FingerToFinger, pair, |seen| {
                    seen.pair((i, j), |(one, _), (other, _)| {
                        slider_body::fingers_clear(one, other) - FINGERS_APART
                    })
                });
            }
            if trig::hypot(across, along) > widest + FAR {
                continue;
            }
            asking.ask(CheckKind::DiscToDisc, pair, |seen| {
                seen.pair((i, j), |one, other| {
                    discs_apart(&seen.places, one, other) - DISCS_APART
                })
            });
            asking.ask(CheckKind::KnobToKnob, pair, |seen| {
                seen.pair((i, j), |(one, _), (other, _)| {
                    knobs_apart(one, other) - FINGERS
                })
            });
            asking.ask(CheckKind::BoreToBore, pair, |seen| {
                seen.pair((i, j), |(one, _), (other, _)| {
                    bores_apart(&seen.places, one, other) - WOOD_LEFT
                })
            });
        }
    }
}

/// Adds the margins through the thickness of the lid.
pub(super) fn weigh_stack(real: &Design, ideal: Option<&Design>, margins: &mut Vec<Margin>) {
    let mut ask = |kind, about, of: &dyn Fn(&Design) -> f64| {
        let worst = of(real);
        margins.push(Margin {
            kind,
            about,
            worst,
            nominal: ideal.map_or(worst, of),
        });
    };
    for index in 0..real.dials.len() {
        let about = About::Dial(index);
        let of = |design: &Design, of: &dyn Fn(&Dial) -> f64| {
            design.dials.get(index).map_or(f64::NEG_INFINITY, of)
        };
        ask(CheckKind::PinMeetsDisc, about, &|design| {
            of(design, &|dial| stack::meets_margin(design, dial))
        });
        ask(CheckKind::DiscToPlate, about, &|design| {
            of(design, &|dial| stack::disc_to_plate_gap(design, dial))
        });
        ask(CheckKind::DiscToFinger, about, &|design| {
            of(design, &|dial| stack::finger_to_discs(design, dial))
        });
    }
    ask(
        CheckKind::SliderToPlate,
        About::Latch,
        &stack::slider_to_plate_gap,
    );
    ask(
        CheckKind::TabToKeeper,
        About::Latch,
        &stack::tab_to_keeper_gap,
    );
    ask(CheckKind::RoomBelow, About::Latch, &stack::room_left_below);
    ask(CheckKind::LidCloses, About::Latch, &stack::room_over_keeper);
    ask(CheckKind::RabbetRoof, About::Latch, &|design| {
        stack::roof_left(design) - stack::ROOF
    });
}
