//! Plan: which parts go into which club, the cut list, what is missing, the job cards.

use super::bench::club_name;
use super::club_beam::club_beam;
use super::entries::{go_to, query};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::{Asked, Filled, Path};
use crate::reader::Reader;
use crate::units::restated;
use app::job::JobFile;
use app::plan::{Accept, Proposal};
use app::{App, AppError};
use axum::Router;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use bench::assembly::Assembly;
use desk::planner::Lock;
use look::{
    Action, Button, ButtonKind, CardSize, Cell, Column, Field, JobCard, Nav, Notice, Table, Tone, button, check,
    empty_state, field, hidden, job_card, link_button, qr_code, section, table, tag,
};
use maud::{Markup, html};
use quantity::{SwingWeight, decimal};
use serde::Deserialize;
use trade::job::JobClub;
use trade::job::JobState;
use trade::kind::Role;
use trade::model::PartKind;
use trade::plan::ClubPlan;
use trade::plan::Missing;
use trade::plan::Plan;
use trade::step::Step;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/plan", get(index))
        .route("/plan/{job}", get(show).post(accept))
        .route("/plan/{job}/drop", post(drop_job))
        .route("/plan/{job}/cards", get(cards))
}

async fn index(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let open = app.job_names(&[JobState::Open]).await?;
    let planned = app.job_names(&[JobState::Planned]).await?;
    let list = |jobs: &[app::job::JobLine]| {
        html! { ul.plain.big-links { @for job in jobs {
            li { a.button.quiet href={ "/plan/" (job.number) } { "Job " (job.number) " · " (job.player) " · " (job.clubs.join(" ")) } }
        } } }
    };
    let body = html! {
        @if open.is_empty() && planned.is_empty() {
            (empty_state("Nothing to plan.", "Approve a sheet: its job stands here.", &[Action { href: "/sheets", label: "Sheets", primary: true }]))
        }
        @if !open.is_empty() { (section("To plan", &html! {}, &list(&open))) }
        @if open.len() > 1 { p.actions { (link_button("/plan/day", "All of these together", ButtonKind::Primary, None, "")) } }
        @if !planned.is_empty() { (section("Planned, parts held", &html! {}, &list(&planned))) }
    };
    Ok(framed(&w, &app, Framed { title: "Plan", active: Nav::Plan, body, ..Framed::default() }).await?.into_response())
}

#[derive(Debug, Default, Deserialize)]
struct PlanQuery {
    /// Locks as `SLOT:CODE`, separated by commas: kept in the address so that a plan can be shared.
    #[serde(default)]
    keep: String,
}

pub(super) fn locks(keep: &str) -> Vec<Lock> {
    keep.split(',')
        .filter_map(|pair| {
            let (slot, code) = pair.trim().split_once(':')?;
            Some(Lock { slot: slot.trim().parse().ok()?, code: code.trim().to_owned() })
        })
        .collect()
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Path(job): Path<i64>,
    Asked(query): Asked<PlanQuery>,
) -> PageResult {
    plan_page(&w, &app, job, &query.keep, None).await
}

#[derive(Debug, Deserialize)]
struct AcceptForm {
    fingerprint: String,
    #[serde(default)]
    keep: String,
    #[serde(default)]
    partly: Option<String>,
    #[serde(default)]
    neighbour_reason: String,
}

async fn accept(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(job): Path<i64>,
    Filled(form): Filled<AcceptForm>,
) -> PageResult {
    let accept = Accept {
        fingerprint: form.fingerprint,
        locks: locks(&form.keep),
        partly: form.partly.is_some(),
        neighbour_reason: form.neighbour_reason,
        by,
    };
    match app.accept(job, &accept).await {
        Ok(_) => Ok(go_to(&format!("/plan/{job}")).into_response()),
        Err(error) => plan_page(&w, &app, job, &form.keep, Some(error)).await,
    }
}

#[derive(Debug, Deserialize)]
struct DropForm {
    #[serde(default)]
    reason: String,
}

async fn drop_job(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(job): Path<i64>,
    Filled(form): Filled<DropForm>,
) -> PageResult {
    match app.drop_job(job, &form.reason, &by).await {
        Ok(()) => Ok(go_to("/").into_response()),
        Err(error) => plan_page(&w, &app, job, "", Some(error)).await,
    }
}

