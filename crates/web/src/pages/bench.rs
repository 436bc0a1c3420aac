//! The bench: one club, one decision a screen.

use super::bench_screen::Screen;
use super::beside;
use super::entries::{self, go_to, in_address, query};
use super::what_if::WhatIf;
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::{Asked, Filled, Path};
use crate::problem::EdgeFault;
use crate::reader::Reader;
use crate::units::explicit;
use app::advice::DeclineOffer;
use app::bench::{Entry, LetPassRequest, NewReadings};
use app::glue::LetBatchPass;
use app::job::JobFile;
use app::plan::{AddExtra, Swap};
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use axum::routing::{get, post};
use bench::belief::Finish;
use bench::club_state::ClubState;
use bench::club_state::Look;
use bench::club_state::StepStatus;
use bench::offer::Measure;
use look::{Action, ClubChip, ClubState as Mark, Nav, Notice, empty_state};
use maud::html;
use serde::Deserialize;
use std::collections::HashMap;
use trade::job::JobClub;
use trade::job::JobState;
use trade::kind::Role;
use trade::model::PartKind;
use words::{Words, text};

use trade::pendulum::Pendulum;
use trade::reading::What;
use trade::step::{Step, Strength};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/bench", get(index))
        .route("/bench/{job}", get(first_club))
        .route("/bench/{job}/{slot}", get(show).post(keep))
        .route("/bench/{job}/{slot}/take-back", post(take_back))
        .route("/bench/{job}/{slot}/insist", post(insist))
        .route("/bench/{job}/{slot}/let-pass", post(let_pass))
        .route("/bench/{job}/{slot}/swap", post(swap))
        .route("/bench/{job}/{slot}/extra", post(extra))
        .route("/bench/{job}/{slot}/decline", post(decline))
        .route("/bench/{job}/{slot}/scan", post(super::bench_scan::scan))
}

async fn index(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let jobs = app.job_names(&[JobState::Planned]).await?;
    if let [only] = jobs.as_slice() {
        return Ok(go_to(&format!("/bench/{}", only.number)).into_response());
    }
    let body = if jobs.is_empty() {
        empty_state(
            &w.text("bench-empty"),
            &w.text("bench-empty-next"),
            &[Action { href: "/plan", label: &w.text("bench-plan"), primary: true }],
        )
    } else {
        html! { ul.plain.big-links { @for job in &jobs {
            li { a.button.quiet href={ "/bench/" (job.number) } {
                (text!(w, "bench-job", job = job.number, player = job.player, clubs = job.clubs.join(" ")))
            } }
        } } }
    };
    Ok(framed(&w, &app, Framed { title: &w.text("bench-title"), active: Nav::Bench, body, ..Framed::default() })
        .await?
        .into_response())
}

/// The first club that has something left to do.
async fn first_club(State(app): State<App>, Path(job): Path<i64>) -> PageResult {
    let file = app.job_file(job).await?;
    if file.job.state == JobState::Open {
        return Ok(go_to(&format!("/plan/{job}")).into_response());
    }
    let states = file.states(app.now())?;
    let slot = states.iter().find(|s| s.next_step.is_some() && s.finish.is_some()).map_or(1, |s| s.slot);
    Ok(go_to(&format!("/bench/{job}/{slot}")).into_response())
}

#[derive(Debug, Default, Deserialize)]
struct ShowQuery {
    step: Option<String>,
    /// Show what the last reading meant.
    #[serde(default)]
    kept: Option<String>,
    /// The code that was scanned here.
    scanned: Option<String>,
    /// It was put in by that scan.
    put: Option<String>,
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Path((job, slot)): Path<(i64, i64)>,
    Asked(query): Asked<ShowQuery>,
    Query(pairs): Query<Vec<(String, String)>>,
) -> PageResult {
    let scanned = query.scanned.map(|code| (code, query.put.is_some()));
    let view =
        View { step: query.step, kept: query.kept.is_some(), scanned, what_if: WhatIf::of(&pairs), ..View::default() };
    bench_page(&w, &app, job, slot, view).await
}

/// What a bench page shows besides the job itself.
#[derive(Default)]
pub(super) struct View {
    step: Option<String>,
    pub kept: bool,
    /// The code that was scanned here, and whether that put it in.
    scanned: Option<(String, bool)>,
    notice: Option<Notice>,
    status: Option<StatusCode>,
    /// Entries as typed, by key of what was asked, and what was wrong with them.
    pub typed: HashMap<String, String>,
    pub wrong: Option<String>,
    /// Masses that are tried on the beam.
    pub what_if: WhatIf,
}

