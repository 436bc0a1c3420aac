//! Pages, JSON API and live events: the only place with HTTP and HTML.

mod access;
mod api;
mod asked;
pub mod assets;
mod cookies;
mod door;
mod dress;
mod encrypted;
mod file;
mod operate;
mod pages;
mod problem;
mod reader;
mod tablet;
mod units;

pub use api::{openapi, sheet_schema};
pub use door::{Door, Encryption, ServerNames};
pub use pages::grip_size::grip_at;
pub use pages::labels::{club_label_texts, label_texts, printer_labels, sent_words};
pub use pages::learned::amount_of as learned_amount;
pub use pages::ledger::{deed_words, fault_line};
pub use pages::scale_health::amount_of as gauge_amount;

use app::App;
use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::routing::get;
use std::net::SocketAddr;
use std::sync::Arc;
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::compression::CompressionLayer;
use words::Language;

/// Most bytes of a request: a file to import with what a form puts around it.
const BODY_MAX_BYTES: usize = app::stock::IMPORT_MAX_BYTES + 64 * 1024;

/// The whole site: pages at the root, the API under `/api/v1`, for those who come through the door, each in the language that
/// its tablet is set to or its browser asks for.
pub fn router(app: App, door: impl Into<Door>) -> Router {
    site(app, door.into(), None)
}

/// The whole site in one language, whoever asks.
pub fn router_in(app: App, door: impl Into<Door>, language: &'static Language) -> Router {
    site(app, door.into(), Some(language))
}

fn site(app: App, door: Door, language: Option<&'static Language>) -> Router {
    let counted = Arc::new(operate::Counted::default());
    let routes = Router::new()
        .nest("/api/v1", api::router())
        .merge(pages::router())
        .merge(operate::router())
        .route(assets::ROUTE, get(assets::serve))
        .layer(DefaultBodyLimit::max(BODY_MAX_BYTES))
        .layer(CatchPanicLayer::custom(|_| {
            axum::response::IntoResponse::into_response(problem::Problem::new(
                axum::http::StatusCode::INTERNAL_SERVER_ERROR,
                "internal",
                problem::EdgeFault::Panicked,
            ))
        }));
    let routes = routes
        .layer(axum::middleware::from_fn_with_state((app.clone(), door.clone()), access::let_in))
        .layer(axum::Extension(door.clone()))
        .layer(axum::Extension(Arc::clone(&counted)));
    let routes = routes.layer(axum::middleware::from_fn_with_state(door.clone(), encrypted::only_encrypted));
    let routes = door::guarded(routes, door.names)
        .layer(axum::middleware::from_fn(dress::errors))
        .layer(axum::middleware::from_fn_with_state(language, reader::for_reader));
    door::with_headers(routes)
        .layer(CompressionLayer::new())
        .layer(axum::middleware::from_fn_with_state(counted, operate::observed))
        .with_state(app)
}

/// Serves the site on a listener, and over encrypted connections where there are such, until `until` is done.
///
/// # Errors
/// What the system says of a listener.
pub async fn serve(
    listener: tokio::net::TcpListener,
    encrypted: Option<reach::Encrypted>,
    app: App,
    door: impl Into<Door>,
    until: impl Future<Output = ()> + Send + 'static,
) -> std::io::Result<()> {
    let (end, ended) = tokio::sync::watch::channel(false);
    let ended = move || {
        let mut ended = ended.clone();
        async move {
            let _ = ended.wait_for(|ended| *ended).await;
        }
    };
    let site = router(app, door);
    let secret = async {
        let Some(encrypted) = encrypted else { return Ok(()) };
        let site = encrypted::over_tls(site.clone()).into_make_service_with_connect_info::<encrypted::Caller>();
        axum::serve(encrypted::EncryptedListener(encrypted), site).with_graceful_shutdown(ended()).await
    };
    // As a service that is made ready once: the bare router would be made ready for each connection anew.
    let open = site.clone().into_make_service_with_connect_info::<SocketAddr>();
    let open = axum::serve(listener, open).with_graceful_shutdown(ended());
    let ending = async {
        until.await;
        let _ = end.send(true);
        Ok(())
    };
    tokio::try_join!(secret, open, ending).map(|_| ())
}
