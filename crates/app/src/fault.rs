//! What a fault of the program needs for its report, kept where the shop's database lies.

use matching::{DayProblem, MatchError, SetProblem};
use serde::Serialize;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::path::PathBuf;

/// The question of a plan that failed its check.
#[derive(Debug, Clone, Copy, Serialize)]
#[serde(rename_all = "snake_case")]
pub(crate) enum Question<'a> {
    /// Of one set.
    Set(&'a SetProblem),
    /// Of a day.
    Day(&'a DayProblem),
}

#[derive(Serialize)]
struct Kept<'a> {
    /// What went wrong.
    said: &'a str,
    /// Of this program.
    version: &'a str,
    #[serde(flatten)]
    question: Question<'a>,
}

/// Where questions are kept.
#[derive(Debug, Clone)]
pub(crate) struct Faults {
    folder: PathBuf,
}

impl Default for Faults {
    /// Where no other folder is known.
    fn default() -> Self {
        Self { folder: std::env::temp_dir() }
    }
}

impl Faults {
    pub fn in_folder(folder: PathBuf) -> Self {
        Self { folder }
    }

    /// Keeps the question where its plan failed the check, writes it into the log, and says in the error where it is.
    /// Every other error is passed on as it is.
    pub fn keep(&self, error: MatchError, question: Question<'_>) -> MatchError {
        let MatchError::CheckFailed(said) = error else { return error };
        let kept = Kept { said: &said, version: env!("CARGO_PKG_VERSION"), question };
        let written = serde_json::to_vec(&kept).map_err(std::io::Error::other).and_then(|text| {
            let mut hash = DefaultHasher::new();
            text.hash(&mut hash);
            // One file for one question, however often it is asked.
            let file = self.folder.join(format!("setwright-fault-{:016x}.json", hash.finish()));
            std::fs::write(&file, text).map(|()| file)
        });
        let told = match written {
            Ok(file) => format!("{said}. The figures are kept in {}", file.display()),
            Err(error) => format!("{said}. The figures could not be kept in {}: {error}", self.folder.display()),
        };
        tracing::error!("a plan failed its check: {told}");
        MatchError::CheckFailed(told)
    }
}

#[cfg(test)]
mod tests {
    use super::{Faults, Question};
    use matching::instance::{Variant, set};
    use matching::{Limits, MatchError, SetProblem, solve_set};

    #[test]
    fn the_question_of_a_failed_check_is_kept_and_can_be_asked_again() {
        let folder = tempfile::tempdir().expect("a folder");
        let faults = Faults::in_folder(folder.path().to_owned());
        let problem = set(3, Variant::Plain);
        let keep = || faults.keep(MatchError::CheckFailed("made to fail".into()), Question::Set(&problem));
        let MatchError::CheckFailed(told) = keep() else { panic!("still a failed check") };
        assert_eq!(keep(), MatchError::CheckFailed(told.clone()), "the same question, the same file");
        let files: Vec<_> =
            std::fs::read_dir(folder.path()).expect("read").map(|f| f.expect("a file").path()).collect();
        let [file] = files.as_slice() else { panic!("{files:?}") };
        assert_eq!(told, format!("made to fail. The figures are kept in {}", file.display()));
        let kept: serde_json::Value = serde_json::from_slice(&std::fs::read(file).expect("read")).expect("a document");
        assert_eq!(kept["said"], "made to fail");
        let again: SetProblem = serde_json::from_value(kept["set"].clone()).expect("the question");
        assert_eq!(again, problem, "figure by figure");
        assert_eq!(solve_set(&again, Limits::default()), solve_set(&problem, Limits::default()));
    }

    #[test]
    fn what_cannot_be_kept_is_told_and_other_errors_are_passed_on() {
        let faults = Faults::in_folder("/nowhere/at/all".into());
        let problem = set(3, Variant::Plain);
        let MatchError::CheckFailed(told) =
            faults.keep(MatchError::CheckFailed("made to fail".into()), Question::Set(&problem))
        else {
            panic!("still a failed check")
        };
        assert!(told.starts_with("made to fail. The figures could not be kept in /nowhere/at/all: "), "{told}");
        assert_eq!(faults.keep(MatchError::NoClubs, Question::Set(&problem)), MatchError::NoClubs);
    }
}
