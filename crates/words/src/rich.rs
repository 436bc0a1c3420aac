//! Texts with marked phrases: `Go to <a>Sheets</a>, or press <key>Enter</key>.`
//!
//! The place of a link within a sentence is the language's business, what the link does is the page's. So a text marks the
//! phrase with a name, and the page says what stands for the name.

use crate::Words;
use fact::Figure;

/// One piece of a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Piece {
    /// Plain text.
    Text(String),
    /// A marked phrase: the name of the mark, the text within.
    Marked(String, String),
}

/// What stands for `<` in a figure while the marks are looked for, so that nobody's name becomes a mark.
const HELD: char = '\u{E000}';

pub(crate) fn pieces(words: &Words, id: &str, figures: &[(&str, Figure)]) -> Vec<Piece> {
    let held: Vec<(&str, Figure)> = figures.iter().map(|(name, figure)| (*name, hold(figure))).collect();
    let text = words.text_with(id, &held);
    let back = |text: &str| text.replace(HELD, "<");
    let (mut pieces, mut rest) = (Vec::new(), text.as_str());
    while let Some((before, tag, after)) = next_tag(rest) {
        let name = tag.trim_matches(['<', '>', '/']);
        let end = format!("</{name}>");
        if !before.is_empty() {
            pieces.push(Piece::Text(back(before)));
        }
        // A mark that ends nowhere, or only there, marks nothing.
        let Some((within, after)) = after.split_once(&end).filter(|_| !tag.starts_with("</")) else {
            rest = after;
            continue;
        };
        pieces.push(Piece::Marked(name.to_owned(), back(within)));
        rest = after;
    }
    if !rest.is_empty() {
        pieces.push(Piece::Text(back(rest)));
    }
    pieces
}

fn hold(figure: &Figure) -> Figure {
    match figure {
        Figure::Text(text) => Figure::Text(text.replace('<', &HELD.to_string())),
        Figure::List(list) => Figure::List(list.iter().map(hold).collect()),
        other => other.clone(),
    }
}

/// The next mark: what stands before, the mark, what follows.
pub(crate) fn next_tag(text: &str) -> Option<(&str, &str, &str)> {
    for (begin, _) in text.match_indices('<') {
        let after = &text[begin + 1..];
        let name = after.strip_prefix('/').unwrap_or(after);
        let letters = name.bytes().take_while(u8::is_ascii_lowercase).count();
        if letters > 0 && name[letters..].starts_with('>') {
            let end = text.len() - name.len() + letters + 1;
            return Some((&text[..begin], &text[begin..end], &text[end..]));
        }
    }
    None
}
