//! The rows of a workbook (XLSX, ECMA-376), read within stated limits whatever the file says of itself.

use super::StockFileError;
use super::fault::CellFault;
use super::formula;
use super::refuse::OtherFile;
use super::table::{COLUMNS_MAX, Merged, Raw, TableRow, Trouble, push};
use calamine::{DataRef, Reader, Xlsx, XlsxError};
use std::collections::BTreeMap;
use std::io::{Cursor, Read};

/// Most bytes of a workbook when unpacked. A list of 10,000 parts has some 5 MB.
const UNPACKED_MAX_BYTES: u64 = 64 * 1024 * 1024;
/// Most files in the zip of a workbook.
const FILES_MAX: usize = 2_000;
/// Most cells of a sheet, with the empty ones before a filled one.
const CELLS_MAX: usize = 2_000_000;
/// Most groups of merged cells in a sheet.
const MERGED_MAX: usize = 2_000;

/// What a cell says.
enum Said {
    Text(String),
    Trouble(CellFault),
}

pub(super) fn rows_of(bytes: &[u8], sheet: Option<&str>) -> Result<Raw, StockFileError> {
    check_zip(bytes)?;
    let mut book: Xlsx<Cursor<&[u8]>> = Xlsx::new(Cursor::new(bytes)).map_err(|e| damaged(&e))?;
    let sheets = book.sheet_names();
    let wanted = sheet.map(str::trim).filter(|name| !name.is_empty());
    if let Some(name) = wanted {
        let known = sheets.iter().find(|s| s.as_str() == name).or_else(|| {
            let lower = name.to_lowercase();
            sheets.iter().find(|s| s.to_lowercase() == lower)
        });
        let Some(known) = known.cloned() else {
            return Err(StockFileError::NoSheet { name: name.to_owned(), known: Some(sheets) });
        };
        return sheet_of(&mut book, known, sheets);
    }
    for name in sheets.clone() {
        let raw = sheet_of(&mut book, name, sheets.clone())?;
        if !raw.rows.is_empty() {
            return Ok(raw);
        }
    }
    Err(StockFileError::empty())
}

fn damaged(error: &XlsxError) -> StockFileError {
    match error {
        XlsxError::Password => StockFileError::OtherFile { what: OtherFile::Locked },
        other => StockFileError::NotXlsx { problem: other.to_string() },
    }
}

/// Unpacks every file of the zip once into nothing, counting: what the directory says of the sizes need not be true.
fn check_zip(bytes: &[u8]) -> Result<(), StockFileError> {
    let broken = |problem: String| StockFileError::NotXlsx { problem };
    let mut zip = zip::ZipArchive::new(Cursor::new(bytes)).map_err(|e| broken(e.to_string()))?;
    let too_large = StockFileError::UnpackedTooLarge { limit_mb: UNPACKED_MAX_BYTES / (1024 * 1024) };
    if zip.len() > FILES_MAX {
        return Err(broken(format!("it is made of {} files, more than {FILES_MAX}", zip.len())));
    }
    let other = |what| Err(StockFileError::OtherFile { what });
    if zip.index_for_name("xl/workbook.xml").is_none() {
        let has = |name: &str| zip.index_for_name(name).is_some();
        if has("xl/workbook.bin") {
            return other(OtherFile::BinaryWorkbook);
        }
        if has("mimetype") && has("content.xml") {
            return other(OtherFile::OpenDocument);
        }
        // The relations may name another place for it.
        if !zip.file_names().any(|name| name.is_ok_and(|name| name.to_lowercase().ends_with("workbook.xml"))) {
            return other(OtherFile::Zipped);
        }
    }
    let mut total: u64 = 0;
    for i in 0..zip.len() {
        let said = zip.by_index_raw(i).map(|f| f.size()).map_err(|e| broken(e.to_string()))?;
        if said > UNPACKED_MAX_BYTES {
            return Err(too_large);
        }
        let file = zip.by_index(i).map_err(|e| broken(e.to_string()))?;
        let left = UNPACKED_MAX_BYTES - total;
        let unpacked = std::io::copy(&mut file.take(left + 1), &mut std::io::sink());
        total += unpacked.map_err(|e| broken(e.to_string()))?;
        if total > UNPACKED_MAX_BYTES {
            return Err(too_large);
        }
    }
    Ok(())
}

