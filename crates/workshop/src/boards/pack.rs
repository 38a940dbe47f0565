//! Blocks laid on boards in strips: rip a strip along the board, then crosscut blocks off it.
//!
//! A strip is as wide as its widest block. Between neighbours, and between strips, goes one cut of the
//! saw; the far ends need none. All or nothing is decided by a search that looks at every way to share
//! out the blocks as long as that stays within a number of steps; what does not fit is laid as far as
//! it goes, the widest first.

/// Rounding that is forgiven, mm.
const SLACK: f64 = 1e-6;
/// Steps of the search before it gives up; a box has some ten blocks a wood.
const MOST_STEPS: u32 = 100_000;

/// What can be cut up, mm, ends already trimmed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Bin {
    /// Along the board.
    pub length: f64,
    /// Across the board.
    pub width: f64,
    /// As measured.
    pub thickness: f64,
}

/// What is to be cut, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Block {
    /// Along the board.
    pub length: f64,
    /// Across the board.
    pub width: f64,
    /// Least and largest thickness of a board that will do.
    pub thickness: (f64, f64),
    /// Whether it may lie the other way.
    pub turns: bool,
}

/// Where a block lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Spot {
    /// Number of the bin.
    pub bin: usize,
    /// Number of the strip in the bin, from its lower edge.
    pub strip: usize,
    /// From the left end, mm.
    pub x: f64,
    /// From the lower edge, mm.
    pub y: f64,
    /// Whether it lies the other way.
    pub turned: bool,
}

/// How many pieces of `piece` mm come off `length` mm with cuts of `kerf` mm: ⌊(L + k)/(p + k)⌋.
///
/// Nought for sizes that are no sizes; at most a million.
pub fn pieces_from(length: f64, piece: f64, kerf: f64) -> u32 {
    let kerf = kerf.max(0.0);
    let sound = length.is_finite() && piece.is_finite() && kerf.is_finite();
    if !sound || piece <= 0.0 || length < piece - SLACK {
        return 0;
    }
    let count = ((length + kerf + SLACK) / (piece + kerf)).floor();
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "0 to a million"
    )]
    let count = count.clamp(0.0, 1e6) as u32;
    count
}

#[derive(Clone, Copy)]
struct Strip {
    bin: usize,
    y: f64,
    width: f64,
    used: f64,
}

#[derive(Clone)]
struct Saw<'a> {
    bins: &'a [Bin],
    blocks: &'a [Block],
    kerf: f64,
    /// Numbers of the blocks, the widest first.
    order: Vec<usize>,
    strips: Vec<Strip>,
    /// Width used up in each bin.
    used: Vec<f64>,
    spots: Vec<Option<Spot>>,
    steps: u32,
}

/// Lays out all `blocks`, or says `None`: they do not fit, or no way was found within the steps.
pub(crate) fn pack_all(bins: &[Bin], blocks: &[Block], kerf: f64) -> Option<Vec<Spot>> {
    let space: f64 = bins
        .iter()
        .map(|bin| bin.length.max(0.0) * bin.width.max(0.0))
        .sum();
    let need: f64 = blocks.iter().map(|block| block.length * block.width).sum();
    let mut saw = Saw::new(bins, blocks, kerf);
    if need > space + SLACK || !saw.search(0) {
        return None;
    }
    saw.spots.into_iter().collect()
}

/// Lays out what fits, the widest first, each in the first place that takes it.
pub(crate) fn pack_some(bins: &[Bin], blocks: &[Block], kerf: f64) -> Vec<Option<Spot>> {
    let mut saw = Saw::new(bins, blocks, kerf);
    for at in 0..blocks.len() {
        if let Some(way) = saw.ways(at).into_iter().next() {
            saw.lay(way);
        }
    }
    saw.spots
}

