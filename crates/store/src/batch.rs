//! Batches of adhesive.

use crate::column::{Columns, Query, Row, document, finite, query, time_text};
use crate::error::StoreError;
use crate::job::Numbered;
use crate::tx::Tx;
use bench::glue::Batch;
use bench::seal::Sealed;
use fact::Told;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use trade::error::Noun;
use trade::id::BatchId;
use trade::id::ClubId;
use trade::id::JobId;

/// The figures of a batch as they came in; see the same of a part.
#[derive(Debug, PartialEq, Serialize, Deserialize)]
struct Given {
    bead_share_percent: f64,
    room_c: f64,
    resin_g: f64,
    hardener_g: f64,
    beads_g: f64,
    /// Batches of before this was asked have none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    cold_reason: Option<String>,
}

/// Zero of the Celsius scale in kelvin, exact by definition (SI brochure, 9th edition, 2.3.1).
const ZERO_C_IN_K: f64 = 273.15;

macro_rules! batch_columns {
    () => {
        "SELECT b.id, b.number, b.adhesive, b.lot, b.given, b.mixed_at, b.mixed_by, t.why AS taken_back
         FROM batch b LEFT JOIN batch_taken_back t ON t.batch = b.id "
    };
}

impl Tx {
    /// The number for the next batch. It stays free only until this transaction ends.
    ///
    /// # Errors
    /// The database failed.
    pub async fn next_batch_number(&mut self) -> Result<i64, StoreError> {
        self.next(query("SELECT COALESCE(MAX(number), 0) + 1 FROM batch")).await
    }

