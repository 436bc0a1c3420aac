//! What the readings say of the scatter of pieces and of the noise of instruments: the raw material of learning.
//!
//! A state's posterior is given whitened: mean `m` and variance `v` in units of its prior. Where the prior is right,
//! the expectation of `m²` is `1 − v`, whatever else it is tied to; what is beyond that speaks for more scatter than
//! was believed, what falls short for less.

use crate::belief::Belief;
use crate::club::Role;
use crate::error::EstimationError as E;
use crate::layout::{ClubLayout, Value};
use crate::predict::Row;
use crate::rounding::step_variance;
use std::sync::Arc;

/// Which value of a club a deviation belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OwnOf {
    /// Mass of a piece.
    Mass(Role),
    /// Arm of a piece.
    Arm(Role),
    /// The club's length.
    Length,
    /// Thickness of its grip's cap.
    Cap,
}

/// What is believed of one state after the readings, in units of what was believed before.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Whitened {
    /// Mean in prior standard deviations.
    pub mean: f64,
    /// Variance; 1 where the readings say nothing of it, 0 where they say all.
    pub variance: f64,
}

impl Whitened {
    /// How much of it the readings settled: between 0 and 1.
    #[must_use]
    pub fn settled(self) -> f64 {
        (1.0 - self.variance).clamp(0.0, 1.0)
    }
}

/// What one club's own piece deviates from what the job shares.
#[derive(Debug, Clone, PartialEq)]
pub struct OwnDeviation {
    /// Key of the club in the model of the job.
    pub club: String,
    /// The value.
    pub of: OwnOf,
    /// What is believed of it now.
    pub now: Whitened,
    /// Standard deviation before the readings, in the unit of the value (grams, inches).
    pub prior_sd: f64,
}

/// A believed reading against the belief that it is part of.
#[derive(Debug, Clone, PartialEq)]
pub struct Residual {
    /// The reading.
    pub id: String,
    /// The scale it was read on.
    pub scale: Option<String>,
    /// Reading less fitted value, in the unit of the reading.
    pub residual: f64,
    /// Variance of the reading's own noise, rounding left out.
    pub noise_variance: f64,
    /// Variance of noise and rounding together.
    pub variance: f64,
    /// Share of the noise that is left in the residual: 1 less the variance of the fitted value over `variance`.
    pub free: f64,
}

impl Belief {
    /// What each club's own pieces deviate, club by club; values that were known exactly have none.
    #[must_use]
    pub fn own_deviations(&self) -> Vec<OwnDeviation> {
        let mut all = Vec::new();
        for (number, club) in self.layout.clubs.iter().enumerate() {
            for (of, value) in values(club) {
                let Some(state) = value.own else { continue };
                let mut local = vec![0.0; club.states.len()];
                local[state] = 1.0;
                let shared = vec![0.0; self.layout.shared_keys.len()];
                let row = Row { club: Some(number), local, shared, value: 0.0 };
                let now =
                    Whitened { mean: self.point.local[number][state], variance: self.half(&row).variance().min(1.0) };
                all.push(OwnDeviation { club: club.key.clone(), of, now, prior_sd: value.sd });
            }
        }
        all
    }

    /// Mean and standard deviation of a shared deviation before the readings, in its own unit.
    ///
    /// # Errors
    ///
    /// An unknown key.
    pub fn prior_of(&self, key: &str) -> Result<(f64, f64), E> {
        let at = self.layout.shared(key, "the prior")?;
        let variance: f64 = self.layout.shared_factor[at].iter().map(|(_, f)| f * f).sum();
        Ok((self.layout.shared_mean[at], variance.sqrt()))
    }

    /// A shared deviation after the readings in units of its prior; none where it was known exactly.
    ///
    /// # Errors
    ///
    /// An unknown key.
    pub fn whitened(&self, key: &str) -> Result<Option<Whitened>, E> {
        let (mean, sd) = self.prior_of(key)?;
        if sd <= 0.0 {
            return Ok(None);
        }
        let now = self.marginal(key)?;
        Ok(Some(Whitened { mean: (now.mean - mean) / sd, variance: (now.sd / sd).powi(2).min(1.0) }))
    }

    /// Each believed reading against the fitted value. Repeats that share their rounding are left out: they say more of
    /// the display than of the noise.
    #[must_use]
    pub fn residuals(&self) -> Vec<Residual> {
        // A row at this belief cannot fail where it could at the belief that it came from.
        let rows = self.rows().unwrap_or_else(|_| Arc::clone(&self.rows));
        let single = self.terms.iter().zip(rows.iter()).filter(|(term, _)| !term.coarse && term.members.len() == 1);
        let mut all: Vec<Residual> = single
            .map(|(term, (row, variance))| {
                let reading = &self.readings[term.members[0]];
                Residual {
                    id: reading.id.clone(),
                    scale: reading.scale.clone(),
                    residual: term.value - row.value,
                    noise_variance: (variance - step_variance(reading.resolution)).max(0.0),
                    variance: *variance,
                    free: (1.0 - self.half(row).variance() / variance).clamp(0.0, 1.0),
                }
            })
            .collect();
        all.sort_by(|a, b| a.id.cmp(&b.id));
        all
    }
}

fn values(club: &ClubLayout) -> Vec<(OwnOf, &Value)> {
    let pieces = club.pieces.iter();
    let mut all: Vec<(OwnOf, &Value)> =
        pieces.flat_map(|p| [(OwnOf::Mass(p.role), &p.mass), (OwnOf::Arm(p.role), &p.arm)]).collect();
    all.push((OwnOf::Length, &club.length));
    all.push((OwnOf::Cap, &club.cap));
    all
}
