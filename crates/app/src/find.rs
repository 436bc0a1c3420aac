//! One field for everything: what a scanner or a hand types, and what it may mean.

use crate::look_up::LookUp;
use crate::stock_list::Scanned;
use crate::{App, AppError, Kind};
use serde::Serialize;
use std::collections::HashSet;
use store::{OrderFilter, Tx};
use trade::club::Club;
use trade::customer;
use trade::error::Noun;
use trade::id::SheetId;
use trade::job::JobState;
use trade::model::PartKind;
use utoipa::ToSchema;
use words::{Words, text};

/// Things that are listed at most.
const SHOWN: usize = 40;
/// Lots of which it is counted how many clubs have something of them.
const LOTS_COUNTED: usize = 3;
/// Letters that are read at most: more is no name and no code.
const LONGEST: usize = 200;

/// Something that a text may mean.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Found {
    /// A customer.
    Customer {
        /// Running number of the customer.
        number: i64,
        /// Their name.
        name: String,
    },
    /// A job.
    Job {
        /// Running number of the job.
        number: i64,
        /// Who the clubs are built for.
        player: String,
        /// Where it stands.
        state: JobState,
    },
    /// A sheet of which no job was made yet.
    Sheet {
        /// Its identity.
        id: SheetId,
        /// Who the clubs are for.
        player: String,
    },
    /// A club of a job, by the code on its card.
    Club {
        /// Number of its job.
        job: i64,
        /// Its place in the tray.
        slot: i64,
    },
    /// A club that lives on, by its code, its name or its player.
    OwnedClub {
        /// Its code as it is kept.
        code: String,
        /// Its number or letter: `6`, `PW`.
        number: String,
        /// Who plays it.
        player: String,
    },
    /// A part or a box of parts, by the code on its label.
    Part {
        /// Its code as it is kept.
        code: String,
        /// Whether it is a head, a shaft, a grip …
        kind: PartKind,
    },
    /// Parts in whose code, model, number, lot or place each word of the text occurs.
    Parts {
        /// The words.
        text: String,
        /// How many, those that are used or gone among them; counted up to 1,000.
        count: i64,
    },
    /// A lot of parts or of adhesive that went into clubs.
    Lot {
        /// As it is written.
        lot: String,
        /// How many clubs have something of it.
        clubs: i64,
    },
    /// An order of parts.
    Order {
        /// Running number of the order.
        number: i64,
    },
    /// A batch of adhesive.
    Batch {
        /// Running number of the batch.
        number: i64,
        /// The lot of its adhesive.
        lot: String,
    },
    /// A model of parts, of adhesive or of tape.
    Model {
        /// What names it in sheets and lists.
        code: String,
        /// What its maker calls it.
        name: String,
        /// Whether it is of heads, shafts, grips …
        kind: PartKind,
    },
    /// A reason or a remark that somebody wrote.
    Note {
        /// As it was written.
        text: String,
        /// Number of the job that it belongs to; none where it belongs to none.
        job: Option<i64>,
        /// Place in the tray of the club that it is about; none where it is about the whole job.
        slot: Option<i64>,
        /// Code of the club that it is about; none where that has none.
        club: Option<String>,
        /// Who wrote it.
        by: String,
    },
}

impl Found {
    fn of_club(club: Club) -> Self {
        Self::OwnedClub { code: club.code.0, number: club.made.row.number, player: club.player }
    }

    /// What it is, in a line.
    #[must_use]
    pub fn words(&self, w: &Words) -> String {
        match self {
            Self::Customer { number, name } => text!(w, "find-customer", name = name, code = customer::code(*number)),
            Self::Job { number, player, .. } => text!(w, "today-job-of", job = *number, player = player),
            Self::Sheet { player, .. } => text!(w, "find-sheet", player = player),
            Self::Club { job, slot } => text!(w, "find-club", job = *job, slot = *slot),
            Self::OwnedClub { code, number, player } => {
                text!(w, "find-owned-club", code = code, club = w.club_number(number), player = player)
            }
            Self::Part { code, kind } => text!(w, "find-part", code = code, kind = kind),
            Self::Parts { text: words, count } => text!(w, "find-parts", text = words, n = *count),
            Self::Lot { lot, clubs } => text!(w, "find-lot", lot = lot, n = *clubs),
            Self::Order { number } => text!(w, "find-order", order = *number),
            Self::Batch { number, .. } => text!(w, "find-batch", batch = *number),
            Self::Model { code, name, kind } => text!(w, "find-model", name = name, kind = kind, code = code),
            Self::Note { text, job: Some(job), by, .. } => {
                text!(w, "find-note-job", text = text, job = *job, by = by)
            }
            Self::Note { text, by, .. } => text!(w, "find-note", text = text, by = by),
        }
    }
}

