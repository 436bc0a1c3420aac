//! A check of a scale: one weight, one figure, one touch.

use super::beside_its_entry;
use super::entries::{Entries, capital, go_to, in_address, typed_at};
use super::{Framed, PageResult, Who, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::App;
use app::job::JobFile;
use app::scale_health::{NewCheck, ScaleHealth};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use desk::scale_health::Doubtful;
use desk::scale_health::LooksLike;
use jiff::civil::Date;
use look::{
    Action, Button, ButtonKind, Choice, Field, Icon, Notice, Tone, button, empty_state, field, hidden, icon, radios,
    request_key,
};
use maud::{Markup, html};
use trade::gauge::Measures;
use trade::gauge::Standard;
use trade::gauge::print_error;
use trade::gauge::print_value;
use trade::reading::Unit;
use trade::reading::What;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new().route("/scales/{scale}/check", get(show).post(keep))
}

/// What the entry is called for a connected scale, so that its settled value is put there by itself.
pub(super) const fn live_name(w: &Words, measures: Measures) -> &'static str {
    match measures {
        Measures::Mass => "check_mass",
        Measures::SwingWeight => "check_weight",
        Measures::Frequency | Measures::Angle | Measures::Length => "other",
    }
}

/// Which unit an entry without one is taken in.
const fn unit_hint(w: &Words, measures: Measures) -> &'static str {
    match measures {
        Measures::Mass => "g",
        Measures::SwingWeight => "",
        Measures::Frequency => "cpm",
        Measures::Angle => "°",
        Measures::Length => "mm",
    }
}

/// What speaks against the scales that a step reads, beside its entry; nothing where they are trusted.
pub(super) fn scale_words(w: &Words, file: &JobFile, asks: &[What], today: Date) -> Markup {
    let read = |unit: Unit| asks.iter().any(|what| what.unit() == unit);
    let (balance, mass) = (&file.shop.balance_scale.key, &file.shop.mass_scale.key);
    let said: Vec<(String, String)> = [(balance, read(Unit::Points)), (mass, read(Unit::Gram))]
        .into_iter()
        .filter(|(_, read)| *read)
        .filter_map(|(key, _)| file.watch.against(key).zip(file.shop.instrument(key).ok()))
        .map(|(trust, gauge)| (desk::scale_health::sentence(trust, &gauge, today), gauge.key))
        .collect();
    html! { @for (words, key) in &said { (caution_with_link(w, words, key)) } }
}

/// What speaks against the gram scale, beside the entry of a part; nothing where it is trusted.
pub(super) async fn gram_scale_words(w: &Words, app: &App) -> Result<Markup, app::AppError> {
    let key = app.shop().await?.mass_scale.key;
    let (all, _) = app.scales_today().await?;
    let wrong = all.iter().find(|scale| scale.key == key && !scale.words.is_empty());
    Ok(html! { @if let Some(scale) = wrong { (caution_with_link(w, &scale.words, &scale.key)) } })
}

fn caution_with_link(w: &Words, words: &str, key: &str) -> Markup {
    html! { p.caution { (icon(Icon::Caution)) span { (words) " " a href={ "/scales/" (in_address(key)) "/check" } { "Check it" } } } }
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Path(scale): Path<String>,
    Query(asked): Query<Vec<(String, String)>>,
) -> PageResult {
    let health = app.scale_health(&scale).await?;
    page(&w, &app, &health, &Entries::new(asked), None, StatusCode::OK).await
}

/// The check weight that is to be put on: the one chosen, else the one of the last check, else the first.
fn standard<'a>(health: &'a ScaleHealth, form: &Entries) -> Option<&'a Standard> {
    let last = health.last_check.as_ref().and_then(|e| e.check()).map(|c| c.standard.as_str());
    let by_key = |key: &str| health.standards.iter().find(|s| s.key == key);
    by_key(form.text("standard")).or_else(|| last.and_then(by_key)).or(health.standards.first())
}

async fn page(
    w: &Words,
    app: &App,
    health: &ScaleHealth,
    form: &Entries,
    asked: Option<&Doubtful>,
    status: StatusCode,
) -> PageResult {
    let gauge = &health.gauge;
    let body = match standard(health, form) {
        None => empty_state(
            &format!("The {} has nothing to be checked with.", gauge.name),
            "A check weight with its certified figure, or a club whose swing weight was assigned, tells whether a scale may be relied on.",
            &[Action { href: "/scales/setup", label: "Enter a check weight", primary: true }],
        ),
        Some(on) => entry(w, health, form, on, asked),
    };
    let notice =
        asked.map(|a| Notice { tone: Tone::Care, text: format!("{}.", capital(&a.words)), next: a.next.clone() });
    let title = format!("Check the {}", gauge.name);
    let page = framed(
        w,
        app,
        Framed {
            title: &title,
            crumb: "scales".into(),
            notice: form.notice(w).or(notice),
            at_bench: true,
            body,
            ..Framed::default()
        },
    )
    .await?;
    Ok((status, page).into_response())
}

