//! The bench: one club, one decision a screen.

use super::{Framed, PageError, PageResult, Who, failure, failure_status, framed, say};
use crate::look::{
    Action, BeamPiece, BeamView, BenchBody, Button, ButtonKind, ClubChip, ClubShape, ClubState as Mark, Decision,
    Field, FunnelStage, FunnelView, Icon, Nav, Notice, PieceKind, Step as StepMark, StepState as StepMarkState, Tone,
    beam, bench_body, button, check, club_row, decision, empty_state, field, funnel, hidden, keypad_hints, link_button,
    request_key, section, signed, stepper,
};
use app::bench::{Entry, LetPassRequest, NewReadings};
use app::job::JobFile;
use app::plan::Swap;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Path, Query, State};
use axum::http::StatusCode;
use axum::response::{IntoResponse, Redirect};
use axum::routing::{get, post};
use maud::{Markup, html};
use quantity::{Balance, INCH_MM, decimal};
use serde::Deserialize;
use std::collections::HashMap;
use workshop::bench::{AskState, ClubState, Look, Meaning, StepState, StepStatus, Tone as Said};
use workshop::glue::Gate;
use workshop::job::{JobClub, JobState};
use workshop::kind::{ClubKind, Role};
use workshop::model::PartKind;
use workshop::reading::{Reading, What};
use workshop::remedy::Remedy;
use workshop::step::Step;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/bench", get(index))
        .route("/bench/{job}", get(first_club))
        .route("/bench/{job}/{slot}", get(show).post(keep))
        .route("/bench/{job}/{slot}/take-back", post(take_back))
        .route("/bench/{job}/{slot}/insist", post(insist))
        .route("/bench/{job}/{slot}/let-pass", post(let_pass))
        .route("/bench/{job}/{slot}/swap", post(swap))
}

async fn index(State(app): State<App>) -> PageResult {
    let jobs = app.jobs(Some(JobState::Planned)).await?;
    if let [only] = jobs.as_slice() {
        return Ok(Redirect::to(&format!("/bench/{}", only.number)).into_response());
    }
    let body = if jobs.is_empty() {
        empty_state(
            "No job is at the bench.",
            "A job comes here when its plan is accepted.",
            &[Action { href: "/plan", label: "Plan a job", primary: true }],
        )
    } else {
        html! { ul.plain.big-links { @for job in &jobs {
            li { a.button.quiet href={ "/bench/" (job.number) } {
                "Job " (job.number) " · " (job.player) " · " (job.clubs.join(" "))
            } }
        } } }
    };
    Ok(framed(&app, Framed { title: "Bench", active: Nav::Bench, body, ..Framed::default() }).await?.into_response())
}

/// The first club that has something left to do.
async fn first_club(State(app): State<App>, Path(job): Path<i64>) -> PageResult {
    let file = app.job_file(job).await?;
    if file.job.state == JobState::Open {
        return Ok(Redirect::to(&format!("/plan/{job}")).into_response());
    }
    let states = file.states(app.now())?;
    let slot = states.iter().find(|s| s.next_step.is_some() && s.finish.is_some()).map_or(1, |s| s.slot);
    Ok(Redirect::to(&format!("/bench/{job}/{slot}")).into_response())
}

#[derive(Debug, Default, Deserialize)]
struct ShowQuery {
    step: Option<String>,
    /// Show what the last reading meant.
    #[serde(default)]
    kept: Option<String>,
}

async fn show(
    State(app): State<App>,
    Path((job, slot)): Path<(i64, i64)>,
    Query(query): Query<ShowQuery>,
) -> PageResult {
    let view = View { step: query.step, kept: query.kept.is_some(), ..View::default() };
    bench_page(&app, job, slot, view).await
}

/// What a bench page shows besides the job itself.
#[derive(Default)]
struct View {
    step: Option<String>,
    kept: bool,
    notice: Option<Notice>,
    status: Option<StatusCode>,
    /// Entries as typed, by key of what was asked, and what was wrong with them.
    typed: HashMap<String, String>,
    wrong: Option<String>,
}

/// A form's fields: what was asked under `read-WHAT`, roles under `on-ROLE`.
type Fields = Vec<(String, String)>;

