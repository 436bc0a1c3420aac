//! The one place that turns an error into words on the terminal and an exit code.

use app::{AppError, Kind};
use std::fmt;
use std::io::Write;
use std::path::Path;
use std::process::ExitCode;

/// Exit codes: 2 for what was given, 3 for what is not there, 4 for what somebody else has or what must wait, 5 for a
/// store or file that cannot serve, 6 for a mistake of the program itself.
#[derive(Debug)]
pub struct Failure {
    message: String,
    code: u8,
    /// Short, stable name of the kind of failure, the same as in the API.
    kind: &'static str,
    /// The field that it belongs to, where there is one.
    field: Option<String>,
    /// Whether the answer on standard output says it already.
    answered: bool,
    json: bool,
}

impl Failure {
    fn new(code: u8, kind: &'static str, message: impl Into<String>) -> Self {
        Self { message: message.into(), code, kind, field: None, answered: false, json: false }
    }

    /// Something wrong with what was given.
    pub fn usage(message: impl Into<String>) -> Self {
        Self::new(2, "invalid", message)
    }

    /// A file that cannot be read or written.
    pub fn file(path: &Path, error: &std::io::Error) -> Self {
        Self::new(5, "file", format!("{} cannot be used: {error}. Check the path and its permissions", path.display()))
    }

    /// Something outside of this program that does not serve.
    pub fn outside(message: impl Into<String>) -> Self {
        Self::new(5, "outside", message)
    }

    /// Something that must be said again before it is done.
    pub fn conflict(message: impl Into<String>) -> Self {
        Self::new(4, "conflict", message)
    }

    /// The document on standard output is the whole answer: no problem document follows it.
    #[must_use]
    pub fn answered(mut self) -> Self {
        self.answered = true;
        self
    }

    /// The same failure with one more sentence.
    #[must_use]
    pub fn adding(mut self, sentence: &str) -> Self {
        self.message = format!("{}. {sentence}", self.message.trim_end_matches('.'));
        self
    }

    /// Whether what was named is not there.
    pub const fn is_missing(&self) -> bool {
        self.code == 3
    }

    /// The same failure, also told as a JSON problem on standard output.
    #[must_use]
    pub fn in_json(mut self, json: bool) -> Self {
        self.json = json;
        self
    }

    /// The problem document, in the form that the API gives it.
    fn problem(&self) -> serde_json::Value {
        let title = match self.code {
            2 => "Please check",
            3 => "Not there",
            4 => "Not now",
            6 => "Our mistake",
            _ => "Cannot serve",
        };
        let mut problem = serde_json::json!({
            "type": format!("urn:setwright:problem:{}", self.kind),
            "title": title,
            "detail": self.message,
            "exit_code": self.code,
        });
        if let Some(field) = &self.field {
            problem["field"] = field.as_str().into();
        }
        problem
    }

    /// Tells the person, and gives the exit code.
    pub fn report(self) -> ExitCode {
        if self.json && !self.answered {
            // Standard output may be what failed; the words below are told all the same.
            let _ = writeln!(std::io::stdout(), "{:#}", self.problem());
        }
        let _ = writeln!(std::io::stderr(), "{:?}", miette::Report::msg(self.message));
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
            Kind::Fault => 6,
        };
        Self { field: error.field().map(str::to_owned), ..Self::new(code, error.code(), error.to_string()) }
    }
}

#[cfg(test)]
mod tests {
    use super::Failure;
    use app::AppError;
    use trade::error::TradeError;

    /// A mistake of the program is told as such, to people and to programs, and not as theirs.
    #[test]
    fn a_mistake_of_the_program_has_an_exit_code_of_its_own() {
        let error = TradeError::Fault("the plan failed its check".into());
        let problem = Failure::from(AppError::Trade(error)).problem();
        assert_eq!(problem["exit_code"], 6);
        assert_eq!(problem["type"], "urn:setwright:problem:internal");
        assert_eq!(problem["title"], "Our mistake");
        assert_eq!(Failure::from(AppError::Internal("the search stopped".into())).problem()["exit_code"], 6);
    }
}