fn entry(w: &Words, health: &ScaleHealth, form: &Entries, on: &Standard, asked: Option<&Doubtful>) -> Markup {
    let gauge = &health.gauge;
    let labels: Vec<String> = health
        .standards
        .iter()
        .map(|s| format!("{}: {} ± {}", s.name, print_value(gauge, s.value), print_error(gauge, s.tolerance_on(gauge))))
        .collect();
    let choices: Vec<Choice<'_>> = health
        .standards
        .iter()
        .zip(&labels)
        .map(|(s, label)| Choice { value: &s.key, label: label.into(), chosen: s.key == on.key })
        .collect();
    let key = form.some("request_key").unwrap_or_else(app::request_key);
    let action = format!("/scales/{}/check", in_address(&gauge.key));
    let typed = form.text("typed");
    html! {
        form.card.bench-decision.decision method="post" action=(action) data-keep=(gauge.name) {
            (request_key(&key)) (hidden("what", live_name(w, gauge.measures)))
            @if choices.len() > 1 { (radios("standard", "On the scale", &choices)) }
            @else { (hidden("standard", &on.key)) p { "Put " strong { (on.name) } " on the " (gauge.name) "." } }
            @if choices.len() == 1 {
                p.expected {
                    span.figure-value { (print_value(gauge, on.value)) } " "
                    span.figure-note { "± " (print_error(gauge, on.tolerance_on(gauge))) " is allowed" }
                }
            }
            @if let Some(asked) = asked { (answers(w, gauge, asked, typed)) }
            div.entry-row {
                (what_it_shows(w, form, gauge.measures, asked.is_none()))
                (button(&Button { label: if asked.is_some() { "Keep the new entry" } else { "Keep" },
                    kind: if asked.is_some() { ButtonKind::Quiet } else { ButtonKind::Primary }, big: true, ..Button::default() }))
            }
            p.hint { (how(w, gauge.measures)) }
        }
    }
}

/// How it is done.
const fn how(w: &Words, measures: Measures) -> &'static str {
    match measures {
        Measures::Mass => "Zero it first, set the weight down in the middle, wait until it stands still.",
        Measures::SwingWeight => "Zero it first, seat the club against the stop, wait until it stands still.",
        Measures::Frequency | Measures::Angle | Measures::Length => "Clamp and set it as always.",
    }
}

/// The answers to a question: what it may have been, and as it is.
/// The entry of what a gauge shows. No example stands in it: a figure would be put into the builder's head.
pub(super) fn what_it_shows(w: &Words, form: &Entries, measures: Measures, autofocus: bool) -> Markup {
    field(&Field {
        name: "typed",
        label: "It shows",
        value: form.text("typed"),
        placeholder: "it shows",
        error: form.error("typed"),
        inputmode: if measures == Measures::SwingWeight { "text" } else { "decimal" },
        unit: unit_hint(w, measures),
        required: true,
        autofocus,
        big: true,
        ..Field::default()
    })
}

fn answers(w: &Words, gauge: &trade::gauge::Gauge, asked: &Doubtful, typed: &str) -> Markup {
    html! {
        div.answers role="group" aria-label="What was it?" {
            @match &asked.looks_like {
                LooksLike::OtherUnit { typed } => (button(&Button { label: &format!("It was {typed}"), name: "instead", value: typed, unchecked: true, ..Button::default() })),
                LooksLike::OtherStandard { standard, name } => (button(&Button { label: &format!("{name} was on it"), name: "other", value: standard, unchecked: true, ..Button::default() })),
                LooksLike::FarOff => {}
            }
            (button(&Button { label: &format!("Keep “{typed}” as it is"), kind: ButtonKind::Danger, name: "confirmed", value: "1", ..Button::default() }))
            (hidden("asked_about", typed))
            p.small { "Or read the " (gauge.name) " again and enter that:" }
        }
    }
}

async fn keep(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(scale): Path<String>,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(sent);
    // A new entry after a question is a new entry, whichever button Enter has pressed.
    let same = form.text("asked_about").is_empty() || form.text("asked_about") == form.text("typed");
    if let Some(instead) = form.some("instead").filter(|_| same) {
        form.set("typed", instead);
    }
    if let Some(other) = form.some("other").filter(|_| same) {
        form.set("standard", other);
    }
    let new = NewCheck {
        standard: form.some("standard"),
        typed: form.text("typed").to_owned(),
        confirmed: form.has("confirmed", "1") && same,
        at: typed_at(form.text("at"))?,
        by,
        request_key: form.some("request_key"),
    };
    match app.check_scale(&scale, &new).await {
        Ok(answer) => match &answer.question {
            Some(asked) => page(&w, &app, &answer.health, &form, Some(asked), StatusCode::UNPROCESSABLE_ENTITY).await,
            None => Ok(go_to(&format!("/scales/{}?kept=1", in_address(&scale))).into_response()),
        },
        Err(error) => {
            let health = app.scale_health(&scale).await?;
            form.refuse("typed", beside_its_entry(&w, &error.refusal()));
            page(&w, &app, &health, &form, None, super::failure_status(&error)).await
        }
    }
}
