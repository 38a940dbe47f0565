//! From one choice to the least sizes that give a wanted room to spare.
//!
//! Gap, slot, engagement, travel, spacing and the rest each have something that asks for more of them, the
//! guide something that asks for less. What is short is raised, and the guide shortened, step by step,
//! until nothing is short: the least sizes there are, because none was raised without need. What asks for
//! less of them is only looked at.

use super::choices::{Choice, Choices, MOST_PINS, least_knob};
use super::grid::{Grid, down, up};
use super::grow::{Grow, mends};
use super::margin::{DUST, Margin};
use super::stack::Stack;
use super::weigh::{Ground, Scope, perfect, weigh, weigh_stack};
use super::wishes::{Lid, Marks, set_lid};
use latchwright_model::key;
use latchwright_model::{Design, Dial, Key};
use latchwright_proof::check::spacing::star_reach;
use latchwright_proof::check::{CheckKind, GROWN_AGE, could_hold_a_child, guide_strips};
use latchwright_proof::slider_body::{BAR, CLEARANCE, CORNER};

/// Rounds of raising after which a choice is given up: with fewer, far choices of large lids are lost;
/// more are never needed.
const ROUNDS: usize = 40;
/// Wood of the keeper beside the tab, mm: as the workshop asks.
pub(super) const BESIDE_TAB: f64 = 8.0;
/// Lengths by which the guide settles behind the keeper.
const SETTLING: usize = 16;

/// The sizes that follow from a choice, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Sizes {
    pub gap: f64,
    pub width: f64,
    pub depth: f64,
    pub engagement: f64,
    pub travel: f64,
    pub spacing: f64,
    pub tab: f64,
    pub play: f64,
    /// The longest guide that does; more is given where the box has it not.
    pub guide: f64,
}

impl Sizes {
    /// The same with one or two sizes a step or some away from the least that was found, each in turn.
    pub(super) fn beside(self, grid: Grid) -> Vec<Self> {
        let mut beside = Vec::new();
        let mut with = |raise: &dyn Fn(&mut Self)| {
            let mut sizes = self;
            raise(&mut sizes);
            beside.push(sizes);
        };
        let by = |size: &mut f64, step: f64| *size = up(*size + step, step);
        with(&|sizes| by(&mut sizes.width, grid.size));
        with(&|sizes| by(&mut sizes.depth, grid.size));
        with(&|sizes| by(&mut sizes.gap, grid.size));
        with(&|sizes| by(&mut sizes.engagement, grid.size));
        with(&|sizes| by(&mut sizes.travel, grid.size));
        with(&|sizes| {
            by(&mut sizes.width, grid.size);
            by(&mut sizes.depth, grid.size);
        });
        with(&|sizes| by(&mut sizes.tab, grid.lid));
        with(&|sizes| by(&mut sizes.spacing, grid.place));
        with(&|sizes| by(&mut sizes.spacing, 4.0 * grid.place));
        // each may have been raised for what another has mended since
        let back = |size: &mut f64, step: f64| *size = up(*size - step, step).max(step);
        with(&|sizes| back(&mut sizes.spacing, grid.place));
        with(&|sizes| back(&mut sizes.width, grid.size));
        with(&|sizes| back(&mut sizes.depth, grid.size));
        with(&|sizes| back(&mut sizes.travel, grid.size));
        with(&|sizes| back(&mut sizes.engagement, grid.size));
        with(&|sizes| back(&mut sizes.gap, grid.size));
        beside
    }
}

/// Solves choices.
pub(super) struct Solver {
    pub choices: Choices,
    ground: Ground,
    /// The same of a year that moves nothing along y.
    still: Ground,
    /// y at which the guide may begin, mm.
    guide_from: f64,
    real: Design,
    ideal: Design,
    /// How many whole latches were weighed.
    pub sums: usize,
}