async fn keep(
    State(app): State<App>,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Form(fields): Form<Fields>,
) -> PageResult {
    let text = |name: &str| fields.iter().find(|(k, _)| k == name).map(|(_, v)| v.clone()).unwrap_or_default();
    let step = text("step");
    let file = app.job_file(job).await?;
    let known = file.job.step(&step).cloned();
    let mut entries = Vec::new();
    let mut typed = HashMap::new();
    for (key, value) in &fields {
        if let Some(what) = key.strip_prefix("read-").and_then(What::from_key) {
            typed.insert(what.key().to_owned(), value.clone());
            if what == What::Done || !value.trim().is_empty() {
                entries.push(Entry { what, typed: value.trim().to_owned(), value: None });
            }
        }
    }
    let on = known.as_ref().map(|step| on_club(step, &fields));
    let new = NewReadings {
        slot,
        step: step.clone(),
        entries,
        on,
        by,
        version: text("version").parse().ok(),
        request_key: Some(text("request_key")).filter(|k| !k.is_empty()),
    };
    match app.read(job, &new).await {
        Ok(_) => Ok(Redirect::to(&format!("/bench/{job}/{slot}?step={step}&kept=1")).into_response()),
        Err(error) => {
            let belongs_to_entry = matches!(error, AppError::Notation(_) | AppError::Workshop(_));
            let view = View {
                step: Some(step),
                status: Some(failure_status(&error)),
                wrong: belongs_to_entry.then(|| error.to_string()),
                notice: (!belongs_to_entry).then(|| failure(&error)),
                typed,
                ..View::default()
            };
            bench_page(&app, job, slot, view).await
        }
    }
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
}

async fn take_back(
    State(app): State<App>,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Form(form): Form<TakeBackForm>,
) -> PageResult {
    app.take_back(job, &form.reading.as_str().into(), &form.why, &by).await?;
    Ok(Redirect::to(&format!("/bench/{job}/{slot}?step={}", form.step)).into_response())
}

async fn insist(
    State(app): State<App>,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Form(form): Form<TakeBackForm>,
) -> PageResult {
    match app.insist(job, &form.reading.as_str().into(), &form.why, &by).await {
        Ok(_) => Ok(Redirect::to(&format!("/bench/{job}/{slot}?step={}&kept=1", form.step)).into_response()),
        Err(error) => again(&app, job, slot, form.step, &error).await,
    }
}

#[derive(Debug, Deserialize)]
struct LetPassForm {
    step: String,
    #[serde(default)]
    reason: String,
}

async fn let_pass(
    State(app): State<App>,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Form(form): Form<LetPassForm>,
) -> PageResult {
    let request = LetPassRequest { slot, step: form.step.clone(), reason: form.reason, by };
    match app.let_pass(job, &request).await {
        Ok(()) => Ok(Redirect::to(&format!("/bench/{job}/{slot}?step={}", form.step)).into_response()),
        Err(error) => again(&app, job, slot, form.step, &error).await,
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
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Form(form): Form<SwapForm>,
) -> PageResult {
    let request = Swap { kind: form.kind, code: form.code, reason: form.reason, by, version: form.version };
    match app.swap(job, slot, &request).await {
        Ok(_) => Ok(Redirect::to(&format!("/bench/{job}/{slot}?step={}", form.step)).into_response()),
        Err(error) => again(&app, job, slot, form.step, &error).await,
    }
}

async fn again(app: &App, job: i64, slot: i64, step: String, error: &AppError) -> PageResult {
    let view =
        View { step: Some(step), notice: Some(failure(error)), status: Some(failure_status(error)), ..View::default() };
    bench_page(app, job, slot, view).await
}

async fn bench_page(app: &App, number: i64, slot: i64, view: View) -> PageResult {
    let file = app.job_file(number).await?;
    let club = file.club_at(slot)?;
    let states = file.states(app.now())?;
    let state = states
        .iter()
        .find(|s| s.slot == slot)
        .ok_or_else(|| AppError::Invalid { what: "this club has no state".into(), next: "Load the job anew".into() })?;
    let step = chosen_step(&file, state, view.step.as_deref());
    let crumb = format!("Job {number} · {} · {}", file.job.sheet.player, step.label.to_lowercase());
    let (meaning, remedies) = app.meaning(&file, slot).await?;
    let body = if club.plan.is_some() {
        let screen = Screen { file: &file, club, state, states: &states, step, view: &view, meaning, remedies };
        screen.body()?
    } else {
        empty_state(
            "This club has no parts yet.",
            "It was left out of the plan for want of parts.",
            &[Action { href: "/stock", label: "Stock", primary: true }],
        )
    };
    let title = club_name(club);
    let body = html! { div data-live=(number) { (body) } };
    let page = framed(
        app,
        Framed { title: &title, active: Nav::Bench, crumb, notice: view.notice.clone(), at_bench: true, body },
    )
    .await?;
    Ok((view.status.unwrap_or(StatusCode::OK), page).into_response())
}

/// `6 iron`, `P wedge`, `1 wood`.
pub(super) fn club_name(club: &JobClub) -> String {
    format!("{} {}", club.target.number, club.target.club_kind.word())
}

fn chosen_step<'a>(file: &'a JobFile, state: &ClubState, wanted: Option<&str>) -> &'a Step {
    wanted
        .and_then(|key| file.job.step(key))
        .or_else(|| state.next_step.as_deref().and_then(|key| file.job.step(key)))
        .or(file.job.steps.last())
        .unwrap_or(&file.job.steps[0])
}

