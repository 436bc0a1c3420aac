//! Goal: whatever stands in an address or in the name of a step, the answer is a page or a refusal in words, never “our
//! mistake”; and what is refused has kept nothing.
//! Method: masses that no club has in the address of a beam; line breaks, quotes, other scripts and mixtures of them in
//! each form of the bench and the plan that leads on to another page. A mistake of the program is status 500.

use crate::support::answer::Answer;
use crate::support::{Bench, planned, reading};
use axum::http::StatusCode;
use serde_json::json;

/// Names that break an address or a header where they are written into it as they are.
const ODD: [&str; 16] = [
    "dry\r\nSet-Cookie: who=Eve",
    "dry\n\n<html>",
    "\r",
    "\n",
    "\0",
    "\u{7f}\u{1b}[2J",
    "dry&kept=1#end",
    "../../plan/1?keep=x",
    "//elsewhere.example/",
    "\\\\elsewhere.example\\",
    "%0D%0ALocation: /",
    "% %% %zz",
    "größer 5½″ Ω 球桿 🏌",
    "\u{202e}yrd\u{feff}\u{2028}",
    "\"'<>{}|^`[]",
    "",
];

/// The same pieces in other orders, always the same ones: a plain linear congruential generator (constants of Numerical
/// Recipes, from memory; any would do) draws them.
fn mixtures(count: usize) -> Vec<String> {
    let mut state = 1_u32;
    let mut draw = |below: usize| {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        (state >> 16) as usize % below
    };
    (0..count)
        .map(|_| {
            let pieces = 1 + draw(5);
            (0..pieces)
                .flat_map(|_| {
                    let text: Vec<char> = ODD[draw(ODD.len() - 1)].chars().collect();
                    let from = draw(text.len());
                    text[from..].to_vec()
                })
                .collect()
        })
        .collect()
}

fn odd() -> Vec<String> {
    ODD.iter().map(|s| (*s).to_owned()).chain(mixtures(12)).collect()
}

fn in_address(text: &str) -> String {
    text.bytes().map(|b| format!("%{b:02X}")).collect()
}

/// Never our mistake; where it leads on, to an address of ours that can stand in a header, and to a page that is there.
async fn sound(bench: &Bench, what: &str, answer: &Answer) {
    assert!(!answer.status.is_server_error(), "{what}: {}", answer.text);
    assert!(answer.cookies.is_empty(), "{what}: {:?}", answer.cookies);
    if answer.status == StatusCode::SEE_OTHER {
        let to = answer.location.as_str();
        // RFC 3986, 2: what an address is written with; all else is percent-encoded.
        let of_an_address = |c: char| c.is_ascii_alphanumeric() || "-._~:/?#[]@!$&'()*+,;=%".contains(c);
        assert!(to.starts_with('/') && !to.starts_with("//"), "{what} leads to {to}");
        assert!(to.chars().all(of_an_address), "{what} leads to {to}");
        let (to, _) = to.split_once('#').unwrap_or((to, ""));
        let next = bench.page(to).await;
        assert!(!next.status.is_server_error(), "{what} leads to {to}: {}", next.text);
    }
}

#[tokio::test]
async fn a_mass_that_no_club_has_hangs_on_no_beam() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let figures =
        ["99999999999999999999", "1e308", "-1e308", "-5", "0", "1000", "999.99", "NaN", "inf", "", "5 kg", "٣"];
    let plain = bench.page("/bench/1/3?step=dry").await;
    plain.says(StatusCode::OK, &["finish-text"]);
    for field in ["head_g", "tip_g", "grip_g"] {
        for figure in figures {
            let page = bench.page(&format!("/bench/1/3?step=dry&{field}={}", in_address(figure))).await;
            page.says(StatusCode::OK, &["finish-text"]);
            assert!(!page.text.contains("NaN") && !page.text.contains("inf\""), "{field}={figure}");
        }
    }
    for figure in ["99999999999999999999", "1000"] {
        let all = bench.page(&format!("/bench/1/3?step=dry&head_g={figure}&tip_g={figure}&grip_g={figure}")).await;
        all.says(StatusCode::OK, &["finish-text"]);
    }
}

#[tokio::test]
async fn an_odd_step_in_a_form_of_the_bench_leads_on_or_is_refused() {
    let bench = Bench::open().await;
    planned(&bench).await;
    for step in odd() {
        let entry = json!([{ "what": "swing_weight", "typed": "D9.7" }]);
        let kept = bench.made("/jobs/1/readings", reading(1, "dry", entry)).await;
        let id = kept["readings"][0]["id"].as_str().expect("an id");
        let step = step.as_str();
        let mass = [("action", "lead_tape"), ("mass_g", "0.1"), ("step", step)];
        let why = [("reading", id), ("why", "read twice"), ("step", step)];
        let in_grid = [("reading", id), ("why", ""), ("step", step), ("grid", "swing_weight")];
        let swap = [("kind", "tip_weight"), ("code", "T2"), ("reason", "tried"), ("step", step)];
        let forms: [(&str, &[(&str, &str)]); 8] = [
            ("insist", &why),
            ("swap", &swap),
            ("extra", &mass),
            ("decline", &[("measure", "tape"), ("step", step)]),
            ("let-pass", &[("reason", "tried by hand"), ("step", step)]),
            ("scan", &[("code", "T2"), ("step", step)]),
            ("take-back", &in_grid),
            ("take-back", &why),
        ];
        for (form, fields) in forms {
            let answer = bench.form(&format!("/bench/1/1/{form}"), fields).await;
            sound(&bench, &format!("{form} with {step:?}"), &answer).await;
        }
        let answer = bench.form("/bench/1/1", &[("step", step), ("read-swing_weight", "D9.7")]).await;
        sound(&bench, &format!("an entry with {step:?}"), &answer).await;
        for address in ["/bench/1/grid/", "/card/", "/bench/1/1?step=", "/glue/new?job=1&x=", "/plan/1?keep="] {
            let answer = bench.page(&format!("{address}{}", in_address(step))).await;
            sound(&bench, &format!("{address} with {step:?}"), &answer).await;
        }
    }
    // The deeds themselves were done, and the readings are there with what was said of them.
    let record = bench.get("/jobs/1/record").await;
    let readings = record["clubs"][0]["readings"].as_array().expect("readings");
    assert_eq!(readings.len(), odd().len());
    assert!(readings.iter().all(|r| r["reading"]["taken_back"]["words"].is_string()), "{readings:?}");
}

