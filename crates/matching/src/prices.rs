//! What parts cost beside their own costs, because others want them too: the multipliers of the relaxation, by type.

use crate::compiled::{Compiled, TipOption};
use crate::grid::{FORBIDDEN, Steps};
use crate::index::{ADAPTER, ByType, PerType, TIP};

/// What a part of each type costs beside its own cost; [`FORBIDDEN`] where none is left.
pub(crate) type Prices = ByType<Steps>;

/// One figure for all types.
pub(crate) fn by_type<T: Clone>(p: &Compiled, value: T) -> ByType<T> {
    p.types.each(|types| PerType::new(types.len(), value.clone()))
}

/// Price of what goes in at the tip.
pub(crate) fn tip_price(option: &TipOption, prices: &Prices) -> Steps {
    let adapter = option.adapter.map_or(Steps(0), |a| prices[ADAPTER][a]);
    let tips = option.uses.iter().flatten();
    tips.fold(adapter, |sum, &t| sum.saturating_add(prices[TIP][t])).min(FORBIDDEN)
}
