//! Errors that arise before any handler is asked (an address that does not read, a form that is none, a wrong method, a
//! body too large, a panic) in the same dress as all others: a problem document on the API, a page elsewhere.

use crate::access::HEALTH;
use crate::pages::problem_page;
use crate::problem::{EdgeFault, PROBLEM_TYPE, Problem};
use crate::reader::Reader;
use axum::extract::{FromRequestParts, Request};
use axum::http::uri::{Authority, PathAndQuery};
use axum::http::{HeaderValue, Method, StatusCode, Uri, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

/// Dresses the errors of the whole site.
pub(crate) async fn errors(request: Request, next: Next) -> Response {
    let of_api = request.uri().path().starts_with("/api/");
    // Programs read it that watch the machine.
    let of_health = request.uri().path() == HEALTH;
    let back = if of_api { None } else { came_from(&request) };
    let size_mb = crate::problem::size_mb(request.headers());
    let (mut parts, body) = request.into_parts();
    let Ok(Reader(w)) = Reader::from_request_parts(&mut parts, &()).await;
    let response = next.run(Request::from_parts(parts, body)).await;
    let status = response.status();
    if of_health || (!status.is_client_error() && !status.is_server_error()) {
        return response;
    }
    let kind = response.headers().get(header::CONTENT_TYPE).and_then(|k| k.to_str().ok()).unwrap_or_default();
    if kind.starts_with(if of_api { PROBLEM_TYPE } else { "text/html" }) {
        return response;
    }
    // What a wrong method may be instead is part of the answer.
    let allow = response.headers().get(header::ALLOW).cloned();
    let (parts, _) = response.into_parts();
    let problem = match parts.extensions.get::<Problem>() {
        Some(problem) => problem.clone(),
        None => Problem::of_request(status, size_mb),
    };
    let mut dressed = if of_api { problem.into_response() } else { problem_page(&w, &problem, back.as_deref()) };
    if let Some(allow) = allow {
        dressed.headers_mut().insert(header::ALLOW, allow);
    }
    dressed
}

/// The page of ours from which a request came; none where it is unknown, or where the request is that page again.
fn came_from(request: &Request) -> Option<String> {
    let header = |name| request.headers().get(name).and_then(|v: &HeaderValue| v.to_str().ok());
    let from: Uri = header(header::REFERER)?.parse().ok()?;
    let same_host = from.authority().map(Authority::as_str) == header(header::HOST);
    let path = from.path_and_query()?.as_str();
    let itself =
        request.method() == Method::GET && Some(path) == request.uri().path_and_query().map(PathAndQuery::as_str);
    // A second slash would make another host of what follows.
    (same_host && !itself && !path.starts_with("//")).then(|| path.to_owned())
}

impl Problem {
    /// A request that could not be taken at all.
    #[must_use]
    pub(crate) fn of_request(status: StatusCode, size_mb: Option<u64>) -> Self {
        let most_mb = app::stock::IMPORT_MAX_BYTES / (1024 * 1024);
        let (code, fault) = match status {
            StatusCode::PAYLOAD_TOO_LARGE => ("too_large", EdgeFault::TooLarge { size_mb, most_mb }),
            StatusCode::METHOD_NOT_ALLOWED => ("method", EdgeFault::Method),
            StatusCode::NOT_FOUND => ("not_found", EdgeFault::NoAddress),
            _ => ("request", EdgeFault::Request),
        };
        Self::new(status, code, fault)
    }
}
