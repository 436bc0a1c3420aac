//! Who is asking: this machine, a tablet or program with a key, or a stranger. A stranger sees one page, where six digits are
//! typed. What a key allows is decided here for the pages and the API alike, so that no handler can forget it.

use crate::cookies;
use crate::door::Door;
use crate::problem::Problem;
use app::App;
use axum::extract::{ConnectInfo, Query, Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, Uri, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};
use fact::Refusal;
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};
use std::net::{IpAddr, SocketAddr};
use trade::access::{AccessFault, AccessKey, Deed, KeyRole};

/// Where strangers type the digits.
pub(crate) const COME_IN: &str = "/come-in";
/// The same for programs, below the root of the API.
pub(crate) const COME_IN_API: &str = "/keys/come-in";
/// Where it is told whether the shop answers; also to strangers, since it says nothing else.
pub(crate) const HEALTH: &str = "/health";
/// Where a tablet is told how to trust this machine.
pub(crate) const TRUST: &str = "/trust";
/// The certificate that it is to trust.
pub(crate) const TRUST_FILE: &str = "/trust/setwright.crt";
/// The feed that calendars fetch.
pub(crate) const CALENDAR: &str = "/calendar.ics";
/// Name of the secret in its address.
pub(crate) const CALENDAR_KEY: &str = "key";
/// Root of the API.
const API: &str = "/api/v1";

/// Headers by which something between the asker and this program says that it handed the request on.
const HANDED_ON: [HeaderName; 4] =
    [header::FORWARDED, header::VIA, HeaderName::from_static("x-forwarded-for"), HeaderName::from_static("x-real-ip")];

/// Who asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Visitor {
    /// The address in the network that the request came from.
    pub from: String,
    /// The key that was brought; none for this machine itself.
    pub key: Option<AccessKey>,
}

impl Visitor {
    /// What they may do.
    pub(crate) fn role(&self) -> KeyRole {
        self.key.as_ref().map_or(KeyRole::Owner, |key| key.role)
    }
}

/// Lets a request through, or says what is missing.
pub(crate) async fn let_in(State((app, door)): State<(App, Door)>, mut request: Request, next: Next) -> Response {
    let (from, here) = origin(&request);
    let path = request.uri().path();
    let open = [COME_IN, HEALTH, TRUST, TRUST_FILE].contains(&path)
        || path.strip_prefix(API) == Some(COME_IN_API)
        || path.starts_with(crate::assets::FOLDER);
    let secret = in_address(request.uri()).or_else(|| brought(request.headers()));
    let key = match &secret {
        Some(secret) => match app.key_of(secret.text(), &from).await {
            // Addresses are written into logs and histories: no key that goes further is taken from one.
            Ok(key) if matches!(secret, Secret::InAddress(_)) => key.filter(|key| key.role == KeyRole::Calendar),
            Ok(key) => key,
            // Assets and the door itself are there without the shop.
            Err(_) if open => None,
            Err(error) => return Problem::of(&error).into_response(),
        },
        None => None,
    };
    let of_this_machine = here && !door.key_for_all;
    let bad_token = key.is_none() && matches!(secret, Some(Secret::Sent(_) | Secret::InAddress(_)));
    if key.is_none() && (bad_token || !of_this_machine) && !open {
        let fault = if secret.is_some() { AccessFault::BadKey } else { AccessFault::NoKey };
        return stranger(&request, &fault);
    }
    let deed = deed(request.method(), path);
    let visitor = Visitor { from, key };
    if !open && !visitor.role().may(deed) {
        let fault = AccessFault::NotAllowed { role: visitor.role() };
        return Problem::new(StatusCode::FORBIDDEN, "forbidden", Refusal::new(&fault)).into_response();
    }
    request.extensions_mut().insert(visitor.clone());
    let mut response = next.run(request).await;
    // For the log.
    response.extensions_mut().insert(visitor);
    response
}

/// Whether a request came over no network: from this machine, or handed on by a program of it.
pub(crate) fn is_of_this_machine(request: &Request) -> bool {
    peer(request).is_none_or(|ip| ip.is_loopback())
}

