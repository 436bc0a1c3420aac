//! What happened or was found, as data: a code and its figures, without a sentence.
//!
//! A calculation, a check or a refusal ends in a *fact*. The crate `words` turns it into a sentence in the units and the
//! language of whoever reads it; a program reads the code and the figures as they are. The unit of a figure stands at the end
//! of its name, as everywhere: `by_deg`, `mass_g`, `length_mm`, `off_points`.
//!
//! # Examples
//!
//! ```
//! use fact::Fact;
//!
//! fact::facts! {
//!     /// What the check of a loft finds.
//!     pub enum LoftCheck: "loft_check" {
//!         /// The loft is weaker than the head may be bent.
//!         Weak {
//!             /// How much, degrees.
//!             by_deg: f64,
//!             /// What the maker allows, degrees.
//!             limit_deg: f64,
//!         },
//!         /// Nothing to do.
//!         Good,
//!     }
//! }
//!
//! let told = LoftCheck::Weak { by_deg: 9.5, limit_deg: 3.0 }.told();
//! assert_eq!(told.code(), "loft_check.weak");
//! assert_eq!(serde_json::to_value(&told)?["figures"]["by_deg"], 9.5);
//! # Ok::<(), serde_json::Error>(())
//! ```

mod macros;
mod measure;
mod refusal;
mod told;

pub use measure::Measure;
pub use refusal::Refusal;
pub use told::{Figure, ToFigure, Told, schema_where_any};

// For the macro.
#[doc(hidden)]
pub use {serde, utoipa};

/// Something that can be told: a code and its figures.
pub trait Fact {
    /// The fact as data.
    fn told(&self) -> Told;
}

/// An enumeration of facts whose members are known beforehand, so that a test can see that each has its text.
pub trait Facts: Fact {
    /// What they are about; the first half of each code.
    const AREA: &'static str;
    /// Each member's name in the source, with the names of its figures.
    const MEMBERS: &'static [(&'static str, &'static [&'static str])];

    /// Each code with the names of its figures.
    #[must_use]
    fn codes() -> Vec<(String, &'static [&'static str])> {
        Self::MEMBERS.iter().map(|(member, figures)| (told::code_of(Self::AREA, member), *figures)).collect()
    }
}

/// How an answer of the API describes these facts.
#[doc(hidden)]
#[must_use]
pub fn schema_of<F: Facts>() -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
    told::schema(&F::codes().into_iter().map(|(code, _)| code).collect::<Vec<_>>())
}

impl Fact for Told {
    fn told(&self) -> Told {
        self.clone()
    }
}

impl<F: Fact> Fact for &F {
    fn told(&self) -> Told {
        (*self).told()
    }
}
