//! What tests ask of the texts.

use crate::language::id_of;
use crate::{Language, Words};
use fact::{Fact, Refusal};
use jiff::tz::TimeZone;

/// Checks the English text of the fact with this code, whose figures have these names. Says so where the text is missing, or where
/// it uses a figure that the fact does not hold.
#[must_use]
pub fn wrong_text(code: &str, figures: &[String]) -> Option<String> {
    let id = id_of(code);
    let Some((_, used)) = Language::english().names().find(|(name, _)| *name == id) else {
        return Some(format!("{id} has no text; its figures: {}", figures.join(", ")));
    };
    let unknown: Vec<&str> =
        used.iter().map(String::as_str).filter(|name| !figures.iter().any(|f| f == name)).collect();
    (!unknown.is_empty()).then(|| format!("{id} uses {}, but has {}", unknown.join(", "), figures.join(", ")))
}

/// Fails where a member of a closed list has no English text.
///
/// # Panics
/// With the names of all such members.
pub fn texts_of_list(members: &[impl Fact]) {
    let ids = members.iter().map(|member| id_of(member.told().code()));
    let missing: Vec<String> = ids.filter(|id| !Language::english().has(id)).collect();
    assert!(missing.is_empty(), "no texts: {}", missing.join(", "));
}

/// A refusal as a program reads it in English: for tests that hold its sentence.
pub trait InWords {
    /// What is wrong and what to do next.
    fn in_words(self) -> String;
}

impl<R: Into<Refusal>> InWords for R {
    fn in_words(self) -> String {
        Words::of_documents(Language::english(), TimeZone::UTC).refusal(&self.into())
    }
}
