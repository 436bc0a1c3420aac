//! The files of the texts, the same in every language. A test compares the list with the folders.

/// The files of each language: name and content of each.
macro_rules! files {
    ($($name:literal)*) => {
        /// The English texts.
        pub(crate) const ENGLISH: &[(&str, &str)] =
            &[$(($name, include_str!(concat!("../texts/en/", $name, ".ftl"))),)*];
        /// The German texts.
        pub(crate) const GERMAN: &[(&str, &str)] =
            &[$(($name, include_str!(concat!("../texts/de/", $name, ".ftl"))),)*];
    };
}

files! {
    "access"
    "again"
    "api"
    "app"
    "ask"
    "backup"
    "beam"
    "begin"
    "because"
    "bench"
    "calc"
    "calc_answer"
    "calc_form"
    "calendar"
    "capability"
    "card"
    "cause"
    "caution"
    "chance"
    "choice"
    "club"
    "club_life"
    "command"
    "common"
    "cpm"
    "customer"
    "document"
    "done"
    "find"
    "fit"
    "frame"
    "funnel"
    "gallery"
    "gauge_study"
    "glossary"
    "glue"
    "grid"
    "grip_size"
    "help"
    "instrument"
    "job_kind"
    "kind"
    "label"
    "learned"
    "ledger"
    "meaning"
    "model"
    "model_form"
    "need"
    "notation"
    "offer"
    "open_point"
    "order"
    "outlook"
    "part"
    "part_life"
    "physics"
    "picture"
    "plan"
    "planner"
    "player"
    "price"
    "reach"
    "reading"
    "reading_figure"
    "recall"
    "record"
    "refusal"
    "remedy"
    "rules"
    "scale"
    "scale_check"
    "scale_health"
    "scan"
    "script"
    "set_rule"
    "sheet"
    "sheet_check"
    "sheet_form"
    "sheet_origin"
    "shop"
    "soft_side"
    "step"
    "step_says"
    "stiffness_profile"
    "stock"
    "stock_list"
    "store"
    "swing_inertia"
    "tablet"
    "today"
    "usual"
    "verdict"
    "weigh_in"
    "weight_class"
}

#[cfg(test)]
mod tests {
    use super::{ENGLISH, GERMAN};
    use crate::rich::next_tag;
    use fluent_syntax::ast::{Entry, Pattern, PatternElement, Resource};
    use std::collections::BTreeMap;
    use std::collections::BTreeSet;

    #[test]
    fn every_file_of_the_folders_is_in_the_program() -> std::io::Result<()> {
        let listed: BTreeSet<String> = ENGLISH.iter().map(|(name, _)| format!("{name}.ftl")).collect();
        for code in crate::Language::CODES {
            let folder = format!("{}/texts/{code}", env!("CARGO_MANIFEST_DIR"));
            let there: BTreeSet<String> = std::fs::read_dir(folder)?
                .map(|entry| Ok(entry?.file_name().to_string_lossy().into_owned()))
                .collect::<std::io::Result<_>>()?;
            assert_eq!(there, listed, "{code}");
        }
        Ok(())
    }

    /// The texts of a language by name, `sheet-no-club.next` for what stands beside one: its letters, and its marked phrases.
    fn texts(files: &[(&str, &str)]) -> BTreeMap<String, (String, BTreeSet<String>)> {
        fn letters(pattern: &Pattern<String>, into: &mut String) {
            for element in &pattern.elements {
                match element {
                    PatternElement::TextElement { value } => into.push_str(value),
                    PatternElement::Placeable {
                        expression: fluent_syntax::ast::Expression::Select { variants, .. },
                    } => {
                        variants.iter().for_each(|variant| letters(&variant.value, into));
                    }
                    PatternElement::Placeable { .. } => into.push(' '),
                }
            }
        }
        let mut found = BTreeMap::new();
        let mut keep = |name: String, pattern: &Pattern<String>| {
            let (mut text, mut marks) = (String::new(), BTreeSet::new());
            letters(pattern, &mut text);
            let mut rest = text.as_str();
            while let Some((_, tag, after)) = next_tag(rest) {
                marks.insert(tag.to_owned());
                rest = after;
            }
            let twice = found.insert(name.clone(), (text, marks));
            assert!(twice.is_none(), "{name} stands twice");
        };
        for (name, content) in files {
            let resource: Resource<String> = fluent_syntax::parser::parse((*content).to_owned())
                .unwrap_or_else(|(_, errors)| panic!("{name}: {errors:?}"));
            for entry in &resource.body {
                let Entry::Message(message) = entry else { continue };
                if let Some(pattern) = &message.value {
                    keep(message.id.name.clone(), pattern);
                }
                for attribute in &message.attributes {
                    keep(format!("{}.{}", message.id.name, attribute.id.name), &attribute.value);
                }
            }
        }
        found
    }

