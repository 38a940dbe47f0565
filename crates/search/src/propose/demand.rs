//! What is asked or given, one demand at a time: how each is let go, wholly or by some steps of the
//! maker's grid.

use super::grid::{Grid, down, steps, up};
use super::solve::shuts_in;
use super::wishes::{Lid, Marks, Wishes};
use latchwright_model::Unit;
use latchwright_model::change::Size;
use latchwright_model::{Design, Labels, Season};
use latchwright_proof::check::{GROWN_AGE, SMALL_PARTS_AGE};

/// Something that is asked or given.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Demand {
    /// The lid's width.
    Width,
    /// The lid's depth.
    Depth,
    /// How many dials.
    Dials,
    /// How many marks.
    Marks,
    /// How exactly the maker works, and the plays.
    Workmanship,
    /// The airs of the year, with these woods.
    Season,
    /// The bits at hand.
    Bits,
    /// The pins at hand.
    Pins,
    /// The plate's thickness.
    Thickness,
    /// The room under the plate.
    Room,
    /// The hardest pull.
    Pull,
    /// How much of the tab must always be held.
    Hold,
    /// The hinges' length, and how far they sit from the sides.
    Hinges,
    /// The printer's bed.
    Bed,
    /// The age of the youngest.
    Age,
    /// A size that the maker holds fixed, by its number in the list; it stands for all that hold alike
    /// sizes of several dials at the same value.
    Pinned(usize),
}

/// A lid that is let go, mm.
pub(super) const WIDE: f64 = 1_200.0;
/// A printer's bed that is let go, mm, and what one step adds to it.
const BED: f64 = 300.0;
const BED_STEP: f64 = 10.0;
/// The shortest hinge that still turns, mm.
///
/// # Source
/// Common practice, no source.
const HINGE: f64 = 10.0;
/// Steps from the maker's errors and plays down to none, and from the year's air to air that stands.
const SHARES: u32 = 50;
/// A pull that is let go, N, and what one step takes from it.
const PULL: f64 = 1.0;
const PULL_STEP: f64 = 5.0;
/// What is left of the hold when it is let go, mm.
const LEAST_HOLD: f64 = 0.05;
/// The fewest marks that are worth a dial.
const FEWEST_MARKS: u32 = 3;
/// The ages at which what is asked of a box for children changes, years.
const AGES: [u32; 2] = [SMALL_PARTS_AGE, GROWN_AGE];
/// Rooms of which the largest that holds no child is looked for, by their depth, mm.
const ROOMS: [f64; 7] = [149.0, 200.0, 250.0, 300.0, 400.0, 500.0, 600.0];

/// How far a demand is let go.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Give {
    /// Altogether.
    Whole,
    /// By so many steps of its [`ladder`].
    Steps(u32),
    /// A size that is held fixed, but at this value.
    At(f64),
}

/// Demands that give way, and how far.
pub(super) type Given = Vec<(Demand, Give)>;

impl Demand {
    /// Those that all wishes have, in the order in which they are blamed; sizes held fixed come after.
    pub const USUAL: [Self; 15] = [
        Self::Width,
        Self::Depth,
        Self::Dials,
        Self::Marks,
        Self::Workmanship,
        Self::Season,
        Self::Bits,
        Self::Pins,
        Self::Thickness,
        Self::Room,
        Self::Pull,
        Self::Hold,
        Self::Hinges,
        Self::Bed,
        Self::Age,
    ];
}

/// Every demand of these wishes, in the order in which they are blamed.
pub(super) fn all(wishes: &Wishes) -> Vec<Demand> {
    let mut demands = Demand::USUAL.to_vec();
    let held = 0..wishes.pinned.len();
    let firsts = held.filter(|number| leader(wishes, *number) == *number);
    demands.extend(firsts.map(Demand::Pinned));
    demands
}

/// The first size that is held like this one: alike, if need be of another dial, at the same value.
pub(super) fn leader(wishes: &Wishes, number: usize) -> usize {
    let Some((size, value)) = wishes.pinned.get(number) else {
        return number;
    };
    let mut held = wishes.pinned.iter();
    let first = held.position(|(other, held)| other.alike(*size) && held == value);
    first.unwrap_or(number)
}

