//! The frequencies of a set before the cut: what each club will read, what it is to read, and the tip trim that brings it there.

use super::entries::{Entries, go_to, query, words_cards};
use super::{Framed, PageResult, Who, failure, failure_status, framed, say};
use crate::asked::Path;
use crate::reader::Reader;
use app::cpm::{AskCpm, TakeTrims};
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use bench::chance::Chance;
use bench::trim_to_cpm::{CpmOfClub, SetCpm, Slope};
use look::{Button, ButtonKind, Cell, Column, Field, Nav, Notice, button, hidden, section};
use maud::{Markup, html};
use trade::kind::Role;
use trade::reading::What;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/bench/{job}/cpm", get(show).post(take))
}

async fn show(
    State(app): State<App>,
    Reader(w): Reader,
    Path(job): Path<i64>,
    Query(pairs): Query<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(pairs);
    let (step_cpm, level_cpm) = (form.cpm(&w, "step"), form.cpm(&w, "level"));
    let ask = AskCpm { slope: Slope::from_key(form.text("slope")), step_cpm, level_cpm };
    let (found, error): (Option<SetCpm>, Option<AppError>) = match app.set_cpm(job, ask).await {
        Ok(found) => (Some(found), None),
        Err(error) => (None, Some(error)),
    };
    if let Some(found) = found.as_ref().filter(|_| form.text("slope").is_empty()) {
        form.set("slope", found.slope.key());
    }
    let body = html! {
        p.hint { (w.text("cpm-about")) }
        (slope_form(&w, &form, job))
        @if let Some(found) = &found { (table_of(&w, found)) (take_form(&w, &form, job, found)) }
    };
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let notice: Option<Notice> = error.as_ref().map(|one| failure(&w, one)).or_else(|| form.notice(&w));
    let title = w.text("cpm-page");
    let crumb = text!(w, "today-job-number", job = job);
    let page = framed(&w, &app, Framed { title: &title, active: Nav::Bench, crumb, notice, body, ..Framed::default() });
    Ok((status, page.await?).into_response())
}

/// Takes the trims of the slope that the page shows.
async fn take(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(job): Path<i64>,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(sent);
    let (step_cpm, level_cpm) = (form.cpm(&w, "step"), form.cpm(&w, "level"));
    let slope = Slope::from_key(form.text("slope"));
    match app.take_trims(job, &TakeTrims { trims: None, slope, step_cpm, level_cpm, by }).await {
        Ok(_) => {
            let pairs: Vec<(&str, &str)> = ["slope", "step", "level"].map(|name| (name, form.text(name))).to_vec();
            Ok(go_to(&format!("/bench/{job}/cpm{}", query(&pairs))).into_response())
        }
        Err(error) => Err(error.into()),
    }
}

/// Trims that bring less than this many clubs into tolerance are not worth a cut (a judgement, no source).
const LITTLE_CLUBS: f64 = 0.25;

fn is_little(found: &SetCpm) -> bool {
    found.inside_trimmed - found.inside_as_planned < LITTLE_CLUBS
}

fn take_form(w: &Words, form: &Entries, job: i64, found: &SetCpm) -> Markup {
    if found.clubs.iter().all(|club| club.trim.is_none()) {
        return html! {};
    }
    html! {
        form method="post" action={ "/bench/" (job) "/cpm" } {
            @for name in ["slope", "step", "level"] { (hidden(name, form.text(name))) }
            @let kind = if is_little(found) { ButtonKind::Quiet } else { ButtonKind::Primary };
            (button(&Button { label: &w.text("cpm-take"), kind, ..Button::default() }))
        }
    }
}

fn slope_form(w: &Words, form: &Entries, job: i64) -> Markup {
    let slopes: Vec<(&str, String)> = Slope::ALL.iter().map(|slope| (slope.key(), w.tell(slope))).collect();
    let decimal = Field { unit: "cpm", ..Field::default() };
    html! {
        form.card method="get" action={ "/bench/" (job) "/cpm" } {
            div.fields {
                (form.select("slope", &w.text("cpm-slope"), "", &slopes))
                (form.field("step", &w.text("cpm-step"), decimal))
                (form.field("level", &w.text("cpm-level"), Field { unit: "cpm", hint: &w.text("cpm-level-hint"), ..Field::default() }))
            }
            div.actions { (button(&Button { label: &w.text("cpm-show"), kind: ButtonKind::Quiet, ..Button::default() })) }
        }
    }
}

fn table_of(w: &Words, found: &SetCpm) -> Markup {
    let columns = ["club", "forecast", "aim", "tip", "after", "chance", "to-do"];
    let with = if found.on.contains(&Role::Grip) { "cpm-with-grip" } else { "cpm-without-grip" };
    let rests_on = found.clubs.iter().find_map(|club| club.rests_on);
    let heading = match found.step_cpm.filter(|_| found.slope == Slope::Step) {
        Some(step) => text!(w, "cpm-heading-step", step_cpm = step),
        None => text!(w, "cpm-heading", slope = w.tell(&found.slope)),
    };
    section(
        &heading,
        &html! {},
        &html! {
            (words_cards(
                &w.text("cpm-page"),
                columns.iter().map(|column| Column::words(w.text(&format!("cpm-column-{column}")))).collect(),
                found.clubs.iter().map(|club| row(w, club)).collect(),
            ))
            p { (text!(w, "cpm-inside",
                planned = w.printed(&quantity::decimal(found.inside_as_planned, 1)),
                trimmed = w.printed(&quantity::decimal(found.inside_trimmed, 1)),
                clubs = found.clubs.len() as i64)) }
            @if found.clubs.iter().any(|club| club.trim.is_some()) && is_little(found) { p { (w.text("cpm-little")) } }
            p.hint { (w.text(with)) @if let Some(from) = rests_on { " " (text!(w, "cpm-rests-on", from = from)) } }
        },
    )
}

fn row(w: &Words, club: &CpmOfClub) -> Vec<Cell> {
    let none = || "–".to_owned();
    let banded =
        |pair: Option<(f64, f64)>| pair.map_or_else(none, |(cpm, band)| say::forecast(w, What::Cpm, cpm, band));
    let trim = club.trim.as_ref();
    let chance = trim.map(|t| t.chance).or(club.chance).map_or_else(none, |p| w.tell(&Chance::of(p)));
    vec![
        Cell::from(w.club_number(&club.number)),
        Cell::from(banded(club.forecast_cpm.zip(club.band_cpm))),
        Cell::from(club.aim_cpm.map_or_else(none, |aim| say::value(w, What::Cpm, aim))),
        Cell::from(trim.map_or_else(none, |t| w.length_to(t.tip_trim_mm, 2))),
        Cell::from(banded(trim.map(|t| (t.after_cpm, t.after_band_cpm)))),
        Cell::from(chance),
        Cell::from(
            html! { span.small { (w.told(&club.fact)) @for remedy in &club.remedies { " " (w.told(remedy)) } } },
        ),
    ]
}
