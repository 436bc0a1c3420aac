//! The chain of seals of a job's record: a later change, a removal or an insertion in the database is seen.
//!
//! Each row that the record rests on gets an entry, in the order in which the rows were written: the SHA-256 (FIPS 180-4) of
//! the row, and the SHA-256 of the entry, which holds the digest of the row and that of the entry before it. What is digested is text
//! in the canonical form of RFC 8785, so that any program can make it again:
//!
//! - the row: `{"row":{…},"table":"reading"}`, its columns by their names in the order of the alphabet, those without a value
//!   left out, figures in the unit that the column's name ends with;
//! - the entry: `{"entry":3,"job":"…","late":0,"previous":"…","row":"…","row_sha256":"…","table":"reading"}`, `previous`
//!   being empty in the first.
//!
//! A column that comes later is left out of the rows of before, which have no value there, so their digests stay. Deleting a
//! customer changes none of these rows, so the chain still holds.

use jiff::Timestamp;
use serde::{Deserialize, Serialize};
use sha2::{Digest, Sha256};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;
use trade::kind::closed_list;
use utoipa::ToSchema;

closed_list! {
    /// A table whose rows are sealed, as the entry of a ledger.
    Sealed {
        /// A reading.
        Reading = "reading";
        /// A reading was taken back.
        TakenBack = "reading_taken_back";
        /// Somebody stood by a doubted reading.
        StoodBy = "reading_insisted";
        /// An entry of the log.
        Event = "event";
        /// A batch of adhesive.
        Batch = "batch";
        /// A club was glued from a batch.
        Glued = "batch_club";
        /// A batch was taken back.
        BatchTakenBack = "batch_taken_back";
        /// Where a finished club came out.
        Finished = "finished_club";
        /// What the sheet asked of a club and what was planned for it, as it was at the end.
        Asked = "job_club";
    }
}

closed_list! {
    /// What is wrong with an entry of a sealed record.
    SealFault {
        /// A row is not what it was when it was sealed.
        Changed = "changed";
        /// A sealed row is gone.
        Gone = "gone";
        /// A row came into the database without a seal.
        Added = "added";
        /// The entry of the chain itself was changed.
        SealChanged = "seal_changed";
        /// An entry of the chain is gone.
        SealGone = "seal_gone";
        /// The chain does not have the end that the paper shows.
        OtherEnd = "other_end";
    }
}

/// A value of a sealed row.
#[derive(Debug, Clone, PartialEq)]
pub enum SealedValue {
    /// A text.
    Text(String),
    /// A whole number.
    Whole(i64),
    /// A figure.
    Real(f64),
}

/// A row as it is in the database.
#[derive(Debug, Clone, PartialEq)]
pub struct SealedRow {
    /// The table that holds it, which is also its kind in the ledger.
    pub table: Sealed,
    /// What names it in its table.
    pub row: String,
    /// Its columns that have a value.
    pub values: BTreeMap<String, SealedValue>,
}

impl SealedRow {
    /// The text that is digested.
    #[must_use]
    pub fn canonical(&self) -> String {
        let mut text = String::from("{\"row\":{");
        for (i, (column, value)) in self.values.iter().enumerate() {
            if i > 0 {
                text.push(',');
            }
            string(&mut text, column);
            text.push(':');
            match value {
                SealedValue::Text(value) => string(&mut text, value),
                SealedValue::Whole(value) => text.push_str(&value.to_string()),
                SealedValue::Real(value) => figure(&mut text, *value),
            }
        }
        text.push_str("},\"table\":");
        string(&mut text, self.table.key());
        text.push('}');
        text
    }

    /// The digest of the row.
    #[must_use]
    pub fn sha256(&self) -> String {
        digest(&self.canonical())
    }
}

/// An entry of the chain.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct Seal {
    /// Its place in the chain of the job, from 1.
    pub entry: i64,
    /// The table of the row.
    pub table: Sealed,
    /// What names the row in its table.
    pub row: String,
    /// SHA-256 of the row, 64 hexadecimal digits.
    pub row_sha256: String,
    /// SHA-256 of the entry, which holds that of the entry before it.
    pub sha256: String,
    /// Whether the row was there before the chain was kept: it was sealed when the database was brought up to date.
    pub late: bool,
}

impl Seal {
    /// The entry for a row, after the last one of the job.
    #[must_use]
    pub fn after(previous: Option<&Self>, job: &str, row: &SealedRow, late: bool) -> Self {
        let entry = previous.map_or(1, |seal| seal.entry + 1);
        let unsigned = Self {
            entry,
            table: row.table,
            row: row.row.clone(),
            row_sha256: row.sha256(),
            sha256: String::new(),
            late,
        };
        let sha256 = unsigned.digest_after(previous.map_or("", |seal| &seal.sha256), job);
        Self { sha256, ..unsigned }
    }

