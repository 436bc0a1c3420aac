//! Clubs that live on, their lives, and the shop's own kinds of job.

use crate::column::{Columns, document, key, query, time_text};
use crate::error::{StoreError, Stored};
use crate::tx::Tx;
use jiff::Timestamp;
use std::collections::BTreeMap;
use trade::club::{Club, ClubEvent};
use trade::error::Noun;
use trade::id::{ClubCode, ClubId};
use trade::job::JobState;
use trade::job_kind::JobKind;

/// What a list of clubs is cut down to.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct ClubFilter {
    /// Words that must all be found in its code, label, player, models or number; empty for all.
    pub search: String,
    /// Whose they are; none for everybody's.
    pub owner: Option<i64>,
}

impl Tx {
    /// The number for the next club. It stays free only until this transaction ends.
    ///
    /// # Errors
    /// The database failed.
    pub async fn next_club_number(&mut self) -> Result<i64, StoreError> {
        self.next(query("SELECT COALESCE(MAX(number), 0) + 1 FROM club")).await
    }

    /// Saves a new club under its running number.
    ///
    /// # Errors
    /// [`StoreError::CodeTaken`]; [`StoreError::NotStorable`] for a figure that is no number.
    pub async fn insert_club(&mut self, club: &Club, number: i64, at: Timestamp) -> Result<(), StoreError> {
        let code = club.code.as_str();
        if self.any(query("SELECT 1 FROM club WHERE code_key = $1").bind(key(code))).await? {
            return Err(StoreError::CodeTaken { code: code.to_owned() });
        }
        let insert = query(
            "INSERT INTO club (code, code_key, number, search, owner, body, version, saved_at)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8)",
        );
        let insert = insert
            .bind(code.to_owned())
            .bind(key(code))
            .bind(number)
            .bind(search_text(club))
            .bind(club.owner)
            .bind(document(code, club)?)
            .bind(club.version)
            .bind(time_text(at));
        self.change(insert).await?;
        Ok(())
    }

    /// Saves a club over the version that it was loaded at. Returns the new version.
    ///
    /// # Errors
    /// [`StoreError::Stale`] when another change came first; [`StoreError::NotStorable`].
    pub async fn save_owned_club(&mut self, club: &Club, at: Timestamp) -> Result<i64, StoreError> {
        let saved = Club { version: club.version + 1, ..club.clone() };
        let update = query(
            "UPDATE club SET search = $1, owner = $2, body = $3, version = $4, saved_at = $5
             WHERE code = $6 AND version = $7",
        );
        let update = update
            .bind(search_text(&saved))
            .bind(saved.owner)
            .bind(document(saved.code.as_str(), &saved)?)
            .bind(saved.version)
            .bind(time_text(at))
            .bind(saved.code.0.clone())
            .bind(club.version);
        if self.change(update).await? == 0 {
            let what = Stored::Club { card: club.code.0.clone() };
            return Err(StoreError::Stale { what, saved_version: club.version + 1 });
        }
        Ok(saved.version)
    }

