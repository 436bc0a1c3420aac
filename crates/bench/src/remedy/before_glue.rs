//! Before the joint is glued: tip weight, ferrule, head, adapter.

use super::grips::pool_of;
use super::progress::cure_step;
use super::{Action, Case, Change, Deed, Remedy};
use crate::belief::Believed;
use crate::remedy::{Progress, Spare};
use estimation::Part;
use estimation::choice::Prospect;
use trade::error::TradeError;
use trade::job::JobClub;
use trade::kind::Role;
use trade::model::PartKind;
use trade::part_codes::PartCodes;
use trade::places;
use trade::tip_weight::{self, InTip};

/// What the finish of a club looks like from here: what the reading after the cure will still tell of it, and what the
/// grips that may be taken then can correct.
pub(crate) struct Ahead {
    /// By the probability of each combination of usual and unusual means.
    prospects: Vec<(f64, Prospect)>,
    effects: Vec<f64>,
}

impl Ahead {
    pub fn of(case: &Case<'_>) -> Result<Self, TradeError> {
        let prospects = prospects(case.believed, case.club, &case.progress)?;
        let effects = GripBox::of(case.believed, case.club, case.spares)?.effects();
        Ok(Self { prospects, effects })
    }

    /// Chance of finishing in tolerance if the finish is moved by some points now and the best grip is taken later.
    pub fn chance(&self, by_points: f64) -> f64 {
        self.prospects.iter().map(|(weight, ahead)| weight * ahead.moved(by_points).chance_with(&self.effects)).sum()
    }
}

/// Splits a club's finish into what the reading after the cure will tell and what will stay open.
fn prospects(believed: &Believed<'_>, club: &JobClub, progress: &Progress) -> Result<Vec<(f64, Prospect)>, TradeError> {
    let assembly = believed.assembly;
    let mut planned = Vec::new();
    if !progress.cure_read
        && let Some(step) = cure_step(&assembly.job.steps)
    {
        planned.push(assembly.swing_weight_reading(club, &step.on));
    }
    let (target, finish) = (&club.target, assembly.finish_probe(&club.id));
    let asked_points = assembly.asked_of(&finish, target);
    let of = |part: &Part| {
        let tolerance = target.swing_weight_tolerance();
        let prospect = Prospect::of(&part.belief, &finish, asked_points, tolerance, &planned)?;
        Ok((part.weight, prospect))
    };
    believed.mixture().parts.iter().map(of).collect()
}

/// The grips that a club may get, with the clubs that will take from the same box.
struct GripBox(Vec<f64>);

impl GripBox {
    /// Other clubs of the set that still wait for their grips take theirs from the same box: on average half of them
    /// choose before this one.
    fn of(believed: &Believed<'_>, club: &JobClub, spares: &[Spare<'_>]) -> Result<Self, TradeError> {
        let pool = pool_of(believed, club, spares)?;
        let mut effects: Vec<f64> = pool.grips.iter().map(|g| g.takes_off_points).collect();
        effects.sort_by(f64::total_cmp);
        let kept = effects.len().saturating_sub(pool.rivals / 2).max(1);
        let step = effects.len() as f64 / kept as f64;
        let mut thinned: Vec<f64> = if effects.is_empty() {
            Vec::new()
        } else {
            (0..kept).map(|i| effects[((i as f64 + 0.5) * step) as usize]).collect()
        };
        // The planned grip stays held for this club.
        thinned.push(0.0);
        Ok(Self(thinned))
    }

    /// What each takes off the deviation, against the planned one, points.
    fn effects(self) -> Vec<f64> {
        self.0
    }
}

pub(crate) fn remedies(case: &Case<'_>) -> Result<Vec<Remedy>, TradeError> {
    let ahead = Ahead::of(case)?;
    let mut found = tips(case, &ahead)?;
    found.extend(ferrules(case, &ahead)?);
    found.extend(heads(case, &ahead)?);
    found.extend(adapters(case, &ahead)?);
    found.extend(super::late::screws(case, Some(&ahead))?);
    Ok(found)
}

struct TipOption {
    codes: PartCodes,
    grams: f64,
    points: f64,
}

