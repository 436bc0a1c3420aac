//! What the shop's instruments are held against, and its other gauges.

use super::beside_its_entry;
use super::entries::{Entries, go_on};
use super::swing_inertia::pendulum_form;
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::reader::Reader;
use crate::tablet::Done;
use app::App;
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use look::{Button, ButtonKind, Field, Notice, Tone, button, hidden, link_button, rich, section, tag};
use maud::{Markup, html};
use trade::clamp::Clamp;
use trade::gauge::{Gauge, Measures, Standard, parse_value};
use trade::shop::Shop;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/scales/setup", get(show))
        .route("/scales/setup/weight", post(keep_weight))
        .route("/scales/setup/gauge", post(keep_gauge))
        .route("/scales/setup/clamp", post(keep_clamp))
        .route("/scales/setup/remove", post(remove))
}

async fn show(State(app): State<App>, Reader(w): Reader) -> PageResult {
    page(&w, &app, &Entries::default(), None, StatusCode::OK).await
}

async fn page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let shop = app.shop().await?;
    let gauges = shop.instruments();
    let scales: Vec<(&str, &str)> = gauges.iter().map(|g| (g.key.as_str(), g.name.as_str())).collect();
    let measures: Vec<(&str, String)> = Measures::ALL.iter().map(|m| (m.key(), w.tell(m))).collect();
    let of = form.text("form").to_owned();
    let body = html! {
        (section(&w.text("scale-setup-weights"), &html! {}, &html! {
            ul.plain.readings { @for gauge in &gauges { @for standard in shop.standards_of(&gauge.key) {
                li { (weight_words(w, gauge, &standard))
                    @if shop.standards.iter().any(|s| s.key == standard.key) { (remove_form(w, "weight", &standard.key)) }
                    @else { (link_button("/shop", &w.text("scale-setup-change"), ButtonKind::Quiet, None, "")) } }
            } } }
            details open[of == "weight" || shop.standards.is_empty()] { summary { (w.text("scale-setup-new-weight")) }
                (weight_form(w, form, &scales))
            }
        }))
        (section(&w.text("scale-setup-gauges"), &html! {}, &html! {
            ul.plain.readings { @for gauge in &shop.gauges {
                li { span { (rich!(w, "scale-setup-gauge", |_, inner| html! { strong { (inner) } }, gauge = gauge.name,
                        measures = gauge.measures, step = gauge.amount(gauge.display_step), scatter = gauge.amount(gauge.noise_sd))) }
                    (remove_form(w, "gauge", &gauge.key)) }
            } }
            details open[of == "gauge"] { summary { (w.text("scale-setup-new-gauge")) }
                form.card method="post" action="/scales/setup/gauge" {
                    (hidden("form", "gauge"))
                    div.fields {
                        (form.field("gauge_name", &w.text("scale-setup-name"), Field { required: true, hint: &w.text("scale-setup-gauge-hint"), ..Field::default() }))
                        (form.select("measures", &w.text("scale-setup-measures"), "", &measures))
                        (form.field("display_step", &w.text("scale-setup-step"), Field { required: true, inputmode: "decimal", hint: &w.text("scale-setup-step-hint"), ..Field::default() }))
                        (form.field("noise_sd", &w.text("scale-setup-scatter"), Field { required: true, inputmode: "decimal", hint: &w.text("scale-setup-scatter-hint"), ..Field::default() }))
                    }
                    div.actions { (button(&Button { label: &w.text("scale-setup-keep"), ..Button::default() })) }
                }
            }
        }))
        (section(&w.text("scale-setup-clamp"), &html! {}, &clamp_form(w, form, &shop)))
        (section(&w.text("pendulum-title"), &html! {}, &pendulum_form(w, form, &shop)))
        div.actions { (link_button("/scales", &w.text("scale-setup-back"), ButtonKind::Quiet, None, "")) }
    };
    let title = w.text("scale-setup-title");
    let notice = form.notice(w).or(notice);
    let view = Framed {
        title: &title,
        crumb: w.text("scale-setup-crumb"),
        notice,
        body,
        help: Some("scales"),
        ..Framed::default()
    };
    Ok((status, framed(w, app, view).await?).into_response())
}

/// How the frequency clamp holds a club, as the forecast of a frequency needs it.
fn clamp_form(w: &Words, form: &Entries, shop: &Shop) -> Markup {
    let mut form = form.clone();
    if form.text("form") != "clamp" {
        let clamp = shop.clamp;
        form.set("held_mm", w.length_to(clamp.held_mm, 2));
        form.set("test_weight_g", clamp.test_weight_g.map(|g| w.mass(g)).unwrap_or_default());
        form.set("test_weight_centre_mm", w.length_to(clamp.test_weight_centre_mm, 2));
    }
    html! {
        form.card method="post" action="/scales/setup/clamp" {
            (hidden("form", "clamp"))
            div.fields {
                (form.field("held_mm", &w.text("scale-setup-held"), Field { required: true, hint: &w.text("scale-setup-held-hint"), ..Field::default() }))
                (form.field("test_weight_g", &w.text("scale-setup-test-weight"), Field { hint: &w.text("scale-setup-test-weight-hint"), ..Field::default() }))
                (form.field("test_weight_centre_mm", &w.text("scale-setup-test-centre"), Field { hint: &w.text("scale-setup-test-centre-hint"), ..Field::default() }))
            }
            div.actions { (button(&Button { label: &w.text("scale-setup-keep"), ..Button::default() })) }
        }
    }
}