/// One way to lay one block.
#[derive(Clone, Copy)]
struct Way {
    block: usize,
    bin: usize,
    /// `None` opens a new strip.
    strip: Option<usize>,
    length: f64,
    width: f64,
    turned: bool,
}

impl<'a> Saw<'a> {
    fn new(bins: &'a [Bin], blocks: &'a [Block], kerf: f64) -> Self {
        let mut order: Vec<usize> = (0..blocks.len()).collect();
        let size = |index: &usize| {
            blocks
                .get(*index)
                .map_or((0.0, 0.0), |block| (block.width, block.length))
        };
        order.sort_by(|one, other| {
            let ((width, length), (wide, long)) = (size(one), size(other));
            wide.total_cmp(&width)
                .then(long.total_cmp(&length))
                .then(one.cmp(other))
        });
        Self {
            bins,
            blocks,
            kerf: kerf.max(0.0),
            order,
            strips: Vec::new(),
            used: vec![0.0; bins.len()],
            spots: vec![None; blocks.len()],
            steps: 0,
        }
    }

    /// Whether the blocks from the `at`th on can be laid; leaves them laid if so.
    fn search(&mut self, at: usize) -> bool {
        if at == self.order.len() {
            return true;
        }
        for way in self.ways(at) {
            self.steps += 1;
            if self.steps > MOST_STEPS {
                return false;
            }
            let kept = (self.strips.clone(), self.used.clone());
            self.lay(way);
            if self.search(at + 1) {
                return true;
            }
            (self.strips, self.used) = kept;
            if let Some(spot) = self.spots.get_mut(way.block) {
                *spot = None;
            }
        }
        false
    }

    /// Every way to lay the `at`th block: strips in use first, then a new strip in each bin.
    fn ways(&self, at: usize) -> Vec<Way> {
        let Some(block) = self.order.get(at) else {
            return Vec::new();
        };
        let Some(size) = self.blocks.get(*block) else {
            return Vec::new();
        };
        let mut found = Vec::new();
        let mut lying = vec![(size.length, size.width, false)];
        if size.turns && size.length != size.width {
            lying.push((size.width, size.length, true));
        }
        let fits = |bin: &Bin| {
            (size.thickness.0 - SLACK..=size.thickness.1 + SLACK).contains(&bin.thickness)
        };
        for (length, width, turned) in lying.iter().copied() {
            for (index, strip) in self.strips.iter().enumerate() {
                let Some(bin) = self.bins.get(strip.bin) else {
                    continue;
                };
                let fine = fits(bin)
                    && width <= strip.width + SLACK
                    && strip.used + self.kerf + length <= bin.length + SLACK;
                if fine {
                    found.push(Way {
                        block: *block,
                        bin: strip.bin,
                        strip: Some(index),
                        length,
                        width,
                        turned,
                    });
                }
            }
        }
        for (length, width, turned) in lying {
            for (index, bin) in self.bins.iter().enumerate() {
                let used = self.used.get(index).copied().unwrap_or(0.0);
                // An untouched bin like the untouched one before it brings nothing new.
                let before = index
                    .checked_sub(1)
                    .and_then(|before| self.bins.get(before).zip(self.used.get(before)));
                if used == 0.0 && before.is_some_and(|(other, taken)| *taken == 0.0 && other == bin)
                {
                    continue;
                }
                let from = if used > 0.0 { used + self.kerf } else { 0.0 };
                if fits(bin) && length <= bin.length + SLACK && from + width <= bin.width + SLACK {
                    found.push(Way {
                        block: *block,
                        bin: index,
                        strip: None,
                        length,
                        width,
                        turned,
                    });
                }
            }
        }
        found
    }

