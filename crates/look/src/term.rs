//! A term of the trade with the way to its meaning.

use maud::{Markup, html};
use words::Words;

/// A term as a link into the glossary; its meaning is its title. `name` is the term's name among the texts, `swing-weight`.
#[must_use]
pub fn term(w: &Words, name: &str) -> Markup {
    term_as(w, name, &w.text(&format!("term-{name}")))
}

/// The same with other words, as a sentence needs them.
#[must_use]
pub fn term_as(w: &Words, name: &str, text: &str) -> Markup {
    let about = w.text(&format!("term-{name}-about"));
    html! { a.term href={ "/glossary#" (name) } title=(about) { (text) } }
}