impl Solver {
    pub(super) fn new(mut choices: Choices, ground: Ground) -> Self {
        let (real, ideal) = (choices.base.clone(), perfect(&choices.base));
        let bears = |pin: &f64| {
            let mut design = real.clone();
            for dial in &mut design.dials {
                dial.pin.diameter = *pin;
            }
            let margins = weigh(&ground, &design, None, Scope::ALL);
            let strength = |margin: &Margin| margin.kind == CheckKind::PinStrength;
            margins
                .iter()
                .filter(|margin| strength(margin))
                .all(|margin| margin.worst >= DUST)
        };
        choices.pins.retain(bears);
        choices.pins.truncate(MOST_PINS);
        Self {
            guide_from: guide_from(&choices),
            real,
            ideal,
            choices,
            still: ground.still_along_y(),
            ground,
            sums: 0,
        }
    }

    /// The most room to spare, up to this much, that there is through the thickness of the lid; `None`
    /// where nothing goes through it, whatever is chosen.
    pub(super) fn most_through_thickness(&self, most: f64) -> Option<f64> {
        let mut design = self.choices.base.clone();
        Stack::up_to(&self.choices, &design, most)?.put(&mut design);
        self.choices.pin_down(&mut design);
        let mut margins = Vec::new();
        weigh_stack(&design, Some(&perfect(&design)), &mut margins);
        Some(margins.iter().map(Margin::share).fold(most, f64::min))
    }

    /// The lid as it stands.
    pub(super) fn lid(&self) -> Lid {
        Lid::of(&self.choices.base)
    }

    /// Gives the choices another lid.
    pub(super) fn set_lid(&mut self, lid: Lid) {
        let deep = self.lid().depth;
        for design in [&mut self.choices.base, &mut self.real, &mut self.ideal] {
            set_lid(design, lid);
        }
        // the nearer the hinge, the further forward the strips swing as the lid goes up
        if lid.depth != deep {
            self.guide_from = guide_from(&self.choices);
        }
    }

    /// The least sizes for `choice` with this room to spare in the lid as it stands; `None` where there
    /// are none. `from` has the sizes to begin with, where not the smallest.
    pub(super) fn least(
        &mut self,
        choice: &Choice,
        room: f64,
        from: Option<Sizes>,
    ) -> Option<Sizes> {
        self.solved(choice, room, from, false)
    }

    /// Whether there are any with the back row somewhere: where nothing drifts the furthest back has the
    /// longest guide, so that what fails there without drift along y fails everywhere with it.
    pub(super) fn may_stand(&mut self, choice: &Choice, room: f64) -> bool {
        !self.choices.drifts() || self.solved(choice, room, None, true).is_some()
    }

    /// [`Self::least`], or with `still` the same of a year that moves nothing along y.
    fn solved(
        &mut self,
        choice: &Choice,
        room: f64,
        from: Option<Sizes>,
        still: bool,
    ) -> Option<Sizes> {
        let back = self.back(choice);
        if back > self.furthest(choice) || self.hopeless(choice, room) {
            return None;
        }
        let mut sizes = from.unwrap_or_else(|| self.smallest(choice, room));
        for _ in 0..ROUNDS {
            self.fill(choice, &mut sizes)?;
            let margins = self.weighed(room, still);
            match self.raised(choice, sizes, &margins, room)? {
                Raised::To(more) => sizes = more,
                Raised::Enough => return Some(sizes),
            }
        }
        None
    }

    /// The margins of the latch as it is put, as far as they have this room; with `still` in a year that
    /// moves nothing along y.
    fn weighed(&mut self, room: f64, still: bool) -> Vec<Margin> {
        self.sums += 1;
        let ideal = (room != 0.0).then_some(&self.ideal);
        let scope = Scope {
            marks: !self.choices.as_many,
            room: Some(room),
        };
        let ground = if still { &self.still } else { &self.ground };
        weigh(ground, &self.real, ideal, scope)
    }

