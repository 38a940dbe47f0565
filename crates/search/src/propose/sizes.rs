//! The sizes that follow from a point of the lattice.

use super::grid::{Grid, up};

/// The sizes that follow from a point, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Sizes {
    pub gap: f64,
    pub width: f64,
    pub depth: f64,
    pub engagement: f64,
    pub travel: f64,
    pub spacing: f64,
    pub tab: f64,
    pub play: f64,
}

impl Sizes {
    /// The same with one or two sizes a step or some away from the least that was found, each in turn.
    pub(super) fn beside(self, grid: Grid) -> Vec<Self> {
        let mut beside = Vec::new();
        let mut with = |raise: &dyn Fn(&mut Self)| {
            let mut sizes = self;
            raise(&mut sizes);
            beside.push(sizes);
        };
        let by = |size: &mut f64, step: f64| *size = up(*size + step, step);
        with(&|sizes| by(&mut sizes.width, grid.size));
        with(&|sizes| by(&mut sizes.depth, grid.size));
        with(&|sizes| by(&mut sizes.gap, grid.size));
        with(&|sizes| by(&mut sizes.engagement, grid.size));
        with(&|sizes| by(&mut sizes.travel, grid.size));
        with(&|sizes| {
            by(&mut sizes.width, grid.size);
            by(&mut sizes.depth, grid.size);
        });
        with(&|sizes| by(&mut sizes.tab, grid.lid));
        with(&|sizes| by(&mut sizes.spacing, grid.place));
        with(&|sizes| by(&mut sizes.spacing, 4.0 * grid.place));
        // each may have been raised for what another has mended since
        let back = |size: &mut f64, step: f64| *size = up(*size - step, step).max(step);
        with(&|sizes| back(&mut sizes.spacing, grid.place));
        with(&|sizes| back(&mut sizes.width, grid.size));
        with(&|sizes| back(&mut sizes.depth, grid.size));
        with(&|sizes| back(&mut sizes.travel, grid.size));
        with(&|sizes| back(&mut sizes.engagement, grid.size));
        with(&|sizes| back(&mut sizes.gap, grid.size));
        beside
    }
}
