//! What the shop has learned: each value with how it came about, to be set back or pinned.

use super::entries::{Entries, counted, go_to};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::problem::EdgeFault;
use crate::reader::Reader;
use app::App;
use app::learned::{LearnedChange, LearnedShop, LearnedView, PinLearned, ResetLearned};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use bench::learned::LearnedFrom;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Nav, Notice, Table, Tone, TracePoint, TraceView, button, columns,
    empty_state, field, hidden, section, table, tag, trace,
};
use maud::{Markup, html};
use quantity::decimal;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new().route("/learned", get(show)).route("/learned/change", post(change))
}

async fn show(State(app): State<App>, Reader(w): Reader, Query(asked): Query<Vec<(String, String)>>) -> PageResult {
    let notice = Entries::new(asked).has("kept", "1").then(|| Notice {
        tone: Tone::Good,
        text: "Kept.".into(),
        next: "Jobs under way are forecast with it from now on.".into(),
    });
    learned_page(&w, &app, notice, StatusCode::OK).await
}

async fn learned_page(w: &Words, app: &App, notice: Option<Notice>, status: StatusCode) -> PageResult {
    let learned = app.learned().await?;
    let history = app.learned_history().await?;
    let body = if learned.at.is_none() {
        empty_state(
            "The shop has learned nothing yet.",
            "It learns from the readings of each finished job: how heavy your joints and your tape come out, where heads and grips have their centre, what your scales are off by. Build one job to its end; the next one is then forecast more sharply.",
            &[Action { href: "/bench", label: "Bench", primary: true }],
        )
    } else {
        html! {
            p { "What earlier jobs have taught, and what the next job begins with. “±” is where the true value lies 95 times in 100. The line in a picture is where a new shop begins." }
            (values_part(w, &learned))
            (scatter_part(w, &learned))
            (history_part(w, &history))
            (reset_all(w))
        }
    };
    let crumb = learned.at.map_or_else(String::new, |at| format!("last changed {}", w.moment(at)));
    let framed =
        framed(w, app, Framed { title: "Learned", active: Nav::Elsewhere, crumb, notice, body, ..Framed::default() });
    Ok((status, framed.await?).into_response())
}

/// Groups in the order in which a builder thinks of a club.
const GROUPS: [(&str, &[&str]); 4] = [
    ("Glue and tape", &["adhesive", "tape", "solvent"]),
    ("Heads and shafts", &["delta", "shaft_centre", "shaft_cut"]),
    ("Grips", &["grip_centre", "cap"]),
    ("Scales", &["usual_offset"]),
];

fn values_part(w: &Words, learned: &LearnedShop) -> Markup {
    let of = |kinds: &[&str]| -> Vec<Markup> {
        let kind = |v: &&LearnedView| kinds.contains(&v.key.split(':').next().unwrap_or_default());
        learned.values.iter().filter(kind).map(|one| value_card(w, one)).collect()
    };
    html! {
        @for (title, kinds) in GROUPS {
            @let cards = of(kinds);
            @if !cards.is_empty() { (section(title, &html! {}, &columns(&cards))) }
        }
    }
}

/// Decimals that show a band to about two figures.
fn decimals(band: f64) -> u8 {
    match band.abs() {
        b if b >= 10.0 => 0,
        b if b >= 1.0 => 1,
        _ => 2,
    }
}

fn with_unit(w: &Words, value: f64, places: u8, unit: &str) -> String {
    format!("{} {unit}", decimal(value, places).replace('-', "−"))
}

fn value_card(w: &Words, view: &LearnedView) -> Markup {
    let places = decimals(view.band);
    html! {
        section.card.learned {
            h3 { (view.words) @if view.pinned { " " (tag(Tone::Care, "pinned")) } }
            p.learned-mean {
                @match view.figure {
                    Some(figure) => { strong { (with_unit(w, figure, places, &view.unit)) } " ± " (decimal(view.band, places)) }
                    None => { strong { (w.signed(view.mean, places)) " " (view.unit) } " ± " (decimal(view.band, places)) }
                }
            }
            p.small {
                @if view.figure.is_some() { (w.signed(view.mean, places)) " " (view.unit) " against the model's own figure. " }
                "A new shop begins with ±\u{a0}" (decimal(view.new_shop, decimals(view.new_shop))) "."
            }
            (picture(w, view, 0.0))
            p.small { "Learned from " (counted(usize::try_from(view.clubs).unwrap_or(0), "club")) " in "
                (counted(usize::try_from(view.jobs).unwrap_or(0), "job")) "." }
            (from_part(w, &view.from))
            (change_part(w, view))
        }
    }
}

fn picture(w: &Words, view: &LearnedView, start: f64) -> Markup {
    let name = |point: Option<&app::learned::LearnedPoint>| {
        point.map_or_else(String::new, |p| p.job.map_or_else(|| w.moment(p.at), |job| format!("job {job}")))
    };
    trace(&TraceView {
        id: format!("trace-{}", view.key),
        title: format!("{}: how it came about", view.words),
        points: view.history.iter().map(|p| TracePoint { mean: p.mean, band: p.band }).collect(),
        start,
        ends: (name(view.history.first()), name(view.history.last())),
        unit: view.unit.clone(),
        decimals: usize::from(decimals(view.history.iter().map(|p| p.mean.abs() + p.band).fold(0.0, f64::max))),
    })
}

