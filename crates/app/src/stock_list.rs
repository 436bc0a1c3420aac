//! Lists of parts from other programs, workbooks, and what a scanned code stands for.

use crate::lanes::Lane;
use crate::look_up::LookUp;
use crate::stock::{IMPORT_MAX_BYTES, PartQuery, PartsImported, unreadable};
use crate::{App, AppError, Kind, load_library};
use desk::stock_file::{self, Imported, Layout, Mapping, Table};
use fact::Refusal;
use jiff::tz::TimeZone;
use serde::Serialize;
use std::collections::HashSet;
use trade::error::Noun;
use trade::model::Library;
use trade::part::Part;
use utoipa::ToSchema;
use words::{Language, Words};

/// A list that was looked at and not kept.
#[derive(Debug, Clone)]
pub struct Looked {
    /// Its headings and rows.
    pub table: Table,
    /// What its columns were taken for.
    pub mapping: Mapping,
    /// What that gives; nothing where the mapping does not fit.
    pub imported: Imported,
    /// Why the mapping does not fit, and what to do.
    pub refused: Option<Refusal>,
    /// Name of the remembered layout that the list was known by.
    pub known_as: Option<String>,
}

/// How far an import has come.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ImportProgress {
    /// The key that whoever sent the list gave it.
    pub key: String,
    /// Rows written.
    pub done: usize,
    /// Rows in all.
    pub all: usize,
}

/// What a scanned code stands for.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Scanned {
    /// A part in stock.
    Part {
        /// Its code as it is kept.
        code: String,
    },
    /// A club.
    Club {
        /// Number of its job.
        job: i64,
        /// Its place in the tray.
        slot: i64,
    },
}

impl App {
    /// Opens a list of parts, CSV or a workbook, and says what it would give by a mapping; without one, by what its
    /// headings say. Nothing is kept.
    ///
    /// # Errors
    /// A file that is no list at all, or a sheet that is not there. A mapping that does not fit is told in the answer.
    pub async fn look_at_parts(&self, bytes: &[u8], mapping: Option<&Mapping>) -> Result<Looked, AppError> {
        let mut tx = self.store.read().await?;
        let layouts = if mapping.is_none() { tx.layouts().await? } else { Vec::new() };
        let library = load_library(&mut tx).await?;
        let codes = tx.part_codes().await?;
        drop(tx);
        self.on_lane(Lane::Desk, || {
            let known = known_layout(layouts, bytes)?;
            let asked = mapping.or(known.as_ref().map(|layout| &layout.mapping));
            let (sheet, header_line) = asked.map_or((None, None), |m| (m.sheet.as_deref(), m.header_line));
            let table = table_of(bytes, sheet, header_line)?;
            let mut mapping = asked.cloned().unwrap_or_else(|| Mapping::guessed(&table));
            if known.is_some() {
                mapping = Mapping { header_line: Some(table.header_line), ..mapping.spelled_as(&table) };
            }
            let (imported, refused) = match stock_file::read_rows(&table, &mapping, &library, &codes) {
                Ok(imported) => (imported, None),
                Err(error) => (Imported::default(), Some(Refusal::new(&error))),
            };
            Ok(Looked { table, mapping, imported, refused, known_as: known.map(|layout| layout.name) })
        })
        .await
    }

    /// Imports a list of parts whose headings say what they are: good rows are kept, bad ones named.
    ///
    /// # Errors
    /// A file that is no such list; what the store says.
    pub async fn import_parts(&self, bytes: &[u8]) -> Result<PartsImported, AppError> {
        self.import_mapped(bytes, &Mapping::default(), |_, _| {}).await
    }

