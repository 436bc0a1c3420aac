//! A club as the clubs before it leave it.

use crate::compiled::{Club, Compiled};
use crate::error::PartKind;
use crate::index::{ADAPTER, TIP, Ty};

/// A club without the candidates that have run out.
pub(crate) fn of_what_is_left(club: &Club, rest: &Compiled) -> Club {
    let left = |kind: PartKind, ty: Ty| rest.types[kind][ty].cap;
    let mut club = club.clone();
    for (kind, list) in club.cands.iter_mut() {
        list.retain(|x| left(kind.into(), x.ty) > 0);
    }
    club.tips.retain(|option| {
        let twice = option.uses[0] == option.uses[1];
        let enough = |&t: &Ty| left(TIP, t) > u32::from(twice);
        option.uses.iter().flatten().all(enough) && option.adapter.is_none_or(|a| left(ADAPTER, a) > 0)
    });
    club
}
