//! Clubs that surely stay unbuilt, and what that surely costs.
//!
//! Leaving a club unbuilt is by far the dearest thing a plan can do. Were the bound to find that out through prices of
//! parts alone, nine heads for ten clubs would need nine prices as high as an unbuilt club, and ordinary price steps
//! drown on the way there. So the clubs that vie for too few parts are found first, kind by kind, by bipartite matching of
//! clubs and types (augmenting paths) and Hall's theorem: from a club without a part, every club reached by alternating
//! paths belongs to a *crowd* of which at least as many stay unbuilt as the matching left over. That count is an
//! inequality with a price of its own, which is found exactly by a search along a line; it moves a whole crowd at once.

use crate::compiled::{Cand, Club, Compiled, TipOption};
use crate::error::PartKind;
use crate::grid::{FORBIDDEN, MilliPoints, QUANTUM, Steps, Total};
use crate::index::{ADAPTER, GRIP, HEAD, MAIN, MainKind, PerType, SHAFT, TIP, Ty, count};

/// Clubs of which some surely stay unbuilt.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Crowd {
    /// Numbers of the clubs in the whole problem, ascending.
    pub clubs: Vec<usize>,
    /// How many of them stay unbuilt at least.
    pub short: usize,
}

/// Cost of leaving a club out, in the prices' problem, for a club that is in no crowd: a good part of the worst that a
/// built club can lose.
pub(crate) fn moderate_skip(club: &Club) -> Steps {
    let worst = club.loss.costs.iter().copied().filter(|&c| c < FORBIDDEN).max().unwrap_or_default();
    worst.quarter().clamp(QUANTUM, club.skip.max(QUANTUM)).min(club.skip)
}

/// What clubs surely left unbuilt cost at least.
pub(crate) fn unavoidable(p: &Compiled, crowds: &[Crowd]) -> Total {
    let least = |crowd: &Crowd| {
        let mut skips: Vec<Total> = crowd.clubs.iter().map(|&c| Total::from(p.clubs[c].skip)).collect();
        skips.sort_unstable();
        skips.into_iter().take(crowd.short).sum::<Total>()
    };
    crowds.iter().map(least).sum()
}

/// The crowds of all kinds of parts, no two with a club in common: the kind that leaves most clubs out goes first.
pub(crate) fn crowds(p: &Compiled) -> Vec<Crowd> {
    let kinds = [PartKind::Head, PartKind::Shaft, PartKind::Grip, ADAPTER, TIP].into_iter();
    let mut by_kind: Vec<Vec<Crowd>> = kinds.map(|kind| Matching::new(p, kind).crowds()).collect();
    by_kind.sort_by_key(|list| std::cmp::Reverse(list.iter().map(|c| c.short).sum::<usize>()));
    let mut taken = vec![false; p.clubs.len()];
    let mut out = Vec::new();
    for crowd in by_kind.into_iter().flatten() {
        if crowd.clubs.iter().all(|&c| !taken[c]) {
            crowd.clubs.iter().for_each(|&c| taken[c] = true);
            out.push(crowd);
        }
    }
    out
}

/// Types of a kind of which a club takes one; what goes in at the tip is not among the kinds.
fn types(club: &Club, kind: PartKind) -> impl Iterator<Item = Ty> {
    let (cands, adapters): (&[Cand], &[Ty]) = match kind {
        PartKind::Head => (&club.cands[HEAD], &[]),
        PartKind::Shaft => (&club.cands[SHAFT], &[]),
        PartKind::Grip => (&club.cands[GRIP], &[]),
        PartKind::Adapter => (&[], club.adapters.as_deref().unwrap_or_default()),
        PartKind::Tip => (&[], &[]),
    };
    cands.iter().map(|c| c.ty).chain(adapters.iter().copied())
}

/// Tip weights of which a club takes one at least; none where it can do without.
fn needed_tips(club: &Club) -> Vec<Ty> {
    let (least, most) = reach(club);
    let fits = |t: &&TipOption| least + t.pts <= club.loss.half && most + t.pts >= -club.loss.half;
    let mut needed: Vec<Ty> = Vec::new();
    for option in club.tips.iter().filter(fits) {
        if option.uses == [None, None] {
            return Vec::new();
        }
        needed.extend(option.uses.iter().flatten());
    }
    needed.sort_unstable();
    needed.dedup();
    needed
}

