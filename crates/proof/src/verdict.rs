//! The words of a proof: what can be promised of a mark, what stops a pin, how a check came out.

/// What can be promised of one dial at one mark, over every box within its tolerances.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// The pin always enters a slot that is deep enough for the whole travel.
    Passes,
    /// The pin always stops on plain rim or a blind slot's floor with enough tab still held.
    Holds,
    /// Neither can be promised.
    Unsure,
}

/// What the nominal pin touches when a disc that is held still stops it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum StopsAt {
    /// Nothing: it goes the whole travel.
    Free,
    /// Plain rim.
    Rim,
    /// A mouth corner or the lead-in.
    Mouth,
    /// A slot's wall.
    Wall,
    /// A slot's floor.
    Floor,
}

/// How far a pin gets against a disc that is held still, and where it touches.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reach {
    /// Travel u at which it stops, mm; the whole travel if nothing stops it.
    pub travel: f64,
    /// What it touches.
    pub stops_at: StopsAt,
    /// Where it touches, from the dial's centre in plan axes, mm; `None` when nothing does.
    pub contact: Option<(f64, f64)>,
}

/// What surely stops a pin for good, in every box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum SureStop {
    /// Plain rim.
    Rim,
    /// The floor of this blind slot, by its number in the disc.
    Floor(usize),
}

/// One dial at one mark.
#[derive(Debug, Clone, PartialEq)]
pub struct MarkProof {
    /// What can be promised.
    pub verdict: Verdict,
    /// The nominal box, nothing off, disc held still at the mark.
    pub reach: Reach,
    /// What stops the pin in every box, whether or not enough of the tab is then held; `None` where
    /// that differs from box to box or nothing does.
    pub stop: Option<SureStop>,
    /// The furthest the pin can creep before it is stopped for good, mm, worst case; `None` where
    /// it cannot be promised that it stops.
    pub creep: Option<f64>,
    /// Tab still under the keeper beyond what is required, mm, worst case; `None` likewise.
    pub hold_margin: Option<f64>,
    /// The least of what must be clear for the verdict: for a mark that passes the clearance of its
    /// slot in mm, for one that holds the hold margin in mm, for an unsure one the (negative)
    /// shortfall of the nearer promise in mm.
    pub margin: f64,
}

/// One dial, all its marks.
#[derive(Debug, Clone, PartialEq)]
pub struct DialProof {
    /// Mark of the combination.
    pub digit: u32,
    /// One entry a position, in order of marks.
    pub marks: Vec<MarkProof>,
    /// Half-angle about the digit within which the pointer surely lets its pin pass, degrees.
    pub sure_window_deg: f64,
    /// Half-angle about the digit outside which it surely meets plain rim, degrees.
    pub possible_window_deg: f64,
}

impl DialProof {
    /// Whether nothing is promised of one of its marks.
    pub fn is_unsure(&self) -> bool {
        let mut marks = self.marks.iter();
        marks.any(|mark| mark.verdict == Verdict::Unsure)
    }
}

/// Outcome of one check on the whole design.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CheckVerdict {
    /// Surely not so.
    Fails,
    /// Cannot be promised.
    Unsure,
    /// Surely so.
    Passes,
}
