//! Arguments of backups and archives.

use super::Database;
use clap::Args;
use std::path::PathBuf;

/// Where to make a backup.
#[derive(Debug, Args)]
pub struct BackupArguments {
    /// A new file, or a folder; default: the folder “backups” beside the shop's file.
    pub to: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which backup to put in the place of the shop.
#[derive(Debug, Args)]
pub struct RestoreArguments {
    /// The file that `setwright backup` or the daily one made.
    pub backup: PathBuf,
    /// Put it in the place of the shop; without it only what would be lost is told.
    #[arg(long)]
    pub replace: bool,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// What to look over.
#[derive(Debug, Args)]
pub struct CheckArguments {
    /// A backup; default: the shop itself.
    pub backup: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Where to write what helps to find a fault.
#[derive(Debug, Args)]
pub struct SupportArguments {
    /// File to write; left out: standard output.
    #[arg(long, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Where to write the archive.
#[derive(Debug, Args)]
pub struct ArchiveArguments {
    /// A new file: shop.jsonl
    pub to: PathBuf,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which archive to make a shop from.
#[derive(Debug, Args)]
pub struct UnpackArguments {
    /// The file that `setwright archive` made.
    pub archive: PathBuf,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}
