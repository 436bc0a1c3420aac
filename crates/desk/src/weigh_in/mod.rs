//! Weigh-in: whether a part weighs what its model and number weigh, or what else it looks like.
//!
//! A part that is put into the wrong tray is found out at its weighing: the heads of a set lie some grams apart, and
//! those of one number scatter by less. Each explanation — it is what was said, it is the number beside it, another
//! model, its film or label is still on, the pan was not empty — gives the mass a density; Bayes' rule turns the
//! densities into odds.

mod bend;
mod judge;
mod spread;

pub use bend::{BendDoubt, bend_doubts};
pub use judge::{Judged, Likely, LikelyFact, Looks, MassFinding, MassNext, judge};
pub use spread::{Spread, spread};
