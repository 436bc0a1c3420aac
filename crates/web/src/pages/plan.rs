//! Plan: which parts go into which club, the cut list, what is missing.

use super::club_beam::club_beam;
use super::entries::{go_on, query};
use super::sheets::NO_VALUE;
use super::step_says::adapter_words;
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::{Asked, Filled, Path};
use crate::reader::Reader;
use crate::tablet::Done;
use app::advice::DeclineOffer;
use app::anyway::off_points;
use app::job::JobFile;
use app::plan::{Accept, Proposal};
use app::{App, AppError};
use axum::Router;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use bench::assembly::Assembly;
use bench::offer::Measure;
use desk::planner::Lock;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Nav, Notice, Table, Tone, button, check, empty_state, field,
    hidden, link_button, section, table, tag,
};
use maud::{Markup, html};
use serde::Deserialize;
use trade::job::JobClub;
use trade::job::JobState;
use trade::kind::Role;
use trade::model::PartKind;
use trade::plan::ClubPlan;
use trade::plan::Expected;
use trade::plan::Missing;
use trade::plan::Plan;
use trade::reading::What;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/plan", get(index))
        .route("/plan/{job}", get(show).post(accept))
        .route("/plan/{job}/drop", post(drop_job))
        .route("/plan/{job}/anyway", post(build_anyway))
        .route("/plan/{job}/one-batch", post(one_batch))
}

async fn index(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let w = &w;
    let open = app.job_names(&[JobState::Open]).await?;
    let planned = app.job_names(&[JobState::Planned]).await?;
    let list = |jobs: &[app::job::JobLine]| {
        html! { ul.plain.big-links { @for job in jobs {
            @let clubs: Vec<String> = job.clubs.iter().map(|number| w.club_number(number)).collect();
            li { a.button.quiet href={ "/plan/" (job.number) } {
                (text!(w, "plan-job-line", job = job.number, player = job.player, clubs = clubs.join(" ")))
            } }
        } } }
    };
    let body = html! {
        @if open.is_empty() && planned.is_empty() {
            (empty_state(&w.text("plan-nothing"), &w.text("plan-nothing-next"), &[Action { href: "/sheets", label: &w.text("plan-sheets"), primary: true }]))
        }
        @if !open.is_empty() { (section(&w.text("plan-to-plan"), &html! {}, &list(&open))) }
        @if open.len() > 1 { p.actions { (link_button("/plan/day", &w.text("plan-together"), ButtonKind::Primary, None, "")) } }
        @if !planned.is_empty() { (section(&w.text("plan-planned"), &html! {}, &list(&planned))) }
    };
    Ok(framed(w, &app, Framed { title: &w.text("plan-page"), active: Nav::Plan, body, ..Framed::default() })
        .await?
        .into_response())
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
        Ok(_) => Ok(go_on(&format!("/plan/{job}"), Done::Held)),
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
        Ok(()) => Ok(go_on("/", Done::GivenUp)),
        Err(error) => plan_page(&w, &app, job, "", Some(error)).await,
    }
}

/// A club whose target is out of reach is built with the nearest parts, by the builder's word.
async fn build_anyway(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(job): Path<i64>,
    Filled(form): Filled<DropForm>,
) -> PageResult {
    match app.build_anyway(job, &form.reason, &by).await {
        Ok(_) => Ok(go_on(&format!("/plan/{job}"), Done::Held)),
        Err(error) => plan_page(&w, &app, job, "", Some(error)).await,
    }
}

#[derive(Debug, Deserialize)]
struct OneBatchForm {
    measure: Measure,
}

