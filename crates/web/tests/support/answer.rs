//! An answer of the site, and what must hold of every refusal.

use axum::http::{HeaderMap, StatusCode, header};
use axum::response::Response;
use serde_json::Value;

/// An answer, read to its end.
#[derive(Debug)]
pub struct Answer {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub kind: String,
    /// Where a page leads on to.
    pub location: String,
    /// Cookies that the tablet is to keep, whole.
    pub cookies: Vec<String>,
    pub text: String,
}

impl Answer {
    pub async fn of(response: Response) -> Self {
        let head = |name| response.headers().get(name).and_then(|v| v.to_str().ok()).unwrap_or_default().to_owned();
        let (status, kind, location) = (response.status(), head(header::CONTENT_TYPE), head(header::LOCATION));
        let cookies = response.headers().get_all(header::SET_COOKIE).iter();
        let cookies = cookies.filter_map(|v| v.to_str().ok()).map(str::to_owned).collect();
        let headers = response.headers().clone();
        let bytes = axum::body::to_bytes(response.into_body(), 32 << 20).await.expect("a body");
        Self { status, headers, kind, location, cookies, text: String::from_utf8_lossy(&bytes).into_owned() }
    }

    /// The document; a text where it is none, null where there is nothing.
    pub fn value(&self) -> Value {
        if self.text.is_empty() {
            return Value::Null;
        }
        serde_json::from_str(&self.text).unwrap_or_else(|_| Value::String(self.text.clone()))
    }

    /// A refusal of the API: a whole problem document (RFC 9457) with this status.
    pub fn problem(&self, status: StatusCode) -> Value {
        assert_eq!(self.status, status, "{}", self.text);
        assert_eq!(self.kind, "application/problem+json", "{}", self.text);
        let problem = self.value();
        assert_eq!(problem["status"], status.as_u16(), "{problem}");
        assert!(problem["type"].as_str().is_some_and(|t| t.starts_with("urn:setwright:problem:")), "{problem}");
        assert!(problem["title"].as_str().is_some_and(|t| !t.is_empty()), "{problem}");
        assert!(problem["detail"].as_str().is_some_and(|d| d.len() > 20), "a detail says what to do: {problem}");
        problem
    }

    /// A refusal of a page: a page with this status that says all of these words.
    #[track_caller]
    pub fn says(&self, status: StatusCode, words: &[&str]) {
        assert_eq!(self.status, status, "{}", self.text);
        assert!(self.kind.starts_with("text/html"), "{}: {}", self.kind, self.text);
        assert!(self.text.starts_with("<!DOCTYPE html>"), "{}", self.text);
        for word in words {
            assert!(self.text.contains(word), "“{word}” is not on the page: {}", self.text);
        }
    }
}

/// What a problem says, for a look at its words.
pub fn detail(problem: &Value) -> &str {
    problem["detail"].as_str().expect("a detail")
}
