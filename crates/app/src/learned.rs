//! What the shop has learned: after each finished job, and what the owner makes of it.

use crate::kept_job::KeptJob;
use crate::need::need_reason;
use crate::told::{ToldView, told_shop};
use crate::{App, AppError, load_library, load_shop, new_id};
use bench::belief::BAND_95;
use bench::capability::{Outcome, ShopCapability, capability};
use bench::finished_club::FinishedClub;
use bench::held::BandsHeld;
use bench::learned::{Learned, LearnedCause, LearnedFrom, LearnedUnit, LearnedWhat, say};
use bench::record::{Record, Verdict};
use jiff::civil::Time;
use jiff::tz::Offset;
use jiff::{Timestamp, ToSpan};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};
use store::{LearnedRow, Tx};
use trade::event_kind::EventKind;
use trade::id::JobId;
use trade::job::{Job, JobState};
use trade::reading::What;
use utoipa::ToSchema;

/// States that a value's picture goes back.
const STATES_SHOWN: i64 = 60;
/// Days of readings that count for how often the forecasts held.
const BANDS_COUNTED_DAYS: i64 = 365;

/// A learned value at one moment.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct LearnedPoint {
    /// Since when.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
    /// The job that it was learned from, where it was one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<i64>,
    /// Mean then, in the unit of the value.
    pub mean: f64,
    /// Half width of the 95 % band then; for a scatter figure 0.
    pub band: f64,
}

/// One thing that the shop has learned, in the units that it is shown in.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct LearnedView {
    /// Its key, to reset or to lock it by.
    pub key: String,
    /// Which value it is, with the name of the part or scale.
    #[serde(flatten)]
    pub what: LearnedWhat,
    /// Unit of the figures.
    pub unit: LearnedUnit,
    /// Mean: how far from the model's own figure; for a scatter figure how far single ones scatter.
    pub mean: f64,
    /// Half width of its 95 % band; for a scatter figure 0.
    pub band: f64,
    /// The value itself where the model gives a figure: that figure and the mean together.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub figure: Option<f64>,
    /// What a new shop starts with: half width of the band, for a scatter figure the scatter.
    pub new_shop: f64,
    /// Clubs that it was learned from.
    pub clubs: i64,
    /// Jobs that it was learned from.
    pub jobs: i64,
    /// How many single observations a scatter figure is worth.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub observations: Option<f64>,
    /// The latest jobs and their clubs.
    pub from: Vec<LearnedFrom>,
    /// Whether the owner has fixed it.
    pub pinned: bool,
    /// Where it comes from, the earliest first.
    pub history: Vec<LearnedPoint>,
}

/// Everything that the shop has learned.
#[derive(Debug, Clone, PartialEq, Default, Serialize, ToSchema)]
pub struct LearnedShop {
    /// Values with their mean and band.
    pub values: Vec<LearnedView>,
    /// How far single pieces, jobs, readings and hands scatter.
    pub scatter: Vec<LearnedView>,
    /// What builders said of the shop, apart from what was learned.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub told: Vec<ToldView>,
    /// When it changed last.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub at: Option<Timestamp>,
}

/// A change of what the shop knows.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct LearnedChange {
    /// When.
    #[schema(value_type = String, format = DateTime)]
    pub at: Timestamp,
    /// Who brought it about.
    pub by: String,
    /// Why.
    pub cause: LearnedCause,
    /// The job that it was learned from, where it was one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub job: Option<i64>,
    /// The value that was reset or locked; empty for all of them and for a job.
    pub about: String,
    /// What that value is.
    #[serde(flatten)]
    #[schema(schema_with = fact::schema_where_any)]
    pub what: Option<LearnedWhat>,
    /// The reason given.
    pub reason: String,
}

/// Resetting learned values.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct ResetLearned {
    /// Key of the value; left out: all of them, also the locked ones.
    #[serde(default)]
    pub key: Option<String>,
    /// Who.
    pub by: String,
    /// Why, for the history.
    #[schema(min_length = 3)]
    pub reason: String,
}

