//! The set grid: one step across all clubs of a job, where the cursor moves on by itself.

use super::bench::{club_name, finish_words, mark};
use super::entries::{go_to, in_address, query, seen, typed_at};
use super::fit::At;
use super::step_says::{self, row_says};
use super::{Framed, PageError, PageResult, Who, failure, failure_status, framed, say};
use crate::asked::{Asked, Filled, Path};
use crate::problem::EdgeFault;
use crate::reader::Reader;
use crate::units::explicit;
use app::bench::{Entry, NewReadings};
use app::done::{DoneForSet, left_to_do};
use app::job::JobFile;
use app::kept_job::KeptJob;
use app::{App, AppError};
use axum::Router;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use bench::belief::{Believed, Finish};
use bench::cause::Cause;
use bench::club_state::ClubState;
use bench::club_state::StepState;
use bench::club_state::StepStatus;
use bench::glue::Gate;
use bench::meaning::Tone as Said;
use bench::open_point::OpenClub;
use bench::set_fit::FitRow;
use bench::target::Fit;
use look::{
    Button, ButtonKind, ClubState as Mark, Field, GridRow, Icon, Nav, Notice, Step as StepMark, StepState as MarkState,
    Tone, button, field, hidden, keypad_hints, link_button, request_key, set_grid, step_line,
};
use maud::{Markup, html};
use serde::Deserialize;
use trade::id::ClubId;
use trade::kind::Role;
use trade::reading::What;
use trade::step::Step;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/bench/{job}/grid/{step}", get(show).post(keep))
        .route("/bench/{job}/done/{step}", post(done_for_set))
}

#[derive(Debug, Default, Deserialize)]
struct GridQuery {
    /// Which quantity of the step; left out: its first.
    what: Option<What>,
    /// The club under the cursor; left out: the first that is not read.
    at: Option<i64>,
    /// The club whose reading was kept last.
    kept: Option<i64>,
    /// What was planned before all that was advised was taken.
    taken: Option<String>,
    /// Places of two clubs that were put right.
    exchanged: Option<String>,
    /// Key of the step that was just done for the whole set.
    done: Option<String>,
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Path((job, step)): Path<(i64, String)>,
    Asked(query): Asked<GridQuery>,
) -> PageResult {
    grid_page(&w, &app, job, &step, &query, None).await
}

#[derive(Debug, Deserialize)]
struct GridForm {
    slot: i64,
    what: What,
    #[serde(default)]
    typed: String,
    request_key: String,
    version: i64,
    /// Readings that the screen showed, and request keys of its own, with spaces between.
    #[serde(default)]
    seen: String,
    /// Why a club goes on with something open.
    #[serde(default)]
    reason: String,
    /// When it was typed, for an entry that waited for the network.
    #[serde(default)]
    at: String,
}

async fn keep(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, step)): Path<(i64, String)>,
    Filled(form): Filled<GridForm>,
) -> PageResult {
    let new = NewReadings {
        slot: form.slot,
        step: step.clone(),
        entries: vec![Entry {
            what: form.what,
            typed: explicit(&w, form.what.unit(), &form.typed),
            value: None,
            pivot_mm: None,
            again: false,
        }],
        on: None,
        by,
        version: Some(form.version),
        seen: seen(&form.seen),
        at: typed_at(&form.at)?,
        reason: Some(form.reason.clone()).filter(|reason| !reason.is_empty()),
        request_key: Some(form.request_key),
    };
    let key = form.what.key();
    match app.read(job, &new).await {
        Ok(_) => {
            let to = format!("/bench/{job}/grid/{step}?what={key}&kept={}", form.slot);
            Ok(go_to(&to).into_response())
        }
        Err(error) => {
            let query = GridQuery { what: Some(form.what), at: Some(form.slot), ..GridQuery::default() };
            let wrong = Wrong { typed: form.typed, reason: form.reason, error };
            grid_page(&w, &app, job, &step, &query, Some(wrong)).await
        }
    }
}

#[derive(Debug, Deserialize)]
struct DoneForm {
    /// Why clubs go on with something open.
    #[serde(default)]
    reason: String,
}

