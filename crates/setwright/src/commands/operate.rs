//! For whoever runs the machine: the settings, and what helps to find a fault.

use super::{print_json, reader, say, write_json};
use crate::config::{Serve, Setting, SettingFrom, SupportArguments, Which};
use crate::failure::Failure;
use words::{Words, text};

/// Prints every setting of the server.
///
/// # Errors
/// A configuration file that cannot be read; a setting that cannot be.
pub fn config(arguments: &Serve) -> Result<(), Failure> {
    let settings = arguments.described()?;
    if arguments.database.json {
        return print_json(&settings);
    }
    let w = reader();
    say(&settings.iter().map(|setting| told(&w, setting)).collect::<String>())
}

fn told(w: &Words, setting: &Setting) -> String {
    let from = w.text(match setting.from {
        SettingFrom::CommandLine => "config-from-command-line",
        SettingFrom::Environment => "config-from-environment",
        SettingFrom::File => "config-from-file",
        SettingFrom::Usual => "config-from-usual",
    });
    let value = if setting.value.is_empty() { "–" } else { &setting.value };
    let how = text!(w, "config-how", option = setting.option.clone(), environment = setting.environment.clone());
    format!("{} = {value}  ({from})\n    {}\n    {how}\n", setting.name, setting.explanation)
}

/// Prints or writes what helps to find a fault: no names, no addresses, nothing that was typed.
///
/// # Errors
/// No shop; a file that cannot be written; what the store says.
pub async fn support(arguments: &SupportArguments) -> Result<(), Failure> {
    let address = arguments.database.address(Which::Shop)?;
    let app = arguments.database.open().await?;
    let held = app.held().await?;
    let damage = app.damage(false).await?;
    let clock = app.clock_state().await?;
    let (keys, now) = (app.access_keys().await?, app.now());
    app.close().await;
    let kind = address.split(':').next().unwrap_or_default();
    let document = serde_json::json!({
        "version": env!("CARGO_PKG_VERSION"),
        "system": std::env::consts::OS,
        "processor": std::env::consts::ARCH,
        "database": kind,
        "file_bytes": address.strip_prefix("sqlite://").and_then(|path| std::fs::metadata(path).ok()).map(|file| file.len()),
        "sheets": held.sheets,
        "jobs": held.jobs,
        "parts": held.parts,
        "readings": held.readings,
        "last_reading_at": held.last_reading_at,
        "keys_good": keys.iter().filter(|key| key.is_good(now)).count(),
        "clock": clock,
        "damage": damage,
        "made_at": now,
    });
    let Some(out) = &arguments.out else { return print_json(&document) };
    write_json(out, &document)?;
    say(&(text!(reader(), "support-written", path = out.display().to_string()) + "\n"))
}
