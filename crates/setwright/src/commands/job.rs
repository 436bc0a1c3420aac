//! Jobs, and what a builder says at the bench besides readings.

use super::clubs::member;
use super::print::table;
use super::{print_json, reader, say};
use crate::config::{ChangeArguments, JobArguments, JobCommand, JobDrop, JobList, PassArguments, ReadingWord};
use crate::failure::{CommandFault, Failure};
use crate::terminal::line;
use app::App;
use app::bench::LetPassRequest;
use app::job::JobSummary;
use app::plan::Swap;
use bench::club_state::{ClubState, StepState};
use trade::id::ReadingId;
use trade::job::JobState;
use trade::model::PartKind;
use trade::reading::{What, standing};
use words::{Words, text};

/// Lists, shows or gives up jobs.
///
/// # Errors
/// No such job or state; no reason; one that is finished; what the store says.
pub async fn job(command: &JobCommand) -> Result<(), Failure> {
    match command {
        JobCommand::List(list) => list_jobs(list).await,
        JobCommand::Show(job) => show(job).await,
        JobCommand::Drop(job) => drop_job(job).await,
    }
}

/// Whether the answer is wanted in JSON.
pub fn in_json(command: &JobCommand) -> bool {
    match command {
        JobCommand::List(list) => list.database.json,
        JobCommand::Show(job) => job.database.json,
        JobCommand::Drop(job) => job.signed.database.json,
    }
}

async fn list_jobs(arguments: &JobList) -> Result<(), Failure> {
    let known: Vec<&str> = JobState::ALL.iter().map(|state| state.key()).collect();
    let state = arguments.state.as_deref().map(|key| member(key, JobState::from_key, &known)).transpose()?;
    let app = arguments.database.open().await?;
    let jobs = app.jobs(state).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&jobs);
    }
    let w = reader();
    if jobs.is_empty() {
        return say(&(w.text("today-no-job") + "\n"));
    }
    let headings = ["number", "player", "due", "state", "clubs", "next"].map(|h| w.text(&format!("command-job-{h}")));
    let rows: Vec<Vec<String>> = jobs.iter().map(|job| row(&w, job)).collect();
    table(&headings, &rows);
    Ok(())
}

fn row(w: &Words, job: &JobSummary) -> Vec<String> {
    let clubs: Vec<String> = job.clubs.iter().map(|number| w.club_number(number)).collect();
    let next: Vec<String> =
        job.next_steps.iter().map(|step| text!(w, "today-step-clubs", step = step.label, n = step.clubs)).collect();
    let next = match job.state {
        JobState::Open => w.text("today-choose-parts"),
        _ if next.is_empty() => w.text("command-none"),
        _ => next.join(", "),
    };
    vec![job.number.to_string(), job.player.clone(), job.due.to_string(), w.tell(&job.state), clubs.join(" "), next]
}

async fn show(arguments: &JobArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let view = app.job_view(arguments.job).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&view);
    }
    let w = reader();
    let (job, state) = (&view.job, w.tell(&view.job.state));
    line!("{}", text!(w, "command-record-job", job = job.number, player = job.sheet.player, state = state));
    clubs_table(&w, &view.clubs);
    Ok(())
}

/// Where clubs stand, a line each.
fn clubs_table(w: &Words, clubs: &[ClubState]) {
    let headings = ["slot", "club", "next", "reads", "finish", "last"].map(|h| w.text(&format!("command-job-{h}")));
    let rows: Vec<Vec<String>> = clubs.iter().map(|club| club_row(w, club)).collect();
    table(&headings, &rows);
}

fn club_row(w: &Words, club: &ClubState) -> Vec<String> {
    let none = || w.text("command-none");
    let points = |value: f64, band: f64| text!(w, "plan-reading", expected_points = value, band_points = band);
    let next: Option<&StepState> = club.steps.iter().find(|step| Some(&step.key) == club.next_step.as_ref());
    let expected = next.and_then(|step| {
        let ask = step.asks.iter().find(|ask| ask.what == What::SwingWeight)?;
        ask.expected.as_ref().map(|e| points(e.value, e.band))
    });
    let last = club.steps.iter().rev().find_map(|step| {
        let reading = step.asks.iter().find_map(|ask| ask.reading.as_ref())?;
        Some(text!(w, "command-job-reading", typed = reading.typed, step = step.label))
    });
    vec![
        club.slot.to_string(),
        w.club_number(&club.number),
        next.map_or_else(none, |step| step.key.clone()),
        expected.unwrap_or_else(none),
        club.finish.as_ref().map_or_else(none, |f| points(f.swing_weight_points, f.band_points)),
        last.unwrap_or_else(none),
    ]
}

