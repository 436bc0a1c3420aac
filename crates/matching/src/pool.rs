//! Short lists of promising columns.
//!
//! For each club and each level of shaft residual: the columns of least reduced cost, cheapest first. Putting a club
//! into a plan then means walking down a few short lists until something is still in stock, which is some fifty times
//! faster than folding all parts anew.

use crate::compiled::Club;
use crate::grid::{FORBIDDEN, Steps};
use crate::index::{GRIP, HEAD, Place, SHAFT, Slot};
use crate::oracle::SetOracle;
use crate::prices::{Prices, tip_price};
use crate::rng::Rng;
use crate::stockleft::StockLeft;
use crate::table::{Column, column};

/// Shaft and grip pairs kept a level.
const PAIRS: usize = 10;
/// Heads kept a pair.
const HEADS: usize = 2;

/// A column and its reduced cost.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Priced {
    pub reduced: Steps,
    pub column: Column,
}

/// What a search through a list needs to see of a column.
#[derive(Debug, Clone, Copy)]
struct Key {
    reduced: Steps,
    places: [Slot; 5],
}

/// The columns of one level, cheapest first.
#[derive(Debug, Clone, Default)]
pub(crate) struct Shelf {
    keys: Vec<Key>,
    columns: Vec<Column>,
}

impl Shelf {
    fn new(priced: &[Priced], stock: &StockLeft) -> Self {
        let key = |x: &Priced| Key { reduced: x.reduced, places: stock.places(&x.column) };
        Self { keys: priced.iter().map(key).collect(), columns: priced.iter().map(|x| x.column).collect() }
    }

    /// Reduced cost of the cheapest column.
    pub fn least(&self) -> Option<Steps> {
        self.keys.first().map(|k| k.reduced)
    }

    /// The first column under `limit` that is in stock. Each is passed over with a chance of one in `blink` ("blinks"
    /// after Christiaens & Vanden Berghe 2020: otherwise the same moves come out again and again).
    pub fn first(&self, limit: Steps, left: &StockLeft, rng: &mut Rng, blink: usize) -> Option<Priced> {
        for (i, key) in self.keys.iter().enumerate() {
            if key.reduced >= limit {
                return None;
            }
            if left.has(&key.places) && rng.below(blink) != 0 {
                return Some(Priced { reduced: key.reduced, column: self.columns[i] });
            }
        }
        None
    }
}

/// One club's lists.
#[derive(Debug, Clone, Default)]
pub(crate) struct Pool {
    pub levels: Vec<Shelf>,
    /// Levels with columns, the one with the cheapest column first.
    pub order: Vec<usize>,
}

/// Lists a club's columns up to `slack` above its cheapest; its tables must be up to date for these prices.
pub(crate) fn list(o: &mut SetOracle<'_>, c: usize, prices: &Prices, slack: Steps, stock: &StockLeft) -> Pool {
    let club = o.clubs[c].clone();
    let mut cells: Vec<Vec<(Steps, Place, Place)>> = vec![Vec::new(); o.levels.len()];
    for (s, shaft) in club.cands[SHAFT].iter().enumerate() {
        let own = prices[SHAFT][shaft.ty];
        let level = &mut cells[o.level_of(c, s)];
        let row = o.row(c, s);
        let priced = row.iter().zip(&club.cands[GRIP]).map(|(&r, g)| r + own + prices[GRIP][g.ty]);
        level.extend(priced.enumerate().filter(|x| x.1 < FORBIDDEN).map(|(g, x)| (x, Place::of(s), Place::of(g))));
        if level.len() > 4 * PAIRS {
            level.select_nth_unstable(PAIRS);
            level.truncate(PAIRS);
        }
    }
    let least = cells.iter().flatten().map(|x| x.0).min().unwrap_or(FORBIDDEN);
    let levels: Vec<Shelf> = cells
        .into_iter()
        .map(|mut level| {
            level.retain(|x| x.0 - least <= slack);
            level.sort_unstable();
            level.truncate(PAIRS);
            let mut out: Vec<Priced> =
                level.iter().flat_map(|&(_, s, g)| heads(&club, s, g, prices, least + slack)).collect();
            out.sort_by_key(|x| x.reduced);
            Shelf::new(&out, stock)
        })
        .collect();
    let mut order: Vec<usize> = (0..levels.len()).filter(|&i| levels[i].least().is_some()).collect();
    order.sort_by_key(|&i| levels[i].least());
    Pool { levels, order }
}

/// The cheapest few heads (each with its best tip weight) for a shaft and a grip, up to a reduced cost.
fn heads(club: &Club, s: Place, g: Place, prices: &Prices, most: Steps) -> Vec<Priced> {
    let (shaft, grip) = (&club.cands[SHAFT][s.index()], &club.cands[GRIP][g.index()]);
    let own = prices[SHAFT][shaft.ty] + prices[GRIP][grip.ty];
    let mut best: Vec<Priced> = Vec::with_capacity(HEADS + 1);
    for head in &club.cands[HEAD] {
        let own = own + prices[HEAD][head.ty];
        let mut limit = if best.len() == HEADS { best[HEADS - 1].reduced } else { most + Steps(1) };
        let mut found = None;
        for tip in &club.tips {
            if own + head.cost + tip.cost >= limit {
                break;
            }
            let column = column(club, head, shaft, grip, tip);
            let reduced = column.cost.saturating_add(own).saturating_add(tip_price(tip, prices));
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
