//! A code scanned at the bench: the field for it, and what is said of it.

use super::beside;
use super::entries::{go_to, in_address, query};
use super::stock_weigh::part_address;
use super::{PageError, PageResult, Who};
use crate::asked::{Filled, Path};
use crate::reader::Reader;
use app::scan::{PartSaid, ScanAt, ScanSaid};
use app::{App, AppError, Kind};
use axum::extract::State;
use axum::response::IntoResponse;
use bench::scan::ScannedPart;
use look::{Button, Icon, button, hidden, icon};
use maud::{Markup, html};
use serde::Deserialize;
use words::{Words, text};

#[derive(Debug, Deserialize)]
pub(super) struct ScanForm {
    #[serde(default)]
    code: String,
    step: String,
    #[serde(default)]
    sure: String,
}

/// Scans at a club. What is said of it stands on the page that this leads to, so that loading it anew scans nothing.
pub(super) async fn scan(
    State(app): State<App>,
    Reader(w): Reader,
    Who(by): Who,
    Path((job, slot)): Path<(i64, i64)>,
    Filled(form): Filled<ScanForm>,
) -> PageResult {
    let scan = ScanAt { code: form.code.clone(), step: form.step.clone(), sure: form.sure == "1", by };
    let here = |more: &[(&str, &str)]| {
        format!("/bench/{job}/{slot}{}", query(&[&[("step", form.step.as_str())][..], more].concat()))
    };
    let code = form.code.trim();
    let to = match app.scan_at(job, slot, &scan).await {
        Ok(ScanSaid::Club { job, slot }) => format!("/bench/{job}/{slot}"),
        Ok(ScanSaid::Part(part)) if part.put_in => here(&[("scanned", code), ("put", "1")]),
        Ok(ScanSaid::Part(_)) => here(&[("scanned", code)]),
        Err(error) if error.kind() == Kind::NotFound => here(&[("scanned", code)]),
        Err(error) => return super::bench::again(&w, &app, job, slot, form.step, &error).await,
    };
    Ok(go_to(&to).into_response())
}

/// What is said of a code that was scanned at this club.
pub(super) async fn scanned(
    w: &Words,
    app: &App,
    (job, slot): (i64, i64),
    step: &str,
    (code, put): (&str, bool),
) -> Result<Markup, PageError> {
    let found = match app.look_at_scan(job, slot, step, code).await {
        Ok(ScanSaid::Part(part)) => part,
        Ok(ScanSaid::Club { job, slot }) => {
            return Ok(html! { p.notice { a href={ "/bench/" (job) "/" (slot) } { (w.text("scan-club-of-card")) } } });
        }
        Err(error) if error.kind() == Kind::NotFound => return Ok(unknown(w, &error)),
        Err(error) => return Err(error.into()),
    };
    // Looked at anew, a part that was put in is there already.
    let (says, next) = if put && found.is == ScannedPart::Already {
        let club = app.job_file(job).await?.club_at(slot)?.target.name();
        found.is.says(&found.part, &club, true)
    } else {
        (found.fact.clone(), found.next.clone())
    };
    let good = found.is == ScannedPart::Already;
    Ok(html! {
        div.notice.good[good].care[!good] role="status" data-scan-said=(found.part.code) {
            p { strong { (w.tell(&says)) } @if let Some(next) = next { " " (w.tell(&next)) } }
            div.actions { (what_next(w, &found, (job, slot), step)) }
        }
    })
}

fn unknown(w: &Words, error: &AppError) -> Markup {
    html! { p.notice.care role="alert" data-scan-said="" { (beside(w, &error.refusal())) } }
}

fn what_next(w: &Words, found: &PartSaid, (job, slot): (i64, i64), step: &str) -> Markup {
    html! {
        @match &found.is {
            ScannedPart::Takes { .. } => {
                form.inline method="post" action={ "/bench/" (job) "/" (slot) "/scan" } {
                    (hidden("code", &found.part.code)) (hidden("step", step)) (hidden("sure", "1"))
                    (button(&Button { label: &w.text("scan-put-it-in"), ..Button::default() }))
                }
            }
            ScannedPart::OtherClub { job: Some(job), slot: Some(slot), club: Some(club) } => {
                a.button.quiet href={ "/bench/" (job) "/" (slot) "?step=" (in_address(step)) } { (text!(w, "scan-to-club", club = club)) }
            }
            _ => {}
        }
        a.button.quiet href=(part_address(&found.part.code)) { (text!(w, "scan-open-part", part = found.part.code)) }
    }
}

/// The field for a hand scanner at a club; scans made anywhere on the page come to it as well.
pub(super) fn scan_here(w: &Words, (job, slot): (i64, i64), step: &str) -> Markup {
    html! {
        form.search.scan method="post" action={ "/bench/" (job) "/" (slot) "/scan" } data-scan-here {
            (hidden("step", step))
            label.hidden for="scan" { (w.text("scan-label")) }
            input #scan name="code" placeholder=(w.text("scan-placeholder")) autocomplete="off" autocapitalize="off" spellcheck="false" required;
            button.button.quiet type="submit" { (icon(Icon::Scan)) span { (w.text("scan-go")) } }
        }
    }
}
