//! Goal: a telephone's calendar fetches what is due through an address that opens nothing else, and finds the same entries again
//! when they moved. Method: the invented shop and a set with a glued club, the file read by the rules of RFC 5545 (3.1
//! unfolding, 3.8.4.7 identities); requests as they come over the network.

use crate::demo_past::demo;
use crate::keys::from;
use crate::support::{Bench, planned, reading};
use axum::http::StatusCode;
use jiff::SignedDuration;
use serde_json::json;
use std::collections::BTreeMap;

const PHONE: &str = "192.168.1.77";

/// The entries of a file: the properties of each by name with its parameters.
fn events(file: &str) -> Vec<BTreeMap<String, String>> {
    let mut found = Vec::new();
    for line in file.replace("\r\n ", "").split("\r\n") {
        match line.split_once(':') {
            Some(("BEGIN", "VEVENT")) => found.push(BTreeMap::new()),
            Some((name, value)) if !["BEGIN", "END"].contains(&name) => {
                if let Some(event) = found.last_mut() {
                    let twice = event.insert(name.to_owned(), value.to_owned());
                    assert!(twice.is_none(), "{name} twice in {event:?}");
                }
            }
            _ => {}
        }
    }
    found
}

#[tokio::test]
async fn due_dates_and_cures_are_in_the_file_with_identities_that_stay() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let dry = bench.expected(1, "dry").await;
    bench.made("/jobs/1/readings", reading(1, "dry", json!([{ "what": "swing_weight", "value": dry }]))).await;
    let batch = json!({ "job": 1, "slots": [1], "lot": "L1", "by": "Ada" });
    let started = bench.made("/batches", batch).await;
    let file = bench.page("/calendar.ics").await;
    assert_eq!(file.status, StatusCode::OK);
    assert_eq!(file.headers["content-type"], "text/calendar; charset=utf-8");
    assert!(file.text.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:"), "{}", file.text);
    assert!(file.text.split("\r\n").all(|line| line.len() <= 75), "{}", file.text);
    let found = events(&file.text);
    let due = bench.get("/jobs/1").await["job"]["sheet"]["due"].as_str().expect("a day").replace('-', "");
    let job = found.iter().find(|event| event.get("DTSTART;VALUE=DATE") == Some(&due)).expect("the job");
    assert!(job["SUMMARY"].starts_with("Job 1 due: ") && job["UID"].ends_with("-due@setwright"), "{job:?}");
    // The clocks of the batch, in UTC, as the API has them.
    for (end, field) in [("handling", "handling_at"), ("cure", "full_cure_at")] {
        let at = started[field].as_str().expect("a time");
        let written = format!("{}Z", &at[..19].replace(['-', ':'], ""));
        let event = found.iter().find(|event| event["UID"].ends_with(&format!("-{end}@setwright"))).expect(end);
        assert_eq!(event["DTSTART"], written);
    }
    // Another day and an hour later the same entries have the same identities.
    bench.clock.advance(SignedDuration::from_hours(25));
    let later = events(&bench.page("/calendar.ics").await.text);
    let uids = |events: &[BTreeMap<String, String>]| events.iter().map(|e| e["UID"].clone()).collect::<Vec<_>>();
    assert_eq!(uids(&found), uids(&later));
    assert_ne!(found[0]["DTSTAMP"], later[0]["DTSTAMP"]);
    // One after the other: what is over leaves, a batch that was entered wrongly at once.
    bench.made("/batches/1/take-back", json!({ "reason": "entered twice", "by": "Ada" })).await;
    assert_eq!(events(&bench.page("/calendar.ics").await.text).len(), found.len() - 2);
    // The API has what the file has.
    let entries = bench.get("/calendar").await;
    assert_eq!(entries.as_array().map(Vec::len), Some(found.len() - 2));
    assert_eq!(entries[0]["code"], "calendar.job_due");
}

