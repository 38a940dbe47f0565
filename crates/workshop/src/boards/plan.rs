//! From the list of parts to boards: which wood, how often, and what to buy.

use latchwright_model::wood::find_wood;
use latchwright_model::{Board, Design};

use super::grain::SEQUENCE;
use super::pack::{Bin, Block, Spot, pack_all, pack_some};
use super::{BoardLayout, CutPlan, GrainRound, Piece, PlanFault, PlanNote, Shortfall, Strip};
use crate::joinery::SidePlace;
use crate::parts::{Make, Part, Role, parts};
use latchwright_model::shown;

/// Most boards of one wood that are looked at.
const MOST_BOARDS: usize = 60;
/// Longest board that is sent for, mm: what a car takes; common practice, no source.
const LONGEST_BOUGHT: f64 = 2_400.0;
/// Shortest board that is sent for, mm: a shorter one cannot be planed safely; common practice, no
/// source.
const SHORTEST_BOUGHT: f64 = 300.0;
/// A sheet this much thicker than the groove is still the right one, mm.
const SHEET_SLACK: f64 = 0.3;

/// One part to be cut.
#[derive(Debug, Clone)]
struct Item {
    part: Role,
    /// Its wood as the list of parts calls it.
    label: String,
    /// As it is found on boards.
    wood: String,
    length: f64,
    width: f64,
    thickness: f64,
    sheet: bool,
}

/// Parts that stay together on one strip.
#[derive(Debug, Clone)]
struct Run(Vec<Item>);

/// A layout of runs of one wood on some boards.
struct Laid {
    boards: Vec<BoardLayout>,
    /// Runs that found no place.
    left: Vec<Run>,
}

/// How every part of `design` is cut from the boards at hand; with none, from boards to buy.
pub fn cut_plan(design: &Design) -> CutPlan {
    let design = &shown(design);
    let bench = &design.bench;
    let mut plan = CutPlan {
        boards: Vec::new(),
        shortfalls: Vec::new(),
        grain: GrainRound::of(&[]),
        notes: Vec::new(),
        faults: Vec::new(),
    };
    let items = plan.items(&parts(design));
    for wood in woods(&items) {
        let own: Vec<Item> = items
            .iter()
            .filter(|item| item.wood == wood)
            .cloned()
            .collect();
        if bench.boards.is_empty() {
            plan.buy(design, &own);
        } else {
            plan.cut(design, &wood, &own);
        }
    }
    plan.grain = GrainRound::of(&plan.boards);
    plan.planing();
    plan
}

/// A name by which a part and a board are of the same wood.
fn wood_name(name: &str) -> String {
    find_wood(name).map_or_else(|| name.trim().to_lowercase(), |wood| wood.name.to_owned())
}

/// Every wood once, in order of first use.
fn woods(items: &[Item]) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for item in items {
        if !all.contains(&item.wood) {
            all.push(item.wood.clone());
        }
    }
    all
}

/// The sides `together` at a time in one run, everything else by itself.
fn runs(items: &[Item], together: usize) -> Vec<Run> {
    let find = |place: &SidePlace| {
        items
            .iter()
            .find(|item| item.part.side() == Some(*place))
            .cloned()
    };
    let sides: Vec<Item> = SEQUENCE.iter().filter_map(find).collect();
    let alone = items
        .iter()
        .filter(|item| item.part.side().is_none())
        .cloned();
    let chunks = sides.chunks(together.max(1)).map(|run| Run(run.to_vec()));
    chunks.chain(alone.map(|item| Run(vec![item]))).collect()
}

impl Run {
    fn block(&self, kerf: f64) -> Block {
        let cuts = kerf * self.0.len().saturating_sub(1) as f64;
        let width = self.0.iter().map(|item| item.width).fold(0.0, f64::max);
        let thick = self.0.iter().map(|item| item.thickness).fold(0.0, f64::max);
        let sheet = self.0.iter().any(|item| item.sheet);
        Block {
            length: self.0.iter().map(|item| item.length).sum::<f64>() + cuts,
            width,
            thickness: (thick, if sheet { thick + SHEET_SLACK } else { f64::MAX }),
            turns: sheet && self.0.len() == 1,
        }
    }
}

impl CutPlan {
    /// What is sawn, one by one; parts without a size are named as faults.
    fn items(&mut self, parts: &[Part]) -> Vec<Item> {
        let mut items = Vec::new();
        for part in parts.iter().filter(|part| part.make == Make::Wood) {
            let Some(rough) = part.rough else { continue };
            let bare = part.bare.unwrap_or(rough);
            if bare.length <= 0.0 || bare.width <= 0.0 || bare.thickness <= 0.0 {
                let fault = PlanFault::PartWithoutSize(part.role.clone());
                self.faults.push(fault);
                continue;
            }
            // A sheet is not planed: its thickness is the one asked for.
            let sheet = !part.solid;
            let thickness = if sheet {
                part.finished.thickness
            } else {
                bare.thickness
            };
            for _ in 0..part.count.min(8) {
                items.push(Item {
                    part: part.role.clone(),
                    label: part.material.clone(),
                    wood: wood_name(&part.material),
                    length: rough.length,
                    width: rough.width,
                    thickness,
                    sheet,
                });
            }
        }
        items
    }

