//! A reader between a type and its JSON that follows the schema where serde is wider or narrower: an object comes from an
//! object only, and `79.0` is a whole number. A name that stands twice in one object is a mistake also where serde keeps
//! the last of the two and drops the other without a word: in free-form values and maps. It passes everything else
//! through, at every depth.

use crate::pointer;
use serde::de::{
    DeserializeOwned, DeserializeSeed, Deserializer, EnumAccess, Error, MapAccess, SeqAccess, Unexpected,
    VariantAccess, Visitor,
};
use serde::forward_to_deserialize_any;
use std::collections::HashSet;
use std::fmt;
use std::marker::PhantomData;

/// Reads a type; an error comes with the pointer of its place.
pub(crate) fn read<'de, T: DeserializeOwned, D: Deserializer<'de>>(reader: D) -> Result<T, (String, D::Error)> {
    serde_path_to_error::deserialize(Strict(reader)).map_err(|e| (pointer::of(e.path()), e.into_inner()))
}

struct Strict<X>(X);

/// What the type asked for, where that changes what is taken.
#[derive(Clone, Copy)]
enum Asked {
    Anything,
    Object,
    WholeNumber,
}

struct StrictVisitor<V> {
    inner: V,
    asked: Asked,
}

impl<V> StrictVisitor<V> {
    const fn any(inner: V) -> Self {
        Self { inner, asked: Asked::Anything }
    }
    const fn object(inner: V) -> Self {
        Self { inner, asked: Asked::Object }
    }
    const fn whole(inner: V) -> Self {
        Self { inner, asked: Asked::WholeNumber }
    }
}

/// Passes a request on with a visitor that asks for this.
macro_rules! pass {
    ($($method:ident => $asked:ident),* $(,)?) => {$(
        fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, D::Error> {
            self.0.$method(StrictVisitor::$asked(visitor))
        }
    )*};
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Strict<D> {
    type Error = D::Error;

    pass! {
        deserialize_any => any, deserialize_bool => any, deserialize_f32 => any, deserialize_f64 => any,
        deserialize_char => any, deserialize_str => any, deserialize_string => any, deserialize_bytes => any,
        deserialize_byte_buf => any, deserialize_option => any, deserialize_unit => any, deserialize_seq => any,
        deserialize_map => any, deserialize_identifier => any, deserialize_ignored_any => any,
        deserialize_i8 => whole, deserialize_i16 => whole, deserialize_i32 => whole, deserialize_i64 => whole,
        deserialize_i128 => whole, deserialize_u8 => whole, deserialize_u16 => whole, deserialize_u32 => whole,
        deserialize_u64 => whole, deserialize_u128 => whole,
    }

    fn deserialize_unit_struct<V: Visitor<'de>>(self, name: &'static str, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_unit_struct(name, StrictVisitor::any(visitor))
    }
    fn deserialize_newtype_struct<V: Visitor<'de>>(self, name: &'static str, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_newtype_struct(name, StrictVisitor::any(visitor))
    }
    fn deserialize_tuple<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple(len, StrictVisitor::any(visitor))
    }
    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        len: usize,
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_tuple_struct(name, len, StrictVisitor::any(visitor))
    }
    fn deserialize_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_struct(name, fields, StrictVisitor::object(visitor))
    }
    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, D::Error> {
        self.0.deserialize_enum(name, variants, StrictVisitor::any(visitor))
    }
}

/// Passes a value on as it is.
macro_rules! take {
    ($($method:ident: $value:ty),* $(,)?) => {$(
        fn $method<E: Error>(self, value: $value) -> Result<V::Value, E> {
            self.inner.$method(value)
        }
    )*};
}

