//! Goal: the boundaries of the house hold. Method: read `cargo metadata` and the sources, fail on a forbidden edge.

use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use std::process::Command;

mod dependencies;
mod examples;
mod facts;
mod field_docs;
mod modules;

/// The crates from the bottom up: a crate may use those before it, never one after it.
const ORDER: [&str; 19] = [
    "fact",
    "quantity",
    "words",
    "look",
    "document",
    "clubphysics",
    "estimation",
    "matching",
    "trade",
    "bench",
    "desk",
    "store",
    "instrument",
    "reach",
    "app",
    "simulation",
    "demo",
    "web",
    "setwright",
];
/// Crates that do no I/O, read no clock and log nothing.
const PURE: [&str; 11] = [
    "quantity",
    "fact",
    "words",
    "document",
    "clubphysics",
    "estimation",
    "matching",
    "trade",
    "bench",
    "desk",
    "simulation",
];
/// What no pure crate may depend on.
const IMPURE: [&str; 8] = ["tokio", "sqlx", "axum", "tracing", "log", "serialport", "indicatif", "uuid"];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn metadata() -> Value {
    let output = Command::new(env!("CARGO"))
        .args(["metadata", "--no-deps", "--format-version", "1", "--offline"])
        .current_dir(root())
        .output()
        .expect("cargo metadata");
    assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
    serde_json::from_slice(&output.stdout).expect("a document")
}

/// Dependencies that are built into each crate; those of its tests do not count.
fn edges() -> BTreeMap<String, BTreeSet<String>> {
    metadata()["packages"]
        .as_array()
        .expect("packages")
        .iter()
        .map(|package| {
            let of = |v: &Value| v.as_str().expect("text").to_owned();
            let dependencies = package["dependencies"]
                .as_array()
                .expect("dependencies")
                .iter()
                .filter(|d| d["kind"].is_null())
                .map(|d| of(&d["name"]))
                .collect();
            (of(&package["name"]), dependencies)
        })
        .collect()
}

#[test]
fn crates_use_only_what_stands_above_them() {
    let edges = edges();
    let place = |name: &str| ORDER.iter().position(|o| *o == name);
    assert_eq!(edges.len(), ORDER.len(), "a crate was added or taken away: put it into its place in ORDER");
    for (name, dependencies) in &edges {
        let own = place(name).unwrap_or_else(|| panic!("{name} has no place in ORDER"));
        for dependency in dependencies.iter().filter_map(|d| place(d)) {
            assert!(dependency < own, "{name} must not use {}", ORDER[dependency]);
        }
    }
    assert!(!edges["store"].contains("instrument") && !edges["instrument"].contains("store"));
}

#[test]
fn pure_crates_stay_pure_and_each_edge_has_one_owner() {
    let edges = edges();
    for name in PURE {
        for impure in IMPURE {
            assert!(!edges[name].contains(impure), "{name} must not depend on {impure}");
        }
    }
    let owners = |dependency: &str| -> Vec<&str> {
        edges.iter().filter(|(_, d)| d.contains(dependency)).map(|(name, _)| name.as_str()).collect()
    };
    assert_eq!(owners("sqlx"), ["store"], "the store alone has SQL");
    assert_eq!(owners("axum"), ["web"], "web alone has HTTP");
    assert_eq!(owners("maud"), ["look", "web"], "the look and web alone have HTML");
    let look: Vec<&str> = edges["look"].iter().map(String::as_str).filter(|d| ORDER.contains(d)).collect();
    assert!(
        look.iter().all(|d| ["quantity", "fact", "words", "document"].contains(d)),
        "the look knows no trade: {look:?}"
    );
    assert_eq!(owners("clap"), ["setwright"], "the binary alone parses arguments");
}

fn sources(folder: &Path, found: &mut Vec<PathBuf>) {
    let Ok(entries) = std::fs::read_dir(folder) else { return };
    for entry in entries.flatten() {
        let path = entry.path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(path);
        }
    }
}

#[test]
fn pure_crates_read_no_clock_and_no_files() {
    let forbidden = [
        "SystemTime::now",
        "Instant::now",
        "Timestamp::now",
        "ZonedDateTime::now",
        "std::fs",
        "std::net",
        "std::env",
        "println!",
        "eprintln!",
        "rand::rng",
        "thread_rng",
    ];
    for name in PURE {
        let mut files = Vec::new();
        sources(&root().join("crates").join(name).join("src"), &mut files);
        assert!(!files.is_empty());
        for file in files {
            let text = std::fs::read_to_string(&file).expect("a source");
            // Unit tests at the foot of a file may do what they need.
            let code = text.split("#[cfg(test)]").next().unwrap_or_default();
            // An example in the documentation may print what it found.
            let code: String =
                code.lines().filter(|l| !l.trim_start().starts_with("//")).map(|l| format!("{l}\n")).collect();
            for word in forbidden {
                assert!(!code.contains(word), "{} uses {word}", file.display());
            }
        }
    }
}

#[test]
fn nothing_is_left_open_and_no_file_outgrew_its_noun() {
    let mut files = Vec::new();
    sources(&root().join("crates"), &mut files);
    // The words are put together here so that this file does not find itself.
    let open = [concat!("to", "do!("), concat!("unimple", "mented!("), concat!("#[ig", "nore")];
    for file in files {
        let text = std::fs::read_to_string(&file).expect("a source");
        for word in open {
            assert!(!text.contains(word), "{} leaves {word} open", file.display());
        }
        let lines = text.lines().count();
        assert!(lines <= 700, "{} has {lines} lines: split it by the nouns of the trade", file.display());
    }
}

