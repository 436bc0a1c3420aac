//! Lists as suppliers send them: workbooks by other programs, headings of any sort, and files that would fill the memory.
//!
//! The workbooks were written by openpyxl 3.1 and LibreOffice 7.4 (`workbooks/make.py`).

use super::{library, shop_of};
use desk::stock_file::{
    Imported, Mapping, StockFileError, heading_of, read, read_rows, read_table, write, write_bad, write_workbook,
};
use std::collections::BTreeMap;
use std::io::{Cursor, Write};
use words::check::InWords;
use zip::write::SimpleFileOptions;

macro_rules! book {
    ($name:literal) => {
        include_bytes!(concat!("workbooks/", $name)).as_slice()
    };
}

fn map(pairs: &[(&str, &str)]) -> BTreeMap<String, String> {
    pairs.iter().map(|(k, v)| ((*k).to_owned(), (*v).to_owned())).collect()
}

fn mapped(bytes: &[u8], mapping: &Mapping) -> Result<Imported, StockFileError> {
    let table = read_table(bytes, mapping.sheet.as_deref(), mapping.header_line)?;
    read_rows(&table, mapping, &library(), &["OLD-1".into()])
}

fn bad(imported: &Imported) -> String {
    imported.bad.iter().map(|row| row.told(&super::words())).collect::<Vec<_>>().join("\n")
}

fn no(bytes: &[u8]) -> String {
    read(bytes, &library(), &[]).unwrap_err().in_words()
}

