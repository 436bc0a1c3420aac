//! Today: what to do now, at a glance.

use super::entries::{counted, go_to};
use super::{Framed, PageResult, Who, framed, say};
use crate::reader::Reader;
use app::clock_watch::ConfirmClock;
use app::job::JobSummary;
use app::scale_health::ScaleToday;
use app::stock::PartQuery;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, State};
use axum::response::IntoResponse;
use axum::routing::{get, post};
use desk::order::Waiting;
use jiff::civil::Date;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Icon, Nav, Table, Tone, button, clock, empty_state, field, icon,
    link_button, section, table, tag,
};
use maud::{Markup, html};
use serde::Deserialize;
use std::collections::BTreeMap;
use trade::job::JobState;
use trade::model::PartKind;
use trade::trust::TrustSaid;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new().route("/", get(today)).route("/clock/confirm", post(confirm_clock))
}

async fn today(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let jobs = app.jobs(None).await?;
    let now = app.now();
    let batches = app.recent_batches(7).await?;
    let running: Vec<_> = batches.iter().filter(|b| b.full_cure_at > now).collect();
    let date = w.day_of(now);
    let doubts: Vec<(i64, i64, &str)> =
        jobs.iter().flat_map(|j| j.doubted.iter().map(|c| (j.number, c.slot, c.number.as_str()))).collect();
    let guide = guide(&w, &app, &jobs).await?;
    let (scales, read_today) = app.scales_today().await?;
    let jobs_part = if jobs.is_empty() && guide.is_some() {
        html! { p { "No job is under way." } }
    } else if jobs.is_empty() {
        empty_state(
            "No job is under way.",
            "Write a fitting sheet, approve it, and its job stands here.",
            &[
                Action { href: "/sheets/new", label: "New sheet", primary: true },
                Action { href: "/stock", label: "Stock", primary: false },
            ],
        )
    } else {
        job_table(&w, &jobs, date, &app.waits().await?)
    };
    let expected = super::orders::due_part(&w, &app).await?;
    let clock_state = app.clock_state().await?;
    let body = html! {
        (super::labels::scan_form(&w))
        div data-live="0" {
            @if let Some(words) = &clock_state.words { (clock_part(&w, words)) }
            @if let Some(steps) = &guide { (guide_part(&w, steps)) }
            @if !doubts.is_empty() {
                (section("Look again", &html! {}, &html! {
                    ul.plain { @for (job, slot, club) in &doubts {
                        li { (tag(Tone::Doubt, "doubted")) " " a href={ "/bench/" (job) "/" (slot) } { "Job " (job) ", the " (club) } }
                    } }
                }))
            }
            (scales_part(&w, &scales, read_today))
            (expected)
            (section("Jobs", &html! { a.button.quiet href="/sheets/new" { "New sheet" } }, &jobs_part))
            @if !running.is_empty() {
                (section("Curing", &html! { a href="/glue" { "All batches" } }, &table(&Table {
                    caption: "Batches that cure",
                    columns: vec![
                        Column::words("batch"),
                        Column::words("clubs"),
                        Column::figures("pot life"),
                        Column::figures("handle"),
                        Column::figures("bend and swing"),
                    ],
                    rows: running.iter().map(|b| {
                        let cell = |until: jiff::Timestamp, done: &str| {
                            let text = if until > now { say::left(&w, now, until) } else { done.to_owned() };
                            Cell(clock(&until.to_string(), &text, done))
                        };
                        vec![
                            Cell::from(format!("{} · {}", b.batch.number, b.adhesive_name)),
                            Cell::from(batch_clubs(&w, &b.clubs)),
                            cell(b.pot_life_until, "over"),
                            cell(b.handling_at, "now"),
                            cell(b.full_cure_at, "now"),
                        ]
                    }).collect(),
                    ..Table::default()
                })))
            }
        }
    };
    let cups = Some(batches.iter().map(Into::into).collect());
    let view = Framed { title: "Today", active: Nav::Today, crumb: crumb(&w, &jobs), cups, body, ..Framed::default() };
    Ok(framed(&w, &app, view).await?.into_response())
}