/// The sizes that are held like that of this number and at the same value, by their numbers.
pub fn alike(wishes: &Wishes, number: usize) -> Vec<usize> {
    let held = 0..wishes.pinned.len();
    held.filter(|other| leader(wishes, *other) == number)
        .collect()
}

/// How many steps lead from the demand as it stands to none; the last is as good as
/// [`Give::Whole`], but for a lid, which is then `lid`.
pub(super) fn ladder(wishes: &Wishes, demand: Demand, lid: Lid) -> u32 {
    let base = &wishes.base;
    let grid = Grid::of(base.units);
    let steps = |length: f64, step: f64| steps(length, step).max(1);
    match demand {
        Demand::Width => steps((lid.width - base.plate.width).abs(), grid.lid),
        Demand::Depth => steps((lid.depth - base.plate.depth).abs(), grid.lid),
        Demand::Dials => count(wishes.dials.len()).saturating_sub(1),
        Demand::Marks => most_marks(wishes).saturating_sub(FEWEST_MARKS),
        Demand::Workmanship | Demand::Season => SHARES,
        Demand::Thickness => steps(stout(base).0 - base.plate.thickness, grid.size),
        Demand::Room => steps(stout(base).1 - base.plate.room, grid.size),
        Demand::Pull => steps(base.slider.pull - PULL, PULL_STEP),
        Demand::Hold => steps(base.tab.required_hold, 2.0 * grid.clearance),
        Demand::Hinges => hinge_steps(wishes).0 + hinge_steps(wishes).1,
        Demand::Bed => steps(
            BED - base.bench.printer.bed.0.min(base.bench.printer.bed.1),
            BED_STEP,
        ),
        Demand::Age => count(ages(wishes).count()),
        Demand::Bits | Demand::Pins | Demand::Pinned(_) => 1,
    }
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}

fn ages(wishes: &Wishes) -> impl Iterator<Item = u32> {
    let youngest = wishes.base.card.youngest;
    AGES.into_iter().filter(move |age| *age > youngest)
}

fn most_marks(wishes: &Wishes) -> u32 {
    let dials = wishes.dials.iter();
    dials.map(|dial| dial.marks.number()).max().unwrap_or(0)
}

/// A plate and a room that are let go, mm: all that lies in them goes in with ease.
fn stout(base: &Design) -> (f64, f64) {
    let discs = base.dials.iter().map(|dial| dial.disc.thickness);
    let parts = base.slider.thickness + 2.0 * discs.fold(0.0, f64::max);
    (
        base.plate.thickness.max(30.0 + base.keeper.thickness),
        base.plate.room.max(40.0 + parts),
    )
}

/// Steps by which the hinges move out to the sides, and by which they get shorter.
fn hinge_steps(wishes: &Wishes) -> (u32, u32) {
    let hinge = &wishes.base.body.hinge;
    let step = Grid::of(wishes.base.units).place;
    (steps(hinge.inset, step), steps(hinge.length - HINGE, step))
}

/// These wishes with some demands let go, on a lid of `lid`, mm, where the lid gives way.
pub(super) fn relaxed(wishes: &Wishes, given: &[(Demand, Give)], lid: Lid) -> Wishes {
    let mut eased = wishes.clone();
    for (demand, give) in given {
        let whole = ladder(wishes, *demand, lid);
        let steps = match give {
            Give::Whole | Give::At(_) => whole,
            Give::Steps(steps) => (*steps).min(whole),
        };
        ease(&mut eased, *demand, Part { steps, whole }, lid);
    }
    let held = wishes.pinned.iter().enumerate();
    eased.pinned = held
        .filter_map(|(number, (size, value))| {
            let give = given
                .iter()
                .find(|(demand, _)| *demand == Demand::Pinned(leader(wishes, number)));
            match give {
                None => Some((*size, *value)),
                Some((_, Give::At(value))) => Some((*size, *value)),
                Some(_) => None,
            }
        })
        .collect();
    eased
}

/// So many steps of a whole ladder.
#[derive(Debug, Clone, Copy)]
struct Part {
    steps: u32,
    whole: u32,
}