async fn plan_page(w: &Words, app: &App, number: i64, keep: &str, error: Option<AppError>) -> PageResult {
    let file = app.job_file(number).await?;
    let mut status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let mut notice: Option<Notice> = error.as_ref().map(|one| failure(w, one));
    let body = if file.job.state == JobState::Open {
        match app.propose_for(&file, &locks(keep)).await {
            Ok((proposal, wanted)) => {
                proposal_part(w, &file, &proposal, keep, &super::orders::order_part(w, app, &file, &wanted).await?)
            }
            Err(error) => {
                status = failure_status(&error);
                notice = Some(failure(w, &error));
                html! { p { a.button.quiet href={ "/plan/" (number) } { "Plan without what was kept" } } }
            }
        }
    } else {
        let lacks = file.job.state == JobState::Planned && file.job.clubs.iter().any(|c| c.plan.is_none());
        let wanted = if lacks { app.wanted(number).await? } else { Vec::new() };
        html! { (super::orders::order_part(w, app, &file, &wanted).await?) (accepted_part(w, &file)) }
    };
    let waits = app.waits().await?.remove(&number).unwrap_or_default();
    let body = html! { (super::orders::waits_part(w, &waits)) (body) (drop_part(w, number, file.job.state)) };
    let crumb = format!("Job {number} · {} · {}", file.job.sheet.player, file.job.state.word());
    let page =
        framed(w, app, Framed { title: "Plan", active: Nav::Plan, crumb, notice, body, ..Framed::default() }).await?;
    Ok((status, page).into_response())
}

fn drop_part(w: &Words, number: i64, state: JobState) -> Markup {
    html! {
        @if matches!(state, JobState::Open | JobState::Planned) {
            details { summary { "Give this job up" }
                form method="post" action={ "/plan/" (number) "/drop" } {
                    (field(&Field { name: "reason", label: "Why? The record keeps it.", required: true, ..Field::default() }))
                    (button(&Button { label: "Give it up, free its parts", kind: ButtonKind::Danger, ..Button::default() }))
                }
            }
        }
    }
}

fn proposal_part(w: &Words, file: &JobFile, proposal: &Proposal, keep: &str, to_order: &Markup) -> Markup {
    let plan = &proposal.plan;
    let lacking = plan.clubs.iter().any(Option::is_none);
    let any = plan.clubs.iter().any(Option::is_some);
    html! {
        @if !plan.missing.is_empty() {
            (section("Missing", &html! {}, &html! { ul.plain { @for missing in &plan.missing { li { (lacking_part(w, missing)) } } } }))
        }
        (to_order)
        @if any {
            (plan_table(w, file, &plan.clubs, Some(&keep_of(file.job.number, keep, "plan"))))
            p.small { (proof_words(w, plan)) }
            (frequency_part(w, plan))
            (beams(w, file, &plan.clubs))
            form method="post" action={ "/plan/" (file.job.number) } {
                (hidden("fingerprint", &proposal.fingerprint)) (hidden("keep", keep))
                @if plan.clubs.iter().flatten().any(|c| c.neighbour_blank.is_some()) {
                    (field(&Field { name: "neighbour_reason", label: "Why a neighbouring number's blank? The job keeps it.", required: true, ..Field::default() }))
                }
                @if lacking { (check("partly", "1", "Plan the others, leave out what is missing", false)) }
                (button(&Button { label: "Hold these parts", big: true, ..Button::default() }))
            }
            (cut_list(w, file, &plan.clubs))
            (why(w, file, &plan.clubs))
            p.actions { (link_button(&format!("/plan/{}/options{}", file.job.number, query(&[("keep", keep)])), "Other plans to choose from", ButtonKind::Quiet, None, "")) }
            details { summary { "Keep a part for a club by its code" }
                form method="get" action={ "/plan/" (file.job.number) } {
                    (field(&Field { name: "keep", label: "Slot and code, for example 3:H-0412, 5:S-0031", value: keep, ..Field::default() }))
                    (button(&Button { label: "Plan again", kind: ButtonKind::Quiet, ..Button::default() }))
                }
            }
        } @else {
            (empty_state("No club of this job can be built from the stock.", "Weigh in what is missing, then plan again.",
                &[Action { href: "/stock", label: "Stock", primary: true }]))
        }
    }
}

