//! The record of a job, its ledger, the player's sheet, and records held against their seals.

use super::{print, print_json, reader, say};
use crate::config::{RecordArguments, RecordCommand, VerifyArguments};
use crate::failure::{CommandFault, Failure};
use bench::ledger::{Ledger, LedgerEntry};
use bench::seal::{FoundFault, Sealed, Verified};
use desk::ledger_csv::ledger_csv;
use std::fmt::Write;
use trade::reading::What;
use words::{Words, text};

/// Whether the answer is to be a document.
#[must_use]
pub const fn in_json(arguments: &RecordArguments) -> bool {
    match &arguments.command {
        Some(RecordCommand::Verify(verify)) => verify.database.json,
        None => arguments.database.json,
    }
}

/// The record of a job, its ledger, or the sheet that its player keeps.
///
/// # Errors
/// No such job; a record that is not as it was sealed; a file that cannot be written; what the store says.
pub async fn record(arguments: &RecordArguments) -> Result<(), Failure> {
    if let Some(RecordCommand::Verify(arguments)) = &arguments.command {
        return verify(arguments).await;
    }
    let job = arguments.job.unwrap_or_default();
    let app = arguments.database.open().await?;
    let (json, w) = (arguments.database.json, reader());
    if arguments.player {
        let sheet = app.player_sheet(job).await?;
        app.close().await;
        if json {
            return print_json(&sheet);
        }
        print::player_sheet(&w, &sheet);
        return Ok(());
    }
    if arguments.ledger || arguments.csv.is_some() {
        let ledger = app.ledger(job).await?;
        app.close().await;
        if let Some(file) = &arguments.csv {
            let text = ledger_csv(&ledger, &|reason| w.told(reason));
            std::fs::write(file, text).map_err(|e| Failure::file(file, &e))?;
        }
        return match (arguments.ledger, json) {
            (_, true) => print_json(&ledger),
            (true, false) => say(&lines(&w, &ledger)),
            (false, false) => Ok(()),
        };
    }
    let record = app.record(job).await?;
    app.close().await;
    if json {
        return print_json(&record);
    }
    print::record(&w, &record);
    Ok(())
}

fn lines(w: &Words, ledger: &Ledger) -> String {
    let mut text = String::new();
    for entry in &ledger.entries {
        let card = entry.slot.map_or("", |slot| ledger.card(slot));
        let when = match entry.at {
            Some(at) if entry.by.is_empty() => w.moment(at),
            Some(at) => text!(w, "ledger-by", at_at = at, by = entry.by),
            None => String::new(),
        };
        let digest = entry.sha256.get(..8).unwrap_or_default();
        // Writing to a string does not fail.
        let _ = writeln!(text, "{:>4}  {digest}  {card:<7} {}  {when}", entry.entry, what(w, entry));
    }
    text + &said(w, &ledger.seal)
}

fn what(w: &Words, entry: &LedgerEntry) -> String {
    match &entry.reading {
        Some(reading) if reading.what == What::Done => text!(w, "ledger-row-done", step = reading.step),
        Some(reading) => {
            let read = print::figure_of(w, reading.unit, reading.value);
            text!(w, "ledger-row", step = reading.step, what = reading.what) + ": " + &read
        }
        None if entry.kind == Sealed::Event => web::deed_words(w, &entry.deed),
        None => w.tell(&entry.kind),
    }
}

async fn verify(arguments: &VerifyArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let found = match arguments.job {
        Some(job) => vec![app.verify_record(job, arguments.end.as_deref()).await?],
        None => app.verify_records().await?,
    };
    app.close().await;
    let broken = found.iter().filter(|one| !one.intact).count();
    let w = reader();
    match (arguments.database.json, arguments.job, found.first()) {
        (true, Some(_), Some(one)) => print_json(one)?,
        (true, ..) => print_json(&found)?,
        (false, Some(_), Some(one)) => say(&said(&w, one))?,
        (false, ..) => say(&all(&w, &found, broken))?,
    }
    if broken > 0 {
        // What is wrong is told already; in JSON it is the whole answer.
        return Err(Failure::usage(CommandFault::SealBroken { n: broken }).answered());
    }
    Ok(())
}

fn all(w: &Words, found: &[Verified], broken: usize) -> String {
    let mut text = String::new();
    for one in found {
        let id = if one.intact { "seal-job-intact" } else { "seal-job-broken" };
        let figures = [("job", words::figure(&one.job_number)), ("n", words::figure(&one.entries))];
        text += &(w.text_with(id, &figures) + "\n");
        for fault in &one.faults {
            text += &format!("  {}\n", web::fault_line(w, fault));
        }
    }
    if broken == 0 {
        text += &(text!(w, "seal-all-intact", n = found.len()) + "\n");
    }
    text
}

/// What came of one record.
fn said(w: &Words, one: &Verified) -> String {
    let line = |fault: &FoundFault| web::fault_line(w, fault);
    let mut lines: Vec<String> = match (one.intact, one.entries) {
        (true, 0) => vec![w.text("seal-none")],
        (true, n) => vec![text!(w, "seal-intact", n = n)],
        (false, _) => vec![text!(w, "seal-broken", n = one.faults.len())],
    };
    lines.extend(one.faults.iter().map(line));
    if let Some(entry) = one.printed_entry {
        lines.push(text!(w, "seal-printed", entry = entry));
    }
    if let Some(from) = one.kept_from.filter(|_| one.late_entries > 0) {
        lines.push(text!(w, "seal-late", from_at = from, n = one.late_entries));
    }
    if let Some(end) = &one.end_sha256 {
        lines.push(w.text("seal-end") + " " + end);
    }
    lines.join("\n") + "\n"
}
