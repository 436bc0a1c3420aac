//! Parts sorted by weight: classes on the screen and on paper, with the tray.

use super::entries::{Entries, counted, query};
use super::orders::{StockPlace, model_select, stock_places};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::reader::Reader;
use app::App;
use app::sorting::SortRequest;
use axum::Router;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use desk::weight_class::Sorted;
use desk::weight_class::Sorting;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Figure, Icon, Nav, Table, button, empty_state, figures,
    link_button, section, table,
};
use maud::{Markup, html};
use trade::model::Model;
use trade::model::PartKind;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new().route("/stock/sort", get(show))
}

async fn show(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(pairs);
    let models: Vec<Model> = app
        .models(None)
        .await?
        .into_iter()
        .filter(|m| matches!(m.kind(), PartKind::Head | PartKind::Shaft | PartKind::Grip))
        .collect();
    let (width_g, classes, columns) = (form.mass_g(&w, "width"), form.count(&w, "classes"), form.count(&w, "columns"));
    let whole = |n: Option<i64>| n.map(|n| usize::try_from(n).unwrap_or(usize::MAX));
    let request = SortRequest {
        model: form.text("model").to_owned(),
        number: form.some("number"),
        state: None,
        width_g,
        classes: whole(classes),
        columns: whole(columns),
    };
    let asked = !request.model.is_empty();
    let sorted = if asked && form.is_sound() { Some(app.sort_parts(&request).await) } else { None };
    let (mut status, mut notice) = (StatusCode::OK, form.notice(&w));
    if !form.is_sound() {
        status = StatusCode::UNPROCESSABLE_ENTITY;
    }
    if let Some(Err(error)) = &sorted {
        (status, notice) = (failure_status(error), Some(failure(&w, error)));
    }
    let sorted = sorted.and_then(Result::ok);
    let name = models.iter().find(|m| m.code() == request.model).map_or(request.model.as_str(), Model::name);
    let what = format!("{name} {}", request.number.as_deref().unwrap_or_default()).trim().to_owned();
    let body = html! {
        div.no-print { (stock_places(&w, StockPlace::Sort)) }
        @if models.is_empty() {
            (empty_state("There are no models yet.", "Parts that are sorted are of a model: add that first.",
                &[Action { href: "/stock/models/new?kind=head", label: "New head model", primary: true }]))
        } @else { (choose(&w, &form, &models)) }
        @if let Some(sorting) = &sorted { (sorted_part(&w, &form, sorting, &what)) }
    };
    let crumb = sorted.as_ref().map_or_else(String::new, |s| format!("{what}, {}", counted(s.count, "part")));
    let page = framed(
        &w,
        &app,
        Framed { title: "Sort by weight", active: Nav::Stock, crumb, notice, body, ..Framed::default() },
    );
    Ok((status, page.await?).into_response())
}

fn choose(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    html! {
        form.card method="get" action="/stock/sort" {
            div.fields {
                (model_select(w, form, models))
                (form.field("number", "Number", Field { hint: "Empty: all of the model", ..Field::default() }))
                (form.field("width", "Width of a class", Field { unit: w.mass_sign(), inputmode: "decimal", hint: "Empty: 1 g", ..Field::default() }))
                (form.field("classes", "Or so many classes", Field { inputmode: "numeric", ..Field::default() }))
                (form.field("columns", "Places in a row of the tray", Field { inputmode: "numeric", placeholder: "6", ..Field::default() }))
            }
            div.actions { (button(&Button { label: "Sort", ..Button::default() })) }
        }
    }
}

fn sorted_part(w: &Words, form: &Entries, sorting: &Sorting, what: &str) -> Markup {
    if sorting.count == 0 {
        return html! {
            (empty_state(&format!("No free, weighed part of {what} is in stock."), "Weigh them in, or choose another number.",
                &[Action { href: "/stock/new", label: "Weigh in", primary: true }]))
            (not_weighed(w, sorting))
        };
    }
    let (count, mean, sd) = (sorting.count.to_string(), w.mass(sorting.mean_g), w.mass(sorting.sd_g));
    let asked = ["model", "number", "classes", "columns"].map(|n| (n, form.text(n)));
    // The export speaks in grams, whoever asks.
    let width_g = form.clone().mass_g(w, "width").map(super::entries::plain).unwrap_or_default();
    let export = format!("/api/v1/parts/sorted/export{}", query(&[&asked[..], &[("width_g", &width_g)]].concat()));
    html! {
        (figures(&[
            Figure { label: "parts", value: &count, note: "" },
            Figure { label: "mean", value: &mean, note: "" },
            Figure { label: "scatter", value: &sd, note: "one standard deviation" },
        ]))
        div.actions {
            (link_button(&export, "Export CSV", ButtonKind::Quiet, Some(Icon::Export), ""))
        }
        p.hint.no-print { "Print this page: the classes with their codes, then the tray as it is laid." }
        (section("Classes", &html! {}, &classes_table(w, sorting)))
        (not_weighed(w, sorting))
        (section("Tray", &html! { span.hint { (sorting.tray_rows) " rows of " (sorting.tray_columns) ", the lightest first; each class begins a row" } }, &tray(w, sorting)))
    }
}

fn classes_table(w: &Words, sorting: &Sorting) -> Markup {
    let most = sorting.classes.iter().map(|c| c.parts.len()).max().unwrap_or(1).max(1);
    let rows = sorting
        .classes
        .iter()
        .map(|class| {
            let codes: Vec<&str> = class.parts.iter().map(|p| p.code.as_str()).collect();
            let share = 100 * class.parts.len() / most;
            vec![
                Cell::from(class.name.clone()),
                Cell::from(format!("{} to {}", w.mass_figure(class.from_g), w.mass(class.to_g))),
                Cell(html! { span.class-count { (class.parts.len()) } " " svg.class-bar width=(share) aria-hidden="true" {} }),
                Cell(html! { span.class-codes { (codes.join(" ")) } }),
            ]
        })
        .collect();
    table(&Table {
        caption: "Classes of weight",
        columns: ["class", "masses", "parts", "codes"].map(Column::words).to_vec(),
        rows,
        cards: true,
        ..Table::default()
    })
}

fn not_weighed(w: &Words, sorting: &Sorting) -> Markup {
    html! { @if !sorting.not_weighed.is_empty() { p { strong { "Not weighed, so not sorted: " } (sorting.not_weighed.join(", ")) } } }
}

/// The tray as it is laid: a row of places after the other.
fn tray(w: &Words, sorting: &Sorting) -> Markup {
    let placed: Vec<(&str, &Sorted)> =
        sorting.classes.iter().flat_map(|c| c.parts.iter().map(|p| (c.name.as_str(), p))).collect();
    html! {
        div.table-wrap.tray-wrap tabindex="0" role="region" aria-label="The tray" {
            table.tray {
                caption.hidden { "The tray, row by row" }
                thead { tr { th scope="col" { "row" } @for column in 1..=sorting.tray_columns { th scope="col" { (column) } } } }
                tbody {
                    @for row in 1..=sorting.tray_rows {
                        @let here: Vec<&(&str, &Sorted)> = placed.iter().filter(|(_, p)| p.row == row).collect();
                        tr {
                            th scope="row" { (row) " " span.tray-class { (here.first().map_or("", |(name, _)| name)) } }
                            @for column in 1..=sorting.tray_columns {
                                @let part = here.iter().find(|(_, p)| p.column == column);
                                td { @if let Some((_, part)) = part { strong { (part.code) } span.small { (w.mass(part.mass_g)) } } }
                            }
                        }
                    }
                }
            }
        }
    }
}
