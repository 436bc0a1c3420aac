//! Glue: what to weigh out, the batch, its clocks.

use super::entries::{go_on, go_to, in_address, query};
use super::open::{open_points, strengths};
use super::step_says::alignment;
use super::{Framed, PageResult, Who, failure, failure_status, framed, say};
use crate::asked::{Asked, Filled, Path};
use crate::problem::EdgeFault;
use crate::reader::Reader;
use crate::tablet::Done;
use app::glue::{BatchView, GluedClubs, LetBatchPass, NewBatch, TakeBackBatch};
use app::job::JobFile;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use bench::club_state::ClubState;
use bench::glue::{MixFact, glued_from};
use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use look::{
    Action, Button, ButtonKind, Cell, Choice, Column, Field, Figure, Icon, Nav, Notice, Select, Table, Tone, button,
    caution, check, clock, empty_state, field, figures, hidden, link_button, notice_block, request_key, rich,
    search_bar, section, select, table, tag, titled_card,
};
use maud::{Markup, html};
use quantity::decimal;
use serde::Deserialize;
use trade::caution::CautionSays;
use trade::job::{JobClub, JobState};
use trade::kind::Role;
use trade::model::PartKind;
use trade::step::{Step, Strength};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/glue", get(index))
        .route("/glue/new", get(new_batch).post(start))
        .route("/glue/{number}/take-back", post(take_back))
        .route("/glue/{number}/let-pass", post(let_pass))
}

/// Batches of so many days are shown; each stands in the records of its clubs for good.
const SHOWN_DAYS: i64 = 14;

#[derive(Debug, Default, Deserialize)]
struct IndexQuery {
    /// The job whose cup was just mixed: the way on to its next step.
    job: Option<i64>,
}

async fn index(State(app): State<App>, Reader(w): Reader, Asked(query): Asked<IndexQuery>) -> PageResult {
    let batches = app.recent_batches(SHOWN_DAYS).await?;
    let mut jobs = Vec::new();
    for job in app.job_names(&[JobState::Planned]).await? {
        if is_to_glue(&*app.job_file(job.number).await?) {
            jobs.push(job);
        }
    }
    let now = app.now();
    let cups = batches.iter().map(Into::into).collect();
    let new = html! { @for job in &jobs { a.button.quiet href={ "/glue/new?job=" (job.number) } { (text!(w, "glue-new-for-job", job = job.number)) } " " } };
    let body = if batches.is_empty() {
        html! {
            (empty_state(&w.text("glue-none"), &w.text("glue-none-next"),
                &[Action { href: "/bench", label: &w.text("frame-bench"), primary: jobs.is_empty() }]))
            (new)
        }
    } else {
        let (taken, batches): (Vec<_>, Vec<_>) = batches.iter().partition(|b| b.batch.taken_back.is_some());
        let (running, cured): (Vec<_>, Vec<_>) = batches.into_iter().partition(|b| b.full_cure_at > now);
        let cards = |list: &[&BatchView]| {
            html! { @for batch in list {
                (titled_card(&text!(w, "glue-batch-of", batch = batch.batch.number, adhesive = batch.adhesive_name), &batch_part(&w, batch, now)))
            } }
        };
        html! {
            (section(&w.text("glue-batches"), &new, &html! {
                @if running.is_empty() { p { (w.text("glue-none-curing")) } }
                (cards(&running))
            }))
            @if !cured.is_empty() { (section(&w.text("glue-cured"), &html! {}, &cards(&cured))) }
            @if !taken.is_empty() { (section(&w.text("glue-taken-back"), &html! {}, &html! {
                ul.plain { @for batch in &taken { li {
                    (text!(w, "glue-batch-taken-back", batch = batch.batch.number, clubs = batch_clubs(&w, &batch.clubs),
                        lot = batch.batch.lot, reason = batch.batch.taken_back.as_deref().unwrap_or_default()))
                } } }
            })) }
        }
    };
    let on = match query.job {
        Some(job) => on_from_glue(&w, &app, job).await?,
        None => html! {},
    };
    let body = html! {
        (on)
        (search_bar(&w, "/recall", "lot", &w.text("glue-find-lot"), "", &html! {}))
        (body)
    };
    let title = w.text("glue-title");
    Ok(framed(
        &w,
        &app,
        Framed { title: &title, active: Nav::Glue, cups: Some(cups), body, terms: true, ..Framed::default() },
    )
    .await?
    .into_response())
}

