//! What the shop's instruments are held against, and its other gauges.

use super::beside_its_entry;
use super::entries::{Entries, capital, go_to};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::reader::Reader;
use app::App;
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use look::{Button, ButtonKind, Field, Notice, Tone, button, hidden, link_button, section, tag};
use maud::{Markup, html};
use trade::gauge::Gauge;
use trade::gauge::Measures;
use trade::gauge::Standard;
use trade::gauge::parse_value;
use trade::gauge::print_error;
use trade::gauge::print_value;
use trade::shop::Shop;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/scales/setup", get(show))
        .route("/scales/setup/weight", post(keep_weight))
        .route("/scales/setup/gauge", post(keep_gauge))
        .route("/scales/setup/remove", post(remove))
}

async fn show(State(app): State<App>, Reader(w): Reader) -> PageResult {
    page(&w, &app, &Entries::default(), None, StatusCode::OK).await
}

async fn page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let shop = app.shop().await?;
    let gauges = shop.instruments();
    let scales: Vec<(&str, &str)> = gauges.iter().map(|g| (g.key.as_str(), g.name.as_str())).collect();
    let measures: Vec<(&str, &str)> = Measures::ALL.iter().map(|m| (m.key(), m.word())).collect();
    let of = form.text("form").to_owned();
    let body = html! {
        (section("What they are held against", &html! {}, &html! {
            ul.plain.readings { @for gauge in &gauges { @for standard in shop.standards_of(&gauge.key) {
                li { (weight_words(w, gauge, &standard))
                    @if shop.standards.iter().any(|s| s.key == standard.key) { (remove_form(w, "weight", &standard.key)) }
                    @else { (link_button("/shop", "Change under Shop", ButtonKind::Quiet, None, "")) } }
            } } }
            details open[of == "weight" || shop.standards.is_empty()] { summary { "Another check weight or check club" }
            form.card method="post" action="/scales/setup/weight" {
                (hidden("form", "weight"))
                div.fields {
                    (form.field("name", "Called", Field { required: true, hint: "For example: 200 g weight; or the check club", ..Field::default() }))
                    (form.select("scale", "For the", "", &scales))
                    (form.field("value", "Should show", Field { required: true, hint: "With its unit where it is not the scale's own: 200.003, 7.05 oz, D1.4", ..Field::default() }))
                    (form.field("sd", "Known to", Field { required: true, inputmode: "decimal", hint: "One standard deviation, in the scale's unit: half of what the certificate gives with k = 2", ..Field::default() }))
                    (form.field("tolerance", "May be off by", Field { inputmode: "decimal", hint: "In the scale's unit. Empty: what the scale's own figures allow", ..Field::default() }))
                    (form.field("certified_on", "Certified on", Field { kind: "date", ..Field::default() }))
                    (form.field("certificate", "Certificate", Field { hint: "Number, by whom; or how the swing weight was assigned", ..Field::default() }))
                    (form.field("mass_g", "Mass of a check club", Field { unit: "g", inputmode: "decimal", ..Field::default() }))
                }
                div.actions { (button(&Button { label: "Keep it", ..Button::default() })) }
            }
            }
        }))
        (section("Other gauges", &html! {}, &html! {
            ul.plain.readings { @for gauge in &shop.gauges {
                li { span { strong { (capital(&gauge.name)) } ": " (gauge.measures.word()) ", step " (print_error(gauge, gauge.display_step)) ", scatters by " (print_error(gauge, gauge.noise_sd)) }
                    (remove_form(w, "gauge", &gauge.key)) }
            } }
            details open[of == "gauge"] { summary { "Another gauge: frequency, loft and lie, length" }
                form.card method="post" action="/scales/setup/gauge" {
                    (hidden("form", "gauge"))
                    div.fields {
                        (form.field("gauge_name", "Called", Field { required: true, hint: "For example: frequency gauge", ..Field::default() }))
                        (form.select("measures", "It measures", "", &measures))
                        (form.field("display_step", "Step of its display", Field { required: true, inputmode: "decimal", hint: "In cpm, degrees or mm", ..Field::default() }))
                        (form.field("noise_sd", "Scatter", Field { required: true, inputmode: "decimal", hint: "One re-seated reading, one standard deviation; a gauge study finds it", ..Field::default() }))
                    }
                    div.actions { (button(&Button { label: "Keep it", ..Button::default() })) }
                }
            }
        }))
        div.actions { (link_button("/scales", "Scales", ButtonKind::Quiet, None, "")) }
    };
    let view = Framed {
        title: "Weights and gauges",
        crumb: "scales".into(),
        notice: form.notice(w).or(notice),
        body,
        ..Framed::default()
    };
    Ok((status, framed(w, app, view).await?).into_response())
}