    fn digest_after(&self, previous: &str, job: &str) -> String {
        let mut text = format!("{{\"entry\":{},\"job\":", self.entry);
        string(&mut text, job);
        let _ = write!(text, ",\"late\":{},\"previous\":", i64::from(self.late));
        for (name, value) in
            [("", previous), ("row", &self.row), ("row_sha256", &self.row_sha256), ("table", self.table.key())]
        {
            if !name.is_empty() {
                let _ = write!(text, ",\"{name}\":");
            }
            string(&mut text, value);
        }
        text.push('}');
        digest(&text)
    }
}

/// Something that is wrong with a sealed record.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct FoundFault {
    /// What is wrong.
    pub fault: SealFault,
    /// Place of the entry in the chain; none for a row that has no seal.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub entry: Option<i64>,
    /// The table of the row; none where only the chain is wrong.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub table: Option<Sealed>,
    /// What names the row in its table; empty where only the chain is wrong.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub row: String,
}

/// What came of holding a record against its chain.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
pub struct Verified {
    /// Running number of the job.
    pub job_number: i64,
    /// Whether nothing was changed, removed or inserted as far as the chain can tell.
    pub intact: bool,
    /// Entries of the chain.
    pub entries: i64,
    /// How many of them are older than the chain: what was changed before then is not seen.
    pub late_entries: i64,
    /// Since when the chain of this database is kept.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub kept_from: Option<Timestamp>,
    /// The end of the chain: SHA-256 of its last entry. None where nothing was sealed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub end_sha256: Option<String>,
    /// The entry that has the end which the paper shows; none where nobody asked, or no entry has it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub printed_entry: Option<i64>,
    /// What is wrong, by entry.
    pub faults: Vec<FoundFault>,
}

/// A job's chain with the rows that are there now.
#[derive(Debug, Clone)]
pub struct Chain {
    /// Identity of the job, as its entries say it.
    pub job: String,
    /// Running number of the job.
    pub job_number: i64,
    /// Its entries, by place.
    pub seals: Vec<Seal>,
    /// The rows that should be sealed, as they are now.
    pub rows: Vec<SealedRow>,
    /// Since when the chain of this database is kept.
    pub kept_from: Option<Timestamp>,
}

/// How many digits of a printed end are asked for at least: 64 bits cannot be met by trying.
pub const PRINTED_DIGITS: usize = 16;

/// The digits of an end as it was typed: without blanks, in small letters. None where they are too few, or no digits.
#[must_use]
pub fn printed_end(typed: &str) -> Option<String> {
    let digits: String = typed.chars().filter(|c| !c.is_whitespace()).map(|c| c.to_ascii_lowercase()).collect();
    let sound = (PRINTED_DIGITS..=64).contains(&digits.len()) && digits.chars().all(|c| c.is_ascii_hexdigit());
    sound.then_some(digits)
}

impl Chain {
    /// Holds the rows against the chain, and the chain against itself. `printed` is the end that a paper shows, or its first digits, as
    /// [`printed_end`] gives them.
    #[must_use]
    pub fn verify(&self, printed: Option<&str>) -> Verified {
        let mut faults = self.broken();
        faults.extend(self.rows_against());
        let printed_entry = printed.and_then(|end| self.seals.iter().find(|s| s.sha256.starts_with(end)));
        if printed.is_some() && printed_entry.is_none() {
            faults.push(FoundFault { fault: SealFault::OtherEnd, entry: None, table: None, row: String::new() });
        }
        // What has no entry comes last.
        faults.sort_by_key(|fault| fault.entry.unwrap_or(i64::MAX));
        let count = |n: usize| i64::try_from(n).unwrap_or(i64::MAX);
        Verified {
            job_number: self.job_number,
            intact: faults.is_empty(),
            entries: count(self.seals.len()),
            late_entries: count(self.seals.iter().filter(|seal| seal.late).count()),
            kept_from: self.kept_from,
            end_sha256: self.seals.last().map(|seal| seal.sha256.clone()),
            printed_entry: printed_entry.map(|seal| seal.entry),
            faults,
        }
    }

    /// Entries that are not what they were, and places without one.
    fn broken(&self) -> Vec<FoundFault> {
        let mut faults = Vec::new();
        let (mut place, mut previous) = (1, "");
        for seal in &self.seals {
            let whole = seal.entry == place;
            for gone in place..seal.entry {
                let fault = SealFault::SealGone;
                faults.push(FoundFault { fault, entry: Some(gone), table: None, row: String::new() });
            }
            // After a gap nothing can be said of an entry but that it stands.
            if whole && seal.digest_after(previous, &self.job) != seal.sha256 {
                let (fault, table) = (SealFault::SealChanged, Some(seal.table));
                faults.push(FoundFault { fault, entry: Some(seal.entry), table, row: seal.row.clone() });
            }
            (place, previous) = (seal.entry + 1, &seal.sha256);
        }
        faults
    }

