//! Thousands of parts that all differ a little.
//!
//! Parts read to a display step are a few hundred types however many there are. Read without rounding, each is a type of
//! its own, and a table of shafts and grips no longer fits into the time. Then each club is planned from a selection of
//! its own: of each stretch of its contributions a few parts, the cheap ones and those that no other club has yet, so that
//! the ends stay in and the middle, where one part is as good as its neighbour, is thinned.
//!
//! A plan from a selection is a plan; a bound from it would not be one. The bound is taken from all parts, set by set, as
//! if of those left out there were enough for all clubs. The selected ones have the prices that the search gave them, so
//! it stays a Lagrangian bound: what is left out has the price of nothing.

use std::ops::Range;
use std::sync::Arc;

use crate::compiled::{Cand, Club, Compiled, PartType};
use crate::grid::{CentiGrams, DeciGrams, MilliPoints, Steps, Total};
use crate::index::{ByMain, GRIP, HEAD, MainKind, PerType, SHAFT, Ty, count};
use crate::oracle::SetOracle;
use crate::prices::{Prices, by_type};

/// Shaft and grip pairs of all tables, one pass, up to which nothing is left out: about a hundredth of a second.
const MOST_WORK: u64 = 8_000_000;
/// A day with many sets may have this many times as many pairs.
const DAY_WORK: usize = 16;
/// A head is folded over about two thousand sums of points, eight of them in the time of a pair.
const FOLD_WORK: u64 = 250;
/// A pair takes so much longer where the whole mass of a club counts.
const MASS_WORK: usize = 16;
/// Pairs of a selection, one pass.
const SELECTED_WORK: usize = 2_000_000;
/// Costs of parts count as alike within sixteen quanta.
const ALIKE: Steps = Steps::quanta(16);
/// Where the whole mass counts, one candidate stands for those of so many thousandths of a point.
const WIDTH: i32 = 8;
/// Stretches of a club's contributions.
const STRETCHES: usize = 64;

/// What is planned from where not all types are, by club and kind, and what a bound needs of the others.
pub(crate) struct Thinned {
    pub chosen: Vec<ByMain<Vec<Cand>>>,
    /// Which types some club has among its chosen.
    pub kept: ByMain<PerType<bool>>,
    pub left_out: LeftOut,
}

/// What is left out of a selection.
pub(crate) struct LeftOut {
    clubs: Vec<Others>,
    /// By set, how many shafts at most have each residual, the chosen among them.
    shafts: Vec<Vec<(DeciGrams, u32)>>,
}

/// A club's candidates that are left out, by kind, many of them as one that is as cheap as any.
#[derive(Default)]
struct Others {
    lists: ByMain<Vec<Cand>>,
    /// How far a candidate is from the one that stands for it, all kinds together.
    pts: MilliPoints,
    /// Likewise.
    cg: CentiGrams,
}

/// Chooses what is planned from; `None` when that is everything. `lists` gives a club's candidates of a kind and is asked
/// at most twice for each; `shafts_of` says how many there are of a type of shaft.
pub(crate) fn thin(
    sets: &[Range<usize>],
    types: &ByMain<usize>,
    mass_counts: bool,
    lists: &dyn Fn(usize, MainKind) -> Vec<Cand>,
    shafts_of: &dyn Fn(Ty) -> u32,
) -> Option<Thinned> {
    let pair = if mass_counts { MASS_WORK } else { 1 };
    let work = |sizes: ByMain<u64>| count(pair) * sizes[SHAFT] * sizes[GRIP] + sizes[HEAD] * FOLD_WORK;
    let clubs = sets.last().map_or(0, |set| set.end);
    // A day looks at all parts far less often than a single set.
    let most_work = MOST_WORK * count(sets.len().clamp(1, DAY_WORK));
    // As if every club took every type; a count by club only where that is too much.
    if work(types.each(|&n| count(n))) * count(clubs) <= most_work {
        return None;
    }
    let sizes = (0..clubs).map(|c| ByMain::from_fn(|k| count(lists(c, k).len())));
    if sizes.map(work).sum::<u64>() <= most_work {
        return None;
    }
    let each = (SELECTED_WORK / pair / clubs).isqrt().clamp(128, 512) / STRETCHES;
    let width = if mass_counts { WIDTH } else { 1 };
    let mut taken = types.each(|&n| PerType::new(n, 0));
    let mut chosen = Vec::with_capacity(clubs);
    let mut left_out = LeftOut { clubs: Vec::with_capacity(clubs), shafts: Vec::with_capacity(sets.len()) };
    for set in sets {
        let mut at: Vec<(DeciGrams, Ty)> = Vec::new();
        for c in set.clone() {
            let mut others = ByMain::from_fn(|k| lists(c, k));
            at.extend(others[SHAFT].iter().map(|x| (x.res, x.ty)));
            chosen.push(ByMain::from_fn(|k| choose(&mut others[k], each, &mut taken[k])));
            left_out.clubs.push(Others::new(others, width));
        }
        left_out.shafts.push(by_residual(at, shafts_of));
    }
    Some(Thinned { chosen, kept: taken.each(|taken| taken.each(|&n| n > 0)), left_out })
}