fn weight_words(w: &Words, gauge: &Gauge, standard: &Standard) -> Markup {
    html! {
        span {
            strong { (standard.name) } " " (tag(Tone::Plain, &gauge.name)) " "
            (print_value(gauge, standard.value)) ", known to " (print_error(gauge, standard.sd))
            span.small {
                ", may be off by " (print_error(gauge, standard.tolerance_on(gauge)))
                @if let Some(on) = standard.certified_on { ", certified " (w.date(on)) }
                @if !standard.certificate.is_empty() { ", " (standard.certificate) }
            }
        }
    }
}

fn remove_form(w: &Words, what: &str, key: &str) -> Markup {
    html! {
        form.inline method="post" action="/scales/setup/remove" {
            (hidden(what, key)) (button(&Button { label: "Take it away", kind: ButtonKind::Quiet, ..Button::default() }))
        }
    }
}

/// A key made of the name that no other has: small letters, digits, dashes.
fn key_of(name: &str, taken: &[String]) -> String {
    let key: String = name.to_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
    let key = Some(key.trim_matches('-').to_owned()).filter(|k| !k.is_empty()).unwrap_or_else(|| "gauge".into());
    let mut numbered = (2..).map(|n| format!("{key}-{n}"));
    let free = |k: &String| !taken.contains(k);
    Some(key.clone()).filter(free).or_else(|| numbered.find(free)).unwrap_or(key)
}

async fn answered(w: &Words, app: &App, mut form: Entries, shop: &Shop) -> PageResult {
    if !form.is_sound() {
        return page(w, app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    match app.save_shop(shop).await {
        Ok(()) => Ok(go_to("/scales/setup").into_response()),
        Err(error) => {
            // The shop names a figure by the key of its owner; here it stands in a form of its own.
            let named = error.field().and_then(|f| f.rsplit('.').next()).map(str::to_owned);
            if let Some(field) = named.filter(|f| form.pairs().iter().any(|(k, _)| k == f)) {
                form.refuse(&field, beside_its_entry(w, &error.refusal()));
            }
            page(w, app, &form, Some(failure(w, &error)), failure_status(&error)).await
        }
    }
}

async fn keep_weight(State(app): State<App>, Reader(w): Reader, Form(sent): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(sent);
    let mut shop = app.shop().await?;
    let gauge = shop.instrument(form.text("scale")).map_err(app::AppError::from)?;
    let name = form.some("name");
    let name = form.needed("name", name, "Give it a name").unwrap_or_default();
    let value = match parse_value(gauge.measures, form.text("value")) {
        Ok(value) => value,
        Err(error) => {
            form.refuse("value", beside_its_entry(&w, &error.refusal()));
            0.0
        }
    };
    let sd = form.number(&w, "sd");
    let sd = form.needed("sd", sd, "Say how surely it is known").unwrap_or_default();
    let tolerance = form.number(&w, "tolerance");
    let certified_on = form.date(&w, "certified_on");
    let mass_g = form.mass_g(&w, "mass_g");
    let taken: Vec<String> = shop.standards.iter().map(|s| s.key.clone()).chain(["check_weight".to_owned()]).collect();
    let standard = Standard {
        key: key_of(&name, &taken),
        name,
        scale: gauge.key,
        value,
        sd,
        certified_on,
        certificate: form.text("certificate").to_owned(),
        tolerance,
        mass_g,
    };
    shop.standards.push(standard);
    answered(&w, &app, form, &shop).await
}

async fn keep_gauge(State(app): State<App>, Reader(w): Reader, Form(sent): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(sent);
    let mut shop = app.shop().await?;
    let name = form.some("gauge_name");
    let name = form.needed("gauge_name", name, "Give it a name").unwrap_or_default();
    let mut number = |name: &str| {
        let value = form.number(&w, name);
        form.needed(name, value, "Fill this in").unwrap_or_default()
    };
    let (display_step, noise_sd) = (number("display_step"), number("noise_sd"));
    // The last two are pages beside those of the scales.
    let pages = ["setup".to_owned(), "studies".to_owned()];
    let taken: Vec<String> = shop.instruments().into_iter().map(|g| g.key).chain(pages).collect();
    let measures = Measures::from_key(form.text("measures")).unwrap_or(Measures::Frequency);
    let key = key_of(&name, &taken);
    shop.gauges.push(Gauge { key, name, measures, display_step, noise_sd, offset_sd: 0.0 });
    answered(&w, &app, form, &shop).await
}

async fn remove(State(app): State<App>, Reader(w): Reader, Form(sent): Form<Vec<(String, String)>>) -> PageResult {
    let form = Entries::new(sent);
    let mut shop = app.shop().await?;
    if let Some(key) = form.some("weight") {
        shop.standards.retain(|s| s.key != key);
    }
    if let Some(key) = form.some("gauge") {
        shop.gauges.retain(|g| g.key != key);
        shop.standards.retain(|s| s.scale != key);
    }
    answered(&w, &app, form, &shop).await
}