    /// Puts choice and sizes into both latches, with no longer a guide than there is room for; `None`
    /// where the box does not hold them.
    fn fill(&mut self, choice: &Choice, sizes: &mut Sizes) -> Option<()> {
        let back = self.back(choice);
        let needs = self.needs(choice, sizes.spacing, back);
        if !needs.goes_on(self.lid())
            || back < self.nearest(choice, sizes.travel)
            || self.goes_through_front(sizes.engagement)
        {
            return None;
        }
        self.place(choice, sizes)
    }

    /// Whether disc, post and pin of this choice may do anywhere: on one row as far back as goes, which
    /// leaves the longest guide, as narrow as two rows are, in a year that moves nothing along y.
    pub(super) fn disc_may_do(&mut self, choice: &Choice, room: f64) -> bool {
        let choice = Choice {
            stagger: 0.0,
            back: None,
            ..*choice
        };
        if self.choices.posts(&choice).is_none() {
            return false;
        }
        let mut sizes = self.smallest(&choice, room);
        sizes.spacing = self.narrowest(&choice);
        if self.place(&choice, &mut sizes).is_none() {
            // the rows do not stand so
            return true;
        }
        let margins = self.weighed(room, true);
        let of_disc = [
            CheckKind::NextMark,
            CheckKind::SlotToStar,
            CheckKind::KeyBite,
        ];
        let fails = |margin: &Margin| of_disc.contains(&margin.kind) && margin.left_at(room) < DUST;
        !margins.iter().any(fails)
    }

    /// Puts choice and sizes into both latches, wherever the lid ends.
    fn place(&mut self, choice: &Choice, sizes: &mut Sizes) -> Option<()> {
        let (back, grid) = (self.back(choice), self.choices.grid);
        let rim = back - choice.stagger - choice.radius;
        let bar = CLEARANCE + BAR + CORNER + 2.0 * sizes.travel;
        sizes.guide = down((rim - bar - self.guide_from).min(sizes.guide), grid.place);
        if sizes.guide <= 0.0 {
            return None;
        }
        for (design, plays) in [(&mut self.real, true), (&mut self.ideal, false)] {
            put(&self.choices, design, (choice, sizes, back))?;
            if plays {
                design.slider.guide_play = sizes.play;
            }
            design.slider.guide_length = sizes.guide;
            design.slider.guide_at.1 = self.guide_from + sizes.guide / 2.0;
            self.choices.pin_down(design);
        }
        (self.real.slider.guide_length > 0.0).then_some(())
    }

    /// Raises what is short with this room; `None` where nothing that is raised would help.
    fn raised(
        &self,
        choice: &Choice,
        before: Sizes,
        margins: &[Margin],
        room: f64,
    ) -> Option<Raised> {
        let grid = self.choices.grid;
        let mut sizes = before;
        let is_short = |margin: &Margin| margin.left_at(room) < DUST;
        let wall_short = margins
            .iter()
            .any(|margin| margin.kind == CheckKind::SlotWall && is_short(margin));
        let mut held = false;
        for margin in margins {
            let short = DUST - margin.left_at(room);
            // a slot without walls is narrower than it seems: deeper first
            if short <= 0.0 || (wall_short && margin.kind == CheckKind::Enters) {
                continue;
            }
            if short > 1e3 {
                return None;
            }
            let mends = mends(margin)?;
            if mends.size.is_some_and(|size| self.choices.holds(size)) {
                // another size may still make up for it
                held = true;
                continue;
            }
            let more = |size: f64, by: f64, step: f64| up(size + by, step);
            match mends.grow {
                Grow::Gap => sizes.gap = sizes.gap.max(more(before.gap, short, grid.size)),
                Grow::Width(times) => {
                    let width = more(before.width, times * short, grid.size);
                    sizes.width = sizes.width.max(width);
                }
                Grow::Depth => sizes.depth = sizes.depth.max(more(before.depth, short, grid.size)),
                Grow::Engagement => {
                    let engagement = more(before.engagement, short, grid.size);
                    sizes.engagement = sizes.engagement.max(engagement);
                }
                Grow::Travel => {
                    sizes.travel = sizes.travel.max(more(before.travel, short, grid.size));
                }
                Grow::Spacing => {
                    // in two rows, dials of one row are two spacings apart
                    let share = if choice.stagger > 0.0 { 0.5 } else { 1.0 };
                    let spacing = more(before.spacing, share * short, grid.place);
                    sizes.spacing = sizes.spacing.max(spacing);
                }
                Grow::Play => sizes.play = sizes.play.max(more(before.play, short, grid.clearance)),
                Grow::Tab => sizes.tab = more(before.tab, grid.lid, grid.lid),
                Grow::ShorterGuide(times) => {
                    let guide = down(before.guide - times * short, grid.place);
                    sizes.guide = sizes.guide.min(guide);
                }
                // through the thickness: not weighed here
                Grow::SliderBelow
                | Grow::DiscBelow
                | Grow::PinHeight
                | Grow::PinFree
                | Grow::Rabbet => {
                    return None;
                }
            }
        }
        if sizes == before {
            return (!held).then_some(Raised::Enough);
        }
        Some(Raised::To(sizes))
    }

