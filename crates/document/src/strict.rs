//! A reader between a type and its JSON that follows the schema where serde is wider or narrower: an object comes from an
//! object only, and `79.0` is a whole number. A name that stands twice in one object is a mistake also where serde keeps
//! the last of the two and drops the other without a word: in free-form values and maps. It passes everything else
//! through, at every depth.
//!
//! Mistakes that the types find are kept as facts: on their way out they pass through the reader below, which knows errors
//! of its own only. There an empty one of those stands for the fact, which waits in the [`Stash`] meanwhile.

use crate::fault::{Fault, Mistake};
use crate::pointer;
use serde::de::{
    DeserializeOwned, DeserializeSeed, Deserializer, EnumAccess, Error, MapAccess, SeqAccess, Unexpected,
    VariantAccess, Visitor,
};
use serde::forward_to_deserialize_any;
use std::cell::RefCell;
use std::collections::HashSet;
use std::fmt;
use std::marker::PhantomData;

/// Reads a type; an error comes with the pointer of its place.
pub(crate) fn read<'de, T: DeserializeOwned, D: Deserializer<'de>>(reader: D) -> Result<T, (String, Fault<D::Error>)> {
    let stash = Stash::default();
    let read = serde_path_to_error::deserialize(Strict { inner: reader, stash: &stash });
    read.map_err(|e| (pointer::of(e.path()), e.into_inner()))
}

/// A mistake that is on its way out through the reader below.
#[derive(Default)]
struct Stash(RefCell<Option<(Mistake, Option<String>)>>);

impl Stash {
    /// Into the reader below: its own error, or one that stands for the mistake.
    fn hand_to_reader<E: Error>(&self, fault: Fault<E>) -> E {
        match fault {
            Fault::Theirs(error) => error,
            Fault::Ours { mistake, beside, error } => {
                *self.0.borrow_mut() = Some((mistake, beside));
                error.unwrap_or_else(|| E::custom(""))
            }
        }
    }

    /// Out of the reader below, which has noted where in the text it was.
    fn out_of_reader<E>(&self, error: E) -> Fault<E> {
        match self.0.borrow_mut().take() {
            Some((mistake, beside)) => Fault::Ours { mistake, beside, error: Some(error) },
            None => Fault::Theirs(error),
        }
    }
}

struct Strict<'s, X> {
    inner: X,
    stash: &'s Stash,
}

/// What the type asked for, where that changes what is taken.
#[derive(Clone, Copy)]
enum Asked {
    Anything,
    Object,
    WholeNumber,
    /// The name of a choice, as the `kind` of a model: a number is its place in the source, which is nobody's business.
    Name,
}

struct StrictVisitor<'s, V> {
    inner: V,
    asked: Asked,
    stash: &'s Stash,
}

/// Whatever a type asks for, the reader below gives what is there: then it is the type that finds the mistake, as a fact.
macro_rules! ask_for_what_is_there {
    ($($method:ident => $asked:ident),* $(,)?) => {$(
        fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault<D::Error>> {
            let visitor = StrictVisitor { inner: visitor, asked: Asked::$asked, stash: self.stash };
            self.inner.deserialize_any(visitor).map_err(|e| self.stash.out_of_reader(e))
        }
    )*};
}

/// Passes a request on.
macro_rules! pass {
    ($($method:ident($($name:ident: $type:ty),*)),* $(,)?) => {$(
        fn $method<V: Visitor<'de>>(self, $($name: $type,)* visitor: V) -> Result<V::Value, Fault<D::Error>> {
            let visitor = StrictVisitor { inner: visitor, asked: Asked::Anything, stash: self.stash };
            self.inner.$method($($name,)* visitor).map_err(|e| self.stash.out_of_reader(e))
        }
    )*};
}

impl<'de, D: Deserializer<'de>> Deserializer<'de> for Strict<'_, D> {
    type Error = Fault<D::Error>;

