//! The one place that turns an error into an answer: a problem document for programs (RFC 9457), a page for people.

use app::{AppError, Kind};
use axum::extract::{FromRequest, Request, rejection::BytesRejection};
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::{IntoResponse, Response};
use fact::{Refusal, Told};
use jiff::tz::TimeZone;
use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use utoipa::ToSchema;
use words::{Language, Words};

/// Content type of a problem document (RFC 9457).
pub(crate) const PROBLEM_TYPE: &str = "application/problem+json";

/// A problem document.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[schema(as = Problem)]
pub struct ProblemDocument {
    /// A short, stable name of the kind of problem.
    #[serde(rename = "type")]
    pub kind: String,
    /// HTTP status.
    pub status: u16,
    /// What sort of problem, in a few words.
    pub title: String,
    /// What happened, where, what to do next.
    pub detail: String,
    /// What is wrong, as a short stable name; its figures are `figures`.
    pub code: String,
    /// The figures of what is wrong by their names; a unit is the end of its name. A figure may be a fact itself.
    #[schema(value_type = Object)]
    pub figures: Value,
    /// What to do next, where there is something; the end of `detail`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub next: Option<String>,
    /// The field that it belongs to, where there is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub field: Option<String>,
    /// Where in the body it is, as a JSON pointer (RFC 6901), where that is known: `/clubs/0/mass_g`.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pointer: Option<String>,
}

/// Why a request was not done, before it is put into words.
#[derive(Debug, Clone)]
pub struct Problem(Box<Inner>);

#[derive(Debug, Clone)]
struct Inner {
    status: StatusCode,
    kind: &'static str,
    refusal: Refusal,
    field: Option<String>,
    pointer: Option<String>,
}

/// Size that a request gives for itself, in megabytes.
pub(crate) fn size_mb(headers: &HeaderMap) -> Option<u64> {
    let bytes = headers.get(header::CONTENT_LENGTH)?.to_str().ok()?.parse::<u64>().ok()?;
    Some(bytes.div_ceil(1024 * 1024))
}

fact::facts! {
    /// What sort of problem, in a few words.
    pub(crate) enum Title: "problem_title" {
        NotFound,
        Conflict,
        NotSaved,
        TooLarge,
        ContentType,
        Refused,
        Method,
        Internal,
        Check,
    }
}

impl Problem {
    /// A problem that the edge itself finds in a request.
    #[must_use]
    pub(crate) fn invalid(refusal: impl Into<Refusal>) -> Self {
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, "invalid", refusal)
    }

    /// A problem of a kind.
    #[must_use]
    pub(crate) fn new(status: StatusCode, kind: &'static str, refusal: impl Into<Refusal>) -> Self {
        Self(Box::new(Inner { status, kind, refusal: refusal.into(), field: None, pointer: None }))
    }

    /// A JSON document that could not be read, with the place of the mistake in it.
    #[must_use]
    pub(crate) fn unreadable(error: &document::Unreadable) -> Self {
        let problem = Self::invalid(Refusal::new(error));
        if error.is_json { problem.at(&error.pointer) } else { problem }
    }

    /// Where in the body it is, as a JSON pointer.
    #[must_use]
    pub(crate) fn at(mut self, pointer: &str) -> Self {
        self.0.pointer = Some(pointer.to_owned());
        self
    }

    /// The same within another fact.
    #[must_use]
    pub(crate) fn within(mut self, wrap: impl FnOnce(Told) -> Told) -> Self {
        self.0.refusal = self.0.refusal.within(wrap);
        self
    }

    /// The HTTP status.
    #[must_use]
    pub(crate) fn status(&self) -> StatusCode {
        self.0.status
    }

    /// What is wrong and what to do next.
    #[must_use]
    pub(crate) fn refusal(&self) -> &Refusal {
        &self.0.refusal
    }

    /// What sort of problem, in a few words.
    #[must_use]
    pub(crate) fn title(&self, w: &Words) -> String {
        w.tell(&match self.0.status {
            StatusCode::NOT_FOUND => Title::NotFound,
            StatusCode::CONFLICT => Title::Conflict,
            StatusCode::SERVICE_UNAVAILABLE => Title::NotSaved,
            StatusCode::PAYLOAD_TOO_LARGE => Title::TooLarge,
            StatusCode::UNSUPPORTED_MEDIA_TYPE => Title::ContentType,
            StatusCode::FORBIDDEN | StatusCode::MISDIRECTED_REQUEST => Title::Refused,
            StatusCode::METHOD_NOT_ALLOWED => Title::Method,
            StatusCode::INTERNAL_SERVER_ERROR => Title::Internal,
            _ => Title::Check,
        })
    }

    /// The problem document in somebody's words.
    #[must_use]
    pub(crate) fn document(&self, w: &Words) -> ProblemDocument {
        let Inner { status, kind, refusal, field, pointer } = &*self.0;
        let mut fact = serde_json::to_value(refusal.fact()).unwrap_or_default();
        words::speak(&mut fact, w);
        ProblemDocument {
            kind: format!("urn:setwright:problem:{kind}"),
            status: status.as_u16(),
            title: self.title(w),
            detail: w.refusal(refusal),
            code: refusal.fact().code().to_owned(),
            figures: fact["figures"].take(),
            next: w.next(refusal),
            field: field.clone(),
            pointer: pointer.clone(),
        }
    }
}