/// The other end of the connection. Without a connection nobody in a network has asked: another part of this program did.
fn peer(request: &Request) -> Option<IpAddr> {
    request.extensions().get::<ConnectInfo<SocketAddr>>().map(|ConnectInfo(peer)| peer.ip().to_canonical())
}

/// The address that a request came from, and whether that is this machine. What was handed on by something between is not,
/// though that may run here itself.
fn origin(request: &Request) -> (String, bool) {
    let (peer, here) = (peer(request), is_of_this_machine(request));
    let handed_on = HANDED_ON.iter().any(|name| request.headers().contains_key(name));
    let told = || {
        // The nearest hand writes last; one that runs here tells where the request came to it from.
        let text = request.headers().get("x-forwarded-for")?.to_str().ok()?;
        text.rsplit(',').next()?.trim().parse::<IpAddr>().ok()
    };
    let ip = if here && handed_on { told().or(peer) } else { peer };
    (ip.map_or_else(|| "127.0.0.1".to_owned(), |ip| ip.to_string()), here && !handed_on)
}

enum Secret {
    /// With the request, by a program.
    Sent(String),
    /// In the cookie of a tablet.
    Kept(String),
    /// In the address that a calendar fetches.
    InAddress(String),
}

impl Secret {
    fn text(&self) -> &str {
        match self {
            Self::Sent(text) | Self::Kept(text) | Self::InAddress(text) => text,
        }
    }
}

/// The secret in the address of the calendar, where a program that only fetches addresses has it.
fn in_address(uri: &Uri) -> Option<Secret> {
    if uri.path() != CALENDAR {
        return None;
    }
    let Query(pairs) = Query::<Vec<(String, String)>>::try_from_uri(uri).ok()?;
    pairs.into_iter().find(|(name, _)| name == CALENDAR_KEY).map(|(_, key)| Secret::InAddress(key))
}

fn brought(headers: &HeaderMap) -> Option<Secret> {
    let sent = headers.get(header::AUTHORIZATION).map(|value| {
        let text = value.to_str().unwrap_or_default();
        let token = text.split_once(' ').filter(|(scheme, _)| scheme.eq_ignore_ascii_case("bearer"));
        Secret::Sent(token.map_or(text, |(_, token)| token).trim().to_owned())
    });
    sent.or_else(|| cookies::brought(headers, cookies::KEY).filter(|text| !text.is_empty()).map(Secret::Kept))
}

/// What a stranger is answered: a page is asked for again after the digits, anything else is refused.
fn stranger(request: &Request, fault: &AccessFault) -> Response {
    let accepts = request.headers().get(header::ACCEPT).and_then(|v| v.to_str().ok()).unwrap_or_default();
    let path = request.uri().path();
    if request.method() == Method::GET && accepts.contains("text/html") && !path.starts_with(API) {
        let to = request.uri().path_and_query().map_or("/", |p| p.as_str());
        let to = utf8_percent_encode(to, NON_ALPHANUMERIC);
        return Redirect::to(&format!("{COME_IN}?to={to}")).into_response();
    }
    let mut response = Problem::new(StatusCode::UNAUTHORIZED, "no_key", Refusal::new(fault)).into_response();
    response.headers_mut().insert(header::WWW_AUTHENTICATE, HeaderValue::from_static("Bearer realm=\"setwright\""));
    response
}

/// Pages and operations that are posted to and keep nothing of the shop.
const ONLY_LOOKS: [&str; 8] = [
    "/calc",
    "/tablet",
    "/api/v1/calc",
    "/api/v1/ask",
    "/api/v1/match/set",
    "/api/v1/parts/judge",
    "/api/v1/sheets/check",
    "/api/v1/sheets/expand",
];

/// What is the owner's, whatever is done with it.
const OWNERS: [&str; 2] = ["/keys", "/api/v1/keys"];

/// What is the owner's to change.
const OWNERS_TO_CHANGE: [&str; 9] = [
    "/shop",
    "/shop/printers",
    "/shop/printers/remove",
    "/shop/steps",
    "/shop/scales",
    "/shop/scales/remove",
    "/prices",
    "/api/v1/shop",
    "/api/v1/prices",
];

