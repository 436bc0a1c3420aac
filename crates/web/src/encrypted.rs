//! Encrypted connections: served like any other; and what comes over the network without encryption where there are such is shown
//! the way to them and nothing else.

use crate::access::{HEALTH, TRUST, TRUST_FILE, is_of_this_machine};
use crate::door::{Door, host_of};
use crate::problem::{EdgeFault, Problem};
use axum::Router;
use axum::extract::connect_info::Connected;
use axum::extract::{ConnectInfo, Request, State};
use axum::http::{Method, StatusCode};
use axum::middleware::{Next, from_fn};
use axum::response::{IntoResponse, Redirect, Response};
use axum::serve::{IncomingStream, Listener};
use std::net::SocketAddr;

/// That a request came over an encrypted connection of this program.
#[derive(Debug, Clone, Copy)]
pub(crate) struct OverTls;

/// A listener of encrypted connections, as the server takes them.
pub(crate) struct EncryptedListener(pub reach::Encrypted);

/// Whose connection it is.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Caller(SocketAddr);

impl Listener for EncryptedListener {
    type Io = reach::Stream;
    type Addr = SocketAddr;

    async fn accept(&mut self) -> (Self::Io, Self::Addr) {
        self.0.accept().await
    }

    fn local_addr(&self) -> std::io::Result<Self::Addr> {
        Ok(self.0.local_address())
    }
}

impl Connected<IncomingStream<'_, EncryptedListener>> for Caller {
    fn connect_info(stream: IncomingStream<'_, EncryptedListener>) -> Self {
        Self(*stream.remote_addr())
    }
}

/// A site as encrypted connections see it.
pub(crate) fn over_tls(site: Router) -> Router {
    site.layer(from_fn(|mut request: Request, next: Next| async move {
        if let Some(ConnectInfo(Caller(from))) = request.extensions().get::<ConnectInfo<Caller>>().copied() {
            request.extensions_mut().insert(ConnectInfo(from));
        }
        request.extensions_mut().insert(OverTls);
        next.run(request).await
    }))
}

/// Shows what comes unencrypted over the network the way to the encrypted address, where there is one. This machine itself, and
/// what a program of it hands on, need none.
pub(crate) async fn only_encrypted(State(door): State<Door>, request: Request, next: Next) -> Response {
    let Some(encryption) = &door.encryption else { return next.run(request).await };
    let path = request.uri().path();
    let for_all = [TRUST, TRUST_FILE, HEALTH].contains(&path) || path.starts_with(crate::assets::FOLDER);
    if for_all || request.extensions().get::<OverTls>().is_some() || is_of_this_machine(&request) {
        return next.run(request).await;
    }
    match host_of(request.headers()).filter(|host| !host.is_empty()) {
        Some(host) if request.method() == Method::GET => {
            // Whoever comes for the first time does not trust the machine yet; an address that was kept leads on.
            if path == "/" && encryption.root.is_some() {
                return Redirect::to(TRUST).into_response();
            }
            let on = request.uri().path_and_query().map_or("/", |p| p.as_str());
            Redirect::temporary(&format!("https://{host}:{}{on}", encryption.port)).into_response()
        }
        _ => Problem::new(
            StatusCode::FORBIDDEN,
            "not_encrypted",
            EdgeFault::NotEncrypted { port: encryption.port.to_string() },
        )
        .into_response(),
    }
}
