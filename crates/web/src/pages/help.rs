//! The guide as pages: its chapters, found by words, each page of the shop leading to its own.

use super::entries::Entries;
use super::{Framed, PageError, PageResult, framed};
use crate::asked::Path;
use crate::problem::{EdgeFault, Problem};
use crate::reader::Reader;
use app::App;
use axum::Router;
use axum::extract::{Query, State};
use axum::http::{StatusCode, header};
use axum::response::IntoResponse;
use axum::routing::get;
use look::{Button, ButtonKind, Field, Nav, button};
use maud::{Markup, PreEscaped, html};
use pulldown_cmark::{CowStr, Event, Options, Parser, Tag, TagEnd, html::push_html};
use words::{Chapter, Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/help", get(contents))
        .route("/help/{chapter}", get(show))
        .route("/help/pictures/{*name}", get(picture))
}

/// The chapter of the guide for one of the seven places; none for a page outside of them.
pub(super) fn chapter_of(place: Nav) -> Option<&'static str> {
    match place {
        Nav::Today => Some("set-up"),
        Nav::Sheets => Some("sheet"),
        Nav::Stock => Some("stock"),
        Nav::Plan => Some("plan"),
        Nav::Bench => Some("bench"),
        Nav::Glue => Some("glue"),
        Nav::Records => Some("records"),
        Nav::Elsewhere => None,
    }
}

/// The pictures of the guide, by the names that its chapters know them by below `docs/pictures`.
macro_rules! pictures {
    ($($name:literal)*) => {
        &[$(($name, include_bytes!(concat!("../../../../docs/pictures/", $name)))),*]
    };
}
const PICTURES: &[(&str, &[u8])] = pictures!["bench.png" "set-grid.png" "doubt.png" "plan.png"
    "de/bench.png" "de/set-grid.png" "de/doubt.png" "de/plan.png"];

async fn picture(Path(name): Path<String>) -> PageResult {
    let Some((_, bytes)) = PICTURES.iter().find(|(known, _)| *known == name) else {
        return Err(PageError(Problem::new(StatusCode::NOT_FOUND, "not_found", EdgeFault::NoPage)));
    };
    let headers = [(header::CONTENT_TYPE, "image/png"), (header::CACHE_CONTROL, "max-age=86400")];
    Ok((headers, *bytes).into_response())
}

/// Where a picture of the guide is in the program; none where it is not in it.
fn shown_at(address: &str) -> Option<String> {
    let name = address.split_once("pictures/")?.1;
    PICTURES.iter().any(|(known, _)| *known == name).then(|| format!("/help/pictures/{name}"))
}

/// The chapter that is printed on one sheet to hang beside the scale.
const QUICK_CARD: &str = "quick-card";

async fn contents(State(app): State<App>, Reader(w): Reader, Query(asked): Query<Vec<(String, String)>>) -> PageResult {
    let form = Entries::new(asked);
    let sought = form.text("q").trim().to_lowercase();
    let body = html! {
        form.card method="get" action="/help" role="search" {
            (form.field("q", &w.text("help-search"), Field { kind: "search", ..Field::default() }))
            div.actions { (button(&Button { label: &w.text("help-find"), kind: ButtonKind::Quiet, ..Button::default() })) }
        }
        @if sought.is_empty() {
            p { a href={ "/help/" (QUICK_CARD) } { (w.text("help-quick-card")) } }
            ol.book-contents { @for chapter in w.guide() { li { a href={ "/help/" (chapter.key) } { (chapter.title()) } } } }
        } @else { (found(&w, &sought)) }
    };
    let title = w.text("help-title");
    let page = framed(&w, &app, Framed { title: &title, body, ..Framed::default() }).await?;
    Ok(page.into_response())
}

/// A stretch of a chapter under one heading.
struct Stretch<'a> {
    chapter: &'a Chapter,
    heading: String,
    text: String,
}