/// A form's fields: what was asked under `read-WHAT`, roles under `on-ROLE`.
type Fields = Vec<(String, String)>;

async fn keep(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Form(fields): Form<Fields>,
) -> PageResult {
    let text = |name: &str| fields.iter().find(|(k, _)| k == name).map(|(_, v)| v.clone()).unwrap_or_default();
    let step = text("step");
    let file = app.job_file(job).await?;
    let known = file.job.step(&step).cloned();
    // "Seated anew": the earlier reading stays and both count.
    let again = |what: What| fields.iter().any(|(k, _)| k.strip_prefix("again-") == Some(what.key()));
    let mut entries = Vec::new();
    let mut typed = HashMap::new();
    for (key, value) in &fields {
        if let Some(what) = key.strip_prefix("read-").and_then(What::from_key) {
            typed.insert(what.key().to_owned(), value.clone());
            if what == What::Done || !value.trim().is_empty() {
                let typed = explicit(&w, what.unit(), value.trim());
                entries.push(Entry { what, typed, value: None, pivot_mm: None, again: again(what) });
            }
        }
    }
    // Enter once more, with nothing typed, where all is read: on to the next club.
    if entries.is_empty()
        && let Some(next) = next_of_row(&file, slot, &step)
    {
        return Ok(to_step(job, next, &step, &[]));
    }
    typed.insert("reason".to_owned(), text("reason"));
    let on = known.as_ref().map(|step| on_club(step, &fields));
    let new = NewReadings {
        slot,
        step: step.clone(),
        entries,
        on,
        by,
        version: text("version").parse().ok(),
        seen: entries::seen(&text("seen")),
        at: entries::typed_at(&text("at"))?,
        reason: Some(text("reason")).filter(|reason| !reason.is_empty()),
        request_key: Some(text("request_key")).filter(|k| !k.is_empty()),
    };
    match app.read(job, &new).await {
        Ok(_) => Ok(to_step(job, slot, &step, &[("kept", "1")])),
        Err(error) => {
            let belongs_to_entry = matches!(error, AppError::Notation(_) | AppError::Trade(_));
            let view = View {
                step: Some(step),
                status: Some(failure_status(&error)),
                wrong: belongs_to_entry.then(|| beside(&w, &error.refusal())),
                notice: (!belongs_to_entry).then(|| failure(&w, &error)),
                typed,
                ..View::default()
            };
            bench_page(&w, &app, job, slot, view).await
        }
    }
}

/// The club to go on with once everything that a step asks of this one is read.
fn next_of_row(file: &JobFile, slot: i64, step: &str) -> Option<i64> {
    let club = file.club_at(slot).ok()?;
    let standing = trade::reading::standing(&file.readings);
    let read = |what: &What| standing.iter().any(|r| r.club == club.id && r.step == step && r.what == *what);
    if !file.job.step(step)?.asks.iter().all(read) {
        return None;
    }
    next_club(file, slot).map(|c| c.slot)
}

/// The next club in the row that has a plan, round to the first; none where there is no other.
pub(super) fn next_club(file: &JobFile, slot: i64) -> Option<&JobClub> {
    let others = || file.job.clubs.iter().filter(|c| c.plan.is_some() && c.slot != slot);
    others().find(|other| other.slot > slot).or_else(|| others().next())
}

/// What was on the club: what the step says, less the roles whose box was offered and not ticked.
fn on_club(step: &Step, fields: &Fields) -> Vec<Role> {
    let has = |name: &str| fields.iter().any(|(k, _)| k == name);
    step.on
        .iter()
        .copied()
        .filter(|role| {
            let asked = if *role == Role::Turnings { Role::Ferrule } else { *role };
            !has(&format!("asked-{}", asked.key())) || has(&format!("on-{}", asked.key()))
        })
        .collect()
}

#[derive(Debug, Deserialize)]
struct TakeBackForm {
    reading: String,
    step: String,
    #[serde(default)]
    why: String,
    /// Sent from the set grid: the quantity that it reads, to go on there.
    grid: Option<What>,
}

async fn take_back(
    State(app): State<App>,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Filled(form): Filled<TakeBackForm>,
) -> PageResult {
    app.take_back(job, &form.reading.as_str().into(), &form.why, &by).await?;
    if let Some(what) = form.grid {
        let to = format!("/bench/{job}/grid/{}?what={}&at={slot}", in_address(&form.step), what.key());
        return Ok(go_to(&to).into_response());
    }
    Ok(to_step(job, slot, &form.step, &[]))
}

