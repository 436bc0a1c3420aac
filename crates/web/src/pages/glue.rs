//! Glue: what to weigh out, the batch, its clocks.

use super::entries::{capital, counted, go_to};
use super::{Framed, PageResult, Who, failure, failure_status, framed, say};
use crate::reader::Reader;
use app::glue::{BatchView, NewBatch, TakeBackBatch};
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Path, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::{get, post};
use bench::glue::MixFact;
use jiff::Timestamp;
use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use look::{
    Action, Button, ButtonKind, Cell, Choice, Column, Field, Figure, Icon, Nav, Notice, Select, Table, Tone, button,
    caution, check, clock, empty_state, field, figures, hidden, icon, notice_block, request_key, section, select,
    table, titled_card,
};
use maud::{Markup, html};
use quantity::decimal;
use serde::Deserialize;
use trade::caution::CautionSays;
use trade::job::JobState;
use trade::model::PartKind;
use words::Words;

pub(super) fn router() -> Router<App> {
    Router::new()
        .route("/glue", get(index))
        .route("/glue/new", get(new_batch).post(start))
        .route("/glue/{number}/take-back", post(take_back))
}

/// Batches of so many days are shown; each stands in the records of its clubs for good.
const SHOWN_DAYS: i64 = 14;

async fn index(State(app): State<App>, Reader(w): Reader) -> PageResult {
    let batches = app.recent_batches(SHOWN_DAYS).await?;
    let jobs = app.job_names(&[JobState::Planned]).await?;
    let now = app.now();
    let cups = batches.iter().map(Into::into).collect();
    let new = html! { @for job in &jobs { a.button.quiet href={ "/glue/new?job=" (job.number) } { "New batch for job " (job.number) } " " } };
    let body = if batches.is_empty() {
        html! {
            (empty_state("No batch has been mixed of late.", "A batch starts the pot-life clock and the cure of its clubs.",
                &[Action { href: "/bench", label: "Bench", primary: jobs.is_empty() }]))
            (new)
        }
    } else {
        let (taken, batches): (Vec<_>, Vec<_>) = batches.iter().partition(|b| b.batch.taken_back.is_some());
        let (running, cured): (Vec<_>, Vec<_>) = batches.into_iter().partition(|b| b.full_cure_at > now);
        let cards = |list: &[&BatchView]| {
            html! { @for batch in list {
                (titled_card(&format!("Batch {} · {}", batch.batch.number, batch.adhesive_name), &batch_part(&w, batch, now)))
            } }
        };
        html! {
            (section("Batches", &new, &html! {
                @if running.is_empty() { p { "No batch is curing." } }
                (cards(&running))
            }))
            @if !cured.is_empty() { (section("Cured", &html! {}, &cards(&cured))) }
            @if !taken.is_empty() { (section("Taken back", &html! {}, &html! {
                ul.plain { @for batch in &taken { li {
                    "Batch " (batch.batch.number) ", job " (batch.clubs.join("; job ")) ", lot " (batch.batch.lot) ": "
                    (batch.batch.taken_back.as_deref().unwrap_or_default())
                } } }
            })) }
        }
    };
    Ok(framed(&w, &app, Framed { title: "Glue", active: Nav::Glue, cups: Some(cups), body, ..Framed::default() })
        .await?
        .into_response())
}

