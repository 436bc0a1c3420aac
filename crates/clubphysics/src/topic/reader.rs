//! From the value of a document to the types of a topic, with errors in plain words that name the place.
//!
//! The usual reader takes a list for an object, by position, and says what is wrong in the words of the language it is
//! written in. This one takes objects by their names only, and its errors name the field as it stands in the document.

use crate::advice::{Advice, Found, ReadFault, Wanted};
use std::fmt;

use serde::de::value::StrDeserializer;
use serde::de::{
    self, DeserializeOwned, DeserializeSeed, Deserializer, EnumAccess, IntoDeserializer, MapAccess, SeqAccess,
    Unexpected, VariantAccess, Visitor,
};
use serde_json::{Number, Value};

use super::nearest;
use super::place::Place;
use crate::PhysicsError;

/// Reads a document.
pub(super) fn read<T: DeserializeOwned>(document: &Value) -> Result<T, PhysicsError> {
    T::deserialize(At { value: document, place: &Place::Document }).map_err(|refusal| refusal.said(&Place::Document))
}

/// What was not known.
#[derive(Debug, Clone, Copy)]
enum UnknownKind {
    Field,
    Choice,
}

/// Why a document was refused; it gets its place from the innermost value that was being read.
#[derive(Debug)]
enum Refusal {
    /// It names its place.
    Said(PhysicsError),
    /// A field that must be there is not.
    MissingField(&'static str),
    /// A name that is not one of those known here.
    Unknown { kind: UnknownKind, name: String, known: &'static [&'static str] },
    /// Anything else the types refuse.
    Other(String),
}

impl Refusal {
    fn said(self, place: &Place<'_>) -> PhysicsError {
        match self {
            Self::Said(error) => error,
            Self::MissingField(name) => PhysicsError::Missing {
                field: Place::Field(place, name).to_string(),
                advice: Box::new(Advice::AddDocument),
            },
            Self::Unknown { kind, name, known } => {
                let near = nearest(&name, known).map(str::to_owned);
                let what = match (kind, place) {
                    (UnknownKind::Field, Place::Document) => ReadFault::UnknownField { name, place: None },
                    (UnknownKind::Field, place) => ReadFault::UnknownField { name, place: Some(place.to_string()) },
                    (UnknownKind::Choice, place) => ReadFault::UnknownChoice { name, place: place.to_string() },
                };
                let known = known.iter().map(|name| (*name).to_owned()).collect();
                PhysicsError::Unreadable { what, advice: Box::new(Advice::Known { near, known }) }
            }
            Self::Other(what) => PhysicsError::Unreadable {
                what: ReadFault::Other { place: place.to_string(), log: what },
                advice: Box::new(Advice::SeeExample),
            },
        }
    }

    /// Fixes the place, unless a value further inside has done so.
    fn at(self, place: &Place<'_>) -> Self {
        Self::Said(self.said(place))
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{self:?}")
    }
}

impl std::error::Error for Refusal {}

impl de::Error for Refusal {
    fn custom<T: fmt::Display>(message: T) -> Self {
        Self::Other(message.to_string())
    }

    fn invalid_type(found: Unexpected<'_>, _: &dyn de::Expected) -> Self {
        Self::Other(format!("{found} does not fit"))
    }

    fn unknown_variant(name: &str, known: &'static [&'static str]) -> Self {
        Self::Unknown { kind: UnknownKind::Choice, name: name.to_owned(), known }
    }

    fn unknown_field(name: &str, known: &'static [&'static str]) -> Self {
        Self::Unknown { kind: UnknownKind::Field, name: name.to_owned(), known }
    }

    fn missing_field(name: &'static str) -> Self {
        Self::MissingField(name)
    }
}

/// A value and where it stands.
#[derive(Clone, Copy)]
struct At<'de, 'p> {
    value: &'de Value,
    place: &'p Place<'p>,
}

impl At<'_, '_> {
    fn needs(self, wanted: Wanted) -> Refusal {
        let found = match self.value {
            Value::Null => Found::Null,
            Value::Bool(yes) => Found::Word { word: yes.to_string() },
            Value::Number(number) => Found::Number { text: number.to_string() },
            // A long text is shown as far as it is recognised.
            Value::String(text) if text.chars().count() > 40 => {
                Found::LongText { text: text.chars().take(40).collect() }
            }
            Value::String(text) => Found::Text { text: text.clone() },
            Value::Array(_) => Found::List,
            Value::Object(_) => Found::Object,
        };
        Refusal::Said(PhysicsError::WrongKind { field: self.place.to_string(), found, wanted })
    }

    /// The count that a number is: whole, and not negative. 8 and 8.0 are the same count.
    fn count(self) -> Result<u64, Refusal> {
        const COUNT_MAX: f64 = 1e9;
        let whole = |number: &Number| number.as_f64().filter(|n| n.fract() == 0.0 && (0.0..=COUNT_MAX).contains(n));
        match self.value {
            Value::Number(number) => whole(number).map(|n| n as u64).ok_or_else(|| self.needs(Wanted::Count)),
            _ => Err(self.needs(Wanted::Count)),
        }
    }
}