/// Fixing a learned value, or letting it learn again.
#[derive(Debug, Clone, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct PinLearned {
    /// Key of the value.
    pub key: String,
    /// `true` fixes it, `false` lets it learn again.
    pub pinned: bool,
    /// Who.
    pub by: String,
    /// Why, for the history.
    #[schema(min_length = 3)]
    pub reason: String,
}

impl App {
    /// Learns from a job that is just finished, and notes where its clubs came out.
    ///
    /// Figures that cannot be learned from do not undo the reading that finished the job: the log says so.
    pub(crate) async fn learn_from(&self, tx: &mut Tx, file: &KeptJob, by: &str) -> Result<(), AppError> {
        let (believed, record) = (file.believe()?, file.record()?);
        for club in outcomes(&file.job, &record, self.now()) {
            tx.note_finished(&club).await?;
        }
        match file.learned.after(&believed) {
            Ok(learned) => {
                tx.append_learned(&LearnedRow {
                    id: new_id().as_str().into(),
                    at: self.now(),
                    by: by.to_owned(),
                    cause: LearnedCause::Job,
                    job: Some(file.job.id.clone()),
                    about: String::new(),
                    reason: String::new(),
                    learned,
                })
                .await?;
            }
            Err(refused) => {
                let note = serde_json::json!({ "problem": fact::Fact::told(&refused.refusal()) });
                self.log(tx, Some(&file.job.id), None, EventKind::NothingLearned, by, note).await?;
            }
        }
        Ok(())
    }

    /// What the shop has learned, with where it comes from.
    ///
    /// # Errors
    /// What the store says.
    pub async fn learned(&self) -> Result<LearnedShop, AppError> {
        let mut tx = self.store.read().await?;
        let library = load_library(&mut tx).await?;
        let shop = load_shop(&mut tx).await?;
        let kept = tx.learned_rows(STATES_SHOWN).await?;
        let rows: Vec<&LearnedRow> = kept.iter().rev().collect();
        let Some(latest) = rows.last() else { return Ok(LearnedShop::default()) };
        let numbers = job_numbers(&mut tx, &kept).await?;
        let point = |row: &LearnedRow, mean, band| LearnedPoint {
            at: row.at,
            job: row.job.as_ref().and_then(|id| numbers.get(id).copied()),
            mean,
            band,
        };
        let told = told_shop(&latest.learned, &shop, &library).told;
        let values = latest.learned.values.iter().map(|value| {
            let said = say(&value.key, &library, &shop);
            let at = |row: &LearnedRow| {
                let place = row.learned.position(&value.key)?;
                let sd = row.learned.sd(&value.key)?;
                let mean = row.learned.values[place].mean_shift * said.factor;
                Some(point(row, mean, BAND_95 * sd * said.factor))
            };
            let mean = value.mean_shift * said.factor;
            LearnedView {
                mean,
                band: latest.learned.sd(&value.key).unwrap_or(value.prior_sd) * BAND_95 * said.factor,
                figure: said.nominal.map(|nominal| nominal + mean),
                new_shop: value.prior_sd * BAND_95 * said.factor,
                clubs: value.clubs,
                jobs: value.jobs,
                observations: None,
                from: value.from.clone(),
                pinned: value.pinned,
                history: rows.iter().copied().filter_map(at).collect(),
                key: value.key.clone(),
                unit: said.unit,
                what: said.what.clone(),
            }
        });
        let scatter = latest.learned.scatter.iter().map(|scatter| {
            let said = say(&scatter.key, &library, &shop);
            let at = |row: &LearnedRow| {
                let found = row.learned.scatter.iter().find(|s| s.key == scatter.key)?;
                Some(point(row, found.sd * said.factor, 0.0))
            };
            LearnedView {
                mean: scatter.sd * said.factor,
                band: 0.0,
                figure: None,
                new_shop: scatter.prior_sd * said.factor,
                clubs: 0,
                jobs: rows.iter().filter(|r| r.job.is_some() && at(r).is_some()).count() as i64,
                observations: Some(scatter.weight),
                from: Vec::new(),
                pinned: scatter.pinned,
                history: rows.iter().copied().filter_map(at).collect(),
                key: scatter.key.clone(),
                unit: said.unit,
                what: said.what.clone(),
            }
        });
        Ok(LearnedShop { values: values.collect(), scatter: scatter.collect(), told, at: Some(latest.at) })
    }

