//! How long the one field takes: finds some texts in a database twenty times each and prints the middle and the longest time.
//!
//! `cargo run --release -p store --example find -- sqlite:big.db farrowby "farrwoby" D-101`
//!
//! For measuring only. `multiply` makes a shop of many years to measure in; opening it writes the lines of all that is there.

use std::time::{Duration, Instant};
use store::Store;

const TIMES: usize = 20;

#[tokio::main]
async fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut arguments = std::env::args().skip(1);
    let url = arguments.next().ok_or("say the database and the texts: find sqlite:big.db farrowby D-101")?;
    let begun = Instant::now();
    let store = Store::open(&url).await?;
    println!("opened in {:.1} s", begun.elapsed().as_secs_f64());
    for text in arguments {
        let mut took = Vec::with_capacity(TIMES);
        let mut said = String::new();
        for _ in 0..TIMES {
            let begun = Instant::now();
            let found = store.read().await?.find_entries(&text, true).await?;
            took.push(begun.elapsed());
            let meant = found.meant.map_or_else(String::new, |meant| format!(", as “{meant}”"));
            said = format!("{} things, {} parts{meant}", found.entries.len(), found.parts);
        }
        took.sort();
        let ms = |time: Duration| time.as_secs_f64() * 1000.0;
        println!("{text:>20}: {:.1} ms, at most {:.1} ms; {said}", ms(took[TIMES / 2]), ms(took[TIMES - 1]));
    }
    store.close().await;
    Ok(())
}