/// Another order of work is not proposed again in this job.
async fn one_batch(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(job): Path<i64>,
    Filled(form): Filled<OneBatchForm>,
) -> PageResult {
    match app.decline_offer(job, &DeclineOffer { measure: form.measure, by }).await {
        Ok(()) => Ok(go_on(&format!("/plan/{job}"), Done::Noted)),
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
                html! { p { a.button.quiet href={ "/plan/" (number) } { (w.text("plan-without-locks")) } } }
            }
        }
    } else {
        let lacks = file.job.state == JobState::Planned && file.job.clubs.iter().any(|c| c.plan.is_none());
        let wanted = if lacks { app.wanted(number).await? } else { Vec::new() };
        let before = super::work_order::plan_part(w, app, &file).await?;
        html! { (super::orders::order_part(w, app, &file, &wanted).await?) (before) (accepted_part(w, &file)) }
    };
    let waits = app.waits().await?.remove(&number).unwrap_or_default();
    let under_way = matches!(file.job.state, JobState::Open | JobState::Planned);
    let once_more = match file.job.sheet.reference.as_ref().filter(|_| under_way) {
        Some(reference) => {
            let at_bench = file.readings.iter().filter(|r| r.what == What::ReferenceSwingWeight).count();
            super::sheet_reference::reference_once_more(w, app, reference, at_bench).await?
        }
        None => html! {},
    };
    let body =
        html! { (super::orders::waits_part(w, &waits)) (body) (once_more) (drop_part(w, number, file.job.state)) };
    let crumb = text!(w, "plan-job-state", job = number, player = file.job.sheet.player, state = file.job.state);
    let title = w.text("plan-page");
    let page = framed(
        w,
        app,
        Framed { title: &title, active: Nav::Plan, crumb, notice, body, terms: true, ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

fn drop_part(w: &Words, number: i64, state: JobState) -> Markup {
    html! {
        @if matches!(state, JobState::Open | JobState::Planned) {
            details { summary { (w.text("plan-drop")) }
                form method="post" action={ "/plan/" (number) "/drop" } {
                    (field(&Field { name: "reason", label: &w.text("plan-drop-why"), required: true, ..Field::default() }))
                    (button(&Button { label: &w.text("plan-drop-button"), kind: ButtonKind::Danger, ..Button::default() }))
                }
            }
        }
    }
}

/// The owner's word where no choice of the stock brings a club to its target.
fn anyway_part(w: &Words, job: i64) -> Markup {
    html! {
        details.card { summary { (w.text("plan-anyway")) }
            form method="post" action={ "/plan/" (job) "/anyway" } {
                p { (w.text("plan-anyway-about")) }
                (field(&Field { name: "reason", id: "anyway-reason", label: &w.text("plan-anyway-why"), required: true, ..Field::default() }))
                (button(&Button { label: &w.text("plan-anyway"), kind: ButtonKind::Quiet, ..Button::default() }))
            }
        }
    }
}

fn proposal_part(w: &Words, file: &JobFile, proposal: &Proposal, keep: &str, to_order: &Markup) -> Markup {
    let plan = &proposal.plan;
    let lacking = plan.clubs.iter().any(Option::is_none);
    let any = plan.clubs.iter().any(Option::is_some);
    // Where a part is missing altogether, no word of the owner builds the club.
    let of_reach = plan.missing.iter().filter(|missing| missing.kind != PartKind::Ferrule);
    let reach = lacking && of_reach.clone().all(|missing| off_points(missing).is_some());
    let sheet = super::entries::in_address(file.job.sheet_id.as_str());
    html! {
        @if !plan.missing.is_empty() {
            (section(&w.text("plan-missing"), &html! {}, &lacking_parts(w, &plan.missing)))
        }
        @if reach { (anyway_part(w, file.job.number)) }
        @else if lacking { p.actions { (link_button(&format!("/begin/parts/{sheet}"), &w.text("plan-weigh-missing"), ButtonKind::Primary, None, "")) } }
        (to_order)
        @if any {
            (plan_table(w, file, &plan.clubs, Some(&keep_of(file.job.number, keep, "plan"))))
            p.small { (proof(w, plan)) }
            (frequency_part(w, plan))
            (beams(w, file, &plan.clubs))
            form method="post" action={ "/plan/" (file.job.number) } {
                (hidden("fingerprint", &proposal.fingerprint)) (hidden("keep", keep))
                @if plan.clubs.iter().flatten().any(|c| c.neighbour_blank.is_some()) {
                    (field(&Field { name: "neighbour_reason", label: &w.text("plan-neighbour-why"), required: true, ..Field::default() }))
                }
                @if lacking { (check("partly", "1", &w.text("plan-partly"), false)) }
                (button(&Button { label: &w.text("plan-hold"), big: true, ..Button::default() }))
            }
            (cut_list(w, file, &plan.clubs))
            (why(w, file, &plan.clubs))
            p.actions { (link_button(&format!("/plan/{}/options{}", file.job.number, query(&[("keep", keep)])), &w.text("plan-other-plans"), ButtonKind::Quiet, None, "")) }
            details { summary { (w.text("plan-lock-by-code")) }
                form method="get" action={ "/plan/" (file.job.number) } {
                    (field(&Field { name: "keep", label: &w.text("plan-lock-field"), value: keep, ..Field::default() }))
                    (button(&Button { label: &w.text("plan-again-button"), kind: ButtonKind::Quiet, ..Button::default() }))
                }
            }
        } @else {
            (empty_state(&w.text("plan-none"), &w.text("plan-none-next"),
                &[Action { href: "/stock", label: &w.text("plan-stock"), primary: true }]))
        }
    }
}

/// What clubs lack, those that lack the same on one line, and what else would do.
pub(super) fn lacking_parts(w: &Words, missing: &[Missing]) -> Markup {
    let mut lines: Vec<(String, Vec<&Missing>)> = Vec::new();
    for one in missing {
        let told = w.sentence(&one.fact);
        match lines.iter_mut().find(|line| line.0 == told) {
            Some(line) => line.1.push(one),
            None => lines.push((told, vec![one])),
        }
    }
    html! {
        ul.plain { @for (told, clubs) in &lines { li {
            @for club in clubs { (tag(Tone::Care, &w.club_number(&club.number))) " " }
            (told)
            @if clubs.iter().any(|club| !club.instead.is_empty()) {
                details { summary { (w.text("plan-instead")) }
                    ul { @for club in clubs { @for other in &club.instead { li {
                        @if clubs.len() > 1 { b { (w.club_number(&club.number)) } " " }
                        (w.sentence(&other.fact))
                        @if let Some(job) = other.held_by { " " a href={ "/plan/" (job) } { (text!(w, "plan-see-job", job = job)) } }
                    } } } }
                }
            }
        } } }
    }
}

/// The frequency lines that the shafts are held against; nothing where no shaft was ever measured.
fn frequency_part(w: &Words, plan: &Plan) -> Markup {
    html! {
        @if !plan.frequency.is_empty() {
            details { summary { (w.text("plan-frequency")) }
                ul.plain { @for line in &plan.frequency { li { (w.sentence(&line.fact)) } } }
            }
        }
    }
}

fn proof(w: &Words, plan: &Plan) -> String {
    if !plan.proven {
        return text!(w, "plan-best-so-far", clubs = plan.cost - plan.bound);
    }
    let on_line = plan.frequency.iter().any(|l| l.line_cpm.is_some());
    w.text(if on_line { "plan-proven-with-line" } else { "plan-proven" })
}

fn accepted_part(w: &Words, file: &JobFile) -> Markup {
    let plans: Vec<Option<ClubPlan>> = file.job.clubs.iter().map(|c| c.plan.clone()).collect();
    let number = file.job.number;
    html! {
        p.actions {
            (link_button(&format!("/bench/{number}"), &w.text("plan-to-bench"), ButtonKind::Primary, None, ""))
            (link_button(&format!("/plan/{number}/cards"), &w.text("plan-cards"), ButtonKind::Quiet, Some(look::Icon::Print), ""))
            @if file.job.state == JobState::Planned { (link_button(&format!("/plan/{number}/again"), &w.text("plan-again"), ButtonKind::Quiet, None, "")) }
        }
        (plan_table(w, file, &plans, None))
        (cut_list(w, file, &plans))
        (why(w, file, &plans))
    }
}

/// `3.1 cpm stiff`, as a shaft makes its club; `on its line` where that is nothing.
fn off_line(w: &Words, off_cpm: f64) -> String {
    let by_cpm = off_cpm.abs();
    if by_cpm < 0.05 {
        w.text("plan-on-line")
    } else if off_cpm > 0.0 {
        text!(w, "plan-stiff", by_cpm = by_cpm)
    } else {
        text!(w, "plan-soft", by_cpm = by_cpm)
    }
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
                @if kept {
                    button.keep-mark type="submit" aria-pressed="true" aria-label=(text!(w, "plan-kept-for", code = code, slot = slot))
                        title=(w.text("plan-kept-title")) { (text!(w, "plan-kept", code = code)) }
                } @else {
                    button.keep-mark type="submit" aria-pressed="false" aria-label=(text!(w, "plan-keep-for", code = code, slot = slot))
                        title=(w.text("plan-keep-title")) { (code) }
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
    let part_of = |club: &JobClub, plan: &ClubPlan, kind| {
        plan.part(kind).map_or_else(
            || Cell::from(w.text("plan-no-part")),
            |p| {
                if stays(club, plan, kind) {
                    return Cell(html! { span.small { (w.text("plan-part-stays")) } });
                }
                let place = if p.place.is_empty() { String::new() } else { format!(", {}", p.place) };
                let off_cpm = plan.frequency.filter(|_| kind == PartKind::Shaft).and_then(|f| f.off_cpm);
                Cell(html! {
                    @match keeping.filter(|_| p.weighed) { Some(keeping) => { (keeping.button(w, club.slot, &p.code)) } None => { (p.code) } }
                    " " span.small { span.whole { (w.mass(p.mass_g)) } @if !p.weighed { " " (w.text("plan-not-weighed")) } (place) }
                    @if let Some(off_cpm) = off_cpm { br; span.small { (off_line(w, off_cpm)) } }
                })
            },
        )
    };
    let kinds = kinds_of(file.job.clubs.iter().zip(plans).filter_map(|(_, plan)| plan.as_ref()));
    let rows = with_plans(file, plans)
        .map(|(club, plan)| {
            let mut tips: Vec<String> =
                plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight).map(|p| w.mass(p.mass_g)).collect();
            tips.extend(screw(w, file, plan));
            let mut row = vec![Cell::from(w.club_short(&club.target.club_kind, &club.target.number))];
            row.extend(kinds.iter().map(|&kind| part_of(club, plan, kind)));
            row.extend([
                Cell::from(if tips.is_empty() { w.text("plan-no-part") } else { tips.join(" + ") }),
                Cell::from(w.swing_weight_short(club.target.swing_weight_points)),
                Cell(html! { @if let Some(e) = plan.expected.last() { span.whole { (reading(w, e)) } } @if let Some(i) = plan.swing_inertia { br; span.small { (text!(w, "plan-inertia", value_kg_cm2 = i.value_kg_cm2, band_kg_cm2 = i.band_kg_cm2)) } } }),
            ]);
            row
        })
        .collect();
    let heads = std::iter::once(w.text("plan-column-club")).chain(kinds.iter().map(|kind| w.tell(kind)));
    let rest = ["plan-column-tip", "plan-column-target", "plan-column-planned"].map(|id| w.text(id));
    section(
        &w.text("plan-parts"),
        &html! {},
        &table(&Table {
            caption: &w.text("plan-parts-caption"),
            columns: heads.chain(rest).map(Column::words).collect(),
            rows,
            cards: true,
            ..Table::default()
        }),
    )
}

/// The screw in the head, where it is not the one that it comes with.
pub(super) fn screw(w: &Words, file: &JobFile, plan: &ClubPlan) -> Option<String> {
    Some(text!(w, "plan-screw", screw = plan.screw(&file.library)?.label))
}

/// What a step should read: `D2.1 ± 0.3`.
pub(super) fn reading(w: &Words, expected: &Expected) -> String {
    text!(w, "plan-reading", expected_points = expected.swing_weight_points, band_points = expected.band_points)
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
    html! { details { summary { (w.text("plan-beams")) } @for beam in drawn.flatten() { (beam) } } }
}

/// What is cut of each shaft, and how each head is bent; of a club that is worked on only what its work touches.
fn cut_list(w: &Words, file: &JobFile, plans: &[Option<ClubPlan>]) -> Markup {
    let is_cut = |club: &JobClub, plan: &ClubPlan| !stays(club, plan, PartKind::Shaft);
    let any_cut = with_plans(file, plans).any(|(club, plan)| is_cut(club, plan));
    let listed: Vec<(&JobClub, &ClubPlan)> =
        with_plans(file, plans).filter(|(club, plan)| is_cut(club, plan) || is_bent(file, club)).collect();
    if listed.is_empty() {
        return html! {};
    }
    let rows = listed
        .into_iter()
        .map(|(club, plan)| {
            let mut row = vec![Cell::from(w.club_short(&club.target.club_kind, &club.target.number))];
            let cuts = || {
                [
                    off_tip(w, plan),
                    w.length(plan.butt_cut_mm),
                    w.length(plan.cut_shaft_mm),
                    w.mass(plan.cut_shaft_mass_g),
                ]
            };
            match (any_cut, is_cut(club, plan)) {
                (true, true) => row.extend(cuts().map(Cell::from)),
                (true, false) => row.extend([NO_VALUE; 4].map(Cell::from)),
                (false, _) => {}
            }
            row.push(Cell::from(match plan.adapter(&file.library).map(|a| adapter_words(w, a, &club.target)) {
                _ if !is_bent(file, club) => NO_VALUE.to_owned(),
                Some(set) if !set.is_empty() => set,
                _ => format!("{} / {}", w.signed_angle(plan.bend_loft_deg), w.signed_angle(plan.bend_lie_deg)),
            }));
            row
        })
        .collect();
    let cuts = ["off-tip", "off-butt", "cut-shaft", "cut-weight"];
    let figures = cuts.iter().filter(|_| any_cut).chain(&["bend"]);
    let figures = figures.map(|column| Column::figures(w.text(&format!("plan-column-{column}"))));
    section(
        &w.text(if any_cut { "plan-cut-list" } else { "plan-bend-list" }),
        &html! {},
        &html! {
            (table(&Table {
                caption: &w.text("plan-cut-list-caption"),
                columns: std::iter::once(Column::words(w.text("plan-column-club"))).chain(figures).collect(),
                rows,
                cards: true,
                ..Table::default()
            }))
            @if any_cut { p.small { (w.text("plan-cut-list-hint")) } }
        },
    )
}

/// Whether a club that is worked on keeps the part that it came with.
pub(super) fn stays(club: &JobClub, plan: &ClubPlan, kind: PartKind) -> bool {
    club.work.as_ref().is_some_and(|work| work.keeps(plan, kind))
}

/// Whether loft or lie of a club is brought to its sheet in this job: a new club, or one whose work reads them.
pub(super) fn is_bent(file: &JobFile, club: &JobClub) -> bool {
    club.work.is_none() || file.job.steps_of(club).any(|step| !step.before && step.asks.contains(&What::Loft))
}

/// What comes off the tip; a word where nothing does.
pub(super) fn off_tip(w: &Words, plan: &ClubPlan) -> String {
    if plan.tip_trim_mm > 0.0 { w.length(plan.tip_trim_mm) } else { w.text("plan-no-trim") }
}

fn why(w: &Words, file: &JobFile, plans: &[Option<ClubPlan>]) -> Markup {
    html! {
        details { summary { (w.text("plan-why")) }
            dl.defs.told { @for (club, plan) in with_plans(file, plans) {
                div {
                    dt { (w.club_short(&club.target.club_kind, &club.target.number)) }
                    dd { @for reason in &plan.reasons { (w.sentence(reason)) " " } }
                }
            } }
        }
    }
}
