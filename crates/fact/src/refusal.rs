//! A refusal: what is wrong, what to do next, and which entry it belongs to.

use crate::{Fact, ToFigure, Told};
use std::fmt;

/// What is wrong, what to do next, and at which entry.
///
/// What to do next usually stands beside the text of the fact itself, as its attribute `next`, and uses the same figures. A
/// step that is known only here, as "did you mean D9.7?", is a fact of its own and stands in its place.
#[derive(Debug, Clone, PartialEq)]
pub struct Refusal(Box<Inner>);

#[derive(Debug, Clone, PartialEq)]
struct Inner {
    fact: Told,
    next: Option<Told>,
    at: Option<String>,
}

impl Refusal {
    /// Code of a refusal that is told as a fact: its figures are `what` and `next`.
    pub const IN_FULL: &str = "refusal.in_full";

    /// Code of what to do next after the fact that is its figure `what`.
    pub const NEXT_OF: &str = "refusal.next_of";

    /// What is wrong.
    #[must_use]
    pub fn new(fact: &impl Fact) -> Self {
        Self(Box::new(Inner { fact: fact.told(), next: None, at: None }))
    }

    /// What to do next, in place of what stands beside the text of the fact.
    #[must_use]
    pub fn next(mut self, next: &impl Fact) -> Self {
        self.0.next = Some(next.told());
        self
    }

    /// At which entry, as a path: `clubs[3].length_mm`.
    #[must_use]
    pub fn at(mut self, path: impl Into<String>) -> Self {
        self.0.at = Some(path.into());
        self
    }

    /// The same within another fact, which has it as its figure `what`: an entry of a list, a row of a file. What to do next
    /// and the entry stay.
    #[must_use]
    pub fn within(mut self, wrap: impl FnOnce(Told) -> Told) -> Self {
        self.0.fact = wrap(self.0.fact);
        self
    }

    /// With another figure in place of the one of this name; where the fact has none, it stays as it is.
    #[must_use]
    pub fn with_figure(mut self, name: &str, value: &impl ToFigure) -> Self {
        self.0.fact.replace(name, value);
        self
    }

    /// What is wrong.
    #[must_use]
    pub fn fact(&self) -> &Told {
        &self.0.fact
    }

    /// What to do next, where the text of the fact does not say it.
    #[must_use]
    pub fn what_next(&self) -> Option<&Told> {
        self.0.next.as_ref()
    }

    /// What to do next as a fact, also where only the text beside the fact says it.
    #[must_use]
    pub fn told_next(&self) -> Told {
        self.0.next.clone().unwrap_or_else(|| Told::new(Self::NEXT_OF).with("what", &self.0.fact))
    }

    /// The path of the entry, where it belongs to one.
    #[must_use]
    pub fn entry(&self) -> Option<&str> {
        self.0.at.as_deref()
    }
}

/// A refusal within another fact, or beside an entry of an answer: `words` tells it in full, with what to do next.
impl Fact for Refusal {
    fn told(&self) -> Told {
        Told::new(Refusal::IN_FULL).with("what", &self.0.fact).with("next", &self.0.next)
    }
}

impl ToFigure for Refusal {
    fn to_figure(&self) -> crate::Figure {
        crate::Figure::Fact(self.told())
    }
}

/// The form of a log.
impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(at) = &self.0.at {
            write!(f, "{at}: ")?;
        }
        write!(f, "{}", self.0.fact)?;
        self.0.next.as_ref().map_or(Ok(()), |next| write!(f, "; next {next}"))
    }
}

impl std::error::Error for Refusal {}
