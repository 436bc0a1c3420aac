//! What a tablet keeps of itself: its colours, how it prints decimals, its keys. Known to every page of one request without
//! being handed through all of them, as none is about it.

use crate::cookies::{self, brought};
use axum::http::HeaderMap;
use axum::http::header::ACCEPT_LANGUAGE;
use look::Tablet;
use words::Language;

tokio::task_local! {
    static TABLET: Tablet;
    static DONE: Option<Done>;
}

/// What was just done, for the page that follows: a sentence confirms it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Done {
    Saved,
    Approved,
    Held,
    GivenUp,
    Noted,
    Ordered,
    OrderClosed,
    Corrected,
    Passed,
    BatchRuns,
    BatchBack,
    Removed,
    Marked,
    MarkCleared,
}

impl Done {
    const ALL: [Self; 14] = [
        Self::Saved,
        Self::Approved,
        Self::Held,
        Self::GivenUp,
        Self::Noted,
        Self::Ordered,
        Self::OrderClosed,
        Self::Corrected,
        Self::Passed,
        Self::BatchRuns,
        Self::BatchBack,
        Self::Removed,
        Self::Marked,
        Self::MarkCleared,
    ];

    /// Name of its text.
    pub(crate) const fn text(self) -> &'static str {
        match self {
            Self::Saved => "done-saved",
            Self::Approved => "done-approved",
            Self::Held => "done-held",
            Self::GivenUp => "done-given-up",
            Self::Noted => "done-noted",
            Self::Ordered => "done-ordered",
            Self::OrderClosed => "done-order-closed",
            Self::Corrected => "done-corrected",
            Self::Passed => "done-passed",
            Self::BatchRuns => "done-batch-runs",
            Self::BatchBack => "done-batch-back",
            Self::Removed => "done-removed",
            Self::Marked => "done-marked",
            Self::MarkCleared => "done-mark-cleared",
        }
    }
}

/// What the tablet was told to confirm on this page.
pub(crate) fn done() -> Option<Done> {
    DONE.try_with(|done| *done).ok().flatten()
}

/// What a request has to confirm.
pub(crate) fn done_of(headers: &HeaderMap) -> Option<Done> {
    let name = brought(headers, cookies::DONE)?;
    Done::ALL.into_iter().find(|done| done.text() == name)
}

/// That of whoever asked; outside of a request, the settings that a new tablet has.
pub(crate) fn here() -> Tablet {
    TABLET.try_with(Clone::clone).unwrap_or_default()
}

/// Answers a request for a tablet.
pub(crate) async fn on<F: Future>(tablet: Tablet, done: Option<Done>, answer: F) -> F::Output {
    TABLET.scope(tablet, DONE.scope(done, answer)).await
}

/// What a request brings.
pub(crate) fn of(headers: &HeaderMap) -> Tablet {
    let theme = brought(headers, cookies::THEME);
    Tablet {
        theme: ["light", "dark"].into_iter().find(|name| theme.as_deref() == Some(*name)),
        letters_off: brought(headers, cookies::LETTERS).as_deref() == Some("off"),
        pedal: brought(headers, cookies::PEDAL).filter(|key| can_be_pedal(key)),
    }
}

/// Whether decimals are printed with a comma, where the tablet does not leave it to its language.
pub(crate) fn decimal_comma(headers: &HeaderMap) -> Option<bool> {
    match brought(headers, cookies::DECIMAL)?.as_str() {
        "comma" => Some(true),
        "point" => Some(false),
        _ => None,
    }
}

/// The language that the tablet was set to, if any.
pub(crate) fn language_kept(headers: &HeaderMap) -> Option<&'static Language> {
    brought(headers, cookies::LANGUAGE).and_then(|code| Language::of(&code))
}

/// The language that the tablet was set to; else the first that its browser asks for and there is.
pub(crate) fn language(headers: &HeaderMap) -> &'static Language {
    language_kept(headers).unwrap_or_else(|| {
        let wish = headers.get(ACCEPT_LANGUAGE).and_then(|wish| wish.to_str().ok());
        Language::asked(wish.unwrap_or_default())
    })
}

/// Whether a key may be the pedal, by its name in browsers: not one that types a letter, moves the cursor or already has a
/// meaning in an entry.
pub(crate) fn can_be_pedal(key: &str) -> bool {
    const OTHERWISE: [&str; 19] = [
        "Enter",
        "Tab",
        "Shift",
        "Control",
        "Alt",
        "AltGraph",
        "Meta",
        "Escape",
        "Backspace",
        "Delete",
        "ArrowLeft",
        "ArrowRight",
        "ArrowUp",
        "ArrowDown",
        "Home",
        "End",
        "Dead",
        "Process",
        "Unidentified",
    ];
    let named = key.len() > 1 && key.len() <= 24 && key.bytes().all(|b| b.is_ascii_alphanumeric());
    named && !OTHERWISE.contains(&key)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_that_types_or_moves_the_cursor_is_no_pedal() {
        for key in ["PageDown", "F7", "F13", "Pause", "Insert", "ScrollLock", "AudioVolumeUp"] {
            assert!(can_be_pedal(key), "{key}");
        }
        for key in ["", "b", "Enter", "Tab", "ArrowLeft", "Shift", "<b>x</b>", "a b", "é"] {
            assert!(!can_be_pedal(key), "{key}");
        }
    }

    #[tokio::test]
    async fn a_request_knows_its_tablet_and_nobody_else_does() {
        let mut headers = HeaderMap::new();
        headers.insert(axum::http::header::COOKIE, "theme=dark; letters=off; pedal=PageDown".parse().unwrap());
        let tablet = of(&headers);
        assert_eq!((tablet.theme, tablet.letters_off, tablet.pedal.as_deref()), (Some("dark"), true, Some("PageDown")));
        assert_eq!(on(tablet.clone(), None, async { here() }).await, tablet);
        assert_eq!(here(), Tablet::default());
    }
}
