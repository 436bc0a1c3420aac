//! What a simulation refuses.

use thiserror::Error;
use trade::error::TradeError;

/// Why a simulation could not be run.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum SimulationError {
    /// A setting out of its range.
    #[error("{what} is {value}: it must lie between {low} and {high}. Change it and start again")]
    Setting {
        /// Which setting.
        what: &'static str,
        /// Value that was given.
        value: f64,
        /// Lowest value.
        low: f64,
        /// Highest value.
        high: f64,
    },
    /// The advice failed on a simulated job.
    #[error(
        "job {job} of shop {shop}, {way}: {source}. This is a fault of the program: please report it with the seed"
    )]
    Advice {
        /// Shop.
        shop: u64,
        /// Job in the shop.
        job: u64,
        /// Which strategy.
        way: &'static str,
        /// What the workshop said.
        source: Box<TradeError>,
    },
    /// A plan left a club of a simulated job without parts.
    #[error("job {job} of shop {shop}: no parts for club {club}. This is a fault of the simulation: please report it")]
    Unplanned {
        /// Shop.
        shop: u64,
        /// Job in the shop.
        job: u64,
        /// Number of the club.
        club: String,
    },
}
