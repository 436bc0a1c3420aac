//! Names with texts, as an address or a form has them, read as a type.

use crate::fault::{Fault, Mistake, Place, wanted_of};
use crate::pointer;
use fact::{Fact, Told};
use serde::de::value::{Error as Never, MapDeserializer, StringDeserializer};
use serde::de::{DeserializeOwned, Deserializer, Error, IntoDeserializer, Unexpected, Visitor};
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
        return Err(Place::OfName { name: Some(name.clone()), what: Mistake::Twice.told() }.told());
    }
    let pairs = MapDeserializer::new(pairs.into_iter().map(|(name, text)| (name, Typed(text))));
    serde_path_to_error::deserialize(pairs).map_err(|error| {
        let path = pointer::of(error.path()).trim_start_matches('/').to_owned();
        let (mistake, beside) = match error.into_inner() {
            Fault::Ours { mistake, beside, .. } => (mistake, beside),
            Fault::Theirs(error) => (Mistake::Other { log: error.to_string() }, None),
        };
        // The name of an unknown field is in its sentence.
        let named = !matches!(mistake, Mistake::UnknownField { .. });
        let name = beside.or_else(|| Some(path).filter(|path| !path.is_empty())).filter(|_| named);
        Place::OfName { name, what: mistake.told() }.told()
    })
}

/// A text whose type is asked for.
struct Typed(String);

impl Typed {
    fn refused<'de>(self, visitor: &impl Visitor<'de>) -> Fault<Never> {
        if self.0.is_empty() {
            return Fault::Ours { mistake: Mistake::Empty { wanted: wanted_of(visitor) }, beside: None, error: None };
        }
        Fault::invalid_type(Unexpected::Str(&self.0), visitor)
    }
}

impl<'de> IntoDeserializer<'de, Fault<Never>> for Typed {
    type Deserializer = Self;

    fn into_deserializer(self) -> Self {
        self
    }
}

macro_rules! whole_numbers {
    ($($method:ident)*) => {$(
        fn $method<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault<Never>> {
            match (self.0.parse::<i64>(), self.0.parse::<u64>()) {
                (Ok(number), _) => visitor.visit_i64(number),
                (_, Ok(number)) => visitor.visit_u64(number),
                _ => Err(self.refused(&visitor)),
            }
        }
    )*};
}

impl<'de> Deserializer<'de> for Typed {
    type Error = Fault<Never>;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault<Never>> {
        visitor.visit_string(self.0)
    }

    whole_numbers! {
        deserialize_i8 deserialize_i16 deserialize_i32 deserialize_i64 deserialize_u8 deserialize_u16 deserialize_u32
        deserialize_u64
    }

    fn deserialize_f64<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault<Never>> {
        match self.0.parse::<f64>() {
            Ok(number) => visitor.visit_f64(number),
            Err(_) => Err(self.refused(&visitor)),
        }
    }
    fn deserialize_f32<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault<Never>> {
        self.deserialize_f64(visitor)
    }
    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault<Never>> {
        match self.0.as_str() {
            "true" => visitor.visit_bool(true),
            "false" => visitor.visit_bool(false),
            _ => Err(self.refused(&visitor)),
        }
    }
    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Fault<Never>> {
        visitor.visit_some(self)
    }
    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        visitor: V,
    ) -> Result<V::Value, Fault<Never>> {
        visitor.visit_newtype_struct(self)
    }
    fn deserialize_enum<V: Visitor<'de>>(
        self,
        name: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Fault<Never>> {
        StringDeserializer::new(self.0).deserialize_enum(name, variants, visitor)
    }

    forward_to_deserialize_any! {
        i128 u128 char str string bytes byte_buf unit unit_struct seq tuple tuple_struct map struct identifier
        ignored_any
    }
}
