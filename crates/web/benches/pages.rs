//! What a page of the invented shop takes the server, from the request to the last byte, and how much of it goes over
//! the line: `cargo bench -p web --bench pages`. The set of job 1 is read dry first, one club doubted, so that the
//! bench has all to show that it ever shows.

#![allow(missing_docs)]

use app::bench::{Entry, NewReadings};
use app::sheet::Approve;
use app::stock::{PartChange, PartQuery};
use app::{App, SystemClock};
use axum::Router;
use axum::body::Body;
use axum::http::{Request, header};
use criterion::{Criterion, criterion_group, criterion_main};
use std::sync::Arc;
use std::time::{Duration, Instant};
use tokio::runtime::Runtime;
use tower::ServiceExt;
use trade::part::PartState;
use trade::reading::What;
use trade::sheet::Sheet;

const PAGES: [&str; 30] = [
    "/",
    "/sheets",
    "/sheets/new",
    "/stock",
    "/stock/new",
    "/stock/models",
    "/orders",
    "/plan",
    "/plan/1",
    "/plan/2",
    "/plan/1/again",
    "/plan/2/options",
    "/plan/6",
    "/plan/6/options",
    "/plan/day",
    "/bench/1/1?step=tip",
    "/bench/1/4?step=dry",
    "/bench/1/grid/dry",
    "/glue",
    "/glue/new?job=1",
    "/records",
    "/records/3",
    "/learned",
    "/capability",
    "/scales",
    "/scales/balance",
    "/shop",
    "/calc",
    "/calc/swing-weight",
    "/calc/frequency",
];
/// Pages of a proposal: looked at first after something in stock has changed.
const ANEW: [&str; 5] = ["/plan/2", "/plan/2/options", "/plan/6", "/plan/6/options", "/plan/day"];

/// The invented shop; job 6 is a set of eight to plan beside the one club of job 2.
async fn shop(folder: &std::path::Path) -> (App, Router) {
    let url = format!("sqlite:{}", folder.join("shop.db").display());
    let app = App::open(&url, Arc::new(SystemClock)).await.expect("a shop");
    ::demo::load(&app).await.expect("the invented shop");
    for slot in 1..=8 {
        let expected = app.job_view(1).await.expect("job 1").clubs[slot - 1]
            .steps
            .iter()
            .find(|s| s.key == "dry")
            .and_then(|s| s.asks[0].expected.as_ref().map(|e| e.value))
            .expect("a forecast");
        // One slip, as it happens.
        let value = expected - if slot == 4 { 4.0 } else { 0.1 };
        let entry =
            Entry { what: What::SwingWeight, typed: String::new(), value: Some(value), pivot_mm: None, again: false };
        let new = NewReadings {
            slot: i64::try_from(slot).expect("small"),
            step: "dry".into(),
            entries: vec![entry],
            on: None,
            by: "Bench".into(),
            version: None,
            seen: Vec::new(),
            at: None,
            reason: None,
            request_key: None,
        };
        app.read(1, &new).await.expect("kept");
    }
    let sheets = app.sheets().await.expect("sheets");
    let irons = sheets.iter().find(|s| s.job == Some(1)).expect("the sheet of job 1");
    let irons = app.sheet(&irons.id).await.expect("the sheet").sheet;
    let saved = app.save_sheet(&Sheet { player: "Una Marsett".into(), ..irons }).await.expect("a second set");
    let approve = Approve { steps: None, by: "Bench".into() };
    assert_eq!(app.approve_sheet(&saved.id, &approve).await.expect("approved").number, 6);
    (app.clone(), web::router(app, web::ServerNames::default()))
}

/// A free head of either job weighs a tenth of a gram more or less than before: what was proposed for them may not be the
/// best any more.
async fn weigh_again(app: &App) {
    for model in ["SISKIN", "FIELDFARE"] {
        let query = PartQuery { model: Some(model.into()), state: Some(PartState::Free), ..PartQuery::default() };
        let (parts, _) = app.parts(&query).await.expect("heads");
        let head = parts.first().expect("a head");
        let mass_g = head.mass_g.expect("weighed");
        let change = PartChange {
            version: head.version,
            mass_typed: Some(format!("{:.1} g", mass_g + if head.version % 2 == 0 { 0.1 } else { -0.1 })),
            reason: "weighed again".into(),
            by: "Bench".into(),
            ..PartChange::default()
        };
        app.change_part(&head.code, &change).await.expect("changed");
    }
}

async fn page(router: &Router, path: &str, packed: bool) -> usize {
    let mut request = Request::builder().uri(path);
    if packed {
        request = request.header(header::ACCEPT_ENCODING, "gzip");
    }
    let answer = router.clone().oneshot(request.body(Body::empty()).expect("a request")).await.expect("an answer");
    assert!(answer.status().is_success(), "{path}: {}", answer.status());
    axum::body::to_bytes(answer.into_body(), 32 << 20).await.expect("a body").len()
}

fn pages(c: &mut Criterion) {
    let runtime = Runtime::new().expect("a runtime");
    let folder = tempfile::tempdir().expect("a folder");
    let (app, router) = runtime.block_on(shop(folder.path()));
    let mut group = c.benchmark_group("page");
    group.sample_size(20).warm_up_time(Duration::from_millis(300)).measurement_time(Duration::from_secs(1));
    for path in PAGES {
        let (plain, packed) =
            runtime.block_on(async { (page(&router, path, false).await, page(&router, path, true).await) });
        println!("{path}: {:.1} kB, {:.1} kB packed", plain as f64 / 1000.0, packed as f64 / 1000.0);
        group.bench_function(path, |b| b.iter(|| runtime.block_on(page(&router, path, false))));
    }
    for path in ANEW {
        group.bench_function(format!("{path} after a change"), |b| {
            b.iter_custom(|times| {
                runtime.block_on(async {
                    let mut spent = Duration::ZERO;
                    for _ in 0..times {
                        weigh_again(&app).await;
                        let begun = Instant::now();
                        page(&router, path, false).await;
                        spent += begun.elapsed();
                    }
                    spent
                })
            });
        });
    }
    group.finish();
}

criterion_group!(benches, pages);
criterion_main!(benches);
