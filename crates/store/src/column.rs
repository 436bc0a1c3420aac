//! Queries, and how values lie in columns: timestamps, words, documents, figures.

pub(crate) use crate::engine::{Query, Row, query};
use crate::error::StoreError;
use fact::Told;
use jiff::Timestamp;
use jiff::civil::Date;
use serde::Serialize;
use serde::de::DeserializeOwned;

/// What a column holds. The tables have these three types alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Holds {
    Text,
    Whole,
    Real,
}

/// RFC 3339 with nine decimals, always: the order of the texts is the order in time.
pub(crate) fn time_text(at: Timestamp) -> String {
    format!("{at:.9}")
}

/// What a code, card or number is looked up by: a hand types `h7-03` for the label `H7-03`.
pub(crate) fn key(code: &str) -> String {
    code.to_lowercase()
}

/// A text as a pattern of `LIKE … ESCAPE '!'` that finds it anywhere.
pub(crate) fn anywhere(text: &str) -> String {
    format!("%{}%", text.replace('!', "!!").replace('%', "!%").replace('_', "!_"))
}

/// Refuses a figure that is no number. Zero loses its sign, which SQLite would not keep and no scale shows.
pub(crate) fn finite(what: &str, value: f64) -> Result<f64, StoreError> {
    if value.is_finite() {
        Ok(value + 0.0)
    } else {
        Err(StoreError::NotStorable { what: what.to_owned(), problem: format!("its value is {value}, not a number") })
    }
}

/// A document as text. Read back before it is let in: what cannot be read again must not be saved.
pub(crate) fn document<T>(what: &str, value: &T) -> Result<String, StoreError>
where
    T: Serialize + DeserializeOwned + PartialEq,
{
    let refused = |problem: String| StoreError::NotStorable { what: what.to_owned(), problem };
    let text = serde_json::to_string(value).map_err(|e| refused(e.to_string()))?;
    let back: T =
        serde_json::from_str(&text).map_err(|e| refused(format!("a figure in it is not a number, or {e}")))?;
    if &back == value { Ok(text) } else { Err(refused("it does not come back as it went in".into())) }
}

/// What a fact begins with in a column that holds what somebody wrote otherwise.
const FACT: &str = "{\"code\":";

/// Whether a text of such a column is a fact of the program, and nothing that somebody wrote.
pub(crate) fn is_fact(text: &str) -> bool {
    text.starts_with(FACT)
}

/// A reason as text: what somebody wrote as it is, a fact of the program as its document. What somebody wrote that looks
/// like one is kept as a document itself, so that it comes back as it was written.
pub(crate) fn kept(what: &str, reason: &Told) -> Result<String, StoreError> {
    match reason.written() {
        Some(text) if !is_fact(text) => Ok(text.to_owned()),
        _ => document(what, reason),
    }
}

/// Reading a row's columns.
pub(crate) trait Columns {
    fn text(&self, column: &'static str) -> Result<String, StoreError>;
    fn maybe_text(&self, column: &'static str) -> Result<Option<String>, StoreError>;
    fn whole(&self, column: &'static str) -> Result<i64, StoreError>;
    fn maybe_whole(&self, column: &'static str) -> Result<Option<i64>, StoreError>;
    fn real(&self, column: &'static str) -> Result<f64, StoreError>;
    fn maybe_real(&self, column: &'static str) -> Result<Option<f64>, StoreError>;

    fn flag(&self, column: &'static str) -> Result<bool, StoreError> {
        Ok(self.whole(column)? != 0)
    }

    fn time(&self, column: &'static str) -> Result<Timestamp, StoreError> {
        let text = self.text(column)?;
        text.parse().map_err(|e: jiff::Error| damaged(column, e))
    }

    fn maybe_time(&self, column: &'static str) -> Result<Option<Timestamp>, StoreError> {
        self.maybe_text(column)?.map(|_| self.time(column)).transpose()
    }

    fn day(&self, column: &'static str) -> Result<Date, StoreError> {
        self.text(column)?.parse().map_err(|e: jiff::Error| damaged(column, e))
    }

    fn body<T: DeserializeOwned>(&self, column: &'static str) -> Result<T, StoreError> {
        parsed(column, &self.text(column)?)
    }

    fn maybe_body<T: DeserializeOwned>(&self, column: &'static str) -> Result<Option<T>, StoreError> {
        let text = self.maybe_text(column)?;
        text.map(|text| serde_json::from_str(&text).map_err(|e| damaged(column, e))).transpose()
    }

    /// A reason that [`kept`] wrote, or an earlier version as it was shown; none where it is empty.
    fn maybe_told(&self, column: &'static str) -> Result<Option<Told>, StoreError> {
        let text = self.maybe_text(column)?.filter(|text| !text.is_empty());
        text.map(|text| if is_fact(&text) { parsed(column, &text) } else { Ok(Told::verbatim(text)) }).transpose()
    }

    /// A member of a closed list, by its key.
    fn word<T>(&self, column: &'static str, from_key: impl Fn(&str) -> Option<T>) -> Result<T, StoreError> {
        let text = self.text(column)?;
        from_key(&text).ok_or_else(|| damaged(column, format!("“{text}” is not a word of it")))
    }
}

impl Columns for Row {
    fn text(&self, column: &'static str) -> Result<String, StoreError> {
        self.get(column).map_err(|e| damaged(column, e))
    }

    fn maybe_text(&self, column: &'static str) -> Result<Option<String>, StoreError> {
        self.get(column).map_err(|e| damaged(column, e))
    }

    fn whole(&self, column: &'static str) -> Result<i64, StoreError> {
        self.get(column).map_err(|e| damaged(column, e))
    }

    fn maybe_whole(&self, column: &'static str) -> Result<Option<i64>, StoreError> {
        self.get(column).map_err(|e| damaged(column, e))
    }

    fn real(&self, column: &'static str) -> Result<f64, StoreError> {
        self.get(column).map_err(|e| damaged(column, e))
    }

    fn maybe_real(&self, column: &'static str) -> Result<Option<f64>, StoreError> {
        self.get(column).map_err(|e| damaged(column, e))
    }
}

/// The document in a column's text.
pub(crate) fn parsed<T: DeserializeOwned>(column: &'static str, text: &str) -> Result<T, StoreError> {
    serde_json::from_str(text).map_err(|e| damaged(column, e))
}

fn damaged(column: &str, problem: impl std::fmt::Display) -> StoreError {
    StoreError::Damaged { what: format!("the column “{column}” of a row"), problem: format!("{problem}") }
}
