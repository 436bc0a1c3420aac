//! Style sheet, scripts and mark, carried inside the binary and named by their content, so that a browser may keep
//! them for ever and still never shows an old one.

use fnv::FnvHasher;
use rust_embed::RustEmbed;
use std::borrow::Cow;
use std::collections::BTreeMap;
use std::hash::Hasher;

#[derive(RustEmbed)]
#[folder = "assets"]
struct Assets;

/// One file as it is carried.
#[derive(Debug, Clone)]
pub struct Asset {
    /// Bytes of the file, as the browser gets them.
    pub content: Cow<'static, [u8]>,
    /// SHA-256 of the content.
    pub sha256: [u8; 32],
}

/// One tag over the content of all files: they refer to each other by plain names, so they change together.
fn tag() -> String {
    // Over the files' SHA-256 sums; names come sorted, so that the tag depends on content alone.
    let mut names: Vec<_> = Assets::iter().collect();
    names.sort();
    let mut sum = FnvHasher::default();
    for name in names {
        let hash = Assets::get(&name).map(|file| file.metadata.sha256_hash()).unwrap_or_default();
        sum.write(name.as_bytes());
        sum.write(&hash);
    }
    format!("{:016x}", sum.finish())
}

/// The tag of all files, worked out once. Development builds read the files anew, so that an edit shows without a restart.
#[must_use]
pub fn current_tag() -> String {
    static ONCE: std::sync::LazyLock<String> = std::sync::LazyLock::new(tag);
    if cfg!(debug_assertions) { tag() } else { ONCE.clone() }
}

/// Address of a file: `/assets/<tag>/setwright.css`.
#[must_use]
pub fn asset_url(name: &str) -> String {
    format!("/assets/{}/{name}", current_tag())
}

/// A file as the browser gets it: style sheets and scripts without the comments and indents that only people read. None of
/// that name: nothing.
///
/// A release build makes all of them once; a development build makes one per request, so that an edit shows without a restart.
#[must_use]
pub fn asset(name: &str) -> Option<Asset> {
    static MADE: std::sync::LazyLock<BTreeMap<String, Asset>> =
        std::sync::LazyLock::new(|| Assets::iter().filter_map(|name| Some((name.to_string(), made(&name)?))).collect());
    if cfg!(debug_assertions) {
        return made(name);
    }
    MADE.get(name).map(|one| Asset { content: Cow::Borrowed(&one.content), sha256: one.sha256 })
}

fn made(name: &str) -> Option<Asset> {
    let file = Assets::get(name)?;
    let plain = [".css", ".js"].iter().any(|kind| name.ends_with(kind));
    let content = match std::str::from_utf8(&file.data) {
        Ok(text) if plain => {
            let text = without_comments(text);
            Cow::Owned(if name.ends_with(".css") { without_spaces(text) } else { text }.into_bytes())
        }
        _ => file.data,
    };
    Some(Asset { content, sha256: file.metadata.sha256_hash() })
}

/// The text of a file as it was written, comments and all.
pub(crate) fn as_written(name: &str) -> String {
    Assets::get(name).map(|file| String::from_utf8_lossy(&file.data).into_owned()).unwrap_or_default()
}

/// A style sheet without the spaces that only people read. None of our sheets has a text in quotes with such a space.
fn without_spaces(sheet: String) -> String {
    let shorter = [("; }", "}"), (" {", "{"), ("{ ", "{"), ("; ", ";"), (": ", ":"), (", ", ",")];
    shorter.iter().fold(sheet, |sheet, (long, short)| sheet.replace(long, short))
}

/// A text without the lines that are comments as a whole, without indents and empty lines. A comment beside code stays, and
/// no text in quotes runs over a line.
fn without_comments(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    let mut within = false;
    for line in text.lines().map(str::trim_start) {
        if within || line.starts_with("/*") {
            within = !line.contains("*/");
            continue;
        }
        if !line.is_empty() && !line.starts_with("//") {
            plain.push_str(line);
            plain.push('\n');
        }
    }
    plain
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    /// The files that a script imports, those that it loads only for some pages among them if `all`.
    fn imported(name: &str, all: bool, into: &mut BTreeSet<String>) {
        if !into.insert(name.to_owned()) {
            return;
        }
        let text = String::from_utf8(asset(name).unwrap_or_else(|| panic!("{name} is not there")).content.into_owned());
        for line in text.expect("text").lines() {
            let from = |mark: &str| line.split(mark).nth(1).and_then(|rest| rest.split('"').next()).map(str::to_owned);
            let file = if line.starts_with("import ") { from("\"./") } else { from("import(\"./").filter(|_| all) };
            if let Some(file) = file {
                imported(&file, all, into);
            }
        }
    }

    #[test]
    fn comments_and_indents_are_for_people() {
        let text = "/* One\n   two */\n.a {\n  color: red; /* stays */\n}\n\n// three\nlet b = \"// no comment\";\n";
        assert_eq!(without_comments(text), ".a {\ncolor: red; /* stays */\n}\nlet b = \"// no comment\";\n");
        let rule = "@media (min-width: 9px) and (hover) { .a > .b:not(.c, .d) { margin: 0 auto; color: red; } }";
        let short = "@media (min-width:9px) and (hover){.a > .b:not(.c,.d){margin:0 auto;color:red} }";
        assert_eq!(without_spaces(rule.into()), short);
        for name in Assets::iter().filter(|name| name.ends_with(".css")) {
            let text = as_written(&name);
            let quoted = text.lines().flat_map(|line| line.split('"').skip(1).step_by(2));
            let changed = quoted.filter(|text| without_spaces((*text).to_owned()) != *text).collect::<Vec<_>>();
            assert!(changed.is_empty(), "{name}: {changed:?} would be changed");
        }
    }

    #[test]
    fn style_and_scripts_of_each_page_stay_light() {
        let mut every = BTreeSet::new();
        imported("bench.js", false, &mut every);
        let kinds: [(&str, &[&str]); 3] = [
            (
                "bench",
                &["setwright.css", "print.css", "bench.css", "pad.js", "what-if.js", "ring.js", "tone.js", "held.js"],
            ),
            ("calculation", &["setwright.css", "print.css", "desk.css", "calc.css", "ring.js", "tone.js"]),
            ("any other", &["setwright.css", "print.css", "desk.css", "weigh.js", "progress.js", "ring.js", "tone.js"]),
        ];
        for (kind, own) in kinds {
            let files: BTreeSet<&str> = every.iter().map(String::as_str).chain(own.iter().copied()).collect();
            let bytes: usize = files.iter().filter_map(|name| asset(name)).map(|file| file.content.len()).sum();
            assert!(bytes < 80_000, "style and scripts of a {kind} page weigh {bytes} bytes; 80,000 are the limit");
        }
    }

    #[test]
    fn scripts_name_only_files_that_exist_and_every_script_is_named() {
        let mut all = BTreeSet::new();
        imported("bench.js", true, &mut all);
        for name in Assets::iter().filter(|name| name.ends_with(".js") && name != "worker.js") {
            assert!(all.contains(name.as_ref()), "no page loads {name}");
        }
    }
}