impl<'de> Deserializer<'de> for At<'de, '_> {
    type Error = Refusal;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refusal> {
        match self.value {
            Value::Null => visitor.visit_unit(),
            Value::Bool(_) => self.deserialize_bool(visitor),
            Value::Number(_) => self.deserialize_f64(visitor),
            Value::String(_) => self.deserialize_str(visitor),
            Value::Array(_) => self.deserialize_seq(visitor),
            Value::Object(_) => self.deserialize_map(visitor),
        }
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refusal> {
        match self.value.as_f64() {
            Some(value) => visitor.visit_f64(value).map_err(|refusal: Refusal| refusal.at(self.place)),
            None => Err(self.needs(Wanted::Number)),
        }
    }

    fn deserialize_u32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refusal> {
        self.deserialize_u64(visitor)
    }

    fn deserialize_u64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refusal> {
        visitor.visit_u64(self.count()?).map_err(|refusal: Refusal| refusal.at(self.place))
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refusal> {
        visitor.visit_bool(self.value.as_bool().ok_or_else(|| self.needs(Wanted::YesNo))?)
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refusal> {
        visitor.visit_str(self.value.as_str().ok_or_else(|| self.needs(Wanted::Text))?)
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refusal> {
        self.deserialize_str(visitor)
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refusal> {
        if self.value.is_null() { visitor.visit_none() } else { visitor.visit_some(self) }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refusal> {
        let list = self.value.as_array().ok_or_else(|| self.needs(Wanted::List))?;
        let entries = Entries { list: list.iter().enumerate(), place: self.place };
        visitor.visit_seq(entries).map_err(|refusal: Refusal| refusal.at(self.place))
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refusal> {
        let object = self.value.as_object().ok_or_else(|| self.needs(Wanted::Object))?;
        let fields = Fields { left: object.iter(), current: None, place: self.place };
        visitor.visit_map(fields).map_err(|refusal: Refusal| refusal.at(self.place))
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Refusal> {
        self.deserialize_map(visitor)
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Refusal> {
        let word = self.value.as_str().ok_or_else(|| self.needs(Wanted::Choice))?;
        visitor.visit_enum(Word(word)).map_err(|refusal: Refusal| refusal.at(self.place))
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, _: &'static str, visitor: V) -> Result<V::Value, Refusal> {
        visitor.visit_newtype_struct(self)
    }

    // The documents have none of these; what they would be read from decides.
    serde::forward_to_deserialize_any! {
        i8 i16 i32 i64 i128 u8 u16 u128 f32 char bytes byte_buf unit unit_struct tuple tuple_struct identifier ignored_any
    }
}

/// The entries of a list.
struct Entries<'de, 'p> {
    list: std::iter::Enumerate<std::slice::Iter<'de, Value>>,
    place: &'p Place<'p>,
}

impl<'de> SeqAccess<'de> for Entries<'de, '_> {
    type Error = Refusal;
    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Refusal> {
        let Some((index, value)) = self.list.next() else { return Ok(None) };
        seed.deserialize(At { value, place: &Place::Entry(self.place, index) }).map(Some)
    }
}

/// The fields of an object.
struct Fields<'de, 'p> {
    left: serde_json::map::Iter<'de>,
    current: Option<(&'de str, &'de Value)>,
    place: &'p Place<'p>,
}

impl<'de> MapAccess<'de> for Fields<'de, '_> {
    type Error = Refusal;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Refusal> {
        self.current = self.left.next().map(|(name, value)| (name.as_str(), value));
        let key: Option<StrDeserializer<'de, Refusal>> = self.current.map(|(name, _)| name.into_deserializer());
        key.map(|key| seed.deserialize(key)).transpose()
    }

    fn next_value_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<T::Value, Refusal> {
        let (name, value) = self.current.take().unwrap_or(("", &Value::Null));
        seed.deserialize(At { value, place: &Place::Field(self.place, name) })
    }
}

/// A word of a closed list.
struct Word<'a>(&'a str);

impl<'de> EnumAccess<'de> for Word<'de> {
    type Error = Refusal;
    type Variant = Self;
    fn variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<(T::Value, Self), Refusal> {
        let word: StrDeserializer<'de, Refusal> = self.0.into_deserializer();
        Ok((seed.deserialize(word)?, self))
    }
}

impl<'de> VariantAccess<'de> for Word<'de> {
    type Error = Refusal;
    fn unit_variant(self) -> Result<(), Refusal> {
        Ok(())
    }
    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, _: T) -> Result<T::Value, Refusal> {
        Err(Refusal::Other(format!("{:?} as a word alone", self.0)))
    }
    fn tuple_variant<V: Visitor<'de>>(self, _: usize, _: V) -> Result<V::Value, Refusal> {
        Err(Refusal::Other(format!("{:?} as a word alone", self.0)))
    }
    fn struct_variant<V: Visitor<'de>>(self, _: &'static [&'static str], _: V) -> Result<V::Value, Refusal> {
        Err(Refusal::Other(format!("{:?} as a word alone", self.0)))
    }
}
