//! Terms of the trade with the way to their meaning.
//!
//! A page hands over its finished body with the names of the terms that may need explaining. Where one is first mentioned
//! in plain text, its words become a link into the glossary. So no text has to carry marks for it, and a sentence that is
//! reworded keeps its link.

use maud::{Markup, PreEscaped, html};
use quantity::INCH_MM;
use words::Words;

/// Elements whose text gets no link: what is touched for something else, what is no running text, and headings, which
/// should read alike on every page.
const WITHOUT: [&str; 19] = [
    "a", "button", "label", "legend", "summary", "select", "option", "textarea", "script", "style", "template", "svg",
    "code", "pre", "caption", "h1", "h2", "h3", "title",
];

/// Where the letter scale has its fulcrum, from the butt: 14 inches.
const FULCRUM_MM: f64 = 14.0 * INCH_MM;

/// A body in which the first mention of each term leads to its meaning. `names` are the terms' names among the texts,
/// such as `swing-weight`; a term is found by its own words, whole and in any case, or, where those are a list such as
/// `Frequency, cpm`, by one of them.
#[must_use]
pub fn with_terms(w: &Words, body: &Markup, names: &[&str]) -> Markup {
    let mut terms: Vec<Term<'_>> = names.iter().flat_map(|name| Term::of(w, name)).collect();
    // The longest first: the tip weight is no tip.
    terms.sort_by_key(|term| std::cmp::Reverse(term.phrase.len()));
    let mut linked: Vec<&str> = Vec::new();
    let mut out = String::with_capacity(body.0.len() + 2000);
    let mut rest = body.0.as_str();
    let mut closed: Vec<&str> = Vec::new();
    while let Some(at) = rest.find('<') {
        let (text, tag) = rest.split_at(at);
        if closed.is_empty() {
            link(w, text, &terms, &mut linked, &mut out);
        } else {
            out.push_str(text);
        }
        let end = tag.find('>').map_or(tag.len(), |end| end + 1);
        let (tag, after) = tag.split_at(end);
        follow(tag, &mut closed);
        out.push_str(tag);
        rest = after;
    }
    link(w, rest, &terms, &mut linked, &mut out);
    PreEscaped(out)
}

/// One way to write a term.
struct Term<'a> {
    name: &'a str,
    phrase: Vec<char>,
}

impl<'a> Term<'a> {
    fn of(w: &Words, name: &'a str) -> Vec<Self> {
        let words = w.text(&format!("term-{name}"));
        let phrase = |one: &str| one.trim().chars().flat_map(char::to_lowercase).collect();
        words.split(',').map(|one| Self { name, phrase: phrase(one) }).filter(|term| !term.phrase.is_empty()).collect()
    }

    /// How many bytes of the text it takes, where the text begins with it as a whole word.
    fn begins(&self, text: &str) -> Option<usize> {
        let mut rest = text.chars();
        for wanted in &self.phrase {
            let mut lower = rest.next()?.to_lowercase();
            if lower.next() != Some(*wanted) || lower.next().is_some() {
                return None;
            }
        }
        let taken = text.len() - rest.as_str().len();
        (!rest.next().is_some_and(char::is_alphanumeric)).then_some(taken)
    }
}

/// Keeps the open elements without links: the innermost is the last.
fn follow<'a>(tag: &'a str, closed: &mut Vec<&'a str>) {
    let name_of = |text: &'a str| text.split(|c: char| !c.is_ascii_alphanumeric()).next().unwrap_or_default();
    match tag.strip_prefix("</") {
        Some(end) => {
            if closed.last() == Some(&name_of(end)) {
                closed.pop();
            }
        }
        None => {
            let name = name_of(&tag[1..]);
            // A link in what is hidden from readers could be reached by the keyboard and not be heard. An element of the
            // same name inside has an end of its own.
            let shut = WITHOUT.contains(&name) || tag.contains("aria-hidden=\"true\"") || closed.last() == Some(&name);
            if shut && !tag.ends_with("/>") {
                closed.push(name);
            }
        }
    }
}

