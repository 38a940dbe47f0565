//! Areas of the plane: union, difference and inset of outlines.

use latchwright_geometry::Point;

use crate::fault::MeshFault;
use crate::grid;
use crate::outline::Outline;
use crate::plane::Plane;
use crate::strip::strips;

/// An area, bounded by outlines: counter-clockwise around it, clockwise around its holes. Outlines
/// may overlap; inside is where they wind round more often forwards than backwards.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Region {
    outlines: Vec<Outline>,
}

/// Which windings of outlines lie inside, where outlines come from a font or a picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Fill {
    /// All but 0, whichever way round: the rule of fonts.
    #[default]
    NonZero,
    /// Odd ones.
    EvenOdd,
}

impl From<Outline> for Region {
    fn from(outline: Outline) -> Self {
        Self::union([outline])
    }
}

impl Region {
    /// All that lies in any of these outlines, whichever way they run.
    pub fn union(outlines: impl IntoIterator<Item = Outline>) -> Self {
        let outlines = outlines
            .into_iter()
            .filter(|outline| outline.points().len() > 2)
            .map(Outline::counter_clockwise)
            .collect();
        Self { outlines }
    }

    /// Outlines as they come: holes run clockwise.
    pub fn wound(outlines: Vec<Outline>) -> Self {
        Self { outlines }
    }

    /// What closed contours enclose by this rule: they may run either way, overlap, touch and cross
    /// themselves. Outlines of the result run counter-clockwise, those of its holes clockwise, and no
    /// two overlap.
    ///
    /// # Errors
    /// [`MeshFault`] if contours reach beyond the grid or tangle.
    pub fn filled(contours: &[Outline], fill: Fill) -> Result<Self, MeshFault> {
        let plane = Plane::new(&[contours], &[])?;
        Ok(boundary(&plane, |zone| {
            let winding = plane.windings[zone][0];
            match fill {
                Fill::NonZero => winding != 0,
                Fill::EvenOdd => winding % 2 != 0,
            }
        }))
    }

    /// Its outlines.
    pub fn outlines(&self) -> &[Outline] {
        &self.outlines
    }

    /// Whether there is nothing in it.
    pub fn is_empty(&self) -> bool {
        self.outlines.is_empty()
    }

    /// What lies in this one and not in `other`.
    pub fn minus(&self, other: &Self) -> Result<Self, MeshFault> {
        self.with(other, |one, two| one && !two)
    }

    /// What lies in either.
    pub fn plus(&self, other: &Self) -> Result<Self, MeshFault> {
        self.with(other, |one, two| one || two)
    }

    /// What lies in both.
    pub fn common(&self, other: &Self) -> Result<Self, MeshFault> {
        self.with(other, |one, two| one && two)
    }

    fn with(&self, other: &Self, keep: impl Fn(bool, bool) -> bool) -> Result<Self, MeshFault> {
        let plane = Plane::new(&[&self.outlines, &other.outlines], &[])?;
        Ok(boundary(&plane, |zone| {
            let winding = &plane.windings[zone];
            keep(winding[0] > 0, winding[1] > 0)
        }))
    }

    /// What is further than `by` (mm) inside, with sharp corners where it has corners.
    pub fn inset(&self, by: f64) -> Result<Self, MeshFault> {
        let strips: Vec<Outline> = self
            .outlines
            .iter()
            .flat_map(|outline| strips(outline, by))
            .collect();
        self.minus(&Self::union(strips))
    }

    /// What lies inside or nearer than `by` (mm) to it, with sharp corners where it has corners.
    pub fn outset(&self, by: f64) -> Result<Self, MeshFault> {
        let strips: Vec<Outline> = self
            .outlines
            .iter()
            .flat_map(|outline| strips(&outline.clone().reversed(), by))
            .collect();
        self.plus(&Self::union(strips))
    }

