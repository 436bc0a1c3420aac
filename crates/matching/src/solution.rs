//! The answer: a plan, what it costs and why, and what cannot be built.

use crate::error::PartKind;

/// The parts of one built club.
#[derive(Debug, Clone, PartialEq)]
pub struct Choice {
    /// Head, index in the stock.
    pub head: usize,
    /// Shaft, index in the stock.
    pub shaft: usize,
    /// Grip, index in the stock.
    pub grip: usize,
    /// Adapter, index in the stock; none where the head takes none.
    pub adapter: Option<usize>,
    /// Tip weights, indices in the tray; none, one or two, the lower first (the same index twice for two of a kind).
    pub tips: Vec<usize>,
    /// Planned deviation from target, points.
    pub deviation_points: f64,
    /// Tip weight in all, g; 0 with none, at most [`crate::ClubNeed::tip_cap_g`].
    pub tip_g: f64,
    /// Shaft mass against the model's slope, g.
    pub shaft_residual_g: f64,
    /// Whole mass less its target, g; `None` without a target.
    pub mass_residual_g: Option<f64>,
    /// What the club costs, by cause.
    pub cost: ClubCost,
}

/// What one club costs, by cause, in units of one certainly missed club.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ClubCost {
    /// For its deviation: [`crate::Loss::cost`] times [`crate::CostWeights::loss`].
    pub loss: f64,
    /// For its tip weight, and a second piece of it.
    pub tip: f64,
    /// For its whole mass; 0 without a target.
    pub mass: f64,
    /// The candidates' own extra costs.
    pub extra: f64,
}

impl ClubCost {
    /// The sum of all causes.
    ///
    /// # Examples
    ///
    /// ```
    /// let cost = matching::ClubCost { loss: 0.1, tip: 0.01, mass: 0.0, extra: 0.002 };
    /// assert!((cost.total() - 0.112).abs() < 1e-12);
    /// ```
    pub fn total(&self) -> f64 {
        self.loss + self.tip + self.mass + self.extra
    }
}

/// Head masses worth ordering for a club.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HeadWindow {
    /// Contribution a head must make, least, points.
    pub low_points: f64,
    /// Contribution a head must make, greatest, points.
    pub high_points: f64,
    /// Lightest head that would do, g; `None` when the problem gives no head scale.
    pub low_g: Option<f64>,
    /// Heaviest head that would do, g.
    pub high_g: Option<f64>,
}

/// Why a club cannot be built.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Why {
    /// No head fits at all, or none is in stock.
    NoHead {
        /// What to order, when shafts and grips are there to say it.
        window: Option<HeadWindow>,
    },
    /// No shaft fits or none is in stock.
    NoShaft,
    /// No grip fits or none is in stock.
    NoGrip,
    /// It takes an adapter, and none fits or none is in stock.
    NoAdapter,
    /// Parts are there, but no combination comes near the target.
    OutOfReach {
        /// What the best combination still lacks to come within reach; positive: too light in the head, points.
        lacking_points: f64,
        /// Heads that would bring it within reach.
        window: HeadWindow,
    },
    /// Only one piece of this kind is listed for it, and a club has it for which it is the only one as well. Either both
    /// are locked to it, and one of the two locks must go, or there is no other piece.
    LockedTwice {
        /// Kind of the piece.
        kind: PartKind,
        /// The piece.
        part: usize,
        /// Set of the club that has it in this plan.
        other_set: usize,
        /// Index of that club in its set.
        other_club: usize,
        /// Heads that would do in its place.
        window: Option<HeadWindow>,
    },
    /// It could be built alone, but other clubs (of this set, or more urgent ones) take the last parts of this kind.
    Short {
        /// The kind that runs out, or the kind of which the fitting ones run out.
        kind: PartKind,
        /// Heads that would do with the parts left over, when any are.
        window: Option<HeadWindow>,
    },
}

/// A club left unbuilt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Unbuildable {
    /// Index of the set, 0 for a single set.
    pub set: usize,
    /// Index of the club in its set.
    pub club: usize,
    /// What keeps it from being built.
    pub why: Why,
}

/// A plan for one set.
#[derive(Debug, Clone, PartialEq)]
pub struct SetSolution {
    /// One entry a club; `None` is unbuilt.
    pub clubs: Vec<Option<Choice>>,
    /// Range of shaft residuals within the set, g.
    pub shaft_range_g: f64,
    /// What that range costs, in units of one certainly missed club.
    pub shaft_range_cost: f64,
    /// Cost of the plan: built clubs, shaft range and unbuilt clubs.
    pub cost: f64,
    /// No plan can cost less than this.
    pub bound: f64,
    /// Whether `cost` equals `bound`: the plan is optimal.
    pub proven: bool,
    /// Search nodes that the proof took.
    pub nodes: u64,
    /// Clubs left unbuilt and why.
    pub unbuildable: Vec<Unbuildable>,
}

/// The plan of one job of a day.
#[derive(Debug, Clone, PartialEq)]
pub struct JobPlan {
    /// One entry a club; `None` is unbuilt.
    pub clubs: Vec<Option<Choice>>,
    /// Range of shaft residuals within the set, g.
    pub shaft_range_g: f64,
    /// What that range costs, in units of one certainly missed club.
    pub shaft_range_cost: f64,
}

/// A plan for a day.
#[derive(Debug, Clone, PartialEq)]
pub struct DaySolution {
    /// One entry a job, in the order in which they were given.
    pub sets: Vec<JobPlan>,
    /// Cost of the plan over all jobs, each times its priority, in units of one certainly missed club.
    pub cost: f64,
    /// No plan can cost less than this.
    pub bound: f64,
    /// Rounds of work done, each of many steps; more of them bring plan and bound nearer to each other.
    pub rounds: u64,
    /// Clubs left unbuilt and why.
    pub unbuildable: Vec<Unbuildable>,
    /// The plain plan, set by set, to hold this one against; none where there was no time for it.
    pub apart: Option<Apart>,
}

/// A day planned set by set: the set with the greatest priority takes what suits it best, the next what is left.
#[derive(Debug, Clone, PartialEq)]
pub struct Apart {
    /// One entry a job, in the order in which they were given.
    pub sets: Vec<JobPlan>,
    /// What the plan costs, counted as [`DaySolution::cost`], which is no greater.
    pub cost: f64,
    /// Clubs that it leaves unbuilt and why.
    pub unbuildable: Vec<Unbuildable>,
}

impl DaySolution {
    /// How far the plan may be from the best, as a share of its cost; 0 is proven optimal.
    ///
    /// # Examples
    ///
    /// ```
    /// use matching::DaySolution;
    /// // A plan of 2.0 where none can cost less than 1.9 is at most a twentieth from the best.
    /// let plan = DaySolution { sets: vec![], cost: 2.0, bound: 1.9, rounds: 1, unbuildable: vec![], apart: None };
    /// assert!((plan.gap() - 0.05).abs() < 1e-12);
    /// ```
    pub fn gap(&self) -> f64 {
        if self.cost > 0.0 { (self.cost - self.bound).max(0.0) / self.cost } else { 0.0 }
    }
}
