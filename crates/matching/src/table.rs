//! The cheapest club for given prices of parts, by folding one kind after another.
//!
//! Contributions add, so what a club costs depends on its shaft and grip only through the sum `y` of their points.
//! Tip weights are folded into the loss first (the cheapest tip weight for each sum of the rest), heads next (the
//! cheapest head for each `y`); what is left is a small table over shafts × grips.

use crate::compiled::{Cand, Club, TipOption};
use crate::error::PartKind;
use crate::grid::{DeciGrams, FORBIDDEN, MilliPoints, Steps};
use crate::index::{ADAPTER, GRIP, HEAD, MainKind, Place, SHAFT, TIP, Ty};
use crate::mass::Fits;
use crate::prices::{Prices, tip_price};

/// The parts of one club, by type, with what they cost.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Column {
    pub head: Ty,
    pub shaft: Ty,
    pub grip: Ty,
    pub adapter: Option<Ty>,
    pub tips: [Option<Ty>; 2],
    /// Without prices and shaft range.
    pub cost: Steps,
    /// Shaft residual.
    pub res: DeciGrams,
}

impl Column {
    /// Whether it takes a part of a type.
    pub fn has(&self, kind: PartKind, ty: Ty) -> bool {
        match kind {
            PartKind::Head => self.head == ty,
            PartKind::Shaft => self.shaft == ty,
            PartKind::Grip => self.grip == ty,
            PartKind::Tip => self.tips.contains(&Some(ty)),
            PartKind::Adapter => self.adapter == Some(ty),
        }
    }

    /// Kind and type of everything the column takes from the stock.
    pub fn uses(&self) -> impl Iterator<Item = (PartKind, Ty)> + Clone + use<> {
        let parts = [(PartKind::Head, self.head), (PartKind::Shaft, self.shaft), (PartKind::Grip, self.grip)];
        let tips = self.tips.into_iter().flatten().map(|t| (TIP, t));
        let adapter = self.adapter.into_iter().map(|t| (ADAPTER, t));
        parts.into_iter().chain(tips).chain(adapter)
    }
}

/// The column of given candidates; its cost is [`FORBIDDEN`] or more when out of reach.
pub(crate) fn column(club: &Club, h: &Cand, s: &Cand, g: &Cand, t: &TipOption) -> Column {
    let mass = club.mass.map_or(Steps(0), |m| m.cost(h.cg + s.cg + g.cg + t.cg));
    let cost = club.loss.at(club.base + h.pts + s.pts + g.pts + t.pts) + h.cost + s.cost + g.cost + t.cost + mass;
    Column { head: h.ty, shaft: s.ty, grip: g.ty, adapter: t.adapter, tips: t.uses, cost, res: s.res }
}

/// Heads and tip weights of one club folded under given prices.
#[derive(Debug, Clone, Default)]
pub(crate) struct Folded {
    /// Least `y` in the table.
    from: MilliPoints,
    /// Cheapest loss + tip weight + head for each `y`.
    table: Vec<Steps>,
    /// With a mass target besides; the table then is a bound.
    pub fits: Fits,
}

impl Folded {
    /// The least that a club costs with a shaft and a grip of so many points, its mass and their own costs left aside.
    pub fn without_mass(&self, shaft: MilliPoints, grip: MilliPoints) -> Steps {
        self.table.get(grip.place_from(self.from - shaft)).copied().unwrap_or(FORBIDDEN)
    }
}

/// Folds heads and tip weights. `scratch` is room for the tip-folded curve.
pub(crate) fn fold(club: &Club, prices: &Prices, out: &mut Folded, scratch: &mut Vec<Steps>) {
    out.table.clear();
    if club.mass.is_some() {
        out.fits.renew(club, prices);
    }
    let ends = |k: MainKind| {
        let pts = club.cands[k].iter().map(|c| c.pts);
        Some((pts.clone().min()?, pts.max()?))
    };
    let (Some(h), Some(s), Some(g)) = (ends(HEAD), ends(SHAFT), ends(GRIP)) else { return };
    let span = (s.1 + g.1).place_from(s.0 + g.0) + 1;
    out.from = s.0 + g.0;
    // Cheapest tip weight for each sum of base, head, shaft and grip.
    let first = club.base + out.from + h.0;
    let length = span + h.1.place_from(h.0);
    scratch.clear();
    scratch.resize(length, FORBIDDEN);
    for t in &club.tips {
        let extra = t.cost.saturating_add(tip_price(t, prices));
        if extra >= FORBIDDEN {
            continue;
        }
        // Only the stretch where the loss curve is defined.
        let (curve, least) = (&club.loss.costs, first + t.pts);
        // How far into the table the curve begins, or how far into the curve the table; one of them is 0.
        let (begin, from) = ((-club.loss.half).place_from(least), least.place_from(-club.loss.half));
        if let (Some(out), Some(source)) = (scratch.get_mut(begin..), curve.get(from..)) {
            lower(out, source, extra);
        }
    }
    out.table.resize(span, FORBIDDEN);
    for c in &club.cands[HEAD] {
        let extra = c.cost + prices[HEAD][c.ty].min(FORBIDDEN);
        if extra < FORBIDDEN {
            let begin = c.pts.place_from(h.0);
            lower(&mut out.table, &scratch[begin..begin + span], extra);
        }
    }
}

/// `out[i] = min(out[i], source[i] + extra)`, as far as both go; the compiler vectorises it.
fn lower(out: &mut [Steps], source: &[Steps], extra: Steps) {
    for (o, &s) in out.iter_mut().zip(source) {
        *o = (*o).min(s + extra);
    }
}

/// Fills `row[g]` with the cheapest club for the `s`-th shaft and each grip, its mass left aside; prices of shaft and grip
/// not included.
pub(crate) fn fill_row(club: &Club, folded: &Folded, s: Place, row: &mut [Steps]) {
    let shaft = club.cands[SHAFT][s.index()];
    if folded.table.is_empty() {
        row.fill(FORBIDDEN);
        return;
    }
    let first = folded.from - shaft.pts;
    for (out, g) in row.iter_mut().zip(&club.cands[GRIP]) {
        *out = folded.table[g.pts.place_from(first)] + shaft.cost + g.cost;
    }
}

/// The cheapest head, and what goes in at the tip, for a given shaft and grip: column and its cost with their prices.
pub(crate) fn pick(club: &Club, s: Place, g: Place, prices: &Prices) -> Option<(Steps, Column)> {
    let (shaft, grip) = (&club.cands[SHAFT][s.index()], &club.cands[GRIP][g.index()]);
    let mut best: Option<(Steps, Column)> = None;
    for head in &club.cands[HEAD] {
        let priced = prices[HEAD][head.ty];
        if priced >= FORBIDDEN {
            continue;
        }
        for tip in &club.tips {
            let least = head.cost + priced + tip.cost;
            if least >= best.map_or(FORBIDDEN, |b| b.0) {
                // Tip weights come cheapest first.
                break;
            }
            let column = column(club, head, shaft, grip, tip);
            let cost = column.cost.saturating_add(priced).saturating_add(tip_price(tip, prices));
            if cost < best.map_or(FORBIDDEN, |b| b.0) {
                best = Some((cost, column));
            }
        }
    }
    best
}
