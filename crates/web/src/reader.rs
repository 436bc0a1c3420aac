//! Who reads an answer: the language of the site, the units of whoever is at the tablet, the time zone of the shop.
//!
//! What is kept stays in millimetres and grams, and what a handler answers are facts. [`for_reader`] knows the request:
//! it makes the [`Words`] that a page is written with, and writes the sentences of an [`Answer`].

use crate::cookies;
use crate::problem::{PROBLEM_TYPE, Problem, of_documents};
use crate::tablet;
use axum::extract::{FromRequestParts, Request, State};
use axum::http::request::Parts;
use axum::http::{HeaderName, HeaderValue, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use jiff::tz::TimeZone;
use quantity::Units;
use serde::Serialize;
use serde_json::Value;
use std::convert::Infallible;
use words::{Language, Words};

/// The words that whoever asked reads.
#[derive(Debug, Clone)]
pub(crate) struct Reader(pub Words);

impl<S: Send + Sync> FromRequestParts<S> for Reader {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        // Outside of the site's own layers, as in tests of one handler, everybody reads English.
        Ok(parts.extensions.get::<Self>().cloned().unwrap_or_else(|| Self(Words::english(Units::default()))))
    }
}

/// Answers a request in the language of the site and the units of its person.
pub(crate) async fn for_reader(
    State(fixed): State<Option<&'static Language>>,
    mut request: Request,
    next: Next,
) -> Response {
    let kept = cookies::brought(request.headers(), cookies::UNITS);
    let units = kept.map(|key| Units::from_key(&key)).unwrap_or_default();
    let language = fixed.unwrap_or_else(|| tablet::language(request.headers()));
    let mut words = Words::new(language, units, TimeZone::system());
    if let Some(comma) = tablet::decimal_comma(request.headers()) {
        words = words.with_decimal_comma(comma);
    }
    request.extensions_mut().insert(Reader(words.clone()));
    let here = tablet::of(request.headers());
    let done = tablet::done_of(request.headers());
    let mut response = tablet::on(here, done, next.run(request)).await;
    let is_page =
        response.headers().get(header::CONTENT_TYPE).is_some_and(|kind| kind.as_bytes().starts_with(b"text/html"));
    if done.is_some() && is_page {
        // Said once.
        let (name, value) = cookies::keep_for_next(cookies::DONE, "");
        response.headers_mut().extend(HeaderValue::from_str(&value).ok().map(|value| (name, value)));
    }
    if words.language_code() != Language::english().code() {
        tell_problem(&mut response, language);
    }
    let Some(Unspoken(mut document)) = response.extensions_mut().remove::<Unspoken>() else { return response };
    words::speak(&mut document, &words);
    let (mut parts, _) = response.into_parts();
    parts.headers.remove(header::CONTENT_LENGTH);
    let (name, value) = JSON;
    parts.headers.insert(name, HeaderValue::from_static(value));
    Response::from_parts(parts, document.to_string().into())
}

/// A problem of a program's request, told in English where it was found, in the language of whoever asked.
fn tell_problem(response: &mut Response, language: &'static Language) {
    let is_document = response.headers().get(header::CONTENT_TYPE).is_some_and(|kind| kind == PROBLEM_TYPE);
    let Some(problem) = response.extensions().get::<Problem>().filter(|_| is_document) else { return };
    let Ok(body) = serde_json::to_vec(&problem.document(&of_documents(language))) else { return };
    response.headers_mut().remove(header::CONTENT_LENGTH);
    *response.body_mut() = body.into();
}

const JSON: (HeaderName, &str) = (header::CONTENT_TYPE, "application/json");

/// A document with facts that nobody has put into words yet.
#[derive(Debug, Clone)]
struct Unspoken(Value);

/// The answer of the JSON API: a document whose facts get their sentences in the words of whoever asked.
#[derive(Debug, Clone)]
pub(crate) struct Answer<T>(pub T);

impl<T: Serialize> IntoResponse for Answer<T> {
    /// The document alone: [`for_reader`] writes its sentences and its text.
    fn into_response(self) -> Response {
        let written = serde_json::to_string(&self.0).and_then(|text| {
            // Most documents have no fact; what has none is handed out as it is written.
            let unspoken = words::may_have_facts(&text).then(|| serde_json::from_str(&text)).transpose()?;
            Ok((text, unspoken))
        });
        match written {
            Ok((_, Some(document))) => {
                let mut response = StatusCode::OK.into_response();
                response.extensions_mut().insert(Unspoken(document));
                response
            }
            Ok((text, None)) => ([JSON], text).into_response(),
            Err(error) => {
                tracing::error!(%error, "an answer could not be written");
                StatusCode::INTERNAL_SERVER_ERROR.into_response()
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use axum::Router;
    use axum::body::Body;
    use axum::routing::get;
    use tower::ServiceExt;

    /// A fact of an answer has its sentence in the units of who asked; the figures are the same for everybody.
    #[tokio::test]
    async fn a_fact_is_told_in_the_units_of_who_asked() {
        let fact = serde_json::json!({"code": "refusal.unknown", "figures": {"what": "head model", "name": "H-9"}});
        let routes: Router = Router::new()
            .route("/", get(|| async move { (StatusCode::CREATED, Answer(vec![fact])) }))
            .route("/mass", get(|Reader(w): Reader| async move { w.mass(28.349_52) }))
            .layer(axum::middleware::from_fn_with_state(Some(Language::english()), for_reader));
        let ask = async |path: &str, cookie: &str| {
            let request = Request::get(path).header(header::COOKIE, cookie).body(Body::empty()).expect("a request");
            let response = routes.clone().oneshot(request).await.expect("an answer");
            let status = response.status();
            let bytes = axum::body::to_bytes(response.into_body(), 4096).await.expect("a body");
            (status, String::from_utf8_lossy(&bytes).into_owned())
        };
        let (status, text) = ask("/", "").await;
        assert_eq!(status, StatusCode::CREATED);
        assert!(text.contains(r#""words":"there is no head model “H-9”""#), "{text}");
        assert_eq!(ask("/mass", "units=in-oz").await.1, "1.000 oz");
        assert_eq!(ask("/mass", "").await.1, "28.3 g");
    }
}
