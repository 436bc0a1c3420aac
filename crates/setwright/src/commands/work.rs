//! Commands that open the shop's database, do one thing and close it.

use super::{print, print_json, reader};
use crate::config::{PlanArguments, SheetFile};
use crate::failure::CommandFault;
use crate::failure::Failure;
use crate::terminal::line;
use app::plan::Accept;
use app::sheet::Approve;
use desk::planner::Lock;
use desk::sheet_check::{Severity, SheetProblem};
use fact::Fact;
use indicatif::ProgressBar;
use std::path::Path;
use std::time::Duration;
use trade::sheet::Sheet;
use words::{Words, text};

pub(super) fn bytes_of(path: &Path) -> Result<Vec<u8>, Failure> {
    std::fs::read(path).map_err(|e| Failure::file(path, &e))
}

pub(super) fn busy(words: impl Into<std::borrow::Cow<'static, str>>, json: bool) -> ProgressBar {
    if json {
        return ProgressBar::hidden();
    }
    let bar = ProgressBar::new_spinner().with_message(words);
    bar.enable_steady_tick(Duration::from_millis(100));
    bar
}

fn sheet_of(path: &Path) -> Result<Sheet, Failure> {
    document::read(&bytes_of(path)?)
        .map_err(|e| Failure::usage(CommandFault::NotASheet { path: path.display().to_string(), what: e.told() }))
}

/// Checks a sheet file.
///
/// # Errors
/// A file that is no sheet; findings that must be put right.
pub async fn sheet_check(arguments: &SheetFile) -> Result<(), Failure> {
    let sheet = sheet_of(&arguments.file)?;
    let app = arguments.database.open().await?;
    let problems = app.check_sheet(&sheet).await?;
    app.close().await;
    if arguments.database.json {
        print_json(&problems)?;
    } else {
        let w = reader();
        if problems.is_empty() {
            line!("{}", w.text("sheet-no-problems"));
        }
        for p in &problems {
            line!("{}", finding(&w, p));
        }
    }
    let stops = problems.iter().filter(|p| p.severity == Severity::Stop).count();
    if stops > 0 {
        // The findings are told already; in JSON they are the whole answer.
        return Err(Failure::usage(CommandFault::SheetStops { n: stops }).answered());
    }
    Ok(())
}

/// A finding as a line: how much it weighs, of which club, what, by which clause, what to do.
fn finding(w: &Words, problem: &SheetProblem) -> String {
    let what = w.told(&problem.fact);
    let what = match problem.of_club() {
        Some(club) => text!(w, "sheet-finding-of-club", club = w.told(&club), what = what),
        None => what,
    };
    let what = match &problem.clause {
        Some(clause) => {
            text!(w, "sheet-finding-by-clause", what = what, clause = text!(w, "rules-clause", clause = clause))
        }
        None => what,
    };
    text!(w, "sheet-finding-line", severity = problem.severity, what = what, next = problem.next)
}

/// Saves and approves a sheet file.
///
/// # Errors
/// A file that is no sheet; findings that must be put right; what the store says.
pub async fn sheet_add(arguments: &SheetFile) -> Result<(), Failure> {
    let sheet = sheet_of(&arguments.file)?;
    let app = arguments.database.open().await?;
    let saved = app.save_sheet(&sheet).await?;
    let job = app.approve_sheet(&saved.id, &Approve { steps: None, by: "command line".into() }).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&job);
    }
    line!("{}", text!(reader(), "sheet-job-made", job = job.number, n = job.clubs.len()));
    Ok(())
}

/// Proposes or accepts a plan.
///
/// # Errors
/// No such job; a lock that cannot be kept; what the store says.
pub async fn plan(arguments: &PlanArguments) -> Result<(), Failure> {
    let locks = arguments.keep.iter().map(|k| lock(k)).collect::<Result<Vec<_>, _>>()?;
    let app = arguments.signed.database.open().await?;
    let bar = busy(super::reader().text("command-plan-choosing"), arguments.signed.database.json);
    let proposal = app.propose(arguments.job, &locks).await?;
    bar.finish_and_clear();
    if arguments.accept {
        let accept = Accept {
            fingerprint: proposal.fingerprint.clone(),
            locks,
            partly: arguments.partly,
            neighbour_reason: arguments.neighbour_reason.clone(),
            by: arguments.signed.by.clone(),
        };
        app.accept(arguments.job, &accept).await?;
    }
    if arguments.signed.database.json {
        print_json(&proposal)?;
    } else {
        let file = app.job_file(arguments.job).await?;
        let w = super::reader();
        print::plan(&w, &file.job, &proposal.plan, &file.library);
        if arguments.accept {
            line!("{}", w.text("command-plan-held"));
        }
    }
    app.close().await;
    Ok(())
}

fn lock(text: &str) -> Result<Lock, Failure> {
    let wrong = || Failure::usage(CommandFault::NotSlotCode { text: text.to_owned() });
    let (slot, code) = text.split_once(':').ok_or_else(wrong)?;
    Ok(Lock { slot: slot.trim().parse().map_err(|_| wrong())?, code: code.trim().to_owned() })
}
