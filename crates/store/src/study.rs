//! Gauge studies: the plan as it was begun, and its readings one by one.

use crate::column::{Columns, Row, document, finite, query, time_text};
use crate::error::Saved;
use crate::error::StoreError;
use crate::tx::Tx;
use desk::scale_health::StudyPlan;
use jiff::Timestamp;
use trade::error::Noun;

/// A study as it was begun.
#[derive(Debug, Clone, PartialEq)]
pub struct StudyRow {
    /// Identity.
    pub id: String,
    /// When it was begun.
    pub at: Timestamp,
    /// Who began it.
    pub by: String,
    /// What is read, by whom, in which order.
    pub plan: StudyPlan,
}

/// One reading of a study. A later one of the same place takes its place.
#[derive(Debug, Clone, PartialEq)]
pub struct StudyReading {
    /// Identity.
    pub id: String,
    /// Identity of the study that it belongs to.
    pub study: String,
    /// Which reading of the plan, from 0.
    pub place: i64,
    /// The entry as typed.
    pub typed: String,
    /// Its value, in the unit of the scale.
    pub reading: f64,
    /// When.
    pub at: Timestamp,
    /// Who entered it.
    pub by: String,
}

macro_rules! study_reading_columns {
    () => {
        "SELECT id, study, place, typed, reading, read_at, read_by FROM gauge_study_reading "
    };
}

impl Tx {
    /// Begins a study. The same request key again gets the first one back.
    ///
    /// # Errors
    /// [`StoreError::KeyReused`]; [`StoreError::CodeTaken`]; [`StoreError::NotStorable`].
    pub async fn begin_study(&mut self, row: &StudyRow, request_key: Option<&str>) -> Result<StudyRow, StoreError> {
        if let Some(key) = request_key {
            let lookup = query("SELECT id, begun_at, begun_by, body FROM gauge_study WHERE request_key = $1");
            if let Some(first) = self.row(lookup.bind(key.to_owned())).await? {
                let first = study_of(&first)?;
                let same = first.plan.scale == row.plan.scale
                    && first.plan.parts == row.plan.parts
                    && first.plan.builders == row.plan.builders
                    && first.plan.trials == row.plan.trials;
                let saved = Saved::Study { scale: first.plan.scale.clone() };
                return if same { Ok(first) } else { Err(StoreError::KeyReused { saved }) };
            }
        }
        if self.any(query("SELECT 1 FROM gauge_study WHERE id = $1").bind(row.id.clone())).await? {
            return Err(StoreError::CodeTaken { code: row.id.clone() });
        }
        let body = document("a gauge study", &row.plan)?;
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM gauge_study")).await?;
        let insert = query(
            "INSERT INTO gauge_study (id, seq, scale, begun_at, begun_by, request_key, body)
             VALUES ($1, $2, $3, $4, $5, $6, $7)",
        );
        let insert = insert
            .bind(row.id.clone())
            .bind(seq)
            .bind(row.plan.scale.clone())
            .bind(time_text(row.at))
            .bind(row.by.clone())
            .bind(request_key.map(str::to_owned))
            .bind(body);
        self.change(insert).await?;
        Ok(row.clone())
    }

    /// The study with this identity.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn study(&mut self, id: &str) -> Result<Option<StudyRow>, StoreError> {
        let lookup = query("SELECT id, begun_at, begun_by, body FROM gauge_study WHERE id = $1");
        let row = self.row(lookup.bind(id.to_owned())).await?;
        row.as_ref().map(study_of).transpose()
    }

    /// All studies, the newest first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn studies(&mut self) -> Result<Vec<StudyRow>, StoreError> {
        let lookup = query("SELECT id, begun_at, begun_by, body FROM gauge_study ORDER BY seq DESC");
        self.rows(lookup).await?.iter().map(study_of).collect()
    }

    /// Appends a reading of a study; returns whether the same request came before, so that nothing was written.
    ///
    /// # Errors
    /// [`StoreError::Missing`] for an unknown study; [`StoreError::KeyReused`]; [`StoreError::CodeTaken`];
    /// [`StoreError::NotStorable`] for a figure that is none.
    pub async fn append_study_reading(
        &mut self,
        reading: &StudyReading,
        request_key: Option<&str>,
    ) -> Result<bool, StoreError> {
        let value = finite("the reading of a study", reading.reading)?;
        if let Some(key) = request_key {
            let lookup = query(concat!(study_reading_columns!(), "WHERE request_key = $1"));
            if let Some(first) = self.row(lookup.bind(key.to_owned())).await? {
                let first = reading_of(&first)?;
                let same =
                    first.study == reading.study && first.place == reading.place && first.reading == reading.reading;
                let saved = Saved::StudyReading { typed: first.typed.clone() };
                return if same { Ok(true) } else { Err(StoreError::KeyReused { saved }) };
            }
        }
        if !self.any(query("SELECT 1 FROM gauge_study WHERE id = $1").bind(reading.study.clone())).await? {
            return Err(StoreError::Missing { what: Noun::Study, name: reading.study.clone() });
        }
        if self.any(query("SELECT 1 FROM gauge_study_reading WHERE id = $1").bind(reading.id.clone())).await? {
            return Err(StoreError::CodeTaken { code: reading.id.clone() });
        }
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM gauge_study_reading")).await?;
        let insert = query(
            "INSERT INTO gauge_study_reading (id, seq, study, place, typed, reading, read_at, read_by, request_key)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)",
        );
        let insert = insert
            .bind(reading.id.clone())
            .bind(seq)
            .bind(reading.study.clone())
            .bind(reading.place)
            .bind(reading.typed.clone())
            .bind(value)
            .bind(time_text(reading.at))
            .bind(reading.by.clone())
            .bind(request_key.map(str::to_owned));
        self.change(insert).await?;
        Ok(false)
    }

    /// The readings of a study in the order in which they were kept, corrected ones included.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn study_readings(&mut self, study: &str) -> Result<Vec<StudyReading>, StoreError> {
        let lookup = query(concat!(study_reading_columns!(), "WHERE study = $1 ORDER BY seq"));
        self.rows(lookup.bind(study.to_owned())).await?.iter().map(reading_of).collect()
    }
}

fn study_of(row: &Row) -> Result<StudyRow, StoreError> {
    Ok(StudyRow { id: row.text("id")?, at: row.time("begun_at")?, by: row.text("begun_by")?, plan: row.body("body")? })
}

fn reading_of(row: &Row) -> Result<StudyReading, StoreError> {
    Ok(StudyReading {
        id: row.text("id")?,
        study: row.text("study")?,
        place: row.whole("place")?,
        typed: row.text("typed")?,
        reading: row.real("reading")?,
        at: row.time("read_at")?,
        by: row.text("read_by")?,
    })
}
