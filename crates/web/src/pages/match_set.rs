//! One club to match a set: what the line through the measured clubs asks of it, and the way to build it.

use super::entries::{Entries, capital, go_to, words_cards};
use super::say::{band, value};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::reader::Reader;
use app::match_job::NewMatch;
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, Query, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use desk::match_set::{MatchModels, MatchTarget, MatchedClub};
use look::{Action, Button, ButtonKind, Cell, Column, Field, Nav, Notice, button, check, empty_state, section};
use maud::{Markup, html};
use trade::head::HeadModel;
use trade::kind::ClubKind;
use trade::model::{Model, PartKind};
use trade::reading::What;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/clubs/match", get(show).post(build))
}

async fn show(State(app): State<App>, Reader(w): Reader, Query(pairs): Query<Vec<(String, String)>>) -> PageResult {
    page(&w, &app, &Entries::new(pairs), None).await
}

fn codes(form: &Entries) -> Vec<String> {
    form.all("club").map(str::to_owned).collect()
}

async fn page(w: &Words, app: &App, form: &Entries, error: Option<AppError>) -> PageResult {
    let codes = codes(form);
    let number = form.text("number");
    let found =
        if number.is_empty() || codes.is_empty() { Ok(None) } else { app.match_to_set(&codes, number).await.map(Some) };
    let (found, error) = match found {
        Ok(found) => (found, error),
        Err(refused) => (None, Some(refused)),
    };
    let models = app.models(None).await?;
    let kind = match codes.first() {
        Some(code) if found.is_some() => Some(app.club(code).await?.club.made.row.club_kind),
        _ => None,
    };
    let fitting = heads(&models, kind.map(|kind| (kind, number)));
    let body = html! {
        @if codes.is_empty() {
            (empty_state(&w.text("club-job-no-clubs"), &w.text("match-set-pick"),
                &[Action { href: "/clubs", label: &w.text("club-life-page"), primary: true }]))
        } @else {
            form.card method="get" action="/clubs/match" {
                @for code in &codes { input type="hidden" name="club" value=(code); }
                div.fields {
                    (form.field("number", &w.text("match-set-number"), Field { required: true, autofocus: found.is_none(), hint: &w.text("club-life-number-hint"), ..Field::default() }))
                }
                div.actions { (button(&Button { label: &w.text("match-set-show"), kind: ButtonKind::Quiet, ..Button::default() })) }
            }
            @if let Some(found) = &found {
                (targets(w, found))
                @if fitting.is_empty() { p.hint { (text!(w, "match-set-no-head", number = w.club_number(number))) } }
                @else { (build_form(w, form, &codes, &models, (&fitting, found))) }
            }
        }
    };
    let status = error.as_ref().map_or(StatusCode::OK, failure_status);
    let notice: Option<Notice> = error.as_ref().map(|one| failure(w, one)).or_else(|| form.notice(w));
    let crumb = codes.join(" ");
    let title = w.text("match-set-page");
    let page = framed(
        w,
        app,
        Framed {
            title: &title,
            active: Nav::Sheets,
            crumb,
            notice,
            body,
            help: Some("other-jobs"),
            ..Framed::default()
        },
    );
    Ok((status, page.await?).into_response())
}

fn targets(w: &Words, found: &MatchedClub) -> Markup {
    let row = |target: &MatchTarget| {
        let what = target.what;
        let off = target.outlier.as_ref().map(|outlier| {
            let (read, expected) = (value(w, what, outlier.value), value(w, what, outlier.expected));
            text!(w, "match-set-off", club = outlier.club.as_str(), value = read, expected = expected)
        });
        vec![
            Cell::from(capital(&w.tell(&what))),
            Cell::from(super::say::forecast(w, what, target.value, target.band)),
            Cell::from(step(w, target)),
            Cell::from(band(w, what, target.scatter)),
            Cell::from(target.clubs.to_string()),
            Cell::from(off.unwrap_or_else(|| "–".to_owned())),
        ]
    };
    let columns = ["figure", "target", "a-number", "scatter", "clubs", "off"];
    section(
        &found.number,
        &html! {},
        &html! {
            (words_cards(
                &w.text("match-set-page"),
                columns.iter().map(|column| Column::words(w.text(&format!("match-set-column-{column}")))).collect(),
                found.targets.iter().map(row).collect(),
            ))
            @for what in &found.too_few { p.hint { (text!(w, "match-set-too-few", what = *what)) } }
            p.hint { (w.text("match-set-hint")) }
        },
    )
}

