//! The question in whole numbers: clubs, sets and types of parts as search, bound and answer share them.
//!
//! `compile` makes it of what the caller asks; what is here knows nothing of how.

use std::ops::Range;
use std::sync::Arc;

use crate::cost::Rate;
use crate::error::PartKind;
use crate::grid::{CentiGrams, DeciGrams, FORBIDDEN, MilliPoints, Steps, Total};
use crate::index::{ByMain, ByType, TIP, Ty};

/// One type of part as a candidate of one club.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Cand {
    pub ty: Ty,
    pub pts: MilliPoints,
    /// 0 where the club's mass does not count.
    pub cg: CentiGrams,
    pub cost: Steps,
    /// Shaft residual; 0 for other kinds.
    pub res: DeciGrams,
}

/// What may go in at the tip: an adapter where the club takes one, and no, one or two tip weights.
#[derive(Debug, Clone, Copy)]
pub(crate) struct TipOption {
    pub adapter: Option<Ty>,
    pub uses: [Option<Ty>; 2],
    pub pts: MilliPoints,
    pub cg: CentiGrams,
    pub cost: Steps,
}

/// A loss curve, `half` to either side of zero.
#[derive(Debug)]
pub(crate) struct LossTable {
    pub half: MilliPoints,
    pub costs: Vec<Steps>,
    /// A deviation of least cost, if none on the way to it costs less than one farther out.
    pub least: Option<MilliPoints>,
}

impl LossTable {
    pub fn new(costs: Vec<Steps>, half: MilliPoints) -> Self {
        let deviation = |at: usize| MilliPoints::at_place(-half, at);
        let at = (0..costs.len()).min_by_key(|&at| (costs[at], deviation(at).abs()));
        let least = at.filter(|&at| costs[..at].is_sorted_by(|a, b| a >= b) && costs[at..].is_sorted());
        let least = least.map(deviation);
        Self { half, costs, least }
    }

    /// The least cost within so far of each deviation.
    pub fn within(&self, reach: MilliPoints) -> Self {
        let half = self.half + reach;
        let last = self.costs.len();
        let least = |at: usize| {
            let deviation = MilliPoints::at_place(-half, at);
            let from = (deviation - reach).place_from(-self.half).min(last);
            let to = (deviation + reach + MilliPoints(1)).place_from(-self.half).min(last);
            self.costs[from..to].iter().copied().min().unwrap_or(FORBIDDEN)
        };
        Self::new((0..=half.place_from(-half)).map(least).collect(), half)
    }

    /// No deviation outside of these costs so little.
    pub fn reach(&self, most: Steps) -> (MilliPoints, MilliPoints) {
        let deviation = |at: usize| MilliPoints::at_place(-self.half, at);
        let Some(least) = self.least else { return (-self.half, self.half) };
        let (down, up) = self.costs.split_at(least.place_from(-self.half));
        let from = down.partition_point(|&c| c > most);
        let to = down.len() + up.partition_point(|&c| c <= most);
        (deviation(from), deviation(to))
    }

    pub fn at(&self, deviation: MilliPoints) -> Steps {
        let at = usize::try_from(deviation.0.saturating_add(self.half.0)).ok();
        at.and_then(|at| self.costs.get(at)).copied().unwrap_or(FORBIDDEN)
    }
}

/// How whole mass is charged.
#[derive(Debug, Clone, Copy)]
pub(crate) struct MassCharge {
    /// Base less target.
    pub offset: CentiGrams,
    /// So far off costs nothing.
    pub slack: CentiGrams,
    /// Of a hundredth of a gram.
    pub rate: Rate,
}

impl MassCharge {
    pub fn cost(&self, chosen: CentiGrams) -> Steps {
        let off = (chosen + self.offset).abs() - self.slack;
        self.rate.of(f64::from(off.0.max(0))).steps()
    }

    /// The least it costs to be `off` hundredths of a gram off, when rounding may account for `hidden` of them.
    pub fn beyond(&self, off: f64, hidden: f64) -> Steps {
        self.rate.of((off - hidden - f64::from(self.slack.0)).max(0.0)).steps()
    }
}

/// A club in whole numbers.
#[derive(Debug, Clone)]
pub(crate) struct Club {
    pub base: MilliPoints,
    pub cands: ByMain<Vec<Cand>>,
    /// The cheapest first.
    pub tips: Vec<TipOption>,
    /// Types of adapter of which it takes one; none where it takes none.
    pub adapters: Option<Arc<[Ty]>>,
    pub loss: Arc<LossTable>,
    pub mass: Option<MassCharge>,
    /// Cost of leaving it unbuilt.
    pub skip: Steps,
}

/// A set: which clubs, and what a range of shaft residuals costs it.
#[derive(Debug, Clone)]
pub(crate) struct SetShape {
    pub clubs: Range<usize>,
    /// How many shafts have each residual, where their types do not tell.
    pub shafts: Option<Arc<[(DeciGrams, u32)]>>,
    /// Of a tenth of a gram of range; none where a range costs nothing.
    pub range: Option<Rate>,
}

impl SetShape {
    /// Cost of a range of shaft residuals.
    pub fn range_cost(&self, range: DeciGrams) -> Steps {
        self.range.map_or(Steps(0), |rate| rate.of(f64::from(range.0)).steps())
    }

    /// The same, where so many shafts have each residual.
    pub fn counting(&self, shafts: Vec<(DeciGrams, u32)>) -> Self {
        Self { shafts: Some(shafts.into()), ..self.clone() }
    }

    pub fn charges_range(&self) -> bool {
        self.range.is_some()
    }
}

/// Parts that are interchangeable in every club.
#[derive(Debug, Clone)]
pub(crate) struct PartType {
    /// The parts, by number, each with its capacity.
    pub members: Vec<(usize, u32)>,
    /// Sum of the capacities.
    pub cap: u32,
    /// How many clubs list it.
    pub wanted: u32,
}

impl PartType {
    /// How many there are, to count with what is used; two thousand million of them are as good as more.
    pub fn count(&self) -> i32 {
        i32::try_from(self.cap).unwrap_or(i32::MAX)
    }
}

/// The whole problem in whole numbers.
#[derive(Debug)]
pub(crate) struct Compiled {
    pub clubs: Vec<Arc<Club>>,
    pub sets: Vec<SetShape>,
    pub types: ByType<PartType>,
    pub quantum: f64,
    /// Where only a selection is planned from: the problem with all parts, for a bound (see `thin`).
    pub relaxed: Option<Box<Self>>,
}

impl Compiled {
    /// Kind, type and count of everything that all clubs together could use up.
    pub fn contended(&self) -> Vec<(PartKind, Ty, i32)> {
        let mut out = Vec::new();
        for (k, types) in self.types.iter() {
            for (ty, t) in types.typed() {
                let most = if k == TIP { t.wanted.saturating_mul(2) } else { t.wanted };
                if t.cap < most {
                    out.push((k, ty, t.count()));
                }
            }
        }
        out
    }

    /// The same without target masses: no plan costs more in it.
    pub fn without_masses(&self) -> Self {
        let free = |club: &Arc<Club>| match club.mass {
            Some(_) => Arc::new(Club { mass: None, ..Club::clone(club) }),
            None => Arc::clone(club),
        };
        let clubs = self.clubs.iter().map(free).collect();
        let (sets, types) = (self.sets.clone(), self.types.clone());
        Self { clubs, sets, types, quantum: self.quantum, relaxed: None }
    }

    /// A cost in the caller's unit.
    pub fn cost(&self, total: Total) -> f64 {
        total.cost(self.quantum)
    }
}
