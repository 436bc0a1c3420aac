//! The knife edge that clubs are hung from and timed, for their inertia.
//!
//! A club that hangs from a pivot and swings a little takes `2π √(I / (m g d))` a full swing: its inertia about the pivot by its mass
//! and how far below the pivot it balances (a handbook formula). The belief works with the time itself, as it does with what a
//! scale shows.

use crate::error::{Entry, TradeError, within};
use clubphysics::inertia::amplitude_factor;
use quantity::LengthUnit;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// How well the place of the pivot is known, mm: a knife edge against a rule (common practice, no source).
const PIVOT_SD_MM: f64 = 0.5;
/// How much a period changes with the place of the pivot, s a mm, at most: near the butt some 0.0009 for clubs of 0.9 to 1.2 m
/// (derived from the formula; less farther down).
const PERIOD_PER_MM_S: f64 = 0.0009;

/// How the shop times the swing of a club.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
#[serde(deny_unknown_fields, default)]
pub struct Pendulum {
    /// Where the club hangs, from the outside of its cap: positive down the shaft, negative where a clip holds it above its cap.
    #[schema(minimum = -200, maximum = 500)]
    pub pivot_mm: f64,
    /// How many full swings, there and back, are timed at once.
    #[schema(minimum = 1, maximum = 200)]
    pub swings: u16,
    /// How well the time of all of them together is taken, standard deviation.
    #[schema(minimum = 0.0001, maximum = 2)]
    pub time_sd_s: f64,
    /// How far it swings to either side at the middle of the timing.
    #[schema(minimum = 0, maximum = 30)]
    pub amplitude_deg: f64,
    /// Gravity at the shop: 9.780 at the equator, 9.832 at the poles, less 0.003 each 1,000 m up. Standard gravity until it is
    /// stated; a quarter of a percent more or less is as much of the inertia.
    #[schema(minimum = 9.76, maximum = 9.84)]
    pub gravity_m_s2: f64,
}

impl Default for Pendulum {
    /// Ten swings from the cap by a stopwatch in the hand, to 0.07 s in all (a judgement, no source), 5° to either side.
    fn default() -> Self {
        Self { pivot_mm: 0.0, swings: 10, time_sd_s: 0.07, amplitude_deg: 5.0, gravity_m_s2: 9.806_65 }
    }
}

impl Pendulum {
    /// Whether it is still as a new shop's.
    #[must_use]
    pub fn is_default(&self) -> bool {
        *self == Self::default()
    }

    pub(crate) fn check(&self) -> Result<(), TradeError> {
        within("pendulum.pivot_mm", self.pivot_mm, -200.0, 500.0, "mm")?;
        within("pendulum.swings", f64::from(self.swings), 1.0, 200.0, "")?;
        within("pendulum.time_sd_s", self.time_sd_s, 0.0001, 2.0, "s")?;
        within("pendulum.amplitude_deg", self.amplitude_deg, 0.0, 30.0, "°")?;
        within("pendulum.gravity_m_s2", self.gravity_m_s2, 9.76, 9.84, "m/s²").map(|_| ())
    }

    /// How much longer a swing takes than a very small one.
    #[must_use]
    pub fn wide(&self) -> f64 {
        amplitude_factor(self.amplitude_deg.to_radians())
    }

    /// How well the period of one swing is known by one timing, standard deviation, s.
    #[must_use]
    pub fn period_sd_s(&self) -> f64 {
        (self.time_sd_s / f64::from(self.swings.max(1))).hypot(PERIOD_PER_MM_S * PIVOT_SD_MM)
    }

    /// The period of one swing out of what was typed: the time of all swings, or a time and how many swings it is of, `18.81/10`; with
    /// an own pivot after `@`: `18.2/10 @ 100 mm`.
    ///
    /// # Errors
    /// No time, no number of swings, a pivot that is no length.
    ///
    /// # Examples
    ///
    /// ```
    /// use trade::pendulum::Pendulum;
    ///
    /// let shop = Pendulum::default();
    /// assert!((shop.timed("18.8 s")?.period_s - 1.88).abs() < 1e-12);
    /// let lower = shop.timed("56,4 / 30 @ 4 in")?;
    /// assert!((lower.period_s - 1.88).abs() < 1e-12 && lower.pivot_mm == Some(101.6));
    /// assert!(shop.timed("18.8/0").is_err() && shop.timed("ten").is_err());
    /// # Ok::<(), trade::error::TradeError>(())
    /// ```
    pub fn timed(&self, typed: &str) -> Result<Timed, TradeError> {
        let refuse = || {
            TradeError::unreadable(Entry::from("swing_period"), &TimeFault::NotATime { typed: typed.trim().to_owned() })
        };
        let (time, pivot) = typed.split_once('@').map_or((typed, None), |(time, pivot)| (time, Some(pivot)));
        let (time, swings) = time.split_once('/').map_or((time, None), |(time, swings)| (time, Some(swings)));
        let time = time.trim().trim_end_matches(['s', 'S']).trim_end().replace(',', ".");
        let time: f64 = time.parse().map_err(|_| refuse())?;
        let swings = match swings {
            Some(swings) => swings.trim().parse().map_err(|_| refuse())?,
            None => self.swings,
        };
        let pivot = pivot.map(|pivot| quantity::parse_length(pivot, LengthUnit::Millimetre).map_err(|_| refuse()));
        if !time.is_finite() || time <= 0.0 || swings == 0 {
            return Err(refuse());
        }
        Ok(Timed { period_s: time / f64::from(swings), swings, pivot_mm: pivot.transpose()?.map(quantity::Length::mm) })
    }
}

/// A timing as it was typed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Timed {
    /// Period of one full swing.
    pub period_s: f64,
    /// Of how many swings it was the time.
    pub swings: u16,
    /// Where the club hung, from the outside of its cap, where that was typed.
    pub pivot_mm: Option<f64>,
}

fact::facts! {
    /// What is refused of a time.
    pub(crate) enum TimeFault: "time_fault" {
        /// Not a time of a number of swings.
        NotATime {
            /// The entry for a swing period as somebody wrote it.
            typed: String,
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The constant is the steepest slope of the formula for usual clubs: a radius of gyration of 300 to 380 mm about a balance point
    /// 600 to 850 mm down, with pivots from 100 mm above the cap to 250 below.
    #[test]
    fn a_misplaced_pivot_is_counted_as_what_it_does() {
        let period_s = |k: f64, d: f64| std::f64::consts::TAU * ((k * k + d * d) / (d * 9806.65)).sqrt();
        let mut steepest = 0.0_f64;
        for k in [300.0, 340.0, 380.0] {
            for balance_mm in [600.0, 720.0, 850.0] {
                for pivot_mm in [-100.0, 0.0, 100.0, 250.0] {
                    let d = balance_mm - pivot_mm;
                    steepest = steepest.max((period_s(k, d + 0.5) - period_s(k, d - 0.5)).abs());
                }
            }
        }
        assert!(steepest < PERIOD_PER_MM_S * 1.1, "{steepest}");
        assert!(steepest > PERIOD_PER_MM_S * 0.5, "{steepest}");
    }
}