/// A step that is only done, for every club that can: on to the next step.
async fn done_for_set(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, step)): Path<(i64, String)>,
    Filled(form): Filled<DoneForm>,
) -> PageResult {
    let reason = Some(form.reason.clone()).filter(|reason| !reason.is_empty());
    match app.done_for_set(job, &DoneForSet { step: step.clone(), slots: None, reason, by }).await {
        Ok(done) => {
            let file = app.job_file(job).await?;
            let next = file.job.step(&step).and_then(|here| step_after(&file, here));
            let to = next.filter(|_| done.waiting.is_empty()).map_or(step.as_str(), |next| next.key.as_str());
            Ok(go_to(&format!("/bench/{job}/grid/{}{}", in_address(to), query(&[("done", step.as_str())])))
                .into_response())
        }
        Err(error) => open_refused(&w, &app, job, &step, form.reason, error).await,
    }
}

/// What was refused, with what was typed for it.
struct Wrong {
    typed: String,
    reason: String,
    error: AppError,
}

/// The grid of a step whose reason for going on with what is open was refused.
pub(super) async fn open_refused(
    w: &Words,
    app: &App,
    job: i64,
    step: &str,
    reason: String,
    error: AppError,
) -> PageResult {
    let wrong = Wrong { typed: String::new(), reason, error };
    grid_page(w, app, job, step, &GridQuery::default(), Some(wrong)).await
}

/// The grid of a step where something was refused.
pub(super) async fn refused(w: &Words, app: &App, job: i64, step: &str, what: What, error: AppError) -> PageResult {
    let wrong = Wrong { typed: String::new(), reason: String::new(), error };
    grid_page(w, app, job, step, &GridQuery { what: Some(what), ..GridQuery::default() }, Some(wrong)).await
}

