//! The same again.

use super::{print_json, reader, say};
use crate::config::AgainArguments;
use crate::failure::Failure;
use app::same_again::{Again, SheetAgain};
use std::fmt::Write;
use words::text;

/// Prints clubs as they would be built again and what differs; saves a sheet of them where a day is given.
///
/// # Errors
/// No club named, none of that code, job or customer; clubs of several players; what the store says.
pub async fn again(arguments: &AgainArguments) -> Result<(), Failure> {
    let AgainArguments { clubs, job, customer, as_others, due, .. } = arguments;
    let ask = Again { clubs: clubs.clone(), job: *job, customer: *customer, as_others: *as_others };
    let app = arguments.database.open().await?;
    let w = reader();
    let found = app.same_again(&ask).await?;
    let saved = match due {
        Some(due) => {
            let like: Vec<String> = found.clubs.iter().map(|club| club.like.0.clone()).collect();
            let note = text!(w, "again-note", clubs = like);
            Some(app.sheet_again(&SheetAgain { again: ask, due: *due, note }).await?)
        }
        None => None,
    };
    app.close().await;
    if arguments.database.json {
        return match &saved {
            Some(saved) => print_json(saved),
            None => print_json(&found),
        };
    }
    let mut lines = String::new();
    for club in &found.clubs {
        let row = &club.row;
        let asks = text!(
            w,
            "again-asks",
            swing_weight_points = row.swing_weight_points,
            length_mm = row.length_mm,
            loft_deg = row.loft_deg,
            lie_deg = row.lie_deg
        );
        // Writing to a string does not fail.
        let _ = writeln!(lines, "{}", text!(w, "again-line", like = club.like.as_str(), asks = asks));
        for says in &club.says {
            let _ = writeln!(lines, "  {}", w.tell(says));
        }
    }
    if let Some(saved) = saved {
        let _ = writeln!(lines, "{}", saved.id);
    }
    say(&lines)
}