    ask_for_what_is_there! {
        deserialize_any => Anything, deserialize_bool => Anything, deserialize_f32 => Anything,
        deserialize_f64 => Anything, deserialize_char => Anything, deserialize_str => Anything,
        deserialize_string => Anything, deserialize_unit => Anything, deserialize_seq => Anything,
        deserialize_map => Anything, deserialize_identifier => Name,
        deserialize_i8 => WholeNumber, deserialize_i16 => WholeNumber, deserialize_i32 => WholeNumber,
        deserialize_i64 => WholeNumber, deserialize_u8 => WholeNumber, deserialize_u16 => WholeNumber,
        deserialize_u32 => WholeNumber, deserialize_u64 => WholeNumber,
    }
    pass! {
        deserialize_bytes(), deserialize_byte_buf(), deserialize_option(), deserialize_ignored_any(),
        deserialize_i128(), deserialize_u128(),
        deserialize_unit_struct(name: &'static str), deserialize_newtype_struct(name: &'static str),
        deserialize_enum(name: &'static str, variants: &'static [&'static str]),
    }

    fn deserialize_tuple<V: Visitor<'de>>(self, _: usize, visitor: V) -> Result<V::Value, Self::Error> {
        self.deserialize_any(visitor)
    }
    fn deserialize_tuple_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: usize,
        visitor: V,
    ) -> Result<V::Value, Self::Error> {
        self.deserialize_any(visitor)
    }
    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Self::Error> {
        let visitor = StrictVisitor { inner: visitor, asked: Asked::Object, stash: self.stash };
        self.inner.deserialize_any(visitor).map_err(|e| self.stash.out_of_reader(e))
    }
}

/// Passes a value on as it is.
macro_rules! take {
    ($($method:ident: $value:ty),* $(,)?) => {$(
        fn $method<E: Error>(self, value: $value) -> Result<V::Value, E> {
            self.inner.$method::<Fault<E>>(value).map_err(|fault| self.stash.hand_to_reader(fault))
        }
    )*};
}

impl<'de, V: Visitor<'de>> Visitor<'de> for StrictVisitor<'_, V> {
    type Value = V::Value;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.inner.expecting(f)
    }

    take! {
        visit_bool: bool, visit_i8: i8, visit_i16: i16, visit_i32: i32, visit_i128: i128, visit_u8: u8,
        visit_u16: u16, visit_u32: u32, visit_u128: u128, visit_f32: f32, visit_char: char,
        visit_str: &str, visit_borrowed_str: &'de str, visit_string: String, visit_bytes: &[u8],
        visit_borrowed_bytes: &'de [u8], visit_byte_buf: Vec<u8>,
    }

    fn visit_i64<E: Error>(self, value: i64) -> Result<V::Value, E> {
        let read = match self.asked {
            Asked::Name => Err(Fault::invalid_type(Unexpected::Signed(value), &self)),
            _ => self.inner.visit_i64::<Fault<E>>(value),
        };
        read.map_err(|fault| self.stash.hand_to_reader(fault))
    }
    fn visit_u64<E: Error>(self, value: u64) -> Result<V::Value, E> {
        let read = match self.asked {
            Asked::Name => Err(Fault::invalid_type(Unexpected::Unsigned(value), &self)),
            _ => self.inner.visit_u64::<Fault<E>>(value),
        };
        read.map_err(|fault| self.stash.hand_to_reader(fault))
    }
    fn visit_f64<E: Error>(self, value: f64) -> Result<V::Value, E> {
        // Up to here every whole number has its own double, so that nothing is rounded in silence.
        const EXACT: f64 = 9_007_199_254_740_992.0;
        let read = match self.asked {
            #[allow(clippy::cast_possible_truncation, reason = "whole and within the exact range of a double")]
            Asked::WholeNumber if value.fract() == 0.0 && value.abs() < EXACT => {
                self.inner.visit_i64::<Fault<E>>(value as i64)
            }
            _ => self.inner.visit_f64(value),
        };
        read.map_err(|fault| self.stash.hand_to_reader(fault))
    }
    fn visit_none<E: Error>(self) -> Result<V::Value, E> {
        self.inner.visit_none::<Fault<E>>().map_err(|fault| self.stash.hand_to_reader(fault))
    }
    fn visit_unit<E: Error>(self) -> Result<V::Value, E> {
        self.inner.visit_unit::<Fault<E>>().map_err(|fault| self.stash.hand_to_reader(fault))
    }
    fn visit_some<D: Deserializer<'de>>(self, reader: D) -> Result<V::Value, D::Error> {
        let stash = self.stash;
        self.inner.visit_some(Strict { inner: reader, stash }).map_err(|fault| stash.hand_to_reader(fault))
    }
    fn visit_newtype_struct<D: Deserializer<'de>>(self, reader: D) -> Result<V::Value, D::Error> {
        let stash = self.stash;
        self.inner.visit_newtype_struct(Strict { inner: reader, stash }).map_err(|fault| stash.hand_to_reader(fault))
    }
    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<V::Value, A::Error> {
        let stash = self.stash;
        let read = match self.asked {
            Asked::Object => Err(Fault::invalid_type(Unexpected::Seq, &self)),
            _ => self.inner.visit_seq(Strict { inner: list, stash }),
        };
        read.map_err(|fault| stash.hand_to_reader(fault))
    }
    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<V::Value, A::Error> {
        let stash = self.stash;
        let object = Object { map, names: HashSet::new(), stash };
        self.inner.visit_map(object).map_err(|fault| stash.hand_to_reader(fault))
    }
    fn visit_enum<A: EnumAccess<'de>>(self, choice: A) -> Result<V::Value, A::Error> {
        let stash = self.stash;
        self.inner.visit_enum(Strict { inner: choice, stash }).map_err(|fault| stash.hand_to_reader(fault))
    }
}

