//! Goal: ten questions that a shop asks after five years are answered by one field each. Method: the table of `docs/ten-questions.md`,
//! asked of the invented shop; the answer stands on the page behind one of the hits.

use crate::demo_past::demo;
use crate::support::Bench;

const TABLE: &str = include_str!("../../../docs/ten-questions.md");

/// The pages that the field leads to: the one that it opens, or those of its list.
async fn pages(bench: &Bench, typed: &str) -> Vec<String> {
    let found = bench.page(&format!("/scan?code={}", typed.replace(' ', "%20"))).await;
    if found.status.is_redirection() {
        return vec![found.location];
    }
    assert!(found.status.is_success(), "{typed}: {}", found.status);
    let main = found.text.split("<main").nth(1).expect("a main part").to_owned();
    let links = main.split("href=\"").skip(1).filter_map(|rest| rest.split('"').next());
    links.filter(|link| link.starts_with('/')).map(|link| link.replace("&amp;", "&")).collect()
}

#[tokio::test]
async fn each_is_answered_on_a_page_that_the_field_leads_to() {
    let bench = demo().await;
    let rows: Vec<Vec<&str>> = TABLE
        .lines()
        .filter(|line| line.starts_with("| ") && line.contains('`'))
        .map(|line| line.trim_matches('|').split('|').map(str::trim).collect())
        .collect();
    assert_eq!(rows.len(), 10, "ten questions");
    for row in rows {
        let [question, typed, _, answer] = row[..] else { panic!("{row:?}") };
        let (typed, answer) = (typed.trim_matches('`'), answer.trim_matches('`'));
        let mut answered = None;
        for page in pages(&bench, typed).await {
            let shown = bench.page(&page).await;
            if shown.status.is_success() && shown.text.contains(answer) {
                answered = Some(page);
                break;
            }
        }
        assert!(answered.is_some(), "{question} “{typed}” leads to no page with “{answer}”");
    }
}
