//! The colours and sizes of the style sheet, read from it, and their contrast (WCAG 2.2: 4.5 for text, 3 for graphics
//! and edges of entries).

use crate::assets::as_written;
use std::collections::BTreeMap;

/// What opens the block of each scheme in the style sheet, with the scheme's name.
pub(super) const SCHEMES: [(&str, &str); 3] =
    [("light", ":root {"), ("dark", ":root[data-theme=\"dark\"] {"), ("print", "@media print {\n  :root, ")];

/// Least contrast of text.
pub(super) const TEXT_LEAST: f64 = 4.5;
/// Least contrast of graphics.
pub(super) const GRAPHICS_LEAST: f64 = 3.0;

/// Text colours with the grounds they stand on.
pub(super) const TEXT: [(&str, &str); 18] = [
    ("ink", "rust-soft"),
    ("brass-text", "brass-soft"),
    ("ink", "paper"),
    ("ink", "card"),
    ("ink", "brass-soft"),
    ("ink", "spruce-soft"),
    ("ink-2", "paper"),
    ("ink-2", "card"),
    ("spruce", "paper"),
    ("spruce", "card"),
    ("spruce", "spruce-soft"),
    ("rust", "paper"),
    ("rust", "card"),
    ("rust", "rust-soft"),
    ("brass-text", "paper"),
    ("brass-text", "card"),
    ("on-spruce", "spruce"),
    ("card", "ink"),
];

/// Graphics with the grounds they stand on.
pub(super) const GRAPHICS: [(&str, &str); 8] = [
    ("brass", "card"),
    ("brass", "paper"),
    ("spruce", "spruce-soft"),
    ("line-strong", "card"),
    ("line-strong", "paper"),
    ("steel", "card"),
    ("rust", "card"),
    ("brass", "spruce-soft"),
];

fn sheet() -> String {
    as_written("setwright.css")
}

/// The variables set in the first block after `opening`; none where there is no such block.
pub(super) fn variables(opening: &str) -> BTreeMap<String, String> {
    let sheet = sheet() + &as_written("print.css");
    let block = sheet.split_once(opening).and_then(|(_, rest)| rest.split('}').next()).unwrap_or_default();
    block
        .lines()
        .filter_map(|line| line.trim().strip_prefix("--")?.strip_suffix(';')?.split_once(": "))
        .map(|(name, value)| (name.to_owned(), value.to_owned()))
        .collect()
}

/// Sizes of type and space: the block that no scheme changes.
pub(super) fn sizes() -> BTreeMap<String, String> {
    variables("}\n\n:root {\n  --sans: ")
}

/// Relative luminance of `#rgb` or `#rrggbb` (WCAG 2.2, definition of relative luminance).
fn luminance(colour: &str) -> Option<f64> {
    let digits: Vec<u32> = colour.strip_prefix('#')?.chars().map(|c| c.to_digit(16)).collect::<Option<_>>()?;
    let channels: Vec<u32> = match digits.len() {
        3 => digits.iter().map(|d| d * 17).collect(),
        6 => digits.chunks(2).map(|pair| pair[0] * 16 + pair[1]).collect(),
        _ => return None,
    };
    let linear = |channel: u32| {
        let c = f64::from(channel) / 255.0;
        if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
    };
    Some(0.2126 * linear(channels[0]) + 0.7152 * linear(channels[1]) + 0.0722 * linear(channels[2]))
}

/// Contrast of two colours, 1 to 21 (WCAG 2.2, definition of contrast ratio); none where one is no colour.
pub(super) fn contrast(a: &str, b: &str) -> Option<f64> {
    let (a, b) = (luminance(a)?, luminance(b)?);
    Some((a.max(b) + 0.05) / (a.min(b) + 0.05))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_measure_itself_is_right() {
        // Known values: black on white is 21, #767676 on white is the lightest grey that passes as text, at 4.54.
        assert!((contrast("#000", "#ffffff").unwrap() - 21.0).abs() < 1e-9);
        assert_eq!(contrast("#00", "red"), None);
        assert!((contrast("#767676", "#fff").unwrap() - 4.54).abs() < 0.01);
    }

    #[test]
    fn every_scheme_can_be_read() {
        for (name, opening) in SCHEMES {
            let colours = variables(opening);
            for (pairs, least) in [(&TEXT[..], 4.5), (&GRAPHICS[..], 3.0)] {
                for (front, ground) in pairs {
                    let ratio = contrast(&colours[*front], &colours[*ground]).expect("two colours");
                    assert!(ratio >= least, "{name}: {front} on {ground} is {ratio:.2}, needs {least}");
                }
            }
        }
    }

    #[test]
    fn both_ways_to_dark_are_the_same() {
        let chosen = variables(":root[data-theme=\"dark\"] {");
        assert_eq!(variables(":root:not([data-theme=\"light\"]) {"), chosen);
        assert_eq!(variables(":root {").keys().collect::<Vec<_>>(), chosen.keys().collect::<Vec<_>>());
    }

    #[test]
    fn colours_are_named_only_in_the_schemes() {
        let sheet = sheet();
        let all = sheet.split_once("--sans").unwrap().1;
        let desk = as_written("desk.css");
        let (before_cards, cards) = desk.split_once("/* Job card */").unwrap();
        // Job cards, labels and the player’s sheet are paper in every scheme; everything else takes its colour from a variable.
        let after_cards = cards.split_once("/* Which column of a list is what */").unwrap().1;
        let after_cards =
            after_cards.replace("background: #444; print-color-adjust", "").replace("border-color: #777", "");
        let (bench, calc) = (as_written("bench.css"), as_written("calc.css"));
        for part in [all, before_cards, &after_cards, &bench, &calc] {
            let stray = part.lines().find(|line| line.contains(": #") || line.contains(" #"));
            assert_eq!(stray, None, "a colour outside the schemes");
        }
    }

    #[test]
    fn every_variable_used_is_set() {
        let sheet = sheet() + &["bench.css", "calc.css", "desk.css", "print.css"].map(as_written).concat();
        for used in sheet.split("var(--").skip(1).map(|rest| rest.split([')', ',']).next().unwrap()) {
            assert!(sheet.contains(&format!("--{used}:")), "--{used} is used and never set");
        }
    }

    #[test]
    fn the_sizes_are_found() {
        let sizes = sizes();
        assert_eq!(sizes["s1"], "4px");
        assert_eq!(sizes["touch"], "44px");
        assert!(sizes.contains_key("t-figure"));
    }
}
