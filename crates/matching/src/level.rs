//! The common level of the prices of parts that stand in for each other.
//!
//! Where clubs take one part each of a family of types, raising all its prices by the same amount changes no choice. What
//! it changes is the worth of what is left over; so with as many parts as clubs, or more, the level belongs as low as the
//! cheapest type allows. Price steps along single types find that out slowly, because few left-over parts among many
//! types make a weak direction.

use crate::compile::{Compiled, KINDS};

/// Types that clubs can take in each other's place, with no priceless type among them.
#[derive(Debug)]
pub(crate) struct Family {
    pub kind: usize,
    pub types: Vec<usize>,
}

/// Families of heads, shafts and grips of which there are enough; `contended` are the types with prices.
pub(crate) fn families(p: &Compiled, contended: &[(usize, usize, i32)]) -> Vec<Family> {
    let mut out = Vec::new();
    for kind in 0..3 {
        let mut parent: Vec<usize> = (0..p.types[kind].len()).collect();
        let mut first = vec![usize::MAX; p.clubs.len()];
        for (first, club) in first.iter_mut().zip(&p.clubs) {
            for c in &club.cands[kind] {
                if *first == usize::MAX {
                    *first = c.ty as usize;
                }
                let (a, b) = (root(&mut parent, *first), root(&mut parent, c.ty as usize));
                parent[b] = a;
            }
        }
        let mut clubs = vec![0_u64; parent.len()];
        for &ty in first.iter().filter(|&&ty| ty != usize::MAX) {
            clubs[root(&mut parent, ty)] += 1;
        }
        let mut priced = vec![false; parent.len()];
        contended.iter().filter(|x| x.0 == kind).for_each(|x| priced[x.1] = true);
        let mut types = vec![Vec::new(); parent.len()];
        for ty in 0..parent.len() {
            types[root(&mut parent, ty)].push(ty);
        }
        for (root, types) in types.into_iter().enumerate() {
            let there: u64 = types.iter().map(|&ty| u64::from(p.types[kind][ty].cap)).sum();
            if clubs[root] > 0 && there >= clubs[root] && types.iter().all(|&ty| priced[ty]) {
                out.push(Family { kind, types });
            }
        }
    }
    out
}

impl Family {
    /// Lowers all prices of the family until the least is nought.
    pub fn lower(&self, prices: &mut [Vec<f64>; KINDS]) {
        let list = &mut prices[self.kind];
        let least = self.types.iter().map(|&ty| list[ty]).fold(f64::INFINITY, f64::min);
        self.types.iter().for_each(|&ty| list[ty] -= least);
    }
}

fn root(parent: &mut [usize], mut i: usize) -> usize {
    while parent[i] != i {
        parent[i] = parent[parent[i]];
        i = parent[i];
    }
    i
}
