//! Which templates share a sheet, and where on it.

/// Clear distance between two templates on a sheet, mm.
const GAP: f64 = 4.0;

/// Where one template lies in the room of its sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct PlacedTemplate {
    /// Its number in the list that was packed.
    pub index: usize,
    /// From the left of the room, mm.
    pub x: f64,
    /// From the top of the room, mm.
    pub y: f64,
}

/// The templates of one sheet.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Packed {
    /// Whether the sheet is held with its long edge across.
    pub landscape: bool,
    /// What lies on it.
    pub places: Vec<PlacedTemplate>,
}

/// A sheet that is covered by less than this share is called lonely.
const LONELY: f64 = 0.2;

/// Packs templates of these sizes into rooms that are upright or across: in their order, or in another
/// where that saves a sheet or leaves none with hardly anything on it. Each must fit into one of the
/// rooms; what does not is left out.
pub(super) fn pack(sizes: &[(f64, f64)], spaces: [(f64, f64); 2]) -> Vec<Packed> {
    let given: Vec<usize> = (0..sizes.len())
        .filter(|&index| spaces.iter().any(|space| fits(sizes[index], *space)))
        .collect();
    let lonely = |packed: &[Packed]| {
        let least = LONELY * spaces[0].0 * spaces[0].1;
        let sheets = packed.iter();
        sheets.filter(|sheet| sheet.area(sizes) < least).count()
    };
    let mut best = pack_in(given.clone(), sizes, spaces);
    for order in orders(&given, sizes) {
        let other = pack_in(order, sizes, spaces);
        if (other.len(), lonely(&other)) < (best.len(), lonely(&best)) {
            best = other;
        }
    }
    for sheet in &mut best {
        sheet.places.sort_by_key(|place| place.index);
    }
    best.sort_by_key(|sheet| sheet.places.first().map(|place| place.index));
    best
}

/// Orders worth a try: the largest first, and each of them with one template before all others.
fn orders(given: &[usize], sizes: &[(f64, f64)]) -> Vec<Vec<usize>> {
    let by: [fn((f64, f64)) -> f64; 4] = [
        |_| 0.0,
        |size| size.1,
        |size| size.0,
        |size| size.0 * size.1,
    ];
    let mut all = Vec::new();
    for largest in by {
        let mut order = given.to_vec();
        order.sort_by(|a, b| largest(sizes[*b]).total_cmp(&largest(sizes[*a])));
        for &first in given {
            let mut moved = vec![first];
            moved.extend(order.iter().filter(|index| **index != first));
            all.push(moved);
        }
        all.push(order);
    }
    all
}

impl Packed {
    /// What its templates cover, mm².
    fn area(&self, sizes: &[(f64, f64)]) -> f64 {
        let each = |place: &PlacedTemplate| sizes[place.index].0 * sizes[place.index].1;
        self.places.iter().map(each).sum()
    }
}

/// As few sheets as a first fit in the order of `left` gives.
fn pack_in(mut left: Vec<usize>, sizes: &[(f64, f64)], spaces: [(f64, f64); 2]) -> Vec<Packed> {
    let mut sheets = Vec::new();
    while let Some(&first) = left.first() {
        let ways = [false, true].map(|landscape| {
            let space = spaces[usize::from(landscape)];
            let places = if fits(sizes[first], space) {
                fill(&left, sizes, space)
            } else {
                Vec::new()
            };
            Packed { landscape, places }
        });
        let [upright, across] = ways;
        let best = if across.area(sizes) > upright.area(sizes) {
            across
        } else {
            upright
        };
        left.retain(|index| best.places.iter().all(|place| place.index != *index));
        sheets.push(best);
    }
    sheets
}

fn fits(size: (f64, f64), space: (f64, f64)) -> bool {
    size.0 <= space.0 + 1e-9 && size.1 <= space.1 + 1e-9
}

