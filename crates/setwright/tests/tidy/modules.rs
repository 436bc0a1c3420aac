//! Goal: within a crate, too, the arrows run one way. Method: read the sources for paths that begin with `crate` or
//! `super`, draw an arrow from the top module of the file to the top module of the path, and fail on a circle.
//!
//! What a file names without either word is its own child or another crate. A name that the root of the crate passes on
//! (`pub use error::StoreError`) counts as the module that it comes from, so that passing on hides no arrow.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

/// From which module to which, and a path that says so.
type Arrows = BTreeMap<String, BTreeMap<String, String>>;

/// The words and signs of a source, without comments and without what stands in quotes.
fn tokens(text: &str) -> Vec<String> {
    let chars: Vec<char> = text.chars().collect();
    let at = |i: usize| chars.get(i).copied().unwrap_or('\0');
    let word = |c: char| c.is_alphanumeric() || c == '_';
    // The place after the closing quote of a text that opens at `i`.
    let quoted = |mut i: usize| {
        i += 1;
        while i < chars.len() && at(i) != '"' {
            i += if at(i) == '\\' { 2 } else { 1 };
        }
        i + 1
    };
    let mut found = Vec::new();
    let mut i = 0;
    while i < chars.len() {
        let c = at(i);
        if c == '/' && at(i + 1) == '/' {
            while i < chars.len() && at(i) != '\n' {
                i += 1;
            }
        } else if c == '/' && at(i + 1) == '*' {
            let mut open = 0;
            loop {
                match (at(i), at(i + 1)) {
                    ('/', '*') => (open, i) = (open + 1, i + 2),
                    ('*', '/') => (open, i) = (open - 1, i + 2),
                    _ => i += 1,
                }
                if open == 0 || i >= chars.len() {
                    break;
                }
            }
        } else if c == '"' {
            i = quoted(i);
        } else if c == '\'' {
            // A character, or a lifetime, which has no closing quote.
            if at(i + 1) == '\\' {
                i += 3;
                while i < chars.len() && at(i) != '\'' {
                    i += 1;
                }
                i += 1;
            } else {
                i += if at(i + 2) == '\'' { 3 } else { 1 };
            }
        } else if word(c) {
            let from = i;
            while word(at(i)) {
                i += 1;
            }
            let name: String = chars[from..i].iter().collect();
            let hashes = (i..).take_while(|&j| at(j) == '#').count();
            if name.ends_with('r') && name.len() <= 2 && at(i + hashes) == '"' {
                // A raw text ends at a quote with as many hashes as it began with.
                let end: Vec<char> = std::iter::once('"').chain(std::iter::repeat_n('#', hashes)).collect();
                i += hashes + 1;
                while i < chars.len() && !chars[i..].starts_with(&end) {
                    i += 1;
                }
                i += end.len();
            } else {
                found.push(name);
            }
        } else if c == ':' && at(i + 1) == ':' {
            found.push("::".to_owned());
            i += 2;
        } else {
            if !c.is_whitespace() {
                found.push(c.to_string());
            }
            i += 1;
        }
    }
    found
}

/// The place after the brace that closes the one at `open`.
fn closed(tokens: &[String], open: usize) -> usize {
    let mut depth = 0_usize;
    for (i, token) in tokens.iter().enumerate().skip(open) {
        match token.as_str() {
            "{" => depth += 1,
            "}" => depth -= 1,
            _ => {}
        }
        if depth == 0 {
            return i + 1;
        }
    }
    tokens.len()
}

/// The tokens without the unit tests, which may look wherever they need to.
fn without_tests(tokens: &[String]) -> Vec<String> {
    const TESTS: [&str; 10] = ["#", "[", "cfg", "(", "test", ")", "]", "mod", "tests", "{"];
    let mut kept = Vec::new();
    let mut i = 0;
    while i < tokens.len() {
        if tokens[i..].iter().map(String::as_str).take(TESTS.len()).eq(TESTS) {
            i = closed(tokens, i + TESTS.len() - 1);
        } else {
            kept.push(tokens[i].clone());
            i += 1;
        }
    }
    kept
}

/// All paths that begin at `from`, those in nested braces too, each with the segments before it.
fn paths(tokens: &[String], from: usize, before: &[String], found: &mut Vec<Vec<String>>) -> usize {
    let mut path = before.to_vec();
    let mut i = from;
    loop {
        match tokens.get(i).map(String::as_str) {
            Some("{") => {
                i += 1;
                while tokens.get(i).is_some_and(|t| t != "}") {
                    i = paths(tokens, i, &path, found);
                    // The other name of `as`, and the comma.
                    while tokens.get(i).is_some_and(|t| t != "," && t != "}") {
                        i += 1;
                    }
                    i += usize::from(tokens.get(i).is_some_and(|t| t == ","));
                }
                return i + 1;
            }
            Some("self") => {}
            Some(segment) => path.push(segment.to_owned()),
            None => {}
        }
        i += 1;
        if tokens.get(i).is_none_or(|t| t != "::") {
            found.push(path);
            return i;
        }
        i += 1;
    }
}

