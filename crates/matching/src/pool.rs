//! Short lists of promising columns.
//!
//! For each club and each level of shaft residual: the columns of least reduced cost, cheapest first. Putting a club
//! into a plan then means walking down a few short lists until something is still in stock, which is some fifty times
//! faster than folding all parts anew.

use crate::compiled::{Club, TipOption};
use crate::error::PartKind;
use crate::grid::{CentiGrams, FORBIDDEN, MilliPoints, Steps};
use crate::index::{GRIP, HEAD, Place, SHAFT, Slot, Ty};
use crate::oracle::{Cell, NO_CELL, SetOracle};
use crate::prices::{Prices, tip_price};
use crate::rng::Rng;
use crate::stockleft::StockLeft;
use crate::table::{Column, column};

/// Shaft and grip pairs kept a level.
const PAIRS: usize = 10;
/// Shaft and grip pairs kept a club, about; and where each takes a closer look, because the whole mass counts.
const ALL_PAIRS: usize = 400;
const ALL_PAIRS_BY_MASS: usize = 240;
/// Heads, each with a weight in the tip, kept a pair: at least, and at most where there are few pairs.
const HEADS: usize = 3;
const MOST_HEADS: usize = 40;
/// Columns kept a club, about.
const COLUMNS: usize = 400;
/// Columns listed of all clubs at one look, about.
const ALL_COLUMNS: usize = 120_000;

/// How many columns one look lists for each club, in a day of `clubs` clubs.
pub(crate) fn columns(clubs: usize) -> usize {
    (ALL_COLUMNS / clubs.max(1)).clamp(COLUMNS / 4, COLUMNS)
}

/// A column and its reduced cost.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Priced {
    pub reduced: Steps,
    pub column: Column,
}

/// What a search through a list needs to see of a column.
#[derive(Debug, Clone, Copy)]
struct Key {
    /// Under the prices that the list was made with.
    reduced: Steps,
    cost: Steps,
    places: [Slot; 5],
}

/// The columns of one level, cheapest first.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Shelf<'a> {
    keys: &'a [Key],
    columns: &'a [Column],
}

impl Shelf<'_> {
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

impl Shelf<'_> {
    /// The first column under `limit`, in stock or not; each is passed over with a chance of one in `pass`.
    pub fn any(&self, limit: Steps, rng: &mut Rng, pass: usize) -> Option<Priced> {
        let near = self.keys.iter().take_while(|key| key.reduced < limit);
        let at = near.enumerate().find(|_| rng.below(pass) != 0)?.0;
        Some(Priced { reduced: self.keys[at].reduced, column: self.columns[at] })
    }
}

/// One club's lists.
#[derive(Debug, Clone, Default)]
pub(crate) struct Pool {
    keys: Vec<Key>,
    columns: Vec<Column>,
    /// Where the columns of each level begin, and where those of the last end.
    starts: Vec<u32>,
    /// Levels with columns, the one with the cheapest column first.
    pub order: Vec<usize>,
}

impl Pool {
    /// Lists what was found and, while there is room, what was listed before; `guide` are the prices by which the cheapest come
    /// first.
    pub fn new(mut levels: Vec<Vec<Priced>>, old: &Self, guide: &Prices, stock: &StockLeft) -> Self {
        for (level, priced) in levels.iter_mut().enumerate() {
            if level < old.levels() {
                priced.extend(old.columns[old.range(level)].iter().map(|&column| Priced { reduced: Steps(0), column }));
            }
            for x in priced.iter_mut() {
                let price = |sum: Steps, (k, ty): (PartKind, Ty)| sum.saturating_add(guide[k][ty]);
                x.reduced = x.column.uses().fold(x.column.cost, price);
            }
            priced.sort_unstable_by_key(|x| {
                let c = &x.column;
                (x.reduced, c.shaft, c.grip, c.head, c.tips, c.adapter)
            });
            priced.dedup_by_key(|x| x.column);
        }
        let count = levels.iter().map(Vec::len).sum();
        let (mut keys, mut columns) = (Vec::with_capacity(count), Vec::with_capacity(count));
        let mut starts = Vec::with_capacity(levels.len() + 1);
        starts.push(0);
        for level in &levels {
            let key = |x: &Priced| Key { reduced: x.reduced, cost: x.column.cost, places: stock.places(&x.column) };
            keys.extend(level.iter().map(key));
            columns.extend(level.iter().map(|x| x.column));
            starts.push(u32::try_from(keys.len()).unwrap_or(u32::MAX));
        }
        let mut order: Vec<usize> = (0..levels.len()).filter(|&i| !levels[i].is_empty()).collect();
        order.sort_by_key(|&i| levels[i][0].reduced);
        Self { keys, columns, starts, order }
    }

