//! The common level of the prices of parts that stand in for each other.
//!
//! Where clubs take one part each of a family of types, raising all its prices by the same amount changes no choice. What
//! it changes is the worth of what is left over; so with as many parts as clubs, or more, the level belongs as low as the
//! cheapest type allows. Price steps along single types find that out slowly, because few left-over parts among many
//! types make a weak direction.

use crate::compiled::{Compiled, TipOption};
use crate::error::PartKind;
use crate::index::{ByType, MAIN, MainKind, PerType, TIP, Ty};
use crate::prices::by_type;

/// Types that clubs can take in each other's place, with no priceless type among them.
#[derive(Debug)]
pub(crate) struct Family {
    pub kind: MainKind,
    pub types: Vec<Ty>,
    /// How many clubs take one of them.
    pub clubs: u64,
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
                out.push(Family { kind, types: types.clone(), clubs: clubs[root] });
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

/// What each part is worth for a point that it adds: nothing up to the one at which there are as many as clubs that take one.
pub(crate) fn by_points(p: &Compiled, families: &[Family]) -> ByType<f64> {
    let mut sum = by_type(p, (0.0, 0.0));
    for club in &p.clubs {
        for (k, list) in club.cands.iter() {
            for c in list {
                let (points, clubs) = &mut sum[k][c.ty];
                (*points, *clubs) = (*points + f64::from(c.pts.0) / 1000.0, *clubs + 1.0);
            }
        }
        let single = |option: &&TipOption| option.uses[1].is_none();
        for option in club.tips.iter().filter(single) {
            let Some(tip) = option.uses[0] else { continue };
            let (points, clubs) = &mut sum[TIP][tip];
            (*points, *clubs) = (*points + f64::from(option.pts.0) / 1000.0, *clubs + 1.0);
        }
    }
    let mean = sum.each(|list| list.each(|&(points, clubs)| if clubs > 0.0 { points / clubs } else { 0.0 }));
    let mut worth = by_type(p, 0.0);
    worth[TIP] = mean[TIP].each(|&points: &f64| points.max(0.0));
    for family in families {
        let mut order = family.types.clone();
        order.sort_by(|&a, &b| mean[family.kind][b].total_cmp(&mean[family.kind][a]));
        let mut there = 0;
        let enough = order.iter().find(|&&ty| {
            there += u64::from(p.types[family.kind][ty].cap);
            there >= family.clubs
        });
        let least = enough.map_or(0.0, |&ty| mean[family.kind][ty]);
        for &ty in &family.types {
            worth[family.kind][ty] = (mean[family.kind][ty] - least).max(0.0);
        }
    }
    worth
}

fn root(parent: &mut PerType<Ty>, mut i: Ty) -> Ty {
    while parent[i] != i {
        parent[i] = parent[parent[i]];
        i = parent[i];
    }
    i
}
