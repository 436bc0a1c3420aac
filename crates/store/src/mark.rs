//! Marks on clubs, from a recall until somebody has looked: appended to, never changed.

use crate::column::{Columns, Row, document, query, time_text};
use crate::error::StoreError;
use crate::recall::Named;
use crate::tx::Tx;
use fact::Told;
use trade::club::Club;
use trade::club_name::ClubName;
use trade::error::Noun;
use trade::id::{ClubCode, ClubId, EventId, JobId};
use trade::job::JobState;
use trade::recall::{ClubMark, MarkCleared};

/// A mark with the club that it is on.
#[derive(Debug, Clone, PartialEq)]
pub struct ShownMark {
    /// What to look at, since when, and what was found once somebody had looked.
    pub mark: ClubMark,
    /// Number of the club's job and its place in the tray, with how far the job is; none for a club that was never in one.
    pub job: Option<(i64, i64, JobState)>,
    /// Who plays it.
    pub player: String,
    /// Its kind and number, as people call it.
    pub name: ClubName,
}

macro_rules! marks {
    ($where:literal) => {
        concat!(
            "SELECT m.id, m.club, COALESCE(m.code, c.made_of) AS code, m.word, m.recall, m.marked_by, m.marked_at,
                 x.word AS found, x.said_by, x.said_at, j.number AS job_number, j.state, j.player, c.slot, c.target_body,
                 o.body AS club_body
             FROM club_mark m LEFT JOIN club_mark_cleared x ON x.mark = m.id LEFT JOIN job_club c ON c.id = m.club
                 LEFT JOIN job j ON j.id = c.job LEFT JOIN club o ON o.code = COALESCE(m.code, c.made_of) ",
            $where,
            " ORDER BY m.seq"
        )
    };
}

impl Tx {
    /// Marks a club.
    ///
    /// # Errors
    /// [`StoreError::Missing`] for an unknown club; [`StoreError::NotStorable`] for a mark that is cleared already.
    pub async fn insert_mark(&mut self, mark: &ClubMark) -> Result<(), StoreError> {
        if mark.cleared.is_some() {
            let problem = "a new mark cannot be cleared already".to_owned();
            return Err(StoreError::NotStorable { what: "a mark".into(), problem });
        }
        if let Some(club) = &mark.club {
            self.job_of_club(club).await?;
        }
        if let Some(code) = &mark.code
            && !self.any(query("SELECT 1 FROM club WHERE code = $1").bind(code.0.clone())).await?
        {
            return Err(StoreError::Missing { what: Noun::Club, name: code.0.clone() });
        }
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM club_mark")).await?;
        let insert = query(
            "INSERT INTO club_mark (id, seq, club, code, word, recall, marked_by, marked_at)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
        );
        let insert = insert
            .bind(mark.id.0.clone())
            .bind(seq)
            .bind(mark.club.as_ref().map(|id| id.0.clone()))
            .bind(mark.code.as_ref().map(|code| code.0.clone()))
            .bind(mark.word.clone())
            .bind(document("a recall", &mark.of)?)
            .bind(mark.by.clone())
            .bind(time_text(mark.at));
        self.change(insert).await?;
        Ok(())
    }

    /// Notes what was found at a marked club; the mark itself stays.
    ///
    /// # Errors
    /// [`StoreError::Missing`]; [`StoreError::AlreadyTakenBack`] with what was found before.
    pub async fn clear_mark(&mut self, id: &EventId, cleared: &MarkCleared) -> Result<(), StoreError> {
        let mark = self.mark(id).await?;
        let mark = mark.ok_or_else(|| StoreError::Missing { what: Noun::Mark, name: id.0.clone() })?;
        if let Some(before) = mark.mark.cleared {
            return Err(StoreError::AlreadyTakenBack { why: Told::verbatim(before.word) });
        }
        let note = query("INSERT INTO club_mark_cleared (mark, word, said_by, said_at) VALUES ($1, $2, $3, $4)");
        let note = note.bind(id.0.clone()).bind(cleared.word.clone()).bind(cleared.by.clone());
        self.change(note.bind(time_text(cleared.at))).await?;
        Ok(())
    }

