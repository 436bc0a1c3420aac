//! How stiff a shaft is along its length: its readings at several clamp lengths, the line that they tell, its model's beside it.

use super::entries::{Entries, go_to, in_address, plain, words_table};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use app::stiffness_profile::{ReadShaft, StiffnessOfShaft, said};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use look::calc_pictures::{ProfilePlace, ProfileView, profile};
use look::{Button, ButtonKind, Cell, Column, Field, Icon, Nav, Notice, button, caution, link_button, section};
use maud::{Markup, html};
use trade::stiffness_profile::StiffnessReading;
use words::{Words, text};

/// Lines of the form: more clamp lengths than are worth their while.
const LINES: usize = 8;
/// Those that stand open from the first.
const FIRST: usize = 4;

pub(super) fn router() -> Router<App> {
    Router::new().route("/stock/parts/{code}/profile", get(show).post(keep))
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(code): Path<String>) -> PageResult {
    let found = app.shaft_stiffness(&code).await?;
    let clamp = app.shop().await?.clamp;
    let mut form = Entries::new(Vec::new());
    let readings: Vec<StiffnessReading> = found.stiffness.readings.iter().map(|one| one.reading).collect();
    let first = readings.first();
    if let Some(weight_g) = first.map(|read| read.weight_g).or(clamp.test_weight_g) {
        form.set("weight", w.mass_figure(weight_g));
    }
    let beyond_mm = first.map_or(clamp.test_weight_centre_mm, |read| read.weight_beyond_tip_mm);
    form.set("beyond", super::entries::typed_length(&w, beyond_mm));
    for (i, read) in readings.iter().enumerate() {
        form.set(&format!("held{i}"), super::entries::typed_length(&w, read.held_mm));
        if let Some(cpm) = read.cpm {
            form.set(&format!("cpm{i}"), plain(cpm));
        }
        if let Some(mm) = read.deflection_mm {
            form.set(&format!("deflection{i}"), super::entries::typed_length(&w, mm));
        }
    }
    page(&w, &app, &code, &form, Some(&found), None, StatusCode::OK).await
}