    /// The whole latch at `choice`, with its stack; of its marks as many as can be where they are free.
    pub(super) fn finish(&mut self, choice: &Choice, sizes: &Sizes, room: f64) -> Option<Design> {
        let mut sizes = *sizes;
        self.fill(choice, &mut sizes)?;
        if self.choices.as_many {
            let margins = weigh(&self.ground, &self.real, Some(&self.ideal), Scope::ALL);
            for index in 0..self.real.dials.len() {
                let least = self.least_step(&margins, index, room);
                let most = self.most_seated(index, least)?;
                if let Some(dial) = self.real.dials.get_mut(index) {
                    dial.positions = most;
                }
            }
        }
        self.widen_knobs(room);
        let mut design = self.real.clone();
        for (digit, dial) in design.combination.iter_mut().zip(&design.dials) {
            *digit = (*digit).min(dial.positions.saturating_sub(1));
        }
        let stack = Stack::up_to(&self.choices, &design, room.max(0.0))?;
        stack.put(&mut design);
        self.choices.pin_down(&mut design);
        (!shuts_in(&design)).then_some(design)
    }

    /// The least turn, degrees, that keeps a dial's next mark clear of its mouth with this room: that of
    /// the dial itself, or of one like it that has more to bear.
    fn least_step(&self, margins: &[Margin], index: usize, room: f64) -> f64 {
        let alike = |other: usize| {
            let dial = |at: usize| self.real.dials.get(at).map(|dial| (&dial.key, &dial.disc));
            dial(other) == dial(index)
        };
        let next = margins
            .iter()
            .filter(|margin| margin.kind == CheckKind::NextMark);
        let of = next.filter_map(|margin| {
            let dial = margin.about.dial().filter(|dial| alike(*dial))?;
            let step = self.real.dials.get(dial)?.step_deg().min(180.0);
            Some((dial, step - margin.left_at(room)))
        });
        let of: Vec<(usize, f64)> = of.collect();
        let own = of.iter().find(|(dial, _)| *dial == index);
        let steps = of.iter().map(|(_, step)| *step);
        own.map_or_else(|| steps.fold(0.0, f64::max), |(_, step)| *step)
    }

    /// The most marks that a dial seats with this least turn between them, degrees.
    fn most_seated(&self, index: usize, least: f64) -> Option<u32> {
        let dial = self.real.dials.get(index)?;
        let fits = |marks: u32| 360.0 / f64::from(marks) - least >= DUST;
        match self.choices.asked.get(index)? {
            Marks::Exactly(_) => fits(dial.positions).then_some(dial.positions),
            Marks::AtLeast(least) => {
                let bites = |positions: u32| {
                    let dial = Dial {
                        positions,
                        ..dial.clone()
                    };
                    key::bite(&dial) >= 0.0
                };
                let sides = dial.key.sides;
                let most = (1..=360 / sides)
                    .map(|seats| seats * sides)
                    .take_while(|marks| fits(*marks))
                    .filter(|marks| bites(*marks))
                    .last()?;
                (most >= *least).then_some(most)
            }
        }
    }

