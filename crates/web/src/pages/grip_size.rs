//! Grip size: what each grip of a set will be under either hand, the tape that brings it there, and a caliper reading at the bench.

use super::bench_screen::Screen;
use super::entries::{Entries, go_to, words_cards};
use super::sheets::wraps;
use super::{Framed, PageError, PageResult, Who, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::grip_size::TakeWraps;
use app::{App, AppError};
use axum::Router;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use bench::grip_size::GripPlace;
use bench::wrap_advice::{GripAt, GripSizeOfClub};
use look::{Button, ButtonKind, Cell, Column, Field, Nav, button};
use maud::{Markup, html};
use trade::grip::GripSize;
use trade::kind::Role;
use trade::reading::What;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/bench/{job}/grip-size", get(show).post(take))
}

async fn show(State(app): State<App>, Reader(w): Reader, Path(job): Path<i64>) -> PageResult {
    page(&w, &app, job, None).await
}

/// Lays the layers that the page advises.
async fn take(State(app): State<App>, Reader(w): Reader, Who(by): Who, Path(job): Path<i64>) -> PageResult {
    match app.take_wraps(job, &TakeWraps { wraps: None, by }).await {
        Ok(_) => Ok(go_to(&format!("/bench/{job}/grip-size")).into_response()),
        Err(error) => page(&w, &app, job, Some(error)).await,
    }
}

async fn page(w: &Words, app: &App, job: i64, error: Option<AppError>) -> PageResult {
    let found = app.grip_sizes(job).await?;
    let columns = ["club", "upper", "lower", "wraps", "to-do"];
    let body = html! {
        p.hint { (w.text("grip-size-about")) }
        (words_cards(
            &w.text("grip-size-page"),
            columns.iter().map(|column| Column::words(w.text(&format!("grip-size-column-{column}")))).collect(),
            found.iter().map(|club| row(w, club)).collect(),
        ))
        @if found.iter().any(|club| club.advised.is_some()) {
            form method="post" action={ "/bench/" (job) "/grip-size" } {
                (button(&Button { label: &w.text("grip-size-take"), kind: ButtonKind::Primary, ..Button::default() }))
            }
        }
    };
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let notice = error.as_ref().map(|one| failure(w, one));
    let title = w.text("grip-size-page");
    let crumb = text!(w, "today-job-number", job = job);
    let page = framed(w, app, Framed { title: &title, active: Nav::Bench, crumb, notice, body, ..Framed::default() });
    Ok((status, page.await?).into_response())
}

fn row(w: &Words, club: &GripSizeOfClub) -> Vec<Cell> {
    let at = |place: GripPlace| {
        let found = club.places.iter().find(|at| at.place == place);
        Cell::from(html! { span.small { (found.map_or_else(|| "–".to_owned(), |at| at_words(w, at, false))) } })
    };
    vec![
        Cell::from(w.club_number(&club.number)),
        at(GripPlace::Upper),
        at(GripPlace::Lower),
        Cell::from(wraps(w, club.wraps)),
        Cell::from(html! { span.small { (w.told(&club.fact)) } }),
    ]
}

/// How thick it is at one place and what is asked there; `named` with the name of the place.
#[must_use]
pub fn grip_at(w: &Words, at: &GripAt, named: bool) -> String {
    let place = if named { w.tell(&at.place) } else { String::new() };
    let forecast = text!(w, "grip-size-at", place = place, diameter_mm = at.diameter_mm, band_mm = at.band_mm);
    let asked = at.asked_mm.map(|asked_mm| text!(w, "grip-size-at-asked", asked_mm = asked_mm));
    [Some(forecast.trim().to_owned()), asked].into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// The same with what was read there.
fn at_words(w: &Words, at: &GripAt, named: bool) -> String {
    let mut said = vec![grip_at(w, at, named)];
    said.extend(at.read_mm.map(|read_mm| text!(w, "grip-size-read", read_mm = read_mm)));
    if at.doubted {
        said.push(w.text("grip-size-doubted"));
    }
    said.join(", ")
}

/// The two fields in which a form asks a size, named after `name`.
pub(super) fn asked_fields(w: &Words, form: &Entries, name: &str) -> Markup {
    html! {
        @for (hand, label, hint) in [
            ("upper", "grip-size-asked-upper", "grip-size-asked-hint"),
            ("lower", "grip-size-asked-lower", "grip-size-asked-lower-hint"),
        ] {
            (form.field(
                &format!("{name}-{hand}"),
                &w.text(label),
                Field { hint: &w.text(hint), unit: w.length_sign(), ..Field::default() },
            ))
        }
    }
}

/// The size as a form asks it, in two fields named after `name`; none where both are empty.
pub(super) fn asked(w: &Words, form: &mut Entries, name: &str) -> Option<GripSize> {
    let (upper, lower) = (format!("{name}-upper"), format!("{name}-lower"));
    let (upper_mm, lower_mm) = (form.length_mm(w, &upper), form.length_mm(w, &lower));
    if upper_mm.is_none() && lower_mm.is_some() {
        form.refuse(&upper, w.text("grip-size-asked-needs-upper"));
    }
    Some(GripSize { upper_mm: upper_mm?, lower_mm })
}

impl Screen<'_> {
    /// How thick the grip will be, and a place for a caliper reading where the club is whole.
    pub(super) fn grip_part(&self, w: &Words) -> Result<Markup, PageError> {
        let whole = self.step.on.contains(&Role::Grip) && !self.step.on.contains(&Role::Solvent);
        if !whole || self.step.before {
            return Ok(html! {});
        }
        let found = self.believed.grip_size(self.club).map_err(AppError::from)?;
        let Some(found) = found.filter(|one| !one.places.is_empty()) else { return Ok(html! {}) };
        let places: Vec<String> = found.places.iter().map(|at| at_words(w, at, true)).collect();
        let asks = |what: What| self.step.asks.contains(&what);
        Ok(html! {
            details open[self.club.target.grip_size.is_some()] {
                summary { (text!(w, "grip-size-stands", places = places.join("; "))) }
                p { (w.told(&found.fact)) }
                p.hint { (w.text("grip-size-measure")) }
                @for what in [What::GripSize, What::GripSizeLower] {
                    @if !asks(what) { (self.extra_entry(w, what, &self.step.key, &self.step.on, false)) }
                }
            }
        })
    }
}
