//! Goal: the soft side of a shaft is found from a sweep by page and API alike, kept with how sure it is, shown at the glue, and
//! checked on the finished club. Method: a planned set of the support module whose sheet turns the soft side to the target; readings
//! written out from `mean·(1 − ε·cos 2(θ − θ₀))`, the stiffness of a shaft with two planes.

use crate::support::answer::detail;
use crate::support::{Bench, planned};
use axum::http::StatusCode;
use serde_json::{Value, json};

/// Frequencies every 30° of a shaft whose soft side is at `soft_deg`: the square of a frequency goes with the stiffness.
fn sweep(soft_deg: f64, asymmetry: f64) -> (Vec<f64>, Vec<f64>) {
    let angles: Vec<f64> = (0..12).map(|i| 30.0 * f64::from(i)).collect();
    let read = |angle: &f64| {
        let stiffness = 1.0 - asymmetry * (2.0 * (angle - soft_deg).to_radians()).cos();
        // A meter that shows hundredths, so that the fit has something left over.
        (252.0 * stiffness.sqrt() * 100.0).round() / 100.0
    };
    let read = angles.iter().map(read).collect();
    (angles, read)
}

#[tokio::test]
async fn a_sweep_gives_the_mark_that_the_glue_shows() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let (angles, read) = sweep(74.0, 0.012);
    let path = "/jobs/1/clubs/2/soft-side";
    let asked = json!({ "sweep": { "angles_deg": angles, "frequencies_cpm": read } });
    let (status, looked) = bench.post(path, asked.clone()).await;
    assert_eq!(status, StatusCode::OK, "{looked}");
    let (at, band) = (looked["at_deg"].as_f64().expect("an angle"), looked["band_deg"].as_f64().expect("a band"));
    assert!((at - 74.0).abs() < 1.0 && band < 3.0 && looked.get("reading").is_none(), "{looked}");
    assert!(looked["says"]["words"].as_str().is_some_and(|text| text.contains("It is stiffness")), "{looked}");
    // A club's own page and the form say the same.
    let mut fields = vec![("form".to_owned(), "sweep".to_owned()), ("kind".to_owned(), "frequency".to_owned())];
    fields.extend(read.iter().enumerate().map(|(i, cpm)| (format!("at{i}"), format!("{cpm}"))));
    fields.push(("deed".to_owned(), "show".to_owned()));
    let fields: Vec<(&str, &str)> = fields.iter().map(|(name, value)| (name.as_str(), value.as_str())).collect();
    let page = bench.form("/bench/1/2/soft-side", &fields).await;
    page.says(
        StatusCode::OK,
        &["Soft side 74°", "It is stiffness", "Keep as soft side", "Finished club in two planes"],
    );

    let mut keep: Value = asked;
    keep["keep"] = json!(true);
    keep["by"] = json!("Ada");
    let (status, kept) = bench.post(path, keep).await;
    assert_eq!(status, StatusCode::OK, "{kept}");
    assert_eq!(kept["reading"]["what"], json!("soft_side"));
    assert!(kept["reading"]["typed"].as_str().is_some_and(|typed| typed.starts_with("74 ± ")), "{kept}");
    let glue = bench.page("/bench/1/2?step=glue").await;
    assert!(glue.text.contains("soft side 74° ±"), "the alignment of the shaft, with how sure it is");

    // Alike all round: nothing to mark, and nothing is kept.
    let (angles, read) = sweep(0.0, 0.0001);
    let none = json!({ "sweep": { "angles_deg": angles, "frequencies_cpm": read, "frequencies_cpm_sd": 0.05 }, "keep": true, "by": "Ada" });
    let (status, problem) = bench.post(path, none).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{problem}");
    assert!(detail(&problem).contains("no soft side to keep"), "{problem}");
    // Typed by hand with how sure it is.
    let step = bench.get("/jobs/1").await["job"]["steps"]
        .as_array()
        .expect("steps")
        .iter()
        .find(|step| step["asks"].as_array().is_some_and(|asks| asks.contains(&json!("soft_side"))))
        .expect("the step")["key"]
        .clone();
    let typed =
        json!({ "slot": 3, "step": step, "entries": [{ "what": "soft_side", "typed": "41 ± 6" }], "by": "Ada" });
    let made = bench.made("/jobs/1/readings", typed).await;
    assert_eq!(made["readings"][0]["value"], json!(41.0), "{made}");
}

#[tokio::test]
async fn two_planes_of_the_finished_club_check_it() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let path = "/jobs/1/clubs/2/two-planes";
    let read = |along: f64, across: f64| json!({ "along_line_cpm": along, "heel_toe_cpm": across, "by": "Ada" });
    let (status, say) = bench.post(path, read(261.0, 264.0)).await;
    assert_eq!(status, StatusCode::OK, "{say}");
    // The sheet of the support module asks no direction.
    assert!(
        say["says"]["words"].as_str().is_some_and(|text| text.contains("along the line of play, 3.0 cpm slower")),
        "{say}"
    );
    let (_, alike) = bench.post(path, read(261.0, 261.2)).await;
    assert!(alike["says"]["words"].as_str().is_some_and(|text| text.contains("they must differ by")), "{alike}");
    let (status, problem) = bench.post(path, read(261.0, 9.0)).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{problem}");
    let fields = [("form", "planes"), ("along", "264"), ("across", "261")];
    bench.form("/bench/1/2/soft-side", &fields).await.says(StatusCode::OK, &["from heel to toe, 3.0 cpm slower"]);
}
