//! All plans of a small day tried by a plain recursion that shares nothing with the solver but the question.
//!
//! Costs are added up here in whole quanta, each rounded by itself as the documentation of [`CostWeights::quantum`] says:
//! to the nearest, half a quantum and what lies within a millionth of it upwards. Factors are multiplied here in another
//! order than in the solver, so that only the rule is shared and not its arithmetic.

use matching::{Candidate, ClubNeed, CostWeights, DayProblem};

/// A cost in quanta.
pub fn quanta(cost: f64, w: &CostWeights) -> i64 {
    (cost / w.quantum + 0.5 + 1e-6).floor() as i64
}

fn milli(points: f64) -> i64 {
    (points * 1000.0).round() as i64
}

fn centi(mass_g: f64) -> i64 {
    (mass_g * 100.0).round() as i64
}

/// Least cost of all plans of a day, in quanta.
pub fn least_of_all(day: &DayProblem) -> i64 {
    let s = &day.stock;
    let tips = s.tips.iter().map(|t| t.count).collect();
    let left = [s.heads.clone(), s.shafts.clone(), s.grips.clone(), tips, s.adapters.clone()];
    let clubs = day.sets.iter().enumerate().flat_map(|(set, s)| s.clubs.iter().map(move |c| (set, c))).collect();
    let mut tried = Tried { day, clubs, left, best: i64::MAX };
    tried.club(0, 0, &mut vec![]);
    tried.best
}

struct Tried<'a> {
    day: &'a DayProblem,
    /// All clubs with the numbers of their sets.
    clubs: Vec<(usize, &'a ClubNeed)>,
    left: [Vec<u32>; 5],
    best: i64,
}

impl Tried<'_> {
    /// Plans club `at`, given the cost so far and the shaft residuals (tenths of a gram) of its set so far.
    fn club(&mut self, at: usize, mut cost: i64, residuals: &mut Vec<i64>) {
        let w = &self.day.weights;
        let mut next_set = Vec::new();
        let set = self.clubs.get(at).map(|c| c.0);
        let residuals = if at > 0 && set != Some(self.clubs[at - 1].0) {
            let range = residuals.iter().max().unwrap_or(&0) - residuals.iter().min().unwrap_or(&0);
            let priority = self.day.sets[self.clubs[at - 1].0].priority;
            cost += quanta(priority * (range as f64 * w.shaft_range_per_g) / 10.0, w);
            &mut next_set
        } else {
            residuals
        };
        // Nothing costs less than nothing.
        if cost >= self.best {
            return;
        }
        let Some(&(set, club)) = self.clubs.get(at) else {
            self.best = cost;
            return;
        };
        let priority = self.day.sets[set].priority;
        self.club(at + 1, cost + quanta(w.unbuilt * priority, w), residuals);
        let tip_sets = tip_sets(club);
        // No adapter, or one of those that fit.
        let adapters: Vec<Option<&Candidate>> = match &club.adapters {
            Some(list) => list.iter().map(Some).collect(),
            None => vec![None],
        };
        for h in &club.heads {
            for s in &club.shafts {
                for g in &club.grips {
                    for (adapter, tips) in adapters.iter().flat_map(|a| tip_sets.iter().map(move |t| (a, t))) {
                        let parts: Vec<&Candidate> = [h, s, g].into_iter().chain(*adapter).collect();
                        let Some(own) = own_cost(self.day, priority, club, &parts, tips) else { continue };
                        let mut taken = vec![(0, h.part), (1, s.part), (2, g.part)];
                        taken.extend(tips.0.iter().map(|&t| (3, t)));
                        taken.extend(adapter.map(|a| (4, a.part)));
                        if self.take(&taken) {
                            residuals.push(((s.mass_g - club.shaft_nominal_g) * 10.0).round() as i64);
                            self.club(at + 1, cost + own, residuals);
                            residuals.pop();
                            taken.iter().for_each(|&(k, part)| self.left[k][part] += 1);
                        }
                    }
                }
            }
        }
    }

    fn take(&mut self, parts: &[(usize, usize)]) -> bool {
        for (i, &(k, part)) in parts.iter().enumerate() {
            if self.left[k][part] == 0 {
                parts[..i].iter().for_each(|&(k, part)| self.left[k][part] += 1);
                return false;
            }
            self.left[k][part] -= 1;
        }
        true
    }
}

/// What may go into a tip, with what is lost by stacking.
pub fn tip_sets(club: &ClubNeed) -> Vec<(Vec<usize>, f64)> {
    let fits = |tip: usize| club.tips.iter().any(|f| f.tip == tip);
    let mut sets = vec![(vec![], 0.0)];
    sets.extend(club.tips.iter().map(|f| (vec![f.tip], 0.0)));
    let pairs = club.tip_pairs.iter().filter(|p| fits(p.lower) && fits(p.upper));
    sets.extend(pairs.map(|p| (vec![p.lower, p.upper], p.lost_points)));
    sets
}

pub fn own_cost(
    day: &DayProblem,
    priority: f64,
    club: &ClubNeed,
    parts: &[&Candidate],
    (tips, lost_points): &(Vec<usize>, f64),
) -> Option<i64> {
    let w = &day.weights;
    if tips.iter().map(|&t| day.stock.tips[t].grams).sum::<f64>() > club.tip_cap_g + 1e-9 {
        return None;
    }
    let in_tip: i64 = tips.iter().map(|&t| centi(day.stock.tips[t].grams)).sum();
    let fit = |t: usize| club.tips.iter().find(|f| f.tip == t).map_or(0, |f| milli(f.points));
    let deviation = milli(club.base_points)
        + parts.iter().map(|c| milli(c.points)).sum::<i64>()
        + tips.iter().map(|&t| fit(t)).sum::<i64>()
        - milli(*lost_points);
    let loss = club.loss.cost(deviation as f64 / 1000.0)?;
    let mut sum = quanta(priority * (w.loss * loss), w);
    sum += quanta(priority * (in_tip as f64 * w.tip_per_g) / 100.0, w);
    sum += if tips.len() > 1 { quanta(w.second_tip * priority, w) } else { 0 };
    sum += parts.iter().map(|c| quanta(c.extra_cost * priority, w)).sum::<i64>();
    if let Some(m) = club.mass_target {
        let all = parts.iter().map(|c| centi(c.mass_g)).sum::<i64>() + in_tip + centi(m.base_mass_g - m.target_g);
        sum += quanta(priority * (all.abs() as f64 / 100.0 * w.mass_per_g), w);
    }
    Some(sum)
}
