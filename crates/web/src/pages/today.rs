//! Today: what to do now, at a glance.

use super::{Framed, PageResult, framed, say};
use crate::look::{Action, Cell, Column, Nav, Table, Tone, clock, empty_state, section, table, tag};
use app::App;
use app::job::JobSummary;
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::get;
use jiff::civil::Date;
use maud::{Markup, html};
use workshop::job::JobState;

pub(super) fn router() -> Router<App> {
    Router::new().route("/", get(today))
}

async fn today(State(app): State<App>) -> PageResult {
    let jobs = app.jobs(None).await?;
    let now = app.now();
    let batches = app.recent_batches(7).await?;
    let running: Vec<_> = batches.iter().filter(|b| b.full_cure_at > now).collect();
    let date = now.to_zoned_datetime(jiff::tz::TimeZone::system()).date();
    let doubts: Vec<(i64, &str)> =
        jobs.iter().flat_map(|j| j.doubted.iter().map(move |n| (j.number, n.as_str()))).collect();
    let jobs_part = if jobs.is_empty() {
        empty_state(
            "No job is under way.",
            "Write a fitting sheet, approve it, and its job stands here.",
            &[
                Action { href: "/sheets/new", label: "New sheet", primary: true },
                Action { href: "/stock", label: "Stock", primary: false },
            ],
        )
    } else {
        job_table(&jobs, date)
    };
    let body = html! {
        (super::labels::scan_form())
        div data-live="0" {
            @if !doubts.is_empty() {
                (section("Look again", &html! {}, &html! {
                    ul.plain { @for (job, club) in &doubts {
                        li { (tag(Tone::Doubt, "doubted")) " " a href={ "/bench/" (job) } { "Job " (job) ", the " (club) } }
                    } }
                }))
            }
            (section("Jobs", &html! { a.button.quiet href="/sheets/new" { "New sheet" } }, &jobs_part))
            @if !running.is_empty() {
                (section("Curing", &html! { a href="/glue" { "All batches" } }, &table(&Table {
                    caption: "Batches that cure",
                    columns: vec![
                        Column { head: "batch", figures: false },
                        Column { head: "clubs", figures: false },
                        Column { head: "pot life", figures: true },
                        Column { head: "handle", figures: true },
                        Column { head: "bend and swing", figures: true },
                    ],
                    rows: running.iter().map(|b| {
                        let cell = |until: jiff::Timestamp, done: &str| {
                            let text = if until > now { say::left(now, until) } else { done.to_owned() };
                            Cell(clock(&until.to_string(), &text, done))
                        };
                        vec![
                            Cell::from(format!("{} · {}", b.batch.number, b.adhesive_name)),
                            Cell::from(b.clubs.join("; ")),
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
    let view = Framed { title: "Today", active: Nav::Today, crumb: crumb(&jobs), body, ..Framed::default() };
    Ok(framed(&app, view).await?.into_response())
}

fn crumb(jobs: &[JobSummary]) -> String {
    match jobs.len() {
        0 => String::new(),
        1 => "1 job".to_owned(),
        n => format!("{n} jobs, the earliest due first"),
    }
}

fn job_table(jobs: &[JobSummary], date: Date) -> Markup {
    table(&Table {
        caption: "Jobs under way",
        columns: vec![
            Column { head: "job", figures: false },
            Column { head: "do next", figures: false },
            Column { head: "due", figures: false },
            Column { head: "clubs", figures: false },
        ],
        rows: jobs.iter().map(|job| job_row(job, date)).collect(),
        ..Table::default()
    })
}

fn job_row(job: &JobSummary, date: Date) -> Vec<Cell> {
    let planned = job.state == JobState::Planned;
    let href = if planned { format!("/bench/{}", job.number) } else { format!("/plan/{}", job.number) };
    let next = if planned {
        let steps: Vec<String> =
            job.next_steps.iter().map(|s| format!("{} ({})", s.label.to_lowercase(), s.clubs)).collect();
        if steps.is_empty() { "hand over".to_owned() } else { steps.join(", ") }
    } else {
        "choose the parts".to_owned()
    };
    vec![
        Cell(html! { a.job-link href=(href) { "Job " (job.number) " · " (job.player) } }),
        Cell(html! { a href=(href) { (next) } }),
        Cell(due(job.due, date)),
        Cell::from(job.clubs.join(" ")),
    ]
}

/// A due date, marked where it is near or past.
pub(super) fn due(due: Date, today: Date) -> Markup {
    let days = (due - today).get_days();
    let text = due.strftime("%-d %b").to_string();
    html! {
        (text) " "
        @if days < 0 { (tag(Tone::Bad, &format!("{} days late", -days))) }
        @else if days == 0 { (tag(Tone::Care, "today")) }
        @else if days <= 3 { (tag(Tone::Care, &format!("in {days} days"))) }
    }
}
