//! Where the shop lies: one rule for every command. The command line first, then the environment, then the configuration
//! file, then the folder where the platform keeps a program's data. Never the folder that a command happens to run in.

use crate::failure::CommandFault;
use crate::failure::Failure;
use crate::reader::reader;
use app::{App, SystemClock};
use clap::Args;
use etcetera::app_strategy::{AppStrategy, AppStrategyArgs, choose_native_strategy};
use serde::Deserialize;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use words::text;

/// Where the database is, and whether to answer in JSON.
#[derive(Debug, Args)]
pub struct Database {
    /// The database: sqlite:///path/to/shop.db or postgres://user@host/name; default: the configuration's, else a file
    /// among this user's data.
    #[arg(long, env = "SETWRIGHT_DATABASE", value_name = "URL")]
    pub database: Option<String>,
    /// Configuration file; default: setwright.toml in this folder, else in this user's configuration folder, else
    /// /etc/setwright/setwright.toml, where there is one.
    #[arg(long, env = "SETWRIGHT_CONFIG", value_name = "FILE")]
    pub config: Option<PathBuf>,
    /// Answer in JSON.
    #[arg(long)]
    pub json: bool,
}

/// How every command that changes something ends: who does it, and where the database is.
#[derive(Debug, Args)]
pub struct Signed {
    /// Who does it.
    #[arg(long, default_value = "command line")]
    pub by: String,
    /// Where the database is, and whether to answer in JSON.
    #[command(flatten)]
    pub database: Database,
}

/// Name of the configuration file.
const CONFIG_FILE: &str = "setwright.toml";
/// Where the package of a system puts it, for everyone on the machine.
const CONFIG_OF_MACHINE: &str = "/etc/setwright/setwright.toml";
/// Names of the database files among the user's data.
const SHOP_FILE: &str = "shop.db";
const DEMO_FILE: &str = "demo.db";
/// Versions before this rule kept the shop under this name in the folder that they were started in.
const FORMER_FILE: &str = "setwright.db";

/// What the configuration file may say.
#[derive(Debug, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct ConfigFile {
    pub database: Option<String>,
    pub listen: Option<String>,
    pub open_to_network: Option<bool>,
    pub key_for_all: Option<bool>,
    pub names: Option<Vec<String>>,
    pub https: Option<String>,
    pub certificate: Option<PathBuf>,
    pub certificate_key: Option<PathBuf>,
    pub network_name: Option<String>,
    pub backups: Option<PathBuf>,
    pub log: Option<String>,
}

/// Which shop a command is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Which {
    /// The shop's own.
    Shop,
    /// The invented one, which has a file of its own.
    Demo,
}

impl Database {
    /// Opens the shop that is there.
    ///
    /// # Errors
    /// There is none; the configuration or the database cannot be used.
    pub async fn open(&self) -> Result<App, Failure> {
        let address = self.address(Which::Shop)?;
        App::open_existing(&address, Arc::new(SystemClock)).await.map_err(|error| {
            let failure = Failure::from(error);
            match demo_beside(&failure) {
                Some(demo) => failure.adding(&CommandFault::DemoIsAt { place: demo.to_string() }),
                None => failure,
            }
        })
    }

    /// Opens the shop, and makes an empty one where there is none; that is said.
    ///
    /// # Errors
    /// The configuration or the database cannot be used.
    pub async fn open_or_make(&self) -> Result<App, Failure> {
        let address = self.address(Which::Shop)?;
        make_data_folder(&address)?;
        let app = App::open_in(&address, Arc::new(SystemClock), &reader()).await?;
        if app.is_new() {
            eprintln!("{}", text!(reader(), "command-shop-made", place = app::shown_address(&address)));
        }
        Ok(app)
    }

    /// The address of the database.
    ///
    /// # Errors
    /// A configuration file that cannot be read; no home folder; a shop of an earlier version in this folder.
    pub fn address(&self, which: Which) -> Result<String, Failure> {
        if let Some(address) = &self.database {
            return Ok(address.clone());
        }
        if which == Which::Shop
            && let Some(address) = self.read_config()?.database
        {
            return Ok(address);
        }
        let folder = data_folder()?;
        let file = folder.join(if which == Which::Demo { DEMO_FILE } else { SHOP_FILE });
        if which == Which::Shop && !file.exists() && Path::new(FORMER_FILE).exists() {
            return Err(Failure::usage(CommandFault::FormerShop {
                file: FORMER_FILE.to_owned(),
                place: file.display().to_string(),
            }));
        }
        Ok(format!("sqlite://{}", file.display()))
    }

