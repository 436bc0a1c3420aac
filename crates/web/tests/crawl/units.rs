//! No page shows a figure in a unit that its reader did not ask for.

use super::allowed::{EXAMPLES, Met};
use super::{Seen, Site};
use std::collections::BTreeSet;
use words::Language;

/// Signs of mass and length that are foreign to a reader with these units.
fn foreign(units: &str) -> Vec<&'static str> {
    let (length, mass) = units.split_once('-').unwrap_or_default();
    let lengths = if length == "in" { ["mm", "cm", "mm"] } else { ["in", "inch", "inches"] };
    let masses = if mass == "g" { ["oz", "lb", "ounces"] } else { ["g", "grams", "gram"] };
    lengths.into_iter().chain(masses).collect()
}

/// The figures of a text with a foreign unit: `256.1 g` for a reader of ounces.
fn figures(text: &str, foreign: &[&str]) -> Vec<String> {
    let words: Vec<&str> = text.split([' ', '\u{a0}', '\n']).filter(|word| !word.is_empty()).collect();
    let bare = |word: &str| word.trim_matches(|c: char| "()[],;:.“”".contains(c)).to_owned();
    let mut found = Vec::new();
    for pair in words.windows(2) {
        let (figure, sign) = (bare(pair[0]), bare(pair[1]));
        // The letter scale is defined by moments in ounce-inches; below its A0 the moment stands beside the letter.
        let moment = sign == "oz" && text.contains(&format!("{} oz in", pair[0]));
        // “4 in 10” and “4 in the tip” are no lengths: an inch stands at the end of its phrase.
        let chance = sign == "in" && pair[1] == "in" && !text.trim_end().ends_with(&format!("{} in", pair[0]));
        let number = figure.bytes().any(|b| b.is_ascii_digit())
            && figure.chars().all(|c| c.is_ascii_digit() || "+-−±./,–½¼¾".contains(c));
        if number && !chance && !moment && foreign.contains(&sign.as_str()) {
            found.push(format!("{figure} {sign}"));
        }
    }
    found
}

/// A hint or a placeholder shows how an entry may be typed, in any unit.
fn is_example(seen: &Seen) -> bool {
    seen.place.contains("@placeholder") || seen.place.contains(".hint")
}

#[tokio::test]
async fn no_figure_is_in_a_unit_that_was_not_asked_for() {
    let site = Site::open(Language::english()).await;
    let entered = site.entered().await;
    let (mut wrong, mut met) = (BTreeSet::new(), Met::default());
    for units in ["in-g", "mm-g", "in-oz", "mm-oz"] {
        let foreign = foreign(units);
        let pages = site.pages(units).await;
        assert!(pages.len() > 60, "only {} pages were found", pages.len());
        // The guide is a book: it shows how entries are typed, in any unit.
        for page in pages.iter().filter(|page| !page.address.starts_with("/help")) {
            for seen in page.seen.iter().filter(|seen| !is_example(seen)) {
                let mut text = seen.text.clone();
                if met.whole(EXAMPLES, &page.address, &text) || figures(&text, &foreign).is_empty() {
                    continue;
                }
                // What was typed keeps the unit it was typed in.
                for typed in entered.iter().filter(|typed| typed.len() > 1) {
                    text = text.replace(typed.as_str(), " ");
                }
                for figure in figures(&text, &foreign) {
                    wrong.insert(format!(
                        "{units}  {figure}  “{}”  [{}]  {}",
                        seen.text.trim(),
                        seen.place,
                        page.address
                    ));
                }
            }
        }
    }
    let wrong: Vec<String> = wrong.into_iter().collect();
    assert!(wrong.is_empty(), "{} figures in a unit not asked for:\n{}", wrong.len(), wrong.join("\n"));
    met.all_of(&[EXAMPLES]);
}

#[test]
fn a_foreign_figure_would_be_found() {
    let ounces = foreign("mm-oz");
    assert_eq!(figures("Put 2 g in the tip, 9 in 10 inside, 37 1/4 in", &ounces), ["2 g", "1/4 in"]);
    assert_eq!(figures("0.071 oz, 946.2 mm, 80 g/m²", &ounces), Vec::<String>::new());
}
