//! A job with everything that belongs to it, loaded at once.

use crate::let_pass::CureLetPass;
use crate::look_up::LookUp;
use crate::{App, AppError, load_library, load_shop};
use bench::assembly::Assembly;
use bench::belief::Believed;
use bench::club_state::{ClubState, Look, StepStatus, Surroundings};
use bench::glue::{Batch, CureOverride, Gate};
use bench::learned::Learned;
use bench::offer::Measure;
use bench::open_point::Passed;
use bench::player_sheet::{PlayerSheet, player_sheet};
use bench::record::{Beside, LetPass, Record};
use bench::remedy::Spare;
use bench::scale_shift::ScaleShift;
use bench::scale_watch::ScaleWatch;
use serde::Serialize;
use std::collections::BTreeMap;
use std::sync::Arc;
pub use store::JobLine;
use store::Tx;
use trade::error::Noun;
use trade::event_kind::EventKind;
use trade::id::ClubId;
use trade::job::{Job, JobClub, JobState};
use trade::kind::ClubKind;
use trade::model::{Library, PartKind};
use trade::part::{Part, PartState};
use trade::reading::Reading;
use trade::recall::ClubMark;
use trade::shop::Shop;
use trade::step::Step;
use utoipa::ToSchema;

/// A job with its readings, its batches and what was let pass, and the shop and models to read them by.
#[derive(Debug, Clone)]
pub struct JobFile {
    /// The job as it is kept: its sheet, its clubs and their plans.
    pub job: Job,
    /// All its readings in the order of arrival.
    pub readings: Vec<Reading>,
    /// Batches of adhesive that its clubs are in.
    pub batches: Vec<Batch>,
    /// Joints let pass before their time, the latest first.
    pub let_pass: Vec<LetPass>,
    /// Where somebody went on with something open.
    pub passed: Vec<Passed>,
    /// The models.
    pub library: Arc<Library>,
    /// The shop as it is set up now: its scales, gauges and settings.
    pub shop: Arc<Shop>,
    /// What the shop has learned from earlier jobs.
    pub learned: Arc<Learned>,
    /// Extra measurements that are not to be offered again.
    pub declined: Vec<Measure>,
    /// The marks that stand on its clubs, each with the club.
    pub marks: Vec<(ClubId, ClubMark)>,
    /// What is known of the scales: the checks of its days, and which of them are not trusted.
    pub watch: ScaleWatch,
    overrides: Vec<CureOverride>,
}

impl JobFile {
    pub(crate) async fn load(tx: &mut Tx, number: i64) -> Result<Self, AppError> {
        let job = tx
            .job_by_number(number)
            .await?
            .ok_or_else(|| AppError::not_found(Noun::Job, number.to_string(), &LookUp::Today))?;
        Self::of(tx, job).await
    }

    /// Everything that belongs to a job that is read already.
    pub(crate) async fn of(tx: &mut Tx, job: Job) -> Result<Self, AppError> {
        let readings = tx.readings(&job.id).await?;
        let batches = bench::glue::still_glued(&job, &readings, tx.batches(Some(&job.id)).await?);
        let events = tx.events(Some(&job.id), 10_000).await?;
        let declined = events
            .iter()
            .filter(|e| e.kind == EventKind::OfferDeclined)
            .filter_map(|e| e.body.get("measure").and_then(|m| m.as_str()).and_then(Measure::from_key))
            .collect();
        let passed = passed_in(&events);
        let mut let_pass = Vec::new();
        let mut overrides = Vec::new();
        for event in events.iter().filter(|e| e.kind == EventKind::LetPass) {
            let Some(found) = CureLetPass::of(event) else { continue };
            let_pass.extend(found.clubs(&batches).into_iter().map(|club| found.of_club(club)));
            overrides.push(found.opens);
        }
        let job = job.with_targets_read(&readings);
        let library = load_library(tx).await?;
        let shop = load_shop(tx).await?;
        let learned = learned_for(tx, &job).await?;
        let watch = crate::scale_watch::watch_of_job(tx, &shop, &job, &readings).await?;
        let marks = tx.open_marks_of_job(&job.id).await?;
        let file = Self {
            job,
            readings,
            batches,
            let_pass,
            passed,
            library,
            shop,
            declined,
            marks,
            learned,
            watch,
            overrides,
        };
        file.aimed()
    }

