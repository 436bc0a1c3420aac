//! Errors that arise before any handler is asked (an address that does not read, a form that is none, a wrong method, a
//! body too large, a panic) in the same dress as all others: a problem document on the API, a page elsewhere.

use crate::pages::problem_page;
use crate::problem::{PROBLEM_TYPE, Problem};
use axum::body::Body;
use axum::extract::Request;
use axum::http::uri::{Authority, PathAndQuery};
use axum::http::{HeaderValue, Method, StatusCode, Uri, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

/// Most bytes of what an extractor says that are read.
const SAID_MAX_BYTES: usize = 16 * 1024;

/// Dresses the errors of the whole site.
pub(crate) async fn errors(request: Request, next: Next) -> Response {
    let of_api = request.uri().path().starts_with("/api/");
    let back = if of_api { None } else { came_from(&request) };
    let response = next.run(request).await;
    let status = response.status();
    if !status.is_client_error() && !status.is_server_error() {
        return response;
    }
    let kind = response.headers().get(header::CONTENT_TYPE).and_then(|k| k.to_str().ok()).unwrap_or_default();
    if kind.starts_with(if of_api { PROBLEM_TYPE } else { "text/html" }) {
        return response;
    }
    let plain = kind.starts_with("text/plain");
    // What a wrong method may be instead is part of the answer.
    let allow = response.headers().get(header::ALLOW).cloned();
    let (parts, body) = response.into_parts();
    let problem = match parts.extensions.get::<Problem>() {
        Some(problem) => problem.clone(),
        None => Problem::of_request(status, &if plain { said(body).await } else { String::new() }),
    };
    let mut dressed = if of_api { problem.into_response() } else { problem_page(problem, back.as_deref()) };
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

async fn said(body: Body) -> String {
    let bytes = axum::body::to_bytes(body, SAID_MAX_BYTES).await.unwrap_or_default();
    String::from_utf8_lossy(&bytes).trim().to_owned()
}

impl Problem {
    /// A request that could not be taken at all, with what the reader of it said.
    #[must_use]
    pub(crate) fn of_request(status: StatusCode, said: &str) -> Self {
        let said = said.trim_end_matches('.');
        let (code, detail) = match status {
            StatusCode::PAYLOAD_TOO_LARGE => {
                let most = crate::BODY_MAX_BYTES / (1024 * 1024);
                ("too_large", format!("this is more than {most} MB at once. Split it and send the pieces one by one"))
            }
            StatusCode::METHOD_NOT_ALLOWED => {
                ("method", "this address does not take that method. Go back and use the buttons of the page".to_owned())
            }
            StatusCode::NOT_FOUND => ("not_found", "there is no such address. Begin again at Today".to_owned()),
            _ if said.is_empty() => ("request", "the request could not be taken. Load the page anew".to_owned()),
            _ => (
                "request",
                format!("the request could not be read: {said}. Check the address and what was sent with it"),
            ),
        };
        Self::new(status, code, detail)
    }
}
