//! The soft side of a club's shaft: readings around it, what they say, and the finished club in two planes.

use super::entries::{Entries, go_to, plain_number};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::Path;
use crate::reader::Reader;
use app::soft_side::{FindSoftSide, ReadTwoPlanes};
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::get;
use clubphysics::soft_side::SoftSideInput;
use fact::Told;
use look::{Button, ButtonKind, Field, Nav, Notice, button, hidden, section};
use maud::{Markup, html};
use words::{Words, text};

/// Angles of the form: twelve, 30° apart.
const ANGLES: usize = 12;
const STEP_DEG: f64 = 30.0;

pub(super) fn router() -> Router<App> {
    Router::new().route("/bench/{job}/{slot}/soft-side", get(show).post(find))
}

async fn show(State(app): State<App>, Reader(w): Reader, Path((job, slot)): Path<(i64, i64)>) -> PageResult {
    let form = Entries::new(vec![("kind".to_owned(), "frequency".to_owned())]);
    page(&w, &app, (job, slot), &form, None, None, StatusCode::OK).await
}

async fn find(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Form(sent): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(sent);
    let keep = form.text("deed") == "keep";
    let answer: Result<Option<Told>, AppError> = if form.text("form") == "planes" {
        let (along, across) = (form.cpm(&w, "along"), form.cpm(&w, "across"));
        let along = form.needed("along", along, &w.text("soft-side-along"));
        let across = form.needed("across", across, &w.text("soft-side-across"));
        match along.zip(across) {
            Some((along_line_cpm, heel_toe_cpm)) => {
                let read = ReadTwoPlanes { along_line_cpm, heel_toe_cpm, by };
                app.two_planes(job, slot, &read).await.map(|read| Some(read.says))
            }
            None => Ok(None),
        }
    } else {
        let sweep = Some(sweep_of(&w, &mut form));
        if form.is_sound() {
            let asked = FindSoftSide { sweep, pluck: None, keep, by };
            app.find_soft_side(job, slot, &asked).await.map(|kept| Some(kept.found.says))
        } else {
            Ok(None)
        }
    };
    match answer {
        Ok(Some(_)) if keep => Ok(go_to(&format!("/bench/{job}/{slot}")).into_response()),
        Ok(Some(says)) => page(&w, &app, (job, slot), &form, Some(&says), None, StatusCode::OK).await,
        Ok(None) => {
            let notice = form.notice(&w);
            page(&w, &app, (job, slot), &form, None, notice, StatusCode::UNPROCESSABLE_ENTITY).await
        }
        Err(error) => {
            let (notice, status) = (failure(&w, &error), failure_status(&error));
            page(&w, &app, (job, slot), &form, None, Some(notice), status).await
        }
    }
}

/// The readings of the form; an angle without one is left out.
fn sweep_of(w: &Words, form: &mut Entries) -> SoftSideInput {
    let kind = form.text("kind").to_owned();
    let fixed = if kind == "force" { form.length_mm(w, "fixed") } else { number(w, form, "fixed") };
    let read: Vec<(f64, f64)> = (0..ANGLES)
        .filter_map(|i| {
            let name = format!("at{i}");
            let value = if kind == "deflection" { form.length_mm(w, &name) } else { number(w, form, &name) };
            Some((STEP_DEG * i as f64, value?))
        })
        .collect();
    let (angles_deg, values) = read.into_iter().unzip();
    let mut sweep = SoftSideInput { angles_deg, ..SoftSideInput::default() };
    match kind.as_str() {
        "deflection" => (sweep.deflections_mm, sweep.fixed_force_n) = (Some(values), fixed),
        "force" => (sweep.forces_n, sweep.fixed_deflection_mm) = (Some(values), fixed),
        _ => sweep.frequencies_cpm = Some(values),
    }
    sweep
}

/// A plain number; none where the field is empty, or not one.
fn number(w: &Words, form: &mut Entries, name: &str) -> Option<f64> {
    let text = form.text(name).to_owned();
    if text.is_empty() {
        return None;
    }
    match plain_number(&text) {
        Ok(value) => Some(value),
        Err(fault) => {
            form.refuse(name, w.tell(&fault));
            None
        }
    }
}

async fn page(
    w: &Words,
    app: &App,
    (job, slot): (i64, i64),
    form: &Entries,
    says: Option<&Told>,
    notice: Option<Notice>,
    status: StatusCode,
) -> PageResult {
    let file = app.job_file(job).await?;
    let club = file.club_at(slot)?;
    let said = |of: &str| html! { @if let Some(says) = says.filter(|_| form.text("form") == of) { p { strong { (w.told(says)) } } } };
    let body = html! {
        (said("sweep"))
        (sweep_form(w, form))
        (section(&w.text("soft-side-planes-title"), &html! {}, &html! { (said("planes")) (planes_form(w, form)) }))
    };
    let title = text!(w, "soft-side-page", club = w.club_number(&club.target.number));
    let crumb = text!(w, "today-job-number", job = job);
    let view = Framed { title: &title, active: Nav::Bench, crumb, notice, body, ..Framed::default() };
    Ok((status, framed(w, app, view).await?).into_response())
}

fn sweep_form(w: &Words, form: &Entries) -> Markup {
    let kinds: Vec<(&str, String)> =
        ["frequency", "deflection", "force"].map(|kind| (kind, w.text(&format!("soft-side-kind-{kind}")))).to_vec();
    html! {
        form.card method="post" {
            (hidden("form", "sweep"))
            p.hint { (w.text("soft-side-about")) }
            div.fields {
                (form.select("kind", &w.text("soft-side-kind"), "", &kinds))
                (form.field("fixed", &w.text("soft-side-fixed"), Field { hint: &w.text("soft-side-fixed-hint"), inputmode: "decimal", ..Field::default() }))
            }
            div.fields {
                @for i in 0..ANGLES {
                    (form.field(&format!("at{i}"), &text!(w, "soft-side-at", at_deg = STEP_DEG * i as f64), Field { inputmode: "decimal", ..Field::default() }))
                }
            }
            div.actions {
                (button(&Button { label: &w.text("soft-side-show"), name: "deed", value: "show", ..Button::default() }))
                (button(&Button { label: &w.text("soft-side-keep"), name: "deed", value: "keep", kind: ButtonKind::Quiet, ..Button::default() }))
            }
        }
    }
}

fn planes_form(w: &Words, form: &Entries) -> Markup {
    let cpm = || Field { unit: "cpm", inputmode: "decimal", ..Field::default() };
    html! {
        form.card method="post" {
            (hidden("form", "planes"))
            p.hint { (w.text("soft-side-planes-about")) }
            div.fields {
                (form.field("along", &w.text("soft-side-along"), cpm()))
                (form.field("across", &w.text("soft-side-across"), cpm()))
            }
            div.actions { (button(&Button { label: &w.text("soft-side-check"), kind: ButtonKind::Quiet, ..Button::default() })) }
        }
    }
}
