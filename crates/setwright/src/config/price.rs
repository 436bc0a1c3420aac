//! Arguments about prices and quotes.

use super::Database;
use clap::Args;
use std::path::PathBuf;

/// The shop's prices.
#[derive(Debug, Args)]
pub struct PricesArguments {
    /// Keep the prices of this JSON file in the place of the list.
    #[arg(long, value_name = "FILE")]
    pub set: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which quote, and what to do with it.
#[derive(Debug, Args)]
pub struct QuoteArguments {
    /// Identity of the sheet.
    pub sheet: String,
    /// Keep what the price list makes of it.
    #[arg(long, conflicts_with = "set")]
    pub take: bool,
    /// Keep the lines of this JSON file: a list of what, count and each_minor.
    #[arg(long, value_name = "FILE")]
    pub set: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}
