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
mod node;
mod pairs;
mod place;
mod syntax;
mod typed;

pub use fault::{Found, Mistake, NotJson, Wanted};
pub use pairs::read_pairs;

use fact::{Fact, Told};
use fault::{Fault, ToldAt};
use node::{Node, NotRead};
use place::Step;
use serde::de::DeserializeOwned;
use serde_json::Value;
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
            (Some((line, column)), false) => ToldAt::NotJson { line, column, what },
            (Some((line, column)), true) => ToldAt::InText { place, line, column, what },
            (None, _) => ToldAt::InValue { place, what },
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
    let node = node::of_text(text).map_err(|why| not_read(why, text))?;
    typed::read(&node).map_err(|fault| in_text(&fault, text))
}

/// Reads a document that was taken apart before.
///
/// # Errors
/// As [`read`], without line and column.
///
/// # Examples
///
/// ```
/// use serde_json::json;
///
/// // JSON Schema counts 79.0 as a whole number (draft 2020-12, validation, 6.1.1).
/// assert_eq!(document::read_value::<u32>(json!(79.0)), Ok(79));
/// let error = document::read_value::<Vec<u32>>(json!([1, 2.5])).expect_err("two and a half is not whole");
/// assert_eq!((error.pointer.as_str(), error.at), ("/1", None));
/// ```
pub fn read_value<T: DeserializeOwned>(value: Value) -> Result<T, Unreadable> {
    typed::read(&Node::from(value)).map_err(|fault| unreadable(&fault, None))
}

fn unreadable(fault: &Fault, at: Option<(usize, usize)>) -> Unreadable {
    let pointer = fault.way().iter().map(Step::to_string).collect();
    Unreadable { pointer, what: fault.mistake.told(), at, is_json: true }
}

/// A mistake that a type found, with its line and column.
fn in_text(fault: &Fault, text: &[u8]) -> Unreadable {
    // A field that is not known stands at its name; one that is missing at the end of its object.
    let named = matches!(fault.mistake, Mistake::UnknownField { .. } | Mistake::Twice);
    let way = if named { fault.way() } else { fault.way.clone().unwrap_or_default() };
    unreadable(fault, node::position(text, &way, named))
}

fn not_read(why: NotRead, text: &[u8]) -> Unreadable {
    let at = |error: &serde_json::Error| (error.line() > 0).then(|| (error.line(), error.column()));
    match why {
        NotRead::Twice { fault, error } => unreadable(&fault, at(&error)),
        NotRead::NotJson(error) => {
            let what = syntax::reason(text).told();
            Unreadable { pointer: String::new(), what, at: at(&error).or(Some((1, 1))), is_json: false }
        }
    }
}
