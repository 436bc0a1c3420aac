//! Arguments of what stands before a step that cannot be undone: what is open, and the cure.

use super::{Database, Signed};
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
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
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
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Batches of adhesive.
#[derive(Debug, Subcommand)]
pub enum GlueCommand {
    /// Batches of the last fortnight with their clocks, the latest first.
    List(GlueList),
    /// Start a batch: its clocks run, and its clubs count as glued.
    Start(GlueStart),
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

/// What is mixed, and for which clubs.
#[derive(Debug, Args)]
pub struct GlueStart {
    /// Number of the job.
    pub job: i64,
    /// Places in the tray of the clubs that are glued from it, separated by commas.
    #[arg(long, value_name = "PLACES", value_delimiter = ',', required = true)]
    pub clubs: Vec<i64>,
    /// Lot on the tins.
    #[arg(long)]
    pub lot: String,
    /// Code of the adhesive; default: the shop's own.
    #[arg(long, value_name = "CODE")]
    pub adhesive: Option<String>,
    /// Temperature of the room, °C; default: the shop's own.
    #[arg(long, value_name = "CELSIUS")]
    pub room_c: Option<f64>,
    /// When it was mixed, for a cup that is entered late: 2031-04-01T14:20:00Z; default: now.
    #[arg(long, value_name = "TIME")]
    pub mixed_at: Option<jiff::Timestamp>,
    /// Why clubs are glued on which something is open.
    #[arg(long)]
    pub reason: Option<String>,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
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
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}
