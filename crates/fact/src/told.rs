//! A fact as data.

mod figure;

pub use figure::{Figure, ToFigure};

use serde::de::{self, Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde::ser::{Serialize, SerializeStruct, Serializer};
use std::borrow::Cow;
use std::fmt;

/// A fact as data: what is kept, sent and told. Two of them are equal when code and figures are.
#[derive(Debug, Clone, PartialEq)]
pub struct Told {
    code: Cow<'static, str>,
    figures: Vec<(Cow<'static, str>, Figure)>,
}

/// Code of a sentence that an earlier version kept as it was shown; its only figure is the text.
const AS_KEPT: &str = "kept.text";

/// The area, a point, and the member's name in small letters: `loft_check.too_weak`.
pub(crate) fn code_of(area: &str, member: &str) -> String {
    format!("{area}.{}", small(member))
}

/// A name of the source in small letters: `TooWeak` is `too_weak`.
fn small(name: &str) -> String {
    let mut text = String::new();
    for (i, letter) in name.char_indices() {
        if letter.is_ascii_uppercase() && i > 0 {
            text.push('_');
        }
        text.push(letter.to_ascii_lowercase());
    }
    text
}

impl Told {
    /// A fact without figures.
    #[must_use]
    pub const fn new(code: &'static str) -> Self {
        Self { code: Cow::Borrowed(code), figures: Vec::new() }
    }

    /// The fact that a member of an enumeration stands for.
    #[doc(hidden)]
    #[must_use]
    pub fn member(area: &str, member: &str) -> Self {
        Self { code: Cow::Owned(code_of(area, member)), figures: Vec::new() }
    }

    /// A member of a closed list of the trade, by the list's name in the source and the member's key: `part_kind.head`.
    ///
    /// # Examples
    ///
    /// ```
    /// assert_eq!(fact::Told::of_list("PartKind", "tip_weight").code(), "part_kind.tip_weight");
    /// ```
    #[must_use]
    pub fn of_list(list: &str, key: &str) -> Self {
        Self { code: Cow::Owned(format!("{}.{key}", small(list))), figures: Vec::new() }
    }

    /// A sentence that was kept by an earlier version, or written by a person: told as it is.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::Told;
    ///
    /// let told = Told::verbatim("2 g in the tip");
    /// assert_eq!(told.written(), Some("2 g in the tip"));
    /// assert_eq!(Told::new("tip.empty").written(), None);
    /// ```
    #[must_use]
    pub fn verbatim(text: impl Into<String>) -> Self {
        Self::new(AS_KEPT).with("text", &text.into())
    }

    /// The text of a sentence that is told as it is; none of any other fact.
    #[must_use]
    pub fn written(&self) -> Option<&str> {
        match self.figure("text") {
            Some(Figure::Text(text)) if self.code == AS_KEPT => Some(text),
            _ => None,
        }
    }

    /// With one figure more; they are kept in the order of their names, as a document may come back in that order.
    ///
    /// # Examples
    ///
    /// ```
    /// let told = fact::Told::new("loft_check.weak").with("by_deg", &9.5).with("club", "7");
    /// assert_eq!(told.to_string(), "loft_check.weak (by_deg: 9.5, club: “7”)");
    /// ```
    #[must_use]
    pub fn with(mut self, name: &'static str, value: &(impl ToFigure + ?Sized)) -> Self {
        let place = self.figures.partition_point(|(other, _)| other.as_ref() < name);
        self.figures.insert(place, (Cow::Borrowed(name), value.to_figure()));
        self
    }

    /// Another value for a figure that is there.
    pub(crate) fn replace(&mut self, name: &str, value: &impl ToFigure) {
        if let Some((_, figure)) = self.figures.iter_mut().find(|(other, _)| other == name) {
            *figure = value.to_figure();
        }
    }

    /// What it is, as a short stable name: `loft_check.weak`.
    #[must_use]
    pub fn code(&self) -> &str {
        &self.code
    }

    /// Its figures by their names.
    pub fn figures(&self) -> impl ExactSizeIterator<Item = (&str, &Figure)> {
        self.figures.iter().map(|(name, figure)| (name.as_ref(), figure))
    }

    /// One figure.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::{Figure, Told};
    ///
    /// let told = Told::new("loft_check.weak").with("by_deg", &9.5);
    /// assert_eq!(told.figure("by_deg"), Some(&Figure::Number(9.5)));
    /// assert_eq!(told.figure("limit_deg"), None);
    /// ```
    #[must_use]
    pub fn figure(&self, name: &str) -> Option<&Figure> {
        self.figures.iter().find(|(n, _)| n == name).map(|(_, figure)| figure)
    }
}

/// The form of a log: the code and the figures, no sentence.
impl fmt::Display for Told {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(text) = self.written() {
            return f.write_str(text);
        }
        f.write_str(&self.code)?;
        for (i, (name, figure)) in self.figures.iter().enumerate() {
            write!(f, "{}{name}: {figure}", if i == 0 { " (" } else { ", " })?;
        }
        if self.figures.is_empty() { Ok(()) } else { f.write_str(")") }
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Number(value) => write!(f, "{value}"),
            Self::Count(count) => write!(f, "{count}"),
            Self::Text(text) => write!(f, "“{text}”"),
            Self::Fact(told) => write!(f, "{told}"),
            Self::Absent => f.write_str("–"),
            Self::List(figures) => {
                f.write_str("[")?;
                for (i, figure) in figures.iter().enumerate() {
                    write!(f, "{}{figure}", if i == 0 { "" } else { ", " })?;
                }
                f.write_str("]")
            }
        }
    }
}

