//! Today: what to do now, at a glance.

use super::entries::go_to;
use super::{Framed, PageResult, Who, framed, say};
use crate::asked::Filled;
use crate::reader::Reader;
use app::clock_watch::ConfirmClock;
use app::job::{Curing, JobSummary, NextStep};
use app::recall::MarkView;
use app::scale_health::ScaleToday;
use app::stock::PartQuery;
use app::{App, AppError};
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use desk::order::Waiting;
use fact::{Refusal, Told};
use jiff::Timestamp;
use jiff::civil::Date;
use look::{
    Action, Button, ButtonKind, Cell, Column, Field, Icon, Nav, Table, Tone, button, clock, empty_state, field, icon,
    link_button, rich, section, table, tag,
};
use maud::{Markup, html};
use serde::Deserialize;
use std::collections::BTreeMap;
use trade::job::JobState;
use trade::model::PartKind;
use trade::trust::TrustSaid;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/", get(today)).route("/clock/confirm", post(confirm_clock))
}

async fn today(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let jobs = app.jobs(None).await?;
    let now = app.now();
    let batches = app.recent_batches(7).await?;
    let running: Vec<_> = batches.iter().filter(|b| b.full_cure_at > now).collect();
    let doubts: Vec<(i64, i64, String)> = jobs
        .iter()
        .flat_map(|j| j.doubted.iter().map(|c| (j.number, c.slot, numbered(&w, j, c.slot - 1, &c.number))))
        .collect();
    let guide = guide(&w, &app, &jobs).await?;
    let waits = app.waits().await?;
    let (scales, read_today) = app.scales_today().await?;
    let jobs_part = if jobs.is_empty() && guide.is_some() {
        html! { p { (w.text("today-no-job")) } }
    } else if jobs.is_empty() {
        empty_state(
            &w.text("today-no-job"),
            &w.text("today-no-job-next"),
            &[
                Action { href: "/sheets/new", label: &w.text("today-new-sheet"), primary: true },
                Action { href: "/stock", label: &w.text("frame-stock"), primary: false },
            ],
        )
    } else {
        job_table(&w, &jobs, now, &waits)
    };
    let scales_open = scales.iter().filter(|s| is_due(s) || s.said.is_some()).count();
    let ways = ways(&w, &jobs, &doubts, &scales, &waits);
    let expected = super::orders::due_part(&w, &app).await?;
    let before_glue = before_glue(&w, &app, &jobs).await?;
    let marks = app.marks(false).await?;
    let clock_state = app.clock_state().await?;
    let backups = app.backup_state();
    let body = html! {
        (super::find::find_form(&w, "", false))
        div data-live="0" {
            @if let Some(doubt) = &clock_state.doubt { (clock_part(&w, &w.refusal(&Refusal::new(doubt)))) }
            @if let Some(wrong) = &backups.wrong { (backup_part(&w, wrong)) }
            @if let Some(steps) = &guide {
                @if steps.iter().all(|step| !step.done) { (super::begin::ways(&w)) } @else { (guide_part(&w, steps)) }
            }
            @if guide.is_none() { (start_part(&w, &ways, &jobs, now)) }
            (see_to(&w, &[(usize::from(!marks.is_empty()), marks_part(&w, &marks)), (doubts.len(), doubts_part(&w, &doubts)), (scales_open, scales_part(&w, &scales, read_today)), expected, before_glue]))
            (section(&w.text("today-jobs"), &html! { a href="/calendar" { (w.text("calendar-title")) } " " a.button.quiet href="/sheets/new" { (w.text("today-new-sheet")) } }, &jobs_part))
            @if !running.is_empty() {
                (section(&w.text("today-curing"), &html! { a href="/glue" { (w.text("today-all-batches")) } }, &table(&Table {
                    caption: &w.text("today-batches"),
                    columns: vec![
                        Column::words(w.text("today-batch")),
                        Column::words(w.text("today-clubs")),
                        Column::figures(w.text("today-pot-life")),
                        Column::figures(w.text("today-handle")),
                        Column::figures(w.text("today-swing")),
                    ],
                    rows: running.iter().map(|b| {
                        let cell = |until: Timestamp, done: &str| {
                            let done = w.text(done);
                            let text = if until > now { say::left(&w, now, until) } else { done.clone() };
                            Cell(clock(&until.to_string(), &text, &done))
                        };
                        vec![
                            Cell::from(text!(w, "today-batch-of", batch = b.batch.number, adhesive = b.adhesive_name)),
                            Cell::from(super::glue::batch_clubs(&w, &b.clubs)),
                            cell(b.pot_life_until, "left-over"),
                            cell(b.handling_at, "today-now"),
                            cell(b.full_cure_at, "today-now"),
                        ]
                    }).collect(),
                    cards: true,
                    ..Table::default()
                })))
            }
        }
    };
    let cups = Some(batches.iter().map(Into::into).collect());
    let title = w.text("today-title");
    let view = Framed { title: &title, active: Nav::Today, crumb: crumb(&w, &jobs), cups, body, ..Framed::default() };
    Ok(framed(&w, &app, view).await?.into_response())
}

