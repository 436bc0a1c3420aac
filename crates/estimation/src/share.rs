//! A share counted over clusters: readings of one job share its scale and its adhesive, so eight of them do not say as
//! much as eight of eight jobs.

use serde::Serialize;
use statrs::distribution::{ContinuousCDF, StudentsT};
use utoipa::ToSchema;

/// A count out of a total.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Count {
    /// How many are.
    pub yes: u32,
    /// Out of how many.
    pub of: u32,
}

impl Count {
    /// Counts one.
    pub fn add(&mut self, yes: bool) {
        self.yes += u32::from(yes);
        self.of += 1;
    }

    /// Adds another count.
    pub fn join(&mut self, other: Self) {
        self.yes += other.yes;
        self.of += other.of;
    }
}

/// A share with its uncertainty, counted over clusters.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, ToSchema)]
#[schema(as = ShareOfReadings)]
pub struct Share {
    /// How many of a hundred cases are so.
    pub percent: f64,
    /// Lower and upper 95 % limit of the cluster estimate, percent.
    pub limits_percent: [f64; 2],
    /// Variance against that of independent cases.
    pub design_effect: f64,
    /// Cases counted.
    pub of: u32,
}

/// A share over clusters: ratio estimate with its linearised variance between clusters (W. Cochran, Sampling
/// Techniques, 1977, §3.12); none of nothing.
#[must_use]
pub fn share(clusters: &[Count]) -> Option<Share> {
    let of: u32 = clusters.iter().map(|c| c.of).sum();
    if of == 0 {
        return None;
    }
    let yes: u32 = clusters.iter().map(|c| c.yes).sum();
    let (n, p) = (f64::from(of), f64::from(yes) / f64::from(of));
    let filled = clusters.iter().filter(|c| c.of > 0).count() as f64;
    let squares: f64 = clusters.iter().map(|c| (f64::from(c.yes) - p * f64::from(c.of)).powi(2)).sum();
    let correction = if filled > 1.0 { filled / (filled - 1.0) } else { 1.0 };
    let simple = p * (1.0 - p) / n;
    // Near 0 and 100 % a few clusters say little: never narrower than independent cases (Wilson's middle).
    let variance = (squares * correction / (n * n)).max(simple);
    let sd = variance.sqrt();
    let z = 1.959_964;
    let n_effective = if variance > 0.0 { p * (1.0 - p) / variance } else { n };
    let wilson = |sign: f64| {
        let z2 = z * z / n_effective;
        (p + z2 / 2.0 + sign * z * (sd * sd + z2 / (4.0 * n_effective)).sqrt()) / (1.0 + z2)
    };
    Some(Share {
        percent: 100.0 * p,
        limits_percent: [100.0 * wilson(-1.0).max(0.0), 100.0 * wilson(1.0).min(1.0)],
        design_effect: if simple > 0.0 { variance / simple } else { 1.0 },
        of,
    })
}

/// How much greater a share is than another that was counted over the same clusters.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Difference {
    /// The one share less the other, points of a hundred.
    pub percent: f64,
    /// Lower and upper 95 % limit, points of a hundred.
    pub limits_percent: [f64; 2],
    /// Clusters that both were counted over.
    pub clusters: u32,
}

/// The difference of two shares over the same clusters, `(one, other)` with as many cases in both. What makes a whole cluster
/// easy or hard, makes it so for both, so the limits are narrower than those of two shares apart. A ratio estimate like
/// [`share`], with Student's limits; none of fewer than two clusters.
#[must_use]
pub fn paired(clusters: &[(Count, Count)]) -> Option<Difference> {
    let filled: Vec<(f64, f64)> = clusters
        .iter()
        .filter(|(one, _)| one.of > 0)
        .map(|(one, other)| (f64::from(one.yes) - f64::from(other.yes), f64::from(one.of)))
        .collect();
    let k = filled.len() as f64;
    let of: f64 = filled.iter().map(|(_, of)| of).sum();
    let mean = filled.iter().map(|(more, _)| more).sum::<f64>() / of;
    let squares: f64 = filled.iter().map(|(more, of)| (more - mean * of).powi(2)).sum();
    let student = StudentsT::new(0.0, 1.0, k - 1.0).ok()?;
    let wide = student.inverse_cdf(0.975) * (squares * k / (k - 1.0)).sqrt() / of;
    Some(Difference {
        percent: 100.0 * mean,
        limits_percent: [100.0 * (mean - wide), 100.0 * (mean + wide)],
        clusters: filled.len() as u32,
    })
}
