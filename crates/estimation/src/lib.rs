//! What a workshop may honestly believe about the clubs of one job.
//!
//! Every mass and every arm of every club is a number with an uncertainty; what several clubs have in common (the
//! head model's offset, the adhesive of a joint, the tape of a wrap, the cap of a grip, the error of a scale) is a
//! number of the job. A reading of any kind narrows all of them at once, so that finishing one club sharpens the
//! forecast of the others.
//!
//! # The model
//!
//! With the pieces `r` that are on the club, masses `m` in grams and arms `x` in inches from the butt end of the shaft,
//! and the thickness `c` of the grip's cap, which lifts every piece away from the stop as soon as the grip is on,
//!
//! ```text
//! swing weight in points = Σ m_r·(x_r + c·[grip on] − 14) / 49.6117 − 92
//! ```
//!
//! (derived from the trade's scale: A0 is 161 oz·in, one point 1.75 oz·in, so 161 / 1.75 = 92.)
//!
//! # Example
//!
//! ```
//! use estimation::{Club, JobModel, Observation, OnClub, Piece, Prior, Quantity, Role, ScalePrior};
//!
//! let club = Club::new("iron-7", 36.5)
//!     .with_piece(Piece::new(Role::Head, Prior::new(268.0, 0.1), Prior::new(36.6, 0.1)).moving_with_length())
//!     .with_piece(Piece::new(Role::Shaft, Prior::new(110.0, 0.3), Prior::new(17.5, 0.05)));
//! let dry = OnClub::of(&[Role::Head, Role::Shaft]);
//! let mut job = JobModel::default();
//! job.clubs.push(club);
//! job.scales.push(ScalePrior::new("bench").offset_sd(0.2).noise_sd(0.06).resolution(0.1));
//!
//! let before = job.solve(&[])?.forecast("iron-7", &Quantity::SwingWeight, dry, None)?;
//! let reading = Observation::new("r1", Quantity::SwingWeight, 38.2, 0.06).of_club("iron-7", dry).on_scale("bench");
//! let after = job.solve(&[reading])?.forecast("iron-7", &Quantity::SwingWeight, dry, None)?;
//! assert!(after.sd < before.sd);
//! # Ok::<(), estimation::EstimationError>(())
//! ```

mod arrow;
mod belief;
mod budget;
mod carry;
mod club;
mod doubt;
mod drift;
mod error;
mod hypothesis;
mod innovation;
mod job;
mod layout;
mod look;
mod mixture;
mod pieces;
mod predict;
mod reading;
mod rounding;
mod scatter;
mod solve;
mod term;

pub mod capability;
pub mod chart;
pub mod choice;
pub mod conformity;
pub mod gauge_study;
pub mod gls;
pub mod normal;
pub mod share;
pub mod worth;

pub use belief::{Belief, Forecast, Gradient, Joint};
pub use budget::{Contribution, Source};
pub use carry::{Carried, Gaussian, Link};
pub use club::{Club, Datum, OnClub, Piece, Prior, Role, Share};
pub use doubt::{DOUBT_LIMIT, Doubt, NO_DOUBT, Suspect, Suspicion};
pub use drift::Drift;
pub use error::{CovarianceFault, EstimationError};
pub use hypothesis::{Change, Deviations, Effect, Hypothesis, Misread, Outlook, Weighed};
pub use innovation::Innovation;
pub use job::{JobModel, JointPrior, ScalePrior, SharedPrior};
pub use look::Look;
pub use mixture::{Mixture, Normals, Part, WideMean};
pub use pieces::{OwnDeviation, OwnOf, Residual, Whitened};
pub use reading::{Observation, OtherClub, Probe, Quantity, Standing};
pub use scatter::{MeasuredPiece, ScatterBelief, scatter_after};
