//! The question: clubs that need parts, the stock they share, and what a deviation costs.
//!
//! A question can be written down and read again, figure by figure, so that one that was answered wrongly can be asked
//! again (`examples/replay.rs`).
//!
//! The crate does not know what a club is made of. A club is a *base* deviation (everything that is not chosen here)
//! plus the contributions of one head, one shaft, one grip, an adapter where it takes one, and up to two tip weights,
//! all in points of swing weight, which add because static moments add. Of two stacked weights the upper one lies higher than it would alone; what that
//! takes off is given with the pair.

use std::sync::Arc;

use crate::loss::Loss;
use serde::{Deserialize, Serialize};

/// One part that may go into one club.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Candidate {
    /// Index of the part within its kind in [`Stock`]; one part may be a candidate of many clubs.
    pub part: usize,
    /// What the part adds to the club's deviation, points (positive is head-heavy).
    pub points: f64,
    /// Mass of the part as it goes into this club (a shaft: as cut), g.
    pub mass_g: f64,
    /// Anything else that speaks against the part in this club, in units of one certainly missed club, ≥ 0:
    /// scarcity, distance from the set's frequency slope, a neighbouring number's blank.
    pub extra_cost: f64,
}

/// A tip weight of the tray as it sits in one club.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct TipFit {
    /// Compartment of the tray: index into [`Stock::tips`], each at most once in a club's list.
    pub tip: usize,
    /// What one such weight adds to the club's deviation, points.
    pub points: f64,
}

/// Two weights of the tray that may be stacked in one tip.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct TipPair {
    /// The one at the end of the tip: index into [`Stock::tips`].
    pub lower: usize,
    /// The one on top of it; the same index for two of a kind.
    pub upper: usize,
    /// How much less the two do together than each of them would by itself, points: the upper one lies higher in the
    /// shaft than it would alone.
    pub lost_points: f64,
}

/// One compartment of the tray of tip weights.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Tip {
    /// Mass of one weight, g. 0 stands for what moves a club's swing weight without weight in its tip, such as another screw
    /// in the head: it costs nothing, and does not count as a second weight. What it does to a target mass is left out.
    pub grams: f64,
    /// How many there are; 0 takes the compartment out, and a club may use two.
    pub count: u32,
}

/// How a head's mass turns into points in a club, so that a shortage can be named in grams to order.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct HeadScale {
    /// Points per gram of head.
    pub points_per_g: f64,
    /// Head mass at which [`Candidate::points`] would be zero, g.
    pub zero_mass_g: f64,
}

/// A target for the whole club's mass.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct MassTarget {
    /// Mass of everything that is not chosen here, g.
    pub base_mass_g: f64,
    /// Wanted mass of the finished club, g.
    pub target_g: f64,
}

/// One club: what it lacks and what would fit.
///
/// A lock or a part already built in is a list with a single candidate.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct ClubNeed {
    /// Deviation from target of everything that is not chosen, points.
    pub base_points: f64,
    /// Heads that fit, in any order; with none the club stays unbuilt.
    pub heads: Vec<Candidate>,
    /// Shafts that fit, masses as cut for this club.
    pub shafts: Vec<Candidate>,
    /// Grips that fit.
    pub grips: Vec<Candidate>,
    /// Adapters that fit, for a head that needs one of them; none where the head takes the shaft itself.
    pub adapters: Option<Vec<Candidate>>,
    /// Tip weights that fit (bore, length), with their effect.
    pub tips: Vec<TipFit>,
    /// Most tip weight allowed in this club, g.
    pub tip_cap_g: f64,
    /// Which weights of the tray may be stacked, each two of them listed once; only pairs of which both fit this club count.
    /// Clubs may share one list.
    pub tip_pairs: Arc<[TipPair]>,
    /// Shaft mass that the model's own slope along the set gives this club, g; only differences from it count.
    pub shaft_nominal_g: f64,
    /// Target for the whole mass, if the sheet asks for one.
    pub mass_target: Option<MassTarget>,
    /// Head mass against points, for naming what to order.
    pub head_scale: Option<HeadScale>,
    /// What finishing off target by a given deviation costs.
    pub loss: Loss,
}

/// How many there are of each part. Weighed pieces have 1, bulk lots more; 0 takes a part out.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub struct Stock {
    /// How many clubs each head can serve, in the order of [`Candidate::part`]: 1 for a weighed piece.
    pub heads: Vec<u32>,
    /// How many clubs each shaft can serve.
    pub shafts: Vec<u32>,
    /// How many clubs each grip can serve.
    pub grips: Vec<u32>,
    /// How many clubs each adapter can serve; empty where no club takes one.
    pub adapters: Vec<u32>,
    /// The tray of tip weights, one entry a compartment.
    pub tips: Vec<Tip>,
}