fn batch_part(w: &Words, view: &BatchView, now: Timestamp) -> Markup {
    let b = &view.batch;
    let row = |what: &str, until: Timestamp, done: &str| {
        let text = if until > now { say::left(w, now, until) } else { done.to_owned() };
        vec![Cell::from(what), Cell(clock(&until.to_string(), &text, done)), Cell::from(w.moment(until))]
    };
    html! {
        p { strong { "Job " (view.clubs.join("; job ")) } ". Lot " (b.lot) ", " (decimal(b.resin_g, 1)) " g resin, "
            (decimal(b.hardener_g, 1)) " g hardener, " (decimal(b.beads_g, 1)) " g spacers, at " (decimal(b.room_c, 0)) " °C. Mixed "
            (w.moment(b.mixed_at)) " by " (b.by) "."
            @if let Some(reason) = &b.cold_reason { " Started in the cold: " (reason) "." } }
        @for warning in &view.warnings { (notice_block(Tone::Care, &warning.words, &warning.next)) }
        @if view.full_cure_at > now { (table(&Table {
            caption: &format!("Clocks of batch {}", b.number),
            columns: vec![Column::words("what"), Column::figures("left"), Column::words("until")],
            rows: vec![
                row("pot life", view.pot_life_until, "over"),
                row("handle, grip, read", view.handling_at, "now"),
                row("bend, hand over, swing", view.full_cure_at, "now"),
            ],
            ..Table::default()
        })) }
        details {
            summary { "Entered wrongly" }
            form method="post" action={ "/glue/" (b.number) "/take-back" } {
                p.small { "Its clocks stop and no club counts as glued from it. That is refused once a club was read on its joint." }
                (field(&Field { name: "reason", id: &format!("reason-{}", b.number), label: "Why? The record keeps it.", required: true, ..Field::default() }))
                (button(&Button { label: "Take the batch back", kind: ButtonKind::Danger, ..Button::default() }))
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
    Reader(w): Reader,
    Who(by): Who,
    Path(number): Path<i64>,
    Form(form): Form<TakeBackForm>,
) -> PageResult {
    app.take_back_batch(number, &TakeBackBatch { reason: form.reason, by }).await?;
    Ok(go_to("/glue").into_response())
}

#[derive(Debug, Default, Deserialize)]
struct NewQuery {
    job: Option<i64>,
}

async fn new_batch(State(app): State<App>, Reader(w): Reader, Query(query): Query<NewQuery>) -> PageResult {
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
            Ok(_) => Ok(go_to("/glue").into_response()),
            Err(error) => form_page(&w, &app, job, &fields, Some(error)).await,
        },
        Err(error) => form_page(&w, &app, job, &fields, Some(error)).await,
    }
}

fn parsed(fields: &Fields, text: &dyn Fn(&str) -> String, job: i64, by: String) -> Result<NewBatch, AppError> {
    let number = |name: &'static str, label: &str| -> Result<Option<f64>, AppError> {
        let raw = text(name);
        if raw.is_empty() {
            return Ok(None);
        }
        raw.replace(',', ".").parse().map(Some).map_err(|_| AppError::Invalid {
            what: format!("{label} “{raw}” is not a number"),
            next: "Enter for example 21".into(),
        })
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
        bead_share_percent: number("bead_share_percent", "The share of spacers")?,
        room_c: number("room_c", "The temperature")?,
        cold_reason: Some(text("cold_reason")).filter(|reason| !reason.is_empty()),
        by,
    })
}

