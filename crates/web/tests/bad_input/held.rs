//! A part is never in two clubs: two jobs that want the same one, a swap to one that is held, a change by hand.

use crate::support::answer::detail;
use crate::support::{Bench, job_of, planned, proposed, sheet, stocked};
use axum::http::StatusCode;
use serde_json::{Value, json};

const CONFLICT: StatusCode = StatusCode::CONFLICT;

async fn two_jobs(bench: &Bench) -> (Value, Value) {
    stocked(bench).await;
    for (number, player) in [(1, "Nobody Inparticular"), (2, "Somebody Else")] {
        let sheet = sheet(bench, player, "4-7, D2, 1 wrap").await;
        assert_eq!(job_of(bench, sheet).await, number);
    }
    (proposed(bench, 1).await, proposed(bench, 2).await)
}

/// Codes of the parts that a job holds.
async fn held(bench: &Bench, job: i64) -> Vec<String> {
    let view = bench.get(&format!("/jobs/{job}")).await;
    let clubs = view["job"]["clubs"].as_array().expect("clubs").iter();
    clubs
        .filter_map(|c| c["plan"]["parts"].as_array())
        .flatten()
        .filter(|p| p["kind"] != "ferrule" && p["kind"] != "tip_weight")
        .map(|p| p["code"].as_str().expect("a code").to_owned())
        .collect()
}

#[tokio::test]
async fn the_second_of_two_jobs_that_chose_the_same_parts_is_told() {
    let bench = Bench::open().await;
    let (first, second) = two_jobs(&bench).await;
    assert_eq!(first["fingerprint"], second["fingerprint"], "both want the same parts");
    bench.made("/jobs/1/plan", first).await;
    let before = bench.picture().await;
    let problem = bench.refused("POST", "/jobs/2/plan", CONFLICT, second.to_string()).await;
    assert!(detail(&problem).contains("the stock changed since this plan was proposed"), "{problem}");
    // The page of the plan says so too, and shows the plan that is possible now.
    let fingerprint = second["fingerprint"].as_str().expect("a mark");
    bench.form("/plan/2", &[("fingerprint", fingerprint)]).await.says(CONFLICT, &["stock changed"]);
    assert_eq!(bench.picture().await, before);
    let other = proposed(&bench, 2).await;
    bench.made("/jobs/2/plan", other).await;
    let (mine, theirs) = (held(&bench, 1).await, held(&bench, 2).await);
    assert_eq!((mine.len(), theirs.len()), (12, 12));
    assert!(mine.iter().all(|code| !theirs.contains(code)), "{mine:?} {theirs:?}");
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn of_two_that_accept_at_the_same_moment_one_wins() {
    let bench = Bench::open().await;
    let (first, second) = two_jobs(&bench).await;
    let (a, b) = tokio::join!(bench.post("/jobs/1/plan", first), bench.post("/jobs/2/plan", second));
    let mut statuses = [a.0, b.0];
    statuses.sort();
    assert_eq!(statuses, [StatusCode::OK, CONFLICT], "{} {}", a.1, b.1);
    let (winner, loser) = if a.0 == StatusCode::OK { (1, 2) } else { (2, 1) };
    assert_eq!(held(&bench, winner).await.len(), 12);
    assert_eq!(held(&bench, loser).await.len(), 0);
    let parts = bench.get("/parts?state=held").await;
    assert_eq!(parts["total"], 12, "only the winner's are held");
}

#[tokio::test]
async fn a_part_of_another_job_cannot_be_swapped_in_locked_or_freed() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let two = sheet(&bench, "Somebody Else", "7-8, D2, 1 wrap").await;
    assert_eq!(job_of(&bench, two).await, 2);
    let taken = held(&bench, 1).await;
    let sevens = taken.iter().find(|c| c.starts_with("H7")).expect("job 1 has a 7");
    let free = if sevens == "H70" { "H71" } else { "H70" };

    let lock = json!({ "locks": [{ "slot": 1, "code": sevens }] });
    let answer = bench.ask("POST", "/api/v1/jobs/2/plan/propose", "application/json", lock.to_string()).await;
    assert!(answer.status.is_client_error(), "{}", answer.text);
    assert!(detail(&answer.problem(answer.status)).contains(sevens.as_str()), "{}", answer.text);

    let accept = proposed(&bench, 2).await;
    bench.made("/jobs/2/plan", accept).await;
    assert!(held(&bench, 2).await.contains(&free.to_owned()));
    let before = bench.picture().await;
    let swap = json!({ "kind": "head", "code": sevens, "by": "Ada" });
    let problem = bench.refused("POST", "/jobs/2/clubs/1/parts", CONFLICT, swap.to_string()).await;
    assert!(detail(&problem).contains(&format!("{sevens} is a head and held")), "{problem}");
    let fields = [("kind", "head"), ("code", sevens.as_str()), ("step", "dry")];
    bench.form("/bench/2/1/swap", &fields).await.says(CONFLICT, &["is a head and held"]);

    let version = bench.get(&format!("/parts/{sevens}")).await["version"].clone();
    let change = json!({ "version": version, "state": "free", "by": "Ada" });
    let problem = bench.refused("PATCH", &format!("/parts/{sevens}"), CONFLICT, change.to_string()).await;
    assert!(detail(&problem).contains("held"), "{problem}");
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn a_plan_is_not_accepted_over_a_plan() {
    let bench = Bench::open().await;
    planned(&bench).await;
    let before = bench.picture().await;
    bench.refused("POST", "/jobs/1/plan/propose", CONFLICT, "{}").await;
    let accept = json!({ "fingerprint": "whatever", "by": "Ada" });
    let problem = bench.refused("POST", "/jobs/1/plan", CONFLICT, accept.to_string()).await;
    assert!(detail(&problem).contains("job 1 is at the bench already"), "{problem}");
    assert_eq!(bench.picture().await, before);
}

#[tokio::test]
async fn a_plan_with_clubs_left_out_is_held_only_when_that_was_said() {
    let bench = Bench::open().await;
    stocked(&bench).await;
    for code in ["H70", "H71"] {
        let part = bench.get(&format!("/parts/{code}")).await;
        let change = json!({ "version": part["version"], "state": "rejected", "reason": "nicked", "by": "Ada" });
        let (status, _) =
            bench.send("PATCH", &format!("/parts/{code}"), "application/json", change.to_string().into_bytes()).await;
        assert_eq!(status, StatusCode::OK);
    }
    let set = sheet(&bench, "Nobody Inparticular", "6-8, D2, 1 wrap").await;
    let saved = bench.made("/sheets", set).await;
    bench.made(&format!("/sheets/{}/approve", saved["id"].as_str().expect("id")), json!({ "by": "Ada" })).await;
    let proposal = bench.made("/jobs/1/plan/propose", json!({})).await;
    assert_eq!(proposal["plan"]["missing"].as_array().map(Vec::len), Some(1), "{}", proposal["plan"]["missing"]);
    let before = bench.picture().await;
    let mut accept = json!({ "fingerprint": proposal["fingerprint"], "by": "Ada" });
    let problem = bench.refused("POST", "/jobs/1/plan", CONFLICT, accept.to_string()).await;
    assert!(detail(&problem).contains("no parts for 7"), "{problem}");
    assert_eq!(bench.picture().await, before);
    accept["partly"] = json!(true);
    bench.made("/jobs/1/plan", accept).await;
    assert_eq!(held(&bench, 1).await.len(), 6);
}
