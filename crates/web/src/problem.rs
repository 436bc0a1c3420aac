//! The one place that turns an error into an answer: a problem document for programs (RFC 9457), a page for people.

use app::{AppError, Kind};
use axum::extract::{FromRequest, Request, rejection::BytesRejection};
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use serde::Serialize;
use serde::de::DeserializeOwned;
use utoipa::ToSchema;

/// Content type of a problem document (RFC 9457).
pub(crate) const PROBLEM_TYPE: &str = "application/problem+json";

/// A problem document.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub struct Problem {
    /// A short, stable name of the kind of problem.
    #[serde(rename = "type")]
    pub kind: String,
    /// HTTP status.
    pub status: u16,
    /// What sort of problem, in a few words.
    pub title: String,
    /// What happened, where, what to do next.
    pub detail: String,
    /// The field that it belongs to, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub field: Option<String>,
}

impl Problem {
    /// A problem that the edge itself finds in a request.
    #[must_use]
    pub fn invalid(detail: impl Into<String>) -> Self {
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, "invalid", detail)
    }

    /// A problem of a kind.
    #[must_use]
    pub fn new(status: StatusCode, code: &str, detail: impl Into<String>) -> Self {
        Self {
            kind: format!("urn:setwright:problem:{code}"),
            status: status.as_u16(),
            title: title(status).to_owned(),
            detail: detail.into(),
            field: None,
        }
    }

    /// The HTTP status.
    #[must_use]
    pub fn status(&self) -> StatusCode {
        StatusCode::from_u16(self.status).unwrap_or(StatusCode::INTERNAL_SERVER_ERROR)
    }
}

/// What sort of problem, in a few words.
fn title(status: StatusCode) -> &'static str {
    match status {
        StatusCode::NOT_FOUND => "Not there",
        StatusCode::CONFLICT => "Not now",
        StatusCode::SERVICE_UNAVAILABLE => "Not saved",
        StatusCode::PAYLOAD_TOO_LARGE => "Too large",
        StatusCode::METHOD_NOT_ALLOWED => "Not this way",
        StatusCode::INTERNAL_SERVER_ERROR => "Our mistake",
        _ => "Please check",
    }
}

impl From<&AppError> for Problem {
    fn from(error: &AppError) -> Self {
        let status = match error.kind() {
            Kind::Invalid => StatusCode::UNPROCESSABLE_ENTITY,
            Kind::NotFound => StatusCode::NOT_FOUND,
            Kind::Conflict => StatusCode::CONFLICT,
            Kind::Unavailable => StatusCode::SERVICE_UNAVAILABLE,
        };
        let mut problem = Self::new(status, error.code(), error.to_string());
        problem.field = error.field().map(str::to_owned);
        problem
    }
}

impl IntoResponse for Problem {
    fn into_response(self) -> Response {
        let status = self.status();
        let body = serde_json::to_vec(&self).unwrap_or_default();
        let mut response = (status, [(header::CONTENT_TYPE, PROBLEM_TYPE)], body).into_response();
        // For an answer that has to be given as a page after all.
        response.extensions_mut().insert(self);
        response
    }
}

/// An error of the JSON API.
#[derive(Debug)]
pub struct ApiError(pub Problem);

impl From<AppError> for ApiError {
    fn from(error: AppError) -> Self {
        if error.kind() == Kind::Unavailable {
            tracing::error!(%error, "the store could not serve");
        }
        Self((&error).into())
    }
}

impl From<Problem> for ApiError {
    fn from(problem: Problem) -> Self {
        Self(problem)
    }
}

impl IntoResponse for ApiError {
    fn into_response(self) -> Response {
        self.0.into_response()
    }
}

/// A JSON body, read so that a mistake in it is named: which field, which line, what was found.
#[derive(Debug)]
pub struct Body<T>(pub T);

/// The bytes of a body, for what reads them itself.
#[derive(Debug)]
pub struct Text(pub axum::body::Bytes);

impl<S: Send + Sync> FromRequest<S> for Text {
    type Rejection = ApiError;

    async fn from_request(request: Request, state: &S) -> Result<Self, ApiError> {
        let read = axum::body::Bytes::from_request(request, state).await;
        Ok(Self(read.map_err(|e: BytesRejection| Problem::of_request(e.status(), &e.body_text()))?))
    }
}

impl<T: DeserializeOwned, S: Send + Sync> FromRequest<S> for Body<T> {
    type Rejection = ApiError;

    async fn from_request(request: Request, state: &S) -> Result<Self, ApiError> {
        let Text(bytes) = Text::from_request(request, state).await?;
        serde_json::from_slice(&bytes)
            .map(Self)
            .map_err(|e| ApiError(Problem::invalid(format!("the JSON document could not be read: {e}"))))
    }
}
