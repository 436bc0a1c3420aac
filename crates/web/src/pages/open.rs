//! What is open before a step that cannot be undone: the one list of it, one touch for each, one reason for all; and the
//! override of a cure, which belongs to its batch.

use super::entries::{go_to, in_address};
use super::{PageResult, Who, say};
use crate::asked::{Filled, Path};
use crate::reader::Reader;
use app::App;
use app::job::JobFile;
use app::open::PassOpen;
use axum::Router;
use axum::extract::State;
use axum::response::IntoResponse;
use axum::routing::post;
use bench::club_state::ClubState;
use bench::glue::{Batch, Gate, glued_from};
use bench::open_point::{OpenClub, OpenPoint, PassedBy};
use look::{Button, ButtonKind, Choice, Field, Icon, Tone, button, field, hidden, icon, radios, section, tag};
use maud::{Markup, html};
use serde::Deserialize;
use trade::step::{Step, Strength};
use words::{Words, text};

pub(super) fn router() -> Router<App> {
    Router::new().route("/bench/{job}/open/{step}", post(pass))
}

#[derive(Debug, Deserialize)]
struct PassForm {
    #[serde(default)]
    reason: String,
}

async fn pass(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, step)): Path<(i64, String)>,
    Filled(form): Filled<PassForm>,
) -> PageResult {
    let pass = PassOpen { step: step.clone(), slots: None, reason: form.reason.clone(), by };
    match app.pass_all_open(job, &pass).await {
        Ok(_) => Ok(go_to(&format!("/bench/{job}/grid/{}", in_address(&step))).into_response()),
        Err(error) => super::grid::open_refused(&w, &app, job, &step, form.reason, error).await,
    }
}

/// What is open on the clubs before a step, each with the one touch that leads to where it is put right; and one reason
/// for going on with all of it.
pub(super) fn open_part(w: &Words, file: &JobFile, step: &Step, open: &[OpenClub], reason: &str) -> Markup {
    if open.is_empty() {
        return html! {};
    }
    let asked = open.iter().filter(|club| club.passed.is_none()).count();
    let action = format!("/bench/{}/open/{}", file.job.number, step.key);
    section(
        &text!(w, "grid-open-before", step = step.label),
        &html! { span.count { (text!(w, "open-of", n = open.len() as i64, clubs = file.job.clubs.len() as i64)) } },
        &html! {
            ul.plain.open-list { @for club in open { (open_club(w, file.job.number, club)) } }
            // The glue has the reason in its own form, with the clubs that go into the cup.
            @if asked > 0 && !step.glues {
                form.pass-open method="post" action=(action) {
                    (field(&Field {
                        name: "reason",
                        label: &text!(w, "open-why-all", n = asked as i64),
                        value: reason,
                        hint: &w.text("open-why-hint"),
                        required: true,
                        ..Field::default()
                    }))
                    (button(&Button {
                        label: &text!(w, "open-go-on", n = asked as i64),
                        kind: ButtonKind::Danger,
                        ..Button::default()
                    }))
                }
            }
        },
    )
}

/// A club with what is open on it.
fn open_club(w: &Words, job: i64, club: &OpenClub) -> Markup {
    html! { li {
        a href={ "/bench/" (job) "/" (club.slot) } { (w.club_number(&club.number)) }
        div { (open_points(w, job, club)) }
    } }
}

/// What is open on a club, a line each with its touch.
pub(super) fn open_points(w: &Words, job: i64, club: &OpenClub) -> Markup {
    html! {
        @for ((point, fact), step) in club.points.iter().zip(&club.facts).zip(&club.steps) {
            p.point {
                span.doubt[matches!(point, OpenPoint::Doubted { .. })] {
                    @if let OpenPoint::Doubted { .. } = point { (icon(Icon::Doubt)) " " }
                    (w.told(fact))
                }
                a.button.quiet href=(place(job, club.slot, point, step)) { (w.text(touch(point))) }
            }
        }
        @if let Some(passed) = &club.passed { (passed_part(w, passed)) }
    }
}

/// The same as touches beside each other, each with what is open for its words.
pub(super) fn open_touches(w: &Words, job: i64, club: &OpenClub) -> Markup {
    html! {
        @for ((point, fact), step) in club.points.iter().zip(&club.facts).zip(&club.steps) {
            a.button.quiet.doubt[matches!(point, OpenPoint::Doubted { .. })] href=(place(job, club.slot, point, step)) {
                @if let OpenPoint::Doubted { .. } = point { (icon(Icon::Doubt)) }
                span { (w.told(fact)) }
            }
        }
        @if let Some(passed) = &club.passed { (passed_part(w, passed)) }
    }
}