async fn drop_job(arguments: &JobDrop) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    app.drop_job(arguments.job, &arguments.reason, &arguments.signed.by).await?;
    let view = app.job_view(arguments.job).await?;
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&view.job);
    }
    let w = reader();
    let state = w.tell(&view.job.state);
    say(&(text!(w, "command-record-job", job = view.job.number, player = view.job.sheet.player, state = state) + "\n"))
}

/// Takes a reading back: it stays in the record, and counts for nothing.
///
/// # Errors
/// No such job, club or reading; one that is taken back already; a batch that stands on it; what the store says.
pub async fn take_back(arguments: &ReadingWord) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let reading = named(&app, arguments).await?;
    let state = app.take_back(arguments.job, &reading, &arguments.reason, &arguments.signed.by).await?;
    said(arguments, app, state, "command-taken-back").await
}

/// Stands by a doubted reading.
///
/// # Errors
/// No reason; no such job, club or reading; what the store says.
pub async fn stand_by(arguments: &ReadingWord) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let reading = named(&app, arguments).await?;
    let state = app.insist(arguments.job, &reading, &arguments.reason, &arguments.signed.by).await?;
    said(arguments, app, state, "command-stood-by").await
}

/// The reading that is meant: the one that is named, else the last that stands of the club.
async fn named(app: &App, arguments: &ReadingWord) -> Result<ReadingId, Failure> {
    if let Some(id) = &arguments.reading {
        return Ok(id.as_str().into());
    }
    let file = app.job_file(arguments.job).await?;
    let club = file.club_at(arguments.slot)?;
    let last = standing(&file.readings).into_iter().rfind(|reading| reading.club == club.id);
    let (job, slot) = (arguments.job, arguments.slot);
    last.map(|reading| reading.id.clone()).ok_or_else(|| Failure::usage(CommandFault::NothingRead { job, slot }))
}

async fn said(arguments: &ReadingWord, app: App, state: ClubState, sentence: &str) -> Result<(), Failure> {
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&state);
    }
    let w = reader();
    line!("{}", w.text_with(sentence, &[("number", words::figure(&w.club_number(&state.number)))]));
    clubs_table(&w, &[state]);
    Ok(())
}

/// Lets a joint pass before it has its strength.
///
/// # Errors
/// No reason, nobody named; no such job, club or step; what the store says.
pub async fn pass(arguments: &PassArguments) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let request = LetPassRequest {
        slot: arguments.slot,
        step: arguments.step.clone(),
        reason: arguments.reason.clone(),
        by: arguments.signed.by.clone(),
    };
    app.let_pass(arguments.job, &request).await?;
    let view = app.job_view(arguments.job).await?;
    app.close().await;
    let state = view.clubs.into_iter().find(|club| club.slot == arguments.slot);
    if arguments.signed.database.json {
        return print_json(&state);
    }
    let number = state.map(|state| state.number).unwrap_or_default();
    let w = reader();
    say(&(text!(w, "command-let-pass", number = w.club_number(&number), step = arguments.step.as_str()) + "\n"))
}

/// Puts another part in place of a planned one.
///
/// # Errors
/// No such job, club or part; a part that is held, does not fit or is glued already; what the store says.
pub async fn change(arguments: &ChangeArguments) -> Result<(), Failure> {
    let known: Vec<&str> = PartKind::ALL.iter().map(|kind| kind.key()).collect();
    let kind = member(&arguments.kind, PartKind::from_key, &known)?;
    let none = arguments.code.eq_ignore_ascii_case("none");
    let swap = Swap {
        kind,
        code: if none { Default::default() } else { arguments.code.as_str().into() },
        reason: arguments.reason.clone(),
        by: arguments.signed.by.clone(),
        version: None,
    };
    let app = arguments.signed.database.open().await?;
    let plan = app.swap(arguments.job, arguments.slot, &swap).await?;
    let view = app.job_view(arguments.job).await?;
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&plan);
    }
    let of_club: Vec<ClubState> = view.clubs.into_iter().filter(|club| club.slot == arguments.slot).collect();
    clubs_table(&reader(), &of_club);
    Ok(())
}
