//! A document taken apart: what a text says, before any type looks at it.
//!
//! Types read it from here and not from the text, so that the code of the reader is made once and not once for every type and
//! every reader between.

use crate::fault::{Fault, Mistake};
use crate::place::{Place, Step};
use serde::de::{DeserializeSeed, Deserializer, Error, IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde_json::{Number, Value};
use std::cell::RefCell;
use std::collections::HashSet;
use std::fmt;

/// A value of a document. The fields of an object stand in their order in the text, so that the first mistake is told first.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Node {
    Null,
    YesNo(bool),
    Number(Number),
    Text(String),
    List(Vec<Self>),
    Object(Vec<(String, Self)>),
}

impl From<Value> for Node {
    fn from(value: Value) -> Self {
        match value {
            Value::Null => Self::Null,
            Value::Bool(yes) => Self::YesNo(yes),
            Value::Number(number) => Self::Number(number),
            Value::String(text) => Self::Text(text),
            Value::Array(list) => Self::List(list.into_iter().map(Self::from).collect()),
            Value::Object(fields) => Self::Object(fields.into_iter().map(|(k, v)| (k, Self::from(v))).collect()),
        }
    }
}

/// Why a text is no document.
pub(crate) enum NotRead {
    /// A name stands twice in an object: nobody knows which was meant.
    Twice { fault: Fault, error: serde_json::Error },
    /// It is not JSON.
    NotJson(serde_json::Error),
}

/// Takes a text apart.
pub(crate) fn of_text(text: &[u8]) -> Result<Node, NotRead> {
    let twice = RefCell::new(None);
    let mut reader = serde_json::Deserializer::from_slice(text);
    let read = Taken { place: &Place::Document, twice: &twice }.deserialize(&mut reader);
    let node = read.map_err(|error| match twice.take() {
        Some(fault) => NotRead::Twice { fault, error },
        None => NotRead::NotJson(error),
    })?;
    reader.end().map_err(NotRead::NotJson)?;
    Ok(node)
}

/// Takes apart the value at a place.
struct Taken<'p> {
    place: &'p Place<'p>,
    /// A name that stands twice, on its way out through the reader of the text, which knows errors of its own only.
    twice: &'p RefCell<Option<Fault>>,
}

impl<'de> DeserializeSeed<'de> for Taken<'_> {
    type Value = Node;

    fn deserialize<D: Deserializer<'de>>(self, reader: D) -> Result<Node, D::Error> {
        reader.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Taken<'_> {
    type Value = Node;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value")
    }

    fn visit_unit<E: Error>(self) -> Result<Node, E> {
        Ok(Node::Null)
    }
    fn visit_bool<E: Error>(self, yes: bool) -> Result<Node, E> {
        Ok(Node::YesNo(yes))
    }
    fn visit_i64<E: Error>(self, number: i64) -> Result<Node, E> {
        Ok(Node::Number(number.into()))
    }
    fn visit_u64<E: Error>(self, number: u64) -> Result<Node, E> {
        Ok(Node::Number(number.into()))
    }
    fn visit_f64<E: Error>(self, number: f64) -> Result<Node, E> {
        Ok(Number::from_f64(number).map_or(Node::Null, Node::Number))
    }
    fn visit_str<E: Error>(self, text: &str) -> Result<Node, E> {
        Ok(Node::Text(text.to_owned()))
    }
    fn visit_string<E: Error>(self, text: String) -> Result<Node, E> {
        Ok(Node::Text(text))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Node, A::Error> {
        let mut nodes = Vec::new();
        while let Some(node) = {
            let place = Place::Entry(self.place, nodes.len());
            list.next_element_seed(Taken { place: &place, twice: self.twice })?
        } {
            nodes.push(node);
        }
        Ok(Node::List(nodes))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<Node, A::Error> {
        let mut names = HashSet::new();
        let mut fields = Vec::new();
        while let Some(name) = object.next_key::<String>()? {
            let place = Place::Field(self.place, &name);
            if !names.insert(name.clone()) {
                self.twice.replace(Some(Fault::new(Mistake::Twice).at(&place)));
                return Err(A::Error::custom(""));
            }
            let node = object.next_value_seed(Taken { place: &place, twice: self.twice })?;
            fields.push((name, node));
        }
        Ok(Node::Object(fields))
    }
}

/// Line and column, from 1, of the end of what stands at the end of a way; of the name, where `at_name`. `None` where the
/// text has nothing there.
pub(crate) fn position(text: &[u8], way: &[Step], at_name: bool) -> Option<(usize, usize)> {
    let mut reader = serde_json::Deserializer::from_slice(text);
    let error = Sought { way, at_name }.deserialize(&mut reader).err()?;
    (error.line() > 0).then(|| (error.line(), error.column()))
}

/// Goes a way down a text and stops there, with an error: the reader of the text notes where it was.
struct Sought<'w> {
    way: &'w [Step],
    at_name: bool,
}

impl Sought<'_> {
    fn stop<E: Error>(&self) -> Result<(), E> {
        if self.way.is_empty() { Err(E::custom("here")) } else { Ok(()) }
    }
}

impl<'de> DeserializeSeed<'de> for Sought<'_> {
    type Value = ();

    fn deserialize<D: Deserializer<'de>>(self, reader: D) -> Result<(), D::Error> {
        reader.deserialize_any(self)
    }
}

impl<'de> Visitor<'de> for Sought<'_> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a value")
    }

    fn visit_unit<E: Error>(self) -> Result<(), E> {
        self.stop()
    }
    fn visit_bool<E: Error>(self, _: bool) -> Result<(), E> {
        self.stop()
    }
    fn visit_i64<E: Error>(self, _: i64) -> Result<(), E> {
        self.stop()
    }
    fn visit_u64<E: Error>(self, _: u64) -> Result<(), E> {
        self.stop()
    }
    fn visit_f64<E: Error>(self, _: f64) -> Result<(), E> {
        self.stop()
    }
    fn visit_str<E: Error>(self, _: &str) -> Result<(), E> {
        self.stop()
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<(), A::Error> {
        let wanted = match self.way.first() {
            Some(Step::Entry(index)) => Some(*index),
            _ => None,
        };
        for index in 0.. {
            let there = if wanted == Some(index) {
                list.next_element_seed(Sought { way: &self.way[1..], at_name: self.at_name })?.is_some()
            } else {
                list.next_element::<IgnoredAny>()?.is_some()
            };
            if !there {
                break;
            }
        }
        self.stop()
    }

    fn visit_map<A: MapAccess<'de>>(self, mut object: A) -> Result<(), A::Error> {
        let wanted = match self.way.first() {
            Some(Step::Field(name)) => Some(name),
            _ => None,
        };
        while let Some(name) = object.next_key::<String>()? {
            if wanted != Some(&name) {
                object.next_value::<IgnoredAny>()?;
            } else if self.at_name && self.way.len() == 1 {
                return Err(A::Error::custom("here"));
            } else {
                object.next_value_seed(Sought { way: &self.way[1..], at_name: self.at_name })?;
            }
        }
        self.stop()
    }
}
