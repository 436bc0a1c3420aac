//! The cheapest head and tip weight for a club with a target mass.
//!
//! What such a club costs depends on points and on mass, so a table over sums of points does not do. But a head's points
//! follow from its mass: with heads in order, what a club costs falls until both the swing weight and the mass are met, and
//! rises after both. Between the two every head is looked at, beyond them only as long as one could still be cheaper.

use crate::compiled::{Club, MassCharge};
use crate::grid::{CentiGrams, FORBIDDEN, MilliPoints, Steps};
use crate::index::HEAD;
use crate::prices::{Prices, tip_price};

/// Heads and tip weights of one club under given prices.
#[derive(Debug, Clone, Default)]
pub(crate) struct Fits {
    /// By points.
    heads: Vec<Fit>,
    /// The cheapest first.
    tips: Vec<Fit>,
    least_head: Steps,
    /// Heavier heads have more points, and the loss falls on one side of its least and rises on the other.
    in_order: bool,
}

#[derive(Debug, Clone, Copy)]
struct Fit {
    pts: MilliPoints,
    cg: CentiGrams,
    cost: Steps,
}

impl Fits {
    /// Takes up a club's heads and tip weights; those without a price that can be paid are left out.
    pub fn renew(&mut self, club: &Club, prices: &Prices) {
        let payable = |x: &Fit| x.cost < FORBIDDEN;
        self.heads.clear();
        let priced = |cost: Steps, price: Steps| cost.saturating_add(price.min(FORBIDDEN));
        let fit = club.cands[HEAD].iter();
        let fit = fit.map(|h| Fit { pts: h.pts, cg: h.cg, cost: priced(h.cost, prices[HEAD][h.ty]) });
        self.heads.extend(fit.filter(payable));
        self.heads.sort_unstable_by_key(|h| (h.pts, h.cg));
        self.tips.clear();
        let fit = club.tips.iter().map(|t| Fit { pts: t.pts, cg: t.cg, cost: priced(t.cost, tip_price(t, prices)) });
        self.tips.extend(fit.filter(payable));
        self.tips.sort_by_key(|t| t.cost);
        self.least_head = self.heads.iter().map(|h| h.cost).min().unwrap_or(FORBIDDEN);
        self.in_order = club.loss.least.is_some() && self.heads.is_sorted_by_key(|h| h.cg);
    }

    /// What the cheapest head and tip weight cost with the loss and the mass, where everything else adds up to so much; or
    /// `limit`, where none is cheaper.
    pub fn least(&self, club: &Club, charge: MassCharge, pts: MilliPoints, cg: CentiGrams, limit: Steps) -> Steps {
        let mut best = limit.min(FORBIDDEN);
        for tip in &self.tips {
            let least = tip.cost + self.least_head;
            if least >= best {
                break;
            }
            let (pts, cg) = (pts + tip.pts, cg + tip.cg);
            let ordered = club.loss.least.filter(|_| self.in_order);
            if let (Some(valley), [first, .., last]) = (ordered, &self.heads[..]) {
                let loss = club.loss.at(valley.clamp(pts + first.pts, pts + last.pts));
                let mass = charge.cost((-charge.offset).clamp(cg + first.cg, cg + last.cg));
                if loss.saturating_add(mass) >= best - least {
                    // Even with the heaviest head it is too light, or with the lightest too heavy.
                    continue;
                }
            }
            // Whether a head that has so much loss, or loss and mass, cannot be cheaper.
            let mut look = |head: &Fit| {
                let (loss, mass) = (club.loss.at(pts + head.pts), charge.cost(cg + head.cg));
                best = best.min(loss.saturating_add(mass + tip.cost + head.cost));
                (loss >= best - least, loss.saturating_add(mass) >= best - least)
            };
            let Some(valley) = ordered else {
                self.heads.iter().for_each(|head| _ = look(head));
                continue;
            };
            let balanced = self.heads.partition_point(|h| pts + h.pts < valley);
            let massive = self.heads.partition_point(|h| cg + h.cg + charge.offset < CentiGrams(0));
            let (from, to) = (balanced.min(massive), balanced.max(massive));
            // Away from the swing weight, where the loss rises while the mass comes nearer.
            if balanced < massive {
                _ = self.heads[from..to].iter().any(|h| look(h).0);
            } else {
                _ = self.heads[from..to].iter().rev().any(|h| look(h).0);
            }
            _ = self.heads[to..].iter().any(|h| look(h).1);
            _ = self.heads[..from].iter().rev().any(|h| look(h).1);
        }
        best
    }
}

#[cfg(test)]
mod tests {
    use super::Fits;
    use crate::compile::compile;
    use crate::grid::{FORBIDDEN, Steps};
    use crate::index::{GRIP, HEAD, SHAFT};
    use crate::instance::{Rng, Variant, set};
    use crate::model::{JobSet, MassTarget};
    use crate::prices::by_type;

    /// Against all pairs of head and tip weight.
    #[test]
    fn the_cheapest_pair_is_that_of_a_look_at_all() {
        let mut out_of_order = 0;
        for seed in 0..12 {
            let mut rng = Rng::new(seed);
            let mut problem = set(seed, Variant::TwoHeadModels);
            for club in &mut problem.clubs {
                let nominal_g = club.head_scale.expect("given").zero_mass_g + club.shaft_nominal_g + 50.0;
                let target_g = nominal_g + rng.uniform(-4.0, 9.0);
                club.mass_target = Some(MassTarget { base_mass_g: 0.0, target_g });
                if seed % 3 == 0 {
                    club.heads[4].mass_g += 3.0;
                }
                club.heads.iter_mut().for_each(|h| h.extra_cost = rng.uniform(0.0, 0.02));
            }
            let sets = [JobSet { clubs: problem.clubs, priority: 1.0 }];
            let p = compile(&sets, &problem.stock, &problem.weights).expect("valid");
            let mut prices = by_type(&p, Steps(0));
            prices
                .values_mut()
                .flatten()
                .for_each(|x| *x = if rng.below(9) == 0 { FORBIDDEN } else { Steps(rng.below(900) as i32) });
            let mut fits = Fits::default();
            for club in &p.clubs {
                fits.renew(club, &prices);
                out_of_order += usize::from(!fits.in_order);
                let charge = club.mass.expect("given");
                for (shaft, grip) in club.cands[SHAFT].iter().zip(&club.cands[GRIP]) {
                    let (pts, cg) = (club.base + shaft.pts + grip.pts, shaft.cg + grip.cg);
                    let mut least = FORBIDDEN;
                    for h in &club.cands[HEAD] {
                        for t in &club.tips {
                            let price = prices[HEAD][h.ty] + crate::prices::tip_price(t, &prices);
                            let cost = club.loss.at(pts + h.pts + t.pts) + charge.cost(cg + h.cg + t.cg);
                            least = least.min(cost.saturating_add(h.cost + t.cost).saturating_add(price));
                        }
                    }
                    assert_eq!(fits.least(club, charge, pts, cg, FORBIDDEN), least, "seed {seed}");
                    let limit = Steps(rng.below(4000) as i32);
                    assert_eq!(fits.least(club, charge, pts, cg, limit), least.min(limit), "seed {seed}");
                }
            }
        }
        assert!((1..96).contains(&out_of_order), "{out_of_order}");
    }
}
