//! Wishes with more marks than are asked for. A post of three flats turns least in its bore, but in a thin
//! bore posts of more flats are thick enough and those of fewer are not.

use itertools::Itertools;

use super::lattice::{first_from, seated};
use super::wishes::{Marks, Wishes};

/// Flats of the posts that all dials may have, the likeliest to help last.
const FLATS: [&[u32]; 8] = [
    &[6],
    &[5],
    &[4, 5, 6],
    &[4, 5],
    &[4],
    &[3, 4],
    &[3],
    &[5, 6],
];

/// So many of them are tried where each takes long.
const LIKELY: usize = 2;

/// The same wishes with more marks, where they are not fixed: those that may well have more room, or a
/// smaller lid, or a latch where there is none. The likeliest is the last.
pub(super) fn more_marks(wishes: &Wishes) -> Vec<Wishes> {
    let asked = counts(wishes);
    let more = FLATS.iter().rev().map(|flats| {
        let seats = |number: &u32| flats.iter().any(|flats| number.is_multiple_of(*flats));
        raised(wishes, &|number| first_from(number, seats))
    });
    let mut more: Vec<Wishes> = more
        .filter(|more| counts(more) != asked)
        .unique_by(counts)
        .collect();
    more.reverse();
    more
}

/// Those that are tried: the likeliest alone where each takes long, as it matters how far back the dials
/// stand.
pub(super) fn likeliest(mut more: Vec<Wishes>, drifts: bool) -> Vec<Wishes> {
    if drifts {
        more.drain(..more.len().saturating_sub(LIKELY));
    }
    more
}

fn counts(wishes: &Wishes) -> Vec<u32> {
    let dials = wishes.dials.iter();
    dials.map(|dial| seated(dial.marks)).collect()
}

fn raised(wishes: &Wishes, to: &dyn Fn(u32) -> u32) -> Wishes {
    let mut more = wishes.clone();
    for dial in &mut more.dials {
        if matches!(dial.marks, Marks::AtLeast(_)) {
            dial.marks = Marks::AtLeast(to(seated(dial.marks)));
        }
    }
    more
}

#[cfg(test)]
mod tests {
    use super::super::wishes::DialWish;
    use super::*;
    use crate::model::Design;
    use crate::verdict::MAX_POSITIONS;

    fn of(marks: &[u32]) -> Vec<Vec<u32>> {
        let mut wishes = Wishes::of(Design::default());
        wishes.dials = marks
            .iter()
            .map(|marks| DialWish::numbered(*marks))
            .collect();
        more_marks(&wishes).iter().map(counts).collect()
    }

    #[test]
    fn dials_get_the_marks_of_posts_that_turn_least_or_are_thickest() {
        assert_eq!(of(&[8, 8]), [[12, 12], [9, 9], [10, 10]]);
        assert_eq!(of(&[3]), [[6], [4], [5]]);
        assert_eq!(of(&[6]), [[10], [8]]);
        assert_eq!(of(&[60]), [[0; 1]; 0]);
        assert_eq!(of(&[7]), [[12], [9], [10]], "7 is sought as 8");
        let marks = [5, 8];
        let more = [[6, 12], [8, 8], [6, 8], [6, 9], [5, 10]];
        assert_eq!(of(&marks), more);
    }

    #[test]
    fn fixed_marks_stay_and_none_are_more_than_a_dial_can_have() {
        let mut wishes = Wishes::of(Design::default());
        wishes.dials = vec![DialWish::words(vec!["one".to_owned(); 4])];
        assert!(more_marks(&wishes).is_empty());
        for marks in [MAX_POSITIONS - 1, MAX_POSITIONS] {
            let all = of(&[marks]).concat();
            assert!(all.into_iter().all(|marks| marks <= MAX_POSITIONS));
        }
    }
}
