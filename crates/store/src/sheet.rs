//! Fitting sheets.

use crate::column::{Columns, Row, document, query, time_text};
use crate::error::StoreError;
use crate::error::Stored;
use crate::job::Numbered;
use crate::model::{UsedBy, models_of_sheet};
use crate::tx::Tx;
use jiff::Timestamp;
use jiff::civil::Date;
use serde::Deserialize;
use trade::error::Noun;
use trade::id::{JobId, SheetId};
use trade::sheet::Sheet;

/// A sheet as it is saved.
#[derive(Debug, Clone, PartialEq)]
pub struct SheetRow {
    /// Identity.
    pub id: SheetId,
    /// What is asked of each club, as it was last saved.
    pub sheet: Sheet,
    /// The job that was made from it, once it was approved.
    pub approved_job: Option<JobId>,
    /// Goes up by one with every change.
    pub version: i64,
    /// When it was last saved.
    pub saved_at: Timestamp,
}

/// A sheet as a list shows it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetLine {
    /// Identity.
    pub id: SheetId,
    /// Who the clubs are for.
    pub player: String,
    /// When it is due.
    pub due: Date,
    /// Numbers of its clubs.
    pub clubs: Vec<String>,
    /// Running number of the job that was made from it.
    pub job: Option<i64>,
}

/// Of a sheet only its clubs.
#[derive(Deserialize)]
struct Clubs {
    clubs: Vec<Numbered>,
}

impl Tx {
    /// Saves a new sheet, with the version and time that it carries.
    ///
    /// # Errors
    /// [`StoreError::CodeTaken`] when its identity is there already; [`StoreError::NotStorable`] for a figure that is
    /// no number.
    pub async fn insert_sheet(&mut self, row: &SheetRow) -> Result<(), StoreError> {
        let body = document("the sheet", &row.sheet)?;
        if self.any(query("SELECT 1 FROM sheet WHERE id = $1").bind(row.id.0.clone())).await? {
            return Err(StoreError::CodeTaken { code: row.id.0.clone() });
        }
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM sheet")).await?;
        let insert = query(
            "INSERT INTO sheet (id, seq, player, customer, due, body, approved_job, version, saved_at)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9)",
        );
        let insert = insert
            .bind(row.id.0.clone())
            .bind(seq)
            .bind(row.sheet.player.clone())
            .bind(row.sheet.customer)
            .bind(row.sheet.due.to_string())
            .bind(body)
            .bind(row.approved_job.as_ref().map(|id| id.0.clone()))
            .bind(row.version)
            .bind(time_text(row.saved_at));
        self.change(insert).await?;
        self.replace_model_uses(UsedBy::Sheet, row.id.as_str(), models_of_sheet(&row.sheet)).await
    }

    /// Saves a changed sheet over the version that it was loaded at, at the time `now`. Returns the new version.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when another change came first; [`StoreError::Missing`]; [`StoreError::NotStorable`].
    pub async fn update_sheet(&mut self, row: &SheetRow, now: Timestamp) -> Result<i64, StoreError> {
        let body = document("the sheet", &row.sheet)?;
        let update = query(
            "UPDATE sheet SET player = $1, customer = $2, due = $3, body = $4, approved_job = $5, version = version + 1,
                 saved_at = $6
             WHERE id = $7 AND version = $8",
        );
        let update = update
            .bind(row.sheet.player.clone())
            .bind(row.sheet.customer)
            .bind(row.sheet.due.to_string())
            .bind(body)
            .bind(row.approved_job.as_ref().map(|id| id.0.clone()))
            .bind(time_text(now))
            .bind(row.id.0.clone())
            .bind(row.version);
        if self.change(update).await? == 0 {
            let saved = self.row(query("SELECT version FROM sheet WHERE id = $1").bind(row.id.0.clone())).await?;
            return Err(match saved {
                Some(saved) => StoreError::Stale {
                    what: Stored::Sheet { player: row.sheet.player.clone() },
                    saved_version: saved.whole("version")?,
                },
                None => StoreError::Missing { what: Noun::Sheet, name: row.id.0.clone() },
            });
        }
        self.replace_model_uses(UsedBy::Sheet, row.id.as_str(), models_of_sheet(&row.sheet)).await?;
        Ok(row.version + 1)
    }

    /// The sheet with this identity.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn sheet(&mut self, id: &SheetId) -> Result<Option<SheetRow>, StoreError> {
        let lookup = query("SELECT id, body, approved_job, version, saved_at FROM sheet WHERE id = $1");
        let row = self.row(lookup.bind(id.0.clone())).await?;
        row.as_ref().map(sheet_of).transpose()
    }

    /// At most `limit` sheets as a list shows them, those saved last first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn sheet_lines(&mut self, limit: i64) -> Result<Vec<SheetLine>, StoreError> {
        let lookup = query(
            "SELECT s.id, s.player, s.due, s.body, j.number FROM sheet s
                 LEFT JOIN job j ON j.id = s.approved_job
             ORDER BY s.saved_at DESC, s.seq DESC LIMIT $1",
        );
        let rows = self.rows(lookup.bind(limit.max(0))).await?;
        rows.iter()
            .map(|row| {
                let body: Clubs = row.body("body")?;
                Ok(SheetLine {
                    id: SheetId(row.text("id")?),
                    player: row.text("player")?,
                    due: row.day("due")?,
                    clubs: body.clubs.into_iter().map(|c| c.number).collect(),
                    job: row.maybe_whole("number")?,
                })
            })
            .collect()
    }

    /// The sheets of which no job was made, those saved last first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn open_sheets(&mut self) -> Result<Vec<SheetRow>, StoreError> {
        let lookup = query(
            "SELECT id, body, approved_job, version, saved_at FROM sheet WHERE approved_job IS NULL
             ORDER BY saved_at DESC, seq DESC",
        );
        self.rows(lookup).await?.iter().map(sheet_of).collect()
    }

    /// At most `limit` sheets, those saved last first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn sheets(&mut self, limit: i64) -> Result<Vec<SheetRow>, StoreError> {
        let lookup = query(
            "SELECT id, body, approved_job, version, saved_at FROM sheet ORDER BY saved_at DESC, seq DESC LIMIT $1",
        );
        let rows = self.rows(lookup.bind(limit.max(0))).await?;
        rows.iter().map(sheet_of).collect()
    }
}

fn sheet_of(row: &Row) -> Result<SheetRow, StoreError> {
    Ok(SheetRow {
        id: SheetId(row.text("id")?),
        sheet: row.body("body")?,
        approved_job: row.maybe_text("approved_job")?.map(JobId),
        version: row.whole("version")?,
        saved_at: row.time("saved_at")?,
    })
}
