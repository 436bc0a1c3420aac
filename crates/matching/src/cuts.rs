//! How many sets there are shafts of nearly the same residual for.
//!
//! With a range to pay for, the relaxed day builds every set from shafts of one residual, and where there are fifteen of
//! it, builds one set and seven eighths of another. Counting all shafts that can have a residual from `a` to `b`,
//! dividing by the clubs of a set and rounding down gives a valid inequality: the sets that lie wholly within `a..=b`
//! are at most ⌊shafts / clubs⌋ (rounding after Chvátal, *Discrete Mathematics* 4, 1973; such rank-one inequalities over
//! columns: Petersen, Pisinger & Spoorendonk in *The Vehicle Routing Problem*, 2008; both from memory). Its price is a
//! charge on windows inside `a..=b`, so a set's subproblem stays as easy as it was.

use crate::charges::WIDTH;
use crate::compiled::Compiled;
use crate::grid::{DeciGrams, Steps, Total};
use crate::index::{PerType, SHAFT, Ty, count};
use crate::oracle::SetOracle;

/// The inequalities of a day, by first residual and width.
#[derive(Debug)]
pub(crate) struct Cuts {
    /// Clubs that count as one set; smaller sets do not count.
    size: usize,
    /// Distinct residuals of all sets, ascending.
    residuals: Vec<DeciGrams>,
    /// Number of each inequality that restricts anything, and how many sets there are shafts for.
    most: Vec<(usize, i32)>,
    price: Vec<f64>,
    mean: Vec<f64>,
    /// Those of the best bound.
    centre: Vec<f64>,
    /// How many sets now lie within each stretch.
    count: Vec<i32>,
    /// Which stretches hold each set.
    over: Vec<Vec<usize>>,
    /// Charge of each stretch under the prices last fixed, and those prices.
    charge: Vec<Steps>,
    whole: Vec<Steps>,
}

/// Which prices to fix.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Which {
    Present,
    Mean,
}

impl Cuts {
    pub fn new(p: &Compiled) -> Self {
        let size = usual_size(p);
        let mut pairs: Vec<(DeciGrams, Ty)> = Vec::new();
        for shape in p.sets.iter().filter(|s| s.charges_range()) {
            for club in &p.clubs[shape.clubs.clone()] {
                pairs.extend(club.cands[SHAFT].iter().map(|s| (s.res, s.ty)));
            }
            pairs.sort_unstable();
            pairs.dedup();
        }
        let mut residuals: Vec<DeciGrams> = pairs.iter().map(|x| x.0).collect();
        residuals.dedup();
        let sets = count(p.sets.iter().filter(|s| s.clubs.len() >= size).count());
        let mut most = Vec::new();
        let mut seen = PerType::new(p.types[SHAFT].len(), usize::MAX);
        for (first, &from) in residuals.iter().enumerate() {
            let mut shafts = 0_u64;
            let mut rest = pairs[pairs.partition_point(|x| x.0 < from)..].iter().peekable();
            for (width, &residual) in residuals[first..].iter().take(WIDTH).enumerate() {
                while let Some(&(_, ty)) = rest.next_if(|x| x.0 == residual) {
                    if std::mem::replace(&mut seen[ty], first) != first {
                        shafts += u64::from(p.types[SHAFT][ty].cap);
                    }
                }
                // Stretches too short for a single set are left to the subproblem.
                let there = shafts / count(size);
                if there > 0
                    && there < sets
                    && let Ok(there) = i32::try_from(there)
                {
                    most.push((first * WIDTH + width, there));
                }
            }
        }
        let n = residuals.len() * WIDTH;
        Self {
            size,
            residuals,
            most,
            price: vec![0.0; n],
            mean: vec![0.0; n],
            centre: vec![0.0; n],
            count: vec![0; n],
            over: vec![Vec::new(); p.sets.len()],
            charge: vec![Steps(0); n],
            whole: vec![Steps(0); n],
        }
    }

