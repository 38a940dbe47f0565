//! Wishes with more marks than are asked for: in a thin bore posts of more flats are thick enough, and
//! those of fewer are not.

use super::lattice::{SIDES, first_from, seated};
use super::wishes::{Marks, Wishes};

/// Flats of the posts that are thickest in their bore.
const THICK: [u32; 2] = [5, 6];

/// The same wishes with more marks, where they are not fixed.
pub(super) struct MoreMarks {
    /// Those that may well have more room, or a smaller lid.
    pub likely: Vec<Wishes>,
    /// What else there is to try where nothing is found.
    pub rest: Vec<Wishes>,
}

impl MoreMarks {
    pub(super) fn of(wishes: &Wishes) -> Self {
        let thick = |number: &u32| THICK.iter().any(|sides| number.is_multiple_of(*sides));
        let next_thick = |number: u32| first_from(number, thick);
        let six = |number: u32| if number < 6 { 6 } else { next_thick(number) };
        let four = |number: u32| if number == 3 { 4 } else { number };
        let mut seen = vec![counts(wishes)];
        let mut new = |more: Wishes| {
            let counts = counts(&more);
            let is_new = !seen.contains(&counts);
            seen.push(counts);
            is_new.then_some(more)
        };
        let likely: [&dyn Fn(u32) -> u32; 3] = [&four, &six, &next_thick];
        let likely = likely.map(|to| new(raised(wishes, to)));
        let rest = SIDES.map(|sides| {
            let more = |number: &u32| number.is_multiple_of(sides);
            let to = |number: u32| first_from(number, more);
            new(raised(wishes, &to))
        });
        Self {
            likely: likely.into_iter().flatten().collect(),
            rest: rest.into_iter().flatten().collect(),
        }
    }
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

    fn of(marks: &[u32]) -> (Vec<Vec<u32>>, Vec<Vec<u32>>) {
        let mut wishes = Wishes::of(Design::default());
        wishes.dials = marks
            .iter()
            .map(|marks| DialWish::numbered(*marks))
            .collect();
        let MoreMarks { likely, rest } = MoreMarks::of(&wishes);
        let all = |all: Vec<Wishes>| all.iter().map(counts).collect();
        (all(likely), all(rest))
    }

    #[test]
    fn only_dials_with_thin_posts_get_more_marks_first() {
        assert_eq!(
            of(&[8, 8]),
            (vec![vec![10, 10]], vec![vec![9, 9], vec![12, 12]])
        );
        assert_eq!(of(&[6, 8, 12]).0, [[6, 10, 12]]);
        assert_eq!(of(&[3]).0, [[4], [6], [5]]);
        assert_eq!(of(&[10]).0, [[0; 1]; 0]);
        assert_eq!(of(&[7]).0, [[10]], "7 is sought as 8");
    }

    #[test]
    fn fixed_marks_stay_and_none_are_more_than_a_dial_can_have() {
        let mut wishes = Wishes::of(Design::default());
        wishes.dials = vec![DialWish::words(vec!["one".to_owned(); 4])];
        let more = MoreMarks::of(&wishes);
        assert!(more.likely.is_empty() && more.rest.is_empty());
        for marks in [MAX_POSITIONS - 1, MAX_POSITIONS] {
            let (likely, rest) = of(&[marks]);
            let all = likely.iter().chain(&rest).flatten();
            assert!(all.into_iter().all(|marks| *marks <= MAX_POSITIONS));
        }
    }
}