/// A clock that cannot be relied on comes before everything else: cures and the record go by it.
fn clock_part(w: &Words, words: &str) -> Markup {
    section(
        &w.text("today-clock"),
        &html! {},
        &html! {
            p { (tag(Tone::Bad, &w.text("today-clock-not-relied-on"))) " " (words) "." }
            details { summary { (w.text("today-clock-right")) }
                form method="post" action="/clock/confirm" {
                    (field(&Field { name: "reason", label: &w.text("today-clock-how"), required: true, ..Field::default() }))
                    (button(&Button { label: &w.text("today-clock-rely"), kind: ButtonKind::Danger, ..Button::default() }))
                }
            }
        },
    )
}

/// What is wrong with the backups, or with the shop's file.
fn backup_part(w: &Words, wrong: &Told) -> Markup {
    let words = w.refusal(&Refusal::new(wrong));
    section(
        &w.text("backup-title"),
        &html! {},
        &html! { p { (tag(Tone::Care, &w.text("backup-not-safe"))) " " (words) } },
    )
}

#[derive(Debug, Deserialize)]
struct ConfirmForm {
    #[serde(default)]
    reason: String,
}

async fn confirm_clock(State(app): State<App>, Who(by): Who, Filled(form): Filled<ConfirmForm>) -> PageResult {
    app.confirm_clock(&ConfirmClock { reason: form.reason, by }).await?;
    Ok(go_to("/").into_response())
}

/// What can be done now, with the address where it is: what was read and does not fit first, then the earliest job with clubs
/// that need not wait, then a job without a plan, then a scale to check.
/// A club of a job in a list, by what sort of club it is where that is known: the 1 of a wood is the driver.
fn numbered(w: &Words, job: &JobSummary, at: i64, number: &str) -> String {
    let kind = usize::try_from(at).ok().and_then(|at| job.club_kinds.get(at));
    kind.map_or_else(|| w.club_number(number), |kind| w.club_short(kind, number))
}

