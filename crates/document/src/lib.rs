//! Reading JSON documents: strictly, with the place of a mistake, in plain words.
//!
//! Every document that comes from outside (a body of the API, a file at the terminal, a list to import) is read here, so
//! that the same mistake is told in the same words. `serde_json` alone differs in four ways from what the documented
//! schema says, and [`read`] follows the schema:
//!
//! - It fills an object from a list by the order of the fields in the source: `[350, null, 820]` would be a club. Here an
//!   object is written as an object.
//! - It refuses `79.0` for a whole number, which JSON Schema counts as one. Here `79.0` is 79.
//! - Of two figures under one name it takes the last, where the document is free of form. Here that is a mistake: nobody
//!   knows which was meant.
//! - Its messages name types of the programming language. Here they name the place as a JSON pointer (RFC 6901) and say
//!   what must be there.
//!
//! One limit: inside a document that is told apart by a field of its own (a model by its `kind`), serde keeps no path. The
//! pointer leaves out the steps inside it; the sentence still names the field.

mod pointer;
mod strict;
mod words;

use serde::de::DeserializeOwned;
use serde_json::Value;
use serde_json::error::Category;
use std::fmt;

/// Why a document could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unreadable {
    /// Where in the document, as a JSON pointer (RFC 6901); empty for the document itself, or where the text is not JSON.
    pub pointer: String,
    /// What is wrong there and what must be there, without the place.
    pub what: String,
    /// Line and column of the text, from 1, where it was read from text.
    pub at: Option<(usize, usize)>,
    /// Whether the text is JSON at all.
    pub is_json: bool,
}

impl fmt::Display for Unreadable {
    /// The whole sentence, without a full stop: `/clubs/0/mass_g: must be a number, not the text “x” (line 4, column 12)`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (&self.at, self.is_json) {
            (Some((line, column)), false) => {
                return write!(f, "the text is not JSON at line {line}, column {column}: {}", self.what);
            }
            _ if self.pointer.is_empty() => write!(f, "the document: {}", self.what)?,
            _ => write!(f, "{}: {}", self.pointer, self.what)?,
        }
        match self.at {
            Some((line, column)) => write!(f, " (line {line}, column {column})"),
            None => Ok(()),
        }
    }
}

impl std::error::Error for Unreadable {}

/// Reads a document from its text. A byte order mark before it is skipped, as editors write one.
///
/// # Errors
/// The first mistake, with its place.
///
/// # Examples
/// ```
/// let error = document::read::<Vec<f64>>(br#"[1, 2, "3 g"]"#).expect_err("a text is not a number");
/// assert_eq!(error.pointer, "/2");
/// assert_eq!(error.to_string(), "/2: must be a number, not the text “3 g” (line 1, column 12)");
/// ```
pub fn read<T: DeserializeOwned>(text: &[u8]) -> Result<T, Unreadable> {
    let text = text.strip_prefix(b"\xef\xbb\xbf").unwrap_or(text);
    if text.trim_ascii().is_empty() {
        let what = "it is empty".to_owned();
        return Err(Unreadable { pointer: String::new(), what, at: Some((1, 1)), is_json: false });
    }
    let mut reader = serde_json::Deserializer::from_slice(text);
    let read = strict::read(&mut reader).map_err(|(path, error)| told(&path, &error, true))?;
    match reader.end() {
        Ok(()) => Ok(read),
        Err(error) => Err(told("", &error, true)),
    }
}

/// Reads a document that was taken apart before.
///
/// # Errors
/// As [`read`], without line and column.
pub fn read_value<T: DeserializeOwned>(value: Value) -> Result<T, Unreadable> {
    strict::read(value).map_err(|(path, error)| told(&path, &error, false))
}

/// In the same plain words what serde says of something that is no document: the query of an address, a form.
///
/// # Examples
/// ```
/// assert_eq!(document::plainly("missing field `joints`"), "joints is missing");
/// ```
#[must_use]
pub fn plainly(said: &str) -> String {
    match words::of_data(said) {
        (Some(name), what) if !what.contains(&name) => format!("{name} {what}"),
        (_, what) => what,
    }
}

fn told(path: &str, error: &serde_json::Error, from_text: bool) -> Unreadable {
    let is_json = matches!(error.classify(), Category::Data | Category::Io);
    let said = error.to_string();
    let said = said.split(" at line ").next().unwrap_or_default();
    let at = (from_text && error.line() > 0).then(|| (error.line(), error.column()));
    if !is_json {
        return Unreadable { pointer: String::new(), what: words::of_syntax(said), at, is_json };
    }
    let (beside, what) = words::of_data(said);
    let pointer = match beside {
        Some(name) => pointer::beside(path, &name),
        None => path.to_owned(),
    };
    Unreadable { pointer, what, at, is_json }
}

impl fact::Fact for Unreadable {
    fn told(&self) -> fact::Told {
        fact::Told::verbatim(self.to_string())
    }
}
