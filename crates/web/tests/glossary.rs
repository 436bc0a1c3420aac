//! Goal: whoever meets a term of the trade for the first time gets to its meaning, without the page being littered with links.
//! Method: each main page of a job is asked for; its links into the glossary are counted and followed to their entries.

use crate::support::{Bench, planned};
use axum::http::StatusCode;
use std::collections::BTreeSet;

#[tokio::test]
async fn each_main_page_leads_to_the_meaning_of_a_term_once() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let glossary = bench.page("/glossary").await;
    glossary.says(StatusCode::OK, &["a support 14 in from its butt"]);
    assert!(glossary.terms.is_empty(), "the glossary leads to itself: {:?}", glossary.terms);
    let sheets = bench.get("/sheets").await;
    let sheet = sheets[0]["id"].as_str().expect("a sheet").to_owned();
    let pages = [
        (format!("/sheets/{sheet}"), "swing-weight"),
        ("/plan/1".to_owned(), "forecast"),
        ("/bench/1/1?step=dry".to_owned(), "swing-weight"),
        ("/glue".to_owned(), "cure"),
        ("/learned".to_owned(), "forecast"),
        ("/capability".to_owned(), "forecast"),
        ("/calc/swing-weight".to_owned(), "swing-weight"),
    ];
    let mut lacking = Vec::new();
    for (address, term) in &pages {
        let page = bench.page(address).await;
        page.says(StatusCode::OK, &[]);
        let once: BTreeSet<&String> = page.terms.iter().collect();
        assert_eq!(once.len(), page.terms.len(), "{address} leads to a term twice: {:?}", page.terms);
        for term in &page.terms {
            assert!(glossary.text.contains(&format!("<dt id=\"{term}\"")), "{address} leads to no entry: {term}");
        }
        if !page.terms.iter().any(|one| one == term) {
            lacking.push(format!("{address} has no {term}, but {:?}", page.terms));
        }
    }
    assert!(lacking.is_empty(), "{lacking:#?}");
}
