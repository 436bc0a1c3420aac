//! Backups of the shop: made by hand, and each day by themselves in a folder where the older ones are thinned out.
//!
//! Whoever loses the disk loses what is not copied elsewhere, and nobody thinks of it while they glue. So a backup is made by
//! the program that serves the bench. Today tells when no backup was made yet, when the newest is two days old, and when one failed.

use crate::{App, AppError, shown_address};
use fact::{Fact, Refusal, Told};
use jiff::civil::DateTime;
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp, ToSpan};
use serde::Serialize;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex};
use store::{Contents, Copied};
use utoipa::ToSchema;

/// A backup made before this much time is not made again: it was made earlier in the day, or yesterday at a later hour.
const DAILY: SignedDuration = SignedDuration::from_hours(20);
/// From then on a backup is called old: two evenings were missed.
const OLD: SignedDuration = SignedDuration::from_hours(50);
/// Days of which the last backup is kept …
const KEPT_DAYS: i64 = 14;
/// … and months.
pub(crate) const KEPT_MONTHS: i64 = 12;

/// What a backup, or a shop, holds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Held {
    /// Name of the shop, as it stands on its pages.
    pub shop: String,
    /// How many fitting sheets, approved or not.
    pub sheets: i64,
    /// How many jobs, those that are over among them.
    pub jobs: i64,
    /// How many parts and boxes of equal parts, those that are used or gone among them.
    pub parts: i64,
    /// How many readings at the bench, those that were taken back among them.
    pub readings: i64,
    /// When the last reading was taken; left out while nothing was read.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub last_reading_at: Option<Timestamp>,
}

impl From<Contents> for Held {
    fn from(contents: Contents) -> Self {
        let Contents { shop, sheets, jobs, parts, readings, last_reading_at, .. } = contents;
        Self { shop, sheets, jobs, parts, readings, last_reading_at }
    }
}

/// A backup that was made and verified.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Backup {
    /// Where it is, on the machine that serves the bench.
    pub path: String,
    /// When it was made.
    #[schema(value_type = String, format = DateTime)]
    pub made_at: Timestamp,
    /// Size of the file, bytes.
    pub size_bytes: u64,
    /// What it holds.
    pub held: Held,
}

/// How the backups of a shop stand.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct BackupState {
    /// The folder that a backup is made in each day; left out where none is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub folder: Option<String>,
    /// When the newest backup in the folder was made; left out while the folder has no backup.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>, format = DateTime)]
    pub newest_at: Option<Timestamp>,
    /// What is wrong; left out where nothing is.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wrong: Option<Told>,
}

fact::facts! {
    /// What is wrong with the backups of a shop, or with its file.
    pub enum BackupWrong: "backup_wrong" {
        /// No backup was made yet.
        None {
            /// Where they are made.
            folder: String,
        },
        /// The newest was made too long ago.
        Old {
            /// When it was made.
            made_at: Timestamp,
            /// Where.
            folder: String,
        },
        /// The last try failed.
        Failed {
            /// When it was tried.
            tried_at: Timestamp,
            /// What the disk or the database said.
            why: Told,
        },
        /// No folder is kept for them.
        NoFolder,
        /// The shop's own file is damaged.
        Damaged {
            /// The first that was found, as the database tells it.
            log: String,
        },
    }
}

/// The daily backups of the shop that this program serves.
#[derive(Debug, Clone, Default)]
pub(crate) struct DailyBackups(Arc<Mutex<Daily>>);

#[derive(Debug, Default)]
struct Daily {
    folder: Option<PathBuf>,
    failed: Option<BackupWrong>,
    damaged: Option<BackupWrong>,
}

impl DailyBackups {
    fn with<T>(&self, does: impl FnOnce(&mut Daily) -> T) -> T {
        does(&mut self.0.lock().unwrap_or_else(std::sync::PoisonError::into_inner))
    }
}

impl App {
    /// Makes a backup: into a new file, or into a folder under the name of its moment. It was opened, found undamaged and counted
    /// before it has its name.
    ///
    /// # Errors
    /// A shop on a server; a place that is taken or cannot be written; a full disk.
    pub async fn back_up(&self, to: &Path) -> Result<Backup, AppError> {
        let made_at = self.now();
        let path = if to.is_dir() { to.join(name_of(made_at)) } else { to.to_owned() };
        let Copied { path, bytes, contents } = self.store.copy_to(&path).await?;
        Ok(Backup { path: path.display().to_string(), made_at, size_bytes: bytes, held: contents.into() })
    }

    /// From now on a backup is made each day in this folder; it is made where it is not there.
    pub fn keep_backups_in(&self, folder: &Path) {
        self.backups.with(|daily| daily.folder = Some(folder.to_owned()));
    }

