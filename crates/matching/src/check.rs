//! An independent look at every plan before it is handed out.
//!
//! Works from the question as given, not from the solver's tables: each part at most as often as it is there, every
//! part among the club's candidates, caps kept, and the cost added up anew.

use std::collections::BTreeMap;

use crate::error::PartKind;
use crate::model::{Candidate, ClubNeed, CostWeights, JobSet, Stock};
use crate::solution::Choice;

/// Adds up what a plan costs, in whole quanta, or says what is wrong with it.
pub(crate) fn check(
    sets: &[JobSet],
    stock: &Stock,
    weights: &CostWeights,
    plan: &[Vec<Option<Choice>>],
) -> Result<i64, String> {
    if plan.len() != sets.len() {
        return Err(format!("{} sets planned of {}", plan.len(), sets.len()));
    }
    let mut used: BTreeMap<(PartKind, usize), u32> = BTreeMap::new();
    let mut total = 0.0;
    for (i, (set, choices)) in sets.iter().zip(plan).enumerate() {
        if set.clubs.len() != choices.len() {
            return Err(format!("set {i}: {} clubs planned of {}", choices.len(), set.clubs.len()));
        }
        let rate = set.priority / weights.quantum;
        let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
        for (j, (club, choice)) in set.clubs.iter().zip(choices).enumerate() {
            let Some(choice) = choice else {
                total += (weights.unbuilt * rate).round();
                continue;
            };
            total += club_quanta(club, choice, stock, weights, rate).map_err(|e| format!("set {i} club {j}: {e}"))?;
            let shaft = listed(&club.shafts, choice.shaft).ok_or("shaft not among the candidates")?;
            let residual = ((shaft.mass_g - club.shaft_nominal_g) * 10.0).round();
            (least, most) = (least.min(residual), most.max(residual));
            *used.entry((PartKind::Head, choice.head)).or_default() += 1;
            *used.entry((PartKind::Shaft, choice.shaft)).or_default() += 1;
            *used.entry((PartKind::Grip, choice.grip)).or_default() += 1;
            for &tip in &choice.tips {
                *used.entry((PartKind::Tip, tip)).or_default() += 1;
            }
        }
        if most > least {
            total += ((most - least) / 10.0 * weights.shaft_range_per_g * rate).round();
        }
    }
    for ((kind, part), count) in used {
        let there = match kind {
            PartKind::Head => stock.heads[part],
            PartKind::Shaft => stock.shafts[part],
            PartKind::Grip => stock.grips[part],
            PartKind::Tip => stock.tips[part].count,
        };
        if count > there {
            return Err(format!("{kind} {part} used {count} times of {there}"));
        }
    }
    Ok(total as i64)
}

fn listed(list: &[Candidate], part: usize) -> Option<&Candidate> {
    list.iter().find(|c| c.part == part)
}

fn club_quanta(club: &ClubNeed, x: &Choice, stock: &Stock, w: &CostWeights, rate: f64) -> Result<f64, String> {
    let head = listed(&club.heads, x.head).ok_or("head not among the candidates")?;
    let shaft = listed(&club.shafts, x.shaft).ok_or("shaft not among the candidates")?;
    let grip = listed(&club.grips, x.grip).ok_or("grip not among the candidates")?;
    let (mut grams, mut milli) = (0.0, (club.base_points * 1000.0).round());
    for part in [head, shaft, grip] {
        milli += (part.points * 1000.0).round();
    }
    for &tip in &x.tips {
        let fit = club.tips.iter().find(|f| f.tip == tip).ok_or(format!("tip weight {tip} does not fit"))?;
        grams += stock.tips[tip].grams;
        milli += (fit.points * 1000.0).round();
    }
    if grams > club.tip_cap_g + 1e-6 {
        return Err(format!("{grams} g of tip weight over the cap of {} g", club.tip_cap_g));
    }
    if x.tips.len() > if club.tip_pair_allowed { 2 } else { 1 } {
        return Err(format!("{} tip weights stacked", x.tips.len()));
    }
    let loss = club.loss.cost(milli / 1000.0).ok_or(format!("deviation {} points is out of reach", milli / 1000.0))?;
    let mut sum = (loss * w.loss * rate).round() + (grams * w.tip_per_g * rate).round();
    for part in [head, shaft, grip] {
        sum += (part.extra_cost * rate).round();
    }
    if let Some(m) = club.mass_target {
        let centi = |g: f64| (g * 100.0).round();
        let parts = centi(head.mass_g) + centi(shaft.mass_g) + centi(grip.mass_g) + centi(grams);
        let off = (parts + centi(m.base_mass_g - m.target_g)).abs();
        sum += (off * (w.mass_per_g * rate / 100.0)).round();
    }
    Ok(sum)
}