/// What a club lacks, and what else would do.
pub(super) fn lacking_part(w: &Words, missing: &Missing) -> Markup {
    html! {
        (tag(Tone::Care, &missing.number)) " " (restated(w, &missing.words))
        @if !missing.instead.is_empty() {
            details { summary { "What else would do" }
                ul { @for other in &missing.instead { li {
                    (restated(w, &other.words))
                    @if let Some(job) = other.held_by { " " a href={ "/plan/" (job) } { "See job " (job) } }
                } } }
            }
        }
    }
}

/// The frequency lines that the shafts are held against; nothing where no shaft was ever measured.
fn frequency_part(w: &Words, plan: &Plan) -> Markup {
    html! {
        @if !plan.frequency.is_empty() {
            details { summary { "Frequency of the shafts" }
                ul.plain { @for line in &plan.frequency { li { (line.words) } } }
            }
        }
    }
}

fn proof_words(w: &Words, plan: &Plan) -> String {
    if plan.proven {
        let line = if plan.frequency.iter().any(|l| l.line_cpm.is_some()) {
            "shafts on their frequency line, then by "
        } else {
            ""
        };
        format!(
            "Proven: no other choice of these parts comes out better, first by the chance of finishing in tolerance, \
             then by grams in the tip, then by {line}even shafts."
        )
    } else {
        format!("Best found so far; at most {} clubs better is possible.", decimal(plan.cost - plan.bound, 3))
    }
}

fn accepted_part(w: &Words, file: &JobFile) -> Markup {
    let plans: Vec<Option<ClubPlan>> = file.job.clubs.iter().map(|c| c.plan.clone()).collect();
    let number = file.job.number;
    html! {
        p.actions {
            (link_button(&format!("/bench/{number}"), "To the bench", ButtonKind::Primary, None, ""))
            (link_button(&format!("/plan/{number}/cards"), "Job cards", ButtonKind::Quiet, Some(look::Icon::Print), ""))
            @if file.job.state == JobState::Planned { (link_button(&format!("/plan/{number}/again"), "Plan anew", ButtonKind::Quiet, None, "")) }
        }
        (plan_table(w, file, &plans, None))
        (cut_list(w, file, &plans))
        (why(w, file, &plans))
    }
}

/// `3.1 cpm stiff`, as a shaft makes its club; `on its line` where that is nothing.
fn off_line(w: &Words, off_cpm: f64) -> String {
    if off_cpm.abs() < 0.05 {
        return "on its line".to_owned();
    }
    format!("{} cpm {}", decimal(off_cpm.abs(), 1), if off_cpm > 0.0 { "stiff" } else { "soft" })
}

fn with_plans<'a>(
    file: &'a JobFile,
    plans: &'a [Option<ClubPlan>],
) -> impl Iterator<Item = (&'a JobClub, &'a ClubPlan)> {
    file.job.clubs.iter().zip(plans).filter_map(|(c, p)| p.as_ref().map(|p| (c, p)))
}

/// How a part of a table is kept by a touch.
pub(super) struct Keeping {
    action: String,
    keep: String,
    back: &'static str,
}

pub(super) fn keep_of(job: i64, keep: &str, back: &'static str) -> Keeping {
    Keeping { action: format!("/plan/{job}/keep"), keep: keep.to_owned(), back }
}

impl Keeping {
    /// A button beside a part: kept for its club, or not.
    fn button(&self, w: &Words, slot: i64, code: &str) -> Markup {
        let lock = format!("{slot}:{code}");
        let kept = self.keep.split(',').any(|k| k.trim() == lock);
        html! {
            form.inline.keep-part method="post" action=(self.action) {
                (hidden("keep", &self.keep)) (hidden("toggle", &lock)) (hidden("back", self.back))
                button.keep-mark type="submit" aria-pressed=(kept) aria-label={ (code) ", " (if kept { "kept" } else { "keep" }) " for place " (slot) }
                    title=(if kept { "Kept here; touch to let it go" } else { "Touch to keep it here" }) {
                    (code) @if kept { " kept" }
                }
            }
        }
    }
}

/// The kinds of which the clubs of a table have a part each: an adapter only where one of them has one.
pub(super) fn kinds_of<'a>(mut plans: impl Iterator<Item = &'a ClubPlan>) -> Vec<PartKind> {
    let adapter = plans.any(|plan| plan.part(PartKind::Adapter).is_some()).then_some(PartKind::Adapter);
    [PartKind::Head, PartKind::Shaft, PartKind::Grip].into_iter().chain(adapter).collect()
}

