//! The ledger of a job: everything that happened to its clubs, entry by entry, as it was written, with the chain that seals it.

use crate::glue::{Batch, pot_life_until, ready_at};
use crate::record::Record;
use crate::seal::{Chain, Seal, Sealed, SealedRow, SealedValue, Verified};
use fact::Told;
use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use trade::kind::closed_list;
use trade::model::Library;
use trade::reading::{Reading, Unit, What};
use trade::step::Strength;
use utoipa::ToSchema;

closed_list! {
    /// How the doubt about a reading ended.
    DoubtEnd {
        /// Somebody stood by it.
        StoodBy = "stood_by";
        /// It was read again, and the new reading counts.
        ReadAgain = "read_again";
        /// It was taken back.
        TakenBack = "taken_back";
        /// It is still doubted.
        Open = "open";
    }
}

/// The clock of a batch: how long it could be used, and from when its joints hold.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct BatchClock {
    /// Number of the batch.
    pub batch: i64,
    /// Until when it could be used; none where its model gives no pot life for the room.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub usable_until: Option<Timestamp>,
    /// From when its joints may be handled; none where its model gives no time for the room.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub handling_from: Option<Timestamp>,
    /// From when its joints are cured; none where its model gives no time for the room.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub cured_from: Option<Timestamp>,
}

/// What a ledger says of a reading.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct LedgerReading {
    /// What the builder calls the step.
    pub step: String,
    /// The quantity.
    pub what: What,
    /// Unit of the figures.
    pub unit: Unit,
    /// What was read.
    pub value: f64,
    /// The same as it was typed or sent by the scale.
    pub typed: String,
    /// Key of the scale that it was read on; none for what is read on none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scale: Option<String>,
    /// The forecast that stood when it came; none where there was none.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub forecast: Option<f64>,
    /// Half width of the 95 % band of the forecast.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub forecast_band: Option<f64>,
    /// Reading less forecast.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub difference: Option<f64>,
    /// Whether it counts.
    pub stands: bool,
    /// Whether it is doubted by all other readings of the job.
    pub doubted: bool,
    /// How a doubt ended; none where nothing was doubted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ended: Option<DoubtEnd>,
    /// The entry of the reading that it replaces.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub replaces_entry: Option<i64>,
}

/// One entry of the ledger.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct LedgerEntry {
    /// Its place in the chain, from 1.
    pub entry: i64,
    /// What sort of entry it is.
    pub kind: Sealed,
    /// When it happened; none for a row that has no time of its own.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub at: Option<Timestamp>,
    /// Who did it; empty where the row names nobody.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub by: String,
    /// Place of the club in the tray; none for what concerns the whole job.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slot: Option<i64>,
    /// What was read, of a reading.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reading: Option<LedgerReading>,
    /// The entry that it is about: the reading that was taken back or stood by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub about_entry: Option<i64>,
    /// Number of the batch that it is about.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub batch: Option<i64>,
    /// Key of what was done, of an entry of the log: `plan_accepted`, `let_pass`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub deed: String,
    /// The reason that was given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reason: Option<Told>,
    /// Whether the row is there as it was sealed.
    pub intact: bool,
    /// SHA-256 of the entry, which holds that of the entry before it.
    pub sha256: String,
}

/// The ledger of a job.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Ledger {
    /// The record: what was asked and built, parts with their lots, batches, margins.
    pub record: Record,
    /// The clocks of its batches.
    pub clocks: Vec<BatchClock>,
    /// Everything that was written, in the order of the chain.
    pub entries: Vec<LedgerEntry>,
    /// What came of holding it against the chain.
    pub seal: Verified,
}

