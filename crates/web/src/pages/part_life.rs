//! The life of a part: what was done with it, and what can be done with it now.

use super::entries::{Entries, go_to, in_address};
use super::{Framed, PageResult, Who, failure, failure_status, framed};
use crate::asked::Path;
use crate::problem::EdgeFault;
use crate::reader::Reader;
use crate::units::explicit;
use app::life::{Deed, Given, PartAction, PartDeed, PartFigures, PartLife};
use app::{App, AppError};
use axum::Router;
use axum::extract::{Form, State};
use axum::http::StatusCode;
use axum::response::IntoResponse;
use axum::routing::post;
use look::{
    Button, ButtonKind, Choice, Field, Icon, Nav, Select, Tone, button, check, field, hidden, link_button, rich,
    section, select, tag,
};
use maud::{Markup, html};
use trade::life::LifeStep;
use trade::model::PartKind;
use trade::part::Part;
use trade::part::PartState;
use trade::reading::Unit;
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/stock/parts/{code}/life", post(act))
}

/// What belongs under the figures of a part: who has it, what can be done with it, its life.
pub(super) async fn life_part(w: &Words, app: &App, code: &str) -> Result<Markup, AppError> {
    let life = app.part_life(code).await?;
    let clubs = app.clubs_for(code).await?;
    Ok(html! {
        @if let (Some(job), Some(club)) = (life.job, &life.club) {
            @if life.part.state == PartState::Used {
                p { (rich!(w, "part-life-in-club", |mark, inner| if mark == "a" { html! { a href={ "/records/" (job) } { (inner) } } } else { html! { strong { (inner) } } }, club = w.club_number(club), job = job)) }
            } @else {
                p { (tag(Tone::Care, &w.tell(&life.part.state))) " "
                    (rich!(w, "part-life-for-club", |_, inner| html! { a href={ "/plan/" (job) } { (inner) } }, club = w.club_number(club), job = job, slot = life.slot))
                }
            }
        }
        (deeds(w, &life.part, life.slot.is_some(), &clubs))
        (section(&w.text("part-life-title"), &html! { a href={ "/api/v1/parts/" (in_address(code)) "/life/export" } { (w.text("part-life-csv")) } }, &entries(w, &life)))
    })
}

fn entries(w: &Words, life: &PartLife) -> Markup {
    html! {
        @if life.life.is_empty() { p.small { (w.text("part-life-nothing")) } }
        ul.life { @for line in life.life.iter().rev() {
            @let bad = matches!(line.entry.step, LifeStep::Scrapped);
            li {
                strong.bad[bad] { (w.sentence(&line.told)) }
                @if !line.entry.reason.is_empty() { " “" (line.entry.reason) "”" }
                span.small { (w.moment(line.entry.at)) @if !line.entry.by.is_empty() { ", " (line.entry.by) } }
            }
        } }
    }
}

/// One deed: its summary, its fields, its button.
fn deed(w: &Words, part: &Part, name: &str, fields: &Markup, kind: ButtonKind) -> Markup {
    let label = &w.text(&format!("part-life-do-{name}"));
    html! {
        details { summary { (w.text(&format!("part-life-{name}"))) }
            form.card method="post" action={ "/stock/parts/" (in_address(&part.code)) "/life" } {
                (hidden("deed", name)) (hidden("version", &part.version.to_string()))
                (fields)
                div.actions { (button(&Button { label, kind, ..Button::default() })) }
            }
        }
    }
}

