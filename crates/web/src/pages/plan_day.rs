//! A day's jobs together: their plan, what it brings, and which due dates hold.

use super::bench::club_name;
use super::entries::{go_on, go_to, query};
use super::plan::{lacking_parts, plan_table};
use super::plan_choice::{entry, picks, read_picks};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::Asked;
use crate::problem::EdgeFault;
use crate::reader::Reader;
use crate::tablet::Done;
use app::matched::{AcceptPicks, DayRequest, DaySoon};
use app::searching::DaySearch;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use axum::routing::{get, post};
use desk::planner::{Brings, DayPlan, DueState, HowItComesOut, JobDue, OrderFor, WhichPlan};
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Nav, Table, Tone, button, empty_state, field, hidden, section,
    table, tag,
};
use maud::{Markup, html};
use serde::Deserialize;
use trade::job::{Job, JobState};
use trade::plan::Plan;
use words::{Words, text};

/// Seconds that are searched for the page of a day, beside it, before anybody asks for more.
const PAGE_SECONDS: f64 = 2.0;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/plan/day", get(day).post(hold_day))
        .route("/plan/day/search", post(search_day))
        .route("/plan/day/stop", post(stop_day))
}

#[derive(Debug, Default, Deserialize)]
struct DayQuery {
    /// `in_turn` for the plain plan.
    #[serde(default)]
    which: WhichPlan,
}

async fn day(State(app): State<App>, Reader(w): Reader, Asked(query): Asked<DayQuery>) -> PageResult {
    day_page(&w, &app, query.which, None).await
}

async fn hold_day(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let number: i64 = entry(&fields, "job").parse().unwrap_or_default();
    let accept = AcceptPicks { clubs: read_picks(&fields), reason: entry(&fields, "reason"), by };
    match app.accept_picks(number, &accept).await {
        Ok(_) => Ok(go_on("/plan/day", Done::Held)),
        Err(error) => day_page(&w, &app, WhichPlan::Together, Some(error)).await,
    }
}

