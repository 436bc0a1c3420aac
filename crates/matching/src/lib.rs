//! Which part goes into which club.

mod branch;
mod check;
mod climb;
mod compile;
mod diagnose;
mod dive;
mod error;
mod exact;
mod grid;
pub mod instance;
mod loss;
mod model;
mod oracle;
mod plan;
mod reduce;
mod set;
mod solution;
mod stockleft;
mod table;
mod windows;

pub use error::{MatchError, PartKind};
pub use loss::{GripStillToChoose, Loss, LossForm, STEP_POINTS};
pub use model::{
    Candidate, ClubNeed, CostWeights, DayProblem, HeadScale, JobSet, MassTarget, SetProblem, Stock, Tip, TipFit,
};
pub use set::{Limits, Progress, solve_set, solve_set_watched};
pub use solution::{Choice, ClubCost, HeadWindow, SetSolution, Unbuildable, Why};
