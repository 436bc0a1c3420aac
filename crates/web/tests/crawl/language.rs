//! A second language is a second set of files: with a made-up one in place, no English is left on any page.

use super::Site;
use super::allowed::{Met, NAMES, WORDS};
use std::collections::BTreeSet;
use words::Language;

/// Each Latin letter as its full-width form, which stands in no text of ours and in no name of the demonstration.
fn wide(text: &str) -> String {
    let letter = |c: char| match c {
        'a'..='z' | 'A'..='Z' => char::from_u32(u32::from(c) - 0x21 + 0xff01).unwrap_or(c),
        _ => c,
    };
    text.chars().map(letter).collect()
}

/// Signs that are the same in any language: of units, and of the formats that a file may have.
const SIGNS: &[&str] = &[
    "mm", "cm", "in", "oz", "kg", "cpm", "deg", "Hz", "kHz", "MPa", "Pa", "Nm", "min", "ms", "mg", "ml", "gf", "lbf",
    "CSV", "XLSX", "JSON", "QR", "GW", "PW", "SW", "LW", "UTC", "SI", "EI", "WAV", "ISO",
];

/// Runs of two Latin letters or more in a text, less what was entered.
fn latin(text: &str, entered: &[String]) -> Vec<String> {
    // Most texts have none to begin with.
    if !text.as_bytes().windows(2).any(|pair| pair.iter().all(u8::is_ascii_alphabetic)) {
        return Vec::new();
    }
    let mut rest = text.to_owned();
    for name in entered.iter().filter(|name| name.len() > 1) {
        if rest.contains(name.as_str()) {
            rest = rest.replace(name.as_str(), " ");
        }
    }
    rest.split(|c: char| !c.is_ascii_alphabetic())
        .filter(|run| run.len() > 1 && !SIGNS.contains(run))
        .map(str::to_owned)
        .collect()
}

#[tokio::test]
async fn every_text_of_every_page_comes_from_the_texts() {
    let language: &'static Language = Box::leak(Box::new(Language::marked(wide)));
    let site = Site::open(language).await;
    let entered = site.entered().await;
    let pages = site.pages("in-g").await;
    assert!(pages.len() > 60, "only {} pages were found", pages.len());
    let (mut left, mut met) = (BTreeSet::new(), Met::default());
    for page in &pages {
        for seen in page.seen.iter().filter(|seen| !latin(&seen.text, &entered).is_empty()) {
            let rest = met.without(NAMES, &page.address, &seen.text);
            if !met.whole(WORDS, &page.address, &seen.text) && !latin(&rest, &entered).is_empty() {
                left.insert(format!("{}  [{}]  {}", seen.text.trim(), seen.place, page.address));
            }
        }
    }
    let left: Vec<String> = left.into_iter().collect();
    assert!(left.is_empty(), "{} texts are not from the texts:\n{}", left.len(), left.join("\n"));
    met.all_of(&[WORDS, NAMES]);
}

#[test]
fn english_on_a_page_would_be_found() {
    let entered = ["Nora Quill".to_owned()];
    assert_eq!(latin("Ｐｌａｎ Nora Quill 37.5 in", &entered), Vec::<String>::new());
    assert_eq!(latin("Ｐｌａｎ for Nora Quill", &entered), ["for"]);
}
