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
use words::Words;

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
            (link_button("/api/v1/needs/export", "Export CSV", ButtonKind::Quiet, Some(Icon::Export), ""))
        }
        @if needs.is_empty() {
            (empty_state("No part is in stock, and no sheet asks for any.", "Write a sheet, or weigh parts in.",
                &[Action { href: "/sheets/new", label: "New sheet", primary: true }]))
        } @else {
            @if short.is_empty() {
                p { (tag(Tone::Good, "enough")) " Every open job and every sheet finds its parts by count. Whether their masses suit, the plan says." }
            } @else { (section("Short", &html! {}, &rows_table(&w, "What is short", &short, &library))) }
            @for kind in PartKind::ALL {
                @let rows: Vec<&Need> = needs.iter().filter(|n| n.kind == *kind && n.short == 0).collect();
                @if !rows.is_empty() {
                    details open[short.is_empty()] {
                        summary { (super::entries::capital(kind.word())) "s that are enough (" (rows.len()) ")" }
                        (rows_table(&w, &format!("{}s that are enough", kind.word()), &rows, &library))
                    }
                }
            }
            p.small { "Counted by model and number: jobs that have no parts yet, the earliest due first, then sheets that are not approved. A head that is not weighed cannot be planned." }
        }
    };
    let crumb = if short.is_empty() { "nothing is short".to_owned() } else { format!("{} short", short.len()) };
    Ok(framed(&w, &app, Framed { title: "Needed and short", active: Nav::Stock, crumb, body, ..Framed::default() })
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
        let not_weighed = if n.not_weighed > 0 { format!(", {} not weighed", n.not_weighed) } else { String::new() };
        let or_dash = |n: i64| Cell::from(if n == 0 { "–".to_owned() } else { n.to_string() });
        vec![
            Cell(html! { a href=(parts) { (name) " " (number) } }),
            Cell(html! { (n.free) span.small { (not_weighed) } }),
            or_dash(n.held),
            or_dash(n.on_order),
            or_dash(n.needed_by_jobs),
            or_dash(n.needed_by_sheets),
            Cell(html! { @if n.short > 0 { strong { (n.short) } } @else { "–" } }),
            Cell(html! {
                @if n.to_order > 0 { a.button.quiet href=(order) { "Order " (n.to_order) } }
                @else if n.short > 0 { (tag(Tone::Care, "ordered")) }
                @for job in &n.jobs_short { " " a href={ "/plan/" (job.job) } { "job " (job.job) } }
            }),
        ]
    };
    table(&Table {
        caption,
        columns: vec![
            Column::words("what"),
            Column::figures("free"),
            Column::figures("held"),
            Column::figures("on order"),
            Column::figures("for jobs"),
            Column::figures("for sheets"),
            Column::figures("short"),
            Column::words("to do"),
        ],
        rows: rows.iter().map(row).collect(),
        cards: true,
        ..Table::default()
    })
}
