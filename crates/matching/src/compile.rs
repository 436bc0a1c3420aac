//! From the question to its whole-number form: parts that read the same everywhere become one *type* with a count,
//! tip weights become a short list of options a club.

use std::collections::{HashMap, HashSet};
use std::ops::Range;
use std::sync::Arc;

use crate::compiled::{Cand, Club, Compiled, LossTable, MassCharge, PartType, SetShape, TipOption};
use crate::cost::{Tariff, enough_tips, mass_offset, pieces, residual, tip_mass, tip_points, under_cap};
use crate::error::{Asked, MatchError, PartKind};
use crate::grid::{CentiGrams, DeciGrams, FORBIDDEN, MOST_QUANTA, MilliPoints, Steps};
use crate::index::{ByMain, MAIN, MainKind, PerType, SHAFT, Ty};
use crate::loss::LossForm;
use crate::model::{Candidate, ClubNeed, CostWeights, JobSet, Stock, TipFit, TipPair};
use crate::rng::stirred;
use crate::thin;

/// Checks the problem and brings it to whole numbers.
pub(crate) fn compile(sets: &[JobSet], stock: &Stock, weights: &CostWeights) -> Result<Compiled, MatchError> {
    check_weights(weights)?;
    if sets.iter().all(|s| s.clubs.is_empty()) {
        return Err(MatchError::NoClubs);
    }
    let mut typer = ByMain::from_fn(|kind| Typer::new(kind.into(), stock_of(stock, kind)));
    let mut adapters = Typer::new(PartKind::Adapter, &stock.adapters);
    let mut at = 0;
    let mut pairs_checked: Vec<*const TipPair> = Vec::new();
    for set in sets {
        in_range(Asked::PriorityOfJob, set.priority, 0.03, 30.0, "")?;
        let most = MOST_QUANTA * weights.quantum / set.priority;
        in_range(Asked::CostOfUnbuiltClub, weights.unbuilt, 0.0, most, "")?;
        in_range(Asked::WeightOfLoss, weights.loss, 0.0, most / 7.0, "")?;
        for club in &set.clubs {
            check_club(at, club, stock)?;
            // Clubs mostly share their list.
            let list = club.tip_pairs.as_ptr();
            if !pairs_checked.contains(&list) {
                check_pairs(at, &club.tip_pairs, stock)?;
                pairs_checked.push(list);
            }
            for (kind, typer) in typer.iter_mut() {
                typer.see(at, club, list_of(club, kind), set.priority, weights)?;
            }
            adapters.see(at, club, club.adapters.as_deref().unwrap_or_default(), set.priority, weights)?;
            at += 1;
        }
    }
    let mut typed = typer.map(Typer::finish);
    let adapters = adapters.finish();
    let needs: Vec<(&ClubNeed, f64)> = sets.iter().flat_map(|s| s.clubs.iter().map(|c| (c, s.priority))).collect();
    let offered = |typed: &ByMain<Typed>, c: usize, k: MainKind| {
        let (need, priority) = needs[c];
        typed[k].candidates(need, list_of(need, k), &Tariff::new(weights, priority))
    };
    let counts = typed.each(|t| t.types.len());
    let mass_counts = needs.iter().any(|(need, _)| need.mass_target.is_some());
    let mut ranges = Vec::with_capacity(sets.len());
    for set in sets {
        let from = ranges.last().map_or(0, |last: &Range<usize>| last.end);
        ranges.push(from..from + set.clubs.len());
    }
    let count = |ty: Ty| typed[SHAFT].types[ty].cap;
    let mut thinned = thin::thin(&ranges, &counts, mass_counts, &|c, k| offered(&typed, c, k), &count);
    if let Some(thinned) = &mut thinned {
        for (k, kept) in thinned.kept.iter() {
            let number = typed[k].keep(kept);
            let chosen = thinned.chosen.iter_mut().flat_map(|lists| &mut lists[k]);
            chosen.for_each(|x| x.ty = number[x.ty]);
        }
    }
    let mut tip_types: PerType<PartType> = stock.tips.iter().enumerate().map(|(i, t)| tip_type(i, t.count)).collect();
    let mut losses: HashMap<((usize, LossForm), u64), Arc<LossTable>> = HashMap::new();
    let (mut clubs, mut shapes) = (Vec::with_capacity(at), Vec::with_capacity(sets.len()));
    for (set, range) in sets.iter().zip(ranges) {
        let tariff = Tariff::new(weights, set.priority);
        for need in &set.clubs {
            let key = (need.loss.key(), set.priority.to_bits());
            let loss = losses.entry(key).or_insert_with(|| loss_table(need, &tariff)).clone();
            let own = need.adapters.as_ref().map(|list| adapters.candidates(need, list, &tariff));
            let tips = tip_options(need, stock, &tariff, own.as_deref());
            for tip in &need.tips {
                tip_types[Ty::of(tip.tip)].wanted += 1;
            }
            let at = clubs.len();
            let mut cands = match &mut thinned {
                Some(thinned) => std::mem::take(&mut thinned.chosen[at]),
                None => ByMain::from_fn(|k| offered(&typed, at, k)),
            };
            cands.values_mut().for_each(|list| list.sort_by_key(|c| (c.res, c.pts, c.cost, c.ty)));
            clubs.push(Arc::new(Club {
                base: MilliPoints::of(need.base_points),
                cands,
                tips,
                adapters: own.map(|list| list.iter().map(|c| c.ty).collect()),
                loss,
                mass: mass_offset(need).map(|offset| MassCharge {
                    offset,
                    slack: CentiGrams(0),
                    rate: tariff.mass_rate(),
                }),
                skip: tariff.unbuilt().steps(),
            }));
        }
        let charged = (weights.shaft_range_per_g > 0.0).then(|| tariff.range_rate());
        shapes.push(SetShape { clubs: range, shafts: None, range: charged });
    }
    let types = typed.map(|t| t.types).and(tip_types, adapters.types);
    let mut compiled = Compiled { clubs, sets: shapes, types, quantum: weights.quantum, relaxed: None };
    compiled.relaxed = thinned.map(|t| Box::new(thin::relaxed(&compiled, t.left_out)));
    compiled.clubs.iter_mut().for_each(|club| drop_out_of_reach(Arc::make_mut(club)));
    Ok(compiled)
}

