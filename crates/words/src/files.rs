//! The files of the English texts. A test compares the list with the folder.

/// Name and content of each file.
pub(crate) const ENGLISH: &[(&str, &str)] = &[
    ("access", include_str!("../texts/en/access.ftl")),
    ("again", include_str!("../texts/en/again.ftl")),
    ("api", include_str!("../texts/en/api.ftl")),
    ("app", include_str!("../texts/en/app.ftl")),
    ("ask", include_str!("../texts/en/ask.ftl")),
    ("backup", include_str!("../texts/en/backup.ftl")),
    ("beam", include_str!("../texts/en/beam.ftl")),
    ("because", include_str!("../texts/en/because.ftl")),
    ("bench", include_str!("../texts/en/bench.ftl")),
    ("calc", include_str!("../texts/en/calc.ftl")),
    ("calc_answer", include_str!("../texts/en/calc_answer.ftl")),
    ("calc_form", include_str!("../texts/en/calc_form.ftl")),
    ("capability", include_str!("../texts/en/capability.ftl")),
    ("card", include_str!("../texts/en/card.ftl")),
    ("caution", include_str!("../texts/en/caution.ftl")),
    ("chance", include_str!("../texts/en/chance.ftl")),
    ("choice", include_str!("../texts/en/choice.ftl")),
    ("cause", include_str!("../texts/en/cause.ftl")),
    ("club", include_str!("../texts/en/club.ftl")),
    ("club_life", include_str!("../texts/en/club_life.ftl")),
    ("command", include_str!("../texts/en/command.ftl")),
    ("common", include_str!("../texts/en/common.ftl")),
    ("cpm", include_str!("../texts/en/cpm.ftl")),
    ("customer", include_str!("../texts/en/customer.ftl")),
    ("document", include_str!("../texts/en/document.ftl")),
    ("done", include_str!("../texts/en/done.ftl")),
    ("find", include_str!("../texts/en/find.ftl")),
    ("fit", include_str!("../texts/en/fit.ftl")),
    ("frame", include_str!("../texts/en/frame.ftl")),
    ("funnel", include_str!("../texts/en/funnel.ftl")),
    ("gallery", include_str!("../texts/en/gallery.ftl")),
    ("gauge_study", include_str!("../texts/en/gauge_study.ftl")),
    ("glossary", include_str!("../texts/en/glossary.ftl")),
    ("glue", include_str!("../texts/en/glue.ftl")),
    ("grip_size", include_str!("../texts/en/grip_size.ftl")),
    ("grid", include_str!("../texts/en/grid.ftl")),
    ("help", include_str!("../texts/en/help.ftl")),
    ("instrument", include_str!("../texts/en/instrument.ftl")),
    ("kind", include_str!("../texts/en/kind.ftl")),
    ("job_kind", include_str!("../texts/en/job_kind.ftl")),
    ("label", include_str!("../texts/en/label.ftl")),
    ("learned", include_str!("../texts/en/learned.ftl")),
    ("meaning", include_str!("../texts/en/meaning.ftl")),
    ("model", include_str!("../texts/en/model.ftl")),
    ("model_form", include_str!("../texts/en/model_form.ftl")),
    ("need", include_str!("../texts/en/need.ftl")),
    ("notation", include_str!("../texts/en/notation.ftl")),
    ("offer", include_str!("../texts/en/offer.ftl")),
    ("open_point", include_str!("../texts/en/open_point.ftl")),
    ("order", include_str!("../texts/en/order.ftl")),
    ("outlook", include_str!("../texts/en/outlook.ftl")),
    ("part", include_str!("../texts/en/part.ftl")),
    ("part_life", include_str!("../texts/en/part_life.ftl")),
    ("physics", include_str!("../texts/en/physics.ftl")),
    ("picture", include_str!("../texts/en/picture.ftl")),
    ("plan", include_str!("../texts/en/plan.ftl")),
    ("planner", include_str!("../texts/en/planner.ftl")),
    ("player", include_str!("../texts/en/player.ftl")),
    ("price", include_str!("../texts/en/price.ftl")),
    ("reading", include_str!("../texts/en/reading.ftl")),
    ("reading_figure", include_str!("../texts/en/reading_figure.ftl")),
    ("recall", include_str!("../texts/en/recall.ftl")),
    ("record", include_str!("../texts/en/record.ftl")),
    ("refusal", include_str!("../texts/en/refusal.ftl")),
    ("remedy", include_str!("../texts/en/remedy.ftl")),
    ("rules", include_str!("../texts/en/rules.ftl")),
    ("scale", include_str!("../texts/en/scale.ftl")),
    ("scale_check", include_str!("../texts/en/scale_check.ftl")),
    ("scale_health", include_str!("../texts/en/scale_health.ftl")),
    ("scan", include_str!("../texts/en/scan.ftl")),
    ("script", include_str!("../texts/en/script.ftl")),
    ("set_rule", include_str!("../texts/en/set_rule.ftl")),
    ("sheet", include_str!("../texts/en/sheet.ftl")),
    ("sheet_check", include_str!("../texts/en/sheet_check.ftl")),
    ("sheet_form", include_str!("../texts/en/sheet_form.ftl")),
    ("sheet_origin", include_str!("../texts/en/sheet_origin.ftl")),
    ("shop", include_str!("../texts/en/shop.ftl")),
    ("step", include_str!("../texts/en/step.ftl")),
    ("step_says", include_str!("../texts/en/step_says.ftl")),
    ("stock", include_str!("../texts/en/stock.ftl")),
    ("stock_list", include_str!("../texts/en/stock_list.ftl")),
    ("soft_side", include_str!("../texts/en/soft_side.ftl")),
    ("stiffness_profile", include_str!("../texts/en/stiffness_profile.ftl")),
    ("store", include_str!("../texts/en/store.ftl")),
    ("swing_inertia", include_str!("../texts/en/swing_inertia.ftl")),
    ("tablet", include_str!("../texts/en/tablet.ftl")),
    ("today", include_str!("../texts/en/today.ftl")),
    ("verdict", include_str!("../texts/en/verdict.ftl")),
    ("weigh_in", include_str!("../texts/en/weigh_in.ftl")),
    ("weight_class", include_str!("../texts/en/weight_class.ftl")),
];

#[cfg(test)]
mod tests {
    use super::ENGLISH;
    use std::collections::BTreeSet;

    #[test]
    fn every_file_of_the_folder_is_in_the_program() -> std::io::Result<()> {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/texts/en");
        let there: BTreeSet<String> = std::fs::read_dir(folder)?
            .map(|entry| Ok(entry?.file_name().to_string_lossy().into_owned()))
            .collect::<std::io::Result<_>>()?;
        let listed: BTreeSet<String> = ENGLISH.iter().map(|(name, _)| format!("{name}.ftl")).collect();
        assert_eq!(there, listed);
        Ok(())
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
