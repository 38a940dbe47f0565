//! Every demo with one size broken, and with two: mending makes it proven again, by no more than putting
//! back what was broken, and leaves alone what is said to be cut.

use core::ops::ControlFlow;

use latchwright_model::change::{Change, DialSize, LatchSize, Size, SlotSize};
use latchwright_model::{Design, Unit};
use latchwright_proof::prove;
use latchwright_search::Progress;
use latchwright_search::remedy::{self, Part, same, settled};
use latchwright_session::demos;

/// What goes wrong in a workshop: a size that came out otherwise, and by how much (mm).
const BREAKS: [(Size, f64); 8] = [
    (Size::Latch(LatchSize::GuidePlay), 0.3),
    (Size::Dial(0, DialSize::PinDiameter), 0.8),
    (Size::Slot(0, 0, SlotSize::Width), -0.8),
    (Size::Latch(LatchSize::Travel), -0.9),
    (Size::Latch(LatchSize::Engagement), -0.7),
    (Size::Dial(0, DialSize::DiscRadius), 1.1),
    (Size::Latch(LatchSize::PlateThickness), -0.9),
    (Size::Dial(0, DialSize::ShaftPlay), 0.2),
];

/// Proofs that one mending takes at most, whatever the machine.
const MOST_PROOFS: usize = 20_000;

/// What became of the designs that were broken.
#[derive(Debug, Default)]
struct Tally {
    asked: usize,
    mended: usize,
    /// Mended by no more than putting back what was broken.
    within: usize,
    most_proofs: usize,
    /// Those that are not.
    missed: Vec<String>,
}

/// A demo that is broken.
struct Broken<'a> {
    name: &'a str,
    first: &'a Design,
    design: Design,
    /// How many sizes are off.
    sizes: usize,
    /// By how much they are off together, mm.
    off: f64,
}

impl Broken<'_> {
    fn is_settled(&self) -> bool {
        settled(&self.design, &prove(&self.design))
    }

    fn put_off(&mut self, size: Size, by: f64) {
        let was = size.get(&self.design).expect("one of its sizes");
        assert!(size.unit() == Unit::Millimetre && size.set(&mut self.design, was + by));
        let first = size.get(self.first).expect("one of its sizes");
        let now = size.get(&self.design).expect("one of its sizes");
        self.off += (now - first).abs() - (was - first).abs();
    }
}

impl Tally {
    /// Mends a broken demo of which these parts are cut.
    fn mend(&mut self, broken: &Broken<'_>, cut: &[Part]) {
        self.asked += 1;
        let mut proofs = 0;
        let found = remedy::mend(&broken.design, cut, &mut |_: Progress<'_, Change>| {
            proofs += 1;
            ControlFlow::Continue(())
        });
        self.most_proofs = self.most_proofs.max(proofs);
        assert!(proofs < MOST_PROOFS, "{}: {proofs} proofs", broken.name);
        let Some(found) = found else {
            self.missed
                .push(format!("{}, {cut:?} cut: nothing", broken.name));
            return;
        };
        let after = found.change.apply(&broken.design);
        assert_eq!(prove(&after), found.proof);
        assert!(settled(&after, &found.proof));
        for part in cut {
            let stays = same(&broken.design, &after, *part);
            assert!(stays, "{}, {part:?}: {:?}", broken.name, found.change);
        }
        self.mended += 1;
        // the first step back to the grid may be a part of one
        let most = broken.off + 0.051 * broken.sizes as f64;
        if found.sizes < broken.sizes || found.sizes == broken.sizes && found.movement <= most {
            self.within += 1;
        } else {
            self.missed
                .push(format!("{}, {cut:?} cut: {:?}", broken.name, found.change));
        }
    }

    fn told(&self, name: &str) {
        println!(
            "{name}: {} of {} mended, {} by no more than putting back, {} proofs at most",
            self.mended, self.asked, self.within, self.most_proofs
        );
    }
}

