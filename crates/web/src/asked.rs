//! What an address and a form ask, read as types: a mistake is a fact, not the English of a reader.

use crate::problem::{EdgeFault, Problem};
use axum::extract::path::ErrorKind;
use axum::extract::rejection::PathRejection;
use axum::extract::{FromRequest, FromRequestParts, Request};
use axum::http::StatusCode;
use axum::http::request::Parts;
use fact::{Fact, Told};
use serde::de::DeserializeOwned;

type Pairs = Vec<(String, String)>;

/// The query of an address.
#[derive(Debug)]
pub(crate) struct Asked<T>(pub T);

impl<T: DeserializeOwned, S: Send + Sync> FromRequestParts<S> for Asked<T> {
    type Rejection = Problem;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Problem> {
        let pairs = axum::extract::Query::<Pairs>::try_from_uri(&parts.uri);
        let axum::extract::Query(pairs) = pairs.map_err(|_| refused(EdgeFault::Request))?;
        document::read_pairs(pairs).map(Self).map_err(unread)
    }
}

/// The fields of a form.
#[derive(Debug)]
pub(crate) struct Filled<T>(pub T);

impl<T: DeserializeOwned, S: Send + Sync> FromRequest<S> for Filled<T> {
    type Rejection = Problem;

    async fn from_request(request: Request, state: &S) -> Result<Self, Problem> {
        let size_mb = crate::problem::size_mb(request.headers());
        let pairs = axum::extract::Form::<Pairs>::from_request(request, state).await;
        let axum::extract::Form(pairs) = pairs.map_err(|e| Problem::of_request(e.status(), size_mb))?;
        document::read_pairs(pairs)
            .map(Self)
            .map_err(|what| Problem::new(StatusCode::UNPROCESSABLE_ENTITY, "request", EdgeFault::Unread { what }))
    }
}

/// The places of an address.
#[derive(Debug)]
pub(crate) struct Path<T>(pub T);

impl<T: DeserializeOwned + Send, S: Send + Sync> FromRequestParts<S> for Path<T> {
    type Rejection = Problem;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Self, Problem> {
        let read = axum::extract::Path::<T>::from_request_parts(parts, state).await;
        read.map(|axum::extract::Path(place)| Self(place)).map_err(|rejection| refused_place(&rejection))
    }
}

fn refused_place(rejection: &PathRejection) -> Problem {
    let PathRejection::FailedToDeserializePathParams(failed) = rejection else { return refused(EdgeFault::Request) };
    match failed.kind() {
        ErrorKind::ParseErrorAtKey { value, .. }
        | ErrorKind::ParseErrorAtIndex { value, .. }
        | ErrorKind::ParseError { value, .. } => {
            // The places of our addresses are texts, which always read, and whole numbers.
            unread(PlaceFault::NotWhole { text: value.clone() }.told())
        }
        ErrorKind::InvalidUtf8InPathParam { key } => unread(PlaceFault::NotUtf8 { name: key.clone() }.told()),
        _ => refused(EdgeFault::Request),
    }
}

fn unread(what: Told) -> Problem {
    refused(EdgeFault::Unread { what })
}

fn refused(fault: EdgeFault) -> Problem {
    Problem::new(StatusCode::BAD_REQUEST, "request", fault)
}

fact::facts! {
    /// What is wrong with a place of an address.
    pub(crate) enum PlaceFault: "place_fault" {
        NotWhole { text: String },
        NotUtf8 { name: String },
    }
}

#[cfg(test)]
mod tests {
    use super::{Asked, Path};
    use axum::Router;
    use axum::extract::FromRequestParts;
    use axum::http::Request;
    use axum::routing::get;
    use quantity::Units;
    use serde::Deserialize;
    use tower::ServiceExt;
    use words::Words;

    #[derive(Debug, Deserialize)]
    #[serde(deny_unknown_fields)]
    #[allow(dead_code, reason = "only read")]
    struct Mixed {
        joints: usize,
        room_c: Option<f64>,
        look: Option<bool>,
        small: Option<u8>,
    }

    async fn said_of(query: &str) -> String {
        let (mut parts, ()) = Request::get(format!("/?{query}")).body(()).expect("a request").into_parts();
        let problem = Asked::<Mixed>::from_request_parts(&mut parts, &()).await.expect_err(query);
        Words::english(Units::default()).refusal(problem.refusal())
    }

    #[tokio::test]
    async fn a_query_that_cannot_be_read_is_told_in_plain_words() {
        for (query, words) in [
            ("", "joints is missing"),
            ("joints=x", "joints must be a whole number, 0 or more, not the text “x”"),
            ("joints=", "joints is empty; give a whole number, 0 or more or leave it out"),
            ("joints=8&room_c=warm", "room_c must be a number, not the text “warm”"),
            ("joints=8&room_c=", "room_c is empty; give a number or leave it out"),
            ("joints=8&look=1", "look must be true or false, not the text “1”"),
            ("joints=8&small=300", "small must be a whole number from 0 to 255, not 300"),
            ("joints=8&colour=1", "unknown field `colour`; known here: joints, room_c, look and small"),
            ("joints=8&joints=9", "joints is given twice"),
        ] {
            let told = said_of(query).await;
            assert_eq!(
                told,
                format!("the request could not be read: {words}. Check the address and what was sent with it"),
                "{query}"
            );
        }
    }

    #[tokio::test]
    async fn a_place_that_is_no_number_is_told() {
        let routes: Router =
            Router::new().route("/job/{number}", get(|Path(number): Path<i64>| async move { number.to_string() }));
        let answer = routes.oneshot(Request::get("/job/abc").body(axum::body::Body::empty()).expect("a request")).await;
        let bytes = axum::body::to_bytes(answer.expect("an answer").into_body(), 4096).await.expect("a body");
        let text = String::from_utf8_lossy(&bytes).into_owned();
        assert!(text.contains("“abc” must be a whole number"), "{text}");
    }
}