impl<'de, V: Visitor<'de>> Visitor<'de> for StrictVisitor<V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.inner.expecting(f)
    }

    take! {
        visit_bool: bool, visit_i8: i8, visit_i16: i16, visit_i32: i32, visit_i64: i64, visit_i128: i128, visit_u8: u8,
        visit_u16: u16, visit_u32: u32, visit_u64: u64, visit_u128: u128, visit_f32: f32, visit_char: char,
        visit_str: &str, visit_borrowed_str: &'de str, visit_string: String, visit_bytes: &[u8],
        visit_borrowed_bytes: &'de [u8], visit_byte_buf: Vec<u8>,
    }

    fn visit_f64<E: Error>(self, value: f64) -> Result<V::Value, E> {
        // Up to here every whole number has its own double, so that nothing is rounded in silence.
        const EXACT: f64 = 9_007_199_254_740_992.0;
        match self.asked {
            #[allow(clippy::cast_possible_truncation, reason = "whole and within the exact range of a double")]
            Asked::WholeNumber if value.fract() == 0.0 && value.abs() < EXACT => self.inner.visit_i64(value as i64),
            _ => self.inner.visit_f64(value),
        }
    }
    fn visit_none<E: Error>(self) -> Result<V::Value, E> {
        self.inner.visit_none()
    }
    fn visit_unit<E: Error>(self) -> Result<V::Value, E> {
        self.inner.visit_unit()
    }
    fn visit_some<D: Deserializer<'de>>(self, reader: D) -> Result<V::Value, D::Error> {
        self.inner.visit_some(Strict(reader))
    }
    fn visit_newtype_struct<D: Deserializer<'de>>(self, reader: D) -> Result<V::Value, D::Error> {
        self.inner.visit_newtype_struct(Strict(reader))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<V::Value, A::Error> {
        match self.asked {
            Asked::Object => Err(A::Error::invalid_type(Unexpected::Seq, &self)),
            _ => self.inner.visit_seq(Strict(list)),
        }
    }
    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<V::Value, A::Error> {
        self.inner.visit_map(Object { map, names: HashSet::new() })
    }
    fn visit_enum<A: EnumAccess<'de>>(self, choice: A) -> Result<V::Value, A::Error> {
        self.inner.visit_enum(Strict(choice))
    }
}

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for Strict<S> {
    type Value = S::Value;

    fn deserialize<D: Deserializer<'de>>(self, reader: D) -> Result<S::Value, D::Error> {
        self.0.deserialize(Strict(reader))
    }
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for Strict<A> {
    type Error = A::Error;

    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        self.0.next_element_seed(Strict(seed))
    }
    fn size_hint(&self) -> Option<usize> {
        self.0.size_hint()
    }
}

/// The entries of an object, with the names that were there.
struct Object<A> {
    map: A,
    names: HashSet<String>,
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Object<A> {
    type Error = A::Error;

    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, A::Error> {
        let Some(name) = self.map.next_key::<String>()? else { return Ok(None) };
        if !self.names.insert(name.clone()) {
            return Err(A::Error::custom(format_args!("duplicate field `{name}`")));
        }
        seed.deserialize(Name { name, error: PhantomData }).map(Some)
    }
    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, A::Error> {
        self.map.next_value_seed(Strict(seed))
    }
    fn size_hint(&self) -> Option<usize> {
        self.map.size_hint()
    }
}

/// A name of an object: a text, also within a type that wraps one.
struct Name<E> {
    name: String,
    error: PhantomData<E>,
}

impl<'de, E: Error> Deserializer<'de> for Name<E> {
    type Error = E;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, E> {
        visitor.visit_string(self.name)
    }
    fn deserialize_newtype_struct<V: Visitor<'de>>(self, _: &'static str, visitor: V) -> Result<V::Value, E> {
        visitor.visit_newtype_struct(self)
    }
    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, E> {
        serde::de::value::StringDeserializer::new(self.name).deserialize_enum(name, variants, visitor)
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit unit_struct seq
        tuple tuple_struct map struct identifier ignored_any
    }
}

impl<'de, A: EnumAccess<'de>> EnumAccess<'de> for Strict<A> {
    type Error = A::Error;
    type Variant = Strict<A::Variant>;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self::Variant), A::Error> {
        let (name, rest) = self.0.variant_seed(seed)?;
        Ok((name, Strict(rest)))
    }
}

impl<'de, A: VariantAccess<'de>> VariantAccess<'de> for Strict<A> {
    type Error = A::Error;

    fn unit_variant(self) -> Result<(), A::Error> {
        self.0.unit_variant()
    }
    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<S::Value, A::Error> {
        self.0.newtype_variant_seed(Strict(seed))
    }
    fn tuple_variant<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, A::Error> {
        self.0.tuple_variant(len, StrictVisitor::any(visitor))
    }
    fn struct_variant<V: Visitor<'de>>(
        self,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, A::Error> {
        self.0.struct_variant(fields, StrictVisitor::object(visitor))
    }
}