    /// The file with the swing weights of clubs that are to be equal in inertia, as the readings have them.
    fn aimed(mut self) -> Result<Self, AppError> {
        if let Some(job) = self.assembly().aimed_by_inertia(&self.readings)? {
            self.job = job;
        }
        Ok(self)
    }

    /// The job as the belief takes it.
    #[must_use]
    pub fn assembly(&self) -> Assembly<'_> {
        Assembly {
            job: &self.job,
            library: &self.library,
            shop: &self.shop,
            learned: &self.learned,
            watch: &self.watch,
        }
    }

    /// Whether a night lies between the last reading and now; never of a job that is over, whose record stays what it was.
    fn is_next_day(&self, now: jiff::Timestamp) -> bool {
        !matches!(self.job.state, JobState::Finished | JobState::Dropped)
            && self.assembly().is_next_day(&self.readings, now)
    }

    /// Whether what the file says of the day still holds now.
    pub(crate) fn still_holds_at(&self, now: jiff::Timestamp) -> bool {
        self.watch.next_day == self.is_next_day(now)
    }

    /// The file as of now: forecasts of the balance scale are of the next day where a night has passed.
    pub(crate) fn seen_at(mut self, now: jiff::Timestamp) -> Self {
        self.watch.next_day = self.is_next_day(now);
        self
    }

    /// What surrounds the bench at a time.
    #[must_use]
    pub fn around(&self, now: jiff::Timestamp) -> Surroundings<'_> {
        Surroundings { batches: &self.batches, overrides: &self.overrides, now }
    }

    /// What was said beside the readings, for the record.
    #[must_use]
    pub fn beside(&self) -> Beside<'_> {
        Beside { batches: &self.batches, let_pass: &self.let_pass, passed: &self.passed }
    }

    /// The club at a place in the tray.
    ///
    /// # Errors
    /// No such place.
    pub fn club_at(&self, slot: i64) -> Result<&JobClub, AppError> {
        self.job.clubs.iter().find(|c| c.slot == slot).ok_or_else(|| {
            AppError::not_found(
                Noun::Club,
                format!("{slot} of job {}", self.job.number),
                &LookUp::Places { most: self.job.clubs.len() },
            )
        })
    }

    /// The step with a key.
    ///
    /// # Errors
    /// No such step.
    pub(crate) fn step(&self, key: &str) -> Result<&Step, AppError> {
        self.job.step(key).ok_or_else(|| {
            let known = self.job.steps.iter().map(|s| s.key.clone()).collect();
            AppError::not_found(Noun::Step, key, &LookUp::HasSteps { known })
        })
    }

    /// Free parts with the mass to count with; those whose model is gone are left out.
    #[must_use]
    pub fn spares_of<'a>(&self, parts: &'a [Part]) -> Vec<Spare<'a>> {
        parts
            .iter()
            .filter_map(|part| {
                let nominal = match part.kind {
                    PartKind::Grip => self.library.grip(&part.model).ok()?.mass_g,
                    PartKind::TipWeight => self.library.tip_weight(&part.model).ok()?.mass_g,
                    PartKind::Ferrule => self.library.ferrule(&part.model).ok()?.mass_g,
                    PartKind::Adapter => self.library.adapter(&part.model).ok()?.mass_g,
                    // A head that was not weighed cannot be chosen by its mass.
                    PartKind::Head => part.mass_g?,
                    _ => return None,
                };
                Some(Spare { part, mass_g: part.mass_g.unwrap_or(nominal) })
            })
            .collect()
    }

    /// The file after readings of a club have come in that change nothing else but the club's version and what is known of
    /// the scales by them.
    ///
    /// # Errors
    /// What the store says.
    pub(crate) async fn after(
        &self,
        tx: &mut Tx,
        club: &ClubId,
        version: i64,
        new: Vec<Reading>,
    ) -> Result<Self, AppError> {
        let mut after = self.clone();
        if let Some(club) = after.job.clubs.iter_mut().find(|c| c.id == *club) {
            club.version = version;
        }
        after.readings.extend(new);
        after.job = after.job.with_targets_read(&after.readings);
        after.watch = crate::scale_watch::watch_of_job(tx, &after.shop, &after.job, &after.readings).await?;
        after.aimed()
    }

    /// The file once somebody has gone on with something open.
    ///
    /// # Errors
    /// What the store says.
    pub(crate) async fn with_passed(&self, tx: &mut Tx) -> Result<Self, AppError> {
        let events = tx.events(Some(&self.job.id), 10_000).await?;
        Ok(Self { passed: passed_in(&events), ..self.clone() })
    }

    /// Where every club stands, from a belief that the caller has already.
    ///
    /// # Errors
    /// Figures that the belief cannot work with.
    pub fn states_of(&self, believed: &Believed<'_>, now: jiff::Timestamp) -> Result<Vec<ClubState>, AppError> {
        Ok(bench::club_state::bench(believed, self.around(now))?)
    }
}

