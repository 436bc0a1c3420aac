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
/// Shaft and grip pairs kept a club, about; and where each takes a closer look, because the whole mass counts.
const ALL_PAIRS: usize = 800;
const ALL_PAIRS_BY_MASS: usize = 240;
/// Heads, each with a weight in the tip, kept a pair: at least, and at most where there are few pairs.
const HEADS: usize = 3;
const MOST_HEADS: usize = 40;
/// Columns kept a club, about.
const COLUMNS: usize = 600;

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
    let least = o.cheapest_cell(c, |_, _| Steps(0)).map_or(FORBIDDEN, |x| x.1.value);
    // The cheapest pairs, few of each level; what is dearer than all of these need not be looked at.
    let mut most = (least + slack).min(FORBIDDEN - Steps(1));
    let mut cells: Vec<Vec<(Steps, Place, Place)>> = vec![Vec::new(); o.levels.len()];
    let mut order: Vec<usize> = (0..club.cands[SHAFT].len()).collect();
    if let Some(bounds) = o.row_bounds(c) {
        order.sort_unstable_by_key(|&s| bounds[s]);
    }
    let pairs_kept = if club.mass.is_some() { ALL_PAIRS_BY_MASS } else { ALL_PAIRS };
    let mut found: Vec<Steps> = Vec::new();
    for s in order {
        let own = prices[SHAFT][club.cands[SHAFT][s].ty];
        if o.row_bounds(c).is_some_and(|bounds| bounds[s] > most) {
            continue;
        }
        let at = o.level_of(c, s);
        let row = o.row(c, s, most);
        let priced = row.iter().zip(&club.cands[GRIP]).map(|(&r, g)| r + own + prices[GRIP][g.ty]);
        let level = &mut cells[at];
        let before = level.len();
        level.extend(priced.enumerate().filter(|x| x.1 <= most).map(|(g, x)| (x, Place::of(s), Place::of(g))));
        found.extend(level[before..].iter().map(|x| x.0));
        if level.len() > 4 * PAIRS {
            level.select_nth_unstable(PAIRS);
            level.truncate(PAIRS);
        }
        if found.len() > 4 * pairs_kept {
            let last = *found.select_nth_unstable(pairs_kept).1;
            found.truncate(pairs_kept);
            most = most.min(last);
        }
    }
    if found.len() > pairs_kept {
        most = most.min(*found.select_nth_unstable(pairs_kept).1);
    }
    for level in &mut cells {
        level.retain(|x| x.0 <= most);
    }
    let most = (least + slack).min(FORBIDDEN - Steps(1));
    let pairs: usize = cells.iter().map(|level| level.len().min(PAIRS)).sum();
    let each = (COLUMNS / pairs.max(1)).clamp(HEADS, MOST_HEADS);
    let priced: Vec<Vec<Priced>> = cells
        .into_iter()
        .map(|mut level| {
            level.sort_unstable();
            level.truncate(PAIRS);
            let mut out: Vec<Priced> =
                level.iter().flat_map(|&(_, s, g)| heads(&club, s, g, prices, most, each)).collect();
            out.sort_by_key(|x| x.reduced);
            out
        })
        .collect();
    let mut all: Vec<Steps> = priced.iter().flatten().map(|x| x.reduced).collect();
    let most = if all.len() > COLUMNS { *all.select_nth_unstable(COLUMNS).1 } else { most };
    let near = |list: &Vec<Priced>| Shelf::new(&list[..list.partition_point(|x| x.reduced <= most)], stock);
    let levels: Vec<Shelf> = priced.iter().map(near).collect();
    let mut order: Vec<usize> = (0..levels.len()).filter(|&i| levels[i].least().is_some()).collect();
    order.sort_by_key(|&i| levels[i].least());
    Pool { levels, order }
}

/// The cheapest few heads with a weight in the tip for a shaft and a grip, up to a reduced cost.
fn heads(club: &Club, s: Place, g: Place, prices: &Prices, most: Steps, each: usize) -> Vec<Priced> {
    let (shaft, grip) = (&club.cands[SHAFT][s.index()], &club.cands[GRIP][g.index()]);
    let own = prices[SHAFT][shaft.ty] + prices[GRIP][grip.ty];
    let mut best: Vec<Priced> = Vec::with_capacity(each + 1);
    for head in &club.cands[HEAD] {
        let own = own + prices[HEAD][head.ty];
        for tip in &club.tips {
            let limit = if best.len() == each { best[each - 1].reduced } else { most + Steps(1) };
            if own + head.cost + tip.cost >= limit {
                break;
            }
            let column = column(club, head, shaft, grip, tip);
            let reduced = column.cost.saturating_add(own).saturating_add(tip_price(tip, prices));
            if reduced < limit {
                let at = best.partition_point(|x| x.reduced <= reduced);
                best.insert(at, Priced { reduced, column });
                best.truncate(each);
            }
        }
    }
    best
}