async fn insist(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Filled(form): Filled<TakeBackForm>,
) -> PageResult {
    match app.insist(job, &form.reading.as_str().into(), &form.why, &by).await {
        Ok(_) => Ok(to_step(job, slot, &form.step, &[("kept", "1")])),
        Err(error) => again(&w, &app, job, slot, form.step, &error).await,
    }
}

#[derive(Debug, Deserialize)]
struct LetPassForm {
    step: String,
    #[serde(default)]
    reason: String,
    /// The batch that the override belongs to, and the strength that its joints are taken to have.
    batch: Option<i64>,
    strength: Option<Strength>,
    /// Sent from the set grid: the quantity that it reads, to go on there.
    grid: Option<What>,
}

async fn let_pass(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Filled(form): Filled<LetPassForm>,
) -> PageResult {
    let done = match (form.batch, form.strength) {
        (Some(batch), Some(strength)) => {
            app.let_batch_pass(batch, &LetBatchPass { strength, reason: form.reason, by }).await.map(|_| ())
        }
        _ => app.let_pass(job, &LetPassRequest { slot, step: form.step.clone(), reason: form.reason, by }).await,
    };
    match (done, form.grid) {
        (Ok(()), Some(what)) => {
            let to = format!("/bench/{job}/grid/{}?what={}", in_address(&form.step), what.key());
            Ok(go_to(&to).into_response())
        }
        (Ok(()), None) => Ok(to_step(job, slot, &form.step, &[])),
        (Err(error), _) => again(&w, &app, job, slot, form.step, &error).await,
    }
}

#[derive(Debug, Deserialize)]
struct SwapForm {
    kind: PartKind,
    #[serde(default)]
    code: String,
    step: String,
    #[serde(default)]
    reason: String,
    version: Option<i64>,
}

async fn swap(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Filled(form): Filled<SwapForm>,
) -> PageResult {
    let request =
        Swap { kind: form.kind, code: form.code.as_str().into(), reason: form.reason, by, version: form.version };
    match app.swap(job, slot, &request).await {
        Ok(_) => Ok(to_step(job, slot, &form.step, &[])),
        Err(error) => again(&w, &app, job, slot, form.step, &error).await,
    }
}

#[derive(Debug, Deserialize)]
struct DeclineForm {
    measure: Measure,
    step: String,
}

async fn decline(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Filled(form): Filled<DeclineForm>,
) -> PageResult {
    match app.decline_offer(job, &DeclineOffer { measure: form.measure, by }).await {
        Ok(()) => Ok(to_step(job, slot, &form.step, &[])),
        Err(error) => again(&w, &app, job, slot, form.step, &error).await,
    }
}

#[derive(Debug, Deserialize)]
struct ExtraForm {
    action: trade::action::Action,
    mass_g: f64,
    step: String,
    version: Option<i64>,
}

async fn extra(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Filled(form): Filled<ExtraForm>,
) -> PageResult {
    let add = AddExtra { action: form.action, mass_g: form.mass_g, by, version: form.version };
    match app.add_extra(job, slot, &add).await {
        Ok(_) => Ok(to_step(job, slot, &form.step, &[])),
        Err(error) => again(&w, &app, job, slot, form.step, &error).await,
    }
}

/// Leads on to a step of a club. The form names the step, and a name may be anything.
fn to_step(job: i64, slot: i64, step: &str, more: &[(&str, &str)]) -> Response {
    go_to(&format!("/bench/{job}/{slot}{}", query(&[&[("step", step)], more].concat()))).into_response()
}

pub(super) async fn again(w: &Words, app: &App, job: i64, slot: i64, step: String, error: &AppError) -> PageResult {
    let view = View {
        step: Some(step),
        notice: Some(failure(w, error)),
        status: Some(failure_status(error)),
        ..View::default()
    };
    bench_page(w, app, job, slot, view).await
}

