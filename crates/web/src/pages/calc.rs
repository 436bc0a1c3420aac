//! Calculations: every topic with a form, its result as figures, all in the address.
//!
//! A field stands in the address under its place in the topic's document, `finished.cap_mm=3`; lists are texts with a
//! header line. Without any field the topic's own example is shown.

use super::calc_picture::cards;
use super::calc_shape::{Ask, Way, asks, beside, document, first_line, group, head, in_words, last, named, typed};
use super::entries::{Entries, capital, words_table};
use super::{Framed, PageResult, failure, failure_status, framed};
use crate::reader::Reader;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Multipart, Path, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use clubphysics::calc::{Topic, topics};
use look::{
    Button, ButtonKind, Cell, Column, Field, Figure, Notice, Tone, button, check, figures, link_button, notice_block,
    section,
};
use maud::{Markup, html};
use serde_json::{Map, Value};
use words::Words;

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
    let crumb = "for one club at a time, nothing is kept".to_owned();
    Ok(framed(&w, &app, Framed { title: "Calculations", crumb, body, ..Framed::default() }).await?.into_response())
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
        let unknown = || AppError::Invalid {
            what: format!("there is no calculation “{name}”"),
            next: "Choose one under Calculations".into(),
        };
        return Err(error.unwrap_or_else(unknown).into());
    };
    let example = (topic.example)();
    let asks = asks(w, topic.name, &example);
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
                match error.field().and_then(|field| beside(w, &asks, field).map(|at| (at, field))) {
                    Some((at, field)) => form.refuse(at, in_words(w, &error.to_string(), field)),
                    None => notice = Some(failure(w, &error)),
                }
            }
        }
    } else {
        status = StatusCode::UNPROCESSABLE_ENTITY;
    }
    if is_example {
        notice = Some(Notice {
            tone: Tone::Plain,
            text: "The figures are an example.".into(),
            next: "Write over them; leave empty what you do not ask.".into(),
        });
    } else if !form.is_sound() {
        let count = form.mistakes().count();
        notice = Some(Notice {
            tone: Tone::Bad,
            text: if count == 1 {
                "One entry could not be used.".into()
            } else {
                format!("{count} entries could not be used.")
            },
            next: "Look for the red marks.".into(),
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
        p { (link_button("/calc", "All calculations", ButtonKind::Quiet, None, "")) }
    };
    let page = framed(
        w,
        app,
        Framed { title: &w.tell(&topic.title()), crumb: "Calculation".into(), notice, body, ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

fn recording_form(w: &Words) -> Markup {
    html! {
        form.card method="post" action="/calc/pluck/recording" enctype="multipart/form-data" {
            label for="file" { "A recording" }
            input #file type="file" name="file" accept=".wav,.csv,.txt,audio/wav,text/csv" required;
            p.hint { "WAV with one or two channels, or CSV with time and one or two axes." }
            div.actions { (button(&Button { label: "Read the recording", ..Button::default() })) }
        }
    }
}

/// A recording sent as a file: what it says, without its thousands of samples in a form.
async fn show_recording(State(app): State<App>, Reader(w): Reader, form: Multipart) -> PageResult {
    let topic = topics().iter().find(|t| t.name == "pluck");
    let sent = match Entries::with_file(&w, form).await {
        Ok((_, Some(bytes))) => app.calculate_pluck(&bytes).await,
        Ok((_, None)) => {
            Err(AppError::Invalid { what: "no file came".into(), next: "Choose a recording first".into() })
        }
        Err(words) => Err(AppError::Invalid { what: words, next: String::new() }),
    };
    let (status, notice, result) = match &sent {
        Ok(output) => (StatusCode::OK, None, Some(output)),
        Err(error) => (failure_status(error), Some(failure(&w, error)), None),
    };
    let body = html! {
        @if let (Some(topic), Some(output)) = (topic, result) { (at_a_glance(&w, topic, &Value::Null, output)) (in_full(&w, output)) }
        (recording_form(&w))
        p { (link_button("/calc/pluck", "Enter samples instead", ButtonKind::Quiet, None, "")) }
    };
    let title = topic.map_or(String::new(), |t| w.tell(&t.title()));
    let page =
        framed(&w, &app, Framed { title: &title, crumb: "Calculation".into(), notice, body, ..Framed::default() })
            .await?;
    Ok((status, page).into_response())
}

fn input_form(w: &Words, topic: &Topic, asks: &[Ask], form: &Entries) -> Markup {
    let long = asks.iter().any(|a| a.way == Way::List && form.raw(&a.path).len() > 1500);
    let mut groups: Vec<(&str, Vec<&Ask>)> = Vec::new();
    for ask in asks {
        let name = group(&ask.path);
        match groups.last_mut() {
            Some((last, list)) if *last == name => list.push(ask),
            _ => groups.push((name, vec![ask])),
        }
    }
    html! {
        form.card method=(if long { "post" } else { "get" }) action={ "/calc/" (topic.name) } {
            @for (name, list) in &groups {
                div.section role="group" aria-label=(if name.is_empty() { "Figures".to_owned() } else { group_words(w, name) }) {
                    @if !name.is_empty() { h2 { (capital(&group_words(w, name))) } }
                    div.fields { @for ask in list.iter().filter(|a| !matches!(a.way, Way::Rows(_) | Way::List)) { (ask_field(w, ask, form)) } }
                    @for ask in list.iter().filter(|a| matches!(a.way, Way::Rows(_) | Way::List)) { (ask_field(w, ask, form)) }
                }
            }
            div.actions {
                (button(&Button { label: "Calculate", ..Button::default() }))
                (link_button(&format!("/calc/{}", topic.name), "Back to the example", ButtonKind::Quiet, None, ""))
            }
            @if asks.iter().any(|a| a.path.ends_with("_sd")) {
                p.hint { "± is one standard deviation of what was read; leave it empty where it is not known." }
            }
        }
    }
}

fn group_words(w: &Words, path: &str) -> String {
    path.split('.').map(|p| named(w, p).0).collect::<Vec<_>>().join(": ")
}

fn ask_field(w: &Words, ask: &Ask, form: &Entries) -> Markup {
    let (label, unit) = named(w, last(&ask.path));
    let label = capital(&label);
    match &ask.way {
        Way::Number => form.field(&ask.path, &label, Field { unit, inputmode: "decimal", ..Field::default() }),
        Way::Text => form.field(&ask.path, &label, Field::default()),
        Way::YesNo => check(&ask.path, "1", &label, form.has(&ask.path, "1")),
        Way::Choice(list) => {
            let words: Vec<String> = list.iter().map(|key| key.replace('_', " ")).collect();
            let choices: Vec<(&str, &str)> = std::iter::once(("", "usual"))
                .chain(list.iter().copied().zip(words.iter().map(String::as_str)))
                .collect();
            form.select(&ask.path, &label, "", &choices)
        }
        Way::List => {
            let hint = if unit.is_empty() {
                "Numbers, one after the other".into()
            } else {
                format!("Numbers in {unit}, one after the other")
            };
            form.area(&ask.path, &label, 3, Field { hint: &hint, ..Field::default() })
        }
        Way::Rows(keys) => {
            let hint = if form.raw(&ask.path).trim().is_empty() {
                format!("The first line: {}", first_line(w, keys))
            } else {
                "One line each under the line that names the columns".into()
            };
            let lines = u32::try_from(form.raw(&ask.path).lines().count() + 1).unwrap_or(8).clamp(3, 10);
            form.area(&ask.path, &label, lines, Field { hint: &hint, ..Field::default() })
        }
    }
}

/// Warnings, the first figures large, and a picture where there is one.
fn at_a_glance(w: &Words, topic: &Topic, input: &Value, output: &Value) -> Markup {
    let map = output.as_object().cloned().unwrap_or_default();
    let mut large = plain_rows(w, &map);
    large.truncate(LARGE);
    let shown: Vec<Figure<'_>> = large.iter().map(|(label, value, note)| Figure { label, value, note }).collect();
    html! {
        @for warning in warnings(output) { (notice_block(Tone::Care, &capital(warning), "")) }
        @if !shown.is_empty() { div.card { (figures(&shown)) } }
        (cards(w, topic.name, input, output))
    }
}

/// The warnings of a result and of its parts.
fn warnings(output: &Value) -> Vec<&str> {
    let own = output["warnings"].as_array().into_iter().flatten().filter_map(Value::as_str);
    let parts = output.as_object().into_iter().flat_map(Map::values).filter(|value| value.is_object());
    own.chain(parts.flat_map(warnings)).collect()
}

/// Everything else that came out.
fn in_full(w: &Words, output: &Value) -> Markup {
    let map = output.as_object().cloned().unwrap_or_default();
    let rest: Vec<_> = plain_rows(w, &map).into_iter().skip(LARGE).collect();
    html! {
        @if !rest.is_empty() { (section("More figures", &html! {}, &values_table(w, "More figures", rest))) }
        @for (key, value) in map.iter().filter(|(key, _)| *key != "warnings") { (inside(w, &named(w, key).0, value)) }
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

/// End of the name of a figure in words.
const IN_WORDS: &str = "_in_words";

/// Plain values of an object: label, value with unit, and its standard deviation.
fn plain_rows(w: &Words, map: &Map<String, Value>) -> Vec<(String, String, String)> {
    let rank = |key: &str| FIRST.iter().position(|f| *f == key).unwrap_or(FIRST.len());
    let mut keys: Vec<&String> = map
        .iter()
        .filter(|(key, value)| {
            !key.ends_with("_sd") && !matches!(value, Value::Object(_) | Value::Array(_) | Value::Null)
        })
        // A figure that is also given in words is shown in words: its digits would say more than is known.
        .filter(|(key, _)| !map.contains_key(&format!("{key}{IN_WORDS}")))
        .map(|(key, _)| key)
        .collect();
    keys.sort_by_key(|key| rank(key));
    keys.iter()
        .map(|key| {
            let (label, unit) = named(w, key.strip_suffix(IN_WORDS).unwrap_or(key));
            let sd = map.get(&format!("{key}_sd")).and_then(Value::as_f64);
            (
                label,
                with_unit(w, &map[key.as_str()], unit),
                sd.map_or(String::new(), |sd| format!("± {}", number(w, two_digits(sd)))),
            )
        })
        .collect()
}

fn with_unit(w: &Words, value: &Value, unit: &str) -> String {
    let text = match value {
        Value::Number(n) => number(w, n.as_f64().unwrap_or(f64::NAN)),
        Value::String(text) => text.replace('_', " "),
        Value::Bool(true) => "yes".to_owned(),
        Value::Bool(false) => "no".to_owned(),
        _ => "–".to_owned(),
    };
    match unit {
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
fn number(w: &Words, value: f64) -> String {
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

fn values_table(w: &Words, caption: &str, rows: Vec<(String, String, String)>) -> Markup {
    // The column of doubts only where there are any.
    let doubts = rows.iter().any(|(_, _, note)| !note.is_empty());
    let cells = rows.into_iter().map(|(label, value, note)| {
        let mut row = vec![Cell::from(label), Cell::from(value)];
        if doubts {
            row.push(Cell::from(note));
        }
        row
    });
    let mut columns = vec![Column::words("what"), Column::figures("value")];
    if doubts {
        columns.push(Column::figures("one standard deviation"));
    }
    words_table(caption, columns, cells.collect())
}

/// What a result has inside: objects as tables, lists of objects as tables with a row each.
fn inside(w: &Words, title: &str, value: &Value) -> Markup {
    match value {
        Value::Object(map) => {
            let rows = plain_rows(w, map);
            html! {
                @if !rows.is_empty() { (section(&capital(title), &html! {}, &values_table(w, title, rows))) }
                @for (key, value) in map { (inside(w, &format!("{title}: {}", named(w, key).0), value)) }
            }
        }
        Value::Array(list) if list.iter().any(Value::is_object) => list_table(w, title, list),
        Value::Array(list) if !list.is_empty() && list.iter().all(Value::is_number) => {
            let numbers: Vec<String> = list.iter().take(60).map(|v| with_unit(w, v, "")).collect();
            section(&capital(title), &html! {}, &html! { p { (numbers.join("  ")) @if list.len() > 60 { " …" } } })
        }
        _ => html! {},
    }
}

fn list_table(w: &Words, title: &str, list: &[Value]) -> Markup {
    let mut keys: Vec<&str> = Vec::new();
    for map in list.iter().filter_map(Value::as_object) {
        for (key, value) in map {
            if !keys.contains(&key.as_str()) && !matches!(value, Value::Object(_) | Value::Array(_)) {
                keys.push(key);
            }
        }
    }
    keys.sort_by_key(|k| *k != "name");
    let column = |key: &&str| if *key == "name" { Column::words("name") } else { Column::figures(head(w, key)) };
    let columns = keys.iter().map(column).collect();
    let rows = list.iter().map(|row| keys.iter().map(|k| Cell::from(with_unit(w, &row[*k], ""))).collect()).collect();
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
        assert_eq!(number(&w(), 38.0), "38");
        assert_eq!(number(&w(), -0.053_219), "−0.0532");
        assert_eq!(number(&w(), 714.912_3), "714.91");
        assert_eq!(number(&w(), 0.000_12), "0.00012");
        assert_eq!(number(&w(), f64::NAN), "–");
        assert_eq!(number(&w(), two_digits(0.431_6)), "0.43");
        assert_eq!(number(&w(), two_digits(1.327)), "1.3");
        assert_eq!(number(&w(), two_digits(126.4)), "130");
        assert_eq!(number(&w(), two_digits(0.0)), "0");
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
        let output = serde_json::json!({ "pull_n": 222.5, "strength_over_stress": 63.69, "strength_over_stress_in_words": "over 60 times" });
        let rows = plain_rows(&w(), output.as_object().expect("a document"));
        let words = ("strength over stress".to_owned(), "over 60 times".to_owned(), String::new());
        assert!(rows.len() == 2 && rows.contains(&words), "{rows:?}");
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
