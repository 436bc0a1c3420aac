//! From types back to pieces, and from columns to choices with their reasons in figures.

use crate::compile::{Compiled, GRIP, HEAD, SHAFT};
use crate::model::{Candidate, ClubNeed, CostWeights, JobSet, Stock};
use crate::solution::{Choice, ClubCost};
use crate::table::Column;

/// Hands out the pieces of each type in ascending order of their numbers.
struct Pieces {
    next: [Vec<(usize, u32)>; 4],
}

impl Pieces {
    fn take(&mut self, p: &Compiled, kind: usize, ty: usize) -> usize {
        let (member, used) = &mut self.next[kind][ty];
        let members = &p.types[kind][ty].members;
        while *member + 1 < members.len() && *used >= members[*member].1 {
            (*member, *used) = (*member + 1, 0);
        }
        *used += 1;
        members[*member].0 as usize
    }
}

/// Choices for all clubs, set by set.
pub(crate) fn choices(
    p: &Compiled,
    sets: &[JobSet],
    stock: &Stock,
    weights: &CostWeights,
    columns: &[Option<Column>],
) -> Vec<Vec<Option<Choice>>> {
    let mut pieces = Pieces { next: [0, 1, 2, 3].map(|k| vec![(0, 0); p.types[k].len()]) };
    let mut at = 0;
    let mut out = Vec::with_capacity(sets.len());
    for set in sets {
        let mut row = Vec::with_capacity(set.clubs.len());
        for need in &set.clubs {
            row.push(columns[at].map(|column| {
                let mut parts: [usize; 3] = [0; 3];
                let mut tips = Vec::new();
                for (k, ty) in column.uses() {
                    let piece = pieces.take(p, k, ty);
                    if k < 3 { parts[k] = piece } else { tips.push(piece) }
                }
                choice(need, stock, weights, set.priority, parts, tips)
            }));
            at += 1;
        }
        out.push(row);
    }
    out
}

fn choice(
    need: &ClubNeed,
    stock: &Stock,
    weights: &CostWeights,
    priority: f64,
    parts: [usize; 3],
    mut tips: Vec<usize>,
) -> Choice {
    tips.sort_unstable();
    let chosen = [&need.heads, &need.shafts, &need.grips].into_iter().zip(parts).filter_map(|(l, p)| by_part(l, p));
    let chosen: Vec<&Candidate> = chosen.collect();
    let tip_points: f64 = tips.iter().filter_map(|t| need.tips.iter().find(|f| f.tip == *t)).map(|f| f.points).sum();
    let tip_g: f64 = tips.iter().map(|&t| stock.tips[t].grams).sum();
    let deviation_points = need.base_points + chosen.iter().map(|c| c.points).sum::<f64>() + tip_points;
    let mass = chosen.iter().map(|c| c.mass_g).sum::<f64>() + tip_g;
    let mass_residual_g = need.mass_target.map(|m| m.base_mass_g + mass - m.target_g);
    let cost = ClubCost {
        loss: need.loss.cost(deviation_points).unwrap_or(f64::INFINITY) * weights.loss * priority,
        tip: tip_g * weights.tip_per_g * priority,
        mass: mass_residual_g.map_or(0.0, |m| m.abs() * weights.mass_per_g * priority),
        extra: chosen.iter().map(|c| c.extra_cost).sum::<f64>() * priority,
    };
    let shaft_residual_g = by_part(&need.shafts, parts[SHAFT]).map_or(0.0, |s| s.mass_g - need.shaft_nominal_g);
    let (head, shaft, grip) = (parts[HEAD], parts[SHAFT], parts[GRIP]);
    Choice { head, shaft, grip, tips, deviation_points, tip_g, shaft_residual_g, mass_residual_g, cost }
}

fn by_part(list: &[Candidate], part: usize) -> Option<&Candidate> {
    list.iter().find(|c| c.part == part)
}
