//! Which part goes into which club.
//!
//! A shop weighs heads, shafts and grips piece by piece and picks the combination that lands every club on its target
//! with the least help. This crate answers that question for one set ([`solve_set`], proven optimum) and for a day's jobs
//! on shared stock ([`solve_day`], a plan with a proven lower bound, at any time). It knows nothing of golf beyond
//! "deviations in points add up": the caller says what each part contributes in each club, what a deviation costs, and
//! what is in stock.
//!
//! # Cost
//!
//! One unit is one club that certainly misses its tolerance. A club costs its expected miss ([`Loss`]), its tip weight
//! and a second piece of it, its mass off target and its candidates' extra costs; a set costs the range of its shafts' masses about the model's
//! own slope; an unbuilt club costs far more than any of these ([`CostWeights`]). Each of these is rounded to
//! whole quanta in one place that search, bound, check and answer share, so that "proven" means exactly that.
//!
//! # Method
//!
//! Parts that read the same in every club are one type with a count. For given prices of types the clubs of a set are
//! independent inside a window of shaft residuals, and what a club costs depends on its shaft and grip only through
//! their sum of points; so tip weights are folded into the loss, heads into that, and a small table of shafts × grips is
//! left. Prices follow from Lagrangian relaxation of the counts.
//!
//! - Relaxation and subgradient steps: Held & Karp, *Mathematical Programming* 1 (1971); step length: Polyak, *USSR
//!   Computational Mathematics* 9 (1969); fixing by reduced cost is common practice.
//! - One set: bounds by window, reduced-cost fixing, branch and bound on the lumpy quantity (tip weight), depth-first
//!   closing. Without the range it is an axial assignment problem in up to four indices; for three see Burkard, Dell'Amico
//!   & Martello, *Assignment Problems* (2009), chapter 10.
//! - How many sets there are shafts of nearly the same residual for: rounded inequalities over sets (Chvátal 1973), priced
//!   as charges on windows; see `cuts`. They close most of the relaxation's gap.
//! - A day: surrogate subgradient (Zhao, Luh & Wang, *JOTA* 100, 1999), ruin and recreate (Schrimpf et al., *J. Comp.
//!   Physics* 159, 2000) with "blinks" (Christiaens & Vanden Berghe, *Transportation Science* 54, 2020), accepted by
//!   simulated annealing.
//! - Too few parts: clubs that vie for them are found by bipartite matching and Hall's theorem (*J. London Math. Soc.* 10,
//!   1935), and how many of them stay unbuilt is an inequality whose price is found by a search along a line; the common
//!   level of the prices of parts that stand in for each other is set exactly. See `shortage`, `crowd` and `level`.
//!
//! All sources from memory. Every plan is checked before it is returned, by code that shares nothing with the search but
//! what a single cost comes to, and must cost what the search says to the quantum.
//!
//! # Limits
//!
//! The day's bound is that of the relaxation; how far plan and bound lie apart, by kind of day and time, is measured in
//! `benches/README.md`. A mass target ([`MassTarget`]) takes the table's shortcut away (see `rows`). From thousands of parts
//! that all differ a selection is planned (see `thin`): a good plan soon and a bound from all parts, seldom a proof.
//! `docs/matching.md` has the integer programme and the argument for the bound.

mod apart;
mod assign;
mod branch;
mod chain;
mod charges;
mod check;
mod climb;
mod compile;
mod compiled;
mod cost;
mod crowd;
mod cuts;
mod day;
mod deal;
mod diagnose;
mod dive;
mod dual;
mod error;
mod exact;
// These two are named by examples of what must not compile, and by nothing else outside this crate.
#[doc(hidden)]
pub mod grid;
#[doc(hidden)]
pub mod index;
mod insert;
#[cfg(any(test, feature = "instance"))]
pub mod instance;
mod left;
mod level;
mod loss;
mod mass;
mod model;
mod narrow;
mod oracle;
mod plan;
mod pool;
mod prices;
mod reduce;
mod rng;
mod rows;
mod ruin;
mod set;
mod settle;
mod shortage;
mod solution;
mod stockleft;
mod table;
mod tension;
mod thin;
mod whatif;
mod whole;
mod windows;

pub use assign::assign;
pub use day::solve_day;
pub use error::{Asked, MatchError, PartKind};
pub use loss::{GripStillToChoose, Loss, LossForm, STEP_POINTS};
pub use model::{
    Candidate, ClubNeed, CostWeights, DayProblem, HeadScale, JobSet, MassTarget, SetProblem, Stock, Tip, TipFit,
    TipPair,
};
pub use set::{Limits, Progress, solve_set, solve_set_watched};
pub use solution::{Apart, Choice, ClubCost, DaySolution, HeadWindow, JobPlan, SetSolution, Unbuildable, Why};
pub use whatif::{Alternative, Change, TRADE_OFF, alternatives, changes};
pub use whole::{InTheWay, WholeJobs, whole_jobs};