/// What a job is believed with: a finished one with what the shop knew before it learned from that very job.
async fn learned_for(tx: &mut Tx, job: &Job) -> Result<Arc<Learned>, AppError> {
    match job.state {
        JobState::Finished => Ok(Arc::new(tx.learned_before(&job.id).await?.unwrap_or_default())),
        _ => crate::load_learned(tx).await,
    }
}

/// Who went on with what open, from an entry of the log.
fn passed_in(events: &[store::Event]) -> Vec<Passed> {
    events.iter().filter(|e| e.kind == EventKind::PassedOpen).filter_map(passed_of).collect()
}

fn passed_of(event: &store::Event) -> Option<Passed> {
    let text = |key: &str| event.body.get(key).and_then(|v| v.as_str()).map(str::to_owned);
    Some(Passed {
        club: event.club.clone()?,
        step: text("step")?,
        points: serde_json::from_value(event.body.get("points")?.clone()).ok()?,
        reason: text("reason")?,
        by: event.by.clone(),
        at: event.at,
    })
}

/// A job in a list.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct JobSummary {
    /// Running number.
    pub number: i64,
    /// Who the clubs are built for.
    pub player: String,
    /// When it is due.
    #[schema(value_type = String, format = Date)]
    pub due: jiff::civil::Date,
    /// Where it stands.
    pub state: JobState,
    /// Numbers of its clubs, in the order of the tray.
    pub clubs: Vec<String>,
    /// What sort of club each of them is: the 1 of a wood is the driver. Left out of jobs that are over.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub club_kinds: Vec<ClubKind>,
    /// How many clubs have each step as their next, in the order of the steps.
    pub next_steps: Vec<NextStep>,
    /// Whether a step of any club is done.
    pub begun: bool,
    /// Clubs with a doubted reading.
    pub doubted: Vec<ClubInList>,
    /// When it was finished, where it is and that was noted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub finished_at: Option<jiff::Timestamp>,
}

/// A club of a job in a list.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct ClubInList {
    /// Place in the tray.
    pub slot: i64,
    /// Number or letter of the club: `6`, `PW`.
    pub number: String,
}

/// How many clubs of a job have a step as their next.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct NextStep {
    /// Key of the step.
    pub key: String,
    /// What the builder calls it.
    pub label: String,
    /// How many clubs.
    pub clubs: i64,
    /// Those of them that must wait for their cure, by when they may be done, the first first.
    pub curing: Vec<Curing>,
}

/// Clubs that cure until a time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Curing {
    /// How many.
    pub clubs: i64,
    /// When their next step may be done.
    #[schema(value_type = String, format = DateTime)]
    pub until: jiff::Timestamp,
}

/// A job with where each club stands.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct JobView {
    /// The job as it is kept: its sheet, its clubs and their plans.
    pub job: Job,
    /// Where each club stands, in the order of the tray.
    pub clubs: Vec<ClubState>,
    /// Batches of adhesive that clubs of the job were glued from.
    pub batches: Vec<Batch>,
    /// What is believed of the balance scale after its readings.
    pub scale_shift: ScaleShift,
}

impl App {
    /// A job with where each club stands.
    ///
    /// # Errors
    /// No such job; what the store says.
    pub async fn job_view(&self, number: i64) -> Result<JobView, AppError> {
        let file = self.job_file(number).await?;
        let believed = file.believe()?;
        let clubs = file.states_of(&believed, self.now())?;
        let scale_shift = bench::scale_shift::scale_shift(&believed)?;
        Ok(JobView { clubs, batches: file.batches.clone(), job: file.job.clone(), scale_shift })
    }

