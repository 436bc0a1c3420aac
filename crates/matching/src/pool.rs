//! Short lists of promising columns.
//!
//! For each club and each level of shaft residual: the columns of least reduced cost, cheapest first. Putting a club
//! into a plan then means walking down a few short lists until something is still in stock, which is some fifty times
//! faster than folding all parts anew.

use crate::compile::{Club, GRIP, HEAD, SHAFT, TIP};
use crate::grid::FORBIDDEN;
use crate::instance::Rng;
use crate::oracle::SetOracle;
use crate::stockleft::StockLeft;
use crate::table::{ByType, Column, column, tip_price};

/// Shaft and grip pairs kept a level.
const PAIRS: usize = 10;
/// Heads kept a pair.
const HEADS: usize = 2;

/// A column and its reduced cost.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Priced {
    pub reduced: i32,
    pub column: Column,
}

/// One club's lists, by level.
pub(crate) type Pool = Vec<Vec<Priced>>;

/// Lists a club's columns up to `slack` above its cheapest; its tables must be up to date for these prices.
pub(crate) fn list(o: &mut SetOracle<'_>, c: usize, prices: &ByType, slack: i32) -> Pool {
    let club = o.clubs[c].clone();
    let mut cells: Vec<Vec<(i32, usize, usize)>> = vec![Vec::new(); o.levels.len()];
    for (s, shaft) in club.cands[SHAFT].iter().enumerate() {
        let own = prices[SHAFT][shaft.ty as usize];
        let level = &mut cells[o.level_of(c, s)];
        let row = o.row(c, s);
        let priced = row.iter().zip(&club.cands[GRIP]).map(|(&r, g)| r + own + prices[GRIP][g.ty as usize]);
        level.extend(priced.enumerate().filter(|x| x.1 < FORBIDDEN).map(|(g, x)| (x, s, g)));
        if level.len() > 4 * PAIRS {
            level.select_nth_unstable(PAIRS);
            level.truncate(PAIRS);
        }
    }
    let least = cells.iter().flatten().map(|x| x.0).min().unwrap_or(FORBIDDEN);
    cells
        .into_iter()
        .map(|mut level| {
            level.retain(|x| x.0 - least <= slack);
            level.sort_unstable();
            level.truncate(PAIRS);
            let mut out: Vec<Priced> =
                level.iter().flat_map(|&(_, s, g)| heads(&club, s, g, prices, least + slack)).collect();
            out.sort_by_key(|x| x.reduced);
            out.shrink_to_fit();
            out
        })
        .collect()
}

/// The cheapest few heads (each with its best tip weight) for a shaft and a grip, up to a reduced cost.
fn heads(club: &Club, s: usize, g: usize, prices: &ByType, most: i32) -> Vec<Priced> {
    let (shaft, grip) = (&club.cands[SHAFT][s], &club.cands[GRIP][g]);
    let own = prices[SHAFT][shaft.ty as usize] + prices[GRIP][grip.ty as usize];
    let mut best: Vec<Priced> = Vec::with_capacity(HEADS + 1);
    for head in &club.cands[HEAD] {
        let own = own + prices[HEAD][head.ty as usize];
        let mut limit = if best.len() == HEADS { best[HEADS - 1].reduced } else { most + 1 };
        let mut found = None;
        for tip in &club.tips {
            if own + head.cost + tip.cost >= limit {
                break;
            }
            let column = column(club, head, shaft, grip, tip);
            let reduced = column.cost.saturating_add(own).saturating_add(tip_price(tip, &prices[TIP]));
            if reduced < limit {
                limit = reduced;
                found = Some(Priced { reduced, column });
            }
        }
        if let Some(found) = found {
            let at = best.partition_point(|x| x.reduced <= found.reduced);
            best.insert(at, found);
            best.truncate(HEADS);
        }
    }
    best
}

/// The first column of a level that is in stock. Each is passed over with a chance of one in `blink` ("blinks" after
/// Christiaens & Vanden Berghe 2020: otherwise the same moves come out again and again).
pub(crate) fn first(list: &[Priced], left: &StockLeft, rng: &mut Rng, blink: usize) -> Option<Priced> {
    list.iter().find(|x| left.has(&x.column) && rng.below(blink) != 0).copied()
}
