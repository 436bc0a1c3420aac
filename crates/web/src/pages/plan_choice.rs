//! Plans beyond the one that is proposed: plans to choose from, a plan made anew around what is done, a day's jobs
//! together.

use super::bench::club_name;
use super::entries::{capital, counted, go_to, query};
use super::plan::{keep_of, kinds_of, lacking_part, locks, plan_table};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::{Asked, Filled, Path};
use crate::problem::EdgeFault;
use crate::reader::Reader;
use crate::units::restated;
use app::matched::{AcceptPicks, AcceptReplan, DayRequest, DaySearch, DaySoon, Picked};
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use axum::routing::{get, post};
use bench::chance::chance_words;
use desk::planner::DayPlan;
use desk::planner::Law;
use desk::planner::PlanOption;
use look::{
    Action, Button, ButtonKind, Cell, ChoicePoint, Column, Field, Nav, Notice, Table, Tone, button, choice_picture,
    empty_state, field, hidden, section, table, tag,
};
use maud::{Markup, html};
use quantity::{SwingWeight, decimal};
use serde::Deserialize;
use trade::job::Job;
use trade::job::JobState;
use trade::kind::Role;
use trade::plan::Plan;
use words::Words;

/// Seconds that are searched for the page of a day, beside it, before anybody asks for more.
const PAGE_SECONDS: f64 = 2.0;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/plan/day", get(day).post(hold_day))
        .route("/plan/day/search", post(search_day))
        .route("/plan/day/stop", post(stop_day))
        .route("/plan/{job}/options", get(options).post(pick))
        .route("/plan/{job}/again", get(again).post(accept_again))
        .route("/plan/{job}/keep", post(keep))
}

#[derive(Debug, Default, Deserialize)]
struct KeepQuery {
    #[serde(default)]
    keep: String,
}

/// One more part kept, or let go again, by a touch in the table.
#[derive(Debug, Deserialize)]
struct KeepForm {
    #[serde(default)]
    keep: String,
    toggle: String,
    back: String,
}

async fn keep(Path(job): Path<i64>, Filled(form): Filled<KeepForm>) -> PageResult {
    let mut kept: Vec<String> = form.keep.split(',').map(|p| p.trim().to_owned()).filter(|p| !p.is_empty()).collect();
    if kept.contains(&form.toggle) {
        kept.retain(|p| *p != form.toggle);
    } else {
        kept.push(form.toggle);
    }
    let page = if form.back == "again" { format!("/plan/{job}/again") } else { format!("/plan/{job}") };
    Ok(go_to(&format!("{page}{}", query(&[("keep", &kept.join(","))]))).into_response())
}

/// The picks of a plan as a form carries them: one field a club, `SLOT=CODE CODE …`.
fn picks(w: &Words, job: &Job, plan: &Plan, targets: Option<&[f64]>) -> Markup {
    html! { @for ((club, chosen), i) in job.clubs.iter().zip(&plan.clubs).zip(0..) { @if let Some(chosen) = chosen {
        @let codes: Vec<&str> = chosen.parts.iter().map(|p| p.code.as_str()).collect();
        (hidden("pick", &format!("{}={}", club.slot, codes.join("|"))))
        @if let Some(points) = targets.and_then(|t| t.get(i)) { (hidden("target", &format!("{}={points}", club.slot))) }
    } } }
}

fn read_picks(fields: &[(String, String)]) -> Vec<Picked> {
    let target = |slot: i64| {
        fields.iter().filter(|(k, _)| k == "target").find_map(|(_, v)| {
            let (at, points) = v.split_once('=')?;
            (at.parse::<i64>().ok()? == slot).then(|| points.parse().ok()).flatten()
        })
    };
    fields
        .iter()
        .filter(|(k, _)| k == "pick")
        .filter_map(|(_, v)| {
            let (slot, codes) = v.split_once('=')?;
            let slot = slot.parse().ok()?;
            let codes = codes.split('|').map(str::to_owned).collect();
            Some(Picked { slot, codes, swing_weight_points: target(slot) })
        })
        .collect()
}

fn text(fields: &[(String, String)], name: &str) -> String {
    fields.iter().find(|(k, _)| k == name).map(|(_, v)| v.clone()).unwrap_or_default()
}

