//! Gauge study: how much of what scatters is the scale, how much the hand, how much the parts.
//!
//! A crossed study: every appraiser reads every part several times. Two ways: averages and ranges, and analysis of
//! variance (method: AIAG, Measurement Systems Analysis, 4th ed.; the constants are computed from the distribution of
//! the range).

use crate::chart::{d2, d3};
use crate::error::EstimationError as E;
use serde::{Deserialize, Serialize};
use statrs::distribution::{ContinuousCDF, FisherSnedecor};
use utoipa::ToSchema;

/// Standard deviations found by a gauge study, in the unit of the readings.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct GaugeStudy {
    /// Of repeats by one appraiser on one part.
    pub equipment: f64,
    /// Between appraisers: how far the means of their readings of the same parts scatter.
    pub appraiser: f64,
    /// Of appraisers differing from part to part; 0 when pooled or not estimated.
    pub interaction: f64,
    /// Of the whole gauge: equipment, appraiser and interaction together.
    pub gauge: f64,
    /// Between parts: how far they truly scatter, the gauge taken off.
    pub part: f64,
    /// Of everything that was read, gauge and parts together.
    pub total: f64,
    /// Gauge over total, per cent.
    pub gauge_percent: f64,
    /// Number of distinct categories that the gauge can tell apart, rounded down: 1.41·part/gauge.
    pub categories: usize,
}

impl GaugeStudy {
    fn new(equipment: f64, appraiser: f64, interaction: f64, part: f64) -> Self {
        let gauge = (equipment.powi(2) + appraiser.powi(2) + interaction.powi(2)).sqrt();
        let total = gauge.hypot(part);
        let gauge_percent = if total > 0.0 { 100.0 * gauge / total } else { 0.0 };
        let categories = if gauge > 0.0 { (std::f64::consts::SQRT_2 * part / gauge) as usize } else { usize::MAX };
        Self { equipment, appraiser, interaction, gauge, part, total, gauge_percent, categories }
    }
}

/// Readings of a crossed study: `readings[appraiser][trial][part]`.
#[derive(Debug, Clone, PartialEq)]
pub struct Crossed {
    readings: Vec<Vec<Vec<f64>>>,
}

impl Crossed {
    /// Check and take the readings, as `readings[appraiser][trial][part]`.
    ///
    /// # Errors
    ///
    /// Fewer than two appraisers, trials or parts; rows of unequal length; values that are not finite.
    pub fn new(readings: Vec<Vec<Vec<f64>>>) -> Result<Self, E> {
        let least_two = |what: &str, count: usize| {
            if count < 2 { Err(E::TooFew { place: format!("gauge_study.{what}"), count, least: 2 }) } else { Ok(count) }
        };
        least_two("appraisers", readings.len())?;
        let trials = least_two("trials", readings[0].len())?;
        let parts = least_two("parts", readings[0][0].len())?;
        for (a, by) in readings.iter().enumerate() {
            let place = || format!("gauge_study.appraisers[{a}]");
            if by.len() != trials {
                return Err(E::Shape { place: place(), found: by.len(), expected: trials });
            }
            for trial in by {
                if trial.len() != parts {
                    return Err(E::Shape { place: place(), found: trial.len(), expected: parts });
                }
                for value in trial {
                    E::finite(place, *value)?;
                }
            }
        }
        Ok(Self { readings })
    }

    fn sizes(&self) -> (usize, usize, usize) {
        (self.readings.len(), self.readings[0].len(), self.readings[0][0].len())
    }

    fn cell(&self, appraiser: usize, part: usize) -> impl Iterator<Item = f64> {
        self.readings[appraiser].iter().map(move |trial| trial[part])
    }

    /// By averages and ranges.
    #[must_use]
    pub fn average_range(&self) -> GaugeStudy {
        let (appraisers, trials, parts) = self.sizes();
        let cells = (0..appraisers).flat_map(|a| (0..parts).map(move |p| (a, p)));
        let mean_range = mean(cells.map(|(a, p)| range(self.cell(a, p))));
        let equipment = mean_range / d2(trials);
        let by_appraiser = (0..appraisers).map(|a| mean(self.readings[a].iter().flatten().copied()));
        let between = range(by_appraiser) / single_range_constant(appraisers);
        let appraiser = (between.powi(2) - equipment.powi(2) / (parts * trials) as f64).max(0.0).sqrt();
        let by_part = (0..parts).map(|p| mean((0..appraisers).flat_map(|a| self.cell(a, p))));
        let part = range(by_part) / single_range_constant(parts);
        GaugeStudy::new(equipment, appraiser, 0.0, part)
    }

    /// By analysis of variance. The interaction of part and appraiser is pooled with the repeats when its F test gives
    /// a probability above `pool_above` (0.25 is customary; 0 always pools, 1 never does).
    ///
    /// # Errors
    ///
    /// Readings without any scatter between repeats, for which there is no F test.
    pub fn variance_analysis(&self, pool_above: f64) -> Result<GaugeStudy, E> {
        let (appraisers, trials, parts) = self.sizes();
        let (a, r, p) = (appraisers as f64, trials as f64, parts as f64);
        let grand = mean(self.readings.iter().flatten().flatten().copied());
        let of_part: Vec<f64> = (0..parts).map(|k| mean((0..appraisers).flat_map(|i| self.cell(i, k)))).collect();
        let of_appraiser: Vec<f64> = self.readings.iter().map(|by| mean(by.iter().flatten().copied())).collect();
        let part_square = a * r * of_part.iter().map(|m| (m - grand).powi(2)).sum::<f64>();
        let appraiser_square = p * r * of_appraiser.iter().map(|m| (m - grand).powi(2)).sum::<f64>();
        let (mut cross_square, mut repeat_square) = (0.0, 0.0);
        for (i, by) in of_appraiser.iter().enumerate() {
            for (k, of) in of_part.iter().enumerate() {
                let cell = mean(self.cell(i, k));
                cross_square += r * (cell - by - of + grand).powi(2);
                repeat_square += self.cell(i, k).map(|value| (value - cell).powi(2)).sum::<f64>();
            }
        }
        let (cross_dof, repeat_dof) = ((a - 1.0) * (p - 1.0), a * p * (r - 1.0));
        let repeat = E::positive(|| "gauge_study.repeat".into(), repeat_square / repeat_dof)?;
        let cross = cross_square / cross_dof;
        let singular = |_| E::Singular { place: "gauge_study".into() };
        let f = FisherSnedecor::new(cross_dof, repeat_dof).map_err(singular)?;
        let pooled = f.sf(cross / repeat) > pool_above;
        let error = if pooled { (cross_square + repeat_square) / (cross_dof + repeat_dof) } else { cross };
        let equipment = if pooled { error } else { repeat };
        let interaction = if pooled { 0.0 } else { ((cross - repeat) / r).max(0.0) };
        let appraiser = ((appraiser_square / (a - 1.0) - error) / (p * r)).max(0.0);
        let part = ((part_square / (p - 1.0) - error) / (a * r)).max(0.0);
        Ok(GaugeStudy::new(equipment.sqrt(), appraiser.sqrt(), interaction.sqrt(), part.sqrt()))
    }
}

/// What the range of one sample of `n` is divided by to get a standard deviation that is right in the mean square.
fn single_range_constant(n: usize) -> f64 {
    d2(n).hypot(d3(n))
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
    sum / count
}

fn range(values: impl Iterator<Item = f64>) -> f64 {
    let (low, high) = values.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), v| (l.min(v), h.max(v)));
    high - low
}