fn ways(
    w: &Words,
    jobs: &[JobSummary],
    doubts: &[(i64, i64, String)],
    scales: &[ScaleToday],
    waits: &BTreeMap<i64, Vec<Waiting>>,
) -> Vec<(String, String)> {
    let doubted = doubts.first().map(|(job, slot, club)| {
        (format!("/bench/{job}/{slot}"), text!(w, "today-start-doubt", job = *job, club = club))
    });
    let able = |step: &&NextStep| step.clubs > step.curing.iter().map(|c| c.clubs).sum();
    // A job that waits for parts is no place to start.
    let (waiting, ready): (Vec<&JobSummary>, Vec<&JobSummary>) =
        jobs.iter().partition(|job| waits.get(&job.number).is_some_and(|lacks| !lacks.is_empty()));
    let work = ready.into_iter().chain(waiting).filter_map(|job| {
        if job.state != JobState::Planned {
            return Some((format!("/plan/{}", job.number), text!(w, "today-start-plan", job = job.number)));
        }
        let step = job.next_steps.iter().find(able)?;
        let n = step.clubs - step.curing.iter().map(|c| c.clubs).sum::<i64>();
        let address = format!("/bench/{}/grid/{}", job.number, super::entries::in_address(&step.key));
        Some((address, text!(w, "today-start-step", job = job.number, step = step.label, n = n)))
    });
    let check = scales.iter().filter(|s| is_due(s)).map(|scale| {
        let address = format!("/scales/{}/check", super::entries::in_address(&scale.key));
        (address, text!(w, "today-start-scale", scale = scale.name))
    });
    doubted.into_iter().chain(work).chain(check).collect()
}

/// Where to start: the first of what can be done now, and what could be done beside it. Where clubs cure, until when.
fn start_part(w: &Words, ways: &[(String, String)], jobs: &[JobSummary], now: Timestamp) -> Markup {
    const BESIDE: usize = 2;
    let cures: Vec<String> = jobs
        .iter()
        .flat_map(|job| job.next_steps.iter().flat_map(|step| &step.curing).map(move |cure| (job.number, cure)))
        .map(|(job, cure)| text!(w, "today-start-cures", job = job, cures = cures_words(w, cure, now)))
        .collect();
    let Some(((href, label), beside)) = ways.split_first() else {
        return html! { @if !cures.is_empty() { div.card.start { @for line in &cures { p { (line) } } p { (w.text("today-start-nothing")) } } } };
    };
    html! {
        section.card.start aria-labelledby="start-title" {
            h2 #start-title { (w.text("today-start")) }
            @for line in &cures { p { (line) } }
            div.actions {
                (link_button(href, label, ButtonKind::Primary, Some(Icon::Forward), ""))
                @for (href, label) in beside.iter().take(BESIDE) { (link_button(href, label, ButtonKind::Quiet, None, "")) }
            }
        }
    }
}

/// What is to be seen to, folded under one line that counts it.
fn see_to(w: &Words, parts: &[(usize, Markup)]) -> Markup {
    let n: usize = parts.iter().map(|(n, _)| n).sum();
    html! {
        @if n > 0 {
            details.see-to { summary { (text!(w, "today-see-to", n = n as i64)) }
                @for (_, part) in parts { (part) }
            }
        }
    }
}

/// Clubs that a recall marked: one line, with the way to all of them.
fn marks_part(w: &Words, marks: &[MarkView]) -> Markup {
    let here = marks.iter().filter(|mark| !mark.handed_over).count();
    html! { @if !marks.is_empty() {
        p { (tag(Tone::Care, &w.text("mark-page"))) " " a href="/marks" { (text!(w, "today-marked", n = marks.len())) }
            ", " (text!(w, "today-marked-here", n = here)) }
    } }
}

fn doubts_part(w: &Words, doubts: &[(i64, i64, String)]) -> Markup {
    if doubts.is_empty() {
        return html! {};
    }
    section(
        &w.text("today-look-again"),
        &html! {},
        &html! {
            ul.plain { @for (job, slot, club) in doubts {
                li { (tag(Tone::Doubt, &w.text("today-doubted"))) " " a href={ "/bench/" (job) "/" (slot) } { (text!(w, "today-club-of-job", job = job, club = club)) } }
            } }
        },
    )
}

/// Whether a scale is to be checked today and was not.
fn is_due(scale: &ScaleToday) -> bool {
    scale.daily && scale.has_standard && !scale.checked && scale.said.is_none()
}