/// A number with the noun before it, as people type it: `job 1`, `order 12`, `#3`, `7`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Numbered {
    job: bool,
    order: bool,
    batch: bool,
    customer: bool,
    /// Typed with its noun: a job, an order, a batch or a customer and nothing else.
    named: bool,
    number: i64,
}

impl Numbered {
    fn read(text: &str) -> Option<Self> {
        let digits = text
            .rfind(|c: char| !c.is_ascii_digit())
            .map_or(0, |at| at + text[at..].chars().next().map_or(1, char::len_utf8));
        let (before, number) = text.split_at(digits);
        let number = number.parse::<i64>().ok().filter(|n| *n > 0)?;
        let word = before.trim_end_matches(['#', ' ', '.', ':']).trim().to_lowercase();
        let one = |is: &str| word == is;
        // A word of another language before a blank may mean any of them; letters right before the digits are a code.
        let any = word.is_empty()
            || (before.ends_with([' ', '#'])
                && word.chars().all(char::is_alphabetic)
                && !["job", "order", "batch", "customer"].contains(&word.as_str()));
        let read = Self {
            job: any || one("job"),
            order: any || one("order"),
            batch: any || one("batch"),
            customer: any || one("customer"),
            named: !any,
            number,
        };
        (read.job || read.order || read.batch || read.customer).then_some(read)
    }
}

impl App {
    /// What a text may mean. The code of a part or of a job card means that alone, since a scanner types it; so do the
    /// codes of a club and of a customer. Else what a number stands for, and all in which every word of the text stands, whole, as
    /// the beginning of a word or inside of one, what fits best first: customers, jobs, sheets, clubs, models, lots, orders,
    /// batches, reasons and remarks, and how many parts. Accents and capitals do not matter.
    ///
    /// # Errors
    /// What the store says.
    pub async fn find(&self, text: &str) -> Result<Vec<Found>, AppError> {
        Ok(self.looked_up(text, false).await?.found)
    }

    /// The same; where nothing fits, what fits with one slip of the hand in each word: a letter wrong, missing or too many, or
    /// two swapped.
    ///
    /// # Errors
    /// What the store says.
    pub async fn find_near(&self, text: &str) -> Result<FoundNear, AppError> {
        self.looked_up(text, true).await
    }

    async fn looked_up(&self, text: &str, slips: bool) -> Result<FoundNear, AppError> {
        let text = text.trim();
        if text.is_empty() || text.chars().count() > LONGEST {
            return Ok(FoundNear::default());
        }
        let just = |found: Vec<Found>| Ok(FoundNear { found, meant: None });
        match self.scanned(text).await {
            Ok(Scanned::Part { code }) => {
                let kind = self.part(&code).await?.kind;
                return just(vec![Found::Part { code, kind }]);
            }
            Ok(Scanned::Club { job, slot }) => return just(vec![Found::Club { job, slot }]),
            Err(error) if error.kind() == Kind::NotFound => {}
            Err(error) => return Err(error),
        }
        let mut tx = self.store.read().await?;
        if let Some(club) = tx.owned_club(text).await? {
            return just(vec![Found::of_club(club)]);
        }
        if let Some(number) = customer::number_of(text) {
            let row = tx.customer(number).await?.filter(|row| row.deleted_at.is_none());
            return just(row.map(|row| Found::Customer { number, name: row.customer.name }).into_iter().collect());
        }
        let mut found = numbered(&mut tx, text).await?;
        if !found.is_empty() && Numbered::read(text).is_some_and(|asked| asked.named) {
            return just(found);
        }
        let entries = tx.find_entries(text, slips && found.is_empty()).await?;
        let mut lots = 0;
        for entry in entries.entries.iter().filter(|entry| entry.kind != "part").take(SHOWN) {
            let number = || entry.thing.parse::<i64>().unwrap_or_default();
            found.extend(match entry.kind.as_str() {
                "customer" => {
                    let row = tx.customer(number()).await?;
                    row.map(|row| Found::Customer { number: row.number, name: row.customer.name })
                }
                "job" => {
                    let named = tx.job_name(number()).await?;
                    named.map(|(player, state)| Found::Job { number: number(), player, state })
                }
                "club" => tx.owned_club(&entry.thing).await?.map(Found::of_club),
                "sheet" => {
                    let row = tx.sheet(&entry.thing.as_str().into()).await?;
                    row.map(|row| Found::Sheet { id: row.id, player: row.sheet.player })
                }
                "model" => tx.model(&entry.thing).await?.map(|model| Found::Model {
                    code: model.code().to_owned(),
                    name: model.name().to_owned(),
                    kind: model.kind(),
                }),
                "lot" if lots < LOTS_COUNTED => {
                    lots += 1;
                    let reached = tx.clubs_of_lot(&entry.thing, None).await?;
                    let clubs: HashSet<_> = reached.iter().filter_map(|club| club.club.as_ref()).collect();
                    Some(Found::Lot { lot: entry.thing.clone(), clubs: clubs.len() as i64 })
                }
                "order" => Some(Found::Order { number: number() }),
                "batch" => {
                    let batch = tx.batch_by_number(number()).await?;
                    batch.map(|batch| Found::Batch { number: batch.number, lot: batch.lot })
                }
                kind => tx.found_note(kind, &entry.thing).await?.map(|note| Found::Note {
                    text: note.text,
                    job: note.job,
                    slot: note.slot,
                    club: note.club,
                    by: note.by,
                }),
            });
        }
        let words = entries.meant.as_deref().unwrap_or(text);
        match (entries.parts, entries.entries.iter().find(|entry| entry.kind == "part")) {
            (1, Some(only)) => {
                let part = tx.part_by_code(&only.thing).await?;
                found.extend(part.map(|part| Found::Part { code: part.code, kind: part.kind }));
            }
            (0, _) => {}
            (count, _) => found.push(Found::Parts { text: words.to_owned(), count }),
        }
        let mut seen = Vec::with_capacity(found.len());
        for one in found {
            if !seen.contains(&one) {
                seen.push(one);
            }
        }
        let meant = entries.meant.filter(|_| !seen.is_empty());
        Ok(FoundNear { found: seen, meant })
    }