    /// All jobs that are not finished or dropped, the earliest due first; or those of one state. Finished ones: the latest
    /// first.
    ///
    /// # Errors
    /// What the store says.
    pub async fn jobs(&self, state: Option<JobState>) -> Result<Vec<JobSummary>, AppError> {
        let mut tx = self.store.read().await?;
        let mut found = Vec::new();
        for state in state.map_or(JobState::UNDER_WAY.to_vec(), |state| vec![state]) {
            if matches!(state, JobState::Finished | JobState::Dropped) {
                found.extend(tx.job_lines(state, None, i64::MAX).await?.into_iter().map(over));
                continue;
            }
            for job in tx.jobs(Some(state)).await? {
                if state == JobState::Open {
                    found.push(waiting(&job));
                    continue;
                }
                let file = self.kept_job_of(&mut tx, job).await?;
                found.push(summary(&file.job, &file.states(self.now())?));
            }
        }
        found.sort_by(|a, b| a.due.cmp(&b.due).then(a.number.cmp(&b.number)));
        Ok(found)
    }

    /// Finished jobs, the highest number first: those below a number, at most `limit`.
    ///
    /// # Errors
    /// What the store says.
    pub async fn finished_jobs(&self, below: Option<i64>, limit: i64) -> Result<Vec<JobLine>, AppError> {
        let mut tx = self.store.read().await?;
        Ok(tx.job_lines(JobState::Finished, below, limit).await?)
    }

    /// Jobs in these states by name only, the earliest due first: for lists to choose from, where nobody asks how far
    /// they are.
    ///
    /// # Errors
    /// What the store says.
    pub async fn job_names(&self, states: &[JobState]) -> Result<Vec<JobLine>, AppError> {
        let mut tx = self.store.read().await?;
        let mut found = Vec::new();
        for state in states {
            found.extend(tx.job_lines(*state, None, i64::MAX).await?);
        }
        found.sort_by(|a, b| {
            let latest_first = b.finished_at.cmp(&a.finished_at);
            latest_first.then(a.due.cmp(&b.due)).then(a.number.cmp(&b.number))
        });
        Ok(found)
    }

    /// Gives a job up: what it holds is free again, what is glued stays used. The readings stay.
    ///
    /// # Errors
    /// No such job; one that is finished; what the store says.
    pub async fn drop_job(&self, number: i64, reason: &str, by: &str) -> Result<(), AppError> {
        let mut tx = self.store.write().await?.signed(by);
        let mut job = JobFile::load(&mut tx, number).await?.job;
        if matches!(job.state, JobState::Finished | JobState::Dropped) {
            return Err(AppError::conflict(JobFault::Already { job: number, state: job.state }));
        }
        crate::need::need_reason(reason)?;
        job.state = JobState::Dropped;
        tx.release_job(&job.id, self.now()).await?;
        tx.save_job(&job).await?;
        self.log(&mut tx, Some(&job.id), None, EventKind::JobDropped, by, serde_json::json!({ "reason": reason }))
            .await?;
        tx.commit().await?;
        self.tell(Some(number), "plan");
        Ok(())
    }

    /// The club that a scanned card stands for: (job number, place in the tray).
    ///
    /// # Errors
    /// No such card; what the store says.
    pub async fn card(&self, code: &str) -> Result<(i64, i64), AppError> {
        let mut tx = self.store.read().await?;
        let missing = || AppError::not_found(Noun::Label, code, &LookUp::Card);
        let (job, club) = tx.club_by_card(code.trim()).await?.ok_or_else(missing)?;
        let job = tx.job(&job).await?.ok_or_else(missing)?;
        let slot = job.club(&club).map(|c| c.slot).ok_or_else(missing)?;
        Ok((job.number, slot))
    }

    /// The record of a job as it stands now.
    ///
    /// # Errors
    /// No such job; what the store says.
    pub async fn record(&self, number: i64) -> Result<Record, AppError> {
        self.job_file(number).await?.record()
    }

