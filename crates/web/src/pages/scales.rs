//! Scales on a serial line: what is set, what each shows now, line by line.

use super::entries::{Entries, go_to};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::asked::Filled;
use crate::reader::Reader;
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
    let form = shop
        .scales
        .iter()
        .find(|s| s.key == asked.text("scale"))
        .map_or_else(|| typed(&w, &usual()), |scale| typed(&w, scale));
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

fn typed(w: &Words, scale: &Connection) -> Entries {
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
    let body = html! {
        p.hint { "A scale with a serial line (RS-232 or USB serial) fills in what it shows. Set the port, then look below whether its lines are read." }
        @for scale in &now { (one_scale(w, scale)) }
        (section(if form.text("key").is_empty() { "Another scale" } else { "Change it" }, &html! {}, &form_part(w, form)))
    };
    let notice = form.notice(w).or(notice);
    let page = framed(
        w,
        app,
        Framed {
            title: "Scales",
            active: Nav::Stock,
            crumb: "on a serial line".into(),
            notice,
            body,
            ..Framed::default()
        },
    )
    .await?;
    Ok((status, page).into_response())
}

/// One scale with its last lines: the tester.
fn one_scale(w: &Words, scale: &ScaleNow) -> Markup {
    let state = if scale.connected { tag(Tone::Good, "connected") } else { tag(Tone::Care, "not connected") };
    section(
        &scale.name,
        &html! { (state) },
        &html! {
            div.live-bar data-scale=(scale.scale) {
                span.tag.plain { (scale.shows) }
                span.figure-value data-scale-value { (if scale.text.is_empty() { "–" } else { &scale.text }) }
                p data-scale-trouble { (scale.trouble) }
            }
            details open[!scale.lines.is_empty()] { summary { "Its last lines, as they came and as they are read" }
                @if scale.lines.is_empty() { p.hint { "None yet. Put something on it, or press its own key." } }
                @else { ol.plain.raw-lines { @for line in scale.lines.iter().rev().take(12) {
                    li { code { (line.raw) } " " @if line.refused { (tag(Tone::Bad, "refused")) " " } (line.read) }
                } } p.hint { "Load the page again to see the newest." } }
            }
            div.actions {
                (link_button(&format!("/shop/scales?scale={}", scale.scale), "Change", ButtonKind::Quiet, None, ""))
                form.inline method="post" action="/shop/scales/remove" { (hidden("key", &scale.scale)) (button(&Button { label: "Take it away", kind: ButtonKind::Quiet, ..Button::default() })) }
            }
        },
    )
}

fn form_part(w: &Words, form: &Entries) -> Markup {
    let choices = |name: &str, all: &[(&'static str, &'static str)]| -> Vec<Choice<'static>> {
        all.iter()
            .map(|(value, label)| Choice { value, label: (*label).into(), chosen: *value == form.text(name) })
            .collect()
    };
    let shows: Vec<(&str, &str)> = Shows::ALL.iter().map(|s| (s.key(), s.word())).collect();
    let means: Vec<(&str, &str)> = MarkMeans::ALL.iter().map(|m| (m.key(), m.word())).collect();
    let parity: Vec<(&str, &str)> = Parity::ALL.iter().map(|p| (p.key(), p.word())).collect();
    let field = |name: &'static str, label: &'static str, hint: &'static str| {
        form.field(name, label, Field { hint, ..Field::default() })
    };
    html! {
        form.card method="post" action="/shop/scales" {
            (hidden("old", form.text("key")))
            (radios("shows", "It shows", &choices("shows", &shows)))
            div.fields {
                (form.field("name", "Called", Field { required: true, hint: "For example: parts scale", ..Field::default() }))
                (form.field("port", "Port", Field { required: true, hint: "/dev/ttyUSB0, /dev/ttyACM0, COM3", ..Field::default() }))
                (form.field("baud", "Speed", Field { required: true, inputmode: "numeric", hint: "By its sheet, usually 9600", ..Field::default() }))
                (field("mark", "Mark of a settled value", "As it stands in the line; empty if it has none"))
                (field("unit", "Unit of lines without one", "g, oz, lb; for a swing weight: oz in. Empty: refuse them"))
                (field("overload", "Texts for overload", "Separated by commas"))
                (field("ignore", "Texts that mean nothing", "Separated by commas, for example GS"))
                (field("skip", "Lines to pass over begin with", "Separated by commas"))
                (field("ask", "Sent once a second to ask it", "Empty for a scale that sends by itself; \\r and \\n as such"))
                (form.field("data_bits", "Data bits", Field { inputmode: "numeric", ..Field::default() }))
                (form.field("stop_bits", "Stop bits", Field { inputmode: "numeric", ..Field::default() }))
            }
            (radios("means", "A line with the mark is", &choices("means", &means)))
            (radios("parity", "Parity", &choices("parity", &parity)))
            div.actions { (button(&Button { label: "Keep and connect", ..Button::default() })) }
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
        form.needed(name, value, "A whole number is needed").unwrap_or_default()
    };
    let (baud, data_bits, stop_bits) = (whole("baud"), whole("data_bits"), whole("stop_bits"));
    let name = form.some("name");
    let name = form.needed("name", name, "Give it a name").unwrap_or_default();
    let port = form.some("port");
    let port = form.needed("port", port, "Say which port it is on").unwrap_or_default();
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
        Ok(()) => Ok(go_to("/shop/scales").into_response()),
        Err(error) => page(&w, &app, &form, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}

#[derive(Debug, serde::Deserialize)]
struct Remove {
    key: String,
}

async fn remove(State(app): State<App>, Reader(w): Reader, Filled(form): Filled<Remove>) -> PageResult {
    let mut shop = app.shop().await?;
    shop.scales.retain(|s| s.key != form.key);
    app.save_shop(&shop).await?;
    Ok(go_to("/shop/scales").into_response())
}
