//! Serving the bench.

use super::encryption::{Encryption, announced};
use super::reader;
use crate::config::{Demo, Serve, Settings, Which, make_data_folder};
use crate::failure::CommandFault;
use crate::failure::Failure;
use app::{App, SystemClock};
use std::io::Write;
use std::net::SocketAddr;
use std::path::PathBuf;
use std::sync::Arc;
use std::time::Duration;
use tokio::net::TcpListener;
use tracing_subscriber::filter::Targets;
use tracing_subscriber::layer::SubscriberExt;
use tracing_subscriber::util::SubscriberInitExt;
use words::text;

/// How long open requests may take to finish when the program is stopped; live event streams never end by themselves.
const FINISH_WITHIN: Duration = Duration::from_secs(2);

/// Serves the shop until it is stopped.
///
/// # Errors
/// A database that cannot be opened, an address that cannot be listened on.
pub async fn serve(arguments: &Serve) -> Result<(), Failure> {
    let settings = begin(arguments, Which::Shop)?;
    // Before a database is made: an address that others use must leave nothing behind.
    let listener = listen(&settings).await?;
    make_data_folder(&settings.database)?;
    let app = App::open_in(&settings.database, Arc::new(SystemClock), &reader()).await?;
    let opened = if app.is_new() { Opened::Made } else { Opened::AsLeft };
    run(app, listener, &settings, arguments.database.json, |address| shop_greeting(&settings, address, opened)).await
}

/// Serves the invented shop until it is stopped.
///
/// # Errors
/// A database that holds another shop; what serving says.
pub async fn demo(arguments: &Demo) -> Result<(), Failure> {
    let settings = begin(&arguments.serve, Which::Demo)?;
    let listener = listen(&settings).await?;
    make_data_folder(&settings.database)?;
    let (app, fresh) = ::demo::open(&settings.database, Arc::new(SystemClock), arguments.reset).await?;
    let json = arguments.serve.database.json;
    run(app, listener, &settings, json, |address| demo_greeting(&settings, address, fresh)).await
}

fn begin(arguments: &Serve, which: Which) -> Result<Settings, Failure> {
    let settings = arguments.settings(which)?;
    // `RUST_LOG` by target and level, as `web=debug,warn`. The filter by fields and spans would bring the library of
    // regular expressions, which nothing else here needs.
    let asked = std::env::var("RUST_LOG").ok().and_then(|filter| filter.parse::<Targets>().ok());
    tracing_subscriber::registry()
        .with(tracing_subscriber::fmt::layer().with_writer(std::io::stderr))
        .with(asked.unwrap_or_else(|| Targets::new().with_default(settings.log)))
        .init();
    Ok(settings)
}

/// Listens on the settings' addresses, that of encrypted connections second.
async fn listen(settings: &Settings) -> Result<(TcpListener, Option<TcpListener>), Failure> {
    let plain = listen_on(settings, &settings.listen).await?;
    let secret = match &settings.https {
        Some(place) => Some(listen_on(settings, place).await?),
        None => None,
    };
    Ok((plain, secret))
}

async fn listen_on(settings: &Settings, place: &str) -> Result<TcpListener, Failure> {
    let addresses = reachable(settings, place).await?;
    TcpListener::bind(&addresses[..])
        .await
        .map_err(|e| Failure::outside(CommandFault::ListenTaken { place: place.to_owned(), log: e.to_string() }))
}

/// What was there when the shop was opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Opened {
    Made,
    AsLeft,
}

/// Serves, greets once it is ready, ends when it is asked to.
async fn run(
    app: App,
    (listener, secret): (TcpListener, Option<TcpListener>),
    settings: &Settings,
    json: bool,
    greeting: impl FnOnce(SocketAddr) -> Greeting,
) -> Result<(), Failure> {
    let address =
        listener.local_addr().map_err(|e| Failure::outside(CommandFault::NoAddress { log: e.to_string() }))?;
    app.start_scales().await?;
    let encrypted = secret.map(|listener| Encryption::of(listener, settings, app.now())).transpose()?;
    let announced = announced(settings, address, encrypted.as_ref());
    // Whoever reads the greeting may ask to stop at once.
    let stop_asked = StopAsked::new();
    let plain = reach::towards_the_network(address);
    let in_network = !address.ip().is_loopback();
    let plain_address = in_network.then(|| format!("http://{plain}"));
    let shown = encrypted.as_ref().map(|encrypted| (encrypted.address(settings), encrypted.in_network()));
    greet(json, settings, address, shown.as_ref(), &greeting(plain));
    let watching = tokio::spawn(watch_clock(app.clone()));
    let backing_up = tokio::spawn(back_up_daily(app.clone(), settings.backups.clone()));
    let listening = tokio::spawn(hear_other_programs(app.clone()));
    let (stop, stopped) = tokio::sync::oneshot::channel::<()>();
    let door = web::Door {
        names: settings.names.clone(),
        key_for_all: settings.key_for_all,
        address: shown.map(|(address, _)| address).or_else(|| plain_address.clone()),
        encryption: encrypted.as_ref().map(|encrypted| Arc::new(encrypted.told(plain_address))),
    };
    let (secret, renewing) = encrypted.map(|encrypted| encrypted.parted(app.clone())).unzip();
    let renewing = renewing.map(tokio::spawn);
    let serving = web::serve(listener, secret, app.clone(), door, async move {
        let _ = stopped.await;
    });
    tokio::pin!(serving);
    tokio::select! {
        ended = &mut serving => {
            ended.map_err(|e| Failure::outside(CommandFault::ServingEnded { log: e.to_string() }))?;
        }
        () = stop_asked.wait() => {
            let _ = stop.send(());
            // A reading that is being kept is finished; streams are cut.
            let _ = tokio::time::timeout(FINISH_WITHIN, serving).await;
        }
    }
    drop(announced);
    renewing.inspect(tokio::task::JoinHandle::abort);
    watching.abort();
    listening.abort();
    // A backup under way is dropped: it has no name yet, and the next start makes another.
    backing_up.abort();
    app.stop_scales().await;
    app.close().await;
    Ok(())
}

