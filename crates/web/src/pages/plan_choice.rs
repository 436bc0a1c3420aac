//! Other plans than the proposed one: alternatives to choose from, and a new plan that keeps what is already done.

use super::entries::{go_on, go_to, query};
use super::plan::{keep_of, kinds_of, lacking_parts, locks, plan_table};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::{Asked, Filled, Path};
use crate::reader::Reader;
use crate::tablet::Done;
use app::matched::{AcceptPicks, AcceptReplan, Picked};
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use bench::chance::Chance;
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

pub(super) fn router() -> Router<App> {
    Router::new()
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
pub(super) fn picks(job: &Job, plan: &Plan, targets: Option<&[f64]>) -> Markup {
    html! { @for ((club, chosen), i) in job.clubs.iter().zip(&plan.clubs).zip(0..) { @if let Some(chosen) = chosen {
        @let codes: Vec<&str> = chosen.parts.iter().map(|p| p.code.as_str()).collect();
        (hidden("pick", &format!("{}={}", club.slot, codes.join("|"))))
        @let more_g = chosen.extras_g(trade::action::Action::Screw);
        @if more_g != 0.0 { (hidden("screw", &format!("{}={more_g}", club.slot))) }
        @if let Some(points) = targets.and_then(|t| t.get(i)) { (hidden("target", &format!("{}={points}", club.slot))) }
    } } }
}

pub(super) fn read_picks(fields: &[(String, String)]) -> Vec<Picked> {
    let figure = |name: &str, slot: i64| -> Option<f64> {
        fields.iter().filter(|(k, _)| k == name).find_map(|(_, v)| {
            let (at, value) = v.split_once('=')?;
            (at.parse::<i64>().ok()? == slot).then(|| value.parse().ok()).flatten()
        })
    };
    fields
        .iter()
        .filter(|(k, _)| k == "pick")
        .filter_map(|(_, v)| {
            let (slot, codes) = v.split_once('=')?;
            let slot = slot.parse().ok()?;
            let codes = codes.split('|').map(str::to_owned).collect();
            let screw_more_g = figure("screw", slot).unwrap_or_default();
            Some(Picked { slot, codes, screw_more_g, swing_weight_points: figure("target", slot) })
        })
        .collect()
}

pub(super) fn entry(fields: &[(String, String)], name: &str) -> String {
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
                (section(&w.text("plan-missing"), &html! {}, &lacking_parts(w, &proposal.replan.plan.missing)))
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
