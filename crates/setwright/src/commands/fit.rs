//! What is fitted across a set, and two clubs with each other's piece.

use super::{print_json, reader, say};
use crate::config::{ExchangeArguments, FitArguments};
use crate::failure::{CommandFault, Failure};
use app::fit::{ExchangeParts, FitPick, TakeFit, UndoExchange};
use bench::set_fit::{FitRow, FitStage, SetFit};
use std::fmt::Write;
use trade::model::PartKind;
use words::{Words, text};

/// Prints what is to be fitted in a set, and takes it where that is asked.
///
/// # Errors
/// No such job; nothing advised; a part that is not free; what the store says.
pub async fn fit(arguments: &FitArguments) -> Result<(), Failure> {
    let picks = arguments.pick.iter().map(|text| pick(text)).collect::<Result<Vec<_>, _>>()?;
    let app = arguments.signed.database.open().await?;
    if arguments.take {
        let picks = Some(picks).filter(|picks| !picks.is_empty());
        let taken = app.take_fit(arguments.job, &TakeFit { picks, by: arguments.signed.by.clone() }).await?;
        app.close().await;
        return if arguments.signed.database.json { print_json(&taken) } else { say(&lines(&reader(), &taken.fit)) };
    }
    let fit = app.fit(arguments.job).await?;
    app.close().await;
    if arguments.signed.database.json { print_json(&fit) } else { say(&lines(&reader(), &fit)) }
}

fn pick(text: &str) -> Result<FitPick, Failure> {
    let wrong = || Failure::usage(CommandFault::NotAPick { text: text.to_owned() });
    let mut parts = text.splitn(3, ':').map(str::trim);
    let (Some(slot), Some(kind), Some(code)) = (parts.next(), parts.next(), parts.next()) else { return Err(wrong()) };
    Ok(FitPick {
        slot: slot.parse().map_err(|_| wrong())?,
        kind: PartKind::from_key(kind).ok_or_else(wrong)?,
        code: code.into(),
    })
}

fn lines(w: &Words, fit: &SetFit) -> String {
    if fit.rows.is_empty() {
        return w.text("fit-none") + "\n";
    }
    let mut text = String::new();
    for row in &fit.rows {
        // Writing to a string does not fail.
        let _ = writeln!(text, "{}", line(w, row));
    }
    for of in &fit.fetch {
        let place = if of.place.is_empty() { w.text("fit-no-place") } else { of.place.clone() };
        let line = text!(
            w,
            "fit-fetch-line",
            place = place,
            count = of.count,
            code = of.code,
            mass_g = of.mass_g,
            clubs = of.clubs
        );
        let _ = writeln!(text, "{line}");
    }
    text
}

fn line(w: &Words, row: &FitRow) -> String {
    let now_points = row.finish.swing_weight_points;
    let Some(advised) = &row.advised else {
        return text!(w, "fit-line-stays", number = row.number, now_points = now_points);
    };
    let what = match row.stage {
        FitStage::Tip => text!(w, "fit-tip-line", mass_g = advised.mass_g, now_g = row.now_g),
        FitStage::Grip => text!(w, "fit-grip-line", code = advised.code.to_string(), mass_g = advised.mass_g),
        _ => text!(w, "fit-added-line", mass_g = advised.mass_g, action = advised.action),
    };
    let finish_points = advised.finish.swing_weight_points;
    text!(w, "fit-line", number = row.number, what = what, now_points = now_points, finish_points = finish_points)
}

/// Two clubs that had each other's piece are put right, or the last time that was done is taken back.
///
/// # Errors
/// Not two clubs of the job; nothing to put right; what the store says.
pub async fn exchange(arguments: &ExchangeArguments) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let by = arguments.signed.by.clone();
    let done = match arguments.kind.as_deref().and_then(PartKind::from_key) {
        Some(kind) if !arguments.undo => {
            app.exchange_parts(arguments.job, &ExchangeParts { kind, slots: arguments.clubs.clone(), by }).await?
        }
        _ => app.undo_exchange(arguments.job, &UndoExchange { by }).await?,
    };
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&done);
    }
    let w = reader();
    let [first, second] = done.slots.as_slice() else { return Ok(()) };
    let said = if arguments.undo {
        text!(w, "fit-exchange-undone-line", kind = done.kind, first = *first, second = *second)
    } else {
        text!(w, "fit-exchange-line", kind = done.kind, first = *first, second = *second)
    };
    say(&(said + "\n"))
}