/// The addresses to listen on. One that others can reach takes the owner's word that they may.
async fn reachable(settings: &Settings, place: &str) -> Result<Vec<SocketAddr>, Failure> {
    let found = tokio::net::lookup_host(place)
        .await
        .map_err(|e| Failure::outside(CommandFault::ListenUnknown { place: place.to_owned(), log: e.to_string() }))?;
    let found: Vec<SocketAddr> = found.collect();
    if !settings.open_to_network && found.iter().any(|address| !address.ip().is_loopback()) {
        return Err(Failure::usage(CommandFault::OpenToNetwork { place: place.to_owned() }));
    }
    Ok(found)
}

/// How often it is asked whether a backup is due.
const BACK_UP_EVERY: Duration = Duration::from_secs(600);

/// Looks the shop's file over once, and makes a backup each day. What is wrong stands on Today.
async fn back_up_daily(app: App, folder: Option<PathBuf>) {
    match app.damage(false).await {
        Ok(found) if found.is_empty() => {}
        Ok(found) => tracing::error!(found = found.join("; "), "the shop's file is damaged"),
        Err(error) => tracing::warn!(%error, "the shop's file could not be looked over"),
    }
    let Some(folder) = folder else { return };
    app.keep_backups_in(&folder);
    let mut turns = tokio::time::interval(BACK_UP_EVERY);
    loop {
        turns.tick().await;
        if let Some(made) = app.back_up_daily().await {
            tracing::info!(path = made.path, "a backup was made");
        }
    }
}

/// How often it is asked whether another program has changed the shop.
const HEAR_OTHERS_EVERY: Duration = Duration::from_millis(500);

/// Lets the open pages know what other programs write. A database that fails meanwhile is told to whoever asks for a page.
async fn hear_other_programs(app: App) {
    let mut turns = tokio::time::interval(HEAR_OTHERS_EVERY);
    loop {
        turns.tick().await;
        if let Err(error) = app.hear_other_programs().await {
            tracing::debug!(%error, "the changes of other programs could not be asked for");
        }
    }
}

/// How often the clock is held against the time that passed.
const WATCH_CLOCK_EVERY: Duration = Duration::from_secs(10);

/// Keeps an eye on the clock; what could not be written is tried again the next time.
async fn watch_clock(app: App) {
    let mut turns = tokio::time::interval(WATCH_CLOCK_EVERY);
    loop {
        turns.tick().await;
        if let Err(error) = app.watch_clock().await {
            tracing::warn!(%error, "a jump of the clock is not in the log yet");
        }
    }
}

/// What is said when the bench is open: the words, and whether the shop was made or loaded now.
struct Greeting {
    words: String,
    fresh: bool,
}

fn shop_greeting(settings: &Settings, address: SocketAddr, opened: Opened) -> Greeting {
    let database = app::shown_address(&settings.database);
    let fresh = opened == Opened::Made;
    let (w, at) = (reader(), address.to_string());
    let mut words = text!(w, "command-greeting", address = at, database = database);
    if fresh {
        words = format!("{}\n{words}", text!(w, "command-shop-made", place = database));
    }
    Greeting { words, fresh }
}

fn demo_greeting(settings: &Settings, address: SocketAddr, fresh: bool) -> Greeting {
    let database = app::shown_address(&settings.database);
    let (w, at) = (reader(), address.to_string());
    let id = if fresh { "command-demo-greeting" } else { "command-demo-as-left" };
    let words = w.text_with(id, &[("address", words::figure(&at)), ("database", words::figure(&database))]);
    Greeting { words, fresh }
}

fn greet(
    json: bool,
    settings: &Settings,
    listening: SocketAddr,
    encrypted: Option<&(String, bool)>,
    greeting: &Greeting,
) {
    let open = !listening.ip().is_loopback();
    let (w, mut err) = (reader(), std::io::stderr());
    match encrypted {
        Some((address, true)) => {
            let _ = writeln!(err, "{}", text!(w, "command-encrypted", address = address.clone()));
        }
        None if open => {
            let _ = writeln!(err, "{}", w.text("command-open-to-network"));
        }
        _ => {}
    }
    let words = if json {
        serde_json::json!({
            "address": format!("http://{}", reach::towards_the_network(listening)),
            "listening": listening.to_string(),
            "encrypted_address": encrypted.map(|(address, _)| address),
            "open_to_network": open,
            "database": app::shown_address(&settings.database),
            "fresh": greeting.fresh,
        })
        .to_string()
    } else {
        greeting.words.clone()
    };
    let mut out = std::io::stdout().lock();
    let _ = writeln!(out, "{words}");
    let _ = out.flush();
}

/// Being asked to stop, by the keyboard or by the system. The system's request is heard from the making on.
struct StopAsked {
    #[cfg(unix)]
    term: Option<tokio::signal::unix::Signal>,
}

impl StopAsked {
    fn new() -> Self {
        Self {
            #[cfg(unix)]
            term: tokio::signal::unix::signal(tokio::signal::unix::SignalKind::terminate()).ok(),
        }
    }

    async fn wait(self) {
        let ctrl_c = tokio::signal::ctrl_c();
        #[cfg(unix)]
        if let Some(mut term) = self.term {
            tokio::select! {
                _ = ctrl_c => {}
                _ = term.recv() => {}
            }
            return;
        }
        let _ = ctrl_c.await;
    }
}
