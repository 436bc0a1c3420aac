//! Errors that arise before any handler is asked (an address that does not read, a form that is none, a wrong method, a
//! body too large, a panic) in the same dress as all others: a problem document on the API, a page elsewhere.

use crate::pages::problem_page;
use crate::problem::{EdgeFault, PROBLEM_TYPE, Problem};
use crate::reader::Reader;
use axum::body::Body;
use axum::extract::{FromRequestParts, Request};
use axum::http::uri::{Authority, PathAndQuery};
use axum::http::{HeaderMap, HeaderValue, Method, StatusCode, Uri, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use fact::Told;

/// Most bytes of what an extractor says that are read.
const SAID_MAX_BYTES: usize = 16 * 1024;

/// Dresses the errors of the whole site.
pub(crate) async fn errors(request: Request, next: Next) -> Response {
    let of_api = request.uri().path().starts_with("/api/");
    let back = if of_api { None } else { came_from(&request) };
    let size_mb = size_mb(request.headers());
    let (mut parts, body) = request.into_parts();
    let Ok(Reader(w)) = Reader::from_request_parts(&mut parts, &()).await;
    let response = next.run(Request::from_parts(parts, body)).await;
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
        None => Problem::of_request(status, &if plain { said(body).await } else { String::new() }, size_mb),
    };
    let mut dressed = if of_api { problem.into_response() } else { problem_page(&w, problem, back.as_deref()) };
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

/// Size that a request gives for itself, in megabytes.
pub(crate) fn size_mb(headers: &HeaderMap) -> Option<u64> {
    let bytes = headers.get(header::CONTENT_LENGTH)?.to_str().ok()?.parse::<u64>().ok()?;
    Some(bytes.div_ceil(1024 * 1024))
}

async fn said(body: Body) -> String {
    let bytes = axum::body::to_bytes(body, SAID_MAX_BYTES).await.unwrap_or_default();
    String::from_utf8_lossy(&bytes).trim().to_owned()
}

impl Problem {
    /// A request that could not be taken at all, with what the reader of it said.
    #[must_use]
    pub(crate) fn of_request(status: StatusCode, said: &str, size_mb: Option<u64>) -> Self {
        let said = said.trim_end_matches('.');
        let most_mb = app::stock::IMPORT_MAX_BYTES / (1024 * 1024);
        let (code, fault) = match status {
            StatusCode::PAYLOAD_TOO_LARGE => ("too_large", EdgeFault::TooLarge { size_mb, most_mb }),
            StatusCode::METHOD_NOT_ALLOWED => ("method", EdgeFault::Method),
            StatusCode::NOT_FOUND => ("not_found", EdgeFault::NoAddress),
            _ if said.is_empty() => ("request", EdgeFault::Request),
            _ => ("request", EdgeFault::Unread { what: Told::verbatim(plain(said)) }),
        };
        Self::new(status, code, fault)
    }
}

/// What the readers of addresses and forms say, in plain words: theirs name types of the programming language.
fn plain(said: &str) -> String {
    let of = ["Invalid URL: ", "Failed to deserialize query string: ", "Failed to deserialize form body: "];
    let said = of.into_iter().find_map(|before| said.strip_prefix(before)).unwrap_or(said);
    if let Some((value, kind)) = said.strip_prefix("Cannot parse ").and_then(|rest| rest.rsplit_once(" to a ")) {
        let value = value.split('`').nth(1).unwrap_or_default();
        return format!("“{value}” must be {}", if kind.contains('f') { "a number" } else { "a whole number" });
    }
    if let Some(name) = said.strip_prefix("Invalid UTF-8 in ") {
        return format!("{} is not UTF-8", name.trim_matches('`'));
    }
    let Some((field, what)) = said.split_once(": ") else { return document::plainly(said) };
    match what {
        "invalid digit found in string" => format!("{field} must be a whole number"),
        "cannot parse integer from empty string" => format!("{field} is empty; give a whole number or leave it out"),
        "number too large to fit in target type" => format!("{field} is too large"),
        "number too small to fit in target type" => format!("{field} is too small"),
        "invalid float literal" => format!("{field} must be a number"),
        "cannot parse float from empty string" => format!("{field} is empty; give a number or leave it out"),
        "provided string was not `true` or `false`" => format!("{field} must be true or false"),
        // Its name is in the sentence already.
        _ if what.starts_with("unknown field") => document::plainly(what),
        _ => format!("{field}: {}", document::plainly(what)),
    }
}

#[cfg(test)]
mod tests {
    use super::plain;
    use axum::extract::{FromRequestParts, Query};
    use axum::http::Request;
    use serde::Deserialize;

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[allow(dead_code, reason = "only read")]
    struct Asked {
        joints: usize,
        room_c: Option<f64>,
        look: Option<bool>,
        small: Option<u8>,
    }

    /// What the reader of queries itself says of one, in our words.
    async fn said_of(query: &str) -> String {
        let (mut parts, ()) = Request::get(format!("/?{query}")).body(()).expect("a request").into_parts();
        plain(&Query::<Asked>::from_request_parts(&mut parts, &()).await.expect_err(query).body_text())
    }

    #[tokio::test]
    async fn a_query_that_cannot_be_read_is_told_in_plain_words() {
        for (query, words) in [
            ("", "joints is missing"),
            ("joints=x", "joints must be a whole number"),
            ("joints=", "joints is empty; give a whole number or leave it out"),
            ("joints=8&room_c=warm", "room_c must be a number"),
            ("joints=8&room_c=", "room_c is empty; give a number or leave it out"),
            ("joints=8&look=1", "look must be true or false"),
            ("joints=8&small=300", "small is too large"),
            ("joints=8&colour=1", "unknown field `colour`; known here: joints, room_c, look, small"),
            ("joints=8&joints=9", "joints is given twice"),
        ] {
            assert_eq!(said_of(query).await, words, "{query}");
        }
        assert_eq!(plain("Invalid URL: Cannot parse `abc` to a `i64`"), "“abc” must be a whole number");
        let second = "Invalid URL: Cannot parse value at index 1 with value `x` to a `i64`";
        assert_eq!(plain(second), "“x” must be a whole number");
        assert_eq!(plain("Invalid URL: Invalid UTF-8 in `code`"), "code is not UTF-8");
    }
}
