//! A check of a scale: one weight, one figure, one touch.

use super::beside_its_entry;
use super::entries::{Entries, go_to, in_address, typed_at};
use super::scale_health::amount_of;
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
use bench::belief::Believed;
use desk::scale_health::Doubtful;
use desk::scale_health::LooksLike;
use jiff::civil::Date;
use look::{
    Action, Button, ButtonKind, Choice, Field, Icon, Notice, Tone, button, empty_state, field, hidden, icon, radios,
    request_key, rich,
};
use maud::{Markup, html};
use quantity::{LengthUnit, MassUnit};
use trade::gauge::{Gauge, Measures, Standard};
use trade::reading::{Unit, What};
use trade::trust::TrustSaid;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/scales/{scale}/check", get(show).post(keep))
}

/// What the entry is called for a connected scale, so that its settled value is put there by itself.
pub(super) const fn live_name(measures: Measures) -> &'static str {
    match measures {
        Measures::Mass => "check_mass",
        Measures::SwingWeight => "check_weight",
        Measures::Frequency | Measures::Angle | Measures::Length | Measures::Diameter => "other",
    }
}

/// Which unit an entry without one is taken in: a letter and points says itself what it is.
pub(super) fn unit_hint(w: &Words, measures: Measures) -> String {
    match measures {
        Measures::SwingWeight => String::new(),
        other => w.amount_sign(amount_of(other)),
    }
}

/// An entry with the reader's unit, where it has none and is not in the unit that a bare figure is taken in.
pub(super) fn with_unit(w: &Words, measures: Measures, typed: &str) -> String {
    let bare = !typed.chars().any(char::is_alphabetic) && typed.chars().any(|c| c.is_ascii_digit());
    let other = match measures {
        Measures::Mass => w.units.mass != MassUnit::Gram,
        Measures::Length | Measures::Diameter => w.units.length != LengthUnit::Millimetre,
        Measures::SwingWeight | Measures::Frequency | Measures::Angle => false,
    };
    if bare && other { format!("{} {}", typed.trim(), unit_hint(w, measures)) } else { typed.to_owned() }
}

/// What speaks against the scales that a step reads, beside its entry; nothing where they are trusted.
pub(super) fn scale_words(w: &Words, file: &JobFile, asks: &[What], today: Date) -> Markup {
    let read = |unit: Unit| asks.iter().any(|what| what.unit() == unit);
    let (balance, mass) = (&file.shop.balance_scale.key, &file.shop.mass_scale.key);
    let said: Vec<(TrustSaid, String)> = [(balance, read(Unit::Points)), (mass, read(Unit::Gram))]
        .into_iter()
        .filter(|(_, read)| *read)
        .filter_map(|(key, _)| file.watch.against(key).zip(file.shop.instrument(key).ok()))
        .filter_map(|(trust, gauge)| desk::scale_health::said(trust, &gauge, today).map(|said| (said, gauge.key)))
        .collect();
    html! { @for (said, key) in &said { (caution_with_link(w, said, key)) } }
}

/// What the job believes of today's balance scale, beside an entry that it changes; nothing where it changes none, or where the
/// step reads no swing weight.
pub(super) fn shift_words(w: &Words, believed: &Believed<'_>, asks: &[What]) -> Result<Markup, app::AppError> {
    if !asks.iter().any(|what| what.unit() == Unit::Points) {
        return Ok(html! {});
    }
    let shift = bench::scale_shift::scale_shift(believed)?;
    Ok(html! { @if shift.shown { p.hint.shift {
        (text!(w, "scale-shift-counted", says = shift.fact)) " "
        a href={ "/scales/" (in_address(&shift.scale)) "/check" } { (w.text("scale-shift-check")) }
    } } })
}

/// What speaks against the gram scale, beside the entry of a part; nothing where it is trusted.
pub(super) async fn gram_scale_words(w: &Words, app: &App) -> Result<Markup, app::AppError> {
    let key = app.shop().await?.mass_scale.key;
    let (all, _) = app.scales_today().await?;
    let said = all.iter().find(|scale| scale.key == key).and_then(|scale| scale.said.as_ref());
    Ok(html! { @if let Some(said) = said { (caution_with_link(w, said, &key)) } })
}

fn caution_with_link(w: &Words, said: &TrustSaid, key: &str) -> Markup {
    html! { p.caution { (icon(Icon::Caution)) span {
        (w.tell(said)) " " a href={ "/scales/" (in_address(key)) "/check" } { (w.text("scale-check-link")) }
    } } }
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
            &text!(w, "scale-check-none", scale = gauge.name),
            &w.text("scale-check-none-next"),
            &[Action { href: "/scales/setup", label: &w.text("scale-check-enter-weight"), primary: true }],
        ),
        Some(on) => entry(w, health, form, on, asked),
    };
    let notice = asked.map(|a| Notice { tone: Tone::Care, text: w.sentence(&a.said), next: w.tell(&a.next) });
    let title = text!(w, "scale-check-title", scale = gauge.name);
    let notice = form.notice(w).or(notice);
    let view = Framed {
        title: &title,
        crumb: w.text("scale-check-crumb"),
        notice,
        at_bench: true,
        body,
        help: Some("scales"),
        ..Framed::default()
    };
    Ok((status, framed(w, app, view).await?).into_response())
}

