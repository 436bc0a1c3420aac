//! Jobs and their clubs.

use crate::column::{Columns, Query, Row, document, key, query, time_text};
use crate::error::StoreError;
use crate::error::Stored;
use crate::model::{UsedBy, models_of_club, models_of_sheet};
use crate::tx::Tx;
use jiff::Timestamp;
use jiff::civil::Date;
use serde::Deserialize;
use std::collections::BTreeMap;
use trade::error::Noun;
use trade::id::{ClubId, JobId, SheetId};
use trade::job::{Job, JobClub, JobState};

/// A job as a list shows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobLine {
    /// Running number.
    pub number: i64,
    /// Who the clubs are built for.
    pub player: String,
    /// When it is due.
    pub due: Date,
    /// Where it stands.
    pub state: JobState,
    /// Numbers of its clubs, in the order of the tray.
    pub clubs: Vec<String>,
    /// When it was finished, where it is and that was noted.
    pub finished_at: Option<Timestamp>,
}

/// Of a club's target only its number: most lists ask for nothing else.
#[derive(Deserialize)]
pub(crate) struct Numbered {
    pub number: String,
}

impl Tx {
    /// The number for the next job. It stays free only until this transaction ends.
    ///
    /// # Errors
    /// The database failed.
    pub async fn next_job_number(&mut self) -> Result<i64, StoreError> {
        self.next(query("SELECT COALESCE(MAX(number), 0) + 1 FROM job")).await
    }

