//! The stock against the sheets to come.

use super::entries::query;
use super::orders::{StockPlace, stock_places};
use super::{Framed, PageResult, framed};
use crate::reader::Reader;
use app::App;
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::get;
use desk::needs::Need;
use look::{Action, ButtonKind, Cell, Column, Icon, Nav, Table, Tone, empty_state, link_button, section, table, tag};
use maud::{Markup, html};
use trade::model::Library;
use trade::model::Model;
use trade::model::PartKind;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/stock/needs", get(show))
}

async fn show(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let needs = app.stock_needs().await?;
    let library: Library = app.models(None).await?.into_iter().collect();
    let short: Vec<&Need> = needs.iter().filter(|n| n.short > 0).collect();
    let body = html! {
        (stock_places(&w, StockPlace::Needs))
        div.actions {
            (link_button("/api/v1/needs/export", &w.text("need-export"), ButtonKind::Quiet, Some(Icon::Export), ""))
        }
        @if needs.is_empty() {
            (empty_state(&w.text("need-nothing"), &w.text("need-nothing-next"),
                &[Action { href: "/sheets/new", label: &w.text("need-new-sheet"), primary: true }]))
        } @else {
            @if short.is_empty() {
                p { (tag(Tone::Good, &w.text("need-enough"))) " " (w.text("need-enough-next")) }
            } @else { (section(&w.text("need-short"), &html! {}, &rows_table(&w, &w.text("need-short-caption"), &short, &library))) }
            @for kind in PartKind::ALL {
                @let rows: Vec<&Need> = needs.iter().filter(|n| n.kind == *kind && n.short == 0).collect();
                @if !rows.is_empty() {
                    details open[short.is_empty()] {
                        @let id = format!("need-enough-{}", kind.key().replace('_', "-"));
                        @let heading = w.text_with(&id, &[("n", words::figure(&rows.len()))]);
                        summary { (heading) }
                        (rows_table(&w, &heading, &rows, &library))
                    }
                }
            }
            p.small { (w.text("need-hint")) }
        }
    };
    let crumb =
        if short.is_empty() { w.text("need-none-short") } else { text!(w, "need-count-short", n = short.len()) };
    Ok(framed(&w, &app, Framed { title: &w.text("need-page"), active: Nav::Stock, crumb, body, ..Framed::default() })
        .await?
        .into_response())
}

fn rows_table(w: &Words, caption: &str, rows: &[&Need], library: &Library) -> Markup {
    let row = |n: &&Need| {
        let name = library.get(&n.model).map_or(n.model.as_str(), Model::name);
        let number = n.number.as_deref().unwrap_or_default();
        // All for one job where only one goes short; else they are ordered for the shelf.
        let job = match n.jobs_short.as_slice() {
            [only] if only.count == n.to_order => only.job.to_string(),
            _ => String::new(),
        };
        let order = format!(
            "/orders/new{}",
            query(&[("model", &n.model), ("number", number), ("count", &n.to_order.to_string()), ("job", &job)])
        );
        let parts = format!("/stock{}", query(&[("model", &n.model), ("number", number), ("state", "free")]));
        let not_weighed =
            if n.not_weighed > 0 { text!(w, "need-not-weighed", n = n.not_weighed) } else { String::new() };
        let or_dash = |n: i64| Cell::from(if n == 0 { "–".to_owned() } else { n.to_string() });
        vec![
            Cell(html! { a href=(parts) { (name) " " (w.club_number(number)) } }),
            Cell(html! { (n.free) span.small { (not_weighed) } }),
            or_dash(n.held),
            or_dash(n.on_order),
            or_dash(n.needed_by_jobs),
            or_dash(n.needed_by_sheets),
            Cell(html! { @if n.short > 0 { strong { (n.short) } } @else { "–" } }),
            Cell(html! {
                @if n.to_order > 0 { a.button.quiet href=(order) { (text!(w, "need-order", n = n.to_order)) } }
                @else if n.short > 0 { (tag(Tone::Care, &w.text("need-ordered"))) }
                @for job in &n.jobs_short { " " a href={ "/plan/" (job.job) } { (text!(w, "order-job", job = job.job)) } }
            }),
        ]
    };
    let figures = ["free", "held", "on-order", "for-jobs", "for-sheets", "short"];
    table(&Table {
        caption,
        columns: std::iter::once(Column::words(w.text("need-column-what")))
            .chain(figures.map(|column| Column::figures(w.text(&format!("need-column-{column}")))))
            .chain([Column::words(w.text("need-column-to-do"))])
            .collect(),
        rows: rows.iter().map(row).collect(),
        cards: true,
        ..Table::default()
    })
}