    /// Knobs as large as they were wished, where fingers still get between them and the finger knob.
    fn widen_knobs(&mut self, room: f64) {
        let grid = self.choices.grid;
        let margins = weigh(&self.ground, &self.real, Some(&self.ideal), Scope::ALL);
        let now = self
            .real
            .dials
            .first()
            .map_or(0.0, |dial| dial.knob.diameter);
        let more = margins.iter().filter_map(|margin| match margin.kind {
            CheckKind::KnobToKnob => Some(margin.left_at(room)),
            // only one of the two knobs grows
            CheckKind::FingerKnobRoom | CheckKind::FingerKnobWay => {
                Some(2.0 * margin.left_at(room))
            }
            _ => None,
        });
        let most = down(now + more.fold(f64::INFINITY, f64::min), grid.size);
        let wished = self.choices.base.dials.first();
        let wished = wished.map_or(now, |dial| down(dial.knob.diameter, grid.size));
        for dial in &mut self.real.dials {
            dial.knob.diameter = wished.min(most).max(now);
        }
    }
}

/// What came of looking for what is short.
enum Raised {
    /// These sizes are larger.
    To(Sizes),
    /// Nothing is short.
    Enough,
}

/// Whether a child could be shut in, and one is about.
pub(super) fn shuts_in(design: &Design) -> bool {
    design.card.youngest < GROWN_AGE && could_hold_a_child(&design.inside)
}

/// The least place along y where the guide may begin behind the keeper, mm.
fn guide_from(choices: &Choices) -> f64 {
    let (mut design, grid) = (choices.base.clone(), choices.grid);
    let mut from = up(design.keeper.edge, grid.size);
    design.slider.guide_length = grid.place;
    for _ in 0..SETTLING {
        design.slider.guide_at.1 = from + grid.place / 2.0;
        let left = guide_strips::to_keeper(&design) + DUST;
        if left >= 0.0 {
            break;
        }
        from = up((from - left).max(from + grid.size / 2.0), grid.size);
    }
    from
}

/// Puts choice and sizes into `design`, with the back row at `back`, mm; `None` where a star does not fit
/// its disc.
fn put(
    choices: &Choices,
    design: &mut Design,
    (choice, sizes, back): (&Choice, &Sizes, f64),
) -> Option<()> {
    let dials = design.dials.len() as f64;
    let knob = least_knob(&choices.base, choices.grid, choice.bore);
    let marking = choices.markings.get(choice.marking)?;
    let bases = marking.positions.iter().zip(&choices.posts(choice)?.keys);
    for (number, (dial, (positions, key))) in design.dials.iter_mut().zip(bases).enumerate() {
        let x = (number as f64 - (dials - 1.0) / 2.0) * sizes.spacing;
        let in_front = (number % 2 == 1) != choice.first_in_front;
        let nearer = if in_front { choice.stagger } else { 0.0 };
        dial.centre = (x, back - nearer);
        dial.positions = *positions;
        dial.disc.radius = choice.radius;
        dial.bore.diameter = choice.bore;
        dial.knob.diameter = knob;
        let clearance = dial.key.clearance;
        dial.key = Key { clearance, ..*key };
        dial.pin.diameter = choice.pin;
        dial.pin.gap = sizes.gap;
        let slot = dial.disc.slots.first_mut()?;
        (slot.width, slot.depth, slot.lead_in) = (sizes.width, sizes.depth, choice.lead_in);
    }
    design.slider.travel = sizes.travel;
    design.tab.engagement = sizes.engagement;
    design.tab.width = sizes.tab;
    design.keeper.width = sizes.tab + 2.0 * BESIDE_TAB;
    let mut dials = design.dials.iter();
    dials
        .all(|dial| star_reach(dial) < dial.disc.radius)
        .then_some(())
}

impl Choices {
    /// What the maker holds fixed goes before all that is found.
    pub(super) fn pin_down(&self, design: &mut Design) {
        for (size, value) in &self.pinned {
            size.set(design, *value);
        }
    }
}
