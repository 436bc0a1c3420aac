//! What another screen read meanwhile: an entry of a page that is out of date takes no reading's place unseen.

use crate::AppError;
use crate::job::JobFile;
use crate::need::need_version;
use store::Tx;
use trade::id::ReadingId;
use trade::job::JobClub;
use trade::reading::{Reading, What};

/// What a screen showed when an entry was typed there.
#[derive(Clone, Copy)]
pub(crate) struct Shown<'a> {
    /// Version of the club.
    pub version: Option<i64>,
    /// The entry waited for the network: others of the same screen may have come before it.
    pub late: bool,
    /// Ids of readings that it showed, and request keys of its own.
    pub seen: &'a [String],
}

/// Refuses to overwrite a reading that the screen did not show, and tells both values. If nothing would be overwritten, an entry
/// that waited for the network is kept even if the club has changed; any other must be looked at first.
///
/// # Errors
/// A reading that was made meanwhile, a club that was changed; what the store says.
pub(crate) async fn need_unread(
    tx: &mut Tx,
    file: &JobFile,
    club: &JobClub,
    typed: &[(&Reading, bool)],
    shown: Shown<'_>,
) -> Result<(), AppError> {
    if shown.version.is_none_or(|version| version == club.version) {
        return Ok(());
    }
    let own = own_readings(tx, shown.seen).await?;
    let known = |id: &ReadingId| shown.seen.iter().any(|seen| seen == id.as_str()) || own.contains(id);
    let standing = trade::reading::standing(&file.readings);
    for (new, again) in typed {
        let there = standing.iter().rev().find(|r| r.club == club.id && r.step == new.step && r.what == new.what);
        // A second reading stands beside the first, and the same figure is the same reading.
        let Some(there) = there.filter(|there| !again && there.value != new.value && !known(&there.id)) else {
            continue;
        };
        return Err(AppError::conflict(MeanwhileFault::Read {
            number: club.target.number.clone(),
            what: new.what,
            there: there.typed.clone(),
            by: there.by.clone(),
            here: new.typed.clone(),
        }));
    }
    if shown.late { Ok(()) } else { need_version(club, shown.version) }
}

/// The readings that were made with these request keys.
async fn own_readings(tx: &mut Tx, keys: &[String]) -> Result<Vec<ReadingId>, AppError> {
    let mut own = Vec::new();
    for key in keys {
        let mut entry = 0;
        while let Some(reading) = tx.reading_by_request_key(&request_key(key, entry)).await? {
            own.push(reading.id);
            entry += 1;
        }
    }
    Ok(own)
}

/// Each entry of a request has a key of its own, made from the sender's.
pub(crate) fn request_key(sent: &str, entry: usize) -> String {
    format!("{sent}/{entry}")
}

fact::facts! {
    /// What happened on another screen.
    pub(crate) enum MeanwhileFault: "meanwhile" {
        /// The same was read there.
        Read { number: String, what: What, there: String, by: String, here: String },
    }
}
