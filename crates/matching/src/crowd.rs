//! Prices of "so many of these clubs stay unbuilt at least" (see `shortage`).
//!
//! For a crowd with `d` clubs too many, `d` times the price comes on top of the bound, and leaving a club of it out gets
//! cheaper by the price. What that gives is concave in the price and piecewise linear, its slope being `d` less the
//! clubs left out; so the best price is where just `d` clubs would rather stay out.

use crate::compiled::Compiled;
use crate::grid::{QUANTUM, Steps, Total};
use crate::oracle::{SetOracle, Window};
use crate::shortage::Crowd;

/// One crowd as it stands.
#[derive(Debug)]
struct State {
    clubs: Vec<(usize, usize)>,
    short: usize,
    price: Steps,
    /// Price at which each club would have been left out at its set's last planning.
    turns: Vec<Steps>,
}

/// All crowds and their prices.
#[derive(Debug)]
pub(crate) struct Crowding {
    crowds: Vec<State>,
    /// By set: crowd, place in it, and club.
    of_set: Vec<Vec<(usize, usize, usize)>>,
    scratch: Vec<Steps>,
}

/// Halvings of the interval in the search for one price.
const HALVINGS: usize = 12;

impl Crowding {
    pub fn new(p: &Compiled, crowds: Vec<Crowd>) -> Self {
        let mut of_set = vec![Vec::new(); p.sets.len()];
        let place = |club: usize| {
            let set = p.sets.partition_point(|s| s.clubs.end <= club);
            (set, club - p.sets[set].clubs.start)
        };
        let mut states = Vec::new();
        for (g, crowd) in crowds.into_iter().enumerate() {
            let clubs: Vec<(usize, usize)> = crowd.clubs.iter().map(|&c| place(c)).collect();
            for (i, &(s, c)) in clubs.iter().enumerate() {
                of_set[s].push((g, i, c));
            }
            let turns: Vec<Steps> = crowd.clubs.iter().map(|&c| p.clubs[c].skip).collect();
            let price = turns.iter().copied().min().unwrap_or(Steps(0));
            states.push(State { clubs, short: crowd.short, price, turns });
        }
        Self { crowds: states, of_set, scratch: Vec::new() }
    }

    /// How many clubs of all crowds stay unbuilt at least.
    pub fn short(&self) -> usize {
        self.crowds.iter().map(|x| x.short).sum()
    }

    /// What the crowds add to the bound.
    pub fn worth(&self) -> Total {
        self.crowds.iter().map(|x| x.price.times(count(x.short))).sum()
    }

    /// Tells a set's oracle what leaving out its clubs costs now, after bringing the prices up to date.
    pub fn skips(&mut self, s: usize, o: &mut SetOracle<'_>) {
        for &(g, _, c) in &self.of_set[s] {
            let x = &mut self.crowds[g];
            self.scratch.clone_from(&x.turns);
            self.scratch.sort_unstable();
            let (last, next) = (self.scratch[x.short - 1], self.scratch.get(x.short).copied());
            x.price = next.map_or(last + QUANTUM, |next| last.midpoint(next)).max(Steps(0));
            o.skips[c] = o.clubs[c].skip - x.price;
        }
    }

    /// Notes at which price each club of a set just planned would be left out.
    pub fn note(&mut self, s: usize, o: &SetOracle<'_>, window: Option<Window>) {
        for &(g, i, c) in &self.of_set[s] {
            let cells = window.map_or(&o.cells[c][..], |w| &o.cells[c][w.lo..=w.hi]);
            let least = cells.iter().map(|x| x.value).min().unwrap_or(o.clubs[c].skip);
            self.crowds[g].turns[i] = o.clubs[c].skip - least.min(o.clubs[c].skip);
        }
    }

    /// Sets the prices of all crowds for the best bound at the cells' prices; what all sets together and the crowds then
    /// come to. `go_on` is asked after each set; none where it says no.
    pub fn search(&mut self, oracles: &mut [SetOracle<'_>], go_on: &mut dyn FnMut() -> bool) -> Option<Total> {
        let mut values: Vec<Total> = Vec::with_capacity(oracles.len());
        for o in oracles.iter_mut() {
            values.push(o.best_window().0);
            if !go_on() {
                return None;
            }
        }
        for g in 0..self.crowds.len() {
            self.search_one(g, oracles, &mut values);
            if !go_on() {
                return None;
            }
        }
        Some(values.iter().copied().sum::<Total>() + self.worth())
    }

    /// Raises what leaving a club out costs, where one that is in no crowd is left out now.
    pub fn raise_skips(&self, oracles: &mut [SetOracle<'_>]) {
        for (s, o) in oracles.iter_mut().enumerate() {
            let window = o.cheapest_window().1;
            let cells = o.cells_in(window);
            for c in (0..cells.len()).filter(|&c| cells[c].is_none() && self.of_set[s].iter().all(|x| x.2 != c)) {
                o.skips[c] = o.skips[c].saturating_mul(2).min(o.clubs[c].skip);
            }
        }
    }

    fn search_one(&mut self, g: usize, oracles: &mut [SetOracle<'_>], values: &mut [Total]) {
        let x = &mut self.crowds[g];
        let (mut lo, mut hi) =
            (Steps(0), x.clubs.iter().map(|&(s, c)| oracles[s].clubs[c].skip).max().unwrap_or_default());
        let mut best: Option<(Total, Steps)> = None;
        let mut at = x.price.clamp(lo, hi);
        let mut reach = Steps::quanta(64);
        for _ in 0..HALVINGS {
            let (sum, out) = x.try_price(at, oracles, values);
            if best.is_none_or(|b| sum > b.0) {
                best = Some((sum, at));
            }
            if out == x.short {
                break;
            }
            // Out from the old price with longer and longer strides; once the best is between two prices, halves.
            if out < x.short {
                lo = at + Steps(1);
                at = if best.is_some() && hi - lo > reach { at.saturating_add(reach) } else { lo.midpoint(hi) };
            } else {
                hi = at - Steps(1);
                at = if hi - lo > reach { at - reach } else { lo.midpoint(hi) };
            }
            reach = reach.saturating_add(reach);
            if lo > hi {
                break;
            }
        }
        if let Some((_, at)) = best {
            x.price = at;
            x.try_price(at, oracles, values);
        }
    }
}

impl State {
    /// What sets of this crowd and the crowd come to at a price, and how many of its clubs are left out then.
    fn try_price(&self, price: Steps, oracles: &mut [SetOracle<'_>], values: &mut [Total]) -> (Total, usize) {
        let mut out = 0;
        for &(s, c) in &self.clubs {
            oracles[s].skips[c] = oracles[s].clubs[c].skip - price;
        }
        let mut sum = price.times(count(self.short));
        let mut last = usize::MAX;
        for &(s, _) in &self.clubs {
            // Clubs of one set stand side by side.
            if std::mem::replace(&mut last, s) == s {
                continue;
            }
            let (value, window) = oracles[s].best_window();
            values[s] = value;
            sum += value;
            let cells = oracles[s].cells_in(window);
            out += self.clubs.iter().filter(|&&(t, c)| t == s && cells[c].is_none()).count();
        }
        (sum, out)
    }
}

/// A number of clubs, to multiply by.
fn count(clubs: usize) -> i64 {
    i64::try_from(clubs).unwrap_or(i64::MAX)
}
