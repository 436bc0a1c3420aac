//! The calendar: what is due, what cures until when, what is expected; the file of it, and an address that a telephone's own
//! calendar fetches.

use super::entries::Entries;
use super::keys::given_page;
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::access::{CALENDAR, CALENDAR_KEY, Visitor};
use crate::door::Door;
use crate::file::calendar_file;
use crate::reader::Reader;
use app::App;
use app::access::{GiveProgramKey, GivenKey};
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use axum::{Extension, Router};
use desk::calendar::CalendarEntry;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Icon, Nav, Notice, Table, button, empty_state, link_button,
    qr_code, section, table,
};
use maud::{Markup, html};
use trade::access::{Deed, KeyRole, MOST_DAYS};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/calendar", get(show)).route("/keys/calendar", post(give_address)).route(CALENDAR, get(feed))
}

async fn feed(
    State(app): State<App>,
    Reader(w): Reader,
    Extension(door): Extension<Door>,
) -> Result<impl IntoResponse, super::PageError> {
    Ok(calendar_file(app.calendar_file(&w, door.address.as_deref()).await?))
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Extension(door): Extension<Door>,
    visitor: Option<Extension<Visitor>>,
) -> PageResult {
    let owner = visitor.is_none_or(|Extension(visitor)| visitor.role().may(Deed::Own));
    calendar_page(&w, &app, &door, owner, &Entries::default(), None, StatusCode::OK).await
}

async fn calendar_page(
    w: &Words,
    app: &App,
    door: &Door,
    owner: bool,
    form: &Entries,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let entries = app.calendar().await?;
    let body = html! {
        div.actions.no-print { (link_button(CALENDAR, &w.text("calendar-save"), ButtonKind::Quiet, Some(Icon::Export), "")) }
        @if entries.is_empty() {
            (empty_state(&w.text("calendar-empty"), &w.text("calendar-empty-next"),
                &[Action { href: "/", label: &w.text("page-today"), primary: true }]))
        } @else { (entry_table(w, &entries)) }
        div.no-print {
            (section(&w.text("calendar-subscribe"), &html! {}, &html! {
                p { (w.text("calendar-subscribe-about")) }
                @if !owner { p.hint { (w.text("calendar-owner-only")) } }
                @else if door.address.is_none() { p.caution { (w.text("keys-only-here")) } }
                @else {
                    form.card method="post" action="/keys/calendar" {
                        div.fields { (form.field("name", &w.text("calendar-whose"), Field { hint: &w.text("calendar-whose-hint"), required: true, ..Field::default() })) }
                        div.actions { (button(&Button { label: &w.text("calendar-give"), ..Button::default() })) }
                    }
                }
            }))
        }
    };
    let title = w.text("calendar-title");
    let crumb = text!(w, "calendar-count", n = entries.len());
    let framing = Framed { title: &title, active: Nav::Today, crumb, notice, body, ..Framed::default() };
    let page = framed(w, app, framing).await?;
    Ok((status, page).into_response())
}

fn entry_table(w: &Words, entries: &[CalendarEntry]) -> Markup {
    let row = |entry: &CalendarEntry| {
        let when = match (entry.on, entry.at) {
            (Some(on), _) => text!(w, "calendar-day", weekday = w.weekday(on), day = w.date(on)),
            (None, Some(at)) => {
                let day = w.day_of(at);
                text!(w, "calendar-time", weekday = w.weekday(day), day = w.date(day), time = w.clock(at))
            }
            (None, None) => String::new(),
        };
        vec![Cell::from(when), Cell(html! { a href=(entry.page) { (w.sentence(&entry.what)) } })]
    };
    table(&Table {
        caption: &w.text("calendar-title"),
        columns: ["calendar-when", "calendar-what"].map(|id| Column::words(w.text(id))).to_vec(),
        rows: entries.iter().map(row).collect(),
        cards: true,
        ..Table::default()
    })
}

async fn give_address(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Extension(door): Extension<Door>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let form = Entries::new(fields);
    let wanted = GiveProgramKey { name: form.text("name").to_owned(), role: KeyRole::Calendar, days: MOST_DAYS, by };
    match app.give_program_key(&wanted).await {
        Ok(given) => address_page(&w, &app, &door, &given).await,
        Err(error) => {
            let (notice, status) = (Some(failure(&w, &error)), failure_status(&error));
            calendar_page(&w, &app, &door, true, &form, notice, status).await
        }
    }
}

async fn address_page(w: &Words, app: &App, door: &Door, given: &GivenKey) -> PageResult {
    let root = door.address.as_deref().unwrap_or_default();
    let address = format!("{root}{CALENDAR}?{CALENDAR_KEY}={}", given.secret);
    let card = html! {
        p { (text!(w, "calendar-address-for", name = given.key.name.clone())) }
        p.door-secret { code { (address) } }
        div.door-picture role="img" aria-label=(w.text("calendar-address-picture")) { (qr_code(&address)) }
        p.hint { (w.text("calendar-address-once")) }
    };
    given_page(w, app, "calendar-subscribe", StatusCode::CREATED, &card).await
}
