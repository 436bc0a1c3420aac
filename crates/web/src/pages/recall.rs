//! Recall: whom a lot, a part, a model, a scale or a builder reached; the marks on clubs until somebody has looked.

use super::entries::{Entries, go_on, in_address, query, words_cards};
use super::{Framed, PageResult, Who, failure, failure_status, framed, say};
use crate::asked::Path;
use crate::file::{ADDRESSES, csv_file};
use crate::reader::Reader;
use crate::tablet::Done;
use app::recall::{ClearMark, MarkClubs, MarkView};
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use desk::recall::{RecallList, RecalledClub, RecalledPlayer};
use look::{
    Button, ButtonKind, Cell, Column, Field, Icon, Nav, Notice, Tone, button, empty_state, field, hidden, icon,
    link_button, section, tag,
};
use maud::{Markup, html};
use trade::customer;
use trade::id::ClubCode;
use trade::job::JobState;
use trade::recall::{ClubMark, Recall};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/recall", get(show).post(mark))
        .route("/recall/addresses", get(addresses))
        .route("/marks", get(marks))
        .route("/marks/{id}/clear", post(clear))
}

/// What can be called back, as the entry `of` says it.
const OF: [&str; 5] = ["lot", "part", "model", "scale", "builder"];

/// The question of an address or a form: `of` with `text`, or the thing by its own name, as in `lot=D-12`.
fn asked(w: &Words, form: &mut Entries) -> Recall {
    for of in OF {
        if let Some(text) = form.some(of) {
            form.set("of", of);
            form.set("text", text);
        }
    }
    let text = form.some("text");
    let of = |key: &str| text.clone().filter(|_| form.text("of") == key);
    let [lot, part, model, scale, builder] = OF.map(of);
    Recall { lot, part, model, scale, builder, from: form.date(w, "from"), to: form.date(w, "to") }
}

/// The address of a recall.
fn address(page: &str, form: &Entries) -> String {
    let all = ["of", "text", "from", "to"].map(|name| (name, form.text(name)));
    page.to_owned() + &query(&all.into_iter().filter(|(_, value)| !value.is_empty()).collect::<Vec<_>>())
}

async fn show(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    recall_page(&w, &app, Entries::new(pairs), None).await
}

async fn recall_page(w: &Words, app: &App, mut form: Entries, refused: Option<AppError>) -> PageResult {
    let recall = asked(w, &mut form);
    let nothing = form.some("text").is_none();
    let (list, refused) = match (nothing || !form.is_sound(), refused) {
        (true, refused) => (None, refused),
        (false, refused) => match app.recall(&recall).await {
            Ok(list) => (Some(list), refused),
            Err(error) => (None, Some(refused.unwrap_or(error))),
        },
    };
    let status = refused.as_ref().map_or(StatusCode::OK, failure_status);
    let notice = refused.as_ref().map(|error| failure(w, error)).or_else(|| form.notice(w));
    let body = html! {
        (question(w, &mut form))
        @match &list {
            Some(list) if list.clubs.is_empty() => (empty_state(&text!(w, "recall-nobody", of = list.of), &w.text("recall-nobody-next"), &[])),
            Some(list) => (found(w, &form, list)),
            None => p { (w.text("recall-means")) },
        }
    };
    let title = list.as_ref().map_or_else(|| w.text("recall-page"), |list| text!(w, "recall-title", of = list.of));
    let crumb = list
        .as_ref()
        .map_or_else(String::new, |l| text!(w, "recall-count", n = l.clubs.len(), players = l.players.len()));
    let page = framed(w, app, Framed { title: &title, active: Nav::Records, crumb, notice, body, ..Framed::default() });
    Ok((status, page.await?).into_response())
}

fn question(w: &Words, form: &mut Entries) -> Markup {
    let labels = OF.map(|of| (of, w.text(&format!("recall-of-what-{of}"))));
    html! {
        form.card.no-print method="get" action="/recall" {
            div.fields {
                (form.select("of", &w.text("recall-what"), "", &labels))
                (form.field("text", &w.text("recall-which"), Field { required: true, autofocus: form.text("text").is_empty(), hint: &w.text("recall-which-hint"), ..Field::default() }))
                (form.field("from", &w.text("recall-from"), Field { kind: "date", hint: &w.text("recall-days-hint"), ..Field::default() }))
                (form.field("to", &w.text("recall-to"), Field { kind: "date", ..Field::default() }))
            }
            div.actions {
                (button(&Button { label: &w.text("recall-ask"), icon: Some(Icon::Search), ..Button::default() }))
                (link_button("/marks", &w.text("mark-page"), ButtonKind::Quiet, None, ""))
            }
        }
    }
}

