//! The clubs that a lot, a part, a model, a scale or a builder reached.

use crate::column::{Columns, Query, Row, key, query, time_text};
use crate::error::StoreError;
use crate::tx::Tx;
use jiff::Timestamp;
use serde::Deserialize;
use trade::club::{Club, ClubEvent};
use trade::club_name::ClubName;
use trade::id::{ClubCode, ClubId};
use trade::job::JobState;
use trade::kind::ClubKind;
use trade::model::PartKind;
use trade::recall::Reach;

/// A club that something reached, and how.
#[derive(Debug, Clone, PartialEq)]
pub struct ReachedClub {
    /// Its identity within its job; none for a club that was noted and never in a job.
    pub club: Option<ClubId>,
    /// Its own code, once it was handed over.
    pub code: Option<ClubCode>,
    /// Number of its job, with its place in the tray and the code on its card.
    pub job: Option<(i64, i64, String)>,
    /// How far the job is.
    pub state: Option<JobState>,
    /// Who plays it.
    pub player: String,
    /// Running number of the customer whose it is.
    pub customer: Option<i64>,
    /// Its kind and number, as people call it: `6-iron`.
    pub name: ClubName,
    /// Why it is in the recall.
    pub reach: Reach,
}

/// What names a club in the document of its target, and the tape under its grip.
#[derive(Deserialize)]
pub(crate) struct Named {
    club_kind: ClubKind,
    number: String,
    #[serde(default)]
    tape: Option<String>,
}

impl Named {
    /// The club as people call it.
    pub(crate) fn name(&self) -> ClubName {
        ClubName::of(self.club_kind, &self.number)
    }
}

macro_rules! reached {
    ($more:literal, $from:expr) => {
        concat!(
            "SELECT j.number AS job_number, j.state, j.player, j.customer, c.id AS club, c.slot, c.card, c.target_body,
                 c.made_of, ",
            $more,
            " FROM ",
            $from
        )
    };
}

/// The queries for the clubs that have or had some parts, by which parts: single ones, pieces of a box, and those pulled again.
macro_rules! of_parts {
    ($which:literal) => {
        [
            reached!(
                "p.kind, p.code AS part_code",
                concat!(
                    "part p JOIN job_club c ON c.id = p.club JOIN job j ON j.id = c.job WHERE ",
                    $which,
                    " AND p.state IN ('held', 'used')"
                )
            ),
            reached!(
                "p.kind, p.code AS part_code",
                concat!(
                    "part p JOIN part_hold h ON h.part = p.id JOIN job_club c ON c.id = h.club JOIN job j ON j.id = c.job
                     WHERE ",
                    $which
                )
            ),
            reached!(
                "p.kind, p.code AS part_code",
                concat!(
                    "part p JOIN part_life l ON l.part = p.id JOIN job_club c ON c.id = l.club JOIN job j ON j.id = c.job
                     WHERE l.step = 'pulled' AND ",
                    $which
                )
            ),
        ]
    };
}