    /// Imports a list of parts by a mapping, all good rows in one transaction. `progress` hears how many of how many
    /// rows are written.
    ///
    /// # Errors
    /// A file that is no such list, a mapping that does not fit it; what the store says.
    pub async fn import_mapped(
        &self,
        bytes: &[u8],
        mapping: &Mapping,
        progress: impl Fn(usize, usize),
    ) -> Result<PartsImported, AppError> {
        /// Rows between two reports of the progress.
        const STEP: usize = 400;
        // The list is read before it is this writer's turn: reading takes seconds, and the bench writes meanwhile.
        let mut imported = self.read_list(bytes, mapping).await?;
        let mut tx = self.store.write().await?;
        if has_codes_of(&mut tx, &imported.parts).await? {
            // One of its codes came into stock in between: what is refused now is named as always.
            let library = load_library(&mut tx).await?;
            imported = parsed(bytes, mapping, &library, &tx.part_codes().await?)?;
        }
        let now = self.now();
        let with_id = |part: &Part| Part { id: crate::new_id().as_str().into(), ..part.clone() };
        let parts: Vec<Part> = imported.parts.iter().map(with_id).collect();
        progress(0, parts.len());
        let mut done = 0;
        for some in parts.chunks(STEP) {
            tx.insert_parts(some, now).await?;
            done += some.len();
            progress(done, parts.len());
        }
        tx.commit().await?;
        self.tell(None, "stock");
        let bad_csv = if imported.bad.is_empty() {
            String::new()
        } else {
            stock_file::write_bad(&imported, &Words::of_documents(Language::english(), TimeZone::UTC))
        };
        Ok(PartsImported {
            kept: i64::try_from(imported.parts.len()).unwrap_or(i64::MAX),
            warnings: imported.warnings,
            unused: imported.unused,
            bad: imported.bad,
            bad_csv,
        })
    }

    /// The remembered layouts of lists, by name.
    ///
    /// # Errors
    /// What the store says.
    pub async fn layouts(&self) -> Result<Vec<Layout>, AppError> {
        Ok(self.store.read().await?.layouts().await?)
    }

    /// The remembered layout of this name.
    ///
    /// # Errors
    /// No such layout; what the store says.
    pub async fn layout(&self, name: &str) -> Result<Layout, AppError> {
        let found = self.layouts().await?.into_iter().find(|l| l.name.to_lowercase() == name.trim().to_lowercase());
        found.ok_or_else(|| AppError::not_found(Noun::Layout, name, &LookUp::Layouts))
    }

    /// Remembers what the columns of a list are, in place of what was remembered under the name.
    ///
    /// # Errors
    /// A name that is none; a list that is none; what the store says.
    pub async fn remember_layout(&self, name: &str, bytes: &[u8], mapping: &Mapping) -> Result<Layout, AppError> {
        let made = || {
            let table = table_of(bytes, mapping.sheet.as_deref(), mapping.header_line)?;
            Ok::<_, AppError>(Layout::of(name, &table, mapping, &table_of(bytes, None, None)?)?)
        };
        let layout = self.on_lane(Lane::Desk, made).await?;
        self.put_layout(&layout).await?;
        Ok(layout)
    }

    /// Remembers a layout as it is given.
    ///
    /// # Errors
    /// A name that is none, no headings; what the store says.
    pub async fn put_layout(&self, layout: &Layout) -> Result<(), AppError> {
        layout.check()?;
        let mut tx = self.store.write().await?;
        tx.put_layout(layout, self.now()).await?;
        tx.commit().await?;
        Ok(())
    }

    /// Forgets a layout.
    ///
    /// # Errors
    /// No such layout; what the store says.
    pub async fn forget_layout(&self, name: &str) -> Result<(), AppError> {
        let mut tx = self.store.write().await?;
        tx.remove_layout(name).await?;
        tx.commit().await?;
        Ok(())
    }

    /// The parts as a workbook (XLSX) that can be imported again.
    ///
    /// # Errors
    /// What the store says.
    pub async fn export_workbook(&self, query: &PartQuery) -> Result<Vec<u8>, AppError> {
        let (parts, _) = self.parts(&PartQuery { limit: None, offset: None, ..query.clone() }).await?;
        let written = self.on_lane(Lane::Desk, || stock_file::write_workbook(&parts)).await;
        written.map_err(|e| AppError::Internal(e.to_string()))
    }

