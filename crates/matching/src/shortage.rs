//! Clubs that surely stay unbuilt, and what that surely costs.
//!
//! Leaving a club unbuilt is by far the dearest thing a plan can do. Were the bound to find that out through prices, a
//! single missing head would need prices as high as an unbuilt club, and would drown all else. So the count of clubs
//! that no plan can build is found first, kind by kind, by bipartite matching of clubs and types (augmenting paths), and
//! the prices only have to deal with a moderate cost of leaving a club out.

use crate::compile::{Club, Compiled};
use crate::grid::{FORBIDDEN, FRAC};

/// Cost of leaving a club out in the prices' problem: a good part of the worst that a built club can lose.
pub(crate) fn moderate_skip(club: &Club) -> i32 {
    let worst = club.loss.costs.iter().copied().filter(|&c| c < FORBIDDEN).max().unwrap_or(0);
    (worst / 4 / FRAC * FRAC).clamp(FRAC, club.skip.max(FRAC)).min(club.skip)
}

/// What clubs surely left unbuilt cost beyond [`moderate_skip`].
///
/// A plan costs at least the prices' bound plus this: it leaves at least as many clubs out as the worst kind forces it
/// to, and each costs at least the least difference.
pub(crate) fn unavoidable(p: &Compiled) -> i64 {
    let most = (0..3).map(|kind| surely_unbuilt(p, kind)).max().unwrap_or(0);
    let mut beyond: Vec<i64> = p.clubs.iter().map(|c| i64::from(c.skip - moderate_skip(c))).collect();
    beyond.sort_unstable();
    beyond.iter().take(most).sum()
}

/// Clubs that a kind of part leaves without one, however the parts are given out.
fn surely_unbuilt(p: &Compiled, kind: usize) -> usize {
    let mut holders: Vec<Vec<usize>> = vec![Vec::new(); p.types[kind].len()];
    let mut without = 0;
    for club in 0..p.clubs.len() {
        let mut seen = vec![false; holders.len()];
        if !serve(p, kind, club, &mut holders, &mut seen) {
            without += 1;
        }
    }
    without
}

/// Gives a club a part, making others change theirs where need be.
fn serve(p: &Compiled, kind: usize, club: usize, holders: &mut [Vec<usize>], seen: &mut [bool]) -> bool {
    let list = &p.clubs[club].cands[kind];
    // A free part first, so that long chains stay rare.
    for c in list {
        let ty = c.ty as usize;
        if holders[ty].len() < p.types[kind][ty].cap as usize {
            holders[ty].push(club);
            return true;
        }
    }
    for c in list {
        let ty = c.ty as usize;
        if std::mem::replace(&mut seen[ty], true) {
            continue;
        }
        for i in 0..holders[ty].len() {
            let other = holders[ty][i];
            if serve(p, kind, other, holders, seen) {
                holders[ty][i] = club;
                return true;
            }
        }
    }
    false
}
