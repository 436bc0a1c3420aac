//! Arguments of the frequencies of a set.

use super::Signed;
use clap::Args;

/// Which set, and what it is to read.
#[derive(Debug, Args)]
pub struct CpmArguments {
    /// Number of the job.
    pub job: i64,
    /// What the clubs are to read: as the sheet asks, the same for all, so much more a half inch, or that through the
    /// reference club. Left out: as the sheet asks, or the usual step where it asks nothing.
    #[arg(long, value_parser = ["sheet", "flat", "step", "reference"])]
    pub slope: Option<String>,
    /// Cycles a minute for a half inch less of length; left out: 4.3.
    #[arg(long, value_name = "CPM", allow_negative_numbers = true)]
    pub step: Option<f64>,
    /// What the first club of the tray is to read; left out: what suits the shafts of the set.
    #[arg(long, value_name = "CPM")]
    pub level: Option<f64>,
    /// Take the tip trims that are advised into the plans of the clubs, all or none.
    #[arg(long)]
    pub take: bool,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}