pub(super) fn plan_table(w: &Words, file: &JobFile, plans: &[Option<ClubPlan>], keeping: Option<&Keeping>) -> Markup {
    let part_of = |slot: i64, plan: &ClubPlan, kind| {
        plan.part(kind).map_or_else(
            || Cell::from("none"),
            |p| {
                let place = if p.place.is_empty() { String::new() } else { format!(", {}", p.place) };
                let off_cpm = plan.frequency.filter(|_| kind == PartKind::Shaft).and_then(|f| f.off_cpm);
                Cell(html! {
                    @match keeping.filter(|_| p.weighed) { Some(keeping) => { (keeping.button(w, slot, &p.code)) } None => { (p.code) } }
                    " " span.small { (w.mass(p.mass_g)) @if !p.weighed { " (not weighed)" } (place) }
                    @if let Some(off_cpm) = off_cpm { br; span.small { (off_line(w, off_cpm)) } }
                })
            },
        )
    };
    let kinds = kinds_of(file.job.clubs.iter().zip(plans).filter_map(|(_, plan)| plan.as_ref()));
    let rows = with_plans(file, plans)
        .map(|(club, plan)| {
            let tips: Vec<String> =
                plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight).map(|p| w.mass(p.mass_g)).collect();
            let mut row = vec![Cell::from(club.target.number.clone())];
            row.extend(kinds.iter().map(|&kind| part_of(club.slot, plan, kind)));
            row.extend([
                Cell::from(if tips.is_empty() { "none".to_owned() } else { tips.join(" + ") }),
                Cell::from(SwingWeight::from_points(club.target.swing_weight_points).letter_short()),
                Cell::from(plan.expected.last().map_or_else(String::new, |e| {
                    format!("{} ± {}", w.swing_weight(e.swing_weight_points), decimal(e.band_points, 1))
                })),
            ]);
            row
        })
        .collect();
    let heads = std::iter::once("club").chain(kinds.iter().map(|kind| kind.word()));
    section(
        "Parts",
        &html! {},
        &table(&Table {
            caption: "Parts of each club",
            columns: heads.chain(["in the tip", "target", "as planned"]).map(Column::words).collect(),
            rows,
            cards: true,
            ..Table::default()
        }),
    )
}

/// The beam of each club as it is planned: what hangs where, and where it is meant to finish.
fn beams(w: &Words, file: &JobFile, plans: &[Option<ClubPlan>]) -> Markup {
    let mut job = file.job.clone();
    for (club, plan) in job.clubs.iter_mut().zip(plans) {
        club.plan.clone_from(plan);
    }
    let assembly = Assembly { job: &job, ..file.assembly() };
    let Ok(believed) = assembly.believe(&[]) else { return html! {} };
    let drawn = job.clubs.iter().filter(|c| c.plan.is_some()).map(|club| {
        let on: Vec<Role> =
            Role::ALL.iter().copied().filter(|r| !matches!(r, Role::Solvent | Role::Turnings)).collect();
        let pieces = bench::beam::beam_parts(&believed, &club.id, &on).ok()?;
        let finish = believed.finish(&club.id).ok()??;
        Some(club_beam(w, file, club, pieces, None, Some(finish)))
    });
    html! { details { summary { "Each club on the beam" } @for beam in drawn.flatten() { (beam) } } }
}

fn cut_list(w: &Words, file: &JobFile, plans: &[Option<ClubPlan>]) -> Markup {
    let rows = with_plans(file, plans)
        .map(|(club, plan)| {
            vec![
                Cell::from(club.target.number.clone()),
                Cell::from(if plan.tip_trim_mm > 0.0 { w.length(plan.tip_trim_mm) } else { "nothing".to_owned() }),
                Cell::from(w.length(plan.butt_cut_mm)),
                Cell::from(w.length(plan.cut_shaft_mm)),
                Cell::from(w.mass(plan.cut_shaft_mass_g)),
                Cell::from(format!("{} / {}", w.signed_angle(plan.bend_loft_deg), w.signed_angle(plan.bend_lie_deg))),
            ]
        })
        .collect();
    section(
        "Cut list",
        &html! {},
        &html! {
            (table(&Table {
                caption: "Cuts of each club",
                columns: ["club", "off the tip", "off the butt", "cut shaft", "should weigh", "bend loft / lie"]
                    .iter()
                    .map(|head| Column { head: (*head).into(), figures: *head != "club" })
                    .collect(),
                rows,
                cards: true,
                ..Table::default()
            }))
            p.small { "Lengths go to where the shaft axis meets the ground, by each head's own bore. Or: trim the tip, dry-fit the \
                head to the bottom of its bore, sole it, mark the sheet's length at the butt, then cut." }
        },
    )
}