/// Scales that are not trusted, and those that are still to be checked today; nothing where all is well.
fn scales_part(w: &Words, scales: &[ScaleToday], read_today: bool) -> Markup {
    let due: Vec<&ScaleToday> = scales.iter().filter(|s| is_due(s)).collect();
    let wrong: Vec<(&ScaleToday, &TrustSaid)> =
        scales.iter().filter_map(|s| s.said.as_ref().map(|said| (s, said))).collect();
    if due.is_empty() && wrong.is_empty() {
        return html! {};
    }
    let at = |scale: &ScaleToday| format!("/scales/{}", super::entries::in_address(&scale.key));
    section(
        &w.text("today-scales"),
        &html! { a href="/scales" { (w.text("today-all-scales")) } },
        &html! {
            ul.plain.readings {
                @for (scale, said) in wrong { li {
                    (tag(Tone::Bad, &w.text("today-not-trusted"))) span { " " a href=(at(scale)) { (w.tell(said)) } }
                    @if scale.has_standard && !scale.passed { (link_button(&format!("{}/check", at(scale)), &w.text("today-check-scale"), ButtonKind::Quiet, None, "")) }
                } }
                @for scale in due { li {
                    (tag(Tone::Care, &w.text("today-not-checked"))) span { " "
                        @if read_today { (text!(w, "today-scale-read", scale = scale.name)) } @else { (text!(w, "today-scale-due", scale = scale.name)) } }
                    (link_button(&format!("{}/check", at(scale)), &w.text("today-check-scale"), ButtonKind::Quiet, None, ""))
                } }
            }
        },
    )
}

/// One step of the way to the first club.
struct GuideStep {
    done: bool,
    what: String,
    how: String,
    href: String,
}

/// The way from an empty shop to the first club at the bench; nothing once a club of any job has been read.
async fn guide(w: &Words, app: &App, jobs: &[JobSummary]) -> Result<Option<Vec<GuideStep>>, AppError> {
    let planned = jobs.iter().find(|j| j.state == JobState::Planned);
    // A shop with several jobs under way needs no guide, and one that has given up or handed over jobs neither.
    if jobs.len() > 1 || planned.is_some_and(|job| job.begun) {
        return Ok(None);
    }
    let sheets = app.sheets().await?;
    if sheets.iter().filter_map(|s| s.job).any(|made| !jobs.iter().any(|j| j.number == made)) {
        return Ok(None);
    }
    let models = app.models(None).await?;
    // A sheet needs these of each club, and a joint and a grip the last two.
    let of_club = [PartKind::Head, PartKind::Shaft, PartKind::Grip, PartKind::Adhesive, PartKind::Tape];
    let modelled = of_club.iter().all(|kind| models.iter().any(|m| m.kind() == *kind));
    // A set that was begun in a line is gone on with there.
    let begun = app.shop().await?.adhesive.is_some();
    let weigh = match sheets.iter().find(|sheet| sheet.job.is_none()) {
        Some(sheet) => format!("/begin/parts/{}", super::entries::in_address(sheet.id.as_str())),
        None if begun => "/begin/set".to_owned(),
        None => "/stock/new".to_owned(),
    };
    let (_, parts) = app.parts(&PartQuery { limit: Some(1), ..PartQuery::default() }).await?;
    let job = jobs.first();
    let to_job = |path: &str, none: &str| job.map_or_else(|| none.to_owned(), |j| format!("{path}{}", j.number));
    let step =
        |done, what: &str, how: &str, href: String| GuideStep { done, what: w.text(what), how: w.text(how), href };
    Ok(Some(vec![
        step(modelled, "today-guide-models", "today-guide-models-how", "/begin".into()),
        step(
            !models.is_empty() && !app.told().await?.ask,
            "today-guide-told",
            "today-guide-told-how",
            "/learned#told".into(),
        ),
        step(parts > 0, "today-guide-parts", "today-guide-parts-how", weigh),
        step(!sheets.is_empty(), "today-guide-sheet", "today-guide-sheet-how", "/sheets/new".into()),
        step(
            job.is_some(),
            "today-guide-approve",
            "today-guide-approve-how",
            sheets.first().map_or("/sheets".into(), |s| format!("/sheets/{}", s.id)),
        ),
        step(planned.is_some(), "today-guide-plan", "today-guide-plan-how", to_job("/plan/", "/plan")),
        step(false, "today-guide-bench", "today-guide-bench-how", to_job("/bench/", "/bench")),
    ]))
}

