//! What may be behind the doubted readings of a club.

use super::{print_json, reader, say};
use crate::config::CausesArguments;
use crate::failure::Failure;
use app::bench::DoubtedReading;
use bench::chance::Odds;
use std::fmt::Write;
use trade::job::Job;
use words::{Words, text};

/// Prints the causes of each doubted reading of a club, the likeliest first.
///
/// # Errors
/// No such job or club; what the store says.
pub async fn causes(arguments: &CausesArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let found = app.causes(arguments.job, arguments.slot).await?;
    let job = app.job_view(arguments.job).await?.job;
    app.close().await;
    if arguments.database.json { print_json(&found) } else { say(&lines(&reader(), &job, &found)) }
}

fn lines(w: &Words, job: &Job, found: &[DoubtedReading]) -> String {
    let mut text = String::new();
    // Writing to a string does not fail.
    if found.is_empty() {
        let _ = writeln!(text, "{}", w.text("cause-none-doubted"));
    }
    for doubted in found {
        let (what, typed) = (doubted.reading.what, &doubted.reading.typed);
        // What the shop calls the step; a step that the job has lost is named by its key.
        let named = job.steps.iter().find(|step| step.key == doubted.reading.step);
        let step = named.map_or(&doubted.reading.step, |step| &step.label);
        let _ = writeln!(text, "{}", text!(w, "cause-doubted-reading", step = step, what = what, typed = typed));
        for cause in doubted.causes.iter().take(5) {
            let (odds, to_do) = (Odds::of(cause.probability), &cause.what_to_do);
            let _ = writeln!(text, "  {}", text!(w, "cause-line", odds = odds, cause = cause.fact, to_do = to_do));
        }
        if let Some(telling) = &doubted.telling {
            let _ = writeln!(text, "  {}", w.tell(&telling.fact));
        }
    }
    text
}
