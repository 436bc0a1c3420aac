//! From a document taken apart to a type. It follows the schema where serde is wider or narrower: an object comes from an
//! object only, `79.0` is a whole number, and a choice is named, never numbered.
//!
//! There is one reader with one kind of error, so that each type has its code once, whatever it is read from.

use crate::fault::Fault;
use crate::node::Node;
use crate::place::Place;
use serde::de::value::{StrDeserializer, StringDeserializer};
use serde::de::{
    DeserializeOwned, DeserializeSeed, Deserializer, EnumAccess, Error, IntoDeserializer, MapAccess, SeqAccess,
    Unexpected, VariantAccess, Visitor,
};
use serde::forward_to_deserialize_any;

/// Reads a type from a document.
pub(crate) fn read<T: DeserializeOwned>(node: &Node) -> Result<T, Fault> {
    T::deserialize(At { node, place: &Place::Document }).map_err(|fault| fault.at(&Place::Document))
}

/// A value and its place.
#[derive(Clone, Copy)]
struct At<'de, 'p> {
    node: &'de Node,
    place: &'p Place<'p>,
}

impl<'de> At<'de, '_> {
    fn found(&self) -> Unexpected<'de> {
        match self.node {
            Node::Null => Unexpected::Unit,
            Node::YesNo(yes) => Unexpected::Bool(*yes),
            Node::Number(number) => match (number.as_u64(), number.as_i64()) {
                (Some(number), _) => Unexpected::Unsigned(number),
                (None, Some(number)) => Unexpected::Signed(number),
                (None, None) => Unexpected::Float(number.as_f64().unwrap_or(f64::NAN)),
            },
            Node::Text(text) => Unexpected::Str(text),
            Node::List(_) => Unexpected::Seq,
            Node::Object(_) => Unexpected::Map,
        }
    }

    fn refused<V: Visitor<'de>>(&self, visitor: &V) -> Fault {
        Fault::invalid_type(self.found(), visitor).at(self.place)
    }

    /// Hands the value to the type. An error gets the place of the innermost value it passes through.
    fn give<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        let given = match self.node {
            Node::Null => visitor.visit_unit(),
            Node::YesNo(yes) => visitor.visit_bool(*yes),
            Node::Number(number) => match (number.as_u64(), number.as_i64()) {
                (Some(number), _) => visitor.visit_u64(number),
                (None, Some(number)) => visitor.visit_i64(number),
                (None, None) => visitor.visit_f64(number.as_f64().unwrap_or(f64::NAN)),
            },
            Node::Text(text) => visitor.visit_borrowed_str(text),
            Node::List(list) => visitor.visit_seq(Entries { left: list.iter().enumerate(), place: self.place }),
            Node::Object(fields) => visitor.visit_map(Fields { left: fields.iter(), value: None, place: self.place }),
        };
        given.map_err(|fault| fault.at(self.place))
    }

    /// A whole number, also where it is written with a point.
    fn give_whole<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        // Up to here every whole number has its own double, so that nothing is rounded in silence.
        const EXACT: f64 = 9_007_199_254_740_992.0;
        match self.node {
            Node::Number(number) if number.is_f64() => match number.as_f64() {
                #[allow(clippy::cast_possible_truncation, reason = "whole and within the exact range of a double")]
                Some(value) if value.fract() == 0.0 && value.abs() < EXACT => {
                    visitor.visit_i64(value as i64).map_err(|fault: Fault| fault.at(self.place))
                }
                _ => self.give(visitor),
            },
            _ => self.give(visitor),
        }
    }
}

macro_rules! whole_numbers {
    ($($method:ident)*) => {$(
        fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
            self.give_whole(visitor)
        }
    )*};
}

