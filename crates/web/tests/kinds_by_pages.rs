//! Goal: each kind of work goes by the pages alone from a new customer to the record, as a builder would do it. Method: the
//! forms of the pages are filled in and sent as a browser sends them; each step is found where the page before leads. What
//! is typed for a swing weight is what the bench expects there.

use crate::every_kind::shop_that_glues;
use crate::support::Bench;
use crate::support::answer::Answer;
use axum::http::StatusCode;
use jiff::SignedDuration;
use serde_json::{Value, json};

/// A form of a page: where it is sent, and its fields as they stand.
struct Form {
    action: String,
    fields: Vec<(String, String)>,
    /// Boxes that are not ticked.
    boxes: Vec<(String, String)>,
}

fn attribute(tag: &str, name: &str) -> Option<String> {
    let (_, rest) = tag.split_once(&format!(" {name}=\""))?;
    Some(rest.split_once('"')?.0.replace("&amp;", "&"))
}

/// The form of a page that has a field of this name.
fn form_with(page: &str, field: &str) -> Option<Form> {
    let wanted = format!(" name=\"{field}\"");
    let whole = page.split("<form").skip(1).filter_map(|rest| rest.split_once("</form>")).map(|(form, _)| form);
    let form = whole.into_iter().find(|form| form.contains(&wanted))?;
    let action = attribute(form.split_once('>')?.0, "action")?;
    let (mut fields, mut boxes) = (Vec::new(), Vec::new());
    for piece in form.split('<').skip(1) {
        let tag = piece.split_once('>').map_or(piece, |(tag, _)| tag);
        if let (true, Some(name)) = (tag.starts_with("input"), attribute(tag, "name")) {
            let picked = tag.contains("type=\"checkbox\"") || tag.contains("type=\"radio\"");
            let list = if !picked || tag.contains(" checked") { &mut fields } else { &mut boxes };
            list.push((name, attribute(tag, "value").unwrap_or_default()));
        } else if let (true, Some(name)) = (tag.starts_with("select"), attribute(tag, "name")) {
            let options =
                form.split_once(tag).and_then(|(_, rest)| rest.split_once("</select>")).map_or("", |(o, _)| o);
            let options: Vec<&str> = options.split("<option").skip(1).collect();
            let chosen = options.iter().find(|o| o.split_once('>').is_some_and(|(tag, _)| tag.contains(" selected")));
            let value = chosen.or(options.first()).and_then(|o| attribute(o, "value")).unwrap_or_default();
            fields.push((name, value));
        } else if let (true, Some(name)) = (tag.starts_with("textarea"), attribute(tag, "name")) {
            fields.push((name, String::new()));
        }
    }
    Some(Form { action, fields, boxes })
}

/// Fills in the form that has the first of these fields, sends it, and opens the page that it leads to.
async fn send(bench: &Bench, page: &Answer, at: &str, typed: &[(&str, String)]) -> (String, Answer) {
    let mut form = form_with(&page.text, typed[0].0).unwrap_or_else(|| panic!("{at} has no {}", typed[0].0));
    for (name, value) in typed {
        match form.fields.iter_mut().find(|(field, _)| field == name) {
            Some(field) => field.1.clone_from(value),
            None if form.boxes.contains(&((*name).to_owned(), value.clone())) => {
                form.fields.push(((*name).to_owned(), value.clone()));
            }
            None => panic!("{at} does not ask for {name}"),
        }
    }
    let fields: Vec<(&str, &str)> = form.fields.iter().map(|(k, v)| (k.as_str(), v.as_str())).collect();
    let sent = bench.form(&form.action, &fields).await;
    assert_eq!(sent.status, StatusCode::SEE_OTHER, "{at} {typed:?}: {}", sent.text);
    let mut page = bench.page(&sent.location).await;
    if page.status == StatusCode::SEE_OTHER {
        page = bench.page(&page.location.clone()).await;
    }
    assert_eq!(page.status, StatusCode::OK, "{}", sent.location);
    (sent.location, page)
}

