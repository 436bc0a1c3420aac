//! How the shop's scales stand: checks, trust, calibration, gauge studies.

use super::print::table;
use super::print_json;
use crate::config::{Database, ScaleCommand};
use crate::failure::CommandFault;
use crate::failure::Failure;
use app::gauge_study::StudyView;
use app::scale_health::{CheckAnswer, NewCalibration, NewCheck, ScaleHealth, TrustWord};
use quantity::decimal;
use trade::gauge::{print_error, print_value};

const fn database(command: &ScaleCommand) -> &Database {
    match command {
        ScaleCommand::Trust(word) | ScaleCommand::Distrust(word) => &word.database,
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
            let said = TrustWord { trusted, reason: word.reason.clone(), by: word.by.clone() };
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

fn state(health: &ScaleHealth) -> String {
    match (health.trust.trusted, health.standards.is_empty(), health.checked_today) {
        (false, ..) => "not trusted",
        (true, true, _) => "no check weight",
        (true, false, true) => "checked today",
        (true, false, false) => "not checked today",
    }
    .to_owned()
}

fn offset(health: &ScaleHealth) -> String {
    health.offset.as_ref().map_or_else(
        || "–".to_owned(),
        |o| format!("{} ± {} {}", decimal(o.offset, 2), decimal(o.offset_band, 2), health.unit),
    )
}

fn tell_all(all: &[ScaleHealth]) {
    let rows: Vec<Vec<String>> = all
        .iter()
        .map(|h| {
            let last = h.last_check.as_ref().map_or_else(|| "never".to_owned(), |e| e.day.to_string());
            vec![h.gauge.key.clone(), h.gauge.name.clone(), state(h), last, offset(h)]
        })
        .collect();
    table(&["key", "scale", "stands", "last check", "shows too much"], &rows);
    for health in all.iter().filter(|h| !h.trust.trusted) {
        println!("{}", health.trust.words);
    }
}

fn tell_one(health: &ScaleHealth, json: bool) -> Result<(), Failure> {
    if json {
        return print_json(health);
    }
    println!("The {}: {}.", health.gauge.name, state(health));
    if !health.trust.trusted {
        println!("{}", health.trust.words);
        for reason in &health.trust.reasons {
            println!("  {}", reason.words);
        }
    }
    println!("It shows too much: {}", offset(health));
    if let Some(belief) = &health.belief {
        println!(
            "Jobs reckon with {} ± {} {}, from {} checks of today",
            decimal(belief.offset, 2),
            decimal(belief.offset_band, 2),
            health.unit,
            belief.checks
        );
    }
    for standard in &health.standards {
        println!(
            "Check weight {}: {}, {}, may be off by {}",
            standard.key,
            standard.name,
            print_value(&health.gauge, standard.value),
            print_error(&health.gauge, standard.tolerance_on(&health.gauge))
        );
    }
    Ok(())
}

fn tell_check(answer: &CheckAnswer, json: bool) -> Result<(), Failure> {
    if json {
        print_json(answer)?;
    }
    if let Some(asked) = &answer.question {
        let (words, next) = (asked.words.clone(), asked.next.clone());
        let asked = Failure::conflict(CommandFault::CheckQuestion { words, next });
        // In JSON the question is the whole answer.
        return Err(if json { asked.answered() } else { asked });
    }
    if json {
        return Ok(());
    }
    if answer.repeated {
        println!("Kept before; nothing was kept twice.");
    }
    tell_one(&answer.health, false)
}

fn tell_studies(all: &[StudyView]) {
    if all.is_empty() {
        println!("No gauge study yet. Begin one at the bench, under Scales.");
        return;
    }
    for study in all {
        println!("{}  {}, begun {}: {} of {} read", study.id, study.gauge.name, study.begun_at, study.done, study.of);
        if let Some(result) = &study.result {
            println!("  {}", result.words);
            if !result.next.is_empty() {
                println!("  {}", result.next);
            }
        }
    }
}
