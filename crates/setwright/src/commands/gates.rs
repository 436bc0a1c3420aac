//! What stands before a step that cannot be undone: what is open, and the cure.

use super::{print_json, reader, say};
use crate::config::{DoneArguments, GlueList, GlueOverride, GlueStart, OpenArguments};
use crate::failure::Failure;
use app::done::DoneForSet;
use app::glue::{BatchView, LetBatchPass, NewBatch};
use app::open::PassOpen;
use bench::open_point::{Final, OpenClub};
use fact::Fact;
use std::fmt::Write;
use trade::step::Strength;
use words::{Words, text};

/// Prints what is open before a step that cannot be undone, and goes on with it where a reason is given.
///
/// # Errors
/// No such job or step; no reason; what the store says.
pub async fn open(arguments: &OpenArguments) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let w = reader();
    let Some(step) = &arguments.before else {
        let next = app.open_next(arguments.job).await?;
        app.close().await;
        if arguments.signed.database.json {
            return print_json(&next);
        }
        return say(&match next.done {
            Some(done) => lines(&w, done, &next.clubs),
            None => w.text("open-none-left") + "\n",
        });
    };
    let clubs = match &arguments.pass {
        Some(reason) => {
            let (slots, by) = (arguments.clubs.clone(), arguments.signed.by.clone());
            app.pass_all_open(arguments.job, &PassOpen { step: step.clone(), slots, reason: reason.clone(), by })
                .await?
        }
        None => app.open_before(arguments.job, step).await?,
    };
    let file = app.job_file(arguments.job).await?;
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&clubs);
    }
    let kind = file.job.step(step).and_then(|step| Final::of(&file.job, step));
    say(&kind.map_or_else(String::new, |kind| lines(&w, kind, &clubs)))
}

/// Notes that a step is done for clubs of a job.
///
/// # Errors
/// A step that asks for more; no such job, step or club; a club that waits for its joint or has something open; what the
/// store says.
pub async fn done(arguments: &DoneArguments) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let (step, slots, by) = (arguments.step.clone(), arguments.clubs.clone(), arguments.signed.by.clone());
    let done =
        app.done_for_set(arguments.job, &DoneForSet { step, slots, reason: arguments.reason.clone(), by }).await?;
    let file = app.job_file(arguments.job).await?;
    app.close().await;
    if arguments.signed.database.json {
        return print_json(&done);
    }
    let w = reader();
    let names = |slots: &[i64]| -> Vec<String> {
        let clubs = file.job.clubs.iter().filter(|club| slots.contains(&club.slot));
        clubs.map(|club| w.club_number(&club.target.number)).collect()
    };
    let mut lines = match done.slots.len() {
        0 => w.text("done-for-none"),
        n => text!(w, "done-for-set", n = n as i64, numbers = names(&done.slots)),
    } + "\n";
    if !done.waiting.is_empty() {
        lines += &(text!(w, "done-waiting", numbers = names(&done.waiting)) + "\n");
    }
    say(&lines)
}

/// What is open, a line a club.
fn lines(w: &Words, done: Final, clubs: &[OpenClub]) -> String {
    if clubs.is_empty() {
        return text!(w, "open-nothing", done = done) + "\n";
    }
    let mut text = text!(w, "open-before", done = done) + "\n";
    for club in clubs {
        let points = w.list(&club.facts.iter().map(|fact| w.told(fact)).collect::<Vec<_>>());
        let line = match &club.passed {
            Some(passed) => text!(
                w,
                "open-line-passed",
                number = club.number,
                points = points,
                reason = passed.reason,
                by = passed.by
            ),
            None => text!(w, "open-line", number = club.number, points = points),
        };
        // Writing to a string does not fail.
        let _ = writeln!(text, "  {line}");
    }
    text
}

/// Prints the batches of the last fortnight with their clocks.
///
/// # Errors
/// What the store says.
pub async fn glue_list(arguments: &GlueList) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let batches = app.recent_batches(14).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&batches);
    }
    let w = reader();
    say(&batches.iter().map(|batch| batch_lines(&w, batch)).collect::<String>())
}

/// Starts a batch.
///
/// # Errors
/// Clubs on which something is open, without a reason; clubs that are not glued or not at the bench; no lot; what the store says.
pub async fn glue_start(arguments: &GlueStart) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let new = NewBatch {
        job: arguments.job,
        slots: arguments.clubs.clone(),
        adhesive: arguments.adhesive.clone(),
        lot: arguments.lot.clone(),
        bead_share_percent: None,
        room_c: arguments.room_c,
        mixed_at: arguments.mixed_at,
        reason: arguments.reason.clone(),
        cold_reason: None,
        by: arguments.signed.by.clone(),
        request_key: None,
    };
    let batch = app.start_batch(&new).await?;
    app.close().await;
    if arguments.signed.database.json { print_json(&batch) } else { say(&batch_lines(&reader(), &batch)) }
}

/// Lets a batch pass before its time.
///
/// # Errors
/// No such batch; one that is taken back; no reason, nobody named; what the store says.
pub async fn glue_override(arguments: &GlueOverride) -> Result<(), Failure> {
    let app = arguments.signed.database.open().await?;
    let strength = Strength::from_key(&arguments.strength).unwrap_or(Strength::None);
    let request = LetBatchPass { strength, reason: arguments.reason.clone(), by: arguments.signed.by.clone() };
    let batch = app.let_batch_pass(arguments.batch, &request).await?;
    app.close().await;
    if arguments.signed.database.json { print_json(&batch) } else { say(&batch_lines(&reader(), &batch)) }
}

fn batch_lines(w: &Words, view: &BatchView) -> String {
    let of_job = |of: &app::glue::GluedClubs| {
        text!(w, "glue-clubs-of-job", n = of.numbers.len(), job = of.job, clubs = of.numbers.join(", "))
    };
    let clubs: Vec<String> = view.clubs.iter().map(of_job).collect();
    let mut text = text!(
        w,
        "glue-batch-line",
        batch = view.batch.number,
        clubs = clubs.join("; "),
        handling_at = view.handling_at,
        full_at = view.full_cure_at
    ) + "\n";
    for pass in &view.let_pass {
        let line = text!(
            w,
            "open-override-kept",
            strength = pass.strength.told(),
            reason = pass.reason,
            by = pass.by,
            at_at = pass.at
        );
        let _ = writeln!(text, "  {line}");
    }
    text
}