fn sheet_of(book: &mut Xlsx<Cursor<&[u8]>>, name: String, sheets: Vec<String>) -> Result<Raw, StockFileError> {
    let regions = match book.merge_cells_by_sheet_name(&name) {
        Ok(regions) => regions,
        Err(XlsxError::WorksheetNotFound(_) | XlsxError::NotAWorksheet(_)) => Vec::new(),
        Err(e) => return Err(damaged(&e)),
    };
    if regions.len() > MERGED_MAX {
        return Err(StockFileError::NotXlsx {
            problem: format!("the sheet “{name}” has more than {MERGED_MAX} groups of merged cells"),
        });
    }
    let merged = regions
        .iter()
        .map(|d| Merged {
            rows: (u64::from(d.start.0) + 1, u64::from(d.end.0) + 1),
            columns: (d.start.1 as usize, d.end.1 as usize),
            name: format!("{}:{}", cell_name(d.start), cell_name(d.end)),
        })
        .collect();
    let mut cells = match book.worksheet_cells_reader(&name) {
        Ok(cells) => cells,
        // A sheet that is only a drawing has no cells.
        Err(XlsxError::WorksheetNotFound(_) | XlsxError::NotAWorksheet(_)) => {
            return Ok(Raw { sheet: name, sheets, rows: Vec::new(), merged, even: false });
        }
        Err(e) => return Err(damaged(&e)),
    };
    // Rows may stand in any order in a file that a program wrote.
    let mut found: BTreeMap<u64, TableRow> = BTreeMap::new();
    let (mut places, mut letters) = (0usize, 0usize);
    while let Some(cell) = cells.next_cell_with_formula_metadata().map_err(|e| damaged(&e))? {
        let said = said(&cell.value, cell.formula.is_some(), cell.pos);
        let empty = matches!(&said, Said::Text(text) if text.trim().is_empty());
        if empty {
            continue;
        }
        let (line, column) = (u64::from(cell.pos.0) + 1, cell.pos.1 as usize);
        if column >= COLUMNS_MAX {
            return Err(StockFileError::TooManyColumns { limit: COLUMNS_MAX });
        }
        if !found.contains_key(&line) && found.len() > super::table::ROWS_MAX {
            return Err(StockFileError::TooManyRows { limit: super::table::ROWS_MAX });
        }
        let row = found.entry(line).or_insert_with(|| TableRow { line, ..TableRow::default() });
        if row.cells.len() <= column {
            places += column + 1 - row.cells.len();
            row.cells.resize(column + 1, String::new());
        }
        match said {
            Said::Text(text) => {
                letters += text.len();
                formula::bare(&text).clone_into(&mut row.cells[column]);
            }
            Said::Trouble(fault) => row.trouble.push(Trouble { column, fault }),
        }
        // A few bytes of the file can name one long text again and again, or a cell far to the right in every row.
        if places > CELLS_MAX || letters as u64 > UNPACKED_MAX_BYTES {
            return Err(StockFileError::TooManyCells {
                limit: CELLS_MAX,
                letters_mb: UNPACKED_MAX_BYTES / (1024 * 1024),
            });
        }
    }
    let mut rows = Vec::with_capacity(found.len());
    for row in found.into_values() {
        push(&mut rows, row)?;
    }
    Ok(Raw { sheet: name, sheets, rows, merged, even: false })
}

fn said(value: &DataRef<'_>, formula: bool, pos: (u32, u32)) -> Said {
    let at = || cell_name(pos);
    match value {
        DataRef::Empty if formula => Said::Trouble(CellFault::Formula { place: at() }),
        DataRef::Empty => Said::Text(String::new()),
        DataRef::Int(whole) => Said::Text(whole.to_string()),
        DataRef::Float(figure) => Said::Text(as_shown(*figure)),
        DataRef::String(text) => Said::Text(text.clone()),
        DataRef::SharedString(text) => Said::Text((*text).to_owned()),
        DataRef::Bool(yes) => Said::Text(if *yes { "true" } else { "false" }.to_owned()),
        DataRef::DateTime(_) | DataRef::DateTimeIso(_) | DataRef::DurationIso(_) => {
            Said::Trouble(CellFault::Date { place: at() })
        }
        DataRef::Error(error) => Said::Trouble(CellFault::Error { place: at(), error: error.to_string() }),
    }
}

/// A figure with the 15 digits that spreadsheets show: the sum of 0.1 and 0.2 is 0.3.
fn as_shown(figure: f64) -> String {
    format!("{figure:.14e}").parse::<f64>().unwrap_or(figure).to_string()
}

/// The name of a cell from its row and column, both from 0: `C5`.
fn cell_name((row, column): (u32, u32)) -> String {
    let mut letters = Vec::new();
    let mut rest = column + 1;
    while rest > 0 {
        letters.push(char::from(b'A' + u8::try_from((rest - 1) % 26).unwrap_or(0)));
        rest = (rest - 1) / 26;
    }
    format!("{}{}", letters.iter().rev().collect::<String>(), row + 1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cells_are_named_as_in_a_sheet() {
        let named = [(0, 0), (4, 2), (9, 25), (9, 26), (0, 701), (0, 702), (1_048_575, 16_383)].map(cell_name);
        assert_eq!(named, ["A1", "C5", "Z10", "AA10", "ZZ1", "AAA1", "XFD1048576"]);
    }

    #[test]
    fn figures_are_written_as_they_are_shown() {
        let shown = [7.0, 256.1, 0.1 + 0.2, 1.0 / 3.0].map(as_shown);
        assert_eq!(shown, ["7", "256.1", "0.3", "0.333333333333333"]);
    }
}
