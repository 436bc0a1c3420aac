//! Calculations: every topic with a form, its result as figures, all in the address.
//!
//! A field stands in the address under its place in the topic's document, `finished.cap_mm=3`; lists are texts with a
//! header line. Without any field the topic's own example is shown.

use super::calc_picture::cards;
use super::calc_shape::{asks, beside, choice, document, group, in_words, label, named, typed, with_unit};
use super::entries::{Entries, capital, words_table};
use super::fields::{Ask, Way, header};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::asked::Path;
use crate::problem::EdgeFault;
use crate::reader::Reader;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Multipart, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use clubphysics::calc::{Topic, topics};
use fact::Told;
use look::{
    Button, ButtonKind, Cell, Column, Field, Figure, Notice, Tone, button, check, figures, link_button, notice_block,
    section,
};
use maud::{Markup, html};
use serde_json::{Map, Value};
use words::{Words, text};

/// Figures shown large before the rest goes into the table.
const LARGE: usize = 4;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/calc", get(index))
        .route("/calc/pluck/recording", post(show_recording))
        .route("/calc/{topic}", get(show).post(show_sent))
}

async fn index(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let body = html! {
        div.columns { @for topic in topics() {
            div.card { h2 { a href={ "/calc/" (topic.name) } { (w.tell(&topic.title())) } } p { (w.tell(&topic.summary())) } }
        } }
    };
    let crumb = w.text("calc-index-crumb");
    Ok(framed(&w, &app, Framed { title: &w.text("calc-index"), crumb, body, terms: true, ..Framed::default() })
        .await?
        .into_response())
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Path(name): Path<String>,
    Query(pairs): Query<Vec<(String, String)>>,
) -> PageResult {
    topic_page(&w, &app, &name, pairs).await
}

/// Long recordings do not fit into an address.
async fn show_sent(
    State(app): State<App>,
    Reader(w): Reader,
    Path(name): Path<String>,
    Form(pairs): Form<Vec<(String, String)>>,
) -> PageResult {
    topic_page(&w, &app, &name, pairs).await
}

async fn topic_page(w: &Words, app: &App, name: &str, pairs: Vec<(String, String)>) -> PageResult {
    let Some(topic) = topics().iter().find(|t| t.name == name) else {
        // The calculation's own refusal names the topic that was probably meant.
        let error = app::calc::run(name, Value::Null).err();
        let unknown = || AppError::invalid(EdgeFault::NoCalculation { name: name.to_owned() });
        return Err(error.unwrap_or_else(unknown).into());
    };
    let example = (topic.example)();
    let asks = asks(topic);
    let is_example = pairs.is_empty();
    let mut form = if is_example { typed(w, &asks, &example) } else { Entries::new(pairs) };
    let input = document(w, &asks, &mut form);
    let mut notice = None;
    let mut status = StatusCode::OK;
    let mut output = None;
    if form.is_sound() {
        match app.calculate(topic.name, input.clone()).await {
            Ok(value) => output = Some(value),
            Err(error) => {
                status = failure_status(&error);
                match error.field().and_then(|field| beside(&asks, field).map(|at| (at, field))) {
                    Some((at, field)) => form.refuse(at, in_words(w, error.refusal(), field)),
                    None => notice = Some(failure(w, &error)),
                }
            }
        }
    } else {
        status = StatusCode::UNPROCESSABLE_ENTITY;
    }
    if is_example {
        notice = Some(Notice { tone: Tone::Plain, text: w.text("calc-example"), next: w.text("calc-example-next") });
    } else if !form.is_sound() {
        let count = form.mistakes().count();
        notice = Some(Notice {
            tone: Tone::Bad,
            text: text!(w, "calc-not-used", count = count),
            next: w.text("calc-not-used-next"),
        });
    }
    let body = html! {
        p { (w.tell(&topic.summary())) }
        @if let Some(output) = &output { (at_a_glance(w, topic, &input, output)) }
        // A result without figures of its own, only parts, stands whole before the form.
        @let whole_first = output.as_ref().and_then(Value::as_object).is_some_and(|map| plain_rows(w, map).is_empty());
        @if whole_first { @if let Some(output) = &output { (in_full(w, output)) } }
        @if topic.name == "pluck" { (recording_form(w)) }
        (input_form(w, topic, &asks, &form))
        @if !whole_first { @if let Some(output) = &output { (in_full(w, output)) } }
        p { (link_button("/calc", &w.text("calc-all"), ButtonKind::Quiet, None, "")) }
    };
    let page = framed(
        w,
        app,
        Framed {
            title: &w.tell(&topic.title()),
            crumb: w.text("calc-crumb"),
            notice,
            body,
            terms: true,
            sheets: &["calc.css"],
            ..Framed::default()
        },
    )
    .await?;
    Ok((status, page).into_response())
}

