//! What the one field finds: things by parts of their words, and by words with one slip of the hand.

mod note;

pub use note::FoundNote;

use crate::column::{Columns, Row, anywhere, query};
use crate::engine::Backend;
use crate::error::StoreError;
use crate::find_line::{NO_PART, folded, one_slip_apart};
use crate::tx::Tx;
use sqlx::AssertSqlSafe;

/// Something that was found by its words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoundEntry {
    /// What sort of thing: `customer`, `job`, `part` …
    pub kind: String,
    /// Its number, code or identity.
    pub thing: String,
    /// How well the words fit: 4 for each that is a word of it, 2 for the beginning of one, 1 for a part of one.
    pub fit: i64,
}

/// What was found, and what was looked for.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct FoundEntries {
    /// The things, what fits best first; parts last.
    pub entries: Vec<FoundEntry>,
    /// How many parts fit, counted up to [`PARTS_COUNTED`].
    pub parts: i64,
    /// The words that were looked for in place of those that were typed, where nothing had those.
    pub meant: Option<String>,
}

/// Parts are counted up to here: who finds more looks in the stock.
pub const PARTS_COUNTED: i64 = 1000;
/// Words that are looked at.
const WORDS: usize = 8;
/// Things of one way of fitting that are looked at.
const LOOKED_AT: i64 = 200;
/// Words that may be meant by one with a slip.
const MEANT: usize = 4;
/// Kinds in the order in which equally good ones are shown.
const ORDER: [&str; 9] = ["customer", "job", "club", "sheet", "lot", "order", "batch", "model", "part"];

/// How a word must stand in a line.
#[derive(Debug, Clone, Copy)]
enum Way {
    Whole,
    Begins,
    Inside,
}

impl Way {
    fn pattern(self, word: &str) -> String {
        match self {
            Self::Whole => format!(" {word} "),
            Self::Begins => format!(" {word}"),
            Self::Inside => word.to_owned(),
        }
    }
}

impl Tx {
    /// Things in whose line each word of a text stands, as a word, as the beginning of one or inside of one. Where there is
    /// none and `slips` are looked for, things whose words are one slip of the hand away.
    ///
    /// # Errors
    /// The database failed.
    pub async fn find_entries(&mut self, text: &str, slips: bool) -> Result<FoundEntries, StoreError> {
        let line = folded(text);
        let words: Vec<String> = line.split_whitespace().take(WORDS).map(str::to_owned).collect();
        if words.is_empty() {
            return Ok(FoundEntries::default());
        }
        let by_index = self.backend() == Backend::Sqlite && self.find_is_indexed().await?;
        let mut found = self.with_words(&words, by_index).await?;
        if found.entries.is_empty() && found.parts == 0 && slips {
            for meant in self.meant(&words, by_index).await? {
                let more = self.with_words(&meant, by_index).await?;
                if !more.entries.is_empty() || more.parts > 0 {
                    let meant = Some(meant.join(" "));
                    found = FoundEntries { meant, ..more };
                    break;
                }
            }
        }
        Ok(found)
    }

    async fn with_words(&mut self, words: &[String], by_index: bool) -> Result<FoundEntries, StoreError> {
        let mut lines: Vec<(FoundEntry, i64)> = Vec::new();
        let mut parts = 0;
        for way in [Way::Whole, Way::Begins, Way::Inside] {
            for (row, id) in self.lines(words, way, false, by_index).await? {
                if !lines.iter().any(|(_, known)| *known == id) {
                    lines.push((row, id));
                }
            }
            if lines.len() as i64 >= LOOKED_AT {
                break;
            }
        }
        let of_parts = self.lines(words, Way::Inside, true, by_index).await?;
        if !of_parts.is_empty() {
            parts = of_parts.len() as i64;
            for (row, id) in of_parts.into_iter().take(20) {
                lines.push((row, id));
            }
        }
        let rank = |kind: &str| ORDER.iter().position(|of| *of == kind).unwrap_or(ORDER.len());
        lines.sort_by_key(|(entry, id)| (entry.kind == "part", -entry.fit, rank(&entry.kind), -id));
        Ok(FoundEntries { entries: lines.into_iter().map(|(entry, _)| entry).collect(), parts, meant: None })
    }

