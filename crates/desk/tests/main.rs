//! The desk, from the fitting sheet to the plan: one program, so that what it is built of is linked once.

mod adapters;
mod due;
mod frequency;
mod front_desk;
mod label;
mod one_mass_model;
mod planning;
mod scale_health;
// The set of irons of the tests of the bench; the bench asks more of it than the planner does.
#[allow(dead_code)]
#[path = "../../bench/tests/set.rs"]
mod set;
mod stock_desk;
