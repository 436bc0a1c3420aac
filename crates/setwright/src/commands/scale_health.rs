//! How the shop's scales stand: checks, trust, calibration, gauge studies.

use super::print::table;
use super::{print_json, reader};
use crate::config::{Database, ScaleCommand};
use crate::failure::CommandFault;
use crate::failure::Failure;
use crate::terminal::line;
use app::gauge_study::StudyView;
use app::scale_health::{CheckAnswer, NewCalibration, NewCheck, ScaleHealth, TrustWord};
use fact::Fact;
use words::{Words, text};

const fn database(command: &ScaleCommand) -> &Database {
    match command {
        ScaleCommand::Trust(word) | ScaleCommand::Distrust(word) => &word.signed.database,
        ScaleCommand::Health { database, .. }
        | ScaleCommand::Check { database, .. }
        | ScaleCommand::Calibrated { database, .. }
        | ScaleCommand::Studies { database, .. } => database,
    }
}

/// Whether a command answers in JSON.
pub const fn in_json(command: &ScaleCommand) -> bool {
    database(command).json
}

/// Shows or keeps something of a scale.
///
/// # Errors
/// No such scale, weight or study; an entry that cannot be; one that is asked about first; what the store says.
pub async fn scale_health(command: &ScaleCommand) -> Result<(), Failure> {
    let json = in_json(command);
    let app = database(command).open().await?;
    match command {
        ScaleCommand::Health { scale: None, .. } => {
            let all = app.scales_health().await?;
            app.close().await;
            if json {
                return print_json(&all);
            }
            tell_all(&all);
        }
        ScaleCommand::Health { scale: Some(scale), .. } => {
            let health = app.scale_health(scale).await?;
            app.close().await;
            return tell_one(&health, json);
        }
        ScaleCommand::Check { scale, shows, weight, as_it_is, request_key, by, .. } => {
            let new = NewCheck {
                standard: weight.clone(),
                typed: shows.clone(),
                confirmed: *as_it_is,
                at: None,
                by: by.clone(),
                request_key: request_key.clone(),
            };
            let answer = app.check_scale(scale, &new).await?;
            app.close().await;
            return tell_check(&answer, json);
        }
        ScaleCommand::Trust(word) | ScaleCommand::Distrust(word) => {
            let trusted = matches!(command, ScaleCommand::Trust(_));
            let said = TrustWord { trusted, reason: word.reason.clone(), by: word.signed.by.clone() };
            let health = app.word_on_scale(&word.scale, &said).await?;
            app.close().await;
            return tell_one(&health, json);
        }
        ScaleCommand::Calibrated { scale, on, by_whom, next_due, note, adjusted, by, .. } => {
            let new = NewCalibration {
                on: *on,
                by_whom: by_whom.clone(),
                next_due: *next_due,
                note: note.clone(),
                adjusted: *adjusted,
                by: by.clone(),
            };
            let health = app.calibrated(scale, &new).await?;
            app.close().await;
            return tell_one(&health, json);
        }
        ScaleCommand::Studies { study: Some(study), .. } => {
            let view = app.study(study).await?;
            app.close().await;
            if json {
                return print_json(&view);
            }
            tell_studies(std::slice::from_ref(&view));
        }
        ScaleCommand::Studies { study: None, .. } => {
            let all = app.studies().await?;
            app.close().await;
            if json {
                return print_json(&all);
            }
            tell_studies(&all);
        }
    }
    Ok(())
}

fn state(w: &Words, health: &ScaleHealth) -> String {
    w.text(match (health.trust.trusted, health.standards.is_empty(), health.checked_today) {
        (false, ..) => "scale-state-not-trusted",
        (true, true, _) => "scale-state-no-weight",
        (true, false, true) => "scale-state-checked",
        (true, false, false) => "scale-state-not-checked",
    })
}

/// What it shows too much, with its band; none where it was never checked.
fn error(w: &Words, health: &ScaleHealth) -> Option<String> {
    health.offset.as_ref().map(|o| banded(w, health, o.offset, o.offset_band))
}

fn banded(w: &Words, health: &ScaleHealth, value: f64, band: f64) -> String {
    let amount = web::gauge_amount(health.gauge.measures);
    format!("{} ± {}", w.signed_amount(amount, value, 2), w.amount_figure(amount, band, 2))
}

fn tell_all(all: &[ScaleHealth]) {
    let w = reader();
    let rows: Vec<Vec<String>> = all
        .iter()
        .map(|h| {
            let last = h.last_check.as_ref().map_or_else(|| w.text("scale-command-never"), |e| w.date(e.day));
            let error = error(&w, h).unwrap_or_else(|| "–".to_owned());
            vec![h.gauge.key.clone(), h.gauge.name.clone(), state(&w, h), last, error]
        })
        .collect();
    let heads = ["key", "scale", "state", "last", "error"].map(|head| w.text(&format!("scale-command-column-{head}")));
    table(&heads, &rows);
    for said in all.iter().filter_map(|h| h.trust.said.as_ref()) {
        line!("{}", w.tell(said));
    }
}

fn tell_one(health: &ScaleHealth, json: bool) -> Result<(), Failure> {
    if json {
        return print_json(health);
    }
    let w = reader();
    line!("{}", text!(w, "scale-command-state", scale = health.gauge.name, state = state(&w, health)));
    if let Some(said) = &health.trust.said {
        line!("{}", w.tell(said));
        for reason in &health.trust.reasons {
            line!("  {}", w.sentence(&reason.finding));
        }
    }
    match error(&w, health) {
        Some(error) => line!("{}", text!(w, "scale-command-error", error = error)),
        None => line!("{}", w.text("scale-command-error-unknown")),
    }
    if let Some(belief) = &health.belief {
        let error = banded(&w, health, belief.offset, belief.offset_band);
        line!("{}", text!(w, "scale-command-jobs", error = error, n = belief.checks));
    }
    for standard in &health.standards {
        let value = health.gauge.reading(standard.value);
        let allowed = health.gauge.amount(standard.tolerance_on(&health.gauge));
        let (key, name) = (&standard.key, &standard.name);
        line!("{}", text!(w, "scale-command-weight", key = key, standard = name, value = value, allowed = allowed));
    }
    Ok(())
}

fn tell_check(answer: &CheckAnswer, json: bool) -> Result<(), Failure> {
    let w = reader();
    if json {
        print_json(answer)?;
    }
    if let Some(asked) = &answer.question {
        let (what, next) = (asked.said.told(), asked.next.told());
        let asked = Failure::conflict(CommandFault::CheckQuestion { what, next });
        // In JSON the question is the whole answer.
        return Err(if json { asked.answered() } else { asked });
    }
    if json {
        return Ok(());
    }
    if answer.repeated {
        line!("{}", w.text("scale-command-repeated"));
    }
    tell_one(&answer.health, false)
}

fn tell_studies(all: &[StudyView]) {
    let w = reader();
    if all.is_empty() {
        line!("{}", w.text("study-command-none"));
        return;
    }
    for study in all {
        let (id, scale, begun_at) = (&study.id, &study.gauge.name, study.begun_at);
        let line = text!(
            w,
            "study-command-one",
            id = id,
            scale = scale,
            begun_at = begun_at,
            done = study.done,
            of = study.of
        );
        line!("{line}");
        if let Some(result) = &study.result {
            line!("  {}", w.tell(&result.found));
            if let Some(next) = &result.next {
                line!("  {}", w.tell(next));
            }
        }
    }
}
