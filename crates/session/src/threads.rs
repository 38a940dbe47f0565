//! How much this machine does at the same time.

/// How many threads run at the same time, at least one; what is made never depends on it.
pub fn available() -> usize {
    std::thread::available_parallelism().map_or(1, usize::from)
}