    /// [`find`](Self::find), where nothing found is a refusal.
    ///
    /// # Errors
    /// Nothing fits; what the store says.
    pub async fn find_some(&self, text: &str) -> Result<Vec<Found>, AppError> {
        let found = self.find(text).await?;
        if found.is_empty() {
            return Err(AppError::not_found(Noun::Anything, text.trim(), &LookUp::Find));
        }
        Ok(found)
    }
}

/// What was found, and the words that were taken for those that were typed.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct FoundNear {
    /// The things, what fits best first.
    pub found: Vec<Found>,
    /// What was looked for in place of what was typed, where nothing had that; none where something had.
    pub meant: Option<String>,
}

/// What the number in a text may stand for.
async fn numbered(tx: &mut Tx, text: &str) -> Result<Vec<Found>, AppError> {
    let mut found = Vec::new();
    let Some(asked) = Numbered::read(text) else { return Ok(found) };
    let number = asked.number;
    if asked.job
        && let Some((player, state)) = tx.job_name(number).await?
    {
        found.push(Found::Job { number, player, state });
    }
    if asked.order && tx.count_orders(&OrderFilter { number: Some(number), ..OrderFilter::default() }).await? > 0 {
        found.push(Found::Order { number });
    }
    if asked.batch
        && let Some(batch) = tx.batch_by_number(number).await?
    {
        found.push(Found::Batch { number, lot: batch.lot });
    }
    if asked.customer
        && let Some(row) = tx.customer(number).await?.filter(|row| row.deleted_at.is_none())
    {
        found.push(Found::Customer { number, name: row.customer.name });
    }
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::Numbered;

    #[test]
    fn a_number_is_read_with_its_noun_and_a_code_is_none() {
        let only = |text: &str| Numbered::read(text).map(|n| (n.job, n.order, n.batch, n.customer, n.number));
        assert_eq!(only("job 1"), Some((true, false, false, false, 1)));
        assert_eq!(only("Job1"), Some((true, false, false, false, 1)));
        assert_eq!(only("order #12"), Some((false, true, false, false, 12)));
        assert_eq!(only("customer 3"), Some((false, false, false, true, 3)));
        assert_eq!(only("7"), Some((true, true, true, true, 7)));
        assert_eq!(only("#7"), Some((true, true, true, true, 7)));
        assert_eq!(only("Auftrag 7"), Some((true, true, true, true, 7)), "any language before a blank");
        for text in ["S7-1", "D3", "H7", "job", "job 0", "Ada Fenwick", "K-2 8é", "job -1x"] {
            assert_eq!(only(text), None, "{text}");
        }
    }
}
