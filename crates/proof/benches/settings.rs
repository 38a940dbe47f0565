//! Listing every setting of a latch, beside nested loops that work each setting out anew. Both must
//! count the same.

use divan::counter::ItemsCount;
use divan::{Bencher, black_box};
use latchwright_model::Design;
use latchwright_proof::{Counts, DialProof, Settings, Verdict, verdicts};

fn main() {
    divan::main();
}

/// This many dials of this many marks.
const SIZES: [(usize, u32); 3] = [(3, 8), (4, 12), (6, 12)];

fn dials(number: usize, positions: u32) -> Vec<DialProof> {
    let mut design = Design::default();
    let mut dial = design.dials[1].clone();
    dial.positions = positions;
    design.dials = vec![dial; number];
    design.combination = vec![positions / 2; number];
    verdicts(&design)
}

/// One of all settings opens, the others lock.
fn check(found: Counts, number: usize, positions: u32) {
    let total = u128::from(positions).pow(u32::try_from(number).unwrap_or(0));
    assert_eq!(found.total, total);
    assert_eq!((found.opens, found.unsure), (1, 0));
    assert_eq!(found.locks, total - 1);
}

fn add(counts: &mut Counts, verdict: Verdict) {
    counts.total += 1;
    match verdict {
        Verdict::Passes => counts.opens += 1,
        Verdict::Holds => counts.locks += 1,
        Verdict::Unsure => counts.unsure += 1,
    }
}

#[divan::bench(args = SIZES)]
fn walk(bencher: Bencher, (number, positions): (usize, u32)) {
    let dials = dials(number, positions);
    let items = u64::from(positions).pow(u32::try_from(number).unwrap_or(0));
    bencher.counter(ItemsCount::new(items)).bench_local(|| {
        let mut counts = Counts::default();
        let mut settings = Settings::new(black_box(&dials), None);
        while let Some(setting) = settings.next_setting() {
            add(&mut counts, setting.verdict);
        }
        check(counts, number, positions);
        counts
    });
}

#[divan::bench(args = SIZES)]
fn every_setting_anew(bencher: Bencher, (number, positions): (usize, u32)) {
    let dials = dials(number, positions);
    let items = u64::from(positions).pow(u32::try_from(number).unwrap_or(0));
    bencher.counter(ItemsCount::new(items)).bench_local(|| {
        let mut counts = Counts::default();
        nested(black_box(&dials), &mut Vec::new(), &mut counts);
        check(counts, number, positions);
        counts
    });
}

/// A loop in a loop for each dial; inside, all dials are asked.
fn nested(dials: &[DialProof], marks: &mut Vec<usize>, counts: &mut Counts) {
    let Some(dial) = dials.get(marks.len()) else {
        let asked = dials.iter().zip(marks.iter());
        let found = asked.map(|(dial, mark)| dial.marks[*mark].verdict);
        let verdict = found.fold(Verdict::Passes, |setting, dial| match (setting, dial) {
            (Verdict::Holds, _) | (_, Verdict::Holds) => Verdict::Holds,
            (Verdict::Unsure, _) | (_, Verdict::Unsure) => Verdict::Unsure,
            (Verdict::Passes, Verdict::Passes) => Verdict::Passes,
        });
        add(counts, verdict);
        return;
    };
    for mark in 0..dial.marks.len() {
        marks.push(mark);
        nested(dials, marks, counts);
        marks.pop();
    }
}

#[divan::bench]
fn the_one_that_opens_of_360_to_the_sixth(bencher: Bencher) {
    let mut dials = dials(6, 12);
    for dial in &mut dials {
        let (holds, passes) = (dial.marks[0].clone(), dial.marks[6].clone());
        dial.marks = vec![holds; 360];
        dial.marks[217] = passes;
    }
    bencher.bench_local(|| {
        let mut settings = Settings::new(black_box(&dials), Some(Verdict::Passes));
        let found = settings
            .next_setting()
            .map(|setting| setting.marks.to_vec());
        assert_eq!(found, Some(vec![217; 6]));
        assert!(settings.next_setting().is_none());
    });
}
