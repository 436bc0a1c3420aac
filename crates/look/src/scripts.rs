//! The sentences that the scripts of a page show. A script has none of its own: the page brings them in its language.

use fact::Figure;
use std::collections::BTreeMap;
use words::Words;

/// Name of a sentence in the scripts, its text, and the figures that the script fills in.
const SENTENCES: [(&str, &str, &[&str]); 27] = [
    ("days", "left-days", &["days"]),
    ("hours", "left-hours", &["hours", "minutes"]),
    ("waits", "script-waits", &["what"]),
    ("refused", "script-refused", &["what", "why"]),
    ("enter-again", "script-enter-again", &[]),
    ("seen", "script-seen", &[]),
    ("no-next", "script-no-next", &[]),
    ("lost-away", "script-lost-away", &["typed"]),
    ("lost-refused", "script-lost-refused", &["typed"]),
    ("lost-done", "script-lost-done", &["typed"]),
    ("reading-list", "script-reading-list", &[]),
    ("parts-read", "script-parts-read", &["done", "all"]),
    ("scale-busy", "script-scale-busy", &["name", "text"]),
    ("no-look-up", "script-no-look-up", &["code"]),
    ("delete", "script-delete", &[]),
    ("ring-pot-life", "script-ring-pot-life", &["batch"]),
    ("ring-handling", "script-ring-handling", &["batch"]),
    ("ring-cured", "script-ring-cured", &["batch"]),
    ("ring-soon", "script-ring-soon", &["batch"]),
    ("ring-snooze", "script-ring-snooze", &[]),
    ("held", "script-held", &[]),
    ("not-held", "script-not-held", &[]),
    ("keys-here", "script-keys-here", &[]),
    ("keys-all", "script-keys-all", &[]),
    ("close", "script-close", &[]),
    ("pedal-types", "script-pedal-types", &["key"]),
    ("typed-first", "script-typed-first", &["typed", "code"]),
];

/// The sentences as the document that `words.js` reads; a figure that a script fills in stands as `{name}`.
pub(crate) fn sentences(w: &Words) -> String {
    let sentence = |(name, id, figures): (&'static str, &str, &[&'static str])| {
        let held: Vec<(&str, Figure)> =
            figures.iter().map(|figure| (*figure, Figure::Text(format!("{{{figure}}}")))).collect();
        (name, w.text_with(id, &held))
    };
    let all: BTreeMap<&str, String> = SENTENCES.into_iter().map(sentence).collect();
    serde_json::to_string(&all).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assets::asset;
    use quantity::Units;

    #[test]
    fn a_script_has_no_sentence_of_its_own_and_names_only_those_of_the_page() {
        let files = [
            "bench", "clocks", "held", "keep", "key-list", "keys", "live", "pad", "progress", "ring", "scale", "scan",
            "stream", "tablet", "tone", "weigh", "what-if",
        ];
        let mut asked: Vec<String> = Vec::new();
        for file in files {
            let text = String::from_utf8(asset(&format!("{file}.js")).unwrap().content.into_owned()).unwrap();
            for line in text.lines().filter(|line| !line.trim_start().starts_with("//")) {
                for literal in line.split('"').skip(1).step_by(2) {
                    let sentence = literal.starts_with(|c: char| c.is_ascii_uppercase()) && literal.contains(' ');
                    assert!(!sentence, "{file}.js says “{literal}”");
                }
            }
            for (before, after) in [("words(\"", '"'), ("notKept(\"", '"')] {
                asked.extend(text.split(before).skip(1).filter_map(|rest| rest.split(after).next()).map(str::to_owned));
            }
        }
        assert!(asked.len() > 8, "{asked:?}");
        for name in asked {
            assert!(SENTENCES.iter().any(|(known, ..)| *known == name), "no sentence is named {name}");
        }
    }

    #[test]
    fn figures_stay_open_for_the_script() {
        let all: BTreeMap<String, String> =
            serde_json::from_str(&sentences(&Words::english(Units::default()))).unwrap();
        assert_eq!(all["parts-read"], "{done} of {all} parts");
        assert_eq!(all["hours"], "{hours} h {minutes} min");
        assert_eq!(all["days"], "{days} days");
    }
}