/// Every weight and pair of weights of the tray that fits and stays under the cap; of those that weigh the same the one
/// with fewer pieces.
fn tip_options(case: &Case<'_>) -> Result<Vec<TipOption>, TradeError> {
    let assembly = case.believed.assembly;
    let cap_mm = case.cap_mm()?;
    let tip_diameter_mm = assembly.library.shaft(&case.club.target.shaft_model)?.tip_diameter_mm;
    // Without any flange the tip would end here.
    let bare_mm = case.plan.cut_shaft_mm + flange_mm(case)?;
    let mut single: Vec<(&Spare<'_>, InTip)> = Vec::new();
    for spare in case.spares.iter().filter(|s| s.part.kind == PartKind::TipWeight && s.part.is_free()) {
        let model = assembly.library.tip_weight(&spare.part.model)?;
        if tip_weight::tip_weight_fits(model, tip_diameter_mm) {
            single.push((spare, InTip::of(model, spare.mass_g)));
        }
    }
    let cap_g = assembly.shop.tip_weight_cap_g + 1e-9;
    let mut options = Vec::new();
    for (i, &(a, lower)) in single.iter().enumerate() {
        if a.mass_g <= cap_g {
            let points = tip_weight::points(bare_mm, cap_mm, &[lower]);
            options.push(TipOption { codes: PartCodes::one(&a.part.code), grams: a.mass_g, points });
        }
        for &(b, upper) in &single[i..] {
            let twice = a.part.id == b.part.id;
            let enough = !twice || a.part.count.is_some_and(|n| n >= 2);
            if enough && a.mass_g + b.mass_g <= cap_g {
                let points = tip_weight::points(bare_mm, cap_mm, &[lower, upper]);
                let codes = [a, b].iter().map(|weight| weight.part.code.clone()).collect();
                options.push(TipOption { codes, grams: a.mass_g + b.mass_g, points });
            }
        }
    }
    options.sort_by(|a, b| a.grams.total_cmp(&b.grams).then(a.codes.len().cmp(&b.codes.len())));
    options.dedup_by(|a, b| (a.grams - b.grams).abs() < 0.05);
    Ok(options)
}

fn flange_mm(case: &Case<'_>) -> Result<f64, TradeError> {
    let mut sum = 0.0;
    for part in case.plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight) {
        sum += case.believed.assembly.library.tip_weight(&part.model)?.flange_mm;
    }
    Ok(sum)
}

fn tips(case: &Case<'_>, ahead: &Ahead) -> Result<Vec<Remedy>, TradeError> {
    let cap_mm = case.cap_mm()?;
    let now_g = case.plan.mass_g(Role::TipWeight);
    let now_pieces = case.plan.parts.iter().filter(|p| p.kind == PartKind::TipWeight).count();
    let now_points = places::tip_weight_points(case.believed.assembly.library, case.plan, cap_mm)?;
    let tip_arm_mm = case.plan.cut_shaft_mm + cap_mm;
    let none = TipOption { codes: PartCodes::none(), grams: 0.0, points: 0.0 };
    let mut found = Vec::new();
    // What is in may come out; weight goes in only where the sheet has it.
    let more = if case.club.target.may_have_tip_weight() { tip_options(case)? } else { Vec::new() };
    for option in std::iter::once(none).chain(more) {
        let as_heavy = (option.grams - now_g).abs() < 0.05;
        // One weight in place of two is worth having, the same in as many pieces is not.
        if as_heavy && option.codes.len() >= now_pieces {
            continue;
        }
        let change = Change { more_g: option.grams - now_g, points: option.points - now_points, arm_mm: tip_arm_mm };
        let chance = ahead.chance(change.points);
        let deed = tip_deed(&option, as_heavy, now_g);
        let part = Some((PartKind::TipWeight, option.codes));
        found.push(case.remedy(Action::TipWeight, part, change, Some(chance), deed));
    }
    Ok(found)
}

/// What is put in the tip; `as_heavy`: one piece as heavy as the two that are planned.
fn tip_deed(option: &TipOption, as_heavy: bool, now_g: f64) -> Deed {
    let tip_g = option.grams;
    if option.codes.is_empty() {
        Deed::TipEmpty { now_g }
    } else if as_heavy {
        Deed::TipOneForTwo { tip_g }
    } else if now_g > 0.0 {
        Deed::Tip { tip_g, now_g }
    } else {
        Deed::TipFirst { tip_g }
    }
}

