//! The codes of the parts that take one place in a club: one, or two tip weights, or none.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;
use utoipa::openapi::RefOr;
use utoipa::openapi::schema::{ObjectBuilder, Schema, Type};

/// Codes of parts, in the order in which they go in.
///
/// A document has them as one text, two codes joined by ` + `; that is the form in which a request names them, too.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct PartCodes(Vec<String>);

impl PartCodes {
    /// No part: the place is left empty, or nothing of the stock is needed.
    #[must_use]
    pub const fn none() -> Self {
        Self(Vec::new())
    }

    /// One part.
    #[must_use]
    pub fn one(code: impl Into<String>) -> Self {
        Self(vec![code.into()])
    }

    /// Each code.
    pub fn iter(&self) -> impl ExactSizeIterator<Item = &str> {
        self.0.iter().map(String::as_str)
    }

    /// How many parts.
    #[must_use]
    pub fn len(&self) -> usize {
        self.0.len()
    }

    /// Whether it names no part.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// Whether it names this part and no other.
    #[must_use]
    pub fn is_only(&self, code: &str) -> bool {
        self.0 == [code]
    }
}

impl FromIterator<String> for PartCodes {
    fn from_iter<I: IntoIterator<Item = String>>(codes: I) -> Self {
        Self(codes.into_iter().collect())
    }
}

/// Reads codes joined by `+`; blanks around them, and a `+` with no code beside it, count for nothing.
impl From<&str> for PartCodes {
    fn from(text: &str) -> Self {
        text.split('+').map(str::trim).filter(|code| !code.is_empty()).map(str::to_owned).collect()
    }
}

impl fmt::Display for PartCodes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0.join(" + "))
    }
}

impl Serialize for PartCodes {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for PartCodes {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer).map(|text| Self::from(text.as_str()))
    }
}

impl utoipa::PartialSchema for PartCodes {
    fn schema() -> RefOr<Schema> {
        ObjectBuilder::new()
            .schema_type(Type::String)
            .description(Some("Code of a part, or of two parts joined by “ + ”; empty for none."))
            .into()
    }
}

impl utoipa::ToSchema for PartCodes {}

#[cfg(test)]
mod tests {
    use super::PartCodes;

    #[test]
    fn codes_are_one_text_in_a_document_and_come_back_from_it() -> Result<(), serde_json::Error> {
        for (codes, text) in [
            (PartCodes::none(), "\"\""),
            (PartCodes::one("T-2"), "\"T-2\""),
            (["T-2".to_owned(), "T-4".to_owned()].into_iter().collect(), "\"T-2 + T-4\""),
        ] {
            assert_eq!(serde_json::to_string(&codes)?, text);
            assert_eq!(serde_json::from_str::<PartCodes>(text)?, codes);
        }
        // As people type it.
        assert_eq!(PartCodes::from(" T-2+ T-4 +"), PartCodes::from("T-2 + T-4"));
        Ok(())
    }
}