/// A clock that cannot be relied on comes before everything else: cures and the record go by it.
fn clock_part(w: &Words, words: &str) -> Markup {
    section(
        "Clock",
        &html! {},
        &html! {
            p { (tag(Tone::Bad, "not relied on")) " " (words) "." }
            details { summary { "The clock is right" }
                form method="post" action="/clock/confirm" {
                    (field(&Field { name: "reason", label: "How did you check it? The log keeps it.", required: true, ..Field::default() }))
                    (button(&Button { label: "Rely on the clock", kind: ButtonKind::Danger, ..Button::default() }))
                }
            }
        },
    )
}

#[derive(Debug, Deserialize)]
struct ConfirmForm {
    #[serde(default)]
    reason: String,
}

async fn confirm_clock(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(form): Form<ConfirmForm>,
) -> PageResult {
    app.confirm_clock(&ConfirmClock { reason: form.reason, by }).await?;
    Ok(go_to("/").into_response())
}

/// Scales that are not trusted, and those that are still to be checked today; nothing where all is well.
fn scales_part(w: &Words, scales: &[ScaleToday], read_today: bool) -> Markup {
    let due: Vec<&ScaleToday> =
        scales.iter().filter(|s| s.daily && s.has_standard && !s.checked && s.said.is_none()).collect();
    let wrong: Vec<(&ScaleToday, &TrustSaid)> =
        scales.iter().filter_map(|s| s.said.as_ref().map(|said| (s, said))).collect();
    if due.is_empty() && wrong.is_empty() {
        return html! {};
    }
    let at = |scale: &ScaleToday| format!("/scales/{}", super::entries::in_address(&scale.key));
    let when = if read_today { "read today and not checked" } else { "check it before the first reading" };
    section(
        "Scales",
        &html! { a href="/scales" { "All scales" } },
        &html! {
            ul.plain.readings {
                @for (scale, said) in wrong { li {
                    (tag(Tone::Bad, "not trusted")) span { " " a href=(at(scale)) { (w.tell(said)) } }
                    @if scale.has_standard && !scale.passed { (link_button(&format!("{}/check", at(scale)), "Check it", ButtonKind::Quiet, None, "")) }
                } }
                @for scale in due { li {
                    (tag(Tone::Care, "not checked")) span { " " (super::entries::capital(&scale.name)) ": " (when) }
                    (link_button(&format!("{}/check", at(scale)), "Check it", ButtonKind::Quiet, None, ""))
                } }
            }
        },
    )
}

/// `job 1, clubs 4, 5` of each job that a batch glued, from `1: 4, 5`.
fn batch_clubs(w: &Words, clubs: &[String]) -> String {
    let of_job = |entry: &String| match entry.split_once(": ") {
        Some((job, numbers)) if numbers.contains(',') => format!("job {job}, clubs {numbers}"),
        Some((job, number)) => format!("job {job}, club {number}"),
        None => format!("job {entry}"),
    };
    clubs.iter().map(of_job).collect::<Vec<_>>().join("; ")
}

/// One step of the way to the first club.
struct GuideStep {
    done: bool,
    what: &'static str,
    how: &'static str,
    href: String,
}

/// The way from an empty shop to the first club at the bench; nothing once a club of any job has been read.
async fn guide(w: &Words, app: &App, jobs: &[JobSummary]) -> Result<Option<Vec<GuideStep>>, AppError> {
    let planned = jobs.iter().find(|j| j.state == JobState::Planned);
    // A shop with several jobs under way needs no guide, and one that has given up or handed over jobs neither.
    if jobs.len() > 1 || planned.is_some_and(|job| job.begun) {
        return Ok(None);
    }
    let sheets = app.sheets().await?;
    if sheets.iter().filter_map(|s| s.job).any(|made| !jobs.iter().any(|j| j.number == made)) {
        return Ok(None);
    }
    let models = app.models(None).await?;
    let of_club = [PartKind::Head, PartKind::Shaft, PartKind::Grip];
    let modelled = of_club.iter().all(|kind| models.iter().any(|m| m.kind() == *kind));
    let (_, parts) = app.parts(&PartQuery { limit: Some(1), ..PartQuery::default() }).await?;
    let job = jobs.first();
    let to_job = |path: &str, none: &str| job.map_or_else(|| none.to_owned(), |j| format!("{path}{}", j.number));
    let step = |done, what, how, href: String| GuideStep { done, what, how, href };
    Ok(Some(vec![
        step(modelled, "Models", "A head, a shaft and a grip as their makers state them", "/stock/models/new".into()),
        step(parts > 0, "Parts", "Weigh in what lies on the shelf, or read a list", "/stock/new".into()),
        step(!sheets.is_empty(), "Sheet", "What the player is to get; short is enough", "/sheets/new".into()),
        step(
            job.is_some(),
            "Approve it",
            "The sheet becomes a job",
            sheets.first().map_or("/sheets".into(), |s| format!("/sheets/{}", s.id)),
        ),
        step(planned.is_some(), "Plan", "Which part goes to which club; hold them", to_job("/plan/", "/plan")),
        step(false, "Bench", "Take the first reading", to_job("/bench/", "/bench")),
    ]))
}