    /// Reads a list against the models and codes of the stock, beside the threads that answer.
    async fn read_list(&self, bytes: &[u8], mapping: &Mapping) -> Result<Imported, AppError> {
        let mut tx = self.store.read().await?;
        let library = load_library(&mut tx).await?;
        let codes = tx.part_codes().await?;
        drop(tx);
        self.on_lane(Lane::Desk, || parsed(bytes, mapping, &library, &codes)).await
    }

    /// The parts with these codes, in this order, each once.
    ///
    /// # Errors
    /// A code that is not there; what the store says.
    pub async fn parts_by_code(&self, codes: &[String]) -> Result<Vec<Part>, AppError> {
        let mut tx = self.store.read().await?;
        let mut seen = std::collections::BTreeSet::new();
        let mut found = Vec::with_capacity(codes.len());
        for code in codes.iter().map(|c| c.trim()).filter(|c| !c.is_empty()) {
            if seen.insert(code.to_lowercase()) {
                let part = tx.part_by_code(code).await?;
                found.push(part.ok_or_else(|| AppError::not_found(Noun::Part, code, &LookUp::Stock))?);
            }
        }
        Ok(found)
    }

    /// What a scanned code stands for: a part, or the club of a job card.
    ///
    /// # Errors
    /// A code that is neither; what the store says.
    pub async fn scanned(&self, code: &str) -> Result<Scanned, AppError> {
        let code = code.trim();
        let part = self.store.read().await?.part_by_code(code).await?;
        if let Some(part) = part {
            return Ok(Scanned::Part { code: part.code });
        }
        match self.card(code).await {
            Ok((job, slot)) => Ok(Scanned::Club { job, slot }),
            Err(e) if e.kind() == Kind::NotFound => Err(AppError::not_found(Noun::PartOrCard, code, &LookUp::Code)),
            Err(e) => Err(e),
        }
    }
}

/// Bytes of a megabyte, as files are told.
const MB: usize = 1_000_000;

fn table_of(bytes: &[u8], sheet: Option<&str>, header_line: Option<u64>) -> Result<Table, AppError> {
    if bytes.len() > IMPORT_MAX_BYTES {
        return Err(AppError::invalid(ListFault::TooLarge {
            size_mb: bytes.len().div_ceil(MB),
            most_mb: IMPORT_MAX_BYTES / MB,
        }));
    }
    stock_file::read_table(bytes, sheet, header_line).map_err(|e| unreadable(&e))
}

/// The layout that a list is known by: one whose headings it has where that layout looks for them.
fn known_layout(layouts: Vec<Layout>, bytes: &[u8]) -> Result<Option<Layout>, AppError> {
    if layouts.is_empty() {
        return Ok(None);
    }
    let found = table_of(bytes, None, None)?;
    Ok(layouts.into_iter().find(|layout| match (&layout.mapping.sheet, layout.mapping.header_line) {
        (None, None) => layout.fits(&found),
        // A sheet or line that this list does not have: it is another list.
        (sheet, line) => table_of(bytes, sheet.as_deref(), line).is_ok_and(|table| layout.fits(&table)),
    }))
}

fn parsed(bytes: &[u8], mapping: &Mapping, library: &Library, codes: &[String]) -> Result<Imported, AppError> {
    let table = table_of(bytes, mapping.sheet.as_deref(), mapping.header_line)?;
    stock_file::read_rows(&table, mapping, library, codes).map_err(|e| unreadable(&e))
}

/// Whether any of these parts has a code that is in stock by now.
async fn has_codes_of(tx: &mut store::Tx, parts: &[Part]) -> Result<bool, AppError> {
    let in_stock: HashSet<String> = tx.part_codes().await?.into_iter().map(|code| code.to_lowercase()).collect();
    Ok(parts.iter().any(|part| in_stock.contains(&part.code.to_lowercase())))
}

fact::facts! {
    /// What is refused of a list to import.
    pub(crate) enum ListFault: "list_fault" {
        TooLarge { size_mb: usize, most_mb: usize },
    }
}
