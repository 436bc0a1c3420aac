//! Stock files: good rows kept, a diagnosis for each bad one, and back again byte for byte.

use super::{library, shop_of, words};
use desk::stock_file::{BadModel, COLUMNS, Imported, read, read_models, write, write_bad, write_models};
use fact::Refusal;
use proptest::prelude::*;
use trade::model::Model;
use trade::part::{Part, PartState};
use words::check::InWords;

const CANONICAL: &str = "code,kind,model,number,mass_g,length_mm,balance_point_mm,cpm,loft_deg,lie_deg,lot,place,state,count,owner\r\n\
    S7-01,head,SISKIN,7,265.1,,,,31.2,62,S-101,shelf S7,free,,\r\n\
    S7-02,head,SISKIN,7,\"265,4\",,,,,,\"S-102, second box\",\"the \"\"good\"\" shelf\",free,,\r\n\
    TP-01,shaft,TRAMONTANA-P,,118.3,1041.4,497.5,262.4,,,T-9,,free,,\r\n\
    TP-02,shaft,TRAMONTANA-P,,,,,,,,,,ordered,,\r\n\
    OL-01,grip,OLIVINE,,1.75 oz,,,,,,,,free,,\r\n\
    TRAY-2,tip_weight,TIP-2,,,,,,,,,tray,free,40,\r\n";

fn import(text: &str) -> Imported {
    read(text.as_bytes(), &library(), &["OLD-1".into()]).unwrap()
}

fn told(imported: &Imported) -> String {
    let bad = imported.bad.iter().map(|row| row.told(&words()));
    let w = words::Words::english(quantity::Units::default());
    let warned = imported.warnings.iter().map(|row| format!("line {}, {}: {}", row.line, row.code, w.told(&row.doubt)));
    bad.chain(warned).collect::<Vec<_>>().join("\n")
}

#[test]
fn a_canonical_file_comes_back_byte_for_byte() {
    let imported = import(CANONICAL);
    assert_eq!(told(&imported), "");
    assert_eq!(imported.parts.len(), 6);
    assert_eq!(write(&imported.parts), CANONICAL);
    let grip = &imported.parts[4];
    // 1.75 oz at 28.349523125 g.
    assert!((grip.mass_g.unwrap() - 49.611_665_468_75).abs() < 1e-9);
    assert_eq!(grip.mass_typed, "1.75 oz");
    assert_eq!(imported.parts[1].mass_g, Some(265.4));
    assert_eq!(imported.parts[2].cpm, Some(262.4));
    assert_eq!(imported.parts[3].state, PartState::Ordered);
}

#[test]
fn the_demonstration_stock_goes_out_and_comes_back() {
    let parts = shop_of::parts(7);
    let file = write(&parts);
    let imported = import(&file);
    assert_eq!(told(&imported), "");
    assert_eq!(imported.parts, parts);
    assert_eq!(write(&imported.parts), file);
}

/// Any order of columns, LF or CRLF, a byte-order mark, workshop notation, numbers and kinds in other spellings.
#[test]
fn files_as_people_save_them() {
    let text = "\u{feff}Mass_g, MODEL ,kind,code,number,length_mm\n8.9 oz,SISKIN,Head,A1,p,\n\"263,5 g\",SISKIN,head,A2,7,\n\
                118,TRAMONTANA-P,shaft,A3,,40 7/8 in\n,TIP-2,tip weight,A4,,\n";
    let imported = import(text);
    assert_eq!(imported.bad, []);
    let by: Vec<_> = imported.parts.iter().map(|p| (p.code.as_str(), p.number.as_deref(), p.length_mm)).collect();
    assert_eq!(
        by,
        [("A1", Some("P"), None), ("A2", Some("7"), None), ("A3", None, Some(1038.225)), ("A4", None, None)]
    );
    assert!(imported.parts.iter().all(|p| p.state == PartState::Free));
    assert_eq!(imported.parts[1].mass_typed, "263,5 g");
}

