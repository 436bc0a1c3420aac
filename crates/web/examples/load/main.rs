//! How long pages take a shop of many years, while requests come in at a steady rate.
//!
//! `load make DATABASE` makes a small shop: the demonstration with its past, three sets at the bench, four jobs to plan.
//! `load run DATABASE SETWRIGHT [RATE SECONDS]` starts the server on it, asks for a mix of pages and says how long they
//! took. Between the two the finished jobs are multiplied (`store/examples/multiply.rs`); `scripts/load-test` does all of
//! it.
//!
//! `load write DATABASE SETWRIGHT [WRITERS SECONDS]` keeps readings from so many tablets at once, each one's next as soon as
//! the one before is answered, and asks for pages beside them: what becomes of both (`writers`).
//!
//! `load idle DATABASE SETWRIGHT [CONNECTIONS]` opens connections that say nothing, and says what memory they take.
//!
//! The requests are sent by the clock and not when the one before was answered, and each one's time counts from when it
//! was due: a server that falls behind is not spared.

mod server;
mod writers;

use app::bench::{Entry, NewReadings};
use app::plan::Accept;
use app::sheet::Approve;
use app::{App, SystemClock};
use server::{Server, page};
use std::collections::BTreeMap;
use std::sync::Arc;
use std::time::{Duration, Instant};
use trade::reading::What;

/// Whatever ends a measurement.
type Failure = Box<dyn std::error::Error + Send + Sync>;

/// A page and how often it is asked for among the others. What the bench looks at most comes most.
const MIX: [(&str, usize); 27] = [
    ("/bench/1/1?step=tip", 8),
    ("/bench/1/4?step=dry", 8),
    ("/bench/9/3?step=dry", 6),
    ("/bench/1/grid/dry", 5),
    ("/", 6),
    ("/bench", 2),
    ("/plan", 2),
    ("/plan/2", 2),
    ("/plan/6", 4),
    ("/plan/6/options", 1),
    ("/plan/day", 1),
    ("/glue", 2),
    ("/glue/new?job=1", 2),
    ("/stock", 3),
    ("/stock?kind=head&state=free", 2),
    ("/stock?text=olivine", 1),
    ("/stock/new", 2),
    ("/stock/models", 1),
    ("/orders", 1),
    ("/sheets", 2),
    ("/sheets/new", 1),
    ("/records", 1),
    ("/records/3", 1),
    ("/records/5003", 1),
    ("/learned", 1),
    ("/capability", 1),
    ("/scales", 1),
];

#[tokio::main]
async fn main() -> Result<(), Failure> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["make", url] => make(url).await,
        ["run", url, server] => run(url, server, 50.0, 60.0).await,
        ["run", url, server, rate, seconds] => run(url, server, rate.parse()?, seconds.parse()?).await,
        ["write", url, server] => writers::run(url, server, 16, 20.0).await,
        ["write", url, server, writers, seconds] => writers::run(url, server, writers.parse()?, seconds.parse()?).await,
        ["idle", url, server] => writers::idle(url, server, 2000).await,
        ["idle", url, server, connections] => writers::idle(url, server, connections.parse()?).await,
        _ => Err("say `make DATABASE`, or `run`, `write` or `idle DATABASE SETWRIGHT …`".into()),
    }
}

/// The small shop: what is multiplied, and the work of the day.
async fn make(url: &str) -> Result<(), Failure> {
    let app = App::open(url, Arc::new(SystemClock)).await?;
    ::demo::load(&app).await?;
    read_step(&app, 1, "dry").await?;
    let sheets = app.sheets().await?;
    for sheet in sheets.iter().filter(|s| s.job.is_none()) {
        app.approve_sheet(&sheet.id, &Approve { steps: None, by: "Ines".into() }).await?;
    }
    let irons = sheets.iter().find(|s| s.job == Some(1)).ok_or("the demonstration has its irons")?;
    let irons = app.sheet(&irons.id).await?.sheet;
    for player in ["Una Marsett", "Corin Weald"] {
        let saved = app.save_sheet(&trade::sheet::Sheet { player: player.into(), ..irons.clone() }).await?;
        let number = app.approve_sheet(&saved.id, &Approve { steps: None, by: "Ines".into() }).await?.number;
        let fingerprint = app.propose(number, &[]).await?.fingerprint;
        let accept =
            Accept { fingerprint, locks: Vec::new(), partly: true, neighbour_reason: String::new(), by: "Ines".into() };
        app.accept(number, &accept).await?;
        read_step(&app, number, "dry").await?;
    }
    for job in app.jobs(None).await? {
        println!("job {}, {}: {} clubs, {}", job.number, job.player, job.clubs.len(), job.state.key());
    }
    app.close().await;
    Ok(())
}

