//! Parts and models as files: CSV (RFC 4180) or XLSX (ECMA-376) for parts, JSON for models.
//!
//! The header of a file that was exported, in any order; `code` and `model` must be there, the rest may be left out:
//!
//! ```text
//! code,kind,model,number,mass_g,length_mm,balance_point_mm,cpm,loft_deg,lie_deg,lot,place,state,count,owner
//! ```
//!
//! Any other list is read by a [`Mapping`], which says what its columns are; many headings are known by themselves.
//! Cells are written as in the workshop: `256.1`, `"256,1"` (a decimal comma needs quotes where commas separate the
//! cells), `8.9 oz`, `36 3/4 in`, `262 cpm`. The unit of the column holds where a cell has none. A column `problem` and one whose
//! heading is in brackets are ignored, so that the file of refused rows can be mended and imported again. Good rows are
//! kept whatever the others are like. A cell that a spreadsheet would take for a formula leaves with an apostrophe before
//! it, which is taken off when the file comes back.

mod cells;
mod fault;
mod formula;
mod layout;
mod mapping;
mod models;
mod refuse;
mod table;
mod workbook;
mod xlsx;

pub use fault::CellFault;
pub use layout::Layout;
pub use mapping::{Mapping, field_names, heading_of, units_of};
pub use models::{BadModel, ModelFileFault, ModelsImported, read_models, write_models};
pub use refuse::{OtherFile, StockFileError};
pub use table::{COLUMNS_MAX, ROWS_MAX, Table, TableRow, read_table};
pub use trade::part_field::COLUMNS;
pub use workbook::write_workbook;

use cells::RowReader;
use fact::{Fact, Refusal, Told};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use trade::model::Library;
use trade::part::Part;
use utoipa::ToSchema;
use words::Words;

/// The column of diagnoses, ignored on import.
const PROBLEM: &str = "problem";

/// What an import gave.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Imported {
    /// The good rows, in the order of the file. Their `id` is empty until the store gives one.
    pub parts: Vec<Part>,
    /// Doubts about good rows.
    pub warnings: Vec<RowWarning>,
    /// The refused rows.
    pub bad: Vec<BadRow>,
    /// The header for the file of refused rows: as it stood, with what the mapping said written into it.
    pub header: Vec<String>,
    /// Headings of columns that were not used.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub unused: Vec<String>,
}

/// A good row that looks wrong.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct RowWarning {
    /// Line of the file, from 1.
    pub line: u64,
    /// Code of the part.
    pub code: String,
    /// What looks wrong.
    pub doubt: Told,
}

/// A refused row.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct BadRow {
    /// Line of the file where the row starts, from 1.
    pub line: u64,
    /// Column at fault; empty where it is about the row.
    pub column: String,
    /// The cell as it stood.
    pub cell: String,
    /// What is wrong with it.
    pub problem: Told,
    /// What is wrong with other cells of the same row.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub also: Vec<BadCell>,
    /// All cells as they stood, after those that hold for every row.
    pub row: Vec<String>,
}

/// A refused cell beside the first of its row.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct BadCell {
    /// Column at fault; empty where it is about the row.
    pub column: String,
    /// The cell as it stood.
    pub cell: String,
    /// What is wrong with it.
    pub problem: Told,
}

impl BadCell {
    /// What is wrong with a row as a whole.
    #[must_use]
    pub fn of_row(fault: &CellFault) -> Self {
        Self { column: String::new(), cell: String::new(), problem: fault.told() }
    }

    fn refusal(&self) -> Refusal {
        let what = self.problem.clone();
        let fault = match self.column.as_str() {
            "" => RowFault::Row { what },
            column => RowFault::Cell { column: column.to_owned(), cell: self.cell.clone(), what },
        };
        Refusal::new(&fault).at(&self.column)
    }
}

fact::facts! {
    /// What is wrong in a row.
    pub enum RowFault: "row_fault" {
        /// With one cell.
        Cell {
            /// Name of the field that the cell is for: `mass`, `model` …
            column: String,
            /// The cell as it stood.
            cell: String,
            /// What is wrong with it.
            what: Told,
        },
        /// With the row as a whole.
        Row {
            /// What is wrong with it.
            what: Told,
        },
        /// With one cell, with its line.
        Line {
            /// Line of the file, from 1.
            line: u64,
            /// What is wrong there.
            what: Told,
        },
        /// With the row as a whole, with its line.
        LineAsWhole {
            /// Line of the file, from 1.
            line: u64,
            /// What is wrong there.
            what: Told,
        },
    }
}

impl BadRow {
    /// A row that is refused as a whole.
    #[must_use]
    pub fn of_row(line: u64, column: &str, fault: &CellFault) -> Self {
        let (column, cell) = (column.to_owned(), String::new());
        Self { line, column, cell, problem: fault.told(), also: Vec::new(), row: Vec::new() }
    }

