//! How to serve: the command line first, then the environment, then the configuration file, then what is usual.

use super::Arguments;
use super::place::{Database, Which, data_folder};
use crate::failure::CommandFault;
use crate::failure::Failure;
use clap::builder::BoolishValueParser;
use clap::{Args, CommandFactory};
use serde::Serialize;
use std::path::PathBuf;
use tracing::level_filters::LevelFilter;

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
    /// Address for encrypted connections, such as 0.0.0.0:7443. Tablets then come in there alone; camera, notifications and work
    /// without network need it. Needs --open-to-network as the other address does.
    #[arg(long, env = "SETWRIGHT_HTTPS", value_name = "ADDRESS:PORT")]
    pub https: Option<String>,
    /// A certificate of your own for --https, with those between it and its root, in a PEM file. Left out: this machine makes a
    /// root of its own, which each tablet is told to trust once.
    #[arg(long, env = "SETWRIGHT_CERTIFICATE", value_name = "FILE", requires = "certificate_key")]
    pub certificate: Option<PathBuf>,
    /// The key of that certificate, in a PEM file.
    #[arg(long, env = "SETWRIGHT_CERTIFICATE_KEY", value_name = "FILE")]
    pub certificate_key: Option<PathBuf>,
    /// Announce this machine in the network under a name: bench makes it bench.local.
    #[arg(long, env = "SETWRIGHT_NETWORK_NAME", value_name = "NAME")]
    pub network_name: Option<String>,
    /// Folder in which a backup is made each day; the last of 14 days and of 12 months are kept. Default: “backups” beside
    /// the shop's file. The invented shop has none unless it is named.
    #[arg(long, env = "SETWRIGHT_BACKUPS", value_name = "FOLDER")]
    pub backups: Option<PathBuf>,
    /// How much the log on standard error tells: off, error, warn, info (a line for each request), debug; default: warn.
    #[arg(long, env = "SETWRIGHT_LOG", value_name = "LEVEL")]
    pub log: Option<String>,
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

/// The log level when none is given.
const LOG: &str = "warn";

/// Name of the folder with this machine's own root, beside the shop's file.
const ROOT_FOLDER: &str = "tls";

/// A name as one part of a machine's name (RFC 1123 2.1), in small letters.
fn plain_label(name: &str) -> Result<String, Failure> {
    let label = name.trim().to_ascii_lowercase();
    let label = label.strip_suffix(".local").unwrap_or(&label).to_owned();
    let plain = (1..=63).contains(&label.len())
        && label.bytes().all(|b| b.is_ascii_alphanumeric() || b == b'-')
        && !label.starts_with('-')
        && !label.ends_with('-');
    if plain { Ok(label) } else { Err(Failure::usage(CommandFault::MachineName { name: name.to_owned() })) }
}

fn log_levels() -> Vec<String> {
    ["off", "error", "warn", "info", "debug"].map(str::to_owned).to_vec()
}

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
    /// Address and port of encrypted connections; none where there are none.
    pub https: Option<String>,
    /// The shop's own certificate and its key.
    pub certificate: Option<(PathBuf, PathBuf)>,
    /// Folder of this machine's own root.
    pub root_folder: PathBuf,
    /// Name under which the machine is announced, without its `.local`.
    pub network_name: Option<String>,
    /// Where a backup is made each day; none where none is.
    pub backups: Option<PathBuf>,
    /// How much the log tells.
    pub log: LevelFilter,
}

/// Where a setting comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SettingFrom {
    /// The command line.
    CommandLine,
    /// A variable of the environment.
    Environment,
    /// The configuration file.
    File,
    /// Nowhere: what is usual.
    Usual,
}

/// A setting of the server as it stands, and how it is set.
#[derive(Debug, Serialize)]
pub struct Setting {
    /// Its name in the configuration file.
    pub name: &'static str,
    /// What it is; empty where it is nothing. An address shows no password.
    pub value: String,
    /// Where that comes from.
    pub from: SettingFrom,
    /// The option that sets it on the command line.
    pub option: String,
    /// The variable that sets it in the environment.
    pub environment: String,
    /// What it is for, as `setwright serve --help` tells it.
    pub explanation: String,
}

/// Each setting: its name in the file, that of its argument.
const SETTINGS: [(&str, &str); 11] = [
    ("database", "database"),
    ("listen", "listen"),
    ("open_to_network", "open_to_network"),
    ("key_for_all", "key_for_all"),
    ("names", "name"),
    ("https", "https"),
    ("certificate", "certificate"),
    ("certificate_key", "certificate_key"),
    ("network_name", "network_name"),
    ("backups", "backups"),
    ("log", "log"),
];