    /// Saves a new job with its clubs, with the versions that they carry.
    ///
    /// # Errors
    /// [`StoreError::CodeTaken`] when its number, its identity or a card is there already; [`StoreError::Missing`]
    /// when its sheet is not; [`StoreError::NotStorable`] for two clubs in one slot or a figure that is no number.
    pub async fn insert_job(&mut self, job: &Job) -> Result<(), StoreError> {
        let what = format!("job {}", job.number);
        self.check_new_job(job, &what).await?;
        let insert = query(
            "INSERT INTO job (id, number, sheet_id, player, customer, due, state, sheet_body, steps_body, made_at, version)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)",
        );
        let insert = insert
            .bind(job.id.0.clone())
            .bind(job.number)
            .bind(job.sheet_id.0.clone())
            .bind(job.sheet.player.clone())
            .bind(job.sheet.customer)
            .bind(job.sheet.due.to_string())
            .bind(job.state.key())
            .bind(document(&what, &job.sheet)?)
            .bind(document(&what, &job.steps)?)
            .bind(time_text(job.made_at))
            .bind(job.version);
        self.change(insert).await?;
        for club in &job.clubs {
            let insert = query(
                "INSERT INTO job_club (id, job, slot, card, card_key, target_body, plan_body, version, work_body, made_of)
                 VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10)",
            );
            let insert = insert
                .bind(club.id.0.clone())
                .bind(job.id.0.clone())
                .bind(club.slot)
                .bind(club.card.clone())
                .bind(key(&club.card))
                .bind(document(&club.card, &club.target)?)
                .bind(club.plan.as_ref().map(|plan| document(&club.card, plan)).transpose()?)
                .bind(club.version)
                .bind(club.work.as_ref().map(|work| document(&club.card, work)).transpose()?)
                .bind(club.work.as_ref().map(|work| work.club.0.clone()));
            self.change(insert).await?;
        }
        let models = models_of_sheet(&job.sheet).chain(job.clubs.iter().flat_map(|c| models_of_club(&c.target)));
        self.add_model_uses(UsedBy::Job, job.id.as_str(), models).await
    }

    async fn check_new_job(&mut self, job: &Job, what: &str) -> Result<(), StoreError> {
        let same = query("SELECT 1 FROM job WHERE id = $1 OR number = $2").bind(job.id.0.clone()).bind(job.number);
        if self.any(same).await? {
            return Err(StoreError::CodeTaken { code: what.to_owned() });
        }
        if !self.any(query("SELECT 1 FROM sheet WHERE id = $1").bind(job.sheet_id.0.clone())).await? {
            return Err(StoreError::Missing { what: Noun::Sheet, name: job.sheet_id.0.clone() });
        }
        for (i, club) in job.clubs.iter().enumerate() {
            let before = &job.clubs[..i];
            if before.iter().any(|other| other.slot == club.slot) {
                return Err(StoreError::NotStorable {
                    what: what.to_owned(),
                    problem: format!("two clubs are in slot {}", club.slot),
                });
            }
            let same = query("SELECT 1 FROM job_club WHERE id = $1 OR card_key = $2");
            let twice = before.iter().any(|other| other.id == club.id || key(&other.card) == key(&club.card));
            if twice || self.any(same.bind(club.id.0.clone()).bind(key(&club.card))).await? {
                return Err(StoreError::CodeTaken { code: club.card.clone() });
            }
        }
        Ok(())
    }

    /// Saves the job itself (state, steps, sheet) over the version that it was loaded at; its clubs are saved by
    /// [`Tx::save_club`]. Returns the new version.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when another change came first; [`StoreError::Missing`]; [`StoreError::NotStorable`].
    pub async fn save_job(&mut self, job: &Job) -> Result<i64, StoreError> {
        let what = format!("job {}", job.number);
        let update = query(
            "UPDATE job SET player = $1, customer = $2, due = $3, state = $4, sheet_body = $5, steps_body = $6,
                 version = version + 1
             WHERE id = $7 AND version = $8",
        );
        let update = update
            .bind(job.sheet.player.clone())
            .bind(job.sheet.customer)
            .bind(job.sheet.due.to_string())
            .bind(job.state.key())
            .bind(document(&what, &job.sheet)?)
            .bind(document(&what, &job.steps)?)
            .bind(job.id.0.clone())
            .bind(job.version);
        if self.change(update).await? == 0 {
            let saved = self.row(query("SELECT version FROM job WHERE id = $1").bind(job.id.0.clone())).await?;
            return Err(match saved {
                Some(saved) => {
                    let what = Stored::Job { job: job.number };
                    StoreError::Stale { what, saved_version: saved.whole("version")? }
                }
                None => StoreError::Missing { what: Noun::Job, name: job.number.to_string() },
            });
        }
        self.add_model_uses(UsedBy::Job, job.id.as_str(), models_of_sheet(&job.sheet)).await?;
        Ok(job.version + 1)
    }

    /// Saves target and plan of a club over the version that it was loaded at. Returns the new version.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when a reading or another change came first; [`StoreError::Missing`] when the job has no
    /// such club; [`StoreError::NotStorable`].
    pub async fn save_club(&mut self, club: &JobClub, job: &JobId) -> Result<i64, StoreError> {
        let target = document(&club.card, &club.target)?;
        let plan = club.plan.as_ref().map(|plan| document(&club.card, plan)).transpose()?;
        let version = self.touch_club(&club.id, job, Some(club.version)).await?;
        let update = query("UPDATE job_club SET target_body = $1, plan_body = $2 WHERE id = $3");
        self.change(update.bind(target).bind(plan).bind(club.id.0.clone())).await?;
        self.seal_asked_again(job, club.id.as_str()).await?;
        self.add_model_uses(UsedBy::Job, job.as_str(), models_of_club(&club.target)).await?;
        Ok(version)
    }

    /// The job with this identity, its clubs in the order of the tray.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn job(&mut self, id: &JobId) -> Result<Option<Job>, StoreError> {
        let jobs = query(concat!("SELECT ", job_columns!(), " FROM job WHERE id = $1")).bind(id.0.clone());
        let clubs = query(concat!("SELECT ", club_columns!(), " FROM job_club c WHERE c.job = $1 ORDER BY c.slot"));
        Ok(self.assemble(jobs, clubs.bind(id.0.clone())).await?.pop())
    }

    /// The job with this number.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn job_by_number(&mut self, number: i64) -> Result<Option<Job>, StoreError> {
        match self.row(query("SELECT id FROM job WHERE number = $1").bind(number)).await? {
            Some(row) => self.job(&JobId(row.text("id")?)).await,
            None => Ok(None),
        }
    }

    /// All jobs, or those in a state, by number.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn jobs(&mut self, state: Option<JobState>) -> Result<Vec<Job>, StoreError> {
        let Some(state) = state else {
            let jobs = query(concat!("SELECT ", job_columns!(), " FROM job ORDER BY number"));
            let clubs = query(concat!("SELECT ", club_columns!(), " FROM job_club c ORDER BY c.slot"));
            return self.assemble(jobs, clubs).await;
        };
        let jobs = query(concat!("SELECT ", job_columns!(), " FROM job WHERE state = $1 ORDER BY number"));
        let clubs = query(concat!(
            "SELECT ",
            club_columns!(),
            " FROM job_club c JOIN job j ON j.id = c.job WHERE j.state = $1 ORDER BY c.slot"
        ));
        self.assemble(jobs.bind(state.key()), clubs.bind(state.key())).await
    }

    /// Jobs of a state as a list shows them, the highest number first: those below a number, at most `limit`.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn job_lines(
        &mut self,
        state: JobState,
        below: Option<i64>,
        limit: i64,
    ) -> Result<Vec<JobLine>, StoreError> {
        let jobs = query(
            "SELECT id, number, player, due, state,
                 (SELECT MAX(f.finished_at) FROM finished_club f WHERE f.job = job.id) AS finished_at
             FROM job WHERE state = $1 AND number < $2 ORDER BY number DESC LIMIT $3",
        );
        let jobs = jobs.bind(state.key()).bind(below.unwrap_or(i64::MAX)).bind(limit.max(0));
        let rows = self.rows(jobs).await?;
        let Some(lowest) = rows.last() else { return Ok(Vec::new()) };
        let (lowest, highest) = (lowest.whole("number")?, rows[0].whole("number")?);
        let clubs = query(
            "SELECT c.job, c.target_body FROM job j JOIN job_club c ON c.job = j.id
             WHERE j.state = $1 AND j.number >= $2 AND j.number <= $3 ORDER BY c.slot",
        );
        let mut clubs_of: BTreeMap<String, Vec<String>> = BTreeMap::new();
        for row in self.rows(clubs.bind(state.key()).bind(lowest).bind(highest)).await? {
            let club: Numbered = row.body("target_body")?;
            clubs_of.entry(row.text("job")?).or_default().push(club.number);
        }
        rows.iter()
            .map(|row| {
                Ok(JobLine {
                    number: row.whole("number")?,
                    player: row.text("player")?,
                    due: row.day("due")?,
                    state: row.word("state", JobState::from_key)?,
                    clubs: clubs_of.remove(&row.text("id")?).unwrap_or_default(),
                    finished_at: row.maybe_time("finished_at")?,
                })
            })
            .collect()
    }

    /// How many jobs are in a state.
    ///
    /// # Errors
    /// The database failed.
    pub async fn count_jobs(&mut self, state: JobState) -> Result<i64, StoreError> {
        self.number(query("SELECT COUNT(*) FROM job WHERE state = $1").bind(state.key())).await
    }

    /// Who a job's clubs are built for, and how far it is.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn job_name(&mut self, number: i64) -> Result<Option<(String, JobState)>, StoreError> {
        let row = self.row(query("SELECT player, state FROM job WHERE number = $1").bind(number)).await?;
        row.map(|row| Ok((row.text("player")?, row.word("state", JobState::from_key)?))).transpose()
    }

    /// The identity of the job with a running number.
    ///
    /// # Errors
    /// The database failed.
    pub async fn job_id(&mut self, number: i64) -> Result<Option<JobId>, StoreError> {
        let row = self.row(query("SELECT id FROM job WHERE number = $1").bind(number)).await?;
        row.map(|row| Ok(JobId(row.text("id")?))).transpose()
    }

    /// The running number of a job.
    ///
    /// # Errors
    /// The database failed.
    pub async fn job_number(&mut self, id: &JobId) -> Result<Option<i64>, StoreError> {
        let row = self.row(query("SELECT number FROM job WHERE id = $1").bind(id.0.clone())).await?;
        row.map(|row| row.whole("number")).transpose()
    }

    /// Finished jobs of which no club was noted when they were finished.
    ///
    /// # Errors
    /// The database failed.
    pub async fn finished_without_note(&mut self) -> Result<Vec<i64>, StoreError> {
        let lookup = query(
            "SELECT number FROM job WHERE state = $1
                 AND NOT EXISTS (SELECT 1 FROM finished_club f WHERE f.job = job.id) ORDER BY number",
        );
        let rows = self.rows(lookup.bind(JobState::Finished.key())).await?;
        rows.iter().map(|row| row.whole("number")).collect()
    }

    /// Joins the rows of jobs with the rows of their clubs, both in their order.
    async fn assemble(&mut self, jobs: Query, clubs: Query) -> Result<Vec<Job>, StoreError> {
        let mut clubs_of: BTreeMap<String, Vec<JobClub>> = BTreeMap::new();
        let mut assembled = Vec::new();
        let jobs = self.rows(jobs).await?;
        for row in self.rows(clubs).await? {
            clubs_of.entry(row.text("job")?).or_default().push(club_of(&row)?);
        }
        for row in jobs {
            let id = row.text("id")?;
            let clubs = clubs_of.remove(&id).unwrap_or_default();
            assembled.push(Job {
                id: JobId(id),
                number: row.whole("number")?,
                sheet_id: SheetId(row.text("sheet_id")?),
                sheet: row.body("sheet_body")?,
                state: row.word("state", JobState::from_key)?,
                steps: row.body("steps_body")?,
                made_at: row.time("made_at")?,
                clubs,
                version: row.whole("version")?,
            });
        }
        Ok(assembled)
    }

    /// The club whose card was scanned or typed. Capitals do not matter.
    ///
    /// # Errors
    /// The database failed.
    pub async fn club_by_card(&mut self, card: &str) -> Result<Option<(JobId, ClubId)>, StoreError> {
        let row = self.row(query("SELECT job, id FROM job_club WHERE card_key = $1").bind(key(card))).await?;
        row.map(|row| Ok((JobId(row.text("job")?), ClubId(row.text("id")?)))).transpose()
    }

    /// Counts the version of a club up, where it is the expected one. Returns the new version.
    pub(crate) async fn touch_club(
        &mut self,
        club: &ClubId,
        job: &JobId,
        expected: Option<i64>,
    ) -> Result<i64, StoreError> {
        let row = query("SELECT card, version FROM job_club WHERE id = $1 AND job = $2");
        let Some(row) = self.row(row.bind(club.0.clone()).bind(job.0.clone())).await? else {
            return Err(StoreError::Missing { what: Noun::ClubOfJob, name: club.0.clone() });
        };
        let saved_version = row.whole("version")?;
        let stale = |saved_version| -> Result<StoreError, StoreError> {
            Ok(StoreError::Stale { what: Stored::Club { card: row.text("card")? }, saved_version })
        };
        if expected.is_some_and(|expected| expected != saved_version) {
            return Err(stale(saved_version)?);
        }
        // Again in the change itself: even without the lock on writers only one of two can win.
        let bump = query("UPDATE job_club SET version = version + 1 WHERE id = $1 AND version = $2");
        if self.change(bump.bind(club.0.clone()).bind(saved_version)).await? == 0 {
            return Err(stale(saved_version + 1)?);
        }
        Ok(saved_version + 1)
    }

    pub(crate) async fn job_must_exist(&mut self, job: &JobId) -> Result<(), StoreError> {
        if self.any(query("SELECT 1 FROM job WHERE id = $1").bind(job.0.clone())).await? {
            Ok(())
        } else {
            Err(StoreError::Missing { what: Noun::Job, name: job.0.clone() })
        }
    }

    /// The job that a club belongs to.
    ///
    /// # Errors
    /// [`StoreError::Missing`].
    pub async fn job_of_club(&mut self, club: &ClubId) -> Result<JobId, StoreError> {
        match self.row(query("SELECT job FROM job_club WHERE id = $1").bind(club.0.clone())).await? {
            Some(row) => Ok(JobId(row.text("job")?)),
            None => Err(StoreError::Missing { what: Noun::Club, name: club.0.clone() }),
        }
    }

    pub(crate) async fn club_must_be_of(&mut self, club: &ClubId, job: &JobId) -> Result<(), StoreError> {
        if &self.job_of_club(club).await? == job {
            Ok(())
        } else {
            Err(StoreError::Missing { what: Noun::ClubOfJob, name: club.0.clone() })
        }
    }
}

macro_rules! job_columns {
    () => {
        "id, number, sheet_id, state, sheet_body, steps_body, made_at, version"
    };
}
macro_rules! club_columns {
    () => {
        "c.id, c.job, c.slot, c.card, c.target_body, c.work_body, c.plan_body, c.version"
    };
}
use {club_columns, job_columns};

fn club_of(row: &Row) -> Result<JobClub, StoreError> {
    Ok(JobClub {
        id: ClubId(row.text("id")?),
        slot: row.whole("slot")?,
        card: row.text("card")?,
        target: row.body("target_body")?,
        work: row.maybe_body("work_body")?,
        plan: row.maybe_body("plan_body")?,
        version: row.whole("version")?,
    })
}