#[tokio::test]
async fn the_address_of_a_calendar_opens_the_calendar_and_nothing_else() {
    let mut bench = Bench::open().await;
    planned(&bench).await;
    let door = web::Door { address: Some("http://192.168.1.20:7340".to_owned()), ..web::Door::default() };
    bench.router = web::router(bench.app.clone(), door);
    // Without a key there is nothing, and no key that goes further is taken from an address.
    let feed = |secret: &str| format!("/calendar.ics?key={secret}");
    assert_eq!(from(&bench, PHONE, "GET", "/calendar.ics", &[], "").await.status, StatusCode::UNAUTHORIZED);
    for role in ["reader", "builder", "owner"] {
        let given = bench.made("/keys", json!({ "name": role, "role": role, "days": 9, "by": "Ines" })).await;
        let secret = given["secret"].as_str().expect("a secret");
        let answer = from(&bench, PHONE, "GET", &feed(secret), &[], "").await;
        assert_eq!(answer.status, StatusCode::UNAUTHORIZED, "{role}");
        // In its header it is good for the calendar too.
        let bearer = format!("Bearer {secret}");
        let answer = from(&bench, PHONE, "GET", "/calendar.ics", &[("authorization", &bearer)], "").await;
        assert_eq!(answer.status, StatusCode::OK, "{role}");
    }
    // The page makes the address, and shows it once.
    let made = bench.form("/keys/calendar", &[("name", "Ines’ phone")]).await;
    assert_eq!(made.status, StatusCode::CREATED, "{}", made.text);
    let at = made.text.find("http://192.168.1.20:7340/calendar.ics?key=").expect("the address");
    let address: String = made.text[at..].chars().take_while(|c| *c != '<').collect();
    let path = address.trim_start_matches("http://192.168.1.20:7340").to_owned();
    let answer = from(&bench, PHONE, "GET", &path, &[], "").await;
    assert_eq!(answer.status, StatusCode::OK, "{}", answer.text);
    assert!(answer.text.contains("URL:http://192.168.1.20:7340/bench/1"), "{}", answer.text);
    // Everything else is shut to it, however it is sent.
    let secret = path.split_once("key=").expect("a key").1.to_owned();
    let bearer = format!("Bearer {secret}");
    for (method, address) in [
        ("GET", "/"),
        ("GET", "/stock"),
        ("GET", "/calendar"),
        ("GET", "/api/v1/calendar"),
        ("GET", "/api/v1/customers"),
        ("GET", "/metrics"),
        ("POST", "/api/v1/calc/trim"),
        ("POST", "/shop/who"),
    ] {
        let sent = from(&bench, PHONE, method, address, &[("authorization", &bearer)], "").await;
        assert_eq!(sent.status, StatusCode::FORBIDDEN, "{method} {address}");
        let asked = format!("{address}?key={secret}");
        let sent = from(&bench, PHONE, method, &asked, &[("accept", "application/json")], "").await;
        assert_eq!(sent.status, StatusCode::UNAUTHORIZED, "{method} {asked}");
    }
    // A wrong key is no way in from this machine either, and a key that was taken away is none.
    assert_eq!(bench.page(&feed("setwright_x")).await.status, StatusCode::UNAUTHORIZED);
    let number = bench.get("/keys").await[0]["number"].clone();
    assert_eq!(bench.form(&format!("/keys/{number}/withdraw"), &[]).await.location, "/keys");
    assert_eq!(from(&bench, PHONE, "GET", &path, &[], "").await.status, StatusCode::UNAUTHORIZED);
    // No tablet is let in as a calendar.
    let (status, said) = bench.post("/keys/codes", json!({ "name": "T", "role": "calendar", "by": "Ines" })).await;
    assert_eq!(
        (status, said["code"].as_str()),
        (StatusCode::UNPROCESSABLE_ENTITY, Some("access_fault.calendar_tablet"))
    );
}

#[tokio::test]
async fn the_page_of_the_calendar_leads_to_each_job() {
    let bench = demo().await;
    let page = bench.page("/calendar").await.text;
    for job in bench.get("/jobs").await.as_array().expect("jobs") {
        let number = &job["number"];
        assert!(page.contains(&format!("Job {number} due")), "{number}");
        assert!(
            page.contains(&format!("/bench/{number}\"")) || page.contains(&format!("/plan/{number}\"")),
            "{number}"
        );
    }
    // Nobody outside can reach this shop: no address is offered that would not work.
    assert!(page.contains("Nothing but this machine") && !page.contains("action=\"/keys/calendar\""));
}
