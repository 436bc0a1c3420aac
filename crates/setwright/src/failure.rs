//! The one place that turns an error into words on the terminal and an exit code.

use crate::reader::language;
use app::{AppError, Kind};
use fact::{Fact, Refusal, Told};
use jiff::tz::TimeZone;
use std::fmt;
use std::io::Write;
use std::path::Path;
use std::process::ExitCode;
use words::{Words, text};

/// Exit codes: 2 for what was given, 3 for what is not there, 4 for what somebody else has or what must wait, 5 for a
/// store or file that cannot serve, 6 for a mistake of the program itself.
#[derive(Debug)]
pub struct Failure {
    refusal: Box<Refusal>,
    /// A sentence after it.
    more: Option<Told>,
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
    fn new(code: u8, kind: &'static str, refusal: impl Into<Refusal>) -> Self {
        let refusal = Box::new(refusal.into());
        Self { refusal, more: None, code, kind, field: None, answered: false, json: false }
    }

    /// Something wrong with what was given.
    pub fn usage(refusal: impl Into<Refusal>) -> Self {
        Self::new(2, "invalid", refusal)
    }

    /// A file that cannot be read or written.
    pub fn file(path: &Path, error: &std::io::Error) -> Self {
        Self::new(5, "file", CommandFault::File { path: path.display().to_string(), log: error.to_string() })
    }

    /// Something outside of this program that does not serve.
    pub fn outside(refusal: impl Into<Refusal>) -> Self {
        Self::new(5, "outside", refusal)
    }

    /// Something that must be confirmed before it is done.
    pub fn conflict(refusal: impl Into<Refusal>) -> Self {
        Self::new(4, "conflict", refusal)
    }

    /// The document on standard output is the whole answer: no problem document follows it.
    #[must_use]
    pub fn answered(mut self) -> Self {
        self.answered = true;
        self
    }

    /// The same failure with one more sentence.
    #[must_use]
    pub fn adding(mut self, sentence: &impl Fact) -> Self {
        self.more = Some(sentence.told());
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

    /// The whole message in words.
    fn message(&self, words: &Words) -> String {
        let message = words.refusal(&self.refusal);
        match &self.more {
            Some(more) => text!(words, "refusal-with-next", what = message, next = words.told(more)),
            None => message,
        }
    }

    /// The problem document, in the form that the API gives it.
    fn problem(&self, words: &Words) -> serde_json::Value {
        let title = words.tell(&match self.code {
            2 => FailureTitle::Check,
            3 => FailureTitle::NotFound,
            4 => FailureTitle::Conflict,
            6 => FailureTitle::Internal,
            _ => FailureTitle::Outside,
        });
        let mut fact = serde_json::to_value(self.refusal.fact()).unwrap_or_default();
        words::speak(&mut fact, words);
        let mut problem = serde_json::json!({
            "type": format!("urn:setwright:problem:{}", self.kind),
            "title": title,
            "detail": self.message(words),
            "code": self.refusal.fact().code(),
            "figures": fact["figures"].take(),
            "exit_code": self.code,
        });
        if let Some(next) = words.next(&self.refusal) {
            problem["next"] = next.into();
        }
        if let Some(field) = &self.field {
            problem["field"] = field.as_str().into();
        }
        problem
    }

    /// Tells the person, and gives the exit code.
    pub fn report(self) -> ExitCode {
        let words = of_documents();
        if self.json && !self.answered {
            // Standard output may be what failed; the words below are told all the same.
            let _ = writeln!(std::io::stdout(), "{:#}", self.problem(&words));
        }
        let _ = writeln!(std::io::stderr(), "{:?}", miette::Report::msg(self.message(&words)));
        ExitCode::from(self.code)
    }
}

/// The form of a log.
impl fmt::Display for Failure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.refusal.fmt(f)
    }
}

/// The words of the command line: its documents carry millimetres and grams in the names of their fields, so that what is
/// refused is told in them too.
fn of_documents() -> Words {
    Words::of_documents(language(), TimeZone::system())
}

impl From<AppError> for Failure {
    fn from(error: AppError) -> Self {
        let code = match error.kind() {
            Kind::Invalid => 2,
            Kind::NotFound => 3,
            Kind::Conflict | Kind::Forbidden => 4,
            Kind::Unavailable => 5,
            Kind::Fault => 6,
        };
        Self { field: error.field().map(str::to_owned), ..Self::new(code, error.code(), error.refusal()) }
    }
}

fact::facts! {
    /// What sort of failure, in a few words.
    enum FailureTitle: "failure_title" {
        Check,
        NotFound,
        Conflict,
        Internal,
        Outside,
    }
}

fact::facts! {
    /// What the command line itself refuses.
    pub(crate) enum CommandFault: "command_fault" {
        File { path: String, log: String },
        Arguments { text: String },
        DemoIsAt { place: String },
        SayReplace { backup: String },
        ShopDamaged { path: String, log: String },
        FormerShop { file: String, place: String },
        Config { path: String, log: String },
        NoHome,
        MachineName { name: String },
        Questioned { what: Told, next: Option<Told> },
        CheckQuestion { what: Told, next: Told },
        NotADate { text: String },
        NotASize { text: String, example: String },
        NotJobCount { text: String },
        NotSlotCode { text: String },
        NotAPick { text: String },
        NothingRead { job: i64, slot: i64 },
        NoneOf { text: String, known: Vec<String> },
        NotADocument { path: String, log: String },
        NotASheet { path: String, what: Told },
        NotPrices { path: String, what: Told },
        SheetStops { n: usize },
        SealBroken { n: usize },
        NotAParity { text: String },
        PortNeverOpened { log: String },
        RowsRefused { n: usize },
        NotUtf8,
        NoEqualSign { option: String, text: String, example: String },
        OptionTwice { option: String, name: String },
        NoCodes,
        Unwritable { log: String },
        AnswerUnwritable { log: String },
        ListenTaken { place: String, log: String },
        ListenUnknown { place: String, log: String },
        OpenToNetwork { place: String },
        HalfACertificate,
        NoAddress { log: String },
        ServingEnded { log: String },
        Threads { log: String },
        NoRecording { topic: String },
        Input { log: String },
        InputNotJson { topic: String, what: Told },
        Simulation { what: Told },
        NoTrouble { key: String, known: Vec<String> },
        NotInList { key: String, known: Vec<String> },
        NoBuilder { name: String, known: Vec<String> },
        NoDeed { text: String },
        NotASupply { text: String },
        NoSet,
        NotAWeight { text: String },
        NotALock { text: String },
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
        let problem = Failure::from(AppError::Trade(error)).problem(&super::of_documents());
        assert_eq!(problem["exit_code"], 6);
        assert_eq!(problem["type"], "urn:setwright:problem:internal");
        assert_eq!(problem["title"], "Internal error");
        assert_eq!(
            Failure::from(AppError::Internal("the search stopped".into())).problem(&super::of_documents())["exit_code"],
            6
        );
    }
}