/// The ledger of a record and its chain. `reason_of` gives the reason in the document of an entry of the log, where there is one.
#[must_use]
pub fn ledger(record: Record, chain: &Chain, library: &Library, reason_of: &dyn Fn(&str) -> Option<String>) -> Ledger {
    let seal = chain.verify(None);
    let rows: BTreeMap<(Sealed, &str), &SealedRow> =
        chain.rows.iter().map(|row| ((row.table, row.row.as_str()), row)).collect();
    let place_of = |table: Sealed, row: &str| {
        chain.seals.iter().find(|seal| seal.table == table && seal.row == row).map(|seal| seal.entry)
    };
    let slot_of = |club: &str| record.clubs.iter().find(|one| one.club.as_str() == club).map(|one| one.slot);
    let batch_of = |id: &str| record.batches.iter().find(|batch| batch.id.as_str() == id).map(|batch| batch.number);
    let slot_of_reading = |id: &str| {
        let text = rows.get(&(Sealed::Reading, id)).and_then(|row| text(row, "club"));
        text.and_then(slot_of)
    };
    let entry = |one: &Seal| {
        let row = rows.get(&(one.table, one.row.as_str())).copied();
        let get = |column: &str| row.and_then(|row| text(row, column));
        let time = |column: &str| get(column).and_then(|at| at.parse::<Timestamp>().ok());
        let by = |column: &str| get(column).unwrap_or_default().to_owned();
        let bare = LedgerEntry {
            entry: one.entry,
            kind: one.table,
            at: None,
            by: String::new(),
            slot: get("club").and_then(slot_of),
            reading: None,
            about_entry: None,
            batch: None,
            deed: String::new(),
            reason: None,
            intact: seal.faults.iter().all(|fault| fault.entry != Some(one.entry)),
            sha256: one.sha256.clone(),
        };
        let said = || LedgerEntry {
            at: time("said_at"),
            by: by("said_by"),
            reason: get("why").filter(|why| !why.is_empty()).map(|why| Told::verbatim(why.to_owned())),
            ..bare.clone()
        };
        match one.table {
            Sealed::Reading => LedgerEntry {
                at: time("read_at"),
                by: by("read_by"),
                reading: reading_of(&record, &one.row, &|id| place_of(Sealed::Reading, id)),
                ..bare
            },
            Sealed::TakenBack | Sealed::StoodBy => {
                let taken_back = found(&record, &one.row).and_then(|(reading, ..)| reading.taken_back.clone());
                let said = said();
                LedgerEntry {
                    about_entry: place_of(Sealed::Reading, &one.row),
                    slot: slot_of_reading(&one.row),
                    reason: taken_back.filter(|_| one.table == Sealed::TakenBack).or(said.reason.clone()),
                    ..said
                }
            }
            Sealed::Event => LedgerEntry {
                at: time("happened_at"),
                by: by("done_by"),
                deed: by("kind"),
                reason: get("body").and_then(reason_of).map(Told::verbatim),
                ..bare
            },
            Sealed::Batch => {
                LedgerEntry { at: time("mixed_at"), by: by("mixed_by"), batch: batch_of(&one.row), ..bare }
            }
            Sealed::Glued => LedgerEntry { batch: get("batch").and_then(batch_of), ..bare },
            Sealed::BatchTakenBack => LedgerEntry { batch: batch_of(&one.row), ..said() },
            Sealed::Finished => LedgerEntry { at: time("finished_at"), ..bare },
            Sealed::Asked => LedgerEntry { slot: slot_of(&one.row), ..bare },
        }
    };
    let entries = chain.seals.iter().map(entry).collect();
    let clocks = record.batches.iter().map(|batch| clock(batch, library)).collect();
    Ledger { record, clocks, entries, seal }
}

impl Ledger {
    /// The card of a club of the job, by its place in the tray.
    #[must_use]
    pub fn card(&self, slot: i64) -> &str {
        self.record.clubs.iter().find(|club| club.slot == slot).map_or("", |club| &club.card)
    }
}

fn text<'a>(row: &'a SealedRow, column: &str) -> Option<&'a str> {
    match row.values.get(column)? {
        SealedValue::Text(text) => Some(text),
        _ => None,
    }
}

/// A reading of the record with whether it stands and whether it is doubted.
fn found<'a>(record: &'a Record, id: &str) -> Option<(&'a Reading, bool, bool)> {
    let mut all = record.clubs.iter().flat_map(|club| &club.readings);
    all.find(|one| one.reading.id.as_str() == id).map(|one| (&one.reading, one.stands, one.doubted))
}

fn reading_of(record: &Record, id: &str, place_of: &dyn Fn(&str) -> Option<i64>) -> Option<LedgerReading> {
    let (reading, stands, doubted) = found(record, id)?;
    let read_again = record
        .clubs
        .iter()
        .flat_map(|club| &club.readings)
        .any(|other| other.reading.replaces.as_ref() == Some(&reading.id) && other.reading.taken_back.is_none());
    let ended = if reading.taken_back.is_some() {
        Some(DoubtEnd::TakenBack)
    } else if read_again {
        Some(DoubtEnd::ReadAgain)
    } else if reading.insisted {
        Some(DoubtEnd::StoodBy)
    } else {
        doubted.then_some(DoubtEnd::Open)
    };
    Some(LedgerReading {
        step: record.step_name(&reading.step).to_owned(),
        what: reading.what,
        unit: reading.unit,
        value: reading.value,
        typed: reading.typed.clone(),
        scale: reading.scale.clone(),
        forecast: reading.forecast.map(|forecast| forecast.value),
        forecast_band: reading.forecast.map(|forecast| forecast.band),
        difference: reading.forecast.map(|forecast| reading.value - forecast.value),
        stands,
        doubted,
        ended,
        replaces_entry: reading.replaces.as_ref().and_then(|id| place_of(id.as_str())),
    })
}

fn clock(batch: &Batch, library: &Library) -> BatchClock {
    let adhesive = library.adhesive(&batch.adhesive).ok();
    let ready = |strength| adhesive.and_then(|adhesive| ready_at(batch, adhesive, strength).ok().flatten());
    BatchClock {
        batch: batch.number,
        usable_until: adhesive.and_then(|adhesive| pot_life_until(batch, adhesive).ok()),
        handling_from: ready(Strength::Handling),
        cured_from: ready(Strength::Full),
    }
}
