//! What happens to the shop's scales, appended and never changed.

use crate::column::{Columns, Row, document, finite, query, time_text};
use crate::error::StoreError;
use crate::tx::Tx;
use jiff::Timestamp;
use std::sync::Arc;
use trade::id::EventId;
use trade::scale_event::ScaleEvent;

/// What became of an appended event.
#[derive(Debug, Clone, PartialEq)]
pub struct KeptScaleEvent {
    /// The event as it is saved; of a repeated request the one that was saved the first time.
    pub event: ScaleEvent,
    /// Whether the same request came before, so that nothing was written.
    pub repeated: bool,
}

impl Tx {
    /// Appends what happened to a scale. With a `request_key` the same request that comes again writes nothing and gets
    /// the first event back.
    ///
    /// # Errors
    /// [`StoreError::KeyReused`] when the key was used for another entry; [`StoreError::CodeTaken`] when the identity is
    /// there already; [`StoreError::Missing`] for an unknown job; [`StoreError::NotStorable`] for a figure that is none.
    pub async fn append_scale_event(
        &mut self,
        event: &ScaleEvent,
        request_key: Option<&str>,
    ) -> Result<KeptScaleEvent, StoreError> {
        if let Some(key) = request_key
            && let Some(first) = self.scale_event_by_request_key(key).await?
        {
            return if same_request(&first, event) {
                Ok(KeptScaleEvent { event: first, repeated: true })
            } else {
                Err(StoreError::KeyReused { saved: told(&first) })
            };
        }
        if self.any(query("SELECT 1 FROM scale_event WHERE id = $1").bind(event.id.0.clone())).await? {
            return Err(StoreError::CodeTaken { code: event.id.0.clone() });
        }
        let check = event.check();
        let job = check.and_then(|c| c.job.as_ref());
        if let Some(job) = job {
            self.job_must_exist(job).await?;
        }
        if let Some(check) = check {
            finite("the reading of a check", check.reading)?;
            finite("the figure of a check weight", check.certified)?;
        }
        let body = document("what happened to a scale", event)?;
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM scale_event")).await?;
        let insert = query(
            "INSERT INTO scale_event (id, seq, scale, kind, happened_at, kept_at, day, done_by, standard, typed, reading,
                 certified, job, request_key, body)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15)",
        );
        let insert = insert
            .bind(event.id.0.clone())
            .bind(seq)
            .bind(event.scale.clone())
            .bind(event.what.kind())
            .bind(time_text(event.at))
            .bind(time_text(event.kept_at))
            .bind(event.day.to_string())
            .bind(event.by.clone())
            .bind(check.map(|c| c.standard.clone()))
            .bind(check.map(|c| c.typed.clone()))
            .bind(check.map(|c| c.reading))
            .bind(check.map(|c| c.certified))
            .bind(job.map(|id| id.0.clone()))
            .bind(request_key.map(str::to_owned))
            .bind(body);
        self.change(insert).await?;
        Ok(KeptScaleEvent { event: event.clone(), repeated: false })
    }

    /// The event that was kept for a request key.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn scale_event_by_request_key(&mut self, request_key: &str) -> Result<Option<ScaleEvent>, StoreError> {
        let lookup = query("SELECT body FROM scale_event WHERE request_key = $1");
        let row = self.row(lookup.bind(request_key.to_owned())).await?;
        row.as_ref().map(event_of).transpose()
    }

    /// The event with this identity.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn scale_event(&mut self, id: &EventId) -> Result<Option<ScaleEvent>, StoreError> {
        let row = self.row(query("SELECT body FROM scale_event WHERE id = $1").bind(id.0.clone())).await?;
        row.as_ref().map(event_of).transpose()
    }

    /// Everything that happened to a scale, in the order in which it was kept.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn scale_events(&mut self, scale: &str) -> Result<Arc<Vec<ScaleEvent>>, StoreError> {
        let newest = query("SELECT COALESCE(MAX(seq), 0) FROM scale_event WHERE scale = $1").bind(scale.to_owned());
        let newest = self.number(newest).await?;
        let kept = &self.remembered().scale_events;
        let known = kept.known(scale, newest);
        if let Some((last, events)) = &known
            && *last == newest
        {
            return Ok(Arc::clone(events));
        }
        let last = known.as_ref().map_or(i64::MIN, |(last, _)| *last);
        let lookup = query("SELECT body FROM scale_event WHERE scale = $1 AND seq > $2 ORDER BY seq");
        let rows = self.rows(lookup.bind(scale.to_owned()).bind(last)).await?;
        let more = rows.iter().map(event_of).collect::<Result<_, _>>()?;
        Ok(kept.grown(scale, newest, known, more, self.writing()))
    }

    /// What a job needs to know of the scales: checks and what was taken back from one time to another, and every word on
    /// trust and calibration until then, in the order in which they were kept.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn scale_events_between(
        &mut self,
        since: Timestamp,
        until: Timestamp,
    ) -> Result<Vec<ScaleEvent>, StoreError> {
        // Two questions, each with an index of its own; as one with OR, all checks of all years would be looked at.
        let lookup = query(
            "SELECT seq, body FROM scale_event WHERE kind IN ('distrusted', 'trusted', 'calibrated')
                 AND happened_at <= $2
             UNION SELECT seq, body FROM scale_event WHERE happened_at >= $1 AND happened_at <= $2
             ORDER BY seq",
        );
        self.rows(lookup.bind(time_text(since)).bind(time_text(until))).await?.iter().map(event_of).collect()
    }

    /// When a scale was last checked, of all scales together, up to a time; none where none was.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn newest_check(&mut self, until: Timestamp) -> Result<Option<Timestamp>, StoreError> {
        let lookup = query(
            "SELECT happened_at FROM scale_event WHERE kind = 'check' AND happened_at <= $1
             ORDER BY happened_at DESC LIMIT 1",
        );
        let row = self.row(lookup.bind(time_text(until))).await?;
        row.map(|row| row.time("happened_at")).transpose()
    }
}

/// Whether a request says the same again: the time of keeping and the identity are each request's own.
fn same_request(first: &ScaleEvent, again: &ScaleEvent) -> bool {
    let same_what = match (first.check(), again.check()) {
        (Some(a), Some(b)) => a.standard == b.standard && a.reading == b.reading,
        _ => first.what == again.what,
    };
    first.scale == again.scale && same_what
}

fn told(event: &ScaleEvent) -> String {
    match event.check() {
        Some(check) => format!("{} on {}: “{}”", check.name, event.scale, check.typed),
        None => format!("{} of {}", event.what.kind(), event.scale),
    }
}

fn event_of(row: &Row) -> Result<ScaleEvent, StoreError> {
    row.body("body")
}