fn found(w: &Words, form: &Entries, list: &RecallList) -> Markup {
    let here = list.clubs.iter().filter(|club| club.is_here()).count();
    let word = form.some("word").unwrap_or_else(|| text!(w, "mark-word-of", of = list.of));
    html! {
        @if here > 0 { p { (tag(Tone::Care, &w.text("recall-still-here"))) " " (text!(w, "recall-here", n = here)) } }
        div.actions.no-print {
            (link_button(&address("/recall/addresses", form), &w.text("recall-addresses"), ButtonKind::Quiet, Some(Icon::Export), ""))
        }
        form method="post" action="/recall" {
            @for name in ["of", "text", "from", "to"] { (hidden(name, form.text(name))) }
            (section(&w.text("recall-clubs"), &html! {}, &words_cards(
                &w.text("recall-clubs"),
                ["pick", "club", "player", "why"].iter()
                    .map(|id| Column::words(w.text(&format!("recall-column-{id}")))).collect(),
                list.clubs.iter().map(|club| club_row(w, form, club)).collect(),
            )))
            div.card.no-print {
                (field(&Field { name: "word", label: &w.text("mark-word"), value: &word, hint: &w.text("mark-word-hint"), required: true, ..Field::default() }))
                div.actions { (button(&Button { label: &w.text("mark-them"), ..Button::default() })) }
            }
        }
        (section(&w.text("recall-players"), &html! {}, &words_cards(
            &w.text("recall-players"),
            ["player", "phone", "email", "address", "clubs"].iter()
                .map(|id| Column::words(w.text(&format!("recall-column-{id}")))).collect(),
            list.players.iter().map(|player| player_row(w, player)).collect(),
        )))
    }
}

/// The club, with the page where it is met next.
fn club_link(code: Option<&str>, job: Option<i64>, slot: Option<i64>) -> String {
    match (code, job, slot) {
        (Some(code), ..) => format!("/clubs/{}", in_address(code)),
        (None, Some(job), Some(slot)) => format!("/bench/{job}/{slot}"),
        _ => "/clubs".to_owned(),
    }
}

fn club_row(w: &Words, form: &Entries, club: &RecalledClub) -> Vec<Cell> {
    let sent = form.text("picked") == "1";
    let ticked = !sent || form.has("club", &club.key);
    let href = club_link(club.code.as_ref().map(ClubCode::as_str), club.job, club.slot);
    let read: Vec<String> = club
        .read
        .iter()
        .map(|f| text!(w, "recall-read", what = f.what, figure = say::value(w, f.what, f.value)))
        .collect();
    let place = match (club.job, club.state) {
        (Some(job), Some(state)) => {
            let href = match state {
                JobState::Finished => format!("/records/{job}"),
                JobState::Planned => format!("/bench/{job}"),
                _ => format!("/plan/{job}"),
            };
            html! { a href=(href) { (text!(w, "recall-in-job", job = job)) } " " span.small { (w.tell(&state)) } }
        }
        _ => html! { (w.text("recall-never-in-job")) },
    };
    vec![
        Cell(
            html! { label.pick { input type="checkbox" name="club" value=(club.key) checked[ticked]; span.hidden { (text!(w, "club-life-pick", club = club.key)) } } },
        ),
        Cell(html! { a href=(href) { (w.tell(&club.name)) } " " span.small { (club.key) } div { (place) }
        @for mark in &club.marks { div { (tag(Tone::Care, &mark.word)) } } }),
        Cell(match club.customer {
            Some(number) => html! { a href={ "/customers/" (number) } { (club.player) } },
            None => html! { (club.player) },
        }),
        Cell(html! { @for reach in &club.reaches { div { (w.tell(reach)) } }
        @if !read.is_empty() { div.small { (text!(w, "recall-last-read", read = read)) } } }),
    ]
}

fn player_row(w: &Words, player: &RecalledPlayer) -> Vec<Cell> {
    let or_dash = |text: &str| Cell::from(if text.is_empty() { "–" } else { text });
    vec![
        Cell(match player.customer {
            Some(number) => {
                html! { a href={ "/customers/" (number) } { (player.player) } " " span.small { (customer::code(number)) } }
            }
            None => html! { (player.player) },
        }),
        or_dash(&player.phone),
        or_dash(&player.email),
        or_dash(&player.address),
        Cell::from(w.list(&player.clubs)),
    ]
}

async fn mark(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let recall = asked(&w, &mut form);
    let clubs = Some(form.all("club").map(str::to_owned).collect());
    let request = MarkClubs { recall, word: form.text("word").to_owned(), clubs, by };
    match app.mark_clubs(&request).await {
        Ok(_) => Ok(go_on("/marks", Done::Marked)),
        Err(error) => {
            form.set("picked", "1");
            recall_page(&w, &app, form, Some(error)).await
        }
    }
}

