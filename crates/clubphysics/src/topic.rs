//! What every topic is: a name, an example, and a calculation from one JSON document to another.
//!
//! The topics stand on this, and the register of them ([`calc`](crate::calc)) stands on the topics.

mod place;
mod reader;

use crate::advice::{Advice, ReadFault};
use fact::Told;
use serde::{Serialize, de::DeserializeOwned};
use serde_json::{Map, Value};
use strsim::levenshtein;
use utoipa::ToSchema;

use crate::PhysicsError;

/// A calculation that can be asked for by name.
#[derive(Debug, Clone, Copy)]
pub struct Topic {
    /// Name in addresses and on the command line.
    pub name: &'static str,
    /// An input that works, to start from.
    pub example: fn() -> Value,
    /// Description of the input document as a JSON schema; what it refers to stands under `components.schemas`.
    pub input: fn() -> Value,
    /// The same of the output document.
    pub output: fn() -> Value,
    /// The calculation.
    pub run: fn(Value) -> Result<Value, PhysicsError>,
}

impl Topic {
    /// Heading of its page.
    #[must_use]
    pub fn title(&self) -> Told {
        Told::of_list("CalcTitle", &self.name.replace('-', "_"))
    }

    /// What it answers, in one sentence.
    #[must_use]
    pub fn summary(&self) -> Told {
        Told::of_list("CalcSummary", &self.name.replace('-', "_"))
    }
}

/// A document as a JSON schema, with the schemas that it refers to.
pub(crate) fn described<T: ToSchema>() -> Value {
    let mut parts = Vec::new();
    T::schemas(&mut parts);
    let parts: Map<String, Value> =
        parts.into_iter().map(|(name, schema)| (name, serde_json::to_value(schema).unwrap_or_default())).collect();
    let mut whole = serde_json::to_value(T::schema()).unwrap_or_default();
    whole["components"] = serde_json::json!({ "schemas": parts });
    whole
}

/// Reads the input document, calculates, and writes the output document: what a topic's `run` does.
///
/// # Errors
///
/// [`PhysicsError::Unreadable`], [`PhysicsError::WrongKind`] or [`PhysicsError::Missing`] where the document cannot be
/// read; else what `calculate` refuses.
pub(crate) fn through_json<I: DeserializeOwned, O: Serialize>(
    input: &Value,
    calculate: impl FnOnce(&I) -> Result<O, PhysicsError>,
) -> Result<Value, PhysicsError> {
    let input: I = reader::read(input)?;
    let output = serde_json::to_value(calculate(&input)?).map_err(|error| PhysicsError::Unreadable {
        what: ReadFault::Unwritable { log: error.to_string() },
        advice: Box::new(Advice::CheckExtremeFigures),
    })?;
    // JSON has no infinity and no NaN: the writer puts null, and nothing else here does.
    match without_number(&output, "") {
        None => Ok(output),
        Some(place) => {
            Err(PhysicsError::Unreadable { what: ReadFault::Extreme { place }, advice: Box::new(Advice::CheckFigures) })
        }
    }
}

/// The first place of a document where a number did not come out.
fn without_number(value: &Value, place: &str) -> Option<String> {
    match value {
        Value::Null => Some(place.to_owned()),
        Value::Array(list) => list.iter().find_map(|v| without_number(v, place)),
        Value::Object(map) => map.iter().find_map(|(key, v)| without_number(v, key)),
        _ => None,
    }
}

/// The name most like the one given, if any is near enough to be a slip.
pub(crate) fn nearest<'a>(given: &str, names: &[&'a str]) -> Option<&'a str> {
    let given = given.to_lowercase().replace(['-', ' '], "_");
    names
        .iter()
        .map(|name| (levenshtein(&given, &name.replace('-', "_")), *name))
        .filter(|(slips, name)| *slips * 3 <= name.len().max(given.len()))
        .min_by_key(|(slips, _)| *slips)
        .map(|(_, name)| name)
}
