//! One field for everything: what a scanner or a hand typed, and where it leads.

use super::entries::{Entries, go_to, in_address, query};
use super::{Framed, PageResult, framed};
use crate::reader::Reader;
use app::App;
use app::find::Found;
use axum::Router;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use look::{Action, Icon, Nav, empty_state};
use maud::{Markup, html};
use trade::job::JobState;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/scan", get(find))
}

/// The field: a hand scanner types into it, or a hand a name, a job, a code, a lot, an order.
pub(super) fn find_form(w: &Words, typed: &str, autofocus: bool) -> Markup {
    html! {
        form.search.scan role="search" method="get" action="/scan" {
            label.hidden for="scan" { (w.text("today-scan")) }
            input #scan name="code" value=(typed) placeholder=(w.text("today-scan-example")) autocomplete="off" autocapitalize="off" spellcheck="false" autofocus[autofocus];
            button.button.quiet type="submit" { (look::icon(Icon::Scan)) span { (w.text("today-scan-open")) } }
        }
    }
}

async fn find(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let asked = Entries::new(pairs);
    let typed = asked.text("code");
    let near = app.find_near(typed).await?;
    let found = near.found;
    // What was not typed is offered and never opened by itself: a scan with a slip must not lead to another club.
    if let ([only], None) = (found.as_slice(), &near.meant) {
        return Ok(go_to(&address(only)).into_response());
    }
    let nothing_typed = typed.trim().is_empty();
    let status = if found.is_empty() && !nothing_typed { StatusCode::NOT_FOUND } else { StatusCode::OK };
    let body = html! {
        (find_form(&w, typed, nothing_typed))
        @if nothing_typed { p { (w.text("find-empty")) } } @else if found.is_empty() {
            (empty_state(&text!(w, "find-nothing", text = typed), &w.text("find-nothing-next"),
                &[Action { href: "/", label: &w.text("page-today"), primary: false }]))
        } @else {
            @if let Some(meant) = &near.meant { p { (text!(w, "find-meant", text = typed, meant = meant)) } }
            ul.plain.readings { @for one in &found { li { a href=(address(one)) { (one.words(&w)) } } } }
        }
    };
    let crumb = if found.is_empty() { String::new() } else { text!(w, "find-count", n = found.len()) };
    let title = if nothing_typed { w.text("find-page") } else { text!(w, "find-title", text = typed) };
    let page = framed(&w, &app, Framed { title: &title, active: Nav::Today, crumb, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

/// Where it is shown.
fn address(found: &Found) -> String {
    match found {
        Found::Customer { number, .. } => format!("/customers/{number}"),
        Found::Job { number, state: JobState::Finished, .. } => format!("/records/{number}"),
        Found::Job { number, state: JobState::Planned, .. } => format!("/bench/{number}"),
        Found::Job { number, .. } => format!("/plan/{number}"),
        Found::Sheet { id, .. } => format!("/sheets/{}", in_address(id.as_str())),
        Found::Club { job, slot } => format!("/bench/{job}/{slot}"),
        Found::OwnedClub { code, .. } => format!("/clubs/{}", in_address(code)),
        Found::Part { code, .. } => format!("/stock/parts/{}", in_address(code)),
        Found::Parts { text, .. } => format!("/stock{}", query(&[("text", text)])),
        Found::Lot { lot, .. } | Found::Batch { lot, .. } => format!("/recall{}", query(&[("lot", lot)])),
        Found::Order { number } => format!("/orders/{number}"),
        Found::Model { code, .. } => format!("/stock/models/{}", in_address(code)),
        Found::Note { club: Some(code), .. } => format!("/clubs/{}", in_address(code)),
        Found::Note { job: Some(job), slot: Some(slot), .. } => format!("/bench/{job}/{slot}"),
        Found::Note { job: Some(job), .. } => format!("/records/{job}"),
        Found::Note { .. } => "/marks".to_owned(),
    }
}
