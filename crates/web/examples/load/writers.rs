//! Tablets that all write at once, as they do when they come back from a network hole, and the pages beside them.

use crate::server::{Server, ask, page};
use crate::{Failure, row};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};
use tokio::net::TcpStream;

/// Pages that are asked for in turn beside the writers, and how many a second.
const PAGES: [&str; 5] = ["/", "/bench/1/2?step=dry", "/stock", "/bench/1/grid/dry", "/glue"];
const PAGES_A_SECOND: f64 = 20.0;

/// Writers at once on a fresh demonstration, for so many seconds.
pub async fn run(url: &str, binary: &str, writers: usize, seconds: f64) -> Result<(), Failure> {
    let server = Server::start(binary, url)?;
    let until = Instant::now() + Duration::from_secs_f64(seconds);
    let refused = Arc::new(AtomicUsize::new(0));
    let begun = Instant::now();
    let writing: Vec<_> = (0..writers)
        .map(|writer| {
            let (address, refused) = (server.address.clone(), Arc::clone(&refused));
            tokio::spawn(async move {
                let mut took = Vec::new();
                let mut round = 0;
                while Instant::now() < until {
                    let body = format!(
                        "{{\"slot\":{},\"step\":\"dry\",\"by\":\"Tobin\",\"entries\":[{{\"what\":\"swing_weight\",\
                         \"value\":{:.1}}}],\"request_key\":\"load-{writer}-{round}\"}}",
                        writer % 8 + 1,
                        43.0 + f64::from(round % 4) / 10.0
                    );
                    let asked = Instant::now();
                    let (status, _) = ask(&address, "POST", "/api/v1/jobs/1/readings", &body).await?;
                    took.push(asked.elapsed());
                    if status != 201 {
                        refused.fetch_add(1, Ordering::Relaxed);
                    }
                    round += 1;
                }
                Ok::<_, Failure>(took)
            })
        })
        .collect();
    let mut asked = Vec::new();
    let mut turn = 0;
    while Instant::now() < until {
        let due = begun + Duration::from_secs_f64(f64::from(turn) / PAGES_A_SECOND);
        tokio::time::sleep_until(due.into()).await;
        let (address, path) = (server.address.clone(), PAGES[turn as usize % PAGES.len()]);
        asked.push(tokio::spawn(async move {
            page(&address, path).await.map_err(|e| format!("{path}: {e}"))?;
            Ok::<_, Failure>(due.elapsed())
        }));
        turn += 1;
    }
    let (mut readings, mut pages) = (Vec::new(), Vec::new());
    for writer in writing {
        readings.extend(writer.await??);
    }
    for one in asked {
        pages.push(one.await??);
    }
    println!(
        "{writers} writers for {seconds} s: {:.1} readings a second, {} refused, memory {:.0} MB",
        readings.len() as f64 / begun.elapsed().as_secs_f64(),
        refused.load(Ordering::Relaxed),
        server.memory_mb()?
    );
    println!("| what | requests | p50 ms | p95 ms | p99 ms | slowest ms |");
    println!("|---|---|---|---|---|---|");
    row("a reading", &mut readings);
    row("a page beside them", &mut pages);
    Ok(())
}

/// Connections that are opened, asked for one page, and kept.
pub async fn idle(url: &str, binary: &str, connections: usize) -> Result<(), Failure> {
    let server = Server::start(binary, url)?;
    page(&server.address, "/").await?;
    let before = server.memory_mb()?;
    let mut kept = Vec::with_capacity(connections);
    for _ in 0..connections {
        kept.push(TcpStream::connect(&server.address).await?);
    }
    tokio::time::sleep(Duration::from_secs(1)).await;
    let after = server.memory_mb()?;
    println!("{connections} idle connections: {before:.0} MB before, {after:.0} MB with them");
    Ok(())
}
