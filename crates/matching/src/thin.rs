//! Thousands of parts that all differ a little.
//!
//! Parts read to a display step are a few hundred types however many there are. Read without rounding, each is a type of
//! its own, and a table of shafts and grips no longer fits into the time. Then a selection is planned from: of each
//! stretch of a club's contributions a few parts, the cheapest, so that the ends stay in and the middle, where one part
//! is as good as its neighbour, is thinned. A plan from a selection is a plan; a bound from it would not be one, so the
//! bound is taken from all parts, club by club, without regard to who shares them.

use crate::compile::{Cand, Club, Compiled, GRIP, HEAD, SHAFT};
use crate::grid::FORBIDDEN;
use crate::table::{Folded, fill_row, fold};

/// Entries of all tables, one pass, up to which nothing is left out (some hundredths of a second).
const MOST_WORK: u64 = 256_000_000;
/// A head is folded over about so many sums of points.
const FOLD_LENGTH: u64 = 2000;
/// Stretches of a club's contributions.
const STRETCHES: usize = 64;

/// Which types of each kind are planned from; `None` when all of them are. `lists` gives a club's candidates of a kind
/// and is asked at most three times for each.
pub(crate) fn selection(
    clubs: usize,
    types: [usize; 3],
    lists: &dyn Fn(usize, usize) -> Vec<Cand>,
) -> Option<[Vec<bool>; 3]> {
    let work = |sizes: [u64; 3]| sizes[SHAFT] * sizes[GRIP] + sizes[HEAD] * FOLD_LENGTH;
    // As if every club took every type; a count by club only where that is too much.
    if work(types.map(|n| n as u64)) * clubs as u64 <= MOST_WORK {
        return None;
    }
    let sizes = (0..clubs).map(|c| [HEAD, SHAFT, GRIP].map(|k| lists(c, k).len() as u64));
    if sizes.map(work).sum::<u64>() <= MOST_WORK {
        return None;
    }
    let each = (4 * clubs).clamp(256, 512) / STRETCHES;
    Some([HEAD, SHAFT, GRIP].map(|k| {
        let mut kept = vec![false; types[k]];
        for c in 0..clubs {
            keep_some(&lists(c, k), each, &mut kept);
        }
        kept
    }))
}

/// Keeps `each` types of every stretch of a club's contributions, those kept for other clubs counted.
fn keep_some(list: &[Cand], each: usize, kept: &mut [bool]) {
    let points = || list.iter().map(|x| x.pts);
    let (Some(lo), Some(hi)) = (points().min(), points().max()) else { return };
    let stretch = |x: &Cand| (x.pts - lo) as usize * STRETCHES / ((hi - lo) as usize + 1);
    let mut lacking = [each; STRETCHES];
    for x in list.iter().filter(|x| kept[x.ty as usize]) {
        let lacking = &mut lacking[stretch(x)];
        *lacking = lacking.saturating_sub(1);
    }
    let mut more: Vec<Vec<(i32, u32)>> = vec![Vec::new(); STRETCHES];
    for x in list.iter().filter(|x| !kept[x.ty as usize]) {
        let at = stretch(x);
        if lacking[at] > 0 {
            more[at].push((x.cost, x.ty));
        }
    }
    for (lacking, mut more) in lacking.into_iter().zip(more) {
        if more.len() > lacking && lacking > 0 {
            more.select_nth_unstable(lacking - 1);
        }
        more.iter().take(lacking).for_each(|&(_, ty)| kept[ty as usize] = true);
    }
    // Where most crowd in a few stretches, the rest of the number comes from all over the list.
    let here = list.iter().filter(|x| kept[x.ty as usize]).count();
    let open = list.len() - here;
    let more = (each * STRETCHES).saturating_sub(here).min(open);
    if more > 0 {
        let spare: Vec<u32> = list.iter().map(|x| x.ty).filter(|&ty| !kept[ty as usize]).collect();
        (0..more).for_each(|i| kept[spare[i * open / more] as usize] = true);
    }
}

