//! The clubs that have adhesive or a part of a lot: whom a bad lot reached.

use crate::column::{Columns, Row, query};
use crate::error::StoreError;
use crate::tx::Tx;
use serde::Deserialize;
use trade::club_name::ClubName;
use trade::kind::ClubKind;
use trade::model::PartKind;

/// A club that has something of a lot.
#[derive(Debug, Clone, PartialEq)]
pub struct ClubOfLot {
    /// Number of its job.
    pub job: i64,
    /// Who the club was built for.
    pub player: String,
    /// Place in the tray.
    pub slot: i64,
    /// Its kind and number, as people call it: `6-iron`.
    pub club: ClubName,
    /// Why it is listed: the batch that it was glued from, or a part that is of the lot.
    pub of_lot: OfLot,
}

/// What of a club is of a lot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum OfLot {
    /// Its joint was glued from this batch of the lot's adhesive.
    Batch(i64),
    /// This part is of the lot.
    Part(PartKind, String),
}

/// What names a club in the document of its target.
#[derive(Deserialize)]
struct Named {
    club_kind: ClubKind,
    number: String,
}

impl Tx {
    /// The clubs glued from adhesive of a lot, and those with a part of it, in the order of jobs and trays. Capitals do
    /// not matter.
    ///
    /// # Errors
    /// The database failed, or a row is damaged.
    pub async fn clubs_of_lot(&mut self, lot: &str) -> Result<Vec<ClubOfLot>, StoreError> {
        let lot = lot.trim().to_lowercase();
        let glued = query(
            "SELECT j.number AS job_number, j.player, c.slot, c.target_body, b.number AS batch_number
             FROM batch b JOIN batch_club g ON g.batch = b.id JOIN job_club c ON c.id = g.club
                 JOIN job j ON j.id = c.job
             WHERE LOWER(b.lot) = $1 AND b.id NOT IN (SELECT batch FROM batch_taken_back)",
        );
        let built = query(
            "SELECT j.number AS job_number, j.player, c.slot, c.target_body, p.kind, p.code
             FROM part p JOIN job_club c ON c.id = p.club JOIN job j ON j.id = c.job
             WHERE LOWER(p.lot) = $1",
        );
        let mut found = Vec::new();
        for row in self.rows(glued.bind(lot.clone())).await? {
            found.push(club_of(&row, OfLot::Batch(row.whole("batch_number")?))?);
        }
        for row in self.rows(built.bind(lot)).await? {
            found.push(club_of(&row, OfLot::Part(row.word("kind", PartKind::from_key)?, row.text("code")?))?);
        }
        found.sort_by_key(|club| (club.job, club.slot));
        Ok(found)
    }
}

fn club_of(row: &Row, of_lot: OfLot) -> Result<ClubOfLot, StoreError> {
    let named: Named = row.body("target_body")?;
    Ok(ClubOfLot {
        job: row.whole("job_number")?,
        player: row.text("player")?,
        slot: row.whole("slot")?,
        club: ClubName::of(named.club_kind, &named.number),
        of_lot,
    })
}