fn deeds(w: &Words, part: &Part, in_job: bool, clubs: &[(i64, i64, String)]) -> Markup {
    let single = part.count.is_none();
    let id = |deed: &str, name: &str| format!("{deed}-{name}");
    let mass = |deed: &str, required: bool| {
        field(&Field {
            name: "mass",
            id: &id(deed, "mass"),
            label: &w.text("part-life-mass"),
            unit: w.mass_sign(),
            inputmode: "decimal",
            required,
            ..Field::default()
        })
    };
    let length = |deed: &str, required: bool| {
        field(&Field {
            name: "length",
            id: &id(deed, "length"),
            label: &w.text("part-life-length"),
            unit: w.length_sign(),
            required,
            ..Field::default()
        })
    };
    let reason = |deed: &str, required: bool| {
        field(&Field {
            name: "reason",
            id: &id(deed, "reason"),
            label: &w.text(if required { "part-life-why-required" } else { "part-life-why" }),
            required,
            ..Field::default()
        })
    };
    let place = |deed: &str| {
        field(&Field {
            name: "place",
            id: &id(deed, "place"),
            label: &w.text("part-life-place"),
            value: &part.place,
            ..Field::default()
        })
    };
    let lose = |text: &str| html! { @if in_job && part.state == PartState::Held { p { (check("lose_plan", "1", &w.text(text), false)) } } };
    let shaft = part.kind == PartKind::Shaft;
    html! {
        div.deeds {
            @if !clubs.is_empty() {
                (deed(w, part, "reserve", &reserve_for(w, clubs), ButtonKind::Quiet))
            }
            @if part.state == PartState::Held && single {
                (deed(w, part, "return", &html! { div.fields { (place("return")) (reason("return", false)) }
                    (lose("part-life-lose-plan")) }, ButtonKind::Quiet))
            }
            @if matches!(part.state, PartState::Pulled | PartState::Rejected | PartState::Ordered) {
                (deed(w, part, "restore", &html! { div.fields { (mass("restore", part.state == PartState::Pulled)) (place("restore")) (reason("restore", false)) } }, ButtonKind::Quiet))
            }
            @if matches!(part.state, PartState::Used | PartState::Held) && single && in_job {
                (deed(w, part, "pull", &html! { div.fields {
                    (mass("pull", false))
                    @if shaft { (length("pull", false)) }
                    (place("pull")) (reason("pull", false))
                }
                    p { (check("clean", "1", &w.text("part-life-clean"), false)) }
                    (lose("part-life-take-apart")) }, ButtonKind::Quiet))
            }
            @if shaft && matches!(part.state, PartState::Free | PartState::Held | PartState::Pulled) {
                (deed(w, part, "miscut", &html! { div.fields {
                    (length("miscut", true))
                    (field(&Field { name: "off_tip", id: "miscut-off_tip", label: &w.text("part-life-off-tip"), unit: w.length_sign(), hint: &w.text("part-life-off-tip-hint"), ..Field::default() }))
                    (mass("miscut", true)) (reason("miscut", false))
                }
                    (lose("part-life-lose-plan")) }, ButtonKind::Quiet))
            }
            @if part.state == PartState::Free {
                (deed(w, part, "use", &reason("use", true), ButtonKind::Quiet))
            }
            @if matches!(part.state, PartState::Free | PartState::Held | PartState::Pulled | PartState::Ordered) {
                (deed(w, part, "scrap", &html! { (reason("scrap", true)) (lose("part-life-lose-plan")) }, ButtonKind::Danger))
            }
        }
    }
}

/// The clubs that it could be reserved for.
fn reserve_for(w: &Words, clubs: &[(i64, i64, String)]) -> Markup {
    let choices: Vec<(String, String)> = clubs
        .iter()
        .map(|(job, slot, number)| {
            (
                format!("{job}:{slot}"),
                text!(w, "part-life-club", job = *job, number = w.club_number(number), slot = *slot),
            )
        })
        .collect();
    select(&Select {
        name: "club",
        label: &w.text("part-life-for"),
        hint: &w.text("part-life-for-hint"),
        choices: choices.iter().map(|(value, label)| Choice { value, label: label.into(), chosen: false }).collect(),
        ..Select::default()
    })
}

async fn act(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path(code): Path<String>,
    Form(fields): Form<Vec<(String, String)>>,
) -> PageResult {
    let mut form = Entries::new(fields);
    let (length_mm, off_the_tip_mm) = (form.length_mm(&w, "length"), form.length_mm(&w, "off_tip"));
    let mass_typed = form.some("mass").map(|typed| explicit(&w, Unit::Gram, &typed));
    // Only for its mistake; the text itself is kept with the part.
    let _ = form.mass_g(&w, "mass");
    let (job, slot) = form.text("club").split_once(':').map_or((None, None), |(j, s)| (j.parse().ok(), s.parse().ok()));
    let here = format!("/stock/parts/{}", in_address(&code));
    let Some(deed) = PartDeed::from_key(form.text("deed")).filter(|_| form.is_sound()) else {
        let first =
            form.mistakes().next().and_then(|name| form.error(name)).map(|text| text.trim_end_matches('.').to_owned());
        let fault = first.map_or(EdgeFault::NothingChosen, |what| EdgeFault::Mistyped { what });
        let error = AppError::invalid(fault);
        return refused(&w, &app, &code, &error, StatusCode::UNPROCESSABLE_ENTITY).await;
    };
    let given = Given {
        job,
        slot,
        mass_typed,
        off_the_tip_mm,
        clean: form.has("clean", "1"),
        place: form.some("place"),
        lose_plan: form.has("lose_plan", "1"),
        reason: form.text("reason").to_owned(),
        figures: PartFigures { length_mm, ..PartFigures::default() },
    };
    let version = form.text("version").parse().ok();
    let done = match Deed::read(&code, deed, given) {
        Ok(deed) => app.part_deed(&code, &PartAction { deed, version, by }).await,
        Err(error) => Err(error),
    };
    match done {
        Ok(_) => Ok(go_to(&here).into_response()),
        Err(error) => refused(&w, &app, &code, &error, failure_status(&error)).await,
    }
}

/// The part with its deeds again, and over them why the last one was not done.
async fn refused(w: &Words, app: &App, code: &str, error: &AppError, status: StatusCode) -> PageResult {
    let body = html! {
        (life_part(w, app, code).await?)
        div.actions { (link_button(&format!("/stock/parts/{}", in_address(code)), &w.text("part-life-see"), ButtonKind::Quiet, Some(Icon::Back), "")) }
    };
    let view = Framed { title: code, active: Nav::Stock, notice: Some(failure(w, error)), body, ..Framed::default() };
    Ok((status, framed(w, app, view).await?).into_response())
}
