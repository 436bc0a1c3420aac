//! What the shop has learned, state after state, and where finished clubs came out.

use crate::column::{Columns, document, finite, parsed, query, time_text};
use crate::error::StoreError;
use crate::finished_club::finished_club;
use crate::learned_row::LearnedRow;
use crate::remembered::texts;
use crate::tx::Tx;
use bench::finished_club::FinishedClub;
use bench::learned::Learned;
use bench::seal::Sealed;
use std::sync::Arc;
use trade::id::JobId;

impl Tx {
    /// What the shop knows now; none where it has learned nothing yet.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn learned(&mut self) -> Result<Option<Arc<Learned>>, StoreError> {
        let Some(row) = self.row(query("SELECT body FROM learned ORDER BY seq DESC LIMIT 1")).await? else {
            return Ok(None);
        };
        self.remembered().learned.of(vec![row.text("body")?], |text| parsed("body", &text[0])).map(Some)
    }

    /// What the shop knew when it had not yet learned from a job; none where it had learned nothing, or where that job
    /// has taught nothing.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn learned_before(&mut self, job: &JobId) -> Result<Option<Learned>, StoreError> {
        let lookup = query(
            "SELECT body FROM learned WHERE seq < (SELECT seq FROM learned WHERE job = $1) ORDER BY seq DESC LIMIT 1",
        );
        let row = self.row(lookup.bind(job.0.clone())).await?;
        row.map(|row| row.body("body")).transpose()
    }

    /// The last states of what the shop knew, at most `limit`, the newest first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn learned_rows(&mut self, limit: i64) -> Result<Arc<Vec<LearnedRow>>, StoreError> {
        // A row never changes and no other will have its identity: the same identities are the same rows.
        let newest = query("SELECT id FROM learned ORDER BY seq DESC LIMIT $1").bind(limit.max(0));
        let ids = texts(&self.rows(newest).await?, "id")?;
        let remembered = self.remembered();
        if let Some(rows) = remembered.learned_rows.known(&ids) {
            return Ok(rows);
        }
        let lookup = query(
            "SELECT id, happened_at, done_by, cause, job, about, reason, body FROM learned ORDER BY seq DESC LIMIT $1",
        );
        let rows = self.rows(lookup.bind(limit.max(0))).await?;
        remembered.learned_rows.of(ids, |_| rows.iter().map(LearnedRow::of).collect())
    }

    /// Appends what the shop knows from now on.
    ///
    /// # Errors
    /// [`StoreError::CodeTaken`] for an identity that is there already or a job that has taught already;
    /// [`StoreError::Missing`] for an unknown job; [`StoreError::NotStorable`] for a figure that is none.
    pub async fn append_learned(&mut self, row: &LearnedRow) -> Result<(), StoreError> {
        if self.any(query("SELECT 1 FROM learned WHERE id = $1").bind(row.id.0.clone())).await? {
            return Err(StoreError::CodeTaken { code: row.id.0.clone() });
        }
        if let Some(job) = &row.job {
            self.job_must_exist(job).await?;
            if self.any(query("SELECT 1 FROM learned WHERE job = $1").bind(job.0.clone())).await? {
                return Err(StoreError::CodeTaken { code: job.0.clone() });
            }
        }
        let body = document("what the shop has learned", &row.learned)?;
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM learned")).await?;
        let insert = query(
            "INSERT INTO learned (id, seq, cause, job, about, reason, done_by, happened_at, body)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)",
        );
        let insert = insert
            .bind(row.id.0.clone())
            .bind(seq)
            .bind(row.cause.key())
            .bind(row.job.as_ref().map(|id| id.0.clone()))
            .bind(row.about.clone())
            .bind(row.reason.clone())
            .bind(row.by.clone())
            .bind(time_text(row.at))
            .bind(body);
        self.change(insert).await?;
        Ok(())
    }

    /// Notes where a finished club came out. What is noted already stays.
    ///
    /// # Errors
    /// [`StoreError::Missing`] for an unknown club; [`StoreError::NotStorable`] for a figure that is none.
    pub async fn note_finished(&mut self, club: &FinishedClub) -> Result<(), StoreError> {
        self.job_of_club(&club.club).await?;
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM finished_club")).await?;
        let insert = query(
            "INSERT INTO finished_club (club, seq, job, job_number, number, head_model, finished_at, target_points,
                 deviation_points, band_points, tolerance_points, verdict)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12) ON CONFLICT (club) DO NOTHING",
        );
        let insert = insert
            .bind(club.club.0.clone())
            .bind(seq)
            .bind(club.job.0.clone())
            .bind(club.job_number)
            .bind(club.number.clone())
            .bind(club.head_model.clone())
            .bind(time_text(club.finished_at))
            .bind(finite("the target", club.target_points)?)
            .bind(finite("the deviation", club.deviation_points)?)
            .bind(finite("the band", club.band_points)?)
            .bind(finite("the tolerance", club.tolerance_points)?)
            .bind(club.verdict.key());
        if self.change(insert).await? > 0 {
            self.seal(&club.job, Sealed::Finished, club.club.as_str()).await?;
            self.seal(&club.job, Sealed::Asked, club.club.as_str()).await?;
        }
        Ok(())
    }

    /// Where finished clubs came out, in the order in which they were finished.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn finished_clubs(&mut self) -> Result<Arc<Vec<FinishedClub>>, StoreError> {
        let newest = self.number(query("SELECT COALESCE(MAX(seq), 0) FROM finished_club")).await?;
        let kept = &self.remembered().finished_clubs;
        let known = kept.known("", newest);
        if let Some((last, clubs)) = &known
            && *last == newest
        {
            return Ok(Arc::clone(clubs));
        }
        let last = known.as_ref().map_or(i64::MIN, |(last, _)| *last);
        let lookup = query(
            "SELECT club, job, job_number, number, head_model, finished_at, target_points, deviation_points,
                 band_points, tolerance_points, verdict FROM finished_club WHERE seq > $1 ORDER BY seq",
        );
        let more = self.rows(lookup.bind(last)).await?.iter().map(finished_club).collect::<Result<_, _>>()?;
        Ok(kept.grown("", newest, known, more, self.writing()))
    }
}