    #[test]
    fn every_language_has_every_text_with_its_marked_phrases() {
        let (english, german) = (texts(ENGLISH), texts(GERMAN));
        let names =
            |texts: &BTreeMap<String, (String, BTreeSet<String>)>| texts.keys().cloned().collect::<BTreeSet<_>>();
        let (ours, theirs) = (names(&english), names(&german));
        let missing: Vec<&String> = ours.difference(&theirs).collect();
        let left_over: Vec<&String> = theirs.difference(&ours).collect();
        assert!(
            missing.is_empty() && left_over.is_empty(),
            "not in German: {missing:?}; only in German: {left_over:?}"
        );
        let wrong: Vec<&String> = ours.iter().filter(|name| english[*name].1 != german[*name].1).collect();
        assert!(wrong.is_empty(), "other marked phrases: {wrong:?}");
    }

    /// A text of the second language may leave out a figure, but has none that English has not.
    #[test]
    fn every_language_uses_the_figures_of_english() {
        let english: BTreeMap<&str, &BTreeSet<String>> = crate::Language::english().names().collect();
        for (name, used) in crate::Language::german().names() {
            let unknown: Vec<&String> = used.iter().filter(|figure| !english[name].contains(*figure)).collect();
            assert!(unknown.is_empty(), "{name}: {unknown:?}");
        }
    }

    /// A long text that is the same letter for letter was forgotten, but for what is typed in the shop's notation.
    #[test]
    fn no_sentence_was_left_in_english() {
        let (english, german) = (texts(ENGLISH), texts(GERMAN));
        let is_sentence = |text: &str| text.split_whitespace().filter(|word| word.len() > 2).count() > 3;
        let notation = |name: &str| name.starts_with("sheet-form-phrases-") || name == "fit-tip";
        let mut same: Vec<&String> = english.keys().filter(|name| german[*name].0 == english[*name].0).collect();
        same.retain(|name| is_sentence(&english[*name].0) && !notation(name));
        assert!(same.is_empty(), "as in English: {same:?}");
    }

    /// Words that no text for people has, with what a builder would say. Some are old, some translated, some are words of
    /// programs; a few are names that mean another thing in the trade.
    const NOT_USED: &[(&str, &str)] = &[
        ("anew", "again"),
        ("nought", "zero"),
        ("reckon", "count, compute, expect"),
        ("reckons", "counts, computes, expects"),
        ("reckoned", "computed"),
        ("of late", "recently"),
        ("feign", "pretend"),
        ("feigned", "pretended"),
        ("shun", "avoid"),
        ("shunned", "avoided"),
        ("in earnest", "leave it out"),
        ("so many", "the number itself"),
        ("is said", "say it"),
        ("speaks for", "suggests"),
        ("speaks against", "contradicts"),
        ("that is none", "is not a …"),
        ("are none", "are not …"),
        ("what is there", "name it"),
        ("those of which", "name them"),
        ("let it be", "leave it"),
        ("stands on the sheet", "is on the sheet"),
        ("done so", "done"),
        ("let it pass", "override"),
        ("mended", "corrected, repaired"),
        ("kindly", "please, or leave it out"),
        ("ambiguous", "say the two meanings"),
        ("invalid", "say what is wrong"),
        ("null", "empty"),
        ("boolean", "yes or no"),
        ("f64", "a number"),
        ("usize", "a whole number"),
        ("struct", "a document"),
        ("serde", "leave it out"),
        ("back-end", "leave it out"),
        ("swingweight", "swing weight"),
        ("1 wood", "driver"),
        ("3 wood", "3-wood"),
        ("P iron", "PW"),
        ("G iron", "GW"),
        ("S iron", "SW"),
    ];

    /// Where a text has a word as a word of its own.
    fn has(text: &str, word: &str) -> bool {
        let edge = |c: Option<char>| c.is_none_or(|c| !c.is_alphanumeric());
        let (text, lower) = if word.bytes().any(|b| b.is_ascii_uppercase()) {
            (text.to_owned(), word.to_owned())
        } else {
            (text.to_lowercase(), word.to_owned())
        };
        text.match_indices(&lower)
            .any(|(at, _)| edge(text[..at].chars().next_back()) && edge(text[at + lower.len()..].chars().next()))
    }

    #[test]
    fn no_text_has_a_word_that_a_builder_would_not_say() {
        let mut found = Vec::new();
        for (file, content) in ENGLISH {
            // A comment is for whoever edits the text.
            for line in content.lines().filter(|line| !line.starts_with('#')) {
                let text = line.split_once(" = ").map_or(line, |(_, text)| text);
                for (word, better) in NOT_USED.iter().filter(|(word, _)| has(text, word)) {
                    found.push(format!("{file}: “{word}” (better: {better}) in: {line}"));
                }
            }
        }
        assert!(found.is_empty(), "{}", found.join("\n"));
    }

    #[test]
    fn a_word_is_found_only_as_a_word() {
        assert!(has("Solve it anew.", "anew"));
        assert!(!has("The manewal", "anew"));
        assert!(!has("a shunt", "shun"));
        assert!(has("the P iron", "P iron"));
    }
}