fn guide_part(w: &Words, steps: &[GuideStep]) -> Markup {
    let next = steps.iter().position(|s| !s.done);
    section(
        &w.text("today-guide"),
        &html! {},
        &html! {
            ol.guide {
                @for (at, step) in steps.iter().enumerate() {
                    li.done[step.done].next[next == Some(at)] {
                        span.guide-mark aria-hidden="true" { @if step.done { (icon(Icon::Tick)) } @else { (at + 1) } }
                        div {
                            @if next == Some(at) { (link_button(&step.href, &step.what, ButtonKind::Primary, None, "")) }
                            @else if step.done { a href=(step.href) { (step.what) } span.hidden { ", " (w.text("today-guide-done")) } }
                            @else { span { (step.what) } }
                            p.small { (step.how) }
                        }
                    }
                }
            }
            p.small { (rich!(w, "today-guide-ends", |_, inner| html! { a href="/shop" { (inner) } })) }
        },
    )
}

fn crumb(w: &Words, jobs: &[JobSummary]) -> String {
    match jobs.len() {
        0 => String::new(),
        n => text!(w, "today-jobs-earliest-first", n = n),
    }
}

fn job_table(w: &Words, jobs: &[JobSummary], now: Timestamp, waits: &BTreeMap<i64, Vec<Waiting>>) -> Markup {
    table(&Table {
        caption: &w.text("today-jobs-under-way"),
        columns: ["today-job", "today-do-next", "today-due", "today-clubs"]
            .map(|id| Column::words(w.text(id)))
            .to_vec(),
        rows: jobs.iter().map(|job| job_row(w, job, now, waits.get(&job.number).map_or(&[], Vec::as_slice))).collect(),
        cards: true,
        ..Table::default()
    })
}

fn job_row(w: &Words, job: &JobSummary, now: Timestamp, waits: &[Waiting]) -> Vec<Cell> {
    let planned = job.state == JobState::Planned;
    let href = if planned { format!("/bench/{}", job.number) } else { format!("/plan/{}", job.number) };
    let next = if planned {
        let steps: Vec<String> =
            one_of_a_name(&job.next_steps).iter().flat_map(|step| step_words(w, step, now)).collect();
        if steps.is_empty() { w.text("today-hand-over") } else { steps.join(", ") }
    } else {
        w.text("today-choose-parts")
    };
    vec![
        Cell(html! { a.job-link href=(href) { (text!(w, "today-job-of", job = job.number, player = job.player)) } }),
        Cell(html! { a href=(href) { (next) } (super::orders::waits_part(w, waits)) }),
        Cell(due(w, job.due, w.day_of(now))),
        Cell::from(
            (0_i64..).zip(&job.clubs).map(|(at, number)| numbered(w, job, at, number)).collect::<Vec<_>>().join(" "),
        ),
    ]
}