fn guide_part(w: &Words, steps: &[GuideStep]) -> Markup {
    let next = steps.iter().position(|s| !s.done);
    section(
        "To the first club",
        &html! {},
        &html! {
            ol.guide {
                @for (at, step) in steps.iter().enumerate() {
                    li.done[step.done].next[next == Some(at)] {
                        span.guide-mark aria-hidden="true" { @if step.done { (icon(Icon::Tick)) } @else { (at + 1) } }
                        div {
                            @if next == Some(at) { (link_button(&step.href, step.what, ButtonKind::Primary, None, "")) }
                            @else if step.done { a href=(step.href) { (step.what) } span.hidden { ", done" } }
                            @else { span { (step.what) } }
                            p.small { (step.how) }
                        }
                    }
                }
            }
            p.small { "The guide goes away with the first reading. Who is at this tablet, and the scales, stand under "
                a href="/shop" { "Shop" } "." }
        },
    )
}

fn crumb(w: &Words, jobs: &[JobSummary]) -> String {
    match jobs.len() {
        0 => String::new(),
        1 => "1 job".to_owned(),
        n => format!("{n} jobs, the earliest due first"),
    }
}

fn job_table(w: &Words, jobs: &[JobSummary], date: Date, waits: &BTreeMap<i64, Vec<Waiting>>) -> Markup {
    table(&Table {
        caption: "Jobs under way",
        columns: vec![Column::words("job"), Column::words("do next"), Column::words("due"), Column::words("clubs")],
        rows: jobs.iter().map(|job| job_row(w, job, date, waits.get(&job.number).map_or(&[], Vec::as_slice))).collect(),
        cards: true,
        ..Table::default()
    })
}

fn job_row(w: &Words, job: &JobSummary, date: Date, waits: &[Waiting]) -> Vec<Cell> {
    let planned = job.state == JobState::Planned;
    let href = if planned { format!("/bench/{}", job.number) } else { format!("/plan/{}", job.number) };
    let next = if planned {
        let steps: Vec<String> = job
            .next_steps
            .iter()
            .map(|s| {
                format!("{}: {}", s.label.to_lowercase(), counted(usize::try_from(s.clubs).unwrap_or_default(), "club"))
            })
            .collect();
        if steps.is_empty() { "hand over".to_owned() } else { steps.join(", ") }
    } else {
        "choose the parts".to_owned()
    };
    vec![
        Cell(html! { a.job-link href=(href) { "Job " (job.number) " · " (job.player) } }),
        Cell(html! { a href=(href) { (next) } (super::orders::waits_part(w, waits)) }),
        Cell(due(w, job.due, date)),
        Cell::from(job.clubs.join(" ")),
    ]
}

/// A due date, marked where it is near or past.
pub(super) fn due(w: &Words, due: Date, today: Date) -> Markup {
    let days = (due - today).get_days();
    let text = w.date_near(due, today);
    html! {
        (text) " "
        @if days < 0 { (tag(Tone::Bad, &format!("{} days late", -days))) }
        @else if days == 0 { (tag(Tone::Care, "today")) }
        @else if days <= 3 { (tag(Tone::Care, &format!("in {days} days"))) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn the_clubs_of_a_batch_are_named_with_their_job() {
        let clubs = ["1: 4, 5".to_owned(), "12: P".to_owned()];
        assert_eq!(batch_clubs(&w(), &clubs), "job 1, clubs 4, 5; job 12, club P");
    }
}
