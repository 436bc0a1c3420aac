//! Scales on a serial line: what is set, what each shows now, line by line.

use super::entries::{Entries, go_on};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::asked::Filled;
use crate::reader::Reader;
use crate::tablet::Done;
use app::App;
use app::scales::ScaleNow;
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use look::{Button, ButtonKind, Choice, Field, Nav, Notice, Tone, button, hidden, link_button, radios, section, tag};
use maud::{Markup, html};
use trade::connection::Connection;
use trade::connection::LineFormat;
use trade::connection::MarkMeans;
use trade::connection::Parity;
use trade::connection::SettledMark;
use trade::connection::Shows;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new().route("/shop/scales", get(show).post(keep)).route("/shop/scales/remove", axum::routing::post(remove))
}

async fn show(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    let asked = Entries::new(pairs);
    let shop = app.shop().await?;
    let form = shop.scales.iter().find(|s| s.key == asked.text("scale")).map_or_else(|| typed(&usual()), typed);
    page(&w, &app, &form, None, StatusCode::OK).await
}

fn usual() -> Connection {
    Connection {
        key: String::new(),
        name: String::new(),
        shows: Shows::Mass,
        port: String::new(),
        baud: 9600,
        data_bits: 8,
        parity: Parity::None,
        stop_bits: 1,
        ask: String::new(),
        format: LineFormat::default(),
    }
}

fn typed(scale: &Connection) -> Entries {
    let format = &scale.format;
    let pair = |name: &str, value: String| (name.to_owned(), value);
    Entries::new(vec![
        pair("key", scale.key.clone()),
        pair("name", scale.name.clone()),
        pair("shows", scale.shows.key().to_owned()),
        pair("port", scale.port.clone()),
        pair("baud", scale.baud.to_string()),
        pair("data_bits", scale.data_bits.to_string()),
        pair("parity", scale.parity.key().to_owned()),
        pair("stop_bits", scale.stop_bits.to_string()),
        pair("ask", scale.ask.clone()),
        pair("mark", format.settled.as_ref().map_or_else(String::new, |m| m.text.clone())),
        pair("means", format.settled.as_ref().map_or(MarkMeans::Settled, |m| m.means).key().to_owned()),
        pair("unit", format.unit.clone().unwrap_or_default()),
        pair("overload", format.overload.join(", ")),
        pair("ignore", format.ignore.join(", ")),
        pair("skip", format.skip.join(", ")),
    ])
}

async fn page(w: &Words, app: &App, form: &Entries, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let now = app.scales();
    let other = if form.text("key").is_empty() { "scales-add" } else { "scales-change" };
    let body = html! {
        p.hint { (w.text("scales-about")) }
        @for scale in &now { (one_scale(w, scale)) }
        (section(&w.text(other), &html! {}, &form_part(w, form)))
    };
    let (title, notice) = (w.text("scales-title"), form.notice(w).or(notice));
    let view = Framed {
        title: &title,
        active: Nav::Stock,
        crumb: w.text("scales-crumb"),
        notice,
        body,
        help: Some("scales"),
        ..Framed::default()
    };
    Ok((status, framed(w, app, view).await?).into_response())
}

/// One scale with its last lines: the tester.
fn one_scale(w: &Words, scale: &ScaleNow) -> Markup {
    let state = if scale.connected {
        tag(Tone::Good, &w.text("scales-connected"))
    } else {
        tag(Tone::Care, &w.text("scales-not-connected"))
    };
    section(
        &scale.name,
        &html! { (state) },
        &html! {
            div.live-bar data-scale=(scale.scale) {
                span.tag.plain { (w.tell(&scale.shows)) }
                span.figure-value data-scale-value { (if scale.text.is_empty() { "–" } else { &scale.text }) }
                p data-scale-trouble { @if let Some(trouble) = &scale.trouble { (w.tell(trouble)) } }
            }
            details open[!scale.lines.is_empty()] { summary { (w.text("scales-lines")) }
                @if scale.lines.is_empty() { p.hint { (w.text("scales-no-lines")) } }
                @else { ol.plain.raw-lines { @for line in scale.lines.iter().rev().take(12) {
                    li { code { (line.raw) } " " @if line.refused { (tag(Tone::Bad, &w.text("scales-refused"))) " " } (w.tell(&line.read)) }
                } } p.hint { (w.text("scales-newest")) } }
            }
            div.actions {
                (link_button(&format!("/shop/scales?scale={}", scale.scale), &w.text("scales-edit"), ButtonKind::Quiet, None, ""))
                form.inline method="post" action="/shop/scales/remove" {
                    (hidden("key", &scale.scale))
                    (button(&Button { label: &w.text("scales-remove"), kind: ButtonKind::Quiet, ..Button::default() }))
                }
            }
        },
    )
}

