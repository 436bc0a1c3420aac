//! Serving the bench.

use crate::config::Serve;
use crate::failure::Failure;
use app::{App, SystemClock};
use std::io::Write;
use std::sync::Arc;
use std::time::Duration;
use tokio::net::TcpListener;
use tracing_subscriber::EnvFilter;

/// How long open requests may take to finish when the program is stopped; live event streams never end by themselves.
const FINISH_WITHIN: Duration = Duration::from_secs(2);

/// Serves until it is stopped.
///
/// # Errors
/// A database that cannot be opened, an address that cannot be listened on.
pub async fn serve(arguments: &Serve, demo: bool) -> Result<(), Failure> {
    tracing_subscriber::fmt()
        .with_env_filter(EnvFilter::try_from_default_env().unwrap_or_else(|_| EnvFilter::new("warn")))
        .with_writer(std::io::stderr)
        .init();
    let settings = arguments.settings(if demo { "sqlite:setwright-demo.db" } else { super::USUAL_DATABASE })?;
    let app = App::open(&settings.database, Arc::new(SystemClock)).await?;
    let fresh = if demo { app.load_demo().await? } else { false };
    let listener = TcpListener::bind(&settings.listen).await.map_err(|e| {
        Failure::outside(format!(
            "{} cannot be listened on: {e}. Stop what listens there, or choose another address with --listen",
            settings.listen
        ))
    })?;
    let address = listener.local_addr().map_err(|e| Failure::outside(format!("no address: {e}")))?;
    app.start_scales().await?;
    // Whoever reads the greeting may ask to stop at once.
    let stop_asked = StopAsked::new();
    greet(arguments.database.json, &settings.database, &address.to_string(), demo, fresh);
    let (stop, stopped) = tokio::sync::oneshot::channel::<()>();
    let serving = axum_serve(listener, app.clone(), async move {
        let _ = stopped.await;
    });
    tokio::pin!(serving);
    tokio::select! {
        ended = &mut serving => ended?,
        () = stop_asked.wait() => {
            let _ = stop.send(());
            // A reading that is being kept is finished; streams are cut.
            let _ = tokio::time::timeout(FINISH_WITHIN, serving).await;
        }
    }
    app.stop_scales().await;
    app.close().await;
    Ok(())
}

async fn axum_serve(
    listener: TcpListener,
    app: App,
    until: impl std::future::Future<Output = ()> + Send + 'static,
) -> Result<(), Failure> {
    web::serve(listener, app, until).await.map_err(|e| Failure::outside(format!("serving ended: {e}")))
}

fn greet(json: bool, database: &str, address: &str, demo: bool, fresh: bool) {
    let mut out = std::io::stdout().lock();
    let words = if json {
        serde_json::json!({ "address": format!("http://{address}"), "database": database, "fresh": fresh }).to_string()
    } else if demo {
        format!(
            "Setwright is at http://{address}\n{}\n\nTry first: open Bench, job 1, and read the 4 iron dry: type D9.7 and \
             press Enter.\nThen Glue, New batch. Ctrl-C stops it; what was entered stays in {database}.",
            if fresh {
                "The invented shop Quillmere Bench is loaded: stock weighed, one set at the bench, one to plan."
            } else {
                "The database holds a shop already; it was left as it is."
            }
        )
    } else {
        format!("Setwright is at http://{address}, with {database}. Ctrl-C stops it.")
    };
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