/// A club's candidates of one kind.
fn list_of(club: &ClubNeed, kind: MainKind) -> &[Candidate] {
    match kind {
        MainKind::Head => &club.heads,
        MainKind::Shaft => &club.shafts,
        MainKind::Grip => &club.grips,
    }
}

/// How many there are of each part of one kind.
fn stock_of(stock: &Stock, kind: MainKind) -> &[u32] {
    match kind {
        MainKind::Head => &stock.heads,
        MainKind::Shaft => &stock.shafts,
        MainKind::Grip => &stock.grips,
    }
}

fn tip_type(index: usize, count: u32) -> PartType {
    PartType { members: vec![(index, count)], cap: count, wanted: 0 }
}

fn loss_table(need: &ClubNeed, tariff: &Tariff) -> Arc<LossTable> {
    let costs: Vec<Steps> = need.loss.costs().map(|c| c.map_or(FORBIDDEN, |c| tariff.loss(c).steps())).collect();
    Arc::new(LossTable::new(costs, need.loss.half()))
}

/// No weight, each weight, each pair of which both fit, where the club takes one with each adapter, the cheapest first;
/// those over the cap, or more than the tray has, are left out.
fn tip_options(need: &ClubNeed, stock: &Stock, tariff: &Tariff, adapters: Option<&[Cand]>) -> Vec<TipOption> {
    let none = TipOption { adapter: None, uses: [None, None], pts: MilliPoints(0), cg: CentiGrams(0), cost: Steps(0) };
    let mut options = vec![none];
    let mut push = |fits: &[&TipFit], pair: Option<&TipPair>| {
        let tips = || fits.iter().map(|f| f.tip);
        if tips().all(|tip| enough_tips(stock, tip, tips())) && under_cap(need, stock, tips()) {
            let mass = tip_mass(stock, tips());
            options.push(TipOption {
                adapter: None,
                uses: [fits.first(), fits.get(1)].map(|f| f.map(|f| Ty::of(f.tip))),
                pts: tip_points(fits.iter().copied(), pair),
                cg: if need.mass_target.is_some() { mass } else { CentiGrams(0) },
                cost: tariff.tip(mass, pieces(stock, tips())).steps(),
            });
        }
    };
    let mut fit_of: Vec<Option<&TipFit>> = vec![None; stock.tips.len()];
    for fit in &need.tips {
        fit_of[fit.tip] = Some(fit);
        push(&[fit], None);
    }
    for pair in need.tip_pairs.iter() {
        if let (Some(lower), Some(upper)) = (fit_of[pair.lower], fit_of[pair.upper]) {
            push(&[lower, upper], Some(pair));
        }
    }
    if let Some(adapters) = adapters {
        let with = |o: &TipOption, a: &Cand| TipOption {
            adapter: Some(a.ty),
            uses: o.uses,
            pts: o.pts + a.pts,
            cg: o.cg + a.cg,
            cost: o.cost + a.cost,
        };
        options = options.iter().flat_map(|o| adapters.iter().map(|a| with(o, a))).collect();
    }
    options.sort_by_key(|o| (o.cost, o.uses, o.adapter));
    options
}