#[test]
fn a_suppliers_list_is_read_by_its_headings_and_what_holds_for_all() {
    let mapping = Mapping { fixed: map(&[("model", "SISKIN")]), ignore_others: true, ..Mapping::default() };
    let read = mapped(book!("supplier.xlsx"), &mapping).unwrap();
    assert_eq!(read.unused, ["Colour"]);
    let by: Vec<_> = read.parts.iter().map(|p| (p.code.as_str(), p.number.as_deref(), p.mass_typed.as_str())).collect();
    assert_eq!(by, [("Q-1", Some("7"), "9.35 oz"), ("Q-2", Some("7"), "9,36 oz"), ("Q-3", Some("8"), "9.61 oz")]);
    // 9.35 oz at 28.349523125 g.
    assert!((read.parts[0].mass_g.unwrap() - 265.068_041_218_75).abs() < 1e-9);
    assert_eq!(read.parts[0].place, "S7");
    insta::assert_snapshot!(bad(&read), @r##"
    line 7, Weight (oz) “265”: 7512.62 g cannot be the mass of a head, which is between 120 g and 600 g. Check the figure and its unit
    line 8, Label “Q-2”: line 5 has this code too. Give each part its own
    "##);
    // Sheet rows as the spreadsheet numbers them.
    assert_eq!(read.bad.iter().map(|b| b.line).collect::<Vec<_>>(), [7, 8]);
    // The refused rows carry what was said of them, so they come back without a mapping.
    let file = write_bad(&read, &super::words());
    let header = file.lines().next().unwrap();
    assert_eq!(header, "problem,model,Label,(Colour),Iron,Weight (oz),Shelf");
    let mended = file.replace(",265,", ",9.4,").replace(",Q-2,", ",Q-5,");
    let again = desk::stock_file::read(mended.as_bytes(), &library(), &[]).unwrap();
    assert_eq!(bad(&again), "");
    assert_eq!(again.parts.iter().map(|p| p.code.as_str()).collect::<Vec<_>>(), ["Q-4", "Q-5"]);
}

#[test]
fn columns_and_units_can_be_said() {
    let text = "Artikel;Gewicht;Modell;Länge\nA-1;4,18;TRAMONTANA-P;41,5\nA-2;4,2 oz;TRAMONTANA-P;1050 mm\n";
    let mapping = Mapping {
        columns: map(&[("code", "artikel"), ("mass", "Gewicht"), ("model", "Modell"), ("length_mm", "Länge")]),
        units: map(&[("mass", "ounces"), ("length", "in")]),
        ..Mapping::default()
    };
    let read = mapped(text.as_bytes(), &mapping).unwrap();
    assert_eq!(bad(&read), "");
    assert_eq!(read.header, ["code", "mass_oz", "model", "length_in"]);
    // 4.18 oz, 41.5 in; the unit of a cell goes before that of its column.
    assert!((read.parts[0].mass_g.unwrap() - 118.501_006_662_5).abs() < 1e-9);
    assert_eq!(read.parts[0].length_mm, Some(1054.1));
    assert!((read.parts[1].mass_g.unwrap() - 119.067_997_125).abs() < 1e-9);
    assert_eq!(read.parts[1].length_mm, Some(1050.0));
    // What was typed says the same by itself, so an exported file gives the same masses.
    let back = desk::stock_file::read(write(&read.parts).as_bytes(), &library(), &[]).unwrap();
    assert_eq!(back.parts, read.parts);
}

#[test]
fn a_mapping_that_does_not_fit_is_told() {
    let text = b"Artikel,Weight (gr),model,code\nA,265,SISKIN,A\n".as_slice();
    let told = |columns: &[(&str, &str)], units: &[(&str, &str)], ignore_others| {
        let mapping = Mapping { columns: map(columns), units: map(units), ignore_others, ..Mapping::default() };
        mapped(text, &mapping).unwrap_err().in_words()
    };
    let said = [
        told(&[], &[], false),
        told(&[], &[], true),
        told(&[], &[("mass", "stone")], true),
        told(&[], &[("loft", "rad")], true),
        told(&[("weight", "Artikel")], &[], true),
        told(&[("mass", "Gewicht")], &[], true),
        told(&[("mass", "Artikel"), ("lot", "Artikel")], &[("mass", "g")], true),
        told(&[("code", "")], &[], true),
        mapped(text, &Mapping { sheet: Some("Heads".into()), ..Mapping::default() }).unwrap_err().in_words(),
        mapped(text, &Mapping { header_line: Some(9), ..Mapping::default() }).unwrap_err().in_words(),
    ];
    insta::assert_snapshot!(said.join("\n"), @r##"
    the column “Artikel” is not known. Choose what it is or leave it aside; known are code, kind, model, number, mass_g, length_mm, balance_point_mm, cpm, loft_deg, lie_deg, lot, place, state, count and owner
    “gr” cannot be the unit of the mass. It means gram to some and grain to others: choose g or grain
    “stone” cannot be the unit of the mass. Choose one of g, oz, lb, kg and grain
    “rad” cannot be the unit of the loft. Only the mass, the length and the balance point have one to choose
    “weight” is not kept of a part. Known are code, kind, model, number, mass, length, balance_point, cpm, loft, lie, lot, place, state, count and owner
    there is no column “Gewicht” for the mass. The columns are Artikel, Weight (gr), model and code
    “lot” and “mass” cannot both be the column “Artikel”. Choose one of the two
    no column has the code. Choose the column, or enter what holds for every row
    there is no sheet “Heads”. A text has no sheets: leave the name out
    line 9 is empty, so it cannot name the columns. The first line with something in it is 1
    "##);
}

#[test]
fn headings_say_what_they_are() {
    let said = |h: &str| heading_of(h).map(|(name, unit)| format!("{name} {}", unit.unwrap_or_default()));
    let told = [
        "Weight (g)",
        "MASS oz",
        "mass_grain",
        "Balance Point [mm]",
        "Loft °",
        "Qty",
        "Part No.",
        "In stock",
        "length, in",
    ]
    .map(|h| said(h).unwrap_or_default());
    assert_eq!(
        told,
        ["mass g", "mass oz", "mass grain", "balance_point mm", "loft °", "count ", "code ", "count ", "length in"]
    );
    for other in ["(mass)", "problem", "colour", "g", "", "mass of grip"] {
        assert_eq!(said(other), None, "{other}");
    }
}

#[test]
fn formulas_give_their_saved_value_or_are_refused_by_cell() {
    let mapping = Mapping { ignore_others: true, ..Mapping::default() };
    let read = mapped(book!("formulas.xlsx"), &mapping).unwrap();
    // The formula of row 2 is in a column that is not used.
    assert_eq!(read.parts.iter().map(|p| p.code.as_str()).collect::<Vec<_>>(), ["F-1"]);
    insta::assert_snapshot!(bad(&read), @r##"
    line 3, mass_g “”: the cell D3 holds a formula whose value was not saved with it. Open the workbook in the program that made it, save it again, or write the value itself
    line 4, mass_g “”: the cell D4 is a date or a time. Format the cell as text and write its text again
    line 5, mass_g “”: the cell D5 shows the error #DIV/0!. Correct its formula, or write the value
    "##);
    let office = mapped(book!("office.xlsx"), &mapping).unwrap();
    assert_eq!(bad(&office), "");
    assert_eq!(office.parts.iter().map(|p| p.mass_g.unwrap()).collect::<Vec<_>>(), [265.1, 265.25]);
}

#[test]
fn merged_cells_are_named() {
    let read = mapped(book!("merged.xlsx"), &Mapping::default()).unwrap();
    assert_eq!(read.parts.iter().map(|p| p.code.as_str()).collect::<Vec<_>>(), ["M-1", "M-4"]);
    insta::assert_snapshot!(bad(&read), @r##"
    line 3, number “7”: the cells C3:C4 are merged, and only the first of them holds a value. Split them and write the value into each
    line 4, number “”: the cells C3:C4 are merged, and only the first of them holds a value. Split them and write the value into each
    "##);
    insta::assert_snapshot!(no(book!("merged-headings.xlsx")), @r##"
    the cells C1:D1 among the headings are merged. Split them and give each column its own heading
    "##);
}

#[test]
fn the_sheet_is_the_first_with_something_in_it_or_the_one_that_is_named() {
    let first = mapped(book!("sheets.xlsx"), &Mapping::default()).unwrap();
    assert_eq!(first.parts[0].code, "W-1");
    let grips = Mapping { sheet: Some("grips".into()), ..Mapping::default() };
    assert_eq!(mapped(book!("sheets.xlsx"), &grips).unwrap().parts[0].code, "W-2");
    let other = Mapping { sheet: Some("Shafts".into()), ..Mapping::default() };
    insta::assert_snapshot!(mapped(book!("sheets.xlsx"), &other).unwrap_err().in_words(), @r##"
    there is no sheet “Shafts”. There are Read me, Heads and Grips
    "##);
}

#[test]
fn the_workbook_that_is_written_comes_back() {
    let parts = shop_of::parts(7);
    let bytes = write_workbook(&parts).unwrap();
    let back = read(&bytes, &library(), &[]).unwrap();
    assert_eq!(bad(&back), "");
    // A figure loses how it was typed (265.10), not what it says.
    let figures = |parts: &[trade::part::Part]| {
        parts
            .iter()
            .map(|p| (p.code.clone(), p.mass_g, p.length_mm, p.number.clone(), p.lot.clone(), p.count, p.state))
            .collect::<Vec<_>>()
    };
    assert_eq!(figures(&back.parts), figures(&parts));
}

#[test]
fn text_that_xml_cannot_hold_as_it_stands_is_kept() {
    let mut part = shop_of::parts(7).remove(0);
    part.lot = "<b> & \"c\" 'd' ]]> é 日".into();
    part.place = "  two  blanks".trim().into();
    let back = read(&write_workbook(&[part.clone()]).unwrap(), &library(), &[]).unwrap();
    assert_eq!((&back.parts[0].lot, &back.parts[0].place), (&part.lot, &part.place));
}

/// A workbook of one sheet, put together by hand.
fn workbook(sheet: impl FnOnce(&mut zip::ZipWriter<Cursor<Vec<u8>>>)) -> Vec<u8> {
    let mut made = zip::ZipWriter::new(Cursor::new(Vec::new()));
    let mut old = zip::ZipArchive::new(Cursor::new(book!("merged-headings.xlsx"))).unwrap();
    for i in 0..old.len() {
        let file = old.by_index_raw(i).unwrap();
        if file.name().unwrap() != "xl/worksheets/sheet1.xml" {
            made.raw_copy_file(file).unwrap();
        }
    }
    made.start_file("xl/worksheets/sheet1.xml", SimpleFileOptions::default().compression_level(Some(1))).unwrap();
    sheet(&mut made);
    made.finish().unwrap().into_inner()
}

const SHEET: &[u8] = b"<worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData>";

#[test]
fn files_that_would_fill_the_memory_are_refused_by_stated_limits() {
    let million = workbook(|out| {
        out.write_all(SHEET).unwrap();
        for _ in 0..1_000_000 {
            out.write_all(b"<row><c><v>1</v></c></row>").unwrap();
        }
        out.write_all(b"</sheetData></worksheet>").unwrap();
    });
    let bomb = workbook(|out| {
        out.write_all(SHEET).unwrap();
        let blanks = vec![b' '; 1024 * 1024];
        for _ in 0..70 {
            out.write_all(&blanks).unwrap();
        }
    });
    assert!(bomb.len() < 1024 * 1024, "{} bytes pack 70 MB", bomb.len());
    // The directory of this one says that the sheet has 10 bytes.
    let mut lying = bomb.clone();
    let size = (70 * 1024 * 1024 + SHEET.len() as u32).to_le_bytes();
    for at in 0..lying.len() - 4 {
        if lying[at..at + 4] == size {
            lying[at..at + 4].copy_from_slice(&10u32.to_le_bytes());
        }
    }
    assert_ne!(lying, bomb);
    let wide = workbook(|out| {
        out.write_all(SHEET).unwrap();
        for row in 1..=10_000 {
            write!(out, "<row><c r=\"IV{row}\"><v>1</v></c></row>").unwrap();
        }
        out.write_all(b"</sheetData></worksheet>").unwrap();
    });
    let rows: String = (0..100_002).map(|i| format!("{i},SISKIN\n")).collect();
    let said = [
        no(&million),
        no(&bomb),
        no(&lying),
        no(&wide),
        no(book!("far.xlsx")),
        no(format!("code,model\n{rows}").as_bytes()),
        no(&[&b"code,model"[..], &[b','; 300], b"\n"].concat()),
    ];
    insta::assert_snapshot!(said.join("\n"), @r##"
    the list has more than 100000 rows. Split it and import the pieces one after the other
    the workbook is more than 64 MB when unpacked. Save the sheet with the parts alone, or as CSV
    the workbook cannot be read: File is larger than its declared uncompressed size. Open it, save it again as XLSX, or save its sheet as CSV
    the sheet has more than 2000000 cells or 64 MB of text. Save the columns with the parts alone, or as CSV
    the list has more than 256 columns. Take out those that are not about parts
    the list has more than 100000 rows. Split it and import the pieces one after the other
    the list has more than 256 columns. Take out those that are not about parts
    "##);
}

#[test]
fn files_of_other_kinds_are_told_apart() {
    let locked: Vec<u8> = [0xD0, 0xCF, 0x11, 0xE0, 0xA1, 0xB1, 0x1A, 0xE1]
        .into_iter()
        .chain([0; 600])
        .chain("EncryptedPackage".encode_utf16().flat_map(u16::to_le_bytes))
        .collect();
    let whole = book!("supplier.xlsx");
    let said = [
        no(book!("office.xls")),
        no(&locked),
        no(book!("office.ods")),
        no(book!("no-book.zip")),
        no(&whole[..whole.len() / 2]),
        no(&workbook(|out| out.write_all(b"<worksheet><sheetData><row><c").unwrap())),
        no(&workbook(|out| out.write_all(b"<worksheet></worksheet>").unwrap())),
    ];
    insta::assert_snapshot!(said.join("\n"), @r##"
    this is an old spreadsheet (.xls), not a CSV file or an XLSX workbook. Save it as an XLSX workbook or as CSV and import that
    this is a workbook locked with a password, not a CSV file or an XLSX workbook. Save it without the password and import that
    this is an OpenDocument file, not a CSV file or an XLSX workbook. Save it as an XLSX workbook or as CSV and import that
    this is a zipped file of something else, not a CSV file or an XLSX workbook. Unpack it and import the list itself
    the workbook cannot be read: invalid Zip archive: Could not find EOCD. Open it, save it again as XLSX, or save its sheet as CSV
    the workbook cannot be read: Xml error: syntax error: tag not closed: `>` not found before end of input. Open it, save it again as XLSX, or save its sheet as CSV
    the file is empty. Its first line must name the columns, for example code,kind,model,number,mass_g,length_mm,balance_point_mm,cpm,loft_deg,lie_deg,lot,place,state,count,owner
    "##);
}
