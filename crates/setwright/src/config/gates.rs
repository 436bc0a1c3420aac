//! Arguments of what stands before a step that cannot be undone: what is open, and the cure.

use super::Database;
use clap::{Args, Subcommand};

/// What is open before which step of which job.
#[derive(Debug, Args)]
pub struct OpenArguments {
    /// Number of the job.
    pub job: i64,
    /// Key of the step that cannot be undone: cut, glue, bend, hand_over, or as the job calls it; default: the next one.
    #[arg(long, value_name = "STEP")]
    pub before: Option<String>,
    /// Go on with what is open, and why: one reason for all of it, which the record keeps.
    #[arg(long, value_name = "REASON", requires = "before")]
    pub pass: Option<String>,
    /// Places in the tray of the clubs to go on with, separated by commas; default: all.
    #[arg(long, value_name = "SLOTS", value_delimiter = ',', requires = "pass")]
    pub clubs: Option<Vec<i64>>,
    /// Who goes on.
    #[arg(long, default_value = "command line")]
    pub by: String,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which step is done, for which clubs of which job.
#[derive(Debug, Args)]
pub struct DoneArguments {
    /// Number of the job.
    pub job: i64,
    /// Key of a step that is only done: turned, hand_over, or as the job calls it.
    pub step: String,
    /// Places in the tray of the clubs that have done it, separated by commas; default: every club that can.
    #[arg(long, value_name = "SLOTS", value_delimiter = ',')]
    pub clubs: Option<Vec<i64>>,
    /// Why a club is handed over on which something is open; the record keeps it.
    #[arg(long)]
    pub reason: Option<String>,
    /// Who did it.
    #[arg(long, default_value = "command line")]
    pub by: String,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Batches of adhesive.
#[derive(Debug, Subcommand)]
pub enum GlueCommand {
    /// Batches of the last fortnight with their clocks, the latest first.
    List(GlueList),
    /// Let a batch pass before its time: all its clubs, at every step that needs no more than a strength.
    Override(GlueOverride),
}

/// Which batches.
#[derive(Debug, Args)]
pub struct GlueList {
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which batch passes, and why.
#[derive(Debug, Args)]
pub struct GlueOverride {
    /// Number of the batch.
    pub batch: i64,
    /// How strong its joints are taken to be.
    #[arg(long, value_parser = ["handling", "full"])]
    pub strength: String,
    /// Why, once for the batch; the record keeps it.
    #[arg(long)]
    pub reason: String,
    /// Who lets it pass.
    #[arg(long, default_value = "command line")]
    pub by: String,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}