fn recording_form(w: &Words) -> Markup {
    html! {
        form.card method="post" action="/calc/pluck/recording" enctype="multipart/form-data" {
            label for="file" { (w.text("calc-recording")) }
            input #file type="file" name="file" accept=".wav,.csv,.txt,audio/wav,text/csv" required;
            p.hint { (w.text("calc-recording-hint")) }
            div.actions { (button(&Button { label: &w.text("calc-recording-read"), ..Button::default() })) }
        }
    }
}

/// A recording sent as a file: what it says, without its thousands of samples in a form.
async fn show_recording(State(app): State<App>, Reader(w): Reader, form: Multipart) -> PageResult {
    let topic = topics().iter().find(|t| t.name == "pluck");
    let sent = match Entries::with_file(form).await {
        Ok((_, Some(bytes))) => app.calculate_pluck(&bytes).await,
        Ok((_, None)) => Err(AppError::invalid(EdgeFault::NoFile)),
        Err(fault) => Err(AppError::invalid(fault)),
    };
    let (status, notice, result) = match &sent {
        Ok(output) => (StatusCode::OK, None, Some(output)),
        Err(error) => (failure_status(error), Some(failure(&w, error)), None),
    };
    let body = html! {
        @if let (Some(topic), Some(output)) = (topic, result) { (at_a_glance(&w, topic, &Value::Null, output)) (in_full(&w, output)) }
        (recording_form(&w))
        p { (link_button("/calc/pluck", &w.text("calc-recording-samples"), ButtonKind::Quiet, None, "")) }
    };
    let title = topic.map_or(String::new(), |t| w.tell(&t.title()));
    let page = framed(
        &w,
        &app,
        Framed { title: &title, crumb: w.text("calc-crumb"), notice, body, sheets: &["calc.css"], ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

fn input_form(w: &Words, topic: &Topic, asks: &[Ask], form: &Entries) -> Markup {
    let long = asks.iter().any(|a| matches!(a.way, Way::Numbers(_)) && form.raw(&a.key).len() > 1500);
    let mut groups: Vec<(&str, Vec<&Ask>)> = Vec::new();
    for ask in asks {
        let name = group(&ask.key);
        match groups.last_mut() {
            Some((last, list)) if *last == name => list.push(ask),
            _ => groups.push((name, vec![ask])),
        }
    }
    html! {
        form.card method=(if long { "post" } else { "get" }) action={ "/calc/" (topic.name) } {
            @for (name, list) in &groups {
                div.section role="group" aria-label=(if name.is_empty() { w.text("calc-figures") } else { group_words(w, name) }) {
                    @if !name.is_empty() { h2 { (capital(&group_words(w, name))) } }
                    div.fields { @for ask in list.iter().filter(|a| !matches!(a.way, Way::Rows(_) | Way::Numbers(_))) { (ask_field(w, ask, form)) } }
                    @for ask in list.iter().filter(|a| matches!(a.way, Way::Rows(_) | Way::Numbers(_))) { (ask_field(w, ask, form)) }
                }
            }
            div.actions {
                (button(&Button { label: &w.text("calc-calculate"), ..Button::default() }))
                (link_button(&format!("/calc/{}", topic.name), &w.text("calc-back-to-example"), ButtonKind::Quiet, None, ""))
            }
            @if asks.iter().any(|a| a.key.ends_with("_sd")) {
                p.hint { (w.text("calc-sd-hint")) }
            }
        }
    }
}

fn group_words(w: &Words, path: &str) -> String {
    path.split('.').map(|p| label(w, p)).collect::<Vec<_>>().join(": ")
}

fn ask_field(w: &Words, ask: &Ask, form: &Entries) -> Markup {
    let label = capital(&w.tell(&ask.label));
    let key = ask.key.as_str();
    match &ask.way {
        Way::Number(_) => form.field(
            key,
            &label,
            Field { unit: &ask.unit(w).unwrap_or_default(), inputmode: "decimal", ..Field::default() },
        ),
        Way::Count => form.field(key, &label, Field { inputmode: "numeric", ..Field::default() }),
        Way::YesNo => check(key, "1", &label, form.has(key, "1")),
        Way::Choice(list) => {
            let words = list.iter().map(|(key, told)| (key.as_str(), w.tell(told)));
            let choices: Vec<(&str, String)> = std::iter::once(("", w.text("calc-usual"))).chain(words).collect();
            form.select(key, &label, "", &choices)
        }
        Way::Numbers(_) => {
            let hint = match ask.unit(w) {
                None => w.text("calc-numbers-hint"),
                Some(unit) => text!(w, "calc-numbers-unit-hint", unit = unit),
            };
            form.area(key, &label, 3, Field { hint: &hint, ..Field::default() })
        }
        Way::Rows(columns) => {
            let hint = if form.raw(key).trim().is_empty() {
                text!(w, "calc-rows-first-line", columns = header(w, columns))
            } else {
                w.text("calc-rows-hint")
            };
            let lines = u32::try_from(form.raw(key).lines().count() + 1).unwrap_or(8).clamp(3, 10);
            form.area(key, &label, lines, Field { hint: &hint, ..Field::default() })
        }
        Way::Text | Way::Length | Way::SwingWeight | Way::Model(_) => form.field(key, &label, Field::default()),
    }
}

/// Warnings, the first figures large, and a picture where there is one.
fn at_a_glance(w: &Words, topic: &Topic, input: &Value, output: &Value) -> Markup {
    let map = output.as_object().cloned().unwrap_or_default();
    let mut large = plain_rows(w, &map);
    large.truncate(LARGE);
    let shown: Vec<Figure<'_>> =
        large.iter().map(|row| Figure { label: &row.label, value: &row.value, note: &row.note }).collect();
    html! {
        @for warning in warnings(output) { (notice_block(Tone::Care, &w.sentence(&warning), "")) }
        @if !shown.is_empty() { div.card { (figures(&shown)) } }
        (cards(w, topic.name, input, output))
    }
}

/// A fact of a result.
fn told(value: &Value) -> Option<Told> {
    value["code"].as_str()?;
    serde_json::from_value(value.clone()).ok()
}

/// The warnings of a result and of its parts.
fn warnings(output: &Value) -> Vec<Told> {
    let own = output["warnings"].as_array().into_iter().flatten().filter_map(told);
    let parts = output.as_object().into_iter().flat_map(Map::values).filter(|value| value.is_object());
    own.chain(parts.flat_map(warnings)).collect()
}

/// Everything else that came out.
fn in_full(w: &Words, output: &Value) -> Markup {
    let map = output.as_object().cloned().unwrap_or_default();
    let rest: Vec<_> = plain_rows(w, &map).into_iter().skip(LARGE).collect();
    html! {
        @if !rest.is_empty() { (section(&w.text("calc-more-figures"), &html! {}, &values_table(w, &w.text("calc-more-figures"), rest))) }
        @for (key, value) in map.iter().filter(|(key, _)| *key != "warnings") { (inside(w, &label(w, key), named(key).1, value)) }
    }
}

/// What stands first where a result has it.
const FIRST: [&str; 8] = [
    "letter",
    "points",
    "total_mass_g",
    "balance_point_mm",
    "frequency_cpm",
    "diameter_in",
    "inertia_kg_cm2",
    "mass_g",
];

/// Values of results that are choices of a closed list; any other text is a name that somebody gave.
const CHOICES: [&str; 3] = ["there", "too_small_to_matter", "cannot_tell"];

/// End of the name of a figure in words.
const IN_WORDS: &str = "_in_words";

/// A figure of a result as it is shown.
#[derive(Debug, PartialEq)]
struct Row {
    label: String,
    value: String,
    /// Its standard deviation.
    note: String,
}

/// Plain values of an object.
fn plain_rows(w: &Words, map: &Map<String, Value>) -> Vec<Row> {
    let rank = |key: &str| FIRST.iter().position(|f| *f == key).unwrap_or(FIRST.len());
    let plain = |value: &Value| told(value).is_some() || !(value.is_object() || value.is_array() || value.is_null());
    let mut keys: Vec<&String> = map
        .iter()
        .filter(|(key, value)| !key.ends_with("_sd") && plain(value))
        // A figure that is also given in words is shown in words: its digits would say more than is known.
        .filter(|(key, _)| !map.contains_key(&format!("{key}{IN_WORDS}")))
        .map(|(key, _)| key)
        .collect();
    keys.sort_by_key(|key| rank(key));
    keys.iter()
        .map(|key| {
            let sd = map.get(&format!("{key}_sd")).and_then(Value::as_f64);
            let unit = named(key).1;
            Row {
                label: label(w, key),
                value: shown(w, &map[key.as_str()], unit),
                note: sd.map_or(String::new(), |sd| {
                    format!("± {}", w.printed(&number(two_digits(in_unit(w, sd, unit).0))))
                }),
            }
        })
        .collect()
}

/// A figure in the reader's unit, with its sign.
fn in_unit(w: &Words, value: f64, unit: &'static str) -> (f64, &'static str) {
    match unit {
        "mm" => (quantity::Length::from_mm(value).in_unit(w.units.length), w.length_sign()),
        "in" => (quantity::Length::from_mm(value * quantity::INCH_MM).in_unit(w.units.length), w.length_sign()),
        "g" if w.units.mass == quantity::MassUnit::Ounce => (quantity::Mass::from_g(value).oz(), w.mass_sign()),
        unit => (value, unit),
    }
}

/// A value of a result without its unit.
fn bare(w: &Words, value: &Value, unit: &'static str) -> String {
    if let Some(told) = told(value) {
        return w.told(&told);
    }
    match value {
        Value::Number(n) => w.printed(&number(in_unit(w, n.as_f64().unwrap_or(f64::NAN), unit).0)),
        Value::String(text) if CHOICES.contains(&text.as_str()) => w.tell(&choice(text)),
        Value::String(text) => text.clone(),
        Value::Bool(true) => w.text("calc-yes"),
        Value::Bool(false) => w.text("calc-no"),
        _ => "–".to_owned(),
    }
}

/// A value of a result with its unit.
fn shown(w: &Words, value: &Value, unit: &'static str) -> String {
    let text = bare(w, value, unit);
    match in_unit(w, 0.0, unit).1 {
        "" => text,
        "°" => format!("{text}°"),
        unit => format!("{text} {unit}"),
    }
}

/// A spread to two significant digits: more of them say nothing (the GUM, 7.2.6).
fn two_digits(sd: f64) -> f64 {
    if !sd.is_finite() || sd == 0.0 {
        return sd;
    }
    format!("{sd:.1e}").parse().unwrap_or(sd)
}

/// A number with as many places as say something: about five figures.
fn number(value: f64) -> String {
    if !value.is_finite() {
        return "–".to_owned();
    }
    let places = match value.abs() {
        v if v >= 1000.0 => 1,
        v if v >= 10.0 => 2,
        v if v >= 1.0 || v == 0.0 => 3,
        v if v >= 0.01 => 4,
        v if v >= 0.001 => 5,
        v if v >= 1e-6 => 7,
        _ => return format!("{value:.2e}").replace('-', "−"),
    };
    let text = format!("{value:.places$}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    text.replace('-', "−")
}

fn values_table(w: &Words, caption: &str, rows: Vec<Row>) -> Markup {
    // The column of doubts only where there are any.
    let doubts = rows.iter().any(|row| !row.note.is_empty());
    let cells = rows.into_iter().map(|Row { label, value, note }| {
        let mut row = vec![Cell::from(label), Cell::from(value)];
        if doubts {
            row.push(Cell::from(note));
        }
        row
    });
    let mut columns = vec![Column::words(w.text("calc-what")), Column::figures(w.text("calc-value"))];
    if doubts {
        columns.push(Column::figures(w.text("calc-one-sd")));
    }
    words_table(caption, columns, cells.collect())
}

/// What a result has inside: objects as tables, lists of objects as tables with a row each.
fn inside(w: &Words, title: &str, unit: &'static str, value: &Value) -> Markup {
    match value {
        Value::Object(map) if told(value).is_none() => {
            let rows = plain_rows(w, map);
            html! {
                @if !rows.is_empty() { (section(&capital(title), &html! {}, &values_table(w, title, rows))) }
                @for (key, value) in map.iter().filter(|(key, _)| *key != "warnings") { (inside(w, &format!("{title}: {}", label(w, key)), named(key).1, value)) }
            }
        }
        Value::Array(list) if list.iter().any(|one| told(one).is_some()) => {
            let said = list.iter().filter_map(told);
            section(&capital(title), &html! {}, &html! { ul.plain { @for one in said { li { (w.sentence(&one)) } } } })
        }
        Value::Array(list) if list.iter().any(Value::is_object) => list_table(w, title, list),
        Value::Array(list) if !list.is_empty() && list.iter().all(Value::is_number) => {
            let numbers: Vec<String> = list.iter().take(60).map(|v| bare(w, v, unit)).collect();
            section(&capital(title), &html! {}, &html! { p { (numbers.join("  ")) @if list.len() > 60 { " …" } } })
        }
        _ => html! {},
    }
}

fn list_table(w: &Words, title: &str, list: &[Value]) -> Markup {
    let mut keys: Vec<&str> = Vec::new();
    for map in list.iter().filter_map(Value::as_object) {
        for (key, value) in map {
            if !keys.contains(&key.as_str()) && (told(value).is_some() || !(value.is_object() || value.is_array())) {
                keys.push(key);
            }
        }
    }
    keys.sort_by_key(|k| !matches!(*k, "name" | "step"));
    let column = |key: &&str| {
        let is_words = matches!(*key, "name" | "step");
        let heading = with_unit(w, key, in_unit(w, 0.0, named(key).1).1);
        if is_words { Column::words(heading) } else { Column::figures(heading) }
    };
    let columns = keys.iter().map(column).collect();
    let rows =
        list.iter().map(|row| keys.iter().map(|k| Cell::from(bare(w, &row[*k], named(k).1))).collect()).collect();
    section(&capital(title), &html! {}, &words_table(title, columns, rows))
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn numbers_have_places_that_say_something() {
        assert_eq!(number(38.0), "38");
        assert_eq!(number(-0.053_219), "−0.0532");
        assert_eq!(number(714.912_3), "714.91");
        assert_eq!(number(0.000_12), "0.00012");
        assert_eq!(number(f64::NAN), "–");
        assert_eq!(number(two_digits(0.431_6)), "0.43");
        assert_eq!(number(two_digits(1.327)), "1.3");
        assert_eq!(number(two_digits(126.4)), "130");
        assert_eq!(number(two_digits(0.0)), "0");
    }

    /// A part of a result warns as loudly as the whole: a cold cure stands in `cure`.
    #[test]
    fn warnings_of_a_part_are_shown() {
        let topic = topics().iter().find(|topic| topic.name == "glue").expect("glue");
        let mut input = (topic.example)();
        input["cure"]["temperature_c"] = 6.0.into();
        let output = (topic.run)(input.clone()).expect("a cold room");
        let shown = at_a_glance(&w(), topic, &input, &output).into_string();
        assert!(shown.contains("many adhesives never cure fully"), "{shown}");
    }

    #[test]
    fn a_figure_in_words_is_shown_in_words() {
        let output = serde_json::json!({ "pull_n": 222.5, "strength_over_stress": 63.69, "strength_over_stress_in_words": clubphysics::glue::PullReserve::Exceeded });
        let rows = plain_rows(&w(), output.as_object().expect("a document"));
        let reserve = rows.iter().find(|row| row.label == "strength over stress").expect("a row");
        assert!(rows.len() == 2 && reserve.value.contains("above the strength"), "{rows:?}");
    }

    #[test]
    fn every_example_has_a_result_to_show() {
        for topic in topics() {
            let input = (topic.example)();
            let output = (topic.run)(input.clone()).expect("example");
            let text = at_a_glance(&w(), topic, &input, &output).into_string() + &in_full(&w(), &output).into_string();
            assert!(text.contains("<table") || text.contains("figure-value"), "{}", topic.name);
        }
    }
}