async fn grid_page(
    w: &Words,
    app: &App,
    number: i64,
    step: &str,
    query: &GridQuery,
    wrong: Option<Wrong>,
) -> PageResult {
    let file = app.job_file(number).await?;
    let step = file
        .job
        .step(step)
        .ok_or_else(|| AppError::invalid(EdgeFault::NoStep { job: number, step: step.to_owned() }))?
        .clone();
    let believed = file.believe()?;
    let states = file.states_of(&believed, app.now())?;
    let what = query.what.filter(|w| step.asks.contains(w)).or(step.asks.first().copied()).unwrap_or(What::Done);
    let built: Vec<&ClubState> = states.iter().filter(|s| s.finish.is_some()).collect();
    let read = |s: &ClubState| read_at(s, &step.key, what);
    let at = query.at.or_else(|| {
        // On from the club that was just kept, round to those left out before it.
        let after = query.kept.unwrap_or(0);
        let open = |s: &&&ClubState| !read(s);
        built.iter().find(|s| s.slot > after && !read(s)).or_else(|| built.iter().find(open)).map(|s| s.slot)
    });
    let notice = match (&wrong, query.kept) {
        (Some(wrong), _) => Some(failure(w, &wrong.error)),
        (None, Some(slot)) => kept_notice(w, app, &file, &believed, (slot, &step.key))?,
        (None, None) => query.done.as_deref().and_then(|key| file.job.step(key)).map(|done| Notice {
            tone: Tone::Good,
            text: text!(w, "grid-set-done", step = done.label),
            next: String::new(),
        }),
    };
    let status = wrong.as_ref().map_or(StatusCode::OK, |wrong| failure_status(&wrong.error));
    let (typed, reason) = wrong.map(|wrong| (wrong.typed, wrong.reason)).unwrap_or_default();
    let open = file.open_on(&believed, &states, &step)?;
    let open_on = |slot: i64| open.iter().find(|club| club.slot == slot);
    let fit = file.set_fit(&believed, &states)?;
    let fit_of = |slot: i64| fit.rows.iter().find(|row| row.slot == slot && super::fit::shows(&step, row.stage));
    let here = At { job: number, step: &step, what };
    let causes = causes(&file, &believed, &built)?;
    let rows = built
        .iter()
        .map(|s| {
            let cause = causes.iter().find(|(slot, ..)| *slot == s.slot).map(|(_, cause, said)| (cause, *said));
            row(w, &file, s, &here, &Cursor { at, typed: &typed, open: open_on(s.slot), fit: fit_of(s.slot), cause })
        })
        .collect::<Result<Vec<GridRow>, PageError>>()?;
    let undo_line = super::fit::undo_part(w, &here, &file, query.taken.as_deref(), query.exchanged.as_deref())?;
    let targets: Vec<f64> = file.job.clubs.iter().map(|c| c.target.swing_weight_points).collect();
    let against = match targets.split_first() {
        Some((first, rest)) if rest.iter().all(|t| (t - first).abs() < 0.05) => {
            text!(w, "grid-against-target", target_points = *first)
        }
        _ => w.text("grid-against-targets"),
    };
    // What goes on after the cure is chosen at the steps from the cure on.
    let grips =
        if step.on.contains(&Role::Adhesive) && !step.glues { App::grips_in_turn(&file, &believed)? } else { None };
    let body = html! {
        div data-live=(number) {
            (steps(w, &file, &states, &step))
            @if step.asks.len() > 1 { p.tabs { @for other in &step.asks {
                a href={ "/bench/" (number) "/grid/" (step.key) "?what=" (other.key()) } aria-current=[(*other == what).then_some("page")] { (w.tell(other)) } " "
            } } }
            (super::scale_check::scale_words(w, &file, &[what], app.today()))
            (super::scale_check::shift_words(w, &believed, &[what])?)
            (marked(w, &file))
            (set_grid(w, &text!(w, "grid-of-step", step = step.label), &against, &rows))
            (set_done(w, &file, &states, &step, &open))
            (set_says(w, &file, &states, &step)?)
            (undo_line)
            (super::fit::fit_part(w, &here, &fit))
            (super::work_order::grips_part(w, grips.as_ref()))
            (super::open::open_part(w, &file, &step, &open, &reason))
            (super::open::waiting_part(w, &file, &states, &step, what.key()))
            @if at.is_none() {
                @let other = step.asks.iter().copied().find(|other| built.iter().any(|s| !read_at(s, &step.key, *other)));
                @if let Some(other) = other {
                    p { strong { (text!(w, "grid-what-read", what = what)) } }
                    div.actions { (link_button(&format!("/bench/{number}/grid/{}?what={}", step.key, other.key()), &text!(w, "grid-next", next = other), ButtonKind::Primary, Some(Icon::Forward), "n")) }
                } @else {
                    p { strong { (w.text("grid-all-read")) } }
                }
                @if let Some(next) = step_after(&file, &step).filter(|_| other.is_none()) {
                    div.actions { (link_button(&format!("/bench/{number}/grid/{}", next.key), &text!(w, "grid-next", next = next.label), ButtonKind::Primary, Some(Icon::Forward), "n")) }
                }
            }
            (last_reading(w, &file, query.kept, &step, what))
            (keypad_hints(&[(w.text("grid-key-keep").as_str(), w.text("grid-keep-next"))]))
        }
        @if let Some(at) = at { (super::bench_scan::scan_here(w, (number, at), &step.key)) }
    };
    let page = framed(
        w,
        app,
        Framed {
            title: &w.text("grid-title"),
            active: Nav::Bench,
            crumb: text!(w, "grid-crumb", job = number, step = step.label, what = what),
            notice,
            at_bench: true,
            terms: true,
            body,
            ..Framed::default()
        },
    )
    .await?;
    Ok((status, page).into_response())
}

fn kept_notice(
    w: &Words,
    app: &App,
    file: &KeptJob,
    believed: &Believed<'_>,
    (slot, step): (i64, &str),
) -> Result<Option<Notice>, AppError> {
    let club = file.club_at(slot)?;
    let said = app.at_bench(file, believed, slot, step)?;
    Ok(said.meaning.map(|m| Notice {
        tone: match m.tone {
            Said::Good => Tone::Good,
            Said::Act => Tone::Care,
            Said::Doubt => Tone::Doubt,
        },
        text: text!(w, "grid-kept", club = club_name(w, club), said = m.fact),
        next: w.tell(&m.next),
    }))
}

/// Clubs that a recall marked, each with what to look at.
fn marked(w: &Words, file: &JobFile) -> Markup {
    let club = |id: &ClubId| file.job.clubs.iter().find(|club| club.id == *id);
    html! { @for (id, mark) in &file.marks { @if let Some(club) = club(id) {
        p { (look::tag(Tone::Care, &w.text("recall-column-mark"))) " "
            a href={ "/bench/" (file.job.number) "/" (club.slot) } { (club_name(w, club)) } ": " (mark.word) }
    } } }
}