    /// The state itself, with its joint covariance, as the next job takes it.
    ///
    /// # Errors
    /// What the store says.
    pub async fn learned_state(&self) -> Result<Learned, AppError> {
        Ok(Arc::unwrap_or_clone(crate::load_learned(&mut self.store.read().await?).await?))
    }

    /// What changed what the shop knows, the newest first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn learned_history(&self) -> Result<Vec<LearnedChange>, AppError> {
        let mut tx = self.store.read().await?;
        let library = load_library(&mut tx).await?;
        let shop = load_shop(&mut tx).await?;
        let rows = tx.learned_rows(STATES_SHOWN).await?;
        let numbers = job_numbers(&mut tx, &rows).await?;
        let change = |row: &LearnedRow| LearnedChange {
            job: row.job.as_ref().and_then(|id| numbers.get(id).copied()),
            what: (!row.about.is_empty()).then(|| say(&row.about, &library, &shop).what),
            at: row.at,
            by: row.by.clone(),
            cause: row.cause,
            about: row.about.clone(),
            reason: row.reason.clone(),
        };
        Ok(rows.iter().map(change).collect())
    }

    /// Resets one learned value to what a new shop starts with, or all of them.
    ///
    /// # Errors
    /// No reason; a key that is not there; what the store says.
    pub async fn reset_learned(&self, request: &ResetLearned) -> Result<(), AppError> {
        self.change_learned(LearnedCause::Reset, request.key.as_deref(), &request.by, &request.reason).await
    }

    /// Fixes a learned value, or lets it learn again.
    ///
    /// # Errors
    /// No reason; a key that is not there; what the store says.
    pub async fn pin_learned(&self, request: &PinLearned) -> Result<(), AppError> {
        let cause = if request.pinned { LearnedCause::Pin } else { LearnedCause::Unpin };
        self.change_learned(cause, Some(&request.key), &request.by, &request.reason).await
    }

    async fn change_learned(
        &self,
        cause: LearnedCause,
        key: Option<&str>,
        by: &str,
        reason: &str,
    ) -> Result<(), AppError> {
        need_reason(reason)?;
        let mut tx = self.store.write().await?;
        let Some(mut learned) = tx.learned().await?.map(Arc::unwrap_or_clone) else {
            return Err(AppError::conflict(LearnedFault::Nothing));
        };
        match (cause, key) {
            (LearnedCause::Pin | LearnedCause::Unpin, Some(key)) => learned.pin(key, cause == LearnedCause::Pin)?,
            (_, Some(key)) => learned.reset(key)?,
            // What builders said was not learned: it is withdrawn by itself.
            (_, None) => {
                learned = Learned { told: learned.told, not_asked: learned.not_asked, ..Learned::default() };
            }
        }
        tx.append_learned(&LearnedRow {
            id: new_id().as_str().into(),
            at: self.now(),
            by: by.to_owned(),
            cause,
            job: None,
            about: key.unwrap_or_default().to_owned(),
            reason: reason.trim().to_owned(),
            learned,
        })
        .await?;
        tx.commit().await?;
        self.tell(None, "learned");
        Ok(())
    }

    /// How well the shop meets its tolerances, by month and by model, from its finished clubs.
    ///
    /// # Errors
    /// Figures that the belief of an old job cannot work with; what the store says.
    pub async fn capability(&self) -> Result<ShopCapability, AppError> {
        let mut tx = self.store.read().await?;
        // From the beginning of a day on, so that one day shows one figure.
        let today = Offset::UTC.to_datetime(self.now()).date();
        let since_on = today.saturating_sub(BANDS_COUNTED_DAYS.days());
        let since = Offset::UTC.to_timestamp(since_on.to_datetime(Time::midnight())).unwrap_or(Timestamp::UNIX_EPOCH);
        let bands = BandsHeld::of(since_on, &tx.forecasted(since).await?);
        Ok(ShopCapability { bands, ..self.clubs_capability(&mut tx).await? })
    }

    async fn clubs_capability(&self, tx: &mut Tx) -> Result<ShopCapability, AppError> {
        let noted = tx.finished_clubs().await?;
        let jobs = tx.count_jobs(JobState::Finished).await?;
        if let Some(kept) = self.capability.of(&noted, jobs) {
            return Ok(kept);
        }
        let mut outcomes: Vec<Outcome> = noted.iter().map(outcome).collect();
        // Jobs that were finished before anything was noted.
        let older = tx.finished_without_note().await?;
        for number in &older {
            let file = self.kept_job(tx, *number).await?;
            let record = file.record()?;
            let at = record.last_reading_at.unwrap_or(file.job.made_at);
            outcomes.extend(self::outcomes(&file.job, &record, at).iter().map(outcome));
        }
        let found = capability(&outcomes);
        if older.is_empty() {
            self.capability.keep(&noted, jobs, &found);
        }
        Ok(found)
    }
}