struct Screen<'a> {
    file: &'a JobFile,
    club: &'a JobClub,
    state: &'a ClubState,
    states: &'a [ClubState],
    step: &'a Step,
    view: &'a View,
    meaning: Option<Meaning>,
    remedies: Vec<Remedy>,
}

impl Screen<'_> {
    fn body(&self) -> Result<Markup, PageError> {
        let believed = self.file.assembly().believe(&self.file.readings).map_err(AppError::from)?;
        let pieces = workshop::beam::beam_parts(&believed, &self.club.id, &self.step.on).map_err(AppError::from)?;
        let points = believed.funnel(&self.club.id).map_err(AppError::from)?;
        let step_state = self.step_state();
        Ok(html! { (self.steps()) (bench_body(&BenchBody {
            clubs: club_row(&chips(self.file, self.states, &self.step.key, Some(self.state.slot))),
            beam: self.beam(pieces),
            decision: self.decision(step_state),
            funnel: self.funnel(points),
            below: html! { (self.remedy_part()) (self.readings(&believed)) },
        })) })
    }

    fn step_state(&self) -> Option<&StepState> {
        self.state.steps.iter().find(|s| s.key == self.step.key)
    }

    fn at(&self, slot: i64, step: &str) -> String {
        format!("/bench/{}/{slot}?step={step}", self.file.job.number)
    }

    fn steps(&self) -> Markup {
        let hrefs: Vec<String> = self.state.steps.iter().map(|s| self.at(self.state.slot, &s.key)).collect();
        let marks: Vec<StepMark<'_>> = self
            .state
            .steps
            .iter()
            .zip(&hrefs)
            .map(|(s, href)| StepMark {
                label: &s.label,
                href,
                state: if s.key == self.step.key {
                    StepMarkState::Current
                } else if s.asks.iter().any(|a| a.doubted) {
                    StepMarkState::Doubted
                } else {
                    match s.status {
                        StepStatus::Done => StepMarkState::Done,
                        StepStatus::LeftOut => StepMarkState::Skipped,
                        StepStatus::Open | StepStatus::Begun => StepMarkState::Open,
                    }
                },
            })
            .collect();
        stepper(&marks)
    }

    fn beam(&self, pieces: Vec<workshop::beam::BeamPart>) -> Markup {
        let plan_ground = self.club.plan.as_ref().map_or(0.0, |p| p.cut_shaft_mm + p.tip_to_ground_mm);
        let cap_mm = self.file.library.grip(&self.club.target.grip_model).map_or(3.0, |g| g.cap_mm);
        let weighs_club = self.step.asks.contains(&What::Balance);
        let ask = self.step_state().and_then(|s| s.asks.iter().find(|a| a.what == What::Balance));
        let now = ask.and_then(|a| a.reading.as_ref().map(|r| r.value).or(a.expected.as_ref().map(|e| e.value)));
        let finish = self.state.finish;
        beam(&BeamView {
            id: format!("beam-{}", self.state.slot),
            club: club_name(self.club),
            shape: match self.club.target.club_kind {
                ClubKind::Wood => ClubShape::Wood,
                ClubKind::Hybrid => ClubShape::Hybrid,
                ClubKind::Iron => ClubShape::Iron,
                ClubKind::Wedge => ClubShape::Wedge,
                ClubKind::Putter => ClubShape::Putter,
            },
            length_in: plan_ground / INCH_MM,
            cap_in: cap_mm / INCH_MM,
            pieces: pieces
                .into_iter()
                .map(|p| BeamPiece {
                    label: p.role.word().to_owned(),
                    mass_g: p.mass_g,
                    arm_in: p.arm_mm / INCH_MM,
                    points: p.points,
                    on: p.on,
                    kind: piece_kind(p.role),
                })
                .collect(),
            now_points: if weighs_club { now } else { None },
            forecast_points: finish.map(|f| f.balance_points),
            forecast_band_points: finish.map_or(0.0, |f| f.band_points),
            target_points: Some(self.club.target.balance_points),
            tolerance_points: self.club.target.tolerances.balance_points,
            ..BeamView::default()
        })
    }

    fn funnel(&self, points: Vec<workshop::funnel::FunnelPoint>) -> Markup {
        funnel(&FunnelView {
            id: format!("funnel-{}", self.state.slot),
            club: club_name(self.club),
            stages: points
                .into_iter()
                .map(|p| FunnelStage {
                    label: p.label.to_lowercase(),
                    centre_points: p.deviation_points,
                    half_band_points: p.band_points,
                    reading_points: p.reading_points,
                    doubted: p.doubted,
                    current: p.step == self.step.key,
                })
                .collect(),
            target_label: Balance::from_points(self.club.target.balance_points).letter_short(),
            tolerance_points: self.club.target.tolerances.balance_points,
        })
    }

    fn decision(&self, state: Option<&StepState>) -> Markup {
        let first = state.and_then(|s| s.asks.first());
        let expected = first.and_then(|a| a.expected.as_ref().map(|e| say::value(a.what, e.value)));
        let heading = format!("{} · {}", club_name(self.club), self.step.label.to_lowercase());
        let caution = self.step.caution.map_or("", workshop::caution::words);
        let (verdict, tone) = self.verdict(state);
        decision(&Decision {
            heading: &heading,
            expected: expected.as_deref().unwrap_or(""),
            expected_note: &first.map_or_else(String::new, say::expected_note),
            form: self.entry(state),
            verdict,
            tone,
            caution,
        })
    }

    fn verdict(&self, state: Option<&StepState>) -> (Markup, Tone) {
        let read_here = state.is_some_and(|s| s.asks.iter().any(|a| a.reading.is_some()));
        match &self.meaning {
            Some(meaning) if self.view.kept || read_here => (
                html! { strong { (meaning.words) } " " (meaning.next) },
                match meaning.tone {
                    Said::Good => Tone::Good,
                    Said::Act => Tone::Care,
                    Said::Doubt => Tone::Doubt,
                },
            ),
            _ if self.step.say.is_empty() => (html! {}, Tone::Plain),
            _ => (html! { (self.step.say) }, Tone::Plain),
        }
    }

    fn entry(&self, state: Option<&StepState>) -> Markup {
        let Some(state) = state else { return html! {} };
        if !state.gate.is_open() {
            return self.waits(state);
        }
        if self.step.glues {
            let glued = state.status == StepStatus::Done;
            return html! {
                @if glued { p { "Glued. " a href="/glue" { "Its clocks" } } }
                @else {
                    (link_button(&format!("/glue/new?job={}", self.file.job.number), "Mix a batch", ButtonKind::Primary, Some(Icon::Glue), "g"))
                }
            };
        }
        let next = self.next_club();
        html! {
            form method="post" action={ "/bench/" (self.file.job.number) "/" (self.state.slot) } data-keep=(club_name(self.club)) {
                (hidden("step", &self.step.key))
                (hidden("version", &self.state.version.to_string()))
                (request_key(&app::request_key()))
                @for (i, ask) in state.asks.iter().enumerate() { (self.ask(i, ask)) }
                (self.toggles())
                div.actions {
                    @let done_only = self.step.asks == [What::Done];
                    (button(&Button { label: if done_only { "Done" } else { "Keep" }, big: true, ..Button::default() }))
                    @if let Some((slot, number)) = next {
                        (link_button(&self.at(slot, &self.step.key), &format!("Next: {number}"), ButtonKind::Quiet, Some(Icon::Forward), "n"))
                    }
                }
                (keypad_hints(&[("Enter", "keep"), ("n", "next club")]))
            }
        }
    }

    fn ask(&self, index: usize, ask: &AskState) -> Markup {
        let key = ask.what.key();
        let name = format!("read-{key}");
        if ask.what == What::Done {
            return hidden(&name, "done");
        }
        let typed = self.view.typed.get(key).cloned().unwrap_or_default();
        let read = ask.reading.as_ref().map(|r| format!("read: {}", say::value(ask.what, r.value)));
        let expected = ask
            .expected
            .as_ref()
            .map(|e| format!("{} ± {}", say::value(ask.what, e.value), say::band(ask.what, e.band)));
        let hint = match (&read, &expected, index) {
            (Some(read), _, _) => read.clone(),
            (None, Some(expected), i) if i > 0 => format!("expected {expected}"),
            _ => String::new(),
        };
        let wrong = self.view.wrong.as_deref().filter(|_| !typed.is_empty() || index == 0);
        field(&Field {
            name: &name,
            label: &capital(ask.what.word()),
            value: &typed,
            hint: &hint,
            placeholder: say::example(ask.what),
            error: wrong.filter(|_| index == self.view.wrong_index(&self.step.asks)),
            inputmode: if ask.what == What::Balance { "text" } else { "decimal" },
            unit: say::unit_hint(ask.what),
            autofocus: index == 0 || wrong.is_some(),
            big: self.step.asks.len() == 1,
            ..Field::default()
        })
    }

    /// What may be on the club or not at this reading, offered where the plan has it.
    fn toggles(&self) -> Markup {
        let reads_whole =
            self.step.asks.iter().any(|a| matches!(a, What::Balance | What::TotalMass | What::BalancePoint));
        let has = |kind| self.club.plan.as_ref().is_some_and(|p| p.part(kind).is_some());
        let mut offered = Vec::new();
        if reads_whole {
            if self.step.on.contains(&Role::Ferrule) && has(PartKind::Ferrule) {
                offered.push(Role::Ferrule);
            }
            if self.step.on.contains(&Role::Solvent) {
                offered.push(Role::Solvent);
            }
        }
        html! {
            @for role in offered {
                (hidden(&format!("asked-{}", role.key()), "1"))
                (check(&format!("on-{}", role.key()), "1",
                    if role == Role::Solvent { "solvent still wet" } else { "ferrule on" }, true))
            }
        }
    }

    fn waits(&self, state: &StepState) -> Markup {
        let words = match &state.gate {
            Gate::Waits { strength, until } => {
                format!("Waits for {strength} until {}.", say::when(*until))
            }
            _ => "Not glued yet: this step needs the joint.".to_owned(),
        };
        html! {
            p.waits { strong { (words) } }
            @if matches!(state.gate, Gate::NotGlued) {
                (link_button(&format!("/glue/new?job={}", self.file.job.number), "Mix a batch", ButtonKind::Primary, Some(Icon::Glue), "g"))
            }
            details {
                summary { "Let it pass" }
                form method="post" action={ "/bench/" (self.file.job.number) "/" (self.state.slot) "/let-pass" } {
                    (hidden("step", &self.step.key))
                    (field(&Field { name: "reason", label: "Why? The record keeps it.", required: true, ..Field::default() }))
                    (button(&Button { label: "Let it pass", kind: ButtonKind::Danger, ..Button::default() }))
                }
            }
        }
    }

    fn next_club(&self) -> Option<(i64, String)> {
        self.states
            .iter()
            .find(|s| s.slot > self.state.slot && s.finish.is_some())
            .or_else(|| self.states.iter().find(|s| s.finish.is_some()))
            .filter(|s| s.slot != self.state.slot)
            .map(|s| (s.slot, s.number.clone()))
    }

    fn remedy_part(&self) -> Markup {
        if self.remedies.is_empty() {
            return html! {};
        }
        let action = format!("/bench/{}/{}/swap", self.file.job.number, self.state.slot);
        section(
            "What can still be done",
            &html! {},
            &html! {
                details {
                    summary { "Other " (self.remedies[0].kind) "s from stock, the best first" }
                    ul.plain.remedies { @for remedy in self.remedies.iter().take(6) {
                        li {
                            form.inline method="post" action=(action) {
                                (hidden("kind", remedy.kind.key())) (hidden("code", &remedy.code))
                                (hidden("step", &self.step.key)) (hidden("version", &self.state.version.to_string()))
                                span { (remedy.words) }
                                (button(&Button { label: "Take it", kind: ButtonKind::Quiet, ..Button::default() }))
                            }
                        }
                    } }
                }
            },
        )
    }

    fn readings(&self, believed: &workshop::belief::Believed<'_>) -> Markup {
        let standing = believed.standing();
        let mine: Vec<&Reading> = self.file.readings.iter().filter(|r| r.club == self.club.id).collect();
        if mine.is_empty() {
            return html! {};
        }
        let last_standing = mine.iter().rev().find(|r| standing.iter().any(|s| s.id == r.id)).map(|r| r.id.clone());
        let base = format!("/bench/{}/{}", self.file.job.number, self.state.slot);
        section(
            "Readings of this club",
            &html! {},
            &html! {
                ul.plain.readings { @for reading in mine.iter().rev() {
                    @let stands = standing.iter().any(|s| s.id == reading.id);
                    @let doubted = stands && believed.is_doubted(&reading.id);
                    li.struck[!stands] {
                        span { (self.step_label(&reading.step)) ", " (reading.what) ": "
                            strong { @if reading.what == What::Done { "done" } @else { (reading.typed) } } }
                        @if let Some(why) = &reading.taken_back { span { " taken back: " (why) } }
                        @else if !stands { span { " read again since" } }
                        @if doubted { " " (crate::look::tag(Tone::Doubt, "doubted")) }
                        @if reading.insisted { " " (crate::look::tag(Tone::Care, "stood by")) }
                        span.small { " " (reading.by) ", " (say::when(reading.at)) }
                        @if stands {
                            form.inline method="post" action={ (base) "/take-back" } {
                                (hidden("reading", reading.id.as_str())) (hidden("step", &reading.step))
                                @let key = if Some(&reading.id) == last_standing.as_ref() { "z" } else { "" };
                                (button(&Button { label: "That was wrong", kind: ButtonKind::Quiet, icon: Some(Icon::Undo), keys: key, ..Button::default() }))
                            }
                        }
                        @if doubted {
                            details { summary { "I stand by it" }
                                form.inline method="post" action={ (base) "/insist" } {
                                    (hidden("reading", reading.id.as_str())) (hidden("step", &reading.step))
                                    (field(&Field { name: "why", label: "Why? The record keeps it.", required: true, ..Field::default() }))
                                    (button(&Button { label: "Count it", kind: ButtonKind::Danger, ..Button::default() }))
                                }
                            }
                        }
                    }
                } }
            },
        )
    }

    fn step_label(&self, key: &str) -> String {
        self.file.job.step(key).map_or_else(|| key.to_owned(), |s| s.label.clone())
    }
}

