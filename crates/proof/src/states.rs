//! The lock-state table, computed for a design instead of assumed.

/// An answer that may be impossible to promise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sure {
    /// In every box.
    Yes,
    /// In no box.
    No,
    /// Depends on the box.
    Perhaps,
}

/// Where the slider is and how the dials stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum State {
    /// Slider back, dials at a setting that opens.
    Free,
    /// Slider forward, dials at a setting that opens.
    Shut,
    /// Slider forward, dials at any other setting.
    Locked,
    /// Slider between, dials at a setting that opens.
    OnTheWay,
}

/// What the slider can do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Slides {
    /// Back to shut.
    Forward,
    /// All the way.
    Whole,
    /// Only to the stop.
    ToTheStop,
    /// Nothing can be promised.
    Perhaps,
}

/// One row of the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StateRow {
    /// Which state.
    pub state: State,
    /// Whether the lid lifts.
    pub lid_lifts: Sure,
    /// What the slider does.
    pub slider: Slides,
    /// Whether the dials turn.
    pub dials_turn: Sure,
    /// Every cell came out as a latch should have it.
    pub as_meant: bool,
}

/// The four rows, in the order of [`State`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LockStates {
    /// Free, shut, locked, on the way.
    pub rows: [StateRow; 4],
}