/// The clubs that were noted, how many jobs were finished, and the capability that follows.
type CapabilityOf = (Arc<Vec<FinishedClub>>, i64, ShopCapability);

/// The capability as it was worked out last, with what from: the clubs noted and the number of finished jobs. Where both
/// are the same still, so is the capability; both are asked of the database each time.
#[derive(Debug, Clone, Default)]
pub(crate) struct KeptCapability(Arc<Mutex<Option<CapabilityOf>>>);

impl KeptCapability {
    fn of(&self, noted: &Arc<Vec<FinishedClub>>, jobs: i64) -> Option<ShopCapability> {
        let kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.as_ref().filter(|(of, of_jobs, _)| Arc::ptr_eq(of, noted) && *of_jobs == jobs).map(|k| k.2.clone())
    }

    fn keep(&self, noted: &Arc<Vec<FinishedClub>>, jobs: i64, found: &ShopCapability) {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        *kept = Some((Arc::clone(noted), jobs, found.clone()));
    }
}

fn outcome(club: &FinishedClub) -> Outcome {
    Outcome {
        on: Offset::UTC.to_datetime(club.finished_at).date(),
        head_model: club.head_model.clone(),
        deviation_points: club.deviation_points,
        tolerance_points: club.tolerance_points,
        verdict: club.verdict,
    }
}

/// Where the clubs of a record came out; clubs whose swing weight was not read are left out.
fn outcomes(job: &Job, record: &Record, at: Timestamp) -> Vec<FinishedClub> {
    let outcome = |club: &bench::record::ClubRecord| {
        let line = club.lines.iter().find(|l| l.what == What::SwingWeight && l.verdict != Verdict::NotRead)?;
        Some(FinishedClub {
            club: club.club.clone(),
            job: job.id.clone(),
            job_number: job.number,
            number: club.target.number.clone(),
            head_model: club.target.head_model.clone(),
            finished_at: at,
            target_points: line.target?,
            deviation_points: line.difference?,
            band_points: line.band?,
            tolerance_points: line.tolerance?,
            verdict: line.verdict,
        })
    };
    record.clubs.iter().filter_map(outcome).collect()
}

async fn job_numbers(tx: &mut Tx, rows: &[LearnedRow]) -> Result<BTreeMap<JobId, i64>, AppError> {
    let mut numbers = BTreeMap::new();
    for id in rows.iter().filter_map(|row| row.job.as_ref()) {
        if let Some(number) = tx.job_number(id).await? {
            numbers.insert(id.clone(), number);
        }
    }
    Ok(numbers)
}

fact::facts! {
    /// What is refused of changing what the shop has learned.
    pub(crate) enum LearnedFault: "learning_fault" {
        Nothing,
    }
}