/// Every path in a source of module `own` that begins with `crate` or `super`, from the root of the crate, beside the
/// module (of that file or within it) that names it.
fn named(tokens: &[String], own: &[String]) -> Vec<(Vec<String>, Vec<String>)> {
    let mut named = Vec::new();
    // Modules that are open in the file, and the depth of their brace.
    let mut within: Vec<(String, usize)> = Vec::new();
    let mut depth = 0_usize;
    let mut i = 0;
    while i < tokens.len() {
        let next = tokens.get(i + 1).map_or("", String::as_str);
        match tokens[i].as_str() {
            "mod" if tokens.get(i + 2).is_some_and(|t| t == "{") => {
                within.push((next.to_owned(), depth));
                depth += 1;
                i += 3;
                continue;
            }
            "{" => depth += 1,
            "}" => {
                depth = depth.saturating_sub(1);
                if within.last().is_some_and(|(_, at)| *at == depth) {
                    within.pop();
                }
            }
            start @ ("crate" | "super") if next == "::" => {
                let module: Vec<String> =
                    own.iter().cloned().chain(within.iter().map(|(name, _)| name.clone())).collect();
                let mut base = if start == "crate" { Vec::new() } else { module.clone() };
                if start == "super" {
                    base.pop();
                }
                i += 2;
                while tokens[i] == "super" && tokens.get(i + 1).is_some_and(|t| t == "::") {
                    base.pop();
                    i += 2;
                }
                let mut found = Vec::new();
                i = paths(tokens, i, &base, &mut found);
                named.extend(found.into_iter().map(|path| (module.clone(), path)));
                continue;
            }
            _ => {}
        }
        i += 1;
    }
    named
}

/// Which module each name comes from that the root of the crate passes on.
fn passed_on(root: &[String], modules: &BTreeSet<String>) -> BTreeMap<String, String> {
    let mut found = Vec::new();
    for (i, token) in root.iter().enumerate() {
        if token == "use" {
            let own = root.get(i + 1).is_some_and(|t| t == "crate" || t == "self");
            paths(root, if own { i + 3 } else { i + 1 }, &[], &mut found);
        }
    }
    found
        .into_iter()
        .filter(|path| path.len() > 1 && modules.contains(&path[0]))
        .filter_map(|path| Some((path.last()?.clone(), path[0].clone())))
        .collect()
}

/// The arrows between the top modules of a crate, from the path of each file below `src` and its text.
fn arrows(files: &[(Vec<String>, String)]) -> Arrows {
    let modules: BTreeSet<String> = files.iter().filter_map(|(path, _)| path.first().cloned()).collect();
    let sources: Vec<(&[String], Vec<String>)> =
        files.iter().map(|(path, text)| (path.as_slice(), without_tests(&tokens(text)))).collect();
    let roots = sources.iter().filter(|(path, _)| path.is_empty());
    let passed_on: BTreeMap<String, String> = roots.flat_map(|(_, root)| passed_on(root, &modules)).collect();
    let mut arrows = Arrows::new();
    for (own, source) in &sources {
        for (from, path) in named(source, own) {
            let (Some(from), Some(name)) = (from.first(), path.first()) else { continue };
            let to = if modules.contains(name) { Some(name) } else { passed_on.get(name) };
            if let Some(to) = to.filter(|to| *to != from) {
                let said = format!("{} in {}", path.join("::"), own.join("/"));
                arrows.entry(from.clone()).or_default().entry(to.clone()).or_insert(said);
            }
        }
    }
    arrows
}

/// The modules that can be reached from one; it is among them where it is on a circle.
fn reached<'a>(arrows: &'a Arrows, from: &'a str) -> BTreeSet<&'a str> {
    let mut seen = BTreeSet::new();
    let mut open = vec![from];
    while let Some(at) = open.pop() {
        let next = arrows.get(at).into_iter().flat_map(BTreeMap::keys);
        open.extend(next.map(String::as_str).filter(|to| seen.insert(*to)));
    }
    seen
}

