//! Taking candidates out that no better plan can use.
//!
//! A column whose reduced cost exceeds its club's cheapest by more than the gap between bound and best plan is in no
//! better plan (reduced-cost fixing). A candidate goes when all its columns go.

use std::sync::Arc;

use crate::compiled::Club;
use crate::grid::{FORBIDDEN, Steps, Total};
use crate::index::{ByMain, GRIP, HEAD, Place, SHAFT};
use crate::oracle::SetOracle;
use crate::prices::{Prices, tip_price};
use crate::table::column;

impl SetOracle<'_> {
    /// Takes out of club `c` all candidates without a column of reduced cost `most` or less on levels `lo..=hi`. The
    /// tables must be up to date for these prices.
    pub fn reduced(&mut self, c: usize, prices: &Prices, lo: usize, hi: usize, most: Total) -> Arc<Club> {
        let club = self.clubs[c].clone();
        let most = most.limit();
        let grips = &club.cands[GRIP];
        let mut grip_kept = vec![false; grips.len()];
        let mut shafts = Vec::new();
        // Sum of points of shaft and grip, their priced cost, and (for the mass) the pair itself.
        let mut pairs: Vec<(Place, Place, Steps)> = Vec::new();
        for (s, shaft) in club.cands[SHAFT].iter().enumerate() {
            let level = self.level_of(c, s);
            if level < lo || level > hi {
                continue;
            }
            let own = prices[SHAFT][shaft.ty];
            let row = self.row(c, s, most);
            let mut kept = false;
            for (g, grip) in grips.iter().enumerate() {
                let price = own + prices[GRIP][grip.ty];
                if row[g] + price <= most {
                    (kept, grip_kept[g]) = (true, true);
                    pairs.push((Place::of(s), Place::of(g), price));
                }
            }
            if kept {
                shafts.push(*shaft);
            }
        }
        let (heads, tips) = heads_and_tips(&club, prices, &pairs, most);
        Arc::new(Club {
            cands: ByMain::new(keep(&club.cands[HEAD], &heads), shafts, keep(grips, &grip_kept)),
            tips: keep(&club.tips, &tips),
            adapters: club.adapters.clone(),
            loss: club.loss.clone(),
            ..*club
        })
    }
}

fn keep<T: Copy>(list: &[T], kept: &[bool]) -> Vec<T> {
    list.iter().zip(kept).filter(|x| *x.1).map(|x| *x.0).collect()
}

fn heads_and_tips(
    club: &Club,
    prices: &Prices,
    pairs: &[(Place, Place, Steps)],
    most: Steps,
) -> (Vec<bool>, Vec<bool>) {
    let mut heads = vec![false; club.cands[HEAD].len()];
    let mut tips = vec![false; club.tips.len()];
    // Pairs of equal points differ only by cost, except where mass counts.
    let mut pairs = pairs.to_vec();
    let sum = |&(s, g, price): &(Place, Place, Steps)| {
        let (s, g) = (&club.cands[SHAFT][s.index()], &club.cands[GRIP][g.index()]);
        (s.pts + g.pts, s.cost + g.cost + price)
    };
    pairs.sort_unstable_by_key(&sum);
    if club.mass.is_none() {
        pairs.dedup_by_key(|x| sum(x).0);
    }
    let cheapest = pairs.iter().map(|x| sum(x).1).min().unwrap_or(FORBIDDEN);
    for (h, head) in club.cands[HEAD].iter().enumerate() {
        let own = prices[HEAD][head.ty];
        for (t, tip) in club.tips.iter().enumerate() {
            if head.cost + own + tip.cost + cheapest > most {
                break;
            }
            if heads[h] && tips[t] {
                continue;
            }
            let own = own.saturating_add(tip_price(tip, prices));
            let used = pairs.iter().any(|&(s, g, price)| {
                let column = column(club, head, &club.cands[SHAFT][s.index()], &club.cands[GRIP][g.index()], tip);
                column.cost < FORBIDDEN && column.cost.saturating_add(own).saturating_add(price) <= most
            });
            if used {
                (heads[h], tips[t]) = (true, true);
            }
        }
    }
    (heads, tips)
}