async fn options(
    State(app): State<App>,
    Reader(w): Reader,
    Path(job): Path<i64>,
    Asked(query): Asked<KeepQuery>,
) -> PageResult {
    options_page(&w, &app, job, &query.keep, None).await
}

async fn pick(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(job): Path<i64>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let accept = AcceptPicks { clubs: read_picks(&fields), reason: text(&fields, "reason"), by };
    match app.accept_picks(job, &accept).await {
        Ok(_) => Ok(go_to(&format!("/plan/{job}")).into_response()),
        Err(error) => options_page(&w, &app, job, &text(&fields, "keep"), Some(error)).await,
    }
}

async fn options_page(w: &Words, app: &App, number: i64, keep: &str, error: Option<AppError>) -> PageResult {
    let file = app.job_file(number).await?;
    let (file, found) = if file.job.state == JobState::Open {
        app.plan_options_of(file, &locks(keep)).await?
    } else {
        (file, Vec::new())
    };
    let points: Vec<ChoicePoint> = found
        .iter()
        .zip(1..)
        .map(|(o, i)| ChoicePoint {
            label: i.to_string(),
            across: o.tip_g,
            up: o.worst_points,
            other: o.law == Law::Inertia,
        })
        .collect();
    let body = html! {
        @if found.is_empty() {
            (empty_state("This job has its plan.", "Plan it anew to change it.", &[Action { href: &format!("/plan/{number}/again"), label: "Plan anew", primary: true }]))
        } @else {
            p.hint { "Little weight in the tips against closeness to the target; and the other law, where every club swings with the same inertia." }
            (choice_picture(w, "Plans to choose from", "grams in all tips", "points off, the worst club", &points))
            @for (option, i) in found.iter().zip(1..) { (one_option(w, &file.job, option, i, keep)) }
        }
    };
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let notice = error.as_ref().map(|one| failure(w, one));
    let crumb = format!("Job {number} · {}", file.job.sheet.player);
    let page = framed(
        w,
        app,
        Framed { title: "Plans to choose from", active: Nav::Plan, crumb, notice, body, ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

fn one_option(w: &Words, job: &Job, option: &PlanOption, number: usize, keep: &str) -> Markup {
    let inertia = option.law == Law::Inertia;
    let targets = inertia.then_some(option.targets_points.as_slice());
    let title = format!(
        "{number}: {} g in the tips, worst {} points off{}",
        decimal(option.tip_g, 1),
        decimal(option.worst_points, 2),
        if inertia { ", equal inertia" } else { "" }
    );
    let kinds = kinds_of(option.plan.clubs.iter().flatten());
    section(
        &title,
        &html! {},
        &html! {
            p.small {
                @if job.clubs.len() == 1 { (capital(&chance_words(option.inside))) }
                @else { (decimal(option.inside, 1)) " of " (counted(job.clubs.len(), "club")) " expected inside" }
                ", with the readings and the choice of grips still to come."
                @if let Some(cpm) = option.worst_cpm { " Shafts at most " (decimal(cpm, 1)) " cpm off their line." }
            }
            @if inertia {
                p.small { "Swing weights asked: " (job.clubs.iter().zip(&option.targets_points).map(|(c, t)| format!("{} {}", c.target.number, SwingWeight::from_points(*t).letter(1))).collect::<Vec<_>>().join(", ")) "." }
            }
            form method="post" action={ "/plan/" (job.number) "/options" } {
                (picks(w, job, &option.plan, targets)) (hidden("keep", keep))
                @if inertia { (field(&Field { name: "reason", label: "Why another law than the sheet's? The job keeps it.", required: true, ..Field::default() })) }
                (button(&Button { label: "Hold these parts", kind: ButtonKind::Quiet, ..Button::default() }))
            }
            details { summary { "Its parts" }
                (table(&Table {
                    caption: "Parts of this plan",
                    columns: std::iter::once("club")
                        .chain(kinds.iter().map(|kind| kind.word()))
                        .chain(["in the tip"])
                        .map(Column::words)
                        .collect(),
                    rows: job.clubs.iter().zip(&option.plan.clubs).filter_map(|(c, p)| p.as_ref().map(|p| (c, p))).map(|(club, plan)| {
                        let code = |kind| plan.part(kind).map_or("none".to_owned(), |p| p.code.clone());
                        let mut row = vec![Cell::from(club.target.number.clone())];
                        row.extend(kinds.iter().map(|&kind| Cell::from(code(kind))));
                        row.push(Cell::from(w.mass(plan.mass_g(Role::TipWeight))));
                        row
                    }).collect(),
                    ..Table::default()
                }))
            }
        },
    )
}

async fn again(
    State(app): State<App>,
    Reader(w): Reader,
    Path(job): Path<i64>,
    Asked(query): Asked<KeepQuery>,
) -> PageResult {
    again_page(&w, &app, job, &query.keep, None).await
}

#[derive(Debug, Deserialize)]
struct AgainForm {
    fingerprint: String,
    #[serde(default)]
    keep: String,
}

async fn accept_again(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(job): Path<i64>,
    Filled(form): Filled<AgainForm>,
) -> PageResult {
    let accept = AcceptReplan { fingerprint: form.fingerprint, locks: locks(&form.keep), by };
    match app.accept_again(job, &accept).await {
        Ok(_) => Ok(go_to(&format!("/plan/{job}")).into_response()),
        Err(error) => again_page(&w, &app, job, &form.keep, Some(error)).await,
    }
}

async fn again_page(w: &Words, app: &App, number: i64, keep: &str, error: Option<AppError>) -> PageResult {
    let file = app.job_file(number).await?;
    let mut status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let mut notice: Option<Notice> = error.as_ref().map(|one| failure(w, one));
    let body = match app.plan_again_of(&file, &locks(keep)).await {
        Ok(proposal) => html! {
            p.hint { "What is cut, glued or gripped stays as it is. Nothing is changed until you say so." }
            @if proposal.replan.changes.is_empty() {
                p { (tag(Tone::Good, "As good as it gets")) " No other choice of the parts that are there does better." }
            } @else {
                (section("What would change", &html! {}, &html! {
                    ul.plain { @for change in &proposal.replan.changes { li { (restated(w, &change.words)) } } }
                    p { (decimal(proposal.replan.inside_now, 1)) " clubs expected inside as it is, " (decimal(proposal.replan.inside_then, 1)) " then." }
                    form method="post" action={ "/plan/" (number) "/again" } {
                        (hidden("fingerprint", &proposal.fingerprint)) (hidden("keep", keep))
                        (button(&Button { label: "Change it so", big: true, ..Button::default() }))
                    }
                }))
            }
            @if !proposal.replan.plan.missing.is_empty() {
                (section("Missing", &html! {}, &html! { ul.plain { @for missing in &proposal.replan.plan.missing { li { (lacking_part(w, missing)) } } } }))
            }
            (plan_table(w, &file, &proposal.replan.plan.clubs, Some(&keep_of(number, keep, "again"))))
        },
        Err(error) => {
            status = failure_status(&error);
            notice = Some(failure(w, &error));
            html! { p { a.button.quiet href={ "/plan/" (number) } { "Back to the plan" } } }
        }
    };
    let crumb = format!("Job {number} · {}", file.job.sheet.player);
    let page =
        framed(w, app, Framed { title: "Plan anew", active: Nav::Plan, crumb, notice, body, ..Framed::default() })
            .await?;
    Ok((status, page).into_response())
}

async fn day(State(app): State<App>, Reader(w): Reader) -> PageResult {
    day_page(&w, &app, None).await
}

async fn hold_day(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let number: i64 = text(&fields, "job").parse().unwrap_or_default();
    let accept = AcceptPicks { clubs: read_picks(&fields), reason: text(&fields, "reason"), by };
    match app.accept_picks(number, &accept).await {
        Ok(_) => Ok(go_to("/plan/day").into_response()),
        Err(error) => day_page(&w, &app, Some(error)).await,
    }
}

async fn day_page(w: &Words, app: &App, error: Option<AppError>) -> PageResult {
    let waiting = app.job_names(&[JobState::Open]).await?;
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let notice = error.as_ref().map(|one| failure(w, one));
    let body = if waiting.is_empty() {
        empty_state(
            "No job waits for a plan.",
            "Approve a sheet: its job stands here.",
            &[Action { href: "/sheets", label: "Sheets", primary: true }],
        )
    } else {
        let DaySoon { day, files, search } = app.plan_day_soon(&day_request(PAGE_SECONDS), false).await?;
        // The search in a part of its own, which is looked at again every second; the jobs stand still meanwhile.
        html! {
            div data-live="0" { p { (proof(w, &day, search.is_some())) } }
            div data-live="search" { (searching(w, &day, search)) }
            div data-live="0" {
            @for (job, file) in day.jobs.iter().zip(&files) {
                (section(&format!("Job {} · {} · due {}", job.number, job.player, w.date(file.job.sheet.due)), &html! {}, &html! {
                    @for missing in &job.plan.missing { div { (lacking_part(w, missing)) } }
                    @if job.plan.clubs.iter().any(Option::is_some) {
                        form method="post" action="/plan/day" {
                            (hidden("job", &job.number.to_string())) (picks(w, &file.job, &job.plan, None))
                            @if job.plan.clubs.iter().flatten().any(|c| c.neighbour_blank.is_some()) {
                                (field(&Field { name: "reason", label: "Why a neighbouring number's blank? The job keeps it.", required: true, ..Field::default() }))
                            }
                            (button(&Button { label: "Hold these parts", ..Button::default() }))
                        }
                        details { summary { (clubs_in_words(w, &file.job)) } (plan_table(w, file, &job.plan.clubs, None)) }
                    }
                }))
            }
            }
        }
    };
    let crumb = format!("{} on one stock", counted(waiting.len(), "job"));
    let page =
        framed(w, app, Framed { title: "Plan the day", active: Nav::Plan, crumb, notice, body, ..Framed::default() })
            .await?;
    Ok((status, page).into_response())
}

fn clubs_in_words(w: &Words, job: &Job) -> String {
    format!("Parts of {}", job.clubs.iter().map(|one| club_name(w, one)).collect::<Vec<_>>().join(", "))
}

fn day_request(seconds: f64) -> DayRequest {
    DayRequest { jobs: Vec::new(), seconds, seed: 0, weights: None }
}

/// Searches on for a better plan of the day than was found soon.
async fn search_day(
    State(app): State<App>,
    Reader(w): Reader,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let said = text(&fields, "seconds");
    let searched = match said.trim().parse() {
        Ok(seconds) => app.plan_day_soon(&day_request(seconds), true).await,
        Err(_) => Err(AppError::invalid(EdgeFault::NotSeconds { text: said.to_owned() })),
    };
    match searched {
        Ok(_) => Ok(go_to("/plan/day").into_response()),
        Err(error) => day_page(&w, &app, Some(error)).await,
    }
}

async fn stop_day(State(app): State<App>, Reader(w): Reader) -> Redirect {
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
                    (button(&Button { label: "Enough: take the best so far", kind: ButtonKind::Quiet, ..Button::default() }))
                }
                noscript { a href="/plan/day" { "Look again" } }
            }
        } @else if day.gap > 1e-9 {
            div.actions {
                span { "Search longer:" }
                @for (seconds, label) in [("10", "10 s"), ("60", "A minute")] {
                    form method="post" action="/plan/day/search" {
                        (hidden("seconds", seconds))
                        (button(&Button { label, kind: ButtonKind::Quiet, ..Button::default() }))
                    }
                }
            }
        }
    }
}

fn sought(w: &Words, day: &DayPlan, search: DaySearch) -> String {
    let at = search.at;
    let time = format!("{} of {} s", decimal(at.seconds, 0), decimal(search.asked_s, 0));
    // The plan that stands here may be better already than what the longer search has come to so far.
    let reached = if at.cost.is_finite() && at.cost > 0.0 { 1.0 - at.bound / at.cost } else { 1.0 };
    let gap = reached.min(day.gap);
    if gap < 0.5 {
        format!("Searching, {time}: within {} % of the best there is.", decimal(100.0 * gap, 1))
    } else {
        format!("Searching, {time}.")
    }
}

fn proof(w: &Words, day: &DayPlan, searching: bool) -> String {
    if day.gap <= 1e-9 {
        return "Proven: no other choice of these parts comes out better over all jobs, the most urgent first.".into();
    }
    // Before the first proof the gap is as good as unknown.
    let within = if day.gap < 0.5 {
        format!("; proven to be within {} % of the best there is", decimal(100.0 * day.gap, 1))
    } else {
        String::new()
    };
    let better = if searching { " A better one is searched for; it stands here then." } else { "" };
    format!("The best plan so far over all jobs, the most urgent first{within}.{better}")
}
