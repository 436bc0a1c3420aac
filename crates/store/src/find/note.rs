//! What somebody wrote into a reason or a remark, with where it belongs.

use crate::column::{Columns, query};
use crate::error::StoreError;
use crate::find_line::remarks;
use crate::tx::Tx;
use jiff::Timestamp;

/// A reason or a remark that was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoundNote {
    /// As it was written.
    pub text: String,
    /// Number of the job that it belongs to; none where it belongs to none.
    pub job: Option<i64>,
    /// Place in the tray of the club that it is about; none where it is about the whole job.
    pub slot: Option<i64>,
    /// Code of the club that it is about; none where that has none.
    pub club: Option<String>,
    /// Who wrote it.
    pub by: String,
    /// When.
    pub at: Timestamp,
}

impl Tx {
    /// The reason or remark that a line of the one field is about.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn found_note(&mut self, kind: &str, thing: &str) -> Result<Option<FoundNote>, StoreError> {
        let sql = match kind {
            "event" => {
                "SELECT e.body AS words, e.done_by AS by_whom, e.happened_at AS at_time, j.number, c.slot, c.made_of
                 FROM event e LEFT JOIN job j ON j.id = e.job LEFT JOIN job_club c ON c.id = e.club WHERE e.id = $1"
            }
            "club_event" => {
                "SELECT e.body AS words, '' AS by_whom, e.happened_at AS at_time, CAST(NULL AS BIGINT) AS number,
                     CAST(NULL AS BIGINT) AS slot, e.club AS made_of
                 FROM club_event e WHERE e.id = $1"
            }
            "taken_back" => {
                "SELECT t.why AS words, t.said_by AS by_whom, t.said_at AS at_time, j.number, c.slot, c.made_of
                 FROM reading_taken_back t JOIN reading r ON r.id = t.reading JOIN job j ON j.id = r.job
                     JOIN job_club c ON c.id = r.club WHERE t.reading = $1"
            }
            "insisted" => {
                "SELECT t.why AS words, t.said_by AS by_whom, t.said_at AS at_time, j.number, c.slot, c.made_of
                 FROM reading_insisted t JOIN reading r ON r.id = t.reading JOIN job j ON j.id = r.job
                     JOIN job_club c ON c.id = r.club WHERE t.reading = $1"
            }
            "mark" => {
                "SELECT m.word AS words, m.marked_by AS by_whom, m.marked_at AS at_time, j.number, c.slot,
                     COALESCE(m.code, c.made_of) AS made_of
                 FROM club_mark m LEFT JOIN job_club c ON c.id = m.club LEFT JOIN job j ON j.id = c.job WHERE m.id = $1"
            }
            "cleared" => {
                "SELECT x.word AS words, x.said_by AS by_whom, x.said_at AS at_time, j.number, c.slot,
                     COALESCE(m.code, c.made_of) AS made_of
                 FROM club_mark_cleared x JOIN club_mark m ON m.id = x.mark LEFT JOIN job_club c ON c.id = m.club
                     LEFT JOIN job j ON j.id = c.job WHERE x.mark = $1"
            }
            _ => return Ok(None),
        };
        let Some(row) = self.row(query(sql).bind(thing.to_owned())).await? else { return Ok(None) };
        let (mut text, mut by) = (row.text("words")?, row.text("by_whom")?);
        if let Ok(body) = serde_json::from_str::<serde_json::Value>(&text) {
            if by.is_empty() {
                by = body.get("by").and_then(|by| by.as_str()).unwrap_or_default().to_owned();
            }
            text = remarks(&body);
        }
        Ok(Some(FoundNote {
            text,
            job: row.maybe_whole("number")?,
            slot: row.maybe_whole("slot")?,
            club: row.maybe_text("made_of")?,
            by,
            at: row.time("at_time")?,
        }))
    }
}