    /// What is wrong with its first bad cell, without the cell.
    #[must_use]
    pub fn what(&self) -> Refusal {
        Refusal::new(&self.problem)
    }

    /// What is wrong in it, the first first, without the line.
    #[must_use]
    pub fn refusals(&self) -> Vec<Refusal> {
        let first = BadCell { column: self.column.clone(), cell: self.cell.clone(), problem: self.problem.clone() };
        std::iter::once(&first).chain(&self.also).map(BadCell::refusal).collect()
    }

    /// The same in words, with the line first.
    #[must_use]
    pub fn told(&self, words: &Words) -> String {
        let line = self.line;
        let as_whole = self.column.is_empty();
        let with_line = |(i, refusal): (usize, Refusal)| match i {
            0 if as_whole => words.refusal(&refusal.within(|what| RowFault::LineAsWhole { line, what }.into())),
            0 => words.refusal(&refusal.within(|what| RowFault::Line { line, what }.into())),
            _ => words.refusal(&refusal),
        };
        self.refusals().into_iter().enumerate().map(with_line).collect::<Vec<_>>().join("; ")
    }
}

/// Reads a file of parts whose headings say by themselves what they are. `existing` are the codes already in stock.
///
/// # Errors
/// [`StockFileError`] where the file as a whole is not such a file; a bad row is no error but stands in
/// [`Imported::bad`].
pub fn read(bytes: &[u8], library: &Library, existing: &[String]) -> Result<Imported, StockFileError> {
    read_rows(&read_table(bytes, None, None)?, &Mapping::default(), library, existing)
}

/// Reads the rows of a list of parts by what a mapping says of its columns. The sheet and the line of the headings were
/// chosen when the table was read.
///
/// # Errors
/// [`StockFileError`] where the mapping does not fit the headings; a bad row is no error but stands in
/// [`Imported::bad`].
pub fn read_rows(
    table: &Table,
    mapping: &Mapping,
    library: &Library,
    existing: &[String],
) -> Result<Imported, StockFileError> {
    let resolved = mapping.resolve(table)?;
    let mut seen: BTreeMap<String, u64> = existing.iter().map(|code| (code.to_lowercase(), 0)).collect();
    let reader = RowReader { library, table, resolved: &resolved };
    let mut made = Imported { header: reader.header(), unused: resolved.unused.clone(), ..Imported::default() };
    for row in &table.rows {
        match reader.part(row, &mut seen) {
            Ok((part, doubts)) => {
                let (line, code) = (row.line, part.code.clone());
                made.warnings.extend(doubts.into_iter().map(|doubt| RowWarning { line, code: code.clone(), doubt }));
                made.parts.push(part);
            }
            Err(bad) => made.bad.push(*bad),
        }
    }
    Ok(made)
}

/// Writes parts as a file that [`read`] takes: the columns of [`COLUMNS`], lines ended by CRLF as RFC 4180 has it, a mass
/// as it was typed. A file in this form comes back byte for byte.
#[must_use]
pub fn write(parts: &[Part]) -> String {
    let rows = parts.iter().map(cells::row_of);
    to_csv(std::iter::once(COLUMNS.map(str::to_owned).to_vec()).chain(rows))
}

/// The refused rows as a file to mend and import again: the diagnosis first, then the cells as they stood.
///
/// The diagnosis comes first so that a row with a cell too many keeps it in its place.
#[must_use]
pub fn write_bad(imported: &Imported, words: &Words) -> String {
    let with_problem = |problem: &str, cells: &[String]| {
        std::iter::once(problem.to_owned()).chain(cells.iter().cloned()).collect::<Vec<_>>()
    };
    // A file that was mended before has its old diagnoses; they are replaced, not kept beside the new ones.
    let old = imported.header.iter().position(|h| h.trim().eq_ignore_ascii_case(PROBLEM));
    let without = |cells: &[String]| -> Vec<String> {
        cells.iter().enumerate().filter(|(i, _)| Some(*i) != old).map(|(_, cell)| cell.clone()).collect()
    };
    let header = with_problem(PROBLEM, &without(&imported.header));
    let rows = imported.bad.iter().map(|bad| with_problem(&bad.told(words), &without(&bad.row)));
    to_csv(std::iter::once(header).chain(rows))
}

/// Rows as a CSV file: commas between, quotes where a cell needs them, no cell that a spreadsheet would run (see
/// [`formula`]).
pub(crate) fn to_csv(rows: impl Iterator<Item = Vec<String>>) -> String {
    let mut text = String::new();
    for row in rows {
        for (i, cell) in row.iter().map(|cell| formula::guarded(cell)).enumerate() {
            if i > 0 {
                text.push(',');
            }
            if cell.contains([',', '"', '\n', '\r']) {
                text.push('"');
                text.push_str(&cell.replace('"', "\"\""));
                text.push('"');
            } else {
                text.push_str(&cell);
            }
        }
        text.push_str("\r\n");
    }
    text
}
