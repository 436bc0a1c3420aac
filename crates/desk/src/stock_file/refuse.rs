//! Whether a file is one of parts at all.

use fact::Told;

fact::facts! {
    /// Why a file was refused as a whole.
    pub enum StockFileError: "stock_file" {
        /// Nothing in it.
        Empty {
            /// The columns of an exported file, as its first line has them.
            columns: String,
        },
        /// A known kind of file that is not a list.
        OtherFile {
            /// What it looks like, with what to do about it.
            what: OtherFile,
        },
        /// Bytes that are no UTF-8 text.
        NotText {
            /// Line of the first bad byte, from 1.
            line: usize,
            /// Place of the first bad byte, from 0.
            at_byte: usize,
        },
        /// Text that does not read as CSV.
        NotCsv {
            /// What the reader met.
            problem: String,
        },
        /// The first line does not name the columns.
        NoHeader {
            /// The needed columns that are missing.
            missing: Vec<String>,
            /// The columns of an exported file, as its first line has them.
            columns: String,
            /// The first line, shortened.
            found: String,
        },
        /// Nothing says what every part must have.
        NoColumn {
            /// Which of `code` and `model` no column gives and nothing gives for every row.
            missing: Vec<String>,
        },
        /// Columns that are not known.
        UnknownColumn {
            /// Their names.
            names: Vec<String>,
            /// The columns of an exported file.
            known: Vec<String>,
        },
        /// A column that is there twice.
        TwoColumns {
            /// Heading of the column.
            name: String,
        },
        /// A workbook that cannot be read.
        NotXlsx {
            /// What the reader met.
            problem: String,
        },
        /// A workbook that grows too large when unpacked.
        UnpackedTooLarge {
            /// Most that is read, in MB.
            limit_mb: u64,
        },
        /// The list has more than … rows.
        TooManyRows {
            /// Most that are read.
            limit: usize,
        },
        /// The list has more than … columns.
        TooManyColumns {
            /// Most that are read.
            limit: usize,
        },
        /// Too many cells, or too much text in them.
        TooManyCells {
            /// Most cells that are read.
            limit: usize,
            /// Most text that is read, in MB.
            letters_mb: u64,
        },
        /// A sheet that is not there.
        NoSheet {
            /// The name that was given.
            name: String,
            /// Those that are there; absent for a text.
            known: Option<Vec<String>>,
        },
        /// A line of headings that is not there.
        NoHeaderLine {
            /// The line that was given.
            line: u64,
            /// The first line that could be meant.
            first: u64,
        },
        /// Merged cells among the headings.
        MergedHeadings {
            /// Their name in the sheet.
            cells: String,
        },
        /// A figure of a part that is not known.
        UnknownField {
            /// The name that was given.
            name: String,
            /// The names that are known.
            known: Vec<String>,
        },
        /// A heading that is not there.
        NoHeading {
            /// What it should be.
            field: String,
            /// The heading that was given.
            heading: String,
            /// The headings of the file.
            found: Vec<String>,
        },
        /// Two columns for the same.
        FieldTwice {
            /// What they both should be.
            field: String,
            /// The one column.
            first: String,
            /// The other.
            second: String,
        },
        /// A unit that does not fit, or means two things.
        WrongUnit {
            /// What it was given for.
            field: String,
            /// The unit that was given.
            unit: String,
            /// The units to choose from; absent where it has none.
            known: Option<Vec<String>>,
            /// Whether it means two things.
            two_meanings: Option<Told>,
        },
        /// Models that are no JSON list.
        NotJson {
            /// Line, from 1.
            line: usize,
            /// Column, from 1.
            column: usize,
            /// What the reader met.
            what: Told,
        },
    }
}

fact::facts! {
    /// What a file is that is not a list of parts.
    pub enum OtherFile: "other_file" {
        /// A workbook locked with a password.
        Locked,
        /// An old spreadsheet.
        OldSpreadsheet,
        /// A binary workbook.
        BinaryWorkbook,
        /// An OpenDocument file.
        OpenDocument,
        /// A zipped file of something else.
        Zipped,
        /// A PDF.
        Pdf,
        /// Text in UTF-16.
        Utf16,
        /// A binary file.
        Binary,
        /// A web page.
        WebPage,
        /// JSON.
        Json,
    }
}

impl StockFileError {
    /// Nothing in the file.
    pub(super) fn empty() -> Self {
        Self::Empty { columns: columns() }
    }
}

/// The first line of an exported file, to show as an example.
pub(super) fn columns() -> String {
    super::COLUMNS.join(",")
}

/// The form of a log.
impl std::fmt::Display for StockFileError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        fact::Fact::told(self).fmt(f)
    }
}

impl std::error::Error for StockFileError {}

/// What sort of file it is.
pub(super) enum Shape<'a> {
    /// Text, without its byte-order mark.
    Text(&'a str),
    /// A zip that may hold a workbook.
    Workbook,
}

/// What the file is, or what it is instead.
pub(super) fn shape_of(bytes: &[u8]) -> Result<Shape<'_>, StockFileError> {
    let other = |what| Err(StockFileError::OtherFile { what });
    if bytes.starts_with(b"PK\x03\x04") {
        return Ok(Shape::Workbook);
    }
    if bytes.starts_with(&[0xD0, 0xCF, 0x11, 0xE0]) {
        // A locked workbook is wrapped into the container of the old ones, under this name in UTF-16 (MS-OFFCRYPTO).
        let locked: Vec<u8> = "EncryptedPackage".encode_utf16().flat_map(u16::to_le_bytes).collect();
        return if bytes.windows(locked.len()).any(|part| part == locked) {
            other(OtherFile::Locked)
        } else {
            other(OtherFile::OldSpreadsheet)
        };
    }
    if bytes.starts_with(b"%PDF") {
        return other(OtherFile::Pdf);
    }
    if bytes.starts_with(&[0xFF, 0xFE]) || bytes.starts_with(&[0xFE, 0xFF]) {
        return other(OtherFile::Utf16);
    }
    if bytes.contains(&0) {
        return other(OtherFile::Binary);
    }
    let text = std::str::from_utf8(bytes).map_err(|e| {
        let at_byte = e.valid_up_to();
        let line = bytes[..at_byte].iter().filter(|b| **b == b'\n').count() + 1;
        StockFileError::NotText { line, at_byte }
    })?;
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if text.trim().is_empty() {
        return Err(StockFileError::empty());
    }
    if text.trim_start().starts_with('<') {
        return other(OtherFile::WebPage);
    }
    if text.trim_start().starts_with(['{', '[']) {
        return other(OtherFile::Json);
    }
    Ok(Shape::Text(text))
}
