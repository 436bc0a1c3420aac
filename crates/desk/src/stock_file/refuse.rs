//! Whether a file is one of parts at all.

use super::COLUMNS;
use thiserror::Error;

/// Why a file was refused as a whole.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum StockFileError {
    /// Nothing in it.
    #[error("the file is empty. Its first line must name the columns, for example {}", COLUMNS.join(","))]
    Empty,
    /// A known kind of file that is not CSV.
    #[error("this is {what}, not a CSV file or an XLSX workbook. {next}")]
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
    /// Nothing says what every part must have.
    #[error("no column is the {missing}. Say which one is, or what holds for every row")]
    NoColumn {
        /// What is missing.
        missing: String,
    },
    /// Columns that are not known.
    #[error("the column {names} is not known. Say what it is or leave it aside; known are {}", COLUMNS.join(", "))]
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
    /// A workbook that cannot be read.
    #[error("the workbook cannot be read: {problem}. Open it, save it again as XLSX, or save its sheet as CSV")]
    NotXlsx {
        /// What the reader met.
        problem: String,
    },
    /// A workbook that grows too large when unpacked.
    #[error("the workbook is more than {limit_mb} MB when unpacked. Save the sheet with the parts alone, or as CSV")]
    UnpackedTooLarge {
        /// Most that is read, in MB.
        limit_mb: u64,
    },
    /// Too many rows.
    #[error("the list has more than {limit} rows. Split it and import the pieces one after the other")]
    TooManyRows {
        /// Most that are read.
        limit: usize,
    },
    /// Too many columns.
    #[error("the list has more than {limit} columns. Take out those that are not about parts")]
    TooManyColumns {
        /// Most that are read.
        limit: usize,
    },
    /// Too many cells, or too much text in them.
    #[error(
        "the sheet has more than {limit} cells or {letters_mb} MB of text. Save the columns with the parts alone, or as CSV"
    )]
    TooManyCells {
        /// Most cells that are read.
        limit: usize,
        /// Most text that is read, in MB.
        letters_mb: u64,
    },
    /// A sheet that is not there.
    #[error("there is no sheet “{name}”. {}", if known.is_empty() { "A text has no sheets: leave the name out".to_owned() } else { format!("There are {known}") })]
    NoSheet {
        /// The name that was given.
        name: String,
        /// Those that are there.
        known: String,
    },
    /// A line of headings that is not there.
    #[error("line {line} is empty, so it cannot name the columns. The first line with something in it is {first}")]
    NoHeaderLine {
        /// The line that was given.
        line: u64,
        /// The first line that could be meant.
        first: u64,
    },
    /// Merged cells among the headings.
    #[error("the cells {cells} among the headings are merged. Split them and give each column its own heading")]
    MergedHeadings {
        /// Their name in the sheet.
        cells: String,
    },
    /// A figure of a part that is not known.
    #[error("“{name}” is nothing that is kept of a part. Known are {}", super::mapping::names())]
    UnknownField {
        /// Its name.
        name: String,
    },
    /// A heading that is not there.
    #[error("there is no column “{heading}” for the {field}. The columns are {found}")]
    NoHeading {
        /// What it should be.
        field: String,
        /// The heading that was given.
        heading: String,
        /// The headings of the file.
        found: String,
    },
    /// Two columns for the same.
    #[error("“{first}” and “{second}” cannot both be the {field}. Choose one of the two")]
    FieldTwice {
        /// What they both should be.
        field: String,
        /// The one column.
        first: String,
        /// The other.
        second: String,
    },
    /// A unit that does not fit, or means two things.
    #[error("“{unit}” cannot be the unit of the {field}. {next}")]
    WrongUnit {
        /// What it was given for.
        field: String,
        /// The unit.
        unit: String,
        /// What to write.
        next: &'static str,
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

/// What sort of file it is.
pub(super) enum Shape<'a> {
    /// Text, without its byte-order mark.
    Text(&'a str),
    /// A zip that may hold a workbook.
    Workbook,
}

/// What the file is, or what it is instead.
pub(super) fn shape_of(bytes: &[u8]) -> Result<Shape<'_>, StockFileError> {
    let other = |what, next| Err(StockFileError::OtherFile { what, next });
    if bytes.starts_with(b"PK\x03\x04") {
        return Ok(Shape::Workbook);
    }
    if bytes.starts_with(&[0xD0, 0xCF, 0x11, 0xE0]) {
        // A locked workbook is wrapped into the container of the old ones, under this name in UTF-16 (MS-OFFCRYPTO).
        let locked: Vec<u8> = "EncryptedPackage".encode_utf16().flat_map(u16::to_le_bytes).collect();
        return if bytes.windows(locked.len()).any(|part| part == locked) {
            other("a workbook locked with a password", "Save it without the password and import that")
        } else {
            other("an old spreadsheet (.xls)", "Save it as an XLSX workbook or as CSV and import that")
        };
    }
    if bytes.starts_with(b"%PDF") {
        return other("a PDF", "Ask for the list as CSV or XLSX");
    }
    if bytes.starts_with(&[0xFF, 0xFE]) || bytes.starts_with(&[0xFE, 0xFF]) {
        return other("text in UTF-16", "Save it as CSV in UTF-8");
    }
    if bytes.contains(&0) {
        return other("a binary file", "Import a CSV file or an XLSX workbook");
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
    Ok(Shape::Text(text))
}