/// Cargo finds a program in `tests` by itself, but not a module of one: a file that nobody names is never compiled, and
/// its tests are missing without a word.
#[test]
fn every_file_of_tests_belongs_to_a_test_program() {
    let mut files = Vec::new();
    sources(&root().join("crates"), &mut files);
    let mut modules = 0;
    for file in files.into_iter().filter(|f| f.components().any(|c| c.as_os_str() == "tests")) {
        let folder = file.parent().expect("a folder");
        let own_program = folder.ends_with("tests") && !folder.join("main.rs").exists();
        if own_program || file.ends_with("main.rs") {
            continue;
        }
        let (folder, module) = if file.ends_with("mod.rs") {
            (folder.parent().expect("a folder"), folder.file_name())
        } else {
            (folder, file.file_stem())
        };
        let line = format!("mod {};", module.expect("a name").display());
        let above = [folder.join("main.rs"), folder.join("mod.rs"), folder.with_extension("rs")];
        let named = above.iter().filter_map(|f| std::fs::read_to_string(f).ok()).any(|text| text.contains(&line));
        assert!(named, "{} is in no test program: write `{line}` into the main.rs or mod.rs above it", file.display());
        modules += 1;
    }
    assert!(modules > 100, "{modules}");
}

/// The cells of every table row in a text, the headings among them.
fn rows(text: &str) -> Vec<Vec<&str>> {
    let rows = text.lines().filter(|line| line.starts_with("| "));
    rows.map(|line| line.trim_matches('|').split('|').map(str::trim).collect()).collect()
}

/// The words in code quotes of a cell.
fn quoted(cell: &str) -> Vec<&str> {
    cell.split('`').skip(1).step_by(2).collect()
}

#[test]
fn a_word_of_the_trade_is_in_the_file_that_bears_its_name() {
    let text = std::fs::read_to_string(root().join("docs/where-is.md")).expect("the list");
    let (mut words, mut hits) = (0, 0);
    for row in rows(&text).iter().filter(|row| row.iter().all(|cell| *cell != "word")) {
        let [word, guess, file] = row[..] else { panic!("a row has three cells: {row:?}") };
        let (guess, file) = (quoted(guess)[0], quoted(file)[0]);
        let code = std::fs::read_to_string(root().join("crates").join(file));
        let code = code.unwrap_or_else(|e| panic!("{word}: {file}: {e}")).to_lowercase();
        assert!(code.contains(word), "{file} does not speak of “{word}”");
        words += 1;
        hits += usize::from(file == guess || file == guess.replace(".rs", "/mod.rs"));
    }
    assert_eq!(words, 20);
    assert!(text.contains(&format!("{hits} of {words} first guesses hit.")), "{hits} of {words} hit");
}

#[test]
fn the_list_of_words_in_the_architecture_names_files_that_are_there() {
    let text = std::fs::read_to_string(root().join("ARCHITECTURE.md")).expect("the map");
    let (_, list) = text.split_once("## Where a word of the trade has its code").expect("the list of words");
    let (list, _) = list.split_once("\n## ").expect("what comes after it");
    let mut files = 0;
    for row in rows(list).iter().filter(|row| row[0] != "word") {
        let mut folder = PathBuf::new();
        for path in quoted(row[1]) {
            // A path with its crate begins a folder; one without is in the folder of the one before it.
            let full = if path.contains("/src/") { PathBuf::from(path) } else { folder.join(path) };
            assert!(root().join("crates").join(&full).exists(), "{}: {path} is not there", row[0]);
            folder = full.parent().map(Path::to_path_buf).unwrap_or_default();
            files += 1;
        }
    }
    assert!(files > 50, "{files}");
}

/// The names under which types stand in the description of the API: the type's own, or that of `#[schema(as = …)]`.
fn names_in_the_description(text: &str) -> Vec<String> {
    let word = |line: &str| line.chars().take_while(|c| c.is_alphanumeric() || *c == '_').collect::<String>();
    let mut names = Vec::new();
    let (mut described, mut renamed, mut in_words) = (false, None, false);
    for line in text.lines().map(str::trim) {
        described |= line.starts_with("#[derive(") && line.contains("ToSchema");
        in_words |= line == "closed_list! {";
        if let Some(name) = line.strip_prefix("#[schema(as = ") {
            renamed = Some(word(name));
        }
        let of_type = line.trim_start_matches("pub ").trim_start_matches("pub(crate) ");
        let name = of_type
            .strip_prefix("struct ")
            .or_else(|| of_type.strip_prefix("enum "))
            .map(word)
            .filter(|n| !n.is_empty());
        if let Some(name) = name {
            let own = renamed.take().unwrap_or(name);
            if std::mem::take(&mut described) {
                names.push(own);
            }
        } else if in_words && line.ends_with('{') && line.starts_with(char::is_uppercase) {
            in_words = false;
            names.push(word(line));
        }
    }
    names
}

#[test]
fn no_two_types_have_one_name_in_the_description_of_the_api() {
    // The later one would silently take the place of the earlier one, and its answers would not fit the description.
    let mut files = Vec::new();
    sources(&root().join("crates"), &mut files);
    let mut known: BTreeMap<String, Vec<PathBuf>> = BTreeMap::new();
    for file in files.into_iter().filter(|f| !f.components().any(|c| c.as_os_str() == "tests")) {
        for name in names_in_the_description(&std::fs::read_to_string(&file).expect("a source")) {
            known.entry(name).or_default().push(file.clone());
        }
    }
    let twice: BTreeMap<_, _> = known.iter().filter(|(_, files)| files.len() > 1).collect();
    assert!(twice.is_empty(), "give all but one of each #[schema(as = …)]: {twice:#?}");
    assert!(known.len() > 250 && known.contains_key("PartKind") && known.contains_key("FrequencyWhatIf"), "{known:?}");
}