impl Serve {
    /// The settings.
    ///
    /// # Errors
    /// A configuration file that cannot be read; something that is not a name; no place for the database.
    pub fn settings(&self, which: Which) -> Result<Settings, Failure> {
        let file = self.database.read_config()?;
        let network_name = self.network_name.clone().or(file.network_name).filter(|name| !name.is_empty());
        let network_name = network_name.map(|name| plain_label(&name)).transpose()?;
        let names = if self.name.is_empty() { file.names.unwrap_or_default() } else { self.name.clone() };
        let names = names.into_iter().chain(network_name.iter().map(|name| format!("{name}.local")));
        let names =
            web::ServerNames::new(names).map_err(|bad| Failure::usage(CommandFault::MachineName { name: bad }))?;
        let log = self.log.clone().or(file.log).unwrap_or_else(|| LOG.to_owned());
        let log = log.parse().map_err(|_| Failure::usage(CommandFault::NoneOf { text: log, known: log_levels() }))?;
        let database = self.database.address(which)?;
        let beside = app::backup::places_of(&database)?.map(|(_, folder)| folder);
        let root_folder = match &beside {
            Some(backups) => backups.with_file_name(ROOT_FOLDER),
            None => data_folder()?.join(ROOT_FOLDER),
        };
        let beside = beside.filter(|_| which == Which::Shop);
        let certificate = self.certificate.clone().or(file.certificate);
        let certificate_key = self.certificate_key.clone().or(file.certificate_key);
        let certificate = match (certificate, certificate_key) {
            (Some(certificate), Some(key)) => Some((certificate, key)),
            (None, None) => None,
            (Some(_), None) | (None, Some(_)) => return Err(Failure::usage(CommandFault::HalfACertificate)),
        };
        Ok(Settings {
            names,
            https: self.https.clone().or(file.https).filter(|address| !address.is_empty()),
            certificate,
            root_folder,
            network_name,
            backups: self.backups.clone().or(file.backups).or(beside),
            open_to_network: self.open_to_network || file.open_to_network == Some(true),
            key_for_all: self.key_for_all || file.key_for_all == Some(true),
            log,
            database,
            listen: self.listen.clone().or(file.listen).unwrap_or_else(|| LISTEN.to_owned()),
        })
    }

    /// Every setting as it stands, with where it comes from and how it is set.
    ///
    /// # Errors
    /// As [`settings`](Self::settings).
    pub fn described(&self) -> Result<Vec<Setting>, Failure> {
        let settings = self.settings(Which::Shop)?;
        let file = self.database.read_config()?;
        let serve = Arguments::command();
        let serve = serve.find_subcommand("serve").cloned().unwrap_or_default();
        let described = |(name, id): (&'static str, &str)| {
            let path = |path: &Option<PathBuf>| path.as_ref().map_or_else(String::new, |p| p.display().to_string());
            let (given, in_file, value) = match name {
                "database" => {
                    (self.database.database.is_some(), file.database.is_some(), app::shown_address(&settings.database))
                }
                "listen" => (self.listen.is_some(), file.listen.is_some(), settings.listen.clone()),
                "open_to_network" => {
                    (self.open_to_network, file.open_to_network.is_some(), settings.open_to_network.to_string())
                }
                "key_for_all" => (self.key_for_all, file.key_for_all.is_some(), settings.key_for_all.to_string()),
                "names" => (!self.name.is_empty(), file.names.is_some(), settings.names.list().join(", ")),
                "https" => (self.https.is_some(), file.https.is_some(), settings.https.clone().unwrap_or_default()),
                "certificate" => {
                    let given = settings.certificate.as_ref().map(|(certificate, _)| certificate.clone());
                    (self.certificate.is_some(), file.certificate.is_some(), path(&given))
                }
                "certificate_key" => {
                    let given = settings.certificate.as_ref().map(|(_, key)| key.clone());
                    (self.certificate_key.is_some(), file.certificate_key.is_some(), path(&given))
                }
                "network_name" => {
                    let name = settings.network_name.clone().unwrap_or_default();
                    (self.network_name.is_some(), file.network_name.is_some(), name)
                }
                "backups" => (self.backups.is_some(), file.backups.is_some(), path(&settings.backups)),
                _ => (self.log.is_some(), file.log.is_some(), settings.log.to_string()),
            };
            let argument = serve.get_arguments().find(|argument| argument.get_id() == id);
            let environment = argument.and_then(|a| a.get_env()).map(|env| env.to_string_lossy().into_owned());
            let environment = environment.unwrap_or_default();
            let from = match (given, in_file) {
                (true, _) if std::env::var_os(&environment).is_some() => SettingFrom::Environment,
                (true, _) => SettingFrom::CommandLine,
                (false, true) => SettingFrom::File,
                (false, false) => SettingFrom::Usual,
            };
            let option = argument.and_then(|a| a.get_long()).map_or_else(String::new, |long| format!("--{long}"));
            let explanation = argument.and_then(|a| a.get_help()).map(ToString::to_string).unwrap_or_default();
            Setting { name, value, from, option, environment, explanation }
        };
        Ok(SETTINGS.into_iter().map(described).collect())
    }
}
