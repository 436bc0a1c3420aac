//! The one place that turns an error into an answer: a problem document for programs (RFC 9457), a page for people.

use app::{AppError, Kind};
use axum::extract::{FromRequest, Request, rejection::BytesRejection};
use axum::http::{HeaderMap, StatusCode, header};
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
    /// Where in the body it is, as a JSON pointer (RFC 6901), where that is known: `/clubs/0/mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<String>)]
    pub pointer: Option<Box<str>>,
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
            pointer: None,
        }
    }

    /// A JSON document that could not be read, with the place of the mistake in it.
    #[must_use]
    pub fn unreadable(error: &document::Unreadable) -> Self {
        let mut problem = Self::invalid(error.to_string());
        if error.is_json {
            problem.pointer = Some(error.pointer.as_str().into());
        }
        problem
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
        StatusCode::UNSUPPORTED_MEDIA_TYPE => "Wrong content type",
        StatusCode::FORBIDDEN | StatusCode::MISDIRECTED_REQUEST => "Refused",
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
            Kind::Fault => StatusCode::INTERNAL_SERVER_ERROR,
        };
        let mut problem = Self::new(status, error.code(), error.to_string());
        problem.field = error.field().map(str::to_owned);
        problem.pointer = error.pointer().map(Into::into);
        problem
    }
}

impl Problem {
    /// The problem of an error that is the answer to a request; what is not the asker's doing goes into the log.
    pub(crate) fn of(error: &AppError) -> Self {
        match error.kind() {
            Kind::Unavailable => tracing::error!(%error, "the store could not serve"),
            Kind::Fault => tracing::error!(%error, "the program made a mistake"),
            Kind::Invalid | Kind::NotFound | Kind::Conflict => {}
        }
        error.into()
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
        Self(Problem::of(&error))
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

impl<T: DeserializeOwned, S: Send + Sync> FromRequest<S> for Body<T> {
    type Rejection = ApiError;

    async fn from_request(request: Request, state: &S) -> Result<Self, ApiError> {
        if !is_json(request.headers()) {
            return Err(ApiError(Problem::new(
                StatusCode::UNSUPPORTED_MEDIA_TYPE,
                "content_type",
                "this address takes a JSON document. Send it with “Content-Type: application/json”",
            )));
        }
        let bytes = axum::body::Bytes::from_request(request, state)
            .await
            .map_err(|e: BytesRejection| Problem::of_request(e.status(), &e.body_text()))?;
        document::read(&bytes).map(Self).map_err(|e| ApiError(Problem::unreadable(&e)))
    }
}

/// Whether a body says of itself that it is JSON. A browser lets a page of another site send any other kind of body
/// without asking first.
fn is_json(headers: &HeaderMap) -> bool {
    let kind = headers.get(header::CONTENT_TYPE).and_then(|k| k.to_str().ok()).unwrap_or_default();
    let essence = kind.split(';').next().unwrap_or_default().trim().to_ascii_lowercase();
    essence == "application/json" || (essence.starts_with("application/") && essence.ends_with("+json"))
}

#[cfg(test)]
mod tests {
    use super::Problem;
    use app::AppError;
    use trade::error::TradeError;

    /// A mistake of the program is not told as the asker's.
    #[test]
    fn a_mistake_of_the_program_is_a_500() {
        let errors = [
            AppError::Trade(TradeError::Fault("the plan failed its check".into())),
            AppError::Internal("the search stopped".into()),
        ];
        for error in errors {
            let problem = Problem::of(&error);
            assert_eq!((problem.status, problem.title.as_str()), (500, "Our mistake"));
            assert_eq!(problem.kind, "urn:setwright:problem:internal");
        }
        let refused = AppError::Trade(TradeError::Matching("no club to plan".into()));
        assert_eq!(Problem::of(&refused).status, 422);
    }
}