/// Whom to write to, as a file.
async fn addresses(
    State(app): State<App>,
    Reader(w): Reader,
    Query(pairs): Query<Vec<(String, String)>>,
) -> PageResult {
    let recall = asked(&w, &mut Entries::new(pairs));
    Ok(csv_file(ADDRESSES, app.recall(&recall).await?.addresses_csv()).into_response())
}

/// All marks that stand.
async fn marks(State(app): State<App>, Reader(w): Reader) -> PageResult {
    marks_page(&w, &app, None).await
}

async fn marks_page(w: &Words, app: &App, refused: Option<AppError>) -> PageResult {
    let marks = app.marks(false).await?;
    let status = refused.as_ref().map_or(StatusCode::OK, failure_status);
    let notice: Option<Notice> = refused.as_ref().map(|error| failure(w, error));
    let row = |view: &MarkView| {
        let mark = &view.mark;
        let href = club_link(mark.code.as_ref().map(ClubCode::as_str), view.job, view.slot);
        vec![
            Cell(
                html! { a href=(href) { (text!(w, "club-life-of", club = w.tell(&view.name), player = view.player)) } " "
                span.small { @if let Some(code) = &mark.code { (code) } @else if let Some(job) = view.job { (text!(w, "recall-in-job", job = job)) } } },
            ),
            Cell::from(if view.handed_over { w.text("mark-with-player") } else { w.text("mark-in-shop") }),
            Cell(
                html! { (mark.word) div.small { (text!(w, "mark-from", of = mark.of, by = mark.by, at_at = mark.at)) } },
            ),
            Cell(clear_form(w, mark, "/marks")),
        ]
    };
    let body = html! {
        div.actions.no-print { (link_button("/recall", &w.text("recall-page"), ButtonKind::Quiet, None, "")) }
        @if marks.is_empty() {
            (empty_state(&w.text("mark-none"), &w.text("mark-none-next"), &[]))
        } @else {
            (words_cards(
                &w.text("mark-page"),
                ["club", "where", "word", "clear"].iter().map(|id| Column::words(w.text(&format!("mark-column-{id}")))).collect(),
                marks.iter().map(row).collect(),
            ))
        }
    };
    let crumb = text!(w, "mark-count", n = marks.len());
    let title = w.text("mark-page");
    let page = framed(w, app, Framed { title: &title, active: Nav::Records, crumb, notice, body, ..Framed::default() });
    Ok((status, page.await?).into_response())
}

/// One line and one touch: what was found, by whoever is at this tablet.
fn clear_form(w: &Words, mark: &ClubMark, back: &str) -> Markup {
    let name = format!("found-{}", mark.id);
    html! {
        form.inline.no-print method="post" action={ "/marks/" (mark.id) "/clear" } {
            (hidden("back", back))
            label.hidden for=(name) { (w.text("mark-found")) }
            div.actions {
                input #(name) name="word" required minlength="3" maxlength="300" placeholder=(w.text("mark-found")) autocomplete="off";
                (button(&Button { label: &w.text("mark-clear"), kind: ButtonKind::Quiet, ..Button::default() }))
            }
        }
    }
}

/// The marks of a club, each with its one touch; those that were cleared with what was found.
pub(super) fn marks_part<'m>(w: &Words, marks: impl Iterator<Item = &'m ClubMark>, back: &str) -> Markup {
    html! { @for mark in marks {
        div.notice.(if mark.cleared.is_some() { "good" } else { "care" }) role="status" {
            (icon(if mark.cleared.is_some() { Icon::Tick } else { Icon::Caution }))
            div {
                p { strong { (mark.word) } " " span.small { (text!(w, "mark-from", of = mark.of, by = mark.by, at_at = mark.at)) } }
                @match &mark.cleared {
                    Some(cleared) => p.small { (text!(w, "mark-cleared", found = cleared.word, by = cleared.by, at_at = cleared.at)) },
                    None => (clear_form(w, mark, back)),
                }
            }
        }
    } }
}

async fn clear(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(id): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let form = Entries::new(fields);
    // Back to the page of the shop that the touch was on, and to no other.
    let back = Some(form.text("back")).filter(|to| ["/bench/", "/clubs/"].iter().any(|root| to.starts_with(root)));
    match app.clear_mark(&id, &ClearMark { word: form.text("word").to_owned(), by }).await {
        Ok(_) => Ok(go_on(back.unwrap_or("/marks"), Done::MarkCleared)),
        Err(error) => marks_page(&w, &app, Some(error)).await,
    }
}
