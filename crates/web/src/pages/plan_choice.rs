//! Plans beyond the one that is proposed: plans to choose from, a plan made anew around what is done, a day's jobs
//! together.

use super::bench::club_name;
use super::entries::{go_on, go_to, query};
use super::plan::{keep_of, kinds_of, lacking_part, locks, plan_table};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::{Asked, Filled, Path};
use crate::problem::EdgeFault;
use crate::reader::Reader;
use crate::tablet::Done;
use app::matched::{AcceptPicks, AcceptReplan, DayRequest, DaySoon, Picked};
use app::searching::DaySearch;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use axum::routing::{get, post};
use bench::chance::Chance;
use desk::planner::DayPlan;
use desk::planner::Law;
use desk::planner::PlanOption;
use desk::planner::Replan;
use look::{
    Action, Button, ButtonKind, Cell, ChoicePoint, Column, Field, Nav, Notice, Table, Tone, button, choice_picture,
    empty_state, field, hidden, section, table, tag,
};
use maud::{Markup, html};
use quantity::{Mass, MassUnit};
use serde::Deserialize;
use trade::job::Job;
use trade::job::JobState;
use trade::kind::Role;
use trade::plan::Plan;
use words::{Words, text};

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
fn picks(job: &Job, plan: &Plan, targets: Option<&[f64]>) -> Markup {
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

fn entry(fields: &[(String, String)], name: &str) -> String {
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
    let accept = AcceptPicks { clubs: read_picks(&fields), reason: entry(&fields, "reason"), by };
    match app.accept_picks(job, &accept).await {
        Ok(_) => Ok(go_on(&format!("/plan/{job}"), Done::Held)),
        Err(error) => options_page(&w, &app, job, &entry(&fields, "keep"), Some(error)).await,
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
            across: match w.units.mass {
                MassUnit::Ounce => Mass::from_g(o.tip_g).oz(),
                _ => o.tip_g,
            },
            up: o.worst_points,
            other: o.law == Law::Inertia,
            told: text!(w, "plan-choice-told", plan = i, tip_g = o.tip_g, worst_points = o.worst_points),
        })
        .collect();
    let body = html! {
        @if found.is_empty() {
            (empty_state(&w.text("plan-choice-planned"), &w.text("plan-choice-planned-next"), &[Action { href: &format!("/plan/{number}/again"), label: &w.text("plan-again"), primary: true }]))
        } @else {
            p.hint { (w.text("plan-choice-hint")) }
            (choice_picture(&w.text("plan-choice"), &text!(w, "plan-choice-across", sign = w.mass_sign()), &w.text("plan-choice-up"), &points))
            @for (option, i) in found.iter().zip(1..) { (one_option(w, &file.job, option, i, keep)) }
        }
    };
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let notice = error.as_ref().map(|one| failure(w, one));
    let crumb = text!(w, "plan-job", job = number, player = file.job.sheet.player);
    let title = w.text("plan-choice");
    let page =
        framed(w, app, Framed { title: &title, active: Nav::Plan, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

fn one_option(w: &Words, job: &Job, option: &PlanOption, number: usize, keep: &str) -> Markup {
    let inertia = option.law == Law::Inertia;
    let targets = inertia.then_some(option.targets_points.as_slice());
    let id = if inertia { "plan-option-inertia" } else { "plan-option" };
    let figures = [
        ("plan", words::figure(&number)),
        ("tip_g", words::figure(&option.tip_g)),
        ("worst_points", words::figure(&option.worst_points)),
    ];
    let title = w.text_with(id, &figures);
    let kinds = kinds_of(option.plan.clubs.iter().flatten());
    section(
        &title,
        &html! {},
        &html! {
            p.small {
                @if job.clubs.len() == 1 { (w.sentence(&Chance::of(option.inside))) }
                @else { (text!(w, "plan-option-inside", inside = option.inside, clubs = job.clubs.len())) }
                " " (w.text("plan-option-still-to-come"))
                @if let Some(worst_cpm) = option.worst_cpm { " " (text!(w, "plan-option-off-line", worst_cpm = worst_cpm)) }
            }
            @if inertia {
                @let asked: Vec<String> = job.clubs.iter().zip(&option.targets_points).map(|(club, points)| {
                    let club = w.club_short(&club.target.club_kind, &club.target.number);
                    text!(w, "plan-option-target", club = club, asked_points = *points)
                }).collect();
                p.small { (text!(w, "plan-option-targets", asked = asked)) }
            }
            form method="post" action={ "/plan/" (job.number) "/options" } {
                (picks(job, &option.plan, targets)) (hidden("keep", keep))
                @if inertia { (field(&Field { name: "reason", label: &w.text("plan-option-why"), required: true, ..Field::default() })) }
                (button(&Button { label: &w.text("plan-hold"), kind: ButtonKind::Quiet, ..Button::default() }))
            }
            details { summary { (w.text("plan-parts")) }
                (table(&Table {
                    caption: &w.text("plan-parts-caption"),
                    columns: std::iter::once(w.text("plan-column-club"))
                        .chain(kinds.iter().map(|kind| w.tell(kind)))
                        .chain([w.text("plan-column-tip")])
                        .map(Column::words)
                        .collect(),
                    rows: job.clubs.iter().zip(&option.plan.clubs).filter_map(|(c, p)| p.as_ref().map(|p| (c, p))).map(|(club, plan)| {
                        let code = |kind| plan.part(kind).map_or_else(|| w.text("plan-no-part"), |p| p.code.clone());
                        let mut row = vec![Cell::from(w.club_short(&club.target.club_kind, &club.target.number))];
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
        Ok(_) => Ok(go_on(&format!("/plan/{job}"), Done::Held)),
        Err(error) => again_page(&w, &app, job, &form.keep, Some(error)).await,
    }
}

async fn again_page(w: &Words, app: &App, number: i64, keep: &str, error: Option<AppError>) -> PageResult {
    let file = app.job_file(number).await?;
    let mut status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let mut notice: Option<Notice> = error.as_ref().map(|one| failure(w, one));
    let body = match app.plan_again_of(&file, &locks(keep)).await {
        Ok(proposal) => html! {
            p.hint { (w.text("plan-again-hint")) }
            (doubted_part(w, &file.job, &proposal.replan))
            @if !proposal.replan.changes.is_empty() {
                (section(&w.text("plan-again-changes"), &html! {}, &html! {
                    ul.plain { @for change in &proposal.replan.changes { li { (w.sentence(&change.fact)) } } }
                    p { (text!(w, "plan-again-inside", now = proposal.replan.inside_now, then = proposal.replan.inside_then)) }
                    form method="post" action={ "/plan/" (number) "/again" } {
                        (hidden("fingerprint", &proposal.fingerprint)) (hidden("keep", keep))
                        (button(&Button { label: &w.text("plan-again-accept"), big: true, ..Button::default() }))
                    }
                }))
            } @else if proposal.replan.doubted_slots.is_empty() {
                p { (tag(Tone::Good, &w.text("plan-again-best"))) " " (w.text("plan-again-best-next")) }
            }
            @if !proposal.replan.plan.missing.is_empty() {
                (section(&w.text("plan-missing"), &html! {}, &html! { ul.plain { @for missing in &proposal.replan.plan.missing { li { (lacking_part(w, missing)) } } } }))
            }
            (plan_table(w, &file, &proposal.replan.plan.clubs, Some(&keep_of(number, keep, "again"))))
        },
        Err(error) => {
            status = failure_status(&error);
            notice = Some(failure(w, &error));
            html! { p { a.button.quiet href={ "/plan/" (number) } { (w.text("plan-back")) } } }
        }
    };
    let crumb = text!(w, "plan-job", job = number, player = file.job.sheet.player);
    let title = w.text("plan-again");
    let page =
        framed(w, app, Framed { title: &title, active: Nav::Plan, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

/// The clubs whose readings are in doubt: what they are is settled at the bench, before parts are changed for them.
fn doubted_part(w: &Words, job: &Job, replan: &Replan) -> Markup {
    let doubted = job.clubs.iter().filter(|club| replan.doubted_slots.contains(&club.slot));
    let clubs: Vec<String> = doubted.map(|club| w.club(&club.target.club_kind, &club.target.number)).collect();
    let bench = |_: &str, inner: &str| html! { a href={ "/bench/" (job.number) } { (inner) } };
    html! { @if !clubs.is_empty() {
        p { (tag(Tone::Care, &w.text("plan-again-doubt"))) " " (look::rich!(w, "plan-again-doubt-next", bench, clubs = clubs)) }
    } }
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
    let number: i64 = entry(&fields, "job").parse().unwrap_or_default();
    let accept = AcceptPicks { clubs: read_picks(&fields), reason: entry(&fields, "reason"), by };
    match app.accept_picks(number, &accept).await {
        Ok(_) => Ok(go_on("/plan/day", Done::Held)),
        Err(error) => day_page(&w, &app, Some(error)).await,
    }
}

async fn day_page(w: &Words, app: &App, error: Option<AppError>) -> PageResult {
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
        let DaySoon { day, files, search } = app.plan_day_soon(&day_request(PAGE_SECONDS), false).await?;
        // The search in a part of its own, which is looked at again every second; the jobs stand still meanwhile.
        html! {
            div data-live="0" { p { (proof(w, &day, search.is_some())) } }
            div data-live="search" { (searching(w, &day, search)) }
            div data-live="0" {
            @for (job, file) in day.jobs.iter().zip(&files) {
                (section(&text!(w, "plan-job-due", job = job.number, player = job.player, due_on = file.job.sheet.due), &html! {}, &html! {
                    @for missing in &job.plan.missing { div { (lacking_part(w, missing)) } }
                    @if job.plan.clubs.iter().any(Option::is_some) {
                        form method="post" action="/plan/day" {
                            (hidden("job", &job.number.to_string())) (picks(&file.job, &job.plan, None))
                            @if job.plan.clubs.iter().flatten().any(|c| c.neighbour_blank.is_some()) {
                                (field(&Field { name: "reason", label: &w.text("plan-neighbour-why"), required: true, ..Field::default() }))
                            }
                            (button(&Button { label: &w.text("plan-hold"), ..Button::default() }))
                        }
                        details { summary { (parts_of(w, &file.job)) } (plan_table(w, file, &job.plan.clubs, None)) }
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

fn parts_of(w: &Words, job: &Job) -> String {
    let clubs: Vec<String> = job.clubs.iter().map(|club| club_name(w, club)).collect();
    text!(w, "plan-day-parts", clubs = clubs)
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
    let said = entry(&fields, "seconds");
    let searched = match said.trim().parse() {
        Ok(seconds) => app.plan_day_soon(&day_request(seconds), true).await,
        Err(_) => Err(AppError::invalid(EdgeFault::NotSeconds { text: said.to_owned() })),
    };
    match searched {
        Ok(_) => Ok(go_to("/plan/day").into_response()),
        Err(error) => day_page(&w, &app, Some(error)).await,
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
        } @else if day.gap > 1e-9 {
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
    if day.gap <= 1e-9 {
        return w.text("plan-day-proven");
    }
    let found = if day.gap < KNOWN_GAP {
        text!(w, "plan-day-best-within", gap_share = day.gap)
    } else {
        w.text("plan-day-best")
    };
    if searching { format!("{found} {}", w.text("plan-day-better-comes")) } else { found }
}

/// Before the first proof the gap is as good as unknown.
const KNOWN_GAP: f64 = 0.5;
