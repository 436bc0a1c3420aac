//! One state of what the shop has learned, as a row.

use crate::column::{Columns, Row};
use crate::error::StoreError;
use bench::learned::Learned;
use bench::learned::LearnedCause;
use jiff::Timestamp;
use trade::id::EventId;
use trade::id::JobId;

/// What the shop knew from some moment on.
#[derive(Debug, Clone, PartialEq)]
pub struct LearnedRow {
    /// Identity.
    pub id: EventId,
    /// Since when.
    pub at: Timestamp,
    /// Who brought it about.
    pub by: String,
    /// Why it changed.
    pub cause: LearnedCause,
    /// The job that it was learned from, where it was one.
    pub job: Option<JobId>,
    /// The value that was set back or pinned; empty for all of them and for a job.
    pub about: String,
    /// The reason given.
    pub reason: String,
    /// All of it.
    pub learned: Learned,
}

impl LearnedRow {
    /// The row that was read.
    ///
    /// # Errors
    /// The row is damaged.
    pub(crate) fn of(row: &Row) -> Result<Self, StoreError> {
        Ok(Self {
            id: EventId(row.text("id")?),
            at: row.time("happened_at")?,
            by: row.text("done_by")?,
            cause: row.word("cause", LearnedCause::from_key)?,
            job: row.maybe_text("job")?.map(JobId),
            about: row.text("about")?,
            reason: row.text("reason")?,
            learned: row.body("body")?,
        })
    }
}
