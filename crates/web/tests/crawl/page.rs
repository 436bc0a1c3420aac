//! What a person can see or hear of a page.

use html5gum::{Token, Tokenizer};
use std::collections::BTreeSet;

/// A piece of a page: its text, and the element it stands in or the attribute it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Seen {
    pub text: String,
    pub place: String,
}

/// Attributes that are shown or read aloud.
const SPOKEN: [&str; 5] = ["title", "aria-label", "alt", "placeholder", "aria-description"];
/// Elements whose content is no text for people, or is shown as a program's document.
const SILENT: [&str; 5] = ["script", "style", "template", "pre", "code"];
/// Elements that have no end.
const EMPTY: [&str; 9] = ["input", "br", "hr", "img", "meta", "link", "col", "wbr", "source"];

fn string(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// All texts of a page in their order, and the addresses its links lead to.
pub fn seen(html: &str) -> (Vec<Seen>, BTreeSet<String>) {
    let (mut texts, mut links): (Vec<Seen>, _) = (Vec::new(), BTreeSet::new());
    // Open elements with their class, the innermost last.
    let mut open: Vec<(String, String)> = Vec::new();
    for token in Tokenizer::new(html) {
        let Ok(token) = token;
        match token {
            Token::StartTag(tag) => {
                let name = string(&tag.name);
                let of = |key: &str| tag.attributes.iter().find(|(k, _)| string(k) == key).map(|(_, v)| string(v));
                for key in SPOKEN {
                    if let Some(text) = of(key) {
                        texts.push(Seen { text, place: format!("{name}@{key}") });
                    }
                }
                if name == "input" && of("type").is_some_and(|t| t == "submit" || t == "button") {
                    texts.extend(of("value").map(|text| Seen { text, place: "input@value".to_owned() }));
                }
                if name == "a" {
                    links.extend(of("href").filter(|href| href.starts_with('/')));
                }
                if !tag.self_closing && !EMPTY.contains(&name.as_str()) {
                    open.push((name, of("class").unwrap_or_default()));
                }
            }
            Token::EndTag(tag) => {
                let name = string(&tag.name);
                while let Some((inner, _)) = open.pop() {
                    if inner == name {
                        break;
                    }
                }
            }
            Token::String(text) => {
                let text = string(&text);
                let silent = open.iter().any(|(name, _)| SILENT.contains(&name.as_str()));
                if !silent && !text.trim().is_empty() {
                    let place = open
                        .iter()
                        .rev()
                        .take(3)
                        .map(|(n, c)| format!("{n}.{}", c.replace(' ', ".")))
                        .collect::<Vec<_>>();
                    texts.push(Seen { text, place: place.join(" < ") });
                }
            }
            _ => {}
        }
    }
    (texts, links)
}