    /// From the boards at hand.
    fn cut(&mut self, design: &Design, wood: &str, items: &[Item]) {
        let bench = &design.bench;
        let mut boards: Vec<&Board> = bench
            .boards
            .iter()
            .filter(|board| wood_name(&board.wood) == wood)
            .collect();
        // The thinnest that will do is planed least.
        boards.sort_by(|one, other| one.thickness.total_cmp(&other.thickness));
        let numbered = boards
            .iter()
            .flat_map(|board| (1..=board.count).map(move |number| (*board, number)));
        let numbered: Vec<(&Board, u32)> = numbered.take(MOST_BOARDS).collect();
        let mut best: Option<Laid> = None;
        for together in [4, 2, 1] {
            let laid = lay(&numbered, runs(items, together), bench, false);
            let done = laid.left.is_empty();
            if best
                .as_ref()
                .is_none_or(|best| area(&laid.left) < area(&best.left) - 1e-6)
            {
                best = Some(laid);
            }
            if done {
                break;
            }
        }
        let Some(best) = best else { return };
        self.boards.extend(best.boards);
        let left: Vec<Item> = best.left.into_iter().flat_map(|run| run.0).collect();
        for group in by_thickness(&left) {
            let wide = boards
                .iter()
                .filter(|board| {
                    group
                        .iter()
                        .all(|item| board.thickness + 1e-6 >= item.thickness)
                })
                .map(|board| board.width)
                .fold(0.0, f64::max);
            self.shortfalls.extend(shortfall(design, &group, wide));
        }
    }

    /// From boards to buy: one width for each wood and thickness, as short as will do.
    fn buy(&mut self, design: &Design, items: &[Item]) {
        for group in by_thickness(items) {
            let Some(short) = shortfall(design, &group, 0.0) else {
                continue;
            };
            let trim = 2.0 * design.bench.end_trim.max(0.0);
            let longest = group.iter().map(|item| item.length).fold(0.0, f64::max) + trim;
            let length = short.board.length.max(SHORTEST_BOUGHT);
            let length = length.min(LONGEST_BOUGHT.max(longest));
            let board = Board {
                length,
                ..short.board
            };
            let many: Vec<(&Board, u32)> = (1..)
                .take(MOST_BOARDS)
                .map(|number| (&board, number))
                .collect();
            let tries = [4, 2, 1]
                .into_iter()
                .map(|together| lay(&many, runs(&group, together), &design.bench, true));
            let laid = tries.into_iter().find(|laid| laid.left.is_empty());
            let Some(laid) = laid else {
                self.faults.push(PlanFault::TooMuchWood {
                    wood: board.wood,
                    most: MOST_BOARDS,
                });
                continue;
            };
            self.boards.extend(laid.boards.iter().cloned());
            self.notes.push(PlanNote::Buy {
                boards: laid.boards.len(),
                board,
            });
        }
    }

    /// Boards that are thicker than what is cut from them.
    fn planing(&mut self) {
        let mut planed = Vec::new();
        for layout in self.boards.iter().filter(|layout| !layout.to_buy) {
            let from = layout.board.thickness;
            let thinner = |piece: &&Piece| from > piece.thickness + 0.05;
            planed.extend(
                layout
                    .pieces()
                    .filter(thinner)
                    .map(|piece| PlanNote::Plane {
                        part: piece.part.clone(),
                        from,
                        to: piece.thickness,
                    }),
            );
        }
        planed.dedup();
        self.notes.extend(planed);
    }
}

/// Parts of one thickness together, thickest first, each group in its own order.
fn by_thickness(items: &[Item]) -> Vec<Vec<Item>> {
    let mut sorted = items.to_vec();
    sorted.sort_by(|one, other| other.thickness.total_cmp(&one.thickness));
    let mut groups: Vec<Vec<Item>> = Vec::new();
    for item in sorted {
        match groups.last_mut() {
            Some(group)
                if group
                    .first()
                    .is_some_and(|first| first.thickness - item.thickness < 0.05) =>
            {
                group.push(item);
            }
            _ => groups.push(vec![item]),
        }
    }
    groups
}

