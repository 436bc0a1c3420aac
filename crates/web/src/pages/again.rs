//! The same again: clubs as they were built, what differs today, a new sheet of them.

use super::entries::{Entries, go_to, in_address, query, words_cards};
use super::{Framed, PageResult, failure, failure_status, framed, say};
use crate::reader::Reader;
use app::same_again::{Again, SameAgain, SheetAgain};
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use desk::same_again::AgainClub;
use look::{Button, ButtonKind, Cell, Column, Field, Nav, button, check, hidden, link_button};
use maud::{Markup, html};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/again", get(show).post(make))
}

fn asked(form: &Entries) -> Again {
    Again {
        clubs: form.all("club").map(str::to_owned).collect(),
        job: form.text("job").parse().ok(),
        customer: form.text("customer").parse().ok(),
        as_others: form.has("as_others", "1"),
    }
}

/// The way to the page for a club, a job or a customer.
pub(super) fn again_link(w: &Words, name: &str, value: &str) -> Markup {
    link_button(&format!("/again{}", query(&[(name, value)])), &w.text("again-button"), ButtonKind::Quiet, None, "")
}

async fn show(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    page(&w, &app, &Entries::new(pairs), None).await
}

async fn page(w: &Words, app: &App, form: &Entries, refused: Option<AppError>) -> PageResult {
    let ask = asked(form);
    let found = match app.same_again(&ask).await {
        Ok(found) => Ok(found),
        // The others are too few: the page is that of the club itself, with what was refused above it.
        Err(error) if ask.as_others => {
            let own = app.same_again(&Again { as_others: false, ..ask.clone() }).await?;
            return body(w, app, form, &own, Some(refused.unwrap_or(error))).await;
        }
        Err(error) => Err(error),
    }?;
    body(w, app, form, &found, refused).await
}

async fn body(w: &Words, app: &App, form: &Entries, found: &SameAgain, refused: Option<AppError>) -> PageResult {
    let status = match &refused {
        Some(error) => failure_status(error),
        None if form.is_sound() => StatusCode::OK,
        None => StatusCode::UNPROCESSABLE_ENTITY,
    };
    let notice = refused.as_ref().map(|error| failure(w, error)).or_else(|| form.notice(w));
    let content = html! {
        p { (w.text("again-means")) }
        (words_cards(
            &w.text("again-page"),
            ["club", "asks", "says"].iter().map(|id| Column::words(w.text(&format!("again-column-{id}")))).collect(),
            found.clubs.iter().map(|club| row(w, club)).collect(),
        ))
        @if let Some(others) = &found.others {
            p { (w.text("again-others")) " "
                (w.list(&others.targets.iter().map(|t| format!("{} {}", w.tell(&t.what), say::forecast(w, t.what, t.value, t.band))).collect::<Vec<_>>())) }
        }
        form.card.no-print method="post" action="/again" data-keep="" {
            @for code in form.all("club") { (hidden("club", code)) }
            @for name in ["job", "customer"] { @if !form.text(name).is_empty() { (hidden(name, form.text(name))) } }
            div.fields { (form.field("due", &w.text("again-due"), Field { kind: "date", required: true, ..Field::default() })) }
            @if found.others.is_some() { (check("as_others", "1", &w.text("again-as-others-check"), form.has("as_others", "1"))) }
            div.actions { (button(&Button { label: &w.text("again-make"), big: true, ..Button::default() })) }
        }
    };
    let title = w.text("again-page");
    let crumb = found.player.clone();
    let view = Framed { title: &title, active: Nav::Sheets, crumb, notice, body: content, ..Framed::default() };
    Ok((status, framed(w, app, view).await?).into_response())
}

fn row(w: &Words, club: &AgainClub) -> Vec<Cell> {
    let row = &club.row;
    vec![
        Cell(
            html! { a href={ "/clubs/" (in_address(club.like.as_str())) } { (w.tell(&row.name())) } " " span.small { (club.like) } },
        ),
        Cell::from(asks(w, club)),
        Cell(html! { @for says in &club.says { div { (w.tell(says)) } } @if club.says.is_empty() { "–" } }),
    ]
}

fn asks(w: &Words, club: &AgainClub) -> String {
    let row = &club.row;
    text!(
        w,
        "again-asks",
        swing_weight_points = row.swing_weight_points,
        length_mm = row.length_mm,
        loft_deg = row.loft_deg,
        lie_deg = row.lie_deg
    )
}

async fn make(State(app): State<App>, Reader(w): Reader, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(fields);
    let due = form.date(&w, "due");
    let Some(due) = form.needed("due", due, &w.text("club-job-due-needed")).filter(|_| form.is_sound()) else {
        return page(&w, &app, &form, None).await;
    };
    let again = asked(&form);
    let like: Vec<String> = match app.same_again(&again).await {
        Ok(found) => found.clubs.iter().map(|club| club.like.0.clone()).collect(),
        Err(error) => return page(&w, &app, &form, Some(error)).await,
    };
    let note = text!(w, "again-note", clubs = like);
    match app.sheet_again(&SheetAgain { again, due, note }).await {
        Ok(saved) => Ok(go_to(&format!("/sheets/{}", in_address(saved.id.as_str()))).into_response()),
        Err(error) => page(&w, &app, &form, Some(error)).await,
    }
}
