//! Where a finished club came out, as a row.

use crate::column::{Columns, Row};
use crate::error::StoreError;
use bench::finished_club::FinishedClub;
use bench::record::Verdict;
use trade::id::{ClubId, JobId};

/// The club of a row that was read.
///
/// # Errors
/// The row is damaged.
pub(crate) fn finished_club(row: &Row) -> Result<FinishedClub, StoreError> {
    Ok(FinishedClub {
        club: ClubId(row.text("club")?),
        job: JobId(row.text("job")?),
        job_number: row.whole("job_number")?,
        number: row.text("number")?,
        head_model: row.text("head_model")?,
        finished_at: row.time("finished_at")?,
        target_points: row.real("target_points")?,
        deviation_points: row.real("deviation_points")?,
        band_points: row.real("band_points")?,
        tolerance_points: row.real("tolerance_points")?,
        verdict: row.word("verdict", Verdict::from_key)?,
    })
}
