//! Which head masses to ask a supplier for, for the clubs of a job or sheet or for a single one.

use super::entries::{Entries, query};
use super::orders::{StockPlace, stock_places};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::reader::Reader;
use crate::units;
use app::App;
use app::sorting::AskRequest;
use axum::Router;
use axum::extract::{Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use desk::ask::AskClub;
use desk::ask::HeadAsk;
use desk::ask::Supply;
use desk::ask::SupplyFrom;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Nav, Notice, Table, button, empty_state, link_button, section,
    table, titled_card,
};
use maud::{Markup, html};
use trade::job::JobState;
use trade::kind::LengthTo;
use trade::model::Library;
use trade::model::Model;
use trade::model::PartKind;
use trade::reading::Unit;
use trade::wrap::Wraps;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/stock/ask", get(show))
}

async fn show(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(pairs);
    let library: Library = app.models(None).await?.into_iter().collect();
    let request = request(&w, &mut form, &library);
    let asked = request.job.is_some() || request.sheet_id.is_some() || !request.clubs.is_empty();
    let (mut status, mut notice) = (StatusCode::OK, form.notice(&w));
    let mut asks = Vec::new();
    if !form.is_sound() {
        status = StatusCode::UNPROCESSABLE_ENTITY;
        notice = notice.map(|n| Notice { next: w.text("ask-still-here"), ..n });
    } else if asked {
        match app.ask_heads(&request).await {
            Ok(found) => asks = found,
            Err(error) => (status, notice) = (failure_status(&error), Some(failure(&w, &error))),
        }
    }
    let jobs = app.job_names(&JobState::UNDER_WAY).await?;
    let sheets: Vec<_> = app.sheets().await?.into_iter().filter(|s| s.job.is_none()).collect();
    let body = html! {
        (stock_places(&w, StockPlace::Ask))
        @if !asks.is_empty() { (asks_part(&w, &asks, &library)) }
        @if jobs.is_empty() && sheets.is_empty() && library.of_kind(PartKind::Head).next().is_none() {
            (empty_state(&w.text("ask-nothing"), &w.text("ask-nothing-next"),
                &[Action { href: "/stock/models/new?kind=head", label: &w.text("order-new-head-model"), primary: true }]))
        } @else {
            @if !jobs.is_empty() || !sheets.is_empty() {
                (section(&w.text("ask-for-job"), &html! {}, &html! { div.actions {
                    @for job in &jobs { (link_button(&format!("/stock/ask?job={}", job.number), &text!(w, "plan-job", job = job.number, player = job.player), ButtonKind::Quiet, None, "")) }
                    @for sheet in &sheets { (link_button(&format!("/stock/ask{}", query(&[("sheet", sheet.id.as_str())])), &text!(w, "ask-sheet", player = sheet.player), ButtonKind::Quiet, None, "")) }
                } }))
            }
            (titled_card(&w.text("ask-for-club"), &club_form(&w, &form, &library)))
        }
    };
    let crumb = if asks.is_empty() { String::new() } else { text!(w, "ask-count", n = asks.len()) };
    let title = w.text("ask-page");
    let page = framed(&w, &app, Framed { title: &title, active: Nav::Stock, crumb, notice, body, ..Framed::default() });
    Ok((status, page.await?).into_response())
}

/// What is asked, from the address; mistakes stand beside their fields.
fn request(w: &Words, form: &mut Entries, library: &Library) -> AskRequest {
    let mut request = AskRequest {
        job: form.count(w, "job"),
        sheet_id: form.some("sheet"),
        cap_g: form.mass_g(w, "cap"),
        within_points: form.number(w, "within").unwrap_or(0.0),
        ..AskRequest::default()
    };
    let Some(head_model) = form.some("head") else { return request };
    let (length_mm, swing_weight) = (form.length_mm(w, "length"), form.swing_weight_points(w, "swing_weight"));
    let number = form.some("number");
    let number = form.needed("number", number, &w.text("ask-number-needed"));
    let length_mm = form.needed("length", length_mm, &w.text("ask-length-needed"));
    let swing_weight_points = form.needed("swing_weight", swing_weight, &w.text("ask-swing-weight-needed"));
    let (mean_g, sd_g) = (form.mass_g(w, "mean"), form.mass_g(w, "scatter"));
    if mean_g.is_some() != sd_g.is_some() {
        form.refuse(if mean_g.is_some() { "scatter" } else { "mean" }, w.text("ask-mean-and-scatter"));
    }
    let (Some(number), Some(length_mm), Some(swing_weight_points)) = (number, length_mm, swing_weight_points) else {
        return request;
    };
    if let (Some(mean_g), Some(sd_g)) = (mean_g, sd_g) {
        request.supply.push(Supply { head_model: head_model.clone(), number: number.clone(), mean_g, sd_g });
    }
    let length_to = if form.text("length_to") == "shaft_end" { LengthTo::ShaftEnd } else { LengthTo::Cap };
    let full = form.count(w, "wraps").and_then(|n| u8::try_from(n).ok()).unwrap_or(1);
    request.clubs.push(AskClub {
        head_model,
        number,
        shaft_model: form.text("shaft").to_owned(),
        grip_model: form.text("grip").to_owned(),
        ferrule_model: form.some("ferrule").filter(|code| library.ferrule(code).is_ok()),
        adhesive: None,
        tape: None,
        length_mm,
        length_to,
        swing_weight_points,
        wraps: Wraps { base: 1, full, lower_hand: 0 },
    });
    request
}

