//! What a reading typed at the bench takes the server: the form, and the page that it leads to.
//! `cargo bench -p web --bench reading`. Eight clubs are read dry, one after the other, each from its own screen, on the
//! invented shop of the demonstration as it is before anything is read; the time of a round is that of its eight forms
//! and the eight pages after them.

#![allow(missing_docs)]

use app::{App, SystemClock};
use axum::Router;
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use std::path::Path;
use std::sync::Arc;
use std::time::{Duration, Instant};
use tokio::runtime::Runtime;
use tower::ServiceExt;

const CLUBS: usize = 8;

async fn open(file: &Path) -> App {
    App::open(&format!("sqlite:{}", file.display()), Arc::new(SystemClock)).await.expect("a shop")
}

async fn ask(router: &Router, path: &str, form: Option<String>) -> (StatusCode, String, String) {
    let method = if form.is_some() { "POST" } else { "GET" };
    let request = Request::builder().method(method).uri(path);
    let request = request.header(header::CONTENT_TYPE, "application/x-www-form-urlencoded");
    let body = form.map_or_else(Body::empty, Body::from);
    let answer = router.clone().oneshot(request.body(body).expect("a request")).await.expect("an answer");
    let to = answer.headers().get(header::LOCATION).and_then(|v| v.to_str().ok()).unwrap_or_default().to_owned();
    let status = answer.status();
    let bytes = axum::body::to_bytes(answer.into_body(), 32 << 20).await.expect("a body");
    (status, to, String::from_utf8_lossy(&bytes).into_owned())
}

/// The value of a hidden field.
fn hidden<'a>(page: &'a str, name: &str) -> &'a str {
    let from = page.find(&format!("name=\"{name}\"")).expect("the field");
    page[from..].split_once("value=\"").and_then(|(_, rest)| rest.split_once('"')).expect("a value").0
}

/// A swing weight as it is typed: `D9.2`.
fn notation(points: f64) -> String {
    let letter = (points / 10.0).floor();
    format!("{}{:.1}", char::from(b'A' + letter as u8), points - 10.0 * letter)
}

/// Reads all clubs dry on a copy of the shop.
async fn round(shop: &Path, copy: &Path, points: &[f64]) -> Duration {
    std::fs::copy(shop, copy).expect("a copy");
    let app = open(copy).await;
    let router = web::router(app.clone(), web::ServerNames::default());
    let mut spent = Duration::ZERO;
    for (i, points) in points.iter().enumerate() {
        let club = format!("/bench/1/{}", i + 1);
        let (_, _, screen) = ask(&router, &format!("{club}?step=dry"), None).await;
        let (version, key) = (hidden(&screen, "version"), hidden(&screen, "request_key"));
        let typed = notation(*points);
        let form = format!("step=dry&version={version}&request_key={key}&read-swing_weight={typed}");
        let begun = Instant::now();
        let (status, to, said) = ask(&router, &club, Some(form)).await;
        assert_eq!(status, StatusCode::SEE_OTHER, "{said}");
        let (status, ..) = ask(&router, &to, None).await;
        spent += begun.elapsed();
        assert_eq!(status, StatusCode::OK);
    }
    app.close().await;
    spent
}

fn reading(c: &mut Criterion) {
    let runtime = Runtime::new().expect("a runtime");
    let folder = tempfile::tempdir().expect("a folder");
    let (shop, copy) = (folder.path().join("shop.db"), folder.path().join("copy.db"));
    let points: Vec<f64> = runtime.block_on(async {
        let app = open(&shop).await;
        ::demo::load(&app).await.expect("the invented shop");
        let job = app.job_view(1).await.expect("job 1");
        let dry = |club: usize| {
            let steps = &job.clubs[club].steps;
            let step = steps.iter().find(|s| s.key == "dry").expect("a step");
            // A tenth off, as a scale shows it.
            step.asks[0].expected.as_ref().expect("a forecast").value + 0.1
        };
        let points = (0..CLUBS).map(dry).collect();
        app.close().await;
        points
    });
    let mut group = c.benchmark_group("reading");
    group.sample_size(10).warm_up_time(Duration::from_millis(300)).measurement_time(Duration::from_secs(5));
    group.throughput(Throughput::Elements(CLUBS as u64));
    group.bench_function("eight clubs", |b| {
        b.iter_custom(|times| (0..times).map(|_| runtime.block_on(round(&shop, &copy, &points))).sum());
    });
    group.finish();
}

criterion_group!(benches, reading);
criterion_main!(benches);