fn why(w: &Words, file: &JobFile, plans: &[Option<ClubPlan>]) -> Markup {
    html! {
        details { summary { "Why these" }
            dl.defs.told { @for (club, plan) in with_plans(file, plans) {
                div { dt { (club.target.number) } dd { (restated(w, &plan.reasons.join(" "))) } }
            } }
        }
    }
}

async fn cards(State(app): State<App>, Reader(w): Reader, Path(job): Path<i64>) -> PageResult {
    let file = app.job_file(job).await?;
    let head = format!("Job {job} · {}", file.job.sheet.player);
    let body = html! {
        p.no-print { "Print this page: one card a club, it rides in the tray. " a href={ "/plan/" (job) } { "Back to the plan" } }
        div.job-cards { @for club in &file.job.clubs { @if let Some(plan) = &club.plan { (one_card(&w, &file, &head, club, plan)) } } }
    };
    let page = framed(
        &w,
        &app,
        Framed { title: "Job cards", active: Nav::Plan, crumb: head.clone(), body, ..Framed::default() },
    )
    .await?;
    Ok(page.into_response())
}

fn one_card(w: &Words, file: &JobFile, head: &str, club: &JobClub, plan: &ClubPlan) -> Markup {
    let target = &club.target;
    let code =
        |kind| plan.part(kind).map_or_else(|| "none".to_owned(), |p| format!("{} ({})", p.code, w.mass(p.mass_g)));
    let tips: Vec<String> =
        plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight).map(|p| w.mass(p.mass_g)).collect();
    let facing = |f: Option<trade::kind::Facing>| f.map_or("as it comes", trade::kind::Facing::word);
    let mut lines: Vec<(String, String)> =
        kinds_of(std::iter::once(plan)).into_iter().map(|kind| (kind.word().to_owned(), code(kind))).collect();
    lines.extend([
        ("in the tip".to_owned(), if tips.is_empty() { "none".into() } else { tips.join(" + ") }),
        ("off the tip".to_owned(), if plan.tip_trim_mm > 0.0 { w.length(plan.tip_trim_mm) } else { "nothing".into() }),
        ("cut shaft".to_owned(), w.length(plan.cut_shaft_mm)),
        ("length".to_owned(), format!("{}, {}", w.length(target.length_mm), target.length_to)),
        (
            "wraps".to_owned(),
            format!("{} base, {} full, {} lower hand", target.wraps.base, target.wraps.full, target.wraps.lower_hand),
        ),
        (
            "labels".to_owned(),
            format!("grip {}, shaft {}", facing(target.grip_graphics), facing(target.shaft_graphics)),
        ),
        ("soft side".to_owned(), target.soft_side.map_or_else(|| "not asked".to_owned(), |s| s.word().to_owned())),
        (
            "bend".to_owned(),
            format!(
                "loft {} to {}, lie {} to {}",
                w.signed_angle(plan.bend_loft_deg),
                w.angle(target.loft_deg),
                w.signed_angle(plan.bend_lie_deg),
                w.angle(target.lie_deg)
            ),
        ),
    ]);
    let expected: Vec<(String, String)> = plan
        .expected
        .iter()
        .map(|e| {
            let label = file.job.step(&e.step).map_or(e.step.as_str(), |s: &Step| s.label.as_str());
            (label.to_lowercase(), format!("{} ± {}", w.swing_weight(e.swing_weight_points), decimal(e.band_points, 1)))
        })
        .collect();
    job_card(
        w,
        &JobCard {
            size: CardSize::A6,
            club: &club_name(w, club),
            job: head,
            slot: &club.slot.to_string(),
            code: &club.card,
            code_svg: qr_code(&club.card),
            lines,
            expected,
            caution: "No swing before the adhesive maker's full cure.",
        },
    )
}