fn from_part(w: &Words, from: &[LearnedFrom]) -> Markup {
    html! {
        @if !from.is_empty() {
            details { summary { "Which clubs" }
                ul.plain { @for job in from.iter().rev() {
                    li { a href={ "/records/" (job.job) } { "Job " (job.job) } ": " (job.clubs.join(" ")) }
                } }
            }
        }
    }
}

fn change_part(w: &Words, view: &LearnedView) -> Markup {
    let (action, label) = if view.pinned { ("unpin", "Let it learn again") } else { ("pin", "Pin") };
    html! {
        details { summary { "Set back or pin" }
            form method="post" action="/learned/change" {
                (hidden("key", &view.key))
                (field(&Field { name: "reason", id: &format!("reason-{}", view.key), label: "Why", hint: "Stands in the history", required: true, ..Field::default() }))
                div.actions {
                    (button(&Button { label, kind: ButtonKind::Quiet, name: "action", value: action, ..Button::default() }))
                    (button(&Button { label: "Set back", kind: ButtonKind::Danger, name: "action", value: "reset", ..Button::default() }))
                }
                p.hint { "A pinned value is used as it stands and learns nothing. Set back, it begins again as in a new shop." }
            }
        }
    }
}

fn scatter_part(w: &Words, learned: &LearnedShop) -> Markup {
    if learned.scatter.is_empty() {
        return html! {};
    }
    let row = |view: &LearnedView| {
        let places = if view.unit == "times" { 1 } else { decimals(view.mean).max(2) };
        let figure = |value: f64| {
            if view.unit == "times" {
                format!("{} ×", decimal(value, places))
            } else {
                format!("± {}", with_unit(w, value, places, &view.unit))
            }
        };
        vec![
            Cell(html! { (view.words) @if view.pinned { " " (tag(Tone::Care, "pinned")) } }),
            Cell::from(figure(view.mean)),
            Cell::from(figure(view.new_shop)),
            Cell::from(decimal(view.observations.unwrap_or(0.0), 0)),
            Cell(picture(w, view, view.new_shop)),
            Cell(change_part(w, view)),
        ]
    };
    let heads = ["what", "now", "new shop", "worth readings", "how it came about", "change"];
    section(
        "How much things scatter",
        &html! {},
        &html! {
            p.small { "Two out of three lie within the figure. The less it is, the narrower the forecasts." }
            (table(&Table {
                caption: "How much things scatter from one to the next",
                columns: heads.iter().enumerate().map(|(i, head)| Column { head: (*head).into(), figures: (1..4).contains(&i) }).collect(),
                rows: learned.scatter.iter().map(row).collect(),
                ..Table::default()
            }))
        },
    )
}

fn history_part(w: &Words, history: &[LearnedChange]) -> Markup {
    section(
        "History",
        &html! {},
        &html! {
            ul.plain { @for change in history {
                li { strong {
                        @match change.job { Some(job) => { a href={ "/records/" (job) } { "Job " (job) } " finished" } None => (change.cause.word()) }
                    }
                    @if change.job.is_none() { ": " @if change.words.is_empty() { "everything" } @else { (change.words) } }
                    @if !change.reason.is_empty() { ", because “" (change.reason) "”" }
                    span.small { " " (change.by) ", " (w.moment(change.at)) } }
            } }
        },
    )
}

fn reset_all(w: &Words) -> Markup {
    html! {
        details { summary { "Begin again as a new shop" }
            form method="post" action="/learned/change" {
                p { "All values go back to what a new shop begins with, the pinned ones too. The history stays." }
                (field(&Field { name: "reason", id: "reason-all", label: "Why", hint: "For example: moved, all scales new", required: true, ..Field::default() }))
                div.actions { (button(&Button { label: "Set everything back", kind: ButtonKind::Danger, name: "action", value: "reset", ..Button::default() })) }
            }
        }
    }
}

async fn change(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let form = Entries::new(sent);
    let (key, reason) = (form.some("key"), form.text("reason").to_owned());
    let done = match (form.text("action"), key) {
        ("reset", key) => app.reset_learned(&ResetLearned { key, by, reason }).await,
        ("pin", Some(key)) => app.pin_learned(&PinLearned { key, pinned: true, by, reason }).await,
        ("unpin", Some(key)) => app.pin_learned(&PinLearned { key, pinned: false, by, reason }).await,
        _ => Err(app::AppError::invalid(EdgeFault::NoAction)),
    };
    match done {
        Ok(()) => Ok(go_to("/learned?kept=1").into_response()),
        Err(error) => learned_page(&w, &app, Some(failure(&w, &error)), failure_status(&error)).await,
    }
}
