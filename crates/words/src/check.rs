//! What tests ask of the texts.

use crate::language::id_of;
use crate::{Language, Words};
use fact::{Fact, Facts, Refusal};
use jiff::tz::TimeZone;

/// Fails where a member of an enumeration of facts has no English text, or its text uses a figure that the member does
/// not have. Called by the test that `fact::facts!` brings.
///
/// # Panics
/// With the names of all such members.
pub fn texts_of<F: Facts>() {
    let english = Language::english();
    let mut wrong = Vec::new();
    for (code, figures) in F::codes() {
        let id = id_of(&code);
        let Some((_, used)) = english.names().find(|(name, _)| *name == id) else {
            wrong.push(format!("{id} has no text; its figures: {}", figures.join(", ")));
            continue;
        };
        let unknown: Vec<&str> = used.iter().map(String::as_str).filter(|name| !figures.contains(name)).collect();
        if !unknown.is_empty() {
            wrong.push(format!("{id} uses {}, but has {}", unknown.join(", "), figures.join(", ")));
        }
    }
    assert!(wrong.is_empty(), "{}:\n{}", F::AREA, wrong.join("\n"));
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