    /// Notes where a set lies at its last planning; `span` is its least and greatest residual if all of it is built.
    pub fn note(&mut self, set: usize, clubs: usize, span: Option<(DeciGrams, DeciGrams)>) {
        let mut over = std::mem::take(&mut self.over[set]);
        over.drain(..).for_each(|i| self.count[i] -= 1);
        if let Some((lo, hi)) = span
            && clubs >= self.size
            && !self.residuals.is_empty()
        {
            let (from, to) = (self.at(lo), self.at(hi));
            for first in (to + 1).saturating_sub(WIDTH)..=from {
                over.extend((to - first..WIDTH).map(|width| first * WIDTH + width));
            }
        }
        over.iter().for_each(|&i| self.count[i] += 1);
        self.over[set] = over;
    }

    fn at(&self, residual: DeciGrams) -> usize {
        self.residuals.partition_point(|&r| r < residual)
    }

    /// What the inequalities add to the relaxed cost, and the square of the direction.
    pub fn excess(&self) -> (f64, f64) {
        self.most.iter().fold((0.0, 0.0), |(value, norm), &(i, most)| {
            let (excess, price) = (f64::from(self.count[i] - most), self.price[i]);
            let moves = excess > 0.0 || price > 0.0;
            (value + price * excess, norm + if moves { excess * excess } else { 0.0 })
        })
    }

    /// Moves the prices, which stay below `top`, and their running mean.
    pub fn step(&mut self, step: f64, newest: f64, top: f64) {
        for &(i, most) in &self.most {
            let excess = f64::from(self.count[i] - most);
            self.price[i] = (self.price[i] + step * excess).clamp(0.0, top);
            self.mean[i] += newest * (self.price[i] - self.mean[i]);
        }
    }

    /// Notes that the mean prices are those of the best bound.
    pub fn keep_centre(&mut self) {
        self.centre.clone_from(&self.mean);
    }

    /// Starts over from the prices of the best bound.
    pub fn back_to_centre(&mut self) {
        self.price.clone_from(&self.centre);
        self.mean.clone_from(&self.centre);
    }

    /// Rounds the prices and adds up the charge of every stretch: the prices of all stretches that hold it.
    pub fn fix(&mut self, which: Which) {
        let from = if which == Which::Mean { &self.mean } else { &self.price };
        for &(i, _) in &self.most {
            self.whole[i] = Steps::half_up(from[i]);
        }
        for first in 0..self.residuals.len() {
            for width in (0..WIDTH).rev() {
                let charge = &self.charge;
                let at = |back: usize, wider: usize| match first.checked_sub(back) {
                    Some(a) if width + wider < WIDTH => charge[a * WIDTH + width + wider],
                    _ => Steps(0),
                };
                let own = first * WIDTH + width;
                self.charge[own] = self.whole[own] + at(1, 1) + at(0, 1) - at(1, 2);
            }
        }
    }

    /// What all inequalities allow, at the prices last fixed; comes off the relaxed cost to give the bound.
    pub fn worth(&self) -> Total {
        self.most.iter().map(|&(i, most)| self.whole[i].times(most)).sum()
    }

    /// Charges a set's windows at the prices last fixed.
    pub fn charge(&self, o: &mut SetOracle<'_>) {
        o.charges.by_window.clear();
        if o.len() < self.size || !o.shape.charges_range() {
            return;
        }
        for lo in 0..o.levels.len() {
            let first = self.at(o.levels[lo]);
            let charge = |width: usize| {
                let wide = self.at(*o.levels.get(lo + width)?) - first;
                (wide < WIDTH).then(|| self.charge[first * WIDTH + wide])
            };
            o.charges.by_window.extend((0..WIDTH).map(|width| charge(width).unwrap_or_default()));
        }
    }
}