    /// The club with a code. Capitals do not matter.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn owned_club(&mut self, code: &str) -> Result<Option<Club>, StoreError> {
        let row = self.row(query("SELECT body FROM club WHERE code_key = $1").bind(key(code.trim()))).await?;
        row.map(|row| row.body("body")).transpose()
    }

    /// Clubs, the latest first, at most `limit`.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn owned_clubs(&mut self, filter: &ClubFilter, limit: i64) -> Result<Vec<Club>, StoreError> {
        let rows = self.rows(query("SELECT body, search, owner FROM club ORDER BY number DESC")).await?;
        let words: Vec<String> = filter.search.split_whitespace().map(str::to_lowercase).collect();
        let mut found = Vec::new();
        for row in rows {
            let (text, owner) = (row.text("search")?, row.maybe_whole("owner")?);
            if words.iter().all(|word| text.contains(word)) && (filter.owner.is_none() || filter.owner == owner) {
                found.push(row.body("body")?);
            }
            if i64::try_from(found.len()).unwrap_or(i64::MAX) >= limit {
                break;
            }
        }
        Ok(found)
    }

    /// Appends to the life of a club.
    ///
    /// # Errors
    /// [`StoreError::Missing`] where there is no such club.
    pub async fn append_club_event(&mut self, event: &ClubEvent) -> Result<(), StoreError> {
        if !self.any(query("SELECT 1 FROM club WHERE code = $1").bind(event.club.0.clone())).await? {
            return Err(StoreError::Missing { what: Noun::Club, name: event.club.0.clone() });
        }
        let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM club_event")).await?;
        let insert = query("INSERT INTO club_event (seq, id, club, happened_at, body) VALUES ($1, $2, $3, $4, $5)");
        let insert = insert
            .bind(seq)
            .bind(event.id.0.clone())
            .bind(event.club.0.clone())
            .bind(time_text(event.at))
            .bind(document(event.club.as_str(), event)?);
        self.change(insert).await?;
        Ok(())
    }

    /// The life of a club, the first entry first.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn club_events(&mut self, code: &ClubCode) -> Result<Vec<ClubEvent>, StoreError> {
        let rows =
            self.rows(query("SELECT body FROM club_event WHERE club = $1 ORDER BY seq").bind(code.0.clone())).await?;
        rows.iter().map(|row| row.body("body")).collect()
    }

    /// The jobs in which clubs are worked on that are not over: number of the job by code of the club.
    ///
    /// # Errors
    /// The database failed.
    pub async fn clubs_in_open_jobs(&mut self) -> Result<BTreeMap<ClubCode, i64>, StoreError> {
        let lookup = query(
            "SELECT c.made_of, j.number FROM job_club c JOIN job j ON j.id = c.job
             WHERE c.made_of IS NOT NULL AND c.work_body IS NOT NULL AND j.state IN ($1, $2)",
        );
        let [open, planned] = JobState::UNDER_WAY;
        let rows = self.rows(lookup.bind(open.key()).bind(planned.key())).await?;
        rows.iter().map(|row| Ok((ClubCode(row.text("made_of")?), row.whole("number")?))).collect()
    }

    /// Notes which club a club of a job became.
    ///
    /// # Errors
    /// The database failed.
    pub async fn note_made(&mut self, club: &ClubId, code: &ClubCode) -> Result<(), StoreError> {
        let update = query("UPDATE job_club SET made_of = $1 WHERE id = $2");
        self.change(update.bind(code.0.clone()).bind(club.0.clone())).await?;
        Ok(())
    }

    /// The club that a club of a job became, or that it was before.
    ///
    /// # Errors
    /// The database failed.
    pub async fn made_of(&mut self, club: &ClubId) -> Result<Option<ClubCode>, StoreError> {
        let row = self.row(query("SELECT made_of FROM job_club WHERE id = $1").bind(club.0.clone())).await?;
        Ok(row.map(|row| row.maybe_text("made_of")).transpose()?.flatten().map(ClubCode))
    }

    /// The shop's own kinds of job, by key.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn job_kinds(&mut self) -> Result<Vec<JobKind>, StoreError> {
        let rows = self.rows(query("SELECT body FROM job_kind ORDER BY key")).await?;
        rows.iter().map(|row| row.body("body")).collect()
    }

    /// Saves a kind of job of the shop's own, over the one with its key. Jobs keep the steps that they were made with.
    ///
    /// # Errors
    /// The database failed.
    pub async fn save_job_kind(&mut self, kind: &JobKind) -> Result<(), StoreError> {
        let body = document(&kind.key, kind)?;
        let save = query(
            "INSERT INTO job_kind (key, body) VALUES ($1, $2) ON CONFLICT (key) DO UPDATE SET body = excluded.body",
        );
        self.change(save.bind(kind.key.clone()).bind(body)).await?;
        Ok(())
    }

    /// Takes a kind of job of the shop's own away. Gives whether there was one.
    ///
    /// # Errors
    /// The database failed.
    pub async fn remove_job_kind(&mut self, key: &str) -> Result<bool, StoreError> {
        Ok(self.change(query("DELETE FROM job_kind WHERE key = $1").bind(key.to_owned())).await? > 0)
    }
}

/// What a club is found by: all that a person may remember of it.
fn search_text(club: &Club) -> String {
    let row = &club.made.row;
    let models = [&row.head_model, &row.shaft_model, &row.grip_model].map(String::as_str);
    let words = [club.code.as_str(), &club.label, &club.player, &row.number, row.club_kind.key()];
    words.into_iter().chain(models).collect::<Vec<_>>().join(" ").to_lowercase()
}
