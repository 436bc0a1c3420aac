//! Which head masses to ask a supplier for, for the clubs of a job or sheet or for a single one.

use super::entries::{Entries, counted, query};
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
use quantity::decimal;
use trade::job::JobState;
use trade::kind::LengthTo;
use trade::model::Library;
use trade::model::Model;
use trade::model::PartKind;
use trade::reading::Unit;
use trade::wrap::Wraps;
use words::Words;

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
        notice = notice.map(|n| Notice { next: "What you typed is still here. Look for the red marks.".into(), ..n });
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
            (empty_state("There is nothing to ask for yet.", "Add head, shaft and grip models, or write a sheet.",
                &[Action { href: "/stock/models/new?kind=head", label: "New head model", primary: true }]))
        } @else {
            @if !jobs.is_empty() || !sheets.is_empty() {
                (section("For a job or a sheet", &html! {}, &html! { div.actions {
                    @for job in &jobs { (link_button(&format!("/stock/ask?job={}", job.number), &format!("Job {} · {}", job.number, job.player), ButtonKind::Quiet, None, "")) }
                    @for sheet in &sheets { (link_button(&format!("/stock/ask{}", query(&[("sheet", sheet.id.as_str())])), &format!("{}, not approved", sheet.player), ButtonKind::Quiet, None, "")) }
                } }))
            }
            (titled_card("For one club", &club_form(&w, &form, &library)))
        }
    };
    let crumb = if asks.is_empty() { String::new() } else { counted(asks.len(), "club") };
    let page = framed(
        &w,
        &app,
        Framed { title: "Heads to ask for", active: Nav::Stock, crumb, notice, body, ..Framed::default() },
    );
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
    let number = form.needed("number", number, "Say which number, for example 7");
    let length_mm = form.needed("length", length_mm, "Say how long the club is, for example 37 1/4");
    let swing_weight_points = form.needed("swing_weight", swing_weight, "Say which swing weight, for example D2");
    let (mean_g, sd_g) = (form.mass_g(w, "mean"), form.mass_g(w, "scatter"));
    if mean_g.is_some() != sd_g.is_some() {
        form.refuse(if mean_g.is_some() { "scatter" } else { "mean" }, "Give the mean and the scatter, or neither");
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
    let mut ferrules = vec![("", "none")];
    ferrules.extend(of(PartKind::Ferrule));
    let mass = Field { unit: w.mass_sign(), inputmode: "decimal", ..Field::default() };
    html! {
        form method="get" action="/stock/ask" {
            div.fields {
                (form.select("head", "Head", "", &of(PartKind::Head)))
                (form.field("number", "Number", Field { placeholder: "7", ..Field::default() }))
                (form.select("shaft", "Shaft", "", &of(PartKind::Shaft)))
                (form.select("grip", "Grip", "", &of(PartKind::Grip)))
                (form.select("ferrule", "Ferrule", "", &ferrules))
                (form.field("length", "Length", Field { unit: w.length_sign(), placeholder: units::example(w, "37 1/4", "946", Unit::Millimetre), ..Field::default() }))
                (form.select("length_to", "Measured", "", &[("cap", "to the cap"), ("shaft_end", "to the shaft end")]))
                (form.field("swing_weight", "Swing weight", Field { placeholder: "D2", ..Field::default() }))
                (form.field("wraps", "Full wraps", Field { inputmode: "numeric", placeholder: "1", ..Field::default() }))
                (form.field("mean", "The supplier's mean", Field { hint: "Empty: from the stock or the model", ..mass }))
                (form.field("scatter", "The supplier's scatter", Field { hint: "One standard deviation", ..mass }))
                (form.field("cap", "Most in the tip", Field { hint: "Empty: the shop's own", ..mass }))
                (form.field("within", "May stay off by", Field { hint: "Points; empty: 0", inputmode: "decimal", ..Field::default() }))
            }
            div.actions { (button(&Button { label: "Which heads?", ..Button::default() })) }
        }
    }
}

fn percent(w: &Words, share: f64) -> String {
    if share > 0.995 {
        "over 99 %".into()
    } else if share < 0.005 {
        "under 1 %".into()
    } else {
        format!("{} %", decimal(100.0 * share, 0))
    }
}

fn asks_part(w: &Words, asks: &[HeadAsk], library: &Library) -> Markup {
    let row = |a: &HeadAsk| {
        let name = library.get(&a.head_model).map_or(a.head_model.as_str(), Model::name);
        let from = match a.supply_from {
            SupplyFrom::Stated => "as stated",
            SupplyFrom::Stock => "as weighed here",
            SupplyFrom::Model => "the model's",
        };
        let (low, high) = (w.mass_figure(a.from_g), w.mass(a.to_g));
        let order = query(&[
            ("model", a.head_model.as_str()),
            ("number", &a.number),
            ("count", &a.order_for_one.unwrap_or(1).to_string()),
            ("from", &w.mass_figure((a.from_g * 10.0).ceil() / 10.0)),
            ("to", &w.mass_figure((a.to_g * 10.0).floor() / 10.0)),
        ]);
        vec![
            Cell::from(format!("{name} {}", a.number)),
            Cell(html! { (w.length_to(a.length_mm, 2)) ", " (w.swing_weight(a.swing_weight_points)) }),
            Cell(html! { strong { (low) " to " (high) } }),
            Cell(html! { (w.mass_figure(a.mean_g)) " ± " (w.mass(a.sd_g)) br; span.small { (from) } }),
            Cell(
                html! { (percent(w, a.inside)) br; span.small { (percent(w, a.inside_any_shaft)) " with any shaft" } },
            ),
            Cell(html! { @match a.order_for_one {
                Some(count) => { a.button.quiet href={ "/orders/new" (order) } { "Order " (count) } }
                None => { "hopeless" }
            } }),
        ]
    };
    let grips = asks.iter().map(|a| a.grips).min().unwrap_or(0);
    section(
        "Ask for these",
        &html! {},
        &html! {
            (table(&Table {
                caption: "Head masses to ask for",
                columns: ["head", "club", "heads of", "those to be had", "will do", "for one that will do"]
                    .map(Column::words)
                    .to_vec(),
                rows: asks.iter().map(row).collect(),
                cards: true,
                ..Table::default()
            }))
            p.small {
                "The lightest head has the most in the tip, " (w.mass(asks.first().map_or(0.0, |a| a.cap_g)))
                ", and the lightest free grip; the heaviest has nothing there and the heaviest grip. "
                @if grips == 0 { "Where no grip of the model is in stock, its model's mass counts. " }
                "“Will do” is the chance of one of the heads to be had, with a shaft of the model's own mass and with the next shaft of the rack. So many as are to be ordered hold one that will do 95 times in 100."
            }
        },
    )
}