async fn keep(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(code): Path<String>,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(sent);
    let deed = form.text("deed").to_owned();
    let readings = if deed == "take_back" { Some(Vec::new()) } else { readings_of(&w, &mut form) };
    let Some(readings) = readings.filter(|_| form.is_sound()) else {
        let notice = form.notice(&w);
        return page(&w, &app, &code, &form, None, notice, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let look = deed == "look";
    match app.read_shaft(&code, &ReadShaft { readings, look, request_key: None, by }).await {
        Ok(found) if look => page(&w, &app, &code, &form, Some(&found), None, StatusCode::OK).await,
        Ok(_) => Ok(go_to(&format!("/stock/parts/{}/profile", in_address(&code))).into_response()),
        Err(error) => {
            let (notice, status) = (failure(&w, &error), failure_status(&error));
            page(&w, &app, &code, &form, None, Some(notice), status).await
        }
    }
}

/// The readings of the form; an empty line is left out, and a reading without its clamp length is asked for it.
fn readings_of(w: &Words, form: &mut Entries) -> Option<Vec<StiffnessReading>> {
    let weight_g = form.mass_g(w, "weight");
    let weight_g = form.needed("weight", weight_g, &w.text("profile-weight"))?;
    let weight_beyond_tip_mm = form.length_mm(w, "beyond").unwrap_or(0.0);
    let mut readings = Vec::new();
    for i in 0..LINES {
        let held_mm = form.length_mm(w, &format!("held{i}"));
        let cpm = form.cpm(w, &format!("cpm{i}"));
        let deflection_mm = form.length_mm(w, &format!("deflection{i}"));
        let held_mm = if cpm.or(deflection_mm).is_some() && form.text(&format!("held{i}")).is_empty() {
            form.needed(&format!("held{i}"), held_mm, &text!(w, "profile-held-missing", n = i + 1))
        } else {
            held_mm
        };
        if let Some(held_mm) = held_mm {
            readings.push(StiffnessReading { held_mm, weight_g, weight_beyond_tip_mm, cpm, deflection_mm });
        }
    }
    Some(readings)
}

async fn page(
    w: &Words,
    app: &App,
    code: &str,
    form: &Entries,
    found: Option<&StiffnessOfShaft>,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let back = format!("/stock/parts/{}", in_address(code));
    let body = html! {
        @if let Some(found) = found {
            (picture(w, found))
            @for line in said(w, found) { p { (line) } }
            @if let (Some(by), Some(at)) = (&found.by, found.at) {
                p.hint { (text!(w, "profile-read-by", by = by.as_str(), at = w.moment(at))) }
            }
        }
        (readings_form(w, form, code))
        @if let Some(found) = found { (table(w, found)) }
        div.actions { (link_button(&back, &w.text("part-life-see"), ButtonKind::Quiet, Some(Icon::Back), "")) }
    };
    let title = text!(w, "profile-page", code = code);
    let view = Framed { title: &title, active: Nav::Stock, notice, sheets: &["calc.css"], body, ..Framed::default() };
    Ok((status, framed(w, app, view).await?).into_response())
}

fn picture(w: &Words, found: &StiffnessOfShaft) -> Markup {
    let of = |value: f64, percent: f64| (value, value * percent / 100.0);
    let place = |row: &bench::stiffness_profile::StiffnessAt| ProfilePlace {
        from_tip_mm: row.from_tip_mm,
        own: of(row.stiffness_n_m2, row.band_percent),
        model: of(row.model_n_m2, row.model_band_percent),
    };
    let read = !found.stiffness.readings.is_empty();
    profile(w, &ProfileView { places: found.stiffness.rows.iter().map(place).collect(), read })
}

fn readings_form(w: &Words, form: &Entries, code: &str) -> Markup {
    let length = || Field { unit: w.length_sign(), ..Field::default() };
    let line = |i: usize| {
        html! {
            div.fields {
                (form.field(&format!("held{i}"), &text!(w, "profile-held", n = i + 1), length()))
                (form.field(&format!("cpm{i}"), &w.text("profile-cpm"), Field { unit: "cpm", inputmode: "decimal", ..Field::default() }))
                (form.field(&format!("deflection{i}"), &w.text("profile-deflection"), length()))
            }
        }
    };
    html! {
        form.card method="post" action={ "/stock/parts/" (in_address(code)) "/profile" } {
            p.hint { (w.text("profile-about")) }
            (caution(&w.text("profile-caution")))
            div.fields {
                (form.field("weight", &w.text("profile-weight"), Field { unit: w.mass_sign(), hint: &w.text("profile-weight-hint"), inputmode: "decimal", ..Field::default() }))
                (form.field("beyond", &w.text("profile-place"), Field { hint: &w.text("profile-place-hint"), ..length() }))
            }
            @for i in 0..FIRST { (line(i)) }
            details open[(FIRST..LINES).any(|i| !form.text(&format!("held{i}")).is_empty() || !form.text(&format!("cpm{i}")).is_empty())] {
                summary { (w.text("profile-more")) }
                @for i in FIRST..LINES { (line(i)) }
            }
            div.actions {
                (button(&Button { label: &w.text("profile-keep"), name: "deed", value: "keep", ..Button::default() }))
                (button(&Button { label: &w.text("profile-look"), name: "deed", value: "look", kind: ButtonKind::Quiet, ..Button::default() }))
                (button(&Button { label: &w.text("profile-take-back"), name: "deed", value: "take_back", kind: ButtonKind::Quiet, ..Button::default() }))
            }
        }
    }
}

fn table(w: &Words, found: &StiffnessOfShaft) -> Markup {
    let figure = |value: f64| format!("{} N·m²", w.printed(&quantity::decimal(value, 1)));
    let percent = |value: f64| format!("{} %", w.printed(&quantity::decimal(value, 1)));
    let columns = ["place-column", "stiffness-column", "band-column", "model-column", "band-column"];
    let row = |row: &bench::stiffness_profile::StiffnessAt| {
        vec![
            Cell::from(w.length_to(row.from_tip_mm, 1)),
            Cell::from(figure(row.stiffness_n_m2)),
            Cell::from(percent(row.band_percent)),
            Cell::from(figure(row.model_n_m2)),
            Cell::from(percent(row.model_band_percent)),
        ]
    };
    let columns = columns.iter().map(|name| Column::figures(w.text(&format!("profile-{name}")))).collect();
    let title = w.text("profile-open");
    section(&title, &html! {}, &words_table(&title, columns, found.stiffness.rows.iter().map(row).collect()))
}
