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
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::{Refusal, Told};
    ///
    /// let refusal = Refusal::new(&Told::new("entry.missing").with("field", "mass_g"));
    /// assert_eq!(refusal.fact().code(), "entry.missing");
    /// assert_eq!(refusal.to_string(), "entry.missing (field: “mass_g”)");
    /// ```
    #[must_use]
    pub fn new(fact: &impl Fact) -> Self {
        Self(Box::new(Inner { fact: fact.told(), next: None, at: None }))
    }

    /// What to do next, in place of what stands beside the text of the fact.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::{Refusal, Told};
    ///
    /// let refusal = Refusal::new(&Told::new("swing_weight.unreadable")).next(&Told::new("did_you_mean").with("text", "D9.7"));
    /// assert_eq!(refusal.what_next().map(Told::code), Some("did_you_mean"));
    /// ```
    #[must_use]
    pub fn next(mut self, next: &impl Fact) -> Self {
        self.0.next = Some(next.told());
        self
    }

    /// At which entry, as a path: `clubs[3].length_mm`.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::{Refusal, Told};
    ///
    /// let refusal = Refusal::new(&Told::new("entry.missing")).at("clubs[3].length_mm");
    /// assert_eq!(refusal.entry(), Some("clubs[3].length_mm"));
    /// assert_eq!(refusal.to_string(), "clubs[3].length_mm: entry.missing");
    /// ```
    #[must_use]
    pub fn at(mut self, path: impl Into<String>) -> Self {
        self.0.at = Some(path.into());
        self
    }

    /// The same within another fact, which has it as its figure `what`: an entry of a list, a row of a file. What to do next
    /// and the entry stay.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::{Refusal, Told};
    ///
    /// let cell = Refusal::new(&Told::new("entry.missing")).at("mass");
    /// let row = cell.within(|what| Told::new("row.line").with("line", &3_usize).with("what", &what));
    /// assert_eq!(row.fact().to_string(), "row.line (line: 3, what: entry.missing)");
    /// assert_eq!(row.entry(), Some("mass"));
    /// ```
    #[must_use]
    pub fn within(mut self, wrap: impl FnOnce(Told) -> Told) -> Self {
        self.0.fact = wrap(self.0.fact);
        self
    }

    /// With another figure in place of the one of this name; where the fact has none, it stays as it is.
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::{Refusal, Told};
    ///
    /// let refusal = Refusal::new(&Told::new("entry.too_large").with("value", "5000"));
    /// let shown = refusal.with_figure("value", &"5 kg".to_owned()).with_figure("limit", &"600 g".to_owned());
    /// assert_eq!(shown.fact().to_string(), "entry.too_large (value: “5 kg”)");
    /// ```
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
    ///
    /// # Examples
    ///
    /// ```
    /// use fact::{Refusal, Told};
    ///
    /// // The text of the fact says what to do: whoever shows this finds it there.
    /// let refusal = Refusal::new(&Told::new("entry.missing"));
    /// assert_eq!(refusal.told_next().to_string(), "refusal.next_of (what: entry.missing)");
    /// ```
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
