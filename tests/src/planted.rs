//! Designs on the very edge: one size is changed until a promise is about to fall.

use latchwright_model::Design;
use latchwright_proof::{Verdict, verdicts};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

/// A size that can be turned: what it is called, how to change it, and how far at most.
pub struct Size {
    /// Its name.
    pub name: &'static str,
    change: fn(&mut Design, usize, f64),
    most: f64,
}

/// The sizes that are turned; each promise leans on some of them.
pub const SIZES: [Size; 10] = [
    Size {
        name: "required hold",
        change: |design, _, by| design.tab.required_hold += by,
        most: 6.0,
    },
    Size {
        name: "narrower true slot",
        change: |design, dial, by| design.dials[dial].disc.slots[0].width -= by,
        most: 6.0,
    },
    Size {
        name: "wider true slot",
        change: |design, dial, by| design.dials[dial].disc.slots[0].width += by,
        most: 8.0,
    },
    Size {
        name: "shallower true slot",
        change: |design, dial, by| design.dials[dial].disc.slots[0].depth -= by,
        most: 6.0,
    },
    Size {
        name: "deeper last slot",
        change: |design, dial, by| {
            if let Some(slot) = design.dials[dial].disc.slots.last_mut() {
                slot.depth += by;
            }
        },
        most: 8.0,
    },
    Size {
        name: "narrower last slot",
        change: |design, dial, by| {
            if let Some(slot) = design.dials[dial].disc.slots.last_mut() {
                slot.width -= by;
            }
        },
        most: 6.0,
    },
    Size {
        name: "thicker pin",
        change: |design, dial, by| design.dials[dial].pin.diameter += by,
        most: 6.0,
    },
    Size {
        name: "pin offset",
        change: |design, dial, by| design.dials[dial].pin.offset += by,
        most: 10.0,
    },
    Size {
        name: "reading",
        change: |design, _, by| design.workmanship.reading += by,
        most: 20.0,
    },
    Size {
        name: "guide play",
        change: |design, _, by| design.slider.guide_play += by,
        most: 3.0,
    },
];

/// Least margin that a promise on the edge still has, mm.
const EDGE: f64 = 2e-5;

/// Which promises a dial gives, and whether each has the least margin.
fn promises(design: &Design, dial: usize) -> Vec<Verdict> {
    verdicts(design).get(dial).map_or(Vec::new(), |proof| {
        proof
            .marks
            .iter()
            .map(|mark| match mark.verdict {
                promised if mark.margin >= EDGE => promised,
                _ => Verdict::Unsure,
            })
            .collect()
    })
}

/// Turns one size of one dial until a promise is on its edge; gives the mark that is, if one fell.
pub fn to_the_edge(
    design: &mut Design,
    dial: usize,
    size: &Size,
    rng: &mut ChaCha8Rng,
) -> Option<u32> {
    let before = promises(design, dial);
    let kept = |by: f64| {
        let mut turned = design.clone();
        (size.change)(&mut turned, dial, by);
        let now = promises(&turned, dial);
        before
            .iter()
            .zip(&now)
            .position(|(one, other)| *one != Verdict::Unsure && one != other)
    };
    // start with a random share of the way, so that the first border found is not always the same
    let most = size.most * rng.random_range(0.2..1.0);
    kept(most)?;
    let (mut yes, mut no) = (0.0, most);
    for _ in 0..40 {
        let middle = f64::midpoint(yes, no);
        if kept(middle).is_none() {
            yes = middle;
        } else {
            no = middle;
        }
    }
    let fallen = kept(no)?;
    (size.change)(design, dial, yes);
    u32::try_from(fallen).ok()
}