fn step_after<'a>(file: &'a JobFile, step: &Step) -> Option<&'a Step> {
    let at = file.job.steps.iter().position(|s| s.key == step.key)?;
    file.job.steps.get(at + 1)
}

/// What the step says of each club, where it reads no swing weight: figures of the sheet and the plan.
fn set_says(w: &Words, file: &JobFile, states: &[ClubState], step: &Step) -> Result<Markup, PageError> {
    if step.asks.contains(&What::SwingWeight) && !step.on.contains(&Role::Solvent) {
        return Ok(html! {});
    }
    let mut said: Vec<(Vec<String>, Markup)> = Vec::new();
    for state in states {
        let club = file.club_at(state.slot)?;
        let says = step_says::set_says(w, file, club, state, step)?;
        // Clubs of which the same is to be said are one line.
        match said.iter_mut().find(|(_, other)| other.0 == says.0) {
            _ if says.0.is_empty() => {}
            Some((numbers, _)) => numbers.push(w.club_number(&state.number)),
            None => said.push((vec![w.club_number(&state.number)], says)),
        }
    }
    Ok(html! { @if !said.is_empty() { div.card.set-says { @for (numbers, says) in &said {
        div { h2 { (w.list(numbers)) } (says) }
    } } } })
}

/// One touch for all clubs that have a step before them which is only done; none while something open asks for a reason.
fn set_done(w: &Words, file: &JobFile, states: &[ClubState], step: &Step, open: &[OpenClub]) -> Markup {
    let left = left_to_do(states, step);
    if left.ready.len() < 2 || open.iter().any(|club| club.passed.is_none()) {
        return html! {};
    }
    let numbers: Vec<String> =
        states.iter().filter(|s| left.ready.contains(&s.slot)).map(|s| w.club_number(&s.number)).collect();
    html! {
        form.card.take-all method="post" action={ "/bench/" (file.job.number) "/done/" (step.key) } {
            p { (text!(w, "grid-set-left", clubs = numbers)) }
            (button(&Button { label: &text!(w, "grid-set-do", n = left.ready.len() as i64), big: true, keys: "d", ..Button::default() }))
        }
    }
}

/// The last reading taken back, or read once more, by one key.
fn last_reading(w: &Words, file: &JobFile, kept: Option<i64>, step: &Step, what: What) -> Markup {
    let number = file.job.number;
    let standing = trade::reading::standing(&file.readings);
    // Of the club that was just kept; on a page that is opened later, whichever was read last here.
    let of_kept = |club: &ClubId| kept.is_none_or(|slot| file.club_at(slot).is_ok_and(|kept| kept.id == *club));
    let here = standing.iter().rev().find(|r| r.step == step.key && r.what == what && of_kept(&r.club));
    let found = here.and_then(|last| Some((last, file.job.clubs.iter().find(|club| club.id == last.club)?)));
    let Some((last, club)) = found else { return html! {} };
    let slot = club.slot;
    let again = format!("/bench/{number}/grid/{}?what={}&at={slot}", step.key, what.key());
    html! {
        div.actions {
            form.inline method="post" action={ "/bench/" (number) "/" (slot) "/take-back" } {
                (hidden("reading", last.id.as_str())) (hidden("step", &step.key)) (hidden("grid", what.key()))
                (button(&Button {
                    label: &text!(w, "grid-wrong", club = club_name(w, club)),
                    kind: ButtonKind::Quiet,
                    icon: Some(Icon::Undo),
                    keys: "z",
                    ..Button::default()
                }))
            }
            @if what != What::Done { (link_button(&again, &w.text("grid-read-again"), ButtonKind::Quiet, None, "r")) }
        }
    }
}

fn ask<'a>(state: &'a ClubState, step: &str, what: What) -> Option<&'a bench::club_state::AskState> {
    step_of(state, step)?.asks.iter().find(|a| a.what == what)
}

fn step_of<'a>(state: &'a ClubState, step: &str) -> Option<&'a StepState> {
    state.steps.iter().find(|s| s.key == step)
}

fn read_at(state: &ClubState, step: &str, what: What) -> bool {
    ask(state, step, what).is_some_and(|a| a.reading.is_some())
}

