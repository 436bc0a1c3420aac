//! Holding parts for clubs. A part is never in two clubs.

use crate::column::{Columns, query, time_text};
use crate::error::StoreError;
use crate::life::LifeNote;
use crate::tx::Tx;
use fact::Told;
use jiff::Timestamp;
use trade::error::Noun;
use trade::id::{ClubId, JobId, PartId};
use trade::life::LifeStep;
use trade::model::PartKind;
use trade::part::PartState;

/// A piece that is held for a club.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hold {
    /// The part, or the bulk that one piece was taken from.
    pub part: PartId,
    /// The club that it is held for.
    pub club: ClubId,
    /// Code of the part.
    pub code: String,
    /// What sort of part it is: head, shaft, grip …
    pub kind: PartKind,
}

/// Which clubs a release is about.
#[derive(Clone, Copy)]
enum Of<'a> {
    Club(&'a ClubId),
    Job(&'a JobId),
}

impl Of<'_> {
    fn id(self) -> String {
        match self {
            Self::Club(id) => id.0.clone(),
            Self::Job(id) => id.0.clone(),
        }
    }
}

impl Tx {
    /// Holds a free part for a club: a single part as it is, of a counted bulk one piece.
    ///
    /// # Errors
    /// [`StoreError::PartOfCustomer`] where it is a customer's and the job is not; [`StoreError::PartTaken`] when it is not
    /// free, or none is left of the bulk; [`StoreError::Missing`] for an
    /// unknown part, or a club that is not of this job.
    pub async fn hold(&mut self, part: &PartId, job: &JobId, club: &ClubId, now: Timestamp) -> Result<(), StoreError> {
        self.club_must_be_of(club, job).await?;
        let whose = query("SELECT code, owner FROM part WHERE id = $1").bind(part.0.clone());
        if let Some(row) = self.row(whose).await? {
            self.must_be_of_its_customer(row.maybe_whole("owner")?, &row.text("code")?, job).await?;
        }
        // The condition is part of the change itself: even without the lock on writers only one of two can win.
        let single = query(
            "UPDATE part SET state = 'held', job = $1, club = $2, version = version + 1, saved_at = $3
             WHERE id = $4 AND count IS NULL AND state = 'free'",
        );
        let single = single.bind(job.0.clone()).bind(club.0.clone()).bind(time_text(now)).bind(part.0.clone());
        let note =
            LifeNote { part, step: LifeStep::Held, job: Some(job), club: Some(club), figures: &[], reason: None };
        if self.change(single).await? == 1 {
            return self.write_life(note, now).await;
        }
        let bulk = query(
            "UPDATE part SET count = count - 1, version = version + 1, saved_at = $1
             WHERE id = $2 AND count > 0 AND state = 'free'",
        );
        if self.change(bulk.bind(time_text(now)).bind(part.0.clone())).await? == 1 {
            let seq = self.next(query("SELECT COALESCE(MAX(seq), 0) + 1 FROM part_hold")).await?;
            let take =
                query("INSERT INTO part_hold (seq, part, job, club, used, held_at) VALUES ($1, $2, $3, $4, 0, $5)");
            let take = take.bind(seq).bind(part.0.clone()).bind(job.0.clone()).bind(club.0.clone());
            self.change(take.bind(time_text(now))).await?;
            return self.write_life(note, now).await;
        }
        Err(self.why_taken(part).await?)
    }

    async fn why_taken(&mut self, part: &PartId) -> Result<StoreError, StoreError> {
        let lookup = query(
            "SELECT part.code, part.state, job.number AS job_number
             FROM part LEFT JOIN job ON job.id = part.job WHERE part.id = $1",
        );
        Ok(match self.row(lookup.bind(part.0.clone())).await? {
            Some(row) => StoreError::PartTaken {
                code: row.text("code")?,
                state: row.word("state", PartState::from_key)?,
                job_number: row.maybe_whole("job_number")?,
            },
            None => StoreError::Missing { what: Noun::Part, name: part.0.clone() },
        })
    }

    /// Takes one single part out of the hands of the club that it is held for; `step` says what becomes of it. Returns
    /// whether it was held.
    ///
    /// # Errors
    /// The database failed.
    pub async fn free_part(
        &mut self,
        part: &PartId,
        step: LifeStep,
        reason: Option<&Told>,
        now: Timestamp,
    ) -> Result<bool, StoreError> {
        let held = query("SELECT job, club FROM part WHERE id = $1 AND state = 'held' AND count IS NULL");
        let Some(row) = self.row(held.bind(part.0.clone())).await? else { return Ok(false) };
        let (job, club) = (JobId(row.text("job")?), ClubId(row.text("club")?));
        let free = query(
            "UPDATE part SET state = 'free', job = NULL, club = NULL, version = version + 1, saved_at = $1
             WHERE id = $2 AND state = 'held'",
        );
        self.change(free.bind(time_text(now)).bind(part.0.clone())).await?;
        let note = LifeNote { part, step, job: Some(&job), club: Some(&club), figures: &[], reason };
        self.write_life(note, now).await?;
        Ok(true)
    }

    /// Frees what is held for a club. What was used stays in the club.
    ///
    /// # Errors
    /// The database failed.
    pub async fn release_club(&mut self, club: &ClubId, now: Timestamp) -> Result<(), StoreError> {
        self.release(Of::Club(club), now).await
    }