    /// The lines in which all words stand one way, the latest first, each with its running number. `by_index`: whether there is
    /// a full-text index to ask.
    async fn lines(
        &mut self,
        words: &[String],
        way: Way,
        parts: bool,
        by_index: bool,
    ) -> Result<Vec<(FoundEntry, i64)>, StoreError> {
        let patterns: Vec<String> = words.iter().map(|word| way.pattern(word)).collect();
        let limit = if parts { PARTS_COUNTED } else { LOOKED_AT };
        // The index has groups of three letters: what is shorter, it cannot find.
        let long = patterns.iter().all(|pattern| pattern.chars().count() >= 3);
        let fits = |row: &Row| -> Result<(FoundEntry, i64), StoreError> {
            let text = row.text("text")?;
            let fit = words.iter().map(|word| fit_of(&text, word)).sum();
            Ok((FoundEntry { kind: row.text("kind")?, thing: row.text("thing")?, fit }, row.whole("id")?))
        };
        if by_index && long {
            let mut all: Vec<String> = patterns.iter().map(|p| format!("\"{}\"", p.replace('"', "\"\""))).collect();
            if !parts {
                all.insert(0, format!("\"{NO_PART}\""));
            }
            let lookup = query(if parts {
                "SELECT e.id, e.kind, e.thing, e.text FROM find_fts f CROSS JOIN find_entry e ON e.id = f.rowid
                 WHERE find_fts MATCH $1 AND e.kind = 'part' ORDER BY f.rowid DESC LIMIT $2"
            } else {
                "SELECT e.id, e.kind, e.thing, e.text FROM find_fts f CROSS JOIN find_entry e ON e.id = f.rowid
                 WHERE find_fts MATCH $1 ORDER BY f.rowid DESC LIMIT $2"
            });
            let rows = self.rows(lookup.bind(all.join(" AND ")).bind(limit)).await?;
            return rows.iter().map(fits).collect();
        }
        if parts && !long {
            // One or two letters stand inside of nearly every part.
            return Ok(Vec::new());
        }
        let kind = if parts { "= 'part'" } else { "<> 'part'" };
        let mut sql = format!("SELECT id, kind, thing, text FROM find_entry WHERE kind {kind}");
        for i in 1..=patterns.len() {
            sql += &format!(" AND text LIKE ${i} ESCAPE '!'");
        }
        sql += &format!(" ORDER BY id + 0 DESC LIMIT ${}", patterns.len() + 1);
        let mut lookup = query(AssertSqlSafe(sql));
        for pattern in &patterns {
            lookup = lookup.bind(anywhere(pattern));
        }
        let rows = self.rows(lookup.bind(limit)).await?;
        rows.iter().map(fits).collect()
    }

    /// What may be meant by words of which no line has all: each word that is not known is taken for a known one that is one
    /// slip away, as a whole or as the beginning of one.
    async fn meant(&mut self, words: &[String], by_index: bool) -> Result<Vec<Vec<String>>, StoreError> {
        let mut all: Vec<Vec<String>> = vec![Vec::new()];
        let mut changed = false;
        for word in words {
            let mut known = vec![word.clone()];
            if self.lines(std::slice::from_ref(word), Way::Inside, false, by_index).await?.is_empty() {
                let near = self.near(word).await?;
                if !near.is_empty() {
                    changed = true;
                    known = near;
                }
            }
            let longer = |before: &Vec<String>| -> Vec<Vec<String>> {
                let with = |word: &String| before.iter().chain([word]).cloned().collect();
                known.iter().map(with).collect()
            };
            all = all.iter().flat_map(longer).take(MEANT * MEANT).collect();
        }
        Ok(if changed { all } else { Vec::new() })
    }

    async fn near(&mut self, word: &str) -> Result<Vec<String>, StoreError> {
        let typed: Vec<char> = word.chars().collect();
        let n = i64::try_from(typed.len()).unwrap_or(i64::MAX);
        if n < 4 {
            return Ok(Vec::new());
        }
        let rows = self.rows(query("SELECT word, letters FROM find_word WHERE letters >= $1").bind(n - 1)).await?;
        let (mut whole, mut begins) = (Vec::new(), Vec::new());
        for row in &rows {
            let known = row.text("word")?;
            let letters: Vec<char> = known.chars().collect();
            if row.whole("letters")? <= n + 1 && one_slip_apart(&typed, &letters) {
                whole.push(known);
            } else if n >= 5 {
                let front = |len: usize| letters.get(..len).is_some_and(|front| one_slip_apart(&typed, front));
                if [typed.len() - 1, typed.len(), typed.len() + 1].into_iter().any(front) {
                    begins.push(known);
                }
            }
        }
        let mut near = if whole.is_empty() { begins } else { whole };
        near.sort_by_key(|known| (known.chars().count().abs_diff(typed.len()), known.clone()));
        near.truncate(MEANT);
        Ok(near)
    }
}

/// How well a word fits a line.
fn fit_of(line: &str, word: &str) -> i64 {
    if line.contains(&Way::Whole.pattern(word)) {
        4
    } else if line.contains(&Way::Begins.pattern(word)) {
        2
    } else {
        1
    }
}