/// Collects what each part looks like in every club, and groups parts that look the same everywhere.
struct Typer<'a> {
    kind: PartKind,
    capacity: &'a [u32],
    /// Fingerprint of all appearances of a part so far (two independent 64-bit hashes), and how many.
    prints: Vec<(u64, u64, u32)>,
    last_club: Vec<usize>,
}

fn pair(a: i32, b: i32) -> u64 {
    u64::from(a.cast_unsigned()) << 32 | u64::from(b.cast_unsigned())
}

struct Typed {
    kind: PartKind,
    types: PerType<PartType>,
    type_of: Vec<Option<Ty>>,
}

impl<'a> Typer<'a> {
    fn new(kind: PartKind, capacity: &'a [u32]) -> Self {
        Self {
            kind,
            capacity,
            prints: vec![(0x9e37_79b9_7f4a_7c15, 0x85eb_ca6b_c2b2_ae35, 0); capacity.len()],
            last_club: vec![usize::MAX; capacity.len()],
        }
    }

    fn see(
        &mut self,
        at: usize,
        club: &ClubNeed,
        list: &[Candidate],
        priority: f64,
        weights: &CostWeights,
    ) -> Result<(), MatchError> {
        let tariff = Tariff::new(weights, priority);
        for c in list {
            let (kind, part, count) = (self.kind, c.part, self.capacity.len());
            if part >= count {
                return Err(MatchError::UnknownPart { club: at, kind, part, count });
            }
            if self.last_club[part] == at {
                return Err(MatchError::ListedTwice { club: at, kind, part });
            }
            self.last_club[part] = at;
            finite(at, Asked::ContributionOfPart, c.points)?;
            finite(at, Asked::MassOfPart, c.mass_g)?;
            in_range(Asked::ContributionOfPart, c.points, -500.0, 500.0, "points")?;
            in_range(Asked::MassOfPart, c.mass_g, 0.0, 1e4, "g")?;
            in_range(Asked::ExtraCostOfPart, c.extra_cost, 0.0, MOST_QUANTA * weights.quantum / priority, "")?;
            let seen = whole(club, c, kind, Ty::default(), &tariff);
            let print = &mut self.prints[part];
            for half in [&mut print.0, &mut print.1] {
                for word in [crate::index::count(at), pair(seen.pts.0, seen.cg.0), pair(seen.cost.0, seen.res.0)] {
                    *half = stirred(*half ^ word);
                }
            }
            print.2 += 1;
        }
        Ok(())
    }

    fn finish(self) -> Typed {
        let mut index: HashMap<(u64, u64, u32), Ty> = HashMap::new();
        let mut types: PerType<PartType> = PerType::default();
        let mut type_of = vec![None; self.capacity.len()];
        for (part, print) in self.prints.iter().enumerate() {
            if print.2 == 0 || self.capacity[part] == 0 {
                continue;
            }
            let ty = *index
                .entry(*print)
                .or_insert_with(|| types.push(PartType { members: Vec::new(), cap: 0, wanted: print.2 }));
            let t = &mut types[ty];
            t.members.push((part, self.capacity[part]));
            t.cap = t.cap.saturating_add(self.capacity[part]);
            type_of[part] = Some(ty);
        }
        Typed { kind: self.kind, types, type_of }
    }
}

impl Typed {
    /// One candidate for each type that a club may take.
    fn candidates(&self, need: &ClubNeed, list: &[Candidate], tariff: &Tariff) -> Vec<Cand> {
        let mut out: Vec<Cand> = Vec::new();
        for c in list {
            if let Some(ty) = self.type_of[c.part]
                && self.types[ty].members[0].0 == c.part
            {
                out.push(whole(need, c, self.kind, ty, tariff));
            }
        }
        out
    }

    /// Forgets all types but these; gives the new number of each that stays.
    fn keep(&mut self, kept: &PerType<bool>) -> PerType<Ty> {
        let mut renumbered = PerType::new(kept.len(), Ty::default());
        let stays = kept.typed().filter(|x| *x.1).map(|x| x.0);
        stays.enumerate().for_each(|(number, ty)| renumbered[ty] = Ty::of(number));
        self.types.retain(kept);
        renumbered
    }
}

/// Takes out candidates that no choice of the others brings within the loss curve's reach.
fn drop_out_of_reach(club: &mut Club) {
    let span = |pts: &mut dyn Iterator<Item = MilliPoints>| {
        let all = (MilliPoints(i32::MAX / 8), MilliPoints(i32::MIN / 8));
        pts.fold(all, |(lo, hi), p| (lo.min(p), hi.max(p)))
    };
    let tips = span(&mut club.tips.iter().map(|t| t.pts));
    for _ in 0..2 {
        for k in MAIN {
            let (mut lo, mut hi) = (club.base + tips.0, club.base + tips.1);
            for other in MAIN.into_iter().filter(|&o| o != k) {
                let (a, b) = span(&mut club.cands[other].iter().map(|c| c.pts));
                (lo, hi) = (lo + a, hi + b);
            }
            let half = club.loss.half;
            club.cands[k].retain(|c| c.pts + hi >= -half && c.pts + lo <= half);
        }
    }
}

