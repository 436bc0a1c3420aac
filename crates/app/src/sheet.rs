//! Fitting sheets: expand what was written short, check, save, approve into a job.

use crate::known_customer::{customer_row, sheet_taken_in};
use crate::lanes::Lane;
use crate::look_up::LookUp;
use crate::{App, AppError, load_library, load_shop};
use desk::sheet_check::check;
use desk::sheet_check::{Severity, SheetProblem};
use desk::short_sheet::{ExpandContext, Expanded, SetModels, explain};
use fact::{Refusal, Told};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use store::{SheetLine, SheetRow};
use trade::error::Noun;
use trade::event_kind::EventKind;
use trade::id::SheetId;
use trade::job::{Job, JobClub, JobState};
use trade::sheet::{ReferenceClub, SetRule, Sheet};
use trade::step::{Step, check_template};
use utoipa::ToSchema;

/// A sheet written short, with the models it is relative to.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ShortSheet {
    /// As the builder writes it: `5–PW, +1/2, 2 up, D3, 2 wraps`.
    pub written: String,
    /// The models of the set.
    pub models: SetModels,
    /// The law of the set.
    pub rule: SetRule,
    /// The reference club, where it was read.
    #[serde(default)]
    pub reference: Option<ReferenceClub>,
    /// Whose it is: the layers of tape that they like hold where the sheet says none.
    #[serde(default)]
    pub customer: Option<i64>,
}

/// A saved sheet with what is to be said of it.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct SheetView {
    /// Identity.
    pub id: SheetId,
    /// The sheet as it was last saved.
    pub sheet: Sheet,
    /// Findings.
    pub problems: Vec<SheetProblem>,
    /// Number of the job that was made from it.
    pub job: Option<i64>,
    /// Version to send back with a change.
    pub version: i64,
}

/// A sheet in a list.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct SheetSummary {
    /// Identity.
    pub id: SheetId,
    /// Who the clubs are for.
    pub player: String,
    /// When it is due.
    #[schema(value_type = String, format = Date)]
    pub due: Date,
    /// Numbers of its clubs.
    pub clubs: Vec<String>,
    /// Number of the job that was made from it.
    pub job: Option<i64>,
}

/// Approving a sheet.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Approve {
    /// The job's own steps; left out: the shop's.
    #[serde(default)]
    pub steps: Option<Vec<Step>>,
    /// Who approves.
    pub by: String,
}

impl App {
    /// Expands a short sheet: each club with where its fields came from.
    ///
    /// # Errors
    /// A word that cannot be read, with its place and an example; unknown models; what the store says.
    pub async fn expand_sheet(&self, short: &ShortSheet) -> Result<Vec<Expanded>, AppError> {
        let mut tx = self.store.read().await?;
        let library = load_library(&mut tx).await?;
        let shop = load_shop(&mut tx).await?;
        let wraps = match short.customer {
            Some(number) => customer_row(&mut tx, number).await?.customer.wraps,
            None => None,
        };
        drop(tx);
        let expanded = self
            .on_lane(Lane::Desk, || {
                let mut context = ExpandContext::new(&library, &short.models, &shop);
                context.wraps = wraps.unwrap_or(context.wraps);
                explain(&short.written, &context, short.rule, short.reference.as_ref())
            })
            .await;
        Ok(expanded.map_err(trade::error::TradeError::from)?)
    }

    /// Everything that is to be said of a sheet, against models, stock and rules.
    ///
    /// # Errors
    /// What the store says.
    pub async fn check_sheet(&self, sheet: &Sheet) -> Result<Vec<SheetProblem>, AppError> {
        let mut tx = self.store.read().await?;
        let sheet = sheet_taken_in(&mut tx, sheet).await?;
        self.problems(&mut tx, &sheet).await
    }

    pub(crate) async fn problems(&self, tx: &mut store::Tx, sheet: &Sheet) -> Result<Vec<SheetProblem>, AppError> {
        let library = load_library(tx).await?;
        let shop = load_shop(tx).await?;
        // Only what is free can be built with; what was used in all the years before is not looked at.
        let stock = Self::free_parts_for(tx, sheet.customer).await?;
        Ok(check(sheet, &library, &stock, &shop, self.today()))
    }

    /// Today by the clock, in the machine's own time zone.
    #[must_use]
    pub fn today(&self) -> Date {
        self.now().to_zoned_datetime(jiff::tz::TimeZone::system()).date()
    }

    /// Saves a new sheet. One with findings may be saved, but not approved.
    ///
    /// # Errors
    /// What the store says.
    pub async fn save_sheet(&self, sheet: &Sheet) -> Result<SheetView, AppError> {
        let mut tx = self.store.write().await?;
        let sheet = sheet_taken_in(&mut tx, sheet).await?;
        let problems = self.problems(&mut tx, &sheet).await?;
        let id: SheetId = crate::new_id().as_str().into();
        let row =
            SheetRow { id: id.clone(), sheet: sheet.clone(), approved_job: None, version: 0, saved_at: self.now() };
        tx.insert_sheet(&row).await?;
        let saved = tx.sheet(&id).await?.map_or(0, |r| r.version);
        tx.commit().await?;
        self.tell(None, "sheet");
        Ok(SheetView { id, sheet, problems, job: None, version: saved })
    }

