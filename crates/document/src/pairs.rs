//! Names with texts, as an address or a form has them, read as a type.

use crate::fault::{Fault, Mistake, ToldAt, wanted_of};
use crate::place::{Place, Step};
use fact::{Fact, Told};
use serde::de::value::StringDeserializer;
use serde::de::{DeserializeOwned, DeserializeSeed, Deserializer, Error, MapAccess, Unexpected, Visitor};
use serde::forward_to_deserialize_any;
use std::collections::HashSet;

/// Reads a type from names with texts: the query of an address.
///
/// # Errors
/// The first mistake, with the name that it belongs to.
///
/// # Examples
/// ```
/// #[derive(serde::Deserialize)]
/// struct Asked {
///     joints: usize,
/// }
/// let pairs = [("joints".to_owned(), "8".to_owned())];
/// assert_eq!(document::read_pairs::<Asked>(pairs.to_vec()).map(|asked| asked.joints), Ok(8));
/// ```
pub fn read_pairs<T: DeserializeOwned>(pairs: Vec<(String, String)>) -> Result<T, Told> {
    let mut seen = HashSet::new();
    if let Some((name, _)) = pairs.iter().find(|(name, _)| !seen.insert(name.as_str())) {
        return Err(ToldAt::OfName { name: Some(name.clone()), what: Mistake::Twice.told() }.told());
    }
    T::deserialize(Pairs { left: pairs.into_iter(), current: None }).map_err(|fault| {
        // The name of an unknown field is in its sentence.
        let named = !matches!(fault.mistake, Mistake::UnknownField { .. });
        let name = fault.way().into_iter().find_map(|step| match step {
            Step::Field(name) if named => Some(name),
            _ => None,
        });
        ToldAt::OfName { name, what: fault.mistake.told() }.told()
    })
}

/// The names with their texts, as the fields of an object.
struct Pairs {
    left: std::vec::IntoIter<(String, String)>,
    current: Option<(String, String)>,
}

impl<'de> Deserializer<'de> for Pairs {
    type Error = Fault;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_map(self)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit unit_struct
        newtype_struct seq tuple tuple_struct map struct enum identifier ignored_any
    }
}

impl<'de> MapAccess<'de> for Pairs {
    type Error = Fault;

    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, Fault> {
        self.current = self.left.next();
        let Some((name, _)) = &self.current else { return Ok(None) };
        seed.deserialize(Typed(name.clone())).map(Some)
    }
    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, Fault> {
        let (name, text) = self.current.take().unwrap_or_default();
        seed.deserialize(Typed(text)).map_err(|fault| fault.at(&Place::Field(&Place::Document, &name)))
    }
}

/// A text whose type is asked for.
struct Typed(String);

impl Typed {
    fn refused<'de>(self, visitor: &impl Visitor<'de>) -> Fault {
        if self.0.is_empty() {
            return Fault::new(Mistake::Empty { wanted: wanted_of(visitor) });
        }
        Fault::invalid_type(Unexpected::Str(&self.0), visitor)
    }
}

macro_rules! whole_numbers {
    ($($method:ident)*) => {$(
        fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
            match (self.0.parse::<i64>(), self.0.parse::<u64>()) {
                (Ok(number), _) => visitor.visit_i64(number),
                (_, Ok(number)) => visitor.visit_u64(number),
                _ => Err(self.refused(&visitor)),
            }
        }
    )*};
}

impl<'de> Deserializer<'de> for Typed {
    type Error = Fault;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_string(self.0)
    }

    whole_numbers! {
        deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 deserialize_u8 deserialize_u16 deserialize_u32
        deserialize_u64
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self.0.parse::<f64>() {
            Ok(number) => visitor.visit_f64(number),
            Err(_) => Err(self.refused(&visitor)),
        }
    }
    fn deserialize_f32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        self.deserialize_f64(visitor)
    }
    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self.0.as_str() {
            "true" => visitor.visit_bool(true),
            "false" => visitor.visit_bool(false),
            _ => Err(self.refused(&visitor)),
        }
    }
    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_some(self)
    }
    fn deserialize_newtype_struct<V: Visitor<'de>>(self, _: &'static str, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_newtype_struct(self)
    }
    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        StringDeserializer::new(self.0).deserialize_enum(name, variants, visitor)
    }

    forward_to_deserialize_any! {
        i128 u128 char str string bytes byte_buf unit unit_struct seq tuple tuple_struct map struct identifier
        ignored_any
    }
}