#[tokio::test]
async fn what_is_refused_has_kept_nothing_whatever_the_step_is_called() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let entry = json!([{ "what": "swing_weight", "typed": "D9.7" }]);
    let kept = bench.made("/jobs/1/readings", reading(1, "dry", entry)).await;
    let id = kept["readings"][0]["id"].as_str().expect("an id");
    let before = bench.picture().await;
    for step in odd() {
        let step = step.as_str();
        let forms: [(&str, &[(&str, &str)]); 11] = [
            ("take-back", &[("reading", "r-0"), ("why", "?"), ("step", step)]),
            ("take-back", &[("reading", step), ("why", "?"), ("step", "dry")]),
            ("take-back", &[("reading", id), ("step", step), ("grid", "shine")]),
            ("insist", &[("reading", id), ("why", " "), ("step", step)]),
            ("insist", &[("reading", "r-0"), ("why", "read twice"), ("step", step)]),
            ("swap", &[("kind", "tip_weight"), ("code", "T9"), ("step", step)]),
            ("swap", &[("kind", "shine"), ("code", "T2"), ("step", step)]),
            ("extra", &[("action", "lead_tape"), ("mass_g", "100000"), ("step", step)]),
            ("extra", &[("action", "lead_tape"), ("mass_g", "NaN"), ("step", step)]),
            ("decline", &[("measure", "shine"), ("step", step)]),
            ("let-pass", &[("reason", "tried by hand"), ("step", if step.is_empty() { "none" } else { step })]),
        ];
        for (form, fields) in forms {
            let answer = bench.form(&format!("/bench/1/1/{form}"), fields).await;
            assert!(answer.status.is_client_error(), "{form} {fields:?}: {} {}", answer.status, answer.text);
            assert!(answer.text.starts_with("<!DOCTYPE html>"), "{form} {fields:?}: {}", answer.text);
        }
    }
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn odd_names_of_kept_parts_go_round_through_the_address_of_a_plan() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = bench.picture().await;
    for name in odd() {
        let name = name.as_str();
        for back in ["plan", "again", name] {
            let kept = bench.form("/plan/1/keep", &[("keep", name), ("toggle", "4:head"), ("back", back)]).await;
            sound(&bench, &format!("keep={name:?} back={back:?}"), &kept).await;
            let toggled = bench.form("/plan/1/keep", &[("keep", "4:head"), ("toggle", name), ("back", back)]).await;
            sound(&bench, &format!("toggle={name:?} back={back:?}"), &toggled).await;
        }
    }
    // A label may bear any sign: what was kept by touch is what the next page keeps, and lets go again by touch.
    for code in ["H40", "H&40", "H#1=2", "50%", "A+B", "größer ½", "%26"] {
        let lock = format!("4:{code}");
        let kept = bench.form("/plan/1/keep", &[("keep", "5:H50"), ("toggle", &lock), ("back", "plan")]).await;
        let again =
            bench.form("/plan/1/keep", &[("keep", &keep_of(&kept)), ("toggle", "6:H60"), ("back", "plan")]).await;
        assert_eq!(keep_of(&again), format!("5:H50,{lock},6:H60"), "{}", again.location);
        let freed = bench.form("/plan/1/keep", &[("keep", &keep_of(&kept)), ("toggle", &lock), ("back", "plan")]).await;
        assert_eq!(keep_of(&freed), "5:H50", "{}", freed.location);
    }
    assert_eq!(bench.picture().await, before, "keeping a part is only a wish");
}

/// What the address that a page leads on to keeps, read as a browser sends it.
fn keep_of(answer: &Answer) -> String {
    let query = answer.location.split('#').next().and_then(|to| to.split_once('?')).map_or("", |(_, query)| query);
    let value = query.split('&').find_map(|pair| pair.strip_prefix("keep=")).unwrap_or_default();
    let mut bytes = Vec::new();
    let mut rest = value.bytes();
    while let Some(byte) = rest.next() {
        let mut hex = || rest.next().and_then(|b| char::from(b).to_digit(16)).expect("two digits");
        bytes.push(match byte {
            b'%' => u8::try_from(hex() * 16 + hex()).expect("a byte"),
            b'+' => b' ',
            other => other,
        });
    }
    String::from_utf8(bytes).expect("UTF-8")
}