    /// Rows that are not what was sealed, and rows without a seal.
    fn rows_against(&self) -> Vec<FoundFault> {
        let rows: BTreeMap<(Sealed, &str), &SealedRow> =
            self.rows.iter().map(|row| ((row.table, row.row.as_str()), row)).collect();
        // What was sealed twice, since a job was opened again, is held against the last one.
        let last: BTreeMap<(Sealed, &str), &Seal> =
            self.seals.iter().map(|seal| ((seal.table, seal.row.as_str()), seal)).collect();
        let mut faults = Vec::new();
        for (name, seal) in &last {
            let fault = match rows.get(name) {
                None => SealFault::Gone,
                Some(row) if row.sha256() != seal.row_sha256 => SealFault::Changed,
                Some(_) => continue,
            };
            faults.push(FoundFault { fault, entry: Some(seal.entry), table: Some(seal.table), row: seal.row.clone() });
        }
        let finished: BTreeSet<&str> =
            rows.keys().filter(|(table, _)| *table == Sealed::Finished).map(|(_, row)| *row).collect();
        for ((table, row), _) in rows.iter().filter(|(name, _)| !last.contains_key(*name)) {
            // What a club is asked to be is sealed when it is finished.
            if *table != Sealed::Asked || finished.contains(row) {
                let fault = SealFault::Added;
                faults.push(FoundFault { fault, entry: None, table: Some(*table), row: (*row).to_owned() });
            }
        }
        faults
    }
}

fn digest(text: &str) -> String {
    hex(&Sha256::digest(text.as_bytes()))
}

/// Bytes in hexadecimal digits.
#[must_use]
pub fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::with_capacity(2 * bytes.len()), |mut text, byte| {
        // Writing to a string does not fail.
        let _ = write!(text, "{byte:02x}");
        text
    })
}

/// A string as RFC 8785, 3.2.2.2 writes it.
fn string(text: &mut String, value: &str) {
    text.push('"');
    for c in value.chars() {
        match c {
            '"' => text.push_str("\\\""),
            '\\' => text.push_str("\\\\"),
            '\u{8}' => text.push_str("\\b"),
            '\t' => text.push_str("\\t"),
            '\n' => text.push_str("\\n"),
            '\u{c}' => text.push_str("\\f"),
            '\r' => text.push_str("\\r"),
            c if c < ' ' => text.push_str(&format!("\\u{:04x}", c as u32)),
            c => text.push(c),
        }
    }
    text.push('"');
}

/// A figure as RFC 8785, 3.2.2.3 writes it: the shortest digits that give the same double, as in ECMAScript.
fn figure(text: &mut String, value: f64) {
    let size = value.abs();
    // Writing to a string does not fail.
    let _ = if value == 0.0 {
        write!(text, "0")
    } else if (1e-6..1e21).contains(&size) {
        write!(text, "{value}")
    } else {
        let digits = format!("{value:e}");
        match digits.split_once('e') {
            Some((mantissa, exponent)) if !exponent.starts_with('-') => write!(text, "{mantissa}e+{exponent}"),
            _ => write!(text, "{digits}"),
        }
    };
}

#[cfg(test)]
mod tests {
    use super::{Chain, Seal, SealFault, Sealed, SealedRow, SealedValue, figure, printed_end, string};

    /// Samples of RFC 8785, appendix B, from memory; Node's `JSON.stringify` writes each in the same way.
    #[test]
    fn figures_are_written_as_the_standard_shows() {
        for (bits, shown) in [
            (0x0000_0000_0000_0000, "0"),
            (0x8000_0000_0000_0000, "0"),
            (0x0000_0000_0000_0001, "5e-324"),
            (0x7fef_ffff_ffff_ffff, "1.7976931348623157e+308"),
            (0x4340_0000_0000_0000, "9007199254740992"),
            (0x4430_0000_0000_0000, "295147905179352830000"),
            (0x44b5_2d02_c7e1_4af5, "9.999999999999997e+22"),
            (0x44b5_2d02_c7e1_4af6, "1e+23"),
            (0x444b_1ae4_d6e2_ef4f, "999999999999999900000"),
            (0x444b_1ae4_d6e2_ef50, "1e+21"),
            (0x3eb0_c6f7_a0b5_ed8d, "0.000001"),
            (0x41b3_de43_5555_5555, "333333333.3333333"),
            (0xbecb_f647_612f_3696, "-0.0000033333333333333333"),
        ] {
            let mut text = String::new();
            figure(&mut text, f64::from_bits(bits));
            assert_eq!(text, shown);
        }
    }

