//! The log of what was done, appended to and never changed.

use crate::column::{Columns, Row, query, time_text};
use crate::error::StoreError;
use crate::tx::Tx;
use bench::seal::Sealed;
use jiff::Timestamp;
use trade::event_kind::EventKind;
use trade::id::{ClubId, EventId, JobId};

/// An entry of the log.
#[derive(Debug, Clone, PartialEq)]
pub struct Event {
    /// Identity.
    pub id: EventId,
    /// When it happened.
    pub at: Timestamp,
    /// Who did it.
    pub by: String,
    /// The job that it is about.
    pub job: Option<JobId>,
    /// The club that it is about.
    pub club: Option<ClubId>,
    /// What sort of event.
    pub kind: EventKind,
    /// Its details.
    pub body: serde_json::Value,
}

impl Tx {
    /// Appends an entry to the log.
    ///
    /// # Errors
    /// [`StoreError::CodeTaken`] when its identity is there already; [`StoreError::Missing`] for an unknown job or
    /// club.
    pub async fn append_event(&mut self, event: &Event) -> Result<(), StoreError> {
        if self.any(query("SELECT 1 FROM event WHERE id = $1").bind(event.id.0.clone())).await? {
            return Err(StoreError::CodeTaken { code: event.id.0.clone() });
        }
        if let Some(job) = &event.job {
            self.job_must_exist(job).await?;
        }
        if let Some(club) = &event.club {
            self.job_of_club(club).await?;
        }
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM event")).await?;
        let insert = query(
            "INSERT INTO event (id, seq, happened_at, done_by, job, club, kind, body)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
        );
        let insert = insert
            .bind(event.id.0.clone())
            .bind(seq)
            .bind(time_text(event.at))
            .bind(event.by.clone())
            .bind(event.job.as_ref().map(|id| id.0.clone()))
            .bind(event.club.as_ref().map(|id| id.0.clone()))
            .bind(event.kind.key().to_owned())
            .bind(event.body.to_string());
        self.change(insert).await?;
        if let Some(job) = &event.job {
            self.seal(job, Sealed::Event, event.id.as_str()).await?;
        }
        Ok(())
    }

    /// Whether the log has an entry of a kind.
    ///
    /// # Errors
    /// The database failed.
    pub async fn has_event(&mut self, kind: &EventKind) -> Result<bool, StoreError> {
        self.any(query("SELECT 1 FROM event WHERE kind = $1 LIMIT 1").bind(kind.key().to_owned())).await
    }

    /// The last entry of the log of these kinds.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn last_event_of(&mut self, kinds: &[EventKind]) -> Result<Option<Event>, StoreError> {
        let mut last: Option<(i64, Event)> = None;
        for kind in kinds {
            let lookup = query(
                "SELECT seq, id, happened_at, done_by, job, club, kind, body FROM event WHERE kind = $1
                 ORDER BY seq DESC LIMIT 1",
            );
            if let Some(row) = self.row(lookup.bind(kind.key().to_owned())).await? {
                let seq = row.whole("seq")?;
                if last.as_ref().is_none_or(|(other, _)| seq > *other) {
                    last = Some((seq, event_of(&row)?));
                }
            }
        }
        Ok(last.map(|(_, event)| event))
    }

    /// The last entries of the log of one kind, at most `limit`, the newest first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn events_of(&mut self, kind: &EventKind, limit: i64) -> Result<Vec<Event>, StoreError> {
        let lookup = query(
            "SELECT id, happened_at, done_by, job, club, kind, body FROM event WHERE kind = $1
             ORDER BY seq DESC LIMIT $2",
        );
        let rows = self.rows(lookup.bind(kind.key().to_owned()).bind(limit.max(0))).await?;
        rows.iter().map(event_of).collect()
    }

    /// When the last readings, batches and entries of the log were made, at most `limit` of each.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn newest_entries(&mut self, limit: i64) -> Result<Vec<Timestamp>, StoreError> {
        let mut times = Vec::new();
        for sql in [
            "SELECT read_at AS made_at FROM reading ORDER BY seq DESC LIMIT $1",
            "SELECT mixed_at AS made_at FROM batch ORDER BY number DESC LIMIT $1",
            "SELECT happened_at AS made_at FROM event ORDER BY seq DESC LIMIT $1",
        ] {
            for row in self.rows(query(sql).bind(limit)).await? {
                times.push(row.time("made_at")?);
            }
        }
        Ok(times)
    }

    /// The entries of a kind of the jobs whose clubs were glued from batches that were mixed at or after a time, the newest
    /// first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn events_of_batches_since(
        &mut self,
        kind: EventKind,
        since: Timestamp,
    ) -> Result<Vec<Event>, StoreError> {
        let lookup = query(
            "SELECT id, happened_at, done_by, job, club, kind, body FROM event WHERE kind = $1 AND job IN
                 (SELECT c.job FROM batch b JOIN batch_club g ON g.batch = b.id JOIN job_club c ON c.id = g.club
                  WHERE b.mixed_at >= $2)
             ORDER BY seq DESC",
        );
        let rows = self.rows(lookup.bind(kind.key().to_owned()).bind(time_text(since))).await?;
        rows.iter().map(event_of).collect()
    }

    /// The last entries of the log, of all jobs or one, at most `limit`, the newest first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn events(&mut self, job: Option<&JobId>, limit: i64) -> Result<Vec<Event>, StoreError> {
        let limit = limit.max(0);
        let rows = match job {
            Some(job) => {
                let lookup = query(
                    "SELECT id, happened_at, done_by, job, club, kind, body FROM event WHERE job = $1
                     ORDER BY seq DESC LIMIT $2",
                );
                self.rows(lookup.bind(job.0.clone()).bind(limit)).await?
            }
            None => {
                let lookup = query(
                    "SELECT id, happened_at, done_by, job, club, kind, body FROM event ORDER BY seq DESC LIMIT $1",
                );
                self.rows(lookup.bind(limit)).await?
            }
        };
        rows.iter().map(event_of).collect()
    }
}

fn event_of(row: &Row) -> Result<Event, StoreError> {
    Ok(Event {
        id: EventId(row.text("id")?),
        at: row.time("happened_at")?,
        by: row.text("done_by")?,
        job: row.maybe_text("job")?.map(JobId),
        club: row.maybe_text("club")?.map(ClubId),
        kind: EventKind::from(row.text("kind")?.as_str()),
        body: row.body("body")?,
    })
}