fn ferrules(case: &Case<'_>, ahead: &Ahead) -> Result<Vec<Remedy>, TradeError> {
    let assembly = case.believed.assembly;
    let Some(now) = case.plan.part(PartKind::Ferrule) else { return Ok(Vec::new()) };
    let now_model = assembly.library.ferrule(&now.model)?;
    let (places, cap_mm) = (case.places()?, case.cap_mm()?);
    let mut found: Vec<Remedy> = Vec::new();
    for spare in case.spares.iter().filter(|s| s.part.kind == PartKind::Ferrule && s.part.is_free()) {
        let model = assembly.library.ferrule(&spare.part.model)?;
        let fits = (model.inside_diameter_mm - now_model.inside_diameter_mm).abs() < 0.05;
        if !fits || (spare.mass_g - now.mass_g).abs() < 0.15 || spare.part.id == now.part {
            continue;
        }
        let arm_mm = places.ferrule_mm(model.length_mm) + cap_mm;
        let change = case.change(spare.mass_g - now.mass_g, arm_mm)?;
        let chance = ahead.chance(change.points);
        let part = Some((PartKind::Ferrule, PartCodes::one(&spare.part.code)));
        let deed = Deed::Ferrule { part: spare.part.code.clone(), mass_g: spare.mass_g };
        found.push(case.remedy(Action::Ferrule, part, change, Some(chance), deed));
    }
    Ok(found)
}

fn heads(case: &Case<'_>, ahead: &Ahead) -> Result<Vec<Remedy>, TradeError> {
    let Some(now) = case.plan.part(PartKind::Head) else { return Ok(Vec::new()) };
    let arm_mm = case.head_arm_mm()?;
    let number = &case.plan.head_number;
    let mut found = Vec::new();
    for spare in case.spares.iter().filter(|s| s.part.kind == PartKind::Head && s.part.is_free()) {
        let same = spare.part.model == now.model
            && spare.part.number.as_deref().is_some_and(|n| n.eq_ignore_ascii_case(number))
            && spare.part.mass_g.is_some();
        if !same || (spare.mass_g - now.mass_g).abs() < 0.05 {
            continue;
        }
        let change = case.change(spare.mass_g - now.mass_g, arm_mm)?;
        let chance = ahead.chance(change.points);
        let part = Some((PartKind::Head, PartCodes::one(&spare.part.code)));
        let deed = Deed::Head { part: spare.part.code.clone(), mass_g: spare.mass_g };
        found.push(case.remedy(Action::Head, part, change, Some(chance), deed));
    }
    Ok(found)
}

fn adapters(case: &Case<'_>, ahead: &Ahead) -> Result<Vec<Remedy>, TradeError> {
    let assembly = case.believed.assembly;
    let Some(now) = case.plan.part(PartKind::Adapter) else { return Ok(Vec::new()) };
    let now_model = assembly.library.adapter(&now.model)?;
    let (places, cap_mm) = (case.places()?, case.cap_mm()?);
    let mut found = Vec::new();
    for spare in case.spares.iter().filter(|s| s.part.kind == PartKind::Adapter && s.part.is_free()) {
        let model = assembly.library.adapter(&spare.part.model)?;
        let same_seat = model.fits_head_model == now_model.fits_head_model
            && (model.length_mm - now_model.length_mm).abs() < 0.05
            && (model.bore_diameter_mm - now_model.bore_diameter_mm).abs() < 0.05;
        if !same_seat || (spare.mass_g - now.mass_g).abs() < 0.05 {
            continue;
        }
        let arm_mm = places.adapter_mm(model.length_mm) + cap_mm;
        let change = case.change(spare.mass_g - now.mass_g, arm_mm)?;
        let chance = ahead.chance(change.points);
        let part = Some((PartKind::Adapter, PartCodes::one(&spare.part.code)));
        let deed = Deed::Adapter { part: spare.part.code.clone(), mass_g: spare.mass_g };
        found.push(case.remedy(Action::Adapter, part, change, Some(chance), deed));
    }
    Ok(found)
}
