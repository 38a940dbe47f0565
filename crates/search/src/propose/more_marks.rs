//! Wishes with more marks than are asked for. A post of three flats turns least in its bore, but in a thin
//! bore posts of more flats are thick enough and those of fewer are not.

use itertools::{Itertools, iproduct};

use super::lattice::{SIDES, first_from, seated};
use super::wishes::{Marks, Wishes};
use latchwright_model::Design;

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

/// The same wishes with the marks of a latch that was found, if those are more than must be.
pub(super) fn with_marks(wishes: &Wishes, found: &Design) -> Option<Wishes> {
    let has = marks_of(wishes, found);
    let with = raised(wishes, &has);
    (counts(&with) != counts(wishes)).then_some(with)
}

/// Of a latch that was found, how many marks the dials have that ask for so many.
fn marks_of(wishes: &Wishes, found: &Design) -> impl Fn(u32) -> u32 {
    let dials = wishes.dials.iter().zip(&found.dials);
    let marks: Vec<(u32, u32)> = dials
        .filter_map(|(wish, dial)| Some((free(wish.marks)?, dial.positions)))
        .collect();
    move |asked| {
        let has = marks.iter().find(|(of, _)| *of == asked);
        has.map_or(asked, |(_, marks)| *marks)
    }
}

/// The same wishes with other marks than a latch has that was found: with more, or changed on all dials that
/// ask for one number or for one of two. The last is to be tried first.
pub(super) fn other_marks(wishes: &Wishes, found: &Design) -> Vec<Wishes> {
    let now: Vec<u32> = found.dials.iter().map(|dial| dial.positions).collect();
    let has = marks_of(wishes, found);
    let asked = wishes.dials.iter().filter_map(|wish| free(wish.marks));
    let changes: Vec<(u32, u32)> = iproduct!(asked.unique(), SIDES)
        .map(|(asked, sides)| {
            let marks = first_from(asked, |number| number.is_multiple_of(sides));
            (asked, marks)
        })
        .filter(|(asked, marks)| *marks != has(*asked))
        .unique()
        .collect();
    let with = |changes: &[(u32, u32)]| {
        raised(wishes, &|asked| {
            let to = changes.iter().find(|(of, _)| *of == asked);
            to.map_or_else(|| has(asked), |(_, marks)| *marks)
        })
    };
    let one = changes.iter().map(|change| with(&[*change]));
    let two = changes.iter().copied().array_combinations();
    let two = two.map(|both: [_; 2]| with(&both));
    let mut others: Vec<Wishes> = one
        .chain(more_marks(wishes).into_iter().rev())
        .chain(two)
        .filter(|other| counts(other) != now)
        .unique_by(counts)
        .collect();
    others.reverse();
    others
}

/// The number that is asked for, where there may be more.
fn free(marks: Marks) -> Option<u32> {
    matches!(marks, Marks::AtLeast(_)).then(|| seated(marks))
}

fn counts(wishes: &Wishes) -> Vec<u32> {
    let dials = wishes.dials.iter();
    dials.map(|dial| seated(dial.marks)).collect()
}

fn raised(wishes: &Wishes, to: &dyn Fn(u32) -> u32) -> Wishes {
    let mut more = wishes.clone();
    for dial in &mut more.dials {
        if let Some(asked) = free(dial.marks) {
            dial.marks = Marks::AtLeast(to(asked));
        }
    }
    more
}

#[cfg(test)]
mod tests {
    use super::super::wishes::DialWish;
    use super::*;
    use latchwright_model::validate::MAX_POSITIONS;

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
    fn other_marks_change_the_dials_of_one_number_or_two() {
        let mut wishes = Wishes::of(Design::default());
        wishes.dials = [4, 4, 10].map(DialWish::numbered).into();
        wishes.dials.push(DialWish::words(vec![String::new(); 7]));
        let mut found = Design::default();
        found.dials.resize(4, found.dials[0].clone());
        let mut others = |marks: [u32; 4]| -> Vec<Vec<u32>> {
            for (dial, marks) in found.dials.iter_mut().zip(marks) {
                dial.positions = marks;
            }
            let others = other_marks(&wishes, &found);
            others.iter().rev().map(counts).collect()
        };
        let all = others([4, 4, 10, 7]);
        let first = [[6, 6, 10, 7], [5, 5, 10, 7], [4, 4, 12, 7], [6, 6, 12, 7]];
        assert_eq!(all[..4], first);
        assert!(all.contains(&vec![5, 5, 12, 7]) && !all.contains(&vec![4, 4, 10, 7]));
        assert!(others([6, 6, 12, 7]).contains(&vec![4, 4, 10, 7]));
        assert_eq!(
            with_marks(&wishes, &found).as_ref().map(counts),
            Some(vec![6, 6, 12, 7])
        );
        found.dials[0].positions = 4;
        found.dials[1].positions = 4;
        found.dials[2].positions = 10;
        assert_eq!(with_marks(&wishes, &found), None);
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
