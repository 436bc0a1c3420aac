//! Displays that round.
//!
//! Noise of standard deviation σ read to steps of q:
//! - σ ≥ q/2: the rounding error is as good as independent noise of variance q²/12 (derived; simulated in the tests).
//! - σ < q/2: repeats of the same reading share their rounding error, however many are taken. They are taken together:
//!   the likelihood of the true value is the product of the probabilities that each reading falls into its step, and
//!   its mean and variance stand for the whole group. This is exact as long as what was known before is wide against
//!   q; where it is narrower than q the group is credited with up to q²/12 although it tells nothing: a belief of
//!   standard deviation 0.1 q would come out 6 % too sure, which is why what is known already is better not read on a
//!   coarse display.

use crate::normal::log_between;

/// Variance of a rounding error spread evenly over a step.
pub(crate) fn step_variance(resolution: f64) -> f64 {
    resolution * resolution / 12.0
}

/// Is the noise too small to smear the steps?
pub(crate) fn is_coarse(sd: f64, resolution: f64) -> bool {
    resolution > 0.0 && sd < 0.5 * resolution
}

/// Mean and variance of the true value from readings (value, standard deviation) that share steps of `resolution`.
///
/// Noise below 1/50 of a step is raised to that: it changes the variance by half a percent and keeps the sum short.
pub(crate) fn interval_estimate(readings: &[(f64, f64)], resolution: f64) -> (f64, f64) {
    let half = 0.5 * resolution;
    let noise = |sd: f64| sd.max(resolution / 50.0);
    match readings {
        [] => (0.0, f64::INFINITY),
        [(value, sd)] => (*value, noise(*sd).powi(2) + step_variance(resolution)),
        _ => {
            let finest = readings.iter().map(|(_, sd)| noise(*sd)).fold(f64::INFINITY, f64::min);
            let coarsest = readings.iter().map(|(_, sd)| noise(*sd)).fold(0.0, f64::max);
            let low = readings.iter().map(|(v, _)| *v).fold(f64::INFINITY, f64::min) - half - 8.0 * coarsest;
            let high = readings.iter().map(|(v, _)| *v).fold(f64::NEG_INFINITY, f64::max) + half + 8.0 * coarsest;
            // The trapezoidal rule converges exponentially here; a step of 0.4 σ leaves about 1e-50 per reading and
            // still less than 1e-9 for a product of many. Readings far apart would make the sum long: they are
            // capped, and such a group is doubted anyway.
            let count = ((high - low) / (0.4 * finest)).ceil().clamp(64.0, 20_000.0) as usize;
            let step = (high - low) / count as f64;
            let log = |x: f64| {
                let terms = readings.iter().map(|(value, sd)| {
                    let sd = noise(*sd);
                    log_between((value - half - x) / sd, (value + half - x) / sd)
                });
                terms.sum::<f64>()
            };
            let grid: Vec<(f64, f64)> = (0..=count).map(|i| low + step * i as f64).map(|x| (x, log(x))).collect();
            let top = grid.iter().map(|(_, log)| *log).fold(f64::NEG_INFINITY, f64::max);
            moments(&grid, top, step)
        }
    }
}

fn moments(grid: &[(f64, f64)], top: f64, step: f64) -> (f64, f64) {
    let (origin, _) = grid[grid.len() / 2];
    let (mut weight, mut first, mut second) = (0.0, 0.0, 0.0);
    for (x, log) in grid {
        let w = (log - top).exp();
        weight += w;
        first += w * (x - origin);
        second += w * (x - origin) * (x - origin);
    }
    let mean = first / weight;
    // A peak narrower than the grid (readings that contradict each other) is given the grid's own width.
    (origin + mean, (second / weight - mean * mean).max(step * step / 12.0))
}