/// Writes a text of the page with the terms that stand in it for the first time as links.
fn link<'a>(w: &Words, text: &str, terms: &[Term<'a>], linked: &mut Vec<&'a str>, out: &mut String) {
    let (mut written, mut at, mut before) = (0, 0, None::<char>);
    while let Some(letter) = text[at..].chars().next() {
        let found = (!before.is_some_and(char::is_alphanumeric) && letter.is_alphabetic())
            .then(|| terms.iter().find_map(|term| Some((term.name, term.begins(&text[at..])?))))
            .flatten();
        let Some((name, length)) = found else {
            before = Some(letter);
            at += letter.len_utf8();
            continue;
        };
        if !linked.contains(&name) {
            linked.push(name);
            out.push_str(&text[written..at]);
            out.push_str(&term(w, name, &text[at..at + length]).into_string());
            written = at + length;
        }
        before = text[at..at + length].chars().next_back();
        at += length;
    }
    out.push_str(&text[written..]);
}

/// What a term means, in a sentence or two.
#[must_use]
pub fn meaning_of_term(w: &Words, name: &str) -> String {
    // Some of them name the fulcrum of the letter scale.
    w.text_with(&format!("term-{name}-about"), &[("fulcrum_mm", words::figure(&FULCRUM_MM))])
}

/// A term as a link into the glossary; its meaning is its title. The text is a piece of a page, so it is escaped already.
fn term(w: &Words, name: &str, text: &str) -> Markup {
    html! { a.term href={ "/glossary#" (name) } title=(meaning_of_term(w, name)) { (PreEscaped(text)) } }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn linked(body: &str, names: &[&str]) -> String {
        let w = Words::english(Units::default());
        let page = with_terms(&w, &PreEscaped(body.to_owned()), names).into_string();
        // The title is long, and the glossary's own.
        let mut out = String::new();
        for (i, piece) in page.split(" title=\"").enumerate() {
            out.push_str(if i == 0 { piece } else { piece.split_once('"').map_or("", |(_, after)| after) });
        }
        out
    }

    const SWING_WEIGHT: &str = r##"<a class="term" href="/glossary#swing-weight">"##;

    #[test]
    fn the_first_mention_is_linked_and_no_other() {
        let page =
            linked("<p>Read the swing weight. The swing weight counts.</p><p>Swing weight</p>", &["swing-weight"]);
        assert_eq!(
            page,
            format!("<p>Read the {SWING_WEIGHT}swing weight</a>. The swing weight counts.</p><p>Swing weight</p>")
        );
    }

    #[test]
    fn what_is_touched_for_something_else_has_no_link_inside() {
        let touched = "<h2>Swing weight</h2><button aria-label=\"swing weight\">Read <b>swing weight</b></button><a href=\"/x\">swing weight</a><svg><text>swing weight</text></svg>";
        assert_eq!(linked(touched, &["swing-weight"]), touched);
        let after = format!("{touched}<td>Swing weight</td>");
        assert_eq!(linked(&after, &["swing-weight"]), format!("{touched}<td>{SWING_WEIGHT}Swing weight</a></td>"));
    }

    #[test]
    fn what_is_hidden_from_readers_has_no_link_inside() {
        let hidden = "<span aria-hidden=\"true\"><span>cpm</span> cpm</span>";
        assert_eq!(linked(hidden, &["cpm"]), hidden);
        let after = format!("{hidden}<p>cpm</p>");
        assert!(linked(&after, &["cpm"]).ends_with("<p><a class=\"term\" href=\"/glossary#cpm\">cpm</a></p>"));
    }

    #[test]
    fn a_term_is_a_whole_word_and_the_longest_one_wins() {
        let tip = |text: &str| linked(text, &["tip", "tip-weight", "cpm"]);
        assert_eq!(tip("tips, tiptoe"), "tips, tiptoe");
        assert_eq!(
            tip("tip weight, tip"),
            r##"<a class="term" href="/glossary#tip-weight">tip weight</a>, <a class="term" href="/glossary#tip">tip</a>"##
        );
        // The second tip weight is no tip either.
        assert!(!tip("tip weight or tip weight").contains("#tip\""));
        assert_eq!(
            tip("Shafts &lt; 300 cpm ± 2"),
            r##"Shafts &lt; 300 <a class="term" href="/glossary#cpm">cpm</a> ± 2"##
        );
    }
}
