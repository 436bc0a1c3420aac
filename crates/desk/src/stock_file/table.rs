//! A file as a table of texts: CSV with any separator, or one sheet of a workbook, before anything is known of its
//! columns.

use super::StockFileError;
use super::fault::CellFault;
use super::formula;
use super::mapping::heading_of;
use super::refuse::{Shape, shape_of};
use super::xlsx;

/// Most rows with something in them.
pub const ROWS_MAX: usize = 100_000;
/// Most columns.
pub const COLUMNS_MAX: usize = 256;
/// The headings are looked for in so many rows from the top.
const HEADINGS_WITHIN: usize = 20;

/// A cell that holds no usable text, and why.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Trouble {
    /// Place of its column, from 0.
    pub column: usize,
    /// What is wrong with it.
    pub fault: CellFault,
}

/// A row with something in it.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct TableRow {
    /// Line of the text, or row of the sheet, from 1.
    pub line: u64,
    /// Its cells as texts.
    pub cells: Vec<String>,
    pub(super) trouble: Vec<Trouble>,
}

impl TableRow {
    /// The cell in a column, without blanks around it; empty where there is none.
    #[must_use]
    pub fn cell(&self, column: usize) -> &str {
        self.cells.get(column).map_or("", |cell| cell.trim())
    }

    fn is_blank(&self) -> bool {
        self.trouble.is_empty() && self.cells.iter().all(|cell| cell.trim().is_empty())
    }
}

/// A file of parts whose columns are named but not yet understood.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Table {
    /// The sheet that was read; empty for a text.
    pub sheet: String,
    /// All sheets of the workbook; none for a text.
    pub sheets: Vec<String>,
    /// Line of the headings, from 1.
    pub header_line: u64,
    /// The headings, each only once: a second `mass` is `mass (2)`, a column without one is `column 3`.
    pub header: Vec<String>,
    /// The rows below the headings that have something in them.
    pub rows: Vec<TableRow>,
    /// Whether each row must have as many cells as there are headings, as in a text.
    pub(super) even: bool,
    /// Headings that stood there more than once.
    pub(super) twice: Vec<String>,
}

/// The rows of a file before its headings are found.
pub(super) struct Raw {
    pub sheet: String,
    pub sheets: Vec<String>,
    pub rows: Vec<TableRow>,
    /// Merged cells: first and last row, first and last column, as they are named in the sheet. Rows from 1.
    pub merged: Vec<Merged>,
    pub even: bool,
}

/// Cells that were merged into one.
pub(super) struct Merged {
    pub rows: (u64, u64),
    pub columns: (usize, usize),
    pub name: String,
}

/// Reads a CSV text (separated by commas, semicolons or tabs) or a sheet of an XLSX workbook (ECMA-376).
///
/// `sheet` names the sheet; left out, the first one that has a row. `header_line` is the line of the headings; left out,
/// the first of the uppermost rows in which two columns are known by name, else the first row with something in it.
///
/// # Errors
/// [`StockFileError`] where the file is neither, is damaged or locked, or is larger than [`ROWS_MAX`], [`COLUMNS_MAX`]
/// or `UNPACKED_MAX_BYTES` allow; where the sheet or the line of the headings is not there.
pub fn read_table(bytes: &[u8], sheet: Option<&str>, header_line: Option<u64>) -> Result<Table, StockFileError> {
    let raw = match shape_of(bytes)? {
        Shape::Text(text) => {
            if let Some(name) = sheet.filter(|name| !name.trim().is_empty()) {
                return Err(StockFileError::NoSheet { name: name.to_owned(), known: None });
            }
            rows_of_text(text)?
        }
        Shape::Workbook => xlsx::rows_of(bytes, sheet)?,
    };
    with_headings(raw, header_line)
}

/// The separator that stands most often in the first line outside quotes; a comma where none does.
fn separator(text: &str) -> u8 {
    let line = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    let mut quoted = false;
    let mut counts = [(b',', 0usize), (b';', 0), (b'\t', 0)];
    for byte in line.bytes() {
        match byte {
            b'"' => quoted = !quoted,
            byte if !quoted => {
                if let Some((_, count)) = counts.iter_mut().find(|(mark, _)| *mark == byte) {
                    *count += 1;
                }
            }
            _ => {}
        }
    }
    counts.iter().rev().max_by_key(|(_, count)| *count).map_or(b',', |(mark, _)| *mark)
}

