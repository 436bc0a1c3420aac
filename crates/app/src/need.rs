//! What must be so before anything is kept: each says what is missing and what to do.

use crate::AppError;
use crate::clock::CLOCKS_DIFFER;
use jiff::Timestamp;
use trade::job::{Job, JobClub, JobState};

pub(crate) fn need_at_bench(job: &Job) -> Result<(), AppError> {
    match job.state {
        JobState::Planned => Ok(()),
        JobState::Open => Err(AppError::conflict(NeedFault::NoPlan { job: job.number })),
        state => Err(AppError::conflict(NeedFault::JobOver { job: job.number, state })),
    }
}

/// Somebody must be named for what cannot be undone.
pub(crate) fn need_name(by: &str) -> Result<(), AppError> {
    if by.trim().is_empty() {
        return Err(AppError::invalid(NeedFault::NoName));
    }
    Ok(())
}

/// A time that a screen gives must lie between the making of the job and now; clocks may differ by five minutes.
pub(crate) fn need_past(at: jiff::Timestamp, made_at: jiff::Timestamp, now: jiff::Timestamp) -> Result<(), AppError> {
    let differ_s = CLOCKS_DIFFER.as_secs();
    let sound = (made_at.as_second() - differ_s..=now.as_second() + differ_s).contains(&at.as_second());
    if sound {
        return Ok(());
    }
    Err(AppError::invalid(NeedFault::OutsideJob { at, made_at, now_at: now }))
}

pub(crate) fn need_version(club: &JobClub, version: Option<i64>) -> Result<(), AppError> {
    match version {
        Some(seen) if seen != club.version => {
            Err(AppError::conflict(NeedFault::Stale { number: club.target.number.clone() }))
        }
        _ => Ok(()),
    }
}

pub(crate) fn need_reason(reason: &str) -> Result<(), AppError> {
    if reason.trim().chars().count() >= 3 { Ok(()) } else { Err(AppError::invalid(NeedFault::NoReason)) }
}

fact::facts! {
    /// What every change needs.
    pub(crate) enum NeedFault: "need_fault" {
        NoPlan { job: i64 },
        JobOver { job: i64, state: JobState },
        NoName,
        OutsideJob { at: Timestamp, made_at: Timestamp, now_at: Timestamp },
        Stale { number: String },
        NoReason,
    }
}
