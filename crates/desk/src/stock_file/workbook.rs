//! Parts as a workbook (XLSX): a zip of five small documents, as ECMA-376 part 1 has them.

use super::cells::row_of;
use super::{COLUMNS, StockFileError};
use std::fmt::Write as _;
use std::io::{Cursor, Write as _};
use trade::part::Part;
use trade::part_field::{self, Measure};
use zip::write::SimpleFileOptions;

const CONTENT_TYPES: &str = r#"<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/><Override PartName="/xl/worksheets/sheet1.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>"#;
const RELATIONS: &str = r#"<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>"#;
const BOOK: &str = r#"<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="parts" sheetId="1" r:id="rId1"/></sheets></workbook>"#;
const BOOK_RELATIONS: &str = r#"<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>"#;
const SHEET_START: &str = r#"<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetViews><sheetView workbookViewId="0"><pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><sheetData>"#;
const SHEET_END: &str = "</sheetData></worksheet>";

/// Writes parts as a workbook with one sheet, `parts`, that [`super::read`] takes: the columns of [`COLUMNS`]. Masses
/// and lengths are figures in the unit of their column; a mass that was typed with another unit stays a text.
///
/// # Errors
/// [`StockFileError::NotXlsx`] where the zip could not be put together, as when the memory is short.
pub fn write_workbook(parts: &[Part]) -> Result<Vec<u8>, StockFileError> {
    let mut zip = zip::ZipWriter::new(Cursor::new(Vec::new()));
    let failed = |problem: String| StockFileError::NotXlsx { problem };
    let sheet = sheet(parts);
    let files = [
        ("[Content_Types].xml", CONTENT_TYPES),
        ("_rels/.rels", RELATIONS),
        ("xl/workbook.xml", BOOK),
        ("xl/_rels/workbook.xml.rels", BOOK_RELATIONS),
        ("xl/worksheets/sheet1.xml", sheet.as_str()),
    ];
    for (name, text) in files {
        // The time of a zip entry stays at its first day, 1980-01-01: the same parts give the same bytes.
        zip.start_file(name, SimpleFileOptions::default()).map_err(|e| failed(e.to_string()))?;
        zip.write_all(text.as_bytes()).map_err(|e| failed(e.to_string()))?;
    }
    Ok(zip.finish().map_err(|e| failed(e.to_string()))?.into_inner())
}

fn sheet(parts: &[Part]) -> String {
    let mut xml = String::with_capacity(SHEET_START.len() + parts.len() * 500);
    xml.push_str(SHEET_START);
    write_row(&mut xml, &COLUMNS.map(str::to_owned), false);
    for part in parts {
        write_row(&mut xml, &row_of(part), true);
    }
    xml.push_str(SHEET_END);
    xml
}

/// One row; the cells of figures can be computed with.
fn write_row(xml: &mut String, cells: &[String], with_figures: bool) {
    xml.push_str("<row>");
    for (field, cell) in part_field::listed().zip(cells) {
        let figure = (with_figures && field.measure != Measure::Word)
            .then(|| cell.replace(',', ".").parse::<f64>().ok().filter(|v| v.is_finite()))
            .flatten();
        match figure {
            Some(value) => {
                let _ = write!(xml, "<c><v>{value}</v></c>");
            }
            None if cell.is_empty() => xml.push_str("<c/>"),
            None => {
                xml.push_str("<c t=\"inlineStr\"><is><t xml:space=\"preserve\">");
                escape(xml, cell);
                xml.push_str("</t></is></c>");
            }
        }
    }
    xml.push_str("</row>");
}

/// A text for XML 1.0; what it cannot hold at all is left out.
fn escape(xml: &mut String, text: &str) {
    for letter in text.chars() {
        match letter {
            '&' => xml.push_str("&amp;"),
            '<' => xml.push_str("&lt;"),
            '>' => xml.push_str("&gt;"),
            '\r' => xml.push_str("&#13;"),
            '\t' | '\n' => xml.push(letter),
            '\u{0}'..='\u{1f}' | '\u{fffe}' | '\u{ffff}' => {}
            other => xml.push(other),
        }
    }
}