/// Whether a club of a job is still to be glued.
fn is_to_glue(file: &JobFile) -> bool {
    let glues = |club: &JobClub| file.job.steps_of(club).any(|step| step.glues);
    let mut clubs = file.job.clubs.iter();
    clubs.any(|club| club.plan.is_some() && glues(club) && glued_from(&file.batches, &club.id).is_none())
}

/// The way on to the step after the glue.
async fn on_from_glue(w: &Words, app: &App, job: i64) -> Result<Markup, AppError> {
    let file = app.job_file(job).await?;
    let steps = &file.job.steps;
    let next = steps.iter().position(|step| step.glues).and_then(|at| steps.get(at + 1));
    Ok(html! { @if let Some(next) = next { div.actions {
        (link_button(&format!("/bench/{job}/grid/{}", in_address(&next.key)), &text!(w, "grid-next", next = next.label), ButtonKind::Primary, Some(Icon::Forward), "n"))
    } } })
}

/// `job 1, clubs 4, 5; job 12, club 7` of the clubs that a batch glued.
pub(super) fn batch_clubs(w: &Words, clubs: &[GluedClubs]) -> String {
    let of_job = |of: &GluedClubs| {
        let clubs: Vec<String> = of.numbers.iter().map(|number| w.club_number(number)).collect();
        text!(w, "glue-clubs-of-job", n = clubs.len(), job = of.job, clubs = clubs.join(", "))
    };
    let mut jobs = clubs.iter().map(of_job);
    let first = jobs.next().unwrap_or_default();
    jobs.fold(first, |before, next| text!(w, "glue-more-jobs", a = before, b = next))
}

fn batch_part(w: &Words, view: &BatchView, now: Timestamp) -> Markup {
    let b = &view.batch;
    let row = |what: &str, until: Timestamp, done: &str| {
        let done = w.text(done);
        let text = if until > now { say::left(w, now, until) } else { done.clone() };
        vec![Cell::from(w.text(what)), Cell(clock(&until.to_string(), &text, &done)), Cell::from(w.moment(until))]
    };
    html! {
        p { (rich!(w, "glue-batch-said", |_, inner| html! { strong { (inner) } }, clubs = batch_clubs(w, &view.clubs),
                lot = b.lot, resin_g = b.resin_g, hardener_g = b.hardener_g, beads_g = b.beads_g, room_c = b.room_c,
                mixed_at = b.mixed_at, by = b.by))
            @if let Some(reason) = &b.cold_reason { " " (text!(w, "glue-batch-cold", reason = reason)) } }
        @for warning in &view.warnings { (notice_block(Tone::Care, &w.sentence(&warning.fact), &w.sentence(&warning.next))) }
        @if view.full_cure_at > now { (table(&Table {
            caption: &text!(w, "glue-clocks", batch = b.number),
            columns: vec![
                Column::words(w.text("glue-what")),
                Column::figures(w.text("glue-left")),
                Column::words(w.text("glue-until")),
            ],
            rows: vec![
                row("glue-pot-life", view.pot_life_until, "glue-over"),
                row("glue-handle", view.handling_at, "glue-now"),
                row("glue-swing", view.full_cure_at, "glue-now"),
            ],
            cards: true,
            ..Table::default()
        })) }
        @for pass in &view.let_pass {
            p { (tag(Tone::Care, &w.text("record-override-tag"))) " "
                (text!(w, "open-override-kept", strength = pass.strength, reason = pass.reason, by = pass.by, at_at = pass.at)) }
        }
        @if view.full_cure_at > now && view.let_pass.iter().all(|pass| pass.strength != Strength::Full) {
            details {
                summary { (text!(w, "open-override-batch", batch = b.number)) }
                form method="post" action={ "/glue/" (b.number) "/let-pass" } {
                    (strengths(w, if view.handling_at > now { Strength::Handling } else { Strength::Full }))
                    (field(&Field { name: "reason", id: &format!("why-{}", b.number), label: &w.text("bench-why"), required: true, ..Field::default() }))
                    (button(&Button { label: &w.text("bench-override"), kind: ButtonKind::Danger, ..Button::default() }))
                }
            }
        }
        details {
            summary { (w.text("glue-entered-wrongly")) }
            form method="post" action={ "/glue/" (b.number) "/take-back" } {
                p.small { (w.text("glue-take-back-means")) }
                (field(&Field { name: "reason", id: &format!("reason-{}", b.number), label: &w.text("glue-take-back-why"), required: true, ..Field::default() }))
                (button(&Button { label: &w.text("glue-take-back"), kind: ButtonKind::Danger, ..Button::default() }))
            }
        }
    }
}

