//! What can be done about the clubs of a job now.

use super::{print_json, reader, say};
use crate::config::AdviseArguments;
use crate::failure::Failure;
use app::advice::Advice;
use bench::chance::Chance;
use bench::remedy::GripPick;
use std::fmt::Write;
use words::{Words, text};

/// Everything that is advised for a job.
#[derive(serde::Serialize)]
struct Advised {
    clubs: Vec<Advice>,
    grips: Vec<GripPick>,
}

/// Prints what can be done about one club, or about all.
///
/// # Errors
/// No such job or club; what the store says.
pub async fn advise(arguments: &AdviseArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let slots = match arguments.slot {
        Some(slot) => vec![slot],
        None => app.job_file(arguments.job).await?.job.clubs.iter().map(|c| c.slot).collect(),
    };
    let mut clubs = Vec::with_capacity(slots.len());
    for slot in slots {
        clubs.push(app.advice(arguments.job, slot).await?);
    }
    let advised = Advised { clubs, grips: app.grips(arguments.job).await? };
    app.close().await;
    if arguments.database.json { print_json(&advised) } else { say(&lines(&reader(), &advised, arguments)) }
}

fn lines(w: &Words, advised: &Advised, arguments: &AdviseArguments) -> String {
    let most = if arguments.slot.is_some() { 12 } else { 2 };
    let mut text = String::new();
    // Writing to a string does not fail.
    for club in &advised.clubs {
        let _ = match club.chance_ahead.map(Chance::of) {
            Some(chance) => writeln!(text, "{}", text!(w, "remedy-as-planned", slot = club.slot, chance = chance)),
            None => writeln!(text, "{}", text!(w, "remedy-no-plan", slot = club.slot, job = arguments.job)),
        };
        for remedy in club.remedies.iter().take(most) {
            let _ = writeln!(text, "  {}", w.sentence(&remedy.fact));
        }
        for offer in club.offers.iter().take(most) {
            let _ = writeln!(text, "  {}", w.tell(&offer.fact));
        }
    }
    for pick in advised.grips.iter().filter(|p| p.change) {
        let line = text!(w, "remedy-grip-for", part = pick.code, mass_g = pick.mass_g, slot = pick.slot);
        let _ = writeln!(text, "{line}");
    }
    text
}