/// A chapter at its headings, in plain text.
fn stretches(chapter: &Chapter) -> Vec<Stretch<'_>> {
    let mut all = vec![Stretch { chapter, heading: String::new(), text: String::new() }];
    let mut in_heading = false;
    for event in Parser::new_ext(&chapter.text, Options::ENABLE_TABLES) {
        match event {
            Event::Start(Tag::Heading { .. }) => {
                all.push(Stretch { chapter, heading: String::new(), text: String::new() });
                in_heading = true;
            }
            Event::End(TagEnd::Heading(_)) => in_heading = false,
            Event::Text(text) | Event::Code(text) => {
                if let Some(last) = all.last_mut() {
                    let to = if in_heading { &mut last.heading } else { &mut last.text };
                    to.push_str(&text);
                }
            }
            Event::SoftBreak | Event::HardBreak | Event::End(_) => {
                if let Some(last) = all.last_mut() {
                    last.text.push(' ');
                }
            }
            _ => {}
        }
    }
    all
}

/// The most stretches that a search shows.
const MOST_FOUND: usize = 20;
/// How much of a stretch is shown.
const SHOWN_LETTERS: usize = 200;

fn found(w: &Words, sought: &str) -> Markup {
    let words: Vec<&str> = sought.split_whitespace().collect();
    let fits = |stretch: &Stretch<'_>| {
        let (heading, text) = (stretch.heading.to_lowercase(), stretch.text.to_lowercase());
        words.iter().all(|word| heading.contains(word) || text.contains(word))
    };
    let mut found: Vec<Stretch<'_>> = w.guide().iter().flat_map(stretches).filter(fits).collect();
    // What is about it stands before what mentions it.
    found.sort_by_key(|stretch| !words.iter().any(|word| stretch.heading.to_lowercase().contains(word)));
    html! {
        @if found.is_empty() { p { (text!(w, "help-nothing", text = sought)) } }
        ul.book-found { @for stretch in found.iter().take(MOST_FOUND) {
            @let heading = if stretch.heading.is_empty() { stretch.chapter.title() } else { &stretch.heading };
            li {
                a href={ "/help/" (stretch.chapter.key) "#" (anchor(heading)) } { (stretch.chapter.title()) @if heading != stretch.chapter.title() { ": " (heading) } }
                p { (stretch.text.split_whitespace().collect::<Vec<_>>().join(" ").chars().take(SHOWN_LETTERS).collect::<String>()) " …" }
            }
        } }
        p { a href="/help" { (w.text("help-contents")) } }
    }
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(key): Path<String>) -> PageResult {
    let Some(at) = w.guide().iter().position(|chapter| chapter.key == key) else {
        return Err(PageError(Problem::new(StatusCode::NOT_FOUND, "not_found", EdgeFault::NoPage)));
    };
    let chapter = &w.guide()[at];
    let beside = |at: Option<usize>| at.and_then(|at| w.guide().get(at));
    let body = html! {
        div.book.quick-card[chapter.key == QUICK_CARD] { (rendered(&w, chapter)) }
        nav.actions aria-label=(w.text("help-title")) {
            @if let Some(before) = beside(at.checked_sub(1)) { a.button.quiet href={ "/help/" (before.key) } { "← " (before.title()) } }
            a.button.quiet href="/help" { (w.text("help-contents")) }
            @if let Some(next) = beside(at.checked_add(1)) { a.button.quiet href={ "/help/" (next.key) } { (next.title()) " →" } }
        }
    };
    let title = chapter.title().to_owned();
    let page =
        framed(&w, &app, Framed { title: &title, crumb: w.text("help-title"), body, ..Framed::default() }).await?;
    Ok(page.into_response())
}