#[derive(Debug, Deserialize)]
struct TakeBackForm {
    #[serde(default)]
    reason: String,
}

async fn take_back(
    State(app): State<App>,
    Who(by): Who,
    Path(number): Path<i64>,
    Filled(form): Filled<TakeBackForm>,
) -> PageResult {
    app.take_back_batch(number, &TakeBackBatch { reason: form.reason, by }).await?;
    Ok(go_on("/glue", Done::BatchBack))
}

#[derive(Debug, Deserialize)]
struct LetPassForm {
    strength: Strength,
    #[serde(default)]
    reason: String,
}

async fn let_pass(
    State(app): State<App>,
    Who(by): Who,
    Path(number): Path<i64>,
    Filled(form): Filled<LetPassForm>,
) -> PageResult {
    let batch = app.let_batch_pass(number, &LetBatchPass { strength: form.strength, reason: form.reason, by }).await?;
    let job = batch.clubs.first().map(|of| of.job.to_string());
    Ok(go_on(&format!("/glue{}", query(&[("job", job.as_deref().unwrap_or_default())])), Done::Passed))
}

#[derive(Debug, Default, Deserialize)]
struct NewQuery {
    job: Option<i64>,
}

async fn new_batch(State(app): State<App>, Reader(w): Reader, Asked(query): Asked<NewQuery>) -> PageResult {
    match query.job {
        Some(job) => form_page(&w, &app, job, &[], None).await,
        None => Ok(go_to("/glue").into_response()),
    }
}

/// A cup older than this was mixed from other tins, as likely as not.
const LAST_CUP_DAYS: i64 = 7;

type Fields = Vec<(String, String)>;

async fn start(State(app): State<App>, Reader(w): Reader, Who(by): Who, Form(fields): Form<Fields>) -> PageResult {
    let text =
        |name: &str| fields.iter().find(|(k, _)| k == name).map(|(_, v)| v.trim().to_owned()).unwrap_or_default();
    let job: i64 = text("job").parse().unwrap_or_default();
    match parsed(&fields, &text, job, by) {
        Ok(new) => match app.start_batch(&new).await {
            Ok(_) => Ok(go_on(&format!("/glue?job={job}"), Done::BatchRuns)),
            Err(error) => form_page(&w, &app, job, &fields, Some(error)).await,
        },
        Err(error) => form_page(&w, &app, job, &fields, Some(error)).await,
    }
}

fn parsed(fields: &Fields, text: &dyn Fn(&str) -> String, job: i64, by: String) -> Result<NewBatch, AppError> {
    let number = |name: &'static str, fault: fn(String) -> EdgeFault| -> Result<Option<f64>, AppError> {
        let raw = text(name);
        if raw.is_empty() {
            return Ok(None);
        }
        raw.replace(',', ".").parse().map(Some).map_err(|_| AppError::invalid(fault(raw.clone())))
    };
    let mixed_at = Some(text("mixed_at")).filter(|at| !at.is_empty()).map(|at| local_time(&at)).transpose()?;
    Ok(NewBatch {
        job,
        mixed_at,
        reason: Some(text("reason")).filter(|reason| !reason.is_empty()),
        request_key: Some(text("request_key")).filter(|key| !key.is_empty()),
        slots: fields.iter().filter(|(k, _)| k == "slot").filter_map(|(_, v)| v.parse().ok()).collect(),
        adhesive: Some(text("adhesive")).filter(|a| !a.is_empty()),
        lot: Some(text("lot")).filter(|lot| !lot.is_empty()).unwrap_or_else(|| text("last_lot")),
        bead_share_percent: number("bead_share_percent", |text| EdgeFault::NoSpacersNumber { text })?,
        room_c: number("room_c", |text| EdgeFault::NoRoomNumber { text })?,
        cold_reason: Some(text("cold_reason")).filter(|reason| !reason.is_empty()),
        by,
    })
}

/// A day and time as a tablet sends it, in the shop's own time zone: `2026-11-28T14:20`.
fn local_time(text: &str) -> Result<Timestamp, AppError> {
    let unreadable = || AppError::invalid(EdgeFault::NotATime { text: text.to_owned() });
    let at: DateTime = text.parse().map_err(|_| unreadable())?;
    TimeZone::system().to_timestamp(at).map_err(|_| unreadable())
}

