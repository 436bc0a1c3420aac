//! Arguments about keys.

use super::{Database, Signed};
use clap::{Args, Subcommand};

/// What to do with keys.
#[derive(Debug, Subcommand)]
pub enum KeyCommand {
    /// Every key that was given, the newest first.
    List(KeyList),
    /// Show six digits that let one tablet in, once, within five minutes.
    Tablet(KeyTablet),
    /// Give a program a key. It is shown this once.
    Program(KeyProgram),
    /// Take a key away; its holder is out with the next request.
    Withdraw(KeyWithdraw),
}

impl KeyCommand {
    /// Whether the answer is wanted in JSON.
    #[must_use]
    pub const fn json(&self) -> bool {
        match self {
            Self::List(a) => a.database.json,
            Self::Tablet(a) => a.signed.database.json,
            Self::Program(a) => a.signed.database.json,
            Self::Withdraw(a) => a.signed.database.json,
        }
    }
}

/// Which keys.
#[derive(Debug, Args)]
pub struct KeyList {
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which tablet.
#[derive(Debug, Args)]
pub struct KeyTablet {
    /// What the shop calls it: the bench that it stands at, or whose phone it is.
    pub name: String,
    /// What whoever holds it may do.
    #[arg(long, default_value = "builder", value_parser = ["owner", "builder", "reader"])]
    pub role: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which program.
#[derive(Debug, Args)]
pub struct KeyProgram {
    /// What the shop calls it.
    pub name: String,
    /// What it may do; calendar: only fetch the calendar, at /calendar.ics?key= and the key.
    #[arg(long, default_value = "reader", value_parser = ["owner", "builder", "reader", "calendar"])]
    pub role: String,
    /// For how many days from now.
    #[arg(long, default_value_t = 365, value_name = "DAYS")]
    pub days: i64,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which key.
#[derive(Debug, Args)]
pub struct KeyWithdraw {
    /// Number of the key.
    pub number: i64,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}
