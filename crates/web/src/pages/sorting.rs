//! Parts sorted by weight: classes on the screen and on paper, with the tray.

use super::entries::{Entries, query};
use super::orders::{StockPlace, model_select, stock_places};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::reader::Reader;
use app::App;
use app::sorting::{SortRequest, USUAL_WIDTH_G};
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
use words::{Words, text};

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
    let number = request.number.as_deref().map(|number| w.club_number(number)).unwrap_or_default();
    let what = format!("{name} {number}").trim().to_owned();
    let body = html! {
        div.no-print { (stock_places(&w, StockPlace::Sort)) }
        @if models.is_empty() {
            (empty_state(&w.text("order-no-models"), &w.text("weight-class-no-models-next"),
                &[Action { href: "/stock/models/new?kind=head", label: &w.text("order-new-head-model"), primary: true }]))
        } @else { (choose(&w, &form, &models)) }
        @if let Some(sorting) = &sorted { (sorted_part(&w, &form, sorting, &what)) }
    };
    let crumb = sorted.as_ref().map_or_else(String::new, |s| text!(w, "weight-class-crumb", what = what, n = s.count));
    let title = w.text("weight-class-page");
    let page = framed(&w, &app, Framed { title: &title, active: Nav::Stock, crumb, notice, body, ..Framed::default() });
    Ok((status, page.await?).into_response())
}

fn choose(w: &Words, form: &Entries, models: &[Model]) -> Markup {
    html! {
        form.card method="get" action="/stock/sort" {
            div.fields {
                (model_select(w, form, models))
                (form.field("number", &w.text("weight-class-number"), Field { hint: &w.text("weight-class-number-hint"), ..Field::default() }))
                (form.field("width", &w.text("weight-class-width"), Field { unit: w.mass_sign(), inputmode: "decimal", hint: &text!(w, "weight-class-width-hint", usual_g = USUAL_WIDTH_G), ..Field::default() }))
                (form.field("classes", &w.text("weight-class-classes"), Field { inputmode: "numeric", ..Field::default() }))
                (form.field("columns", &w.text("weight-class-columns"), Field { inputmode: "numeric", placeholder: "6", ..Field::default() }))
            }
            div.actions { (button(&Button { label: &w.text("weight-class-sort"), ..Button::default() })) }
        }
    }
}

fn sorted_part(w: &Words, form: &Entries, sorting: &Sorting, what: &str) -> Markup {
    if sorting.count == 0 {
        return html! {
            (empty_state(&text!(w, "weight-class-none", what = what), &w.text("weight-class-none-next"),
                &[Action { href: "/stock/new", label: &w.text("weight-class-weigh-in"), primary: true }]))
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
            Figure { label: &w.text("weight-class-parts"), value: &count, note: "" },
            Figure { label: &w.text("weight-class-mean"), value: &mean, note: "" },
            Figure { label: &w.text("weight-class-scatter"), value: &sd, note: &w.text("weight-class-scatter-note") },
        ]))
        div.actions {
            (link_button(&export, &w.text("order-export"), ButtonKind::Quiet, Some(Icon::Export), ""))
        }
        p.hint.no-print { (w.text("weight-class-print")) }
        (section(&w.text("weight-class-list"), &html! {}, &classes_table(w, sorting)))
        (not_weighed(w, sorting))
        (section(&w.text("weight-class-tray"), &html! { span.hint { (text!(w, "weight-class-tray-hint", rows = sorting.tray_rows, columns = sorting.tray_columns)) } }, &tray(w, sorting)))
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
                Cell::from(text!(w, "order-window", from_g = class.from_g, to_g = class.to_g)),
                Cell(html! { span.class-count { (class.parts.len()) } " " svg.class-bar width=(share) aria-hidden="true" {} }),
                Cell(html! { span.class-codes { (codes.join(" ")) } }),
            ]
        })
        .collect();
    table(&Table {
        caption: &w.text("weight-class-caption"),
        columns: ["class", "masses", "parts", "codes"]
            .map(|column| Column::words(w.text(&format!("weight-class-column-{column}"))))
            .to_vec(),
        rows,
        cards: true,
        ..Table::default()
    })
}

fn not_weighed(w: &Words, sorting: &Sorting) -> Markup {
    html! { @if !sorting.not_weighed.is_empty() { p { (look::rich!(w, "weight-class-not-weighed", |_: &str, inner: &str| html! { strong { (inner) } }, codes = sorting.not_weighed.join(", "))) } } }
}

/// The tray as it is laid: a row of places after the other.
fn tray(w: &Words, sorting: &Sorting) -> Markup {
    let placed: Vec<(&str, &Sorted)> =
        sorting.classes.iter().flat_map(|c| c.parts.iter().map(|p| (c.name.as_str(), p))).collect();
    html! {
        div.table-wrap.tray-wrap tabindex="0" role="region" aria-label=(w.text("weight-class-tray")) {
            table.tray {
                caption.hidden { (w.text("weight-class-tray-caption")) }
                thead { tr { th scope="col" { (w.text("weight-class-row")) } @for column in 1..=sorting.tray_columns { th scope="col" { (column) } } } }
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
