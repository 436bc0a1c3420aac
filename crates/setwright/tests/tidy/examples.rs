//! An example in the documentation is run. A crate that has none says so in its `Cargo.toml`, which saves the time of looking.

use super::{root, sources};
use std::path::PathBuf;

/// Examples in the comments of a source: pieces of code in Rust, which `cargo test` would run.
fn examples(text: &str) -> usize {
    let (mut within, mut found) = (false, 0);
    for line in text.lines().map(str::trim_start) {
        let comment = line.strip_prefix("///").or_else(|| line.strip_prefix("//!"));
        let Some(language) = comment.and_then(|comment| comment.trim_start().strip_prefix("```")) else { continue };
        if !within && matches!(language.split(',').next(), Some("" | "rust" | "no_run" | "should_panic")) {
            found += 1;
        }
        within = !within;
    }
    found
}

#[test]
fn no_example_stands_where_none_is_run() {
    let (mut quiet, mut wrong) = (0, Vec::new());
    for folder in
        std::fs::read_dir(root().join("crates")).expect("the crates").map(|entry| entry.expect("a crate").path())
    {
        let manifest = std::fs::read_to_string(folder.join("Cargo.toml")).expect("a manifest");
        if !manifest.contains("doctest = false") {
            continue;
        }
        quiet += 1;
        let mut found = Vec::new();
        sources(&folder.join("src"), &mut found);
        let has_some = |path: &PathBuf| examples(&std::fs::read_to_string(path).expect("a source")) > 0;
        wrong.extend(found.into_iter().filter(has_some));
    }
    assert!(quiet > 5, "{quiet} crates");
    assert!(
        wrong.is_empty(),
        "examples that nobody runs (take `doctest = false` out of the crate's manifest): {wrong:?}"
    );
}

#[test]
fn examples_are_told_from_other_pieces() {
    let text = "/// ```\n/// let a = 1;\n/// ```\n//! ```text\n//! a\n//! ```\n    /// ```no_run\n    /// ```\n";
    assert_eq!(examples(text), 2);
}
