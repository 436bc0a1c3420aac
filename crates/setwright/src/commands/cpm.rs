//! The frequencies of a set.

use super::{print_json, reader, say};
use crate::config::CpmArguments;
use crate::failure::Failure;
use app::cpm::{AskCpm, TakeTrims};
use bench::trim_to_cpm::{CpmOfClub, SetCpm, Slope};
use std::fmt::Write;
use words::{Words, text};

/// Prints what each club will read, what it is to read, and the tip trim that brings it there.
///
/// # Errors
/// No such job; a slope that no set has; what the store says.
pub async fn cpm(arguments: &CpmArguments) -> Result<(), Failure> {
    let ask = AskCpm {
        slope: arguments.slope.as_deref().and_then(Slope::from_key),
        step_cpm: arguments.step,
        level_cpm: arguments.level,
    };
    let app = arguments.signed.database.open().await?;
    if arguments.take {
        let AskCpm { slope, step_cpm, level_cpm } = ask;
        let take = TakeTrims { trims: None, slope, step_cpm, level_cpm, by: arguments.signed.by.clone() };
        let taken = app.take_trims(arguments.job, &take).await?;
        app.close().await;
        return if arguments.signed.database.json { print_json(&taken) } else { say(&lines(&reader(), &taken.cpm)) };
    }
    let found = app.set_cpm(arguments.job, ask).await?;
    app.close().await;
    if arguments.signed.database.json { print_json(&found) } else { say(&lines(&reader(), &found)) }
}

fn lines(w: &Words, found: &SetCpm) -> String {
    let mut text = String::new();
    for club in &found.clubs {
        // Writing to a string does not fail.
        let _ = writeln!(text, "{}", line(w, club));
    }
    let _ = writeln!(
        text,
        "{}",
        text!(
            w,
            "cpm-inside",
            planned = w.printed(&quantity::decimal(found.inside_as_planned, 1)),
            trimmed = w.printed(&quantity::decimal(found.inside_trimmed, 1)),
            clubs = found.clubs.len() as i64
        )
    );
    text
}

fn line(w: &Words, club: &CpmOfClub) -> String {
    let forecast = club.forecast_cpm.zip(club.band_cpm);
    let forecast = forecast.map_or_else(|| "–".to_owned(), |(cpm, band)| format!("{cpm:.1} ± {band:.1} cpm"));
    let club_number = w.club_number(&club.number);
    text!(
        w,
        "cpm-line",
        slot = club.slot,
        club = club_number,
        forecast = forecast,
        aim = club.aim_cpm.map(|aim| format!("{aim:.1}")),
        to_do =
            std::iter::once(&club.fact).chain(&club.remedies).map(|fact| w.told(fact)).collect::<Vec<_>>().join(" ")
    )
}
