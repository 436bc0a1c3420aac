//! Files to import: what is no CSV at all, CSV with bad rows, and a file that comes back byte for byte.

use crate::support::answer::detail;
use crate::support::{Bench, models, stock, stocked};
use axum::http::StatusCode;
use serde_json::json;

const UNPROCESSABLE: StatusCode = StatusCode::UNPROCESSABLE_ENTITY;

/// What people choose by mistake, and a word that the answer must have.
fn no_csv() -> Vec<(&'static str, Vec<u8>, &'static str)> {
    let mut spreadsheet = b"PK\x03\x04\x14\x00\x06\x00\x08\x00".to_vec();
    spreadsheet.extend((0..400_u16).map(|i| (i * 37 % 251) as u8));
    let binary: Vec<u8> = (0..2000_u32).map(|i| (i * i % 256) as u8).collect();
    let utf_16: Vec<u8> = [0xFF, 0xFE].into_iter().chain("code,kind,model\n".bytes().flat_map(|b| [b, 0])).collect();
    let latin_1 = b"code,kind,model,place\nG1,grip,MARL,B\xf6rde\n".to_vec();
    vec![
        ("a damaged workbook", spreadsheet, "workbook cannot be read"),
        ("a PDF", b"%PDF-1.7\n1 0 obj".to_vec(), "PDF"),
        ("bytes", binary, "binary"),
        ("UTF-16", utf_16, "UTF-16"),
        ("Latin-1", latin_1, "ine 2 is not UTF-8"),
        ("a page", b"<!DOCTYPE html><html></html>".to_vec(), "web page"),
        ("models", models().to_string().into_bytes(), "JSON"),
        ("nothing", Vec::new(), "empty"),
        ("blanks", b" \r\n\r\n ".to_vec(), "empty"),
        ("no header", b"G90,grip,MARL,,48.8\nG91,grip,MARL,,49.0\n".to_vec(), "does not name all columns"),
        ("a strange column", b"code,kind,model,colour\nG1,grip,MARL,red\n".to_vec(), "colour"),
        ("a column twice", b"code,kind,model,lot,lot\nG1,grip,MARL,a,b\n".to_vec(), "twice"),
    ]
}

#[tokio::test]
async fn what_is_no_csv_is_named_and_nothing_is_kept() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let before = bench.picture().await;
    for (name, file, word) in no_csv() {
        let answer = bench.ask("POST", "/api/v1/parts/import", "text/csv", file.clone()).await;
        let problem = answer.problem(UNPROCESSABLE);
        assert!(detail(&problem).contains(word), "{name}: {problem}");
        let page = bench.upload("/stock/import", &file).await;
        if matches!(name, "a strange column" | "a column twice") {
            // The page asks which column is what.
            page.says(StatusCode::OK, &["not used", "nothing is kept yet"]);
            continue;
        }
        // An empty file is as none on the page.
        let word = if word == "empty" { "no file and no text" } else { word };
        page.says(UNPROCESSABLE, &[word]);
    }
    for (name, file) in [("text", "good morning"), ("a number", "7"), ("an object", "{}"), ("cut off", "[{\"kind\": ")]
    {
        let problem = bench.refused("POST", "/models/import", UNPROCESSABLE, file).await;
        assert!(detail(&problem).contains("list of models"), "{name}: {problem}");
    }
    let answer = bench.ask("POST", "/api/v1/models/import", "application/json", vec![0xff, 0xfe, 0x00]).await;
    assert!(answer.status.is_client_error());
    answer.problem(answer.status);
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn good_rows_are_kept_and_each_bad_row_says_what_is_wrong() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let rows = [
        ("N1,head,WREN-I,7,268.4,free,", ""),
        ("N2,head,WREN-I,7,0,free,", "mass_g"),
        ("N3,head,WREN-I,7,-268,free,", "mass_g"),
        ("N4,head,WREN-I,7,5 kg,free,", "mass_g"),
        ("N5,head,WREN-I,7,NaN,free,", "mass_g"),
        ("N6,head,WREN-I,7,\"268,4\",free,", ""),
        ("N7,head,WREN-I,12,268.4,free,", "number"),
        ("N8,head,WREN-X,7,268.4,free,", "model"),
        ("N9,hosel,WREN-I,7,268.4,free,", "kind"),
        ("N1,head,WREN-I,7,268.4,free,", "code"),
        ("H70,head,WREN-I,7,268.4,free,", "code"),
        ("N10,head,WREN-I,7,268.4,held,", "state"),
        // A head with a count: the row as a whole is wrong, told at its code.
        ("N11,head,WREN-I,7,268.4,free,3", "code"),
        ("N12,head,WREN-I,7,268,4,free,", ""),
        ("N13,grip,MARL,,1.75 oz,free,", ""),
    ];
    let file = std::iter::once("code,kind,model,number,mass_g,state,count")
        .chain(rows.iter().map(|r| r.0))
        .collect::<Vec<_>>()
        .join("\n");
    let (status, kept) = bench.send("POST", "/parts/import", "text/csv", file.into_bytes()).await;
    assert_eq!(status, StatusCode::OK, "{kept}");
    assert_eq!(kept["kept"], 3, "{kept}");
    let bad = kept["bad"].as_array().expect("bad rows");
    // The row with a cell too many has no column of its own at fault.
    let expected: Vec<(usize, &str)> = rows
        .iter()
        .enumerate()
        .filter(|(_, r)| !r.1.is_empty() || r.0.starts_with("N12"))
        .map(|(i, r)| (i + 2, r.1))
        .collect();
    let found: Vec<(usize, &str)> = bad
        .iter()
        .map(|b| (usize::try_from(b["line"].as_u64().unwrap_or(0)).unwrap_or(0), b["column"].as_str().unwrap_or("?")))
        .collect();
    assert_eq!(found, expected, "{bad:#?}");
    for row in bad {
        assert!(
            row["problem"]["words"].as_str().is_some_and(|p| p.len() > 8)
                && row["problem"]["next"].as_str().is_some_and(|n| n.len() > 8),
            "{row}"
        );
    }
    for (code, mass_g) in [("N1", 268.4), ("N6", 268.4), ("N13", 1.75 * 28.349_523_125)] {
        let part = bench.get(&format!("/parts/{code}")).await;
        let found = part["mass_g"].as_f64().expect("a mass");
        assert!((found - mass_g).abs() < 1e-9, "{code}: {found}");
    }
    assert_eq!(bench.get("/parts/H70").await["mass_g"], 265.2, "the part that was there keeps its figures");
    // The refused rows come back as a file; mended, they are taken.
    let mended =
        kept["bad_csv"].as_str().expect("a file").replace("WREN-X", "WREN-I").replace(",0,free", ",266.6,free");
    let (_, again) = bench.send("POST", "/parts/import", "text/csv", mended.into_bytes()).await;
    assert_eq!(again["kept"], 2, "{again}");
    bench.get("/parts/N8").await;
    bench.get("/parts/N2").await;
}

