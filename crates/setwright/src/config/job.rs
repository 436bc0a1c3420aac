//! Arguments of jobs, and of the words that a builder says at the bench besides readings.

use super::{Database, JobArguments, Signed};
use clap::{Args, Subcommand};

/// Jobs of the shop.
#[derive(Debug, Subcommand)]
pub enum JobCommand {
    /// Jobs under way, the earliest due first, each with what is to do next.
    List(JobList),
    /// One job: where each club stands, what it reads next, which readings can be taken back.
    Show(JobArguments),
    /// Give a job up: its parts are free again, what is glued stays used, the readings stay.
    Drop(JobDrop),
}

/// Which jobs.
#[derive(Debug, Args)]
pub struct JobList {
    /// Only those of one state: open, planned, finished, dropped; default: those under way.
    #[arg(long, value_name = "STATE")]
    pub state: Option<String>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which job, and why.
#[derive(Debug, Args)]
pub struct JobDrop {
    /// Number of the job.
    pub job: i64,
    /// Why; the record keeps it.
    #[arg(long)]
    pub reason: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which reading to take back or to stand by, and why.
#[derive(Debug, Args)]
pub struct ReadingWord {
    /// Number of the job.
    pub job: i64,
    /// Place of the club in the tray.
    pub slot: i64,
    /// Identity of the reading, as `job show --json` tells it; default: the last that stands of this club.
    #[arg(long, value_name = "ID")]
    pub reading: Option<String>,
    /// Why; the record keeps it. Standing by a reading needs one.
    #[arg(long, default_value = "")]
    pub reason: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which joint passes before its time, at which step, and why.
#[derive(Debug, Args)]
pub struct PassArguments {
    /// Number of the job.
    pub job: i64,
    /// Place of the club in the tray.
    pub slot: i64,
    /// Key of the step that it passes to: cured, gripped, bend, or as the job calls it.
    pub step: String,
    /// Why; the record keeps it.
    #[arg(long)]
    pub reason: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Another part in place of a planned one.
#[derive(Debug, Args)]
pub struct ChangeArguments {
    /// Number of the job.
    pub job: i64,
    /// Place of the club in the tray.
    pub slot: i64,
    /// What is changed: head, shaft, grip, tip_weight, ferrule, adapter.
    pub kind: String,
    /// Code of the part to take, two tip weights joined by “+”; none leaves a tip weight or a ferrule out.
    pub code: String,
    /// Why; the record keeps it.
    #[arg(long, default_value = "")]
    pub reason: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}
