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
    if arguments.database.json {
        print_json(&advised)
    } else {
        say(&told(&reader(), arguments.job, &advised, arguments.slot.is_some()))
    }
}

fn told(w: &Words, job: i64, advised: &Advised, whole: bool) -> String {
    let most = if whole { 12 } else { 2 };
    let mut text = String::new();
    // Writing to a string does not fail.
    for club in &advised.clubs {
        let first = match club.chance_ahead {
            Some(chance) => text!(w, "command-advise-club", slot = club.slot, chance = Chance::of(chance)),
            None => text!(w, "command-advise-no-plan", slot = club.slot, job = job),
        };
        let _ = writeln!(text, "{first}");
        for remedy in club.remedies.iter().take(most) {
            let _ = writeln!(text, "  {}", remedy.words);
        }
        for offer in club.offers.iter().take(most) {
            let _ = writeln!(text, "  Worth measuring: {}", offer.words);
        }
    }
    for pick in advised.grips.iter().filter(|p| p.change) {
        let _ = writeln!(
            text,
            "{}",
            text!(w, "command-advise-grip", code = pick.code, grip_g = pick.mass_g, slot = pick.slot)
        );
    }
    text
}