    /// Distance of a point from the nearest outline, mm; infinite without outlines.
    pub fn distance(&self, point: Point) -> f64 {
        self.outlines
            .iter()
            .flat_map(Outline::edges)
            .map(|(from, to)| point.distance_to_segment(from, to))
            .fold(f64::INFINITY, f64::min)
    }

    /// Whether a point lies in it: outlines wind round it more often forwards than backwards.
    pub fn contains(&self, point: Point) -> bool {
        let times = self.outlines.iter().flat_map(Outline::edges).map(|(a, b)| {
            let left = (b - a).cross(point - a);
            if a.y <= point.y && b.y > point.y && left > 0.0 {
                1
            } else if a.y > point.y && b.y <= point.y && left < 0.0 {
                -1
            } else {
                0
            }
        });
        times.sum::<i32>() > 0
    }

    /// Area, mm², if its outlines do not overlap.
    pub fn area(&self) -> f64 {
        self.outlines.iter().map(Outline::signed_area).sum()
    }

    /// Lowest and highest corner of the box around it; `None` if empty.
    pub fn bounds(&self) -> Option<(Point, Point)> {
        self.outlines.iter().filter_map(Outline::bounds).reduce(
            |(low, high), (next_low, next_high)| {
                (
                    Point::new(low.x.min(next_low.x), low.y.min(next_low.y)),
                    Point::new(high.x.max(next_high.x), high.y.max(next_high.y)),
                )
            },
        )
    }

    /// Each outline put through `change`; windings stay as they are.
    #[must_use]
    pub fn each(&self, change: impl Fn(&Outline) -> Outline) -> Self {
        Self {
            outlines: self.outlines.iter().map(change).collect(),
        }
    }
}

/// The outlines around all zones that are kept, on their left.
fn boundary(plane: &Plane, keep: impl Fn(usize) -> bool) -> Region {
    let kept = |tile: Option<usize>| tile.is_some_and(|tile| keep(plane.tiles[tile].zone));
    let mut edges: Vec<(usize, usize)> = Vec::new();
    for (index, tile) in plane.tiles.iter().enumerate() {
        if !kept(Some(index)) {
            continue;
        }
        for side in 0..3 {
            if !kept(tile.beyond[side]) {
                edges.push((tile.nodes[side], tile.nodes[(side + 1) % 3]));
            }
        }
    }
    edges.sort_unstable();
    let mut used = vec![false; edges.len()];
    let mut outlines = Vec::new();
    for start in 0..edges.len() {
        if used[start] {
            continue;
        }
        let mut nodes = Vec::new();
        let mut at = start;
        loop {
            used[at] = true;
            nodes.push(edges[at].0);
            let next = edges[at].1;
            let first = edges.partition_point(|(from, _)| *from < next);
            let follows = (first..edges.len())
                .take_while(|index| edges[*index].0 == next)
                .find(|index| !used[*index]);
            match follows {
                Some(index) => at = index,
                None => break,
            }
        }
        let outline = straightened(&nodes, plane);
        if outline.points().len() > 2 {
            outlines.push(outline);
        }
    }
    Region { outlines }
}