struct Figures<'a>(&'a [(Cow<'static, str>, Figure)]);

impl Serialize for Figures<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_map(self.0.iter().map(|(name, figure)| (name, figure)))
    }
}

impl Serialize for Told {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut fields = serializer.serialize_struct("Told", 2)?;
        fields.serialize_field("code", &self.code)?;
        fields.serialize_field("figures", &Figures(&self.figures))?;
        fields.end()
    }
}

/// Reads what [`Told`] writes, and a bare text as a sentence that was kept by an earlier version.
impl<'de> Deserialize<'de> for Told {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Reader;
        impl<'de> Visitor<'de> for Reader {
            type Value = Told;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a fact with its code and figures")
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<Told, E> {
                Ok(Told::verbatim(text))
            }

            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Told, A::Error> {
                let (mut code, mut figures) = (None, Vec::new());
                while let Some(name) = map.next_key::<String>()? {
                    match name.as_str() {
                        "code" => code = Some(map.next_value::<String>()?),
                        "figures" => figures = map.next_value::<Named>()?.0,
                        _ => drop(map.next_value::<de::IgnoredAny>()?),
                    }
                }
                let code = code.ok_or_else(|| de::Error::missing_field("code"))?;
                Ok(Told { code: Cow::Owned(code), figures })
            }
        }
        deserializer.deserialize_any(Reader)
    }
}