    #[test]
    fn texts_are_written_as_the_standard_shows() {
        // After the example of RFC 8785, 3.2.2.
        let mut text = String::new();
        string(&mut text, "\u{20ac}$\u{f}\nA'B\"\\\\\"/");
        assert_eq!(text, r#""€$\u000f\nA'B\"\\\\\"/""#);
    }

    fn row(name: &str, value: f64) -> SealedRow {
        let values = [("id", SealedValue::Text(name.into())), ("value", SealedValue::Real(value))];
        let values = values.into_iter().map(|(column, value)| (column.to_owned(), value)).collect();
        SealedRow { table: Sealed::Reading, row: name.into(), values }
    }

    fn chain() -> Chain {
        let rows: Vec<SealedRow> = [("a", 1.5), ("b", 2.0), ("c", 3.0)].map(|(name, value)| row(name, value)).into();
        let mut seals: Vec<Seal> = Vec::new();
        for row in &rows {
            seals.push(Seal::after(seals.last(), "job", row, false));
        }
        Chain { job: "job".into(), job_number: 7, seals, rows, kept_from: None }
    }

    fn faults(chain: &Chain) -> Vec<(SealFault, Option<i64>)> {
        chain.verify(None).faults.iter().map(|found| (found.fault, found.entry)).collect()
    }

    /// The digests were made with `printf '%s' TEXT | sha256sum` (GNU coreutils) of the texts that are written out here.
    #[test]
    fn the_digests_are_those_of_another_program() {
        let chain = chain();
        assert_eq!(chain.rows[0].canonical(), r#"{"row":{"id":"a","value":1.5},"table":"reading"}"#);
        assert_eq!(chain.seals[0].row_sha256, "7d33712dd9c97cc7693b3aefdc93d6993657bd74ada1034db8ace3a580dd55dd");
        // {"entry":1,"job":"job","late":0,"previous":"","row":"a","row_sha256":"…","table":"reading"}
        assert_eq!(chain.seals[0].sha256, "d1a44f014c0333ff7229293492e7f7fdedb44e1243cb8844ddb0a246cf575d40");
    }

    #[test]
    fn each_way_of_changing_it_is_told_apart() {
        assert!(chain().verify(None).intact);
        let changed = |change: &dyn Fn(&mut Chain)| {
            let mut chain = chain();
            change(&mut chain);
            faults(&chain)
        };
        assert_eq!(changed(&|c| c.rows[1] = row("b", 2.1)), [(SealFault::Changed, Some(2))]);
        assert_eq!(changed(&|c| drop(c.rows.remove(1))), [(SealFault::Gone, Some(2))]);
        assert_eq!(changed(&|c| c.rows.push(row("d", 1.0))), [(SealFault::Added, None)]);
        assert_eq!(changed(&|c| drop(c.seals.remove(0))), [(SealFault::SealGone, Some(1)), (SealFault::Added, None)]);
        // Row and digest of it changed alike: the chain does not follow.
        let both = changed(&|c| {
            c.rows[1] = row("b", 2.1);
            c.seals[1].row_sha256 = c.rows[1].sha256();
        });
        assert_eq!(both, [(SealFault::SealChanged, Some(2))]);
        assert_eq!(changed(&|c| c.seals[0].late = true), [(SealFault::SealChanged, Some(1))]);
    }

    #[test]
    fn the_last_row_is_missed_by_the_printed_end_alone() {
        let whole = chain();
        let end = whole.verify(None).end_sha256.expect("an end");
        let mut cut = whole.clone();
        cut.rows.pop();
        cut.seals.pop();
        assert!(cut.verify(None).intact, "the limit that is told of");
        let typed = printed_end(&format!("{} {}", &end[..8].to_uppercase(), &end[8..20])).expect("digits");
        assert_eq!(whole.verify(Some(&typed)).printed_entry, Some(3));
        assert_eq!(cut.verify(Some(&typed)).faults[0].fault, SealFault::OtherEnd);
        // What was read after the paper was printed is no fault.
        let mut more = whole;
        more.rows.push(row("d", 4.0));
        more.seals.push(Seal::after(more.seals.last(), "job", &more.rows[3], false));
        assert_eq!((more.verify(Some(&typed)).intact, more.verify(Some(&typed)).printed_entry), (true, Some(3)));
        assert_eq!((printed_end("12ab"), printed_end("no digits at all")), (None, None));
    }
}
