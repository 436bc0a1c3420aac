//! What things cost, in whole quanta: the one place where a cost is worked out and rounded.
//!
//! The whole-number form that the search works on, its bound, the check of its plan and the costs that a plan gives as
//! its reasons all ask here, term by term, so that they agree to the quantum.

use crate::grid::{CentiGrams, DeciGrams, MilliPoints, Quanta};
use crate::index::count;
use crate::model::{Candidate, ClubNeed, CostWeights, Stock, TipFit, TipPair};
use crate::solution::ClubCost;

/// What a cost is rounded up from. The figures of a shop are short decimals, so that a cost often is half a quantum just
/// so, and binary fractions then fall on either side of it by the order in which they were multiplied. What lies within
/// a millionth of a quantum of a half counts as one, and goes up.
const HALF: f64 = 0.5 + 1e-6;

/// A price of one unit, in quanta.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Rate(f64);

impl Rate {
    /// The cost of this many units, to the nearest quantum. Rate and units are not negative.
    pub fn of(self, units: f64) -> Quanta {
        Quanta::cut(units * self.0 + HALF)
    }
}

/// What things cost in one set.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tariff {
    /// Of [`crate::Loss::cost`].
    loss: Rate,
    extra: Rate,
    /// Of a hundredth of a gram of tip weight.
    tip: Rate,
    second_tip: Quanta,
    /// Of a hundredth of a gram off the target mass.
    mass: Rate,
    /// Of a tenth of a gram of range.
    range: Rate,
    unbuilt: Quanta,
}

impl Tariff {
    pub fn new(weights: &CostWeights, priority: f64) -> Self {
        let rate = |per_unit: f64| Rate(per_unit * priority / weights.quantum);
        Self {
            loss: rate(weights.loss),
            extra: rate(1.0),
            tip: rate(weights.tip_per_g / 100.0),
            second_tip: rate(weights.second_tip).of(1.0),
            mass: rate(weights.mass_per_g / 100.0),
            range: rate(weights.shaft_range_per_g / 10.0),
            unbuilt: rate(weights.unbuilt).of(1.0),
        }
    }

    /// Of a deviation, given what the curve says of it.
    pub fn loss(&self, of_curve: f64) -> Quanta {
        self.loss.of(of_curve)
    }

    /// Of a part by itself, from [`Candidate::extra_cost`].
    pub fn extra(&self, cost: f64) -> Quanta {
        self.extra.of(cost)
    }

    /// Of the weight in one tip: its mass, and more where it is two pieces.
    pub fn tip(&self, weight: CentiGrams, pieces: usize) -> Quanta {
        let second = if pieces > 1 { self.second_tip } else { Quanta(0) };
        self.tip.of(f64::from(weight.0)) + second
    }

    /// Of a hundredth of a gram by which a whole club is off its target mass.
    pub fn mass_rate(&self) -> Rate {
        self.mass
    }

    /// Of a tenth of a gram of range of shaft residuals.
    pub fn range_rate(&self) -> Rate {
        self.range
    }

    /// Of the range of a set's shaft residuals.
    pub fn range(&self, residuals: impl IntoIterator<Item = DeciGrams>) -> Quanta {
        let span = residuals.into_iter().fold(None, |span: Option<(DeciGrams, DeciGrams)>, r| {
            Some(span.map_or((r, r), |(least, most)| (least.min(r), most.max(r))))
        });
        span.map_or(Quanta(0), |(least, most)| self.range.of(f64::from((most - least).0)))
    }

    /// Of a club left unbuilt.
    pub fn unbuilt(&self) -> Quanta {
        self.unbuilt
    }
}

/// Mass of some weights of the tray.
pub(crate) fn tip_mass(stock: &Stock, tips: impl IntoIterator<Item = usize>) -> CentiGrams {
    tips.into_iter().map(|t| CentiGrams::of(stock.tips[t].grams)).sum()
}

/// How many pieces go into the tip: what weighs nothing does not.
pub(crate) fn pieces(stock: &Stock, tips: impl IntoIterator<Item = usize>) -> usize {
    tips.into_iter().filter(|&t| stock.tips[t].grams > 0.0).count()
}

/// Whether the tray has as many of one weight as there are of it among some.
pub(crate) fn enough_tips(stock: &Stock, tip: usize, among: impl IntoIterator<Item = usize>) -> bool {
    count(among.into_iter().filter(|&t| t == tip).count()) <= u64::from(stock.tips[tip].count)
}

/// Whether some weights of the tray stay within a club's cap.
pub(crate) fn under_cap(need: &ClubNeed, stock: &Stock, tips: impl IntoIterator<Item = usize>) -> bool {
    let grams: f64 = tips.into_iter().map(|t| stock.tips[t].grams).sum();
    grams <= need.tip_cap_g + 1e-9
}

/// What weights in one tip add to a club's deviation.
pub(crate) fn tip_points<'a>(fits: impl IntoIterator<Item = &'a TipFit>, pair: Option<&TipPair>) -> MilliPoints {
    let each: MilliPoints = fits.into_iter().map(|f| MilliPoints::of(f.points)).sum();
    pair.map_or(each, |pair| each - MilliPoints::of(pair.lost_points))
}