    /// Saves a batch with the clubs glued from it. With a `request_key`, the same request that comes again is found by
    /// [`Tx::batch_by_request_key`].
    ///
    /// # Errors
    /// [`StoreError::CodeTaken`] when its number or identity is there already; [`StoreError::Missing`] for an unknown
    /// adhesive or club; [`StoreError::NotStorable`] for a figure that is no number.
    pub async fn insert_batch(&mut self, batch: &Batch, request_key: Option<&str>) -> Result<(), StoreError> {
        let what = format!("batch {}", batch.number);
        let same = query("SELECT 1 FROM batch WHERE id = $1 OR number = $2");
        if self.any(same.bind(batch.id.0.clone()).bind(batch.number)).await? {
            return Err(StoreError::CodeTaken { code: what });
        }
        self.model_code(&batch.adhesive).await?;
        for club in &batch.clubs {
            self.job_of_club(club).await?;
        }
        let given = Given {
            bead_share_percent: batch.bead_share_percent,
            room_c: batch.room_c,
            resin_g: batch.resin_g,
            hardener_g: batch.hardener_g,
            beads_g: batch.beads_g,
            cold_reason: batch.cold_reason.clone(),
        };
        let insert = query(
            "INSERT INTO batch (id, number, adhesive, lot, bead_mass_fraction, room_k, resin_kg, hardener_kg, beads_kg,
                 given, mixed_at, mixed_by, request_key)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13)",
        );
        let insert = insert
            .bind(batch.id.0.clone())
            .bind(batch.number)
            .bind(batch.adhesive.clone())
            .bind(batch.lot.clone())
            .bind(finite(&what, batch.bead_share_percent)? / 100.0)
            .bind(finite(&what, batch.room_c)? + ZERO_C_IN_K)
            .bind(finite(&what, batch.resin_g)? / 1000.0)
            .bind(finite(&what, batch.hardener_g)? / 1000.0)
            .bind(finite(&what, batch.beads_g)? / 1000.0)
            .bind(document(&what, &given)?)
            .bind(time_text(batch.mixed_at))
            .bind(batch.by.clone())
            .bind(request_key.map(str::to_owned));
        self.change(insert).await?;
        for (place, club) in (1_i64..).zip(&batch.clubs) {
            let glued = query("INSERT INTO batch_club (batch, place, club) VALUES ($1, $2, $3)");
            self.change(glued.bind(batch.id.0.clone()).bind(place).bind(club.0.clone())).await?;
        }
        for job in self.jobs_of_batch(batch.id.as_str()).await? {
            self.seal(&job, Sealed::Batch, batch.id.as_str()).await?;
            self.seal(&job, Sealed::Glued, batch.id.as_str()).await?;
        }
        Ok(())
    }

    /// The batch with this identity.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn batch(&mut self, id: &BatchId) -> Result<Option<Batch>, StoreError> {
        let batches = query(concat!(batch_columns!(), "WHERE b.id = $1")).bind(id.0.clone());
        let clubs = query("SELECT batch, club FROM batch_club WHERE batch = $1 ORDER BY place").bind(id.0.clone());
        Ok(self.with_clubs(batches, clubs).await?.pop())
    }

    /// The batch with this number.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn batch_by_number(&mut self, number: i64) -> Result<Option<Batch>, StoreError> {
        self.batch_found(query("SELECT id FROM batch WHERE number = $1").bind(number)).await
    }

    /// The batch that was kept for a request key.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn batch_by_request_key(&mut self, request_key: &str) -> Result<Option<Batch>, StoreError> {
        self.batch_found(query("SELECT id FROM batch WHERE request_key = $1").bind(request_key.to_owned())).await
    }

    async fn batch_found(&mut self, id: Query) -> Result<Option<Batch>, StoreError> {
        match self.row(id).await? {
            Some(row) => self.batch(&BatchId(row.text("id")?)).await,
            None => Ok(None),
        }
    }

    /// Notes beside a batch that it was entered wrongly; the batch itself stays.
    ///
    /// # Errors
    /// [`StoreError::Missing`]; [`StoreError::AlreadyTakenBack`].
    pub async fn take_back_batch(
        &mut self,
        id: &BatchId,
        why: &str,
        by: &str,
        at: Timestamp,
    ) -> Result<(), StoreError> {
        let batch = self.batch(id).await?;
        let batch = batch.ok_or_else(|| StoreError::Missing { what: Noun::Batch, name: id.0.clone() })?;
        if let Some(why) = batch.taken_back {
            return Err(StoreError::AlreadyTakenBack { why: Told::verbatim(why) });
        }
        let note = query("INSERT INTO batch_taken_back (batch, why, said_by, said_at) VALUES ($1, $2, $3, $4)");
        let note = note.bind(id.0.clone()).bind(why.to_owned()).bind(by.to_owned()).bind(time_text(at));
        self.change(note).await?;
        for job in self.jobs_of_batch(id.as_str()).await? {
            self.seal(&job, Sealed::BatchTakenBack, id.as_str()).await?;
        }
        Ok(())
    }

    /// All batches, or those that a club of a job was glued from, by number.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn batches(&mut self, job: Option<&JobId>) -> Result<Vec<Batch>, StoreError> {
        let Some(job) = job else {
            let batches = query(concat!(batch_columns!(), "ORDER BY b.number"));
            return self.with_clubs(batches, query("SELECT batch, club FROM batch_club ORDER BY place")).await;
        };
        let batches = query(concat!(
            batch_columns!(),
            "WHERE b.id IN (SELECT g.batch FROM batch_club g JOIN job_club c ON c.id = g.club WHERE c.job = $1)
             ORDER BY b.number"
        ));
        let clubs = query(
            "SELECT batch, club FROM batch_club WHERE batch IN
                 (SELECT g.batch FROM batch_club g JOIN job_club c ON c.id = g.club WHERE c.job = $1)
             ORDER BY place",
        );
        self.with_clubs(batches.bind(job.0.clone()), clubs.bind(job.0.clone())).await
    }

    /// The batches mixed at or after a time, by number.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn batches_since(&mut self, since: Timestamp) -> Result<Vec<Batch>, StoreError> {
        // In the order of the index that finds the few; in that of the numbers all would be looked at.
        let batches = query(concat!(batch_columns!(), "WHERE b.mixed_at >= $1 ORDER BY b.mixed_at"));
        let clubs = query(
            "SELECT batch, club FROM batch_club WHERE batch IN (SELECT id FROM batch WHERE mixed_at >= $1)
             ORDER BY place",
        );
        let mut found = self.with_clubs(batches.bind(time_text(since)), clubs.bind(time_text(since))).await?;
        found.sort_by_key(|b| b.number);
        Ok(found)
    }

    /// The clubs glued from batches that were mixed at or after a time, by batch: job number and number of the club, in
    /// the order of jobs and trays.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn clubs_glued_since(
        &mut self,
        since: Timestamp,
    ) -> Result<BTreeMap<BatchId, Vec<(i64, String)>>, StoreError> {
        let lookup = query(
            "SELECT g.batch, j.number, c.target_body FROM batch_club g
                 JOIN job_club c ON c.id = g.club JOIN job j ON j.id = c.job
             WHERE g.batch IN (SELECT id FROM batch WHERE mixed_at >= $1) ORDER BY j.number, c.slot",
        );
        let mut found: BTreeMap<BatchId, Vec<(i64, String)>> = BTreeMap::new();
        for row in self.rows(lookup.bind(time_text(since))).await? {
            let club: Numbered = row.body("target_body")?;
            found.entry(BatchId(row.text("batch")?)).or_default().push((row.whole("number")?, club.number));
        }
        Ok(found)
    }

    async fn with_clubs(&mut self, batches: Query, clubs: Query) -> Result<Vec<Batch>, StoreError> {
        let mut clubs_of: BTreeMap<String, Vec<ClubId>> = BTreeMap::new();
        let batches = self.rows(batches).await?;
        for row in self.rows(clubs).await? {
            clubs_of.entry(row.text("batch")?).or_default().push(ClubId(row.text("club")?));
        }
        batches.iter().map(|row| batch_of(row, &mut clubs_of)).collect()
    }
}

fn batch_of(row: &Row, clubs_of: &mut BTreeMap<String, Vec<ClubId>>) -> Result<Batch, StoreError> {
    let id = row.text("id")?;
    let given: Given = row.body("given")?;
    Ok(Batch {
        clubs: clubs_of.remove(&id).unwrap_or_default(),
        id: BatchId(id),
        number: row.whole("number")?,
        adhesive: row.text("adhesive")?,
        lot: row.text("lot")?,
        bead_share_percent: given.bead_share_percent,
        room_c: given.room_c,
        resin_g: given.resin_g,
        hardener_g: given.hardener_g,
        beads_g: given.beads_g,
        cold_reason: given.cold_reason,
        mixed_at: row.time("mixed_at")?,
        by: row.text("mixed_by")?,
        taken_back: row.maybe_text("taken_back")?,
    })
}
