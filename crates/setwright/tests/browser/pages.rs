//! Every page that the invented shop leads to, found by following its links.

use crate::harness::Bench;
use std::collections::{BTreeSet, VecDeque};
use std::sync::OnceLock;

/// Pages that stand at the end of a form and not of a link, and some that are to be seen in more than one state.
const BEGIN: [&str; 14] = [
    "/",
    "/come-in",
    "/labels",
    "/plan/1/again",
    "/plan/1/cards",
    "/bench/1/1?step=cut",
    "/bench/1/1?step=glue",
    "/bench/1/1?step=weighed&scanned=S5-01",
    "/stock/models/file",
    "/stock/new?model=SISKIN&number=7&kept=S7-03",
    "/stock/sort?model=SISKIN&number=7",
    "/stock/ask?job=1",
    "/shop/scales",
    "/style",
];

/// One address of each kind of page: two parts, two steps of the grid, two sheets are the same page. Followed once, since
/// every bench serves the same shop.
pub fn all(bench: &Bench) -> Vec<String> {
    static FOUND: OnceLock<Vec<String>> = OnceLock::new();
    FOUND.get_or_init(|| follow(bench)).clone()
}

fn follow(bench: &Bench) -> Vec<String> {
    let mut found = Vec::new();
    let mut known: BTreeSet<String> = BTreeSet::new();
    // Those to begin with are seen whatever else of their kind was.
    let mut open: VecDeque<(String, bool)> = BEGIN.iter().map(|page| ((*page).to_owned(), true)).collect();
    while let Some((page, begin)) = open.pop_front() {
        if !known.insert(kind(&page)) && !begin {
            continue;
        }
        let Some(text) = bench.page(&page) else { continue };
        found.push(page);
        let links = text.split("href=\"").skip(1).filter_map(|rest| rest.split('"').next());
        let own =
            links.filter(|link| link.starts_with('/') && !link.starts_with("/assets") && !link.starts_with("/api"));
        open.extend(own.map(|link| (link.split('#').next().unwrap_or_default().replace("&amp;", "&"), false)));
    }
    // A reading of a gauge study that is corrected: the screen of one reading.
    let study = found.iter().find(|page| kind(page) == "scales/studies/*").map(|page| format!("{page}?place=3"));
    found.extend(study);
    found
}

/// An address without what only names one of many: numbers, codes, and what is asked of a page.
fn kind(page: &str) -> String {
    let path = page.split('?').next().unwrap_or_default();
    let mut words: Vec<&str> = Vec::new();
    for word in path.split('/').skip(1) {
        let before = words.last().copied().unwrap_or_default();
        let one_of_many = word.chars().any(|c| c.is_ascii_digit())
            || word.chars().any(|c| c.is_ascii_uppercase())
            || before == "grid";
        words.push(if one_of_many { "*" } else { word });
    }
    words.join("/")
}