impl Tx {
    /// The clubs glued from adhesive of a lot, those that have or had a part of it, and those that may have its tape.
    /// Batches that were taken back do not count.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn clubs_of_lot(&mut self, lot: &str, shop_tape: Option<&str>) -> Result<Vec<ReachedClub>, StoreError> {
        let lot = lot.trim();
        let glued = query(reached!(
            "b.number AS batch_number, b.lot, b.mixed_at",
            "batch b JOIN batch_club g ON g.batch = b.id JOIN job_club c ON c.id = g.club JOIN job j ON j.id = c.job
             WHERE LOWER(b.lot) = LOWER($1) AND b.id NOT IN (SELECT batch FROM batch_taken_back)"
        ));
        let mut found = self.reached(glued.bind(lot.to_owned()), batch_of).await?;
        let parts = query("SELECT id, code, kind, model, saved_at FROM part WHERE LOWER(lot) = LOWER($1) ORDER BY seq");
        let parts = self.rows(parts.bind(lot.to_owned())).await?;
        self.clubs_of_parts(&parts, shop_tape, &mut found).await?;
        Ok(found)
    }

    /// The clubs that have or had a part, or a piece of a box, and those that may have tape of a roll.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn clubs_of_part(&mut self, code: &str, shop_tape: Option<&str>) -> Result<Vec<ReachedClub>, StoreError> {
        let parts = query("SELECT id, code, kind, model, saved_at FROM part WHERE code_key = $1");
        let parts = self.rows(parts.bind(key(code.trim()))).await?;
        let mut found = Vec::new();
        self.clubs_of_parts(&parts, shop_tape, &mut found).await?;
        Ok(found)
    }

    /// The clubs that have or had a part of a model, those glued with it, and those whose sheet names it as their tape.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn clubs_of_model(
        &mut self,
        code: &str,
        shop_tape: Option<&str>,
    ) -> Result<Vec<ReachedClub>, StoreError> {
        let glued = query(reached!(
            "b.number AS batch_number, b.lot, b.mixed_at",
            "batch b JOIN batch_club g ON g.batch = b.id JOIN job_club c ON c.id = g.club JOIN job j ON j.id = c.job
             WHERE LOWER(b.adhesive) = LOWER($1) AND b.id NOT IN (SELECT batch FROM batch_taken_back)"
        ));
        let mut found = self.reached(glued.bind(code.trim().to_owned()), batch_of).await?;
        let of_model = of_parts!("p.model = (SELECT code FROM model WHERE code_key = $1)");
        self.have_or_had(of_model, &key(code.trim()), &mut found).await?;
        let model = query("SELECT code FROM model WHERE code_key = $1 AND kind = 'tape'").bind(key(code.trim()));
        if let Some(row) = self.row(model).await? {
            let model = row.text("code")?;
            for (row, named) in self.taped(&model, shop_tape).await? {
                found.push(club_of(&row, &named, Reach::Named { model: model.clone() })?);
            }
        }
        Ok(found)
    }

    /// Whether anything was ever read on a scale.
    ///
    /// # Errors
    /// The database failed.
    pub async fn was_read_on(&mut self, scale: &str) -> Result<bool, StoreError> {
        self.any(query("SELECT 1 FROM reading WHERE scale = $1 LIMIT 1").bind(scale.to_owned())).await
    }

    /// The clubs that were read on a scale at or after a time and before another, readings that were taken back left out;
    /// clubs that were read outside of a job among them.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn clubs_of_scale(
        &mut self,
        scale: &str,
        since: Timestamp,
        until: Timestamp,
    ) -> Result<Vec<ReachedClub>, StoreError> {
        let read = query(reached!(
            "r.n, r.first_at, r.last_at",
            "(SELECT club, COUNT(*) AS n, MIN(read_at) AS first_at, MAX(read_at) AS last_at FROM reading
              WHERE read_at >= $2 AND read_at < $3 AND scale = $1 AND id NOT IN (SELECT reading FROM reading_taken_back)
              GROUP BY club) r JOIN job_club c ON c.id = r.club JOIN job j ON j.id = c.job"
        ));
        let read = read.bind(scale.trim().to_owned()).bind(time_text(since)).bind(time_text(until));
        let mut found = self
            .reached(read, |row| {
                let (first_at, last_at) = (row.time("first_at")?, row.time("last_at")?);
                Ok(Reach::Read { n: row.whole("n")?, first_at, last_at })
            })
            .await?;
        // What was read on arrival or at the counter stands in the life of the club alone.
        let lives = query(
            "SELECT e.body AS event, c.body AS club FROM club_event e JOIN club c ON c.code = e.club
             WHERE e.happened_at >= $1 AND e.happened_at < $2 ORDER BY e.seq",
        );
        for row in self.rows(lives.bind(time_text(since)).bind(time_text(until))).await? {
            let event: ClubEvent = row.body("event")?;
            let on = event.figures.iter().filter(|f| f.scale.as_deref() == Some(scale.trim())).count();
            if event.job.is_none() && on > 0 {
                let n = i64::try_from(on).unwrap_or(i64::MAX);
                let club: Club = row.body("club")?;
                found.push(ReachedClub {
                    club: None,
                    name: club.name(),
                    code: Some(club.code),
                    job: None,
                    state: None,
                    player: club.player,
                    customer: club.owner,
                    reach: Reach::Read { n, first_at: event.at, last_at: event.at },
                });
            }
        }
        Ok(found)
    }

    /// The clubs that a builder read, glued or did something else with, at or after a time and before another.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn clubs_of_builder(
        &mut self,
        name: &str,
        since: Timestamp,
        until: Timestamp,
    ) -> Result<Vec<ReachedClub>, StoreError> {
        let bound =
            |sql: &'static str| query(sql).bind(name.trim().to_owned()).bind(time_text(since)).bind(time_text(until));
        let read = bound(reached!(
            "r.n, r.first_at, r.last_at",
            "(SELECT club, COUNT(*) AS n, MIN(read_at) AS first_at, MAX(read_at) AS last_at FROM reading
              WHERE read_at >= $2 AND read_at < $3 AND LOWER(read_by) = LOWER($1) GROUP BY club) r
             JOIN job_club c ON c.id = r.club JOIN job j ON j.id = c.job"
        ));
        let mut found = self
            .reached(read, |row| {
                let (first_at, last_at) = (row.time("first_at")?, row.time("last_at")?);
                Ok(Reach::ReadBy { n: row.whole("n")?, first_at, last_at })
            })
            .await?;
        let mixed = bound(reached!(
            "b.number AS batch_number, b.mixed_at",
            "batch b JOIN batch_club g ON g.batch = b.id JOIN job_club c ON c.id = g.club JOIN job j ON j.id = c.job
             WHERE LOWER(b.mixed_by) = LOWER($1) AND b.mixed_at >= $2 AND b.mixed_at < $3
                 AND b.id NOT IN (SELECT batch FROM batch_taken_back)"
        ));
        let of = |row: &Row| Ok(Reach::MixedBy { batch: row.whole("batch_number")?, mixed_at: row.time("mixed_at")? });
        found.extend(self.reached(mixed, of).await?);
        let done = bound(reached!(
            "e.n, e.last_at",
            "(SELECT club, COUNT(*) AS n, MAX(happened_at) AS last_at FROM event
              WHERE club IS NOT NULL AND happened_at >= $2 AND happened_at < $3 AND LOWER(done_by) = LOWER($1)
              GROUP BY club) e JOIN job_club c ON c.id = e.club JOIN job j ON j.id = c.job"
        ));
        let of = |row: &Row| Ok(Reach::DoneBy { n: row.whole("n")?, last_at: row.time("last_at")? });
        found.extend(self.reached(done, of).await?);
        Ok(found)
    }

    /// The clubs that have or had the parts of [`of_parts`]'s queries.
    async fn have_or_had(
        &mut self,
        [singles, pieces, pulled]: [&'static str; 3],
        which: &str,
        found: &mut Vec<ReachedClub>,
    ) -> Result<(), StoreError> {
        for (sql, reach) in [(singles, part_of as fn(&Row) -> _), (pieces, part_of), (pulled, had_part)] {
            found.extend(self.reached(query(sql).bind(which.to_owned()), reach).await?);
        }
        Ok(())
    }

    /// The clubs that have or had parts, given as their rows.
    async fn clubs_of_parts(
        &mut self,
        parts: &[Row],
        shop_tape: Option<&str>,
        found: &mut Vec<ReachedClub>,
    ) -> Result<(), StoreError> {
        for part in parts {
            let id = part.text("id")?;
            let kind = part.word("kind", PartKind::from_key)?;
            self.have_or_had(of_parts!("p.id = $1"), &id, found).await?;
            if kind == PartKind::Tape {
                let came = query("SELECT happened_at FROM part_life WHERE part = $1 ORDER BY seq LIMIT 1").bind(id);
                let came = match self.row(came).await? {
                    Some(row) => row.time("happened_at")?,
                    None => part.time("saved_at")?,
                };
                self.clubs_of_roll(&part.text("code")?, &part.text("model")?, shop_tape, came, found).await?;
            }
        }
        Ok(())
    }

    /// The clubs that may have tape of a roll: of its model, and first read with tape on since the roll came.
    async fn clubs_of_roll(
        &mut self,
        code: &str,
        model: &str,
        shop_tape: Option<&str>,
        came: Timestamp,
        found: &mut Vec<ReachedClub>,
    ) -> Result<(), StoreError> {
        for (row, named) in self.taped(model, shop_tape).await? {
            let first = query("SELECT MIN(read_at) AS first_at FROM reading WHERE club = $1 AND on_club LIKE '%tape%'");
            let first = self.row(first.bind(row.text("club")?)).await?;
            let first_at = first.map(|row| row.maybe_time("first_at")).transpose()?.flatten();
            if let Some(since_at) = first_at.filter(|at| *at >= came) {
                found.push(club_of(&row, &named, Reach::MayHaveTape { part: code.to_owned(), since_at })?);
            }
        }
        Ok(())
    }

    /// The clubs of all jobs that were not given up whose tape is of a model, as their sheet or the shop says.
    async fn taped(&mut self, model: &str, shop_tape: Option<&str>) -> Result<Vec<(Row, Named)>, StoreError> {
        let clubs = query(reached!(
            "c.plan_body",
            "job_club c JOIN job j ON j.id = c.job WHERE c.plan_body IS NOT NULL AND j.state <> 'dropped'"
        ));
        let mut found = Vec::new();
        for row in self.rows(clubs).await? {
            let named: Named = row.body("target_body")?;
            if named.tape.as_deref().or(shop_tape) == Some(model) {
                found.push((row, named));
            }
        }
        Ok(found)
    }

    async fn reached(
        &mut self,
        lookup: Query,
        reach: impl Fn(&Row) -> Result<Reach, StoreError>,
    ) -> Result<Vec<ReachedClub>, StoreError> {
        let rows = self.rows(lookup).await?;
        rows.iter().map(|row| club_of(row, &row.body("target_body")?, reach(row)?)).collect()
    }
}

fn batch_of(row: &Row) -> Result<Reach, StoreError> {
    Ok(Reach::Batch { batch: row.whole("batch_number")?, lot: row.text("lot")?, mixed_at: row.time("mixed_at")? })
}

fn part_of(row: &Row) -> Result<Reach, StoreError> {
    Ok(Reach::Part { kind: row.word("kind", PartKind::from_key)?, part: row.text("part_code")? })
}

fn had_part(row: &Row) -> Result<Reach, StoreError> {
    Ok(Reach::HadPart { kind: row.word("kind", PartKind::from_key)?, part: row.text("part_code")? })
}

fn club_of(row: &Row, named: &Named, reach: Reach) -> Result<ReachedClub, StoreError> {
    Ok(ReachedClub {
        club: Some(ClubId(row.text("club")?)),
        code: row.maybe_text("made_of")?.map(ClubCode),
        job: Some((row.whole("job_number")?, row.whole("slot")?, row.text("card")?)),
        state: Some(row.word("state", JobState::from_key)?),
        player: row.text("player")?,
        customer: row.maybe_whole("customer")?,
        name: named.name(),
        reach,
    })
}