    /// Changes a saved sheet that is not approved yet.
    ///
    /// # Errors
    /// An approved sheet; a version that is out of date; what the store says.
    pub async fn change_sheet(&self, id: &SheetId, sheet: &Sheet, version: i64) -> Result<SheetView, AppError> {
        let mut tx = self.store.write().await?;
        let row = sheet_row(&mut tx, id).await?;
        if row.approved_job.is_some() {
            return Err(AppError::conflict(SheetFault::Approved));
        }
        let sheet = sheet_taken_in(&mut tx, sheet).await?;
        tx.update_sheet(&SheetRow { sheet, version, ..row }, self.now()).await?;
        tx.commit().await?;
        self.sheet(id).await
    }

    /// A saved sheet with its findings.
    ///
    /// # Errors
    /// No such sheet; what the store says.
    pub async fn sheet(&self, id: &SheetId) -> Result<SheetView, AppError> {
        let mut tx = self.store.read().await?;
        let row = sheet_row(&mut tx, id).await?;
        let problems = self.problems(&mut tx, &row.sheet).await?;
        let job = match &row.approved_job {
            Some(job) => tx.job_number(job).await?,
            None => None,
        };
        Ok(SheetView { id: row.id, sheet: row.sheet, problems, job, version: row.version })
    }

    /// Saved sheets, the latest first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn sheets(&self) -> Result<Vec<SheetSummary>, AppError> {
        self.latest_sheets(500).await
    }

    /// At most `limit` saved sheets, the latest first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn latest_sheets(&self, limit: i64) -> Result<Vec<SheetSummary>, AppError> {
        let mut tx = self.store.read().await?;
        let lines = tx.sheet_lines(limit).await?.into_iter();
        let summary = |line: SheetLine| SheetSummary {
            id: line.id,
            player: line.player,
            due: line.due,
            clubs: line.clubs,
            job: line.job,
        };
        Ok(lines.map(summary).collect())
    }

    /// Approves a sheet: its job is made, with its own copy of the sheet and of the steps.
    ///
    /// # Errors
    /// Findings that must be put right first; a sheet that is approved already; an unsound template.
    pub async fn approve_sheet(&self, id: &SheetId, approve: &Approve) -> Result<Job, AppError> {
        let mut tx = self.store.write().await?;
        let row = sheet_row(&mut tx, id).await?;
        if let Some(job) = &row.approved_job {
            let number = tx.job_number(job).await?.unwrap_or(0);
            return Err(AppError::conflict(SheetFault::ApprovedAs { job: number }));
        }
        let problems = self.problems(&mut tx, &row.sheet).await?;
        if let Some(stop) = problems.iter().find(|p| p.severity == Severity::Stop) {
            return Err(stopped(stop));
        }
        let steps = match &approve.steps {
            Some(steps) => steps.clone(),
            None => load_shop(&mut tx).await?.steps.clone(),
        };
        check_template(&steps)?;
        let number = tx.next_job_number().await?;
        let clubs = row
            .sheet
            .clubs
            .iter()
            .zip(1_i64..)
            .map(|(club, slot)| JobClub {
                id: crate::new_id().as_str().into(),
                slot,
                card: format!("J{number}-{slot}"),
                target: club.clone(),
                work: None,
                plan: None,
                version: 0,
            })
            .collect();
        let job = Job {
            id: crate::new_id().as_str().into(),
            number,
            sheet_id: id.clone(),
            sheet: row.sheet.clone(),
            state: JobState::Open,
            steps,
            made_at: self.now(),
            clubs,
            version: 0,
        };
        tx.insert_job(&job).await?;
        tx.update_sheet(&SheetRow { approved_job: Some(job.id.clone()), ..row }, self.now()).await?;
        self.log(&mut tx, Some(&job.id), None, EventKind::SheetApproved, &approve.by, serde_json::json!({})).await?;
        tx.commit().await?;
        self.tell(Some(number), "plan");
        Ok(job)
    }
}

pub(crate) async fn sheet_row(tx: &mut store::Tx, id: &SheetId) -> Result<SheetRow, AppError> {
    tx.sheet(id).await?.ok_or_else(|| AppError::not_found(Noun::Sheet, id.as_str(), &LookUp::Sheets))
}

/// The refusal of a sheet with a finding that stops it.
pub(crate) fn stopped(stop: &SheetProblem) -> AppError {
    let fault = SheetFault::Stop { club: stop.of_club(), what: stop.fact.clone() };
    AppError::Invalid(Refusal::new(&fault).next(&stop.next).at(&stop.field))
}

fact::facts! {
    /// What is refused of changing or approving a sheet.
    pub(crate) enum SheetFault: "sheet_fault" {
        Approved,
        ApprovedAs { job: i64 },
        Stop { club: Option<Told>, what: Told },
    }
}