    /// The sheet that the player of a job keeps, as the job stands now.
    ///
    /// # Errors
    /// No such job; what the store says.
    pub async fn player_sheet(&self, number: i64) -> Result<PlayerSheet, AppError> {
        let file = self.job_file(number).await?;
        Ok(player_sheet(&file.record()?, &file.library))
    }

    pub(crate) async fn log(
        &self,
        tx: &mut Tx,
        job: Option<&trade::id::JobId>,
        club: Option<&ClubId>,
        kind: EventKind,
        by: &str,
        body: serde_json::Value,
    ) -> Result<(), AppError> {
        tx.append_event(&store::Event {
            id: crate::new_id().as_str().into(),
            at: self.now(),
            by: by.to_owned(),
            job: job.cloned(),
            club: club.cloned(),
            kind,
            body,
        })
        .await?;
        Ok(())
    }

    /// Free parts that could take the place of planned ones, with the mass to count with.
    pub(crate) async fn free_parts(tx: &mut Tx) -> Result<Arc<Vec<Part>>, AppError> {
        Ok(tx.parts_in(PartState::Free).await?)
    }

    /// Those that may go into clubs of a customer, or of nobody: the shop's own, and what that customer brought.
    pub(crate) async fn free_parts_for(tx: &mut Tx, customer: Option<i64>) -> Result<Arc<Vec<Part>>, AppError> {
        let free = Self::free_parts(tx).await?;
        if free.iter().all(|part| part.may_go_to(customer)) {
            return Ok(free);
        }
        Ok(Arc::new(free.iter().filter(|part| part.may_go_to(customer)).cloned().collect()))
    }
}

fn summary(job: &Job, states: &[ClubState]) -> JobSummary {
    let next_steps = job
        .steps
        .iter()
        .filter_map(|step| {
            let next = || states.iter().filter(|s| s.next_step.as_deref() == Some(step.key.as_str()));
            let clubs = next().count();
            let waits = next().filter_map(|s| match s.steps.iter().find(|one| one.key == step.key)?.gate {
                Gate::Waits { until, .. } => Some(until),
                _ => None,
            });
            let mut curing: BTreeMap<jiff::Timestamp, i64> = BTreeMap::new();
            waits.for_each(|until| *curing.entry(until).or_default() += 1);
            (clubs > 0).then(|| NextStep {
                key: step.key.clone(),
                label: step.label.clone(),
                clubs: i64::try_from(clubs).unwrap_or(i64::MAX),
                curing: curing.into_iter().map(|(until, clubs)| Curing { clubs, until }).collect(),
            })
        })
        .collect();
    JobSummary {
        number: job.number,
        player: job.sheet.player.clone(),
        due: job.sheet.due,
        state: job.state,
        clubs: job.clubs.iter().map(|c| c.target.number.clone()).collect(),
        club_kinds: job.clubs.iter().map(|c| c.target.club_kind).collect(),
        next_steps,
        begun: states.iter().flat_map(|s| &s.steps).any(|s| s.status == StepStatus::Done),
        doubted: states
            .iter()
            .filter(|s| s.look == Look::Doubted)
            .map(|s| ClubInList { slot: s.slot, number: s.number.clone() })
            .collect(),
        finished_at: None,
    }
}

/// A job that waits for its plan, as a list shows it: nothing can have been read on a club that has no parts, so the first
/// step is still to come.
fn waiting(job: &Job) -> JobSummary {
    let next_steps = job.steps.first().map(|step| NextStep {
        key: step.key.clone(),
        label: step.label.clone(),
        clubs: i64::try_from(job.clubs.len()).unwrap_or(i64::MAX),
        curing: Vec::new(),
    });
    JobSummary { next_steps: next_steps.into_iter().collect(), ..summary(job, &[]) }
}

/// A job that is over, as a list shows it: nothing is to be done any more.
fn over(line: JobLine) -> JobSummary {
    JobSummary {
        number: line.number,
        player: line.player,
        due: line.due,
        state: line.state,
        clubs: line.clubs,
        club_kinds: Vec::new(),
        next_steps: Vec::new(),
        begun: line.state == JobState::Finished,
        doubted: Vec::new(),
        finished_at: line.finished_at,
    }
}

fact::facts! {
    /// What is refused of a job.
    pub(crate) enum JobFault: "job_fault" {
        Already { job: i64, state: JobState },
    }
}