/// Takes this part of the way from a demand to none.
fn ease(wishes: &mut Wishes, demand: Demand, part: Part, lid: Lid) {
    let Part { steps, whole } = part;
    if steps == 0 {
        return;
    }
    let grid = Grid::of(wishes.base.units);
    let now = Lid::of(&wishes.base);
    let left = f64::from(whole - steps) / f64::from(whole.max(1));
    match demand {
        Demand::Width => {
            let width = towards(now.width, lid.width, steps, grid.lid);
            *wishes = wishes.on(Lid { width, ..now });
        }
        Demand::Depth => {
            let depth = towards(now.depth, lid.depth, steps, grid.lid);
            *wishes = wishes.on(Lid { depth, ..now });
        }
        Demand::Dials => {
            let kept = wishes.dials.len().saturating_sub(steps as usize);
            wishes.dials.truncate(kept.max(1));
        }
        Demand::Marks => at_most(wishes, most_marks(wishes).saturating_sub(steps)),
        Demand::Workmanship => work_to(&mut wishes.base, left),
        Demand::Season => calmer(&mut wishes.base.season, left),
        Demand::Bits => {
            let bits = &mut wishes.base.bench.bits;
            bits.extend(any_bits(grid));
            // a bit for a pin of an odd size can be had too
            bits.extend(&wishes.pins);
        }
        Demand::Pins => wishes.pins.extend(any_pins(grid)),
        Demand::Thickness => {
            let (end, _) = stout(&wishes.base);
            let thickness = &mut wishes.base.plate.thickness;
            *thickness = towards(*thickness, end, steps, grid.size);
        }
        Demand::Room => {
            let (_, end) = stout(&wishes.base);
            let room = &mut wishes.base.plate.room;
            *room = towards(*room, end, steps, grid.size);
        }
        Demand::Pull => {
            let pull = &mut wishes.base.slider.pull;
            *pull = (*pull - f64::from(steps) * PULL_STEP).max(PULL.min(*pull));
        }
        Demand::Hold => {
            let hold = &mut wishes.base.tab.required_hold;
            let least = LEAST_HOLD.min(*hold);
            *hold = towards(*hold, least, steps, 2.0 * grid.clearance);
        }
        Demand::Hinges => {
            let (inset, _) = hinge_steps(wishes);
            let hinge = &mut wishes.base.body.hinge;
            hinge.inset = (hinge.inset - f64::from(steps.min(inset)) * grid.place).max(0.0);
            let shorter = f64::from(steps.saturating_sub(inset)) * grid.place;
            hinge.length = (hinge.length - shorter).max(HINGE.min(hinge.length));
        }
        Demand::Bed => {
            let bed = &mut wishes.base.bench.printer.bed;
            let least = bed.0.min(bed.1) + f64::from(steps) * BED_STEP;
            *bed = (bed.0.max(least), bed.1.max(least));
        }
        Demand::Age => {
            let older = ages(wishes).nth(steps as usize - 1);
            wishes.base.card.youngest = older.unwrap_or(wishes.base.card.youngest);
        }
        // they are left out, or moved, all at once
        Demand::Pinned(_) => {}
    }
}

/// So many steps of the lid's grid from `now` to `end`, never beyond it.
fn towards(now: f64, end: f64, steps: u32, step: f64) -> f64 {
    let by = f64::from(steps) * step;
    if steps == 0 {
        now
    } else if end >= now {
        // a lid that is off the grid reaches it with its first step
        up(now - step * 0.999 + by, step).min(end)
    } else {
        down(now + step * 0.999 - by, step).max(end)
    }
}

fn at_most(wishes: &mut Wishes, most: u32) {
    for dial in &mut wishes.dials {
        if dial.marks.number() > most {
            dial.marks = Marks::AtLeast(most.max(FEWEST_MARKS));
            dial.labels = Labels::Digits;
        }
    }
}

/// Every error and play becomes this share of what it was.
pub(super) fn work_to(base: &mut Design, share: f64) {
    let work = &mut base.workmanship;
    for error in [
        &mut work.pin_place,
        &mut work.bore_place,
        &mut work.keeper_place,
        &mut work.thickness,
        &mut work.print,
        &mut work.film_spread,
        &mut work.reading,
        &mut base.slider.guide_play,
    ] {
        *error *= share;
    }
    for dial in &mut base.dials {
        dial.bore.shaft_play *= share;
        dial.key.clearance *= share;
    }
}

