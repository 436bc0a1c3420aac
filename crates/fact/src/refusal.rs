//! A refusal: what is wrong, what to do next, and which entry it belongs to.

use crate::{Fact, Figure, ToFigure, Told};
use std::fmt;

/// What is wrong, what to do next, and at which entry.
#[derive(Debug, Clone, PartialEq)]
pub struct Refusal(Box<Inner>);

#[derive(Debug, Clone, PartialEq)]
struct Inner {
    fact: Told,
    next: Option<Told>,
    at: Option<String>,
}

impl Refusal {
    /// What is wrong.
    #[must_use]
    pub fn new(fact: &impl Fact) -> Self {
        Self(Box::new(Inner { fact: fact.told(), next: None, at: None }))
    }

    /// What to do next.
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

    /// What is wrong.
    #[must_use]
    pub fn fact(&self) -> &Told {
        &self.0.fact
    }

    /// What to do next, where there is something.
    #[must_use]
    pub fn what_next(&self) -> Option<&Told> {
        self.0.next.as_ref()
    }

    /// The path of the entry, where it belongs to one.
    #[must_use]
    pub fn entry(&self) -> Option<&str> {
        self.0.at.as_deref()
    }
}

/// A refusal within another fact: its parts are its figures.
impl Fact for Refusal {
    fn told(&self) -> Told {
        match &self.0.next {
            None => self.0.fact.clone(),
            Some(next) => Told::new("refusal.with_next").with("what", &self.0.fact).with("next", &next.to_figure()),
        }
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

impl ToFigure for Refusal {
    fn to_figure(&self) -> Figure {
        Figure::Fact(self.told())
    }
}
