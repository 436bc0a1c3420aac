//! Every list of the shop as a file, on one page.

use super::entries::Entries;
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::file::csv_file;
use crate::reader::Reader;
use app::App;
use app::export::ReadingsOf;
use axum::Router;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use look::{Button, ButtonKind, Field, Icon, Notice, button, link_button};
use maud::html;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new().route("/exports", get(show)).route("/exports/readings", get(readings))
}

/// The lists that need no further word: where each is, and its text.
const LISTS: [(&str, &str); 9] = [
    ("/api/v1/clubs/export", "export-clubs"),
    ("/api/v1/jobs/export", "export-jobs"),
    ("/api/v1/records/export", "export-records"),
    ("/api/v1/orders/export", "export-orders"),
    ("/api/v1/needs/export", "export-needs"),
    ("/api/v1/parts/export", "export-parts"),
    ("/api/v1/parts/export.xlsx", "export-parts-book"),
    ("/stock/models/export", "export-models"),
    (crate::access::CALENDAR, "export-calendar"),
];

async fn show(State(app): State<App>, Reader(w): Reader) -> PageResult {
    exports_page(&w, &app, &Entries::default(), None, StatusCode::OK).await
}

/// Days as they are typed here may be left empty.
async fn readings(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(pairs);
    let of = ReadingsOf { from: form.date(&w, "from"), to: form.date(&w, "to"), job: None };
    if !form.is_sound() {
        return exports_page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    match app.export_readings(&of).await {
        Ok(text) => Ok(csv_file("readings", text).into_response()),
        Err(error) => exports_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

async fn exports_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let day = |name: &str, label: &str| form.field(name, &w.text(label), Field { kind: "date", ..Field::default() });
    let body = html! {
        p { (w.text("export-about")) }
        ul.plain.readings {
            @for (href, id) in LISTS {
                li { span { (w.text(id)) } (link_button(href, &w.text("export-save"), ButtonKind::Quiet, Some(Icon::Export), "")) }
            }
        }
        form.card method="get" action="/exports/readings" {
            h2 { (w.text("export-readings")) }
            p.hint { (w.text("export-readings-about")) }
            div.fields { (day("from", "export-from")) (day("to", "export-to")) }
            div.actions { (button(&Button { label: &w.text("export-save"), kind: ButtonKind::Quiet, ..Button::default() })) }
        }
        p.hint { (w.text("export-one-customer")) }
    };
    let title = w.text("export-title");
    let notice = form.notice(w).or(notice);
    let page =
        framed(w, app, Framed { title: &title, notice, body, help: Some("programs"), ..Framed::default() }).await?;
    Ok((status, page).into_response())
}
