//! What the shop has learned: each value with where it comes from, to be reset or locked.

use super::entries::{Entries, go_to};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::problem::EdgeFault;
use crate::reader::Reader;
use app::App;
use app::learned::{LearnedChange, LearnedPoint, LearnedShop, LearnedView, PinLearned, ResetLearned};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use bench::learned::{LearnedFrom, LearnedUnit, UnknownKey, ValueKey};
use look::{
    Action, Button, ButtonKind, Field, Nav, Notice, Tone, TracePoint, TraceView, button, columns, empty_state, field,
    hidden, rich, section, tag, trace,
};
use maud::{Markup, html};
use words::{Amount, Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/learned", get(show)).route("/learned/change", post(change))
}

async fn show(State(app): State<App>, Reader(w): Reader, Query(asked): Query<Vec<(String, String)>>) -> PageResult {
    let notice = Entries::new(asked).has("kept", "1").then(|| Notice {
        tone: Tone::Good,
        text: w.text("learned-kept"),
        next: w.text("learned-kept-next"),
    });
    learned_page(&w, &app, notice, None, StatusCode::OK).await
}

/// The page; `told` is the form of what a builder knows, where it was typed and refused.
pub(super) async fn learned_page(
    w: &Words,
    app: &App,
    notice: Option<Notice>,
    told: Option<Entries>,
    status: StatusCode,
) -> PageResult {
    let learned = app.learned().await?;
    let history = app.learned_history().await?;
    let told = super::told::part(w, &app.told().await?, &app.models(None).await?, told);
    let body = if learned.at.is_none() {
        let empty = empty_state(
            &w.text("learned-empty"),
            &w.text("learned-empty-next"),
            &[Action { href: "/bench", label: &w.text("learned-open-bench"), primary: true }],
        );
        html! { (told) (empty) }
    } else {
        html! {
            (told)
            p { (w.text("learned-about")) }
            (values_part(w, &learned))
            (scatter_part(w, &learned))
            (history_part(w, &history))
            (reset_all(w))
        }
    };
    let crumb = learned.at.map_or_else(String::new, |at| text!(w, "learned-changed", changed_at = at));
    let title = w.text("learned-title");
    let view = Framed {
        title: &title,
        active: Nav::Elsewhere,
        crumb,
        notice,
        body,
        terms: true,
        help: Some("learned"),
        ..Framed::default()
    };
    Ok((status, framed(w, app, view).await?).into_response())
}

/// A group of the page; the groups are in the order in which a builder thinks of a club.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Group {
    Glue,
    Heads,
    Grips,
    Scales,
    /// Values of another version of the program.
    Other,
}

impl Group {
    const ALL: [Self; 5] = [Self::Glue, Self::Heads, Self::Grips, Self::Scales, Self::Other];

    fn of(key: &str) -> Self {
        match key.parse() {
            Ok(ValueKey::Adhesive(_) | ValueKey::Tape(_) | ValueKey::Solvent) => Self::Glue,
            Ok(
                ValueKey::Delta(_)
                | ValueKey::ShaftCentre(_)
                | ValueKey::ShaftCut(_)
                | ValueKey::Stiffness(_)
                | ValueKey::StiffnessTilt(_),
            ) => Self::Heads,
            Ok(ValueKey::GripCentre(_) | ValueKey::Cap(_)) => Self::Grips,
            Ok(ValueKey::UsualOffset(_) | ValueKey::ClampGives | ValueKey::GripGives) => Self::Scales,
            Err(UnknownKey) => Self::Other,
        }
    }

    const fn title(self) -> &'static str {
        match self {
            Self::Glue => "learned-group-glue",
            Self::Heads => "learned-group-heads",
            Self::Grips => "learned-group-grips",
            Self::Scales => "learned-group-scales",
            Self::Other => "learned-group-other",
        }
    }
}

fn values_part(w: &Words, learned: &LearnedShop) -> Markup {
    let of = |group: Group| -> Vec<Markup> {
        learned.values.iter().filter(|v| Group::of(&v.key) == group).map(|one| value_card(w, one)).collect()
    };
    html! {
        @for group in Group::ALL {
            @let cards = of(group);
            @if !cards.is_empty() { (section(&w.text(group.title()), &html! {}, &columns(&cards))) }
        }
    }
}

