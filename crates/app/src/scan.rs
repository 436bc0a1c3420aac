//! A code that was scanned while a club is at the bench.

use crate::job::JobFile;
use crate::kept_job::KeptJob;
use crate::look_up::LookUp;
use crate::plan::{Swap, outdated};
use crate::stock_list::Scanned;
use crate::{App, AppError};
use bench::remedy::Progress;
use bench::scan::{ScanNext, ScanSays, ScannedPart, scanned_part};
use serde::{Deserialize, Serialize};
use store::Tx;
use trade::error::Noun;
use trade::job::JobClub;
use trade::model::PartKind;
use trade::part::Part;
use trade::part_codes::PartCodes;
use utoipa::ToSchema;

/// A code scanned at a club and step.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ScanAt {
    /// What was scanned or typed: the code on a part's label or on a club's card.
    pub code: String,
    /// Key of the step at hand.
    pub step: String,
    /// Put it in even though readings with the part before it are taken back.
    #[serde(default)]
    pub sure: bool,
    /// Who.
    #[serde(default)]
    pub by: String,
}

/// What came of a scan at the bench.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum ScanSaid {
    /// A card: the bench goes on at that club.
    Club {
        /// Number of its job.
        job: i64,
        /// Place in the tray.
        slot: i64,
    },
    /// A part.
    Part(Box<PartSaid>),
}

/// What came of the scan of a part.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct PartSaid {
    /// The part whose code was scanned.
    pub part: Part,
    /// What it is for the club at hand.
    pub is: ScannedPart,
    /// It was put in by this scan.
    pub put_in: bool,
    /// What it is, as it is told.
    #[serde(flatten)]
    pub fact: ScanSays,
    /// What to do next, where there is something.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<ScanNext>,
}

impl App {
    /// What a code is for a club and step; nothing is changed.
    ///
    /// # Errors
    /// A code that is neither a part's nor a card's; no such job or club; what the store says.
    pub async fn look_at_scan(&self, number: i64, slot: i64, step: &str, code: &str) -> Result<ScanSaid, AppError> {
        match self.scanned(code).await? {
            Scanned::Club { job, slot } => Ok(ScanSaid::Club { job, slot }),
            Scanned::Part { code } => {
                let mut tx = self.store.read().await?;
                let file = self.kept_job(&mut tx, number).await?;
                let club = file.club_at(slot)?;
                let (part, is) = what_it_is(&mut tx, &file, club, step, &code).await?;
                Ok(said(club, part, is, false))
            }
        }
    }

    /// A scan at the bench: a part that is free takes its place at the step that has one for it; a label scanned twice,
    /// or one of another club, changes nothing.
    ///
    /// # Errors
    /// As [`Self::look_at_scan`]; a part of the kind that is fixed on the club already; what a swap refuses.
    pub async fn scan_at(&self, number: i64, slot: i64, scan: &ScanAt) -> Result<ScanSaid, AppError> {
        let looked = self.look_at_scan(number, slot, &scan.step, &scan.code).await?;
        let ScanSaid::Part(found) = &looked else { return Ok(looked) };
        let ScannedPart::Takes { readings } = found.is else { return Ok(looked) };
        if readings > 0 && !scan.sure {
            return Ok(looked);
        }
        let file = self.job_file(number).await?;
        let club = file.club_at(slot)?;
        need_open_place(&file, club, found.part.kind)?;
        let swap = Swap {
            kind: found.part.kind,
            code: PartCodes::one(&found.part.code),
            reason: String::new(),
            by: scan.by.clone(),
            version: None,
        };
        self.swap(number, slot, &swap).await?;
        let part = self.part(&found.part.code).await?;
        Ok(said(club, part, ScannedPart::Already, true))
    }
}

/// A part that is glued, cut or gripped on the club does not make room for another by a scan.
fn need_open_place(file: &KeptJob, club: &JobClub, kind: PartKind) -> Result<(), AppError> {
    let progress = Progress::of(&file.believe()?, club);
    let fixed = match kind {
        PartKind::Grip => progress.gripped,
        PartKind::Shaft => progress.cut || progress.glued,
        _ => progress.glued,
    };
    if !fixed {
        return Ok(());
    }
    Err(AppError::conflict(ScanFault::ForGood { kind, number: club.target.number.clone() }))
}

fn said(club: &JobClub, part: Part, is: ScannedPart, put_in: bool) -> ScanSaid {
    let (fact, next) = is.says(&part, &club.target.name(), put_in);
    ScanSaid::Part(Box::new(PartSaid { part, is, put_in, fact, next }))
}

async fn what_it_is(
    tx: &mut Tx,
    file: &JobFile,
    club: &JobClub,
    step: &str,
    code: &str,
) -> Result<(Part, ScannedPart), AppError> {
    let part = tx.part_by_code(code).await?.ok_or_else(|| AppError::not_found(Noun::Part, code, &LookUp::OnLabel))?;
    let elsewhere = match (&part.job, &part.club) {
        (_, Some(other)) if *other != club.id => {
            let job = match &part.job {
                Some(id) if *id == file.job.id => Some(file.job.clone()),
                Some(id) => tx.job(id).await?,
                None => None,
            };
            let found = job.as_ref().and_then(|j| j.club(other));
            Some((job.as_ref().map(|j| j.number), found.map(|c| c.slot), found.map(|c| c.target.name())))
        }
        _ => None,
    };
    let readings = outdated(&file.job, &file.readings, &club.id, part.kind).len();
    let is = scanned_part(&file.job.steps, step, club, &part, elsewhere, readings);
    Ok((part, is))
}

fact::facts! {
    /// What is refused of a scanned part.
    pub(crate) enum ScanFault: "scan_fault" {
        ForGood { kind: PartKind, number: String },
    }
}