/// Leaves out nodes on a straight line between their neighbours.
fn straightened(nodes: &[usize], plane: &Plane) -> Outline {
    let count = nodes.len();
    let place = |index: usize| plane.nodes[nodes[index % count]];
    let points = (0..count)
        .filter(|index| grid::turn(place(index + count - 1), place(*index), place(index + 1)) != 0)
        .map(|index| grid::point(place(index)))
        .collect();
    Outline::new(points)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(side: f64) -> Region {
        Outline::block(Point::default(), side, side).into()
    }

    #[test]
    fn areas_add_and_subtract() {
        let (large, small) = (square(10.0), square(4.0));
        assert!((large.minus(&small).unwrap().area() - 84.0).abs() < 1e-9);
        assert!((large.plus(&small).unwrap().area() - 100.0).abs() < 1e-9);
        assert!((large.common(&small).unwrap().area() - 16.0).abs() < 1e-9);
        assert!(small.minus(&large).unwrap().is_empty());
    }

    #[test]
    fn an_inset_keeps_its_distance_on_both_sides() {
        let ring = square(10.0).minus(&square(4.0)).unwrap();
        let inset = ring.inset(0.5).unwrap();
        // outside 9 × 9, the hole grown to 5 × 5 with sharp corners
        assert!((inset.area() - (81.0 - 25.0)).abs() < 1e-9);
        assert_eq!(inset.outlines().len(), 2);
    }

    #[test]
    fn an_inset_past_short_edges_keeps_its_distance() {
        // a small round notch in a straight edge: its chords are much shorter than the inset, and
        // where notch and edge meet several of them end beyond the straight edge's strip
        let notch = Outline::circle(Point::new(0.3, -5.0), 1.3);
        let shape = square(10.0).minus(&notch.into()).unwrap();
        for by in [0.05, 0.2, 0.7, 1.0, 1.9] {
            let inset = shape.inset(by).unwrap();
            assert!(inset.area() > 30.0, "{by}: {}", inset.area());
            for (from, to) in inset.outlines().iter().flat_map(Outline::edges) {
                for at in [from, (from + to) * 0.5] {
                    let off = shape.distance(at);
                    assert!(off > by - 2e-3, "{by}: {off}");
                    // mitres round the notch's chords stand out a little
                    assert!(off < by * 1.02 + 2e-3, "{by}: {off}");
                }
            }
        }
    }

    #[test]
    fn contours_of_a_font_are_filled_whichever_way_they_run() {
        let contour = |side: f64| Outline::block(Point::default(), side, side);
        // clockwise around, counter-clockwise for the counter, and a stroke laid over both
        let stroke = Outline::block(Point::new(4.0, 0.0), 2.0, 14.0).reversed();
        let letter = [contour(10.0).reversed(), contour(4.0), stroke];
        let filled = Region::filled(&letter, Fill::NonZero).unwrap();
        assert!((filled.area() - (84.0 + 2.0 * 2.0 * 2.0)).abs() < 1e-9);
        assert_eq!(filled.outlines().len(), 2);
        let odd = Region::filled(&letter, Fill::EvenOdd).unwrap();
        assert!((odd.area() - (84.0 - 20.0 + 8.0)).abs() < 1e-9);
        let both: Vec<Outline> = letter.iter().map(|line| line.clone().reversed()).collect();
        let turned = Region::filled(&both, Fill::NonZero).unwrap();
        assert!((turned.area() - filled.area()).abs() < 1e-9);
    }

    #[test]
    fn points_in_holes_are_not_in_the_area() {
        let ring = square(10.0).minus(&square(4.0)).unwrap();
        let at = |x: f64, y: f64| ring.contains(Point::new(x, y));
        assert!(at(3.0, 0.0) && at(-4.9, 4.9) && at(0.0, 2.1));
        assert!(!at(0.0, 0.0) && !at(1.9, -1.9) && !at(5.1, 0.0) && !at(0.0, -5.1));
    }

    #[test]
    fn an_inset_larger_than_the_shape_leaves_nothing() {
        assert!(square(2.0).inset(1.5).unwrap().is_empty());
        let circle: Region = Outline::circle(Point::default(), 0.3).into();
        assert!(circle.inset(0.4).unwrap().is_empty());
    }

    #[test]
    fn an_inset_of_a_dumbbell_falls_into_two() {
        let bar = Outline::block(Point::default(), 20.0, 1.0);
        let ends = [-10.0, 10.0].map(|x| Outline::block(Point::new(x, 0.0), 6.0, 6.0));
        let whole = Region::union([bar]).plus(&Region::union(ends)).unwrap();
        let inset = whole.inset(1.0).unwrap();
        assert_eq!(inset.outlines().len(), 2);
        assert!((inset.area() - 32.0).abs() < 1e-9);
    }
}
