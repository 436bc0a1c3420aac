//! The lives of parts: appended to, never changed.

use crate::column::{Columns, Query, document, kept, query, time_text};
use crate::error::StoreError;
use crate::tx::Tx;
use fact::Told;
use jiff::Timestamp;
use sqlx::AssertSqlSafe;
use std::collections::BTreeMap;
use trade::error::Noun;
use trade::id::{ClubId, JobId, PartId};
use trade::life::{FigureChange, LifeEntry, LifeStep, figures_of};
use trade::part::Part;
use trade::sheet::SheetClub;

/// An entry to be appended to the life of a part. Who it is by is said once for the transaction, by [`Tx::signed`].
#[derive(Debug, Clone, Copy)]
pub struct LifeNote<'a> {
    /// Identity of the part that it happened to.
    pub part: &'a PartId,
    /// What happened.
    pub step: LifeStep,
    /// The job that it has to do with.
    pub job: Option<&'a JobId>,
    /// The club that it has to do with.
    pub club: Option<&'a ClubId>,
    /// Figures before and after.
    pub figures: &'a [FigureChange],
    /// Why.
    pub reason: Option<&'a Told>,
}

impl Tx {
    /// Appends an entry to the life of a part.
    ///
    /// # Errors
    /// [`StoreError::Missing`] for an unknown part, job or club; [`StoreError::NotStorable`] for a figure that is none.
    pub async fn append_life(&mut self, note: LifeNote<'_>, now: Timestamp) -> Result<(), StoreError> {
        if !self.any(query("SELECT 1 FROM part WHERE id = $1").bind(note.part.0.clone())).await? {
            return Err(StoreError::Missing { what: Noun::Part, name: note.part.0.clone() });
        }
        if let Some(job) = note.job {
            self.job_must_exist(job).await?;
        }
        if let Some(club) = note.club {
            self.job_of_club(club).await?;
        }
        self.write_life(note, now).await
    }

    /// As [`Self::append_life`], for what is known to be there.
    pub(crate) async fn write_life(&mut self, note: LifeNote<'_>, now: Timestamp) -> Result<(), StoreError> {
        let figures = document("the figures of a part", &note.figures.to_vec())?;
        let reason = note.reason.map(|reason| kept("the reason of a change", reason)).transpose()?.unwrap_or_default();
        let seq = self.next_life().await?;
        let insert = query(
            "INSERT INTO part_life (seq, part, step, job, club, figures, reason, done_by, happened_at)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)",
        );
        let insert = insert
            .bind(seq)
            .bind(note.part.0.clone())
            .bind(note.step.key())
            .bind(note.job.map(|id| id.0.clone()))
            .bind(note.club.map(|id| id.0.clone()))
            .bind(figures)
            .bind(reason)
            .bind(self.by().to_owned())
            .bind(time_text(now));
        self.change(insert).await?;
        Ok(())
    }

    /// The first entry of new parts, as many as one statement takes.
    pub(crate) async fn write_came_in(&mut self, parts: &[Part], now: Timestamp) -> Result<(), StoreError> {
        let mut sql =
            String::from("INSERT INTO part_life (seq, part, step, figures, reason, done_by, happened_at) VALUES ");
        for i in 0..parts.len() {
            let from = i * 4;
            // A list says nothing else of each than that it came in.
            sql.push_str(&format!(
                "{}(${}, ${}, 'came_in', ${}, '', ${}, '{}')",
                if i == 0 { "" } else { ", " },
                from + 1,
                from + 2,
                from + 3,
                from + 4,
                time_text(now)
            ));
        }
        let seq = self.next_life().await?;
        let mut insert: Query = query(AssertSqlSafe(sql));
        for (seq, part) in (seq..).zip(parts) {
            let figures = document(&format!("the part {}", part.code), &figures_of(part))?;
            insert = insert.bind(seq).bind(part.id.0.clone()).bind(figures).bind(self.by().to_owned());
        }
        if !parts.is_empty() {
            self.change(insert).await?;
        }
        Ok(())
    }

    async fn next_life(&mut self) -> Result<i64, StoreError> {
        self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM part_life")).await
    }

    /// The life of a part, the oldest entry first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn life(&mut self, part: &PartId) -> Result<Vec<LifeEntry>, StoreError> {
        let lookup = query(
            "SELECT l.step, l.figures, l.reason, l.done_by, l.happened_at, j.number, c.slot, c.target_body
             FROM part_life l LEFT JOIN job j ON j.id = l.job LEFT JOIN job_club c ON c.id = l.club
             WHERE l.part = $1 ORDER BY l.seq",
        );
        let rows = self.rows(lookup.bind(part.0.clone())).await?;
        rows.iter()
            .map(|row| {
                Ok(LifeEntry {
                    step: row.word("step", LifeStep::from_key)?,
                    job: row.maybe_whole("number")?,
                    slot: row.maybe_whole("slot")?,
                    club: row.maybe_body::<SheetClub>("target_body")?.map(|target| target.number),
                    figures: row.body("figures")?,
                    reason: row.maybe_told("reason")?,
                    by: row.text("done_by")?,
                    at: row.time("happened_at")?,
                })
            })
            .collect()
    }

    /// How many pieces of each counted bulk are held for clubs, by the identity of the bulk.
    ///
    /// # Errors
    /// The database failed.
    pub async fn bulk_held(&mut self) -> Result<BTreeMap<String, i64>, StoreError> {
        let lookup = query("SELECT part, COUNT(*) AS pieces FROM part_hold WHERE used = 0 GROUP BY part");
        let rows = self.rows(lookup).await?;
        rows.iter().map(|row| Ok((row.text("part")?, row.whole("pieces")?))).collect()
    }
}
