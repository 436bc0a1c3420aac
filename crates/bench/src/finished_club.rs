//! Where a finished club came out.

use crate::record::Verdict;
use jiff::Timestamp;
use trade::id::{ClubId, JobId};

/// Where a finished club came out, as its record says.
#[derive(Debug, Clone, PartialEq)]
pub struct FinishedClub {
    /// Identity of the club.
    pub club: ClubId,
    /// Identity of the job that it was built in.
    pub job: JobId,
    /// Running number of the job.
    pub job_number: i64,
    /// Number of the club.
    pub number: String,
    /// Code of its head model.
    pub head_model: String,
    /// When the job was finished.
    pub finished_at: Timestamp,
    /// Swing weight asked for, points since A0.
    pub target_points: f64,
    /// Swing weight as built minus that.
    pub deviation_points: f64,
    /// Half width of its 95 % band.
    pub band_points: f64,
    /// Half width of the tolerance.
    pub tolerance_points: f64,
    /// What may be said of it.
    pub verdict: Verdict,
}