impl<'de> Deserializer<'de> for At<'de, '_> {
    type Error = Fault;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        self.give(visitor)
    }

    whole_numbers! {
        deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 deserialize_u8 deserialize_u16 deserialize_u32
        deserialize_u64
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self.node {
            Node::Null => visitor.visit_none(),
            _ => visitor.visit_some(self),
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(self, _: &'static str, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_newtype_struct(self)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        match self.node {
            // serde would fill an object from a list by the order of the fields in the source.
            Node::List(_) => Err(self.refused(&visitor)),
            _ => self.give(visitor),
        }
    }

    fn deserialize_identifier<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        match self.node {
            // serde would take a number for the place of a choice in the source, which is nobody's business.
            Node::Number(_) => Err(self.refused(&visitor)),
            _ => self.give(visitor),
        }
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault> {
        let choice = match self.node {
            Node::Text(name) => Choice { name, with: None, place: self.place },
            Node::Object(fields) => match fields.as_slice() {
                [(name, with)] => Choice { name, with: Some(with), place: self.place },
                _ => return Err(self.refused(&visitor)),
            },
            _ => return Err(self.refused(&visitor)),
        };
        visitor.visit_enum(choice).map_err(|fault| fault.at(self.place))
    }

    fn deserialize_ignored_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_unit()
    }

    forward_to_deserialize_any! {
        bool i128 u128 f32 f64 char str string bytes byte_buf unit unit_struct seq tuple tuple_struct map
    }
}

/// The entries of a list.
struct Entries<'de, 'p> {
    left: std::iter::Enumerate<std::slice::Iter<'de, Node>>,
    place: &'p Place<'p>,
}

impl<'de> SeqAccess<'de> for Entries<'de, '_> {
    type Error = Fault;

    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, Fault> {
        let Some((index, node)) = self.left.next() else { return Ok(None) };
        seed.deserialize(At { node, place: &Place::Entry(self.place, index) }).map(Some)
    }
    fn size_hint(&self) -> Option<usize> {
        Some(self.left.len())
    }
}

/// The fields of an object.
struct Fields<'de, 'p> {
    left: std::slice::Iter<'de, (String, Node)>,
    value: Option<&'de (String, Node)>,
    place: &'p Place<'p>,
}

impl<'de> MapAccess<'de> for Fields<'de, '_> {
    type Error = Fault;

    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, Fault> {
        self.value = self.left.next();
        self.value.map(|(name, _)| seed.deserialize(Name(name))).transpose()
    }
    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, Fault> {
        match self.value.take() {
            Some((name, node)) => seed.deserialize(At { node, place: &Place::Field(self.place, name) }),
            None => Err(Fault::custom("a value was asked for before its name")),
        }
    }
    fn size_hint(&self) -> Option<usize> {
        Some(self.left.len())
    }
}

/// A name of an object: a text, also within a type that wraps one.
#[derive(Clone, Copy)]
struct Name<'de>(&'de str);

impl<'de> Deserializer<'de> for Name<'de> {
    type Error = Fault;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault> {
        visitor.visit_borrowed_str(self.0)
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
        StringDeserializer::new(self.0.to_owned()).deserialize_enum(name, variants, visitor)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit unit_struct seq
        tuple tuple_struct map struct identifier ignored_any
    }
}

/// One of the choices of a field: its name alone, or an object whose only field it is.
struct Choice<'de, 'p> {
    name: &'de str,
    with: Option<&'de Node>,
    place: &'p Place<'p>,
}

impl<'de, 'p> EnumAccess<'de> for Choice<'de, 'p> {
    type Error = Fault;
    type Variant = Self;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self), Fault> {
        let name: StrDeserializer<'de, Fault> = self.name.into_deserializer();
        Ok((seed.deserialize(name)?, self))
    }
}

impl<'de> Choice<'de, '_> {
    /// What goes with the choice, given to `read` with its place.
    fn with<R>(self, read: impl FnOnce(At<'de, '_>) -> Result<R, Fault>) -> Result<R, Fault> {
        match self.with {
            Some(node) => read(At { node, place: &Place::Field(self.place, self.name) }),
            None => read(At { node: &Node::Null, place: self.place }),
        }
    }
}

impl<'de> VariantAccess<'de> for Choice<'de, '_> {
    type Error = Fault;

    fn unit_variant(self) -> Result<(), Fault> {
        match self.with {
            Some(_) => self.with(|at| serde::Deserialize::deserialize(at)),
            None => Ok(()),
        }
    }
    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<S::Value, Fault> {
        self.with(|at| seed.deserialize(at))
    }
    fn tuple_variant<V: Visitor<'de>>(self, _: usize, visitor: V) -> Result<V::Value, Fault> {
        self.with(|at| at.give(visitor))
    }
    fn struct_variant<V: Visitor<'de>>(self, fields: &'static [&'static str], visitor: V) -> Result<V::Value, Fault> {
        self.with(|at| at.deserialize_struct("", fields, visitor))
    }
}
