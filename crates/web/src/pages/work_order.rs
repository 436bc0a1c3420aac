//! What is worth doing before a set is glued: measurements, another order of work, the order of the grips. A part of the
//! plan, of Today and of the grid.

use app::job::JobFile;
use app::{App, AppError};
use bench::offer::Measure;
use bench::work_order::{GripsInTurn, ProposedOrder, SetAdvice};
use look::{Button, ButtonKind, Tone, button, hidden, section, tag};
use maud::{Markup, html};
use trade::job::JobState;
use words::{Words, text};

/// Before the glue, on the page of a plan: the measurements with what they bring together, and the order of work.
pub(super) async fn plan_part(w: &Words, app: &App, file: &JobFile) -> Result<Markup, AppError> {
    if file.job.state != JobState::Planned {
        return Ok(html! {});
    }
    let advice = app.set_advice(file.job.number).await?;
    Ok(advice.map_or_else(|| html! {}, |advice| before_glue(w, file.job.number, &advice)))
}

fn before_glue(w: &Words, job: i64, advice: &SetAdvice) -> Markup {
    let bundle = &advice.bundle;
    let nothing = bundle.offers.is_empty() && advice.proposed.is_none() && advice.proposed_with_bundle.is_none();
    if nothing && advice.assumes.is_none() {
        return html! {};
    }
    let line = |proposed: &ProposedOrder, says: String| {
        html! {
            p {
                @if proposed.insisted { (tag(Tone::Care, &w.text("order-insisted"))) " " }
                (says) "."
            }
        }
    };
    section(
        &w.text("order-title"),
        &html! {},
        &html! {
            @if let Some(worth) = &bundle.worth {
                p { strong { (w.sentence(worth)) } }
                ol { @for offer in &bundle.offers { li { (w.tell(&offer.fact)) } } }
            }
            @if let Some(proposed) = &advice.proposed { (line(proposed, w.tell(&proposed.fact))) }
            @if let Some(proposed) = &advice.proposed_with_bundle {
                (line(proposed, text!(w, "order-worth-after-bundle", says = &proposed.fact)))
            }
            @if let Some(assumes) = &advice.assumes {
                p.small { (w.tell(assumes)) " " a href="/learned#told" { (w.text("today-guide-told")) } }
            }
            @if advice.proposed.is_some() || advice.proposed_with_bundle.is_some() {
                form.inline method="post" action={ "/plan/" (job) "/one-batch" } {
                    (hidden("measure", Measure::Pilot.key()))
                    (button(&Button { label: &w.text("order-decline"), kind: ButtonKind::Quiet, ..Button::default() }))
                }
            }
        },
    )
}

/// One line for Today: the most that is worth doing before the next set is glued.
pub(super) fn today_line(w: &Words, advice: &SetAdvice) -> Option<String> {
    let proposed = advice.proposed.as_ref();
    if let Some(insisted) = proposed.filter(|p| p.insisted && advice.bundle.offers.is_empty()) {
        return Some(w.sentence(&insisted.fact));
    }
    let worth = advice.bundle.worth.as_ref().map(|worth| w.sentence(worth));
    worth.or_else(|| proposed.map(|p| w.sentence(&p.fact)))
}

/// In which order the grips of the clubs that have cured are best chosen.
pub(super) fn grips_part(w: &Words, grips: Option<&GripsInTurn>) -> Markup {
    let Some(says) = grips.and_then(|grips| grips.says.as_ref()) else { return html! {} };
    section(&w.text("order-title-grips"), &html! {}, &html! { p { (w.sentence(says)) } })
}
