//! Goal: the documentation of a field tells a stranger more than its name does, since it reaches the readers of the API
//! too. Method: read the sources for one line of documentation above a field, and fail where all its words are those of
//! the name.

use std::path::PathBuf;

/// Words that tell nothing by themselves.
const EMPTY: [&str; 14] =
    ["the", "a", "of", "its", "in", "an", "it", "is", "and", "this", "that", "was", "are", "what"];

/// The name of the field that a line declares, or none where it declares none.
fn field(line: &str) -> Option<&str> {
    let line = line.trim();
    let line = match line.strip_prefix("pub") {
        Some(rest) if rest.starts_with('(') => rest.split_once(") ").map_or("", |(_, rest)| rest),
        Some(rest) if rest.starts_with(' ') => rest.trim_start(),
        _ => line,
    };
    let (name, rest) = line.split_once(": ")?;
    let is_name = !name.is_empty() && name.chars().all(|c| c.is_alphanumeric() || c == '_');
    (is_name && rest.ends_with(',') && !rest.contains('=')).then_some(name)
}

/// Whether documentation has no word that the name of its field does not have; `s` at the end makes no difference.
fn says_no_more(doc: &str, name: &str) -> bool {
    let bare = |word: &str| word.trim_end_matches('s').to_owned();
    let named: Vec<String> = name.to_lowercase().split('_').map(bare).collect();
    let doc = doc.to_lowercase();
    let mut words = doc.split(|c: char| !c.is_ascii_lowercase()).filter(|word| !word.is_empty());
    words.all(|word| EMPTY.contains(&word) || named.contains(&bare(word)))
}

/// The line above a field and above the attributes that may stand over it.
fn above_attributes(lines: &[&str], field: usize) -> Option<usize> {
    let mut at = field.checked_sub(1)?;
    loop {
        // An attribute over several lines ends in a bracket; upwards from there is where it begins.
        if lines[at].ends_with(']') && !lines[at].starts_with("///") {
            at = lines[..=at].iter().rposition(|line| line.starts_with("#["))?;
        } else {
            return Some(at);
        }
        at = at.checked_sub(1)?;
    }
}

/// The fields of a source whose one line of documentation says no more than their name: line from 1, documentation, name.
fn repeated(text: &str) -> Vec<(usize, &str, &str)> {
    let lines: Vec<&str> = text.lines().map(str::trim).collect();
    let mut found = Vec::new();
    for (at, line) in lines.iter().enumerate() {
        let Some(name) = field(line) else { continue };
        let Some(above) = above_attributes(&lines, at) else { continue };
        let Some(doc) = lines[above].strip_prefix("///") else { continue };
        let one_line = above == 0 || !lines[above - 1].starts_with("///");
        if one_line && says_no_more(doc, name) {
            found.push((above + 1, doc.trim(), name));
        }
    }
    found
}

#[test]
fn the_documentation_of_a_field_says_more_than_its_name() {
    let mut files = Vec::new();
    super::sources(&super::root().join("crates"), &mut files);
    let is_test = |file: &PathBuf| file.components().any(|c| c.as_os_str() == "tests");
    let mut said = Vec::new();
    for file in files.into_iter().filter(|file| !is_test(file)) {
        let text = std::fs::read_to_string(&file).expect("a source");
        let here = repeated(&text);
        said.extend(here.iter().map(|(line, doc, name)| format!("{}:{line}: “{doc}” over {name}", file.display())));
    }
    let what = "say what it is for a stranger: whose, from where to where, its unit, what none or empty means";
    assert!(said.is_empty(), "{what}\n{}", said.join("\n"));
}

/// A check that finds nothing must be able to find something.
#[test]
fn a_field_doc_that_repeats_its_name_is_found() {
    let text = "
        pub struct Club {
            /// The player.
            pub player: String,
            /// Its mass.
            #[serde(default)]
            #[schema(minimum = 0)]
            pub(crate) mass_g: f64,
            /// Lie.
            #[schema(
                minimum = 40,
                maximum = 80
            )]
            lie_deg: f64,
            /// ε.
            asymmetry: f64,
            /// The player's hand.
            pub hand: Hand,
            /// Mass of the adapter, weighed.
            mass_of_adapter_g: f64,
            /// Length, over
            /// two lines.
            length: f64,
        }
        fn of(player: String) { let length: f64 = 1.0; }
    ";
    let found: Vec<&str> = repeated(text).into_iter().map(|(_, _, name)| name).collect();
    assert_eq!(found, ["player", "mass_g", "lie_deg", "asymmetry"]);
}
