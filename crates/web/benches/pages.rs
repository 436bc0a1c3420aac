//! What a page of the invented shop takes the server, from the request to the last byte, and how much of it goes over
//! the line: `cargo bench -p web --bench pages`. The set of job 1 is read dry first, one club doubted, so that the
//! bench has all to show that it ever shows.

#![allow(missing_docs)]

use app::bench::{Entry, NewReadings};
use app::{App, SystemClock};
use axum::Router;
use axum::body::Body;
use axum::http::{Request, header};
use criterion::{Criterion, criterion_group, criterion_main};
use std::sync::Arc;
use tokio::runtime::Runtime;
use tower::ServiceExt;
use workshop::reading::What;

const PAGES: [&str; 20] = [
    "/",
    "/sheets",
    "/sheets/new",
    "/stock",
    "/stock/new",
    "/stock/models",
    "/plan",
    "/plan/1",
    "/plan/2",
    "/bench/1/1?step=tip",
    "/bench/1/4?step=dry",
    "/bench/1/grid/dry",
    "/glue",
    "/glue/new?job=1",
    "/records/1",
    "/learned",
    "/capability",
    "/shop",
    "/calc",
    "/calc/balance",
];

async fn shop(folder: &std::path::Path) -> Router {
    let url = format!("sqlite:{}", folder.join("shop.db").display());
    let app = App::open(&url, Arc::new(SystemClock)).await.expect("a shop");
    app.load_demo().await.expect("the invented shop");
    for slot in 1..=8 {
        let expected = app.job_view(1).await.expect("job 1").clubs[slot - 1]
            .steps
            .iter()
            .find(|s| s.key == "dry")
            .and_then(|s| s.asks[0].expected.as_ref().map(|e| e.value))
            .expect("a forecast");
        // One slip, as it happens.
        let value = expected - if slot == 4 { 4.0 } else { 0.1 };
        let entry = Entry { what: What::Balance, typed: String::new(), value: Some(value), again: false };
        let new = NewReadings {
            slot: i64::try_from(slot).expect("small"),
            step: "dry".into(),
            entries: vec![entry],
            on: None,
            by: "Bench".into(),
            version: None,
            at: None,
            request_key: None,
        };
        app.read(1, &new).await.expect("kept");
    }
    web::router(app)
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
    let router = runtime.block_on(shop(folder.path()));
    let mut group = c.benchmark_group("page");
    group.sample_size(50);
    for path in PAGES {
        let (plain, packed) =
            runtime.block_on(async { (page(&router, path, false).await, page(&router, path, true).await) });
        println!("{path}: {:.1} kB, {:.1} kB packed", plain as f64 / 1000.0, packed as f64 / 1000.0);
        group.bench_function(path, |b| b.iter(|| runtime.block_on(page(&router, path, false))));
    }
    group.finish();
}

criterion_group!(benches, pages);
criterion_main!(benches);
