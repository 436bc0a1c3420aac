//! Parts that are kept for a club, by the builder's word or because they are reserved for it.

use super::{Fitting, Shelf};
use matching::Candidate;
use serde::{Deserialize, Serialize};
use trade::error::TradeError;
use trade::job::Job;
use trade::model::PartKind;
use trade::part::{Part, PartState};
use utoipa::ToSchema;

/// "This part in this club".
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Lock {
    /// Place in the tray.
    pub slot: i64,
    /// Code of the part: a head, shaft, grip or adapter.
    pub code: String,
}

/// The locks that were asked for, and one for each head, shaft, grip or adapter that is reserved for a club of the job.
#[must_use]
pub fn kept(job: &Job, parts: &[Part], locks: &[Lock]) -> Vec<Lock> {
    let mut all = locks.to_vec();
    let single = |kind| matches!(kind, PartKind::Head | PartKind::Shaft | PartKind::Grip | PartKind::Adapter);
    let held = |p: &&Part| p.state == PartState::Held && p.job.as_ref() == Some(&job.id);
    for part in parts.iter().filter(held).filter(|p| single(p.kind)) {
        let club = job.clubs.iter().find(|c| c.plan.is_none() && part.club.as_ref() == Some(&c.id));
        if let Some(club) = club.filter(|_| !locks.iter().any(|l| l.code.eq_ignore_ascii_case(&part.code))) {
            all.push(Lock { slot: club.slot, code: part.code.clone() });
        }
    }
    all
}

/// The candidates of a club of one kind; none where it takes none of it.
fn list_of<'f>(fitting: &'f mut Fitting<'_>, kind: PartKind) -> Option<&'f mut Vec<Candidate>> {
    match kind {
        PartKind::Head => Some(&mut fitting.need.heads),
        PartKind::Shaft => Some(&mut fitting.need.shafts),
        PartKind::Grip => Some(&mut fitting.need.grips),
        _ => fitting.need.adapters.as_mut(),
    }
}

impl<'a> Shelf<'a> {
    /// What can be kept for a club, by kind.
    pub(super) fn single(&self) -> [(PartKind, &[&'a Part]); 4] {
        [
            (PartKind::Head, &self.heads),
            (PartKind::Shaft, &self.shafts),
            (PartKind::Grip, &self.grips),
            (PartKind::Adapter, &self.adapters),
        ]
    }
}

/// Narrows a club to its locked part and takes a single piece from all others; of a bulk the others may have the rest.
pub(super) fn lock(fittings: &mut [Fitting<'_>], shelf: &Shelf<'_>, locks: &[Lock]) -> Result<(), TradeError> {
    for (at, lock) in locks.iter().enumerate() {
        let (code, slot) = (|| lock.code.clone(), lock.slot);
        let place = fittings.iter().position(|f| f.club.slot == slot);
        let place = place.ok_or_else(|| TradeError::refused(LockFault::NoClub { code: code(), slot }))?;
        let found = shelf.single().into_iter().find_map(|(kind, parts)| {
            let part = parts.iter().position(|p| p.code.eq_ignore_ascii_case(&lock.code))?;
            Some((kind, part, parts[part].count.is_none()))
        });
        let (kind, part, single) =
            found.ok_or_else(|| TradeError::refused(LockFault::NotFree { code: code(), slot }))?;
        let twice = locks[..at].iter().find(|l| l.code.eq_ignore_ascii_case(&lock.code) && l.slot != lock.slot);
        if let Some(other) = twice.filter(|_| single) {
            return Err(TradeError::refused(LockFault::Twice { code: code(), slot, other: other.slot }));
        }
        for (i, fitting) in fittings.iter_mut().enumerate() {
            let list = list_of(fitting, kind);
            if i == place {
                let list = list.ok_or_else(|| TradeError::refused(LockFault::NoAdapter { code: code(), slot }))?;
                list.retain(|c| c.part == part);
                if list.is_empty() {
                    return Err(TradeError::refused(LockFault::Misfit { code: code(), slot }));
                }
            } else if let (Some(list), true) = (list, single) {
                list.retain(|c| c.part != part);
            }
        }
    }
    Ok(())
}

/// Takes the locked pieces of one job from every club of another.
pub(super) fn keep_from(fittings: &mut [Fitting<'_>], shelf: &Shelf<'_>, locks: &[Lock]) {
    for (kind, parts) in shelf.single() {
        let taken = |part: usize| {
            parts[part].count.is_none() && locks.iter().any(|l| parts[part].code.eq_ignore_ascii_case(&l.code))
        };
        for fitting in fittings.iter_mut() {
            list_of(fitting, kind).into_iter().for_each(|list| list.retain(|c| !taken(c.part)));
        }
    }
}

fact::facts! {
    /// Why a part cannot be kept for a club.
    pub(crate) enum LockFault: "lock_fault" {
        NoClub { code: String, slot: i64 },
        NotFree { code: String, slot: i64 },
        Twice { code: String, slot: i64, other: i64 },
        NoAdapter { code: String, slot: i64 },
        Misfit { code: String, slot: i64 },
    }
}
