//! What the columns of a list are, remembered under a name, so that the next list of the same supplier is known by its
//! headings.

use super::Mapping;
use super::mapping::plain;
use super::table::{ROWS_MAX, Table};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use trade::error::TradeError;
use utoipa::ToSchema;

/// Longest name.
const NAME_MAX: usize = 80;

/// A remembered layout.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields)]
pub struct Layout {
    /// What the shop calls it: `Heron list`.
    #[schema(min_length = 1, max_length = 80, pattern = r"\S")]
    pub name: String,
    /// Headings of the lists that it is for, in any order.
    #[schema(min_items = 1)]
    pub headings: Vec<String>,
    /// What their columns are.
    pub mapping: Mapping,
}

impl Layout {
    /// The layout of a list. `found` is the same list with its sheet and line of headings looked for: what is found by
    /// itself is not remembered, since it may stand elsewhere in the next list.
    ///
    /// # Errors
    /// A name that is none.
    pub fn of(name: &str, table: &Table, mapping: &Mapping, found: &Table) -> Result<Self, TradeError> {
        let mut mapping = mapping.clone();
        if found.header_line == table.header_line && found.sheet == table.sheet {
            mapping.header_line = None;
            mapping.sheet = None;
        } else {
            mapping.header_line = Some(table.header_line);
            mapping.sheet = Some(table.sheet.clone()).filter(|s| !s.is_empty());
        }
        let layout = Self { name: name.trim().to_owned(), headings: table.header.clone(), mapping };
        layout.check()?;
        Ok(layout)
    }

    /// Refuses a layout that no list could be known by.
    ///
    /// # Errors
    /// A name that is empty or longer than 80 letters; no headings.
    pub fn check(&self) -> Result<(), TradeError> {
        if self.name.trim().is_empty() || self.name.chars().count() > NAME_MAX {
            return Err(TradeError::refused(LayoutFault::BadName { name: self.name.clone(), most: NAME_MAX }));
        }
        if self.mapping.header_line.is_some_and(|line| !(1..=ROWS_MAX as u64).contains(&line)) {
            return Err(TradeError::refused(LayoutFault::BadLine { name: self.name.clone(), most: ROWS_MAX }));
        }
        if self.headings.iter().all(|h| h.trim().is_empty()) {
            return Err(TradeError::refused(LayoutFault::NoHeadings { name: self.name.clone() }));
        }
        Ok(())
    }

    /// Whether a list has these headings, in whatever order and capitals.
    #[must_use]
    pub fn fits(&self, table: &Table) -> bool {
        let set = |headings: &[String]| headings.iter().map(|h| plain(h)).collect::<BTreeSet<_>>();
        set(&self.headings) == set(&table.header)
    }
}

fact::facts! {
    /// What is refused of remembered columns.
    pub(crate) enum LayoutFault: "layout_fault" {
        BadName { name: String, most: usize },
        BadLine { name: String, most: usize },
        NoHeadings { name: String },
    }
}
