//! Goal: a supplier's workbook comes in by two steps without script, through the API with a mapping, and goes out again;
//! labels can be read by a scanner; a scanned code leads to what it stands for.
//! Method: workbooks written by other programs; labels drawn by rsvg-convert and read by zbarimg, both general-purpose
//! programs that `./test` installs.

use crate::support::{Bench, hidden, planned, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};
use std::process::Command;

/// Written by openpyxl; see `make.py` beside it.
const SUPPLIER: &[u8] = include_bytes!("../../desk/tests/front_desk/workbooks/supplier.xlsx");
const XLSX: &str = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

#[tokio::test]
async fn a_suppliers_workbook_comes_in_by_two_steps() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let before = bench.picture().await;
    let page = bench.upload("/stock/import", SUPPLIER).await;
    // Nothing says the model yet.
    page.says(
        StatusCode::UNPROCESSABLE_ENTITY,
        &["No column has the model", "Weight (oz)", "9.35 · 9,36 · 9.61", "not used"],
    );
    let held = hidden(&page.text, "held").to_owned();
    let mut fields = vec![
        ("held", held.as_str()),
        ("sheet", "Stock"),
        ("sheet_was", "Stock"),
        ("header_line", "3"),
        ("header_line_was", "3"),
        ("all_model", "WREN-I"),
        ("heading_0", "Label"),
        ("means_0", "code"),
        ("heading_1", "Colour"),
        ("means_1", ""),
        ("heading_2", "Iron"),
        ("means_2", "number"),
        ("heading_3", "Weight (oz)"),
        ("means_3", "mass"),
        ("unit_3", "oz"),
        ("heading_4", "Shelf"),
        ("means_4", "place"),
    ];
    let looked = bench.fields("/stock/import", &fields).await;
    looked.says(StatusCode::OK, &["Keep the 3 good rows", "line 7", "line 8", "Line 5 has this code too"]);
    assert_eq!(bench.picture().await, before, "looking keeps nothing");
    let kept = bench.fields("/stock/import/keep", &fields).await;
    kept.says(StatusCode::OK, &["3 parts kept", "Save the bad rows"]);
    let part = bench.get("/parts/Q-1").await;
    // 9.35 oz at 28.349523125 g.
    assert!((part["mass_g"].as_f64().expect("a mass") - 265.068_041_218_75).abs() < 1e-9);
    assert_eq!((&part["place"], &part["model"], &part["number"]), (&json!("S7"), &json!("WREN-I"), &json!("7")));
    // The same column for two things, and a column for nothing at all.
    fields.retain(|(name, _)| *name != "means_1");
    fields.push(("means_1", "mass"));
    let twice = bench.fields("/stock/import", &fields).await;
    twice.says(StatusCode::UNPROCESSABLE_ENTITY, &["cannot both be the mass"]);
}

#[tokio::test]
async fn a_list_comes_in_through_the_api_and_goes_out_as_a_workbook() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let mapping = r#"{"fixed":{"model":"WREN-I"},"columns":{"mass":"Weight (oz)"},"ignore_others":true}"#;
    let query = mapping.bytes().map(|b| format!("%{b:02X}")).collect::<String>();
    let (status, looked) =
        bench.send("POST", &format!("/parts/import?look=true&mapping={query}"), XLSX, SUPPLIER.to_vec()).await;
    assert_eq!((status, &looked["imported"]["parts"][0]["code"]), (StatusCode::OK, &json!("Q-1")), "{looked}");
    assert_eq!(looked["sheets"], json!(["Stock"]));
    let (status, kept) = bench.send("POST", &format!("/parts/import?mapping={query}"), XLSX, SUPPLIER.to_vec()).await;
    assert_eq!((status, &kept["kept"], &kept["unused"]), (StatusCode::OK, &json!(3), &json!(["Colour"])), "{kept}");
    let book = bench.ask("GET", "/api/v1/parts/export.xlsx?text=Q-", "text/plain", "").await;
    assert_eq!((book.status, book.kind.as_str()), (StatusCode::OK, XLSX));
    assert!(book.text.starts_with("PK"), "a zip");
    let (status, problem) =
        bench.send("POST", "/parts/import?mapping=%7B%22colour%22%3A1%7D", XLSX, SUPPLIER.to_vec()).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(problem["detail"].as_str().is_some_and(|d| d.contains("unknown field `colour`")), "{problem}");
}

fn has(program: &str) {
    let found = Command::new("sh").args(["-c", &format!("command -v {program}")]).output().expect("a shell");
    assert!(found.status.success(), "{program} is not installed: ./test installs it");
}

