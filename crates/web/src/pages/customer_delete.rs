//! Deleting a customer on request: first what goes, what stays and what backups hold; done once the name is typed.

use super::customers::sheet_places;
use super::entries::Entries;
use super::{Framed, PageResult, Who, beside, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use app::customer::{DeleteCustomer, Deletion};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use look::{Action, Button, ButtonKind, Field, Nav, Tone, actions, button, section, tag};
use maud::{Markup, html};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/customers/{number}/delete", get(look).post(delete))
}

async fn look(State(app): State<App>, Reader(w): Reader, Path(number): Path<i64>) -> PageResult {
    ask(&w, &app, number, &Entries::default(), StatusCode::OK).await
}

async fn ask(w: &Words, app: &App, number: i64, form: &Entries, status: StatusCode) -> PageResult {
    let view = app.customer(number).await?;
    let deletion = app.deletion(number).await?;
    let here = format!("/customers/{number}");
    let body = html! {
        (sheet_places(w, "/customers"))
        p { (text!(w, "customer-delete-who", name = view.customer.name, code = view.code)) }
        (what_happens(w, &deletion))
        @if !deletion.parts_here.is_empty() {
            p { (tag(Tone::Bad, &w.text("customer-delete-not-yet"))) " " (text!(w, "customer-parts-here", n = deletion.parts_here.len(), codes = deletion.parts_here.clone())) }
        }
        @if deletion.under_way.is_empty() && deletion.parts_here.is_empty() {
            form.card method="post" action={ (here) "/delete" } {
                (form.field("name", &text!(w, "customer-delete-type", name = view.customer.name), Field { required: true, ..Field::default() }))
                div.actions { (button(&Button { label: &w.text("customer-delete-now"), kind: ButtonKind::Danger, ..Button::default() })) }
            }
        } @else if !deletion.under_way.is_empty() {
            p { (tag(Tone::Bad, &w.text("customer-delete-not-yet"))) " " (text!(w, "customer-delete-under-way", n = deletion.under_way.len(), jobs = deletion.under_way.clone())) }
        }
        (actions(&[Action { href: &here, label: &w.text("button-back"), primary: false }]))
    };
    let title = w.text("customer-delete-title");
    let crumb = view.code.clone();
    let page = framed(w, app, Framed { title: &title, active: Nav::Sheets, crumb, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

/// What goes, what stays, and what the shop must see to itself.
fn what_happens(w: &Words, deletion: &Deletion) -> Markup {
    let part = |title: &str, lines: Vec<String>| {
        section(&w.text(title), &html! {}, &html! { ul { @for line in lines { li { (line) } } } })
    };
    html! {
        (part("customer-goes", deletion.goes(w)))
        (part("customer-stays", deletion.stays(w)))
    }
}

async fn delete(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(number): Path<i64>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let done = app.delete_customer(number, &DeleteCustomer { name: form.raw("name").to_owned(), by }).await;
    let deletion = match done {
        Ok(deletion) => deletion,
        Err(error) => {
            form.refuse("name", beside(&w, &error.refusal()));
            return ask(&w, &app, number, &form, failure_status(&error)).await;
        }
    };
    let body = html! {
        (sheet_places(&w, "/customers"))
        p { (tag(Tone::Good, &w.text("customer-deleted-tag"))) " " (text!(w, "customer-deleted", code = deletion.code)) }
        (what_happens(&w, &deletion))
        (actions(&[Action { href: "/customers", label: &w.text("customer-all"), primary: true }]))
    };
    let title = w.text("customer-deleted-title");
    Ok(framed(&w, &app, Framed { title: &title, active: Nav::Sheets, body, ..Framed::default() })
        .await?
        .into_response())
}
