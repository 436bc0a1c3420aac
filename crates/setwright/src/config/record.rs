//! Arguments of the record of a job.

use super::Database;
use clap::{Args, Subcommand};
use std::path::PathBuf;

/// Which record, and for whom.
#[derive(Debug, Args)]
#[group(skip)]
#[command(args_conflicts_with_subcommands = true, subcommand_negates_reqs = true)]
pub struct RecordArguments {
    /// Number of the job.
    #[arg(required = true)]
    pub job: Option<i64>,
    /// The player's sheet: felt, asked and built side by side, and no chances.
    #[arg(long)]
    pub player: bool,
    /// The ledger: every reading, joint and deed in the order in which it was written.
    #[arg(long, conflicts_with = "player")]
    pub ledger: bool,
    /// Write the entries of the ledger to a CSV file.
    #[arg(long, value_name = "FILE", conflicts_with = "player")]
    pub csv: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
    /// What to do instead of showing it.
    #[command(subcommand)]
    pub command: Option<RecordCommand>,
}

/// What is done with records.
#[derive(Debug, Subcommand)]
pub enum RecordCommand {
    /// Hold records against the chain of their seals: was anything changed, removed or inserted in the database since?
    Verify(VerifyArguments),
}

/// Which records are held against their seals.
#[derive(Debug, Args)]
#[group(skip)]
pub struct VerifyArguments {
    /// Number of the job; without it, all jobs.
    pub job: Option<i64>,
    /// The end of the chain that a printed ledger shows, or at least its first 16 digits.
    #[arg(long, value_name = "DIGITS", requires = "job")]
    pub end: Option<String>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}