/// Follows the first link of a page that begins so and holds that.
async fn follow(bench: &Bench, page: &Answer, begins: &str, holds: &str) -> (String, Answer) {
    let links = page.text.split("href=\"").skip(1).filter_map(|rest| rest.split_once('"')).map(|(to, _)| to);
    let to = links.into_iter().find(|to| to.starts_with(begins) && to.contains(holds));
    let to = to.unwrap_or_else(|| panic!("no link to {begins} {holds}")).replace("&amp;", "&");
    let page = bench.page(&to).await;
    assert_eq!(page.status, StatusCode::OK, "{to}");
    (to, page)
}

/// What a builder types for a figure that a step asks.
fn typed_for(ask: &Value) -> String {
    let what = ask["what"].as_str().unwrap();
    let expected = ask["expected"]["value"].as_f64().or(ask["target"]["value"].as_f64());
    match what {
        "swing_weight" => format!("{:.2} oz in", 161.0 + 1.75 * expected.unwrap_or(31.0)),
        "loft" => expected.map_or_else(|| "33".to_owned(), |deg| format!("{deg}")),
        "lie" => expected.map_or_else(|| "62".to_owned(), |deg| format!("{deg}")),
        "finished_length" | "shaft_length" => format!("{:.1} mm", expected.unwrap()),
        "head_mass" => "266".to_owned(),
        _ => format!("{:.1}", expected.unwrap_or_else(|| panic!("nothing is expected of {what}"))),
    }
}

/// One club by one kind of work, from the customer to the record.
async fn goes(kind: &str, asked: &[(&str, &str)], told: &[&str]) {
    let bench = shop_that_glues().await;
    let page = bench.page("/customers/new").await;
    let (_, customer) = send(&bench, &page, "/customers/new", &[("name", "Wilmot Quenby".to_owned())]).await;
    let (at, page) = follow(&bench, &customer, "/clubs/new?", "").await;
    let mut figures =
        vec![("number", "7".to_owned()), ("head_material", "forged".to_owned()), ("length", "37".to_owned())];
    if kind != "broken_shaft" {
        figures.extend([("swing_weight", "D2.1".to_owned()), ("total_mass", "425".to_owned())]);
    }
    let (_, club) = send(&bench, &page, &at, &figures).await;
    assert_eq!(bench.get("/clubs/C1").await["club"]["made"]["row"]["club_kind"], "iron", "what most clubs are");
    let (at, page) = follow(&bench, &club, "/clubs/job?", &format!("kind={kind}")).await;
    let names: Vec<String> = asked.iter().map(|(name, _)| format!("{name}-C1")).collect();
    let mut fields = vec![("due", "2026-03-09".to_owned())];
    fields.extend(names.iter().map(String::as_str).zip(asked.iter().map(|(_, value)| (*value).to_owned())));
    let (at, _) = send(&bench, &page, &at, &fields).await;
    assert!(at.starts_with("/bench/1"), "{kind}: {at}");
    let keys: Vec<String> = {
        let steps = bench.get("/jobs/1").await["clubs"][0]["steps"].clone();
        steps.as_array().unwrap().iter().map(|step| step["key"].as_str().unwrap().to_owned()).collect()
    };
    for key in keys {
        let at = format!("/bench/1/1?step={key}");
        let mut page = bench.page(&at).await;
        assert_eq!(page.status, StatusCode::OK, "{at}");
        let state = bench.get("/jobs/1").await["clubs"][0]["steps"].clone();
        let state = state.as_array().unwrap().iter().find(|step| step["key"] == key).unwrap().clone();
        if page.text.contains("href=\"/glue/new") {
            let (to, cup) = follow(&bench, &page, "/glue/new", "").await;
            let mut typed = vec![("lot", "B-1".to_owned())];
            if form_with(&cup.text, "lot").unwrap().fields.iter().any(|(name, _)| name == "reason") {
                // Something is open on the club: it is ticked by hand, and says why.
                typed.extend([("slot", "1".to_owned()), ("reason", "looked at by hand".to_owned())]);
            }
            send(&bench, &cup, &to, &typed).await;
            bench.clock.advance(SignedDuration::from_hours(25));
            page = bench.page(&at).await;
        }
        let asks: Vec<Value> = state["asks"].as_array().unwrap().clone();
        let names: Vec<String> = asks.iter().map(|ask| format!("read-{}", ask["what"].as_str().unwrap())).collect();
        let mut typed: Vec<(&str, String)> = names
            .iter()
            .zip(&asks)
            .filter(|(_, ask)| ask["what"] != "done")
            .map(|(name, ask)| (name.as_str(), typed_for(ask)))
            .collect();
        if typed.is_empty() {
            // A step that is only done has one button; one that is open on something asks why.
            typed.push(("read-done", "done".to_owned()));
        }
        let Some(form) = form_with(&page.text, typed[0].0) else { continue };
        if form.fields.iter().any(|(name, _)| name == "reason") {
            typed.push(("reason", "the player has seen it".to_owned()));
        }
        send(&bench, &page, &at, &typed).await;
    }
    let record = bench.get("/jobs/1/record").await;
    assert_eq!(record["state"], "finished", "{kind}: {record}");
    let page = bench.page("/records/1").await;
    assert!(page.text.contains("Wilmot Quenby") && !page.text.contains("unknown ()"), "{}", page.text);
    for words in told {
        assert!(page.text.contains(words), "{kind}: the record does not say {words:?}: {}", page.text);
    }
    let life = bench.page("/clubs/C1").await;
    assert!(life.text.contains("/records/1"), "{kind}: its life leads to the record");
    assert_eq!(bench.get("/clubs/C1").await["life"][1]["job_kind"], kind);
}

