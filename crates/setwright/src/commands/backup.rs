//! Backups and archives: made, put back, looked over.

use super::{print_json, reader, say};
use crate::config::{
    ArchiveArguments, BackupArguments, CheckArguments, RestoreArguments, UnpackArguments, Which, make_data_folder,
};
use crate::failure::{CommandFault, Failure};
use app::archive::unpack as unpack_archive;
use app::backup::{Held, look_into, places_of, restore as put_back};
use words::{Words, text};

/// Makes a backup now.
///
/// # Errors
/// No shop; one on a server; a place that is taken or cannot be written.
pub async fn backup(arguments: &BackupArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let to = match &arguments.to {
        Some(to) => to.clone(),
        None => {
            let address = arguments.database.address(Which::Shop)?;
            let folder = places_of(&address)?.map(|(_, folder)| folder).unwrap_or_default();
            if !folder.as_os_str().is_empty() {
                std::fs::create_dir_all(&folder).map_err(|e| Failure::file(&folder, &e))?;
            }
            folder
        }
    };
    let made = app.back_up(&to).await?;
    app.close().await;
    if arguments.database.json {
        return print_json(&made);
    }
    let w = reader();
    say(&(text!(w, "backup-made", path = made.path, held = held(&w, &made.held)) + "\n"))
}

/// Tells what a backup holds and what would be lost; puts it in the place of the shop where that is asked for.
///
/// # Errors
/// A backup that is not there, damaged or newer than this version; a shop that is open elsewhere or on a server.
pub async fn restore(arguments: &RestoreArguments) -> Result<(), Failure> {
    let address = arguments.database.address(Which::Shop)?;
    let w = reader();
    if arguments.replace {
        let restored = put_back(&address, &arguments.backup, jiff::Timestamp::now()).await?;
        if arguments.database.json {
            return print_json(&restored);
        }
        let mut told = text!(w, "backup-restored", path = restored.path, held = held(&w, &restored.held)) + "\n";
        if let Some(before) = restored.before {
            told += &(text!(w, "backup-before", path = before) + "\n");
        }
        return say(&told);
    }
    let holds = look_into(&arguments.backup).await?;
    let backup = arguments.backup.display().to_string();
    if arguments.database.json {
        // One document answers a program: the refusal. `check FILE --json` tells what the backup holds.
        return Err(Failure::conflict(CommandFault::SayReplace { backup }));
    }
    let mut told = text!(w, "backup-would", backup = backup.as_str(), held = held(&w, &holds)) + "\n";
    if let Some((shop, _)) = places_of(&address)? {
        let path = shop.display().to_string();
        told += &match look_into(&shop).await {
            Ok(now) => text!(w, "backup-would-lose", path = path, held = held(&w, &now)),
            Err(_) if !shop.exists() => text!(w, "backup-would-empty", path = path),
            Err(error) => text!(w, "backup-would-unread", path = path, what = w.refusal(&error.refusal())),
        };
        told += "\n";
    }
    say(&told)?;
    Err(Failure::conflict(CommandFault::SayReplace { backup }))
}

/// Writes the whole shop as a text.
///
/// # Errors
/// No shop; a place that is taken or cannot be written.
pub async fn archive(arguments: &ArchiveArguments) -> Result<(), Failure> {
    let app = arguments.database.open().await?;
    let made = app.archive_to(&arguments.to).await;
    app.close().await;
    let made = made?;
    if arguments.database.json {
        return print_json(&made);
    }
    let w = reader();
    let rows: u64 = made.rows.values().sum();
    let told = text!(w, "archive-made", path = made.path, held = held(&w, &made.held), rows = rows, sum = made.sha256);
    say(&(told + "\n"))
}

/// Makes a shop from an archive.
///
/// # Errors
/// A shop is there already; an archive that is not whole; what the database says.
pub async fn unpack(arguments: &UnpackArguments) -> Result<(), Failure> {
    let address = arguments.database.address(Which::Shop)?;
    make_data_folder(&address)?;
    let made = unpack_archive(&address, &arguments.archive).await?;
    if arguments.database.json {
        return print_json(&made);
    }
    let w = reader();
    let place = app::shown_address(&address);
    say(&(text!(w, "archive-unpacked", place = place, held = held(&w, &made.held), at = made.made_at) + "\n"))
}

/// Looks for damage in the shop or in a backup.
///
/// # Errors
/// There is some; what the database says.
pub async fn check(arguments: &CheckArguments) -> Result<(), Failure> {
    let w = reader();
    let (path, holds) = match &arguments.backup {
        Some(backup) => (backup.display().to_string(), look_into(backup).await?),
        None => {
            let app = arguments.database.open().await?;
            let path = app::shown_address(&arguments.database.address(Which::Shop)?);
            let found = app.damage(true).await?;
            if !found.is_empty() {
                app.close().await;
                return Err(Failure::outside(CommandFault::ShopDamaged { path, log: found.join("; ") }));
            }
            let holds = app.held().await?;
            app.close().await;
            (path, holds)
        }
    };
    if arguments.database.json {
        return print_json(&holds);
    }
    say(&(text!(w, "backup-whole", path = path, held = held(&w, &holds)) + "\n"))
}

fn held(w: &Words, held: &Held) -> String {
    let (shop, last_at) = (held.shop.as_str(), held.last_reading_at);
    text!(
        w,
        "backup-held",
        shop = shop,
        jobs = held.jobs,
        parts = held.parts,
        readings = held.readings,
        last_at = last_at
    )
}