    fn lay(&mut self, way: Way) {
        let index = way.strip.unwrap_or_else(|| {
            let used = self.used.get(way.bin).copied().unwrap_or(0.0);
            let y = if used > 0.0 { used + self.kerf } else { 0.0 };
            if let Some(used) = self.used.get_mut(way.bin) {
                *used = y + way.width;
            }
            self.strips.push(Strip {
                bin: way.bin,
                y,
                width: way.width,
                used: 0.0,
            });
            self.strips.len() - 1
        });
        let number = self
            .strips
            .iter()
            .take(index)
            .filter(|strip| strip.bin == way.bin)
            .count();
        let kerf = self.kerf;
        let Some(strip) = self.strips.get_mut(index) else {
            return;
        };
        let x = if strip.used > 0.0 {
            strip.used + kerf
        } else {
            0.0
        };
        strip.used = x + way.length;
        let spot = Spot {
            bin: way.bin,
            strip: number,
            x,
            y: strip.y,
            turned: way.turned,
        };
        if let Some(place) = self.spots.get_mut(way.block) {
            *place = Some(spot);
        }
    }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;

    /// The same numbers every time.
    pub(in crate::boards) struct Dice(pub u64);

    impl Dice {
        pub(in crate::boards) fn up_to(&mut self, most: u32) -> u32 {
            self.0 = self
                .0
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            u32::try_from(self.0 >> 33).unwrap() % most
        }
    }

    fn block(length: f64, width: f64) -> Block {
        Block {
            length,
            width,
            thickness: (0.0, 100.0),
            turns: false,
        }
    }

    fn bin(length: f64, width: f64) -> Bin {
        Bin {
            length,
            width,
            thickness: 12.0,
        }
    }

    /// A worked example.
    #[test]
    fn pieces_from_a_length_follow_the_published_counts() {
        assert_eq!(pieces_from(96.0, 24.0, 0.125), 3);
        assert_eq!(pieces_from(600.0, 100.0, 3.2), 5);
        assert_eq!(pieces_from(600.0, 97.0, 3.2), 6);
        assert_eq!(pieces_from(100.0, 100.0, 3.2), 1);
        for (length, piece, kerf) in [
            (f64::NAN, 1.0, 0.0),
            (10.0, 0.0, 1.0),
            (10.0, -1.0, 3.0),
            (9.0, 10.0, 20.0),
        ] {
            assert_eq!(pieces_from(length, piece, kerf), 0);
        }
        assert_eq!(pieces_from(1e9, 1e-3, -1.0), 1_000_000);
    }

    #[test]
    fn packing_one_strip_agrees_with_the_count() {
        for (length, piece, count) in [(600.0, 100.0, 5), (600.0, 97.0, 6)] {
            let blocks = vec![block(piece, 50.0); count];
            assert!(pack_all(&[bin(length, 50.0)], &blocks, 3.2).is_some());
            assert!(
                pack_all(
                    &[bin(length, 50.0)],
                    &vec![block(piece, 50.0); count + 1],
                    3.2
                )
                .is_none()
            );
            let some = pack_some(
                &[bin(length, 50.0)],
                &vec![block(piece, 50.0); count + 3],
                3.2,
            );
            assert_eq!(some.iter().flatten().count(), count);
        }
    }

    /// Every way to share out the blocks into groups, each group a strip, each strip on a bin.
    fn fits_by_looking_at_everything(bins: &[Bin], blocks: &[Block], kerf: f64) -> bool {
        fn share(bins: &[Bin], rest: &[Block], groups: &[Vec<Block>], kerf: f64) -> bool {
            let Some((first, rest)) = rest.split_first() else {
                return stack(bins, groups, &mut vec![Vec::new(); bins.len()], kerf);
            };
            for index in 0..=groups.len() {
                let mut groups = groups.to_vec();
                match groups.get_mut(index) {
                    Some(group) => group.push(*first),
                    None => groups.push(vec![*first]),
                }
                if share(bins, rest, &groups, kerf) {
                    return true;
                }
            }
            false
        }
        fn stack(bins: &[Bin], rest: &[Vec<Block>], on: &mut [Vec<f64>], kerf: f64) -> bool {
            let Some((group, rest)) = rest.split_first() else {
                return true;
            };
            let cuts = kerf * (group.len() - 1) as f64;
            let length = group.iter().map(|block| block.length).sum::<f64>() + cuts;
            let width = group.iter().map(|block| block.width).fold(0.0, f64::max);
            for index in 0..bins.len() {
                let across = on[index].iter().sum::<f64>() + width + kerf * on[index].len() as f64;
                if length <= bins[index].length && across <= bins[index].width {
                    on[index].push(width);
                    if stack(bins, rest, on, kerf) {
                        return true;
                    }
                    on[index].pop();
                }
            }
            false
        }
        share(bins, blocks, &[], kerf)
    }

