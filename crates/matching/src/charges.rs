//! What a set's narrow windows of shaft residuals are charged: `cuts` sets the charges, the subproblem pays them.

use crate::grid::Steps;

/// Widest stretch of residuals that can be charged, in distinct residuals.
pub(crate) const WIDTH: usize = 12;

/// What a set's narrow windows are charged beside their range.
#[derive(Debug, Default)]
pub(crate) struct Charges {
    /// [`WIDTH`] to each first level: the charge of the window that begins there and is one, two, … levels wide.
    pub by_window: Vec<Steps>,
}

impl Charges {
    /// Charge of a window of levels.
    pub fn at(&self, lo: usize, hi: usize) -> Steps {
        if hi - lo >= WIDTH { Steps(0) } else { self.by_window.get(lo * WIDTH + hi - lo).copied().unwrap_or_default() }
    }
}