/// A chapter as it stands on its page: its own title is the page's, links lead to the chapters in the program.
fn rendered(w: &Words, chapter: &Chapter) -> Markup {
    let mut events: Vec<Event<'_>> = Vec::new();
    let (mut in_title, mut tables) = (false, 0);
    // Where the address of a link is not in the program, its words stand without it.
    let mut open_links: Vec<bool> = Vec::new();
    let mut picture_at: Option<(String, String)> = None;
    for event in Parser::new_ext(&chapter.text, Options::ENABLE_TABLES) {
        match event {
            Event::Start(Tag::Heading { level: pulldown_cmark::HeadingLevel::H1, .. }) => in_title = true,
            Event::End(TagEnd::Heading(pulldown_cmark::HeadingLevel::H1)) => in_title = false,
            _ if in_title => {}
            Event::Start(Tag::Link { link_type, dest_url, title, id }) => {
                let leads = led_to(w, &dest_url);
                open_links.push(leads.is_some());
                if let Some(leads) = leads {
                    let dest_url = CowStr::from(leads);
                    events.push(Event::Start(Tag::Link { link_type, dest_url, title, id }));
                }
            }
            Event::End(TagEnd::Link) => {
                if open_links.pop() == Some(true) {
                    events.push(Event::End(TagEnd::Link));
                }
            }
            // A picture is fetched once it is near the screen; what it shows stands as its words.
            Event::Start(Tag::Image { dest_url, .. }) => picture_at = shown_at(&dest_url).map(|at| (at, String::new())),
            Event::End(TagEnd::Image) => {
                if let Some((at, words)) = picture_at.take() {
                    let shown = html! { img src=(at) alt=(words) loading="lazy"; };
                    events.push(Event::Html(shown.into_string().into()));
                }
            }
            Event::Text(words) if picture_at.is_some() => {
                if let Some((_, all)) = &mut picture_at {
                    all.push_str(&words);
                }
            }
            // A table that is wider than a phone scrolls by itself.
            Event::Start(Tag::Table(_)) => {
                events
                    .push(Event::Html("<div class=\"table-wrap\" tabindex=\"0\" role=\"region\" aria-label=\"".into()));
                tables += 1;
                events.push(Event::Text(text!(w, "help-table", n = tables).into()));
                events.push(Event::Html("\">".into()));
                events.push(event);
            }
            Event::End(TagEnd::Table) => {
                events.push(event);
                events.push(Event::Html("</div>".into()));
            }
            // The guide is ours and has no markup of its own; should some slip in, it is shown as it stands.
            Event::Html(text) | Event::InlineHtml(text) => events.push(Event::Text(text)),
            other => events.push(other),
        }
    }
    name_headings(&mut events);
    let mut out = String::new();
    push_html(&mut out, events.into_iter());
    PreEscaped(out)
}

/// Gives each heading the name that links in the guide know it by.
fn name_headings(events: &mut [Event<'_>]) {
    for at in 0..events.len() {
        if !matches!(events[at], Event::Start(Tag::Heading { .. })) {
            continue;
        }
        let words: String = events[at + 1..]
            .iter()
            .take_while(|event| !matches!(event, Event::End(TagEnd::Heading(_))))
            .filter_map(|event| match event {
                Event::Text(text) | Event::Code(text) => Some(text.as_ref()),
                _ => None,
            })
            .collect();
        if let Event::Start(Tag::Heading { id, .. }) = &mut events[at] {
            *id = Some(anchor(&words).into());
        }
    }
}

/// The name of a heading within its page: small letters and digits, a line for each gap.
fn anchor(heading: &str) -> String {
    let kept = heading.to_lowercase().replace(' ', "-");
    kept.chars().filter(|c| c.is_alphanumeric() || *c == '-').collect()
}

/// Where a link of the guide leads in the program; none where that is a file of the project only.
fn led_to(w: &Words, address: &str) -> Option<String> {
    let (file, at) = address.split_once('#').unwrap_or((address, ""));
    let at = if at.is_empty() { String::new() } else { format!("#{at}") };
    if file.is_empty() {
        return Some(at);
    }
    let key = file.rsplit('/').next()?.strip_suffix(".md")?;
    w.guide().iter().any(|chapter| chapter.key == key).then(|| format!("/help/{key}{at}"))
}

#[cfg(test)]
mod tests {
    use super::{anchor, led_to, shown_at};
    use quantity::Units;
    use words::Words;

    #[test]
    fn links_lead_to_chapters_and_files_of_the_project_to_nothing() {
        let w = Words::english(Units::default());
        assert_eq!(led_to(&w, "glue.md").as_deref(), Some("/help/glue"));
        assert_eq!(led_to(&w, "../install.md#let-the-tablets-in").as_deref(), Some("/help/install#let-the-tablets-in"));
        assert_eq!(led_to(&w, "#what-holds").as_deref(), Some("#what-holds"));
        assert_eq!((led_to(&w, "example/"), led_to(&w, "https://example.org/x.md")), (None, None));
        assert_eq!(shown_at("../../pictures/de/plan.png").as_deref(), Some("/help/pictures/de/plan.png"));
        assert_eq!(shown_at("../pictures/other.png"), None);
        assert_eq!(anchor("Upgrade, and the way back"), "upgrade-and-the-way-back");
    }
}