    /// Makes today's backup where it is due and thins out the older ones. Gives it; none where it is not due, and where no folder
    /// is kept. What goes wrong is remembered for Today.
    pub async fn back_up_daily(&self) -> Option<Backup> {
        let folder = self.backups.with(|daily| daily.folder.clone())?;
        let now = self.now();
        if newest_in(&folder).is_some_and(|at| at <= now && now.duration_since(at) < DAILY) {
            return None;
        }
        match self.back_up_in(&folder).await {
            Ok(made) => {
                for (_, path) in thinned(found_in(&folder)) {
                    // One that cannot be removed is one too many, and no harm.
                    let _ = std::fs::remove_file(path);
                }
                Some(made)
            }
            Err(error) => {
                let why = error.refusal().told();
                self.backups.with(|daily| daily.failed = Some(BackupWrong::Failed { tried_at: now, why }));
                None
            }
        }
    }

    /// Makes a backup in the folder of the daily ones, whether it is due or not.
    ///
    /// # Errors
    /// As [`App::back_up`]; where no folder is kept.
    pub async fn back_up_now(&self) -> Result<Backup, AppError> {
        let folder = self.backups.with(|daily| daily.folder.clone());
        let folder = folder.ok_or_else(|| AppError::conflict(Refusal::new(&BackupWrong::NoFolder)))?;
        self.back_up_in(&folder).await
    }

    /// Makes a backup in a folder, and the folder if it is missing. Today then no longer tells of a failed one.
    async fn back_up_in(&self, folder: &Path) -> Result<Backup, AppError> {
        std::fs::create_dir_all(folder).map_err(|e| {
            let (place, problem) = (folder.display().to_string(), e.to_string());
            store::StoreError::CannotOpen { place, problem }
        })?;
        let made = self.back_up(folder).await?;
        self.backups.with(|daily| daily.failed = None);
        Ok(made)
    }

    /// How the backups stand.
    #[must_use]
    pub fn backup_state(&self) -> BackupState {
        let (folder, failed, damaged) =
            self.backups.with(|daily| (daily.folder.clone(), daily.failed.clone(), daily.damaged.clone()));
        let newest_at = folder.as_deref().and_then(newest_in);
        let named = folder.map(|folder| folder.display().to_string());
        let missing = named.clone().and_then(|folder| match newest_at {
            None => Some(BackupWrong::None { folder }),
            Some(made_at) if self.now().duration_since(made_at) >= OLD => Some(BackupWrong::Old { made_at, folder }),
            Some(_) => None,
        });
        let wrong = damaged.or(failed).or(missing).map(|wrong| wrong.told());
        BackupState { folder: named, newest_at, wrong }
    }

    /// What the shop holds.
    ///
    /// # Errors
    /// What the store says.
    pub async fn held(&self) -> Result<Held, AppError> {
        Ok(self.store.contents().await?.into())
    }

    /// What is damaged in the shop's file, as the database tells it; empty where nothing is. `thorough` takes some ten times as
    /// long. What is found stands on Today.
    ///
    /// # Errors
    /// What the store says.
    pub async fn damage(&self, thorough: bool) -> Result<Vec<String>, AppError> {
        let found = self.store.damage(thorough).await?;
        let first = found.first().map(|log| BackupWrong::Damaged { log: log.clone() });
        self.backups.with(|daily| daily.damaged = first);
        Ok(found)
    }
}

/// A backup in the place of a shop.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Restored {
    /// Where the shop is now.
    pub path: String,
    /// What it holds.
    pub held: Held,
    /// Where the shop is that was there before; left out where there was none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub before: Option<String>,
}

/// Where a shop's own file is, and the folder of its backups unless another is named; none for one on a server or in memory.
///
/// # Errors
/// An address that cannot be read.
pub fn places_of(url: &str) -> Result<Option<(PathBuf, PathBuf)>, AppError> {
    let file = store::ShopFile::of(url)?.map(|shop| shop.path().to_owned());
    Ok(file.map(|file| (file.clone(), file.with_file_name("backups"))))
}

/// Puts a backup in the place of a shop. The shop that was there is kept beside it; the backup stays where it is.
///
/// # Errors
/// A shop on a server; a backup that is not there, damaged or of a newer version, before anything is changed; while another
/// program has the shop open; what the system says.
pub async fn restore(url: &str, backup: &Path, now: Timestamp) -> Result<Restored, AppError> {
    let Some(shop) = store::ShopFile::of(url)? else {
        return Err(store::StoreError::OnServer { place: shown_address(url) }.into());
    };
    let path = shop.path().to_owned();
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(format!(".before-restore-{}", now.to_zoned_datetime(TimeZone::UTC).strftime(MOMENT)));
    let aside = path.with_file_name(name);
    let was_there = shop.exists();
    let held = shop.replace_with(backup, &aside).await?.into();
    let before = was_there.then(|| aside.display().to_string());
    Ok(Restored { path: path.display().to_string(), held, before })
}