#[tokio::test]
async fn a_grip_and_a_bend_by_the_pages() {
    goes("regrip", &[("grip_model", "OLIVINE")], &["swing weight", "grip Olivine"]).await;
    goes("bend", &[("loft", "34"), ("lie", "63")], &["loft", "34.0°", "head as it came"]).await;
}

#[tokio::test]
async fn another_length_by_the_pages() {
    goes("shorten", &[("length", "36.5"), ("grip_model", "OLIVINE")], &["to the shaft end", "60° plane"]).await;
    let longer = [("length", "37.5"), ("extension_mass", "6"), ("grip_model", "OLIVINE")];
    goes("lengthen", &longer, &["37.50 in to the cap"]).await;
}

#[tokio::test]
async fn a_rebalance_and_a_rattle_by_the_pages() {
    goes("rebalance", &[("swing_weight", "D3")], &["swing weight"]).await;
    goes("rattle", &[], &["swing weight"]).await;
}

#[tokio::test]
async fn opened_joints_by_the_pages() {
    let new = [("shaft_model", "RUSH"), ("ferrule_model", "FER"), ("grip_model", "OLIVINE"), ("length", "37")];
    goes("reshaft", &new, &["Glued from batch 1", "shaft Rush"]).await;
    goes("loose_head", &[("ferrule_model", "FER")], &["Glued from batch 1"]).await;
    let broken = [&new[..], &[("swing_weight", "D2")]].concat();
    goes("broken_shaft", &broken, &["Glued from batch 1"]).await;
}

/// A club that keeps what it came with is asked for a change of nothing. Choices that are still to come cannot make that less
/// likely than it is now: leaving all as it is is one of them.
#[tokio::test]
async fn choices_to_come_do_not_make_a_kept_swing_weight_less_likely() {
    let bench = shop_that_glues().await;
    let arrival = json!({ "length_mm": 939.8, "swing_weight_points": 32.1, "total_mass_g": 425.0 });
    crate::club_work::note(&bench, arrival).await;
    let asked = json!({ "club": "C1", "kind": "lengthen", "length_mm": 952.5, "extension_mass_g": 6.0, "grip_model": "OLIVINE" });
    bench.made("/jobs", json!({ "due": "2026-03-09", "clubs": [asked], "by": "Ada" })).await;
    for (step, what, value) in
        [("arrived", "swing_weight", 32.1), ("stripped", "grip_mass", 49.0), ("stripped", "swing_weight", 41.1)]
    {
        crate::club_work::read(&bench, 1, 1, step, json!([{ "what": what, "value": value }])).await;
        let now = bench.get("/jobs/1").await["clubs"][0]["finish"]["chance"].as_f64().unwrap();
        let ahead = bench.get("/jobs/1/clubs/1/advice").await["chance_ahead"].as_f64().unwrap();
        assert!(ahead > now - 0.02, "{step} {what}: {now} now, {ahead} with the choices to come");
    }
}