/// Takes out of a list `each` candidates of every stretch of contributions, and as many more from all over the list where
/// some stretches have fewer. `taken` counts the clubs that chose a type: one half of the choice is cheap before it is
/// new, the other new before it is cheap, so that clubs that vie for a stretch have many parts of it between them.
fn choose(list: &mut Vec<Cand>, each: usize, taken: &mut PerType<u32>) -> Vec<Cand> {
    let points = || list.iter().map(|x| x.pts);
    let (Some(lo), Some(hi)) = (points().min(), points().max()) else { return Vec::new() };
    let mut stretches: Vec<Vec<Cand>> = vec![Vec::new(); STRETCHES];
    list.drain(..).for_each(|x| stretches[x.pts.place_from(lo) * STRETCHES / (hi.place_from(lo) + 1)].push(x));
    let room = each * STRETCHES;
    let mut chosen = Vec::with_capacity(room);
    let mut take = |from: &mut Vec<Cand>, most: usize, key: &dyn Fn(&Cand, u32) -> (u32, u32)| {
        let most = most.min(room - chosen.len());
        if from.len() > most && most > 0 {
            from.select_nth_unstable_by_key(most - 1, |x| (key(x, taken[x.ty]), x.ty));
        }
        for x in from.drain(..most.min(from.len())) {
            taken[x.ty] += 1;
            chosen.push(x);
        }
    };
    let cheap = |x: &Cand| x.cost.in_units(ALIKE);
    for from in &mut stretches {
        take(from, each.div_ceil(2), &|x, taken| (cheap(x), taken));
        take(from, each / 2, &|x, taken| (taken, cheap(x)));
    }
    list.extend(stretches.into_iter().flatten());
    take(list, usize::MAX, &|_, taken| (taken, 0));
    chosen
}

/// How many shafts have each residual, from residuals and types as the clubs list them.
fn by_residual(mut at: Vec<(DeciGrams, Ty)>, count: &dyn Fn(Ty) -> u32) -> Vec<(DeciGrams, u32)> {
    at.sort_unstable();
    at.dedup();
    let mut counted: Vec<(DeciGrams, u32)> = Vec::new();
    for (residual, ty) in at {
        match counted.last_mut().filter(|last| last.0 == residual) {
            Some(last) => last.1 = last.1.saturating_add(count(ty)),
            None => counted.push((residual, count(ty))),
        }
    }
    counted
}

impl Others {
    /// One stands for those of the same residual whose contributions are within a `width`.
    fn new(lists: ByMain<Vec<Cand>>, width: i32) -> Self {
        let mut out = Self::default();
        for (k, mut list) in lists {
            let key = |x: &Cand| (x.res, x.pts.0.div_euclid(width));
            list.sort_unstable_by_key(|x| (key(x), x.pts, x.cg));
            let (mut pts, mut cg) = (MilliPoints(0), CentiGrams(0));
            for alike in list.chunk_by(|a, b| key(a) == key(b)) {
                let middle = alike[alike.len() / 2];
                let cost = alike.iter().fold(middle.cost, |least, x| least.min(x.cost));
                out.lists[k].push(Cand { cost, ..middle });
                pts = alike.iter().fold(pts, |most, x| most.max((x.pts - middle.pts).abs()));
                cg = alike.iter().fold(cg, |most, x| most.max((x.cg - middle.cg).abs()));
            }
            (out.pts, out.cg) = (out.pts + pts, out.cg + cg);
        }
        out
    }
}