    #[test]
    fn all_or_nothing_agrees_with_looking_at_everything() {
        let (mut dice, mut yes, mut no) = (Dice(7), 0, 0);
        for _ in 0..3_000 {
            let (many, more) = (dice.up_to(2), dice.up_to(4));
            let mut size = |low: u32, range: u32| f64::from(low + dice.up_to(range));
            let bins: Vec<Bin> = (0..=many)
                .map(|_| bin(size(60, 60), size(30, 50)))
                .collect();
            let blocks: Vec<Block> = (0..more + 2)
                .map(|_| block(size(20, 50), size(8, 24)))
                .collect();
            let found = pack_all(&bins, &blocks, 2.0);
            assert_eq!(
                found.is_some(),
                fits_by_looking_at_everything(&bins, &blocks, 2.0),
                "{bins:?} {blocks:?}"
            );
            if found.is_some() { yes += 1 } else { no += 1 }
        }
        assert!(yes > 300 && no > 300, "{yes} {no}");
    }

    #[test]
    fn blocks_never_overlap_nor_leave_their_bin_and_a_cut_is_between_all() {
        let (mut dice, mut laid) = (Dice(11), 0);
        for _ in 0..2_000 {
            let kerf = f64::from(dice.up_to(5));
            let bins: Vec<Bin> = (0..=dice.up_to(3))
                .map(|_| {
                    bin(
                        f64::from(200 + dice.up_to(900)),
                        f64::from(60 + dice.up_to(200)),
                    )
                })
                .collect();
            let blocks: Vec<Block> = (0..=dice.up_to(14))
                .map(|_| Block {
                    turns: dice.up_to(2) == 0,
                    ..block(
                        f64::from(20 + dice.up_to(250)),
                        f64::from(10 + dice.up_to(120)),
                    )
                })
                .collect();
            let spots = pack_all(&bins, &blocks, kerf).map_or_else(
                || pack_some(&bins, &blocks, kerf),
                |all| all.into_iter().map(Some).collect(),
            );
            let rects: Vec<_> = spots
                .iter()
                .zip(&blocks)
                .filter_map(|(spot, block)| {
                    let spot = (*spot)?;
                    let (length, width) = if spot.turned {
                        (block.width, block.length)
                    } else {
                        (block.length, block.width)
                    };
                    Some((spot.bin, spot.x, spot.y, length, width))
                })
                .collect();
            laid += rects.len();
            for (index, one) in rects.iter().enumerate() {
                let bin = bins[one.0];
                assert!(one.1 >= 0.0 && one.2 >= 0.0);
                assert!(one.1 + one.3 <= bin.length + 1e-5 && one.2 + one.4 <= bin.width + 1e-5);
                for other in rects
                    .iter()
                    .skip(index + 1)
                    .filter(|other| other.0 == one.0)
                {
                    let apart = (other.1 - (one.1 + one.3)).max(one.1 - (other.1 + other.3));
                    let above = (other.2 - (one.2 + one.4)).max(one.2 - (other.2 + other.4));
                    assert!(apart.max(above) >= kerf - 1e-9, "{one:?} {other:?} {kerf}");
                }
            }
        }
        assert!(laid > 5_000);
    }
}