/// Reads each club of a job at a step, one of them a little off.
async fn read_step(app: &App, number: i64, key: &str) -> Result<(), Failure> {
    for slot in 0.. {
        let view = app.job_view(number).await?;
        let Some(club) = view.clubs.get(slot) else { break };
        let Some(step) = club.steps.iter().find(|s| s.key == key) else { break };
        let off = if slot == 3 { 0.6 } else { 0.1 };
        let entries: Vec<Entry> = step
            .asks
            .iter()
            .filter_map(|ask| {
                let value = match ask.what {
                    What::Done => None,
                    _ => Some(((ask.expected.as_ref()?.value + off) * 10.0).round() / 10.0),
                };
                Some(Entry { what: ask.what, typed: String::new(), value, pivot_mm: None, again: false })
            })
            .collect();
        if entries.is_empty() {
            continue;
        }
        let new = NewReadings {
            slot: club.slot,
            step: key.to_owned(),
            entries,
            on: None,
            by: "Tobin".into(),
            version: None,
            seen: Vec::new(),
            at: None,
            reason: None,
            request_key: None,
        };
        app.read(number, &new).await?;
    }
    Ok(())
}

async fn run(url: &str, binary: &str, rate: f64, seconds: f64) -> Result<(), Failure> {
    let mut starts = Vec::new();
    for _ in 0..5 {
        let begun = Instant::now();
        let server = Server::start(binary, url)?;
        page(&server.address, "/").await?;
        starts.push(begun.elapsed());
    }
    starts.sort_unstable();
    println!("start to first page: median {} ms, slowest {} ms of 5", ms(starts[2]), ms(starts[4]));

    let server = Server::start(binary, url)?;
    println!("\n| page | first look, ms |");
    println!("|---|---|");
    for (path, _) in MIX {
        let begun = Instant::now();
        page(&server.address, path).await.map_err(|e| format!("{path}: {e}"))?;
        println!("| `{path}` | {} |", ms(begun.elapsed()));
    }

    let order = mixed();
    let asked = (rate * seconds) as usize;
    let begun = Instant::now();
    let mut sent = Vec::with_capacity(asked);
    for i in 0..asked {
        let due = begun + Duration::from_secs_f64(i as f64 / rate);
        tokio::time::sleep_until(due.into()).await;
        let path = order[i % order.len()];
        let address = server.address.clone();
        sent.push(tokio::spawn(async move {
            page(&address, path).await.map_err(|e| format!("{path}: {e}"))?;
            Ok::<_, Failure>((path, due.elapsed()))
        }));
    }
    let mut took: BTreeMap<&str, Vec<Duration>> = BTreeMap::new();
    for answer in sent {
        let (path, time) = answer.await??;
        took.entry(path).or_default().push(time);
    }
    println!("\n{asked} requests at {rate} a second:\n");
    println!("| page | requests | p50 ms | p95 ms | p99 ms | slowest ms |");
    println!("|---|---|---|---|---|---|");
    let mut all: Vec<Duration> = took.values().flatten().copied().collect();
    for (path, _) in MIX {
        if let Some(times) = took.get_mut(path) {
            row(&format!("`{path}`"), times);
        }
    }
    row("all", &mut all);
    Ok(())
}

/// The pages of the mix, each spread evenly over the round.
fn mixed() -> Vec<&'static str> {
    let mut places: Vec<(f64, &str)> = MIX
        .iter()
        .zip(1..)
        .flat_map(|((path, times), at)| {
            (0..*times).map(move |i| ((i as f64 + f64::from(at) / MIX.len() as f64) / *times as f64, *path))
        })
        .collect();
    places.sort_by(|a, b| a.0.total_cmp(&b.0));
    places.into_iter().map(|(_, path)| path).collect()
}

fn row(what: &str, times: &mut [Duration]) {
    times.sort_unstable();
    let at = |share: f64| ms(times[((times.len() as f64 * share).ceil() as usize).clamp(1, times.len()) - 1]);
    println!("| {what} | {} | {} | {} | {} | {} |", times.len(), at(0.5), at(0.95), at(0.99), at(1.0));
}

fn ms(time: Duration) -> String {
    format!("{:.1}", time.as_secs_f64() * 1000.0)
}