async fn bench_page(w: &Words, app: &App, number: i64, slot: i64, view: View) -> PageResult {
    let file = app.job_file(number).await?;
    let club = file.club_at(slot)?;
    let believed = file.believe()?;
    let states = file.states_of(&believed, app.now())?;
    let state = states.iter().find(|s| s.slot == slot).ok_or_else(|| AppError::invalid(EdgeFault::NoState))?;
    let step = chosen_step(&file, state, view.step.as_deref());
    let done = |s: &&ClubState| s.steps.iter().any(|x| x.key == step.key && x.status == StepStatus::Done);
    let (read, n) = (states.iter().filter(done).count(), states.len());
    let crumb = text!(w, "bench-crumb", job = number, player = file.job.sheet.player, read = read, n = n);
    let said = app.at_bench(&file, &believed, slot, &step.key)?;
    let body = if club.plan.is_some() {
        let today = app.today();
        let open = file.open_on(&believed, &states, step)?;
        let (file, believed, states, view) = (&file, &believed, &states, &view);
        let screen = Screen { file, believed, club, state, states, step, view, said, open, today };
        screen.body(w)?
    } else {
        empty_state(
            &w.text("bench-no-parts"),
            &w.text("bench-no-parts-next"),
            &[Action { href: "/stock", label: &w.text("bench-to-stock"), primary: true }],
        )
    };
    let title = text!(w, "bench-decision", club = club_name(w, club), step = step.label);
    let said = match &view.scanned {
        Some((code, put)) => super::bench_scan::scanned(w, app, (number, slot), &step.key, (code, *put)).await?,
        None => html! {},
    };
    let scan = super::bench_scan::scan_here(w, (number, slot), &step.key);
    let body = html! { (said) div data-live=(number) { (body) } (scan) };
    let page = framed(
        w,
        app,
        Framed {
            title: &title,
            active: Nav::Bench,
            crumb,
            notice: view.notice.clone(),
            at_bench: true,
            terms: true,
            body,
            ..Framed::default()
        },
    )
    .await?;
    Ok((view.status.unwrap_or(StatusCode::OK), page).into_response())
}

/// `6-iron`, `PW`, `driver`.
pub(super) fn club_name(w: &Words, club: &JobClub) -> String {
    w.club(&club.target.club_kind, &club.target.number)
}

/// The same where the clubs beside it tell the rest: `6`, `PW`.
pub(super) fn short_name(w: &Words, club: &JobClub) -> String {
    w.club_short(&club.target.club_kind, &club.target.number)
}

fn chosen_step<'a>(file: &'a JobFile, state: &ClubState, wanted: Option<&str>) -> &'a Step {
    wanted
        .and_then(|key| file.job.step(key))
        .or_else(|| state.next_step.as_deref().and_then(|key| file.job.step(key)))
        .or(file.job.steps.last())
        .unwrap_or(&file.job.steps[0])
}

impl View {
    /// Which entry the message belongs to: the first that was typed.
    pub(super) fn wrong_index(&self, asks: &[What], pendulum: &Pendulum) -> usize {
        asks.iter()
            .position(|w| self.typed.get(w.key()).is_some_and(|t| app::bench::check_typed(*w, t, pendulum).is_err()))
            .unwrap_or(0)
    }
}

/// The row of clubs, leading to the same step of each.
pub(super) fn chips(
    w: &Words,
    file: &JobFile,
    states: &[ClubState],
    step: &str,
    current: Option<i64>,
) -> Vec<ClubChip> {
    states
        .iter()
        .map(|s| (s, s.finish.and_then(Finish::where_asked)))
        .map(|(s, finish)| ClubChip {
            number: file.job.club(&s.club).map_or_else(|| s.number.clone(), |club| short_name(w, club)),
            href: format!("/bench/{}/{}?step={step}", file.job.number, s.slot),
            deviation_points: finish.map(|f| f.deviation_points),
            deviation_text: finish.map_or_else(String::new, |f| w.signed(f.deviation_points, 1)),
            half_band_points: finish.map_or(0.0, |f| f.band_points),
            tolerance_points: finish.map_or(0.3, |f| f.tolerance_points),
            state: mark(s.look),
            current: current == Some(s.slot),
            done: s.steps.iter().any(|x| x.key == step && x.status == StepStatus::Done),
        })
        .collect()
}

pub(super) const fn mark(look: Look) -> Mark {
    match look {
        Look::Inside | Look::Open => Mark::Within,
        Look::Off => Mark::Off,
        Look::Doubted => Mark::Doubted,
        Look::Unplanned => Mark::Unknown,
    }
}

/// The finish in words for the grid: `finish D0.1`.
pub(super) fn finish_words(w: &Words, state: &ClubState) -> String {
    state.finish.and_then(Finish::where_asked).map_or_else(String::new, |f| {
        text!(w, "bench-finish", finish_points = f.swing_weight_points, band_points = f.band_points)
    })
}