/// The likely cause of what is doubted of each club, by its place, and whether another row says the same already: two clubs
/// with each other's head are one message.
fn causes(file: &KeptJob, believed: &Believed<'_>, built: &[&ClubState]) -> Result<Vec<(i64, Cause, bool)>, AppError> {
    let mut found: Vec<(i64, Cause, bool)> = Vec::new();
    for state in built {
        let Some(cause) = file.likely_cause(believed, &state.club)? else { continue };
        let said = cause.exchange.is_some() && found.iter().any(|(_, other, _)| other.exchange == cause.exchange);
        found.push((state.slot, cause, said));
    }
    Ok(found)
}

/// Where the cursor of the grid is and what was typed there; what is open on the row's club, to be fitted in it, and behind
/// its doubt.
struct Cursor<'a> {
    at: Option<i64>,
    typed: &'a str,
    open: Option<&'a OpenClub>,
    fit: Option<&'a FitRow>,
    cause: Option<(&'a Cause, bool)>,
}

fn row(w: &Words, file: &JobFile, state: &ClubState, here: &At<'_>, cursor: &Cursor<'_>) -> Result<GridRow, PageError> {
    let (step, what) = (here.step, here.what);
    let current = cursor.at == Some(state.slot);
    let ask = ask(state, &step.key, what);
    let gate_open = step_of(state, &step.key).is_some_and(|s| s.gate.is_open());
    let read = ask.and_then(|a| a.reading.as_ref());
    let doubted = ask.is_some_and(|a| a.doubted);
    let off = ask.filter(|a| a.fit == Some(Fit::Off) && what != What::SwingWeight);
    let number = file.job.number;
    let look_again = || html! { span { (w.text("grid-look-again")) } };
    let plain = |words: String| html! { span { (words) } };
    let says = row_says(w, file, file.club_at(state.slot)?, state, step, what)?;
    let off = off.and_then(|ask| off_words(w, ask)).map(|words| says.clone().unwrap_or_else(|| plain(words)));
    let (said, mark) = match (cursor.cause, off, super::open::row_words(w, cursor.open), cursor.fit) {
        (Some((cause, said)), ..) => (super::fit::cause_words(w, here, cause, said), Mark::Doubted),
        _ if doubted => (look_again(), Mark::Doubted),
        (_, Some(words), ..) => (words, Mark::Off),
        (_, _, Some(words), _) => (plain(words), Mark::Off),
        (.., Some(fit)) if says.is_none() || fit.advised.is_some() => {
            (html! { (says.unwrap_or_default()) (super::fit::fit_words(w, here, fit)) }, mark(state.look))
        }
        _ => (says.unwrap_or_else(|| plain(finish_words(w, state))), mark(state.look)),
    };
    let finish = state.finish.and_then(Finish::where_asked);
    let becomes = cursor.fit.and_then(|fit| fit.advised.as_ref()).filter(|a| !a.waits);
    Ok(GridRow {
        number: w.club_number(&state.number),
        href: format!("/bench/{number}/{}?step={}", state.slot, step.key),
        deviation_points: finish.map(|f| f.deviation_points),
        half_band_points: finish.map_or(0.0, |f| f.band_points),
        tolerance_points: finish.map_or(0.3, |f| f.tolerance_points),
        expected: ask.map_or_else(String::new, |ask| held_against(w, ask)),
        reading: match read {
            _ if current && !gate_open => {
                html! { a.grid-waits href={ "/bench/" (number) "/" (state.slot) "?step=" (step.key) } { (w.text("grid-waits-for-cure")) } }
            }
            _ if current && step.glues => link_button(
                &format!("/glue/new?job={number}"),
                &w.text("grid-mix"),
                ButtonKind::Primary,
                Some(Icon::Glue),
                "g",
            ),
            _ if current => entry(w, number, state, step, what, cursor),
            Some(reading) => {
                let off_by =
                    ask.and_then(|a| a.expected.as_ref()).map(|e| say::difference(w, what, reading.value - e.value));
                html! { (value_again(w, here, state.slot, &say::value(w, what, reading.value))) @if let Some(off_by) = off_by { " " span.small { (off_by) } } }
            }
            // A batch is mixed for all of them at once.
            None if step.glues => html! {},
            None => {
                let waits = step_of(state, &step.key).is_some_and(|s| matches!(s.gate, Gate::Waits { .. }));
                html! { a.grid-enter href={ "/bench/" (number) "/grid/" (step.key) "?what=" (what.key()) "&at=" (state.slot) }
                data-slot=(state.slot) data-version=(state.version) { (w.text(if waits { "grid-waits-for-cure" } else { "grid-enter" })) } }
            }
        },
        becomes_points: becomes.map(|a| a.finish.deviation_points),
        said,
        state: mark,
        current,
    })
}