async fn keep_clamp(State(app): State<App>, Reader(w): Reader, Form(sent): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(sent);
    let mut shop = app.shop().await?;
    let held = form.length_mm(&w, "held_mm");
    let held_mm = form.needed("held_mm", held, &w.text("scale-setup-needs-figure")).unwrap_or_default();
    let test_weight_g = form.mass_g(&w, "test_weight_g");
    let test_weight_centre_mm = form.length_mm(&w, "test_weight_centre_mm").unwrap_or_default();
    shop.clamp = Clamp { held_mm, test_weight_g, test_weight_centre_mm };
    answered(&w, &app, form, &shop).await
}

fn weight_form(w: &Words, form: &Entries, scales: &[(&str, &str)]) -> Markup {
    html! {
        form.card method="post" action="/scales/setup/weight" {
            (hidden("form", "weight"))
            div.fields {
                (form.field("name", &w.text("scale-setup-name"), Field { required: true, hint: &w.text("scale-setup-name-hint"), ..Field::default() }))
                (form.select("scale", &w.text("scale-setup-scale"), "", scales))
                (form.field("value", &w.text("scale-setup-value"), Field { required: true, hint: &w.text("scale-setup-value-hint"), ..Field::default() }))
                (form.field("sd", &w.text("scale-setup-sd"), Field { required: true, inputmode: "decimal", hint: &w.text("scale-setup-sd-hint"), ..Field::default() }))
                (form.field("tolerance", &w.text("scale-setup-tolerance"), Field { inputmode: "decimal", hint: &w.text("scale-setup-tolerance-hint"), ..Field::default() }))
                (form.field("certified_on", &w.text("scale-setup-certified"), Field { kind: "date", ..Field::default() }))
                (form.field("certificate", &w.text("scale-setup-certificate"), Field { hint: &w.text("scale-setup-certificate-hint"), ..Field::default() }))
                (form.field("mass_g", &w.text("scale-setup-mass"), Field { unit: w.mass_sign(), inputmode: "decimal", ..Field::default() }))
            }
            div.actions { (button(&Button { label: &w.text("scale-setup-keep"), ..Button::default() })) }
        }
    }
}

fn weight_words(w: &Words, gauge: &Gauge, standard: &Standard) -> Markup {
    let mark = |name: &str, inner: &str| match name {
        "tag" => tag(Tone::Plain, inner),
        _ => html! { strong { (inner) } },
    };
    let (value, sd) = (gauge.reading(standard.value), gauge.amount(standard.sd));
    let mut notes =
        vec![text!(w, "scale-health-standard-allowed", allowed = gauge.amount(standard.tolerance_on(gauge)))];
    notes.extend(standard.certified_on.map(|on| text!(w, "scale-health-standard-of", certified_on = on)));
    notes.extend(Some(standard.certificate.clone()).filter(|c| !c.is_empty()));
    html! {
        span {
            (rich!(w, "scale-setup-weight", mark, standard = standard.name, scale = gauge.name, value = value, sd = sd)) " "
            span.small { (notes.join("; ")) }
        }
    }
}

fn remove_form(w: &Words, what: &str, key: &str) -> Markup {
    html! {
        form.inline method="post" action="/scales/setup/remove" {
            (hidden(what, key)) (button(&Button { label: &w.text("scale-setup-remove"), kind: ButtonKind::Quiet, ..Button::default() }))
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

pub(super) async fn answered(w: &Words, app: &App, mut form: Entries, shop: &Shop) -> PageResult {
    if !form.is_sound() {
        return page(w, app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    match app.save_shop(shop).await {
        Ok(()) => Ok(go_on("/scales/setup", Done::Saved)),
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
    let name = form.needed("name", name, &w.text("scale-setup-needs-name")).unwrap_or_default();
    let value = match parse_value(gauge.measures, form.text("value")) {
        Ok(value) => value,
        Err(error) => {
            form.refuse("value", beside_its_entry(&w, &error.refusal()));
            0.0
        }
    };
    let sd = form.number(&w, "sd");
    let sd = form.needed("sd", sd, &w.text("scale-setup-needs-sd")).unwrap_or_default();
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
    let name = form.needed("gauge_name", name, &w.text("scale-setup-needs-name")).unwrap_or_default();
    let mut number = |name: &str| {
        let value = form.number(&w, name);
        form.needed(name, value, &w.text("scale-setup-needs-figure")).unwrap_or_default()
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
