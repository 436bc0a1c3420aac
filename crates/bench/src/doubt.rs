//! Doubt: a reading that does not fit the others is kept and shown, and not believed.
//!
//! Which readings are set aside, the belief decides from all of them together, whatever the order they came in
//! (`estimation::JobModel::solve_mixture`); one that was doubted comes back when later ones agree with it. What may be behind
//! a doubt is told by [`crate::cause`].

use crate::belief::Believed;
use trade::id::ReadingId;

impl Believed<'_> {
    /// Whether a reading is doubted: kept, shown, not believed.
    #[must_use]
    pub fn is_doubted(&self, reading: &ReadingId) -> bool {
        self.is_set_aside(reading.as_str())
    }

    /// Whether an observation, a reading or a check, is kept and not believed.
    pub(crate) fn is_set_aside(&self, id: &str) -> bool {
        self.mixture().doubt.set_aside.iter().any(|other| other == id) || self.flex().is_set_aside(id)
    }
}