/// What things cost, all in one unit: 1 is one club that certainly misses its tolerance.
///
/// The defaults keep the order that builders give: finishing in tolerance first, then grams of tip weight, whole
/// mass, and evenness of shafts in the set. They are a judgement (no source), meant to be changed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct CostWeights {
    /// Factor on [`Loss`], without a unit: 1 counts a certain miss as one club.
    pub loss: f64,
    /// Per gram of tip weight.
    pub tip_per_g: f64,
    /// For a second tip weight in one club, beside its grams.
    pub second_tip: f64,
    /// Per gram of range (greatest less least) of shaft mass about [`ClubNeed::shaft_nominal_g`] within a set.
    pub shaft_range_per_g: f64,
    /// Per gram that the whole club is off [`MassTarget`].
    pub mass_per_g: f64,
    /// For a club left unbuilt. Far above everything else by default, so that a set is built as completely as the
    /// stock allows.
    pub unbuilt: f64,
    /// Costs are whole multiples of this (one part in ten thousand of a club by default): plans closer than that are
    /// equal for every purpose, and whole numbers make the proof exact. Each cost (a club's loss, its tip weight, its mass
    /// off target, each part's own, a set's range, a club left unbuilt) is rounded to the nearest by itself. Half a
    /// quantum goes up, and so does what lies within a millionth of a quantum of a half, because short decimals are not
    /// exact in binary.
    pub quantum: f64,
}

impl Default for CostWeights {
    fn default() -> Self {
        Self {
            loss: 1.0,
            tip_per_g: 0.005,
            second_tip: 0.0,
            shaft_range_per_g: 0.010,
            mass_per_g: 0.001,
            unbuilt: 10.0,
            quantum: 1e-4,
        }
    }
}

/// One set to plan on its own.
///
/// # Examples
///
/// ```
/// use std::sync::Arc;
/// use matching::{Candidate, ClubNeed, CostWeights, Limits, Loss, LossForm, SetProblem, Stock, Tip, TipFit, solve_set};
/// let part = |part, points, mass_g| Candidate { part, points, mass_g, extra_cost: 0.0 };
/// // A club one point too light in the head, two heads that make up some of it, and one weight for the tip.
/// let club = ClubNeed {
///     base_points: -1.0,
///     heads: vec![part(0, 0.2, 255.0), part(1, 0.4, 256.0)],
///     shafts: vec![part(0, 0.0, 110.0)],
///     grips: vec![part(0, 0.0, 50.0)],
///     adapters: None,
///     tips: vec![TipFit { tip: 0, points: 0.6 }],
///     tip_cap_g: 9.0,
///     tip_pairs: Arc::new([]),
///     shaft_nominal_g: 110.0,
///     mass_target: None,
///     head_scale: None,
///     loss: Loss::from_sigma(0.1, 0.3, LossForm::Yield)?,
/// };
/// let stock = Stock {
///     heads: vec![1, 1], shafts: vec![1], grips: vec![1], tips: vec![Tip { grams: 2.0, count: 1 }], ..Stock::default()
/// };
/// let plan = solve_set(&SetProblem { clubs: vec![club], stock, weights: CostWeights::default() }, Limits::default())?;
/// let club = plan.clubs[0].as_ref().unwrap();
/// // By hand: −1.0 + 0.4 + 0.6 is on target, so the plan costs its 2 g of tip weight at 0.005 each.
/// assert_eq!((club.head, club.tip_g, club.deviation_points), (1, 2.0, 0.0));
/// assert!(plan.proven && (plan.cost - 0.010).abs() < 1e-9);
/// # Ok::<(), matching::MatchError>(())
/// ```
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SetProblem {
    /// The clubs of the set, at least one; they compete for the stock.
    pub clubs: Vec<ClubNeed>,
    /// The stock that all clubs draw on.
    pub stock: Stock,
    /// What things cost, in units of one certainly missed club.
    pub weights: CostWeights,
}

/// One job of a day.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct JobSet {
    /// The clubs of one player's set.
    pub clubs: Vec<ClubNeed>,
    /// Factor on everything this job costs: 1 for an ordinary job, more the sooner it is due.
    pub priority: f64,
}

/// Many sets on one stock.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct DayProblem {
    /// The jobs, in any order; the more urgent has the greater [`JobSet::priority`].
    pub sets: Vec<JobSet>,
    /// The stock they share: a part goes to one of them only.
    pub stock: Stock,
    /// What things cost, in units of one certainly missed club.
    pub weights: CostWeights,
}