/// A reading of a row, which a touch opens to be read again; what is only done is not read.
fn value_again(w: &Words, here: &At<'_>, slot: i64, value: &str) -> Markup {
    if here.what == What::Done {
        return html! { (value) };
    }
    let again = format!("/bench/{}/grid/{}?what={}&at={slot}", here.job, here.step.key, here.what.key());
    html! { a.grid-again href=(again) { (value) span.hidden { ", " (w.text("grid-read-again")) } } }
}

/// What a row is held against: the forecast that stands or stood, and what the sheet asks.
fn held_against(w: &Words, ask: &bench::club_state::AskState) -> String {
    let forecast = ask.expected.as_ref().map(|e| say::forecast(w, ask.what, e.value, e.band));
    let asked = ask.target.as_ref().map(|target| say::asked(w, ask.what, target));
    [forecast, asked].into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// By how much a reading lies off what the sheet asks: "1.5° off what is asked".
fn off_words(w: &Words, ask: &bench::club_state::AskState) -> Option<String> {
    let (reading, target) = (ask.reading.as_ref()?, ask.target.as_ref()?);
    Some(text!(w, "grid-off", by = say::difference(w, ask.what, reading.value - target.value)))
}

fn entry(w: &Words, number: i64, state: &ClubState, step: &Step, what: What, cursor: &Cursor<'_>) -> Markup {
    let action = format!("/bench/{number}/grid/{}", step.key);
    html! {
        form.inline method="post" action=(action) data-keep=(w.club_number(&state.number)) data-queue {
            (hidden("slot", &state.slot.to_string())) (hidden("what", what.key()))
            (hidden("version", &state.version.to_string()))
            (hidden("seen", ask(state, &step.key, what).and_then(|a| a.reading.as_ref()).map_or("", |r| r.id.as_str())))
            (request_key(&app::request_key()))
            @if what == What::Done {
                (hidden("typed", "done"))
                (button(&Button { label: &w.text("grid-done"), big: true, keys: "Enter", ..Button::default() }))
            } @else {
                (field(&Field {
                    name: "typed",
                    label: &w.tell(&what),
                    value: cursor.typed,
                    placeholder: "",
                    inputmode: if what == What::SwingWeight { "text" } else { "decimal" },
                    autofocus: true,
                    big: true,
                    ..Field::default()
                }))
                (button(&Button { label: &w.text("button-keep"), ..Button::default() }))
            }
        }
    }
}

/// The steps of the set: done where every club has done it, left out where one after it is done.
fn steps(w: &Words, file: &JobFile, states: &[ClubState], current: &Step) -> Markup {
    let hrefs: Vec<String> =
        file.job.steps.iter().map(|s| format!("/bench/{}/grid/{}", file.job.number, s.key)).collect();
    let of = |key: &str| -> Vec<&StepState> {
        states.iter().filter(|s| s.finish.is_some()).filter_map(|s| step_of(s, key)).collect()
    };
    let mark = |step: &Step| {
        let here = of(&step.key);
        let all = |status: StepStatus| !here.is_empty() && here.iter().all(|s| s.status == status);
        if step.key == current.key {
            MarkState::Current
        } else if here.iter().any(|s| s.asks.iter().any(|a| a.doubted)) {
            MarkState::Doubted
        } else if all(StepStatus::Done) {
            MarkState::Done
        } else if all(StepStatus::LeftOut) {
            MarkState::Skipped
        } else {
            MarkState::Open
        }
    };
    let steps = file.job.steps.iter().zip(&hrefs);
    let marks: Vec<StepMark<'_>> =
        steps.map(|(step, href)| StepMark { label: &step.label, href, state: mark(step) }).collect();
    step_line(w, &marks)
}