/// A club's mass off its target without the parts that are chosen; none without a target.
pub(crate) fn mass_offset(need: &ClubNeed) -> Option<CentiGrams> {
    need.mass_target.map(|m| CentiGrams::of(m.base_mass_g - m.target_g))
}

/// A shaft's mass against the model's slope in this club.
pub(crate) fn residual(need: &ClubNeed, shaft: &Candidate) -> DeciGrams {
    DeciGrams::of(shaft.mass_g - need.shaft_nominal_g)
}

/// What a club costs, by cause.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Terms {
    loss: Quanta,
    tip: Quanta,
    mass: Quanta,
    extra: Quanta,
}

impl Terms {
    pub fn total(&self) -> Quanta {
        self.loss + self.tip + self.mass + self.extra
    }

    /// In the caller's unit.
    pub fn told(&self, quantum: f64) -> ClubCost {
        let cost = |x: Quanta| x.cost(quantum);
        ClubCost { loss: cost(self.loss), tip: cost(self.tip), mass: cost(self.mass), extra: cost(self.extra) }
    }
}

/// A club with the parts that were chosen for it, each found among its candidates.
#[derive(Debug)]
pub(crate) struct Built<'a> {
    need: &'a ClubNeed,
    pub shaft: &'a Candidate,
    /// Head, shaft, grip, and the adapter where it takes one.
    parts: Vec<&'a Candidate>,
    pub tips: Vec<&'a TipFit>,
    /// How two of them are stacked.
    pair: Option<&'a TipPair>,
}

impl<'a> Built<'a> {
    /// Finds the parts, or says which of them the club does not list.
    pub fn new(
        need: &'a ClubNeed,
        [head, shaft, grip]: [usize; 3],
        adapter: Option<usize>,
        tips: &[usize],
    ) -> Result<Self, String> {
        let listed = |list: &'a [Candidate], part: usize, what: &str| {
            list.iter().find(|c| c.part == part).ok_or_else(|| format!("{what} {part} is not among the candidates"))
        };
        let fits = |&tip: &usize| {
            need.tips.iter().find(|f| f.tip == tip).ok_or_else(|| format!("tip weight {tip} does not fit"))
        };
        let pair = match *tips {
            [] | [_] => None,
            [lower, upper] => {
                let found = need.tip_pairs.iter().find(|p| (p.lower, p.upper) == (lower, upper));
                Some(found.ok_or_else(|| format!("tip weights {lower} and {upper} may not be stacked"))?)
            }
            _ => return Err(format!("{} tip weights in one club", tips.len())),
        };
        let shaft = listed(&need.shafts, shaft, "shaft")?;
        let mut parts = vec![listed(&need.heads, head, "head")?, shaft, listed(&need.grips, grip, "grip")?];
        match (&need.adapters, adapter) {
            (Some(list), Some(adapter)) => parts.push(listed(list, adapter, "adapter")?),
            (None, None) => {}
            (Some(_), None) => return Err("it takes an adapter and has none".into()),
            (None, Some(adapter)) => return Err(format!("adapter {adapter} in a club that takes none")),
        }
        Ok(Self { need, shaft, parts, tips: tips.iter().map(fits).collect::<Result<_, _>>()?, pair })
    }

    /// Deviation on the grid.
    pub fn deviation(&self) -> MilliPoints {
        MilliPoints::of(self.need.base_points)
            + self.parts.iter().map(|c| MilliPoints::of(c.points)).sum()
            + tip_points(self.tips.iter().copied(), self.pair)
    }

    /// Deviation as the figures give it, points.
    pub fn deviation_points(&self) -> f64 {
        self.need.base_points
            + self.parts.iter().map(|c| c.points).sum::<f64>()
            + self.tips.iter().map(|f| f.points).sum::<f64>()
            - self.pair.map_or(0.0, |p| p.lost_points)
    }

    /// Mass of all parts but the tip weights, g.
    pub fn mass_g(&self) -> f64 {
        self.parts.iter().map(|c| c.mass_g).sum()
    }

    /// The shaft's residual on the grid.
    pub fn residual(&self) -> DeciGrams {
        residual(self.need, self.shaft)
    }

    /// What the club costs, or that its deviation is beyond what is planned at all.
    pub fn terms(&self, tariff: &Tariff, stock: &Stock) -> Result<Terms, String> {
        let deviation = self.deviation();
        let of_curve = self.need.loss.cost_at(deviation);
        let of_curve = of_curve.ok_or_else(|| format!("{} thousandths of a point are out of reach", deviation.0))?;
        let in_tip = tip_mass(stock, self.tips.iter().map(|f| f.tip));
        let mass = mass_offset(self.need).map_or(Quanta(0), |offset| {
            let chosen: CentiGrams = self.parts.iter().map(|c| CentiGrams::of(c.mass_g)).sum();
            tariff.mass_rate().of(f64::from((chosen + in_tip + offset).abs().0))
        });
        Ok(Terms {
            loss: tariff.loss(of_curve),
            tip: tariff.tip(in_tip, pieces(stock, self.tips.iter().map(|f| f.tip))),
            mass,
            extra: self.parts.iter().map(|c| tariff.extra(c.extra_cost)).sum(),
        })
    }
}
