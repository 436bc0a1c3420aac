//! For whoever runs the machine: whether the shop answers, how busy it is, and a line of the log for each request.

use crate::access::{HEALTH, Visitor};
use crate::problem::Problem;
use app::App;
use axum::extract::{Request, State};
use axum::http::{HeaderName, HeaderValue, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use axum::{Extension, Json, Router};
use std::fmt::Write;
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering::Relaxed};
use std::time::{Duration, Instant};

/// Names each request in the log and in its answer.
const REQUEST_ID: HeaderName = HeaderName::from_static("x-request-id");

/// Upper ends of the classes of times, milliseconds; the last class has none.
const TIMES_MS: [u64; 8] = [5, 10, 25, 50, 100, 250, 1000, 5000];
/// First digits of the statuses that are counted.
const STATUSES: [u16; 4] = [2, 3, 4, 5];

/// What was asked since the program began. Shared by all that answer.
#[derive(Debug, Default)]
pub(crate) struct Counted {
    /// Requests by the first digit of their status.
    by_status: [AtomicU64; STATUSES.len()],
    /// Requests by the time that the answer took to begin, in the classes of [`TIMES_MS`].
    by_time: [AtomicU64; TIMES_MS.len() + 1],
    time_us: AtomicU64,
    under_way: AtomicI64,
}

impl Counted {
    fn count(&self, status: StatusCode, took: Duration) {
        if let Some(at) = STATUSES.iter().position(|first| status.as_u16() / 100 == *first) {
            self.by_status[at].fetch_add(1, Relaxed);
        }
        let ms = took.as_millis();
        let class = TIMES_MS.iter().position(|end| ms <= u128::from(*end)).unwrap_or(TIMES_MS.len());
        self.by_time[class].fetch_add(1, Relaxed);
        self.time_us.fetch_add(u64::try_from(took.as_micros()).unwrap_or(u64::MAX), Relaxed);
    }
}

/// One more under way, until it is dropped.
struct UnderWay<'a>(&'a AtomicI64);

impl<'a> UnderWay<'a> {
    fn begin(of: &'a AtomicI64) -> Self {
        of.fetch_add(1, Relaxed);
        Self(of)
    }
}

impl Drop for UnderWay<'_> {
    fn drop(&mut self) {
        self.0.fetch_sub(1, Relaxed);
    }
}

pub(crate) fn router() -> Router<App> {
    Router::new().route(HEALTH, get(health)).route("/metrics", get(metrics))
}

/// Counts a request, names it, and writes a line of the log about it: no query, since names are asked for there.
pub(crate) async fn observed(State(counted): State<Arc<Counted>>, request: Request, next: Next) -> Response {
    let begun = Instant::now();
    let (method, path) = (request.method().clone(), request.uri().path().to_owned());
    // A proxy may have named it already.
    let sound = |id: &&HeaderValue| {
        (1..=64).contains(&id.len()) && id.as_bytes().iter().all(|b| b.is_ascii_alphanumeric() || *b == b'-')
    };
    let given = request.headers().get(&REQUEST_ID).filter(sound).cloned();
    let id = given.or_else(|| HeaderValue::from_str(&app::request_key()).ok());
    let under_way = UnderWay::begin(&counted.under_way);
    let mut response = next.run(request).await;
    drop(under_way);
    let took = begun.elapsed();
    let status = response.status();
    counted.count(status, took);
    let who = response.extensions_mut().remove::<Visitor>();
    tracing::info!(
        target: "setwright::request",
        id = id.as_ref().and_then(|id| id.to_str().ok()).unwrap_or_default(),
        %method,
        path,
        status = status.as_u16(),
        ms = u64::try_from(took.as_millis()).unwrap_or(u64::MAX),
        from = who.as_ref().map_or("", |who| who.from.as_str()),
        key = who.as_ref().and_then(|who| who.key.as_ref()).map(|key| key.number),
        "request"
    );
    if let Some(id) = id {
        response.headers_mut().insert(REQUEST_ID, id);
    }
    response
}

/// `{"status":"ok"}` while the shop's database can be read, 503 while it cannot.
async fn health(State(app): State<App>) -> Response {
    match app.can_be_read().await {
        Ok(()) => Json(serde_json::json!({ "status": "ok" })).into_response(),
        Err(error) => {
            let status = Problem::of(&error).status();
            (status, Json(serde_json::json!({ "status": "failed" }))).into_response()
        }
    }
}

/// The text form of OpenMetrics 1.0, which programs that watch machines read.
const METRICS_TYPE: &str = "application/openmetrics-text; version=1.0.0; charset=utf-8";

async fn metrics(State(app): State<App>, Extension(counted): Extension<Arc<Counted>>) -> Response {
    let mut text = String::new();
    // Writing to a string does not fail.
    let _ = write_counted(&mut text, &counted);
    let backups = app.backup_state();
    if let Some(at) = backups.newest_at {
        let age_s = app.now().duration_since(at).as_secs();
        let _ = gauge(&mut text, "setwright_backup_age_seconds", "Age of the newest backup.", age_s);
    }
    let wrong = i64::from(backups.wrong.is_some());
    let _ = gauge(&mut text, "setwright_backup_wrong", "1 while Today warns of the backups or of damage.", wrong);
    let clock = app.clock_state().await.map(|state| i64::from(state.doubt.is_some()));
    if let Ok(doubted) = clock {
        let _ = gauge(&mut text, "setwright_clock_doubted", "1 while the clock of the machine is doubted.", doubted);
    }
    text.push_str("# EOF\n");
    ([(header::CONTENT_TYPE, METRICS_TYPE)], text).into_response()
}

fn gauge(text: &mut String, name: &str, help: &str, value: i64) -> std::fmt::Result {
    writeln!(text, "# TYPE {name} gauge\n# HELP {name} {help}\n{name} {value}")
}

fn write_counted(text: &mut String, counted: &Counted) -> std::fmt::Result {
    writeln!(text, "# TYPE setwright_build info\n# HELP setwright_build The version that runs.")?;
    writeln!(text, "setwright_build_info{{version=\"{}\"}} 1", env!("CARGO_PKG_VERSION"))?;
    writeln!(
        text,
        "# TYPE setwright_requests counter\n# HELP setwright_requests Requests by the first digit of their status."
    )?;
    for (first, count) in STATUSES.iter().zip(&counted.by_status) {
        writeln!(text, "setwright_requests_total{{status=\"{first}xx\"}} {}", count.load(Relaxed))?;
    }
    let name = "setwright_answer_seconds";
    writeln!(text, "# TYPE {name} histogram\n# UNIT {name} seconds\n# HELP {name} Time until an answer begins.")?;
    let mut below = 0;
    for (end_ms, count) in TIMES_MS.iter().zip(&counted.by_time) {
        below += count.load(Relaxed);
        let (whole, rest) = (end_ms / 1000, end_ms % 1000);
        writeln!(text, "{name}_bucket{{le=\"{whole}.{rest:03}\"}} {below}")?;
    }
    below += counted.by_time[TIMES_MS.len()].load(Relaxed);
    writeln!(text, "{name}_bucket{{le=\"+Inf\"}} {below}\n{name}_count {below}")?;
    let time_us = counted.time_us.load(Relaxed);
    writeln!(text, "{name}_sum {}.{:06}", time_us / 1_000_000, time_us % 1_000_000)?;
    gauge(
        text,
        "setwright_requests_under_way",
        "Requests that are being answered now.",
        counted.under_way.load(Relaxed),
    )
}
