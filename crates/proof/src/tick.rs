//! How long work tells how far it is and hears whether to go on.

use core::convert::Infallible;
use core::ops::ControlFlow;

/// Is told the share of the work that is done, 0 to 1, a guess; [`ControlFlow::Break`] ends the work without a
/// result.
pub type Tick<'a, Stop = ()> = dyn FnMut(f64) -> ControlFlow<Stop> + 'a;

/// The tick of work that nobody stops.
pub const fn on(_: f64) -> ControlFlow<Infallible> {
    ControlFlow::Continue(())
}