/// What is asked of the shop by a method on a path. What is not named here is work.
fn deed(method: &Method, path: &str) -> Deed {
    let path = path.trim_end_matches('/');
    let below = |root: &&str| path.strip_prefix(*root).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'));
    if path == CALENDAR {
        return Deed::Calendar;
    }
    if OWNERS.iter().any(below) {
        return Deed::Own;
    }
    if [Method::GET, Method::HEAD, Method::OPTIONS].contains(method) {
        return Deed::Look;
    }
    let deletes_customer = (path.starts_with("/customers/") && path.ends_with("/delete"))
        || (path.starts_with("/api/v1/customers/") && path.ends_with("/deletion"));
    if OWNERS_TO_CHANGE.contains(&path) || deletes_customer {
        return Deed::Own;
    }
    if ONLY_LOOKS.iter().any(below) { Deed::Look } else { Deed::Work }
}

#[cfg(test)]
mod tests {
    use super::{Deed, deed, origin};
    use axum::body::Body;
    use axum::extract::{ConnectInfo, Request};
    use axum::http::Method;
    use std::net::SocketAddr;

    #[test]
    fn what_is_asked_is_known_by_method_and_path() {
        for (method, path, meant) in [
            (Method::GET, "/", Deed::Look),
            (Method::HEAD, "/stock", Deed::Look),
            (Method::GET, "/shop", Deed::Look),
            (Method::POST, "/shop", Deed::Own),
            (Method::POST, "/shop/", Deed::Own),
            (Method::POST, "/shop/who", Deed::Work),
            (Method::GET, "/keys", Deed::Own),
            (Method::GET, "/api/v1/keys", Deed::Own),
            (Method::GET, "/keyswords", Deed::Look),
            (Method::GET, "/calendar.ics", Deed::Calendar),
            (Method::GET, "/calendar", Deed::Look),
            (Method::POST, "/keys/calendar", Deed::Own),
            (Method::POST, "/customers/3/delete", Deed::Own),
            (Method::POST, "/api/v1/customers/3/deletion", Deed::Own),
            (Method::POST, "/api/v1/calc/trim", Deed::Look),
            (Method::POST, "/api/v1/ask/export", Deed::Look),
            (Method::POST, "/bench/1/3", Deed::Work),
            (Method::DELETE, "/api/v1/models/A", Deed::Work),
        ] {
            assert_eq!(deed(&method, path), meant, "{method} {path}");
        }
    }

    #[test]
    fn only_what_comes_here_by_itself_is_of_this_machine() {
        let of = |peer: Option<&str>, headers: &[(&'static str, &str)]| {
            let mut request = Request::get("/").body(Body::empty()).expect("a request");
            if let Some(peer) = peer {
                let peer: SocketAddr = peer.parse().expect("an address");
                request.extensions_mut().insert(ConnectInfo(peer));
            }
            for (name, value) in headers {
                request.headers_mut().insert(*name, value.parse().expect("a header"));
            }
            origin(&request)
        };
        assert_eq!(of(None, &[]), ("127.0.0.1".into(), true));
        for own in ["127.0.0.1:9", "127.8.8.8:9", "[::1]:9", "[::ffff:127.0.0.1]:9"] {
            assert!(of(Some(own), &[]).1, "{own}");
        }
        for foreign in ["192.168.1.20:9", "[fe80::1]:9", "[::ffff:10.0.0.4]:9", "0.0.0.0:9"] {
            assert!(!of(Some(foreign), &[]).1, "{foreign}");
        }
        // Whoever stands before the program is no way around the keys, and no stranger chooses the address that is counted.
        let through = of(Some("127.0.0.1:9"), &[("x-forwarded-for", "6.6.6.6, 192.168.1.20")]);
        assert_eq!(through, ("192.168.1.20".into(), false));
        for name in ["forwarded", "via", "x-real-ip", "x-forwarded-for"] {
            assert!(!of(Some("127.0.0.1:9"), &[(name, "x")]).1, "{name}");
        }
        assert_eq!(of(Some("10.0.0.4:9"), &[("x-forwarded-for", "127.0.0.1")]), ("10.0.0.4".into(), false));
    }
}