    /// Frees what is held for any club of a job. What was used stays in its club.
    ///
    /// # Errors
    /// The database failed.
    pub async fn release_job(&mut self, job: &JobId, now: Timestamp) -> Result<(), StoreError> {
        self.release(Of::Job(job), now).await
    }

    async fn release(&mut self, of: Of<'_>, now: Timestamp) -> Result<(), StoreError> {
        let (singles, counted, rows) = match of {
            Of::Club(_) => (
                "UPDATE part SET state = 'free', job = NULL, club = NULL, version = version + 1, saved_at = $1
                 WHERE club = $2 AND state = 'held'",
                "UPDATE part SET version = version + 1, saved_at = $1, count = count +
                     (SELECT COUNT(*) FROM part_hold h WHERE h.part = part.id AND h.club = $2 AND h.used = 0)
                 WHERE id IN (SELECT h.part FROM part_hold h WHERE h.club = $2 AND h.used = 0)",
                "DELETE FROM part_hold WHERE club = $1 AND used = 0",
            ),
            Of::Job(_) => (
                "UPDATE part SET state = 'free', job = NULL, club = NULL, version = version + 1, saved_at = $1
                 WHERE job = $2 AND state = 'held'",
                "UPDATE part SET version = version + 1, saved_at = $1, count = count +
                     (SELECT COUNT(*) FROM part_hold h WHERE h.part = part.id AND h.job = $2 AND h.used = 0)
                 WHERE id IN (SELECT h.part FROM part_hold h WHERE h.job = $2 AND h.used = 0)",
                "DELETE FROM part_hold WHERE job = $1 AND used = 0",
            ),
        };
        self.note_each(of, LifeStep::Freed, now).await?;
        self.change(query(singles).bind(time_text(now)).bind(of.id())).await?;
        self.change(query(counted).bind(time_text(now)).bind(of.id())).await?;
        self.change(query(rows).bind(of.id())).await?;
        Ok(())
    }

    /// Writes into the life of everything that is held what becomes of it now.
    async fn note_each(&mut self, of: Of<'_>, step: LifeStep, now: Timestamp) -> Result<(), StoreError> {
        let lookup = match of {
            Of::Club(_) => {
                "SELECT id AS part, job, club FROM part WHERE club = $1 AND state = 'held'
                 UNION ALL SELECT part, job, club FROM part_hold WHERE club = $1 AND used = 0"
            }
            Of::Job(_) => {
                "SELECT id AS part, job, club FROM part WHERE job = $1 AND state = 'held'
                 UNION ALL SELECT part, job, club FROM part_hold WHERE job = $1 AND used = 0"
            }
        };
        for row in self.rows(query(lookup).bind(of.id())).await? {
            let (part, job, club) = (PartId(row.text("part")?), JobId(row.text("job")?), ClubId(row.text("club")?));
            let note = LifeNote { part: &part, step, job: Some(&job), club: Some(&club), figures: &[], reason: None };
            self.write_life(note, now).await?;
        }
        Ok(())
    }

    /// What is held for a club is in it now.
    ///
    /// # Errors
    /// The database failed.
    pub async fn use_club_parts(&mut self, club: &ClubId, now: Timestamp) -> Result<(), StoreError> {
        self.note_each(Of::Club(club), LifeStep::Used, now).await?;
        let singles = query(
            "UPDATE part SET state = 'used', version = version + 1, saved_at = $1 WHERE club = $2 AND state = 'held'",
        );
        self.change(singles.bind(time_text(now)).bind(club.0.clone())).await?;
        self.change(query("UPDATE part_hold SET used = 1 WHERE club = $1 AND used = 0").bind(club.0.clone())).await?;
        Ok(())
    }

    /// The pieces of counted bulks that are held for a club went into it and are gone, though the club is not: it was
    /// taken apart before it was finished.
    ///
    /// # Errors
    /// The database failed.
    pub async fn use_up_pieces(&mut self, club: &ClubId) -> Result<(), StoreError> {
        self.change(query("UPDATE part_hold SET used = 1 WHERE club = $1 AND used = 0").bind(club.0.clone())).await?;
        Ok(())
    }

    /// What is held for the clubs of a job and not used yet, club by club in the order of the tray. Of a counted bulk
    /// each piece is an entry.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn holds(&mut self, job: &JobId) -> Result<Vec<Hold>, StoreError> {
        let lookup = query(
            "SELECT held.part, held.club, held.code, held.kind FROM (
                 SELECT id AS part, club, code, kind, seq AS part_seq, 0 AS hold_seq FROM part
                     WHERE job = $1 AND state = 'held'
                 UNION ALL
                 SELECT h.part, h.club, p.code, p.kind, p.seq, h.seq FROM part_hold h JOIN part p ON p.id = h.part
                     WHERE h.job = $1 AND h.used = 0
             ) held JOIN job_club c ON c.id = held.club ORDER BY c.slot, held.part_seq, held.hold_seq",
        );
        let rows = self.rows(lookup.bind(job.0.clone())).await?;
        rows.iter()
            .map(|row| {
                Ok(Hold {
                    part: PartId(row.text("part")?),
                    club: ClubId(row.text("club")?),
                    code: row.text("code")?,
                    kind: row.word("kind", PartKind::from_key)?,
                })
            })
            .collect()
    }
}
