//! Simulated shops: what advice at the bench is worth.
//!
//! A shop's true values, its days, its parts and its hands are drawn from stated distributions ([`shop`]); true clubs are
//! weighed up by this crate's own physics ([`club`]); instruments add offset, drift, noise and rounding ([`scale`]).
//! Builders of several kinds build the same jobs ([`hands`], [`mod@bench`]) and are judged by the true swing weight ([`tally`],
//! [`mod@report`]). Pure: no I/O, no clock; the seed is a setting, and the result does not depend on who runs which group.

pub mod advice;
pub mod bench;
pub mod blunder;
pub mod club;
pub mod draw;
pub mod error;
pub mod frequency;
pub mod group;
pub mod hands;
pub mod job;
pub mod kind;
pub mod models;
pub mod past;
pub mod report;
pub mod scale;
pub mod settings;
pub mod sheet;
pub mod shop;
pub mod tally;
mod told;

pub use error::{Setting, SimulationError};
pub use group::{Outcome, STRATEGIES, Strategy, run_group};
pub use report::{Report, report};
pub use settings::{Reference, Settings, Trouble, World};

/// What the check weight says of itself, points since A0.
pub const CHECK_POINTS: f64 = 31.4;