/// The most frequent number of clubs in a set.
fn usual_size(p: &Compiled) -> usize {
    let sizes: Vec<usize> = p.sets.iter().map(|s| s.clubs.len()).filter(|&n| n > 0).collect();
    sizes.iter().copied().max_by_key(|n| (sizes.iter().filter(|m| *m == n).count(), *n)).unwrap_or(1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::charges::Charges;
    use crate::compile::compile;
    use crate::instance::{Rng, Variant, set};
    use crate::model::JobSet;

    /// Against all ways to give the clubs of a set their shafts: no set, whole or not, is charged beyond what it costs.
    #[test]
    fn no_set_costs_less_than_the_cheapest_window_says() {
        let (mut charged, mut reached) = (0, 0);
        for seed in 0..3000 {
            let mut rng = Rng::new(seed);
            let mut problem = set(seed % 7, Variant::Plain);
            let (clubs, shafts) = (1 + rng.below(3), 1 + rng.below(4));
            problem.clubs.truncate(clubs);
            for club in &mut problem.clubs {
                club.shafts.retain(|s| s.part < shafts);
            }
            // Often several of one residual, and fewer of it than there are clubs.
            for part in 0..shafts {
                let off_g = 0.1 * rng.below(3) as f64;
                problem.stock.shafts[part] = 1 + rng.below(5) as u32 / 4;
                for club in &mut problem.clubs {
                    let nominal_g = club.shaft_nominal_g;
                    let shaft = club.shafts.iter_mut().find(|s| s.part == part).expect("listed");
                    (shaft.mass_g, shaft.extra_cost) = (nominal_g + off_g, 0.001 * part as f64);
                }
            }
            let sets = [JobSet { clubs: problem.clubs, priority: 1.0 }];
            let p = compile(&sets, &problem.stock, &problem.weights).expect("valid");
            let mut o = SetOracle::new(&p, 0);
            for c in 0..o.len() {
                o.cells[c].iter_mut().for_each(|cell| cell.value = Steps(rng.below(900) as i32));
                o.skips[c] = Steps(rng.below(1500) as i32);
            }
            let plain = o.best_window().0;
            let by_window =
                (0..o.levels.len() * WIDTH).map(|_| Steps((rng.below(3) * rng.below(400)) as i32)).collect();
            o.charges = Charges { by_window };
            let told = o.best_window().0;
            let mut left = p.types[SHAFT].each(|t| t.cap);
            let least = least(&o, &mut left, &mut Vec::new());
            assert!(told <= least, "{told:?} above {least:?}, seed {seed}");
            charged += usize::from(told > plain);
            reached += usize::from(told == least);
        }
        // Charges matter, and the bound is no idle one.
        assert!(charged > 300 && reached > 1000, "{charged} {reached}");
    }

    /// The cheapest way to give the clubs that have none yet a shaft, or none.
    fn least(o: &SetOracle<'_>, left: &mut PerType<u32>, given: &mut Vec<Option<usize>>) -> Total {
        let c = given.len();
        if c == o.len() {
            let value = |(c, at): (usize, &Option<usize>)| at.map_or(o.skips[c], |level| o.cells[c][level].value);
            let sum: Total = given.iter().enumerate().map(value).map(Total::from).sum();
            let levels = || given.iter().copied().flatten();
            let Some((lo, hi)) = levels().min().zip(levels().max()) else { return sum };
            let charge = if given.iter().all(Option::is_some) { o.charges.at(lo, hi) } else { Steps(0) };
            return sum + Total::from(o.shape.range_cost(o.levels[hi] - o.levels[lo])) + Total::from(charge);
        }
        given.push(None);
        let mut best = least(o, left, given);
        given.pop();
        for shaft in &o.clubs[c].cands[SHAFT] {
            if left[shaft.ty] > 0 {
                left[shaft.ty] -= 1;
                given.push(o.levels.iter().position(|&l| l == shaft.res));
                best = best.min(least(o, left, given));
                given.pop();
                left[shaft.ty] += 1;
            }
        }
        best
    }
}
