//! Whether a file is one of parts at all.

use super::{COLUMNS, NEEDED, PROBLEM};
use thiserror::Error;

/// Why a file was refused as a whole.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum StockFileError {
    /// Nothing in it.
    #[error("the file is empty. Its first line must name the columns, for example {}", COLUMNS.join(","))]
    Empty,
    /// A known kind of file that is not CSV.
    #[error("this is {what}, not a CSV file. {next}")]
    OtherFile {
        /// What it looks like.
        what: &'static str,
        /// What to do next.
        next: &'static str,
    },
    /// Bytes that are no UTF-8 text.
    #[error("line {line} is not UTF-8 text (byte {at_byte}). Save the file as CSV in UTF-8")]
    NotText {
        /// Line of the first bad byte, from 1.
        line: usize,
        /// Place of the first bad byte, from 0.
        at_byte: usize,
    },
    /// Text that does not read as CSV.
    #[error("the file does not read as CSV: {problem}. Save it as CSV, comma-separated, in UTF-8")]
    NotCsv {
        /// What the reader met.
        problem: String,
    },
    /// The first line does not name the columns.
    #[error("the first line does not name the columns: {missing} is missing and it reads “{found}”. Write for example {}", COLUMNS.join(","))]
    NoHeader {
        /// The needed columns that are missing.
        missing: String,
        /// The first line, shortened.
        found: String,
    },
    /// Columns that are not known.
    #[error("the column {names} is not known. Take it out or rename it; known are {}", COLUMNS.join(", "))]
    UnknownColumn {
        /// Their names.
        names: String,
    },
    /// A column that is there twice.
    #[error("the column “{name}” is there twice. Keep one of the two")]
    TwoColumns {
        /// Its name.
        name: String,
    },
    /// Models that are no JSON list.
    #[error("the models do not read as JSON at line {line}, column {column}: {problem}. Give a list of models, [ … ]")]
    NotJson {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What the reader met.
        problem: String,
    },
}

/// The text of the file without its byte-order mark, or what it is instead.
pub(super) fn text_of(bytes: &[u8]) -> Result<&str, StockFileError> {
    let other = |what, next| Err(StockFileError::OtherFile { what, next });
    const SAVE: &str = "Save the sheet as CSV (comma-separated, UTF-8) and import that";
    if bytes.starts_with(b"PK\x03\x04") {
        return other("a spreadsheet or another zipped file", SAVE);
    }
    if bytes.starts_with(&[0xD0, 0xCF, 0x11, 0xE0]) {
        return other("an old spreadsheet", SAVE);
    }
    if bytes.starts_with(b"%PDF") {
        return other("a PDF", "Ask for the list as CSV");
    }
    if bytes.starts_with(&[0xFF, 0xFE]) || bytes.starts_with(&[0xFE, 0xFF]) {
        return other("text in UTF-16", "Save it as CSV in UTF-8");
    }
    if bytes.contains(&0) {
        return other("a binary file", "Import a CSV file");
    }
    let text = std::str::from_utf8(bytes).map_err(|e| {
        let at_byte = e.valid_up_to();
        let line = bytes[..at_byte].iter().filter(|b| **b == b'\n').count() + 1;
        StockFileError::NotText { line, at_byte }
    })?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(StockFileError::Empty);
    }
    if text.trim_start().starts_with('<') {
        return other("a web page", "Import the CSV file itself");
    }
    if text.trim_start().starts_with(['{', '[']) {
        return other("JSON", "Import it as models, or the parts as CSV");
    }
    let first = text.trim_start().lines().next().unwrap_or_default();
    for (mark, what) in [(';', "separated by semicolons"), ('\t', "separated by tabs")] {
        if !first.contains(',') && first.contains(mark) {
            return other(what, "Save it with commas between the cells, and cells with a decimal comma in quotes");
        }
    }
    Ok(text)
}

/// The header as it stood, and for each of its columns the name it means (none for the ignored one).
pub(super) fn columns_of(
    record: &csv::StringRecord,
) -> Result<(Vec<String>, Vec<Option<&'static str>>), StockFileError> {
    let header: Vec<String> = record.iter().map(|h| h.trim().to_owned()).collect();
    let known = |name: &str| COLUMNS.iter().copied().find(|c| c.eq_ignore_ascii_case(name));
    let missing: Vec<&str> =
        NEEDED.iter().copied().filter(|n| !header.iter().any(|h| h.eq_ignore_ascii_case(n))).collect();
    if !missing.is_empty() {
        let found: String = header.join(",").chars().take(80).collect();
        return Err(StockFileError::NoHeader { missing: missing.join(", "), found });
    }
    let unknown: Vec<String> = header
        .iter()
        .filter(|h| known(h).is_none() && !h.eq_ignore_ascii_case(PROBLEM))
        .map(|h| format!("“{h}”"))
        .collect();
    if !unknown.is_empty() {
        return Err(StockFileError::UnknownColumn { names: unknown.join(", ") });
    }
    for (i, name) in header.iter().enumerate() {
        if header[..i].iter().any(|h| h.eq_ignore_ascii_case(name)) {
            return Err(StockFileError::TwoColumns { name: name.clone() });
        }
    }
    let columns = header.iter().map(|h| known(h)).collect();
    Ok((header, columns))
}
