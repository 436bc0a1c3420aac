//! Parts that are kept for a club, by the builder's word or because they are reserved for it.

use super::{Fitting, Shelf};
use crate::error::WorkshopError;
use crate::job::Job;
use crate::model::PartKind;
use crate::part::{Part, PartState};
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// "This part in this club".
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Lock {
    /// Place in the tray.
    pub slot: i64,
    /// Code of the part: a head, shaft or grip.
    pub code: String,
}

/// The locks that were asked for, and a lock for each head, shaft or grip that is reserved for a club of the job.
#[must_use]
pub fn kept(job: &Job, parts: &[Part], locks: &[Lock]) -> Vec<Lock> {
    let mut all = locks.to_vec();
    let single = |kind| matches!(kind, PartKind::Head | PartKind::Shaft | PartKind::Grip);
    let held = |p: &&Part| p.state == PartState::Held && p.job.as_ref() == Some(&job.id);
    for part in parts.iter().filter(held).filter(|p| single(p.kind)) {
        let club = job.clubs.iter().find(|c| c.plan.is_none() && part.club.as_ref() == Some(&c.id));
        if let Some(club) = club.filter(|_| !locks.iter().any(|l| l.code.eq_ignore_ascii_case(&part.code))) {
            all.push(Lock { slot: club.slot, code: part.code.clone() });
        }
    }
    all
}

/// Narrows a club to its locked part and takes the part from all others.
pub(super) fn lock(fittings: &mut [Fitting<'_>], shelf: &Shelf<'_>, locks: &[Lock]) -> Result<(), WorkshopError> {
    for lock in locks {
        let refused = |why: &str| WorkshopError::Refused {
            what: format!("{} cannot be kept for club {} of the tray: {why}", lock.code, lock.slot),
            next: "Choose another part, or take the lock away".into(),
        };
        let place =
            fittings.iter().position(|f| f.club.slot == lock.slot).ok_or_else(|| refused("there is no such club"))?;
        let found = [(PartKind::Head, &shelf.heads), (PartKind::Shaft, &shelf.shafts), (PartKind::Grip, &shelf.grips)]
            .into_iter()
            .find_map(|(kind, parts)| {
                parts.iter().position(|p| p.code.eq_ignore_ascii_case(&lock.code)).map(|i| (kind, i))
            });
        let (kind, part) = found.ok_or_else(|| refused("it is not a free head, shaft or grip"))?;
        for (i, fitting) in fittings.iter_mut().enumerate() {
            let list = match kind {
                PartKind::Head => &mut fitting.need.heads,
                PartKind::Shaft => &mut fitting.need.shafts,
                _ => &mut fitting.need.grips,
            };
            if i == place {
                list.retain(|c| c.part == part);
                if list.is_empty() {
                    return Err(refused("it does not fit there"));
                }
            } else {
                list.retain(|c| c.part != part);
            }
        }
    }
    Ok(())
}

/// Takes the locked parts of one job from every club of another.
pub(super) fn keep_from(fittings: &mut [Fitting<'_>], shelf: &Shelf<'_>, locks: &[Lock]) {
    let taken = |parts: &[&Part], part: usize| locks.iter().any(|l| parts[part].code.eq_ignore_ascii_case(&l.code));
    for fitting in fittings {
        fitting.need.heads.retain(|c| !taken(&shelf.heads, c.part));
        fitting.need.shafts.retain(|c| !taken(&shelf.shafts, c.part));
        fitting.need.grips.retain(|c| !taken(&shelf.grips, c.part));
    }
}