/// What a backup holds, once it is found undamaged. The shop of this program is not asked.
///
/// # Errors
/// The file is missing or damaged, or was written by another program or a newer version.
pub async fn look_into(backup: &Path) -> Result<Held, AppError> {
    Ok(store::look_into(backup).await?.into())
}

const BEFORE: &str = "setwright-";
const BEHIND: &str = ".db";
const MOMENT: &str = "%Y-%m-%d-%H%M%S";

/// The name of a backup: its moment in the time of the world, so that names sort as they were made also where clocks change.
fn name_of(at: Timestamp) -> String {
    format!("{BEFORE}{}{BEHIND}", at.to_zoned_datetime(TimeZone::UTC).strftime(MOMENT))
}

/// When a file of this name was made; none where it is no backup's name.
fn moment_of(name: &str) -> Option<Timestamp> {
    let moment = name.strip_prefix(BEFORE)?.strip_suffix(BEHIND)?;
    DateTime::strptime(MOMENT, moment).ok()?.to_zoned_datetime(TimeZone::UTC).ok().map(|zoned| zoned.timestamp())
}

/// The backups of a folder, each with its moment, the oldest first. Other files are nobody's business.
fn found_in(folder: &Path) -> Vec<(Timestamp, PathBuf)> {
    let Ok(files) = std::fs::read_dir(folder) else { return Vec::new() };
    let mut found: Vec<_> = files
        .flatten()
        .filter_map(|file| Some((moment_of(&file.file_name().to_string_lossy())?, file.path())))
        .collect();
    found.sort();
    found
}

/// When the newest backup of a folder was made.
fn newest_in(folder: &Path) -> Option<Timestamp> {
    found_in(folder).last().map(|(at, _)| *at)
}

/// Those that may go: all but the last of each of the last days on which one was made, and of each of the last months.
fn thinned(found: Vec<(Timestamp, PathBuf)>) -> Vec<(Timestamp, PathBuf)> {
    let Some((newest, _)) = found.last() else { return Vec::new() };
    let newest = newest.to_zoned_datetime(TimeZone::UTC).date();
    let days = newest.saturating_sub((KEPT_DAYS - 1).days());
    let months = newest.first_of_month().saturating_sub((KEPT_MONTHS - 1).months());
    let (mut seen_days, mut seen_months) = (BTreeSet::new(), BTreeSet::new());
    let mut gone: Vec<_> = found
        .into_iter()
        .rev()
        .filter(|(at, _)| {
            let date = at.to_zoned_datetime(TimeZone::UTC).date();
            let last_of_day = seen_days.insert(date) && date >= days;
            let last_of_month = seen_months.insert((date.year(), date.month())) && date >= months;
            !last_of_day && !last_of_month
        })
        .collect();
    gone.reverse();
    gone
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_tells_its_moment() {
        let at: Timestamp = "2026-11-29T23:04:05Z".parse().expect("a moment");
        assert_eq!(name_of(at), "setwright-2026-11-29-230405.db");
        assert_eq!(moment_of(&name_of(at)), Some(at));
        for other in ["shop.db", "setwright-2026-11-29.db", "setwright-2026-13-29-230405.db", "setwright-.db", ""] {
            assert_eq!(moment_of(other), None, "{other}");
        }
    }

    /// Two a day for three years: fourteen days, and the last of each of twelve months; never the newest.
    #[test]
    fn older_backups_are_thinned_out() {
        let first: Timestamp = "2024-01-01T06:00:00Z".parse().expect("a moment");
        let all: Vec<_> = (0..2 * 1000)
            .map(|half_day| {
                let at = first + SignedDuration::from_hours(12 * half_day);
                (at, PathBuf::from(name_of(at)))
            })
            .collect();
        let newest = all.last().expect("some").0;
        let gone: BTreeSet<Timestamp> = thinned(all.clone()).into_iter().map(|(at, _)| at).collect();
        let kept: Vec<Timestamp> = all.iter().map(|(at, _)| *at).filter(|at| !gone.contains(at)).collect();
        assert!(kept.contains(&newest));
        // 1000 days from the first of January 2024 end on 26 September 2026: of its month only days of these fourteen.
        assert_eq!(kept.len(), 14 + 11, "{kept:?}");
        assert!(kept.iter().all(|at| at.to_string().contains("T18:00")), "the last of each day");
        assert_eq!(kept[0].to_string(), "2025-10-31T18:00:00Z");
        // Once more nothing goes: what is left is what is kept.
        let left: Vec<_> = all.into_iter().filter(|(at, _)| !gone.contains(at)).collect();
        assert!(thinned(left).is_empty());
    }
}