impl View {
    /// Which entry the message belongs to: the first that was typed.
    fn wrong_index(&self, asks: &[What]) -> usize {
        asks.iter()
            .position(|w| self.typed.get(w.key()).is_some_and(|t| app::bench::check_typed(*w, t).is_err()))
            .unwrap_or(0)
    }
}

/// The row of clubs, leading to the same step of each.
pub(super) fn chips(file: &JobFile, states: &[ClubState], step: &str, current: Option<i64>) -> Vec<ClubChip> {
    states
        .iter()
        .map(|s| ClubChip {
            number: s.number.clone(),
            href: format!("/bench/{}/{}?step={step}", file.job.number, s.slot),
            deviation_points: s.finish.map(|f| f.deviation_points),
            deviation_text: s.finish.map_or_else(String::new, |f| signed(f.deviation_points, 1)),
            half_band_points: s.finish.map_or(0.0, |f| f.band_points),
            tolerance_points: s.finish.map_or(0.3, |f| f.tolerance_points),
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

fn piece_kind(role: Role) -> PieceKind {
    match role {
        Role::Head => PieceKind::Head,
        Role::Adapter => PieceKind::Adapter,
        Role::Shaft => PieceKind::Shaft,
        Role::Ferrule => PieceKind::Ferrule,
        Role::TipWeight => PieceKind::TipWeight,
        Role::Adhesive => PieceKind::Adhesive,
        Role::Tape => PieceKind::Tape,
        Role::Grip => PieceKind::Grip,
        Role::Screw | Role::Turnings | Role::Solvent | Role::Extra => PieceKind::Other,
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// The finish in words for the grid: `finish D0.1`.
pub(super) fn finish_words(state: &ClubState) -> String {
    state.finish.map_or_else(String::new, |f| {
        format!("finish {} ± {}", Balance::from_points(f.balance_points).letter(1), decimal(f.band_points, 1))
    })
}
