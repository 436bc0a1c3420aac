//! The whole-number grid that the search works on, so that its proof is exact: deviations in thousandths of a point,
//! masses in hundredths of a gram, shaft residuals in tenths (what the scale shows), costs in multiples of
//! [`crate::CostWeights::quantum`]. Every contribution is rounded by itself, so sums of rounded parts are exact.

/// Price steps within one quantum of cost. Prices of parts may be fractions of a quantum; plan costs are not.
pub(crate) const FRAC: i32 = 16;

/// Stands for "not allowed"; adding a handful of real costs neither overflows nor brings it below any real cost.
pub(crate) const FORBIDDEN: i32 = 1 << 29;

/// Greatest single cost in quanta: 300 missed clubs' worth at the default quantum. A club's six costs and three prices
/// then stay below [`FORBIDDEN`], and all together within 32 bits.
pub(crate) const MOST_QUANTA: f64 = 3e6;

pub(crate) fn milli_points(points: f64) -> i32 {
    (points * 1000.0).round() as i32
}

pub(crate) fn centi_grams(mass_g: f64) -> i32 {
    (mass_g * 100.0).round() as i32
}

pub(crate) fn deci_grams(residual_g: f64) -> i32 {
    (residual_g * 10.0).round() as i32
}

/// A cost in whole quanta.
pub(crate) fn quanta(cost: f64, quantum: f64) -> i32 {
    (cost / quantum).round().clamp(-MOST_QUANTA, MOST_QUANTA) as i32
}
