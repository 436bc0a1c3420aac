//! What deleting a customer takes away, and what stays.

use serde::Serialize;
use trade::customer::NameStands;
use utoipa::ToSchema;
use words::{Words, text};

/// Where a name was typed into something that is never changed, and how often.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct NameStandsIn {
    /// Where it stands.
    pub place: NameStands,
    /// In how many entries.
    pub entries: i64,
}

/// What deleting a customer does, before or after it is done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Deletion {
    /// Number of the customer; it is never given to anybody else.
    pub number: i64,
    /// What stands where the name stood.
    pub code: String,
    /// Jobs that are under way: they must be finished or given up first.
    pub under_way: Vec<i64>,
    /// Codes of their parts that are still here: they are handed back or taken over first.
    pub parts_here: Vec<String>,
    /// Sheets of which no job was made: they go whole.
    pub sheets_removed: i64,
    /// Jobs that are over: they stay with parts, masses and readings, but without name and note.
    pub jobs_kept: Vec<i64>,
    /// Codes of their clubs: they stay, without the name.
    pub clubs_kept: Vec<String>,
    /// Sheets with the same name that belong to no customer: they stay as they are.
    pub other_sheets: i64,
    /// Reasons and notes that somebody typed the name into: they stay.
    pub name_stands: Vec<NameStandsIn>,
    /// Folder of the daily backups; those made before still hold the name. Left out where the shop keeps none.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub backup_folder: Option<String>,
    /// After how many months the last of these daily backups is thinned out.
    pub backup_months: i64,
}

impl Deletion {
    /// What goes, line by line.
    #[must_use]
    pub fn goes(&self, w: &Words) -> Vec<String> {
        let mut lines = vec![w.text("customer-goes-row")];
        if self.sheets_removed > 0 {
            lines.push(text!(w, "customer-goes-sheets", n = self.sheets_removed));
        }
        if !self.jobs_kept.is_empty() {
            let (jobs, n) = (self.jobs_kept.clone(), self.jobs_kept.len());
            lines.push(text!(w, "customer-goes-jobs", code = self.code, jobs = jobs, n = n));
        }
        if !self.clubs_kept.is_empty() {
            let (clubs, n) = (self.clubs_kept.clone(), self.clubs_kept.len());
            lines.push(text!(w, "customer-goes-clubs", code = self.code, clubs = clubs, n = n));
        }
        lines
    }

    /// What stays, line by line, and what the shop must see to itself.
    #[must_use]
    pub fn stays(&self, w: &Words) -> Vec<String> {
        let mut lines = vec![text!(w, "customer-stays-number", code = self.code)];
        if !self.jobs_kept.is_empty() {
            lines.push(w.text("customer-stays-work"));
        }
        if self.other_sheets > 0 {
            lines.push(text!(w, "customer-stays-other-sheets", n = self.other_sheets));
        }
        let stands = self.name_stands.iter();
        lines.extend(stands.map(|one| text!(w, "customer-stays-typed", place = one.place, n = one.entries)));
        lines.push(match &self.backup_folder {
            Some(folder) => text!(w, "customer-stays-backups", folder = folder, months = self.backup_months),
            None => w.text("customer-stays-copies"),
        });
        lines
    }
}