fn form_part(w: &Words, form: &Entries) -> Markup {
    let choice = |name: &str, value: &'static str, label: String| Choice {
        value,
        label: label.into(),
        chosen: value == form.text(name),
    };
    let shows: Vec<Choice<'_>> = Shows::ALL.iter().map(|s| choice("shows", s.key(), w.tell(s))).collect();
    let means: Vec<Choice<'_>> = MarkMeans::ALL.iter().map(|m| choice("means", m.key(), w.tell(m))).collect();
    let parity: Vec<Choice<'_>> = Parity::ALL.iter().map(|p| choice("parity", p.key(), w.tell(p))).collect();
    let field = |name: &str, label: &str, hint: &str| {
        form.field(name, &w.text(label), Field { hint: &w.text(hint), ..Field::default() })
    };
    html! {
        form.card method="post" action="/shop/scales" {
            (hidden("old", form.text("key")))
            (radios("shows", &w.text("scales-it-shows"), &shows))
            div.fields {
                (form.field("name", &w.text("scales-name"), Field { required: true, hint: &w.text("scales-name-hint"), ..Field::default() }))
                (form.field("port", &w.text("scales-port"), Field { required: true, hint: &w.text("scales-port-hint"), ..Field::default() }))
                (form.field("baud", &w.text("scales-baud"), Field { required: true, inputmode: "numeric", hint: &w.text("scales-baud-hint"), ..Field::default() }))
                (field("mark", "scales-mark", "scales-mark-hint"))
                (field("unit", "scales-unit", "scales-unit-hint"))
                (field("overload", "scales-overload", "scales-commas"))
                (field("ignore", "scales-ignore", "scales-ignore-hint"))
                (field("skip", "scales-skip", "scales-commas"))
                (field("ask", "scales-ask", "scales-ask-hint"))
                (form.field("data_bits", &w.text("scales-data-bits"), Field { inputmode: "numeric", ..Field::default() }))
                (form.field("stop_bits", &w.text("scales-stop-bits"), Field { inputmode: "numeric", ..Field::default() }))
            }
            (radios("means", &w.text("scales-means"), &means))
            (radios("parity", &w.text("scales-parity"), &parity))
            div.actions { (button(&Button { label: &w.text("scales-keep"), ..Button::default() })) }
        }
    }
}

fn texts(form: &Entries, name: &str) -> Vec<String> {
    form.text(name).split(',').map(|t| t.trim().to_owned()).filter(|t| !t.is_empty()).collect()
}

/// A key made of the name: small letters, digits, dashes.
fn key_of(name: &str) -> String {
    let key: String = name.to_lowercase().chars().map(|c| if c.is_ascii_alphanumeric() { c } else { '-' }).collect();
    key.trim_matches('-').to_owned()
}

async fn keep(State(app): State<App>, Reader(w): Reader, Form(fields): Form<Vec<(String, String)>>) -> PageResult {
    let mut form = Entries::new(fields);
    let mut whole = |name: &str| {
        let value = form.count(&w, name);
        form.needed(name, value, &w.text("scales-needs-whole")).unwrap_or_default()
    };
    let (baud, data_bits, stop_bits) = (whole("baud"), whole("data_bits"), whole("stop_bits"));
    let name = form.some("name");
    let name = form.needed("name", name, &w.text("scales-needs-name")).unwrap_or_default();
    let port = form.some("port");
    let port = form.needed("port", port, &w.text("scales-needs-port")).unwrap_or_default();
    let old = form.text("old").to_owned();
    let connection = Connection {
        key: if old.is_empty() { key_of(&name) } else { old },
        name,
        shows: Shows::from_key(form.text("shows")).unwrap_or(Shows::Mass),
        port,
        baud: u32::try_from(baud).unwrap_or_default(),
        data_bits: u8::try_from(data_bits).unwrap_or_default(),
        parity: Parity::from_key(form.text("parity")).unwrap_or(Parity::None),
        stop_bits: u8::try_from(stop_bits).unwrap_or_default(),
        ask: form.text("ask").to_owned(),
        format: LineFormat {
            settled: form.some("mark").map(|text| SettledMark {
                text,
                means: MarkMeans::from_key(form.text("means")).unwrap_or(MarkMeans::Settled),
            }),
            unit: form.some("unit"),
            overload: texts(&form, "overload"),
            ignore: texts(&form, "ignore"),
            skip: texts(&form, "skip"),
        },
    };
    if !form.is_sound() {
        return page(&w, &app, &form, None, StatusCode::UNPROCESSABLE_ENTITY).await;
    }
    let mut shop = app.shop().await?;
    match shop.scales.iter_mut().find(|s| s.key == connection.key) {
        Some(known) => *known = connection,
        None => shop.scales.push(connection),
    }
    match app.save_shop(&shop).await {
        Ok(()) => Ok(go_on("/shop/scales", Done::Saved)),
        Err(error) => page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

#[derive(Debug, serde::Deserialize)]
struct Remove {
    key: String,
}

async fn remove(State(app): State<App>, Filled(form): Filled<Remove>) -> PageResult {
    let mut shop = app.shop().await?;
    shop.scales.retain(|s| s.key != form.key);
    app.save_shop(&shop).await?;
    Ok(go_on("/shop/scales", Done::Removed))
}