/// The problem with all parts, as if of those left out of the selection there were enough for everyone, but for the
/// shafts near a residual: no set costs more in it. Its first types are those of `p`, which may have prices.
pub(crate) fn relaxed(p: &Compiled, left_out: LeftOut) -> Compiled {
    let mut most = ByMain::from_fn(|_| 0);
    let all = |(club, others): (&Arc<Club>, Others)| {
        let mut club = Club::clone(club);
        if others.pts > MilliPoints(0) {
            club.loss = Arc::new(club.loss.within(others.pts));
        }
        if let Some(charge) = &mut club.mass {
            charge.slack = others.cg;
        }
        for (k, others) in others.lists {
            most[k] = others.len().max(most[k]);
            let list = &mut club.cands[k];
            list.extend((p.types[k].len()..).zip(others).map(|(ty, x)| Cand { ty: Ty::of(ty), ..x }));
            list.sort_unstable_by_key(|x| (x.res, x.pts, x.cost, x.ty));
        }
        Arc::new(club)
    };
    let clubs: Vec<_> = p.clubs.iter().zip(left_out.clubs).map(all).collect();
    let sets = p.sets.iter().zip(left_out.shafts).map(|(shape, shafts)| shape.counting(shafts)).collect();
    let mut types = p.types.clone();
    for (k, most) in most {
        types[k].extend(std::iter::repeat_n(PartType { members: Vec::new(), cap: u32::MAX, wanted: 0 }, most));
    }
    Compiled { clubs, sets, types, quantum: p.quantum, relaxed: None }
}

