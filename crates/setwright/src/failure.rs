//! The one place that turns an error into words on the terminal and an exit code.

use app::{AppError, Kind};
use std::fmt;
use std::path::Path;
use std::process::ExitCode;

/// Exit codes: 2 for what was given, 3 for what is not there, 4 for what somebody else has or what must wait, 5 for a
/// store or file that cannot serve.
#[derive(Debug)]
pub struct Failure {
    message: String,
    code: u8,
    json: Option<serde_json::Value>,
}

impl Failure {
    /// Something wrong with what was given.
    pub fn usage(message: impl Into<String>) -> Self {
        Self { message: message.into(), code: 2, json: None }
    }

    /// A file that cannot be read or written.
    pub fn file(path: &Path, error: &std::io::Error) -> Self {
        Self {
            message: format!("{} cannot be used: {error}. Check the path and its permissions", path.display()),
            code: 5,
            json: None,
        }
    }

    /// Something outside of this program that does not serve.
    pub fn outside(message: impl Into<String>) -> Self {
        Self { message: message.into(), code: 5, json: None }
    }

    /// The same failure, also told as a JSON problem on standard output.
    #[must_use]
    pub fn in_json(mut self, json: bool) -> Self {
        if json {
            self.json = Some(serde_json::json!({
                "type": format!("urn:setwright:problem:{}", self.code),
                "title": "Please check",
                "detail": self.message,
            }));
        }
        self
    }

    /// Tells the person, and gives the exit code.
    pub fn report(self) -> ExitCode {
        if let Some(json) = &self.json {
            println!("{json:#}");
        }
        eprintln!("{:?}", miette::Report::msg(self.message));
        ExitCode::from(self.code)
    }
}

impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.message)
    }
}

impl From<AppError> for Failure {
    fn from(error: AppError) -> Self {
        let code = match error.kind() {
            Kind::Invalid => 2,
            Kind::NotFound => 3,
            Kind::Conflict => 4,
            Kind::Unavailable => 5,
        };
        Self { message: error.to_string(), code, json: None }
    }
}