/// What an independent reader finds in an SVG picture, drawn at so many pixels a millimetre of its own.
fn read_codes(svg: &str) -> Vec<String> {
    has("rsvg-convert");
    has("zbarimg");
    let folder = tempfile::tempdir().expect("a folder");
    let (from, to) = (folder.path().join("labels.svg"), folder.path().join("labels.png"));
    std::fs::write(&from, svg).expect("a file");
    let drawn = Command::new("rsvg-convert").arg(&from).arg("-o").arg(&to).status().expect("rsvg-convert");
    assert!(drawn.success());
    let only = ["--quiet", "-Sdisable", "-Sqrcode.enable", "-Scode128.enable"];
    let read = Command::new("zbarimg").args(only).arg(&to).output().expect("zbarimg");
    let mut found: Vec<String> = String::from_utf8(read.stdout).expect("text").lines().map(str::to_owned).collect();
    found.sort();
    found
}

#[tokio::test]
async fn labels_are_read_by_an_independent_reader() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    // Short, with small letters and marks, the longest with bars, and the longest code there is.
    let codes = ["H7", "head-7_b.014", "ABCDEFGH-JKLMNOPQ-12", "A1234567890123456789012345678901"];
    let rows: String = codes.iter().map(|c| format!("{c},head,WREN-I,7,265.1\n")).collect();
    let file = format!("code,kind,model,number,mass_g\n{rows}");
    let (status, kept) = bench.send("POST", "/parts/import", "text/csv", file.into_bytes()).await;
    assert_eq!((status, &kept["kept"]), (StatusCode::OK, &json!(4)), "{kept}");
    for code in codes {
        let answer = bench.ask("GET", &format!("/api/v1/labels.svg?codes={code}"), "text/plain", "").await;
        assert_eq!(answer.status, StatusCode::OK);
        assert!(answer.text.contains(&format!(">{code}</text>")) && answer.text.contains(">265.1 g</text>"));
        let mut expected = vec![format!("QR-Code:{code}")];
        // 32 letters would need bars of 0.15 mm: no scanner reads them from paper, so that label has the QR code alone.
        if code.len() < 32 {
            expected.insert(0, format!("CODE-128:{code}"));
        }
        assert_eq!(read_codes(&answer.text), expected);
    }
    let page = bench.page("/labels?codes=H7,head-7_b.014&paper=strip").await;
    page.says(StatusCode::OK, &["Wren iron 7", "265.1 g", "labels strip"]);
    bench.page("/labels?kind=head&model=WREN-I&number=7").await.says(StatusCode::OK, &["head-7_b.014"]);
    bench.page("/labels?codes=NONE").await.says(StatusCode::NOT_FOUND, &["NONE"]);
    bench.page("/labels?text=nothing-is-like-this").await.says(StatusCode::OK, &["No parts match"]);
}

#[tokio::test]
async fn a_scanned_code_leads_to_its_part_or_its_club() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let part = bench.page("/scan?code=%20s03%20").await;
    assert_eq!((part.status, part.location.as_str()), (StatusCode::SEE_OTHER, "/stock/parts/S03"));
    let job: Value = bench.get("/jobs/1").await;
    let card = job["job"]["clubs"][2]["card"].as_str().expect("a card");
    let club = bench.page(&format!("/scan?code={card}")).await;
    assert_eq!((club.status, club.location.as_str()), (StatusCode::SEE_OTHER, "/bench/1/3"));
    assert_eq!(bench.get("/scan/S03").await, json!({ "part": { "code": "S03" } }));
    bench
        .page("/scan?code=nothing")
        .await
        .says(StatusCode::NOT_FOUND, &["Nothing fits “nothing”", "scan a label again"]);
    bench.page("/").await.says(StatusCode::OK, &["action=\"/scan\""]);
}

#[tokio::test]
async fn a_list_of_parts_is_asked_for_by_any_field() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    let heads = bench.get("/parts?kind=head").await;
    let mut masses: Vec<f64> =
        heads["parts"].as_array().expect("parts").iter().filter_map(|p| p["mass_g"].as_f64()).collect();
    masses.sort_by(f64::total_cmp);
    let (low, high) = (masses[masses.len() / 4], masses[masses.len() / 2]);
    let wanted = masses.iter().filter(|mass| (low..=high).contains(*mass)).count();
    let found = bench.get(&format!("/parts?kind=head&least_mass_g={low}&most_mass_g={high}")).await;
    assert_eq!(found["total"], json!(wanted), "{low} to {high} of {masses:?}");
    assert!(wanted > 1 && wanted < masses.len());
    let csv = bench.page(&format!("/api/v1/parts/export?kind=head&least_mass_g={low}&most_mass_g={high}")).await;
    assert_eq!(csv.text.lines().count(), wanted + 1, "{}", csv.text);
    let lower = found["parts"][0]["code"].as_str().expect("a code").to_lowercase();
    assert_eq!(bench.get(&format!("/parts?code={lower}")).await["total"], json!(1));
    let unknown = bench.refused("GET", "/parts?least_mass=2", StatusCode::BAD_REQUEST, "").await;
    assert!(unknown["detail"].as_str().is_some_and(|d| d.contains("least_mass_g")), "{unknown}");
}