    /// The columns within `slack` of the cheapest under these prices, at most `room` of them, the cheapest first to stay.
    pub fn near(&self, prices: &Prices, slack: Steps, room: usize) -> Self {
        let price = |sum: Steps, (k, ty): (PartKind, Ty)| sum.saturating_add(prices[k][ty]);
        let reduced: Vec<Steps> = self.columns.iter().map(|x| x.uses().fold(x.cost, price)).collect();
        let mut most = reduced.iter().copied().min().unwrap_or(FORBIDDEN).saturating_add(slack);
        if reduced.len() > room {
            most = most.min(*reduced.clone().select_nth_unstable(room).1);
        }
        let (mut columns, mut starts) = (Vec::new(), vec![0]);
        for level in 0..self.levels() {
            let range = self.range(level);
            columns.extend(range.filter(|&i| reduced[i] <= most).map(|i| self.columns[i]));
            starts.push(u32::try_from(columns.len()).unwrap_or(u32::MAX));
        }
        Self { keys: Vec::new(), columns, starts, order: Vec::new() }
    }

    fn range(&self, level: usize) -> std::ops::Range<usize> {
        self.starts[level] as usize..self.starts[level + 1] as usize
    }

    /// How many levels there are.
    pub fn levels(&self) -> usize {
        self.starts.len().saturating_sub(1)
    }

    /// The columns of one level.
    pub fn level(&self, level: usize) -> Shelf<'_> {
        let range = self.range(level);
        Shelf { keys: &self.keys[range.clone()], columns: &self.columns[range] }
    }

    /// For each level the cheapest column under other prices, given by place (see [`StockLeft::prices`]), and its number.
    pub fn price(&self, at: &[Steps], cells: &mut [Cell]) {
        for (level, cell) in cells.iter_mut().enumerate() {
            *cell = NO_CELL;
            let range = self.range(level);
            for (i, key) in self.keys[range.clone()].iter().enumerate() {
                let value = key.places.iter().fold(key.cost, |sum, place| sum + at[place.index()]);
                if value < cell.value {
                    *cell = Cell { value, shaft: Place::of(range.start + i), exact: true };
                }
            }
        }
    }

    /// How many columns it has.
    pub fn len(&self) -> usize {
        self.columns.len()
    }

    /// A column by its number, with its price.
    pub fn nth(&self, number: usize) -> Priced {
        Priced { reduced: self.keys[number].reduced, column: self.columns[number] }
    }

    /// A column by its number.
    pub fn column(&self, number: Place) -> &Column {
        &self.columns[number.index()]
    }
}

