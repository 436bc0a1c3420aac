//! What can be wrong with a document, as facts.

use crate::place::{Place, Step};
use fact::{Fact, Refusal, Told};
use serde::de::{self, Expected, Unexpected};
use std::fmt::{self, Display};

fact::facts! {
    /// What is wrong at a place of a document.
    pub enum Mistake: "document_mistake" {
        /// A field that must be there is not.
        Missing,
        /// A field that is not known.
        UnknownField {
            /// The field as the document writes it.
            name: String,
            /// Those that are known; absent where there are none.
            known: Option<Vec<String>>,
        },
        /// A word that is not one of a closed list.
        NotAChoice {
            /// The word.
            name: String,
            /// The words of the list.
            known: Vec<String>,
        },
        /// A name that stands twice.
        Twice,
        /// Something else than what the field takes.
        WrongKind {
            /// What must be there.
            wanted: Wanted,
            /// What is there.
            found: Found,
        },
        /// Nothing where something is needed; of an address or a form.
        Empty {
            /// What must be there.
            wanted: Wanted,
        },
        /// A list of another length.
        WrongLength {
            /// What must be there.
            wanted: Wanted,
            /// How many entries it has.
            n: usize,
        },
        /// Anything else that a type refuses, as the log has it.
        Other {
            /// What it said.
            log: String,
        },
    }
}

fact::facts! {
    /// What must be there.
    pub enum Wanted: "document_wanted" {
        /// A number.
        Number,
        /// A whole number.
        WholeNumber,
        /// A whole number, 0 or more.
        Count,
        /// A whole number within these.
        WholeNumberWithin {
            /// Least.
            low: i64,
            /// Greatest.
            high: i64,
        },
        /// A text.
        Text,
        /// True or false.
        YesNo,
        /// A list.
        List,
        /// A list of so many entries.
        ListOf {
            /// How many.
            n: usize,
        },
        /// An object with named fields.
        Object,
        /// One of the choices of a field.
        Choice,
        /// A name as a text.
        Name,
        /// Nothing: null.
        Null,
        /// Something that only the type can name.
        Other {
            /// What it is called there.
            log: String,
        },
    }
}

fact::facts! {
    /// What is there instead.
    pub enum Found: "document_found" {
        /// Nothing: null.
        Null,
        /// A list.
        List,
        /// An object.
        Object,
        /// A text.
        Text {
            /// Its beginning.
            text: String,
        },
        /// A number, true or false, as it is written.
        Value {
            /// As it is written.
            text: String,
        },
    }
}

fact::facts! {
    /// Why a text is not JSON.
    pub enum NotJson: "not_json" {
        /// There is nothing in it.
        Empty,
        /// It ends too early.
        TooShort,
        /// A value is missing or misspelled.
        Value,
        /// No colon after a name.
        Colon,
        /// No comma between two entries, or no end of a list.
        CommaInList,
        /// No comma between two fields, or no end of an object.
        CommaInObject,
        /// A name without double quotes.
        Name,
        /// A comma before an end.
        TrailingComma,
        /// More text after the end.
        More,
        /// A line break or a tab in a text.
        Control,
        /// A backslash that is not part of an escape.
        Escape,
        /// An escape of a character that is not complete.
        HexEscape,
        /// A number that is misspelled.
        Number,
        /// A number that is too large.
        TooLarge,
        /// Bytes that are not UTF-8.
        NotUtf8,
        /// Lists and objects too deep in each other.
        TooDeep,
    }
}

fact::facts! {
    /// A mistake with its place.
    pub(crate) enum ToldAt: "document" {
        NotJson { line: usize, column: usize, what: Told },
        InText { place: Option<String>, line: usize, column: usize, what: Told },
        InValue { place: Option<String>, what: Told },
        OfName { name: Option<String>, what: Told },
    }
}

/// A mistake on its way out, and where it is.
#[derive(Debug)]
pub(crate) struct Fault {
    /// What is wrong.
    pub mistake: Mistake,
    /// The name of the field beside which it belongs, where that is not the value that was being read.
    pub beside: Option<String>,
    /// Where it is: the innermost value that was being read. None until it has left that value.
    pub way: Option<Vec<Step>>,
}

impl Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.mistake.told().fmt(f)
    }
}

impl std::error::Error for Fault {}

impl Fault {
    pub(crate) const fn new(mistake: Mistake) -> Self {
        Self { mistake, beside: None, way: None }
    }

    fn beside(mistake: Mistake, name: &str) -> Self {
        Self { mistake, beside: Some(name.to_owned()), way: None }
    }

    /// Fixes the place, unless a value further inside has done so.
    pub(crate) fn at(mut self, place: &Place<'_>) -> Self {
        self.way.get_or_insert_with(|| place.steps());
        self
    }

