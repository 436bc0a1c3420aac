//! Putting one club into a plan at its cheapest.

use crate::compiled::SetShape;
use crate::grid::{DeciGrams, FORBIDDEN, Steps, Total};
use crate::index::TIP;
use crate::oracle::{SetOracle, Window};
use crate::prices::Prices;
use crate::stockleft::StockLeft;
use crate::table::Column;

/// Takes the cheapest column by cost and prices that the stock still allows, with a surcharge by level of shaft
/// residual; `None` when leaving the club unbuilt is cheaper. `guard` is scratch of the stock's shape.
pub(crate) fn cheapest(
    o: &mut SetOracle<'_>,
    c: usize,
    prices: &Prices,
    left: &mut StockLeft,
    guard: &mut Prices,
    surcharge: impl Fn(&[DeciGrams], usize) -> Steps,
) -> Option<Column> {
    left.guard(prices, guard);
    for _ in 0..4 {
        o.price(c, guard);
        let (value, cell) = o.cheapest_cell(c, &surcharge)?;
        if value >= Total::from(o.clubs[c].skip.min(FORBIDDEN)) {
            return None;
        }
        let column = o.column(c, cell, guard)?;
        if left.take(&column) {
            return Some(column);
        }
        // Only a pair of one tip weight of which a single one is left can fail.
        for tip in column.tips.iter().flatten() {
            guard[TIP][*tip] = FORBIDDEN;
        }
    }
    None
}

/// Surcharge that keeps shafts inside a window.
pub(crate) fn outside(window: Option<Window>, i: usize) -> Steps {
    match window {
        Some(w) if i < w.lo || i > w.hi => FORBIDDEN,
        _ => Steps(0),
    }
}

/// What widening the range of a set's shafts by one more residual costs.
pub(crate) fn widening(shape: &SetShape, span: Option<(DeciGrams, DeciGrams)>, residual: DeciGrams) -> Steps {
    span.map_or(Steps(0), |(lo, hi)| shape.range_cost(hi.max(residual) - lo.min(residual)) - shape.range_cost(hi - lo))
}