/// What sort of figure a learned one is, and the factor from its own unit to that in which such figures are kept; none
/// where the unit is not known.
#[must_use]
pub const fn amount_of(unit: LearnedUnit) -> Option<(Amount, f64)> {
    match unit {
        LearnedUnit::Millimetre => Some((Amount::Length, 1.0)),
        LearnedUnit::Gram => Some((Amount::Mass, 1.0)),
        LearnedUnit::Points => Some((Amount::Points, 1.0)),
        LearnedUnit::Cpm => Some((Amount::Frequency, 1.0)),
        LearnedUnit::Degree => Some((Amount::Angle, 1.0)),
        LearnedUnit::Percent => Some((Amount::Share, 0.01)),
        LearnedUnit::Times => Some((Amount::Times, 1.0)),
        LearnedUnit::Unknown => None,
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

/// A figure with its unit.
fn figure(w: &Words, view: &LearnedView, value: f64, places: u8) -> String {
    match amount_of(view.unit) {
        Some((amount, factor)) => w.amount(amount, value * factor, places),
        None => bare(w, view, value, places),
    }
}

/// The same with its sign.
fn signed_figure(w: &Words, view: &LearnedView, value: f64, places: u8) -> String {
    match amount_of(view.unit) {
        Some((amount, factor)) => w.signed_amount(amount, value * factor, places),
        None => w.signed(value, places),
    }
}

/// A figure whose unit stands before it already.
fn bare(w: &Words, view: &LearnedView, value: f64, places: u8) -> String {
    let (amount, factor) = amount_of(view.unit).unwrap_or((Amount::Times, 1.0));
    w.amount_figure(amount, value * factor, places)
}

fn locked(w: &Words, view: &LearnedView) -> Markup {
    html! { @if view.pinned { " " (tag(Tone::Care, &w.text("learned-locked"))) } }
}

fn value_card(w: &Words, view: &LearnedView) -> Markup {
    let places = decimals(view.band);
    let new_shop = bare(w, view, view.new_shop, decimals(view.new_shop));
    let difference = signed_figure(w, view, view.mean, places);
    html! {
        section.card.learned {
            h3 { (words::capital(&w.tell(&view.what))) (locked(w, view)) }
            p.learned-mean {
                strong { (view.figure.map_or_else(|| difference.clone(), |value| figure(w, view, value, places))) }
                " ± " (bare(w, view, view.band, places))
            }
            p.small {
                @if view.figure.is_some() {
                    (text!(w, "learned-of-model", difference = difference, new_shop = new_shop))
                } @else {
                    (text!(w, "learned-of-new-shop", new_shop = new_shop))
                }
            }
            (picture(w, view, 0.0))
            p.small { (text!(w, "learned-from", clubs = view.clubs, jobs = view.jobs)) }
            (from_part(w, &view.from))
            (change_part(w, view))
        }
    }
}

fn picture(w: &Words, view: &LearnedView, start: f64) -> Markup {
    let name = |point: Option<&LearnedPoint>| {
        point.map_or_else(String::new, |p| {
            p.job.map_or_else(|| w.moment(p.at), |job| text!(w, "learned-picture-job", job = job))
        })
    };
    let (amount, factor) = amount_of(view.unit).map_or((None, 1.0), |(amount, factor)| (Some(amount), factor));
    let point = |p: &LearnedPoint| TracePoint { mean: p.mean * factor, band: p.band * factor };
    trace(
        w,
        &TraceView {
            id: format!("trace-{}", view.key),
            title: words::capital(&text!(w, "learned-picture", what = view.what)),
            points: view.history.iter().map(point).collect(),
            start: start * factor,
            ends: (name(view.history.first()), name(view.history.last())),
            amount,
            decimals: decimals(view.history.iter().map(|p| p.mean.abs() + p.band).fold(0.0, f64::max)),
        },
    )
}

fn from_part(w: &Words, from: &[LearnedFrom]) -> Markup {
    html! {
        @if !from.is_empty() {
            details { summary { (w.text("learned-which")) }
                ul.plain { @for job in from.iter().rev() {
                    li { (rich!(w, "learned-which-job", |_, inner| html! { a href={ "/records/" (job.job) } { (inner) } },
                        job = job.job, clubs = job.clubs.iter().map(|number| w.club_number(number)).collect::<Vec<_>>().join(" "))) }
                } }
            }
        }
    }
}

fn change_part(w: &Words, view: &LearnedView) -> Markup {
    let (action, label) = if view.pinned { ("unpin", "learned-unlock") } else { ("pin", "learned-lock") };
    html! {
        details { summary { (w.text("learned-change")) }
            form method="post" action="/learned/change" {
                (hidden("key", &view.key))
                (field(&Field { name: "reason", id: &format!("reason-{}", view.key), label: &w.text("learned-why"), hint: &w.text("learned-why-hint"), required: true, ..Field::default() }))
                div.actions {
                    (button(&Button { label: &w.text(label), kind: ButtonKind::Quiet, name: "action", value: action, ..Button::default() }))
                    (button(&Button { label: &w.text("learned-reset"), kind: ButtonKind::Danger, name: "action", value: "reset", ..Button::default() }))
                }
                p.hint { (w.text("learned-change-hint")) }
            }
        }
    }
}

fn scatter_part(w: &Words, learned: &LearnedShop) -> Markup {
    if learned.scatter.is_empty() {
        return html! {};
    }
    let card = |view: &LearnedView| {
        let times = view.unit == LearnedUnit::Times;
        let places = if times { 1 } else { decimals(view.mean).max(2) };
        let shown = |value: f64| {
            let figure = figure(w, view, value, places);
            if times { figure } else { format!("± {figure}") }
        };
        let (new_shop, n) = (shown(view.new_shop), view.observations.unwrap_or(0.0).round() as i64);
        html! {
            section.card.learned {
                h3 { (words::capital(&w.tell(&view.what))) (locked(w, view)) }
                p.learned-mean { strong { (shown(view.mean)) } }
                p.small { (text!(w, "learned-scatter-of", new_shop = new_shop, n = n)) }
                (picture(w, view, view.new_shop))
                (change_part(w, view))
            }
        }
    };
    let cards: Vec<Markup> = learned.scatter.iter().map(card).collect();
    section(
        &w.text("learned-scatter"),
        &html! {},
        &html! { p.small { (w.text("learned-scatter-about")) } (columns(&cards)) },
    )
}

fn history_part(w: &Words, history: &[LearnedChange]) -> Markup {
    let what = |change: &LearnedChange| match (change.job, &change.what) {
        (Some(job), _) => html! { strong { (rich!(w, "learned-history-job",
        |_, inner| html! { a href={ "/records/" (job) } { (inner) } }, job = job)) } },
        (None, Some(what)) => {
            rich!(
                w,
                "learned-history-value",
                |_, inner| html! { strong { (inner) } },
                cause = change.cause,
                what = what
            )
        }
        (None, None) => {
            rich!(w, "learned-history-all", |_, inner| html! { strong { (inner) } }, cause = change.cause)
        }
    };
    section(
        &w.text("learned-history"),
        &html! {},
        &html! {
            ul.plain { @for change in history {
                li {
                    (what(change))
                    @if !change.reason.is_empty() { (text!(w, "learned-history-reason", reason = change.reason)) }
                    span.small { " " (text!(w, "learned-history-by", by = change.by, changed_at = change.at)) }
                }
            } }
        },
    )
}

fn reset_all(w: &Words) -> Markup {
    html! {
        details { summary { (w.text("learned-all")) }
            form method="post" action="/learned/change" {
                p { (w.text("learned-all-about")) }
                (field(&Field { name: "reason", id: "reason-all", label: &w.text("learned-why"), hint: &w.text("learned-all-hint"), required: true, ..Field::default() }))
                div.actions { (button(&Button { label: &w.text("learned-reset-all"), kind: ButtonKind::Danger, name: "action", value: "reset", ..Button::default() })) }
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
        Err(error) => learned_page(&w, &app, Some(failure(&w, &error)), None, failure_status(&error)).await,
    }
}
