//! What must be so before anything is kept: each says what is missing and what to do.

use crate::AppError;
use crate::clock::CLOCKS_DIFFER;
use crate::job::JobFile;
use trade::job::{JobClub, JobState};

pub(crate) fn need_at_bench(file: &JobFile) -> Result<(), AppError> {
    match file.job.state {
        JobState::Planned => Ok(()),
        JobState::Open => Err(AppError::Conflict {
            what: format!("job {} has no plan yet", file.job.number),
            next: "Accept a plan first, so that there is something to expect".into(),
        }),
        state => Err(AppError::Conflict {
            what: format!("job {} is {state}", file.job.number),
            next: "Its record stands; make a new job for more work on these clubs".into(),
        }),
    }
}

/// Somebody must be named for what cannot be undone.
pub(crate) fn need_name(by: &str) -> Result<(), AppError> {
    if by.trim().is_empty() {
        return Err(AppError::Invalid {
            what: "nobody is named".into(),
            next: "Say who does it: the record keeps the name".into(),
        });
    }
    Ok(())
}

/// A time that a screen gives must lie between the making of the job and now; clocks may differ by five minutes. `what`
/// is what happened then: "a reading".
pub(crate) fn need_past(
    what: &str,
    at: jiff::Timestamp,
    made_at: jiff::Timestamp,
    now: jiff::Timestamp,
) -> Result<(), AppError> {
    let differ_s = CLOCKS_DIFFER.as_secs();
    let sound = (made_at.as_second() - differ_s..=now.as_second() + differ_s).contains(&at.as_second());
    if sound {
        return Ok(());
    }
    Err(AppError::Invalid {
        what: format!("{what} at {at} does not belong to this job, which was made at {made_at}; it is {now} now"),
        next: "Leave the time out for now, or give the time when it happened".into(),
    })
}

pub(crate) fn need_version(club: &JobClub, version: Option<i64>) -> Result<(), AppError> {
    match version {
        Some(seen) if seen != club.version => Err(AppError::Conflict {
            what: format!("the {} was changed on another screen in the meantime", club.target.number),
            next: "Nothing was overwritten. Look at what changed, then enter it again".into(),
        }),
        _ => Ok(()),
    }
}

pub(crate) fn need_reason(reason: &str) -> Result<(), AppError> {
    if reason.trim().chars().count() >= 3 {
        Ok(())
    } else {
        Err(AppError::Invalid {
            what: "a reason is needed: the record keeps it".into(),
            next: "Say in a few words why".into(),
        })
    }
}