    /// The way to it.
    pub(crate) fn way(&self) -> Vec<Step> {
        let beside = self.beside.clone().map(Step::Field);
        self.way.iter().flatten().cloned().chain(beside).collect()
    }
}

impl de::Error for Fault {
    fn custom<T: Display>(message: T) -> Self {
        Self::new(Mistake::Other { log: message.to_string() })
    }

    fn invalid_type(found: Unexpected<'_>, wanted: &dyn Expected) -> Self {
        Self::new(Mistake::WrongKind { wanted: wanted_of(wanted), found: found_of(&found) })
    }

    fn invalid_value(found: Unexpected<'_>, wanted: &dyn Expected) -> Self {
        Self::invalid_type(found, wanted)
    }

    fn invalid_length(n: usize, wanted: &dyn Expected) -> Self {
        Self::new(Mistake::WrongLength { wanted: wanted_of(wanted), n })
    }

    fn unknown_variant(name: &str, known: &'static [&'static str]) -> Self {
        Self::new(Mistake::NotAChoice { name: name.to_owned(), known: names(known) })
    }

    fn unknown_field(name: &str, known: &'static [&'static str]) -> Self {
        let known = Some(names(known)).filter(|known| !known.is_empty());
        Self::beside(Mistake::UnknownField { name: name.to_owned(), known }, name)
    }

    fn missing_field(name: &'static str) -> Self {
        Self::beside(Mistake::Missing, name)
    }

    fn duplicate_field(name: &'static str) -> Self {
        Self::beside(Mistake::Twice, name)
    }
}

/// The names, each once: a field with a former name is listed under both.
fn names(known: &[&str]) -> Vec<String> {
    let mut names: Vec<String> = known.iter().map(|name| (*name).to_owned()).collect();
    names.dedup();
    names
}

/// What a type wants. A type tells it only by the name that it gives itself in the source: these are the names of the types
/// that can be read.
pub(crate) fn wanted_of(wanted: &dyn Expected) -> Wanted {
    let name = wanted.to_string();
    let within = |low, high| Wanted::WholeNumberWithin { low, high };
    match name.as_str() {
        "f64" | "f32" => Wanted::Number,
        "i8" => within(i8::MIN.into(), i8::MAX.into()),
        "i16" => within(i16::MIN.into(), i16::MAX.into()),
        "i32" => within(i32::MIN.into(), i32::MAX.into()),
        "i64" | "isize" => Wanted::WholeNumber,
        "u8" => within(0, u8::MAX.into()),
        "u16" => within(0, u16::MAX.into()),
        "u32" => within(0, u32::MAX.into()),
        "u64" | "usize" => Wanted::Count,
        "a string" | "str" | "string" | "a borrowed string" => Wanted::Text,
        "a boolean" => Wanted::YesNo,
        "a sequence" => Wanted::List,
        "a map" => Wanted::Object,
        "variant identifier" | "field identifier" => Wanted::Name,
        "unit" => Wanted::Null,
        // `struct Name with 3 elements`, `internally tagged enum Name`, `variant of enum Name`, `enum Name`.
        _ if ["struct ", "internally tagged enum ", "adjacently tagged enum "].iter().any(|o| name.starts_with(o)) => {
            Wanted::Object
        }
        _ if name.starts_with("enum ") || name.starts_with("variant of enum ") => Wanted::Choice,
        _ => match counted(&name) {
            Some(n) => Wanted::ListOf { n },
            None => Wanted::Other { log: name },
        },
    }
}

/// The count in `a tuple of size 2`, `an array of length 2`, `tuple struct X with 2 elements`.
fn counted(name: &str) -> Option<usize> {
    let tuple = name.starts_with("a tuple") || name.starts_with("tuple ") || name.starts_with("an array of length");
    tuple.then(|| name.split(' ').find_map(|word| word.parse().ok()))?
}

fn found_of(found: &Unexpected<'_>) -> Found {
    let value = |text: String| Found::Value { text };
    match found {
        Unexpected::Bool(yes) => value(yes.to_string()),
        Unexpected::Unsigned(number) => value(number.to_string()),
        Unexpected::Signed(number) => value(number.to_string()),
        Unexpected::Float(number) => value(number.to_string()),
        Unexpected::Char(letter) => Found::Text { text: letter.to_string() },
        Unexpected::Str(text) => Found::Text { text: shortened(text) },
        Unexpected::Unit | Unexpected::Option => Found::Null,
        Unexpected::Seq => Found::List,
        Unexpected::Map => Found::Object,
        other => value(other.to_string()),
    }
}

/// A long text is not repeated whole.
fn shortened(text: &str) -> String {
    const MOST: usize = 60;
    if text.chars().count() > MOST { text.chars().take(MOST).chain("…".chars()).collect() } else { text.to_owned() }
}

impl From<crate::Unreadable> for Refusal {
    fn from(error: crate::Unreadable) -> Self {
        Self::new(&error)
    }
}
