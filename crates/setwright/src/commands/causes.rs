//! What may be behind the doubted readings of a club.

use super::{print_json, reader, say};
use crate::config::CausesArguments;
use crate::failure::Failure;
use app::bench::DoubtedReading;
use bench::chance::Odds;
use std::fmt::Write;
use words::{Words, text};

/// Prints the causes of each doubted reading of a club, the likeliest first.
///
/// # Errors
/// No such job or club; what the store says.
pub async fn causes(arguments: &CausesArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let found = app.causes(arguments.job, arguments.slot).await?;
    app.close().await;
    if arguments.database.json { print_json(&found) } else { say(&lines(&reader(), &found)) }
}

fn lines(w: &Words, found: &[DoubtedReading]) -> String {
    let mut text = String::new();
    // Writing to a string does not fail.
    if found.is_empty() {
        let _ = writeln!(text, "{}", w.text("cause-none-doubted"));
    }
    for doubted in found {
        let (step, what, typed) = (&doubted.reading.step, doubted.reading.what, &doubted.reading.typed);
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
