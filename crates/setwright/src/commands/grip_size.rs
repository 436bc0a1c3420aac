//! The grip sizes of a set.

use super::{print_json, reader, say};
use crate::config::GripSizeArguments;
use crate::failure::Failure;
use app::grip_size::TakeWraps;
use bench::wrap_advice::GripSizeOfClub;
use std::fmt::Write;
use words::{Words, text};

/// Prints how thick each grip will be under either hand, what is asked, and the layers that bring it there.
///
/// # Errors
/// No such job; nothing to lay; what the store says.
pub async fn grip_size(arguments: &GripSizeArguments) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    if arguments.take {
        let take = TakeWraps { wraps: None, by: arguments.signed.by.clone() };
        let taken = app.take_wraps(arguments.job, &take).await?;
        app.close().await;
        return if arguments.signed.database.json { print_json(&taken) } else { say(&lines(&reader(), &taken.clubs)) };
    }
    let found = app.grip_sizes(arguments.job).await?;
    app.close().await;
    if arguments.signed.database.json { print_json(&found) } else { say(&lines(&reader(), &found)) }
}

fn lines(w: &Words, found: &[GripSizeOfClub]) -> String {
    let mut text = String::new();
    for club in found {
        let places: Vec<String> = club.places.iter().map(|at| web::grip_at(w, at, true)).collect();
        let line = text!(
            w,
            "grip-size-line",
            slot = club.slot,
            club = w.club_number(&club.number),
            places = if places.is_empty() { "–".to_owned() } else { places.join("; ") },
            to_do = w.told(&club.fact)
        );
        // Writing to a string does not fail.
        let _ = writeln!(text, "{line}");
    }
    text
}
