//! From the bytes of a document to its value: JSON in which every field is given once.

use std::fmt;

use serde::de::{DeserializeSeed, Deserializer, Error as _, MapAccess, SeqAccess, Visitor};
use serde_json::error::Category;
use serde_json::{Map, Number, Value};

use super::place::Place;
use crate::PhysicsError;

/// Reads a JSON document. The usual readers take the last of two figures for one field and drop the other without a
/// word; here that is an error.
///
/// # Errors
///
/// [`PhysicsError::NotJson`] with line and column where the text is not JSON, [`PhysicsError::Unreadable`] where a field
/// is given twice.
///
/// # Examples
///
/// ```
/// let twice = clubphysics::calc::parse(br#"{"total_mass_g": 349.8, "total_mass_g": 394.8}"#);
/// assert_eq!(twice.unwrap_err().to_string(), "total_mass_g is given twice, again in line 1: leave one of the two");
/// ```
pub fn parse(text: &[u8]) -> Result<Value, PhysicsError> {
    let mut reader = serde_json::Deserializer::from_slice(text);
    let read = Once(&Place::Document).deserialize(&mut reader).and_then(|value| reader.end().map(|()| value));
    read.map_err(|error| {
        let said = error.to_string();
        // The reader puts the line and the column behind its own words and behind ours.
        let what = said.rsplit_once(" at line ").map_or(said.as_str(), |(what, _)| what).replace('`', "\"");
        match error.classify() {
            Category::Data => PhysicsError::Unreadable {
                what: format!("{what}, again in line {}", error.line()),
                advice: "leave one of the two".to_owned(),
            },
            Category::Eof if error.line() <= 1 && error.column() == 0 => {
                PhysicsError::NotJson { what: "it is empty".to_owned(), line: 1, column: 1 }
            }
            Category::Eof => PhysicsError::NotJson {
                what: "it breaks off before its last bracket or quote is closed".to_owned(),
                line: error.line(),
                column: error.column(),
            },
            Category::Syntax | Category::Io => {
                PhysicsError::NotJson { what, line: error.line(), column: error.column() }
            }
        }
    })
}

/// Reads the value at a place.
struct Once<'p>(&'p Place<'p>);

impl<'de> DeserializeSeed<'de> for Once<'_> {
    type Value = Value;
    fn deserialize<D: Deserializer<'de>>(self, deserializer: D) -> Result<Value, D::Error> {
        deserializer.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Once<'_> {
    type Value = Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a JSON value")
    }

    fn visit_unit<E>(self) -> Result<Value, E> {
        Ok(Value::Null)
    }

    fn visit_bool<E>(self, value: bool) -> Result<Value, E> {
        Ok(Value::Bool(value))
    }

    fn visit_i64<E>(self, value: i64) -> Result<Value, E> {
        Ok(Value::from(value))
    }

    fn visit_u64<E>(self, value: u64) -> Result<Value, E> {
        Ok(Value::from(value))
    }

    fn visit_f64<E>(self, value: f64) -> Result<Value, E> {
        Ok(Number::from_f64(value).map_or(Value::Null, Value::Number))
    }

    fn visit_str<E>(self, value: &str) -> Result<Value, E> {
        Ok(Value::from(value))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Value, A::Error> {
        let mut entries = Vec::new();
        while let Some(entry) = list.next_element_seed(Once(&Place::Entry(self.0, entries.len())))? {
            entries.push(entry);
        }
        Ok(Value::Array(entries))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Value, A::Error> {
        let mut fields = Map::new();
        while let Some(name) = object.next_key::<String>()? {
            let place = Place::Field(self.0, &name);
            if fields.contains_key(&name) {
                return Err(A::Error::custom(format_args!("{place} is given twice")));
            }
            let value = object.next_value_seed(Once(&place))?;
            fields.insert(name, value);
        }
        Ok(Value::Object(fields))
    }
}