/// Fills one room in rows from the top, whatever fits next of what is `left`; then moves each row
/// and all rows to the middle.
fn fill(left: &[usize], sizes: &[(f64, f64)], space: (f64, f64)) -> Vec<PlacedTemplate> {
    struct Row {
        y: f64,
        width: f64,
        height: f64,
    }
    let mut rows: Vec<Row> = Vec::new();
    let mut placed: Vec<(usize, PlacedTemplate)> = Vec::new();
    for &index in left {
        let (width, height) = sizes[index];
        let fit = rows.iter().position(|row| {
            row.width + GAP + width <= space.0 + 1e-9 && height <= row.height + 1e-9
        });
        if let Some(number) = fit {
            let row = &mut rows[number];
            let (x, y) = (row.width + GAP, row.y + (row.height - height) / 2.0);
            row.width = x + width;
            placed.push((number, PlacedTemplate { index, x, y }));
            continue;
        }
        let y = rows.last().map_or(0.0, |row| row.y + row.height + GAP);
        if width <= space.0 + 1e-9 && y + height <= space.1 + 1e-9 {
            placed.push((rows.len(), PlacedTemplate { index, x: 0.0, y }));
            rows.push(Row { y, width, height });
        }
    }
    let used = rows.last().map_or(0.0, |row| row.y + row.height);
    let down = ((space.1 - used) / 2.0).max(0.0);
    let to_middle = |(number, place): (usize, PlacedTemplate)| PlacedTemplate {
        x: place.x + ((space.0 - rows[number].width) / 2.0).max(0.0),
        y: place.y + down,
        ..place
    };
    placed.into_iter().map(to_middle).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const SPACES: [(f64, f64); 2] = [(180.0, 230.0), (250.0, 160.0)];

    #[test]
    fn all_are_placed_once_inside_the_room_and_apart() {
        let sizes = [
            (170.0, 100.0),
            (240.0, 90.0),
            (60.0, 60.0),
            (60.0, 60.0),
            (50.0, 20.0),
            (170.0, 100.0),
            (60.0, 60.0),
        ];
        let sheets = pack(&sizes, SPACES);
        let mut seen: Vec<usize> = Vec::new();
        for sheet in &sheets {
            let space = SPACES[usize::from(sheet.landscape)];
            for (number, a) in sheet.places.iter().enumerate() {
                let size = sizes[a.index];
                assert!(a.x >= -1e-9 && a.x + size.0 <= space.0 + 1e-9);
                assert!(a.y >= -1e-9 && a.y + size.1 <= space.1 + 1e-9);
                for b in &sheet.places[number + 1..] {
                    let other = sizes[b.index];
                    let apart = a.x + size.0 < b.x + 1e-9
                        || b.x + other.0 < a.x + 1e-9
                        || a.y + size.1 < b.y + 1e-9
                        || b.y + other.1 < a.y + 1e-9;
                    assert!(apart, "{a:?} {b:?}");
                }
                seen.push(a.index);
            }
        }
        seen.sort_unstable();
        assert_eq!(seen, [0, 1, 2, 3, 4, 5, 6]);
        assert!(sheets.len() <= 3, "{sheets:?}");
    }

    #[test]
    fn no_sheet_is_left_with_one_small_template_that_has_room_elsewhere() {
        // A slider, a side, another, and three rings: the rings go with the slider.
        let ring = (70.0, 77.0);
        let sizes = [
            (148.0, 80.0),
            (164.0, 110.0),
            (164.0, 110.0),
            ring,
            ring,
            ring,
        ];
        let sheets = pack(&sizes, [(183.0, 239.0), (253.0, 170.0)]);
        assert_eq!(sheets.len(), 2, "{sheets:?}");
        assert!(sheets.iter().all(|sheet| sheet.places.len() > 1));
    }

    #[test]
    fn what_fits_no_room_is_left_out() {
        assert_eq!(pack(&[(300.0, 10.0)], SPACES), []);
    }
}