struct Named(Vec<(Cow<'static, str>, Figure)>);

impl<'de> Deserialize<'de> for Named {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Reader;
        impl<'de> Visitor<'de> for Reader {
            type Value = Named;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("the figures of a fact by their names")
            }

            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Named, A::Error> {
                let mut figures = Vec::new();
                while let Some((name, figure)) = map.next_entry::<String, Figure>()? {
                    figures.push((Cow::Owned(name), figure));
                }
                figures.sort_by(|(a, _): &(Cow<'static, str>, Figure), (b, _)| a.cmp(b));
                Ok(Named(figures))
            }
        }
        deserializer.deserialize_map(Reader)
    }
}

impl<'de> Deserialize<'de> for Figure {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Reader;
        impl<'de> Visitor<'de> for Reader {
            type Value = Figure;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("a figure of a fact")
            }

            fn visit_f64<E>(self, value: f64) -> Result<Figure, E> {
                Ok(Figure::Number(value))
            }

            fn visit_i64<E>(self, count: i64) -> Result<Figure, E> {
                Ok(Figure::Count(count))
            }

            fn visit_u64<E>(self, count: u64) -> Result<Figure, E> {
                Ok(Figure::Count(i64::try_from(count).unwrap_or(i64::MAX)))
            }

            fn visit_str<E>(self, text: &str) -> Result<Figure, E> {
                Ok(Figure::Text(text.to_owned()))
            }

            fn visit_unit<E>(self) -> Result<Figure, E> {
                Ok(Figure::Absent)
            }

            fn visit_seq<A: SeqAccess<'de>>(self, mut items: A) -> Result<Figure, A::Error> {
                let mut list = Vec::new();
                while let Some(figure) = items.next_element()? {
                    list.push(figure);
                }
                Ok(Figure::List(list))
            }

            fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Figure, A::Error> {
                Told::deserialize(de::value::MapAccessDeserializer::new(map)).map(Figure::Fact)
            }
        }
        deserializer.deserialize_any(Reader)
    }
}

impl utoipa::PartialSchema for Told {
    fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
        schema(&[])
    }
}

impl utoipa::ToSchema for Told {
    fn name() -> Cow<'static, str> {
        Cow::Borrowed("Fact")
    }
}

/// How an answer describes a fact: its code, one of these where they are known, its figures and the sentence.
#[must_use]
pub(crate) fn schema(codes: &[String]) -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
    use utoipa::openapi::schema::{AdditionalProperties, ObjectBuilder, Schema, Type};
    let text = |about: &str| ObjectBuilder::new().schema_type(Type::String).description(Some(about));
    let code = text("What it is, as a short stable name.");
    let code = if codes.is_empty() { code } else { code.enum_values(Some(codes.iter().cloned())) };
    let figures = ObjectBuilder::new()
        .schema_type(Type::Object)
        .description(Some("The figures by their names; a unit is the end of its name. A figure may be a fact itself."))
        .additional_properties(Some(AdditionalProperties::<Schema>::FreeForm(true)));
    ObjectBuilder::new()
        .schema_type(Type::Object)
        .property("code", code)
        .required("code")
        .property("figures", figures)
        .required("figures")
        .property("words", text("The same as a sentence for people."))
        .required("words")
        .into()
}

/// How an answer describes a fact that is written into an object itself, where there is one at all.
#[must_use]
pub fn schema_where_any() -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
    use utoipa::openapi::RefOr;
    use utoipa::openapi::schema::Schema;
    let mut described = schema(&[]);
    if let RefOr::T(Schema::Object(object)) = &mut described {
        object.required.clear();
    }
    described
}

#[cfg(test)]
mod tests {
    use super::Told;
    use crate::{Fact, Figure};

    #[test]
    fn a_fact_comes_back_from_its_document_as_it_was() -> Result<(), serde_json::Error> {
        let inner = Told::new("what.loft");
        let told = Told::new("bend.weak")
            .with("by_deg", &9.5)
            .with("clubs", &3_usize)
            .with("names", &vec!["7".to_owned(), "PW".to_owned()])
            .with("limit_deg", &None::<f64>)
            .with("what", &inner);
        let back: Told = serde_json::from_value(serde_json::to_value(&told)?)?;
        assert_eq!(back, told);
        assert_eq!(back.figure("what"), Some(&Figure::Fact(inner.told())));
        Ok(())
    }

    #[test]
    fn a_sentence_that_was_kept_before_is_read_as_it_is() -> Result<(), serde_json::Error> {
        let told: Told = serde_json::from_str("\"2 g in the tip\"")?;
        assert_eq!(told, Told::verbatim("2 g in the tip"));
        assert_eq!(told.to_string(), "2 g in the tip");
        Ok(())
    }

    #[test]
    fn a_log_shows_code_and_figures() {
        let told = Told::new("bend.weak").with("by_deg", &9.5).with("club", "7");
        assert_eq!(told.to_string(), "bend.weak (by_deg: 9.5, club: “7”)");
    }
}