/// The length of board, as wide as `width` or as the widest part, that takes all of `items`.
fn shortfall(design: &Design, items: &[Item], width: f64) -> Option<Shortfall> {
    let first = items.first()?;
    let bench = &design.bench;
    let widest = items.iter().map(|item| item.width).fold(0.0, f64::max);
    let width = width.max(widest);
    let together = [4, 2, 1];
    let blocks: Vec<Vec<Block>> = together
        .iter()
        .map(|together| {
            runs(items, *together)
                .iter()
                .map(|run| run.block(bench.kerf))
                .collect()
        })
        .collect();
    let thickness = items.iter().map(|item| item.thickness).fold(0.0, f64::max);
    let fits = |length: f64| {
        let bin = [Bin {
            length,
            width,
            thickness,
        }];
        blocks
            .iter()
            .any(|blocks| pack_all(&bin, &tolerant(blocks, thickness), bench.kerf).is_some())
    };
    let all: f64 = items
        .iter()
        .map(|item| item.length + bench.kerf.max(0.0))
        .sum();
    let (mut short, mut long) = (0.0, all);
    // Halved to a tenth of a millimetre; the long end always fits.
    for _ in 0..40 {
        if long - short < 0.1 {
            break;
        }
        let middle = f64::midpoint(short, long);
        if fits(middle) {
            long = middle;
        } else {
            short = middle;
        }
    }
    let length = ((long + 2.0 * bench.end_trim.max(0.0)) * 10.0).ceil() / 10.0;
    Some(Shortfall {
        board: Board {
            wood: first.label.clone(),
            length,
            width,
            thickness,
            count: 1,
        },
        parts: items.iter().map(|item| item.part.clone()).collect(),
    })
}

/// Blocks that may come from a board of this thickness though they are a hair thinner.
fn tolerant(blocks: &[Block], thickness: f64) -> Vec<Block> {
    let widened = |block: &Block| Block {
        thickness: (block.thickness.0, block.thickness.1.max(thickness)),
        ..*block
    };
    blocks.iter().map(widened).collect()
}

fn area(left: &[Run]) -> f64 {
    left.iter()
        .flat_map(|run| &run.0)
        .map(|item| item.length * item.width)
        .sum()
}

/// Lays `runs` on `boards`; all of them if that can be found, else as many as go.
fn lay(
    boards: &[(&Board, u32)],
    runs: Vec<Run>,
    bench: &latchwright_model::Bench,
    to_buy: bool,
) -> Laid {
    let trim = bench.end_trim.max(0.0);
    let kerf = bench.kerf.max(0.0);
    let bins: Vec<Bin> = boards
        .iter()
        .map(|(board, _)| Bin {
            length: board.length - 2.0 * trim,
            width: board.width,
            thickness: board.thickness,
        })
        .collect();
    let blocks: Vec<Block> = runs.iter().map(|run| run.block(kerf)).collect();
    let spots = match pack_all(&bins, &blocks, kerf) {
        Some(all) => all.into_iter().map(Some).collect(),
        None => pack_some(&bins, &blocks, kerf),
    };
    let mut layouts: Vec<BoardLayout> = boards
        .iter()
        .map(|(board, number)| BoardLayout {
            board: Board {
                count: 1,
                ..(*board).clone()
            },
            number: *number,
            to_buy,
            end_trim: trim,
            strips: Vec::new(),
        })
        .collect();
    let mut left = Vec::new();
    for (run, spot) in runs.into_iter().zip(spots) {
        match spot.and_then(|spot| layouts.get_mut(spot.bin).zip(Some(spot))) {
            Some((layout, spot)) => put(layout, &run, spot, kerf),
            None => left.push(run),
        }
    }
    for layout in &mut layouts {
        layout
            .strips
            .sort_by(|one, other| one.y.total_cmp(&other.y));
        for strip in &mut layout.strips {
            strip.pieces.sort_by(|one, other| one.x.total_cmp(&other.x));
            strip.width = strip
                .pieces
                .iter()
                .map(|piece| piece.height)
                .fold(0.0, f64::max);
        }
    }
    layouts.retain(|layout| !layout.strips.is_empty());
    Laid {
        boards: layouts,
        left,
    }
}

fn put(layout: &mut BoardLayout, run: &Run, spot: Spot, kerf: f64) {
    let mut x = layout.end_trim + spot.x;
    let mut pieces = Vec::new();
    for item in &run.0 {
        let (width, height) = if spot.turned {
            (item.width, item.length)
        } else {
            (item.length, item.width)
        };
        pieces.push(Piece {
            part: item.part.clone(),
            x,
            y: spot.y,
            width,
            height,
            turned: spot.turned,
            thickness: item.thickness,
        });
        x += width + kerf;
    }
    match layout.strips.iter_mut().find(|strip| strip.y == spot.y) {
        Some(strip) => strip.pieces.extend(pieces),
        None => layout.strips.push(Strip {
            y: spot.y,
            width: 0.0,
            pieces,
        }),
    }
}
