//! Arguments about customers.

use super::{Database, Signed};
use clap::{Args, Subcommand};
use std::path::PathBuf;

/// What to do with customers.
#[derive(Debug, Subcommand)]
pub enum CustomerCommand {
    /// Customers by name, and the names on sheets that belong to nobody.
    List(CustomerList),
    /// A customer with their sheets and jobs.
    Show(CustomerShow),
    /// Keep a new customer.
    Add(CustomerAdd),
    /// Change what is known of a customer; what is not given stays. A new name goes onto all their sheets and jobs.
    Change(CustomerChange),
    /// Give the sheets of a name that belong to nobody, and their jobs, to a customer; to a new one without --customer.
    Take(CustomerTake),
    /// Give one sheet, and its job, to a customer, or to nobody.
    Give(CustomerGive),
    /// Say whose a part is: a customer's, or the shop's with --shop.
    Part(CustomerPart),
    /// Everything that is held about a customer, as one JSON document.
    Export(CustomerExport),
    /// Delete a customer on request; without --name tells what goes and what stays, and changes nothing.
    Delete(CustomerDelete),
}

impl CustomerCommand {
    /// Whether the answer is wanted in JSON.
    #[must_use]
    pub const fn json(&self) -> bool {
        match self {
            Self::List(a) => a.database.json,
            Self::Show(a) => a.database.json,
            Self::Add(a) => a.database.json,
            Self::Change(a) => a.database.json,
            Self::Take(a) => a.signed.database.json,
            Self::Give(a) => a.signed.database.json,
            Self::Part(a) => a.signed.database.json,
            Self::Export(a) => a.database.json,
            Self::Delete(a) => a.signed.database.json,
        }
    }
}

/// Which customers.
#[derive(Debug, Args)]
pub struct CustomerList {
    /// Words of which each occurs in code, name or contacts; left out: all.
    #[arg(default_value = "")]
    pub text: String,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Which customer.
#[derive(Debug, Args)]
pub struct CustomerShow {
    /// Number of the customer.
    pub number: i64,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// What is known of a customer.
#[derive(Debug, Args)]
pub struct CustomerFields {
    /// The hand they play with: right or left.
    #[arg(long, value_name = "HAND", value_parser = ["right", "left"])]
    pub hand: Option<String>,
    /// Where to ring them.
    #[arg(long, value_name = "NUMBER")]
    pub phone: Option<String>,
    /// Where to write to them.
    #[arg(long, value_name = "ADDRESS")]
    pub email: Option<String>,
    /// Street and town.
    #[arg(long, value_name = "TEXT")]
    pub address: Option<String>,
    /// Anything else.
    #[arg(long, value_name = "TEXT")]
    pub note: Option<String>,
    /// Size of their glove, as it stands on it.
    #[arg(long, value_name = "SIZE")]
    pub glove: Option<String>,
    /// How thick they like a grip 2 in below its cap: 0.92in or 23.4mm; millimetres where no unit stands.
    #[arg(long, value_name = "LENGTH")]
    pub grip_diameter: Option<String>,
    /// Full wraps of tape that they like, beside the base.
    #[arg(long, value_name = "N")]
    pub wraps: Option<u8>,
    /// Wraps under the lower hand that they like.
    #[arg(long, value_name = "N")]
    pub lower_wraps: Option<u8>,
}

/// A new customer.
#[derive(Debug, Args)]
pub struct CustomerAdd {
    /// As it is to stand on sheets and records.
    pub name: String,
    /// What else is known.
    #[command(flatten)]
    pub fields: CustomerFields,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// What changes.
#[derive(Debug, Args)]
pub struct CustomerChange {
    /// Number of the customer.
    pub number: i64,
    /// Another name.
    #[arg(long, value_name = "NAME")]
    pub name: Option<String>,
    /// What else changes.
    #[command(flatten)]
    pub fields: CustomerFields,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Whose sheets.
#[derive(Debug, Args)]
pub struct CustomerTake {
    /// The name on the sheets.
    pub name: String,
    /// Number of the customer; left out: a new one.
    #[arg(long, value_name = "NUMBER")]
    pub customer: Option<i64>,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which sheet, and whose it is to be.
#[derive(Debug, Args)]
pub struct CustomerGive {
    /// Identity of the sheet.
    pub sheet: String,
    /// Number of the customer.
    #[arg(long, value_name = "NUMBER", required_unless_present = "nobody", conflicts_with = "nobody")]
    pub customer: Option<i64>,
    /// Nobody's: the name stays as it is.
    #[arg(long)]
    pub nobody: bool,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Which part, and whose it is to be.
#[derive(Debug, Args)]
pub struct CustomerPart {
    /// Code of the part.
    pub code: String,
    /// Number of the customer.
    #[arg(long, value_name = "NUMBER", required_unless_present = "shop", conflicts_with = "shop")]
    pub customer: Option<i64>,
    /// The shop's.
    #[arg(long)]
    pub shop: bool,
    /// Why.
    #[arg(long, default_value = "", value_name = "REASON")]
    pub reason: String,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// Whom to export.
#[derive(Debug, Args)]
pub struct CustomerExport {
    /// Number of the customer.
    pub number: i64,
    /// File to write; left out: standard output.
    #[arg(long, value_name = "FILE")]
    pub out: Option<PathBuf>,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}

/// Whom to delete.
#[derive(Debug, Args)]
pub struct CustomerDelete {
    /// Number of the customer.
    pub number: i64,
    /// Their name, to be sure that it is the right one; left out: nothing is deleted, only told.
    #[arg(long, value_name = "NAME")]
    pub name: Option<String>,
    /// Who does it, and where the database is.
    #[command(flatten)]
    pub signed: Signed,
}

/// What to look for.
#[derive(Debug, Args)]
pub struct FindArguments {
    /// As it is typed or scanned; parts of words will do.
    pub text: String,
    /// Where nothing fits, take words with one slip of the hand as well: a letter wrong, missing or too many, or two swapped.
    #[arg(long)]
    pub near: bool,
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
}