async fn form_page(w: &Words, app: &App, job: i64, fields: &[(String, String)], error: Option<AppError>) -> PageResult {
    let file = app.job_file(job).await?;
    let believed = file.believe()?;
    let states = file.states_of(&believed, app.now())?;
    let shop = &file.shop;
    let models = app.models(Some(PartKind::Adhesive)).await?;
    let typed =
        |name: &str, default: String| fields.iter().find(|(k, _)| k == name).map_or(default, |(_, v)| v.clone());
    let glued_at = |state: &ClubState, step: &Step| {
        file.job
            .club(&state.club)
            .is_some_and(|c| file.job.steps_of(c).find(|s| s.glues).is_some_and(|s| s.key == step.key))
    };
    let glue_steps = || file.job.steps.iter().filter(|step| step.glues);
    let built: Vec<_> =
        states.iter().filter(|c| c.finish.is_some() && glue_steps().any(|step| glued_at(c, step))).collect();
    let mut open = Vec::new();
    for step in glue_steps() {
        let of_step: Vec<ClubState> = states.iter().filter(|state| glued_at(state, step)).cloned().collect();
        open.extend(file.open_on(&believed, &of_step, step)?);
    }
    let open_on = |slot: i64| open.iter().find(|club| club.slot == slot);
    // Only what is clear is ticked; what is open takes a touch of its own, and a reason.
    let ticked = |slot: i64| match fields {
        [] => open_on(slot).is_none_or(|club| club.passed.is_some()),
        sent => sent.iter().any(|(k, v)| k == "slot" && *v == slot.to_string()),
    };
    let joints = built.iter().filter(|club| ticked(club.slot)).count();
    let chosen = typed("adhesive", shop.adhesive.clone().unwrap_or_default());
    // The tins on the bench are mostly those of the last cup: then one key or the pedal starts the clock.
    let last_lot = app
        .recent_batches(LAST_CUP_DAYS)
        .await?
        .into_iter()
        .find(|b| b.batch.adhesive == chosen)
        .map_or_else(String::new, |b| b.batch.lot);
    let room_c = typed("room_c", String::new()).replace(',', ".").parse().unwrap_or(shop.room_c);
    let mix = if joints == 0 { None } else { file.mix(Some(&chosen), joints, None, Some(room_c)).ok() };
    let too_cold = mix.iter().flat_map(|m| &m.warnings).any(|w| matches!(w.fact, MixFact::ColderThanSheet { .. }));
    let notice = error.as_ref().map(|one| failure(w, one));
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let now = app.now();
    // A clock's end as a time of day, for a cup that is mixed now.
    let mixed_now = |after_min: f64| {
        let after = SignedDuration::from_secs((after_min * 60.0) as i64);
        now.checked_add(after).map_or_else(|_| String::new(), |until| text!(w, "glue-mixed-now", until_at = until))
    };
    let body = html! {
        @if let Some(mix) = &mix {
            (section(&text!(w, "glue-weigh-out", n = mix.joints), &html! {}, &html! {
                (figures(&[
                    Figure { label: &w.text("glue-resin"), value: &w.mass(mix.resin_g), note: &text!(w, "glue-ml", volume_ml = mix.resin_ml) },
                    Figure { label: &w.text("glue-hardener"), value: &w.mass(mix.hardener_g), note: &text!(w, "glue-ml", volume_ml = mix.hardener_ml) },
                    Figure { label: &w.text("glue-spacers"), value: &w.mass(mix.beads_g), note: "" },
                    Figure { label: &w.text("glue-pot-life"), value: &text!(w, "glue-min", time_min = mix.pot_life_min), note: &mixed_now(mix.pot_life_min) },
                    Figure { label: &w.text("glue-handle-after"), value: &text!(w, "glue-tenths-h", time_h = mix.handling_h), note: &mixed_now(mix.handling_h * 60.0) },
                    Figure { label: &w.text("glue-swing-after"), value: &text!(w, "glue-h", time_h = mix.full_cure_h), note: &mixed_now(mix.full_cure_h * 60.0) },
                ]))
                p.small { (text!(w, "glue-by-sheet", room_c = room_c)) }
                @for warning in &mix.warnings { (notice_block(Tone::Care, &w.sentence(&warning.fact), &w.sentence(&warning.next))) }
                (caution(&w.tell(&CautionSays::Epoxy)))
            }))
        }
        form.card method="post" action="/glue/new" {
            (hidden("job", &job.to_string()))
            (request_key(&typed("request_key", app::request_key())))
            fieldset.choices { legend { (w.text("glue-clubs-from-cup")) }
                @for club in built.iter().filter(|club| open_on(club.slot).is_none()) {
                    (check("slot", &club.slot.to_string(), &club_words(w, &file, club), ticked(club.slot)))
                }
                @if open.len() == built.len() { p { (w.text("glue-none-clear")) } }
            }
            @if !open.is_empty() {
                fieldset.choices.open-list { legend { (text!(w, "glue-open", n = open.len())) }
                    ul.plain { @for club in &open { li {
                        (check("slot", &club.slot.to_string(), &w.club_number(&club.number), ticked(club.slot)))
                        div {
                            (open_points(w, job, club))
                        }
                    } } }
                    (field(&Field {
                        name: "reason",
                        label: &w.text("glue-why-open"),
                        value: &typed("reason", String::new()),
                        ..Field::default()
                    }))
                }
            }
            // What was shown is what is kept, whatever another tablet mixes meanwhile.
            (hidden("last_lot", &last_lot))
            (field(&Field {
                name: "lot",
                label: &w.text("glue-lot"),
                value: &typed("lot", String::new()),
                placeholder: &last_lot,
                hint: &if last_lot.is_empty() {
                    w.text("glue-lot-why")
                } else {
                    text!(w, "glue-lot-last", lot = last_lot)
                },
                required: last_lot.is_empty(),
                autofocus: true,
                big: true,
                ..Field::default()
            }))
            @if too_cold {
                (field(&Field {
                    name: "cold_reason",
                    label: &w.text("glue-cold-why"),
                    value: &typed("cold_reason", String::new()),
                    hint: &w.text("glue-cold-hint"),
                    ..Field::default()
                }))
            }
            (button(&Button { label: &w.text("glue-start"), big: true, ..Button::default() }))
            div.fields {
            (select(&Select {
                name: "adhesive", label: &w.text("glue-adhesive"), hint: "", error: None,
                choices: models.iter().map(|m| Choice { value: m.code(), label: m.name().into(), chosen: m.code() == chosen }).collect(),
            }))
            (field(&Field {
                name: "mixed_at", label: &w.text("glue-mixed-at"), hint: &w.text("glue-mixed-at-hint"),
                value: &typed("mixed_at", String::new()), kind: "datetime-local", ..Field::default()
            }))
            (field(&Field { name: "room_c", label: &w.text("glue-room"), value: &typed("room_c", decimal(shop.room_c, 0)), unit: "°C", inputmode: "decimal", ..Field::default() }))
            (field(&Field { name: "bead_share_percent", label: &w.text("glue-beads"), value: &typed("bead_share_percent", decimal(shop.bead_share_percent, 0)), unit: &w.text("glue-beads-unit"), inputmode: "decimal", ..Field::default() }))
            }
        }
    };
    let notice: Option<Notice> = notice;
    let crumb = text!(w, "glue-new-crumb", job = job, player = file.job.sheet.player);
    let title = w.text("glue-new");
    let page = framed(
        w,
        app,
        Framed { title: &title, active: Nav::Glue, crumb, notice, body, terms: true, ..Framed::default() },
    )
    .await?;
    Ok((status, page).into_response())
}

/// A club with what belongs in its tip and where it will finish: `4 · tip 2 g · finish D2.1`.
fn club_words(w: &Words, file: &JobFile, club: &ClubState) -> String {
    let plan = file.job.club(&club.club).and_then(|c| c.plan.as_ref());
    let tip_g = plan.map_or(0.0, |plan| plan.mass_g(Role::TipWeight));
    let finish_points = club.finish.map_or(0.0, |finish| finish.swing_weight_points);
    let turned = file.job.club(&club.club).map_or_else(String::new, |club| alignment(w, file, club));
    let said = text!(w, "glue-club", club = w.club_number(&club.number), tip_g = tip_g, finish_points = finish_points);
    if turned.is_empty() { said } else { text!(w, "glue-club-turned", club = said, turned = turned) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    #[test]
    fn the_clubs_of_a_batch_are_named_with_their_job() {
        let of = |job, numbers: &[&str]| GluedClubs { job, numbers: numbers.iter().map(|n| (*n).to_owned()).collect() };
        let words = Words::english(Units::default());
        assert_eq!(batch_clubs(&words, &[of(1, &["4", "5"]), of(12, &["P"])]), "job 1, clubs 4, 5; job 12, club PW");
    }
}