/// What a set costs at least in a [`relaxed`] problem, prices of the selected types included. Where masses count that takes
/// a while: `go_on` is asked after each club then, and `None` is what is known when it says no.
pub(crate) fn least_cost(
    relaxed: &Compiled,
    set: usize,
    prices: &Prices,
    go_on: &mut dyn FnMut() -> bool,
) -> Option<Total> {
    let mut all = by_type(relaxed, Steps(0));
    for (all, selected) in all.values_mut().zip(prices.values()) {
        all.iter_mut().zip(selected).for_each(|(all, &selected)| *all = selected);
    }
    let mut oracle = SetOracle::new(relaxed, set);
    for c in 0..oracle.len() {
        oracle.price(c, &all);
        if oracle.clubs[c].mass.is_some() && !go_on() {
            return None;
        }
    }
    Some(oracle.best_window().0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::compile::compile;
    use crate::instance::{Rng, Variant, set};
    use crate::model::{JobSet, MassTarget, SetProblem};
    use crate::set::{Limits, solve_set};

    /// The relaxed problem where of every so many types one is left out.
    fn left_out(p: &mut Compiled, one_in: usize, width: i32) -> Compiled {
        let stays = |x: &Cand| !x.ty.index().is_multiple_of(one_in);
        let mut left_out = LeftOut { clubs: Vec::new(), shafts: Vec::new() };
        for set in &p.sets {
            let clubs = &p.clubs[set.clubs.clone()];
            let at = clubs.iter().flat_map(|c| c.cands[SHAFT].iter().map(|x| (x.res, x.ty))).collect();
            left_out.shafts.push(by_residual(at, &|ty| p.types[SHAFT][ty].cap));
        }
        for club in &mut p.clubs {
            let lists = &mut Arc::make_mut(club).cands;
            let others = lists.each(|list| list.iter().copied().filter(|x| !stays(x)).collect());
            left_out.clubs.push(Others::new(others, width));
            lists.values_mut().for_each(|list| list.retain(stays));
        }
        relaxed(p, left_out)
    }

    /// The least cost of the only set.
    fn of_all(relaxed: &Compiled, prices: &Prices) -> Total {
        least_cost(relaxed, 0, prices, &mut || true).expect("nobody stopped it")
    }

    /// A set with as many of every part as there are clubs.
    fn enough_of_everything(seed: u64, variant: Variant) -> SetProblem {
        let mut problem = set(seed, variant);
        let stock = &mut problem.stock;
        for list in [&mut stock.heads, &mut stock.shafts, &mut stock.grips] {
            list.fill(problem.clubs.len() as u32);
        }
        stock.tips.iter_mut().for_each(|t| t.count = 2 * problem.clubs.len() as u32);
        problem
    }

    /// Proven least cost of a set, and least costs in the relaxed problem where one type in one, two, five is left out.
    fn least_costs(problem: SetProblem, width: i32) -> (f64, [f64; 3]) {
        let best = solve_set(&problem, Limits::default()).expect("valid");
        assert!(best.proven);
        let sets = [JobSet { clubs: problem.clubs, priority: 1.0 }];
        let relaxed = [1, 2, 5].map(|one_in| {
            let mut p = compile(&sets, &problem.stock, &problem.weights).expect("valid");
            let free = by_type(&p, Steps(0));
            let all = left_out(&mut p, one_in, width);
            p.cost(of_all(&all, &free))
        });
        (best.cost, relaxed)
    }

    /// With enough of everything nothing is left to be shared: the relaxed least cost is the proven optimum.
    #[test]
    fn a_sets_least_cost_is_its_optimum_with_enough_of_everything() {
        for (seed, variant) in (0..3).zip([Variant::Plain, Variant::TwoHeadModels, Variant::Shortage]) {
            let (best, relaxed) = least_costs(enough_of_everything(seed, variant), 1);
            assert!(relaxed.iter().all(|least| (least - best).abs() < 1e-9), "seed {seed}: {relaxed:?} {best}");
        }
    }

    /// Where masses count, some parts stand for others: a bound, and not far below.
    #[test]
    fn a_sets_least_cost_with_target_masses_is_a_bound() {
        let mut below = 0;
        for seed in 0..4 {
            let mut rng = Rng::new(seed);
            let mut problem = enough_of_everything(seed, Variant::Plain);
            for club in &mut problem.clubs {
                let scale = club.head_scale.expect("given");
                let target_g = scale.zero_mass_g + club.shaft_nominal_g + 51.0;
                club.mass_target = Some(MassTarget { base_mass_g: 0.0, target_g });
                // Read without rounding, so that many are near each other.
                for head in &mut club.heads {
                    head.mass_g = scale.zero_mass_g + rng.uniform(-1.0, 1.0);
                    head.points = scale.points_per_g * (head.mass_g - scale.zero_mass_g);
                }
                for grip in &mut club.grips {
                    grip.mass_g = 50.0 + rng.uniform(-1.0, 1.0);
                    grip.points = -0.2 * (grip.mass_g - 50.0);
                }
            }
            let (best, relaxed) = least_costs(problem, WIDTH);
            for least in relaxed {
                assert!(least <= best + 1e-9 && least > best - 0.02, "seed {seed}: {relaxed:?} {best}");
            }
            below += usize::from(relaxed[0] < best);
        }
        assert!(below > 0, "parts that stand for others cost less");
    }

    #[test]
    fn a_loss_within_some_steps_is_the_least_of_them() {
        let problem = set(0, Variant::Plain);
        let sets = [JobSet { clubs: problem.clubs, priority: 1.0 }];
        let p = compile(&sets, &problem.stock, &problem.weights).expect("valid");
        let loss = &p.clubs[0].loss;
        let wide = loss.within(MilliPoints(15));
        for deviation in -loss.half.0 - 40..=loss.half.0 + 40 {
            let least = (deviation - 15..=deviation + 15).map(|d| loss.at(MilliPoints(d))).min();
            assert_eq!(Some(wide.at(MilliPoints(deviation))), least);
        }
        assert!(loss.least.is_some() && wide.least.is_some());
    }

    /// With no part left out of it the relaxed problem is the problem: at any prices the same least cost.
    #[test]
    fn a_sets_least_cost_counts_prices_and_the_shafts_near_a_residual() {
        let mut counted = 0;
        for seed in 0..6 {
            // Light heads want heavy shafts, of which there are few.
            let mut problem = set(seed, Variant::Plain);
            problem.clubs.iter_mut().for_each(|c| c.base_points -= 3.0);
            let sets = [JobSet { clubs: problem.clubs, priority: 1.0 }];
            let mut p = compile(&sets, &problem.stock, &problem.weights).expect("valid");
            let mut rng = Rng::new(seed);
            let mut prices = by_type(&p, Steps(0));
            prices.values_mut().flatten().for_each(|x| *x = Steps(rng.below(800) as i32));
            for prices in [by_type(&p, Steps(0)), prices] {
                let mut oracle = SetOracle::new(&p, 0);
                oracle.price_all(&prices);
                let least = oracle.best_window().0;
                let kept = p.types.each(PerType::len);
                let all = left_out(&mut p, usize::MAX, 1);
                assert!(all.types.iter().all(|(k, all)| all.len() - kept[k] <= 1));
                assert_eq!(of_all(&all, &prices), least, "seed {seed}");
                let mut endless = all;
                endless.sets[0].shafts = None;
                endless.types[SHAFT].iter_mut().for_each(|t| t.cap = u32::MAX);
                counted += usize::from(of_all(&endless, &prices) < least);
            }
        }
        assert!(counted > 0);
    }

    #[test]
    fn a_selection_holds_the_ends_and_enough_for_all() {
        // Nearly all in one place, two far out, and one of those dear.
        let cand = |i: usize| {
            let (pts, res) = (MilliPoints(500 + (i % 7) as i32), DeciGrams((i % 3) as i32));
            Cand { ty: Ty::of(i), pts, cg: CentiGrams(0), cost: Steps(0), res }
        };
        let mut list: Vec<Cand> = (0..9000).map(cand).collect();
        list[17].pts = MilliPoints(-4000);
        (list[18].pts, list[18].cost) = (MilliPoints(4000), Steps(99));
        let by_main = |[h, s, g]: [usize; 3]| ByMain::new(h, s, g);
        let all = |sets: &[Range<usize>], types| thin(sets, &by_main(types), false, &|_, _| list.clone(), &|_| 1);
        let few = all(&[0..4, 4..8], [9000, 9000, 9000]).expect("far too many");
        let mut union = vec![0; 9000];
        for (chosen, others) in few.chosen.iter().zip(&few.left_out.clubs) {
            for (chosen, others) in chosen.values().zip(others.lists.values()) {
                let has = |ty: usize| chosen.iter().any(|x| x.ty.index() == ty);
                assert!(has(17) && has(18));
                assert!((256..=512).contains(&chosen.len()), "{}", chosen.len());
                // Seven contributions at three residuals.
                assert_eq!(others.len(), 21);
            }
            chosen[SHAFT].iter().for_each(|x| union[x.ty.index()] += 1);
        }
        // No two clubs have the same parts where there are many.
        assert!(union.iter().enumerate().all(|(ty, &n)| n <= 1 || ty == 17 || ty == 18));
        assert!(few.kept[SHAFT].iter().zip(&union).all(|(&kept, &n)| kept == (n > 0)));
        assert_eq!(few.left_out.shafts, vec![[0, 1, 2].map(|res| (DeciGrams(res), 3000)).to_vec(); 2]);
        let one = std::slice::from_ref(&(0..8));
        assert!(all(one, [100, 60, 70]).is_none());
        let short = |_, _| list[..60].to_vec();
        assert!(thin(one, &by_main([90_000; 3]), false, &short, &|_| 1).is_none(), "few for each club");
    }

    #[test]
    fn half_of_a_choice_is_the_cheapest() {
        let cand = |i: usize| Cand {
            ty: Ty::of(i),
            pts: MilliPoints(i as i32 % 640),
            cg: CentiGrams(0),
            cost: if i.is_multiple_of(5) { Steps(0) } else { Steps(4000) },
            res: DeciGrams(0),
        };
        let list: Vec<Cand> = (0..6400).map(cand).collect();
        let mut taken = PerType::new(6400, 0);
        for _ in 0..8 {
            let mut rest = list.clone();
            let chosen = choose(&mut rest, 8, &mut taken);
            assert_eq!((chosen.len(), rest.len()), (512, 6400 - 512));
            assert!(chosen.iter().filter(|x| x.cost == Steps(0)).count() >= 256);
        }
        assert!(taken.iter().filter(|&&n| n > 0).count() > 2000);
    }
}
