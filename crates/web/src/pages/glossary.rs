//! The glossary: each term of the trade and of the program in a sentence or two.

use super::{Framed, PageResult, framed};
use crate::reader::Reader;
use app::App;
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::get;
use look::{meaning_of_term, section};
use maud::{Markup, html};
use words::Words;

/// Terms of the trade, by the names of their texts, in the order of the alphabet.
const TRADE: [&str; 28] = [
    "adapter",
    "balance-point",
    "balance-scale",
    "blank",
    "bore",
    "bounce",
    "bow",
    "butt",
    "cap",
    "cpm",
    "cure",
    "ferrule",
    "grip-size",
    "grip-wraps",
    "lie",
    "loft",
    "reference-club",
    "soft-side",
    "stiffness",
    "swing-inertia",
    "swing-weight",
    "tip",
    "tip-weight",
    "batch",
    "check-weight",
    "fitting-sheet",
    "part",
    "record",
];
/// What the program calls its own things.
const PROGRAM: [&str; 8] = ["doubt", "forecast", "learned-value", "let-pass", "offer", "plan", "remedy", "trust"];

/// The terms that lead here from the main pages, once a page, where they are first mentioned: those that a newcomer to
/// the bench may not know. What a page is itself about, such as a plan, needs no link.
pub(super) const EXPLAINED: [&str; 20] = [
    "adapter",
    "balance-point",
    "balance-scale",
    "blank",
    "bore",
    "cap",
    "cpm",
    "cure",
    "ferrule",
    "grip-wraps",
    "lie",
    "loft",
    "reference-club",
    "soft-side",
    "swing-weight",
    "tip-weight",
    "check-weight",
    "doubt",
    "forecast",
    "learned-value",
];

pub(super) fn router() -> Router<App> {
    Router::new().route("/glossary", get(show))
}

async fn show(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let body = html! {
        p { (w.text("glossary-lead")) }
        (section(&w.text("glossary-trade"), &html! {}, &terms(&w, &TRADE)))
        (section(&w.text("glossary-program"), &html! {}, &terms(&w, &PROGRAM)))
    };
    let title = w.text("glossary-title");
    Ok(framed(&w, &app, Framed { title: &title, body, ..Framed::default() }).await?.into_response())
}

/// Sorted by the language's own names.
fn terms(w: &Words, names: &[&str]) -> Markup {
    let mut terms: Vec<(String, &str)> = names.iter().map(|name| (w.text(&format!("term-{name}")), *name)).collect();
    terms.sort_by_key(|(text, _)| text.to_lowercase());
    html! {
        dl.glossary {
            @for (text, name) in &terms {
                div { dt id=(name) { (text) } dd { (meaning_of_term(w, name)) } }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{EXPLAINED, PROGRAM, TRADE};
    use std::collections::BTreeSet;
    use words::Language;

    #[test]
    fn the_page_has_every_term_of_the_texts() {
        let shown: BTreeSet<&str> = TRADE.iter().chain(&PROGRAM).copied().collect();
        let texts: BTreeSet<&str> = Language::english()
            .names()
            .filter_map(|(id, _)| id.strip_prefix("term-")?.strip_suffix("-about"))
            .collect();
        assert_eq!(shown, texts);
        assert!(EXPLAINED.iter().all(|name| shown.contains(name)));
    }
}