/// The demo of this name with each size broken, once as it is and once with a part that is said to be cut,
/// then with two of them broken.
fn every_break_is_mended(name: &str, two_of_them: [usize; 2]) {
    let first = demos::demo(name)
        .expect("a demo")
        .design()
        .expect("it can be read");
    assert!(settled(&first, &prove(&first)), "{name} needs no mending");
    let mut parts = vec![Part::Plate, Part::Slider, Part::Keeper];
    parts.extend((0..first.dials.len()).map(Part::Disc));
    parts.extend((0..first.dials.len()).map(Part::Knob));
    let (mut one, mut two, mut cut) = (Tally::default(), Tally::default(), Tally::default());
    for (number, (size, by)) in BREAKS.into_iter().enumerate() {
        let mut broken = Broken {
            name: &format!("{name}, {size:?}"),
            first: &first,
            design: first.clone(),
            sizes: 1,
            off: 0.0,
        };
        // further off where that much does not matter yet
        for _ in 0..6 {
            if broken.is_settled() {
                broken.put_off(size, by);
            }
        }
        if broken.is_settled() {
            continue;
        }
        one.mend(&broken, &[]);
        // a part that is cut as it should be does not stand in the way of putting the size back
        let whole = |part: &&Part| same(&first, &broken.design, **part);
        let still: Vec<&Part> = parts.iter().filter(whole).collect();
        if let Some(part) = still.get(number % still.len().max(1)) {
            cut.mend(&broken, &[**part]);
        }
    }
    let pair = two_of_them.map(|number| BREAKS[number]);
    let mut broken = Broken {
        name: &format!("{name}, {:?} and {:?}", pair[0].0, pair[1].0),
        first: &first,
        design: first.clone(),
        sizes: 2,
        off: 0.0,
    };
    for (size, by) in [pair; 3].concat() {
        broken.put_off(size, by);
    }
    two.mend(&broken, &[]);
    one.told(&format!("{name}, one size"));
    cut.told(&format!("{name}, one size and a part cut"));
    two.told(&format!("{name}, two sizes"));
    assert!(one.asked > 5, "{one:?}");
    assert_eq!(
        (one.within, cut.within),
        (one.asked, cut.asked),
        "{one:?} {cut:?}"
    );
    assert_eq!(two.mended, two.asked, "{two:?}");
}

#[test]
fn every_break_of_the_tea_box_is_mended() {
    every_break_is_mended("tea-box", [0, 4]);
}

#[test]
fn every_break_of_the_letters_chest_is_mended() {
    every_break_is_mended("letters-chest", [2, 6]);
}

#[test]
fn every_break_of_the_toy_post_box_is_mended() {
    every_break_is_mended("toy-post-box", [1, 5]);
}

#[test]
fn every_break_of_the_box_that_opens_twice_is_mended() {
    every_break_is_mended("two-ways", [3, 7]);
}

#[test]
fn every_break_of_the_spice_box_in_inches_is_mended() {
    every_break_is_mended("spice-box-inch", [0, 4]);
}

/// A disc that is cut too large, with every part that could make up for it cut as well: nothing is found,
/// or something that leaves all of them as they are.
#[test]
fn what_is_cut_wrong_is_left_as_it_is_cut() {
    let mut tally = Tally::default();
    for (number, demo) in demos::DEMOS.iter().enumerate() {
        let first = demo.design().expect("it can be read");
        // with five demos and steps of five, each of the breaks about three times
        for (size, by) in BREAKS.into_iter().cycle().skip(5 * number).take(4) {
            let mut design = first.clone();
            let was = size.get(&design).expect("one of its sizes");
            assert!(size.set(&mut design, was + 3.0 * by));
            let mut parts = vec![Part::Plate, Part::Slider, Part::Keeper, Part::Disc(0)];
            parts.retain(|part| !same(&first, &design, *part));
            let broken = Broken {
                name: &format!("{}, {size:?}", demo.name),
                first: &first,
                design,
                sizes: usize::MAX,
                off: 0.0,
            };
            if !parts.is_empty() && !broken.is_settled() {
                tally.mend(&broken, &parts);
            }
        }
    }
    tally.told("what is off is cut");
    assert!(tally.asked > 12, "{tally:?}");
}