/// A day and time as a tablet sends it, in the shop's own time zone: `2026-11-28T14:20`.
fn local_time(text: &str) -> Result<Timestamp, AppError> {
    let unreadable = || AppError::Invalid {
        what: format!("“{text}” is not a day and time"),
        next: "Choose when the cup was mixed, or leave it empty for now".into(),
    };
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
    let glue_step = file.job.steps.iter().find(|s| s.glues);
    let built: Vec<_> = states.iter().filter(|c| c.finish.is_some()).collect();
    let open = match glue_step {
        Some(step) => app.open_on(&file, &believed, &states, step).await?,
        None => Vec::new(),
    };
    let open_on = |slot: i64| open.iter().find(|club| club.slot == slot);
    // Only what is clear is ticked; what is open takes a touch of its own, and a reason.
    let ticked = |slot: i64| match fields {
        [] => open_on(slot).is_none(),
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
    let body = html! {
        @if let Some(mix) = &mix {
            (section(&format!("Weigh out for {} joints", mix.joints), &html! {}, &html! {
                (figures(&[
                    Figure { label: "resin", value: &w.mass(mix.resin_g), note: &format!("{} ml", decimal(mix.resin_ml, 1)) },
                    Figure { label: "hardener", value: &w.mass(mix.hardener_g), note: &format!("{} ml", decimal(mix.hardener_ml, 1)) },
                    Figure { label: "spacers, stirred in", value: &w.mass(mix.beads_g), note: "" },
                    Figure { label: "pot life", value: &format!("{} min", decimal(mix.pot_life_min, 0)), note: "" },
                    Figure { label: "handle after", value: &format!("{} h", decimal(mix.handling_h, 1)), note: "" },
                    Figure { label: "swing after", value: &format!("{} h", decimal(mix.full_cure_h, 0)), note: "" },
                ]))
                p.small { "By the data entered from the product's own sheet, at " (decimal(room_c, 0)) " °C. The sheet itself wins." }
                @for warning in &mix.warnings { (notice_block(Tone::Care, &warning.words, &warning.next)) }
                (caution(&w.tell(&CautionSays::Epoxy)))
            }))
        }
        form.card method="post" action="/glue/new" {
            (hidden("job", &job.to_string()))
            (request_key(&typed("request_key", app::request_key())))
            fieldset.choices { legend { "Clubs glued from this cup" }
                @for club in built.iter().filter(|club| open_on(club.slot).is_none()) {
                    (check("slot", &club.slot.to_string(), &format!("{} (slot {})", club.number, club.slot), ticked(club.slot)))
                }
                @if open.len() == built.len() { p { "No club of this job is clear to glue." } }
            }
            @if !open.is_empty() {
                fieldset.choices.open-clubs { legend { (icon(Icon::Doubt)) " Something is open on " (counted(open.len(), "club")) }
                    ul.plain { @for club in &open { li {
                        (check("slot", &club.slot.to_string(), &format!("{} (slot {})", club.number, club.slot), ticked(club.slot)))
                        span { (capital(&club.words.join("; "))) ". " }
                        a href={ "/bench/" (job) "/" (club.slot) } { "Open it at the bench" }
                    } } }
                    (field(&Field {
                        name: "reason",
                        label: "Why glue one of these all the same? The record keeps it.",
                        value: &typed("reason", String::new()),
                        ..Field::default()
                    }))
                }
            }
            // What was shown is what is kept, whatever another tablet mixes meanwhile.
            (hidden("last_lot", &last_lot))
            (field(&Field {
                name: "lot",
                label: "Lot on the tins",
                value: &typed("lot", String::new()),
                placeholder: &last_lot,
                hint: &if last_lot.is_empty() {
                    "How every club of a bad lot is found again".to_owned()
                } else {
                    format!("Scan or type it; Enter alone: {last_lot}, as the last cup")
                },
                required: last_lot.is_empty(),
                autofocus: true,
                big: true,
                ..Field::default()
            }))
            @if too_cold {
                (field(&Field {
                    name: "cold_reason",
                    label: "Why it cures in this room",
                    value: &typed("cold_reason", String::new()),
                    hint: "What the maker says at this temperature. The record keeps it. Leave it empty and warm the room instead",
                    ..Field::default()
                }))
            }
            (button(&Button { label: "Mixed: start the clock", big: true, ..Button::default() }))
            div.fields {
            (select(&Select {
                name: "adhesive", label: "Adhesive", hint: "", error: None,
                choices: models.iter().map(|m| Choice { value: m.code(), label: m.name().into(), chosen: m.code() == chosen }).collect(),
            }))
            (field(&Field {
                name: "mixed_at", label: "Mixed at", hint: "Leave it empty for a cup that is mixed now",
                value: &typed("mixed_at", String::new()), kind: "datetime-local", ..Field::default()
            }))
            (field(&Field { name: "room_c", label: "Room", value: &typed("room_c", decimal(shop.room_c, 0)), unit: "°C", inputmode: "decimal", ..Field::default() }))
            (field(&Field { name: "bead_share_percent", label: "Spacers", value: &typed("bead_share_percent", decimal(shop.bead_share_percent, 0)), unit: "% by mass", inputmode: "decimal", ..Field::default() }))
            }
        }
    };
    let notice: Option<Notice> = notice;
    let crumb = format!("Job {job} · {}", file.job.sheet.player);
    let page =
        framed(w, app, Framed { title: "New batch", active: Nav::Glue, crumb, notice, body, ..Framed::default() })
            .await?;
    Ok((status, page).into_response())
}
