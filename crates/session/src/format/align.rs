//! Which entry of a list has become which, when the list was changed meanwhile.

use super::write::Tree;

/// Longer stretches of changed entries are not compared one by one with each other.
const MOST_PAIRS: usize = 10_000;

/// For each entry of `old` the index it has in `new`; `None` for one that is gone.
///
/// Entries keep their order. Of all ways to pair them the one is taken that leaves most as it was.
pub(super) fn aligned(old: &[Tree], new: &[Tree]) -> Vec<Option<usize>> {
    let same = |pair: &(&Tree, &Tree)| pair.0 == pair.1;
    let head = old.iter().zip(new).take_while(same).count();
    let (old_rest, new_rest) = (
        old.get(head..).unwrap_or_default(),
        new.get(head..).unwrap_or_default(),
    );
    let ends = old_rest.iter().rev().zip(new_rest.iter().rev());
    let tail = ends.take_while(same).count();
    let olds = old_rest.get(..old_rest.len() - tail).unwrap_or_default();
    let news = new_rest.get(..new_rest.len() - tail).unwrap_or_default();
    let middle = paired(olds, news);
    let ahead = (0..head).map(Some);
    let between = middle
        .into_iter()
        .map(|index| index.map(|index| head + index));
    let behind = (new.len() - tail..new.len()).map(Some);
    ahead.chain(between).chain(behind).collect()
}

fn paired(old: &[Tree], new: &[Tree]) -> Vec<Option<usize>> {
    if old.len().saturating_mul(new.len()) > MOST_PAIRS {
        let alike = old.len() == new.len();
        return (0..old.len()).map(|index| alike.then_some(index)).collect();
    }
    // best[i][j] is what pairing old[i..] with new[j..] keeps at most
    let mut best = vec![vec![0.0_f64; new.len() + 1]; old.len() + 1];
    let at = |best: &[Vec<f64>], i: usize, j: usize| {
        let row = best.get(i).and_then(|row| row.get(j));
        row.copied().unwrap_or(0.0)
    };
    let mut kept = vec![vec![0.0_f64; new.len()]; old.len()];
    for (i, before) in old.iter().enumerate().rev() {
        for (j, after) in new.iter().enumerate().rev() {
            let share = worth(before, after);
            let pair = share + at(&best, i + 1, j + 1);
            let most = pair.max(at(&best, i + 1, j)).max(at(&best, i, j + 1));
            if let Some(cell) = best.get_mut(i).and_then(|row| row.get_mut(j)) {
                *cell = most;
            }
            if let Some(cell) = kept.get_mut(i).and_then(|row| row.get_mut(j)) {
                *cell = pair;
            }
        }
    }
    let (mut i, mut j) = (0, 0);
    let mut pairs = vec![None; old.len()];
    while i < old.len() && j < new.len() {
        let most = at(&best, i, j);
        if at(&kept, i, j) >= most {
            if let Some(pair) = pairs.get_mut(i) {
                *pair = Some(j);
            }
            (i, j) = (i + 1, j + 1);
        } else if at(&best, i + 1, j) >= most {
            i += 1;
        } else {
            j += 1;
        }
    }
    pairs
}

/// What it is worth to take `new` for `old`: 1 where they are equal, and a little even where nothing
/// of it is left, so that as many as can be are paired.
fn worth(old: &Tree, new: &Tree) -> f64 {
    if old == new {
        1.0
    } else {
        0.01 + 0.98 * share(old, new)
    }
}

/// How much of `old` is in `new` still, from 0 to 1.
fn share(old: &Tree, new: &Tree) -> f64 {
    let mean = |sum: f64, count: usize| if count == 0 { 1.0 } else { sum / count as f64 };
    match (old, new) {
        (Tree::Fields(_, old), Tree::Fields(_, new)) => {
            let field = |(name, value): &(&str, Tree)| {
                let other = new.iter().find(|(other, _)| other == name);
                other.map_or(0.0, |(_, other)| share(value, other))
            };
            mean(old.iter().map(field).sum(), old.len())
        }
        (Tree::List(old), Tree::List(new)) | (Tree::Tuple(old), Tree::Tuple(new)) => {
            let sum = old.iter().zip(new).map(|(old, new)| share(old, new)).sum();
            mean(sum, old.len().max(new.len()))
        }
        (Tree::Variant(name, old), Tree::Variant(other, new)) if name == other => share(old, new),
        _ => f64::from(u8::from(old == new)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn slot(mark: u32, width: f64) -> Tree {
        let fields = vec![
            ("mark", Tree::Word(mark.to_string())),
            ("width", Tree::Number(width)),
            ("depth", Tree::Number(4.0)),
        ];
        Tree::Fields("", fields)
    }

    #[test]
    fn what_is_equal_stays_together_whatever_is_put_in_or_taken_out() {
        let [a, b, c] = [slot(0, 5.0), slot(3, 5.0), slot(6, 5.0)];
        let list = |of: &[&Tree]| of.iter().map(|tree| (*tree).clone()).collect::<Vec<_>>();
        let old = list(&[&a, &b, &c]);
        for (new, expected) in [
            (list(&[&a, &b, &c]), [Some(0), Some(1), Some(2)]),
            (list(&[&b, &c]), [None, Some(0), Some(1)]),
            (list(&[&a, &c]), [Some(0), None, Some(1)]),
            (list(&[&a, &b]), [Some(0), Some(1), None]),
            (list(&[]), [None, None, None]),
            (
                list(&[&slot(9, 5.0), &a, &b, &c]),
                [Some(1), Some(2), Some(3)],
            ),
            (list(&[&a, &slot(3, 6.0), &c]), [Some(0), Some(1), Some(2)]),
        ] {
            assert_eq!(aligned(&old, &new), expected, "{new:?}");
        }
    }

    #[test]
    fn a_changed_entry_is_told_by_what_is_left_of_it() {
        let old = [slot(0, 5.0), slot(3, 7.0)];
        assert_eq!(aligned(&old, &[slot(4, 7.0)]), [None, Some(0)]);
        assert_eq!(aligned(&old, &[slot(0, 6.0)]), [Some(0), None]);
        let all_changed = [slot(1, 9.0), slot(2, 9.0)];
        assert_eq!(aligned(&old, &all_changed), [Some(0), Some(1)]);
    }

    #[test]
    fn long_lists_that_change_throughout_are_not_compared_pair_by_pair() {
        let numbers = |from: u32, count: u32| {
            let one = |index: u32| Tree::Word((from + index).to_string());
            (0..count).map(one).collect::<Vec<_>>()
        };
        let old = numbers(0, 1000);
        let all: Vec<_> = (0..1000).map(Some).collect();
        assert_eq!(aligned(&old, &numbers(5000, 1000)), all);
        assert_eq!(aligned(&old, &numbers(5000, 900)), vec![None; 1000]);
    }
}
