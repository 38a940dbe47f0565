//! All parts placed on as few beds as it takes.

use latchwright_model::Printer;

use crate::mesh::Pose;
use crate::part::Part;

/// Clear distance between parts, mm.
const APART: f64 = 4.0;

/// One bed: which part (by its place in the list) lies where, lowest corner of the bed at the
/// origin.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Bed {
    /// Parts and their poses, in the order in which they were placed.
    pub placed: Vec<(usize, Pose)>,
}

/// A row of parts on a bed.
struct Row {
    bed: usize,
    y: f64,
    depth: f64,
    end: f64,
}

/// Places parts in rows, deepest first; a part may be turned by a quarter.
///
/// Every part that [`crate::parts()`] gives has room on a bed of its own.
pub fn plate_up(parts: &[Part], printer: &Printer) -> Vec<Bed> {
    let (width, depth) = printer.bed;
    let mut items: Vec<(usize, [f64; 2], bool)> = parts
        .iter()
        .enumerate()
        .map(|(index, part)| {
            let [x, y, _] = part.extent().size();
            // lying along x, unless only the other way round goes on the bed
            let lie = (x < y && y <= width && x <= depth) || !(x <= width && y <= depth);
            (index, if lie { [y, x] } else { [x, y] }, lie)
        })
        .collect();
    items.sort_by(|one, two| {
        two.1[1]
            .total_cmp(&one.1[1])
            .then(two.1[0].total_cmp(&one.1[0]))
            .then(one.0.cmp(&two.0))
    });
    let mut beds: Vec<Bed> = Vec::new();
    let mut rows: Vec<Row> = Vec::new();
    for (index, [long, deep], turned) in items {
        let known = rows
            .iter()
            .position(|row| row.depth >= deep && row.end + long <= width + 1e-9);
        let row = known.unwrap_or_else(|| {
            let free = (0..beds.len()).find_map(|bed| {
                let used = rows
                    .iter()
                    .filter(|row| row.bed == bed)
                    .map(|row| row.y + row.depth + APART)
                    .fold(0.0, f64::max);
                (used + deep <= depth + 1e-9).then_some((bed, used))
            });
            let (bed, y) = free.unwrap_or_else(|| {
                beds.push(Bed::default());
                (beds.len() - 1, 0.0)
            });
            rows.push(Row {
                bed,
                y,
                depth: deep,
                end: 0.0,
            });
            rows.len() - 1
        });
        let row = &mut rows[row];
        let pose = lowest_corner_at(&parts[index], turned, row.end, row.y);
        beds[row.bed].placed.push((index, pose));
        row.end += long + APART;
    }
    beds
}

fn lowest_corner_at(part: &Part, turned: bool, x: f64, y: f64) -> Pose {
    let mut pose = Pose {
        turn_deg: if turned { 90.0 } else { 0.0 },
        ..Pose::default()
    };
    let low = part.mesh.posed(&pose).extent().low;
    pose.to = [x - low[0], y - low[1], 0.0 - low[2]];
    pose
}