fn rows_of_text(text: &str) -> Result<Raw, StockFileError> {
    let mut reader = csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(separator(text))
        .from_reader(text.as_bytes());
    let mut rows = Vec::new();
    let mut lines = Lines { text: text.as_bytes(), at: 0, line: 1 };
    for record in reader.records() {
        let record = record.map_err(|e| StockFileError::NotCsv { problem: e.to_string() })?;
        let row = TableRow {
            line: lines.of_record(record.position().map_or(0, csv::Position::byte)),
            cells: record.iter().map(|cell| formula::bare(cell).to_owned()).collect(),
            trouble: Vec::new(),
        };
        if !row.is_blank() {
            push(&mut rows, row)?;
        }
    }
    Ok(Raw { sheet: String::new(), sheets: Vec::new(), rows, merged: Vec::new(), even: true })
}

/// Counts lines from record to record. The reader itself counts a line at its line feed, but begins a record before the
/// line feed of the one above where lines end in CRLF.
struct Lines<'a> {
    text: &'a [u8],
    at: usize,
    line: u64,
}

impl Lines<'_> {
    /// The line of the record that the reader says to begin at this byte.
    fn of_record(&mut self, byte: u64) -> u64 {
        let mut start = usize::try_from(byte).unwrap_or(usize::MAX).min(self.text.len());
        start += self.text[start..].iter().take_while(|b| matches!(b, b'\r' | b'\n')).count();
        self.line += self.text[self.at..start].iter().filter(|b| **b == b'\n').count() as u64;
        self.at = start;
        self.line
    }
}

/// Adds a row as long as the limit is kept. The headings count as one.
pub(super) fn push(rows: &mut Vec<TableRow>, row: TableRow) -> Result<(), StockFileError> {
    if rows.len() > ROWS_MAX {
        return Err(StockFileError::TooManyRows { limit: ROWS_MAX });
    }
    rows.push(row);
    Ok(())
}

fn with_headings(raw: Raw, header_line: Option<u64>) -> Result<Table, StockFileError> {
    if raw.rows.is_empty() {
        return Err(StockFileError::empty());
    }
    let at = match header_line {
        Some(line) => raw
            .rows
            .iter()
            .position(|row| row.line == line)
            .ok_or(StockFileError::NoHeaderLine { line, first: raw.rows[0].line })?,
        None => {
            let known = |row: &TableRow| row.cells.iter().filter(|cell| heading_of(cell).is_some()).count();
            raw.rows.iter().take(HEADINGS_WITHIN).position(|row| known(row) >= 2).unwrap_or(0)
        }
    };
    let mut rows = raw.rows;
    let mut below = rows.split_off(at + 1);
    let head = rows.swap_remove(at);
    if let Some(merged) = raw.merged.iter().find(|m| (m.rows.0..=m.rows.1).contains(&head.line)) {
        return Err(StockFileError::MergedHeadings { cells: merged.name.clone() });
    }
    mark_merged(&mut below, &raw.merged);
    let widest = below.iter().map(|row| row.cells.len()).max().unwrap_or(0);
    let width = if raw.even { head.cells.len() } else { head.cells.len().max(widest) };
    if width > COLUMNS_MAX {
        return Err(StockFileError::TooManyColumns { limit: COLUMNS_MAX });
    }
    let mut header: Vec<String> = Vec::with_capacity(width);
    let mut twice = Vec::new();
    for column in 0..width {
        let name = head.cell(column);
        let name = if name.is_empty() { format!("column {}", column + 1) } else { name.to_owned() };
        let again = header.iter().filter(|h| **h == name).count();
        if again > 0 {
            twice.push(name.clone());
        }
        header.push(if again == 0 { name } else { format!("{name} ({})", again + 1) });
    }
    Ok(Table {
        sheet: raw.sheet,
        sheets: raw.sheets,
        header_line: head.line,
        header,
        rows: below,
        even: raw.even,
        twice,
    })
}

/// Only the first of merged cells holds a value, so each row that they touch is told.
fn mark_merged(rows: &mut [TableRow], merged: &[Merged]) {
    for cells in merged {
        let from = rows.partition_point(|row| row.line < cells.rows.0);
        let to = rows.partition_point(|row| row.line <= cells.rows.1);
        for row in &mut rows[from..to] {
            row.trouble.extend(
                (cells.columns.0..=cells.columns.1)
                    .take(COLUMNS_MAX)
                    .map(|column| Trouble { column, fault: CellFault::Merged { cells: cells.name.clone() } }),
            );
        }
    }
}