    /// One mark.
    ///
    /// # Errors
    /// The database failed, or the row is damaged.
    pub async fn mark(&mut self, id: &EventId) -> Result<Option<ShownMark>, StoreError> {
        let row = self.row(query(marks!("WHERE m.id = $1")).bind(id.0.clone())).await?;
        row.as_ref().map(mark_of).transpose()
    }

    /// All marks that stand, the oldest first; with `cleared` those that were cleared as well.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn marks(&mut self, cleared: bool) -> Result<Vec<ShownMark>, StoreError> {
        let lookup = if cleared { query(marks!("")) } else { query(marks!("WHERE x.mark IS NULL")) };
        let rows = self.rows(lookup).await?;
        rows.iter().map(mark_of).collect()
    }

    /// The marks of a club with a code of its own, those of the jobs that it was in among them, the oldest first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn marks_of_club(&mut self, code: &ClubCode) -> Result<Vec<ShownMark>, StoreError> {
        let lookup = query(marks!("WHERE m.code = $1 OR m.club IN (SELECT id FROM job_club WHERE made_of = $1)"));
        let rows = self.rows(lookup.bind(code.0.clone())).await?;
        rows.iter().map(mark_of).collect()
    }

    /// The marks that stand on the clubs of a job, each with the identity of the club within that job: a club that was marked
    /// in an earlier job keeps its mark.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn open_marks_of_job(&mut self, job: &JobId) -> Result<Vec<(ClubId, ClubMark)>, StoreError> {
        let lookup = query(
            "SELECT t.id AS tray_club, m.id, m.club, m.code, m.word, m.recall, m.marked_by, m.marked_at, x.word AS found,
                 x.said_by, x.said_at
             FROM job_club t JOIN club_mark m ON m.club = t.id OR m.code = t.made_of
                 OR m.club IN (SELECT o.id FROM job_club o WHERE o.made_of = t.made_of)
                 LEFT JOIN club_mark_cleared x ON x.mark = m.id
             WHERE t.job = $1 AND x.mark IS NULL ORDER BY t.slot, m.seq",
        );
        // Most shops have no mark at all: the lookup by three ways is spared.
        if !self.any(query("SELECT 1 FROM club_mark LIMIT 1")).await? {
            return Ok(Vec::new());
        }
        let rows = self.rows(lookup.bind(job.0.clone())).await?;
        rows.iter().map(|row| Ok((ClubId(row.text("tray_club")?), plain_mark(row)?))).collect()
    }
}

fn plain_mark(row: &Row) -> Result<ClubMark, StoreError> {
    let cleared = match row.maybe_text("found")? {
        Some(word) => Some(MarkCleared { word, by: row.text("said_by")?, at: row.time("said_at")? }),
        None => None,
    };
    Ok(ClubMark {
        id: EventId(row.text("id")?),
        club: row.maybe_text("club")?.map(ClubId),
        code: row.maybe_text("code")?.map(ClubCode),
        word: row.text("word")?,
        of: row.body("recall")?,
        by: row.text("marked_by")?,
        at: row.time("marked_at")?,
        cleared,
    })
}

fn mark_of(row: &Row) -> Result<ShownMark, StoreError> {
    let mark = plain_mark(row)?;
    let job = match row.maybe_whole("job_number")? {
        Some(number) => Some((number, row.whole("slot")?, row.word("state", JobState::from_key)?)),
        None => None,
    };
    // A club that was handed over may have another player by now.
    if let Some(club) = row.maybe_body::<Club>("club_body")? {
        return Ok(ShownMark { mark, job, name: club.name(), player: club.player });
    }
    let named: Named = row.body("target_body")?;
    Ok(ShownMark { mark, job, player: row.text("player")?, name: named.name() })
}