#[test]
fn bad_rows_are_told_one_by_one_and_good_ones_kept() {
    let text = "code,kind,model,number,mass_g,length_mm,state,count\n\
        G1,head,SISKIN,7,265.0,,,\n\
        G1,head,SISKIN,7,265.0,,,\n\
        old-1,head,SISKIN,7,265.0,,,\n\
        B 2,head,SISKIN,7,265.0,,,\n\
        B3,hed,SISKIN,7,265.0,,,\n\
        B4,head,siskin,7,265.0,,,\n\
        B5,head,OLIVINE,7,265.0,,,\n\
        B6,head,SISKIN,3,265.0,,,\n\
        B7,head,SISKIN,7,5 kg,,,\n\
        B8,head,SISKIN,7,-265,,,\n\
        B9,head,SISKIN,7,NaN,,,\n\
        B10,head,SISKIN,7,265,4,,,\n\
        B11,head,SISKIN,7,,,,\n\
        B12,shaft,TRAMONTANA-P,7,118,,,\n\
        B13,shaft,TRAMONTANA-P,,118,36 3/4,,\n\
        B14,head,SISKIN,7,265,,held,\n\
        B15,head,SISKIN,7,265,,lost,\n\
        B16,head,SISKIN,7,265,,,3\n\
        B17,tip_weight,TIP-2,,,,,some\n\
        B18,,,,,,,\n\
        ,,,,,,,\n\
        G2,tip_weight,TIP-2,,,,,12\n";
    let imported = import(text);
    assert_eq!(imported.parts.iter().map(|p| p.code.as_str()).collect::<Vec<_>>(), ["G1", "G2"]);
    assert_eq!(imported.bad.len(), 19);
    insta::assert_snapshot!(told(&imported), @r##"
    line 3, code “G1”: line 2 has this code too. Give each part its own
    line 4, code “old-1”: a part in stock has this code. Give the new part its own
    line 5, code “B 2”: this cannot be a code. Use 1 to 32 letters, digits, - _ or ., for example H7-014
    line 6, kind “hed”: there is no such kind of part. Write one of head, adapter, shaft, grip, tip_weight, ferrule, adhesive and tape
    line 7, model “siskin”: there is no such model. Write SISKIN
    line 8, model “OLIVINE”: it is a grip model and the row a head. Correct one of the two
    line 9, number “3”: the model has no such number. Write one of 4, 5, 6, 7, 8, 9, P and G
    line 10, mass_g “5 kg”: 5000 g cannot be the mass of a head, which is between 120 g and 600 g. Check the figure and its unit
    line 11, mass_g “-265”: “-265” cannot be read as a mass: this figure has no sign. Write for example 8 g or 1.75 oz
    line 12, mass_g “NaN”: “NaN” cannot be read as a mass: a number is expected here. Write for example 8 g or 1.75 oz
    line 13: the row has 9 cells and the header 8. Put a cell that holds a comma in quotes, for example "256,1"
    line 14, mass_g “”: a head in the shop is weighed. Weigh it to 0.1 g, or write ordered
    line 15, number “7”: a parallel tip has no number. Leave the cell empty
    line 16, length_mm “36 3/4”: “36 3/4” cannot be read as a length: a fraction without a unit means inches, but metric is expected; add the unit. Write for example 36 3/4 in, 93.3 cm or 940 mm
    line 17, state “held”: a part that is held belongs to a job. Write free, or leave the row out
    line 18, state “lost”: there is no such state. Write free, ordered, pulled or rejected
    line 19, code “B16”: B16 is a head with a count. Heads and shafts are weighed one by one: give each its own row and code
    line 20, count “some”: it is not a whole number from 0. Write how many are in the box, or leave it empty
    line 21, kind “”: the kind is missing. Write one of head, adapter, shaft, grip, tip_weight, ferrule, adhesive and tape; model “”: no model is named. Write the code of its model
    "##);
}

#[test]
fn a_mass_that_fits_another_number_is_a_doubt_not_a_refusal() {
    let imported = import(
        "code,kind,model,number,mass_g\nA1,head,SISKIN,8,265.9\nA2,head,SISKIN,8,345\nA3,shaft,TRAMONTANA-P,,95\n\
         A4,grip,OLIVINE,,25\nA5,head,SISKIN,8,271\n",
    );
    assert_eq!(imported.parts.len(), 5);
    insta::assert_snapshot!(told(&imported), @r##"
    line 2, A1: 265.9 g: it looks like the number before, 7: 7-iron heads are 7.5 g lighter. Look at the number on its sole
    line 3, A2: 345.0 g is 72.0 g more than the 8 should weigh, 273.0 g. Weigh it again on an empty pan
    line 4, A3: 95.0 g is 23.0 g less than this shaft should weigh, 118.0 g. Weigh it again on an empty pan
    line 5, A4: 25.0 g is 25.0 g less than this grip should weigh, 50.0 g. Weigh it again on an empty pan
    "##);
}

/// The refused rows go out with their diagnosis, are mended, and come in again; a row with a cell too many keeps it.
#[test]
fn the_file_of_refused_rows_can_be_mended() {
    let text = "code,kind,model,number,mass_g\nA1,head,SISKIN,7,5 kg\nA2,head,SISKIN,7,265,4\nA3,head,SISKIN,7,265.3\n";
    let imported = import(text);
    let file = write_bad(&imported, &words());
    insta::assert_snapshot!(file.replace("\r\n", "\n"), @r##"
    problem,code,kind,model,number,mass_g
    "line 2, mass_g “5 kg”: 5000 g cannot be the mass of a head, which is between 120 g and 600 g. Check the figure and its unit",A1,head,SISKIN,7,5 kg
    "line 3: the row has 6 cells and the header 5. Put a cell that holds a comma in quotes, for example ""256,1""",A2,head,SISKIN,7,265,4
    "##);
    let again = import(&file);
    assert_eq!((again.parts.len(), again.bad.len()), (0, 2));
    // A second round has one diagnosis, not two.
    assert_eq!(write_bad(&again, &words()).lines().next().unwrap(), "problem,code,kind,model,number,mass_g");
    let mended = import(&file.replace("5 kg\r", "265.1\r").replace("265,4", "265.4"));
    assert_eq!(mended.bad, []);
    assert_eq!(mended.parts.iter().map(|p| p.mass_g.unwrap()).collect::<Vec<_>>(), [265.1, 265.4]);
}

#[test]
fn files_that_are_no_stock_files() {
    let cases: [&[u8]; 13] = [
        b"",
        b" \n \n",
        b"PK\x03\x04\x14\x00",
        b"\xd0\xcf\x11\xe0\xa1\xb1",
        b"%PDF-1.7",
        b"\xff\xfec\x00o\x00",
        b"\x00\x01\x02",
        b"code,kind,model\nA1,head,\xe9\n",
        b"<html></html>",
        b"[{}]",
        b"A1,head,SISKIN,7,265\n",
        b"code,kind,model,colour\n",
        b"code,kind,model,Code\n",
    ];
    let said: Vec<_> = cases.iter().map(|c| read(c, &library(), &[]).unwrap_err().in_words()).collect();
    insta::assert_snapshot!(said.join("\n"), @r##"
    the file is empty. Its first line must name the columns, for example code,kind,model,number,mass_g,length_mm,balance_point_mm,cpm,loft_deg,lie_deg,lot,place,state,count,owner
    the file is empty. Its first line must name the columns, for example code,kind,model,number,mass_g,length_mm,balance_point_mm,cpm,loft_deg,lie_deg,lot,place,state,count,owner
    the workbook cannot be read: invalid Zip archive: Could not find EOCD. Open it, save it again as XLSX, or save its sheet as CSV
    this is an old spreadsheet (.xls), not a CSV file or an XLSX workbook. Save it as an XLSX workbook or as CSV and import that
    this is a PDF, not a CSV file or an XLSX workbook. Ask for the list as CSV or XLSX
    this is text in UTF-16, not a CSV file or an XLSX workbook. Save it as CSV in UTF-8
    this is a binary file, not a CSV file or an XLSX workbook. Import a CSV file or an XLSX workbook
    line 2 is not UTF-8 text (byte 24). Save the file as CSV in UTF-8
    this is a web page, not a CSV file or an XLSX workbook. Import the CSV file itself
    this is JSON, not a CSV file or an XLSX workbook. Import it as models, or the parts as CSV
    the first line does not name all columns: it lacks code and model and reads “A1,head,SISKIN,7,265”. Write for example code,kind,model,number,mass_g,length_mm,balance_point_mm,cpm,loft_deg,lie_deg,lot,place,state,count,owner
    the column “colour” is not known. Choose what it is or leave it aside; known are code, kind, model, number, mass_g, length_mm, balance_point_mm, cpm, loft_deg, lie_deg, lot, place, state, count and owner
    the column “Code” is there twice. Keep one of the two
    "##);
}

#[test]
fn models_go_out_and_come_back() {
    let models = shop_of::models();
    let text = write_models(&models).unwrap();
    let back = read_models(&text).unwrap();
    assert_eq!(back.bad, []);
    assert_eq!(back.good, models);
    let wrapped = read_models(&format!("{{\"models\": {text}}}")).unwrap();
    assert_eq!(wrapped.good, models);
}

#[test]
fn bad_models_are_told_one_by_one() {
    let mut list: Vec<serde_json::Value> =
        shop_of::models().iter().take(4).map(|m| serde_json::to_value(m).unwrap()).collect();
    list[0]["bore_diameter_mm"] = serde_json::json!(-9.4);
    list[1]["colour"] = serde_json::json!("red");
    list[2]["code"] = list[3]["code"].clone();
    list.push(serde_json::json!({ "kind": "hat", "code": "X" }));
    list.push(serde_json::json!(7));
    let read = read_models(&serde_json::to_string(&list).unwrap()).unwrap();
    assert_eq!(read.good.iter().map(Model::code).collect::<Vec<_>>(), ["WHINCHAT"]);
    let told = |bad: &BadModel| {
        let code = if bad.code.is_empty() { String::new() } else { format!(" ({})", bad.code) };
        format!("model {}{code}: {}", bad.entry, Refusal::new(&bad.problem).in_words())
    };
    let said: Vec<_> = read.bad.iter().map(told).collect();
    let whole = [read_models("[1,").unwrap_err().in_words(), read_models("7").unwrap_err().in_words()];
    insta::assert_snapshot!(said.iter().chain(&whole).cloned().collect::<Vec<_>>().join("\n"), @r##"
    model 1 (SISKIN): bore_diameter_mm is −9.4 mm: it must be between 6 mm and 20 mm. Check the figure and its unit
    model 2 (REDSTART): /colour: unknown field `colour`; known here: code, name, label, club_kind, hand, bore_diameter_mm, bore_depth_mm, offset_mm, offset_sd_mm, mass_sd_g, heel_radius_mm, sole_contact_mm, sole_radius_mm, bend_limit_deg, screws, takes_adapter, chart_length_to and numbers. Correct the field, or take it out
    model 4 (WHINCHAT): the code WHINCHAT is in the list before. Give each model its own
    model 5 (X): /kind: “hat” is not one of the choices; known here: head, adapter, shaft, grip, tip_weight, ferrule, adhesive and tape. Correct the field, or take it out
    model 6: the document: must be an object { … }, not 7. Correct the field, or take it out
    the models do not read as JSON at line 1, column 3: it ends too early. Give a list of models, [ … ]
    the models do not read as JSON at line 1, column 1: it is not a list of models. Give a list of models, [ … ]
    "##);
}

/// A part as it can stand in stock.
fn any_part() -> impl Strategy<Value = Part> {
    let heads: Vec<Part> = shop_of::parts(5);
    (prop::sample::select(heads), "[A-Za-z0-9_.-]{1,12}", "[ -~]{0,12}", 0usize..4, -20i32..=20).prop_map(
        |(mut part, code, text, form, by)| {
            part.code = format!("X{code}");
            part.lot = text.trim().to_owned();
            part.place = text.chars().rev().collect::<String>().trim().to_owned();
            if let Some(mass_g) = part.mass_g {
                let mass_g = (mass_g * 10.0).round() / 10.0 + f64::from(by) / 10.0;
                let mass_g = (mass_g * 10.0).round() / 10.0;
                part.mass_typed = match form {
                    0 => format!("{mass_g:.1}"),
                    1 => format!("{mass_g:.1} g"),
                    2 => format!("{mass_g:.1}").replace('.', ","),
                    _ => format!("{mass_g:.1}0"),
                };
                part.mass_g = Some(mass_g);
            }
            part
        },
    )
}

proptest! {
    #[test]
    fn whatever_is_written_is_read_and_written_the_same(parts in prop::collection::vec(any_part(), 0..8)) {
        let mut seen = std::collections::BTreeSet::new();
        let parts: Vec<Part> = parts.into_iter().filter(|p| seen.insert(p.code.to_lowercase())).collect();
        let file = write(&parts);
        let back = import(&file);
        prop_assert_eq!(&back.bad, &vec![]);
        prop_assert_eq!(&back.parts, &parts);
        prop_assert_eq!(write(&back.parts), file);
    }

    #[test]
    fn any_bytes_are_read_or_refused(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        let _ = read(&bytes, &library(), &[]).map_err(|e| assert!(!e.in_words().is_empty()));
    }

    #[test]
    fn any_cells_are_read_or_refused(cells in prop::collection::vec("[ -~\u{e9}\n\"]{0,8}", 13..=13)) {
        let row: Vec<String> = cells.iter().map(|c| format!("\"{}\"", c.replace('"', "\"\""))).collect();
        let imported = import(&format!("{}\n{}\n", COLUMNS.join(","), row.join(",")));
        let blank = cells.iter().all(|c| c.trim().is_empty());
        prop_assert_eq!(imported.parts.len() + imported.bad.len(), usize::from(!blank));
        let again = import(&write_bad(&imported, &words()));
        prop_assert_eq!(again.bad.len(), imported.bad.len());
    }

    #[test]
    fn any_text_is_models_or_none(text in any::<String>()) {
        let _ = read_models(&text).map_err(|e| assert!(!e.in_words().is_empty()));
    }
}

/// A frequency is read under any of its usual headings, with its unit or without, and refused where it cannot be one.
#[test]
fn a_frequency_is_read_and_refused_by_name() {
    for heading in ["cpm", "Frequency", "Freq (cpm)", "Shaft CPM", "raw frequency"] {
        let read = import(&format!(
            "code,model,mass,{heading}\r\nA,TRAMONTANA-P,118.0,262 cpm\r\nB,TRAMONTANA-P,118.1,4.4 Hz\r\n"
        ));
        assert_eq!(told(&read), "", "{heading}");
        assert_eq!(read.parts[0].cpm, Some(262.0), "{heading}");
        assert!((read.parts[1].cpm.unwrap() - 264.0).abs() < 1e-9, "{heading}");
    }
    let read = import(
        "code,model,number,mass,cpm\r\nA,TRAMONTANA-P,,118.0,26.2\r\nB,TRAMONTANA-P,,118.0,stiff\r\n\
         C,SISKIN,7,265.0,262\r\nD,OLIVINE,,50.0,262\r\nE,TRAMONTANA-P,,118.0,\r\n",
    );
    insta::assert_snapshot!(told(&read), @r##"
    line 2, cpm “26.2”: 26.2 cpm cannot be the frequency of a shaft, which is between 50 cpm and 600 cpm. Check the figure and its unit
    line 3, cpm “stiff”: “stiff” cannot be read as a frequency: a number is expected here. Write for example 262 cpm or 4.37 Hz
    line 4, cpm “262”: only a raw shaft has a frequency, and this is a head with 262 cpm. Leave it empty
    line 5, cpm “262”: only a raw shaft has a frequency, and this is a grip with 262 cpm. Leave it empty
    "##);
    assert_eq!(read.parts.len(), 1);
    assert_eq!(read.parts[0].cpm, None);
}

/// Lines are counted as an editor counts them, whichever way they end and whatever blank ones lie between.
#[test]
fn refused_rows_carry_their_line() {
    for end in ["\n", "\r\n"] {
        let text = [
            "code,model,number,mass",
            "A,SISKIN,7,265.0",
            "",
            "B,SISKIN,3,265.0",
            "\"C\nC\",SISKIN,7,265.0",
            "D,SISKIN,7,5 kg",
        ];
        let read = import(&text.join(end));
        let lines: Vec<u64> = read.bad.iter().map(|b| b.line).collect();
        assert_eq!(lines, [4, 5, 7], "{end:?}");
    }
}

/// A cell that a spreadsheet would run leaves with an apostrophe, comes back without, and the file again as it was.
#[test]
fn no_file_carries_a_formula() {
    let text = "code,kind,model,number,mass_g,lot,place\r\n\
        S7-01,head,SISKIN,7,265.1,@SUM(1),\"-2+3, shelf\"\r\n\
        S7-02,head,SISKIN,7,265.2,'kept',-2.5\r\n\
        =1+1,head,SISKIN,7,=cmd|x,=1,\r\n";
    let imported = import(text);
    assert_eq!((imported.parts.len(), imported.bad.len()), (2, 1), "{}", told(&imported));
    assert_eq!(imported.parts[0].place, "-2+3, shelf");
    let file = write(&imported.parts);
    assert!(file.contains("'@SUM(1)") && file.contains("\"'-2+3, shelf\"") && file.contains("'kept',-2.5"), "{file}");
    let again = import(&file);
    assert_eq!(again.parts, imported.parts);
    assert_eq!(write(&again.parts), file);
    let bad = write_bad(&imported, &words());
    assert!(bad.contains(",'=1+1,head,SISKIN,7,'=cmd|x,'=1,"), "{bad}");
    let mended = import(&bad.replace("'=1+1", "S7-03").replace("'=cmd|x", "265.3"));
    assert_eq!(mended.parts[0].lot, "=1");
}
