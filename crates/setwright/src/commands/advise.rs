//! What can be done about the clubs of a job now.

use super::{print_json, reader, say};
use crate::config::AdviseArguments;
use crate::failure::Failure;
use app::advice::Advice;
use bench::chance::Chance;
use bench::remedy::GripPick;
use bench::work_order::SetAdvice;
use std::fmt::Write;
use words::{Words, text};

/// Everything that is advised for a job.
#[derive(serde::Serialize)]
struct Advised {
    #[serde(skip_serializing_if = "Option::is_none")]
    set: Option<SetAdvice>,
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
    let set = app.set_advice(arguments.job).await?;
    let advised = Advised { set, clubs, grips: app.grips(arguments.job).await? };
    app.close().await;
    if arguments.database.json { print_json(&advised) } else { say(&lines(&reader(), &advised, arguments)) }
}

fn lines(w: &Words, advised: &Advised, arguments: &AdviseArguments) -> String {
    let most = if arguments.slot.is_some() { 12 } else { 2 };
    let mut text = String::new();
    // Writing to a string does not fail.
    for line in advised.set.iter().flat_map(|set| of_set(w, set)) {
        let _ = writeln!(text, "{line}");
    }
    for club in &advised.clubs {
        let _ = match club.chance_ahead.map(Chance::of) {
            Some(chance) => writeln!(text, "{}", text!(w, "remedy-as-planned", slot = club.slot, chance = chance)),
            None => writeln!(text, "{}", text!(w, "remedy-no-plan", slot = club.slot, job = arguments.job)),
        };
        for remedy in club.remedies.iter().take(most) {
            let _ = writeln!(text, "  {}", w.sentence(&remedy.fact));
        }
        for offer in club.bundle.offers.iter().chain(&club.bundle.to_learn).take(most) {
            let _ = writeln!(text, "  {}", w.tell(&offer.fact));
        }
    }
    for pick in advised.grips.iter().filter(|p| p.change) {
        let line = text!(w, "remedy-grip-for", part = pick.code, mass_g = pick.mass_g, slot = pick.slot);
        let _ = writeln!(text, "{line}");
    }
    text
}

/// What is worth doing before the set is glued, and how its grips are best chosen: a line each.
fn of_set(w: &Words, set: &SetAdvice) -> Vec<String> {
    let mut lines = Vec::new();
    lines.extend(set.bundle.worth.as_ref().map(|worth| w.sentence(worth)));
    lines.extend(set.proposed.as_ref().map(|proposed| w.sentence(&proposed.fact)));
    lines.extend(set.assumes.as_ref().map(|assumes| w.tell(assumes)));
    let after = set.proposed_with_bundle.as_ref();
    lines.extend(after.map(|proposed| format!("{}.", text!(w, "order-worth-after-bundle", says = &proposed.fact))));
    lines.extend(set.grips.as_ref().and_then(|grips| grips.says.as_ref()).map(|says| w.sentence(says)));
    lines
}
