//! Usual models: to look through and to keep some, with where each figure comes from.

use super::entries::{Entries, go_on, in_address, words_cards};
use super::model_shape::figure_label;
use super::models::summary;
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::reader::Reader;
use crate::tablet::Done;
use app::App;
use app::usual::{KeepUsual, UsualView};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use look::{Button, ButtonKind, Cell, Column, Nav, Notice, Tone, button, check, link_button, section, tag};
use maud::html;
use std::collections::BTreeMap;
use trade::model::PartKind;
use trade::model::usual::UsualSource;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/stock/models/usual", get(list).post(keep))
}

async fn list(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    usual_page(&w, &app, &Entries::new(pairs), None, StatusCode::OK).await
}

async fn keep(State(app): State<App>, Reader(w): Reader, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let form = Entries::new(fields);
    let codes: Vec<String> = form.all("code").map(str::to_owned).collect();
    if codes.is_empty() {
        let notice =
            Notice { tone: Tone::Care, text: w.text("usual-none-ticked"), next: w.text("usual-none-ticked-next") };
        return usual_page(&w, &app, &form, Some(notice), StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    match app.keep_usual(&KeepUsual { codes }, |name| w.tell(name)).await {
        Ok(_) => Ok(go_on("/stock/models", Done::Saved)),
        Err(error) => usual_page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

async fn usual_page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let usual = app.usual_models(None, |name| w.tell(name)).await?;
    let kinds: Vec<(PartKind, Vec<&UsualView>)> = PartKind::ALL
        .iter()
        .map(|kind| (*kind, usual.iter().filter(|view| view.kind == *kind).collect::<Vec<_>>()))
        .filter(|(_, views)| !views.is_empty())
        .collect();
    let body = html! {
        p { (w.text("usual-intro")) }
        form.usual method="post" action="/stock/models/usual" {
            @for (kind, views) in &kinds {
                (section(&text!(w, "model-of-kind", kind = *kind), &html! {}, &words_cards(
                    &text!(w, "model-of-kind", kind = *kind),
                    ["model-name", "model-what", "usual-sources"].map(|id| Column::words(w.text(id))).to_vec(),
                    views.iter().map(|view| row(w, form, view)).collect(),
                )))
            }
            div.actions {
                (button(&Button { label: &w.text("usual-keep"), ..Button::default() }))
                (link_button("/stock/models", &w.text("model-back"), ButtonKind::Quiet, None, ""))
            }
        }
    };
    let title = w.text("usual-title");
    let page = framed(w, app, Framed { title: &title, active: Nav::Stock, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

fn row(w: &Words, form: &Entries, view: &UsualView) -> Vec<Cell> {
    let name = w.told(&view.name);
    let what = summary(w, &view.model);
    vec![
        Cell(html! {
            @if view.kept {
                a href={ "/stock/models/" (in_address(&view.code)) } { (name) } " " (tag(Tone::Plain, &w.text("usual-there")))
            } @else { (check("code", &view.code, &name, form.has("code", &view.code))) }
        }),
        Cell(html! { (view.code) br; (what) }),
        Cell(html! {
            details { summary { (w.text("usual-sources-open")) }
                ul { @for (source, figures) in by_source(w, view) {
                    li { (w.tell(&source)) ": " (figures.join("; ")) }
                } }
            }
        }),
    ]
}

/// The figures by where they come from, each by its name on the form.
fn by_source(w: &Words, view: &UsualView) -> BTreeMap<UsualSource, Vec<String>> {
    let mut found: BTreeMap<UsualSource, Vec<String>> = BTreeMap::new();
    for (place, source) in &view.from {
        let label = figure_label(view.kind, place).map_or_else(|| place.clone(), |label| w.tell(&label));
        found.entry(*source).or_default().push(label);
    }
    found
}