fn passed_part(w: &Words, passed: &PassedBy) -> Markup {
    html! { p.small { (tag(Tone::Care, &w.text("open-passed"))) " "
    (text!(w, "open-passed-by", reason = passed.reason, by = passed.by, at_at = passed.at)) } }
}

/// Where something open is put right.
fn place(job: i64, slot: i64, point: &OpenPoint, step: &str) -> String {
    match point {
        OpenPoint::Glued { .. } | OpenPoint::NotCured { .. } => "/glue".to_owned(),
        OpenPoint::NotGlued => format!("/glue/new?job={job}"),
        _ => format!("/bench/{job}/{slot}?step={}", in_address(step)),
    }
}

/// What the touch is called.
const fn touch(point: &OpenPoint) -> &'static str {
    match point {
        OpenPoint::Doubted { .. } => "open-read-again",
        OpenPoint::Unread { .. } => "open-read",
        OpenPoint::OffTarget { .. } => "open-choose",
        OpenPoint::Glued { .. } | OpenPoint::NotCured { .. } | OpenPoint::NotGlued => "open-glue",
        OpenPoint::Off { .. }
        | OpenPoint::BeyondBending { .. }
        | OpenPoint::CutShort { .. }
        | OpenPoint::Marked { .. } => "open-look",
    }
}

/// In words what is open on a club, for its row: “swing weight at “Dry” is doubted”; nothing once it was passed over.
pub(super) fn row_words(w: &Words, open: Option<&OpenClub>) -> Option<String> {
    open.filter(|club| club.passed.is_none()).map(|club| say::open(w, club))
}

/// The batches that clubs of a job wait for at a step, each with its override.
pub(super) fn waiting_part(w: &Words, file: &JobFile, states: &[ClubState], step: &Step, grid: &str) -> Markup {
    let mut batches: Vec<(&Batch, i64)> = Vec::new();
    for state in states {
        let here = state.steps.iter().find(|s| s.key == step.key);
        if here.is_some_and(|s| matches!(s.gate, Gate::Waits { .. }))
            && let Some(batch) = glued_from(&file.batches, &state.club)
            && batches.iter().all(|(other, _)| other.number != batch.number)
        {
            batches.push((batch, state.slot));
        }
    }
    html! { @for (batch, slot) in batches {
        (override_part(w, &Override {
            file, step, batch: Some(batch), more: &[("grid", grid)],
            action: format!("/bench/{}/{slot}/let-pass", file.job.number),
        }))
    } }
}

/// An override that is offered.
pub(super) struct Override<'a> {
    pub file: &'a JobFile,
    pub step: &'a Step,
    /// The batch that it belongs to; none for a club that is in no batch.
    pub batch: Option<&'a Batch>,
    /// Where its form is sent.
    pub action: String,
    /// Further hidden fields.
    pub more: &'a [(&'a str, &'a str)],
}

/// An override of a cure: for the whole batch, with one reason.
pub(super) fn override_part(w: &Words, of: &Override<'_>) -> Markup {
    let numbers = |batch: &Batch| -> Vec<String> {
        batch
            .clubs
            .iter()
            .filter_map(|id| of.file.job.club(id))
            .map(|club| w.club_number(&club.target.number))
            .collect()
    };
    html! {
        details {
            summary { @match of.batch {
                Some(batch) => { (text!(w, "open-override-batch", batch = batch.number)) }
                None => { (w.text("bench-override")) }
            } }
            form method="post" action=(of.action) {
                (hidden("step", &of.step.key))
                @for (name, value) in of.more { (hidden(name, value)) }
                @if let Some(batch) = of.batch {
                    (hidden("batch", &batch.number.to_string()))
                    p.small { (text!(w, "open-override-means", batch = batch.number, clubs = numbers(batch))) }
                    (strengths(w, of.step.needs))
                }
                (field(&Field { name: "reason", label: &w.text("bench-why"), required: true, ..Field::default() }))
                (button(&Button { label: &w.text("bench-override"), kind: ButtonKind::Danger, ..Button::default() }))
            }
        }
    }
}

/// How strong the joints of a batch are taken to be; no less than is needed.
pub(super) fn strengths(w: &Words, needs: Strength) -> Markup {
    if needs == Strength::Full {
        return hidden("strength", needs.key());
    }
    let choices = [Strength::Handling, Strength::Full].map(|strength| Choice {
        value: strength.key(),
        label: w.tell(&strength).into(),
        chosen: strength == needs,
    });
    radios("strength", &w.text("open-override-strength"), &choices)
}
