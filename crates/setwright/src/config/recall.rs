//! Arguments of a recall, and of the marks on clubs.

use super::Signed;
use clap::Args;
use jiff::civil::Date;
use std::path::PathBuf;

/// What is called back, and what is to be done with the clubs.
#[derive(Debug, Args)]
#[group(skip)]
pub struct RecallArguments {
    /// A lot of adhesive or of parts, as it stands on the tins or the box.
    #[arg(long, value_name = "LOT")]
    pub lot: Option<String>,
    /// Code of one part, or of a box of equal parts.
    #[arg(long, value_name = "CODE")]
    pub part: Option<String>,
    /// Code or name of a model.
    #[arg(long, value_name = "MODEL")]
    pub model: Option<String>,
    /// Key or name of a scale: what was read on it.
    #[arg(long, value_name = "SCALE")]
    pub scale: Option<String>,
    /// Name of a builder: what they read, glued or did.
    #[arg(long, value_name = "NAME")]
    pub builder: Option<String>,
    /// The first day of a scale or a builder: 2031-04-01; left out: all days.
    #[arg(long, value_name = "DAY")]
    pub from: Option<Date>,
    /// The last day; left out: until today.
    #[arg(long, value_name = "DAY")]
    pub to: Option<Date>,
    /// Write whom to write to into a CSV file, a row a player.
    #[arg(long, value_name = "FILE")]
    pub addresses: Option<PathBuf>,
    /// Mark the clubs with what to look at, until somebody has looked.
    #[arg(long, value_name = "WORD")]
    pub mark: Option<String>,
    /// Keys of the clubs to mark, as the list gives them, separated by commas; default: all.
    #[arg(long, value_name = "KEYS", value_delimiter = ',', requires = "mark")]
    pub clubs: Option<Vec<String>>,
    /// Who marks them, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which marks; or that one is cleared.
#[derive(Debug, Args)]
pub struct MarksArguments {
    /// Those that were cleared as well.
    #[arg(long)]
    pub all: bool,
    /// Clear the mark with this identity.
    #[arg(long, value_name = "ID", requires = "found")]
    pub clear: Option<String>,
    /// What was found at the marked club.
    #[arg(long, value_name = "WORD", requires = "clear")]
    pub found: Option<String>,
    /// Who looked, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}
