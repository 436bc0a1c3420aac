//! Who may come in: only pages of our own may change anything, and only under a name of this server may anything be
//! read.
//!
//! A browser sends requests for any page that is open in it, also for one of another site. Two things keep such a page
//! out. A request that changes something is refused where the browser says that another origin asked for it
//! (`Sec-Fetch-Site`, `Origin`; programs send neither and are not hindered). And a foreign name that was made to point
//! at this machine is refused by the name in `Host`, since for the browser the page is then of the same origin. An
//! address in figures cannot be made to point elsewhere, so any of those will do.

use crate::problem::{EdgeFault, Problem};
use axum::Router;
use axum::extract::Request;
use axum::http::uri::Authority;
use axum::http::{HeaderMap, HeaderName, HeaderValue, StatusCode, header};
use axum::middleware::{Next, from_fn};
use axum::response::{IntoResponse, Response};
use std::net::IpAddr;
use std::sync::Arc;
use tower_http::csrf::{CsrfLayer, ProtectionError};
use tower_http::set_header::SetResponseHeaderLayer;

/// How the shop is reached from outside this machine.
#[derive(Debug, Clone, Default)]
pub struct Door {
    /// The names that it answers to.
    pub names: ServerNames,
    /// Whether this machine needs a key as well, as where a program that others reach hands their requests on.
    pub key_for_all: bool,
    /// What to type into a tablet to get here; none where only this machine can.
    pub address: Option<String>,
    /// Encrypted connections; none where there are none.
    pub encryption: Option<Arc<Encryption>>,
}

/// How tablets get an encrypted connection.
#[derive(Debug, Clone)]
pub struct Encryption {
    /// Port of the encrypted connections.
    pub port: u16,
    /// This machine's own root, DER (ITU-T X.690), with its SHA-256 as a person compares it; none where the shop brought a
    /// certificate that its tablets trust already.
    pub root: Option<(Vec<u8>, String)>,
    /// Where a tablet that does not trust this machine yet begins, without encryption.
    pub begins_at: Option<String>,
}

impl From<ServerNames> for Door {
    fn from(names: ServerNames) -> Self {
        Self { names, ..Self::default() }
    }
}

/// The names, beside `localhost` and addresses in figures, that tablets reach this server by.
#[derive(Debug, Clone, Default)]
pub struct ServerNames(Arc<[String]>);

impl ServerNames {
    /// The server answers to these names, in upper or lower case and on any port.
    ///
    /// # Errors
    /// The first one that is not a plain host name: `http://bench.local` or `bench.local:7340`, for example.
    pub fn new(names: impl IntoIterator<Item = String>) -> Result<Self, String> {
        let plain = |name: &String| {
            !name.is_empty() && name.bytes().all(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'.' | b'_'))
        };
        let names: Vec<String> = names.into_iter().map(|name| name.trim().to_ascii_lowercase()).collect();
        match names.iter().find(|name| !plain(name)) {
            Some(bad) => Err(bad.clone()),
            None => Ok(Self(names.into())),
        }
    }

    /// The names, in small letters.
    #[must_use]
    pub fn list(&self) -> &[String] {
        &self.0
    }

    fn has(&self, host: &str) -> bool {
        let host = host.trim_end_matches('.').to_ascii_lowercase();
        let figures = host.trim_start_matches('[').trim_end_matches(']');
        host == "localhost" || figures.parse::<IpAddr>().is_ok() || self.0.contains(&host)
    }
}

/// What pages may load and where they may be shown: scripts, styles, pictures and letters of our own, in no frame.
const CONTENT_POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; \
                              connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

/// Sent with every answer. The referrer stays within the shop; it is not left out, since without it a browser sends
/// `Origin: null` with our own forms.
const HEADERS: [(HeaderName, &str); 6] = [
    (header::CONTENT_SECURITY_POLICY, CONTENT_POLICY),
    (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
    (header::X_FRAME_OPTIONS, "DENY"),
    (header::REFERRER_POLICY, "same-origin"),
    (HeaderName::from_static("cross-origin-opener-policy"), "same-origin"),
    (HeaderName::from_static("cross-origin-resource-policy"), "same-origin"),
];

/// Refuses what comes from another site or under another name.
pub(crate) fn guarded<S: Clone + Send + Sync + 'static>(routes: Router<S>, names: ServerNames) -> Router<S> {
    routes.layer(CsrfLayer::new().with_rejection_response(foreign_page)).layer(from_fn(move |request, next| {
        let names = names.clone();
        async move { under_a_name_of_ours(&names, request, next).await }
    }))
}

/// Adds the headers that tell a browser how careful to be. Pages hold names of players, so that nothing is kept in a
/// cache but what says so itself: the style sheet and the scripts.
pub(crate) fn with_headers<S: Clone + Send + Sync + 'static>(routes: Router<S>) -> Router<S> {
    let routes = HEADERS.into_iter().fold(routes, |routes, (name, value)| {
        routes.layer(SetResponseHeaderLayer::overriding(name, HeaderValue::from_static(value)))
    });
    routes.layer(SetResponseHeaderLayer::if_not_present(header::CACHE_CONTROL, HeaderValue::from_static("no-store")))
}

fn foreign_page(_: ProtectionError) -> Response {
    Problem::new(StatusCode::FORBIDDEN, "foreign_page", EdgeFault::ForeignPage).into_response()
}

/// The name or address by which a request reached this machine, without its port: empty where the header cannot be read, none where
/// there is no header.
pub(crate) fn host_of(headers: &HeaderMap) -> Option<String> {
    let value = headers.get(header::HOST)?;
    let authority = value.to_str().ok().and_then(|value| value.parse::<Authority>().ok());
    Some(authority.map_or_else(String::new, |authority| authority.host().to_owned()))
}

async fn under_a_name_of_ours(names: &ServerNames, request: Request, next: Next) -> Response {
    // HTTP/2 has the name in the address, HTTP/1 in a header. A program of old may send neither; a browser always does.
    let host = match request.uri().authority() {
        Some(authority) => Some(authority.host().to_owned()),
        None => host_of(request.headers()),
    };
    match host {
        Some(host) if !names.has(&host) => Problem::new(
            StatusCode::MISDIRECTED_REQUEST,
            "unknown_name",
            EdgeFault::UnknownName { name: host.chars().take(100).collect() },
        )
        .into_response(),
        _ => next.run(request).await,
    }
}

#[cfg(test)]
mod tests {
    use super::ServerNames;

    #[test]
    fn addresses_in_figures_and_own_names_are_ours_and_no_other() {
        let names = ServerNames::new(["Bench.local".to_owned()]).expect("a name");
        for ours in ["localhost", "LOCALHOST", "localhost.", "127.0.0.1", "[::1]", "192.168.1.20", "bench.LOCAL"] {
            assert!(names.has(ours), "{ours}");
        }
        for foreign in ["evil.example", "bench.local.evil.example", "127.0.0.1.evil.example", "", "bench"] {
            assert!(!names.has(foreign), "{foreign}");
        }
    }

    #[test]
    fn a_name_is_given_without_scheme_and_port() {
        for wrong in ["http://bench.local", "bench.local:7340", "", "bench local"] {
            assert!(ServerNames::new([wrong.to_owned()]).is_err(), "{wrong}");
        }
    }
}