/// The words of a program's answers: its documents carry millimetres and grams in the names of their fields, so that its
/// problems are told in them too.
pub(crate) fn of_documents(language: &'static Language) -> Words {
    Words::of_documents(language, TimeZone::system())
}

impl From<&AppError> for Problem {
    fn from(error: &AppError) -> Self {
        let status = match error.kind() {
            Kind::Invalid => StatusCode::UNPROCESSABLE_ENTITY,
            Kind::NotFound => StatusCode::NOT_FOUND,
            Kind::Conflict => StatusCode::CONFLICT,
            Kind::Forbidden => StatusCode::FORBIDDEN,
            Kind::Unavailable => StatusCode::SERVICE_UNAVAILABLE,
            Kind::Fault => StatusCode::INTERNAL_SERVER_ERROR,
        };
        let mut problem = Self::new(status, error.code(), error.refusal());
        problem.0.field = error.field().map(str::to_owned);
        problem.0.pointer = error.pointer();
        problem
    }
}

impl Problem {
    /// The problem of an error that is the answer to a request; what is not the asker's doing goes into the log.
    pub(crate) fn of(error: &AppError) -> Self {
        match error.kind() {
            Kind::Unavailable => tracing::error!(%error, "the store could not serve"),
            Kind::Fault => tracing::error!(%error, "the program made a mistake"),
            Kind::Invalid | Kind::NotFound | Kind::Conflict | Kind::Forbidden => {}
        }
        error.into()
    }
}

impl IntoResponse for Problem {
    fn into_response(self) -> Response {
        let body = serde_json::to_vec(&self.document(&of_documents(Language::english()))).unwrap_or_default();
        let mut response = (self.status(), [(header::CONTENT_TYPE, PROBLEM_TYPE)], body).into_response();
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
                EdgeFault::ContentType,
            )));
        }
        let size_mb = size_mb(request.headers());
        let bytes = axum::body::Bytes::from_request(request, state)
            .await
            .map_err(|e: BytesRejection| Problem::of_request(e.status(), size_mb))?;
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

fact::facts! {
    /// What is refused before any use case is asked.
    pub(crate) enum EdgeFault: "edge_fault" {
        ContentType,
        ForeignPage,
        NotEncrypted { port: String },
        NoOwnRoot,
        UnknownName { name: String },
        NoPage,
        NoApiAddress,
        NoApiMethod,
        Panicked,
        TooLarge { size_mb: Option<u64>, most_mb: usize },
        Method,
        NoAddress,
        Request,
        Unread { what: Told },
        NoCodes,
        NotAModel { place: String },
        NotModels { what: Told },
        Mapping { what: Told },
        Unwritable { log: String },
        NoFile,
        FileBroken,
        FileLost,
        NoCalculation { name: String },
        NoStep { job: i64, step: String },
        TooManyLabels { n: usize, most: usize },
        NoAction,
        NothingChosen,
        Mistyped { what: String },
        NotSeconds { text: String },
        NotEntryTime { text: String },
        NoSpacersNumber { text: String },
        NoRoomNumber { text: String },
        NotATime { text: String },
        NoState,
        NotPicks { text: String },
    }
}

#[cfg(test)]
mod tests {
    use super::{Problem, Words};
    use app::AppError;
    use quantity::Units;
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
            let document = problem.document(&Words::english(Units::default()));
            assert_eq!((document.status, document.title.as_str()), (500, "Internal error"));
            assert_eq!(document.kind, "urn:setwright:problem:internal");
        }
        let refused = AppError::Trade(TradeError::Matching(matching::MatchError::NoClubs));
        assert_eq!(Problem::of(&refused).status(), 422);
    }
}