fn entry(w: &Words, health: &ScaleHealth, form: &Entries, on: &Standard, asked: Option<&Doubtful>) -> Markup {
    let gauge = &health.gauge;
    let label = |s: &Standard| {
        let (value, allowed) = (gauge.reading(s.value), gauge.amount(s.tolerance_on(gauge)));
        text!(w, "scale-check-choice", standard = s.name, value = value, allowed = allowed)
    };
    let choices: Vec<Choice<'_>> = health
        .standards
        .iter()
        .map(|s| Choice { value: &s.key, label: label(s).into(), chosen: s.key == on.key })
        .collect();
    let key = form.some("request_key").unwrap_or_else(app::request_key);
    let action = format!("/scales/{}/check", in_address(&gauge.key));
    let typed = form.text("typed");
    let keep = if asked.is_some() { "scale-check-keep-new" } else { "scale-check-keep" };
    html! {
        form.card.bench-decision.decision method="post" action=(action) data-keep=(gauge.name) {
            (request_key(&key)) (hidden("what", live_name(gauge.measures)))
            @if choices.len() > 1 { (radios("standard", &w.text("scale-check-on-scale"), &choices)) }
            @else {
                (hidden("standard", &on.key))
                p { (rich!(w, "scale-check-put", |_, inner| html! { strong { (inner) } }, standard = on.name, scale = gauge.name)) }
            }
            @if choices.len() == 1 {
                p.expected {
                    span.figure-value { (w.tell(&gauge.reading(on.value))) } " "
                    span.figure-note { (text!(w, "scale-check-allowed", allowed = gauge.amount(on.tolerance_on(gauge)))) }
                }
            }
            @if let Some(asked) = asked { (answers(w, gauge, asked, typed)) }
            div.entry-row {
                (what_it_shows(w, form, gauge.measures, asked.is_none()))
                (button(&Button { label: &w.text(keep),
                    kind: if asked.is_some() { ButtonKind::Quiet } else { ButtonKind::Primary }, big: true, ..Button::default() }))
            }
            p.hint { (w.text(how(gauge.measures))) }
        }
    }
}

/// How it is done.
const fn how(measures: Measures) -> &'static str {
    match measures {
        Measures::Mass => "scale-check-how-mass",
        Measures::SwingWeight => "scale-check-how-swing-weight",
        Measures::Frequency | Measures::Angle | Measures::Length | Measures::Diameter => "scale-check-how-other",
    }
}

/// The entry of what a gauge shows. No example stands in it: a figure would be put into the builder's head.
pub(super) fn what_it_shows(w: &Words, form: &Entries, measures: Measures, autofocus: bool) -> Markup {
    field(&Field {
        name: "typed",
        label: &w.text("scale-check-shows"),
        value: form.text("typed"),
        placeholder: &w.text("scale-check-shows-empty"),
        error: form.error("typed"),
        inputmode: if measures == Measures::SwingWeight { "text" } else { "decimal" },
        unit: &unit_hint(w, measures),
        required: true,
        autofocus,
        big: true,
        ..Field::default()
    })
}

/// The answers to a question: what it may have been, and as it is.
fn answers(w: &Words, gauge: &Gauge, asked: &Doubtful, typed: &str) -> Markup {
    html! {
        div.answers role="group" aria-label=(w.text("scale-check-answers")) {
            @match &asked.looks_like {
                LooksLike::OtherUnit { typed } => (button(&Button { label: &text!(w, "scale-check-was", typed = typed), name: "instead", value: typed, unchecked: true, ..Button::default() })),
                LooksLike::OtherStandard { standard, name } => (button(&Button { label: &text!(w, "scale-check-was-on", standard = name), name: "other", value: standard, unchecked: true, ..Button::default() })),
                LooksLike::FarOff => {}
            }
            (button(&Button { label: &text!(w, "scale-check-as-it-is", typed = typed), kind: ButtonKind::Danger, name: "confirmed", value: "1", ..Button::default() }))
            (hidden("asked_about", typed))
            p.small { (text!(w, "scale-check-or-again", scale = gauge.name)) }
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
    let gauge = app.shop().await?.instrument(&scale).map_err(app::AppError::from)?;
    let new = NewCheck {
        standard: form.some("standard"),
        typed: with_unit(&w, gauge.measures, form.text("typed")),
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