#[tokio::test]
async fn a_canonical_file_comes_back_byte_for_byte() {
    let bench = Bench::open().await;
    bench.made("/models/import", models()).await;
    let file = "code,kind,model,number,mass_g,length_mm,balance_point_mm,cpm,loft_deg,lie_deg,lot,place,state,count,owner\r\n\
                H-1,head,WREN-I,7,268.4,,,,31.5,62,L-9,\"rack 2, left\",free,,\r\n\
                H-2,head,WREN-I,8,9.62 oz,,,,,,\"the \"\"good\"\" box\",,ordered,,\r\n\
                S-1,shaft,SCREE-P,,119.8,1041.4,508,261.5,,,,rack,free,,\r\n\
                G-1,grip,MARL,,\"48,8\",,,,,,,böx 3,rejected,,\r\n\
                T-1,tip_weight,TW2,,2.0,,,,,,,tray,free,40,\r\n";
    let (status, kept) = bench.send("POST", "/parts/import", "text/csv", file.as_bytes().to_vec()).await;
    assert_eq!((status, &kept["bad"]), (StatusCode::OK, &json!([])), "{kept}");
    let back = bench.ask("GET", "/api/v1/parts/export", "text/plain", "").await;
    assert_eq!(back.text, file);
    assert!(back.kind.starts_with("text/csv"));
    // And again into another shop.
    let other = Bench::open().await;
    other.made("/models/import", models()).await;
    other.send("POST", "/parts/import", "text/csv", back.text.into_bytes()).await;
    assert_eq!(other.ask("GET", "/api/v1/parts/export", "text/plain", "").await.text, file);
}

#[tokio::test]
async fn the_same_file_twice_keeps_every_part_once() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let before = bench.picture().await;
    let (status, again) = bench.send("POST", "/parts/import", "text/csv", stock()).await;
    assert_eq!((status, &again["kept"]), (StatusCode::OK, &json!(0)), "{again}");
    assert_eq!(again["bad"].as_array().map(Vec::len), Some(16 + 24 + 3));
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn a_page_shows_the_bad_rows_before_anything_is_kept() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let before = bench.picture().await;
    let file = "code,kind,model,number,mass_g\nN1,grip,MARL,,50\nN2,grip,MARL,,<b>5 kg</b>\n";
    let page = bench.upload("/stock/import", file.as_bytes()).await;
    page.says(StatusCode::OK, &["line 3", "good rows", "&lt;b&gt;5 kg&lt;/b&gt;"]);
    assert!(!page.text.contains("<b>5 kg"), "cells are escaped");
    assert_eq!(bench.picture().await, before);
}
