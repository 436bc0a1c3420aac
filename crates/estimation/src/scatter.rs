//! How much pieces of one kind scatter, learned from measured ones.
//!
//! The posterior of a standard deviation is far from Gaussian for a handful of pieces, so it is carried on a grid. The
//! prior is log-normal; a piece that deviates by `d` from the mean of its kind has the likelihood `N(d; 0, l·σ² + s²)`,
//! `l` layers of it together, `s` the noise of its measurement (derived; the readings of finished clubs hide the scatter in
//! their own noise, measured pieces do not).

use crate::error::EstimationError as E;

/// Points of the grid, evenly spaced in the logarithm.
const POINTS: usize = 60;
/// The grid reaches from this share of the prior's median …
const LOWEST: f64 = 0.25;
/// … to this many times it.
const HIGHEST: f64 = 1.0 / 0.12;

/// One measured piece, or some layers measured together.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeasuredPiece {
    /// How far it lies from the mean of its kind, in the unit of the scatter.
    pub deviation: f64,
    /// Standard deviation of its measurement, same unit.
    pub noise_sd: f64,
    /// How many layers were measured together; 1 for a piece.
    pub layers: f64,
}

/// What is believed of a scatter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ScatterBelief {
    /// Expected standard deviation.
    pub mean: f64,
    /// Root of the expected variance: what a forecast reckons a piece with.
    pub root_mean_square: f64,
    /// A twentieth lies below.
    pub low: f64,
    /// A twentieth lies above.
    pub high: f64,
    /// Standard deviation of its logarithm: about 1/√(2n) after n pieces.
    pub log_sd: f64,
}

/// Scatter after measured pieces; `median` and `log_sd` are those of the log-normal prior.
///
/// # Errors
///
/// A median or a spread that is not positive; a piece whose figures are not finite, without layers, or with negative noise.
///
/// # Examples
///
/// ```
/// use estimation::{MeasuredPiece, scatter_after};
/// // Eight strips of two layers, g, on a scale of 0.042 g; from an independent computation.
/// let strips = [0.31, -0.22, 0.08, -0.45, 0.52, -0.12, 0.27, -0.38];
/// let strips = strips.map(|deviation| MeasuredPiece { deviation, noise_sd: 0.042, layers: 2.0 });
/// let of_layer = scatter_after(0.12, 0.7, &strips)?;
/// assert!((of_layer.mean - 0.229).abs() < 5e-4 && (of_layer.root_mean_square - 0.236).abs() < 5e-4);
/// # Ok::<(), estimation::EstimationError>(())
/// ```
pub fn scatter_after(median: f64, log_sd: f64, pieces: &[MeasuredPiece]) -> Result<ScatterBelief, E> {
    E::positive(|| "scatter.median".into(), median)?;
    E::positive(|| "scatter.log_sd".into(), log_sd)?;
    for (i, piece) in pieces.iter().enumerate() {
        E::finite(|| format!("scatter.pieces[{i}].deviation"), piece.deviation)?;
        E::not_negative(|| format!("scatter.pieces[{i}].noise_sd"), piece.noise_sd)?;
        E::positive(|| format!("scatter.pieces[{i}].layers"), piece.layers)?;
    }
    let step = (HIGHEST / LOWEST).ln() / (POINTS - 1) as f64;
    let grid: Vec<f64> = (0..POINTS).map(|i| median * LOWEST * (step * i as f64).exp()).collect();
    let log_weight = |sd: f64| {
        let of_piece = |p: &MeasuredPiece| {
            let variance = p.layers * sd * sd + p.noise_sd * p.noise_sd;
            -0.5 * (p.deviation * p.deviation / variance + variance.ln())
        };
        -0.5 * ((sd / median).ln() / log_sd).powi(2) + pieces.iter().map(of_piece).sum::<f64>()
    };
    let logs: Vec<f64> = grid.iter().map(|sd| log_weight(*sd)).collect();
    let top = logs.iter().fold(f64::NEG_INFINITY, |most: f64, log| most.max(*log));
    let mut weights: Vec<f64> = logs.iter().map(|log| (log - top).exp()).collect();
    let total: f64 = weights.iter().sum();
    weights.iter_mut().for_each(|w| *w /= total);
    let expected = |of: &dyn Fn(f64) -> f64| grid.iter().zip(&weights).map(|(sd, w)| of(*sd) * w).sum::<f64>();
    let log_mean = expected(&f64::ln);
    let quantile = |p: f64| {
        let mut below = 0.0;
        let reached = grid.iter().zip(&weights).find(|(_, w)| {
            below += **w;
            below >= p
        });
        reached.map_or(grid[POINTS - 1], |(sd, _)| *sd)
    };
    Ok(ScatterBelief {
        mean: expected(&|sd| sd),
        root_mean_square: expected(&|sd| sd * sd).sqrt(),
        low: quantile(0.05),
        high: quantile(0.95),
        log_sd: expected(&|sd| (sd.ln() - log_mean).powi(2)).sqrt(),
    })
}