/// A club's columns by level, up to `slack` above its cheapest and `room` in all, about; its tables must be up to date for these prices.
pub(crate) fn list(o: &mut SetOracle<'_>, c: usize, prices: &Prices, slack: Steps, room: usize) -> Vec<Vec<Priced>> {
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
    let each = (room / pairs.max(1)).clamp(HEADS, MOST_HEADS);
    let all = combinations(&club, prices, most);
    let mut priced: Vec<Vec<Priced>> = cells
        .into_iter()
        .map(|mut level| {
            level.sort_unstable();
            level.truncate(PAIRS);
            level.iter().flat_map(|&(_, s, g)| heads(&club, &all, (s, g), prices, most, each)).collect()
        })
        .collect();
    for level in &mut priced {
        level.sort_unstable_by_key(|x| x.reduced);
    }
    let mut all: Vec<Steps> = priced.iter().flatten().map(|x| x.reduced).collect();
    if all.len() > room {
        let most = *all.select_nth_unstable(room).1;
        priced.iter_mut().for_each(|list| list.truncate(list.partition_point(|x| x.reduced <= most)));
    }
    priced
}

/// A head with what goes in at the tip.
#[derive(Debug, Clone, Copy)]
struct Combination {
    pts: MilliPoints,
    cg: CentiGrams,
    /// With the prices of both.
    cost: Steps,
    head: Place,
    tip: Place,
}

/// All heads with all that may go in at the tip, by points; those that cost more than so much with their prices are left
/// out.
fn combinations(club: &Club, prices: &Prices, most: Steps) -> Vec<Combination> {
    let priced = |cost: Steps, price: Steps| cost.saturating_add(price.min(FORBIDDEN));
    let tips: Vec<(Place, &TipOption, Steps)> = (club.tips.iter().enumerate())
        .map(|(i, t)| (Place::of(i), t, priced(t.cost, tip_price(t, prices))))
        .filter(|x| x.2 <= most)
        .collect();
    let mut all = Vec::with_capacity(tips.len() * club.cands[HEAD].len());
    for (h, head) in club.cands[HEAD].iter().enumerate() {
        let own = priced(head.cost, prices[HEAD][head.ty]);
        for &(tip, option, cost) in tips.iter().filter(|x| x.2.saturating_add(own) <= most) {
            let (pts, cg) = (head.pts + option.pts, head.cg + option.cg);
            all.push(Combination { pts, cg, cost: cost + own, head: Place::of(h), tip });
        }
    }
    all.sort_unstable_by_key(|x| (x.pts, x.cost));
    all
}

/// The cheapest few heads with a weight in the tip for a shaft and a grip, up to a reduced cost.
fn heads(
    club: &Club,
    all: &[Combination],
    (s, g): (Place, Place),
    prices: &Prices,
    most: Steps,
    each: usize,
) -> impl Iterator<Item = Priced> {
    let (shaft, grip) = (&club.cands[SHAFT][s.index()], &club.cands[GRIP][g.index()]);
    let price = prices[SHAFT][shaft.ty] + prices[GRIP][grip.ty];
    let own = price + shaft.cost + grip.cost;
    let (pts, cg) = (club.base + shaft.pts + grip.pts, shaft.cg + grip.cg);
    // Only what brings the club near its target is looked at.
    let (from, to) = club.loss.reach(most - own);
    let near = &all[all.partition_point(|x| pts + x.pts < from)..];
    let near = &near[..near.partition_point(|x| pts + x.pts <= to)];
    let mut best: Vec<(Steps, Combination)> = Vec::with_capacity(each + 1);
    let mut limit = most + Steps(1);
    for x in near {
        if own + x.cost >= limit {
            continue;
        }
        let mass = club.mass.map_or(Steps(0), |m| m.cost(cg + x.cg));
        let reduced = club.loss.at(pts + x.pts).saturating_add(own + x.cost + mass);
        if reduced < limit {
            let at = best.partition_point(|x| x.0 <= reduced);
            best.insert(at, (reduced, *x));
            best.truncate(each);
            if best.len() == each {
                limit = best[each - 1].0;
            }
        }
    }
    best.into_iter().map(move |(reduced, x)| {
        let (head, tip) = (&club.cands[HEAD][x.head.index()], &club.tips[x.tip.index()]);
        Priced { reduced, column: column(club, head, shaft, grip, tip) }
    })
}
