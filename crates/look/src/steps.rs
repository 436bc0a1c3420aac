//! The slim line of steps: what is behind, the one at hand, what is ahead.

use maud::{Markup, html};
use words::{Words, text};

use super::icons::{Icon, icon};

/// Where a step stands.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub enum StepState {
    /// Not yet.
    #[default]
    Open,
    /// The one shown now.
    Current,
    /// Finished.
    Done,
    /// Left out; the band is wider for it.
    Skipped,
    /// Has a doubted reading.
    Doubted,
}

/// One step in a [`step_line`].
#[derive(Debug, Clone, Copy, Default)]
pub struct Step<'a> {
    /// Its name.
    pub label: &'a str,
    /// Where it leads.
    pub href: &'a str,
    /// Where it stands.
    pub state: StepState,
}

impl StepState {
    const fn class(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::Current => "current",
            Self::Done => "done",
            Self::Skipped => "skipped",
            Self::Doubted => "doubt",
        }
    }

    /// The word for it, read out; none where it goes without saying.
    const fn word(self) -> Option<&'static str> {
        match self {
            Self::Open | Self::Current => None,
            Self::Done => Some("step-done"),
            Self::Skipped => Some("step-left-out"),
            Self::Doubted => Some("step-doubted"),
        }
    }
}

/// The steps of a job on one line; any of them can be opened in any order. A phone shows the one at hand with its
/// neighbours, and all of them on a touch.
#[must_use]
pub fn step_line(w: &Words, steps: &[Step<'_>]) -> Markup {
    let at = steps.iter().position(|step| step.state == StepState::Current);
    html! {
        nav.step-line aria-label=(w.text("step-row")) {
            ol { @for step in steps { li.(step.state.class()) { (link(w, step)) } } }
            @if let Some(at) = at {
                details.step-all {
                    summary { (text!(w, "step-of", at = (at + 1) as i64, n = steps.len() as i64)) }
                    ol { @for step in steps { li.(step.state.class()) { (link(w, step)) } } }
                }
            }
        }
    }
}

fn link(w: &Words, step: &Step<'_>) -> Markup {
    let current = (step.state == StepState::Current).then_some("step");
    html! {
        a.step href=(step.href) aria-current=[current] {
            span { (step.label) }
            @if let Some(word) = step.state.word() { span.hidden { ", " (w.text(word)) } }
            @if step.state == StepState::Doubted { (icon(Icon::Doubt)) } @else { span.dot aria-hidden="true" {} }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use quantity::Units;

    #[test]
    fn a_state_is_told_by_a_mark_and_a_word() {
        let step = |label, state| Step { label, href: "/a", state };
        let steps =
            [step("cut", StepState::Done), step("dry", StepState::Current), step("tip weight", StepState::Doubted)];
        let text = step_line(&Words::english(Units::default()), &steps).into_string();
        assert!(text.contains("<li class=\"done\">") && text.contains(", done"), "{text}");
        assert!(text.contains("<svg") && text.contains(", doubted"), "{text}");
        assert!(text.contains("<summary>2 of 3</summary>"), "{text}");
        assert_eq!(text.matches("aria-current=\"step\"").count(), 2, "in the line and among all: {text}");
    }
}