/// How much a figure grows from one number to the next.
fn step(w: &Words, target: &MatchTarget) -> String {
    let of = |size: f64| match target.unit {
        trade::reading::Unit::Points => w.printed(&quantity::decimal(size, 1)),
        _ => value(w, target.what, size),
    };
    let figure = of(target.a_number.abs());
    // What rounds to nothing has no direction.
    let sign = if figure == of(0.0) {
        ""
    } else if target.a_number < 0.0 {
        "−"
    } else {
        "+"
    };
    format!("{sign}{figure}")
}

fn build_form(
    w: &Words,
    form: &Entries,
    codes: &[String],
    models: &[Model],
    (heads, found): (&[&HeadModel], &MatchedClub),
) -> Markup {
    let timed = found.target(What::SwingInertia).is_some();
    html! {
        form.card method="post" action="/clubs/match" data-keep="" {
            h2 { (w.text("match-set-build")) }
            @for code in codes { input type="hidden" name="club" value=(code); }
            input type="hidden" name="number" value=(form.text("number"));
            div.fields {
                (model_choices(w, form, models, heads))
                @if timed { (check("by_inertia", "1", &w.text("match-set-by-inertia"), form.has("by_inertia", "1"))) }
                (form.field("due", &w.text("sheet-form-due"), Field { kind: "date", required: true, ..Field::default() }))
            }
            div.actions { (button(&Button { label: &w.text("match-set-plan"), big: true, ..Button::default() })) }
        }
    }
}

/// The heads among models; those of one sort of club that have a number, where they are asked for.
pub(super) fn heads<'a>(models: &'a [Model], of: Option<(ClubKind, &str)>) -> Vec<&'a HeadModel> {
    let heads = models.iter().filter_map(|model| if let Model::Head(head) = model { Some(head) } else { None });
    heads
        .filter(|head| of.is_none_or(|(kind, number)| head.club_kind == kind && head.number(number).is_some()))
        .collect()
}

/// Which models a new club is built of.
pub(super) fn model_choices(w: &Words, form: &Entries, models: &[Model], heads: &[&HeadModel]) -> Markup {
    let of = |kind: PartKind, none: bool| -> Vec<(&str, String)> {
        let nothing = none.then(|| ("", "–".to_owned()));
        let named = models.iter().filter(|m| m.kind() == kind).map(|m| (m.code(), m.name().to_owned()));
        nothing.into_iter().chain(named).collect()
    };
    html! {
        (form.select("head", &w.text("club-job-head"), "", &heads.iter().map(|head| (head.code.as_str(), head.name.clone())).collect::<Vec<_>>()))
        (form.select("shaft", &w.text("club-job-shaft"), "", &of(PartKind::Shaft, false)))
        (form.select("grip", &w.text("club-job-grip"), "", &of(PartKind::Grip, false)))
        (form.select("ferrule", &w.text("club-job-ferrule"), "", &of(PartKind::Ferrule, true)))
    }
}

async fn build(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let due = form.date(&w, "due");
    let due = form.needed("due", due, &w.text("club-job-due-needed"));
    let (true, Some(due)) = (form.is_sound(), due) else {
        let mut response = page(&w, &app, &form, None).await?;
        *response.status_mut() = StatusCode::UNPROCESSABLE_ENTITY;
        return Ok(response);
    };
    let models = MatchModels {
        head: form.text("head").to_owned(),
        shaft: form.text("shaft").to_owned(),
        grip: form.text("grip").to_owned(),
        ferrule: form.some("ferrule"),
        by_inertia: form.has("by_inertia", "1"),
    };
    let new = NewMatch { clubs: codes(&form), number: form.text("number").to_owned(), models, due, by };
    match app.new_match_job(new).await {
        Ok(job) => Ok(go_to(&format!("/bench/{}", job.number)).into_response()),
        Err(error) => page(&w, &app, &form, Some(error)).await,
    }
}
