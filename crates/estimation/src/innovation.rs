//! Each reading held against all the others.

use crate::belief::{Belief, Forecast};
use crate::error::EstimationError as E;
use crate::reading::Observation;
use crate::rounding::{interval_estimate, step_variance};
use crate::term::Term;
use serde::{Deserialize, Serialize};
use utoipa::ToSchema;

/// A reading against what all others say of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize, ToSchema)]
pub struct Innovation {
    /// Name of the reading, its own `id`.
    pub id: String,
    /// What was read, in the unit of its quantity.
    pub value: f64,
    /// What the other believed readings forecast.
    pub predicted: f64,
    /// Standard deviation of value minus forecast, noise and rounding included.
    pub sd: f64,
    /// Value minus forecast in standard deviations.
    pub z: f64,
    /// Is |z| beyond the limit, [`crate::DOUBT_LIMIT`]?
    pub doubted: bool,
    /// Is the reading part of the belief?
    pub believed: bool,
}

impl Belief {
    /// Each reading against the forecast of it from all the others.
    ///
    /// For a believed reading the forecast is the one without it, from the standard identity for linear models:
    /// with variance `p` of the fitted value and `r` of the reading, `(y − ŷ)/(1 − p/r)` with variance
    /// `r/(1 − p/r)`; for those that are not believed it is the belief's own.
    ///
    /// # Errors
    ///
    /// None for a belief that could be solved, in practice; forecasts of readings set aside may refuse.
    pub fn innovations(&self) -> Result<Vec<Innovation>, E> {
        let mut all = Vec::with_capacity(self.readings.len());
        let mut used = vec![false; self.readings.len()];
        for (term, (row, variance)) in self.terms.iter().zip(self.rows()?.iter()) {
            let fitted = self.half(row).variance();
            // The forecast of the latent value without the whole term.
            let kept = (1.0 - fitted / variance).max(f64::EPSILON);
            let without = Forecast { mean: term.value - (term.value - row.value) / kept, sd: (fitted / kept).sqrt() };
            for member in &term.members {
                used[*member] = true;
                let latent = self.with_other_members(term, *member, without);
                all.push(innovation(&self.readings[*member], latent, true));
            }
        }
        for (reading, _) in self.readings.iter().zip(&used).filter(|(_, used)| !**used) {
            let latent = self.answer(&reading.probe())?;
            all.push(innovation(reading, latent, false));
        }
        all.sort_by(|a, b| a.id.cmp(&b.id));
        Ok(all)
    }

    /// The latent value from the others of a group that shares its rounding, if the term is one.
    fn with_other_members(&self, term: &Term, member: usize, without: Forecast) -> Forecast {
        if !term.coarse || term.members.len() < 2 {
            return without;
        }
        let others = term.members.iter().filter(|other| **other != member).map(|i| &self.readings[*i]);
        let others: Vec<(f64, f64)> = others.map(|r| (r.value, r.sd)).collect();
        let (value, variance) = interval_estimate(&others, self.readings[member].resolution);
        let weight = without.sd.powi(2) / (without.sd.powi(2) + variance);
        Forecast {
            mean: without.mean + weight * (value - without.mean),
            sd: (without.sd.powi(2) * (1.0 - weight)).sqrt(),
        }
    }
}

fn innovation(reading: &Observation, latent: Forecast, believed: bool) -> Innovation {
    let sd = (latent.sd.powi(2) + reading.sd.powi(2) + step_variance(reading.resolution)).sqrt();
    let z = (reading.value - latent.mean) / sd;
    let doubted = z.abs() > crate::DOUBT_LIMIT;
    Innovation { id: reading.id.clone(), value: reading.value, predicted: latent.mean, sd, z, doubted, believed }
}
