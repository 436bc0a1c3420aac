//! How far swing weight and whole mass of a club pull apart, whatever head it gets.
//!
//! A head's points follow from its mass. So a shaft and a grip that bring the club to its swing weight with one head, and
//! to its mass with another, cost something with every head; and by how much the two heads differ depends on shaft and grip
//! only through one figure, what they weigh less what they would have to weigh for their points, the *lean*. The least that
//! a lean costs is a table, worked out once; with the prices of the day it is a lower bound of every shaft and grip, and with
//! the one that ignores the mass (`table`) it spares most of them a closer look.

use std::sync::Arc;

use crate::compiled::{Cand, Club, MassCharge};
use crate::grid::{FORBIDDEN, MilliPoints, Steps};
use crate::index::{GRIP, HEAD, SHAFT};
use crate::prices::{Prices, tip_price};

/// Hundredths of a gram that one entry stands for.
const BIN: i32 = 8;
/// Thousandths of a point that are looked at together.
const STRETCH: usize = 32;
/// Entries to either side of none.
const REACH: i32 = 150;

/// The least costs of leans, for one club.
#[derive(Debug, Clone, Default)]
pub(crate) struct Tension {
    /// Hundredths of a gram of head for a thousandth of a point; none where it cannot be told.
    slope: Option<f64>,
    /// Lean of everything but shaft, grip and tip weight.
    fixed: f64,
    /// Least loss and mass by lean, from `-REACH` on.
    apart: Arc<[Steps]>,
    /// With the cheapest head and tip weight, for leans of shaft and grip from `first` on.
    table: Vec<Steps>,
    first: i32,
    /// Lean of each shaft and grip.
    shafts: Vec<i32>,
    grips: Vec<i32>,
}

impl Tension {
    /// What does not depend on prices.
    pub fn new(club: &Club, charge: MassCharge) -> Self {
        let heads = &club.cands[HEAD];
        let ends = heads.iter().min_by_key(|h| h.pts).zip(heads.iter().max_by_key(|h| h.pts));
        let Some((light, heavy)) = ends.filter(|(a, b)| b.pts > a.pts && b.cg > a.cg) else { return Self::default() };
        let slope = f64::from((heavy.cg - light.cg).0) / (heavy.pts - light.pts).exact();
        let due = |pts: MilliPoints| (pts - light.pts).exact() * slope + f64::from(light.cg.0);
        let off = heads.iter().map(|h| (f64::from(h.cg.0) - due(h.pts)).abs()).fold(0.0, f64::max);
        // A head far off the line would make the bound useless.
        if off > 25.0 {
            return Self::default();
        }
        let fixed = f64::from((charge.offset + light.cg).0) - (club.base + light.pts).exact() * slope;
        // What rounding and standing for others can hide: of the head, half a stretch, half an entry, and three sums.
        let hidden = off + 0.5 * STRETCH as f64 * slope + 0.5 * f64::from(BIN) + 4.0;
        let stretches: Vec<(f64, Steps)> = (club.loss.costs.chunks(STRETCH).enumerate())
            .map(|(i, costs)| {
                let middle = (i * STRETCH) as f64 + 0.5 * STRETCH as f64 - club.loss.half.exact();
                (middle * slope, costs.iter().copied().min().unwrap_or(FORBIDDEN))
            })
            .collect();
        let apart = (-REACH..=REACH).map(|bin| {
            let lean = f64::from(bin * BIN);
            let least =
                |&(shift, loss): &(f64, Steps)| loss.saturating_add(charge.beyond((lean + shift).abs(), hidden));
            stretches.iter().map(least).min().unwrap_or(FORBIDDEN)
        });
        Self { slope: Some(slope), fixed, apart: apart.collect(), ..Self::default() }.of_fewer(club)
    }

    /// For the same club with candidates taken out: the line of the heads still holds.
    pub fn of_fewer(&self, club: &Club) -> Self {
        let Some(slope) = self.slope else { return Self::default() };
        let lean = |x: &Cand| (f64::from(x.cg.0) - x.pts.exact() * slope).round() as i32;
        Self {
            apart: Arc::clone(&self.apart),
            shafts: club.cands[SHAFT].iter().map(lean).collect(),
            grips: club.cands[GRIP].iter().map(lean).collect(),
            table: Vec::new(),
            ..*self
        }
    }

    /// Brings the bound up to given prices.
    pub fn renew(&mut self, club: &Club, prices: &Prices) {
        let Some(slope) = self.slope else { return };
        self.table.clear();
        let ends = |list: &[i32]| Some((list.iter().copied().min()?, list.iter().copied().max()?));
        let (Some(s), Some(g)) = (ends(&self.shafts), ends(&self.grips)) else { return };
        self.first = s.0 + g.0;
        let entries = usize::try_from((s.1 + g.1 - self.first) / BIN + 1).unwrap_or(0);
        self.table.resize(entries, FORBIDDEN);
        let head = club.cands[HEAD].iter().map(|h| h.cost.saturating_add(prices[HEAD][h.ty])).min();
        let head = head.unwrap_or(FORBIDDEN).min(FORBIDDEN);
        for tip in &club.tips {
            let own = tip.cost.saturating_add(tip_price(tip, prices)).saturating_add(head);
            if own >= FORBIDDEN {
                continue;
            }
            let lean = f64::from(tip.cg.0) - tip.pts.exact() * slope + self.fixed + f64::from(self.first);
            let from = (lean / f64::from(BIN)).round() as i32 + REACH;
            for (out, at) in self.table.iter_mut().zip(from..) {
                let at = usize::try_from(at.max(0)).unwrap_or(0).min(self.apart.len() - 1);
                *out = (*out).min(self.apart[at] + own);
            }
        }
    }

    /// No head and tip weight make a club of this shaft and grip cheaper; their own costs and prices are not counted.
    pub fn least(&self, shaft: usize, grip: usize) -> Option<Steps> {
        let at = usize::try_from((self.shafts.get(shaft)? + self.grips.get(grip)? - self.first) / BIN).ok()?;
        self.table.get(at).copied()
    }
}