    /// The configuration.
    ///
    /// # Errors
    /// A file that was named and is not there; one that cannot be read.
    pub(super) fn read_config(&self) -> Result<ConfigFile, Failure> {
        let found = self.config.clone().or_else(|| {
            let of_user = strategy().ok().map(|s| s.in_config_dir(CONFIG_FILE));
            let of_machine = cfg!(unix).then(|| PathBuf::from(CONFIG_OF_MACHINE));
            [Some(PathBuf::from(CONFIG_FILE)), of_user, of_machine].into_iter().flatten().find(|path| path.is_file())
        });
        let Some(path) = found else { return Ok(ConfigFile::default()) };
        let text = std::fs::read_to_string(&path).map_err(|e| Failure::file(&path, &e))?;
        let mut file: ConfigFile = toml::from_str(&text).map_err(|e| {
            Failure::usage(CommandFault::Config { path: path.display().to_string(), log: e.to_string() })
        })?;
        file.database = file.database.map(|address| beside(&address, &path));
        Ok(file)
    }
}

/// A file that the configuration names without its folder lies beside the configuration.
fn beside(address: &str, config: &Path) -> String {
    let Some(file) = address.strip_prefix("sqlite:") else { return address.to_owned() };
    let file = file.strip_prefix("//").unwrap_or(file);
    if file == ":memory:" || Path::new(file).is_absolute() {
        return address.to_owned();
    }
    match config.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        Some(folder) => format!("sqlite:{}", folder.join(file).display()),
        None => address.to_owned(),
    }
}

/// Makes the folder of the user's data, where the address lies in it; others can look at nothing in there.
///
/// # Errors
/// The folder cannot be made.
pub fn make_data_folder(address: &str) -> Result<(), Failure> {
    let Ok(folder) = data_folder() else { return Ok(()) };
    let file = address.strip_prefix("sqlite://").map(Path::new);
    if file.and_then(Path::parent) != Some(folder.as_path()) || folder.is_dir() {
        return Ok(());
    }
    let mut builder = std::fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    std::os::unix::fs::DirBuilderExt::mode(&mut builder, 0o700);
    builder.create(&folder).map_err(|e| Failure::file(&folder, &e))
}

/// Where the platform keeps this program's data.
pub(super) fn data_folder() -> Result<PathBuf, Failure> {
    strategy().map(|s| s.data_dir())
}

fn strategy() -> Result<impl AppStrategy, Failure> {
    let names =
        AppStrategyArgs { top_level_domain: String::new(), author: String::new(), app_name: "Setwright".to_owned() };
    choose_native_strategy(names).map_err(|_| Failure::usage(CommandFault::NoHome))
}

/// The address of the demonstration's database, where somebody looked for a shop and only that is there.
fn demo_beside(failure: &Failure) -> Option<String> {
    let demo = data_folder().ok()?.join(DEMO_FILE);
    (failure.is_missing() && demo.exists()).then(|| format!("--database sqlite://{}", demo.display()))
}

#[cfg(test)]
mod tests {
    use super::beside;
    use std::path::Path;

    #[test]
    fn a_file_of_the_configuration_lies_beside_it() {
        let config = Path::new("/home/ines/.config/setwright/setwright.toml");
        for (address, meant) in [
            ("sqlite:shop.db", "sqlite:/home/ines/.config/setwright/shop.db"),
            ("sqlite://shop.db", "sqlite:/home/ines/.config/setwright/shop.db"),
            ("sqlite:///var/lib/shop.db", "sqlite:///var/lib/shop.db"),
            ("sqlite::memory:", "sqlite::memory:"),
            ("postgres://bench/shop", "postgres://bench/shop"),
        ] {
            assert_eq!(beside(address, config), meant);
        }
        assert_eq!(beside("sqlite:shop.db", Path::new("setwright.toml")), "sqlite:shop.db");
    }
}
