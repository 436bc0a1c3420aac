//! Reading JSON documents: strictly, with the place of a mistake, as facts.
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
//! - Its messages are English and name types of the programming language. Here a mistake is a fact: its place as a JSON
//!   pointer (RFC 6901), what must be there and what is there.
//!
//! One limit: inside a document that is told apart by a field of its own (a model by its `kind`), serde keeps no path. The
//! pointer leaves out the steps inside it; the fact still names the field.

mod fault;
mod pairs;
mod pointer;
mod strict;
mod syntax;

pub use fault::{Found, Mistake, NotJson, Wanted};
pub use pairs::read_pairs;

use fact::{Fact, Told};
use fault::{Fault, Place};
use serde::de::DeserializeOwned;
use serde_json::Value;
use serde_json::error::Category;
use std::fmt;

/// Why a document could not be read.
#[derive(Debug, Clone, PartialEq)]
pub struct Unreadable {
    /// Where in the document, as a JSON pointer (RFC 6901); empty for the document itself, or where the text is not JSON.
    pub pointer: String,
    /// What is wrong there and what must be there, without the place.
    pub what: Told,
    /// Line and column of the text, from 1, where it was read from text.
    pub at: Option<(usize, usize)>,
    /// Whether the text is JSON at all.
    pub is_json: bool,
}

impl Fact for Unreadable {
    /// The whole mistake with its place.
    fn told(&self) -> Told {
        let place = Some(self.pointer.clone()).filter(|pointer| !pointer.is_empty());
        let what = self.what.clone();
        let told = match (self.at, self.is_json) {
            (Some((line, column)), false) => Place::NotJson { line, column, what },
            (Some((line, column)), true) => Place::InText { place, line, column, what },
            (None, _) => Place::InValue { place, what },
        };
        told.told()
    }
}

/// The form of a log.
impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.told().fmt(f)
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
/// assert_eq!(error.what.code(), "document_mistake.wrong_kind");
/// assert_eq!(error.at, Some((1, 12)));
/// ```
pub fn read<T: DeserializeOwned>(text: &[u8]) -> Result<T, Unreadable> {
    let text = text.strip_prefix(b"\xef\xbb\xbf").unwrap_or(text);
    if text.trim_ascii().is_empty() {
        let what = NotJson::Empty.told();
        return Err(Unreadable { pointer: String::new(), what, at: Some((1, 1)), is_json: false });
    }
    let mut reader = serde_json::Deserializer::from_slice(text);
    let read = strict::read(&mut reader).map_err(|(path, fault)| unreadable(&path, fault, Some(text)))?;
    match reader.end() {
        Ok(()) => Ok(read),
        Err(error) => Err(unreadable("", Fault::Theirs(error), Some(text))),
    }
}

/// Reads a document that was taken apart before.
///
/// # Errors
/// As [`read`], without line and column.
pub fn read_value<T: DeserializeOwned>(value: Value) -> Result<T, Unreadable> {
    strict::read(value).map_err(|(path, fault)| unreadable(&path, fault, None))
}

fn unreadable(path: &str, fault: Fault<serde_json::Error>, text: Option<&[u8]>) -> Unreadable {
    let (mistake, beside, error) = match fault {
        Fault::Ours { mistake, beside, error } => (mistake, beside, error),
        Fault::Theirs(error) => {
            let at = (error.line() > 0).then(|| (error.line(), error.column()));
            if let (Some(text), Category::Syntax | Category::Eof) = (text, error.classify()) {
                let what = syntax::reason(text).told();
                return Unreadable { pointer: String::new(), what, at: at.or(Some((1, 1))), is_json: false };
            }
            (Mistake::Other { log: error.to_string() }, None, Some(error))
        }
    };
    let pointer = match beside {
        Some(name) => pointer::beside(path, &name),
        None => path.to_owned(),
    };
    let at = error.filter(|error| text.is_some() && error.line() > 0).map(|error| (error.line(), error.column()));
    Unreadable { pointer, what: mistake.told(), at, is_json: true }
}
