//! Arguments of what is fitted across a set.

use super::Signed;
use clap::Args;

/// What to fit in a set.
#[derive(Debug, Args)]
pub struct FitArguments {
    /// Number of the job.
    pub job: i64,
    /// Take what is advised into the plans of the clubs, all or none.
    #[arg(long)]
    pub take: bool,
    /// What goes into which club in place of what is advised: SLOT:KIND:CODE, the kind tip_weight or grip, two tip weights
    /// joined by +, no code for an empty tip. May be given more than once.
    #[arg(long, value_name = "SLOT:KIND:CODE", requires = "take")]
    pub pick: Vec<String>,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which two clubs had each other's piece.
#[derive(Debug, Args)]
pub struct ExchangeArguments {
    /// Number of the job.
    pub job: i64,
    /// What they had of each other.
    #[arg(long, value_parser = ["head", "tip_weight", "grip"], required_unless_present = "undo")]
    pub kind: Option<String>,
    /// Their places in the tray, for example 4,5.
    #[arg(long, value_name = "SLOTS", value_delimiter = ',', required_unless_present = "undo")]
    pub clubs: Vec<i64>,
    /// Take the last exchange back: its readings count again.
    #[arg(long, conflicts_with_all = ["kind", "clubs"])]
    pub undo: bool,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}
