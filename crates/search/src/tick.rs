//! How a search tells how far it is and hears whether to go on.

use core::ops::ControlFlow;

/// How far a search is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Progress<'a, Found> {
    /// Share of the work that is done, 0 to 1; a guess.
    pub done: f64,
    /// What was found so far.
    pub found: &'a [Found],
}

/// Is told how far a search is after every bit of work, a few hundredths of a second apart;
/// [`ControlFlow::Break`] ends the search with what was found so far.
pub type Tick<'a, Found> = dyn FnMut(Progress<'_, Found>) -> ControlFlow<()> + 'a;