/// The year's airs drawn towards the air in which it is built, to this share.
fn calmer(season: &mut Season, share: f64) {
    let built = season.built;
    for air in [&mut season.driest, &mut season.dampest] {
        air.celsius = built.celsius + share * (air.celsius - built.celsius);
        air.humidity = built.humidity + share * (air.humidity - built.humidity);
    }
    if share <= 0.0 {
        *season = Season::still(built);
    }
}

/// Bits of every usual size, mm: for bores and for pins.
fn any_bits(grid: Grid) -> Vec<f64> {
    (1..=steps(26.0, grid.size))
        .map(|steps| up(f64::from(steps) * grid.size, grid.size))
        .filter(|bit| (1.0..=26.0).contains(bit))
        .collect()
}

/// Pins of every usual size, mm.
fn any_pins(grid: Grid) -> Vec<f64> {
    let mut any = any_bits(grid);
    any.retain(|pin| (1.5..=10.0).contains(pin));
    any
}

/// Lids that stand for one that is let go: as large as goes, and where a child could be shut into that
/// one, the largest into which none could, for some depths. Without a lid that gives way, the lid.
pub(super) fn lids(wishes: &Wishes, gone: &[Demand]) -> Vec<Lid> {
    let base = &wishes.base;
    let now = Lid::of(base);
    let (wide, deep) = (gone.contains(&Demand::Width), gone.contains(&Demand::Depth));
    let largest = Lid {
        width: if wide { WIDE.max(now.width) } else { now.width },
        depth: if deep { WIDE.max(now.depth) } else { now.depth },
    };
    let fits = |lid: Lid| !shuts_in(&wishes.on(lid).base);
    let grown = gone.contains(&Demand::Age);
    if grown || !(wide || deep) || fits(largest) {
        return vec![largest];
    }
    let step = Grid::of(base.units).lid;
    let sides = Lid {
        width: base.plate.width - base.inside.width,
        depth: base.plate.depth - base.inside.depth,
    };
    let most_wide = |depth: f64| {
        let lid = |width| Lid { width, depth };
        if !wide {
            return Some(lid(now.width)).filter(|lid| fits(*lid));
        }
        let widths = (1..=steps(largest.width, step)).rev();
        let widths = widths.map(|steps| up(f64::from(steps) * step, step));
        let mut lids = widths.filter(|width| *width > sides.width).map(lid);
        lids.find(|lid| fits(*lid))
    };
    if deep {
        let depths = ROOMS.iter().map(|room| down(room + sides.depth, step));
        depths.filter_map(most_wide).collect()
    } else {
        most_wide(now.depth).into_iter().collect()
    }
}

/// The step by which a size that is held fixed is moved, in its own unit.
pub(super) fn step_of(size: Size, grid: Grid) -> f64 {
    match size.unit() {
        Unit::Millimetre => grid.size,
        _ => 1.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const LARGE: Lid = Lid {
        width: WIDE,
        depth: WIDE,
    };

    #[test]
    fn the_first_step_leaves_the_demand_and_the_last_lets_it_go() {
        let mut wishes = Wishes::of(Design::default());
        wishes.base.card.youngest = 2;
        for demand in all(&wishes) {
            let whole = ladder(&wishes, demand, LARGE);
            assert!(whole >= 1, "{demand:?}");
            let at = |steps| relaxed(&wishes, &[(demand, Give::Steps(steps))], LARGE);
            assert_ne!(at(1), wishes, "{demand:?}");
            let gone = relaxed(&wishes, &[(demand, Give::Whole)], LARGE);
            assert_eq!(at(whole), gone, "{demand:?}");
            if whole > 1 {
                assert_ne!(at(whole - 1), gone, "{demand:?}");
            }
        }
    }

    #[test]
    fn a_lid_is_let_go_only_as_far_as_no_child_could_be_shut_in() {
        let mut wishes = Wishes::of(Design::default());
        wishes.base.inside.height = 300.0;
        wishes.base.card.youngest = 6;
        let lids = lids(&wishes, &[Demand::Width, Demand::Depth]);
        assert!(lids.len() > 3);
        assert!(lids.iter().all(|lid| !shuts_in(&wishes.on(*lid).base)));
        let gone = super::lids(&wishes, &[Demand::Width, Demand::Depth, Demand::Age]);
        assert_eq!(gone, [LARGE]);
    }
}