impl<'de, S: DeserializeSeed<'de>> DeserializeSeed<'de> for Strict<'_, S> {
    type Value = S::Value;

    fn deserialize<D: Deserializer<'de>>(self, reader: D) -> Result<S::Value, D::Error> {
        let stash = self.stash;
        self.inner.deserialize(Strict { inner: reader, stash }).map_err(|fault| stash.hand_to_reader(fault))
    }
}

impl<'de, A: SeqAccess<'de>> SeqAccess<'de> for Strict<'_, A> {
    type Error = Fault<A::Error>;

    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, Self::Error> {
        let stash = self.stash;
        self.inner.next_element_seed(Strict { inner: seed, stash }).map_err(|e| stash.out_of_reader(e))
    }
    fn size_hint(&self) -> Option<usize> {
        self.inner.size_hint()
    }
}

/// The entries of an object, with the names that were there.
struct Object<'s, A> {
    map: A,
    names: HashSet<String>,
    stash: &'s Stash,
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Object<'_, A> {
    type Error = Fault<A::Error>;

    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, Self::Error> {
        let name = self.map.next_key::<String>().map_err(|e| self.stash.out_of_reader(e))?;
        let Some(name) = name else { return Ok(None) };
        if !self.names.insert(name.clone()) {
            return Err(Fault::Ours { mistake: Mistake::Twice, beside: Some(name), error: None });
        }
        seed.deserialize(Name { name, error: PhantomData }).map(Some)
    }
    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, Self::Error> {
        let stash = self.stash;
        self.map.next_value_seed(Strict { inner: seed, stash }).map_err(|e| stash.out_of_reader(e))
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

impl<'de, 's, A: EnumAccess<'de>> EnumAccess<'de> for Strict<'s, A> {
    type Error = Fault<A::Error>;
    type Variant = Strict<'s, A::Variant>;

    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self::Variant), Self::Error> {
        let stash = self.stash;
        let read = self.inner.variant_seed(Strict { inner: seed, stash });
        let (name, rest) = read.map_err(|e| stash.out_of_reader(e))?;
        Ok((name, Strict { inner: rest, stash }))
    }
}

impl<'de, A: VariantAccess<'de>> VariantAccess<'de> for Strict<'_, A> {
    type Error = Fault<A::Error>;

    fn unit_variant(self) -> Result<(), Self::Error> {
        self.inner.unit_variant().map_err(|e| self.stash.out_of_reader(e))
    }
    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<S::Value, Self::Error> {
        let stash = self.stash;
        self.inner.newtype_variant_seed(Strict { inner: seed, stash }).map_err(|e| stash.out_of_reader(e))
    }
    fn tuple_variant<V: Visitor<'de>>(self, len: usize, visitor: V) -> Result<V::Value, Self::Error> {
        let stash = self.stash;
        let visitor = StrictVisitor { inner: visitor, asked: Asked::Anything, stash };
        self.inner.tuple_variant(len, visitor).map_err(|e| stash.out_of_reader(e))
    }
    fn struct_variant<V: Visitor<'de>>(
        self,
        fields: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Self::Error> {
        let stash = self.stash;
        let visitor = StrictVisitor { inner: visitor, asked: Asked::Object, stash };
        self.inner.struct_variant(fields, visitor).map_err(|e| stash.out_of_reader(e))
    }
}