/// The circles: modules that can all be reached from each other, with the paths that join them.
fn circles(arrows: &Arrows) -> Vec<String> {
    let reach: BTreeMap<&str, BTreeSet<&str>> =
        arrows.keys().map(|from| (from.as_str(), reached(arrows, from))).collect();
    let both = |a: &str, b: &str| reach[a].contains(b) && reach.get(b).is_some_and(|back| back.contains(a));
    let mut told = BTreeSet::new();
    let mut circles = Vec::new();
    for &a in reach.keys().filter(|a| reach[*a].contains(*a)) {
        if !told.insert(a) {
            continue;
        }
        let circle: Vec<&str> = reach.keys().copied().filter(|b| both(a, b)).collect();
        told.extend(&circle);
        let inner = circle.iter().flat_map(|from| arrows[*from].iter().map(move |(to, said)| (from, to, said)));
        let inner = inner.filter(|(_, to, _)| circle.contains(&to.as_str()));
        let lines: Vec<String> = inner.map(|(from, to, said)| format!("  {from} → {to}: {said}")).collect();
        circles.push(format!("{}\n{}", circle.join(", "), lines.join("\n")));
    }
    circles
}

/// The sources of a crate with the path of each module.
fn read(src: &Path) -> Vec<(Vec<String>, String)> {
    let mut files = Vec::new();
    super::sources(src, &mut files);
    files.sort();
    let module = |file: &Path| {
        let below = file.strip_prefix(src).expect("below").with_extension("");
        let mut path: Vec<String> = below.iter().map(|part| part.to_string_lossy().into_owned()).collect();
        let file = path.pop().expect("a file");
        if !(file == "mod" || path.is_empty() && (file == "lib" || file == "main")) {
            path.push(file);
        }
        path
    };
    files.iter().map(|file| (module(file), std::fs::read_to_string(file).expect("a source"))).collect()
}

#[test]
fn modules_of_a_crate_do_not_run_in_circles() {
    for name in super::ORDER {
        let files = read(&super::root().join("crates").join(name).join("src"));
        assert!(!files.is_empty(), "{name}");
        let circles = circles(&arrows(&files));
        assert!(circles.is_empty(), "modules of {name} run in circles:\n{}", circles.join("\n"));
    }
}

/// The circles of a crate that is made up, by path and text of its files.
fn of(files: &[(&str, &str)]) -> Vec<String> {
    let path = |path: &str| path.split('/').filter(|part| !part.is_empty()).map(str::to_owned).collect();
    let files: Vec<(Vec<String>, String)> = files.iter().map(|(p, text)| (path(p), (*text).to_owned())).collect();
    circles(&arrows(&files)).iter().map(|c| c.lines().next().unwrap_or_default().to_owned()).collect()
}

#[test]
fn a_circle_is_found_however_it_is_written() {
    let head = ("head", "use crate::shaft::Shaft;");
    for shaft in [
        "use crate::head::Head;",
        "use crate::{tip::Tip, head::{Bore, inner::Hosel as H}};",
        "use super::head;",
        "pub(crate) fn bore(x: Option<crate::head::Bore>) {}",
        "fn f() { let c = '\"'; super::head::f::<'static>(\"a \\\" b\") }",
        "mod inner { use super::super::head::Head; }",
        "use std::fmt::{self, Debug}; use crate::Head;",
    ] {
        let found =
            of(&[("", "mod head; pub use head::Head; mod shaft; mod tip;"), head, ("shaft", shaft), ("tip", "")]);
        assert_eq!(found, ["head, shaft"], "{shaft}");
    }
    // A child of a module speaks for it, and a circle may go through several.
    let three =
        [("a/mod", ""), ("a/b", "use crate::c::X;"), ("c", "use crate::d::{self};"), ("d", "use crate::a::b::Y;")];
    assert_eq!(of(&three), ["a, c, d"]);
}

#[test]
fn what_is_no_arrow_makes_no_circle() {
    let head = ("head", "use crate::shaft::Shaft; use super::super::head;");
    for shaft in [
        "// use crate::head::Head;\n/* use crate::head; /* twice */ crate::head */ fn f() {}",
        "const A: &str = \"crate::head::Head\"; const B: &str = r#\"use \"crate::head;\"#;",
        "fn f() {} #[cfg(test)] mod tests { use crate::head::Head; mod deeper { use crate::head; } }",
        "use head::Head; pub(crate) fn f(head: self::Head) {}",
        "mod head { pub struct Head; } mod b { use super::head::Head; }",
        "use crate::Tip;",
    ] {
        let found = of(&[("", "mod head; mod shaft; mod tip; pub use tip::Tip;"), head, ("shaft", shaft), ("tip", "")]);
        assert!(found.is_empty(), "{shaft}: {found:?}");
    }
    let after = "#[cfg(test)] mod tests { fn f() {} } use crate::head::Head;";
    assert_eq!(of(&[("", ""), head, ("shaft", after)]), ["head, shaft"]);
}
