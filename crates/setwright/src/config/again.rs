//! Arguments of building clubs again.

use super::Database;
use clap::Args;
use jiff::civil::Date;

/// Which clubs are to be built again.
#[derive(Debug, Args)]
#[group(skip)]
pub struct AgainArguments {
    /// Codes of the clubs, separated by commas.
    #[arg(value_name = "CODES", value_delimiter = ',')]
    pub clubs: Vec<String>,
    /// All clubs of a job that was handed over.
    #[arg(long, value_name = "JOB")]
    pub job: Option<i64>,
    /// All clubs of a customer that were not given up.
    #[arg(long, value_name = "CUSTOMER")]
    pub customer: Option<i64>,
    /// One club to match the others of its set as they are today.
    #[arg(long)]
    pub as_others: bool,
    /// Save it as a new sheet that is due on this day: 2031-04-01; left out: nothing is saved.
    #[arg(long, value_name = "DAY")]
    pub due: Option<Date>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}
