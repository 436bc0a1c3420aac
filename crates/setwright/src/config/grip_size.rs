//! Arguments of the grip sizes of a set.

use super::Signed;
use clap::Args;

/// Which set.
#[derive(Debug, Args)]
pub struct GripSizeArguments {
    /// Number of the job.
    pub job: i64,
    /// Lay the layers that are advised, on all clubs whose grips are not on yet, all or none.
    #[arg(long)]
    pub take: bool,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}
