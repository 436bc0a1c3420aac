//! Goal: every fact that the program can tell has an English text. Method: read the declarations from the sources, so that no
//! crate is built a second time for it, and look each member up in the texts.

use super::{root, sources};
use desk::order::PartCount;
use fact::Facts;
use sample::Sample;

mod sample;

/// An enumeration of facts as it is declared: its name, its area, and its members with the names of their figures.
#[derive(Debug, PartialEq)]
struct Declared {
    name: String,
    area: String,
    members: Vec<(String, Vec<String>)>,
}

/// A source without its comments. A declaration holds no text but its area, so that two strokes always begin a comment there.
fn without_comments(text: &str) -> String {
    text.lines().map(|line| line.split("//").next().unwrap_or_default()).collect::<Vec<_>>().join("\n")
}

/// What stands in the braces that open at the start of a text, and what follows them.
fn in_braces(text: &str) -> (&str, &str) {
    let mut depth = 0;
    for (at, sign) in text.char_indices() {
        match sign {
            '{' => depth += 1,
            '}' => depth -= 1,
            _ => {}
        }
        if depth == 0 {
            return (&text[1..at], &text[at + 1..]);
        }
    }
    panic!("a brace without its end: {text}")
}

/// A text without the attributes that it begins with.
fn without_attributes(mut text: &str) -> &str {
    loop {
        text = text.trim_start();
        let Some(rest) = text.strip_prefix('#') else { return text };
        let mut depth = 0;
        let ends = |sign| {
            depth += i32::from(sign == '[') - i32::from(sign == ']');
            depth == 0
        };
        text = &rest[rest.find(ends).expect("an attribute ends") + 1..];
    }
}

/// The pieces between the commas that stand in no bracket of any kind.
fn pieces(text: &str) -> Vec<&str> {
    let (mut depth, mut from, mut found) = (0, 0, Vec::new());
    for (at, sign) in text.char_indices() {
        match sign {
            '{' | '(' | '[' | '<' => depth += 1,
            '}' | ')' | ']' | '>' => depth -= 1,
            ',' if depth == 0 => {
                found.push(&text[from..at]);
                from = at + 1;
            }
            _ => {}
        }
    }
    found.push(&text[from..]);
    found.into_iter().map(without_attributes).filter(|piece| !piece.trim().is_empty()).collect()
}

/// Every enumeration that a source declares as facts.
fn declared(source: &str) -> Vec<Declared> {
    let text = without_comments(source);
    let mut rest = text.as_str();
    let mut found = Vec::new();
    while let Some(at) = rest.find("facts! {") {
        let (body, after) = in_braces(&rest[at + "facts! ".len()..]);
        rest = after;
        let (head, members) = body.split_at(body.find('{').expect("members"));
        let head = head.split_once("enum ").expect("an enumeration").1;
        let (name, area) = head.split_once(':').expect("an area");
        let member = |piece: &&str| {
            let (name, figures) = piece.split_once('{').unwrap_or((piece, ""));
            let figures = pieces(figures.trim_end().strip_suffix('}').unwrap_or_default());
            let figures = figures.iter().map(|figure| figure.split(':').next().unwrap_or_default().trim().to_owned());
            (name.trim().to_owned(), figures.collect())
        };
        found.push(Declared {
            name: name.trim().to_owned(),
            area: area.trim().trim_matches('"').to_owned(),
            members: pieces(in_braces(members).0).iter().map(member).collect(),
        });
    }
    found
}

/// An enumeration as the compiler has it.
fn compiled<F: Facts>(name: &str) -> Declared {
    let figures = |figures: &[&str]| figures.iter().map(|&figure| figure.to_owned()).collect();
    let members = F::MEMBERS.iter().map(|&(member, with)| (member.to_owned(), figures(with))).collect();
    Declared { name: name.to_owned(), area: F::AREA.to_owned(), members }
}

#[test]
fn every_fact_has_its_text_and_no_text_a_figure_that_the_fact_lacks() {
    let (mut files, mut wrong, mut count) = (Vec::new(), Vec::new(), 0);
    sources(&root().join("crates"), &mut files);
    for file in files.iter().filter(|file| file.components().any(|c| c.as_os_str() == "src")) {
        let source = std::fs::read_to_string(file).expect("a source");
        if file.ends_with("fact/src/macros.rs") {
            continue;
        }
        for facts in declared(&source) {
            count += 1;
            // Its members are written by a macro: it is asked itself.
            let facts = if facts.name == "PartCount" { compiled::<PartCount>("PartCount") } else { facts };
            for (member, figures) in &facts.members {
                let code = fact::Told::member(&facts.area, member).code().to_owned();
                wrong.extend(words::check::wrong_text(&code, figures).map(|why| format!("{}: {why}", facts.name)));
            }
        }
    }
    assert!(count > 100, "{count} declarations were found");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The reader of declarations sees what the compiler sees, and the look for texts finds what is missing.
#[test]
fn a_declaration_is_read_as_it_is_compiled() {
    let read = declared(include_str!("facts/sample.rs")).pop().expect("it was read");
    assert_eq!(read, compiled::<Sample>("Sample"));
    assert!(words::check::wrong_text("sample_area.plain", &[]).is_some_and(|why| why.contains("has no text")));
    let lacks = words::check::wrong_text("chance.inside", &[]);
    assert!(lacks.is_some_and(|why| why.contains(" uses ")));
}