/// What a club is off its target without weight in the tip, least and most.
fn reach(club: &Club) -> (MilliPoints, MilliPoints) {
    let ends = |kind: MainKind| {
        let pts = club.cands[kind].iter().map(|c| c.pts);
        (pts.clone().min().unwrap_or_default(), pts.max().unwrap_or_default())
    };
    let [h, s, g] = MAIN.map(ends);
    (club.base + h.0 + s.0 + g.0, club.base + h.1 + s.1 + g.1)
}

/// Clubs and types of one kind of part, matched as far as that goes.
struct Matching<'a> {
    p: &'a Compiled,
    kind: PartKind,
    /// Tip weights that each club needs one of, where they are what is matched.
    tips: Vec<Vec<Ty>>,
    /// Which clubs hold a part of each type.
    holders: PerType<Vec<usize>>,
    /// Clubs left without a part.
    without: Vec<usize>,
}

impl<'a> Matching<'a> {
    fn new(p: &'a Compiled, kind: PartKind) -> Self {
        let tips: Vec<Vec<Ty>> = match kind {
            TIP => p.clubs.iter().map(|club| needed_tips(club)).collect(),
            _ => Vec::new(),
        };
        // Marks are numbered by club, so that they need not be wiped each time.
        let mut seen = PerType::new(p.types[kind].len(), usize::MAX);
        // Who can do without does not vie for one.
        let vies = |club: &usize| match kind {
            ADAPTER => p.clubs[*club].adapters.is_some(),
            TIP => !tips[*club].is_empty(),
            _ => true,
        };
        let vying: Vec<usize> = (0..p.clubs.len()).filter(vies).collect();
        let holders = PerType::new(p.types[kind].len(), Vec::new());
        let mut matching = Self { p, kind, tips, holders, without: Vec::new() };
        for club in vying {
            if !matching.serve(club, club, &mut seen) {
                matching.without.push(club);
            }
        }
        matching
    }

    /// Types of which a club takes one.
    fn types(&self, club: usize) -> impl Iterator<Item = Ty> {
        let tips = self.tips.get(club).into_iter().flatten().copied();
        types(&self.p.clubs[club], self.kind).chain(tips)
    }

    /// Gives a club a part, making others change theirs where need be.
    fn serve(&mut self, club: usize, mark: usize, seen: &mut PerType<usize>) -> bool {
        let (p, kind, tips) = (self.p, self.kind, self.tips.get(club).cloned().unwrap_or_default());
        let listed = || types(&p.clubs[club], kind).chain(tips.iter().copied());
        // A free part first, so that long chains stay rare.
        for ty in listed() {
            if count(self.holders[ty].len()) < u64::from(p.types[kind][ty].cap) {
                self.holders[ty].push(club);
                return true;
            }
        }
        for ty in listed() {
            if std::mem::replace(&mut seen[ty], mark) == mark {
                continue;
            }
            for i in 0..self.holders[ty].len() {
                let other = self.holders[ty][i];
                if self.serve(other, mark, seen) {
                    self.holders[ty][i] = club;
                    return true;
                }
            }
        }
        false
    }

    /// Everyone whom a club without a part vies with, directly or not.
    fn rivals(&self, club: usize) -> Vec<usize> {
        let mut reached = vec![false; self.p.clubs.len()];
        let mut seen = PerType::new(self.holders.len(), false);
        let mut queue = vec![club];
        reached[club] = true;
        while let Some(club) = queue.pop() {
            for ty in self.types(club) {
                if !std::mem::replace(&mut seen[ty], true) {
                    for &other in &self.holders[ty] {
                        if !std::mem::replace(&mut reached[other], true) {
                            queue.push(other);
                        }
                    }
                }
            }
        }
        (0..reached.len()).filter(|&c| reached[c]).collect()
    }

    fn crowds(&self) -> Vec<Crowd> {
        let mut out: Vec<Crowd> = Vec::new();
        for &club in &self.without {
            let mut crowd = Crowd { clubs: self.rivals(club), short: 1 };
            // Crowds that overlap are one, and what is missing in each adds up.
            out.retain(|other| {
                let apart = other.clubs.iter().all(|c| crowd.clubs.binary_search(c).is_err());
                if !apart {
                    crowd.short += other.short;
                    crowd.clubs.extend(&other.clubs);
                    crowd.clubs.sort_unstable();
                    crowd.clubs.dedup();
                }
                apart
            });
            out.push(crowd);
        }
        out
    }
}