/// What a club costs at least, whichever of all parts it gets and whatever other clubs need.
pub(crate) fn least_cost(p: &Compiled, index: usize) -> i64 {
    let club = &*p.clubs[index];
    // Being off the target mass costs nothing less than nothing.
    let alone = Club { mass: None, cands: p.offers[index].clone(), ..club.clone() };
    let free = |k: usize| vec![0; alone.cands[k].len()];
    let tips = vec![0; p.types[3].len()];
    let mut folded = Folded::default();
    fold(&alone, &free(HEAD), &tips, &mut folded, &mut Vec::new());
    // Shafts and grips one after the other, as if shafts were heads without tip weights.
    let mut row = vec![FORBIDDEN; alone.cands[GRIP].len()];
    let mut least = i64::from(club.skip);
    for s in 0..alone.cands[SHAFT].len() {
        fill_row(&alone, &folded, s, &mut row);
        least = row.iter().fold(least, |m, &x| m.min(i64::from(x)));
    }
    least
}

/// Of candidates with the same contribution the cheapest; what they are does not count any more.
pub(crate) fn cheapest_by_points(list: &[Cand]) -> Vec<Cand> {
    let points = || list.iter().map(|x| x.pts);
    let (Some(lo), Some(hi)) = (points().min(), points().max()) else { return Vec::new() };
    let mut least = vec![FORBIDDEN; (hi - lo) as usize + 1];
    for x in list {
        let least = &mut least[(x.pts - lo) as usize];
        *least = x.cost.min(*least);
    }
    let there = least.into_iter().zip(lo..).filter(|x| x.0 < FORBIDDEN).enumerate();
    there.map(|(i, (cost, pts))| Cand { ty: i as u32, pts, cg: 0, cost, res: 0 }).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::compile::compile;
    use crate::instance::{Size, Variant, day};
    use crate::table::column;

    #[test]
    fn a_clubs_least_cost_is_that_of_its_best_combination() {
        for seed in 0..4 {
            let problem = day(seed, Size { jobs: 1, heads_per_number: 9, shafts: 11, grips: 10 }, Variant::Plain);
            let mut p = compile(&problem.sets, &problem.stock, &problem.weights).expect("valid");
            p.offers = p.clubs.iter().map(|c| c.cands.each_ref().map(|list| cheapest_by_points(list))).collect();
            for (c, club) in p.clubs.iter().enumerate() {
                let mut least = i64::from(club.skip);
                for h in &club.cands[HEAD] {
                    for s in &club.cands[SHAFT] {
                        for g in &club.cands[GRIP] {
                            let costs = club.tips.iter().map(|t| i64::from(column(club, h, s, g, t).cost));
                            least = costs.fold(least, i64::min);
                        }
                    }
                }
                assert_eq!(least_cost(&p, c), least, "seed {seed}, club {c}");
            }
        }
    }

    #[test]
    fn a_selection_holds_the_ends_and_enough_for_all() {
        // Nearly all in one place, two far out, and one of those dear.
        let cand = |i: u32| Cand { ty: i, pts: 500 + (i % 7) as i32, cg: 0, cost: 0, res: 0 };
        let mut list: Vec<Cand> = (0..9000).map(cand).collect();
        list[17].pts = -4000;
        (list[18].pts, list[18].cost) = (4000, 99);
        let kept = selection(8, [9000, 9000, 9000], &|_, _| list.clone()).expect("far too many");
        for kept in kept {
            assert!(kept[17] && kept[18]);
            let n = kept.iter().filter(|&&k| k).count();
            assert!((256..=512).contains(&n), "{n}");
        }
        assert!(selection(8, [100, 60, 70], &|_, _| list.clone()).is_none());
        let short = &list[..60];
        assert!(selection(8, [90_000, 90_000, 90_000], &|_, _| short.to_vec()).is_none(), "few for each club");
    }
}
