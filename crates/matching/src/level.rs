//! The common level of the prices of parts that stand in for each other.
//!
//! Where clubs take one part each of a family of types, raising all its prices by the same amount changes no choice. What
//! it changes is the worth of what is left over; so with as many parts as clubs, or more, the level belongs as low as the
//! cheapest type allows. Price steps along single types find that out slowly, because few left-over parts among many
//! types make a weak direction.

use crate::compiled::Compiled;
use crate::error::PartKind;
use crate::index::{ByType, MAIN, MainKind, PerType, Ty};

/// Types that clubs can take in each other's place, with no priceless type among them.
#[derive(Debug)]
pub(crate) struct Family {
    pub kind: MainKind,
    pub types: Vec<Ty>,
}

/// Families of heads, shafts and grips of which there are enough; `contended` are the types with prices.
pub(crate) fn families(p: &Compiled, contended: &[(PartKind, Ty, i32)]) -> Vec<Family> {
    let mut out = Vec::new();
    for kind in MAIN {
        let mut parent: PerType<Ty> = p.types[kind].types().collect();
        let mut first: Vec<Option<Ty>> = vec![None; p.clubs.len()];
        for (first, club) in first.iter_mut().zip(&p.clubs) {
            for c in &club.cands[kind] {
                let first = *first.get_or_insert(c.ty);
                let (a, b) = (root(&mut parent, first), root(&mut parent, c.ty));
                parent[b] = a;
            }
        }
        let mut clubs = PerType::new(parent.len(), 0_u64);
        for &ty in first.iter().flatten() {
            clubs[root(&mut parent, ty)] += 1;
        }
        let mut priced = PerType::new(parent.len(), false);
        contended.iter().filter(|x| x.0 == kind.into()).for_each(|x| priced[x.1] = true);
        let mut types = PerType::new(parent.len(), Vec::new());
        for ty in parent.types() {
            types[root(&mut parent, ty)].push(ty);
        }
        for (root, types) in types.typed() {
            let there: u64 = types.iter().map(|&ty| u64::from(p.types[kind][ty].cap)).sum();
            if clubs[root] > 0 && there >= clubs[root] && types.iter().all(|&ty| priced[ty]) {
                out.push(Family { kind, types: types.clone() });
            }
        }
    }
    out
}

impl Family {
    /// Lowers all prices of the family until the least is nought.
    pub fn lower(&self, prices: &mut ByType<f64>) {
        let list = &mut prices[self.kind];
        let least = self.types.iter().map(|&ty| list[ty]).fold(f64::INFINITY, f64::min);
        self.types.iter().for_each(|&ty| list[ty] -= least);
    }
}

fn root(parent: &mut PerType<Ty>, mut i: Ty) -> Ty {
    while parent[i] != i {
        parent[i] = parent[parent[i]];
        i = parent[i];
    }
    i
}