/// A candidate in whole numbers; what does not count in this club is left 0 so that it does not tell parts apart.
fn whole(need: &ClubNeed, c: &Candidate, kind: PartKind, ty: Ty, tariff: &Tariff) -> Cand {
    Cand {
        ty,
        pts: MilliPoints::of(c.points),
        cg: if need.mass_target.is_some() { CentiGrams::of(c.mass_g) } else { CentiGrams(0) },
        cost: tariff.extra(c.extra_cost).steps(),
        res: if kind == PartKind::Shaft { residual(need, c) } else { DeciGrams(0) },
    }
}

fn check_weights(w: &CostWeights) -> Result<(), MatchError> {
    in_range(Asked::QuantumOfCost, w.quantum, 1e-7, 1.0, "")?;
    for (what, value) in [
        (Asked::WeightOfLoss, w.loss),
        (Asked::WeightOfGramOfTipWeight, w.tip_per_g),
        (Asked::WeightOfSecondTipWeight, w.second_tip),
        (Asked::WeightOfGramOfShaftRange, w.shaft_range_per_g),
        (Asked::WeightOfGramOfWholeMass, w.mass_per_g),
        (Asked::CostOfUnbuiltClub, w.unbuilt),
    ] {
        in_range(what, value, 0.0, 1e3, "")?;
    }
    Ok(())
}

fn check_club(at: usize, club: &ClubNeed, stock: &Stock) -> Result<(), MatchError> {
    finite(at, Asked::BaseDeviation, club.base_points)?;
    finite(at, Asked::NominalShaftMass, club.shaft_nominal_g)?;
    in_range(Asked::BaseDeviation, club.base_points, -500.0, 500.0, "points")?;
    in_range(Asked::NominalShaftMass, club.shaft_nominal_g, -1e4, 1e4, "g")?;
    in_range(Asked::CapOfTipWeight, club.tip_cap_g, 0.0, 1e3, "g")?;
    for (i, tip) in club.tips.iter().enumerate() {
        let (kind, part, count) = (PartKind::Tip, tip.tip, stock.tips.len());
        if part >= count {
            return Err(MatchError::UnknownPart { club: at, kind, part, count });
        }
        if club.tips[..i].iter().any(|t| t.tip == part) {
            return Err(MatchError::ListedTwice { club: at, kind, part });
        }
        in_range(Asked::MassOfTipWeight, stock.tips[part].grams, 0.0, 1e3, "g")?;
        in_range(Asked::ContributionOfTipWeight, tip.points, -100.0, 100.0, "points")?;
    }
    if let Some(m) = club.mass_target {
        in_range(Asked::MassOfPartsNotChosen, m.base_mass_g, 0.0, 1e4, "g")?;
        in_range(Asked::TargetMass, m.target_g, 0.0, 1e4, "g")?;
    }
    if let Some(h) = club.head_scale {
        in_range(Asked::PointsPerGramOfHead, h.points_per_g, 1e-3, 100.0, "points/g")?;
        finite(at, Asked::ZeroOfHeadScale, h.zero_mass_g)?;
    }
    Ok(())
}

fn check_pairs(at: usize, pairs: &[TipPair], stock: &Stock) -> Result<(), MatchError> {
    let mut seen = HashSet::with_capacity(pairs.len());
    for pair in pairs {
        let (kind, count) = (PartKind::Tip, stock.tips.len());
        if let Some(&part) = [pair.lower, pair.upper].iter().find(|&&tip| tip >= count) {
            return Err(MatchError::UnknownPart { club: at, kind, part, count });
        }
        if !seen.insert((pair.lower.min(pair.upper), pair.lower.max(pair.upper))) {
            return Err(MatchError::ListedTwice { club: at, kind, part: pair.upper });
        }
        in_range(Asked::LossOfPairOfTipWeights, pair.lost_points, -100.0, 100.0, "points")?;
    }
    Ok(())
}

fn finite(club: usize, what: Asked, value: f64) -> Result<(), MatchError> {
    if value.is_finite() { Ok(()) } else { Err(MatchError::NotFinite { club, what, value }) }
}

fn in_range(what: Asked, value: f64, low: f64, high: f64, unit: &'static str) -> Result<(), MatchError> {
    if value.is_finite() && (low..=high).contains(&value) {
        Ok(())
    } else {
        Err(MatchError::OutOfRange { what, value, low, high, unit })
    }
}