fn club_form(w: &Words, form: &Entries, library: &Library) -> Markup {
    let of = |kind| library.of_kind(kind).map(|m: &Model| (m.code(), m.name())).collect::<Vec<_>>();
    let none = w.text("ask-no-ferrule");
    let mut ferrules = vec![("", none.as_str())];
    ferrules.extend(of(PartKind::Ferrule));
    let mass = Field { unit: w.mass_sign(), inputmode: "decimal", ..Field::default() };
    html! {
        form method="get" action="/stock/ask" {
            div.fields {
                (form.select("head", &w.text("ask-field-head"), "", &of(PartKind::Head)))
                (form.field("number", &w.text("ask-field-number"), Field { placeholder: "7", ..Field::default() }))
                (form.select("shaft", &w.text("ask-field-shaft"), "", &of(PartKind::Shaft)))
                (form.select("grip", &w.text("ask-field-grip"), "", &of(PartKind::Grip)))
                (form.select("ferrule", &w.text("ask-field-ferrule"), "", &ferrules))
                (form.field("length", &w.text("ask-field-length"), Field { unit: w.length_sign(), placeholder: units::example(w, "37 1/4", "946", Unit::Millimetre), ..Field::default() }))
                (form.select("length_to", &w.text("ask-field-length-to"), "", &[("cap", w.tell(&LengthTo::Cap)), ("shaft_end", w.tell(&LengthTo::ShaftEnd))]))
                (form.field("swing_weight", &w.text("ask-field-swing-weight"), Field { placeholder: "D2", ..Field::default() }))
                (form.field("wraps", &w.text("ask-field-wraps"), Field { inputmode: "numeric", placeholder: "1", ..Field::default() }))
                (form.field("mean", &w.text("ask-field-mean"), Field { hint: &w.text("ask-field-mean-hint"), ..mass }))
                (form.field("scatter", &w.text("ask-field-scatter"), Field { hint: &w.text("ask-field-scatter-hint"), ..mass }))
                (form.field("cap", &w.text("ask-field-cap"), Field { hint: &w.text("ask-field-cap-hint"), ..mass }))
                (form.field("within", &w.text("ask-field-within"), Field { hint: &w.text("ask-field-within-hint"), inputmode: "decimal", ..Field::default() }))
            }
            div.actions { (button(&Button { label: &w.text("ask-find"), ..Button::default() })) }
        }
    }
}

fn percent(w: &Words, share: f64) -> String {
    if share > 0.995 {
        w.text("ask-nearly-all")
    } else if share < 0.005 {
        w.text("ask-hardly-any")
    } else {
        text!(w, "ask-share", inside_share = share)
    }
}

fn asks_part(w: &Words, asks: &[HeadAsk], library: &Library) -> Markup {
    let row = |a: &HeadAsk| {
        let name = library.get(&a.head_model).map_or(a.head_model.as_str(), Model::name);
        let from = match a.supply_from {
            SupplyFrom::Stated => "ask-from-supplier",
            SupplyFrom::Stock => "ask-from-stock",
            SupplyFrom::Model => "ask-from-model",
        };
        let order = query(&[
            ("model", a.head_model.as_str()),
            ("number", &a.number),
            ("count", &a.order_for_one.unwrap_or(1).to_string()),
            ("from", &w.mass_figure((a.from_g * 10.0).ceil() / 10.0)),
            ("to", &w.mass_figure((a.to_g * 10.0).floor() / 10.0)),
        ]);
        vec![
            Cell::from(format!("{name} {}", w.club_number(&a.number))),
            Cell(html! { (w.length_to(a.length_mm, 2)) ", " (w.swing_weight(a.swing_weight_points)) }),
            Cell(html! { strong { (text!(w, "order-window", from_g = a.from_g, to_g = a.to_g)) } }),
            Cell(
                html! { (text!(w, "ask-mean-scatter", mean_g = a.mean_g, scatter_g = a.sd_g)) br; span.small { (w.text(from)) } },
            ),
            Cell(html! {
                (percent(w, a.inside)) br;
                span.small { (text!(w, "ask-any-shaft", share = percent(w, a.inside_any_shaft))) }
            }),
            Cell(html! { @match a.order_for_one {
                Some(count) => { a.button.quiet href={ "/orders/new" (order) } { (text!(w, "need-order", n = count)) } }
                None => { (w.text("ask-hopeless")) }
            } }),
        ]
    };
    let grips = asks.iter().map(|a| a.grips).min().unwrap_or(0);
    let columns = ["head", "club", "masses", "supply", "inside", "order"];
    section(
        &w.text("ask-page"),
        &html! {},
        &html! {
            (table(&Table {
                caption: &w.text("ask-caption"),
                columns: columns.map(|column| Column::words(w.text(&format!("ask-column-{column}")))).to_vec(),
                rows: asks.iter().map(row).collect(),
                cards: true,
                ..Table::default()
            }))
            p.small {
                (text!(w, "ask-hint-window", cap_g = asks.first().map_or(0.0, |a| a.cap_g))) " "
                @if grips == 0 { (w.text("ask-hint-no-grip")) " " }
                (w.text("ask-hint-chance"))
            }
        },
    )
}
