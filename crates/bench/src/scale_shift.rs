//! What a job believes of today's balance scale: by how much it shows too much or too little. Every forecast of a reading has
//! it in it, and every reading is taken with it.

use crate::belief::{BAND_95, Believed};
use estimation::{Probe, Quantity};
use serde::Serialize;
use trade::error::TradeError;
use utoipa::ToSchema;

/// From this shift on it changes a figure that a scale with tenths shows, points.
pub const SHIFT_SHOWN_POINTS: f64 = 0.1;

/// What the balance scale is believed to show too much in a job.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct ScaleShift {
    /// Key of the scale.
    pub scale: String,
    /// What it shows too much now; less than 0: too little.
    pub shift_points: f64,
    /// Half width of its 95 % band.
    pub band_points: f64,
    /// Whether it is large enough to change a figure, and is shown beside it.
    pub shown: bool,
    /// The same as it is told.
    #[serde(flatten)]
    pub fact: ShiftSays,
}

fact::facts! {
    /// What is told of a scale's shift.
    pub enum ShiftSays: "scale_shift" {
        /// It shows too little.
        Low {
            /// By how much.
            by_points: f64,
        },
        /// It shows too much.
        High {
            /// By how much.
            by_points: f64,
        },
        /// Its shift is too small to show in tenths of a point.
        Steady,
    }
}

/// What is believed of the balance scale after all readings of a job.
///
/// # Errors
/// Figures that the belief cannot work with.
pub fn scale_shift(believed: &Believed<'_>) -> Result<ScaleShift, TradeError> {
    let scale = believed.assembly.shop.balance_scale.key.clone();
    // A weight of nothing shows what the scale is off by.
    let nothing = Quantity::CheckWeight { true_points: 0.0, mass_g: 0.0, shared: None };
    let probe = Probe::of_job(nothing).on_scale(scale.clone());
    let answer = believed.mixture().forecast(|belief| belief.answer(&probe))?;
    let (shift_points, by_points) = (answer.mean, answer.mean.abs());
    let shown = by_points >= SHIFT_SHOWN_POINTS;
    let fact = match (shown, shift_points < 0.0) {
        (false, _) => ShiftSays::Steady,
        (true, true) => ShiftSays::Low { by_points },
        (true, false) => ShiftSays::High { by_points },
    };
    Ok(ScaleShift { scale, shift_points, band_points: BAND_95 * answer.sd, shown, fact })
}
