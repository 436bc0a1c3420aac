//! How to serve: the command line first, then the environment, then the configuration file, then what is usual.

use super::place::{Database, Which};
use crate::failure::CommandFault;
use crate::failure::Failure;
use clap::Args;
use clap::builder::BoolishValueParser;
use std::path::PathBuf;

/// How to serve.
#[derive(Debug, Args)]
pub struct Serve {
    /// Where the database is.
    #[command(flatten)]
    pub database: Database,
    /// Address to listen on; default: 127.0.0.1:7340, which only this machine reaches. Any other address needs
    /// --open-to-network.
    #[arg(long, env = "SETWRIGHT_LISTEN", value_name = "ADDRESS:PORT")]
    pub listen: Option<String>,
    /// Let tablets and programs in the network reach the bench. Each needs a key to come in.
    #[arg(long, env = "SETWRIGHT_OPEN_TO_NETWORK", value_parser = BoolishValueParser::new())]
    pub open_to_network: bool,
    /// Ask for a key on this machine too: where other people use it, or where a proxy on it hands on what comes from elsewhere.
    #[arg(long, env = "SETWRIGHT_KEY_FOR_ALL", value_parser = BoolishValueParser::new())]
    pub key_for_all: bool,
    /// A name by which tablets reach this machine, such as bench.local. May be given again. Addresses in figures and
    /// localhost need none.
    #[arg(long, env = "SETWRIGHT_NAME", value_name = "NAME", value_delimiter = ',')]
    pub name: Vec<String>,
    /// Folder in which a backup is made each day; the last of 14 days and of 12 months are kept. Default: “backups” beside
    /// the shop's file. The invented shop has none unless it is named.
    #[arg(long, env = "SETWRIGHT_BACKUPS", value_name = "FOLDER")]
    pub backups: Option<PathBuf>,
}

/// How to serve the invented shop.
#[derive(Debug, Args)]
pub struct Demo {
    /// How to serve it.
    #[command(flatten)]
    pub serve: Serve,
    /// Erase what was entered into the invented shop and begin it again.
    #[arg(long)]
    pub reset: bool,
}

/// Where this machine's bench listens when nothing is said.
const LISTEN: &str = "127.0.0.1:7340";

/// Where to serve from and to.
#[derive(Debug)]
pub struct Settings {
    /// Where the records are kept: `sqlite:///path/to/shop.db` or `postgres://user@host/name`.
    pub database: String,
    /// Address and port on which the bench answers.
    pub listen: String,
    /// Whether the owner wants it open to the network.
    pub open_to_network: bool,
    /// Whether this machine needs a key as well.
    pub key_for_all: bool,
    /// Names of this machine.
    pub names: web::ServerNames,
    /// Where a backup is made each day; none where none is.
    pub backups: Option<PathBuf>,
}

impl Serve {
    /// The settings.
    ///
    /// # Errors
    /// A configuration file that cannot be read; something that is not a name; no place for the database.
    pub fn settings(&self, which: Which) -> Result<Settings, Failure> {
        let file = self.database.read_config()?;
        let names = if self.name.is_empty() { file.names } else { self.name.clone() };
        let names =
            web::ServerNames::new(names).map_err(|bad| Failure::usage(CommandFault::MachineName { name: bad }))?;
        let database = self.database.address(which)?;
        let beside = match which {
            Which::Shop => app::backup::places_of(&database)?.map(|(_, folder)| folder),
            Which::Demo => None,
        };
        Ok(Settings {
            names,
            backups: self.backups.clone().or(file.backups).or(beside),
            open_to_network: self.open_to_network || file.open_to_network,
            key_for_all: self.key_for_all || file.key_for_all,
            database,
            listen: self.listen.clone().or(file.listen).unwrap_or_else(|| LISTEN.to_owned()),
        })
    }
}
