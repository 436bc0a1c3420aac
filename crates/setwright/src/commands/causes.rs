//! What may be behind the doubted readings of a club.

use super::{print_json, say};
use crate::config::CausesArguments;
use crate::failure::Failure;
use app::bench::DoubtedReading;
use std::fmt::Write;

/// Prints the causes of each doubted reading of a club, the likeliest first.
///
/// # Errors
/// No such job or club; what the store says.
pub async fn causes(arguments: &CausesArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let found = app.causes(arguments.job, arguments.slot).await?;
    app.close().await;
    if arguments.database.json { print_json(&found) } else { say(&text(&found)) }
}

fn text(found: &[DoubtedReading]) -> String {
    if found.is_empty() {
        return "No reading of this club is doubted.\n".into();
    }
    let mut text = String::new();
    // Writing to a string does not fail.
    for doubted in found {
        let reading = &doubted.reading;
        let _ = writeln!(text, "{}, {}: {} is doubted.", reading.step, reading.what, reading.typed);
        for cause in doubted.causes.iter().take(5) {
            let odds = bench::cause::odds(cause.probability);
            let _ = writeln!(text, "  {odds:>9}  {}. {}", cause.words, cause.what_to_do);
        }
        if let Some(telling) = &doubted.telling {
            let _ = writeln!(text, "  {}", telling.words);
        }
    }
    text
}