/// What is worth doing before the next sets are glued: one line a set, the first due first; nothing for a set of which a club
/// has cured.
async fn before_glue(w: &Words, app: &App, jobs: &[JobSummary]) -> Result<(usize, Markup), AppError> {
    /// More are not looked at in one morning.
    const SETS: usize = 3;
    let mut planned: Vec<&JobSummary> = jobs.iter().filter(|j| j.state == JobState::Planned).collect();
    planned.sort_by_key(|j| (j.due, j.number));
    let mut lines = Vec::new();
    for job in planned {
        if lines.len() == SETS {
            break;
        }
        let file = app.job_file(job.number).await?;
        if file.batches.iter().any(|b| !b.clubs.is_empty()) {
            continue;
        }
        let advice = app.set_advice(job.number).await?;
        let line = advice.and_then(|advice| super::work_order::today_line(w, &advice));
        lines.extend(line.map(|line| (job.number, line)));
    }
    if lines.is_empty() {
        return Ok((0, html! {}));
    }
    let part = section(
        &w.text("order-title"),
        &html! {},
        &html! { ul.plain { @for (job, line) in &lines {
            li { a href={ "/plan/" (job) } { (text!(w, "today-job-number", job = *job)) } ": " (line) }
        } } },
    );
    Ok((lines.len(), part))
}

/// The steps of different kinds of work that have one name, such as “Arrived”, as one.
fn one_of_a_name(steps: &[NextStep]) -> Vec<NextStep> {
    let mut named: Vec<NextStep> = Vec::new();
    for step in steps {
        match named.iter_mut().find(|other| other.label == step.label) {
            Some(other) => {
                other.clubs += step.clubs;
                other.curing.extend(step.curing.iter().cloned());
            }
            None => named.push(step.clone()),
        }
    }
    named
}

/// A step with the clubs that can be done there now, and those that cure until a time.
fn step_words(w: &Words, step: &NextStep, now: Timestamp) -> Vec<String> {
    let curing: i64 = step.curing.iter().map(|c| c.clubs).sum();
    let able = step.clubs - curing;
    let able = (able > 0).then(|| text!(w, "today-step-clubs", step = step.label, n = able));
    let cures = step.curing.iter().map(|c| cures_words(w, c, now));
    able.into_iter().chain(cures).collect()
}

fn cures_words(w: &Words, curing: &Curing, now: Timestamp) -> String {
    let (n, until_at) = (curing.clubs, curing.until);
    match (w.day_of(until_at) - w.day_of(now)).get_days() {
        ..=0 => text!(w, "today-cures-today", n = n, until_at = until_at),
        1 => text!(w, "today-cures-tomorrow", n = n, until_at = until_at),
        _ => text!(w, "today-cures-later", n = n, until_at = until_at),
    }
}

/// A due date, marked where it is near or past.
pub(super) fn due(w: &Words, due: Date, today: Date) -> Markup {
    let days = (due - today).get_days();
    let text = w.date_near(due, today);
    html! {
        span.whole { (text) } " "
        @if days < 0 { (tag(Tone::Bad, &text!(w, "today-days-late", days = -days))) }
        @else if days == 0 { (tag(Tone::Care, &w.text("today-due-today"))) }
        @else if days <= 3 { (tag(Tone::Care, &text!(w, "today-due-in", days = days))) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    fn w() -> Words {
        Words::english(Units::default())
    }

    #[test]
    fn clubs_that_cure_are_told_with_the_time_when_they_are_ready() {
        let at = |text: &str| text.parse::<Timestamp>().unwrap();
        let curing = vec![Curing { clubs: 5, until: at("2026-11-30T05:01:00Z") }];
        let step = |clubs, curing| NextStep { key: "turned".into(), label: "Ferrule turned".into(), clubs, curing };
        let now = at("2026-11-29T20:00:00Z");
        assert_eq!(step_words(&w(), &step(5, curing.clone()), now), ["5 clubs cure until 05:01 tomorrow"]);
        let some = step_words(&w(), &step(8, curing.clone()), at("2026-11-30T03:00:00Z"));
        assert_eq!(some, ["Ferrule turned: 3 clubs", "5 clubs cure until 05:01"]);
        // Two kinds of work with a step of one name are one line.
        let one = one_of_a_name(&[step(8, curing), step(1, vec![])]);
        assert_eq!(step_words(&w(), &one[0], now)[0], "Ferrule turned: 4 clubs");
        assert_eq!(one.len(), 1);
    }
}