async fn day_page(w: &Words, app: &App, which: WhichPlan, error: Option<AppError>) -> PageResult {
    let waiting = app.job_names(&[JobState::Open]).await?;
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let notice = error.as_ref().map(|one| failure(w, one));
    let body = if waiting.is_empty() {
        empty_state(
            &w.text("plan-day-none"),
            &w.text("plan-nothing-next"),
            &[Action { href: "/sheets", label: &w.text("plan-sheets"), primary: true }],
        )
    } else {
        let request = DayRequest { which, ..day_request(PAGE_SECONDS) };
        let DaySoon { day, files, search } = app.plan_day_soon(&request, false).await?;
        // The search in a part of its own, which is looked at again every second; the jobs stand still meanwhile.
        html! {
            div data-live="0" { p { (proof(w, &day, search.is_some())) } }
            div data-live="search" { (searching(w, &day, search)) }
            div data-live="0" {
            (due_part(w, &day))
            (worth_part(w, &day))
            @for (job, file) in day.jobs.iter().zip(&files) {
                (section(&text!(w, "plan-job-due", job = job.number, player = job.player, due_on = file.job.sheet.due), &html! {}, &html! {
                    @if !job.plan.missing.is_empty() { (lacking_parts(w, &job.plan.missing)) }
                    @if job.plan.clubs.iter().any(Option::is_some) {
                        form method="post" action="/plan/day" {
                            (hidden("job", &job.number.to_string())) (picks(&file.job, &job.plan, None))
                            @if job.plan.clubs.iter().flatten().any(|c| c.neighbour_blank.is_some()) {
                                (field(&Field { name: "reason", label: &w.text("plan-neighbour-why"), required: true, ..Field::default() }))
                            }
                            (button(&Button { label: &w.text("plan-hold"), ..Button::default() }))
                        }
                        details { summary { (parts_of(w, &file.job, &job.plan)) } (plan_table(w, file, &job.plan.clubs, None)) }
                    }
                }))
            }
            }
        }
    };
    let crumb = text!(w, "plan-day-jobs", n = waiting.len());
    let title = w.text("plan-day");
    let page =
        framed(w, app, Framed { title: &title, active: Nav::Plan, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

/// What planning together brings, and the other plan at hand.
fn worth_part(w: &Words, day: &DayPlan) -> Markup {
    let Some(worth) = &day.worth else { return html! {} };
    let both = |together: String, in_turn: String| {
        Cell::from(text!(w, "plan-worth-both", together = together, in_turn = in_turn))
    };
    let row = |name: String, together: &HowItComesOut, in_turn: &HowItComesOut| {
        vec![
            Cell::from(name),
            both(together.unbuilt.to_string(), in_turn.unbuilt.to_string()),
            Cell::from(text!(w, "plan-worth-inside", together = together.inside, in_turn = in_turn.inside)),
            both(w.mass_to(together.tip_g, 0), w.mass_to(in_turn.tip_g, 0)),
        ]
    };
    let other = match day.which {
        WhichPlan::Together => {
            html! { a.button.quiet href="/plan/day?which=in_turn" { (w.text("plan-worth-take-plain")) } }
        }
        WhichPlan::InTurn => html! { a.button.quiet href="/plan/day" { (w.text("plan-worth-take-together")) } },
    };
    let nothing = matches!(worth.fact, Brings::Nothing);
    section(
        &w.text("plan-worth"),
        &html! {},
        &html! {
            p { (w.sentence(&worth.fact)) }
            div.actions { (other) }
            @if !nothing {
                (table(&Table {
                    caption: &w.text("plan-worth-caption"),
                    columns: std::iter::once(Column::words(w.text("plan-worth-column-job")))
                        .chain(["unbuilt", "inside", "tip"].map(|c| Column::figures(w.text(&format!("plan-worth-column-{c}")))))
                        .collect(),
                    rows: std::iter::once(row(w.text("plan-worth-all"), &worth.together, &worth.in_turn))
                        .chain(worth.jobs.iter().map(|job| row(job.number.to_string(), &job.together, &job.in_turn)))
                        .collect(),
                    ..Table::default()
                }))
                p.small { (w.text("plan-worth-hint")) }
            }
        },
    )
}

/// Which due dates hold, where not all clubs can be built from what is here.
fn due_part(w: &Words, day: &DayPlan) -> Markup {
    let due = &day.due;
    let here = |job: &JobDue| matches!(job.fact, DueState::Here);
    if due.jobs.iter().all(here) {
        return html! { p { (tag(Tone::Good, &w.text("plan-due"))) " " (w.text("plan-due-all-here")) } };
    }
    let row = |job: &JobDue| {
        let (tone, mark) = match job.fact {
            DueState::Here => (Tone::Good, "here"),
            DueState::Waits { .. } => (Tone::Good, "waits"),
            DueState::NoDay => (Tone::Care, "waits"),
            DueState::Order { .. } => (Tone::Care, "order"),
            DueState::Late { .. } | DueState::OrderLate { .. } => (Tone::Bad, "late"),
            DueState::Cannot => (Tone::Bad, "cannot"),
        };
        let player = day.jobs.iter().find(|one| one.number == job.number).map(|one| one.player.clone());
        html! { li {
            a href={ "/plan/" (job.number) } { (text!(w, "plan-job-due", job = job.number, player = player, due_on = job.due_on)) }
            div { (tag(tone, &w.text(&format!("plan-due-mark-{mark}")))) " " (w.sentence(&job.fact)) }
            @for wait in &job.waits { div.small { (w.sentence(&wait.fact)) } }
        } }
    };
    section(
        &w.text("plan-due"),
        &html! {},
        &html! {
            p {
                @if due.whole.is_empty() { (w.text("plan-due-whole-none")) }
                @else { (text!(w, "plan-due-whole", n = due.whole.len(), jobs = due.whole.clone())) }
                @if !due.proven { " " (w.text("plan-due-not-proven")) }
            }
            @if let Some(way) = &due.in_the_way {
                p { (text!(w, "plan-due-in-the-way", job = way.job, builds = way.builds.clone())) }
            }
            ul.plain { @for job in &due.jobs { (row(job)) } }
            @if !due.to_order.is_empty() {
                h3 { (w.text("plan-due-to-order")) }
                ul.plain { @for order in &due.to_order { li { (w.sentence(&order.fact)) " " (order_link(w, order)) } } }
            }
            @if !due.scarce.is_empty() {
                h3 { (w.text("plan-due-scarce")) }
                @for scarce in &due.scarce {
                    details { summary { (w.sentence(&scarce.fact)) }
                        ul.plain { @for goes in &scarce.goes { li { (w.sentence(goes)) } } }
                    }
                }
            }
            p.small { (w.text("plan-due-hint")) }
        },
    )
}

/// Where to write the order down.
fn order_link(w: &Words, order: &OrderFor) -> Markup {
    let number = order.number.as_deref().unwrap_or_default();
    let job = match order.jobs.as_slice() {
        [only] => only.to_string(),
        _ => String::new(),
    };
    let count = order.count.to_string();
    let address = query(&[("model", &order.model), ("number", number), ("count", &count), ("job", &job)]);
    html! { a.button.quiet href={ "/orders/new" (address) } { (text!(w, "need-order", n = order.count)) } }
}

/// The clubs of a job that the plan builds.
fn parts_of(w: &Words, job: &Job, plan: &Plan) -> String {
    let built = job.clubs.iter().zip(&plan.clubs).filter(|x| x.1.is_some());
    let clubs: Vec<String> = built.map(|(club, _)| club_name(w, club)).collect();
    text!(w, "plan-day-parts", clubs = clubs)
}

fn day_request(seconds: f64) -> DayRequest {
    DayRequest { jobs: Vec::new(), seconds, seed: 0, weights: None, which: WhichPlan::Together }
}

/// Searches on for a better plan of the day than was found soon.
async fn search_day(
    State(app): State<App>,
    Reader(w): Reader,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let said = entry(&fields, "seconds");
    let searched = match said.trim().parse() {
        Ok(seconds) => app.plan_day_soon(&day_request(seconds), true).await,
        Err(_) => Err(AppError::invalid(EdgeFault::NotSeconds { text: said.to_owned() })),
    };
    match searched {
        Ok(_) => Ok(go_to("/plan/day").into_response()),
        Err(error) => day_page(&w, &app, WhichPlan::Together, Some(error)).await,
    }
}

async fn stop_day(State(app): State<App>) -> Redirect {
    app.stop_day_search();
    go_to("/plan/day")
}

/// How far the search for a better plan has come, with its end at hand; or the offer of a longer one.
fn searching(w: &Words, day: &DayPlan, search: Option<DaySearch>) -> Markup {
    html! {
        @if let Some(search) = search {
            div.actions data-again="1" {
                span { (sought(w, day, search)) }
                form method="post" action="/plan/day/stop" {
                    (button(&Button { label: &w.text("plan-day-enough"), kind: ButtonKind::Quiet, ..Button::default() }))
                }
                noscript { a href="/plan/day" { (w.text("plan-day-look-again")) } }
            }
        } @else if day.gap >= SHOWN_GAP {
            div.actions {
                span { (w.text("plan-day-longer")) }
                @for seconds in ["10", "60"] {
                    form method="post" action="/plan/day/search" {
                        (hidden("seconds", seconds))
                        (button(&Button { label: &text!(w, "plan-day-seconds", seconds = seconds), kind: ButtonKind::Quiet, ..Button::default() }))
                    }
                }
            }
        }
    }
}

fn sought(w: &Words, day: &DayPlan, search: DaySearch) -> String {
    let at = search.at;
    // The plan that stands here may be better already than what the longer search has come to so far.
    let reached = if at.cost.is_finite() && at.cost > 0.0 { 1.0 - at.bound / at.cost } else { 1.0 };
    let gap_share = reached.min(day.gap);
    let (now, of) = (at.seconds.round() as i64, search.asked_s.round() as i64);
    if gap_share < KNOWN_GAP {
        text!(w, "plan-day-searching-within", now = now, of = of, gap_share = gap_share)
    } else {
        text!(w, "plan-day-searching", now = now, of = of)
    }
}

fn proof(w: &Words, day: &DayPlan, searching: bool) -> String {
    if day.which == WhichPlan::InTurn {
        return w.text("plan-day-in-turn");
    }
    if day.gap <= 1e-9 {
        return w.text("plan-day-proven");
    }
    if day.gap < SHOWN_GAP {
        return w.text("plan-day-as-good");
    }
    let found = if day.gap < KNOWN_GAP {
        text!(w, "plan-day-best-within", gap_share = day.gap)
    } else {
        w.text("plan-day-best")
    };
    if searching { format!("{found} {}", w.text("plan-day-better-comes")) } else { found }
}

/// A gap that shows as 0.0 %: nothing that a longer search could bring would be seen.
const SHOWN_GAP: f64 = 0.000_5;

/// Before the first proof the gap is as good as unknown.
const KNOWN_GAP: f64 = 0.5;
